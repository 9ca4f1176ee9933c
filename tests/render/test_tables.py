"""Tables and paragraphs: what is on them, where pages end, that nothing is lost or covers another."""

from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import Polygon

from model.check.finding import Status
from render.drawing import Anchor, Drawing, Lines, Polyline, Text
from render.extent import drawing_extent, list_texts, text_corners
from render.tables import (
    SMALL,
    Cell,
    Column,
    Strip,
    Table,
    heading_strip,
    paragraph_strips,
    pour_pages,
    pour_strips,
    share_widths,
    strips_height,
    table_strips,
)

WORDS = st.text(st.characters(codec="ascii", categories=["L", "N", "P", "Zs"]), max_size=80)
COLUMNS = (Column("Mark", 0.8, bold=True), Column("Length", 1.0, Anchor.END), Column("Notes", 2.0))


def table_of(*rows, least=0.0):
    return Table(COLUMNS, tuple(r if isinstance(r, str) else tuple(map(Cell, r)) for r in rows), SMALL, least)


def pages_of(strips, height=6.0):
    return [[text.text for text in list_texts(Drawing(page))] for page in pour_strips(strips, (1, 7), height)]


def test_rows_stand_below_their_headings_in_order():
    page = pages_of(table_strips(table_of(("C1", '4"', "left"), ("C2", '5"', "right"))))[0]
    assert page == ["Mark", "Length", "Notes", "C1", '4"', "left", "C2", '5"', "right"]


def test_headings_stand_again_on_every_page():
    pages = pages_of(table_strips(table_of(*[(f"C{n}", "1", "") for n in range(60)])), 3.0)
    assert len(pages) > 2
    assert all(page[:3] == ["Mark", "Length", "Notes"] for page in pages)


def test_a_groups_heading_is_never_the_last_on_a_page_and_goes_on_with_it():
    rows = [row for g in range(9) for row in (f"Group {g}", *[(f"C{g}{n}", "1", "") for n in range(5)])]
    for page in pages_of(table_strips(table_of(*rows)), 2.0):
        assert not page[-1].startswith("Group")
        assert page[3].startswith("Group")


@pytest.mark.parametrize("count", range(6, 40))
def test_no_row_stands_alone_on_the_last_of_several_pages(count):
    rows = [(f"C{n}", "1", "") for n in range(count)]
    pages = pages_of(table_strips(table_of("Group", *rows, least=0.3)), 2.5)
    found = [text for page in pages for text in page if text.startswith("C")]
    assert found == [mark for mark, *_ in rows]
    assert all(sum(text.startswith("C") for text in page) >= 2 for page in pages)
    assert len(pages) == len(pages_of(table_strips(table_of("Group", *rows, least=0.3))[:-1], 2.5)) or (
        sum(text.startswith("C") for text in pages[-1]) == 2
    )


@given(st.lists(st.tuples(WORDS, WORDS, WORDS), max_size=25), st.floats(2.5, 8))
def test_no_letter_is_lost_and_no_page_overflows(rows, height):
    unnamed = tuple(Column("", column.width) for column in COLUMNS)
    table = Table(unnamed, tuple(tuple(map(Cell, row)) for row in rows))
    pages = pour_strips(table_strips(table), (0, 0), height)
    found = "".join(text.text for page in pages for text in list_texts(Drawing(page)))
    asked = "".join("".join(row) for row in rows)
    assert sorted("".join(found.split())) == sorted("".join(asked.split()))
    for page in pages:
        assert drawing_extent(Drawing(page))[1] >= -height - 1e-9


@given(st.lists(st.tuples(WORDS, WORDS, WORDS), min_size=1, max_size=8), st.sampled_from([0.0, 0.5]))
def test_no_writing_covers_another_or_leaves_its_table(rows, least):
    page = pour_strips(table_strips(table_of(*rows, least=least)), (0, 0), 500)[0]
    boxes = [(t.text, Polygon(text_corners(t))) for t in list_texts(Drawing(page))]
    for (one, box), (other, beside) in combinations(boxes, 2):
        assert not box.buffer(-1e-6).intersects(beside), (one, other)
    for text, box in boxes:
        assert box.bounds[0] >= -1e-6, text
        assert box.bounds[2] <= 3.8 + 1e-6, text


def test_a_row_longer_than_a_page_goes_on_in_further_rows():
    long = "measure twice and cut once " * 200
    pages = pages_of(table_strips(table_of(("C1", "1", long))), 3.0)
    assert len(pages) > 2
    assert sum("measure" in text for page in pages for text in page) > 50


def test_rows_are_at_least_as_tall_as_asked_with_their_writing_in_the_middle():
    row = table_strips(table_of(("C1", "1", ""), least=0.5))[1]
    assert row.height == 0.5
    base = next(mark.at[1] for mark in row.marks if isinstance(mark, Text))
    assert base + SMALL / 2 == pytest.approx(-0.25, abs=0.001)


def test_first_lines_of_one_row_share_a_baseline():
    row = table_strips(table_of(("C1", "1", "many words that need more than one line of room"), least=0.6))[1]
    tops = {}
    for mark in row.marks:
        if isinstance(mark, Text):
            tops.setdefault(mark.at[0], mark.at[1])
    assert len(set(tops.values())) == 1


def test_figures_end_at_the_right_edge_of_their_column():
    row = table_strips(table_of(("C1", '4 1/2"', "")))[1]
    figure = next(mark for mark in row.marks if isinstance(mark, Text) and mark.text == '4 1/2"')
    assert figure.anchor is Anchor.END
    assert 1.7 < figure.at[0] < 1.8


def test_an_answer_has_its_sign_before_its_word():
    table = Table((Column("Result", 2.0),), ((Cell("over", Status.FAIL),),))
    row = table_strips(table)[1]
    sign = next(mark for mark in row.marks if isinstance(mark, Polyline))
    word = next(mark for mark in row.marks if isinstance(mark, Text))
    assert max(x for x, _ in sign.points) < word.at[0]


def test_a_box_to_tick_is_drawn_in_the_middle_of_its_cell():
    table = Table((Column("Cut", 1.0),), ((Cell(box=True),),), least_row=0.5)
    box = next(mark for mark in table_strips(table)[1].marks if isinstance(mark, Polyline))
    assert sum(x for x, _ in box.points) / 4 == pytest.approx(0.5)
    assert sum(y for _, y in box.points) / 4 == pytest.approx(-0.25)


def test_a_heading_stays_with_what_it_heads():
    strips = (Strip(1.8), heading_strip("Notes"), *paragraph_strips("one line", 4.0))
    pages = pages_of(strips, 2.0)
    assert pages == [[], ["Notes", "one line"]]


def test_a_paragraph_is_poured_line_by_line():
    strips = paragraph_strips("measure twice " * 300, 3.0)
    pages = pages_of(strips, 2.0)
    assert len(pages) > 2
    assert strips_height(strips) == pytest.approx(sum(strip.height for strip in strips))


def test_nothing_to_pour_is_one_empty_page():
    assert pour_strips((), (0, 0), 5) == ((),)


def test_a_rule_closes_every_row():
    row = table_strips(table_of(("C1", "1", "")))[1]
    rules = [stroke for mark in row.marks if isinstance(mark, Lines) for stroke in mark.segments]
    assert any(y1 == y2 == -row.height and x2 - x1 == pytest.approx(3.8) for x1, y1, x2, y2 in rules)


def test_widths_are_shared_out_in_proportion():
    assert share_widths(10, (1, 1, 3)) == (2, 2, 6)


def test_rows_give_up_some_of_their_room_to_write_in_where_that_spares_a_page():
    short, long = (table_strips(table_of(*[("C1", '4"', "left")] * n, least=0.5)) for n in (12, 14))
    assert [len(pour_strips(short, (1, 7), 6)), len(pour_pages(short, (1, 7), 6))] == [2, 1]
    assert [len(pour_strips(long, (1, 7), 6)), len(pour_pages(long, (1, 7), 6))] == [2, 2]
    assert pour_pages(long, (1, 7), 6) == pour_strips(long, (1, 7), 6)


def test_tight_rows_keep_their_headings_and_hold_their_writing():
    rows = (
        "Columns",
        *[("C1", "4", "a long note that takes several lines " * 4)] * 2,
        *[("C2", "5", "x")] * 11,
    )
    strips = table_strips(table_of(*rows, least=0.5))
    page, *others = pour_pages(strips, (1, 7), 7.5)
    assert not others
    texts = [text.text for text in list_texts(Drawing(page))]
    assert texts.count("Columns") == 1
    assert texts.count("C2") == 11
    boxes = [Polygon(text_corners(text)) for text in list_texts(Drawing(page))]
    assert all(a.intersection(b).area < 1e-9 for a, b in combinations(boxes, 2))
