"""A slow, independent evaluation of a fit document.

It follows core/docs/hot-fit.md and nothing else, and shares no method with the library: curves are SciPy's PCHIP, the smallest clearance is searched
on a dense grid and then polished by a general-purpose minimiser (with windows by finer and finer grids that hold their edges), no uncertainty is propagated (every source is moved by a part of its standard
uncertainty and the whole search is done again), first contact is bracketed on the searched minimum.

    python tests/reference/fit.py FILE.json
"""

import json
import math
import sys
from pathlib import Path

import numpy as np
from scipy.interpolate import PchipInterpolator
from scipy.optimize import brentq, minimize

import assess

ROOT_3 = math.sqrt(3.0)
# a part of a standard uncertainty: small enough for the second order to vanish, large enough over the noise of a search
STEP = 0.02


# an edge of a window belongs to what is around; rounding of a place is far below this
EDGE = 1e-9

# bands of temperatures by duty, C, from memory: skirt bottom, skirt top, oil groove, top groove, crown edge or bowl rim; whether air cools the bore
DUTIES = {
    "petrol, naturally aspirated": ((90, 120), (120, 155), (150, 180), (180, 220), (220, 260), False),
    "petrol, turbocharged, oil jet": ((95, 125), (130, 165), (155, 190), (190, 240), (240, 290), False),
    "light diesel, aluminium, gallery": ((95, 125), (125, 160), (160, 190), (200, 250), (320, 380), False),
    "heavy diesel, aluminium": ((90, 120), (120, 150), (155, 180), (200, 240), (320, 370), False),
    "heavy diesel, steel": ((85, 115), (110, 140), (140, 180), (200, 260), (400, 500), False),
    "petrol, air-cooled": ((120, 150), (150, 185), (170, 210), (210, 250), (240, 290), True),
    "petrol, two-stroke": ((130, 170), (150, 190), None, (200, 260), (240, 310), False),
}
WALL = ((140, 190), (100, 130), (85, 110))


def duty(name):
    """Rows of a duty: (share of height, thrust, pin) and (share of depth, wall)."""
    *bands, air = DUTIES[name]
    middle = lambda band: sum(band) / 2
    piston = []
    for at, warmer, band in zip((0.0, 1.0, 1.35, 1.75, 2.0), (15.0, 15.0, 7.5, 0.0, 0.0), bands, strict=True):
        if band is None:
            continue
        t = middle(band)
        if at == 2.0 and "diesel" in name:
            t = (middle(bands[3]) + t) / 2
        piston.append((at, t, t + warmer))
    return piston, [(at, middle(band) + (40.0 if air else 0.0)) for at, band in zip((0.0, 0.5, 1.0), WALL, strict=True)]


def number(text, of):
    return float(of(text))


def mm(text):
    return number(text, assess.length)


def celsius(text):
    return number(text, assess.temperature)


def curve(places, values):
    """PCHIP through rows; one row holds everywhere, two are a straight line."""
    if len(places) == 1:
        return lambda x: np.full_like(np.asarray(x, dtype=float), values[0])
    if len(places) == 2:
        return lambda x: values[0] + (np.asarray(x, dtype=float) - places[0]) * (values[1] - values[0]) / (places[1] - places[0])
    return PchipInterpolator(places, values)


def strain(form, shift):
    """Strain from 20 C by a law, with the error of its coefficient."""
    (kind, law), = form.items()
    base = celsius(law["base"])
    if kind == "mean_coefficient":
        a = number(law["value"], assess.coefficient) + shift
        mean = lambda t: np.full_like(t, a)
    elif kind == "mean_table":
        ts = [celsius(row["to"]) for row in law["rows"]]
        values = [number(row["value"], assess.coefficient) + shift for row in law["rows"]]
        mean = lambda t: np.interp(t, ts, values)
    else:
        raise assess.Refused(f"no law {kind} here")

    def eps(t):
        t = np.asarray(t, dtype=float)
        at_20 = 1 + mean(np.array(20.0)) * (20 - base)
        return (1 + mean(t) * (t - base)) / at_20 - 1

    return eps


class Fit:
    """The document with every source moved by `errors`, in standard uncertainties."""

    def __init__(self, document, errors=None, rise=(1.0, 1.0), original=None, field_error=True, bore=None):
        self.document, self.rise = document, rise
        e = (errors or {}).get
        self.materials = {}
        for m in document["materials"]:
            u = number(m["coefficient_permissible_error"], assess.coefficient) / ROOT_3
            self.materials[m["name"]] = strain(m["law"], u * e(f"coefficient of expansion of {m['name']}", 0.0))
        self.d_bore = self.size(document["bore"]["size"]) + self.size_u(document["bore"]["size"]) * e("size of the bore", 0.0)
        if bore is not None:
            self.d_bore = bore
        piston = document["piston"]
        self.d_piston = self.size(piston["size"]) + self.size_u(piston["size"]) * e("size of the piston", 0.0)
        self.gauge = mm(piston["gauge_height"])
        self.eps_bore = self.materials[document["bore"]["material"]]
        shape, self.skirt_material = piston["shape"], piston["material"]
        piston_form = "shape of the piston"
        if original is not None:
            self.skirt_material = original["material"]
            t = celsius(original["reference_temperature"])
            least = mm(original["least_clearance"])
            self.d_piston = (self.d_bore * (1 + self.eps_bore(t)) - least) / (1 + self.materials[self.skirt_material](t))
            if "shape" in original:
                shape, piston_form = original["shape"], "shape of the original piston"
        self.height = mm(shape["height"])
        self.piston_form = mm(shape.get("permissible_error", "0 mm")) / ROOT_3 * e(piston_form, 0.0)
        self.surfaces = [self.surface(s, e) for s in shape["surfaces"]]
        self.reference_gauge()
        bore = document["bore"].get("shape", {"rows": [{"depth": "0 mm", "deviation": "0 mm"}]})
        self.bore_form = mm(bore.get("permissible_error", "0 mm")) / ROOT_3 * e("shape of the bore", 0.0)
        ys = [mm(row["depth"]) for row in bore["rows"]]
        self.deviation = curve(ys, [mm(row["deviation"]) / 2 for row in bore["rows"]])
        self.waves = []
        for k, wave in enumerate(bore["rows"][0].get("harmonics", [])):
            cosine = curve(ys, [mm(row["harmonics"][k]["cos"]) for row in bore["rows"]])
            sine = curve(ys, [mm(row["harmonics"][k]["sin"]) for row in bore["rows"]])
            self.waves.append((int(wave["order"]), cosine, sine))
        self.ports = [self.port(w) for w in bore.get("windows", [])]
        self.motion()
        self.temperatures(document["running"], e)

    def temperatures(self, field, e):
        u = v = 25.0
        if "preset" in field:
            rows, wall = duty(field["preset"])
            low, top = self.surfaces[0]["z"]
            crown = max(self.height, self.surfaces[-1]["z"][1])
            zs = [low + (top - low) * at if at <= 1 else top + (crown - top) * (at - 1) for at, _, _ in rows]
            thrust, pin = [t for _, t, _ in rows], [t for _, _, t in rows]
            ys, wall = [at * (self.deck + self.height - low + self.stroke) for at, _ in wall], [t for _, t in wall]
        else:
            u, v = (number(field[f"{of}_permissible_error"], assess.difference) for of in ("piston", "bore"))
            zs = [mm(row["height"]) for row in field["piston"]]
            thrust, pin = ([celsius(row[of]) for row in field["piston"]] for of in ("thrust", "pin"))
            ys, wall = [mm(row["depth"]) for row in field["bore"]], [celsius(row["temperature"]) for row in field["bore"]]
        off = u / ROOT_3 * e("temperatures of the piston", 0.0), v / ROOT_3 * e("temperatures of the bore", 0.0)
        self.thrust = self.risen(curve(zs, thrust), off[0], self.rise[0])
        self.pin = self.risen(curve(zs, pin), off[0], self.rise[0])
        self.wall = self.risen(curve(ys, wall), off[1], self.rise[1])

    @staticmethod
    def port(w):
        return (number(w["from_angle"], assess.angle), number(w["to_angle"], assess.angle), mm(w["from_depth"]), mm(w["to_depth"]))

    @staticmethod
    def risen(field, off, k):
        return lambda x: 20 + k * (field(x) + off - 20)

    @staticmethod
    def size(entry):
        return mm(entry["value"])

    @staticmethod
    def size_u(entry):
        return mm(entry["expanded_uncertainty"]) / float(assess.pure(entry["coverage_factor"]))

    def surface(self, s, e):
        rows, sides = s.get("rows"), s.get("side_rows")
        if rows:
            zs = [mm(row["height"]) for row in rows]
            below = curve(zs, [-mm(row["below"]) / 2 for row in rows])
            oval = curve(zs, [mm(row["ovality"]) / 2 for row in rows])
            fourth = curve(zs, [mm(row.get("double_ovality", "0 mm")) / 2 for row in rows])
            tables = [(below, oval, fourth)] * 2
        else:
            zs = [mm(row["height"]) for row in sides]
            of = lambda name: curve(zs, [-mm(row[name]) for row in sides])
            pin, zero = of("pin_below"), curve([0.0], [0.0])
            tables = [(of(name), lambda z, of=of(name): of(z) - pin(z), zero) for name in ("thrust_below", "minor_thrust_below")]
        panel = number(s["thrust_panel"], assess.angle) if "thrust_panel" in s else 90.0
        minor = number(s["minor_thrust_panel"], assess.angle) if "minor_thrust_panel" in s else panel
        ratio = s.get("growth_ratio")
        ratios = (1.0, 1.0)
        if ratio:
            u = float(assess.pure(ratio["permissible_error"])) / ROOT_3 * e(f"growth ratios of the {s['name']}", 0.0)
            ratios = (float(assess.pure(ratio["thrust"])) + u, float(assess.pure(ratio["pin"])) + u)
        coat = mm(s["coating"]) if "coating" in s else 0.0
        windows = [(w["kind"], number(w["from_angle"], assess.angle), number(w["to_angle"], assess.angle), mm(w["from_height"]), mm(w["to_height"]))
                   for w in s.get("windows", [])]
        return {"name": s["name"], "z": (zs[0], zs[-1]), "rows": zs, "windows": windows, "tables": tables, "panel": (panel, minor), "ratios": ratios,
                "coat": coat, "eps": self.materials[s.get("material", self.skirt_material)]}

    def reference_gauge(self):
        tables = self.surfaces[0]["tables"]
        middle = (tables[0][0](self.gauge) + tables[1][0](self.gauge)) / 2
        shifted = lambda below: lambda z: below(z) - middle
        self.surfaces[0]["tables"] = [(shifted(b), o, f) for b, o, f in tables]

    def motion(self):
        motion = self.document.get("motion")
        self.moves = motion is not None
        if self.moves:
            r, l, o = mm(motion["crank_radius"]), mm(motion["rod_length"]), mm(motion.get("pin_offset", "0 mm"))
            self.stroke = math.sqrt((l + r) ** 2 - o * o) - math.sqrt((l - r) ** 2 - o * o)
            self.deck = mm(motion["deck_clearance"])

    def cold(self, surface, t, z):
        """Radius of the piston at 20 C; `t` in degrees."""
        t = np.asarray(t, dtype=float)
        major = np.cos(np.radians(t)) >= 0
        parts = []
        for below, oval, fourth in surface["tables"]:
            parts.append(self.d_piston / 2 + below(z) - oval(z) / 2 * (1 - np.cos(np.radians(2 * t))) + fourth(z) / 2 * (1 - np.cos(np.radians(4 * t))))
        return np.where(major, parts[0], parts[1]) + surface["coat"] + self.piston_form

    def piston(self, surface, t, z):
        half = np.radians(t)
        a, b = surface["ratios"]
        eps = a * surface["eps"](self.thrust(z)) * np.cos(half) ** 2 + b * surface["eps"](self.pin(z)) * np.sin(half) ** 2
        return self.cold(surface, t, z) * (1 + eps)

    def bore(self, t, y):
        radius = self.d_bore / 2 + self.deviation(y) + self.bore_form
        for n, cosine, sine in self.waves:
            radius = radius + cosine(y) * np.cos(n * np.radians(t)) + sine(y) * np.sin(n * np.radians(t))
        return radius * (1 + self.eps_bore(self.wall(y)))

    def clearance(self, surface, t, z, s):
        y = self.deck + self.height - z + s if self.moves else np.zeros_like(np.asarray(z, dtype=float))
        return self.bore(t, y) - self.piston(surface, t, z)

    def at_gauge(self):
        """Over the diameter, at top dead centre."""
        skirt = self.surfaces[0]
        return float(sum(self.clearance(skirt, np.array(t), np.array(self.gauge), 0.0) for t in (0.0, 180.0)))

    def edges(self, surface):
        """Angles, heights and depths at which a window begins or ends; the angles on both sides of a panel too."""
        thrust, minor = surface["panel"]
        t = [-thrust, thrust, 180 - minor, 180 + minor]
        t += [a for w in surface["windows"] for a in w[1:3]] + [a for p in self.ports for a in p[:2]]
        return np.array(t), np.array([z for w in surface["windows"] for z in w[3:]]), np.array([y for p in self.ports for y in p[2:]])

    def masked(self, surface, t, z, s):
        """Clearance where there is surface and wall, else infinite; a bare window lacks the coating."""
        t, z, s = np.broadcast_arrays(*(np.asarray(x, dtype=float) for x in (t, z, s)))
        y = self.deck + self.height - z + s if self.moves else np.zeros_like(z)
        gap = self.clearance(surface, t, z, s)
        apart = np.abs((t + 180) % 360 - 180)
        there = (apart <= surface["panel"][0] + EDGE) | (180 - apart <= surface["panel"][1] + EDGE)
        within = lambda x, low, high: (x > low + EDGE) & (x < high - EDGE)
        across = lambda a, b: within((t - a) % 360, 0.0, (b - a) % 360)
        bare = np.zeros_like(there)
        for kind, a, b, low, high in surface["windows"]:
            inside = across(a, b) & within(z, low, high)
            if kind == "bare":
                bare |= inside
            else:
                there &= ~inside
        for a, b, low, high in self.ports:
            there &= ~(across(a, b) & within(y, low, high))
        grown = self.piston(surface, t, z) / self.cold(surface, t, z)
        return np.where(there, gap + np.where(bare, surface["coat"] * grown, 0.0), np.inf)

    def smallest(self, surface):
        """Least clearance over angles, heights and travels, with its place."""
        thrust, minor = surface["panel"]
        edges = self.edges(surface)
        z = np.unique(np.concatenate([np.linspace(*surface["z"], 33), surface["rows"], edges[1]]))
        s = np.linspace(0.0, self.stroke, 25) if self.moves else np.array([0.0])
        if surface["windows"] or self.ports:
            return self.finer(surface, z, edges)
        best = None
        for low, high in [(-thrust, thrust), (180 - minor, 180 + minor)]:
            t = np.linspace(low, high, 61)
            grid = self.clearance(surface, t[:, None, None], z[None, :, None], s[None, None, :])
            order = np.argsort(grid, axis=None)[:1]
            bounds = [(low, high), surface["z"], (0.0, self.stroke if self.moves else 0.0)]
            for flat in order:
                i, j, k = np.unravel_index(flat, grid.shape)
                best = self.polished(surface, np.array([t[i], z[j], s[k]]), bounds, grid[i, j, k], best)
        return best

    def finer(self, surface, z, edges):
        """A grid that holds every edge, then finer ones around its best places."""
        stroke = self.stroke if self.moves else 0.0
        offset = self.deck + self.height if self.moves else 0.0
        # with the travels that bring a height to the edge of a port
        travels = lambda local, z: np.clip(np.concatenate([np.broadcast_to(local, (len(z), len(local))), edges[2] - offset + z[:, None]], axis=1), 0, stroke)
        looked = lambda t, z, s: self.masked(surface, t[:, None, None], z[None, :, None], s[None, :, :])
        t = np.unique(np.concatenate([np.arange(0, 360, 4.0), edges[0] % 360]))
        s = travels(np.linspace(0, stroke, 33), z)
        grid = looked(t, z, s)
        best = (np.inf, None)
        for flat in np.argsort(grid, axis=None)[:400:80]:
            i, j, k = np.unravel_index(flat, grid.shape)
            place, wide = (t[i], z[j], s[j, k]), (6.0, (surface["z"][1] - surface["z"][0]) / 16, stroke / 20)
            for _ in range(30):
                near = [p + w * np.linspace(-1, 1, 9) for p, w in zip(place, wide, strict=True)]
                lt = np.concatenate([near[0], edges[0][np.abs((edges[0] - place[0] + 180) % 360 - 180) <= wide[0]]]) % 360
                lz = np.concatenate([np.clip(near[1], *surface["z"]), edges[1][np.abs(edges[1] - place[1]) <= wide[1]]])
                ls = travels(near[2], lz)
                local = looked(lt, lz, ls)
                a, b, c = np.unravel_index(np.argmin(local), local.shape)
                place, wide = (lt[a], lz[b], ls[b, c]), tuple(w * 0.5 for w in wide)
                if local[a, b, c] < best[0]:
                    best = (float(local[a, b, c]), np.array(place))
        return best

    def polished(self, surface, start, bounds, value, best):
        def within(x):
            return np.array([min(max(v, low), high) for v, (low, high) in zip(x, bounds, strict=True)])

        def of(x):
            x = within(x)
            return float(self.clearance(surface, np.array(x[0]), np.array(x[1]), np.array(x[2])))

        if best is None or value < best[0]:
            best = (float(value), start)
        options = {"xatol": 1e-6, "fatol": 1e-13, "maxiter": 400, "initial_simplex": self.simplex(start, bounds)}
        found = minimize(of, start, method="Nelder-Mead", options=options)
        return (float(found.fun), within(found.x)) if found.fun < best[0] else best

    @staticmethod
    def simplex(start, bounds):
        points = [start]
        for k, (low, high) in enumerate(bounds):
            step = (high - low) / 30 or 1e-9
            moved = start.copy()
            moved[k] = start[k] + step if start[k] + step <= high else start[k] - step
            points.append(moved)
        return np.array(points)


def sources(document):
    names = ["size of the bore", "size of the piston", "temperatures of the piston", "temperatures of the bore"]
    names += [f"coefficient of expansion of {m['name']}" for m in document["materials"]]
    names += ["shape of the piston", "shape of the bore", "shape of the original piston"]
    names += [f"growth ratios of the {s['name']}" for s in document["piston"]["shape"]["surfaces"]]
    return names


def smallest_of_skirt(fit):
    return fit.smallest(fit.surfaces[0])[0]


def onset(document, scenario, touching, highest):
    """Factor on the rise at which the smallest clearance of the skirt is used up, or none up to `highest`."""
    rise = {"piston_alone": lambda k: (k, 1.0), "piston_and_bore": lambda k: (k, k), "piston_with_cold_bore": lambda k: (k, 0.0)}[scenario]
    gap = lambda k: smallest_of_skirt(Fit(document, rise=rise(k))) - touching
    ks = np.linspace(0.0, highest, 5)
    values = [gap(k) for k in ks]
    if values[0] <= 0:
        return 0.0
    for low, high, a, b in zip(ks, ks[1:], values, values[1:], strict=False):
        if a > 0 >= b:
            return brentq(gap, low, high, xtol=1e-8)
    return None


def main(arguments):
    document = json.loads(Path(arguments[0]).read_text(encoding="utf-8"))
    fit = Fit(document)
    print("running at the gauge point", fit.at_gauge())
    for surface in fit.surfaces:
        print(surface["name"], *fit.smallest(surface))
    original = Fit(document, original=document["reference"])
    print("original", original.at_gauge(), *original.smallest(original.surfaces[0]))


if __name__ == "__main__":
    main(sys.argv[1:])
