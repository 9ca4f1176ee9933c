"""The glue-up of wide and thick pieces, before anything is cut to size, sanded or coated.

Pieces of several strips or layers, and boards that are glued edge to edge into one, go into clamps in one
step and are planed and sawn to size in another, once the glue has cured.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from model.steps.bench import Bench
from model.steps.step import Step, Where
from model.takeoff.glue_ups import GlueUp
from model.units import LengthStyle, format_length

if TYPE_CHECKING:
    from model.surround import Surround

CUT, GLUE_UP, DRESS = "Cut and mark every board", "Glue up the wide pieces", "Dress the wide pieces"
COAT_NOTE = "Sand and coat the loose pieces as the sheet of finishing says."
CUT_NOTES = (
    "Rough sizes first, by the cutting plans; then to the finished sizes of the cut list.",
    "Pencil each mark on the back, with an arrow up and another to the front edge.",
    "Leave scribe stock where the cut list says so.",
)
STRIPS_STAY = "Strips and layers of what is glued up stay rough; the next two steps bring them to size."
JOINT = "Joint the edges straight and square: held together dry, two show no light between them."
SPREAD = (
    "Spread glue along the whole edge; set clamps by turns over and under, and draw them until a fine line "
    "of glue stands along each joint. Check with a straightedge that it lies flat."
)
LAYERS = "Glue layers over their whole face, clamped from the middle outwards."
FLATTEN = "Scrape the glue off; plane or sand both faces flat and of one thickness."


def take_edged(chains: Sequence[list[Step]], bench: Bench) -> tuple[tuple[int, ...], list[list[Step]]]:
    """The boards that are glued edge to edge with nothing else in their step, and the chains without it."""
    edged = [step for chain in chains for step in chain if _is_edged(step, bench)]
    rest = [[step for step in chain if step not in edged] for chain in chains]
    return tuple(i for step in edged for i in step.boards), rest


def _is_edged(step: Step, bench: Bench) -> bool:
    return not (step.there or step.brought) and bench.is_one_wide(step.boards)


def list_shop(surround: Surround, ups: Sequence[GlueUp], edged: tuple[int, ...]) -> Iterator[Step]:
    """The steps before anything is put together: cutting and, where there is any, the glue-up.

    `edged` are boards of their own that are glued edge to edge into one.
    """
    if not (ups or edged):
        yield Step(Where.BENCH, CUT, (), notes=(*CUT_NOTES, COAT_NOTE))
        return
    glued = tuple(i for one in ups for i in one.pieces)
    style = surround.job.about.length_style
    yield Step(Where.BENCH, CUT, (), notes=(*CUT_NOTES, STRIPS_STAY))
    notes = tuple(_note_gluing(surround, ups, edged, style))
    yield Step(Where.BENCH, GLUE_UP, (), boards=edged, glued=glued, notes=notes)
    dressed = tuple(dict.fromkeys((*glued, *edged)))
    notes = (FLATTEN, *_note_sizes(surround, ups, edged, style), COAT_NOTE)
    yield Step(Where.BENCH, DRESS, (), dressed=dressed, notes=notes)


def _note_gluing(
    surround: Surround, ups: Sequence[GlueUp], edged: Sequence[int], style: LengthStyle
) -> Iterator[str]:
    for one in ups:
        yield f"{one.mark}: {_say_parts(one, style)}."
    if edged:
        yield f"{', '.join(surround.marks[i] for i in edged)}: edge to edge into one."
    wide = edged or any(one.rough.strips > 1 for one in ups)
    if wide:
        yield JOINT
        yield SPREAD
    if any(one.rough.layers > 1 for one in ups):
        yield LAYERS
    times = surround.job.shop.times
    yield (
        f"Leave it in clamps {times.clamp:g} h, and {max(times.clamp, times.cure):g} h from gluing "
        "before it is planed or sawn."
    )


def _say_parts(one: GlueUp, style: LengthStyle) -> str:
    """``2 strips 8 1/4" wide, 5' 3" long``; of each piece where there are several."""
    rough = one.rough
    wide, long = (format_length(size, style) for size in (rough.strip_width, rough.length.rough))
    sizes = f"{wide} wide, {long} long"
    strips = f"{rough.strips} strips {sizes}" if rough.strips > 1 else sizes
    layers = f"{rough.layers} layers" if rough.layers > 1 else ""
    each = f"{len(one.pieces)} of them, each of " if len(one.pieces) > 1 else ""
    return each + " of ".join(part for part in (layers, strips) if part)


def _note_sizes(
    surround: Surround, ups: Sequence[GlueUp], edged: Sequence[int], style: LengthStyle
) -> Iterator[str]:
    for one in ups:
        wide, long = (format_length(part.to_saw, style) for part in (one.rough.width, one.rough.length))
        scribe = ", scribe stock on" if one.rough.width.scribe or one.rough.length.scribe else ""
        yield f"{one.mark}: rip to {wide}, cut to {long}{scribe}."
    if edged:
        yield "What is of several boards edge to edge: to its size on the sub-assembly's sheet."
