"""Which parameters could put a finding right, and which way each would have to move.

Trying them on the model is model.check.remedy's.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from model.build.obstacles import CASING
from model.check.finding import Bound, Finding
from model.check.holding import FIXING, SAG, WEIGHED
from model.check.joinery import CHECK as JOINTS
from model.check.mantel import CHECK as MANTEL
from model.check.manuals_hearth import CHECK as HEARTH
from model.check.nailers_held import CHECK as HELD
from model.check.nailers_held import LEDGER
from model.check.panels import CHECK as PANELS
from model.check.part import BACK_BAND, BED_MOULD, FRIEZE, NAILERS, OVERMANTEL, SHELF, SLIP, stands_beside
from model.check.plain import FIT
from model.check.plinths import CHECK as PLINTHS
from model.check.television import CHECK as TELEVISION
from model.check.zone import CHECK as ZONE
from model.design import SHEET
from model.idle import list_idle
from model.parameters import BY_PATH, Kind, Value
from model.surround import Surround

MORE, LESS = 1, -1


@dataclass(frozen=True, slots=True)
class Handle:
    """A parameter, and the way in which it is moved; or the one value it is set to where `way` is 0."""

    path: str
    way: int
    value: Value = None


def list_handles(surround: Surround, finding: Finding) -> tuple[Handle, ...]:
    """What to try on a finding, in the order in which a carpenter would; empty where nothing would help."""
    tried = TRIED.get(finding.check)
    found = tried(surround, finding) if tried else ()
    return tuple(handle for handle in dict.fromkeys(found) if _has_a_say(surround, handle))


def _clear_part(surround: Surround, finding: Finding) -> Iterator[Handle]:
    return _clear(surround, finding.part)


def _enlarge(surround: Surround, finding: Finding) -> Iterator[Handle]:
    yield Handle(finding.path, MORE)


def _lower_screen(surround: Surround, finding: Finding) -> Iterator[Handle]:
    yield from (Handle("tv.gap", LESS), Handle("shelf.height", LESS), Handle("tv.away", MORE))


def _ease_pull(surround: Surround, finding: Finding) -> Iterator[Handle]:
    yield from (Handle("shelf.overhang_front", LESS), Handle("frieze.projection", MORE))
    yield Handle("nailer.ledger", MORE)


def _hold(surround: Surround, finding: Finding) -> Iterator[Handle]:
    """A ledger that reaches down to sound masonry, uprights that stand elsewhere."""
    if finding.part == LEDGER:
        yield from (Handle("nailer.ledger", MORE), Handle("shelf.height", MORE), Handle("shelf.height", LESS))
    elif "column" in finding.part:
        yield from (Handle("column.margin", LESS), Handle("column.margin", MORE))
        yield from (Handle("column.width", LESS), Handle("column.width", MORE), Handle("nailer.width", MORE))


def _stiffen(surround: Surround, finding: Finding) -> Iterator[Handle]:
    yield Handle("nailer.ledger", MORE)
    yield from (Handle("frieze.height", MORE), Handle("shelf.thickness", MORE))


def _mend_joint(surround: Surround, finding: Finding) -> Iterator[Handle]:
    if finding.path:
        yield Handle(finding.path, LESS if finding.bound is Bound.MOST else MORE)


def _make_sheets(surround: Surround, finding: Finding) -> Iterator[Handle]:
    yield Handle("panel.kind", 0, SHEET)


def _clear(surround: Surround, part: str) -> Iterator[Handle]:
    """Further out, higher up, standing out less, or left off."""
    if part == BACK_BAND:
        yield from (Handle("column.margin", MORE), Handle("back_band.size", LESS))
        yield Handle("back_band.on", 0, False)
    elif part == SLIP:
        yield from (Handle("column.margin", MORE), Handle("slip.width", LESS), Handle("slip.thickness", LESS))
        yield Handle("slip.on", 0, False)
    elif stands_beside(part):
        yield from _clear_beside(part)
    else:
        yield from _clear_above(surround, part)


def _clear_beside(part: str) -> Iterator[Handle]:
    yield Handle("column.margin", MORE)
    yield from (Handle("column.projection", LESS), Handle("raised.thickness", LESS))
    if "plinth" in part:
        yield from (Handle("plinth.projection", LESS), Handle("plinth_cap.size", LESS))
        yield from (Handle("plinth_cap.on", 0, False), Handle("plinth.on", 0, False))
    if "capital" in part:
        yield from (Handle("capital.size", LESS), Handle("capital.on", 0, False))


def _clear_above(surround: Surround, part: str) -> Iterator[Handle]:
    if part.startswith(FRIEZE):
        yield Handle("frieze.height", LESS)
    yield Handle("shelf.height", MORE)
    if part == BED_MOULD:
        yield from (Handle("bed_mould.size", LESS), Handle("bed_mould.on", 0, False))
    if part.startswith(OVERMANTEL):
        yield from (Handle("over.projection", LESS), Handle("over.on", 0, False))
    if part == SHELF:
        yield from (Handle("shelf.overhang_front", LESS), Handle("shelf.step", LESS))
    if part in (FRIEZE, f"{FRIEZE} {NAILERS}", BED_MOULD):
        yield Handle("column.projection" if surround.layout.frieze_over else "frieze.projection", LESS)
    elif part == SHELF:
        yield from (Handle("column.projection", LESS), Handle("frieze.projection", LESS))


def _fit(surround: Surround, finding: Finding) -> Iterator[Handle]:
    """Into the room there is, or down to what is drawn already."""
    for shortfall in surround.layout.shortfalls:
        if shortfall.path == finding.path:
            way = _way(shortfall.asked, shortfall.built)
            yield Handle(shortfall.path, way, None if way else shortfall.built)
    if finding.part in ("left side", "right side") or finding.part.endswith(CASING):
        yield from _narrow(finding.part.split()[0])
    elif finding.part == SHELF and finding.path == "shelf.height":
        yield Handle("shelf.height", LESS)
    elif finding.part == SHELF and finding.path == "shelf.kind":
        yield from (Handle("shelf.kind", 0, "built_up"), Handle("shelf.overhang_front", LESS))
    elif finding.part == "plinths":
        yield from (Handle("column.margin", LESS), Handle("column.margin", MORE))
        yield from (Handle("column.projection", LESS), Handle("plinth.projection", LESS))
        yield from (Handle("column.over_edge", 0, "stepped"), Handle("hearth.width", MORE))
        yield Handle("hearth.depth", MORE)
    elif finding.part == OVERMANTEL and finding.path == "over.projection":
        yield Handle("over.projection", MORE)
    elif finding.part.endswith("outlet"):
        yield from (
            Handle("column.margin", LESS),
            Handle("column.width", LESS),
            Handle("column.margin", MORE),
        )


def _narrow(side: str) -> Iterator[Handle]:
    yield Handle(f"shelf.overhang_{side}", LESS)
    yield from (Handle("column.width", LESS), Handle("column.margin", LESS))


def _way(asked: object, built: object) -> int:
    """Which way leads from what was asked to what is built; 0 where they are no numbers."""
    if isinstance(asked, bool | str) or isinstance(built, bool | str):
        return 0
    if not isinstance(asked, int | float) or not isinstance(built, int | float):
        return 0
    return LESS if asked > built else MORE


def _has_a_say(surround: Surround, handle: Handle) -> bool:
    """Whether the row changes anything now: the size of a moulding that is off does not."""
    row = BY_PATH[handle.path]
    return handle.path not in list_idle(surround.job) and (
        handle.way == 0 or row.kind in (Kind.LENGTH, Kind.COUNT)
    )


TRIED: dict[str, Callable[[Surround, Finding], Iterator[Handle]]] = {
    MANTEL: _clear_part,
    HEARTH: _enlarge,
    ZONE: _enlarge,
    PLINTHS: _enlarge,
    TELEVISION: _lower_screen,
    FIXING: _ease_pull,
    SAG: _stiffen,
    HELD: _hold,
    WEIGHED: _stiffen,
    JOINTS: _mend_joint,
    PANELS: _make_sheets,
    FIT: _fit,
}
"""What is tried on the findings of each check, by its name; nothing for a check that is not here."""
