"""Options on the command line: which of a job's designs a command works on, and what its files are called."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest

from app.cli import main
from app.demo import read_demo
from app.files import read_job_file, save_job_file
from app.outputs import OFFER, name_output
from model.job import Job, with_texts
from model.options import add_option, rename, take_up


@pytest.fixture
def job() -> Job:
    """A passing design in work, one after it whose shelf is too deep for its height."""
    job = add_option(rename(read_demo("bedroom"), 0, "Quiet"))
    return take_up(
        rename(with_texts(job, [("shelf.depth", "14"), ("frieze.height", "6")]), 1, "Deep shelf"), 0
    )


@pytest.fixture
def path(job: Job, tmp_path: Path) -> Path:
    save_job_file(tmp_path / "room.mantel", job)
    return tmp_path / "room.mantel"


def _boards(capsys, *arguments: str):
    assert main(["boards", *arguments, "--json"]) == 0
    return json.loads(capsys.readouterr().out)


def test_a_command_works_on_the_option_in_work_or_on_the_one_that_is_named(path: Path, capsys):
    usual = _boards(capsys, str(path))
    assert usual == _boards(capsys, str(path), "--option", "quiet")
    assert usual != _boards(capsys, str(path), "--option", "Deep shelf")


def test_settings_are_made_in_the_option_that_is_named(path: Path, capsys):
    deep = _boards(capsys, str(path), "--option", "Deep shelf")
    set_back = _boards(capsys, str(path), "--option", "Deep shelf", "--set", "shelf.depth=10")
    assert deep != set_back


def test_an_option_that_is_not_there_is_refused_with_those_there_are(path: Path, capsys):
    assert main(["check", str(path), "--option", "Loud"]) == 2
    assert 'option "Loud": this job has Quiet, Deep shelf' in capsys.readouterr().err


def test_files_of_one_of_several_options_are_called_after_it(path: Path, job: Job, tmp_path: Path, capsys):
    assert main(["labels", str(path), "--option", "Deep shelf", "--out", str(tmp_path / "labels.pdf")]) == 0
    assert name_output(job, OFFER).endswith(", Quiet - offer.pdf")
    assert name_output(take_up(job, 1), OFFER).endswith(", Deep shelf - offer.pdf")
    assert name_output(read_demo("bedroom"), OFFER) == f"{read_demo('bedroom').about.name} - offer.pdf"


def test_a_first_design_is_made_of_the_option_that_is_named_and_keeps_the_others(
    path: Path, tmp_path, capsys
):
    out = tmp_path / "first.mantel"
    assert main(["start", str(path), "--option", "Deep shelf", "--out", str(out)]) == 0
    made = read_job_file(out)
    assert made.options.names == ("Quiet", "Deep shelf")
    assert made.options.name == "Deep shelf"
    assert take_up(made, 0).design == read_job_file(path).design


def test_what_is_cut_says_which_option_it_is_cut_for(path: Path, capsys):
    arguments = ["cutting", str(path), "--stock", "example", "--seconds", "1", "--json"]
    assert main([*arguments, "--option", "Deep shelf"]) == 0
    assert "room, Deep shelf" in capsys.readouterr().out


def test_an_option_without_a_job_is_refused(capsys):
    assert main(["mouldings", "--option", "Quiet"]) == 2
    assert "name the job that has it" in capsys.readouterr().err


def test_all_options_are_compared_with_their_prices(path: Path, capsys):
    arguments = ["options", str(path), "--stock", "example", "--set", "offer.hour=60"]
    assert main([*arguments, "--json"]) == 0
    told = json.loads(capsys.readouterr().out)
    quiet, deep = told["options"]
    assert (quiet["name"], quiet["in_work"], deep["in_work"]) == ("Quiet", True, False)
    assert deep["price"] != quiet["price"] > 0
    assert quiet["missing"] == []
    assert any(line["path"] == "frieze.height" for line in told["differences"])


def test_what_a_price_wants_is_said_under_the_options_in_words(tmp_path: Path, capsys):
    """Shipped jobs have no hourly rate in them, or the list no price: what is missing is named, once each."""
    bare = with_texts(add_option(rename(read_demo("bedroom"), 0, "Quiet")), [("offer.hour", "")])
    save_job_file(tmp_path / "room.mantel", bare)
    assert main(["options", str(tmp_path / "room.mantel")]) == 0
    lines = capsys.readouterr().out.splitlines()
    (wanted,) = (line for line in lines if line.startswith("Wanted for a price: "))
    items = wanted.removeprefix("Wanted for a price: ").removesuffix(".").split("; ")
    assert items == sorted(set(items))


def test_words_say_what_differs_between_options(path: Path, capsys):
    assert main(["options", str(path)]) == 0
    lines = [re.split(r" {2,}", line.strip()) for line in capsys.readouterr().out.splitlines()]
    assert ["About", "Of what", "Quiet", "Deep shelf"] in lines
    (height,) = [line for line in lines if "Frieze: height" in line]
    assert height[0] == "Settings"
    assert height[-1] == '6"'
    assert height[-1] != height[-2]
