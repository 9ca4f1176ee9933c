"""Finishing and the day plan on paper: every step and task there, nothing outside the page or over itself."""

from __future__ import annotations

import pytest
from shapely import Polygon, box

from app.demo import read_demo
from model.days.plan import plan_days
from model.job import default_job, with_texts
from model.steps.finishing import list_finishing
from model.surround import plan_surround
from model.takeoff.takeoff import take_off
from render.chapters.day_plan import draft_day_plan
from render.chapters.finishing import draft_finishing
from render.desk import Desk, Draft
from render.drawing import Text
from render.extent import drawing_extent, text_corners
from render.sheets import Block, paper_size, safe_area


@pytest.fixture(scope="module", params=["brick letter", "gas a4", "slow letter"])
def desk(request: pytest.FixtureRequest) -> Desk:
    name, paper = request.param.split()
    slow = [("times.crew", "1"), ("times.day", "2"), ("times.cure", "160"), ("times.hard", "700")]
    job = with_texts(default_job(), slow) if name == "slow" else read_demo(name)
    surround = plan_surround(job)
    return Desk(surround, paper_size(paper), takeoff=take_off(surround))


def words_of(drafts: list[Draft]) -> list[str]:
    marks = [mark for draft in drafts for placed in draft.placed for mark in placed.drawing.marks]
    return [mark.text for mark in marks if isinstance(mark, Text)]


def test_every_step_of_finishing_is_told_with_its_drying_time(desk: Desk) -> None:
    assert desk.takeoff is not None
    words = " ".join(words_of(draft_finishing(desk)))
    for finish in list_finishing(desk.surround.job, desk.takeoff.materials):
        assert all(word in words for word in finish.title.split())
        assert not finish.waits or f"{finish.waits:g} h" in words


def test_every_task_has_its_row(desk: Desk) -> None:
    assert desk.takeoff is not None
    words = words_of(draft_day_plan(desk))
    for number, task in enumerate(plan_days(desk.surround, desk.takeoff).tasks, start=1):
        assert str(number) in words
        assert task.name in words or any(w.endswith("…") and task.name.startswith(w[:-1]) for w in words)


def test_nothing_leaves_the_page_or_covers_other_words(desk: Desk) -> None:
    room = box(*safe_area(*desk.size, Block.BELOW)).buffer(0.02)
    for draft in (*draft_finishing(desk), *draft_day_plan(desk)):
        for placed in draft.placed:
            assert room.contains(box(*drawing_extent(placed.drawing))), draft.title
            areas = [Polygon(text_corners(m)) for m in placed.drawing.marks if isinstance(m, Text) and m.text]
            for n, area in enumerate(areas):
                assert not any(area.buffer(-0.01).intersects(other.buffer(-0.01)) for other in areas[:n])
