"""Matching of pistons to bores beside SciPy's assignments. See ../README.md.

Where one clearance is wanted and the uncertainties are equal, the peer is linear_sum_assignment of the squared deviations alone, without any threshold: less than what we
give. Where they are not, it is a bisection over maximum_bipartite_matching and one linear_sum_assignment under the threshold. Its matrices are made beforehand and are
not in its time; ours are."""

import numpy as np
from gaugepoint.plan import MeasuredSizes, WantedClearance, match
from scipy.optimize import linear_sum_assignment
from scipy.sparse import csr_matrix
from scipy.sparse.csgraph import maximum_bipartite_matching
from scipy.special import ndtr

from worker import compare, start

LOWER, UPPER, TARGET = 0.04, 0.07, 0.053


def parts(bores, pistons, uncertain):
    """The parts of lib.rs."""
    state = 1

    def between(low, high):
        nonlocal state
        state = (state * 6364136223846793005 + 1442695040888963407) % 2**64
        return low + (high - low) * ((state >> 11) / 2.0**53)

    def part(low, high):
        size, u = between(low, high), between(0.0005, 0.003)
        return size, u if uncertain else 0.0015

    return [np.array([part(*ends) for _ in range(count)]).T for count, ends in ((bores, (86.0, 86.02)), (pistons, (85.947, 85.967)))]


def matrices(bores, pistons):
    clearance = bores[0][:, None] - pistons[0][None, :]
    u = np.sqrt(bores[1][:, None] ** 2 + pistons[1][None, :] ** 2)
    return ndtr((LOWER - clearance) / u) + ndtr((clearance - UPPER) / u), (clearance - TARGET) ** 2


def chosen(outside, square, rows, columns):
    return [float(outside[rows, columns].max()), float(square[rows, columns].sum())]


def by_sum(outside, square):
    def work(count):
        for _ in range(count):
            found = linear_sum_assignment(square)
        return chosen(outside, square, *found)

    return work


def by_threshold(outside, square):
    values = np.unique(outside)

    def work(count):
        for _ in range(count):
            low, high = 0, len(values) - 1
            while low < high:
                middle = (low + high) // 2
                matching = maximum_bipartite_matching(csr_matrix(outside <= values[middle]), perm_type="column")
                if (matching >= 0).all():
                    high = middle
                else:
                    low = middle + 1
            found = linear_sum_assignment(np.where(outside <= values[low], square, 1.0))
        return chosen(outside, square, *found)

    return work


def by_python(bores, pistons):
    wanted = WantedClearance(LOWER, UPPER, TARGET)

    def work(count):
        for _ in range(count):
            found = match(MeasuredSizes(*bores), MeasuredSizes(*pistons), wanted)
        return [found.merit.worst_outside, found.merit.sum_of_squares_mm2]

    return work


if __name__ == "__main__":
    worker = start(["numpy", "scipy"])
    for kind, n, m, rounds, peer in (
        ("plain", 1000, 1000, 500, by_sum),
        ("plain", 1000, 1050, 50, by_sum),
        ("plain", 1000, 1500, 10, by_sum),
        ("uncertain", 1000, 1000, 1, by_threshold),
        ("uncertain", 1000, 1200, 1, by_threshold),
    ):
        bores, pistons = parts(n, m, kind == "uncertain")
        bores, pistons = ([np.ascontiguousarray(x) for x in part] for part in (bores, pistons))
        outside, square = matrices(bores, pistons)
        print(f"{kind}: {n} bores, {m} pistons, ms per matching")
        found = compare(
            worker,
            [
                ("ours, Rust", rounds, f"matching:{kind}:{n}:{m}"),
                ("ours, Python", rounds, by_python(bores, pistons)),
                (f"SciPy, {peer.__name__.replace('_', ' ')}", 1, peer(outside, square)),
            ],
            "ms",
            1e3,
        )
        for name, (worst, total) in found.items():
            print(f"  {name:24} worst {worst:.12e}, sum {total:.12e}")
