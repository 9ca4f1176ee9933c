"""Where property tests look: at the same examples in every run, or at new ones on request.

``pytest --hypothesis-profile=search`` looks for what nobody has met yet.
"""

from __future__ import annotations

from hypothesis import settings

settings.register_profile("steady", derandomize=True, deadline=None)
settings.register_profile("search", max_examples=300, deadline=None)
settings.load_profile("steady")
