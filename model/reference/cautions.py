"""What can hurt while a surround is fitted, in a sentence each, with the publication it rests on.

Clearances themselves are checked in model.check; these are printed beside the checks.
"""

from __future__ import annotations

from dataclasses import dataclass

from model.reference.sourced import Standing


@dataclass(frozen=True, slots=True)
class Caution:
    """A hazard: what it is called, what to do about it, and where that is read."""

    name: str
    text: str
    standing: Standing
    source: str


FIRE_MASONRY = Caution(
    "Fire",
    "No wood nearer to the opening than the checks allow, hidden blocking included. "
    "No fire while work goes on.",
    Standing.PUBLISHED,
    "IRC 2018 R1001.11 and its exception 4",
)
FIRE_LISTED = Caution(
    "Fire",
    "The appliance's own manual gives the clearances; masonry figures do not apply. "
    "No fire while work goes on.",
    Standing.PUBLISHED,
    "IRC 2012 R1004.1 (factory-built); the appliance's listing",
)
FIRE_UNUSED = Caution(
    "Fire",
    "Close it off so that it cannot be lit. Before it is lit again, hold the surround to its rules.",
    Standing.COMMON_PRACTICE,
    "",
)
LEAD = Caution(
    "Lead in old paint",
    "House built before 1978: with more than 6 sq ft of painted surface disturbed in a room the "
    "renovation rule applies to work for pay; a part taken off counts with its whole surface.",
    Standing.PUBLISHED,
    "40 CFR 745.83",
)
ASBESTOS = Caution(
    "Asbestos",
    "Board, paper or cement sheet round an old fireplace, old patching compound and artificial embers "
    "may hold it. Leave sound material alone; have it tested before it is disturbed.",
    Standing.PUBLISHED,
    "US EPA, Asbestos in Your Home",
)
SILICA = Caution(
    "Silica dust",
    "Drilling masonry sets it free; the limit is 50 micrograms per cubic metre over 8 hours. "
    "Drill with a shroud and a dust collector whose filter holds back 99 %.",
    Standing.PUBLISHED,
    "29 CFR 1926.1153 and its Table 1",
)
CARBON_MONOXIDE = Caution(
    "Carbon monoxide",
    "Keep combustion air, louvres and access panels clear, and an alarm working.",
    Standing.PUBLISHED,
    "IRC 2015 R315 (alarms); the appliance's manual",
)
LIFTING = Caution(
    "Lifting",
    "51 lb held close is the most advised for one person, much less at arm's length or overhead. "
    "Lift shelf and columns with a helper, and fix them before letting go.",
    Standing.PUBLISHED,
    "NIOSH 94-110, revised lifting equation",
)

_FIRE = {"masonry": FIRE_MASONRY, "not_in_use": FIRE_UNUSED}


def list_cautions(fireplace: str) -> tuple[Caution, ...]:
    """The cautions for that kind of fireplace, as site.fireplace names it."""
    return (_FIRE.get(fireplace, FIRE_LISTED), CARBON_MONOXIDE, LEAD, ASBESTOS, SILICA, LIFTING)
