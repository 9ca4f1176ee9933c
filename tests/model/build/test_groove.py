"""Solid panels float: sizes worked out by hand, and none of any job ever leaves its groove or fills it."""

from __future__ import annotations

import pytest
from hypothesis import given, settings

from model.board import AXES, Board, StockKind
from model.build.groove import Groove, Swing, find_groove, is_floating
from model.job import Job, default_job, with_texts
from model.reference.moisture import FIRE_SIDE, SHRINKS_ACROSS, moisture_in_air
from model.surround import Surround, plan_surround
from tests.planned import plan_of
from tests.strategies import jobs

HAIR = 1e-6
POPLAR = Swing(built=8.0, damp=10.0, dry=4.0, swells=0.006, shrinks=0.012)


def _plan(**texts: str) -> Surround:
    pairs = [(path.replace("__", "."), text) for path, text in texts.items()]
    return plan_surround(with_texts(default_job(), [("panel.kind", "solid"), *pairs]))


def _panels(surround: Surround) -> list[Board]:
    return [board for board in surround.boards if is_floating(board)]


def test_a_panel_is_cut_short_of_its_grooves_by_what_it_swells_and_the_play():
    """12 + 2 × 3/8 = 12.75; (12.75 - 2/32) / 1.006 = 12.6118, down to a sixteenth 12 9/16."""
    groove = Groove(3 / 8, POPLAR)
    assert groove.width(12) == 12 + 9 / 16
    assert groove.free(12) == pytest.approx(12.75 - 12.5625 * 1.006)
    assert groove.held(12) == pytest.approx(12.5625 * 0.988 - 12 - 0.375)


def test_a_wider_panel_wants_a_deeper_groove_and_one_too_wide_gets_none():
    """12 in., 3/8: 12 9/16 × 0.988 - 12 3/8 = 0.037; 7/16: 12 11/16 × 0.988 - 12 7/16 = 0.098."""
    depths = [find_groove(((0, 0, across, 40),), POPLAR, 2.0) for across in (4, 12, 20, 30)]
    assert [groove and groove.depth for groove in depths] == [3 / 8, 7 / 16, 1 / 2, 11 / 16]
    assert find_groove(((0, 0, 30, 40),), POPLAR, 0.6) is None


def test_a_panels_grain_runs_along_its_longer_side():
    surround = _plan(panel__reveal="1/4")
    grains = {board.role: board.length_axis for board in _panels(surround)}
    assert grains == {"column panel": "y", "frieze panel": "x"}


def test_panels_are_sheets_unless_solid_ones_are_asked_for():
    assert not _panels(plan_surround(default_job()))


def test_a_solid_panel_is_of_the_boards_wood_and_lies_within_their_thickness():
    surround = _plan(panel__reveal="1/4", board__species="cherry")
    assert not surround.layout.shortfalls
    for panel in _panels(surround):
        assert (panel.stock.kind, panel.stock.wood, panel.thickness) == (StockKind.BOARD, "cherry", 0.25)
        front = surround.layout.frieze_front if panel.assembly == "frieze" else surround.layout.column_front
        assert (panel.bounds[0][2], panel.bounds[1][2]) == (front - 0.5, front - 0.25)


def test_a_reveal_that_leaves_no_wood_behind_the_groove_is_built_less():
    """3/4 boards, 1/4 panels and 1/8 behind them: 3/8 at most."""
    (short,) = _plan(panel__reveal="3/4").layout.shortfalls
    assert (short.path, short.built) == ("panel.reveal", 0.375)


@pytest.mark.parametrize(
    ("texts", "reason"),
    [
        ({"column__taper": "2"}, "tapered"),
        ({"board__thickness": "1/2", "panel__thickness": "1/2"}, "too thin"),
        (
            {"over__on": "yes", "over__panels": "1", "over__rail": "1 1/4", "room__dampest": "85"},
            "too narrow",
        ),
    ],
)
def test_where_no_groove_can_be_cut_panels_are_sheets_and_it_is_said(texts, reason):
    shortfalls = [s for s in _plan(panel__reveal="1/4", **texts).layout.shortfalls if s.path == "panel.kind"]
    assert [s.built for s in shortfalls] == ["sheet"]
    assert reason in shortfalls[0].reason


def _list_levels(surround: Surround, panel: Board) -> tuple[float, ...]:
    """Across the grain: bottom and mouth of the groove below a panel, mouth and bottom of the one above it.

    Read off the sections of the members that it lies in, not off the layout.
    """
    along = AXES.index(panel.length_axis)
    across, levels = 1 - along, []
    middle = [(low + high) / 2 for low, high in zip(*panel.bounds, strict=True)]
    for board in surround.boards:
        member = board.assembly == panel.assembly and board.role.endswith((" stile", " rail"))
        if member and board.bounds[0][along] < middle[along] < board.bounds[1][along]:
            places = sorted({vertex[across] for vertex in board.vertices})
            if board.bounds[0][across] < panel.bounds[0][across] < board.bounds[1][across]:
                levels += places[-2:]
            if board.bounds[0][across] < panel.bounds[1][across] < board.bounds[1][across]:
                levels += places[:2]
    return tuple(sorted(levels))


def _moved(job: Job, size: float, end: float) -> float:
    """Wood Handbook equation 13-3, written down once more."""
    built = job.shop.rates.moisture
    return size * (1 + (end - built) / (3000 / SHRINKS_ACROSS[job.design.board.species].value - 30 + built))


@settings(max_examples=60)
@given(jobs(panel__kind="solid", column__kind="framed", frieze__kind="framed"))
def test_no_panel_of_any_job_falls_out_at_the_driest_or_fills_its_grooves_at_the_dampest(job: Job):
    surround = plan_of(job)
    room, built = surround.job.site.room, job.shop.rates.moisture
    air = [moisture_in_air(humidity) for humidity in (room.driest, room.dampest)]
    fire = [] if surround.job.site.fireplace == "not_in_use" else [FIRE_SIDE.value]
    for panel in _panels(surround):
        bottom, mouth, far_mouth, far_bottom = _list_levels(surround, panel)
        dry = _moved(surround.job, panel.width, min(built, *air, *fire))
        wet = _moved(surround.job, panel.width, max(built, *air))
        assert bottom + dry > far_mouth + 1 / 32
        assert far_bottom - dry < mouth - 1 / 32
        assert wet < far_bottom - bottom - 1 / 32


def test_a_groove_leaves_wood_in_every_member():
    surround = _plan(panel__reveal="1/4", frieze__stile="1", column__stile="1 1/4", column__panels="3")
    assert _panels(surround)
    for frame in (surround.layout.right.frame, surround.layout.frieze_frame):
        if frame.groove is not None:
            assert min(x1 - x0 for x0, _, x1, _ in frame.stiles[1:-1] or frame.stiles) > frame.groove.depth
