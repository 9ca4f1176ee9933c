"""How long and how large: measured figures, each beside a baseline of the same run. No claims, no tests."""
