"""Where property tests look: at the same examples in every run, or at new ones on request.

``pytest --hypothesis-profile=search`` looks for what nobody has met yet, and for the least job that shows it.
"""

from __future__ import annotations

from typing import Any

from hypothesis import Phase, settings
from hypothesis.internal.conjecture import providers

settings.register_profile(
    "steady", derandomize=True, deadline=None, phases=(Phase.explicit, Phase.reuse, Phase.generate)
)
settings.register_profile("search", max_examples=300, deadline=None)
settings.load_profile("steady")

no_numbers_of_ours: Any = providers.Constants(
    integers=providers.SortedSet(),
    floats=providers.SortedSet(),
    bytes=providers.SortedSet(),
    strings=providers.SortedSet(),
)
providers._get_local_constants = lambda: no_numbers_of_ours
"""Numbers that stand in the program's code would be tried more often; with each edit, and in each process by
what it has loaded, they would be others, and the examples not the same."""
