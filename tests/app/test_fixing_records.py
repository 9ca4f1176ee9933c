"""What the command line says of fixing and cords is what the model has."""

from __future__ import annotations

import json

from app.fixing_records import fixing_lines, fixing_record
from model.job import default_job, with_texts
from model.surround import plan_surround
from model.takeoff.anchors import plan_anchors


def _plan(*settings):
    return plan_surround(with_texts(default_job(), settings))


def test_a_record_has_every_anchor_and_no_cord_way_where_none_is_asked_for():
    surround = _plan()
    record = json.loads(json.dumps(fixing_record(surround)))
    assert len(record["anchors"]) == len(plan_anchors(surround).anchors)
    assert {anchor["piece"] for anchor in record["anchors"]} <= set(surround.marks)
    assert record["cord_way"] is None


def test_a_record_names_the_pieces_that_cord_holes_go_through():
    record = fixing_record(_plan(("cord.on", "yes"), ("cord.plug", "hdmi_body")))
    holes = {hole["name"]: hole for hole in record["cord_way"]["holes"]}
    # 21 by 13 mm is 24.70 mm across, 0.972 in.; with 1/8 in. to spare 1.097, and the next eighth is 1 1/8.
    assert {hole["diameter"] for hole in holes.values()} == {1.125}
    assert all(hole["pieces"] for hole in holes.values())
    assert record["cord_way"]["loose_panel"]


def test_the_words_hold_the_table_the_cord_work_and_the_order():
    lines = list(fixing_lines(_plan(("cord.on", "yes"))))
    assert any(line.startswith("Anchor") for line in lines)
    assert any("bore 1 3/4" in line for line in lines)
    assert lines[-1].startswith("10. Fix columns")


def test_what_is_not_held_is_said_and_what_is_taken_adds_up():
    """Nailers at the facing's side: anchors keep 4 in. off its edge, and they lie within 2 3/4."""
    surround = _plan()
    record = fixing_record(surround)
    assert record["not_held"] == ["N1b", "N1d"]
    assert sum(each["count"] for each in record["take"]) == len(record["anchors"])
    words = " ".join(fixing_lines(surround))
    assert "N1b finds no sound place for an anchor" in words
    assert 'masonry screws, 3 1/4" long' in words
