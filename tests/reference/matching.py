"""Matching of pistons to bores, independently: every choice of pistons for at most seven bores, with exact deviations and probabilities of mpmath; above
that SciPy's assignment under a threshold by bisection.

`python3 tests/reference/matching.py` (needs mpmath, NumPy and SciPy) writes `../vectors/matching.csv`; with `--check` it only compares. Parts are invented. A
random set is kept only where the best pairing is clear: no other one comes within 1e-9 of its worst probability with a sum that is as good, so that no rounding decides.
"""

import random
import sys
from fractions import Fraction
from itertools import permutations
from pathlib import Path

import mpmath as mp
import numpy as np
from scipy.optimize import linear_sum_assignment
from scipy.sparse import csr_matrix
from scipy.sparse.csgraph import maximum_bipartite_matching

mp.mp.dps = 40

HEADING = """\
# Matching of pistons to bores (core/src/plan). Columns and rules: README.md beside this file. Parts are invented. Written by reference/matching.py.
id,bores,pistons,conditions,case,pairs,worst_outside,sum_of_squares_mm2,given_outside,given_sum_mm2,source
"""


class Set:
    """What is matched, as the columns of the file have it."""

    def __init__(self, bores, pistons, wanted=("0.04", "0.07", "0.053"), shared="0", common="0", band="", forbidden=(), fixed=()):
        # size, u, lower, upper, target, grade; size, u, weight, grade
        self.bores = [tuple(b) + ("",) * (6 - len(b)) for b in bores]
        self.pistons = [tuple(p) + ("",) * (4 - len(p)) for p in pistons]
        self.wanted, self.shared, self.common, self.band = wanted, shared, common, band
        self.forbidden, self.fixed = list(forbidden), list(fixed)

    def cells(self):
        pairs = lambda list_: " ".join(f"{b}-{p}" for b, p in list_)
        conditions = ["/".join(self.wanted), self.shared, self.common, self.band, pairs(self.forbidden), pairs(self.fixed)]
        return [";".join("/".join(b) for b in self.bores), ";".join("/".join(p) for p in self.pistons), "|".join(conditions)]

    def fit(self, bore):
        own = self.bores[bore][2:5]
        lower, upper, target = (Fraction(float(x)) if x else None for x in (own if any(own) else self.wanted))
        return lower, upper, (lower + upper) / 2 if target is None else target

    def deviation(self, bore, piston):
        return Fraction(float(self.bores[bore][0])) - Fraction(float(self.pistons[piston][0])) - self.fit(bore)[2]

    def outside(self, bore, piston):
        """Probability that the clearance is outside its limits."""
        clearance = Fraction(float(self.bores[bore][0])) - Fraction(float(self.pistons[piston][0]))
        own = [Fraction(float(x)) ** 2 for x in (self.bores[bore][1], self.pistons[piston][1], self.common, self.shared)]
        variance = own[0] + own[1] + own[2] - 2 * own[3]
        u = mp.sqrt(mp.mpf(variance.numerator) / variance.denominator)
        z = lambda x: mp.mpf(x.numerator) / x.denominator / u
        lower, upper, _ = self.fit(bore)
        below = 0 if lower is None else mp.ncdf(z(lower - clearance))
        return below + (0 if upper is None else mp.ncdf(z(clearance - upper)))

    def may(self, bore, piston):
        ours, theirs = self.bores[bore][5], self.pistons[piston][3]
        return (bore, piston) not in self.forbidden and not (ours and theirs and ours != theirs)

    def keeps(self, pistons):
        if any(pistons[b] != p for b, p in self.fixed):
            return False
        if not self.band:
            return True
        weights = [float(self.pistons[p][2]) for p in pistons]
        return max(weights) - min(weights) <= float(self.band) + 1e-9


def brute(set_):
    """The best of all choices, or None when it is not clear; False when there is none."""
    n, m = len(set_.bores), len(set_.pistons)
    outside = [[set_.outside(b, p) for p in range(m)] for b in range(n)]
    square = [[set_.deviation(b, p) ** 2 for p in range(m)] for b in range(n)]
    may = [[set_.may(b, p) for p in range(m)] for b in range(n)]
    found = []
    for pistons in permutations(range(m), n):
        if all(may[b][p] for b, p in enumerate(pistons)) and set_.keeps(pistons):
            worst = max(outside[b][p] for b, p in enumerate(pistons))
            found.append((worst, sum(square[b][p] for b, p in enumerate(pistons)), pistons))
    if not found:
        return False
    worst, total, pistons = min(found)
    for other in found:
        if other[2] != pistons and abs(other[0] / worst - 1) < 1e-9 and other[1] <= total * (1 + Fraction(1, 10**9)):
            return None
    return pistons


def by_scipy(set_):
    """The best pairing under the least threshold, by bisection over the probabilities that occur."""
    n, m = len(set_.bores), len(set_.pistons)
    outside = np.array([[float(set_.outside(b, p)) if set_.may(b, p) else np.inf for p in range(m)] for b in range(n)])
    square = np.array([[float(set_.deviation(b, p) ** 2) for p in range(m)] for b in range(n)])
    values = np.unique(outside[np.isfinite(outside)])
    low, high = 0, len(values) - 1
    while low < high:
        middle = (low + high) // 2
        matching = maximum_bipartite_matching(csr_matrix(outside <= values[middle]), perm_type="column")
        if (matching >= 0).all():
            high = middle
        else:
            low = middle + 1
    costs = np.where(outside <= values[low], square, 1e3)
    return tuple(int(p) for p in linear_sum_assignment(costs)[1])


def merit(set_, pistons):
    worst = max(set_.outside(b, p) for b, p in enumerate(pistons))
    total = sum(set_.deviation(b, p) ** 2 for b, p in enumerate(pistons))
    return [mp.nstr(worst, 20), mp.nstr(mp.mpf(total.numerator) / total.denominator, 20)]


def row(name, set_, case, pistons, source):
    given = merit(set_, range(len(set_.bores)))
    return ",".join([name, *set_.cells(), case, " ".join(str(p) for p in pistons), *merit(set_, pistons), *given, source])


def refusal(name, set_, kind, field, source="by hand: core/docs/matching.md"):
    return ",".join([name, *set_.cells(), "error", f"{kind} {field}", "", "", "", "", source])


def sizes(rng, count, middle, spread):
    return [f"{middle + rng.uniform(-spread, spread):.7f}" for _ in range(count)]


def random_set(rng, n, m, kind):
    u = lambda: f"{rng.uniform(0.0005, 0.003):.6f}" if kind in ("uncertain", "all") else "0.0015"
    grade = lambda: rng.choice(["A", "B", ""]) if kind in ("grades", "all") else ""
    def own():
        if kind not in ("wanted", "all") or rng.random() < 0.5:
            return ("", "", "")
        low = rng.uniform(0.03, 0.05)
        return (f"{low:.5f}", f"{low + rng.uniform(0.02, 0.04):.5f}", f"{low + rng.uniform(0.005, 0.02):.5f}")
    weight = lambda: f"{rng.uniform(495, 505):.1f}" if kind in ("weights", "all") else ""
    bores = [(s, u(), *own(), grade()) for s in sizes(rng, n, 86.010, 0.012)]
    pistons = [(s, u(), weight(), grade()) for s in sizes(rng, m, 85.957, 0.012)]
    options = {"wanted": ("0.04", "0.075", rng.choice(["0.053", "", "0.06"]))}
    if kind in ("forbidden", "all"):
        options["forbidden"] = sorted({(rng.randrange(n), rng.randrange(m)) for _ in range(n)})
    if kind in ("fixed", "all") and n > 2:
        pair = (rng.randrange(n), rng.randrange(m))
        options["fixed"] = [] if pair in options.get("forbidden", []) else [pair]
    if kind in ("weights", "all"):
        options["band"] = rng.choice(["2", "4", "6"])
    if kind == "shared":
        options |= {"shared": "0.0008", "common": "0.0006"}
    if kind == "one_limit":
        options["wanted"] = rng.choice([("0.045", "", "0.055"), ("", "0.065", "0.05")])
    set_ = Set(bores, pistons, **options)
    return None if any(not set_.may(b, p) for b, p in set_.fixed) else set_


PLAIN = {"plain", "fixed", "weights", "shared", "one_limit"}


def case_of(set_, kind):
    """By the definition: does anything but the clearance tell what a free pair costs?"""
    n, m = len(set_.bores), len(set_.pistons)
    bores = [b for b in range(n) if b not in {b for b, _ in set_.fixed}]
    pistons = [p for p in range(m) if p not in {p for _, p in set_.fixed}]
    same = len({b[1] for b in set_.bores}) == len({p[1] for p in set_.pistons}) == len({set_.fit(b) for b in range(n)}) == 1
    if same and all(set_.may(b, p) for b in bores for p in pistons):
        return "sorted" if n == m else "order_preserving"
    return "pair_dependent"


def random_rows():
    rng = random.Random(20261128)
    for kind in ("plain", "one_limit", "shared", "fixed", "weights", "uncertain", "wanted", "forbidden", "grades", "all"):
        for n, m in ((2, 2), (3, 5), (4, 4), (5, 6), (6, 6), (6, 8)):
            for _ in range(100):
                set_ = random_set(rng, n, m, kind)
                pistons = set_ and brute(set_)
                if pistons:
                    yield row(f"{kind}_{n}_{m}", set_, case_of(set_, kind), pistons, "all choices one by one; probabilities by mpmath at 40 digits; exact sums")
                    break
            else:
                raise SystemExit(f"no clear set of {kind} {n} {m}")


def large_rows():
    rng = random.Random(7)
    for kind, n, m in (("plain", 40, 40), ("plain", 40, 55), ("uncertain", 40, 40), ("uncertain", 40, 50), ("wanted", 30, 36), ("grades", 40, 60), ("forbidden", 50, 50)):
        for _ in range(50):
            set_ = random_set(rng, n, m, kind)
            try:
                pistons = by_scipy(set_)
            except ValueError:
                continue
            if all(set_.may(b, p) for b, p in enumerate(pistons)):
                yield row(f"large_{kind}_{n}_{m}", set_, case_of(set_, kind), pistons, "SciPy: linear_sum_assignment under a threshold by bisection over maximum_bipartite_matching")
                break


def plain(bores, pistons, u="0.001"):
    return [(b, u) for b in bores], [(p, u) for p in pistons]


def chosen_rows():
    four = plain(["86.012", "86.004", "86.009", "86.015"], ["85.958", "85.949", "85.961", "85.953"])
    yield row("sorted_to_sorted", Set(*four, wanted=("0.033", "0.073", "0.053")), "sorted", (0, 1, 3, 2), "closed form: sorted to sorted; clearances 0.054 0.055 0.056 0.054 and sum 1.5e-5 by hand")
    # sorted, the two uncertain sizes meet; crossed, each meets a sure one: 0.046 and 0.054 with u = 0.004 are better than 0.05 with 0.0057
    bores, pistons = [("86.000", "0.0005"), ("86.004", "0.004")], [("85.950", "0.0005"), ("85.954", "0.004")]
    failing = Set(bores, pistons, wanted=("0.03", "0.07", "0.05"))
    assert brute(failing) == (1, 0)
    yield row("sorting_fails_uncertainty", failing, "pair_dependent", (1, 0), "by hand; both choices one by one")
    failing = Set(*plain(["86.000", "86.010"], ["85.950", "85.960"]), wanted=("0.03", "0.07", "0.05"), forbidden=[(0, 0)])
    yield row("sorting_fails_forbidden", failing, "pair_dependent", (1, 0), "by hand: the one pairing left")
    graded = Set(
        [("86.000", "0.001", "", "", "", "B"), ("86.010", "0.001", "", "", "", "A")],
        [("85.950", "0.001", "", "A"), ("85.960", "0.001", "", "B")],
        wanted=("0.03", "0.07", "0.05"),
    )
    yield row("sorting_fails_grades", graded, "pair_dependent", (1, 0), "by hand: the one pairing left")
    # the heaviest piston fits best, and is out of the band
    heavy = Set(*plain(["86.000", "86.010"], []), wanted=("0.03", "0.07", "0.05"), band="4")
    heavy.pistons = [("85.950", "0.001", "500", ""), ("85.9601", "0.001", "509.5", ""), ("85.957", "0.001", "503.5", "")]
    yield row("weight_band", heavy, "order_preserving", (0, 2), "by hand: the one pair of pistons within 4 g")


def refused_rows():
    two = plain(["86.000", "86.010"], ["85.950", "85.960"])
    yield refusal("more_bores", Set(two[0], two[1][:1]), "out_of_range", "bores")
    yield refusal("no_pistons_left", Set(*two, forbidden=[(1, 0), (1, 1)]), "contradiction", "bores")
    yield refusal("hall", Set(*plain(["86.000", "86.010", "86.011"], ["85.950", "85.960", "85.961"]), forbidden=[(0, 1), (0, 2), (2, 1), (2, 2)]), "contradiction", "bores")
    yield refusal("size_zero", Set([("0", "0.001"), two[0][1]], two[1]), "out_of_range", "bores/0/size_mm")
    yield refusal("uncertainty_zero", Set(two[0], [two[1][0], ("85.96", "0")]), "out_of_range", "pistons/1/standard_uncertainty_mm")
    yield refusal("size_nan", Set(two[0], [("nan", "0.001"), two[1][1]]), "not_finite", "pistons/0/size_mm")
    yield refusal("limits_crossed", Set(*two, wanted=("0.07", "0.04", "")), "out_of_order", "wanted/upper_mm")
    yield refusal("target_outside", Set(*two, wanted=("0.04", "0.07", "0.08")), "contradiction", "wanted/target_mm")
    yield refusal("one_limit_no_target", Set(*two, wanted=("0.04", "", "")), "missing_field", "wanted/target_mm")
    yield refusal("own_limits_crossed", Set([(*two[0][0], "0.07", "0.04", ""), two[0][1]], two[1]), "out_of_order", "bores/0/wanted/upper_mm")
    yield refusal("nothing_wanted", Set(*two, wanted=("", "", "")), "missing_field", "bores/0/wanted")
    yield refusal("shared_too_large", Set(*two, shared="0.001"), "contradiction", "bores/0/standard_uncertainty_mm")
    yield refusal("weight_missing", Set(*two, band="5"), "missing_field", "pistons/0/weight_g")
    weighed = [(*p, w) for p, w in zip(two[1], ["500", "520"])]
    yield refusal("weights_apart", Set(two[0], weighed, band="5"), "contradiction", "weight_band_g")
    yield refusal("fixed_twice", Set(*two, fixed=[(0, 0), (1, 0)]), "repeated", "fixed/1")
    yield refusal("fixed_forbidden", Set(*two, fixed=[(0, 0)], forbidden=[(0, 0)]), "contradiction", "fixed/0")
    yield refusal("no_such_piston", Set(*two, forbidden=[(0, 2)]), "unknown_name", "forbidden/0")


def matching_csv():
    """The file of the matchings."""
    groups = [chosen_rows(), random_rows(), large_rows(), refused_rows()]
    return HEADING + "".join(line + "\n" for group in groups for line in group)


if __name__ == "__main__":
    place = Path(__file__).parent.parent / "vectors" / "matching.csv"
    text = matching_csv()
    if sys.argv[1:] == ["--check"]:
        sys.exit(place.read_text(encoding="utf-8") != text)
    place.write_text(text, encoding="utf-8")
