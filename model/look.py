"""Colours a homeowner may choose between: our own names, and the tone of each wood under a clear coat.

Colours are #rrggbb as they look in the light. How shades and shadows of them look is render.painted's.
"""

from __future__ import annotations

from collections.abc import Mapping

from model.design import Look

PAINTED, STAINED, CLEAR = "painted", "stained", "clear"

PAINTS: Mapping[str, tuple[str, str]] = {
    "milk": ("Milk", "#fdfaf3"),
    "oat": ("Oat", "#e6dcc8"),
    "straw": ("Straw", "#dccb9c"),
    "pebble": ("Pebble", "#cbc8c0"),
    "rain": ("Rain", "#b4bfc2"),
    "lichen": ("Lichen", "#a9b39c"),
    "moss": ("Moss", "#66704f"),
    "pond": ("Pond", "#5d7f80"),
    "dusk": ("Dusk", "#53647c"),
    "clay": ("Clay", "#a8664d"),
    "plum": ("Plum", "#5f3a48"),
    "slate": ("Slate", "#4c5359"),
    "midnight": ("Midnight", "#26334a"),
    "soot": ("Soot", "#2c2b2b"),
}
"""Words shown and colour of each paint, light before dark. Names and colours are ours."""
WALLS: Mapping[str, tuple[str, str]] = {"paper": ("Paper", "#f7f7f5"), **PAINTS}
FACINGS: Mapping[str, tuple[str, str]] = {
    "as_drawn": ("Pale stone", "#eae6e1"),
    "brick": ("Red brick", "#a5604a"),
    "brown_brick": ("Brown brick", "#7d5a48"),
    "sandstone": ("Sandstone", "#cbb48f"),
    "limestone": ("Limestone", "#d8d2c4"),
    "grey_stone": ("Grey stone", "#8d8f8e"),
    "slate": ("Slate", "#4c5359"),
    "marble": ("White marble", "#eeedea"),
    "dark_marble": ("Dark marble", "#35373b"),
    "tile": ("Green tile", "#5b7a66"),
}
STAINS: Mapping[str, tuple[str, str]] = {
    "honey": ("Honey", "#d9a55a"),
    "chestnut": ("Chestnut", "#9b6238"),
    "tobacco": ("Tobacco", "#7a5434"),
    "peat": ("Peat", "#553c2c"),
    "smoke": ("Smoke", "#8a8478"),
    "tar": ("Tar", "#393230"),
}
BARE: Mapping[str, str] = {
    "poplar": "#d8cda6",
    "white_pine": "#ecd9ae",
    "ponderosa": "#e6c78f",
    "maple": "#ead6b2",
    "red_oak": "#d3a679",
    "white_oak": "#cbb083",
    "cherry": "#b97a4f",
    "walnut": "#78573f",
    "alder": "#c99d73",
    "basswood": "#e9dabb",
}
"""Each wood planed, under a clear coat: judged by eye, as every board differs. Shop choice."""
STAIN_SHARE = 0.7
"""How much of a stained tone is the stain's; the wood's own shows through it. Shop choice."""


def name_choices(palette: Mapping[str, tuple[str, str]]) -> dict[str, str]:
    """Stored word to words shown."""
    return {key: words for key, (words, _) in palette.items()}


def colour_of(chosen: str, palette: Mapping[str, tuple[str, str]]) -> str:
    """#rrggbb of a colour by its stored word, or of one that is its own."""
    return palette[chosen][1] if chosen in palette else chosen


def wood_colour(look: Look, species: str) -> str:
    """The wood in the light as it is finished; `species` counts where it shows."""
    if look.finish == PAINTED:
        return colour_of(look.paint, PAINTS)
    bare = BARE[species]
    return bare if look.finish == CLEAR else mix_colours(colour_of(look.stain, STAINS), bare, STAIN_SHARE)


def name_finish(look: Look) -> str:
    """The wood's finish in words: painted, moss."""
    palette, chosen = (PAINTS, look.paint) if look.finish == PAINTED else (STAINS, look.stain)
    word = palette[chosen][0].lower() if chosen in palette else chosen
    return "clear coat" if look.finish == CLEAR else f"{look.finish}, {word}"


def is_painted(look: Look) -> bool:
    """Whether the wood is covered; stained or under a clear coat its grain shows."""
    return look.finish == PAINTED


def wall_colour(look: Look) -> str:
    """The wall in the light."""
    return colour_of(look.wall, WALLS)


def facing_colour(look: Look) -> str:
    """The facing in the light."""
    return colour_of(look.facing, FACINGS)


def mix_colours(one: str, other: str, share: float) -> str:
    """`share` of `one` with the rest of `other`, channel by channel."""
    pairs = zip(channels_of(one), channels_of(other), strict=True)
    return "#" + "".join(f"{round(share * a + (1 - share) * b):02x}" for a, b in pairs)


def channels_of(colour: str) -> tuple[int, int, int]:
    """Red, green and blue from 0 to 255 of a colour written #rrggbb."""
    red, green, blue = (int(colour[i : i + 2], 16) for i in (1, 3, 5))
    return red, green, blue
