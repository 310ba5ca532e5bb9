"""Pictures: what is drawn is what the results hold, with its unit; nothing is cut off, tiny, or told by colour alone."""

import builtins
import dataclasses
import json
import subprocess
import sys

import gaugepoint
import matplotlib
import numpy as np
import pytest
from gaugepoint import growth, hot, plot, shape
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.colors import to_hex
from matplotlib.figure import Figure
from matplotlib.text import Text
from vectors import REPOSITORY

EXAMPLES = REPOSITORY / "core" / "examples"
UM = 1000.0
READINGS = [
    [[22.001, 21.994, 22.008, 21.998, 22.012], [22.002, 21.995, 22.007, 21.998, 22.013]],
    [[22.000, 21.995, 22.007, 21.997, 22.012], [22.001, 21.994, 22.008, 21.999, 22.011]],
    [[21.999, 21.992, 22.006, 21.995, 22.009], [21.998, 21.992, 22.004, 21.996, 22.010]],
]


@pytest.fixture(scope="module")
def report():
    return gaugepoint.fit(EXAMPLES / "sawmill_fit.json")


@pytest.fixture(scope="module")
def touching():
    """The same fit with a rigid skirt, which touches on the way up."""
    document = json.loads((EXAMPLES / "sawmill_fit.json").read_text(encoding="utf-8"))
    del document["elastic"]
    return gaugepoint.fit(document)


@pytest.fixture(scope="module")
def bore():
    return gaugepoint.assess(EXAMPLES / "pump_six.json").cylinders[0].bore


@pytest.fixture(scope="module")
def bench():
    return gaugepoint.assess(EXAMPLES / "pump_six.json").cylinders[0].clearance.bench


def fit(barrel=((0.0, -0.04), (20.0, 0.0), (50.0, -0.06)), ovality=0.3, pin_c=130.0):
    """An invented fit."""
    law = growth.MeanCoefficient(20.0, 20.5e-6, -50.0, 400.0)
    iron = growth.MeanCoefficient(20.0, 11.4e-6, -50.0, 400.0)
    skirt = shape.SymmetricSurface(0.0, 50.0, barrel, [(0.0, ovality), (50.0, ovality)])
    piston, warm = shape.Piston(20.0, [skirt]), hot.PistonField([(0.0, 120.0, pin_c)])
    return gaugepoint.HotFit(86.0, piston, [hot.SurfaceGrowth(law)], warm, shape.Bore(86.05), iron, hot.BoreField([(0.0, 100.0)]))


def stack():
    height = gaugepoint.Contributor("block height", 227.0, -0.05, 0.05, gaugepoint.Variation.normal(0.015))
    rod = gaugepoint.Contributor("rod and piston", 217.0, -0.04, 0.04, gaugepoint.Variation.rectangular(0.04), coefficient=-1.0)
    return gaugepoint.Stack([height, rod])


@pytest.fixture(
    params=["study", "study by ranges", "budget", "budget of a value", "bore", "profile", "profile of a fit", "section", "section of a fit", "map", "map of a land", "map of a fit"]
    + ["temperature", "temperature with contact", "stack", "stack without limits", "stack of a report"]
)
def picture(request, report, touching, bore, bench):
    return {
        "study": lambda **o: plot.gauge_study(gaugepoint.gauge_study(READINGS), "mm", **o),
        "study by ranges": lambda **o: plot.gauge_study(gaugepoint.gauge_study(READINGS, "ranges"), "mm", **o),
        "budget": lambda **o: plot.budget_bars(gaugepoint.budget(REPOSITORY / "tests/vectors/budgets/gum_h1.json"), **o),
        "budget of a value": lambda **o: plot.budget_bars(bench, **o),
        "bore": lambda **o: plot.bore_map(bore, **o),
        "profile": lambda **o: plot.profile(report.hot.pictures.profile[0], **o),
        "profile of a fit": lambda **o: plot.profile(fit().profile(), **o),
        "section": lambda **o: plot.section(report.hot.pictures.sections[0], **o),
        "section of a fit": lambda **o: plot.section(fit().section(20.0), **o),
        "map": lambda **o: plot.clearance_map(report, **o),
        "map of a land": lambda **o: plot.clearance_map(report.hot, 2, **o),
        "map of a fit": lambda **o: plot.clearance_map(fit(), **o),
        "temperature": lambda **o: plot.against_temperature(report, **o),
        "temperature with contact": lambda **o: plot.against_temperature(touching, **o),
        "stack": lambda **o: plot.stack_density(stack(), 9.93, 10.06, unit="mm", **o),
        "stack without limits": lambda **o: plot.stack_density(stack(), **o),
        "stack of a report": lambda **o: plot.stack_density(gaugepoint.evaluate_stack(EXAMPLES / "deck_stack.json"), **o),
    }[request.param]


def texts(figure):
    return [t for t in figure.findobj(Text) if t.get_visible() and t.get_text().strip()]


def test_legible(picture):
    """As it is drawn: no text is smaller than 9 points or beyond the edge, labels of an axis stand apart, and the title is free."""
    figure = picture().figure
    canvas = FigureCanvasAgg(figure)
    canvas.draw()
    renderer = canvas.get_renderer()
    for text in texts(figure):
        assert text.get_fontsize() >= 9.0, text
        box = text.get_window_extent(renderer)
        # ticks beyond the limits of an axis are kept and not drawn
        inside = figure.bbox.padded(1.0)
        assert inside.contains(box.x0, box.y0) and inside.contains(box.x1, box.y1) or text in hidden(figure), text
    for ax in figure.axes:
        title = ax.title if ax.get_title() else ax._left_title
        for other in [*ax.texts, *(ax.get_legend().get_texts() if ax.get_legend() else [])]:
            assert not title.get_window_extent(renderer).overlaps(other.get_window_extent(renderer)), other
        for axis in (ax.xaxis, ax.yaxis):
            boxes = [t.get_window_extent(renderer) for t in axis.get_ticklabels() if t not in hidden(figure) and t.get_text()]
            assert not any(a.overlaps(b) for k, a in enumerate(boxes) for b in boxes[:k])


def hidden(figure):
    found = set()
    for ax in figure.axes:
        for axis, (low, high) in ((ax.xaxis, sorted(ax.get_xlim())), (ax.yaxis, sorted(ax.get_ylim()))):
            for tick in [*axis.get_major_ticks(), *axis.get_minor_ticks()]:
                if not low <= tick.get_loc() <= high:
                    found |= {tick.label1, tick.label2}
    return found


def test_not_by_colour_alone(picture):
    handles, labels = picture().get_legend_handles_labels()
    looks = []
    for handle in handles:
        line = handle[0] if hasattr(handle, "has_xerr") else handle
        looks.append((str(line.get_linestyle()), str(getattr(line, "_dash_pattern", "")), line.get_marker(), line.get_linewidth()))
    assert len(set(looks)) == len(looks), list(zip(labels, looks, strict=True))


def test_colours_are_those_of_the_palette(picture):
    # Okabe and Ito, as matplotlib has it; black and grey beside them
    palette = {to_hex(colour) for colour in matplotlib.colormaps["okabe_ito"].colors} | {"#595959"}
    ax = picture()
    drawn = [to_hex(artist.get_color()) for artist in ax.get_lines()] + [to_hex(bar.get_facecolor()) for bar in ax.patches]
    assert drawn and set(drawn) <= palette | {"#ffffff"}


def test_nothing_outside_the_picture_changes(picture):
    before = dict(matplotlib.rcParams)
    ax = picture()
    assert dict(matplotlib.rcParams) == before and isinstance(ax.figure, Figure)
    given = Figure().add_subplot(projection=ax.name)
    assert picture(ax=given) is given and given.get_title(loc="left") + given.get_title()


def test_units_are_on_the_axes(picture):
    ax = picture()
    said = [ax.get_xlabel(), ax.get_ylabel()] if ax.name != "polar" else [ax.get_title()]
    assert any(unit in text for text in said for unit in ("mm", "um", "nm", "size"))
    assert all("unit" not in text for text in said)


def line(ax, label):
    (found,) = [artist for artist in ax.get_lines() if artist.get_label() == label]
    return found


def mark(ax):
    (found,) = [artist for artist in ax.get_lines() if artist.get_marker() == "X"]
    return found.get_xdata()[0], found.get_ydata()[0]


def test_section(report):
    picture = report.hot.pictures.sections[0]
    ax = plot.section(picture)
    base = float(ax.get_title().split(" less ")[1].split(" mm")[0])
    for label, radii in [
        ("piston, cold", picture.piston_cold_mm),
        ("piston, running", picture.piston_hot_mm),
        ("bore, cold", picture.bore_cold_mm),
        ("bore, running", picture.bore_hot_mm),
    ]:
        drawn = line(ax, label)
        assert np.allclose(np.rad2deg(drawn.get_xdata()), picture.angles_deg, atol=1e-9)
        assert np.allclose(np.array(drawn.get_ydata()) / UM + base, radii, rtol=0, atol=1e-9)
    assert "Skirt at 25.0 mm" in ax.get_title() and "um" in ax.get_title()
    assert ax.get_theta_offset() == 0.0 and ax.get_theta_direction() == 1
    with pytest.raises(TypeError, match="polar"):
        plot.section(picture, ax=Figure().add_subplot())


def test_profile(report):
    picture = report.hot.pictures.profile[1]
    ax = plot.profile(picture)
    for label, radii in [
        ("thrust axis, cold", picture.cold_thrust_mm),
        ("thrust axis, running", picture.hot_thrust_mm),
        ("pin axis, cold", picture.cold_pin_mm),
        ("pin axis, running", picture.hot_pin_mm),
    ]:
        assert np.array_equal(line(ax, label).get_xdata(), np.array(radii) * UM) and tuple(line(ax, label).get_ydata()) == picture.heights_mm
    assert picture.surface in ax.get_title(loc="left") and "(um)" in ax.get_xlabel() and "(mm)" in ax.get_ylabel()


@pytest.mark.parametrize("surface", [0, 1, 2])
def test_map_of_a_report(report, surface):
    found = report.hot.surfaces[surface]
    ax = plot.clearance_map(report, surface)
    assert mark(ax) == (found.place.angle_deg, found.place.height_mm)
    told = ax.texts[-1].get_text()
    assert f"smallest: {UM * found.smallest.value_mm:.1f} um" in told and f"crank angle {found.place.crank_deg:.1f}" in told
    assert found.name in ax.get_title(loc="left")
    picture = next(m for m in report.hot.pictures.maps if m.surface == found.name)
    numbers = [c * UM for row in picture.clearance_mm for c in row if c is not None]
    levels = ax.collections[0].levels
    assert levels[0] <= min(numbers) and levels[-1] >= max(numbers)
    assert ("grey" in ax.get_xlabel()) is any(c is None for row in picture.clearance_mm for c in row)
    assert ax.figure.axes[1].get_ylabel().startswith("clearance on one side (um)")


def test_map_of_a_fit():
    of = fit()
    ax, smallest = plot.clearance_map(of), of.smallest()
    assert mark(ax) == (smallest.place.angle_deg, smallest.place.height_mm)
    assert f"smallest: {UM * smallest.clearance_mm:.1f} um" in ax.texts[-1].get_text()
    # the smallest of a grid is above the smallest of all, and by no more than the grid is coarse
    grid = of.map([5.0 * k for k in range(73)], of.profile(0, 49).heights_mm)
    assert 0.0 <= grid.min() - smallest.clearance_mm < 1e-3
    assert ax.get_ylim() == (0.0, 50.0) and ax.get_xlim() == (0.0, 360.0)
    assert mark(plot.clearance_map(of, position=hot.Anywhere())) == mark(ax)


def test_map_of_what_is_the_same_everywhere():
    of = fit([(0.0, 0.0), (50.0, 0.0)], 0.0, 120.0)
    ax = plot.clearance_map(of)
    levels = ax.collections[0].levels
    # 1 um and not the last digits of the arithmetic; by hand: (86.05 (1 + 11.4e-6 80) - 86 (1 + 20.5e-6 100)) / 2 = -0.02391 mm
    assert levels[0] < -23.91 < levels[-1] and 1.0 <= levels[-1] - levels[0] < 1.5
    assert "smallest: -23.9 um" in ax.texts[-1].get_text()


def test_a_budget_without_sources():
    none = gaugepoint.report.MeasuredValue(value_mm=1.0, standard_uncertainty_mm=0.0, expanded_uncertainty_mm=0.0, coverage_factor=2.0, budget=())
    assert [bar.get_width() for bar in plot.budget_bars(none).patches] == [0.0]


def test_against_temperature(report):
    picture = report.hot.pictures.against_temperature
    ax = plot.against_temperature(report)
    for label, lengths in [("this piston", picture.clearance_mm), ("reference: the original at its least clearance", picture.reference_mm)]:
        drawn = line(ax, label)
        assert tuple(drawn.get_xdata()) == picture.thrust_c and np.array_equal(drawn.get_ydata(), np.array(lengths) * UM)
    assert line(ax, "as stated: 112.0 °C").get_xdata()[0] == report.hot.gauge_point.thrust_c
    assert line(ax, "counts as contact: -30 um").get_ydata()[0] == UM * -0.03
    (onset,) = [o for o in report.hot.onset if o.scenario == "piston_and_bore"]
    told = ax.texts[0].get_text().replace("\n", " ")
    assert onset.outcome == "no_contact" and f"no contact up to {onset.thrust_c:.1f} °C: {onset.stopped_by}" == told
    assert "°C" in ax.get_xlabel() and "um" in ax.get_ylabel()


def test_first_contact(touching):
    (onset,) = [o for o in touching.hot.onset if o.scenario == "piston_and_bore"]
    assert onset.outcome == "touches"
    ax = plot.against_temperature(touching)
    x, y = mark(ax)
    assert (x, y) == (onset.thrust_c, UM * onset.touching_at_mm)
    # the curve goes through it
    assert abs(np.interp(x, *line(ax, "this piston").get_data()) - y) < 0.1
    assert any(f"first contact: {x:.1f} °C, within {2 * onset.standard_uncertainty_k:.1f} K" in label for label in ax.get_legend_handles_labels()[1])


def test_bore(bore):
    ax = plot.bore_map(bore)
    for axis, name in ((0.0, "axis 0°, thrust"), (90.0, "axis 90°, pin")):
        drawn = next(c for c in ax.containers if c.get_label() == name)
        places = sorted((p for p in bore.places if p.axis_deg == axis), key=lambda p: p.depth_mm)
        assert list(drawn[0].get_xdata()) == [p.size.value_mm for p in places]
        assert list(drawn[0].get_ydata()) == [p.depth_mm for p in places]
        for segment, place in zip(drawn[2][0].get_segments(), places, strict=True):
            ends = place.size.value_mm - place.size.expanded_uncertainty_mm, place.size.value_mm + place.size.expanded_uncertainty_mm
            assert np.allclose(segment[:, 0], ends, rtol=0, atol=1e-12)
    assert line(ax, "lower limit 96 mm").get_xdata()[0] == 96.0 and line(ax, "upper limit 96.04 mm").get_xdata()[0] == 96.04
    assert ax.yaxis_inverted() and "depth" in ax.get_ylabel() and "mm" in ax.get_xlabel()


def test_budget(bench):
    budget = gaugepoint.budget(REPOSITORY / "tests/vectors/budgets/gum_h1.json")
    ax = plot.budget_bars(budget)
    # JCGM 100:2008, H.1: the combined standard uncertainty is 32 nm, and the nine sources and all together are bars
    widths = [bar.get_width() for bar in ax.patches]
    assert widths == [*(abs(c.contribution) for c in budget.contributions), budget.standard_uncertainty]
    assert round(widths[-1]) == 32 and "(nm)" in ax.get_xlabel()
    assert [t.get_text().replace("\n", " ") for t in ax.get_yticklabels()] == [*(c.source for c in budget.contributions), "all together"]
    assert [t.get_text() for t in ax.texts][:-1] == [f"{100 * c.share:.1f} %" for c in budget.contributions]
    ax = plot.budget_bars(bench)
    widths = [bar.get_width() for bar in ax.patches]
    assert len(bench.budget) > 12 and len(widths) == 13
    assert ax.get_yticklabels()[11].get_text() == f"{len(bench.budget) - 11} smaller sources"
    # independent sources: the squares of all bars but the last are that of the last
    assert np.isclose(sum(w * w for w in widths[:-1]), widths[-1] ** 2) and np.isclose(widths[-1], UM * bench.standard_uncertainty_mm)


def test_stack():
    of = stack()
    ax, curve, tail = plot.stack_density(of, 9.93, 10.06, unit="mm"), of.curve(401), of.outside(9.93, 10.06)
    drawn = line(ax, "density")
    assert np.array_equal(drawn.get_xdata(), curve.sizes) and np.array_equal(drawn.get_ydata(), curve.densities)
    # what is drawn has the area of a probability
    assert abs(np.trapezoid(drawn.get_ydata(), drawn.get_xdata()) - 1.0) < 1e-4
    assert line(ax, f"lower limit 9.93: {1e6 * tail.below:.4g} ppm below").get_xdata()[0] == 9.93
    assert line(ax, f"upper limit 10.06: {1e6 * tail.above:.4g} ppm above").get_xdata()[0] == 10.06
    assert list(line(ax, "worst case 9.91 to 10.09").get_xdata()) == [of.worst_case.lower, of.worst_case.upper]
    below, above = (c.get_paths()[0].vertices[:, 0] for c in ax.collections)
    assert below.max() == 9.93 and above.min() == 10.06 and all(c.get_hatch() for c in ax.collections)
    assert ax.get_xlabel() == "size (mm)" and ax.get_ylabel() == "density (1/mm)"


def test_stack_of_a_report():
    of = gaugepoint.evaluate_stack(EXAMPLES / "deck_stack.json")
    ax = plot.stack_density(of)
    assert tuple(line(ax, "density").get_xdata()) == of.curve.sizes
    labels = ax.get_legend_handles_labels()[1]
    assert f"lower limit 0.12: {1e6 * of.exact.below:.4g} ppm below" in labels and f"upper limit 0.28: {1e6 * of.exact.above:.4g} ppm above" in labels


@pytest.mark.parametrize("method", ["variance", "ranges"])
def test_study(method):
    study = gaugepoint.gauge_study(READINGS, method)
    ax = plot.gauge_study(study, "mm")
    components = [study.repeatability, study.reproducibility, study.gauge, study.part]
    points = [artist for artist in ax.get_lines() if artist.get_marker() == "D"]
    assert [(p.get_xdata()[0], p.get_ydata()[0]) for p in points] == [(c.deviation, k) for k, c in enumerate(components)]
    bars = [tuple(artist.get_xdata()) for artist in ax.get_lines() if artist.get_marker() == "|"]
    assert bars == [c.interval for c in components if c.interval]
    assert ("no intervals" in ax.get_xlabel()) is (method == "ranges")
    assert [label.get_text().partition(":")[0] for label in ax.get_yticklabels()] == ["repeatability", "reproducibility", "gauge", "parts"]


def test_refused(report, bore):
    bare = dataclasses.replace(report.hot, pictures=None)
    for call, field in [
        (lambda: plot.clearance_map(bare), "fit"),
        (lambda: plot.against_temperature(bare), "fit"),
        (lambda: plot.clearance_map(report, 3), "surface"),
        (lambda: plot.clearance_map(report, -1), "surface"),
        (lambda: plot.bore_map(dataclasses.replace(bore, places=())), "bore"),
        (lambda: plot.stack_density(dataclasses.replace(gaugepoint.evaluate_stack(EXAMPLES / "deck_stack.json"), curve=None)), "stack"),
        (lambda: plot.stack_density(stack(), 10.0, 9.0), "upper"),
    ]:
        with pytest.raises(gaugepoint.InputError) as refused:
            call()
        assert refused.value.field == field
    for call in (
        lambda: plot.clearance_map(report, position=hot.Anywhere()),
        lambda: plot.stack_density(gaugepoint.evaluate_stack(EXAMPLES / "deck_stack.json"), unit="mm"),
        lambda: plot.stack_density(1.0),
        lambda: plot.budget_bars(1.0),
        lambda: plot.clearance_map(fit().bore),
        lambda: plot.against_temperature(fit()),
    ):
        with pytest.raises(TypeError):
            call()


def test_without_matplotlib(monkeypatch):
    real = builtins.__import__

    def without(name, *rest):
        if name.partition(".")[0] == "matplotlib":
            raise ModuleNotFoundError("No module named 'matplotlib'", name="matplotlib")
        return real(name, *rest)

    monkeypatch.setattr(builtins, "__import__", without)
    with pytest.raises(ModuleNotFoundError, match=r"gaugepoint\[plot\]"):
        plot.stack_density(stack())


def test_a_picture_brings_no_global_state():
    check = "import sys, gaugepoint, gaugepoint.plot as p; before = 'matplotlib' in sys.modules; "
    check += "s = gaugepoint.gauge_study([[[1.0, 2.0], [1.1, 2.1]], [[1.0, 2.1], [1.2, 2.0]]]); p.gauge_study(s, 'mm'); print(before, 'matplotlib.pyplot' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", check], capture_output=True, text=True, check=True).stdout.split() == ["False", "False"]
