"""What is said of obstacles that boards keep clear of, are cut round, or run into."""

from __future__ import annotations

from model.check.finding import Status
from model.check.obstacles import check_obstacles
from model.job import default_job, with_texts
from model.surround import plan_surround


def check(*settings: str):
    surround = plan_surround(with_texts(default_job(), [tuple(s.split("=")) for s in settings]))
    return surround, check_obstacles(surround)


def test_nothing_is_said_where_nothing_was_measured():
    assert check()[1] == ()


def test_an_outlet_behind_a_column_is_a_failure_that_names_the_boards():
    """The right column stands from 31 to 38 1/2 in.; a plate 2 3/4 wide at 33 begins at 31 5/8."""
    surround, (found,) = check("outlet.right=33")
    assert (found.status, found.part, found.path) == (Status.FAIL, "right outlet", "outlet.right")
    assert found.measured == 38.5 - (33 - 2.75 / 2)
    covering = {
        b.role for mark, b in zip(surround.marks, surround.boards, strict=True) if mark in found.boards
    }
    assert "column panel" in covering
    assert all(mark in found.message for mark in found.boards)


def test_an_outlet_beside_the_columns_is_clear_by_what_is_between():
    """Plinth to 39 1/4; the plate from 46 - 1 3/8; the nearest board at its height is the column's."""
    _, (found,) = check("outlet.left=46", "plinth.height=4")
    assert found.status is Status.PASS
    assert found.message.startswith('The left outlet is clear of the surround by 6 1/8"')


def test_a_casing_that_the_shelfs_end_runs_into_is_named_with_the_amount_and_what_to_shorten():
    """The shelf ends 41 1/2 in. from the centre line."""
    _, (found,) = check("casing.left=40")
    assert found.status is Status.FAIL
    assert found.measured == 1.5
    assert "shelf's left overhang" in found.cure
    _, (clear,) = check("casing.left=40", "shelf.overhang_left=1 1/2", "bed_mould.on=no")
    assert clear.status is Status.PASS


def test_a_casing_that_ends_below_the_shelf_or_begins_over_it_is_clear():
    assert check("casing.right=40", "casing.bottom_right=60")[1][0].status is Status.PASS
    assert check("casing.right=40", "casing.top_right=40")[1][0].status is Status.PASS


def test_a_baseboard_is_said_to_be_cut_back_notched_round_or_clear():
    _, (cut,) = check("facing.width=60", "baseboard.height_left=5")
    assert cut.message == (
        'The left baseboard is cut off square 39 1/4" from the centre line, '
        "and ends against the column's foot."
    )
    notched = ("plinth.on=no", "facing.width=50", "baseboard.meets=notched", "baseboard.height_left=5")
    _, (round_it,) = check(*notched)
    assert len(round_it.boards) == 2
    assert '1/2" deep' in round_it.message
    _, (clear,) = check("facing.width=100", "baseboard.height_left=5")
    assert clear.message == "The left baseboard ends clear of the column's foot."


def test_a_baseboard_that_reaches_a_capital_is_said_to_end_clear_of_it():
    low = ("shelf.height=40", "frieze.height=36", "plinth.height=2", "plinth.projection=1/2")
    _, (cut,) = check(*low, "facing.width=60", "capital.on=yes", "capital.size=1", "baseboard.height_left=7")
    assert cut.message.startswith("The left baseboard is cut off square 39 ")
    assert cut.message.endswith(", and ends clear of the capital.")
