"""One board of a cutting plan as a bar: its lanes, the pieces in them with their marks, and what is left.

Lengths are to one scale on all bars of a plan; widths are drawn larger, so that marks can be read. Every
piece has its mark, so that nothing rests on its tint; what is lost is hatched.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from model.cutting.pieces import Source
from model.cutting.places import Place, list_places
from model.cutting.plan import GroupPlan, Sawn
from model.cutting.stock_list import describe_row
from model.cutting.task import SawnBoard, Stock, Wanted, to_inches
from model.units import LengthStyle, format_length
from render.drawing import MM, Anchor, Fill, Hatch, Lines, Mark, Pen, Point, Polyline, Region, Ring, Text
from render.lettering import shorten_text, text_width, tie_words
from render.tables import SMALL, Strip, lead, paragraph_strips

LEAST_LANE, MOST_LANE = 4.6 * MM, 16 * MM
"""Narrowest and widest that a lane is drawn on paper; a mark fits into the narrowest. Shop choice."""
STRETCH = 1.8
"""How much larger widths are drawn than lengths. Shop choice."""
AIR = 0.6 * MM
"""Clear on each side of a mark within its piece."""
HATCH_SPACING = 1.6 * MM
KEEP_WORD, WASTE_WORD = "keep", "waste"


@dataclass(frozen=True, slots=True)
class Bars:
    """How the bars of a plan are drawn: paper inches to an inch of board, length style, width of the page.

    `cut` are numbers of bought boards that are sawn already.
    """

    scale: float
    style: LengthStyle
    width: float
    cut: frozenset[int] = frozenset()

    def text(self, units: int) -> str:
        """A length on paper."""
        return format_length(to_inches(units), self.style)

    def tied(self, units: int) -> str:
        """A length within a sentence, where no line is broken inside it."""
        return tie_words(self.text(units))


def name_pieces(marks: Iterable[str], number: int) -> str:
    """What a piece's outline stands for: its mark on every board cut alike, and the first one's number."""
    return f"{'/'.join(dict.fromkeys(marks))}@{number}"


def read_pieces(stands_for: str) -> tuple[tuple[str, ...], int]:
    """The marks and the number that `name_pieces` put together."""
    marks, _, number = stands_for.rpartition("@")
    return tuple(marks.split("/")), int(number)


def fill_of(source: Source) -> Fill:
    """The tint of a sub-assembly's pieces."""
    for word, fill in (
        ("column", Fill.COLUMN_PIECE),
        ("frieze", Fill.FRIEZE_PIECE),
        ("shelf", Fill.SHELF_PIECE),
        ("mould", Fill.MOULDING_PIECE),
    ):
        if word in source.assembly:
            return fill
    return Fill.OTHER_PIECE


def bar_strips(sawn: Sequence[Sawn], group: GroupPlan, bars: Bars) -> tuple[Strip, ...]:
    """The bar of boards that are cut alike, and below it their pieces in order; the first one is drawn."""
    shown = _Shown.of(sawn, group, bars)
    words = tuple(_list_words(sawn, shown))
    lines = [strip for text in words for strip in paragraph_strips(text, bars.width)]
    return (*lead((_title(sawn, bars), _draw(shown), *lines)), Strip(3 * MM))


@dataclass(frozen=True, slots=True)
class _Shown:
    """A board as it is drawn: what it is cut from, its pieces in place, lane by lane, and the asked sizes."""

    board: SawnBoard
    stock: Stock
    lanes: tuple[tuple[Place, ...], ...]
    wanted: Mapping[str, Wanted]
    names: Mapping[tuple[int, int], str]
    group: GroupPlan
    bars: Bars

    @classmethod
    def of(cls, alike: Sequence[Sawn], group: GroupPlan, bars: Bars) -> _Shown:
        """That of the first of boards that are cut alike."""
        first, number = alike[0].cut, alike[0].number
        assert isinstance(first, SawnBoard)
        stock = next(each for each in group.task.stock if each.key == first.stock)
        places = list_places(alike[0], group)
        lanes = tuple(tuple(p for p in places if p.lane == i) for i in range(1, len(first.lanes) + 1))
        names = {
            (place.lane, place.number): name_pieces((each.sources[i].mark for each in alike), number)
            for i, place in enumerate(places)
        }
        return cls(first, stock, lanes, {p.key: p for p in group.task.wanted}, names, group, bars)

    @property
    def kerf(self) -> int:
        return self.group.task.kerf

    @property
    def end(self) -> int:
        """Where the board's far end is trimmed."""
        return self.stock.length - self.stock.trim_ends

    @property
    def is_ripped(self) -> bool:
        """Whether the whole board is ripped before it is cut to length."""
        across = self.stock.width - 2 * self.stock.trim_edges
        return len(self.lanes) > 1 or (self.board.lanes[0].width < across and not self._is_whole)

    @property
    def _is_whole(self) -> bool:
        """Whether its one lane is ripped nowhere: every piece narrower than the board is ripped by itself."""
        return len(self.lanes) == 1 and self.board.lanes[0].width == self.stock.width

    def rest(self, lane: int) -> tuple[int, int]:
        """From where to where the last cut of a lane leaves anything."""
        last = self.lanes[lane][-1]
        return min(last.along + last.length + self.kerf, self.end), self.end

    def is_kept(self, length: int) -> bool:
        """Whether an offcut is long enough to keep."""
        return length >= max(self.group.task.keep, 1)


def _title(sawn: Sequence[Sawn], bars: Bars) -> Strip:
    numbers = ", ".join(str(each.number) for each in sawn)
    count = f"{len(sawn)} boards alike: {numbers}" if len(sawn) > 1 else f"Board {numbers}"
    return title_strip(count + say_cut(sawn[0], bars), describe_row(sawn[0].row, bars.style), bars)


def say_cut(sawn: Sawn, bars: Bars) -> str:
    """What is said behind the number of a board or sheet that is sawn already."""
    return ", cut" if sawn.number in bars.cut else ""


def title_strip(left: str, right: str, bars: Bars) -> Strip:
    """What is cut, and out of what."""
    height = 3 * MM
    drop = 2 * height
    y = -drop + 0.6 * height
    name = shorten_text(right, height, bars.width - text_width(left, height, bold=True) - 2 * height)
    return Strip(
        drop, (Text(left, (0.0, y), height, bold=True), Text(name, (bars.width, y), height, Anchor.END))
    )


def _draw(shown: _Shown) -> Strip:
    """The board from its left end on; lanes one below the other, what is beside them last."""
    bars, stock = shown.bars, shown.stock
    right = _along(stock.length, bars)
    marks: list[Mark] = []
    top = 0.0
    for number, lane in enumerate(shown.lanes):
        low = top - _lane_height(shown.board.lanes[number].width, bars)
        for place in lane:
            marks += _draw_piece(place, shown, (low, top))
        marks += _draw_rest(shown, number, (low, top))
        top = low
    used = sum(lane.width + shown.kerf for lane in shown.board.lanes)
    beside = stock.width - 2 * stock.trim_edges - used
    if beside > 0:
        low = top - max(to_inches(beside) * bars.scale * STRETCH, MM)
        marks += _waste((0.0, low, right, top))
        top = low
    if stock.trim_ends:
        trim = _along(stock.trim_ends, bars)
        marks += _waste((0.0, top, trim, 0.0)) + _waste((right - trim, top, right, 0.0))
    marks.append(Polyline(Pen.OUTLINE, _box(0.0, top, right, 0.0), closed=True))
    return Strip(-top + 1.2 * MM, tuple(marks))


def _along(units: int, bars: Bars) -> float:
    return to_inches(units) * bars.scale


def _lane_height(width: int, bars: Bars) -> float:
    return min(max(LEAST_LANE, to_inches(width) * bars.scale * STRETCH), MOST_LANE)


def _draw_piece(place: Place, shown: _Shown, room: Point) -> Iterator[Mark]:
    """The piece in its lane between the edges `room`; a turned one has its long points on the lower."""
    (low, top), bars, source = room, shown.bars, place.source
    x0, x1 = _along(place.along, bars), _along(place.along + place.length, bars)
    piece = shown.wanted[place.key]
    ends = _along(piece.mitre_low, bars), _along(piece.mitre_high, bars)
    near, far = reversed(ends) if place.turned else ends
    long_edge, short_edge = (low, top) if place.turned else (top, low)
    ring: Ring = ((x0, long_edge), (x1, long_edge), (x1 - far, short_edge), (x0 + near, short_edge))
    name = shown.names[place.lane, place.number]
    yield Region(fill_of(source), (ring,), name)
    yield Polyline(Pen.EDGE, ring, closed=True, stands_for=name)
    clear = x1 - x0 - near - far - 2 * AIR
    for words in (f"{source.mark}  {bars.text(place.length)}", source.mark):
        if text_width(words, SMALL) <= clear:
            at = ((x0 + near + x1 - far) / 2, (low + top) / 2 - SMALL / 2)
            yield Text(words, at, SMALL, Anchor.MIDDLE, stands_for=name)
            return
    if clear >= SMALL and text_width(source.mark, SMALL) <= top - low - 2 * AIR:
        at = ((x0 + near + x1 - far + SMALL) / 2, (low + top) / 2)
        yield Text(source.mark, at, SMALL, Anchor.MIDDLE, 90.0, stands_for=name)


def _draw_rest(shown: _Shown, number: int, room: Point) -> Iterator[Mark]:
    """What the last cut of a lane leaves: outlined to keep where it is long enough, else hatched as waste."""
    (low, top), bars = room, shown.bars
    start, end = shown.rest(number)
    if start >= end:
        return
    x0, x1 = _along(start, bars), _along(end, bars)
    if not shown.is_kept(end - start):
        yield from _waste((x0, low, x1, top))
        return
    yield Polyline(Pen.GUIDE, _box(x0, low, x1, top), closed=True)
    for words in (f"{KEEP_WORD} {bars.text(end - start)}", bars.text(end - start)):
        if text_width(words, SMALL) <= x1 - x0 - 2 * AIR:
            yield Text(words, ((x0 + x1) / 2, (low + top) / 2 - SMALL / 2), SMALL, Anchor.MIDDLE)
            return


def _waste(box: tuple[float, float, float, float]) -> list[Mark]:
    ring = _box(*box)
    return [
        Hatch(Pen.HATCH, (ring,), 45.0, HATCH_SPACING),
        Lines(Pen.EDGE, ((box[0], box[1], box[0], box[3]),)),
    ]


def _box(x0: float, y0: float, x1: float, y1: float) -> tuple[Point, Point, Point, Point]:
    return (x0, y0), (x1, y0), (x1, y1), (x0, y1)


def _list_words(sawn: Sequence[Sawn], shown: _Shown) -> Iterator[str]:
    """Rips, the pieces from the left end on, and whose they are on boards that are cut alike."""
    bars = shown.bars
    if shown.is_ripped:
        widths = ", ".join(bars.tied(lane.width) for lane in shown.board.lanes)
        yield f"Rip first, the whole length: {widths}."
    at = 0
    for number, lane in enumerate(shown.lanes):
        pieces = ", ".join(_list_pieces(shown, number, sawn, at))
        strip = f"Strip {number + 1}, from the left" if len(shown.lanes) > 1 else "From the left"
        yield f"{strip}: {pieces}.{_say_left(shown, number)}"
        at += len(lane)


def _list_pieces(shown: _Shown, number: int, sawn: Sequence[Sawn], at: int) -> Iterator[str]:
    """Each piece of a lane: its mark on every board, its length, and its width where it is ripped further."""
    for offset, place in enumerate(shown.lanes[number]):
        marks = dict.fromkeys(_name(each.sources[at + offset]) for each in sawn)
        narrower = place.width != shown.board.lanes[number].width
        rip = f" × {shown.bars.tied(place.width)} wide" if narrower else ""
        yield f"{' / '.join(marks)}\u00a0{shown.bars.tied(place.length)}{rip}"


def _name(source: Source) -> str:
    return f"{source.mark} ({source.part})" if source.part else source.mark


def _say_left(shown: _Shown, number: int) -> str:
    start, end = shown.rest(number)
    if start >= end:
        return ""
    word = KEEP_WORD if shown.is_kept(end - start) else WASTE_WORD
    return f" Left: {shown.bars.tied(end - start)}, {word}."
