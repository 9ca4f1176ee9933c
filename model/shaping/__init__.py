"""Shaping a drawing by its edges: what can be taken hold of, where it settles, and why there. No pointer."""
