"""One value against its limits."""

import math
from typing import get_args

import gaugepoint
import pytest
from gaugepoint.report import Rule

# value, uncertainty, lower, upper, rule, at_least, result. Sources: guard band 1.65 u, ISO 14253-1:2017; normal distribution, table:
# Phi(1.28) = 0.8997, Phi(2) = 0.9772
CASES = [
    (86.018, 0.001, None, 86.020, "proven", 0.95, "conforms"),
    (86.0192, 0.001, None, 86.020, "proven", 0.95, "not proven"),
    (86.0208, 0.001, None, 86.020, "proven", 0.95, "not proven"),
    (86.022, 0.001, None, 86.020, "proven", 0.95, "does not conform"),
    (86.0208, 0.001, None, 86.020, "simple_acceptance", 0.95, "does not conform"),
    (86.020, 0.001, None, 86.020, "simple_acceptance", 0.95, "conforms"),
    # guard band U = 2 u: ISO 14253-1:1998; tolerance over the interval 2 U, by hand 20 / 4 = 5: ASME B89.7.3.1
    (86.018, 0.001, None, 86.020, "expanded_guard_band", 0.95, "conforms"),
    (86.0181, 0.001, None, 86.020, "expanded_guard_band", 0.95, "not proven"),
    (86.0221, 0.001, None, 86.020, "expanded_guard_band", 0.95, "does not conform"),
    (86.0195, 0.001, 86.000, 86.020, "simple_acceptance_by_ratio", 5, "conforms"),
    (86.0205, 0.001, 86.000, 86.020, "simple_acceptance_by_ratio", 5, "does not conform"),
    (86.010, 0.001, 86.000, 86.020, "simple_acceptance_by_ratio", 6, "not proven"),
    (86.010, 0.001, None, 86.020, "simple_acceptance_by_ratio", 4, "not proven"),
    (86.002, 0.001, 86.000, None, "conformance_probability", 0.97, "conforms"),
    (86.002, 0.001, 86.000, None, "conformance_probability", 0.98, "not proven"),
    (86.00128, 0.001, 86.000, 86.100, "conformance_probability", 0.89, "conforms"),
    (85.998, 0.001, 86.000, 86.020, "conformance_probability", 0.97, "does not conform"),
]


@pytest.mark.parametrize("case", CASES)
def test_result(case):
    *arguments, result = case
    assert gaugepoint.decide_mm(*arguments).result == result


def test_numbers():
    # Phi(2) to ten digits: standard normal table; guard band 1.65 x 0.001
    decision = gaugepoint.decide_mm(86.018, 0.001, None, 86.020)
    assert decision.probability_of_conformity == pytest.approx(0.9772498681, abs=5e-11)
    assert decision.guard_band_mm == pytest.approx(0.00165, abs=1e-12)
    assert (decision.value_mm, decision.standard_uncertainty_mm) == (86.018, 0.001)
    assert (decision.lower_mm, decision.upper_mm) == (None, 86.020)
    assert decision.reason


def test_defaults_and_names():
    named = gaugepoint.decide_mm(value_mm=86.018, standard_uncertainty_mm=0.001, upper_mm=86.02, rule="proven", at_least=0.95)
    assert named == gaugepoint.decide_mm(86.018, 0.001, None, 86.02)


@pytest.mark.parametrize("rule", get_args(Rule))
def test_every_rule_is_known(rule):
    at_least = 4 if rule == "simple_acceptance_by_ratio" else 0.95
    assert gaugepoint.decide_mm(86.0, 0.0, 85.9, 86.1, rule, at_least).result == "conforms"


@pytest.mark.parametrize(
    "arguments, kind, field",
    [
        ((math.nan, 0.001, 1.0), "not_finite", "value_mm"),
        ((86.0, math.inf, 1.0), "not_finite", "standard_uncertainty_mm"),
        ((86.0, -0.001, 1.0), "out_of_range", "standard_uncertainty_mm"),
        ((86.0, 0.001, math.nan), "not_finite", "lower_mm"),
        ((86.0, 0.001, None, math.nan), "not_finite", "upper_mm"),
        ((86.0, 0.001, 2.0, 1.0), "out_of_order", "upper_mm"),
        ((86.0, 0.001), "missing_field", "upper_mm"),
        ((86.0, 0.001, 1.0, 2.0, "Proven"), "unknown_choice", "rule"),
        ((86.0, 0.001, 1.0, 2.0, "conformance_probability", 95), "out_of_range", "at_least"),
    ],
)
def test_refusal(arguments, kind, field):
    with pytest.raises(gaugepoint.InputError) as refused:
        gaugepoint.decide_mm(*arguments)
    assert (refused.value.kind, refused.value.field) == (kind, field)
