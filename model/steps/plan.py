"""All steps of one surround in order: cut, sub-assemblies on the bench, set out, nailers, all that goes up.

Which boards go on when is found in model.steps.bench and model.steps.units; how long and what to mind is
model.steps.work's and model.steps.notes'. Filling and paint are no steps with boards: see
model.steps.finishing.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence, Set
from dataclasses import replace
from functools import partial
from typing import TYPE_CHECKING, cast

from model.build.nailers import CALLED
from model.steps.bench import PARTS, Bench, Round
from model.steps.gluing_up import list_shop, take_edged
from model.steps.notes import SET_OUT, TRY_DRY, Ways, is_tacked, list_notes
from model.steps.parting import Parting
from model.steps.reach import Reach
from model.steps.step import Step, Where
from model.steps.touching import Touching, touching_of
from model.steps.units import GoingUp, Turn, Unit, list_units
from model.steps.work import Work
from model.takeoff.anchors import plan_anchors
from model.takeoff.fasteners import Means
from model.takeoff.takeoff import Takeoff

if TYPE_CHECKING:
    from model.surround import Surround

SET_OUT_TITLE, DRY_TITLE = "Set out the wall", "Try it dry"
TWINS = ("left column", "right column")
COLUMNS = "columns"
"""What is said of both columns together."""


def plan_steps(surround: Surround, takeoff: Takeoff) -> tuple[Step, ...]:
    """Every step, in order. Each board is among the `boards` of one step, each fixing in one.

    Steps, days, hours and lists ask for them one after the other: what was found last is kept with what it
    was found from.
    """
    found_from, steps = surround.worked_out.get(plan_steps, (None, ()))
    if found_from is not takeoff:
        steps = _plan_steps(surround, takeoff)
        surround.worked_out[plan_steps] = takeoff, steps
    return cast("tuple[Step, ...]", steps)


def _plan_steps(surround: Surround, takeoff: Takeoff) -> tuple[Step, ...]:
    boards = surround.boards
    touching = touching_of(surround, takeoff)
    units = list_units(boards, touching)
    bench = Bench(boards, touching, takeoff.fixings)
    reach = Reach(takeoff.surfaces)
    rounds = GoingUp(boards, touching, takeoff.fixings).order(units)
    rounds = Parting(boards, touching, takeoff.fixings, reach).part(rounds)
    built = sorted(
        (unit for own in rounds for unit in own if unit.turn is Turn.BUILT),
        key=lambda unit: next(n for n, whole in enumerate(units) if set(unit.boards) <= set(whole.boards)),
    )
    edged, chains = take_edged([list(_list_bench(unit, bench.order(unit.boards))) for unit in built], bench)
    steps = [
        *list_shop(surround, takeoff.glue_ups, edged),
        *(_singular(step) for chain in _join_twins(chains, surround) for step in chain),
    ]
    made = {i for step in steps for i in step.boards}
    steps += _list_site(rounds, surround, made)
    return _finish(_fasten(steps, takeoff), surround, takeoff, touching, reach)


def _list_bench(unit: Unit, rounds: Sequence[Round]) -> Iterator[Step]:
    """A step for each round; what goes up in one board is no work for the bench."""
    if len(unit.boards) == 1:
        return
    there: tuple[int, ...] = ()
    for own in rounds:
        if not own.joined:
            there = ()
        yield Step(Where.BENCH, _title_round(unit, own), (unit.name,), own.new, own.ready, there)
        there = (*there, *own.all)


def _title_round(unit: Unit, own: Round) -> str:
    """``Frieze: panel``; ``Shelf top`` where the part names the sub-assembly itself."""
    part = own.part if own.new or not own.ready else f"{own.part}, put on"
    return part.capitalize() if part.startswith(unit.name) else f"{unit.name.capitalize()}: {part}"


def _singular(step: Step) -> Step:
    """``Frieze: panel`` where one board is said of what are several as a rule."""
    several = {part for _, part in PARTS if part.endswith("s")}
    if len(step.put_on) == 1 and step.title.rpartition(": ")[2] in several:
        return replace(step, title=step.title.removesuffix("s"))
    return step


def _join_twins(chains: list[list[Step]], surround: Surround) -> Iterator[list[Step]]:
    """Both columns' steps together where they are made alike; every other chain as it is."""
    named = {chain[0].parts[0]: chain for chain in chains if chain}
    twins = [named.get(name) for name in TWINS]
    left, right = twins
    alike = bool(left and right) and _roles(left, surround) == _roles(right, surround)
    once = sum(bool(chain) and chain[0].parts[0] in TWINS for chain in chains) == len(TWINS)
    for chain in chains:
        if not chain or (alike and once and chain is right):
            continue
        if alike and once and chain is left and right:
            yield [_join(one, other) for one, other in zip(chain, right, strict=True)]
        else:
            yield chain


def _roles(chain: list[Step] | None, surround: Surround) -> list[list[str]]:
    return [sorted(surround.boards[i].role for i in step.put_on) for step in chain or []]


def _join(one: Step, other: Step) -> Step:
    title = one.title.replace(one.parts[0].capitalize(), f"Both {COLUMNS}")
    return replace(
        one,
        title=title,
        parts=(*one.parts, *other.parts),
        boards=(*one.boards, *other.boards),
        brought=(*one.brought, *other.brought),
        there=(*one.there, *other.there),
    )


def _list_site(rounds: Sequence[Sequence[Unit]], surround: Surround, made: Set[int]) -> Iterator[Step]:
    """Setting out, all that goes up, and the dry trial before it; `made` was put together on the bench."""
    there: tuple[int, ...] = ()
    yield Step(Where.SITE, SET_OUT_TITLE, (), notes=SET_OUT)
    tried = False
    anchors = plan_anchors(surround).anchors
    for units in rounds:
        on = tuple(i for unit in sorted(units, key=partial(_rank, surround)) for i in unit.boards)
        if units[0].turn is Turn.BUILT and not tried:
            tried = True
            built = tuple(i for own in rounds for unit in own if unit.turn is Turn.BUILT for i in unit.boards)
            yield Step(Where.SITE, DRY_TITLE, (), there=there, tried=built, notes=TRY_DRY)
        parts = tuple(dict.fromkeys(unit.name for unit in units))
        yield Step(
            Where.SITE,
            _title(units),
            parts,
            boards=tuple(i for i in on if i not in made),
            brought=tuple(i for i in on if i in made),
            there=there,
            anchors=tuple(n for n, anchor in enumerate(anchors) if anchor.board in on),
            notes=_note_parted(units[0], rounds, there, surround),
        )
        there += on


def _note_parted(
    unit: Unit, rounds: Sequence[Sequence[Unit]], there: Sequence[int], surround: Surround
) -> tuple[str, ...]:
    """Of what is set down over a part of its own sub-assembly that went up before."""
    first = [
        i
        for own in rounds
        for other in own
        if other.name == unit.name and other.part not in (other.name, unit.part)
        for i in other.boards
        if i in there and unit.turn is other.turn is Turn.BUILT
    ]
    marks = ", ".join(surround.marks[i] for i in first)
    return (f"Spread the glue and set it down over {marks}.",) if first else ()


def _rank(surround: Surround, unit: Unit) -> int:
    """Framing in the order it is fixed, everything else as it comes."""
    order, role = list(CALLED), surround.boards[unit.boards[0]].role
    return order.index(role) if role in order else len(order)


def _title(units: Sequence[Unit]) -> str:
    match units[0].turn:
        case Turn.NAILER:
            return f"Fix the {units[0].part}"
        case Turn.MOULDING:
            return f"Fit the {units[0].part}"
        case Turn.LOOSE:
            return "Fit the access panel"
        case Turn.BUILT:
            return f"Fix the {units[0].part}"


def _fasten(steps: Sequence[Step], takeoff: Takeoff) -> list[Step]:
    """Each fixing given to the first step after which both its boards are in place together."""
    open_ones = dict(enumerate(takeoff.fixings))
    done = []
    for step in steps:
        now, on = {*step.there, *step.put_on}, set(step.put_on)
        own = tuple(
            n
            for n, fixing in open_ones.items()
            if {fixing.through, fixing.into} <= now and {fixing.through, fixing.into} & on
        )
        for n in own:
            del open_ones[n]
        done.append(replace(step, fixings=own))
    return done


def _finish(
    steps: Sequence[Step], surround: Surround, takeoff: Takeoff, touching: Touching, reach: Reach
) -> tuple[Step, ...]:
    """Hours, drying times, hands and notes, now that it is known what is done when."""
    work = Work(surround, takeoff, steps)
    finished = []
    for number, step in enumerate(steps):
        later = {i for other in steps[number + 1 :] for i in other.boards}
        ways = _list_ways(step, surround, takeoff, reach)
        step = replace(step, left_out=tuple(n for n, way in ways.items() if way is None))
        notes = (*step.notes, *list_notes(step, surround, takeoff, touching, later, ways))
        hours, hands, dries = work.hours(step), work.hands(step), work.dries(step)
        finished.append(replace(step, notes=notes, hours=hours, hands=hands, dries=dries))
    return tuple(finished)


def _list_ways(step: Step, surround: Surround, takeoff: Takeoff, reach: Reach) -> Ways:
    """How each fixing of a step gets in.

    Frames are screwed on the bench from their open backs; screws into a ledger are told of by themselves.
    """
    there = {*step.there, *step.put_on}
    ways = {}
    for n in step.fixings:
        fixing = takeoff.fixings[n]
        framed = fixing.means is Means.SCREW and step.where is Where.BENCH
        if not fixing.count or framed or fixing.means is Means.LEDGER_SCREW:
            continue
        before = is_tacked(fixing, step, surround)
        present = {fixing.through, fixing.into} if before else there
        ways[n] = reach.find(fixing, present, step.where is Where.SITE and not before)
    return ways
