"""How words kept without capital or stop become sentences. What is said stands where it is known."""

from __future__ import annotations

from collections.abc import Sequence


def capitalise(words: str) -> str:
    """The same words with their first letter large and all others as they were; "" stays ""."""
    return words[:1].upper() + words[1:]


def end_sentence(words: str) -> str:
    """The same words with a full stop, which they may have: an edition's "ed." ends a sentence too."""
    return words if words.endswith(".") else f"{words}."


def merge_stops(words: str) -> str:
    """The same words with one full stop where two follow each other: the unit "in." ends a sentence too."""
    return words.replace("..", ".")


def join_words(words: Sequence[str]) -> str:
    """``a``, ``a and b``, ``a, b and c``; at least one."""
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} and {words[-1]}"
