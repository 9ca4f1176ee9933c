"""Everything taken off a surround's boards at once, for sheets and lists that show more than one part."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING

from model.takeoff.anchor_materials import list_anchor_materials
from model.takeoff.cut_list import Cut, list_cuts
from model.takeoff.fasteners import Fixing, list_fixings
from model.takeoff.glue_ups import GlueUp, area_of_seams, list_glued_up
from model.takeoff.guide_settings import GuideSaw, Setting, find_saw, list_guide_settings
from model.takeoff.joints import Joint, list_joints
from model.takeoff.materials import Material, list_materials
from model.takeoff.rough import Rough
from model.takeoff.surfaces import Surfaces, list_surfaces
from model.takeoff.weight import Load, list_loads

if TYPE_CHECKING:
    from model.surround import Surround


@dataclass(frozen=True, eq=False)
class Takeoff:
    """Cut list, saw settings, loads, surfaces, joints, fixings, materials and glue-ups of one surround."""

    cuts: tuple[Cut, ...]
    saw: GuideSaw
    settings: tuple[Setting, ...]
    loads: tuple[Load, ...]
    surfaces: Surfaces
    joints: tuple[Joint, ...]
    fixings: tuple[Fixing, ...]
    materials: tuple[Material, ...]
    glue_ups: tuple[GlueUp, ...]


def take_off(surround: Surround, rough: Mapping[str, Rough] | None = None) -> Takeoff:
    """All lists of `surround`; takes a few tenths of a second, most of it for what can be seen.

    `rough` are the rough sizes by mark, where boards are not as wide as is common: as a yard has them.
    """
    surfaces = list_surfaces(surround)
    glue_ups = list_glued_up(surround, rough)
    joints = list_joints(surfaces)
    fixings = list_fixings(surfaces, surround.job.shop.rates)
    return Takeoff(
        cuts=list_cuts(surround, surfaces, rough),
        saw=find_saw(surround.job),
        settings=list_guide_settings(surround, rough),
        loads=list_loads(surround),
        surfaces=surfaces,
        joints=joints,
        fixings=fixings,
        materials=list_materials(
            surround.job, surfaces, joints, fixings, list_anchor_materials(surround), area_of_seams(glue_ups)
        ),
        glue_ups=glue_ups,
    )
