"""Writing as DXF wants it: ASCII, with the format's own codes. Words are chosen elsewhere."""

from __future__ import annotations

_PLAIN = {
    "\u2032": "'",
    "\u2033": '"',
    "\u2018": "'",
    "\u2019": "'",
    "\u201c": '"',
    "\u201d": '"',
    "\u2010": "-",
    "\u2011": "-",
    "\u2012": "-",
    "\u2013": "-",
    "\u2014": "-",
    "\u2212": "-",
    "\u2026": "...",
    "\u00a0": " ",
    "\u2009": " ",
    "\u202f": " ",
    "\u00d7": "x",
    "\u2044": "/",
    "\u2264": "<=",
    "\u2265": ">=",
    "\u2192": "->",
    "\u00b0": "%%d",
    "\u2300": "%%c",
    "\u00b1": "%%p",
}
_FRACTIONS = {
    "\u00bd": "1/2",
    "\u00bc": "1/4",
    "\u00be": "3/4",
    "\u215b": "1/8",
    "\u215c": "3/8",
    "\u215d": "5/8",
    "\u215e": "7/8",
    "\u2153": "1/3",
    "\u2154": "2/3",
}
_LAST_ASCII = 126
_LAST_IN_ONE_CODE = 0xFFFF


def format_dxf_text(text: str) -> str:
    """One line for a TEXT entity: `text` in ASCII, its letters beyond ASCII as the format's ``\\U+`` codes.

    Control characters become spaces; a fraction sign after a figure is parted from it by a space.
    """
    doubled = text.replace("%%", "%%%%%%")
    out: list[str] = []
    for character in doubled:
        out.append(_format_character(character, out[-1] if out else ""))
    return "".join(out)


def format_mtext(text: str) -> str:
    """The same line for an MTEXT or a dimension's own text, where backslash and braces have meanings."""
    guarded = text.replace("\\", "\\\\").replace("{", "\\{").replace("}", "\\}")
    return format_dxf_text(guarded)


def _format_character(character: str, before: str) -> str:
    if character in _PLAIN:
        return _PLAIN[character]
    if character in _FRACTIONS:
        return (" " if before[-1:].isdigit() else "") + _FRACTIONS[character]
    code = ord(character)
    if code < ord(" ") or character == "\x7f":
        return " "
    if code <= _LAST_ASCII:
        return character
    return f"\\U+{code:04X}" if code <= _LAST_IN_ONE_CODE else "?"
