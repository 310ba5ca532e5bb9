"""Shapes evaluated in ways of their own: mpmath at 40 digits, linear programmes of SciPy (HiGHS), enumeration, closed forms.

Run it to write ../vectors/shape.csv and the traces it names; with --check it only compares.
"""

import itertools
import random
import sys
from pathlib import Path

import numpy as np
from mpmath import cos, ellipk, findroot, matrix, mp, mpf, pi, radians, sin, sqrt
from scipy.linalg import eig
from scipy.optimize import linprog

import compare

mp.dps = 40
VECTORS = Path(__file__).parents[1] / "vectors"

# -- extreme fits: linear programmes in nanometres, so that the solver's tolerance of 1e-9 is 1e-15 mm


def distances(points, at):
    """Distances of points from an axis, and how they change: of a circle (x, y), of a cylinder (x, y, slope_x, slope_y) at z = 0."""
    points = np.asarray(points, dtype=float)
    if len(at) == 2:
        away = points - np.asarray(at)
        r = np.hypot(*away.T)
        return r, -away / r[:, None]
    axis = np.array([at[2], at[3], 1.0])
    offset = points - np.array([at[0], at[1], 0.0])
    foot = offset @ axis / (axis @ axis)
    away = offset - foot[:, None] * axis
    r = np.linalg.norm(away, axis=1)
    unit = away[:, :2] / r[:, None]
    return r, -np.hstack([unit, unit * foot[:, None]])


def heights(points, at):
    """Distances of points from a plane with slopes (p, q) through the mean of the points, and how they change."""
    points = np.asarray(points, dtype=float)
    x, y, z = (points - points.mean(axis=0)).T
    length = np.sqrt(1 + at[0] ** 2 + at[1] ** 2)
    e = (z - at[0] * x - at[1] * y) / length
    return e, np.column_stack([-x / length - e * at[0] / length**2, -y / length - e * at[1] / length**2])


def programme(reference, e, gradient, reach):
    """Best shift for linear deviations: shift and value."""
    n, k = gradient.shape
    one = np.ones((n, 1))
    scale = np.abs(gradient).max(axis=0)
    outer, inner = np.hstack([gradient / scale, -one]), np.hstack([-gradient / scale, one])
    bounds = [(-reach, reach)] * k + [(None, None)]
    if reference == "minimum_zone":
        a, b = np.vstack([np.hstack([outer, -one]), np.hstack([inner, -one])]), np.concatenate([-e, e])
        cost, bounds = [0.0] * (k + 1) + [1.0], bounds + [(0, None)]
    elif reference == "minimum_circumscribed":
        a, b, cost = outer, -e, [0.0] * k + [1.0]
    else:
        a, b, cost = inner, e, [0.0] * k + [-1.0]
    options = {"primal_feasibility_tolerance": 1e-9, "dual_feasibility_tolerance": 1e-9}
    done = linprog(cost, a, b, bounds=bounds, method="highs-ds", options=options)
    assert done.status == 0, done.message
    return done.x[:k] / scale


def measure(reference, e):
    low, high = e.min(), e.max()
    return {"minimum_zone": (high - low) / 2, "minimum_circumscribed": high, "maximum_inscribed": -low}[reference]


def extreme(reference, look, start):
    """Location that is best among those near `start`, by linear programmes about the last location."""
    nm = 1e6
    at, reach = np.asarray(start, dtype=float), 1e5
    while reach > 1.0:
        e, gradient = look(at)
        base = e.mean()
        shift = programme(reference, (e - base) * nm, gradient, reach) / nm
        better = measure(reference, look(at + shift)[0]) < measure(reference, e) - 1e-13
        at = at + shift if better else at
        reach = reach if better else reach / 4
    return at


def extreme_circle(reference, points, start):
    at = extreme(reference, lambda a: distances(points, a), start)
    r, _ = distances(points, at)
    radius = {"minimum_zone": (r.max() + r.min()) / 2, "minimum_circumscribed": r.max(), "maximum_inscribed": r.min()}[reference]
    return at, radius, r.max() - r.min()


def through_three(a, b, c):
    """Centres of the circles through triples of points."""
    d = 2 * (a[:, 0] * (b[:, 1] - c[:, 1]) + b[:, 0] * (c[:, 1] - a[:, 1]) + c[:, 0] * (a[:, 1] - b[:, 1]))
    s = [(p * p).sum(axis=1) for p in (a, b, c)]
    x = (s[0] * (b[:, 1] - c[:, 1]) + s[1] * (c[:, 1] - a[:, 1]) + s[2] * (a[:, 1] - b[:, 1])) / d
    y = (s[0] * (c[:, 0] - b[:, 0]) + s[1] * (a[:, 0] - c[:, 0]) + s[2] * (b[:, 0] - a[:, 0])) / d
    return np.column_stack([x, y])


def enumerated(points):
    """Smallest circle that holds all points and the largest within that holds none, by trying every pair and triple."""
    points = np.asarray(points, dtype=float)
    index = np.array(list(itertools.combinations(range(len(points)), 3)))
    centres = through_three(*(points[index[:, k]] for k in range(3)))
    pairs = np.array(list(itertools.combinations(range(len(points)), 2)))
    holding = np.vstack([centres, (points[pairs[:, 0]] + points[pairs[:, 1]]) / 2])
    def farthest(c):
        return np.hypot(points[:, 0] - c[:, :1], points[:, 1] - c[:, 1:])
    outer = farthest(holding).max(axis=1).min()
    middle = centres[np.hypot(*(centres - points.mean(axis=0)).T) < 0.1 * outer]
    inner = farthest(middle).min(axis=1).max()
    return outer, inner


# -- least squares at 40 digits


def newton(gradient, start):
    """Root of a gradient, from a start that is near."""
    x = matrix([mpf(s) for s in start])
    for _ in range(80):
        g = matrix(gradient(*x))
        k = len(x)
        h = matrix(k, k)
        for j in range(k):
            def moved(t, j=j):
                y = x.copy()
                y[j] += t
                return matrix(gradient(*y))
            step = mpf(10) ** -18
            column = (moved(step) - moved(-step)) / (2 * step)
            for i in range(k):
                h[i, j] = column[i]
        delta = mp.lu_solve(h, g)
        x = x - delta
        if mp.norm(delta) < mpf(10) ** -20:
            return list(x)
    raise ArithmeticError("no root")


def least_squares_circle(points, start):
    pts = [(mpf(x), mpf(y)) for x, y in points]
    def gradient(a, b, r):
        away = [(a - x, b - y, sqrt((a - x) ** 2 + (b - y) ** 2)) for x, y in pts]
        return [sum((d - r) * u / d for u, _, d in away), sum((d - r) * v / d for _, v, d in away), sum(d - r for *_, d in away)]
    a, b, r = newton(gradient, start)
    return a, b, r, [sqrt((x - a) ** 2 + (y - b) ** 2) - r for x, y in pts]


def least_squares_cylinder(points, start):
    """At z = 0: x, y, slope_x, slope_y, radius; distances by the cross product."""
    pts = [tuple(map(mpf, p)) for p in points]
    def distance(p, a, b, sx, sy):
        u, v, w = p[0] - a, p[1] - b, p[2]
        c = (v - w * sy, w * sx - u, u * sy - v * sx)
        return sqrt(sum(k * k for k in c) / (1 + sx * sx + sy * sy))
    def gradient(a, b, sx, sy, r):
        step = mpf(10) ** -15
        out = [mpf(0)] * 5
        for p in pts:
            d = distance(p, a, b, sx, sy)
            args = [a, b, sx, sy]
            for k in range(4):
                up, down = list(args), list(args)
                up[k] += step
                down[k] -= step
                out[k] += (d - r) * (distance(p, *up) - distance(p, *down)) / (2 * step)
            out[4] -= d - r
        return out
    a, b, sx, sy, r = newton(gradient, start)
    return a, b, sx, sy, r, [distance(p, a, b, sx, sy) - r for p in pts]


def least_squares_plane(points):
    """Slopes of the plane with the least squares of the perpendicular distances: the smallest eigenvector of the scatter."""
    pts = [tuple(map(mpf, p)) for p in points]
    middle = [sum(p[j] for p in pts) / len(pts) for j in range(3)]
    scatter = matrix(3, 3)
    for i in range(3):
        for j in range(3):
            scatter[i, j] = sum((p[i] - middle[i]) * (p[j] - middle[j]) for p in pts)
    normal = mp.eigsy(scatter)[1][:, 0]
    normal = normal / normal[2] / mp.norm(normal / normal[2])
    left = [sum((p[j] - middle[j]) * normal[j] for j in range(3)) for p in pts]
    return -normal[0] / normal[2], -normal[1] / normal[2], left


def algebraic(points, method):
    """Fits of the equation by eigenvalues: centre and radius. Coordinates about their mean, but for the unit norm."""
    points = np.asarray(points, dtype=float)
    if method == "unit_norm":
        x, y = points.T
        a, b, c, d = np.linalg.svd(np.column_stack([x * x + y * y, x, y, np.ones_like(x)]))[2][-1]
        mean = np.zeros(2)
    else:
        mean = points.mean(axis=0)
        x, y = (points - mean).T
        z = x * x + y * y
        columns = np.column_stack([z, x, y, np.ones_like(x)])
        m = columns.T @ columns / len(x)
        pratt = np.array([[0, 0, 0, -2.0], [0, 1, 0, 0], [0, 0, 1, 0], [-2.0, 0, 0, 0]])
        zm = z.mean()
        taubin = np.array([[4 * zm, 0, 0, 0], [0, 1, 0, 0], [0, 0, 1, 0], [0, 0, 0, 0.0]])
        # about the mean, the means of x and y are 0
        hyper = np.array([[8 * zm, 0, 0, 2.0], [0, 1, 0, 0], [0, 0, 1, 0], [2.0, 0, 0, 0]])
        values, vectors = eig(m, {"pratt": pratt, "taubin": taubin, "hyperaccurate": hyper}[method])
        real = [(v.real, k) for k, v in enumerate(values) if np.isfinite(v) and abs(v.imag) < 1e-12 and v.real > 0]
        a, b, c, d = vectors[:, min(real)[1]].real
    return -b / a / 2 + mean[0], -c / a / 2 + mean[1], float(np.sqrt((b * b + c * c) / 4 - a * d) / abs(a))


# -- what gauges read


def v_block_by_rolling(order, included, probe):
    """Amplitude that a probe shows when a body with one lobe order is turned in a V, by geometry: the support of the body rests on both faces."""
    mp.dps = 30
    try:
        amplitude, radius = mpf(10) ** -9, mpf(1)
        half, probe = radians(mpf(included)) / 2, radians(mpf(probe))
        def support(direction, turn):
            # of r = 1 + t cos(n a): h(a) = r(a) to the first order, and the rest is t^2
            return radius + amplitude * cos(order * (direction - turn))
        def reading(turn):
            # unit normals out of the body into the faces, from the direction opposite the V toward x
            beta = pi / 2 + half
            h1, h2 = support(beta, turn), support(-beta, turn)
            rest = radius
            m = matrix([[sin(beta), cos(beta)], [-sin(beta), cos(beta)]])
            c = mp.lu_solve(m, matrix([rest - h1, rest - h2]))
            return support(probe, turn) + c[0] * sin(probe) + c[1] * cos(probe)
        n = 8
        values = [reading(2 * pi * k / (n * order)) for k in range(n)]
        a = sum(v * cos(2 * pi * k / n) for k, v in enumerate(values)) * 2 / n
        b = sum(v * sin(2 * pi * k / n) for k, v in enumerate(values)) * 2 / n
        return sqrt(a * a + b * b) / amplitude
    finally:
        mp.dps = 40


# -- the vectors

ROWS = []
TRACES = {}
HEAD = "id,function,choice,given,expected,source"


def text(value):
    return mp.nstr(value, 17) if isinstance(value, mpf) else repr(float(value))


def inline(*columns):
    return "/".join(";".join(text(v) for v in column) for column in columns)


def trace(name, heading, points):
    """A trace in a file of its own; its numbers are rounded to what the file holds, and expected values start from those."""
    rounded = [[float(f"{float(v):.9f}") for v in point] for point in points]
    lines = [heading, *(",".join(f"{v:.9f}" for v in point) for point in rounded)]
    TRACES[name] = "\n".join(lines) + "\n"
    return rounded


def row(name, function, choice, given, expected, source):
    if isinstance(expected, dict):
        given_ones = ((key, *value) if isinstance(value, tuple) else (key, value, None) for key, value in expected.items())
        expected = ";".join(f"{k}={v}" if t is None else f"{k}={text(v)}~{t}" for k, v, t in given_ones)
    ROWS.append(",".join([name, function, str(choice), given, expected, source]))


def form(residuals, tolerance=1e-11):
    residuals = [mpf(r) for r in residuals]
    total = max(residuals) - min(residuals)
    rms = sqrt(sum(r * r for r in residuals) / len(residuals))
    names = ("total", "outside", "inside", "rms")
    return {f"form.{n}_mm": (v, tolerance) for n, v in zip(names, (total, max(residuals), -min(residuals), rms), strict=True)}


GGS = [(1, 7), (2, 6), (5, 8), (7, 7), (9, 5), (3, 7)]


def circles():
    ggs = inline(*zip(*GGS))
    a, b, r, left = least_squares_circle(GGS, (4.74, 2.98, 4.71))
    row("six_points", "circle", "least_squares", ggs, {"x_mm": (a, 1e-12), "y_mm": (b, 1e-12), "radius_mm": (r, 1e-12), **form(left, 1e-12)},
        "Gander; Golub and Strebel 1994: 4.7398; 2.9835; 4.7142. Digits: mpmath")
    published = {
        "unit_norm": (5.37941332, 7.25319848, 3.03704146), "pratt": (4.615482, 2.807354, 4.911302),
        "taubin": (4.613933, 2.795209, 4.879213), "hyperaccurate": (4.615482, 2.807354, 4.827575),
    }
    for method, seen in published.items():
        x, y, radius = algebraic(GGS, method)
        assert max(abs(u - v) for u, v in zip((x, y, radius), seen, strict=True)) < 6e-7, method
        row(f"six_points_{method}", "circle_algebraic", method, ggs, {"x_mm": (x, 1e-11), "y_mm": (y, 1e-11), "radius_mm": (radius, 1e-11)},
            "eigenvalues by SciPy; the published digits agree")
    # a true circle, off centre: every fit finds it
    on_circle = trace("off_centre", "x_mm,y_mm", [(mpf("0.012") + 43 * cos(2 * pi * k / 36), mpf("-0.007") + 43 * sin(2 * pi * k / 36)) for k in range(36)])
    assert len(on_circle) == 36
    for reference in ("least_squares", "minimum_zone", "minimum_circumscribed", "maximum_inscribed"):
        row(f"off_centre_{reference}", "circle", reference, "@off_centre",
            {"x_mm": (0.012, 3e-9), "y_mm": (-0.007, 3e-9), "radius_mm": (43.0, 2e-9), "form.total_mm": (0, 3e-9)},
            "closed form: a circle; the file has nine places")
    for method in published:
        row(f"off_centre_{method}", "circle_algebraic", method, "@off_centre", {"x_mm": (0.012, 3e-9), "y_mm": (-0.007, 3e-9), "radius_mm": (43.0, 2e-9)}, "closed form: a circle")
    four = [43.01, 42.99, 43.01, 42.99]
    cross = inline([four[0], 0, -four[2], 0], [0, four[1], 0, -four[3]])
    row("cross_minimum_zone", "circle", "minimum_zone", cross, {"x_mm": (0, 1e-9), "y_mm": (0, 1e-9), "radius_mm": (43, 1e-11), "form.total_mm": (mpf("0.02"), 1e-11), "form.outside_mm": (mpf("0.01"), 1e-11)},
        "provable: large and small in turn at four quarters; zone 2 delta about the centre")
    row("cross_least_squares", "circle", "least_squares", cross, {"x_mm": (0, 1e-12), "y_mm": (0, 1e-12), "radius_mm": (43, 1e-12), **form([0.01, -0.01, 0.01, -0.01])}, "by symmetry")
    row("cross_circumscribed", "circle", "minimum_circumscribed", cross, {"radius_mm": (43.01, 1e-11), "form.outside_mm": (0, 1e-12), "form.total_mm": (0.02, 1e-9)}, "two points across hold it: their half distance")
    ellipse()
    irregular()


def ellipse():
    """A cam-ground section: ellipse with semi-axes 43.0 and 42.9 at 72 angles about its centre."""
    a, b = mpf(43), mpf("42.9")
    n = 72
    radius = [a * b / sqrt((b * cos(t)) ** 2 + (a * sin(t)) ** 2) for t in (2 * pi * k / n for k in range(n))]
    pts = trace("oval", "x_mm,y_mm", [(r * cos(2 * pi * k / n), r * sin(2 * pi * k / n)) for k, r in enumerate(radius)])
    a0, b0, r0, left = least_squares_circle(pts, (0, 0, 42.95))
    row("oval_least_squares", "circle", "least_squares", "@oval", {"x_mm": (a0, 1e-10), "y_mm": (b0, 1e-10), "radius_mm": (r0, 1e-11), **form(left)}, "mpmath; CHECKS: about 0.1 and 0.0353553")
    row("oval_minimum_zone", "circle", "minimum_zone", "@oval", {"radius_mm": (42.95, 2e-9), "form.total_mm": (0.1, 2e-9)}, "closed form: concentric; a - b")
    outer, inner = enumerated(pts)
    assert abs(outer - 43) < 1e-9 and abs(inner - 42.9) < 2e-5
    row("oval_circumscribed", "circle", "minimum_circumscribed", "@oval", {"radius_mm": (43.0, 2e-9)}, "closed form: a; every pair and triple tried")
    row("oval_inscribed", "circle", "maximum_inscribed", "@oval", {"radius_mm": (inner, 1e-11)}, "every triple tried; b and 8e-7 for the steps of 5 degrees")
    angles = [5 * k for k in range(n)]
    mean = 2 * b / pi * ellipk(1 - b * b / (a * a))
    radii = trace("oval_radii", "angles_deg,radii_mm", list(zip(angles, radius, strict=True)))
    second, fourth = (sum(r * cos(m * 2 * pi * k / n) for k, r in enumerate(radius)) * 2 / n for m in (2, 4))
    assert abs(mean - mpf("42.949956344578")) < 1e-12 and abs(second - mpf("0.0499999576")) < 1e-9 and abs(fourth - mpf("4.365538e-5")) < 1e-10
    row("oval_radii", "section_from_radii", 8, "@oval_radii",
        {"mean_radius_mm": (mean, 1e-9), "x_mm": (0, 1e-9), "y_mm": (0, 1e-9), "harmonics.2.cos_mm": (second, 1e-9), "harmonics.2.sin_mm": (0, 1e-9),
         "harmonics.4.cos_mm": (fourth, 1e-9), "harmonics.3.cos_mm": (0, 1e-9), "least_share": (1, 1e-12)}, "elliptic integral; mpmath")
    assert len(radii) == n


def irregular():
    """Invented sections and a bore, with lobes and noise; the random numbers are seeded."""
    chance = random.Random(20260314)
    points = []
    for k in range(36):
        t = 2 * pi * k / 36
        r = mpf("43.002") + mpf("0.006") * cos(2 * t - 1) + mpf("0.003") * cos(3 * t) + mpf(chance.gauss(0, 0.001))
        points.append((mpf("0.021") + r * cos(t), mpf("-0.034") + r * sin(t)))
    pts = trace("lobed", "x_mm,y_mm", points)
    a, b, r, left = least_squares_circle(pts, (0.021, -0.034, 43))
    row("lobed_least_squares", "circle", "least_squares", "@lobed", {"x_mm": (a, 1e-11), "y_mm": (b, 1e-11), "radius_mm": (r, 1e-11), **form(left)}, "mpmath")
    at, radius, zone = extreme_circle("minimum_zone", pts, (float(a), float(b)))
    row("lobed_minimum_zone", "circle", "minimum_zone", "@lobed", {"x_mm": (at[0], 1e-9), "y_mm": (at[1], 1e-9), "radius_mm": (radius, 1e-9), "form.total_mm": (zone, 1e-10)}, "SciPy linprog (HiGHS) about its own solution")
    outer, inner = enumerated(pts)
    row("lobed_circumscribed", "circle", "minimum_circumscribed", "@lobed", {"radius_mm": (outer, 1e-10)}, "every pair and triple tried")
    row("lobed_inscribed", "circle", "maximum_inscribed", "@lobed", {"radius_mm": (inner, 1e-10)}, "every triple tried")
    # a bore at three depths
    bore = []
    for z in (10, 70, 130):
        for k in range(12):
            t = 2 * pi * k / 12
            r = 43 + mpf("0.00005") * (70 - z) + mpf("0.004") * cos(2 * t) + mpf(chance.gauss(0, 0.001))
            bore.append((mpf("0.01") + mpf("0.0002") * z + r * cos(t), mpf("-0.02") - mpf("0.0001") * z + r * sin(t), mpf(z)))
    pts = trace("bore", "x_mm,y_mm,z_mm", bore)
    a, b, sx, sy, r, left = least_squares_cylinder(pts, (0.01, -0.02, 0.0002, -0.0001, 43))
    row("bore_least_squares", "cylinder", "least_squares", "@bore",
        {"x_mm": (a + 70 * sx, 1e-10), "y_mm": (b + 70 * sy, 1e-10), "z_mm": (70, 1e-12), "slope_x": (sx, 1e-12), "slope_y": (sy, 1e-12), "radius_mm": (r, 1e-10), **form(left, 1e-10)}, "mpmath; distances by the cross product")
    start = [float(v) for v in (a, b, sx, sy)]
    for reference in ("minimum_zone", "minimum_circumscribed", "maximum_inscribed"):
        at = extreme(reference, lambda w: distances(pts, w), start)
        e, _ = distances(pts, at)
        radius = {"minimum_zone": (e.max() + e.min()) / 2, "minimum_circumscribed": e.max(), "maximum_inscribed": e.min()}[reference]
        expected = {"radius_mm": (radius, 1e-9)} | ({"form.total_mm": (e.max() - e.min(), 1e-9)} if reference == "minimum_zone" else {})
        row(f"bore_{reference}", "cylinder", reference, "@bore", expected, "SciPy linprog (HiGHS) about its own solution")


def cylinders():
    # a true cylinder whose axis leans: circles of the leaning frame
    sx, sy = mpf("0.001"), mpf("-0.002")
    length = sqrt(1 + sx * sx + sy * sy)
    t = matrix([sx, sy, 1]) / length
    u = matrix([1, 0, -sx]) / sqrt(1 + sx * sx)
    v = matrix([t[1] * u[2] - t[2] * u[1], t[2] * u[0] - t[0] * u[2], t[0] * u[1] - t[1] * u[0]])

    def leaning(name, radius, heights):
        points = []
        for z in heights:
            for k in range(8):
                r = radius(k)
                points.append([w + z * t[j] + r * (cos(pi * k / 4) * u[j] + sin(pi * k / 4) * v[j]) for j, w in enumerate((mpf("0.3"), mpf("-0.2"), mpf(0)))])
        trace(name, "x_mm,y_mm,z_mm", points)
        zs = [p[2] for p in points]
        return (max(zs) + min(zs)) / 2

    middle = leaning("leaning", lambda k: mpf(43), (0, 60, 120))
    for reference in ("least_squares", "minimum_zone", "minimum_circumscribed", "maximum_inscribed"):
        row(f"leaning_{reference}", "cylinder", reference, "@leaning",
            {"x_mm": (mpf("0.3") + sx * middle, 1e-8), "y_mm": (mpf("-0.2") + sy * middle, 1e-8), "z_mm": (middle, 1e-9), "slope_x": (sx, 1e-10), "slope_y": (sy, 1e-10),
             "radius_mm": (43, 3e-9), "form.total_mm": (0, 4e-9)}, "closed form: a cylinder; the file has nine places")
    leaning("four_lobed_bore", lambda k: 43 + mpf("0.01") * (-1) ** k, (0, 120))
    row("four_lobed_zone", "cylinder", "minimum_zone", "@four_lobed_bore", {"radius_mm": (43, 3e-9), "form.total_mm": (mpf("0.02"), 4e-9), "slope_x": (sx, 1e-9)},
        "provable: large and small in turn on each of two sections; zone 2 delta about the axis")


def planes():
    p, q, delta = mpf("0.0004"), mpf("-0.0003"), mpf("0.02")
    corners = [(0, 0, 1), (400, 0, -1), (400, 200, 1), (0, 200, -1)]
    length = sqrt(1 + p * p + q * q)
    points = [(x, y, 10 + p * x + q * y + s * delta * length) for x, y, s in corners]
    given = inline(*zip(*points))
    sx, sy, left = least_squares_plane(points)
    tilt = {"slope_x": (sx, 1e-15), "slope_y": (sy, 1e-15), "slope": (sqrt(sx * sx + sy * sy), 1e-15), "direction_deg": (mp.degrees(mp.atan2(sy, sx)), 1e-10),
            "x_mm": (200, 1e-12), "y_mm": (100, 1e-12), "z_mm": (10 + 200 * p + 100 * q, 1e-12)}
    row("deck_least_squares", "plane", "least_squares", given, {**tilt, **form(left)}, "a twisted deck: smallest eigenvector by mpmath; slope nearly 3-4-5")
    row("deck_minimum_zone", "plane", "minimum_zone", given, {"form.total_mm": (2 * delta, 1e-11), "slope": (mpf("0.0005"), 1e-11)}, "provable: high and low at the corners in turn")
    level = inline([0, 100, 0, 100], [0, 0, 50, 50], [5, 5, 5, 5])
    row("deck_level", "plane", "least_squares", level, {"slope": (0, 0), "direction_deg": "none", "z_mm": (5, 0), "form.total_mm": (0, 0)}, "a plane without tilt has no direction")
    chance = random.Random(7)
    pts = trace("deck", "x_mm,y_mm,z_mm", [(40 * i, 30 * j, 200 + 0.0002 * i * 40 - 0.0001 * j * 30 + chance.gauss(0, 0.01)) for i in range(8) for j in range(5)])
    at = extreme("minimum_zone", lambda a: heights(pts, a), (0, 0))
    e, _ = heights(pts, at)
    row("deck_measured_zone", "plane", "minimum_zone", "@deck", {"form.total_mm": (e.max() - e.min(), 1e-10), "slope_x": (at[0], 1e-12), "slope_y": (at[1], 1e-12)}, "SciPy linprog (HiGHS) about its own solution")
    # a bore that leans by 3-4-5 of 0.001 along the main line, and passes it by 0.25
    lean = mp.asin(mpf("0.001"))
    bore = [(120 + mpf("0.001") * z, mpf("0.25"), z * cos(lean)) for z in (50, 100, 150)]
    main = [(x, 0, 0) for x in (0, 100, 400)]
    row("leaning_bore", "bore_to_main_line", "", "/".join(";".join(text(mpf(v)) for p in points for v in p) for points in (bore, main)),
        {"offset_mm": (0.25, 1e-12), "station_mm": (120, 1e-10), "out_of_square_mrad": (1000 * lean, 1e-11), "length_mm": (100, 1e-11), "out_of_square_mm": (0.1, 1e-12), "bore_straightness_mm": (0, 1e-12), "main_straightness_mm": (0, 0)},
        "by hand: sine of the lean 0.001")
    bent = [(-1, 0, 0), (0, mpf("0.01"), 0), (1, 0, 0)]
    row("bent_main_line", "bore_to_main_line", "", "/".join(";".join(text(mpf(v)) for p in points for v in p) for points in ([(0, 0, 10), (0, 0, 20)], bent)),
        {"offset_mm": (mpf("0.01") / 3, 1e-14), "station_mm": (1, 1e-12), "out_of_square_mrad": (0, 1e-12), "main_straightness_mm": (mpf("0.04") / 3, 1e-14)}, "by hand: the line lies at a third of the bow")


def sections():
    angles = list(range(0, 360, 10))
    # a circle seen from off its centre, by the cosine rule
    e, f, r0 = mpf("0.012"), mpf("-0.007"), mpf(43)
    radii = []
    for d in angles:
        t = radians(mpf(d))
        along, across = e * cos(t) + f * sin(t), e * sin(t) - f * cos(t)
        radii.append(along + sqrt(r0 * r0 - across * across))
    small = (e * e + f * f) / (4 * r0)
    row("limacon", "section_from_radii", 5, inline(angles, radii),
        {"mean_radius_mm": (mpf("42.999998877907"), 1e-12), "x_mm": (e, 1e-12), "y_mm": (f, 1e-12), "harmonics.2.cos_mm": ((e * e - f * f) / (4 * r0), 1e-12), "harmonics.2.sin_mm": (2 * e * f / (4 * r0), 1e-12), "harmonics.3.cos_mm": (0, 1e-12)},
        "closed form: order 1 is the shift; mean R - e^2 / 4 R")
    assert abs(43 - small - mpf("42.999998877907")) < 1e-12
    row("lobes_and_a_half_trace", "section_from_radii", 3, inline(*zip(*[(d, 43 + mpf("0.01") * cos(3 * radians(mpf(d)))) for d in range(0, 241, 10)])),
        {"harmonics.3.cos_mm": (0.01, 1e-13), "harmonics.3.sin_mm": (0, 1e-13), "harmonics.2.cos_mm": (0, 1e-13), "mean_radius_mm": (43, 1e-12), "residual_mm": (0, 1e-13)}, "by construction; two thirds of a turn")
    row("two_axes", "section_from_diameters", 2, inline([0, 90], [86.02, 85.98]),
        {"mean_radius_mm": (43, 1e-14), "harmonics.2.cos_mm": (0.01, 1e-14), "harmonics.2.sin_mm": "none", "x_mm": "none", "residual_mm": "none"}, "by hand: mean and one phase of order 2")
    row("four_axes", "section_from_diameters", 4, inline([0, 45, 90, 135], [86.03, 86.00, 85.99, 85.98]),
        {"mean_radius_mm": (43, 1e-14), "harmonics.2.cos_mm": (0.01, 1e-14), "harmonics.2.sin_mm": (0.005, 1e-14), "harmonics.4.cos_mm": (0.005, 1e-14), "harmonics.4.sin_mm": "none"}, "by hand: order 2 and one phase of order 4")
    row("refuse_order_6_of_four_axes", "section_from_diameters", 6, inline([0, 45, 90, 135], [86.03, 86.00, 85.99, 85.98]), "error:out_of_range order", "order 6 is order 2 at these angles")
    row("refuse_order_4_of_two_axes", "section_from_diameters", 4, inline([0, 90], [86.02, 85.98]), "error:out_of_range order", "order 4 is the mean at these angles")
    row("refuse_odd_order_of_diameters", "section_from_diameters", 3, inline([0, 45, 90, 135], [86, 86, 86, 86]), "error:contradiction order", "a diameter never shows it")
    row("refuse_order_18_of_36", "section_from_radii", 19, inline(angles, radii), "error:out_of_range order", "order 19 is order 17 at 36 angles")
    row("refuse_short_arc", "section_from_radii", 4, inline(list(range(0, 40, 1)), [43] * 40), "error:out_of_range order", "40 degrees do not tell four orders apart")
    row("refuse_order_501", "section_from_radii", 501, inline(angles, radii), "error:out_of_range order", "beyond any trace")
    row("refuse_nan_radius", "section_from_radii", 1, inline([0, 90, 180, 270], [43, 43, float("nan"), 43]), "error:not_finite radii_mm/2", "place of the number")
    row("refuse_angle", "section_from_radii", 1, inline([0, 90, 180, 361], [43] * 4), "error:out_of_range angles_deg/3", "more than a turn")
    row("refuse_inches_of_diameter", "section_from_diameters", 0, inline([0], [86000]), "error:out_of_range diameters_mm/0", "micrometres as mm")


def readings():
    lobes3, lobes2 = "3;0.01;0", "2;0.01;0"
    for angle in (0, 17, 60):
        row(f"three_lobes_two_points_{angle}", "two_point", "", f"43;{angle}/{lobes3}", {"diameter_mm": (86, 0 if angle == 0 else 1e-14)}, "closed form: three lobes do not show")
    row("two_lobes_two_points", "two_point", "", f"43;90/{lobes2}", {"diameter_mm": (mpf("85.98"), 2e-14)}, "closed form")
    row("two_lobes_between", "two_point", "", f"43;45/{lobes2}", {"diameter_mm": (86, 1e-14)}, "closed form")
    for angle, value in ((0, "86.02"), (60, "85.98")):
        row(f"three_lobes_three_legs_{angle}", "three_leg", "", f"43;{angle};0;120;240/{lobes3}", {"diameter_mm": (mpf(value), 2e-14)}, "closed form: the whole lobe; 0.02 in the radius")
    row("two_lobes_three_legs", "three_leg", "", f"43;33;0;120;240/{lobes2}", {"diameter_mm": (86, 2e-14)}, "closed form: two lobes do not show")
    # legs at 0, 110, 250: an ellipse, by the circle that has its contacts on these legs
    legs, small = (0, 110, 250), mpf("1e-6")
    def gauge(k):
        # legs of length rho from (x, y): each ends on r = 1 + small cos(k a)
        def gap(x, y, rho):
            out = []
            for leg in legs:
                px, py = x + rho * cos(radians(mpf(leg))), y + rho * sin(radians(mpf(leg)))
                out.append(sqrt(px * px + py * py) - 1 - small * cos(k * mp.atan2(py, px)))
            return out
        return (findroot(gap, (mpf(0), mpf(0), mpf(1)))[2] - 1) / small
    for k in (2, 3, 5):
        # the radius is 1; the amplitude a micrometre of it, so that its square is out of sight
        row(f"uneven_legs_{k}", "three_leg", "", f"10;0;{legs[0]};{legs[1]};{legs[2]}/{k};1;0", {"diameter_mm": (20 + 2 * gauge(k), 2e-5)}, "mpmath: legs of one length whose ends lie on the section; to the first order")
    table = {60: "0 3 0 0 3 0 0 3 0 0 3", 90: "1 2 0.414 2 1 0 2.414 0 1 2 0.414", 108: "1.382 1.382 0 2.236 0 1.382 1.382 0 2.236 0 1.382", 120: "1.577 1 0.423 2 0.155 2 0.423 1 1.577 0 2.155"}
    for included, factors in table.items():
        for order, factor in enumerate(factors.split(), 2):
            exact = abs(1 + cos(order * radians(90 + mpf(included) / 2)) / sin(radians(mpf(included) / 2)))
            assert abs(exact - mpf(factor)) < 6e-4
            row(f"v_{included}_{order}", "v_block_factor", "", f"{order};{included};0", {"factor": (exact, 2e-14)}, "closed form; three digits of ISO 4292; from memory")
    for order, included, probe in ((2, 90, 180), (3, 60, 45), (5, 120, 300), (7, 108, 90)):
        row(f"v_{included}_{order}_at_{probe}", "v_block_factor", "", f"{order};{included};{probe}", {"factor": (v_block_by_rolling(order, included, probe), 1e-9)}, "mpmath: the body is turned on both faces")
    row("refuse_phase", "two_point", "", "43;45/2;0.01;none", "error:missing_field harmonics/0/sin_mm", "two axes do not say what lies between")
    row("phase_that_is_not_seen", "two_point", "", "43;90/2;0.01;none", {"diameter_mm": (mpf("85.98"), 2e-14)}, "at the axes that were read it is known")
    row("refuse_legs", "three_leg", "", "43;0;0;90;170/2;0.01;0", "error:out_of_order legs_deg", "legs in half a turn do not centre")
    row("refuse_order_0", "two_point", "", "43;0/0;0.01;0", "error:out_of_range harmonics/0/order", "the mean is not a harmonic")
    row("refuse_flat_v", "v_block_factor", "", "2;180;0", "error:out_of_range included_deg", "not a V")
    row("refuse_nan_probe", "v_block_factor", "", "2;90;nan", "error:not_finite probe_deg", "not a number")


def refusals():
    square = inline([1, 0, -1, 0], [0, 1, 0, -1])
    row("refuse_two_points", "circle", "least_squares", inline([0, 1], [0, 1]), "error:missing_field x_mm", "a circle needs three")
    row("refuse_line", "circle", "least_squares", inline([0, 1, 2, 3], [0, 1, 2, 3]), "error:contradiction points", "a line")
    row("refuse_repeated", "circle", "least_squares", inline([0, 1, 1, 0], [0, 1, 1, 0]), "error:contradiction points", "two places only")
    row("refuse_one_place", "circle", "minimum_zone", inline([1, 1, 1, 1], [2, 2, 2, 2]), "error:contradiction points", "one place only")
    row("refuse_half", "circle", "maximum_inscribed", inline([1, 0.8, 0, -0.8], [0, 0.6, 1, 0.6]), "error:contradiction points", "all on one side")
    row("arc_least_squares", "circle", "least_squares", inline([1, 0.8, 0, -0.8], [0, 0.6, 1, 0.6]), {"radius_mm": (1, 1e-14), "x_mm": (0, 1e-14)}, "on a circle: by hand")
    row("refuse_infinite", "circle", "least_squares", inline([1, 0, -1, 0], [0, 1, 0, float("inf")]), "error:not_finite y_mm/3", "place of the number")
    row("refuse_far", "circle", "least_squares", inline([1, 0, 5001, 0], [0, 1, 0, -1]), "error:out_of_range x_mm/2", "no part is so large")
    row("refuse_four_of_cylinder", "cylinder", "least_squares", square + "/0;1;2;3", "error:missing_field x_mm", "a cylinder needs five")
    row("refuse_one_depth", "cylinder", "least_squares", inline([1, 0, -1, 0, 0.6], [0, 1, 0, -1, 0.8], [5, 5, 5, 5, 5]), "error:contradiction z_mm", "no axis")
    row("refuse_plane_on_a_line", "plane", "least_squares", inline([0, 1, 2, 3], [0, 1, 2, 3], [0, 0, 0, 0]), "error:contradiction points", "a line tells no plane")
    row("refuse_inscribed_plane", "plane", "maximum_inscribed", inline([0, 1, 0], [0, 0, 1], [0, 0, 0]), "error:unknown_choice reference", "a plane has none")
    row("refuse_upright_plane", "plane", "least_squares", inline([0, 10, 0, 10], [0, 0, 10, 10], [0, 10, 0, 10]), "error:contradiction points", "45 degrees: coordinates mixed up")
    row("refuse_parallel", "bore_to_main_line", "", "0;0;0;0;0;1/0;0;0;0;0;1", "error:contradiction bore_mm", "along the main line")
    row("refuse_one_bearing", "bore_to_main_line", "", "0;0;0;0;0;1/0;0;0", "error:missing_field main_mm", "one point is no line")
    row("refuse_scattered_bore", "bore_to_main_line", "", "0;0;0;5;5;1;0;9;2;0;0;3/0;0;0;1;0;0", "error:contradiction bore_mm", "no line")
    row("refuse_nan_bearing", "bore_to_main_line", "", "0;0;0;0;0;1/0;0;0;1;nan;0", "error:not_finite main_mm/1/1", "place of the number")


def vectors():
    ROWS.clear()
    TRACES.clear()
    for part in (circles, cylinders, planes, sections, readings, refusals):
        part()
    head = "# Shapes; written by tests/reference/shape.py. Columns and rules: README.md beside this file."
    files = {"shape.csv": "\n".join([head, HEAD, *ROWS]) + "\n"}
    return files | {f"traces/{name}.csv": content for name, content in TRACES.items()}


def main():
    for name, content in vectors().items():
        file = VECTORS / name
        if "--check" in sys.argv:
            compare.check(file, content)
        else:
            file.parent.mkdir(exist_ok=True)
            file.write_text(content, encoding="utf-8")


if __name__ == "__main__":
    main()
