"""As many entities in as many documents with ezdxf alone: what drawing files cost at least."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from io import StringIO
from typing import Any

import ezdxf
from ezdxf import units

LAYER, WORDS = "A-ELEV-OTLN", "4'-4 5/16\""
Recipe = tuple[str, int]
"""An entity's kind and how many points or attributes it has."""


@dataclass(frozen=True)
class Recorded:
    """What a file holds: entities of model space, of each block by name, of each layout."""

    model: tuple[Recipe, ...]
    blocks: dict[str, tuple[Recipe, ...]]
    layouts: tuple[tuple[Recipe, ...], ...]


def record(text: str) -> Recorded:
    """What stands in a drawing file."""
    document = ezdxf.read(StringIO(text))
    named = [block for block in document.blocks if not block.is_any_layout]
    return Recorded(
        _list_recipes(document.modelspace()),
        {block.name: _list_recipes(block) for block in named},
        tuple(_list_recipes(document.layouts.get(n)) for n in document.layouts.names_in_taborder()[1:]),
    )


def write_bare(recorded: Sequence[Recorded]) -> list[str]:
    """As many documents with as many entities."""
    return [_write(file) for file in recorded]


def _list_recipes(space: Any) -> tuple[Recipe, ...]:
    return tuple((entity.dxftype(), _count(entity)) for entity in space)


def _count(entity: Any) -> int:
    match entity.dxftype():
        case "LWPOLYLINE":
            return len(entity)
        case "HATCH":
            return sum(len(path.vertices) for path in entity.paths)
        case "INSERT":
            return len(entity.attribs)
        case "LEADER":
            return len(entity.vertices)
    return 1


def _write(file: Recorded) -> str:
    document = ezdxf.new("R2010", units=units.IN)
    document.layers.add(LAYER)
    names = [*file.blocks, "none"]
    for name, recipes in file.blocks.items():
        block = document.blocks.new(name)
        for recipe in recipes:
            _add(block, *recipe, "none")
    blocks = [name for name in names if not name.startswith("*")]
    for number, recipes in enumerate((file.model, *file.layouts)):
        space = document.modelspace() if number == 0 else document.layouts.new(f"sheet {number}")
        for i, recipe in enumerate(recipes):
            _add(space, *recipe, blocks[i % len(blocks)])
    stream = StringIO()
    document.write(stream)
    return stream.getvalue()


def _add(space: Any, kind: str, count: int, block: str) -> None:
    points = [(float(i), float(i % 3)) for i in range(max(count, 3))]
    look = {"layer": LAYER}
    written = look | {"style": "Standard", "height": 0.1}
    match kind:
        case "LINE":
            space.add_line((0, 0), (1, 1), dxfattribs=look)
        case "LWPOLYLINE":
            space.add_lwpolyline(points, dxfattribs=look)
        case "TEXT":
            space.add_text(WORDS, dxfattribs=written | {"align_point": (1, 1), "halign": 1})
        case "MTEXT":
            placing = {"insert": (1, 1), "attachment_point": 5, "char_height": 0.1, "rotation": 90}
            space.add_mtext(WORDS, dxfattribs=look | placing)
        case "HATCH":
            hatch = space.add_hatch(dxfattribs=look)
            hatch.set_pattern_fill("ANSI31")
            hatch.paths.add_polyline_path(points)
        case "INSERT":
            insert = space.add_blockref(block, (0, 0), dxfattribs=look)
            for i in range(count):
                insert.add_attrib(f"TAG{i}", WORDS, (1, 1), dxfattribs=written)
        case "ATTDEF":
            space.add_attdef("TAG", dxfattribs=written | {"prompt": WORDS})
        case "DIMENSION":
            space.add_linear_dim((0, 1), (0, 0), (1, 0), text=WORDS, dxfattribs=look)
        case "LEADER":
            space.add_leader(points, dxfattribs=look)
        case "SOLID":
            space.add_solid(points[:3], dxfattribs=look)
        case "POINT":
            space.add_point((0, 0), dxfattribs=look)
        case "VIEWPORT":
            space.add_viewport((0, 0), (1, 1), (0, 0), 1, dxfattribs=look)
