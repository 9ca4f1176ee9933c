"""What sub-assemblies weigh and where, and who lifts them."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings

from app.demo import list_demos, read_demo
from model.board import Board, Stock, StockKind
from model.job import with_texts
from model.parameters import SPECIES
from model.surround import plan_surround
from model.takeoff.weight import (
    advised_weight,
    centre_of,
    density_of,
    describe_lift,
    list_loads,
    total_weight,
    weigh_board,
)
from tests.planned import plan_of
from tests.solids import build_trimesh
from tests.strategies import jobs
from tests.takeoff_wood import board


def test_a_block_weighs_its_volume():
    """1 by 12 by 144 in. is one cubic foot; poplar at 12 % weighs 29.4 lb, as 0.42 x 62.4 x 1.12."""
    plank = board((0, 144), (0, 12), (0, 1), stock=Stock(StockKind.BOARD, 1, "poplar"))
    assert weigh_board(plank, 12)[0] == pytest.approx(29.35, abs=0.01)
    assert weigh_board(plank, 12)[1] == pytest.approx((72, 6, 0.5))


def test_every_wood_of_the_table_has_a_weight():
    for wood in (*SPECIES, "framing", "plywood"):
        assert 15 < density_of(wood, 8) < 60


def test_every_board_of_the_shipped_jobs_has_a_wood_that_is_weighed():
    for name in list_demos():
        for one in plan_surround(read_demo(name)).boards:
            assert weigh_board(one, 8)[0] > 0


def test_wetter_wood_is_heavier_and_plywood_as_it_is():
    assert density_of("maple", 12) == pytest.approx(density_of("maple", 0) * 1.12)
    assert density_of("plywood", 12) == density_of("plywood", 4)


@settings(max_examples=25, deadline=None)
@given(jobs())
def test_centres_of_gravity_are_what_an_independent_mesh_library_finds(job):
    surround = plan_of(job)
    moisture = job.shop.rates.moisture
    loads = {load.name: load for load in list_loads(surround)}
    sums: dict[str, list[tuple[float, np.ndarray]]] = {}
    alike: dict[tuple[str, str], list[Board]] = {}
    for one in surround.boards:
        alike.setdefault((one.assembly, one.stock.wood), []).append(one)
    for (assembly, wood), boards in alike.items():
        mesh = build_trimesh(boards)
        sums.setdefault(assembly, []).append(
            (mesh.volume / 1728 * density_of(wood, moisture), mesh.center_mass)
        )
    for name, parts in sums.items():
        weight = sum(part for part, _ in parts)
        centre = sum(part * at for part, at in parts) / weight
        assert loads[name].weight == pytest.approx(weight, rel=1e-6)
        assert loads[name].centre == pytest.approx(centre, abs=1e-5)


def test_all_loads_together_weigh_what_all_boards_do():
    surround = plan_surround(read_demo("brick"))
    loads = list_loads(surround)
    assert total_weight(loads) == pytest.approx(sum(weigh_board(b, 8)[0] for b in surround.boards))
    assert centre_of(loads)[0] == pytest.approx(0, abs=1e-9)
    assert [load.name for load in loads][:3] == ["nailers", "left column", "right column"]


def test_left_and_right_columns_weigh_the_same_at_mirrored_places():
    loads = {load.name: load for load in list_loads(plan_surround(read_demo("bedroom")))}
    left, right = loads["left column"], loads["right column"]
    assert left.weight == pytest.approx(right.weight)
    assert left.centre == pytest.approx((-right.centre[0], *right.centre[1:]))


def test_framing_and_mouldings_are_lifted_a_piece_at_a_time():
    loads = {load.name: load for load in list_loads(plan_surround(read_demo("brick")))}
    # One of eight, a 2x8 as long as the frieze, is heavier than all others together.
    assert loads["nailers"].lifted < 0.6 * loads["nailers"].weight
    assert loads["shelf"].lifted == loads["shelf"].weight


def test_less_is_advised_further_out_and_higher_up():
    near = advised_weight(10, 30, 40)
    assert near > advised_weight(15, 30, 40) > advised_weight(25, 30, 40) > 0
    assert near > advised_weight(10, 30, 60) > 0
    assert advised_weight(26, 30, 40) == 0
    assert advised_weight(10, 30, 71) == 0
    assert advised_weight(4, 30, 40) == near


def test_who_lifts_is_said_in_words():
    job = read_demo("bedroom")
    loads = {load.name: load for load in list_loads(plan_surround(job))}
    assert describe_lift(loads["left column"]) == "one person"
    heavy = with_texts(read_demo("brick"), [("board.species", "white_oak"), ("shelf.thickness", "4")])
    shelf = next(load for load in list_loads(plan_surround(heavy)) if load.name == "shelf")
    assert shelf.people is not None
    assert shelf.people >= 3
    assert describe_lift(shelf) == {3: "three people", 4: "4 people"}[shelf.people]
    assert shelf.people * shelf.advised >= shelf.weight > (shelf.people - 1) * shelf.advised


def test_what_is_long_is_steadied_by_two():
    loads = {load.name: load for load in list_loads(plan_surround(read_demo("brick")))}
    assert loads["frieze"].weight < loads["frieze"].advised
    assert describe_lift(loads["frieze"]) == "two people, to steady its length"


def test_what_goes_above_the_equations_reach_goes_up_from_a_platform():
    high = with_texts(read_demo("brick"), [("shelf.height", "80"), ("room.ceiling", "120")])
    shelf = next(load for load in list_loads(plan_surround(high)) if load.name == "shelf")
    assert shelf.people is None
    assert describe_lift(shelf).startswith("from a platform")
