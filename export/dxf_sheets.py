"""Sheets as layouts: frame, writing, dimensions and hatches on paper, what is there seen through viewports.

Lines are right at any scale and stand in model space; whatever has its size on paper stands on paper. Which
view a drawing shows is found in export.dxf_windows.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from export.dxf_dimensions import DimensionDress, build_dimension_style
from export.dxf_entities import Pencil
from export.dxf_file import is_old
from export.dxf_layers import FRAME, WINDOW_LAYER, Layer, find_layer
from export.dxf_marks import Page, find_layers, write_mark
from export.dxf_text import format_dxf_text
from export.dxf_windows import ModelView, Window, find_window, shows_in_viewports
from model.units import LengthStyle
from render.drawing import Dimension, Drawing, Hatch, Lines, Mark, Pen, Placed, Polyline, Sheet
from render.sheets import PICTURE
from render.shifting import lay_mark

if TYPE_CHECKING:
    from ezdxf.document import Drawing as Document
    from ezdxf.layouts.layout import Paperspace

AROUND = 1 / 16
"""How far a viewport reaches past a whole view, inches on paper, so that no line is cut along its middle."""
BETWEEN = 2.0
"""Clear between sheets that share one paper space, inches."""
DETAIL = "detail_"
"""What the names of details begin with, which are drawn to scale even where that is full size."""
_OF_PAPER = (FRAME, PICTURE)
"""Drawings that show no view: a picture lives by its tints, which are left to paper."""
_UNFIT = str.maketrans(dict.fromkeys('<>/\\":;?*|,=`', " "))
_LONGEST_NAME = 80
_LOCKED = 16384
_ON = 2
_MEDIA = {
    (11.0, 8.5): "ANSI_A_(11.00_x_8.50_Inches)",
    (17.0, 11.0): "ANSI_B_(17.00_x_11.00_Inches)",
    (11.69, 8.27): "ISO_A4_(297.00_x_210.00_MM)",
    (16.54, 11.69): "ISO_A3_(420.00_x_297.00_MM)",
}
"""What plotters call the papers, by their rounded size in inches."""
_NO_DEVICE = "none_device"


@dataclass(frozen=True, slots=True)
class Shown:
    """A sheet with what each of its drawings shows in model space, None where it is of paper alone."""

    sheet: Sheet
    windows: tuple[Window | None, ...]

    @property
    def drawings(self) -> list[tuple[Placed, Window | None, str, tuple[Mark, ...]]]:
        """Its drawings with their windows, the view that names their layers, and the marks left on paper."""
        return [
            (placed, window, window.view.name, window.rest)
            if window
            else (placed, None, placed.name, placed.drawing.marks)
            for placed, window in zip(self.sheet.placed, self.windows, strict=True)
        ]


def find_shown(sheets: Iterable[Sheet], views: Sequence[Placed]) -> tuple[Shown, ...]:
    """Those of `sheets` whose drawings show `views`, which stand in model space.

    A sheet with a drawing to scale that is none of these views is no layout.
    """
    models = [ModelView(view) for view in views]
    found = []
    for sheet in sheets:
        windows = tuple(
            None if placed.name in _OF_PAPER else find_window(placed.drawing, models)
            for placed in sheet.placed
        )
        drawn = zip(sheet.placed, windows, strict=True)
        if any(windows) and all(window or not _needs_window(placed) for placed, window in drawn):
            found.append(Shown(sheet, windows))
    return tuple(found)


def list_unshown(sheets: Iterable[Sheet], views: Sequence[Placed]) -> tuple[Placed, ...]:
    """What the drawings on `sheets` show that none of `views` does: their lines and hatches, by their names.

    Pictures are left out, and what is drawn full size without being a detail: that stands on paper as it is.
    """
    models = [ModelView(view) for view in views]
    found: list[Placed] = []
    for placed in (placed for sheet in sheets for placed in sheet.placed):
        if not _needs_window(placed) or find_window(placed.drawing, models):
            continue
        marks = tuple(mark for mark in placed.drawing.marks if _is_there(mark))
        if marks:
            found.append(Placed(Drawing(marks, placed.drawing.ratio), (0.0, 0.0), placed.name))
            models.append(ModelView(found[-1]))
    return tuple(found)


def _needs_window(placed: Placed) -> bool:
    if placed.name in _OF_PAPER:
        return False
    return placed.drawing.ratio != 1 or placed.name.startswith(DETAIL)


def _is_there(mark: Mark) -> bool:
    if isinstance(mark, Lines | Polyline):
        return shows_in_viewports(mark)
    return isinstance(mark, Hatch)


def find_sheet_layers(shown: Iterable[Shown]) -> set[Layer]:
    """The layers that the sheets' own marks are on."""
    return {
        layer for one in shown for _, _, view, marks in one.drawings for layer in find_layers(marks, view)
    }


def _find_heights(shown: Iterable[Shown]) -> dict[float, float]:
    """The scales that anything on the sheets is dimensioned at, each with the height of its capitals."""
    heights: dict[float, float] = {}
    for one in shown:
        for placed in one.sheet.placed:
            ratio = placed.drawing.ratio
            for mark in placed.drawing.marks:
                if isinstance(mark, Dimension):
                    heights.setdefault(ratio, mark.height / ratio)
    return heights


def write_sheets(
    document: Document,
    shown: Sequence[Shown],
    lengths: LengthStyle,
    frozen: Sequence[str],
    note_height: float,
) -> None:
    """A layout for each sheet; in R12, which has one paper space, they lie there side by side.

    Viewports do not show the layers called `frozen`.
    """
    styles = {ratio: _dress_for(ratio, lengths) for ratio in _all_ratios(shown)}
    heights = _find_heights(shown)
    for ratio, dress in styles.items():
        build_dimension_style(document, dress, heights.get(ratio, note_height))
    open_paper = _open_side_by_side(document, shown) if is_old(document) else _open_layouts(document)
    for one in shown:
        layout, left = open_paper(one.sheet)
        pencil = Pencil(document, layout, 1.0)
        for placed, window, view, marks in one.drawings:
            if window:
                _add_viewport(layout, placed, window, left, frozen)
            at = (placed.at[0] + left, placed.at[1])
            page = Page(pencil, styles[placed.drawing.ratio], view, at)
            for mark in marks:
                write_mark(page, lay_mark(mark, placed.drawing.ratio, at))


def _all_ratios(shown: Iterable[Shown]) -> list[float]:
    return sorted({placed.drawing.ratio for one in shown for placed in one.sheet.placed})


def _dress_for(ratio: float, lengths: LengthStyle) -> DimensionDress:
    """Dimensions on paper that measure the model: lettered at full size, lengths taken `ratio` times."""
    name = f"SHEET-1-{ratio:g}".replace(".", "_")
    return DimensionDress(name, find_layer("", Pen.DIMENSION), 1.0, lengths, factor=ratio)


def _open_layouts(document: Document) -> Callable[[Sheet], tuple[Paperspace, float]]:
    """Gives each sheet a layout of its own, the first the one that every document has."""

    def open_paper(sheet: Sheet) -> tuple[Paperspace, float]:
        name = name_layout(sheet)
        if document.layouts.names() == ["Model", "Layout1"]:
            document.layouts.rename("Layout1", name)
            layout = document.paperspace(name)
        else:
            layout = document.layouts.new(name)
        layout.page_setup((sheet.width, sheet.height), units="inch", device=_NO_DEVICE)
        media = _MEDIA.get((round(sheet.width, 2), round(sheet.height, 2)))
        layout.dxf_layout.dxf.paper_size = media or layout.dxf_layout.dxf.paper_size
        for main in layout.viewports():
            main.dxf.layer = WINDOW_LAYER
        return layout, 0.0

    return open_paper


def _open_side_by_side(
    document: Document, shown: Sequence[Shown]
) -> Callable[[Sheet], tuple[Paperspace, float]]:
    """Gives each sheet its room in the one paper space, from left to right."""
    layout = document.paperspace()
    width = sum(one.sheet.width + BETWEEN for one in shown)
    layout.page_setup_r12((width, max(one.sheet.height for one in shown)), units="inch", scale=(1, 1))
    for main in layout.viewports():
        main.dxf.layer = WINDOW_LAYER
    lefts, left = {}, 0.0
    for one in shown:
        lefts[one.sheet.number] = left
        left += one.sheet.width + BETWEEN
    return lambda sheet: (layout, lefts[sheet.number])


def name_layout(sheet: Sheet) -> str:
    """``03 Plan section``: what the sheet's tab says, in letters that every program takes."""
    number = sheet.number.split(" ")[0]
    words = format_dxf_text(sheet.title).translate(_UNFIT)
    return " ".join(f"{number:0>2} {words}".split())[:_LONGEST_NAME]


def _add_viewport(
    layout: Paperspace, placed: Placed, window: Window, left: float, frozen: Sequence[str]
) -> None:
    """A locked window on the view in model space, exactly at the drawing's scale."""
    ratio = placed.drawing.ratio
    x0, y0, x1, y1 = window.box
    middle = ((x0 + x1) / 2, (y0 + y1) / 2)
    more = 2 * AROUND * ratio if window.is_whole else 0.0
    width, height = x1 - x0 + more, y1 - y0 + more
    viewport = layout.add_viewport(
        center=(placed.at[0] + left + middle[0] / ratio, placed.at[1] + middle[1] / ratio),
        size=(width / ratio, height / ratio),
        view_center_point=(window.view.at[0] + middle[0], window.view.at[1] + middle[1]),
        view_height=height,
        status=_ON,
        dxfattribs={"layer": WINDOW_LAYER, "flags": _LOCKED},
    )
    viewport.frozen_layers = list(frozen)
