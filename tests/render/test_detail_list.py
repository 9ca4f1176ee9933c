"""Details: there where there is something to show, on both sides only where those differ."""

from model.job import default_job, with_texts
from model.surround import plan_surround
from render.detail_list import list_details
from render.sheets import DETAILS


def names_of(texts=""):
    job = with_texts(default_job(), [tuple(text.split("=")) for text in texts.split()])
    return [detail.name for detail in list_details(plan_surround(job))]


def test_a_plain_surround_has_shelf_edge_frieze_joint_column_and_foot_of_one_side():
    assert names_of() == [
        "detail_shelf_edge",
        "detail_frieze_right",
        "detail_column_right",
        "detail_foot_right",
    ]


def test_columns_that_differ_have_each_their_own_details():
    found = names_of("column.width_left=5 column.width_right=7")
    assert {"detail_column_left", "detail_column_right", "detail_foot_left", "detail_foot_right"} <= {*found}


def test_holes_for_cords_have_a_detail_each():
    assert {"detail_cord_upper", "detail_cord_lower"} <= {*names_of("cord.on=yes")}


def test_baseboards_have_one_on_their_side():
    found = names_of("baseboard.height_left=5 facing.width=60")
    assert "detail_baseboard_left" in found
    assert "detail_baseboard_right" not in found


def test_what_is_packed_out_has_one():
    found = names_of("slip.on=yes back_band.on=yes plumb.left=1 plumb.right=-1")
    assert {"detail_packing_slip", "detail_packing_back_band"} <= {*found}


def test_every_detail_has_a_title_and_no_name_comes_twice():
    texts = "cord.on=yes slip.on=yes back_band.on=yes plumb.left=1 plumb.right=-1 baseboard.height_left=5"
    found = names_of(texts)
    assert {*found} <= DETAILS.keys()
    assert len(found) == len({*found})


def test_a_baseboard_that_stops_short_of_the_column_has_no_detail():
    texts = "baseboard.height_left=5 facing.width=100 column.margin=1 opening.width=30"
    job = with_texts(default_job(), [tuple(text.split("=")) for text in texts.split()])
    surround = plan_surround(job)
    names = [detail.name for detail in list_details(surround)]
    assert min(abs(x) for x in surround.layout.obstacles[0].x) > surround.layout.left.outer + 3
    assert "detail_baseboard_left" not in names
