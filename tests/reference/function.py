"""Functions of contributors, evaluated on grids of quadrature: nothing is expanded, no derivative is taken. Prints what tests/stack_function.rs holds.

The functions are polynomials of second degree, so that the moments of the library's second order are those of the function itself.
"""

import numpy as np
from mpmath import acos, diff, erfc, mp, mpf, pi, sqrt
from numpy.polynomial.legendre import leggauss

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


def engine():
    """Ready-made stacks at their nominals, with every first derivative."""
    def ratio(bore, stroke, block, rod, height, head, gasket_bore, gasket, crown, crevice):
        deck = block - stroke / 2 - rod - height
        area = lambda d: pi / 4 * d**2 / 1000
        clear = head + area(gasket_bore) * gasket + area(bore) * deck + crown + crevice
        return 1 + area(bore) * stroke / clear

    def hot_gap(gap, bore, tb, ab, tr, ar):
        return pi * bore * (1 + ab * (tb - 20)) - (pi * bore - gap) * (1 + ar * (tr - 20))

    cases = {
        "deck_clearance": (lambda b, s, r, h: b - s / 2 - r - h, "216.4 86 143 30.2"),
        "squish": (lambda b, s, r, h, g: b - s / 2 - r - h + g, "216.4 86 143 30.2 1.2"),
        "compression_ratio": (ratio, "86 86 216.4 143 30.2 48.5 87.5 1.2 2.5 0.4"),
        "bench_clearance": (lambda b, p: b - p, "86.02 85.96"),
        "ring_gap": (lambda gap, gauge, bore: gap + pi * (bore - gauge), "0.35 86 86.03"),
        "hot_ring_gap": (hot_gap, "0.35 86 110 1.2e-5 200 1.15e-5"),
        "liner_protrusion": (lambda f, s, c: f + s - c, "8.9 0.15 8.95"),
    }
    for name, (f, at) in cases.items():
        at = [mpf(x) for x in at.split()]
        orders = [[int(j == k) for j in range(len(at))] for k in range(len(at))]
        print(name, float(f(*at)), [float(diff(f, at, tuple(o))) for o in orders])


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
    main()
