"""What holds boards together."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from app.demo import read_demo
from model.board import StockKind
from model.build.groove import is_floating
from model.check.holding import work_out_pull
from model.job import default_job, with_texts
from model.reference.nails import NAILS
from model.surround import plan_surround
from model.takeoff.fasteners import (
    Means,
    choose_nail,
    choose_screw,
    count_along,
    count_fixings,
    list_fixings,
    nails_weight,
)
from model.takeoff.surfaces import list_surfaces, part_surfaces
from tests.planned import plan_of, take
from tests.strategies import jobs
from tests.takeoff_wood import FRAMING, SHEET, board

RATES = default_job().shop.rates


def _fixings(*boards, rates=RATES):
    return list_fixings(part_surfaces(boards), rates)


def test_a_board_nailed_on_another_is_nailed_through_the_thinner_with_three_times_its_thickness():
    """3/4 in. on a block 3 in. deep: 2 1/4 in., a 7d; 40 in. long: one at each end and two between."""
    (fixing,) = _fixings(board((0, 40), (0, 2), (3, 3.75)), board((0, 40), (0, 2), (0, 3)))
    assert (fixing.means, fixing.length, fixing.count) == (Means.NAIL, 2.25, 4)
    assert fixing.through == 0
    assert fixing.glue == pytest.approx(80)


def test_a_nail_through_a_thin_piece_into_a_thin_one_goes_on_into_what_lies_behind_it():
    """Three layers of 3/4 in.: 1 1/4 in. would leave half an inch in the second; 2 in. end in the third, an
    eighth and more short of its face. Nailed through the one whose heads are hidden by nothing."""
    layers = [board((0, 40), (0, 2), (z, z + 0.75)) for z in (0.0, 0.75, 1.5)]
    lengths = {(fixing.through, fixing.into): fixing.length for fixing in _fixings(*layers)}
    assert sorted(lengths.values()) in ([1.25, 2.0], [2.0, 2.0])
    assert {2.0} <= set(lengths.values())
    two = [fixing.length for fixing in _fixings(*layers[:2])]
    assert two == [1.25]


def test_a_nail_never_comes_out_of_the_far_face():
    """3/4 in. on 3/4 in.: 2 1/4 would come out; 1 1/4 leaves 1/4."""
    (fixing,) = _fixings(board((0, 40), (0, 2), (0.75, 1.5)), board((0, 40), (0, 2), (0, 0.75)))
    assert (fixing.means, fixing.length) == (Means.NAIL, 1.25)


@pytest.mark.parametrize("out", [0.0, 0.1, 1 / 3, 2.3, 7.7])
def test_a_piece_just_as_deep_as_may_be_nailed_through_is_nailed_wherever_it_stands(out):
    """1 in. on a block 3 in. deep, all of it moved out by what rounding makes 0.9999… or 1.0000…1 of."""
    (fixing,) = _fixings(board((0, 40), (0, 2), (out + 3, out + 4)), board((0, 40), (0, 2), (out, out + 3)))
    assert (fixing.means, fixing.length) == (Means.NAIL, 3.0)


def test_a_wide_piece_is_nailed_in_pairs():
    (fixing,) = _fixings(board((0, 40), (0, 6), (3, 3.75)), board((0, 40), (0, 6), (0, 3)))
    assert fixing.count == 8


def test_a_thin_sheet_is_bradded_closer():
    """1/4 in. on a strip: 3/4 in. brads every 7 in. along 40 in., 35 in. between the first and the last."""
    sheet = board((0, 40), (0, 20), (-0.25, 0), stock=SHEET)
    (fixing,) = _fixings(sheet, board((0, 40), (0, 2), (0, 0.75)))
    assert (fixing.means, fixing.length, fixing.count) == (Means.BRAD, 0.75, 6)


def test_a_brad_into_the_floor_of_a_rebate_is_held_to_the_wood_that_is_left_there():
    """A 1/4 in. sheet on 1/2 in. of wood: 3/4 would come out at the face, 5/8 leaves 1/8."""
    sheet = board((0, 40), (0, 20), (-0.25, 0), stock=SHEET)
    (fixing,) = _fixings(sheet, board((0, 40), (0, 2), (0, 0.5)))
    assert (fixing.means, fixing.length) == (Means.BRAD, 0.625)


def test_a_rail_between_stiles_is_screwed_from_its_back():
    """3/4 in. stock: two screws of 1 1/4 in. into the stile's edge; glue on the rail's end, 4 by 3/4."""
    stile, rail = board((0, 2), (0, 40), (0, 0.75), axis="y"), board((2, 20), (0, 4), (0, 0.75))
    (fixing,) = _fixings(stile, rail)
    assert (fixing.means, fixing.length, fixing.count) == (Means.SCREW, 1.25, 2)
    assert fixing.glue == pytest.approx(3)


def test_a_narrow_rail_takes_one_screw():
    stile, rail = board((0, 2), (0, 40), (0, 0.75), axis="y"), board((2, 20), (0, 1.375), (0, 0.75))
    (fixing,) = _fixings(stile, rail)
    assert fixing.count == 1


def test_boards_edge_to_edge_are_glued_and_nothing_else():
    (fixing,) = _fixings(board((0, 40), (0, 5), (0, 0.75)), board((0, 40), (5, 10), (0, 0.75)))
    assert (fixing.means, fixing.count) == (Means.NONE, 0)
    assert fixing.glue == pytest.approx(30)


def test_nothing_is_driven_or_glued_into_a_sheets_edge():
    sheet = board((0, 40), (0, 20), (0, 0.25), stock=SHEET)
    (fixing,) = _fixings(sheet, board((0, 40), (20, 20.75), (-2, 2)))
    assert (fixing.count, fixing.glue) == (0, 0)


def test_framing_is_nailed_and_never_glued():
    (fixing,) = _fixings(
        board((0, 0.75), (0, 40), (0, 3), axis="y"),
        board((0.75, 2.25), (0, 40), (0, 1.5), axis="y", stock=FRAMING),
    )
    assert fixing.means is Means.NAIL
    assert fixing.glue == 0


def test_heads_that_can_be_hidden_are():
    """Two equal boards, one with its back to the wall: through that one no head shows."""
    wall = board((-50, 50), (-50, 50), (-9, 0))
    surfaces = part_surfaces(
        (board((0, 40), (20, 22), (0.75, 1.5)), board((0, 40), (20, 22), (0, 0.75))), (wall,)
    )
    (fixing,) = list_fixings(surfaces, RATES)
    assert (fixing.through, fixing.shows) == (1, False)


def test_closer_nails_are_more_nails():
    job = with_texts(default_job(), [("rates.nail_spacing", "6"), ("rates.nail_factor", "2")])
    pair = (board((0, 40), (0, 2), (3, 3.75)), board((0, 40), (0, 2), (0, 3)))
    (fixing,) = _fixings(*pair, rates=job.shop.rates)
    assert (fixing.count, fixing.length) == (7, 1.5)


@given(st.floats(0.5, 200), st.floats(2, 32))
def test_nails_of_a_row_are_never_further_apart_than_asked(length, spacing):
    count = count_along(length, spacing)
    assert count >= 1
    if count > 1:
        assert max(length - 5, 0) / (count - 1) <= spacing + 1e-6


@given(st.floats(0.1, 4), st.floats(0.1, 6))
def test_the_nail_chosen_is_sold_and_fits(wanted, room):
    length = choose_nail(wanted, room)
    assert length == 0 or length in {nail.length for nail in NAILS}
    assert length <= room + 1e-9


@settings(max_examples=5, deadline=None)
@given(jobs())
def test_whatever_is_driven_in_any_job_stays_in_the_wood(job):
    boards = plan_of(job).boards
    for fixing in take(job).fixings:
        one, other = boards[fixing.through], boards[fixing.into]
        if fixing.means is Means.NAIL:
            room = sum(max(b.extent(axis) for axis in "xyz") for b in (one, other))
            assert fixing.length < room
        assert fixing.count >= 0
        if StockKind.FRAMING in (one.stock.kind, other.stock.kind) or one.assembly != other.assembly:
            assert fixing.glue == 0


def test_counts_are_by_size_with_the_longest_first():
    surround = plan_surround(default_job())
    fixings = list_fixings(list_surfaces(surround), RATES)
    counts = count_fixings(fixings)
    assert sum(count for _, _, count, _ in counts) == sum(fixing.count for fixing in fixings)
    assert all(shown <= count for _, _, count, shown in counts)
    nails = [length for means, length, *_ in counts if means is Means.NAIL]
    assert nails == sorted(nails, reverse=True)
    for nail, count, pounds in nails_weight(fixings):
        assert pounds == pytest.approx(count / nail.per_pound)


def test_a_solid_panel_has_a_pin_in_each_end_and_neither_glue_nor_nails_besides():
    job = with_texts(
        default_job(), [("panel.kind", "solid"), ("panel.reveal", "1/4"), ("panel_mould.on", "yes")]
    )
    surround = plan_surround(job)
    surfaces = list_surfaces(surround)
    panels = {i for i, board in enumerate(surround.boards) if is_floating(board)}
    held = [f for f in list_fixings(surfaces, job.shop.rates) if panels & {f.through, f.into}]
    assert len(held) == 2 * len(panels)
    assert {(f.means, f.count, f.glue, f.shows) for f in held} == {(Means.BRAD, 1, 0.0, False)}
    assert all(
        surround.boards[f.through].length_axis != surround.boards[f.into].length_axis and f.into in panels
        for f in held
    )


def _screwed(**texts):
    """The shipped brick front, and what is driven between its shelf and its ledger."""
    pairs = [(path.replace("__", "."), text) for path, text in texts.items()]
    surround = plan_surround(with_texts(read_demo("brick"), pairs))
    ledger = surround.marks.index("N4")
    fixings = list_fixings(list_surfaces(surround), surround.job.shop.rates)
    between = [f for f in fixings if ledger in (f.through, f.into)]
    return surround, [f for f in between if surround.boards[f.through].assembly == "shelf"]


def test_a_shelf_is_screwed_to_its_ledger_with_what_its_check_counts_on():
    """74 in. of contact: every 14 in.; 1 3/4 in. through a board of 3/4 leaves the 1 in. that is reckoned."""
    surround, found = _screwed()
    (fixing,) = found
    assert (fixing.means, fixing.length, fixing.count) == (Means.LEDGER_SCREW, 1.75, 6)
    pull = work_out_pull(surround)
    assert pull.ledger == surround.marks[fixing.into]
    assert fixing.length - surround.boards[fixing.through].thickness >= pull.thread


def test_a_plank_too_thick_for_a_nail_is_screwed_down_too():
    """2 1/4 in.: bored until 1 in. is left, and 1 in. of thread in the ledger."""
    _, found = _screwed(shelf__kind="plank")
    assert {(f.means, f.length) for f in found} == {(Means.LEDGER_SCREW, 2.0)}


def test_screws_are_no_further_apart_than_nails_and_never_more_than_a_shelfs_check_takes_them():
    assert _screwed(rates__nail_spacing="12")[1][0].count == 7
    assert _screwed(rates__nail_spacing="24")[1][0].count == _screwed()[1][0].count


@given(st.floats(0.5, 6), st.floats(0.75, 7.25))
def test_a_screw_has_its_thread_in_the_ledger(through, into):
    length = choose_screw(through, into)
    assert length - min(through, 1.0) >= min(1.0, into) - 1e-9
    assert length * 2 / 3 >= min(1.0, into) - 1e-9


@settings(max_examples=8, deadline=None)
@given(jobs())
def test_where_a_shelfs_check_counts_on_screws_there_are_some(job):
    surround = plan_of(job)
    ledger = work_out_pull(surround).ledger
    if ledger in surround.marks:
        into = surround.marks.index(ledger)
        assert [f for f in take(job).fixings if f.means is Means.LEDGER_SCREW and f.into == into]
