"""Cutting plans on paper: true to scale, every piece where the plan has it, nothing written over anything."""

from dataclasses import replace
from functools import cache
from itertools import combinations

import pytest
from shapely import box
from shapely.geometry import Polygon

from app.demo import list_demos, read_demo
from app.stock_lists import read_shipped_list
from model.cutting.buying import list_buying
from model.cutting.order import build_order
from model.cutting.places import list_places
from model.cutting.plan import plan_order
from model.cutting.printed import count_printed, list_changes
from model.cutting.task import Effort, SawnBoard, to_inches
from model.surround import plan_surround
from model.takeoff.materials import list_fastened
from model.takeoff.takeoff import take_off
from model.units import FEET_INCHES_16, MILLIMETRES, format_length
from render.board_bar import read_pieces
from render.buying_sheet import NO_PRICE, buying_strips
from render.cutting_sheet import HOW, cutting_strips, draw_cutting, say_proof
from render.drawing import Drawing, Region, Text
from render.extent import list_texts, text_corners
from render.tables import SMALL, pour_strips, strips_height

WIDTH = 7.2


@cache
def plan_of(name, stock="example"):
    """A plan soon found: what is drawn here need not be the cheapest."""
    rounds = iter(range(10**9))
    order = build_order([(name, plan_surround(read_demo(name)))], read_shipped_list(stock))
    return plan_order(order, Effort(lambda: next(rounds) > 200))


def texts_of(strips):
    (page,) = pour_strips(strips, (0.0, 0.0), strips_height(strips))
    return [mark for mark in page if isinstance(mark, Text)]


@pytest.mark.parametrize("name", list_demos())
def test_every_board_drawn_shows_its_pieces_at_their_true_lengths(name):
    plan = plan_of(name)
    drawing = draw_cutting(plan, FEET_INCHES_16, WIDTH)
    drawn = {}
    for mark in drawing.marks:
        if isinstance(mark, Region) and mark.stands_for:
            (x0, _), (x1, _) = min(mark.rings[0]), max(mark.rings[0])
            for each in read_pieces(mark.stands_for)[0]:
                drawn.setdefault(each, []).append(x1 - x0)
    for group in plan.groups:
        longest = max(s.length for s in group.task.stock if s.key in {e.cut.stock for e in group.sawn})
        for sawn in group.sawn:
            if isinstance(sawn.cut, SawnBoard):
                for place in list_places(sawn, group):
                    expected = to_inches(place.length) * WIDTH / to_inches(longest)
                    found = drawn[place.source.mark]
                    assert any(each == pytest.approx(expected) for each in found)


@pytest.mark.parametrize("name", list_demos())
@pytest.mark.parametrize("style", [FEET_INCHES_16, MILLIMETRES])
def test_nothing_is_written_over_anything_or_too_small(name, style):
    plan = plan_of(name)
    drawing = draw_cutting(plan, style, WIDTH)
    boxes = [(text.text, Polygon(text_corners(text)).buffer(-0.01)) for text in list_texts(drawing)]
    for (one, first), (other, second) in combinations(boxes, 2):
        assert not first.intersects(second), (one, other)
    assert min(text.height for text in list_texts(drawing)) >= SMALL - 1e-9
    page = box(-1e-6, -1e6, WIDTH + 1e-6, 1e-6)
    assert all(page.contains(outline) for _, outline in boxes)


@pytest.mark.parametrize("name", list_demos())
def test_a_mark_stands_inside_its_piece(name):
    drawing = draw_cutting(plan_of(name), FEET_INCHES_16, WIDTH)
    pieces = {}
    for mark in drawing.marks:
        if isinstance(mark, Region) and mark.stands_for:
            pieces.setdefault(mark.stands_for, []).append(Polygon(mark.rings[0]))
    for text in list_texts(drawing):
        if text.stands_for:
            outline = Polygon(text_corners(text))
            assert any(piece.buffer(0.03).contains(outline) for piece in pieces[text.stands_for])


def test_a_mark_stands_upright_in_a_piece_too_short_for_it():
    plan = plan_of("bedroom")
    texts = [text for text in list_texts(draw_cutting(plan, FEET_INCHES_16, WIDTH)) if text.stands_for]
    upright = [text for text in texts if text.rotation]
    assert upright
    level = {text.text.split()[0] for text in texts if not text.rotation}
    assert not level & {text.text for text in upright}


@pytest.mark.parametrize("name", list_demos())
def test_the_words_below_name_every_piece(name):
    plan = plan_of(name)
    words = " ".join(text.text for text in texts_of(cutting_strips(plan, FEET_INCHES_16, WIDTH)))
    boards = [sawn for sawn in plan.sawn if isinstance(sawn.cut, SawnBoard)]
    for sawn in boards:
        for source in sawn.sources:
            assert source.mark in words


def test_without_prices_wood_is_counted_and_no_money_named():
    plan = plan_of("bedroom", "usual")
    for group in plan.groups:
        assert "board feet" in say_proof(group, "$")
        assert "$" not in say_proof(group, "$")
    buying = list_buying(plan)
    texts = [text.text for text in texts_of(buying_strips(plan, buying, FEET_INCHES_16, WIDTH))]
    assert NO_PRICE in texts
    assert not any("$" in text and "no price" not in text.lower() for text in texts)


def test_each_line_of_the_buying_list_has_a_box_and_the_totals_add_up():
    plan = plan_of("brick")
    buying = list_buying(plan)
    strips = buying_strips(plan, buying, FEET_INCHES_16, WIDTH)
    words = " ".join(text.text for text in texts_of(strips))
    assert sum(total.cost for total in buying.totals) == buying.total
    assert f"${buying.total / 100:.2f}" in words
    assert all(f"{total.heading}:" in words for total in buying.totals)


def test_what_is_driven_is_bought_by_size_and_count_below_the_boards():
    fastened = list_fastened(take_off(plan_surround(read_demo("brick"))).materials)
    plan = plan_of("brick")
    strips = buying_strips(plan, list_buying(plan), FEET_INCHES_16, WIDTH, None, fastened)
    texts = [text.text for text in texts_of(strips)]
    assert "Nails, screws and anchors" in texts
    at = texts.index('Wood screws: no. 8, shelf to ledger, 1 3/4"')
    assert texts[at + 1 : at + 3] == ["6", "6 screws"]
    assert any(text.startswith("1/4 in. masonry screws") for text in texts)


def test_nothing_planned_draws_nothing():
    order = build_order([], read_shipped_list())
    plan = plan_order(order)
    assert cutting_strips(plan, FEET_INCHES_16, WIDTH) == ()
    assert draw_cutting(plan, FEET_INCHES_16, WIDTH) == Drawing(())
    assert buying_strips(plan, list_buying(plan), FEET_INCHES_16, WIDTH) == ()


def test_boards_that_are_all_bought_are_drawn_with_the_words_that_explain_bars():
    nothing = plan_order(build_order([], read_shipped_list()))
    strips = cutting_strips(nothing, FEET_INCHES_16, WIDTH, plan_of("brick"))
    words = " ".join(text.text for text in texts_of(strips))
    assert words.startswith("Bought already")
    assert words.count(HOW) == 1


def test_what_bars_mean_is_said_once_where_only_a_part_is_bought():
    plan = plan_of("brick")
    words = " ".join(text.text for text in texts_of(cutting_strips(plan, FEET_INCHES_16, WIDTH, plan)))
    assert words.count(HOW) == 1
    assert "Still to buy or cut anew" in words
    assert words.index("Bought already") < words.index("Still to buy")


def test_each_row_of_the_buying_list_says_what_changed_since_it_was_printed():
    plan = plan_of("brick")
    buying = list_buying(plan)
    now = count_printed(buying)
    first, second, *_ = now
    before = {item: count for item, count in now.items() if item != first}
    changes = list_changes(before | {second: now[second] + 2, "1x2 old oak, 8'-0\"": 3}, now)
    strips = buying_strips(plan, buying, FEET_INCHES_16, 9.6, changes)
    texts = [text.text for text in texts_of(strips)]
    assert {"Since printed", "new", "2 fewer", "1x2 old oak, 8'-0\"", "gone, 3 before"} <= set(texts)
    same = [text.text for text in texts_of(buying_strips(plan, buying, FEET_INCHES_16, WIDTH, ()))]
    assert "Since printed" not in same
    assert any("Nothing changed since" in text for text in same)
    never = [text.text for text in texts_of(buying_strips(plan, buying, FEET_INCHES_16, WIDTH))]
    assert not any("Nothing changed since" in text for text in never)


def test_pieces_that_nothing_on_the_list_holds_are_named_with_the_wood_that_would():
    stock = read_shipped_list("example")
    short_boards = replace(stock, sold=tuple(row for row in stock.sold if row.length <= 72))
    order = build_order([("brick", plan_surround(read_demo("brick")))], short_boards)
    plan = plan_order(order, Effort(lambda: True))
    said = " ".join(text.text for text in texts_of(cutting_strips(plan, FEET_INCHES_16, WIDTH)))
    assert "Not to be had" in said
    marks = {source.mark for short in plan.short for source in short.sources}
    assert marks
    assert all(mark in said for mark in marks)
    assert all(format_length(short.wants_length, FEET_INCHES_16) in said for short in plan.short)
