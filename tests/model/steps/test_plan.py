"""Claims about the order of the work, on any design that can be drawn."""

from __future__ import annotations

from collections import Counter

import pytest
from hypothesis import given, settings

from app.demo import read_demo
from model.board import StockKind
from model.build.access_panel import ACCESS_PANEL
from model.job import Job, default_job, with_texts
from model.steps.plan import plan_steps
from model.steps.step import Step, Where
from model.steps.touching import touching_of
from model.surround import Surround
from model.takeoff.anchors import plan_anchors
from model.takeoff.fasteners import Means, count_fixings
from model.takeoff.takeoff import Takeoff
from tests.planned import plan_of, take
from tests.strategies import jobs

DEMOS = ("brick", "gas", "bedroom", "too-close")
FEW = settings(max_examples=10)


def planned(job: Job) -> tuple[Surround, Takeoff, tuple[Step, ...]]:
    surround, takeoff = plan_of(job), take(job)
    return surround, takeoff, plan_steps(surround, takeoff)


@pytest.fixture(scope="module", params=DEMOS)
def demo(request: pytest.FixtureRequest) -> tuple[Surround, Takeoff, tuple[Step, ...]]:
    return planned(read_demo(request.param))


@FEW
@given(jobs())
def test_the_steps_of_any_design_use_every_board_and_every_fastener_once(job: Job) -> None:
    surround, takeoff, steps = planned(job)
    assert sorted(i for step in steps for i in step.boards) == list(range(len(surround.boards)))
    assert sorted(n for step in steps for n in step.fixings) == list(range(len(takeoff.fixings)))
    assert sorted(n for step in steps for n in step.anchors) == list(
        range(len(plan_anchors(surround).anchors))
    )
    total: Counter[tuple[Means, float]] = Counter()
    for step in steps:
        for means, length, count, _ in count_fixings([takeoff.fixings[n] for n in step.fixings]):
            total[means, length] += count
    assert total == {(m, long): count for m, long, count, _ in count_fixings(takeoff.fixings)}
    _check_order(surround, takeoff, steps)


def _check_order(surround: Surround, takeoff: Takeoff, steps: tuple[Step, ...]) -> None:
    touching = touching_of(surround, takeoff)
    made: set[int] = set()
    up: set[int] = set()
    for step in steps:
        on, there = set(step.put_on), set(step.there)
        assert not set(step.boards) & made, "nothing is put together twice"
        assert set(step.brought) <= made, "what is brought was made before"
        assert there <= made, "what is there was put on before"
        for n in step.fixings:
            fixing = takeoff.fixings[n]
            assert {fixing.through, fixing.into} <= on | there
        for group in _groups(on, touching.areas):
            touches = any(set(pair) & group and set(pair) & there for pair in touching.areas)
            on_site = step.where is Where.SITE and any(i in touching.site for i in group)
            begins = step.where is Where.BENCH and (not there or len(group) > 1)
            assert touches or on_site or begins, f"{step.title}: {[surround.marks[i] for i in group]}"
        made |= set(step.boards)
        if step.where is Where.SITE:
            assert there == up
            up |= on
    assert up == set(range(len(surround.boards))), "all of it goes up"


def _groups(members: set[int], pairs: object) -> list[set[int]]:
    """Members that hang together, found by walking; not the code under test."""
    left, groups = set(members), []
    while left:
        group, edge = set(), {left.pop()}
        while edge:
            group |= edge
            edge = {j for pair in pairs for j in pair if set(pair) & edge and j in left}  # type: ignore[attr-defined]
            left -= edge
        groups.append(group)
    return groups


def test_nothing_goes_up_before_what_carries_it(demo: tuple[Surround, Takeoff, tuple[Step, ...]]) -> None:
    surround, _, steps = demo
    up = [step for step in steps if step.where is Where.SITE]
    first = {i: n for n, step in enumerate(up) for i in step.put_on}
    by_assembly = {board.assembly: first[i] for i, board in enumerate(surround.boards)}
    assert (
        by_assembly["left column"] < by_assembly["frieze"] < by_assembly["shelf"] < by_assembly["bed mould"]
    )
    assert by_assembly["right column"] < by_assembly["frieze"]
    assert all(
        first[i] < by_assembly["left column"]
        for i, board in enumerate(surround.boards)
        if board.stock.kind is StockKind.FRAMING
    )


def test_frames_are_screwed_before_panels_cover_their_backs(
    demo: tuple[Surround, Takeoff, tuple[Step, ...]],
) -> None:
    surround, takeoff, steps = demo
    step_of = {i: n for n, step in enumerate(steps) for i in step.boards}
    for n, step in enumerate(steps):
        for fixing in (takeoff.fixings[f] for f in step.fixings):
            if fixing.means is Means.SCREW:
                backs = [
                    other
                    for other in takeoff.fixings
                    if surround.boards[other.through].stock.kind is StockKind.PANEL
                    and other.into in (fixing.through, fixing.into)
                ]
                assert all(step_of[other.through] > n for other in backs)


def test_columns_alike_are_made_together(demo: tuple[Surround, Takeoff, tuple[Step, ...]]) -> None:
    surround, _, steps = demo
    made = [s for s in steps if s.where is Where.BENCH and "left column" in s.parts]
    assert all("right column" in step.parts for step in made)
    for step in made:
        roles = {
            side: sorted(surround.boards[i].role for i in step.boards if surround.boards[i].assembly == side)
            for side in ("left column", "right column")
        }
        assert roles["left column"] == roles["right column"]


def test_an_overmantel_goes_up_on_the_shelf() -> None:
    job = with_texts(default_job(), [("over.on", "yes")])
    surround, _, steps = planned(job)
    first = {i: n for n, step in enumerate(steps) if step.where is Where.SITE for i in step.put_on}
    by_role = {board.role: first[i] for i, board in enumerate(surround.boards)}
    assert by_role["overmantel stile"] > by_role["shelf top"]
    nailers = [n for role, n in by_role.items() if role.startswith("overmantel") and "nailer" in role]
    assert all(by_role["shelf top"] < n < by_role["overmantel stile"] for n in nailers)


def test_a_loose_panel_goes_in_last() -> None:
    job = with_texts(default_job(), [("cord.on", "yes")])
    surround, _, steps = planned(job)
    loose = {i for i, board in enumerate(surround.boards) if board.role == ACCESS_PANEL}
    if loose:
        assert set(steps[-1].boards) == loose


def test_hours_follow_the_rates() -> None:
    base = sum(step.hours for step in planned(default_job())[2])
    twice = with_texts(default_job(), [("times.cut", "4"), ("times.install", "8")])
    assert sum(step.hours for step in planned(twice)[2]) == pytest.approx(base + 6.0)


def test_a_slip_goes_up_before_the_plinths_that_stand_before_it() -> None:
    surround, _, steps = planned(with_texts(default_job(), [("slip.on", "yes")]))
    first = {i: n for n, step in enumerate(steps) if step.where is Where.SITE for i in step.put_on}
    slip = [first[i] for i, board in enumerate(surround.boards) if board.assembly == "slip"]
    columns = [first[i] for i, board in enumerate(surround.boards) if board.assembly.endswith("column")]
    assert max(slip) < min(columns)
    made = [step for step in steps if step.where is Where.BENCH and step.parts == ("slip",)]
    assert len(made) == 1, "three pieces are joined at once"


def test_a_fluted_column_is_built_on_its_fluted_face() -> None:
    surround, _, steps = planned(with_texts(default_job(), [("column.kind", "fluted")]))
    first = next(step for step in steps if step.parts[:1] == ("left column",))
    assert "column fluted face" in {surround.boards[i].role for i in first.boards}


def test_what_was_made_by_itself_is_fastened_where_it_is_put_on() -> None:
    surround, takeoff, steps = planned(read_demo("brick"))
    ladder = next(step for step in steps if "shelf rib" in {surround.boards[i].role for i in step.boards})
    later = next(step for step in steps if set(step.brought) == set(ladder.boards))
    assert later.fixings
    assert {takeoff.fixings[n].through for n in ladder.fixings} <= set(ladder.boards)


def test_everything_from_the_bench_is_tried_before_any_of_it_is_fixed() -> None:
    steps = planned(default_job())[2]
    (n,) = (n for n, step in enumerate(steps) if step.tried)
    built = {i for step in steps if step.where is Where.SITE for i in step.brought}
    assert built <= set(steps[n].tried)
    assert not any(step.brought for step in steps[:n] if step.where is Where.SITE)
    assert not steps[n].fixings


def test_solid_panels_go_in_as_their_frame_is_put_together_and_mouldings_keep_off_them():
    pairs = [("panel.kind", "solid"), ("panel.reveal", "3/8"), ("panel_mould.on", "yes")]
    surround, _, steps = planned(with_texts(default_job(), pairs))
    panels = {i for i, board in enumerate(surround.boards) if board.role.endswith(" panel")}
    (frieze,) = (step for step in steps if step.title == "Frieze: frame")
    own = {i for i in panels if surround.boards[i].assembly == "frieze"}
    assert own <= set(frieze.boards)
    assert {surround.boards[i].stock.kind for i in frieze.boards} == {StockKind.BOARD}
    assert any("dry into the grooves" in note for note in frieze.notes)
    moulds = [step for step in steps if step.title.endswith("panel mouldings")]
    assert moulds
    assert all(any("to stiles and rails only" in note for note in step.notes) for step in moulds)


def test_the_step_that_puts_the_shelf_on_says_how_it_is_screwed_down():
    notes = {}
    for kind in ("built_up", "plank"):
        *_, steps = planned(with_texts(read_demo("brick"), [("shelf.kind", kind)]))
        step = next(step for step in steps if step.title.startswith("Fix the shelf"))
        notes[kind] = " ".join(step.notes)
    assert "Countersink the screws through S2 into N4, clear of the ribs." in notes["built_up"]
    assert 'Counterbore S1 until 1" is left, screw it to N4, and plug it' in notes["plank"]


def test_the_step_that_fixes_the_nailers_names_those_that_find_no_anchor():
    *_, steps = planned(read_demo("too-close"))
    (said,) = {note for s in steps for note in s.notes if note.startswith("No sound place for an anchor")}
    assert "N1b" in said
    assert "N1d" in said


def test_screws_into_an_old_ledger_are_told_as_none_of_the_lists():
    texts = [("old_ledger.top", "52"), ("old_ledger.use", "use")]
    *_, steps = planned(with_texts(default_job(), texts))
    (said,) = [note for step in steps for note in step.notes if "old ledger too" in note]
    assert "no list has those screws" in said
