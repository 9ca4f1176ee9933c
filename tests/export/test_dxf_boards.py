"""Boards as blocks: each board that a view shows, whole, with its mark and what the cut list says of it."""

from __future__ import annotations

from functools import cache
from io import StringIO
from pathlib import Path

import ezdxf
import pytest
import shapely

from app.demo import list_demos, read_demo
from app.drawing_files import VIEWS, build_drawing
from export.dxf_boards import list_board_notes, name_block
from export.dxf_layers import find_layer
from model.surround import Surround, plan_surround
from model.takeoff.cut_list import list_cuts
from render.drawing import Lines
from render.views import ViewOptions, draw_view, project_boards
from tests.export.dxf_reading import Entity, read_entities, read_rows

TAGS = ["MARK", "PIECE", "DESCRIPTION", "SIZE", "STOCK"]


@cache
def _plan(name: str) -> Surround:
    return plan_surround(read_demo(name))


@cache
def _write(name: str, version: str = "R2010") -> str:
    surround = _plan(name)
    return build_drawing(surround, list_cuts(surround), (), version, lambda *_: None)


@pytest.fixture(scope="module", params=list_demos())
def job(request: pytest.FixtureRequest) -> str:
    return str(request.param)


def _list_seen(surround: Surround, view: str) -> set[str]:
    """The marks of boards that have a line in the view."""
    drawing = draw_view(surround, view, ViewOptions(by_board=True, dimensions=False))
    return {mark.stands_for for mark in drawing.marks if isinstance(mark, Lines)} & set(surround.marks)


@pytest.mark.parametrize("version", ["R2010", "R12"])
def test_every_board_that_a_view_shows_is_a_block_inserted_once(job: str, version: str):
    surround = _plan(job)
    inserted = [e.all(2)[0] for e in read_entities(_write(job, version)) if e.kind == "INSERT"]
    named = [name for name in inserted if not name.startswith("*")]
    wanted = {name_block(mark, view) for view in VIEWS for mark in _list_seen(surround, view)}
    assert set(named) == wanted
    assert len(named) == len(wanted)
    assert len(wanted) > len(surround.boards)


@pytest.mark.parametrize("version", ["R2010", "R12"])
def test_an_insert_carries_what_the_cut_list_says(job: str, version: str):
    surround = _plan(job)
    notes = list_board_notes(list_cuts(surround), surround.job.about.length_style)
    found = _list_attributes(read_entities(_write(job, version)))
    assert found
    for attributes in found:
        assert list(attributes) == TAGS
        note = notes[attributes["PIECE"]]
        assert attributes["MARK"] == note.mark
        assert attributes["DESCRIPTION"] == note.description
        assert attributes["PIECE"].startswith(note.mark)


def _list_attributes(entities: list[Entity]) -> list[dict[str, str]]:
    found: list[dict[str, str]] = []
    for entity in entities:
        if entity.kind == "INSERT" and not entity.all(2)[0].startswith("*"):
            found.append({})
        if entity.kind == "ATTRIB":
            found[-1][entity.all(2)[0]] = entity.all(1)[0]
    return found


def test_sizes_are_in_the_units_of_the_job_and_in_ascii():
    surround = _plan("bedroom")
    notes = list_board_notes(list_cuts(surround), surround.job.about.length_style)
    assert set(notes) == set(surround.marks)
    assert all(note.size.count(" x ") == 2 for note in notes.values())
    assert _write("bedroom").isascii()


@pytest.mark.parametrize("view", VIEWS)
def test_lines_by_board_are_those_of_the_view(job: str, view: str):
    surround = _plan(job)
    plain, parted = (
        draw_view(surround, view, ViewOptions(dimensions=False, by_board=by_board))
        for by_board in (False, True)
    )
    for pen in {mark.pen for mark in plain.marks if isinstance(mark, Lines)}:
        one, other = (
            shapely.union_all(
                [
                    shapely.LineString([(x0, y0), (x1, y1)])
                    for mark in drawing.marks
                    if isinstance(mark, Lines) and mark.pen is pen
                    for x0, y0, x1, y1 in mark.segments
                ]
            )
            for drawing in (plain, parted)
        )
        assert one.length == pytest.approx(other.length)
        assert shapely.hausdorff_distance(one, other) < 1e-6


def test_a_boards_lines_run_along_its_own_edges():
    surround = _plan("brick")
    projection, places = project_boards(surround, "front")
    for owner, lines in projection.lines_by_owner().items():
        if owner < 0 or owner >= len(places):
            continue
        low, high = surround.boards[places[owner]].bounds
        for segments in lines.values():
            for x0, y0, x1, y1 in segments:
                assert low[0] - 1e-6 <= min(x0, x1) <= max(x0, x1) <= high[0] + 1e-6
                assert low[1] - 1e-6 <= min(y0, y1) <= max(y0, y1) <= high[1] + 1e-6


def test_a_block_taken_elsewhere_lies_where_it_is_put():
    document = ezdxf.read(StringIO(_write("brick")))
    insert = next(iter(document.modelspace().query("INSERT")))
    block = document.blocks.get(insert.dxf.name)
    points = [point for e in block if e.dxftype() == "LWPOLYLINE" for point in e.get_points("xy")]
    points += [tuple(p)[:2] for e in block if e.dxftype() == "LINE" for p in (e.dxf.start, e.dxf.end)]
    assert min(x for x, _ in points) == pytest.approx(0)
    assert min(y for _, y in points) == pytest.approx(0)


@pytest.mark.parametrize("code", ["OTLN", "EDGE", "ARIS", "MCUT"])
def test_a_reader_that_takes_blocks_apart_finds_every_line_full_size(job: str, code: str, tmp_path: Path):
    surround = _plan(job)
    groups = {"ELEV": ("front", "side"), "FLOR": ("plan",), "SECT": ("plan_section", "vertical_section")}
    rows = read_rows(_write(job), tmp_path)
    for group, views in groups.items():
        drawn = 0.0
        for view in views:
            marks = draw_view(surround, view, ViewOptions(dimensions=False)).marks
            lines = [
                shapely.LineString([(x0, y0), (x1, y1)])
                for mark in marks
                if isinstance(mark, Lines)
                and find_layer(view, mark.pen, mark.stands_for).name == f"A-{group}-{code}"
                for x0, y0, x1, y1 in mark.segments
            ]
            drawn += shapely.union_all(lines).length
        found = shapely.union_all([row["shape"] for row in rows if row["Layer"] == f"A-{group}-{code}"])
        assert found.length == pytest.approx(drawn, abs=1e-3)


def test_a_view_lies_where_the_reader_is_told(job: str, tmp_path: Path):
    layout = _plan(job).layout
    front = [
        row["shape"]
        for row in read_rows(_write(job), tmp_path)
        if row["Layer"] == "A-ELEV-OTLN" and row["shape"].bounds[0] < layout.right.shelf_side
    ]
    x0, y0, x1, y1 = shapely.total_bounds(front)
    assert (x0, x1) == pytest.approx((-layout.left.shelf_side, layout.right.shelf_side))
    assert y1 - y0 == pytest.approx(layout.shelf_top - min(side.base for side in layout.sides))


def test_block_names_fit_the_oldest_version():
    names = [e.all(2)[0] for e in read_entities(_write("gas", "R12")) if e.kind == "INSERT"]
    assert all(len(name) <= 31 and name == name.upper() for name in names)
