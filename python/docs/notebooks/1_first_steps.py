# ---
# jupyter:
#   jupytext:
#     text_representation:
#       extension: .py
#       format_name: percent
#   kernelspec:
#     display_name: Python 3
#     language: python
#     name: python3
# ---

# %% [markdown]
# # First steps: from readings to a verdict
#
# A piston was read with a micrometer, its bore with a bore gauge. May they go back together? This notebook takes the way from the reading
# to the verdict: first in single numbers, then for a frame of cylinders, then for a whole job with its report.
#
# Each part has three steps. **Predict**: write a number down before you compute. **Compute**. **See the working**: the same number by hand.
#
# All numbers are invented: they describe no real engine and no real gauge. Nothing here replaces the maker's service data. A wrong
# clearance seizes an engine, and that can hurt people.

# %%
# %matplotlib inline
import copy

import gaugepoint
import pandas
from exercise import check, compare
from gaugepoint import plot
from gaugepoint.frames import BenchLimits, decide

# %% [markdown]
# ## A reading is not a size
#
# Sizes are told at 20 C (ISO 1). The workshop is at 27 C, and so are the piston (an aluminium alloy that grows by 19.4e-6 per kelvin) and
# the micrometer (steel, 11.5e-6 per kelvin). It reads 95.9571 mm and is known to read 0.0023 mm too much.
#
# **Predict:** by how many micrometres is the piston smaller at 20 C than the corrected reading says?

# %%
predicted_um = None  # your number

# %%
reading, zero = 95.9571, 0.0023
steel, alloy = 11.5e-6, 19.4e-6
piston = gaugepoint.size_at_20_mm(reading, zero, 27.0, steel, 27.0, alloy)
smaller_um = 1000 * (reading - zero - piston)
compare(predicted_um, smaller_um, "um")

# %% [markdown]
# **The working.** Piston and micrometer both grow by 7 K. The micrometer measures the piston with a scale that grew along with it, so only
# the difference of the two coefficients counts: 96 mm x 7 K x 7.9e-6 / K = 5.3 um. The whole growth of the piston, 13 um, would be the
# wrong number.

# %%
by_hand_um = 1000 * 96 * 7 * (alloy - steel)
assert round(by_hand_um, 1) == 5.3 and round(1000 * 96 * 7 * alloy) == 13
assert abs(smaller_um - by_hand_um) < 0.01

# %% [markdown]
# **Exercise 1.** The micrometer came from a drawer at 20 C, all else is the same. Now by how many micrometres is the piston smaller at 20 C
# than the corrected reading?

# %%
answer_um = None  # your number

# %% jupyter={"source_hidden": true}
# solution: the scale did not grow, so the piston's whole growth counts: 96 mm x 7 K x 19.4e-6 / K
solution_um = 13.0

# %%
cold_gauge = gaugepoint.size_at_20_mm(reading, zero, 20.0, steel, 27.0, alloy)
check(answer_um, solution_um, 1000 * (reading - zero - cold_gauge), 0.1)

# %% [markdown]
# ## Clearance on the bench, and in the running engine
#
# The bore is of iron (11.4e-6 per kelvin) and measures 96.0170 mm at 20 C. Clearances are over the diameter. In the running engine the
# piston is at 125 C and grows by 20e-6 per kelvin as a mean up to there; the wall is at 85 C.
#
# **Predict:** how many micrometres of clearance are left when both have grown freely?

# %%
predicted_um = None  # your number

# %%
bore, iron = 96.0170, 11.4e-6
bench = gaugepoint.bench_clearance_mm(bore, piston)
running = gaugepoint.running_clearance_mm(bore, 85.0, iron, piston, 125.0, 20e-6)
compare(predicted_um, 1000 * running, "um")

# %% [markdown]
# **The working.** On the bench there are 67.5 um. The bore grows by 96 mm x 65 K x 11.4e-6 / K = 71 um, the piston by 96 mm x 105 K x 20e-6
# / K = 202 um: 67.5 + 71 - 202 is about -63 um.
#
# Less than nothing is left, and yet engines run for years like that: skirts are elastic, and the oval skirt touches only where it is
# widest. So a running clearance below zero is no verdict. What counts is whether this piston is tighter than one that the maker accepts.

# %%
assert round(1000 * bench, 1) == 67.5
bore_growth_um, piston_growth_um = 1000 * 96 * 65 * iron, 1000 * 96 * 105 * 20e-6
assert round(bore_growth_um) == 71 and round(piston_growth_um) == 202
assert round(1000 * running) == -63 and abs(1000 * bench + bore_growth_um - piston_growth_um - 1000 * running) < 0.15

# %% [markdown]
# ## Is it proven?
#
# The sheet of limits allows 60 um to 150 um on the bench. The 67.5 um lie inside. But they are uncertain: their standard uncertainty is 5
# um.
#
# **Predict:** does the clearance conform, fail, or is neither proven?

# %%
predicted = None  # "conforms", "does not conform" or "not proven"

# %%
decision = gaugepoint.decide_mm(bench, 0.005, lower_mm=0.060, upper_mm=0.150)
print(decision.result, "because", decision.reason)

# %% [markdown]
# **The working.** To prove conformity at 95 % (ISO 14253-1) a value must lie inside the limits by a guard band of 1.65 standard
# uncertainties: 1.65 x 5 um = 8.25 um. It lies inside by 7.5 um. To prove the contrary it would have to lie outside by as much.

# %%
assert decision.result == "not proven"
assert abs(1000 * decision.guard_band_mm - 8.25) < 1e-9 and abs(1000 * (decision.value_mm - 0.060) - 7.5) < 0.05

# %% [markdown]
# **Exercise 2.** You measure again with a better gauge and find the same clearance. How large may the standard uncertainty be, in um, so
# that conformity is proven?

# %%
answer_um = None  # your number

# %% jupyter={"source_hidden": true}
# solution: 1.65 u may use up the 7.5 um that are there
solution_um = (1000 * bench - 60) / 1.65

# %%
asked_um = solution_um if answer_um is None else answer_um
results = [
    gaugepoint.decide_mm(bench, u / 1000, lower_mm=0.060, upper_mm=0.150).result for u in (asked_um - 0.05, asked_um + 0.05)
]
assert results == ["conforms", "not proven"], "not the edge: " + " and ".join(results)
print(f"{asked_um:.2f} um is the edge")

# %% [markdown]
# ## A frame
#
# Four cylinders, one row for each. In the third somebody typed inches.

# %%
sizes = pandas.DataFrame(
    {
        "bore_mm": [96.017, 96.021, 96.019, 96.020],
        "piston_mm": [95.9495, 95.944, 3.7775, 95.975],
        "bore_temperature_c": 85.0,
        "piston_temperature_c": 125.0,
    },
    index=pandas.Index([1, 2, 3, 4], name="cylinder"),
)
laws = gaugepoint.MeanExpansion(iron), gaugepoint.MeanExpansion(20e-6)
limits = BenchLimits(0.060, 0.150, standard_uncertainty_mm=0.005)
decided = decide(sizes, *laws, limits, same={"parts_temperature_c": 20.0}, partial=True)
decided.frame[["bench_mm", "running_mm", "decision"]].round(4)

# %% [markdown]
# The row in inches is refused, never repaired. The library says what it thinks was meant, and leaves the correction to you.

# %%
print(decided.frame["reason"][3])
assert list(decided.frame["decision"]) == ["not proven", "conforms", "not judged", "does not conform"]

# %% [markdown]
# **Exercise 3.** 3.7775 in is how many millimetres? (1 in is 25.4 mm exactly.) With this number in the frame, what does the library say of
# cylinder 3?

# %%
answer_mm = None  # your number

# %% jupyter={"source_hidden": true}
# solution
solution_mm = 3.7775 * 25.4

# %%
check(answer_mm, solution_mm, 95.9485, 0.0001)  # 37775 x 254 = 9594850, by hand
mended = sizes.assign(piston_mm=[95.9495, 95.944, solution_mm if answer_mm is None else answer_mm, 95.975])
again = decide(mended, *laws, limits, same={"parts_temperature_c": 20.0})
assert again.frame["decision"][3] == "conforms" and again.summary.refused == 0
again.frame[["bench_mm", "decision"]].round(4)

# %% [markdown]
# ## The whole job
#
# Until now somebody had told us the uncertainty. A job document says instead what was read, with what, at which temperature, and how good
# the gauges are. The uncertainty follows. A quantity is a text with its unit, so that none has to be guessed.

# %%
engine = {
    "name": "invented two-cylinder engine",
    "cylinders": 2,
    "bore": {"nominal": "96 mm", "length": "175 mm", "material": "grey iron"},
    "piston": {
        "nominal": "95.95 mm",
        "material": "piston alloy",
        "gauge_point": {"height": "18 mm", "datum": "skirt_bottom", "angle": "0 deg"},
    },
    "reduction": {"size": "largest", "taper": "along_axis", "out_of_round": "at_level"},
}
cold = {"origin": "invented sheet", "reference_temperature": "20 C"}
caps = {"clamping": ["caps_torqued"]}
bare = {"over": "bare_metal", "piston_states": ["new", "run_in"]}
engine["limits"] = {
    "bore_size": {"min": "96.000 mm", "max": "96.040 mm", **cold, **caps},
    "bore_taper": {"max": "0.020 mm", **cold, **caps},
    "bore_out_of_round": {"max": "0.020 mm", **cold, **caps},
    "piston_size": {"min": "95.930 mm", "max": "95.980 mm", **cold, **bare},
    "bench_clearance": {"min": "0.060 mm", "max": "0.150 mm", **cold, **bare, **caps},
}


# %%
def material(name, per_kelvin, error):
    law = {"mean_coefficient": {"base": "20 C", "value": f"{per_kelvin} /K", "from": "0 C", "to": "200 C"}}
    return {
        "name": name,
        "law": law,
        "coefficient_permissible_error": f"{error} /K",
        "source": "invented",
        "confidence": "unverified",
    }


rod = {"standard": "setting rod 75 mm", "size": "75.0003 mm", "expanded_uncertainty": "1.2 um", "coverage_factor": 2}
ring = {"name": "setting ring 96 mm", "size": "96.0000 mm", "expanded_uncertainty": "1.5 um", "coverage_factor": 2}
here = {"material": "gauge steel", "temperature": "27 C"}
of_both = {"resolution": "0.001 mm", "material": "gauge steel", "calibrated": "2026-01-12", "calibration_due": "2027-01-12"}
micrometer = {
    "name": "micrometer",
    "kind": "outside_micrometer",
    "permissible_error": "0.003 mm",
    "repeatability": "0.0012 mm",
    "face_parallelism": "0.002 mm",
    "zero_check": {**rod, **here, "reading": "75.002 mm"},
    **of_both,
}
bore_gauge = {
    "name": "bore gauge",
    "kind": "bore_gauge",
    "permissible_error": "0.002 mm",
    "repeatability": "0.0015 mm",
    "setting": {"ring": {**ring, **here}},
    **of_both,
}

# %% [markdown]
# The readings, as they would stand on a sheet of paper: the piston over its thrust axis, the bore as its deviation from the ring at two
# depths on two axes.

# %%
readings = pandas.DataFrame(
    {
        "piston_mm": ["95.957", "95.970"],
        "top_thrust_mm": ["0.030", "0.027"],
        "top_pin_mm": ["0.027", "0.025"],
        "bottom_thrust_mm": ["0.022", "0.023"],
        "bottom_pin_mm": ["0.021", "0.022"],
    },
    index=[1, 2],
)


def cylinder(number, row):
    places = {
        "top_thrust_mm": ("20 mm", "0 deg"),
        "top_pin_mm": ("20 mm", "90 deg"),
        "bottom_thrust_mm": ("140 mm", "0 deg"),
        "bottom_pin_mm": ("140 mm", "90 deg"),
    }
    gauge_point = engine["piston"]["gauge_point"]
    piston = {
        "gauge": "micrometer",
        **gauge_point,
        "over": "bare_metal",
        "temperature": "27 C",
        "repeats": [f"{row['piston_mm']} mm"] * 2,
    }
    bore = [{"depth": depth, "axis": axis, "repeats": [f"{row[name]} mm"] * 2} for name, (depth, axis) in places.items()]
    return {
        "number": number,
        "piston": {"state": "run_in", "readings": [piston]},
        "bore": {"clamping": "caps_torqued", "gauge": "bore gauge", "temperature": "27 C", "readings": bore},
    }


job = {
    "format": "gaugepoint-job",
    "version": 1,
    "job": {"id": "first-steps", "date": "2026-03-14", "note": "Invented: no such engine, gauge or reading exists."},
    "shop": {"temperature": "27 C", "thermometer": {"permissible_error": "0.5 K"}},
    "materials": [
        material("grey iron", "11.4e-6", "0.6e-6"),
        material("piston alloy", "20.0e-6", "0.5e-6"),
        material("gauge steel", "11.5e-6", "1.0e-6"),
    ],
    "gauges": [micrometer, bore_gauge],
    "engine": engine,
    "cylinders": [cylinder(number, row) for number, row in readings.iterrows()],
}

# %% [markdown]
# **Predict:** which cylinder goes back together, and why not the other?

# %%
report = gaugepoint.assess(job)
print(report.to_text())

# %%
first, second = report.cylinders
assert (first.verdict.outcome, second.verdict.outcome) == ("reuse", "not proven")

# %% [markdown]
# **The working** is in the report when it is asked for: every number names its formula, the numbers that went in, and the source. Here is
# the size of the first piston, worked again from what stands there.

# %%
working = gaugepoint.assess(job, working=True).working
values = {number.id: number.value for number in (*working.inputs, *working.constants, *working.steps)}
step = next(step for step in working.steps if "/cylinders/0/piston/sizes/0/size/value_mm" in step.results)
print(step.symbol, "=", step.formula, step.unit)
print({symbol: values[number] for symbol, number in step.arguments.items()})
assert eval(step.formula, {symbol: values[number] for symbol, number in step.arguments.items()}) == step.value

# %% [markdown]
# By hand: the rod says that the micrometer reads 75.002 - 75.0003 = 0.0017 mm too much. 95.9570 - 0.0017 mm, less 96 mm x 7 K x (20.0 -
# 11.5)e-6 / K = 0.0057 mm, is 95.9496 mm. The largest diameter of the bore is 96.030 mm, so the clearance is about 0.080 mm.

# %%
by_hand = 95.9570 - 0.0017 - 96 * 7 * (20.0 - 11.5) * 1e-6
bench = first.clearance.bench
assert round(by_hand, 4) == 95.9496 and abs(step.value - by_hand) < 0.00005
assert abs(bench.value_mm - (96.030 - by_hand)) < 0.0001

# %% [markdown]
# ## Pictures
#
# The bore as it was read, and what makes the clearance uncertain.

# %%
plot.bore_map(first.bore).figure

# %%
plot.budget_bars(bench).figure

# %% [markdown]
# **Exercise 4.** Which source is the largest? If its half-width could be halved and all else stayed, what would the standard uncertainty of
# the clearance be, in um? (Shares are of the variance: they add up to 1.)

# %%
answer_um = None  # your number

# %% jupyter={"source_hidden": true}
# solution: half the half-width is a quarter of its variance
largest = bench.budget[0]
print(largest.source, f"{100 * largest.share:.0f} % of the variance")
solution_um = 1000 * bench.standard_uncertainty_mm * (1 - 0.75 * largest.share) ** 0.5

# %%
better = copy.deepcopy(job)
better["gauges"][0]["permissible_error"] = "0.0015 mm"
check(answer_um, solution_um, 1000 * gaugepoint.assess(better).cylinders[0].clearance.bench.standard_uncertainty_mm, 0.005)

# %% [markdown]
# ## What is refused
#
# A temperature of 80.6 "C" in the workshop is 27 C, typed in Fahrenheit. It could be converted. It is refused, because a library that
# repairs what it is told will one day repair what was right.

# %%
wrong = {**job, "shop": {**job["shop"], "temperature": "80.6 C"}}
try:
    gaugepoint.assess(wrong)
except gaugepoint.InputError as refused:
    print(refused)
else:
    raise AssertionError("a workshop at 80.6 C was accepted")

# %% [markdown]
# Next: [why pistons are oval](2_why_pistons_are_oval.py).
