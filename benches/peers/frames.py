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


def decided(name, frame, **options):
    return name, ROWS, lambda _: frames.decide(frame, *LAWS, LIMITS, **options)


def kernel(name, columns):
    return name, ROWS, lambda _: gaugepoint.clearances(*LAWS, *columns, partial=True)


# of a micrometer and a bore gauge: one number for every row, besides the reading and the temperature of the part
MICROMETER = {"zero_error_mm": 0.001, "gauge_temperature_c": 21.0, "gauge_expansion_per_k": 11.5e-6}
BORE_GAUGE = {"setting_mm": 86.0} | {
    f"{of}_{what}": number for of in ("ring", "set", "used") for what, number in [("temperature_c", 21.0), ("expansion_per_k", 11.5e-6)]
}
SAME = {f"bore_{name}": number for name, number in BORE_GAUGE.items()} | {f"piston_{name}": number for name, number in MICROMETER.items()}


def by_functions(bore, piston, parts_c, *running):
    """The functions of arrays that readings cost, and the kernel on their sizes."""
    bore = gaugepoint.bore_size_at_20_mm(bore - 86.0, **BORE_GAUGE, block_temperature_c=parts_c, block_expansion_per_k=LAWS[0].per_k, partial=True)[0]
    piston = gaugepoint.size_at_20_mm(piston, **MICROMETER, part_temperature_c=parts_c, part_expansion_per_k=LAWS[1].per_k, partial=True)[0]
    return gaugepoint.clearances(*LAWS, bore, piston, np.full(ROWS, 20.0), *running, partial=True)


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
    print("readings of a bore gauge and a micrometer, every row whole")
    read = dict(zip(("bore_deviation_mm", "piston_reading_mm", "piston_part_temperature_c", *NAMES[3:]), (COLUMNS[0] - 86.0, *COLUMNS[1:]), strict=True))
    read["bore_block_temperature_c"] = COLUMNS[2]
    rows = [decided(name, made(read), same=SAME) for name, made in (("pandas", pandas.DataFrame), ("polars", polars.DataFrame), ("Arrow", pyarrow.table))]
    compare(None, [("the functions and the kernel of arrays", ROWS, lambda _: by_functions(*COLUMNS)), *rows], "ns", 1e9)
