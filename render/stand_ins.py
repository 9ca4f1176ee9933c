"""What a picture of a measurement shows where there is nothing of the kind, or it was not measured.

All sizes here are invented; no picture that uses them says a size.
"""

from __future__ import annotations

from collections.abc import Mapping

from model.job import Job, read_value, with_value
from model.parameters import Value

LEVEL_LINE = 30.0
_EXAMPLES: Mapping[str, tuple[tuple[str, float], ...]] = {
    "opening.sill": (("opening.sill", 5.0),),
    "facing.proud": (("facing.proud", 4.0),),
    "facing.added": (("facing.added", 0.75),),
    "hearth.height": (("hearth.height", 8.0),),
    "hearth.depth": (("hearth.depth", 20.0),),
    "hearth.thickness": (("hearth.thickness", 4.0),),
    "level.centre": (("level.centre", LEVEL_LINE),),
    "level.left": (("level.centre", LEVEL_LINE), ("level.left", LEVEL_LINE)),
    "level.right": (("level.centre", LEVEL_LINE), ("level.right", LEVEL_LINE)),
    "level.floor_left": (("level.centre", LEVEL_LINE),),
    "level.floor_right": (("level.centre", LEVEL_LINE),),
    "plumb.left": (("plumb.left", 0.5),),
    "plumb.right": (("plumb.right", 0.5),),
    "baseboard.height_left": (("baseboard.height_left", 5.5),),
    "baseboard.height_right": (("baseboard.height_right", 5.5),),
    "old_ledger.top": (("old_ledger.top", 48.0),),
    "bolt_one.across": (("bolt_one.across", 12.0),),
    "bolt_two.across": (("bolt_two.across", -12.0),),
    "bolt_three.across": (("bolt_three.across", 18.0),),
    "tv.diagonal": (("tv.diagonal", 43.0),),
    "chart.datum_height": (("chart.datum_height", 10.0),),
    **{
        f"chart.{row}": ((f"chart.{row}", size),)
        for row, size in (("plus", 6.0), ("greatest", 6.0), ("none_above", 10.0), ("none_beside", 8.0))
    },
    **{
        f"{own}.hearth_{row}": ((f"{own}.hearth_{row}", size),)
        for own in ("chart", "local")
        for row, size in (("front", 16.0), ("side", 8.0), ("thickness", 2.0))
    },
}
"""For a row what to draw where it has no value, or is nothing."""
_BESIDE = ("outlet.left", "outlet.right", "casing.left", "casing.right")


def is_given(value: Value) -> bool:
    """Whether there is anything to draw: a size that is neither missing nor nothing."""
    return value not in (None, 0, 0.0, ())


def fill_in(job: Job, path: str) -> Job:
    """`job` with something of the kind that `path` measures, where it has none; else `job` itself."""
    if is_given(read_value(job, path)):
        return job
    for row, size in _list_examples(job, path):
        if not is_given(read_value(job, row)):
            job = with_value(job, row, size)
    return job


def _list_examples(job: Job, path: str) -> tuple[tuple[str, float], ...]:
    """What is beside the fireplace goes just clear of facing and hearth."""
    if path not in _BESIDE:
        return _EXAMPLES.get(path, ())
    widest = max(job.site.facing.width, job.site.hearth.width) / 2
    return ((path, min(widest + 10.0, 200.0)),)
