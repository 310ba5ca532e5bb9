"""Forms of pistons evaluated in ways of their own: SciPy's PCHIP, a search over angles, NumPy's least squares and covariance.

Run it to write ../vectors/piston.csv; with --check it only compares.
"""

import sys
from functools import cache
from math import cos, radians, sin, sqrt
from pathlib import Path

import numpy as np
from scipy.interpolate import PchipInterpolator

import compare

VECTORS = Path(__file__).parents[1] / "vectors"

# -- the model


def curve(rows):
    """A quantity over height: SciPy's PCHIP, which is a straight line through two rows; one row holds everywhere."""
    if not rows:
        return lambda z: 0.0
    if len(rows) == 1:
        return lambda z: rows[0][1]
    through = PchipInterpolator(*zip(*rows, strict=True), extrapolate=False)
    # the search asks for one height thousands of times
    return cache(lambda z: float(through(z)))


class Surface:
    """A surface by the formula of its drawing, radius by radius."""

    def __init__(self, start, end, tables, form="symmetric", counted="above", coating=0, panels=None, windows=()):
        self.start, self.end, self.tables, self.form, self.counted = start, end, tables, form, counted
        self.curves = [curve(rows) for rows in [*tables, (), ()]]
        self.coating, self.panels, self.windows = coating, panels, windows

    def radius(self, z, angle):
        """Radius less half the gauge diameter, before the skirt is re-referenced."""
        t, sign = radians(angle), 1 if self.counted == "above" else -1
        if self.form == "symmetric":
            barrel, ovality, double = (of(z) for of in self.curves[:3])
            return sign * barrel / 2 - ovality / 4 * (1 - cos(2 * t)) + double / 4 * (1 - cos(4 * t))
        thrust, pin, minor, thrust_fourth, minor_fourth = (of(z) for of in self.curves[:5])
        major_side = angle <= 90 or angle >= 270
        top, fourth = (sign * thrust, thrust_fourth) if major_side else (sign * minor, minor_fourth)
        return top - (top - sign * pin) / 2 * (1 - cos(2 * t)) + fourth / 2 * (1 - cos(4 * t))

    def coat(self, z, angle):
        """Coating at a place inside or outside of windows, never on their edges; None without surface."""
        angle %= 360
        if self.panels and min(angle, 360 - angle) > self.panels[0] and abs(angle - 180) > self.panels[1]:
            return None
        coat = self.coating
        for kind, a, b, low, high in self.windows:
            inside = a < angle < b if a < b else angle > a or angle < b
            if inside and low <= z <= high:
                if kind == "cut_out":
                    return None
                coat = 0
        return coat

    def text(self):
        head = [{"symmetric": 1, "asymmetric": 2}[self.form], {"above": 1, "below": 2}[self.counted], self.start, self.end, self.coating, *(self.panels or (0, 0))]
        tables = [";".join(f"{float(z)!r};{float(v)!r}" for z, v in rows) for rows in [*self.tables, (), (), (), ()][:5]]
        windows = ";".join(f"{ {'cut_out': 1, 'bare': 2}[kind]};{';'.join(repr(float(n)) for n in rest)}" for kind, *rest in self.windows)
        return "/".join([";".join(repr(float(n)) for n in head), *tables, windows])


class Piston:
    """A skirt and its lands."""

    def __init__(self, gauge_height, *surfaces):
        self.gauge_height, self.surfaces = gauge_height, surfaces
        skirt = surfaces[0]
        self.reference = (skirt.radius(gauge_height, 0) + skirt.radius(gauge_height, 180)) / 2

    def place(self, z):
        return next((s for s in self.surfaces if s.start <= z <= s.end), None)

    def radius(self, z, angle):
        surface = self.place(z)
        base = self.reference if surface is self.surfaces[0] else 0
        coat = surface.coat(z, angle)
        return None if coat is None else surface.radius(z, angle) - base + coat

    def diameter(self, z, angle):
        ends = self.radius(z, angle % 360), self.radius(z, (angle + 180) % 360)
        return None if None in ends else sum(ends)

    def largest(self, z):
        """By trial of every hundredth of a degree, then by golden section around the best of them."""
        found = [(d, k / 100) for k in range(18000) if (d := self.diameter(z, k / 100)) is not None]
        d, angle = max(found, key=lambda f: (f[0], -f[1]))
        low, high = angle - 0.01, angle + 0.01
        share = (sqrt(5) - 1) / 2
        for _ in range(60):
            a, b = high - share * (high - low), low + share * (high - low)
            values = [self.diameter(z, k) if self.diameter(z, k) is not None else -1e9 for k in (a, b)]
            low, high = (low, b) if values[0] > values[1] else (a, high)
        best = self.diameter(z, (low + high) / 2)
        return ((low + high) / 2, best) if best is not None and best > d + 1e-13 else (angle, d)

    def text(self):
        return "|".join([repr(float(self.gauge_height)), *(s.text() for s in self.surfaces)])


# -- fits


def fitted(columns, right, uncertainty):
    """NumPy's least squares: coefficients, covariance from the residuals, residuals, degrees of freedom."""
    x = np.column_stack(columns)
    solution, *_ = np.linalg.lstsq(x, right, rcond=None)
    left = right - x @ solution
    return solution, np.linalg.inv(x.T @ x), left


def fit_surface(heights, angles, values, reading, double, uncertainty=None):
    """Diameter, ovality and double ovality as unknowns of their own at each height; radii with the position of the axis."""
    factor = 2 if reading == "radii" else 1
    stations, squares, dof = [], 0.0, 0
    left = np.zeros(len(values))
    for z in sorted(set(heights)):
        at = [k for k, h in enumerate(heights) if h == z]
        t = np.radians([angles[k] for k in at])
        columns = [np.ones(len(at)), -(1 - np.cos(2 * t)) / 2] + ([(1 - np.cos(4 * t)) / 2] if double else [])
        unknowns = len(columns)
        if reading == "radii":
            columns += [w for w in (np.cos(t), np.sin(t)) if np.abs(w).max() > 1e-9]
        solution, spread, residuals = fitted(columns, factor * np.array([values[k] for k in at]), uncertainty)
        left[at] = residuals / factor
        squares += residuals @ residuals
        dof += len(at) - len(columns)
        stations.append((z, len(at), solution[:unknowns], np.sqrt(np.diag(spread))[:unknowns]))
    deviation = sqrt(squares / dof) if dof else None
    scatter = deviation if dof else (None if uncertainty is None else uncertainty * factor)
    return stations, deviation and deviation / factor, dof, scatter, left


def fit_trace(piston, gauge, heights, angles, values, reading, uncertainty=None):
    """Size, position and tilt from the design matrix, in mm and mm for each mm."""
    t, z = np.radians(angles), np.array(heights, dtype=float)
    if reading == "diameters":
        right = np.array([v - gauge - piston.diameter(h, a) for h, a, v in zip(heights, angles, values, strict=True)])
        columns, names = [np.ones(len(z))], ["size_mm"]
    else:
        right = np.array([v - gauge / 2 - piston.radius(h, a) for h, a, v in zip(heights, angles, values, strict=True)])
        middle = (z.min() + z.max()) / 2
        # half of the size: the unknown is the diameter
        waves = [np.full(len(z), 0.5), np.cos(t), np.sin(t), (z - middle) * np.cos(t), (z - middle) * np.sin(t)]
        names = ["size_mm", "x_mm", "y_mm", "slope_x", "slope_y"]
        columns, names = zip(*[(w, n) for w, n in zip(waves, names, strict=True) if np.abs(w).max() > 1e-9], strict=True)
    solution, spread, left = fitted(columns, right, uncertainty)
    dof = len(right) - len(columns)
    deviation = sqrt(left @ left / dof) if dof else None
    scatter = deviation if dof else uncertainty
    u = None if scatter is None else scatter * np.sqrt(np.diag(spread))
    found = {n: (s, None if u is None else u[k]) for k, (n, s) in enumerate(zip(names, solution, strict=True))}
    return found, left, deviation, dof


# -- the vectors

ROWS = []
HEAD = "id,function,choice,given,expected,source"


def row(name, function, choice, given, expected, source):
    if isinstance(expected, dict):
        expected = ";".join(f"{k}=none" if v is None else f"{k}={float(v[0])!r}~{v[1]}" for k, v in expected.items())
    ROWS.append(",".join([name, function, choice, given, expected, source]))


def numbers(values):
    return ";".join(repr(float(v)) for v in values)


# an invented skirt: gauge height 12, rows of barrel, ovality and double ovality, and a top land
SKIRT = [[(0, -0.02), (12, 0.003), (30, -0.012), (48, -0.055)], [(5, 0.32), (48, 0.41)], [(5, 0.03), (25, 0.05), (48, 0.02)]]


def skirt(**more):
    return Surface(5, 48, SKIRT, **more)


LAND = Surface(62, 70, [[(62, 0.52), (70, 0.61)], [(62, 0.08)]], counted="below")
PLAIN = Piston(12, skirt(), LAND)
ASYMMETRIC = Piston(
    12,
    Surface(0, 48, [[(0, 0.006), (12, 0), (48, 0.02)], [(0, 0.16), (20, 0.18), (48, 0.2)], [(0, 0.01), (12, 0.004), (30, 0.01), (48, 0.04)], [(0, 0.01), (48, 0.02)], [(0, 0)]], form="asymmetric", counted="below"),
)
COATED = Piston(12, skirt(coating=0.015, panels=(55, 50), windows=[("bare", 350, 10, 8, 16), ("bare", 170, 190, 8, 16), ("cut_out", 20, 30, 5, 20)]))
FULL = Piston(12, Surface(0, 40, [[(0, 0)], [(0, 0.2)], [(0, 0.1)]]))


def value(name, function, piston, gauge, z, angle, result, tolerance, source):
    row(name, function, "", f"{numbers([gauge, z, angle])}|{piston.text()}", {"result": (result, tolerance)}, source)


def readings():
    for piston, what in ((PLAIN, "plain"), (ASYMMETRIC, "asymmetric")):
        for z in (5, 12, 21.7, 48):
            for angle in (0, 33, 90, 137, 180, 250, 360):
                value(f"{what}_radius_{z}_{angle}", "piston_radius_mm", piston, 86, z, angle, 43 + piston.radius(z, angle), 2e-14, "the formula; SciPy PCHIP")
            value(f"{what}_diameter_{z}", "piston_diameter_mm", piston, 86, z, 45, 86 + piston.diameter(z, 45), 3e-14, "the formula; SciPy PCHIP")
            ovality = piston.diameter(z, 0) - piston.diameter(z, 90)
            row(f"{what}_ovality_{z}", "piston_ovality_mm", "", f"{numbers([z])}|{piston.text()}", {"result": (ovality, 1e-15)}, "the formula; SciPy PCHIP")
    value("land", "piston_diameter_mm", PLAIN, 86, 66, 90, 86 - 0.565 - 0.08, 3e-14, "by hand: between 0.52 and 0.61 below; 0.08 oval")
    value("gauge_point", "piston_diameter_mm", PLAIN, 86, 12, 0, 86, 0, "definition: the barrel is zero at the gauge point")
    value("bare_window", "piston_diameter_mm", COATED, 86, 12, 0, 86, 0, "by hand: bare at both ends")
    value("over_coating", "piston_diameter_mm", COATED, 86, 30, 0, 86 + COATED.diameter(30, 0), 3e-14, "the formula; twice the coating")
    assert abs(COATED.diameter(30, 0) - PLAIN.diameter(30, 0) - 0.03) < 1e-12
    value("edge_of_a_window", "piston_diameter_mm", COATED, 86, 12, 10, 86.03 + PLAIN.diameter(12, 10), 3e-14, "by hand: the edge belongs to the coating")
    piston_tests = (("plain", PLAIN, 12), ("plain_top", PLAIN, 48), ("asymmetric", ASYMMETRIC, 30), ("full", FULL, 20), ("coated", COATED, 12), ("coated_below", COATED, 6))
    for what, piston, z in piston_tests:
        angle, most = piston.largest(z)
        given = f"{numbers([86, z])}|{piston.text()}"
        if what == "coated":
            angle, most = 10.0, piston.diameter(z, 10.0001) + (PLAIN.diameter(z, 10) - PLAIN.diameter(z, 10.0001))
        row(f"{what}_largest_{z}", "piston_largest", "", given, {"angle_deg": (angle, 1e-4), "diameter_mm": (86 + most, 1e-12)}, "every hundredth of a degree; then golden section")
    # o = 0.2 and f = 0.1: cos 2t = o / 4 f = 1/2 at 30 degrees; excess (4 f - o)^2 / 16 f = 0.025
    row("full_closed", "piston_largest", "", f"{numbers([86, 20])}|{FULL.text()}", {"angle_deg": (30, 1e-13), "diameter_mm": (86.025, 3e-14)}, "closed form: cos 2t = ov / 4 ov4; (4 ov4 - ov)^2 / 16 ov4")
    refused = [
        ("cut_out", "piston_diameter_mm", COATED, (86, 10, 25), "error:contradiction angle_deg", "no surface in a cut-out"),
        ("across_a_cut_out", "piston_diameter_mm", COATED, (86, 10, 205), "error:contradiction angle_deg", "no surface across"),
        ("cut_out_at_the_bottom_edge", "piston_diameter_mm", COATED, (86, 5, 25), "error:contradiction angle_deg", "the cut-out is open below"),
        ("beside_the_panels", "piston_diameter_mm", COATED, (86, 12, 90), "error:contradiction angle_deg", "no surface on the pin axis"),
        ("groove", "piston_radius_mm", PLAIN, (86, 55, 0), "error:out_of_range height_mm", "between skirt and land"),
        ("below", "piston_radius_mm", PLAIN, (86, 4.9, 0), "error:out_of_range height_mm", "the tables begin at 5"),
        ("nan_height", "piston_radius_mm", PLAIN, (86, float("nan"), 0), "error:not_finite height_mm", "not a number"),
        ("angle", "piston_radius_mm", PLAIN, (86, 12, 361), "error:out_of_range angle_deg", "more than a turn"),
        ("inches", "piston_radius_mm", PLAIN, (3.386, 12, 0), "error:out_of_range gauge_diameter_mm", "inches as mm"),
    ]
    for name, function, piston, given, expected, source in refused:
        row(f"refuse_{name}", function, "", f"{numbers(given)}|{piston.text()}", expected, source)
    row("refuse_oval_without_pin_axis", "piston_ovality_mm", "", f"12.0|{COATED.text()}", "error:contradiction angle_deg", "beside the panels")
    row("refuse_largest_in_a_groove", "piston_largest", "", f"86.0;55.0|{PLAIN.text()}", "error:out_of_range height_mm", "no surface")


def pistons_refused():
    def of(name, piston, expected, source):
        row(f"refuse_{name}", "piston_warnings", "", piston if isinstance(piston, str) else piston.text(), expected, source)

    plain = [[(0, 0)], [(0, 0.2)]]
    of("gauge_point_off_the_skirt", Piston(12, Surface(0, 20, plain)).text().replace("12.0|", "21.0|", 1), "error:out_of_range gauge_height_mm", "the skirt ends at 20")
    of("no_skirt", "12.0", "error:missing_field surfaces", "no surface")
    of("lands_overlap", Piston(12, Surface(0, 20, plain), Surface(19, 25, plain)), "error:out_of_order surfaces/1/from_mm", "begins below the end of the skirt")
    of("short_table", Piston(12, Surface(5, 20, [[(0, 0)], [(5, 0.2), (21, 0.2)]])).text().replace("21.0;0.2", "19.0;0.2"), "error:out_of_range surfaces/0/ovality", "the table ends at 19")
    of("falling_heights", "12.0|1;1;0;20;0;0;0/0;0;20;-0.01;10;-0.01/0;0.2////", "error:out_of_order surfaces/0/barrel/heights_mm/2", "heights rise")
    of("nan_ovality", "12.0|1;1;0;20;0;0;0/0;0/0;nan////", "error:not_finite surfaces/0/ovality/values_mm/0", "not a number")
    of("ovality_below_zero", "12.0|1;1;0;20;0;0;0/0;0/0;-0.3////", "error:out_of_range surfaces/0/ovality/values_mm/0", "axes exchanged")
    of("drop_below_zero", "12.0|1;2;0;20;0;0;0/0;-2.5;20;0/0;0.2////", "error:out_of_range surfaces/0/barrel/values_mm/0", "a drop is positive")
    of("steep_skirt", "12.0|1;1;0;20;0;0;0/0;0;20;-1.2/0;0.2////", "error:out_of_range surfaces/0/barrel", "60 um in a mm: a land")
    of("no_barrel", "12.0|1;1;0;20;0;0;0//0;0.2////", "error:missing_field surfaces/0/barrel/heights_mm", "a curve needs a row")
    of("upside_down", "12.0|1;1;20;0;0;0;0/0;0/0;0.2////", "error:out_of_order surfaces/0/to_mm", "ends below its beginning")
    of("thick_coating", "12.0|1;1;0;20;15;0;0/0;0/0;0.2////", "error:out_of_range surfaces/0/coating_mm", "micrometres as mm")
    of("wide_panel", "12.0|1;1;0;20;0;91;60/0;0/0;0.2////", "error:out_of_range surfaces/0/thrust_panel_deg", "more than half a turn")
    of("bare_without_coating", "12.0|1;1;0;20;0;0;0/0;0/0;0.2////2;350;10;5;15", "error:contradiction surfaces/0/windows/0/kind", "nothing to leave out")
    of("window_off_the_surface", "12.0|1;1;0;20;0;0;0/0;0/0;0.2////1;350;10;5;25", "error:out_of_range surfaces/0/windows/0/to_mm", "above the skirt")
    of("window_without_width", "12.0|1;1;0;20;0;0;0/0;0/0;0.2////1;10;10;5;15", "error:out_of_order surfaces/0/windows/0/to_deg", "no width")
    of("window_without_height", "12.0|1;1;0;20;0;0;0/0;0/0;0.2////1;10;20;5;5", "error:out_of_order surfaces/0/windows/0/to_mm", "no height")


KINDS = {"larger_beside": 1, "smaller_beside": 2, "odd_ovality": 3, "odd_barrel": 4, "odd_slope": 5, "odd_coating": 6}


def warnings():
    def of(name, piston, found, source):
        expected = {"count": (len(found), 0)}
        for k, (kind, surface, height, angle, number) in enumerate(found):
            expected |= {f"{k}.kind": (KINDS[kind], 0), f"{k}.surface": (surface, 0), f"{k}.height_mm": (height, 0)}
            expected |= {f"{k}.angle_deg": None if angle is None else (angle, 1e-12), f"{k}.value": (number, 1e-12)}
        row(f"warn_{name}", "piston_warnings", "", piston.text(), expected, source)

    of("nothing", PLAIN, [], "within a quarter of the ovality; usual numbers")
    of("quarter", Piston(12, Surface(0, 40, [[(0, 0)], [(0, 0.2)], [(0, 0.05)]])), [], "by hand: a quarter exactly")
    of("larger_beside", FULL, [("larger_beside", 0, 0, 30, 0.025)], "closed form")
    of("smaller_beside", Piston(12, Surface(0, 40, [[(0, 0)], [(0, 0.2)], [(0, 0), (20, -0.1), (40, 0)]])), [("smaller_beside", 0, 20, 60, 0.025)], "closed form: mirrored")
    of("oval_the_wrong_way", Piston(12, Surface(0, 40, [[(0, 0)], [(0, -0.01)]])), [("larger_beside", 0, 0, 90, 0.01), ("odd_ovality", 0, 0, None, -0.01)], "by hand")
    of("odd_numbers", Piston(12, Surface(0, 40, [[(0, 0), (40, -0.8)], [(0, 0.9)]], coating=0.1), Surface(50, 60, [[(50, -2.0)], [(50, 0.1)]])),
       [("odd_ovality", 0, 0, None, 0.9), ("odd_barrel", 0, 0, None, 0.24), ("odd_slope", 0, 0, None, 20), ("odd_coating", 0, 0, None, 0.1)], "by hand: 0.8 in 40; 12 below the gauge point 0.24; a land may be far below")
    of("larger_bottom", Piston(12, Surface(0, 40, [[(0, 0.06), (12, 0), (40, 0)], [(0, 0.2)]])), [("odd_barrel", 0, 0, None, 0.06)], "by hand: a larger bottom")


def fits():
    chance = np.random.default_rng(11)

    def surface(name, heights, angles, values, reading, double, uncertainty=None, source="NumPy lstsq and covariance; unknowns of their own", at=None):
        stations, deviation, dof, scatter, left = fit_surface(heights, angles, values, reading, double, uncertainty)
        expected = {"stations": (len(stations), 0), "dof": (dof, 0), "deviation_mm": None if deviation is None else (deviation, 1e-12)}
        for k, (z, count, solution, spread) in enumerate(stations):
            expected |= {f"{k}.height_mm": (z, 0), f"{k}.points": (count, 0)}
            for j, what in enumerate(("diameter", "ovality", "double_ovality")):
                known = j < len(solution)
                expected[f"{k}.{what}_mm"] = (solution[j], 1e-11) if known else None
                expected[f"{k}.{what}_uncertainty_mm"] = (scatter * spread[j], 1e-12) if known and scatter is not None else None
        expected["residuals.0"] = (left[0], 1e-11)
        expected[f"residuals.{len(left) - 1}"] = (left[-1], 1e-11)
        row(name, "fit_piston_surface", reading, f"{int(double)};{'' if uncertainty is None else repr(uncertainty)}/{numbers(heights)}/{numbers(angles)}/{numbers(values)}", expected, source)

    stations = (6, 12, 20, 30, 40, 48)
    heights = [z for z in stations for _ in range(8)]
    angles = [22.5 * k for _ in stations for k in range(8)]
    values = [round(86 + PLAIN.diameter(z, a) + chance.normal(0, 0.002), 4) for z, a in zip(heights, angles, strict=True)]
    surface("eight_axes", heights, angles, values, "diameters", True)
    surface("eight_axes_simple_oval", heights, angles, values, "diameters", False)
    surface("two_axes", [8, 8, 30, 30], [0, 90, 0, 90], [86.01, 85.68, 86.0, 85.66], "diameters", False, source="by hand: nothing is left to see scatter by")
    surface("two_axes_stated", [8, 8, 30, 30], [0, 90, 0, 90], [86.01, 85.68, 86.0, 85.66], "diameters", False, 0.002, source="by hand: u and u sqrt 2")
    surface("three_axes", [8] * 3, [0, 45, 90], [86.0, 85.87, 85.66], "diameters", True, 0.001, source="by hand: 0.34 and 0.04")
    heights = [z for z in stations for _ in range(12)]
    angles = [(30 * k + 7) % 360 for _ in stations for k in range(12)]
    values = [round(43 + PLAIN.radius(z, a) + 0.03 * cos(radians(a)) - 0.02 * sin(radians(a)) + chance.normal(0, 0.001), 4) for z, a in zip(heights, angles, strict=True)]
    surface("twelve_radii", heights, angles, values, "radii", True)
    surface("four_radii", [10] * 4, [0, 90, 180, 270], [43.01, 42.83, 42.99, 42.85], "radii", False, 0.001, source="by hand: off by 0.01 both ways")
    refuse = [
        ("fourth_of_two_axes", "1;/8;8/0;90/86;85.7", "diameters", "error:out_of_range angles_deg", "two axes do not show order 4"),
        ("one_axis", "0;/8;8/0;180/86;86", "diameters", "error:out_of_range angles_deg", "one axis shows no oval"),
        ("two_radii", "0;/8;8/0;90/43;42.8", "radii", "error:out_of_range angles_deg", "position and oval at once"),
        ("nan_value", "0;/8;8/0;90/86;nan", "diameters", "error:not_finite values_mm/1", "place of the number"),
        ("no_points", "0;///", "diameters", "error:missing_field heights_mm", "none"),
        ("diameter_as_radius", "0;/8;8/0;90/860;860", "radii", "error:out_of_range values_mm/0", "a diameter; ten times"),
        ("vast_uncertainty", "0;2/8;8/0;90/86;85.7", "diameters", "error:out_of_range uncertainty_mm", "micrometres as mm"),
        ("height_of_a_point", "0;/8;-1/0;90/86;85.7", "diameters", "error:out_of_range heights_mm/1", "below the skirt"),
    ]
    for name, given, reading, expected, source in refuse:
        row(f"refuse_{name}", "fit_piston_surface", reading, given, expected, source)

    def trace(name, piston, gauge, points, reading, uncertainty=None, source="NumPy lstsq and covariance"):
        heights, angles, values = zip(*points, strict=True)
        found, left, deviation, dof = fit_trace(piston, gauge, heights, angles, values, reading, uncertainty)
        expected = {}
        for what in ("size_mm", "x_mm", "y_mm", "slope_x", "slope_y"):
            number, u = found.get(what, (None, None))
            exact = 1e-12 if what.endswith("_mm") else 1e-14
            expected[what] = None if number is None else (number, exact)
            expected[f"{what}_uncertainty"] = None if u is None else (u, exact)
        worst = int(np.abs(left).argmax())
        expected |= {"height_mm": ((min(heights) + max(heights)) / 2, 0), "rms_mm": (sqrt(left @ left / len(left)), 1e-12), "largest": (worst, 0), "dof": (dof, 0)}
        expected |= {"deviation_mm": None if deviation is None else (deviation, 1e-12), f"residuals.{worst}": (left[worst], 1e-12), "residuals.0": (left[0], 1e-12)}
        given = f"{gauge!r};{'' if uncertainty is None else repr(uncertainty)}/{numbers(heights)}/{numbers(angles)}/{numbers(values)}|{piston.text()}"
        row(name, "fit_piston_trace", reading, given, expected, source)

    def worn(z, a):
        # an invented wear of 0.02 in a patch of the thrust side
        return -0.02 if abs(z - 40) < 3 and min(a, 360 - a) < 16 else 0

    points = [(z, a, round(43.005 + PLAIN.radius(z, a) + (0.02 + 0.0004 * (z - 20)) * cos(radians(a)) - 0.01 * sin(radians(a)) + worn(z, a) + chance.normal(0, 0.0005), 5))
              for z in (8.0, 14.0, 22.0, 31.0, 40.0, 46.0, 64.0, 68.0) for a in range(0, 360, 30)]
    trace("worn_thrust_side", PLAIN, 86.0, points, "radii")
    trace("one_height", PLAIN, 86.0, points[12:24], "radii")
    trace("asymmetric_trace", ASYMMETRIC, 86.0, [(z, a, v) for z, a, v in points if z < 48], "radii")
    trace("diameters_against_a_drawing", PLAIN, 86.0, [(12.0, 0.0, 85.985), (12.0, 90.0, 85.65), (30.0, 0.0, 85.96), (64.0, 0.0, 85.45)], "diameters")
    trace("one_diameter", PLAIN, 86.0, [(12.0, 0.0, 85.985)], "diameters", 0.002, "by hand: the stated uncertainty")
    piston = PLAIN.text()
    for name, given, reading, expected, source in (
        ("trace_in_a_groove", "86.0;/12;55/0;0/86;86", "diameters", "error:out_of_range heights_mm/1", "no surface there"),
        ("trace_of_one_line", "86.0;/8;20;30;40;45;48/0;0;0;0;0;0/43;43;43;43;43;43", "radii", "error:out_of_range points", "size and position are one"),
        ("trace_without_points", "86.0;///", "radii", "error:missing_field heights_mm", "none"),
    ):
        row(f"refuse_{name}", "fit_piston_trace", reading, f"{given}|{piston}", expected, source)
    row("refuse_trace_in_a_cut_out", "fit_piston_trace", "diameters", f"86.0;/12;10/0;25/86;86|{COATED.text()}", "error:contradiction angles_deg/1", "no surface there")


def vectors():
    ROWS.clear()
    for part in (readings, pistons_refused, warnings, fits):
        part()
    head = "# Forms of pistons; written by tests/reference/piston.py. Columns and rules: README.md beside this file."
    return {"piston.csv": "\n".join([head, HEAD, *ROWS]) + "\n"}


def main():
    for name, content in vectors().items():
        file = VECTORS / name
        if "--check" in sys.argv:
            compare.check(file, content)
        else:
            file.write_text(content, encoding="utf-8")


if __name__ == "__main__":
    main()
