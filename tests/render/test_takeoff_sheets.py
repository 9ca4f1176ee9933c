"""Rough sizes, saw settings and materials on paper: what they say, and that a shop can read it."""

from __future__ import annotations

import re
from dataclasses import replace
from functools import cache

import pytest
from shapely import Polygon, STRtree, box
from shapely.affinity import affine_transform

from app.demo import read_demo
from model.job import default_job, with_texts
from model.surround import plan_surround
from model.takeoff.guide_settings import Action
from model.takeoff.materials import CAULKED, find_rate
from model.takeoff.standing import ORDER
from model.takeoff.takeoff import Takeoff, take_off
from model.units import FEET_INCHES_16, INCHES_16, MM_PER_INCH
from render.desk import Desk
from render.drawing import Drawing
from render.extent import list_texts, text_corners
from render.guide_sheet import describe_edge, guide_strips, say_saw
from render.materials_sheet import WHY_OPEN, describe_lengths, list_measured, list_weights, materials_strips
from render.packet import build_packet
from render.rough_sheet import describe_stretch, rough_strips
from render.sheets import PAPERS, Block, paper_size, safe_area
from render.tables import Strip, pour_strips

WIDTH = 9.6


@cache
def _take(name: str, *settings: str) -> Takeoff:
    job = with_texts(read_demo(name), [tuple(setting.split("=", 1)) for setting in settings])
    return take_off(plan_surround(job))


def _words(strips: tuple[Strip, ...]) -> list[str]:
    page = pour_strips(strips, (0, 0), 10_000)[0]
    return [text.text for text in list_texts(Drawing(page))]


def _smallest(strips: tuple[Strip, ...]) -> float:
    page = pour_strips(strips, (0, 0), 10_000)[0]
    return min(text.height for text in list_texts(Drawing(page))) * MM_PER_INCH


def test_a_rough_size_stands_over_what_it_is_made_of():
    """The brick job's stile: 56 3/4 in. and 1/2 in. to scribe and 1/2 in. off each end."""
    cut = next(cut for cut in _take("brick").cuts if cut.name == "column stile")
    assert cut.rough is not None
    said = describe_stretch(cut.rough.length, FEET_INCHES_16, INCHES_16)
    assert said == '4\'-10 1/4"\n= 4\'-8 3/4" + 1/2" scribe + 1" trim'


def test_every_line_of_the_cut_list_has_its_rough_size_hand_and_faces():
    cuts = _take("brick", "shelf.overhang_front=3 1/2").cuts
    words = _words(rough_strips(cuts, FEET_INCHES_16, WIDTH))
    joined = " ".join(words)
    for said in ("C1a–d", "Left and right column", "upright", "level", "either", "moulded face", "none"):
        assert said in joined
    # 11 1/4 in. of shelf, 1/2 to scribe, 1/4 of trim.
    assert '2 strips of 6 1/4", edge-glued' in joined
    assert 'one board of 11 1/4" does with 3/4" less left on' in joined


@pytest.mark.parametrize("paper", PAPERS)
def test_no_word_of_hand_or_grain_is_broken_on_any_paper(paper):
    cuts = _take("bedroom", "panel.kind=solid", "column.kind=fluted", "plinth_cap.on=yes").cuts
    handed = [*cuts, replace(cuts[0], mark="X1", hand="handed")]
    size = paper_size(paper)
    width = Desk(plan_surround(default_job()), size).width
    words = _words(rough_strips(handed, FEET_INCHES_16, width))
    lines = {line for cut in handed for line in (cut.hand, cut.grain)}
    wanted = {word for line in lines for word in re.split("[ -]", line)}
    assert {"left", "right", "hand", "handed"} <= wanted
    assert wanted <= {word for line in words for word in line.split()}


def test_a_tapered_rip_says_which_edge_it_is_in_the_cut_lists_words():
    takeoff = _take("brick", "column.taper=1.5")
    stile = next(cut for cut in takeoff.cuts if cut.name == "column stile")
    tapers = [s for s in takeoff.settings if s.action is Action.TAPER]
    edges = [describe_edge(setting, INCHES_16) for setting in tapers]
    assert [edge.split()[0] for edge in edges] == ["edge", "edge", "both"]
    for edge in edges[:2]:
        assert f"{edge.removeprefix('edge ')} between" in stile.notes
    words = " ".join(_words(guide_strips(takeoff.settings, takeoff.saw, INCHES_16, WIDTH)))
    assert "before either is sawn" in words
    assert "C1 ×4, C1 ×4" not in words


def test_settings_say_kept_size_pieces_set_off_and_side():
    takeoff = _take("brick")
    words = _words(guide_strips(takeoff.settings, takeoff.saw, FEET_INCHES_16, WIDTH))
    assert "tapered" not in " ".join(words)
    for said in (
        "rip",
        "crosscut",
        "C1 ×4, C5 ×2, C6 ×2",
        '4 7/8"',
        "the piece",
        "the waste",
        "left",
        "right",
    ):
        assert said in words
    assert "Saw settings: circular saw along a guide" in words
    assert '3/4" yellow poplar board' in words


def test_a_saw_that_is_not_measured_is_marked_and_told_how_to_measure():
    takeoff = _take("bedroom")
    words = _words(guide_strips(takeoff.settings, takeoff.saw, INCHES_16, WIDTH))
    assert '~5"' in words
    assert "not measured" in say_saw(takeoff.saw, INCHES_16)
    assert "not measured" not in say_saw(_take("brick").saw, INCHES_16)
    assert not any(
        "~" in word
        for word in _words(guide_strips(_take("brick").settings, _take("brick").saw, INCHES_16, WIDTH))
    )


def test_nothing_to_saw_is_no_table():
    assert guide_strips((), _take("brick").saw, INCHES_16, WIDTH) == ()


def test_materials_stand_with_amount_and_what_to_take_and_rates_with_their_source():
    job = read_demo("brick")
    words = _words(materials_strips(_take("brick"), job, -8.0, FEET_INCHES_16, WIDTH))
    joined = " ".join(words)
    for said in (
        "Wood glue",
        "Primer",
        "Top coat",
        "1 qt",
        "Weights and lifting",
        "two people",
        "centre line",
    ):
        assert said in joined
    for path in ("rates.primer_coverage", "rates.nail_factor", "allow.scribe"):
        rate = find_rate(job, path)
        assert rate.row.label in joined
        assert rate.source.split()[0] in joined
        assert f"[{rate.standing}]" in joined


def test_a_rate_of_the_jobs_own_is_said_to_be_so():
    job = with_texts(read_demo("bedroom"), [("rates.primer_coverage", "300")])
    joined = " ".join(_words(materials_strips(take_off(plan_surround(job)), job, 0.0, INCHES_16, WIDTH)))
    assert "300 sq ft/gal" in joined
    assert "set in this job [shop choice]" in joined


def test_measured_lines_add_up_to_the_joints():
    takeoff = _take("bedroom")
    lengths = describe_lengths(takeoff.joints)
    assert sum(length for _, length, _ in lengths) == pytest.approx(sum(j.length for j in takeoff.joints))
    names = [name for name, *_ in list_measured(takeoff, INCHES_16)]
    assert names[:2] == ["Faces of all boards", "Faces that show"]
    assert "Wood against the floor" in names
    assert {name: done for name, _, done in lengths}["Wood against the floor"].startswith("left open")


def test_an_old_ledger_that_shows_is_not_said_to_move_as_a_floor_does():
    done = {name: done for name, _, done in describe_lengths(_take("brick", "old_ledger.top=48").joints)}
    assert done["Wood against the old ledger"] == "left open, where the old ledger shows"


def test_of_all_that_stands_there_it_is_said_what_is_done_where_wood_meets_it():
    assert {*CAULKED, *WHY_OPEN} == set(ORDER)


def test_weights_end_with_all_of_them_together():
    takeoff = _take("brick")
    heading, *rows = list_weights(takeoff.loads, -8.0, INCHES_16)
    assert all(len(row) == len(heading) for row in rows)
    assert [row[0] for row in rows[:3]] == ["Nailers", "Left column", "Right column"]
    assert rows[-1][0] == "All together"
    assert rows[-1][6] == "centre line"


@pytest.mark.parametrize("name", ["brick", "gas"])
def test_everything_is_at_least_two_and_a_half_millimetres_high(name):
    takeoff, job = _take(name), read_demo(name)
    style = job.about.length_style
    for strips in (
        rough_strips(takeoff.cuts, style, WIDTH),
        guide_strips(takeoff.settings, takeoff.saw, style, WIDTH),
        materials_strips(takeoff, job, 0.0, style, WIDTH),
    ):
        assert _smallest(strips) >= 2.5 - 1e-9


def test_the_packet_carries_them_after_the_cut_list():
    surround = plan_surround(default_job())
    takeoff = take_off(surround)
    titles = [s.title for s in build_packet(surround, (), (), takeoff.cuts, "letter", "2026-01-02", takeoff)]
    places = [titles.index(name) for name in ("Cut list", "Rough sizes", "Saw settings", "Materials")]
    assert places == sorted(places)
    without = [s.title for s in build_packet(surround, (), (), takeoff.cuts, "letter", "2026-01-02")]
    assert "Materials" not in without


def _writings(sheet):
    """Every writing of a sheet with its box in paper inches."""
    for placed in sheet.placed:
        scale = 1 / placed.drawing.ratio
        for text in list_texts(placed.drawing):
            corners = affine_transform(Polygon(text_corners(text)), [scale, 0, 0, scale, *placed.at])
            yield placed.name, text.text, corners


@pytest.mark.parametrize("paper", ["letter", "a4", "a3"])
@pytest.mark.parametrize("name", ["brick", "gas"])
def test_no_writing_leaves_its_page_or_covers_another(name, paper):
    surround = plan_surround(read_demo(name))
    takeoff = _take(name)
    room = box(*safe_area(*PAPERS[paper], Block.BELOW)).buffer(1e-6)
    pages = build_packet(surround, (), (), takeoff.cuts, paper, "2026-01-02", takeoff)
    mine = [p for p in pages if p.title.split(",")[0] in ("Rough sizes", "Saw settings", "Materials")]
    assert len({page.title.split(",")[0] for page in mine}) == 3
    for page in mine:
        written = list(_writings(page))
        assert all(part == "frame" or room.contains(area) for part, _, area in written), page.title
        areas = [area.buffer(-0.01) for _, _, area in written]
        pairs = STRtree(areas).query(areas, "intersects").T
        covered = [(written[i][1], written[j][1]) for i, j in pairs if i < j]
        assert not covered, page.title
