"""One moulding's section as a drawing file: a closed polyline with true arcs, full size in inches.

It is drawn as it hangs, the wall on its left and the seat on top, as app.section_file reads one.
"""

from __future__ import annotations

from export.dxf_file import R2010, document_text, fixed_dates, is_old, open_document
from export.dxf_text import format_dxf_text
from model.moulding.section import Section

LAYER = "SECTION"
_INCHES_DECIMAL = 2
_PLACES = 4


def write_section_dxf(section: Section, version: str = R2010) -> str:
    """DXF text of `section` in R2010 or R12; the same section gives the same text."""
    x0, y0, x1, y1 = section.outline.bounds
    with fixed_dates():
        document = open_document(version)
        document.header["$LUNITS"] = _INCHES_DECIMAL
        document.header["$LUPREC"] = _PLACES
        if not is_old(document):
            document.header.custom_vars.append("Title", format_dxf_text(section.name))
        document.layers.add(LAYER)
        points = [(*stroke.start, stroke.bulge) for stroke in section.outline.strokes]
        space = document.modelspace()
        draw = space.add_polyline2d if is_old(document) else space.add_lwpolyline
        draw(points, format="xyb", close=True, dxfattribs={"layer": LAYER})
        space.reset_extents((x0, y0, 0.0), (x1, y1, 0.0))
        document.set_modelspace_vport((y1 - y0) * 1.2, ((x0 + x1) / 2, (y0 + y1) / 2))
        return document_text(document)
