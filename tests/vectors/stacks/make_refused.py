"""Writes the refused stacks of `refused/` from the other documents, the same to the byte each time: one change each, or two where one alone would do nothing.

The expected columns of `refused.csv` are written by hand from core/docs/stack-document.md.
"""

import json
from copy import deepcopy
from pathlib import Path

HERE = Path(__file__).parent
FILES = {name: HERE / f"{name}.json" for name in ("clutch", "ratio", "shims")}
FILES["deck"] = HERE.parent.parent.parent / "core" / "examples" / "deck_stack.json"
LEFT_OUT = object()
SETTLE = {"digits": 1, "most_trials": 1000000}
SAMPLE = {"sample": {"values": [0.1]}}

# document, then pointer and value in turn
CHANGES = {
    "format_of_a_job": ("deck", "/format", "gaugepoint-job"),
    "version_2": ("deck", "/version", 2),
    "name_blank": ("deck", "/name", " "),
    "name_missing": ("deck", "/name", LEFT_OUT),
    "field_unknown": ("deck", "/limit", {"lower": 0}),
    "contributors_none": ("deck", "/contributors", []),
    "contributor_twice": ("deck", "/contributors/1/name", "block height"),
    "limits_in_disorder": ("deck", "/limits/upper", 0.1),
    "limits_empty": ("deck", "/limits", {}),
    "formula_beside_causes": ("deck", "/formula", "block"),
    "cause_on_unknown": ("deck", "/causes/0/on/0/contributor", "rood"),
    "cause_factor_huge": ("deck", "/causes/0/on/0/factor", 1e9),
    "cause_without_effect": ("deck", "/causes/0/on", []),
    "cause_within_limits": ("deck", "/causes/0/distribution", {"uniform_within_limits": {}}),
    "capability_above": ("deck", "/contributors/0/distribution/normal_by_capability/cpk", 2),
    "coefficient_zero": ("deck", "/contributors/1/coefficient", 0),
    "count_half": ("deck", "/contributors/1/count", 1.5),
    "trials_one": ("deck", "/monte_carlo/trials", 1),
    "trials_missing": ("deck", "/monte_carlo/trials", LEFT_OUT),
    "trials_and_settle": ("deck", "/monte_carlo/settle", SETTLE),
    "settle_of_sobol": ("deck", "/monte_carlo/trials", LEFT_OUT, "/monte_carlo/settle", SETTLE),
    "settle_digits_3": ("shims", "/monte_carlo/settle/digits", 3),
    "settle_too_few": ("shims", "/monte_carlo/settle/most_trials", 19999),
    "settle_unknown": ("shims", "/monte_carlo/settle/digit", 1),
    "probability_1": ("shims", "/monte_carlo/probability", 1),
    "sensitivities_without_limits": ("deck", "/limits", LEFT_OUT, "/monte_carlo/rare", LEFT_OUT),
    "sensitivities_of_a_formula": ("clutch", "/sensitivities", True),
    "curve_of_one_point": ("deck", "/curve", 1),
    "curve_of_a_formula": ("clutch", "/curve", 100),
    "curve_of_samples_alone": ("clutch", "/formula", LEFT_OUT, "/contributors", [{"name": "x", "nominal": 0, "lower": -1, "upper": 1, "distribution": SAMPLE}], "/limits", LEFT_OUT, "/monte_carlo", LEFT_OUT, "/curve", 9),
    "histogram_empty": ("deck", "/histogram", {}),
    "histogram_twice": ("shims", "/histogram/bins", 4),
    "histogram_one_edge": ("shims", "/histogram/edges", [0]),
    "histogram_in_disorder": ("shims", "/histogram/edges/2", -0.2),
    "histogram_edge_text": ("shims", "/histogram/edges/2", "5 %"),
    "histogram_no_bins": ("deck", "/histogram/bins", 0),
    "histogram_of_a_formula": ("clutch", "/histogram", {"bins": 9}, "/monte_carlo", LEFT_OUT),
    "histogram_of_a_formula_in_disorder": ("clutch", "/histogram", {"edges": [0.2, 0.1]}),
    "histogram_of_nothing": ("shims", "/contributors", [{"name": "x", "nominal": 0, "lower": 0, "upper": 0, "distribution": {"sample": {"values": [0]}}}], "/histogram", {"bins": 3}, "/monte_carlo", LEFT_OUT),
    "engine_beside_formula": ("clutch", "/engine", "squish"),
    "engine_unknown": ("ratio", "/engine", "compression_ration"),
    "engine_without_contributor": ("ratio", "/contributors/8", LEFT_OUT),
    "engine_of_other_contributors": ("ratio", "/engine", "squish"),
    "engine_impossible": ("ratio", "/contributors/0/nominal", 3.38),
    "engine_with_unit": ("ratio", "/unit", "mm"),
    "formula_leaves_contributor_out": ("clutch", "/formula", "a + c"),
    "formula_name_unknown": ("clutch", "/formula", "a + c + f"),
    "formula_not_finite": ("clutch", "/formula", "ln(a + c - e)"),
    "runs_at_random": ("clutch", "/monte_carlo/runs", 3),
    "rare_not_rare": ("clutch", "/limits/lower", 0.13),
    "rare_out_of_reach": ("clutch", "/limits/upper", 9),
    "rare_without_limits": ("clutch", "/limits", LEFT_OUT),
    "rare_word": ("ratio", "/monte_carlo/rare", "yes"),
    "symbol_is_constant": ("clutch", "/contributors/2/symbol", "pi"),
    "symbol_twice": ("clutch", "/contributors/2/symbol", "c"),
    "nominal_huge": ("clutch", "/contributors/0/nominal", 1e9),
    "limits_of_contributor": ("clutch", "/contributors/0/upper", -1),
    "count_in_a_formula": ("clutch", "/contributors/0/count", 2),
    "coefficient_in_a_formula": ("clutch", "/contributors/0/coefficient", -1),
    "centre_huge": ("clutch", "/contributors/0/centre", 1e9),
    "centre_of_a_sample": ("clutch", "/contributors/0/distribution", SAMPLE, "/contributors/0/centre", 0.1),
    "deviation_negative": ("clutch", "/contributors/0/distribution/normal/standard_deviation", -1),
    "beta_in_disorder": ("clutch", "/contributors/0/distribution", {"beta": {"alpha": 1, "beta": 1, "low": 1, "high": 0}}),
    "distribution_unknown": ("clutch", "/contributors/0/distribution", {"gaussian": {"standard_deviation": 1}}),
}


def set_at(document, pointer, value):
    *parents, last = pointer.split("/")[1:]
    place = document
    for name in parents:
        place = place[int(name) if isinstance(place, list) else name]
    last = int(last) if isinstance(place, list) else last
    if value is LEFT_OUT:
        del place[last]
    else:
        place[last] = value


def document(name, *changes):
    out = deepcopy(json.loads(FILES[name].read_text(encoding="utf-8")))
    for pointer, value in zip(changes[::2], changes[1::2]):
        set_at(out, pointer, value)
    return out


if __name__ == "__main__":
    for name, change in CHANGES.items():
        (HERE / "refused" / f"{name}.json").write_text(json.dumps(document(*change)) + "\n", encoding="utf-8")
