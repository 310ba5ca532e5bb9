"""Hot fits beside numpy, SciPy and plain C: a map of clearance, its least value, and first contact. See ../README.md."""

import ctypes
import subprocess
import sys
import tempfile
from pathlib import Path

import numpy as np
from scipy.interpolate import PchipInterpolator
from scipy.optimize import brentq

from worker import compare, start

try:
    import gaugepoint
except ImportError:
    gaugepoint = None

ANGLES, HEIGHTS = np.linspace(0.0, 360.0, 181), np.linspace(0.0, 50.0, 101)
POINTS = ANGLES.size * HEIGHTS.size
# the invented fit of lib.rs
ROWS = [0.0, 12.0, 30.0, 50.0]
BARREL, OVALITY = [0.02, 0.0, 0.03, 0.08], [0.25, 0.3, 0.35, 0.4]
THRUST_C, PIN_C = [110.0, 115.0, 130.0, 160.0], [115.0, 120.0, 135.0, 170.0]
PISTON, PISTON_A, BORE, BORE_A, BORE_C = 86.0, 20.5e-6, 86.06, 11.4e-6, 105.0
WAVES = {"round": [], "even": [(n, 0.003, 0.0) for n in (2, 4, 6)], "general": [(n, 0.003, 0.002) for n in (2, 3, 4, 5, 6)]}
UPPER = (400.0 - 20.0) / (170.0 - 20.0)  # where the piston's law ends
STRICT = ["-O3", "-march=native", "-ffp-contract=off"]
FLAGS = {"strict": STRICT, "contracted": ["-O3", "-march=native", "-ffp-contract=fast"]}

CURVES = [PchipInterpolator(ROWS, values) for values in (BARREL, OVALITY, THRUST_C, PIN_C)]


class ByNumpy:
    """The formulas over whole arrays. `plain` writes them as they stand; otherwise both factors are straight lines in cos 2t, worked out row by row,
    and everything goes into memory that is there."""

    def __init__(self, kind, plain):
        self.waves, self.plain = WAVES[kind], plain
        self.out, self.room = np.empty((HEIGHTS.size, ANGLES.size)), np.empty((HEIGHTS.size, ANGLES.size))

    def map(self, rise=1.0):
        t = np.radians(ANGLES)
        cos_2 = np.cos(2.0 * t)
        wall = BORE / 2.0 + sum(a * np.cos(n * t) + b * np.sin(n * t) for n, a, b in self.waves)
        wall = wall * (1.0 + BORE_A * (BORE_C - 20.0))
        barrel, ovality, thrust_c, pin_c = (curve(HEIGHTS)[:, None] for curve in CURVES)
        thrust, pin = (PISTON_A * rise * (c - 20.0) for c in (thrust_c, pin_c))
        if self.plain:
            cold = PISTON / 2.0 - barrel / 2.0 - ovality / 4.0 * (1.0 - cos_2)
            return wall - cold * (1.0 + thrust * (1.0 + cos_2) / 2.0 + pin * (1.0 - cos_2) / 2.0)
        np.multiply(ovality / 4.0, cos_2, out=self.out)
        self.out += PISTON / 2.0 - barrel / 2.0 - ovality / 4.0
        np.multiply((thrust - pin) / 2.0, cos_2, out=self.room)
        self.room += 1.0 + (thrust + pin) / 2.0
        self.out *= self.room
        return np.subtract(wall, self.out, out=self.out)

    def least(self, rise=1.0):
        return self.map(rise).min()

    def maps(self, count):
        for _ in range(count // POINTS):
            out = self.map()
        return [out.min()]

    def leasts(self, count):
        for _ in range(count):
            low = self.least()
        return [low]

    def onsets(self, count):
        for _ in range(count):
            k = brentq(self.least, 0.0, UPPER, xtol=1e-10)
        return [k]


FOUR, EIGHT = ctypes.c_double * 4, ctypes.c_double * 8


class Fit(ctypes.Structure):
    """As hot_fit.c has it."""

    _fields_ = [("rows", FOUR), ("barrel", FOUR * 3), ("ovality", FOUR * 3), ("thrust_c", FOUR * 3), ("pin_c", FOUR * 3)]
    _fields_ += [(name, ctypes.c_double) for name in ("piston", "piston_a", "bore", "bore_a", "bore_c")]
    _fields_ += [("waves", ctypes.c_size_t), ("order", EIGHT), ("cosine", EIGHT), ("sine", EIGHT)]

    def __init__(self, kind):
        cubics = [(FOUR * 3)(*(FOUR(*curve.c[::-1, k]) for k in range(3))) for curve in CURVES]
        waves = [EIGHT(*column) for column in zip(*WAVES[kind])] or [EIGHT()] * 3
        super().__init__(FOUR(*ROWS), *cubics, PISTON, PISTON_A, BORE, BORE_A, BORE_C, len(WAVES[kind]), *waves)


class ByC:
    def __init__(self, library, kind):
        self.library, self.fit, self.room = library, Fit(kind), np.empty(POINTS)
        self.out = ctypes.c_void_p(self.room.ctypes.data)
        for name in ("maps", "leasts", "onsets"):
            getattr(library, name).restype = ctypes.c_double

    def maps(self, count):
        self.library.maps(ctypes.byref(self.fit), ctypes.c_size_t(count // POINTS), self.out)
        return [self.room.min()]

    def leasts(self, count):
        return [self.library.leasts(ctypes.byref(self.fit), ctypes.c_size_t(count), self.out)]

    def onsets(self, count):
        return [self.library.onsets(ctypes.byref(self.fit), ctypes.c_size_t(count), ctypes.c_double(UPPER), self.out)]


class FromPython:
    """The library's own module, where it has the hot fit."""

    def __init__(self, kind):
        from gaugepoint import growth, hot, shape

        law = lambda a: growth.MeanCoefficient(20.0, a, -40.0, 400.0)  # noqa: E731
        rows = lambda *values: list(zip(ROWS, *values))  # noqa: E731
        skirt = shape.SymmetricSurface(0.0, 50.0, rows(BARREL), rows(OVALITY), counted="below")
        bore = shape.Bore(BORE, None, [shape.BoreHarmonic(n, [(0.0, a, b)]) for n, a, b in WAVES[kind]])
        piston_field, bore_field = hot.PistonField(rows(THRUST_C, PIN_C)), hot.BoreField([(0.0, BORE_C)])
        growths = [hot.SurfaceGrowth(law(PISTON_A))]
        self.fit = gaugepoint.HotFit(PISTON, shape.Piston(12.0, [skirt]), growths, piston_field, bore, law(BORE_A), bore_field)
        self.out = np.empty((HEIGHTS.size, ANGLES.size))

    def maps(self, count):
        for _ in range(count // POINTS):
            self.fit.map(ANGLES, HEIGHTS, out=self.out)
        return [self.out.min()]

    def leasts(self, count):
        for _ in range(count):
            found = self.fit.smallest()
        return [found.clearance_mm]

    def onsets(self, count):
        for _ in range(count):
            found = self.fit.onset("piston_alone")
        return [found.factor]


QUESTIONS = {
    # method of the peers, kernel of the worker, how often in one round: ours, C, numpy
    "map, per point": ("maps", "map", (2000 * POINTS, 2000 * POINTS, 400 * POINTS)),
    "smallest clearance": ("leasts", "smallest", (20000, 2000, 400)),
    "first contact": ("onsets", "onset", (4000, 200, 20)),
}


if __name__ == "__main__":
    worker = start(["numpy", "scipy"])
    compiler = subprocess.run(["cc", "--version"], capture_output=True, text=True).stdout.splitlines()[0]
    print(f"{compiler}: " + ", ".join(f"{name} is {' '.join(flags)}" for name, flags in FLAGS.items()))
    print(f"a map of {ANGLES.size} angles and {HEIGHTS.size} heights; the peers' least value is that of the map, ours is over every angle and height")
    source = Path(__file__).with_name("hot_fit.c")
    with tempfile.TemporaryDirectory() as folder:
        libraries = {}
        for name, flags in FLAGS.items():
            library = f"{folder}/{name}.so"
            subprocess.run(["cc", *flags, "-shared", "-fPIC", source, "-o", library, "-lm"], check=True)
            libraries[name] = ctypes.CDLL(library)
        for kind in WAVES:
            plain, in_place = ByNumpy(kind, True), ByNumpy(kind, False)
            by_c = {name: ByC(library, kind) for name, library in libraries.items()}
            for question, (method, kernel, (often, by_peers, by_python)) in QUESTIONS.items():
                rows = [("ours", often, f"{kernel} {kind}")]
                rows += [(f"C, {name}", by_peers, getattr(peer, method)) for name, peer in by_c.items()]
                rows += [("numpy, in place", by_python, getattr(in_place, method))]
                rows += [("numpy, the formulas as they stand", by_python, getattr(plain, method))]
                if hasattr(gaugepoint, "HotFit"):
                    rows.append(("ours, from Python", by_peers, getattr(FromPython(kind), method)))
                print(f"{kind} bore: {question}")
                for name, answer in compare(worker, rows, "ns", 1e9).items():
                    print(f"  {name:44} " + " ".join(f"{number:.12g}" for number in answer))
    sys.stdout.flush()
