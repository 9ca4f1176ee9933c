"""How far materials go and what is left on for cutting: the figures a job starts from, each with its source.

A job may set every one of them to its own; see model.parameters. Weights of woods stand in
model.reference.weights, nails in model.reference.nails.
"""

from model.reference.sourced import Sourced, Standing

_PUBLISHED, _PRACTICE, _MEMORY, _OURS = (
    Standing.PUBLISHED,
    Standing.COMMON_PRACTICE,
    Standing.FROM_MEMORY,
    Standing.SHOP_CHOICE,
)
HANDBOOK_MOISTURE = "Wood Handbook, recommended moisture content of interior wood, most of the USA"
PAINT_PAGE = "article on coverage of house paints"

MOISTURE = Sourced(8.0, "%", _PUBLISHED, HANDBOOK_MOISTURE)
PRIMER_COVERAGE = Sourced(250.0, "sq ft/gal", _PUBLISHED, f"{PAINT_PAGE}: 200 to 300")
PRIMER_COATS = Sourced(1, "", _PRACTICE, "one coat of primer or sealer on all faces before fitting")
TOP_COVERAGE = Sourced(375.0, "sq ft/gal", _PUBLISHED, f"{PAINT_PAGE}: 350 to 400 on smooth primed wood")
TOP_COATS = Sourced(2, "", _PRACTICE, "two coats on what shows")
STAIN_COVERAGE = Sourced(450.0, "sq ft/gal", _PRACTICE, "400 to 500")
CLEAR_COVERAGE = Sourced(425.0, "sq ft/gal", _PRACTICE, "350 to 500")
COAT_LOSS = Sourced(10.0, "%", _PRACTICE, "5 to 10 % brushed; sprayed trim loses 30 to 50 %")
GLUE_FILM = Sourced(6.0, "mil", _PRACTICE, "wet film on one face")
GLUE_LOSS = Sourced(20.0, "%", _OURS, "squeeze-out, brush and bottle")
CAULK_CARTRIDGE = Sourced(10.1, "fl oz", _PUBLISHED, "sealant supplier's yield page")
CAULK_LOSS = Sourced(10.0, "%", _PUBLISHED, "caulk calculator: 10 to 15 %")
BEAD_WOOD = Sourced(1 / 8, "in", _PRACTICE, "fillet in an inside corner of wood")
BEAD_MASONRY = Sourced(1 / 4, "in", _PRACTICE, "fillet against brick, stone or plaster")
NAIL_FACTOR = Sourced(3.0, "", _PUBLISHED, "three pages on nails; another says 2 1/2")
NAIL_SPACING = Sourced(
    16.0, "in", _PUBLISHED, "construction cost book of 2018, trim: casing nailed about 16 in. apart"
)
BRAD_SPACING = Sourced(7.0, "in", _PRACTICE, "1/4 in. panels to their frame, 6 to 8 in. apart")
FILLER_LOSS = Sourced(100.0, "%", _OURS, "as much again is sanded off or dries up")
ABRASIVE_DISC = Sourced(12.0, "sq ft", _PRACTICE, "a 5 in. disc does 10 to 15 sq ft of a grit")
ABRASIVE_GRITS = Sourced(2, "", _PRACTICE, "120 then 150 on bare wood")
FRAME_SCREWS = Sourced(2, "", _PRACTICE, "two to a frame joint")
HOLE_WIDTH = Sourced(0.09, "in", _PRACTICE, "head of a finish nail")
HOLE_DEPTH = Sourced(1 / 8, "in", _PRACTICE, "how deep nails are set")
SEAM = Sourced(1 / 32, "in", _OURS, "width and depth of a seam before it is filled")
TAPE_SIDES = Sourced(2, "", _PRACTICE, "a strip down each long side of a loose panel")

SCRIBE = Sourced(1 / 2, "in", _PRACTICE, "on edges and ends that are fitted to masonry, wall or floor")
TRIM_END = Sourced(1 / 2, "in", _PRACTICE, "1/2 to 1 in. off each end, more if it is checked")
TRIM_EDGE = Sourced(1 / 8, "in", _PRACTICE, "1/16 to 1/8 in. off each edge to rip it clean")
GLUE_LENGTH = Sourced(1 / 2, "in", _PRACTICE, "oversize of a glue-up, lengthwise")
GLUE_WIDTH = Sourced(1 / 4, "in", _PRACTICE, "oversize of a glue-up, across")

SHOE_LEFT = Sourced(1.5, "in", _PRACTICE, "narrow side of a 7 1/4 in. saw's shoe; measure yours")
SHOE_RIGHT = Sourced(5.0, "in", _PRACTICE, "wide side of a 7 1/4 in. saw's shoe; measure yours")
KERF = Sourced(1 / 16, "in", _MEMORY, "thin 7 1/4 in. blades, 0.059 to 0.071 in.; measure yours")
