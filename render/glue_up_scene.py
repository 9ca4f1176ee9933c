"""The picture of a glue-up: the strips and layers of each wide piece laid out on the bench, or the piece.

Rough pieces are rectangles. One of several like pieces stands for all; nothing of the surround is round them.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from model.board import Board, Point2, Stock, StockKind, block
from model.steps.step import Step
from model.surround import Surround
from model.takeoff.glue_ups import GlueUp
from render.axonometric import FRONT_RIGHT, Scene
from render.board_marks import kind_of
from render.step_picture import Staged

CLEAR = 6.0
"""Between two pieces, in. Shop choice."""
PARTED = 1.0
"""Between two strips or layers of one piece that are still to be glued, in. Shop choice."""
WOOD = Stock(StockKind.BOARD, 1.0, "")


@dataclass(frozen=True, slots=True)
class _Laid:
    """A rectangle of a `mark`: its length, width and thickness, how far up its place and to the front."""

    mark: str
    size: tuple[float, float, float]
    up: float
    front: float


def stage_wide(surround: Surround, step: Step, glue_ups: Sequence[GlueUp]) -> Staged:
    """The pieces of a step of the glue-up: in strips where they are glued, whole where they are dressed."""
    groups = [*_list_pieces(surround, step, glue_ups), *_list_edged(surround, step, glue_ups)]
    longest = max(laid.size[0] for group in groups for laid in group)
    solids: list[Board] = []
    marks: list[str] = []
    left = foot = 0.0
    for group in groups:
        tall = max(laid.up + laid.size[1] for laid in group)
        if foot and foot + tall > longest:
            left, foot = left + longest + CLEAR, 0.0
        solids += [_place(laid, (left, foot)) for laid in group]
        marks += [laid.mark for laid in group]
        foot += tall + CLEAR
    return Staged(Scene(solids, FRONT_RIGHT), tuple(marks))


def _place(laid: _Laid, at: Point2) -> Board:
    long, wide, thick = laid.size
    x, y = (at[0], at[0] + long), (at[1] + laid.up, at[1] + laid.up + wide)
    return block("strip", "", WOOD, "x", x, y, (laid.front, laid.front + thick))


def _list_pieces(surround: Surround, step: Step, glue_ups: Sequence[GlueUp]) -> Iterator[list[_Laid]]:
    """What is made of strips and layers."""
    own = {*step.glued, *step.dressed}
    for up in glue_ups:
        if own & set(up.pieces):
            thick = surround.boards[up.pieces[0]].thickness
            if step.dressed:
                size = (up.rough.length.to_saw, up.rough.width.to_saw, thick)
                yield [_Laid(up.mark, size, 0.0, 0.0)]
            else:
                yield list(_list_strips(up, thick))


def _list_strips(up: GlueUp, thick: float) -> Iterator[_Laid]:
    wide, deep = up.rough.strip_width, thick / up.rough.layers
    for layer in range(up.rough.layers):
        for strip in range(up.rough.strips):
            size = (up.rough.length.rough, wide, deep)
            yield _Laid(up.mark, size, strip * (wide + PARTED), layer * (deep + PARTED))


def _list_edged(surround: Surround, step: Step, glue_ups: Sequence[GlueUp]) -> Iterator[list[_Laid]]:
    """Boards of their own that are glued edge to edge, those of one role into one."""
    strips = {i for up in glue_ups for i in up.pieces}
    groups: dict[tuple[str, str], list[int]] = {}
    for i in step.boards or step.dressed:
        if step.boards or i not in strips:
            board = surround.boards[i]
            groups.setdefault((board.assembly, board.role), []).append(i)
    for own in groups.values():
        yield _lay_edged(surround, own, 0.0 if step.dressed else PARTED)


def _lay_edged(surround: Surround, own: Sequence[int], parted: float) -> list[_Laid]:
    laid, up = [], 0.0
    for i in own:
        board = surround.boards[i]
        laid.append(_Laid(kind_of(surround.marks[i]), (board.length, board.width, board.thickness), up, 0.0))
        up += board.width + parted
    return laid
