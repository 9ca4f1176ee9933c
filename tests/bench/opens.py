"""Jobs opened in the real window, one after the other: from the job to the painted sheet. Prints JSON.

Run by tests.bench.paces; reading the file is in it, choosing it is not.
"""

from __future__ import annotations

import json
import os
import sys
import tempfile
from itertools import cycle, islice
from pathlib import Path
from statistics import median
from time import perf_counter, process_time

from PySide6.QtWidgets import QApplication

from app.demo import list_demos, read_demo
from app.files import read_job_file, save_job_file
from app.settings import Settings
from app.theme import Ground, dress, load_typeface
from app.window import Window
from tests.bench.displays import SIZE
from tests.bench.edits import Watch, rest

OPENED, WARM = 20, 4


def main() -> None:
    """Open the shipped jobs by turns, print what was measured."""
    app = QApplication(sys.argv[:1])
    load_typeface()
    dress(app, Ground.LIGHT)
    with tempfile.TemporaryDirectory() as folder:
        paths = []
        for name in list_demos():
            paths.append(Path(folder) / f"{name}.mantel")
            save_job_file(paths[-1], read_demo(name))
        window = Window(Settings(Path(folder) / "settings.ini"), Path(folder))
        window.resize(*SIZE)
        window.session.open(read_job_file(paths[-1]), paths[-1])
        window.show()
        window.begin()
        rest(app)
        watch = Watch(window.canvas)
        times = [_open(app, window, watch, path) for path in islice(cycle(paths), WARM + OPENED)][WARM:]
        took, busy = zip(*times, strict=True)
        print(json.dumps({"median": median(took), "worst": max(took), "cpu": median(busy)}))
    os._exit(0)


def _open(app: QApplication, window: Window, watch: Watch, path: Path) -> tuple[float, float]:
    """Seconds until the sheet of that job is painted, and those that this process worked."""
    before, start, busy = watch.count, perf_counter(), process_time()
    job = read_job_file(path)
    window.session.open(job, path)
    while watch.count == before or window.drafting.surround is None:
        app.processEvents()
    took = watch.painted_at - start, process_time() - busy
    rest(app)
    return took


if __name__ == "__main__":
    main()
