"""Whether frames have the wood their joints want, and whether mitres stay shut as the wood moves."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from math import sqrt

from model.board import Board
from model.bore import CROSS
from model.build.lines import PANEL_LAP, Frame
from model.check.clearance import HAIR
from model.check.finding import Bound, Finding, Status
from model.check.part import FRIEZE, OVERMANTEL, name_part
from model.check.wording import Wording
from model.reference.joinery import FRAME_PLAY, FRAME_THICKNESS, LEFT_BESIDE_REBATE, MITRE_GAP
from model.reference.moisture import SHRINKS_ACROSS, swell
from model.reference.nails import NARROW
from model.reference.sourced import Sourced
from model.seasons import list_moistures
from model.surround import Surround

CHECK = "joints"
MITRED = {"slip": "slip.width", "back band": "back_band.size", "bed mould": "bed_mould.size"}
"""Which size makes a part's mitres as wide as they are."""


@dataclass(frozen=True, slots=True)
class Mitre:
    """The widest mitre: of which part and boards, inches `width` across each piece; how much of its width a
    piece moves at most from the `built` moisture, %, and by how much the mitre then opens at one end, in."""

    part: str
    boards: tuple[str, ...]
    width: float
    species: str
    shrinkage: float
    built: float
    furthest: float
    moves: float

    @property
    def opens(self) -> float:
        """Both pieces move across their grain and not along it: their ends part by this."""
        return self.width * self.moves * sqrt(2)


def check_joinery(surround: Surround) -> Iterator[Finding]:
    """The widest mitre, then what is amiss with frames."""
    wording = Wording(surround.job.about.length_style)
    mitre = find_widest_mitre(surround)
    if mitre is not None:
        yield _report_mitre(mitre, wording)
    frames = [(part, path, frame) for part, path, frame in list_frames(surround) if frame.openings]
    if frames:
        yield from _check_thickness(surround, wording)
    for part, path, frame in frames:
        yield from _check_members(surround, part, path, frame, wording)


def find_widest_mitre(surround: Surround) -> Mitre | None:
    """The widest of all mitres, and what its wood moves; None where nothing is mitred."""
    widths = [max(_list_mitres(board), default=0.0) for board in surround.boards]
    most = max(widths, default=0.0)
    if most <= HAIR:
        return None
    alike = [i for i, width in enumerate(widths) if width >= most - HAIR]
    part = name_part(surround.boards[alike[0]])
    marks = tuple(surround.marks[i] for i in alike if name_part(surround.boards[i]) == part)
    species = surround.job.design.board.species
    built, (_, damp, fire) = surround.job.shop.rates.moisture, list_moistures(surround.job.site)
    furthest = max((damp, fire), key=lambda moisture: abs(swell(species, 1.0, built, moisture)))
    moves = abs(swell(species, 1.0, built, furthest))
    return Mitre(part, marks, most, species, SHRINKS_ACROSS[species].value, built, furthest, moves)


def _list_mitres(board: Board) -> Iterator[float]:
    """How wide a board is across each of its mitred ends, in the plane that the mitre turns in."""
    for end in (board.low, board.high):
        if end.is_square or end.is_near_square:
            continue
        low, high = board.bounds
        for slope, i in zip((end.slope_u, end.slope_v), CROSS[board.axis], strict=True):
            if abs(slope) > HAIR:
                yield high[i] - low[i]


def _report_mitre(mitre: Mitre, wording: Wording) -> Finding:
    fits = mitre.opens <= MITRE_GAP.value + HAIR
    path = MITRED.get(mitre.part, "panel_mould.size" if mitre.part.endswith("column") else "")
    message = (
        f"The widest mitres are the {mitre.part}'s, {wording.distance(mitre.width)} across: put together at "
        f"{mitre.built:g} % moisture, they open by {mitre.opens:.3f} in. at one end at {mitre.furthest:.1f} "
        f"%; {MITRE_GAP.value:.4f} in. may show."
    )
    cure = "" if fits else "Make the pieces narrower, or butt the corner with a loose tongue and glue it."
    return _build(MITRE_GAP, fits, mitre.part, mitre.opens, Bound.MOST, message, cure, path, mitre.boards)


def list_frames(surround: Surround) -> Iterator[tuple[str, str, Frame]]:
    """Part, rows' path and frame of both columns, the frieze and the overmantel, plain faces among them."""
    layout = surround.layout
    for side in layout.sides:
        yield f"{side.name} column", "column", side.frame
    yield FRIEZE, "frieze", layout.frieze_frame
    if layout.over is not None:
        yield OVERMANTEL, "over", layout.over.frame


def _check_thickness(surround: Surround, wording: Wording) -> Iterator[Finding]:
    least = replace(FRAME_THICKNESS, value=FRAME_THICKNESS.value - FRAME_PLAY.value)
    message = "Frames are of {has} boards; stiles and rails want {wants} at least."
    cure = "Take thicker boards, or plain faces."
    thick = surround.job.design.board.thickness
    yield from _check_least(least, wording, "frames", thick, message, cure, "board.thickness")


def _check_members(
    surround: Surround, part: str, path: str, frame: Frame, wording: Wording
) -> Iterator[Finding]:
    """The narrowest rail, which two screws should enter; the stile, of which a rebate takes its lap."""
    if frame.rails:
        message = (
            f"The {part}'s narrowest rail is {{has}}: under {{wants}} one screw holds each joint, which can "
            "turn."
        )
        cure = "Make the rails wider, or add a dowel or a loose tongue to each joint."
        rail = min(y1 - y0 for _, y0, _, y1 in frame.rails)
        yield from _check_least(NARROW, wording, part, rail, message, cure, f"{path}.rail")
    if frame.stiles and surround.job.design.board.thickness - frame.reveal > HAIR:
        cut, lap = ("groove", frame.groove.depth) if frame.groove else ("rebate", PANEL_LAP)
        narrow = f"the {part}'s narrowest stile"
        message = f"The {cut} leaves {{has}} of {narrow}; a joint wants {{wants}} there."
        cure = "Make the stiles wider, or let the panels lie behind the frame."
        left = min(x1 - x0 for x0, _, x1, _ in frame.stiles) - lap
        yield from _check_least(LEFT_BESIDE_REBATE, wording, part, left, message, cure, f"{path}.stile")


def _check_least(
    least: Sourced, wording: Wording, part: str, has: float, message: str, cure: str, path: str
) -> Iterator[Finding]:
    """A finding where there is less than that; `message` says where it has and wants go."""
    if has < least.value - HAIR:
        said = message.format(has=wording.distance(has), wants=wording.distance(least.value))
        yield _build(least, False, part, has, Bound.LEAST, said, cure, path)


def _build(
    figure: Sourced,
    fits: bool,
    part: str,
    measured: float,
    bound: Bound,
    message: str,
    cure: str,
    path: str,
    boards: tuple[str, ...] = (),
) -> Finding:
    return Finding(
        check=CHECK,
        rule=CHECK,
        standing=figure.standing,
        source=figure.source,
        status=Status.PASS if fits else Status.WARN,
        part=part,
        measured=measured,
        limit=figure.value,
        unit="in",
        message=message,
        cure=cure,
        path=path,
        boards=boards,
        bound=bound,
    )
