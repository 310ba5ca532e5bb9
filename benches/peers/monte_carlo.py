"""Generators, and the trials of a stack of eight contributors, beside numpy. See ../README.md."""

import numpy as np

from worker import compare, start

BLOCK = 16384  # numbers at a time where numpy writes into room that is there: as the worker does
CHUNK = 32768


def filled(method):
    room = np.empty(BLOCK)

    def work(count):
        for _ in range(count // BLOCK):
            method(out=room)

    return work


def results(y):
    low, high = np.percentile(y, [0.135, 99.865])
    return [y.mean(), y.std(ddof=1), low, high]


def sample(rng, n):
    """The stack of lib.rs: nominal values and distributions are the same."""
    y = rng.normal(86.0, 0.004, n)
    y += rng.normal(-42.0, 0.003, n)
    y += rng.normal(30.0, 0.005, n)
    y += rng.normal(-12.0, 0.002, n)
    y += rng.uniform(10.0 - 0.008, 10.0 + 0.008, n)
    y += rng.uniform(-5.0 - 0.006, -5.0 + 0.006, n)
    y += rng.triangular(3.0 - 0.010, 3.0, 3.0 + 0.010, n)
    # a trapezoid of half-width 0.009 and ratio 1/3 is the sum of rectangles of 0.006 and 0.003
    y += -1.0 + rng.uniform(-0.006, 0.006, n) + rng.uniform(-0.003, 0.003, n)
    return y


def whole(rng):
    return lambda n: results(sample(rng, n))


def blocked(rng):
    def work(n):
        y = np.empty(n)
        for k in range(0, n, CHUNK):
            y[k : k + CHUNK] = sample(rng, min(CHUNK, n - k))
        return results(y)

    return work


if __name__ == "__main__":
    worker = start(["numpy"])
    generators = {name: np.random.Generator(getattr(np.random, name)(1)) for name in ["SFC64", "PCG64", "Philox"]}
    sfc = generators["SFC64"]
    n = 1 << 22
    for kind, method in [("uniforms", "random"), ("normals", "standard_normal")]:
        print(f"{kind}, ns per number")
        rows = [(f"ours, {kind}", n, kind), (f"ours, {kind}, baseline instructions", n, f"{kind}-baseline")]
        rows += [(f"numpy {name}", n, filled(getattr(rng, method))) for name, rng in generators.items()]
        compare(worker, rows, "ns", 1e9)
    trials = 10_000_000
    print(f"stack of eight contributors, {trials} trials to mean, deviation, 0.135 % and 99.865 %, ns per trial")
    answers = compare(
        worker,
        [
            ("ours", trials, "stack"),
            ("ours, baseline instructions", trials, "stack-baseline"),
            ("numpy SFC64", trials, whole(sfc)),
            (f"numpy SFC64, {CHUNK} at a time", trials, blocked(sfc)),
        ],
        "ns",
        1e9,
    )
    for name, answer in answers.items():
        print(f"  {name:44} " + " ".join(f"{number:.6f}" for number in answer))
