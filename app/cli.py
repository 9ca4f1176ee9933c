"""The command line: arguments in, words and exit codes out. What the commands do stands in app.commands."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace, _SubParsersAction
from collections.abc import Sequence
from datetime import date
from pathlib import Path

from app import commands, cutting_commands, moulding_commands, option_commands
from app.bought_boards import find_file
from app.commands import DISK, REFUSED
from app.demo import DEFAULT
from app.drawing_files import USUAL_VERSION, VERSION_WORDS
from app.files import FileTrouble, describe_cause
from app.outputs import CHOICES, DRAWINGS, OFFER, PARTS
from app.terminal import Terminal, harden_streams, silence_output
from app.version import program_version
from app.view_file import DOTS_PER_INCH, GROUNDS, PAPER, ViewWish
from model.errors import MantelwrightError, Refused
from model.options import named_alone
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
STOPPED, NOBODY_READS = 130, 141
"""Exit codes: Ctrl-C; whoever read the results has gone, as after SIGPIPE. The others are app.commands'."""
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


def main(arguments: Sequence[str]) -> int:
    """Run one command; returns the exit code. What goes wrong is said on standard error, never thrown."""
    harden_streams()
    terminal = Terminal()
    try:
        options = build_parser().parse_args(list(arguments))
        with terminal.heeding_ctrl_c():
            code = _run(options, terminal)
        terminal.finish()
        return code
    except SystemExit as done:  # argparse has said what it had to say
        return int(done.code or 0)
    except FileTrouble as trouble:
        terminal.warn(str(trouble))
        return DISK
    except MantelwrightError as refusal:
        terminal.warn(str(refusal))
        return REFUSED
    except KeyboardInterrupt:
        terminal.warn("stopped")
        return STOPPED
    except BrokenPipeError:
        silence_output()
        return NOBODY_READS
    except OSError as error:
        silence_output()
        terminal.warn(f"the results could not be written out: {describe_cause(error)}")
        return DISK


def _run(options: Namespace, terminal: Terminal) -> int:
    if options.command == "demos":
        return commands.run_demos(terminal)
    if options.command == "parameters":
        pictures = Path(options.pictures) if options.pictures else None
        settings = [*options.early, *options.settings]
        return commands.run_parameters(terminal, pictures, options.job, settings)
    if options.command == "cutting":
        return cutting_commands.run_cutting(_read_cutting_wish(options), terminal)
    if options.command == "stock":
        out = Path(options.out) if options.out else None
        return cutting_commands.run_stock(options.list, options.csv, out, terminal)
    if options.command == "measuring":
        return commands.run_measuring(Path(options.out), options.paper, options.units, terminal)
    if options.command == "section":
        out = Path(options.out) if options.out else None
        return moulding_commands.run_section(options.file, options.units, out, terminal)
    if options.command == "mouldings":
        return moulding_commands.run_mouldings(_read_moulding_wish(options, terminal), terminal)
    if options.command in ("packet", "drawings"):
        return _run_packets(options, terminal)
    job = commands.read_job_named(options.job, [*options.early, *options.settings], terminal, options.option)
    if options.command == "start":
        return commands.run_start(job, Path(options.out), options.guide, terminal)
    if options.command == "options":
        stock_list = cutting_commands.read_stock_for(options.stock, (options.job,), terminal)
        return option_commands.run_options(job, stock_list, options.json, terminal)
    job = named_alone(job)
    match options.command:
        case "offer":
            stock_list = cutting_commands.read_stock_for(options.stock, (options.job,), terminal)
            job = commands.carry_photo_of(options.job, job, terminal)
            return commands.run_offer(
                job, Path(options.out), options.paper, options.date, terminal, stock_list
            )
        case "steps" | "days":
            return commands.run_work(job, options.command, options.form, terminal)
        case "check":
            return commands.run_check(job, options.form, terminal, options.cures, options.explain)
        case "fixing":
            return commands.run_fixing(job, options.form, terminal)
        case "materials":
            return commands.run_materials(job, options.form, terminal)
        case "labels":
            return commands.run_labels(job, _read_label_wish(options), terminal)
        case "templates":
            return commands.run_templates(job, Path(options.out), options.paper, terminal)
        case "boards":
            mesh = Path(options.mesh) if options.mesh else None
            return commands.run_boards(job, options.form, mesh, terminal)
        case _ if options.list:
            return commands.run_views(job, terminal)
        case _:
            return commands.run_draw(job, _read_view_wish(options), options.date, terminal)


def _read_view_wish(options: Namespace) -> ViewWish:
    if not options.out:
        raise Refused("--out", "", "write the name of a .svg, .png, .dxf or .pdf file")
    return ViewWish(
        options.view,
        Path(options.out),
        options.clearance,
        options.scale,
        options.paper,
        options.dpi,
        options.ground,
        options.dxf_version,
    )


def _run_packets(options: Namespace, terminal: Terminal) -> int:
    """One job's files straight into the folder; of several, each in a folder of its own."""
    sheets = commands.SheetWish(options.paper, options.date, options.dxf_version)
    jobs, settings = tuple(options.jobs), (*options.early, *options.settings)
    out = Path(options.out)
    parts = DRAWINGS if options.command == "drawings" else tuple(options.only) or PARTS
    note = options.command == "packet" and options.note
    stock_list = cutting_commands.read_stock_for(options.stock, jobs, terminal)
    if len(jobs) > 1:
        from app.many_jobs import ManyWish, run_many

        wish = ManyWish(jobs, settings, options.option, out, sheets, stock_list, parts, note)
        return run_many(wish, terminal)
    job = named_alone(commands.read_job_named(jobs[0], settings, terminal, options.option))
    if OFFER in parts:
        job = commands.carry_photo_of(jobs[0], job, terminal)
    noted = find_file("--note", jobs, settings) if note else None
    return commands.run_packet(job, out, sheets, terminal, stock_list, parts, noted)


def _read_moulding_wish(options: Namespace, terminal: Terminal) -> moulding_commands.MouldingWish:
    settings = [*options.early, *options.settings]
    job = None
    if options.job:
        job = named_alone(commands.read_job_named(options.job, settings, terminal, options.option))
    elif options.option:
        raise Refused("--option", options.option, "name the job that has it")
    if job is None and settings:
        raise Refused("--set", settings[0], "name a job that it is set for, such as demo")
    out, dxf = (Path(name) if name else None for name in (options.out, options.dxf))
    corner = _read_corner(options.corner, job is not None) if options.corner else None
    return moulding_commands.MouldingWish(
        job, out, dxf, options.paper, options.date, corner, options.dxf_version
    )


def _read_cutting_wish(options: Namespace) -> cutting_commands.CuttingWish:
    out, printed = (Path(name) if name else None for name in (options.out, options.printed))
    return cutting_commands.CuttingWish(
        tuple(options.jobs),
        (*options.early, *options.settings),
        options.stock,
        options.form,
        out,
        printed,
        _read_number("--spare", options.spare, 999) if options.spare else None,
        _read_number("--seconds", options.seconds, 86_400),
        options.bought,
        options.sawn,
        options.option,
    )


def _read_label_wish(options: Namespace) -> commands.LabelWish:
    return commands.LabelWish(
        Path(options.out),
        options.labels,
        (options.paper, options.size, options.grid, options.edges, options.pitch),
        _read_number("--start", options.start, 9999),
        options.outline,
    )


def _read_number(option: str, text: str, most: int) -> int:
    """A whole number from 0 on. Raises Refused."""
    if not (text.isascii() and text.isdigit() and len(text) < 7 and int(text) <= most):
        raise Refused(option, text, f"write a whole number from 0 to {most}")
    return int(text)


def _read_corner(text: str, of_job: bool) -> float:
    """Degrees, for a job's mouldings. Raises Refused."""
    wanted = "write degrees above 0 and below 180, such as 88.5"
    try:
        corner = float(text.removesuffix("°"))
    except ValueError:
        raise Refused("--corner", text, wanted) from None
    if not 0 < corner < 180:
        raise Refused("--corner", text, wanted)
    if not of_job:
        raise Refused("--corner", text, "name a job whose mouldings are cut so, such as demo")
    return corner


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

    for name, words in (
        ("packet", "write the PDF packet, the DXF drawings and all lists"),
        (
            "drawings",
            "write the DXF drawings: all views with the packet's sheets, each sub-assembly, each moulding",
        ),
    ):
        packet = _add_command(parts, name, words, several=True)
        packet.add_argument(
            "--out",
            required=True,
            metavar="DIR",
            help="folder to write into, of several jobs one in it for each; made if need be",
        )
        packet.add_argument("--paper", default=PAPER, metavar=PAPERS, help=f"sheet size (default {PAPER})")
        packet.add_argument("--stock", default="", metavar="LIST", help=STOCK_HELP)
        if name == "packet":
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
        _add_dxf_version(packet)
        _add_date(packet)

    check = _add_command(parts, "check", "hold the job against its clearance, hearth and fit rules")
    _add_forms(check)
    check.add_argument("--explain", action="store_true", help="say each rule, its arithmetic and its source")
    check.add_argument("--cures", action="store_true", help="search for the least changes that clear each")

    chosen = _add_command(parts, "options", "compare a job's options: checks, prices, what differs")
    chosen.add_argument("--stock", default="", metavar="LIST", help=STOCK_HELP)
    chosen.add_argument("--json", action="store_true", help="print records for a script")

    start = _add_command(parts, "start", "size a first design from the measurements and write its job")
    start.add_argument("--out", required=True, metavar="FILE.mantel", help="job file to write")
    start.add_argument(
        "--guide", default="usual", metavar=STARTS, help="proportion to follow (default usual)"
    )

    materials = _add_command(parts, "materials", "print materials, weights and saw settings")
    _add_forms(materials)
    boards = _add_command(parts, "boards", "print the cut list")
    _add_forms(boards)
    boards.add_argument("--mesh", metavar="FILE.obj", help="write every board as a closed mesh, in inches")

    fixing = _add_command(parts, "fixing", "print anchors, cord way and the order of fitting")
    _add_forms(fixing)
    _add_forms(_add_command(parts, "steps", "print the assembly steps in order"))
    _add_forms(_add_command(parts, "days", "print the day plan: what is done when, and how much it may slip"))

    _add_cutting(parts)
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

    _add_beside_packet(parts)
    _add_mouldings(parts)
    _add_lists(parts)
    return parser


def _add_lists(parts: _SubParsersAction[ArgumentParser]) -> None:
    """The commands that say what there is."""
    for name, words in (
        ("demos", "list the shipped jobs"),
        ("parameters", "list every path that --set takes"),
    ):
        listing = parts.add_parser(name, help=words, description=f"{words.capitalize()}.", allow_abbrev=False)
        if name == "parameters":
            listing.add_argument("job", nargs="?", default=DEFAULT, metavar="JOB", help=JOB_HELP)
            listing.add_argument(
                "--pictures",
                default="",
                metavar="DIR",
                help="write there, as .svg files, a picture of what each one measures on JOB",
            )
        _add_settings(listing)


def _add_cutting(parts: _SubParsersAction[ArgumentParser]) -> None:
    """The commands for what is bought and how it is cut."""
    words = "print what to buy and how to cut it, for one job or several together"
    cutting = parts.add_parser(
        "cutting", help=words, description=f"{words.capitalize()}.", epilog=EXIT_CODES, allow_abbrev=False
    )
    cutting.add_argument("jobs", nargs="+", metavar="JOB", help=JOB_HELP)
    cutting.add_argument("--stock", default="", metavar="LIST", help=STOCK_HELP)
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
        default=cutting_commands.SECONDS,
        metavar="N",
        help=f"how long to look for something cheaper at most (default {cutting_commands.SECONDS})",
    )
    _add_option(cutting)
    _add_settings(cutting)
    words = "print a stock list, or turn one into a table and back"
    stock = parts.add_parser(
        "stock", help=words, description=f"{words.capitalize()}.", epilog=EXIT_CODES, allow_abbrev=False
    )
    stock.add_argument("list", nargs="?", default="usual", metavar="LIST", help=STOCK_HELP)
    stock.add_argument("--csv", action="store_true", help="print it as CSV")
    stock.add_argument(
        "--out",
        default="",
        metavar="FILE",
        help="write it as a .yard or a .csv file; what a table lacks is kept from a .yard file there",
    )


def _add_beside_packet(parts: _SubParsersAction[ArgumentParser]) -> None:
    """What is printed beside the packet: offer, labels, templates, and a sheet to measure with."""
    offer = _add_command(
        parts, "offer", "write the homeowner's offer: picture, sizes, price, a place to sign"
    )
    offer.add_argument("--out", required=True, metavar="FILE.pdf", help="where to")
    offer.add_argument("--paper", default=PAPER, metavar=PAPERS, help=f"sheet size (default {PAPER})")
    offer.add_argument("--stock", default="", metavar="LIST", help=STOCK_HELP)
    _add_date(offer)
    words = "write full-size templates of mouldings, notches, holes and edges askew"
    templates = _add_command(parts, "templates", words)
    templates.add_argument("--out", required=True, metavar="FILE.pdf", help="where to")
    templates.add_argument("--paper", default=PAPER, metavar=PAPERS, help=f"sheet size (default {PAPER})")
    labels = _add_command(parts, "labels", "write a label for every board, for plain label sheets")
    labels.add_argument("--out", required=True, metavar="FILE.pdf", help="where to")
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
    words = "write a blank sheet to measure a fireplace with"
    sheet = parts.add_parser(
        "measuring", help=words, description=f"{words.capitalize()}.", epilog=EXIT_CODES, allow_abbrev=False
    )
    sheet.add_argument("--out", required=True, metavar="FILE.pdf", help="where to")
    sheet.add_argument("--paper", default=PAPER, metavar=PAPERS, help=f"sheet size (default {PAPER})")
    sheet.add_argument(
        "--units",
        default="feet_inches",
        choices=tuple(UNITS),
        help="units that are written (default feet_inches)",
    )


def _add_mouldings(parts: _SubParsersAction[ArgumentParser]) -> None:
    """The commands for mouldings, which need no job."""
    words = "list the moulding library or a job's mouldings, or write them full size"
    mouldings = parts.add_parser(
        "mouldings", help=words, description=f"{words.capitalize()}.", epilog=EXIT_CODES, allow_abbrev=False
    )
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
    mouldings.add_argument("--paper", default=PAPER, metavar=PAPERS, help=f"sheet size (default {PAPER})")
    mouldings.add_argument(
        "--corner",
        default="",
        metavar="DEGREES",
        help="list a job's saw settings for corners that measure so, such as 88.5, and not as drawn",
    )
    _add_date(mouldings)
    _add_option(mouldings)
    _add_settings(mouldings)
    words = "read a moulding's section from a .dxf polyline or a text and print it as text"
    section = parts.add_parser(
        "section", help=words, description=f"{words.capitalize()}.", epilog=EXIT_CODES, allow_abbrev=False
    )
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


def _add_command(
    parts: _SubParsersAction[ArgumentParser], name: str, words: str, several: bool = False
) -> ArgumentParser:
    """A command about a job, or about `several`."""
    command: ArgumentParser = parts.add_parser(
        name,
        help=words,
        description=f"{capitalise(words)}.",
        epilog=EXIT_CODES,
        allow_abbrev=False,
    )
    if several:
        command.add_argument("jobs", nargs="+", metavar="JOB", help=JOB_HELP)
    else:
        command.add_argument("job", metavar="JOB", help=JOB_HELP)
    _add_option(command)
    _add_settings(command)
    return command


def _add_forms(parser: ArgumentParser) -> None:
    """One of ``--json`` and ``--csv``, words without either."""
    form = parser.add_mutually_exclusive_group()
    for name in ("json", "csv"):
        form.add_argument(
            f"--{name}", dest="form", action="store_const", const=name, help=f"print {name.upper()}"
        )
    parser.set_defaults(form="")


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
