"""Stacks as documents, evaluated independently with mpmath: writes tests/vectors/stacks/expected.csv, or with ``--check`` compares.

Worst cases are taken at the corners of the limits, all of them. Moments to second order are those of a quadratic form in normal variables, by its
cumulants (Mathai and Provost, Quadratic Forms in Random Variables, 1992): with the gradient b and the Hessian H,
k2 = b'Sb + tr(HS)^2 / 2, k3 = 3 b'SHSb + tr(HS)^3, k4 = 12 b'SHSHSb + 3 tr(HS)^4, S the covariance.
"""

import itertools
import json
import sys
from pathlib import Path

from mpmath import acos, diag, diff, erfc, matrix, mp, mpf, pi, quad, sqrt

mp.dps = 40
ROOT = Path(__file__).parent.parent.parent
FOLDER = ROOT / "tests" / "vectors" / "stacks"
FILES = {"clutch": FOLDER / "clutch.json", "deck": ROOT / "core" / "examples" / "deck_stack.json", "ratio": FOLDER / "ratio.json"}
HERE = "reference/stack_document.py"


def number(x):
    return mpf(repr(x))


def angle(a, c, e):
    return acos((a + c) / (e - c))


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
    largest = max(range(n), key=lambda k: abs(b[k] * sd[k]))
    yield "/shares/0/sensitivity", b[largest], 1e-11
    yield "/shares/0/share", (b[largest] * sd[largest]) ** 2 / scalar(b.T * s * b), 1e-12


def normal_above(z):
    return erfc(z / sqrt(2)) / 2


def of_deck(document):
    parts = {p["name"]: p for p in document["contributors"]}
    block, rod, height, stroke = (parts[k] for k in ("block height", "rod", "compression height", "stroke"))
    cp, cpk = number(1.33), mpf(1)
    sigma = number(0.1) / (6 * cp)
    moved = 3 * sigma * (cp - cpk)
    cause = 2 * number(document["causes"][0]["distribution"]["normal"]["standard_deviation"])
    sds = [sigma, *[number(p["distribution"]["normal"]["standard_deviation"]) for p in (rod, height)], cause]
    normal = sqrt(sum(x * x for x in sds))
    half = number(stroke["upper"]) / 2
    nominal = number(block["nominal"]) - number(rod["nominal"]) - number(height["nominal"]) - number(stroke["nominal"]) / 2
    mean = nominal - moved
    sd = sqrt(normal**2 + half**2 / 3)
    limits = [number(document["limits"][k]) for k in ("lower", "upper")]
    above = lambda x: quad(lambda r: normal_above((x - mean - r) / normal), [-half, 0, half]) / (2 * half)
    below = lambda x: quad(lambda r: normal_above((mean + r - x) / normal), [-half, 0, half]) / (2 * half)
    tolerances = [number(p["upper"]) for p in (block, rod, height)] + [half]
    rss = sqrt(sum(t * t for t in tolerances))
    yield "/nominal", nominal, 1e-12
    yield "/worst_case/lower", nominal - sum(tolerances), 1e-12
    yield "/worst_case/upper", nominal + sum(tolerances), 1e-12
    yield "/published/root_sum_square/lower", nominal - rss, 1e-12
    yield "/published/bender/upper", nominal + rss * 3 / 2, 1e-12
    yield "/mean", mean, 1e-12
    yield "/standard_deviation", sd, 1e-14
    yield "/exact/below", below(limits[0]), 1e-12
    yield "/exact/above", above(limits[1]), 1e-12
    yield "/exact/cp", (limits[1] - limits[0]) / (6 * sd), 1e-11
    yield "/exact/cpk", min(mean - limits[0], limits[1] - mean) / (3 * sd), 1e-11


def rows():
    for name, of in [("clutch", lambda d: of_function(d, angle)), ("deck", of_deck), ("ratio", lambda d: of_function(d, ratio))]:
        document = json.loads(FILES[name].read_text())
        for pointer, value, tolerance in of(document):
            yield f"{name},{pointer},{float(value)!r},{tolerance:g},{HERE}"


def main():
    text = "# Numbers of the reports, by JSON Pointer; tests/vectors/README.md explains the columns\nstack,pointer,expected,tolerance,source\n" + "\n".join(rows()) + "\n"
    file = FOLDER / "expected.csv"
    if "--check" in sys.argv:
        sys.exit(0 if file.read_text() == text else "expected.csv is not what the script writes")
    file.write_text(text)


if __name__ == "__main__":
    main()
