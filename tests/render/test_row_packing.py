"""Rows: nothing overlaps, nothing leaves its page, nothing is lost."""

from hypothesis import given
from hypothesis import strategies as st

from render.row_packing import pack_rows

SIZES = st.lists(st.tuples(st.floats(0.1, 5.0), st.floats(0.1, 4.0)), max_size=20)


@given(SIZES, st.floats(0.0, 0.5))
def test_everything_stands_apart_on_a_page(sizes, gap):
    pages = pack_rows(sizes, (5.0, 4.0), gap)
    assert sorted(spot.index for page in pages for spot in page) == list(range(len(sizes)))
    for page in pages:
        boxes = []
        for spot in page:
            wide, high = sizes[spot.index]
            box = spot.right, spot.below, spot.right + wide, spot.below + high
            assert -1e-9 <= box[0] <= box[2] <= 5.0 + 1e-9
            assert -1e-9 <= box[1] <= box[3] <= 4.0 + 1e-9
            for a in boxes:
                assert (
                    a[2] + gap <= box[0] + 1e-9
                    or box[2] + gap <= a[0] + 1e-9
                    or a[3] + gap <= box[1] + 1e-9
                    or box[3] + gap <= a[1] + 1e-9
                )
            boxes.append(box)


def test_small_things_share_a_row_and_a_page():
    (page,) = pack_rows([(1.0, 1.0)] * 6, (4.0, 4.0), 0.1)
    assert len({spot.below for spot in page}) == 2
