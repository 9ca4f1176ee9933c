"""Strings of dimensions round a view: what is measured stands with the views, where it is put here.

The printed parts of a string always add up to its printed whole: where lengths rounded one by one would
not, they are written from rounded positions.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from enum import StrEnum
from functools import lru_cache
from itertools import pairwise
from math import hypot, inf

from model.units import LengthStyle, format_length, round_length
from render.dimension_strokes import TEXT_GAP
from render.drawing import Dimension, Point
from render.extent import Box
from render.lettering import DESCENT, text_width

TEXT_HEIGHT = 3 / 25.4
"""Capitals of dimensions, inches on paper: 3 mm (ASME Y14.2 Table 1, from memory)."""
FIRST_LINE = 0.45
"""First dimension line off the view, inches on paper; at least 3/8 (ASME Y14.5M 1.7.1)."""
LINE_STEP = 0.34
"""From one dimension line to the next, inches on paper; at least 1/4 (ASME Y14.5M 1.7.1)."""
TEXT_CLEAR = 0.045
"""Clear between a text and its dimension line or its neighbour, inches on paper. Shop choice."""
TEXT_APART = 0.08
"""Further clear between lifted texts end to end, so that two are never read as one figure. Shop choice."""
FIRST_ROW = 0.345
"""From a dimension line to the far side of the first row of lifted texts, clear of the extension lines'
overrun and of texts on the line itself, inches on paper. Shop choice."""
ROW_STEP = 0.18
"""From one row of lifted texts to the next, inches on paper. Shop choice."""
ROWS_ASIDE = 3
"""After so many rows a text may stand over a line of the view that gives way to it. Shop choice."""
MOST_ROWS = 6
"""From this row on a text may stand as far aside as it takes."""
LONG = 0.8
"""Inches on paper; a text with a longer leader stands further aside if that is shorter. Shop choice."""
LAST_RESORT = 10
"""Where a text found no place in so many rows, all those of its string are spread. Shop choice."""
MOST_SPREAD = 5.2
"""Longer than this, inches on paper, no row of spread texts is where more rows spare it. Shop choice."""
ROWS_APART = 3
"""Rows from one row of spread texts to the next: where leaders pass the nearer one they are closer together
by so much. Shop choice."""
LEAST_SLANT = 0.35
"""Spread texts stand so far off their line that leaders rise by this much of what they go aside, where
MOST_ROWS allow, if they are in one row. Shop choice."""
SHORTEST = 1e-3
"""Stations nearer to each other than this, in model inches, are one."""


class Edge(StrEnum):
    """The side of a view that a string stands on."""

    BELOW = "below"
    ABOVE = "above"
    LEFT = "left"
    RIGHT = "right"

    @property
    def vertical(self) -> bool:
        """Whether strings on this side measure heights."""
        return self in (Edge.LEFT, Edge.RIGHT)

    @property
    def outward(self) -> float:
        """Which way away from the view is, along the axis across the string."""
        return 1.0 if self in (Edge.ABOVE, Edge.RIGHT) else -1.0


@dataclass(frozen=True, slots=True)
class Station:
    """A place measured to: `along` the string, and where `across` it the extension line starts.

    `shows` is the parameter that the distance from the station before stands for, if any; `says` is what is
    written for it instead of its length.
    """

    along: float
    across: float
    shows: str = ""
    says: str = ""


@dataclass(frozen=True, slots=True)
class String:
    """Stations in rising order along one side of a view; strings of one side come innermost first."""

    edge: Edge
    stations: tuple[Station, ...]


def measure(edge: Edge, *stations: tuple[float, float, str]) -> String:
    """A string from (along, across, shows) triples; stations that fall together are one."""
    kept: list[Station] = []
    for along, across, shows in stations:
        if not kept or along - kept[-1].along > SHORTEST:
            kept.append(Station(along, across, shows))
    return String(edge, tuple(kept))


def place_strings(
    strings: Sequence[String],
    outline: tuple[float, float, float, float],
    ratio: float,
    style: LengthStyle,
    standing: Sequence[tuple[Edge, float]] = (),
) -> tuple[Dimension, ...]:
    """Dimensions for all `strings` round a view whose outline is (left, bottom, right, top).

    On each side the strings follow each other outwards. A text too wide for its span, or in the way of
    an extension line that goes on to a string further out, is moved aside or lifted into a row of its
    own; the next string keeps clear of it. `standing` names lines of the view that run out through the
    strings of an edge, and where along them; a text lies over one only where it would else stand far off,
    and the line has to give way.
    """
    sides = {Edge.LEFT: outline[0], Edge.BELOW: outline[1], Edge.RIGHT: outline[2], Edge.ABOVE: outline[3]}
    placed: list[Dimension] = []
    for edge in (Edge.BELOW, Edge.ABOVE, Edge.LEFT, Edge.RIGHT):
        own = tuple(string for string in strings if string.edge is edge and len(string.stations) > 1)
        across = tuple(at for where, at in standing if where is edge)
        found = _place_side(own, sides[edge], across, ratio, style)
        if edge.vertical and (past := _list_past(placed, edge, sides[edge])) and _meet(found, past):
            reach = max(abs(box[0 if edge is Edge.LEFT else 2] - sides[edge]) for box in past)
            found = _place_side(own, sides[edge] + edge.outward * reach, across, ratio, style)
        placed.extend(found)
    return tuple(placed)


def _list_past(placed: Sequence[Dimension], edge: Edge, side: float) -> list[Box]:
    """Boxes of the level dimensions' texts that reach past the end of the view at `edge`."""
    boxes = (_text_box(dimension) for dimension in placed)
    return [box for box in boxes if (box[0] < side if edge is Edge.LEFT else box[2] > side)]


def _meet(dimensions: Sequence[Dimension], boxes: Sequence[Box]) -> bool:
    """Whether a text or the line of any of these plumb dimensions lies in one of `boxes`."""
    for dimension in dimensions:
        low, high = dimension.span
        line = (dimension.line, low, dimension.line, high)
        for x0, y0, x1, y1 in (_text_box(dimension), line):
            if any(
                x0 < right and left < x1 and y0 < top and bottom < y1 for left, bottom, right, top in boxes
            ):
                return True
    return False


def _text_box(dimension: Dimension) -> Box:
    """The box of its text, as far above the middle of its capitals as letters reach below it."""
    half, tall = text_width(dimension.text, dimension.height) / 2, (0.5 + DESCENT) * dimension.height
    x, y = dimension.text_at
    across, up = (tall, half) if dimension.vertical else (half, tall)
    return x - across, y - up, x + across, y + up


@lru_cache(maxsize=64)
def _place_side(
    strings: tuple[String, ...], side: float, across: tuple[float, ...], ratio: float, style: LengthStyle
) -> tuple[Dimension, ...]:
    """The strings of one edge, outwards from `side`. Remembered, since an edit leaves most edges alone."""
    offset = FIRST_LINE
    placed: list[Dimension] = []
    for i, string in enumerate(strings):
        passing = [station.along for outer in strings[i + 1 :] for station in outer.stations]
        line = side + string.edge.outward * offset * ratio
        dimensions, rows = _place_string(string, line, passing, across, ratio, style)
        placed.extend(dimensions)
        offset += LINE_STEP + (FIRST_ROW + (rows - 1) * ROW_STEP if rows else 0.0)
    return tuple(placed)


def strings_reach(dimensions: Sequence[Dimension], start: float) -> float:
    """How high the level `dimensions` above a view reach, from `start` where there are none."""
    tops = [max(d.line, d.text_at[1] + d.height / 2) for d in dimensions if not d.vertical]
    return max([start, *tops])


@dataclass(frozen=True, slots=True)
class _Span:
    """One distance of a string: its ends along the string, its text and how long that is."""

    before: Station
    after: Station
    text: str
    width: float

    @property
    def middle(self) -> float:
        return (self.before.along + self.after.along) / 2


class _Rows:
    """Where along a string texts may still stand, row by row; row 0 is on its line.

    `passing` lines do not give way to a text, `standing` ones do. `rests_outward` says whether texts on the
    line stand on its outer side, in the way of leaders.
    """

    def __init__(
        self,
        passing: Sequence[float],
        standing: Sequence[float],
        ratio: float,
        rests_outward: bool = False,
    ) -> None:
        self.height, self.most = TEXT_HEIGHT * ratio, MOST_SPREAD * ratio
        self.clear, self.gap = TEXT_CLEAR * ratio, TEXT_GAP * ratio
        self.apart = TEXT_APART * ratio
        self.passing = [(at, at) for at in passing]
        self.standing = [(at, at) for at in standing]
        self.texts: dict[int, list[tuple[float, float]]] = {}
        self.outward = rests_outward
        self.words: list[tuple[float, float, float, float]] = []
        self.leaders: list[tuple[float, float, float]] = []

    def rest(self, span: _Span) -> float | None:
        """The place on the line itself, None when the span has no room for its text."""
        room = (span.after.along - span.before.along - span.width) / 2 - self.clear
        at = None if room < 0 else self._nearest(0, span.middle, span.width, room, standing=self.standing)
        if at is not None and self.outward:
            self.words.append((at - span.width / 2, at + span.width / 2, 0.0, 2 * TEXT_CLEAR + TEXT_HEIGHT))
        return at

    def lift(self, span: _Span, first: int, wanted: float, way: float = 0.0) -> tuple[int, float] | None:
        """The free place nearest to `wanted` in row `first`, or in the next row out that has one nearby.

        With a `way` of -1 or 1 only places on that side of it will do, so that texts keep their order. None
        where LAST_RESORT rows have no such place.
        """
        for row in range(first, first + LAST_RESORT):
            at = self._open_place(row, row - first, span, wanted, way, 2.0 if row < MOST_ROWS else 1e3)
            if at is not None:
                place = self._shorten((row, at), first, span, wanted, way)
                self._keep(place, span)
                return place
        return None

    def _open_place(
        self, row: int, out: int, span: _Span, wanted: float, way: float, aside: float
    ) -> float | None:
        """The nearest place in a row, the one `out` from the first, no more of the text's widths `aside`."""
        standing = self.standing if out < ROWS_ASIDE else []
        return self._nearest(row, wanted, span.width, aside * span.width, way, span, standing)

    def _shorten(
        self, place: tuple[int, float], first: int, span: _Span, wanted: float, way: float
    ) -> tuple[int, float]:
        """The place; where its leader is long, one in a row nearer in that has a shorter one."""
        long, best = self._length(*place, span), place
        if long <= LONG * self.height / TEXT_HEIGHT:
            return place
        for row in range(first, place[0]):
            at = self._open_place(row, row - first, span, wanted, way, 1e3)
            if at is not None and self._length(row, at, span) < long:
                long, best = self._length(row, at, span), (row, at)
        return best

    def _length(self, row: int, at: float, span: _Span) -> float:
        """How long a lifted text's leader is, model inches."""
        start, end, far = _leader(row, at, span, self.gap)
        return hypot(end - start, far * self.height / TEXT_HEIGHT)

    def _keep(self, place: tuple[int, float], span: _Span) -> None:
        row, at = place
        half = span.width / 2 + self.apart
        self.texts.setdefault(row, []).append((at - half, at + half))
        self.words.append(_reach(row, at, span))
        self.leaders.append(_leader(row, at, span, self.gap))

    def spread(self, spans: Sequence[_Span]) -> list[tuple[int, float]]:
        """Places for all texts of a string in the order of their spans, in one row if that is not too long.

        Else those of the middle spans stand in rows further out. No leader passes another text: none goes
        higher than its own row, and each row begins beside the leaders that go on through it.
        """
        for count in range(1, MOST_ROWS):
            places = self._fan(spans, count)
            ends = [
                at + way * span.width / 2
                for (_, at), span in zip(places, spans, strict=True)
                for way in (-1, 1)
            ]
            if max(ends) - min(ends) <= self.most:
                break
        self.texts = {}
        for row, at in places:
            self.texts.setdefault(row, []).append((at, at))
        return places

    def _fan(self, spans: Sequence[_Span], count: int) -> list[tuple[int, float]]:
        """Places for all texts in so many rows, as near to their spans as their order allows."""
        half, apart = len(spans) // 2, self.clear + self.apart
        aside = sum(span.width + apart for span in spans) / 2 / count * TEXT_HEIGHT / self.height
        rise = LEAST_SLANT * aside
        most = MOST_ROWS if count == 1 else 2
        first = next((row for row in range(1, most) if _band(row, 0.0, 0.0)[2] >= rise), most)
        out = [count - 1 - int(abs(i - half) * count / (half + 1)) for i in range(len(spans))]
        rows = [first + ROWS_APART * step for step in out]
        places = [self._beyond(spans[half].middle, spans[half].width, 0.0)] * len(spans)
        for way in (1, -1):
            self._fan_out(spans, rows, places, way)
        return list(zip(rows, places, strict=True))

    def _fan_out(self, spans: Sequence[_Span], rows: Sequence[int], places: list[float], way: int) -> None:
        """Settle the `places` one after the other from the middle on, rising ones with a `way` of 1."""
        half = len(spans) // 2
        edge = places[half] + way * spans[half].width / 2
        leaders = [_leader(rows[half], places[half], spans[half], self.gap)]
        for i in range(half + way, len(spans) if way > 0 else -1, way):
            span = spans[i]
            if rows[i] != rows[i - way]:
                edge = _outmost(leaders, _band(rows[i], 0.0, span.width), way)
            limit = edge + way * (span.width / 2 + self.clear + self.apart)
            wanted = max(span.middle, limit) if way > 0 else min(span.middle, limit)
            places[i] = self._beyond(wanted, span.width, way)
            edge = places[i] + way * span.width / 2
            leaders.append(_leader(rows[i], places[i], span, self.gap))

    def _beyond(self, wanted: float, width: float, way: float) -> float:
        """The nearest place to `wanted` on its side that lies under no passing line."""
        half = width / 2 + self.clear
        places = [wanted, *(place for at, _ in self.passing for place in (at - half, at + half))]
        return min(
            (
                place
                for place in places
                if (place - wanted) * way >= 0
                and all(abs(at - place) >= half - 1e-9 for at, _ in self.passing)
            ),
            key=lambda place: abs(place - wanted),
        )

    def _is_open(self, row: int, at: float, span: _Span) -> bool:
        """Whether a text there covers no leader, and its own leader no text."""
        word, leader = _reach(row, at, span), _leader(row, at, span, self.gap)
        return not (
            any(_runs_through(other, word, self.clear) for other in self.leaders)
            or any(_runs_through(leader, other, self.clear) for other in self.words)
        )

    def _nearest(
        self,
        row: int,
        wanted: float,
        width: float,
        most: float,
        way: float = 0.0,
        led: _Span | None = None,
        standing: Sequence[tuple[float, float]] = (),
    ) -> float | None:
        """The nearest free place; for a text that is `led` to, one that leader and text are open at."""
        taken = [*self.passing, *standing, *self.texts.get(row, [])]
        half = width / 2 + self.clear

        def is_free(place: float) -> bool:
            low, high = place - half + 1e-9, place + half - 1e-9
            return all(b <= low or a >= high for a, b in taken) and (
                led is None or self._is_open(row, place, led)
            )

        if is_free(wanted):
            return wanted
        for place in sorted([place for a, b in taken for place in (a - half, b + half)], key=_away(wanted)):
            if abs(place - wanted) > most + 1e-9:
                return None
            if (place - wanted) * way >= -1e-9 and is_free(place):
                return place
        return None


def _away(wanted: float) -> Callable[[float], tuple[float, float]]:
    """Sorts places by how far off they are, the lower first of two."""
    return lambda place: (abs(place - wanted), place)


def _band(row: int, at: float, width: float) -> tuple[float, float, float, float]:
    """Where a lifted text lies: from where to where along the string, and off its line in paper inches."""
    far = FIRST_ROW + (row - 1) * ROW_STEP
    return at - width / 2, at + width / 2, far - TEXT_HEIGHT, far


def _reach(row: int, at: float, span: _Span) -> tuple[float, float, float, float]:
    """The same for a text with its brackets, which reach lower and higher than its figures."""
    low, high, near, far = _band(row, at, span.width)
    if "[" not in span.text:
        return low, high, near, far
    return low, high, near - DESCENT * TEXT_HEIGHT, far + DESCENT * TEXT_HEIGHT


def _leader(row: int, at: float, span: _Span, gap: float) -> tuple[float, float, float]:
    """A lifted text's leader: where along the string it starts and ends, and how far off the line it goes.

    It ends a `gap` beside the text or before it, or both.
    """
    low, high, near, _ = _band(row, at, span.width)
    return span.middle, min(max(span.middle, low - gap), high + gap), near - TEXT_GAP


def _outmost(
    leaders: Sequence[tuple[float, float, float]], word: tuple[float, float, float, float], way: float
) -> float:
    """How far leaders reach one way along the string where they pass a row of texts like `word`.

    What is below and above the capitals counts.
    """
    _, _, near, over = word
    near, over = near - DESCENT * TEXT_HEIGHT, over + DESCENT * TEXT_HEIGHT
    places = [
        start + (end - start) * min(off, far) / far for start, end, far in leaders for off in (near, over)
    ]
    return max(place * way for place in places) * way


def _runs_through(
    leader: tuple[float, float, float], word: tuple[float, float, float, float], clear: float
) -> bool:
    """Whether a leader passes over a text."""
    start, end, far = leader
    low, high, near, over = word
    first, last = max(near, 0.0), min(over, far)
    if last <= first:
        return False
    a, b = (start + (end - start) * off / far for off in (first, last))
    return max(a, b) > low - clear / 2 and min(a, b) < high + clear / 2


def _place_string(
    string: String,
    line: float,
    passing: Sequence[float],
    standing: Sequence[float],
    ratio: float,
    style: LengthStyle,
) -> tuple[list[Dimension], int]:
    """The dimensions of one string, and how many rows of lifted texts stand outside its line."""
    spans = _list_spans(string, ratio, style)
    rows = _Rows(passing, standing, ratio, string.edge in (Edge.ABOVE, Edge.LEFT))
    places: list[tuple[int, float] | None] = []
    for span in spans:
        resting = rows.rest(span)
        places.append(None if resting is None else (0, resting))
    for first, last in _runs_without_place(places):
        lifted = _lift_run(spans[first:last], rows)
        if lifted is None:
            places = [*rows.spread(spans)]
            break
        places[first:last] = lifted
    dimensions = [
        _dimension(string.edge, span, line, place, ratio)
        for span, place in zip(spans, places, strict=True)
        if place
    ]
    return dimensions, max(rows.texts, default=0)


def format_dimension(value: float, style: LengthStyle) -> str:
    """What a dimension says: millimetres without their unit, which stands in the title block (ISO 129-1)."""
    return format_length(value, style).removesuffix(" mm")


def _list_spans(string: String, ratio: float, style: LengthStyle) -> list[_Span]:
    pairs = list(pairwise(string.stations))
    lengths = _printed_lengths(string, style)
    texts = [after.says or format_dimension(n, style) for (_, after), n in zip(pairs, lengths, strict=True)]
    return [
        _Span(before, after, text, text_width(text, TEXT_HEIGHT * ratio))
        for (before, after), text in zip(pairs, texts, strict=True)
    ]


def _printed_lengths(string: String, style: LengthStyle) -> list[float]:
    """Each length rounded by itself where that adds up to the printed whole, else from rounded positions."""
    places = [station.along - string.stations[0].along for station in string.stations]
    whole = round_length(places[-1], style)
    plain = [round_length(after - before, style) for before, after in pairwise(places)]
    if abs(sum(plain) - whole) < SHORTEST:
        return plain
    rounded = [round_length(place, style) for place in places]
    return [after - before for before, after in pairwise(rounded)]


def _runs_without_place(places: Sequence[tuple[int, float] | None]) -> list[tuple[int, int]]:
    runs, start = [], None
    for i, place in enumerate([*places, (0, 0.0)]):
        if place is None and start is None:
            start = i
        elif place is not None and start is not None:
            runs.append((start, i))
            start = None
    return runs


def _lift_run(spans: Sequence[_Span], rows: _Rows) -> list[tuple[int, float]] | None:
    """Places for neighbouring spans that are all too narrow; None where one finds none.

    From either end inwards each text stands one row further out and off its neighbours' middles, so
    that no leader passes through a text.
    """
    places: list[tuple[int, float] | None] = [None] * len(spans)
    half = len(spans) // 2
    for row, i in enumerate(range(half), start=1):
        limit = spans[i + 1].middle - rows.clear - spans[i].width / 2
        places[i] = rows.lift(spans[i], row, min(spans[i].middle, limit), -1.0)
    for row, i in enumerate(range(len(spans) - 1, half - 1, -1), start=1):
        limit = spans[i - 1].middle + rows.clear + spans[i].width / 2 if i else -inf
        places[i] = rows.lift(spans[i], row, max(spans[i].middle, limit), 1.0 if i else 0.0)
    found = [place for place in places if place is not None]
    return found if len(found) == len(places) else None


def _dimension(edge: Edge, span: _Span, line: float, place: tuple[int, float], ratio: float) -> Dimension:
    row, along = place
    height = TEXT_HEIGHT * ratio
    if row == 0:
        # Read from below and from the right: above a level line, to the left of a plumb one.
        across = line + (-1.0 if edge.vertical else 1.0) * (TEXT_CLEAR * ratio + height / 2)
    else:
        across = line + edge.outward * ((FIRST_ROW + (row - 1) * ROW_STEP) * ratio - height / 2)
    points: list[Point] = [(s.along, s.across) for s in (span.before, span.after)]
    if edge.vertical:
        points = [(y, x) for x, y in points]
    text_at = (across, along) if edge.vertical else (along, across)
    return Dimension(
        points[0], points[1], edge.vertical, line, span.text, text_at, height, row > 0, span.after.shows
    )
