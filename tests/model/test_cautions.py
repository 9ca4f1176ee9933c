"""Which cautions concern a job."""

import pytest

from model.cautions import list_cautions
from model.job import default_job, with_texts
from model.parameters import FIREPLACES
from model.reference.sourced import Standing
from model.surround import plan_surround


def concerns(*settings):
    return list_cautions(plan_surround(with_texts(default_job(), settings)))


def named(*settings):
    return {concern.caution.name: concern for concern in concerns(*settings)}


@pytest.mark.parametrize("kind", FIREPLACES)
def test_every_kind_of_fireplace_has_a_caution_about_fire_and_it_comes_first(kind):
    assert concerns(("site.fireplace", kind))[0].caution.name == "Fire"


def test_masonry_figures_are_cited_for_masonry_alone():
    assert "R1001.11" in named(("site.fireplace", "masonry"))["Fire"].caution.source
    for kind in ("gas", "electric", "factory_built"):
        assert all("R1001" not in c.caution.source for c in concerns(("site.fireplace", kind)))


@pytest.mark.parametrize(
    ("kind", "burns"),
    [("masonry", True), ("factory_built", True), ("gas", True), ("electric", False), ("not_in_use", False)],
)
def test_carbon_monoxide_concerns_what_burns(kind, burns):
    assert ("Carbon monoxide" in named(("site.fireplace", kind))) is burns


def test_cords_concern_a_surround_with_a_cord_way_alone():
    assert "Cords" not in named()
    assert "400.12" in named(("cord.on", "yes"))["Cords"].caution.source


def test_silica_says_how_many_holes_are_drilled():
    concern = named()["Silica dust"]
    assert concern.why.split()[0].isdigit()
    assert "29 CFR 1926.1153" in concern.caution.source


def test_old_paint_that_the_job_disturbs_is_named():
    why = named(("old_ledger.top", "50"), ("old_ledger.use", "remove"), ("baseboard.height_left", "5"))[
        "Lead in old paint"
    ].why
    assert "an old ledger comes off" in why
    assert "baseboards are cut back" in why
    assert "comes off" not in named()["Lead in old paint"].why


def test_what_was_entered_of_the_house_is_not_called_unknown():
    of_house = named(("house.year", "1924"), ("house.old_board", "yes"), ("old_ledger.top", "50"))
    assert of_house["Lead in old paint"].why.startswith("The house was built in 1924")
    assert "is entered" in of_house["Asbestos"].why
    assert "not in the job" in named()["Lead in old paint"].why
    assert "not known" in named()["Asbestos"].why


def test_lifting_names_the_heaviest_lift():
    assert "lb, of the" in named()["Lifting"].why


def test_every_caution_says_why_and_who_decides_and_names_a_source_if_it_is_published():
    for kind in FIREPLACES:
        for concern in concerns(("site.fireplace", kind), ("cord.on", "yes")):
            assert concern.why.endswith(".")
            assert concern.caution.decides
            assert bool(concern.caution.source) or concern.caution.standing is not Standing.PUBLISHED
