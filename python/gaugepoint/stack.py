"""Stacks of tolerances: linear ones with published forms and the exact distribution of the sum far into its tails; any function; trials of both.

A contributor has a nominal, limits (deviations from the nominal, symmetric or not), and a `Variation`: how its actual size varies. Lengths are in
one unit, the caller's; densities are per that unit. ``core/docs/stack.md`` has the formulas and their sources.
"""

from collections.abc import Sequence
from dataclasses import field
from math import inf
from typing import TYPE_CHECKING, Literal, TypeAlias, cast

from gaugepoint import _gaugepoint
from gaugepoint._value import Value, dataclass, read_only
from gaugepoint.function import Effect, EngineParts, Extreme, Function, FunctionWorstCase, Propagation, engine_stacks
from gaugepoint.trials import AdaptiveRun, Proportion, RareTail, Runs, Trials, TrialsOutside, TrialsSummary

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

__all__ = [
    "AdaptiveRun",
    "Allocation",
    "Capability",
    "Contributor",
    "Curve",
    "Effect",
    "EngineParts",
    "Extreme",
    "Forms",
    "Function",
    "FunctionWorstCase",
    "Propagation",
    "Proportion",
    "RareTail",
    "Sensitivity",
    "Share",
    "SharedCause",
    "Span",
    "Stack",
    "Tail",
    "ToleranceCost",
    "Trials",
    "TrialsOutside",
    "TrialsSummary",
    "Variation",
    "engine_stacks",
]

Kind: TypeAlias = Literal[
    "normal",
    "capability_toward_lower",
    "capability_toward_upper",
    "truncated_normal",
    "rectangular",
    "triangular",
    "trapezoidal",
    "arcsine",
    "beta",
    "skewed",
    "sample",
]


@dataclass(frozen=True, slots=True)
class Variation(Value):
    """How a contributor varies: deviations from its nominal. Made by its class methods; refused when it comes into a stack."""

    kind: Kind
    """The kind."""
    numbers: Sequence[float]
    """Its numbers, in the order of the class method; kept as a tuple."""

    @classmethod
    def normal(cls, standard_deviation: float, centre: float = 0.0) -> "Variation":
        """Normal about a centre."""
        return cls("normal", (centre, standard_deviation))

    @classmethod
    def capability(
        cls, limits: tuple[float, float], cp: float, cpk: float, toward: Literal["lower", "upper"] = "upper"
    ) -> "Variation":
        """Normal from the capability of its process: ``sigma = (upper - lower) / (6 Cp)``, moved by ``3 sigma (Cp - Cpk)`` toward a limit."""
        return cls(cast(Kind, f"capability_toward_{toward}"), (*limits, cp, cpk))

    @classmethod
    def truncated_normal(cls, mean: float, standard_deviation: float, limits: tuple[float, float]) -> "Variation":
        """Normal of this mean and deviation before it was sorted to two limits."""
        return cls("truncated_normal", (mean, standard_deviation, *limits))

    @classmethod
    def rectangular(cls, half_width: float, centre: float = 0.0) -> "Variation":
        """Uniform about a centre."""
        return cls("rectangular", (centre, half_width))

    @classmethod
    def triangular(cls, low: float, mode: float, high: float) -> "Variation":
        """Triangle from its ends and its mode."""
        return cls("triangular", (low, mode, high))

    @classmethod
    def trapezoidal(cls, half_width: float, beta: float, centre: float = 0.0) -> "Variation":
        """Symmetric trapezoid: half-width of the base, width of the top over that of the base."""
        return cls("trapezoidal", (centre, half_width, beta))

    @classmethod
    def arcsine(cls, half_width: float, centre: float = 0.0) -> "Variation":
        """What swings as a sine between its limits."""
        return cls("arcsine", (centre, half_width))

    @classmethod
    def beta(cls, alpha: float, beta: float, low: float, high: float) -> "Variation":
        """Beta of two shapes, each 0.5 to 500, between two limits."""
        return cls("beta", (alpha, beta, low, high))

    @classmethod
    def skewed(cls, quantiles: Sequence[tuple[float, float]]) -> "Variation":
        """Through measured quantiles ``(probability, value)``: straight over the normal score between them and beyond."""
        return cls("skewed", tuple(n for pair in quantiles for n in pair))

    @classmethod
    def sample(cls, values: Sequence[float]) -> "Variation":
        """Measured deviations, each as probable as any other."""
        return cls("sample", values)


@dataclass(frozen=True, slots=True)
class Contributor(Value):
    """A contributor of a stack."""

    name: str
    """Its name; no other contributor and no shared cause has it."""
    nominal: float
    """Nominal size."""
    lower: float
    """Lowest deviation that its limits allow."""
    upper: float
    """Highest deviation that its limits allow."""
    variation: Variation
    """How it varies."""
    coefficient: float = 1.0
    """Change of the stack for a change of this: -1 where it subtracts, 2 where a radius acts on a diameter."""
    count: int = 1
    """How many independent pieces there are, 1 to 1000."""


@dataclass(frozen=True, slots=True)
class SharedCause(Value):
    """A cause that several contributors share: what one adds and another subtracts cancels."""

    name: str
    """Its name."""
    kind: Literal["normal", "rectangular", "triangular", "trapezoidal", "arcsine"]
    """Its distribution, about zero."""
    numbers: Sequence[float]
    """Standard deviation, or half-width; of a trapezoid also the width of its top over that of its base. Kept as a tuple."""
    factors: Sequence[tuple[str, float]]
    """Names of contributors, and how much of the cause each takes. Kept as a tuple."""


@dataclass(frozen=True, slots=True)
class Span(Value):
    """An interval of sizes."""

    lower: float
    """Lower end."""
    upper: float
    """Upper end."""


@dataclass(frozen=True, slots=True)
class Forms(Value):
    """The published forms of a stack."""

    nominal: float
    """Size at nominal."""
    mean: float
    """Mean."""
    standard_deviation: float
    """Standard deviation."""
    worst_case: Span
    """All contributors at their limits at once."""
    root_sum_square: Span
    """Root of the sum of squares of the limits, about the middle of the worst case."""
    bender: Span
    """The same times Bender's 1.5."""
    modified: Span
    """The same times the modified factor, 1 where there is none."""
    modified_factor: float | None
    """Factor of the modified root-sum-square; none for fewer than two pieces or without limits."""


@dataclass(frozen=True, slots=True)
class Share(Value):
    """A share of the variance."""

    name: str
    """Name of the contributor or shared cause."""
    is_shared: bool
    """Whether it is a shared cause."""
    standard_deviation: float
    """Standard deviation that it alone gives the stack."""
    share: float
    """Its share of the variance, 0 to 1."""


@dataclass(frozen=True, slots=True)
class Tail(Value):
    """Probabilities outside limits."""

    below: float
    """Below the lower limit."""
    above: float
    """Above the upper limit."""
    error: float
    """Bound of the relative error of both."""

    @property
    def ppm(self) -> float:
        """Parts per million outside."""
        return 1e6 * (self.below + self.above)


@dataclass(frozen=True, slots=True)
class Capability(Value):
    """Capability of a stack against limits."""

    cp: float
    """``(upper - lower) / (6 sigma)``."""
    cpk: float
    """Smaller distance of the mean from a limit over ``3 sigma``."""
    tail: Tail
    """Probabilities outside, from the exact distribution."""


@dataclass(frozen=True, slots=True)
class Sensitivity(Value):
    """Change of both probabilities for a change of one tolerance, half the distance of its limits; per unit of length."""

    name: str
    """Name of the contributor."""
    tolerance: float
    """Its tolerance."""
    below: float
    """Derivative of the probability below the lower limit."""
    above: float
    """Derivative of the probability above the upper limit."""


@dataclass(frozen=True, slots=True)
class ToleranceCost(Value):
    """Cost of a contributor over its tolerance t, half the distance of its limits: ``fixed + factor / t**power``."""

    contributor: str
    """Name of the contributor."""
    factor: float
    """Factor of the part that depends on the tolerance, above 0."""
    least: float
    """Smallest tolerance that can be made."""
    most: float
    """Largest that is allowed."""
    power: float = 1.0
    """Power of the tolerance, 0.1 to 10: 1 the reciprocal, 2 the reciprocal squared."""
    fixed: float = 0.0
    """Part that does not depend on the tolerance."""


@dataclass(frozen=True, slots=True)
class Allocation(Value):
    """Tolerances of least cost, verified."""

    tolerances: dict[str, float] = field(hash=False)
    """Tolerance of each contributor that has a cost."""
    cost: float
    """Sum of the costs."""
    price: float
    """Change of the cost for a change of the logarithm of what is wanted; 0 when every tolerance is the largest allowed."""
    tail: Tail
    """Probabilities outside with these tolerances, computed anew."""


@dataclass(frozen=True, slots=True)
class Curve(Value):
    """A density to draw."""

    sizes: "NDArray[np.float64]"
    """Sizes in equal steps, in the unit of the stack."""
    densities: "NDArray[np.float64]"
    """Density at each, per that unit."""

    def __post_init__(self) -> None:
        object.__setattr__(self, "sizes", read_only(self.sizes))
        object.__setattr__(self, "densities", read_only(self.densities))


@dataclass(frozen=True, slots=True)
class Stack(Runs):
    """A linear stack. Its parts are refused when it is made.

    Examples
    --------
    >>> from gaugepoint.stack import Contributor, Stack, Variation
    >>> height = Contributor("block height", 227.0, -0.05, 0.05, Variation.normal(0.015))
    >>> rod = Contributor("rod and piston", 217.0, -0.04, 0.04, Variation.rectangular(0.04), coefficient=-1.0)
    >>> stack = Stack([height, rod])
    >>> round(stack.worst_case.upper, 6), f"{stack.outside(9.9, 10.1).ppm:.3f}"
    (10.09, '2.679')
    """

    contributors: Sequence[Contributor]
    """What it is made of; kept as a tuple."""
    causes: Sequence[SharedCause] = ()
    """What several contributors share; kept as a tuple."""
    _core: _gaugepoint.Stack = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        object.__setattr__(self, "_core", _gaugepoint.Stack(self.contributors, self.causes))

    @property
    def forms(self) -> Forms:
        """Worst case, root-sum-square, Bender's and the modified one, with nominal, mean and standard deviation."""
        (nominal, mean, deviation), spans, factor = self._core.forms()
        worst, rss, bender, modified = (Span(*ends) for ends in spans)
        return Forms(nominal, mean, deviation, worst, rss, bender, modified, factor)

    @property
    def worst_case(self) -> Span:
        """All contributors at their limits at once."""
        return self.forms.worst_case

    def root_sum_square(self, factor: float = 1.0) -> Span:
        """Give the root-sum-square of the limits times a factor, about the middle of the worst case."""
        return Span(*self._core.root_sum_square(factor))

    @property
    def shares(self) -> tuple[Share, ...]:
        """Shares of the variance by contributors and shared causes, largest first."""
        return tuple(Share(*share) for share in self._core.shares())

    def outside(self, lower: float = -inf, upper: float = inf) -> Tail:
        """Give the probabilities below and above two limits; an infinite limit is none.

        Parameters
        ----------
        lower, upper : float
            The limits.

        Returns
        -------
        Tail
            Both, with a bound of their relative error.

        Raises
        ------
        InputError
            When a limit is no number or out of order, or a probability is not known to 1e-6.
        """
        return Tail(*self._core.outside(lower, upper))

    def capability(self, lower: float, upper: float) -> Capability:
        """Give Cp and Cpk from mean and standard deviation, and the exact probabilities outside, against two limits."""
        cp, cpk, tail = self._core.capability(lower, upper)
        return Capability(cp, cpk, Tail(*tail))

    def sensitivities(self, lower: float = -inf, upper: float = inf) -> tuple[Sensitivity, ...]:
        """Give the derivatives of the probabilities outside two limits by each tolerance, in the order of the contributors.

        The variation keeps its form and capability: all distances from the middle of its limits change with the tolerance.
        """
        return tuple(Sensitivity(*found) for found in self._core.sensitivities(lower, upper))

    def allocate(
        self,
        lower: float,
        upper: float,
        costs: Sequence[ToleranceCost],
        *,
        outside: float | None = None,
        cpk: float | None = None,
    ) -> Allocation:
        """Give the tolerances of least cost that reach what is wanted against two limits; contributors without a cost keep theirs.

        Parameters
        ----------
        lower, upper : float
            The limits.
        costs : sequence of ToleranceCost
            What tolerances cost, and their bounds.
        outside : float, optional
            Wanted: at most this probability outside, from the exact distribution; 1 ppm is 1e-6.
        cpk : float, optional
            Or at least this Cpk, from mean and standard deviation.

        Returns
        -------
        Allocation
            The tolerances, with what they cost and reach.

        Raises
        ------
        InputError
            When the smallest tolerances do not reach it (``lower`` or ``upper`` of the error is what they reach), or a number is refused.
        """
        tolerances, cost, price, tail = self._core.allocate(lower, upper, outside, cpk, costs)
        names = (c.contributor for c in costs)
        return Allocation(dict(zip(names, tolerances, strict=True)), cost, price, Tail(*tail))

    def quantile(self, probability: float) -> float:
        """Give the size that the stack is below with a probability."""
        return self._core.quantile(probability)

    def quantile_above(self, probability: float) -> float:
        """Give the size that the stack is above with a probability: a small one keeps the digits that ``1 - probability`` has not."""
        return self._core.quantile_above(probability)

    def densities(self, sizes: "Sequence[float] | NDArray[np.float64]") -> "NDArray[np.float64]":
        """Give the density at each size, per unit of length."""
        return self._core.densities(sizes)

    def curve(self, count: int = 201) -> Curve:
        """Give a density to draw: sizes in equal steps between the two that leave 1e-6 outside on their side."""
        return Curve(*self._core.curve(count))

    def histogram(self, edges: "Sequence[float] | NDArray[np.float64]") -> "NDArray[np.float64]":
        """Give the exact probability between each edge and the next."""
        return self._core.histogram(edges)
