"""A job: site, design and what is written about it; to and from JSON text. The disk is app's.

The text is one object with a format version and one object for each first part of a parameter
path, so that ``{"opening": {"width": 36}}`` is ``opening.width``.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from difflib import get_close_matches
from typing import Any, TypeVar

from model.cutting.purchase import Purchase, read_purchase, store_purchase
from model.design import (
    BoardStock,
    Column,
    Design,
    Flute,
    Frieze,
    Look,
    Moulding,
    Overmantel,
    OwnSection,
    Panel,
    Plinth,
    Raised,
    Shelf,
    Slip,
    Tablet,
)
from model.errors import LONGEST_SHOWN, JobRefused, Refused
from model.fixing import AnchorRule, CordWay, Nailer
from model.json_object import Unread, check_version, read_object
from model.options import ALONE, OWN, Options
from model.options_file import OPTIONS, read_options, store_options
from model.parameters import BY_PATH, TABLE, Parameter, find_parameter
from model.photo.stored import WallPhoto, read_photo, store_photo
from model.shop import Allowances, Offer, Piece, Rates, Saw, Shop, Times
from model.site import (
    Baseboard,
    Bolt,
    Casing,
    Chart,
    Facing,
    Hearth,
    House,
    Level,
    Local,
    OldLedger,
    Opening,
    Outlet,
    Plumb,
    Readings,
    Room,
    Site,
    Television,
)
from model.units import LengthStyle, find_style, format_bounds

Kept = TypeVar("Kept")
"""What a job keeps beside its rows."""
FORMAT_VERSION = 2
"""The newest that is read."""
ONE_DESIGN = 1
"""The version of a file without options, which is written so that programs that know of none read it too."""
FORMAT_KEY = "mantelwright"
EXAMPLE = '{"mantelwright": 1, "opening": {"width": 36}}'
PURCHASE = "purchase"
"""What was bought for the job, beside its rows; left out of a file while it is nothing."""
PHOTO = "photo"
"""A photo of the wall with the opening's corners in it; left out of a file while there is none."""
NOTHING_BOUGHT = Purchase()
UNTITLED = "Fireplace surround"
"""What a job without a name is called on what is made of it."""
MOST_HINTS = 20


@dataclass(frozen=True, slots=True)
class About:
    """What is written about a job, and how its lengths are shown."""

    name: str
    client: str
    maker: str
    notes: str
    revision: str
    revised: str
    changes: str
    units: str
    precision: str

    @property
    def title(self) -> str:
        """The job's name, or what it is called without one."""
        return self.name or UNTITLED

    @property
    def length_style(self) -> LengthStyle:
        """How lengths are written for this job."""
        return find_style(self.units, int(self.precision))


@dataclass(frozen=True, slots=True)
class Job:
    """Everything a job file holds; `design` is the one in work of its `options`."""

    about: About
    site: Site
    design: Design
    shop: Shop
    purchase: Purchase = NOTHING_BOUGHT
    options: Options = ALONE
    photo: WallPhoto | None = None


_RECORDS: dict[str, tuple[str, type | None]] = {
    "job": ("about", None),
    "site": ("site", None),
    "opening": ("site", Opening),
    "facing": ("site", Facing),
    "hearth": ("site", Hearth),
    "readings": ("site", Readings),
    "level": ("site", Level),
    "plumb": ("site", Plumb),
    "room": ("site", Room),
    "baseboard": ("site", Baseboard),
    "outlet": ("site", Outlet),
    "casing": ("site", Casing),
    "old_ledger": ("site", OldLedger),
    "bolt_one": ("site", Bolt),
    "bolt_two": ("site", Bolt),
    "bolt_three": ("site", Bolt),
    "chart": ("site", Chart),
    "local": ("site", Local),
    "tv": ("site", Television),
    "house": ("site", House),
    "column": ("design", Column),
    "flute": ("design", Flute),
    "raised": ("design", Raised),
    "plinth": ("design", Plinth),
    "frieze": ("design", Frieze),
    "tablet": ("design", Tablet),
    "panel": ("design", Panel),
    "shelf": ("design", Shelf),
    "over": ("design", Overmantel),
    "bed_mould": ("design", Moulding),
    "capital": ("design", Moulding),
    "plinth_cap": ("design", Moulding),
    "panel_mould": ("design", Moulding),
    "back_band": ("design", Moulding),
    "slip": ("design", Slip),
    "own_section": ("design", OwnSection),
    "nailer": ("design", Nailer),
    "cord": ("design", CordWay),
    "anchor": ("design", AnchorRule),
    "board": ("design", BoardStock),
    "look": ("design", Look),
    "rates": ("shop", Rates),
    "times": ("shop", Times),
    "offer": ("shop", Offer),
    "allow": ("shop", Allowances),
    "saw": ("shop", Saw),
    "piece_one": ("shop", Piece),
    "piece_two": ("shop", Piece),
}


def _set_shelf_depth(job: Job, depth: float) -> Job:
    overhang = BY_PATH["shelf.overhang_front"]
    try:
        value = overhang.check(depth - job.design.foremost)
    except Refused:
        low = job.design.foremost
        least, most = format_bounds(low, low + (overhang.highest or 0), job.about.length_style)
        raise Refused(
            "shelf depth",
            depth,
            f"write a depth from {least} to {most}: the part below the shelf already stands out {least}",
        ) from None
    return with_value(job, "shelf.overhang_front", value)


_LINKED: dict[str, tuple[Callable[[Job], float], Callable[[Job, Any], Job]]] = {
    "shelf.depth": (lambda job: job.design.shelf_depth, _set_shelf_depth),
}


def read_value(job: Job, path: str) -> Any:
    """The value at `path`, linked ones included. Raises Refused for an unknown path."""
    find_parameter(path)
    if path in _LINKED:
        return _LINKED[path][0](job)
    first, last = path.split(".")
    return getattr(_record_of(job, first), last)


def list_changed(before: Job, after: Job) -> frozenset[str]:
    """Paths of the rows that may read otherwise in another state of a job: all of each record that differs.

    Linked rows are always among them.
    """
    other = [first for first in _RECORDS if _record_of(before, first) != _record_of(after, first)]
    return _LINKED_PATHS.union(*(_PATHS[first] for first in other))


_PATHS = {
    first: frozenset(row.path for row in TABLE if row.path.split(".")[0] == first) for first in _RECORDS
}
_LINKED_PATHS = frozenset(row.path for row in TABLE if row.linked)


def _record_of(job: Job, first: str) -> Any:
    part, record = _RECORDS[first]
    holder = getattr(job, part)
    return holder if record is None else getattr(holder, first)


def with_value(job: Job, path: str, value: object) -> Job:
    """A job with one value changed, within the row's bounds. Raises Refused."""
    checked = find_parameter(path).check(value, style=job.about.length_style)
    if path in _LINKED:
        return _LINKED[path][1](job, checked)
    first, last = path.split(".")
    part, record = _RECORDS[first]
    holder: Any = getattr(job, part)
    if record is None:
        changed = replace(holder, **{last: checked})
    else:
        changed = replace(holder, **{first: replace(getattr(holder, first), **{last: checked})})
    return replace(job, **{part: changed})


def with_texts(job: Job, settings: Iterable[tuple[str, str]]) -> Job:
    """A job with each ``(path, text)`` read and set, linked rows last. Raises JobRefused with all faults.

    A linked row is set after the stored ones so that it holds whatever else is set with it; where both
    it and the row it stands for are given, the linked one governs.
    """
    faults = []
    ordered = sorted(settings, key=lambda pair: pair[0] in _LINKED)
    for path, text in ordered:
        try:
            job = with_value(job, path, find_parameter(path).parse(text))
        except Refused as refusal:
            faults.append(f"{path}: {refusal}")
    if faults:
        raise JobRefused(tuple(faults))
    return job


def build_job(values: Mapping[str, Any]) -> Job:
    """A job from stored values by path; rows not named take their default. Values must be in bounds."""

    def value(path: str) -> Any:
        return values.get(path, BY_PATH[path].default)

    def record(first: str, kind: type) -> Any:
        return kind(**{name: value(f"{first}.{name}") for name in kind.__dataclass_fields__})  # type: ignore[attr-defined]

    parts = {first: record(first, kind) for first, (_, kind) in _RECORDS.items() if kind is not None}
    site = {f: parts[f] for f, (part, kind) in _RECORDS.items() if kind and part == "site"}
    design = {f: parts[f] for f, (part, kind) in _RECORDS.items() if kind and part == "design"}
    shop = {f: parts[f] for f, (part, kind) in _RECORDS.items() if kind and part == "shop"}
    return Job(
        about=record("job", About),
        site=Site(fireplace=value("site.fireplace"), rule=value("site.rule"), **site),
        design=Design(**design),
        shop=Shop(**shop),
    )


def default_job() -> Job:
    """A new job: every row at its default."""
    return build_job({})


def list_stored() -> tuple[Parameter, ...]:
    """The rows a job file holds, in table order."""
    return tuple(row for row in TABLE if not row.linked)


def list_own_rows() -> tuple[Parameter, ...]:
    """The rows that each option has its own values of: the design's, and what of the offer goes with it."""
    own = {f"offer.{name}" for name in OWN}
    return tuple(row for row in list_stored() if row.path in own or _part_of(row.path) == "design")


def _part_of(path: str) -> str:
    return _RECORDS[path.split(".")[0]][0]


def write_job(job: Job) -> str:
    """JSON text of `job`, ending in a newline; `read_job` gives the same job back."""
    import msgspec

    version = ONE_DESIGN if job.options == ALONE and job.photo is None else FORMAT_VERSION
    text: dict[str, Any] = {FORMAT_KEY: version, **_store_rows(job, list_stored())}
    if job.options != ALONE:
        text[OPTIONS] = store_options(job, lambda own: _store_rows(own, list_own_rows()))
    if job.purchase != NOTHING_BOUGHT:
        text[PURCHASE] = store_purchase(job.purchase)
    if job.photo is not None:
        text[PHOTO] = store_photo(job.photo)
    return msgspec.json.format(msgspec.json.encode(text), indent=2).decode() + "\n"


def _store_rows(job: Job, rows: Iterable[Parameter]) -> dict[str, Any]:
    """The job's values of `rows`, an object for each first part of a path."""
    held: dict[str, Any] = {}
    for row in rows:
        first, last = row.path.split(".")
        held.setdefault(first, {})[last] = read_value(job, row.path)
    return held


def read_job(text: str | bytes) -> Job:
    """The job that `text` holds. Raises JobRefused naming every fault by its path.

    Rows that are missing take their default. Fields this version does not know, a field written twice
    and files of a newer version are refused, so that nothing in them is lost.
    """
    return read_job_and_missing(text)[0]


def read_job_and_missing(text: str | bytes) -> tuple[Job, tuple[Parameter, ...]]:
    """As `read_job`, with the rows that `text` does not hold and that took their default, in table order."""
    data = _decode(text)
    stored = {row.path: row for row in list_stored()}
    faults: list[str] = []
    purchase = _take(data, PURCHASE, read_purchase, NOTHING_BOUGHT, faults)
    options = _take_options(data, faults)
    photo = _take(data, PHOTO, read_photo, None, faults)
    values = _read_rows(data, stored, faults)
    if faults:
        raise JobRefused(tuple(faults))
    job = replace(build_job(values), purchase=purchase, options=options, photo=photo)
    return job, tuple(row for path, row in stored.items() if path not in values)


def _read_rows(
    data: dict[str, Any], stored: Mapping[str, Parameter], faults: list[str], where: str = ""
) -> dict[str, Any]:
    """Checked values by path; what is wrong goes to `faults` by its path, `where` before it."""
    values: dict[str, Any] = {}
    for path, value in _list_fields(data, faults, where):
        row = stored.get(path)
        if row is None:
            faults.append(f"{where}{path}: not known here{_nearest(path, stored, faults)}")
            continue
        try:
            values[path] = row.check(value)
        except Refused as refusal:
            faults.append(f"{where}{path}: {refusal}")
    return values


def _take_options(data: dict[str, Any], faults: list[str]) -> Options:
    """The options beside the design in work, taken out of `data`."""
    if OPTIONS not in data:
        return ALONE
    own = {row.path: row for row in list_own_rows()}
    return read_options(
        data.pop(OPTIONS), lambda held, where: _read_rows(held, own, faults, where), build_job, faults
    )


def _take(
    data: dict[str, Any], key: str, read: Callable[[object], Kept], nothing: Kept, faults: list[str]
) -> Kept:
    """What stands beside the rows under a key, taken out of `data`; `nothing` where there is none."""
    try:
        return read(data.pop(key)) if key in data else nothing
    except Refused as refusal:
        faults.append(str(refusal))
        return nothing


def _decode(text: str | bytes) -> dict[str, Any]:
    """What `text` holds below its version. Raises JobRefused."""
    try:
        data = read_object(text, FORMAT_KEY, "a job file", EXAMPLE)
        check_version(data.pop(FORMAT_KEY), FORMAT_KEY, FORMAT_VERSION)
    except Unread as trouble:
        raise JobRefused(trouble.faults) from None
    return data


def _list_fields(data: dict[str, Any], faults: list[str], where: str) -> Iterator[tuple[str, Any]]:
    """Each path in `data` with its value; what is not an object of fields goes to `faults`."""
    for first, fields in data.items():
        if not isinstance(fields, dict):
            wanted = 'write an object of fields, such as {"width": 36}'
            faults.append(str(Refused(f"{where}{first[:LONGEST_SHOWN]}", fields, wanted)))
        elif not fields and first not in _RECORDS:
            faults.append(f"{where}{first[:LONGEST_SHOWN]}: not known here")
        else:
            for last, value in fields.items():
                yield f"{first}.{last}"[:LONGEST_SHOWN], value


def _nearest(path: str, stored: Iterable[str], faults: Sequence[str]) -> str:
    """A hint at the row that may be meant; none once there are so many faults that it is another file."""
    near = get_close_matches(path, stored, n=1) if len(faults) < MOST_HINTS else []
    return f"; did you mean {near[0]}" if near else ""
