"""What each command may be given, and how that is explained. What was given is read and run in app.cli."""

from __future__ import annotations

from argparse import ArgumentParser, _SubParsersAction
from collections.abc import Sequence
from datetime import date
from typing import TypeAlias

from app.cutting_commands import SECONDS
from app.demo import DEFAULT
from app.drawing_files import USUAL_VERSION, VERSION_WORDS
from app.outputs import CHOICES
from app.version import program_version
from app.view_file import DOTS_PER_INCH, GROUNDS, PAPER
from model.parameters import UNITS
from model.sentences import capitalise

COMMANDS = (
    "packet",
    "drawings",
    "check",
    "options",
    "start",
    "boards",
    "materials",
    "fixing",
    "steps",
    "days",
    "cutting",
    "stock",
    "draw",
    "offer",
    "labels",
    "templates",
    "measuring",
    "mouldings",
    "section",
    "demos",
    "parameters",
)
STARTS = "usual|orders|indoors|le_muet|serlio"
PAPERS = "letter|tabloid|a4|a3"
JOB_HELP = (
    "a job file, or the name of a shipped job (demo, or one that 'demos' lists) where no file is called so"
)
STOCK_HELP = (
    "a stock list: a .yard file, a table that ends in .csv, or usual (sizes commonly sold, no prices) or "
    "example (invented prices), where no file is called so"
)
EXIT_CODES = (
    "Exit code: 0 done; 1 a check fails (check only); 2 the input is refused; 3 the disk failed; "
    "4 the program itself failed on one of several jobs; 130 stopped with Ctrl-C."
)


def is_command(arguments: Sequence[str]) -> bool:
    """Whether `arguments` name a command (or ask for help), not a job to open in the window."""
    left = list(arguments)
    while left and (left[0] == "--set" or left[0].startswith("--set=")):
        left = left[2:] if left[0] == "--set" else left[1:]
    return bool(left) and left[0] in (*COMMANDS, "-h", "--help")


Parts: TypeAlias = "_SubParsersAction[ArgumentParser]"
"""The parser's list of commands."""


def build_parser() -> ArgumentParser:
    """The arguments of every command."""
    parser = ArgumentParser(
        prog="mantelwright",
        description="Work on a fireplace surround without the window. Without a command the window opens.",
        epilog=EXIT_CODES,
        allow_abbrev=False,
    )
    parser.add_argument("--version", action="version", version=f"Mantelwright {program_version()}")
    _add_settings(parser, "early")
    parts = parser.add_subparsers(dest="command", metavar="COMMAND", required=True)
    _add_packets(parts)
    _add_checks(parts)
    _add_printed(parts)
    _add_cutting(parts)
    _add_stock(parts)
    _add_draw(parts)
    _add_offer(parts)
    _add_templates(parts)
    _add_labels(parts)
    _add_measuring(parts)
    _add_mouldings(parts)
    _add_section(parts)
    _add_lists(parts)
    return parser


def _add_packets(parts: Parts) -> None:
    """What a job is built from, as files in a folder."""
    words = "write the PDF packet, the DXF drawings and all lists"
    packet = _add_folder_command(parts, "packet", words)
    packet.add_argument(
        "--only",
        action="append",
        default=[],
        metavar="PART",
        choices=CHOICES,
        help="write this alone; may be repeated: " + ", ".join(CHOICES),
    )
    packet.add_argument(
        "--note",
        action="store_true",
        help="note in the job file what the buying list asks for: the next one says what changed",
    )
    words = "write the DXF drawings: all views with the packet's sheets, each sub-assembly, each moulding"
    _add_folder_command(parts, "drawings", words)


def _add_folder_command(parts: Parts, name: str, words: str) -> ArgumentParser:
    command = _add_command(parts, name, words, several=True)
    command.add_argument(
        "--out",
        required=True,
        metavar="DIR",
        help="folder to write into, of several jobs one in it for each; made if need be",
    )
    _add_paper(command)
    _add_stock_list(command)
    _add_dxf_version(command)
    _add_date(command)
    return command


def _add_checks(parts: Parts) -> None:
    """What a job is held against, compared with, and begun from."""
    check = _add_command(parts, "check", "hold the job against its clearance, hearth and fit rules")
    _add_forms(check)
    check.add_argument("--explain", action="store_true", help="say each rule, its arithmetic and its source")
    check.add_argument("--cures", action="store_true", help="search for the least changes that clear each")

    options = _add_command(parts, "options", "compare a job's options: checks, prices, what differs")
    _add_stock_list(options)
    options.add_argument("--json", action="store_true", help="print records for a script")

    start = _add_command(parts, "start", "size a first design from the measurements and write its job")
    start.add_argument("--out", required=True, metavar="FILE.mantel", help="job file to write")
    start.add_argument(
        "--guide", default="usual", metavar=STARTS, help="proportion to follow (default usual)"
    )


def _add_printed(parts: Parts) -> None:
    """The lists that are derived from a job."""
    _add_forms(_add_command(parts, "materials", "print materials, weights and saw settings"))
    boards = _add_command(parts, "boards", "print the cut list")
    _add_forms(boards)
    boards.add_argument("--mesh", metavar="FILE.obj", help="write every board as a closed mesh, in inches")
    _add_forms(_add_command(parts, "fixing", "print anchors, cord way and the order of fitting"))
    _add_forms(_add_command(parts, "steps", "print the assembly steps in order"))
    _add_forms(_add_command(parts, "days", "print the day plan: what is done when, and how much it may slip"))


def _add_cutting(parts: Parts) -> None:
    words = "print what to buy and how to cut it, for one job or several together"
    cutting = _add_command(parts, "cutting", words, several=True)
    _add_stock_list(cutting)
    _add_forms(cutting)
    cutting.add_argument(
        "--out", default="", metavar="DIR", help="write buying list and cutting plan there as CSV files"
    )
    cutting.add_argument(
        "--printed",
        default="",
        metavar="FILE",
        help="say what changed since the list was last printed, and note there what it says now",
    )
    cutting.add_argument(
        "--bought",
        action="store_true",
        help="note in the job file that this was bought: later plans keep to it and to what is left of it",
    )
    cutting.add_argument(
        "--sawn",
        default="",
        metavar="N,N-N",
        help="note first that the bought boards of these numbers are cut",
    )
    cutting.add_argument("--spare", default="", metavar="N", help="spare boards of each size that is bought")
    cutting.add_argument(
        "--seconds",
        default=SECONDS,
        metavar="N",
        help=f"how long to look for something cheaper at most (default {SECONDS})",
    )


def _add_stock(parts: Parts) -> None:
    stock = _add_plain_command(parts, "stock", "print a stock list, or turn one into a table and back")
    stock.add_argument("list", nargs="?", default="usual", metavar="LIST", help=STOCK_HELP)
    stock.add_argument("--csv", action="store_true", help="print it as CSV")
    stock.add_argument(
        "--out",
        default="",
        metavar="FILE",
        help="write it as a .yard or a .csv file; what a table lacks is kept from a .yard file there",
    )


def _add_draw(parts: Parts) -> None:
    draw = _add_command(parts, "draw", "write one drawing: a view, a detail, a picture of a step and others")
    which = draw.add_mutually_exclusive_group(required=True)
    which.add_argument(
        "--view",
        default="",
        metavar="NAME",
        help="front, side, plan or another of the names that --list shows",
    )
    which.add_argument("--list", action="store_true", help="list the job's drawings by their names")
    draw.add_argument("--out", default="", metavar="FILE", help="a .svg, .png, .dxf or .pdf file")
    draw.add_argument(
        "--clearance", action="store_true", help="draw the keep-out in a view and mark what fails"
    )
    draw.add_argument(
        "--scale",
        default="",
        metavar="1:N",
        help="scale of the lettering and of .svg and .png (default 1:12, of details and mouldings larger)",
    )
    draw.add_argument("--paper", default="", metavar=PAPERS, help=f"sheet size of a .pdf (default {PAPER})")
    draw.add_argument(
        "--dpi", default="", metavar="N", help=f"dots to the inch of a .png (default {DOTS_PER_INCH})"
    )
    draw.add_argument(
        "--ground",
        default="",
        metavar="|".join(GROUNDS),
        help="what a .png lies on: white paper (default), or nothing, to be laid over something else",
    )
    _add_dxf_version(draw)
    _add_date(draw)


def _add_offer(parts: Parts) -> None:
    words = "write the homeowner's offer: picture, sizes, price, a place to sign"
    offer = _add_command(parts, "offer", words)
    _add_pdf(offer)
    _add_paper(offer)
    _add_stock_list(offer)
    _add_date(offer)


def _add_templates(parts: Parts) -> None:
    words = "write full-size templates of mouldings, notches, holes and edges askew"
    templates = _add_command(parts, "templates", words)
    _add_pdf(templates)
    _add_paper(templates)


def _add_labels(parts: Parts) -> None:
    labels = _add_command(parts, "labels", "write a label for every board, for plain label sheets")
    _add_pdf(labels)
    labels.add_argument(
        "--labels",
        default="",
        metavar="NAME",
        help="size of the labels by paper and count, such as letter-30 or a4-21 (default letter-30)",
    )
    labels.add_argument("--size", default="", metavar="WxH", help="a size of your own, such as '2 5/8 x 1'")
    labels.add_argument("--grid", default="", metavar="NxM", help="how many across and down, such as 3x10")
    labels.add_argument(
        "--edges", default="", metavar="LxT", help="from the page's left and top to the first"
    )
    labels.add_argument(
        "--pitch", default="", metavar="AxD", help="from one label to the next, across and down"
    )
    labels.add_argument(
        "--paper", default="", metavar="letter|a4", help="page of such labels (default letter)"
    )
    labels.add_argument("--start", default="1", metavar="N", help="place of the first label on a begun sheet")
    labels.add_argument("--outline", action="store_true", help="draw the labels' edges, for a trial on paper")


def _add_measuring(parts: Parts) -> None:
    sheet = _add_plain_command(parts, "measuring", "write a blank sheet to measure a fireplace with")
    _add_pdf(sheet)
    _add_paper(sheet)
    sheet.add_argument(
        "--units",
        default="feet_inches",
        choices=tuple(UNITS),
        help="units that are written (default feet_inches)",
    )


def _add_mouldings(parts: Parts) -> None:
    words = "list the moulding library or a job's mouldings, or write them full size"
    mouldings = _add_plain_command(parts, "mouldings", words)
    mouldings.add_argument(
        "job", nargs="?", default="", metavar="JOB", help=f"{JOB_HELP}; without one, the library"
    )
    mouldings.add_argument(
        "--out", default="", metavar="FILE.pdf", help="write every section full size on sheets"
    )
    mouldings.add_argument(
        "--dxf", default="", metavar="DIR", help="write every section as a drawing file of its own"
    )
    _add_dxf_version(mouldings)
    _add_paper(mouldings)
    mouldings.add_argument(
        "--corner",
        default="",
        metavar="DEGREES",
        help="list a job's saw settings for corners that measure so, such as 88.5, and not as drawn",
    )
    _add_date(mouldings)
    _add_option(mouldings)
    _add_settings(mouldings)


def _add_section(parts: Parts) -> None:
    words = "read a moulding's section from a .dxf polyline or a text and print it as text"
    section = _add_plain_command(parts, "section", words)
    section.add_argument(
        "file",
        metavar="FILE",
        help="a .dxf drawing with one closed polyline, drawn as it hangs: back plumb on the left, seat level "
        "on top; a text; or a word of the library, such as cyma_recta",
    )
    section.add_argument(
        "--units", default="", choices=("inches", "mm"), help="what a drawing without units is in"
    )
    section.add_argument(
        "--out", default="", metavar="FILE.dxf", help="write it as a drawing with true arcs as well"
    )


def _add_lists(parts: Parts) -> None:
    """The commands that say what there is."""
    _add_settings(_add_plain_command(parts, "demos", "list the shipped jobs"))
    listing = _add_plain_command(parts, "parameters", "list every path that --set takes")
    listing.add_argument("job", nargs="?", default=DEFAULT, metavar="JOB", help=JOB_HELP)
    listing.add_argument(
        "--pictures",
        default="",
        metavar="DIR",
        help="write there, as .svg files, a picture of what each one measures on JOB",
    )
    _add_settings(listing)


def _add_command(parts: Parts, name: str, words: str, several: bool = False) -> ArgumentParser:
    """A command about a job, or about `several`."""
    command = _add_plain_command(parts, name, words)
    if several:
        command.add_argument("jobs", nargs="+", metavar="JOB", help=JOB_HELP)
    else:
        command.add_argument("job", metavar="JOB", help=JOB_HELP)
    _add_option(command)
    _add_settings(command)
    return command


def _add_plain_command(parts: Parts, name: str, words: str) -> ArgumentParser:
    """A command that need not be about a job."""
    command: ArgumentParser = parts.add_parser(
        name, help=words, description=f"{capitalise(words)}.", epilog=EXIT_CODES, allow_abbrev=False
    )
    return command


def _add_forms(parser: ArgumentParser) -> None:
    """One of ``--json`` and ``--csv``, words without either."""
    form = parser.add_mutually_exclusive_group()
    for name in ("json", "csv"):
        form.add_argument(
            f"--{name}", dest="form", action="store_const", const=name, help=f"print {name.upper()}"
        )
    parser.set_defaults(form="")


def _add_pdf(parser: ArgumentParser) -> None:
    parser.add_argument("--out", required=True, metavar="FILE.pdf", help="where to")


def _add_paper(parser: ArgumentParser) -> None:
    parser.add_argument("--paper", default=PAPER, metavar=PAPERS, help=f"sheet size (default {PAPER})")


def _add_stock_list(parser: ArgumentParser) -> None:
    parser.add_argument("--stock", default="", metavar="LIST", help=STOCK_HELP)


def _add_settings(parser: ArgumentParser, name: str = "settings") -> None:
    parser.add_argument(
        "--set",
        dest=name,
        action="append",
        default=[],
        metavar="PATH=VALUE",
        help="set a value for this run, such as opening.width=36 (bare numbers are inches); may be repeated",
    )


def _add_option(parser: ArgumentParser) -> None:
    parser.add_argument(
        "--option",
        default="",
        metavar="NAME",
        help="which of the job's options, where it has several (default: the one in work)",
    )


def _add_dxf_version(parser: ArgumentParser) -> None:
    parser.add_argument(
        "--dxf-version",
        default=USUAL_VERSION,
        choices=tuple(VERSION_WORDS),
        help=f"version of .dxf files (default {USUAL_VERSION}); R12 is for older programs and machines: "
        "no line weights, one paper space for all sheets",
    )


def _add_date(parser: ArgumentParser) -> None:
    today = date.today().isoformat()
    parser.add_argument("--date", default=today, metavar="TEXT", help="date on the sheets (default today)")
