"""One sheet of many different surrounds, to look at: ``python -m tests.contact_sheet FILE.pdf``.

Each variation is the default job with a few rows set; a new way to build belongs in the list.
"""

from __future__ import annotations

import sys
from pathlib import Path

from export.pdf import write_pdf
from model.job import default_job, with_texts
from model.surround import plan_surround
from render.drawing import Anchor, Drawing, Placed, Sheet, Text
from render.extent import drawing_extent
from render.views import ViewOptions, draw_view

VARIATIONS: tuple[tuple[str, str], ...] = (
    ("default", ""),
    ("one panel over the opening", "frieze.panels=1"),
    ("seven panels", "frieze.panels=7 frieze.stile=1 1/2"),
    ("columns of three panels", "column.panels=3"),
    ("four panels, wide columns", "column.panels=4 column.width=11"),
    ("flat frieze on the masonry", "frieze.projection=3/4 frieze.height=12 frieze.panels=1"),
    ("frieze flush with the columns", "frieze.projection=4"),
    ("frieze proud of the columns", "frieze.projection=5 1/2"),
    ("no bed mould", "bed_mould.on=no"),
    ("large bed mould", "bed_mould.size=3 shelf.overhang_front=4 shelf.overhang_end=4"),
    ("thin shelf", "shelf.thickness=3/4 shelf.edge_height=3/4"),
    ("thick hollow shelf", "shelf.thickness=4 shelf.edge_height=4"),
    ("hanging edge band", "shelf.edge_height=4 bed_mould.size=1"),
    ("narrow edge band", "shelf.thickness=3 shelf.edge_height=1"),
    ("low and wide", "opening.width=60 opening.height=28 shelf.height=50 facing.width=100 hearth.width=110"),
    ("small bedroom hearth", "opening.width=24 opening.height=24 shelf.height=46 column.width=5"),
    ("tall plinths", "plinth.height=14 plinth.projection=1 1/4"),
    ("shallow reveal, rebated panels", "panel.reveal=1/4"),
    ("solid panels in grooves", "panel.kind=solid panel.reveal=1/4 over.on=yes"),
    ("deep reveal, on packing", "panel.reveal=1"),
    ("raised hearth", "hearth.height=10 hearth.width=100"),
    ("columns beside a raised hearth", "hearth.height=8 hearth.width=40 shelf.height=52"),
    ("proud facing, stepped sides", "facing.proud=3 facing.height=40 facing.width=100"),
    ("left side narrower", "column.width_left=5 shelf.overhang_left=1 bed_mould.size=1"),
    ("crooked floor", "level.centre=20 level.left=21 level.right=19 1/2"),
    ("facing out of plumb", "plumb.left=1 plumb.right=-3/4 facing.proud=2 facing.height=46"),
    (
        "notched round a baseboard, outlet beside, casing near",
        "baseboard.height_left=5 baseboard.height_right=5 baseboard.meets=notched plinth.on=no "
        "facing.width=50 outlet.right=46 casing.left=46",
    ),
    ("baseboard cut back to the plinths", "baseboard.height_left=5 baseboard.height_right=5 facing.width=60"),
    ("slip and back band packed out", "slip.on=yes back_band.on=yes plumb.left=1 plumb.right=-1"),
    ("shelf on a facing that leans away", "plumb.left=-1 plumb.right=-1/4 shelf.step=1"),
    (
        "plinths notched round unlike baseboards",
        "baseboard.height_left=9 baseboard.thickness_left=1 baseboard.height_right=5 baseboard.meets=notched "
        "facing.width=60 plinth_cap.on=yes plinth.projection=1 1/4",
    ),
    ("stepping over the hearth's end", "hearth.height=8 hearth.width=70 column.over_edge=stepped"),
    (
        "plain columns stepping down, floor out of level",
        "hearth.height=6 hearth.width=68 column.over_edge=stepped column.kind=plain plinth.on=no "
        "level.centre=30 level.floor_left=35 level.floor_right=37 1/2 level.right=30 1/4",
    ),
    (
        "stepping down beside a baseboard",
        "hearth.height=8 hearth.width=72 column.over_edge=stepped plinth.on=no facing.width=60 "
        "baseboard.height_left=5 baseboard.height_right=5 baseboard.meets=notched column.kind=fluted",
    ),
    (
        "old ledger built over, three bolts",
        "old_ledger.top=50 old_ledger.left=36 old_ledger.right=36 bolt_one.across=-32 bolt_one.up=20 "
        "bolt_two.across=31 3/8 bolt_two.up=30 bolt_three.across=4 bolt_three.up=44 1/2 bolt_three.out=1",
    ),
    (
        "old ledger used, wider than the surround",
        "old_ledger.top=51 1/2 old_ledger.use=use old_ledger.left=43 old_ledger.right=42 opening.width=30 "
        "column.margin=10",
    ),
    (
        "cords in the right column, through the plinth",
        "cord.on=yes cord.exit_height=5 plinth.height=9 column.panels=2",
    ),
    ("cords behind a proud frieze", "cord.on=yes cord.place=frieze frieze.projection=5"),
    ("no facing to speak of", "facing.width=38 facing.height=31"),
    ("plain columns, plain frieze", "column.kind=plain frieze.kind=plain"),
    ("fluted columns, capital", "column.kind=fluted capital.on=yes frieze.kind=plain"),
    ("flutes run through", "column.kind=fluted flute.stop=0 flute.count=7 flute.width=1/2 capital.on=yes"),
    ("raised boards on plain columns", "column.kind=raised capital.on=yes plinth_cap.on=yes"),
    ("raised boards, tapered", "column.kind=raised column.taper=1 column.width=8 raised.margin=1 3/4"),
    ("raised tablet", "frieze.kind=tablet column.kind=plain capital.on=yes plinth_cap.on=yes"),
    ("plain frieze beside panels over capitals", "frieze.kind=plain capital.on=yes column.panels=2"),
    ("tapered columns", "column.taper=1 1/2 capital.on=yes plinth_cap.on=yes"),
    ("tapered, three panels, outer edge only", "column.taper=1 column.panels=3 column.taper_edges=outer"),
    (
        "tapered and fluted",
        "column.taper=1 1/4 column.kind=fluted capital.on=yes column.width=8 flute.count=4",
    ),
    ("tapered plain columns, no plinths", "column.taper=2 column.kind=plain plinth.on=no frieze.kind=plain"),
    ("wider at the top, slip inside", "column.taper=-1 column.kind=plain slip.on=yes"),
    (
        "tapered under a frieze over the columns",
        "column.taper=2 column.width=9 column.panels=2 frieze.place=in_front capital.on=yes frieze.panels=5",
    ),
    (
        "tapered, sides unlike, proud facing, crooked floor",
        "column.taper=1 column.width_left=9 facing.proud=2 facing.height=40 facing.width=100 level.centre=20 "
        "level.left=21 level.right=19 1/2 shelf.step=1",
    ),
    ("frieze over the columns", "frieze.place=in_front frieze.panels=5"),
    (
        "frieze over fluted columns",
        "frieze.place=in_front frieze.kind=tablet column.kind=fluted capital.on=yes",
    ),
    ("solid plank", "shelf.kind=plank shelf.thickness=3 bed_mould.on=no"),
    ("plank with a worked edge", "shelf.kind=plank shelf.edge_profile=ovolo shelf.edge_size=1 1/4"),
    ("shelf stepped over the columns", "shelf.step=1 1/2 bed_mould.size=2 shelf.edge_profile=cavetto"),
    (
        "stepped hollow shelf, narrower left side",
        "shelf.step=3 shelf.thickness=4 shelf.edge_height=4 column.width_left=5 shelf.overhang_left=1 1/2",
    ),
    ("stepped plank", "shelf.kind=plank shelf.thickness=3 shelf.step=2"),
    ("inner slip", "slip.on=yes slip.width=3"),
    ("slip inside a back band, capitals", "slip.on=yes back_band.on=yes capital.on=yes plinth_cap.on=yes"),
    ("overmantel to the ceiling", "over.on=yes room.ceiling=90"),
    ("overmantel with panel moulds", "over.on=yes over.projection=2 panel_mould.on=yes frieze.projection=5"),
    ("low overmantel, two panels", "over.on=yes over.reach=height over.height=20 over.panels=2"),
    ("no plinths", "plinth.on=no back_band.on=yes"),
    (
        "ovolo bed mould, ovolo and bead capital",
        "bed_mould.profile=ovolo_and_fillets capital.on=yes capital.profile=ovolo_bead plinth_cap.on=yes",
    ),
    (
        "crown sprung 38, capital in thirds, Attic base",
        "bed_mould.profile=crown_38 bed_mould.size=2 1/2 "
        "capital.on=yes capital.profile=thirds capital.size=4 plinth.projection=1 1/4 plinth_cap.on=yes "
        "plinth_cap.profile=attic_base plinth_cap.size=2",
    ),
    (
        "crown sprung 45, panel mould, torus band",
        "bed_mould.profile=crown_45 bed_mould.size=2 1/2 "
        "panel_mould.on=yes panel_mould.profile=ovolo_bead panel_mould.size=1 back_band.on=yes "
        "back_band.profile=torus back_band.size=1 1/2",
    ),
    (
        "sprung cove, cyma reversa elsewhere",
        "bed_mould.profile=cove_45 bed_mould.size=2 1/4 capital.on=yes "
        "capital.profile=cyma_reversa panel_mould.on=yes panel_mould.profile=cyma_reversa "
        "shelf.edge_profile=cyma_reversa",
    ),
    (
        "cyma recta and bead, astragal, half round",
        "bed_mould.profile=cyma_recta_bead capital.on=yes "
        "capital.profile=astragal capital.size=1 shelf.edge_profile=half_round shelf.edge_size=1 1/4",
    ),
    (
        "all in steps",
        "bed_mould.profile=steps capital.on=yes capital.profile=steps plinth_cap.on=yes "
        "plinth_cap.profile=steps panel_mould.on=yes panel_mould.profile=steps back_band.on=yes "
        "back_band.profile=steps shelf.edge_profile=steps",
    ),
    (
        "all bevelled",
        "bed_mould.profile=bevel capital.on=yes capital.profile=bevel plinth_cap.on=yes "
        "plinth_cap.profile=bevel panel_mould.on=yes panel_mould.profile=bevel back_band.on=yes "
        "back_band.profile=bevel shelf.edge_profile=bevel",
    ),
    (
        "every moulding, frieze flush",
        "frieze.projection=4 capital.on=yes plinth_cap.on=yes panel_mould.on=yes "
        "back_band.on=yes shelf.edge_profile=ovolo",
    ),
    (
        "every moulding, frieze proud",
        "frieze.projection=5 1/2 capital.on=yes plinth_cap.on=yes "
        "panel_mould.on=yes back_band.on=yes shelf.edge_profile=cavetto",
    ),
    (
        "sprung bed mould and capital",
        "bed_mould.profile=bed_38 bed_mould.size=2 capital.on=yes "
        "capital.profile=bed_38 capital.size=2 1/2 panel_mould.on=yes panel_mould.profile=cavetto",
    ),
    (
        "panel moulds in three panels, beaded edge",
        "column.panels=3 panel_mould.on=yes panel_mould.profile=cyma_recta panel_mould.size=3/4 "
        "shelf.edge_profile=quirk_bead shelf.edge_size=1/2 bed_mould.profile=cyma_reversa",
    ),
    (
        "crown as a capital, torus on the plinth",
        "bed_mould.on=no capital.on=yes capital.profile=crown_38 "
        "capital.size=3 plinth_cap.on=yes plinth_cap.profile=torus",
    ),
    (
        "a section of one's own",
        "bed_mould.profile=own_1 own_section.first=fillet 1/4 down, 1/8 back; "
        "cyma reversa 1 down, 3/4 back; bead 1/4 down; cavetto 3/4 down, 1/2 back; fillet 1/8 down; foot 1/4",
    ),
)
COLUMNS, ROWS = 5, 5
WIDTH, HEIGHT, MARGIN, CAPTION = 22.0, 17.0, 0.4, 0.35


def draw_variation(settings: str, ratio: float) -> Drawing:
    """The front view, without dimensions, of the default job with `settings`: path=text, parted by spaces."""
    pairs: list[tuple[str, str]] = []
    for word in settings.split():
        if "=" in word:
            path, text = word.split("=", 1)
            pairs.append((path, text))
        else:
            pairs[-1] = (pairs[-1][0], f"{pairs[-1][1]} {word}")
    surround = plan_surround(with_texts(default_job(), pairs))
    return draw_view(surround, "front", ViewOptions(ratio=ratio, dimensions=False))


def build_contact_sheets() -> tuple[Sheet, ...]:
    """Pages of COLUMNS by ROWS variations, each with its name under it."""
    pages = []
    for start in range(0, len(VARIATIONS), COLUMNS * ROWS):
        placed: list[Placed] = []
        for n, (name, settings) in enumerate(VARIATIONS[start : start + COLUMNS * ROWS]):
            placed += _place(name, settings, n % COLUMNS, n // COLUMNS)
        number = str(len(pages) + 1)
        pages.append(Sheet(number, f"Variations {number}", WIDTH, HEIGHT, tuple(placed)))
    return tuple(pages)


def _place(name: str, settings: str, column: int, row: int) -> tuple[Placed, Placed]:
    cell_w, cell_h = (WIDTH - 2 * MARGIN) / COLUMNS, (HEIGHT - 2 * MARGIN) / ROWS
    drawing = draw_variation(settings, 32.0)
    x0, y0, x1, y1 = drawing_extent(drawing)
    ratio = max((x1 - x0) / (cell_w - 0.3), (y1 - y0) / (cell_h - CAPTION - 0.2))
    drawing = draw_variation(settings, ratio)
    x0, y0, x1, _ = drawing_extent(drawing)
    middle = MARGIN + (column + 0.5) * cell_w
    bottom = HEIGHT - MARGIN - (row + 1) * cell_h
    caption = Drawing((Text(name, (0.0, 0.0), 0.11, Anchor.MIDDLE),))
    at = (middle - (x0 + x1) / 2 / ratio, bottom + CAPTION - y0 / ratio)
    return Placed(drawing, at, "front"), Placed(caption, (middle, bottom + 0.1), "caption")


if __name__ == "__main__":
    Path(sys.argv[1]).write_bytes(write_pdf(build_contact_sheets(), "Variations"))
