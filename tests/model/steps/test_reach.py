"""No step drives anything through a face that what stands by then covers, nor where no tool has room.

The lines that fasteners are driven along are followed here by another way of finding what they meet.
"""

from __future__ import annotations

import numpy as np
from hypothesis import given, settings
from shapely import Point

from app.demo import read_demo
from model.job import Job, default_job, with_texts
from model.steps.plan import plan_steps
from model.steps.reach import OUTWARD, ROOM, How, Reach
from model.steps.step import Step, Where
from model.surround import Surround
from model.takeoff.contacts import Contact
from model.takeoff.fasteners import Fixing, Means
from model.takeoff.surfaces import Surfaces, part_surfaces
from model.takeoff.takeoff import Takeoff
from tests.planned import plan_of, take
from tests.strategies import jobs
from tests.takeoff_wood import Floats, board, is_free, triangles_of

OFF = 0.01
"""A line is followed from this far before a head, in."""
NEAR = 1e-3
BOXED = [("over.on", "yes"), ("over.reach", "height")]
WALL = board((-50, 50), (-50, 50), (-9, 0))


def planned(job: Job) -> tuple[Surround, Takeoff, tuple[Step, ...]]:
    surround, takeoff = plan_of(job), take(job)
    return surround, takeoff, plan_steps(surround, takeoff)


def first_met(at: Floats, way: Floats, triangles: Floats) -> float:
    """How far along a ray the first triangle is, by the planes and the sides of each."""
    a, b, c = triangles[:, 0], triangles[:, 1], triangles[:, 2]
    normal = np.cross(b - a, c - a)
    steep = normal @ way
    turned = np.abs(steep) > 1e-12
    a, b, c, normal, steep = a[turned], b[turned], c[turned], normal[turned], steep[turned]
    far = np.einsum("ni,ni->n", normal, a - at) / steep
    points = at + far[:, None] * way
    inside = np.ones(len(far), dtype=bool)
    for one, other in ((a, b), (b, c), (c, a)):
        inside &= np.einsum("ni,ni->n", np.cross(other - one, points - one), normal) >= -1e-9
    met = far[inside & (far > 0)]
    return float(met.min(initial=np.inf))


@settings(max_examples=10)
@given(jobs())
def test_no_step_on_site_drives_anything_through_what_is_covered_by_then(job: Job) -> None:
    surround, takeoff, steps = planned(job)
    reach, surfaces = Reach(takeoff.surfaces), takeoff.surfaces
    for step in steps:
        if step.where is Where.BENCH or not step.fixings:
            continue
        there = {*step.there, *step.put_on}
        solids = [*(surround.boards[i] for i in sorted(there)), *surfaces.standing]
        triangles = triangles_of(solids)
        for fixing in (takeoff.fixings[n] for n in step.driven):
            loose = not {fixing.through, fixing.into} <= set(step.boards)
            # A screw into the ledger that nothing gets at goes through a hole bored for it and plugged.
            if fixing.count and loose and fixing.means is not Means.LEDGER_SCREW:
                _check_driven(step, fixing, reach, there, triangles)


def _check_driven(step: Step, fixing: Fixing, reach: Reach, there: set[int], triangles: Floats) -> None:
    way = reach.find(fixing, there, on_site=True)
    assert way is not None, step.title
    head, out = np.array(way.head), np.array(way.out)
    assert first_met(head + OFF * out, out, triangles) > ROOM - 2 * OFF, (step.title, way)
    ahead = head + ROOM / 2 * out
    assert is_free(ahead[None], OUTWARD, triangles).any(), (step.title, way)


@settings(max_examples=5)
@given(jobs())
def test_a_way_leads_from_the_joint_through_one_board_only(job: Job) -> None:
    _, takeoff, steps = planned(job)
    reach, surfaces = Reach(takeoff.surfaces), takeoff.surfaces
    for step in steps:
        there = {*step.there, *step.put_on}
        for fixing in (takeoff.fixings[n] for n in step.driven):
            way = reach.find(fixing, there, step.where is Where.SITE) if fixing.count else None
            if way is None or way.how is How.STRAIGHT:
                continue
            wood = min(_distances(surfaces, fixing, np.array(way.head), np.array(way.out)))
            assert wood < fixing.length, "it reaches the second board"


def _distances(surfaces: Surfaces, fixing: Fixing, head: Floats, out: Floats) -> list[float]:
    """From a head back along its line to each joint of the two boards that the line meets."""
    found = []
    for contact in surfaces.glued:
        if {surfaces.faces[i].owner for i in contact.pair} == {fixing.through, fixing.into}:
            found.append(_distance(surfaces, contact, head, out))
    return found


def _distance(surfaces: Surfaces, contact: Contact, head: Floats, out: Floats) -> float:
    face = surfaces.faces[contact.first]
    steep = float(face.normal @ out)
    if abs(steep) < NEAR:
        return float("inf")
    far = (float(face.normal @ head) - face.offset) / steep
    at = Point(*((head - far * out) @ face.basis.T))
    return far if far > 0 and contact.shape.distance(at) < NEAR else float("inf")


def test_a_closed_shelf_is_nailed_by_its_underside_before_the_rest_of_it_goes_on() -> None:
    surround, takeoff, steps = planned(with_texts(default_job(), BOXED))
    up = [step for step in steps if step.where is Where.SITE]
    names = [step.title for step in up]
    sole, rest = (names.index(f"Fix the shelf{part}") for part in (" underside", ""))
    assert sole < rest
    under = {i for i, board in enumerate(surround.boards) if board.role == "shelf underside"}
    assert set(up[sole].put_on) == under
    ledger = next(i for i, board in enumerate(surround.boards) if board.role == "shelf nailer")
    pairs = {(f.through, f.into) for f in (takeoff.fixings[n] for n in up[sole].driven)}
    assert any(into == ledger for _, into in pairs)
    assert any("Nail through S2 from above" in note for note in up[sole].notes)
    assert any("set it down over S2" in note for note in up[rest].notes)


def test_nothing_is_nailed_from_inside_a_shelf_that_is_closed() -> None:
    surround, takeoff, steps = planned(with_texts(default_job(), BOXED))
    over = next(step for step in steps if step.title == "Fix the overmantel")
    top = next(i for i, board in enumerate(surround.boards) if board.role == "shelf top")
    foot = [f for f in (takeoff.fixings[n] for n in over.driven) if f.through == top]
    assert foot, "it is nailed to the shelf"
    assert any("slanting through O2 into S1, from the front" in note for note in over.notes)
    assert not any("hidden side" in note for step in steps for note in step.notes)


def test_what_nothing_gets_at_is_not_told_to_be_driven() -> None:
    lid = board((0, 8), (0, 8), (1, 2))
    block = board((0, 8), (0, 8), (0, 1))
    surfaces = part_surfaces((block, lid), (WALL,))
    fixing = Fixing(Means.NAIL, 0, 1, 1.5, 4, False, 0.0)
    way = Reach(surfaces).find(fixing, {0, 1}, on_site=True)
    assert way is not None
    assert (way.how, way.through, way.side) == (How.TURNED, 1, "the front")
    before = board((0, 8), (0, 8), (2.5, 3))
    shut = Reach(part_surfaces((block, lid, before), (WALL,)))
    assert shut.find(fixing, {0, 1}, on_site=True) == way
    blocked = shut.find(fixing, {0, 1, 2}, on_site=True)
    assert blocked is None or blocked.how is How.SLANTING


def test_ledger_cleat_and_uprights_are_fixed_in_that_order_and_packing_with_what_it_is_tacked_to() -> None:
    pairs = [("level.centre", "40"), ("level.left", "40.25"), ("level.right", "39.75")]
    odd = [("plumb.left", ".75"), ("plumb.right", "-.5"), ("capital.on", "yes"), ("cord.on", "yes")]
    surround, _, steps = planned(with_texts(read_demo("brick"), [*pairs, *odd]))
    first = next(step for step in steps if step.title == "Fix the nailers")
    roles = list(dict.fromkeys(surround.boards[i].role for i in first.boards))
    assert [role for role in roles if role.endswith("nailer")] == [
        "shelf nailer",
        "soffit nailer",
        "column nailer",
    ]
    assert "Ledger, then the cleat, then the uprights, all to the level line." in first.notes
    packing = [i for i, board in enumerate(surround.boards) if board.role == "cleat packing"]
    assert packing
    assert set(packing) <= set(first.boards)
    assert any(note.startswith(f"Tack {surround.marks[packing[0]]} to the back") for note in first.notes)
