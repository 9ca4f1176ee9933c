"""Hidden wood against the masonry's front, which the exception for exposed trim does not plainly cover."""

from __future__ import annotations

from model.board import StockKind
from model.check.clearance import HAIR
from model.check.finding import Finding, Status
from model.check.part import NAILERS
from model.check.regime import IRC, STRICTEST
from model.check.wording import Wording
from model.reference.clearance import IRC_FRONT_SPACE
from model.surround import Surround

CHECK = "concealed wood"


def check_concealed(surround: Surround) -> tuple[Finding, ...]:
    """One caution when nailers lie closer to the masonry than the general rule's air space."""
    if surround.job.site.rule not in (IRC, STRICTEST):
        return ()
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
