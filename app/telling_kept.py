"""Says what unsaved work that was kept holds beyond its file. Where and how it is kept is app.keeping's."""

from __future__ import annotations

from pathlib import Path

from app.files import FileTrouble, read_job_file
from app.recovery import LeftBehind
from app.stock_lists import USUAL, read_stock_named
from app.stock_recovery import LeftList
from model.differences import say_setting
from model.errors import JobRefused, StockRefused
from model.job import Job, default_job, list_stored, read_value

MOST_NAMED = 3
"""Values that are named where many differ."""
NO_ROW = "an option, a photo or what was bought"
"""What else a job has that may differ."""


def tell_kept(work: LeftBehind) -> str:
    """Whose work it is, from when, and what its file lacks of it."""
    name = work.path.stem if work.path else work.job.about.name.strip() or "a new job"
    return (
        f"Unsaved work on “{name}” from {work.kept_at:%d %B, %H:%M} was kept when the program ended. "
        f"{_tell_held(work)}"
    )


def tell_kept_list(left: LeftList) -> str:
    """Which stock list it is, from when, and how much of it its file lacks."""
    name = Path(left.name or USUAL).stem
    return (
        f"Unsaved changes to the stock list “{name}” from {left.kept_at:%d %B, %H:%M} were kept when the "
        f"program ended. {_tell_rows(left)}"
    )


def _tell_rows(left: LeftList) -> str:
    try:
        before = read_stock_named(left.name or USUAL)
    except StockRefused:
        return "The list they were made to cannot be read now."
    if before == left.stock_list:
        return "The list itself holds the same."
    rows = {*left.stock_list.sold, *left.stock_list.on_hand} - {*before.sold, *before.on_hand}
    count = f"{len(rows)}\N{NO-BREAK SPACE}row{'' if len(rows) == 1 else 's'}"
    return (
        f"Changed or new: {count}."
        if rows
        else "No row is new; others were taken out, or what holds for all."
    )


def _tell_held(work: LeftBehind) -> str:
    if work.path is None:
        return f"It holds {_list_held(default_job(), work.job)}."
    try:
        before = read_job_file(work.path)
    except (FileTrouble, JobRefused):
        return "The file it came from cannot be read now."
    if before == work.job:
        return "Its file holds the same."
    return f"What its file does not hold: {_list_held(before, work.job)}."


def _list_held(before: Job, job: Job) -> str:
    """Rows that differ, the first few with their values."""
    style = job.about.length_style
    rows = [row for row in list_stored() if read_value(before, row.path) != read_value(job, row.path)]
    named = [f"{row.name} {say_setting(row, read_value(job, row.path), style)}" for row in rows[:MOST_NAMED]]
    if len(rows) > len(named):
        named.append(f"{len(rows) - len(named)} more")
    return " and ".join(filter(None, (", ".join(named[:-1]), *named[-1:]))) or NO_ROW
