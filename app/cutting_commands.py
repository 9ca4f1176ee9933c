"""What the commands for buying and cutting do. Arguments are read in app.cli; heavy modules load on use."""

from __future__ import annotations

import json
import os
import time
from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from app.bought_boards import find_file, note_bought, note_sawn
from app.commands import DONE, read_job_named
from app.demo import names_demo
from app.files import FileTrouble, read_bytes, save_bytes
from app.terminal import Terminal
from model.errors import MantelwrightError

if TYPE_CHECKING:
    from model.cutting.buying import BuyingList
    from model.cutting.order import Group, Order
    from model.cutting.plan import CuttingPlan
    from model.cutting.printed import Change
    from model.cutting.stock_list import StockList
    from model.cutting.task import BoardPlan, SheetPlan
    from model.surround import Surround
    from model.units import LengthStyle

REFUSED = 2
"""Exit code of a run that left out a job."""
LARGEST_PRINTED = 8_000_000
"""Bytes; the record of a long list is a hundredth of it, so anything beyond this is some other file."""
SECONDS = "30"
"""How long a plan is looked for, unless asked otherwise; most are proven in a fraction of it."""


@dataclass(frozen=True, slots=True)
class CuttingWish:
    """What is asked: jobs with their settings, a stock list's name, "json", "csv" or "" for words.

    `out` is a folder for files, `printed` the record of the list last printed, `spare` in whole boards.
    `bought` notes in the job's file that the plan's boards were bought, `sawn` which of those before are cut.
    """

    jobs: tuple[str, ...]
    settings: tuple[str, ...]
    stock: str
    form: str
    out: Path | None
    printed: Path | None
    spare: int | None
    seconds: int
    bought: bool = False
    sawn: str = ""
    option: str = ""


def run_cutting(wish: CuttingWish, terminal: Terminal) -> int:
    """Say what to buy and how to cut it."""
    from model.cutting.buying import list_buying
    from model.cutting.order import build_order

    noted = _find_noted(wish)
    stock_list = _read_stock(wish, terminal)
    named = _read_jobs(wish, terminal)
    failed = len(wish.jobs) - len(named)
    before = _read_printed(wish.printed) if wish.printed else None
    terminal.show_progress(0.0, "Taking off the pieces")
    order = build_order(named, stock_list)
    style = named[0][1].job.about.length_style
    plan = _plan(order, wish.seconds, style, terminal)
    buying = list_buying(plan)
    changes = _find_changes(before, buying) if wish.printed else _find_own_changes(named, buying)
    bought = _list_bought(named, stock_list)
    paths = _write_files(wish.out, plan, buying, style, bought)
    _say(wish.form, plan, buying, changes, style, terminal, bought)
    terminal.finish()  # only what somebody could take is noted
    if wish.printed:
        _note_printed(wish.printed, buying)
    if noted and wish.bought:
        count = note_bought(noted, plan)
        terminal.warn(f"noted in {noted}: {count} boards and sheets bought, with the plan they are cut by")
    for path in paths:
        terminal.warn(f"written: {path}")
    if failed:
        terminal.warn(f"{failed} of {len(wish.jobs)} jobs could not be read and are in none of this")
    return REFUSED if failed else DONE


def _list_bought(named: Sequence[tuple[str, Surround]], stock_list: StockList) -> tuple[CuttingPlan, ...]:
    """For each job with boards bought already those that stay as they were planned."""
    from model.cutting.frozen import show_bought
    from model.cutting.order import build_order

    having = [each for each in named if each[1].job.purchase.boards]
    shown = [show_bought(each[1].job.purchase, build_order([each], stock_list)) for each in having]
    return tuple(plan for plan in shown if plan is not None)


def _find_noted(wish: CuttingWish) -> Path | None:
    """The job file that something is noted in; what is sawn is noted at once."""
    option = "--bought" if wish.bought else "--sawn" if wish.sawn else ""
    if not option:
        return None
    path = find_file(option, wish.jobs, wish.settings)
    if wish.sawn:
        note_sawn(path, wish.sawn)
    return path


def _read_stock(wish: CuttingWish, terminal: Terminal) -> StockList:
    stock_list = read_stock_for(wish.stock, wish.jobs, terminal)
    return stock_list if wish.spare is None else replace(stock_list, spare=wish.spare)


def read_stock_for(name: str, jobs: Sequence[str], terminal: Terminal) -> StockList:
    """The list called `name`; for "" the example if all jobs are shipped ones, the usual sizes for others."""
    from app.stock_lists import EXAMPLE, USUAL, read_stock_named

    invented = not name and all(names_demo(job) for job in jobs)
    if invented:
        terminal.warn("shipped jobs are priced from the example list; all its prices are invented")
    return read_stock_named(name or (EXAMPLE if invented else USUAL))


def _read_jobs(wish: CuttingWish, terminal: Terminal) -> list[tuple[str, Surround]]:
    """Each job worked out, under its file's name without the ending or its shipped name.

    Of several, one that is refused is told and left out. Raises what the only one raises, or the last of all.
    """
    from model.surround import plan_surround

    named: list[tuple[str, Surround]] = []
    for i, name in enumerate(wish.jobs):
        terminal.show_progress(0.0, f"Reading job {i + 1} of {len(wish.jobs)}")
        try:
            job = read_job_named(name, wish.settings, terminal, wish.option)
        except MantelwrightError as refusal:
            if i + 1 == len(wish.jobs) and not named:
                raise
            terminal.warn(str(refusal))
            continue
        called = name if names_demo(name) else _spell(Path(name).stem)
        if job.options.count > 1:
            called = f"{called}, {job.options.name}"
        named.append((called, plan_surround(job)))
    return named


def _spell(stem: str) -> str:
    """A file's name as text that can be written; a byte in it that is no text is replaced."""
    return os.fsencode(stem).decode(errors="replace")


def _plan(order: Order, seconds: int, style: LengthStyle, terminal: Terminal) -> CuttingPlan:
    """The order planned within so many seconds, of which each group has its share of what is left."""
    from model.cutting.plan import plan_order
    from model.cutting.task import BoardPlan, Effort
    from model.cutting.wording import describe_material

    count = len(order.groups)
    end = due = time.monotonic() + seconds
    doing = (0.0, "")

    def watch(i: int, group: Group) -> None:
        nonlocal due, doing
        now = time.monotonic()
        due = now + max(0.0, end - now) / (count - i)
        doing = i / count, f"Cutting {describe_material(group.material, style)}"
        terminal.show_progress(*doing)

    def tell(better: BoardPlan | SheetPlan) -> None:
        cut = len(better.boards if isinstance(better, BoardPlan) else better.sheets)
        terminal.show_progress(doing[0], f"{doing[1]}: {cut} so far, {better.proof.cost / 100:,.2f}")

    return plan_order(order, Effort(lambda: time.monotonic() > due, tell), watch)


def _read_printed(path: Path) -> dict[str, int] | None:
    """The record of the list last printed; None where there is none."""
    from model.cutting.printed import read_printed
    from model.errors import StockRefused

    try:
        return read_printed(
            read_bytes(path, LARGEST_PRINTED, "it is too large to be a printed list's record")
        )
    except FileTrouble as trouble:
        if isinstance(trouble.__cause__, FileNotFoundError):
            return None
        raise
    except StockRefused as refusal:
        raise StockRefused(tuple(f"{path}: {fault}" for fault in refusal.faults)) from None


def _find_own_changes(named: Sequence[tuple[str, Surround]], buying: BuyingList) -> Sequence[Change] | None:
    """What changed since the list that a single job itself keeps a record of."""
    from model.cutting.frozen import list_since_printed

    return list_since_printed(named[0][1].job.purchase, buying) if len(named) == 1 else None


def _find_changes(before: dict[str, int] | None, buying: BuyingList) -> Sequence[Change] | None:
    from model.cutting.printed import count_printed, list_changes

    return None if before is None else list_changes(before, count_printed(buying))


def _note_printed(path: Path, buying: BuyingList) -> None:
    from model.cutting.printed import count_printed, write_printed

    save_bytes(path, write_printed(count_printed(buying)).encode())


def _write_files(
    folder: Path | None,
    plan: CuttingPlan,
    buying: BuyingList,
    style: LengthStyle,
    bought: Sequence[CuttingPlan],
) -> tuple[Path, ...]:
    if folder is None:
        return ()
    from app.outputs import Output, write_outputs
    from export.cutting_csv import write_buying_csv, write_cutting_csv

    outputs = (
        Output("buying list.csv", write_buying_csv(buying, style).encode()),
        Output("cutting plan.csv", write_cutting_csv(plan, style, bought).encode()),
    )
    return write_outputs(folder, outputs)


def _say(
    form: str,
    plan: CuttingPlan,
    buying: BuyingList,
    changes: Sequence[Change] | None,
    style: LengthStyle,
    terminal: Terminal,
    bought: Sequence[CuttingPlan],
) -> None:
    if form == "json":
        from app.cutting_records import cutting_record

        terminal.say(json.dumps(cutting_record(plan, buying, changes, style, bought), indent=2))
    elif form == "csv":
        from export.cutting_csv import write_buying_csv

        terminal.say_all(write_buying_csv(buying, style).splitlines())
    else:
        from app.cutting_lines import cutting_lines

        terminal.say_all(cutting_lines(plan, buying, changes, style, bought))


def run_stock(name: str, as_csv: bool, out: Path | None, terminal: Terminal) -> int:
    """Say a stock list, as a table in words or as CSV; with `out` write it there and say so."""
    from app.cutting_lines import stock_lines
    from app.stock_lists import SUFFIX, read_stock_named, save_stock_list
    from model.units import FEET_INCHES_16

    base = (
        read_stock_named(str(out)) if out and out.suffix.lower() == SUFFIX and os.path.isfile(out) else None
    )
    stock_list = read_stock_named(name, base)
    if out is not None:
        save_stock_list(out, stock_list)
        terminal.say(str(out))
    elif as_csv:
        from export.stock_csv import write_stock_csv

        terminal.say_all(write_stock_csv(stock_list).splitlines())
    else:
        terminal.say_all(stock_lines(stock_list, FEET_INCHES_16))
    return DONE
