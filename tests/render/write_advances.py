"""Renews assets/fonts/advances.json from the typeface: ``python tests/render/write_advances.py``."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

from fontTools.ttLib import TTFont

FONTS = Path(__file__).resolve().parents[2] / "assets" / "fonts"
WEIGHTS = {"regular": "SourceSans3-Regular.ttf", "bold": "SourceSans3-SemiBold.ttf"}


def measure_typeface(file_name: str) -> dict[str, Any]:
    """Characters and their advances in font units, kerning left out; `missing` is the stand-in's advance."""
    font = TTFont(FONTS / file_name)
    glyphs, advances = font.getBestCmap(), font["hmtx"]
    codes = sorted(glyphs)
    return {
        "em": font["head"].unitsPerEm,
        "capital": font["OS/2"].sCapHeight,
        "missing": advances[".notdef"][0],
        "characters": "".join(map(chr, codes)),
        "advances": [advances[glyphs[code]][0] for code in codes],
    }


if __name__ == "__main__":
    table = {weight: measure_typeface(name) for weight, name in WEIGHTS.items()}
    text = json.dumps(table, ensure_ascii=False, separators=(",", ":"))
    (FONTS / "advances.json").write_text(text + "\n", encoding="utf-8")
