"""Values that have no say in a job as it stands. They keep what was entered for when they have one again."""

from __future__ import annotations

from model.build.hearth_step import STEPPED
from model.build.mouldings import SQUARE
from model.check.regime import LOCAL, MANUAL, MASONRY_KINDS
from model.design import FLUTED, FRAMED, IN_FRONT, PLANK, RAISED, TABLET, TO_CEILING, Design
from model.fixing import IN_FRIEZE
from model.fixing import OWN as OWN_PLUG
from model.job import Job
from model.look import PAINTED, STAINED
from model.moulding.library import OWN
from model.reference.cautions import LEAD_YEAR
from model.shop import NO_USE
from model.site import AT_OPENING, REMOVE, Site
from model.units import MILLIMETRES_ONLY

TABLES = ("shelf", "legs")
HEARTHS = ("hearth_front", "hearth_side", "hearth_thickness")
READ_BY = (
    "hood",
    "shelf_hood",
    "datum",
    "datum_height",
    "between",
    "plus",
    "greatest",
    "none_above",
    "none_beside",
)
"""Rows of a chart: its tables, its hearth, and how the tables are read."""
OF_COLUMNS = {
    FRAMED: ("column.stile", "column.rail", "column.panels"),
    FLUTED: ("flute.count", "flute.width", "flute.depth", "flute.between", "flute.stop"),
    RAISED: ("raised.margin", "raised.thickness"),
}
"""Rows that only one kind of column has a use for."""
OF_FRIEZES = {
    FRAMED: ("frieze.stile", "frieze.rail", "frieze.panels"),
    TABLET: ("tablet.width", "tablet.height", "tablet.thickness"),
}
"""Rows that only one kind of frieze has a use for."""


def list_idle(job: Job) -> frozenset[str]:
    """Paths of the rows that change nothing now: a chart that does not govern, the size of no moulding."""
    idle: set[str] = set()
    idle |= _list_idle_charts(job.site)
    idle |= _list_idle_faces(job.design) | _list_idle_mouldings(job.design) | _list_idle_cords(job.design)
    for path, piece in (("piece_one", job.shop.piece_one), ("piece_two", job.shop.piece_two)):
        if piece.use == NO_USE:
            idle |= {f"{path}.{row}" for row in ("name", "length", "width", "thickness", "clear")}
    idle |= _list_idle_coats(job.design.look.finish)
    idle |= _list_idle_obstacles(job.site) | _list_idle_levels(job)
    if job.about.units == MILLIMETRES_ONLY:
        idle.add("job.precision")
    return frozenset(idle)


def _list_idle_charts(site: Site) -> set[str]:
    """Rows of charts and amendments that do not govern."""
    idle: set[str] = set()
    masonry = site.fireplace in MASONRY_KINDS
    if not (site.rule == LOCAL and masonry):
        idle |= {f"local.{row}" for row in (*TABLES, *HEARTHS, "source")}
    if site.rule != MANUAL:
        idle |= {f"chart.{row}" for row in (*TABLES, *READ_BY)}
    else:
        idle.add("chart.shelf" if site.chart.hood else "chart.shelf_hood")
        if site.chart.datum == AT_OPENING:
            idle.add("chart.datum_height")
    if masonry:
        idle |= {f"chart.{row}" for row in HEARTHS}
        if site.rule != MANUAL:
            idle.add("chart.source")
    if site.rule == LOCAL or not masonry:
        idle.add("facing.added")
    return idle


def _list_idle_faces(design: Design) -> set[str]:
    """What only other kinds of face have, the sizes of a plinth or an overmantel that is left away."""
    idle: set[str] = set()
    column, frieze = design.column.kind, design.frieze
    for built, own in ((column, OF_COLUMNS), (frieze.kind, OF_FRIEZES)):
        idle |= {row for kind, rows in own.items() if kind != built for row in rows}
    if frieze.place == IN_FRONT:
        idle.add("frieze.projection")
    if not design.over.on:
        idle |= {f"over.{row}" for row in ("reach", "height", "projection", "stile", "rail", "panels")}
    elif design.over.reach == TO_CEILING:
        idle.add("over.height")
    if not design.slip.on:
        idle |= {"slip.width", "slip.thickness"}
    if design.shelf.kind == PLANK:
        idle.add("shelf.edge_height")
    if column != FRAMED and frieze.kind != FRAMED and not design.over.on:
        idle |= {"panel.kind", "panel.reveal", "panel.thickness", "panel.grain"}
    if not design.plinth.on:
        idle |= {"plinth.height", "plinth.projection"}
    return idle


def _list_idle_coats(finish: str) -> set[str]:
    """Rates and drying times of what the wood is not finished with."""
    idle = set() if finish == STAINED else {"rates.stain_coverage", "times.stain"}
    paint = {"rates.primer_coverage", "rates.top_coverage", "times.primer", "times.top", "times.hard"}
    clear = {"rates.clear_coverage", "times.clear", "times.clear_hard"}
    return idle | (clear if finish == PAINTED else paint)


def _list_idle_obstacles(site: Site) -> set[str]:
    """Sizes of obstacles that there are none of."""
    idle: set[str] = set()
    if site.baseboard.height_left is None and site.baseboard.height_right is None:
        idle |= {"baseboard.thickness", "baseboard.meets"}
    if site.old_ledger.top is None:
        idle |= {f"old_ledger.{row}" for row in ("tall", "thick", "left", "right", "use")}
    elif site.old_ledger.use == REMOVE:
        idle |= {f"old_ledger.{row}" for row in ("tall", "thick", "left", "right")}
    for bolt in ("bolt_one", "bolt_two", "bolt_three"):
        if getattr(site, bolt).across is None:
            idle |= {f"{bolt}.{row}" for row in ("up", "out", "diameter")}
    if site.tv.diagonal is None:
        idle |= {"tv.gap", "tv.eye", "tv.away"}
    if site.house.year is None or site.house.year >= LEAD_YEAR.value:
        idle.add("house.painted")
    if site.outlet.left is None and site.outlet.right is None:
        idle |= {"outlet.width", "outlet.tall"}
    if site.casing.left is None and site.casing.right is None:
        idle.add("casing.proud")
    for side in ("left", "right"):
        if getattr(site.outlet, side) is None:
            idle.add(f"outlet.height_{side}")
        if getattr(site.baseboard, f"height_{side}") is None:
            idle.add(f"baseboard.thickness_{side}")
        if getattr(site.casing, side) is None:
            idle |= {f"casing.bottom_{side}", f"casing.top_{side}"}
    return idle


def _list_idle_levels(job: Job) -> set[str]:
    """What only a raised hearth's end under a column has a use for."""
    idle = set() if job.site.hearth.height > 0 else {"column.over_edge"}
    if idle or job.design.column.over_edge != STEPPED:
        idle |= {"level.floor_left", "level.floor_right"}
    return idle


def _list_idle_cords(design: Design) -> set[str]:
    """What only a cord way, a plug of its own or a column has a use for."""
    rows = ("place", "plug", "own_width", "own_height", "clearance", "exit_height", "panel_clearance")
    if not design.cord.on:
        return {f"cord.{row}" for row in rows}
    idle = set() if design.cord.plug == OWN_PLUG else {"cord.own_width", "cord.own_height"}
    return idle | {"cord.exit_height"} if design.cord.place == IN_FRIEZE else idle


def _has_place(design: Design, path: str) -> bool:
    """Whether there is anything that a moulding goes on: a plinth for its cap, a panel for its mould."""
    if path == "plinth_cap":
        return design.plinth.on
    return path != "panel_mould" or design.over.on or FRAMED in (design.column.kind, design.frieze.kind)


MOULDINGS = ("bed_mould", "capital", "plinth_cap", "panel_mould", "back_band")


def _list_idle_mouldings(design: Design) -> set[str]:
    """Rows of mouldings that are off, sizes of sections that keep their own, own sections not made use of."""
    idle: set[str] = set()
    used: set[str] = set()
    for path in MOULDINGS:
        moulding = getattr(design, path)
        if not _has_place(design, path):
            idle.add(f"{path}.on")
        if not (moulding.on and _has_place(design, path)):
            idle |= {f"{path}.profile", f"{path}.size"}
            continue
        used.add(moulding.profile)
        if moulding.profile in OWN:
            idle.add(f"{path}.size")
    edge = design.shelf.edge_profile
    used.add(edge)
    if edge == SQUARE or edge in OWN:
        idle.add("shelf.edge_size")
    paths = ("own_section.first", "own_section.second", "own_section.third")
    return idle | {path for path, key in zip(paths, OWN, strict=True) if key not in used}
