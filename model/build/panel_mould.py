"""The panel mould: a mitred frame inside each panel opening of any part, lying on the panel."""

from __future__ import annotations

from model.board import Board
from model.build.both_sides import build_both
from model.build.lines import Frame, Layout
from model.build.run import ON_FACE, against, moulding_stock, run_section
from model.moulding.section import Section

ROUND = ("upright", "crosspiece", "upright", "crosspiece")
"""The legs of a frame in the order they are run."""


def build_panel_moulds(layout: Layout, wood: str) -> tuple[Board, ...]:
    """The columns' and the frieze's frames, the columns' first; nothing where there are none."""
    section = layout.mouldings.panel
    if section is None:
        return ()
    columns = build_both(
        layout, lambda side: _build_frames(side.frame, "column", f"{side.name} column", section, wood)
    )
    return columns + _build_frames(layout.frieze_frame, "frieze", "frieze", section, wood)


def build_over_panel_moulds(layout: Layout, wood: str) -> tuple[Board, ...]:
    """The frames in the overmantel's panels; nothing where there are none."""
    section, over = layout.mouldings.panel, layout.over
    if section is None or over is None:
        return ()
    return _build_frames(over.frame, "overmantel", "overmantel", section, wood)


def _build_frames(frame: Frame, name: str, assembly: str, section: Section, wood: str) -> tuple[Board, ...]:
    stock, profile = moulding_stock(section, wood), against(section, frame.front - frame.reveal)
    boards: tuple[Board, ...] = ()
    for x0, y0, x1, y1 in frame.upright:
        path = [(x0, y0), (x0, y1), (x1, y1), (x1, y0)]
        boards += run_section(
            [f"{name} panel mould {word}" for word in ROUND],
            assembly,
            stock,
            path,
            profile,
            ON_FACE,
            closed=True,
        )
    return boards
