"""Clearances against points all over the boards' meshes, the rules written down a second time and plainly.

Used by the tests and by a bench that goes through hundreds of designs. Distances to the opening come from
a polygon library, points from a mesh library; nothing of the checks' own geometry is used. A part that is
within has no point that breaks its rule; one that is over breaks it where it says, and that is on its wood.
"""

from __future__ import annotations

import io
from collections.abc import Callable, Iterator
from math import hypot

import numpy as np
import shapely
import trimesh
from numpy.typing import NDArray

from export.mesh import write_obj
from model.check.all import check_surround
from model.check.finding import Finding, Status
from model.check.mantel import CHECK as MANTEL
from model.check.part import list_parts
from model.job import Job
from model.surround import Surround, plan_surround

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


def is_covered(job: Job) -> bool:
    """Whether its rules are written down here."""
    return job.site.rule in RULES and job.site.fireplace == "masonry"


def list_disagreements(job: Job) -> Iterator[str]:
    """Where a point of the boards says otherwise than the findings: a part, and what was found of it.

    Nothing for a job whose rules are not written down here.
    """
    if not is_covered(job):
        return
    surround = plan_surround(job)
    meshes = _meshes(surround)
    found: dict[str, Finding] = {}
    for finding in check_surround(surround):
        if finding.check == MANTEL and finding.at is not None:
            found.setdefault(finding.part, finding)
    for part, indices in list_parts(surround.boards).items():
        own = [meshes[surround.marks[i]] for i in indices]
        broken = any(_break(surround, _list_points(mesh)).any() for mesh in own)
        over = found[part].status is Status.FAIL
        if broken and not over:
            yield f"{part} breaks a rule: {found[part]}"
        if over:
            yield from _doubt(surround, found[part], own)


def _list_points(mesh: trimesh.Trimesh) -> Array:
    sampled, _ = trimesh.sample.sample_surface(mesh, SAMPLES, seed=1)
    return np.vstack([mesh.vertices[np.unique(mesh.faces)], sampled])


def _doubt(surround: Surround, finding: Finding, meshes: list[trimesh.Trimesh]) -> Iterator[str]:
    """A part that is over breaks its rule at the place it names, on its wood, by as much as it says."""
    at = np.array([finding.at])
    if not _break(surround, at).all():
        yield f"no rule is broken there: {finding}"
    away = min(float(trimesh.proximity.closest_point_naive(mesh, at)[1][0]) for mesh in meshes)
    if away >= ON_WOOD:
        yield f"{away} off its wood: {finding}"
    if finding.measured and finding.unit == "in" and "corner" in finding.message:
        opening = surround.job.site.opening
        (x, y, _) = at[0]
        off = hypot(max(abs(x) - opening.width / 2, 0), max(y - opening.height, 0))
        if abs(off - finding.measured) >= ON_WOOD:
            yield f"{off} from the corner: {finding}"
