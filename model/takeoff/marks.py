"""Which pieces are the same, and what is pencilled on each: C3b is the second of the columns' third kind.

Lengths, stock and words of the list itself belong to model.takeoff.cut_list.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from string import ascii_uppercase

from model.board import AXES, CROSS, Board, End, Point2, Stock

GRID = 2048
"""Steps to the inch when pieces are compared: even, so that the middle of a tape reading falls on one."""

Corner = tuple[int, int, int, int]
"""A section corner with where its edge begins and ends along the grain: (u, v, low, high), in 1/GRID in."""
Shape = tuple[Corner, ...]


@dataclass(frozen=True, slots=True)
class Kind:
    """Interchangeable pieces: one mark, and the places in the list of boards that carry it."""

    mark: str
    pieces: tuple[int, ...]


def mark_boards(boards: Sequence[Board]) -> tuple[str, ...]:
    """A mark for each board, all different: the sub-assembly's letter, the kind's number, the piece's letter.

    A kind of one piece has no piece letter: C3, but C4a and C4b.
    """
    return mark_pieces(list_kinds(boards))


def mark_pieces(kinds: Sequence[Kind]) -> tuple[str, ...]:
    """The mark of each piece of `kinds`, by its place in the list of boards that they are the kinds of."""
    marks = [""] * sum(len(kind.pieces) for kind in kinds)
    for kind in kinds:
        for i, piece in enumerate(kind.pieces):
            marks[piece] = kind.mark + (_piece_letter(i) if len(kind.pieces) > 1 else "")
    return tuple(marks)


def list_kinds(boards: Sequence[Board]) -> tuple[Kind, ...]:
    """The kinds of piece in `boards`, sub-assemblies and kinds in the order they first appear.

    Pieces are of one kind when role, stock and shape agree once turned: end for end, over, or a
    quarter turn about the grain. A piece and its mirror twin are of one kind only if turning does it.
    """
    words: dict[str, dict[tuple[str, Stock, Shape], list[int]]] = {}
    roles = Counter([board.role for board in boards])
    for i, board in enumerate(boards):
        kinds = words.setdefault(_letter_word(board), {})
        shape = shape_of(board) if roles[board.role] > 1 else ()  # the only one of its role is like no other
        kinds.setdefault((board.role, board.stock, shape), []).append(i)
    letters = _choose_letters(tuple(words))
    return tuple(
        Kind(f"{letters[word]}{number}", tuple(pieces))
        for word, kinds in words.items()
        for number, pieces in enumerate(kinds.values(), start=1)
    )


def shape_of(board: Board, mirrored: bool = False) -> Shape:
    """What `board`, or its mirror twin, is as a thing in the hand: equal where turning makes pieces equal."""
    if board.is_box:
        (u0, v0), _, (u1, v1), _ = board.section
        one, other = _steps(abs(u1 - u0)), _steps(abs(v1 - v0))
        long = _steps(board.high.at - board.low.at)
        return ((one, other, 0, long) if one <= other else (other, one, 0, long),)
    iu, iv = CROSS[board.axis]
    low, high = board.bounds
    cu, cv = (low[iu] + high[iu]) / 2, (low[iv] + high[iv]) / 2
    along = AXES.index(board.axis)
    middle = (low[along] + high[along]) / 2
    first, last = (_step_ends(end, board.section, middle) for end in (board.low, board.high))
    ends = zip(board.section, first, last, strict=True)
    corners = tuple([(round((u - cu) * GRID), round((v - cv) * GRID), a, b) for (u, v), a, b in ends])
    if mirrored:
        corners = tuple((u, v, -high, -low) for u, v, low, high in corners)
    return _turned_least(corners)


def _step_ends(end: End, section: Sequence[Point2], middle: float) -> list[int]:
    """Where the cut lies at each corner, in steps from the middle."""
    at, slope_u, slope_v = end.at, end.slope_u, end.slope_v
    if end.is_square:
        return [_steps(at - middle)] * len(section)
    return [round((at + slope_u * u + slope_v * v - middle) * GRID) for u, v in section]


def _steps(length: float) -> int:
    return round(length * GRID)


@lru_cache(maxsize=512)
def _turned_least(corners: Shape) -> Shape:
    """The least of the eight ways to turn a shape that keep its grain in line, begun at its least corner.

    `corners` are about the middle of the piece, so that turning never rounds anew. A shape that begins
    with a greater corner than another cannot be the least, so few are written out in full.
    """
    turned = []
    for shape in (corners, tuple((u, -v, -high, -low) for u, v, low, high in reversed(corners))):
        for _ in range(4):
            shape = tuple([(-v, u, low, high) for u, v, low, high in shape])
            turned.append((min(shape), shape))
    least = min(first for first, _ in turned)
    starts = [(shape, shape.index(least)) for first, shape in turned if first == least]
    return min(shape[i:] + shape[:i] for shape, i in starts)


def _letter_word(board: Board) -> str:
    """What the letter stands for: ``column`` for both columns, ``plinth`` for the boards round their feet."""
    word = board.role.split()[0]
    return word if word == "plinth" else board.assembly.split()[-1]


def _choose_letters(words: Sequence[str]) -> dict[str, str]:
    """A capital for each word, all different: its first letter, or the next that is free."""
    letters: dict[str, str] = {}
    for word in words:
        wanted = [c for c in word.upper() if c in ascii_uppercase] + list(ascii_uppercase)
        letters[word] = next((c for c in wanted if c not in letters.values()), f"Z{len(letters)}-")
    return letters


def _piece_letter(i: int) -> str:
    """a, b, … z, then aa, ab, …"""
    more, last = divmod(i, 26)
    return (_piece_letter(more - 1) if more else "") + chr(ord("a") + last)
