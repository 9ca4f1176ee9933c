"""What the command for options says: each with its checks and its price, and what differs between them."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any

from app.commands import DONE
from app.terminal import Terminal
from model.job import Job
from model.options import alone

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from model.cutting.stock_list import StockList
    from model.differences import Compared, Difference


def run_options(job: Job, stock_list: StockList, as_json: bool, terminal: Terminal) -> int:
    """Say all options of a job; their plans are those of an offer."""
    from model.differences import list_differences

    compared = []
    for place, name in enumerate(job.options.names):
        terminal.show_progress(place / job.options.count, f"Working out {name}")
        compared.append(compare(alone(job, place), stock_list))
    differences = list_differences(compared)
    if as_json:
        terminal.say(json.dumps(_list_records(job, compared, differences), indent=2))
    else:
        terminal.say_all(_list_lines(job, compared, differences))
    return DONE


def compare(job: Job, stock_list: StockList) -> Compared:
    """One option worked out whole."""
    from app.estimating_process import estimate_surround
    from model.check.all import check_surround
    from model.differences import Compared
    from model.price import make_price
    from model.surround import plan_surround

    surround = plan_surround(job)
    taken = estimate_surround(surround, stock_list)
    price = make_price(taken, job.shop.offer, stock_list.supplies)
    return Compared(surround, check_surround(surround), taken, price)


def _list_records(
    job: Job, compared: Sequence[Compared], differences: Sequence[Difference]
) -> dict[str, Any]:
    """Options and differences for a script; money in hundredths, None where there is no price."""
    return {
        "options": [
            {
                "name": name,
                "in_work": place == job.options.place,
                "findings": dict(_count(each)),
                "price": each.price.total if each.price else None,
                "currency": each.price.currency if each.price else "",
                "missing": list(each.price.missing) if each.price else [],
            }
            for place, (name, each) in enumerate(zip(job.options.names, compared, strict=True))
        ],
        "differences": [
            {"about": str(line.heading), "name": line.name, "path": line.path, "texts": list(line.texts)}
            for line in differences
        ],
    }


def _count(compared: Compared) -> list[tuple[str, int]]:
    from model.check.finding import STATUS_WORD, Status

    statuses = [finding.status for finding in compared.findings]
    return [(STATUS_WORD[status], statuses.count(status)) for status in Status]


def _list_lines(job: Job, compared: Sequence[Compared], differences: Sequence[Difference]) -> Iterator[str]:
    from app.records import table_lines
    from model.differences import say_price

    base = compared[job.options.place].price
    words = [word.capitalize() for word, _ in _count(compared[0])]
    rows = [
        (
            name,
            *(str(count) for _, count in _count(each)),
            say_price(each.price, base),
            "in work" if place == job.options.place else "",
        )
        for place, (name, each) in enumerate(zip(job.options.names, compared, strict=True))
    ]
    yield from table_lines(("Option", *words, "Price", ""), rows)
    missing = {m for each in compared if each.price for m in each.price.missing}
    if missing:
        yield f"Wanted for a price: {'; '.join(sorted(missing))}."
    if differences:
        yield ""
        heading = ("About", "Of what", *job.options.names)
        yield from table_lines(heading, [(str(d.heading), d.name, *d.texts) for d in differences])
