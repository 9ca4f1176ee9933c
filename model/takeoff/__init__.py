"""Lists taken off the boards: marks, cut list, rough sizes, saw settings, surfaces, materials, weights."""
