"""Independent evaluation of revisits: `python3 tests/reference/revisit.py` writes `tests/vectors/revisits/expected.csv`; with `--check` it only compares.

Both jobs are evaluated by `assess.py`. A change is the difference of two values that are functions of independent errors, those of a gauge that lasts
counted once; its variance is the sum over the errors. The rate and its uncertainty come from numerical derivatives, the ends of a forecast from the roots of what
defines them: the ratio at which the difference is as many of its standard deviations from zero as the coverage factor says.
"""

import json
import sys
from pathlib import Path

from mpmath import diff, findroot, mp, mpf, sqrt

import assess

mp.dps = 40
ROOT = Path(__file__).parents[2]
FOLDER = ROOT / "tests" / "vectors" / "revisits"
FILES = {"pump": ROOT / "core" / "examples" / "pump_revisit.json", "short_season": FOLDER / "short_season.json"}
HERE = "reference/revisit.py"
# by hand: gauges of one name and one calibration date in both jobs
LASTING = {"pump": ["outside micrometer 75-100 mm"], "short_season": ["outside micrometer 75-100 mm", "bore gauge 50-150 mm"]}


class Value:
    """A value with its contributions by error, the errors of the two visits apart but for those that last."""

    def __init__(self, measured, visit, gauges):
        self.x, self.dof = mpf(measured["value_mm"]), measured.get("dof")
        self.k = mpf(measured["coverage_factor"])
        self.errors = {}
        for line in measured["budget"]:
            name = line["source"]
            lasts = any(name.startswith((f"scale of {g} at ", f"travel of {g} at ")) or name in (f"standard of the zero check of {g}", f"ring of {g}") for g in gauges)
            key = name if lasts else (visit, name)
            assert key not in self.errors
            self.errors[key] = mpf(line["contribution_mm"])

    def u(self):
        return sqrt(sum(c * c for c in self.errors.values()))



class Change:
    def __init__(self, before, now, hours, u_hours, bore):
        self.before, self.now, self.hours, self.u_hours, self.bore = before, now, hours, u_hours, bore
        self.d = now.x - before.x
        keys = set(before.errors) | set(now.errors)
        self.u = sqrt(sum((now.errors.get(k, 0) - before.errors.get(k, 0)) ** 2 for k in keys))
        terms = sum(v.u() ** 4 / mpf(v.dof) for v in (before, now) if v.dof)
        self.dof = self.u**4 / terms if terms else None
        self.k = assess.t_factor(mpf(2), self.dof)

    def rate(self):
        of = lambda d, t: d / t
        slopes = [diff(of, (self.d, self.hours), n) for n in ((1, 0), (0, 1))]
        return of(self.d, self.hours), sqrt((slopes[0] * self.u) ** 2 + (slopes[1] * self.u_hours) ** 2)

    def rows(self, at):
        rate, u = self.rate()
        yield f"{at}/previous_mm", self.before.x, 1e-11
        yield f"{at}/now_mm", self.now.x, 1e-11
        yield f"{at}/change_mm", self.d, 1e-11
        yield f"{at}/standard_uncertainty_mm", self.u, 1e-11
        yield f"{at}/coverage_factor", self.k, 1e-8
        if self.dof:
            yield f"{at}/dof", self.dof, float(self.dof) * 1e-7
        yield f"{at}/expanded_uncertainty_mm", self.k * self.u, 1e-10
        yield f"{at}/rate_mm_per_h", rate, 1e-13
        yield f"{at}/rate_standard_uncertainty_mm_per_h", u, 1e-13
        yield f"{at}/rate_mm_per_1000_h", 1000 * rate, 1e-10
        yield f"{at}/rate_expanded_uncertainty_mm_per_1000_h", 1000 * self.k * u, 1e-9
        yield f"{at}/rate_of_bore_per_1000_h", 1000 * rate / self.bore, 1e-12
        yield f"{at}/significant", abs(self.d) > self.k * self.u, None

    def forecast(self, at, decision):
        """Hours to the upper limit, by the definition of the interval."""
        limit = decision.get("upper_mm")
        if limit is None:
            yield f"{at}/hours", None, None
            return
        yield f"{at}/limit_mm", mpf(limit), 1e-12
        room = mpf(limit) - mpf(decision["value_mm"])
        yield f"{at}/room_mm", room, 1e-10
        rate, u_rate = self.rate()
        k = max(self.k, self.now.k)
        if not (rate > 0 and rate > k * u_rate):
            yield f"{at}/hours", None, None
            return
        # room = limit - now, rate = (now - before) / hours, error by error
        keys = set(self.before.errors) | set(self.now.errors)
        n = lambda key: self.now.errors.get(key, mpf(0))
        p = lambda key: self.before.errors.get(key, mpf(0))

        def deviation(q):
            of_sizes = sum((-n(key) - q * (n(key) - p(key)) / self.hours) ** 2 for key in keys)
            return sqrt(of_sizes + (q * rate / self.hours * self.u_hours) ** 2)

        hours = room / rate
        yield f"{at}/hours", hours, float(hours) * 1e-7
        lower = findroot(lambda q: room - q * rate - k * deviation(q), (hours / 4, hours), solver="anderson", tol=1e-30)
        # far out the ratio nears a line, whose root is not far
        far = hours
        while room - far * rate + k * deviation(far) > 0:
            far *= 2
        upper = findroot(lambda q: room - q * rate + k * deviation(q), (hours, far), solver="anderson", tol=1e-30)
        yield f"{at}/lower_hours", lower, float(hours) * 1e-6
        yield f"{at}/upper_hours", upper, float(upper) * 1e-6


def place(size):
    return size["height_mm"], size["datum"], size["angle_deg"], size["over"]


def rows(name):
    document = json.loads(FILES[name].read_text())
    before, now = (assess.evaluate(document[visit])["cylinders"] for visit in ("previous", "now"))
    hours = mpf(document["hours"]["run"].removesuffix(" h"))
    u_hours = mpf(document["hours"]["permissible_error"].removesuffix(" h")) / sqrt(3)
    bore = mpf(document["now"]["engine"]["bore"]["nominal"].removesuffix(" mm"))
    value = lambda measured, visit: Value(measured, visit, LASTING[name])
    change = lambda a, b: Change(value(a, "previous"), value(b, "now"), hours, u_hours, bore)
    yield "/hours/run_h", hours, 1e-12
    yield "/hours/standard_uncertainty_h", u_hours, 1e-12
    for c, (a, b) in enumerate(zip(before, now, strict=True)):
        at = f"/cylinders/{c}"
        spots = {(p["depth_mm"], p["axis_deg"]): p["size"] for p in a["bore"]["places"]}
        both = [p for p in b["bore"]["places"] if (p["depth_mm"], p["axis_deg"]) in spots]
        for k, p in enumerate(both):
            yield from change(spots[p["depth_mm"], p["axis_deg"]], p["size"]).rows(f"{at}/bore_places/{k}/change")
        forecasts = []
        if len(both) == len(spots) == len(b["bore"]["places"]):
            of_bore = change(a["bore"]["size"], b["bore"]["size"])
            yield from of_bore.rows(f"{at}/bore_size")
            forecasts.append((of_bore, next(d for d in b["bore"]["decisions"] if d["of"] == "bore_size")))
        if "piston" in b:
            sizes = {place(s): s["size"] for s in a["piston"]["sizes"]}
            for k, s in enumerate(s for s in b["piston"]["sizes"] if place(s) in sizes):
                yield from change(sizes[place(s)], s["size"]).rows(f"{at}/piston_places/{k}/change")
            clearance = change(a["clearance"]["bench"], b["clearance"]["bench"])
            yield from clearance.rows(f"{at}/bench_clearance")
            forecasts.append((clearance, next(d for d in b["clearance"]["decisions"] if d["of"] == "bench_clearance")))
        for k, (of, decision) in enumerate(forecasts):
            yield from of.forecast(f"{at}/forecasts/{k}", decision)


def written(x):
    if x is None:
        return "absent"
    return str(x).lower() if isinstance(x, bool) else repr(float(x))


def table():
    for name in FILES:
        for pointer, expected, tolerance in rows(name):
            expected = bool(expected) if tolerance is None and expected is not None else expected
            yield f"{name},{pointer},{written(expected)},{'' if tolerance is None else f'{tolerance:.3g}'},{HERE}"


def main():
    head = "# Numbers of the reports, by JSON Pointer; tests/vectors/README.md explains the columns\nrevisit,pointer,expected,tolerance,source\n"
    text = head + "\n".join(table()) + "\n"
    file = FOLDER / "expected.csv"
    if "--check" in sys.argv:
        sys.exit(0 if file.read_text() == text else "expected.csv is not what the script writes")
    file.write_text(text)


if __name__ == "__main__":
    main()
