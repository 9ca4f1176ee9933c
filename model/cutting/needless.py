"""Stock that no plan needs because other stock is as good in everything: it is left out of the search."""

from __future__ import annotations

from collections.abc import Sequence

from model.cutting.task import Stock


def drop_needless(stock: Sequence[Stock], is_sheet: bool) -> tuple[Stock, ...]:
    """`stock` in its order, without what costs no less than something like it of which there is any number.

    A board is like a shorter one of its width: it gives the same pieces and a longer offcut. A sheet is like
    one of its own size only, since a larger one may take a cut more. Of equals the first stays.
    """
    kept: dict[str, Stock] = {each.key: each for each in stock if each.price == 0}
    by_section: dict[tuple[int, ...], list[Stock]] = {}
    for each in stock:
        if each.price:
            by_section.setdefault(_section(each, is_sheet), []).append(each)
    for alike in by_section.values():
        cheapest: int | None = None
        for each in sorted(alike, key=lambda one: (-one.length, one.price, one.supply is not None)):
            if cheapest is None or each.price < cheapest:
                kept[each.key] = each
                cheapest = each.price if each.supply is None else cheapest
    return tuple(each for each in stock if each.key in kept)


def _section(stock: Stock, is_sheet: bool) -> tuple[int, ...]:
    length = (stock.length,) if is_sheet else ()
    return stock.width, stock.trim_ends, stock.trim_edges, *length
