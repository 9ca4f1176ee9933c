"""The cautions as they stand on paper: what to take care of, why here, where it is read and who decides.

What concerns a job is worked out in model.cautions.
"""

from __future__ import annotations

from collections.abc import Sequence

from model.cautions import Concern
from render.checks_sheet import source_text
from render.tables import (
    FIGURES,
    Cell,
    Strip,
    Table,
    opening_strips,
    share_columns,
    table_strips,
)

COLUMNS = ("Take care", "What to do", "Why here", "Where it is read", "Who decides")
SHARES = (26, 92, 48, 44, 40)
WHO = (
    "What is said here is put in short from what is named beside it. The code as it is adopted where the "
    "house stands, the appliance's manual and people licensed for the work go before it; this program "
    "approves nothing and takes nobody's place."
)


def caution_strips(concerns: Sequence[Concern], width: float) -> tuple[Strip, ...]:
    """Everything the sheet of cautions says, for a page `width` wide."""
    columns = share_columns(width, COLUMNS, SHARES, bold=COLUMNS[:1])
    return (
        *opening_strips("Cautions for this job", WHO, width),
        *table_strips(Table(columns, tuple(map(_row, concerns)), FIGURES)),
    )


def _row(concern: Concern) -> tuple[Cell, ...]:
    caution = concern.caution
    source = source_text("", caution.source, caution.standing)
    return tuple(map(Cell, (caution.name, caution.text, concern.why, source, caution.decides)))
