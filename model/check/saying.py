"""How a cure is said: a sentence with the value to set and the one it takes the place of. Found in remedy."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from model.job import Job, read_value
from model.parameters import Kind, Value, find_parameter
from model.sentences import capitalise, end_sentence
from model.units import MILLIMETRES_ONLY, MM_PER_INCH, LengthStyle


@dataclass(frozen=True, slots=True)
class Change:
    """A parameter and the value it gets."""

    path: str
    value: Value

    @property
    def number(self) -> float | None:
        """A size or a count; None where it is yes or no, or a word."""
        if isinstance(self.value, bool) or not isinstance(self.value, int | float):
            return None
        return self.value


def read_number(job: Job, path: str) -> float:
    """The value that holds, an overhang that was not given for one end being both ends'."""
    value = read_value(job, path)
    return float(read_value(job, "shelf.overhang_end") if value is None else value)


SAYINGS = {
    "column.margin": "set the columns {} from the opening",
    "column.projection": "let the columns stand out {}",
    "column.width": "make the columns {} wide",
    "column.over_edge": "let the columns step down to the floor",
    "raised.thickness": "let the columns' raised boards stand out {}",
    "raised.margin": "leave {} of the columns' faces round the raised boards",
    "plinth.height": "make the plinths {} high",
    "plinth.projection": "let the plinths stand out {} beyond the columns",
    "plinth.on": "leave the plinths off",
    "plinth_cap.size": "make the plinth caps {} high",
    "plinth_cap.on": "leave the plinth caps off",
    "capital.size": "make the capitals {} high",
    "capital.on": "leave the capitals off",
    "back_band.size": "make the back band {}",
    "back_band.on": "leave the back band off",
    "slip.width": "make the slip {} wide",
    "slip.thickness": "make the slip {} thick",
    "slip.on": "leave the slip off",
    "frieze.height": "make the frieze {} high",
    "frieze.projection": "let the frieze stand out {}",
    "bed_mould.size": "make the bed mould {} high",
    "bed_mould.on": "leave the bed mould off",
    "nailer.ledger": "make the ledger {} high",
    "nailer.width": "make the columns' uprights {} wide",
    "shelf.overhang_front": "let the shelf overhang {} in front",
    "shelf.overhang_left": "let the shelf overhang {} at its left end",
    "shelf.overhang_right": "let the shelf overhang {} at its right end",
    "shelf.step": "let the shelf break forward {} over the columns",
    "shelf.kind": "build the shelf up from boards",
    "shelf.thickness": "make the shelf {} thick",
    "tv.gap": "hang the set {} over the shelf",
    "tv.away": "move the seat {} away",
    "over.on": "leave the overmantel off",
    "column.rail": "make the columns' rails {} wide",
    "column.stile": "make the columns' stiles {} wide",
    "frieze.rail": "make the frieze's rails {} wide",
    "frieze.stile": "make the frieze's stiles {} wide",
    "over.rail": "make the overmantel's rails {} wide",
    "over.stile": "make the overmantel's stiles {} wide",
    "panel.kind": "make the panels of sheet",
    "panel.reveal": "let the panels lie {} behind the face",
    "panel_mould.size": "make the panel mould {} wide",
    "over.projection": "let the overmantel stand out {}",
    "hearth.depth": "bring the hearth itself out to {}",
    "hearth.width": "widen the hearth itself to {}",
    "hearth.thickness": "lay a hearth {} thick",
    "facing.height": "carry the facing itself up to {} over the hearth",
    "facing.width": "widen the facing itself to {}",
}


def say_changes(job: Job, changes: Sequence[Change]) -> str:
    """One sentence of what to do, each value with the one it takes the place of."""
    said = " and ".join(_say(job, change) for change in changes)
    return capitalise(end_sentence(said))


def _say(job: Job, change: Change) -> str:
    row, style = find_parameter(change.path), job.about.length_style
    saying = SAYINGS.get(change.path, f"set the {row.name} to {{}}")
    if change.path == "shelf.height":
        saying = f"set the shelf's top {{}} over the {job.design.shelf.height_from}"
    if change.number is None:
        return saying.format(row.format(change.value, style))
    number = read_number(job, change.path)
    old, new = (row.format(int(n) if row.kind is Kind.COUNT else n, style) for n in (number, change.number))
    if old == new:
        old = _say_exactly(number, style)
    return f"{saying.format(new)} instead of {old}"


def _say_exactly(inches: float, style: LengthStyle) -> str:
    """A length that lies off the tape's marks, where its nearest mark would read like the new one."""
    if style.units == MILLIMETRES_ONLY:
        return f"{inches * MM_PER_INCH:.2f} mm"
    return f"{inches:.4f} in."
