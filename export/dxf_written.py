"""Entities written as text right away, their tags in the order in which ezdxf has them.

ezdxf keeps, checks and asks for every attribute of an entity by its name, those that nobody sets as well,
and takes ten times as long. What tags an entity has stands where it is drawn.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from export.dxf_file import is_old
from render.drawing import Point

if TYPE_CHECKING:
    from ezdxf.document import Drawing as Document
    from ezdxf.layouts.base import BaseLayout
    from ezdxf.layouts.blocklayout import BlockLayout
    from ezdxf.lldxf.tagwriter import AbstractTagWriter

ANONYMOUS, WITH_ATTRIBUTES = 1, 2
"""Flags of blocks."""
ANY_LAYER = "0"
"""Blocks are inserted on the one layer that nobody freezes: what they hold has layers of its own."""


class Written:
    """An entity that ezdxf passes on as it is, in its place among those of its own."""

    __slots__ = ("kind", "text")
    is_alive = True

    def __init__(self, kind: str, text: str) -> None:
        self.kind, self.text = kind, text

    def dxftype(self) -> str:
        """Asked by ezdxf when it looks for entities of a kind."""
        return self.kind

    def export_dxf(self, writer: AbstractTagWriter) -> None:
        """Called by ezdxf when it writes the space that the entity is in."""
        writer.write_str(self.text)


class WrittenHead(Written):
    """The head of a block, whose flags are told already."""

    __slots__ = ()

    def set_flag_state(self, flag: int, state: bool) -> None:
        """Called by ezdxf, which sees no attributes in the block."""


class SpaceWriter:
    """Puts entities into one space of a document."""

    def __init__(self, document: Document, space: BaseLayout) -> None:
        self.take_handle = document.entitydb.next_handle
        self._put = space.entity_space.entities.append
        self._is_old = is_old(document)
        self._owner = space.layout_key
        self._paper = tell_tag(67, 1) if space.is_any_paperspace else ""

    def add(self, kind: str, look: str, body: str) -> None:
        """An entity of `kind` with the tags of `look`, which all kinds have, and of `body`."""
        self.add_told(kind, self.tell(kind, look, body, self.take_handle()))

    def add_told(self, kind: str, text: str) -> None:
        """An entity that is told already, with those that belong to it."""
        self._put(Written(kind, text))  # type: ignore[arg-type]

    def tell(self, kind: str, look: str, body: str, handle: str, owner: str = "") -> str:
        """An entity as text, this space its owner unless another is named."""
        if self._is_old:
            return f"  0\n{kind}\n  5\n{handle}\n{self._paper}{look}{body}"
        head = f"  0\n{kind}\n  5\n{handle}\n330\n{owner or self._owner}\n100\nAcDbEntity\n"
        return f"{head}{self._paper}{look}{body}"

    def tell_class(self, name: str) -> str:
        """The tag that parts what each class of the format adds to an entity; R12 has none."""
        return "" if self._is_old else f"100\n{name}\n"


def add_block(document: Document, name: str, flags: int) -> BlockLayout:
    """A new block of that name, its origin at 0."""
    record = document.block_records.new(name)
    block = document.blocks.add(record)
    writer, look = SpaceWriter(document, block), tell_tag(8, ANY_LAYER)
    head = writer.tell_class("AcDbBlockBegin") + tell_tag(2, name) + tell_tag(70, flags)
    head += tell_point(10, (0, 0)) + tell_tag(3, name) + tell_tag(1, "")
    end = writer.tell_class("AcDbBlockEnd")
    kinds = ((WrittenHead, "BLOCK", head), (Written, "ENDBLK", end))
    written = [of(kind, writer.tell(kind, look, body, writer.take_handle())) for of, kind, body in kinds]
    record.block, record.endblk = written  # type: ignore[assignment]
    return block


def tell_tag(code: int, value: str | float) -> str:
    """One tag: its code, and on the next line its value."""
    return f"{code:3}\n{value}\n"


def tell_point(code: int, point: Point) -> str:
    """A point at height 0, the code of whose x is `code`."""
    x, y = point
    return f"{code:3}\n{float(x)}\n{code + 10:3}\n{float(y)}\n{code + 20:3}\n0.0\n"
