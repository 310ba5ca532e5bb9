"""The hot fits of a job, evaluated slowly and independently: core/docs/job.md and hot-fit.md, and nothing else.

Where a clearance is smallest, and where something first touches, is searched by ``fit.py``. At the place that was found the chain of ``assess.py`` is
evaluated with every source of uncertainty moved in turn: a smallest value moves as the value at its place, to first order.
"""

import numpy as np

import assess
import fit
from assess import ONE, ZERO, mpf, mp, real
from scipy.optimize import brentq

SCENARIOS = {"piston_alone": lambda k: (k, ONE), "piston_and_bore": lambda k: (k, k), "piston_with_cold_bore": lambda k: (k, ZERO)}
# the first order vanishes below this part of the rise
STEP = mpf(10) ** -12


class Levels:
    """What was read of a bore: at each depth the weights of its readings in the mean diameter and in the order 2 of the radius."""

    def __init__(self, places):
        depths = sorted({place.depth for place in places})
        self.rows = [(real(depth), *self.weights([(i, p) for i, p in enumerate(places) if p.depth == depth])) for depth in depths]

    @staticmethod
    def weights(here):
        axes = [float(place.axis) for _, place in here]
        count = len(here)
        mean = [(i, ONE / count) for i, _ in here]
        turns = sorted(axis % 180 for axis in axes)
        if count < 2 or any(abs(b - a - 180 / count) > 1e-3 for a, b in zip(turns, turns[1:])):
            return mean, [], []
        # the solution of least squares, and of those the shortest, of D = mean + A cos 2t + B sin 2t; the radius has half of A and B
        t = np.radians(2 * np.array(axes))
        solution = np.linalg.pinv(np.column_stack([np.ones(count), np.cos(t), np.sin(t)]))
        return mean, *([(i, mpf(w) / 2) for (i, _), w in zip(here, row)] for row in solution[1:])

    def rows_of(self, sizes):
        """Depth, mean diameter, and cosine and sine part of the radius."""
        total = lambda weights: sum((w * sizes[i] for i, w in weights), ZERO)
        return [(depth, total(mean), total(cosine), total(sine)) for depth, mean, cosine, sine in self.rows]

    def radius(self, sizes, t, y):
        """Straight between depths, as at the first above it, as at the last below it."""
        radii = [(depth, d / 2 + a * cosine(2 * t) + b * sine(2 * t)) for depth, d, a, b in self.rows_of(sizes)]
        if y <= radii[0][0]:
            return radii[0][1]
        for (y0, r0), (y1, r1) in zip(radii, radii[1:]):
            if y <= y1:
                return r0 + (r1 - r0) * (y - y0) / (y1 - y0)
        return radii[-1][1]


def cosine(degrees):
    return mp.cos(mp.radians(degrees))


def sine(degrees):
    return mp.sin(mp.radians(degrees))


class JobFit(fit.Fit):
    """A fit document of one cylinder, in a bore as it was read."""

    def __init__(self, document, rows, end, **more):
        super().__init__(document, **more)
        self.levels, self.end = [np.array([float(x) for x in column]) for column in zip(*rows)], end

    def bore(self, t, y):
        depths, mean, a, b = self.levels
        at = lambda column: np.interp(y, depths, column)
        double = np.radians(2 * t)
        radius = at(mean) / 2 + at(a) * np.cos(double) + at(b) * np.sin(double)
        # above the deck and below its end there is no bore
        return np.where((y >= 0) & (y <= self.end), radius * (1 + self.eps_bore(self.wall(y))), np.inf)


def smallest(searched, index):
    """Smallest clearance of a surface, with its place; the search may end beside the surface, where it takes the value of its edge."""
    surface = searched.surfaces[index]
    value, (t, z, s) = searched.smallest(surface)
    return value, (t, min(max(z, surface["z"][0]), surface["z"][1]), min(max(s, 0.0), searched.stroke))


def stated(mm):
    return {"value": f"{float(mm):.15f} mm", "expanded_uncertainty": "0 mm", "coverage_factor": 1}


class Cylinder:
    """One piston in its bore: what is searched, and the chain at a place."""

    def __init__(self, job, cylinder, weights):
        self.job, self.cylinder, self.weights = job, cylinder, weights
        document = job.document
        self.engine, self.running = document["engine"], document["running"]
        self.field = self.running["field"]
        self.levels = Levels(cylinder.bore.places)
        values = assess.cylinder_values(job, cylinder, weights, assess.Errors())
        limit = job.limits["bench_clearance"]
        piston = values[assess.clearance_surface(job, cylinder.piston)]
        shape = self.engine["piston"]["shape"]
        self.document = {"materials": document["materials"], "bore": {"size": stated(values["size"]), "material": self.engine["bore"]["material"]},
                         "piston": {"size": stated(piston), "gauge_height": self.engine["piston"]["gauge_point"]["height"],
                                    "material": self.engine["piston"]["material"], "shape": shape},
                         "motion": self.engine["motion"], "running": self.field}
        self.original = {"material": self.running["original_piston_material"], "reference_temperature": limit_text(document, "reference_temperature"),
                         "least_clearance": limit_text(document, "min"), "shape": self.running.get("original_piston_shape", shape)}
        self.limit = limit
        self.rows = self.levels.rows_of(assess.place_sizes(job, cylinder.bore, assess.Errors()))
        self.end = fit.mm(self.engine["bore"]["length"])
        self.own, self.of_original = self.fit(), self.fit(original=self.original)

    def fit(self, **more):
        return JobFit(self.document, self.rows, self.end, **more)

    # ------------------------------------------------------------------------------------------------------------- the search

    def least(self, rise):
        """The smallest clearance over all surfaces: value, index of the surface, place."""
        at = self.fit(rise=tuple(float(k) for k in rise))
        found = [(*smallest(at, k), k) for k in range(len(at.surfaces))]
        return min(found, key=lambda one: one[0])

    def contact(self, scenario):
        """Factor of first contact, with the surface and the place; none up to where a law ends, with that factor."""
        touching = -fit.mm(self.job.document["elastic"]["overlap_per_side"]) if "elastic" in self.job.document else 0.0
        highest = self.highest(scenario)
        gap = lambda k: self.least(SCENARIOS[scenario](k))[0] - touching
        ks = np.linspace(0.0, highest, 4)
        values = [gap(k) for k in ks]
        for low, high, a, b in zip(ks, ks[1:], values, values[1:]):
            if a > 0 >= b:
                k = brentq(gap, low, high, xtol=1e-9)
                _, place, surface = self.least(SCENARIOS[scenario](k))
                return k, surface, place
        return highest, None, None

    def highest(self, scenario):
        """How far every law of the piston, and of a bore that grows hotter with it, holds."""
        job = self.job
        ends = []
        for surface in self.engine["piston"]["shape"]["surfaces"]:
            law = job.materials[surface.get("material", self.engine["piston"]["material"])].law
            z = [fit.mm(row["height"]) for row in surface.get("rows", surface.get("side_rows"))]
            # rows of the field within the surface and its ends: the curve is monotone between
            places = [z[0], z[-1]] + [h for h in (fit.mm(row["height"]) for row in self.field["piston"]) if z[0] < h < z[-1]]
            ends += [(float(law.high) - 20) / (float(of(h)) - 20) for of in (self.own.thrust, self.own.pin) for h in places]
        if scenario == "piston_and_bore":
            hottest = max(fit.celsius(row["temperature"]) for row in self.field["bore"])
            ends.append((float(job.bore_material.law.high) - 20) / (hottest - 20))
        return min(ends)

    # -------------------------------------------------------------------------------------------------------------- the chain

    def source(self, name, entry, path):
        """A half-width as one source for all that it is stated of."""
        return self.job.source(("hot", name), assess.half_width(entry), name, path)

    def form_error(self, shape, name, path):
        if "permissible_error" not in shape:
            return None
        return self.source(name, assess.length(shape["permissible_error"]), path + "/permissible_error")

    def temperature(self, curve, at, part, k, err):
        """A temperature of the field, off by its error, at a part of its rise."""
        name = f"temperatures of the {part}"
        error = self.source(name, assess.difference(self.field[f"{part}_permissible_error"]), f"/running/field/{part}_permissible_error")
        return 20 + k * (mpf(float(curve(at))) + err(error) - 20)

    def piston_radius(self, searched, original, d, index, t, z, k, err):
        if original:
            shape, path = self.running.get("original_piston_shape"), "/running/original_piston_shape"
            name = "shape of the original piston"
        if not original or shape is None:
            shape, path, name = self.engine["piston"]["shape"], "/engine/piston/shape", "shape of the pistons"
        entry, surface = shape["surfaces"][index], searched.surfaces[index]
        below, oval, fourth = (mpf(float(of(z))) for of in surface["tables"][0 if cosine(t) >= 0 else 1])
        cold = d / 2 + below - oval / 2 * (1 - cosine(2 * t)) + fourth / 2 * (1 - cosine(4 * t))
        cold += real(assess.length(entry.get("coating", "0 mm")))
        error = self.form_error(shape, name, path)
        cold += err(error) if error else ZERO
        skirt = self.running["original_piston_material"] if original else self.engine["piston"]["material"]
        material = self.job.materials[entry.get("material", skirt)]
        ratios = self.ratios(entry, f"{path}/surfaces/{index}", err)
        thrust = assess.grown(material, self.temperature(self.own.thrust, z, "piston", k, err), err) - 1
        pin = assess.grown(material, self.temperature(self.own.pin, z, "piston", k, err), err) - 1
        return cold * (1 + ratios[0] * thrust * cosine(t) ** 2 + ratios[1] * pin * sine(t) ** 2)

    def ratios(self, entry, path, err):
        ratio = entry.get("growth_ratio")
        if ratio is None:
            return ONE, ONE
        name = f"growth ratios of the {entry['name']}"
        error = err(self.source(name, assess.pure(ratio["permissible_error"]), path + "/growth_ratio/permissible_error"))
        return real(assess.pure(ratio["thrust"])) + error, real(assess.pure(ratio["pin"])) + error

    def clearance(self, index, place, err, rise=(ONE, ONE), original=False):
        """On one side at a place: angle, height, travel."""
        t, z, s = (mpf(float(x)) for x in place)
        searched = self.of_original if original else self.own
        y = mpf(searched.deck) + mpf(searched.height) - z + s
        values = assess.cylinder_values(self.job, self.cylinder, self.weights, err)
        sizes = [values["place", i] for i in range(len(self.cylinder.bore.places))]
        wall = self.temperature(self.own.wall, y, "bore", rise[1], err)
        bore = self.levels.radius(sizes, t, y) * assess.grown(self.job.bore_material, wall, err)
        piston = self.piston_size(values, err, original)
        return bore - self.piston_radius(searched, original, piston, index, t, z, rise[0], err)

    def piston_size(self, values, err, original):
        if original:
            return assess.original_size(self.job, values["size"], self.limit, err)
        return values[assess.clearance_surface(self.job, self.cylinder.piston)]

    def at_gauge(self, err, original=False):
        places = [(t, self.own.gauge, 0.0) for t in (0, 180)]
        return sum((self.clearance(0, place, err, original=original) for place in places), ZERO)

    # ------------------------------------------------------------------------------------------------------------- the report

    def chain(self):
        """Every clearance with the sources moved, at the places where they are smallest."""
        places = [smallest(self.own, k)[1] for k in range(len(self.own.surfaces))]
        place_of_original = smallest(self.of_original, 0)[1]

        def values(err):
            bench = assess.cylinder_values(self.job, self.cylinder, self.weights, err)["bench"]
            own, original = self.at_gauge(err), self.at_gauge(err, original=True)
            least = [self.clearance(k, place, err) for k, place in enumerate(places)]
            of_original = self.clearance(0, place_of_original, err, original=True)
            return {"bench": bench, "running": own, "reference": original, "margin": own - original, "least": of_original,
                    "smallest_margin": least[0] - of_original, **dict(enumerate(least))}

        return values

    def report(self):
        values, contributions = assess.propagate(self.chain())
        told = lambda name: assess.measured(values[name], contributions[name])
        gauge = self.own.gauge
        depth = self.own.deck + self.own.height - gauge
        return {"bench": told("bench"), "running": told("running"),
                "gauge_point": {"thrust_c": float(self.own.thrust(gauge)), "pin_c": float(self.own.pin(gauge)), "bore_c": float(self.own.wall(depth))},
                "surfaces": [{"smallest": told(k)} for k in range(len(self.own.surfaces))],
                "reference": {"running": told("reference"), "margin": told("margin"), "smallest_mm": values["least"],
                              "smallest_margin": told("smallest_margin")},
                "onset": [self.onset(scenario) for scenario in SCENARIOS]}

    def onset(self, scenario):
        k, surface, place = self.contact(scenario)
        thrust = float(self.own.thrust(self.own.gauge))
        entry = {"factor": k, "thrust_c": 20 + k * (thrust - 20)}
        if place is None:
            return entry
        rise = SCENARIOS[scenario]
        at = lambda k, err=assess.Errors(): self.clearance(surface, place, err, rise(k))
        per_kelvin = (at(mpf(k) + STEP) - at(mpf(k) - STEP)) / (2 * STEP) / (thrust - 20)
        _, contributions = assess.propagate(lambda err: {"c": at(mpf(k), err)})
        # the temperature of the piston is what is asked for, and that of a bore that follows it, too
        asked = {"temperatures of the piston"} | (set() if scenario == "piston_alone" else {"temperatures of the bore"})
        kelvin = [(s, -c / per_kelvin) for s, c in contributions["c"] if s.name not in asked]
        u = assess.standard_uncertainty(kelvin)
        lines = [{"source": s.name, "contribution_k": c, "share": c * c / (u * u), "path": s.path} for s, c in kelvin]
        return {**entry, "standard_uncertainty_k": u, "budget": lines}


def limit_text(document, name):
    return document["engine"]["limits"]["bench_clearance"][name]


def at_gauge_point(job):
    """Temperatures of the thrust side and of the wall at the gauge point, and the half-widths of their errors."""
    engine, field = job.document["engine"], job.document["running"]["field"]
    gauge = fit.mm(engine["piston"]["gauge_point"]["height"])
    depth = fit.mm(engine["motion"]["deck_clearance"]) + fit.mm(engine["piston"]["shape"]["height"]) - gauge
    of = lambda part, place, name: fit.curve([fit.mm(row[place]) for row in field[part]], [fit.celsius(row[name]) for row in field[part]])
    found = {"piston": of("piston", "height", "thrust")(gauge), "bore": of("bore", "depth", "temperature")(depth)}
    return {part: (mpf(float(t)), real(assess.difference(field[f"{part}_permissible_error"]))) for part, t in found.items()}


def growth_ratio(job, shape, path, err):
    """What controlled expansion leaves of the growth of a skirt on its thrust axis."""
    entry = shape["surfaces"][0]
    ratio = entry.get("growth_ratio")
    if ratio is None:
        return ONE
    name = f"growth ratios of the {entry['name']}"
    error = job.source(("hot", name), assess.half_width(assess.pure(ratio["permissible_error"])), name,
                       path + "/surfaces/0/growth_ratio/permissible_error")
    return real(assess.pure(ratio["thrust"])) + err(error)
