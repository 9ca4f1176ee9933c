"""Which dimensions each view carries: the sizes a builder works from. Where they stand is decided later."""

from __future__ import annotations

from model.build.layout import Side
from model.job import read_value
from model.surround import Surround
from render.dimension_strings import Edge, String, measure


def list_strings(surround: Surround, view: str) -> tuple[String, ...]:
    """Strings for `view`, innermost first on each side."""
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
    left, right, inner, mouth = layout.left, layout.right, layout.column_inner, layout.opening_side
    frieze = layout.frieze_frame
    members = [(-inner, layout.shelf_bottom, "")]
    for x0, _, x1, _ in frieze.openings:
        members += [(x0, layout.shelf_bottom, "frieze.stile"), (x1, layout.shelf_bottom, "")]
    members.append((inner, layout.shelf_bottom, "frieze.stile"))
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
        measure(Edge.ABOVE, *members),
        measure(
            Edge.ABOVE,
            (-left.shelf_side, top, ""),
            (-left.outer, layout.shelf_bottom, _own(surround, "shelf.overhang_end", left)),
            (right.outer, layout.shelf_bottom, ""),
            (right.shelf_side, top, _own(surround, "shelf.overhang_end", right)),
        ),
        measure(Edge.ABOVE, (-left.shelf_side, top, ""), (right.shelf_side, top, "")),
    )


def _own(surround: Surround, path: str, side: Side) -> str:
    """The parameter a side's size stands for: the one for that side alone where it is given."""
    alone = f"{path.removesuffix('_end')}_{side.name}"
    return path if read_value(surround.job, alone) is None else alone


def _front_heights(surround: Surround) -> tuple[String, ...]:
    layout = surround.layout
    left, right, mouth = layout.left, layout.right, layout.opening_side
    outer = right.outer
    datum = layout.floor if surround.job.design.shelf.height_from == "floor" else 0.0
    foot = [(right.base, outer, ""), (right.plinth_top, outer, "plinth.height")]
    panels = foot if right.base != left.base else [(right.plinth_top, outer, "")]
    panels += [(y, outer, shows) for y, shows in _column_levels(surround)]
    return (
        measure(
            Edge.LEFT,
            (left.base, -left.outer, ""),
            (left.plinth_top, -left.outer, "plinth.height"),
            (layout.frieze_bottom, -left.outer, ""),
            (layout.shelf_bottom, -left.outer, "frieze.height"),
            (layout.shelf_top, -left.shelf_side, "shelf.thickness"),
        ),
        measure(Edge.LEFT, (datum, -left.outer, ""), (layout.shelf_top, -left.shelf_side, "shelf.height")),
        measure(Edge.RIGHT, *panels),
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


def _column_levels(surround: Surround) -> list[tuple[float, str]]:
    """Levels up the right column from its plinth, each with what its height over the last one stands for."""
    layout, column = surround.layout, surround.layout.right
    cap, capital = layout.mouldings.plinth_cap, layout.mouldings.capital
    levels = [(column.plinth_top + cap.height, "plinth_cap.size")] if cap else []
    rail = "column.rail"
    for _, y0, _, y1 in column.frame.openings:
        if capital and y0 > layout.frieze_bottom:
            levels += [(layout.frieze_bottom - capital.height, rail), (layout.frieze_bottom, "capital.size")]
            rail = "frieze.rail"
        levels += [(y0, rail), (y1, "")]
    mould = layout.shelf_bottom - layout.mould_size
    return [*levels, (mould, rail), (layout.shelf_bottom, "bed_mould.size")]


def _side(surround: Surround) -> tuple[String, ...]:
    layout, base = surround.layout, surround.layout.right.base
    foremost = max(layout.column_front, layout.frieze_front)
    return (
        measure(
            Edge.BELOW,
            (-layout.plinth_front, base, ""),
            (-layout.column_front, base, "plinth.projection"),
            (0.0, base, "column.projection"),
            (-layout.wall, base, "facing.proud"),
        ),
        measure(Edge.BELOW, (-layout.hearth_front, 0.0, ""), (0.0, base, "hearth.depth")),
        measure(
            Edge.ABOVE,
            (-layout.shelf_front, layout.shelf_top, ""),
            (-foremost, layout.shelf_bottom, "shelf.overhang_front"),
            (0.0, layout.shelf_top, ""),
        ),
        measure(
            Edge.ABOVE, (-layout.shelf_front, layout.shelf_top, ""), (0.0, layout.shelf_top, "shelf.depth")
        ),
        *_shelf_edge(surround),
    )


def _shelf_edge(surround: Surround) -> tuple[String, ...]:
    """The edge band's height and, where it is worked, how much of it is."""
    layout, front = surround.layout, -surround.layout.shelf_front
    low, high, worked = layout.edge_bottom, layout.shelf_top, layout.mouldings.edge_size
    band = measure(Edge.LEFT, (low, front, ""), (high, front, "shelf.edge_height"))
    if not 0 < worked < high - low:
        return (band,)
    parts = measure(Edge.LEFT, (low, front, ""), (low + worked, front, "shelf.edge_size"), (high, front, ""))
    return (parts, band)


def _plan(surround: Surround) -> tuple[String, ...]:
    layout = surround.layout
    left, right, front, hearth = (
        -layout.left.shelf_side,
        layout.right.shelf_side,
        -layout.shelf_front,
        layout.hearth_side,
    )
    return (
        measure(Edge.BELOW, (left, front, ""), (right, front, "")),
        measure(
            Edge.BELOW, (-hearth, -layout.hearth_front, ""), (hearth, -layout.hearth_front, "hearth.width")
        ),
        measure(Edge.LEFT, (front, left, ""), (0.0, left, "shelf.depth")),
        measure(Edge.RIGHT, (-layout.hearth_front, hearth, ""), (0.0, hearth, "hearth.depth")),
    )


def _plan_section(surround: Surround) -> tuple[String, ...]:
    layout = surround.layout
    left, right, inner, mouth = layout.left, layout.right, layout.column_inner, layout.opening_side
    face, plinth, frame = -layout.column_front, -layout.plinth_front, layout.right.frame
    x0, _, x1, _ = frame.openings[0]
    out = layout.plinth_out
    return (
        measure(
            Edge.BELOW,
            (-left.outer, face, ""),
            (-inner, face, _own(surround, "column.width", left)),
            (-mouth, 0.0, "column.margin"),
            (mouth, 0.0, "opening.width"),
            (inner, face, "column.margin"),
            (x0, face, "column.stile"),
            (x1, face, ""),
            (right.outer, face, "column.stile"),
        ),
        measure(Edge.BELOW, (-left.outer - out, plinth, ""), (right.outer + out, plinth, "")),
        measure(
            Edge.LEFT,
            (plinth, -left.outer - out, ""),
            (face, -left.outer, "plinth.projection"),
            (0.0, -left.outer, "column.projection"),
        ),
        measure(
            Edge.RIGHT,
            (face, right.outer, ""),
            (face + frame.reveal, x1, "panel.reveal"),
            (face + frame.reveal + layout.panel, x1, "panel.thickness"),
        ),
        measure(
            Edge.RIGHT,
            (-layout.hearth_front, layout.hearth_side, ""),
            (0.0, layout.hearth_side, "hearth.depth"),
        ),
    )


def _vertical_section(surround: Surround) -> tuple[String, ...]:
    layout, frieze = surround.layout, surround.layout.frieze_frame
    face = -layout.frieze_front
    _, y0, _, y1 = frieze.openings[0]
    mould = layout.shelf_bottom - layout.mould_size
    band, panel = layout.mouldings.back_band, layout.mouldings.panel
    foot = [(layout.frieze_bottom - band.height, 0.0, "")] if band else []
    return (
        measure(
            Edge.LEFT,
            *foot,
            (layout.frieze_bottom, face, "back_band.size" if band else ""),
            (y0, face, "frieze.rail"),
            *([(y0 + panel.height, face + frieze.reveal, "panel_mould.size")] if panel else []),
            (y1, face, ""),
            (mould, face, "frieze.rail"),
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
            (-layout.shelf_front, layout.shelf_top, ""),
            (face, layout.shelf_bottom, ""),
            (0.0, layout.shelf_top, "frieze.projection"),
        ),
        measure(
            Edge.ABOVE, (-layout.shelf_front, layout.shelf_top, ""), (0.0, layout.shelf_top, "shelf.depth")
        ),
        measure(Edge.BELOW, (-layout.hearth_front, 0.0, ""), (0.0, 0.0, "hearth.depth")),
    )
