"""Generators, and the trials of two functions to their results, beside numpy, OpenTURNS and plain C. See ../README.md."""

import ctypes
import subprocess
import sys
import tempfile
from pathlib import Path

import mpmath as mp
import numpy as np
import openturns as ot

from worker import compare, start

BLOCK = 16384  # numbers at a time where numpy writes into room that is there: as the worker does
CHUNK = 8192  # trials at a time whose columns stay in the cache
FLAGS = ["-O3", "-march=native", "-ffast-math"]
# the stack of eight and the clutch of lib.rs, with the limits of worker.rs
SIGMAS, WIDTHS = [0.004, 0.003, 0.005, 0.002], [0.008, 0.006]
CLUTCH = [(55.29, 0.04), (22.86, 0.004), (101.69, 0.04)]
LIMITS = {"linear": (-0.03, 0.03), "clutch": (0.11, 0.14)}


def filled(method):
    room = np.empty(BLOCK)

    def work(count):
        for _ in range(count // BLOCK):
            method(out=room)

    return work


def results(kind, y):
    """Mean, deviation, both quantiles as order statistics, and the share outside."""
    (lower, upper), rank = LIMITS[kind], int(0.00135 * y.size)
    answer = [y.mean(), y.std(ddof=1)]
    outside = np.count_nonzero(y < lower) + np.count_nonzero(y > upper)
    y.partition([rank - 1, y.size - rank])
    return answer + [y[rank - 1], y[-rank], outside / y.size]


def plain(kind, rng, n):
    if kind == "clutch":
        a, c, e = (rng.normal(mean, sigma, n) for mean, sigma in CLUTCH)
        return np.arccos((a + c) / (e - c))
    y = rng.normal(0.0, SIGMAS[0], n)
    for sigma in SIGMAS[1:]:
        y += rng.normal(0.0, sigma, n)
    for half in WIDTHS:
        y += rng.uniform(-half, half, n)
    y += rng.triangular(-0.010, 0.0, 0.010, n)
    # a trapezoid of half-width 0.009 and ratio 1/3 is the sum of rectangles of 0.006 and 0.003
    y += rng.uniform(-0.006, 0.006, n) + rng.uniform(-0.003, 0.003, n)
    return y


class Rooms:
    """The same over columns that stay in the cache, written where there is room; the triangle is a sum of rectangles too."""

    def __init__(self, rng):
        self.rng, self.room = rng, np.empty((3, CHUNK))

    def into(self, kind, y):
        rng, (a, c, e) = self.rng, self.room[:, : y.size]
        if kind == "clutch":
            for column, (mean, sigma) in zip((a, c, e), CLUTCH):
                rng.standard_normal(out=column)
                column *= sigma
                column += mean
            np.add(a, c, out=y)
            y /= np.subtract(e, c, out=e)
            return np.arccos(y, out=y)
        rng.standard_normal(out=y)
        y *= SIGMAS[0]
        for sigma in SIGMAS[1:]:
            rng.standard_normal(out=a)
            a *= sigma
            y += a
        for half in [*WIDTHS, 0.005, 0.005, 0.006, 0.003]:
            rng.random(out=a)
            a *= 2.0 * half
            y += a
        y -= sum([*WIDTHS, 0.005, 0.005, 0.006, 0.003])
        return y


def by_numpy(kind, rng):
    return lambda n: results(kind, plain(kind, rng, n))


def by_numpy_in_chunks(kind, rng):
    rooms = Rooms(rng)

    def work(n):
        y = np.empty(n)
        for k in range(0, n, CHUNK):
            rooms.into(kind, y[k : k + CHUNK])
        return results(kind, y)

    return work


def by_openturns(kind):
    if kind == "clutch":
        parts, names, text = [ot.Normal(m, s) for m, s in CLUTCH], ["a", "c", "e"], "acos((a + c) / (e - c))"
    else:
        parts = [ot.Normal(0.0, s) for s in SIGMAS] + [ot.Uniform(-w, w) for w in WIDTHS]
        parts += [ot.Triangular(-0.010, 0.0, 0.010), ot.Trapezoidal(-0.009, -0.003, 0.003, 0.009)]
        names = [f"x{k}" for k in range(8)]
        text = " + ".join(names)
    of = ot.CompositeRandomVector(ot.SymbolicFunction(names, [text]), ot.RandomVector(ot.JointDistribution(parts)))

    def work(n):
        return results(kind, np.array(of.getSample(n)).ravel())

    return work


def library(folder):
    source = Path(__file__).with_suffix(".c")
    built = Path(folder) / "monte_carlo.so"
    subprocess.run(["cc", *FLAGS, "-shared", "-fPIC", "-o", built, source, "-lmvec", "-lm"], check=True)
    made = ctypes.CDLL(str(built))
    tail = np.array([2.0 ** (octave - 54) * (1.0 + k / 64.0) for octave in range(53) for k in range(64)] + [0.5])
    with mp.workdps(30):
        at = np.array([float(-mp.sqrt(2) * mp.erfinv(1 - 2 * mp.mpf(float(t)))) for t in tail])
    slope = np.sqrt(2.0 * np.pi) * np.exp(at * at / 2.0)
    pointer = np.ctypeslib.ndpointer(np.float64)
    made.make_table.argtypes = [pointer] * 3
    made.make_table(at, slope, tail)
    for function in (made.linear, made.clutch):
        function.argtypes = [ctypes.c_int, ctypes.c_uint64, ctypes.c_size_t, ctypes.c_double, ctypes.c_double, pointer]
    return made


def by_c(made, kind, box_muller):
    out = np.empty(5)

    def work(n):
        getattr(made, kind)(box_muller, 1, n, *LIMITS[kind], out)
        return list(out)

    return work


if __name__ == "__main__":
    worker = start(["numpy", "openturns"])
    ot.TBB.Disable()
    compiler = subprocess.run(["cc", "--version"], capture_output=True, text=True).stdout.splitlines()[0]
    print(f"{compiler}, {' '.join(FLAGS)}")
    generators = {name: np.random.Generator(getattr(np.random, name)(1)) for name in ["SFC64", "PCG64", "Philox"]}
    sfc = generators["SFC64"]
    n = 1 << 22
    for kind, method in [("uniforms", "random"), ("normals", "standard_normal")]:
        print(f"{kind}, ns per number")
        rows = [(f"ours, {kind}", n, kind), (f"ours, {kind}, baseline instructions", n, f"{kind}-baseline")]
        rows += [(f"numpy {name}", n, filled(getattr(rng, method))) for name, rng in generators.items()]
        compare(worker, rows, "ns", 1e9)
    trials = 10_000_000
    with tempfile.TemporaryDirectory() as folder:
        made = library(folder)
        for kind, name in [("linear", "stack of eight contributors"), ("clutch", "acos((a + c) / (e - c)) of three normal contributors")]:
            print(f"{name}, {trials} trials to mean, deviation, 0.135 % and 99.865 %, share outside; ns per trial")
            answers = compare(
                worker,
                [
                    ("ours", trials, kind),
                    ("ours, baseline instructions", trials, f"{kind}-baseline"),
                    # processor time of the first thread: that which makes the larger half, and all that is not halved
                    ("ours, first of two threads", trials, f"{kind}-2"),
                    ("numpy SFC64", trials, by_numpy(kind, sfc)),
                    (f"numpy SFC64, {CHUNK} at a time", trials, by_numpy_in_chunks(kind, sfc)),
                    ("C, normals by a table", trials, by_c(made, kind, 0)),
                    ("C, Box and Muller with libmvec", trials, by_c(made, kind, 1)),
                    ("OpenTURNS, a tenth of the trials", trials // 10, by_openturns(kind)),
                ],
                "ns",
                1e9,
            )
            for name, answer in answers.items():
                print(f"  {name:44} " + " ".join(f"{number:.6f}" for number in answer))
