"""What a clearance finding says: where, how far, which rule governs, and a cure that cures."""

from __future__ import annotations

import re

import pytest
from hypothesis import assume, given, settings

from model.board import Board, Stock, StockKind, block
from model.check.all import check_surround
from model.check.finding import Finding, Status
from model.check.mantel import check_mantel
from model.check.regime import CLAUSES
from model.errors import Refused
from model.job import Job, default_job, with_texts, with_value
from model.surround import Surround, plan_surround
from model.units import parse_length
from tests.planned import plan_of
from tests.strategies import jobs
from tests.wood import PINE, hold, place_above, place_beside, place_moulding, surround_of

PARTS = {
    "left column", "right column", "left plinth", "right plinth", "frieze", "shelf", "bed mould",
    "left column nailers", "right column nailers", "frieze nailers",
}  # fmt: skip


def _find(job: Job) -> dict[str, Finding]:
    return {finding.part: finding for finding in check_mantel(plan_surround(job))}


def _with(**texts: str) -> dict[str, Finding]:
    return _find(with_texts(default_job(), [(path.replace("__", "."), text) for path, text in texts.items()]))


def test_every_part_has_its_own_finding():
    assert set(_with()) == PARTS


def test_what_is_furthest_over_comes_first_so_that_its_cure_serves_the_rest():
    found = list(_with(column__margin="8"))
    assert found[:6] == [
        "left plinth", "right plinth", "left column", "right column",
        "left column nailers", "right column nailers",
    ]  # fmt: skip


def test_boards_of_the_whole_surround_are_all_held():
    surround = plan_surround(with_value(default_job(), "column.margin", 2.0))
    marks = {mark for finding in check_mantel(surround) for mark in finding.boards}
    over = {
        mark
        for mark, board in zip(surround.marks, surround.boards, strict=True)
        if "column inner" in board.role
    }
    assert over <= marks


def test_projection_counts_from_the_masonry_furring_included():
    """A frieze board 3/4 in. thick carried out to 3 in. stands out 3 in."""
    frieze = _with(frieze__height="14")["frieze"]
    assert (frieze.measured, frieze.limit) == (8, 12)
    assert 'stands out 3" at 8" above' in frieze.message


def test_the_worst_point_is_named_in_the_room():
    shelf = _with(shelf__height="43")["shelf"]
    assert shelf.at == (0, 41, 7)
    column = _with(column__margin="11")["right column"]
    assert column.at is not None
    assert (column.at[0], column.at[2]) == (29, 4)


def test_hidden_framing_is_held_too():
    found = _with(column__margin="6")
    assert found["left column nailers"].status is Status.FAIL
    assert found["left column nailers"].measured == 6.75


def test_the_foot_of_the_moulding_counts_and_not_only_its_nose():
    """1 1/4 in. out at 8 in. is too far though the nose is clear; 10 in. is needed of it."""
    finding = hold(place_moulding([(0.75, 6), (1.25, 8), (1.5, 12), (6, 13)]), site__rule="irc")
    assert (finding.measured, finding.limit) == (pytest.approx(8), pytest.approx(10))
    assert finding.at == pytest.approx((0, 38, 1.25))


def test_the_governing_rule_is_named_with_the_other_ones_answer():
    finding = hold(place_beside(7, 12), site__rule="strictest")
    assert finding.rule == "NFPA 211 11.2.5.4"
    assert "NFPA 211 governs here; by IRC it is close." in finding.message
    assert hold(place_beside(5, 11), site__rule="strictest").rule == "IRC R1001.11 exception 4"


def test_one_rule_alone_says_nothing_of_the_other():
    assert "NFPA" not in hold(place_beside(5, 11), site__rule="irc").message
    assert "IRC" not in hold(place_beside(7, 12), site__rule="nfpa211").message


@pytest.mark.parametrize(
    ("distance", "status"),
    [(12.125, Status.PASS), (12.1, Status.WARN), (12, Status.WARN), (11.99, Status.FAIL)],
)
def test_less_than_an_eighth_to_spare_is_close(distance, status):
    finding = hold(place_above(7, distance), site__rule="irc")
    assert finding.status is status
    assert ('less than 1/8"' in finding.message) is (status is Status.WARN)


def test_a_text_never_hides_a_shortfall_by_rounding():
    finding = hold(place_above(7, 11.99), site__rule="irc")
    assert "11.9900 in. above the opening; 12.0000 in. is needed" in finding.message


def test_findings_are_written_in_the_units_of_the_job():
    finding = hold(place_above(7, 11), site__rule="irc", job__units="millimetres")
    assert finding.message.startswith(
        "The shelf stands out 178 mm at 279 mm above the opening; 305 mm is needed."
    )
    assert finding.unit == "in"


def test_not_in_use_turns_a_failure_into_a_caution_that_says_on_what_it_rests():
    finding = hold(place_above(7, 8), site__fireplace="not_in_use")
    assert finding.status is Status.WARN
    assert "put out of use permanently" in finding.message
    assert "local authority" in finding.message


@pytest.mark.parametrize("fireplace", ["gas", "electric", "factory_built"])
@pytest.mark.parametrize("rule", ["irc", "nfpa211", "strictest"])
def test_masonry_rules_are_not_offered_for_an_appliance(fireplace, rule):
    finding = hold(place_above(7, 40), site__fireplace=fireplace, site__rule=rule)
    assert (finding.status, finding.measured, finding.limit) == (Status.UNKNOWN, None, None)
    assert finding.path == "site.rule"
    assert finding.rule == "the manual's chart"


CURES = {
    "left column": ("column.margin", "Set the columns at least 1'-0\" from the opening."),
    "left plinth": ("column.margin", "Set the columns at least 1'-0 3/4\" from the opening."),
    "frieze": (
        "frieze.height",
        "Make the frieze no more than 10\" high, or set the shelf's top at least 5'-0\" over the hearth, "
        "or keep the frieze's projection to 3/4\" or less.",
    ),
}


def test_cures_name_a_value_on_the_safe_side():
    found = _with(column__margin="11", frieze__height="16")
    assert found["left column"].status is found["frieze"].status is Status.FAIL
    for part, (path, sentence) in CURES.items():
        assert (found[part].path, found[part].cure) == (path, sentence)


def test_the_shelf_cure_counts_from_where_the_tape_hooks_on():
    from_floor = _with(shelf__height="43", hearth__height="4", shelf__height_from="floor", frieze__height="5")
    assert from_floor["shelf"].cure.startswith("Set the shelf's top at least 4'-0\" over the floor")


def test_no_shelf_is_advised_above_the_ceiling():
    finding = _with(shelf__height="43", frieze__height="5", room__ceiling="48", opening__height="36")["shelf"]
    assert finding.status is Status.FAIL
    assert "set the shelf" not in finding.cure.lower()


def test_an_overmantel_up_to_a_low_ceiling_is_left_off_since_no_shelf_moves_its_head():
    low = {"room__ceiling": "60", "opening__height": "48", "shelf__height": "50", "frieze__height": "4"}
    found = _with(over__on="yes", over__reach="ceiling", **low)
    over = [finding for part, finding in found.items() if part.startswith("overmantel")]
    failing = [finding for finding in over if finding.status is Status.FAIL]
    assert failing
    assert {(finding.path, finding.cure) for finding in failing} == {("over.on", "Leave the overmantel off.")}


def test_a_slimmer_column_is_a_cure_where_that_is_enough():
    column = _with(site__rule="nfpa211", column__projection="8", column__margin="13")["left column"]
    first, second = column.cure.split(", or ")
    assert first == "Set the columns at least 1'-2\" from the opening"
    assert second == "keep the left column's projection to 7\" or less."


def _apply(job: Job, finding: Finding) -> Job:
    """The job with the cure's first value set."""
    sentence = finding.cure.split(", or ")[0]
    text = re.search(
        r"(?:at least|no more than|projection to) (.+?)(?: from| over| high| or less|\.|$)", sentence
    )
    assert text, sentence
    return with_value(job, finding.path, parse_length(text[1], style=job.about.length_style))


@settings(max_examples=200)
@given(jobs(site__fireplace="masonry"))
def test_the_cure_of_any_part_cures_it(job):
    assume(job.site.rule in CLAUSES)
    surround = plan_of(job)
    failing = [
        f for f in check_mantel(surround) if f.status is Status.FAIL and re.search("at least|no more", f.cure)
    ]
    assume(failing)
    for finding in failing:
        try:
            cured = plan_surround(_apply(job, finding))
        except Refused:
            continue  # a margin or a height past what the table admits
        if cured.layout.shortfalls != surround.layout.shortfalls:
            continue
        after = {f.part: f for f in check_mantel(cured)}
        if finding.part in after:
            assert after[finding.part].status is not Status.FAIL, finding


TABLET = {
    "opening.height": "30",
    "facing.height": "31",
    "frieze.kind": "tablet",
    "frieze.place": "between",
    "bed_mould.on": "no",
    "shelf.height": "50",
    "shelf.thickness": "2",
    "shelf.overhang_front": "6",
    "column.projection": "2",
}


@pytest.mark.parametrize(
    ("rows", "tablet", "sentence"),
    [
        # Tablet's foot 10 1/4 over the opening; it rises half as far as the frieze's edge, 1 3/4 of 3 1/2.
        ({"height": "14", "projection": "3/4"}, ("1 1/2", "2"), 'Make the frieze no more than 10 1/2" high'),
        # Tablet's foot 7 1/2 over it, 4 1/2 too low: 3/4 until the edge, 1 1/2 below, is there, then with it.
        ({"height": "12", "projection": "1"}, ("9", "3/4"), 'Make the frieze no more than 6" high'),
        # Tablet's foot 10 1/2 over it: IRC R1001.11 lets 10 1/2 / 8 = 1 5/16 stand out, 1/4 of it tablet.
        (
            {"height": "8", "projection": "1 3/16"},
            ("7", "1/4"),
            "or keep the frieze's projection to 1 1/16\"",
        ),
    ],
)
def test_a_tablet_is_cured_by_where_it_comes_to_lie_and_how_far_it_stands_out(rows, tablet, sentence):
    frieze = [(f"frieze.{name}", text) for name, text in rows.items()]
    layer = zip(("tablet.height", "tablet.thickness"), tablet, strict=True)
    job = with_texts(default_job(), [*TABLET.items(), *frieze, *layer])
    finding = _find(job)["frieze"]
    assert finding.status is Status.FAIL
    assert sentence in finding.cure
    cured = _apply(job, finding)
    if "or keep" in sentence:
        cured = with_texts(job, [("frieze.projection", "1 1/16")])
    assert _find(cured)["frieze"].status is not Status.FAIL


def test_a_cleat_that_an_old_ledger_parts_is_cured_as_the_whole_one_that_it_is_once_raised():
    rows = {"column.margin": "26", "frieze.height": "6", "shelf.height": "42"}
    ledger = {
        "old_ledger.top": "37",
        "old_ledger.tall": "2",
        "old_ledger.left": "32",
        "old_ledger.right": "32",
    }
    job = with_texts(default_job(), [*rows.items(), *ledger.items()])
    parted = [board.bounds for board in plan_surround(job).boards if board.role == "soffit nailer"]
    assert [(low[0], high[0]) for low, high in parted] == [(-44, -32), (32, 44)]
    finding = _find(job)["frieze nailers"]
    assert finding.status is Status.FAIL
    raised = _apply(job, finding)
    assert [board.role for board in plan_surround(raised).boards].count("soffit nailer") == 1
    assert _find(raised)["frieze nailers"].status is not Status.FAIL


def test_nailers_are_cured_with_the_one_that_is_left_out_until_its_return_goes_to_the_wall():
    rows = {"facing.width": "37", "facing.proud": "3", "column.margin": "0", "column.width": "6"}
    job = with_texts(default_job(), [("opening.width", "36"), ("plinth.on", "no"), *rows.items()])
    roles = [[board.role for board in plan_surround(job).boards]]
    finding = _find(job)["right column nailers"]
    # The inner one lies 3/4 behind its return's face: 6 less 3/4 is asked of the column.
    assert finding.cure == 'Set the columns at least 5 1/4" from the opening.'
    cured = _apply(job, finding)
    roles.append([board.role for board in plan_surround(cured).boards])
    assert [each.count("column nailer") for each in roles] == [2, 4]
    assert _find(cured)["right column nailers"].status is not Status.FAIL


def _mirror(board: Board) -> Board:
    swap = {"left": "right", "right": "left"}
    words = board.assembly.split()
    return board.mirrored(" ".join([swap.get(words[0], words[0]), *words[1:]]))


@given(jobs(site__fireplace="masonry", site__rule="strictest"))
def test_a_mirrored_surround_has_mirrored_findings(job):
    surround = plan_of(job)
    lopsided = (
        *surround.boards[:20],
        block("corbel", "left column", PINE, "y", (-27, -22), (30, 40), (0, 3)),
    )
    found = check_mantel(Surround(job, surround.layout, lopsided))
    mirrored = check_mantel(Surround(job, surround.layout, tuple(map(_mirror, lopsided))))
    swapped = {
        re.sub("left|right", lambda m: "right" if m[0] == "left" else "left", f.part): f for f in mirrored
    }
    for finding in found:
        twin = swapped[finding.part]
        assert finding.status is twin.status
        assert finding.measured == pytest.approx(twin.measured)
        assert finding.limit == pytest.approx(twin.limit)
        assert finding.path == twin.path


def test_boards_are_named_by_their_marks_and_only_those_over_the_line():
    shelf = place_above(7, 11)
    pieces = (shelf, block("shelf back", "shelf", PINE, "x", (-30, 30), (60, 62), (0, 7)))
    surround = surround_of(*pieces, site__rule="irc")
    (finding,) = check_mantel(surround)
    assert finding.boards == (surround.marks[0],)


def test_a_board_that_is_not_framing_is_held_under_its_own_assembly():
    stock = Stock(StockKind.PANEL, 0.25, "plywood")
    surround = surround_of(block("frieze panel", "frieze", stock, "x", (-30, 30), (40, 45), (0, 1)))
    assert [finding.part for finding in check_surround(surround) if finding.check == "mantel clearance"] == [
        "frieze"
    ]
