"""Hot fits: the report of the library field for field, the independent evaluation, refusals."""

import dataclasses
import json
import os
import pickle
import sys
from pathlib import Path

import gaugepoint
import pytest
from gaugepoint import fitting
from vectors import FITS, HOT_FIT, REPOSITORY

sys.path.insert(0, str(REPOSITORY / "tests" / "reference"))
import fit as reference

DOCUMENT = json.loads(HOT_FIT.read_text(encoding="utf-8"))
REPORT = gaugepoint.fit(HOT_FIT)
every_fit = pytest.mark.parametrize("path", FITS, ids=lambda path: path.stem)


def test_running_clearance_and_smallest_of_every_surface():
    fit = reference.Fit(DOCUMENT)
    assert REPORT.hot.running.value_mm == pytest.approx(fit.at_gauge(), abs=1e-11)
    for surface, report in zip(fit.surfaces, REPORT.hot.surfaces, strict=True):
        value, place = fit.smallest(surface)
        # the true one is within what is certified, and the search is above it
        assert report.smallest.value_mm - report.certified_within_mm <= value + 1e-12
        assert report.smallest.value_mm == pytest.approx(value, abs=2e-9), surface["name"]
        assert report.certified_within_mm <= 1e-9
        # a minimum is flat: its place is known to the root of that
        assert report.place.height_mm == pytest.approx(place[1], abs=0.05)


@pytest.mark.parametrize("name", reference.sources(DOCUMENT))
def test_contribution_of_every_source(name):
    """Every source moved up and down, the whole search done again."""

    def lines(value):
        return {line.source: line.contribution_mm for line in value.budget}

    def moved(value):
        up, down = (value(reference.Fit(DOCUMENT, {name: sign * reference.STEP})) for sign in (1, -1))
        return (up - down) / (2 * reference.STEP)

    running = moved(lambda fit: fit.at_gauge())
    assert lines(REPORT.hot.running).get(name, 0.0) == pytest.approx(running, abs=1e-8)
    skirt = moved(lambda fit: fit.smallest(fit.surfaces[0])[0])
    assert lines(REPORT.hot.surfaces[0].smallest).get(name, 0.0) == pytest.approx(skirt, abs=1e-6)


@pytest.mark.parametrize("name", reference.sources(DOCUMENT))
def test_contribution_of_every_source_to_the_margin(name):
    case = DOCUMENT["reference"]

    def margin(sign):
        errors = {name: sign * reference.STEP}
        own = reference.Fit(DOCUMENT, errors).at_gauge()
        return own - reference.Fit(DOCUMENT, errors, original=case).at_gauge()

    moved = (margin(1) - margin(-1)) / (2 * reference.STEP)
    lines = {line.source: line.contribution_mm for line in REPORT.hot.reference.margin.budget}
    assert lines.get(name, 0.0) == pytest.approx(moved, abs=1e-8)


@every_fit
def test_vectors(path):
    """Running clearance, the smallest of every surface and the reference case of a fit document, with what every source contributes at those places."""
    document, report = json.loads(path.read_text(encoding="utf-8")), gaugepoint.fit(path).hot
    fit = reference.Fit(document)
    assert report.running.value_mm == pytest.approx(fit.at_gauge(), abs=1e-11)
    places = []
    for surface, told in zip(fit.surfaces, report.surfaces, strict=True):
        value, place = fit.smallest(surface)
        places.append(place)
        assert told.smallest.value_mm - told.certified_within_mm <= value + 1e-12, surface["name"]
        assert told.smallest.value_mm == pytest.approx(value, abs=2e-9), surface["name"]
        assert told.certified_within_mm <= 1e-9 and told.best_placed.certified_within_mm <= 2.1e-9
        # the value told is that of the place told
        travel = told.place.depth_mm - (fit.deck + fit.height - told.place.height_mm) if fit.moves else 0.0
        there = fit.masked(surface, told.place.angle_deg, told.place.height_mm, travel)
        assert told.smallest.value_mm == pytest.approx(float(there), abs=1e-11), surface["name"]
    for name in reference.sources(document):
        up, down = (reference.Fit(document, {name: sign * reference.STEP}) for sign in (1, -1))
        line = lambda value, name=name: {x.source: x.contribution_mm for x in value.budget}.get(name, 0.0)
        moved = lambda of, up=up, down=down: (of(up) - of(down)) / (2 * reference.STEP)
        assert line(report.running) == pytest.approx(moved(lambda f: f.at_gauge()), abs=1e-8), name
        for k, (told, place) in enumerate(zip(report.surfaces, places, strict=True)):
            here, above, below = (float(f.masked(f.surfaces[k], *place)) for f in (fit, up, down))
            ways = (above - here) / reference.STEP, (here - below) / reference.STEP
            # both ways are one, but where the kink of a law holds the place: there it is the slope to one side of it
            assert path.stem == "kinked_law" or abs(ways[0] - ways[1]) < 1e-6, (name, told.name)
            assert min(ways) - 1e-6 <= line(told.smallest) <= max(ways) + 1e-6, (name, told.name)
    if "reference" in document:
        original = reference.Fit(document, original=document["reference"])
        assert report.reference.running.value_mm == pytest.approx(original.at_gauge(), abs=1e-11)
        assert report.reference.smallest_mm == pytest.approx(original.smallest(original.surfaces[0])[0], abs=2e-9)


def test_illustrative_temperatures_are_told():
    path = next(path for path in FITS if path.stem == "illustrative")
    report = gaugepoint.fit(path)
    duty = gaugepoint.illustrative_duties()[0]
    for told in (report.hot.origin, *(w.text for w in report.warnings if w.kind == "illustrative_temperatures")):
        assert told.startswith("illustrative") and duty.name in told and duty.source in told
    assert [w.path for w in report.warnings if w.kind == "illustrative_temperatures"] == ["/running/preset"]
    assert "from memory" in report.to_text()


def test_illustrative_duties_are_the_middles_of_their_bands():
    for told in gaugepoint.illustrative_duties():
        piston, wall = reference.duty(told.name)
        assert [(row.at, row.thrust_c, row.pin_c) for row in told.piston] == piston
        assert [(row.at, row.wall_c) for row in told.bore] == wall
    assert {told.name for told in gaugepoint.illustrative_duties()} == set(reference.DUTIES)


def test_reference_case():
    original = reference.Fit(DOCUMENT, original=DOCUMENT["reference"])
    report = REPORT.hot.reference
    assert report.running.value_mm == pytest.approx(original.at_gauge(), abs=1e-11)
    smallest = original.smallest(original.surfaces[0])[0]
    assert report.smallest_mm == pytest.approx(smallest, abs=2e-9)
    own = reference.Fit(DOCUMENT)
    assert report.margin.value_mm == pytest.approx(own.at_gauge() - original.at_gauge(), abs=1e-11)


@pytest.mark.parametrize("onset", REPORT.hot.onset, ids=lambda o: o.scenario)
def test_first_contact(onset):
    found = reference.onset(DOCUMENT, onset.scenario, onset.touching_at_mm, onset.factor + 0.05 if onset.outcome == "touches" else onset.factor)
    if onset.outcome == "touches":
        assert onset.place.surface == "skirt"
        assert onset.factor == pytest.approx(found, abs=1e-6)
        assert onset.thrust_c == pytest.approx(20 + found * 92, abs=1e-4)
    else:
        assert found is None


def test_uncertainty_of_first_contact():
    """Sizes and coefficients moved, contact found again: the temperature of the piston is what is asked for, and moves nothing."""
    onset = next(o for o in REPORT.hot.onset if o.scenario == "piston_alone")
    lines = {line.source: line.contribution_k for line in onset.budget}
    assert "temperatures of the piston" not in lines

    def thrust(name, sign):
        gap = lambda k: reference.smallest_of_skirt(reference.Fit(DOCUMENT, {name: sign * reference.STEP}, rise=(k, 1.0))) - onset.touching_at_mm
        return 20 + 92 * reference.brentq(gap, onset.factor - 0.05, onset.factor + 0.05, xtol=1e-8)

    for name in ("size of the bore", "coefficient of expansion of piston alloy", "temperatures of the bore"):
        moved = (thrust(name, 1) - thrust(name, -1)) / (2 * reference.STEP)
        assert lines[name] == pytest.approx(moved, rel=2e-3), name


def test_ovality_that_runs_round():
    skirt = REPORT.hot.surfaces[0]
    fit = reference.Fit(DOCUMENT)
    surface = fit.surfaces[0]
    for row in skirt.ovality:
        radius = lambda of, t: float(of(surface, t, row.height_mm))
        cold, hot = fit.cold, fit.piston
        across = lambda of, t: radius(of, t) + radius(of, t + 180.0)
        assert row.cold_mm == pytest.approx(across(cold, 0.0) - across(cold, 90.0), abs=1e-11)
        assert row.running_mm == pytest.approx(across(hot, 0.0) - across(hot, 90.0), abs=1e-11)
        eps = {t: across(hot, t) / across(cold, t) - 1 for t in (0.0, 90.0)}
        major = across(cold, 0.0)
        assert major * (1 + eps[0.0]) == pytest.approx((major - row.round_running_mm) * (1 + eps[90.0]), abs=1e-10)


def test_pictures_are_the_clearances():
    fit = reference.Fit(DOCUMENT)
    for surface, picture in zip(fit.surfaces, REPORT.hot.pictures.maps, strict=True):
        panel = surface["panel"]
        for height, row in zip(picture.heights_mm, picture.clearance_mm, strict=True):
            depth = fit.deck + fit.height - height
            for angle, told in zip(picture.angles_deg, row, strict=True):
                off = min(abs(angle - axis) for axis in (0.0, 360.0)), abs(angle - 180.0)
                if off[0] <= panel[0] or off[1] <= panel[1]:
                    assert depth >= 0
                    assert told == pytest.approx(float(fit.clearance(surface, angle, height, 0.0)), abs=1e-11)
                else:
                    assert told is None
    for picture in REPORT.hot.pictures.sections:
        assert len(picture.angles_deg) == len(picture.piston_hot_mm) == 73
    against = REPORT.hot.pictures.against_temperature
    assert against.clearance_mm[0] > against.clearance_mm[-1]
    assert len(against.factors) == len(against.reference_mm)


def test_overlap():
    skirt = REPORT.hot.surfaces[0]
    fit = reference.Fit(DOCUMENT)
    surface = fit.surfaces[0]
    assert skirt.overlap.largest_mm == -skirt.smallest.value_mm
    travel = skirt.place.depth_mm - (fit.deck + fit.height - skirt.place.height_mm)
    import numpy as np

    z = np.linspace(*surface["z"], 1201)
    t = np.arange(0.0, 360.0, 0.25) + 0.125
    gaps = fit.clearance(surface, t[:, None], z[None, :], travel)
    panel = (np.minimum(t, 360 - t) <= surface["panel"][0]) | (np.abs(t - 180) <= surface["panel"][1])
    share = ((gaps < 0) & panel[:, None]).mean(axis=0)
    area = np.trapezoid(share, z) * np.pi * fit.d_piston
    assert skirt.overlap.area_mm2 == pytest.approx(area, rel=2e-3)
    for band in skirt.overlap.bands:
        for edge, inward in ((band.from_deg, 1e-3), (band.to_deg, -1e-3)):
            assert float(fit.clearance(surface, edge + inward, band.height_mm, travel)) < 1e-7


@pytest.mark.parametrize("working", [False, True])
def test_nothing_of_the_report_is_lost(working):
    report = gaugepoint.fit(HOT_FIT, working=working)
    told = json.loads(report.to_json())

    def plain(value):
        if dataclasses.is_dataclass(value):
            shown = [f for f in dataclasses.fields(value) if f.init]
            pairs = ((f, plain(getattr(value, f.name))) for f in shown)
            return {f.metadata.get("json", f.name): v for f, v in pairs if v is not None}
        return [plain(v) for v in value] if isinstance(value, tuple) else value

    def without_empty(value):
        if isinstance(value, dict):
            return {k: without_empty(v) for k, v in value.items() if v != []}
        return [without_empty(v) for v in value] if isinstance(value, list) else value

    assert without_empty(plain(report)) == without_empty(told)
    assert (report.working is not None) is working
    assert pickle.loads(pickle.dumps(report)) == report


@pytest.mark.parametrize("path", [HOT_FIT, *FITS], ids=lambda path: path.stem)
def test_same_bytes(path):
    folder = os.environ.get("GAUGEPOINT_REPORTS")
    # not skipped: a comparison that was not made is not a pass
    assert folder, "set GAUGEPOINT_REPORTS to a folder with the report of the core, made by its example hot_fit: see tests/run"
    core = (Path(folder) / ("." if path == HOT_FIT else "fits") / path.name).read_bytes().removesuffix(b"\n")
    assert gaugepoint.fit(path).to_json().encode() == core


def test_refused_with_its_place():
    document = json.loads(HOT_FIT.read_text(encoding="utf-8"))
    document["motion"]["rod_length"] = "148"
    with pytest.raises(gaugepoint.InputError) as refused:
        gaugepoint.fit(document)
    assert (refused.value.kind, refused.value.field) == ("missing_unit", "/motion/rod_length")


def test_schemas_are_those_of_the_documentation():
    for schema, name in ((gaugepoint.fit_schema(), "fit"), (gaugepoint.fit_report_schema(), "fit-report")):
        path = REPOSITORY / "core" / "docs" / f"{name}.schema.json"
        assert schema == json.loads(path.read_text(encoding="utf-8"))


def test_classes_are_the_schema():
    definitions = gaugepoint.fit_report_schema()["$defs"]
    for name in fitting.__all__:
        if name in definitions:
            fields = {f.name for f in dataclasses.fields(getattr(fitting, name))}
            assert fields == set(definitions[name]["properties"]), name
