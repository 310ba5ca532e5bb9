"""Rows in frames of pandas, polars and Arrow to clearances with their decisions, beside the kernel of arrays that they rest on. See ../README.md."""

import platform
import time
from importlib.metadata import version

import gaugepoint
import numpy as np
import pandas
import polars
import pyarrow
from batch import COLUMNS, ROWS
from gaugepoint import frames

from worker import ROUNDS, compare

NAMES = ("bore_mm", "piston_mm", "parts_temperature_c", "bore_temperature_c", "piston_temperature_c")
LAWS = gaugepoint.MeanExpansion(11.4e-6), gaugepoint.MeanExpansion(20.5e-6)
LIMITS = frames.BenchLimits(0.03, 0.06, standard_uncertainty_mm=0.002)


def decided(name, frame):
    return name, ROWS, lambda _: frames.decide(frame, *LAWS, LIMITS)


def kernel(name, columns):
    return name, ROWS, lambda _: gaugepoint.clearances(*LAWS, *columns, partial=True)


if __name__ == "__main__":
    given = dict(zip(NAMES, COLUMNS, strict=True))
    gaps = {**given, "bore_mm": np.where(np.arange(ROWS) % 1000 == 0, np.nan, given["bore_mm"])}
    model = next((line.split(":")[1].strip() for line in open("/proc/cpuinfo") if line.startswith("model name")), "")
    print(f"{time.strftime('%Y-%m-%d')}, frames.py, medians of {ROUNDS} alternating rounds; {ROWS} rows, fresh memory for the results, ns per row")
    print(f"{model or platform.processor()}; CPython {platform.python_version()}; " + ", ".join(f"{n} {version(n)}" for n in ("numpy", "pandas", "polars", "pyarrow")))
    print("every row whole")
    rows = [decided("pandas", pandas.DataFrame(given)), decided("polars", polars.DataFrame(given)), decided("Arrow", pyarrow.table(given))]
    compare(None, [kernel("the kernel of arrays", COLUMNS), *rows], "ns", 1e9)
    print("one row in a thousand lacks its bore; the kernel refuses it")
    rows = [decided("pandas", pandas.DataFrame(gaps)), decided("polars", polars.DataFrame(gaps, nan_to_null=True))]
    compare(None, [kernel("the kernel of arrays", gaps.values()), *rows], "ns", 1e9)
