"""Which claims about designs there are, and against which designs each is held. No holding of them."""

from __future__ import annotations

import importlib
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

from hypothesis import strategies as st

from tests.strategies import jobs

SELDOM = {
    "test_visible_areas_add_up_to_the_silhouette": 2,
    "test_every_kind_that_shows_enough_is_marked_or_named_as_left_out": 2,
    "test_what_is_seen_is_bare_and_what_is_bare_is_wood": 2,
    "test_what_shows_of_any_design_is_what_a_ray_meets_first": 40,
    "test_rays_meet_the_same_in_a_photo_of_any_design": 40,
    "test_rays_to_the_light_find_the_same_shadows_on_any_design": 40,
    "test_rays_along_the_same_lines_agree_on_any_job": 20,
    "test_it_passes_every_check_of_any_usual_fireplace": 40,
    "test_joints_of_any_job_are_as_long_when_it_is_turned_over": 40,
    "test_any_job_in_range_may_be_cured_or_not_but_never_raises": 40,
    "test_any_cure_that_is_offered_clears_its_finding_and_hides_no_harm": 40,
    "test_no_value_on_a_fine_grid_does_as_much_and_is_nearer": 40,
    "test_no_job_that_can_be_entered_has_a_picture_that_is_empty_or_cannot_be_drawn": 20,
    "test_every_finding_of_any_job_has_words_for_what_is_asked_and_a_drawing": 20,
    "test_any_finding_of_any_job_is_drawn_within_its_room": 10,
    "test_contacts_of_any_job_are_what_joining_takes_off": 20,
    "test_no_step_on_site_drives_anything_through_what_is_covered_by_then": 20,
    "test_a_way_leads_from_the_joint_through_one_board_only": 20,
}
"""Claims that are held against every so many designs only, by name."""
NARROW = 2
"""Claims about a narrower kind of design are held against every so manyth."""
TESTS = Path(__file__).parents[1]


@dataclass(frozen=True, slots=True)
class Claim:
    """A property test: what it is called, what it does, and the strategies that draw what it asks for."""

    name: str
    test: Callable[..., None]
    asks: dict[str, st.SearchStrategy[Any]]

    @property
    def every(self) -> int:
        """It is held against every so manyth design."""
        return SELDOM.get(self.name.rpartition(".")[2], 1 if self.about_any else NARROW)

    @property
    def about_any(self) -> bool:
        """Whether it is about any design at all, not about a narrower kind of them."""
        return self.asks["job"] is jobs()


@cache
def list_claims() -> tuple[Claim, ...]:
    """Every property test that asks for one job; those about the same kind of job follow each other."""
    found = list(_find_claims())
    kinds = list(dict.fromkeys([jobs(), *(claim.asks["job"] for claim in found)]))
    return tuple(sorted(found, key=lambda claim: kinds.index(claim.asks["job"])))


def _find_claims() -> Iterator[Claim]:
    for path in sorted(TESTS.rglob("test_*.py")):
        if "@given(" not in path.read_text("utf-8"):
            continue
        name = ".".join(path.relative_to(TESTS.parent).with_suffix("").parts)
        for found, test in vars(importlib.import_module(name)).items():
            asks = getattr(getattr(test, "hypothesis", None), "_given_kwargs", {})
            if "job" in asks:
                yield Claim(f"{name}.{found}", test.hypothesis.inner_test, dict(asks))
