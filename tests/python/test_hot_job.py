"""Hot fits in a job: each kind of input moved, in the library and in the independent evaluation, which searches every time."""

import json
import sys

import gaugepoint
import pytest
from vectors import REPOSITORY, VECTORS, put

sys.path.insert(0, str(REPOSITORY / "tests" / "reference"))
import assess as reference
import hot_job

JOB = VECTORS / "jobs" / "sawmill_twin.json"
TWIN = json.loads(JOB.read_text(encoding="utf-8"))
# of the first cylinder alone, and nothing drawn or looked for
SINGLE = {key: value for key, value in TWIN.items() if key not in ("pictures", "find")}
SINGLE = {**SINGLE, "engine": {**TWIN["engine"], "cylinders": 1}, "cylinders": TWIN["cylinders"][:1]}

# pointer, what is put there, and which of the values move with it
EVERYTHING = {"bench", "running", "margin", "smallest", "smallest_margin"}
HOT = EVERYTHING - {"bench"}
MOVES = [
    ("/cylinders/0/piston/readings/0/repeats/0", "90.985 mm", EVERYTHING),
    ("/cylinders/0/piston/readings/0/coating/thickness_per_side", "0.011 mm", EVERYTHING),
    # the gauge point runs between the first two depths, the skirt is tightest below the last one on the thrust axis; the original piston is made for
    # the size of the bore, the mean of all readings
    ("/cylinders/0/bore/readings/0/repeats/0", "0.045 mm", {"bench", "running", "margin", "smallest_margin"}),
    ("/cylinders/0/bore/readings/5/repeats/0", "0.033 mm", {"bench", "margin", "smallest_margin"}),
    ("/cylinders/0/bore/readings/4/repeats/0", "0.033 mm", {"bench", "margin", "smallest", "smallest_margin"}),
    ("/cylinders/0/bore/readings/4/depth", "118 mm", {"smallest", "smallest_margin"}),
    ("/engine/piston/shape/surfaces/0/rows/2/below", "0.012 mm", {"smallest", "smallest_margin"}),
    ("/engine/piston/shape/surfaces/0/coating", "12 um", HOT),
    ("/engine/piston/shape/surfaces/0/growth_ratio/thrust", 0.97, HOT),
    ("/running/field/piston/1/thrust", "113 C", HOT),
    # at one place the bore cancels from the margin; the two pistons are tightest at different depths
    ("/running/field/bore/1/temperature", "124 C", {"running", "smallest", "smallest_margin"}),
    ("/running/original_piston_shape/surfaces/0/rows/2/below", "0.068 mm", {"smallest_margin"}),
    ("/engine/limits/bench_clearance/min", "0.046 mm", {"margin", "smallest_margin"}),
    ("/engine/motion/deck_clearance", "0.4 mm", {"running", "smallest", "smallest_margin"}),
    ("/cylinders/0/piston/readings/0/temperature", "24 C", EVERYTHING),
]


def ours(document):
    hot = gaugepoint.assess(document).cylinders[0].hot
    told = {"bench": hot.bench, "running": hot.running, "margin": hot.reference.margin, "smallest": hot.surfaces[0].smallest,
            "smallest_margin": hot.reference.smallest_margin, **{s.name: s.smallest for s in hot.surfaces[1:]}}
    return {name: value.value_mm for name, value in told.items()}


def independent(document):
    job = reference.Job(document)
    cylinder = job.cylinders[1]
    found = hot_job.Cylinder(job.seen_by(1), cylinder, reference.reductions(job, cylinder.bore))
    values = found.chain()(reference.Errors())
    names = {0: "smallest", **{k: s["name"] for k, s in enumerate(found.own.surfaces) if k}}
    told = ("bench", "running", "margin", "smallest_margin")
    return {name: float(values[name]) for name in told} | {name: float(values[k]) for k, name in names.items()}


BEFORE = ours(SINGLE)


@pytest.mark.parametrize("pointer, value, moving", MOVES, ids=[pointer for pointer, *_ in MOVES])
def test_moved_inputs(pointer, value, moving):
    document = put(SINGLE, pointer, value)
    after, expected = ours(document), independent(document)
    assert after == pytest.approx(expected, abs=2e-9)
    assert {name for name in EVERYTHING if abs(after[name] - BEFORE[name]) > 1e-8} == moving


def test_nothing_moved():
    assert BEFORE == pytest.approx(independent(SINGLE), abs=2e-9)


def test_every_cylinder_is_told():
    report = gaugepoint.assess(JOB)
    for cylinder in report.cylinders:
        hot = cylinder.hot
        assert isinstance(hot, gaugepoint.report.HotReport)
        assert [s.name for s in hot.surfaces] == ["skirt", "second land", "top land"]
        assert hot.pictures is not None and len(hot.found) == 3
        assert hot.bench == cylinder.clearance.bench
    assert gaugepoint.assess({**SINGLE, "cylinders": []}).cylinders[0].hot is None
