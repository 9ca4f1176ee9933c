"""The sheet of cautions."""

from model.cautions import list_cautions
from model.job import default_job
from model.surround import plan_surround
from render.cautions_sheet import caution_strips
from render.drawing import Text


def test_each_caution_stands_with_its_reason_its_source_and_who_decides():
    concerns = list_cautions(plan_surround(default_job()))
    strips = caution_strips(concerns, 9.0)
    words = " ".join(mark.text for strip in strips for mark in strip.marks if isinstance(mark, Text))
    for concern in concerns:
        caution = concern.caution
        for text in (caution.name, caution.source, caution.standing, caution.decides, concern.why):
            assert set(text.split()) <= set(words.replace("[", "").replace("]", "").split()), text


def test_it_says_that_local_code_manual_and_licensed_people_go_before_it():
    strips = caution_strips((), 9.0)
    words = " ".join(mark.text for strip in strips for mark in strip.marks if isinstance(mark, Text))
    assert "as it is adopted" in words
    assert "the appliance's manual and people licensed for the work go before it" in words
