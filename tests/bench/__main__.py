"""All benches in one run: ``python -m tests.bench``. Prints figures beside their baselines."""

from __future__ import annotations

import json

from app.demo import DEFAULT, list_demos
from tests.bench import packet
from tests.bench.displays import Surroundings, open_displays
from tests.bench.processes import run_bench, time_starts

FRAME = 1000 / 60
"""Milliseconds of one picture at 60 Hz."""
STARTS = 9
DRAG_SIZES = ((1366, 768), (1920, 1080))
"""Windows in which edges are dragged, pixels."""
_MEASURED = f"processor time, median of {packet.ROUNDS}"


def main() -> None:
    """Run everything."""
    with open_displays() as displays:
        for name, surroundings in displays.items():
            show_edits(name, surroundings)
        for name, surroundings in displays.items():
            show_drags(name, surroundings)
        for name, surroundings in displays.items():
            show_starts(name, surroundings)
    show_drawings(show_packets())


def show_edits(display: str, surroundings: Surroundings) -> None:
    """Edits of every job, beside one frame."""
    print(
        f"\nOne edit to painted front and side view, {display}, 1920 x 1080, 300 edits; frame {FRAME:.1f} ms"
    )
    heads = ("median ms", "p95 ms", "worst ms", "worst/frame", "median cpu ms", "MB after", "MB growth")
    print(f"{'job':12}" + "".join(f"{head:>14}" for head in heads))
    for job in list_demos():
        found = json.loads(run_bench(surroundings, "tests.bench.edits", job))
        middle, late, worst = (1000 * found[key] for key in ("median", "p95", "worst"))
        growth = found["later_mb"] - found["after_mb"]
        times = (middle, late, worst, worst / FRAME, 1000 * found["cpu"])
        print(f"{job:12}" + "".join(f"{t:14.2f}" for t in times) + f"{found['after_mb']:14.0f}{growth:14.1f}")
    print("growth is of 300 more edits after the 300 measured")


def show_drags(display: str, surroundings: Surroundings) -> None:
    """Every move of a dragged edge of the largest job, beside one frame."""
    print(f"\nOne move of a dragged edge to painted, {display}, at 60 Hz; frame {FRAME:.1f} ms")
    heads = (
        "moves",
        "changing",
        "median ms",
        "p95 ms",
        "worst ms",
        "p95/frame",
        "p95 cpu ms",
        "other p95 ms",
    )
    print(f"{'size':12}" + "".join(f"{head:>14}" for head in heads))
    for width, height in DRAG_SIZES:
        found = json.loads(run_bench(surroundings, "tests.bench.drags", DEFAULT, str(width), str(height)))
        middle, late, worst, busy, other = (
            1000 * found[key] for key in ("median", "p95", "worst", "cpu_p95", "behind_p95")
        )
        counts = f"{found['moves']:14}{found['changed']:14}"
        times = f"{middle:14.2f}{late:14.2f}{worst:14.2f}{late / FRAME:14.2f}{busy:14.2f}{other:14.2f}"
        print(f"{f'{width} x {height}':12}{counts}{times}")
    print("of those moves that change the size, from when one was due until the view in hand shows it")
    print("other: until the other view shows it too, or a later one")


def show_starts(display: str, surroundings: Surroundings) -> None:
    """From a process's start on, in turns with the empty window so that all see the same machine."""
    found = time_starts(surroundings, STARTS)
    print(f"\nProcess start to first drawing and to the whole window at rest, {display}, median of {STARTS}")
    for number, how in enumerate(("by the clock", "of the window's process", "of both processes")):
        empty, sheet, whole = (1000 * found[kind][number] for kind in ("empty", "sheet", "whole"))
        kinds = (("first drawing", sheet), ("whole window", whole))
        told = ", ".join(f"{what} {took:.0f} ms, ratio {took / empty:.2f}" for what, took in kinds)
        print(f"{how}: empty window {empty:.0f} ms, {told}")


def show_packets() -> dict[str, dict[str, float]]:
    """The packet, beside reportlab alone with as many marks."""
    print(f"\nPacket on {packet.PAPER}, beside reportlab drawing as many marks; {_MEASURED}")
    heads = ("pages", "marks", "job to PDF ms", "writing ms", "bare ms", "writing/bare")
    print(f"{'job':12}" + "".join(f"{head:>15}" for head in heads))
    measured = packet.measure()
    for job, found in measured.items():
        whole, writing, bare = (1000 * found[key] for key in ("packet", "writing", "bare"))
        counts = f"{found['pages']:15.0f}{found['marks']:15.0f}"
        print(f"{job:12}{counts}{whole:15.0f}{writing:15.0f}{bare:15.0f}{writing / bare:15.2f}")
    return measured


def show_drawings(measured: dict[str, dict[str, float]]) -> None:
    """The drawing files, beside ezdxf alone with as many entities; and packet and drawing files together.

    The last is all that the program does from the job on: plan, draw and write.
    """
    print(f"\nDrawing files, beside ezdxf with as many entities; {_MEASURED}")
    heads = (
        "files",
        "drawings ms",
        "writing ms",
        "bare ms",
        "writing/bare",
        "with packet ms",
        "all/both bare",
    )
    print(f"{'job':12}" + "".join(f"{head:>15}" for head in heads))
    for job, found in measured.items():
        names = ("drawings", "writing_drawings", "bare_drawings", "set")
        drawings, writing, bare, whole = (1000 * found[name] for name in names)
        times = f"{drawings:15.0f}{writing:15.0f}{bare:15.0f}{writing / bare:15.2f}{whole:15.0f}"
        times += f"{whole / (bare + 1000 * found['bare']):15.2f}"
        print(f"{job:12}{found['files']:15.0f}{times}")


if __name__ == "__main__":
    main()
