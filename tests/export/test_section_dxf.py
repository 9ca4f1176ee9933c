"""Sections as drawing files: arcs kept as arcs, read alike by an independent reader, the same every time."""

from __future__ import annotations

import ezdxf
import pyogrio
import pytest
import shapely
from ezdxf import path as ezpath

from export.section_dxf import write_section_dxf
from model.moulding.library import SECTIONS
from model.moulding.outline import Arc

NAMES = sorted(SECTIONS)


def polyline_of(tmp_path, section):
    file = tmp_path / "section.dxf"
    file.write_text(write_section_dxf(section), encoding="utf-8")
    (entity,) = ezdxf.readfile(file).modelspace()
    return file, entity


@pytest.mark.parametrize("name", NAMES)
def test_each_stroke_is_one_vertex_with_its_own_arc(tmp_path, name):
    section = SECTIONS[name].section
    _, entity = polyline_of(tmp_path, section)
    assert entity.closed
    arcs = sum(isinstance(stroke, Arc) for stroke in section.outline.strokes)
    points = entity.get_points("xyb")
    assert len(points) == len(section.outline.strokes)
    assert sum(bulge != 0 for _, _, bulge in points) == arcs


@pytest.mark.parametrize("name", NAMES)
def test_another_reader_finds_the_same_area(tmp_path, name):
    section = SECTIONS[name].section
    file, _ = polyline_of(tmp_path, section)
    _, _, shapes, _ = pyogrio.raw.read(file)
    (shape,) = shapely.from_wkb(shapes)
    ring = shape if shape.geom_type == "Polygon" else shapely.Polygon(shape.coords)
    # GDAL draws arcs in steps of some degrees.
    assert ring.area == pytest.approx(section.outline.area, rel=3e-3)


def test_arcs_lie_where_the_section_has_them(tmp_path):
    section = SECTIONS["attic_base"].section
    _, entity = polyline_of(tmp_path, section)
    fine = ezpath.make_path(entity).flattening(1e-5)
    xs, ys = zip(*((p.x, p.y) for p in fine), strict=True)
    assert (min(xs), min(ys), max(xs), max(ys)) == pytest.approx(section.outline.bounds, abs=1e-4)


def test_it_is_in_inches_and_says_its_name(tmp_path):
    file, _ = polyline_of(tmp_path, SECTIONS["cyma_recta"].section)
    document = ezdxf.readfile(file)
    assert document.header["$INSUNITS"] == 1
    assert document.header.custom_vars.get("Title") == "Cyma recta and fillets"


def test_the_same_section_gives_the_same_text():
    section = SECTIONS["conge"].section
    assert write_section_dxf(section) == write_section_dxf(section)
