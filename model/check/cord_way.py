"""Whether cords get through where they are meant to, keep out of the fire's way, and may run there at all."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from model.board import Board, Point2, StockKind
from model.build.bores import is_bored
from model.build.cord_way import Hole, Way, is_within, list_pierced, plan_cord_way
from model.check.finding import Finding, Status
from model.check.keep_out import list_keep_out_rings
from model.check.wording import Wording
from model.fixing import IN_FRIEZE, OWN
from model.reference.connectors import CABLES_RATED, CONNECTORS, CORDS_HIDDEN
from model.reference.sourced import Sourced, Standing
from model.surround import Surround

CHECK = "cord way"
BESIDE_HOLE = 0.25
"""Least wood left beside a hole, in. Shop choice."""
OVER_SHELF = 1.0
"""How high over the shelf cords need their way free, in. Shop choice."""
OURS = Sourced(0.0, "", Standing.SHOP_CHOICE, "how the parts go together")


def check_cord_way(surround: Surround) -> tuple[Finding, ...]:
    """Whether the plug passes, what is amiss with its way, and cautions; nothing where no cords run."""
    way = plan_cord_way(surround)
    if way is None:
        return ()
    wording = Wording(surround.job.about.length_style)
    return (
        _check_passing(surround, way, wording),
        *_check_edges(surround, way, wording),
        *_check_above(surround, way),
        *_check_fire(surround, way),
        *_check_panel(way),
        *_caution(surround, way),
    )


def _check_passing(surround: Surround, way: Way, wording: Wording) -> Finding:
    """The plug against the space left inside the box behind the face and beside or before the nailers."""
    wide, deep = (wording.distance(size) for size in way.free)
    one, other = (wording.distance(size) for size in way.plug)
    hole = wording.distance(way.diameter)
    has = f"{wide} by {deep} is free inside the {way.part} once the nailers are in"
    if way.passes:
        message = f"The plug, {one} by {other}, passes: {has}. Holes are {hole}."
        return _build(surround, way, Status.PASS, message, measured=min(way.free), limit=min(way.plug))
    message = f"The plug, {one} by {other}, cannot pass: {has}."
    cure, path = "Let the columns stand out further, or choose a smaller plug.", "column.projection"
    if way.part == IN_FRIEZE:
        cure = "Let the frieze stand out further, run the cords in a column, or choose a smaller plug."
        path = "frieze.projection"
    # The side of it that lacks most; askew a plug may pass that is wider than the way.
    free, plug = min(zip(sorted(way.free), sorted(way.plug), strict=True), key=lambda pair: pair[0] - pair[1])
    return _build(surround, way, Status.FAIL, message, cure, path, free, plug)


def _check_edges(surround: Surround, way: Way, wording: Wording) -> Iterator[Finding]:
    """Holes that would break out of the edge of a piece that shows, or come out through a moulding."""
    for hole in way.holes:
        boards = surround.boards
        near = [i for i in list_pierced(boards, hole) if boards[i].stock.kind is not StockKind.FRAMING]
        torn = [i for i in near if not is_within(boards[i], hole, BESIDE_HOLE) or _is_missed(boards[i], hole)]
        if torn:
            names = ", ".join(f"{surround.marks[i]} ({boards[i].role})" for i in torn)
            message = f"The {hole.name} hole, {wording.distance(hole.diameter)}, breaks out of {names}."
            cure = "Choose a smaller plug, move the lower hole up, or let the part stand out further."
            yield _build(surround, way, Status.FAIL, message, cure, "cord.plug")


def _is_missed(board: Board, hole: Hole) -> bool:
    """Whether a hole would come out through a moulding's face, which is left whole."""
    return board.stock.kind is StockKind.MOULDING and not is_bored(board, hole)


def _check_above(surround: Surround, way: Way) -> Iterator[Finding]:
    """What stands on the shelf where the cords come up."""
    top, upper = surround.layout.shelf_top, way.holes[-1]
    above = list_pierced(surround.boards, replace(upper, span=(top, top + OVER_SHELF)))
    if above:
        names = ", ".join(dict.fromkeys(surround.boards[i].assembly for i in above))
        message = f"The upper hole comes up under the {names}."
        cure = "Let the columns stand out further, or run the cords where nothing stands on the shelf."
        yield _build(surround, way, Status.FAIL, message, cure, "cord.place")


def _check_fire(surround: Surround, way: Way) -> Iterator[Finding]:
    """The way's point nearest the opening against the zone where no wood may be, and where little may."""
    rings = list_keep_out_rings(surround.job.site)
    beside = max(abs(way.middle[0]) - way.diameter / 2, 0.0)
    within = [is_inside((beside, max(way.low, 0.0)), ring) for ring in rings]
    if not any(within):
        return
    status = Status.FAIL if within[0] else Status.WARN
    zone = "in which no wood may be" if within[0] else "in which wood may hardly stand out"
    yield _build(
        surround,
        way,
        status,
        f"The cords run through the zone round the opening {zone}; cords take heat worse than wood does.",
        "Run them in a column, or set the column further from the opening.",
        "cord.place" if way.part == IN_FRIEZE else "column.margin",
    )


def is_inside(point: Point2, ring: tuple[Point2, ...]) -> bool:
    """Whether a point lies inside a closed outline, its edge left out."""
    x, y = point
    inside = False
    for (x0, y0), (x1, y1) in zip(ring, ring[1:] + ring[:1], strict=True):
        if (y0 > y) != (y1 > y) and x < x0 + (y - y0) * (x1 - x0) / (y1 - y0):
            inside = not inside
    return inside


def _check_panel(way: Way) -> Iterator[Finding]:
    if way.loose is None:
        message = f"No panel of the {way.part} can be made to lift out, so nobody gets at the cords."
        cure = "Give it framed panels of sheet that lie at least their own thickness behind the frame."
        yield _finding(way, Status.WARN, message, OURS, cure, "panel.reveal")


def _caution(surround: Surround, way: Way) -> Iterator[Finding]:
    """What the electrical code says of what is hidden, for what the plug belongs to."""
    plug = surround.job.design.cord.plug
    if plug == OWN or CONNECTORS[plug].mains:
        yield _finding(
            way,
            Status.WARN,
            "A mains cord is no wiring: it may not run hidden inside walls, and a surround fixed to the "
            "house counts as one to be safe.",
            CORDS_HIDDEN,
            "Have an electrician set a recessed receptacle, or use a listed in-wall power assembly.",
            "cord.plug",
        )
    if plug == OWN or not CONNECTORS[plug].mains:
        yield _finding(
            way,
            Status.WARN,
            "Low-voltage cable hidden in a dwelling's wall carries an in-wall rating, CL2 or CL3.",
            CABLES_RATED,
            "Look for the rating printed on the cable's jacket.",
            "cord.plug",
        )


def _build(
    surround: Surround,
    way: Way,
    status: Status,
    message: str,
    cure: str = "",
    path: str = "cord.on",
    measured: float | None = None,
    limit: float | None = None,
) -> Finding:
    marks = tuple(
        dict.fromkeys(surround.marks[i] for hole in way.holes for i in list_pierced(surround.boards, hole))
    )
    return _finding(way, status, message, OURS, cure, path, measured, limit, marks)


def _finding(
    way: Way,
    status: Status,
    message: str,
    source: Sourced,
    cure: str,
    path: str,
    measured: float | None = None,
    limit: float | None = None,
    boards: tuple[str, ...] = (),
) -> Finding:
    rule = "NEC" if source is not OURS else CHECK
    return Finding(
        CHECK, rule, source.standing, source.source, status, way.part, measured, limit, "in", message, cure,
        None, boards, path,
    )  # fmt: skip
