"""Which pieces are glued up of strips or layers before they are cut to size, and how much of them is glued.

How many strips and how wide stands in model.takeoff.rough. Where a cutting plan has narrower boards it may
ask for more of them.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from model.takeoff.rough import Rough, plan_rough

if TYPE_CHECKING:
    from model.surround import Surround


@dataclass(frozen=True, slots=True)
class GlueUp:
    """Like pieces by their mark, `pieces` their places in the list of boards, and the rough size of each.

    `seams` are the square inches of one piece that are spread with glue: edges of strips, faces of layers.
    """

    mark: str
    pieces: tuple[int, ...]
    rough: Rough
    seams: float

    @property
    def parts(self) -> int:
        """Strips and layers of one piece together."""
        return self.rough.strips * self.rough.layers


def list_glued_up(surround: Surround) -> tuple[GlueUp, ...]:
    """Every kind of piece that is made of more than one strip or layer, in the order of marks."""
    rough = plan_rough(surround)
    return tuple(
        GlueUp(kind.mark, kind.pieces, own, _seams(own, surround.boards[kind.pieces[0]].thickness))
        for kind in surround.kinds
        if (own := rough[kind.mark]).strips * own.layers > 1
    )


def _seams(rough: Rough, thickness: float) -> float:
    edges = (rough.strips - 1) * thickness
    faces = (rough.layers - 1) * rough.width.rough
    return rough.length.rough * (edges + faces)


def area_of_seams(surround: Surround) -> float:
    """Square inches of glue in all glue-ups of strips and layers."""
    return sum(one.seams * len(one.pieces) for one in list_glued_up(surround))
