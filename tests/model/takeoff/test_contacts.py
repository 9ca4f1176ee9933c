"""Where faces lie on each other."""

from __future__ import annotations

from collections.abc import Iterator
from functools import reduce

import pytest
from hypothesis import given, settings
from manifold3d import Manifold, OpType

from app.demo import list_demos, read_demo
from model.surround import plan_surround
from model.takeoff.contacts import list_contacts, shapes_on, uncover
from model.takeoff.faces import list_faces, primed_area
from tests.planned import plan_of
from tests.solids import GRID, build_solid
from tests.strategies import jobs
from tests.takeoff_wood import board

GRIDS = (GRID, GRID / 4)
"""Places per inch to which corners are laid before another library puts solids together."""

HAIR = 1 / 1024


def test_two_blocks_side_by_side_touch_where_they_overlap():
    """A 3 by 2 face and a 2 by 2 one moved up by 1: 2 by 1 in. lie on each other."""
    faces = list_faces([board((0, 1), (0, 3), (0, 2)), board((1, 2), (2, 4), (0, 2))])
    (contact,) = list_contacts(faces)
    assert contact.area == pytest.approx(2)


def test_blocks_that_meet_in_an_edge_do_not_touch():
    assert not list_contacts(list_faces([board((0, 1), (0, 1), (0, 1)), board((1, 2), (1, 2), (0, 1))]))


@pytest.mark.parametrize("gap", [0.0, HAIR, -HAIR])
def test_a_thousandth_between_two_faces_is_none(gap):
    faces = list_faces([board((0, 1), (0, 3), (0, 2)), board((1 + gap, 2), (0, 3), (0, 2))])
    assert sum(contact.area for contact in list_contacts(faces)) == pytest.approx(6)


def test_a_sixteenth_between_two_faces_is_a_gap():
    assert not list_contacts(list_faces([board((0, 1), (0, 3), (0, 2)), board((1.0625, 2), (0, 3), (0, 2))]))


def test_what_is_covered_is_taken_off_both_faces():
    faces = list_faces([board((0, 1), (0, 3), (0, 2)), board((1, 2), (2, 4), (0, 2))])
    contacts = list_contacts(faces)
    bare = uncover(faces, shapes_on(faces, contacts))
    assert sum(shape.area for shape in bare) == pytest.approx(primed_area(faces) - 2 * 2)


def test_what_a_hair_leaves_uncovered_is_nothing():
    faces = list_faces([board((0, 1), (0, 3), (0, 2)), board((1, 2), (HAIR, 3), (0, 2))])
    bare = uncover(faces, shapes_on(faces, list_contacts(faces)))
    touching = [
        shape for face, shape in zip(faces, bare, strict=True) if abs(face.offset) == 1 and face.normal[0]
    ]
    assert all(shape.is_empty for shape in touching)


def test_contacts_with_other_faces_are_kept_apart_from_those_among_boards():
    boards, wall = [board((0, 1), (0, 3), (0, 2))], [board((-9, 9), (-9, 9), (-1, 0))]
    (contact,) = list_contacts(list_faces(boards), list_faces(wall))
    assert contact.area == pytest.approx(3)


def _join_now(merged: Manifold, solid: Manifold) -> Manifold:
    """Both as one; asked how large it is, the library does not put the work off to do it all at once."""
    both = merged + solid
    both.volume()
    return both


def _list_losses(boards) -> Iterator[float]:
    """What is lost of the solids' surface when they are put together, each time in another way.

    The library may lay faces askew, all at once or on one grid, that it joins well one after the other or on
    another grid.
    """
    for grid in GRIDS:
        solids = [build_solid(one, grid) for one in boards]
        apart = sum(solid.surface_area() for solid in solids)
        yield apart - Manifold.batch_boolean(solids, OpType.Add).surface_area()
        yield apart - reduce(_join_now, solids).surface_area()


def _check_against_solids(boards) -> None:
    """Putting solids together loses each contact twice from their surface."""
    twice = pytest.approx(2 * sum(contact.area for contact in list_contacts(list_faces(boards))), rel=5e-3)
    losses = []
    for loss in _list_losses(boards):
        if loss == twice:
            return
        losses.append(loss)
    assert losses == [twice]


@pytest.mark.parametrize("name", list_demos())
def test_contacts_are_what_joining_the_solids_takes_off_their_surface(name):
    _check_against_solids(plan_surround(read_demo(name)).boards)


@settings(max_examples=20, deadline=None)
@given(jobs(in_between=False, column__taper=0))
def test_contacts_of_any_job_are_what_joining_takes_off(job):
    """Off the tape, for a gap of two thousandths is a gap to the solid library and none to a carpenter.

    Without tapered columns: the solid library parts some faces that lie on each other askew.
    """
    _check_against_solids(plan_of(job).boards)
