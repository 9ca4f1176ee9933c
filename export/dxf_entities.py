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
from render.drawing import Anchor, Hatch, Point, Ring, Segment, Text
from render.hatching import hatch_segments
from render.lettering import set_share

if TYPE_CHECKING:
    from ezdxf.document import Drawing as Document
    from ezdxf.layouts.base import BaseLayout

TEXT_STYLES = {False: "LETTERING", True: "LETTERING-BOLD"}
"""Names of the text styles, keyed by whether they are bold."""

_ALIGNED = {Anchor.START: 0, Anchor.MIDDLE: 1, Anchor.END: 2}
_MIDDLE_CENTRE = 5
_OUTER_RING, _INNER_RING = 1, 16
_PATTERN, _PATTERN_ANGLE, _PATTERN_SPACING, _PREDEFINED = "ANSI31", 45.0, 0.125, 1
"""The pattern of plain parallel strokes that every program has: name, angle and spacing at scale 1, in."""
_BY_LAYER = 256


@dataclass(frozen=True, slots=True)
class Pencil:
    """Draws in `space` of `document`, one unit of which is 1/`ratio` inch on paper.

    Line types are declared in paper inches; `ratio` makes their dashes as long in `space` as they must be.
    """

    document: Document
    space: BaseLayout
    ratio: float

    @property
    def is_old(self) -> bool:
        """Whether the document is R12, which has no LWPOLYLINE, HATCH or MTEXT."""
        return is_old(self.document)

    def inside(self, space: BaseLayout) -> Pencil:
        """The same in a block."""
        return Pencil(self.document, space, self.ratio)

    def list_look(self, layer: Layer) -> dict[str, str | float]:
        """The attributes of an entity on `layer`."""
        look: dict[str, str | float] = {"layer": layer.name}
        if layer.pattern and self.ratio != 1:
            if self.is_old:
                look["linetype"] = scaled_linetype(layer, self.ratio)
            else:
                look["ltscale"] = self.ratio
        return look

    def draw_path(self, points: Sequence[Point], closed: bool, layer: Layer) -> None:
        """A line through `points`."""
        look = self.list_look(layer)
        if len(points) == 2:
            self.space.add_line(points[0], points[1], dxfattribs=look)
        elif self.is_old:
            self.space.add_polyline2d(points, close=closed, dxfattribs=look)
        else:
            self.space.add_lwpolyline(points, close=closed, dxfattribs=look)

    def draw_strokes(self, segments: Sequence[Segment], layer: Layer) -> None:
        """Loose straight strokes."""
        look = self.list_look(layer)
        for x1, y1, x2, y2 in segments:
            self.space.add_line((x1, y1), (x2, y2), dxfattribs=look)

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
        block = self.document.blocks.new_anonymous_block(type_char="X")
        self.inside(block).draw_strokes(hatch_segments(hatch), layer)
        self.space.add_blockref(block.name, (0, 0), dxfattribs={"layer": layer.name})

    def fill(self, ring: Ring, layer: Layer) -> None:
        """A dark area of three or four corners."""
        first, second, third, *more = ring
        self.space.add_solid(
            [first, second, more[0] if more else third, third], dxfattribs={"layer": layer.name}
        )

    def write(self, text: Text, layer: Layer) -> None:
        """One line of writing whose capitals are `text.height` high; nothing for an empty one."""
        written = format_dxf_text(text.text)
        if not written.strip():
            return
        look: dict[str, object] = {"layer": layer.name, "style": TEXT_STYLES[text.bold], "insert": text.at}
        share = set_share(text.text, text.bold)
        if share < 1:  # figures of one size, so narrower: no wider than where they are set as fractions
            look["width"] = share
        if text.rotation:
            look["rotation"] = text.rotation
        if text.anchor is not Anchor.START:
            look |= {"align_point": text.at, "halign": _ALIGNED[text.anchor]}
        self.space.add_text(written, height=text.height, dxfattribs=look)

    def write_centred(self, words: str, at: Point, height: float, rotation: float, layer: Layer) -> None:
        """Writing that is centred on `at` both ways."""
        from ezdxf.enums import TextEntityAlignment

        look = {"layer": layer.name, "style": TEXT_STYLES[False], "rotation": rotation}
        if self.is_old:
            share = {"width": set_share(words)}
            entity = self.space.add_text(format_dxf_text(words), height=height, dxfattribs=look | share)
            entity.set_placement(at, align=TextEntityAlignment.MIDDLE_CENTER)
            return
        placing = {"insert": at, "attachment_point": _MIDDLE_CENTRE, "char_height": height}
        self.space.add_mtext(format_mtext(words), dxfattribs=look | placing)


def scaled_linetype(layer: Layer, ratio: float) -> str:
    """The name of the layer's line type for a space at `ratio`, where entities have no scale of their own."""
    return f"{layer.linetype}-1-{ratio:g}".replace(".", "_")
