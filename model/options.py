"""Several designs for one fireplace: the one in work, the others in order, and those thrown away.

Every step is a function from a job to a job. How options stand in a file is model.options_file's business.
What was bought belongs to none of them: boards that lie there serve whichever option is built.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, fields, replace
from typing import TYPE_CHECKING

from model.design import Design
from model.errors import Refused
from model.rows.row import is_control
from model.shop import Offer

if TYPE_CHECKING:
    from model.job import Job

MOST_OPTIONS = 100
"""In one job, those thrown away not counted."""
MOST_THROWN = 20
"""Thrown away and still there; beyond it the one thrown away first is gone."""
LONGEST_NAME = 60
FIRST_NAME = "Option 1"
FIELD = "option name"


@dataclass(frozen=True, slots=True)
class Own:
    """What of the offer goes with one design: fields of Offer by the same names, as that says."""

    hours: float | None
    cutting_hours: float | None
    building_hours: float | None
    fitting_hours: float | None
    finishing_hours: float | None
    sundries: float | None
    colour: str


OWN = tuple(field.name for field in fields(Own))


@dataclass(frozen=True, slots=True)
class Option:
    """One design by its name, with what of the offer is its own."""

    name: str
    design: Design
    own: Own


@dataclass(frozen=True, slots=True)
class Options:
    """What a job holds beside the design in work, which is called `name`: options before and after it in
    order, and those that were thrown away, the latest first.
    """

    name: str = FIRST_NAME
    before: tuple[Option, ...] = ()
    after: tuple[Option, ...] = ()
    thrown: tuple[Option, ...] = ()

    @property
    def place(self) -> int:
        """Where the one in work stands, from 0."""
        return len(self.before)

    @property
    def count(self) -> int:
        """How many there are, those thrown away not counted."""
        return len(self.before) + 1 + len(self.after)

    @property
    def names(self) -> tuple[str, ...]:
        """All names in order."""
        return (*(each.name for each in self.before), self.name, *(each.name for each in self.after))


ALONE = Options()
"""One design, as in a job that says nothing of options."""


def check_name(name: object, others: Iterable[str]) -> str:
    """The name with its spaces put right. Raises Refused for what is none, too long, or one of `others`."""
    if not isinstance(name, str) or any(is_control(c) for c in name):
        raise Refused(FIELD, name, "write a line of text")
    plain = " ".join(name.split())
    if not plain:
        raise Refused(FIELD, name, f"write a name, such as {FIRST_NAME}")
    if len(plain) > LONGEST_NAME:
        raise Refused(FIELD, name, f"write at most {LONGEST_NAME} characters")
    if plain.casefold() in {other.casefold() for other in others}:
        raise Refused(FIELD, plain, "another option is called so already; write another name")
    return plain


def own_terms(offer: Offer) -> Own:
    """What of an offer goes with the design."""
    return Own(*(getattr(offer, name) for name in OWN))


def with_option(job: Job, option: Option) -> Job:
    """The job with an option's rows where those in work stand; what it holds of options is as it was."""
    offer = replace(job.shop.offer, **{name: getattr(option.own, name) for name in OWN})
    return replace(job, design=option.design, shop=replace(job.shop, offer=offer))


def list_options(job: Job) -> tuple[Option, ...]:
    """All options in order, the one in work among them."""
    options = job.options
    in_work = Option(options.name, job.design, own_terms(job.shop.offer))
    return (*options.before, in_work, *options.after)


def take_up(job: Job, place: int) -> Job:
    """The job with the option at `place`, from 0, in work; the one before stays where it stood."""
    return _arrange(job, list_options(job), place)


def alone(job: Job, place: int) -> Job:
    """The job as if the option at `place` were its only design."""
    return replace(with_option(job, list_options(job)[place]), options=ALONE)


def named_alone(job: Job) -> Job:
    """The job for what is made of it: where it has several options, the one in work is in its name."""
    if job.options.count == 1:
        return job if job.options == ALONE else replace(job, options=ALONE)
    about = replace(job.about, name=f"{job.about.title}, {job.options.name}")
    return replace(job, about=about, options=ALONE)


def find_option(job: Job, name: str) -> int:
    """Where the option called `name` stands. Raises Refused naming those there are."""
    names = [each.casefold() for each in job.options.names]
    wanted = " ".join(name.split()).casefold()
    if wanted not in names:
        shown = ", ".join(job.options.names[:6]) + (", …" if len(names) > 6 else "")
        raise Refused("option", name, f"this job has {shown}")
    return names.index(wanted)


def add_option(job: Job) -> Job:
    """A copy of the design in work, after it, under a free name, put in work. Raises Refused when full."""
    _refuse_full(job)
    options, place = list(list_options(job)), job.options.place
    options.insert(place + 1, replace(options[place], name=free_name(job.options.names)))
    return _arrange(job, options, place + 1)


def duplicate(job: Job, place: int) -> Job:
    """A copy of the option at `place` after it, named after it, put in work. Raises Refused when full."""
    _refuse_full(job)
    options = list(list_options(job))
    copy = replace(options[place], name=name_apart(options[place].name, job.options.names))
    options.insert(place + 1, copy)
    return _arrange(job, options, place + 1)


def rename(job: Job, place: int, name: str) -> Job:
    """The option at `place` called `name`. Raises Refused."""
    options = list(list_options(job))
    others = [each.name for i, each in enumerate(options) if i != place]
    options[place] = replace(options[place], name=check_name(name, others))
    return _arrange(job, options, job.options.place)


def move(job: Job, place: int, way: int) -> Job:
    """The option at `place` so many places on, or back where less than 0, as far as there are any."""
    options, in_work = list(list_options(job)), job.options.place
    target = min(max(place + way, 0), len(options) - 1)
    order = list(range(len(options)))
    order.insert(target, order.pop(place))
    return _arrange(job, [options[i] for i in order], order.index(in_work))


def throw_away(job: Job, place: int) -> Job:
    """Without the option at `place`, which can be brought back. Raises Refused for the only one.

    Where it was in work, the one after it is, or else the one before it.
    """
    options = list(list_options(job))
    if len(options) == 1:
        raise Refused("option", options[place].name, "keep at least one; add another first")
    thrown = (options.pop(place), *job.options.thrown)[:MOST_THROWN]
    in_work = job.options.place - (place < job.options.place)
    return _arrange(job, options, min(in_work, len(options) - 1), thrown)


def bring_back(job: Job, which: int) -> Job:
    """The `which`-th of those thrown away, last in order and in work. Raises Refused when full."""
    _refuse_full(job)
    thrown = list(job.options.thrown)
    back = thrown.pop(which)
    options = (*list_options(job), replace(back, name=name_apart(back.name, job.options.names)))
    return _arrange(job, options, len(options) - 1, tuple(thrown))


def free_name(names: Sequence[str]) -> str:
    """The next ``Option 3`` that is not taken."""
    taken = {name.casefold() for name in names}
    number = len(names) + 1
    while f"option {number}" in taken:
        number += 1
    return f"Option {number}"


def name_apart(name: str, names: Iterable[str]) -> str:
    """`name`, or with a number behind it where it is taken, cut so that it is never too long."""
    taken = {each.casefold() for each in names}
    number, tried = 1, name
    while tried.casefold() in taken:
        number += 1
        tail = f" ({number})"
        tried = name[: LONGEST_NAME - len(tail)].rstrip() + tail
    return tried


def _arrange(
    job: Job, options: Sequence[Option], in_work: int, thrown: tuple[Option, ...] | None = None
) -> Job:
    """The job with these options, the one at `in_work` in work."""
    taken = options[in_work]
    kept = Options(
        taken.name,
        tuple(options[:in_work]),
        tuple(options[in_work + 1 :]),
        job.options.thrown if thrown is None else thrown,
    )
    return replace(with_option(job, taken), options=kept)


def _refuse_full(job: Job) -> None:
    if job.options.count >= MOST_OPTIONS:
        raise Refused("options", job.options.count, f"a job holds at most {MOST_OPTIONS}; throw one away")
