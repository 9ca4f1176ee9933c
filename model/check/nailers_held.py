"""Whether every nailer is held: which find no sound place for an anchor, or too few, why, and what helps.

Where anchors go is model.takeoff.anchor_places'.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from model.board import Board
from model.build.lines import Layout
from model.build.nailers import CALLED, SHELF_NAILER
from model.check.clearance import HAIR
from model.check.finding import Bound, Finding, Status
from model.check.part import FRIEZE, NAILERS, name_part
from model.check.wording import Wording
from model.reference.anchors import EDGE, FULL_EDGE, LEAST_APART, OFF_FACING, WOOD_EDGE
from model.sentences import join_words
from model.surround import Surround
from model.takeoff.anchor_places import list_nailers
from model.takeoff.anchors import AnchorPlan, measure_free, plan_anchors

CHECK = "nailers held"
LEDGER, CLEAT = CALLED[SHELF_NAILER], CALLED["soffit nailer"]
"""What findings call the two level nailers behind the frieze."""
BLOCKED = 12.0
"""Most between two uprights of a column that blocks make one, in. Shop choice."""
ON_BLOCKING = (
    "block it out from framing in the wall, or carry it on uprights that are anchored, with wood that is in "
    "no list here"
)


def check_nailers_held(surround: Surround) -> Iterator[Finding]:
    """For each part one whose nailers are not all held; one that says so where all of them are."""
    plan = plan_anchors(surround)
    parts: dict[str, list[int]] = {}
    for i in sorted((*plan.loose, *plan.partly)):
        parts.setdefault(_name(surround.boards[i]), []).append(i)
    for part, places in parts.items():
        yield _report(surround, plan, part, places)
    every = list_nailers(surround)
    if every and not parts:
        yield _build(surround, NAILERS, Status.PASS, f"Nailers: {len(every)}, and each has its anchors.", ())


def _name(board: Board) -> str:
    if name_part(board) == f"{FRIEZE} {NAILERS}":
        return LEDGER if board.role == SHELF_NAILER else CLEAT
    return name_part(board)


def _report(surround: Surround, plan: AnchorPlan, part: str, places: Sequence[int]) -> Finding:
    loose = [i for i in places if i in plan.loose]
    partly = [i for i in places if i in plan.partly]
    said = [*_say_loose(surround, loose), *_say_partly(surround, plan, partly)]
    hardest = min(places, key=lambda i: _find_edge(surround.layout, surround.boards[i]))
    path, cure = _find_cure(surround, plan, part, hardest)
    return _build(surround, part, Status.WARN, " ".join(said), places, path, cure, not loose)


def _build(
    surround: Surround,
    part: str,
    status: Status,
    message: str,
    places: Sequence[int],
    path: str = "",
    cure: str = "",
    partly: bool = False,
) -> Finding:
    wanting = status is not Status.PASS and not partly
    return Finding(
        check=CHECK,
        rule="an anchor for every nailer",
        standing=EDGE.standing,
        source=f"{EDGE.source}; distances in the nailer and beside the facing are shop choices",
        status=status,
        part=part,
        measured=0.0 if wanting else None,
        limit=1.0 if wanting else None,
        unit="",
        message=message,
        cure=cure,
        boards=tuple(surround.marks[i] for i in places),
        path=path,
        bound=Bound.LEAST,
    )


def _say_loose(surround: Surround, places: Sequence[int]) -> Iterator[str]:
    if places:
        marks = join_words([surround.marks[i] for i in places])
        one = len(places) == 1
        finds, hung = ("finds", "it as it is") if one else ("find", "them as they are")
        why = _say_why(surround, places[0])
        yield f"{marks} {finds} no sound place for an anchor: {why}. Nothing may be hung on {hung}."


def _say_partly(surround: Surround, plan: AnchorPlan, places: Sequence[int]) -> Iterator[str]:
    wording = Wording(surround.job.about.length_style)
    for i in places:
        own = [anchor for anchor in plan.anchors if anchor.board == i]
        free = wording.distance(measure_free(surround.boards[i], own))
        count = "1 anchor" if len(own) == 1 else f"{len(own)} anchors"
        yield f"{surround.marks[i]} has {count} only; {free} of it lie free: {_say_why(surround, i)}."


def _say_why(surround: Surround, i: int) -> str:
    """What keeps anchors out of a nailer, or out of what lies free of it."""
    layout, rule = surround.layout, surround.job.design.anchor
    wording, board = Wording(surround.job.about.length_style), surround.boards[i]
    edge, off = wording.distance(rule.edge), wording.distance(OFF_FACING.value)
    near, low, far, high = _reach(board)
    over = layout.opening_top + max(rule.edge, rule.lintel)
    if board.bounds[0][2] not in (layout.wall, 0.0):
        return "its back lies neither on the facing nor on the wall"
    if board.bounds[0][2] != 0.0:
        return f"framing for a screw begins {off} off the facing's edge"
    if near > layout.facing_side - rule.edge + HAIR:
        return f"{_say_past(near > layout.facing_side, 'side')}, and an anchor keeps {edge} off that"
    if low > layout.facing_top - rule.edge + HAIR:
        return f"{_say_past(low > layout.facing_top, 'top')}, and an anchor keeps {edge} off that"
    if near < layout.opening_side + rule.edge - HAIR and low < over - HAIR:
        above = wording.distance(over - layout.opening_top)
        return f"an anchor keeps {edge} off the opening and {above} over it"
    if far > layout.facing_side - rule.edge or high > layout.facing_top - rule.edge:
        return f"an anchor keeps {edge} off the facing's edges"
    return f"bolts, or anchors {wording.distance(LEAST_APART.value)} off, take up the room"


def _say_past(is_past: bool, edge: str) -> str:
    return f"it lies {'past' if is_past else 'at'} the facing's {edge} edge"


def _reach(board: Board) -> tuple[float, float, float, float]:
    """Nearest to the centre line, lowest, furthest from the centre line and highest that an anchor may go
    through a nailer, in., its own edges left."""
    (x0, y0, _), (x1, y1, _) = board.bounds
    i = 1 if board.length_axis == "y" else 0
    inset = [min(WOOD_EDGE.value, (x1 - x0) / 2), 0.0] if i else [0.0, min(WOOD_EDGE.value, (y1 - y0) / 2)]
    low, high = x0 + inset[0], x1 - inset[0]
    near = 0.0 if low <= 0.0 <= high else min(abs(low), abs(high))
    return near, y0 + inset[1], max(abs(low), abs(high)), y1 - inset[1]


def _find_cure(surround: Surround, plan: AnchorPlan, part: str, i: int) -> tuple[str, str]:
    """The parameter that could put a nailer right, and a sentence of what to do."""
    layout, board = surround.layout, surround.boards[i]
    if part == LEDGER:
        return "nailer.ledger", _cure_ledger(surround, board)
    if part == CLEAT:
        return "nailer.cleat", f"Make it higher or set it elsewhere, or {ON_BLOCKING}."
    enough = _find_edge(layout, board)
    if FULL_EDGE.value - HAIR <= enough < surround.job.design.anchor.edge:
        wording = Wording(surround.job.about.length_style)
        return (
            "anchor.edge",
            f"Plan with {wording.at_most(enough)} off an edge: the guide gives the full load from "
            f"{wording.distance(FULL_EDGE.value)}. Pull-test one there.",
        )
    mate = _find_mate(surround, plan, i)
    if mate is None:
        return "column.margin", f"Move the columns, or {ON_BLOCKING}."
    return (
        "column.margin",
        f"Screw it to {surround.marks[mate]} with blocks of framing at foot, middle and top, which are in no "
        "list here, or move the columns.",
    )


def _cure_ledger(surround: Surround, board: Board) -> str:
    """As high as it would have to be to reach down to sound masonry."""
    layout, wording = surround.layout, Wording(surround.job.about.length_style)
    sound = layout.facing_top - surround.job.design.anchor.edge
    needed = board.bounds[1][1] - sound + WOOD_EDGE.value
    if board.bounds[0][2] != 0.0 or needed <= board.width + HAIR:
        return f"Set the shelf higher or lower, or {ON_BLOCKING}."
    high = wording.at_least(needed)
    return f"Make the ledger {high} high, so that it reaches sound masonry, or {ON_BLOCKING}."


def _find_edge(layout: Layout, board: Board) -> float:
    """From the facing's side edge to the furthest from it that an anchor may go through an upright, in."""
    near, *_ = _reach(board)
    return layout.facing_side - near if board.bounds[0][2] == 0.0 else 0.0


def _find_mate(surround: Surround, plan: AnchorPlan, i: int) -> int | None:
    """An upright beside it in the same column that is held and lies in the same plane."""
    low, high = surround.boards[i].bounds
    for other in list_nailers(surround):
        board = surround.boards[other]
        its_low, its_high = board.bounds
        apart = max(its_low[0] - high[0], low[0] - its_high[0])
        alike = board.role == surround.boards[i].role and its_low[2] == low[2] and its_low[1] < high[1]
        if alike and other != i and other not in (*plan.loose, *plan.partly) and apart <= BLOCKED:
            return other
    return None
