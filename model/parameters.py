"""The one table of everything a user may set; fields, files, scripts and tests are made from it.

What a row says, and the rows themselves by what they are about, stand in model.rows. How values hang
together in a job stands in model.job.
"""

from __future__ import annotations

from difflib import get_close_matches

from model.errors import Refused
from model.rows.design import DESIGN_ROWS
from model.rows.look import LOOK_ROWS
from model.rows.offer import OFFER_ROWS
from model.rows.row import MOST_PAIRS as MOST_PAIRS
from model.rows.row import Kind as Kind
from model.rows.row import Parameter as Parameter
from model.rows.row import Value as Value
from model.rows.shop import SHOP_ROWS
from model.rows.site import SITE_ROWS
from model.rows.time import TIME_ROWS
from model.rows.words import BETWEEN_ROWS as BETWEEN_ROWS
from model.rows.words import COLUMNS as COLUMNS
from model.rows.words import CORD_PLACES as CORD_PLACES
from model.rows.words import DATUMS as DATUMS
from model.rows.words import FIREPLACES as FIREPLACES
from model.rows.words import FRIEZE_PLACES as FRIEZE_PLACES
from model.rows.words import FRIEZES as FRIEZES
from model.rows.words import GRAINS as GRAINS
from model.rows.words import HEIGHTS_FROM as HEIGHTS_FROM
from model.rows.words import MATCHES as MATCHES
from model.rows.words import MEETS as MEETS
from model.rows.words import OLD_LEDGER_USES as OLD_LEDGER_USES
from model.rows.words import OVER_EDGE as OVER_EDGE
from model.rows.words import OVER_REACHES as OVER_REACHES
from model.rows.words import PIECE_USES as PIECE_USES
from model.rows.words import PLUGS as PLUGS
from model.rows.words import PRECISIONS as PRECISIONS
from model.rows.words import RULES as RULES
from model.rows.words import SHELVES as SHELVES
from model.rows.words import SPECIES as SPECIES
from model.rows.words import TAPERED as TAPERED
from model.rows.words import UNITS as UNITS

TABLE: tuple[Parameter, ...] = (*SITE_ROWS, *DESIGN_ROWS, *LOOK_ROWS, *SHOP_ROWS, *TIME_ROWS, *OFFER_ROWS)
BY_PATH: dict[str, Parameter] = {row.path: row for row in TABLE}


def find_parameter(path: str) -> Parameter:
    """The row for `path`. Raises Refused, with the nearest paths, when there is none."""
    if path in BY_PATH:
        return BY_PATH[path]
    near = get_close_matches(path, BY_PATH, n=2)
    hint = f"write {' or '.join(near)}" if near else "write a path such as opening.width"
    raise Refused("parameter", path, hint)
