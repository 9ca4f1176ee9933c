"""Which kind of rule governs a site: the masonry clauses, the appliance's manual, or none that is known."""

from __future__ import annotations

from dataclasses import replace
from enum import StrEnum

from model.check.finding import Finding, Status
from model.site import Site

MASONRY_KINDS = ("masonry", "not_in_use")
IRC, NFPA211, STRICTEST, MANUAL = "irc", "nfpa211", "strictest", "manual"
CANADA, AUSTRALIA, ENGLAND, LOCAL = "canada", "australia", "england", "local"
CLAUSES = (IRC, NFPA211, STRICTEST, CANADA)
"""What has figures of its own for wood round a masonry opening."""
APPLIANCES = {
    "factory_built": "a factory-built fireplace",
    "gas": "a gas fireplace",
    "electric": "an electric fireplace",
    "masonry": "a masonry fireplace",
    "not_in_use": "a fireplace not in use",
}
"""Each kind of fireplace as it stands in a sentence."""

_ONLY_UNUSED = (
    " It is only a caution as long as the fireplace is put out of use permanently, "
    "as the local authority accepts."
)


class Regime(StrEnum):
    """The clauses the site names, a chart that was entered, or nothing.

    UNKNOWN: masonry rules do not fit an appliance. SILENT: the rules give no figure for wood here.
    """

    MASONRY = "masonry"
    CHART = "chart"
    SILENT = "silent"
    UNKNOWN = "unknown"


def find_regime(site: Site) -> Regime:
    """What governs `site`. Masonry figures never hold for a listed appliance."""
    if site.rule == MANUAL:
        return Regime.CHART
    if site.fireplace not in MASONRY_KINDS:
        return Regime.UNKNOWN
    if site.rule == LOCAL:
        return Regime.CHART
    return Regime.MASONRY if site.rule in CLAUSES else Regime.SILENT


def ease_unused(site: Site, findings: tuple[Finding, ...]) -> tuple[Finding, ...]:
    """The same findings, failures made cautions where no fire burns any more."""
    if site.fireplace != "not_in_use":
        return findings
    return tuple(
        replace(f, status=Status.WARN, message=f.message + _ONLY_UNUSED) if f.status is Status.FAIL else f
        for f in findings
    )
