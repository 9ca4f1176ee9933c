"""One object of JSON with a version at its top, as job and stock list files are; what is in it is theirs."""

from __future__ import annotations

from collections import Counter
from typing import Any

from model.errors import Refused


class Unread(Exception):
    """A text holds no such object; `faults` says why, a sentence each."""

    def __init__(self, *faults: str) -> None:
        self.faults = faults
        super().__init__("\n".join(faults))


def read_object(text: str | bytes, key: str, what: str, example: str) -> dict[str, Any]:
    """The object that `text` holds, `key` among its fields. `what` is as in "a job file". Raises Unread."""
    import msgspec

    try:
        plain = text if isinstance(text, str) else text.decode()
        plain = plain.removeprefix("\ufeff")
        data = msgspec.json.decode(plain)
        twice = _written_twice(plain)
    except UnicodeError:
        raise Unread(f"not {what}: its bytes are no text in UTF-8, which is wanted") from None
    except RecursionError:
        raise Unread(f"not {what}: its brackets lie too deep; two levels are wanted") from None
    except msgspec.DecodeError:
        raise Unread(f"not {what}: {_say_no_json(plain, example)}") from None
    if not isinstance(data, dict) or key not in data:
        raise Unread(f'not {what}: no "{key}" version at its top')
    if twice:
        raise Unread(*(f"{name}: written twice in one object; keep one of them" for name in twice))
    return data


def check_version(version: object, key: str, newest: int) -> None:
    """Raises Unread for what is no version, and for a newer one than `newest`."""
    if isinstance(version, bool) or not isinstance(version, int) or version < 1:
        raise Unread(str(Refused(key, version, "write a whole version number, such as 1")))
    if version > newest:
        newer = f"file version {version}, this one reads {newest}"
        raise Unread(f"written by a newer program ({newer}); left as it is")


def _say_no_json(text: str, example: str) -> str:
    """Where `text` stops being JSON, what stands there and what is wanted."""
    import json

    wanted = f"JSON is wanted, such as {example}"
    try:
        json.loads(text)
    except json.JSONDecodeError as fault:
        rest = (fault.doc[fault.pos :].split("\n")[0]).strip()
        if not rest:
            return f"line {fault.lineno} ends too early; {wanted}"
        return str(Refused(f"line {fault.lineno}, from character {fault.colno} on,", rest, wanted))
    except (ValueError, RecursionError):  # a number longer than Python reads, or brackets too deep
        pass
    return f"it holds a number or a letter that is not allowed in JSON; {wanted}"


def _written_twice(text: str) -> list[str]:
    """Names that stand twice within one object of `text`, of which a plain reader keeps the last."""
    import json  # only to see every pair; what it makes of them is thrown away

    twice: list[str] = []

    def note(pairs: list[tuple[str, Any]]) -> None:
        counts = Counter(name for name, _ in pairs)
        twice.extend(name for name, count in counts.items() if count > 1)

    json.loads(text, object_pairs_hook=note)
    return twice
