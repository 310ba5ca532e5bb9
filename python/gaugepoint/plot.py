"""Pictures of what the library found, drawn with matplotlib, which is loaded by the first picture and not by this module.

Every function takes a result as the package gives it and returns the axes that it drew on: those that were given as ``ax``, or new ones in a figure
of their own, ``ax.figure``, which is no part of ``pyplot``. Lengths on a shop scale are in um, every axis says its unit, and what is drawn is what the
result holds.

Colours are those of Okabe and Ito (Color Universal Design, 2008), chosen to be told apart with every common deficiency of colour vision; the map has
``cividis`` (Nunez, Anderson and Renslow, PLoS ONE 13, 2018, from memory), whose lightness rises evenly with and without colour. No picture rests on colour: lines
differ by dash and marker, areas are hatched, heights of a map are written on its lines, so that it can be read from a grey print.
``python/docs/pictures.md`` lists them.
"""

import textwrap
from collections.abc import Mapping, Sequence
from math import inf, nan, radians
from typing import TYPE_CHECKING, Any, NamedTuple

from gaugepoint import hot, report
from gaugepoint.error import at_door
from gaugepoint.fitting import FitReport
from gaugepoint.hot import HotFit
from gaugepoint.measurement import Component, Study
from gaugepoint.stack import Stack
from gaugepoint.uncertainty import Budget

if TYPE_CHECKING:
    from matplotlib.axes import Axes

__all__ = [
    "against_temperature",
    "bore_map",
    "budget_bars",
    "clearance_map",
    "gauge_study",
    "profile",
    "section",
    "stack_density",
]

# the look of every picture stands here
_BLUE, _VERMILION, _GREEN, _GREY = "#0072B2", "#D55E00", "#009E73", "#595959"
_STYLE: dict[Any, Any] = {
    "font.size": 10.0,
    "axes.titlesize": 11.0,
    "axes.grid": True,
    "axes.axisbelow": True,
    "axes.spines.top": False,
    "axes.spines.right": False,
    "grid.color": "#D9D9D9",
    "grid.linewidth": 0.6,
    "hatch.linewidth": 0.8,
    "legend.frameon": True,
    "legend.framealpha": 0.9,
    "lines.linewidth": 1.8,
    "lines.markersize": 5.0,
    "savefig.dpi": 150,
}
_COLD: Mapping[str, Any] = {"color": _BLUE, "linestyle": (0, (5, 2))}
_HOT: Mapping[str, Any] = {"color": _VERMILION, "linestyle": "-"}
_LOWER: Mapping[str, Any] = {"color": "black", "linestyle": (0, (7, 3)), "linewidth": 1.4}
_UPPER: Mapping[str, Any] = {"color": "black", "linestyle": "-", "linewidth": 1.4}
_SPAN: Mapping[str, Any] = {"color": _GREEN, "linestyle": "-", "linewidth": 1.4, "marker": "|", "markersize": 14.0}
_NOTE: Mapping[str, Any] = {"color": _GREY, "linestyle": (0, (1, 2)), "linewidth": 1.4}
_BOX: dict[str, Any] = {"boxstyle": "round,pad=0.25", "facecolor": "white", "edgecolor": _GREY, "alpha": 0.95}
_PLAIN: dict[str, Any] = {"boxstyle": "round,pad=0.1", "facecolor": "white", "edgecolor": "none", "alpha": 0.9}
_UM = 1000.0  # in one mm
_MOST_BARS = 12
_TURN = (0, 90, 180, 270)
_SIDES = ("0°\nmajor thrust", "90°\npin, front", "180°\nminor thrust", "270°\npin, rear")


def gauge_study(study: Study, unit: str, *, ax: "Axes | None" = None) -> "Axes":
    """Draw what a gauge study finds: every component as a standard deviation with its confidence interval, all on one scale.

    Parameters
    ----------
    study : Study
        What `gaugepoint.gauge_study` gives.
    unit : str
        Unit of the readings.
    ax : matplotlib.axes.Axes, optional
        Where it is drawn.

    Returns
    -------
    matplotlib.axes.Axes
        The axes.

    Raises
    ------
    ModuleNotFoundError
        Without matplotlib.

    Examples
    --------
    >>> import gaugepoint
    >>> from gaugepoint import plot
    >>> study = gaugepoint.gauge_study([[[1.0, 2.0], [1.1, 2.1]], [[1.0, 2.1], [1.2, 2.0]]])
    >>> plot.gauge_study(study, "mm").get_xlabel()
    'standard deviation (mm); bars are 95 % confidence intervals'
    """
    rows: list[tuple[str, Component]] = [
        ("repeatability:\none person, one part", study.repeatability),
        ("reproducibility:\nbetween people", study.reproducibility),
        ("gauge:\nboth together", study.gauge),
        ("parts:\nbetween parts", study.part),
    ]
    with _styled():
        ax = ax or _axes((7.2, 3.6))
        end = 1.1 * max(c.interval[1] if c.interval else c.deviation for _, c in rows) or 1.0
        for place, (_, component) in enumerate(rows):
            if component.interval:
                ax.plot(component.interval, [place, place], color=_BLUE, linewidth=5.0, alpha=0.45, solid_capstyle="butt")
                ax.plot(component.interval, [place, place], color=_BLUE, linestyle="none", marker="|", markersize=13.0)
            ax.plot([component.deviation], [place], color="black", marker="D", markersize=6.0, clip_on=False)
            told = f"{component.deviation:.3g} {unit}, {100 * component.of_total:.0f} % of the total"
            side = "left" if 2.0 * component.deviation < end else "right"
            ax.annotate(told, (component.deviation, place), (0, 9), textcoords="offset points", ha=side, va="bottom")
        ax.set_yticks(range(len(rows)), [name for name, _ in rows])
        ax.set_ylim(len(rows) - 0.5, -0.7)
        ax.set_xlim(0.0, end)
        bars = "bars are 95 % confidence intervals" if any(c.interval for _, c in rows) else "no intervals by this method"
        ax.set_xlabel(f"standard deviation ({unit}); {bars}")
        ax.grid(False, axis="y")
        many = "not known" if study.categories is None else str(int(study.categories))
        ax.set_title(f"Gauge study: distinct categories {many}", loc="left")
    return ax


def budget_bars(budget: Budget | report.MeasuredValue, *, ax: "Axes | None" = None) -> "Axes":
    """Draw a budget of uncertainty: a bar for what each source contributes, and one for all together.

    Parameters
    ----------
    budget : Budget or MeasuredValue
        What `gaugepoint.budget` gives, or a measured value of a report.
    ax : matplotlib.axes.Axes, optional
        Where it is drawn.

    Returns
    -------
    matplotlib.axes.Axes
        The axes. Beyond twelve sources the smallest are drawn as one bar that says how many they are.

    Raises
    ------
    ModuleNotFoundError
        Without matplotlib.

    Examples
    --------
    >>> from gaugepoint import plot
    >>> try:
    ...     plot.budget_bars(0.003)
    ... except TypeError as refused:
    ...     print(refused)
    budget: a Budget or a MeasuredValue is needed, not float
    """
    if isinstance(budget, Budget):
        lines = [(line.source, abs(line.contribution), line.share) for line in budget.contributions]
        whole, unit, title = budget.standard_uncertainty, budget.unit, budget.name
    elif isinstance(budget, report.MeasuredValue):
        lines = [(line.source, _UM * abs(line.contribution_mm), line.share) for line in budget.budget]
        whole, unit, title = _UM * budget.standard_uncertainty_mm, "um", f"{budget.value_mm:.4f} mm"
    else:
        raise TypeError(f"budget: a Budget or a MeasuredValue is needed, not {type(budget).__name__}")
    if len(lines) > _MOST_BARS:
        rest = lines[_MOST_BARS - 1 :]
        together = sum(size * size for _, size, _ in rest) ** 0.5
        lines = [*lines[: _MOST_BARS - 1], (f"{len(rest)} smaller sources", together, sum(share for *_, share in rest))]
    with _styled():
        ax = ax or _axes((7.6, 1.4 + 0.42 * (len(lines) + 1)))
        names = [textwrap.fill(name, 40) for name, *_ in lines]
        sizes = [size for _, size, _ in lines]
        ax.barh(range(len(lines)), sizes, height=0.62, color=_BLUE)
        ax.barh([len(lines)], [whole], height=0.62, facecolor="white", edgecolor="black", hatch="///")
        for place, (_, size, share) in enumerate(lines):
            ax.annotate(f"{100 * share:.1f} %", (size, place), (4, 0), textcoords="offset points", va="center")
        ax.annotate(f"{whole:.3g}" + (f" {unit}" if unit else ""), (whole, len(lines)), (4, 0), textcoords="offset points", va="center")
        ax.set_yticks(range(len(lines) + 1), [*names, "all together"])
        ax.set_ylim(len(lines) + 0.6, -0.6)
        ax.set_xlim(0.0, 1.18 * max([*sizes, whole]) or 1.0)
        ax.grid(False, axis="y")
        ax.set_xlabel(f"contribution to the standard uncertainty ({unit or 'unit of the result'})")
        ax.set_title(f"Budget: {title}; per cent of the variance", loc="left")
    return ax


def bore_map(bore: report.BoreReport, *, ax: "Axes | None" = None) -> "Axes":
    """Draw a bore as it was read: its size at 20 C over depth, a line for every axis, with expanded uncertainties and the limits it was judged by.

    Parameters
    ----------
    bore : BoreReport
        Bore of a cylinder of a report.
    ax : matplotlib.axes.Axes, optional
        Where it is drawn.

    Returns
    -------
    matplotlib.axes.Axes
        The axes; the deck is on top.

    Raises
    ------
    InputError
        When no place of the bore was read.
    ModuleNotFoundError
        Without matplotlib.

    Examples
    --------
    >>> import gaugepoint
    >>> from gaugepoint import plot
    >>> verdict = gaugepoint.report.Verdict(outcome="cannot be judged", reasons=())
    >>> try:
    ...     plot.bore_map(gaugepoint.report.BoreReport(places=(), decisions=(), findings=(), verdict=verdict))
    ... except gaugepoint.InputError as refused:
    ...     print(refused)
    bore: no place of it was read
    """
    if not bore.places:
        raise at_door("missing_field", "bore", "", "no place of it was read")
    markers = "osD^vPX*"
    axes = sorted({place.axis_deg for place in bore.places})
    with _styled():
        ax = ax or _axes((6.4, 5.4))
        for k, axis in enumerate(axes):
            places = sorted((p for p in bore.places if p.axis_deg == axis), key=lambda p: p.depth_mm)
            ax.errorbar(
                [p.size.value_mm for p in places],
                [p.depth_mm for p in places],
                xerr=[p.size.expanded_uncertainty_mm for p in places],
                label=f"axis {axis:g}°{ {0.0: ', thrust', 90.0: ', pin'}.get(axis, '') }",
                color=(_BLUE, _VERMILION, _GREEN, "black")[k % 4],
                linestyle=("-", (0, (5, 2)), (0, (1, 1)), (0, (5, 1, 1, 1)))[k % 4],
                marker=markers[k % len(markers)],
                capsize=3.0,
                elinewidth=1.0,
            )
        for decision in bore.decisions:
            if decision.of == "bore_size":
                for limit, name, style in ((decision.lower_mm, "lower", _LOWER), (decision.upper_mm, "upper", _UPPER)):
                    if limit is not None:
                        ax.axvline(limit, label=f"{name} limit {limit:g} mm", **style)
        ax.invert_yaxis()
        ax.ticklabel_format(axis="x", useOffset=False)
        ax.locator_params(axis="x", nbins=6)
        ax.set_xlabel("diameter at 20 °C (mm); bars are expanded uncertainties")
        ax.set_ylabel("depth from the deck (mm)")
        ax.set_title("Bore by depth and axis", loc="left")
        _legend_below(ax)
    return ax


def profile(picture: hot.Profile | report.ProfilePicture, *, ax: "Axes | None" = None) -> "Axes":
    """Draw the barrel of a surface, cold and running: its radii on both axes over height, less half the gauge diameter at 20 C.

    Parameters
    ----------
    picture : Profile or ProfilePicture
        What `gaugepoint.HotFit.profile` gives, or a profile of the pictures of a report.
    ax : matplotlib.axes.Axes, optional
        Where it is drawn.

    Returns
    -------
    matplotlib.axes.Axes
        The axes.

    Raises
    ------
    ModuleNotFoundError
        Without matplotlib.

    Examples
    --------
    >>> import gaugepoint
    >>> from gaugepoint import plot
    >>> flat = gaugepoint.hot.Profile((0.0, 50.0), (0.0, 0.0), (-0.1, -0.1), (0.1, 0.1), (0.05, 0.05))
    >>> plot.profile(flat).get_ylabel()
    'height above the skirt edge (mm)'
    """
    curves = (
        ("thrust axis, cold", picture.cold_thrust_mm, {**_COLD, "linewidth": 2.6}),
        ("thrust axis, running", picture.hot_thrust_mm, {**_HOT, "linewidth": 2.6}),
        ("pin axis, cold", picture.cold_pin_mm, {**_COLD, "linewidth": 1.4, "marker": "o"}),
        ("pin axis, running", picture.hot_pin_mm, {**_HOT, "linewidth": 1.4, "marker": "s"}),
    )
    with _styled():
        ax = ax or _axes((6.4, 5.4))
        for name, radii, style in curves:
            ax.plot(_um(radii), picture.heights_mm, label=name, markevery=max(1, len(radii) // 12), **style)
        ax.set_xlabel("radius less half the gauge diameter at 20 °C (um)")
        ax.set_ylabel("height above the skirt edge (mm)")
        surface = picture.surface if isinstance(picture, report.ProfilePicture) else "surface"
        ax.set_title(f"Profile of the {surface}", loc="left")
        _legend_below(ax)
    return ax


def section(picture: hot.SectionPicture | report.SectionPicture, *, ax: "Axes | None" = None) -> "Axes":
    """Draw a section of piston and bore, cold and running: what the radii differ by from one circle, magnified.

    Parameters
    ----------
    picture : SectionPicture
        What `gaugepoint.HotFit.section` gives, or a section of the pictures of a report.
    ax : matplotlib.axes.Axes, optional
        Where it is drawn; its projection is polar.

    Returns
    -------
    matplotlib.axes.Axes
        The axes: angle 0, the major thrust side, to the right, and 90, the front, on top.

    Raises
    ------
    TypeError
        When `ax` is not polar.
    ModuleNotFoundError
        Without matplotlib.

    Examples
    --------
    >>> import gaugepoint
    >>> from gaugepoint import plot
    >>> five = (43.0, 43.0, 43.0, 43.0, 43.0)
    >>> picture = gaugepoint.hot.SectionPicture((0.0, 90.0, 180.0, 270.0, 360.0), five, five, five, five)
    >>> plot.section(picture).name
    'polar'
    """
    curves = (
        ("piston, cold", picture.piston_cold_mm, {**_COLD, "linewidth": 1.4, "marker": "o"}),
        ("piston, running", picture.piston_hot_mm, {**_HOT, "linewidth": 1.4, "marker": "s"}),
        ("bore, cold", picture.bore_cold_mm, {**_COLD, "linewidth": 2.6}),
        ("bore, running", picture.bore_hot_mm, {**_HOT, "linewidth": 2.6}),
    )
    base = round(min(map(min, (radii for _, radii, _ in curves))), 2)
    with _styled():
        from matplotlib.ticker import MaxNLocator

        ax = ax or _axes((7.2, 6.6), projection="polar")
        if ax.name != "polar":
            raise TypeError("ax: polar axes are needed")
        angles = [radians(angle) for angle in picture.angles_deg]
        for name, radii, style in curves:
            ax.plot(angles, _um([r - base for r in radii]), label=name, markevery=max(1, len(angles) // 24), markersize=4.0, **style)
        low, high = ax.dataLim.intervaly
        span = (high - low) or 1.0
        # a hole in the middle, where a circle would have no room
        ax.set_ylim(low - 0.6 * span, high + 0.05 * span)
        ax.set_xticks([radians(angle) for angle in _TURN], _SIDES)
        for label, side in zip(ax.get_xticklabels(), ("left", "center", "right", "center"), strict=True):
            label.set(horizontalalignment=side)
        ticks = [tick for tick in MaxNLocator(4).tick_values(low, high) if low <= tick <= high]
        # numbers of circles are drawn last, or the lines would cross them
        ax.set_yticks(ticks, [""] * len(ticks))
        for tick in ticks:
            ax.text(radians(60.0), tick, f"{tick:g}", ha="center", va="center", bbox=_PLAIN, zorder=6)
        surface = f"{picture.surface} at {picture.height_mm:.1f} mm" if isinstance(picture, report.SectionPicture) else "Section"
        ax.set_title(f"{surface[:1].upper()}{surface[1:]}: radius less {base:.2f} mm, in um", pad=18)
        _legend_below(ax)
    return ax


def clearance_map(
    fit: FitReport | report.HotReport | HotFit, surface: int = 0, *, position: hot.Position | None = None, ax: "Axes | None" = None
) -> "Axes":
    """Draw the clearance on one side over a surface of the running piston, height against angle, with its smallest value marked.

    Parameters
    ----------
    fit : FitReport, HotReport or HotFit
        A report with pictures, or a fit.
    surface : int
        Index of the surface: 0 is the skirt.
    position : Crank, TopDeadCentre, GaugeDepth or Anywhere, optional
        Of a fit, where the piston stands; without, where its smallest clearance is. A report has the position that it was asked for.
    ax : matplotlib.axes.Axes, optional
        Where it is drawn.

    Returns
    -------
    matplotlib.axes.Axes
        The axes. The smallest clearance of a report is that of every crank angle: its mark says at which it is.

    Raises
    ------
    InputError
        When the report has no pictures or no such surface, or the position cannot be known.
    TypeError
        When it is something else, or a position is given with a report.
    ModuleNotFoundError
        Without matplotlib.

    Examples
    --------
    >>> from gaugepoint import plot
    >>> try:
    ...     plot.clearance_map("skirt")
    ... except TypeError as refused:
    ...     print(refused)
    fit: a FitReport, HotReport or HotFit is needed, not str
    """
    if isinstance(fit, HotFit):
        drawn = _map_of_fit(fit, surface, position)
    else:
        if position is not None:
            raise TypeError("position: it goes with a HotFit; a report has its own")
        drawn = _map_of_report(_hot(fit, "FitReport, HotReport or HotFit"), surface)
    angles, heights, clearance = drawn.angles_deg, drawn.heights_mm, drawn.clearance_um
    with _styled():
        from matplotlib.patheffects import withStroke

        ax = ax or _axes((7.6, 4.8))
        ax.set_facecolor("#D9D9D9")
        levels = _levels([c for row in clearance for c in row if c == c])
        filled = ax.contourf(angles, heights, clearance, levels=levels, cmap="cividis")
        # a dark edge keeps white lines legible where the map is bright
        edge: Any = [withStroke(linewidth=2.5, foreground="black")]
        lines = ax.contour(angles, heights, clearance, levels=levels[::3], colors="white", linewidths=1.0)
        lines.set_path_effects(edge)
        for text in ax.clabel(lines, fmt="%g", fontsize=10):
            text.set_path_effects(edge)
        label = "clearance on one side (um)"
        if levels[0] < 0.0 < levels[-1]:
            ax.contour(angles, heights, clearance, levels=[0.0], colors="white", linewidths=2.4, linestyles="dashed")
            label += "; dashed: none is left"
        ax.figure.colorbar(filled, ax=ax, label=label)
        _mark(ax, drawn)
        ax.set_xlim(0.0, 360.0)
        ax.set_xticks((*_TURN, 360), (*_SIDES, "360°"))
        ax.grid(False)
        gaps = any(c != c for row in clearance for c in row)
        ax.set_xlabel("angle around the piston" + ("; grey: no surface or no bore" if gaps else ""))
        ax.set_ylabel("height above the skirt edge (mm)")
        stands = "" if drawn.crank_deg is None else f" at crank angle {drawn.crank_deg:.1f}°"
        ax.set_title(f"Running clearance of the {drawn.surface}{stands}", loc="left")
    return ax


def against_temperature(fit: FitReport | report.HotReport, *, ax: "Axes | None" = None) -> "Axes":
    """Draw the smallest clearance of the skirt against temperature, piston and bore rising together, with the reference case and first contact.

    Parameters
    ----------
    fit : FitReport or HotReport
        A report with pictures.
    ax : matplotlib.axes.Axes, optional
        Where it is drawn.

    Returns
    -------
    matplotlib.axes.Axes
        The axes. Without contact it is said up to where none was found, and why no more was looked at.

    Raises
    ------
    InputError
        When the report has no pictures.
    TypeError
        When it is something else.
    ModuleNotFoundError
        Without matplotlib.

    Examples
    --------
    >>> from gaugepoint import plot
    >>> try:
    ...     plot.against_temperature(20.0)
    ... except TypeError as refused:
    ...     print(refused)
    fit: a FitReport or HotReport is needed, not float
    """
    found = _hot(fit, "FitReport or HotReport")
    picture = _pictures(found).against_temperature
    with _styled():
        ax = ax or _axes((7.6, 5.4))
        ax.plot(picture.thrust_c, _um(picture.clearance_mm), label="this piston", marker="o", **_HOT)
        if picture.reference_mm:
            ax.plot(picture.thrust_c, _um(picture.reference_mm), label="reference: the original at its least clearance", marker="s", **_COLD)
        ax.axvline(found.gauge_point.thrust_c, label=f"as stated: {found.gauge_point.thrust_c:.1f} °C", **_NOTE)
        for onset in found.onset:
            if onset.scenario == "piston_and_bore":
                _onset(ax, onset)
        ax.set_xlabel("temperature of the thrust side at the gauge point (°C)")
        ax.set_ylabel("smallest clearance of the skirt, on one side (um)")
        ax.set_title("Clearance against temperature", loc="left")
        _legend_below(ax)
    return ax


def stack_density(
    stack: Stack | report.StackReport, lower: float | None = None, upper: float | None = None, *, unit: str | None = None, ax: "Axes | None" = None
) -> "Axes":
    """Draw the density of a linear stack with its limits and the parts per million beyond each.

    Parameters
    ----------
    stack : Stack or StackReport
        A stack, or a report for which a curve was asked.
    lower, upper : float, optional
        Limits of a `Stack`; a report has its own.
    unit : str, optional
        Unit of a `Stack`; a report has its own.
    ax : matplotlib.axes.Axes, optional
        Where it is drawn.

    Returns
    -------
    matplotlib.axes.Axes
        The axes.

    Raises
    ------
    InputError
        When a limit is refused, or the report has no curve.
    TypeError
        When it is something else, or limits or a unit are given with a report.
    ModuleNotFoundError
        Without matplotlib.

    Examples
    --------
    >>> import gaugepoint
    >>> from gaugepoint import Contributor, Stack, Variation, plot
    >>> gap = Stack([Contributor("gap", 0.5, -0.05, 0.05, Variation.normal(0.015))])
    >>> plot.stack_density(gap, 0.46, 0.54, unit="mm").get_xlabel()
    'size (mm)'
    """
    if isinstance(stack, Stack):
        drawn = _density_of_stack(stack, lower, upper, unit)
    elif isinstance(stack, report.StackReport):
        if (lower, upper, unit) != (None, None, None):
            raise TypeError("lower, upper, unit: they go with a Stack; a report has its own")
        drawn = _density_of_report(stack)
    else:
        raise TypeError(f"stack: a Stack or a StackReport is needed, not {type(stack).__name__}")
    sizes, densities, unit, worst = drawn.sizes, drawn.densities, drawn.unit, drawn.worst_case
    with _styled():
        from numpy import interp

        ax = ax or _axes((7.6, 4.8))
        ax.plot(sizes, densities, color=_BLUE, label="density")
        ax.axvline(drawn.mean, label=f"mean {drawn.mean:.4g}", **_NOTE)
        for (limit, share), side, word in ((drawn.lower, -1.0, "below"), (drawn.upper, 1.0, "above")):
            if limit is None:
                continue
            tail = [x for x in sizes if side * (x - limit) > 0.0]
            tail = [limit, *tail] if side > 0.0 else [*tail, limit]
            ax.fill_between(tail, interp(tail, sizes, densities), facecolor="none", edgecolor=_VERMILION, hatch="////", linewidth=0.0)
            told = f"{'lower' if side < 0 else 'upper'} limit {limit:g}" + ("" if share is None else f": {1e6 * share:.4g} ppm {word}")
            ax.axvline(limit, label=told, **(_LOWER if side < 0 else _UPPER))
        ax.plot(worst, [0.0, 0.0], label=f"worst case {worst[0]:.4g} to {worst[1]:.4g}", clip_on=False, zorder=5, **_SPAN)
        ax.set_ylim(bottom=0.0)
        ax.set_xlabel(f"size ({unit})" if unit else "size")
        ax.set_ylabel(f"density (1/{unit})" if unit else "density")
        ax.set_title(drawn.title[:1].upper() + drawn.title[1:], loc="left")
        _legend_below(ax)
    return ax


class _Map(NamedTuple):
    surface: str
    crank_deg: float | None
    angles_deg: Sequence[float]
    heights_mm: Sequence[float]
    clearance_um: Sequence[Sequence[float]]
    smallest_mm: float
    place: hot.Place | report.PlaceReport


def _mark(ax: "Axes", drawn: _Map) -> None:
    """The smallest clearance, with what it is and where; the text stands toward the middle of the map."""
    place, crank = drawn.place, drawn.crank_deg
    ax.plot([place.angle_deg], [place.height_mm], marker="X", markersize=12.0, color=_VERMILION, markeredgecolor="white", clip_on=False, zorder=5)
    elsewhere = place.crank_deg is not None and crank is not None and abs(place.crank_deg - crank) > 0.05
    where = f"\nat crank angle {place.crank_deg:.1f}°" if elsewhere else ""
    left, low = place.angle_deg <= 180.0, 2.0 * place.height_mm < drawn.heights_mm[0] + drawn.heights_mm[-1]
    ax.annotate(
        f"smallest: {_UM * drawn.smallest_mm:.1f} um\n{place.angle_deg:.1f}°, {place.height_mm:.2f} mm{where}",
        (place.angle_deg, place.height_mm),
        (14 if left else -14, 12 if low else -12),
        textcoords="offset points",
        ha="left" if left else "right",
        va="bottom" if low else "top",
        bbox=_BOX,
        zorder=6,
    )


def _map_of_fit(fit: HotFit, surface: int, position: hot.Position | None) -> _Map:
    smallest = fit.smallest(surface, position)
    place = smallest.place
    if position is None:
        position = hot.Anywhere() if place.crank_deg is None else hot.Crank(place.crank_deg)
    crank = position.crank_deg if isinstance(position, hot.Crank) else None
    angles = [5.0 * k for k in range(73)]
    heights = fit.profile(surface, 49).heights_mm
    name = "skirt" if surface == 0 else f"land {surface}"
    return _Map(name, crank, angles, heights, (_UM * fit.map(angles, heights, position)).tolist(), smallest.clearance_mm, place)


def _map_of_report(found: report.HotReport, surface: int) -> _Map:
    pictures = _pictures(found)
    if not 0 <= surface < len(found.surfaces):
        raise at_door("out_of_range", "surface", str(surface), f"the report has {len(found.surfaces)}")
    of = found.surfaces[surface]
    picture = next(m for m in pictures.maps if m.surface == of.name)
    clearance = [[nan if c is None else _UM * c for c in row] for row in picture.clearance_mm]
    return _Map(of.name, picture.crank_deg, picture.angles_deg, picture.heights_mm, clearance, of.smallest.value_mm, of.place)


def _levels(clearance_um: Sequence[float]) -> Sequence[float]:
    """Steps of a map. It spans 1 um at least, or it would show the last digits of a clearance that is the same everywhere."""
    from matplotlib.ticker import MaxNLocator

    low, high = min(clearance_um, default=0.0), max(clearance_um, default=0.0)
    wider = max(0.0, (1.0 - (high - low)) / 2.0)
    levels: Sequence[float] = MaxNLocator(14).tick_values(low - wider, high + wider)
    return levels


class _Density(NamedTuple):
    sizes: Sequence[float]
    densities: Sequence[float]
    unit: str | None
    title: str
    mean: float
    worst_case: tuple[float, float]
    lower: tuple[float | None, float | None]
    """Limit and probability beyond it."""
    upper: tuple[float | None, float | None]
    """The same of the other side."""


def _density_of_stack(stack: Stack, lower: float | None, upper: float | None, unit: str | None) -> _Density:
    curve, forms = stack.curve(401), stack.forms
    worst = forms.worst_case.lower, forms.worst_case.upper
    tail = None
    if lower is not None or upper is not None:
        tail = stack.outside(-inf if lower is None else lower, inf if upper is None else upper)
    below, above = (tail.below, tail.above) if tail else (None, None)
    return _Density(curve.sizes.tolist(), curve.densities.tolist(), unit, "stack", forms.mean, worst, (lower, below), (upper, above))


def _density_of_report(stack: report.StackReport) -> _Density:
    if stack.curve is None:
        raise at_door("missing_field", "stack", "", "the report has no curve: ask for it in the document")
    lower, upper = (stack.limits.lower, stack.limits.upper) if stack.limits else (None, None)
    below, above = (stack.exact.below, stack.exact.above) if stack.exact else (None, None)
    worst = stack.worst_case.lower, stack.worst_case.upper
    curve = stack.curve
    return _Density(curve.sizes, curve.densities, stack.unit, stack.name, stack.mean, worst, (lower, below), (upper, above))


def _hot(fit: FitReport | report.HotReport, needed: str) -> report.HotReport:
    if isinstance(fit, FitReport):
        return fit.hot
    if isinstance(fit, report.HotReport):
        return fit
    raise TypeError(f"fit: a {needed} is needed, not {type(fit).__name__}")


def _pictures(found: report.HotReport) -> report.PicturesReport:
    if found.pictures is None:
        raise at_door("missing_field", "fit", "", "the report has no pictures: ask for them in the document")
    return found.pictures


def _onset(ax: "Axes", onset: report.OnsetReport) -> None:
    """First contact on the way up, or up to where there is none."""
    at, touching = onset.thrust_c, _UM * onset.touching_at_mm
    if onset.touching_at_mm != 0.0:
        ax.axhline(touching, label=f"counts as contact: {touching:g} um", **_LOWER)
    if onset.outcome == "no_contact":
        why = textwrap.fill(f"no contact up to {at:.1f} °C: {onset.stopped_by}", 34)
        ax.axvline(at, **_UPPER)
        ax.annotate(why, (at, 0.97), (-8, 0), xycoords=("data", "axes fraction"), textcoords="offset points", ha="right", va="top", bbox=_BOX)
        return
    within = 2.0 * (onset.standard_uncertainty_k or 0.0)
    told = f"first contact: {at:.1f} °C, within {within:.1f} K (k = 2)"
    ax.errorbar([at], [touching], xerr=[within], marker="X", markersize=11.0, color="black", capsize=4.0, linestyle="none", zorder=5, label=told)


def _um(lengths_mm: Sequence[float]) -> list[float]:
    return [_UM * length for length in lengths_mm]


def _axes(size: tuple[float, float], **options: Any) -> "Axes":
    from matplotlib.figure import Figure

    axes: Axes = Figure(figsize=size, layout="constrained").add_subplot(**options)
    return axes


def _legend_below(ax: "Axes") -> None:
    ax.legend(loc="upper center", bbox_to_anchor=(0.5, -0.15), ncols=2)


def _styled() -> Any:
    try:
        from matplotlib import rc_context
    except ModuleNotFoundError as missing:
        raise ModuleNotFoundError("pictures need matplotlib: pip install gaugepoint[plot]", name=missing.name) from missing
    return rc_context(_STYLE)
