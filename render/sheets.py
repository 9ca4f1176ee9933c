"""The page itself: sizes, border, where the title block lies and the room left for drawings. Paper inches.

What stands on a sheet is decided in render.chapters, what its title block says in render.title_block.
"""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum

from model.errors import Refused
from render.check_bar import check_bar_marks
from render.drawing import MM, Drawing, Lines, Mark, Pen, Placed, Polyline, Sheet
from render.extent import Box, box_ring
from render.title_block import LOW_HEIGHT, TitleBlock, low_block, split_notes, tall_block

PAPERS: Mapping[str, tuple[float, float]] = {
    "letter": (11.0, 8.5),
    "tabloid": (17.0, 11.0),
    "a4": (297 * MM, 210 * MM),
    "a3": (420 * MM, 297 * MM),
}
"""Width and height with the long side level: ANSI/ASME Y14.1 A and B, ISO 216 A4 and A3."""

VIEW_TITLES: Mapping[str, str] = {
    "front": "Front elevation",
    "side": "Side elevation",
    "plan": "Plan",
    "plan_section": "Plan section",
    "vertical_section": "Vertical section",
}

DETAIL_TITLES: Mapping[str, str] = {
    "plan_section_detail": "Right column, detail",
    "vertical_section_detail": "Frieze and shelf, detail",
}
PICTURE = "picture"
SITE_FRONT, SITE_CUT, SITE_PLAN = "site_front", "site_cut", "plan_site"
DETAILS: Mapping[str, str] = {
    "detail_shelf_edge": "Shelf edge",
    "detail_column_right": "Corner, right",
    "detail_frieze_right": "Frieze joint, right",
    "detail_foot_right": "Foot, right",
    "detail_column_left": "Corner, left",
    "detail_frieze_left": "Frieze joint, left",
    "detail_foot_left": "Foot, left",
    "detail_baseboard_right": "Baseboard, right",
    "detail_baseboard_left": "Baseboard, left",
    "detail_cord_upper": "Cord hole, upper",
    "detail_cord_lower": "Cord hole, lower",
    "detail_access": "Access panel, edge",
    "detail_packing_slip": "Packing behind the slip",
    "detail_packing_back_band": "Packing behind the back band",
    "detail_packing_cleat": "Packing behind the cleat",
    "detail_packing_ledger": "Packing behind the ledger",
}
"""Details with a cutting plane of their own, by the names they are placed under."""
FRAME_SIZES = "front_frames"
ANCHORS = "anchors"
BOARDS_FRONT, BOARDS_SIDE = "boards_front", "boards_side"
BOARDS_COLUMN, BOARDS_SHELF = "boards_column", "boards_shelf"
PART_FRONT, PART_LEFT, PART_RIGHT = "part_front", "left_part", "part_right"
PART_ABOVE, PART_LEVEL_CUT, PART_UPRIGHT_CUT = "plan_part", "plan_part_section", "part_section"
PART_VIEWS = frozenset((PART_FRONT, PART_LEFT, PART_RIGHT, PART_ABOVE, PART_LEVEL_CUT, PART_UPRIGHT_CUT))
"""Views of one sub-assembly; beside and over the first of them its scale is not written again."""
CONTINUED = ", continued"
"""Ends the title of a sheet that goes on with the one before."""
MORE = "_more"
"""Ends the name of a view that is drawn again with the dimensions that had no room on its sheet."""
TITLES: Mapping[str, str] = {
    **VIEW_TITLES,
    **{view + MORE: f"{title}, more sizes" for view, title in VIEW_TITLES.items()},
    **DETAIL_TITLES,
    **DETAILS,
    PICTURE: "Front elevation, shaded",
    SITE_FRONT: "The site, front",
    SITE_CUT: "The site, cut upright",
    SITE_PLAN: "The site from above",
    FRAME_SIZES: "Front elevation, frame sizes",
    ANCHORS: "Anchors",
    BOARDS_FRONT: "Boards, front",
    BOARDS_SIDE: "Boards, side",
    BOARDS_COLUMN: "Boards, column in plan",
    BOARDS_SHELF: "Boards, frieze and shelf",
    PART_FRONT: "Front",
    PART_LEFT: "Left side",
    PART_RIGHT: "Right side",
    PART_ABOVE: "From above",
    PART_LEVEL_CUT: "Section C–C",
    PART_UPRIGHT_CUT: "Section D–D",
}
"""What each drawing on a sheet is called, by the name it is placed under."""
LABELS: Mapping[str, str] = {
    "plan_section": "A",
    "vertical_section": "B",
    "plan_section_detail": "1",
    "vertical_section_detail": "2",
    **{name: str(number) for number, name in enumerate(DETAILS, start=3)},
}
"""What each drawing is called in a mark, by the name it is placed under."""
MARKED_ON: Mapping[str, str] = {
    "plan_section": "front",
    "vertical_section": "front",
    "plan_section_detail": "plan_section",
    "vertical_section_detail": "vertical_section",
    "detail_shelf_edge": "vertical_section_detail",
    "detail_column_right": "plan_section_detail",
}
"""The drawing that has the mark of each."""

BINDING_EDGE, OTHER_EDGES = 20 * MM, 10 * MM
"""Border to the paper's left edge and to its other edges: ISO 5457, from memory."""
BLOCK_WIDTH = 180 * MM
"""Widest block below the drawings: ISO 7200, from memory."""
CAUTION_WIDTH = 95 * MM
"""Least room beside that block for the cautions. Shop choice."""
COLUMN_WIDTH = 50 * MM
"""Width of the block beside the drawings. Shop choice."""


class Block(StrEnum):
    """Where the title block lies: beside drawings, which want height, below tables, which want width."""

    BESIDE = "beside"
    BELOW = "below"


CLEAR = {Block.BESIDE: 2 * MM, Block.BELOW: 3 * MM}
"""Kept clear between the border and what stands inside it, by where the block lies. Shop choice."""


def paper_size(paper: str) -> tuple[float, float]:
    """Width and height of a paper by name, paper inches. Raises Refused."""
    if paper not in PAPERS:
        raise Refused("paper", paper, "write one of " + ", ".join(PAPERS))
    return PAPERS[paper]


def safe_area(width: float, height: float, block: Block) -> Box:
    """Left, bottom, right and top of the room for drawings on a page of that size."""
    left, bottom, right, top = _border(width, height)
    if block is Block.BESIDE:
        right -= COLUMN_WIDTH
    else:
        bottom += LOW_HEIGHT
    clear = CLEAR[block]
    return left + clear, bottom + clear, right - clear, top - clear


def fit_notes(
    width: float, height: float, notes: tuple[str, ...], pointer: str
) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The notes that find room in the block beside the drawings of a page, and those that do not.

    Where any do not, the first end with `pointer`, which says where the others stand.
    """
    _, bottom, right, top = _border(width, height)
    return split_notes(notes, pointer, (right - COLUMN_WIDTH, bottom, right, top))


def build_sheet(
    width: float, height: float, place: Block, block: TitleBlock, placed: tuple[Placed, ...]
) -> Sheet:
    """A page with its border, check bar and title block round `placed`."""
    frame = Placed(draw_frame(width, height, place, block), (0.0, 0.0), "frame")
    return Sheet(block.number, block.title, width, height, (*placed, frame))


def draw_frame(width: float, height: float, place: Block, block: TitleBlock) -> Drawing:
    """Border, check bar in the binding edge, and title block, at ratio 1."""
    left, bottom, right, top = _border(width, height)
    border = Polyline(Pen.BORDER, box_ring((left, bottom, right, top)), closed=True)
    bar = check_bar_marks(left - 1.6 * MM, bottom)
    marks: tuple[Mark, ...]
    if place is Block.BESIDE:
        edge = right - COLUMN_WIDTH
        parting = Lines(Pen.EDGE, ((edge, bottom, edge, top),))
        marks = tall_block(block, (edge, bottom, right, top))
    else:
        edge = bottom + LOW_HEIGHT
        parting = Lines(Pen.EDGE, ((left, edge, right, edge),))
        split = right - min(BLOCK_WIDTH, right - left - CAUTION_WIDTH)
        marks = low_block(block, (left, bottom, right, edge), split)
    return Drawing((border, parting, *bar, *marks))


def _border(width: float, height: float) -> Box:
    return BINDING_EDGE, OTHER_EDGES, width - OTHER_EDGES, height - OTHER_EDGES
