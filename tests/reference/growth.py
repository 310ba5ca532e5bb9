"""Laws of expansion, evaluated on their own at 40 digits, and the rows of tests/vectors/growth.csv.

Formulas of core/docs/materials.md: strain from 20 C, instantaneous coefficient as its derivative (by mpmath, not by our formulas) on the side toward
20 C, mean coefficient from 20 C. The laws themselves are those of ``assess.py``; the built-in ones are written out here a second time, from the
handbook cells.
"""

from mpmath import mp, mpf

import assess

mp.dps = 40

HEADING = """\
# Laws of expansion. Columns and rules: README.md beside this file. Written by reference/make_vectors.py from reference/growth.py
# (mpmath, 40 digits); a value that another source prints is held against it.
id,function,arguments,expected,source
"""
CLOSED = "closed form at 40 digits by reference/growth.py"
REFERENCE = mpf(20)

# name: kind, cells "to C: 1e-6 /K" from the handbooks; a first cell above 0 C is continued down to 0 C
BUILT_IN = {
    "gravity-cast AlSi12CuMgNi": ("mean", "100 20.0 200 21.0 300 22.0"),
    "wrought aluminium 4032": ("mean", "100 19.4 200 20.2 300 21.0"),
    "wrought aluminium 2618": ("mean", "100 22.3 200 23.3 300 24.2"),
    "wrought aluminium 2218": ("mean", "100 22.3"),
    "cast aluminium-silicon 390": ("mean", "100 19.0"),
    "cast aluminium 332": ("mean", "100 20.6 300 22.3"),
    "cast aluminium-silicon 336": ("mean", "100 19.0 300 20.9"),
    "cast aluminium 319": ("mean", "100 21.5 300 24.1"),
    "cast aluminium 356": ("mean", "100 21.5 300 23.4"),
    "cast aluminium 242": ("mean", "100 22.5 300 24.5"),
    "aluminium alloys ASME TE-2 mean": ("mean", "20 21.7 50 22.6 75 23.1 100 23.4 125 23.7 150 23.9 175 24.2 200 24.4 225 24.7 250 25.0 275 25.2 300 25.5 325 25.6"),
    "aluminium alloys ASME TE-2 instantaneous": ("instantaneous", "20 21.7 50 23.3 75 23.9 100 24.3 125 24.7 150 25.2 175 25.7 200 26.4 225 27.0 250 27.5 275 27.7 300 27.6 325 27.1"),
    "grey cast iron": ("mean", "100 11.4 200 11.7 400 13.0"),
    "ductile iron 60-40-18": ("mean", "100 11.2 400 12.5"),
    "ductile iron 80-55-06": ("mean", "100 10.6"),
    "austenitic cast iron type 1": ("mean", "200 18.4"),
    "austenitic cast iron type D-2": ("mean", "200 18.7"),
    "steel 4140": ("mean", "100 12.3 200 12.7"),
    "steel 52100": ("mean", "100 11.9 280 12.6"),
    "bearing bronze C93200": ("mean", "100 18.0"),
    "phosphor bronze C51000": ("mean", "100 17.8"),
    "phosphor bronze C54400": ("mean", "300 17.3"),
}


def floats(text):
    # as the doubles that hosts read
    return [mpf(float(n)) for n in text.split()]


def mean_coefficient(numbers):
    base, a, low, high = floats(numbers)
    return assess.MeanLaw(base, [(low, a), (high, a)])


def mean_table(base, temperatures, means):
    return assess.MeanLaw(*floats(base), list(zip(floats(temperatures), floats(means), strict=True)))


def instantaneous_table(temperatures, values):
    return assess.TableLaw(list(zip(floats(temperatures), floats(values), strict=True)))


def instantaneous_polynomial(coefficients, ends):
    return assess.PolynomialLaw(floats(coefficients), *floats(ends))


def strain_polynomial(coefficients, ends):
    return assess.StrainLaw(floats(coefficients), *floats(ends))


def graphite_iron(numbers):
    return assess.IronLaw(*floats(numbers))


def built_in(name):
    kind, cells = BUILT_IN[name]
    cells = cells.split()
    rows = [(mpf(t), mpf(a) / 10**6) for t, a in zip(cells[::2], cells[1::2], strict=True)]
    if rows[0][0] > 0:
        rows.insert(0, (mpf(0), rows[0][1]))
    return assess.MeanLaw(REFERENCE, rows) if kind == "mean" else assess.TableLaw(rows)


def at(law, t):
    """What every host says of a temperature, each with the size of its largest term."""
    t = mpf(float(t))
    assert law.low <= t <= law.high

    def eps(x):
        return law.eps(x, mpf(0))

    # the slope on the side toward 20 C, from three points: exact for a parabola, for a polynomial to 1e-30
    step = mpf("1e-10") * (-1 if t > law.low and t >= REFERENCE else 1)
    slope = (4 * eps(t + step) - 3 * eps(t) - eps(t + 2 * step)) / (2 * step)
    strain = eps(t)
    mean = None if t == REFERENCE else strain / (t - REFERENCE)
    return {"strain": strain, "instantaneous_per_k": slope, "mean_from_20_per_k": mean}


TE_2 = "20 50 75 100 125 150 175 200 225 250 275 300 325"
TE_2_A = "21.7e-6 23.3e-6 23.9e-6 24.3e-6 24.7e-6 25.2e-6 25.7e-6 26.4e-6 27.0e-6 27.5e-6 27.7e-6 27.6e-6 27.1e-6"
TE_2_B = "21.7e-6 22.6e-6 23.1e-6 23.4e-6 23.7e-6 23.9e-6 24.2e-6 24.4e-6 24.7e-6 25.0e-6 25.2e-6 25.5e-6 25.6e-6"
TE_2_C = "0 0.7 1.3 1.9 2.5 3.1 3.7 4.4 5.1 5.7 6.4 7.1 7.8"
GLASS = "0.8651e-6 2.3569e-8 -4.2277e-11 2.5408e-14"
CRYOGENIC = "-4.1277e-3 -3.0389e-6 8.7696e-8 -9.9821e-11"
KNEE = ("25", "-40 0 100 300", "18e-6 19e-6 20.5e-6 22e-6")

# id, law, its lists, temperature, and what another source prints: name=value~tolerance and the source
ROWS = [
    ("mean_by_hand", mean_coefficient, ("20 20e-6 0 200",), "120", "strain=0.002~1e-17 20e-6 times 100 by hand"),
    ("mean_from_0", mean_coefficient, ("0 20e-6 0 300",), "150", None),
    ("mean_at_20", mean_coefficient, ("0 20e-6 0 300",), "20", "strain=0~1e-20 at 20 C nothing has grown"),
    ("mean_below_20", mean_coefficient, ("20 11.5e-6 -40 100",), "-40", "strain=-0.00069~1e-18 11.5e-6 times -60 by hand"),
    *((f"table_b_{t}", mean_table, ("20", TE_2, TE_2_B), t, f"strain={float(k) / 1000}~6e-5 ASME II-D Table TE-2 column C in mm/m")
      for t, k in zip(TE_2.split(), TE_2_C.split(), strict=True) if t != "20"),
    *((f"table_a_{t}", instantaneous_table, (TE_2, TE_2_A), t, f"instantaneous_per_k={a}~1e-15 mean_from_20_per_k={b}~1.0001e-7 ASME II-D Table TE-2 columns A and B; straight lines between the rows of A are within 0.1 of B")
      for t, a, b in zip(TE_2.split(), TE_2_A.split(), TE_2_B.split(), strict=True) if t != "20"),
    ("table_a_between", instantaneous_table, (TE_2, TE_2_A), "110", None),
    ("table_knee_cold", mean_table, KNEE, "-20", None),
    ("table_knee_row_below", mean_table, KNEE, "0", None),
    ("table_knee_row_above", mean_table, KNEE, "100", None),
    ("table_knee_hot", mean_table, KNEE, "260", None),
    ("instantaneous_cold", instantaneous_table, ("-40 0 50 200", "19e-6 20e-6 23e-6 26.4e-6"), "-30", None),
    ("instantaneous_cold_row", instantaneous_table, ("-40 0 50 200", "19e-6 20e-6 23e-6 26.4e-6"), "0", None),
    *((f"glass_{k}", instantaneous_polynomial, (GLASS, "19 390"), repr(k - 273.15), f"instantaneous_per_k={a}e-6~5.1e-9 NIST SRM 731 certificate polynomial: column of the coefficient")
      for k, a in ((300, "4.82"), (400, "5.15"), (500, "5.26"), (600, "5.27"), (640, "5.29"))),
    ("cryogenic_77", strain_polynomial, (CRYOGENIC, "-248 26.8"), "-196.15", None),
    ("cryogenic_293", strain_polynomial, (CRYOGENIC, "-248 26.8"), "19.85", "instantaneous_per_k=22.642e-6~1e-9 NIST cryogenic polynomial of 6061-T6: its derivative at 293 K"),
    ("cryogenic_250", strain_polynomial, (CRYOGENIC, "-248 26.8"), "-23.15", None),
    ("iron_ferritic", graphite_iron, ("66.4 9.05 0",), "100", "instantaneous_per_k=14.6e-6~5e-8 the terms of the regression added by hand to three digits"),
    ("iron_pearlitic", graphite_iron, ("75.4 3.4 1.84",), "350", None),
    ("iron_compacted", graphite_iron, ("3.92 1.94 0",), "500", None),
    ("iron_at_20", graphite_iron, ("42.5 6.5 0.9",), "20", None),
    *((f"built_in_{k}_{t}", built_in, (name,), t, None) for k, (name, (_, cells)) in enumerate(BUILT_IN.items()) for t in ("15", cells.split()[-2])),
    ("built_in_alsi12_150", built_in, ("gravity-cast AlSi12CuMgNi",), "150", "mean_from_20_per_k=20.5e-6~1e-15 between 20.0 at 100 C and 21.0 at 200 C by hand"),
]

# id, function, lists, temperature, kind and field, why
REFUSED = [
    ("refuse_mean_range", "mean_coefficient", ("20 20e-6 0 200",), "201", "outside_law temperature_c", "beyond the book"),
    ("refuse_mean_nan", "mean_coefficient", ("20 20e-6 0 200",), "nan", "outside_law temperature_c", "not a temperature"),
    ("refuse_mean_bare", "mean_coefficient", ("20 20 0 200",), "100", "out_of_range mean_per_k", "the factor 1e-6 left out"),
    ("refuse_mean_reversed", "mean_coefficient", ("20 20e-6 200 0",), "100", "out_of_order to_c", "the range falls"),
    ("refuse_mean_hot_only", "mean_coefficient", ("20 20e-6 100 200",), "150", "outside_law from_c", "a strain starts at 20 C"),
    ("refuse_mean_base", "mean_coefficient", ("inf 20e-6 0 200",), "150", "not_finite base_c", "a mean needs its base"),
    ("refuse_table_falling", "mean_table", ("20", "20 100 90", "2e-5 2e-5 2e-5"), "50", "out_of_order temperatures_c/2", "rows rise"),
    ("refuse_table_bare", "mean_table", ("20", "20 100", "2e-5 20.5"), "50", "out_of_range means_per_k/1", "the factor 1e-6 left out"),
    ("refuse_table_hot_only", "mean_table", ("20", "100 200", "2e-5 2e-5"), "150", "outside_law temperatures_c", "it does not reach 20 C"),
    ("refuse_table_none", "mean_table", ("20", "", ""), "50", "missing_field temperatures_c", "no rows"),
    ("refuse_instantaneous_nan", "instantaneous_table", ("0 100", "nan 2e-5"), "50", "not_finite instantaneous_per_k/0", "not a coefficient"),
    ("refuse_instantaneous_range", "instantaneous_table", ("0 100", "2e-5 2e-5"), "-1", "outside_law temperature_c", "below the first row"),
    ("refuse_strain_as_coefficient", "instantaneous_polynomial", (CRYOGENIC, "-248 26.8"), "0", "out_of_range kelvin_coefficients", "a strain polynomial is no coefficient"),
    ("refuse_coefficient_as_strain", "strain_polynomial", (GLASS, "19 390"), "100", "out_of_range kelvin_coefficients", "a coefficient is no strain"),
    ("refuse_polynomial_none", "strain_polynomial", ("", "0 26.8"), "10", "missing_field kelvin_coefficients", "no coefficients"),
    ("refuse_iron_share", "graphite_iron", ("0.66 9 0",), "100", "out_of_range nodularity_percent", "a share for a percentage"),
    ("refuse_iron_grey", "graphite_iron", ("40 12 0.5",), "100", "out_of_range graphite_percent", "beyond the samples"),
    ("refuse_iron_cold", "graphite_iron", ("40 6 0.5",), "19.9", "outside_law temperature_c", "below the regression"),
    ("refuse_iron_pearlite", "graphite_iron", ("40 6 100",), "100", "out_of_range pearlite_to_ferrite", "a percentage for a ratio"),
    ("refuse_built_in_range", "built_in", ("wrought aluminium 2218",), "101", "outside_law temperature_c", "only the range that was found"),
    ("refuse_built_in_name", "built_in", ("wrought aluminium 2219",), "50", "unknown_name name", "not in the table"),
]


def arguments(lists, t):
    cells = [text if text in BUILT_IN or "aluminium" in text else text.replace(" ", ";") for text in lists]
    return "|".join([*cells, t])


def row(name, law, lists, t, published):
    found = at(law(*lists), t)
    *printed, source = ("",) if published is None else split(published)
    cells = []
    for result, value in found.items():
        own = [p for p in printed if p.startswith(result + "=")]
        if value is None:
            cells.append(f"{result}=none")
        elif own:
            number, tolerance = own[0].partition("=")[2].split("~")
            assert abs(value - mpf(number)) <= mpf(tolerance), (name, result, mp.nstr(value, 12), number)
            cells.append(own[0])
        else:
            # some twenty roundings of what the strain is made of: a coefficient times some hundred kelvin, a polynomial up to 1e-2
            # of a mean: those of the strain over the interval, which may be short
            mean = max(2e-18, 2e-17 / abs(float(t) - 20)) if result == "mean_from_20_per_k" else None
            tolerance = {"strain": "2e-17", "instantaneous_per_k": "2e-19", "mean_from_20_per_k": f"{mean or 0:.1e}"}[result]
            cells.append(f"{result}={float(value)!r}~{tolerance}")
    text = f"{source}; the rest {CLOSED}" if printed else CLOSED
    return f"{name},{law.__name__},{arguments(lists, t)},{';'.join(cells)},{text.replace(',', ' ')}"


def split(published):
    words = published.split(" ")
    count = next(k for k, word in enumerate(words) if "=" not in word or "~" not in word)
    return [*words[:count], " ".join(words[count:])]


def growth_csv():
    """The file of the rows."""
    rows = [row(*r) for r in ROWS]
    rows += [f"{n},{f},{arguments(lists, t)},error:{kind},{why.replace(',', ' ')}" for n, f, lists, t, kind, why in REFUSED]
    return HEADING + "\n".join(rows) + "\n"
