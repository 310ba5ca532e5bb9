"""Any function of contributors: a formula, a ready-made stack of an engine, or a callable. `gaugepoint.stack` re-exports what is public."""

from collections.abc import Callable, Sequence
from dataclasses import field
from typing import TYPE_CHECKING, Any, Literal, TypeAlias, cast

from gaugepoint import _gaugepoint
from gaugepoint._value import Value, dataclass
from gaugepoint.error import at_door
from gaugepoint.trials import Runs

if TYPE_CHECKING:
    import numpy as np
    from gaugepoint.stack import Contributor
    from numpy.typing import NDArray

__all__ = ["Effect", "EngineParts", "Extreme", "Function", "FunctionWorstCase", "Propagation", "engine_stacks"]

EngineStack: TypeAlias = Literal[
    "deck_clearance",
    "squish",
    "compression_ratio",
    "bench_clearance",
    "ring_gap",
    "hot_ring_gap",
    "liner_protrusion",
]


@dataclass(frozen=True, slots=True)
class Effect(Value):
    """What a contributor does to a function."""

    name: str
    """Name of the contributor."""
    sensitivity: float
    """Derivative of the function by it, at the means."""
    standard_deviation: float
    """Standard deviation that it alone gives to first order."""
    share: float
    """Share of the variance to first order."""
    alone: float
    """Share of the variance to second order that it has alone."""
    together: float
    """Share of the variance to second order of its products with others; each product stands with both."""


@dataclass(frozen=True, slots=True)
class Propagation(Value):
    """A function by its derivatives at the means of the contributors."""

    derivation: Literal["exact", "numeric"]
    """Where the derivatives come from: the rules of derivation, or differences over twentieths of a standard deviation."""
    nominal: float
    """Value at the nominals."""
    mean: float
    """Value at the means: the mean to first order."""
    standard_deviation: float
    """Standard deviation to first order."""
    second_mean: float
    """Mean to second order."""
    shift: float
    """That mean less the value at the means."""
    second_standard_deviation: float
    """Standard deviation to second order."""
    skewness: float | None
    """Third central moment over the cube of the standard deviation; none when nothing varies or there are too many terms."""
    excess_kurtosis: float | None
    """Fourth central moment over the square of the variance, less 3; none in the same cases."""
    effects: tuple[Effect, ...]
    """What each contributor does, largest share first."""


@dataclass(frozen=True, slots=True)
class Extreme(Value):
    """Smallest or largest value within the limits."""

    attained: float
    """A value that is attained."""
    at: dict[str, float] = field(hash=False)
    """Sizes of the contributors where it is attained."""
    bound: float | None
    """No value lies beyond this; none after a search."""


@dataclass(frozen=True, slots=True)
class FunctionWorstCase(Value):
    """Smallest and largest value when every contributor is anywhere within its limits."""

    lowest: Extreme
    """Smallest."""
    highest: Extreme
    """Largest."""
    proof: Literal["monotone", "subdivision", "searched"]
    """How they were found: two corners, intervals over parts of the limits, or a search beyond which there may be more."""


@dataclass(frozen=True, slots=True)
class EngineParts(Value):
    """A ready-made stack of an engine."""

    contributors: tuple[str, ...]
    """Names of its contributors: lengths in mm, volumes in cm3, temperatures in C, expansions per kelvin."""
    unit: Literal["mm", "1"]
    """Unit of its result."""


def engine_stacks() -> dict[EngineStack, EngineParts]:
    """Give the ready-made stacks of an engine.

    Returns
    -------
    dict
        By its word, the names of its contributors and the unit of its result.

    Examples
    --------
    >>> from gaugepoint.stack import engine_stacks
    >>> engine_stacks()["bench_clearance"]
    EngineParts(contributors=('bore', 'piston'), unit='mm')
    """
    given = _gaugepoint.engine_stacks()
    return {cast(EngineStack, word): EngineParts(tuple(names), cast(Literal["mm", "1"], unit)) for word, names, unit in given}


@dataclass(frozen=True, slots=True)
class Function(Runs):
    """A function of contributors, each of which adds one size. Its parts are refused when it is made.

    Made by its class methods. Contributors have coefficient 1 and count 1: the function says how they act.

    Examples
    --------
    >>> from gaugepoint.stack import Contributor, Function, Variation
    >>> bore = Contributor("bore", 86.02, -0.01, 0.01, Variation.normal(0.003))
    >>> piston = Contributor("piston", 85.96, -0.01, 0.01, Variation.normal(0.003))
    >>> bench = Function.of_engine("bench_clearance", [bore, piston])
    >>> round(bench.nominal, 6), round(bench.worst_case().lowest.attained, 6)
    (0.06, 0.04)
    """

    contributors: "Sequence[Contributor]"
    """What it is a function of; kept as a tuple."""
    formula: str | None = None
    """A formula in ordinary algebra."""
    symbols: Sequence[str] | None = None
    """A symbol of the formula for each contributor; without them their names. Kept as a tuple."""
    engine: EngineStack | None = None
    """Or the word of a ready-made stack."""
    callable: "Callable[..., NDArray[np.float64]] | None" = None
    """Or what computes it."""
    _core: _gaugepoint.Function = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        ways = [name for name in ("formula", "engine", "callable") if getattr(self, name) is not None]
        if len(ways) != 1 or (self.symbols is not None and self.formula is None):
            raise at_door("contradiction", "formula", "", "one of formula, engine and callable is needed, and symbols only with a formula")
        core = _gaugepoint.Function(self.contributors, self.formula, self.symbols, self.engine, self.callable)
        object.__setattr__(self, "_core", core)

    @classmethod
    def from_formula(cls, contributors: "Sequence[Contributor]", text: str, symbols: Sequence[str] | None = None) -> "Function":
        """Make it of a formula, ``acos((a + c) / (e - c))``, in the names of the contributors or in symbols for them."""
        return cls(contributors, text, symbols)

    @classmethod
    def of_engine(cls, word: EngineStack, contributors: "Sequence[Contributor]") -> "Function":
        """Make a ready-made stack of an engine, of the contributors that `engine_stacks` names, in any order."""
        return cls(contributors, engine=word)

    @classmethod
    def of_callable(cls, contributors: "Sequence[Contributor]", f: "Callable[..., NDArray[np.float64]]") -> "Function":
        """Make it of a callable ``f(a, c, e)`` that gets an array of sizes for each contributor and gives an array of values.

        The arrays are float64 and of one length, which may be 1 or thousands. A value must depend on the sizes of its trial alone, or the results mean nothing.
        What it raises comes out as it is. Its derivatives are differences, its worst case is a search.
        """
        return cls(contributors, callable=f)

    @property
    def nominal(self) -> float:
        """Value at the nominals."""
        return self._core.nominal()

    def propagation(self) -> Propagation:
        """Give the moments to first and second order, about the means of the contributors, and what each contributor does.

        Sources: JCGM 100:2008, 5.1.2; Evans, Journal of Quality Technology 7 (1975), from memory.
        """
        derivation, nominal, (mean, deviation), second, effects = self._core.propagation()
        second_mean, shift, second_deviation, skewness, excess_kurtosis = second
        found = tuple(Effect(*effect) for effect in effects)
        return Propagation(derivation, nominal, mean, deviation, second_mean, shift, second_deviation, skewness, excess_kurtosis, found)

    def worst_case(self) -> FunctionWorstCase:
        """Give the smallest and the largest value within the limits of all contributors, proved where it is a formula."""
        proof, *ends = self._core.worst_case()
        lowest, highest = (Extreme(attained, dict(at), bound) for attained, at, bound in ends)
        return FunctionWorstCase(lowest, highest, proof)
