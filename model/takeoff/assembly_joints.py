"""How a sub-assembly is put together, in words: what is glued, nailed or screwed to what.

What is driven where is decided in model.takeoff.fasteners.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from model.board import Board, StockKind
from model.takeoff.assemblies import Assembly
from model.takeoff.fasteners import Fixing, Means
from model.units import LengthStyle, format_length

if TYPE_CHECKING:
    from model.surround import Surround

_Key = tuple[str, str, Means, float, bool, bool]


@dataclass(frozen=True, slots=True)
class JointLine:
    """One kind of joint: the marks of the kinds on its two sides, and how it is made.

    `to` is the sub-assembly on the other side, "" for joints made on the bench.
    """

    marks: tuple[str, str]
    words: str
    to: str = ""


def list_joint_lines(
    surround: Surround, assembly: Assembly, fixings: Sequence[Fixing]
) -> tuple[JointLine, ...]:
    """The joints of one sub-assembly: those made on the bench, then what fastens it to others.

    Others are those that stand already when it goes up.
    """
    kinds = {i: kind.mark for kind in surround.kinds for i in kind.pieces}
    own, boards = set(assembly.pieces), surround.boards
    style = surround.job.about.length_style
    inner = [f for f in fixings if {f.through, f.into} <= own]
    earlier = set(range(min(own))) - own
    outer = [f for f in fixings if {f.through, f.into} & own and {f.through, f.into} & earlier and f.count]
    lines = [
        JointLine(
            (key[0], key[1]),
            _say_made(key, found, style),
            _other_side(found[0], own, boards) if fixings is outer else "",
        )
        for fixings in (inner, outer)
        for key, found in _group(fixings, kinds, boards)
    ]
    return _join_lines(_join_lines(lines, 0), 1)


def _join_lines(lines: Sequence[JointLine], k: int) -> tuple[JointLine, ...]:
    """Lines that say the same of one piece and several others as one line; `k` is the piece's place."""
    joined: dict[tuple[str, str, str], list[str]] = {}
    for line in lines:
        joined.setdefault((line.marks[k], line.words, line.to), []).append(line.marks[1 - k])
    found = []
    for (mark, words, to), others in joined.items():
        both = (mark, ", ".join(others)) if k == 0 else (", ".join(others), mark)
        found.append(JointLine(both, words, to))
    return tuple(found)


def _group(
    fixings: Iterable[Fixing], kinds: dict[int, str], boards: Sequence[Board]
) -> Iterator[tuple[_Key, list[Fixing]]]:
    groups: dict[_Key, list[Fixing]] = {}
    for fixing in fixings:
        one, other = boards[fixing.through], boards[fixing.into]
        marks = kinds[fixing.through], kinds[fixing.into]
        made = fixing.means, fixing.length, fixing.glue > 0, _is_mitre(one, other)
        key = (*marks, *made) if (*marks[::-1], *made) not in groups else (*marks[::-1], *made)
        groups.setdefault(key, []).append(fixing)
    yield from groups.items()


def _is_mitre(one: Board, other: Board) -> bool:
    """Whether two pieces that run in different directions are both cut askew to meet."""
    askew = all(not (b.low.is_square and b.high.is_square) and not b.lean for b in (one, other))
    return askew and one.axis != other.axis and StockKind.FRAMING not in (one.stock.kind, other.stock.kind)


def _say_made(key: _Key, found: Sequence[Fixing], style: LengthStyle) -> str:
    """``glued, 2 × pocket screw 1 1/4" at each of 4 places``."""
    _, _, means, length, is_glued, is_mitred = key
    words = ["mitred"] if is_mitred else []
    words += ["glued"] if is_glued else []
    if means is not Means.NONE:
        words.append(_say_driven(means, length, found, style))
    elif not is_glued:
        words.append("meets it dry: neither glued nor nailed")
    places = f" at each of {len(found)} places" if len(found) > 1 else ""
    return ", ".join(words) + places


def _say_driven(means: Means, length: float, found: Sequence[Fixing], style: LengthStyle) -> str:
    counts = sorted({fixing.count for fixing in found})
    count = f"{counts[0]}" if len(counts) == 1 else f"{counts[0]} to {counts[-1]}"
    return f"{count} × {means.value} {format_length(length, style)}"


def _other_side(fixing: Fixing, own: set[int], boards: Sequence[Board]) -> str:
    other = fixing.into if fixing.through in own else fixing.through
    return boards[other].assembly
