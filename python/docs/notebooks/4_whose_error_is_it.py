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
# # Whose error is it?
#
# A clearance is the difference of two readings. How sure it is depends not only on how good the two gauges are, but on what they share: an
# error that stands in both readings goes out of the difference. This notebook holds the gauges in three ways and asks which is best.
#
# All parts, gauges and readings are invented. A better gauge does not make a tight piston safe: the maker's service data come first.

# %%
# %matplotlib inline
import copy
from math import sqrt

import gaugepoint
import numpy
import pandas
from exercise import check, compare
from gaugepoint import plot

# %% [markdown]
# ## Three ways to hold the gauges
#
# The piston is read with a micrometer: 85.952 mm. Its bore of 86 mm is read with a bore gauge, which must first be set to a known size.
# Three ways are usual:
#
# 1. **ring**: the bore gauge is set on a ring of certified size;
# 2. **round size**: it is set between the faces of the same micrometer, locked at 86.000 mm;
# 3. **zeroed**: it is set between the faces of the same micrometer, locked at the very reading of the piston.
#
# How good they are (half-widths between which everything is equally likely, unless it says otherwise): scale of the micrometer 3 um,
# parallelism of its faces 2 um, travel of the bore gauge 2 um, steps of both 1 um. Standard deviation of one reading 1.2 um, each part is
# read three times. The ring is certified to 1.5 um and the rod for the zero of the micrometer to 1.2 um, both with k = 2.
#
# **Predict:** which way knows the *bore* best, and which the *clearance*?

# %%
predicted_bore, predicted_clearance = None, None  # "ring", "round size" or "zeroed"


# %%
def material(name, per_kelvin, error):
    law = {"mean_coefficient": {"base": "20 C", "value": f"{per_kelvin} /K", "from": "0 C", "to": "100 C"}}
    return {
        "name": name,
        "law": law,
        "coefficient_permissible_error": f"{error} /K",
        "source": "invented",
        "confidence": "unverified",
    }


gauge = {
    "resolution": "0.001 mm",
    "repeatability": "0.0012 mm",
    "material": "gauge steel",
    "calibrated": "2026-01-12",
    "calibration_due": "2027-01-12",
}
rod = {
    "standard": "rod 75 mm",
    "size": "75.0003 mm",
    "expanded_uncertainty": "1.2 um",
    "coverage_factor": 2,
    "material": "gauge steel",
    "reading": "75.002 mm",
    "temperature": "23 C",
}
ring = {
    "name": "ring 86 mm",
    "size": "85.9996 mm",
    "expanded_uncertainty": "1.5 um",
    "coverage_factor": 2,
    "material": "gauge steel",
    "temperature": "23 C",
}
settings = {
    "ring": {"ring": ring},
    "round size": {"micrometer": {"gauge": "micrometer", "reading": "86.000 mm", "temperature": "23 C"}},
    "zeroed": {"micrometer": {"gauge": "micrometer", "reading": "85.952 mm", "temperature": "23 C"}},
}
micrometer = {
    "name": "micrometer",
    "kind": "outside_micrometer",
    "permissible_error": "0.003 mm",
    "face_parallelism": "0.002 mm",
    "zero_check": rod,
    **gauge,
}
bore_gauges = [
    {"name": f"bore gauge, {way}", "kind": "bore_gauge", "permissible_error": "0.002 mm", "setting": setting, **gauge}
    for way, setting in settings.items()
]
deviations = {"ring": "0.005 mm", "round size": "0.007 mm", "zeroed": "0.055 mm"}
piston = {
    "name": "piston",
    "gauge": "micrometer",
    "nominal": "85.95 mm",
    "material": "piston alloy",
    "temperature": "23 C",
    "repeats": ["85.952 mm"] * 3,
}
bores = [
    {
        "name": f"bore, {way}",
        "gauge": f"bore gauge, {way}",
        "nominal": "86 mm",
        "material": "grey iron",
        "temperature": "23 C",
        "repeats": [deviation] * 3,
    }
    for way, deviation in deviations.items()
]
document = {
    "format": "gaugepoint-measurement",
    "version": 1,
    "measurement": {"id": "three-ways", "date": "2026-03-14", "note": "Invented: no such part, gauge or reading exists."},
    "shop": {"temperature": "23 C", "thermometer": {"permissible_error": "0.5 K"}},
    "materials": [
        material("piston alloy", "20.0e-6", "0.5e-6"),
        material("grey iron", "11.2e-6", "0.6e-6"),
        material("gauge steel", "11.5e-6", "1.0e-6"),
    ],
    "gauges": [micrometer, *bore_gauges],
    "readings": [{"outside": piston}, *({"inside": bore} for bore in bores)],
    "differences": [{"name": way, "larger": f"bore, {way}", "smaller": "piston"} for way in settings],
}

# %%
report = gaugepoint.measure(document)
u = {reading.name.removeprefix("bore, "): 1000 * reading.result.standard_uncertainty_mm for reading in report.readings}
u_clearance = {difference.name: 1000 * difference.result.standard_uncertainty_mm for difference in report.differences}
pandas.DataFrame({"u of the bore, um": {way: u[way] for way in settings}, "u of the clearance, um": u_clearance}).round(2)

# %% [markdown]
# The ring knows the bore best. It is not the best for the clearance: zeroed on the piston the bore is known worse, and the clearance
# better. The round size is the worst of all.

# %%
assert (
    min(settings, key=u.get) == "ring"
    and min(u_clearance, key=u_clearance.get) == "zeroed"
    and max(u_clearance, key=u_clearance.get) == "round size"
)
assert u["zeroed"] > u["ring"] and u_clearance["zeroed"] < u_clearance["ring"]

# %% [markdown]
# ## The working
#
# What every source does to the clearance, in um and with its sign. A source that stands in both readings is one line.

# %%
lines = {d.name: {line.source: 1000 * line.contribution_mm for line in d.result.budget} for d in report.differences}
# without the names of the three bore gauges the same source of each is one row
table = pandas.DataFrame(
    {way: {source.replace(f", {way}", ""): um for source, um in of_way.items()} for way, of_way in lines.items()}
)
print(table[table.abs().max(axis=1) > 0.05].to_string(na_rep="", float_format="{:+.2f}".format))

# %% [markdown]
# Read the lines of the scale. Its error is one at one reading and another at another: of a scale that is only known to be good to 3 um
# nothing else can be said.
#
# - On the **ring** it stands in the piston alone: 3 um / sqrt(3) = 1.73 um.
# - At the **round size** it stands there twice, at 85.952 mm and at 86.000 mm: these are two errors, and nothing goes out.
# - **Zeroed** it is one error at one reading, in the bore with plus and in the piston with minus: it is gone.
#
# The zero of the micrometer goes out as soon as both readings stand on it. The faces are touched anew each time, and do not go out.
#
# By hand: half-widths over sqrt(3), deviations of means over sqrt(3 readings), half steps over sqrt(3). Temperatures and coefficients are
# left out, they are small.

# %%
scale, faces, travel, step = 3 / sqrt(3), 2 / sqrt(3), 2 / sqrt(3), 0.5 / sqrt(3)
repeat, ring_um, rod_um = 1.2 / sqrt(3), 1.5 / 2, 1.2 / 2
by_hand = {
    # both parts: repeatability and steps; the bore gauge: its travel, and the step at its setting
    "ring": [scale, faces, rod_um, step, ring_um, travel, step, repeat, step, repeat, step],
    "round size": [scale, scale, faces, faces, step, travel, step, repeat, step, repeat, step],
    "zeroed": [faces, faces, step, travel, step, repeat, step, repeat, step],
}
for way, sources in by_hand.items():
    u_by_hand = sqrt(sum(x * x for x in sources))
    print(f"{way}: by hand {u_by_hand:.2f} um, the library {u_clearance[way]:.2f} um")
    assert abs(u_by_hand - u_clearance[way]) < 0.02
assert round(scale, 2) == 1.73

# %% [markdown]
# ## The same with trials
#
# Whoever does not believe in budgets draws the errors. The trials below know nothing of correlation: they draw one error of the scale for
# each reading of the micrometer, and add it wherever that reading is used.

# %%
draws, trials = numpy.random.default_rng(20260314), 200_000


def rectangle(half_width):
    return draws.uniform(-half_width, half_width, trials)


def read(extra):
    """What every reading has of its own: three repeats, a step, and what else is said."""
    return draws.normal(0, 1.2 / sqrt(3), trials) + rectangle(0.5) + extra


zero = draws.normal(0, rod_um, trials) + rectangle(0.5)
scale_at_piston, scale_at_86 = rectangle(3), rectangle(3)
piston_error = read(zero + scale_at_piston + rectangle(2))
set_on = {
    "ring": draws.normal(0, ring_um, trials),
    "round size": zero + scale_at_86 + rectangle(2) + rectangle(0.5),
    "zeroed": zero + scale_at_piston + rectangle(2) + rectangle(0.5),
}
for way, setting in set_on.items():
    found = numpy.std(read(setting + rectangle(0.5) + rectangle(2)) - piston_error)
    print(f"{way}: {found:.2f} um")
    # a standard deviation of 200 000 trials is sure to 1 / sqrt(2 x 200 000) = 0.16 %
    assert abs(found / u_clearance[way] - 1) < 0.01

# %% [markdown]
# ## What is correlation?
#
# Nobody typed in a correlation. It is what is left when all is done:
# `u_clearance**2 = u_bore**2 + u_piston**2 - 2 * r * u_bore * u_piston`.
#
# **Predict:** is r of bore and piston closer to 0, to 0.5, or to 1 when the bore gauge is zeroed on the piston?

# %%
predicted_r = None  # your number

# %% [markdown]
# **Exercise 1.** Compute r from the three standard uncertainties of the way "zeroed": those of the bore and of its clearance in the table,
# and `u["piston"]`.

# %%
answer_r = None  # your number

# %% jupyter={"source_hidden": true}
# solution
solution_r = (u["zeroed"] ** 2 + u["piston"] ** 2 - u_clearance["zeroed"] ** 2) / (2 * u["zeroed"] * u["piston"])

# %%
of = {
    reading.name.removeprefix("bore, "): {line.source: 1000 * line.contribution_mm for line in reading.result.budget}
    for reading in report.readings
}
shared = sum(of["zeroed"][source] * of["piston"][source] for source in of["zeroed"].keys() & of["piston"].keys())
check(answer_r, solution_r, shared / (u["zeroed"] * u["piston"]), 0.005)
compare(predicted_r, solution_r, "")

# %% [markdown]
# **Exercise 2.** The thermometer of the workshop is one error, +-0.5 K, in both parts. The piston grows by 20.0e-6 per kelvin and the bore
# by 11.2e-6, both gauges by 11.5e-6. What does it do to the clearance, as a standard uncertainty in um?

# %%
answer_um = None  # your number

# %% jupyter={"source_hidden": true}
# solution: gauges and parts share the temperature; the difference of the parts is left: 86 mm x 8.8e-6 / K x 0.5 K / sqrt(3)
solution_um = 86000 * 8.8e-6 * 0.5 / sqrt(3)

# %%
check(answer_um, solution_um, abs(lines["ring"]["thermometer"]), 0.005)

# %% [markdown]
# **Exercise 3.** The scale of the micrometer turns out to be good to 6 um only, in place of 3 um. What is the standard uncertainty of the
# clearance with the ring then? And what of the way "zeroed"? Answer the first in um.

# %%
answer_um = None  # your number

# %% jupyter={"source_hidden": true}
# solution: the variance of the scale is four times what it was; zeroed, nothing changes
solution_um = sqrt(u_clearance["ring"] ** 2 + 3 * scale**2)

# %%
worse = copy.deepcopy(document)
worse["gauges"][0]["permissible_error"] = "0.006 mm"
u_worse = {d.name: 1000 * d.result.standard_uncertainty_mm for d in gaugepoint.measure(worse).differences}
check(answer_um, solution_um, u_worse["ring"], 0.01)
assert abs(u_worse["zeroed"] - u_clearance["zeroed"]) < 0.001

# %% [markdown]
# ## A budget of your own
#
# `gaugepoint.budget` takes any formula. An input names the sources that it rests on; two inputs that name one source share it. Here is the
# way "zeroed", written down from the list above: the scale is in both.

# %%
widths = {"scale": 3, "faces on piston": 2, "faces at setting": 2, "travel": 2, "steps": 0.5}
budget = {
    "format": "gaugepoint-budget",
    "version": 1,
    "name": "clearance, zeroed on the piston",
    "unit": "um",
    "sources": [
        *(
            {"name": name, "distribution": {"rectangular": {"half_width": width}}}
            for name, width in widths.items()
            if name != "steps"
        ),
        *({"name": f"step {k}", "distribution": {"rectangular": {"half_width": widths["steps"]}}} for k in range(1, 5)),
        *(
            {"name": f"repeats of {part}", "distribution": {"normal": {"standard_deviation": repeat}}}
            for part in ("piston", "bore")
        ),
    ],
    "inputs": [
        {
            "symbol": "bore",
            "estimate": 56.5,
            "terms": [
                {"source": s} for s in ("scale", "faces at setting", "travel", "step 1", "step 2", "step 3", "repeats of bore")
            ],
        },
        {
            "symbol": "piston",
            "estimate": 0,
            "terms": [{"source": s} for s in ("scale", "faces on piston", "step 4", "repeats of piston")],
        },
    ],
    "model": "bore - piston",
    "probability": 0.95,
}
own = gaugepoint.budget(budget)
assert abs(own.standard_uncertainty - u_clearance["zeroed"]) < 0.02
plot.budget_bars(own).figure

# %% [markdown]
# So it is the faces of the micrometer and the travel of the bore gauge that are left. A better scale would not help.
#
# But remember what "zeroed" cannot do: its bore is known to no better than its micrometer. Limits of the bore alone are judged with the
# ring.
#
# Next: [stack tails against Monte Carlo](5_stack_tails_against_monte_carlo.py).
