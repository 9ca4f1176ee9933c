"""How words kept in small letters begin a sentence. What is said stands where it is known."""

from __future__ import annotations


def capitalise(words: str) -> str:
    """The same words with their first letter large and all others as they were; "" stays ""."""
    return words[:1].upper() + words[1:]
