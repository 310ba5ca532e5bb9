"""A slow, obvious, independent evaluation of a measurement document.

It follows core/docs/measurement.md and the models of core/docs/model.md, with the quantities, laws and differences of `assess.py`
beside it, and shares no code and no method with the library:

- the linear budget: every source is moved up and down in the whole chain, and the results are differenced;
- an effect that is even in an angle anywhere within +-a enters the linear budget with the exact mean ``1 - sin(a) / a`` and the
  exact variance ``1/2 + sin(2 a) / (4 a) - (sin(a) / a)^2`` of ``1 - cos``; with `exact` the chain has the cosine itself;
- the shift of the mean to second order: half the sum of the second differences of the exact chain.

    python tests/reference/measure.py FILE.json
"""

import json
import sys

from assess import (
    ONE, ROOT_3, ZERO, Errors, Fraction, Job, Reading, angle, convert, data_sheet, date, degrees_of_freedom, difference, grown,
    half_width, length, mean, mp, mpf, propagate, pure, real, reliability, setting_size, t_factor, temperature, unique, with_errors,
    zero_error,
)

FORCE = {"N": Fraction(1), "kgf": Fraction(980665, 100000), "lbf": Fraction(44482216152605, 10**13)}
STIFFNESS = {"N/um": Fraction(1000), "N/mm": Fraction(1)}  # in N/mm
SLOPE = {"um/mm": Fraction(1, 1000), "mm/m": Fraction(1, 1000)}  # in mm/mm


class Measurement(Job):
    """The document with its quantities as numbers and its sources named."""

    def __init__(self, document):
        self.document = {**document, "gauges": [data_sheet(form) for form in document.get("gauges", [])]}
        self.sources = {}
        shop = document["shop"]
        self.shop_temperature = real(temperature(shop["temperature"]))
        self.thermometer = self.source(("thermometer",), half_width(difference(shop["thermometer"]["permissible_error"])), "", "",
                                       reliability("thermometer", shop["thermometer"]))
        self.materials = unique(((m["name"], self.material(i, m)) for i, m in enumerate(document["materials"])), "material")
        self.day = date.fromisoformat(document["measurement"]["date"])
        self.gauges = {}
        for i, form in sorted(enumerate(self.document["gauges"]), key=lambda item: item[1]["kind"] == "bore_gauge"):
            self.gauges[form["name"]] = self.gauge(i, form)
        self.others = {kind: {g["name"]: g for g in document.get(kind, [])}
                       for kind in ("transfer_gauges", "feeler_strips", "depth_indicators")}

    def new(self, key, u):
        return self.source(key, u, "", "")

    def values(self, err, exact):
        """Every reading and difference, by name."""
        out = {}
        for form in self.document["readings"]:
            (what, data), = form.items()
            out[data["name"]] = getattr(self, what)(data, err, exact)
        for form in self.document.get("differences", []):
            out[form["name"]] = out[form["larger"]] - out[form["smaller"]]
        return out

    def part(self, data, err, name="material"):
        material = self.named(self.materials, data[name])
        return grown(material, real(temperature(data["temperature"])), err, self.thermometer)

    def frame(self, material, data, err):
        return grown(material, self.gauge_temperature(data), err, self.thermometer)

    # ------------------------------------------------------------------------------------------------------------ placement

    def even(self, key, a, treatment, err, exact):
        """1 - cos of an angle anywhere within +-a."""
        if exact:
            return ONE - mp.cos(err(self.new(key, a / ROOT_3)))
        mu, deviation = versine(a)
        return (mu if treatment == "corrected" else ZERO) + err(self.new(key, deviation))

    def upright(self, data, size, err, exact):
        if "tilt" not in data:
            return size
        tilt = data["tilt"]
        return size * (ONE - self.even(("tilt", data["name"], exact), radians(tilt), tilt["treatment"], err, exact))

    def on_axis(self, data, size, err, exact):
        if "off_axis" not in data:
            return size
        off = data["off_axis"]
        g = self.even(("off axis", data["name"], exact), 2 * radians(off), off["treatment"], err, exact)
        return size + real(length(off["ovality"])) / 2 * g

    def at_height(self, data, size, err):
        if "height" not in data:
            return size
        slope = real(convert(data["height"]["profile_slope"], SLOPE))
        return size + slope * err(self.new(("height", data["name"]), half_width(length(data["height"]["half_width"]))))

    def unpressed(self, data, size, err):
        if "force" not in data:
            return size
        f = data["force"]
        force, stiffness = real(convert(f["force"], FORCE)), real(convert(f["skirt_stiffness"], STIFFNESS))
        force += err(self.new(("force", data["name"]), half_width(convert(f["force_permissible_error"], FORCE))))
        stiffness += err(self.new(("stiffness", data["name"]), half_width(convert(f["stiffness_permissible_error"], STIFFNESS))))
        return size + force / stiffness

    # ------------------------------------------------------------------------------------------------------------- readings

    def read(self, name, data, err):
        """What a micrometer shows between its faces, less its zero."""
        i = self.gauge_index(name)
        repeats = [length(typed) for typed in data["repeats"]]
        reading = self.micrometer_reading(i, repeats, data["name"], "")
        reading.sources.append(self.repeatability(i, len(repeats), data["name"], ""))
        return with_errors(reading, err) - zero_error(self, self.outside_gauge(name), err)

    def outside(self, data, err, exact):
        frame = self.frame(self.outside_gauge(data["gauge"]).material, data, err)
        size = self.read(data["gauge"], data, err) * frame / self.part(data, err)
        return self.at_height(data, self.on_axis(data, self.unpressed(data, size, err), err, exact), err)

    def transferred(self, data, err, exact):
        frame = self.frame(self.outside_gauge(data["micrometer"]).material, data, err)
        u = real(length(self.others["transfer_gauges"][data["gauge"]]["repeatability"])) / mp.sqrt(len(data["repeats"]))
        read = self.read(data["micrometer"], data, err) + err(self.new(("feel", data["name"]), u))
        return self.upright(data, read * frame / self.part(data, err), err, exact)

    def inside(self, data, err, exact):
        i, gauge = self.gauge_index(data["gauge"]), self.bore_gauge(data["gauge"])
        form = self.document["gauges"][i]
        span = setting_size(self, gauge.setting, err) / grown(gauge.material, gauge.setting.temperature, err, self.thermometer)
        reading = self.deviation(("gauge", i), form, data["repeats"], data["name"])
        deviation = with_errors(Reading(reading.mm, reading.sources + self.drift_sources(i, data["name"], "")), err)
        size = (span * self.frame(gauge.material, data, err) + deviation) / self.part(data, err)
        return self.at_height(data, self.upright(data, size, err, exact), err)

    def deviation(self, key, form, typed, use):
        repeats = [length(t) for t in typed]
        value = mean(repeats)
        u = real(length(form["repeatability"])) / mp.sqrt(len(repeats))
        sources = [self.new(("travel", key, value), half_width(length(form["permissible_error"]))),
                   self.new(("resolution", key, use), half_width(length(form["resolution"]) / 2)),
                   self.new(("repeatability", key, use), u)]
        return Reading(real(value), sources)

    def clearance(self, data, err, exact):
        strips = self.others["feeler_strips"][data["gauge"]]
        repeats = [length(typed) for typed in data["repeats"]]
        u = real(length(strips["repeatability"])) / mp.sqrt(len(repeats))
        sources = [self.new(("strip", data["name"]), half_width(length(strips["permissible_error"]))),
                   self.new(("steps", data["name"]), half_width(length(strips["resolution"]) / 2)),
                   self.new(("feel", data["name"]), u),
                   self.new(("drag", data["name"]), half_width(length(strips["drag"]["permissible_error"])))]
        strip = Reading(real(mean(repeats) + length(strips["drag"]["allowance"])), sources)
        # the piston that leaves this clearance in a bore of nominal size at the temperature of both
        nominal = real(length(data["nominal"]))
        piston = (nominal * self.part(data, err) - with_errors(strip, err)) / self.part(data, err, "piston_material")
        return nominal - piston

    def depth(self, data, err, exact):
        form = self.others["depth_indicators"][data["gauge"]]
        material = self.named(self.materials, form["material"])
        (kind, zero), = form["zeroed"].items()
        t = real(temperature(zero["temperature"]))
        if kind == "flat":
            span = err(self.new(("flat", form["name"]), half_width(length(zero["permissible_error"]))))
        else:
            u = real(length(zero["expanded_uncertainty"]) / pure(zero["coverage_factor"]))
            span = (real(length(zero["size"])) + err(self.new(("master", form["name"]), u)))
            span *= grown(self.named(self.materials, zero["material"]), t, err, self.thermometer)
        span += err(self.new(("needle", form["name"]), half_width(length(form["resolution"]) / 2)))
        span = span / grown(material, t, err, self.thermometer) * self.frame(material, data, err)
        points = [with_errors(self.deviation(form["name"], form, data[name], (data["name"], name)), err)
                  for name in ("repeats", "opposite")]
        return (span + self.upright(data, sum(points) / 2, err, exact)) / self.part(data, err)

    # -------------------------------------------------------------------------------------------------------------- effects

    def effects(self, data, value):
        """Means of the effects of one reading, indicated less true, and whether each is stated only."""
        if "force" in data:
            f = data["force"]
            yield -real(convert(f["force"], FORCE)) / real(convert(f["skirt_stiffness"], STIFFNESS)), False
        if "off_axis" in data:
            off = data["off_axis"]
            yield -real(length(off["ovality"])) / 2 * versine(2 * radians(off))[0], off["treatment"] == "stated"
        if "tilt" in data:
            tilt = data["tilt"]
            mu = versine(radians(tilt))[0]
            stated = tilt["treatment"] == "stated"
            if "opposite" in data:
                value = real(mean([mean([length(t) for t in data[name]]) for name in ("repeats", "opposite")]))
                yield value * mu, stated
            else:
                yield (value if stated else value / (ONE - mu)) * mu, stated


def radians(form):
    return real(angle(form["half_width"])) * mp.pi / 180


def versine(a):
    """Exact mean and standard deviation of 1 - cos of an angle anywhere within +-a."""
    variance = mpf(1) / 2 + mp.sin(2 * a) / (4 * a) - (mp.sin(a) / a) ** 2
    return ONE - mp.sin(a) / a, mp.sqrt(variance)


def shifts(chain):
    """Value at the estimates and second-order shift of the mean, by name."""
    still = Errors()
    values = chain(still)
    out = {name: ZERO for name in values}
    for source in still.touched.values():
        step = mpf(10) ** -8 * source.u
        up, down = chain(Errors(source, step)), chain(Errors(source, -step))
        for name, value in values.items():
            out[name] += (up[name] + down[name] - 2 * value) / mpf(10) ** -16 / 2
    return values, out


def evaluate(document):
    """The numbers of the report, by name of reading and difference."""
    job = Measurement(document)
    values, contributions = propagate(lambda err: job.values(err, False))
    centres, moved = shifts(lambda err: job.values(err, True))
    told = {}
    for form in document["readings"]:
        (_, data), = form.items()
        told[data["name"]] = list(job.effects(data, values[data["name"]]))
    for form in document.get("differences", []):
        told[form["name"]] = told[form["larger"]] + [(-mu, stated) for mu, stated in told[form["smaller"]]]
    k = mp.sqrt(2) * mp.erfinv(real(pure(document.get("probability", "0.95"))))
    out = {}
    for name, value in values.items():
        parts = [c for _, c in contributions[name]]
        u = mp.sqrt(sum(c * c for c in parts))
        out[name] = {
            "value_mm": float(value), "standard_uncertainty_mm": float(u), "expanded_uncertainty_mm": float(t_factor(k, degrees_of_freedom(contributions[name])) * u),
            "contributions_mm": sorted(float(c) for c in parts),
            "effects_mm": [float(mu) for mu, _ in told[name]],
            "second_order_mean_mm": float(centres[name] + moved[name]), "shift_of_mean_mm": float(moved[name]),
        }
        if any(stated for _, stated in told[name]):
            out[name]["stated_bias_mm"] = float(sum(mu for mu, stated in told[name] if stated))
    return out


if __name__ == "__main__":
    with open(sys.argv[1], encoding="utf-8") as file:
        print(json.dumps(evaluate(json.load(file)), indent=1))
