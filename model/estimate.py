"""What a surround takes, before anything is priced: what is bought, hours of work, what is used up."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from model.cutting.buying import BuyingList, list_buying
from model.cutting.stock_list import HEADINGS
from model.cutting.supplies import SORTS
from model.steps.finishing import Finish, list_finishing
from model.steps.plan import plan_steps
from model.steps.step import Step, Where
from model.steps.work import round_up
from model.takeoff.takeoff import Takeoff

if TYPE_CHECKING:
    from model.cutting.plan import CuttingPlan
    from model.cutting.purchase import Purchase
    from model.surround import Surround

CUTTING, BUILDING, FITTING, FINISHING = "Cutting", "Building", "Fitting on site", "Finishing"


@dataclass(frozen=True, slots=True)
class Hours:
    """Work of one kind, all hands together, in quarters of an hour."""

    kind: str
    hours: float


@dataclass(frozen=True, slots=True)
class Need:
    """So much of a supply, in the measure of its sort."""

    name: str
    amount: float


@dataclass(frozen=True, slots=True)
class Bought:
    """What boards bought before cost under one heading, in hundredths; None where one has no price."""

    heading: str
    cost: int | None


@dataclass(frozen=True, slots=True)
class Estimate:
    """`buying` is still to be bought, `bought` was before: both are in the surround and in its price."""

    buying: BuyingList
    work: tuple[Hours, ...]
    needs: tuple[Need, ...]
    bought: tuple[Bought, ...] = ()


def make_estimate(surround: Surround, takeoff: Takeoff, plan: CuttingPlan) -> Estimate:
    """What `surround` takes; `plan` is one of it, and its stock list's currency goes with it."""
    finishing = list_finishing(surround.job, takeoff.materials)
    return Estimate(
        list_buying(plan),
        list_hours(plan_steps(surround, takeoff), finishing),
        list_needs(takeoff),
        list_bought(surround.job.purchase),
    )


def list_hours(steps: Sequence[Step], finishing: Sequence[Finish]) -> tuple[Hours, ...]:
    """Hours by kind, in quarters that add up to all of it to the next quarter; no kind without any.

    A step on the bench that names no part is the cutting of all boards, or the glue-up of wide ones.
    """
    kinds = {CUTTING: 0.0, BUILDING: 0.0, FITTING: 0.0, FINISHING: sum(each.hours for each in finishing)}
    for step in steps:
        bench = BUILDING if step.parts else CUTTING
        kinds[bench if step.where is Where.BENCH else FITTING] += step.hours
    found, so_far, told = [], 0.0, 0.0
    for kind, hours in kinds.items():
        so_far += hours
        if (quarters := round_up(so_far) - told) > 0:
            found.append(Hours(kind, quarters))
            told += quarters
    return tuple(found)


def list_needs(takeoff: Takeoff) -> tuple[Need, ...]:
    """What is used up, by supply in the order of SORTS; the same material of several lines is added up."""
    amounts = dict.fromkeys(SORTS, 0.0)
    for material in takeoff.materials:
        amounts[material.name] += material.amount
    return tuple(Need(name, amount) for name, amount in amounts.items() if amount > 0)


def list_bought(purchase: Purchase) -> tuple[Bought, ...]:
    """What was paid for boards bought before, by their kind's heading; what lay there cost nothing."""
    costs: dict[str, int | None] = {}
    for board in purchase.boards:
        heading = HEADINGS[board.kind]
        before = costs.get(heading, 0)
        costs[heading] = None if before is None or board.price is None else before + board.price
    return tuple(Bought(heading, cost) for heading, cost in costs.items())
