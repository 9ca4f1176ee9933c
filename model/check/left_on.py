"""What was left on the masonry, against the boards: what is cut round it, rests on it, or cannot avoid it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from model.build.behind import BOLT, OLD_LEDGER, ROUND_BOLT
from model.build.nailers import SHELF_NAILER
from model.build.obstacles import Obstacle
from model.check.clearance import HAIR
from model.check.finding import Bound, Finding, Status
from model.check.plain import FIT, build_plain
from model.check.wording import Wording
from model.site import KEEP, REMOVE, USE
from model.surround import Surround
from model.takeoff.bores import makes_way, stands_in


def check_left_on(surround: Surround) -> tuple[Finding, ...]:
    """One finding for an old ledger, and one for each bolt."""
    wording = Wording(surround.job.about.length_style)
    found = [_check(surround, obstacle, wording) for obstacle in surround.layout.behind]
    return (*_report_removed(surround), *found, *_check_own_ledger(surround, wording))


def _report_removed(surround: Surround) -> Iterator[Finding]:
    old = surround.job.site.old_ledger
    if old.top is not None and old.use == REMOVE:
        message = "The old ledger comes off before work begins; nothing is cut round it."
        yield build_plain(FIT, Status.PASS, OLD_LEDGER, message, "old_ledger.use")


def _check(surround: Surround, obstacle: Obstacle, wording: Wording) -> Finding:
    struck = [i for i, board in enumerate(surround.boards) if stands_in(board, obstacle)]
    hit = [i for i in struck if not makes_way(surround.boards[i], obstacle)]
    if hit:
        return _report_hit(surround, obstacle, hit, wording)
    cut = [i for i in _list_notched(surround, obstacle) if i not in struck]
    marks = tuple(surround.marks[i] for i in (*cut, *struck))
    words = [_say(surround, cut, "notched round it"), _say(surround, struck, "bored over it")]
    done = " and ".join(part for part in words if part)
    way = f": {done}" if done else " and meets no board"
    message = f"The {obstacle.name} stays {_where(obstacle, wording)}{way}."
    if obstacle.met == USE:
        gap = surround.layout.shelf_bottom - obstacle.y[1]
        packed = "" if gap <= HAIR else f", packed up {wording.distance(gap)}"
        message += (
            f" The shelf rests on it{packed}; what holds it to the masonry is counted in no anchor plan."
        )
    return replace(build_plain(FIT, Status.PASS, obstacle.name, message, obstacle.path), boards=marks)


def _say(surround: Surround, places: Sequence[int], verb: str) -> str:
    if not places:
        return ""
    marks = ", ".join(surround.marks[i] for i in places)
    return f"{marks} {'is' if len(places) == 1 else 'are'} {verb}"


def _where(obstacle: Obstacle, wording: Wording) -> str:
    """Where it is, as it was measured."""
    if obstacle.kind == OLD_LEDGER:
        return f"with its top {wording.mark(obstacle.y[1])} over the hearth"
    x, y = (sum(span) / 2 for span in (obstacle.x, obstacle.y))
    side = f" to the {obstacle.side}" if abs(x) > HAIR else ""
    return f"{wording.mark(abs(x))}{side} of the centre line, {wording.mark(y)} over the hearth"


def _list_notched(surround: Surround, obstacle: Obstacle) -> list[int]:
    """Boards sawn to shape whose outline takes the obstacle in, though their wood does not."""
    places = []
    for i, board in enumerate(surround.boards):
        low, high = board.bounds
        spans = (obstacle.x, obstacle.y, obstacle.z)
        grow = ROUND_BOLT if obstacle.kind == BOLT else 0.0
        inside = all(min(high[k], spans[k][1]) - max(low[k], spans[k][0]) > HAIR - grow for k in range(3))
        if board.grain and inside:
            places.append(i)
    return places


def _report_hit(surround: Surround, obstacle: Obstacle, hit: Sequence[int], wording: Wording) -> Finding:
    """How far it stands in the boards that cannot be cut round it, and what it may stand out at most."""
    free = min(surround.boards[i].bounds[0][2] for i in hit) - obstacle.z[0]
    free = max(free, 0.0)
    amount = obstacle.z[1] - obstacle.z[0] - free
    marks = tuple(surround.marks[i] for i in hit)
    one = len(marks) == 1
    message = (
        f"The {obstacle.name} stands {wording.distance(amount)} into "
        f"{'board' if one else 'boards'} {', '.join(marks)}, which cannot be cut round it."
    )
    what = "Take it off" if obstacle.kind == OLD_LEDGER else "Cut it off flush with the masonry"
    less = f", or let it stand out no more than {wording.at_most(free)}" if free > wording.step else ""
    out = obstacle.z[1] - obstacle.z[0]
    found = build_plain(
        FIT,
        Status.FAIL,
        obstacle.name,
        message,
        obstacle.path,
        f"{what}{less}.",
        out,
        free,
        bound=Bound.MOST,
    )
    return replace(found, boards=marks)


def _check_own_ledger(surround: Surround, wording: Wording) -> Iterator[Finding]:
    """A ledger that is built over, and leaves the new one no room where it runs."""
    layout = surround.layout
    old = next((o for o in layout.behind if o.met == KEEP), None)
    if old is None or not layout.strips[0]:
        return
    own = [b.bounds for b in surround.boards if b.role == SHELF_NAILER]
    missing = 2 * layout.column_inner - sum(high[0] - low[0] for low, high in own)
    if missing > layout.column_inner:
        over = wording.distance(missing)
        message = f"The old ledger leaves no room for a new one: the shelf lies free over {over}."
        cure = "Use the old one, or take it off."
        yield build_plain(FIT, Status.WARN, OLD_LEDGER, message, "old_ledger.use", cure)
