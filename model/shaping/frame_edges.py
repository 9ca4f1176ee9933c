"""Edges of panels in their frames: which way they go as stiles and rails get wider.

Panels share what is left between the members of a frame, so that an edge in the middle moves less than one
at its end.
"""

from __future__ import annotations

from collections.abc import Iterator

from model.build.lines import Rect
from model.shaping.grip import ACROSS, UP, Edge


def share_before(i: int, count: int) -> float:
    """Inches a member's width changes for each that the near edge of panel `i` of `count` moves."""
    return count / (count - i)


def share_after(i: int, count: int) -> float:
    """The same for the far edge of panel `i`; it moves towards the near one as members get wider."""
    return -count / (i + 1)


def list_row(path: str, openings: tuple[Rect, ...], where: str) -> Iterator[Edge]:
    """Edges of panels side by side in a frame `where`, whose stiles and rails are rows of `path`."""
    count = len(openings)
    for i, (x0, y0, x1, y1) in enumerate(openings):
        panel = f"{where}'s panel" if count == 1 else f"panel {i + 1} of the {where.removeprefix('the ')}"
        yield Edge(
            f"{path}.stile", f"left edge of {panel}", ((x0, y0, x0, y1),), ACROSS, share_before(i, count)
        )
        yield Edge(
            f"{path}.stile", f"right edge of {panel}", ((x1, y0, x1, y1),), ACROSS, share_after(i, count)
        )
    panels = f"{where}'s panel" + ("s" if count > 1 else "")
    lower = tuple((x0, y0, x1, y0) for x0, y0, x1, _ in openings)
    upper = tuple((x0, y1, x1, y1) for x0, _, x1, y1 in openings)
    yield Edge(f"{path}.rail", f"lower edge of {panels}", lower, UP, 1.0)
    yield Edge(f"{path}.rail", f"upper edge of {panels}", upper, UP, -1.0)
