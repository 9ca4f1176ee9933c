"""What keeps a window from opening is said plainly before Qt would give up."""

from __future__ import annotations

import pytest

from app.preflight import explain_import, explain_missing, find_obstacle


@pytest.fixture(autouse=True)
def _linux(monkeypatch):
    monkeypatch.setattr("sys.platform", "linux")
    for name in ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"):
        monkeypatch.delenv(name, raising=False)


def test_no_display_is_said_with_what_still_works():
    assert "no display" in find_obstacle()
    assert "mantelwright --help" in find_obstacle()


def test_a_platform_that_was_asked_for_is_left_to_qt(monkeypatch):
    monkeypatch.setenv("QT_QPA_PLATFORM", "offscreen")
    assert find_obstacle() == ""


def test_missing_libraries_are_named_as_one_command():
    assert explain_missing(["liba", "libb"]).endswith("apt-get install -y liba libb")


def test_a_missing_system_library_is_told_from_a_missing_package():
    text = explain_import(ImportError("libGL.so.1: cannot open shared object file"))
    assert "apt-get install -y libgl1" in text
    assert "pip" in explain_import(ModuleNotFoundError("No module named 'PySide6'"))


def test_a_display_without_its_libraries_names_their_packages(monkeypatch):
    monkeypatch.setenv("DISPLAY", ":0")
    monkeypatch.setattr("app.preflight._WINDOW_LIBRARIES", (("libc.so.6", "libc6"), ("libno.so.9", "libno9")))
    assert find_obstacle().endswith("apt-get install -y libno9")
    monkeypatch.setenv("WAYLAND_DISPLAY", "wayland-0")
    assert find_obstacle() == ""
