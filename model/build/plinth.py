"""The plinth wrapped round a column's foot: boards mitred round it, or butted where it is notched."""

from __future__ import annotations

from model.board import Board, End, Point2, Stock, block
from model.build.facing import follow_masonry
from model.build.hearth_step import outline_foot
from model.build.lines import LEAST_LAYER, Layout, Side
from model.build.run import Profile, run_section

FRONT, RETURN = "plinth front", "plinth return"


def build_plinth(layout: Layout, side: Side, words: str, stock: Stock) -> tuple[Board, ...]:
    """Boards round the foot, on packing where they stand out further than they are thick; or none.

    They are mitred. Where a return is notched round a baseboard, or the front steps over the hearth's end,
    they are sawn from flat boards, and the front runs over the ends of the returns.
    """
    if not layout.plinth_out:
        return ()
    packed = layout.plinth_out - stock.thickness
    start = packed if packed >= LEAST_LAYER else 0.0
    out = layout.plinth_out
    if side.step is not None or any(_notches(layout, side, out)):
        boards = _ring(layout, side, words, stock, (start, out), (FRONT, RETURN))
    else:
        boards = _mitred(layout, side, words, stock, start)
    if start:
        boards += _ring(layout, side, words, stock, (0.0, start), (f"{FRONT} packing", f"{RETURN} packing"))
    return follow_masonry(side, boards)


def _notches(layout: Layout, side: Side, out: float) -> tuple[Point2 | None, Point2 | None]:
    """What a baseboard takes out of the inner and of the outer return."""
    inner, outer = (side.inner - out, side.inner), (side.outer, side.outer + out)
    return layout.foot_notch(side, inner), layout.foot_notch(side, outer)


def _mitred(layout: Layout, side: Side, words: str, stock: Stock, start: float) -> tuple[Board, ...]:
    inner, outer, front = side.inner, side.outer, layout.column_front
    y0, y1, out = side.base, side.plinth_top, layout.plinth_out
    profile = Profile([(start, y0), (out, y0), (out, y1), (start, y1)])
    inner_back = layout.slip_front or side.inner_back
    path = [(outer, side.outer_back), (outer, front), (inner, front), (inner, inner_back)]
    return run_section([RETURN, FRONT, RETURN], words, stock, path, profile)


def _ring(
    layout: Layout, side: Side, words: str, stock: Stock, off: Point2, roles: tuple[str, str]
) -> tuple[Board, ...]:
    """Flat boards from `off[0]` to `off[1]` off the column: the front, then the inner and outer return.

    Packing goes behind the boards, so that its front ends at the column's sides.
    """
    front_role, return_role = roles
    low, high, front = *off, layout.column_front
    packing = high < layout.plinth_out
    over = 0.0 if packing else high
    inner_back = layout.slip_front or side.inner_back
    to = front + (high if packing else low)
    x = (side.inner - over, side.outer + over)
    inner, outer = (side.inner - high, side.inner - low), (side.outer + low, side.outer + high)
    return (
        _front(side, front_role, words, stock, x, (front + low, front + high)),
        _return(layout, side, return_role, words, stock, inner, (inner_back, to)),
        _return(layout, side, return_role, words, stock, outer, (side.outer_back, to)),
    )


def _front(side: Side, role: str, words: str, stock: Stock, x: Point2, z: Point2) -> Board:
    """Level with the hearth as far as that reaches, on down to the floor beyond a step.

    Its grain runs level, or up where that is the longer way of the whole.
    """
    y = (side.base, side.plinth_top)
    outline = outline_foot(side, (x[0], y[0], x[1], y[1]))
    if len(outline) > 4:
        tall = y[1] - min(level for _, level in outline)
        grain = "y" if tall > x[1] - x[0] else "x"
        return Board(role, words, stock, "z", outline, End(z[0]), End(z[1]), grain=grain)
    return block(role, words, stock, "x", x, y, z)


def _return(layout: Layout, side: Side, role: str, words: str, stock: Stock, x: Point2, z: Point2) -> Board:
    """Back to the masonry, notched round a baseboard or, where that is no lower, up to it."""
    y = (side.foot_at(x[0]), side.plinth_top)
    notch = layout.foot_notch(side, x)
    if notch is None or z[0] >= notch[1]:
        return block(role, words, stock, "z", x, y, z)
    top, face = notch
    if top > y[1] - LEAST_LAYER:
        return block(role, words, stock, "z", x, y, (face, z[1]))
    section = ((y[0], face), (top, face), (top, z[0]), (y[1], z[0]), (y[1], z[1]), (y[0], z[1]))
    return Board(role, words, stock, "x", section, End(x[0]), End(x[1]), grain="z")
