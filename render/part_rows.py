"""Which boards a row of the design is about, for rows that no dimension of a view shows."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from model.board import Board
from render.dimension_strings import Edge


@dataclass(frozen=True, slots=True)
class PartRow:
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


_COLUMNS = PartRow(assemblies=("left column", "right column"))
_FRIEZE = PartRow(assemblies=("frieze",))
_SHELF = PartRow(assemblies=("shelf",))
_OVER = PartRow(assemblies=("overmantel",))
_FRAMES = PartRow(roles=("column stile", "column bottom rail", "column top rail", "column middle rail"))
_PANELS = PartRow(roles=("column panel", "frieze panel", "overmantel panel"))
_NAILERS = PartRow(assemblies=("nailers",))
_CAPITAL, _CAP = PartRow(roles=("capital",)), PartRow(roles=("plinth cap",))
_BED, _BAND = PartRow(assemblies=("bed mould",)), PartRow(assemblies=("back band",))
_PANEL_MOULD = PartRow(roles=("column panel mould", "frieze panel mould"))
_SLIP, _PLINTH = PartRow(assemblies=("slip",)), PartRow(roles=("plinth front", "plinth return"))
_EDGE = PartRow(roles=("edge band",))


def _sized(part: PartRow, edge: Edge) -> PartRow:
    return PartRow(part.roles, part.assemblies, part.view, edge)


_ROWS: Mapping[str, PartRow] = {
    "column.kind": _COLUMNS,
    "column.taper": _COLUMNS,
    "column.taper_edges": _COLUMNS,
    "column.over_edge": _PLINTH,
    "column.panels": _PANELS,
    "column.rail": _FRAMES,
    "column.stile": _FRAMES,
    **{
        f"flute.{row}": PartRow(roles=("column fluted face",))
        for row in ("count", "width", "depth", "between")
    },
    "flute.stop": _sized(PartRow(roles=("column flute stop",)), Edge.RIGHT),
    **{f"raised.{row}": PartRow(roles=("column raised board",)) for row in ("margin", "thickness")},
    "plinth.on": _PLINTH,
    "plinth.height": _PLINTH,
    "frieze.kind": _FRIEZE,
    "frieze.place": _FRIEZE,
    "frieze.projection": _FRIEZE,
    "frieze.panels": PartRow(roles=("frieze panel",)),
    **{f"tablet.{row}": PartRow(roles=("frieze tablet",)) for row in ("width", "height", "thickness")},
    "panel.kind": _PANELS,
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
    "over.stile": _sized(PartRow(roles=("overmantel stile",)), Edge.ABOVE),
    "over.rail": _sized(PartRow(roles=("overmantel bottom rail",)), Edge.RIGHT),
    "over.panels": PartRow(roles=("overmantel panel",)),
    "bed_mould.on": _BED,
    "bed_mould.profile": _BED,
    "bed_mould.size": _BED,
    "capital.on": _CAPITAL,
    "capital.profile": _CAPITAL,
    "capital.size": _sized(PartRow(roles=("capital front",)), Edge.RIGHT),
    "plinth_cap.on": _CAP,
    "plinth_cap.profile": _CAP,
    "plinth_cap.size": _sized(PartRow(roles=("plinth cap front",)), Edge.RIGHT),
    "panel_mould.on": _PANEL_MOULD,
    "panel_mould.profile": _PANEL_MOULD,
    "panel_mould.size": _sized(PartRow(roles=("column panel mould upright",)), Edge.ABOVE),
    "back_band.on": _BAND,
    "back_band.profile": _BAND,
    "back_band.size": _sized(PartRow(roles=("back band leg",)), Edge.BELOW),
    "slip.on": _SLIP,
    "slip.width": _sized(PartRow(roles=("slip leg",)), Edge.BELOW),
    "slip.thickness": _SLIP,
    "nailer.width": _sized(PartRow(roles=("column nailer",)), Edge.BELOW),
    "nailer.clearance": _NAILERS,
    "nailer.ledger": PartRow(roles=("shelf nailer",)),
    "nailer.cleat": PartRow(roles=("soffit nailer",)),
    **{f"anchor.{row}": _NAILERS for row in ("edge", "spacing", "lintel")},
    "cord.exit_height": _COLUMNS,
}


def find_part(path: str) -> PartRow | None:
    """The boards that the row called `path` is about; None where it is about no board in particular."""
    return _ROWS.get(path)
