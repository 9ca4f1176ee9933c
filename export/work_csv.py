"""What is done, in what order and when, as comma-separated text; what stands in it is found in model."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from export.csv import decimal_text, unit_name, write_table
from model.days.calendar import NEAR, find_day
from model.days.plan import DayPlan
from model.days.slack import list_beside
from model.steps.finishing import Finish
from model.steps.step import Step
from model.steps.work import round_up
from model.surround import Surround
from model.takeoff.anchor_materials import choose_length
from model.takeoff.anchors import plan_anchors
from model.takeoff.cut_list import thickness_style
from model.takeoff.takeoff import Takeoff
from model.units import LengthStyle
from render.finishing_sheet import say_amount
from render.materials_sheet import describe_basis
from render.step_words import say_driven, say_glue


def write_steps_csv(steps: Sequence[Step], surround: Surround, takeoff: Takeoff) -> str:
    """The assembly steps as RFC 4180 text, a line for each; boards by their marks, hours of all hands."""
    heading = (
        "step", "where", "title", "parts", "puts_on", "brings", "already_there", "driven", "glued", "anchors",
        "hours", "people", "clamped_hours", "notes",
    )  # fmt: skip
    rows = (_step_row(number, step, surround, takeoff) for number, step in enumerate(steps, start=1))
    return write_table(heading, rows)


def _step_row(number: int, step: Step, surround: Surround, takeoff: Takeoff) -> tuple[str | int, ...]:
    style = surround.job.about.length_style
    marks = (_list_marks(boards, surround) for boards in (step.boards, step.brought, step.there))
    return (
        number,
        str(step.where),
        step.title,
        "; ".join(step.parts),
        *marks,
        say_driven(step, takeoff, style),
        say_glue(step, surround, takeoff),
        " ".join(str(anchor + 1) for anchor in step.anchors),
        _hours(round_up(step.hours)),
        step.hands,
        _hours(step.dries),
        " ".join(step.notes),
    )


def _list_marks(boards: Sequence[int], surround: Surround) -> str:
    return " ".join(surround.marks[board] for board in boards)


def write_days_csv(plan: DayPlan) -> str:
    """The day plan as RFC 4180 text, a line for each task, days and tasks counted from 1.

    ``begin_hour`` and the like are hours after that day's work begins. ``may_slip`` are working hours by
    which the task may begin later, ``beside`` the tasks that may be done before, after or with it.
    """
    heading = (
        "task", "group", "title", "hours", "people", "begin_day", "begin_hour", "end_day", "end_hour",
        "dry_day", "dry_hour", "decides", "may_slip", "after", "beside",
    )  # fmt: skip
    return write_table(heading, _day_rows(plan))


def _day_rows(plan: DayPlan) -> Iterator[tuple[str | int, ...]]:
    found = zip(plan.tasks, plan.slots, plan.slack, list_beside(plan.tasks), strict=True)
    for number, (task, slot, slack, beside) in enumerate(found, start=1):
        yield (
            number,
            task.group,
            task.name,
            _hours(round_up(task.hours)),
            min(task.hands, plan.crew),
            *_day_and_hour(slot.begin),
            *_day_and_hour(slot.work[-1][1]),
            *(_day_and_hour(slot.ready) if slot.dry else ("", "")),
            "yes" if slot.leads else "no",
            _hours(slack),
            _numbers(task.after),
            _numbers(beside),
        )


def _day_and_hour(at: float) -> tuple[int, str]:
    day, into = find_day(at)
    return day + 1, _hours(into)


def _hours(hours: float) -> str:
    return f"{hours:.2f}".rstrip("0").rstrip(".") if hours > NEAR else "0"


def _numbers(places: Sequence[int]) -> str:
    return " ".join(str(place + 1) for place in places)


def write_finishing_csv(finishing: Sequence[Finish], style: LengthStyle) -> str:
    """The finishing as RFC 4180 text, a line for each step in order."""
    heading = ("step", "when", "title", "how", "where", "take", "hours", "dries_hours")
    rows = (_finish_row(number, finish, style) for number, finish in enumerate(finishing, start=1))
    return write_table(heading, rows)


def _finish_row(number: int, finish: Finish, style: LengthStyle) -> tuple[str | int, ...]:
    return (
        number,
        "loose" if finish.loose else "up",
        finish.title,
        finish.how,
        "; ".join(f"{m.name}: {describe_basis(m.basis, style)}" for m in finish.materials),
        "; ".join(say_amount(material, finish.share, style) for material in finish.materials),
        _hours(round_up(finish.hours)),
        _hours(finish.waits),
    )


def write_anchors_csv(surround: Surround) -> str:
    """The anchors as RFC 4180 text: across from the opening's centre line, up from the hearth.

    ``length_`` is what is bought. A nailer that finds no anchor has a line without a number or a place.
    """
    style = surround.job.about.length_style
    unit, fine = unit_name(style), thickness_style(style)
    heading = (
        "anchor",
        f"across_{unit}",
        f"up_{unit}",
        "through",
        "role",
        "into",
        f"length_{unit}",
        "holds_the_top",
    )
    plan = plan_anchors(surround)
    rows = [
        (
            number,
            decimal_text(anchor.x, fine),
            decimal_text(anchor.y, fine),
            surround.marks[anchor.board],
            surround.boards[anchor.board].role,
            anchor.into,
            decimal_text(choose_length(anchor.into, surround.boards[anchor.board].extent("z")), fine),
            "yes" if anchor.upper else "no",
        )
        for number, anchor in enumerate(plan.anchors, start=1)
    ]
    bare = [
        ("", "", "", surround.marks[i], surround.boards[i].role, "no sound place found", "", "no")
        for i in plan.loose
    ]
    return write_table(heading, [*rows, *bare])
