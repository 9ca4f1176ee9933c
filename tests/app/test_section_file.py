"""Sections from files: drawings in inches and millimetres, old and new polylines, and texts."""

from __future__ import annotations

import ezdxf
import pytest

from app.files import FileTrouble
from app.section_file import read_section_dxf, read_section_file
from export.section_dxf import write_section_dxf
from model.errors import Refused
from model.moulding.elements import Shape
from model.moulding.library import SECTIONS
from model.moulding.notation import format_section

COVE = SECTIONS["cove_and_fillets"].section.sized(1.5)
VERTICES = [(*stroke.start, stroke.bulge) for stroke in COVE.outline.strokes]


def drawing(tmp_path, units=1, scale=1.0, name="My cove.dxf"):
    document = ezdxf.new("R2010", units=units)
    points = [(x * scale + 7, y * scale - 3, bulge) for x, y, bulge in VERTICES]
    return document, points, tmp_path / name


@pytest.mark.parametrize("name", sorted(SECTIONS))
def test_what_is_written_is_read_back(tmp_path, name):
    section = SECTIONS[name].section
    path = tmp_path / "drawn.dxf"
    path.write_text(write_section_dxf(section), encoding="utf-8")
    read = read_section_dxf(path)
    assert read.outline.area == pytest.approx(section.outline.area, rel=1e-5)
    assert read.outline.bounds == pytest.approx(section.outline.bounds, abs=1e-5)
    assert read.spring == pytest.approx(section.spring, abs=1e-3)


@pytest.mark.parametrize(("units", "scale"), [(1, 1.0), (4, 25.4), (5, 2.54), (6, 0.0254), (2, 1 / 12)])
def test_the_drawings_own_unit_is_heeded(tmp_path, units, scale):
    document, points, path = drawing(tmp_path, units, scale)
    document.modelspace().add_lwpolyline(points, format="xyb", close=True)
    document.saveas(path)
    section = read_section_dxf(path)
    assert section.name == "My cove"
    assert (section.height, section.projection) == pytest.approx((1.5, 1.5), abs=1e-5)
    assert [e.shape for e in section.elements] == [Shape.FILLET, Shape.CAVETTO, Shape.FILLET]


def test_a_drawing_without_units_is_asked_for_them(tmp_path):
    document, points, path = drawing(tmp_path, 0, 25.4)
    document.modelspace().add_lwpolyline(points, format="xyb", close=True)
    document.saveas(path)
    with pytest.raises(Refused, match="--units"):
        read_section_dxf(path)
    assert read_section_dxf(path, "mm").height == pytest.approx(1.5, abs=1e-5)


def test_an_old_polyline_is_read_as_well(tmp_path):
    document, points, path = drawing(tmp_path)
    document.modelspace().add_polyline2d(points, format="xyb", close=True)
    document.saveas(path)
    assert read_section_dxf(path).height == pytest.approx(1.5, abs=1e-5)


def test_a_polyline_that_ends_where_it_begins_is_closed(tmp_path):
    document, points, path = drawing(tmp_path)
    document.modelspace().add_lwpolyline([*points, (*points[0][:2], 0)], format="xyb")
    document.saveas(path)
    assert read_section_dxf(path).height == pytest.approx(1.5, abs=1e-5)


def test_a_polyline_seen_from_behind_is_turned_over(tmp_path):
    document, points, path = drawing(tmp_path)
    turned = [(-x, y, -bulge) for x, y, bulge in points]
    attributes = {"extrusion": (0, 0, -1)}
    document.modelspace().add_lwpolyline(turned, format="xyb", close=True, dxfattribs=attributes)
    document.saveas(path)
    assert read_section_dxf(path).height == pytest.approx(1.5, abs=1e-5)


@pytest.mark.parametrize("count", [0, 2])
def test_one_closed_polyline_is_wanted(tmp_path, count):
    document, points, path = drawing(tmp_path)
    document.modelspace().add_lwpolyline(points, format="xyb")  # open
    document.modelspace().add_line((0, 0), (1, 1))
    for _ in range(count):
        document.modelspace().add_lwpolyline(points, format="xyb", close=True)
    document.saveas(path)
    with pytest.raises(Refused, match="one closed polyline"):
        read_section_dxf(path)


@pytest.mark.parametrize("text", ["", "hello", "0\nSECTION\n2\nENTITIES\n0\nLWPOLYLINE\n10\nx\n"])
def test_what_is_no_drawing_is_refused(tmp_path, text):
    path = tmp_path / "odd.dxf"
    path.write_text(text)
    with pytest.raises(Refused, match="section drawing"):
        read_section_dxf(path)


def test_a_drawing_that_is_cut_off_anywhere_in_its_head_is_refused(tmp_path):
    whole = write_section_dxf(SECTIONS["cove_and_fillets"].section)
    path = tmp_path / "cut off.dxf"
    for length in range(0, whole.index("ENDSEC"), 7):
        path.write_text(whole[:length], encoding="utf-8")
        with pytest.raises(Refused, match=r"a (whole )?DXF drawing is wanted|one closed polyline"):
            read_section_dxf(path)


def test_a_drawing_without_model_space_is_refused(tmp_path):
    path = tmp_path / "spoilt.dxf"
    path.write_text(write_section_dxf(COVE).replace("\nModel\n", "\nNodel\n"), encoding="utf-8")
    with pytest.raises(Refused, match="a whole DXF drawing is wanted"):
        read_section_dxf(path)


def test_bytes_that_are_no_text_are_refused(tmp_path):
    for name in ("odd.dxf", "odd.txt"):
        path = tmp_path / name
        path.write_bytes(bytes(range(256)) * 4)
        with pytest.raises(Refused):
            read_section_file(path)


def test_a_missing_file_is_the_disks_trouble(tmp_path):
    for name in ("none.dxf", "none.txt"):
        with pytest.raises(FileTrouble, match="no such file"):
            read_section_file(tmp_path / name)


def test_a_text_is_read_as_it_is_written(tmp_path):
    path = tmp_path / "cove.txt"
    path.write_text(format_section(COVE), encoding="utf-8")
    assert read_section_file(path) == COVE


def test_a_text_that_is_no_section_names_the_file(tmp_path):
    path = tmp_path / "notes.txt"
    path.write_text("buy glue")
    with pytest.raises(Refused, match=r"notes\.txt"):
        read_section_file(path)
