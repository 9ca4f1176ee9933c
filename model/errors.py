"""The ways input can be wrong. A design that breaks a rule is a finding (model.check), not an error."""

import reprlib
import unicodedata
from collections.abc import Sequence

LONGEST_SHOWN = 60
"""Characters of what was read that a message quotes."""
MOST_FAULTS = 50
"""Faults of a file that a message lists: one with more is another file, or made to be tiresome."""
_STEERING = {"Cc", "Cs", "Zl", "Zp"}
"""Unicode's classes of characters that steer a terminal or part lines, and of broken ones."""
_TURNING = {"LRE", "RLE", "LRO", "RLO", "PDF", "LRI", "RLI", "FSI", "PDI"}
"""The kinds of characters by which what follows is shown in another order: Unicode Standard Annex 9."""


def disarm(text: str, kept: str = "") -> str:
    """`text` with every character that steers a terminal, but for those `kept`, written out as ``\\x1b``."""
    if text.isascii() and text.isprintable():
        return text
    return "".join(c if c in kept or not steers(c) else _write_out(c) for c in text)


def steers(character: str) -> bool:
    """Whether it is no letter to be seen but moves, parts, turns or breaks what stands about it."""
    return unicodedata.category(character) in _STEERING or unicodedata.bidirectional(character) in _TURNING


def _write_out(character: str) -> str:
    return character.encode("unicode_escape").decode()


def _list_faults(faults: Sequence[str]) -> str:
    """The first MOST_FAULTS of `faults`, a line each, and how many more there are."""
    more = [f"and {len(faults) - MOST_FAULTS:,} more"] if len(faults) > MOST_FAULTS else []
    return "\n".join([*faults[:MOST_FAULTS], *more])


def _show(read: object) -> str:
    """`read` as a message quotes it: text in quotation marks, numbers bare, the words of a job file."""
    if isinstance(read, str):
        return f'"{_cut(read)}"'
    if read is None or isinstance(read, bool):
        return {None: "null", True: "true", False: "false"}[read]
    return str(read) if isinstance(read, float) else _cut(reprlib.repr(read))


def _cut(text: str) -> str:
    return disarm(text if len(text) <= LONGEST_SHOWN else f"{text[:LONGEST_SHOWN]}…")


class MantelwrightError(Exception):
    """Base of every error this program raises on purpose; its text is fit to show to the user."""


class Refused(MantelwrightError, ValueError):
    """A value was turned away at the door.

    The message names the field, what was read and what is wanted, with an example:
    ``opening width "3x": write a length such as 36, 36 1/2, 3' 0-1/2" or 914 mm``.
    """

    def __init__(self, field: str, read: object, wanted: str) -> None:
        self.field = field
        self.read = read
        self.wanted = wanted
        super().__init__(f"{field} {_show(read)}: {wanted}")


class JobRefused(MantelwrightError, ValueError):
    """A job text was turned away; ``faults`` holds one sentence for each fault, all of them.

    Its text lists the first MOST_FAULTS and counts the rest.
    """

    def __init__(self, faults: tuple[str, ...]) -> None:
        self.faults = faults
        super().__init__(_list_faults(faults))


class StockRefused(MantelwrightError, ValueError):
    """A stock list was turned away; ``faults`` holds one sentence for each fault, all of them.

    Its text lists the first MOST_FAULTS and counts the rest.
    """

    def __init__(self, faults: tuple[str, ...]) -> None:
        self.faults = faults
        super().__init__(_list_faults(faults))
