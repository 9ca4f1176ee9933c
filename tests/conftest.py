"""Where property tests look: at the same examples in every run, or at new ones on request.

``pytest --hypothesis-profile=search`` looks for what nobody has met yet, and for the least job that shows it.
"""

from __future__ import annotations

from hypothesis import Phase, settings

settings.register_profile(
    "steady", derandomize=True, deadline=None, phases=(Phase.explicit, Phase.reuse, Phase.generate)
)
settings.register_profile("search", max_examples=300, deadline=None)
settings.load_profile("steady")
