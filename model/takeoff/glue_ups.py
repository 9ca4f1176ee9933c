"""Which pieces are glued up of strips or layers before they are cut to size, and how much of them is glued.

How many strips and how wide stands in model.takeoff.rough.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
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


def list_glued_up(surround: Surround, rough: Mapping[str, Rough] | None = None) -> tuple[GlueUp, ...]:
    """Every kind of piece that is made of more than one strip or layer, in the order of marks.

    `rough` are the rough sizes by mark, where boards are not as wide as is common: as a yard has them.
    """
    rough = rough or plan_rough(surround)
    return tuple(
        GlueUp(kind.mark, kind.pieces, own, _seams(own, surround.boards[kind.pieces[0]].thickness))
        for kind in surround.kinds
        if (own := rough[kind.mark]).strips * own.layers > 1
    )


def _seams(rough: Rough, thickness: float) -> float:
    edges = (rough.strips - 1) * thickness
    faces = (rough.layers - 1) * rough.width.rough
    return rough.length.rough * (edges + faces)


def area_of_seams(glue_ups: Sequence[GlueUp]) -> float:
    """Square inches of glue in all of them."""
    return sum(one.seams * len(one.pieces) for one in glue_ups)
