"""The panel mould: a mitred frame in each opening, lying on the panel, no prouder than the frame."""

import pytest

from model.build.layout import lay_out
from model.build.panel_mould import build_panel_moulds
from model.job import default_job, with_texts


def built(*settings):
    job = with_texts(default_job(), [("panel_mould.on", "yes"), *(tuple(s.split("=")) for s in settings)])
    layout = lay_out(job.site, job.design)
    return layout, build_panel_moulds(layout, "poplar")


@pytest.mark.parametrize(("columns", "frieze"), [(1, 3), (3, 1), (4, 7)])
def test_every_opening_has_a_frame_of_four(columns, frieze):
    layout, pieces = built(f"column.panels={columns}", f"frieze.panels={frieze}", "frieze.stile=1")
    openings = sum(len(side.frame.openings) for side in layout.sides) + len(layout.frieze_frame.openings)
    assert len(pieces) == 4 * openings
    assert all((p.low.mitre, p.high.mitre) == pytest.approx((45, 45)) for p in pieces)


def test_frames_fill_their_openings_and_lie_on_the_panels():
    layout, pieces = built()
    frieze = [p for p in pieces if p.assembly == "frieze"]
    for n, (x0, y0, x1, y1) in enumerate(layout.frieze_frame.openings):
        frame = frieze[4 * n : 4 * n + 4]
        lows, highs = zip(*(p.bounds for p in frame), strict=True)
        assert [min(low[i] for low in lows) for i in (0, 1)] == pytest.approx([x0, y0])
        assert [max(high[i] for high in highs) for i in (0, 1)] == pytest.approx([x1, y1])
    panel = layout.frieze_front - layout.frieze_frame.reveal
    assert {p.bounds[0][2] for p in frieze} == {panel}
    assert max(p.bounds[1][2] for p in frieze) <= layout.frieze_front


def test_the_seat_lies_against_the_frame():
    _, pieces = built()
    assert {p.worked.seat for p in pieces} == {"+x", "-x", "+y", "-y"}
    assert {p.worked.out for p in pieces} == {"+z"}
