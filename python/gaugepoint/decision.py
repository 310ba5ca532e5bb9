"""One value against its limits, the risks of deciding so over a whole process, and what may be behind a finding by eye."""

from collections.abc import Mapping
from typing import Literal, NamedTuple, TypeAlias

from gaugepoint import _gaugepoint
from gaugepoint._data import read
from gaugepoint._value import Value, dataclass
from gaugepoint.error import at_door
from gaugepoint.report import Asked, Candidate, Cause, Decision, Place, Question, Rule, What

__all__ = [
    "Capability",
    "Explanation",
    "Gamma",
    "Interval",
    "Normal",
    "Risks",
    "Triangular",
    "Uniform",
    "acceptance",
    "acceptance_for_risk",
    "capability",
    "decide_mm",
    "explain",
    "global_risks",
]

Guard = Literal["proven", "stringent", "relaxed", "ratio_at_least"]
"""How an acceptance interval follows from the tolerance."""


@dataclass(frozen=True, slots=True)
class Normal(Value):
    """Normal distribution."""

    mean: float
    """Mean."""
    deviation: float
    """Standard deviation, above 0."""


@dataclass(frozen=True, slots=True)
class Uniform(Value):
    """Uniform distribution."""

    low: float
    """Smallest."""
    high: float
    """Largest."""


@dataclass(frozen=True, slots=True)
class Triangular(Value):
    """Triangular distribution."""

    low: float
    """Smallest."""
    mode: float
    """Most frequent."""
    high: float
    """Largest."""


@dataclass(frozen=True, slots=True)
class Gamma(Value):
    """Gamma distribution: for what cannot be negative, such as run-out or out-of-round."""

    shape: float
    """Shape, 0.01 to 1000."""
    scale: float
    """Scale, above 0: the mean is shape times scale."""


Distribution: TypeAlias = Normal | Uniform | Triangular | Gamma
"""Distribution of the items that come to be measured."""


class Interval(NamedTuple):
    """Limits with one or two sides; as a tuple it is the tolerance of another call."""

    lower: float | None
    """Lower limit."""
    upper: float | None
    """Upper limit."""


Limits: TypeAlias = tuple[float | None, float | None]
"""Lower and upper limit: an `Interval` or a plain tuple."""


@dataclass(frozen=True, slots=True)
class Risks(Value):
    """Shares of all items."""

    conforming: float
    """Items that conform."""
    consumer: float
    """Global consumer's risk: accepted, and does not conform."""
    producer: float
    """Global producer's risk: rejected, and conforms."""


@dataclass(frozen=True, slots=True)
class Capability(Value):
    """Process capability."""

    cpk: float
    """Distance of the mean from the nearer limit in three standard deviations; negative outside."""
    outside: float
    """Share of the items outside the limits."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Explanation(Value):
    """What may be behind a finding."""

    candidates: tuple[Candidate, ...]
    """Causes that agree with it and with the answers, those that are confirmed first."""
    ask: tuple[Asked, ...]
    """Open questions: first the one on which most candidates depend."""
    cause_found: Cause | None = None
    """The cause, when it is known: answers were given that one candidate alone agrees with, and it is confirmed."""


def decide_mm(
    value_mm: float,
    standard_uncertainty_mm: float,
    lower_mm: float | None = None,
    upper_mm: float | None = None,
    rule: Rule = "proven",
    at_least: float = 0.95,
) -> Decision:
    """Judge one value with its standard uncertainty.

    Valid for a value whose error is normal. Sources: ISO 14253-1:2017 (``proven``), JCGM 106:2012
    (``conformance_probability``), ISO 14253-1:1998 (``expanded_guard_band``, the guard band is twice the standard
    uncertainty), ASME B89.7.3.1-2001 (``simple_acceptance_by_ratio``).

    Parameters
    ----------
    value_mm : float
        The value, in mm.
    standard_uncertainty_mm : float
        Its standard uncertainty, in mm; not negative.
    lower_mm, upper_mm : float or None
        The limits, in mm; at least one.
    rule : {"proven", "simple_acceptance", "conformance_probability", "expanded_guard_band", "simple_acceptance_by_ratio"}
        Rule of decision.
    at_least : float
        Probability asked for by the rule ``conformance_probability``, or the ratio of the tolerance to the uncertainty interval,
        four times the standard uncertainty, asked for by ``simple_acceptance_by_ratio``; not used by the others.

    Returns
    -------
    Decision
        What the rule says, with its guard band, the probability of conformity and the reason in words.

    Raises
    ------
    InputError
        When a number is not finite or impossible, the limits are out of order or missing, or the rule is unknown.

    Examples
    --------
    1.65 standard uncertainties inside a single limit is proven, half of that is not.

    >>> import gaugepoint
    >>> gaugepoint.decide_mm(86.018, 0.001, upper_mm=86.020).result
    'conforms'
    >>> gaugepoint.decide_mm(86.0192, 0.001, upper_mm=86.020).result
    'not proven'
    """
    return read(
        Decision, _gaugepoint.decide_mm(value_mm, standard_uncertainty_mm, lower_mm, upper_mm, rule, at_least)
    )


def global_risks(items: Distribution, u: float, tolerance: Limits, accepted: Limits | None = None) -> Risks:
    """Give the global risks of accepting by one interval what should conform to another.

    The measurement error is normal. All numbers are in one unit, whichever it is. Source: JCGM 106:2012, 9.4.

    Parameters
    ----------
    items : Normal, Uniform, Triangular or Gamma
        Distribution of the items that come to be measured.
    u : float
        Standard uncertainty of a measurement.
    tolerance : tuple of float or None
        Lower and upper limit of what conforms; None where there is none, at least one.
    accepted : tuple of float or None, optional
        Lower and upper limit of what is accepted; without it, the tolerance itself.

    Returns
    -------
    Risks
        Shares of all items: conforming, accepted wrongly, rejected wrongly.

    Raises
    ------
    InputError
        When a number is not finite, or a distribution or an interval is impossible; it names the parameter.

    Examples
    --------
    Bearings with a run-out of 1 um on average, limit 2 um, u 0.25 um (JCGM 106:2012, 9.5.4).

    >>> import gaugepoint
    >>> risks = gaugepoint.global_risks(gaugepoint.Gamma(shape=4, scale=0.25), 0.25, tolerance=(None, 2.0))
    >>> f"{risks.consumer:.1%}"
    '0.8%'
    """
    return Risks(*_gaugepoint.global_risks(items, u, tolerance, tolerance if accepted is None else accepted))


def acceptance(tolerance: Limits, u: float, guard: Guard = "proven", amount: float | None = None) -> Interval:
    """Give the acceptance interval of a tolerance by a rule.

    ``U`` is the expanded uncertainty ``2 u``. Sources: ISO 14253-1:2017 (``proven``); ASME B89.7.3.1 and JCGM 106:2012, 8.3.2.

    Parameters
    ----------
    tolerance : tuple of float or None
        Lower and upper limit of what conforms; None where there is none, at least one.
    u : float
        Standard uncertainty of a measurement.
    guard : {"proven", "stringent", "relaxed", "ratio_at_least"}
        Inside by ``1.65 u``; inside by `amount` times ``U``; outside by `amount` times ``U``; or the tolerance itself, which must be
        at least `amount` times ``2 U`` wide.
    amount : float, optional
        The number of the rule: given with all but ``proven``.

    Returns
    -------
    Interval
        Lower and upper limit of what is accepted.

    Raises
    ------
    InputError
        When a number is not finite or missing, the rule is unknown, the interval is impossible, the guard bands leave nothing, or the
        ratio is not reached; it names the parameter.

    Examples
    --------
    >>> import gaugepoint
    >>> gaugepoint.acceptance((None, 2.0), 0.125, "stringent", 1.0)
    Interval(lower=None, upper=1.75)
    """
    if guard == "proven":
        if amount is not None:
            raise at_door("contradiction", "amount", repr(amount), "this choice does not use the number")
        return Interval(*_gaugepoint.acceptance_proven(tolerance, u))
    rule = _WITH_AMOUNT.get(guard)
    if rule is None:
        accepted = ", ".join(["proven", *_WITH_AMOUNT])
        raise at_door("unknown_choice", "guard", str(guard), f"not one of the choices; accepted: {accepted}")
    if amount is None:
        raise at_door("missing_field", "amount", "", "this choice needs its number")
    return Interval(*rule(tolerance, u, amount))


_WITH_AMOUNT = {
    "stringent": _gaugepoint.acceptance_stringent,
    "relaxed": _gaugepoint.acceptance_relaxed,
    "ratio_at_least": _gaugepoint.acceptance_ratio,
}


def acceptance_for_risk(items: Distribution, u: float, tolerance: Limits, wanted: float) -> Interval:
    """Give the acceptance interval, narrowed or widened equally at each limit, with a wanted consumer's risk.

    Source: JCGM 106:2012, 9.4, solved for the guard band.

    Parameters
    ----------
    items : Normal, Uniform, Triangular or Gamma
        Distribution of the items that come to be measured.
    u : float
        Standard uncertainty of a measurement.
    tolerance : tuple of float or None
        Lower and upper limit of what conforms; None where there is none, at least one.
    wanted : float
        The global consumer's risk: share of all items that is accepted and does not conform.

    Returns
    -------
    Interval
        Lower and upper limit of what is accepted.

    Raises
    ------
    InputError
        When no guard band within ten standard uncertainties gives that risk (the error has the risks that can be had), or a number,
        a distribution or an interval is impossible; it names the parameter.

    Examples
    --------
    The bearings of JCGM 106:2012, 9.5.4: one in a thousand may be accepted wrongly.

    >>> import gaugepoint
    >>> bearings = gaugepoint.Gamma(shape=4, scale=0.25)
    >>> limit = gaugepoint.acceptance_for_risk(bearings, 0.25, tolerance=(None, 2.0), wanted=0.001)
    >>> round(limit.upper, 2)
    1.67
    """
    return Interval(*_gaugepoint.acceptance_for_risk(items, u, tolerance, wanted))


def capability(mean: float, deviation: float, tolerance: Limits) -> Capability:
    """Give the capability of a normal process.

    Source: ISO 22514-2.

    Parameters
    ----------
    mean, deviation : float
        Mean and standard deviation of the process, in any one unit.
    tolerance : tuple of float or None
        Lower and upper limit; None where there is none, at least one.

    Returns
    -------
    Capability
        Cpk, and the share of the items outside the limits.

    Raises
    ------
    InputError
        When a number is not finite, the deviation is not above 0, or the interval is impossible; it names the parameter.

    Examples
    --------
    >>> import gaugepoint
    >>> gaugepoint.capability(10.0, 0.25, tolerance=(9.0, 10.75)).cpk
    1.0
    """
    return Capability(*_gaugepoint.capability(mean, deviation, tolerance))


def explain(place: Place, what: What, answers: Mapping[Question, bool]) -> Explanation:
    """Give the causes that agree with a finding by eye and with the answers so far, and what to ask next.

    The catalogue of signs is common practice of the trade, no source. No candidate is no clearance: then the catalogue does not know
    what was seen.

    Parameters
    ----------
    place : str
        Where it was seen, such as ``skirt``.
    what : str
        What was seen, such as ``scuffing``.
    answers : mapping of str to bool
        Questions that were answered, True for yes; empty before the first.

    Returns
    -------
    Explanation
        Candidates, what to ask, and the cause when it is known.

    Raises
    ------
    InputError
        When a word is not one of the choices; it names the place.

    Examples
    --------
    >>> import gaugepoint
    >>> gaugepoint.explain("skirt", "diagonal_wear", {}).ask[0].text
    'Is the rod bent or twisted by its gauge?'
    >>> gaugepoint.explain("skirt", "diagonal_wear", {"rod_bent": False}).cause_found
    'bore_not_square'
    """
    return read(Explanation, _gaugepoint.explain(place, what, list(answers.items())))
