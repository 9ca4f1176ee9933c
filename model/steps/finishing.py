"""What is done to the surface, from bare wood to the last coat: with what, how much, how long it dries.

Amounts are the take-off's materials; times are the job's own rates.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from model.job import Job
from model.takeoff.materials import Material, Rate, find_rate

SHARES = 4
"""Sanding, filling, sanding the filler and caulking share the hours of finishing alike. Shop choice."""
ORDINALS = ("First", "Second", "Third", "Fourth", "Fifth", "Sixth")
"""As many coats as a job may have."""
LOOSE_NOTE = "All faces and ends; leave bare what will be glued."


@dataclass(frozen=True, slots=True)
class Finish:
    """One step. `materials` are lines of the take-off of which `share`, a part of 1, is used here.

    `loose` is done before anything is put together. `hours` is work, `dries` the rate that is waited for.
    """

    title: str
    how: str
    loose: bool
    hours: float
    materials: tuple[Material, ...] = ()
    share: float = 1.0
    dries: Rate | None = None

    @property
    def waits(self) -> float:
        """Hours before the next work on it."""
        return self.dries.value if self.dries else 0.0


def list_finishing(job: Job, materials: Sequence[Material]) -> tuple[Finish, ...]:
    """Every step in order; what takes no material and no coat is left out."""
    return (*_before(job, materials), *_after(job, materials))


def _before(job: Job, materials: Sequence[Material]) -> Iterator[Finish]:
    times, rates = job.shop.times, job.shop.rates
    part = times.finish / SHARES
    bare = tuple(m for m in materials if m.name == "Abrasive" and m.basis.words.startswith("bare"))
    if bare:
        yield Finish("Sand the bare wood", f"{rates.abrasive_grits} grits, with the grain.", True, part, bare)
    primer = _named(materials, "Primer")
    for coat in range(rates.primer_coats):
        title = "Prime every piece" if rates.primer_coats == 1 else f"{ORDINALS[coat]} coat of primer"
        dry, share = find_rate(job, "times.primer"), 1 / rates.primer_coats
        yield Finish(title, LOOSE_NOTE, True, times.coat, primer, share, dry)


def _after(job: Job, materials: Sequence[Material]) -> Iterator[Finish]:
    part = job.shop.times.finish / SHARES
    filler, caulk = _named(materials, "Wood filler"), _named(materials, "Caulk")
    if filler:
        how = "Nail holes, flush seams and outside corners; a little proud, for it shrinks."
        yield Finish("Fill holes and seams", how, False, part, filler, dries=find_rate(job, "times.filler"))
        touched = find_rate(job, "times.primer") if job.shop.rates.primer_coats else None
        how = "Flush; dust off, and touch bare spots with primer." if touched else "Flush; dust off."
        yield Finish("Sand the filler", how, False, part, dries=touched)
    if caulk:
        how = "Inside corners of wood, and wood to masonry, wall and ceiling; the floor is left open."
        yield Finish("Caulk", how, False, part, caulk, dries=find_rate(job, "times.caulk"))
    yield from _top_coats(job, materials)


def _top_coats(job: Job, materials: Sequence[Material]) -> Iterator[Finish]:
    coats, hours = job.shop.rates.top_coats, job.shop.times.coat
    between = tuple(m for m in materials if m.name == "Abrasive" and m.basis.words == "between coats")
    paint = _named(materials, "Top coat")
    for coat in range(coats):
        last = coat == coats - 1
        dry = find_rate(job, "times.hard" if last else "times.top")
        title = "Top coat" if coats == 1 else f"{ORDINALS[coat]} top coat"
        how = "Sand lightly and dust off first." if between else "On what shows."
        if last:
            how += " Put nothing on the shelf until it is hard."
        yield Finish(title, how, False, hours, (*between, *paint), 1 / coats, dry)


def _named(materials: Sequence[Material], name: str) -> tuple[Material, ...]:
    return tuple(material for material in materials if material.name == name)
