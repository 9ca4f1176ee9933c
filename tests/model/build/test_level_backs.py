"""What lies level against masonry out of plumb: it reaches back to it, and no further."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis.strategies import floats

from model.build.level_backs import FOLLOWS, gaps_behind, list_level_tapers
from model.job import default_job, with_texts, with_value
from model.surround import plan_surround
from model.takeoff.contacts import list_contacts, shapes_on, uncover
from model.takeoff.cut_list import list_cuts
from model.takeoff.faces import list_faces
from model.takeoff.marks import list_kinds
from model.takeoff.rough import plan_rough
from model.takeoff.standing import list_standing
from tests.planned import plan_of
from tests.strategies import jobs


def _plan(*settings: str):
    return plan_surround(with_texts(default_job(), [tuple(s.split("=")) for s in settings]))


def _named(surround, role):
    return next(board for board in surround.boards if board.role == role)


def test_a_shelf_widens_from_one_columns_outer_side_to_the_others_and_runs_on_level():
    """1/2 in. back on the left, 1/4 on the right: 6 1/4 in. of top behind the edge band and as much more.

    The columns' outer sides are 18 + 13 + 7 1/2 in. off the centre line, the top's ends 40 3/4.
    """
    top = _named(_plan("plumb.left=-1/2", "plumb.right=-1/4"), "shelf top")
    assert list_level_tapers(top) == [((-38.5, 6.75), (38.5, 6.5))]
    # Plain: 81 1/2 by 6 1/4 by 3/4; behind it 2 1/4 by 1/2, 77 by 3/8 in the mean and 2 1/4 by 1/4.
    assert top.volume == pytest.approx(0.75 * (81.5 * 6.25 + 2.25 * 0.5 + 77 * 0.375 + 2.25 * 0.25))


def test_a_shelf_before_masonry_that_leans_as_much_on_both_sides_is_only_wider():
    top = _named(_plan("plumb.left=-1/2", "plumb.right=-1/2"), "shelf top")
    assert not list_level_tapers(top)
    assert (top.width, top.bounds[0][2]) == (6.75, -0.5)


def test_masonry_that_leans_toward_the_room_leaves_the_shelf_and_widens_the_soffit():
    """1 in. over 52 in.: 43 3/4 in. up, at the soffit's top, 8 1/4 of 52 of an inch are left."""
    surround = _plan("plumb.left=1", "plumb.right=1")
    assert _named(surround, "shelf top").bounds[0][2] == 0
    assert _named(surround, "soffit").bounds[0][2] == pytest.approx(-8.25 / 52)


def test_the_edge_bands_ends_reach_back_as_far_as_the_shelf_does_there():
    surround = _plan("plumb.left=-1/2", "plumb.right=-1/4")
    ends = {b.bounds[0][0] < 0: b.bounds[0][2] for b in surround.boards if b.role == "edge band end"}
    assert ends == {True: -0.5, False: -0.25}


def test_an_overmantel_follows_a_wall_but_no_facing_that_ends_behind_it():
    on_facing = _plan("plumb.left=-1/2", "plumb.right=-1/2", "over.on=yes", "over.projection=3")
    assert _named(on_facing, "overmantel return").bounds[0][2] == 0
    site = ("facing.width=36", "facing.height=100")
    on_wall = _plan("plumb.left=-1/2", "plumb.right=-1/2", "over.on=yes", "over.projection=3", *site)
    assert {b.bounds[0][2] for b in on_wall.boards if b.role in ("overmantel return", "overmantel top")} == {
        -0.5
    }


def test_nothing_follows_where_the_shelf_is_not_on_what_was_read():
    surround = _plan("plumb.right=-1/2", "facing.proud=2", "facing.height=46")
    assert gaps_behind(surround.layout, -2.0, (52.0, 54.0)) == (0.0, 0.0)
    assert _named(surround, "shelf top").bounds[0][2] == -2


def test_the_cut_list_gives_both_widths_and_where_the_taper_ends():
    cuts = {cut.name: cut for cut in list_cuts(_plan("plumb.left=-1/2", "plumb.right=-1/4"))}
    assert (
        'back edge tapered to follow the masonry: 6 3/4" wide up to 2 1/4" from its left end, '
        '6 1/2" from 6\'-7 1/4" off that end on'
    ) in cuts["shelf top"].notes
    assert '2 5/8" wide at its left end, 2 1/2" at its right end' in cuts["soffit"].notes
    assert "notched" not in cuts["shelf top"].notes


def test_a_tapered_back_has_scribe_stock_once_and_is_no_less_than_its_widest():
    surround = _plan("plumb.left=-1/2", "plumb.right=-1/4")
    kinds = list_kinds(surround.boards)
    rough = plan_rough(surround)
    (top,) = (rough[k.mark] for k in kinds if surround.boards[k.pieces[0]].role == "shelf top")
    assert (top.width.finished, top.width.scribe) == (6.75, 0.5)


def test_its_whole_back_lies_on_the_masonry():
    """81 1/2 in. wide but for the slope, 3/4 in. thick."""
    surround = _plan("plumb.left=-1/2", "plumb.right=-1/4")
    standing = list_standing(surround.boards, surround.layout)
    top = _named(surround, "shelf top")
    faces = list_faces((top,))
    covered = shapes_on(faces, ())
    for contact in list_contacts(faces, list_faces(standing)):
        covered[contact.first].append(contact.shape)
    left = [shape.area for shape in uncover(faces, covered)]
    whole = sum(face.area for face in faces)
    assert whole - sum(left) == pytest.approx(81.5 * 0.75, rel=1e-4)


@settings(max_examples=60, deadline=None)
@given(jobs(plumb__left=None, plumb__right=None, over__on=True), floats(-2, 2), floats(-2, 2))
def test_nothing_level_reaches_into_masonry(job, left, right):
    """Other boards may be others: what is notched round a baseboard is not where masonry is out of plumb."""
    leaning = with_value(with_value(job, "plumb.left", left), "plumb.right", right)
    plumb, surround = plan_of(job), plan_surround(leaning)
    layout = surround.layout
    pairs = [[b for b in boards if b.role in FOLLOWS] for boards in (plumb.boards, surround.boards)]
    for before, board in zip(*pairs, strict=True):
        if board.bounds[0][2] < before.bounds[0][2]:
            back = before.bounds[0][2]
            assert back in (0.0, layout.wall)
            for x, y, z in board.vertices:
                assert z >= back - layout.set_back(x, y) - 1e-9
