"""Notes beside the drawings."""

import pytest

from model.job import default_job, with_texts
from model.surround import plan_surround
from render.sheet_notes import list_notes, tell_missing_letters


def notes_for(views, *settings):
    return " ".join(list_notes(plan_surround(with_texts(default_job(), settings)), views))


def test_a_sheet_says_wood_panels_fireplace_and_rules():
    text = notes_for(("front",), ("board.species", "walnut"), ("panel.reveal", "1/2"), ("site.rule", "irc"))
    for said in ('3/4" black walnut', '1/4" thick', '1/2" behind', "Masonry, wood-burning", "IRC masonry"):
        assert said in text


def test_a_sheet_says_of_each_part_how_far_its_panels_lie_back_where_that_differs():
    """A tapered column's panels are one sheet right behind its boards, 3/4 in. thick."""
    text = notes_for(("front",), ("panel.reveal", "3/8"), ("column.taper", "1"))
    assert '3/4" in the columns, 3/8" in the frieze' in text
    assert '3/8" behind the face of their frame' in notes_for(("front",), ("panel.reveal", "3/8"))


@pytest.mark.parametrize("path", ["name", "client", "maker", "notes", "revision", "revised", "changes"])
def test_letters_that_the_typeface_lacks_are_told_wherever_they_stand(path):
    about = with_texts(default_job(), [(f"job.{path}", "\N{CJK UNIFIED IDEOGRAPH-6728}")]).about
    assert tell_missing_letters(about)
    assert not tell_missing_letters(default_job().about)


def test_a_sheet_says_where_the_shelfs_height_is_from():
    assert "from the hearth" in notes_for(("side",))
    assert "from the floor" in notes_for(("side",), ("shelf.height_from", "floor"))


def test_only_sections_explain_their_hatches():
    assert "end grain" in notes_for(("plan_section",))
    assert "end grain" not in notes_for(("front", "side"))


def test_millimetre_jobs_have_millimetres():
    assert "19 mm" in notes_for(("front",), ("job.units", "millimetres"))


def test_a_sheet_says_how_the_checks_came_out_where_they_were_made():
    surround = plan_surround(default_job())
    assert list_notes(surround, ("front",), ())[0] == "Checks: none made. See their sheet before building."
    assert not any(note.startswith("Checks") for note in list_notes(surround, ("front",)))
