"""Probabilities of linear stacks at 30 digits or as exact rationals, for tests/vectors/stack.csv.

Three ways, none of them the library's doubles: sums of rectangles as exact rational numbers; sums with a normal part as an integral
along a vertical line of the plane by mpmath, with the transforms in closed form; few terms without a normal part by convolution. The arguments
are the doubles that the library gets, not the decimals they are written as.
"""

from fractions import Fraction
from itertools import product
from math import comb, factorial
from pathlib import Path
import sys

import mpmath as mp

mp.mp.dps = 30
HALF = mp.mpf(1) / 2


# --- exact: sums of independent rectangles -----------------------------------------------------------------------


def irwin_hall_above(n, x):
    """Exact P(sum of n rectangles of width 1 about zero is above x), x a Fraction."""
    reach = Fraction(n, 2) - x
    total = sum((-1) ** k * comb(n, k) * (reach - k) ** n for k in range(n + 1) if reach > k)
    return Fraction(total) / factorial(n)


def rectangles_above(half_widths, x):
    """Exact P(sum of rectangles of these half-widths is above x)."""
    n = len(half_widths)
    total = Fraction(0)
    for signs in product((1, -1), repeat=n):
        reach = sum(s * a for s, a in zip(signs, half_widths)) - x
        if reach > 0:
            sign = -1 if signs.count(-1) % 2 else 1
            total += sign * reach**n
    widths = Fraction(1)
    for a in half_widths:
        widths *= 2 * a
    return total / factorial(n) / widths


def rectangles_density(half_widths, x):
    """Exact density of the same sum."""
    n = len(half_widths)
    total = Fraction(0)
    for signs in product((1, -1), repeat=n):
        reach = sum(s * a for s, a in zip(signs, half_widths)) - x
        if reach > 0:
            total += (-1 if signs.count(-1) % 2 else 1) * reach ** (n - 1)
    widths = Fraction(1)
    for a in half_widths:
        widths *= 2 * a
    return total / factorial(n - 1) / widths


def flanks_above(triangles, half_widths, x):
    """P(sum of triangles (low, mode, high) and rectangles is above x), of fractions exactly: a flank is a power of two degrees more."""
    terms = [(-x, 1)]
    for low, mode, high in triangles:
        p, q = mode - low, high - mode
        # second derivative of the density
        corners = [(high, 2 / ((p + q) * q)), (mode, -2 / (p * q)), (low, 2 / ((p + q) * p))]
        terms = [(reach + v, weight * w) for reach, weight in terms for v, w in corners]
    for a in half_widths:
        terms = [(reach + s * a, weight * s / (2 * a)) for reach, weight in terms for s in (1, -1)]
    n = 2 * len(triangles) + len(half_widths)
    return sum(weight * reach**n for reach, weight in terms if reach > 0) / factorial(n)


# --- transforms E exp(z X) and tails -------------------------------------------------------------------------


def phi(x):
    return mp.exp(-x * x / 2) / mp.sqrt(2 * mp.pi)


def Phi(x):
    return mp.erfc(-x / mp.sqrt(2)) / 2


def skewed_pieces(numbers):
    """Pieces of the normal score with the line of the value over it, from pairs (probability, value); the ends go on."""
    ps, values = numbers[0::2], numbers[1::2]
    scores = [mp.sqrt(2) * mp.erfinv(2 * p - 1) for p in ps]
    out = []
    for k in range(len(scores) - 1):
        slope = (values[k + 1] - values[k]) / (scores[k + 1] - scores[k])
        low = -mp.inf if k == 0 else scores[k]
        high = mp.inf if k == len(scores) - 2 else scores[k + 1]
        out.append((low, high, values[k] - slope * scores[k], slope))
    return out


class Term:
    """A term of a stack from its words, as in the column `stack` of the vectors."""

    def __init__(self, text):
        kind, *numbers = text.split()
        self.kind, self.n = kind, [mp.mpf(float(v)) for v in numbers]
        self.pieces = skewed_pieces(self.n) if kind == "skewed" else []

    def transform(self, z):
        n = self.n
        match self.kind:
            case "normal":
                return mp.exp(n[0] ** 2 * z * z / 2)
            case "rectangular":
                return mp.sinh(n[0] * z) / (n[0] * z)
            case "triangular":
                low, mode, high = n
                # integral of the two straight flanks
                up = (mp.exp(mode * z) * ((mode - low) * z - 1) + mp.exp(low * z)) / (z * z * (mode - low))
                down = (mp.exp(high * z) - mp.exp(mode * z) * (1 + (high - mode) * z)) / (z * z * (high - mode))
                return 2 / (high - low) * (up + down)
            case "trapezoidal":
                a, beta = n
                b, c = a * (1 + beta) / 2, a * (1 - beta) / 2
                return mp.sinh(b * z) / (b * z) * mp.sinh(c * z) / (c * z)
            case "arcsine":
                return mp.besseli(0, n[0] * z)
            case "beta":
                p, q, low, high = n
                return mp.exp(low * z) * mp.hyp1f1(p, p + q, (high - low) * z)
            case "truncated":
                mean, sd, low, high = n
                a, b = (low - mean) / sd, (high - mean) / sd
                share = Phi(b) - Phi(a)
                return mp.exp(mean * z + sd * sd * z * z / 2) * (Phi(b - sd * z) - Phi(a - sd * z)) / share
            case "skewed":
                return sum(
                    mp.exp(m * z + s * s * z * z / 2) * ((Phi(high - s * z) if mp.isfinite(high) else 1) - (Phi(low - s * z) if mp.isfinite(low) else 0))
                    for low, high, m, s in self.pieces
                )
            case "sample":
                return sum(mp.exp(v * z) for v in n) / len(n)
        raise ValueError(self.kind)

    def weighted(self, f):
        """Function and limits of an integral of f over this term, without roots at the ends; and the map from a value to its variable."""
        n = self.n
        if self.kind == "truncated":
            mean, sd, low, high = n
            share = Phi((high - mean) / sd) - Phi((low - mean) / sd)
            return lambda v: f(v) * phi((v - mean) / sd) / sd / share, low, high, lambda v: v
        p, q = {"rectangular": (mp.mpf(1), mp.mpf(1)), "arcsine": (HALF, HALF)}.get(self.kind, tuple(n[:2]))
        low, high = self.ends()

        def g(a):
            # value = low + width sin(a)^2
            sine, cosine = mp.sin(a), mp.cos(a)
            weight = 2 * sine ** (2 * p - 1) * cosine ** (2 * q - 1) / mp.beta(p, q)
            return weight * f(low + (high - low) * sine * sine)

        return g, mp.mpf(0), mp.pi / 2, lambda v: mp.asin(mp.sqrt((v - low) / (high - low)))

    def ends(self):
        n = self.n
        return {"rectangular": lambda: (-n[0], n[0]), "arcsine": lambda: (-n[0], n[0])}.get(
            self.kind, lambda: (n[2], n[3])
        )()

    def above(self, x):
        """P(this term is above x)."""
        low, high = self.ends()
        if x <= low or x >= high:
            return mp.mpf(x <= low)
        n = self.n
        match self.kind:
            case "rectangular":
                return (high - x) / (high - low)
            case "arcsine":
                # acos near 1 would lose digits of the tail: the half angle does not
                return 2 * mp.asin(mp.sqrt((n[0] - x) / (2 * n[0]))) / mp.pi
            case "beta":
                return mp.betainc(n[1], n[0], 0, (high - x) / (high - low), regularized=True)
            case "truncated":
                mean, sd = n[0], n[1]
                return (Phi((mean - x) / sd) - Phi((mean - high) / sd)) / (Phi((high - mean) / sd) - Phi((low - mean) / sd))
        raise ValueError(self.kind)


# --- the two integrals -------------------------------------------------------------------------------------------


def line(terms, x, tilt, density=False):
    """Tail or density by the integral of exp(-z x) M(z) / z along Re z = tilt; tilt > 0 gives above, < 0 below."""

    def f(t):
        z = mp.mpc(tilt, t)
        value = mp.exp(-z * x)
        for term in terms:
            value *= term.transform(z)
        return (value if density else value / z).real

    sd = mp.sqrt(sum(term.n[0] ** 2 for term in terms if term.kind == "normal"))
    end = 12 / sd  # exp(-72) of the size at 0
    # the trapezoidal rule on an analytic integrand: halved until 20 digits stand
    h = end / 32
    total = h * (f(mp.mpf(0)) / 2 + sum(f(k * h) for k in range(1, 33)))
    for _ in range(6):
        middle = h * sum(f((k + HALF) * h) for k in range(int(mp.nint(end / h))))
        done = abs(middle - total) < mp.mpf(10) ** -20 * abs(total)
        total, h = (total + middle) / 2, h / 2
        if done:
            break
    else:
        return mp.mpf(0)  # no row: at this place nothing is left to 20 digits
    total /= mp.pi
    return total if density or tilt > 0 else -total


def convolved(terms, x):
    """P(above x) of two terms by quadrature over the first, split where the second ends."""
    first, second = terms
    low, high = first.ends()
    g, start, end, variable = first.weighted(lambda v: second.above(x - v))
    inner = sorted(variable(x - edge) for edge in second.ends() if low < x - edge < high)
    cuts = [start, *inner, end]
    # the ends of the pieces may hold roots: the double exponential rule takes them
    return sum(mp.quad(g, [a, (a + b) / 2, b]) for a, b in zip(cuts, cuts[1:]))


# --- rows --------------------------------------------------------------------------------------------------------

HEADING = """\
# Exact distributions of linear stacks (core/src/stack). Columns and rules: README.md beside this file. Lengths in one unit; expected to 20 digits.
# Written by reference/stack.py. Terms of the column `stack` stand apart by ;. What they mean: the class Term there.
id,stack,function,x,expected,tolerance,source
"""

CLOSED = "closed form: exact rational number by reference/stack.py"
LINE = "mpmath at 30 digits: integral along a vertical line, transforms in closed form"
CONVOLVED = "mpmath at 30 digits: convolution"
PUBLISHED = "closed form, also in the collected checks 10.1 to 10.6"


def exact(x):
    return Fraction(float(x))


def digits(value):
    if isinstance(value, Fraction):
        value = mp.mpf(value.numerator) / value.denominator
    return mp.nstr(value, 20)


def row(name, stack, function, x, value, source, tolerance="1e-9"):
    return f"{name},{stack},{function},{float(x)!r},{digits(value)},{tolerance},{source}"


def place_of(n, probability):
    """A double whose Irwin-Hall tail is about the probability, by halving; the exact tail is taken at the double."""
    low, high = Fraction(0), Fraction(n, 2)
    for _ in range(40):
        middle = (low + high) / 2
        low, high = (middle, high) if irwin_hall_above(n, middle) > probability else (low, middle)
    return float(low)


def irwin_hall_rows():
    for n in range(1, 41):
        stack = ";".join(["rectangular 0.5"] * n)
        for p in ("0.4", "0.01", "1e-5", "1e-10", "1e-15"):
            x = place_of(n, Fraction(p))
            yield row(f"irwin_hall_{n}_{p}", stack, "above", x, irwin_hall_above(n, exact(x)), CLOSED)
        x = 0.125 * n
        yield row(f"irwin_hall_{n}_below", stack, "below", -x, irwin_hall_above(n, exact(x)), CLOSED)
        if n >= 2:
            yield row(f"irwin_hall_{n}_density", stack, "density", x, rectangles_irwin_density(n, exact(x)), CLOSED)


def rectangles_irwin_density(n, x):
    reach = Fraction(n, 2) - x
    total = sum((-1) ** k * comb(n, k) * (reach - k) ** (n - 1) for k in range(n + 1) if reach > k)
    return Fraction(total) / factorial(n - 1)


def published_rows():
    for n, x, value in [
        (2, "1/2", "1/8"), (3, "3/4", "9/128"), (3, "1", "1/6"), (4, "1", "1/24"), (4, "3/2", "77/384"),
        (5, "1", "1/120"), (6, "2", "29/360"), (12, "3", "397/394240"), (12, "4", "29639/1330560"),
    ]:
        at = Fraction(x) - Fraction(n, 2)
        assert irwin_hall_above(n, -at) == Fraction(value), (n, x)
        yield row(f"10.1_{n}_{x.replace('/', '_')}", ";".join(["rectangular 0.5"] * n), "below", float(at), Fraction(value), PUBLISHED)
    trapezoid = [Fraction(1, 20), Fraction(3, 100)]
    for x, value in [("0.01", "3/5"), ("0.02", "7/10"), ("0.04", "13/15"), ("0.06", "29/30"), ("0.07", "119/120")]:
        # the decimals are not doubles: the value is that of the decimals
        assert 1 - rectangles_above(trapezoid, Fraction(x)) == Fraction(value)
        yield row(f"10.5_{x}", "rectangular 0.05;rectangular 0.03", "below", float(x), Fraction(value), PUBLISHED, "1e-13")
        yield row(f"10.5t_{x}", "trapezoidal 0.08 0.25", "below", float(x), Fraction(value), PUBLISHED, "1e-13")
    for x, value in [(0.5, "0.383375185"), (1.0, "0.6304369411"), (1.5, "0.8297010449")]:
        above = convolved([Term("arcsine 1"), Term("arcsine 1")], mp.mpf(x))
        assert abs(1 - 2 * above - mp.mpf(value)) < 1e-9
        yield row(f"10.6_{x}", "arcsine 1;arcsine 1", "above", x, above, PUBLISHED)


RECTANGLES = {
    "two": [0.02, 0.05],
    "three": [0.03, 0.011, 0.02],
    "wide_and_narrow": [0.05, 0.0001, 0.0002, 0.00015],
    "five": [0.01, 0.02, 0.013, 0.0071, 0.03],
    "eight": [0.01, 0.02, 0.013, 0.0071, 0.03, 0.005, 0.017, 0.009],
    "twelve": [0.01, 0.02, 0.013, 0.0071, 0.03, 0.005, 0.017, 0.009, 0.011, 0.004, 0.0061, 0.0203],
}


def rectangle_rows():
    for name, widths in RECTANGLES.items():
        exactly = [exact(a) for a in widths]
        stack = ";".join(f"rectangular {a!r}" for a in widths)
        sd = float(sum(a * a for a in exactly) / 3) ** 0.5
        reach = float(sum(exactly))
        places = [0.1 * sd, sd, 2.0 * sd, 3.3 * sd] + [reach * (1 - d) for d in (0.3, 0.1, 0.02, 0.001)]
        for k, x in enumerate(x for x in places if x < reach):
            above = rectangles_above(exactly, exact(x))
            if above < Fraction(1, 10**16):
                continue
            yield row(f"{name}_{k}", stack, "above", x, above, CLOSED)
            yield row(f"{name}_{k}_density", stack, "density", x, rectangles_density(exactly, exact(x)), CLOSED)


EIGHT = "normal 0.004;normal 0.003;normal 0.005;normal 0.002;rectangular 0.008;rectangular 0.006;triangular -0.01 0 0.01;trapezoidal 0.009 0.3333333333333333"
MIXED = {
    "eight": (EIGHT, 0.0109),
    "normal_alone": ("normal 0.01", 0.01),
    "one_rectangle": ("normal 0.001;rectangular 0.02", 0.0116),
    "small_normal": ("normal 0.0001;rectangular 0.02;rectangular 0.013", 0.0138),
    "tiny_normal": ("normal 0.00001;rectangular 0.02", 0.0116),
    "skew_triangle": ("normal 0.002;triangular -0.01 -0.004 0.02;rectangular 0.005", 0.0072),
    "arcsine": ("normal 0.002;arcsine 0.01;rectangular 0.004", 0.0077),
    "beta": ("normal 0.003;beta 2 5 -0.01 0.02;beta 0.7 1.4 0 0.01", 0.0064),
    "truncated": ("normal 0.001;truncated 0 0.01 -0.015 0.012;rectangular 0.006", 0.0085),
    "truncated_far": ("normal 0.001;truncated 0 0.004 0.004 0.02", 0.0022),
    "skewed": ("normal 0.002;skewed 0.00135 -0.01 0.5 0 0.99865 0.02;rectangular 0.005", 0.0071),
    "sample": ("normal 0.002;sample -0.004 -0.001 0 0.0005 0.001 0.003 0.0062;rectangular 0.003", 0.0044),
}


def mixed_rows():
    for name, (stack, sd) in MIXED.items():
        terms = [Term(t) for t in stack.split(";")]
        for side in (1, -1):
            for k in ("0.3", "2", "4", "6", "7.9"):
                x = round(side * float(k) * sd, 6)
                tilt = mp.mpf(side * max(1.0, float(k))) / sd
                if name in ("one_rectangle", "small_normal", "tiny_normal"):
                    # two or three widths: beyond the limits the tail is that of the normal part
                    reach = float(sum(t.n[0] for t in terms if t.kind == "rectangular"))
                    x = round(side * (reach + {"0.3": -reach, "2": -4, "4": 0, "6": 3, "7.9": 6}[k] * float(terms[0].n[0])), 7)
                    value = with_normal(terms, mp.mpf(float(x)), side)
                    source = "closed form at 60 digits: repeated integrals of the normal distribution, by reference/stack.py"
                else:
                    value = line(terms, mp.mpf(float(x)), saddle(terms, x, tilt))
                    source = LINE
                if mp.mpf("1e-16") < value < 1:
                    yield row(f"{name}_{'above' if side > 0 else 'below'}_{k}", stack, "above" if side > 0 else "below", x, value, source)
        if name in ("eight", "beta", "sample", "truncated", "skewed", "arcsine"):
            x = round(3 * sd, 6)
            tilt = saddle(terms, x, mp.mpf(3) / sd)
            yield row(f"{name}_density", stack, "density", x, line(terms, mp.mpf(float(x)), tilt, density=True), LINE)


def saddle(terms, x, start):
    """About where the integrand is smallest on the real line, on the side of the start; any value gives the same integral."""
    sign = 1 if start > 0 else -1

    def size(s):
        return sum(mp.log(t.transform(mp.mpf(s))) for t in terms) - s * x

    low, high = abs(start) / 50, abs(start) * 50
    for _ in range(60):
        a, b = low + (high - low) / 3, high - (high - low) / 3
        low, high = (low, b) if size(sign * a) < size(sign * b) else (a, high)
    return sign * max(low, abs(start) / 20)


def with_normal(terms, x, side):
    """One normal and a few rectangles: alternating sum of repeated integrals, at 60 digits."""
    with mp.workdps(60):
        sd = terms[0].n[0]
        widths = [t.n[0] for t in terms[1:]]
        n = len(widths)

        def repeated(y):
            # E (Z + y)_+^n / n!
            before, now = phi(y), Phi(y)
            for k in range(1, n + 1):
                before, now = now, (y * now + before) / k
            return now

        total = mp.mpf(0)
        for signs in product((1, -1), repeat=n):
            reach = sum(s * a for s, a in zip(signs, widths)) - side * x
            total += (-1 if signs.count(-1) % 2 else 1) * repeated(reach / sd) * sd**n
        for a in widths:
            total /= 2 * a
        return total


FEW = {
    "arcsine_rectangle": ("arcsine 0.01;rectangular 0.02", [0.0, 0.005, 0.0101, 0.02, 0.029, 0.0299999]),
    "beta_rectangle": ("beta 2.5 3.5 -0.01 0.02;rectangular 0.01", [0.0, 0.01, 0.02, 0.028, 0.0295]),
    "two_betas": ("beta 2 3 0 0.02;beta 0.6 0.8 0 0.01", [0.005, 0.012, 0.02, 0.027, 0.0295]),
    "truncated_arcsine": ("truncated 0 0.004 -0.01 0.012;arcsine 0.005", [0.0, 0.006, 0.0101, 0.015, 0.0165]),
}


def few_rows():
    for name, (stack, places) in FEW.items():
        terms = [Term(t) for t in stack.split(";")]
        for x in places:
            yield row(f"{name}_{x}", stack, "above", x, convolved(terms, mp.mpf(float(x))), CONVOLVED)


TRIANGLES = {
    "triangle_rectangle": "triangular -0.01 -0.004 0.02;rectangular 0.006",
    "two_triangles": "triangular -0.01 -0.004 0.02;triangular -0.003 0.009 0.011",
    "triangles_rectangles": "triangular -0.01 -0.004 0.02;triangular -0.003 0.009 0.011;rectangular 0.008;rectangular 0.006;rectangular 0.005",
    "beta_triangle": "beta 2 5 -0.01 0.02;triangular -0.01 -0.004 0.02",
    "beta_triangle_rectangles": "beta 2 5 -0.01 0.02;triangular -0.01 -0.004 0.02;rectangular 0.008;rectangular 0.006",
    "root_triangle_rectangle": "beta 0.7 1.3 -0.01 0.02;triangular -0.01 -0.004 0.02;rectangular 0.008",
}
TRIANGLE = "closed form: exact rational number by reference/stack.py, whose formula stands against quadrature there"
AVERAGED = "mpmath at 30 digits: that closed form averaged over the beta"


def triangle_rows():
    check_flanks()
    for name, stack in TRIANGLES.items():
        terms = [Term(t) for t in stack.split(";")]
        betas = [t for t in terms if t.kind == "beta"]
        triangles = [[exact(v) for v in t.n] for t in terms if t.kind == "triangular"]
        widths = [exact(t.n[0]) for t in terms if t.kind == "rectangular"]
        high = sum(t.ends()[1] for t in betas) + float(sum(t[2] for t in triangles) + sum(widths))
        for share in ("0.2", "0.4", "0.6", "0.8", "0.95", "0.99"):
            x = round(float(high) * float(share), 6)
            if betas:
                value, source = averaged_over(betas[0], triangles, widths, x), AVERAGED
            else:
                value, source = flanks_above(triangles, widths, exact(x)), TRIANGLE
            yield row(f"{name}_{share}", stack, "above", x, value, source)


def averaged_over(beta, triangles, widths, x):
    triangles, widths = [[mp.mpf(float(v)) for v in t] for t in triangles], [mp.mpf(float(a)) for a in widths]
    x, (low, high) = mp.mpf(float(x)), beta.ends()
    g, start, end, variable = beta.weighted(lambda v: flanks_above(triangles, widths, x - v))
    corners = {sum(c) for c in product(*triangles, *[(-a, a) for a in widths])}
    cuts = [start, *sorted(variable(x - c) for c in corners if low < x - c < high), end]
    return sum(mp.quad(g, [a, (a + b) / 2, b]) for a, b in zip(cuts, cuts[1:]))


def check_flanks():
    """The closed form of a triangle and rectangles against the average over the triangle by quadrature."""
    low, mode, high = (mp.mpf(v) for v in ("-0.01", "-0.004", "0.02"))
    widths = [Fraction(8, 1000), Fraction(6, 1000)]
    for x in (Fraction(0), Fraction(1, 100), Fraction(3, 100)):
        density = lambda v: 2 / (high - low) * ((v - low) / (mode - low) if v < mode else (high - v) / (high - mode))
        at = mp.mpf(x.numerator) / x.denominator
        of = [mp.mpf(a.numerator) / a.denominator for a in widths]
        corners = [at - s * of[0] - t * of[1] for s in (1, -1) for t in (1, -1)]
        cuts = sorted([low, mode, high, *(c for c in corners if low < c < high)])

        def tail(y):
            total = sum(s * t * max(s * of[0] + t * of[1] - y, 0) ** 2 for s in (1, -1) for t in (1, -1))
            return total / 2 / (4 * of[0] * of[1])

        by_quadrature = mp.quad(lambda v: density(v) * tail(at - v), cuts)
        exactly = flanks_above([[Fraction(v, 1000) for v in (-10, -4, 20)]], widths, x)
        assert abs(by_quadrature - mp.mpf(exactly.numerator) / exactly.denominator) < mp.mpf(10) ** -25


def quantile_rows():
    """Sizes whose tail is a probability: in the last cell of a sum of rectangles the tail is a power; of a normal, its inverse."""
    for n in (1, 2, 3, 5, 8, 20):
        stack = ";".join(["rectangular 0.5"] * n)
        for p in ("1e-3", "1e-6", "1e-15"):
            probability = mp.mpf(float(p))
            if probability * factorial(n) <= 1:
                x = mp.mpf(n) / 2 - mp.root(factorial(n) * probability, n)
                yield f"quantile_{n}_{p},{stack},quantile_above,{p},{digits(x)},1e-12,closed form: (n! p)^(1/n) below the end"
    for p in ("0.3", "0.001", "1e-6", "1e-15", "0.9"):
        x = mp.mpf(0.01) * mp.sqrt(2) * mp.erfinv(1 - 2 * mp.mpf(float(p)))
        yield f"quantile_normal_{p},normal 0.01,quantile_above,{p},{digits(x)},1e-12,mpmath: inverse of the normal distribution"


# which numbers of a kind are lengths: they change with the tolerance
LENGTHS = {"beta": lambda k: k > 1, "trapezoidal": lambda k: k == 0, "skewed": lambda k: k % 2 == 1}
SLOPES = {
    "eight": (EIGHT, [0, 4, 6, 7], 0.0109),
    "skew_triangle": (MIXED["skew_triangle"][0], [0, 1, 2], 0.0072),
    "arcsine": (MIXED["arcsine"][0], [0, 1, 2], 0.0077),
    "beta": (MIXED["beta"][0], [0, 1, 2], 0.0064),
    "truncated": (MIXED["truncated"][0], [1], 0.0085),
    "skewed": (MIXED["skewed"][0], [1], 0.0071),
    "sample": (MIXED["sample"][0], [1], 0.0044),
}


def stretched(text, factor):
    """A term with all its lengths times a factor."""
    term = Term(text)
    is_length = LENGTHS.get(term.kind, lambda k: True)
    term.n = [v * factor if is_length(k) else v for k, v in enumerate(term.n)]
    if term.kind == "skewed":
        term.pieces = skewed_pieces(term.n)
    return term


def slope_rows():
    """Derivatives of a tail by the size of one term: five tails at 30 digits, the next error is below 1e-20."""
    h = mp.mpf(10) ** -5
    for name, (stack, places, sd) in SLOPES.items():
        texts = stack.split(";")
        for place in places:
            for k in (0.5, 3, 5):
                x = round(k * sd, 6)
                tilt = saddle([Term(t) for t in texts], x, mp.mpf(max(1, k)) / sd)

                def tail(step):
                    terms = [stretched(t, 1 + step) if j == place else Term(t) for j, t in enumerate(texts)]
                    return line(terms, mp.mpf(float(x)), tilt)

                slope = (8 * (tail(h) - tail(-h)) - (tail(2 * h) - tail(-2 * h))) / (12 * h)
                if slope == 0:
                    continue  # no row: the integral does not stand to 20 digits at this place
                yield row(f"slope_{name}_{place}_{k}", stack, f"slope_above_{place}", x, slope, "mpmath at 30 digits: differences of five tails", "1e-9")
    # rectangles alone: exact differences of rational tails
    widths = RECTANGLES["three"]
    step = Fraction(1, 10**9)
    for place in range(3):
        for x in (0.01, 0.04, 0.06):
            def tail(f):
                return rectangles_above([exact(a) * (1 + f) if j == place else exact(a) for j, a in enumerate(widths)], exact(x))

            slope = (8 * (tail(step) - tail(-step)) - (tail(2 * step) - tail(-2 * step))) / (12 * step)
            yield row(f"slope_three_{place}_{x}", ";".join(f"rectangular {a!r}" for a in widths), f"slope_above_{place}", x, slope, "rational numbers: differences of five exact tails", "1e-9")


def stack_csv():
    """The file of the stacks."""
    groups = [published_rows(), irwin_hall_rows(), rectangle_rows(), mixed_rows(), few_rows(), triangle_rows(), quantile_rows(), slope_rows()]
    return HEADING + "\n".join(line_ for group in groups for line_ in group) + "\n"


if __name__ == "__main__":
    place = Path(__file__).parent.parent / "vectors" / "stack.csv"
    text = stack_csv()
    if sys.argv[1:] == ["--check"]:
        sys.exit(place.read_text(encoding="utf-8") != text)
    place.write_text(text, encoding="utf-8")
