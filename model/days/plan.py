"""The day plan of a surround: its tasks, and when each is done."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from model.days.calendar import Slot, lay_out_days
from model.days.network import Task
from model.days.slack import list_slack
from model.days.tasks import list_tasks
from model.steps.finishing import list_finishing
from model.steps.plan import plan_steps
from model.steps.touching import touching_of
from model.takeoff.takeoff import Takeoff

if TYPE_CHECKING:
    from model.surround import Surround


@dataclass(frozen=True, slots=True)
class DayPlan:
    """`tasks` and their `slots`, place for place; `crew` people work `day` hours a day."""

    tasks: tuple[Task, ...]
    slots: tuple[Slot, ...]
    crew: int
    day: float

    @property
    def slack(self) -> tuple[float, ...]:
        """Working hours by which each task may begin later."""
        return list_slack(self.tasks, self.slots, self.day)

    @property
    def hours(self) -> float:
        """Work of all hands together."""
        return sum(task.hours * task.hands for task in self.tasks)


def plan_days(surround: Surround, takeoff: Takeoff) -> DayPlan:
    """The plan by the job's own hours and crew."""
    times = surround.job.shop.times
    steps = plan_steps(surround, takeoff)
    finishing = list_finishing(surround.job, takeoff.materials)
    touching = touching_of(surround, takeoff)
    tasks = list_tasks(steps, finishing, touching, times)
    return DayPlan(tasks, lay_out_days(tasks, times.crew, times.day), times.crew, times.day)
