"""Which boards of a surround come out of pieces that are there already, and why others do not.

What is bought and how it is cut is no business of this file: a piece is ripped into lanes of one width and
these are crosscut, the longest boards first.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from model.board import Board
from model.parameters import PIECE_USES
from model.shop import NO_USE, Piece
from model.takeoff.guide_settings import find_saw
from model.takeoff.rough import Rough, plan_whole
from model.units import format_length

if TYPE_CHECKING:
    from model.surround import Surround

CLOSE = 1 / 128
"""Sizes that differ by less are equal, in. Shop choice."""


def _has_role(*roles: str) -> Callable[[Board], bool]:
    return lambda board: board.role in roles


BOARDS_OF: Mapping[str, Callable[[Board], bool]] = {
    "shelf": _has_role("shelf top", "shelf plank"),
    "shelf_underside": _has_role("shelf underside"),
    "shelf_edge": lambda board: board.role.startswith("edge band"),
    "bed_mould": lambda board: board.assembly == "bed mould",
    "frieze_board": _has_role("frieze board"),
    "column_face": _has_role("column face"),
    "column_stile": _has_role("column stile"),
    "ledger": lambda board: board.assembly == "nailers" and board.role.startswith("shelf"),
}
"""The boards that each use of a piece means; the uses of model.parameters.PIECE_USES but for nothing."""


@dataclass(frozen=True, slots=True)
class Yield:
    """What a piece on hand gives. `path` is that of its record in the table.

    `taken` and `left` are places in the list of boards; `why` says why any are left, "" for none, and
    `missing` which rows were not measured.
    """

    path: str
    piece: Piece
    taken: tuple[int, ...]
    left: tuple[int, ...]
    why: str
    missing: tuple[str, ...] = ()

    @property
    def name(self) -> str:
        """What the piece is called."""
        return self.piece.name.strip() or "the piece on hand"


@dataclass(slots=True)
class _Lane:
    """A strip ripped from a piece: its width, and how much of its length is left."""

    width: float
    left: float


@dataclass(slots=True)
class _Sawn:
    """A piece as it is being cut up: the lanes so far and the width not ripped yet."""

    length: float
    width: float
    kerf: float
    lanes: list[_Lane] = field(default_factory=list)

    def take(self, length: float, width: float) -> bool:
        """Saw a board out, if there is room for it."""
        for lane in self.lanes:
            if abs(lane.width - width) < CLOSE and lane.left >= length - CLOSE:
                lane.left -= length + self.kerf
                return True
        if self.width < width - CLOSE or self.length < length - CLOSE:
            return False
        self.lanes.append(_Lane(width, self.length - length - self.kerf))
        self.width -= width + self.kerf
        return True


def list_yields(surround: Surround) -> tuple[Yield, ...]:
    """What every piece on hand that is used gives, in the table's order; a board is taken once."""
    shop = surround.job.shop
    used = [
        (path, piece)
        for path, piece in (("piece_one", shop.piece_one), ("piece_two", shop.piece_two))
        if piece.use != NO_USE
    ]
    if not used:
        return ()
    kinds = surround.kinds
    rough = plan_whole(surround)
    sizes = {i: rough[kind.mark] for kind in kinds for i in kind.pieces}
    taken: set[int] = set()
    yields = []
    for path, piece in used:
        found = _saw_up(surround, path, piece, sizes, taken)
        taken.update(found.taken)
        yields.append(found)
    return tuple(yields)


def _saw_up(surround: Surround, path: str, piece: Piece, sizes: Mapping[int, Rough], gone: set[int]) -> Yield:
    boards = surround.boards
    wanted = [i for i, board in enumerate(boards) if i not in gone and BOARDS_OF[piece.use](board)]
    wanted.sort(key=lambda i: (-sizes[i].width.rough, -sizes[i].length.rough))
    length, width, thickness = piece.length, piece.width, piece.thickness
    if length is None or width is None or thickness is None:
        rows = ("length", "width", "thickness")
        missing = tuple(row for row in rows if getattr(piece, row) is None)
        return Yield(path, piece, (), tuple(wanted), "", missing)
    sawn = _Sawn(length - 2 * piece.clear, width, find_saw(surround.job).kerf.value)
    taken: list[int] = []
    left: list[int] = []
    for i in wanted:
        thick_enough = thickness >= boards[i].thickness - CLOSE
        fits = thick_enough and sawn.take(sizes[i].length.rough, sizes[i].width.rough)
        (taken if fits else left).append(i)
    why = _explain(surround, piece, length, width, thickness, left[0], sizes) if left else ""
    return Yield(path, piece, tuple(taken), tuple(left), why)


def _explain(
    surround: Surround,
    piece: Piece,
    length: float,
    width: float,
    thickness: float,
    board: int,
    sizes: Mapping[int, Rough],
) -> str:
    """Why a board does not come out of a piece of this `length`, `width` and `thickness`."""
    style = surround.job.about.length_style
    mark, wanted = surround.marks[board], sizes[board]
    for has, needs, words in (
        (thickness, surround.boards[board].thickness, "thick"),
        (width, wanted.width.rough, "wide"),
        (length - 2 * piece.clear, wanted.length.rough, "long and sound"),
    ):
        if has < needs - CLOSE:
            return (
                f"it is {format_length(max(has, 0.0), style)} {words}, and {mark} takes "
                f"{format_length(needs, style)} with what is left on for cutting"
            )
    return f"what is left of it is too small for {mark}"


def note_on_hand(surround: Surround) -> dict[int, str]:
    """What the cut list says of each board that comes out of a piece on hand, by its place in the list."""
    notes = {}
    for found in list_yields(surround):
        for i in found.taken:
            planed = (found.piece.thickness or 0.0) > surround.boards[i].thickness + CLOSE
            notes[i] = f"from {found.name}, on hand" + (", planed down" if planed else "")
    return notes


def describe_use(piece: Piece) -> str:
    """What a piece is used for, in the table's words."""
    return PIECE_USES[piece.use]
