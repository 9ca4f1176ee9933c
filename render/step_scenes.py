"""From where each step is looked at, and what is in its picture: parts on the bench, then the wall.

Boards of two columns made alike stand side by side, the left one on the left.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from model.board import Board
from model.steps.step import Step, Where
from model.surround import Surround
from model.takeoff.faces import Face, list_faces
from model.takeoff.glue_ups import GlueUp
from render.axonometric import BACK_LEFT, BELOW_RIGHT, FRONT_LEFT, FRONT_RIGHT, Scene, Stand
from render.glue_up_scene import stage_wide
from render.site_solids import site_in_room
from render.step_picture import Staged, count_known, sum_seen

APART = 12.0
"""Clear between two parts that are shown beside each other, in. Shop choice."""
BENCH_STANDS = (FRONT_RIGHT, BACK_LEFT, BELOW_RIGHT)
SITE_STANDS = (FRONT_RIGHT, FRONT_LEFT, BELOW_RIGHT)
ENOUGH = 0.6
"""Part of a step's boards that must show from the usual place; else another is looked for. Shop choice."""


@dataclass(frozen=True)
class Shown:
    """A step with its scene, None where nothing is shown; `picked` and `there` are places in it.

    `named` are those whose marks are given: what goes up ready-made was named on the bench.
    """

    step: Step
    staged: Staged | None = None
    picked: tuple[int, ...] = ()
    there: tuple[int, ...] = ()
    named: tuple[int, ...] = ()

    @property
    def seen(self) -> str:
        """Where it is looked at from, where that is not the usual place."""
        stand = self.staged.scene.stand if self.staged else FRONT_RIGHT
        return "" if stand is FRONT_RIGHT else stand.words


@dataclass(frozen=True)
class _Solids:
    """What is in the scenes of some parts, with marks as in `Staged`, wherever it is looked at from."""

    solids: tuple[Board, ...]
    marks: tuple[str, ...]
    faces: tuple[Face, ...]


def list_shown(surround: Surround, steps: Sequence[Step], glue_ups: Sequence[GlueUp]) -> tuple[Shown, ...]:
    """Every step with its picture; `glue_ups` are the take-off's."""
    stage = _Stage(surround, steps, glue_ups)
    return tuple(stage.show(step) for step in steps)


class _Stage:
    """Scenes of one surround, each worked out once."""

    def __init__(self, surround: Surround, steps: Sequence[Step], glue_ups: Sequence[GlueUp]) -> None:
        self._surround = surround
        self._glue_ups = glue_ups
        self._scenes: dict[tuple[tuple[str, ...], Stand], Staged] = {}
        self._solids: dict[tuple[str, ...], _Solids] = {}
        self._chains: dict[tuple[str, ...], list[int]] = {}
        for step in steps:
            if step.where is Where.BENCH and step.parts:
                chain = self._chains.setdefault(step.parts, [])
                chain += [i for i in (*step.there, *step.brought, *step.boards) if i not in chain]

    def show(self, step: Step) -> Shown:
        if step.where is Where.SITE and not step.put_on:
            return Shown(step, self._scene((), FRONT_RIGHT), step.tried, step.there)
        if step.wide:
            staged = stage_wide(self._surround, step, self._glue_ups)
            every = tuple(range(len(staged.marks)))
            return Shown(step, staged, every, (), every)
        if not step.put_on:
            return Shown(step)
        if step.where is Where.SITE:
            return self._choose(step, (), SITE_STANDS, step.put_on, step.there)
        place = {board: n for n, board in enumerate(self._chains[step.parts])}
        picked, there = (tuple(place[i] for i in own) for own in (step.put_on, step.there))
        return self._choose(step, step.parts, BENCH_STANDS, picked, there)

    def _choose(
        self,
        step: Step,
        parts: tuple[str, ...],
        stands: Sequence[Stand],
        picked: tuple[int, ...],
        there: tuple[int, ...],
    ) -> Shown:
        """The usual place where enough shows from there, else the one that shows most boards or most wood."""
        found: list[tuple[int, Staged]] = []
        for stand in stands:
            staged = self._scene(parts, stand)
            known = count_known(staged, picked, there)
            found.append((known, staged))
            if known >= ENOUGH * len(picked) or (known and step.where is Where.SITE and step.brought):
                break
        most = max(known for known, _ in found)
        best = next(staged for known, staged in found if known == most)
        if not most:
            best = max((staged for _, staged in found), key=lambda staged: sum_seen(staged, picked, there))
        named = () if step.where is Where.SITE and step.brought else picked
        return Shown(step, best, picked, there, named)

    def _scene(self, parts: tuple[str, ...], stand: Stand) -> Staged:
        """The scene of some parts on the bench, or with no parts of all before the wall."""
        if (parts, stand) not in self._scenes:
            own = self._find_solids(parts)
            self._scenes[parts, stand] = Staged(Scene(own.solids, stand, own.faces), own.marks)
        return self._scenes[parts, stand]

    def _find_solids(self, parts: tuple[str, ...]) -> _Solids:
        if parts not in self._solids:
            boards, marks = self._surround.boards, self._surround.marks
            if parts:
                own = self._chains[parts]
                solids = tuple(_side_by_side([boards[i] for i in own], parts))
                named = tuple(marks[i] for i in own)
            else:
                site = site_in_room(self._surround.layout)
                solids, named = (*boards, *site), (*marks, *("" for _ in site))
            self._solids[parts] = _Solids(solids, named, list_faces(solids))
        return self._solids[parts]


def _side_by_side(boards: Sequence[Board], parts: tuple[str, ...]) -> list[Board]:
    """The boards of several parts moved together until they stand APART from each other."""
    if len(parts) < 2:
        return list(boards)
    shift, edge = {}, 0.0
    for part in parts:
        own = [board.bounds for board in boards if board.assembly == part]
        left, right = min(low[0] for low, _ in own), max(high[0] for _, high in own)
        shift[part] = edge - left
        edge += right - left + APART
    return [board.moved(dx=shift[board.assembly]) for board in boards]
