"""Which boards a row of the design is about, for rows that no dimension of a view shows."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from model.board import Board
from render.dimension_strings import Edge


@dataclass(frozen=True, slots=True)
class Part:
    """Boards by the start of their role or by their sub-assembly, and the view that shows them best.

    `edge` asks for the size of one of them along that side of the picture.
    """

    roles: tuple[str, ...] = ()
    assemblies: tuple[str, ...] = ()
    view: str = "front"
    edge: Edge | None = None

    def concerns(self, board: Board) -> bool:
        """Whether the row is about this board."""
        return board.assembly in self.assemblies or board.role.startswith(self.roles or ("\0",))


_COLUMNS = Part(assemblies=("left column", "right column"))
_FRIEZE = Part(assemblies=("frieze",))
_SHELF = Part(assemblies=("shelf",))
_OVER = Part(assemblies=("overmantel",))
_FRAMES = Part(roles=("column stile", "column bottom rail", "column top rail", "column middle rail"))
_PANELS = Part(roles=("column panel", "frieze panel", "overmantel panel"))
_NAILERS = Part(assemblies=("nailers",))
_CAPITAL, _CAP = Part(roles=("capital",)), Part(roles=("plinth cap",))
_BED, _BAND = Part(assemblies=("bed mould",)), Part(assemblies=("back band",))
_PANEL_MOULD = Part(roles=("column panel mould", "frieze panel mould"))
_SLIP, _PLINTH = Part(assemblies=("slip",)), Part(roles=("plinth front", "plinth return"))
_EDGE = Part(roles=("edge band",))


def _sized(part: Part, edge: Edge) -> Part:
    return Part(part.roles, part.assemblies, part.view, edge)


_ROWS: Mapping[str, Part] = {
    "column.kind": _COLUMNS,
    "column.taper": _COLUMNS,
    "column.taper_edges": _COLUMNS,
    "column.over_edge": _PLINTH,
    "column.panels": _PANELS,
    "column.rail": _FRAMES,
    "column.stile": _FRAMES,
    **{f"flute.{row}": Part(roles=("column fluted face",)) for row in ("count", "width", "depth", "between")},
    "flute.stop": _sized(Part(roles=("column flute stop",)), Edge.RIGHT),
    "plinth.on": _PLINTH,
    "plinth.height": _PLINTH,
    "frieze.kind": _FRIEZE,
    "frieze.place": _FRIEZE,
    "frieze.projection": _FRIEZE,
    "frieze.panels": Part(roles=("frieze panel",)),
    **{f"tablet.{row}": Part(roles=("frieze tablet",)) for row in ("width", "height", "thickness")},
    "panel.reveal": _PANELS,
    "panel.thickness": _PANELS,
    "panel.grain": _PANELS,
    "shelf.kind": _SHELF,
    "shelf.height_from": _SHELF,
    "shelf.step": _SHELF,
    "shelf.load": _SHELF,
    "shelf.edge_height": _EDGE,
    "shelf.edge_profile": _EDGE,
    "shelf.edge_size": _EDGE,
    **{f"over.{row}": _OVER for row in ("on", "reach", "height", "projection")},
    "over.stile": _sized(Part(roles=("overmantel stile",)), Edge.ABOVE),
    "over.rail": _sized(Part(roles=("overmantel bottom rail",)), Edge.RIGHT),
    "over.panels": Part(roles=("overmantel panel",)),
    "bed_mould.on": _BED,
    "bed_mould.profile": _BED,
    "bed_mould.size": _BED,
    "capital.on": _CAPITAL,
    "capital.profile": _CAPITAL,
    "capital.size": _sized(Part(roles=("capital front",)), Edge.RIGHT),
    "plinth_cap.on": _CAP,
    "plinth_cap.profile": _CAP,
    "plinth_cap.size": _sized(Part(roles=("plinth cap front",)), Edge.RIGHT),
    "panel_mould.on": _PANEL_MOULD,
    "panel_mould.profile": _PANEL_MOULD,
    "panel_mould.size": _sized(Part(roles=("column panel mould upright",)), Edge.ABOVE),
    "back_band.on": _BAND,
    "back_band.profile": _BAND,
    "back_band.size": _sized(Part(roles=("back band leg",)), Edge.BELOW),
    "slip.on": _SLIP,
    "slip.width": _sized(Part(roles=("slip leg",)), Edge.BELOW),
    "slip.thickness": _SLIP,
    "nailer.width": _sized(Part(roles=("column nailer",)), Edge.BELOW),
    "nailer.clearance": _NAILERS,
    "nailer.ledger": Part(roles=("shelf nailer",)),
    "nailer.cleat": Part(roles=("soffit nailer",)),
    **{f"anchor.{row}": _NAILERS for row in ("edge", "spacing", "lintel")},
    "cord.exit_height": _COLUMNS,
}


def find_part(path: str) -> Part | None:
    """The boards that the row called `path` is about; None where it is about no board in particular."""
    return _ROWS.get(path)
