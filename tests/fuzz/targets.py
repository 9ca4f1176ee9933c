"""What is fed to each reader, and what may come of it. Everything else that is raised is a fault."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from contextlib import suppress
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from io import BytesIO
from pathlib import Path
from tempfile import TemporaryDirectory

from app.demo import list_demos, read_demo
from app.photo_file import EXIF, FOCAL_EQUIVALENT, LONGEST_SHOWN, read_photo_bytes
from app.recovery import list_left_behind
from app.section_file import DXF_SUFFIX, read_section_dxf
from app.stock_lists import EXAMPLE, USUAL, read_shipped_list
from export.section_dxf import write_section_dxf
from export.stock_csv import read_stock_csv, write_stock_csv
from model.check.all import check_surround
from model.cutting.printed import read_printed, write_printed
from model.cutting.stock_file import read_stock_list, write_stock_list
from model.errors import MantelwrightError
from model.job import read_job, write_job
from model.money import parse_currency
from model.moulding.library import SECTIONS
from model.moulding.notation import format_section, parse_section
from model.parameters import TABLE
from model.surround import plan_surround
from model.units import FEET_INCHES_16, INCHES_16, MILLIMETRES, format_length, parse_length

STYLES = (INCHES_16, FEET_INCHES_16, MILLIMETRES)


TURN = 0x112
"""Tag of how a photo is turned. Exif 2.3, 4.6.4."""


@dataclass(frozen=True, slots=True)
class Target:
    """`read` takes any bytes; `seeds` are whole inputs to start from; `is_json` says how they are spoilt."""

    read: Callable[[bytes], None]
    seeds: Callable[[], Sequence[bytes]]
    is_json: bool = False


def _read_job(data: bytes) -> None:
    """A job that is taken is written as it was read, and can be built and checked."""
    job = read_job(data)
    assert read_job(write_job(job)) == job
    check_surround(plan_surround(job))


def _read_stock(data: bytes) -> None:
    stock_list = read_stock_list(data)
    assert read_stock_list(write_stock_list(stock_list)) == stock_list


def _read_table(data: bytes) -> None:
    stock_list = read_stock_csv(data, read_shipped_list(EXAMPLE))
    assert read_stock_csv(write_stock_csv(stock_list), stock_list) == stock_list


def _read_printed(data: bytes) -> None:
    counts = read_printed(data)
    assert read_printed(write_printed(counts)) == counts


def _read_section(data: bytes) -> None:
    section = parse_section(data.decode("utf-8", "replace"))
    assert parse_section(format_section(section)).elements == section.elements


def _read_drawing(data: bytes) -> None:
    path = _folder() / f"section{DXF_SUFFIX}"
    path.write_bytes(data)
    read_section_dxf(path, "inches")


def _read_unsaved(data: bytes) -> None:
    path = _folder() / "1-1.unsaved"
    path.write_bytes(data)
    for work in list_left_behind(_folder()):
        write_job(work.job)
        work.lock.unlock()


def _read_photo(data: bytes) -> None:
    photo = read_photo_bytes(data, Path("wall.jpg"))
    assert 0 < max(photo.size) <= LONGEST_SHOWN


def _read_typed(data: bytes) -> None:
    """A field of any row; a length that is taken can be written and is read as what was written."""
    text = data.decode("utf-8", "replace")
    for style in STYLES:
        try:
            value = parse_length(text, "length", style)
        except MantelwrightError:
            continue
        written = format_length(value, style)
        assert abs(parse_length(written, "length", style) - value) <= 1 / 16, (text, written)
    with suppress(MantelwrightError):
        assert parse_currency(text).format(123_450)
    for row in TABLE:
        try:
            row.check(row.parse(text))
        except MantelwrightError:
            continue


@cache
def _folder() -> Path:
    holder = TemporaryDirectory(prefix="fuzz-")
    _holders.append(holder)
    return Path(holder.name)


_holders: list[TemporaryDirectory[str]] = []
"""Kept until the program ends; each removes its folder then."""


def _job_texts() -> list[bytes]:
    """The shipped jobs, and one with options and a photo."""
    shipped = [write_job(read_demo(name)).encode() for name in list_demos()]
    return [*shipped, (Path(__file__).parents[1] / "kept_jobs" / "2-1.mantel").read_bytes()]


def _unsaved_texts() -> list[bytes]:
    import json

    return [json.dumps({"path": "parlour.mantel", "job": text.decode()}).encode() for text in _job_texts()]


def _photos() -> list[bytes]:
    """One of each kind, the first with a focal length and a turn in its own data."""
    from PIL import Image

    found = []
    for kind in ("JPEG", "PNG", "WEBP"):
        picture, buffer = Image.linear_gradient("L").resize((40, 30)).convert("RGB"), BytesIO()
        own = picture.getexif()
        own[TURN] = 6
        own.get_ifd(EXIF)[FOCAL_EQUIVALENT] = 26
        picture.save(buffer, kind, exif=own)
        found.append(buffer.getvalue())
    return found


def _shipped_lists() -> list[bytes]:
    return [files("assets").joinpath("stock", f"{name}.yard").read_bytes() for name in (USUAL, EXAMPLE)]


def _shipped_sections() -> list[bytes]:
    return [format_section(shipped.section).encode() for shipped in SECTIONS.values()]


TARGETS: dict[str, Target] = {
    "job": Target(_read_job, _job_texts, is_json=True),
    "stock": Target(_read_stock, _shipped_lists, is_json=True),
    "table": Target(_read_table, lambda: [write_stock_csv(read_shipped_list(EXAMPLE)).encode()]),
    "printed": Target(_read_printed, lambda: [write_printed({"1x6 pine": 3}).encode()], is_json=True),
    "section": Target(_read_section, _shipped_sections),
    "drawing": Target(
        _read_drawing, lambda: [write_section_dxf(s.section).encode() for s in SECTIONS.values()]
    ),
    "unsaved": Target(_read_unsaved, _unsaved_texts, is_json=True),
    "photo": Target(_read_photo, _photos),
    "typed": Target(_read_typed, lambda: [b"64 1/2", b"5' 4 1/2\"", b"1638 mm", b"5.5: 13; 8: 19", b"yes"]),
}


def feed(target: Target, data: bytes) -> bool:
    """Whether `data` is taken; False for a refusal. Whatever else the reader raises comes through."""
    try:
        target.read(data)
    except MantelwrightError:
        return False
    return True
