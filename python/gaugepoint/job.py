"""From a job document to its report."""

import json
import math
import os
from collections.abc import Iterator
from typing import Any

from gaugepoint import _gaugepoint
from gaugepoint._progress import Progress, reported
from gaugepoint.error import InputError, at_door
from gaugepoint.report import Report, written

__all__ = ["assess", "job_schema", "report_schema"]

# the library reads no deeper; a document that contains itself ends here too
_DEEPEST = 128


def assess(
    job: dict[str, Any] | str | bytes | os.PathLike[str] | os.PathLike[bytes], *, working: bool = False, progress: Progress = None
) -> Report:
    """Assess a job: from readings to a verdict for every cylinder and the block.

    Readings that are missing give a report that says what is missing. Anything that is refused gives an error and no report.

    Parameters
    ----------
    job : dict, str, bytes or os.PathLike
        The job document: as a dictionary; as JSON (a text that begins with ``{``, or bytes); or the path of a file with the
        JSON (any other text, or a path object).
    working : bool, default False
        Put the working of every number into the report.
    progress : callable or bool, optional
        A callable of what is done and of how much; True for a bar where tqdm is installed and standard error is a terminal.
        What it raises, and Ctrl-C, stop the work.

    Returns
    -------
    Report
        The report, typed. Its JSON is the same to the byte in every host.

    Raises
    ------
    InputError
        When the document or a field of it is refused.
    OSError
        When the file cannot be read.
    TypeError
        When `job` or something in the dictionary is of another type.

    Examples
    --------
    >>> import gaugepoint
    >>> try:
    ...     gaugepoint.assess({"format": "gaugepoint-job", "version": 1})
    ... except gaugepoint.InputError as refused:
    ...     print(refused.kind, refused.field)
    missing_field /job
    """
    with reported(progress) as told:
        return written(Report, *_gaugepoint.assess(document(job), working, told))


def job_schema() -> dict[str, Any]:
    """Give the JSON Schema (draft 2020-12) of a job document.

    Returns
    -------
    dict
        The schema. It says what fields there are; ranges and contradictions are checked by `assess`.

    Examples
    --------
    >>> import gaugepoint
    >>> gaugepoint.job_schema()["title"]
    'Document'
    """
    schema: dict[str, Any] = json.loads(_gaugepoint.job_schema())
    return schema


def report_schema() -> dict[str, Any]:
    """Give the JSON Schema (draft 2020-12) of a report.

    Returns
    -------
    dict
        The schema.

    Examples
    --------
    >>> import gaugepoint
    >>> gaugepoint.report_schema()["title"]
    'Report'
    """
    schema: dict[str, Any] = json.loads(_gaugepoint.report_schema())
    return schema


def document(job: dict[str, Any] | str | bytes | os.PathLike[str] | os.PathLike[bytes]) -> bytes:
    """Give the bytes of a document, wherever it comes from.

    Parameters
    ----------
    job : dict, str, bytes or os.PathLike
        The document: as a dictionary, as JSON, or the path of a file with the JSON.

    Returns
    -------
    bytes
        JSON in UTF-8.
    """
    if isinstance(job, bytes):
        return job
    if isinstance(job, dict):
        return _encoded(_dumped(job))
    if isinstance(job, str) and _is_json(job):
        return _encoded(job)
    with open(os.fspath(job), "rb") as file:
        return file.read()


def _is_json(text: str) -> bool:
    # with a byte order mark it is JSON that the library refuses, not a path
    return text.lstrip("\ufeff \t\r\n").startswith("{")


def _encoded(text: str) -> bytes:
    # a text with lone surrogates becomes bytes that are not UTF-8: the library refuses them
    return text.encode("utf-8", "surrogatepass")


def _dumped(job: dict[str, Any]) -> str:
    try:
        return json.dumps(job, ensure_ascii=False, allow_nan=False)
    except (ValueError, RecursionError):
        for refused in _not_json(job, "", 0):
            raise refused from None
        raise


def _not_json(value: object, path: str, depth: int) -> Iterator[InputError]:
    """What JSON has no place for at `path` and below, in order."""
    if depth > _DEEPEST:
        yield at_door("too_deep", path, "", f"nested more deeply than {_DEEPEST}, or within itself")
        return
    if isinstance(value, float) and not math.isfinite(value):
        yield at_door("not_finite", path, repr(value), "a finite number is needed")
    if isinstance(value, int) and not _has_digits(value):
        yield at_door("too_many_digits", path, "", "a number with more digits than can be written")
    for name, item in _items(value):
        yield from _not_json(item, f"{path}/{name}", depth + 1)


def _items(value: object) -> Iterator[tuple[str, object]]:
    if isinstance(value, dict):
        for name, item in value.items():
            pointer = str(name).replace("~", "~0").replace("/", "~1")
            yield pointer, name
            yield pointer, item
    elif isinstance(value, list | tuple):
        for index, item in enumerate(value):
            yield str(index), item


def _has_digits(value: int) -> bool:
    try:
        str(value)
    except ValueError:
        return False
    return True
