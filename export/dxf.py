"""Drawings as one DXF text, in inches: views full size in model space, sheets as layouts that look at them.

What each mark becomes stands in export.dxf_marks; boards, layouts and layers in files of their own.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import TYPE_CHECKING

from export.dxf_boards import BoardNote, part_boards, write_board
from export.dxf_dimensions import DimensionDress, build_dimension_style
from export.dxf_entities import TEXT_STYLES, Pencil, scaled_linetype
from export.dxf_file import R12, R2010, document_text, fixed_dates, is_old, open_document
from export.dxf_layers import WINDOW_LAYER, Layer, find_layer, find_text_layer, nearest_index
from export.dxf_marks import Page, find_layers, write_mark
from export.dxf_sheets import find_sheet_layers, find_shown, write_sheets
from export.dxf_text import format_dxf_text
from model.units import FEET_INCHES_16, LengthStyle
from render.drawing import Anchor, Dimension, Drawing, Pen, Placed, Sheet, Text
from render.extent import Box, drawing_extent
from render.lettering import FAMILY, TYPEFACES
from render.pens import STROKES
from render.sheets import TITLES
from render.shifting import shift_mark

if TYPE_CHECKING:
    from ezdxf.document import Drawing as Document

CAPTION_HEIGHT = 3 / 16
TITLE_HEIGHT = 1 / 4
NOTE_HEIGHT = 1 / 8
"""Heights of capitals, inches on paper. Shop choice, over the 3/32 in. least of interior drawings."""
LINE_GAP = 3 / 8
"""Clear between a view's lowest mark and its caption, and round the title, inches on paper. Shop choice."""

_ARCHITECTURAL = 4
_SIXTEENTHS = 4
_MOST_VIEWPORTS = 64
_WINDOW_COLOUR = 8
_NOTHING = (0.0, 0.0, 1.0, 1.0)
_MARGIN = 1.1


def write_dxf(
    placed: tuple[Placed, ...],
    ratio: float,
    title: str,
    lengths: LengthStyle = FEET_INCHES_16,
    boards: Mapping[str, BoardNote] | None = None,
    sheets: Sequence[Sheet] = (),
    version: str = R2010,
) -> str:
    """DXF text of the views, each shifted by its `at` in model inches and captioned with its title.

    Writing, ticks and dashes in model space come out right when plotted at 1:`ratio`; a CAD program that
    measures again writes `lengths`. What stands for one of `boards`, keyed by the mark of the piece, becomes
    a block. Those of `sheets` that show one of the views become layouts. `version` is R2010 or R12. The
    same input gives the same text, whenever and wherever it is written.
    """
    shown = find_shown(sheets, placed)
    notes = Placed(Drawing(_list_notes(placed, ratio, title, version), ratio), (0.0, 0.0))
    pages = [*placed, notes]
    dress = DimensionDress(
        f"MODEL-1-{ratio:g}".replace(".", "_"), find_layer("", Pen.DIMENSION), ratio, lengths
    )
    with fixed_dates():
        document = open_document(version)
        _set_header(document, _find_extent(pages), title)
        _add_text_styles(document)
        drawn = _find_layers(pages, boards or {})
        _add_layers(document, drawn | find_sheet_layers(shown), ratio)
        build_dimension_style(document, dress, _find_dimension_height(placed), is_current=True)
        pencil = Pencil(document, document.modelspace(), ratio)
        for view in pages:
            _write_view(Page(pencil, dress, view.name, view.at), view, boards or {})
        if shown:
            frozen = sorted(layer.name for layer in drawn if not layer.is_for_all_scales)
            write_sheets(document, shown, lengths, frozen, NOTE_HEIGHT)
        return document_text(document)


def _write_view(page: Page, view: Placed, boards: Mapping[str, BoardNote]) -> None:
    """One view in model space: its boards as blocks, then everything else."""
    seen, others = part_boards((shift_mark(mark, view.at) for mark in view.drawing.marks), boards)
    for piece in seen:
        write_board(page, piece, seen[piece], boards[piece])
    for mark in others:
        write_mark(page, mark)


def _list_notes(placed: tuple[Placed, ...], ratio: float, title: str, version: str) -> tuple[Text, ...]:
    """A caption under each named view, and under them all the title and what the sizes mean."""
    captions = [_build_caption(view, ratio) for view in placed if view.name]
    left, low, _, _ = _find_extent(placed)
    y = low - (CAPTION_HEIGHT + 2 * LINE_GAP + TITLE_HEIGHT) * ratio
    heading = Text(title, (left, y), TITLE_HEIGHT * ratio, bold=True, pen=Pen.BORDER)
    meanings = [f"Inches, drawn full size. Lettering is sized for plotting at 1:{ratio:g}."]
    if version == R12:
        meanings.append(_tell_widths(placed))
    words = []
    for meaning in meanings:
        y -= (LINE_GAP + NOTE_HEIGHT) * ratio
        words.append(Text(meaning, (left, y), NOTE_HEIGHT * ratio, pen=Pen.BORDER))
    return (*captions, heading, *words)


def _tell_widths(placed: Iterable[Placed]) -> str:
    """What R12 has no place for: how wide the lines of each layer are to be plotted."""
    layers = _find_layers(placed, {})
    codes = {layer.name.split("-")[2]: STROKES[layer.pen].width for layer in layers}
    listed = ", ".join(f"{code} {codes[code]:g}" for code in sorted(codes))
    return f"Line widths in mm, by the last part of the layer's name: {listed}."


def _build_caption(view: Placed, ratio: float) -> Text:
    left, low, right, _ = drawing_extent(view.drawing)
    at = (view.at[0] + (left + right) / 2, view.at[1] + low - (LINE_GAP + CAPTION_HEIGHT) * ratio)
    return Text(
        TITLES.get(view.name, view.name),
        at,
        CAPTION_HEIGHT * ratio,
        Anchor.MIDDLE,
        bold=True,
        pen=Pen.BORDER,
    )


def _find_extent(placed: Iterable[Placed]) -> Box:
    """The room that all views take up together in model space."""
    boxes = []
    for view in placed:
        if view.drawing.marks:
            x0, y0, x1, y1 = drawing_extent(view.drawing)
            dx, dy = view.at
            boxes.append((x0 + dx, y0 + dy, x1 + dx, y1 + dy))
    lows_x, lows_y, highs_x, highs_y = zip(*boxes or [_NOTHING], strict=True)
    return min(lows_x), min(lows_y), max(highs_x), max(highs_y)


def _find_layers(placed: Iterable[Placed], boards: Mapping[str, BoardNote]) -> set[Layer]:
    """The layers that the views are on; where there are boards, those of their marks too."""
    layers: set[Layer] = set()
    for view in placed:
        layers |= find_layers(view.drawing.marks, view.name)
        if boards and view.name:
            layers.add(find_text_layer(view.name, Pen.TEXT, next(iter(boards))))
    return layers


def _find_dimension_height(placed: tuple[Placed, ...]) -> float:
    """Height of the dimensions' capitals, plotted inches: that of the first, or of notes without any."""
    for view in placed:
        for mark in view.drawing.marks:
            if isinstance(mark, Dimension):
                return mark.height / view.drawing.ratio
    return NOTE_HEIGHT


def _set_header(document: Document, extent: Box, title: str) -> None:
    """Units, dashes and what is seen first; the title stands in the file's own properties.

    Dashes are as long as they are on paper, both there and in viewports.
    """
    x0, y0, x1, y1 = extent
    header = document.header
    header["$LUNITS"] = _ARCHITECTURAL
    header["$LUPREC"] = _SIXTEENTHS
    header["$LTSCALE"] = 1.0
    header["$PSLTSCALE"] = 1
    header["$MAXACTVP"] = _MOST_VIEWPORTS
    if not is_old(document):
        header["$LWDISPLAY"] = 1
        header.custom_vars.append("Title", format_dxf_text(title))
    document.modelspace().reset_extents((x0, y0, 0.0), (x1, y1, 0.0))
    document.set_modelspace_vport((y1 - y0) * _MARGIN, ((x0 + x1) / 2, (y0 + y1) / 2))


def _add_text_styles(document: Document) -> None:
    for bold, name in TEXT_STYLES.items():
        style = document.styles.add(name, font=TYPEFACES[bold])
        if not is_old(document):
            style.set_extended_font_data(FAMILY, bold=bold)


def _add_layers(document: Document, layers: set[Layer], ratio: float) -> None:
    """Line types, then layers, by name: the order must not hang on how a set happens to run."""
    for layer in sorted(layers, key=lambda layer: layer.name):
        if layer.pattern and layer.linetype not in document.linetypes:
            _add_linetype(document, layer.linetype, layer, 1.0)
            if is_old(document):
                _add_linetype(document, scaled_linetype(layer, ratio), layer, ratio)
        entry = document.layers.add(
            layer.name, color=nearest_index(layer), linetype=layer.linetype, lineweight=layer.weight
        )
        if layer.colour and not is_old(document):
            entry.rgb = layer.colour
    frames = document.layers.add(WINDOW_LAYER, color=_WINDOW_COLOUR)
    frames.dxf.plot = 0


def _add_linetype(document: Document, name: str, layer: Layer, scale: float) -> None:
    pattern = [part * scale for part in layer.pattern]
    document.linetypes.add(name, pattern, description=f"{layer.pen.value} lines")
