"""Reading a DXF text without the library that wrote it: GDAL for what is drawn, plain tags for the rest."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from pathlib import Path
from typing import Any

import pyogrio
import shapely

Row = dict[str, Any]
Tag = tuple[int, str]


def read_rows(text: str, folder: Path) -> list[Row]:
    """Every entity that GDAL finds, blocks taken apart: its fields, its OGR style and its `shape`."""
    pyogrio.set_gdal_config_options({"DXF_MERGE_BLOCK_GEOMETRIES": False})
    path = folder / "read.dxf"
    path.write_text(text, "ascii")
    about, _, shapes, columns = pyogrio.raw.read(
        path, sql="SELECT *, OGR_STYLE FROM entities", sql_dialect="OGRSQL"
    )
    return [
        dict(zip(about["fields"], values, strict=True)) | {"shape": shapely.from_wkb(shape)}
        for shape, *values in zip(shapes, *columns, strict=True)
    ]


@dataclass(frozen=True)
class Entity:
    """One entity or object: its kind and its tags in order."""

    kind: str
    tags: tuple[Tag, ...]

    def all(self, code: int) -> list[str]:
        """Every value of a group code."""
        return [value for number, value in self.tags if number == code]

    def number(self, code: int) -> float:
        """The first value of a group code."""
        return float(self.all(code)[0])


def read_entities(text: str) -> list[Entity]:
    """All that begins with a group code 0."""
    lines = text.splitlines()
    tags = [(int(code), value) for code, value in zip(lines[::2], lines[1::2], strict=True)]
    starts = [i for i, (code, _) in enumerate(tags) if code == 0]
    return [Entity(tags[a][1], tuple(tags[a + 1 : b])) for a, b in pairwise((*starts, len(tags)))]


def list_viewports(text: str) -> Iterator[Entity]:
    """Viewports that show model space: those with a number above 1."""
    return (e for e in read_entities(text) if e.kind == "VIEWPORT" and e.number(69) > 1)


def total_box(shapes: Sequence[Any]) -> tuple[float, ...]:
    """The box round all of `shapes`."""
    return tuple(shapely.total_bounds(list(shapes)).tolist())
