"""Lines, areas and writing as entities of one space of a DXF document, in either version that is written.

Which mark becomes what stands in export.dxf_marks, how a dimension is built in export.dxf_dimensions.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import cos, radians, sin
from typing import TYPE_CHECKING

from export.dxf_file import is_old
from export.dxf_layers import Layer
from export.dxf_text import format_dxf_text, format_mtext
from export.dxf_written import ANONYMOUS, SpaceWriter, add_block, tell_point, tell_tag
from render.drawing import Anchor, Hatch, Point, Ring, Segment, Text
from render.hatching import hatch_segments
from render.lettering import set_share

if TYPE_CHECKING:
    from ezdxf.document import Drawing as Document
    from ezdxf.layouts.base import BaseLayout

TEXT_STYLES = {False: "LETTERING", True: "LETTERING-BOLD"}
"""Names of the text styles, keyed by whether they are bold."""

_ALIGNED = {Anchor.START: 0, Anchor.MIDDLE: 1, Anchor.END: 2}
_CENTRE, _MIDDLE = 1, 2
_MIDDLE_CENTRE = 5
_OUTER_RING, _INNER_RING = 1, 16
_PATTERN, _PATTERN_ANGLE, _PATTERN_SPACING, _PREDEFINED = "ANSI31", 45.0, 0.125, 1
"""The pattern of plain parallel strokes that every program has: name, angle and spacing at scale 1, in."""
_BY_LAYER = 256


@dataclass(frozen=True, slots=True)
class Lettering:
    """How a line is written: height of capitals, degrees it is turned by, text style, share of its width."""

    height: float
    rotation: float
    style: str
    width: float = 1.0


class Pencil:
    """Draws in `space` of `document`, one unit of which is 1/`ratio` inch on paper.

    Line types are declared in paper inches; `ratio` makes their dashes as long in `space` as they must be.
    """

    def __init__(self, document: Document, space: BaseLayout, ratio: float) -> None:
        self.document, self.space, self.ratio = document, space, ratio
        self.is_old = is_old(document)
        """Whether the document is R12, which has no LWPOLYLINE, HATCH or MTEXT."""
        self.writer = SpaceWriter(document, space)

    def inside(self, space: BaseLayout) -> Pencil:
        """The same in a block."""
        return Pencil(self.document, space, self.ratio)

    def tell_look(self, layer: Layer) -> str:
        """The tags that every entity on `layer` has."""
        look = tell_tag(8, layer.name)
        if self.ratio == 1 or not layer.pattern:
            return look
        if self.is_old:
            return look + tell_tag(6, scaled_linetype(layer, self.ratio))
        return look + tell_tag(48, float(self.ratio))

    def draw_path(self, points: Sequence[Point], closed: bool, layer: Layer) -> None:
        """A line through `points`."""
        if len(points) == 2:
            self.draw_strokes([(*points[0], *points[1])], layer)
        elif self.is_old:
            self._draw_old_path(points, closed, layer)
        else:
            corners = "".join([f" 10\n{float(x)}\n 20\n{float(y)}\n" for x, y in points])
            body = f"100\nAcDbPolyline\n 90\n{len(points)}\n 70\n{int(closed)}\n{corners}"
            self.writer.add("LWPOLYLINE", self.tell_look(layer), body)

    def _draw_old_path(self, points: Sequence[Point], closed: bool, layer: Layer) -> None:
        writer, look = self.writer, self.tell_look(layer)
        whole, end = writer.take_handle(), writer.take_handle()
        body = tell_tag(66, 1) + tell_point(10, (0, 0)) + tell_tag(70, int(closed))
        corners = [tell_point(10, point) + tell_tag(70, 0) for point in points]
        told = [writer.tell("VERTEX", look, corner, writer.take_handle()) for corner in corners]
        first, last = writer.tell("POLYLINE", look, body, whole), writer.tell("SEQEND", look, "", end)
        writer.add_told("POLYLINE", "".join([first, *told, last]))

    def draw_strokes(self, segments: Sequence[Segment], layer: Layer) -> None:
        """Loose straight strokes."""
        look, kind = self.tell_look(layer), self.writer.tell_class("AcDbLine")
        for x1, y1, x2, y2 in segments:
            body = f"{kind}{tell_point(10, (x1, y1))}{tell_point(11, (x2, y2))}"
            self.writer.add("LINE", look, body)

    def mark_point(self, point: Point, layer_name: str) -> None:
        """A point that is measured and not seen."""
        body = self.writer.tell_class("AcDbPoint") + tell_point(10, point)
        self.writer.add("POINT", tell_tag(8, layer_name), body)

    def hatch(self, hatch: Hatch, origin: Point, layer: Layer) -> None:
        """An area with its boundary and one family of strokes, half a spacing off `origin`.

        R12 knows no hatches: there, as then, a block without a name holds the strokes.
        """
        rings = [ring for ring in hatch.rings if len(ring) > 2]
        if not rings:
            return
        if self.is_old:
            self._draw_hatch_block(hatch, layer)
            return
        entity = self.space.add_hatch(color=_BY_LAYER, dxfattribs={"layer": layer.name})
        entity.set_pattern_fill(
            _PATTERN,
            color=_BY_LAYER,
            angle=(hatch.angle - _PATTERN_ANGLE) % 360,
            scale=hatch.spacing / _PATTERN_SPACING,
            pattern_type=_PREDEFINED,
            definition=[],
        )
        turn = radians(hatch.angle)
        across = (-sin(turn) * hatch.spacing, cos(turn) * hatch.spacing)
        base = (origin[0] + across[0] / 2, origin[1] + across[1] / 2)
        entity.set_pattern_definition([(hatch.angle, base, across, [])])
        for ring, kind in zip(rings, [_OUTER_RING] + [_INNER_RING] * len(rings), strict=False):
            entity.paths.add_polyline_path(ring, is_closed=True, flags=kind)

    def _draw_hatch_block(self, hatch: Hatch, layer: Layer) -> None:
        block = add_block(self.document, self.document.blocks.anonymous_block_name("X"), ANONYMOUS)
        self.inside(block).draw_strokes(hatch_segments(hatch), layer)
        self.space.add_blockref(block.name, (0, 0), dxfattribs={"layer": layer.name})

    def fill(self, ring: Ring, layer: Layer) -> None:
        """A dark area of three or four corners."""
        first, second, third, *more = ring
        corners = (first, second, more[0] if more else third, third)
        body = "".join(tell_point(code, corner) for code, corner in enumerate(corners, start=10))
        self.writer.add("SOLID", tell_tag(8, layer.name), self.writer.tell_class("AcDbTrace") + body)

    def write(self, text: Text, layer: Layer) -> None:
        """One line of writing whose capitals are `text.height` high; nothing for an empty one."""
        words = format_dxf_text(text.text)
        if not words.strip():
            return
        # figures of one size, so narrower: no wider than where they are set as fractions
        share = set_share(text.text, text.bold)
        look = Lettering(text.height, text.rotation, TEXT_STYLES[text.bold], share if share < 1 else 1.0)
        self._write_line(words, text.at, look, layer, _ALIGNED[text.anchor])

    def write_centred(self, words: str, at: Point, height: float, rotation: float, layer: Layer) -> None:
        """Writing that is centred on `at` both ways."""
        style = TEXT_STYLES[False]
        if self.is_old:
            look = Lettering(height, rotation, style, set_share(words))
            self._write_line(format_dxf_text(words), at, look, layer, _CENTRE, _MIDDLE)
            return
        body = "100\nAcDbMText\n" + tell_point(10, at) + tell_tag(40, float(height))
        body += tell_tag(71, _MIDDLE_CENTRE) + tell_tag(1, format_mtext(words)) + tell_tag(7, style)
        body += tell_tag(50, float(rotation)) if rotation else ""
        self.writer.add("MTEXT", tell_tag(8, layer.name), body)

    def _write_line(
        self, words: str, at: Point, look: Lettering, layer: Layer, across: int, upright: int = 0
    ) -> None:
        """A TEXT entity; `across` and `upright` are the format's numbers for where in it `at` is."""
        body = tell_lettering(self.writer, words, at, look)
        if across:
            body += tell_tag(72, across) + tell_point(11, at)
        body += self.writer.tell_class("AcDbText") + (tell_tag(73, upright) if upright else "")
        self.writer.add("TEXT", tell_tag(8, layer.name), body)


def tell_lettering(writer: SpaceWriter, words: str, at: Point, look: Lettering) -> str:
    """The tags that TEXT and the attributes of blocks share."""
    body = writer.tell_class("AcDbText") + tell_point(10, at)
    body += tell_tag(40, float(look.height)) + tell_tag(1, words)
    body += tell_tag(50, float(look.rotation)) if look.rotation else ""
    body += tell_tag(7, look.style)
    return body + (tell_tag(41, look.width) if look.width != 1 else "")


def scaled_linetype(layer: Layer, ratio: float) -> str:
    """The name of the layer's line type for a space at `ratio`, where entities have no scale of their own."""
    return f"{layer.linetype}-1-{ratio:g}".replace(".", "_")
