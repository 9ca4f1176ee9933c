"""How a chosen colour looks in the light, in shade and in shadow, and the ink that shows on all three.

Which colours there are stands in model.look; where shades lie is render.shaded's.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import lru_cache

from model.look import mix_colours
from render.pens import INK, contrast

STEP = 1.35
"""Contrast between a colour in the light and in shade, and again between shade and shadow: told apart in
grey, and so near that one ink shows on all three. Shop choice."""
CHALK = "#ffffff"
"""Lines on dark colours."""
BLACK, WHITE = "#000000", "#ffffff"
HALVINGS = 12


@dataclass(frozen=True, slots=True)
class Paint:
    """One colour on a surface: turned to the light, turned away, in shadow, and the ink of lines on it."""

    lit: str
    shade: str
    shadow: str
    ink: str


@lru_cache(maxsize=64)
def mix_paint(colour: str) -> Paint:
    """How `colour`, #rrggbb, looks. Too dark for a shadow to show on, it is lifted a little in the light."""
    lit = colour
    if contrast(colour, BLACK) < STEP * STEP:
        lit = _mix_to(colour, WHITE, lambda tried: contrast(tried, BLACK) / (STEP * STEP))
    shade = _mix_to(lit, BLACK, lambda tried: contrast(lit, tried) / STEP)
    shadow = _mix_to(lit, BLACK, lambda tried: contrast(lit, tried) / (STEP * STEP))
    return Paint(lit, shade, shadow, _pick_ink((lit, shade, shadow)))


def _mix_to(colour: str, other: str, reached: Callable[[str], float]) -> str:
    """As little of `other` in `colour` as brings `reached` to 1; all of it where that is too little."""
    low, high = 0.0, 1.0
    for _ in range(HALVINGS):
        share = (low + high) / 2
        if reached(mix_colours(other, colour, share)) >= 1:
            high = share
        else:
            low = share
    return mix_colours(other, colour, high)


def _pick_ink(tones: tuple[str, ...]) -> str:
    """The one of two inks that contrasts more with the tone it contrasts least with."""
    return max((INK, CHALK), key=lambda ink: min(contrast(ink, tone) for tone in tones))
