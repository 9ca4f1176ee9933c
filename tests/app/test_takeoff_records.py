"""What the command line says of a takeoff."""

from __future__ import annotations

import json

import pytest

from app.cli import main
from app.demo import read_demo
from app.takeoff_records import takeoff_lines, takeoff_record
from model.surround import plan_surround
from model.takeoff.takeoff import take_off

SURROUND = plan_surround(read_demo("bedroom"))
TAKEOFF = take_off(SURROUND)


def test_a_script_gets_areas_joints_materials_weights_and_settings():
    record = takeoff_record(SURROUND, TAKEOFF)
    assert json.loads(json.dumps(record)) == record
    assert set(record) == {"areas", "joints", "fasteners", "materials", "weights", "total", "saw"}
    assert record["areas"]["primed"] == pytest.approx(TAKEOFF.surfaces.primed_area / 144, abs=1e-4)
    assert record["areas"]["painted"] == pytest.approx(TAKEOFF.surfaces.painted_area / 144, abs=1e-4)
    assert record["total"]["weight"] == pytest.approx(sum(w["weight"] for w in record["weights"]), abs=1e-2)
    assert all(rate["source"] and rate["standing"] for m in record["materials"] for rate in m["rates"])
    assert len(record["saw"]["settings"]) == len(TAKEOFF.settings)


def test_people_get_four_tables():
    text = "\n".join(takeoff_lines(SURROUND, TAKEOFF))
    for said in ("Material  ", "Surfaces and joints", "Sub-assembly", "Set-off", "Wood glue", "one person"):
        assert said in text


def test_the_command_prints_words_json_and_csv(capsys):
    assert main(["materials", "bedroom"]) == 0
    assert "Top coat" in capsys.readouterr().out
    assert main(["materials", "bedroom", "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["areas"]["unit"] == "sq ft"
    assert main(["materials", "bedroom", "--csv"]) == 0
    assert capsys.readouterr().out.startswith("material,measured_on,amount")


def test_a_rate_set_on_the_command_line_counts(capsys):
    amounts = []
    for coverage in ("200", "400"):
        assert main(["materials", "bedroom", "--json", "--set", f"rates.primer_coverage={coverage}"]) == 0
        lines = json.loads(capsys.readouterr().out)["materials"]
        amounts += [line["amount"] for line in lines if line["material"] == "Primer"]
    assert amounts[0] == pytest.approx(2 * amounts[1], rel=1e-3)


def test_boards_say_what_is_sawn_first_and_what_shows(capsys):
    assert main(["boards", "bedroom", "--json"]) == 0
    stile = next(cut for cut in json.loads(capsys.readouterr().out) if cut["name"] == "column stile")
    assert stile["rough"]["length"] == {"rough": 48.25, "scribe": 0.5, "trim": 1.0, "glue_up": 0.0}
    assert stile["grain"] == "upright"
    assert stile["shows"].startswith("front")
    assert stile["short_points"] == stile["length"] == 46.75
