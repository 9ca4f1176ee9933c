"""What is measured at a fireplace, in the order in which one walks round it with a tape.

How each thing is asked for is app's and paper's business.
"""

from __future__ import annotations

from model.idle import list_idle
from model.job import Job
from model.parameters import TABLE, Parameter

AT_THE_DESK = ("chart.", "local.", "site.rule", "baseboard.meets", "old_ledger.use", "bolt_three.")
"""Rows that are copied from a manual or a code or decided later, and a third bolt, which seldom is there."""
LATER = ("facing.added", "room.driest", "room.dampest")
"""What a blank sheet has a line for and a walk need not stop at."""
GROUPS = ("Opening", "Facing", "Hearth", "Levels", "Room", "Obstacles", "Fireplace", "House")
"""From the fire outwards; what kind of fireplace it is can be told when all of it has been looked at."""
_FIRST = {
    "Opening": (
        "opening.width",
        "readings.opening_width",
        "opening.height",
        "readings.opening_height",
        "readings.diagonal_falling",
        "readings.diagonal_rising",
    ),
    "Facing": (
        "facing.width",
        "readings.facing_width",
        "facing.height",
        "readings.facing_height",
        "facing.proud",
    ),
    "Hearth": ("hearth.width", "hearth.depth", "readings.hearth_depth", "hearth.height", "hearth.thickness"),
}
"""Within a group in this order, with what is not named here after it: a size is read again at once."""


def is_measured_there(row: Parameter) -> bool:
    """Whether a row is found out at the fireplace and nowhere else."""
    return not row.linked and not row.path.startswith(AT_THE_DESK)


def list_walk(job: Job) -> tuple[str, ...]:
    """Paths of what is to be measured for `job`, in order.

    Sizes of something that is not there are left out; they come up once it is entered that it is.
    """
    idle = list_idle(job)
    rows = [row for row in TABLE if _is_stop(row) and row.path not in idle]
    return tuple(row.path for row in sorted(rows, key=_place))


def _is_stop(row: Parameter) -> bool:
    return row.group in GROUPS and is_measured_there(row) and row.path not in LATER


def _place(row: Parameter) -> tuple[int, int]:
    """Where a row comes; rows of one place stay in the order of the table."""
    first = _FIRST.get(row.group, ())
    return GROUPS.index(row.group), first.index(row.path) if row.path in first else len(first)
