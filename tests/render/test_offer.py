"""The homeowner's document is short, says what is missing, and has a place for both to sign."""

from __future__ import annotations

from dataclasses import replace
from io import BytesIO

import pdfplumber
import pytest

from app.demo import list_demos, read_demo
from export.pdf import write_pdf
from model.job import with_texts
from model.money import format_money
from model.price import Part, Price, PriceLine
from model.surround import plan_surround
from render.drawing import Dimension
from render.extent import list_texts
from render.offer import SIZES, build_offer
from render.sheets import PAPERS
from tests.collisions import list_collisions

PRICED = Price((PriceLine("Wood and sheets", 42000), PriceLine("Fastenings, glue and finish", 9000),
                PriceLine("Work", 180000, "24 hours", Part.WORK)), 231000, (), "$")  # fmt: skip
MISSING = Price((), None, ("prices of 3 sizes on the buying list", "what an hour of work costs"), "$")


def _text(demo: str, price: Price, paper: str = "letter", settings=()) -> tuple[str, int]:
    surround = plan_surround(with_texts(read_demo(demo), settings))
    sheets = build_offer(surround, price, paper, "2026-01-01")
    with pdfplumber.open(BytesIO(write_pdf(sheets, "Offer"))) as pdf:
        return "\n".join(page.extract_text() for page in pdf.pages), len(sheets)


@pytest.mark.parametrize("demo", list_demos())
@pytest.mark.parametrize("paper", PAPERS)
def test_it_is_short_and_both_sign(demo: str, paper: str):
    text, count = _text(demo, PRICED, paper)
    assert count <= 4
    assert text.count("place, date") == 2
    assert "$2,310.00" in text


def test_without_a_price_it_says_what_is_wanted_and_names_no_sum():
    text, _ = _text("brick", MISSING)
    assert "No price yet" in text
    assert "prices of 3 sizes" in text
    assert "place, date" not in text
    assert "$" not in text


def test_nobody_signs_at_invented_prices_and_they_are_said_to_be_so():
    words = _text("brick", replace(PRICED, is_invented=True))[0]
    assert "invented" in words
    assert "no offer" in words
    assert "Signed" not in words
    assert "holds for" not in words


def test_words_of_the_offer_stand_in_it():
    settings = [
        ("offer.colour", "Warm white, satin"),
        ("offer.included", "Taking the old surround down"),
        ("offer.excluded", "A new hearth"),
        ("offer.allowances", "Rotten wood, up to 200"),
        ("offer.terms", "A third when ordered"),
        ("offer.notes", "The dog stays out of the room"),
        ("offer.promised", "Carrying it up four floors"),
        ("offer.left_out", "Any sweeping"),
        ("job.notes", "Asks for more than he pays"),
        ("offer.days", "14"),
    ]
    text, _ = _text("bedroom", PRICED, "letter", settings)
    for words in (*(value for _, value in settings[:-2]), "holds for 14 days"):
        assert words in text
    for words in ("Asks for more", "Making the surround", "Permits and inspections"):
        assert words not in text


def test_the_chosen_finish_is_named_where_no_words_of_ones_own_are():
    text, _ = _text("bedroom", PRICED, "letter", [("look.paint", "Moss")])
    assert "as in the picture: painted, moss" in text
    assert "as in the picture" not in _text("bedroom", PRICED)[0]


def test_what_is_in_every_price_and_in_none_stands_there_from_the_first():
    text, _ = _text("brick", PRICED)
    assert "Making the surround as drawn" in text
    assert "Permits and inspections" in text


@pytest.mark.parametrize(("kind", "is_said"), [("framed", True), ("plain", False)])
def test_plywood_is_named_where_there_is_some(kind: str, is_said: bool):
    settings = [("column.kind", kind), ("frieze.kind", kind), ("shelf.kind", "plank")]
    text, _ = _text("brick", PRICED, "letter", settings)
    assert ("plywood" in text) == is_said


@pytest.mark.parametrize("currency", ["1 234,50 \u20ac", "kr 1\u202f234", "\u00a51,234"])
def test_an_amount_is_never_parted_over_lines(currency: str):
    much = replace(
        PRICED, lines=tuple(replace(line, cost=123_456_700) for line in PRICED.lines), currency=currency
    )
    text, _ = _text("brick", replace(much, total=370_370_100))
    assert format_money(370_370_100, currency).replace("\u202f", " ") in text.replace("\u202f", " ")


def test_few_sizes_are_drawn():
    surround = plan_surround(read_demo("brick"))
    sheet = build_offer(surround, PRICED, "letter", "2026-01-01")[1]
    sizes = [m for placed in sheet.placed for m in placed.drawing.marks if isinstance(m, Dimension)]
    assert 4 <= len(sizes) <= 14
    assert {"shelf.height", "opening.width", "opening.height"} <= {size.stands_for for size in sizes}


def test_sizes_stand_on_their_sheet_without_what_the_wood_hides():
    far = [
        ("bolt_one.across", "-120"),
        ("bolt_one.up", "144"),
        ("bolt_two.across", "120"),
        ("job.units", "both"),
    ]
    surround = plan_surround(with_texts(read_demo("brick"), far))
    sheets = build_offer(surround, PRICED, "letter", "2026-01-01")
    words = [text.text for sheet in sheets for p in sheet.placed for text in list_texts(p.drawing)]
    assert not any("bolt" in text for text in words)
    assert [str(found) for sheet in sheets for found in list_collisions(sheet)] == []


def test_front_and_side_stand_on_a_sheet_each_where_one_does_not_hold_both(monkeypatch):
    monkeypatch.setitem(PAPERS, "slip", (6.0, 6.0))
    sheets = build_offer(plan_surround(read_demo("brick")), PRICED, "slip", "2026-01-01")
    names = [[p.name for p in s.placed if p.name in ("front", "side")] for s in sheets if s.title == SIZES]
    assert names == [["front"], ["side"]]
