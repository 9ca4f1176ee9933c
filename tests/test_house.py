"""The house itself: style, types, the one direction of imports, and what may be loaded where."""

from __future__ import annotations

import ast
import doctest
import importlib
import importlib.util
import re
import shutil
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

HERE = Path(__file__).resolve().parents[1]
BELOW_APP = ("model", "render", "export")
PACKAGES = (*BELOW_APP, "app")
TOP_LEVEL = {"README.md", "DEVELOPERS.md", "pyproject.toml", "assets", "tests", *PACKAGES}
EMPTY_NAMES = {"utils", "helpers", "misc", "common", "core", "manager"}
MACHINE_PATH = re.compile(r"(?<![\w.~])/(?:home|work|root|Users|tmp)/\w|[A-Z]:\\Users")
QT = {"PySide6", "shiboken6", "pytestqt"}
LATE = {"ezdxf", "reportlab"}
HEAVY = {"ezdxf", "reportlab", "numpy", "shapely", "pint"}


def _run(*command: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(command, cwd=HERE, capture_output=True, text=True, timeout=600, check=False)


def _demand(*command: str) -> None:
    done = _run(*command)
    assert done.returncode == 0, f"{' '.join(command)}\n{done.stdout}\n{done.stderr}"


def _list_sources(*folders: str) -> Iterator[Path]:
    for folder in folders:
        yield from sorted((HERE / folder).rglob("*.py"))


def _list_imports(tree: ast.AST) -> Iterator[str]:
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            yield from (alias.name.split(".")[0] for alias in node.names)
        elif isinstance(node, ast.ImportFrom) and node.module and not node.level:
            yield node.module.split(".")[0]


def _list_tracked() -> list[str]:
    if not (HERE / ".git").exists() or shutil.which("git") is None:
        pytest.skip("not a git checkout")
    return [name for name in _run("git", "ls-files", "-z").stdout.split("\0") if name]


def test_ruff_finds_nothing():
    _demand(sys.executable, "-m", "ruff", "check", "--quiet", "--no-cache", ".")


def test_every_file_is_formatted():
    _demand(sys.executable, "-m", "ruff", "format", "--check", "--quiet", "--no-cache", ".")


def test_types_hold():
    _demand(sys.executable, "-m", "mypy")


def test_imports_run_one_way():
    command = shutil.which("lint-imports", path=str(Path(sys.executable).parent))
    assert command, "import-linter is not installed beside this Python"
    _demand(command, "--no-cache")


def test_no_qt_below_app():
    for source in _list_sources(*BELOW_APP):
        assert not QT & set(_list_imports(ast.parse(source.read_text("utf-8")))), source


def test_everything_below_app_loads_without_qt():
    program = (
        "import sys, pkgutil, importlib\n"
        "sys.modules['PySide6'] = sys.modules['shiboken6'] = None\n"
        f"for package in map(importlib.import_module, {BELOW_APP!r}):\n"
        "    for found in pkgutil.walk_packages(package.__path__, package.__name__ + '.'):\n"
        "        importlib.import_module(found.name)\n"
        f"    assert not {LATE!r} & set(sys.modules), package\n"
    )
    _demand(sys.executable, "-c", program)


def test_examples_in_docstrings_run():
    tried = 0
    for source in _list_sources(*BELOW_APP):
        name = ".".join(source.relative_to(HERE).with_suffix("").parts).removesuffix(".__init__")
        result = doctest.testmod(importlib.import_module(name))
        assert not result.failed, name
        tried += result.attempted
    assert tried


def test_tests_below_app_do_not_need_qt():
    for source in _list_sources("tests/model", "tests/render", "tests/export", "tests/published"):
        text = source.read_text("utf-8")
        assert not QT & set(_list_imports(ast.parse(text))), source
        assert not re.search(r"\bq(tbot|app)\b", text), source


def test_the_program_starts_without_the_heavy_libraries():
    _demand(
        sys.executable,
        "-c",
        f"import app.main, sys; late = {HEAVY!r} & set(sys.modules); assert not late, late",
    )


def test_typed_text_cannot_reach_pint():
    for source in _list_sources(*PACKAGES):
        assert "pint" not in set(_list_imports(ast.parse(source.read_text("utf-8")))), source


def test_nothing_else_stands_at_the_top():
    names = {name.split("/")[0] for name in _list_tracked()}
    assert {name for name in names if not name.startswith(".")} <= TOP_LEVEL


def test_file_names_say_what_is_in_them():
    for name in _list_tracked():
        assert Path(name).stem not in EMPTY_NAMES, name


def test_every_source_file_says_what_belongs_in_it():
    for source in _list_sources(*PACKAGES, "tests"):
        text = source.read_text("utf-8")
        assert not text.strip() or ast.get_docstring(ast.parse(text)), source


def test_no_tracked_text_names_a_path_of_some_machine():
    for name in _list_tracked():
        if (HERE / name).suffix in {".ttf", ".png", ".ico"} or not (HERE / name).is_file():
            continue
        found = MACHINE_PATH.search((HERE / name).read_text("utf-8"))
        assert not found, f"{name}: {found}"


@pytest.mark.skipif(sys.version_info >= (3, 12), reason="None is immortal from Python 3.12 on")
@pytest.mark.skipif(importlib.util.find_spec("PySide6") is None, reason="needs Qt")
def test_qt_binding_keeps_its_references_to_none():
    """PySide6 6.12.0 on Python 3.11 loses one at each call that returns nothing, and aborts in the end."""
    from PySide6.QtGui import QPainterPath

    path = QPainterPath()
    before = sys.getrefcount(None)
    for _ in range(100):
        path.moveTo(0, 0)
    assert sys.getrefcount(None) >= before - 5
