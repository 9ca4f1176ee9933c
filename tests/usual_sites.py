"""Masonry fireplaces as they are found, for first designs. Invented; expectations stand in the tests."""

from __future__ import annotations

from hypothesis import strategies as st

from model.job import Job, default_job, with_value


@st.composite
def sites(draw: st.DrawFn) -> Job:
    """A masonry fireplace as they are found, with room round it and a hearth that serves."""
    job = with_value(
        default_job(), "site.rule", draw(st.sampled_from(("irc", "nfpa211", "strictest", "canada")))
    )
    wide, high = draw(st.integers(24, 54)), draw(st.integers(20, 36))
    values = {
        "opening.width": wide,
        "opening.height": high,
        "facing.width": wide + 2 * draw(st.integers(8, 20)),
        "facing.height": high + draw(st.integers(8, 24)),
        "facing.proud": draw(st.sampled_from((0, 0, 2, 4))),
        "hearth.width": wide + 60,
        "hearth.depth": 20,
        "hearth.thickness": 4,
        "room.ceiling": draw(st.integers(90, 108)),
        "room.left": draw(st.integers(34, 80)),
        "room.right": draw(st.integers(34, 80)),
    }
    for path, value in values.items():
        job = with_value(job, path, float(value))
    return job
