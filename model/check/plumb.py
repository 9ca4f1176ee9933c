"""Masonry that is out of plumb behind the columns: what was found, what is done, and what is left to do."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace

from model.board import StockKind
from model.build.level_backs import gap_left, plane_behind
from model.build.lines import Side
from model.build.packing import PACKED
from model.check.clearance import HAIR
from model.check.finding import Bound, Finding, Status
from model.check.plain import SURVEY, build_plain
from model.check.wording import Wording
from model.surround import Surround

TIGHT = 1 / 16
"""What falls back no more than this, in., is taken up by scribing and caulk. Shop choice."""


def check_plumb(surround: Surround) -> tuple[Finding, ...]:
    """For each column before masonry out of plumb, then for what lies flat on it."""
    wording = Wording(surround.job.about.length_style)
    return (
        *(_report(side, wording) for side in surround.layout.sides if side.lean),
        *_check_shelf(surround, wording),
        *_check_packed(surround, wording),
    )


def check_behind(
    surround: Surround, check: Callable[[Surround], tuple[Finding, ...]], found: Sequence[Finding]
) -> tuple[Finding, ...]:
    """Parts that `check` has `found` clear of the fire, but not as measured from masonry that falls back."""
    if not surround.layout.leans:
        return ()
    failed = {finding.part for finding in found if finding.status is Status.FAIL}
    return tuple(
        replace(
            finding,
            status=Status.WARN,
            message="Measured from the masonry where it falls back: " + finding.message,
            cure="Give it more room, or ask the authority having jurisdiction where its projection is taken.",
        )
        for finding in check(surround.off_masonry())
        if finding.status is Status.FAIL and finding.part not in failed
    )


def _report(side: Side, wording: Wording) -> Finding:
    lean = side.lean
    assert lean is not None
    way, where = ("toward the room", "foot") if lean.amount > 0 else ("away from the room", "head")
    much = wording.distance(lean.most)
    message = (
        f"Behind the {side.name} column the masonry leans {much} {way} at the top over "
        f"{wording.mark(lean.top - lean.base)}: the column stands plumb, and its returns are {much} wider at "
        f"their {where} to follow it."
    )
    cure = "Measure projections from where the masonry stands furthest out."
    return build_plain(
        SURVEY, Status.PASS, f"{side.name} column", message, f"plumb.{side.name}", cure, lean.most
    )


def _check_shelf(surround: Surround, wording: Wording) -> Iterator[Finding]:
    """A shelf on masonry that leans away is wider to reach it, or stands off it where it cannot be."""
    layout = surround.layout
    back = [
        (mark, board)
        for mark, board in zip(surround.marks, surround.boards, strict=True)
        if board.assembly == "shelf" and plane_behind(layout, board) == layout.shelf_back
    ]
    boards = tuple(mark for mark, _ in back)
    short = max((gap_left(layout, board) for _, board in back), default=0.0)
    for side, gap in zip(layout.sides, layout.shelf_gaps, strict=True):
        if gap <= TIGHT + HAIR:
            continue
        if short <= TIGHT + HAIR:
            yield replace(_reached(side, gap, wording), boards=boards)
            continue
        message = (
            f"The masonry falls back {wording.distance(gap)} behind the shelf's {side.name} end; "
            "the shelf stays where it is, and its rough width has as much more for scribing."
        )
        cure = "Scribe the shelf's back edge to the masonry, or cover the gap with a strip."
        found = build_plain(
            SURVEY, Status.WARN, "shelf", message, f"plumb.{side.name}", cure, gap, TIGHT, bound=Bound.MOST
        )
        yield replace(found, boards=boards)


def _reached(side: Side, gap: float, wording: Wording) -> Finding:
    message = (
        f"The masonry falls back {wording.distance(gap)} behind the shelf's {side.name} end; "
        "the shelf's back edge is cut to follow it, and its front stays where it is."
    )
    cure = "The cut list has its width at both ends; scribe it to the masonry with the stock left on."
    return build_plain(SURVEY, Status.PASS, "shelf", message, f"plumb.{side.name}", cure, gap)


def _check_packed(surround: Surround, wording: Wording) -> Iterator[Finding]:
    """Framing before masonry that falls back, where no packing is listed for it."""
    layout = surround.layout
    gaps: dict[str, float] = {}
    for mark, board in zip(surround.marks, surround.boards, strict=True):
        low, high = board.bounds
        flat = board.stock.kind is StockKind.FRAMING and board.role not in PACKED
        if not flat or low[2] not in (0.0, layout.wall):
            continue
        gap = max(layout.set_back(x, y) for x in (low[0], high[0]) for y in (low[1], high[1]))
        if gap > TIGHT + HAIR:
            gaps[mark] = gap
    if not gaps:
        return
    most = max(gaps.values())
    names = ", ".join(gaps)
    message = f"Up to {wording.distance(most)} of packing goes behind {names}, where the masonry falls back."
    found = build_plain(
        SURVEY,
        Status.WARN,
        "nailers",
        message,
        "plumb.left" if layout.left.lean else "plumb.right",
        "Pack each at its anchors until it is plumb, and scribe what shows.",
        most,
        TIGHT,
        bound=Bound.MOST,
    )
    yield replace(found, boards=tuple(gaps))
