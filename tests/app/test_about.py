"""The page about the program, its icon and its version."""

from __future__ import annotations

import re
import tomllib
from importlib import metadata
from importlib.resources import files
from pathlib import Path
from xml.etree import ElementTree

import pytest
from PySide6.QtGui import QImage

from app.about import BUILT_ON, WHO_DECIDES, AboutWindow, list_built_on, read_changes
from app.cli import main
from app.icon import SIZES, icon_picture, program_icon
from app.version import describe_ground, program_version

HERE = Path(__file__).resolve().parents[2]
PROJECT = tomllib.loads((HERE / "pyproject.toml").read_text("utf-8"))["project"]


def test_the_version_is_the_projects_and_leads_the_changes():
    assert program_version() == PROJECT["version"]
    assert re.findall(r"^# (\S+)$", read_changes(), re.MULTILINE)[0] == PROJECT["version"]


def test_the_command_says_its_version(capsys):
    assert main(["--version"]) == 0
    assert capsys.readouterr().out == f"Mantelwright {program_version()}\n"


def test_what_it_runs_on_names_no_machine():
    import getpass
    import socket

    told = describe_ground()
    assert "Python" in told
    assert "PySide6" in told
    assert not re.search(rf"\b{re.escape(socket.gethostname())}\b|\b{re.escape(getpass.getuser())}\b", told)


def test_every_library_that_is_needed_is_named_with_its_licence():
    needed = {re.split(r"[<>=;]", wanted)[0].replace("-", "_").lower() for wanted in PROJECT["dependencies"]}
    assert {name.lower() for name, _ in BUILT_ON} == needed


@pytest.mark.parametrize(("name", "licence"), BUILT_ON)
def test_licences_are_those_of_the_libraries_own_records(name: str, licence: str):
    record = metadata.metadata(name)
    told = " ".join(
        [str(record.get("License-Expression")), str(record.get("License")), *record.get_all("Classifier", [])]
    )
    assert licence.split()[0] in told.replace("Lesser General Public", "LGPL")
    assert f"{metadata.version(name)}, {licence}" in list_built_on()


def test_the_page_says_what_it_is_who_decides_and_what_is_new(window, qtbot):
    page = AboutWindow(window)
    qtbot.addWidget(page)
    page.show()
    assert WHO_DECIDES in page.words.text()
    assert program_version() in page.words.text()
    assert "The first version" in page.text.toPlainText()


@pytest.mark.parametrize("size", SIZES)
def test_the_icon_is_there_in_every_size(size: int, qapp):
    image = icon_picture(size).toImage()
    assert (image.width(), image.height()) == (size, size)
    assert image.pixelColor(0, 0).alpha() == 0
    assert image.pixelColor(size // 2, int(size * 0.6)).lightness() < 90
    assert program_icon().availableSizes()


def test_the_icon_of_other_systems_reads():
    assert not QImage(str(HERE / "assets" / "icon" / "mantelwright.ico")).isNull()


def test_the_desktop_entry_opens_a_job_of_the_kind_that_is_declared():
    entry = files("assets").joinpath("linux", "mantelwright.desktop").read_text("utf-8")
    fields = dict(line.split("=", 1) for line in entry.splitlines() if "=" in line)
    kinds = ElementTree.fromstring(files("assets").joinpath("linux", "mantelwright.xml").read_text("utf-8"))
    (kind,) = [element for element in kinds if element.tag.endswith("mime-type")]
    assert fields["MimeType"].rstrip(";") == kind.get("type")
    assert fields["Exec"].split()[0] in PROJECT["scripts"]
    assert {"Type", "Name", "Comment", "Icon", "Categories"} <= set(fields)
