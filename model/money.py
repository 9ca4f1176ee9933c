"""How money is written: symbol, place, decimals and separators, all read off one example of it.

Inside the program money is whole hundredths; a currency with three decimals ends in a nought.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache

from model.errors import Refused

USUAL = "$"
HUNDREDTHS = 100
"""In one of any currency: money is whole ones of these inside."""
LONGEST_SYMBOL = 12
NO_BREAK, THIN = ("\u00a0", " "), ("\u202f", " ")
WANTED = (
    "write the symbol alone, such as $ or EUR, or how 1234.50 is written, such as $1,234.50, 1.234,50 € "
    "or CHF 1'234.50"
)
_EXAMPLE = re.compile(
    r"(?P<before>\D*)1(?P<group>[,.'’ \u00a0\u202f]?)234"
    r"(?:(?P<point>[.,·])(?P<decimals>[0-9]{1,3}))?(?P<after>\D*)"
)


@dataclass(frozen=True, slots=True)
class Currency:
    """What stands before and after a number, what parts its thousands and its decimals, how many of these."""

    before: str = USUAL
    after: str = ""
    group: str = ","
    point: str = "."
    decimals: int = 2

    @property
    def unit(self) -> int:
        """The least amount that is written, in hundredths."""
        return (100, 10)[self.decimals] if self.decimals < 2 else 1

    def format(self, hundredths: int) -> str:
        """An amount, a minus before everything."""
        whole, rest = divmod(round(abs(hundredths) / self.unit) * self.unit, 100)
        number = f"{whole:,}".replace(",", self.group)
        if self.decimals:
            number += self.point + f"{rest:02d}0"[: self.decimals]
        return f"{'-' if hundredths < 0 else ''}{self.before}{number}{self.after}"


@lru_cache(maxsize=64)
def parse_currency(text: str, field: str = "currency") -> Currency:
    """How money is written, by an example of 1234.50 or by a symbol: letters stand behind, signs before.

    Raises Refused.

    >>> parse_currency("1.234,50 €").format(1_234_500), parse_currency("¥1,234").format(90_000)
    ('12.345,00 €', '¥900')
    >>> parse_currency("EUR").format(1240), parse_currency("$").format(1240)
    ('12.40 EUR', '$12.40')
    """
    plain = text.strip()
    if any(c.isdigit() for c in plain):
        return _parse_example(plain, text, field)
    if len(plain) > LONGEST_SYMBOL or not plain.isprintable():
        raise Refused(field, text, WANTED)
    return Currency("", f" {plain}") if plain[:1].isalpha() else Currency(plain)


def _parse_example(plain: str, text: str, field: str) -> Currency:
    found = _EXAMPLE.fullmatch(plain)
    if found is None or (found["point"] and found["point"] == found["group"]):
        raise Refused(field, text, WANTED)
    before, after = found["before"], found["after"]
    symbols = (before + after).replace(*NO_BREAK).replace(*THIN)
    if max(len(before), len(after)) > LONGEST_SYMBOL or not symbols.isprintable() or after[:1] in (".", ","):
        raise Refused(field, text, WANTED)
    decimals = found["decimals"] or ""
    return Currency(before, after, found["group"], found["point"] or ".", len(decimals))


def format_money(hundredths: int, currency: str) -> str:
    """``$12.40``; `currency` as for `parse_currency`, which may refuse it."""
    return parse_currency(currency).format(hundredths)
