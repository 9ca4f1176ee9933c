"""What is on the wall already, against the boards: what keeps clear of it, is cut round it, or cannot be."""

from __future__ import annotations

from dataclasses import replace

from model.board import Board
from model.build.obstacles import BASEBOARD, OUTLET, Obstacle
from model.check.clearance import HAIR
from model.check.finding import Bound, Finding, Status
from model.check.plain import FIT, build_plain
from model.check.wording import Wording
from model.site import CUT_BACK, NOTCHED
from model.surround import Surround


def check_obstacles(surround: Surround) -> tuple[Finding, ...]:
    """One finding for each obstacle that was measured."""
    wording = Wording(surround.job.about.length_style)
    return tuple(_check(surround, obstacle, wording) for obstacle in surround.layout.obstacles)


def _check(surround: Surround, obstacle: Obstacle, wording: Wording) -> Finding:
    if obstacle.kind == BASEBOARD:
        return _report_baseboard(surround, obstacle, wording)
    struck = [i for i, board in enumerate(surround.boards) if _strikes(board, obstacle)]
    if not struck:
        message = (
            f"The {obstacle.name} is clear of the surround by {wording.distance(_gap(surround, obstacle))}."
        )
        return build_plain(FIT, Status.PASS, obstacle.name, message, obstacle.path)
    boards = [surround.boards[i] for i in struck]
    most = _way_out(surround, obstacle)
    marks = tuple(surround.marks[i] for i in struck)
    one = len(marks) == 1
    verb = ("covers" if one else "cover") if obstacle.kind == OUTLET else ("runs into" if one else "run into")
    message = (
        f"{'Board' if one else 'Boards'} {', '.join(marks)} {verb} the {obstacle.name} "
        f"by {wording.distance(most)}."
    )
    cure = _cure(obstacle, boards, most, wording)
    found = build_plain(
        FIT, Status.FAIL, obstacle.name, message, obstacle.path, cure, most, 0.0, bound=Bound.MOST
    )
    return replace(found, boards=marks)


def _strikes(board: Board, obstacle: Obstacle) -> bool:
    """Whether a board lies in a casing, or over an outlet anywhere in front of it."""
    (x0, y0, z0), (x1, y1, z1) = board.bounds
    over = _overlap((x0, x1), obstacle.x) > HAIR and _overlap((y0, y1), obstacle.y) > HAIR
    if obstacle.kind == OUTLET:
        return over and z1 > obstacle.z[0] + HAIR
    return over and _overlap((z0, z1), obstacle.z) > HAIR


def _overlap(one: tuple[float, float], other: tuple[float, float]) -> float:
    return min(one[1], other[1]) - max(one[0], other[0])


def _way_out(surround: Surround, obstacle: Obstacle) -> float:
    """How far outwards the obstacle would have to lie to be clear of every board."""
    moved, sign = 0.0, -1.0 if obstacle.side == "left" else 1.0
    place = obstacle
    while struck := [_aside(board, place) for board in surround.boards if _strikes(board, place)]:
        moved += max(struck)
        place = replace(obstacle, x=(obstacle.x[0] + sign * moved, obstacle.x[1] + sign * moved))
    return moved


def _aside(board: Board, obstacle: Obstacle) -> float:
    """How far the obstacle would have to move away from the opening to be clear of the board."""
    if obstacle.side == "left":
        return obstacle.x[1] - board.bounds[0][0]
    return board.bounds[1][0] - obstacle.x[0]


def _gap(surround: Surround, obstacle: Obstacle) -> float:
    """From the nearest board beside, over or under an obstacle to it, level or plumb."""
    gaps = []
    for board in surround.boards:
        low, high = board.bounds
        if obstacle.kind != OUTLET and _overlap((low[2], high[2]), obstacle.z) <= HAIR:
            continue
        gaps.append(
            max(-_overlap((low[0], high[0]), obstacle.x), -_overlap((low[1], high[1]), obstacle.y), 0.0)
        )
    return min(gaps, default=0.0)


def _cure(obstacle: Obstacle, boards: list[Board], most: float, wording: Wording) -> str:
    if obstacle.kind == OUTLET:
        return "Have the outlet moved, or keep the boards clear of it: it has to stay within reach."
    only_shelf = all(board.assembly in ("shelf", "bed mould") for board in boards)
    what = f"the shelf's {obstacle.side} overhang" if only_shelf else f"the {obstacle.side} side"
    return f"Bring {what} in by {wording.at_least(most)}."


def _is_round(board: Board, obstacle: Obstacle) -> bool:
    """Whether a board is notched round a baseboard: that lies within its outline."""
    (x0, y0, z0), (x1, y1, z1) = board.bounds
    spans = ((x0, x1, obstacle.x), (y0, y1, obstacle.y), (z0, z1, obstacle.z))
    return bool(board.grain) and all(_overlap((low, high), span) > HAIR for low, high, span in spans)


def _report_baseboard(surround: Surround, obstacle: Obstacle, wording: Wording) -> Finding:
    """How the column meets it: never a failure, since it is cut or the column is."""
    side = surround.layout.left if obstacle.side == "left" else surround.layout.right
    tall, thick = (wording.distance(span[1] - span[0]) for span in (obstacle.y, obstacle.z))
    near = min(abs(x) for x in obstacle.x)
    marks: tuple[str, ...] = ()
    if obstacle.met == NOTCHED:
        column = f"{side.name} column"
        marks = surround.marks_of(lambda b: b.assembly == column and b.axis == "x" and _is_round(b, obstacle))
        message = (
            f"The {obstacle.name} runs on behind the column: {' and '.join(marks)} are notched {thick} deep, "
        )
        message += f"up to {tall} over the floor, and the nailers stand on it."
    elif obstacle.met == CUT_BACK:
        message = f"The {obstacle.name} is cut off square {wording.distance(near)} from the centre line, "
        foot = max(side.outer + surround.layout.plinth_out, side.sides_at(obstacle.y[1])[1])
        short = near > foot + HAIR
        message += "and ends clear of the capital." if short else "and ends against the column's foot."
    else:
        message = f"The {obstacle.name} ends clear of the column's foot."
    found = build_plain(FIT, Status.PASS, obstacle.name, message, obstacle.path)
    return replace(found, boards=marks)
