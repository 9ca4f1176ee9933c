"""The commands for buying and cutting, as scripts use them; how good plans are is tested in tests.model."""

from __future__ import annotations

import csv
import errno
import io
import json
import os
import sys
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from app.cli import REFUSED, main
from app.commands import DISK
from app.cutting_commands import DONE, LARGEST_PRINTED
from app.demo import read_demo
from app.files import read_job_file, save_job_file
from app.stock_lists import read_stock_named
from model.cutting.frozen import freeze_plan, note_printed
from model.cutting.order import build_order
from model.cutting.plan import plan_order
from model.cutting.stock_list import StockList
from model.cutting.task import Effort
from model.job import default_job, with_texts
from model.surround import plan_surround

QUICK = ("--seconds", "0")
KEYS = {"plans", "buy", "cost", "bound", "proven", "offcuts"}


@pytest.fixture
def run(capsys: pytest.CaptureFixture[str]):
    """Runs a command; gives its exit code, what it said and what it warned of."""

    def run_it(*arguments: str) -> tuple[int, str, str]:
        code = main(arguments)
        said = capsys.readouterr()
        return code, said.out, said.err

    return run_it


def _record(run, *arguments: str) -> dict[str, Any]:
    code, out, _ = run("cutting", *arguments, "--json")
    assert code == DONE
    return json.loads(out)


def _list_pieces(record: dict[str, Any]) -> list[tuple[str, str, str]]:
    found = []
    for plan in record["plans"]:
        for sheet in plan.get("sheets", ()):
            found += sheet["pieces"]
        for board in plan.get("boards", ()):
            found += [piece for lane in board["lanes"] for piece in lane["pieces"]]
    return [(piece["job"], piece["mark"], piece["part"]) for piece in found]


def _read_table(text: str) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(text)))


def test_every_piece_of_several_jobs_is_in_the_record_once(run):
    record = _record(run, "brick", "bedroom", *QUICK)
    assert record.keys() >= KEYS
    pieces = _list_pieces(record)
    assert len(set(pieces)) == len(pieces)
    for name in ("brick", "bedroom"):
        marks = {mark for job, mark, _ in pieces if job == name}
        assert marks == set(plan_surround(read_demo(name)).marks)
    yields = [
        (s["job"], s["mark"], s["part"]) for line in record["buy"] + record["use"] for s in line["yields"]
    ]
    assert sorted(yields) == sorted(pieces)


def test_money_adds_up_and_the_bound_is_below_the_cost(run):
    record = _record(run, "demo", "--spare", "1", *QUICK)
    cost = sum(line["cost"] for line in record["buy"])
    spare = sum(line["spare_cost"] for line in record["buy"])
    assert record["cost"] == pytest.approx(cost)
    assert record["total"] == pytest.approx(cost + spare)
    assert sum(total["cost"] for total in record["totals"]) == pytest.approx(record["total"])
    assert all(line["spare"] == 1 for line in record["buy"])
    assert 0 < record["bound"] <= record["cost"]
    assert record["proven"] == (record["bound"] == record["cost"])


def test_the_shipped_jobs_are_said_to_be_priced_by_invention(run):
    code, _, warned = run("cutting", "demo", *QUICK)
    assert code == DONE
    assert "invented" in warned


def test_a_job_file_takes_the_usual_sizes_and_no_price_is_made_up(run, tmp_path: Path):
    path = tmp_path / "hall.mantel"
    save_job_file(path, default_job())
    record = _record(run, str(path), *QUICK)
    assert record["jobs"] == ["hall"]
    assert record["cost"] == record["total"] == 0
    assert len(record["missing_prices"]) == len(record["buy"]) > 0
    assert all(line["price"] is None for line in record["buy"])
    _, out, warned = run("cutting", str(path), *QUICK)
    assert "No price in the stock list" in out
    assert "invented" not in warned


def test_the_same_file_twice_is_two_jobs(run, tmp_path: Path):
    path = tmp_path / "hall.mantel"
    save_job_file(path, default_job())
    assert _record(run, str(path), str(path), *QUICK)["jobs"] == ["hall", "hall (2)"]


def test_settings_hold_for_every_job(run):
    record = _record(run, "brick", "bedroom", "--set", "board.species=white_oak", *QUICK)
    woods = {plan["wood"] for plan in record["plans"] if plan["kind"] == "board"}
    assert woods == {"white_oak"}


def test_words_name_what_is_bought_every_mark_and_the_bound(run):
    _, out, _ = run("cutting", "bedroom", *QUICK)
    for mark in plan_surround(read_demo("bedroom")).marks:
        assert mark in out
    assert "Total: $" in out
    assert "Proven: no plan costs less" in out or "of the best there can be" in out


def test_the_buying_list_is_a_table_too(run, tmp_path: Path):
    _, out, _ = run("cutting", "demo", "--csv", "--out", str(tmp_path), *QUICK)
    rows = _read_table(out)
    assert rows == _read_table((tmp_path / "buying list.csv").read_text())
    assert sum(int(row["pieces"]) for row in rows) == len(plan_surround(read_demo("demo")).boards)
    plan = _read_table((tmp_path / "cutting plan.csv").read_text())
    assert sorted(row["mark"] for row in plan) == sorted(plan_surround(read_demo("demo")).marks)


def test_what_changed_since_the_list_was_printed_is_said(run, tmp_path: Path):
    printed = tmp_path / "printed.json"
    first = _record(run, "bedroom", "--printed", str(printed), *QUICK)
    assert first["changes"] is None
    assert _record(run, "bedroom", "--printed", str(printed), *QUICK)["changes"] == []
    more = _record(run, "bedroom", "--spare", "1", "--printed", str(printed), *QUICK)["changes"]
    assert {change["now"] - change["before"] for change in more} == {1}
    assert len(more) == len(first["buy"])


@pytest.mark.parametrize("spoilt", ["{", "[]", '{"mantelwright_printed": 99}', "\x00"])
def test_a_spoilt_record_of_what_was_printed_is_refused_by_its_path_and_left_as_it_is(run, tmp_path, spoilt):
    printed = tmp_path / "printed.json"
    printed.write_text(spoilt)
    code, out, err = run("cutting", "bedroom", "--printed", str(printed), *QUICK)
    assert (code, out) == (REFUSED, "")
    assert str(printed) in err
    assert printed.read_text() == spoilt


def test_a_folder_in_place_of_the_record_is_told_as_trouble_with_the_file(run, tmp_path):
    code, _, err = run("cutting", "bedroom", "--printed", str(tmp_path), *QUICK)
    assert code == DISK
    assert str(tmp_path) in err


def test_a_job_that_was_bought_for_buys_nothing_again_and_says_what_changed(run, tmp_path: Path):
    job = default_job()
    plan = plan_order(
        build_order([("hall", plan_surround(job))], read_stock_named("example")), Effort(lambda: True)
    )
    purchase = note_printed(freeze_plan(job.purchase, plan))
    path = tmp_path / "hall.mantel"
    save_job_file(path, replace(job, purchase=purchase))
    record = _record(run, str(path), "--stock", "example", *QUICK)
    assert (record["cost"], record["plans"]) == (0, [])
    assert len(record["from_bought_boards"]) == len(plan_surround(job).boards)
    assert record["changes"] == []
    save_job_file(path, with_texts(read_job_file(path), [("shelf.overhang_end", "12")]))
    changes = _record(run, str(path), "--stock", "example", *QUICK)["changes"]
    assert changes
    assert all(change["now"] > change["before"] for change in changes)


@pytest.fixture
def hall(tmp_path: Path) -> Path:
    path = tmp_path / "hall.mantel"
    save_job_file(path, default_job())
    return path


def test_what_was_bought_is_noted_in_the_file_and_kept_to(run, hall: Path):
    code, _, warned = run("cutting", str(hall), "--stock", "example", "--bought", *QUICK)
    assert code == DONE
    boards = read_job_file(hall).purchase.boards
    assert f"{len(boards)} boards and sheets bought" in warned
    assert read_job_file(hall).purchase.printed
    assert (
        "still to be cut as planned: boards 1, 2"
        in run("cutting", str(hall), "--stock", "example", *QUICK)[1]
    )
    save_job_file(hall, with_texts(read_job_file(hall), [("shelf.height", "56")]))
    changed = _record(run, str(hall), "--stock", "example", *QUICK)
    assert 0 < len(_list_pieces(changed)) < len(plan_surround(default_job()).boards)
    assert any(line["heading"] == "On hand" for line in changed["use"])


def test_boards_bought_already_are_in_plan_record_and_words_with_what_is_smaller_now(run, hall: Path):
    run("cutting", str(hall), "--stock", "example", "--bought", *QUICK)
    boards = read_job_file(hall).purchase.boards
    save_job_file(hall, with_texts(read_job_file(hall), [("column.width", "7")]))
    out = hall.parent / "plan"
    arguments = ("cutting", str(hall), "--stock", "example", *QUICK)
    _, words, _ = run(*arguments, "--out", str(out))
    with (out / "cutting plan.csv").open(newline="") as file:
        rows = list(csv.DictReader(file))
    bought = [row for row in rows if row["bought"] == "yes"]
    assert len(bought) == sum(len(board.pieces) for board in boards)
    smaller = {row["mark"]: row for row in bought if row["length_now_in"]}
    assert smaller
    assert all(
        float(row["length_now_in"]) < float(row["length_in"])
        or float(row["width_now_in"]) < float(row["width_in"])
        for row in smaller.values()
    )
    record = _record(run, *arguments[1:])
    assert {piece["mark"] for piece in record["smaller_since"]} == smaller.keys()
    assert sum(len(group.get("boards", group.get("sheets"))) for group in record["bought"]) == len(boards)
    assert words.count("Smaller since: ") == len(record["smaller_since"])
    assert "bought already" in words


def test_a_plan_as_it_was_bought_is_smaller_nowhere(run, hall: Path):
    run("cutting", str(hall), "--stock", "example", "--bought", *QUICK)
    record = _record(run, str(hall), "--stock", "example", *QUICK)
    assert record["smaller_since"] == []
    assert record["bought"]


def test_what_is_sawn_is_noted_by_number(run, hall: Path):
    run("cutting", str(hall), "--stock", "example", "--bought", *QUICK)
    code, out, _ = run("cutting", str(hall), "--stock", "example", "--sawn", "1,3-4", *QUICK)
    assert code == DONE
    assert [b.number for b in read_job_file(hall).purchase.boards if b.is_cut] == [1, 3, 4]
    assert "still to be cut as planned: boards 2, 5" in out


@pytest.mark.parametrize(
    ("more", "words"),
    [
        (("--sawn", "1"), "none was bought yet"),
        (("--sawn", "first"), "such as 1,3-5"),
        (("--bought", "--set", "opening.width=36"), "leave --set out"),
        (("demo", "--bought"), "name one job file"),
    ],
)
def test_what_cannot_be_noted_is_refused_and_the_file_is_as_it_was(
    run, hall: Path, more: tuple[str, ...], words: str
):
    before = hall.read_bytes()
    code, out, warned = run("cutting", str(hall), *more, *QUICK)
    assert (code, out) == (REFUSED, "")
    assert words in warned
    assert hall.read_bytes() == before


def test_what_nothing_holds_is_named_and_the_rest_is_planned(run, tmp_path: Path):
    stock = tmp_path / "short.csv"
    stock.write_text("kind,wood,name,thickness,width,length,price\nboard,poplar,1x12,0.75,11.25,72,30\n")
    record = _record(run, "demo", "--stock", str(stock), *QUICK)
    assert record["cost"] > 0
    marks = {piece["mark"] for short in record["short"] for piece in short["pieces"]}
    assert {"S1", "S2", "S6"} <= marks
    assert all(short["wants_length"] > 0 and short["why"] for short in record["short"])
    _, out, _ = run("cutting", "demo", "--stock", str(stock), *QUICK)
    assert "Not to be had: S6" in out


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (("cutting", "nowhere.mantel"), "no such file"),
        (("cutting", "demo", "--stock", "nowhere.yard"), "no such file"),
        (("cutting", "demo", "--spare", "some"), "--spare"),
        (("cutting", "demo", "--seconds", "-1"), "--seconds"),
        (("stock", "nowhere.csv"), "no such file"),
        (("stock", "usual", "--out", "list.txt"), "ends in .yard or .csv"),
    ],
)
def test_bad_input_is_refused_in_words(run, arguments: tuple[str, ...], words: str):
    code, out, warned = run(*arguments)
    assert (code, out) == (REFUSED, "")
    assert words in warned


def test_a_bad_list_is_named_by_file_row_and_field(run, tmp_path: Path):
    stock = tmp_path / "bad.yard"
    stock.write_text('{"yard": 1, "sold": [{"kind": "board", "price": 0}]}')
    code, _, warned = run("cutting", "demo", "--stock", str(stock))
    assert code == REFUSED
    assert "bad.yard: sold row 1, price 0" in warned


def test_a_list_goes_to_a_table_and_back(run, tmp_path: Path):
    table, own = tmp_path / "yard.csv", tmp_path / "own.yard"
    assert run("stock", "example", "--out", str(table))[0] == DONE
    assert run("stock", str(table), "--out", str(own))[0] == DONE
    example = read_stock_named("example")
    back = read_stock_named(str(own))
    assert (back.sold, back.on_hand) == (example.sold, example.on_hand)
    assert run("stock", "example", "--csv")[1].splitlines() == table.read_text().splitlines()


def test_a_table_keeps_what_the_list_it_goes_into_says_of_all_rows(run, tmp_path: Path):
    from app.stock_lists import save_stock_list

    own, table = tmp_path / "own.yard", tmp_path / "yard.csv"
    save_stock_list(own, StockList(currency="EUR", spare=3))
    run("stock", "example", "--out", str(table))
    run("stock", str(table), "--out", str(own))
    back = read_stock_named(str(own))
    assert (back.currency, back.spare, bool(back.sold)) == ("EUR", 3, True)


def test_a_list_is_shown_in_words(run):
    code, out, _ = run("stock", "example")
    assert code == DONE
    assert "all prices invented" in out
    assert "1x4 yellow poplar, 8'-0\"" in out
    assert "On hand" in out


def test_pieces_out_of_a_beam_on_hand_are_said_to_be(run):
    beam = ("use=shelf_edge", "name=old beam", "length=240", "width=8", "thickness=2")
    settings = [word for setting in beam for word in ("--set", f"piece_one.{setting}")]
    record = _record(run, "demo", *settings, *QUICK)
    assert {piece["out_of"] for piece in record["from_pieces_on_hand"]} == {"old beam"}
    job = with_texts(read_demo(), [(f"piece_one.{s.split('=')[0]}", s.split("=")[1]) for s in beam])
    assert len(record["from_pieces_on_hand"]) + len(_list_pieces(record)) == len(plan_surround(job).boards)


def test_words_say_which_prices_the_list_lacks(run):
    code, out, _ = run("cutting", "bedroom", "--stock", "usual", *QUICK)
    assert code == DONE
    (line,) = [line for line in out.splitlines() if line.startswith("No price in the stock list")]
    assert "so not counted: " in line


def test_what_was_printed_is_noted_only_once_it_is_said_and_written(run, tmp_path: Path, monkeypatch):
    printed, out = tmp_path / "printed.json", tmp_path / "cut"
    out.write_text("in the way")
    code, _, _ = run("cutting", "bedroom", "--printed", str(printed), "--out", str(out), *QUICK)
    assert code == DISK
    assert not printed.exists()

    def refuse(_terminal: object) -> None:
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    monkeypatch.setattr("app.terminal.Terminal.finish", refuse)
    monkeypatch.setattr("app.cli.silence_output", lambda: None)  # the test's own output goes on
    code, _, err = run("cutting", "bedroom", "--printed", str(printed), *QUICK)
    assert code == DISK
    assert "could not be written out: the disk is full" in err
    assert not printed.exists()


def test_no_more_of_a_printed_record_is_read_than_is_allowed(run, tmp_path: Path):
    printed = tmp_path / "printed.json"
    with printed.open("wb") as file:
        file.truncate(LARGEST_PRINTED + 1)
    code, _, err = run("cutting", "bedroom", "--printed", str(printed), *QUICK)
    assert code == DISK
    assert "it is too large to be a printed list's record" in err


@pytest.mark.skipif(sys.platform != "linux", reason="elsewhere a file's name is text")
def test_a_job_whose_file_name_is_no_text_is_cut_all_the_same(run, tmp_path: Path):
    job, out = tmp_path / os.fsdecode(b"bad\xff.mantel"), tmp_path / "cut"
    save_job_file(job, default_job())
    code, _, _ = run("cutting", str(job), "--out", str(out), *QUICK)
    assert code == DONE
    assert "bad\N{REPLACEMENT CHARACTER}" in (out / "cutting plan.csv").read_text(encoding="utf-8-sig")
