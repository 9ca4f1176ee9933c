"""How long each step takes, how many people it takes, and how long its glue is left alone.

Rates are the job's own, from model.parameters; where they come from stands in model.reference.times.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import ceil
from typing import TYPE_CHECKING

from model.board import Board, StockKind
from model.build.groove import is_floating
from model.shop import Times
from model.steps.step import Step, Where
from model.takeoff.takeoff import Takeoff
from model.units import INCHES_PER_FOOT

if TYPE_CHECKING:
    from model.surround import Surround


class Work:
    """Times of the steps of one surround.

    A sub-assembly's hours are shared alike by its pieces; to put on what was made into one before takes as
    long as any other piece.
    """

    def __init__(self, surround: Surround, takeoff: Takeoff, steps: Sequence[Step]) -> None:
        self._boards = surround.boards
        self._times: Times = surround.job.shop.times
        self._takeoff = takeoff
        self._strips = {i: one.parts for one in takeoff.glue_ups for i in one.pieces}
        self._built: dict[str, int] = {}
        self._shares = sum(self._share(step) for step in steps)
        for i in {i for step in steps if step.where is Where.BENCH for i in step.boards}:
            if not self._is_apart(self._boards[i]):
                name = self._boards[i].assembly
                self._built[name] = self._built.get(name, 0) + 1

    def hours(self, step: Step) -> float:
        """Work of all hands together."""
        times = self._times
        if step.wide:
            return self._glue_up(step)
        if not step.put_on and step.where is Where.BENCH:
            return times.cut
        if share := self._share(step):
            return times.install * share / self._shares
        on = [self._boards[i] for i in step.boards]
        hours = sum(self._moulding(board) for board in on if board.stock.kind is StockKind.MOULDING)
        hours += times.anchor * len(step.anchors)
        if step.where is Where.BENCH:
            hours += sum(self._bench(board) for board in on) + times.piece * bool(step.brought)
        else:
            hours += times.piece * sum(b.stock.kind is not StockKind.MOULDING for b in on)
        return hours

    def _glue_up(self, step: Step) -> float:
        """A piece's time for each strip or layer that is jointed and glued, and for each that is dressed.

        Boards of their own have their share of their sub-assembly's.
        """
        pieces = sum(self._strips[i] for i in step.glued) + len(step.dressed)
        return self._times.piece * pieces + sum(self._bench(self._boards[i]) for i in step.boards)

    def _share(self, step: Step) -> int:
        """Of the hours on site: as much to set out and to try it dry as to fix any sub-assembly."""
        if step.where is Where.BENCH or step.boards:
            return 0
        return max(len(step.parts), 1)

    def _bench(self, board: Board) -> float:
        """A piece's share of its sub-assembly's hours."""
        if board.stock.kind is StockKind.PANEL or is_floating(board):
            return self._times.panel
        if board.stock.kind is StockKind.MOULDING:
            return 0.0
        last = board.assembly.split()[-1]
        whole = {"column": self._times.column, "frieze": self._times.frieze, "shelf": self._times.shelf}
        if last not in whole:
            return self._times.piece
        return whole[last] / self._built[board.assembly]

    def _moulding(self, board: Board) -> float:
        mitres = sum(not end.is_square and not end.is_near_square for end in (board.low, board.high))
        return self._times.moulding * board.length / INCHES_PER_FOOT + self._times.mitre * mitres / 2

    def _is_apart(self, board: Board) -> bool:
        return board.stock.kind in (StockKind.PANEL, StockKind.MOULDING) or is_floating(board)

    def hands(self, step: Step) -> int:
        """People needed at once: as many as lift what is brought."""
        if not step.brought or step.where is Where.BENCH:
            return 1
        people = [load.people or 2 for load in self._takeoff.loads if load.name in step.parts]
        return max([1, *people])

    def dries(self, step: Step) -> float:
        """Hours in clamps after it, 0 where nothing is glued."""
        glued = bool(step.glued) or any(self._takeoff.fixings[n].glue for n in step.fixings)
        return self._times.clamp if glued else 0.0


def round_up(hours: float, quarter: float = 0.25) -> float:
    """Hours to the next quarter, as they are told."""
    return ceil(hours / quarter - 1e-9) * quarter
