"""Random jobs made from the parameter table, for the property tests. Expectations stand in the tests."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterator, Mapping
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import replace
from functools import cache, lru_cache
from typing import Any

from hypothesis import strategies as st

from model.job import Job, build_job, list_stored, read_value
from model.moulding.elements import Element
from model.moulding.library import SECTIONS
from model.moulding.notation import format_section
from model.moulding.section import Section
from model.parameters import BY_PATH, MOST_PAIRS, Kind, Parameter
from model.rows.row import drop_crumb

ODD_SECTIONS = (
    "fillet 1/8 down; foot 12",
    "bead 12 down; foot 1/4",
    "cavetto 1/8 down, 6 back",
    "hollow 1 down, 1/4 back, 1 radius; round 1/2 down, 1/4 out, 5/16 radius the long way; foot 2",
    "sprung 60, 1/2 thick; cyma recta 1 down, 2 back; foot 1/8",
    "seat 1/16; ovolo 1/2 down, 1/2 out",
)
TAPE = 1 / 16
"""Marks of a tape, in."""
TEXTS = st.text(st.characters(exclude_categories=("Cc", "Cs")), max_size=40)


def lengths(row: Parameter, in_between: bool = True) -> st.SearchStrategy[Any]:
    """Any length the row may hold: off the tape as a rule, now and then any float in between, or the ends."""
    assert row.lowest is not None
    assert row.highest is not None
    low, high = float(row.lowest), float(row.highest)
    steps = int((high - low) / TAPE)
    on_tape = st.integers(0, steps).map(lambda i: low + i * TAPE)
    ends = st.sampled_from((low, high))
    between = st.floats(low, high).map(drop_crumb)
    anything = st.one_of(on_tape, between, ends) if in_between else st.one_of(on_tape, ends)
    return st.one_of(st.none(), anything) if row.optional else anything


def numbers(row: Parameter) -> st.SearchStrategy[Any]:
    """Any rate the row may hold, its ends now and then."""
    assert row.lowest is not None
    assert row.highest is not None
    low, high = float(row.lowest), float(row.highest)
    anything = st.one_of(st.floats(low, high).map(drop_crumb), st.sampled_from((low, high)))
    return st.one_of(st.none(), anything) if row.optional else anything


def charts() -> st.SearchStrategy[Any]:
    """Charts as a manual may print them: projections rising, clearances never falling."""
    values = st.integers(0, 64 * 16).map(lambda i: i / 16)
    columns = st.integers(0, min(8, MOST_PAIRS)).flatmap(
        lambda n: st.tuples(
            st.lists(values, min_size=n, max_size=n, unique=True).map(sorted),
            st.lists(values, min_size=n, max_size=n).map(sorted),
        )
    )
    return columns.map(lambda pair: tuple(zip(*pair, strict=True)))


def sections() -> st.SearchStrategy[str]:
    """Texts of sections: none, shipped ones at any size, and some that are in no library."""
    shipped = st.builds(
        lambda name, size: format_section(round_section(SECTIONS[name].section.sized(size))),
        st.sampled_from(sorted(SECTIONS)),
        st.integers(24, 64).map(lambda sixteenths: sixteenths / 16),
    )
    return st.one_of(st.just(""), shipped, st.sampled_from(ODD_SECTIONS))


def round_section(section: Section) -> Section:
    """`section` with its sizes as a text can say them."""

    def element(old: Element) -> Element:
        return replace(old, down=round(old.down, 9), back=round(old.back, 9), radius=round(old.radius, 9))

    return replace(
        section,
        elements=tuple(element(old) for old in section.elements),
        foot=round(section.foot, 9),
        thickness=round(section.thickness, 9),
    )


def values(row: Parameter, in_between: bool = True) -> st.SearchStrategy[Any]:
    """Anything one row of the table may hold."""
    match row.kind:
        case Kind.LENGTH:
            return lengths(row, in_between)
        case Kind.NUMBER:
            return numbers(row)
        case Kind.COUNT:
            return st.integers(int(row.lowest or 0), int(row.highest or 0))
        case Kind.CHOICE:
            return st.sampled_from(sorted(row.choices or {}))
        case Kind.COLOUR:
            own = st.integers(0, 0xFFFFFF).map(lambda number: f"#{number:06x}")
            return st.one_of(st.sampled_from(sorted(row.choices or {})), own)
        case Kind.YES_NO:
            return st.booleans()
        case Kind.TEXT:
            return TEXTS
        case Kind.PAIRS:
            return charts()
        case Kind.SECTION:
            return sections()
        case Kind.READINGS:
            return st.lists(lengths(row), max_size=3).map(tuple)


@cache
def jobs(in_between: bool = True, **held: Hashable) -> st.SearchStrategy[Job]:
    """Any job in range, each row drawn on its own; `held` fixes rows, with ``__`` for the point.

    Without `in_between` no size lies between the marks of a tape.

    ``jobs(bed_mould__on=False)`` holds ``bed_mould.on``. A row shrinks towards its default. Asked for the
    same again it is the same strategy, so that tests that ask for any job can be told from others.
    """
    fixed = {path.replace("__", "."): BY_PATH[path.replace("__", ".")].check(v) for path, v in held.items()}
    rows = st.fixed_dictionaries(
        {
            row.path: st.just(fixed[row.path])
            if row.path in fixed
            else st.one_of(st.just(row.default), values(row, in_between))
            for row in list_stored()
        }
    )

    @st.composite
    def draw_job(draw: st.DrawFn) -> Job:
        design = _put.get()
        return build_job(draw(rows)) if design is None else narrowed(design)

    @lru_cache(1)
    def narrowed(design: Job) -> Job:
        return build_job(_narrowed(design, in_between, fixed))

    strategy = draw_job()
    _NARROWERS[strategy] = narrowed
    return strategy


_NARROWERS: dict[st.SearchStrategy[Job], Callable[[Job], Job]] = {}
"""For each strategy that `jobs` made, what makes a design one of its jobs."""


def narrow(strategy: st.SearchStrategy[Any], design: Job) -> Job | None:
    """What `strategy` draws while `design` is put, without the drawing; None where `jobs` did not make it."""
    narrowed = _NARROWERS.get(strategy)
    return narrowed(design) if narrowed else None


_put: ContextVar[Job | None] = ContextVar("put", default=None)


@contextmanager
def put_design(design: Job) -> Iterator[None]:
    """While this lasts, whoever draws a job gets this one, with the rows that they hold put on it.

    Rows are drawn apart from each other, so that the jobs of a narrower kind are made of any jobs thus.
    """
    token = _put.set(design)
    try:
        yield
    finally:
        _put.reset(token)


def _narrowed(design: Job, in_between: bool, fixed: Mapping[str, Any]) -> dict[str, Any]:
    stored = _read_rows(design)
    if not in_between:
        on_tape = {
            row.path: _on_tape(row, stored[row.path]) for row in list_stored() if row.kind is Kind.LENGTH
        }
        return {**stored, **on_tape, **fixed}
    return {**stored, **fixed}


@lru_cache(1)
def _read_rows(design: Job) -> Mapping[str, Any]:
    return {row.path: read_value(design, row.path) for row in list_stored()}


def _on_tape(row: Parameter, length: float | None) -> float | None:
    """The mark of a tape laid at the row's least length, at or before a length that is no end of the row."""
    if length is None or length == row.highest:
        return length
    low = float(row.lowest or 0.0)
    return low + (length - low) // TAPE * TAPE


def alike(**held: Any) -> st.SearchStrategy[Job]:
    """Jobs whose sides are alike: nothing is given or built for one side only, the feet are level."""
    one_sided = (
        "column__width",
        "shelf__overhang",
        "level_",
        "plumb_",
        "level__floor",
        "baseboard__height",
        "baseboard__thickness",
        "outlet_",
        "casing_",
    )
    only: dict[str, Any] = {f"{name}_{side}": None for name in one_sided for side in ("left", "right")}
    only |= {f"bolt_{which}__across": None for which in ("one", "two", "three")} | {"old_ledger__top": None}
    only["cord__on"] = False
    return jobs(**only, **held)
