"""A set over the shelf: how far one has to look up, and the heat. The set's own manual decides."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import atan2, degrees, radians, tan

from model.check.finding import Bound, Finding, Status
from model.check.wording import Wording
from model.reference.cautions import LOOK_UP, SCREEN_HIGH, SCREEN_WARM
from model.surround import Surround

CHECK, PART = "television", "television"


@dataclass(frozen=True, slots=True)
class Screen:
    """A set over the shelf: its foot, middle and top over the floor and its height and width, in.; degrees up
    to its middle and its top from the seat; `highest` the middle may be."""

    foot: float
    tall: float
    wide: float
    eye: float
    away: float
    up: float
    up_to_top: float
    highest: float

    @property
    def middle(self) -> float:
        """Half way up."""
        return self.foot + self.tall / 2


def size_screen(diagonal: float) -> tuple[float, float]:
    """Width and height of a screen of 16 to 9 that measures `diagonal` from corner to corner, in its unit."""
    tall = SCREEN_HIGH.value * diagonal
    return (diagonal**2 - tall**2) ** 0.5, tall


def place_screen(surround: Surround) -> Screen | None:
    """Where the set hangs and how far one looks up at it; None where there is no set."""
    tv, layout = surround.job.site.tv, surround.layout
    if tv.diagonal is None:
        return None
    foot = layout.shelf_top - layout.floor + tv.gap
    wide, tall = size_screen(tv.diagonal)
    up, top = (degrees(atan2(height - tv.eye, tv.away)) for height in (foot + tall / 2, foot + tall))
    highest = tv.eye + tv.away * tan(radians(LOOK_UP.value))
    return Screen(foot, tall, wide, tv.eye, tv.away, up, top, highest)


def check_television(surround: Surround) -> Iterator[Finding]:
    """The angle up to the screen's middle; nothing where there is no set."""
    screen = place_screen(surround)
    if screen is None:
        return
    wording = Wording(surround.job.about.length_style)
    within = screen.up <= LOOK_UP.value
    yield Finding(
        check=CHECK,
        rule="look up no more than 15 degrees",
        standing=LOOK_UP.standing,
        source=LOOK_UP.source,
        status=Status.PASS if within else Status.WARN,
        part=PART,
        measured=round(screen.up, 2),
        limit=LOOK_UP.value,
        unit="degrees",
        message=(
            f"The screen's middle is {wording.mark(screen.middle)} over the floor: from a seat "
            f"{wording.mark(screen.away)} away that is {screen.up:.1f} degrees up, its top edge "
            f"{screen.up_to_top:.1f}. Heat rises in front of it: read the set's manual, usually "
            f"{SCREEN_WARM.value:g} \N{DEGREE SIGN}C at most, and hang a thermometer there while the fire "
            "burns."
        ),
        cure=""
        if within
        else f"Bring its middle down to {wording.at_most(screen.highest)} over the floor, or sit further "
        "away.",
        path="tv.gap",
        bound=Bound.MOST,
    )
