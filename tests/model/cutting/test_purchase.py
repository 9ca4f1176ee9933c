"""What was bought, as a job file holds it: read back whole, refused where it cannot be."""

from __future__ import annotations

import json
from typing import Any

import pytest

from model.board import StockKind
from model.cutting.left_over import LeftOver
from model.cutting.purchase import BoughtBoard, PlannedPiece, Printed, Purchase, read_purchase, store_purchase
from model.cutting.task import Lane, Placed, SawnBoard, SawnSheet, ThroughCut
from model.errors import JobRefused, Refused
from model.job import default_job, read_job, write_job

PIECE = PlannedPiece("1.1", "C1a", "", 3000, 224)
BOARD = BoughtBoard(
    1, StockKind.BOARD, "poplar", "1x4", "", 0.75, 6144, 224, 32, 0, 8, 1240, (PIECE,),
    (LeftOver(3000, 224),),
    board=SawnBoard("s1", (Lane(224, ("1.1",)),)),
)  # fmt: skip
SHEET = BoughtBoard(
    2, StockKind.PANEL, "plywood", "1/4 in.", "", 0.25, 6144, 3072, 0, 0, 8, None,
    (PlannedPiece("2.1", "C4", "", 3000, 500),), (),
    sheet=SawnSheet("s2", (Placed("2.1", 0, 0, 3000, 500),), (ThroughCut("x", 3000, 0, 0, 6144, 3072),)),
    is_cut=True,
)  # fmt: skip
PURCHASE = Purchase((Printed("1x4 yellow poplar, 8'-0\"", 3),), (BOARD, SHEET))


def _plain() -> dict[str, Any]:
    return json.loads(json.dumps(store_purchase(PURCHASE)))


def test_it_comes_back_as_it_was_kept():
    assert read_purchase(_plain()) == PURCHASE


def test_a_job_that_nothing_was_bought_for_says_nothing_of_it():
    text = write_job(default_job())
    assert "purchase" not in json.loads(text)
    assert read_job(text).purchase == Purchase()


@pytest.mark.parametrize(
    ("path", "value", "words"),
    [
        (("boards", 0, "price"), "much", 'purchase.boards[0].price "much"'),
        (("boards", 0, "price"), -1, "price of 0 or more"),
        (("boards", 0, "length"), 0, "sizes above 0"),
        (("boards", 0, "length"), 10**9, "sizes above 0"),
        (("boards", 0, "kerf"), 1.5, "purchase.boards[0].kerf 1.5"),
        (("boards", 0, "kind"), "log", 'purchase.boards[0].kind "log"'),
        (("boards", 0, "board"), None, "the cuts of a board or of a sheet"),
        (("boards", 0, "pieces"), [], "list each piece once and cut it once"),
        (("boards", 0, "colour"), "red", "fields that are not known here"),
        (("boards", 1, "number"), 1, "a number of its own"),
        (("boards",), {}, "purchase.boards"),
        (("printed", 0, "count"), -1, "write a count from 0 on"),
        (("boards", 0, "pieces", 0, "key"), "9", "list each piece once and cut it once"),
    ],
)
def test_what_cannot_be_is_refused_by_its_place(path: tuple[Any, ...], value: Any, words: str):
    data = _plain()
    place: Any = data
    for part in path[:-1]:
        place = place[part]
    place[path[-1]] = value
    with pytest.raises(Refused) as refused:
        read_purchase(data)
    assert words in str(refused.value)


def test_a_job_file_names_the_fault_beside_its_others():
    text = json.loads(write_job(default_job()))
    text["purchase"] = {"boards": 3, "printed": []}
    text["opening"]["width"] = -1
    with pytest.raises(JobRefused) as refused:
        read_job(json.dumps(text))
    assert len(refused.value.faults) == 2
    assert refused.value.faults[0].startswith("purchase.boards 3")


def test_a_job_file_without_the_purchases_lists_is_refused():
    text = json.loads(write_job(default_job()))
    text["purchase"] = {}
    with pytest.raises(JobRefused, match="purchase"):
        read_job(json.dumps(text))
