"""Stacks as documents, evaluated independently with mpmath: writes tests/vectors/stacks/expected.csv, or with ``--check`` compares.

Worst cases are taken at the corners of the limits, all of them. Moments to second order are those of a quadratic form in normal variables, by its
cumulants (Mathai and Provost, Quadratic Forms in Random Variables, 1992): with the gradient b and the Hessian H,
k2 = b'Sb + tr(HS)^2 / 2, k3 = 3 b'SHSb + tr(HS)^3, k4 = 12 b'SHSHSb + 3 tr(HS)^4, S the covariance.

Tails, densities and bins of linear stacks: of normal and uniform contributors by an integral over the sum of the uniform ones, the section of a cube; of
uniform ones and one sample by the volume of a cut cube (Feller, An Introduction to Probability Theory and Its Applications II, I.9), averaged over the sample. What a
tolerance does to a tail is a difference of tails with the whole contributor scaled about the middle of its limits.
"""

import itertools
import json
import math
import sys
from pathlib import Path

from mpmath import acos, diag, diff, erfc, findroot, log, matrix, mp, mpf, pi, quad, sqrt

mp.dps = 40
ROOT = Path(__file__).parent.parent.parent
FOLDER = ROOT / "tests" / "vectors" / "stacks"
FILES = {"clutch": FOLDER / "clutch.json", "deck": ROOT / "core" / "examples" / "deck_stack.json", "ratio": FOLDER / "ratio.json", "shims": FOLDER / "shims.json"}
HERE = "reference/stack_document.py"


def number(x):
    if isinstance(x, Exact):
        return x.value
    # a number may be written as text
    return mpf(x if isinstance(x, str) else repr(x))


def angle(a, c, e):
    return acos((a + c) / (e - c))


# contributors stand in the order of these arguments
def ratio(bore, stroke, block, rod, height, head, gasket_bore, gasket, crown, crevice):
    deck = block - stroke / 2 - rod - height
    area = lambda d: pi / 4 * d**2 / 1000
    clear = head + area(gasket_bore) * gasket + area(bore) * deck + crown + crevice
    return 1 + area(bore) * stroke / clear


def corners(parts):
    return itertools.product(*[(number(p["nominal"]) + number(p["lower"]), number(p["nominal"]) + number(p["upper"])) for p in parts])


def of_function(document, f):
    parts = document["contributors"]
    nominal = [number(p["nominal"]) for p in parts]
    mean = [n + number(p.get("centre", 0)) for n, p in zip(nominal, parts)]
    sd = [number(p["distribution"]["normal"]["standard_deviation"]) for p in parts]
    n = len(parts)
    unit = lambda *places: tuple(sum(int(k == p) for p in places) for k in range(n))
    b = matrix([diff(f, mean, unit(k)) for k in range(n)])
    h = matrix(n, n)
    for i in range(n):
        for j in range(i + 1):
            h[i, j] = h[j, i] = diff(f, mean, unit(i, j))
    s = diag([x * x for x in sd])
    hs = h * s
    trace = lambda m: sum(m[k, k] for k in range(n))
    scalar = lambda m: m[0, 0]
    k2 = scalar(b.T * s * b) + trace(hs * hs) / 2
    k3 = 3 * scalar(b.T * s * h * s * b) + trace(hs**3)
    k4 = 12 * scalar(b.T * s * h * s * h * s * b) + 3 * trace(hs**4)
    values = [f(*at) for at in corners(parts)]
    shift = trace(hs) / 2
    yield "/nominal", f(*nominal), 1e-12
    yield "/worst_case/lower", min(values), 1e-12
    yield "/worst_case/upper", max(values), 1e-12
    yield "/propagation/first_order_mean", f(*mean), 1e-12
    yield "/propagation/first_order_standard_deviation", sqrt(scalar(b.T * s * b)), 1e-14
    yield "/propagation/shift_of_mean", shift, 1e-14
    yield "/mean", f(*mean) + shift, 1e-12
    yield "/standard_deviation", sqrt(k2), 1e-14
    yield "/propagation/skewness", k3 / sqrt(k2) ** 3, 1e-9
    yield "/propagation/excess_kurtosis", k4 / k2**2, 1e-8
    for k, place in enumerate(sorted(range(n), key=lambda k: -abs(b[k] * sd[k]))):
        yield f"/shares/{k}/sensitivity", b[place], 1e-11
        yield f"/shares/{k}/standard_deviation", abs(b[place] * sd[place]), 1e-13
        yield f"/shares/{k}/share", (b[place] * sd[place]) ** 2 / scalar(b.T * s * b), 1e-12


def normal_above(z):
    return erfc(z / sqrt(2)) / 2


def moments(part):
    """Mean and variance of the deviation of a contributor or a cause, with its kind."""
    (kind, given), = part["distribution"].items()
    value = {name: number(x) for name, x in given.items() if name != "toward" and not isinstance(x, list)}
    centre = number(part.get("centre", 0))
    if kind == "normal":
        return centre, value["standard_deviation"] ** 2
    if kind == "normal_by_capability":
        lower, upper = number(part["lower"]), number(part["upper"])
        sigma = (upper - lower) / (6 * value["cp"])
        side = 1 if given["toward"] == "upper" else -1
        return (lower + upper) / 2 + side * 3 * sigma * (value["cp"] - value["cpk"]), sigma**2
    if kind == "uniform_within_limits":
        lower, upper = number(part["lower"]), number(part["upper"])
        return (lower + upper) / 2, (upper - lower) ** 2 / 12
    if kind in ("rectangular", "arcsine"):
        return centre, value["half_width"] ** 2 / (3 if kind == "rectangular" else 2)
    if kind == "trapezoidal":
        return centre, value["half_width"] ** 2 * (1 + value["beta"] ** 2) / 6
    if kind == "triangular":
        a, b, c = value["low"], value["high"], value["mode"]
        return (a + b + c) / 3, (a * a + b * b + c * c - a * b - a * c - b * c) / 18
    values = [number(x) for x in given["values"]]
    mean = sum(values) / len(values)
    return mean, sum((x - mean) ** 2 for x in values) / len(values)


def weight(part):
    return number(part.get("coefficient", 1)), part.get("count", 1)


class Linear:
    """A linear stack."""

    def __init__(self, document):
        self.document, self.parts = document, document["contributors"]
        self.causes = []
        for cause in document.get("causes", []):
            of = {p["name"]: p for p in self.parts}
            factor = lambda on: weight(of[on["contributor"]])[0] * weight(of[on["contributor"]])[1] * number(on.get("factor", 1))
            self.causes.append((cause["name"], sum(factor(on) for on in cause["on"]) ** 2 * moments(cause)[1]))
        self.nominal = sum(c * n * number(p["nominal"]) for p in self.parts for c, n in [weight(p)])
        self.mean = self.nominal + sum(c * n * moments(p)[0] for p in self.parts for c, n in [weight(p)])
        self.variances = [(p["name"], n * c * c * moments(p)[1]) for p in self.parts for c, n in [weight(p)]] + self.causes
        self.sd = sqrt(sum(v for _, v in self.variances))

    def limits(self):
        given = self.document.get("limits", {})
        return [number(given[k]) if k in given else None for k in ("lower", "upper")]

    def plain(self):
        """What has a formula."""
        ends = [[c * n * (number(p["nominal"]) + number(p[k])) for k in ("lower", "upper")] for p in self.parts for c, n in [weight(p)]]
        lower, upper = sum(min(e) for e in ends), sum(max(e) for e in ends)
        halves = [abs(c) * (number(p["upper"]) - number(p["lower"])) / 2 for p in self.parts for c, n in [weight(p)] for _ in range(n)]
        rss, n = sqrt(sum(h * h for h in halves)), len(halves)
        factor = (sum(halves) - rss) / (2 * rss * (sqrt(n) - 1)) + 1 if n > 1 else mpf(1)
        yield "/nominal", self.nominal, 1e-12
        for end, value in (("lower", lower), ("upper", upper)):
            yield f"/worst_case/{end}", value, 1e-12
            yield f"/worst_case/{end}_bound", value, 1e-12
        for form, half in (("root_sum_square", rss), ("bender", rss * 3 / 2), ("modified", rss * factor)):
            yield f"/published/{form}/lower", (lower + upper) / 2 - half, 1e-12
            yield f"/published/{form}/upper", (lower + upper) / 2 + half, 1e-12
        yield "/mean", self.mean, 1e-12
        yield "/standard_deviation", self.sd, 1e-14
        for k, (_, variance) in enumerate(sorted(self.variances, key=lambda v: -v[1])):
            yield f"/shares/{k}/standard_deviation", sqrt(variance), 1e-14
            yield f"/shares/{k}/share", variance / self.sd**2, 1e-12
        low, high = self.limits()
        if low is not None and high is not None:
            yield "/exact/cp", (high - low) / (6 * self.sd), 1e-11
            yield "/exact/cpk", min(self.mean - low, high - self.mean) / (3 * self.sd), 1e-11

    def kinds(self):
        return [next(iter(p["distribution"])) for p in self.parts]

    def above(self, x):
        """Probability above a size."""
        uniform = [k for k, kind in enumerate(self.kinds()) if kind in ("uniform_within_limits", "rectangular")]
        halves = [sqrt(3 * moments(self.parts[k])[1]) * abs(weight(self.parts[k])[0]) for k in uniform for _ in range(weight(self.parts[k])[1])]
        if "sample" in self.kinds():
            part = self.parts[self.kinds().index("sample")]
            values, c = [number(v) for v in part["distribution"]["sample"]["values"]], weight(part)[0]
            rest = x - self.mean + c * moments(part)[0]
            return sum(cube_above(rest - c * v, halves) for v in values) / len(values)
        normal = sqrt(self.sd**2 - sum(h * h for h in halves) / 3)
        # the density of the uniform ones is smooth between the corners of their cube
        corners = sorted({sum(s * h for s, h in zip(signs, halves)) for signs in itertools.product((1, -1), repeat=len(halves))} | {mpf(0)})
        return quad(lambda r: cube_density(r, halves) * normal_above((x - self.mean - r) / normal), corners)

    def exact(self):
        """Tails, with the change by each tolerance where it is asked for, and what is to be drawn."""
        low, high = self.limits()
        below, above = (1 - self.above(low) if low is not None else mpf(0)), (self.above(high) if high is not None else mpf(0))
        yield "/exact/below", below, 1e-12
        yield "/exact/above", above, 1e-12
        yield "/exact/ppm", (below + above) * 10**6, 1e-6
        if self.document.get("sensitivities"):
            for k, part in enumerate(self.parts):
                tolerance = (number(part["upper"]) - number(part["lower"])) / 2
                of = lambda t, k=k: self.scaled(k, t)
                slopes = diff(lambda t: 1 - of(t).above(low), tolerance), diff(lambda t: of(t).above(high), tolerance)
                yield f"/exact/sensitivities/{k}/tolerance", tolerance, 1e-14
                for field, slope in (("below", slopes[0]), ("above", slopes[1]), ("ppm", sum(slopes) * 10**6)):
                    yield f"/exact/sensitivities/{k}/{field}", slope, abs(slope) * 1e-9

    def drawn(self):
        document = self.document
        if "histogram" in document:
            edges = [number(e) for e in document["histogram"].get("edges", [])]
            bins = document["histogram"].get("bins")
            edges = edges or [self.mean + self.sd * (mpf(8 * k) / bins - 4) for k in range(bins + 1)]
            above = [self.above(e) for e in edges]
            for k, edge in enumerate(edges):
                yield f"/histogram/edges/{k}", edge, 1e-12
            for k in range(len(edges) - 1):
                yield f"/histogram/probabilities/{k}", above[k] - above[k + 1], 1e-12
        if "curve" in document:
            last = document["curve"] - 1
            # the logarithm of a tail is nearly straight
            far = mpf(9) / 2 * self.sd
            low = findroot(lambda x: log(1 - self.above(x)) - log(mpf(10) ** -6), self.mean - far)
            high = findroot(lambda x: log(self.above(x)) - log(mpf(10) ** -6), self.mean + far)
            for k in range(last + 1):
                size = low + (high - low) * k / last
                yield f"/curve/sizes/{k}", size, 1e-12
                yield f"/curve/densities/{k}", -diff(self.above, size), 1e-10

    def scaled(self, place, tolerance):
        """The same with one contributor scaled about the middle of its limits."""
        document = json.loads(json.dumps(self.document))
        part = document["contributors"][place]
        lower, upper = number(part["lower"]), number(part["upper"])
        middle, factor = (lower + upper) / 2, tolerance / ((upper - lower) / 2)
        mean, variance = moments(part)
        scaled = Linear(document)
        c, n = weight(part)
        scaled.mean += c * n * (middle + factor * (mean - middle) - mean)
        scaled.sd = sqrt(self.sd**2 + n * c * c * variance * (factor**2 - 1))
        if "uniform" in next(iter(part["distribution"])):
            scaled.parts[place] = {**part, "lower": Exact(middle - tolerance), "upper": Exact(middle + tolerance)}
        return scaled


class Exact:
    """A number that is not rounded on its way through `number`."""

    def __init__(self, value):
        self.value = value


def cube(x, halves, power):
    """Terms of a cube that a plane cuts, each to a power."""
    total = mpf(0)
    for signs in itertools.product((1, -1), repeat=len(halves)):
        reach = sum(s * h for s, h in zip(signs, halves)) - x
        if reach > 0:
            total += math.prod(signs) * reach**power
    return total / (math.factorial(power) * math.prod(2 * h for h in halves))


def cube_above(x, halves):
    """P(sum of uniform terms > x)."""
    return cube(x, halves, len(halves))


def cube_density(x, halves):
    """Density of a sum of uniform terms."""
    return cube(x, halves, len(halves) - 1)


def of_linear(document):
    stack = Linear(document)
    yield from stack.plain()
    yield from stack.exact()
    yield from stack.drawn()


def of_job(stack):
    """The numbers of a stack within a job, under the keys of its report."""
    linear = Linear(stack) if "engine" not in stack else None
    numbers = itertools.chain(linear.plain(), linear.exact()) if linear else of_function(stack, ratio)
    report = {}
    for pointer, value, _ in numbers:
        # parts per million are a million of what is there already, and the fourth moment is known to fewer digits
        if pointer.endswith(("/ppm", "/skewness", "/excess_kurtosis")):
            continue
        *parents, last = pointer.split("/")[1:]
        place = report
        for name in parents:
            place = place.setdefault(name, {})
        place[last] = float(value)
    return listed(report)


def listed(item):
    """Lists in place of what is keyed by numbers."""
    if not isinstance(item, dict):
        return item
    if all(key.isdigit() for key in item):
        return [listed(item[str(k)]) for k in range(len(item))]
    return {key: listed(value) for key, value in item.items()}


def rows():
    for name, of in [("clutch", lambda d: of_function(d, angle)), ("deck", of_linear), ("ratio", lambda d: of_function(d, ratio)), ("shims", of_linear)]:
        document = json.loads(FILES[name].read_text())
        for pointer, value, tolerance in of(document):
            yield f"{name},{pointer},{float(value)!r},{float(tolerance):.3g},{HERE}"


def main():
    text = "# Numbers of the reports, by JSON Pointer; tests/vectors/README.md explains the columns\nstack,pointer,expected,tolerance,source\n" + "\n".join(rows()) + "\n"
    file = FOLDER / "expected.csv"
    if "--check" in sys.argv:
        sys.exit(0 if file.read_text() == text else "expected.csv is not what the script writes")
    file.write_text(text)


if __name__ == "__main__":
    main()
