"""The words of every choice: as a job keeps them, and as they are shown."""

from __future__ import annotations

from model.fixing import IN_FRIEZE, OWN
from model.reference.connectors import CONNECTORS

PIECE_USES = {
    "nothing": "nothing",
    "shelf": "shelf top or plank",
    "shelf_underside": "shelf underside",
    "shelf_edge": "shelf edge band",
    "bed_mould": "bed mould",
    "frieze_board": "plain frieze",
    "column_face": "plain column faces",
    "column_stile": "column stiles",
    "ledger": "ledger under the shelf",
}
"""What a board on hand may be used for, by the word a job keeps."""
FIREPLACES = {
    "masonry": "Masonry, wood-burning",
    "factory_built": "Factory-built",
    "gas": "Gas",
    "electric": "Electric",
    "not_in_use": "Not in use",
}
RULES = {
    "strictest": "Strictest of IRC and NFPA 211",
    "irc": "IRC masonry",
    "nfpa211": "NFPA 211 masonry",
    "canada": "Canada, NBC 9.22",
    "australia": "Australia, Housing Provisions 12.4",
    "england": "England, Approved Document J",
    "local": "A local amendment",
    "manual": "The appliance's manual",
}
DATUMS = {
    "opening": "The opening's top",
    "hood": "The hood's edge",
    "outlet": "The hot-air outlet",
    "base": "The unit's base",
}
BETWEEN_ROWS = {"step_up": "Steps up to the next", "linear": "Runs straight"}
UNITS = {
    "feet_inches": "Feet and inches",
    "inches": "Inches",
    "millimetres": "Millimetres",
    "both": "Inches [millimetres]",
}
PRECISIONS = {"16": "1/16 in.", "32": "1/32 in."}
MEETS = {"cut_back": "Cut back to the column", "notched": "Column notched round it"}
OLD_LEDGER_USES = {
    "keep": "Left, and built over",
    "use": "Used as the ledger",
    "remove": "Taken off first",
}
OVER_EDGE = {"level": "Level with the hearth", "stepped": "Steps to the floor"}
HEIGHTS_FROM = {"hearth": "The hearth", "floor": "The floor"}
TAPERED = {"both": "Both edges", "outer": "Outer edge only"}
COLUMNS = {
    "framed": "Framed panels",
    "plain": "Plain board",
    "raised": "Plain, raised board",
    "fluted": "Fluted",
}
FRIEZES = {"framed": "Framed panels", "plain": "Plain board", "tablet": "Plain, raised tablet"}
FRIEZE_PLACES = {"between": "Between the columns", "in_front": "Over the columns"}
SHELVES = {"built_up": "Built up from boards", "plank": "Solid plank"}
OVER_REACHES = {"ceiling": "The ceiling", "height": "A given height"}
MATCHES = {
    "free": "Nothing",
    "columns": "Each column's stiles",
    "frieze": "The frieze's rails",
    "both": "Stiles and rails",
}
PANELS = {"sheet": "Thin sheet", "solid": "Solid wood"}
GRAINS = {"along": "Along their length", "free": "Either way"}
SPECIES = {
    "poplar": "Yellow poplar",
    "white_pine": "Eastern white pine",
    "ponderosa": "Ponderosa pine",
    "maple": "Sugar maple",
    "red_oak": "Red oak",
    "white_oak": "White oak",
    "cherry": "Black cherry",
    "walnut": "Black walnut",
    "alder": "Red alder",
    "basswood": "Basswood",
}

CORD_PLACES = {"right": "Right column", "left": "Left column", IN_FRIEZE: "Frieze"}
PLUGS = {key: connector.name for key, connector in CONNECTORS.items()} | {OWN: "Own size"}

OFFERED = {"lines": "Every line", "groups": "Materials, work and tax", "total": "The total alone"}
"""How much of a price the homeowner sees."""
