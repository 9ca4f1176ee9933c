"""What is written into a job's texts comes out of every file as writing: no markup, formula, code or path."""

from __future__ import annotations

import csv
import io
import re
from xml.etree import ElementTree

import ezdxf
import pdfplumber
import pytest

from app.demo import read_demo
from app.outputs import PARTS, TEMPLATES, Output, build_outputs
from app.view_file import ViewWish, build_view_file
from model.job import Job, with_value
from model.parameters import TABLE, Kind

HOSTILE = (
    "=HYPERLINK(\"x\")",
    "<b onload='x'>&amp;</b>",
    "%%u{\\H9;\\P}%%c",
    "../../up/CON",
    "@sum \\U+0041 ${HOME} $(x) `x`",
    "(a) Tj ET \\051",
    "]]></text><script>x</script>",
)  # fmt: skip
START = ("=", "+", "-", "@", "\t", "\r")
"""What begins a formula: OWASP, "CSV Injection"."""


@pytest.fixture(scope="module")
def job() -> Job:
    """The smallest shipped job with one of HOSTILE in every text."""
    made = read_demo("bedroom")
    rows = [row for row in TABLE if row.kind is Kind.TEXT]
    for number, row in enumerate(rows):
        text = HOSTILE[number % len(HOSTILE)]
        made = with_value(made, row.path, text)
    return with_value(made, "job.name", f"{HOSTILE[3]} {HOSTILE[1]} {HOSTILE[2]}")


@pytest.fixture(scope="module")
def outputs(job: Job) -> tuple[Output, ...]:
    return build_outputs(job, "letter", "2001-02-03", (*PARTS, TEMPLATES))


def test_no_name_of_a_file_leaves_its_folder_or_cannot_be_had(outputs: tuple[Output, ...]):
    for output in outputs:
        assert output.name.count("/") <= 1
        for part in output.name.split("/"):
            assert not re.search(r'[<>:"\\|?*\x00-\x1f]', part), part
            assert part.strip(" .") == part
            assert part.split()[0] != ".."


def test_the_packet_says_them_as_they_were_written(outputs: tuple[Output, ...]):
    (data,) = [output.data for output in outputs if output.name.endswith("packet.pdf")]
    assert b"/JavaScript" not in data
    assert b"/Launch" not in data
    with pdfplumber.open(io.BytesIO(data)) as pdf:
        said = pdf.pages[0].extract_text().replace("\n", " ")
        targets = [link.get("uri") for page in pdf.pages for link in page.hyperlinks if link.get("uri")]
    assert "<b onload" in said
    assert "%%u{" in said
    assert targets == []


def test_no_cell_of_any_table_begins_a_formula(outputs: tuple[Output, ...]):
    tables = [output for output in outputs if output.name.endswith(".csv")]
    assert len(tables) >= 5
    for table in tables:
        for row in csv.reader(io.StringIO(table.data.decode("utf-8-sig"), newline="")):
            for cell in row:
                assert not cell.lstrip().startswith(START) or re.fullmatch(r"[-+][\d /.\"'-]+", cell), cell


def test_drawing_files_stay_whole(outputs: tuple[Output, ...]):
    drawings = [output for output in outputs if output.name.endswith(".dxf")]
    assert drawings
    for drawing in drawings:
        text = drawing.data.decode("ascii")
        document = ezdxf.read(io.StringIO(text))
        assert not document.audit().errors
        said = [entity for layout in document.layouts for entity in layout.query("TEXT MTEXT")]
        plain = [entity.plain_text() for entity in said]
        assert any("%%u{\\H9;\\P}%%c" in text for text in plain) or not drawing.name.endswith("views.dxf")


@pytest.mark.parametrize("view", ["front", "side"])
def test_a_picture_stays_well_formed_and_holds_no_script(job: Job, view: str, tmp_path):
    wish = ViewWish(view, tmp_path / "view.svg")
    tree = ElementTree.fromstring(build_view_file(job, wish, "2001-02-03").decode())
    tags = {element.tag.rpartition("}")[2] for element in tree.iter()}
    assert "script" not in tags
    assert "b" not in tags
