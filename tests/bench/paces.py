"""Every pace in one table, each beside a baseline of the same run: ``python -m tests.bench.paces``.

The job is the one that is shown first. All is processor time, so that what else the machine does is left out;
a start, a dragged edge, and a command that two processes work on, are told by the clock as well. A move of a
drag is painted when the view in hand is; the other view follows. What each is made of, and other jobs, in
``python -m tests.bench``.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator
from statistics import median
from time import process_time

from app.demo import DEFAULT, read_demo
from app.stock_lists import EXAMPLE, read_shipped_list
from model.check.all import check_surround
from model.check.finding import Status
from model.check.remedy import find_remedies
from model.cutting.boards import plan_boards
from model.cutting.order import build_order
from model.cutting.sheets import plan_sheets
from model.cutting.task import Effort
from model.surround import plan_surround
from tests.bench import packet
from tests.bench.__main__ import DRAG_SIZES, FRAME
from tests.bench.cutting_boards import first_fit
from tests.bench.cutting_sheets import plain_first_fit
from tests.bench.displays import Surroundings, open_displays
from tests.bench.photo import time_picture
from tests.bench.processes import run_bench, time_starts

STARTS, ROUNDS = 5, 9
SECONDS = 10.0
"""Of the processor, that the search for a cheaper cutting plan gets."""
Pace = tuple[str, float, str, float]
"""What, its milliseconds, its baseline and the milliseconds of that."""
_FRAME = "one frame at 60 Hz", FRAME


def main() -> None:
    """Print the table, a line as soon as it is known."""
    with open_displays() as displays:
        name, surroundings = list(displays.items())[-1]
        print(f"Windows on {name}, the job {DEFAULT}; milliseconds of the processor")
        print(f"{'':34}{'ms':>9}  {'beside':30}{'ms':>9}{'ratio':>9}", flush=True)
        for made in (_window_paces(surroundings), _paper_paces(), _model_paces()):
            for what, took, beside, base in made:
                print(f"{what:34}{took:9.1f}  {beside:30}{base:9.1f}{took / base:9.2f}", flush=True)


def _window_paces(surroundings: Surroundings) -> Iterator[Pace]:
    edit = json.loads(run_bench(surroundings, "tests.bench.edits", DEFAULT))
    yield "edit to painted", 1000 * edit["cpu"], *_FRAME
    width, height = map(str, DRAG_SIZES[-1])
    drag = json.loads(run_bench(surroundings, "tests.bench.drags", DEFAULT, width, height))
    yield "move of a drag to painted", 1000 * drag["cpu"], *_FRAME
    yield "the same, 95 of 100 moves", 1000 * drag["cpu_p95"], *_FRAME
    yield "the same by the clock, 95 of 100", 1000 * drag["p95"], *_FRAME
    yield "and the other view, by the clock", 1000 * drag["behind_p95"], *_FRAME
    starts = time_starts(surroundings, STARTS)
    empty = starts.pop("empty")
    for what, took in zip(("first drawing", "whole window at rest"), starts.values(), strict=True):
        yield f"start to {what}", 1000 * took.own, "empty window", 1000 * empty.own
        yield "the same, both processes", 1000 * took.all, "empty window", 1000 * empty.all
        yield "the same by the clock", 1000 * took.clock, "empty window", 1000 * empty.clock
    opened = json.loads(run_bench(surroundings, "tests.bench.opens"))
    yield "open a file to painted", 1000 * opened["cpu"], *_FRAME


def _paper_paces() -> Iterator[Pace]:
    found = {name: 1000 * value for name, value in packet.measure_job(DEFAULT).items()}
    bare, bare_drawings = found["bare"], found["bare_drawings"]
    yield "packet, from the job on", found["packet"], "bare PDF library, same marks", bare
    yield "packet, writing alone", found["writing"], "bare PDF library, same marks", bare
    yield (
        "DXF drawings, from the packet on",
        found["drawings"],
        "bare DXF library, same entities",
        bare_drawings,
    )
    yield (
        "DXF drawings, writing alone",
        found["writing_drawings"],
        "bare DXF library, same entities",
        bare_drawings,
    )
    both = "both bare libraries", bare + bare_drawings
    yield "packet, drawings and cutting", found["set"], *both
    yield "the same as a command, start and all", found["command_cpu"], *both
    yield "that by the clock", found["command"], "the same by the clock", found["bare_clock"]


def _model_paces() -> Iterator[Pace]:
    surround = plan_surround(read_demo(DEFAULT))
    yield from _cutting_paces()
    checks, planned = _time(lambda: check_surround(surround)), _time(lambda: plan_surround(surround.job))
    yield "all checks", checks, *_FRAME
    wrong = plan_surround(read_demo("too-close"))
    over = [finding for finding in check_surround(wrong) if finding.status is Status.FAIL]
    cures = median(_time(lambda finding=finding: find_remedies(wrong, finding), 3) for finding in over)
    yield "cures of a finding", cures, "a plan with all its checks", planned + checks
    photo, front = time_picture(surround)
    yield "picture on a photo", 1000 * photo, "shaded front", 1000 * front


def _cutting_paces() -> Iterator[Pace]:
    order = build_order([(DEFAULT, plan_surround(read_demo(DEFAULT)))], read_shipped_list(EXAMPLE))
    boards = [group.task for group in order.groups if not group.is_sheet and group.task.stock]
    sheets = [group.task for group in order.groups if group.is_sheet and group.task.stock]
    plain = _time(lambda: [*map(first_fit, boards), *map(plain_first_fit, sheets)])
    cost = sum([*map(first_fit, boards), *map(plain_first_fit, sheets)])
    for what, seconds in (("first cutting plan", 0.0), ("cheapest cutting plan", SECONDS)):
        start = process_time()
        end = start + seconds
        effort = Effort(lambda end=end: process_time() > end)
        plans = [
            *(plan_boards(task, effort) for task in boards),
            *(plan_sheets(task, effort) for task in sheets),
        ]
        took = process_time() - start
        yield f"{what}, time", 1000 * took, "first fit", plain
        yield f"{what}, cost in cents", sum(plan.proof.cost for plan in plans), "first fit", cost


def _time(work: Callable[[], object], rounds: int = ROUNDS) -> float:
    """Median milliseconds of the processor, after a round that loads libraries."""
    work()
    taken = []
    for _ in range(rounds):
        start = process_time()
        work()
        taken.append(1000 * (process_time() - start))
    return median(taken)


if __name__ == "__main__":
    main()
