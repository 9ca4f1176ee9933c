"""Steps on paper: each has its cell, its picture and words, and nothing runs over anything."""

from __future__ import annotations

import pytest
from shapely import Polygon, box

from app.demo import read_demo
from model.job import Job, default_job, with_texts
from model.steps.plan import SET_OUT_TITLE, plan_steps
from model.steps.step import Where
from model.surround import plan_surround
from model.takeoff.takeoff import take_off
from render.chapters.steps import STEPS, draft_steps
from render.desk import Desk, Draft
from render.drawing import Fill, Lines, Pen, Region, Text
from render.extent import drawing_extent, text_corners
from render.sheets import Block, paper_size, safe_area
from render.step_scenes import list_shown
from render.step_sheet import count_cells
from render.tables import SMALL

ODD = (
    ("over.on", "yes"),
    ("column.taper", "1"),
    ("hearth.height", "14"),
    ("plumb.left", "1"),
    ("capital.on", "yes"),
    ("plinth_cap.on", "yes"),
    ("panel_mould.on", "yes"),
)


def desk_of(job: Job, paper: str) -> Desk:
    surround = plan_surround(job)
    return Desk(surround, paper_size(paper), takeoff=take_off(surround))


@pytest.fixture(scope="module", params=["brick letter", "gas a3", "odd letter"])
def drafted(request: pytest.FixtureRequest) -> tuple[Desk, list[Draft]]:
    name, paper = request.param.split()
    job = with_texts(default_job(), ODD) if name == "odd" else read_demo(name)
    desk = desk_of(job, paper)
    return desk, draft_steps(desk)


def texts_of(draft: Draft) -> list[tuple[Text, Polygon]]:
    """All words of a page with the paper they take."""
    found = []
    for placed in draft.placed:
        ratio = placed.drawing.ratio
        for mark in placed.drawing.marks:
            if isinstance(mark, Text):
                corners = [
                    (x / ratio + placed.at[0], y / ratio + placed.at[1]) for x, y in text_corners(mark)
                ]
                found.append((mark, Polygon(corners)))
    return found


def test_every_step_has_its_number_and_every_step_with_boards_its_picture(
    drafted: tuple[Desk, list[Draft]],
) -> None:
    desk, drafts = drafted
    assert desk.takeoff is not None
    steps = plan_steps(desk.surround, desk.takeoff)
    titles = [text.text for draft in drafts for text, _ in texts_of(draft) if text.bold]
    for number, step in enumerate(steps, start=1):
        assert f"{number}  {step.title}" in titles
    names = [placed.name for draft in drafts for placed in draft.placed if placed.name.startswith("step")]
    assert names == [
        f"step_{n}"
        for n, step in enumerate(steps, start=1)
        if step.put_on or step.wide or step.where is Where.SITE
    ]


def test_nothing_runs_out_of_its_page_or_over_other_words(drafted: tuple[Desk, list[Draft]]) -> None:
    desk, drafts = drafted
    room = box(*safe_area(*desk.size, Block.BELOW)).buffer(0.01)
    for draft in drafts:
        words = texts_of(draft)
        for n, (text, area) in enumerate(words):
            assert room.contains(area), text.text
            for other, taken in words[:n]:
                assert area.buffer(-0.005).intersection(taken).area < 1e-5, (text.text, other.text)
        for placed in draft.placed:
            low_h, low_v, high_h, high_v = drawing_extent(placed.drawing)
            ratio = placed.drawing.ratio
            corners = (low_h / ratio, low_v / ratio, high_h / ratio, high_v / ratio)
            at = (placed.at[0], placed.at[1], placed.at[0], placed.at[1])
            assert room.contains(box(*(value + off for value, off in zip(corners, at, strict=True)))), (
                placed.name
            )


def test_no_capitals_are_below_the_least(drafted: tuple[Desk, list[Draft]]) -> None:
    _, drafts = drafted
    for draft in drafts:
        for placed in draft.placed:
            for mark in placed.drawing.marks:
                if isinstance(mark, Text):
                    assert mark.height / placed.drawing.ratio >= SMALL - 1e-9


def test_pictures_differ_without_colour(drafted: tuple[Desk, list[Draft]]) -> None:
    """Boards of the step have dark outlines, those before it pale ones."""
    desk, drafts = drafted
    assert desk.takeoff is not None
    steps = plan_steps(desk.surround, desk.takeoff)
    bare_wall = f"step_{1 + next(n for n, step in enumerate(steps) if step.title == SET_OUT_TITLE)}"
    pictures = [p for draft in drafts for p in draft.placed if p.name.startswith("step")]
    for placed in pictures:
        marks = placed.drawing.marks
        fills = {mark.fill for mark in marks if isinstance(mark, Region)}
        if placed.name == bare_wall:
            assert Fill.CUT_WOOD not in fills
            continue
        assert Fill.CUT_WOOD in fills
        pens = {mark.pen for mark in marks if isinstance(mark, Lines)}
        assert Pen.EDGE in pens
        assert (Pen.BEYOND in pens) == bool(fills - {Fill.CUT_WOOD})


def test_two_to_six_steps_stand_on_a_page_of_any_size() -> None:
    for paper in ("letter", "tabloid", "a4", "a3"):
        columns, rows = count_cells(safe_area(*paper_size(paper), Block.BELOW))
        assert 2 <= columns * rows <= 6


def test_without_a_takeoff_there_are_no_steps() -> None:
    assert draft_steps(Desk(plan_surround(default_job()), paper_size("letter"))) == []


LONG_WORDS = [("panel.kind", "solid")]
WIDE = [("frieze.kind", "plain"), ("frieze.place", "in_front")]


@pytest.mark.parametrize("pairs", [LONG_WORDS, WIDE])
@pytest.mark.parametrize("paper", ["letter", "a4", "tabloid"])
def test_no_picture_is_a_speck_beside_its_words(pairs: list[tuple[str, str]], paper: str) -> None:
    for draft in draft_steps(desk_of(with_texts(read_demo("brick"), pairs), paper)):
        for placed in draft.placed:
            if placed.name.startswith("step_"):
                left, low, right, high = drawing_extent(placed.drawing)
                assert max(right - left, high - low) / placed.drawing.ratio > 1.4, placed.name
                named = any(isinstance(mark, Text) for mark in placed.drawing.marks)
                assert named or not _has_names(pairs, paper, placed.name), placed.name


def _has_names(pairs: list[tuple[str, str]], paper: str, name: str) -> bool:
    desk = desk_of(with_texts(read_demo("brick"), pairs), paper)
    assert desk.takeoff is not None
    shown = list_shown(desk.surround, plan_steps(desk.surround, desk.takeoff), desk.takeoff.glue_ups)
    return bool(shown[int(name.removeprefix("step_")) - 1].named)


def test_pages_after_the_first_say_so(drafted: tuple[Desk, list[Draft]]) -> None:
    titles = [draft.title for draft in drafted[1]]
    assert titles[0] == STEPS
    assert set(titles[1:]) <= {f"{STEPS}, continued"}
