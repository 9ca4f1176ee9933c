"""Where the tape goes for each thing that is measured at the fireplace. What it is held against is drawn in
render.site_scene; the rows themselves stand in model.parameters."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from model.build.lines import Layout
from model.check.television import size_screen
from model.site import Site
from render.drawing import Point
from render.site_scene import CASING, Scene, room_sides

Stretch = tuple[Point, Point]


@dataclass(frozen=True, slots=True)
class Tape:
    """Stretches of tape in one scene, model inches; several where a size is read at several places.

    `near` asks for a picture of the surroundings of a small measure instead of the whole fireplace.
    """

    scene: Scene
    stretches: tuple[Stretch, ...]
    near: bool = False


def find_tape(site: Site, layout: Layout, path: str) -> Tape | None:
    """Where the row called `path` is measured on `site`; None for a row that no tape is held to."""
    for listed in (_opening, _facing, _hearth, _levels, _room, _television):
        found = listed(site, layout).get(path)
        if found is not None:
            return found
    group = path.split(".")[0]
    return _GROUPS[group](site, layout).get(path) if group in _GROUPS else None


Tapes = Mapping[str, Tape]


def _front(*stretches: Stretch, near: bool = False) -> Tape:
    return Tape(Scene.FRONT, stretches, near)


def _side(*stretches: Stretch, near: bool = False) -> Tape:
    return Tape(Scene.SIDE, stretches, near)


def _above(*stretches: Stretch, near: bool = False) -> Tape:
    return Tape(Scene.ABOVE, stretches, near)


def _across(x0: float, x1: float, y: float) -> Stretch:
    return (x0, y), (x1, y)


def _up(x: float, y0: float, y1: float) -> Stretch:
    return (x, y0), (x, y1)


def _opening(site: Site, _layout: Layout) -> Tapes:
    half, high = site.opening.width / 2, site.opening.height
    places = (0.15, 0.5, 0.85)
    return {
        "opening.width": _front(_across(-half, half, 0.45 * high)),
        "opening.height": _front(_up(0.0, 0.0, high)),
        "opening.sill": _side(_up(2.0, 0.0, site.opening.sill)),
        "readings.opening_width": _front(*(_across(-half, half, p * high) for p in places)),
        "readings.opening_height": _front(*(_up((2 * p - 1) * half, 0.0, high) for p in places)),
        "readings.diagonal_falling": _front(((-half, high), (half, 0.0))),
        "readings.diagonal_rising": _front(((-half, 0.0), (half, high))),
    }


def _facing(site: Site, _layout: Layout) -> Tapes:
    half, facing, top = site.opening.width / 2, site.facing.width / 2, site.facing.height
    beside, proud = max((half + facing) / 2, half), site.facing.proud
    over = (min(site.opening.height, top) + top) / 2
    return {
        "facing.width": _front(_across(-facing, facing, over)),
        "facing.height": _front(_up(beside, 0.0, top)),
        "facing.proud": _above(_up(-facing - 2.0, 0.0, proud), near=True),
        "facing.added": _above(_up(half + 2.0, -site.facing.added, 0.0), near=True),
        "readings.facing_width": _front(*(_across(-facing, facing, p * top) for p in (0.1, 0.5, 0.95))),
        "readings.facing_height": _front(*(_up(x, 0.0, top) for x in (-beside, 0.0, beside))),
    }


def _hearth(site: Site, _layout: Layout) -> Tapes:
    hearth, deep = site.hearth.width / 2, site.hearth.depth
    return {
        "hearth.height": _front(_up(hearth, -site.hearth.height, 0.0), near=True),
        "hearth.width": _above(_across(-hearth, hearth, -deep / 2)),
        "hearth.depth": _above(_up(0.0, -deep, 0.0)),
        "hearth.thickness": _side(_up(-deep, -(site.hearth.thickness or 0.0), 0.0), near=True),
        "readings.hearth_depth": _above(*(_up(x, -deep, 0.0) for x in (-0.8 * hearth, 0.0, 0.8 * hearth))),
    }


def _levels(site: Site, layout: Layout) -> Tapes:
    line, level = site.level.centre or 0.0, site.level
    feet = {"left": -(layout.left.inner + layout.left.outer) / 2, "right": 0.0}
    feet["right"] = (layout.right.inner + layout.right.outer) / 2
    found = {"level.centre": _front(_up(0.0, 0.0, line))}
    for side, x in feet.items():
        down, floor = getattr(level, side), getattr(level, f"floor_{side}")
        beside = (site.hearth.width / 2 + 3.0) * (1 if x > 0 else -1)
        found[f"level.{side}"] = _front(_up(x, line - (line if down is None else down), line))
        low = line + site.hearth.height if floor is None else floor
        found[f"level.floor_{side}"] = _front(_up(beside, line - low, line))
    return found


def _room(site: Site, _layout: Layout) -> Tapes:
    half, high, floor = site.opening.width / 2, site.opening.height, -site.hearth.height
    beside = max(site.facing.width, site.hearth.width) / 2 + 4.0
    long, broad = room_sides(site)
    return {
        "room.ceiling": _front(_up(beside, floor, floor + site.room.ceiling)),
        "room.left": _front(_across(-half - site.room.left, -half, 0.6 * high)),
        "room.right": _front(_across(half, half + site.room.right, 0.6 * high)),
        "room.length": Tape(Scene.ROOM, (_across(-long / 2, long / 2, broad / 2),)),
        "room.breadth": Tape(Scene.ROOM, (_up(0.0, 0.0, broad),)),
    }


def set_box(site: Site, layout: Layout) -> tuple[float, float, float, float]:
    """Left, bottom, right and top of a television over the shelf, from the front."""
    wide, tall = size_screen(site.tv.diagonal or 0.0)
    low = layout.shelf_top + site.tv.gap
    return -wide / 2, low, wide / 2, low + tall


def _television(site: Site, layout: Layout) -> Tapes:
    x0, y0, x1, y1 = set_box(site, layout)
    away, floor = -site.tv.away, -site.hearth.height
    eye = floor + site.tv.eye
    return {
        "tv.diagonal": _front(((x0, y0), (x1, y1))),
        "tv.gap": _front(_up(0.0, layout.shelf_top, y0), near=True),
        "tv.eye": _side(_up(away, floor, eye)),
        "tv.away": _side(_across(away, 0.0, eye)),
    }


def _baseboards(site: Site, _layout: Layout) -> Tapes:
    facing, floor, proud = site.facing.width / 2, -site.hearth.height, site.facing.proud
    own, found = site.baseboard, {}
    for side, sign in (("left", -1), ("right", 1)):
        end = site.opening.width / 2 + getattr(site.room, side)
        x = sign * min(max(facing, site.hearth.width / 2) + 6.0, max(end - 2.0, facing))
        height = getattr(own, f"height_{side}") or 0.0
        thick = getattr(own, f"thickness_{side}") or own.thickness
        found[f"baseboard.height_{side}"] = _front(_up(x, floor, floor + height), near=True)
        found[f"baseboard.thickness_{side}"] = _above(_up(x, proud - thick, proud), near=True)
    given = "left" if own.height_left else "right"
    return {**found, "baseboard.thickness": found[f"baseboard.thickness_{given}"]}


def _outlets(site: Site, _layout: Layout) -> Tapes:
    own, floor, found = site.outlet, -site.hearth.height, {}
    for side, sign in (("right", 1), ("left", -1)):
        x = sign * (getattr(own, side) or 0.0)
        y = floor + getattr(own, f"height_{side}")
        found[f"outlet.{side}"] = _front(_across(min(0.0, x), max(0.0, x), y))
        found[f"outlet.height_{side}"] = _front(_up(x, floor, y))
        if getattr(own, side) is not None:
            found["outlet.width"] = _front(_across(x - own.width / 2, x + own.width / 2, y), near=True)
            found["outlet.tall"] = _front(_up(x, y - own.tall / 2, y + own.tall / 2), near=True)
    return found


def _casings(site: Site, _layout: Layout) -> Tapes:
    own, floor, proud, found = site.casing, -site.hearth.height, site.facing.proud, {}
    for side, sign in (("right", 1), ("left", -1)):
        x = sign * (getattr(own, side) or 0.0)
        low, high = (floor + getattr(own, f"{end}_{side}") for end in ("bottom", "top"))
        middle = x + sign * CASING / 2
        found[f"casing.{side}"] = _front(_across(min(0.0, x), max(0.0, x), (low + high) / 2))
        found[f"casing.bottom_{side}"] = _front(_up(middle, floor, low), near=low > floor)
        found[f"casing.top_{side}"] = _front(_up(middle, floor, high))
        if getattr(own, side) is not None:
            found["casing.proud"] = _above(_up(middle, proud - own.proud, proud), near=True)
    return found


def _old_ledger(site: Site, _layout: Layout) -> Tapes:
    own = site.old_ledger
    top = own.top or 0.0
    middle = top - own.tall / 2
    return {
        "old_ledger.top": _front(_up(0.0, 0.0, top)),
        "old_ledger.tall": _front(_up(own.right / 2, top - own.tall, top), near=True),
        "old_ledger.thick": _side(_across(-own.thick, 0.0, middle), near=True),
        "old_ledger.left": _front(_across(-own.left, 0.0, middle)),
        "old_ledger.right": _front(_across(0.0, own.right, middle)),
    }


def _bolt(name: str) -> Callable[[Site, Layout], Tapes]:
    def listed(site: Site, _layout: Layout) -> Tapes:
        own = getattr(site, name)
        x, r = own.across or 0.0, own.diameter / 2
        return {
            f"{name}.across": _front(_across(min(0.0, x), max(0.0, x), own.up)),
            f"{name}.up": _front(_up(x, 0.0, own.up)),
            f"{name}.out": _side(_across(-own.out, 0.0, own.up), near=True),
            f"{name}.diameter": _front(_across(x - r, x + r, own.up), near=True),
        }

    return listed


def _asked(site: Site, own: object) -> dict[str, Tape]:
    """The least hearth that a manual or a local amendment asks for."""
    half, deep = site.opening.width / 2, site.hearth.depth
    front, side, thick = (getattr(own, f"hearth_{row}") or 0.0 for row in ("front", "side", "thickness"))
    return {
        "hearth_front": _above(_up(0.0, -front, 0.0)),
        "hearth_side": _above(_across(half, half + side, -deep / 2)),
        "hearth_thickness": _side(_up(-deep, -thick, 0.0), near=True),
    }


def pair_boxes(site: Site, pair: tuple[float, float]) -> dict[Scene, tuple[float, float, float, float]]:
    """Wood that stands out and keeps off as a pair of a chart says: over the opening, and beside it."""
    (out, off), half, high = pair, site.opening.width / 2, site.opening.height
    return {
        Scene.SIDE: (-out, high + off, 0.0, high + off + 2.0),
        Scene.ABOVE: (half + off, -out, half + off + 4.0, 0.0),
    }


def _pairs(site: Site, above: tuple[float, float], beside: tuple[float, float]) -> tuple[Tape, Tape]:
    """The two measures of a pair in a chart: how far out, and how far off."""
    half, high = site.opening.width / 2, site.opening.height
    x0, y0, x1, y1 = pair_boxes(site, above)[Scene.SIDE]
    shelf = _side(_up(x0, high, y0), _across(x0, x1, y1), near=True)
    x0, y0, x1, y1 = pair_boxes(site, beside)[Scene.ABOVE]
    return shelf, _above(_across(half, x0, y0), _up(x1, y0, 0.0), near=True)


USUAL_PAIR = (6.0, 10.0)
"""An invented row of a chart, drawn where none is entered."""


def first_pair(pairs: tuple[tuple[float, float], ...]) -> tuple[float, float]:
    """The row of a chart that is drawn, projection and distance: its first, or USUAL_PAIR."""
    return pairs[0] if pairs else USUAL_PAIR


def _chart(site: Site, _layout: Layout) -> Tapes:
    own, half, high = site.chart, site.opening.width / 2, site.opening.height
    table = own.shelf_hood if own.hood else own.shelf
    shelf, legs = _pairs(site, first_pair(table), first_pair(own.legs))
    above, beside = own.none_above or 0.0, own.none_beside or 0.0
    return {
        "chart.shelf": shelf,
        "chart.shelf_hood": shelf,
        "chart.legs": legs,
        "chart.greatest": Tape(shelf.scene, shelf.stretches[1:], near=True),
        "chart.plus": Tape(shelf.scene, shelf.stretches[:1], near=True),
        "chart.datum_height": _side(_up(-2.0, 0.0, own.datum_height or 0.0)),
        "chart.none_above": _front(_up(0.0, high, high + above)),
        "chart.none_beside": _front(_across(half, half + beside, high / 2)),
        **{f"chart.{row}": tape for row, tape in _asked(site, own).items()},
    }


def _local(site: Site, _layout: Layout) -> Tapes:
    shelf, legs = _pairs(site, first_pair(site.local.shelf), first_pair(site.local.legs))
    asked = {f"local.{row}": tape for row, tape in _asked(site, site.local).items()}
    return {"local.shelf": shelf, "local.legs": legs, **asked}


_GROUPS: Mapping[str, Callable[[Site, Layout], Tapes]] = {
    "baseboard": _baseboards,
    "outlet": _outlets,
    "casing": _casings,
    "old_ledger": _old_ledger,
    **{name: _bolt(name) for name in ("bolt_one", "bolt_two", "bolt_three")},
    "chart": _chart,
    "local": _local,
}
