"""A moulding's section read from a file: a closed polyline in a DXF drawing, or its text.

What an outline means is model.moulding.tracing's business, what a text means model.moulding.notation's.
"""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from app.files import UNCHANGED, FileTrouble, describe_cause, read_bytes
from model.errors import Refused
from model.moulding.notation import clean_name, parse_section
from model.moulding.section import Section
from model.moulding.tracing import FIELD, Vertex, trace_section
from model.units import INCHES_PER_FOOT, MM_PER_INCH

if TYPE_CHECKING:
    from ezdxf.entities.dxfentity import DXFEntity

DXF_SUFFIX = ".dxf"
LARGEST_DXF = 20_000_000
LARGEST_TEXT = 20_000
"""Bytes; anything beyond is some other file."""
TOO_LARGE = "it is too large to hold one section"
UNITS = {"inches": 1.0, "mm": 1 / MM_PER_INCH}
"""What a drawing without units may be said to be in, to inches."""
_INSUNITS = {
    1: 1.0,
    2: float(INCHES_PER_FOOT),
    4: 1 / MM_PER_INCH,
    5: 10 / MM_PER_INCH,
    6: 1000 / MM_PER_INCH,
}
"""The drawing's own unit by its number in the header, to inches: DXF reference, $INSUNITS."""


def read_section_file(path: Path, units: str = "") -> Section:
    """The section in a .dxf drawing or, by any other name, in a text.

    Raises FileTrouble for the disk, Refused for what is in the file.
    """
    if path.suffix.lower() == DXF_SUFFIX:
        return read_section_dxf(path, units)
    data = read_bytes(path, LARGEST_TEXT, TOO_LARGE)
    try:
        return parse_section(data.decode("utf-8-sig"), path.name)
    except UnicodeDecodeError:
        raise Refused("section file", path.name, "a text or a .dxf drawing is wanted") from None


def read_section_dxf(path: Path, units: str = "") -> Section:
    """The section that the one closed polyline of a drawing outlines, named after the file.

    `units` is a key of UNITS, for drawings that do not say theirs. Raises FileTrouble and Refused.
    """
    read_bytes(path, LARGEST_DXF, TOO_LARGE)
    try:
        unit, found = _list_closed(path)
    except OSError as error:
        if error.errno is not None:
            raise FileTrouble(path, "opened", describe_cause(error), UNCHANGED) from error
        raise Refused(FIELD, path.name, "a DXF drawing is wanted") from None
    except Exception:  # a spoilt drawing makes its reader stumble in any way there is
        raise Refused(FIELD, path.name, "a whole DXF drawing is wanted; save it again") from None
    to_inches = _find_scale(unit, path, units)
    if len(found) != 1:
        count = "none" if not found else str(len(found))
        raise Refused(FIELD, path.name, f"one closed polyline in model space is wanted; it has {count}")
    vertices = [(x * to_inches, y * to_inches, bulge) for x, y, bulge in found[0]]
    return trace_section(vertices, clean_name(path.stem))


def _list_closed(path: Path) -> tuple[int, list[list[Vertex]]]:
    """The number that a drawing has for its unit, and its closed polylines. Raises whatever ezdxf raises."""
    from ezdxf.filemanagement import readfile

    document = readfile(path)
    drawn = map(_list_vertices, document.modelspace().query("LWPOLYLINE POLYLINE"))
    return document.header.get("$INSUNITS", 0), [vertices for vertices in drawn if vertices]


def _find_scale(unit: int, path: Path, units: str) -> float:
    if unit in _INSUNITS:
        return _INSUNITS[unit]
    if units in UNITS:
        return UNITS[units]
    raise Refused(
        FIELD,
        path.name,
        "the drawing does not say its unit; say --units inches or --units mm, or set it there",
    )


def _list_vertices(entity: DXFEntity) -> list[Vertex]:
    """x, y and bulge of a closed flat polyline's vertices in its own unit; empty for an open one."""
    from ezdxf.entities.lwpolyline import LWPolyline
    from ezdxf.entities.polyline import Polyline

    if isinstance(entity, LWPolyline):
        vertices = [(x, y, bulge) for x, y, bulge in entity.get_points("xyb")]
        closed = entity.closed
    elif isinstance(entity, Polyline) and entity.is_2d_polyline:
        vertices = [(v.dxf.location.x, v.dxf.location.y, v.dxf.get("bulge", 0.0)) for v in entity.vertices]
        closed = entity.is_closed
    else:
        return []
    if len(vertices) > 1 and not closed and _meet(vertices[0], vertices[-1]):
        vertices, closed = vertices[:-1], True
    if not closed:
        return []
    # Seen from behind, x runs the other way and arcs bend the other way.
    flip = -1.0 if entity.dxf.get("extrusion", (0, 0, 1))[2] < 0 else 1.0
    return [(flip * x, y, flip * bulge) for x, y, bulge in vertices]


def _meet(one: Vertex, other: Vertex) -> bool:
    return abs(one[0] - other[0]) < 1e-6 and abs(one[1] - other[1]) < 1e-6
