"""The shelf: built up from boards with an edge band mitred round its front and ends, or a solid plank."""

from __future__ import annotations

from dataclasses import replace
from math import ceil

from model.board import Board, Point2, Stock, block
from model.build.layout import LEAST_LAYER, Layout
from model.build.run import Profile, run_section, under
from model.moulding.outline import HAIR
from model.reference.lumber import WIDEST_BOARD

SHELF = "shelf"
RIB_SPACING = 16.0
"""Most between the ribs of a hollow shelf, in. Common practice."""
RIB_WIDTH = 1.5
"""Width of a rib and of the strip that closes the front, in. Shop choice."""


def build_shelf(layout: Layout, stock: Stock) -> tuple[Board, ...]:
    """Top, underside, ribs and front strip as the thickness asks for, then the edge band; or the plank."""
    if layout.shelf_is_plank:
        return _plank(layout, stock)
    front = layout.shelf_front - stock.thickness
    x = (stock.thickness - layout.left.shelf_side, layout.right.shelf_side - stock.thickness)
    z = (layout.shelf_back, front)
    top, bottom = layout.shelf_top, layout.shelf_bottom
    under_top = top - stock.thickness
    lower = min(stock.thickness, under_top - bottom)
    boards = _layer("shelf top", stock, x, (under_top, top), z)
    if lower > 0:
        boards += _layer("shelf underside", stock, x, (bottom, bottom + lower), z)
    if under_top - bottom - lower >= LEAST_LAYER / 2:
        boards += _ribs(stock, x, (bottom + lower, under_top), z)
    return boards + _edge_band(layout, stock, x, front)


def _layer(role: str, stock: Stock, x: Point2, y: Point2, z: Point2) -> tuple[Board, ...]:
    """One layer, edge-glued from equal boards where it is wider than boards are sold."""
    count = max(1, ceil((z[1] - z[0]) / WIDEST_BOARD - 1e-9))
    step = (z[1] - z[0]) / count
    return tuple(
        block(role, SHELF, stock, "x", x, y, (z[0] + i * step, z[0] + (i + 1) * step)) for i in range(count)
    )


def _plank(layout: Layout, stock: Stock) -> tuple[Board, ...]:
    """Edge-glued from equal boards; the foremost has its front edge worked, the ends are left square."""
    solid = replace(stock, thickness=layout.shelf_top - layout.shelf_bottom)
    x, y = (-layout.left.shelf_side, layout.right.shelf_side), (layout.shelf_bottom, layout.shelf_top)
    boards = _layer("shelf plank", solid, x, y, (layout.shelf_back, layout.shelf_front))
    section = layout.mouldings.edge
    if section is None:
        return boards
    line = layout.shelf_front - section.projection
    profile = under(section, layout.shelf_top)
    deep = line - boards[-1].bounds[0][2]
    points = [(out if out > HAIR else -deep, across) for out, across in profile.points]
    worked = replace(profile, points=points)
    return boards[:-1] + run_section(["shelf plank"], SHELF, solid, [(x[1], line), (x[0], line)], worked)


def _ribs(stock: Stock, x: Point2, y: Point2, z: Point2) -> tuple[Board, ...]:
    """A strip along the front; behind it ribs, one at each end and none further apart than RIB_SPACING."""
    behind = z[1] - RIB_WIDTH
    if behind - z[0] < LEAST_LAYER:
        return (block("shelf front strip", SHELF, stock, "x", x, y, z),)
    strip = block("shelf front strip", SHELF, stock, "x", x, y, (behind, z[1]))
    first, last = x[0] + RIB_WIDTH / 2, x[1] - RIB_WIDTH / 2
    bays = max(1, ceil((last - first) / RIB_SPACING - 1e-9))
    centres = [first + (last - first) * i / bays for i in range(bays + 1)]
    spans = [(c - RIB_WIDTH / 2, c + RIB_WIDTH / 2) for c in centres]
    return (strip, *(block("shelf rib", SHELF, stock, "z", span, y, (z[0], behind)) for span in spans))


def _edge_band(layout: Layout, stock: Stock, x: Point2, front: float) -> tuple[Board, ...]:
    y0, y1, t = layout.edge_bottom, layout.shelf_top, stock.thickness
    path = [(x[1], layout.shelf_back), (x[1], front), (x[0], front), (x[0], layout.shelf_back)]
    section = layout.mouldings.edge
    square = Profile([(0.0, y0), (t, y0), (t, y1), (0.0, y1)])
    profile = under(section, y1) if section else square
    return run_section(["edge band end", "edge band front", "edge band end"], SHELF, stock, path, profile)
