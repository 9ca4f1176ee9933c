"""Steps, days, finishing and anchors as tables: nothing lost, figures that agree with the plan."""

from __future__ import annotations

import csv
import io

import pytest

from app.demo import list_demos, read_demo
from export.work_csv import write_anchors_csv, write_days_csv, write_finishing_csv, write_steps_csv
from model.days.plan import plan_days
from model.job import with_texts
from model.steps.finishing import list_finishing
from model.steps.plan import plan_steps
from model.surround import plan_surround
from model.takeoff.anchors import plan_anchors
from model.takeoff.takeoff import take_off


def _read(text: str) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(text, newline="")))


@pytest.mark.parametrize("name", list_demos())
def test_every_board_is_put_on_in_one_step_and_every_anchor_set_in_one(name):
    surround = plan_surround(read_demo(name))
    taken = take_off(surround)
    rows = _read(write_steps_csv(plan_steps(surround, taken), surround, taken))
    put_on = [mark for row in rows for mark in row["puts_on"].split()]
    assert sorted(put_on) == sorted(surround.marks)
    set_anchors = [int(number) for row in rows for number in row["anchors"].split()]
    assert sorted(set_anchors) == list(range(1, len(plan_anchors(surround).anchors) + 1))
    assert [row["step"] for row in rows] == [str(number) for number in range(1, len(rows) + 1)]


def test_days_and_hours_are_those_of_the_plan():
    surround = plan_surround(read_demo("brick"))
    plan = plan_days(surround, take_off(surround))
    for row, task, slot in zip(_read(write_days_csv(plan)), plan.tasks, plan.slots, strict=True):
        begin = 24 * (int(row["begin_day"]) - 1) + float(row["begin_hour"])
        assert begin == pytest.approx(slot.begin, abs=0.006)
        assert (row["dry_day"] != "") == (slot.dry is not None)
        assert tuple(int(number) - 1 for number in row["after"].split()) == task.after
        assert (row["decides"] == "yes") == slot.leads
    assert any(row["may_slip"] == "0" for row in _read(write_days_csv(plan)))


def test_finishing_has_a_line_for_each_step_with_what_it_takes():
    job = read_demo("bedroom")
    finishing = list_finishing(job, take_off(plan_surround(job)).materials)
    rows = _read(write_finishing_csv(finishing, job.about.length_style))
    assert [row["title"] for row in rows] == [finish.title for finish in finishing]
    assert all("gal" in row["take"] for row in rows if "coat" in row["title"])


@pytest.mark.parametrize(("units", "unit", "factor"), [("inches", "in", 1.0), ("millimetres", "mm", 25.4)])
def test_anchors_stand_where_they_are_planned_in_the_jobs_unit(units, unit, factor):
    surround = plan_surround(with_texts(read_demo("brick"), [("job.units", units)]))
    anchors = plan_anchors(surround).anchors
    for row, anchor in zip(_read(write_anchors_csv(surround)), anchors, strict=True):
        assert float(row[f"across_{unit}"]) == pytest.approx(
            anchor.x * factor, abs=0.51 if factor > 1 else 1 / 32
        )
        assert float(row[f"up_{unit}"]) == pytest.approx(
            anchor.y * factor, abs=0.51 if factor > 1 else 1 / 32
        )
        assert row["through"] == surround.marks[anchor.board]


def test_a_nailer_without_an_anchor_has_a_line_that_says_so():
    rows = _read(write_anchors_csv(plan_surround(read_demo("too-close"))))
    bare = [row for row in rows if not row["anchor"]]
    assert [(row["through"], row["into"]) for row in bare] == [
        ("N1b", "no sound place found"),
        ("N1d", "no sound place found"),
    ]
    assert all(float(row["length_in"]) >= 2 for row in rows if row["anchor"])
