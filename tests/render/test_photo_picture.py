"""The surround on a photo: where it lies, how surely, in which colours."""

from __future__ import annotations

import numpy as np
import pytest
from shapely import MultiPoint, Polygon

from app.demo import read_demo
from model.job import with_texts
from model.photo.recover import recover_camera
from model.surround import plan_surround
from render.painted import mix_paint
from render.photo_picture import draw_on_photo, project_outline
from tests.model.photo.test_recover import SIZE, pinhole, take

CAMERAS = [(24, 0, 4), (28, 25, 8), (35, -40, 10), (50, 12, 6), (80, 30, 3)]


def opening_of(surround):
    half, top = surround.layout.opening_side, surround.layout.opening_top
    return np.array([(-half, 0, 0), (half, 0, 0), (half, top, 0), (-half, top, 0)], dtype=float)


def find(surround, camera, noise=0.0, seed=0, known=True):
    opening = opening_of(surround)
    corners = np.array([pinhole(camera, point) for point in opening])
    corners += np.random.default_rng(seed).normal(0, 1, (4, 2)) * noise
    return recover_camera(corners, opening, SIZE, focal=camera.focal if known else None)


@pytest.mark.parametrize(("millimetres", "yaw", "pitch"), CAMERAS)
def test_exact_corners_lay_the_outline_where_a_pinhole_does(millimetres, yaw, pitch):
    surround = plan_surround(read_demo("brick"))
    camera = take(millimetres, yaw, pitch, 120 * millimetres / 28)
    picture = draw_on_photo(surround, find(surround, camera))
    points = [pinhole(camera, np.array(v)) for board in surround.boards for v in board.vertices]
    drawn = MultiPoint([p for ring in picture.outline for p in ring]).convex_hull
    truth = MultiPoint(points).convex_hull
    assert drawn.hausdorff_distance(truth) < 2.0


@pytest.mark.parametrize(("millimetres", "yaw", "pitch"), [(28, 25, 8), (50, 35, 10)])
def test_the_band_holds_the_true_outline_in_nine_of_ten_noisy_photos(millimetres, yaw, pitch):
    surround = plan_surround(read_demo("bedroom"))
    camera = take(millimetres, yaw, pitch, 120 * millimetres / 28)
    truth = draw_on_photo(surround, find(surround, camera)).outline
    held = []
    for seed in range(6):
        band = Polygon()
        picture = draw_on_photo(surround, find(surround, camera, 1.0, seed, known=False))
        for ring in picture.band:
            band = band.symmetric_difference(Polygon(ring))
        held += [band.buffer(1.0).covers(MultiPoint([point])) for ring in truth for point in ring]
    assert np.mean(held) >= 0.9


def test_surer_corners_make_a_narrower_band():
    surround = plan_surround(read_demo("brick"))
    camera = take(28, 25, 8)
    one, other = (find(surround, camera, known=known) for known in (True, False))
    assert draw_on_photo(surround, one).off < draw_on_photo(surround, other).off


def test_the_wood_is_in_its_colour_and_masonry_is_left_to_the_photo():
    job = with_texts(read_demo("brick"), [("look.paint", "#66704f"), ("look.facing", "#ff0000")])
    surround = plan_surround(job)
    picture = draw_on_photo(surround, find(surround, take(28, 20, 6)))
    paint = mix_paint("#66704f")
    assert {patch.tint for patch in picture.patches} == {paint.lit, paint.shade, paint.shadow}
    assert picture.shadows


def test_what_stands_out_is_nearer_to_the_camera_and_so_larger():
    """A part p before the wall looks larger by p / (D - p), D being how far off the wall is."""
    camera = take(28, 0, 0, 110.0)
    flat, proud = camera.project([(10, 20, 0), (10, 20, 7)])
    middle = np.array(SIZE) / 2
    assert (proud[0] - middle[0]) / (flat[0] - middle[0]) == pytest.approx(110 / 103, rel=1e-9)


def test_boxes_stand_for_the_wood_while_a_corner_is_dragged():
    surround = plan_surround(read_demo("brick"))
    edges = project_outline(surround, take(28, 20, 6))
    assert len(edges) == 12 * len({board.assembly for board in surround.boards})
