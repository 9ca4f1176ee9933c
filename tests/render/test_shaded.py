"""Shades and shadows: what the published rule says of simple shapes, and rays through random designs.

The 45-degree rule: Gwilt, An Encyclopaedia of Architecture, arts 2460 and 2483; lines square to a plane and
in it: Radford's Cyclopedia of Construction, vol. 1, Shades and Shadows.
"""

from random import Random

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import MultiPolygon, Point, Polygon, box, prepare, union_all

from app.demo import list_demos, read_demo
from model.board import Stock, StockKind, block
from model.job import with_texts
from model.surround import plan_surround
from render.drawing import Fill
from render.painted import mix_paint
from render.pens import TINTS, luminance
from render.shaded import DARK, Backdrop, list_tones
from render.shaded import area_of as area_of_rings
from render.shaded_front import draw_shaded
from render.views import draw_view, project_boards
from render.visibility import FROM_FRONT, flatten_boards, project
from tests.planned import plan_of
from tests.strategies import jobs

WOOD = Stock(StockKind.BOARD, 0.75, "poplar")


def boards(*boxes):
    return [block("board", "front", WOOD, "x", x, y, z) for x, y, z in boxes]


def tones_of(*boxes, backdrop=None):
    return list_tones(project(flatten_boards(boards(*boxes)), FROM_FRONT), backdrop)


def area_of(rings):
    area = MultiPolygon()
    for ring in rings:
        area = area.symmetric_difference(Polygon(ring))
    return area


def is_same(area, other):
    return area.symmetric_difference(other).buffer(-2e-3).is_empty


FRIEZE = ((0, 60), (0, 20), (-1, 0))
BLOCK = ((10, 16), (0, 20), (0, 1.25))
SHELF = ((-4, 64), (20, 22), (-1, 7))


def test_rings_that_touch_in_a_line_without_width_are_put_together_to_areas_all_the_same():
    # Of an invented design: the first one's edge runs back in itself on the grid.
    first = (
        (-28.390034, 50.943299),
        (-28.390035, 50.943299),
        (-70.883236, 50.883236),
        (-70.883234, 19.241768),
    )
    other = ((28.450096, 50.883236), (28.450096, 19.241771), (28.390034, 19.181705))
    area = area_of_rings((first, other))
    assert area.geom_type == "MultiPolygon"
    assert area.area == pytest.approx(Polygon(first).area + Polygon(other).area)


def test_a_shadow_is_as_broad_as_the_projection_that_throws_it():
    shadow = area_of(tones_of(FRIEZE, SHELF).shadow)
    assert is_same(shadow, Polygon([(3, 13), (60, 13), (60, 20), (0, 20), (0, 16)]))


def test_the_shelfs_shadow_breaks_over_every_step_below_it():
    shadow = area_of(tones_of(FRIEZE, BLOCK, SHELF).shadow)
    on_frieze = Polygon([(3, 13), (60, 13), (60, 20), (0, 20), (0, 16)]).difference(box(10, 0, 16, 20))
    on_block = box(10, 14.25, 16, 20)
    beside_block = Polygon([(16, 0), (17.25, 0), (17.25, 13), (16, 13)])
    assert is_same(shadow, union_all([on_frieze, on_block, beside_block]))


def test_the_shadow_of_the_blocks_lit_edge_ends_on_the_shelfs_own_shadow_line():
    lit_edge_from = 20 - (7 - 1.25)
    assert lit_edge_from - 1.25 == 13
    shadow = area_of(tones_of(FRIEZE, BLOCK, SHELF).shadow)
    assert shadow.intersects(Point(17.2, 12.9))
    assert not shadow.intersects(Point(17.3, 12.9))


def test_a_raised_panel_throws_strips_at_its_right_and_foot_alone():
    panel = ((20, 40), (4, 16), (0, 0.25))
    shadow = area_of(tones_of(FRIEZE, panel).shadow)
    expected = Polygon([(20, 4), (20.25, 3.75), (40.25, 3.75), (40.25, 15.75), (40, 16), (40, 4)])
    assert is_same(shadow, expected)


def test_an_edge_square_to_the_wall_throws_its_shadow_at_45_degrees():
    backdrop = Backdrop(-1.0, (-20, 0, 90, 40))
    shadow = area_of(tones_of(SHELF, backdrop=backdrop).shadow)
    assert is_same(shadow, Polygon([(-4, 20), (4, 12), (72, 12), (72, 14), (64, 22), (64, 20)]))


def test_a_figure_parallel_to_the_wall_throws_its_own_size_and_shape():
    plate = ((0, 10), (20, 25), (5.0, 5.001))
    shadow = area_of(tones_of(plate, backdrop=Backdrop(0.0, (-20, 0, 90, 40))).shadow)
    assert is_same(shadow.buffer(-0.01, join_style="mitre"), box(5.01, 15.01, 14.99, 19.99))


def test_what_leans_away_from_the_light_is_in_shade_and_not_in_shadow():
    under = block("board", "front", WOOD, "x", (0, 10), (10, 11), (0, 5))
    chamfer = type(under)(
        "board", "front", WOOD, "x", ((10, 0), (14, 0), (14, 3), (12.5, 3)), under.low, under.high
    )
    tones = list_tones(project(flatten_boards([chamfer]), FROM_FRONT))
    assert is_same(area_of(tones.shade), box(0, 10, 10, 12.5))
    assert not tones.shadow


def test_the_opening_is_dark_enough_without_a_shadow():
    shadow = next(
        mark for mark in draw_shaded(plan_surround(read_demo("brick")), 12).marks if _is_shadow(mark)
    )
    half = plan_surround(read_demo("brick")).layout.opening_side
    inside = box(-half, 0, half, plan_surround(read_demo("brick")).layout.opening_top).buffer(-0.01)
    assert not area_of(shadow.rings).intersects(inside)


def _is_shadow(mark):
    return getattr(mark, "fill", None) is Fill.SHADOW


def test_lit_shade_and_shadow_are_told_apart_without_colour():
    lit, shade, shadow, opening = (
        luminance(TINTS[fill]) for fill in (Fill.WOOD, Fill.SHADE, Fill.SHADOW, Fill.OPENING)
    )
    assert lit / shade > 1.3
    assert shade / shadow > 1.3
    assert shadow / opening > 1.3


class Scene:
    """Faces that a ray may meet: four-cornered ones as triangles, others as polygons in their planes."""

    def __init__(self, solids):
        quads = solids.corners[solids.quads]
        self.triangles = np.concatenate([quads[:, [0, 1, 2]], quads[:, [0, 2, 3]]])
        self.caps = [_plane_of(solids.corners[cap.corners], cap.starts) for cap in solids.caps]

    def meet(self, origin, way):
        """Distances along a ray to all it goes through."""
        return np.array([*_meet_triangles(origin, way, self.triangles), *self._meet_caps(origin, way)])

    def _meet_caps(self, origin, way):
        for point, normal, across, shape in self.caps:
            if abs(way @ normal) > 1e-12:
                distance = ((point - origin) @ normal) / (way @ normal)
                if shape.contains(Point((origin + distance * way)[across])):
                    yield distance


def _plane_of(corners, starts):
    """A point of a flat face, its normal, the two axes it is widest along, and its shape along them."""
    outline = corners[: starts[0]] if starts else corners
    normal = np.cross(outline, np.roll(outline, -1, axis=0)).sum(axis=0)
    across = np.delete(np.arange(3), np.abs(normal).argmax())
    holes = [hole[:, across] for hole in np.split(corners, starts)[1:]] if starts else []
    shape = Polygon(outline[:, across], holes)
    prepare(shape)
    return outline[0], normal, across, shape


def _meet_triangles(origin, way, triangles):
    """Moeller and Trumbore 1997."""
    a = triangles[:, 0]
    e1, e2 = triangles[:, 1] - a, triangles[:, 2] - a
    p = np.cross(way, e2)
    det = (e1 * p).sum(axis=1)
    with np.errstate(divide="ignore", invalid="ignore"):
        s = origin - a
        u = (s * p).sum(axis=1) / det
        q = np.cross(s, e1)
        v = (q @ way) / det
        t = (e2 * q).sum(axis=1) / det
        hit = (np.abs(det) > 1e-12) & (u > 0) & (v > 0) & (u + v < 1)
    return t[hit]


CLEAR = 0.01
"""Points nearer than this to the edge of a tone are not asked about, in."""


def _ask_ray(scene, rng, low, high):
    """A point seen from the front, and whether it lies in the dark; `None` where nothing is seen."""
    x, y = rng.uniform(low[0], high[0]), rng.uniform(low[1], high[1])
    seen = scene.meet(np.array([x, y, 1e3]), np.array([0.0, 0.0, -1.0]))
    if not len(seen):
        return None
    point = np.array([x, y, 1e3 - seen.min()])
    met = scene.meet(point + np.array([-1, 1, 1]) * 5e-3, np.array([-1.0, 1.0, 1.0]))
    return (x, y), bool((met > 0).any())


def check_by_rays(surround, seed, count):
    projection, _ = project_boards(surround, "front")
    tones = list_tones(projection)
    dark = area_of(tones.shadow).union(area_of(tones.shade))
    edge = dark.boundary.buffer(CLEAR)
    solids = projection.solids
    lit_solids = flatten_boards([b.carved for b in solids.boards if b.role not in DARK])
    scene = Scene(lit_solids)
    opening = [b.bounds for b in solids.boards if b.role in DARK]
    mouth = union_all([box(low[0], low[1], high[0], high[1]) for low, high in opening])
    rng = Random(seed)
    low, high = lit_solids.corners.min(axis=0), lit_solids.corners.max(axis=0)
    wrong = []
    for _ in range(count):
        found = _ask_ray(scene, rng, low, high)
        if found is None or edge.contains(Point(found[0])) or mouth.buffer(CLEAR).contains(Point(found[0])):
            continue
        if dark.contains(Point(found[0])) != found[1]:
            wrong.append((found[0], "in the dark" if found[1] else "lit"))
    return wrong


@pytest.mark.parametrize("name", list_demos())
def test_rays_to_the_light_find_the_same_shadows_on_the_shipped_jobs(name):
    assert len(check_by_rays(plan_surround(read_demo(name)), 1, 400)) <= 1


@settings(max_examples=8, deadline=None)
@given(job=jobs(in_between=False), seed=st.integers(0, 99))
def test_rays_to_the_light_find_the_same_shadows_on_any_design(job, seed):
    assert len(check_by_rays(plan_of(job), seed, 150)) <= 1


def paints_of(drawing, fill):
    return {mark.tint for mark in drawing.marks if getattr(mark, "fill", None) is fill}


def test_the_picture_is_in_the_chosen_colours_and_the_working_drawing_is_not():
    job = with_texts(read_demo("brick"), [("look.paint", "#66704f"), ("look.facing", "#a5604a")])
    picture = draw_shaded(plan_surround(job), 12)
    assert paints_of(picture, Fill.WOOD) == {"#66704f"}
    assert paints_of(picture, Fill.FACING) == {"#a5604a"}
    assert draw_view(plan_surround(job), "front") == draw_view(plan_surround(read_demo("brick")), "front")


def test_each_surface_has_shadows_of_its_own_colour_within_itself():
    job = with_texts(read_demo("brick"), [("look.paint", "#66704f"), ("look.facing", "#a5604a")])
    marks = draw_shaded(plan_surround(job), 12).marks
    wood = area_of(next(m for m in marks if getattr(m, "fill", None) is Fill.WOOD).rings)
    dark = mix_paint("#66704f").shadow
    shadows = [m for m in marks if getattr(m, "tint", None) == dark]
    assert shadows
    assert all(area_of(m.rings).difference(wood).area < 1e-3 for m in shadows)


def test_lines_on_dark_wood_are_light():
    surround = plan_surround(with_texts(read_demo("brick"), [("look.paint", "Soot")]))
    inks = {m.ink for m in draw_shaded(surround, 12).marks if getattr(m, "stands_for", "") in surround.marks}
    assert inks == {mix_paint("#2c2b2b").ink} == {"#ffffff"}
