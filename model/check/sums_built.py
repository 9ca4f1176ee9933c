"""Lines of arithmetic for findings of what is built, held up or hung over it; of no clearance."""

from __future__ import annotations

from collections.abc import Iterator
from math import radians, sqrt, tan

from model.build.cord_way import plan_cord_way
from model.check.finding import Bound, Finding
from model.check.holding import SHARING, work_out_pull, work_out_sag
from model.check.joinery import find_widest_mitre
from model.check.movement import work_out_movement
from model.check.panels import list_floating
from model.check.sums import Sums
from model.check.television import place_screen
from model.reference.bending import CREEP, HEAVY, LEANING, NDS_SCREW, SAG_PER_FOOT
from model.reference.cautions import LEAD_YEAR, LOOK_UP
from model.reference.moisture import SATURATION, SHRINKS_ACROSS
from model.reference.nails import SCREW_DIAMETER
from model.reference.panels import A_FOOT, ENDS, PLAY
from model.reference.weights import SPECIFIC_GRAVITIES
from model.takeoff.anchors import plan_anchors

MINUS = "\N{MINUS SIGN}"
GREEN = SATURATION * 100
"""What shrinkage from green to ovendry, %, divides: see model.reference.moisture."""


def list_sag_sums(sums: Sums, finding: Finding) -> Iterator[str]:
    """Load, stiffness and what they come to."""
    sag = work_out_sag(sums.surround)
    if sag is None:
        return
    load = sag.load + sag.own
    yield f"Load: {sag.load:.3f} + {sag.own:.3f} = {load:.3f} lb on each inch, its own weight the second."
    yield (
        f"Span {sums.text(sag.span)}; stiffness {sag.stiffness.value:.0f} psi; moment of inertia of its "
        f"boards {sag.inertia:.3f} in. to the fourth."
    )
    yield (
        f"5 × {load:.3f} × {sag.span:.3f}\N{SUPERSCRIPT FOUR} / (384 × {sag.stiffness.value:.0f} × "
        f"{sag.inertia:.3f}) = {sag.first:.4f} in. at first."
    )
    yield f"In time: {sag.first:.4f} × {CREEP.value:g} = {sag.first * CREEP.value:.4f} in."
    yield f"Allowed at first: {SAG_PER_FOOT.value:g} × {sag.span:.3f} / 12 = {sag.most:.4f} in."
    if sag.carried:
        yield "The ledger and the frieze carry it all along, so that it does not sag between the columns."


def list_weight_sums(sums: Sums, finding: Finding) -> Iterator[str]:
    """What a weight at the middle adds to the sag."""
    sag = work_out_sag(sums.surround)
    if sag is None:
        return
    yield (
        f"{HEAVY.value:g} × {sag.span:.3f}\N{SUPERSCRIPT THREE} / (48 × {sag.stiffness.value:.0f} × "
        f"{sag.inertia:.3f}) = {sag.heavy:.4f} in. by the weight."
    )
    yield f"With its load and its own weight: {sag.first:.4f} + {sag.heavy:.4f} = {sag.weighed:.4f} in."
    yield f"Allowed under full load: {sag.span:.3f} / 144 = {sag.full:.4f} in."


def list_panel_sums(sums: Sums, finding: Finding) -> Iterator[str]:
    """The cut size by the dampest, the hold at the driest, and the rule of thumb beside them."""
    floating = next(f for f in list_floating(sums.surround) if f.part == finding.part)
    groove, swing = floating.groove, floating.groove.swing
    shrinkage = SHRINKS_ACROSS[sums.surround.job.design.board.species].value
    for word, rate, end in (("gains", swing.swells, swing.damp), ("loses", swing.shrinks, swing.dry)):
        yield (
            f"An inch {word}: {abs(end - swing.built):.2f} / ({GREEN:g} / {shrinkage:g} {MINUS} "
            f"{SATURATION:g} + {swing.built:.2f}) = {rate:.5f} in. from {swing.built:.2f} to {end:.2f} %."
        )
    between = floating.across + 2 * groove.depth
    yield (
        f"Groove to groove: {floating.across:.4f} + 2 × {groove.depth:g} = {between:.4f} in. Cut to "
        f"({between:.4f} {MINUS} 2 × {PLAY.value:g}) / (1 + {swing.swells:.5f}), down to a sixteenth: "
        f"{floating.width:.4f} in."
    )
    yield (
        f"Dampest: {between:.4f} {MINUS} {floating.width:.4f} {MINUS} {floating.grows:.4f} = "
        f"{floating.free:.4f} in. free."
    )
    yield (
        f"Driest, at the bottom of one groove: {floating.width:.4f} {MINUS} {floating.loses:.4f} {MINUS} "
        f"{floating.across:.4f} {MINUS} {groove.depth:g} = {floating.held:.4f} in. in the other."
    )
    thumb = A_FOOT.value * floating.width / 12
    yield (
        f"Lengthways it is cut {ENDS.value:g} in. short. Beside it the rule of thumb, up to {A_FOOT.value:g} "
        f"in. for a foot of width: {thumb:.3f} in.; from the driest to the dampest it moves by "
        f"{floating.grows + floating.loses:.3f} in."
    )


def list_pull_sums(sums: Sums, finding: Finding) -> Iterator[str]:
    """Lever, and what a screw holds."""
    found = work_out_pull(sums.surround)
    gravity = SPECIFIC_GRAVITIES["framing"].value
    yield (
        f"Pull: {LEANING.value:g} × {found.front:.4f} / {found.behind:.4f} = {found.pull:.2f} lb, the lever "
        "before the frieze over the one behind it."
    )
    if not found.ledger:
        yield "A screw: none behind has a ledger to hold in that is held itself."
        return
    one = found.holds / SHARING
    yield (
        f"A screw: {NDS_SCREW.value:g} × {gravity:g}² × {SCREW_DIAMETER.value:g} × {found.thread:g} = "
        f"{one:.1f} lb; {SHARING} share it: {SHARING} × {one:.1f} = {found.holds:.1f} lb."
    )


def list_screen_sums(sums: Sums, finding: Finding) -> Iterator[str]:
    """Where the screen hangs, and how far one looks up."""
    screen = place_screen(sums.surround)
    if screen is None:
        return
    b, t = sums.bare, sums.text
    yield f"Its foot {t(screen.foot)} over the floor, the screen {t(screen.tall)} high."
    yield f"Middle: {b(screen.foot)} + {b(screen.tall)} / 2 = {t(screen.middle)}."
    yield (
        f"Up: the angle whose tangent is ({b(screen.middle)} {MINUS} {b(screen.eye)}) / {b(screen.away)}, "
        f"{screen.up:.2f} degrees; to its top edge {screen.up_to_top:.2f}."
    )
    steepest = f"{b(screen.eye)} + {b(screen.away)} × {tan(radians(LOOK_UP.value)):.5f}"
    yield f"{LOOK_UP.value:g} degrees from there: {steepest} = {t(screen.highest)} over the floor."


def list_anchor_sums(sums: Sums, finding: Finding) -> Iterator[str]:
    """What tips it and what hangs, against what an anchor may hold."""
    plan, rule = plan_anchors(sums.surround), sums.surround.job.design.anchor
    moment = plan.weight * plan.lever
    pull = moment / plan.drop
    yield (
        f"Tipping: {plan.weight:.1f} lb × {plan.lever:.3f} in. out = {moment:.1f}, over a height of "
        f"{plan.drop:.3f} in.: {pull:.1f} lb of pull."
    )
    yield (
        f"Shares: {pull:.1f} / {rule.tension:g} + {plan.weight:.1f} / {rule.shear:g} = "
        f"{pull / rule.tension + plan.weight / rule.shear:.2f} anchors, two at least."
    )
    if plan.upper:
        yield f"With {plan.upper}: each {plan.tension:.1f} lb of pull and {plan.shear:.1f} lb of shear."
        yield f"Used of what they may hold: {plan.used * 100:.0f} %."


def list_cord_sums(sums: Sums, finding: Finding) -> Iterator[str]:
    """The plug against what is free."""
    way = plan_cord_way(sums.surround)
    if way is None or finding.measured is None:
        return
    free, plug = (" by ".join(sums.bare(side) for side in pair) for pair in (way.free, way.plug))
    yield f"Free inside the {way.part}: {free}; the plug: {plug} {'mm' if sums.metric else 'in.'}."


def list_joint_sums(sums: Sums, finding: Finding) -> Iterator[str]:
    """How far a mitre opens, where that is what the finding is about."""
    mitre = find_widest_mitre(sums.surround)
    if mitre is None or finding.bound is not Bound.MOST:
        return
    change = mitre.furthest - mitre.built
    yield (
        f"Each inch of width moves ({mitre.furthest:.2f} {MINUS} {mitre.built:.2f}) / ({GREEN:g} / "
        f"{mitre.shrinkage:g} {MINUS} {SATURATION:g} + {mitre.built:.2f}), which is {mitre.moves:.5f} in. "
        f"for {abs(change):.2f} % of moisture."
    )
    opens = f"{mitre.width:.4f} × {mitre.moves:.5f} × {sqrt(2):.4f} = {mitre.opens:.4f} in."
    yield f"Across {sums.text(mitre.width)}: {opens}"


def list_house_sums(sums: Sums, finding: Finding) -> Iterator[str]:
    """The year against the rule's."""
    house = sums.surround.job.site.house
    if finding.path == "house.painted" and house.year is not None:
        yield f"Built {house.year:.0f}, before {LEAD_YEAR.value:.0f}."


def list_fit_sums(sums: Sums, finding: Finding) -> Iterator[str]:
    """How much wood moves, where that is what the finding is about."""
    moved = work_out_movement(sums.surround, finding.path)
    if moved is None:
        return
    b = sums.bare
    yield (
        f"{moved.species.replace('_', ' ').capitalize()}, {sums.text(moved.width)} across its grain, shrinks "
        f"{moved.shrinkage:g} % from green to ovendry."
    )
    for name, dry in (("Air of the room", moved.dry), ("Beside a fire", moved.fire)):
        by = moved.moves(dry)
        yield (
            f"{name}, {dry:.2f} to {moved.damp:.2f} %: {b(moved.width)} × {moved.damp - dry:.2f} / "
            f"({GREEN:g} / {moved.shrinkage:g} {MINUS} {SATURATION:g} + {dry:.2f}) = {sums.text(by)}."
        )
