"""A slow, obvious, independent evaluation of a job document.

It follows core/docs/job.md and core/docs/model.md and nothing else. It shares no code and no method with the library:

- units are converted with exact fractions, the mathematics runs at DIGITS decimal digits;
- no uncertainty is propagated through a formula. Every source is an error of the model's input. The whole chain of a cylinder is
  evaluated again with one source moved up and down by a tiny part of its standard uncertainty, and the results are differenced;
- which readings a reduction picks (the largest, the smallest) is decided once, on the unmoved values; among equal readings the
  first in the document is taken. Without that a tie would be half of each.

`evaluate` gives the numbers of the report under the report's own keys, the results of the decisions, and what may be behind the
findings (`signs.py`); no verdicts, no texts. It checks what it needs for the numbers. It does not check the document against every rule of job.md: that is the library's task.

    python tests/reference/assess.py FILE.json
"""

import copy
import json
import re
import sys
from collections import namedtuple
from datetime import date
from fractions import Fraction

import mpmath
import signs
import stack_document

DIGITS = 40
mp = mpmath.mp.clone()
mp.dps = DIGITS
mpf = mp.mpf

ZERO, ONE = mpf(0), mpf(1)
REFERENCE = mpf(20)
ROOT_3 = mp.sqrt(3)
# A part of a standard uncertainty: small enough for an error of the second order far below any digit we compare, large enough that
# the difference of two sizes of 100 mm keeps more than 20 digits.
STEP = mpf(10) ** -10
# Contributions (mm) below this are exact cancellations seen through rounding, not metal.
NOISE = mpf(10) ** -15
# model.md: equality is within 1e-9 mm.
EQUAL = mpf(10) ** -9
GUARD = Fraction(165, 100)


class Refused(ValueError):
    """The document does not say what is needed for a number."""


# ---------------------------------------------------------------------------------------------------------------- quantities

INCH = Fraction(254, 10)
LENGTH = {"mm": Fraction(1), "um": Fraction(1, 1000), "cm": Fraction(10), "m": Fraction(1000), "in": INCH, '"': INCH,
          "thou": INCH / 1000, "tenth": INCH / 10000, "tenths": INCH / 10000}
DIFFERENCE = {"K": Fraction(1), "delta C": Fraction(1), "delta F": Fraction(5, 9)}
COEFFICIENT = {"/K": Fraction(1), "/F": Fraction(9, 5), "ppm/K": Fraction(1, 10**6), "ppm/F": Fraction(9, 5 * 10**6)}
ANGLE = {"deg": Fraction(1)}

QUANTITY = re.compile(r"([+-]?\d+(?:\.\d+)?)(e[+-]?\d+)?\s*(\D.*)", re.ASCII)
SPOKEN = re.compile(r"(\d+) in(?: (\d+) thou)?(?: (\d+) tenths?)?", re.ASCII)


def split_quantity(text, exponent_allowed=False):
    """The exact number and the unit of a typed quantity."""
    if not isinstance(text, str):
        raise Refused(f"a quantity is a text of a number and a unit, not {text!r}")
    match = QUANTITY.fullmatch(text.strip())
    if not match or (match[2] and not exponent_allowed):
        raise Refused(f"not a number and a unit: {text!r}")
    return Fraction(match[1] + (match[2] or "")), match[3].strip()


def convert(text, units, exponent_allowed=False):
    number, unit = split_quantity(text, exponent_allowed)
    if unit not in units:
        raise Refused(f"unit {unit!r} of {text!r} is none of {sorted(units)}")
    return number * units[unit]


def length(text):
    """Exact millimetres."""
    spoken = SPOKEN.fullmatch(text.strip()) if isinstance(text, str) else None
    if spoken:
        inches, thou, tenths = (int(part or 0) for part in spoken.groups())
        return inches * LENGTH["in"] + thou * LENGTH["thou"] + tenths * LENGTH["tenth"]
    return convert(text, LENGTH)


def temperature(text):
    """Exact degrees Celsius."""
    number, unit = split_quantity(text)
    if unit == "C":
        return number
    if unit == "F":
        return (number - 32) * Fraction(5, 9)
    raise Refused(f"unit {unit!r} of {text!r} is not a temperature")


def difference(text):
    return convert(text, DIFFERENCE)


def coefficient(text):
    return convert(text, COEFFICIENT, exponent_allowed=True)


def angle(text):
    return convert(text, ANGLE)


def pure(value):
    """A pure number: JSON number or text, a text also in percent."""
    if isinstance(value, str) and value.rstrip().endswith("%"):
        return Fraction(value.rstrip()[:-1].strip()) / 100
    return Fraction(value)


def real(fraction):
    return mpf(fraction.numerator) / fraction.denominator


def mean(fractions):
    return sum(fractions, Fraction(0)) / len(fractions)


# --------------------------------------------------------------------------------------------------------------------- growth

def between(rows, t):
    """Straight lines between rows; the end lines go on a hair beyond, for the moved temperatures only.

    At a corner, where a temperature read in the shop equals an inner row, the difference is the mean of the slopes on both sides.
    model.md does not say which slope counts there.
    """
    for (t0, a0), (t1, a1) in zip(rows, rows[1:]):
        if t <= t1:
            break
    return a0 + (a1 - a0) * (t - t0) / (t1 - t0)


class MeanLaw:
    """Mean coefficients from a base to the temperature of each row."""

    def __init__(self, base, rows):
        self.base, self.rows = base, rows
        self.low, self.high = rows[0][0], rows[-1][0]
        # With the base at 20 C the mean coefficient to 20 C is multiplied by zero and need not be known.
        self.needs_20 = base != REFERENCE

    def eps(self, t, error):
        a = between(self.rows, t) + error
        from_base = a * (t - self.base)
        if not self.needs_20:
            return from_base
        base_to_20 = (between(self.rows, REFERENCE) + error) * (REFERENCE - self.base)
        return (from_base - base_to_20) / (ONE + base_to_20)


class TableLaw:
    """Instantaneous coefficients, integrated as straight lines between the rows."""

    needs_20 = True

    def __init__(self, rows):
        self.rows = rows
        self.low, self.high = rows[0][0], rows[-1][0]

    def eps(self, t, error):
        first, last = min(t, REFERENCE), max(t, REFERENCE)
        stops = [first] + [row for row, _ in self.rows if first < row < last] + [last]
        area = ZERO
        for t0, t1 in zip(stops, stops[1:]):
            area += (between(self.rows, t0) + between(self.rows, t1)) / 2 * (t1 - t0)
        return (area if t >= REFERENCE else -area) + error * (t - REFERENCE)


class PolynomialLaw:
    """Instantaneous coefficient as a polynomial in kelvin."""

    needs_20 = True

    def __init__(self, coefficients, low, high):
        self.coefficients, self.low, self.high = coefficients, low, high

    def eps(self, t, error):
        kelvin, start = t + mpf("273.15"), REFERENCE + mpf("273.15")
        total = ZERO
        for i, c in enumerate(self.coefficients):
            total += c * (kelvin ** (i + 1) - start ** (i + 1)) / (i + 1)
        return total + error * (t - REFERENCE)


class StrainLaw:
    """Strain from any length as a polynomial in kelvin."""

    needs_20 = True

    def __init__(self, coefficients, low, high):
        self.coefficients, self.low, self.high = coefficients, low, high

    def length(self, t):
        return ONE + sum(c * (t + mpf("273.15")) ** i for i, c in enumerate(self.coefficients))

    def eps(self, t, error):
        return self.length(t) / self.length(REFERENCE) - ONE + error * (t - REFERENCE)


class IronLaw:
    """Compacted and spheroidal graphite iron by the regression of Matsushita et al., Metals 2015, 5, 1000-1019, 20 C to 500 C."""

    needs_20 = True
    low, high = REFERENCE, mpf(500)

    def __init__(self, n, g, r):
        self.n, self.g, self.r = n, g, r

    def coefficient(self, t):
        terms = ("1.38e-5", ONE), ("5.38e-8", self.n), ("-5.85e-7", self.g), ("1.85e-8", t), ("-2.41e-6", self.r), (
            "-1.28e-8", self.n * self.g), ("-2.97e-7", self.g * self.r), ("4.65e-9", t * self.r), ("1.08e-7", self.g ** 2), ("-4.80e-11", t ** 2)
        return sum(mpf(c) * x for c, x in terms)

    def eps(self, t, error):
        # a parabola: Simpson's rule is exact
        middle = (t + REFERENCE) / 2
        sum_of_three = self.coefficient(REFERENCE) + 4 * self.coefficient(middle) + self.coefficient(t)
        return (t - REFERENCE) * sum_of_three / 6 + error * (t - REFERENCE)


# Built-in materials that jobs of the vectors use: the law written out, and the half-width, from the handbook cells.
_TE_2_A = zip((0, 20, 50, 75, 100, 125, 150, 175, 200, 225, 250, 275, 300, 325), (
    "21.7", "21.7", "23.3", "23.9", "24.3", "24.7", "25.2", "25.7", "26.4", "27.0", "27.5", "27.7", "27.6", "27.1"))
BUILT_IN = {
    "gravity-cast AlSi12CuMgNi": ({"mean_table": {"base": "20 C", "rows": [
        {"to": f"{t} C", "value": f"{a}e-6 /K"} for t, a in ((0, "20"), (100, "20"), (200, "21"), (300, "22"))]}}, "1.5e-6 /K"),
    "steel 4140": ({"mean_table": {"base": "20 C", "rows": [
        {"to": f"{t} C", "value": f"{a}e-6 /K"} for t, a in ((0, "12.3"), (100, "12.3"), (200, "12.7"))]}}, "1e-6 /K"),
    "aluminium alloys ASME TE-2 instantaneous": ({"instantaneous_table": {"rows": [
        {"at": f"{t} C", "value": f"{a}e-6 /K"} for t, a in _TE_2_A]}}, "1.5e-6 /K"),
}


def law(form):
    (kind, data), = form.items()
    if kind == "built_in":
        return law(BUILT_IN[data][0])
    if kind == "strain_polynomial":
        ends = (real(temperature(data[end])) for end in ("from", "to"))
        return StrainLaw([real(pure(c)) for c in data["kelvin_coefficients"]], *ends)
    if kind == "graphite_iron":
        return IronLaw(*(real(pure(data[name])) for name in ("nodularity_percent", "graphite_percent", "pearlite_to_ferrite")))
    if kind == "mean_coefficient":
        value = real(coefficient(data["value"]))
        rows = [(real(temperature(data[end])), value) for end in ("from", "to")]
        return MeanLaw(real(temperature(data["base"])), rows)
    if kind == "mean_table":
        return MeanLaw(real(temperature(data["base"])), table_rows(data, "to"))
    if kind == "instantaneous_table":
        return TableLaw(table_rows(data, "at"))
    if kind == "instantaneous_polynomial":
        coefficients = [real(pure(c)) for c in data["kelvin_coefficients"]]
        return PolynomialLaw(coefficients, real(temperature(data["from"])), real(temperature(data["to"])))
    raise Refused(f"unknown law {kind!r}")


def table_rows(data, name):
    rows = [(real(temperature(row[name])), real(coefficient(row["value"]))) for row in data["rows"]]
    if len(rows) < 2 or any(b[0] <= a[0] for a, b in zip(rows, rows[1:])):
        raise Refused("a table of coefficients needs two rows or more, temperatures rising")
    return rows


# -------------------------------------------------------------------------------------------------------------------- sources

# `estimate` is what the standard uncertainty rests on, a name and its degrees of freedom; None when it is taken as exact.
Source = namedtuple("Source", "key u name path estimate")


def half_width(fraction):
    return real(fraction) / ROOT_3


def reliability(name, form):
    """The estimate behind a permissible error whose relative uncertainty is stated: JCGM 100:2008, (G.3)."""
    if "permissible_error_relative_uncertainty" not in form:
        return None
    r = real(pure(form["permissible_error_relative_uncertainty"]))
    return (name, ONE / (2 * r * r))


class Errors:
    """The error of every source in one evaluation: zero, but for the one that is moved."""

    def __init__(self, moved=None, step=ZERO):
        self.moved, self.step, self.touched = moved, step, {}

    def __call__(self, source):
        self.touched[source.key] = source
        return self.step if source is self.moved else ZERO


def propagate(chain):
    """The values of the chain and, for each, the contribution of every source by central difference."""
    still = Errors()
    values = chain(still)
    contributions = {name: [] for name in values}
    for source in still.touched.values():
        step = STEP * source.u
        up, down = chain(Errors(source, step)), chain(Errors(source, -step))
        for name in values:
            contribution = (up[name] - down[name]) / (2 * STEP)
            if abs(contribution) > NOISE:
                contributions[name].append((source, contribution))
    return values, contributions


# DIN 863 as it is printed in an extract: limit of error and parallelism of the faces, by measuring range; DIN 862: limit of error.
PRESETS = {"DIN 863 0-25 mm": ("4 um", "2 um"), "DIN 863 75-100 mm": ("5 um", "3 um"),
           "DIN 862 steps of 0.01 or 0.02 mm": ("0.02 mm", None)}


def data_sheet(form):
    """The gauge with what its preset stands for written out."""
    if "preset" not in form:
        return form
    error, faces = PRESETS[form["preset"]]
    return {**form, "permissible_error": error, **({"face_parallelism": faces} if faces else {})}


# ------------------------------------------------------------------------------------------------------------- the job, read once

Material = namedtuple("Material", "name law source")
# A reading in mm with the sources that are added to it.
Reading = namedtuple("Reading", "mm sources")
Gauge = namedtuple("Gauge", "name kind material overdue zero setting set_on recheck")
Zero = namedtuple("Zero", "reading resolution size standard material temperature")
Ring = namedtuple("Ring", "size source material temperature needle")
OnMicrometer = namedtuple("OnMicrometer", "gauge reading temperature needle")
PistonReading = namedtuple("PistonReading", "gauge reading temperature gauge_temperature height datum angle over coating")
BorePlace = namedtuple("BorePlace", "depth axis reading")
Bore = namedtuple("Bore", "gauge temperature gauge_temperature clamping places")
Piston = namedtuple("Piston", "state readings")
Cylinder = namedtuple("Cylinder", "number piston bore")


class Job:
    """The document with its quantities as numbers and its sources of uncertainty named."""

    def __init__(self, document):
        document = {**document, "gauges": [data_sheet(form) for form in document["gauges"]]}
        self.document = document
        self.sources = {}
        shop = document["shop"]
        self.shop_temperature = real(temperature(shop["temperature"]))
        self.thermometer = self.source(("thermometer",), half_width(difference(shop["thermometer"]["permissible_error"])),
                                       "thermometer", "/shop/thermometer/permissible_error",
                                       reliability("thermometer", shop["thermometer"]))
        self.materials = unique(((m["name"], self.material(i, m)) for i, m in enumerate(document["materials"])), "material")
        self.day = date.fromisoformat(document["job"]["date"])
        self.gauges = {}
        # A bore gauge may be set on a micrometer that stands after it in the list, so the bore gauges come last.
        order = sorted(enumerate(document["gauges"]), key=lambda item: item[1]["kind"] == "bore_gauge")
        for i, form in order:
            if form["name"] in self.gauges:
                raise Refused(f"gauge {form['name']!r} stands twice")
            self.gauges[form["name"]] = self.gauge(i, form)
        self.engine = document["engine"]
        self.bore_material = self.named(self.materials, self.engine["bore"]["material"])
        self.piston_material = self.named(self.materials, self.engine["piston"]["material"])
        self.piston_ranges = [self.piston_range(form) for form in self.engine["piston"].get("materials_by_height", [])]
        profile = self.engine["bore"].get("target_profile", {})
        self.target = [(real(length(row["depth"])), real(length(row["deviation"]))) for row in profile.get("rows", [])]
        if profile and profile["state"] != "cold":
            raise Refused("cold readings are not held against a running shape")
        self.nominal = real(length(self.engine["bore"]["nominal"]))
        self.windows = [read_window(form) for form in self.engine["bore"].get("windows", [])]
        self.limits = {name: read_limit(form) for name, form in self.engine.get("limits", {}).items()}
        self.own_limits = [({int(n) for n in group["cylinders"]}, {name: {**read_limit(form), "cylinders": group["cylinders"]}
                                                                  for name, form in group["limits"].items()})
                           for group in self.engine.get("limits_by_cylinder", [])]
        self.running = self.read_running()
        decision = document.get("decision", {"rule": "proven"})
        self.rule = decision["rule"]
        self.at_least = real(pure(decision.get("at_least", "0.95")))
        self.ratio_at_least = real(pure(decision.get("ratio_at_least", 4)))
        self.shares = [real(pure(decision.get(name, 1))) for name in ("acceptance_guard", "rejection_guard")]
        self.cylinders = unique(((c["number"], self.cylinder(i, c)) for i, c in enumerate(document["cylinders"])), "cylinder")
        if not set(self.cylinders) <= set(self.numbers()):
            raise Refused("a cylinder is numbered from 1 to the count of the engine")

    def seen_by(self, number):
        """The job as one cylinder has it: a limit of its own stands in place of the engine's."""
        own = [limits for numbers, limits in self.own_limits if number in numbers]
        if len(own) > 1:
            raise Refused(f"cylinder {number} has limits of its own twice")
        job = copy.copy(self)
        job.limits = {**self.limits, **(own[0] if own else {})}
        return job

    def piston_range(self, form):
        datum = form.get("datum", self.engine["piston"]["gauge_point"]["datum"])
        return length(form["from"]), length(form["to"]), datum, self.named(self.materials, form["material"])

    def material_at(self, height, datum):
        """Material of the piston there; exactly one range must hold the height."""
        if not self.piston_ranges:
            return self.piston_material
        here = [m for low, high, counted, m in self.piston_ranges if counted == datum and low <= height <= high]
        if len(here) != 1:
            raise Refused(f"{len(here)} materials at {float(height)} mm from {datum}")
        return here[0]

    def numbers(self):
        return range(1, self.engine["cylinders"] + 1)

    def named(self, table, name):
        if name not in table:
            raise Refused(f"no entry named {name!r}")
        return table[name]

    def outside_gauge(self, name):
        gauge = self.named(self.gauges, name)
        if gauge.kind not in ("outside_micrometer", "caliper"):
            raise Refused(f"{name!r} does not read outside sizes")
        return gauge

    def bore_gauge(self, name):
        gauge = self.named(self.gauges, name)
        if gauge.kind != "bore_gauge":
            raise Refused(f"{name!r} does not read bores")
        return gauge

    def source(self, key, u, name, path, estimate=None):
        """One object per key, so that equal sources add with their signs."""
        return self.sources.setdefault(key, Source(key, u, name, path, estimate))

    def material(self, i, form):
        built_in = form["law"].get("built_in")
        u = half_width(coefficient(BUILT_IN[built_in][1] if built_in else form["coefficient_permissible_error"]))
        field = "law/built_in" if built_in else "coefficient_permissible_error"
        source = self.source(("expansion", i), u, "expansion of " + form["name"], f"/materials/{i}/{field}")
        one_law = law(form["law"])
        if one_law.needs_20 and not one_law.low <= REFERENCE <= one_law.high:
            raise Refused(f"the law of {form['name']} does not reach 20 C")
        return Material(form["name"], one_law, source)

    def gauge(self, i, form):
        material = self.named(self.materials, form["material"])
        overdue = date.fromisoformat(form["calibration_due"]) < self.day  # in date on the day itself
        zero = self.zero(i, form) if "zero_check" in form else None
        setting = self.setting(i, form) if form["kind"] == "bore_gauge" else None
        set_on = [setting.gauge] if isinstance(setting, OnMicrometer) else []
        recheck = None
        if "recheck" in form:
            drift, limit = self.drift(form), length(form["recheck"]["limit"])
            recheck = "within its limit" if abs(drift) <= limit else "beyond its limit"
        # a gauge that drifted beyond its limit proves as little as one out of calibration
        return Gauge(form["name"], form["kind"], material, overdue, zero, setting, set_on, recheck)

    def drift(self, form):
        """Reading of the master after the work less that before; a bore gauge was set to zero."""
        before = length(form["zero_check"]["reading"]) if "zero_check" in form else 0
        return length(form["recheck"]["reading"]) - before

    def drift_sources(self, i, use, text):
        """Half of the drift in all readings of the gauge alike, and anywhere from nothing to all of it in each."""
        form = self.document["gauges"][i]
        if "recheck" not in form:
            return []
        drift, path = abs(self.drift(form)), f"/gauges/{i}/recheck/reading"
        return [self.source(("drift", i), real(drift / 2), f"drift of {form['name']}", path),
                self.source(("drift", i, use), half_width(drift / 2), f"drift of {form['name']}, {text}", path)]

    def zero(self, i, form):
        check = form["zero_check"]
        path = f"/gauges/{i}"
        u = real(length(check["expanded_uncertainty"]) / pure(check["coverage_factor"]))
        standard = self.source(("standard", i), u, "standard of the zero check of " + form["name"],
                               path + "/zero_check/expanded_uncertainty")
        resolution = self.resolution(i, form, "zero check", "zero check")
        return Zero(real(length(check["reading"])), resolution, real(length(check["size"])), standard,
                    self.named(self.materials, check["material"]), real(temperature(check["temperature"])))

    def resolution(self, i, form, use, text):
        u = half_width(length(form["resolution"]) / 2)
        return self.source(("resolution", i, use), u, f"resolution of {form['name']}, {text}", f"/gauges/{i}/resolution")

    def setting(self, i, form):
        (kind, data), = form["setting"].items()
        needle = self.resolution(i, form, "setting", "needle at zero")
        t = real(temperature(data["temperature"]))
        if kind == "ring":
            u = real(length(data["expanded_uncertainty"]) / pure(data["coverage_factor"]))
            source = self.source(("ring", i), u, "ring of " + form["name"], f"/gauges/{i}/setting/ring/expanded_uncertainty")
            return Ring(real(length(data["size"])), source, self.named(self.materials, data["material"]), t, needle)
        if kind != "micrometer":
            raise Refused(f"a bore gauge is set on a ring or a micrometer, not on {kind!r}")
        gauge = self.outside_gauge(data["gauge"])
        j = self.gauge_index(data["gauge"])
        reading = self.micrometer_reading(j, [length(data["reading"])], ("setting of", i), "setting of " + form["name"])
        return OnMicrometer(gauge, reading, t, needle)

    def gauge_index(self, name):
        return next(i for i, form in enumerate(self.document["gauges"]) if form["name"] == name)

    def micrometer_reading(self, i, repeats, use, text):
        """Scale, faces and resolution of a reading; a setting is no repeated reading, so repeatability is not here."""
        form = self.document["gauges"][i]
        value = mean(repeats)
        sources = [self.source(("scale", i, value), half_width(length(form["permissible_error"])),
                               f"scale of {form['name']} at {float(value)} mm", f"/gauges/{i}/permissible_error",
                               reliability(("scale", i), form))]
        if "face_parallelism" in form:
            sources.append(self.source(("faces", i, use), half_width(length(form["face_parallelism"])),
                                       f"faces of {form['name']}, {text}", f"/gauges/{i}/face_parallelism"))
        sources.append(self.resolution(i, form, use, text))
        return Reading(real(value), sources + self.drift_sources(i, use, text))

    def repeatability(self, i, count, use, text):
        form = self.document["gauges"][i]
        if "repeatability" in form:
            s, dof = real(length(form["repeatability"])), form.get("repeatability_dof")
        else:
            s, dof = self.pooled(form["name"])
        estimate = (("repeatability", i), real(pure(dof))) if dof is not None else None
        return self.source(("repeatability", i, use), s / mp.sqrt(count), f"repeatability of {form['name']}, {text}",
                           f"/gauges/{i}/repeatability", estimate)

    def pooled(self, name):
        """Standard deviation of all repeats read with a gauge, each place about its own mean, and its degrees of freedom."""
        plan = self.document.get("plan", {})
        cylinders = self.document["cylinders"] + plan.get("finish", {}).get("cylinders", [])
        parts = [c[part] for c in cylinders for part in ("piston", "bore") if isinstance(c.get(part), dict)] + plan.get("pistons", [])
        read = [[length(typed) for typed in reading["repeats"]] for part in parts for reading in part["readings"]
                if reading.get("gauge", part.get("gauge")) == name and reading["repeats"]]
        dof = sum(len(repeats) - 1 for repeats in read)
        if dof == 0:
            raise Refused(f"no repeatability of {name!r} is given and no place was read twice with it")
        squares = sum(((x - mean(repeats)) ** 2 for repeats in read for x in repeats), Fraction(0))
        return mp.sqrt(real(squares / dof)), dof

    def read_running(self):
        form = self.document.get("running")
        if form is None:
            return None
        if "field" in form:
            import hot_job  # which needs this module, and what most jobs do not

            found = hot_job.at_gauge_point(self)
            ends = {part + "_temperature": [t - a, t + a] for part, (t, a) in found.items()}
        else:
            ends = {part: [real(temperature(form[part][end])) for end in ("min", "max")]
                    for part in ("piston_temperature", "bore_temperature")}
        ends["original"] = self.named(self.materials, form["original_piston_material"])
        return ends

    def cylinder(self, i, form):
        piston = self.piston(i, form) if "piston" in form else None
        bore = self.bore(form["bore"], f"/cylinders/{i}/bore", form["number"]) if "bore" in form else None
        return Cylinder(form["number"], piston, bore)

    def piston(self, i, form):
        path = f"/cylinders/{i}/piston/readings"
        readings = [self.piston_reading(r, f"{path}/{j}", form["number"]) for j, r in enumerate(form["piston"]["readings"])]
        return Piston(form["piston"]["state"], readings)

    def piston_reading(self, form, path, number):
        i = self.gauge_index(form["gauge"])
        text = f"piston {number}, reading at {form['height']} and {form['angle']}"
        repeats = [length(typed) for typed in form["repeats"]]
        reading = self.micrometer_reading(i, repeats, path, text)
        reading.sources.append(self.repeatability(i, len(repeats), path, text))
        return PistonReading(self.outside_gauge(form["gauge"]), reading, real(temperature(form["temperature"])),
                             self.gauge_temperature(form), length(form["height"]), form["datum"], angle(form["angle"]),
                             form["over"], self.coating(form, path, text))

    def coating(self, form, path, text):
        if "coating" not in form:
            return None
        u = half_width(length(form["coating"]["permissible_error"]))
        source = self.source(("coating", path), u, "coating, " + text, path + "/coating/permissible_error")
        return Reading(real(length(form["coating"]["thickness_per_side"])), [source])

    def gauge_temperature(self, form):
        if "gauge_temperature" in form:
            return real(temperature(form["gauge_temperature"]))
        return self.shop_temperature

    def bore(self, bore, path, number):
        g = self.gauge_index(bore["gauge"])
        places = [self.bore_place(g, r, f"{path}/readings/{j}", number)
                  for j, r in enumerate(bore["readings"])]
        return Bore(self.bore_gauge(bore["gauge"]), real(temperature(bore["temperature"])), self.gauge_temperature(bore),
                    bore["clamping"], places)

    def bore_place(self, i, form, path, number):
        gauge = self.document["gauges"][i]
        text = f"bore {number}, {form['depth']} deep at {form['axis']}"
        repeats = [length(typed) for typed in form["repeats"]]
        value = mean(repeats)
        travel = self.source(("travel", i, value), half_width(length(gauge["permissible_error"])),
                             f"travel of {gauge['name']} at {float(value)} mm", f"/gauges/{i}/permissible_error",
                             reliability(("scale", i), gauge))
        sources = [travel, self.resolution(i, gauge, path, text), self.repeatability(i, len(repeats), path, text)]
        sources += self.drift_sources(i, path, text)
        for window in self.windows:
            if on_window(window, length(form["depth"]), angle(form["axis"])):
                raise Refused(f"{text}: one end stands on the window {window['what']}")
        return BorePlace(length(form["depth"]), angle(form["axis"]), Reading(real(value), sources))


def unique(pairs, what):
    """A dictionary of the pairs; a key that stands twice is refused."""
    table = {}
    for key, value in pairs:
        if key in table:
            raise Refused(f"{what} {key!r} stands twice")
        table[key] = value
    return table


def read_window(form):
    """A window with its numbers, and its angles as the set of whole turns it covers."""
    start, end = angle(form["from_angle"]), angle(form["to_angle"])
    end += 360 if end < start else 0
    return {"what": form["what"], "depths": (length(form["from_depth"]), length(form["to_depth"])), "angles": (start, end)}


def on_window(window, depth, axis):
    (top, bottom), (start, end) = window["depths"], window["angles"]
    ends = [axis + half + turn for half in (0, 180) for turn in (-360, 0, 360)]
    return top <= depth <= bottom and any(start <= one <= end for one in ends)


def read_limit(form):
    numbers = {name: real(length(form[name])) for name in ("min", "max") if name in form}
    return {**form, **numbers, "reference_temperature": real(temperature(form["reference_temperature"]))}


# ------------------------------------------------------------------------------------------------------------------ the chain

def grown(material, t, err, measured_by=None):
    """1 + eps; a temperature read in the shop carries the error of the thermometer."""
    if not material.law.low <= t <= material.law.high:
        raise Refused(f"{mp.nstr(t, 8)} C is outside the law of {material.name}")
    if measured_by is not None:
        t = t + err(measured_by)
    return ONE + material.law.eps(t, err(material.source))


def with_errors(reading, err):
    return reading.mm + sum((err(source) for source in reading.sources), ZERO)


def zero_error(job, gauge, err):
    """Indicated minus true on the standard. The check itself has no scale, faces or repeatability: model.md lists none for it."""
    zero = gauge.zero
    if zero is None:
        return ZERO
    standard = (zero.size + err(zero.standard)) * grown(zero.material, zero.temperature, err, job.thermometer)
    return zero.reading + err(zero.resolution) - standard / grown(gauge.material, zero.temperature, err, job.thermometer)


def piston_size(job, reading, err):
    """Size at 20 C over the surface that was touched."""
    gauge = reading.gauge
    indicated = with_errors(reading.reading, err) - zero_error(job, gauge, err)
    return (indicated * grown(gauge.material, reading.gauge_temperature, err, job.thermometer)
            / grown(job.material_at(reading.height, reading.datum), reading.temperature, err, job.thermometer))


def setting_size(job, setting, err):
    """What the bore gauge spans when its needle stands at zero, at the temperature of the setting."""
    if isinstance(setting, Ring):
        span = (setting.size + err(setting.source)) * grown(setting.material, setting.temperature, err, job.thermometer)
    else:
        indicated = with_errors(setting.reading, err) - zero_error(job, setting.gauge, err)
        span = indicated * grown(setting.gauge.material, setting.temperature, err, job.thermometer)
    # The needle is put to zero within its resolution: an error of the span it then stands for. model.md does not say whether the
    # span or the deviations carry it; the difference is the growth of the gauge between setting and use, about 1e-5 of the source.
    return span + err(setting.needle)


def place_sizes(job, bore, err):
    """Size at 20 C of every place read in a bore."""
    gauge = bore.gauge
    span = (setting_size(job, gauge.setting, err) * grown(gauge.material, bore.gauge_temperature, err, job.thermometer)
            / grown(gauge.material, gauge.setting.temperature, err, job.thermometer))
    wall = grown(job.bore_material, bore.temperature, err, job.thermometer)
    return [(span + with_errors(place.reading, err)) / wall for place in bore.places]


def intended(job, place):
    """What the target profile takes off the nominal size at the depth of a place; nothing without a profile."""
    depth = real(place.depth)
    if not job.target:
        return ZERO
    if not job.target[0][0] <= depth <= job.target[-1][0]:
        raise Refused(f"the target profile says nothing of {mp.nstr(depth, 8)} mm")
    return between(job.target, depth)


def straight_sizes(job, bore, sizes):
    """The sizes of a bore that is straight where this one follows its target."""
    return [size - intended(job, place) for size, place in zip(sizes, bore.places)]


# ------------------------------------------------------------------------------------------------------------------ reductions
# A reduction picks places on the unmoved sizes and gives each a weight; the result is the weighted sum. `None`: cannot be formed.

def largest(sizes, among):
    return max(among, key=lambda i: sizes[i])  # the first of equals


def smallest(sizes, among):
    return min(among, key=lambda i: sizes[i])  # the first of equals


def average(among):
    return [(i, ONE / len(among)) for i in among]


def minus(first, second):
    return [(first, ONE), (second, -ONE)]


def weighted(sizes, weights):
    return sum((sizes[i] * w for i, w in weights), ZERO)


def widest(sizes, pairs):
    """The pair (high, low) with the greatest difference, the first of equals."""
    if not pairs:
        return None
    high, low = max(pairs, key=lambda pair: sizes[pair[0]] - sizes[pair[1]])
    return minus(high, low)


def groups(places, name):
    """Places by depth or axis, in the order of the document."""
    found = {}
    for i, place in enumerate(places):
        found.setdefault(getattr(place, name), []).append(i)
    return found


def spreads(sizes, grouped):
    """(largest, smallest) of every group in which there is something to compare: one reading alone has no taper of zero."""
    return [(largest(sizes, group), smallest(sizes, group)) for group in grouped.values() if len(group) > 1]


def size_weights(rule, places, sizes):
    everything = range(len(places))
    if rule == "largest":
        return [(largest(sizes, everything), ONE)]
    if rule == "mean":
        return average(everything)
    if rule == "smallest_wear":
        depths = groups(places, "depth")
        return average(depths[max(depths)])
    if not isinstance(rule, dict):
        raise Refused(f"unknown rule of size {rule!r}")
    depth = length(rule["at"]["depth"])
    axis = angle(rule["at"]["axis"]) if "axis" in rule["at"] else None
    chosen = [i for i in everything if places[i].depth == depth and axis in (None, places[i].axis)]
    return average(chosen) if chosen else None


def taper_weights(rule, places, sizes):
    if rule == "along_axis":
        return widest(sizes, spreads(sizes, groups(places, "axis")))
    if rule != "top_to_bottom":
        raise Refused(f"unknown rule of taper {rule!r}")
    depths = groups(places, "depth")
    if len(depths) < 2:
        return None
    top, bottom = largest(sizes, depths[min(depths)]), largest(sizes, depths[max(depths)])
    return minus(top, bottom) if sizes[top] >= sizes[bottom] else minus(bottom, top)


def out_of_round_weights(rule, places, sizes):
    if rule == "at_level":
        return widest(sizes, spreads(sizes, groups(places, "depth")))
    if rule != "between_axes":
        raise Refused(f"unknown rule of out-of-round {rule!r}")
    axes = list(groups(places, "axis").values())
    if len(axes) != 2:
        return None
    one, other = axes
    return widest(sizes, [(largest(sizes, one), smallest(sizes, other)), (largest(sizes, other), smallest(sizes, one))])


def reductions(job, bore):
    """Weights of the bore's size, taper and out-of-round, those that can be formed."""
    rules, read = job.engine["reduction"], place_sizes(job, bore, Errors())
    sizes = straight_sizes(job, bore, read)
    weights = {"size": size_weights(rules["size"], bore.places, sizes),
               "smallest_place": [(smallest(read, range(len(read))), ONE)] if read else None,
               "least_place": [(smallest(sizes, range(len(sizes))), ONE)] if sizes else None,
               "taper": taper_weights(rules["taper"], bore.places, sizes),
               "out_of_round": out_of_round_weights(rules["out_of_round"], bore.places, sizes)}
    return {name: w for name, w in weights.items() if w}


# ------------------------------------------------------------------------------------------------- all values of one cylinder

def at_point(reading, point, turned):
    return (reading.height == length(point["height"]) and reading.datum == point["datum"] and reading.angle == turned)


def surfaces(job, piston):
    """For each surface known at the gauge point the name of its value. The first reading that knows it counts."""
    point, known = job.engine["piston"]["gauge_point"], {}
    for i, reading in enumerate(piston.readings if piston else []):
        if at_point(reading, point, angle(point["angle"])):
            known.setdefault(reading.over, ("size", i))
            if reading.over == "coating" and reading.coating:
                known.setdefault("bare_metal", ("bare_size", i))
    return known


def clearance_surface(job, piston):
    """The value of the piston that enters the clearance; None when the surface that the limit names is not known."""
    known, limit = surfaces(job, piston), job.limits.get("bench_clearance")
    if limit:
        return known.get(limit["over"])
    return known.get("bare_metal", known.get("coating"))


def ovality_pair(job, piston):
    """Readings at 0 and 90 degrees at the gauge point's height, over the same surface as touched, or None."""
    point = job.engine["piston"]["gauge_point"]
    for i, one in enumerate(piston.readings):
        for j, other in enumerate(piston.readings):
            if at_point(one, point, 0) and at_point(other, point, 90) and one.over == other.over:
                return i, j
    return None


def piston_values(job, piston, err):
    values = {}
    for i, reading in enumerate(piston.readings):
        values["size", i] = piston_size(job, reading, err)
        if reading.over == "coating" and reading.coating:
            values["bare_size", i] = values["size", i] - 2 * with_errors(reading.coating, err)
    pair = ovality_pair(job, piston)
    if pair:
        values["ovality"] = values["size", pair[0]] - values["size", pair[1]]
    return values


def bore_values(job, bore, weights, err):
    sizes = place_sizes(job, bore, err)
    values = {("place", i): size for i, size in enumerate(sizes)}
    straight = straight_sizes(job, bore, sizes)
    values.update({name: weighted(sizes if name == "smallest_place" else straight, w) for name, w in weights.items()})
    if job.target:
        values.update({("from_target", i): size - job.nominal for i, size in enumerate(straight)})
    return values


def judged_values(job, piston, values, err):
    """The values of the decisions on parts, at the reference temperature of each limit."""
    judged = {}
    limit, known = job.limits.get("piston_size"), surfaces(job, piston)
    if limit and limit["over"] in known:
        growth = grown(job.piston_material, limit["reference_temperature"], err)
        judged["judged", "piston_size"] = values[known[limit["over"]]] * growth
    for name in ("size", "taper", "out_of_round"):
        limit = job.limits.get("bore_" + name)
        if limit and name in values:
            judged["judged", "bore_" + name] = values[name] * grown(job.bore_material, limit["reference_temperature"], err)
    return judged


def clearance_at(job, bore, piston, bore_t, piston_t, err):
    return bore * grown(job.bore_material, bore_t, err) - piston * grown(job.piston_material, piston_t, err)


def original_size(job, bore, limit, err):
    """The original piston at 20 C that stands in this bore with the maker's smallest bench clearance.

    model.md writes `D_bore - c_min`, which holds for a minimum stated at 20 C. A minimum stated at another reference temperature is
    a clearance there, so it is brought to 20 C here; at 20 C the two are the same. A piston of the original's material that stands
    exactly at the minimum then has a margin of zero at every reference temperature.
    """
    t = limit["reference_temperature"]
    return (bore * grown(job.bore_material, t, err) - limit["min"]) / grown(job.running["original"], t, err)


def running_ends(job):
    """tight: hottest piston, coldest bore; loose: coldest piston, hottest bore."""
    piston, bore = job.running["piston_temperature"], job.running["bore_temperature"]
    return {"tight": (piston[1], bore[0]), "loose": (piston[0], bore[1])}


def growth_ratios(job, err):
    """Of the engine's pistons and of the original ones, on the thrust axis."""
    shape = job.engine["piston"].get("shape")
    if shape is None:
        return ONE, ONE
    import hot_job

    original, path = job.document["running"].get("original_piston_shape"), "/running/original_piston_shape"
    own = hot_job.growth_ratio(job, shape, "/engine/piston/shape", err)
    return own, own if original is None else hot_job.growth_ratio(job, original, path, err)


def left(ratio, one_and_eps):
    """1 + eps when controlled expansion leaves a part of it."""
    return ONE + ratio * (one_and_eps - ONE)


def running_values(job, bore, piston, err):
    values, limit = {}, job.limits.get("bench_clearance", {})
    own, of_original = growth_ratios(job, err)
    for end, (piston_t, bore_t) in running_ends(job).items():
        hot_bore = bore * grown(job.bore_material, bore_t, err)
        values[end, "clearance"] = hot_bore - piston * left(own, grown(job.piston_material, piston_t, err))
        if "min" in limit:
            original = original_size(job, bore, limit, err) * left(of_original, grown(job.running["original"], piston_t, err))
            values[end, "reference"] = hot_bore - original
            values[end, "margin"] = values[end, "clearance"] - values[end, "reference"]
    return values


def clearance_values(job, bore, smallest_place, least_place, piston, err):
    values = {"bench": bore - piston, "smallest": smallest_place - piston}
    if job.target:
        values["smallest_from_target"] = least_place - piston
    limit = job.limits.get("bench_clearance")
    if limit:
        t = limit["reference_temperature"]
        values["judged", "bench_clearance"] = clearance_at(job, bore, piston, t, t, err)
        if "min" in limit:
            values["judged", "smallest_clearance"] = clearance_at(job, least_place, piston, t, t, err)
    if job.running:
        values.update(running_values(job, bore, piston, err))
    return values


def cylinder_values(job, cylinder, weights, err):
    """Every value of a cylinder from the readings on: the chain that is evaluated again for every moved source."""
    values = {}
    if cylinder.piston:
        values.update(piston_values(job, cylinder.piston, err))
    if cylinder.bore:
        values.update(bore_values(job, cylinder.bore, weights, err))
    values.update(judged_values(job, cylinder.piston, values, err))
    surface = clearance_surface(job, cylinder.piston)
    if surface and "size" in values:
        values.update(clearance_values(job, values["size"], values["smallest_place"], values["least_place"], values[surface], err))
    return values


# -------------------------------------------------------------------------------------------------------------------- decision

def degrees_of_freedom(contributions):
    """Welch and Satterthwaite, JCGM 100:2008 (G.2b), over the estimates; None when infinite."""
    variances = {}
    for source, c in contributions:
        if source.estimate:
            variances[source.estimate] = variances.get(source.estimate, ZERO) + c * c
    below = sum((v * v / dof for (_, dof), v in variances.items()), ZERO)
    variance = sum((c * c for _, c in contributions), ZERO)
    # model.md: more than 1e9 count as infinite
    return variance**2 / below if below and below * 10**9 >= variance**2 else None


def t_tail(t, dof):
    """P(T > t) for t > 0."""
    return mp.betainc(dof / 2, mpf(1) / 2, 0, dof / (dof + t * t), regularized=True) / 2


def t_cdf(t, dof):
    if dof is None:
        return mp.ncdf(t)
    return ONE - t_tail(t, dof) if t > 0 else t_tail(-t, dof) if t < 0 else mpf(1) / 2


def t_factor(normal, dof):
    """The factor of Student's t that has the probability of `normal` for the normal distribution: Newton's method to 25 digits."""
    if dof is None:
        return normal
    wanted, t = mp.ncdf(-normal), mpf(normal)
    for _ in range(60):
        log_density = (mp.loggamma((dof + 1) / 2) - mp.loggamma(dof / 2) - mp.log(dof * mp.pi) / 2
                       - (dof + 1) / 2 * mp.log1p(t * t / dof))
        step = (t_tail(t, dof) - wanted) / mp.exp(log_density)
        t = t + step
        if abs(step) < mpf(10) ** -15:
            break
    return t


def probability(x, u, lower, upper, dof=None):
    """p that the true value lies between the limits; a value without uncertainty lies there or not."""
    if u == 0:
        return ONE if within(x, lower, upper, ZERO) else ZERO
    below = ZERO if lower is None else t_cdf((lower - x) / u, dof)
    return (ONE if upper is None else t_cdf((upper - x) / u, dof)) - below


def within(x, lower, upper, inset):
    """lower + inset <= x <= upper - inset, equality within EQUAL."""
    above = lower is None or x >= lower + inset - EQUAL
    return above and (upper is None or x <= upper - inset + EQUAL)


def width(of, limit, printed):
    """The tolerance that a ratio is of: as printed, whatever part of it judges this value; a form begins at 0."""
    if "min" in printed and "max" in printed:
        return printed["max"] - printed["min"]
    return limit.get("max") if of in ("bore_taper", "bore_out_of_round") else None


def guard_bands(job, u, dof):
    """What a value must lie inside to conform, and outside to not conform."""
    if job.rule == "proven":
        return [t_factor(real(GUARD), dof) * u] * 2
    if job.rule == "expanded_guard_band":
        return [share * t_factor(mpf(2), dof) * u for share in job.shares]
    return None


def result(job, x, expanded, lower, upper, overdue, tolerance, bands, p):
    yes, no = within(x, lower, upper, ZERO), not within(x, lower, upper, ZERO)
    if job.rule == "simple_acceptance":
        return "conforms" if yes else "does not conform"
    if overdue:
        return "not proven"
    if bands:
        accept, reject = bands
        yes, no = within(x, lower, upper, accept), not within(x, lower, upper, -reject)
    elif job.rule == "simple_acceptance_by_ratio":
        if tolerance is None or tolerance + EQUAL < job.ratio_at_least * 2 * expanded:
            return "not proven"
    elif job.rule == "conformance_probability":
        yes, no = p >= job.at_least, ONE - p >= job.at_least
    else:
        raise Refused(f"unknown rule {job.rule!r}")
    return "conforms" if yes else "does not conform" if no else "not proven"


def standard_uncertainty(contributions):
    return mp.sqrt(sum((c * c for _, c in contributions), ZERO))


def decision(job, of, value, contributions, limit, fit, overdue, printed):
    """One decision; `fit` tells whether the limit is meant for this state of the part, `printed` is the whole limit behind it."""
    lower, upper, u = limit.get("min"), limit.get("max"), standard_uncertainty(contributions)
    dof = degrees_of_freedom(contributions)
    entry = {"of": of, "value_mm": value, "standard_uncertainty_mm": u, **({"dof": dof} if dof is not None else {})}
    if "reference_temperature" in limit:
        entry["reference_temperature_c"] = limit["reference_temperature"]
    entry.update({name: mm for name, mm in (("lower_mm", lower), ("upper_mm", upper)) if mm is not None})
    entry.update(for_cylinders(limit))
    if not fit:
        return {**entry, "result": "not judged"}
    bands, tolerance = guard_bands(job, u, dof), width(of, limit, printed)
    if bands:
        entry["guard_band_mm"] = bands[0]
    if job.rule == "expanded_guard_band":
        entry["rejection_guard_band_mm"] = bands[1]
    expanded = t_factor(mpf(2), dof) * u
    if job.rule == "simple_acceptance_by_ratio" and tolerance is not None and u > 0:
        entry["uncertainty_ratio"] = tolerance / (2 * expanded)
    p = probability(value, u, lower, upper, dof)
    entry["probability_of_conformity"] = p
    entry["result"] = result(job, value, expanded, lower, upper, overdue, tolerance, bands, p)
    return entry


def any_overdue(*gauges):
    return any(gauge.overdue or gauge.recheck == "beyond its limit" or any_overdue(*gauge.set_on) for gauge in gauges)


def limit_fits(limit, cylinder):
    """A limit is compared only with the states it is declared for."""
    state_fits = "piston_states" not in limit or cylinder.piston.state in limit["piston_states"]
    return state_fits and ("clamping" not in limit or cylinder.bore.clamping in limit["clamping"])


# ---------------------------------------------------------------------------------------------------------------------- report

class CylinderReport:
    """The numbers of one cylinder under the report's keys."""

    def __init__(self, job, cylinder, seen=False):
        job = job if seen else job.seen_by(int(cylinder.number))
        self.job, self.cylinder = job, cylinder
        self.weights = reductions(job, cylinder.bore) if cylinder.bore else {}
        self.values, self.contributions = propagate(lambda err: cylinder_values(job, cylinder, self.weights, err))

    def measured(self, name):
        return measured(self.values[name], self.contributions[name])

    def known(self, names):
        return {name: self.measured(name) for name in names if name in self.values}

    def decide(self, of, name, limit, fit, gauges):
        # The smallest clearance and the margins stand for the bench clearance and have its tolerance.
        printed = self.job.limits.get(of) or self.job.limits["bench_clearance"]
        return decision(self.job, of, self.values[name], self.contributions[name], limit, fit, any_overdue(*gauges), printed)

    def part_decisions(self, names, gauges):
        """Decisions on the limits of a part for which there is a value."""
        found = []
        for of in names:
            if ("judged", of) in self.values:
                limit = self.job.limits[of]
                found.append(self.decide(of, ("judged", of), limit, limit_fits(limit, self.cylinder), gauges))
        return found

    def gauge_of(self, value):
        """The gauge of a size of the piston, as a list that may be empty."""
        return [self.cylinder.piston.readings[value[1]].gauge] if value else []

    def piston(self):
        sizes = [self.piston_size(i, reading) for i, reading in enumerate(self.cylinder.piston.readings)]
        return {"sizes": sizes, **self.known(["ovality"]), "decisions": self.piston_decisions()}

    def piston_decisions(self):
        limit, known = self.job.limits.get("piston_size"), surfaces(self.job, self.cylinder.piston)
        if not limit or not known:
            return []
        if limit["over"] not in known:
            # Read at the gauge point, but not over the surface that the limit means: mixing is refused, there is no value.
            return [unjudged("piston_size", limit)]
        return self.part_decisions(["piston_size"], self.gauge_of(known[limit["over"]]))

    def piston_size(self, i, reading):
        entry = {"height_mm": reading.height, "datum": reading.datum, "angle_deg": reading.angle, "over": reading.over,
                 "size": self.measured(("size", i))}
        if ("bare_size", i) in self.values:
            entry["bare_size"] = self.measured(("bare_size", i))
        return entry

    def bore(self):
        bore = self.cylinder.bore
        places = [{"depth_mm": place.depth, "axis_deg": place.axis, "size": self.measured(("place", i))}
                  for i, place in enumerate(bore.places)]
        if self.job.target:
            for i, place in enumerate(bore.places):
                places[i].update({"intended_mm": intended(self.job, place), "from_target": self.measured(("from_target", i))})
        decisions = self.part_decisions(["bore_size", "bore_taper", "bore_out_of_round"], [bore.gauge])
        return {"places": places, **self.known(["size", "taper", "out_of_round"]), "decisions": decisions}

    def clearance(self):
        gauges = self.gauge_of(clearance_surface(self.job, self.cylinder.piston)) + [self.cylinder.bore.gauge]
        report = {"bench": self.measured("bench"), "smallest": self.measured("smallest"), **self.known(["smallest_from_target"])}
        decisions = self.part_decisions(["bench_clearance"], gauges) + self.smallest_decision(gauges)
        if self.job.running:
            report["running"] = {end: self.running(end, *ts) for end, ts in running_ends(self.job).items()}
            decisions += self.margin_decisions(gauges)
        return {**report, "decisions": decisions}

    def smallest_decision(self, gauges):
        """The clearance at the smallest place that was read has the lower limit of the bench clearance and no upper one."""
        if ("judged", "smallest_clearance") not in self.values:
            return []
        limit = self.job.limits["bench_clearance"]
        if not limit_fits(limit, self.cylinder):
            return []
        lower = {name: limit[name] for name in ("min", "reference_temperature", "cylinders") if name in limit}
        return [self.decide("smallest_clearance", ("judged", "smallest_clearance"), lower, True, gauges)]

    def running(self, end, piston_t, bore_t):
        entry = {"piston_temperature_c": piston_t, "bore_temperature_c": bore_t}
        for name in ("clearance", "reference", "margin"):
            if (end, name) in self.values:
                entry[name] = self.measured((end, name))
        return entry

    def margin_decisions(self, gauges):
        """The margin is judged by the same rule, lower limit 0; it needs the bench minimum and the states that minimum is for."""
        if ("tight", "margin") not in self.values:
            return []
        bench = self.job.limits["bench_clearance"]
        limit = {"min": ZERO, **{name: bench[name] for name in ("cylinders",) if name in bench}}
        return [self.decide("running_margin_" + end, (end, "margin"), limit, limit_fits(bench, self.cylinder), gauges)
                for end in ("tight", "loose")]

    def report(self):
        entry = {"number": self.cylinder.number}
        if self.cylinder.piston:
            entry["piston"] = self.piston()
        if self.cylinder.bore:
            entry["bore"] = self.bore()
        if "bench" in self.values:
            entry["clearance"] = self.clearance()
            if "shape" in self.job.engine["piston"] and self.job.running:
                import hot_job

                entry["hot"] = hot_job.Cylinder(self.job, self.cylinder, self.weights).report()
        return entry


def for_cylinders(limit):
    return {"for_cylinders": [int(n) for n in limit["cylinders"]]} if "cylinders" in limit else {}


def unjudged(of, limit):
    ends = {name: limit[end] for name, end in (("lower_mm", "min"), ("upper_mm", "max")) if end in limit}
    return {"of": of, "reference_temperature_c": limit["reference_temperature"], **ends, **for_cylinders(limit), "result": "not judged"}


def measured(value, contributions):
    u = standard_uncertainty(contributions)
    entries = [{"source": s.name, "contribution_mm": c, "share": c * c / (u * u), "path": s.path} for s, c in contributions]
    # Twelve digits decide the order, so that equal shares stay in their order of appearance.
    entries.sort(key=lambda entry: -round(float(entry["share"]), 12))
    dof = degrees_of_freedom(contributions)
    k = t_factor(mpf(2), dof)
    report = {"value_mm": value, "standard_uncertainty_mm": u, "expanded_uncertainty_mm": k * u, "coverage_factor": k, "budget": entries}
    if dof is not None:
        report["dof"] = dof
    if entries:
        report["dominant"] = {name: entries[0][name] for name in ("source", "share", "path")}
    return report


def gauge_report(job, gauge):
    entry = {"name": gauge.name, "calibration": "overdue" if gauge.overdue else "in date"}
    if gauge.recheck:
        entry["recheck"] = gauge.recheck
    if gauge.zero:
        values, contributions = propagate(lambda err: {"zero": zero_error(job, gauge, err)})
        entry["zero_error"] = measured(values["zero"], contributions["zero"])
    return entry


def plain(item):
    """Floats, correctly rounded, in place of high precision."""
    if isinstance(item, dict):
        return {key: plain(value) for key, value in item.items()}
    if isinstance(item, list):
        return [plain(value) for value in item]
    return float(item) if isinstance(item, (mpf, Fraction)) else item


def evaluate(document):
    """The numbers of the report of a job document (parsed JSON), under the report's keys."""
    job = Job(document)
    conventions = {"reference_temperature_c": REFERENCE, "rule": job.rule}
    if job.rule == "conformance_probability":
        conventions["at_least"] = job.at_least
    if job.rule == "simple_acceptance_by_ratio":
        conventions["ratio_at_least"] = job.ratio_at_least
    if job.rule == "expanded_guard_band":
        conventions.update(zip(("acceptance_guard", "rejection_guard"), job.shares))
    gauges = [gauge_report(job, job.gauges[form["name"]]) for form in document["gauges"]]
    cylinders = []
    forms = {int(form["number"]): form for form in document["cylinders"]}
    for number in job.numbers():
        cylinder = job.cylinders.get(number)
        entry = CylinderReport(job, cylinder).report() if cylinder else {"number": number}
        for part, findings in signs.of_cylinder(document, forms.get(number, {})).items():
            (entry[part] if part else entry)["findings"] = findings
        cylinders.append(entry)
    engine = {}
    if job.windows:
        engine["windows"] = [{"from_depth_mm": real(w["depths"][0]), "to_depth_mm": real(w["depths"][1]),
                              "from_angle_deg": real(w["angles"][0]), "to_angle_deg": real(w["angles"][1] % 360)} for w in job.windows]
    stacks = [stack_document.of_job(stack) for stack in document.get("stacks", [])]
    parts = {"engine": engine, "stacks": stacks}
    if "plan" in document:
        import plan_job  # which needs this module

        parts["plan"] = plan_job.Plan(job, cylinders).report()
    parts = {name: part for name, part in parts.items() if part}
    return plain({"conventions": conventions, **parts, "gauges": gauges, "cylinders": cylinders})


def main(arguments):
    if len(arguments) != 1:
        print("usage: python tests/reference/assess.py FILE.json", file=sys.stderr)
        return 2
    with open(arguments[0], encoding="utf-8") as file:
        document = json.load(file)
    try:
        numbers = evaluate(document)
    except Refused as reason:
        print(f"refused: {reason}", file=sys.stderr)
        return 1
    print(json.dumps(numbers, indent=2, allow_nan=False))
    return 0


if __name__ == "__main__":
    sys.modules["assess"] = sys.modules["__main__"]  # one module, under both names, for those that import it
    sys.exit(main(sys.argv[1:]))
