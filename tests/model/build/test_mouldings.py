"""Which section a place takes and how large: as asked where there is room, and said where there is not."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from model.build.layout import lay_out
from model.build.ledger import LEFT_OUT
from model.build.mouldings import LEAST_EDGE, LEAST_MOULD, face_depth
from model.build.surround import build_surround
from model.idle import list_idle
from model.job import default_job, with_texts
from model.moulding.library import SECTIONS, USES, Use
from model.moulding.section import draw_face
from tests.strategies import jobs

PLACES = {
    "bed_mould": Use.BED_MOULD,
    "capital": Use.CAPITAL,
    "plinth_cap": Use.PLINTH_CAP,
    "panel_mould": Use.PANEL_MOULD,
    "back_band": Use.BACK_BAND,
}
FIELDS = {"bed_mould": "bed", "panel_mould": "panel"}
OVOLO_1 = "name Mine; ovolo 1 down, 3/4 back; foot 1/4"


def lay(**texts):
    job = with_texts(default_job(), [(path.replace("__", "."), text) for path, text in texts.items()])
    return lay_out(job.site, job.design)


def built(place, **texts):
    layout = lay(**{f"{place}__on": "yes"}, **texts)
    return getattr(layout.mouldings, FIELDS.get(place, place)), {
        s.path: (s.asked, s.built) for s in layout.shortfalls
    }


def boards_of(**texts):
    job = with_texts(default_job(), [(path.replace("__", "."), text) for path, text in texts.items()])
    return build_surround(job.site, job.design)


@pytest.mark.parametrize("place", PLACES)
def test_each_place_takes_its_usual_section_as_high_as_asked(place):
    section, short = built(place)
    assert short == {}
    assert section.name == SECTIONS[USES[PLACES[place]][0]].section.name
    assert section.height == pytest.approx(
        {"bed_mould": 1.5, "capital": 2, "plinth_cap": 0.75, "panel_mould": 0.625, "back_band": 1}[place]
    )


def test_nothing_but_the_bed_mould_is_there_unless_asked_for():
    mouldings = lay().mouldings
    assert mouldings.bed is not None
    others = (mouldings.capital, mouldings.plinth_cap, mouldings.panel, mouldings.back_band, mouldings.edge)
    assert others == (None,) * 5
    assert lay(bed_mould__on="no").mouldings.bed is None


def test_a_section_that_comes_forward_less_than_it_is_high_may_be_higher_than_the_overhang():
    section, short = built(
        "bed_mould", bed_mould__profile="bevel", bed_mould__size="3 1/2", shelf__overhang_front="2 1/2"
    )
    # Bevel and fillets: 13/16 out for each 1 1/4 of height.
    assert short == {}
    assert section.projection == pytest.approx(3.5 * 0.8125 / 1.25)


def test_a_bed_mould_keeps_within_the_overhang():
    section, short = built("bed_mould", bed_mould__size="4", shelf__overhang_front="2")
    assert section.projection == pytest.approx(2)
    assert short["bed_mould.size"] == (4, pytest.approx(2))


def test_a_plinth_cap_stands_out_no_further_than_its_plinth():
    section, short = built("plinth_cap", plinth_cap__size="3")
    assert section.projection == pytest.approx(0.75)
    assert short["plinth_cap.size"][1] == pytest.approx(section.height)


def test_a_panel_mould_is_no_deeper_than_the_reveal_and_leaves_some_panel():
    section, _ = built("panel_mould", panel_mould__size="2", panel__reveal="3/8")
    assert section.projection == pytest.approx(0.375)
    section, short = built("panel_mould", panel_mould__size="2", frieze__height="7")
    # Panels 1.5 in. high: 7 less the bed mould's 1.5 and two rails of 2.
    assert 2 * section.height == pytest.approx(1.5 - 0.25)
    assert "panel_mould.size" in short


def test_a_back_band_keeps_within_the_facing_that_shows():
    section, short = built("back_band", back_band__size="4", column__margin="1 1/2")
    assert section.height == pytest.approx(1.5)
    assert short["back_band.size"] == (4, pytest.approx(1.5))


def test_a_back_band_is_left_out_where_the_inner_edge_is_off_the_facing():
    section, short = built("back_band", facing__proud="4", facing__width="40", column__margin="13")
    assert section is None
    assert short["back_band.size"] == (1, 0)


def test_a_capital_leaves_rails_and_a_panel_below_it():
    section, short = built("capital", capital__size="6", frieze__height="36", plinth__height="24")
    assert section is None or section.height >= LEAST_MOULD
    assert "capital.size" in short


def test_the_jobs_own_section_keeps_its_size():
    section, short = built("capital", capital__profile="own_1", own_section__first=OVOLO_1)
    assert (section.name, section.height, section.projection) == ("Mine", 1.0, 1.0)
    assert short == {}


def test_an_own_section_without_room_is_left_out():
    section, short = built("plinth_cap", plinth_cap__profile="own_1", own_section__first=OVOLO_1)
    assert section is None
    assert short["plinth_cap.profile"] == ("own_1", LEFT_OUT)


@pytest.mark.parametrize("place", PLACES)
def test_an_own_section_that_is_not_written_is_replaced_by_the_usual_one(place):
    section, short = built(place, **{f"{place}__profile": "own_2"})
    usual = USES[PLACES[place]][0]
    assert section.name == SECTIONS[usual].section.name
    assert short == {f"{place}.profile": ("own_2", usual)}


@pytest.mark.parametrize("key", USES[Use.SHELF_EDGE])
@pytest.mark.parametrize("size", ["1/4", "3/4", "2", "6"])
def test_a_worked_edge_is_as_high_and_thick_as_the_square_one(key, size):
    layout = lay(shelf__edge_profile=key, shelf__edge_size=size)
    section = layout.mouldings.edge
    assert section.height == pytest.approx(layout.shelf_top - layout.edge_bottom)
    assert section.projection == pytest.approx(layout.board)
    left = min(-stroke.reach(3.141592653589793) for stroke in draw_face(section))
    assert left >= LEAST_EDGE - 1e-9
    assert face_depth(section) > 0


def test_a_worked_edge_lies_along_the_bands_lower_edge():
    fronts = {}
    for key in ("square", "cavetto"):
        (fronts[key],) = (b for b in boards_of(shelf__edge_profile=key) if b.role == "edge band front")
    assert fronts["cavetto"].bounds == fronts["square"].bounds
    assert fronts["cavetto"].section_area < fronts["square"].section_area
    worked = [(y, z) for y, z in fronts["cavetto"].section if 6.25 < z < 7.0]
    # The band hangs from 54 to 52; a cavetto 3/4 high leaves its upper 1 1/4 square.
    assert worked
    assert all(52 <= y <= 52.75 + 1e-9 for y, _ in worked)


def test_a_flat_section_leaves_the_edge_square():
    layout = lay(shelf__edge_profile="own_1", own_section__first="fillet 1/2 down; foot 1/2")
    assert layout.mouldings.edge is None


def test_an_own_section_too_low_to_be_cut_is_left_out_and_said():
    layout = lay(capital__on="yes", capital__profile="own_3", own_section__third="fillet 1/8 down; foot 1/2")
    assert layout.mouldings.capital is None
    assert [s.path for s in layout.shortfalls] == ["capital.profile"]


@settings(max_examples=60, deadline=None)
@given(
    jobs(capital__on=True, plinth_cap__on=True, panel_mould__on=True, back_band__on=True),
    st.data(),
)
def test_what_is_not_built_as_asked_is_always_said(job, data):
    layout = lay_out(job.site, job.design)
    idle = list_idle(job)
    place = data.draw(st.sampled_from([p for p in PLACES if f"{p}.profile" not in idle]))
    moulding, section = getattr(job.design, place), getattr(layout.mouldings, FIELDS.get(place, place))
    said = {s.path for s in layout.shortfalls}
    if section is None or (
        not moulding.profile.startswith("own") and abs(section.height - moulding.size) > 1e-6
    ):
        assert {f"{place}.profile", f"{place}.size"} & said
