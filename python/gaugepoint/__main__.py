"""``python -m gaugepoint FILE ...``: from documents to reports, and from readings in CSV to decisions. ``python/docs/command.md`` shows it."""

import argparse
import contextlib
import importlib
import io
import json
import os
import secrets
import shutil
import signal
import sys
import tempfile
from collections.abc import Callable, Iterator
from functools import partial
from pathlib import Path
from typing import IO, Any, BinaryIO, NamedTuple, TextIO, get_args

import gaugepoint
from gaugepoint import _page, _readings
from gaugepoint._rows import QUANTITIES
from gaugepoint._written import Written, WrittenMarkdown
from gaugepoint.batch import MeanExpansion
from gaugepoint.error import InputError, _printable, at_door
from gaugepoint.frames import BenchLimits
from gaugepoint.report import Rule

PROVEN, NOT_PROVEN, REFUSED = 0, 1, 2
# what a shell says of a program that was stopped so
_INTERRUPTED, _BROKEN_PIPE, _TERMINATED = 128 + 2, 128 + 13, 128 + 15

DESCRIPTION = """\
Documents in, reports out: each FILE is a document that the library reads, recognised by its format. Readings in CSV come back with their decisions.
"-" is standard input."""
CODES = """\
0: everything that is judged is proven to conform. 1: something is not proven or does not conform. 2: an input is refused, cannot be read or
written, or the command line is wrong. All files are looked at; what is refused is said on standard error and gives no output, nor a part of one."""


class _Kind(NamedTuple):
    """A kind of document."""

    read: Callable[[bytes], Written]
    """From the document to its report."""
    proven: Callable[[Any], bool]
    """Whether the report leaves nothing that it judges unproven."""


def _job(report: gaugepoint.Report) -> bool:
    finish = report.plan.finish if report.plan else None
    engine = finish.result == "proven" if finish else report.block.verdict.outcome == "reuse"
    return engine and all(map(_stack, report.stacks))


def _stack(report: gaugepoint.StackReport) -> bool:
    return report.limits is None or report.limits.worst_case_within


def _what_if(report: gaugepoint.WhatIfReport) -> bool:
    return all(row.outcome == "reuse" for row in (report.base, *report.rows))


def _judges_nothing(report: Written) -> bool:
    return True


KINDS = {
    "job": _Kind(gaugepoint.assess, _job),
    "sheet": _Kind(gaugepoint.check_sheet, lambda report: not report.contradictions),
    "measurement": _Kind(gaugepoint.measure, _judges_nothing),
    "fit": _Kind(gaugepoint.fit, _judges_nothing),
    "stack": _Kind(gaugepoint.evaluate_stack, _stack),
    "revisit": _Kind(gaugepoint.revisit, lambda report: not report.suspicious),
    "what-if": _Kind(gaugepoint.what_if, _what_if),
    "budget": _Kind(gaugepoint.budget, _judges_nothing),
}

_DELIMITERS = {"comma": ",", "semicolon": ";", "tab": "\t"}

_FORMS: dict[str, Callable[[Written], str]] = {
    "txt": _page.text,
    "json": lambda report: report.to_json() + "\n",
    "md": lambda report: report.to_markdown() if isinstance(report, WrittenMarkdown) else _indented(_page.text(report)),
}


def _indented(text: str) -> str:
    """A text that has no Markdown of its own, as a block that is shown as it is."""
    return "".join(f"    {line}".rstrip() + "\n" for line in text.splitlines())


def main(arguments: list[str] | None = None) -> int:
    """Run the command.

    Parameters
    ----------
    arguments : list of str, optional
        Its arguments; those of the process without.

    Returns
    -------
    int
        The code it exits with.
    """
    # whoever closes standard error wants to hear nothing
    sys.stderr = sys.stderr or open(os.devnull, "w", encoding="utf-8")
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(encoding="utf-8", errors="backslashreplace")
    parser = _parser()
    options = parser.parse_args(arguments)
    wrong = _contradictions(options)
    if wrong:
        parser.error(wrong)
    try:
        return _Run(options).code()
    except KeyboardInterrupt:
        return _INTERRUPTED
    except BrokenPipeError:
        return _BROKEN_PIPE


class _Run:
    """One run of the command."""

    def __init__(self, options: argparse.Namespace) -> None:
        self.options = options
        self.sections: list[str] = []
        self.say: Callable[[str], object] = partial(print, file=sys.stderr)
        self.advance: Callable[[int], object] = lambda size: None

    def code(self) -> int:
        """Do all files, and give the worst of their codes."""
        files: list[str] = self.options.files
        with self._bar(files):
            codes = [self._guarded(name, partial(self._file, name)) for name in files]
            if self.options.html:
                codes.append(self._guarded(self.options.html, self._html))
        return max(codes)

    def _guarded(self, name: str, does: Callable[[], int]) -> int:
        try:
            return does()
        except BrokenPipeError:
            raise
        except _readings.LinesRefused as refused:
            return self._refused(name, *refused.messages)
        except InputError as refused:
            return self._refused(name, str(refused))
        except ModuleNotFoundError as missing:
            return self._refused(name, f"readings need {missing.name} (pip install gaugepoint[frames])")
        except OSError as failed:
            where = "" if failed.filename in (None, name) else f"{_printable(str(failed.filename))}: "
            return self._refused(name, f"{where}{failed.strerror or failed}")

    def _refused(self, name: str, *messages: str) -> int:
        shown = _printable(name)
        for message in messages:
            self.say(f"{shown}: {message}")
        self.sections.append(_page.refusal(shown, "; ".join(messages)))
        return REFUSED

    def _file(self, name: str) -> int:
        if _kind(self.options, name) == "csv":
            return self._readings(name)
        with _opened(name) as file:
            given = file.read()
        self.advance(len(given))
        kind = KINDS[self.options.kind or _said(given)]
        report = kind.read(given)
        section = [_page.html(report)] if self.options.html else []
        if self.options.html != "-" or self.options.output:
            with self._output(name, self.options.form) as out:
                out.write(_FORMS[self.options.form](report).encode())
        self.sections += section
        return PROVEN if kind.proven(report) else NOT_PROVEN

    def _readings(self, name: str) -> int:
        with _opened(name) as given, self._output(name, "csv") as out:
            done = 0

            def read() -> None:
                nonlocal done
                if given.seekable():
                    self.advance(given.tell() - done)
                    done = given.tell()

            counts = _readings.decide_csv(given, out, _question(self.options), read)
        self.say(f"{_printable(name)}: {counts}")
        return PROVEN if counts.proven else NOT_PROVEN

    def _html(self) -> int:
        data = _page.page("gaugepoint", self.sections).encode()
        with _stdout() if self.options.html == "-" else _whole(Path(self.options.html)) as out:
            out.write(data)
        return PROVEN

    def _output(self, name: str, form: str) -> contextlib.AbstractContextManager[IO[bytes]]:
        if not self.options.output:
            return _stdout()
        self.options.output.mkdir(parents=True, exist_ok=True)
        return _whole(_target(self.options.output, name, form))

    @contextlib.contextmanager
    def _bar(self, files: list[str]) -> Iterator[None]:
        """How far it is, on a terminal, where `tqdm` is installed and nothing else is shown there."""
        shown = sys.stderr.isatty() and (self.options.output or not sys.stdout or not sys.stdout.isatty())
        sizes = [Path(name).stat().st_size for name in files if Path(name).is_file()]
        try:
            tqdm: Any = importlib.import_module("tqdm").tqdm if shown else None
        except ModuleNotFoundError:
            tqdm = None
        if tqdm is None or len(sizes) < len(files):
            yield
            return
        with tqdm(total=sum(sizes), unit="B", unit_scale=True, delay=1.0, leave=False) as bar:
            self.advance, self.say = bar.update, lambda line: tqdm.write(line, file=sys.stderr)
            yield


def _kind(options: argparse.Namespace, name: str) -> str | None:
    """Kind of a file where its content need not be looked at."""
    kind: str | None = options.kind
    return kind or ("csv" if name.lower().endswith(".csv") else None)


def _said(given: bytes) -> str:
    """Kind of a document by what it says it is. What cannot be told is read as a job: that says what is wrong with it."""
    try:
        said = json.loads(given)["format"]
    except (ValueError, TypeError, KeyError, RecursionError):
        return "job"
    if not isinstance(said, str):
        return "job"
    kind = said.removeprefix("gaugepoint-")
    if kind in KINDS and kind != said:
        return kind
    raise at_door("unknown_format", "/format", said, f"the formats read here are {', '.join(f'gaugepoint-{kind}' for kind in KINDS)}")


def _opened(name: str) -> contextlib.AbstractContextManager[IO[bytes]]:
    return contextlib.nullcontext(_bytes_of(sys.stdin)) if name == "-" else open(name, "rb")


def _bytes_of(stream: TextIO | None) -> BinaryIO:
    if stream is None:
        raise OSError(None, "the standard stream is closed")
    return stream.buffer


@contextlib.contextmanager
def _stdout() -> Iterator[IO[bytes]]:
    """Standard output, which gets all or nothing."""
    out = _bytes_of(sys.stdout)
    with tempfile.SpooledTemporaryFile(1 << 24) as spool:
        yield spool
        spool.seek(0)
        try:
            shutil.copyfileobj(spool, out)
            out.flush()
        except OSError:
            # what could not be written is not tried again when the interpreter ends
            os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
            raise


@contextlib.contextmanager
def _whole(path: Path) -> Iterator[IO[bytes]]:
    """A file that is there when it is complete: written beside its place and then put there."""
    place = Path(os.path.realpath(path))
    if place.exists() and not place.is_file():
        raise OSError(None, "it is there and is no file", str(path))
    beside = place.with_name(f".{place.name}.{secrets.token_hex(4)}.part")
    try:
        with open(beside, "xb") as file:
            yield file
        os.replace(beside, place)
    except BaseException:
        beside.unlink(missing_ok=True)
        raise


def _target(folder: Path, name: str, form: str) -> Path:
    stem = "stdin" if name == "-" else Path(name).stem
    return folder / f"{stem}.{'decisions' if form == 'csv' else 'report'}.{form}"


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser("python -m gaugepoint", description=DESCRIPTION, epilog=f"Exit codes. {CODES}", allow_abbrev=False)
    parser.add_argument("files", nargs="+", metavar="FILE", help="a document or, by its ending .csv, readings")
    parser.add_argument("--version", action="version", version=f"gaugepoint {gaugepoint.__version__}")
    parser.add_argument("--kind", choices=[*KINDS, "csv"], help="what every FILE is, in place of what it says and of its ending")
    form = parser.add_mutually_exclusive_group()
    form.add_argument("--json", dest="form", default="txt", action="store_const", const="json", help="reports as JSON, one on a line, the bytes of every host")
    form.add_argument("--markdown", dest="form", default="txt", action="store_const", const="md", help="reports as Markdown")
    parser.add_argument("--html", metavar="PATH", help='besides, one page with all reports and their pictures; "-" writes it in place of the text')
    parser.add_argument("--output", metavar="FOLDER", type=Path, help="a file for every FILE, in place of standard output")
    readings = parser.add_argument_group("readings", "One row for each cylinder; what they are judged by is needed, the rest is optional.")
    for part in ("bore", "piston"):
        readings.add_argument(f"--{part}-per-k", metavar="NUMBER", type=_number, help=f"mean coefficient of expansion of the {part}s from 20 C")
    readings.add_argument("--limits-mm", nargs=2, metavar=("LOWER", "UPPER"), type=_limit, help='of the clearance on the bench; "none" for no limit')
    readings.add_argument("--standard-uncertainty-mm", metavar="NUMBER", type=_number, help="of that clearance, for every row")
    readings.add_argument("--rule", choices=get_args(Rule), help="rule of decision (proven)")
    readings.add_argument("--at-least", metavar="NUMBER", type=_number, help="what the rule asks for (0.95)")
    readings.add_argument("--column", action="append", metavar="QUANTITY=NAME", type=_pair, help="name of a column, where it has another")
    readings.add_argument("--same", action="append", metavar="QUANTITY=NUMBER", type=_same, help="a number for every row, in place of a column")
    readings.add_argument("--missing", action="append", metavar="TEXT", help="a cell that says that there is no number, beside the empty one")
    readings.add_argument("--delimiter", choices=_DELIMITERS, help="what stands between two cells (comma)")
    readings.add_argument("--partial", action="store_true", default=None, help="refused rows are written with their reasons")
    return parser


_NEEDED = ("bore_per_k", "piston_per_k", "limits_mm", "standard_uncertainty_mm")
_OPTIONAL = ("rule", "at_least", "column", "same", "missing", "delimiter", "partial")


def _contradictions(options: argparse.Namespace) -> str | None:
    """What of the command line does not go together."""
    readings = [name for name in options.files if _kind(options, name) == "csv"]
    given = [f"--{name.replace('_', '-')}" for name in (*_NEEDED, *_OPTIONAL) if getattr(options, name) is not None]
    if given and not readings:
        return f"{given[0]}: it is for readings, and no FILE is CSV"
    if readings:
        lacks = [f"--{name.replace('_', '-')}" for name in _NEEDED if getattr(options, name) is None]
        if lacks:
            return f"readings need {', '.join(lacks)}"
        if options.form != "txt" or options.html:
            return "--json, --markdown, --html: readings come back as CSV"
        if len(options.files) > 1 and not options.output:
            return "--output is needed: more than one FILE, and CSV among them"
    return _overwritten(options, readings)


def _overwritten(options: argparse.Namespace, readings: list[str]) -> str | None:
    """What would be written over something else of this run."""
    if options.files.count("-") > 1:
        return '"-": standard input can be read once'
    targets = [Path(options.html)] if options.html not in (None, "-") else []
    if options.output:
        targets += [_target(options.output, name, "csv" if name in readings else options.form) for name in options.files]
    taken = {os.path.realpath(name) for name in options.files}
    for target in map(os.path.realpath, targets):
        if target in taken:
            return f"{target} would be written over another file of this run"
        taken.add(target)
    return None


def _question(options: argparse.Namespace) -> _readings.Question:
    lower, upper = options.limits_mm
    at_least = 0.95 if options.at_least is None else options.at_least
    limits = BenchLimits(lower, upper, options.standard_uncertainty_mm, options.rule or "proven", at_least)
    return _readings.Question(
        MeanExpansion(options.bore_per_k),
        MeanExpansion(options.piston_per_k),
        limits,
        dict(options.column or ()),
        dict(options.same or ()),
        frozenset(["", *(options.missing or ())]),
        _DELIMITERS[options.delimiter or "comma"],
        bool(options.partial),
    )


def _number(text: str) -> float:
    try:
        return _readings.number(text)
    except InputError as refused:
        raise argparse.ArgumentTypeError(str(refused)) from None


def _limit(text: str) -> float | None:
    return None if text == "none" else _number(text)


def _pair(text: str) -> tuple[str, str]:
    quantity, equals, name = text.partition("=")
    if not equals or quantity not in QUANTITIES:
        raise argparse.ArgumentTypeError(f"{text!r}: one of {', '.join(QUANTITIES)}, then =, is needed")
    return quantity, name


def _same(text: str) -> tuple[str, float]:
    quantity, number = _pair(text)
    return quantity, _number(number)


if __name__ == "__main__":
    # files that are written beside their places are taken away
    signal.signal(signal.SIGTERM, lambda number, frame: sys.exit(_TERMINATED))
    sys.exit(main())
