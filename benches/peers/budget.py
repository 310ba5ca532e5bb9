"""The budget of one clearance of fifteen sources beside packages that do the same in Python. See ../README.md."""

import math

import metrolopy
from uncertainties import ufloat

from worker import compare, start

RECTANGULAR = 1 / math.sqrt(3)
# estimate and standard uncertainty: the sources of lib.rs in their order
SOURCES = [
    (86.0, 0.0005 * RECTANGULAR),
    (0.001, 0.0010),
    (11.5e-6, 1e-6 * RECTANGULAR),
    (22.0, 0.5 * RECTANGULAR),
    (11.0e-6, 1e-6 * RECTANGULAR),
    (22.0, 0.5 * RECTANGULAR),
    (23.0, 0.5 * RECTANGULAR),
    (0.031, 0.0008),
    (10.5e-6, 1e-6 * RECTANGULAR),
    (24.0, 1.0 * RECTANGULAR),
    (85.952, 0.0006),
    (22.5, 0.5 * RECTANGULAR),
    (20.5e-6, 1e-6 * RECTANGULAR),
    (23.5, 1.0 * RECTANGULAR),
    (0.0, 0.0010 * RECTANGULAR),
]


def clearance(x):
    def grown(expansion, c):
        return 1.0 + x[expansion] * (x[c] - 20.0)

    between_faces = (x[0] - x[1]) * grown(2, 3)
    bore = (between_faces * grown(4, 6) / grown(4, 5) + x[7]) / grown(8, 9)
    piston = (x[10] - x[1] + x[14]) * grown(2, 11) / grown(12, 13)
    return bore - piston


def by_uncertainties(count):
    sources = [ufloat(estimate, u) for estimate, u in SOURCES]
    for _ in range(count):
        result = clearance(sources)
        contributions = result.error_components()
    assert len(contributions) == len(SOURCES)
    return [result.nominal_value, result.std_dev]


def by_metrolopy(count):
    sources = [metrolopy.gummy(estimate, u=u) for estimate, u in SOURCES]
    for _ in range(count):
        result = clearance(sources)
        u = result.u
    return [float(result.x), float(u)]


if __name__ == "__main__":
    worker = start(["uncertainties", "metrolopy"])
    print("clearance of fifteen sources: estimate, standard uncertainty and contributions (metrolopy: without contributions), us")
    answers = compare(
        worker,
        [
            ("ours, a closure", 100_000, "budget-closure"),
            ("ours, a list of operations", 100_000, "budget-model"),
            ("uncertainties", 500, by_uncertainties),
            ("metrolopy", 200, by_metrolopy),
        ],
        "us",
        1e6,
    )
    for name, (estimate, u) in answers.items():
        print(f"  {name:44} {estimate:.9f} {u:.9f}")
