"""Whether a plinth is as high as the baseboard that ends against it; how they meet is said in obstacles."""

from __future__ import annotations

from collections.abc import Iterator

from model.board import Board
from model.build.lines import Side
from model.build.obstacles import BASEBOARD, Obstacle
from model.check.clearance import HAIR
from model.check.finding import Finding, Status
from model.check.wording import Wording
from model.reference.joinery import OVER_BASEBOARD
from model.sentences import end_sentence
from model.surround import Surround

CHECK = "plinth height"


def check_plinths(surround: Surround) -> Iterator[Finding]:
    """Each plinth that a baseboard runs into; nothing where there is none, or no baseboard was measured."""
    layout = surround.layout
    if not layout.plinth_out:
        return
    for side in layout.sides:
        for obstacle in layout.obstacles:
            if obstacle.kind == BASEBOARD and obstacle.side == side.name and obstacle.met:
                yield _report(surround, side, obstacle)


def _report(surround: Surround, side: Side, obstacle: Obstacle) -> Finding:
    """Heights are over the floor beside it: a column on a hearth's end stands higher than it is tall."""
    wording, layout = Wording(surround.job.about.length_style), surround.layout
    has, wants = side.plinth_top - layout.floor, obstacle.y[1] - layout.floor + OVER_BASEBOARD.value
    fits = has >= wants - HAIR
    high, low = wording.pair(has, wants)
    return Finding(
        check=CHECK,
        rule=CHECK,
        standing=OVER_BASEBOARD.standing,
        source=OVER_BASEBOARD.source,
        status=Status.PASS if fits else Status.WARN,
        part=f"{side.name} plinth",
        measured=has,
        limit=wants,
        unit="in",
        message=end_sentence(
            f"The {side.name} plinth reaches {high} over the floor, the baseboard beside it {low}"
        ),
        cure="" if fits else "Make the plinths as high as the baseboard, or higher.",
        path="plinth.height",
        boards=surround.marks_of(lambda board: _is_plinth(board, side)),
    )


def _is_plinth(board: Board, side: Side) -> bool:
    """Whether it is one of the plinth's own boards on that side, its cap not among them."""
    return board.assembly == f"{side.name} column" and "plinth" in board.role and "cap" not in board.role
