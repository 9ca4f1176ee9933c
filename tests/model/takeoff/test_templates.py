"""Templates of boards: true to the boards, there where a straight saw cut square to an edge does not do."""

import pytest

from model.job import default_job, with_texts
from model.surround import plan_surround
from model.takeoff.marks import list_kinds
from model.takeoff.templates import list_templates, turn

HEARTH = "level.centre=30 level.left=31 level.right=29"


def made(texts=""):
    job = with_texts(default_job(), [tuple(text.split("=")) for text in texts.split()])
    surround = plan_surround(job)
    return surround, list_templates(surround)


def boards_of(surround, mark):
    kind = next(kind for kind in list_kinds(surround.boards) if kind.mark == mark)
    return [surround.boards[i] for i in kind.pieces]


def test_square_boards_want_none():
    surround, templates = made("column.kind=plain frieze.kind=plain")
    plain = {t.mark for t in templates}
    for kind in list_kinds(surround.boards):
        board = surround.boards[kind.pieces[0]]
        if len(board.section) == 4 and board.low.is_square and board.high.is_square and not board.bores:
            assert kind.mark not in plain


def test_a_hole_is_as_large_and_as_far_from_the_nearer_edges_as_in_the_board():
    surround, templates = made("cord.on=yes")
    holes = [t for t in templates if t.what == "hole"]
    assert holes
    for template in holes:
        (board, *_) = boards_of(surround, template.mark)
        (bore, *_) = board.bores
        ((_, diameter),) = template.holes
        assert diameter == bore.size[0]
        ((x, y), _) = template.holes[0]
        room = bore.place(bore.at, 0.0)
        low, high = board.bounds
        for a, b, name in template.edges:
            level = abs(a[1] - b[1]) < 1e-9
            off = abs((a[1] - y) if level else (a[0] - x))
            wanted = {
                "front": high[2] - room[2],
                "back": room[2] - low[2],
                "left": room[0] - low[0],
                "right": high[0] - room[0],
                "lower": room[1] - low[1],
                "upper": high[1] - room[1],
            }[name.split()[0]]
            assert off == pytest.approx(wanted, abs=1e-6), name


def test_a_notch_round_a_baseboard_has_its_height_and_depth():
    texts = "baseboard.height_right=5 baseboard.thickness_right=3/4 baseboard.meets=notched plinth.on=no"
    _, templates = made(f"{texts} facing.width=60")
    found = {
        (abs(a[0] - b[0]), abs(a[1] - b[1]))
        for template in templates
        if template.what == "notch"
        for a, b in template.cuts
    }
    assert {(round(wide, 4), round(high, 4)) for wide, high in found} == {(0.0, 5.0), (0.75, 0.0)}


def test_flutes_have_a_section_as_wide_and_thick_as_the_board():
    surround, templates = made("column.kind=fluted flute.count=5")
    sections = [t for t in templates if t.what == "section"]
    assert sections
    for template in sections:
        (board, *_) = boards_of(surround, template.mark)
        assert sorted(template.size) == pytest.approx(sorted((board.thickness, board.width)))


@pytest.mark.parametrize(
    "texts",
    [
        "cord.on=yes",
        "column.taper=1",
        "plumb.left=1 plumb.right=-1",
        HEARTH,
        "hearth.height=8 hearth.width=70",
    ],
)
def test_everything_lies_within_the_template(texts):
    for template in made(texts)[1]:
        wide, high = template.size
        points = [p for stroke in template.cuts for p in stroke]
        points += [p for a, b, _ in template.edges for p in (a, b)]
        points += [
            (x + s * d / 2, y + t * d / 2) for (x, y), d in template.holes for s in (-1, 1) for t in (-1, 1)
        ]
        for x, y in points:
            assert -1e-4 <= x <= wide + 1e-4
            assert -1e-4 <= y <= high + 1e-4


def test_a_tapered_columns_edge_leans_as_its_stile_does():
    surround, templates = made("column.taper=1")
    slopes = [
        abs(a[0] - b[0]) / abs(a[1] - b[1])
        for template in templates
        if template.face == "front up"
        for a, b in template.cuts
        if abs(a[0] - b[0]) > 1e-6 and abs(a[1] - b[1]) > 3
    ]
    edges = surround.layout.right.taper
    wanted = {abs(e.head - e.foot) / (e.high - e.low) for e in (edges.inner, edges.outer)}
    assert slopes
    assert all(any(slope == pytest.approx(want, abs=1e-5) for want in wanted) for slope in slopes)


def test_turning_keeps_distances_and_hand():
    _, templates = made("hearth.height=8 hearth.width=70 cord.on=yes")
    for template in templates:
        turned = turn(turn(turn(turn(template))))
        assert turned.size == pytest.approx(template.size)
        for stroke, other in zip(template.cuts, turned.cuts, strict=True):
            assert [*map(tuple, stroke)] == [pytest.approx(p) for p in other]
        once = turn(template)
        for stroke, other in zip(template.cuts, once.cuts, strict=True):
            area, other_area = (
                sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(s, s[1:] + s[:1], strict=True))
                for s in (stroke, other)
            )
            if len(stroke) > 2:
                assert area == pytest.approx(other_area)


SHORT = (
    "column.width_left=7 column.width_right=9 plumb.left=0.75 plumb.right=-0.5 "
    "cord.on=yes old_ledger.top=48 column.taper=1 column.kind=plain"
)


def test_a_piece_shorter_than_what_its_two_ends_want_has_one_template():
    """A foot return 9 3/4 in. long, and a plinth return 5 in. long, askew from end to end."""
    surround, templates = made(SHORT)
    foot = {"column inner foot return", "column outer foot return", "plinth return"}
    marks = [t.mark for t in templates if boards_of(surround, t.mark)[0].role in foot]
    assert marks
    assert len(marks) == len(set(marks))


def test_ends_of_a_long_piece_that_lie_apart_have_each_their_own():
    surround, templates = made(SHORT)
    marks = [t.mark for t in templates if boards_of(surround, t.mark)[0].role == "column inner return"]
    assert marks
    assert all(marks.count(mark) == 2 for mark in marks)


@pytest.mark.parametrize("texts", [SHORT, "column.taper=1", "plumb.left=1 plumb.right=-1", HEARTH])
def test_no_template_of_a_piece_is_another_of_it(texts):
    _, templates = made(texts)
    assert len(set(templates)) == len(templates)
