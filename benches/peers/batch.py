"""Rows of bore, piston and three temperatures to bench and running clearance, beside numpy and plain C. See ../README.md."""

import ctypes
import subprocess
import sys
import tempfile
from pathlib import Path

import gaugepoint
import numpy as np

from worker import Worker, compare, start

ROWS = 1_000_000
REPEATED = 20 * ROWS  # of one round, where that takes long enough to be timed
CHUNK = 4096  # rows at a time where numpy's intermediate columns stay in a cache
MEANS = [[11.4e-6, 0.0, 0.0], [20.5e-6, 0.0, 0.0]]
CUBICS = [[10.4e-6, 6e-9, -3e-12], [19.8e-6, 8e-9, 2e-12]]
FLAGS = {"the vectors of our dispatch": ["-O3", "-march=x86-64-v3"], "native": ["-O3", "-march=native"], "baseline": ["-O3"]}


def rows():
    """The invented rows of lib.rs."""
    k = np.arange(ROWS, dtype=np.uint32)
    ranges = [(86.02, 0.02, 2654435769), (85.97, 0.02, 1013904243), (18.0, 10.0, 3668339990), (90.0, 30.0, 2027808486), (100.0, 60.0, 387276957)]
    return [low + width * (k * np.uint32(step)).astype(float) / 2.0**32 for low, width, step in ranges]


COLUMNS = rows()
OUT = np.full(ROWS, 0.5), np.full(ROWS, 0.5)


def by_numpy(law, piston_law, cubic):
    def strain(c, t):
        d = t - 20.0
        return ((c[2] * d + c[1]) * d + c[0]) * d if cubic else c[0] * d

    def work(bore, piston, parts, bore_c, piston_c):
        bore, piston = bore / (1.0 + strain(law, parts)), piston / (1.0 + strain(piston_law, parts))
        return bore - piston, bore * (1.0 + strain(law, bore_c)) - piston * (1.0 + strain(piston_law, piston_c))

    return work


def whole(work):
    def repeat(count):
        for _ in range(count // ROWS):
            bench, running = work(*COLUMNS)
        return [bench[-1], running[-1]]

    return repeat


def blocked(work):
    def repeat(count):
        for _ in range(count // ROWS):
            for k in range(0, ROWS, CHUNK):
                here = slice(k, k + CHUNK)
                OUT[0][here], OUT[1][here] = work(*(c[here] for c in COLUMNS))
        return [OUT[0][-1], OUT[1][-1]]

    return repeat


def ours(laws, cubic, **options):
    laws = [gaugepoint.CubicStrain(*law, -40.0, 400.0) if cubic else gaugepoint.MeanExpansion(law[0]) for law in laws]

    def work(count):
        for _ in range(count // ROWS):
            found = gaugepoint.clearances(*laws, *COLUMNS, **options)
        return [found.bench_mm[-1], found.running_mm[-1]]

    return work


def by_c(library, name, laws, fresh=False):
    """The same memory as ours: `fresh` is that of `numpy.zeros`."""
    function = getattr(library, name)
    pointer = lambda array: ctypes.c_void_p(array.ctypes.data)  # noqa: E731
    coefficients = np.array(laws)

    def work(count):
        for _ in range(count // ROWS):
            out = (np.zeros(ROWS), np.zeros(ROWS)) if fresh else OUT
            function(ctypes.c_size_t(ROWS), *map(pointer, [*COLUMNS, coefficients, *out]))
        return [out[0][-1], out[1][-1]]

    return work


if __name__ == "__main__":
    worker = start(["numpy"])
    print(subprocess.run(["cc", "--version"], capture_output=True, text=True).stdout.splitlines()[0] + f"; {ROWS} rows, ns per row")
    source = Path(__file__).with_name("batch.c")
    with tempfile.TemporaryDirectory() as folder:
        programs, libraries = {}, {}
        for k, (name, flags) in enumerate(FLAGS.items()):
            program, library = f"{folder}/c{k}", f"{folder}/c{k}.so"
            subprocess.run(["cc", *flags, source, "-o", program], check=True)
            subprocess.run(["cc", *flags, "-shared", "-fPIC", source, "-o", library], check=True)
            programs[name], libraries[name] = Worker(program), ctypes.CDLL(library)
        dispatch, native, baseline = FLAGS
        for kind, laws in [("mean", MEANS), ("cubic", CUBICS)]:
            cubic = kind == "cubic"
            work = by_numpy(*laws, cubic)
            print(f"{kind}: from Rust, with memory of its own")
            compare(
                worker,
                [
                    ("ours", REPEATED, f"batch-{kind}"),
                    *((f"C, {' '.join(FLAGS[name])}", REPEATED, (programs[name], kind)) for name in FLAGS),
                    ("ours, baseline instructions", REPEATED, f"batch-{kind}-baseline"),
                    ("numpy", 4 * ROWS, whole(work)),
                    (f"numpy, {CHUNK} rows at a time", 4 * ROWS, blocked(work)),
                ],
                "ns",
                1e9,
            )
            print(f"{kind}: from Python, in the same arrays")
            answers = compare(
                worker,
                [
                    ("ours, out=, partial=True", REPEATED, ours(laws, cubic, out=OUT, partial=True)),
                    (f"C, {' '.join(FLAGS[dispatch])}", REPEATED, by_c(libraries[dispatch], kind, laws)),
                    ("ours, out=", REPEATED, ours(laws, cubic, out=OUT)),
                    ("numpy", 4 * ROWS, whole(work)),
                    (f"numpy, {CHUNK} rows at a time", 4 * ROWS, blocked(work)),
                ],
                "ns",
                1e9,
            )
            print(f"{kind}: from Python, into fresh memory")
            compare(
                worker,
                [
                    ("ours", REPEATED, ours(laws, cubic)),
                    (f"C, {' '.join(FLAGS[dispatch])}", REPEATED, by_c(libraries[dispatch], kind, laws, fresh=True)),
                    ("numpy", 4 * ROWS, whole(work)),
                ],
                "ns",
                1e9,
            )
            for name, answer in answers.items():
                print(f"  {name:44} " + " ".join(f"{number:.17g}" for number in answer))
        print("cubic, from Rust: with statuses, and looked at first")
        rows = [("with statuses", REPEATED, "batch-cubic-status"), ("looked at first", REPEATED, "batch-cubic-check")]
        compare(worker, [("ours", REPEATED, "batch-cubic"), *rows], "ns", 1e9)
    sys.stdout.flush()
