"""Shipped jobs with some sizes put otherwise: what a design looks like that goes wrong."""

from __future__ import annotations

from hypothesis import assume
from hypothesis import strategies as st

from app.demo import list_demos, read_demo
from model.errors import Refused
from model.job import Job, with_value

MOVED = (
    ("column.margin", 0, 16),
    ("column.projection", 2, 9),
    ("column.width", 5, 11),
    ("plinth.projection", 0.25, 1.5),
    ("frieze.height", 6, 16),
    ("frieze.projection", 1, 6),
    ("shelf.height", 40, 70),
    ("shelf.overhang_front", 0.5, 4),
    ("shelf.overhang_end", 0, 4),
    ("bed_mould.size", 1, 4),
    ("room.left", 14, 60),
    ("room.right", 14, 60),
    ("hearth.depth", 10, 24),
    ("hearth.width", 40, 90),
    ("plumb.left", -1, 1),
    ("plumb.right", -1, 1),
)
"""What is put otherwise in a shipped job, and between which inches, so that most of them go wrong."""


@st.composite
def designs(draw: st.DrawFn) -> Job:
    """A shipped job with some sizes put otherwise, under some code; most of them break a rule."""
    job = read_demo(draw(st.sampled_from(list_demos())))
    job = with_value(
        job, "site.rule", draw(st.sampled_from((job.site.rule, "irc", "nfpa211", "strictest", "canada")))
    )
    for path, low, high in draw(st.lists(st.sampled_from(MOVED), unique=True, min_size=1, max_size=6)):
        try:
            job = with_value(job, path, low + draw(st.integers(0, int((high - low) * 16))) / 16)
        except Refused:
            assume(False)
    return job
