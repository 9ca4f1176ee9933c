"""Of several readings the one governs that cannot go wrong: smallest opening, largest facing."""

from hypothesis import given

from model.job import default_job, with_texts
from model.surround import plan_surround
from model.survey import REREAD, govern_site
from tests.strategies import jobs


def site_of(**texts):
    return with_texts(default_job(), [(k.replace("__", "."), v) for k, v in texts.items()]).site


def test_smallest_opening_and_largest_facing_govern():
    site = govern_site(
        site_of(
            opening__width="36",
            readings__opening_width="35 7/8, 36 1/16",
            facing__width="78",
            readings__facing_width="78 1/4; 77",
        )
    )
    assert site.opening.width == 35.875
    assert site.facing.width == 78.25


def test_a_site_read_once_is_the_same_site():
    site = site_of()
    assert govern_site(site) is site


def test_the_surround_is_worked_out_for_the_governing_reading_and_keeps_what_was_typed():
    job = with_texts(default_job(), [("readings.opening_width", "35")])
    surround = plan_surround(job)
    assert surround.layout.opening_side == 17.5
    assert surround.asked is job
    assert plan_surround(default_job()).asked is None
    assert surround.job.site.opening.width == 35


@given(jobs())
def test_a_governing_reading_is_one_of_the_readings(job):
    governed = govern_site(job.site)
    for reread in REREAD:
        readings = reread.list_readings(job.site)
        assert reread.list_readings(governed)[0] == reread.governs(readings)
