"""A stack as a document: contributors, how they add up, limits of the result, and what is asked; evaluated to its report.

What `gaugepoint.Stack` does in Python, a document does with data. Numbers are plain and in the caller's units. ``None`` means not asked for, or not
there.
"""

import json
import os
from typing import Any

from gaugepoint import _gaugepoint
from gaugepoint._progress import Progress, reported
from gaugepoint.job import document as bytes_of
from gaugepoint.report import (
    CountsReport,
    CurveReport,
    EstimateReport,
    ExactReport,
    HistogramReport,
    LimitsReport,
    Method,
    Points,
    PropagationReport,
    PublishedReport,
    SensitivityReport,
    SettledReport,
    ShareReport,
    SpanReport,
    StackReport,
    TrialsReport,
    WorstCaseReport,
    written,
)

__all__ = [
    "CountsReport",
    "CurveReport",
    "EstimateReport",
    "ExactReport",
    "HistogramReport",
    "LimitsReport",
    "Method",
    "Points",
    "PropagationReport",
    "PublishedReport",
    "SensitivityReport",
    "SettledReport",
    "ShareReport",
    "SpanReport",
    "StackReport",
    "TrialsReport",
    "WorstCaseReport",
    "evaluate_stack",
    "stack_report_schema",
    "stack_schema",
]


def evaluate_stack(
    document: dict[str, Any] | str | bytes | os.PathLike[str] | os.PathLike[bytes], *, working: bool = False, progress: Progress = None
) -> StackReport:
    """Evaluate a stack: worst case, moments, shares, what lies outside the limits, trials.

    Parameters
    ----------
    document : dict, str, bytes or os.PathLike
        The stack document: as a dictionary; as JSON (a text that begins with ``{``, or bytes); or the path of a file with the JSON
        (any other text, or a path object).
    working : bool, default False
        Put the working of every number that has a formula into the report.
    progress : callable or bool, optional
        A callable of what is done and of how much; True for a bar where tqdm is installed and standard error is a terminal.
        What it raises, and Ctrl-C, stop the work.

    Returns
    -------
    StackReport
        The report, typed. Its JSON is the same to the byte in every host.

    Raises
    ------
    InputError
        When the document or a field of it is refused.
    OSError
        When the file cannot be read.
    TypeError
        When `document` or something in the dictionary is of another type.

    Examples
    --------
    >>> import gaugepoint
    >>> shim = {"name": "shim", "nominal": 0.5, "lower": -0.02, "upper": 0.02, "count": 3, "distribution": {"uniform_within_limits": {}}}
    >>> stack = {"format": "gaugepoint-stack", "version": 1, "name": "shims", "contributors": [shim], "limits": {"upper": 1.56}}
    >>> report = gaugepoint.evaluate_stack(stack)
    >>> report.worst_case.upper, report.exact.above
    (1.56, 0.0)
    """
    with reported(progress) as told:
        return written(StackReport, *_gaugepoint.evaluate_stack(bytes_of(document), working, told))


def stack_schema() -> dict[str, Any]:
    """Give the JSON Schema (draft 2020-12) of a stack document.

    Returns
    -------
    dict
        The schema. It says what fields there are; ranges and contradictions are checked by `evaluate_stack`.

    Examples
    --------
    >>> import gaugepoint
    >>> gaugepoint.stack_schema()["title"]
    'StackDocument'
    """
    schema: dict[str, Any] = json.loads(_gaugepoint.stack_schema())
    return schema


def stack_report_schema() -> dict[str, Any]:
    """Give the JSON Schema (draft 2020-12) of a report on a stack.

    Returns
    -------
    dict
        The schema.

    Examples
    --------
    >>> import gaugepoint
    >>> gaugepoint.stack_report_schema()["title"]
    'StackReport'
    """
    schema: dict[str, Any] = json.loads(_gaugepoint.stack_report_schema())
    return schema
