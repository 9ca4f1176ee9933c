"""Every drawing of a surround alone, by the name it is asked for: what the packet shows, and further views.

How each is drawn stands in its own file of render; on which sheet it stands, in render.chapters.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from functools import partial

from model.steps.plan import plan_steps
from model.surround import Surround
from model.takeoff.anchors import plan_anchors
from model.takeoff.assemblies import Assembly, list_assemblies
from model.takeoff.takeoff import take_off
from model.units import LengthStyle
from render.boards_sheet import BOARDS_OF, draw_boards
from render.chapters.anchors import draw_anchored
from render.cut_sheet import say_assembly
from render.detail_drawing import DetailView
from render.detail_list import Detail, list_details
from render.details import draw_detail
from render.drawing import Drawing
from render.front_parted import draw_frame_sizes
from render.moulding_sheet import PLACES, Entry, draw_section, list_used
from render.part_sheet import list_views
from render.part_views import Part, draw_part, mark_part
from render.scales import Scale
from render.shaded_front import draw_shaded
from render.sheets import (
    ANCHORS,
    DETAIL_TITLES,
    FRAME_SIZES,
    PART_ABOVE,
    PART_FRONT,
    PART_LEFT,
    PART_LEVEL_CUT,
    PART_RIGHT,
    PART_UPRIGHT_CUT,
    PICTURE,
    SITE_CUT,
    SITE_FRONT,
    SITE_PLAN,
    TITLES,
    VIEW_TITLES,
)
from render.site_sketch import draw_site
from render.step_picture import draw_step, outline_step
from render.step_scenes import Shown, list_shown
from render.views import ViewOptions, draw_view

PART_WORDS = {
    PART_FRONT: "front",
    PART_LEFT: "left",
    PART_RIGHT: "right",
    PART_ABOVE: "above",
    PART_LEVEL_CUT: "section_c",
    PART_UPRIGHT_CUT: "section_d",
}
"""How the name of a view of a sub-assembly ends: ``part_left_column_front``."""
USUAL_RATIO = 12.0


@dataclass(frozen=True, slots=True)
class Named:
    """A drawing that may be asked for: its name in small letters, its title, and what draws it at a ratio.

    `ratio` is the one it is lettered for where none is asked for.
    """

    name: str
    title: str
    draw: Callable[[float], Drawing]
    ratio: float = USUAL_RATIO


def list_named(surround: Surround, options: ViewOptions | None = None) -> Iterator[Named]:
    """Every drawing of `surround`, the quickest first; `options` are for the views, but for their ratio."""
    wanted = options or ViewOptions()
    yield from (_view(surround, view, wanted) for view in VIEW_TITLES)
    yield _plain(surround, PICTURE, lambda job, _, ratio: draw_shaded(job, ratio))
    yield _plain(surround, FRAME_SIZES, draw_frame_sizes)
    yield from (_plain(surround, name, draw_site) for name in (SITE_FRONT, SITE_CUT, SITE_PLAN))
    yield from (_plain(surround, name, draw_boards) for name in BOARDS_OF)
    yield from (_plain(surround, name, draw_detail, 4.0) for name in DETAIL_TITLES)
    yield from (_detail(surround, detail) for detail in list_details(surround))
    yield from _list_mouldings(surround)
    if plan_anchors(surround).anchors:
        yield _plain(surround, ANCHORS, draw_anchored)
    for assembly in list_assemblies(surround.boards):
        yield from _list_part(surround, assembly)
    yield from _list_steps(surround)


def find_named(surround: Surround, name: str, options: ViewOptions | None = None) -> Named | None:
    """The drawing of that name; None where there is none."""
    return next((named for named in list_named(surround, options) if named.name == name), None)


def _view(surround: Surround, view: str, options: ViewOptions) -> Named:
    def draw(ratio: float) -> Drawing:
        return draw_view(surround, view, replace(options, ratio=ratio))

    return Named(view, TITLES[view], draw)


def _plain(
    surround: Surround,
    name: str,
    draw: Callable[[Surround, str, float], Drawing],
    ratio: float = USUAL_RATIO,
) -> Named:
    return Named(name, TITLES[name], partial(draw, surround, name), ratio)


def _detail(surround: Surround, detail: Detail) -> Named:
    return Named(
        detail.name, TITLES[detail.name], lambda ratio: DetailView(surround, detail).draw(ratio), 4.0
    )


def _list_mouldings(surround: Surround) -> Iterator[Named]:
    style = surround.job.about.length_style
    names = {place: field for field, place in PLACES.items()}
    for entry in list_used(surround.layout.mouldings, style):
        draw = partial(_draw_entry, entry, style)
        yield Named(f"moulding_{names[entry.heading]}", f"{entry.heading}, section", draw, 1.0)


def _draw_entry(entry: Entry, style: LengthStyle, ratio: float) -> Drawing:
    return draw_section(entry, Scale(f"1:{ratio:g}", ratio), style)


def _list_part(surround: Surround, assembly: Assembly) -> Iterator[Named]:
    part = Part(surround, assembly)
    words = "_".join(assembly.name.split())
    for view in list_views(part):
        title = f"{say_assembly(assembly.name)}: {TITLES[view][0].lower()}{TITLES[view][1:]}"
        yield Named(f"part_{words}_{PART_WORDS[view]}", title, partial(_draw_marked, part, view), 8.0)


def _draw_marked(part: Part, view: str, ratio: float) -> Drawing:
    """A view alone, so with all its sizes."""
    drawing = draw_part(part, view, ratio, (view,))
    return drawing.plus(*mark_part(part, drawing, view).marks)


def _list_steps(surround: Surround) -> Iterator[Named]:
    """A picture for each step that shows something, numbered as the steps are."""
    takeoff = take_off(surround)
    shown = list_shown(surround, plan_steps(surround, takeoff), takeoff.glue_ups)
    for number, one in enumerate(shown, start=1):
        if one.staged is not None:
            yield Named(f"step_{number}", f"Step {number}: {one.step.title}", partial(_draw_shown, one))


def _draw_shown(shown: Shown, ratio: float) -> Drawing:
    assert shown.staged is not None
    return draw_step(shown.staged, outline_step(shown.staged, shown.picked, shown.there), ratio, shown.named)
