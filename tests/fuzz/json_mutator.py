"""JSON spoilt where it hurts: values of the wrong kind, size or sign in an otherwise whole text."""

from __future__ import annotations

import json
from collections.abc import Iterator
from copy import deepcopy
from random import Random
from typing import Any

NASTY: tuple[Any, ...] = (
    None, True, False, 0, -1, -0.0, 1, 2, 5e-324, 1e-9, 0.1, 36.03125, 1e6, 1e15, 1e308, -1e308,
    2**31, 2**53 + 1, 2**64, 10**40, float("nan"), float("inf"), float("-inf"),
    "", " ", "0", "36", "none", "yes", "1/0", "\x00", "\U0001f600", "\u202e", "\ufeff", "\r\n", "\ud800",
    "=1+1", "<b>&amp;", "%%c{\\P}", "../../x", "a" * 10_000,
    [], {}, [[]], [0] * 1000, {"": ""}, {"width": 36},
)  # fmt: skip
"""What takes the place of values. The last ones are of kinds that no field has."""
DEEP = "deeper than anything is read"
LEVELS = 5000
"""DEEP stands for so many lists in each other until the text is written: Python's own writer stops sooner."""


def spoil_json(data: bytes, seed: int) -> bytes:
    """`data` with one to three places of its JSON spoilt; as it is where it is no JSON."""
    chance = Random(seed)
    try:
        whole = json.loads(data)
    except (ValueError, RecursionError):
        return data
    for _ in range(chance.randint(1, 3)):
        whole = _spoil(whole, chance)
    text = json.dumps(whole, ensure_ascii=chance.random() < 0.5)
    text = text.replace(json.dumps(DEEP), "[" * LEVELS + "]" * LEVELS)
    return text.encode("utf-8", "surrogatepass")


def _spoil(whole: Any, chance: Random) -> Any:
    places = list(_list_places(whole))
    if not places:
        return chance.choice(NASTY)
    holder, key = chance.choice(places)
    way = chance.random()
    if way < 0.5:
        holder[key] = deepcopy(chance.choice(NASTY))
    elif way < 0.6:
        other, at = chance.choice(places)
        holder[key] = deepcopy(other[at])
    elif way < 0.7:
        del holder[key]
    elif way < 0.8:
        holder[key] = _near(holder[key], chance)
    elif way < 0.85:
        holder[key] = DEEP if chance.random() < 0.1 else [holder[key]]
    elif isinstance(holder, dict):
        holder[chance.choice(("", "width", "purchase", str(key) + "x", "\u00e9"))] = deepcopy(holder[key])
    else:
        holder.append(deepcopy(holder[key]))
    return whole


def _near(value: Any, chance: Random) -> Any:
    """A value like this one: a number a little or far off, a text within which something is spoilt."""
    if isinstance(value, (int, float)) and not isinstance(value, bool):
        return value * chance.choice((-1, 0.5, 2, 10, 1000)) + chance.choice((0, 1, 1 / 64, 1e-12))
    if isinstance(value, str) and value.startswith("{"):
        return spoil_json(value.encode("utf-8", "replace"), chance.getrandbits(32)).decode("utf-8", "replace")
    if isinstance(value, str):
        at = chance.randint(0, len(value))
        return value[:at] + str(chance.choice(NASTY))[:40] + value[at + chance.randint(0, 3) :]
    return chance.choice(NASTY)


def _list_places(value: Any, depth: int = 0) -> Iterator[tuple[Any, Any]]:
    """Every holder with a key or an index of it, as far down as anything reads."""
    keys = list(value) if isinstance(value, dict) else range(len(value)) if isinstance(value, list) else ()
    for key in keys:
        yield value, key
        if depth < 6:
            yield from _list_places(value[key], depth + 1)
