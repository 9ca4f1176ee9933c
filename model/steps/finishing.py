"""What is done to the surface, from bare wood to the last coat: with what, how much, how long it dries.

Amounts are the take-off's materials; times are the job's own rates.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from model.cutting.supplies import CLEAR_COAT, PRIMER, SEALER, STAIN, TOP_COAT
from model.job import Job
from model.look import STAINED, is_painted
from model.takeoff.materials import Material, Rate, find_rate

SHARES = 4
"""Sanding, filling, sanding the filler and caulking share the hours of finishing alike. Shop choice."""
ORDINALS = ("First", "Second", "Third", "Fourth", "Fifth", "Sixth")
"""As many coats as a job may have."""
LOOSE_NOTE = "All faces and ends; leave bare what will be glued."
STAIN_NOTE = (
    "What will show, with the grain; wipe off. Try it on an offcut first, leave bare what will be glued, "
    "and read the caution on oily rags."
)


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
    times, rates, look = job.shop.times, job.shop.rates, job.design.look
    part = times.finish / SHARES
    bare = tuple(m for m in materials if m.name == "Abrasive" and m.basis.words.startswith("bare"))
    if bare:
        yield Finish("Sand the bare wood", f"{rates.abrasive_grits} grits, with the grain.", True, part, bare)
    if look.finish == STAINED:
        stain, dry = _named(materials, STAIN), find_rate(job, "times.stain")
        yield Finish("Stain", STAIN_NOTE, True, times.coat, stain, dries=dry)
    first = ("Prime", PRIMER) if is_painted(look) else ("Seal", SEALER)
    yield from _first_coats(job, *first, _named(materials, first[1]))


def _first_coats(job: Job, does: str, name: str, taken: tuple[Material, ...]) -> Iterator[Finish]:
    """Primer or sealer, on every face."""
    coats, dry = job.shop.rates.primer_coats, _find_first_dry(job)
    for coat in range(coats):
        title = f"{does} every piece" if coats == 1 else f"{ORDINALS[coat]} coat of {name.lower()}"
        yield Finish(title, LOOSE_NOTE, True, job.shop.times.coat, taken, 1 / coats, dry)


def _find_first_dry(job: Job) -> Rate:
    return find_rate(job, "times.primer" if is_painted(job.design.look) else "times.clear")


def _after(job: Job, materials: Sequence[Material]) -> Iterator[Finish]:
    part = job.shop.times.finish / SHARES
    filler, caulk = _named(materials, "Wood filler"), _named(materials, "Caulk")
    painted = is_painted(job.design.look)
    if filler:
        places = "Nail holes, flush seams and outside corners" if painted else "Nail holes, in its colour"
        dry = find_rate(job, "times.filler")
        yield Finish(
            "Fill holes and seams" if painted else "Fill nail holes",
            f"{places}; a little proud, for it shrinks.",
            False,
            part,
            filler,
            dries=dry,
        )
        yield _sand_filler(job, part)
    if caulk:
        inside = "Inside corners of wood, and wood to masonry, wall and ceiling"
        against = "Wood to masonry, wall and ceiling, clear or in their colour"
        how = f"{inside if painted else against}; the floor is left open."
        yield Finish("Caulk", how, False, part, caulk, dries=find_rate(job, "times.caulk"))
    yield from _top_coats(job, materials)


def _sand_filler(job: Job, hours: float) -> Finish:
    """Flush; what is sanded bare is coated again as it was."""
    look, coated = job.design.look, job.shop.rates.primer_coats > 0
    again = [STAIN.lower()] if look.finish == STAINED else []
    if coated:
        again.append(PRIMER.lower() if is_painted(look) else SEALER.lower())
    touch = f"Flush; dust off, and touch bare spots with {' and '.join(again)}." if again else ""
    dry = _find_first_dry(job) if coated else find_rate(job, "times.stain") if again else None
    return Finish("Sand the filler", touch or "Flush; dust off.", False, hours, dries=dry)


def _top_coats(job: Job, materials: Sequence[Material]) -> Iterator[Finish]:
    coats, hours = job.shop.rates.top_coats, job.shop.times.coat
    between = tuple(m for m in materials if m.name == "Abrasive" and m.basis.words == "between coats")
    painted = is_painted(job.design.look)
    name, again, hard = (
        (TOP_COAT, "times.top", "times.hard") if painted else (CLEAR_COAT, "times.clear", "times.clear_hard")
    )
    taken = _named(materials, name)
    for coat in range(coats):
        last = coat == coats - 1
        dry = find_rate(job, hard if last else again)
        title = name if coats == 1 else f"{ORDINALS[coat]} {name.lower()}"
        how = "Sand lightly and dust off first." if between else "On what shows."
        if last:
            how += " Put nothing on the shelf until it is hard."
        yield Finish(title, how, False, hours, (*between, *taken), 1 / coats, dry)


def _named(materials: Sequence[Material], name: str) -> tuple[Material, ...]:
    return tuple(material for material in materials if material.name == name)
