"""The stub and the types, by the type checker itself, on the installed package.

Only the extension has a stub; the other modules are their own types, and stubtest takes their aliases for functions.
"""

import subprocess
import sys

import pytest

CHECKS = {
    "stubtest": ["-m", "mypy.stubtest", "gaugepoint._gaugepoint"],
    "strict": ["-m", "mypy", "--strict", "--cache-dir", "cache", "-p", "gaugepoint"],
}


@pytest.mark.parametrize("check", CHECKS)
def test_types(check, tmp_path):
    done = subprocess.run([sys.executable, *CHECKS[check]], cwd=tmp_path, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr


CALLER = """
import gaugepoint
from gaugepoint.report import MeasuredValue, Outcome

def first(path: str) -> tuple[Outcome, float | None]:
    cylinder = gaugepoint.assess(path, working=True).cylinders[0]
    bench: MeasuredValue | None = cylinder.clearance.bench if cylinder.clearance else None
    return cylinder.verdict.outcome, bench.value_mm if bench else None

clearance: float = gaugepoint.bench_clearance_mm(bore_mm=86.1, piston_mm=86.0)
categories: float | None = gaugepoint.gauge_study([[[1.0, 2.0]]], pooling="never").categories
limit: float | None = gaugepoint.acceptance((None, 2.0), 0.1).upper
consumer: float = gaugepoint.global_risks(gaugepoint.Gamma(4, 0.25), 0.25, (None, limit)).consumer
try:
    gaugepoint.decide_mm(86.0, 0.001, upper_mm=86.1, rule="proven")
except gaugepoint.InputError as refused:
    kind: str = refused.kind
"""


@pytest.mark.parametrize("added, wrong", [("", False), ("gaugepoint.bench_clearance_mm('86', 86.0)", True)])
def test_types_reach_the_caller(added, wrong, tmp_path):
    (tmp_path / "caller.py").write_text(CALLER + added + "\n", encoding="utf-8")
    command = [sys.executable, "-m", "mypy", "--strict", "--cache-dir", "cache", "caller.py"]
    done = subprocess.run(command, cwd=tmp_path, capture_output=True, text=True, check=False)
    assert (done.returncode != 0) is wrong, done.stdout + done.stderr
