"""A second process draws the same as the window would, and never stays behind."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

HOUSE = Path(__file__).parents[2]

pytestmark = pytest.mark.skipif(not hasattr(os, "fork"), reason="a process cannot be copied here")

SAME = """
from app.ahead import start_ahead
ahead = start_ahead()
from app.demo import list_demos, read_demo
from app.working import Wish, work_out
for name in list_demos():
    for wish in (Wish(("front", "side"), 9.5, True), Wish(("plan",), 14.0, False)):
        there = ahead.work_out(read_demo(name), wish)
        here = work_out(read_demo(name), wish)
        assert there == here.without_plan(), name
        assert there.plan is None
ahead.end()
try:
    import os
    os.waitpid(-1, os.WNOHANG)
except ChildProcessError:
    print("nobody is left")
"""

LIGHT = """
from app.ahead import start_ahead
ahead = start_ahead()
from app.working import Wish
from model.job import default_job
import sys
assert ahead.work_out(default_job(), Wish(("front",), 12.0, False)).drawings
late = {"numpy", "shapely", "model.surround"} & set(sys.modules)
assert not late, late
ahead.end()
"""

SEEN = """
import sys
from app.ahead import start_ahead
ahead = start_ahead("bedroom")
from app.working import Wish
for name in ("bedroom", "", "no such job", "gas"):
    ahead.ask_to_see(name, Wish(("front", "side"), 11.0, False))
    sight = ahead.take_sight()
    late = {"model.job", "model.build.lines"} & set(sys.modules)
    assert not late, late
    assert (sight is None) == (name == "no such job"), name
    if name == "gas":
        from app.demo import read_demo
        from app.working import see_first
        assert sight == see_first(read_demo(name), Wish(("front", "side"), 11.0, False))
ahead.end()
"""

LOADED = """
import sys
from app.demo import list_demos, read_demo
from app.working import Wish, check_plan, list_plan_cuts, list_plan_guides, load_heavy_parts, work_out
load_heavy_parts()
before = set(sys.modules)
for name in list_demos():
    plan = work_out(read_demo(name), Wish(("front", "side"), 9.5, True)).plan
    check_plan(plan), list_plan_cuts(plan), list_plan_guides(plan)
late = {name for name in set(sys.modules) - before if name.split(".")[0] in ("model", "render", "shapely")}
assert not late, late
"""

KILLED = """
import os, signal
from app.ahead import start_ahead
ahead = start_ahead()
from app.working import Wish
from model.job import default_job
os.kill(ahead._pid, signal.SIGKILL)
assert ahead.work_out(default_job(), Wish(("front",), 12.0, False)) is None
ahead.end()
"""

ABANDONED = """
import os
from app.ahead import start_ahead
print(start_ahead()._pid, flush=True)
os._exit(0)
"""


def _run(code: str) -> str:
    done = subprocess.run([sys.executable, "-c", code], cwd=HOUSE, capture_output=True, text=True, timeout=60)
    assert done.returncode == 0, done.stderr
    return done.stdout


def test_it_draws_what_the_window_would_draw_and_then_ends():
    assert "nobody is left" in _run(SAME)


def test_its_answer_is_read_without_loading_what_drawing_needs():
    _run(LIGHT)


def test_the_first_sight_of_a_job_is_what_the_window_would_draw_and_is_read_without_its_model():
    _run(SEEN)


def test_no_edit_waits_for_a_part_to_be_loaded_once_the_heavy_ones_are():
    _run(LOADED)


def test_one_that_dies_is_done_without():
    _run(KILLED)


def test_one_that_nobody_asks_any_more_ends_by_itself():
    pid = int(_run(ABANDONED))
    for _ in range(100):
        try:
            os.kill(pid, 0)
        except ProcessLookupError:
            return
        subprocess.run(["sleep", "0.1"], check=True)
    raise AssertionError("it is still there")
