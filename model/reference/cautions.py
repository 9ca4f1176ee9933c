"""What can hurt while a surround is fitted: what to do about it, where that is read, and who decides.

Which of them concern a job is worked out in model.cautions; clearances themselves are checked in model.check.
"""

from __future__ import annotations

from dataclasses import dataclass

from model.reference.sourced import Sourced, Standing


@dataclass(frozen=True, slots=True)
class Caution:
    """A hazard: what it is called, what to do about it, where that is read, and whose word goes before it."""

    name: str
    text: str
    standing: Standing
    source: str
    decides: str


OFFICIAL = "The adopted local code and the building official"
MANUAL = "The appliance's manual and the building official"
FIRE_MASONRY = Caution(
    "Fire",
    "No wood nearer to the opening than the checks allow, hidden blocking included. "
    "No fire while work goes on.",
    Standing.PUBLISHED,
    "IRC 2018 R1001.11 and its exception 4",
    OFFICIAL,
)
FIRE_LISTED = Caution(
    "Fire",
    "The appliance's own manual gives the clearances; masonry figures do not apply. "
    "No fire while work goes on.",
    Standing.PUBLISHED,
    "IRC 2012 R1004.1 (factory-built); the appliance's listing",
    MANUAL,
)
FIRE_UNUSED = Caution(
    "Fire",
    "Close it off so that it cannot be lit. Before it is lit again, hold the surround to its rules.",
    Standing.COMMON_PRACTICE,
    "",
    OFFICIAL,
)
LEAD = Caution(
    "Lead in old paint",
    "House built before 1978: with more than 6 sq ft of painted surface disturbed in a room the "
    "renovation rule applies to work for pay; a part taken off counts with its whole surface, and work in "
    "one room within 30 days is added up.",
    Standing.PUBLISHED,
    "40 CFR 745.83",
    "A certified renovator; the state's own program where there is one",
)
RAGS = Caution(
    "Oily rags",
    "Rags with oil stain or varnish on them can heat up and catch fire by themselves: spread them flat "
    "outdoors to dry, or keep them under water in a closed metal can. Air the room; no flame near it.",
    Standing.COMMON_PRACTICE,
    "",
    "The can's label and safety data sheet",
)
ASBESTOS = Caution(
    "Asbestos",
    "Board, paper or cement sheet round an old fireplace, old patching compound and artificial embers "
    "may hold it. Leave sound material alone; have it tested before it is disturbed, and taken out by "
    "trained people.",
    Standing.PUBLISHED,
    "US EPA, Asbestos in Your Home",
    "An accredited inspector",
)
SILICA = Caution(
    "Silica dust",
    "Drilling masonry sets it free; the limit is 50 micrograms per cubic metre over 8 hours. "
    "Drill with a shroud and a dust collector whose filter holds back 99 %, and clean holes with a HEPA "
    "vacuum, not by blowing.",
    Standing.PUBLISHED,
    "29 CFR 1926.1153 and its Table 1",
    "The employer's own exposure control plan",
)
CARBON_MONOXIDE = Caution(
    "Carbon monoxide",
    "Keep combustion air, louvres and access panels clear, and an alarm working outside the bedrooms.",
    Standing.PUBLISHED,
    "IRC 2015 R315 (alarms); the appliance's manual",
    MANUAL,
)
LIFTING = Caution(
    "Lifting",
    "51 lb held close is the most advised for one person, much less at arm's length or overhead. "
    "Lift shelf and columns with a helper, and fix them before letting go.",
    Standing.PUBLISHED,
    "NIOSH 94-110, revised lifting equation",
    "Whoever lifts; the equation does not judge lifts by several people",
)
CORDS = Caution(
    "Cords",
    "A flexible cord may not stand in for wiring, go through a wall or be hidden in one. Take a cord way as "
    "hidden unless the inspector says otherwise: have an outlet put where the screen hangs. Low-voltage "
    "cable in a wall carries an in-wall rating, CL2 or CL3. Nothing goes through the chimney breast, the "
    "firebox or the appliance's clearances.",
    Standing.PUBLISHED,
    "NFPA 70 (NEC) 2020, 400.12; article 725 for low-voltage cable",
    "A licensed electrician and the electrical inspector",
)

LEAD_YEAR = Sourced(
    1978.0, "year", Standing.PUBLISHED, "40 CFR 745 subpart E, as a housing page has it: built before 1978"
)
LEAD_AREA = Sourced(6.0, "sq ft", Standing.PUBLISHED, "40 CFR 745.83: minor repair, interior, per room")
"""Up to this much painted surface the renovation rule does not apply; parts taken off count whole, and jobs
in the same room within LEAD_DAYS add up."""
LEAD_DAYS = Sourced(30.0, "days", Standing.PUBLISHED, "40 CFR 745.83, as the EPA explains it")

LOOK_UP = Sourced(15.0, "degrees", Standing.PUBLISHED, "THX tech tip on television sets over a fireplace")
"""Most that a seated person should look up to the middle of the screen."""
SCREEN_HIGH = Sourced(
    9 / 337**0.5, "of the diagonal", Standing.PUBLISHED, "arithmetic: height of a screen of 16 to 9"
)
SCREEN_WARM = Sourced(
    40.0, "degrees C", Standing.FROM_MEMORY, "usual rating of sets; the set's manual has its own"
)
