"""What to mind in a step, found from what touches what, what is driven where and what is hidden later."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence, Set
from typing import TYPE_CHECKING

from model.board import StockKind
from model.build.behind import find_used
from model.build.groove import is_floating
from model.build.nailers import CALLED, PACKING
from model.build.obstacles import BASEBOARD
from model.build.shelf import SHELF
from model.reference.nails import MOST_THROUGH, SCREW_SPACING, SCREW_THREAD
from model.reference.times import GLUE_OPEN
from model.sentences import capitalise, join_words
from model.steps.reach import How, Way
from model.steps.step import Step, Where
from model.steps.touching import Touching
from model.takeoff.anchor_places import MASONRY
from model.takeoff.anchors import plan_anchors
from model.takeoff.contacts import TOUCHING
from model.takeoff.fasteners import Fixing, Means
from model.takeoff.standing import CEILING, FACING, FLOOR, HEARTH, WALL
from model.takeoff.takeoff import Takeoff
from model.takeoff.weight import describe_lift
from model.units import format_length

if TYPE_CHECKING:
    from model.surround import Surround

SET_OUT = (
    "Snap a level line at the shelf's underside and a plumb one on its middle.",
    "Find the studs beside the masonry; mark every anchor from the sheet of anchors, off cracks and joints "
    "that crumble.",
    "Drill one hole and pull-test one anchor before drilling the rest.",
)
TRY_DRY = (
    "Set columns, frieze and shelf without a nail; check plumb, level and diagonals.",
    "Scribe feet and backs to hearth and masonry, take down, cut, and try once more.",
)
SCREWED = (Means.SCREW, Means.LEDGER_SCREW)
"""What has a way of its own to be driven."""
FITTED = (FACING, WALL, HEARTH, FLOOR, BASEBOARD, CEILING)

Ways = Mapping[int, Way | None]
"""By the place of a fixing how it is driven; None where it cannot be."""


def list_notes(
    step: Step, surround: Surround, takeoff: Takeoff, touching: Touching, later: Set[int], ways: Ways
) -> tuple[str, ...]:
    """Sentences for one step; `later` are the boards that no step up to this one has put together.

    `ways` says for each of its fixings with anything driven how that gets in.
    """
    fixings = [takeoff.fixings[n] for n in step.fixings]
    return (
        *_note_frame(step, fixings),
        *_note_panels(step, surround),
        *_note_edges(step, surround, fixings),
        *_note_glue(step, fixings),
        *_note_sides(step, surround, takeoff, ways),
        *_note_inside(step, surround, takeoff, ways),
        *_note_left_out(step, surround, takeoff),
        *_note_hidden(fixings, touching, later),
        *_note_ledger(step, surround, fixings),
        *_note_old_ledger(step, surround),
        *_note_anchors(step, surround),
        *_note_site(step, surround, touching),
        *_note_lift(step, takeoff),
    )


def _note_frame(step: Step, fixings: list[Fixing]) -> Iterator[str]:
    if any(f.means is Means.SCREW for f in fixings) and step.where is Where.BENCH:
        yield "Face down on a flat bench; both diagonals equal before the glue sets."


def _note_panels(step: Step, surround: Surround) -> Iterator[str]:
    """Of solid panels, which go in as their frame is put together, and of mouldings on them."""
    if step.where is not Where.BENCH:
        return
    boards = surround.boards
    panels = [i for i in step.boards if is_floating(boards[i])]
    if panels:
        which = join_words([surround.marks[i] for i in panels])
        yield f"Slide {which} dry into the grooves before the frame closes, edges and faces finished first."
        yield "No glue on them: centre them, then one pin from behind in the middle of each end."
        yield "Where a groove runs out at an end that shows, glue a slip of wood into it."
    elif any("panel mould" in boards[i].role for i in step.boards) and any(
        is_floating(boards[i]) for i in step.there
    ):
        yield "Nail and glue to stiles and rails only: the panels behind have to move."


def _note_edges(step: Step, surround: Surround, fixings: list[Fixing]) -> Iterator[str]:
    """Of boards glued edge to edge with nothing driven, but where that is a step of its own."""
    if step.wide:
        return
    on = set(step.boards)
    edged = [f for f in fixings if f.means is Means.NONE and f.glue > 0 and {f.through, f.into} <= on]
    if any(surround.boards[f.through].role == surround.boards[f.into].role for f in edged):
        yield "Glue edge to edge in clamps; plane flush when dry."


def _note_glue(step: Step, fixings: list[Fixing]) -> Iterator[str]:
    if step.glued or any(f.glue for f in fixings):
        yield f"The glue grabs in {GLUE_OPEN.value:.0f} minutes: lay everything out first."


def _note_sides(step: Step, surround: Surround, takeoff: Takeoff, ways: Ways) -> Iterator[str]:
    """Where the board that would be nailed through is out of reach: how it is fastened instead."""
    turned = [way.through for way in ways.values() if way and way.how is How.TURNED]
    if turned and step.where is Where.BENCH:
        yield f"Nail through {_join_marks(turned, surround)}: the other side is closed here."
    slanting: dict[tuple[bool, str], list[int]] = {}
    for n, way in ways.items():
        if way and way.how is How.SLANTING:
            is_screw = takeoff.fixings[n].means is Means.SCREW
            slanting.setdefault((is_screw, way.side), []).append(n)
    for (is_screw, side), own in slanting.items():
        pairs = [_sort_pair(takeoff.fixings[n], ways[n]) for n in own]
        through, into = (_join_marks(boards, surround) for boards in zip(*pairs, strict=True))
        verb, after = ("Screw", "plug the heads") if is_screw else ("Nail", "straight is closed here")
        yield f"{verb} slanting through {through} into {into}, from {side}: {after}."


def _note_inside(step: Step, surround: Surround, takeoff: Takeoff, ways: Ways) -> Iterator[str]:
    """Nails on site from a side that does not show afterwards, and packing tacked to a back."""
    if step.where is Where.BENCH:
        return
    fixings = {n: takeoff.fixings[n] for n in ways}
    tacked = [f for f in fixings.values() if is_tacked(f, step, surround)]
    if tacked:
        packing, framing = (_join_marks(own, surround) for own in zip(*map(_pair, tacked), strict=True))
        yield f"Tack {packing} to the back of {framing} before it is drawn tight."
    told = [
        way
        for n, way in ways.items()
        if way and fixings[n] not in tacked and (way.how is How.TURNED or _is_hidden(fixings[n], way))
    ]
    for side in dict.fromkeys(way.side for way in told):
        which = _join_marks([way.through for way in told if way.side == side], surround)
        yield f"Nail through {which} from {side}."


def _is_hidden(fixing: Fixing, way: Way) -> bool:
    """Whether it goes straight in through a face that does not show when all is done."""
    return way.how is How.STRAIGHT and not fixing.shows


def _note_left_out(step: Step, surround: Surround, takeoff: Takeoff) -> Iterator[str]:
    """What nothing gets at: glue holds it, or what else is driven."""
    left_out = [takeoff.fixings[n] for n in step.left_out]
    if step.where is Where.SITE and left_out and not any(takeoff.fixings[n].count for n in step.driven):
        yield "Nothing that is planned holds it here: try it dry, and find a fixing for it before it goes up."
        return
    for glued, words in ((True, "by glue alone"), (False, "by what else is driven")):
        own = [f for f in left_out if bool(f.glue) is glued]
        pairs = [f"{surround.marks[f.through]} on {surround.marks[f.into]}" for f in own]
        if pairs:
            yield f"No tool gets at {join_words(list(dict.fromkeys(pairs)))}: held {words}."


def is_tacked(fixing: Fixing, step: Step, surround: Surround) -> bool:
    """Whether packing is tacked to the framing before it, ahead of both going up in this step."""
    pair = {fixing.through, fixing.into}
    kinds = {surround.boards[i].stock.kind for i in pair}
    packs = any(surround.boards[i].role.endswith("packing") for i in pair)
    return step.where is Where.SITE and pair <= set(step.boards) and packs and StockKind.FRAMING in kinds


def _sort_pair(fixing: Fixing, way: Way | None) -> tuple[int, int]:
    """The board it goes through, then the one it goes into."""
    pair = _pair(fixing)
    return pair if way is None or way.through == pair[0] else pair[::-1]


def _pair(fixing: Fixing) -> tuple[int, int]:
    return fixing.through, fixing.into


def _join_marks(boards: Sequence[int], surround: Surround) -> str:
    return join_words([surround.marks[i] for i in dict.fromkeys(boards)])


def _note_hidden(fixings: list[Fixing], touching: Touching, later: Set[int]) -> Iterator[str]:
    hidden = sum(
        f.count
        for f in fixings
        if f.count
        and f.means is not Means.LEDGER_SCREW
        and (f.means is Means.SCREW or not touching.is_open(f.through, f.into, later))
    )
    nailed = any(f.means not in SCREWED for f in fixings if f.count)
    if hidden and nailed and later:
        yield "Set every head now: later boards cover some of them."


def _note_ledger(step: Step, surround: Surround, fixings: list[Fixing]) -> Iterator[str]:
    """How the shelf is screwed down: through what lies over the board on the ledger, or deep in that."""
    boards, marks = surround.boards, surround.marks
    for through in dict.fromkeys(f.through for f in fixings if f.means is Means.LEDGER_SCREW):
        into = [f.into for f in fixings if f.means is Means.LEDGER_SCREW and f.through == through]
        ledgers = join_words([marks[i] for i in into])
        cover = _find_cover(surround, through, into[0])
        if cover is not None and cover not in (*step.there, *step.put_on):
            yield f"Countersink the screws through {marks[through]} into {ledgers}, clear of the ribs."
        elif cover is not None:
            yield (
                f"Clear of the ribs, bore {marks[cover]} over each screw for the driver, screw "
                f"{marks[through]} down to {ledgers}, and plug the holes."
            )
        elif boards[through].extent("y") > MOST_THROUGH.value:
            left = format_length(MOST_THROUGH.value, surround.job.about.length_style)
            yield f"Counterbore {marks[through]} until {left} is left, screw it to {ledgers}, and plug it."
        else:
            yield f"Countersink the screws through {marks[through]} into {ledgers} deep enough to be filled."


def _note_old_ledger(step: Step, surround: Surround) -> Iterator[str]:
    """Screws into an old ledger that carries the shelf: what is no board here is in no list."""
    packed = any(board.role == PACKING for board in surround.boards)
    begun = any(surround.boards[i].assembly == SHELF for i in step.there)
    shelf = step.where is Where.SITE and SHELF in step.parts and not begun
    if shelf and find_used(surround.layout.behind) and not packed:
        style = surround.job.about.length_style
        apart, deep = (format_length(each.value, style) for each in (SCREW_SPACING, SCREW_THREAD))
        yield f"Screw it to the old ledger too, every {apart} and {deep} deep: no list has those screws."


def _find_cover(surround: Surround, through: int, into: int) -> int | None:
    """The highest board of the shelf over where one rests on the ledger, None where its own top is free."""
    under, ledger = surround.boards[through], surround.boards[into]
    low = [max(under.bounds[0][k], ledger.bounds[0][k]) for k in range(3)]
    high = [min(under.bounds[1][k], ledger.bounds[1][k]) for k in range(3)]
    over = [
        i
        for i, board in enumerate(surround.boards)
        if board.assembly == under.assembly
        and board.bounds[0][1] >= under.bounds[1][1] - TOUCHING
        and all(min(board.bounds[1][k], high[k]) - max(board.bounds[0][k], low[k]) > TOUCHING for k in (0, 2))
    ]
    return max(over, key=lambda i: surround.boards[i].bounds[1][1], default=None)


def _note_anchors(step: Step, surround: Surround) -> Iterator[str]:
    plan = plan_anchors(surround)
    anchors = plan.anchors
    for places, words in (
        (plan.loose, "No sound place for an anchor was found for {}"),
        (plan.partly, "Too few sound places for anchors were found for {}"),
    ):
        bare = [surround.marks[i] for i in step.boards if i in places]
        if bare:
            yield f"{words.format(join_words(bare))}: hold it as the sheet of checks says before it is used."
    if not step.anchors:
        return
    roles = {surround.boards[i].role for i in step.boards}
    named = [called for role, called in CALLED.items() if role in roles]
    if len(named) > 1:
        yield f"{capitalise(', then the '.join(named))}, all to the level line."
    anchors = plan_anchors(surround).anchors
    if any(anchors[n].into == MASONRY for n in step.anchors):
        yield "Drill wet or with a vacuum and wear a mask: masonry dust holds silica."
    framing = [i for i in step.boards if surround.boards[i].stock.kind is StockKind.FRAMING]
    if framing:
        yield "Shim to one plane before the anchors are drawn tight; check with a straightedge."


def _note_site(step: Step, surround: Surround, touching: Touching) -> Iterator[str]:
    if step.where is Where.BENCH or step.anchors:
        return
    roles = {role for i in step.put_on for role in touching.site.get(i, frozenset())}
    fitted = [role for role in FITTED if role in roles]
    built = any(surround.boards[i].stock.kind is not StockKind.MOULDING for i in step.put_on)
    if fitted and built:
        yield f"Scribed to {join_words(fitted)}; check plumb and level before the first nail is set."


def _note_lift(step: Step, takeoff: Takeoff) -> Iterator[str]:
    if step.where is Where.BENCH or not step.brought:
        return
    for load in takeoff.loads:
        if load.name in step.parts and load.people != 1:
            yield f"Lifting: {describe_lift(load)}."
