"""Every view of every shipped job is drawn as it was when it was last looked through."""

from __future__ import annotations

from difflib import unified_diff

from tests.write_golden import FOLDER, list_golden

HOW = "If the change is meant, run `python -m tests.write_golden` and look through the difference."


def test_every_view_is_drawn_as_it_was_looked_through():
    changed = []
    for name, text in list_golden():
        kept = FOLDER / name
        before = kept.read_text(encoding="utf-8") if kept.exists() else ""
        if text != before:
            lines = unified_diff(before.splitlines(), text.splitlines(), name, name, lineterm="", n=0)
            changed.append("\n".join(line[:160] for line in list(lines)[:8]))
    assert not changed, "\n\n".join([HOW, *changed])


def test_nothing_is_kept_that_is_not_drawn():
    assert {path.name for path in FOLDER.iterdir()} == {name for name, _ in list_golden()}
