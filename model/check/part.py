"""The parts that findings speak of, in the trade's words, and which boards make each up."""

from __future__ import annotations

from collections.abc import Sequence

from model.board import Board, StockKind

FRIEZE, SHELF, BED_MOULD = "frieze", "shelf", "bed mould"
BACK_BAND, SLIP = "back band", "slip"
OVERMANTEL = "overmantel"
ON_FACING = (BACK_BAND, SLIP)
"""What lies on the facing inside the surround and can be left off."""
ROUND_COLUMNS = ("plinth", "capital")
"""What is lifted with a column but is a part of its own to a rule."""
SURROUND, NAILERS = "whole surround", "nailers"


def name_part(board: Board) -> str:
    """What a board belongs to: its sub-assembly, plinths, capitals and hidden framing apart."""
    if board.stock.kind is StockKind.FRAMING:
        return _name_nailers(board)
    word = board.role.split(" ", 1)[0]
    return board.assembly.replace("column", word) if word in ROUND_COLUMNS else board.assembly


def _name_nailers(board: Board) -> str:
    if board.role.startswith(OVERMANTEL):
        return f"{OVERMANTEL} {NAILERS}"
    if not board.role.startswith("column"):
        return f"{FRIEZE} {NAILERS}"
    return f"left column {NAILERS}" if board.bounds[0][0] < 0 else f"right column {NAILERS}"


def list_parts(boards: Sequence[Board]) -> dict[str, list[int]]:
    """Indices of the boards of each part, in order of first appearance."""
    parts: dict[str, list[int]] = {}
    for i, board in enumerate(boards):
        parts.setdefault(name_part(board), []).append(i)
    return parts


def stands_beside(part: str) -> bool:
    """Whether a part goes up beside the opening, so that it is moved sideways to clear it."""
    return any(word in part for word in ("column", *ROUND_COLUMNS))


def format_part(part: str) -> str:
    """The part as a sentence begins with it."""
    return f"The {part}"


def format_verb(part: str, verb: str) -> str:
    """`verb` in the form that goes with the part."""
    return verb if part.endswith(NAILERS) else f"{verb}s"
