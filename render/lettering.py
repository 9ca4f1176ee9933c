"""How wide writing is, and how it is broken into lines, from the typeface's advances.

Kerning is left out, as every writer leaves it out. Drawing the letters is the writers' business.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache, lru_cache
from importlib.resources import files
from unicodedata import category

FAMILY = "Source Sans 3"
TYPEFACES = {False: "SourceSans3-Regular.ttf", True: "SourceSans3-SemiBold.ttf"}
"""File below assets/fonts for each weight, keyed by whether it is bold."""
CAPITAL = 0.66
"""Height of the capitals for a font size of 1; from the typeface, held to it by a test."""
DESCENT = 0.34
"""How far letters reach below the baseline for capitals of height 1; from the typeface (p, g, j)."""
ASCENT = 1.13
"""How far letters and marks reach above the baseline for capitals of height 1 (b, d, quotes)."""
LEADING = 1.75
"""From one baseline to the next for capitals of height 1: three quarters of a letter left clear."""
ELLIPSIS = "…"
TIE = "\u00a0"
FRACTION = re.compile(r"(?<=\d)[ \u202f](?=\d+/\d|\d{3}(?!\d))")
"""The space between a whole number and its fraction, or between a number's thousands: apart on two lines they
are read as two sizes."""
SET_FRACTION = re.compile(r"(?<![\w./,])(?P<upper>\d{1,2})/(?P<lower>\d{1,3})(?![\w./])")
"""A fraction that is set with smaller figures; the space before it stays a whole one: 11 1/2 is no 111/2."""
SET_SIZE = 0.75
"""Figures of a fraction for capitals of 1: three quarters of the numeral's height (US Navy, Engineering Aid
Basic, "Numerals and fractions"). That the upper ones are as high as capitals is a shop choice."""
JOINERS = ("Cf", "Mn", "Me")
"""Kinds of characters that only change the letter before them; one that the typeface lacks is left out."""
PLACE, PLACE_END, KEY_FIRST = "\ue000", "\ue001", 0xE100
"""What a place for a sheet's number consists of until it is known: see render.references.

Private-use characters: the first is as wide as two figures, its end and its key, from KEY_FIRST on, have no
width.
"""
STAND_IN = "?"
"""Stands on paper for a letter that the typeface lacks; a note on the sheet says so."""

KNOWN = 8192
"""Texts whose widths are kept: more than there are in a packet of the largest shipped job."""


@cache
def _read_table() -> dict[bool, dict[str, float]]:
    """Advance of each character for capitals of height 1; "" holds the one for a character not there."""
    text = files("assets").joinpath("fonts", "advances.json").read_text(encoding="utf-8")
    tables = {}
    for name, weight in json.loads(text).items():
        capital = weight["capital"]
        table = {c: a / capital for c, a in zip(weight["characters"], weight["advances"], strict=True)}
        table[""] = weight["missing"] / capital
        table |= {PLACE: 2 * table["0"], PLACE_END: 0.0}
        table |= {chr(KEY_FIRST + code): 0.0 for code in range(128)}
        tables[name == "bold"] = table
    return tables


@dataclass(frozen=True, slots=True)
class Run:
    """A part of a line set at one `size` and `rise`, and how far in it begins, for capitals of 1."""

    text: str
    size: float
    rise: float
    at: float


def text_width(text: str, height: float, bold: bool = False) -> float:
    """Width of one line whose capitals are `height` high, in the unit of `height`, its fractions set."""
    if "/" in text:
        return height * _set_runs(text, bold)[1]
    return height * _plain_width(text, bold)


def text_runs(text: str, bold: bool = False) -> tuple[Run, ...]:
    """A line in the runs it is set in: a fraction's figures smaller, the upper one raised, the solidus full.

    Put together they are `text` again, so that what is read out of a file is what was written.

    >>> [(run.text, run.size, run.rise) for run in text_runs("1 1/2")]
    [('1 ', 1.0, 0.0), ('1', 0.75, 0.25), ('/', 1.0, 0.0), ('2', 0.75, 0.0)]
    """
    return _set_runs(text, bold)[0]


def set_share(text: str, bold: bool = False) -> float:
    """How wide a line is with its fractions set, as a part of what it is with all figures full."""
    plain = _plain_width(text, bold)
    return text_width(text, 1.0, bold) / plain if plain else 1.0


@lru_cache(maxsize=KNOWN)
def _set_runs(text: str, bold: bool) -> tuple[tuple[Run, ...], float]:
    """The runs and how wide they are together."""
    runs: list[Run] = []
    x = 0.0
    for piece, size, rise in _list_pieces(text):
        runs.append(Run(piece, size, rise, x))
        x += size * _plain_width(piece, bold)
    return tuple(runs), x


def _list_pieces(text: str) -> Iterator[tuple[str, float, float]]:
    """Pieces of a line with their size and rise."""
    end = 0
    for found in SET_FRACTION.finditer(text):
        if found.start() > end:
            yield text[end : found.start()], 1.0, 0.0
        yield found["upper"], SET_SIZE, 1.0 - SET_SIZE
        yield "/", 1.0, 0.0
        yield found["lower"], SET_SIZE, 0.0
        end = found.end()
    if end < len(text) or not text:
        yield text[end:], 1.0, 0.0


@lru_cache(maxsize=KNOWN)
def _plain_width(text: str, bold: bool) -> float:
    table = _read_table()[bold]
    missing = table[""]
    return sum([table.get(character, missing) for character in text])


@lru_cache(maxsize=KNOWN)
def missing_letters(text: str) -> str:
    """The characters of `text` that the typeface has no letter for, each once; line ends are none."""
    table = _read_table()[False]
    return "".join(dict.fromkeys(c for c in text if c not in table and not c.isspace()))


def replace_missing(text: str) -> str:
    """`text` with STAND_IN for each character that the typeface has no letter for."""
    missing = missing_letters(text)
    if not missing:
        return text
    return text.translate({ord(c): "" if category(c) in JOINERS else STAND_IN for c in missing})


def one_line(text: str) -> str:
    """The same words with every run of spaces, tabs and line ends made one space."""
    return " ".join(text.split())


def shorten_text(text: str, height: float, width: float, bold: bool = False) -> str:
    """`text` on one line, its end replaced by an ellipsis when it is wider than `width`."""
    text = one_line(text)
    if text_width(text, height, bold) <= width:
        return text
    low, high = 0, len(text)
    while low < high:
        middle = (low + high + 1) // 2
        if text_width(text[:middle].rstrip() + ELLIPSIS, height, bold) <= width:
            low = middle
        else:
            high = middle - 1
    return text[:low].rstrip() + ELLIPSIS


def tie_words(text: str) -> str:
    """The text as one word that `wrap_text` keeps on one line: a whole number and its fraction, say."""
    return text.replace(" ", TIE)


def tie_fractions(text: str) -> str:
    """The text with a whole number and its fraction, and a number's thousands, tied to each other."""
    return FRACTION.sub(TIE, text)


def wrap_text(text: str, height: float, width: float, bold: bool = False) -> tuple[str, ...]:
    """Lines no wider than `width`, broken at spaces and at the text's own line ends; see `tie_words`.

    A whole number keeps its fraction where the line has room for both. A word wider than a line is broken
    inside; at least one character stands on each line. An empty text gives one empty line.
    """
    text = tie_fractions(text)
    lines: list[str] = []
    for paragraph in text.splitlines() or [""]:
        words = [word.replace(TIE, " ") for word in re.split(r"[^\S\u00a0]+", paragraph) if word]
        lines.extend(_wrap_paragraph(words, height, width, bold))
    return tuple(lines)


def _wrap_paragraph(words: list[str], height: float, width: float, bold: bool) -> list[str]:
    lines = [""]
    for word in words:
        longer = f"{lines[-1]} {word}" if lines[-1] else word
        if text_width(longer, height, bold) <= width:
            lines[-1] = longer
            continue
        if " " in word and text_width(word, height, bold) > width:
            pieces = _wrap_paragraph(word.split(), height, width, bold)
        else:
            pieces = _break_word(word, height, width, bold)
        if lines[-1]:
            lines.extend(pieces)
        else:
            lines[-1:] = pieces
    return lines


def _break_word(word: str, height: float, width: float, bold: bool) -> list[str]:
    pieces = [""]
    for character in word:
        if pieces[-1] and text_width(pieces[-1] + character, height, bold) > width:
            pieces.append(character)
        else:
            pieces[-1] += character
    return pieces
