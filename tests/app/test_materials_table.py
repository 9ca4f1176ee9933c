"""The materials on the screen are the materials on paper, and are only worked out while they are read."""

from __future__ import annotations

import pytest
from pytestqt.qtbot import QtBot

from app.demo import read_demo
from app.materials_table import HEADINGS, MaterialsTable
from app.rooms import CUTS, MATERIALS
from app.takeoff_beside import TakeoffBeside
from app.window import Window
from model.job import default_job, with_texts
from model.surround import plan_surround
from model.takeoff.packages import format_package
from model.takeoff.takeoff import take_off
from model.units import FEET_INCHES_16
from render.materials_sheet import describe_amount

TAKEOFF = take_off(plan_surround(read_demo("brick")))


@pytest.fixture
def table(qtbot: QtBot, dressed) -> MaterialsTable:
    shown = MaterialsTable()
    qtbot.addWidget(shown)
    shown.show_materials(TAKEOFF.materials, FEET_INCHES_16)
    return shown


def test_every_material_has_a_line_as_on_paper(table: MaterialsTable):
    model = table.model()
    assert model.rowCount() == len(TAKEOFF.materials)
    for row, material in enumerate(TAKEOFF.materials):
        texts = [str(model.index(row, column).data()) for column in range(len(HEADINGS))]
        assert texts[0] == material.name
        assert texts[2] == describe_amount(material, FEET_INCHES_16)
        assert texts[3] == format_package(material, FEET_INCHES_16)
        assert all(rate.row.label[1:] in texts[4] for rate in material.rates)


def test_a_line_tells_where_its_rates_come_from(table: MaterialsTable):
    from PySide6.QtCore import Qt

    tip = str(table.model().index(0, 0).data(Qt.ItemDataRole.ToolTipRole))
    assert all(rate.source in tip and str(rate.standing) in tip for rate in TAKEOFF.materials[0].rates)


def test_the_line_in_focus_stays(table: MaterialsTable):
    table.setCurrentIndex(table.model().index(3, 0))
    table.show_materials(TAKEOFF.materials, FEET_INCHES_16)
    assert table.currentIndex().row() == 3


def test_only_the_last_that_was_asked_for_is_handed_on(qtbot: QtBot):
    beside = TakeoffBeside()
    found = []
    beside.ready.connect(found.append)
    plans = [plan_surround(with_texts(default_job(), [("column.width", text)])) for text in ("7", "8", "9")]
    for plan in plans:
        beside.ask(plan)
        beside.ask(plan)
    qtbot.waitUntil(lambda: bool(found), timeout=60_000)
    assert [takeoff.surfaces.boards for takeoff in found] == [plans[-1].boards]
    beside.wait()


def test_the_window_lists_materials_while_they_are_read_and_follows_edits(qtbot: QtBot, window: Window):
    window.drafting.list_rest()
    assert not window.tray.materials.materials
    with qtbot.waitSignal(window.takeoff.ready, timeout=60_000):
        window.tray.turn_to(MATERIALS)
    before = window.tray.materials.materials
    assert {material.name for material in before} >= {"Primer", "Caulk", "Wood glue"}
    with qtbot.waitSignal(window.takeoff.ready, timeout=60_000):
        window.session.set_text("rates.primer_coats", "2")
    primers = [
        next(m for m in lines if m.name == "Primer") for lines in (before, window.tray.materials.materials)
    ]
    assert primers[1].amount == pytest.approx(2 * primers[0].amount)


def test_nothing_is_taken_off_while_another_list_is_read(qtbot: QtBot, window: Window):
    window.tray.turn_to(CUTS)
    window.drafting.list_rest()
    with qtbot.assertNotEmitted(window.takeoff.ready, wait=200):
        window.session.set_text("column.width", "8")
