"""A job without what makes no difference to the boards it takes, to tell whether two ask the same."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

from model.job import Job, default_job
from model.options import ALONE


def bare_job(job: Job) -> Job:
    """The job without its colours, photo, offer, other options and what was printed of it."""
    plain = _plain()
    return replace(
        job,
        design=replace(job.design, look=plain.design.look),
        shop=replace(job.shop, offer=plain.shop.offer),
        purchase=replace(job.purchase, printed=()),
        options=ALONE,
        photo=None,
    )


@cache
def _plain() -> Job:
    return default_job()
