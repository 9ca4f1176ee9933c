"""References between sheets, written before it is known which sheet holds what.

`sheet_of` may stand in any text of any drawing, note or table; `resolve_sheet` puts the number there once
sheets are numbered. Which drawing is marked on which is in render.section_marks.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import replace

from render.drawing import Dimension, Link, Mark, Placed, Sheet, Text
from render.extent import list_boxes
from render.lettering import KEY_FIRST, PLACE, PLACE_END

HELD = "sheet of "
"""Begins what a mark stands for that is left out where the packet does not hold the drawing it leads to."""
UNKNOWN = "–"
"""Stands where a sheet is named that the packet does not hold."""
_TOKEN = re.compile(f"{PLACE}([^{PLACE_END}]*){PLACE_END}")


def sheet_of(key: str) -> str:
    """A place for the number of the sheet that holds `key`, two figures wide until it is known.

    `key` is the name a drawing is placed under or a sheet's title; ASCII.
    """
    return PLACE + "".join(chr(KEY_FIRST + ord(letter)) for letter in key) + PLACE_END


def list_keys(text: str) -> tuple[str, ...]:
    """What the places in a text are waiting for."""
    return tuple(_key(found[1]) for found in _TOKEN.finditer(text))


def resolve_text(text: str, where: Mapping[str, int]) -> str:
    """The text with each place filled; `where` has the number of the sheet that holds a key."""
    if PLACE not in text:
        return text
    return _TOKEN.sub(lambda found: str(where.get(_key(found[1]), UNKNOWN)), text)


def resolve_sheet(sheet: Sheet, where: Mapping[str, int]) -> Sheet:
    """The sheet with every place filled, and a link from each to the sheet it names."""
    links: list[Link] = []
    placed = tuple(_resolve_placed(part, where, links) for part in sheet.placed)
    return replace(sheet, placed=placed, links=tuple(links)) if links else replace(sheet, placed=placed)


def _key(letters: str) -> str:
    return "".join(chr(ord(letter) - KEY_FIRST) for letter in letters)


def _resolve_placed(part: Placed, where: Mapping[str, int], links: list[Link]) -> Placed:
    if not any(PLACE in text for text in _list_texts(part.drawing.marks)):
        return part
    marks = []
    for mark in part.drawing.marks:
        if mark.stands_for.startswith(HELD) and mark.stands_for.removeprefix(HELD) not in where:
            continue
        told = _resolve_mark(mark, where)
        marks.append(told)
        if told is not mark:
            targets = [where[key] for key in list_keys(mark.text) if key in where]  # type: ignore[union-attr]
            links += [Link(box, targets[0]) for box in list_boxes(part, told)] if targets else []
    return replace(part, drawing=replace(part.drawing, marks=tuple(marks)))


def _list_texts(marks: tuple[Mark, ...]) -> Iterator[str]:
    return (mark.text for mark in marks if isinstance(mark, Text | Dimension))


def _resolve_mark(mark: Mark, where: Mapping[str, int]) -> Mark:
    if not isinstance(mark, Text | Dimension) or PLACE not in mark.text:
        return mark
    return replace(mark, text=resolve_text(mark.text, where))
