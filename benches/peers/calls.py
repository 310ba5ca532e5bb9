"""Calls through the C ABI beside calls of the same functions in Rust that are not inlined; and batches in C beside the same in Rust. See ../README.md."""

import subprocess
import sys
import tempfile
from pathlib import Path

from worker import Worker, compare, start

REPOSITORY = Path(__file__).parents[2]
CALLS, ROWS = 50_000_000, 20_000_000


def built(folder, library):
    """calls.c with the shared library beside the worker."""
    program = Path(folder) / "calls"
    warnings = ["-std=c99", "-Wall", "-Wextra", "-Werror"]
    source = Path(__file__).with_suffix(".c")
    shared = library / "libgaugepoint_c.so"
    # the loader asks for the name with the number of the ABI
    (Path(folder) / "libgaugepoint_c.so.1").symlink_to(shared)
    link = [str(shared), f"-Wl,-rpath,{folder}"]
    subprocess.run(["cc", "-O2", *warnings, f"-I{REPOSITORY / 'ffi/include'}", str(source), "-o", str(program), *link], check=True)
    return program


def beside(worker, c, kernel, count):
    results = compare(worker, [(f"{kernel}, Rust", count, kernel), (f"{kernel}, C", count, (c, kernel))], "ns", 1e9)
    in_rust, in_c = results.values()
    assert in_rust == in_c[: len(in_rust)] and in_rust[0] != 0.0, results


if __name__ == "__main__":
    rust = start([])
    with tempfile.TemporaryDirectory() as folder:
        c = Worker(built(folder, Path(sys.argv[1]).resolve().parent))
        print("a call; wanted: C at most 5 ns more than Rust")
        for kernel in ["call-bench", "call-running"]:
            beside(rust, c, kernel, CALLS)
        print("a row of a batch; wanted: C at most 1.02 x Rust")
        for kernel in ["array-bench", "batch-mean"]:
            beside(rust, c, kernel, ROWS)
