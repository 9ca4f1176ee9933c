"""Tapered columns: where they lean, what stays upright, and a cut list worked out on paper."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from manifold3d import Manifold, OpType
from shapely import Polygon

from model.build.taper import LEAST_WIDTH, STEEPEST_EDGE, Line, clip_between
from model.job import Job, default_job, with_texts
from model.surround import Surround, plan_surround
from model.takeoff.contacts import list_contacts
from model.takeoff.cut_list import Cut, list_cuts
from model.takeoff.faces import list_faces
from model.takeoff.guide_settings import Action, list_guide_settings
from model.takeoff.leaning import list_askew
from tests.planned import cuts_of, plan_of
from tests.solids import GRID, build_solid
from tests.strategies import alike, jobs

WORKED = "column.taper=1 1/2 column.panels=2 capital.on=yes"


def _job(settings_text: str) -> Job:
    return with_texts(default_job(), [tuple(s.split("=")) for s in _split(settings_text)])


def _split(text: str) -> list[str]:
    words: list[str] = []
    for word in text.split():
        if "=" in word:
            words.append(word)
        else:
            words[-1] += f" {word}"
    return words


def _plan(settings_text: str) -> Surround:
    return plan_surround(_job(settings_text))


def _cuts(settings_text: str) -> dict[str, Cut]:
    return {cut.name: cut for cut in list_cuts(_plan(settings_text))}


def test_the_cut_list_of_a_framed_column_agrees_with_the_one_on_paper():
    """A column 7 1/2 wide and 52 high, plinth 8, frieze 9, capital 2, board 3/4, in front of 4 to 3 1/4.

    The shaft: from 8 to 52 - 9 - 2 = 41, so 33 high. Each edge comes in by half of 1 1/2, 3/4: its angle is
    atan(0.75 / 33) = atan(0.0227273) = 1.3020 degrees, its secant 1.0002582, its sine 0.0227214.
    The returns' shafts: each face is 33 x 1.0002582 = 33.0085 long; cut level at both ends, the long point of
    one face lies 0.75 x 0.0227214 = 0.0170 beyond that of the other: 33.0255 from long point to long point.
    Foot returns 8, head returns 52 - 41 = 11. The rails: 8 to 41 holds two panels and three rails of 2 1/2,
    so panels of (33 - 7 1/2) / 2 = 12 3/4. Beside the lower panel's foot, at 10 1/2, the edges are in by
    2.5 x 0.0227273 = 0.0568: the bottom rail is 7.5 - 3.5 - 0.1136 = 3.8864 long. The middle rail starts at
    23 1/4, in by 15.25 x 0.0227273 = 0.3466 a side: 4 - 0.6932 = 3.3068 at its long points, and
    5 x 0.0227273 = 0.1136 less at the short ones: 3.1932. At 38 1/2 the opening is 4 - 2 x 30.5 x 0.0227273 =
    2.6136 wide, and so are the two rails above it.
    """
    cuts = _cuts(WORKED)
    sizes = {
        "column inner foot return": (8.0, 8.0),
        "column inner return": (33.0255, 33.0085),
        "column inner head return": (11.0, 11.0),
        "column outer return": (33.0255, 33.0085),
        "column bottom rail": (3.8864, 3.8864),
        "lower column middle rail": (3.3068, 3.1932),
        "upper column middle rail": (2.6136, 2.6136),
        "column top rail": (2.6136, 2.6136),
    }
    for name, (long, short) in sizes.items():
        assert cuts[name].quantity == 2, name
        assert cuts[name].length == pytest.approx(long, abs=1e-4), name
        assert cuts[name].short_length == pytest.approx(short, abs=1e-4), name
    assert cuts["column inner return"].ends == "1.3° bevel both ends, parallel"
    assert cuts["lower column middle rail"].ends == "1.3° mitre both ends (long points on the lower edge)"
    stile = cuts["column stile"]
    # At the foot 1 3/4 + 0.0568, at the head 1 3/4 - 0.0568.
    assert stile.quantity == 4
    assert stile.notes.startswith('sawn to shape, 1 13/16" wide at its foot, 1 11/16" at its head: ')
    # The panel lies between the returns: 7 1/2 - 1 1/2 at the foot and as much less as the column above.
    assert cuts["column panel"].notes == (
        'sawn to shape, 6" wide at its foot, 4 1/2" at its head: both edges 3/4" in between 3/4" and '
        "2'-9 3/4\" up, 1.3° off"
    )


def test_the_saw_is_tilted_for_returns_and_its_guide_set_askew_for_stiles_and_middle_rails():
    found = {
        setting.action: setting
        for setting in list_guide_settings(_plan(WORKED))
        if setting.angle == pytest.approx(1.302, abs=2e-3)
    }
    assert set(found) == {Action.TAPER, Action.MITRE, Action.BEVEL}
    assert found[Action.BEVEL].guide is None
    # Rips for each of the stiles' two edges and for the sheets' two alike ones, on the stock of each.
    tapers = [s for s in list_guide_settings(_plan(WORKED)) if s.action is Action.TAPER]
    assert [(s.count, s.edges) for s in tapers] == [(4, 1), (4, 1), (2, 2)]


def test_a_tapered_rip_keeps_what_its_edge_leaves_of_the_width_that_was_ripped():
    """Of a stile that comes in by 3/4 in. and goes out by as much as its panel's edge does."""
    surround = _plan(WORKED)
    stile = next(b for b in surround.boards if b.role == "column stile")
    sheet = next(b for b in surround.boards if b.role == "column panel")
    edges = {edge.inward for edge in list_askew(stile)}
    assert {inward > 0 for inward in edges} == {True, False}
    tapers = [s for s in list_guide_settings(surround) if s.action is Action.TAPER]
    wanted = {(round(stile.width - abs(inward), 2), round(inward, 2)) for inward in edges}
    assert {(round(s.size, 2), round(s.inward, 2)) for s in tapers[:2]} == wanted
    assert (tapers[2].size, tapers[2].inward) == pytest.approx((sheet.width - 0.75, 0.75), abs=2e-3)


def test_what_is_wrapped_round_a_column_fits_its_width_there_and_the_frieze_closes_at_the_top():
    surround = _plan(f"{WORKED} plinth_cap.on=yes")
    layout = surround.layout
    by_role = {b.role: b for b in surround.boards if b.assembly == "right column"}
    # 18 + 13 from the centre line to the inner side: 31 to 38 1/2 at the foot, 31 3/4 to 37 3/4 at the top.
    for role, width in (("plinth front", 7.5), ("plinth cap front", 7.5), ("capital front", 6.0)):
        wrap = by_role[role]
        assert min(wrap.high.position(*p) - wrap.low.position(*p) for p in wrap.section) == pytest.approx(
            width
        ), role
    assert layout.column_inner == 31.75
    assert layout.frieze_frame.outline[::2] == (-31.75, 31.75)
    assert layout.right.shelf_side == 37.75 + 3
    assert layout.right.taper.outer.low == 8 + layout.mouldings.plinth_cap.height


def test_the_outer_edge_alone_leans_by_all_of_it_and_the_inner_one_stays():
    surround = _plan("column.taper=1 column.taper_edges=outer")
    right = surround.layout.right
    assert (right.inner, right.inner_top, right.outer, right.outer_top) == (31, 31, 38.5, 37.5)
    (inner,) = [b for b in surround.boards if b.role == "column inner return" and b.bounds[0][0] > 0]
    assert (inner.lean, inner.length) == (0, 52)


def test_a_slip_keeps_the_inner_edges_upright_and_says_so():
    surround = _plan("column.taper=1 slip.on=yes")
    assert surround.layout.right.inner_top == surround.layout.right.inner
    (shortfall,) = surround.layout.shortfalls
    assert (shortfall.path, shortfall.built) == ("column.taper_edges", "outer")


@pytest.mark.parametrize(
    ("asked", "words"),
    [
        ("column.width=5 column.taper=1 1/2", "no narrower than 4 in."),
        ("column.taper=3 1/4", "one in twenty-four"),
        ("column.taper=-1 column.margin=1/4", "reach over the opening"),
        ("column.taper=1/32", "too little for an angled cut"),
        ("column.taper=1 facing.width=75 facing.proud=2", "off the edge of a facing"),
    ],
)
def test_what_cannot_lean_so_far_is_a_shortfall_with_its_reason(asked, words):
    found = [s for s in _plan(asked).layout.shortfalls if s.path == "column.taper"]
    assert len(found) == 1
    assert words in found[0].reason


def test_a_tapered_body_is_as_large_as_its_outline_times_its_depth():
    """Plain: 7 1/2 wide up to 8, 6 from 43 to 52: 8 x 7.5 + 35 x 6.75 + 9 x 6 = 350.25 sq in., 4 deep.

    The plinth goes round the foot as on a straight column, (9 x 4.75 - 7.5 x 4) x 8; the frieze is
    62 + 1 1/2 long, the shelf 83 - 1 1/2.
    """
    plain = "column.kind=plain frieze.kind=plain bed_mould.on=no column.taper=1 1/2"
    boards = plan_surround(_job(plain)).boards
    room = Manifold.cube((400.0, 150.0, 60.0)).translate((-200.0, 0.0, 0.0))
    wood = Manifold.batch_boolean([build_solid(board, GRID) for board in boards], OpType.Add)
    air = sorted(part.volume() for part in (room - wood).decompose())
    plinths = 2 * (9 * 4.75 - 7.5 * 4) * 8
    body = 2 * 350.25 * 4 + plinths + 63.5 * 3 * 9 + 81.5 * 7 * 2
    assert sum(board.volume for board in boards) + sum(air[:-1]) == pytest.approx(body)


def test_rails_lie_on_the_stiles_with_all_of_their_ends():
    """A middle rail's end is 2 1/2 x 3/4 along the slope: 1.875 x 1.0002582 = 1.8755 sq in."""
    boards = [b for b in _plan(WORKED).boards if b.assembly == "right column"]
    (rail,) = [b for b in boards if b.lean == 0 and b.low.slope_u]
    stiles = [b for b in boards if b.role == "column stile"]
    contacts = list_contacts(list_faces([rail, *stiles]))
    assert [contact.area for contact in contacts] == pytest.approx([1.8755, 1.8755], abs=1e-4)


def test_an_edge_is_upright_below_and_above_where_it_leans():
    edge = Line(10.0, 30.0, 5.0, 4.0)
    assert [edge.at(y) for y in (0, 10, 20, 30, 40)] == [5.0, 5.0, 4.5, 4.0, 4.0]
    assert edge.points((0.0, 20.0)) == [(5.0, 0.0), (5.0, 10.0), (4.5, 20.0)]
    cut = edge.cut((12.0, 22.0))
    assert (cut.position(12.0, 9.0), cut.position(22.0, 0.0)) == (pytest.approx(4.9), pytest.approx(4.4))


def test_a_stepped_return_is_parted_at_its_levels():
    stepped = ((0.0, 0.0), (20.0, 0.0), (20.0, -2.0), (50.0, -2.0), (50.0, 3.0), (0.0, 3.0))
    assert clip_between(stepped, (0.0, 8.0)) == ((0.0, 0.0), (8.0, 0.0), (8.0, 3.0), (0.0, 3.0))
    assert set(clip_between(stepped, (8.0, 40.0))) == {
        (8.0, 0.0), (20.0, 0.0), (20.0, -2.0), (40.0, -2.0), (40.0, 3.0), (8.0, 3.0)
    }  # fmt: skip


def test_a_return_parted_where_a_notch_ends_has_no_spike_there():
    notched = (
        (0.0, 0.0),
        (3.5, -0.25),
        (3.5, 1.0),
        (4.0, 1.0),
        (4.0, -0.3),
        (9.0, -0.5),
        (9.0, 9.0),
        (0.0, 9.0),
    )
    foot, middle = clip_between(notched, (0.0, 4.0)), clip_between(notched, (4.0, 9.0))
    assert set(foot) == {(0.0, 0.0), (3.5, -0.25), (3.5, 1.0), (4.0, 1.0), (4.0, 9.0), (0.0, 9.0)}
    assert set(middle) == {(4.0, -0.3), (9.0, -0.5), (9.0, 9.0), (4.0, 9.0)}
    assert [Polygon(ring).is_valid for ring in (foot, middle)] == [True, True]
    assert Polygon(foot).area + Polygon(middle).area == pytest.approx(Polygon(notched).area)


def _tapers() -> st.SearchStrategy[Job]:
    return st.sampled_from((-1.5, 0.5, 1.0, 1.5, 2.5, 12.0)).flatmap(lambda taper: jobs(column__taper=taper))


@settings(max_examples=60, deadline=None)
@given(_tapers())
def test_every_taper_keeps_its_bounds_and_both_columns_lean_alike(job):
    layout = plan_of(job).layout
    for side in layout.sides:
        if side.taper is None:
            continue
        low, high = side.narrowest
        assert high - low >= min(LEAST_WIDTH, side.width) - 1e-9
        assert layout.column_inner == side.inner_top >= layout.opening_side - 1e-9
        for edge in (side.taper.inner, side.taper.outer):
            assert abs(edge.slope) <= STEEPEST_EDGE + 1e-9
        assert side.width - (side.outer_top - side.inner_top) == pytest.approx(
            layout.right.width - (layout.right.outer_top - layout.right.inner_top)
        )


@settings(max_examples=40, deadline=None)
@given(_tapers())
def test_no_two_lines_of_a_tapered_jobs_cut_list_share_a_name(job):
    names = [cut.name for cut in cuts_of(job)]
    assert len(names) == len(set(names))


@settings(max_examples=25, deadline=None)
@given(st.sampled_from((-1.0, 1.0, 2.0)).flatmap(lambda taper: alike(column__taper=taper)))
def test_tapered_columns_of_a_job_that_is_alike_on_both_sides_mirror(job):
    boards = plan_of(job).boards
    left, right = (
        sorted(
            (b.role, *(round(v, 6) for corner in b.bounds for v in corner))
            for b in (b if name == "right" else b.mirrored(b.assembly) for b in boards)
            if b.assembly == f"{name} column" and b.worked is None
        )
        for name in ("left", "right")
    )
    assert left == right
