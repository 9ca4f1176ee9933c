"""Whether pieces that are there already are large enough for what they are to be used for."""

from __future__ import annotations

from model.check.finding import Finding, Status
from model.check.plain import FIT, build_plain
from model.surround import Surround
from model.takeoff.on_hand import Yield, describe_use, list_yields


def check_on_hand(surround: Surround) -> tuple[Finding, ...]:
    """One finding for each piece on hand that is used."""
    return tuple(_report(surround, found) for found in list_yields(surround))


def _report(surround: Surround, found: Yield) -> Finding:
    name, use = found.name, describe_use(found.piece)
    status, path, cure = Status.PASS, f"{found.path}.use", ""
    marks = ", ".join(surround.marks[i] for i in found.taken)
    if found.missing:
        status, path = Status.UNKNOWN, f"{found.path}.{found.missing[0]}"
        message = f"Whether {name} is large enough for the {use} is not known."
        cure = f"Measure its {' and '.join(found.missing)}."
    elif not found.taken and not found.left:
        status = Status.WARN
        message = f"This design has no {use} for {name} to be used for."
        cure = "Use it for something else."
    elif found.left:
        status, path = Status.WARN, f"{found.path}.length"
        count = len(found.taken) + len(found.left)
        message = f"Of the {use}, {name} gives {len(found.taken)} of {count} pieces: {found.why}."
        cure = "Buy what it does not give, or make the piece smaller."
    else:
        message = f"All of the {use} comes out of {name}: {marks}."
    return build_plain(FIT, status, "pieces on hand", message, path, cure)
