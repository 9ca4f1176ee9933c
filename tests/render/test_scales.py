"""The choice of a scale."""

import pytest

from render.scales import ARCHITECTURAL, METRIC, choose_scale, list_scales, scale_caption


@pytest.mark.parametrize("scales", [ARCHITECTURAL, METRIC])
def test_scales_stand_largest_first(scales):
    ratios = [scale.ratio for scale in scales]
    assert ratios == sorted(ratios)


def test_the_largest_scale_that_fits_is_chosen():
    assert choose_scale(ARCHITECTURAL, lambda ratio: 60 / ratio <= 5).ratio == 12


def test_the_smallest_scale_is_taken_when_none_fits():
    assert choose_scale(METRIC, lambda ratio: False) is METRIC[-1]


def test_millimetre_jobs_get_metric_scales_and_inch_jobs_architectural_ones():
    assert list_scales("millimetres") is METRIC
    assert list_scales("inches") is list_scales("feet_inches") is ARCHITECTURAL


def test_a_bare_ratio_is_captioned_with_the_word_scale():
    assert [scale_caption(scale) for scale in (METRIC[3], ARCHITECTURAL[4])] == ["SCALE 1:10", '1" = 1\'-0"']
