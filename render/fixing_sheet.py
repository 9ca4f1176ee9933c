"""How the surround is fixed, as it stands on paper: what the anchors carry, where they go, and the order.

What is planned stands in model.takeoff.anchors; the drawing beside it is render.fixing_marks'.
"""

from __future__ import annotations

from collections.abc import Sequence

from model.check.finding import Status
from model.check.nailers_held import check_nailers_held
from model.reference.anchors import EMBEDMENT, SAFETY_FACTOR, SCREW_INTO_FRAMING, SOFT_TENSION, WALL_SKIN
from model.sentences import join_words
from model.surround import Surround
from model.takeoff.anchor_materials import KINDS, Bought, list_bought
from model.takeoff.anchor_places import MASONRY, WALL
from model.takeoff.anchor_places import Anchor as Fixing
from model.takeoff.anchors import AnchorPlan, list_order, plan_anchors
from model.units import LengthStyle, format_length
from render.drawing import MM
from render.tables import (
    Cell,
    Strip,
    Table,
    heading_strip,
    opening_strips,
    paragraph_strips,
    share_columns,
    table_strips,
)

COLUMNS = ("Anchor", "From the centre line", "Over the hearth", "Through", "Into", "Holds the top")
TIMES = "\N{MULTIPLICATION SIGN}"
SHARES = (20, 45, 40, 60, 40, 30)


def fixing_strips(surround: Surround, width: float) -> tuple[Strip, ...]:
    """The anchors' loads and places and the order of fitting, for a page `width` wide."""
    plan = plan_anchors(surround)
    columns = share_columns(width, COLUMNS, SHARES, ends=COLUMNS[1:3])
    rows = tuple(
        tuple(map(Cell, row_texts(surround, number, fixing)))
        for number, fixing in enumerate(plan.anchors, start=1)
    )
    heading = f"Anchors: {len(plan.anchors)}, of which {plan.needed} near the top are needed"
    strips = [
        *opening_strips(heading, describe_loads(surround, plan), width),
        *table_strips(Table(columns, rows)),
        Strip(2 * MM),
        *(strip for words in list_said(surround) for strip in paragraph_strips(words, width)),
        heading_strip("Order of fitting", above=3 * MM),
    ]
    for step in list_order(surround):
        strips += paragraph_strips(step, width)
    return tuple(strips)


def describe_loads(surround: Surround, plan: AnchorPlan) -> str:
    """What hangs on the anchors and what each may hold, with where that comes from."""
    style, rule = surround.job.about.length_style, surround.job.design.anchor
    lever, drop = (format_length(length, style) for length in (plan.lever, plan.drop))
    return (
        f"{plan.weight:.0f} lb act {lever} from the masonry; the upper anchors lie {drop} over the feet. "
        f"If all of it hung on them, each would be pulled with {plan.tension:.1f} lb and carry "
        f"{plan.shear:.1f} lb; {rule.tension:.0f} and {rule.shear:.0f} lb are allowed. The figures a job "
        f"starts from are {SOFT_TENSION.standing} for soft mortar: pull-test one on the spot and allow a "
        f"fifth of what it held ({SAFETY_FACTOR.source.split(':')[0]})."
    )


def list_said(surround: Surround) -> list[str]:
    """What nailers are not held and what helps, then what the anchors are: kind, length, count, depth."""
    unheld = [f for f in check_nailers_held(surround) if f.status is not Status.PASS]
    said = [f"{finding.message} {finding.cure}" for finding in unheld]
    found = list_bought(surround)
    return [*said, _say_taken(found, surround.job.about.length_style)] if found else said


def _say_taken(found: Sequence[Bought], style: LengthStyle) -> str:
    kinds = [
        f"{each.count} {TIMES} {KINDS[each.into]}, {format_length(each.length, style)} long" for each in found
    ]
    deep, into, skin = (
        format_length(size.value, style) for size in (EMBEDMENT, SCREW_INTO_FRAMING, WALL_SKIN)
    )
    maker = EMBEDMENT.source.split(":")[0]
    words = {
        MASONRY: f"Those into masonry go {deep} deep or more ({maker}): which anchor suits this masonry, "
        "its drill and its depth are for its maker to say.",
        WALL: f"Those into framing go {into} deep behind {skin} of wall: framing is taken to be there, so "
        "find it before drilling.",
    }
    told = " ".join(words[kind] for kind in words if any(each.into == kind for each in found))
    return f"Take {join_words(kinds)}, longer by what is shimmed. {told}"


def row_texts(surround: Surround, number: int, fixing: Fixing) -> tuple[str, ...]:
    """An anchor's line as text, in the order of COLUMNS."""
    style = surround.job.about.length_style
    aside = "left" if fixing.x < 0 else "right"
    across = f"{format_length(abs(fixing.x), style)} {aside}" if fixing.x else "on it"
    nailer = f"{surround.marks[fixing.board]}, {surround.boards[fixing.board].role}"
    holds = "yes" if fixing.upper else ""
    return str(number), across, format_length(fixing.y, style), nailer, fixing.into, holds
