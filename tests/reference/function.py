"""Functions of contributors, evaluated on grids of quadrature: nothing is expanded, no derivative is taken. Prints what tests/stack_function.rs holds,
and writes tests/vectors/function.csv; with --check it only compares that.

The functions are polynomials of second degree, so that the moments of the library's second order are those of the function itself.
"""

import math
import sys
from pathlib import Path

import numpy as np
from compare import check
from mpmath import acos, betainc, diff, erfc, erfinv, findroot, mp, mpf, pi, sqrt
from numpy.polynomial.legendre import leggauss
from philox import word

mp.dps = 40


def rule(density, low, high, cuts=(), count=120):
    """Nodes and weights of a density, exact for polynomials of the degrees needed but for its own smoothness."""
    x, w = leggauss(count)
    edges = [low, *cuts, high]
    nodes, weights = [], []
    for a, b in zip(edges, edges[1:]):
        at = (a + b) / 2 + (b - a) / 2 * x
        nodes.append(at)
        weights.append(w * (b - a) / 2 * density(at))
    nodes, weights = np.concatenate(nodes), np.concatenate(weights)
    return nodes, weights / weights.sum()


def normal(mean, sd):
    return rule(lambda x: np.exp(-(((x - mean) / sd) ** 2) / 2), mean - 14 * sd, mean + 14 * sd)


def triangle(low, mode, high):
    up = lambda x: np.where(x < mode, (x - low) / (mode - low), (high - x) / (high - mode))
    return rule(up, low, high, [mode])


def beta(a, b, low, high):
    return rule(lambda x: (x - low) ** (a - 1) * (high - x) ** (b - 1), low, high)


def truncated(mean, sd, low, high):
    return rule(lambda x: np.exp(-(((x - mean) / sd) ** 2) / 2), low, high)


def moments(f, *rules):
    grids = np.meshgrid(*[r[0] for r in rules], indexing="ij")
    weights = np.ones(grids[0].shape)
    for axis, (_, w) in enumerate(rules):
        shape = [1] * len(rules)
        shape[axis] = -1
        weights = weights * w.reshape(shape)
    values = f(*grids)
    mean = float((weights * values).sum())
    central = [float((weights * (values - mean) ** k).sum()) for k in (2, 3, 4)]
    sd = central[0] ** 0.5
    return mean, sd, central[1] / sd**3, central[2] / sd**4 - 3


def ratio_of(bore, stroke, block, rod, height, head, gasket_bore, gasket, crown, crevice):
    deck = block - stroke / 2 - rod - height
    area = lambda d: pi / 4 * d**2 / 1000
    clear = head + area(gasket_bore) * gasket + area(bore) * deck + crown + crevice
    return 1 + area(bore) * stroke / clear


def hot_gap(gap, bore, tb, ab, tr, ar):
    return pi * bore * (1 + ab * (tb - 20)) - (pi * bore - gap) * (1 + ar * (tr - 20))


# ready-made stacks: their function, the names of their contributors, and nominals
ENGINE = {
    "deck_clearance": (lambda b, s, r, h: b - s / 2 - r - h, "block_height stroke rod compression_height", "216.4 86 143 30.2"),
    "squish": (lambda b, s, r, h, g: b - s / 2 - r - h + g, "block_height stroke rod compression_height gasket", "216.4 86 143 30.2 1.2"),
    "compression_ratio": (
        ratio_of,
        "bore stroke block_height rod compression_height head_volume gasket_bore gasket crown_volume crevice_volume",
        "86 86 216.4 143 30.2 48.5 87.5 1.2 2.5 0.4",
    ),
    "bench_clearance": (lambda b, p: b - p, "bore piston", "86.02 85.96"),
    "ring_gap": (lambda gap, gauge, bore: gap + pi * (bore - gauge), "gap gauge bore", "0.35 86 86.03"),
    "hot_ring_gap": (hot_gap, "gap bore bore_temperature bore_expansion ring_temperature ring_expansion", "0.35 86 110 1.2e-5 200 1.15e-5"),
    "liner_protrusion": (lambda f, s, c: f + s - c, "flange shim counterbore", "8.9 0.15 8.95"),
}


def engine():
    """Ready-made stacks at their nominals, with every first derivative."""
    for name, (f, _, at) in ENGINE.items():
        at = [mpf(x) for x in at.split()]
        print(name, float(f(*at)), [float(s) for s in slopes(f, at)])


def slopes(f, at):
    return [diff(f, at, tuple(int(j == k) for j in range(len(at)))) for k in range(len(at))]


# ------------------------------------------------------------------------------------------------------------------- function.csv

HEADING = """# Functions of contributors and trials of stacks (core/src/stack). Columns and rules: README.md beside this file.
# Written by reference/function.py. Sizes of the clutch are published, all else is invented.
id,function,contributors,law,given,expected,source
"""
CLUTCH = "hub 27.645 -0.05 0.05 normal 0 0.0125;roller 11.43 -0.01 0.01 normal 0 0.0025;cage 50.8 -0.05 0.05 normal 0 0.0125"
ANGLE = "formula acos((hub + roller) / (cage - roller))"
# plates whose trials need nothing but + - *, so that their bits are known
PLATES = "a 2 -0.1 0.1 rectangular 0 0.1;b 3 -0.05 0.2 rectangular 0 0.075"
BOX = PLATES + ";c 10 -0.3 0.3 rectangular 0 0.25"
SKEWED = "a 10 -0.2 0.3 triangular -0.2 -0.1 0.3;b 5 -0.1 0.2 beta 2 5 -0.1 0.2;c 1 -0.03 0.05 truncated_normal 0.02 0.03 -0.03 0.05"


def uniform(seed, trial, draw):
    return (word(seed, trial, draw) + 0.5) / 2**32


def sizes(contributors, seed, trial):
    """Sizes of rectangular contributors in a trial, operation by operation in doubles."""
    out = []
    for draw, term in enumerate(contributors.split(";")):
        _, nominal, _, _, kind, centre, half = term.split()
        assert kind == "rectangular"
        out.append(float(nominal) + float(centre) + float(half) * (2 * uniform(seed, trial, draw) - 1))
    return out


def product(a, b):
    return a * b


def ratio(a, b, c):
    return (a + b) / (c - b)


def values(contributors, f, seed, count, first=0):
    return [f(*sizes(contributors, seed, trial)) for trial in range(first, first + count)]


def numbered(made, tolerance="0"):
    return ";".join(f"{k}={value!r}~{tolerance}" for k, value in enumerate(made))


def named(**of):
    """Names with `__` for the dots, and value and tolerance."""
    return ";".join(f"{name.replace('__', '.')}={float(value)!r}~{float(tolerance):.1e}" for name, (value, tolerance) in of.items())


def normal_quantile(p):
    return sqrt(mpf(2)) * erfinv(2 * mpf(p) - 1)


def clopper_pearson(count, trials, confidence):
    """Ends as quantiles of beta distributions, by their integral."""
    tail = (1 - mpf(confidence)) / 2

    def quantile(a, b, p):
        return findroot(lambda x: betainc(a, b, 0, x, regularized=True) - p, (mpf(a) / (a + b) * mpf("0.5"), mpf(a) / (a + b) * mpf("1.5")), solver="anderson")

    lower = quantile(count, trials - count + 1, tail) if count else mpf(0)
    upper = quantile(count + 1, trials - count, 1 - tail)
    return lower, upper


def rows():
    """Every row, as a line."""
    row = lambda *cells: ",".join(cells)
    at = [mpf("27.645"), mpf("11.43"), mpf("50.8")]
    angle = lambda a, c, e: acos((a + c) / (e - c))
    exact = "mpmath at 40 digits"
    yield row("nominal_clutch", "nominal", CLUTCH, ANGLE, "", named(result=(angle(*at), "1e-14")), exact)
    degrees = "formula acos((a + c) / (e - c)) * 180 / pi with a c e"
    yield row("nominal_clutch_degrees", "nominal", CLUTCH, degrees, "", "result=7.018~5e-4", "published with the example: Fortini (1967) as Chase has it")
    for word_, (f, names, nominals) in ENGINE.items():
        given = list(zip(names.split(), nominals.split(), strict=True))
        parts = ";".join(f"{name} {nominal} -1e-06 1e-06 normal 0 1e-07" for name, nominal in reversed(given))
        where = [mpf(n) for _, n in given]
        yield row(f"nominal_{word_}", "nominal", parts, f"engine {word_}", "", named(result=(f(*where), "2e-13")), exact)
        # effects by place as given, which is the other way round
        expected = {f"{len(given) - 1 - k}__sensitivity": (s, repr(1e-11 * float(abs(s)))) for k, s in enumerate(slopes(f, where))}
        yield row(f"propagation_{word_}", "propagation", parts, f"engine {word_}", "", named(derivation=(1, 0), **expected), exact)

    for law, derivation, tolerance in [(ANGLE, 1, "1e-12"), ("clutch", 2, "1e-9")]:
        gradient = slopes(angle, at)
        parts = [g * g * mpf(sd) ** 2 for g, sd in zip(gradient, ["0.0125", "0.0025", "0.0125"], strict=True)]
        expected = {f"{k}__sensitivity": (g, tolerance) for k, g in enumerate(gradient)}
        expected |= {f"{k}__share": (p / sum(parts), tolerance) for k, p in enumerate(parts)}
        first = named(derivation=(derivation, 0), nominal=(angle(*at), "1e-14"), mean=(angle(*at), "1e-14"), standard_deviation=(sqrt(sum(parts)), tolerance), **expected)
        # every language has its own arc cosine: the bits of the called one are not compared
        yield row(f"propagation_{'clutch' if law == ANGLE else 'called_clutch'}", "propagation", CLUTCH, law, "", first, exact)
        corners = [angle(mpf("27.695"), mpf("11.44"), mpf("50.75")), angle(mpf("27.595"), mpf("11.42"), mpf("50.85"))]
        if law == ANGLE:
            bounds = dict(lowest_bound=(corners[0], "1e-13"), highest_bound=(corners[1], "1e-13"))
            at_corner = {"lowest_at__0": (27.695, "1e-14"), "lowest_at__1": (11.44, "1e-14"), "lowest_at__2": (50.75, "1e-14"), "highest_at__0": (27.595, "1e-14")}
            expected = named(proof=(1, 0), lowest=(corners[0], "1e-14"), highest=(corners[1], "1e-14"), **bounds, **at_corner)
            yield row("worst_clutch", "worst_case", CLUTCH, law, "", expected, "corners by hand; a rounding of a size is up to 3e-15 of the angle")
        else:
            expected = named(proof=(3, 0), lowest=(corners[0], "1e-13"), highest=(corners[1], "1e-13")) + ";lowest_bound=none;highest_bound=none"
            yield row("worst_called_clutch", "worst_case", CLUTCH, law, "", expected, "corners by hand")

    pair = "x 2 -1 1 normal 0 0.5;y 3 -1 1 normal 0 0.4"
    mean, sd, skewness, kurtosis = moments(lambda x, y: x * y, normal(2.0, 0.5), normal(3.0, 0.4))
    second = lambda t, u: dict(second_mean=(mean, t), second_standard_deviation=(sd, t), skewness=(skewness, t), excess_kurtosis=(kurtosis, u))
    both = 0.25 * 0.16 / sd**2
    yield row("propagation_product", "propagation", pair, "formula x * y", "", named(derivation=(1, 0), shift=(0, 0), **second("1e-11", "1e-10"), **{"0__together": (both, "1e-12"), "1__together": (both, "1e-12")}), "quadrature on a grid")
    f = lambda a, b, c: a * a + 0.3 * a * b - b / 2 + a * c + 2 * c
    mean, sd, skewness, kurtosis = moments(f, triangle(9.8, 9.9, 10.3), beta(2, 5, 4.9, 5.2), truncated(1.02, 0.03, 0.97, 1.05))
    yield row("propagation_skewed", "propagation", SKEWED, "formula a * a + 0.3 * a * b - b / 2 + a * c + 2 * c", "", named(derivation=(1, 0), **second("1e-9", "1e-9")), "quadrature on a grid")
    yield row("worst_inside", "worst_case", "x 0 -1 2 normal 0 0.1", "formula x * x - x", "", named(proof=(2, 0), lowest=(-0.25, "2e-7"), highest=(2, "2e-7"), lowest_bound=(-0.25, "2e-7")), "by hand")
    yield row("worst_ratio", "worst_case", BOX, "ratio", "", named(proof=(3, 0), lowest=(mpf("4.85") / mpf("7.35"), "1e-13"), highest=(mpf("5.3") / mpf("6.5"), "1e-13")), "corners by hand")

    bits = "Philox and doubles in Python"
    large = 2**64 - 2
    yield row("trials_product", "trials", PLATES, "formula a * b", "8;253;6;1;0", numbered(values(PLATES, product, 8, 6, 253)), bits)
    yield row("trials_ratio", "trials", BOX, "ratio", f"{large};0;5;1;0", numbered(values(BOX, ratio, large, 5)), bits)
    yield row("trials_ratio_far", "trials", BOX, "ratio", "8;16383;3;1;0", numbered(values(BOX, ratio, 8, 3, 16383)), bits)
    linear = lambda a, b, c: math.fsum([2.0, 3.0 * -2.0, 10.0]) + 1.0 * (a - 2.0) + -2.0 * (b - 3.0) + 1.0 * (c - 10.0)
    yield row("trials_sum", "trials", BOX, "sum 1 -2 1", "8;1000;4;1;0", numbered(values(BOX, linear, 8, 4, 1000), "1e-14"), "Philox in Python; the size less its nominal loses a digit")
    clutch = [float(angle(*(m + mpf(sd) * normal_quantile(uniform(5, trial, k)) for k, (m, sd) in enumerate(zip(at, ["0.0125", "0.0025", "0.0125"], strict=True))))) for trial in range(700, 704)]
    yield row("trials_clutch", "trials", CLUTCH, ANGLE, "5;700;4;1;0", numbered(clutch, "1e-11"), "Philox in Python and the normal quantile at 40 digits")

    for name, law, parts, f in [("product", "formula a * b", PLATES, product), ("ratio", "ratio", BOX, ratio)]:
        made = values(parts, f, 3, 1000)
        ordered = sorted(made)
        mean = math.fsum(made) / 1000
        sd = math.sqrt(math.fsum((v - mean) ** 2 for v in made) / 999)
        # JCGM 101:2008, 7.7: q = 950, r = 25 of the symmetric; the shortest by looking at all
        shortest = min(range(50), key=lambda r: ordered[r + 950] - ordered[r])
        ends = dict(symmetric__lower=(ordered[24], 0), symmetric__upper=(ordered[974], 0), shortest__lower=(ordered[shortest], 0), shortest__upper=(ordered[shortest + 950], 0))
        of = "Philox and doubles in Python; JCGM 101:2008 7.7"
        yield row(f"summary_{name}", "summary", parts, law, "3;1000;1;0;0.95", named(trials=(1000, 0), mean=(mean, "1e-14"), standard_deviation=(sd, "1e-14"), **ends), of)
        low, high = ordered[7] + 1e-9, ordered[-21]
        below, above = sum(v < low for v in made), sum(v > high for v in made)
        assert (below, above) == (8, 20)
        expected = dict(below__count=(below, 0), above__count=(above, 0), below__probability=(0.008, "1e-17"), above__probability=(0.02, "1e-17"))
        for side, count in [("below", below), ("above", above)]:
            expected |= {f"{side}__{end}": (value, "1e-13") for end, value in zip(("lower", "upper"), clopper_pearson(count, 1000, 0.95), strict=True)}
        yield row(f"outside_{name}", "outside", parts, law, f"3;1000;{low!r};{high!r};0.95", named(**expected), "beta quantiles by mpmath at 40 digits")
        # a value on an edge belongs to the bin that ends there
        edges = [ordered[0], ordered[99], ordered[99] + 0.01 * (ordered[-1] - ordered[0]), ordered[500], ordered[-2]]
        counts = [sum(a < v <= b for v in made) for a, b in zip(edges, edges[1:])]
        yield row(f"histogram_{name}", "histogram", parts, law, "3;1000;" + "/".join(map(repr, edges)), numbered(counts), "counted in Python")

    one = "a 2 -0.1 0.1 rectangular 0 0.1"
    for name, points, whole in [("hypercube", 2, 1024), ("sobol", 3, 0)]:
        # one trial in each of 1024 layers: the mean is off by half a layer at most, an end by one
        layer = 0.2 / 1024
        ends = dict(symmetric__lower=(2 - 0.095, 2 * layer), symmetric__upper=(2 + 0.095, 2 * layer))
        yield row(f"summary_{name}", "summary", one, "formula a", f"9;1024;{points};{whole};0.95", named(mean=(2, layer / 2), **ends), "one trial in each layer of equal probability")
        yield row(f"trials_{name}", "trials", BOX, "ratio", f"9;700;4;{points};{whole}", named(**{"0": (ratio(2, 3, 10), "0.2")}), "within the limits")
        yield row(f"trials_{name}_sum", "trials", BOX, "sum 1 -2 1", f"9;254;4;{points};{whole}", named(**{"0": (6, "0.5")}), "within the limits")

    area_sd = math.sqrt(4 * 0.075**2 / 3 + 9 * 0.1**2 / 3 + 0.1**2 * 0.075**2 / 9)
    for name, law, parts, mean, sd in [("product", "formula a * b", PLATES, 6, area_sd), ("sum", "sum 1 -2 1", BOX, 6, math.sqrt((0.1**2 + 4 * 0.075**2 + 0.25**2) / 3))]:
        yield row(f"adaptive_{name}", "adaptive", parts, law, "4;0.95;1;2;1000000", named(settled=(1, 0), mean=(mean, 5e-3), standard_deviation=(sd, 5e-3)), "moments in closed form; two digits")
    yield row("adaptive_ratio", "adaptive", BOX, "ratio", "4;0.9;2;1;200000", named(mean=(ratio(2, 3, 10), 5e-3), settled=(1, 0)), "the value at the means; one digit")
    tail = lambda z: erfc(mpf(z) / sqrt(2)) / 2
    cube = "x 10 -1 1 normal 0 1;y 0 -1 1 normal 0 1e-09"
    yield row("importance_cube", "importance", cube, "formula (x - 4) ^ 3 + y", "2;1728;5;20000;0.99", named(probability=(tail(6), tail(6) * mpf("0.06"))), "tail of six standard deviations; six errors")
    normals = "x 1 -1 1 normal 0 0.3;y 2 -1 1 normal 0 0.4"
    yield row("importance_sum", "importance", normals, "sum 1 -1", "1;-3.5;5;20000;0.95", named(probability=(tail(5), tail(5) * mpf("0.06"))), "tail of five standard deviations; six errors")
    yield row("importance_ratio", "importance", "a 0 -1 1 normal 0 1;b 0 -1 1 normal 0 1e-09;c 1 -1 1 normal 0 1e-09", "ratio", "2;5;5;20000;0.95", named(probability=(tail(5), tail(5) * mpf("0.06"))), "tail of five standard deviations; six errors")

    hand = "by hand from core/docs/stack.md"
    yield row("refused_symbol", "nominal", PLATES, "formula a * z", "", "error:unknown_name model", hand)
    yield row("refused_unused", "nominal", PLATES, "formula a + 1", "", "error:contradiction contributors/1/name", hand)
    yield row("refused_twice", "nominal", "a 1 -1 1 normal 0 1;a 1 -1 1 normal 0 1", "ratio", "", "error:repeated contributors/1/name", hand)
    yield row("refused_engine", "nominal", PLATES, "engine bench_clearance", "", "error:unknown_name contributors/0/name", hand)
    yield row("refused_missing", "nominal", "bore 86 -0.1 0.1 normal 0 0.01", "engine bench_clearance", "", "error:missing_field contributors", hand)
    yield row("refused_pole", "nominal", "a 1 -1 1 normal 0 0.1;b 1 -1 1 normal 0 0.1;c 1 -1 1 normal 0 0.1", "ratio", "", "error:not_finite model", hand)
    yield row("refused_log", "trials", "a 1 -1 1 normal 0 1", "formula ln(a)", "1;0;1000;1;0", "error:not_finite model", hand)
    yield row("refused_no_trials", "trials", PLATES, "formula a * b", "1;0;0;1;0", "error:out_of_range trials", hand)
    yield row("refused_beyond", "trials", PLATES, "formula a * b", "1;90;11;2;100", "error:out_of_range trials", hand)
    yield row("refused_hypercube", "trials", PLATES, "formula a * b", "1;0;10;1;100", "error:contradiction hypercube_trials", hand)
    yield row("refused_no_hypercube", "trials", PLATES, "sum 1 1", "1;0;10;2;0", "error:missing_field hypercube_trials", hand)
    yield row("refused_last", "trials", PLATES, "sum 1 1", f"1;{2**64 - 5};10;1;0", "error:out_of_range first", hand)
    yield row("refused_probability", "summary", PLATES, "formula a * b", "3;10;1;0;0.999", "error:out_of_range probability", hand)
    yield row("refused_limits", "outside", PLATES, "formula a * b", "3;10;2;1;0.95", "error:out_of_order upper", hand)
    yield row("refused_nan", "outside", PLATES, "formula a * b", "3;10;nan;1;0.95", "error:not_finite lower", hand)
    yield row("refused_edges", "histogram", PLATES, "formula a * b", "3;10;1/1", "error:out_of_order edges/1", hand)
    yield row("refused_goal", "adaptive", PLATES, "formula a * b", "4;0.95;1;3;1000000", "error:out_of_range digits", hand)
    yield row("refused_not_rare", "importance", PLATES, "formula a * b", "2;5;1;1000;0.95", "error:contradiction limit", hand)


def main():
    print("square of a normal", moments(lambda x: x * x, normal(0.0, 1.0)))
    print("product of two normals", moments(lambda x, y: x * y, normal(2.0, 0.5), normal(3.0, 0.4)))
    f = lambda a, b, c: a * a + 0.3 * a * b - b / 2 + a * c + 2 * c
    print("three skewed", moments(f, triangle(9.8, 9.9, 10.3), beta(2, 5, 4.9, 5.2), truncated(1.02, 0.03, 0.97, 1.05)))
    angle = lambda a, c, e: acos((a + c) / (e - c))
    at = (mpf("27.645"), mpf("11.43"), mpf("50.8"))
    print("clutch", angle(*at), angle(*at) * 180 / pi)
    for order in [(1, 0, 0), (0, 1, 0), (0, 0, 1), (2, 0, 0), (1, 1, 0), (0, 2, 0), (1, 0, 1), (0, 1, 1), (0, 0, 2)]:
        print("  derivative", order, diff(angle, at, order))
    engine()
    tail = lambda z: erfc(mpf(z) / sqrt(2)) / 2
    print("tail of 6", tail(6))


if __name__ == "__main__":
    place = Path(__file__).parent.parent / "vectors" / "function.csv"
    text = HEADING + "\n".join(rows()) + "\n"
    if sys.argv[1:] == ["--check"]:
        sys.exit(check(place, text, 1e-11))
    main()
    place.write_text(text, encoding="utf-8")
