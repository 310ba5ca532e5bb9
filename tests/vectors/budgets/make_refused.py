"""Writes the refused budgets of `refused/` from `gum_h1.json`, the same to the byte each time: one change each.

The expected columns of `refused.csv` are written by hand from core/docs/budget.md.
"""

import json
from copy import deepcopy
from pathlib import Path

HERE = Path(__file__).parent
BASE = json.loads((HERE / "gum_h1.json").read_text(encoding="utf-8"))
LEFT_OUT = object()
NORMAL = {"normal": {"standard_deviation": 1}}

CHANGES = {
    "format_of_a_job": ("/format", "gaugepoint-job"),
    "version_2": ("/version", 2),
    "name_blank": ("/name", " "),
    "name_missing": ("/name", LEFT_OUT),
    "field_unknown": ("/modle", "x"),
    "inputs_none": ("/inputs", []),
    "inputs_101": ("/inputs", [{"symbol": f"x{k}", "estimate": 0} for k in range(101)]),
    "model_missing": ("/model", LEFT_OUT),
    "model_number": ("/model", 7),
    "model_empty": ("/model", ""),
    "model_symbol_unknown": ("/model", "ls + d - ls * (dalpha * thetta + alpha * dtheta)"),
    "model_function_unknown": ("/model", "ls + d - ls * (dalpha * theta + sqr(alpha) * dtheta)"),
    "model_parenthesis": ("/model", "ls + d - ls * (dalpha * theta + alpha * dtheta"),
    "model_exponent": ("/model", "ls + d ^ alpha"),
    "model_too_deep": ("/model", "(" * 200 + "ls" + ")" * 200),
    "model_too_long": ("/model", "ls + " * 1000 + "d"),
    "model_leaves_input_out": ("/model", "ls + d - ls * (dalpha * theta + alpha)"),
    "model_not_finite": ("/model", "ls + d - ls * (dalpha * theta + alpha * dtheta) + ln(dalpha)"),
    "model_without_derivative": ("/model", "ls + d - ls * (dalpha * theta + alpha * dtheta) + abs(dalpha)"),
    "probability_missing": ("/probability", LEFT_OUT),
    "probability_1": ("/probability", 1),
    "probability_2": ("/probability", 2),
    "degrees_unknown": ("/degrees", "trunkated"),
    "second_order_word": ("/second_order", "true"),
    "second_order_null": ("/second_order", None),
    "symbol_with_space": ("/inputs/1/symbol", "d e"),
    "symbol_is_function": ("/inputs/1/symbol", "sin"),
    "symbol_twice": ("/inputs/1/symbol", "ls"),
    "symbol_is_source": ("/inputs/0/symbol", "theta_mean"),
    "estimate_missing": ("/inputs/1/estimate", LEFT_OUT),
    "estimate_text": ("/inputs/1/estimate", "215 nm"),
    "estimate_comma": ("/inputs/1/estimate", "215,5"),
    "estimate_huge": ("/inputs/1/estimate", 1e101),
    "unit_blank": ("/inputs/1/unit", ""),
    "terms_and_distribution": ("/inputs/1/distribution", NORMAL),
    "term_unknown": ("/inputs/1/terms/0/source", "d maen"),
    "term_twice": ("/inputs/1/terms/1/source", "d mean"),
    "dof_without_distribution": ("/inputs/1/dof", 5),
    "dof_and_reliability": ("/sources/2/dof", 5),
    "dof_beside_pooled": ("/sources/0/dof", 5),
    "dof_too_small": ("/inputs/0/dof", 0.25),
    "reliability_above_1": ("/sources/2/reliability", 25),
    "source_twice": ("/sources/1/name", "d mean"),
    "source_unused": ("/inputs/1/terms", [{"source": "d mean"}, {"source": "d random"}]),
    "distribution_missing": ("/sources/0/distribution", LEFT_OUT),
    "distribution_unknown": ("/sources/3/distribution", {"rectangle": {"half_width": 1}}),
    "distribution_two": ("/sources/3/distribution", {**NORMAL, "arcsine": {"half_width": 1}}),
    "distribution_alone": ("/sources/3/distribution", "normal"),
    "distribution_list": ("/sources/3/distribution", {"normal": [1]}),
    "half_width_negative": ("/sources/4/distribution/arcsine/half_width", -0.5),
    "half_width_missing": ("/sources/4/distribution/arcsine/half_width", LEFT_OUT),
    "beta_above_1": ("/sources/4/distribution", {"trapezoidal": {"half_width": 1, "beta": 1.5}}),
    "error_above_half_width": (
        "/sources/4/distribution",
        {"curvilinear_trapezoid": {"half_width": 1, "half_width_error": 1}},
    ),
    "coverage_factor_zero": ("/sources/2/distribution/normal_expanded/coverage_factor", 0),
    "coverage_probability_0": ("/sources/1/distribution/student_t_at_coverage/probability", 0),
    "count_zero": ("/sources/0/distribution/pooled/count", 0),
    "count_half": ("/sources/0/distribution/pooled/count", 2.5),
    "repeats_one": ("/sources/4/distribution", {"repeats": {"values": [1]}}),
    "repeats_not_number": ("/sources/4/distribution", {"repeats": {"values": [1, "x", 3]}}),
    "repeats_1001": ("/sources/4/distribution", {"repeats": {"values": [1] * 1001}}),
    "repeats_with_estimate": ("/inputs/2/distribution", {"repeats": {"values": [1, 2]}}),
    "seed_missing": ("/monte_carlo", {"trials": 1000}),
    "seed_negative": ("/monte_carlo", {"seed": -1, "trials": 1000}),
    "trials_missing": ("/monte_carlo", {"seed": 1}),
    "trials_both": ("/monte_carlo", {"seed": 1, "trials": 1000, "most_trials": 1000000}),
    "trials_too_many": ("/monte_carlo", {"seed": 1, "trials": 134217729}),
    "trials_too_few": ("/monte_carlo", {"seed": 1, "trials": 10}),
    "trials_too_few_to_settle": ("/monte_carlo", {"seed": 1, "most_trials": 19999}),
    "digits_3": ("/monte_carlo", {"seed": 1, "trials": 1000, "digits": 3}),
    "coverage_unknown": ("/monte_carlo", {"seed": 1, "trials": 1000, "coverage": "short"}),
    "trial_not_finite": None,
    "degrees_none_left": None,
}


def changed(pointer, value):
    document = deepcopy(BASE)
    *parents, last = pointer.split("/")[1:]
    place = document
    for name in parents:
        place = place[int(name) if isinstance(place, list) else name]
    if value is LEFT_OUT:
        del place[last]
    else:
        place[last] = value
    return document


def alone(distribution, model, **more):
    of = {"symbol": "x", "estimate": 1, "distribution": distribution}
    head = {"format": "gaugepoint-budget", "version": 1, "name": "x"}
    return {**head, "inputs": [of], "model": model, "probability": 0.95, **more}


def document(name):
    if name == "trial_not_finite":
        return alone(NORMAL, "sqrt(x)", monte_carlo={"seed": 1, "trials": 1000})
    if name == "degrees_none_left":
        return alone({"student_t": {"scale": 1, "dof": 0.75}}, "x")
    return changed(*CHANGES[name])


if __name__ == "__main__":
    for name in CHANGES:
        (HERE / "refused" / f"{name}.json").write_text(json.dumps(document(name)) + "\n", encoding="utf-8")
