"""A fault of the program's own as a text that may be handed on: where it happened, on what, nothing personal.

Texts of the job and places on the disk are left out of it; figures are not.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from pathlib import Path
from traceback import extract_tb

from app.version import describe_ground, program_version

LEFT_OUT = "[left out]"
SHORTEST = 3
"""Letters; shorter texts would be found in every word."""
NAME = 60
"""Letters of a name at most; of longer texts, single words are anybody's."""
DEEPEST = 8
"""Faults that led to each other, at most."""
LONGEST = 500
"""Letters of what a fault says for itself."""
_OURS = Path(__file__).resolve().parents[1]
_PLACE = re.compile(r"(?<![\w.])(?:[A-Za-z]:\\|\\\\|/|~/)[^\s'\":;,)]*[^\s'\":;,).]")
"""A path from a drive's or the disk's root, as far as it can be told from other writing."""


def write_report(error: BaseException, personal: Sequence[str]) -> str:
    """The report of `error`, without the texts in `personal`."""
    lines = [f"Mantelwright {program_version()}", describe_ground()]
    for number, fault in enumerate(_list_faults(error)):
        lines.append("" if number == 0 else "\nwhich came of")
        lines += _list_frames(fault)
        lines.append(f"{type(fault).__name__}: {_clean(str(fault)[:LONGEST], personal)}".rstrip(": "))
    return "\n".join(lines) + "\n"


def _list_faults(error: BaseException | None) -> Iterator[BaseException]:
    """The fault and what it came of, the last one first."""
    count = 0
    while error is not None and count < DEEPEST:
        yield error
        error, count = error.__cause__ or error.__context__, count + 1


def _list_frames(error: BaseException) -> list[str]:
    return [
        f"{_name(frame.filename)}:{frame.lineno} {frame.name}" for frame in extract_tb(error.__traceback__)
    ]


def _name(file: str) -> str:
    """A file of ours from the top of the project; of another's no more than its last folder."""
    path = Path(file)
    try:
        return path.resolve().relative_to(_OURS).as_posix()
    except (ValueError, OSError):
        return "/".join(path.parts[-2:]) if len(path.parts) > 2 else path.name


def _clean(text: str, personal: Sequence[str]) -> str:
    for secret in sorted({part for whole in personal for part in _parts(whole)}, key=len, reverse=True):
        text = re.sub(re.escape(secret), LEFT_OUT, text, flags=re.IGNORECASE)
    return _PLACE.sub(LEFT_OUT, text)


def _parts(text: str) -> Iterator[str]:
    """The text, its lines and, of names, the words, as far as they are long enough to be told from others."""
    words = text.split() if len(text) <= NAME else ()
    parts = (part.strip() for part in (text, *text.splitlines(), *words))
    yield from (part for part in parts if len(part) >= SHORTEST)
