"""A label for each board: its mark, what it is, its finished size, the sub-assembly and the job.

Labels follow the cut list. Where they lie on the sheet is in render.label_stock.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from model.errors import Refused
from model.surround import Surround
from model.takeoff.cut_list import Cut
from model.units import INCHES, MILLIMETRES_ONLY, LengthStyle, format_length
from render.drawing import MM, Anchor, Drawing, Mark, Pen, Placed, Polyline, Sheet, Text
from render.extent import box_ring
from render.label_stock import LabelStock
from render.lettering import ASCENT, DESCENT, shorten_text, text_width, wrap_text

LEAST = 2.5 * MM
"""The least capitals on any sheet: ISO 3098's step for notes."""
EDGE = 2 * MM
"""Kept clear inside a label: printers are off by a millimetre or two."""
MARK_SHARE, MOST_MARK = 0.25, 11 * MM
"""Of a label's height the part that its mark's capitals take, and the most they do. Shop choice."""
LEAST_MARK = 4.5 * MM
"""A mark gives up room for what stands below it down to such capitals, which leave four lines on a label of
an inch: the job's name is the fourth. Shop choice.
"""
LARGEST = 5 * MM
"""Capitals of everything else are no larger."""
STEP = 0.25 * MM


@dataclass(frozen=True, slots=True)
class Label:
    """What stands on a label; the first to go where there is no room for all are the last lines.

    `short_sizes` are what the size is cut down to, one after the other, where there is no room for all of it.
    """

    mark: str
    size: str
    lines: tuple[str, ...]
    short_sizes: tuple[str, ...] = ()


def list_labels(surround: Surround, cuts: Sequence[Cut]) -> tuple[Label, ...]:
    """A label for each piece, in the order of the cut list."""
    labels, about = [], surround.job.about
    assemblies = {mark: b.assembly for mark, b in zip(surround.marks, surround.boards, strict=True)}
    for cut in cuts:
        size, *short = _list_sizes(cut, about.length_style)
        for piece in cut.pieces:
            lines = (cut.name, assemblies[piece], about.name, cut.stock)
            labels.append(Label(piece, size, tuple(line for line in lines if line), tuple(short)))
    return tuple(labels)


def _list_sizes(cut: Cut, style: LengthStyle) -> tuple[str, ...]:
    """Length, width and thickness; then in one unit, said once; without the thickness; the length alone.

    Millimetres then go without theirs, as on drawings (ISO 129-1).
    """
    sizes = cut.length, cut.width, cut.thickness
    one = style if style.units == MILLIMETRES_ONLY else LengthStyle(INCHES, style.denominator)
    numbers = [format_length(each, one).removesuffix(" mm").removesuffix('"') for each in sizes]
    unit = "" if style.units == MILLIMETRES_ONLY else '"'
    short = (" × ".join(numbers[:count]) + unit for count in (3, 2, 1))
    return tuple(dict.fromkeys((" × ".join(format_length(each, style) for each in sizes), *short)))


def build_label_sheets(
    labels: Sequence[Label], stock: LabelStock, start: int = 1, outlined: bool = False
) -> tuple[Sheet, ...]:
    """Sheets of labels, the first on place `start`, counted row by row from 1; `outlined` for a trial print.

    Raises Refused for a place that is not on the sheet.
    """
    if not 1 <= start <= stock.count:
        raise Refused("first label", str(start), f"a sheet has places 1 to {stock.count}")
    places = list(stock.corners())
    sheets = []
    on_first = stock.count - start + 1
    parts = [labels[:on_first]]
    rest = labels[on_first:]
    parts += [rest[at : at + stock.count] for at in range(0, len(rest), stock.count)]
    for number, part in enumerate(parts, start=1):
        first = start - 1 if number == 1 else 0
        placed = [
            Placed(Drawing(tuple(draw_label(label, stock.width, stock.height))), at, "label")
            for label, at in zip(part, places[first:], strict=False)
        ]
        if outlined:
            ring = box_ring((0.0, 0.0, stock.width, stock.height))
            placed += [Placed(Drawing((Polyline(Pen.RULE, ring, closed=True),)), at) for at in places]
        sheets.append(Sheet(str(number), f"Labels {number}", *stock.page, tuple(placed)))
    return tuple(sheets)


def draw_label(label: Label, width: float, height: float) -> Iterator[Mark]:
    """A label's writing from its lower left corner: as large as fits, and all of it inside.

    The mark on top with the size below it; lines are broken or shortened, and left out from the last on.
    """
    room = width - 2 * EDGE
    spare = (height - 2 * EDGE - _need(label, LEAST, room)) / (ASCENT + DESCENT)
    mark = _largest(label.mark, room, min(MARK_SHARE * height, MOST_MARK, max(spare, LEAST_MARK)))
    top = height - EDGE - ASCENT * mark
    yield Text(label.mark, (EDGE, top), mark, bold=True)
    top -= DESCENT * mark
    left = top - EDGE
    label = replace(label, size=_fit_size(label, room, left))
    wanted = LARGEST
    while wanted > LEAST and _need(label, wanted, room) > left:
        wanted -= STEP
    wanted = max(wanted, LEAST)
    lines = [(line, True) for line in wrap_text(label.size, wanted, room, bold=True)]
    for text in label.lines:
        lines += [(line, False) for line in wrap_text(text, wanted, room)]
    for text, bold in lines[: _count_lines(left, wanted)]:
        top -= ASCENT * wanted
        yield Text(shorten_text(text, wanted, room, bold), (EDGE, top), wanted, Anchor.START, bold=bold)
        top -= DESCENT * wanted


def _count_lines(left: float, capitals: float) -> int:
    """How many lines so high a room has, one at least: labels are no smaller than that takes."""
    return max(int(left / ((ASCENT + DESCENT) * capitals) + 1e-9), 1)


def _fit_size(label: Label, room: float, left: float) -> str:
    """The fullest of a label's sizes that the room below its mark holds; the shortest where it holds none."""
    sizes = (label.size, *label.short_sizes)
    most = _count_lines(left, LEAST)
    return next((size for size in sizes if len(wrap_text(size, LEAST, room, bold=True)) <= most), sizes[-1])


def _largest(text: str, room: float, most: float) -> float:
    """Capitals for one line, down to the least; a longer mark than that is shortened by nobody."""
    width = text_width(text, 1.0, bold=True)
    return max(min(most, room / max(width, 1e-9)), LEAST)


def _need(label: Label, capitals: float, room: float) -> float:
    lines = len(wrap_text(label.size, capitals, room, bold=True))
    lines += sum(len(wrap_text(text, capitals, room)) for text in label.lines)
    return lines * (ASCENT + DESCENT) * capitals
