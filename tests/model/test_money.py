"""Money is written as its example says, whatever the symbol, its place, the decimals and the separators."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.errors import Refused
from model.money import format_money, parse_currency

EXAMPLES = ["$1,234.50", "1.234,50 €", "€ 1.234,50", "CHF 1'234.50", "1 234,50 kr", "1234.50", "¥1,234",
    "1.234 Ft",
            "£1,234.5", "KD 1,234.500", "1\u202f234,50\u00a0€", "1’234.50"]  # fmt: skip


@pytest.mark.parametrize("example", EXAMPLES)
def test_an_amount_is_written_as_the_example_writes_it(example: str):
    decimals = parse_currency(example).decimals
    amount = 123_400 if decimals == 0 else 123_450
    assert format_money(amount, example) == example


@pytest.mark.parametrize(
    ("currency", "amount", "text"),
    [
        ("$", 1240, "$12.40"), ("EUR", 1240, "12.40 EUR"), ("", 1240, "12.40"),
        ("¥1,234", 1_250_000, "¥12,500"),
        ("1.234,50 €", 5, "0,05 €"), ("$1,234.50", -123, "-$1.23"), ("£1,234.5", 1250, "£12.5"),
        ("$1,234.50", 123_456_789, "$1,234,567.89"), ("KD 1,234.500", 1, "KD 0.010"),
    ],
)  # fmt: skip
def test_symbols_alone_and_small_and_large_amounts(currency: str, amount: int, text: str):
    assert format_money(amount, currency) == text


@pytest.mark.parametrize(
    "text",
    [
        "$12.40",
        "1,234,50",
        "1.234.50 €",
        "1234.5678",
        "x" * 13,
        "$1,234.50\n2",
        "1234.",
        "12 €",
        "\x07",
        "١٢٣٤",
    ],
)
def test_what_is_no_example_is_refused_with_one(text: str):
    with pytest.raises(Refused, match=r"1\.234,50 €"):
        parse_currency(text)


@given(st.text(max_size=16))
def test_any_text_is_a_currency_or_is_refused(text: str):
    try:
        found = parse_currency(text)
    except Refused:
        return
    assert found.format(123_450).isprintable() or "\u00a0" in text or "\u202f" in text


@given(st.sampled_from(EXAMPLES), st.integers(0, 10**9))
def test_two_amounts_are_written_alike_only_within_the_least_unit(example: str, amount: int):
    currency = parse_currency(example)
    whole = amount // currency.unit * currency.unit
    assert currency.format(whole) != currency.format(whole + currency.unit)
