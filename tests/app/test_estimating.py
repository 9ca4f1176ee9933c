"""Options worked out in a process of their own, and what becomes of questions when that process is gone."""

from __future__ import annotations

from pytestqt.qtbot import QtBot

from app.demo import read_demo
from app.estimating import Estimating
from app.estimating_process import Counted
from app.stock_lists import read_shipped_list

PATIENCE = 60_000


def test_a_process_that_went_while_nothing_was_asked_costs_no_answer(qtbot: QtBot):
    estimating = Estimating()
    estimating.use_list(read_shipped_list("example"))
    try:
        with qtbot.waitSignal(estimating.answered, timeout=PATIENCE):
            estimating.ask([read_demo("bedroom")])
        process = estimating._process._process
        process.kill()
        process.join()
        with qtbot.waitSignal(estimating.answered, timeout=PATIENCE):
            estimating.ask([read_demo("brick")])
        assert isinstance(estimating.find(read_demo("brick")), Counted)
    finally:
        estimating.end()
