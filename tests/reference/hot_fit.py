"""Clearances of running pistons by brute force, and the rows of tests/vectors/hot_fit.csv.

Nothing here reads the library: formulas of DESIGN sections 4 to 6 as numpy expressions over dense grids, curves by SciPy's PCHIP, the least place
refined on ever finer grids around the best ones, the best sideways shift by SciPy's linear programme. Laws here have a constant coefficient, so that
the clearance of every place is a straight line in the factor of the rise, and first contact is the least of their roots: no search along the factor.

``python tests/reference/hot_fit.py`` writes the file (numpy, scipy); with ``--check`` it only compares.
"""

import sys
from pathlib import Path

import numpy as np
from scipy.interpolate import PchipInterpolator
from scipy.optimize import linprog

import compare

FILE = Path(__file__).resolve().parent.parent / "vectors" / "hot_fit.csv"
HEADING = """\
# Hot fits: a random fit, and what brute force finds. Written by reference/hot_fit.py (numpy, SciPy), which explains the numbers.
# mm, degrees, C; lists by /; a table is heights@values. Smallest clearances to 1e-8 mm.
id,fit,expected,source
"""
SOURCE = "brute force by reference/hot_fit.py"
LAW_END, LARGEST = 400.0, 8.0
COEFFICIENT = {"piston": 20.5e-6, "bore": 11.4e-6}


def curve(table):
    places, values = table
    if len(places) == 1:
        return lambda x: np.full_like(np.asarray(x, float), values[0])
    return PchipInterpolator(places, values)


def cyclic(t, window):
    a, b = window
    along, width = (t - a) % 360, (b - a) % 360
    return (along > 0) & (along < width)


class Fit:
    def __init__(self, f):
        self.f = f
        self.barrel, self.oval, self.fourth = (curve(f[k]) for k in ("barrel", "ovality", "double"))
        self.thrust, self.pin = curve(f["thrust"]), curve(f["pin"])
        self.deviation, self.wall = curve(f["deviation"]), curve(f["wall"])

    def parts(self, t, z):
        """Cold piston radius, its full strain, cold bore radius, its full strain, and whether there is surface."""
        f, a = self.f, np.radians(t)
        d = f["piston"] + self.barrel(z) - self.barrel(f["gauge"])
        r = d / 2 - self.oval(z) / 4 * (1 - np.cos(2 * a)) + self.fourth(z) / 4 * (1 - np.cos(4 * a)) + f["coating"]
        rt, rp = f["ratios"]
        e = COEFFICIENT["piston"] * (rt * (self.thrust(z) - 20) * np.cos(a) ** 2 + rp * (self.pin(z) - 20) * np.sin(a) ** 2)
        y = 0 * z if f["depth"] is None else f["depth"] + f["gauge"] - z
        rb = f["bore"] / 2 + self.deviation(y)
        for n, c, s in f["waves"]:
            rb = rb + c * np.cos(n * a) + s * np.sin(n * a)
        eb = COEFFICIENT["bore"] * (self.wall(y) - 20)
        there = np.ones(np.broadcast(t, z).shape, bool)
        if f["panel"]:
            apart = np.abs((t + 180) % 360 - 180)
            there &= (apart <= f["panel"][0]) | (180 - apart <= f["panel"][1])
        if f["cut"]:
            t0, t1, z0, z1 = f["cut"]
            there &= ~((z > z0) & (z < z1) & cyclic(t, (t0, t1)))
        return r, e, rb + 0 * t, eb + 0 * t, there

    def clearance(self, t, z):
        r, e, rb, eb, there = self.parts(t, z)
        return np.where(there, rb * (1 + eb) - r * (1 + e), np.inf)

    def factor(self, scenario, touching):
        def of(t, z):
            r, e, rb, eb, there = self.parts(t, z)
            hot, rises = {"piston_alone": (rb * (1 + eb), 0 * eb), "piston_and_bore": (rb, rb * eb), "piston_with_cold_bore": (rb, 0 * eb)}[scenario]
            cold, slope = hot - r, rises - r * e
            root = np.where(slope < 0, (cold - touching) / np.where(slope < 0, -slope, 1), np.inf)
            return np.where(there, root, np.inf)
        return of

    def edges(self):
        f = self.f
        panel = [f["panel"][0], -f["panel"][0] % 360, 180 - f["panel"][1], 180 + f["panel"][1]] if f["panel"] else []
        return panel + (list(f["cut"][:2]) if f["cut"] else []), list(f["cut"][2:]) if f["cut"] else []

    def least(self, of):
        """Least value over the skirt: a dense grid, then finer ones around its best places."""
        f = self.f
        # edges of windows and rows of tables are on the grid
        edges_t, edges_z = self.edges()
        ts = np.unique(np.concatenate([np.arange(0, 360, 0.5), edges_t]))
        zs = np.unique(np.concatenate([np.linspace(0, f["top"], 201), edges_z, f["barrel"][0]]))
        zs = zs[(zs >= 0) & (zs <= f["top"])]
        v = of(ts[None, :], zs[:, None])
        best = float(v.min())
        seeds = np.argsort(v, axis=None)[:300:25]
        for seed in seeds:
            i, j = np.unravel_index(seed, v.shape)
            t, z, wt, wz = ts[j], zs[i], 0.5, f["top"] / 200
            for _ in range(22):
                lt = np.concatenate([t + wt * np.linspace(-1, 1, 9), edges_t])
                lz = np.clip(np.concatenate([z + wz * np.linspace(-1, 1, 9), edges_z]), 0, f["top"])
                local = of(lt[None, :] % 360, lz[:, None])
                m, n = np.unravel_index(np.argmin(local), local.shape)
                t, z = lt[n] % 360, lz[m]
                best = min(best, float(local[m, n]))
                wt, wz = wt * 0.4, wz * 0.4
        return best

    def end(self, scenario):
        zs = np.linspace(0, self.f["top"], 4001)
        hottest = max(self.thrust(zs).max(), self.pin(zs).max())
        if scenario == "piston_and_bore":
            hottest = max(hottest, float(self.wall(np.array(0.0))))
        return min(LARGEST, (LAW_END - 20) / (hottest - 20))

    def placed(self):
        """Most room: a linear programme over a grid that grows finer around the places that hold it; in micrometres, for the tolerances of its solver."""
        f = self.f
        edges_t, edges_z = self.edges()
        ts, zs = np.unique(np.concatenate([np.arange(0, 360, 0.5), edges_t])), np.unique(np.concatenate([np.linspace(0, f["top"], 401), edges_z]))
        grid = self.clearance(ts[None, :], zs[:, None])
        lowest = grid.argmin(axis=0)
        rows = [(t, zs[i], grid[i, k]) for k, (t, i) in enumerate(zip(ts, lowest, strict=True)) if np.isfinite(grid[i, k])]
        wt, wz = 0.5, f["top"] / 200
        options = {"primal_feasibility_tolerance": 1e-10, "dual_feasibility_tolerance": 1e-10}
        for _ in range(16):
            t, z, gap = map(np.array, zip(*rows, strict=True))
            u = np.radians(t)
            a = np.stack([np.cos(u), np.sin(u), np.ones_like(u)], axis=1)
            found = linprog([0, 0, -1], A_ub=a, b_ub=1000 * gap, bounds=[(-5000, 5000)] * 2 + [(None, None)], method="highs", options=options)
            slack = 1000 * gap - a @ found.x
            for k in [k for k in np.argsort(slack)[:60] if slack[k] < max(1e-4, 4 * wt)]:
                lt = np.concatenate([t[k] + wt * np.linspace(-1, 1, 9), edges_t])
                lz = np.clip(np.concatenate([z[k] + wz * np.linspace(-1, 1, 9), edges_z]), 0, f["top"])
                local = self.clearance(lt[None, :] % 360, lz[:, None])
                best = local.argmin(axis=0)
                rows += [(lt[j] % 360, lz[i], local[i, j]) for j, i in enumerate(best) if np.isfinite(local[i, j])]
            # rows that are far from holding are no longer needed
            rows = [r for r, s in zip(rows[: len(slack)], slack, strict=True) if s < 5000 * wt] + rows[len(slack):]
            wt, wz = wt * 0.4, wz * 0.4
        return float(found.x[2]) / 1000

    def area(self, below):
        ts, zs = np.arange(0.1, 360, 0.2), (np.arange(500) + 0.5) * self.f["top"] / 500
        share = (self.clearance(ts[None, :], zs[:, None]) < below).mean()
        return float(share * np.pi * self.f["piston"] * self.f["top"])


def random_fit(rng, kind):
    top = round(rng.uniform(40, 80), 1)
    rows = np.round(np.array([0, 0.25, 0.6, 1]) * top, 2)
    rows[-1] = top
    bump = lambda size: tuple(np.round(rng.uniform(-size, 0, 4), 4))
    t0 = rng.uniform(95, 130)
    thrust = np.round(t0 + np.array([0, 4, 15, 40]) * rng.uniform(0.3, 1.5), 1)
    piston = round(rng.uniform(60, 130), 3)
    f = {
        "piston": piston,
        "bore": round(piston + rng.uniform(0.04, 0.16), 3),
        "top": top,
        "gauge": round(rng.uniform(8, 25), 1),
        "barrel": (tuple(rows), bump(0.08)),
        "ovality": (tuple(rows), tuple(np.round(rng.uniform(0.1, 0.6, 4), 3))),
        "double": ((0.0,), (float(np.round(rng.uniform(-0.02, 0.05), 3)),)),
        "coating": float(rng.choice([0, 0, 0.012])),
        "thrust": (tuple(rows), tuple(thrust)),
        "pin": (tuple(rows), tuple(np.round(thrust + rng.uniform(-5, 15), 1))),
        "ratios": (1.0, 1.0),
        "deviation": ((0.0,), (0.0,)),
        "wall": ((0.0,), (round(rng.uniform(90, 125), 1),)),
        "waves": [],
        "depth": None,
        "panel": None,
        "cut": None,
    }
    wave = lambda n: (n, *(float(x) for x in np.round(rng.uniform(-0.02, 0.02, 2) * 2 / n, 4)))
    if kind in ("even", "deep_even"):
        f["waves"] = [(n, wave(n)[1], 0.0) for n in (2, 4, 6)]
    if kind in ("general", "deep", "cut"):
        f["waves"] = [wave(n) for n in (2, 3, 4, 5, 6)]
    if kind.startswith("deep"):
        depths = (0.0, 40.0, 100.0, 220.0)
        f["deviation"] = (depths, tuple(float(x) for x in np.round(rng.uniform(-0.02, 0.02, 4), 4)))
        f["wall"] = (depths, tuple(float(x) for x in np.round(np.array([150, 120, 105, 95]) + rng.uniform(-8, 8, 4), 1)))
        f["depth"] = round(rng.uniform(80, 130), 1)
    if kind == "controlled":
        f["ratios"] = (round(rng.uniform(0.65, 0.9), 2), round(rng.uniform(0.9, 1.05), 2))
    if kind == "cut":
        f["panel"] = (round(rng.uniform(35, 60), 1), round(rng.uniform(35, 60), 1))
        f["cut"] = (350.0, round(rng.uniform(5, 30), 1), round(top * 0.2, 1), round(top * 0.7, 1))
    return f


def written(f):
    table = lambda t: "/".join(map(repr, map(float, t[0]))) + "@" + "/".join(map(repr, map(float, t[1])))
    out = []
    for key, value in f.items():
        if value is None or value == []:
            continue
        if key in ("barrel", "ovality", "double", "thrust", "pin", "deviation", "wall"):
            text = table(value)
        elif key == "waves":
            text = "/".join(repr(float(x)) for wave in value for x in wave)
        else:
            text = "/".join(repr(float(x)) for x in np.atleast_1d(value))
        out.append(f"{key}={text}")
    return ";".join(out)


def row(name, f):
    fit = Fit(f)
    least = fit.least(fit.clearance)
    out = {"smallest": least, "placed": fit.placed(), "area": fit.area(0.0)}
    if f["depth"] is None:
        grown = 1 + COEFFICIENT["bore"] * (f["wall"][1][0] - 20)
        # every clearance rises by half of what the bore is made larger, times its growth
        out["bore_for_smallest_0.01"] = f["bore"] + 2 * (0.01 - least) / grown
        for scenario in ("piston_alone", "piston_and_bore", "piston_with_cold_bore"):
            for touching in (0.0, -0.02) if scenario == "piston_and_bore" else (0.0,):
                k = fit.least(fit.factor(scenario, touching))
                k = -1.0 if k <= 0 else (9.0 if k > fit.end(scenario) else k)
                out[f"{scenario}_{touching:g}"] = k
    return f"{name},{written(f)},{';'.join(f'{k}={v!r}' for k, v in out.items())},{SOURCE}\n"


def main():
    rng = np.random.default_rng(20261)
    kinds = ["round", "even", "general", "controlled", "cut", "deep", "deep_even"]
    text = HEADING + "".join(row(f"{kinds[k % 7]}_{k}", random_fit(rng, kinds[k % 7])) for k in range(28))
    if "--check" in sys.argv:
        compare.check(FILE, text)
    else:
        FILE.write_text(text, encoding="utf-8")


main()
