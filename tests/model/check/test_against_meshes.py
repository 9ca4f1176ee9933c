"""Clearances against points all over the boards' meshes, the rules written down a second time and plainly.

Distances to the opening come from a polygon library, points from a mesh library; nothing of the checks' own
geometry is used. A part that is within has no point that breaks its rule; a part that is over breaks it at
the place it names, and that place is on its wood.
"""

from __future__ import annotations

import io
from collections.abc import Callable
from math import hypot

import numpy as np
import shapely
import trimesh
from hypothesis import given, settings
from numpy.typing import NDArray

from export.mesh import write_obj
from model.check.all import check_surround
from model.check.finding import Finding, Status
from model.check.mantel import CHECK as MANTEL
from model.check.part import list_parts
from model.surround import Surround, plan_surround
from tests.wrong_designs import designs

Array = NDArray[np.float64]
SAMPLES = 400
"""Points on each board, beside its corners."""
DUST = 1e-5
ON_WOOD = 1e-3
MM = 1 / 25.4


def _irc(p: Array, straight: Array, beside: Array, above: Array) -> Array:
    """R1001.11 exception 4: none within 6 in.; within 12 in. no more than 1/8 in. per inch."""
    return (straight < 6 - DUST) | ((straight < 12 - DUST) & (p > straight / 8 + DUST))


def _nfpa211(p: Array, straight: Array, beside: Array, above: Array) -> Array:
    """6 in.; more than 1 1/2 in. out needs 12 in. above, or 6 in. and itself beside."""
    cleared = (above >= 12 - DUST) | (beside >= 6 + p - DUST)
    return (straight < 6 - DUST) | ((p > 1.5 + DUST) & ~cleared)


def _canada(p: Array, straight: Array, beside: Array, above: Array) -> Array:
    """150 mm; more than 38 mm out above the opening needs 300 mm there."""
    cleared = (above >= 300 * MM - DUST) | (beside >= 150 * MM - DUST)
    return (straight < 150 * MM - DUST) | ((p > 38 * MM + DUST) & ~cleared)


Breaks = Callable[[Array, Array, Array, Array], Array]
RULES: dict[str, tuple[Breaks, ...]] = {
    "irc": (_irc,),
    "nfpa211": (_nfpa211,),
    "strictest": (_irc, _nfpa211),
    "canada": (_canada,),
}


def _break(surround: Surround, room: Array) -> NDArray[np.bool_]:
    """Which points of the room break a rule of the site; x, y, z of each."""
    opening = surround.job.site.opening
    box = shapely.box(-opening.width / 2, 0.0, opening.width / 2, opening.height)
    straight = shapely.distance(shapely.points(room[:, 0], np.maximum(room[:, 1], 0.0)), box)
    beside, above = np.abs(room[:, 0]) - opening.width / 2, room[:, 1] - opening.height
    rules = RULES[surround.job.site.rule]
    return np.any([breaks(room[:, 2], straight, beside, above) for breaks in rules], axis=0)


def _meshes(surround: Surround) -> dict[str, trimesh.Trimesh]:
    text = io.StringIO(write_obj(surround))
    scene = trimesh.load_scene(text, file_type="obj", split_objects=True, process=False, maintain_order=True)
    return dict(scene.geometry)


@settings(max_examples=25)
@given(designs())
def test_no_point_of_any_mesh_says_otherwise_than_the_findings(job):
    surround = plan_surround(job)
    if surround.job.site.rule not in RULES or surround.job.site.fireplace != "masonry":
        return
    meshes = _meshes(surround)
    found = {f.part: f for f in check_surround(surround) if f.check == MANTEL and f.at is not None}
    for part, indices in list_parts(surround.boards).items():
        marks = [surround.marks[i] for i in indices]
        broken = any(_break(surround, _list_points(meshes[mark])).any() for mark in marks)
        assert not broken or found[part].status is Status.FAIL, (part, found[part])
        if found[part].status is Status.FAIL:
            _breaks_where_it_says(surround, found[part], [meshes[mark] for mark in marks])


def _list_points(mesh: trimesh.Trimesh) -> Array:
    sampled, _ = trimesh.sample.sample_surface(mesh, SAMPLES, seed=1)
    return np.vstack([mesh.vertices[np.unique(mesh.faces)], sampled])


def _breaks_where_it_says(surround: Surround, finding: Finding, meshes: list[trimesh.Trimesh]) -> None:
    at = np.array([finding.at])
    assert _break(surround, at).all(), finding
    away = min(float(trimesh.proximity.closest_point_naive(mesh, at)[1][0]) for mesh in meshes)
    assert away < ON_WOOD, finding
    if finding.measured and finding.unit == "in" and "corner" in finding.message:
        opening = surround.job.site.opening
        (x, y, _) = at[0]
        off = hypot(max(abs(x) - opening.width / 2, 0), max(y - opening.height, 0))
        assert abs(off - finding.measured) < ON_WOOD, finding
