"""Trials of stacks and of functions: values by number, and what is said of them. `gaugepoint.stack` re-exports what is public."""

from collections.abc import Sequence
from math import inf
from typing import TYPE_CHECKING, Literal, TypeAlias

from gaugepoint import _gaugepoint
from gaugepoint._progress import Progress, reported
from gaugepoint._value import Value, dataclass, read_only
from gaugepoint.error import at_door

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

__all__ = ["AdaptiveRun", "Proportion", "RareTail", "Trials", "TrialsOutside", "TrialsSummary"]

Points: TypeAlias = Literal["random", "latin_hypercube", "sobol"]
Toward: TypeAlias = Literal["lower", "upper"]
Coverage: TypeAlias = Literal["symmetric", "shortest"]


@dataclass(frozen=True, slots=True)
class TrialsSummary(Value):
    """Mean, deviation and coverage intervals of trials."""

    trials: int
    """Number of trials."""
    mean: float
    """Mean."""
    standard_deviation: float
    """Standard deviation."""
    probability: float
    """Coverage probability of the intervals."""
    symmetric: tuple[float, float]
    """Interval with equal probabilities outside. Its ends are values of trials."""
    shortest: tuple[float, float]
    """The shortest interval; of equally short ones the lowest."""


@dataclass(frozen=True, slots=True)
class Proportion(Value):
    """A probability as the share of the trials, with the interval of Clopper and Pearson."""

    count: int
    """Trials that it happened in."""
    probability: float
    """Share of the trials."""
    lower: float
    """Lower end of the interval."""
    upper: float
    """Upper end of the interval."""


@dataclass(frozen=True, slots=True)
class TrialsOutside(Value):
    """Shares of trials outside two limits."""

    below: Proportion
    """Below the lower limit."""
    above: Proportion
    """Above the upper limit."""


@dataclass(frozen=True, slots=True)
class RareTail(Value):
    """A probability from the weights of importance sampling."""

    probability: float
    """Probability beyond the limit."""
    standard_error: float
    """Its standard deviation."""
    lower: float
    """Lower end of its interval, not below 0."""
    upper: float
    """Upper end of its interval."""
    effective_trials: float
    """How many trials of equal weight would say as much."""


@dataclass(frozen=True, slots=True)
class AdaptiveRun(Value):
    """Outcome of an adaptive run."""

    summary: TrialsSummary
    """Results of all trials."""
    sequences: int
    """Number of sequences."""
    tolerance: float
    """Numerical tolerance at the end."""
    settled: bool
    """Whether mean, deviation and both ends are stable to the tolerance; if not, the trials ran out."""


@dataclass(frozen=True, slots=True)
class Trials(Value):
    """A part of a run: the values of the trials `first`, `first + 1`, ...

    Trial i is a function of the seed, the points and i alone: parts, made anywhere and merged in any order, are the whole to the bit.

    Examples
    --------
    >>> from gaugepoint.stack import Contributor, Function, Trials, Variation
    >>> sides = [Contributor(name, 10.0, -0.1, 0.1, Variation.normal(0.03)) for name in "ab"]
    >>> area = Function.from_formula(sides, "a * b")
    >>> parts = [area.trials(1, 600, first=400), area.trials(1, 400)]
    >>> bool((Trials.merged(parts).values == area.trials(1, 1000).values).all())
    True
    >>> area.trials(1, 1000).outside(upper=101.0).above.count
    11
    """

    values: "NDArray[np.float64]"
    """The value of each trial; of importance sampling its weight."""
    seed: int
    """Seed of the run."""
    points: Points = "random"
    """How the points lie."""
    hypercube_trials: int | None = None
    """Trials of the whole run of a Latin hypercube."""
    first: int = 0
    """Number of the first trial."""

    def __post_init__(self) -> None:
        object.__setattr__(self, "values", read_only(self.values))

    @classmethod
    def merged(cls, parts: "Sequence[Trials]") -> "Trials":
        """Give parts of one run, in any order, as one. Refused when trials are missing between two of them or stand in both."""
        first, values = _gaugepoint.trials_merged(parts)
        one = parts[0]
        return cls(values, one.seed, one.points, one.hypercube_trials, first)

    def summary(self, probability: float) -> TrialsSummary:
        """Give mean, standard deviation and the intervals at a coverage probability. Source: JCGM 101:2008, 7.6 and 7.7."""
        return TrialsSummary(*_gaugepoint.trials_summary(self.values, probability))

    def outside(self, lower: float = -inf, upper: float = inf, *, confidence: float = 0.95) -> TrialsOutside:
        """Give the shares of the trials below and above two limits; an infinite limit is none.

        Parameters
        ----------
        lower, upper : float
            The limits.
        confidence : float
            What the intervals cover with, at least.

        Returns
        -------
        TrialsOutside
            Both shares, with their intervals of Clopper and Pearson.

        Raises
        ------
        InputError
            When a limit is no number or out of order, or the points are not random: others are not independent.
        """
        below, above = _gaugepoint.trials_outside(self.values, self.points, self.hypercube_trials, lower, upper, confidence)
        return TrialsOutside(Proportion(*below), Proportion(*above))

    def histogram(self, edges: "Sequence[float] | NDArray[np.float64]") -> "NDArray[np.uint64]":
        """Give how many trials lie above each edge and not above the next."""
        return _gaugepoint.trials_histogram(self.values, edges)

    def rare_tail(self, *, confidence: float = 0.95) -> RareTail:
        """Give the probability that weights of importance sampling come to. Refused with fewer than 100 effective trials."""
        return RareTail(*_gaugepoint.trials_rare_tail(self.values, confidence))


class Runs(Value):
    """Trials of what has a compiled part: shared by `Stack` and `Function`."""

    __slots__ = ()
    _core: "_gaugepoint.Stack | _gaugepoint.Function"

    def trials(
        self,
        seed: int,
        count: int,
        *,
        first: int = 0,
        points: Points = "random",
        hypercube_trials: int | None = None,
        progress: Progress = None,
    ) -> Trials:
        """Give the trials `first` to `first + count - 1`.

        Parameters
        ----------
        seed : int
            Seed, 0 to 2**64 - 1; any will do, and the same one gives the same trials.
        count : int
            How many, up to 2**27.
        first : int
            Number of the first of them.
        points : {"random", "latin_hypercube", "sobol"}
            How the points lie; Sobol's sequence has 64 draws.
        hypercube_trials : int, optional
            Trials of the whole run of a Latin hypercube.
        progress : callable or bool, optional
            A callable of what is done and of how much; True for a bar where tqdm is installed and standard error is a terminal.
            What it raises, and Ctrl-C, stop the work.

        Returns
        -------
        Trials
            Their values.

        Raises
        ------
        InputError
            When a number is refused, or there is no finite value in a trial.
        """
        _whole(seed=seed, first=first, count=count, hypercube_trials=hypercube_trials)
        with reported(progress) as told:
            values = self._core.trials(seed, first, count, points, hypercube_trials, told)
        return Trials(values, seed, points, hypercube_trials, first)

    def adaptive(
        self,
        seed: int,
        probability: float,
        *,
        coverage: Coverage = "symmetric",
        digits: int = 2,
        most_trials: int = 10_000_000,
        progress: Progress = None,
    ) -> AdaptiveRun:
        """Make trials until mean, deviation and both ends of the interval are stable. Source: JCGM 101:2008, 7.9.4.

        Parameters
        ----------
        seed : int
            Seed, 0 to 2**64 - 1.
        probability : float
            Coverage probability of the interval.
        coverage : {"symmetric", "shortest"}
            The interval whose ends must settle.
        digits : int
            Significant digits of the standard deviation that are meant, 1 or 2.
        most_trials : int
            Trials at which it stops unsettled, up to 2**27.
        progress : callable or bool, optional
            A callable of what is done and of how much; True for a bar where tqdm is installed and standard error is a terminal.
            What it raises, and Ctrl-C, stop the work.

        Returns
        -------
        AdaptiveRun
            Results of all trials, and whether they settled.

        Raises
        ------
        InputError
            When a number is refused, or there is no finite value in a trial.
        """
        _whole(seed=seed, digits=digits, most_trials=most_trials)
        with reported(progress) as told:
            found = self._core.adaptive(seed, probability, coverage, digits, most_trials, told)
        summary, sequences, tolerance, settled = found
        return AdaptiveRun(TrialsSummary(*summary), sequences, tolerance, settled)

    def importance(
        self,
        toward: Toward,
        limit: float,
        seed: int,
        count: int,
        *,
        first: int = 0,
        points: Points = "random",
        hypercube_trials: int | None = None,
        progress: Progress = None,
    ) -> Trials:
        """Give the weights of trials of a tail too rare for others; `Trials.rare_tail` says what they come to.

        Parameters
        ----------
        toward : {"lower", "upper"}
            The side of the limit that is rare.
        limit : float
            The limit.
        seed, count, first, points, hypercube_trials, progress
            As of `trials`.

        Returns
        -------
        Trials
            Their weights.

        Raises
        ------
        InputError
            When something is refused, or the limit is not rare or too far away.
        """
        _whole(seed=seed, first=first, count=count, hypercube_trials=hypercube_trials)
        with reported(progress) as told:
            weights = self._core.importance(toward, limit, seed, first, count, points, hypercube_trials, told)
        return Trials(weights, seed, points, hypercube_trials, first)


def _whole(**numbers: int | None) -> None:
    """Refuse what is no whole number from 0 to 2**64 - 1."""
    for field, number in numbers.items():
        if number is not None and not 0 <= number < 1 << 64:
            raise at_door("out_of_range", field, repr(number), "a whole number from 0 to 2^64 - 1 is needed")
