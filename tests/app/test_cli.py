"""The command line as scripts and print shops use it: real commands on the shipped jobs."""

from __future__ import annotations

import csv
import io
import json
import os
import resource
import signal
import subprocess
import sys
from contextlib import suppress
from pathlib import Path

import pytest

from app.arguments import COMMANDS, PAPERS, build_parser, is_command
from app.cli import main
from app.demo import list_demos, read_demo
from app.files import read_job_file, save_job_file
from app.terminal import Terminal
from model.job import default_job, with_texts, write_job
from model.parameters import TABLE
from model.surround import plan_surround
from render.views import VIEWS

ROOT = Path(__file__).resolve().parents[2]
FINDING_KEYS = (
    "check", "rule", "standing", "source", "status", "part", "measured", "limit", "bound", "unit", "message",
    "cure",
)  # fmt: skip
CUT_KEYS = (
    "mark", "name", "assembly", "quantity", "stock", "length", "width", "thickness", "ends", "notes",
    "pieces",
)  # fmt: skip
PASSING = [name for name in list_demos() if name != "too-close"]


def _start(*arguments: str, **options) -> subprocess.Popen[str]:
    environment = {**os.environ, "PYTHONPATH": str(ROOT), "QT_QPA_PLATFORM": "offscreen"}
    return subprocess.Popen(
        [sys.executable, "-m", "app", *arguments], env=environment, text=True, encoding="utf-8",
        **{"stdout": subprocess.PIPE, "stderr": subprocess.PIPE, **options},
    )  # fmt: skip


def _run(*arguments: str, **options) -> tuple[int, str, str]:
    with _start(*arguments, **options) as process:
        out, err = process.communicate(timeout=60)
    return process.returncode, out, err


def _json(capsys, *arguments: str):
    main(arguments)
    return json.loads(capsys.readouterr().out)


@pytest.mark.parametrize("name", ["demo", *PASSING])
def test_a_shipped_job_passes_its_checks(name, capsys):
    assert main(["check", name]) == 0
    assert "over" not in capsys.readouterr().out.split("Checks: ")[1].split("\n")[0]


def test_a_job_that_breaks_a_rule_ends_in_code_one(capsys):
    assert main(["check", "too-close"]) == 1
    assert main(["check", "too-close", "--json"]) == 1
    capsys.readouterr()


@pytest.mark.parametrize("name", list_demos())
def test_checks_for_scripts_have_the_promised_fields(name, capsys):
    records = _json(capsys, "check", name, "--json")
    assert records
    for record in records:
        assert tuple(record) == FINDING_KEYS
        assert record["status"] in ("pass", "warn", "fail", "unknown")
        assert record["standing"] in (
            "published",
            "common practice",
            "from memory",
            "shop choice",
            "entered by the user",
            "not entered",
        )
        assert record["check"]
        assert record["message"]
        for value in (record["measured"], record["limit"]):
            assert value is None or isinstance(value, int | float)
    assert any(record["status"] == "fail" for record in records) == (name == "too-close")


def test_guides_stand_among_the_records_and_never_fail(capsys):
    guides = [r for r in _json(capsys, "check", "too-close", "--json") if r["check"] == "proportion"]
    assert len(guides) >= 2
    assert all(r["status"] == "pass" and r["message"].startswith("guide: ") for r in guides)
    assert len({r["source"] for r in guides}) >= 2


def test_checks_in_words_are_worst_first_and_say_who_decides(capsys):
    main(["check", "too-close"])
    out = capsys.readouterr().out
    words = [line.split()[0] for line in out.splitlines() if line[:1].isupper() and line.split()[0].isupper()]
    order = ["OVER", "NOT", "CLOSE", "WITHIN"]
    assert words == sorted(words, key=order.index)
    assert words[0] == "OVER"
    joined = " ".join(out.split())
    assert (
        "The adopted local code, the appliance's manual and the authority having jurisdiction decide"
        in joined
    )
    assert "Cure: " in out
    assert "never rules to keep" in joined


@pytest.mark.parametrize("name", list_demos())
def test_the_cut_list_for_scripts_has_the_promised_fields_and_every_board(name, capsys):
    records = _json(capsys, "boards", name, "--json")
    for record in records:
        assert tuple(record)[: len(CUT_KEYS)] == CUT_KEYS
        assert record["length"] > 0
    assert sum(record["quantity"] for record in records) == len(plan_surround(read_demo(name)).boards)


def test_the_cut_list_reads_as_a_spreadsheet_and_as_a_table(capsys):
    marks = [record["mark"] for record in _json(capsys, "boards", "demo", "--json")]
    main(["boards", "demo", "--csv"])
    rows = list(csv.DictReader(io.StringIO(capsys.readouterr().out)))
    assert [row["mark"] for row in rows] == marks
    main(["boards", "demo"])
    heading, *lines = capsys.readouterr().out.splitlines()
    assert heading.startswith("Mark  Piece")
    assert [line.split()[0] for line in lines] == marks


def test_the_mesh_holds_every_board_and_may_go_with_a_list(tmp_path, capsys):
    out = tmp_path / "boards.obj"
    assert main(["boards", "demo", "--mesh", str(out)]) == 0
    assert capsys.readouterr().out == f"{out}\n"
    objects = [line[2:] for line in out.read_text().splitlines() if line.startswith("o ")]
    assert objects == list(plan_surround(read_demo()).marks)
    assert _json(capsys, "boards", "demo", "--json", "--mesh", str(out))


@pytest.mark.parametrize("view", VIEWS)
@pytest.mark.parametrize(
    ("ending", "start"), [("svg", b"<"), ("dxf", b"  0\n"), ("pdf", b"%PDF"), ("png", b"\x89PNG")]
)
def test_each_view_is_written_in_each_form(view, ending, start, tmp_path, capsys):
    out = tmp_path / f"{view}.{ending.upper()}"
    assert main(["draw", "demo", "--view", view, "--out", str(out), "--clearance"]) == 0
    assert capsys.readouterr().out == f"{out}\n"
    assert out.read_bytes().startswith(start)
    assert list(tmp_path.iterdir()) == [out]


def test_papers_are_those_there_are():
    from render.sheets import PAPERS as SHEETS

    assert PAPERS.split("|") == list(SHEETS)


def test_a_drawing_takes_the_scale_it_is_asked_for(tmp_path, capsys):
    widths = {}
    for scale in ("1:12", "1:24", '1/2" = 1\'-0"'):
        out = tmp_path / "front.svg"
        assert main(["draw", "demo", "--view", "front", "--out", str(out), "--scale", scale]) == 0
        widths[scale] = float(out.read_text().split('width="')[1].split("in")[0])
    assert widths["1:24"] < widths["1:12"]
    assert widths['1/2" = 1\'-0"'] == widths["1:24"]
    capsys.readouterr()


@pytest.mark.parametrize("command", ["steps", "days", "check", "fixing", "boards", "materials"])
def test_each_list_is_printed_in_words_as_records_and_as_a_table(command, capsys):
    assert main([command, "demo"]) == 0
    words = capsys.readouterr().out
    assert main([command, "demo", "--json"]) == 0
    assert json.loads(capsys.readouterr().out)
    assert main([command, "demo", "--csv"]) == 0
    table = list(csv.reader(io.StringIO(capsys.readouterr().out)))
    assert len({len(row) for row in table}) == 1
    assert len(table) > 3
    assert len(words.splitlines()) > 3


def test_parts_of_the_packet_can_be_written_alone(tmp_path, capsys):
    arguments = ["packet", "demo", "--out", str(tmp_path), "--only", "day plan", "--only", "checks"]
    assert main(arguments) == 0
    assert sorted(path.name.split(" - ")[1] for path in tmp_path.iterdir()) == ["checks.csv", "day plan.csv"]
    capsys.readouterr()


def test_what_a_buying_list_asks_for_is_noted_on_request(tmp_path, capsys):
    path = tmp_path / "hall.mantel"
    save_job_file(path, read_demo("brick"))
    arguments = ["packet", str(path), "--out", str(tmp_path), "--only", "buying list", "--stock", "example"]
    assert main(arguments) == 0
    assert not read_job_file(path).purchase.printed
    assert main([*arguments, "--note"]) == 0
    assert "noted in" in capsys.readouterr().err
    assert read_job_file(path).purchase.printed
    assert main([*arguments, "--note", "--set", "opening.width=30"]) == 2
    assert main(["packet", "demo", "--out", str(tmp_path), "--only", "buying list", "--note"]) == 2
    assert capsys.readouterr().err.count("--note") == 2


def test_the_offer_is_a_file_of_its_own(tmp_path, capsys):
    out = tmp_path / "offer.pdf"
    assert main(["offer", "demo", "--out", str(out)]) == 0
    assert out.read_bytes().startswith(b"%PDF")
    assert main(["offer", "demo", "--out", str(tmp_path / "offer.txt")]) == 2
    capsys.readouterr()


def test_every_drawing_is_listed_and_can_be_written_by_its_name(tmp_path, capsys):
    assert main(["draw", "demo", "--list"]) == 0
    names = [line.split()[0] for line in capsys.readouterr().out.splitlines()[1:]]
    assert {"front", "picture", "step_3", "anchors", "moulding_bed", "part_frieze_front"} <= set(names)
    for name in names:
        if not name.startswith(("step_1", "part_shelf", "part_right")):
            assert main(["draw", "demo", "--view", name, "--out", str(tmp_path / f"{name}.svg")]) == 0, name
            assert (tmp_path / f"{name}.svg").read_text().count("<path") > 2
    capsys.readouterr()


@pytest.mark.parametrize("form", ["png", "dxf", "pdf"])
@pytest.mark.parametrize("name", ["picture", "detail_shelf_edge", "step_3", "moulding_bed"])
def test_a_drawing_that_is_no_view_is_written_in_each_form(name, form, tmp_path, capsys):
    out = tmp_path / f"a.{form}"
    assert main(["draw", "demo", "--view", name, "--out", str(out)]) == 0
    assert out.stat().st_size > 2000
    capsys.readouterr()


def test_clearance_is_drawn_on_request_only(tmp_path, capsys):
    plain, marked = tmp_path / "a.svg", tmp_path / "b.svg"
    main(["draw", "too-close", "--view", "front", "--out", str(plain)])
    main(["draw", "too-close", "--view", "front", "--out", str(marked), "--clearance"])
    assert len(marked.read_text()) > len(plain.read_text())
    capsys.readouterr()


@pytest.mark.parametrize("paper", PAPERS.split("|"))
def test_a_packet_is_files_named_after_the_job(paper, tmp_path, capsys):
    folder = tmp_path / "new" / "packet"
    assert main(["packet", "demo", "--out", str(folder), "--paper", paper, "--date", "2001-02-03"]) == 0
    said = capsys.readouterr().out.splitlines()
    assert sorted(said) == sorted(str(path) for path in folder.rglob("*.*"))
    suffixes = {path.suffix for path in folder.rglob("*.*")}
    assert suffixes == {".csv", ".dxf", ".pdf"}
    assert all(path.name.startswith(read_demo().about.name) for path in folder.iterdir())


def test_the_same_packet_is_written_twice_alike(tmp_path, capsys):
    for folder in ("one", "two"):
        main(["packet", "gas", "--out", str(tmp_path / folder), "--date", "2001-02-03"])
    capsys.readouterr()
    for path in (tmp_path / "one").rglob("*.*"):
        twin = tmp_path / "two" / path.relative_to(tmp_path / "one")
        assert path.read_bytes() == twin.read_bytes()


def test_a_job_file_is_worked_on_like_a_shipped_one(tmp_path, capsys):
    path = tmp_path / "Küche 木.mantel"
    save_job_file(path, read_demo("gas"))
    before = path.read_bytes()
    assert _json(capsys, "boards", str(path), "--json") == _json(capsys, "boards", "gas", "--json")
    assert main(["boards", str(path), "--set", "opening.width=44"]) == 0
    assert path.read_bytes() == before
    capsys.readouterr()


def test_set_changes_a_value_anywhere_and_the_last_one_counts(capsys):
    def shelf_top(*arguments: str) -> float:
        main(["boards", "--json", *arguments])
        return next(r["length"] for r in json.loads(capsys.readouterr().out) if r["name"] == "shelf top")

    plain = shelf_top("demo")
    assert shelf_top(
        "demo", "--set", "shelf.overhang_end=5", "--set", "shelf.overhang_end=6"
    ) == plain + 2 * (6 - read_demo().design.shelf.overhang_end)
    assert shelf_top("--set", "opening.width=4' 1\"", "demo") == plain + 49 - read_demo().site.opening.width
    assert main(["--set=opening.width=49", "boards", "--set", "job.name=a=b", "demo", "--json"]) == 0
    records = json.loads(capsys.readouterr().out)
    assert (
        next(r["length"] for r in records if r["name"] == "shelf top")
        == plain + 49 - read_demo().site.opening.width
    )


def test_shelf_depth_governs_and_says_so_once(capsys):
    assert read_demo().design.foremost == 4.5
    main(["check", "demo", "--set", "shelf.overhang_front=1", "--set", "shelf.depth=12"])
    said = 'mantelwright: shelf.depth governs: shelf.overhang_front is 7 1/2", not 1"\n'
    assert capsys.readouterr().err == said
    main(["check", "demo", "--set", "shelf.overhang_front=7.5", "--set", "shelf.depth=12"])
    assert capsys.readouterr().err == ""


def test_every_bad_setting_is_refused_in_one_go_by_name(capsys):
    assert (
        main(
            [
                "check",
                "demo",
                "--set",
                "opening.width=3x",
                "--set",
                "opning.height=4",
                "--set",
                "shelf.height=1",
            ]
        )
        == 2
    )
    out, err = capsys.readouterr()
    assert out == ""
    lines = err.splitlines()
    assert lines[0].startswith('mantelwright: opening.width: opening width "3x": write a length such as 36')
    assert "opning.height" in lines[1]
    assert "opening.height" in lines[1]
    assert 'from 30" to 108"' in lines[2]


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (["check", "no-such.mantel"], "no such file"),
        (["check", "."], "that is a folder"),
        (["check", "demo", "--set", "opening.width"], "write path=value"),
        (["packet", "demo", "--out", "{tmp}/p", "--paper", "a5"], "letter, tabloid, a4, a3"),
        (["draw", "demo", "--view", "back", "--out", "{tmp}/a.svg"], "front, side, plan"),
        (["draw", "demo", "--view", "front", "--out", "{tmp}/a.gif"], ".svg, .png, .dxf, .pdf"),
        (["draw", "demo", "--view", "front", "--out", "{tmp}/a"], ".svg, .png, .dxf, .pdf"),
        (["draw", "demo", "--view", "front", "--out", "{tmp}/a.svg", "--scale", "0"], "1:1 to 1:200"),
        (["draw", "demo", "--view", "front", "--out", "{tmp}/a.svg", "--scale", "nan"], "1:1 to 1:200"),
        (["draw", "demo", "--view", "front", "--out", "{tmp}/a.svg", "--paper", "a4"], "only a .pdf"),
        (["draw", "demo", "--view", "front", "--out", "{tmp}/a.pdf", "--paper", "a5"], "letter, tabloid"),
        (
            ["draw", "demo", "--view", "front", "--out", "{tmp}/a.pdf", "--scale", "12"],
            "largest scale that fits",
        ),
        (["draw", "demo", "--view", "front", "--out", "{tmp}/a.png", "--dpi", "1e9"], "30 to 600"),
        (["draw", "demo", "--view", "front", "--out", "{tmp}/a.svg", "--dpi", "96"], "only a .png"),
        (["draw", "demo", "--view", "front", "--out", "{tmp}/a.svg", "--ground", "clear"], "only a .png"),
        (["draw", "demo", "--view", "front", "--out", "{tmp}/a.png", "--ground", "pink"], "white or clear"),
        (["draw", "demo", "--view", "picture", "--out", "{tmp}/a.png", "--clearance"], "front, side, plan"),
        (["draw", "demo", "--view", "front"], "--out"),
    ],
)
def test_refused_input_ends_in_code_two_with_words_and_leaves_nothing(arguments, words, tmp_path, capsys):
    assert main([argument.format(tmp=tmp_path) for argument in arguments]) == 2
    out, err = capsys.readouterr()
    assert out == ""
    assert words in err
    assert err.startswith("mantelwright: ")
    assert "Traceback" not in err
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize(
    "line",
    ["check", "frobnicate demo", "boards demo --json --csv", "check demo --jso", "carving demo", "draw demo"],
)
def test_arguments_that_are_none_end_in_code_two(line, capsys):
    assert main(line.split()) == 2
    assert "usage: mantelwright" in capsys.readouterr().err


def test_all_faults_of_a_job_file_are_told_with_its_name(tmp_path, capsys):
    path = tmp_path / "bad.mantel"
    path.write_text('{"mantelwright": 1, "opening": {"width": 3, "hight": 30}}')
    assert main(["check", str(path)]) == 2
    err = capsys.readouterr().err.splitlines()
    assert len(err) == 2
    assert all(line.startswith(f"mantelwright: {path}: opening.") for line in err)


def test_a_job_no_reader_can_follow_is_refused_in_words(tmp_path, capsys):
    path = tmp_path / "newer.mantel"
    path.write_text(write_job(default_job()).replace('"mantelwright": 1', '"mantelwright": 99'))
    assert main(["boards", str(path)]) == 2
    assert "newer program" in capsys.readouterr().err


def test_help_names_every_command_and_ends_in_nothing_wrong(capsys):
    assert main(["--help"]) == 0
    out = capsys.readouterr().out
    assert all(f"    {command} " in out for command in COMMANDS)
    for command in COMMANDS:
        assert main([command, "--help"]) == 0
    capsys.readouterr()
    assert build_parser().prog == "mantelwright"


def test_shipped_jobs_and_parameters_can_be_listed(capsys):
    assert main(["demos"]) == 0
    assert [line.split()[0] for line in capsys.readouterr().out.splitlines()[1:]] == list(list_demos())
    assert main(["parameters"]) == 0
    assert [line.split()[0] for line in capsys.readouterr().out.splitlines()[1:]] == [
        row.path for row in TABLE
    ]


@pytest.mark.parametrize(
    ("arguments", "yes"),
    [
        (["check", "demo"], True),
        (["--set", "a=b", "check", "demo"], True),
        (["--set=a=b", "packet"], True),
        (["--help"], True),
        ([], False),
        (["demo"], False),
        (["my job.mantel"], False),
        (["--set", "check"], False),
    ],
)
def test_a_command_is_told_from_a_job_to_open(arguments, yes):
    assert is_command(arguments) is yes


def test_the_program_itself_runs_commands_and_is_silent_in_a_pipe(tmp_path):
    code, out, err = _run("packet", "demo", "--stock", "usual", "--out", str(tmp_path))
    assert (code, err) == (0, "")
    assert sorted(out.splitlines()) == sorted(map(str, tmp_path.rglob("*.*")))
    code, out, err = _run("check", "too-close", "--json")
    assert (code, err) == (1, "")
    assert json.loads(out)


def test_progress_is_shown_to_someone_who_watches(tmp_path):
    watched, end = os.openpty()
    code, _, _ = _run("packet", "demo", "--out", str(tmp_path), stderr=end)
    os.close(end)
    seen = os.read(watched, 65536).decode()
    os.close(watched)
    assert code == 0
    assert "%" in seen
    assert seen.rstrip(" ").endswith("\r")


def test_a_reader_that_leaves_early_is_no_trouble():
    with _start("boards", "demo", "--json") as process:
        process.stdout.close()
        err = process.stderr.read()
    assert "Traceback" not in err
    assert err == ""
    assert process.returncode == 141


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="needs a device that is always full")
def test_results_that_find_no_room_are_told():
    with open("/dev/full", "w") as full:
        code, _, err = _run("boards", "demo", stdout=full)
    assert code == 3
    assert err == "mantelwright: the results could not be written out: the disk is full\n"


@pytest.mark.parametrize("form", ["obj", "svg", "pdf"])
def test_a_disk_that_fails_leaves_the_old_file_as_it_was(form, tmp_path):
    out = tmp_path / f"old.{form}"
    out.write_text("old")
    arguments = (
        ["boards", "demo", "--mesh"] if form == "obj" else ["draw", "demo", "--view", "front", "--out"]
    )

    def allow_little() -> None:
        resource.setrlimit(resource.RLIMIT_FSIZE, (1000, 1000))

    code, _, err = _run(*arguments, str(out), preexec_fn=allow_little)
    assert code == 3
    assert err.startswith(f"mantelwright: {out} could not be saved: ")
    assert "What was there before is untouched." in err
    assert out.read_text() == "old"
    assert list(tmp_path.iterdir()) == [out]


def test_a_folder_that_cannot_be_made_is_told(tmp_path, capsys):
    (tmp_path / "taken").write_text("")
    assert main(["packet", "demo", "--out", str(tmp_path / "taken" / "packet")]) == 3
    assert "could not be made" in capsys.readouterr().err


def test_a_stop_from_the_keyboard_ends_quietly_and_writes_nothing(tmp_path):
    folder = tmp_path / "packet"
    watched, end = os.openpty()
    with _start("packet", "demo", "--out", str(folder), stderr=end) as process:
        os.close(end)
        seen = b""
        while b"%" not in seen:
            seen += os.read(watched, 1)
        process.send_signal(signal.SIGINT)
        process.communicate(timeout=60)
    seen += os.read(watched, 65536)
    os.close(watched)
    assert b"Traceback" not in seen
    assert b"mantelwright: stopped" in seen
    assert process.returncode == 130
    assert not folder.exists()


def test_a_stop_that_a_library_swallows_ends_the_work_at_its_next_step():
    terminal = Terminal()
    with terminal.heeding_ctrl_c():
        with suppress(KeyboardInterrupt):
            signal.raise_signal(signal.SIGINT)
        with pytest.raises(KeyboardInterrupt):
            terminal.show_progress(0.5, "Going on")
    Terminal().show_progress(0.5, "Another command")


def test_names_no_terminal_can_show_do_not_stop_a_command(tmp_path):
    path = tmp_path / "job.mantel"
    save_job_file(path, with_texts(default_job(), [("job.name", "木 🪵")]))
    environment = {
        **os.environ,
        "PYTHONPATH": str(ROOT),
        "PYTHONIOENCODING": "ascii",
        "QT_QPA_PLATFORM": "offscreen",
    }
    done = subprocess.run(
        [sys.executable, "-m", "app", "packet", str(path), "--out", str(tmp_path)],
        env=environment, capture_output=True, check=False, timeout=60,
    )  # fmt: skip
    assert done.returncode == 0
    assert b"\\u6728" in done.stdout


def test_a_command_needs_no_window():
    code = (
        "import sys; from app.cli import main; main(['check', 'demo']); "
        "print([name for name in sys.modules if 'PySide' in name])"
    )
    environment = {**os.environ, "PYTHONPATH": str(ROOT)}
    done = subprocess.run(
        [sys.executable, "-c", code], env=environment, capture_output=True, text=True, check=True
    )
    assert done.stdout.splitlines()[-1] == "[]"


def test_a_file_comes_before_a_shipped_job_of_the_same_name_and_what_it_lacks_is_told(
    tmp_path, monkeypatch, capsys
):
    monkeypatch.chdir(tmp_path)
    (tmp_path / "gas").write_text('{"mantelwright": 1, "opening": {"width": 41}}')
    assert main(["check", "gas"]) in (0, 1)
    assert "values of a job are not in it and have their defaults" in capsys.readouterr().err
    (tmp_path / "gas").unlink()
    (tmp_path / "gas").mkdir()
    assert main(["check", "gas"]) in (0, 1)
    assert capsys.readouterr().err == ""


def test_cures_are_searched_for_on_request_and_setting_one_clears_its_finding(capsys):
    assert main(["check", "too-close", "--json", "--cures"]) == 1
    records = json.loads(capsys.readouterr().out)
    first = next(r for r in records if r["part"] == "left column")
    cure = first["cures"][0]
    assert cure["set"] == {"column.margin": "1'-0"}
    settings = [word for path, text in cure["set"].items() for word in ("--set", f"{path}={text}")]
    cured = _json(capsys, "check", "too-close", "--json", *settings)
    assert next(r for r in cured if r["part"] == "left column")["status"] != "fail"
    main(["check", "too-close", "--cures"])
    assert '--set "column.margin=1\'-0"' in capsys.readouterr().out


def test_a_first_design_is_written_as_a_job_that_passes(tmp_path, capsys):
    path = tmp_path / "first.mantel"
    assert main(["start", "bedroom", "--guide", "serlio", "--out", str(path)]) == 0
    assert str(path) in capsys.readouterr().out
    assert main(["check", str(path)]) == 0
    assert main(["start", "bedroom", "--guide", "golden", "--out", str(path)]) == 2
    assert main(["start", "gas", "--set", "site.rule=irc", "--out", str(path)]) == 2


def test_every_rule_is_explained_on_request(capsys):
    records = _json(capsys, "check", "too-close", "--json", "--explain")
    plinth = next(r for r in records if r["part"] == "left plinth")
    assert plinth["explained"]["arithmetic"][-1] == "5.75 < 12 in.: 6.25 in. short."
    main(["check", "too-close", "--explain"])
    assert "Beside the opening: 23.75" in capsys.readouterr().out


def test_parameters_draws_what_each_measures_on_the_job_that_is_named(tmp_path: Path, capsys):
    out = tmp_path / "pictures"
    assert main(["parameters", "bedroom", "--pictures", str(out), "--set", "opening.width=33"]) == 0
    said = capsys.readouterr().out.split()
    assert sorted(said) == sorted(str(path) for path in out.iterdir())
    assert '>33"<' in (out / "opening.width.svg").read_text()
    assert not (out / "job.client.svg").exists()


@pytest.mark.parametrize("command", [("boards", "--mesh"), ("start", "--out")])
def test_no_command_writes_over_a_file_of_another_kind(command, tmp_path, capsys):
    other = tmp_path / ("parlour.mantel" if command[0] == "boards" else "photo.jpg")
    other.write_bytes(b"somebody's work")
    name, option = command
    assert main([name, "bedroom", option, str(other)]) == 2
    assert f"{option} " in capsys.readouterr().err
    assert other.read_bytes() == b"somebody's work"


def test_a_name_that_is_too_long_is_told_by_it(tmp_path, capsys):
    path = tmp_path / f"{'n' * 300}.mantel"
    assert main(["start", "bedroom", "--out", str(path)]) == 3
    assert f"{path} could not be saved: the name is too long" in capsys.readouterr().err
    assert main(["check", str(path)]) == 2
    assert "the name is too long" in capsys.readouterr().err


def test_a_stream_that_is_closed_is_no_trouble(tmp_path, capsys, monkeypatch):
    with monkeypatch.context() as closed:
        closed.setattr(sys, "stdout", None)
        assert main(["demos"]) == 0
    with monkeypatch.context() as closed:
        closed.setattr(sys, "stderr", None)
        assert main(["packet", "bedroom", "--only", "cut list", "--out", str(tmp_path)]) == 0
        assert main(["check", "gone.mantel"]) == 2
    said = capsys.readouterr()
    assert said.out.splitlines() == [str(path) for path in tmp_path.iterdir()]
    assert said.err == ""


def test_nothing_that_a_file_holds_steers_the_terminal(tmp_path, capsys):
    path = tmp_path / "odd\x1b[31m.mantel"
    path.write_text(
        json.dumps({"mantelwright": 1, "opening": {"width": "\x1b[2J\x07\u202e"}, "\x1b]0;": {"a": 1}})
    )
    assert main(["check", str(path)]) == 2
    table = tmp_path / "list.csv"
    table.write_text("kind,wood,thickness,width,length\nboard,poplar,\x1b[2J,1,1\n")
    assert main(["stock", str(table)]) == 2
    said = capsys.readouterr()
    assert not set("\x1b\x07\u202e") & set(said.out + said.err)
    for shown in ("odd\\x1b[31m.mantel", '"\\x1b[2J\\x07\\u202e"', "\\x1b]0;", '"\\x1b[2J"'):
        assert shown in said.err
