"""What each line of the cut list is called, so that no two lines share a name: ``outer column nailer``.

A piece's role is build's word; what sets lines of one role apart is seen here from where their pieces lie.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from math import inf

from model.board import Board
from model.takeoff.marks import Kind

CLOSE = 1 / 128
"""Places and sizes that differ by less are equal, in. Shop choice."""
ALONG = {"x": "level", "y": "upright", "z": "front-to-back"}
PAIRED = ("column", "nailers")
"""Last words of assemblies that stand on each side of the opening, with an inner and an outer side."""

Group = Sequence[Sequence[Board]]
"""The boards of each of several lines."""


def name_kinds(boards: Sequence[Board], kinds: Sequence[Kind]) -> dict[str, str]:
    """A name for each kind's mark, all different: the role alone, or words before it where roles agree."""
    groups: dict[str, list[Kind]] = {}
    for kind in kinds:
        groups.setdefault(boards[kind.pieces[0]].role, []).append(kind)
    names: dict[str, str] = {}
    for role, group in groups.items():
        words = _tell_apart([[boards[i] for i in kind.pieces] for kind in group])
        names |= {kind.mark: " ".join((*own, role)) for kind, own in zip(group, words, strict=True)}
    return names


def _tell_apart(group: Group) -> list[list[str]]:
    """Words for each line in the order they are said; none for a line that stands alone."""
    found: list[dict[int, str]] = [{} for _ in group]
    _part(group, list(range(len(group))), found, set())
    return [[own[i] for i in sorted(own)] for own in found]


def _part(group: Group, which: Sequence[int], found: list[dict[int, str]], taken: set[int]) -> None:
    """Give the lines `which` the words that part them best, then part what is still together.

    What parted them from others is `taken`: the same words again would be those of the others.
    """
    if len(which) < 2:
        return
    said, words = _choose_words([group[i] for i in which], taken)
    for i, word in zip(which, words, strict=True):
        if word:
            found[i][said] = word
    for word in dict.fromkeys(words):
        _part(group, [i for i, own in zip(which, words, strict=True) if own == word], found, taken | {said})


def _choose_words(lines: Group, taken: set[int]) -> tuple[int, list[str]]:
    """Where the words stand in a name, and a word for each line; the first way to look that parts any.

    One that has a word for every line goes before one that leaves some without. A place in the name that
    is `taken` holds no second word. Lines that no look parts, such as stiles that rounding makes differ, are
    numbered.
    """
    looked = [(said, look(lines)) for said, look in WAYS if said not in taken]
    parting = [(said, words) for said, words in looked if len(set(words)) > 1]
    whole = [(said, words) for said, words in parting if all(words)]
    return (whole or parting or [(len(WAYS), [f"no. {n}" for n in range(1, len(lines) + 1)])])[0]


def _middle(board: Board, axis: int) -> float:
    return (board.bounds[0][axis] + board.bounds[1][axis]) / 2


def _off_centre(board: Board) -> float:
    return abs(_middle(board, 0))


def _halves(
    lines: Group, place: Callable[[Board], float], below: str, above: str, between: str = ""
) -> list[str]:
    """`below` or `above` for lines of which every piece lies on that side of the middle of all places.

    Where all pieces of each line lie at one place, the first and the last place count, and what is between.
    """
    places = [[place(board) for board in line] for line in lines]
    every = [value for own in places for value in own]
    if all(max(own) - min(own) < CLOSE for own in places):
        low, high = min(every) + CLOSE, max(every) - CLOSE
        return [below if own[0] < low else above if own[0] > high else between for own in places]
    middle = (min(every) + max(every)) / 2
    return [
        below if max(own) < middle - CLOSE else above if min(own) > middle + CLOSE else "" for own in places
    ]


def _sides(lines: Group) -> list[str]:
    middles = [[_middle(board, 0) for board in line] for line in lines]
    return ["left" if max(own) < -CLOSE else "right" if min(own) > CLOSE else "" for own in middles]


def _in_and_out(lines: Group) -> list[str]:
    """Inner and outer where a thing stands on each side of the opening; else whether at the ends of a row."""
    if lines[0][0].assembly.split()[-1] in PAIRED:
        words = _halves(lines, _off_centre, "inner", "outer")
        return words if _are_beside(lines, words) else [""] * len(lines)
    reach = max(_off_centre(board) for line in lines for board in line)
    return ["end" if min(map(_off_centre, line)) > reach - CLOSE else "middle" for line in lines]


def _are_beside(lines: Group, words: Sequence[str]) -> bool:
    """Whether no inner piece reaches further out than an outer one begins: pieces one over the other do."""
    reach = {"inner": 0.0, "outer": inf}
    for line, word in zip(lines, words, strict=True):
        for board in line:
            near, far = sorted((abs(board.bounds[0][0]), abs(board.bounds[1][0])))
            if word == "inner":
                reach["inner"] = max(reach["inner"], far)
            elif word == "outer":
                reach["outer"] = min(reach["outer"], near)
    return reach["inner"] < reach["outer"] + CLOSE


def _levels(lines: Group) -> list[str]:
    return _halves(lines, lambda board: _middle(board, 1), "lower", "upper", "middle")


def _depths(lines: Group) -> list[str]:
    return _halves(lines, lambda board: _middle(board, 2), "rear", "front", "middle")


def list_hands(lines: Group) -> list[str]:
    """Which end of its own front a piece stands at: so a left outer and a right inner return are alike."""
    middles: dict[str, float] = {}
    for assembly in {board.assembly for line in lines for board in line}:
        places = [_middle(b, 0) for line in lines for b in line if b.assembly == assembly]
        middles[assembly] = (min(places) + max(places)) / 2
    off = [[_middle(board, 0) - middles[board.assembly] for board in line] for line in lines]
    return ["left-hand" if max(own) < -CLOSE else "right-hand" if min(own) > CLOSE else "" for own in off]


def _directions(lines: Group) -> list[str]:
    return [ALONG[line[0].length_axis] for line in lines]


def _lengths(lines: Group) -> list[str]:
    return _halves(lines, lambda board: board.length, "short", "long")


def _widths(lines: Group) -> list[str]:
    return _halves(lines, lambda board: board.width, "narrow", "wide")


def _thicknesses(lines: Group) -> list[str]:
    return _halves(lines, lambda board: board.thickness, "thin", "thick")


WAYS: tuple[tuple[int, Callable[[Group], list[str]]], ...] = (
    (1, _sides),
    (2, _in_and_out),
    (0, _levels),
    (4, list_hands),
    (3, _depths),
    (7, _directions),
    (5, _lengths),
    (6, _widths),
    (8, _thicknesses),
)
"""Ways to look at lines, the plainest first, each with its word's place in a name."""
