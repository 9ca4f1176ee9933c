"""Packet and drawing files of each shipped job, beside reportlab and ezdxf alone with as many marks."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from collections import Counter
from collections.abc import Callable, Sequence
from functools import partial
from importlib.resources import files
from io import BytesIO
from statistics import median
from tempfile import TemporaryDirectory
from time import perf_counter, process_time
from typing import Any
from unittest.mock import patch

from app.demo import list_demos, read_demo
from app.drawing_files import build_assembly_drawings, build_drawing, build_moulding_drawings
from app.outputs import ASSEMBLIES, DRAWING, MOULDINGS, PACKET, build_outputs, build_packet_sheets
from export import dxf
from export.dxf import write_dxf
from export.dxf_file import R2010
from export.pdf import POINTS_PER_INCH, write_pdf
from export.section_dxf import write_section_dxf
from model.job import Job
from model.surround import plan_surround
from model.takeoff.cut_list import list_cuts
from render.dimension_strokes import dimension_strokes
from render.drawing import Dimension, Hatch, Lines, Mark, Polyline, Region, Sheet, Text
from render.hatching import hatch_segments
from render.lettering import TYPEFACES
from render.moulding_sheet import list_used
from tests.bench.bare_drawings import record, write_bare

PAPER = "tabloid"
SET = (PACKET, DRAWING, ASSEMBLIES, MOULDINGS)
ROUNDS = 3
_FONT, _SIZE = "BenchText", 9


def measure() -> dict[str, dict[str, float]]:
    """By job: seconds from job to bytes (`packet`), from sheets to bytes (`writing`) and of reportlab alone
    (`bare`); how many `marks` on how many `pages` that was. From sheets to all drawing files (`drawings`),
    from what is drawn in them to their text (`writing_drawings`) and of ezdxf alone with as many entities
    (`bare_drawings`); how many `files`. All of it together, from the job on, by one process alone (`set`);
    as a command from its start to its end, by the clock (`command`) and on the processors (`command_cpu`);
    and what the libraries alone take for all of it by the clock (`bare_clock`). What is not by the clock is
    the processor's time.
    """
    return {name: measure_job(name) for name in list_demos()}


def measure_job(name: str) -> dict[str, float]:
    """The figures of one shipped job, as in `measure`."""
    job = read_demo(name)
    sheets = _build_sheets(job)
    counts = [_count_marks(sheet) for sheet in sheets]
    recorded = [record(text) for text in _write_drawings(job, sheets)]
    replay = _record_writing(job, sheets)
    command, command_cpu = measure_command(name)
    return {
        "packet": _time(lambda: write_pdf(_build_sheets(job), job.about.name)),
        "writing": _time(lambda: write_pdf(sheets, job.about.name)),
        "bare": _time(lambda: _draw_bare(sheets, counts)),
        "set": measure_set(job),
        "command": command,
        "command_cpu": command_cpu,
        "bare_clock": _time(lambda: (_draw_bare(sheets, counts), write_bare(recorded)), perf_counter),
        "drawings": _time(lambda: _write_drawings(job, sheets)),
        "writing_drawings": _time(lambda: [write() for write in replay]),
        "bare_drawings": _time(lambda: write_bare(recorded)),
        "files": len(recorded),
        "marks": sum(sum(count.values()) for count in counts),
        "pages": len(sheets),
    }


def measure_set(job: Job) -> float:
    """Seconds from job to the packet and all drawing files as the program writes them, buying planned."""
    return _time(lambda: build_outputs(job, PAPER, "", SET))


def measure_command(name: str) -> tuple[float, float]:
    """The same as a command that writes the files, from its start to its end, a second process doing some of
    it where there are two cores: by the clock, and on all processors.
    """
    wanted = [word for part in SET for word in ("--only", part)]
    taken = []
    for _ in range(ROUNDS):
        with TemporaryDirectory() as folder:
            start, used = perf_counter(), sum(os.times()[2:4])
            command = [
                sys.executable,
                "-m",
                "app",
                "packet",
                name,
                "--out",
                folder,
                "--paper",
                PAPER,
                *wanted,
            ]
            subprocess.run(command, check=True, capture_output=True)
            taken.append((perf_counter() - start, sum(os.times()[2:4]) - used))
    clock, cpu = zip(*taken, strict=True)
    return median(clock), median(cpu)


def _write_drawings(job: Job, sheets: Sequence[Sheet]) -> list[str]:
    surround = plan_surround(job)
    cuts = list_cuts(surround)
    return [
        build_drawing(surround, cuts, sheets, R2010, _tell_nobody),
        *(text for _, text in build_assembly_drawings(surround, cuts, sheets, R2010, _tell_nobody)),
        *(text for _, text in build_moulding_drawings(surround, R2010, _tell_nobody)),
    ]


def _record_writing(job: Job, sheets: Sequence[Sheet]) -> list[Callable[[], str]]:
    """The calls that write the drawing files, their drawings ready."""
    calls: list[Callable[[], str]] = []

    def note(*arguments: Any) -> str:
        calls.append(partial(write_dxf, *arguments))
        return ""

    with patch.object(dxf, "write_dxf", note):
        _write_drawings(job, sheets)
    entries = list_used(plan_surround(job).layout.mouldings, job.about.length_style)
    return [*calls, *(partial(write_section_dxf, entry.section) for entry in entries)]


def _tell_nobody(_done: float, _words: str) -> None:
    """Nobody watches."""


def _build_sheets(job: Job) -> tuple[Sheet, ...]:
    return build_packet_sheets(job, PAPER, "")


def _time(work: Callable[[], object], clock: Callable[[], float] = process_time) -> float:
    """Median seconds of the processor, whatever else the machine does, after a round that loads libraries."""
    work()
    times = []
    for _ in range(ROUNDS):
        start = clock()
        work()
        times.append(clock() - start)
    return median(times)


def _count_marks(sheet: Sheet) -> Counter[str]:
    """Strokes, areas and lines of writing that a writer has to put down."""
    counts: Counter[str] = Counter()
    for placed in sheet.placed:
        for mark in placed.drawing.marks:
            counts.update(_count_mark(mark, placed.drawing.ratio))
    return counts


def _count_mark(mark: Mark, ratio: float) -> dict[str, int]:
    match mark:
        case Lines():
            return {"stroke": len(mark.segments)}
        case Polyline():
            return {"stroke": len(mark.points) - (not mark.closed)}
        case Region():
            return {"area": len(mark.rings)}
        case Hatch():
            return {"stroke": len(hatch_segments(mark))}
        case Text():
            return {"writing": 1}
        case Dimension():
            return {"stroke": len(dimension_strokes(mark, ratio)), "writing": 1}


def _draw_bare(sheets: Sequence[Sheet], counts: Sequence[Counter[str]]) -> bytes:
    from reportlab.pdfbase import pdfmetrics
    from reportlab.pdfbase.ttfonts import TTFont
    from reportlab.pdfgen.canvas import Canvas

    if _FONT not in pdfmetrics.getRegisteredFontNames():
        data = files("assets").joinpath("fonts", TYPEFACES[False]).read_bytes()
        pdfmetrics.registerFont(TTFont(_FONT, BytesIO(data)))
    stream = BytesIO()
    canvas = Canvas(stream, invariant=1, pageCompression=1)
    for sheet, count in zip(sheets, counts, strict=True):
        width, height = sheet.width * POINTS_PER_INCH, sheet.height * POINTS_PER_INCH
        canvas.setPageSize((width, height))
        canvas.setFont(_FONT, _SIZE)
        for i in range(count["area"]):
            canvas.rect(i % width, i % height, 50, 20, stroke=0, fill=1)
        for i in range(count["stroke"]):
            canvas.line(i % width, 0, width, i % height)
        for i in range(count["writing"]):
            canvas.drawString(i % width, (7 * i) % height, "4'-4 5/16\"")
        canvas.showPage()
    canvas.save()
    return stream.getvalue()


if __name__ == "__main__":
    print(json.dumps(measure()))
