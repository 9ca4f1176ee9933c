"""References between sheets."""

from itertools import pairwise

import pytest

from app.demo import list_demos, read_demo
from model.check.all import check_surround
from model.surround import plan_surround
from model.takeoff.cut_list import list_cuts
from render.drawing import Drawing, Placed, Sheet, Text
from render.extent import list_texts
from render.lettering import missing_letters, text_width, wrap_text
from render.packet import build_packet
from render.references import UNKNOWN, list_keys, resolve_sheet, resolve_text, sheet_of
from render.sheets import PAPERS


def test_a_place_is_as_wide_as_two_figures_whatever_it_waits_for():
    for key in ("front", "Right column, detail"):
        assert text_width(sheet_of(key), 3.0) == pytest.approx(text_width("00", 3.0))
    assert not missing_letters(sheet_of("front"))


def test_a_place_is_filled_with_the_number_and_nothing_else_is_changed():
    text = f"See sheet {sheet_of('Cut list')}, then {sheet_of('front')}."
    assert list_keys(text) == ("Cut list", "front")
    assert resolve_text(text, {"Cut list": 12, "front": 3}) == "See sheet 12, then 3."
    assert resolve_text("plain", {}) == "plain"


def test_a_place_survives_the_breaking_of_lines():
    (*_, last) = wrap_text(f"the checks are on sheet {sheet_of('Checks')}", 1.0, 12.0)
    assert list_keys(last) == ("Checks",)


def test_what_the_packet_does_not_hold_is_shown_as_not_known():
    assert resolve_text(sheet_of("nowhere"), {"front": 1}) == UNKNOWN


def test_each_filled_place_becomes_a_link_on_its_own_writing():
    marks = (
        Text(f"sheet {sheet_of('front')}", (12.0, 24.0), 1.5),
        Text("plain", (3.0, 3.0), 1.5),
    )
    sheet = Sheet("1 of 4", "t", 11, 8.5, (Placed(Drawing(marks, 12.0), (1.0, 2.0), "x"),))
    told = resolve_sheet(sheet, {"front": 4})
    (link,) = told.links
    assert link.to == 4
    left, bottom, right, top = link.box
    assert left == pytest.approx(2.0)
    assert right == pytest.approx(2.0 + text_width("sheet 4", 1.5) / 12)
    assert bottom < 4.0 < top
    assert [text.text for text in list_texts(told.placed[0].drawing)] == ["sheet 4", "plain"]


def packet_of(name, paper):
    surround = plan_surround(read_demo(name))
    return build_packet(surround, check_surround(surround), (), list_cuts(surround), paper, "2026-01-02")


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("name", list_demos())
def test_the_cover_names_every_sheet_that_begins_something_by_its_number(name, paper):
    sheets = packet_of(name, paper)
    numbers = {}
    for number, sheet in enumerate(sheets, start=1):
        numbers.setdefault(sheet.title, number)
    covers = [sheet for sheet in sheets if sheet.title.startswith("Cover")]
    words = [text.text for sheet in covers for part in sheet.placed for text in list_texts(part.drawing)]
    told = list(pairwise(words))
    for title, number in numbers.items():
        if not title.startswith("Cover") and not title.endswith(", continued"):
            assert (str(number), title) in told


@pytest.mark.parametrize("name", list_demos())
def test_no_place_is_left_unfilled_and_every_link_leads_to_a_sheet(name):
    sheets = packet_of(name, "letter")
    for sheet in sheets:
        for placed in sheet.placed:
            assert not any(list_keys(text.text) for text in list_texts(placed.drawing))
            assert not any(f"sheet {UNKNOWN}" in text.text for text in list_texts(placed.drawing)), (
                sheet.title
            )
        assert all(1 <= link.to <= len(sheets) for link in sheet.links)
