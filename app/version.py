"""Which version this is, and what it runs on."""

from __future__ import annotations

import platform

NAME = "mantelwright"
UNKNOWN = "of an unknown version"
"""Said by a copy that was not installed."""


def program_version() -> str:
    """This program's own."""
    return version_of(NAME)


def version_of(package: str) -> str:
    """As in the package's own record, where there is one."""
    from importlib import metadata  # takes a while to load, and no window waits for it

    try:
        return metadata.version(package)
    except metadata.PackageNotFoundError:
        return UNKNOWN


def describe_ground() -> str:
    """Python, the window's library and the system, on one line. Nothing that tells whose machine it is."""
    system = f"{platform.system()} {platform.release()}, {platform.machine()}"
    return f"Python {platform.python_version()}; PySide6 {version_of('PySide6_Essentials')}; {system}"
