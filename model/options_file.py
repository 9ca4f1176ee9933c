"""Options as a job file holds them: a list of objects, each with its name and the rows that are its own.

The entry of the option in work has no rows, they stand at the file's top; one thrown away says so. What is
no list, or breaks a bound, goes to the faults by its path, ``options[2].column.width``.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from typing import TYPE_CHECKING, Any

from model.errors import Refused
from model.options import (
    MOST_OPTIONS,
    MOST_THROWN,
    Option,
    Options,
    check_name,
    list_options,
    own_terms,
    with_option,
)

if TYPE_CHECKING:
    from model.job import Job

OPTIONS = "options"
"""The key in a job file; left out of it while there is one design and nothing thrown away."""
NAME, IN_WORK, THROWN = "name", "in_work", "thrown_away"
WANTED = 'write a list of objects, one of them with "in_work": true'

Rows = Callable[[dict[str, Any], str], Mapping[str, Any]]
"""Reads an entry's rows, checked, by path; what is wrong is noted under the words before each path."""


def store_options(job: Job, own_rows: Callable[[Job], dict[str, Any]]) -> list[dict[str, Any]]:
    """Every option's entry in order, then those thrown away; `own_rows` gives a job's rows by group."""
    entries: list[dict[str, Any]] = []
    for i, option in enumerate(list_options(job)):
        in_work = i == job.options.place
        held = {IN_WORK: True} if in_work else own_rows(with_option(job, option))
        entries.append({NAME: option.name, **held})
    for option in job.options.thrown:
        entries.append({NAME: option.name, THROWN: True, **own_rows(with_option(job, option))})
    return entries


def read_options(
    entries: object, read_rows: Rows, build: Callable[[Mapping[str, Any]], Job], faults: list[str]
) -> Options:
    """The options that `entries` stand for. What is wrong goes to `faults`, and what is read is then moot."""
    if not isinstance(entries, list) or not entries or len(entries) > MOST_OPTIONS + MOST_THROWN:
        most = f"{WANTED} and at most {MOST_OPTIONS} in all"
        faults.append(str(Refused(OPTIONS, entries, most)))
        return Options()
    read = list(_read_entries(entries, read_rows, build, faults))
    marks = [mark for mark, _, _ in read]
    if marks.count(IN_WORK) != 1:
        faults.append(f"{OPTIONS}: {marks.count(IN_WORK)} of them are in work; {WANTED}")
        return Options()
    _check_counts(marks, faults)
    at = marks.index(IN_WORK)
    before, after = (
        tuple(option for mark, _, option in part if not mark and option)
        for part in (read[:at], read[at + 1 :])
    )
    thrown = tuple(option for mark, _, option in read if mark == THROWN and option)
    return Options(read[at][1], before, after, thrown)


def _read_entries(
    entries: list[Any], read_rows: Rows, build: Callable[[Mapping[str, Any]], Job], faults: list[str]
) -> Iterator[tuple[str, str, Option | None]]:
    """Each entry's mark (in work, thrown away or none), its name and its option, None where it is in work or
    wrong.
    """
    names: list[str] = []
    for i, entry in enumerate(entries):
        where = f"{OPTIONS}[{i}]"
        if not isinstance(entry, dict):
            faults.append(str(Refused(where, entry, 'write an object, such as {"name": "Plain columns"}')))
            yield "", "", None
            continue
        held = dict(entry)
        mark = _take_mark(held, where, faults)
        name = _take_name(held, where, names if mark != THROWN else [], faults)
        values = read_rows(held, f"{where}.")
        if mark == IN_WORK:
            if held:
                faults.append(f"{where}: it is in work, so its rows stand at the file's top")
            yield mark, name, None
        else:
            job = build(values)
            yield mark, name, Option(name, job.design, own_terms(job.shop.offer))


def _take_mark(held: dict[str, Any], where: str, faults: list[str]) -> str:
    """Which of IN_WORK and THROWN an entry says, "" for neither."""
    said = ""
    for mark in (IN_WORK, THROWN):
        value = held.pop(mark, False)
        if not isinstance(value, bool):
            faults.append(str(Refused(f"{where}.{mark}", value, "write true or leave it out")))
        elif value and said:
            faults.append(f"{where}: it cannot be in work and thrown away")
        elif value:
            said = mark
    return said


def _take_name(held: dict[str, Any], where: str, names: list[str], faults: list[str]) -> str:
    """An entry's name, which no entry before it has."""
    try:
        name = check_name(held.pop(NAME, None), names)
    except Refused as refusal:
        faults.append(f"{where}.{NAME}: {refusal}")
        return ""
    names.append(name)
    return name


def _check_counts(marks: list[str], faults: list[str]) -> None:
    thrown = marks.count(THROWN)
    for count, most, what in (
        (len(marks) - thrown, MOST_OPTIONS, "options"),
        (thrown, MOST_THROWN, "options thrown away"),
    ):
        if count > most:
            faults.append(f"{OPTIONS}: {count} {what}; keep at most {most}")
