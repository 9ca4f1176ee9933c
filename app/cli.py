"""The command line: arguments in, words and exit codes out. What the commands do stands in app.commands."""

from __future__ import annotations

from argparse import Namespace
from collections.abc import Sequence
from pathlib import Path

from app import commands, cutting_commands, moulding_commands, option_commands
from app.arguments import build_parser
from app.bought_boards import find_file
from app.commands import DISK, REFUSED
from app.files import FileTrouble, describe_cause
from app.outputs import DRAWINGS, OFFER, PARTS, open_second_for
from app.terminal import Terminal, harden_streams, silence_output
from app.view_file import ViewWish
from model.errors import MantelwrightError, Refused
from model.job import Job
from model.options import named_alone

STOPPED, NOBODY_READS = 130, 141
"""Exit codes: Ctrl-C; whoever read the results has gone, as after SIGPIPE. The others are app.commands'."""


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
    """A command that needs no job or takes several; the others go on with theirs."""
    match options.command:
        case "demos":
            return commands.run_demos(terminal)
        case "parameters":
            settings = [*options.early, *options.settings]
            return commands.run_parameters(terminal, _path(options.pictures), options.job, settings)
        case "cutting":
            return cutting_commands.run_cutting(_read_cutting_wish(options), terminal)
        case "stock":
            return cutting_commands.run_stock(options.list, options.csv, _path(options.out), terminal)
        case "measuring":
            return commands.run_measuring(Path(options.out), options.paper, options.units, terminal)
        case "section":
            return moulding_commands.run_section(options.file, options.units, _path(options.out), terminal)
        case "mouldings":
            return moulding_commands.run_mouldings(_read_moulding_wish(options, terminal), terminal)
        case "packet" | "drawings":
            return _run_packets(options, terminal)
    return _run_on_job(options, terminal)


def _run_on_job(options: Namespace, terminal: Terminal) -> int:
    """A command about one job: with all its options, or with the one that is meant."""
    job = commands.read_job_named(options.job, [*options.early, *options.settings], terminal, options.option)
    match options.command:
        case "start":
            return commands.run_start(job, Path(options.out), options.guide, terminal)
        case "options":
            stock_list = cutting_commands.read_stock_for(options.stock, (options.job,), terminal)
            return option_commands.run_options(job, stock_list, options.json, terminal)
    return _run_on_option(named_alone(job), options, terminal)


def _run_on_option(job: Job, options: Namespace, terminal: Terminal) -> int:
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
            return commands.run_boards(job, options.form, _path(options.mesh), terminal)
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
    if len(jobs) > 1:
        from app.many_jobs import ManyWish, run_many

        stock_list = cutting_commands.read_stock_for(options.stock, jobs, terminal)
        wish = ManyWish(jobs, settings, options.option, out, sheets, stock_list, parts, note)
        return run_many(wish, terminal)
    with open_second_for(parts) as second:
        stock_list = cutting_commands.read_stock_for(options.stock, jobs, terminal)
        job = named_alone(commands.read_job_named(jobs[0], settings, terminal, options.option))
        if OFFER in parts:
            job = commands.carry_photo_of(jobs[0], job, terminal)
        noted = find_file("--note", jobs, settings) if note else None
        return commands.run_packet(job, out, sheets, terminal, stock_list, parts, noted, second)


def _read_moulding_wish(options: Namespace, terminal: Terminal) -> moulding_commands.MouldingWish:
    settings = [*options.early, *options.settings]
    job = None
    if options.job:
        job = named_alone(commands.read_job_named(options.job, settings, terminal, options.option))
    elif options.option:
        raise Refused("--option", options.option, "name the job that has it")
    if job is None and settings:
        raise Refused("--set", settings[0], "name a job that it is set for, such as demo")
    corner = _read_corner(options.corner, job is not None) if options.corner else None
    return moulding_commands.MouldingWish(
        job, _path(options.out), _path(options.dxf), options.paper, options.date, corner, options.dxf_version
    )


def _read_cutting_wish(options: Namespace) -> cutting_commands.CuttingWish:
    return cutting_commands.CuttingWish(
        tuple(options.jobs),
        (*options.early, *options.settings),
        options.stock,
        options.form,
        _path(options.out),
        _path(options.printed),
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


def _path(name: str | None) -> Path | None:
    """The file that is named, if one is."""
    return Path(name) if name else None


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
