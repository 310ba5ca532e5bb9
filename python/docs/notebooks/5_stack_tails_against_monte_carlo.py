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
# # Stack tails against Monte Carlo
#
# Four parts decide how far a piston stands below the deck at top dead centre: the block, the rod, the piston and the crank. Each is within
# its limits. How often is the sum outside of its own? There are rules of thumb, there are trials, and there is the exact distribution. This
# notebook holds them against each other, where it matters: far out.
#
# All parts are invented. A piston that meets the head wrecks an engine: the least clearance is the maker's to say, and the assembled engine
# is measured.

# %%
# %matplotlib inline
from math import factorial, sqrt
from statistics import NormalDist

import gaugepoint
import numpy
import pandas
from exercise import check, compare
from gaugepoint import Contributor, SharedCause, Stack, Variation, plot

# %% [markdown]
# ## The stack
#
# Deck clearance = block height - rod - compression height - half the stroke = 218.5 - 143 - 31 - 44 = 0.5 mm. Each part has limits of
# +-0.05 mm and is anywhere between them with the same probability.
#
# **Predict:** what are the worst case and the root-sum-square of the lower end, in mm?

# %%
predicted_worst, predicted_rss = None, None  # your numbers

# %%
parts = [("block height", 218.5, 1), ("rod", 143.0, -1), ("compression height", 31.0, -1), ("half stroke", 44.0, -1)]


def deck(scale=1.0, causes=()):
    """The stack, with all tolerances times a factor."""
    half = 0.05 * scale
    return Stack(
        [Contributor(name, nominal, -half, half, Variation.rectangular(half), coefficient=sign) for name, nominal, sign in parts],
        causes,
    )


stack = deck()
compare(predicted_worst, stack.worst_case.lower, "mm")
compare(predicted_rss, stack.root_sum_square().lower, "mm")

# %% [markdown]
# **The working.** Worst case: 0.5 - 4 x 0.05 = 0.30 mm. Root-sum-square: 0.5 - sqrt(4) x 0.05 = 0.40 mm. The first hardly
# ever happens. The second is passed by one engine of 24, as the next part shows.
#
# ## The exact tail
#
# The head allows 0.32 mm at the least.
#
# **Predict:** how many engines of a million are below?

# %%
assert abs(stack.worst_case.lower - 0.30) < 1e-12 and abs(stack.root_sum_square().lower - 0.40) < 1e-12
predicted_ppm = None  # your number

# %%
exact = stack.outside(lower=0.32)
compare(predicted_ppm, 1e6 * exact.below, "ppm")

# %% [markdown]
# **The working.** Counted from the worst case in units of the width of a part, 0.1 mm, the limit is s = (0.32 - 0.30) / 0.1 = 0.2. The sum
# of n numbers from 0 to 1 is below s <= 1 with the probability s^n / n!, the volume of a corner of the cube (Irwin and Hall, 1927, from
# memory). So 0.2^4 / 24 = 66.7 ppm.
#
# "The sum of four is nearly normal" says something else: the standard deviation is sqrt(4) x 0.05 / sqrt(3) = 0.0577 mm, the limit is 3.12
# of them away, and a normal distribution has 911 ppm beyond. In the middle it is a good picture, in the tail it is wrong by a factor of 14.

# %%
by_hand = 0.2**4 / factorial(4)
sigma = sqrt(4) * 0.05 / sqrt(3)
normal = NormalDist(0.5, sigma).cdf(0.32)
assert abs(exact.below / by_hand - 1) < 1e-9 and f"{1e6 * by_hand:.1f}" == "66.7"
assert abs(stack.outside(lower=0.40).below - 1 / 24) < 1e-12  # s = 1
assert abs(stack.forms.standard_deviation - sigma) < 1e-12 and (round(sigma, 4), round(0.18 / sigma, 2)) == (0.0577, 3.12)
assert round(1e6 * normal) == 911 and round(normal / by_hand) == 14

# %%
plot.stack_density(stack, lower=0.32, unit="mm").figure

# %% [markdown]
# **Exercise 1.** Three shims of +-0.02 mm, each anywhere between its limits, lie on each other. How many stacks of a million are above
# their nominal by more than 0.055 mm?

# %%
answer_ppm = None  # your number

# %% jupyter={"source_hidden": true}
# solution: the worst case is 0.060 mm, the width of a shim 0.040 mm, s = 0.005 / 0.040
solution_ppm = 1e6 * (0.005 / 0.040) ** 3 / factorial(3)

# %%
shims = Stack([Contributor("shim", 0.5, -0.02, 0.02, Variation.rectangular(0.02), count=3)])
check(answer_ppm, solution_ppm, 1e6 * shims.outside(upper=1.555).above, 0.5)

# %% [markdown]
# ## Monte Carlo
#
# Trials draw the four parts and count. They need no formula. How many does it take?
#
# **Predict:** what does a run of 10 000 trials say of those 67 ppm? And one of a million?

# %%
runs = {}
for trials in (10_000, 100_000, 1_000_000):
    below = stack.trials(20260314, trials).outside(lower=0.32).below
    runs[trials] = {"below": below.count, "ppm": 1e6 * below.probability, "from": 1e6 * below.lower, "to": 1e6 * below.upper}
pandas.DataFrame(runs).T.round(1)

# %% [markdown]
# "from" and "to" are the ends of the 95 % interval (Clopper and Pearson): the exact 66.7 ppm should lie between them nineteen times of twenty.
#
# **The working.** N trials see about N p engines below, give or take sqrt(N p). A million see 67, give or take 8.

# %%
assert all(run["from"] <= 1e6 * by_hand <= run["to"] for run in runs.values())
assert round(1e6 * by_hand) == 67 and round(sqrt(1e6 * by_hand)) == 8
# draws of numpy, which know nothing of the library, see the same within five standard deviations
draws = numpy.random.default_rng(1).uniform(-0.05, 0.05, (4, 1_000_000))
assert abs(numpy.count_nonzero(0.5 + draws[0] - draws[1] - draws[2] - draws[3] < 0.32) - 67) < 5 * 8

# %% [markdown]
# **Exercise 2.** How many million trials does it take to know the 66.7 ppm to 1 %, as one standard deviation?

# %%
answer_million = None  # your number

# %% jupyter={"source_hidden": true}
# solution: 1 / sqrt(N p) = 0.01
solution_million = 1 / 0.01**2 / by_hand / 1e6

# %%
check(answer_million, solution_million, 150.0, 1.0)  # 10 000 / (66.7 / 1 000 000), by hand

# %% [markdown]
# ## Farther out
#
# Let the head allow 0.305 mm at the least. By hand s = 0.05, and 0.05^4 / 24 = 0.26 ppm. A million trials will most likely see nothing at
# all.
#
# **Predict:** when a million trials see nothing, how many ppm can it still be, with 95 % confidence?

# %%
predicted_ppm = None  # your number

# %%
nothing = stack.trials(3, 1_000_000).outside(lower=0.305).below
compare(predicted_ppm, 1e6 * nothing.upper, "ppm")
print(f"seen {nothing.count}; exact {1e6 * stack.outside(lower=0.305).below:.4f} ppm")

# %% [markdown]
# **The working.** Nothing is seen with the probability (1 - p)^N. The upper end of the interval is where that is 2.5 %: p = 1 -
# 0.025^(1/N), 3.7 ppm for a million.

# %%
assert nothing.count == 0 and abs(nothing.upper / (1 - 0.025 ** (1 / 1e6)) - 1) < 1e-6 and round(1e6 * nothing.upper, 1) == 3.7
rare = 0.05**4 / factorial(4)
assert abs(stack.outside(lower=0.305).below / rare - 1) < 1e-9 and round(1e6 * rare, 2) == 0.26

# %% [markdown]
# Trials can be moved to where the tail is, and weighed for it: importance sampling. 20 000 of them tell what a million did not. But of a
# linear stack the exact tail is there, and better.

# %%
tail = stack.importance("lower", 0.305, seed=1, count=20_000).rare_tail(confidence=0.999)
print(f"{1e6 * tail.probability:.3f} ppm, from {1e6 * tail.lower:.3f} to {1e6 * tail.upper:.3f}")
assert tail.lower <= rare <= tail.upper

# %% [markdown]
# ## What the parts share
#
# Every part was measured on one machine, whose error is anywhere within +-0.010 mm and the same for all.
#
# **Exercise 3.** What is the standard deviation of the deck clearance with this error, in um? Mind the signs: one part adds, three
# subtract.

# %%
answer_um = None  # your number

# %% jupyter={"source_hidden": true}
# solution: 1 - 3 = -2 times the error is left
solution_um = 1000 * sqrt(sigma**2 + (2 * 0.010 / sqrt(3)) ** 2)

# %%
machine = SharedCause("measuring machine", "rectangular", [0.010], [(name, 1.0) for name, _, _ in parts])
shared = deck(causes=[machine])
check(answer_um, solution_um, 1000 * shared.forms.standard_deviation, 0.05)
print(f"{shared.outside(lower=0.32).ppm:.0f} ppm with it")

# %% [markdown]
# ## What must be made better?
#
# **Exercise 4.** 10 ppm below 0.32 mm are wanted. By which factor must all four tolerances shrink?

# %%
answer_factor = None  # your number

# %% jupyter={"source_hidden": true}
# solution: with the factor f the worst case is 0.5 - 0.2 f and the width 0.1 f;
# s^4 / 24 = 10e-6 gives s, and (0.32 - 0.5 + 0.2 f) / (0.1 f) = s gives f
s = (24 * 10e-6) ** 0.25
solution_factor = 0.18 / (0.2 - 0.1 * s)

# %%
factor = solution_factor if answer_factor is None else answer_factor
reached = deck(factor).outside(lower=0.32).ppm
assert abs(reached - 10) < 0.5, f"with {factor:g} it is {reached:.1f} ppm: look again"
print(f"{factor:.4f} gives {reached:.2f} ppm")

# %% [markdown]
# Four per cent off every tolerance take the tail from 67 ppm to 10 ppm. No rule of thumb says that, and no short run of trials.

# %%
assert round(100 * (1 - solution_factor)) == 4

# %% [markdown]
# Next: [plan a block](6_plan_a_block.py).
