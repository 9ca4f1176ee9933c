"""What frames a view holds all that is drawn at its foot: strings of dimensions begin beside it."""

import pytest

from model.surround import plan_surround
from render.view_context import Frame
from render.views import VIEWS, project_boards
from tests.bench.collisions import build_random_job


@pytest.mark.parametrize("number", range(12))
def test_no_board_of_a_random_design_reaches_below_the_frame_of_a_view(number):
    surround = plan_surround(build_random_job(number))
    for view in VIEWS:
        projection, _ = project_boards(surround, view)
        ys = [y for ring in projection.wood_rings for _, y in ring]
        assert not ys or min(ys) > Frame.around(surround, view).bottom - 1e-6, view
