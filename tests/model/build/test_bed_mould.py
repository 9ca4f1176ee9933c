"""The bed mould: against the shelf and the faces under it, from wall to wall, whatever its section."""

import pytest

from model.build.bed_mould import build_bed_mould
from model.build.layout import lay_out
from model.job import default_job, with_texts


def built(*settings):
    job = with_texts(default_job(), [tuple(setting.split("=")) for setting in settings])
    layout = lay_out(job.site, job.design)
    return layout, build_bed_mould(layout, "poplar")


@pytest.mark.parametrize("profile", ["cove_and_fillets", "crown_38", "steps"])
def test_its_seat_lies_under_the_shelf_and_its_back_on_the_columns_faces(profile):
    layout, pieces = built(f"bed_mould.profile={profile}")
    assert max(piece.bounds[1][1] for piece in pieces) == layout.shelf_bottom
    front = [p for p in pieces if p.axis == "x" and p.bounds[0][2] == layout.column_front]
    assert len(front) == 2
    assert min(p.bounds[0][1] for p in front) == pytest.approx(layout.shelf_bottom - layout.mould_size)


def test_a_sprung_one_stands_off_the_corner_it_sits_in():
    layout, pieces = built("bed_mould.profile=crown_45")
    piece = max(pieces, key=lambda p: p.length)
    assert (layout.shelf_bottom, layout.frieze_front) not in piece.section
    assert piece.worked.spring == 45


def test_nothing_is_run_where_it_is_off():
    assert built("bed_mould.on=no")[1] == ()
