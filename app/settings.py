"""What the program remembers from one start to the next, and where. Nothing that belongs to a job."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

from PySide6.QtCore import QByteArray, QSettings, QStandardPaths

MOST_RECENT = 8
WALKED = "way"
"""Says that somebody has been through the way through the window, or wanted none of it."""


def settings_file() -> Path:
    """Where the settings of this user are kept."""
    folder = QStandardPaths.writableLocation(QStandardPaths.StandardLocation.AppConfigLocation)
    return Path(folder) / "settings.ini"


def recovery_folder() -> Path:
    """Where unsaved work of this user is kept."""
    folder = QStandardPaths.writableLocation(QStandardPaths.StandardLocation.AppDataLocation)
    return Path(folder) / "unsaved"


class Settings:
    """Small values by name. Each is stored as JSON text, which comes back in a new process as it went in."""

    def __init__(self, path: Path) -> None:
        self._store = QSettings(str(path), QSettings.Format.IniFormat)

    def read(self, name: str, default: Any) -> Any:
        """The value kept under `name`; `default` when there is none or it cannot be read."""
        text = self._store.value(name)
        try:
            return default if text is None else json.loads(str(text))
        except ValueError:
            return default

    def write(self, name: str, value: Any) -> None:
        """Keep `value`, which must be plain data."""
        self._store.setValue(name, json.dumps(value))

    def read_bytes(self, name: str) -> QByteArray:
        """Bytes kept by `write_bytes`, or none."""
        text = self.read(name, "")
        return QByteArray.fromHex(text.encode("ascii", "ignore")) if isinstance(text, str) else QByteArray()

    def write_bytes(self, name: str, value: QByteArray) -> None:
        """Keep a window's own state."""
        self.write(name, bytes(value.toHex().data()).decode("ascii"))

    def list_recent(self) -> tuple[Path, ...]:
        """Job files used last, the latest first, including those another window has used meanwhile."""
        self._store.sync()
        names = self.read("recent", [])
        return (
            tuple(Path(n) for n in names if isinstance(n, str))[:MOST_RECENT]
            if isinstance(names, list)
            else ()
        )

    def add_recent(self, path: Path) -> None:
        """Put `path` first among the files used last."""
        others = [p for p in self.list_recent() if p != path]
        self._write_recent([path, *others])

    def drop_recent(self, path: Path) -> None:
        """Forget `path`, which is no longer there."""
        self._write_recent([p for p in self.list_recent() if p != path])

    def clear_recent(self) -> None:
        """Forget all files used last."""
        self._write_recent([])

    def _write_recent(self, paths: list[Path]) -> None:
        self.write("recent", [str(p) for p in paths[:MOST_RECENT]])
        self._store.sync()
