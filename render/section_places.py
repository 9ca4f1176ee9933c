"""Where the two sections are taken; how boards are cut there is render.cutting_plane's."""

from __future__ import annotations

from model.surround import Surround


def section_level(surround: Surround) -> float:
    """y of the plan section: through the middle of the columns' lowest panel, of what else is on them, or
    below it."""
    layout, frame = surround.layout, surround.layout.right.frame
    if frame.raised:
        return sum(frame.raised.y) / 2
    if frame.openings or frame.flutes:
        _, low, _, high = (*frame.openings, frame.flutes)[0] or frame.outline
        return (low + high) / 2
    return (layout.right.plinth_top + layout.frieze_bottom) / 2


def section_station(surround: Surround) -> float:
    """x of the vertical section: the middle of the frieze's panel nearest the centre line, or that line."""
    middles = [(x0 + x1) / 2 for x0, _, x1, _ in surround.layout.frieze_frame.openings]
    return min(middles, key=lambda x: (abs(x), -x), default=0.0)
