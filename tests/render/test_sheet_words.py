"""On a sheet of a cutting plan numbers and words keep off each other, whatever it is cut into."""

from itertools import combinations
from math import dist
from random import Random

import pytest

from render.drawing import MM
from render.extent import box_of, text_corners
from render.sheet_words import NUMBER, RADIUS, Label, join_numbers, list_overhang, place_words


def label(x, y, wide, tall, *words):
    return Label(((x, y), (x + wide, y), (x + wide, y + tall), (x, y + tall)), words, "piece")


def away(at, box):
    x, y = at
    return dist(at, (min(max(x, box[0]), box[2]), min(max(y, box[1]), box[3])))


def test_words_stand_in_the_middle_of_a_part_that_no_cut_crosses():
    (text,), numbers = place_words([label(0, 0, 3, 1, "C1  4 × 9", "C1")], [])
    assert (text.text, text.at[0], numbers) == ("C1  4 × 9", 1.5, ())


def test_the_shorter_words_are_taken_where_the_longer_ones_have_no_room():
    (text,), _ = place_words([label(0, 0, 0.5, 0.3, "C1  40 × 90", "C1")], [])
    assert text.text == "C1"


def test_a_part_too_narrow_for_any_words_has_none():
    assert place_words([label(0, 0, 5, 2 * MM, "C1")], [])[0] == (None,)


def test_words_go_aside_for_the_number_of_a_cut_beside_their_narrow_part():
    high = 6 * MM
    parts = [label(0, i * high, 16 * MM, high, f"C5{i}") for i in range(3)]
    cuts = [(0, high, 16 * MM, high), (0, 2 * high, 16 * MM, 2 * high)]
    texts, numbers = place_words(parts, cuts)
    assert [text.text for text in texts] == ["C50", "C51", "C52"]
    for text in texts:
        assert all(away(at, box_of(text_corners(text))) >= RADIUS for at in numbers)


def test_the_number_of_a_short_cut_is_where_it_is_and_that_of_a_long_one_beside_it_goes_on():
    long, short = (1.0, 0.0, 1.0, 4.0), (1.1, 0.0, 1.1, 0.2)
    _, (first, second) = place_words([], [long, short])
    assert second == pytest.approx((1.1, 0.1))
    assert dist(first, second) > NUMBER


def test_the_number_of_a_cut_too_near_to_another_short_one_stands_past_its_end_and_is_joined():
    short, other = (1.0, 0.0, 1.0, 0.16), (1.06, 0.0, 1.06, 0.2)
    _, numbers = place_words([], [short, other])
    assert dist(*numbers) > NUMBER
    (join,) = join_numbers([short, other], numbers)
    assert join[2:] in numbers
    assert join[0] == join[2]
    assert join_numbers([short], [(1.0, 0.08)]) == ()


def test_numbers_of_short_cuts_in_one_line_follow_each_other():
    high = 4.3 * MM
    cuts = [(1.0, i * high, 1.0, (i + 1) * high) for i in range(3)]
    _, numbers = place_words([], cuts)
    assert [y for _, y in numbers] == pytest.approx([0.5 * high, 1.5 * high, 2.5 * high])
    assert join_numbers(cuts, numbers) == ()


def test_numbers_at_a_sheets_edges_reach_over_them_and_others_do_not():
    assert list_overhang([(1.0, -2.0)], -4.0) == (0.0, 0.0)
    over, under = list_overhang([(1.0, -0.02), (1.0, -3.99)], -4.0)
    assert (over, under) == pytest.approx((RADIUS - 0.02, RADIUS - 0.01))


@pytest.mark.parametrize("seed", range(40))
def test_no_word_of_a_sheet_cut_at_random_lies_under_a_number_and_each_number_is_on_its_cut(seed):
    random = Random(seed)
    parts, cuts = [], []

    def cut(x, y, wide, tall, depth):
        if depth and max(wide, tall) > 0.4:
            at = random.uniform(0.2, 0.8)
            if wide > tall:
                cuts.append((x + at * wide, y, x + at * wide, y + tall))
                cut(x, y, at * wide, tall, depth - 1)
                cut(x + at * wide, y, (1 - at) * wide, tall, depth - 1)
            else:
                cuts.append((x, y + at * tall, x + wide, y + at * tall))
                cut(x, y, wide, at * tall, depth - 1)
                cut(x, y + at * tall, wide, (1 - at) * tall, depth - 1)
        else:
            parts.append(label(x, y, wide, tall, f"F{len(parts)}  10 1/2 × 30", f"F{len(parts)}"))

    cut(0.0, 0.0, 8.0, 4.0, 5)
    texts, numbers = place_words(parts, cuts)
    boxes = [box_of(text_corners(text)) for text in texts if text]
    assert all(away(at, box) >= RADIUS for at in numbers for box in boxes)
    joined = {join[2:] for join in join_numbers(cuts, numbers)}
    for (x0, y0, x1, y1), (x, y) in zip(cuts, numbers, strict=True):
        past = 2 * NUMBER if (x, y) in joined else 1e-9
        along, across = (past, 1e-9) if y0 == y1 else (1e-9, past)
        assert x0 - along <= x <= x1 + along
        assert y0 - across <= y <= y1 + across
    covered = sum(dist(a, b) < 2 * RADIUS for a, b in combinations(numbers, 2))
    assert covered <= len(numbers) // 8
    assert sum(text is not None for text in texts) >= len(texts) // 2
