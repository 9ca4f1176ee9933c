"""Mouldings from geometry: the classical elements, sections made of them, their text, and the library."""
