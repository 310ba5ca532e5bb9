"""Budgets of uncertainty: a result, the formula it comes from, and every source of its uncertainty; and the numbers it takes."""

import json
import os
from dataclasses import field
from typing import Any, ClassVar, Literal

from gaugepoint import _gaugepoint
from gaugepoint._gaugepoint import coverage_factor, effective_dof, numerical_tolerance, standard_uncertainty
from gaugepoint._progress import Progress, reported
from gaugepoint.job import document
from gaugepoint._value import Value, dataclass
from gaugepoint._written import WrittenText
from gaugepoint.report import Warning, written

__all__ = [
    "Adaptive",
    "Budget",
    "Contribution",
    "Expanded",
    "Interval",
    "MonteCarlo",
    "Product",
    "SecondOrder",
    "Validation",
    "budget",
    "budget_report_schema",
    "budget_schema",
    "coverage_factor",
    "effective_dof",
    "numerical_tolerance",
    "standard_uncertainty",
]

Degrees = Literal["as_computed", "truncated"]
"""Which degrees of freedom enter the coverage factor."""

Coverage = Literal["symmetric", "shortest"]
"""Which coverage interval."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Expanded(Value):
    """An expanded uncertainty and how it came about."""

    probability: float
    """Coverage probability."""
    degrees: Degrees
    """Whether the degrees of freedom were truncated."""
    dof: float | None = None
    """Degrees of freedom that entered; None when they are infinite."""
    coverage_factor: float
    """Coverage factor."""
    expanded_uncertainty: float
    """Expanded uncertainty."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Contribution(Value):
    """What one source does to the result."""

    source: str
    """Name of the source."""
    path: str
    """JSON Pointer of the source, or of the input it belongs to."""
    sensitivity: float
    """Derivative of the model by the source."""
    standard_uncertainty: float
    """Standard uncertainty of the source."""
    dof: float | None = None
    """Its degrees of freedom; None when they are infinite."""
    contribution: float
    """Sensitivity times standard uncertainty, with its sign."""
    share: float
    """Share of the variance, 0 to 1."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Product(Value):
    """What two sources do together."""

    first: str
    """Name of the one."""
    second: str
    """Name of the other; the same for the square of one."""
    contribution: float
    """Root of their term of the variance."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SecondOrder(Value):
    """What the second order adds."""

    standard_uncertainty: float | None = None
    """Standard uncertainty with the terms of second order; None when they make the variance negative."""
    shift_of_mean: float
    """Mean of the result less the model at the estimates."""
    third_derivatives: float
    """Part of the variance from third derivatives; it can be negative."""
    products: tuple[Product, ...] = field(repr=False)
    """What two sources do together, the largest first; those that do nothing are left out."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Interval(Value):
    """An interval of the result."""

    lower: float
    """Lower end."""
    upper: float
    """Upper end."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Adaptive(Value):
    """How an adaptive run ended."""

    digits: int
    """Significant digits of the standard uncertainty that were meant."""
    coverage: Coverage
    """Interval whose ends were to settle."""
    sequences: int
    """Number of sequences of trials."""
    tolerance: float
    """Numerical tolerance at the end."""
    settled: bool
    """Whether mean, deviation and both ends are stable to the tolerance; if not, the trials ran out."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MonteCarlo(Value):
    """What the trials say."""

    seed: int
    """Seed of the trials."""
    trials: int
    """Number of trials."""
    mean: float
    """Their mean."""
    standard_deviation: float
    """Their standard deviation."""
    probability: float
    """Coverage probability of the intervals."""
    symmetric: Interval
    """Probabilistically symmetric coverage interval."""
    shortest: Interval
    """Shortest coverage interval."""
    adaptive: Adaptive | None = None
    """How an adaptive run ended; None when the number of trials was given."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Validation(Value):
    """Whether the first order stands against the trials."""

    digits: int
    """Significant digits of the standard uncertainty that were meant."""
    coverage: Coverage
    """Interval it was held against."""
    lower_difference: float
    """Difference of the lower ends."""
    upper_difference: float
    """Difference of the upper ends."""
    tolerance: float
    """Numerical tolerance of the standard uncertainty."""
    validated: bool
    """Whether both differences are within it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Budget(WrittenText):
    """A result with its uncertainty, and where that comes from. ``None`` means not asked for, or infinite degrees of freedom."""

    _made_by: ClassVar[str] = "budget"

    format: str
    """`gaugepoint-budget-report`"""
    version: int
    """Version of the format."""
    library: str
    """Version of the library."""
    name: str
    """Name of the result."""
    note: str | None = None
    """Note of the document."""
    unit: str | None = None
    """Unit of the result, as the document has it."""
    model: str
    """The formula, as the document has it."""
    estimate: float
    """The model at the estimates of its inputs."""
    standard_uncertainty: float
    """Combined standard uncertainty to first order."""
    dof: float | None = None
    """Effective degrees of freedom; None when they are infinite."""
    expanded: Expanded
    """Expanded uncertainty and how it came about."""
    contributions: tuple[Contribution, ...] = field(repr=False)
    """What each source does, the largest share first."""
    second_order: SecondOrder | None = None
    """What the second order adds."""
    monte_carlo: MonteCarlo | None = None
    """What the trials say."""
    validation: Validation | None = None
    """Whether the first order stands against the trials."""
    warnings: tuple[Warning, ...] = field(repr=False)
    """What a reader must know."""


def budget(
    given: dict[str, Any] | str | bytes | os.PathLike[str] | os.PathLike[bytes], *, progress: Progress = None
) -> Budget:
    """Evaluate a budget: a result with its uncertainty to first and second order, and by Monte Carlo where that is asked for.

    Parameters
    ----------
    given : dict, str, bytes or os.PathLike
        The budget document: as a dictionary; as JSON (a text that begins with ``{``, or bytes); or the path of a file with the
        JSON (any other text, or a path object).
    progress : callable or bool, optional
        A callable of what is done and of how much; True for a bar where tqdm is installed and standard error is a terminal.
        What it raises, and Ctrl-C, stop the work.

    Returns
    -------
    Budget
        The report, typed. Its JSON is the same to the byte in every host.

    Raises
    ------
    InputError
        When the document or a field of it is refused.
    OSError
        When the file cannot be read.
    TypeError
        When `given` or something in the dictionary is of another type.

    Examples
    --------
    >>> import gaugepoint
    >>> sides = [
    ...     {"symbol": "a", "estimate": 30.0, "distribution": {"normal": {"standard_deviation": 0.3}}},
    ...     {"symbol": "b", "estimate": 40.0, "distribution": {"rectangular": {"half_width": 0.5}}},
    ... ]
    >>> document = {"format": "gaugepoint-budget", "version": 1, "name": "diagonal", "inputs": sides}
    >>> found = gaugepoint.budget({**document, "model": "sqrt(a^2 + b^2)", "probability": 0.95})
    >>> found.estimate, round(found.standard_uncertainty, 4), found.contributions[0].source
    (50.0, 0.2928, 'b')
    """
    with reported(progress) as told:
        return written(Budget, *_gaugepoint.budget(document(given), told))


def budget_schema() -> dict[str, Any]:
    """Give the JSON Schema (draft 2020-12) of a budget document.

    Returns
    -------
    dict
        The schema. It says what fields there are; ranges and contradictions are checked by `budget`.

    Examples
    --------
    >>> import gaugepoint
    >>> gaugepoint.budget_schema()["title"]
    'BudgetDocument'
    """
    schema: dict[str, Any] = json.loads(_gaugepoint.budget_schema())
    return schema


def budget_report_schema() -> dict[str, Any]:
    """Give the JSON Schema (draft 2020-12) of the report on a budget.

    Returns
    -------
    dict
        The schema.

    Examples
    --------
    >>> import gaugepoint
    >>> gaugepoint.budget_report_schema()["title"]
    'BudgetReport'
    """
    schema: dict[str, Any] = json.loads(_gaugepoint.budget_report_schema())
    return schema
