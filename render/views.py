"""The views of a surround as drawings: site, wood, dimensions and what is marked on request.

What a view is of and in which order it is laid down stands here; which dimensions it carries stands in
render.view_dimensions, what is marked over it in render.view_marks and fault_marks.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from model.board import Board
from model.build.level_backs import PACKING
from model.check.finding import Finding
from model.once import once
from model.surround import Surround
from render.behind_marks import draw_behind, name_behind
from render.cut_fills import hatch_cut
from render.cutting_plane import cut_boards, cut_numbered
from render.dimension_strings import String, place_strings
from render.distance_marks import draw_distances
from render.drawing import Drawing, Fill, Hatch, Lines, Mark, Pen, Region
from render.far_side import without_far_backs
from render.fault_marks import draw_faults, number_faults
from render.fixing_marks import draw_anchors, draw_cord_way, name_holes
from render.names import place_names
from render.obstacle_marks import name_obstacles
from render.section_places import section_level, section_station
from render.site_solids import (
    site_cut_beside,
    site_cut_upright,
    site_from_above,
    site_from_side,
    site_in_front,
)
from render.view_context import WALL_ABOVE, WALL_BESIDE, Frame, draw_context, list_standing
from render.view_dimensions import list_strings
from render.view_marks import draw_clearance
from render.visibility import (
    FROM_ABOVE,
    FROM_FRONT,
    FROM_RIGHT,
    Line,
    Look,
    Projection,
    Solids,
    flatten_boards,
    project,
)

VIEWS = ("front", "side", "plan", "plan_section", "vertical_section")
"""Names of the views, as scripts write them."""

LOOKS = {
    "front": FROM_FRONT,
    "side": FROM_RIGHT,
    "plan": FROM_ABOVE,
    "plan_section": FROM_ABOVE,
    "vertical_section": FROM_RIGHT,
}
"""Side views are seen from the right, so that they stand right of the front view in third angle."""

PENS = {
    Line.SITE: Pen.SITE,
    Line.SITE_CUT: Pen.EDGE,
    Line.JOINT: Pen.ARRIS,
    Line.ARRIS: Pen.ARRIS,
    Line.EDGE: Pen.EDGE,
    Line.OUTLINE: Pen.OUTLINE,
    Line.CUT: Pen.CUT,
}
"""In the order they are laid down, heaviest last."""

SITE_FILLS = {
    "facing": Fill.FACING,
    "opening": Fill.OPENING,
    "hearth": Fill.HEARTH,
    "wall": Fill.WALL,
    "firebox": Fill.BAND,
    "baseboard": Fill.BAND,
    "outlet": Fill.PAPER,
    "casing": Fill.BAND,
    "old ledger": Fill.BAND,
    "bolt": Fill.PAPER,
}
FACING_HATCH = (45.0, 0.16)
"""Angle in degrees and spacing in inches on paper of the hatch on uncut facing. Shop choice."""
MASONRY_HATCH = (45.0, 0.07)
"""The same for cut masonry: 45 degrees is common practice."""


@dataclass(frozen=True, slots=True)
class ViewOptions:
    """How a view is drawn.

    `ratio` is model inches to an inch of paper, for lettering. `clearance` adds the keep-out band and
    the allowed projection; `findings` that fail are marked where they are. `strings` are carried instead
    of the view's own dimension strings when given. `anchors` are marked on the front view.
    `true_heights` leaves the ceiling where it is, for files that are measured in. `by_board` parts the
    boards' lines, each standing for the mark of its board; where two boards lie flush their joint is drawn
    for each.
    """

    ratio: float = 12.0
    dimensions: bool = True
    clearance: bool = False
    findings: tuple[Finding, ...] = ()
    strings: tuple[String, ...] | None = None
    anchors: bool = False
    true_heights: bool = False
    by_board: bool = False


def draw_view(surround: Surround, view: str, options: ViewOptions | None = None) -> Drawing:
    """The named view. Raises KeyError for a name that is not in VIEWS."""
    return draw_views(surround, (view,), options)[0]


def draw_views(
    surround: Surround, views: Sequence[str], options: ViewOptions | None = None
) -> tuple[Drawing, ...]:
    """The named views in order, what they share worked out once. Raises KeyError as `draw_view` does."""
    options = options or ViewOptions()
    return tuple(_draw(surround, view, options) for view in views)


def _draw(surround: Surround, view: str, options: ViewOptions) -> Drawing:
    ratio, look = options.ratio, LOOKS[view]
    projection = _project(surround, view)
    frame = Frame.around(surround, view)
    own = options.strings if options.strings is not None else list_strings(surround, view)
    strings = own if options.dimensions else ()
    style, standing = surround.job.about.length_style, list_standing(surround, view)
    dimensions = place_strings(strings, frame.outline, ratio, style, standing)
    marks = [*_site_areas(projection, ratio), *_wood_areas(projection, view, ratio)]
    marks += draw_context(surround, view, frame, dimensions, ratio, options.true_heights)
    if options.by_board:
        marks += list_lines_by_board(
            projection, [surround.marks[place] for place in _list_places(surround, view)]
        )
    else:
        marks += list_lines(projection)
    marks += draw_faults(surround, view, look, options.findings, projection, ratio)
    marks += draw_cord_way(surround, projection, look)
    marks += draw_behind(surround) if view == "front" else []
    if options.clearance:
        marks += draw_clearance(surround, view, ratio, (*marks, *dimensions))
        marks += draw_distances(surround, view, ratio, (*marks, *dimensions))
    marks += number_faults(surround, view, look, options.findings, (*marks, *dimensions), ratio)
    names = name_holes(surround, projection, look)
    if view == "front":
        names += [*name_behind(surround), *name_obstacles(surround.layout)]
    if options.anchors and view == "front":
        targets, numbers = draw_anchors(surround, ratio)
        marks += targets
        names = [*numbers, *names]
    marks += dimensions
    marks += place_names(names, marks, ratio)
    return Drawing(tuple(marks), ratio)


def project_boards(surround: Surround, view: str) -> tuple[Projection, tuple[int, ...]]:
    """What the named view shows, and for each of its boards the place in the list of boards.

    Raises KeyError for a name that is not in VIEWS.
    """
    return _project(surround, view), _list_places(surround, view)


def _list_places(surround: Surround, view: str) -> tuple[int, ...]:
    """For each board of a view's projection its place in the list of boards."""
    if not view.startswith("plan") and view != "vertical_section":
        hidden = PACKING if view == "side" and surround.layout.leans else frozenset()
        return tuple(i for i, board in enumerate(surround.boards) if board.role not in hidden)
    axis, at = (
        ("x", section_station(surround)) if view == "vertical_section" else ("y", _level_of(surround, view))
    )
    return tuple(i for i, _ in cut_numbered(surround.boards, axis, at))


def _project(surround: Surround, view: str) -> Projection:
    return once(surround, ("projection", view), lambda: _project_anew(surround, view, LOOKS[view]))


def _flatten_wood(surround: Surround) -> Solids:
    return once(surround, "flat wood", lambda: flatten_boards(surround.boards, surround.corners))


def _project_anew(surround: Surround, view: str, look: Look) -> Projection:
    layout = surround.layout
    if view == "front":
        wood = _flatten_wood(surround)
        return project(wood.beside(site_in_front(layout)), look)
    if view == "side":
        wood = _flatten_wood(surround)
        if layout.leans:
            wood = flatten_boards(without_far_backs(surround.boards, layout))
        return project(wood.beside(site_from_side(layout)), look)
    if view == "vertical_section":
        at = section_station(surround)
        thickness = surround.job.site.hearth.thickness
        top = max(layout.shelf_top + WALL_ABOVE, layout.over.top if layout.over else 0.0)
        site = site_cut_upright(layout, at, top, thickness)
        return _project_cut(surround, site, "x", at, look)
    level = _level_of(surround, view)
    site = site_from_above(layout, level, max(layout.shelf_reach, layout.facing_side) + WALL_BESIDE)
    return _project_cut(surround, site, "y", level, look)


def project_at(surround: Surround, view: str, at: float) -> tuple[Projection, tuple[int, ...]]:
    """What a section shows that is taken elsewhere: `at` is y of a plan section, x of a vertical one.

    With it, for each of its boards the place in the list of boards.
    """
    layout, thickness = surround.layout, surround.job.site.hearth.thickness
    axis = "y" if view.startswith("plan") else "x"
    if axis == "y":
        site = site_from_above(layout, at, max(layout.shelf_reach, layout.facing_side) + WALL_BESIDE)
    else:
        top = max(layout.shelf_top + WALL_ABOVE, layout.over.top if layout.over else 0.0)
        cut = site_cut_upright if abs(at) < layout.opening_side else site_cut_beside
        site = cut(layout, at, top, thickness)
    projection = _project_cut(surround, site, axis, at, LOOKS[view])
    return projection, tuple(i for i, _ in cut_numbered(surround.boards, axis, at))


def draw_section(projection: Projection, view: str, ratio: float) -> Drawing:
    """Areas and lines of a section, without context, sizes or marks."""
    areas = (*_site_areas(projection, ratio), *_wood_areas(projection, view, ratio))
    return Drawing((*areas, *list_lines(projection)), ratio)


def _level_of(surround: Surround, view: str) -> float:
    """y of the plane under which a plan or a plan section shows everything."""
    layout = surround.layout
    highest = layout.over.top if layout.over else layout.shelf_top
    return highest + 1.0 if view == "plan" else section_level(surround)


def _project_cut(surround: Surround, site: tuple[Board, ...], axis: str, at: float, look: Look) -> Projection:
    below = flatten_boards(cut_boards(surround.boards, axis, at))
    return project(below.beside(cut_boards(site, axis, at)), look, at)


def list_lines(projection: Projection) -> list[Mark]:
    """All visible lines, heaviest last."""
    lines = projection.lines
    return [Lines(pen, lines[kind]) for kind, pen in PENS.items() if kind in lines]


def list_lines_by_board(projection: Projection, names: Sequence[str]) -> list[Mark]:
    """The same lines by the board they are edges of, standing for its name; the site's for nothing."""
    parted = projection.lines_by_owner()
    return [
        Lines(pen, lines[kind], names[owner] if 0 <= owner < len(names) else "")
        for owner, lines in sorted(parted.items())
        for kind, pen in PENS.items()
        if kind in lines
    ]


def _site_areas(projection: Projection, ratio: float) -> list[Mark]:
    """Tints and hatches of what stands there, as far as no wood hides it."""
    marks: list[Mark] = []
    solids = projection.solids
    cut = set(projection.cut_owners())
    owners = [owner for owner in projection.seen_owners() if owner >= solids.site_start]
    for owner, rings in zip(owners, projection.rings_of_each(owners), strict=True):
        role = solids.boards[owner].role
        marks.append(Region(Fill.MASONRY if owner in cut else SITE_FILLS[role], rings, role))
        if owner in cut:
            angle, spacing = MASONRY_HATCH
            marks.append(Hatch(Pen.HATCH, projection.cut_rings_of(owner), angle, spacing * ratio, role))
        elif role == "facing":
            angle, spacing = FACING_HATCH
            marks.append(Hatch(Pen.HATCH, rings, angle, spacing * ratio, role))
    return marks


def _wood_areas(projection: Projection, view: str, ratio: float) -> list[Mark]:
    marks: list[Mark] = [Region(Fill.WOOD, projection.wood_rings, "wood")]
    if not view.endswith("section"):
        return marks
    site_start = projection.solids.site_start
    for n, owner in enumerate(o for o in projection.cut_owners() if o < site_start):
        rings, board = projection.cut_rings_of(owner), projection.solids.boards[owner]
        marks += [Region(Fill.CUT_WOOD, rings), *hatch_cut(board, rings, LOOKS[view].axes, ratio, n)]
    return marks
