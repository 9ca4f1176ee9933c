"""Text written to DXF is ASCII and reads as it was meant."""

from __future__ import annotations

import pytest
from ezdxf.lldxf.encoding import decode_dxf_unicode
from hypothesis import given
from hypothesis import strategies as st

from export.dxf_text import format_dxf_text, format_mtext


@pytest.mark.parametrize(
    ("text", "written"),
    [
        ("5\u2032-4 1/2\u2033", "5'-4 1/2\""),
        ("64\u00bd", "64 1/2"),
        ("\u215e", "7/8"),
        ("45\u00b0 \u00d7 3 \u2014 mitred", "45%%d x 3 - mitred"),
        ("\u2265 12 in.", ">= 12 in."),
        ("two\nlines", "two lines"),
        ("100%% sure", "100%%%%%% sure"),
        ("Ren\u00e9e", "Ren\\U+00E9e"),
    ],
)
def test_signs_of_the_trade_are_written_in_ascii(text: str, written: str):
    assert format_dxf_text(text) == written


@given(st.text())
def test_every_text_becomes_ascii_in_one_line(text: str):
    for written in (format_dxf_text(text), format_mtext(text)):
        assert written.isascii()
        assert written.isprintable()


@given(st.text(alphabet=st.characters(min_codepoint=0x3B1, max_codepoint=0x3C9)))
def test_other_alphabets_come_back_from_their_codes(text: str):
    assert decode_dxf_unicode(format_dxf_text(text)) == text


def test_mtext_keeps_backslash_and_braces_as_letters():
    assert format_mtext("a\\b {c}") == "a\\\\b \\{c\\}"
