"""What was bought and what is sawn, noted in a job's file; how it is kept is model.cutting's business.

What notes raises FileTrouble for the disk and JobRefused for what is in the file already.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from app.demo import names_demo
from app.files import read_job_file, save_job_file
from model.errors import Refused

if TYPE_CHECKING:
    from model.cutting.plan import CuttingPlan

MOST_NUMBERS = 10_000


def find_file(option: str, jobs: Sequence[str], settings: Sequence[str]) -> Path:
    """The one job file that a note goes into. Raises Refused where there is none, or it is not as planned."""
    if len(jobs) != 1 or names_demo(jobs[0]):
        raise Refused(option, " ".join(jobs), "name one job file: that is where it is noted")
    if settings:
        raise Refused(
            option, settings[0], "leave --set out, so that what is noted fits the file's own design"
        )
    return Path(jobs[0])


def note_bought(path: Path, plan: CuttingPlan) -> int:
    """Note in the file that a plan's boards were bought, beside those from before; how many there are now.

    Raises Refused for a plan of several jobs.
    """
    from model.cutting.frozen import freeze_plan, note_printed

    job = read_job_file(path)
    purchase = note_printed(freeze_plan(job.purchase, plan))
    save_job_file(path, replace(job, purchase=purchase))
    return len(purchase.boards)


def note_list(path: Path, plan: CuttingPlan) -> None:
    """Note in the file what the buying list of `plan` asks for, so that the next one can say what changed."""
    from model.cutting.buying import list_buying
    from model.cutting.frozen import note_printed

    job = read_job_file(path)
    save_job_file(path, replace(job, purchase=note_printed(job.purchase, list_buying(plan))))


def note_sawn(path: Path, text: str) -> None:
    """Note in the file that bought boards of some numbers, such as ``1,3-5``, are sawn. Raises Refused."""
    from model.cutting.frozen import mark_cut

    job = read_job_file(path)
    numbers = parse_numbers("--sawn", text)
    there = {board.number for board in job.purchase.boards}
    missing = [str(number) for number in numbers if number not in there]
    if missing:
        some = (
            f"write numbers of boards that were bought, up to {max(there)}"
            if there
            else "none was bought yet"
        )
        raise Refused("--sawn", ", ".join(missing), some)
    save_job_file(path, replace(job, purchase=mark_cut(job.purchase, numbers)))


def parse_numbers(option: str, text: str) -> tuple[int, ...]:
    """The numbers that a text such as ``1,3-5`` means. Raises Refused."""
    found: dict[int, None] = {}
    for part in text.replace(" ", "").split(","):
        first, dash, last = part.partition("-")
        ends = (first, last if dash else first)
        if not all(end.isascii() and end.isdigit() and len(end) < 6 for end in ends):
            raise Refused(option, text, "write numbers as they stand in the plan, such as 1,3-5")
        found.update(dict.fromkeys(range(int(ends[0]), min(int(ends[1]), MOST_NUMBERS) + 1)))
    return tuple(found)
