"""Linear stacks: the vectors of every host, published forms, and refusals."""

import copy
import dataclasses
import math
import pickle

import gaugepoint
import numpy as np
import pytest
from gaugepoint.stack import Contributor, SharedCause, Stack, ToleranceCost, Variation
from scipy import optimize, stats
from vectors import stack as rows

MADE = {
    "normal": Variation.normal,
    "rectangular": Variation.rectangular,
    "triangular": Variation.triangular,
    "trapezoidal": Variation.trapezoidal,
    "arcsine": Variation.arcsine,
    "beta": Variation.beta,
    "truncated": lambda mean, sd, low, high: Variation.truncated_normal(mean, sd, (low, high)),
    "skewed": lambda *n: Variation.skewed(list(zip(n[::2], n[1::2], strict=True))),
    "sample": lambda *n: Variation.sample(n),
}


def stack_of(terms):
    def contributor(place, words):
        kind, *numbers = words.split()
        return Contributor(f"x{place}", 0, -1, 1, MADE[kind](*map(float, numbers)))

    return Stack([contributor(k, words) for k, words in enumerate(terms.split(";"))])


def asked(row):
    stack, x = stack_of(row["stack"]), float(row["x"])
    match row["function"]:
        case "above":
            tail = stack.outside(upper=x)
            return tail.above, tail.error
        case "below":
            tail = stack.outside(lower=x)
            return tail.below, tail.error
        case "density":
            return stack.densities([x])[0], 0.0
        case "quantile_above":
            return stack.quantile_above(x), 0.0
        case slope:
            return stack.sensitivities(upper=x)[int(slope.removeprefix("slope_above_"))].above, 0.0


@pytest.mark.parametrize("row", rows(), ids=lambda row: row["id"])
def test_value(row):
    value, error = asked(row)
    expected = float(row["expected"])
    assert abs(value - expected) <= float(row["tolerance"]) * abs(expected)
    if row["function"] in ("above", "below"):
        assert abs(value - expected) <= (error + 1e-15) * expected


def deck(**change):
    """Deck clearance, invented, mm."""
    block = Contributor("block", 227.0, -0.05, 0.05, Variation.normal(0.015))
    rod = Contributor("rod", 174.0, -0.03, 0.03, Variation.capability((-0.03, 0.03), 1.2, 1.0), coefficient=-1.0)
    shims = Contributor("shims", 21.5, -0.0125, 0.0125, Variation.rectangular(0.01), coefficient=-1.0, count=2)
    scale = SharedCause("scale", "rectangular", [0.004], [("block", 1.0), ("rod", 1.0)])
    return Stack([block, dataclasses.replace(rod, **change), shims], [scale])


def test_forms_by_hand():
    forms = deck().forms
    assert forms.nominal == pytest.approx(10, abs=1e-12)
    assert (forms.worst_case.lower, forms.worst_case.upper) == pytest.approx((9.895, 10.105), abs=1e-12)
    half = math.sqrt(0.05**2 + 0.03**2 + 2 * 0.0125**2)
    assert forms.root_sum_square.upper - 10 == pytest.approx(half, rel=1e-11)
    assert forms.bender.upper - 10 == pytest.approx(1.5 * half, rel=1e-11)
    factor = 0.5 * (0.105 - half) / (half * (2 - 1)) + 1
    assert forms.modified_factor == pytest.approx(factor, rel=1e-11)
    assert deck().root_sum_square(1.5) == forms.bender and deck().worst_case == forms.worst_case
    # the shared cause cancels; the rod has moved by 3 sigma (Cp - Cpk)
    sigma = 0.06 / 7.2
    assert forms.mean == pytest.approx(10 - 3 * sigma * 0.2, abs=1e-12)
    variances = {"block": 0.015**2, "rod": sigma**2, "shims": 2 * 0.01**2 / 3, "scale": 0}
    assert forms.standard_deviation == pytest.approx(math.sqrt(sum(variances.values())), rel=1e-11)
    for share in deck().shares:
        assert share.share == pytest.approx(variances[share.name] / sum(variances.values()), abs=1e-12)
        assert share.is_shared == (share.name == "scale")


@pytest.mark.parametrize("toward, side", [("lower", -1), ("upper", 1)])
@pytest.mark.parametrize("cp, cpk", [(1.0, 1.0), (1.33, 1.0), (2.0, 0.5)])
def test_capability_is_that_of_the_normal(toward, side, cp, cpk):
    limits = (-0.02, 0.04)
    stack = Stack([Contributor("x", 5.0, *limits, Variation.capability(limits, cp, cpk, toward))])
    sigma = 0.06 / (6 * cp)
    normal = stats.norm(5.01 + side * 3 * sigma * (cp - cpk), sigma)
    found = stack.capability(4.98, 5.04)
    assert (found.cp, found.cpk) == pytest.approx((cp, cpk), rel=1e-10)
    assert found.tail.below == pytest.approx(normal.cdf(4.98), rel=1e-9)
    assert found.tail.above == pytest.approx(normal.sf(5.04), rel=1e-9)
    assert found.tail.ppm == pytest.approx(1e6 * (normal.cdf(4.98) + normal.sf(5.04)), rel=1e-9)
    assert stack.quantile(0.02) == pytest.approx(normal.ppf(0.02), rel=1e-12)


def test_curves_and_histograms():
    stack, normal = Stack([Contributor("x", 5.0, -1, 1, Variation.normal(0.01))]), stats.norm(5.0, 0.01)
    curve = stack.curve(301)
    assert curve.sizes.dtype == curve.densities.dtype == np.float64 and curve.sizes.shape == (301,)
    assert curve.sizes[[0, -1]] == pytest.approx(normal.ppf([1e-6, 1 - 1e-6]), abs=1e-12)
    assert curve.densities == pytest.approx(normal.pdf(curve.sizes), rel=1e-9)
    assert (stack.densities(curve.sizes) == curve.densities).all()
    edges = np.linspace(4.95, 5.06, 12)
    assert stack.histogram(edges) == pytest.approx(np.diff(normal.cdf(edges)), rel=1e-7, abs=1e-15)


@pytest.mark.parametrize(
    "call, kind, field",
    [
        (lambda: Stack([]), "missing_field", "contributors"),
        (lambda: deck(name="block"), "repeated", "contributors/1/name"),
        (lambda: deck(name=" "), "missing_field", "contributors/1/name"),
        (lambda: deck(nominal=math.nan), "not_finite", "contributors/1/nominal"),
        (lambda: deck(lower=0.5), "out_of_order", "contributors/1/upper"),
        (lambda: deck(coefficient=0.0), "out_of_range", "contributors/1/coefficient"),
        (lambda: deck(count=0), "out_of_range", "contributors/1/count"),
        (lambda: deck(count=-5), "out_of_range", "contributors/1/count"),
        (lambda: deck(count=2**40), "out_of_range", "contributors/1/count"),
        (lambda: deck(variation=Variation("normal", [0.1])), "contradiction", "contributors/1/numbers"),
        (lambda: deck(variation=Variation("gaussian", [0.1])), "unknown_choice", "contributors/1/kind"),
        (lambda: deck(variation=Variation.beta(0.1, 1, -1, 1)), "out_of_range", "contributors/1/alpha"),
        (lambda: deck(variation=Variation.skewed([(0.1, 1.0), (0.9, 0.5)])), "out_of_order", "contributors/1/quantiles/1"),
        (lambda: Stack(deck().contributors, [SharedCause("scale", "beta", [1], [("rod", 1)])]), "unknown_choice", "causes/0/kind"),
        (lambda: Stack(deck().contributors, [SharedCause("scale", "normal", [1], [("piston", 1)])]), "unknown_name", "causes/0/factors/0"),
        (lambda: Stack(deck().contributors, [SharedCause("scale", "normal", [1], [])]), "missing_field", "causes/0/factors"),
        (lambda: deck().outside(math.nan, 10), "not_finite", "lower"),
        (lambda: deck().outside(10, 9), "out_of_order", "upper"),
        (lambda: deck().capability(-math.inf, 10), "not_finite", "lower"),
        (lambda: deck().quantile(1.0), "out_of_range", "probability"),
        (lambda: deck().densities([10, math.inf]), "not_finite", "sizes/1"),
        (lambda: deck().curve(1), "out_of_range", "count"),
        (lambda: deck().histogram([1, 1]), "out_of_order", "edges/1"),
        (lambda: deck().root_sum_square(-1), "out_of_range", "factor"),
        (lambda: stack_of("sample 1 2").densities([1]), "contradiction", "sizes/0"),
    ],
)
def test_refusals_name_the_field(call, kind, field):
    with pytest.raises(gaugepoint.InputError) as refused:
        call()
    assert (refused.value.kind, refused.value.field) == (kind, field)


def outside_by_numpy(tolerances, sigma, limit):
    """Probability of a sum of rectangles and a normal beyond a limit on either side, by the inversion of its characteristic function."""
    step = 0.02 / sigma
    t = (np.arange(700) + 0.5) * step
    transform = np.exp(-((sigma * t) ** 2) / 2)
    for a in tolerances:
        transform = transform * np.sin(a * t) / (a * t)
    return 2 * (0.5 - (transform * np.sin(limit * t) / t).sum() * step / math.pi)


@pytest.mark.parametrize("seed", range(6))
def test_least_cost_is_that_of_slsqp(seed):
    chance = np.random.default_rng(seed)
    count = int(chance.integers(2, 6))
    factors, powers = chance.uniform(0.2, 3.0, count), chance.choice([1.0, 1.5, 2.0], count)
    bounds = [(0.01, float(most)) for most in chance.uniform(0.06, 0.4, count)]
    sigma, limit, wanted = 0.03, 0.3, 1e-4
    rest = Contributor("rest", 0.0, -0.1, 0.1, Variation.normal(sigma))
    parts = [Contributor(f"x{k}", 0.0, -0.1, 0.1, Variation.rectangular(0.1)) for k in range(count)]
    costs = [ToleranceCost(f"x{k}", factors[k], *bounds[k], power=powers[k]) for k in range(count)]
    found = Stack([rest, *parts]).allocate(-limit, limit, costs, outside=wanted)
    ours = np.array(list(found.tolerances.values()))
    # the wanted tail, seen by another way than ours
    assert outside_by_numpy(ours, sigma, limit) <= wanted * (1 + 1e-6)


    def cost(x):
        return math.log((factors / np.exp(x) ** powers).sum())

    def tail(x):
        # what the inversion loses to rounding is no tail
        return math.log(wanted / max(outside_by_numpy(np.exp(x), sigma, limit), 1e-14))

    start = np.full(count, math.log(0.05))
    options = {"ftol": 1e-12, "maxiter": 500}
    peer = optimize.minimize(cost, start, method="SLSQP", bounds=np.log(bounds), constraints={"type": "ineq", "fun": tail}, options=options)
    assert peer.success
    assert math.log(found.cost) == pytest.approx(cost(peer.x), abs=1e-7)
    assert ours == pytest.approx(np.exp(peer.x), rel=1e-3)
    assert all(low <= t <= high for t, (low, high) in zip(ours, bounds, strict=True))


@pytest.mark.parametrize(
    "wanted, kind, field",
    [
        ({}, "missing_field", "outside"),
        ({"outside": 1e-3, "cpk": 1.0}, "contradiction", "cpk"),
        ({"outside": 0.0}, "out_of_range", "outside"),
        ({"outside": 1e-9}, "out_of_range", "outside"),
        ({"cpk": 5.0}, "out_of_range", "cpk"),
    ],
)
def test_refused_allocations(wanted, kind, field):
    with pytest.raises(gaugepoint.InputError) as refused:
        deck().allocate(9.9, 10.1, [ToleranceCost("block", 1.0, 0.04, 0.2)], **wanted)
    assert (refused.value.kind, refused.value.field) == (kind, field)


def test_costs_name_their_contributor():
    with pytest.raises(gaugepoint.InputError) as refused:
        deck().allocate(9.9, 10.1, [ToleranceCost("crank", 1.0, 0.04, 0.2)], cpk=1.0)
    assert (refused.value.kind, refused.value.field) == ("unknown_name", "costs/0/contributor")


def test_a_stack_is_frozen_and_copied_by_its_parts():
    stack = deck()
    for again in (copy.deepcopy(stack), pickle.loads(pickle.dumps(stack))):
        assert again == stack and again.outside(9.9, 10.1) == stack.outside(9.9, 10.1)
    with pytest.raises(dataclasses.FrozenInstanceError):
        stack.contributors = ()
    assert "_core" not in repr(stack)
