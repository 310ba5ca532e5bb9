"""Bench and running clearance of rows with cubic strains, at 40 digits: the expected numbers of tests/vectors/batch.csv.

Formulas of core/docs/batch.md: `eps(T) = c1 d + c2 d^2 + c3 d^3` by powers, `d = T - 20`; a size at 20 C is the measured one over `1 + eps`.
"""

from flat import mpf

HEADING = """\
# Rows of the batch. Laws: per_k;per_k2;per_k3;from_c;to_c. Row: bore_mm;piston_mm;parts_temperature_c;bore_temperature_c;piston_temperature_c.
# Expected: bench_mm;running_mm, both within the tolerance, or the kind of refusal. Numbers: reference/batch.py, 40 digits, written by
# reference/make_vectors.py; rows with another source are checked against it.
id,bore_law,piston_law,row,expected,tolerance,source
"""

CLOSED = "closed form at 40 digits by reference/batch.py"
IRON, ALUMINIUM = "11.4e-6 0 0 -40 450", "20.5e-6 0 0 -40 450"
IRON_CUBIC, ALUMINIUM_CUBIC = "10.4e-6 6e-9 -3e-12 -40 400", "19.8e-6 8e-9 2e-12 10 300"

# id, laws, row, and results by hand with their source where there are any
ROWS = [
    ("at_reference", IRON, ALUMINIUM, "86.25 86.125 20 20 20", "0.125;0.125 by hand: at 20 C nothing grows"),
    ("equal_alloy", ALUMINIUM, ALUMINIUM, "86.1 86 20 120 120", "0.1;0.100205 by hand: equal growth; 0.1 (1 + 20.5e-6 100)"),
    ("warm_shop", IRON, ALUMINIUM, "86.041 86.006 27 110 120", None),
    ("cold_shop", IRON, ALUMINIUM, "86.028 85.984 -4.5 110 120", None),
    ("cold_start", IRON, ALUMINIUM, "101.66 101.6 18 -20 -20", None),
    ("steel_piston", "11.4e-6 0 0 -40 450", "12e-6 0 0 -40 450", "130.1 130 24 105 180", None),
    ("small", IRON, ALUMINIUM, "39.98 39.93 35 140 200", None),
    ("large", IRON, "11.4e-6 0 0 -40 450", "960.9 959.1 15 90 210", None),
    ("cubic_at_reference", IRON_CUBIC, ALUMINIUM_CUBIC, "86.25 86.125 20 20 20", "0.125;0.125 by hand: at 20 C nothing grows"),
    ("cubic", IRON_CUBIC, ALUMINIUM_CUBIC, "86.041 86.006 27 110 120", None),
    ("cubic_hot", IRON_CUBIC, ALUMINIUM_CUBIC, "92.13 92.01 12 160 290", None),
    ("cubic_and_mean", IRON_CUBIC, ALUMINIUM, "86.035 85.99 31 -30 95", None),
]

# id, laws, row, kind: what each must refuse
REFUSED = [
    ("refuse_missing", IRON, ALUMINIUM, "nan 86 20 110 120", "not_finite"),
    ("refuse_infinite", IRON, ALUMINIUM, "86.1 86 20 110 inf", "not_finite"),
    ("refuse_zero", IRON, ALUMINIUM, "86.1 0 20 110 120", "out_of_range"),
    ("refuse_inches", IRON, ALUMINIUM, "3.387 86 20 110 120", "out_of_range"),
    ("refuse_fahrenheit", IRON, ALUMINIUM, "86.1 86 80.6 110 120", "out_of_range"),
    ("refuse_hot_piston", IRON, ALUMINIUM, "86.1 86 20 110 451", "out_of_range"),
    ("refuse_beyond_law", IRON_CUBIC, ALUMINIUM_CUBIC, "86.1 86 20 110 301", "outside_law"),
    ("refuse_shop_below_law", IRON_CUBIC, ALUMINIUM_CUBIC, "86.1 86 9 110 120", "outside_law"),
    ("refuse_coefficient", "11.4 0 0 -40 450", ALUMINIUM, "86.1 86 20 110 120", "out_of_range"),
    ("refuse_slope", "20e-6 0 -1e-10 -40 450", ALUMINIUM, "86.1 86 20 110 120", "out_of_range"),
    ("refuse_law_without_20", "20e-6 0 0 100 450", ALUMINIUM, "86.1 86 120 110 120", "outside_law"),
]


def strain(law, temperature_c):
    c1, c2, c3 = (mpf(float(c)) for c in law[:3])
    d = mpf(temperature_c) - 20
    return c1 * d + c2 * d**2 + c3 * d**3


def clearances(bore_law, piston_law, row):
    """Both clearances of one row."""
    bore, piston, parts, bore_c, piston_c = (mpf(x) for x in row)
    bore, piston = bore / (1 + strain(bore_law, parts)), piston / (1 + strain(piston_law, parts))
    return bore - piston, bore * (1 + strain(bore_law, bore_c)) - piston * (1 + strain(piston_law, piston_c))


def row_of(name, bore_law, piston_law, row, by_hand):
    laws, numbers = [law.split() for law in (bore_law, piston_law)], [float(x) for x in row.split()]
    exact = [float(x) for x in clearances(*laws, numbers)]
    # some ten roundings of numbers of the size of the bore
    tolerance = 8 * 2.3e-16 * max(numbers[0], 1)
    expected, source = ";".join(repr(x) for x in exact), CLOSED
    if by_hand is not None:
        expected, source = by_hand.split(" ", 1)
        assert all(abs(float(a) - b) <= tolerance for a, b in zip(expected.split(";"), exact, strict=True)), name
    return f"{name},{joined(bore_law)},{joined(piston_law)},{joined(row)},{expected},{tolerance:.1e},{source}"


def joined(words):
    return words.replace(" ", ";")


def batch_csv():
    """The file of the batch."""
    rows = [row_of(*row) for row in ROWS]
    ranges = "ranges and reasons in core/src/bounds.rs; ranges of the laws in the row"
    rows += [f"{n},{joined(b)},{joined(p)},{joined(r)},error:{k},,{ranges}" for n, b, p, r, k in REFUSED]
    return HEADING + "\n".join(rows) + "\n"
