"""Unsaved changes of the stock list, kept as a job's are in app.recovery."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from app.keeping import PAUSE, STATE, Keeper, Left, list_left, tell_nobody
from app.stock_files import StockFiles
from model.cutting.stock_list import StockList

_SUFFIX = ".unsaved-list"


@dataclass(frozen=True, slots=True)
class LeftList(Left):
    """A stock list that an ended program had not saved, and what it is called: a file, or a shipped one."""

    stock_list: StockList
    name: str


def list_left_lists(folder: Path, tell: Callable[[str], object] = tell_nobody) -> tuple[LeftList, ...]:
    """Stock lists left behind, the latest first; `tell` and what is not among them as for jobs."""
    return list_left(folder, _SUFFIX, _read, tell)


def _read(kept: dict[str, Any], left: Left) -> LeftList:
    from model.cutting.stock_file import read_stock_list

    stock_list = read_stock_list(str(kept["list"]))
    return LeftList(left.kept_in, left.state, left.kept_at, left.lock, stock_list, str(kept["name"]))


class StockRecovery(Keeper):
    """Keeps unsaved changes of the stock list in use."""

    def __init__(self, files: StockFiles, folder: Path, pause: int = PAUSE) -> None:
        super().__init__(files.session, folder, _SUFFIX, pause)
        self._files = files

    def write(self) -> dict[str, object]:
        """The list's text and what it is called."""
        from model.cutting.stock_file import write_stock_list

        session = self._files.session
        return {"name": session.name, STATE: self._files.state, "list": write_stock_list(session.stock_list)}
