"""Rows in frames of pandas, polars and Arrow to clearances with their decisions, beside the kernel of arrays that they rest on. See ../README.md."""

import platform
import statistics
import time
from importlib.metadata import version
from pathlib import Path

import gaugepoint
import numpy as np
import pandas
import polars
import pyarrow
from batch import COLUMNS, ROWS
from gaugepoint import frames

from worker import ROUNDS, seconds

NAMES = ("bore_mm", "piston_mm", "parts_temperature_c", "bore_temperature_c", "piston_temperature_c")
LAWS = gaugepoint.MeanExpansion(11.4e-6), gaugepoint.MeanExpansion(20.5e-6)
LIMITS = frames.BenchLimits(0.03, 0.06, standard_uncertainty_mm=0.002)


def work(frame):
    return lambda: frames.decide(frame, *LAWS, LIMITS)


if __name__ == "__main__":
    given = dict(zip(NAMES, COLUMNS, strict=True))
    gaps = {**given, "bore_mm": np.where(np.arange(ROWS) % 1000 == 0, np.nan, given["bore_mm"])}
    rows = {
        "the kernel of arrays": lambda: gaugepoint.clearances(*LAWS, *COLUMNS, partial=True),
        "pandas": work(pandas.DataFrame(given)),
        "polars": work(polars.DataFrame(given)),
        "Arrow": work(pyarrow.table(given)),
        "the kernel, one row in a thousand refused": lambda: gaugepoint.clearances(*LAWS, *gaps.values(), partial=True),
        "pandas, one row in a thousand missing": work(pandas.DataFrame(gaps)),
        "polars, one row in a thousand missing": work(polars.DataFrame(gaps, nan_to_null=True)),
    }
    model = next((line.split(":")[1].strip() for line in open("/proc/cpuinfo") if line.startswith("model name")), "")
    print(f"{time.strftime('%Y-%m-%d')}, {Path(__file__).name}, medians of {ROUNDS} alternating rounds; {ROWS} rows, fresh memory for the results, ns per row")
    print(f"{model or platform.processor()}; CPython {platform.python_version()}; " + ", ".join(f"{n} {version(n)}" for n in ("numpy", "pandas", "polars", "pyarrow")))
    times = {name: [] for name in rows}
    for round_number in range(ROUNDS + 1):
        for name, call in rows.items():
            start = seconds("self")
            call()
            if round_number > 0:  # the first round warms up
                times[name].append((seconds("self") - start) / ROWS * 1e9)
    for name, taken in times.items():
        ratio = statistics.median(t / f for t, f in zip(taken, times["the kernel of arrays"], strict=True))
        print(f"  {name:42} {statistics.median(taken):8.3f} ns  (fastest {min(taken):.3f})  {ratio:6.3f} x the kernel")
