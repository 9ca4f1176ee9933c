"""Writes the kept drawings of the shipped jobs anew, to be looked through as a change of text; not a test.

Run it after a change that is meant to change drawings: ``python -m tests.write_golden``. Then look at the
difference, and at the pictures.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from app.demo import list_demos, read_demo
from export.svg import write_svg
from model.surround import plan_surround
from render.catalogue import USUAL_RATIO
from render.views import VIEWS, ViewOptions, draw_views

FOLDER = Path(__file__).resolve().parent / "golden"


def list_golden() -> Iterator[tuple[str, str]]:
    """Name and text of every kept drawing as it would be written now."""
    for demo in list_demos():
        surround = plan_surround(read_demo(demo))
        drawings = draw_views(surround, VIEWS, ViewOptions(USUAL_RATIO))
        for view, drawing in zip(VIEWS, drawings, strict=True):
            yield f"{demo}-{view}.svg", write_svg(drawing, f"{demo}, {view}")


def main() -> None:
    """Write them all."""
    FOLDER.mkdir(exist_ok=True)
    for name, text in list_golden():
        (FOLDER / name).write_text(text, encoding="utf-8")


if __name__ == "__main__":
    main()
