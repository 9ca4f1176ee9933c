"""A day plan drawn: a row for each task, its work as bars, its drying hatched, nights narrow.

Which task is done when is worked out in model.days. Paper inches; nothing rests on colour.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import ceil, floor

from model.days.calendar import CLOCK, Slot, find_day
from model.days.network import Task
from model.steps.work import round_up
from render.drawing import MM, Anchor, Fill, Hatch, Lines, Mark, Pen, Polyline, Region, Ring, Text
from render.lettering import shorten_text, text_width
from render.tables import SMALL, Strip

ROW_HEIGHT = 6.2 * MM
HEAD = 7 * MM
BAR = 3.6 * MM
NIGHT = 0.3
"""Width of a night, as a part of a day's. Shop choice."""
NAMES = 0.3
"""Part of the width for what the tasks are called. Shop choice."""
HATCHED = 1.1 * MM
LEAD_HATCH = 45.0
NOT_LESS = 0.8 * MM
"""A bar is no shorter than this, so that it is seen."""


@dataclass(frozen=True, slots=True)
class Days:
    """The scale of the plan: its whole `width`, how many `days`, and hours worked a `day`."""

    width: float
    days: int
    day: float

    @property
    def left(self) -> float:
        """Where the first morning is."""
        return NAMES * self.width

    @property
    def step(self) -> float:
        """From one morning to the next."""
        return (self.width - self.left) / self.days

    @property
    def worked(self) -> float:
        """Width of a day's working hours."""
        return self.step / (1 + (NIGHT if self.day < CLOCK else 0.0))

    def place(self, hour: float) -> float:
        """Where an hour of the clock since the first morning lies; nights are drawn together."""
        day = min(floor(hour / CLOCK + 1e-9), self.days)
        into = hour - day * CLOCK
        if into <= self.day:
            return self.left + day * self.step + into / self.day * self.worked
        night = (into - self.day) / (CLOCK - self.day)
        return self.left + day * self.step + self.worked + night * (self.step - self.worked)

    def start(self, hour: float) -> float:
        """Where a bar begins: the place of its hour, or so far before the end that the least bar has room."""
        return min(self.place(hour), self.width - NOT_LESS)


def count_days(slots: Sequence[Slot]) -> int:
    """Days until everything is done and dry, one at least."""
    return max(1, ceil(max((slot.ready for slot in slots), default=0.0) / CLOCK - 1e-9))


def count_worked(slots: Sequence[Slot]) -> int:
    """Days on which anybody works."""
    return len({find_day(a)[0] for slot in slots for a, b in slot.work if b > a})


def bar_strips(tasks: Sequence[Task], slots: Sequence[Slot], days: Days) -> tuple[Strip, ...]:
    """Headings with the days, then a row for each task under its group; numbered in order."""
    head = _head(days)
    strips = [Strip(head.height, head.marks, leads=True)]
    group = ""
    for number, (task, slot) in enumerate(zip(tasks, slots, strict=True), start=1):
        if task.group != group:
            group = task.group
            strips.append(Strip(ROW_HEIGHT, _title(group, days), repeat=head, leads=True))
        strips.append(Strip(ROW_HEIGHT, tuple(_row(number, task, slot, days)), repeat=head))
    return tuple(strips)


def _head(days: Days) -> Strip:
    marks: list[Mark] = [Lines(Pen.EDGE, ((0.0, 0.0, days.width, 0.0),))]
    y = -HEAD + 0.45 * SMALL + 1 * MM
    marks.append(Text("Task", (0.0, y), SMALL, bold=True))
    for day in range(days.days):
        room = days.worked
        name = next((w for w in (f"Day {day + 1}", str(day + 1)) if text_width(w, SMALL, True) < room), "")
        at = days.place(day * CLOCK) + days.worked / 2
        marks.append(Text(name, (at, y), SMALL, Anchor.MIDDLE, bold=True))
    marks.append(Lines(Pen.RULE, ((0.0, -HEAD, days.width, -HEAD), *_mornings(days, HEAD))))
    return Strip(HEAD, tuple(marks))


def _mornings(days: Days, height: float) -> Iterator[tuple[float, float, float, float]]:
    """A line where each day begins and where it ends."""
    for day in range(days.days):
        for hour in {day * CLOCK, day * CLOCK + min(days.day, CLOCK)}:
            x = days.place(hour)
            yield (x, 0.0, x, -height)


def _title(group: str, days: Days) -> tuple[Mark, ...]:
    y = -ROW_HEIGHT / 2 - SMALL / 2
    band = ((0.0, 0.0), (days.width, 0.0), (days.width, -ROW_HEIGHT), (0.0, -ROW_HEIGHT))
    return (Region(Fill.BAND, (band,)), Text(group, (1 * MM, y), SMALL, bold=True))


def _row(number: int, task: Task, slot: Slot, days: Days) -> Iterator[Mark]:
    y = -ROW_HEIGHT / 2 - SMALL / 2
    hours = f"{round_up(task.hours):g} h" + (
        f" \N{MULTIPLICATION SIGN} {task.hands}" if task.hands > 1 else ""
    )
    room = days.left - 2 * MM
    yield Text(str(number), (5 * MM, y), SMALL, Anchor.END, bold=slot.leads)
    name = shorten_text(task.name, SMALL, room - 7 * MM - text_width(hours, SMALL) - 2 * MM, slot.leads)
    yield Text(name, (7 * MM, y), SMALL, bold=slot.leads)
    yield Text(hours, (room, y), SMALL, Anchor.END)
    yield Lines(Pen.RULE, ((0.0, -ROW_HEIGHT, days.width, -ROW_HEIGHT), *_mornings(days, ROW_HEIGHT)))
    if slot.dry:
        yield from draw_drying(days.start(slot.dry[0]), days.place(slot.dry[1]), -ROW_HEIGHT / 2)
    for begin, end in slot.work:
        if end > begin:
            yield from draw_work(days.start(begin), days.place(end), -ROW_HEIGHT / 2, slot.leads)


def draw_work(left: float, right: float, middle: float, leads: bool) -> Iterator[Mark]:
    """A bar of work: dark where it is on the leading line, white otherwise, outlined both ways."""
    ring = _bar(left, max(right, left + NOT_LESS), middle, BAR)
    yield Region(Fill.OPENING if leads else Fill.PAPER, (ring,))
    yield Polyline(Pen.EDGE, ring, closed=True)


def draw_drying(left: float, right: float, middle: float) -> Iterator[Mark]:
    """A lower hatched bar."""
    ring = _bar(left, max(right, left + NOT_LESS), middle, 0.6 * BAR)
    yield Region(Fill.PAPER, (ring,))
    yield Hatch(Pen.HATCH, (ring,), LEAD_HATCH, HATCHED)
    yield Polyline(Pen.ARRIS, ring, closed=True)


def _bar(left: float, right: float, middle: float, height: float) -> Ring:
    low, high = middle - height / 2, middle + height / 2
    return ((left, low), (right, low), (right, high), (left, high))


def legend_strip() -> Strip:
    """What the bars mean."""
    marks: list[Mark] = []
    x, middle = 0.0, -ROW_HEIGHT / 2
    for kind, words in (
        ("lead", "work that decides when all is done (bold)"),
        ("work", "other work"),
        ("dry", "glue, filler, caulk or finish drying"),
    ):
        marks += (
            draw_drying(x, x + 8 * MM, middle)
            if kind == "dry"
            else draw_work(x, x + 8 * MM, middle, kind == "lead")
        )
        marks.append(Text(words, (x + 10 * MM, middle - SMALL / 2), SMALL))
        x += 10 * MM + text_width(words, SMALL) + 6 * MM
    return Strip(ROW_HEIGHT, tuple(marks), leads=True)
