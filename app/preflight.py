"""Looks before Qt starts for what Qt cannot say plainly: no display, or a system library that is missing."""

from __future__ import annotations

import ctypes
import os
import sys

_WINDOW_LIBRARIES = (
    ("libxcb-cursor.so.0", "libxcb-cursor0"),
    ("libxcb-icccm.so.4", "libxcb-icccm4"),
    ("libxcb-keysyms.so.1", "libxcb-keysyms1"),
    ("libxcb-shape.so.0", "libxcb-shape0"),
    ("libxkbcommon-x11.so.0", "libxkbcommon-x11-0"),
)
"""Libraries that Qt's window part loads by itself, and the Debian packages that bring them."""
_BASE_PACKAGES = "libgl1 libegl1 libxkbcommon0 libdbus-1-3 libfontconfig1 libglib2.0-0"


def find_obstacle() -> str:
    """A sentence saying why no window can open here, or nothing when one can."""
    if not sys.platform.startswith("linux") or os.environ.get("QT_QPA_PLATFORM"):
        return ""
    if os.environ.get("WAYLAND_DISPLAY"):
        return ""
    if not os.environ.get("DISPLAY"):
        return "There is no display to open a window on. The commands work without one: mantelwright --help"
    missing = [package for library, package in _WINDOW_LIBRARIES if not _loads(library)]
    return explain_missing(missing) if missing else ""


def explain_missing(packages: list[str]) -> str:
    """What to install, as a command for Debian and what follows it."""
    return (
        "The window needs system libraries that are not here. Install them with:\n  apt-get install -y "
        + " ".join(packages)
    )


def explain_import(error: ImportError) -> str:
    """What to install when Qt itself cannot be loaded."""
    if ".so" in str(error):
        return explain_missing(_BASE_PACKAGES.split())
    return f"The window's own library could not be loaded ({error}). Install the program again with pip."


def _loads(library: str) -> bool:
    try:
        ctypes.CDLL(library)
    except OSError:
        return False
    return True
