"""The tasks of a surround: its steps and its finishing, with what each waits for."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from model.days.network import Task
from model.steps.finishing import Finish
from model.steps.step import Step, Where
from model.steps.touching import Touching

if TYPE_CHECKING:
    from model.shop import Times

BENCH, SITE, FINISHING = "On the bench", "On site", "Finishing"


def list_tasks(
    steps: Sequence[Step], finishing: Sequence[Finish], touching: Touching, times: Times
) -> tuple[Task, ...]:
    """Cutting, what is glued up, what is done to loose pieces, then each sub-assembly by itself; the wall
    meanwhile; then up.

    Glue has its full strength before what was glued up is dressed and a glued sub-assembly goes to the wall.
    """
    return tuple(_Tasks(steps, finishing, touching, times).list_all())


class _Tasks:
    def __init__(
        self, steps: Sequence[Step], finishing: Sequence[Finish], touching: Touching, times: Times
    ) -> None:
        self._steps = steps
        self._finishing = finishing
        self._touching = touching
        self._cure = times.cure
        self._tasks: list[Task] = []
        self._of: dict[int, int] = {}
        self._loose = 0

    def list_all(self) -> list[Task]:
        cut = [n for n, step in enumerate(self._steps) if step.where is Where.BENCH and not step.parts]
        for n in cut:
            before = (len(self._tasks) - 1,) if self._tasks else ()
            dries = self._steps[n].dries
            self._add(n, before, BENCH, max(self._cure, dries) if dries else None)
        self._loose = self._chain([f for f in self._finishing if f.loose], BENCH, len(self._tasks) - 1)
        self._add_bench(self._loose)
        self._add_site()
        up = tuple(n for n, task in enumerate(self._tasks) if task.group == SITE)
        rest = [f for f in self._finishing if not f.loose]
        if rest:
            self._tasks.append(_finish(rest[0], up, FINISHING))
            self._chain(rest[1:], FINISHING, len(self._tasks) - 1)
        return self._tasks

    def _add(self, n: int, after: tuple[int, ...], group: str, waits: float | None = None) -> int:
        step = self._steps[n]
        dries = step.dries if waits is None else waits
        self._of[n] = len(self._tasks)
        self._tasks.append(Task(step.title, step.hours / step.hands, step.hands, dries, after, group))
        return len(self._tasks) - 1

    def _chain(self, finishes: Sequence[Finish], group: str, last: int) -> int:
        """One after the other, the first after the task `last`; the place of the last one."""
        for finish in finishes:
            self._tasks.append(_finish(finish, (last,), group))
            last = len(self._tasks) - 1
        return last

    def _add_bench(self, loose: int) -> None:
        """Each sub-assembly's steps one after the other."""
        last: dict[tuple[str, ...], int] = {}
        ends = {step.parts: n for n, step in enumerate(self._steps) if self._is_bench(step)}
        glued = {step.parts for step in self._steps if self._is_bench(step) and step.dries}
        for n, step in enumerate(self._steps):
            if self._is_bench(step):
                cure = max(self._cure, step.dries) if ends[step.parts] == n and step.parts in glued else None
                last[step.parts] = self._add(n, (last.get(step.parts, loose),), BENCH, cure)

    def _is_bench(self, step: Step) -> bool:
        return step.where is Where.BENCH and bool(step.parts)

    def _add_site(self) -> None:
        """Setting out waits for nothing; what goes up waits for what it touches and was tried with."""
        set_out: int | None = None
        tried: int | None = None
        for n, step in enumerate(self._steps):
            if step.where is Where.BENCH:
                continue
            if not step.put_on:
                if set_out is None:
                    set_out = self._add(n, (), SITE)
                else:
                    tried = self._add(n, self._before_trial(set_out), SITE)
                continue
            before = [set_out if tried is None else tried, *self._touched(n)]
            cut = [self._sized(step)] if step.boards else []
            after = tuple(dict.fromkeys(i for i in (*cut, *before) if i is not None))
            self._add(n, after, SITE)

    def _before_trial(self, set_out: int) -> tuple[int, ...]:
        """Everything built on the bench, and what is on the wall by then."""
        benches = {step.parts: self._of[n] for n, step in enumerate(self._steps) if self._is_bench(step)}
        wall = [n for n, task in enumerate(self._tasks) if task.group == SITE and n != set_out]
        return tuple(sorted({self._loose, *benches.values(), *wall, set_out}))

    def _sized(self, step: Step) -> int:
        """The task after which the step's own boards are cut to size."""
        own = set(step.boards)
        return max(task for n, task in self._of.items() if task == 0 or own & set(self._steps[n].dressed))

    def _touched(self, n: int) -> list[int]:
        """The tasks before it that put something up which it touches."""
        own = self._steps[n].put_on
        return [
            task
            for before, task in self._of.items()
            if self._steps[before].where is Where.SITE
            and self._touching.between(own, self._steps[before].put_on) > 0
        ]


def _finish(finish: Finish, after: tuple[int, ...], group: str) -> Task:
    return Task(finish.title, finish.hours, 1, finish.waits, after, group)
