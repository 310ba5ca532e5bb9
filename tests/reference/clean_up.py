"""Clean-up of worn bores in ways of its own: closed forms, and SciPy's SLSQP on the largest distance.

Run it to write ../vectors/clean_up.csv; with --check it only compares.
"""

import random
import sys
from math import cos, hypot, radians, sin, sqrt
from pathlib import Path

import numpy as np
from scipy.optimize import least_squares, minimize

import compare

VECTORS = Path(__file__).parents[1] / "vectors"


class Wall:
    """Points of a wall about the original axis, rounded as they are written."""

    def __init__(self, points):
        self.points = [(angle, depth, round(radius, 9)) for angle, depth, radius in points]
        depths = [depth for _, depth, _ in self.points]
        self.middle = min(depths) + (max(depths) - min(depths)) / 2
        self.xyz = np.array([(r * cos(radians(a)), r * sin(radians(a)), y - self.middle) for a, y, r in self.points])

    def distances(self, axis):
        x, y, p, q = axis
        return np.hypot(self.xyz[:, 0] - x - p * self.xyz[:, 2], self.xyz[:, 1] - y - q * self.xyz[:, 2])

    def diameter(self, axis):
        return 2 * float(self.distances(axis).max())

    def best(self, shift, tilt):
        """Least diameter over axes; in micrometres, so that the solver's tolerances are far below a nanometre."""
        half = float(abs(self.xyz[:, 2]).max()) or 1.0
        base = float(np.hypot(self.xyz[:, 0], self.xyz[:, 1]).max())

        def axis(v):
            return v[0] / 1e3, v[1] / 1e3, v[2] / 1e3 / half, v[3] / 1e3 / half

        def room(v):
            return v[4] - (self.distances(axis(v)) - base) * 1e3

        def slopes(v):
            x, y, p, q = axis(v)
            away = self.xyz[:, :2] - np.array([x, y]) - np.outer(self.xyz[:, 2], [p, q])
            unit = away / np.hypot(*away.T)[:, None]
            lean = self.xyz[:, 2:] / half
            return np.hstack([unit, unit * lean, np.ones((len(unit), 1))])

        rules = [{"type": "ineq", "fun": room, "jac": slopes}]
        rules.append({"type": "ineq", "fun": lambda v: (shift * 1e3) ** 2 - v[0] ** 2 - v[1] ** 2})
        rules.append({"type": "ineq", "fun": lambda v: (tilt * half * 1e3) ** 2 - v[2] ** 2 - v[3] ** 2})
        best = np.inf
        for start in ((0, 0, 0, 0), (shift * 500, 0, 0, 0), (0, -shift * 500, 0, 0)):
            found = minimize(lambda v: v[4], [*start, 100.0], jac=lambda v: np.array([0, 0, 0, 0, 1.0]), method="SLSQP", constraints=rules, options={"ftol": 1e-13, "maxiter": 2000})
            x, y, p, q = axis(found.x)
            # brought inside, so that it is an axis that may be used
            a, b = min(1.0, shift / (hypot(x, y) or 1.0)), min(1.0, tilt / (hypot(p, q) or 1.0))
            best = min(best, self.diameter((x * a, y * a, p * b, q * b)))
        return best

    def worn(self):
        """Axis by least squares of the distances square to it, in micrometres."""
        level = len({y for _, y, _ in self.points}) == 1

        def left(v):
            v = np.asarray(v) / 1e3
            x, y, p, q = (*v[:2], 0, 0) if level else (*v[:2], *v[2:4] / half)
            axis = np.array([p, q, 1.0])
            offset = self.xyz - np.array([x, y, 0.0])
            away = offset - np.outer(offset @ axis / (axis @ axis), axis)
            return (np.linalg.norm(away, axis=1) - base - v[-1]) * 1e3

        base = float(np.hypot(self.xyz[:, 0], self.xyz[:, 1]).mean())
        half = float(abs(self.xyz[:, 2]).max()) or 1.0
        found = least_squares(left, [0.0] * (3 if level else 5), jac="3-point", xtol=1e-15, ftol=1e-15, gtol=1e-15).x / 1e3
        return (*found[:2].tolist(), 0.0, 0.0) if level else (*found[:2].tolist(), *(found[2:4] / half).tolist())

    def text(self):
        return "/".join(";".join(f"{n!r}" for n in column) for column in zip(*self.points, strict=True))


def row(name, choice, wall, expected, source, head=(0.0, 0.0, 0.0, 0.0)):
    return f"{name},clean_up,{choice},{';'.join(map(repr, head))}/{wall.text()},{expected},{source}"


def turn(count, start=0.0):
    return [start + 360 / count * k for k in range(count)]


def circle_from(angle, radius, x, y):
    """Distance of a circle about (x, y) from the origin, at an angle."""
    c, s = cos(radians(angle)), sin(radians(angle))
    across = x * s - y * c
    return x * c + y * s + sqrt(radius**2 - across**2)


def closed_forms():
    one_side = Wall([(a, 30.0, 43 + 0.1 * max(cos(radians(a)), 0)) for a in turn(24)])
    yield row("one_side", "original", one_side, "diameter_mm=86.2~1e-9;least_mm=86.2~1e-9;held.0=1~0", "closed form: 86 + 2 x 0.10")
    both = Wall([(a, 30.0, 43 + 0.05 * abs(cos(radians(a)))) for a in turn(24)])
    yield row("both_sides", "original", both, "diameter_mm=86.1~1e-9", "closed form: 86 + 2 x 0.05")
    yield row("both_sides_best", "best;0.1;0", both, "diameter_mm=86.1~1e-9;least_mm=86.1~1e-9", "closed form: two points a diameter of 86.1 apart")
    allowed = (0.02, 0.04, 0.003, 0.004)
    yield row("allowances", "original", one_side, "diameter_mm=86.28~1e-9;standard_uncertainty_mm=0.01~1e-15", "by hand: 86.2 + 2 x 0.02 + 0.04; 2 sqrt(0.003^2 + 0.004^2)", allowed)
    yield row("two_points_hold", "best;0.1;0", both, "standard_uncertainty_mm=0.0042426406871192854~1e-9;held.0=0.5~1e-6;held.12=0.5~1e-6", "by hand: shares of one half each; 2 x 0.003 sqrt(1/2)", (0.0, 0.0, 0.003, 0.0))
    aside = Wall([(a, 50.0, circle_from(a, 43.05, 0.06, 0.08)) for a in [*turn(36), 53.13010235415598]])
    yield row("circle_aside", "best;0.2;0", aside, "diameter_mm=86.1~2e-9;x_mm=0.06~1e-6;y_mm=0.08~1e-6", "closed form: a circle that stands aside is cleaned up about its own centre")
    yield row("circle_worn", "worn", aside, "diameter_mm=86.1~2e-9;x_mm=0.06~1e-8;y_mm=0.08~1e-8;slope_x=0~0", "closed form: the least-squares centre of a circle is its own")
    yield row("circle_too_far", "best;0.04;0", aside, "diameter_mm=86.22~2e-9;x_mm=0.024~1e-5;y_mm=0.032~1e-5", "closed form: 2 (43.05 + 0.10 - 0.04); the axis moved as far as it may toward the centre")
    yield row("no_shift", "best;0;0", aside, "diameter_mm=86.3~2e-9;x_mm=0~0;y_mm=0~0", "closed form: 2 (43.05 + 0.10)")
    leaning = Wall([(a, y, circle_from(a, 40.0, 0.0005 * (y - 60), -0.02)) for y in (10.0, 60.0, 110.0) for a in [0.0, 90.0, 180.0, 270.0, *turn(16, 3)]])
    yield row("leaning", "best;0.05;0.001", leaning, "diameter_mm=80~5e-9;y_mm=-0.02~1e-5;slope_x=0.0005~1e-6;middle_mm=60~0", "closed form: circles whose centres lie on a line are cleaned up along it")


def by_slsqp():
    draw = random.Random(7)
    for case in range(12):
        radius = draw.choice((25.0, 43.0, 68.0, 260.0))
        levels = draw.choice(((40.0,), (10.0, 50.0, 95.0), (8.0, 30.0, 60.0, 120.0)))
        lobes = [(n, draw.uniform(-0.03, 0.03), draw.uniform(0, 360)) for n in (1, 2, 3, 5)]
        lean = draw.uniform(-4e-4, 4e-4)
        points = []
        for y in levels:
            for a in turn(draw.choice((8, 12, 24)), draw.uniform(0, 10)):
                wave = sum(size * cos(radians(n * a - phase)) for n, size, phase in lobes)
                points.append((round(a, 6), y, radius + 0.06 * (y < 20) + wave + lean * (y - 50) * cos(radians(a - 40)) + draw.gauss(0, 0.004)))
        wall = Wall(points)
        shift, tilt = draw.choice(((0.01, 0.0), (0.02, 5e-5), (0.2, 0.001), (0.05, 2e-4)))
        best = wall.best(shift, tilt)
        yield row(f"general_{case}", f"best;{shift};{tilt}", wall, f"diameter_mm={best!r}~5e-8", "SciPy SLSQP from three places")
        axis = wall.worn()
        yield row(f"worn_{case}", "worn", wall, f"diameter_mm={wall.diameter(axis)!r}~2e-8;x_mm={axis[0]!r}~2e-8", "SciPy least_squares")


def walls():
    def of(name, bar, points, expected, source, function="walls_left"):
        text = "/".join(";".join(map(repr, map(float, p))) for p in points)
        return f"{name},{function},,{';'.join(map(repr, map(float, bar)))}/{text},{expected},{source}"

    middle = [(0, 50, 43, 5), (90, 50, 43, 4), (180, 50, 43.05, 6), (45, 50, 43, 3)]
    yield of("wall_in_place", (86.5, 0, 0, 50, 0, 0), middle, "0=4.75~1e-12;1=3.75~1e-12;2=5.8~1e-12;3=2.75~1e-12", "by hand: radius and wall less half the bore")
    moved = [circle_from(a, 43.25, 0.1, 0.0) for a, *_ in middle]
    expected = ";".join(f"{k}={r + w - reach!r}~1e-9" for k, ((_, _, r, w), reach) in enumerate(zip(middle, moved, strict=True)))
    yield of("wall_moved", (86.5, 0.1, 0, 50, 0, 0), middle, expected, "closed form: circle about a centre aside")
    yield of("wall_leaning", (86.5, 0, 0, 50, 0.001, 0), [(0, 100, 43, 5), (180, 100, 43, 5), (0, 0, 43, 5)], "0=4.7~1e-9;1=4.8~1e-9;2=4.8~1e-9", "by hand: 50 mm at a lean of 0.001")
    yield of("wall_not_reached", (86.0, 0, 0, 50, 0, 0), [(0, 50, 43.2, 5)], "0=5~0", "the bar does not reach a pit that is deeper")
    yield of("wall_through", (92.0, 0, 0, 50, 0, 0), [(0, 50, 43, 2.5)], "0=-0.5~1e-12", "by hand: 43 + 2.5 - 46")
    yield of("largest_in_place", (4, 0, 0, 50, 0, 0), middle[:1] + middle[2:3], "diameter_mm=88~1e-12", "by hand: 2 (43 + 5 - 4)", "largest_by_walls")
    yield of("largest_moved", (4, 0.03, 0.04, 50, 0, 0), [(0, 50, 43, 5)], f"diameter_mm={2 * hypot(43.97, 0.04)!r}~1e-9", "closed form: distance of a point from a centre aside", "largest_by_walls")
    yield of("largest_leaning", (4, 0, 0, 50, 0.001, 0), [(0, 100, 43, 5), (180, 100, 43, 5)], "diameter_mm=87.9~1e-9", "by hand: 2 (44 - 0.05)", "largest_by_walls")


def diameters():
    yield "wear_of_a_tenth,from_diameters,,86;86.1;0,lower_mm=86.1~1e-12;upper_mm=86.2~1e-12,by hand: half on each side or all on one"
    yield "wear_with_stock,from_diameters,,96;96.07;0.04,lower_mm=96.11~1e-12;upper_mm=96.18~1e-12,by hand"
    yield "no_wear,from_diameters,,86;86;0.02,lower_mm=86.02~1e-12;upper_mm=86.02~1e-12,by hand"


def refusals():
    good = Wall([(a, 30.0, 43.0) for a in turn(4)])

    def bad(name, choice, text, error, head="0;0;0;0"):
        return f"{name},clean_up,{choice},{head}/{text},error:{error},refused"

    yield bad("radius_nan", "original", "0;90;180/30;30;30/43;nan;43", "not_finite radii_mm/1")
    yield bad("radius_of_diameter", "original", "0;90;180/30;30;30/860;43;43", "out_of_range radii_mm/0")
    yield bad("two_points", "original", "0;90/30;30/43;43", "missing_field angles_deg")
    yield bad("shift", "best;5;0", good.text(), "out_of_range shift_mm")
    yield bad("tilt", "best;0.1;0.01", good.text(), "out_of_range tilt")
    yield bad("stock", "original", good.text(), "out_of_range stock_mm", "0;-0.1;0;0")
    yield bad("centring", "original", good.text(), "not_finite centring_mm", "nan;0;0;0")
    yield bad("each", "original", good.text(), "out_of_range each_mm", "0;0;-1;0")
    yield "smaller_than_new,from_diameters,,86;85.9;0,error:out_of_order largest_mm,refused"
    yield "wall_zero,walls_left,,86.5;0;0;50;0;0/0;50;43;0,error:out_of_range walls/0/wall_mm,refused"
    yield "bar_nan,walls_left,,86.5;nan;0;50;0;0/0;50;43;5,error:not_finite bar/x_mm,refused"
    yield "bar_middle,walls_left,,86.5;0;0;-1;0;0/0;50;43;5,error:out_of_range bar/middle_mm,refused"
    yield "bar_outside,walls_left,,86.5;0;44;50;0;0/0;50;43;5,error:contradiction bar,refused"
    yield "bar_slope,largest_by_walls,,4;0;0;50;0;inf/0;50;43;5,error:not_finite bar/slope_y,refused"
    yield "bar_leaves,largest_by_walls,,4;0;0;50;2;0/0;90;43;5,error:contradiction bar,refused"
    yield "least_wall_zero,largest_by_walls,,0;0;0;50;0;0/0;50;43;5,error:out_of_range least_wall_mm,refused"


HEAD = """# Clean-up of worn bores. Columns and rules: README.md beside this file. Written by reference/clean_up.py.
id,function,choice,given,expected,source
"""

if __name__ == "__main__":
    rows = [*closed_forms(), *by_slsqp(), *walls(), *diameters(), *refusals()]
    content = HEAD + "".join(f"{r}\n" for r in rows)
    file = VECTORS / "clean_up.csv"
    if "--check" in sys.argv:
        compare.check(file, content, 1e-7)
    else:
        file.write_text(content, encoding="utf-8")
