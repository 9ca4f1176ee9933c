"""Feeds the readers: ``python -m tests.fuzz [READER …] [--runs N] [--seed N] [--into FOLDER] [--keep]``.

Each reader is fed in a process of its own, led by which lines its input reached (atheris, on libFuzzer). A
fault, a run of more than 2 s or more than 1 GB of memory ends it; the input is then left in FOLDER, this one
if none is said. ``--keep`` adds to the corpus what reached new lines.
"""

from __future__ import annotations

import os
import re
import subprocess
import sys
from argparse import ArgumentParser
from pathlib import Path
from tempfile import TemporaryDirectory
from time import process_time

RUNS = {"job": 100_000}
OTHERS = 20_000
LONGEST, LARGEST = 2, 1024
"""Seconds that one input may take the processor, and megabytes of the whole process."""
GIVEN_UP = 60
"""Seconds by the clock after which an input is given up: the machine may have other work."""
CORPUS = Path(__file__).parent / "corpus"
CHILD = "--fed"


def main() -> int:
    """The exit code: 1 where some reader broke."""
    if sys.argv[1:2] == [CHILD]:
        return _be_fed(sys.argv[2], sys.argv[3:])
    from tests.fuzz.targets import TARGETS

    parser = ArgumentParser(prog="python -m tests.fuzz", description=(__doc__ or "").split("\n")[0])
    parser.add_argument("readers", nargs="*", metavar="READER", help=", ".join(TARGETS))
    parser.add_argument("--runs", type=int, help=f"inputs each; {OTHERS} if not said, {RUNS['job']} for jobs")
    parser.add_argument("--seed", type=int, default=1, help="the same seed, the same inputs")
    parser.add_argument(
        "--into", type=Path, default=Path(), help="where an input that broke something is left"
    )
    parser.add_argument("--keep", action="store_true", help="add what reached new lines to the corpus")
    wish = parser.parse_args()
    unknown = set(wish.readers) - set(TARGETS)
    if unknown:
        parser.error(f"no such reader: {', '.join(sorted(unknown))}; there are {', '.join(TARGETS)}")
    names = wish.readers or list(TARGETS)
    whole = [
        _feed(name, wish.runs or RUNS.get(name, OTHERS), wish.seed, wish.into, wish.keep) for name in names
    ]
    return 0 if all(whole) else 1


def _feed(name: str, runs: int, seed: int, into: Path, keep: bool) -> bool:
    """Feed one reader and say how it went; whether it stood."""
    from tests.fuzz.targets import TARGETS

    kept = CORPUS / name
    with TemporaryDirectory() as folder:
        fresh, seeds = Path(folder, "fresh"), Path(folder, "seeds")
        for part in (fresh, seeds):
            part.mkdir()
        for number, data in enumerate(TARGETS[name].seeds()):
            (seeds / f"shipped-{number}").write_bytes(data)
        options = [f"-runs={runs}", f"-seed={seed}", f"-timeout={GIVEN_UP}", "-rss_limit_mb=0"]
        options += [f"-artifact_prefix={into.resolve() / name}-", "-print_final_stats=1", "-max_len=40000"]
        folders = [str(folder) for folder in (fresh, seeds, kept) if folder.is_dir()]
        command = [sys.executable, "-m", "tests.fuzz", CHILD, name, *options, *folders]
        done = subprocess.run(command, capture_output=True, text=True, errors="replace", check=False)
        if keep and done.returncode == 0:
            kept.mkdir(exist_ok=True)
            for found in fresh.iterdir():
                (kept / found.name[:12]).write_bytes(found.read_bytes())
    print(_say(name, done.returncode, done.stderr + done.stdout), flush=True)
    return done.returncode == 0


def _say(name: str, code: int, told: str) -> str:
    """One line for what stood, all that was told for what broke."""
    if code:
        return f"{name}: broke\n{told[-4000:]}"
    stats = dict(re.findall(r"stat::(\w+):\s+(\d+)", told))
    lines = re.findall(r"\bcov: (\d+)", told)
    count, pace = stats["number_of_executed_units"], stats["average_exec_per_sec"]
    slowest, most = stats["slowest_unit_time_sec"], stats["peak_rss_mb"]
    reached = lines[-1] if lines else "?"
    return (
        f"{name}: {count} inputs, no fault; {pace} a second, slowest {slowest} s, {most} MB at most, "
        f"{reached} branches reached"
    )


def _peak() -> int:
    """Megabytes that this process took at the most. What libFuzzer counts may be those of its starter."""
    status = Path("/proc/self/status").read_text("ascii")
    return int(re.findall(r"VmHWM:\s+(\d+) kB", status)[0]) // 1024


def _be_fed(name: str, options: list[str]) -> int:
    """In the child: load the reader so that its lines are noted, and be fed until the runs are over."""
    import atheris

    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    with atheris.instrument_imports(include=["model", "app", "export"]):
        from tests.fuzz.targets import TARGETS, feed
    from tests.fuzz.json_mutator import spoil_json

    target = TARGETS[name]

    def spoil(data: bytes, most: int, seed: int) -> bytes:
        if seed % 3 == 0:
            return bytes(atheris.Mutate(data, len(data)))
        return spoil_json(data, seed)[:most]

    def read(data: bytes) -> None:
        before = process_time()
        feed(target, data)
        taken = process_time() - before
        assert taken < LONGEST, f"took {taken:.1f} s"
        assert _peak() < LARGEST, f"took {_peak()} MB"

    if target.is_json:
        atheris.Setup([sys.argv[0], *options], read, custom_mutator=spoil)
    else:
        atheris.Setup([sys.argv[0], *options], read)
    atheris.Fuzz()
    return 0


if __name__ == "__main__":
    sys.exit(main())
