"""One value against its limits."""

from gaugepoint import _gaugepoint
from gaugepoint.report import Decision, Rule, read

__all__ = ["decide_mm"]


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
    (``conformance_probability``).

    Parameters
    ----------
    value_mm : float
        The value, in mm.
    standard_uncertainty_mm : float
        Its standard uncertainty, in mm; not negative.
    lower_mm, upper_mm : float or None
        The limits, in mm; at least one.
    rule : {"proven", "simple_acceptance", "conformance_probability"}
        Rule of decision.
    at_least : float
        Probability asked for by the rule ``conformance_probability``; not used by the others.

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
