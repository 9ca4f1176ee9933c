"""The set of drawing files of a job: views, sub-assemblies and mouldings, whole and always the same."""

from __future__ import annotations

import os
import subprocess
import sys
from functools import cache
from io import StringIO
from pathlib import Path

import ezdxf
import pytest

from app.demo import list_demos, read_demo
from app.drawing_files import (
    build_assembly_drawings,
    build_drawing,
    build_moulding_drawings,
    name_drawing,
)
from app.outputs import ASSEMBLIES, DRAWINGS, MOULDINGS, build_outputs, name_output, write_outputs
from export.dxf_sheets import name_layout
from model.check.all import check_surround
from model.check.proportion import list_guides
from model.job import default_job, with_texts
from model.surround import Surround, plan_surround
from model.takeoff.assemblies import list_assemblies
from model.takeoff.cut_list import list_cuts
from render.desk import Desk
from render.drawing import Dimension, Sheet
from render.packet import build_packet, build_twin_sheets
from render.sheets import PART_VIEWS
from tests.export.dxf_reading import list_viewports, read_entities, read_rows

VERSIONS = ("R2010", "R12")
ROOT = Path(__file__).parents[2]


@cache
def _plan(name: str) -> Surround:
    return plan_surround(read_demo(name))


@cache
def _sheets(name: str) -> tuple[Sheet, ...]:
    surround = _plan(name)
    cuts = list_cuts(surround)
    return build_packet(surround, check_surround(surround), list_guides(surround), cuts, "a3", "2001-02-03")


@cache
def _assemblies(name: str, version: str = "R2010") -> dict[str, str]:
    surround = _plan(name)
    drawn = build_assembly_drawings(surround, list_cuts(surround), _sheets(name), version, lambda *_: None)
    return dict(drawn)


@cache
def _shop(name: str) -> tuple[Sheet, ...]:
    """The shop drawings: the packet's, and those of what it shows by its mirror twin."""
    surround, sheets = _plan(name), _sheets(name)
    desk = Desk(surround, (sheets[0].width, sheets[0].height), cuts=tuple(list_cuts(surround)))
    twins = [
        sheet
        for assembly in list_assemblies(surround.boards)
        if assembly.twin and assembly.name.startswith("right ")
        for sheet in build_twin_sheets(desk, assembly, sheets, "")
    ]
    drawn = (s for s in sheets if any(placed.name in PART_VIEWS for placed in s.placed))
    return (*drawn, *twins)


@pytest.fixture(scope="module", params=list_demos())
def job(request: pytest.FixtureRequest) -> str:
    return str(request.param)


def test_every_sub_assembly_has_a_file(job: str):
    names = {board.assembly for board in _plan(job).boards}
    assert set(_assemblies(job)) == {name_drawing(name) for name in names}


@pytest.mark.parametrize("version", VERSIONS)
def test_audit_is_clean_and_the_text_is_ascii(job: str, version: str):
    for text in _assemblies(job, version).values():
        report = ezdxf.read(StringIO(text)).audit()
        assert not report.errors
        assert not report.fixes
        assert text.isascii()


def test_a_file_holds_the_boards_of_its_sub_assembly_and_no_other(job: str):
    surround = _plan(job)
    for name, text in _assemblies(job).items():
        entities = read_entities(text)
        pieces = {e.all(1)[0] for e in entities if e.kind == "ATTRIB" and e.all(2)[0] == "PIECE"}
        own = {
            mark
            for mark, board in zip(surround.marks, surround.boards, strict=True)
            if name_drawing(board.assembly) == name
        }
        assert pieces
        assert pieces <= own
        assert len(pieces) > len(own) / 2


def test_views_stand_round_the_front_in_third_angle(job: str):
    for text in _assemblies(job).values():
        names = {e.all(2)[0] for e in read_entities(text) if e.kind == "INSERT"}
        for view in ("PART-FRONT", "PART-RIGHT", "PLAN-PART"):
            assert any(name.endswith(f"-{view}") for name in names)
        document = ezdxf.read(StringIO(text))
        at = {e.dxf.name.split("-", 1)[1]: e.dxf.insert for e in document.modelspace().query("INSERT")}
        assert at["PART-RIGHT"].x > at["PART-FRONT"].x
        assert at["PLAN-PART"].y > at["PART-FRONT"].y
        if "LEFT-PART" in at:
            assert at["LEFT-PART"].x < at["PART-FRONT"].x


def test_each_shop_drawing_is_a_layout_of_one_file(job: str):
    found = [
        layout
        for text in _assemblies(job).values()
        for layout in ezdxf.read(StringIO(text)).layouts.names_in_taborder()[1:]
        if layout != "Layout1"
    ]
    assert sorted(found) == sorted(name_layout(sheet) for sheet in _shop(job))


def test_a_mirror_twin_has_layouts_of_its_own_with_the_numbers_of_the_sheets_that_show_the_other():
    names = {
        name: ezdxf.read(StringIO(text)).layouts.names_in_taborder()[1:]
        for name, text in _assemblies("brick").items()
    }
    left, right = names["left column.dxf"], names["right column.dxf"]
    assert [layout.split()[0] for layout in left] == [layout.split()[0] for layout in right]
    assert all("Left and right column" in layout for layout in left)
    assert all("Right column" in layout for layout in right)
    assert list(list_viewports(_assemblies("brick")["right column.dxf"]))


def test_viewports_are_at_the_scales_of_the_shop_drawings(job: str):
    sheets = {name_layout(sheet): sheet for sheet in _shop(job)}
    for text in _assemblies(job).values():
        (layout,) = ezdxf.read(StringIO(text)).layouts.names_in_taborder()[1:]
        if layout == "Layout1":
            continue
        wanted = sorted(p.drawing.ratio for p in sheets[layout].placed if p.name in PART_VIEWS)
        found = sorted(viewport.number(45) / viewport.number(41) for viewport in list_viewports(text))
        assert found == pytest.approx(wanted)


def test_a_reader_finds_the_sizes_of_the_front(job: str, tmp_path: Path):
    surround = _plan(job)
    for name, text in _assemblies(job).items():
        boards = [b for b in surround.boards if name_drawing(b.assembly) == name]
        rows = read_rows(text, tmp_path)
        lines = [r for r in rows if r["PaperSpace"] != 1 and r["Layer"].startswith("A-DETL-OTLN")]
        width = max(b.bounds[1][0] for b in boards) - min(b.bounds[0][0] for b in boards)
        middle = (max(b.bounds[1][0] for b in boards) + min(b.bounds[0][0] for b in boards)) / 2
        edges = [x for r in lines for x in (r["shape"].bounds[0], r["shape"].bounds[2])]
        assert min(abs(x - (middle - width / 2)) for x in edges) < 1e-6
        assert min(abs(x - (middle + width / 2)) for x in edges) < 1e-6


def test_dimensions_of_a_layout_are_those_of_its_sheet(job: str):
    sheets = {name_layout(sheet): sheet for sheet in _shop(job)}
    for text in _assemblies(job).values():
        document = ezdxf.read(StringIO(text))
        (layout,) = document.layouts.names_in_taborder()[1:]
        if layout != "Layout1":
            marks = [mark for placed in sheets[layout].placed for mark in placed.drawing.marks]
            wanted = sum(isinstance(mark, Dimension) for mark in marks)
            assert len(document.layouts.get(layout).query("DIMENSION")) == wanted


@pytest.mark.parametrize("version", VERSIONS)
def test_each_moulding_is_a_closed_outline_full_size(job: str, version: str):
    surround = _plan(job)
    drawn = dict(build_moulding_drawings(surround, version, lambda *_: None))
    for text in drawn.values():
        document = ezdxf.read(StringIO(text))
        (outline,) = document.modelspace()
        assert outline.dxftype() == ("POLYLINE" if version == "R12" else "LWPOLYLINE")
        assert outline.is_closed
        assert not document.audit().errors


@pytest.mark.parametrize("version", VERSIONS)
def test_the_version_is_the_one_that_was_asked_for(version: str):
    surround = _plan("bedroom")
    text = build_drawing(surround, list_cuts(surround), (), version, lambda *_: None)
    assert {"R2010": "AC1024", "R12": "AC1009"}[version] in text[:400]


def test_r12_holds_only_what_r12_knows():
    surround = _plan("gas")
    text = build_drawing(surround, list_cuts(surround), _sheets("gas"), "R12", lambda *_: None)
    kinds = {e.kind for e in read_entities(text)}
    assert not {"LWPOLYLINE", "HATCH", "MTEXT", "LEADER", "LAYOUT", "CLASS"} & kinds
    assert {"POLYLINE", "INSERT", "ATTRIB", "DIMENSION", "VIEWPORT", "TEXT"} <= kinds
    layers = [e for e in read_entities(text) if e.kind == "LAYER"]
    assert not any(e.all(370) or e.all(420) for e in layers)
    assert any("Line widths in mm" in e.all(1)[0] for e in read_entities(text) if e.kind == "TEXT")


def test_r12_says_nothing_about_itself_on_the_way(caplog: pytest.LogCaptureFixture, capsys):
    surround = _plan("bedroom")
    build_drawing(surround, list_cuts(surround), (), "R12", lambda *_: None)
    assert not caplog.records
    assert capsys.readouterr().err == ""


def test_folders_lie_in_the_folder_of_the_packet(tmp_path: Path):
    job = read_demo("brick")
    paths = write_outputs(tmp_path, build_outputs(job, "letter", "", (ASSEMBLIES, MOULDINGS)))
    assert {path.parent for path in paths} == {
        tmp_path / name_output(job, part) for part in (ASSEMBLIES, MOULDINGS)
    }
    assert all(path.suffix == ".dxf" and path.read_bytes() for path in paths)


def test_a_job_without_mouldings_leaves_no_folder(tmp_path: Path):
    job = with_texts(default_job(), [("bed_mould.on", "no")])
    assert not list(build_moulding_drawings(plan_surround(job), "R2010", lambda *_: None))
    assert write_outputs(tmp_path, build_outputs(job, "letter", "", (MOULDINGS,))) == ()
    assert not list(tmp_path.iterdir())


def test_a_title_makes_a_name_that_every_system_takes():
    assert name_drawing('left: "column" / 2?') == "left column 2.dxf"
    assert name_drawing("Bed mould - Cyma, 45°") == "Bed mould - Cyma, 45°.dxf"


@pytest.mark.parametrize("version", VERSIONS)
def test_another_process_writes_the_same_bytes(version: str, tmp_path: Path):
    for seed in ("1", "77"):
        environment = os.environ | {"PYTHONHASHSEED": seed, "PYTHONPATH": str(ROOT)}
        arguments = ["drawings", "gas", "--out", str(tmp_path / seed), "--date", "2001-02-03"]
        subprocess.run(
            [sys.executable, "-m", "app", *arguments, "--dxf-version", version],
            env=environment,
            check=True,
            capture_output=True,
        )
    one, other = (sorted((tmp_path / seed).rglob("*.dxf")) for seed in ("1", "77"))
    assert len(one) > len(DRAWINGS)
    assert [p.relative_to(tmp_path / "1") for p in one] == [p.relative_to(tmp_path / "77") for p in other]
    assert all(a.read_bytes() == b.read_bytes() for a, b in zip(one, other, strict=True))
