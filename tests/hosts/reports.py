"""What reports of the C library say of one bore and of one stack: what functions of ranges must give, asked for by documents."""

import json
import math
from decimal import Decimal
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]


def bore_shape(library, sizes: list[list[float]], rules: tuple[str, str]) -> tuple[float, float]:
    """Taper and out-of-round by a job of C: a bore read at 20 C with the gauge of an example that is set on a ring of its first size."""
    job = json.loads((ROOT / "core/examples/pump_six.json").read_text(encoding="utf-8"))
    first = Decimal(f"{sizes[0][0]:.11f}")
    readings = [{"depth": f"{10 * row + 10} mm", "axis": f"{90 * column} deg", "repeats": [f"{Decimal(f'{size:.11f}') - first:f} mm"]}
                for row, line in enumerate(sizes) for column, size in enumerate(line)]
    for gauge in job["gauges"]:
        if gauge["kind"] == "bore_gauge":
            gauge["setting"]["ring"] |= {"size": f"{first} mm", "temperature": "20 C"}
    bore = job["cylinders"][0]["bore"] | {"temperature": "20 C", "readings": readings}
    job["engine"]["reduction"] |= {name: rule.replace(" ", "_") for name, rule in zip(("taper", "out_of_round"), rules)}
    job |= {"cylinders": [{"number": 1, "bore": bore}], "shop": job["shop"] | {"temperature": "20 C"}}
    found = json.loads(library.job_assess(json.dumps(job)))["cylinders"][0]["bore"]
    return found["taper"]["value_mm"], found["out_of_round"]["value_mm"]


def stack_report(library, parts: list[tuple], lower: float, upper: float) -> dict:
    """The report of C on a stack: parts with size, tolerance, spread and coefficient."""
    def distribution(tolerance, spread) -> dict:
        if isinstance(spread, float):
            return {"normal": {"standard_deviation": spread}}
        if spread == "triangular":
            return {"triangular": {"low": -tolerance, "mode": 0, "high": tolerance}}
        return {spread: {"half_width": tolerance}}
    contributors = [{"name": f"part {k}", "nominal": size, "lower": -tolerance, "upper": tolerance, "coefficient": coefficient,
                     "distribution": distribution(tolerance, spread)} for k, (size, tolerance, spread, coefficient) in enumerate(parts)]
    limits = {name: x for name, x in (("lower", lower), ("upper", upper)) if abs(x) < math.inf}
    document = {"format": "gaugepoint-stack", "version": 1, "name": "stack", "contributors": contributors, "limits": limits}
    return json.loads(library.stack_evaluate(json.dumps(document)))
