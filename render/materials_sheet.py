"""Materials, weights and what they were measured on, as they stand on paper, each rate with its source.

Amounts are worked out in model.takeoff.materials, weights in model.takeoff.weight.
"""

from __future__ import annotations

from collections.abc import Sequence

from model.board import Point3
from model.build.behind import OLD_LEDGER
from model.job import Job
from model.measures import FOOT, POUND, SQ_FT, SQUARE_INCHES, format_measure
from model.parameters import TABLE
from model.takeoff.joints import Joint, JointKind
from model.takeoff.materials import CAULKED, Basis, Material, Rate, find_rate
from model.takeoff.packages import format_package
from model.takeoff.standing import FLOOR
from model.takeoff.takeoff import Takeoff
from model.takeoff.weight import Load, centre_of, describe_lift, total_weight
from model.units import INCHES_PER_FOOT, LengthStyle, format_length
from render.checks_sheet import source_text
from render.drawing import MM
from render.tables import (
    FIGURES,
    ROW,
    Cell,
    Row,
    Strip,
    Table,
    heading_strip,
    opening_strips,
    share_columns,
    table_strips,
)

ON_LINE = 1 / 32
"""What acts no further from the centre line than this acts on it, in. Shop choice."""
RATE_GROUPS = ("Rates", "Cutting")
WHAT = (
    "Taken off the boards as drawn. Take is the amount in whole packages. The rates are below, each with "
    "what stands behind it; every one of them can be set in the job."
)
LIFTING = (
    "Boards alone, without anchors, paint or what stands on the shelf. Advised is what one person lifts at "
    "most into its place, with both hands and once (NIOSH 94-110). That equation does not judge lifts by "
    "several people, so even shares are a guide only."
)
MATERIALS = ("Material", "Measured on", "By these rates", "Amount", "Take")
MEASURED = ("Surfaces and joints", "Amount", "What is done")
WEIGHTS = (
    "Sub-assembly", "Pieces", "Weight", "At once", "Advised", "Who lifts", "Weight acts at", "Over the floor",
    "Out from masonry",
)  # fmt: skip
RATES = ("Rate", "Value", "Source")


def materials_strips(
    takeoff: Takeoff, job: Job, floor: float, style: LengthStyle, width: float
) -> tuple[Strip, ...]:
    """Everything the materials sheets say, for a page `width` wide; `floor` is the floor's y in the room."""
    return (
        *opening_strips("Materials", WHAT, width),
        *_material_strips(takeoff.materials, style, width),
        Strip(5 * MM),
        *_measured_strips(takeoff, style, width),
        *opening_strips("Weights and lifting", LIFTING, width, above=5 * MM),
        *_weight_strips(takeoff.loads, floor, style, width),
        heading_strip("Rates", above=5 * MM),
        *rate_strips(job, RATE_GROUPS, style, width),
    )


def _material_strips(materials: Sequence[Material], style: LengthStyle, width: float) -> tuple[Strip, ...]:
    columns = share_columns(width, MATERIALS, (30, 64, 92, 30, 28), ("Amount", "Take"), ("Take",))
    rows = tuple(_material_row(material, style) for material in materials)
    return table_strips(Table(columns, rows, FIGURES, ROW, ruled=True))


def _material_row(material: Material, style: LengthStyle) -> Row:
    return (
        Cell(material.name),
        Cell(describe_basis(material.basis, style)),
        Cell(describe_rates(material, style)),
        Cell(describe_amount(material, style)),
        Cell(format_package(material, style)),
    )


def describe_rates(material: Material, style: LengthStyle) -> str:
    """The rates it rests on: ``primer coverage 250 sq ft/gal, primer coats 1``."""
    return ", ".join(_say_rate(rate, style) for rate in material.rates)


def _say_rate(rate: Rate, style: LengthStyle) -> str:
    label = rate.row.label
    return f"{label[:1].lower()}{label[1:]} {format_rate(rate, style)}"


def format_rate(rate: Rate, style: LengthStyle) -> str:
    """The rate's value as a field of the job shows it."""
    whole = isinstance(rate.row.default, int)
    return rate.row.format(int(rate.value) if whole else rate.value, style)


def rate_strips(job: Job, groups: Sequence[str], style: LengthStyle, width: float) -> tuple[Strip, ...]:
    """The job's own figures in these groups of the table of parameters, each with where it comes from."""
    columns = share_columns(width, RATES, (58, 40, 146), ends=("Value",))
    rows: list[Row] = []
    for group in groups:
        rows += [group] if rows else []
        paths = [row.path for row in TABLE if row.group == group and row.sourced is not None]
        rows += [_rate_row(find_rate(job, path), style) for path in paths]
    return table_strips(Table(columns, tuple(rows)))


def _rate_row(rate: Rate, style: LengthStyle) -> Row:
    return (
        Cell(rate.row.label),
        Cell(format_rate(rate, style)),
        Cell(source_text("", rate.source, rate.standing)),
    )


def describe_amount(material: Material, style: LengthStyle) -> str:
    """The amount in its measure; what is counted in pieces to a decimal."""
    text = format_measure(material.amount, material.measure, style)
    return f"{text} {material.unit}s" if material.unit else text


def describe_basis(basis: Basis, style: LengthStyle) -> str:
    """What a material is measured on: ``faces that show, 39.8 sq ft``."""
    parts = [basis.words] if basis.words else []
    if basis.count is not None:
        parts.append(f"{basis.count} {basis.counted}")
    if basis.length is not None:
        long = (basis.length > INCHES_PER_FOOT and basis.count is None) or basis.length > 4 * INCHES_PER_FOOT
        parts.append(_feet(basis.length, style) if long else format_length(basis.length, style))
    if basis.area is not None:
        parts.append(format_measure(basis.area / SQUARE_INCHES, SQ_FT, style))
    return ", ".join(parts)


def _measured_strips(takeoff: Takeoff, style: LengthStyle, width: float) -> tuple[Strip, ...]:
    columns = share_columns(width, MEASURED, (96, 34, 114), ends=("Amount",))
    rows = tuple(tuple(map(Cell, row)) for row in list_measured(takeoff, style))
    return table_strips(Table(columns, rows, FIGURES, ruled=True))


def list_measured(takeoff: Takeoff, style: LengthStyle) -> list[tuple[str, str, str]]:
    """Areas and lengths of joints: what, how much, and what is done about it."""
    surfaces = takeoff.surfaces
    glued = sum(fixing.glue for fixing in takeoff.fixings)
    areas = (
        ("Faces of all boards", surfaces.primed_area, "primed before anything is put together"),
        ("Faces that show", surfaces.painted_area, "sanded and top-coated"),
        ("Wood on wood within a sub-assembly", glued, "glued on the bench"),
    )
    rows = [(name, format_measure(area / SQUARE_INCHES, SQ_FT, style), done) for name, area, done in areas]
    return rows + [(name, _feet(long, style), done) for name, long, done in describe_lengths(takeoff.joints)]


DONE = {
    JointKind.CORNER: ("Inside corners of wood", "caulked"),
    JointKind.FLUSH: ("Flush seams", "filled and sanded"),
    JointKind.MITRE: ("Outside corners", "filled and sanded"),
    JointKind.GLUE_LINE: ("Glue lines", "planed flush"),
    JointKind.LOOSE: ("Round loose panels", "left open"),
    JointKind.FLOATING: ("Round solid panels", "left open"),
}
WHY_OPEN = {FLOOR: "for the floor moves", OLD_LEDGER: "where the old ledger shows"}
"""Why wood is not caulked to what stands there."""


def describe_lengths(joints: Sequence[Joint]) -> list[tuple[str, float, str]]:
    """Each sort of joint that there is: its name, inches of it, and what is done about it."""
    lengths: dict[str, float] = {}
    for joint in joints:
        name = joint.site or str(joint.kind)
        lengths[name] = lengths.get(name, 0.0) + joint.length
    rows = [(name, lengths.get(kind, 0.0), done) for kind, (name, done) in DONE.items()]
    sites = sorted(site for site in lengths if site not in set(JointKind))
    rows += [(f"Wood against the {site}", lengths[site], _say_site(site)) for site in sites]
    return [row for row in rows if row[1] > 0]


def _say_site(site: str) -> str:
    """`site` is caulked or has its reason in WHY_OPEN."""
    return "caulked" if site in CAULKED else f"left open, {WHY_OPEN[site]}"


def _feet(length: float, style: LengthStyle) -> str:
    return format_measure(length / INCHES_PER_FOOT, FOOT, style)


def _weight_strips(
    loads: Sequence[Load], floor: float, style: LengthStyle, width: float
) -> tuple[Strip, ...]:
    heading, *lines = list_weights(loads, floor, style)
    shares = (32, 15, 19, 19, 19, 62, 34, 26, 30)
    ends = set(heading) - {"Sub-assembly", "Who lifts"}
    columns = share_columns(width, heading, shares, ends, ("Weight",))
    return table_strips(
        Table(columns, tuple(tuple(map(Cell, line)) for line in lines), FIGURES, ROW, ruled=True)
    )


def list_weights(loads: Sequence[Load], floor: float, style: LengthStyle) -> list[tuple[str, ...]]:
    """Heading, a line for each sub-assembly, and one for all of them together."""
    pieces = sum(load.pieces for load in loads)
    total = ("All together", str(pieces), _pounds(total_weight(loads), style), "", "", "")
    return [
        WEIGHTS,
        *(_weight_line(load, floor, style) for load in loads),
        (*total, *_place_texts(centre_of(loads), floor, style)),
    ]


def _weight_line(load: Load, floor: float, style: LengthStyle) -> tuple[str, ...]:
    return (
        load.name.capitalize(),
        str(load.pieces),
        _pounds(load.weight, style),
        _pounds(load.lifted, style),
        _pounds(load.advised, style) if load.advised > 0 else "none",
        describe_lift(load),
        *_place_texts(load.centre, floor, style),
    )


def _pounds(weight: float, style: LengthStyle) -> str:
    return format_measure(weight, POUND, style)


def _place_texts(at: Point3, floor: float, style: LengthStyle) -> tuple[str, ...]:
    """Where a weight acts: off the centre line, over the floor, out from the masonry's face."""
    side = f"{format_length(abs(at[0]), style)} {'left' if at[0] < 0 else 'right'}"
    aside = "centre line" if abs(at[0]) < ON_LINE else side
    return aside, format_length(at[1] - floor, style), format_length(at[2], style)
