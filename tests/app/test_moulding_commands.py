"""The commands for mouldings: what they say, write and refuse."""

from __future__ import annotations

from pathlib import Path

import ezdxf
import pdfplumber
import pytest

from app.cli import main
from model.moulding.library import SECTIONS
from model.moulding.notation import format_section, parse_section


def test_the_library_is_listed_by_the_words_that_jobs_keep(capsys):
    assert main(["mouldings"]) == 0
    lines = capsys.readouterr().out.splitlines()
    assert lines[0].split()[:2] == ["Word", "Section"]
    assert [line.split()[0] for line in lines[1:]] == list(SECTIONS)


def test_a_jobs_mouldings_are_listed_by_place(capsys):
    assert main(["mouldings", "bedroom", "--set", "capital.on=yes"]) == 0
    out = capsys.readouterr().out
    assert out.splitlines()[0].split() == ["Place", "Section", "High", "Out", "Back"]
    assert "Capital" in out


def test_a_jobs_mouldings_come_with_the_saws_settings(capsys):
    settings = ["bed_mould.profile=crown_38", "bed_mould.size=2 1/4", "panel_mould.on=yes"]
    assert main(["mouldings", "brick", *(part for s in settings for part in ("--set", s))]) == 0
    out = capsys.readouterr().out
    assert "flat on its back, table 31.6° right, blade 33.9° left, top edge to the fence" in out
    assert "or seat on the table, table 45° left, bottom edge to the fence" in out
    assert "flat on its back, table 45° left, outer edge to the fence" in out


def test_the_library_is_written_full_size(tmp_path: Path):
    out = tmp_path / "library.pdf"
    assert main(["mouldings", "--out", str(out), "--paper", "tabloid", "--date", "today"]) == 0
    with pdfplumber.open(out) as pdf:
        words = " ".join(page.extract_text() for page in pdf.pages)
    assert "Moulding library, full size" in words
    for name in ("Cyma recta and fillets", "Half round"):
        assert name in words


def test_every_section_is_written_as_a_drawing_of_its_own(tmp_path: Path, capsys):
    assert main(["mouldings", "--dxf", str(tmp_path / "dxf")]) == 0
    written = [Path(line) for line in capsys.readouterr().out.splitlines()]
    assert len(written) == len(SECTIONS)
    assert sorted((tmp_path / "dxf").iterdir()) == sorted(written)
    for path in written:
        (entity,) = ezdxf.readfile(path).modelspace()
        assert entity.closed


def test_a_jobs_drawings_are_named_after_their_place(tmp_path: Path, capsys):
    assert main(["mouldings", "brick", "--dxf", str(tmp_path), "--set", "panel_mould.on=yes"]) == 0
    names = {Path(line).name for line in capsys.readouterr().out.splitlines()}
    assert names == {"Bed mould - Cove and fillets.dxf", "Panel mould - Ovolo and fillet.dxf"}


@pytest.mark.parametrize("name", ["crown_38", "ovolo_bead"])
def test_a_written_section_is_printed_as_text_that_is_read_again(tmp_path: Path, capsys, name):
    drawn = tmp_path / "drawn.dxf"
    assert main(["section", name, "--out", str(drawn)]) == 0
    assert capsys.readouterr().out == format_section(SECTIONS[name].section)
    assert main(["section", str(drawn)]) == 0
    text = capsys.readouterr().out
    read = parse_section(text)
    assert read.elements == SECTIONS[name].section.elements
    kept = tmp_path / "kept.txt"
    kept.write_text(text, encoding="utf-8")
    assert main(["section", str(kept)]) == 0
    assert capsys.readouterr().out == text


def test_what_is_printed_can_be_set_in_a_job(tmp_path: Path, capsys):
    assert main(["section", "torus"]) == 0
    text = capsys.readouterr().out
    settings = ["bed_mould.profile=own_1", f"own_section.first={text}"]
    assert main(["mouldings", "demo", *(part for s in settings for part in ("--set", s))]) == 0
    assert "Torus and fillet" in capsys.readouterr().out


@pytest.mark.parametrize(
    ("arguments", "code", "says"),
    [
        (["mouldings", "--set", "capital.on=yes"], 2, "name a job"),
        (["mouldings", "--out", "library.txt"], 2, ".pdf"),
        (["mouldings", "--out", "library.pdf", "--paper", "postcard"], 2, "paper"),
        (["mouldings", "nothing.mantel"], 2, "no such file"),
        (["section", "nothing.dxf"], 3, "no such file"),
        (["section", "torus", "--out", "torus.pdf"], 2, ".dxf"),
    ],
)
def test_what_cannot_be_done_is_refused(tmp_path: Path, monkeypatch, capsys, arguments, code, says):
    monkeypatch.chdir(tmp_path)
    assert main(arguments) == code
    assert says in capsys.readouterr().err
    assert list(tmp_path.iterdir()) == []


def test_a_corner_that_is_not_square_is_asked_for_by_its_degrees(capsys):
    assert main(["mouldings", "brick", "--corner", "88"]) == 0
    out = capsys.readouterr().out
    assert "Mitre saw settings for corners of 88°" in out
    assert "table 46° left" in out
    assert "table 45° left" not in out


@pytest.mark.parametrize("text", ["square", "0", "180", "nan", "-5"])
def test_a_corner_out_of_range_is_refused_by_name(capsys, text):
    assert main(["mouldings", "brick", f"--corner={text}"]) == 2
    assert "--corner" in capsys.readouterr().err
    assert main(["mouldings", "--corner", "88"]) == 2
    assert "name a job" in capsys.readouterr().err
