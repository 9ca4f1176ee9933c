"""What is used up: glue, caulk, filler, abrasive, primer, top coat, nails and screws, each with its rate.

Areas come from model.takeoff.surfaces, lengths of joints from model.takeoff.joints, and what is driven
from model.takeoff.fasteners. How much is sold together and what it costs is not decided here.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import pi

from model.build.access_panel import ACCESS_PANEL
from model.build.obstacles import BASEBOARD
from model.cutting.supplies import ANCHORS, CLEAR_COAT, PRIMER, SEALER, STAIN, TOP_COAT
from model.job import Job, read_value
from model.look import STAINED, is_painted
from model.measures import BARE, FLUID_OUNCE, FOOT, GALLON, POUND, SQUARE_INCHES, Measure
from model.parameters import Parameter, find_parameter
from model.reference.coating import GALLON_FILM, OUNCE_VOLUME, OUNCES_PER_GALLON
from model.reference.sourced import Sourced, Standing
from model.takeoff.fasteners import Fixing, Means, count_fixings, nails_weight
from model.takeoff.joints import Joint, JointKind, joint_length
from model.takeoff.standing import CEILING, FACING, HEARTH, WALL
from model.takeoff.surfaces import Surfaces
from model.units import INCHES_PER_FOOT

CAULKED = (FACING, WALL, HEARTH, BASEBOARD, CEILING)
"""Where wood is caulked to what stands there; against a floor, which moves, it is left open. Shop choice."""
FASTENED = ("Finish nails", "Brads", "Pocket screws", "Wood screws", ANCHORS)
"""Materials by their names that are driven; they are bought by the piece or the pound."""
OWN = Sourced(0.0, "", Standing.SHOP_CHOICE, "set in this job")


@dataclass(frozen=True, slots=True)
class Rate:
    """A rate that a line rests on: its row of the table, the job's value, how well known, and its source."""

    row: Parameter
    value: float
    standing: Standing
    source: str


@dataclass(frozen=True, slots=True)
class Material:
    """One line: `amount` in `measure`, what it was measured on in `basis`, and the rates it rests on.

    What is counted says in `unit` what one of it is called.
    """

    name: str
    amount: float
    measure: Measure
    basis: Basis
    rates: tuple[Rate, ...]
    unit: str = ""


@dataclass(frozen=True, slots=True)
class Basis:
    """What a material is measured on: square inches, inches or a count of `counted`, where not None."""

    words: str
    area: float | None = None
    length: float | None = None
    count: int | None = None
    counted: str = "pieces"


def find_rate(job: Job, path: str) -> Rate:
    """The job's rate at `path`: with its source where it is the default, else as the maker's own."""
    row = find_parameter(path)
    assert row.sourced is not None, path
    value = read_value(job, path)
    own = value is not None and value != row.sourced.value
    known = OWN if own else row.sourced
    return Rate(row, float(row.sourced.value if value is None else value), known.standing, known.source)


def list_materials(
    job: Job,
    surfaces: Surfaces,
    joints: Sequence[Joint],
    fixings: Sequence[Fixing],
    anchors: Sequence[Material] = (),
    seams: float = 0.0,
) -> tuple[Material, ...]:
    """Every material of a job, in the order of its use; those of which nothing is needed are left out.

    `anchors` are the lines of what holds the nailers, which stand among them; `seams` the square inches of
    glue within pieces that are glued up of strips or layers.
    """
    lines = [
        _glue(job, fixings, seams),
        *_driven(job, fixings),
        *anchors,
        _filler(job, joints, fixings),
        *_abrasive(job, surfaces),
        *_first_coats(job, surfaces),
        *_caulk(job, joints),
        _last_coats(job, surfaces),
        _tape(job, surfaces),
    ]
    return tuple(line for line in lines if line.amount > 0)


def list_fastened(materials: Sequence[Material]) -> tuple[Material, ...]:
    """Of `materials` the nails, screws and anchors, each with its length and count."""
    return tuple(material for material in materials if material.name in FASTENED)


def coverage_of_film(mils: float, solids: float = 1.0, efficiency: float = 1.0) -> float:
    """Square feet that a gallon covers at a film thickness in mils; solids and efficiency are parts of 1.

    >>> round(coverage_of_film(5, 0.65), 1), round(coverage_of_film(1.5, 0.52, 0.30))
    (208.5, 167)
    """
    return GALLON_FILM.value * solids * efficiency / mils


def bead_volume(leg: float, length: float) -> float:
    """Cubic inches of a fillet bead with equal legs in a corner."""
    return leg * leg / 2 * length


def cartridges_of(volume: float, ounces: float) -> float:
    """Cartridges of that many fluid ounces in a volume of cubic inches."""
    return volume / (ounces * OUNCE_VOLUME.value)


def _glue(job: Job, fixings: Sequence[Fixing], seams: float) -> Material:
    film, lost = find_rate(job, "rates.glue_film"), find_rate(job, "rates.glue_loss")
    area = sum(fixing.glue for fixing in fixings) + seams
    gallons = area / SQUARE_INCHES / coverage_of_film(film.value)
    ounces = gallons * OUNCES_PER_GALLON.value * _with_loss(lost)
    return Material("Wood glue", ounces, FLUID_OUNCE, Basis("wood on wood", area=area), (film, lost))


def _driven(job: Job, fixings: Sequence[Fixing]) -> Iterator[Material]:
    factor, spacing = find_rate(job, "rates.nail_factor"), find_rate(job, "rates.nail_spacing")
    for nail, count, pounds in nails_weight(fixings):
        basis = Basis(f"{nail.penny}d finish nails", length=nail.length, count=count)
        yield Material("Finish nails", pounds, POUND, basis, (factor, spacing))
    others = {
        Means.BRAD: ("Brads", "18 gauge", "brad", (factor, find_rate(job, "rates.brad_spacing"))),
        Means.SCREW: ("Pocket screws", "frame joints", "screw", (find_rate(job, "rates.frame_screws"),)),
        Means.LEDGER_SCREW: ("Wood screws", "no. 8, shelf to ledger", "screw", (spacing,)),
    }
    for means, length, count, _ in count_fixings(fixings):
        if means in others:
            name, words, unit, rates = others[means]
            yield Material(name, count, BARE, Basis(words, length=length, count=count), rates, unit)


def _filler(job: Job, joints: Sequence[Joint], fixings: Sequence[Fixing]) -> Material:
    paths = ("hole_width", "hole_depth", "seam", "filler_loss")
    wide, deep, seam, lost = (find_rate(job, f"rates.{name}") for name in paths)
    holes = sum(shown for *_, shown in count_fixings(fixings))
    filled = (JointKind.FLUSH, JointKind.MITRE) if is_painted(job.design.look) else ()
    length = sum(joint_length(joints, kind) for kind in filled)
    volume = holes * pi / 4 * wide.value**2 * deep.value + length * seam.value**2
    ounces = volume / OUNCE_VOLUME.value * _with_loss(lost)
    if filled:
        basis = Basis("flush seams and nail heads", length=length, count=holes, counted="holes")
        return Material("Wood filler", ounces, FLUID_OUNCE, basis, (wide, deep, seam, lost))
    basis = Basis("nail heads, in the wood's finished colour", count=holes, counted="holes")
    return Material("Wood filler", ounces, FLUID_OUNCE, basis, (wide, deep, lost))


def _abrasive(job: Job, surfaces: Surfaces) -> Iterator[Material]:
    disc, grits = find_rate(job, "rates.abrasive_disc"), find_rate(job, "rates.abrasive_grits")
    coats = [find_rate(job, f"rates.{name}") for name in ("primer_coats", "top_coats")]
    between = max(sum(coat.value for coat in coats) - 1, 0)
    for words, times, rates in (
        ("bare wood that shows", grits.value, (disc, grits)),
        ("between coats", between, (disc, *coats)),
    ):
        area = surfaces.painted_area * times
        discs = area / SQUARE_INCHES / disc.value
        yield Material("Abrasive", discs, BARE, Basis(words, area=area), rates, "disc")


def _first_coats(job: Job, surfaces: Surfaces) -> Iterator[Material]:
    """What goes on before anything is put together: primer, or stain and what seals the wood."""
    look = job.design.look
    everywhere = Basis("all faces of all boards", area=surfaces.primed_area)
    if is_painted(look):
        yield _coats(job, PRIMER, everywhere, "primer_coverage", "primer_coats")
        return
    if look.finish == STAINED:
        yield _coats(job, STAIN, Basis("faces that show", area=surfaces.painted_area), "stain_coverage")
    yield _coats(job, SEALER, everywhere, "clear_coverage", "primer_coats")


def _last_coats(job: Job, surfaces: Surfaces) -> Material:
    basis = Basis("faces that show", area=surfaces.painted_area)
    if is_painted(job.design.look):
        return _coats(job, TOP_COAT, basis, "top_coverage", "top_coats")
    return _coats(job, CLEAR_COAT, basis, "clear_coverage", "top_coats")


def _coats(job: Job, name: str, basis: Basis, coverage: str, coats: str = "") -> Material:
    """As many coats as the rate `coats` says, one where it is not given."""
    spread, lost = find_rate(job, f"rates.{coverage}"), find_rate(job, "rates.coat_loss")
    times = (find_rate(job, f"rates.{coats}"),) if coats else ()
    count = times[0].value if times else 1.0
    gallons = (basis.area or 0.0) / SQUARE_INCHES * count / (spread.value * (1 - lost.value / 100))
    return Material(name, gallons, GALLON, basis, (spread, *times, lost))


def _caulk(job: Job, joints: Sequence[Joint]) -> Iterator[Material]:
    """Of wood whose grain shows, inside corners are fitted tight and left as they are. Common practice."""
    cartridge, lost = find_rate(job, "rates.caulk_cartridge"), find_rate(job, "rates.caulk_loss")
    corners = ("wood", "inside corners of wood", joint_length(joints, JointKind.CORNER))
    masonry = ("masonry", "wood to masonry and wall", joint_length(joints, JointKind.SITE, CAULKED))
    for name, words, length in (corners, masonry) if is_painted(job.design.look) else (masonry,):
        bead = find_rate(job, f"rates.bead_{name}")
        tubes = cartridges_of(bead_volume(bead.value, length), cartridge.value) * _with_loss(lost)
        basis = Basis(words, length=length)
        yield Material("Caulk", tubes, BARE, basis, (bead, cartridge, lost), "cartridge")


def _tape(job: Job, surfaces: Surfaces) -> Material:
    """Hook-and-loop tape on the sides of loose panels, the longer sides first."""
    sides = find_rate(job, "rates.tape_sides")
    length = 0.0
    for board in surfaces.boards:
        if board.role == ACCESS_PANEL:
            length += sum([board.length, board.length, board.width, board.width][: round(sides.value)])
    basis = Basis("loose panels", length=length)
    return Material("Hook-and-loop tape", length / INCHES_PER_FOOT, FOOT, basis, (sides,))


def _with_loss(lost: Rate) -> float:
    return 1 + lost.value / 100
