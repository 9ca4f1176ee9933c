"""What several lists and drawings of one surround share: worked out when first asked for, kept with it."""

from __future__ import annotations

from collections.abc import Callable, Hashable
from typing import TYPE_CHECKING, TypeVar, cast

if TYPE_CHECKING:
    from model.surround import Surround

Made = TypeVar("Made")


def once(surround: Surround, key: Hashable, make: Callable[[], Made]) -> Made:
    """What `make` gives; the same thing again for a key that was asked for. It must not be changed."""
    known = surround.worked_out
    if key not in known:
        known[key] = make()
    return cast(Made, known[key])
