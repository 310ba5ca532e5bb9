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
# # Plan a block
#
# Four bores are worn. How large must they be bored, to which oversize, to which size each, and which piston goes where? This notebook makes
# the plan step by step and then looks at the plan of a whole job.
#
# All engines, parts and prices are invented. Boring and honing: rotating heads catch clothing and hands, stones break, dust and mist harm
# the lungs. The maker's service data come first: which walls, oversizes and clearances are allowed is theirs to say.

# %%
# %matplotlib inline
from itertools import permutations
from math import pi

import gaugepoint
from exercise import check, compare
from gaugepoint import plot
from gaugepoint.plan import BestAxis, Block, MeasuredBore, MeasuredPiston, Step, WantedClearance, WarmGauging, WornBore

# %% [markdown]
# ## When is a bore clean?
#
# The bores had 86.000 mm when they were new. The largest diameters that were read are 86.085, 86.060, 86.110 and 86.052 mm.
#
# **Predict:** the third is bored about its original axis. At which diameter has the tool touched the whole wall?

# %%
predicted_mm = None  # your number

# %%
largest = [86.085, 86.060, 86.110, 86.052]
ranges = [gaugepoint.clean_up_from_diameters(86.0, mm) for mm in largest]
compare(predicted_mm, ranges[2].upper_mm, "mm at the most")
print(f"and {ranges[2].lower_mm:.3f} mm at the least")

# %% [markdown]
# **The working.** A diameter does not tell on which side the wear is. When both sides are worn by 0.055 mm, 86.110 mm is enough. When one
# side alone is worn, it is worn by 0.110 mm, and a tool about the original axis reaches it at a radius of 43.110 mm: 86.220 mm. Who has
# diameters alone plans with the upper end.

# %%
assert abs(ranges[2].lower_mm - 86.110) < 1e-9 and abs(ranges[2].upper_mm - 2 * (43 + 0.110)) < 1e-9

# %% [markdown]
# A radial trace about the original axis shows it. Here is one of a bore that is worn on the thrust side alone, by 0.10 mm.
#
# **Exercise 1.** The bar may stand aside by as much as it likes. To which diameter must this bore be bored at the least, in mm?

# %%
answer_mm = None  # your number

# %% jupyter={"source_hidden": true}
# solution: across the thrust axis the wall is 43.1 + 43.0 mm wide; the axis in the middle of that reaches both ends, and the rest with them
solution_mm = 43.1 + 43.0

# %%
angles, radii = [0, 45, 90, 135, 180, 225, 270, 315], [43.10, 43.05, 43.00, 43.00, 43.00, 43.00, 43.00, 43.05]
original = gaugepoint.clean_up(angles, [30] * 8, radii, "original")
best = gaugepoint.clean_up(angles, [30] * 8, radii, BestAxis(shift_mm=1.0, tilt=0.0))
check(answer_mm, solution_mm, best.diameter_mm, 0.0005)
print(f"about the original axis {original.diameter_mm:.3f} mm, {best.bar.x_mm:.3f} mm aside {best.diameter_mm:.3f} mm")
assert abs(original.diameter_mm - 86.200) < 1e-9 and abs(best.bar.x_mm - 0.050) < 1e-4

# %% [markdown]
# But a bar that stands aside moves the cylinder away from its place over the crankshaft. How much of that is allowed is the maker's to say.
#
# ## Which oversize?
#
# Pistons can be had with 0.25 mm and 0.50 mm, at 60 and 62 a piece. The tool leaves marks that ask for 0.03 mm more. Each clean-up has a
# standard uncertainty of 4 um. Boring costs 30 a bore. A step must lie above what is needed by 1.65 standard uncertainties.
#
# **Predict:** is 0.25 mm enough for the third bore?

# %%
predicted = None  # True or False


# %%
def way(clean_up_mm):
    bores = [WornBore(mm, 0.004) for mm in clean_up_mm]
    return gaugepoint.oversizes(Block(86.0, 30.0, 1.65, ring_gap_mm=0.30), bores, [Step(0.25, 60.0), Step(0.50, 62.0)])


found = way([both.upper_mm + 0.03 for both in ranges])
for choice in found.choices:
    steps = [(0.25, 0.50)[action.step] for action in choice.actions]
    reasons = "; ".join(f"bore {no.bore + 1}: {no.reason}, {no.value_mm:.4f} mm needed" for no in choice.ruled_out)
    print(choice.way, steps, choice.price, reasons or "can be done")

# %% [markdown]
# **The working.** The third bore needs 86.220 + 0.030 + 1.65 x 0.004 = 86.2566 mm. A step of 0.25 mm ends at 86.250 mm: 7 um are missing.
# The cheapest way would bore three of them to 0.25 mm and one to 0.50 mm, at 4 x 30 + 3 x 60 + 62 = 362. One size for all costs 4 x 30 + 4
# x 62 = 368, and its pistons have one weight. The choice is yours.

# %%
needed = 86.220 + 0.030 + 1.65 * 0.004
assert f"{needed:.4f}" == "86.2566" and round(1000 * (needed - 86.25)) == 7
prices = {choice.price: choice for choice in found.choices if not choice.ruled_out}
assert set(prices) == {362.0, 368.0} and prices[362.0].way == "step_by_bore" and prices[368.0].way == "one_step"
(no,) = next(choice for choice in found.choices if choice.ruled_out).ruled_out
assert (no.reason, no.bore) == ("not_clean", 2) and abs(no.value_mm - needed) < 1e-9

# %% [markdown]
# **Exercise 2.** You trace the third bore, and both sides are worn alike. Marks and uncertainty are the same. Which diameter does it need
# now, in mm, with its 1.65 standard uncertainties? And what does the cheapest way cost?

# %%
answer_mm = None  # your number

# %% jupyter={"source_hidden": true}
# solution: the lower end of the range now
solution_mm = 86.110 + 0.030 + 1.65 * 0.004

# %%
traced = way([both.upper_mm + 0.03 for both in ranges[:2]] + [ranges[2].lower_mm + 0.03, ranges[3].upper_mm + 0.03])
cheapest = traced.choices[0]
# a step that is too small says what is needed
too_small = gaugepoint.oversizes(Block(86.0, 30.0, 1.65), [WornBore(ranges[2].lower_mm + 0.03, 0.004)], [Step(0.10, 60.0)])
check(answer_mm, solution_mm, too_small.choices[0].ruled_out[0].value_mm, 0.0001)
print(f"the cheapest way costs {cheapest.price:.0f}")
assert cheapest.price == 4 * 30 + 4 * 60

# %% [markdown]
# **Exercise 3.** Somebody wants to keep the old rings, which have a gap of 0.30 mm in the bore of 86.0 mm. What gap do they have in a bore
# of 86.5 mm?

# %%
answer_mm = None  # your number

# %% jupyter={"source_hidden": true}
# solution: a closed ring keeps its length, so the gap grows with the circumference
solution_mm = 0.30 + pi * 0.5

# %%
check(answer_mm, solution_mm, found.consequences[1].ring_gap_mm, 0.001)
print(f"{found.consequences[1].ring_gap_mm:.2f} mm: new rings come with new pistons")

# %% [markdown]
# ## To which size?
#
# A bore is finished to the piston that goes into it, as it was measured, and not to a nominal size. The first new piston has 86.458 mm at
# 20 C; 0.045 mm of clearance are wanted, and the bar leaves 0.05 mm for the hone.

# %%
sizes = gaugepoint.bore_sizes(86.458, 0.045, 0.05)
print(f"bore to {sizes.boring_mm:.3f} mm, hone to {sizes.finish_mm:.3f} mm")
assert abs(sizes.finish_mm - 86.503) < 1e-9 and abs(sizes.boring_mm - 86.453) < 1e-9

# %% [markdown]
# The bore gauge is set on a ring of 86 mm. Ring and gauge are at 22 C; the block is warm from honing, at 32 C. It is of iron with 11.4e-6
# per kelvin, ring and gauge are of steel with 11.5e-6.
#
# **Predict:** what must the dial read when the bore is finished, in um above the ring?

# %%
predicted_um = None  # your number


# %%
def gauging(block_c):
    return WarmGauging(86.0, 22.0, 11.5e-6, 22.0, 11.5e-6, 22.0, 11.5e-6, block_c, 11.4e-6)


warm_um = 1000 * gaugepoint.dial_reading_mm(sizes.finish_mm, gauging(32.0))
compare(predicted_um, warm_um, "um")

# %% [markdown]
# **The working.** At 20 C the bore is 503.0 um larger than the ring. The warm bore is larger by 86.5 mm x 12 K x 11.4e-6 = 11.8 um, the
# ring by 86 mm x 2 K x 11.5e-6 = 2.0 um: the dial must read 503.0 + 11.8 - 2.0 = 512.9 um.

# %%
bore_um, ring_um = 1000 * 86.503 * 12 * 11.4e-6, 1000 * 86 * 2 * 11.5e-6
assert (round(bore_um, 1), round(ring_um, 1), round(warm_um, 1)) == (11.8, 2.0, 512.9)
assert abs(warm_um - (503.0 + bore_um - ring_um)) < 0.001

# %% [markdown]
# **Exercise 4.** Somebody hones the warm block until the dial reads 503.0 um, and goes home. How much clearance has the piston at 20 C, in
# um, in place of 45?

# %%
answer_um = None  # your number

# %% jupyter={"source_hidden": true}
# solution: the bore comes out too small by what the dial should have read more
solution_um = 45 - (warm_um - 503.0)

# %%
# the size whose dial on the warm block is 503.0 um, by halving
low, high = 86.4, 86.6
for _ in range(50):
    middle = (low + high) / 2
    low, high = (middle, high) if gaugepoint.dial_reading_mm(middle, gauging(32.0)) < 0.503 else (low, middle)
check(answer_um, solution_um, 1000 * (low - 86.458), 0.05)
print(f"{1000 * (low - 86.458):.1f} um: a fifth of the clearance is gone")
assert round((45 - 1000 * (low - 86.458)) / 45, 1) == 0.2

# %% [markdown]
# ## Which piston in which bore?
#
# Another block has been honed already, and five pistons lie on the bench. 45 to 65 um are allowed, 53 um are wanted. Each size has a
# standard uncertainty of 1 um.
#
# **Predict:** write down which piston you would put in which bore, and which stays over.

# %%
bores = [86.012, 86.004, 86.009, 86.015]
pistons = [85.958, 85.949, 85.961, 85.953, 85.957]
matched = gaugepoint.match(
    [MeasuredBore(mm, 0.001) for mm in bores], [MeasuredPiston(mm, 0.001) for mm in pistons], WantedClearance(0.045, 0.065, 0.053)
)
for pair in matched.pairs:
    print(f"bore {pair.bore + 1}: piston {pair.piston + 1}, {1000 * pair.clearance_mm:.0f} um")
print(f"over: piston {matched.spare[0] + 1}; this is the case {matched.case}")

# %% [markdown]
# **The working.** Five pistons in four bores are 5 x 4 x 3 x 2 = 120 ways, few enough to try them all: the worst pair first, then the sum
# of the squares of what is missing to 53 um.


# %%
def merit(chosen):
    clearances = [1000 * (bore - pistons[piston]) for bore, piston in zip(bores, chosen, strict=True)]
    worst = max(max(45 - c, c - 65) for c in clearances)
    return round(worst, 6), round(sum((c - 53) ** 2 for c in clearances), 6)


ways = list(permutations(range(5), 4))
assert len(ways) == 120
mine = tuple(pair.piston for pair in sorted(matched.pairs, key=lambda pair: pair.bore))
assert merit(mine) == min(map(merit, ways))

# %% [markdown]
# **Exercise 5.** The same pistons, but nobody measures: the first goes into the first bore and so on. What is the smallest clearance then,
# in um?

# %%
answer_um = None  # your number

# %% jupyter={"source_hidden": true}
# solution: 54, 55, 48 and 62 um
solution_um = 48.0

# %%
given_um = [1000 * (bore - piston) for bore, piston in zip(bores, pistons, strict=False)]
check(answer_um, solution_um, min(given_um), 0.01)
assert matched.as_given.worst_outside > matched.merit.worst_outside

# %% [markdown]
# ## The plan of a whole job
#
# A job document with a plan gives all of it at once, with what was read and how sure it is: `core/examples/pump_six.json`, six invented
# cylinders. Cylinder 5 is worn to a taper beyond its limit.

# %%
report = gaugepoint.assess("../../../core/examples/pump_six.json")
plot.bore_map(report.cylinders[4].bore).figure

# %%
plan = report.plan
for choice in plan.oversizes.choices:
    steps = sorted({action.oversize_mm for action in choice.actions})
    print(choice.way, steps, choice.price, "; ".join(choice.ruled_out) or "can be done")

# %% [markdown]
# **Exercise 6.** The walls of cylinder 4 were gauged: 5.2 mm and 4.5 mm, counted from the unworn wall of 96 mm. The gauge is good to 0.1
# mm, and 4.0 mm must be left. To which diameter may it be bored at the most, in mm?

# %%
answer_mm = None  # your number

# %% jupyter={"source_hidden": true}
# solution: 4.5 - 0.1 - 4.0 = 0.4 mm on the radius
solution_mm = 96 + 2 * 0.4

# %%
need = next(need for need in plan.oversizes.needs if need.cylinder == 4)
check(answer_mm, solution_mm, need.largest_by_walls_mm, 0.0005)
taken = plan.oversizes.choices[plan.oversizes.chosen]
assert {action.oversize_mm for action in taken.actions} == {0.5}

# %% [markdown]
# The work in its order, with what must be so before each step and what to take care of:

# %%
for step in report.work_order:
    print(f"{step.number}. {step.what}")
    for care in step.care:
        print(f"   take care: {care}")

# %% [markdown]
# Nothing new is fitted before the cause of the damage has a name. A plan is only as good as its readings: the report of the finished bores,
# read when they are cold, closes the job.
