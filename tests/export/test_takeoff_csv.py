"""Materials and saw settings as a spreadsheet reads them."""

from __future__ import annotations

import csv
import io

import pytest

from app.demo import read_demo
from export.csv import write_cut_list_csv, write_materials_csv, write_settings_csv
from model.job import with_texts
from model.surround import plan_surround
from model.takeoff.guide_settings import Action
from model.takeoff.takeoff import Takeoff, take_off
from model.units import INCHES_16, MILLIMETRES

TAKEOFF = take_off(plan_surround(read_demo("bedroom")))


def _rows(text: str) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(text, newline="")))


def _settings(takeoff: Takeoff = TAKEOFF, style=INCHES_16) -> list[dict[str, str]]:
    return _rows(write_settings_csv(takeoff.settings, takeoff.saw, style))


def test_every_material_is_a_row_with_its_rates_and_sources():
    rows = _rows(write_materials_csv(TAKEOFF.materials, INCHES_16))
    assert len(rows) == len(TAKEOFF.materials)
    for row, material in zip(rows, TAKEOFF.materials, strict=True):
        assert row["material"] == material.name
        assert float(row["amount"]) == pytest.approx(material.amount, abs=1e-5)
        assert all(rate.row.path in row["rates"] and rate.source in row["sources"] for rate in material.rates)


def test_a_metric_list_is_in_metric_units():
    by_name = {row["material"]: row for row in _rows(write_materials_csv(TAKEOFF.materials, MILLIMETRES))}
    assert by_name["Primer"]["unit"] == "L"
    primer = next(material for material in TAKEOFF.materials if material.name == "Primer")
    assert float(by_name["Primer"]["amount"]) == pytest.approx(primer.amount * 3.785411784, abs=1e-4)


def test_every_setting_is_a_row_and_tilted_ones_have_no_set_off():
    rows = _settings()
    assert len(rows) == len(TAKEOFF.settings)
    for row, setting in zip(rows, TAKEOFF.settings, strict=True):
        assert float(row["kept_in"]) == pytest.approx(setting.size, abs=1 / 32)
        assert (row["set_off_in"] == "") == (setting.action is Action.BEVEL)
        assert row["saw_measured"] == "no"
        assert {pair.split("x")[0] for pair in row["pieces"].split()} == {mark for mark, _ in setting.pieces}


def test_a_tapered_rip_names_its_edge():
    job = with_texts(read_demo("brick"), [("column.taper", "1.5")])
    rows = _settings(take_off(plan_surround(job)))
    edges = [row["edge"].split()[0] if row["edge"] else "" for row in rows if "tapered" in row["cut"]]
    assert edges == ["edge", "edge", "both"]
    assert {row["edge"] for row in rows if "tapered" not in row["cut"]} == {""}


def test_rough_sizes_stand_beside_finished_ones_in_the_cut_list():
    for row, cut in zip(_rows(write_cut_list_csv(TAKEOFF.cuts, INCHES_16)), TAKEOFF.cuts, strict=True):
        assert cut.rough is not None
        parts = ("scribe", "trim", "glue_up")
        left_on = sum(float(row[f"{part}_length_in"]) for part in parts)
        assert float(row["rough_length_in"]) == pytest.approx(float(row["length_in"]) + left_on, abs=0.1)
        assert row["grain"]
        assert row["hand"] in ("either", "left", "right", "handed")
        assert row["shows"] == cut.shows
