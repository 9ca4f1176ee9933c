"""Lists taken off the boards: cut list and marks."""
