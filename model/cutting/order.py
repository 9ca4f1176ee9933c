"""From jobs to cutting tasks: what all of them need, by what it is cut from, each piece traceable to its job.

What a plan makes of it is model.cutting.plan's business.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from model.board import StockKind
from model.cutting.pieces import Material, Piece, Source, list_pieces
from model.cutting.serving import Serving
from model.cutting.settled import settle
from model.cutting.stock_list import HandRow, SoldRow, StockList
from model.cutting.task import Stock, Task, Wanted, round_down, round_up
from model.takeoff.guide_settings import find_saw
from model.takeoff.on_hand import list_yields
from model.takeoff.rough import CLOSE

if TYPE_CHECKING:
    from model.surround import Surround

KINDS = (StockKind.BOARD, StockKind.MOULDING, StockKind.FRAMING, StockKind.PANEL)
"""The order that groups stand in."""
BOARD_FOOT = 144.0
"""Cubic inches in a board foot, by its definition: a foot square, an inch thick."""


@dataclass(frozen=True, slots=True)
class Group:
    """What is cut from one material. `task` has the rows with a price and what lies there already.

    `unpriced` are the rows without, to be asked only for what those do not hold; their `price` is wood, in
    hundredths of a board foot. `sources` names every copy of each key, in the order the jobs were given.
    """

    material: Material
    task: Task
    unpriced: tuple[Stock, ...]
    sources: Mapping[str, tuple[Source, ...]]

    @property
    def is_sheet(self) -> bool:
        """Whether it is cut from sheets and not from boards."""
        return self.material.kind is StockKind.PANEL


@dataclass(frozen=True, slots=True)
class Taken:
    """A piece that comes out of something that its job has already, and is not bought again.

    `length` and `width` are its rough size as it is wanted now, in units.
    """

    source: Source
    out_of: str
    length: int
    width: int


@dataclass(frozen=True, slots=True)
class Order:
    """What `jobs` need. `stock` gives the row of the list for each key of a task; `kerf` is in inches.

    `taken` are pieces out of what the jobs name as on hand, `settled` those out of boards bought for a
    frozen plan, of which `kept` stay as planned; `numbered` is the last number any of them has. `notes`
    say what could not be asked for as wished.
    """

    jobs: tuple[str, ...]
    groups: tuple[Group, ...]
    stock: Mapping[str, SoldRow | HandRow]
    stock_list: StockList
    kerf: float
    taken: tuple[Taken, ...] = ()
    settled: tuple[Taken, ...] = ()
    kept: tuple[int, ...] = ()
    numbered: int = 0
    notes: tuple[str, ...] = ()

    @property
    def piece_count(self) -> int:
        """How many pieces are to be cut."""
        return sum(piece.count for group in self.groups for piece in group.task.wanted)


def _take(piece: Piece, out_of: str) -> Taken:
    return Taken(piece.source, out_of, round_up(piece.length), round_up(piece.width))


def build_order(jobs: Sequence[tuple[str, Surround]], stock_list: StockList) -> Order:
    """What `jobs`, each with the name it is called by, need of `stock_list`; like pieces are counted.

    What is left of boards that were bought for a job lies on hand for all.
    """
    named = _name_apart(jobs)
    kerf = max((find_saw(surround.job).kerf.value for _, surround in named), default=0.0)
    first = Serving(stock_list)
    pieces: list[Piece] = []
    taken: list[Taken] = []
    settled: list[Taken] = []
    kept: list[int] = []
    left: list[HandRow] = []
    for name, surround in named:
        has = {i: found.name for found in list_yields(surround) for i in found.taken}
        every = list_pieces(name, surround, first.widest)
        taken += [_take(p, has[p.source.board]) for p in every if p.source.board in has]
        own = [piece for piece in every if piece.source.board not in has]
        found = settle(surround.job.purchase, own, first.listed)
        settled += [_take(own[i], words) for i, words in found.done.items()]
        pieces += [piece for i, piece in enumerate(own) if i not in found.done]
        kept += found.kept
        left += found.rows
    serving = Serving(replace(stock_list, on_hand=(*left, *stock_list.on_hand))) if left else first
    return replace(
        order_pieces(pieces, serving, kerf),
        jobs=tuple(name for name, _ in named),
        taken=tuple(taken),
        settled=tuple(settled),
        kept=tuple(kept),
        numbered=max((b.number for _, surround in named for b in surround.job.purchase.boards), default=0),
    )


def order_pieces(pieces: Sequence[Piece], serving: Serving, kerf: float) -> Order:
    """Pieces grouped by what they are cut from; `kerf` in inches."""
    notes: list[str] = []
    groups = tuple(_group(m, its, serving, kerf, notes) for m, its in _sort_by_material(pieces, serving))
    jobs = tuple(dict.fromkeys(piece.source.job for piece in pieces))
    return Order(jobs, groups, serving.rows, serving.stock_list, kerf, notes=tuple(notes))


def _name_apart(jobs: Sequence[tuple[str, Surround]]) -> tuple[tuple[str, Surround], ...]:
    """The jobs, those called alike with a number behind their name."""
    names: list[str] = []
    for name, _ in jobs:
        count, unlike = 1, name
        while unlike in names:
            count += 1
            unlike = f"{name} ({count})"
        names.append(unlike)
    return tuple((name, surround) for name, (_, surround) in zip(names, jobs, strict=True))


def _sort_by_material(pieces: Iterable[Piece], serving: Serving) -> list[tuple[Material, list[Piece]]]:
    """The pieces under the material that is listed for them, trade by trade, thick before thin."""
    by_material: dict[Material, list[Piece]] = {}
    for piece in pieces:
        by_material.setdefault(serving.listed(piece.material), []).append(piece)
    return sorted(
        by_material.items(),
        key=lambda each: (
            KINDS.index(each[0].kind),
            each[0].wood,
            -each[0].thickness,
            each[0].section,
            each[0].width,
        ),
    )


def _group(
    material: Material, pieces: Sequence[Piece], serving: Serving, kerf: float, notes: list[str]
) -> Group:
    keys = serving.keys_for(material)
    widths = sorted({serving.rows[key].width for key in keys}) if not material.width else []
    asked: dict[Wanted, list[Source]] = {}
    for piece in pieces:
        asked.setdefault(_want(piece, material, widths), []).append(piece.source)
    asked = _free_batches(asked, [serving.rows[key] for key in keys], serving, kerf, notes)
    wanted, sources = [], {}
    for number, (like, whose) in enumerate(asked.items(), start=1):
        key = str(number)
        wanted.append(replace(like, key=key, count=len(whose)))
        sources[key] = tuple(whose)
    stock = [_stock(key, serving.rows[key], material, serving.stock_list) for key in keys]
    priced = [each for each in stock if each is not None and _has_price(serving.rows[each.key])]
    bare = [each for each in stock if each is not None and not _has_price(serving.rows[each.key])]
    keep = round_up(serving.stock_list.keep)
    task = Task(tuple(wanted), tuple(priced), round_up(kerf), keep)
    return Group(material, task, tuple(bare), sources)


def _want(piece: Piece, material: Material, widths: Sequence[float]) -> Wanted:
    """The piece in units, nameless: as wide as it is sold where that is what it finishes at."""
    width = round_up(material.width or piece.width)
    if piece.bare:
        as_sold = next((w for w in widths if abs(w - piece.bare) <= CLOSE), None)
        width = width if as_sold is None else round_down(as_sold)
    high, low = sorted(round_down(run) for run in piece.mitres)
    return Wanted("", round_up(piece.length), width, 1, low, high, piece.batch, piece.may_turn)


def _free_batches(
    asked: dict[Wanted, list[Source]],
    rows: Sequence[SoldRow | HandRow],
    serving: Serving,
    kerf: float,
    notes: list[str],
) -> dict[Wanted, list[Source]]:
    """`asked`, without the batches that no board is long and wide enough for; says which."""
    batches: dict[str, list[Wanted]] = {}
    for like, whose in asked.items():
        if like.batch:
            batches.setdefault(like.batch, []).extend([like] * len(whose))
    too_long = {}
    for name, members in batches.items():
        room = sum(piece.length for piece in members) + (len(members) - 1) * round_up(kerf)
        wide = max(piece.width for piece in members)
        if not any(room <= serving.usable(row) and wide <= round_down(row.width) for row in rows):
            too_long[name] = f"{name}: no board that is listed gives all {len(members)} of them in one length"
    if not too_long:
        return asked
    notes.extend(too_long.values())
    freed: dict[Wanted, list[Source]] = {}
    for like, whose in asked.items():
        like = replace(like, batch="") if like.batch in too_long else like
        freed.setdefault(like, []).extend(whose)
    return freed


def _has_price(row: SoldRow | HandRow) -> bool:
    return isinstance(row, HandRow) or row.price is not None


def _stock(key: str, row: SoldRow | HandRow, material: Material, stock_list: StockList) -> Stock | None:
    """The row in units, None where there is none of it; a row without a price costs its wood."""
    supply = row.count if isinstance(row, HandRow) else row.limit
    width = round_up(material.width) if material.width else round_down(row.width)
    length = round_down(row.length)
    if supply == 0 or length <= 0 or width <= 0:
        return None
    sheet = row.kind is StockKind.PANEL
    ends = row.clear if isinstance(row, HandRow) else stock_list.trim_sheet if sheet else stock_list.trim_end
    edges = stock_list.trim_sheet if sheet and isinstance(row, SoldRow) else 0.0
    return Stock(key, length, width, _price(row, material), supply, round_up(ends), round_up(edges))


def _price(row: SoldRow | HandRow, material: Material) -> int:
    if isinstance(row, HandRow):
        return 0
    return wood_of(row, material) if row.price is None else row.price


def wood_of(row: SoldRow, material: Material) -> int:
    """Hundredths of a board foot in one of a row, by its own size; what is sold by the piece has some."""
    thickness, width = row.thickness or material.thickness, row.width or material.width
    return max(1, round(100 * thickness * width * row.length / BOARD_FOOT))
