"""Hidden wood at the masonry's front and sides, not plainly covered by the exception for exposed trim."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from model.board import Board, Point3, StockKind
from model.check.clearance import HAIR
from model.check.finding import Finding, Status
from model.check.part import NAILERS
from model.check.regime import IRC, STRICTEST
from model.check.wording import Wording
from model.reference.clearance import IRC_FRONT_SPACE
from model.surround import Surround

CHECK = "concealed wood"
BESIDE = "nailers beside the facing"


def check_concealed(surround: Surround) -> tuple[Finding, ...]:
    """A caution when nailers lie closer to the masonry's front than the general rule's air space, and one
    when they lie closer to the sides of what stands out from the wall."""
    if surround.job.site.rule not in (IRC, STRICTEST):
        return ()
    return (*_check_front(surround), *_check_sides(surround))


def _check_front(surround: Surround) -> tuple[Finding, ...]:
    off = {i: surround.boards[i].bounds[0][2] for i in _list_before_facing(surround)}
    close = _list_close(off)
    if not close:
        return ()
    low, high = surround.boards[close[0]].bounds
    lie, space = _say(surround, off[close[0]])
    message = (
        f"The nailers {lie} the masonry's front. Wood keeps {space} off it but for exposed mantels and trim, "
        "and hidden framing is not plainly one of these."
    )
    cure = "Ask the authority having jurisdiction, or frame with steel studs instead of wood."
    at = ((low[0] + high[0]) / 2, (low[1] + high[1]) / 2, low[2])
    return (_report(surround, NAILERS, off[close[0]], message, cure, at, close),)


def _check_sides(surround: Surround) -> tuple[Finding, ...]:
    """Only where the facing stands proud of the wall, as a chimney breast does."""
    side = surround.layout.facing_side
    off = {i: _beside(surround.boards[i], side) for i in _list_beside_facing(surround)}
    close = _list_close(off)
    if not close:
        return ()
    low, high = surround.boards[close[0]].bounds
    lie, space = _say(surround, off[close[0]])
    message = (
        f"The nailers on the wall {lie} the sides of the facing, which stands proud of it. Where that is the "
        f"masonry fireplace itself, framing keeps {space} off its sides."
    )
    cure = "Ask the authority having jurisdiction, or frame there with steel studs instead of wood."
    near = low[0] if low[0] > 0 else high[0]
    at = (near, (low[1] + high[1]) / 2, (low[2] + high[2]) / 2)
    return (_report(surround, BESIDE, off[close[0]], message, cure, at, close),)


def _list_close(off: Mapping[int, float]) -> list[int]:
    """Of boards by how far off they lie those that are too close, the nearest first."""
    close = [i for i, gap in off.items() if gap < IRC_FRONT_SPACE.value - HAIR]
    return sorted(close, key=off.__getitem__)


def _say(surround: Surround, gap: float) -> tuple[str, str]:
    """How the nearest lies to the masonry, and the space that is asked for."""
    wording = Wording(surround.job.about.length_style)
    lie = "touch" if gap <= HAIR else f"lie {wording.distance(gap)} off"
    return lie, wording.distance(IRC_FRONT_SPACE.value)


def _report(
    surround: Surround, part: str, gap: float, message: str, cure: str, at: Point3, close: Sequence[int]
) -> Finding:
    return Finding(
        check=CHECK,
        rule="IRC R1001.11",
        standing=IRC_FRONT_SPACE.standing,
        source=IRC_FRONT_SPACE.source,
        status=Status.WARN,
        part=part,
        measured=max(gap, 0.0),
        limit=IRC_FRONT_SPACE.value,
        unit="in",
        message=message,
        cure=cure,
        at=at,
        boards=tuple(surround.marks[i] for i in sorted(close)),
    )


def _beside(board: Board, side: float) -> float:
    """From the facing's side to the nearest of a board that stands beyond it."""
    low, high = board.bounds
    return max(low[0], -high[0]) - side


def _list_beside_facing(surround: Surround) -> list[int]:
    """Framing beside a facing that stands proud, lower than its top."""
    layout = surround.layout
    if surround.job.site.facing.proud <= HAIR:
        return []
    return [
        i
        for i, board in enumerate(surround.boards)
        if board.stock.kind is StockKind.FRAMING
        and board.bounds[0][2] < -HAIR
        and board.bounds[0][1] < layout.facing_top - HAIR
        and _beside(board, layout.facing_side) > -HAIR
    ]


def _list_before_facing(surround: Surround) -> list[int]:
    """Framing that stands, at least in part, before the facing rather than before the wall beside it."""
    layout = surround.layout
    return [
        i
        for i, board in enumerate(surround.boards)
        if board.stock.kind is StockKind.FRAMING
        and board.bounds[0][1] < layout.facing_top - HAIR
        and board.bounds[0][0] < layout.facing_side - HAIR
        and board.bounds[1][0] > -layout.facing_side + HAIR
    ]
