"""Everything that is read can be read, on both grounds and on paper."""

from __future__ import annotations

import pytest
from PySide6.QtGui import QFontMetricsF

from app.theme import DARK, LIGHT, ON_PAPER, Colours, Ground, is_dark, status_colour, text_font
from model.check.finding import Status
from render.lettering import text_runs, text_width
from render.pens import TINTS, contrast

TEXT, GRAPHIC = 4.5, 3.0
"""Least contrasts: WCAG 2.1, success criteria 1.4.3 and 1.4.11."""


@pytest.mark.parametrize("c", [LIGHT, DARK])
@pytest.mark.parametrize("ground", ["panel", "entry", "lit_ground", "wrong_ground"])
def test_what_is_read_stands_out_from_its_ground(c: Colours, ground: str):
    for ink in (c.ink, c.soft):
        assert contrast(ink, getattr(c, ground)) >= TEXT


@pytest.mark.parametrize("c", [LIGHT, DARK])
def test_coloured_words_can_be_read_too(c: Colours):
    assert contrast(c.wrong, c.wrong_ground) >= TEXT
    assert contrast(c.close, c.panel) >= TEXT
    assert contrast(c.ink, c.marked) >= TEXT
    assert contrast(c.on_strong, c.strong) >= TEXT
    for status in Status:
        for ground in (c.panel, c.entry, c.lit_ground):
            assert contrast(status_colour(status, c).name(), ground) >= TEXT


@pytest.mark.parametrize("c", [LIGHT, DARK])
def test_values_that_follow_are_lighter_and_still_readable(c: Colours):
    assert contrast(c.soft, c.panel) > contrast(c.faint, c.panel) >= TEXT


@pytest.mark.parametrize("c", [LIGHT, DARK])
def test_what_marks_the_focus_is_seen(c: Colours):
    assert contrast(c.lit, c.panel) >= GRAPHIC


def test_what_is_laid_over_the_sheet_reads_on_paper():
    assert contrast(ON_PAPER.lit, ON_PAPER.lit_ground) >= TEXT
    for tint in ("#ffffff", *TINTS.values()):
        if contrast("#ffffff", tint) < 2:
            assert contrast(ON_PAPER.lit, tint) >= GRAPHIC


def test_statuses_differ_in_colour_too():
    for c in (LIGHT, DARK):
        assert len({status_colour(status, c).name() for status in Status}) == len(Status)


def test_a_ground_that_was_chosen_does_not_ask_the_system(dressed):
    assert is_dark(Ground.DARK)
    assert not is_dark(Ground.LIGHT)


@pytest.mark.parametrize("text", ["5'-4 1/2\"", "0123456789", "Facing showing above", "½ × 19 mm"])
def test_letters_on_the_screen_are_as_wide_as_on_paper(dressed, text: str):
    font = text_font(30)
    font.setKerning(False)
    metrics = QFontMetricsF(font)
    shown = sum(run.size * metrics.horizontalAdvance(run.text) for run in text_runs(text))
    assert shown == pytest.approx(text_width(text, metrics.capHeight()), rel=0.02)


def test_figures_line_up(dressed):
    metrics = QFontMetricsF(text_font(30))
    assert len({round(metrics.horizontalAdvance(figure), 3) for figure in "0123456789"}) == 1
