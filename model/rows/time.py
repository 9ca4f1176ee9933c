"""How long work takes and how long is waited for what dries."""

from __future__ import annotations

from model.measures import HOUR, HOUR_PER_FOOT
from model.reference import times
from model.rows.kinds import hours
from model.rows.row import Kind, Parameter

# fmt: off
TIME_ROWS: tuple[Parameter, ...] = (
    Parameter("times.crew", "Crew", "Time", Kind.COUNT, int(times.CREW.value),
              "People who work at the same time.", 1, 4, 1, sourced=times.CREW),
    Parameter("times.day", "Hours a day", "Time", Kind.NUMBER, times.DAY.value,
             "Hours worked on each day; what dries goes on drying at night.", 2, 16, 0.5, measure=HOUR,
             sourced=times.DAY),
    hours("times.cut", "Cutting", "Milling and cutting all boards.", times.CUT),
    hours("times.column", "Column", "Putting one column together, its panels apart.", times.COLUMN),
    hours("times.frieze", "Frieze", "Putting the frieze together, its panels apart.", times.FRIEZE),
    hours("times.shelf", "Shelf", "Putting the shelf together.", times.SHELF),
    hours("times.panel", "Framed panel", "Fitting one panel into its frame.", times.PANEL),
    hours("times.piece", "Other piece", "Putting on a piece of anything else, gluing up or dressing one.",
          times.PIECE),
    hours("times.moulding", "Moulding", "Cutting and nailing mouldings, their mitres apart.",
          times.MOULDING, 4, HOUR_PER_FOOT),
    hours("times.mitre", "Mitre", "Fitting one mitre of a moulding.", times.MITRE),
    hours("times.anchor", "Anchor", "Drilling and setting one anchor.", times.ANCHOR),
    hours("times.install", "Fitting on site", "Scribing and fixing all that was built on the bench.",
          times.INSTALL),
    hours("times.finish", "Filling and caulking", "Filling, sanding and caulking what is up.", times.FINISH),
    hours("times.coat", "One coat", "Putting on one coat of anything.", times.COAT),
    hours("times.clamp", "Glue in clamps", "Before a glued piece is handled.", times.GLUE_CLAMP, 72),
    hours("times.cure", "Glue to full strength", "Before a glued piece is fitted.", times.GLUE_CURE, 168),
    hours("times.filler", "Filler dry", "Before it is sanded.", times.FILLER_DRY, 168),
    hours("times.caulk", "Caulk dry", "Before it is painted.", times.CAULK_DRY, 168),
    hours("times.primer", "Primer dry", "Before it is handled or painted.", times.PRIMER_DRY, 168),
    hours("times.top", "Top coat dry", "Before the next coat.", times.TOP_DRY, 168),
    hours("times.hard", "Paint hard", "After the last coat, before the shelf is used.", times.HARD, 720),
    hours("times.stain", "Stain dry", "Before it is sealed.", times.STAIN_DRY, 168),
    hours("times.clear", "Clear coat dry", "Before the next coat.", times.CLEAR_DRY, 168),
    hours("times.clear_hard", "Clear coat hard", "After the last coat, before the shelf is used.",
          times.CLEAR_HARD, 720),
)
# fmt: on
