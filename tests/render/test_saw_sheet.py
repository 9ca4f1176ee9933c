"""The saw's settings on paper: one row for each, in the sawyer's words."""

from __future__ import annotations

from model.job import default_job, with_texts
from model.surround import plan_surround
from model.takeoff.saw_setups import list_corner_angles, list_setups
from render.drawing import Text
from render.saw_sheet import CORNERS, corner_strips, saw_strips


def _words(*settings: str) -> str:
    job = with_texts(default_job(), [tuple(setting.split("=")) for setting in settings])
    strips = saw_strips(list_setups(plan_surround(job)), 9.5)
    return " ".join(mark.text for strip in strips for mark in strip.marks if isinstance(mark, Text))


def test_sprung_mouldings_are_given_flat_and_standing():
    words = _words("bed_mould.profile=crown_38", "bed_mould.size=2 1/2")
    for part in ("Mitre saw settings", "31.6° left", "31.6° right", "33.9° left", "top edge", "bottom edge"):
        assert part in words
    assert "table 45°" in words


def test_flat_backed_ones_stand_with_an_upright_blade():
    words = _words()
    assert "upright" in words
    assert "45° left" in words
    assert "33.9°" not in words


def test_without_mitred_mouldings_there_is_no_table():
    assert saw_strips((), 9.5) == ()


def test_corners_that_are_not_square_stand_in_columns():
    job = with_texts(default_job(), [("bed_mould.profile", "crown_38"), ("bed_mould.size", "2 1/4")])
    angles = list_corner_angles(plan_surround(job), CORNERS)
    words = [
        mark.text for strip in corner_strips(angles, 9.5) for mark in strip.marks if isinstance(mark, Text)
    ]
    assert words.count("31.6°") == 1
    assert words.index("31.6°") < words.index("33.9°")
    assert {"86°", "90°", "94°"} <= set(words)
    assert corner_strips((), 9.5) == ()
