"""What the cover says."""

import pytest

from app.demo import list_demos, read_demo
from model.check.all import check_surround
from model.job import default_job, with_texts
from model.surround import plan_surround
from model.takeoff.cut_list import list_cuts
from model.takeoff.weight import list_loads, total_weight
from render.checks_sheet import count_findings
from render.cover_sheet import list_summary
from render.drawing import Fill, Region, Text
from render.packet import build_packet
from render.sheets import PAPERS, PICTURE, Block, safe_area


def summary_of(job):
    surround = plan_surround(job)
    findings, loads = check_surround(surround), list_loads(surround)
    return surround, findings, loads, dict(list_summary(surround, findings, loads))


@pytest.mark.parametrize("name", list_demos())
def test_the_summary_counts_boards_weight_and_checks(name):
    surround, findings, loads, lines = summary_of(read_demo(name))
    assert lines["Boards"].startswith(f"{len(surround.boards)} in ")
    assert f"{total_weight(loads):.0f} lb" in lines["Boards"]
    assert lines["Checks"].startswith(count_findings(findings))


def test_the_summary_says_what_and_where_in_the_jobs_units():
    job = with_texts(
        default_job(), [("job.units", "millimetres"), ("site.fireplace", "gas"), ("over.on", "yes")]
    )
    *_, lines = summary_of(job)
    assert "Gas, opening 914 mm wide and 762 mm high" in lines["Where"]
    assert "with an overmantel" in lines["What"]


def test_a_revision_stands_on_the_cover_with_what_changed_and_on_every_sheet():
    settings = [
        ("job.revision", "B"),
        ("job.revised", "2026-11-20"),
        ("job.changes", "Frieze lower\nOak shelf"),
    ]
    surround, *_, lines = summary_of(with_texts(default_job(), settings))
    assert lines["Revision"] == "B, 2026-11-20: Frieze lower; Oak shelf"
    for sheet in build_packet(surround, (), (), list_cuts(surround), "letter", "2026-11-21"):
        frame = next(placed for placed in sheet.placed if placed.name == "frame")
        texts = [mark.text for mark in frame.drawing.marks if isinstance(mark, Text)]
        for said in ("Fireplace surround", f"{sheet.number}", "2026-11-21", "B"):
            assert said in texts, (sheet.title, said)
        assert "Scale" in texts
    assert "Revision" not in summary_of(default_job())[3]


def test_no_price_stands_on_the_cover():
    *_, lines = summary_of(read_demo("brick"))
    assert "$" not in "".join(lines.values())


def test_long_notes_are_pointed_to_and_not_cut_off():
    *_, lines = summary_of(with_texts(default_job(), [("job.notes", "a wall that leans " * 20)]))
    assert "leans" not in lines["Notes"]
    assert lines["Notes"].startswith("See sheet")


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("name", list_demos())
def test_the_picture_is_shaded_and_stays_inside_the_sheet(name, paper):
    surround = plan_surround(read_demo(name))
    cover = build_packet(surround, (), (), list_cuts(surround), paper, "")[0]
    picture = next(placed for placed in cover.placed if placed.name == PICTURE)
    fills = {mark.fill for mark in picture.drawing.marks if isinstance(mark, Region)}
    assert Fill.SHADOW in fills
    left, bottom, right, top = safe_area(*PAPERS[paper], Block.BELOW)
    for mark in picture.drawing.marks:
        if isinstance(mark, Region):
            for x, y in (point for ring in mark.rings for point in ring):
                assert left <= picture.at[0] + x / picture.drawing.ratio <= right
                assert bottom <= picture.at[1] + y / picture.drawing.ratio <= top
