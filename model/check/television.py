"""A set over the shelf: how far one has to look up, and the heat. The set's own manual decides."""

from __future__ import annotations

from collections.abc import Iterator
from math import atan2, degrees, radians, tan

from model.check.finding import Bound, Finding, Status
from model.check.wording import Wording
from model.reference.cautions import LOOK_UP, SCREEN_HIGH, SCREEN_WARM
from model.surround import Surround

CHECK, PART = "television", "television"


def check_television(surround: Surround) -> Iterator[Finding]:
    """The angle up to the screen's middle; nothing where there is no set."""
    tv, layout = surround.job.site.tv, surround.layout
    if tv.diagonal is None:
        return
    wording = Wording(surround.job.about.length_style)
    foot = layout.shelf_top - layout.floor + tv.gap
    tall = SCREEN_HIGH.value * tv.diagonal
    middle = foot + tall / 2
    up, top = (degrees(atan2(height - tv.eye, tv.away)) for height in (middle, foot + tall))
    highest = tv.eye + tv.away * tan(radians(LOOK_UP.value))
    within = up <= LOOK_UP.value
    yield Finding(
        check=CHECK,
        rule="look up no more than 15 degrees",
        standing=LOOK_UP.standing,
        source=LOOK_UP.source,
        status=Status.PASS if within else Status.WARN,
        part=PART,
        measured=round(up, 2),
        limit=LOOK_UP.value,
        unit="degrees",
        message=(
            f"The screen's middle is {wording.mark(middle)} over the floor: from a seat "
            f"{wording.mark(tv.away)} away that is {up:.1f} degrees up, its top edge {top:.1f}. Heat rises "
            f"in front of it: read the set's manual, usually {SCREEN_WARM.value:g} \N{DEGREE SIGN}C at most, "
            "and hang a thermometer there while the fire burns."
        ),
        cure=""
        if within
        else f"Bring its middle down to {wording.at_most(highest)} over the floor, or sit further away.",
        path="tv.gap",
        bound=Bound.MOST,
    )
