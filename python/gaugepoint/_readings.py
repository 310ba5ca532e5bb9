"""Readings in CSV: rows in, the same rows with their decisions out, a part of the file at a time.

Every cell stays the text that it was. Numbers are read with the rules of the command, decided by `gaugepoint.frames`, and written with as many digits
as name the double and no more.
"""

import csv
import io
import re
from collections import Counter
from collections.abc import Callable, Hashable, Iterator, Mapping
from dataclasses import dataclass, field
from itertools import islice
from math import nan
from typing import IO, TYPE_CHECKING

from gaugepoint._rows import Column
from gaugepoint.batch import MeanExpansion
from gaugepoint.error import InputError, at_door
from gaugepoint.frames import _DECISIONS, _WORDS, BenchLimits, Summary, _Results, decided

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

__all__ = ["Counts", "LinesRefused", "Question", "decide_csv", "number"]

# rows at a time: what is kept of them is short-lived
_PART = 1 << 13
# of the lines that are refused, as many are named
_NAMED = 8
_NUMBER = re.compile(r"[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?", re.ASCII)


@dataclass(frozen=True, slots=True)
class Question:
    """What is asked of every row."""

    bore_law: MeanExpansion
    """How the bores grow."""
    piston_law: MeanExpansion
    """How the pistons grow."""
    bench: BenchLimits
    """What the clearance on the bench is judged by."""
    columns: Mapping[str, Hashable]
    """Names of columns, where they have others."""
    same: Mapping[str, float]
    """Numbers that hold for every row."""
    missing: frozenset[str]
    """Cells that say that there is no number."""
    delimiter: str
    """What stands between two cells."""
    partial: bool
    """Whether rows that are refused are written with their reasons."""


@dataclass(slots=True)
class Counts:
    """What became of the rows of a file."""

    rows: int = 0
    """How many there are."""
    refused: int = 0
    """Rows that are refused."""
    missing: int = 0
    """Rows that lack a number."""
    decisions: Counter[str] = field(default_factory=Counter)
    """Judged rows by what the decision says."""
    missing_cells: Counter[str] = field(default_factory=Counter)
    """Missing cells by quantity."""

    def add(self, summary: Summary) -> None:
        """Count the rows of a part of the file."""
        self.rows += summary.rows
        self.refused += summary.refused
        self.missing += summary.missing
        self.decisions.update(summary.decisions)
        self.missing_cells.update(summary.missing_cells)

    @property
    def proven(self) -> bool:
        """Whether every row conforms."""
        return self.decisions["conforms"] == self.rows

    def __str__(self) -> str:
        parts = [f"{self.decisions[word]} {word}" for word in ("conforms", "not proven", "does not conform") if self.decisions[word]]
        parts += [f"{self.refused} refused"] if self.refused else []
        cells = ", ".join(f"{name} {count}" for name, count in sorted(self.missing_cells.items()))
        parts += [f"{self.missing} missing a number"] if self.missing else []
        parts += [f"missing cells: {cells}"] if cells else []
        return f"{self.rows} rows: {'; '.join(parts)}" if parts else f"{self.rows} rows"


class LinesRefused(ValueError):
    """Lines of a file were refused."""

    def __init__(self, count: int, named: list[str]) -> None:
        super().__init__(f"{count} lines are refused")
        self.messages = [*named, f"and {count - len(named)} more lines"] if count > len(named) else named


def number(text: str) -> float:
    """Read a number as it stands in a file or on the command line.

    Parameters
    ----------
    text : str
        Decimal digits, a point, an exponent; no comma, no unit.

    Returns
    -------
    float
        The nearest double.

    Raises
    ------
    InputError
        When it is something else.
    """
    if not _NUMBER.fullmatch(text):
        raise _no_number(text)
    return float(text)


def _no_number(text: str) -> InputError:
    if "," in text:
        return at_door("decimal_comma", "", text, "a number has a decimal point, not a comma")
    return at_door("not_a_number", "", text, "a number is needed")


def decide_csv(given: IO[bytes], into: IO[bytes], asked: Question, read: Callable[[], object]) -> Counts:
    """Decide the rows of a CSV file.

    Parameters
    ----------
    given, into : binary file
        Where the rows come from and where they go, in UTF-8.
    asked : Question
        What is asked of them.
    read : callable
        Told after every part of the file.

    Returns
    -------
    Counts
        What became of the rows.

    Raises
    ------
    LinesRefused
        When lines are refused; what was written until then is no result.
    InputError
        When the file is no CSV, a column is not there, or a law or limit is refused.
    """
    text = io.TextIOWrapper(given, encoding="utf-8-sig", newline="")
    out = io.TextIOWrapper(into, encoding="utf-8", newline="", write_through=True)
    try:
        return _decided(text, out, asked, read)
    except UnicodeDecodeError as wrong:
        raise at_door("not_utf8", "", "", f"it is not UTF-8: {wrong.reason}") from None
    finally:
        text.detach()
        out.detach()


def _decided(text: IO[str], out: IO[str], asked: Question, read: Callable[[], object]) -> Counts:
    records = _records(text, asked.delimiter)
    _, names = next(records, (1, []))
    if not names:
        raise at_door("missing_field", "", "", "it is empty: the names of the columns are needed on its first line")
    writer = csv.writer(out, delimiter=asked.delimiter, lineterminator="\n")
    counts, refused = Counts(), _Refused()
    part: list[tuple[int, list[str]]] | None = None
    head: list[str] = []
    while part is None or part:
        part = list(islice(records, _PART))
        cells = _Cells(names, part, asked.missing)
        found = decided(cells, asked.bore_law, asked.piston_law, asked.bench, asked.columns, asked.same, True)
        counts.add(found.summary)
        refused.add(cells.wrong if asked.partial else cells.reasons | cells.wrong)
        if not head:
            head = [*names, *cells.added]
            writer.writerow(head)
        if not refused.count:
            writer.writerows(found.frame)
        read()
    if refused.count:
        raise LinesRefused(refused.count, refused.named)
    return counts


def _records(text: IO[str], delimiter: str) -> Iterator[tuple[int, list[str]]]:
    """Records with the line that each begins on; empty lines are none."""
    reader = csv.reader(text, delimiter=delimiter, strict=True)
    while True:
        line = reader.line_num + 1
        try:
            row = next(reader)
        except StopIteration:
            return
        except csv.Error as wrong:
            raise at_door("syntax", f"line {line}", "", str(wrong)) from None
        if row:
            yield line, row


class _Refused:
    """Lines that are refused: how many, and the first of them in words."""

    def __init__(self) -> None:
        self.count = 0
        self.named: list[str] = []

    def add(self, reasons: Mapping[int, str]) -> None:
        self.count += len(reasons)
        for line in sorted(reasons)[: _NAMED - len(self.named)]:
            self.named.append(f"line {line}: {reasons[line]}")


class _Cells:
    """Rows of texts, as `gaugepoint.frames` asks for a frame."""

    def __init__(self, names: list[str], part: list[tuple[int, list[str]]], missing: frozenset[str]) -> None:
        self.wrong = {line: f"{len(row)} cells, {len(names)} are needed" for line, row in part if len(row) != len(names)}
        self.part = [(line, row) for line, row in part if line not in self.wrong] if self.wrong else part
        self.frame = [row for _, row in self.part]
        self.reasons: dict[int, str] = {}
        self.added: tuple[str, ...] = ()
        self._names, self._missing = names, missing

    def names(self) -> list[Hashable]:
        return list(self._names)

    def column(self, name: Hashable) -> Column:
        import numpy as np

        place = self._names.index(str(name))
        cells = [row[place] for row in self.frame]
        missing = self._missing
        values = np.array([float(cell) if cell not in missing and _NUMBER.fullmatch(cell) else nan for cell in cells], np.float64)
        lacks = np.isnan(values)
        for k in np.flatnonzero(lacks).tolist():
            if cells[k] not in missing:
                self.wrong.setdefault(self.part[k][0], f"{name}: {_no_number(cells[k])}")
        return Column(values, lambda: lacks, bool(lacks.any()))

    def joined(self, results: _Results) -> list[list[str]]:
        decisions = ["" if code < 0 else _DECISIONS[code] for code in results.decision.tolist()]
        statuses = ["" if lacks else str(status) for status, lacks in zip(results.status.tolist(), results.missing.tolist(), strict=True)]
        reasons = ["" if code < 0 else results.reasons[code] for code in results.reason.tolist()]
        refused = (k for k, decision in enumerate(decisions) if decision == "not judged")
        self.reasons = {self.part[k][0]: reasons[k] for k in refused}
        self.added = (*results.numbers, *_WORDS)
        results_of_rows = zip(*map(_texts, results.numbers.values()), decisions, statuses, reasons, strict=True)
        return [[*row, *added] for row, added in zip(self.frame, results_of_rows, strict=True)]


def _texts(numbers: "NDArray[np.float64]") -> list[str]:
    return ["" if x != x else repr(x) for x in numbers.tolist()]
