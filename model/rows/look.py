"""How the surround and what is round it look in pictures; nothing here changes a board."""

from __future__ import annotations

from collections.abc import Mapping

from model.look import CLEAR, FACINGS, PAINTED, PAINTS, STAINED, STAINS, WALLS, name_choices
from model.rows.kinds import choice
from model.rows.row import Kind, Parameter

GROUP = "Colours"
FINISHES = {PAINTED: "Painted", STAINED: "Stained", CLEAR: "Clear coat"}
OWN = "A name from the list, or a colour of your own such as #7c8f93."


def _colour(path: str, label: str, palette: Mapping[str, tuple[str, str]], help: str) -> Parameter:
    choices = name_choices(palette)
    swatches = {key: colour for key, (_, colour) in palette.items()}
    return Parameter(
        path, label, GROUP, Kind.COLOUR, next(iter(choices)), help, choices=choices, swatches=swatches
    )


# fmt: off
LOOK_ROWS: tuple[Parameter, ...] = (
    choice("look.finish", "Wood is", GROUP, FINISHES, "How the wood is finished."),
    _colour("look.paint", "Paint", PAINTS, f"The wood where it is painted. {OWN}"),
    _colour("look.stain", "Stain", STAINS, f"The wood where it is stained, its own tone under it. {OWN}"),
    _colour("look.facing", "Facing", FACINGS, f"Brick, stone or tile round the opening. {OWN}"),
    _colour("look.wall", "Wall", WALLS, f"The wall behind. {OWN}"),
)
# fmt: on
