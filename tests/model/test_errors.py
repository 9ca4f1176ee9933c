"""What a refusal quotes is shown as it was read, and steers nothing."""

from __future__ import annotations

import pytest

from model.errors import MOST_FAULTS, JobRefused, Refused, disarm


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("36 1/2", "36 1/2"),
        ("木 é \N{WOOD}", "木 é \N{WOOD}"),
        ("می\N{ZERO WIDTH NON-JOINER}خواهم", "می\N{ZERO WIDTH NON-JOINER}خواهم"),
        ("\x1b[31m", "\\x1b[31m"),
        ("a\x07\x7f\x9b", "a\\x07\\x7f\\x9b"),
        ("a\u202eb\u2066", "a\\u202eb\\u2066"),
        ("a\u2028b\udcff", "a\\u2028b\\udcff"),
        ("a\tb\nc", "a\\tb\\nc"),
    ],
)
def test_only_characters_that_steer_are_written_out(text: str, shown: str):
    assert disarm(text) == shown


def test_characters_that_are_wanted_stay():
    assert disarm("a\tb\nc\x1b", "\t\n") == "a\tb\nc\\x1b"


def test_a_refusal_quotes_what_it_read_harmlessly():
    assert str(Refused("opening width", "\x1b[2J", "write a length")) == (
        'opening width "\\x1b[2J": write a length'
    )


def test_a_message_lists_so_many_faults_and_counts_the_rest():
    faults = tuple(f"row {number}" for number in range(MOST_FAULTS + 1))
    assert str(JobRefused(faults[:-1])).splitlines() == list(faults[:-1])
    assert str(JobRefused(faults)).splitlines() == [*faults[:-1], "and 1 more"]
