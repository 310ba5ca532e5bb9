"""Shapes: the vectors of every host, and random traces against linear programmes and enumeration of other solvers."""

import math
import random

import gaugepoint
import numpy as np
import pytest
import shape as reference
from gaugepoint import shape as public
from test_measured import expect, expect_refusal
from vectors import VECTORS
from vectors import shape as rows

ROWS = rows()
HELD = [row for row in ROWS if not row["expected"].startswith("error:")]
REFUSED = [row for row in ROWS if row["expected"].startswith("error:")]


def columns(cell):
    if not cell.startswith("@"):
        return [[None if n == "none" else float(n) for n in column.split(";")] for column in cell.split("/")]
    lines = (VECTORS / "traces" / f"{cell[1:]}.csv").read_text(encoding="utf-8").splitlines()
    return [list(column) for column in zip(*([float(n) for n in line.split(",")] for line in lines[1:]), strict=True)]


def section_of(mean, waves):
    harmonics = (public.Harmonic(int(waves[k]), *waves[k + 1 : k + 3]) for k in range(0, len(waves), 3))
    return public.Section(mean, None, tuple(harmonics), None, 1.0)


def points(flat):
    return [flat[k : k + 3] for k in range(0, len(flat), 3)]


def called(row):
    function, choice, given = row["function"], row["choice"], columns(row["given"])
    if function in ("circle", "circle_algebraic", "cylinder", "plane"):
        return getattr(gaugepoint, f"fit_{function}")(*given, choice)
    if function == "bore_to_main_line":
        return gaugepoint.bore_to_main_line(*map(points, given))
    if function.startswith("section"):
        return getattr(gaugepoint, function)(*given, int(choice))
    if function == "v_block_factor":
        order, *angles = given[0]
        return {"factor": gaugepoint.v_block_factor(int(order), *angles)}
    mean, angle, *legs = given[0]
    section = section_of(mean, given[1])
    if function == "two_point":
        return {"diameter_mm": gaugepoint.two_point_mm(section, angle)}
    return {"diameter_mm": gaugepoint.three_leg_mm(section, angle, legs)}


def found(result, name):
    """A result by the name that every host gives it."""
    if isinstance(result, dict):
        return result[name]
    if isinstance(result, public.Section) and name in ("x_mm", "y_mm"):
        return result.position_mm and result.position_mm[name == "y_mm"]
    for part in name.split("."):
        if isinstance(result, tuple):
            (result,) = (h for h in result if h.order == int(part))
        else:
            result = getattr(result, part)
    return result


@pytest.mark.parametrize("row", HELD, ids=lambda row: row["id"])
def test_value(row):
    expect(row, called(row), found)


@pytest.mark.parametrize("row", REFUSED, ids=lambda row: row["id"])
def test_refusal(row):
    expect_refusal(row, called)


def test_every_function_has_rows():
    functions = {"circle", "circle_algebraic", "cylinder", "plane", "bore_to_main_line", "section_from_radii", "section_from_diameters"}
    functions |= {"two_point", "three_leg", "v_block_factor"}
    assert {row["function"] for row in HELD} == functions
    assert {row["function"] for row in REFUSED} == functions - {"circle_algebraic"}


def test_vectors_are_those_of_the_evaluation():
    for name, content in reference.vectors().items():
        assert (VECTORS / name).read_text(encoding="utf-8") == content, name


EXTREMES = ("minimum_zone", "minimum_circumscribed", "maximum_inscribed")


def a_trace(chance):
    """Points of an invented section: any size, place, number of points, lobes and noise."""
    n = chance.randrange(8, 200)
    radius, noise = chance.uniform(20, 100), chance.choice([0.0005, 0.003, 0.02])
    centre = np.array([chance.uniform(-50, 50), chance.uniform(-50, 50)])
    lobes = [(k, chance.gauss(0, 0.01), chance.uniform(0, 6)) for k in (2, 3, 5)]
    angles = sorted((2 * math.pi * (k + chance.uniform(-0.4, 0.4)) / n for k in range(n)))
    radii = [radius + chance.gauss(0, noise) + sum(a * math.cos(k * t - p) for k, a, p in lobes) for t in angles]
    return centre + np.array([[r * math.cos(t), r * math.sin(t)] for r, t in zip(radii, angles, strict=True)])


def least_squares_start(pts):
    return reference.algebraic(pts, "taubin")[:2]


@pytest.mark.parametrize("seed", range(240))
def test_minimum_zone_against_a_linear_programme(seed):
    pts = a_trace(random.Random(seed))
    at, radius, zone = reference.extreme_circle("minimum_zone", pts, least_squares_start(pts))
    ours = gaugepoint.fit_circle(*pts.T, "minimum_zone")
    assert abs(ours.form.total_mm - zone) < 1e-9
    assert abs(ours.radius_mm - radius) < 1e-8 and math.hypot(ours.x_mm - at[0], ours.y_mm - at[1]) < 1e-7


@pytest.mark.parametrize("seed", range(60))
def test_circumscribed_and_inscribed_against_every_pair_and_triple(seed):
    chance = random.Random(1000 + seed)
    pts = a_trace(chance)
    pts = pts[:: max(1, len(pts) // 30)]
    outer, inner = reference.enumerated(pts - pts.mean(axis=0))
    assert abs(gaugepoint.fit_circle(*pts.T, "minimum_circumscribed").radius_mm - outer) < 1e-9
    assert abs(gaugepoint.fit_circle(*pts.T, "maximum_inscribed").radius_mm - inner) < 1e-9


def a_bore(chance):
    """Points of an invented bore that leans, with taper, lobes and noise."""
    pts = []
    lean = chance.gauss(0, 0.001), chance.gauss(0, 0.001)
    taper, noise = chance.gauss(0, 0.0001), chance.choice([0.0005, 0.003])
    for z in range(0, 161, 40):
        n = chance.randrange(7, 15)
        for k in range(n):
            t = 2 * math.pi * (k + chance.uniform(-0.3, 0.3)) / n
            r = 43 + taper * z + 0.005 * math.cos(2 * t) + chance.gauss(0, noise)
            pts.append((lean[0] * z + r * math.cos(t), lean[1] * z + r * math.sin(t), z))
    return np.array(pts)


@pytest.mark.parametrize("kind", EXTREMES)
@pytest.mark.parametrize("seed", range(25))
def test_cylinders_against_a_linear_programme(seed, kind):
    pts = a_bore(random.Random(seed))
    least = gaugepoint.fit_cylinder(*pts.T)
    start = (least.x_mm - least.z_mm * least.slope_x, least.y_mm - least.z_mm * least.slope_y, least.slope_x, least.slope_y)
    e, _ = reference.distances(pts, reference.extreme(kind, lambda at: reference.distances(pts, at), start))
    ours = gaugepoint.fit_cylinder(*pts.T, kind)
    if kind == "minimum_zone":
        assert abs(ours.form.total_mm - (e.max() - e.min())) < 1e-9
    else:
        assert abs(ours.radius_mm - (e.max() if kind == "minimum_circumscribed" else e.min())) < 1e-9


@pytest.mark.parametrize("seed", range(40))
def test_planes_against_a_linear_programme(seed):
    chance = random.Random(seed)
    slopes = chance.gauss(0, 0.01), chance.gauss(0, 0.01)
    xy = [(chance.uniform(0, 400), chance.uniform(0, 200)) for _ in range(chance.randrange(4, 60))]
    pts = np.array([(x, y, 300 + slopes[0] * x + slopes[1] * y + chance.gauss(0, 0.02)) for x, y in xy])
    e, _ = reference.heights(pts, reference.extreme("minimum_zone", lambda at: reference.heights(pts, at), slopes))
    assert abs(gaugepoint.fit_plane(*pts.T, "minimum_zone").form.total_mm - (e.max() - e.min())) < 1e-9


@pytest.mark.parametrize("kind", EXTREMES)
def test_nothing_near_is_better(kind):
    """Whatever the solver: no place near the one found does better."""
    chance = random.Random(5)
    for seed in range(20):
        pts = a_trace(random.Random(2000 + seed))
        ours = gaugepoint.fit_circle(*pts.T, kind)
        best = reference.measure(kind, reference.distances(pts, (ours.x_mm, ours.y_mm))[0])
        for reach in (1e-2, 1e-4, 1e-6):
            for _ in range(50):
                other = (ours.x_mm + chance.uniform(-reach, reach), ours.y_mm + chance.uniform(-reach, reach))
                assert reference.measure(kind, reference.distances(pts, other)[0]) > best - 1e-11


def test_harmonics_against_a_fourier_transform():
    chance = random.Random(3)
    radii = [43 + chance.gauss(0, 0.01) for _ in range(360)]
    ours = gaugepoint.section_from_radii(list(range(360)), radii, 50)
    theirs = np.fft.rfft(radii) / 180
    assert abs(ours.mean_radius_mm - theirs[0].real / 2) < 1e-13
    for harmonic in ours.harmonics:
        assert abs(complex(harmonic.cos_mm, -harmonic.sin_mm) - theirs[harmonic.order]) < 1e-14, harmonic.order


def test_harmonics_against_another_least_squares():
    chance = random.Random(4)
    angles = sorted(chance.uniform(0, 360) for _ in range(60))
    radii = [43 + chance.gauss(0, 0.01) for _ in angles]
    ours = gaugepoint.section_from_radii(angles, radii, 6)
    waves = [np.ones(60)]
    for n in range(1, 7):
        waves += [np.cos(n * np.radians(angles)), np.sin(n * np.radians(angles))]
    theirs, squares, *_ = np.linalg.lstsq(np.column_stack(waves), radii, rcond=None)
    flat = [ours.mean_radius_mm, *ours.position_mm, *(v for h in ours.harmonics for v in (h.cos_mm, h.sin_mm))]
    assert np.abs(np.array(flat) - theirs).max() < 1e-12
    assert abs(ours.residual_mm - math.sqrt(squares[0] / 47)) < 1e-12


@pytest.mark.parametrize("kind", ("least_squares", *EXTREMES))
def test_the_place_and_the_turn_do_not_matter(kind):
    pts = a_trace(random.Random(77))
    turn = np.array([[0.6, -0.8], [0.8, 0.6]])
    ours, moved = (gaugepoint.fit_circle(*p.T, kind) for p in (pts, pts @ turn.T + [300.0, -200.0]))
    assert abs(ours.radius_mm - moved.radius_mm) < 1e-11 and abs(ours.form.total_mm - moved.form.total_mm) < 1e-11


def test_arrays_of_numpy_and_lists_are_the_same():
    pts = a_trace(random.Random(1))
    assert gaugepoint.fit_circle(*pts.T) == gaugepoint.fit_circle(*pts.T.tolist())


@pytest.mark.parametrize(
    "call, kind, field",
    [
        (lambda: gaugepoint.fit_circle([0, 1, 2], [0, 1]), "contradiction", "y_mm"),
        (lambda: gaugepoint.fit_circle([0, 1, 0], [0, 1, 1], "smallest"), "unknown_choice", "reference"),
        (lambda: gaugepoint.fit_circle_algebraic([0, 1, 0], [0, 1, 1], "kasa"), "unknown_choice", "method"),
        (lambda: gaugepoint.section_from_radii([0, 90], [43], 0), "contradiction", "radii_mm"),
        (lambda: gaugepoint.section_from_radii([], [], 0), "missing_field", "angles_deg"),
        (lambda: gaugepoint.bore_to_main_line([], []), "missing_field", "bore_mm"),
    ],
)
def test_what_only_python_can_pass(call, kind, field):
    with pytest.raises(gaugepoint.InputError) as refused:
        call()
    assert (refused.value.kind, refused.value.field) == (kind, field)


def test_strange_numbers():
    chance = random.Random(9)
    strange = [0.0, -0.0, 5e-324, 1e-200, 1e-9, 1.0, 43.0, -43.0, 4999.0, 1e9, 1e308, math.inf, math.nan]
    outcomes = set()
    for _ in range(4000):
        n = chance.randrange(0, 8)
        pool = strange[: chance.choice([9, 9, 9, 13])]
        x, y, z = ([chance.choice(pool) for _ in range(n)] for _ in range(3))
        kind = chance.choice(["least_squares", *EXTREMES])
        for fit, given in ((gaugepoint.fit_circle, (x, y)), (gaugepoint.fit_cylinder, (x, y, z)), (gaugepoint.fit_plane, (x, y, z))):
            try:
                result = fit(*given, kind)
                outcomes.add((fit.__name__, True))
                assert all(math.isfinite(v) for v in (result.x_mm, result.y_mm, result.form.total_mm))
            except gaugepoint.InputError:
                outcomes.add((fit.__name__, False))
    assert len(outcomes) == 6
