"""Hidden wood at the masonry's front and sides, not plainly covered by the exception for exposed trim."""

from __future__ import annotations

from model.board import Board, StockKind
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
    needed = IRC_FRONT_SPACE.value
    close = [i for i in _list_before_facing(surround) if surround.boards[i].bounds[0][2] < needed - HAIR]
    if not close:
        return ()
    nearest = min(close, key=lambda i: surround.boards[i].bounds[0][2])
    low, high = surround.boards[nearest].bounds
    measured = max(low[2], 0.0)
    wording = Wording(surround.job.about.length_style)
    space = wording.distance(needed)
    lie = "touch" if measured <= HAIR else f"lie {wording.distance(measured)} off"
    return (
        Finding(
            check=CHECK,
            rule="IRC R1001.11",
            standing=IRC_FRONT_SPACE.standing,
            source=IRC_FRONT_SPACE.source,
            status=Status.WARN,
            part=NAILERS,
            measured=measured,
            limit=needed,
            unit="in",
            message=(
                f"The nailers {lie} the masonry's front. Wood keeps {space} off it but for exposed mantels "
                "and trim, and hidden framing is not plainly one of these."
            ),
            cure="Ask the authority having jurisdiction, or frame with steel studs instead of wood.",
            at=((low[0] + high[0]) / 2, (low[1] + high[1]) / 2, low[2]),
            boards=tuple(surround.marks[i] for i in close),
        ),
    )


def _check_sides(surround: Surround) -> tuple[Finding, ...]:
    """Only where the facing stands proud of the wall, as a chimney breast does."""
    layout, needed = surround.layout, IRC_FRONT_SPACE.value
    off = {i: _beside(surround.boards[i], layout.facing_side) for i in _list_beside_facing(surround)}
    close = {i: gap for i, gap in off.items() if gap < needed - HAIR}
    if not close:
        return ()
    nearest = min(close, key=close.__getitem__)
    measured = max(close[nearest], 0.0)
    low, high = surround.boards[nearest].bounds
    wording = Wording(surround.job.about.length_style)
    space = wording.distance(needed)
    lie = "touch" if measured <= HAIR else f"lie {wording.distance(measured)} off"
    near = low[0] if low[0] > 0 else high[0]
    return (
        Finding(
            check=CHECK,
            rule="IRC R1001.11",
            standing=IRC_FRONT_SPACE.standing,
            source=IRC_FRONT_SPACE.source,
            status=Status.WARN,
            part=BESIDE,
            measured=measured,
            limit=needed,
            unit="in",
            message=(
                f"The nailers on the wall {lie} the sides of the facing, which stands proud of it. Where "
                f"that is the masonry fireplace itself, framing keeps {space} off its sides."
            ),
            cure="Ask the authority having jurisdiction, or frame there with steel studs instead of wood.",
            at=(near, (low[1] + high[1]) / 2, (low[2] + high[2]) / 2),
            boards=tuple(surround.marks[i] for i in close),
        ),
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
