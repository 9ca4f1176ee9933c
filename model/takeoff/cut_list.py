"""The cut list: one line for each kind of piece, with its finished size and how its ends are cut.

Which pieces are alike and what they are called stands in model.takeoff.marks; what they are cut out
of is no business of this file.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from math import atan, ceil, degrees
from typing import TYPE_CHECKING

from model.board import AXES, CROSS, Board, End, Point2, Stock, StockKind
from model.build.groove import is_floating
from model.build.level_backs import list_stretches
from model.parameters import SPECIES
from model.takeoff.bores import list_bores
from model.takeoff.cord_work import list_cord_work
from model.takeoff.leaning import describe_askew, list_askew
from model.takeoff.lie import describe_grain, describe_shown, find_hand
from model.takeoff.marks import Kind, shape_of
from model.takeoff.naming import name_kinds
from model.takeoff.on_hand import note_on_hand
from model.takeoff.rough import Rough, find_stock, plan_rough, shortest_line
from model.takeoff.saw_angles import Corner, format_degrees, list_end_cuts, lying_angles
from model.takeoff.tapers import describe_tapers
from model.units import LengthStyle, format_length, without_feet

if TYPE_CHECKING:
    from model.surround import Surround
    from model.takeoff.surfaces import Surfaces

CLOSE = 1 / 128
"""Thicknesses and widths that differ by less are equal, in. Shop choice."""
FINEST = 32
"""Stock is measured finer than pieces are cut: to 1/32 in."""


@dataclass(frozen=True, slots=True)
class Cut:
    """A line of the cut list; sizes are finished sizes in inches, length long point to long point.

    `mark` is the kind's, `pieces` the marks of the boards it stands for, `quantity` of them. `name` is no
    other line's. `width` and `thickness` are the section's outline. `ends`, `stock` and `notes` are words for
    the shop. `short_length` is between short points, `rough` what is sawn first. `hand`, `grain` and `shows`
    say how the piece lies in place; `shows` is empty where nobody looked.
    """

    mark: str
    name: str
    assembly: str
    quantity: int
    stock: str
    length: float
    width: float
    thickness: float
    ends: str
    notes: str
    pieces: tuple[str, ...]
    short_length: float = 0.0
    rough: Rough | None = None
    hand: str = ""
    grain: str = ""
    shows: str = ""


def list_cuts(
    surround: Surround, surfaces: Surfaces | None = None, rough: Mapping[str, Rough] | None = None
) -> tuple[Cut, ...]:
    """Every board of `surround`, once, like pieces on one line; sub-assemblies in the order of the boards.

    With its `surfaces` each line says which faces show. `rough` are the rough sizes by mark, those out of
    boards as wide as are commonly stocked where none are given.
    """
    kinds = surround.kinds
    twins = _mirror_twins(surround.boards, kinds)
    work = _list_all_work(surround)
    rough, names = rough or plan_rough(surround), name_kinds(surround.boards, kinds)
    return tuple(
        _finish_cut(
            _cut(surround, kind, twins.get(kind.mark), rough[kind.mark], work),
            names[kind.mark],
            surround,
            kind,
            surfaces,
        )
        for kind in kinds
    )


def _finish_cut(cut: Cut, name: str, surround: Surround, kind: Kind, surfaces: Surfaces | None) -> Cut:
    """`cut` with its name and how its pieces lie."""
    boards = [surround.boards[i] for i in kind.pieces]
    return replace(
        cut,
        name=name,
        short_length=shortest_line(boards[0]),
        grain=describe_grain(boards[0]),
        shows=describe_shown(surfaces, kind.pieces) if surfaces is not None else "",
    )


def _cut(
    surround: Surround, kind: Kind, twin: Kind | None, rough: Rough, work: Mapping[int, Sequence[str]]
) -> Cut:
    boards = [surround.boards[i] for i in kind.pieces]
    first, style = boards[0], surround.job.about.length_style
    stock = find_stock(surround.job, first)
    assemblies = dict.fromkeys(board.assembly for board in boards)
    hand = find_hand(boards, [surround.boards[i] for i in twin.pieces] if twin else ())
    notes = [f"{hand}; mirror twin of {twin.mark}"] if twin else []
    return Cut(
        mark=kind.mark,
        name=first.role,
        assembly=", ".join(assemblies),
        quantity=len(boards),
        stock=describe_stock(stock, style),
        length=first.length,
        width=first.width,
        thickness=first.thickness,
        ends=describe_ends(first),
        notes="; ".join(
            (*notes, *_list_notes(first, stock, rough, style), *_list_work(surround, kind, work))
        ),
        pieces=tuple(surround.marks[i] for i in kind.pieces),
        rough=rough,
        hand=hand,
    )


def _list_all_work(surround: Surround) -> dict[int, tuple[str, ...]]:
    """What is to be said of single boards, by their place in the list."""
    cords, found, bores = list_cord_work(surround), note_on_hand(surround), list_bores(surround)
    return {
        i: (*cords.get(i, ()), *bores.get(i, ()), *([found[i]] if i in found else []))
        for i in {*cords, *bores, *found}
    }


def _list_work(surround: Surround, kind: Kind, work: Mapping[int, Sequence[str]]) -> list[str]:
    """What is bored or sawn out for cords and bolts, what a piece is cut from, by the mark of the piece."""
    return [f"{surround.marks[i]}: {words}" for i in kind.pieces for words in work.get(i, ())]


def describe_stock(stock: Stock, style: LengthStyle) -> str:
    """What to take from the rack: ``3/4" yellow poplar board``, ``1/4" plywood``."""
    wood = SPECIES.get(stock.wood, stock.wood).lower()
    thickness = _thickness_text(stock.thickness, style)
    match stock.kind:
        case StockKind.BOARD:
            return f"{thickness} {wood} board"
        case StockKind.MOULDING:
            return f"{thickness} {wood} moulding"
        case _:
            return f"{thickness} {wood}"


def thickness_style(style: LengthStyle) -> LengthStyle:
    """The style thicknesses are written in where lengths are written in `style`."""
    return without_feet(style, FINEST)


def _thickness_text(thickness: float, style: LengthStyle) -> str:
    return format_length(thickness, thickness_style(style))


def describe_ends(board: Board) -> str:
    """How the two ends are cut: ``both square``, or the mitres and where their long points lie."""
    if board.is_scribed:
        rest = describe_ends(replace(board, low=End(board.low.at)))
        back = f"one {format_degrees(board.low.mitre)} off square to follow the masonry"
        return rest.replace("both square", f"one square, {back}").replace("one square, 45", f"{back}, 45")
    if board.lean:
        return f"{format_degrees(degrees(atan(abs(board.lean))))} bevel both ends, parallel"
    mitred = [end for end in (board.low, board.high) if not end.is_square]
    if not mitred:
        return "both square"
    faces = _long_point_faces(board)
    angles = _describe_angles(board, mitred)
    if len(mitred) == 1:
        return f"one square, {angles[0]} at the other" + (f" (long point on the {faces[0]})" if faces else "")
    cuts = f"{angles[0]} both ends" if angles[0] == angles[1] else f"{angles[0]} and {angles[1]}"
    if not faces:
        return cuts
    if faces[0] == faces[1]:
        return f"{cuts} (long points on the {faces[0]})"
    return f"{cuts}, parallel (long point on the outside face at one end, on the back at the other)"


def _describe_angles(board: Board, mitred: Sequence[End]) -> list[str]:
    """Each mitred end's angle; mitre and bevel of a sprung moulding as it lies flat on the saw."""
    if board.worked is None or not board.worked.spring:
        return [f"{format_degrees(end.mitre)} mitre" for end in mitred]
    settings = [lying_angles(board.worked.spring, 180 - 2 * end.mitre) for end in mitred]
    return [f"{format_degrees(mitre)} mitre with {format_degrees(bevel)} bevel" for mitre, bevel in settings]


def _long_point_faces(board: Board) -> list[str]:
    """``outside face``, ``back`` or an edge for each mitred end; empty when there is none to speak of.

    A level piece along the wall shows its front; one running out from the wall turns its outside to
    the long point of its front end, where the piece along the wall wraps round it.
    """
    if board.worked:
        cuts = list_end_cuts(board)
        words = {Corner.OUTSIDE: "outside face", Corner.INSIDE: "back", None: "outer edge"}
        return [words[cut.kind] for cut in cuts]
    low, high = _long_side(board.low, -1), _long_side(board.high, 1)
    across = {side[0] for side in (low, high) if side}
    if board.axis == "x" and across == {1}:
        outside = 1
    elif board.axis == "x" and across == {0}:
        return ["upper edge" if side[1] > 0 else "lower edge" for side in (low, high) if side]
    elif board.axis == "z" and across == {0}:
        outside = high[1] if high else -low[1] if low else 0
    else:
        return []
    return ["outside face" if side[1] == outside else "back" for side in (low, high) if side]


def _long_side(end: End, way: int) -> tuple[int, int] | None:
    """Which axis across the grain a mitre runs over and the side its long point is on; None when square."""
    slopes = (end.slope_u * way, end.slope_v * way)
    if bool(slopes[0]) == bool(slopes[1]):
        return None
    i = 0 if slopes[0] else 1
    return i, 1 if slopes[i] > 0 else -1


def _list_notes(first: Board, stock: Stock, rough: Rough, style: LengthStyle) -> list[str]:
    """What is done to a piece like `first`, which is sawn out of `stock`."""
    notes: list[str] = []
    if first.worked:
        name = first.worked.name
        return [f"section: {name[:1].lower()}{name[1:]}"]
    shaped = first.length_axis != first.axis
    if shaped and list_askew(first):
        notes += describe_askew(first, style)
    elif shaped:
        notes += [*_list_notches(first, style), *_list_recesses(first, style), *describe_tapers(first, style)]
    rebates = [] if shaped else _rebates(first)
    if rebates:
        across, deep = (_thickness_text(size, style) for size in rebates[0])
        edges = "both back edges" if len(rebates) > 1 else "one back edge"
        notes.append(f"rebated {across} wide, {deep} deep along {edges}")
    if not shaped and not rebates:
        notes += _list_grooves(first, style)
    notes += _list_flutes(first, style)
    if first.stock.kind is StockKind.PANEL:
        return notes
    if is_floating(first):
        notes.append("floats in its groove, not glued; finish its edges first")
    if first.thickness > first.stock.thickness + CLOSE:
        layers = ceil(first.thickness / first.stock.thickness - CLOSE)
        notes.append(f"built up from {layers} thicknesses")
    elif first.thickness < stock.thickness - CLOSE:
        as_bought = ", or bought so" if abs(first.thickness - first.stock.thickness) < CLOSE else ""
        notes.append(f"planed to {_thickness_text(first.thickness, style)}{as_bought}")
    if rough.strips > 1:
        notes.append(f"edge-glued from {rough.strips} boards")
    return notes


def _list_flutes(board: Board, style: LengthStyle) -> list[str]:
    """How many hollows run along a face that no moulding section describes, and their size."""
    firsts = [i for i in range(len(board.section)) if i not in board.curved and i + 1 in board.curved]
    if not firsts:
        return []
    first = firsts[0]
    last = next(i for i in range(first + 1, len(board.section)) if i not in board.curved)
    (u0, v0), (_, v1) = board.section[first], board.section[last]
    deep = max(abs(u - u0) for u, _ in board.section[first:last])
    size = " wide, ".join(_thickness_text(value, style) for value in (v1 - v0, deep))
    count = "1 flute" if len(firsts) == 1 else f"{len(firsts)} flutes"
    return [f"{count} along the face, {size} deep"]


def _mirror_twins(boards: Sequence[Board], kinds: Sequence[Kind]) -> dict[str, Kind]:
    """Each handed kind's mark with its mirror twin, where both are in the list."""
    by_shape = {(_words(boards, kind), shape_of(boards[kind.pieces[0]])): kind for kind in kinds}
    twins = {}
    for kind in kinds:
        mirrored = shape_of(boards[kind.pieces[0]], mirrored=True)
        twin = by_shape.get((_words(boards, kind), mirrored), kind)
        if twin.mark != kind.mark:
            twins[kind.mark] = twin
    return twins


def _words(boards: Sequence[Board], kind: Kind) -> tuple[str, str, Stock]:
    first = boards[kind.pieces[0]]
    return kind.mark[0], first.role, first.stock


def _list_notches(board: Board, style: LengthStyle) -> list[str]:
    """The corners sawn out of the face of a piece sawn to shape."""
    iu, iv = CROSS[board.axis]
    (low_u, low_v), (high_u, high_v) = ((corner[iu], corner[iv]) for corner in board.bounds)
    notches = []
    # Of a level piece that is tapered u is z, and its back corners are no notches.
    us = (high_u,) if list_stretches(board) else (low_u, high_u)
    for u, v in sorted({(u, v) for u in us for v in (low_v, high_v)} - set(board.section)):
        inside = [p for p in board.section if low_u < p[0] < high_u and low_v < p[1] < high_v]
        if not inside:
            continue
        inner = min(inside, key=lambda p: abs(p[0] - u) + abs(p[1] - v))
        sizes = abs(inner[0] - u), abs(inner[1] - v)
        along, off = sizes if AXES[iu] == board.length_axis else sizes[::-1]
        deep, far = _thickness_text(off, style), format_length(along, style)
        notches.append(f"notched {deep} off one edge for {far} from one end")
    return notches


def _list_recesses(board: Board, style: LengthStyle) -> list[str]:
    """What is sawn out of an edge of a piece sawn to shape, between both its ends."""
    iu, iv = CROSS[board.axis]
    along_u = AXES[iu] == board.length_axis
    low, high = ((corner[iu], corner[iv]) for corner in board.bounds)
    sides = {0: (low[0], high[0]), 1: (low[1], high[1])}
    along, off = (0, 1) if along_u else (1, 0)
    recesses = []
    for a, b in pairwise([*board.section, board.section[0]]):
        inside = sides[off][0] < a[off] < sides[off][1] and a[off] == b[off]
        if not inside or not all(sides[along][0] < p[along] < sides[along][1] for p in (a, b)):
            continue
        deep = min(abs(a[off] - side) for side in sides[off])
        first = min(a[along], b[along]) - sides[along][0]
        wide, start = (format_length(size, style) for size in (abs(a[along] - b[along]), first))
        cut = _thickness_text(deep, style)
        end = "lower" if board.length_axis == "y" else "left"
        recesses.append(f"{cut} sawn out of one edge for {wide}, from {start} off the {end} end on")
    return recesses


def _rebates(board: Board) -> list[Point2]:
    """(along the width, along the thickness) of each step cut out of a rectangle's corner."""
    low, high = board.bounds
    iu, iv = CROSS[board.axis]
    outline = {(u, v) for u in (low[iu], high[iu]) for v in (low[iv], high[iv])}
    missing = outline - set(board.section)
    steps = []
    for corner in sorted(missing):
        inner = [p for p in board.section if _is_within(p, low, high, iu, iv)]
        u, v = min(inner, key=lambda p: abs(p[0] - corner[0]) + abs(p[1] - corner[1]), default=corner)
        size = abs(u - corner[0]), abs(v - corner[1])
        u_is_thickness = high[iu] - low[iu] == board.thickness
        steps.append(size[::-1] if u_is_thickness else size)
    return steps


def _list_grooves(board: Board, style: LengthStyle) -> Iterator[str]:
    """The groove along one edge or both of a frame's member, and how far behind the face it begins."""
    low, high = board.bounds
    iu, iv = CROSS[board.axis]
    inside = [p for p in board.section if _is_within(p, low, high, iu, iv)]
    if board.curved or len(board.section) not in (8, 12) or len(inside) * 2 != len(board.section) - 4:
        return
    thick = 0 if AXES[iu] == "z" else 1
    wide = 1 - thick
    middle = (low[(iu, iv)[wide]] + high[(iu, iv)[wide]]) / 2
    depths = {min(p[wide] - low[(iu, iv)[wide]], high[(iu, iv)[wide]] - p[wide]) for p in inside}
    zs = [p[thick] for p in inside]
    both = len({p[wide] > middle for p in inside}) == 2
    across, deep, off = (
        _thickness_text(size, style) for size in (max(zs) - min(zs), max(depths), high[2] - max(zs))
    )
    edges = "both edges" if both else "one edge"
    yield f"grooved {across} wide, {deep} deep along {edges}, {off} behind the face"


def _is_within(point: Point2, low: Sequence[float], high: Sequence[float], iu: int, iv: int) -> bool:
    return low[iu] < point[0] < high[iu] and low[iv] < point[1] < high[iv]
