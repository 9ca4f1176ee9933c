"""The listed points hold the tightest place of a board: held against a fine search over its whole surface."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from model.board import Board, End, Stock, StockKind, block
from model.check.chart import list_chart_planes, read_chart
from model.check.clearance import HAIR, Lengths, square_distance, straight_distance
from model.check.mantel import IRC_RULE, NBC_RULE, NFPA211_RULE, list_planes
from model.check.manual import build_chart_rule
from model.check.nearest import Points, list_box_corners, list_points
from model.corners import list_corners
from model.job import default_job, with_texts
from model.site import Opening

OPENING = Opening(36.0, 30.0)
PINE = Stock(StockKind.BOARD, 0.75, "pine")
ROWS = [
    ("site.rule", "manual"),
    ("chart.shelf", "3/4 : 8; 2 1/2 : 10; 6 : 14; 12 : 20"),
    ("chart.legs", "3/4 : 4; 3 : 6; 12 : 12"),
]
READ_ON = [
    ("chart.between", "linear"),
    ("chart.datum", "hood"),
    ("chart.datum_height", "28"),
    ("chart.plus", "9"),
    ("chart.greatest", "14"),
    ("chart.none_above", "9"),
    ("chart.none_beside", "5"),
]
CHART = read_chart(with_texts(default_job(), ROWS).site)
LINEAR = read_chart(with_texts(default_job(), ROWS + READ_ON).site)
RULES = {
    "IRC": (IRC_RULE, list_planes(OPENING)),
    "NFPA 211": (NFPA211_RULE, list_planes(OPENING)),
    "NBC": (NBC_RULE, list_planes(OPENING, "canada")),
    "chart": (build_chart_rule(CHART), list_chart_planes(CHART, OPENING)),
    "linear chart": (build_chart_rule(LINEAR), list_chart_planes(LINEAR, OPENING)),
}
SLOPES = st.sampled_from([-1.0, -0.5, 0.0, 0.0, 1.0])


@st.composite
def boards(draw: st.DrawFn) -> Board:
    """A triangular or four-sided prism near the opening's upper right corner, mitred or square."""
    axis = draw(st.sampled_from("xyz"))
    spans = {"x": (0.0, 40.0), "y": (20.0, 50.0), "z": (0.0, 8.0)}
    across = {"x": "yz", "y": "zx", "z": "xy"}[axis]
    low, high = ([spans[name][i] for name in across] for i in range(2))
    u0, v0 = (draw(st.floats(a, b - 1)) for a, b in zip(low, high, strict=True))
    du, dv = draw(st.floats(0.25, 6)), draw(st.floats(0.25, 6))
    cut = draw(st.floats(0.0, 0.9))
    section = (
        (u0, v0),
        (u0 + du, v0 + draw(st.floats(-0.2, 0.2))),
        (u0 + du, v0 + dv * (1 - cut)),
        (u0, v0 + dv),
    )
    start = draw(st.floats(spans[axis][0], spans[axis][1] - 2))
    slope_on_u = draw(st.booleans())

    def end(at: float, slope: float) -> End:
        """Cut through `at` where the section begins."""
        return End(at - slope * (u0 if slope_on_u else v0), *((slope, 0.0) if slope_on_u else (0.0, slope)))

    length = draw(st.floats(14, 30))
    return Board(
        "stick", "sticks", PINE, axis, section, end(start, draw(SLOPES)), end(start + length, draw(SLOPES))
    )


def _search(board: Board) -> Points:
    """Points all over the surface of a prism of four sides: its side faces and its ends, corners included."""
    corners = np.array(board.vertices)
    low, high = corners[:4], corners[4:]
    faces = [(low[i], low[(i + 1) % 4], high[(i + 1) % 4], high[i]) for i in range(4)]
    faces += [tuple(low), tuple(high)]
    steps = np.linspace(0, 1, 25)
    s, t = (grid.reshape(-1, 1) for grid in np.meshgrid(steps, steps))
    room = np.concatenate(
        [a * (1 - s) * (1 - t) + b * s * (1 - t) + c * s * t + d * (1 - s) * t for a, b, c, d in faces]
    )
    beside, above = np.abs(room[:, 0]) - OPENING.width / 2, room[:, 1] - OPENING.height
    return Points(room, np.zeros(len(room), dtype=np.intp), room[:, 2], beside, above)


HOPELESS = -6.0
"""Further short than this, at or over the opening, how short it is no longer matters."""


def _least(rule, points: Points, distance) -> float:
    off: Lengths = distance(points.beside, points.above)
    clear = np.maximum(points.beside, points.above) > HAIR
    spare = rule.hold(points.projection, points.beside, points.above, off).spare
    return float(spare[clear].min()) if clear.any() else np.inf


@settings(max_examples=300)
@given(boards(), st.sampled_from(sorted(RULES)), st.sampled_from([straight_distance, square_distance]))
def test_no_place_on_a_board_is_tighter_than_the_listed_ones(board, name, distance):
    rule, planes = RULES[name]
    listed = list_points(list_corners([board]), OPENING, planes)
    found = rule.hold(
        listed.projection, listed.beside, listed.above, distance(listed.beside, listed.above)
    ).spare.min()
    assert max(found, HOPELESS) <= max(_least(rule, _search(board), distance), HOPELESS) + 1e-6


@given(boards())
def test_listed_points_lie_on_the_board(board):
    low, high = board.bounds
    points = list_points(list_corners([board]), OPENING, list_planes(OPENING))
    assert (points.room >= np.array(low) - 1e-9).all()
    assert (points.room <= np.array(high) + 1e-9).all()


def _points_of(*pieces: Board, planes: Sequence = ()) -> Points:
    return list_points(list_corners(pieces), OPENING, planes)


def test_a_long_shelf_is_nearest_above_the_opening_and_not_at_its_ends():
    shelf = block("shelf", "shelf", PINE, "x", (-50, 50), (36, 38), (0, 7))
    points = _points_of(shelf)
    assert np.hypot(points.beside, points.above).min() == 6
    assert points.above[points.beside == 0].min() == 6


def test_a_brace_askew_at_the_corner_is_nearest_at_the_foot_of_its_plumb_line():
    """Its lower edge runs from (33, 30) to (18, 50): 15 x 20 / 25 = 12 in. off the corner (18, 30)."""
    brace = Board("brace", "braces", PINE, "z", ((33.0, 30.0), (33.0, 50.0), (18.0, 50.0)), End(0), End(2))
    points = _points_of(brace)
    assert np.hypot(points.beside, points.above).min() == pytest.approx(12)


def test_a_gently_tapering_end_is_tightest_where_distance_falls_behind_projection():
    """6 in. beside, 0.9 in. out at the corner's height, rising 0.04 to 1: 6 sqrt(1 - 0.32^2) - 7.2."""
    section = ((30.0, 0.0), (44.0, 0.0), (44.0, 1.46), (30.0, 0.9))
    strip = Board("strip", "strips", PINE, "x", section, End(24), End(30))
    points = list_points(list_corners([strip]), OPENING, list_planes(OPENING))
    spare = IRC_RULE.hold(
        points.projection, points.beside, points.above, np.hypot(points.beside, points.above)
    ).spare
    assert spare.min() == pytest.approx(6 * np.sqrt(1 - 0.32**2) - 7.2)


def _least_on_edge(name: str, start: tuple[float, float, float], stop: tuple[float, float, float]) -> float:
    """Least to spare on a sliver along the edge between two (beside, above, projection) places."""
    rule, planes = RULES[name]
    (x0, y0, z0), (x1, y1, z1) = ((OPENING.width / 2 + b, OPENING.height + a, p) for b, a, p in (start, stop))
    if z0 == z1:
        sliver = Board("s", "s", PINE, "z", ((x0, y0), (x1 + 20, y1 + 20), (x1, y1)), End(z0 - 0.1), End(z0))
    else:
        sliver = Board("s", "s", PINE, "x", ((y0, z0), (y1, z0 - 0.1), (y1, z1)), End(x0), End(x0 + 1))
    points = list_points(list_corners([sliver]), OPENING, planes)
    off = straight_distance(points.beside, points.above)
    return float(rule.hold(points.projection, points.beside, points.above, off).spare.min())


@pytest.mark.parametrize(
    ("name", "start", "stop", "least"),
    [
        # 1 1/2 in. out is passed at 9 2/3 in. up, where NFPA 211 wants 12.
        ("NFPA 211", (-18, 9, 1.4), (-18, 13, 2.0), 9 + 4 * 0.1 / 0.6 - 12),
        # 3 in. out: 12 in. above or 9 beside; both are missed most where they are missed alike.
        ("NFPA 211", (4, 11, 3), (9, 3, 3), -5 + 20 / 13),
        # The chart asks 14 above or 6 beside of 3 in. out.
        ("chart", (1, 13, 3), (5, 3, 3), -5 + 8 / 7),
        # Past 2 1/2 in. out the chart steps up to 14; that is 11 in. up.
        ("chart", (-18, 10, 2.0), (-18, 14, 4.0), 11 - 14),
    ],
)
def test_steps_and_turns_of_a_rule_are_found_between_the_ends(name, start, stop, least):
    assert _least_on_edge(name, start, stop) == pytest.approx(least, abs=1e-4)


def test_distance_counts_from_the_sides_also_below_the_hearth():
    leg = block("leg", "leg", PINE, "y", (25, 30), (-12, -2), (0, 4))
    points = _points_of(leg)
    assert straight_distance(points.beside, points.above).min() == 7


def test_each_point_knows_its_board():
    pieces = [block("a", "a", PINE, "x", (20 * i, 20 * i + 10), (40, 42), (0, 1)) for i in range(3)]
    points = _points_of(*pieces)
    for i in range(3):
        own = points.room[points.board == i]
        assert own[:, 0].min() == 20 * i
        assert own[:, 0].max() == 20 * i + 10


@pytest.mark.parametrize("axis", "xyz")
def test_corners_of_a_board_are_those_the_board_gives(axis):
    piece = block("a", "a", PINE, axis, (1, 2), (3, 5), (7, 11))
    points = _points_of(piece)
    assert {tuple(row) for row in points.room[:8].tolist()} == set(piece.vertices)


@given(st.lists(boards(), min_size=1, max_size=4))
def test_no_place_on_a_board_is_nearer_or_further_out_than_the_corner_of_its_box(pieces: list[Board]):
    corners = list_corners([*pieces, *(piece.moved(dx=-30.0) for piece in pieces)])
    box = list_box_corners(corners, OPENING)
    points = list_points(corners, OPENING, list_planes(OPENING))
    assert (points.projection <= box.projection[points.board] + HAIR).all()
    assert (points.beside >= box.beside[points.board] - HAIR).all()
    assert (points.above >= box.above[points.board] - HAIR).all()


@pytest.mark.parametrize("rule", [IRC_RULE, NFPA211_RULE, NBC_RULE])
@given(place=st.tuples(*[st.floats(-20, 20)] * 3), off=st.tuples(*[st.floats(0, 12)] * 3))
def test_what_is_clear_stays_clear_further_off_and_nearer_the_masonry(rule, place, off):
    """As model.check.worst takes for granted of the clauses; `place` is projection, beside and above."""
    out, beside, above = (np.array([value]) for value in place)
    nearer = rule.hold(out, beside, above, straight_distance(beside, above)).spare
    back, aside, up = out - off[0], beside + off[1], above + off[2]
    assert nearer < 0 or rule.hold(back, aside, up, straight_distance(aside, up)).spare >= -HAIR
