"""What every drawing file shares: it says the same whenever and wherever it is written.

What stands in one is decided in export.dxf and export.section_dxf.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from io import StringIO
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from ezdxf.document import Drawing as Document

R2010, R12 = "R2010", "R12"
"""Versions of the format that are written."""


def open_document(version: str = R2010) -> Document:
    """A new document in inches, for which R12 has no word; ezdxf's warning of that is not passed on."""
    from logging import getLogger

    from ezdxf import units
    from ezdxf.filemanagement import new

    logger = getLogger("ezdxf")
    before, logger.disabled = logger.disabled, version == R12
    try:
        return new(version, units=units.IN)
    finally:
        logger.disabled = before


def is_old(document: Document) -> bool:
    """Whether `document` is R12."""
    return document.acad_release == R12


@contextmanager
def fixed_dates() -> Iterator[None]:
    """While open, ezdxf writes constants where it would write the time and new GUIDs."""
    from ezdxf._options import options

    before = options.write_fixed_meta_data_for_testing
    options.write_fixed_meta_data_for_testing = True
    try:
        yield
    finally:
        options.write_fixed_meta_data_for_testing = before


def document_text(document: Document) -> str:
    """The document's text. Classes are listed first by name: left to ezdxf they come in a set's order."""
    for kind in sorted(document.entitydb.dxf_types_in_use()):
        document.classes.add_class(kind)
    stream = StringIO()
    document.write(stream)
    return stream.getvalue()
