"""A box to tick is seen on either ground, ticked or not."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QStyle, QStyleOptionButton

from app.theme import Ground, colours, dress
from app.tick_box import Tick
from render.pens import contrast

LEAST = 3.0
"""WCAG 2.1, 1.4.11: of what tells a control from what is beside it."""


@pytest.fixture(params=[Ground.LIGHT, Ground.DARK])
def ground(request, qapp: QApplication):
    dress(qapp, request.param)
    yield request.param
    dress(qapp, Ground.LIGHT)


def test_the_edge_of_an_empty_box_stands_out_from_its_ground(qtbot, ground):
    box = Tick("With edges")
    qtbot.addWidget(box)
    box.resize(box.sizeHint())
    option = QStyleOptionButton()
    box.initStyleOption(option)
    at = box.style().subElementRect(QStyle.SubElement.SE_CheckBoxIndicator, option, box)
    shown = box.grab().toImage()
    edge = shown.pixelColor(at.left(), at.center().y())
    assert contrast(edge.name(), colours().panel) >= LEAST


def test_a_ticked_box_has_a_tick_in_it_and_a_click_on_the_words_turns_it(qtbot, dressed):
    box = Tick("With edges")
    qtbot.addWidget(box)
    box.resize(box.sizeHint())
    empty = box.grab().toImage()
    qtbot.mouseClick(box, Qt.MouseButton.LeftButton, pos=box.rect().center())
    assert box.isChecked()
    assert box.grab().toImage() != empty
