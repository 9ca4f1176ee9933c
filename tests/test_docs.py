"""What README and DEVELOPERS say exists does: commands, options, paths of parameters, files."""

from __future__ import annotations

import re
import shlex
from pathlib import Path

import pytest

from app.arguments import COMMANDS, build_parser
from app.demo import DEFAULT, list_demos
from model.parameters import BY_PATH

HERE = Path(__file__).resolve().parents[1]
README = (HERE / "README.md").read_text("utf-8")
DEVELOPERS = (HERE / "DEVELOPERS.md").read_text("utf-8")
CI = (HERE / ".ci" / "run").read_text("utf-8")
PROGRAM = ".venv/bin/mantelwright"
GROUPS = {path.split(".")[0] for path in BY_PATH}


def _list_shell_lines() -> list[str]:
    blocks = re.findall(r"```sh\n(.*?)```", README, re.DOTALL)
    return [line for block in blocks for line in block.splitlines() if line]


def _list_commands() -> list[list[str]]:
    given = [shlex.split(line)[1:] for line in _list_shell_lines() if line.startswith(PROGRAM)]
    return [arguments for arguments in given if arguments and arguments[0] in COMMANDS]


def test_the_job_stands_in_one_paragraph_at_the_very_top():
    title, paragraph, picture = README.split("\n\n")[:3]
    assert title == "# Mantelwright"
    assert not re.match(r"[#!`|-]", paragraph)
    assert picture.startswith("![")


@pytest.mark.parametrize("arguments", _list_commands(), ids=" ".join)
def test_every_command_shown_is_understood(arguments: list[str]):
    assert build_parser().parse_args(arguments)


def test_every_command_there_is_is_shown():
    assert {arguments[0] for arguments in _list_commands()} == set(COMMANDS)


def test_every_shipped_job_is_named():
    for name in (DEFAULT, *list_demos()):
        assert f"`{name}`" in README


def test_the_test_command_is_the_one_that_starts_from_nothing():
    (command,) = [line for line in _list_shell_lines() if line.endswith("-m pytest")]
    assert CI.rstrip().splitlines()[-1] == command


def test_the_machine_that_starts_from_nothing_installs_what_the_reader_is_told_to():
    (line,) = [line for line in _list_shell_lines() if "apt-get install" in line]
    packages = line.split("--no-install-recommends")[1].split()
    wanted = re.findall(r"^ {2}([a-z0-9][^#\n]*)", CI, re.MULTILINE)
    assert set(packages) <= set(" ".join(wanted).split())


@pytest.mark.parametrize("text", [README, DEVELOPERS], ids=["README", "DEVELOPERS"])
def test_parameter_paths_exist(text: str):
    found = {
        path
        for path in re.findall(r"[`=\s]([a-z_]+\.[a-z_]+)", text)
        if path.split(".")[0] in GROUPS and not path.endswith((".py", ".mantel"))
    }
    assert found <= set(BY_PATH)


def test_some_parameter_path_is_shown():
    assert "column.width" in README


@pytest.mark.parametrize("text", [README, DEVELOPERS], ids=["README", "DEVELOPERS"])
def test_files_named_exist(text: str):
    named = re.findall(r"`((?:model|render|export|app|assets|tests|\.ci)/[\w./-]*)`", text)
    linked = re.findall(r"\]\(([\w./-]+)\)", text)
    new = {"model/build/cornice.py"}
    for name in {*named, *linked} - new:
        assert (HERE / name).exists(), name


def test_readme_names_every_system_library_once():
    (line,) = [line for line in _list_shell_lines() if "apt-get install" in line]
    packages = line.split("--no-install-recommends")[1].split()
    assert len(packages) == len(set(packages))
