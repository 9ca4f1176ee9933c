"""The price in the tray: what it rests on, what is missing, and what of it the homeowner sees."""

from __future__ import annotations

from dataclasses import replace
from io import BytesIO

import pdfplumber
from pytestqt.qtbot import QtBot

from app.demo import read_demo
from app.outputs import OFFER, build_outputs
from app.price_table import WIDTHS, PriceTable, _list_texts
from app.rooms import PRICE
from app.stock_lists import read_shipped_list, save_stock_list
from app.theme import RHYTHM
from app.window import Window
from model.job import default_job, with_texts
from model.money import format_money
from model.price import INVENTED, Part, Price, PriceLine

LINES = (
    PriceLine("Boards", 10000),
    PriceLine("Building", 30000, "6 hours", Part.WORK),
    PriceLine("Margin", 4000, "10 %", Part.MARGIN),
    PriceLine("Tax", 4400, "10 %", Part.TAX),
)
PRICED = Price(LINES, 48400, (), "$")


def _rows(table: PriceTable) -> list[list[str]]:
    model = table.table.model()
    return [[str(model.index(r, c).data()) for c in range(4)] for r in range(model.rowCount())]


def _texts(**shown) -> list[tuple[str, ...]]:
    return [line[:4] for line in _list_texts(PRICED, replace(default_job().shop.offer, **shown))]


def test_each_line_says_what_the_homeowner_sees_of_it():
    assert _texts()[2] == ("Margin", "10 %", "$40.00", "$40.00")
    assert _texts(margin_shown=False)[2][3] == "spread"
    assert [line[3] for line in _texts(margin_shown=False)[:2]] == ["$110.00", "$330.00"]
    assert _texts(shows="groups")[0][3] == "in materials, $110.00"
    assert _texts(shows="total")[1][3] == "in the total"
    assert _texts(tax_shown=False)[3][3] == "spread"
    assert _texts(tax_shown=False)[-1][:2] == ("Total", "10 % tax included")


def test_the_list_in_use_is_ticked_and_invented_prices_are_said_to_be_so(
    window: Window, qtbot: QtBot, tmp_path
):
    menus, stock = window.menus, window.menus.stock_lists
    for name in ("example", "usual"):
        window.cutting.use_list(name)
        stock[name].parent().aboutToShow.emit()
        assert [key for key, action in stock.items() if action.isChecked()] == [name]
        assert not menus.own_list.isVisible()
    own = tmp_path / "river yard.yard"
    save_stock_list(own, replace(read_shipped_list("example"), name="River yard"))
    for name, invented in (("example", True), (str(own), False)):
        window.cutting.use_list(name)
        window.session.open(with_texts(read_demo("bedroom"), [("offer.hour", "60")]), None)
        window.tray.turn_to(PRICE)
        qtbot.waitUntil(lambda: window.tray.price.words.text().startswith("Total"), timeout=60_000)
        assert (INVENTED in window.tray.price.words.text()) is invented
    stock["usual"].parent().aboutToShow.emit()
    assert menus.own_list.isChecked()
    assert menus.own_list.text() == "river yard"


def test_it_is_worked_out_while_it_is_looked_at_and_is_what_the_offer_prints(window: Window, qtbot: QtBot):
    window.cutting.use_list("example")
    job = with_texts(read_demo("bedroom"), [("offer.hour", "60"), ("offer.margin", "10"), ("offer.tax", "8")])
    window.session.open(job, None)
    assert not window.options.estimating.is_busy
    window.tray.turn_to(PRICE)
    table = window.tray.price
    assert "being worked out" in table.words.text()
    assert not table.table.isEnabled()
    qtbot.waitUntil(lambda: table.table.isEnabled(), timeout=60_000)
    rows = _rows(table)
    assert [row[0] for row in rows][-3:] == ["Margin", "Tax", "Total"]
    qtbot.waitUntil(lambda: not window.cutting.planning.is_busy, timeout=60_000)
    rows = _rows(table)
    source = window.cutting.current or window.cutting.find_list()
    (offer,) = build_outputs(job, "letter", "today", (OFFER,), stock=source)
    with pdfplumber.open(BytesIO(offer.data)) as pdf:
        text = "\n".join(page.extract_text() for page in pdf.pages)
    for name, _, _, seen in rows:
        assert f"{seen}" in text, (name, seen)
    window.session.set_value("offer.margin", 20.0)
    window.session.set_value("offer.margin_shown", False)
    qtbot.waitUntil(lambda: [row[3] for row in _rows(table) if row[0] == "Margin"] == ["spread"])
    assert window.options.find_price(0).total > 0


def test_what_is_missing_is_named_and_nothing_is_called_a_price(window: Window, qtbot: QtBot):
    window.session.open(read_demo("bedroom"), None)
    window.tray.turn_to(PRICE)
    table = window.tray.price
    qtbot.waitUntil(lambda: "Wanted" in table.words.text(), timeout=60_000)
    assert "prices of" in table.words.text()
    assert "what an hour of work costs" in table.words.text()
    assert "Total" not in [row[0] for row in _rows(table)]
    assert {row[3] for row in _rows(table)} == {""}
    table.offer_button.click()
    assert window.fields.rows["offer.hour"].isAncestorOf(window.focusWidget())
    table.stock_button.click()
    assert window.cutting.stock_window.isVisible()


def test_hours_of_a_kind_that_are_typed_are_in_the_price_at_once(window: Window, qtbot: QtBot):
    window.cutting.use_list("example")
    window.session.open(with_texts(read_demo("bedroom"), [("offer.hour", "60")]), None)
    window.tray.turn_to(PRICE)
    table = window.tray.price
    qtbot.waitUntil(lambda: table.table.isEnabled(), timeout=60_000)
    window.session.set_text("offer.building_hours", "5")
    qtbot.waitUntil(lambda: ["Building", "5 hours", "$300.00", "$300.00"] in _rows(table))
    assert format_money(30000, "$") == "$300.00"


def test_the_price_is_not_moved_sideways_where_its_columns_have_room(qtbot, dressed):
    shown = PriceTable()
    qtbot.addWidget(shown)
    shown.resize(sum(WIDTHS) + 2 * RHYTHM, 200)
    shown.show()
    qtbot.waitExposed(shown)
    assert shown.table.horizontalScrollBar().maximum() == 0
