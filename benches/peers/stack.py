"""The exact tail of a linear stack of eight contributors beside SciPy, OpenTURNS and a grid of numpy, with their relative errors. See ../README.md."""

import sys
from pathlib import Path

import mpmath as mp
import numpy as np
import openturns as ot
from gaugepoint.stack import Contributor, Stack, Variation
from scipy.integrate import quad

from worker import compare, start

sys.path.insert(0, str(Path(__file__).parents[2] / "tests" / "reference"))
import stack as reference  # noqa: E402

# the stack of lib.rs
SIGMAS = [0.004, 0.003, 0.005, 0.002]
WIDTHS = [0.008, 0.006, 0.005, 0.005, 0.0045 * (1 + 1 / 3), 0.0045 * (1 - 1 / 3)]
TERMS = ["rectangular 0.008", "rectangular 0.006", "triangular -0.01 0 0.01", f"trapezoidal 0.009 {1 / 3!r}"]
PLACES = {"normal": [0.033, 0.0475, 0.0585, 0.0675, 0.0765], "bounded": [0.023, 0.029, 0.0316, 0.0325, 0.0329], "curved": [0.03, 0.05, 0.065, 0.07]}
BETA, TRIANGLE = "beta 2 5 -0.01 0.02", [-0.01, -0.004, 0.02]


def sigmas(kind):
    return SIGMAS if kind == "normal" else []


def exact(kind, x):
    """By mpmath at 40 digits, or as a rational number."""
    if kind == "bounded":
        above = reference.rectangles_above([reference.exact(a) for a in WIDTHS], reference.exact(x))
        return mp.mpf(above.numerator) / above.denominator
    if kind == "curved":
        with mp.workdps(40):
            return reference.averaged_over(reference.Term(BETA), [[reference.exact(v) for v in TRIANGLE]], [reference.exact(a) for a in WIDTHS], x)
    with mp.workdps(40):
        terms = [reference.Term(t) for t in [f"normal {s!r}" for s in SIGMAS] + TERMS]
        tilt = reference.saddle(terms, x, mp.mpf(x) / mp.mpf(0.0109) ** 2)
        return reference.line(terms, mp.mpf(x), tilt)


def transform(kind, t):
    out = np.exp(-sum(s * s for s in sigmas(kind)) * t * t / 2)
    for a in WIDTHS:
        out = out * np.sinc(a * t / np.pi)
    return out


def by_scipy(kind, x):
    """Gil-Pelaez: 1/2 - 1/pi times the integral of phi(t) sin(t x) / t."""
    end = 12 / 0.0073 if kind == "normal" else 2e4
    def work(count):
        for _ in range(count):
            value = 0.5 - quad(lambda t: transform(kind, t) * x * np.sinc(x * t / np.pi), 0, end, epsabs=1e-15, epsrel=1e-13, limit=500)[0] / np.pi
        return [value]
    return work


def by_openturns(kind, x):
    parts = [ot.Normal(0, s) for s in sigmas(kind)]
    parts += [ot.Uniform(-0.008, 0.008), ot.Uniform(-0.006, 0.006), ot.Triangular(-0.01, 0, 0.01), ot.Trapezoidal(-0.009, -0.003, 0.003, 0.009)]
    if kind == "curved":
        parts += [ot.Beta(2.0, 5.0, -0.01, 0.02), ot.Triangular(*TRIANGLE)]
    def work(count):
        for _ in range(count):
            # made anew: a sum keeps what it has computed
            value = ot.LinearCombinationDistribution(parts, [1.0] * len(parts)).computeComplementaryCDF(x)
        return [value]
    return work


def by_grid(kind, x):
    """Density on a grid by the inverse fast Fourier transform of the characteristic function, summed from the far end."""
    points, half = 1 << 16, 0.16
    step = 2 * half / points
    def work(count):
        for _ in range(count):
            t = 2 * np.pi * np.fft.fftfreq(points, step)
            density = np.fft.fftshift(np.fft.ifft(transform(kind, t)).real) / step
            sizes = (np.arange(points) - points // 2) * step
            value = np.interp(x, sizes, np.cumsum(density[::-1])[::-1] * step - density * step / 2)
        return [value]
    return work


def ours(kind):
    variations = [Variation.rectangular(0.008), Variation.rectangular(0.006), Variation.triangular(-0.01, 0, 0.01), Variation.trapezoidal(0.009, 1 / 3)]
    variations += [Variation.normal(s) for s in sigmas(kind)]
    if kind == "curved":
        variations += [Variation.beta(2.0, 5.0, -0.01, 0.02), Variation.triangular(*TRIANGLE)]
    return Stack([Contributor(f"x{k}", 0.0, -0.02, 0.02, v) for k, v in enumerate(variations)])


def by_python(kind, x):
    stack = ours(kind)
    def work(count):
        for _ in range(count):
            tail = stack.outside(upper=x)
        return [tail.above]
    return work


def rows(kind, x):
    count = 500 if kind == "curved" else 20_000
    out = [
        ("ours, Rust", count, f"tail:{kind}:{x}"),
        ("ours, Rust, the stack made anew", count // 4, f"stack-and-tail:{kind}:{x}"),
        ("ours, Python", count, by_python(kind, x)),
        ("OpenTURNS LinearCombinationDistribution, anew", 50, by_openturns(kind, x)),
    ]
    if kind != "curved":  # which is not symmetric, as both take it to be
        out += [("SciPy quad of the characteristic function", 3, by_scipy(kind, x)), ("numpy grid of 65536", 5, by_grid(kind, x))]
    return out


if __name__ == "__main__":
    worker = start(["numpy", "scipy", "openturns", "mpmath"])
    for kind, places in PLACES.items():
        for x in places:
            with mp.workdps(40):
                expected = exact(kind, x)
            print(f"{kind}: P(above {x}) = {mp.nstr(expected, 17)}, us per tail")
            found = compare(worker, rows(kind, x), "us", 1e6)
            for name, answer in found.items():
                print(f"  {name:44} relative error {float(abs(mp.mpf(answer[0]) - expected) / expected):.1e}")
    print("quantile whose probability above is p, us per quantile; the probability of the quantile returns to")
    for p in ["1e-3", "1e-9", "1e-15"]:
        kinds = [(f"ours, Rust, {kind}, {p}", 2000, f"quantile:{kind}:{p}") for kind in ("normal", "bounded")]
        for name, answer in compare(worker, kinds, "us", 1e6).items():
            kind = name.split(", ")[2]
            back = ours(kind).outside(upper=answer[0]).above
            print(f"  {name:44} relative miss {abs(back / float(p) - 1):.1e}")
