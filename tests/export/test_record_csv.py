"""Checks and measurements as tables."""

from __future__ import annotations

import csv
import io

from app.demo import read_demo
from export.record_csv import write_checks_csv, write_site_csv
from model.check.all import check_surround
from model.check.proportion import list_guides
from model.job import with_texts
from model.parameters import BY_PATH
from model.surround import plan_surround


def _read(text: str) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(text, newline="")))


def test_findings_stand_worst_first_and_guides_are_never_over():
    surround = plan_surround(read_demo("too-close"))
    findings, guides = check_surround(surround), list_guides(surround)
    rows = _read(write_checks_csv(findings, guides, surround.job.about.length_style))
    assert len(rows) == len(findings) + len(guides)
    order = ["over", "not known", "close", "within", "guide"]
    places = [order.index(row["result"]) for row in rows]
    assert places == sorted(places)
    over = next(row for row in rows if row["result"] == "over" and row["value"] and row["bound"] == "least")
    assert float(over["value"]) < float(over["against"])


def test_a_measurement_is_read_back_as_it_was_entered():
    job = with_texts(read_demo("brick"), [("opening.width", "35 7/16"), ("job.units", "millimetres")])
    rows = {row["path"]: row for row in _read(write_site_csv(job))}
    assert rows["opening.width"]["key"] == "A"
    style = job.about.length_style
    assert BY_PATH["opening.width"].parse(rows["opening.width"]["measured"], style) is not None
    assert rows["opening.width"]["measured"] == "900 mm"
    assert rows["outlet.width"]["measured"] == ""
    assert "shelf.depth" not in rows
