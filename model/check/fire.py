"""What the rules about fire say: those that the sheet marks, and that come before its drawing.

What each asks stands in the file named after it; all other checks are put together in model.check.all.
"""

from __future__ import annotations

from model.check.concealed import check_concealed
from model.check.finding import Finding, Status
from model.check.hearth import check_hearth
from model.check.mantel import check_mantel
from model.check.manual import ask_for_manual, check_manual, tell_silent
from model.check.plumb import check_behind
from model.check.regime import Regime, ease_unused, find_regime
from model.check.zone import check_zone
from model.surround import Surround


def check_fire(surround: Surround) -> tuple[Finding, ...]:
    """Clearances and hearth, in no order; cautions at most where no fire burns any more."""
    fire = (*_check_clearance(surround), *check_hearth(surround))
    return ease_unused(surround.job.site, fire)


def list_fire_faults(surround: Surround) -> tuple[Finding, ...]:
    """Where those rules fail at a place, for whoever marks it: as `check_fire` has it, but without cures.

    That is wood too near the opening: what is wrong with a hearth or a facing is at no one place, and hidden
    wood and masonry that falls back are cautions.
    """
    match find_regime(surround.job.site):
        case Regime.MASONRY:
            found = check_mantel(surround, cured=False)
        case Regime.CHART:
            found = check_manual(surround, cured=False)
        case Regime.SILENT | Regime.UNKNOWN:
            found = ()
    return list_placed_faults(ease_unused(surround.job.site, found))


def list_placed_faults(findings: tuple[Finding, ...]) -> tuple[Finding, ...]:
    """Those that fail at a place."""
    return tuple(f for f in findings if f.status is Status.FAIL and f.at is not None)


def _check_clearance(surround: Surround) -> tuple[Finding, ...]:
    match find_regime(surround.job.site):
        case Regime.MASONRY:
            found = check_mantel(surround)
            return (*found, *check_behind(surround, check_mantel, found), *check_concealed(surround))
        case Regime.CHART:
            found = check_manual(surround)
            return (*found, *check_behind(surround, check_manual, found), *check_zone(surround))
        case Regime.SILENT:
            return (tell_silent(surround.job.site),)
        case Regime.UNKNOWN:
            return (ask_for_manual(surround.job.site),)
