"""Which dimensions each view carries: the sizes a builder works from. Where they stand is decided later."""

from __future__ import annotations

from model.build.behind import OLD_LEDGER
from model.build.lines import Frame, Side
from model.job import read_value
from model.once import once
from model.surround import Surround
from render.dimension_strings import Edge, String, measure
from render.section_places import section_level


def list_strings(surround: Surround, view: str) -> tuple[String, ...]:
    """Strings for `view`, innermost first on each side."""
    return once(surround, ("strings", view), lambda: _list_strings(surround, view))


def _list_strings(surround: Surround, view: str) -> tuple[String, ...]:
    match view:
        case "front":
            return (*_front_heights(surround), *_front_widths(surround))
        case "side":
            return _side(surround)
        case "plan":
            return _plan(surround)
        case "plan_section":
            return _plan_section(surround)
        case _:
            return _vertical_section(surround)


def _front_widths(surround: Surround) -> tuple[String, ...]:
    layout = surround.layout
    left, right, inner, mouth = layout.left, layout.right, layout.right.inner, layout.opening_side
    members = [(x, layout.shelf_bottom, shows) for x, shows in _frieze_stations(surround)]
    top, front = layout.shelf_top, layout.facing_side
    return (
        measure(
            Edge.BELOW,
            (-left.outer, left.base, ""),
            (-inner, left.base, _own(surround, "column.width", left)),
            (-mouth, 0.0, "column.margin"),
            (mouth, 0.0, "opening.width"),
            (inner, right.base, "column.margin"),
            (right.outer, right.base, _own(surround, "column.width", right)),
        ),
        measure(Edge.BELOW, (-front, 0.0, ""), (front, 0.0, "facing.width")),
        measure(
            Edge.BELOW,
            (-layout.hearth_side, layout.floor, ""),
            (layout.hearth_side, layout.floor, "hearth.width"),
        ),
        *_over_widths(surround),
        *_old_ledger(surround),
        *_tapered_tops(surround),
        measure(Edge.ABOVE, *members),
        measure(
            Edge.ABOVE,
            (-left.shelf_side, top, ""),
            (-left.outer_top, layout.shelf_bottom, _own(surround, "shelf.overhang_end", left)),
            (right.outer_top, layout.shelf_bottom, ""),
            (right.shelf_side, top, _own(surround, "shelf.overhang_end", right)),
        ),
        measure(Edge.ABOVE, (-left.shelf_side, top, ""), (right.shelf_side, top, "")),
    )


def _old_ledger(surround: Surround) -> tuple[String, ...]:
    """An old ledger's ends from the centre line."""
    return tuple(
        measure(
            Edge.ABOVE,
            (o.x[0], o.y[1], ""),
            (0.0, o.y[1], "old_ledger.left"),
            (o.x[1], o.y[1], "old_ledger.right"),
        )
        for o in surround.layout.behind
        if o.kind == OLD_LEDGER
    )


def _tapered_tops(surround: Surround) -> tuple[String, ...]:
    """How wide tapered columns are at their tops; what they are at the foot stands below."""
    layout, y = surround.layout, surround.layout.frieze_bottom
    if layout.right.taper is None:
        return ()
    left, right = layout.left, layout.right
    return (
        measure(
            Edge.ABOVE,
            (-left.outer_top, y, ""),
            (-left.inner_top, y, "column.taper"),
            (right.inner_top, y, ""),
            (right.outer_top, y, "column.taper"),
        ),
    )


def _over_widths(surround: Surround) -> tuple[String, ...]:
    """Stiles and panels along an overmantel."""
    over = surround.layout.over
    if over is None:
        return ()
    x0, _, x1, top = over.frame.outline
    stations = [(x0, top, "")]
    for left, _, right, _ in over.frame.openings:
        stations += [(left, top, "over.stile"), (right, top, "")]
    return (measure(Edge.ABOVE, *stations, (x1, top, "over.stile")),)


def _over_levels(surround: Surround) -> list[tuple[float, float, str]]:
    """Rails and panel up an overmantel, over the column below it."""
    over = surround.layout.over
    if over is None:
        return []
    _, y0, x, y1 = over.frame.outline
    _, low, _, high = over.frame.openings[0]
    foot = (y0, surround.layout.right.shelf_side, "shelf.thickness")
    return [foot, (low, x, "over.rail"), (high, x, ""), (y1, x, "over.rail")]


def _frieze_stations(surround: Surround) -> list[tuple[float, str]]:
    """x along the frieze, each with what its distance from the last one stands for."""
    frieze, tablet = surround.layout.frieze_frame, surround.layout.tablet
    x0, _, x1, _ = frieze.outline
    stations = [(x0, "")]
    for left, _, right, _ in frieze.openings:
        stations += [(left, "frieze.stile"), (right, "")]
    if tablet:
        left, _, right, _ = tablet.outline
        stations += [(left, ""), (right, "tablet.width")]
    return [*stations, (x1, "frieze.stile" if frieze.openings else "")]


def _own(surround: Surround, path: str, side: Side) -> str:
    """The parameter a side's size stands for: the one for that side alone where it is given."""
    alone = f"{path.removesuffix('_end')}_{side.name}"
    return path if read_value(surround.job, alone) is None else alone


def _front_heights(surround: Surround) -> tuple[String, ...]:
    layout = surround.layout
    left, right, mouth = layout.left, layout.right, layout.opening_side
    outer = right.outer
    datum = layout.floor if surround.job.design.shelf.height_from == "floor" else 0.0
    plinth = "plinth.height" if layout.plinth_out else ""
    foot = [(right.base, outer, ""), *([(right.plinth_top, outer, plinth)] if plinth else [])]
    foot = [*_leg(right), *foot]
    panels = foot if right.step or right.base != left.base or not plinth else [(right.plinth_top, outer, "")]
    panels += [(y, outer, shows) for y, shows in _column_levels(surround)]
    return (
        measure(
            Edge.LEFT,
            *((y, -x, shows) for y, x, shows in _leg(left)),
            (left.base, -left.outer, ""),
            *([(left.plinth_top, -left.outer, plinth)] if plinth else []),
            (layout.frieze_bottom, -left.outer, ""),
            (layout.shelf_bottom, -left.outer, "frieze.height"),
            (layout.shelf_top, -left.shelf_side, "shelf.thickness"),
            *([(layout.over.top, -left.outer, "over.height")] if layout.over else []),
        ),
        measure(Edge.LEFT, (datum, -left.outer, ""), (layout.shelf_top, -left.shelf_side, "shelf.height")),
        measure(Edge.RIGHT, *panels, *_over_levels(surround)),
        measure(
            Edge.RIGHT,
            (layout.floor, layout.hearth_side if layout.floor < 0 else mouth, ""),
            (0.0, mouth, "hearth.height"),
            (layout.opening_top, mouth, "opening.height"),
            *(((layout.frieze_bottom, mouth, ""),) if layout.facing_margin > 0 else ()),
        ),
        measure(
            Edge.RIGHT,
            (0.0, layout.facing_side, ""),
            (layout.facing_top, layout.facing_side, "facing.height"),
        ),
    )


def _leg(side: Side) -> list[tuple[float, float, str]]:
    """The floor under a column that steps down to it, below the hearth."""
    return [(side.step.floor, side.outer, "")] if side.step else []


def _column_levels(surround: Surround) -> list[tuple[float, str]]:
    """Levels up the right column from its plinth, each with what its height over the last one stands for."""
    layout, column = surround.layout, surround.layout.right
    cap, capital = layout.mouldings.plinth_cap, layout.mouldings.capital
    levels = [(column.plinth_top + cap.height, "plinth_cap.size")] if cap else []
    rail = "column.rail"
    if not column.frame.openings:
        return [*levels, *_face_levels(surround)]
    for _, y0, _, y1 in column.frame.openings:
        if capital and y0 > layout.frieze_bottom:
            levels += [(layout.frieze_bottom - capital.height, rail), (layout.frieze_bottom, "capital.size")]
            rail = "frieze.rail"
        levels += [(y0, rail), (y1, "")]
    mould = layout.shelf_bottom - layout.mould_size
    return [*levels, (mould, rail), (layout.shelf_bottom, "bed_mould.size")]


def _list_shown(face: Frame) -> tuple[tuple[float, ...], str]:
    """From where to where a face without panels has flutes or a board on it, and what is left beyond."""
    if face.raised:
        return face.raised.y, "raised.margin"
    return ((face.flutes[1], face.flutes[3]), "flute.stop") if face.flutes else ((), "")


def _face_levels(surround: Surround) -> list[tuple[float, str]]:
    """Levels up a column without panels: flutes or a board on it, its capital and the bed mould."""
    layout, (shown, path) = surround.layout, _list_shown(surround.layout.right.frame)
    capital, bed = layout.mouldings.capital, layout.mouldings.bed
    levels = [(shown[0], path), (shown[1], "")] if shown else []
    if capital:
        levels += [(layout.frieze_bottom - capital.height, path)]
        levels += [(layout.frieze_bottom, "capital.size")]
    below_frieze = capital or layout.frieze_over or layout.right.taper
    if shown and below_frieze and not capital:
        levels += [(layout.frieze_bottom, path)]
    stop = "" if below_frieze else path
    if bed:
        levels += [(layout.shelf_bottom - bed.height, stop)]
    last = "bed_mould.size" if bed else stop
    return [*levels, (layout.shelf_bottom, last)]


def _side(surround: Surround) -> tuple[String, ...]:
    layout, base = surround.layout, surround.layout.right.base
    foremost = max(layout.column_front, layout.frieze_front)
    return (
        measure(
            Edge.BELOW,
            *([(-layout.plinth_front, base, "")] if layout.plinth_out else []),
            (-layout.column_front, base, "plinth.projection" if layout.plinth_out else ""),
            (0.0, base, "column.projection"),
            (-layout.wall, base, "facing.proud"),
        ),
        measure(Edge.BELOW, (-layout.hearth_front, 0.0, ""), (0.0, base, "hearth.depth")),
        measure(
            Edge.ABOVE,
            *_shelf_fronts(surround),
            (-foremost, layout.shelf_bottom, "shelf.overhang_front"),
            (0.0, layout.shelf_top, ""),
        ),
        measure(
            Edge.ABOVE, (-layout.shelf_front, layout.shelf_top, ""), (0.0, layout.shelf_top, "shelf.depth")
        ),
        *_shelf_edge(surround),
        *_over_depth(surround),
    )


def _whole_shelf(surround: Surround) -> tuple[String, ...]:
    """From the shelf's front to the wall, where it runs on back over a facing that stands proud."""
    layout, top = surround.layout, surround.layout.shelf_top
    if layout.shelf_back >= 0:
        return ()
    return (measure(Edge.ABOVE, (-layout.shelf_front, top, ""), (-layout.shelf_back, top, "")),)


def _shelf_fronts(surround: Surround) -> tuple[tuple[float, float, str], ...]:
    """The shelf's front, over the columns where it breaks forward there and between them, from the side."""
    layout = surround.layout
    front, top = -layout.shelf_front, layout.shelf_top
    if not layout.shelf_step:
        return ((front, top, ""),)
    return ((-layout.shelf_foremost, top, ""), (front, top, "shelf.step"))


def _over_depth(surround: Surround) -> tuple[String, ...]:
    """How far an overmantel stands off what is behind it."""
    over = surround.layout.over
    if over is None:
        return ()
    front = (-over.frame.front, over.top, "")
    return (measure(Edge.ABOVE, front, (-over.back, over.top, "over.projection")),)


def _shelf_edge(surround: Surround) -> tuple[String, ...]:
    """The height of the edge band, or of a plank, and, where it is worked, how much of it is."""
    layout, front = surround.layout, -surround.layout.shelf_front
    low, high, worked = layout.edge_bottom, layout.shelf_top, layout.mouldings.edge_size
    shows = "shelf.thickness" if layout.shelf_is_plank else "shelf.edge_height"
    band = measure(Edge.LEFT, (low, front, ""), (high, front, shows))
    if not 0 < worked < high - low:
        return (band,)
    parts = measure(Edge.LEFT, (low, front, ""), (low + worked, front, "shelf.edge_size"), (high, front, ""))
    return (parts, band)


def _plan(surround: Surround) -> tuple[String, ...]:
    layout, hearth = surround.layout, surround.layout.hearth_side
    left, right = -layout.left.shelf_side, layout.right.shelf_side
    front, middle = -layout.shelf_foremost, -layout.shelf_front
    broken = bool(layout.shelf_step)
    breaks = [(-layout.left.break_inner, middle, ""), (layout.right.break_inner, middle, "")]
    whole = [measure(Edge.BELOW, (left, front, ""), (right, front, ""))] if broken else []
    step = [(middle, breaks[0][0], "shelf.step")] if broken else []
    return (
        measure(Edge.BELOW, (left, front, ""), *(breaks if broken else []), (right, front, "")),
        *whole,
        measure(
            Edge.BELOW, (-hearth, -layout.hearth_front, ""), (hearth, -layout.hearth_front, "hearth.width")
        ),
        measure(Edge.LEFT, (front, left, ""), *step, (0.0, left, "shelf.depth")),
        measure(Edge.RIGHT, (-layout.hearth_front, hearth, ""), (0.0, hearth, "hearth.depth")),
    )


def _plan_section(surround: Surround) -> tuple[String, ...]:
    """A tapered column is measured at the section's level, its plinth as it is."""
    layout, level = surround.layout, section_level(surround)
    left, right, mouth = layout.left, layout.right, layout.opening_side
    (left_inner, left_outer), (inner, _) = left.sides_at(level), right.sides_at(level)
    margin = "" if left.taper else "column.margin"
    face, plinth, out = -layout.column_front, -layout.plinth_front, layout.plinth_out
    return (
        measure(
            Edge.BELOW,
            (-left_outer, face, ""),
            (-left_inner, face, "" if left.taper else _own(surround, "column.width", left)),
            (-mouth, 0.0, margin),
            (mouth, 0.0, "opening.width"),
            (inner, face, margin),
            *((x, face, shows) for x, shows in _column_stations(surround)),
        ),
        measure(Edge.BELOW, (-left.outer - out, plinth, ""), (right.outer + out, plinth, "")),
        measure(
            Edge.LEFT,
            *([(plinth, -left.outer - out, "")] if out else []),
            (face, -left_outer, "plinth.projection" if out else ""),
            (0.0, -left_outer, "column.projection"),
        ),
        *_face_depths(surround),
        measure(
            Edge.RIGHT,
            (-layout.hearth_front, layout.hearth_side, ""),
            (0.0, layout.hearth_side, "hearth.depth"),
        ),
    )


def _column_stations(surround: Surround) -> list[tuple[float, str]]:
    """x across the right column's face after its inner edge, each with what it stands for."""
    layout, right = surround.layout, surround.layout.right
    frame, level = right.frame, section_level(surround)
    _, outer = right.sides_at(level)
    if frame.openings:
        x0, x1 = frame.inside.at(level) if frame.inside else (frame.openings[0][0], frame.openings[0][2])
        return [(x0, "column.stile"), (x1, ""), (outer, "column.stile")]
    if frame.raised:
        x0, x1 = right.edges.inset(frame.raised.margin).at(level)
        return [(x0, "raised.margin"), (x1, ""), (outer, "raised.margin")]
    if layout.flutes is None:
        return [(outer, "" if right.taper else _own(surround, "column.width", right))]
    lefts = layout.flutes.lefts(*right.narrowest)
    stations = [(lefts[0], ""), (lefts[0] + layout.flutes.width, "flute.width")]
    if len(lefts) > 1:
        stations.append((lefts[1], "flute.between"))
    return [*stations, (outer, "")]


def _face_depths(surround: Surround) -> tuple[String, ...]:
    """How far the right column's panels or flutes lie behind its face, or a board on it before it."""
    layout, right = surround.layout, surround.layout.right
    face, frame = -layout.column_front, right.frame
    _, outer = right.sides_at(section_level(surround))
    if layout.flutes:
        x = layout.flutes.lefts(*right.narrowest)[-1] + layout.flutes.width / 2
        deep = (face + layout.flutes.depth, x, "flute.depth")
        return (measure(Edge.RIGHT, (face, outer, ""), deep),)
    if frame.raised:
        raised = (face - frame.raised.thickness, outer - frame.raised.margin, "")
        return (measure(Edge.RIGHT, raised, (face, outer, "raised.thickness")),)
    if not frame.openings:
        return ()
    x = frame.openings[0][2]
    panel = (face + frame.reveal + layout.panel, x, "panel.thickness")
    return (measure(Edge.RIGHT, (face, outer, ""), (face + frame.reveal, x, "panel.reveal"), panel),)


def _frieze_levels(surround: Surround) -> list[tuple[float, float, str]]:
    """Levels up the section through the frieze from its lower edge to under the bed mould."""
    layout, frieze = surround.layout, surround.layout.frieze_frame
    face, mould = -layout.frieze_front, layout.shelf_bottom - layout.mould_size
    if layout.tablet:
        _, y0, _, y1 = layout.tablet.outline
        front = face - layout.tablet.thickness
        return [(y0, front, ""), (y1, front, "tablet.height"), (mould, face, "")]
    if not frieze.openings:
        return [(mould, face, "")]
    _, y0, _, y1 = frieze.openings[0]
    panel = layout.mouldings.panel
    return [
        (y0, face, "frieze.rail"),
        *([(y0 + panel.height, face + frieze.reveal, "panel_mould.size")] if panel else []),
        (y1, face, ""),
        (mould, face, "frieze.rail"),
    ]


def _frieze_depths(surround: Surround) -> tuple[tuple[float, float, str], ...]:
    """From the frieze's front, or its tablet's, back to the masonry."""
    layout, tablet = surround.layout, surround.layout.tablet
    face = -layout.frieze_front
    back = (0.0, layout.shelf_top, "" if layout.frieze_over else "frieze.projection")
    if tablet is None:
        return ((face, layout.shelf_bottom, ""), back)
    front = (face - tablet.thickness, tablet.outline[3], "")
    return (front, (face, layout.shelf_bottom, "tablet.thickness"), back)


def _vertical_section(surround: Surround) -> tuple[String, ...]:
    layout, band = surround.layout, surround.layout.mouldings.back_band
    face = -layout.frieze_front
    foot = [(layout.frieze_bottom - band.height, 0.0, "")] if band else []
    if layout.slip:
        low = layout.frieze_bottom - layout.slip.offset - layout.slip.width
        first = (low + layout.slip.width, 0.0, "slip.width")
        foot = [(low, 0.0, ""), *([first] if band else [])]
    return (
        measure(
            Edge.LEFT,
            *foot,
            (layout.frieze_bottom, face, "back_band.size" if band else "slip.width" if layout.slip else ""),
            *_frieze_levels(surround),
            (layout.shelf_bottom, face, "bed_mould.size"),
            (layout.shelf_top, -layout.shelf_front, "shelf.thickness"),
        ),
        measure(
            Edge.LEFT,
            (0.0, -layout.hearth_front, ""),
            (layout.opening_top, 0.0, "opening.height"),
            *(((layout.frieze_bottom, face, ""),) if layout.facing_margin > 0 else ()),
            (layout.shelf_top, -layout.shelf_front, ""),
        ),
        measure(
            Edge.ABOVE,
            *_shelf_fronts(surround),
            *_frieze_depths(surround),
        ),
        measure(
            Edge.ABOVE, (-layout.shelf_front, layout.shelf_top, ""), (0.0, layout.shelf_top, "shelf.depth")
        ),
        *_whole_shelf(surround),
        measure(Edge.BELOW, (-layout.hearth_front, 0.0, ""), (0.0, 0.0, "hearth.depth")),
    )
