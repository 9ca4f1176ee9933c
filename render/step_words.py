"""What is written beside a step's picture: what goes on, what holds it, what to mind, how long it takes."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from model.measures import SQ_FT, SQUARE_INCHES, format_measure
from model.steps.step import Step, Where
from model.steps.work import round_up
from model.surround import Surround
from model.takeoff.fasteners import Means, count_fixings
from model.takeoff.takeoff import Takeoff
from model.units import LengthStyle, format_length
from render.board_marks import kind_of

TIMES = "\N{MULTIPLICATION SIGN}"


def list_words(
    step: Step, surround: Surround, takeoff: Takeoff, seen: str = ""
) -> tuple[tuple[str, str], ...]:
    """Paragraphs, each with the word it begins with; `seen` is where the picture is looked at from."""
    style = surround.job.about.length_style
    found = [
        (
            "Glue up",
            say_boards((*step.glued, *step.boards), surround) if step.wide and not step.dressed else "",
        ),
        ("Dress", say_boards(step.dressed, surround) if step.dressed else ""),
        ("Put on", say_boards(step.boards, surround) if step.boards and not step.wide else ""),
        ("Bring", " and ".join(step.parts) if step.brought and step.where is Where.SITE else ""),
        ("Add", _say_ready(step, surround)),
        ("Drive", say_driven(step, takeoff, style)),
        ("Glue", say_glue(step, surround, takeoff)),
        ("Anchors", _say_anchors(step)),
        *(("–", note) for note in step.notes),
        ("Seen", seen),
    ]
    return tuple((word, text) for word, text in found if text)


def say_time(step: Step) -> str:
    """``1.25 h, 2 people``; empty for a step that takes no time of its own."""
    parts = [f"{round_up(step.hours):g} h"] if step.hours else []
    parts += [f"{step.hands} people"] if step.hands > 1 else []
    parts += [f"then {step.dries:g} h in clamps"] if step.dries else []
    return ", ".join(parts)


def say_boards(boards: Sequence[int], surround: Surround) -> str:
    """``C5 column inner return x 2, C6 column outer return x 2``."""
    counts: Counter[tuple[str, str]] = Counter()
    for i in boards:
        counts[kind_of(surround.marks[i]), surround.boards[i].role] += 1
    times = {n: f" {TIMES} {n}" for n in counts.values() if n > 1}
    return ", ".join(f"{mark} {role}{times.get(n, '')}" for (mark, role), n in counts.items())


def say_driven(step: Step, takeoff: Takeoff, style: LengthStyle) -> str:
    """``20 finish nails 2 1/4"``; what is driven in a step, longest first of each kind."""
    fixings = [takeoff.fixings[n] for n in step.driven]
    return ", ".join(
        f"{count} {TIMES} {means}{'s' if count > 1 else ''} {format_length(length, style)}"
        for means, length, count, _ in count_fixings(fixings)
        if means is not Means.NONE
    )


def say_glue(step: Step, surround: Surround, takeoff: Takeoff) -> str:
    """How large the faces are that are glued, edges of strips among them; empty where nothing is."""
    seams = {i: one.seams for one in takeoff.glue_ups for i in one.pieces}
    area = sum(takeoff.fixings[n].glue for n in step.fixings) + sum(seams[i] for i in step.glued)
    if not area:
        return ""
    style = surround.job.about.length_style
    return f"{format_measure(area / SQUARE_INCHES, SQ_FT, style, 2)} of joints"


def _say_ready(step: Step, surround: Surround) -> str:
    """What was screwed or glued into one before and goes on here."""
    if not step.brought or step.where is Where.SITE:
        return ""
    return "made before: " + say_boards(step.brought, surround)


def _say_anchors(step: Step) -> str:
    if not step.anchors:
        return ""
    numbers = [n + 1 for n in step.anchors]
    if numbers == list(range(numbers[0], numbers[-1] + 1)) and len(numbers) > 2:
        return f"{len(numbers)}, numbers {numbers[0]} to {numbers[-1]} on the sheet of anchors"
    return f"{len(numbers)}, on the sheet of anchors numbers {', '.join(map(str, numbers))}"
