"""The functions of gaugepoint in LibreOffice Calc, answered by the C library beside this file. `build` writes what Calc knows of them.

Arguments are asked for as tables of cells: so a text stays a text, and only numbers reach the library. A blank cell of a range arrives as "", but a
single blank cell as 0 and TRUE as 1, which no add-in can tell from numbers.
"""

import json
import re
import struct
from ctypes import Structure, byref, c_char_p, c_double, c_int32, c_size_t, sizeof
from decimal import Decimal
from pathlib import Path

import unohelper
from gaugepoint_ctypes import Conformity, GaugepointError, Library, Rule, Stack, Variation

try:
    from gaugepointcalc import XGaugepoint
except ImportError:
    # the first time, this file is read before its own types are known; nothing is called then
    class XGaugepoint:
        pass


LIBRARY = Path(__file__).resolve().parent / "lib/libgaugepoint_c.so"

# Calc shows a NaN as #NUM!, and one with 519 in its low bits as #VALUE!.
REFUSED = float("nan")
NO_NUMBER = struct.unpack("=d", struct.pack("=Q", 0x7FF8 << 48 | 519))[0]

# Said in place of a limit that there is not; a blank cell does not say it, for it may have been forgotten.
NONE = "none"
INFINITE = float("inf")

# Rows of the vectors, from outside of the library: by hand.
WORKED = (("size_at_20_mm", (86, 0, 20, 11.5e-6, 30, 21e-6), 85.98194379, 5e-9), ("bench_clearance_mm", (86.035, 86), 0.035, 2e-14))


class NoNumber(Exception):
    """What stands where one number should."""


class Refused(Exception):
    """What the library refuses, in its words, with what a sheet calls it."""


def number(cell) -> float:
    """A number as it came: a text is never read as one, whatever the locale writes in it."""
    if isinstance(cell, (int, float)):
        return float(cell)
    if isinstance(cell, (tuple, list)):
        raise NoNumber("several cells where one number should be")
    raise NoNumber(f'"{cell}" is a text, not a number' if cell else "a number is missing")


def meant(cell) -> float:
    """A number of a decision, where a blank cell must not come to a verdict: 0 is said as a text."""
    if cell == "0":
        return 0.0
    given = number(cell)
    if given == 0:
        raise NoNumber('0, or a blank cell; where 0 is meant, write the text "0"')
    return given


def single(table):
    """The content of an argument of one cell, which WHY is given without its table."""
    return table[0][0] if isinstance(table, (tuple, list)) and len(table) == 1 and len(table[0]) == 1 else table


def flattened(arguments) -> list:
    """Arguments one by one; those of a range row by row."""
    return [cell for given in arguments for cell in ([c for row in given for c in row] if isinstance(given, tuple) else [given])]


def word(choice) -> str:
    return choice.name.lower().replace("_", " ")


def one_column(table) -> list:
    """The cells of a column of two rows or more: of one cell alone, a blank would be 0."""
    if not isinstance(table, (tuple, list)) or len(table) < 2 or any(len(row) != 1 for row in table):
        raise NoNumber("a column of two rows or more is needed")
    return [row[0] for row in table]


class Gaugepoint:
    """The library, and its list of functions by the names that a sheet has for them."""

    def __init__(self, path: Path = LIBRARY):
        self.library = Library(str(path))
        c = self.library._c
        for text in (c.gaugepoint_flat_name, c.gaugepoint_flat_parameter, c.gaugepoint_flat_meaning):
            text.restype = c_char_p
        self.functions = {}
        for place in range(1, c.gaugepoint_flat_count() + 1):
            name = c.gaugepoint_flat_name(c_int32(place)).decode()
            parameters = []
            while (parameter := c.gaugepoint_flat_parameter(c_int32(place), c_int32(len(parameters)))) is not None:
                parameters.append(parameter.decode())
            self.functions[name.upper()] = (name, parameters, c.gaugepoint_flat_meaning(c_int32(place)).decode())

    def value(self, name: str, numbers) -> float:
        """A function of numbers; GaugepointError when they are refused."""
        out = c_double()
        self.library.call(name, *map(c_double, numbers), byref(out))
        return out.value

    def column(self, name: str, tables):
        """A function of each row: columns of one length, where one cell stands for all rows."""
        if any(len(row) != 1 for table in tables for row in table):
            raise NoNumber("an argument has several columns")
        count = max(map(len, tables))
        if any(len(table) not in (1, count) for table in tables):
            raise NoNumber("columns of different lengths")
        columns, missing = [(c_double * count)() for _ in tables], set()
        for column, table in zip(columns, tables):
            for row in range(count):
                try:
                    column[row] = number(table[row if len(table) > 1 else 0][0])
                except NoNumber:
                    column[row] = REFUSED
                    missing.add(row)
        out, status = (c_double * count)(), (c_int32 * count)()
        self.library.call(f"{name}_array", *columns, c_size_t(count), out, status)
        return tuple((NO_NUMBER if row in missing else out[row],) for row in range(count))

    def decide(self, value, deviation, lower, upper, rule, at_least) -> str:
        """A Conformity as a word. A rule that asks for nothing is given a number that it does not look at."""
        rules = {word(choice): choice for choice in Rule}
        if rule not in rules:
            raise NoNumber(f'"{rule}" is no rule; there are: {", ".join(rules)}')
        asked = rules[rule] in (Rule.CONFORMANCE_PROBABILITY, Rule.SIMPLE_ACCEPTANCE_BY_RATIO)
        limits = (None if limit == NONE else meant(limit) for limit in (lower, upper))
        # None when it was left out, 0 when its cell is blank
        at_least = number(at_least or "") if asked else 0.95
        return word(Conformity(self.library.decide_mm(meant(value), meant(deviation), *limits, rules[rule], at_least)[0]))


class Forms(Structure):
    """GaugepointStackForms as far as it is used here."""

    _fields_ = [("struct_size", c_size_t), ("has_modified_factor", c_int32), ("reserved", c_int32)] + [(name, c_double) for name in (
        "nominal", "mean", "standard_deviation", "worst_case_lower", "worst_case_upper", "root_sum_square_lower", "root_sum_square_upper",
        "bender_lower", "bender_upper", "modified_lower", "modified_upper", "modified_factor")]


class Block(Structure):
    """GaugepointBlock: no gasket, no sleeves, no kept rings and no chamber."""

    _fields_ = [("has", c_int32 * 4)] + [(name, c_double) for name in (
        "nominal_mm", "largest_by_gasket_mm", "sleeve_price", "boring_price", "guard", "ring_gap_mm")] + [("chamber", c_double * 8)]


class WornBore(Structure):
    """GaugepointWornBore: its walls were not gauged, it takes no sleeve and does not go back as it is."""

    _fields_ = [("clean_up_mm", c_double), ("standard_uncertainty_mm", c_double), ("has_largest_by_walls", c_int32), ("may_be_sleeved", c_int32),
                ("largest_by_walls_mm", c_double), ("goes_back", c_int32), ("reserved", c_int32)]


class Step(Structure):
    """GaugepointStep: what it costs and how many there are does not matter."""

    _fields_ = [("oversize_mm", c_double), ("price", c_double), ("has_available", c_int32), ("has_more_mass", c_int32), ("available", c_size_t),
                ("more_mass_g", c_double)]


class Consequence(Structure):
    _fields_ = [("has", c_int32 * 4), ("of_step", c_double * 4)]


class Choice(Structure):
    _fields_ = [("way", c_int32), ("reserved", c_int32), ("price", c_double), ("ruled_out", c_size_t)]


class Action(Structure):
    _fields_ = [("kind", c_int32), ("reserved", c_int32), ("step", c_size_t)]


class RuledOut(Structure):
    _fields_ = [("reason", c_int32), ("has", c_int32 * 3), ("counts", c_size_t * 3), ("value_mm", c_double)]


class Oversizes(Structure):
    _fields_ = [("struct_size", c_size_t), ("choices", c_size_t), ("ruled_out", c_size_t)]


ONE_STEP = 1  # of GaugepointOversizeWay


# ---- functions of ranges: each takes the library and its arguments as tables of cells


def bore_job(sizes: list[Decimal], axes: int, reduction: dict[str, str]) -> dict:
    """A job of one bore, read at 20 C from its first size with a gauge that only this needs: no error of it enters a difference of sizes."""
    shop, first = "20 C", f"{sizes[0].normalize():f} mm"
    law = {"mean_coefficient": {"base": shop, "value": "11.5e-6 /K", "from": "-5 C", "to": "60 C"}}
    metal = {"name": "metal", "law": law, "coefficient_permissible_error": "1e-6 /K", "source": "of no effect at 20 C", "confidence": "unverified"}
    ring = {"name": "first size", "size": first, "expanded_uncertainty": "0.001 mm", "coverage_factor": 2, "material": "metal", "temperature": shop}
    gauge = {"name": "gauge", "kind": "bore_gauge", "resolution": "0.001 mm", "permissible_error": "0.002 mm", "repeatability": "0.001 mm",
             "material": "metal", "calibrated": "2000-01-01", "calibration_due": "2000-12-31", "setting": {"ring": ring}}
    readings = [{"depth": f"{1 + k // axes} mm", "axis": f"{k % axes} deg", "repeats": [f"{(size - sizes[0]).normalize():f} mm"]}
                for k, size in enumerate(sizes)]
    return {
        "format": "gaugepoint-job", "version": 1, "job": {"id": "one bore", "date": "2000-01-01"}, "materials": [metal], "gauges": [gauge],
        "shop": {"temperature": shop, "thermometer": {"permissible_error": "1 K"}},
        "engine": {
            "name": "one bore", "cylinders": 1, "bore": {"nominal": first, "length": "1000 mm", "material": "metal"}, "limits": {},
            "piston": {"nominal": first, "material": "metal", "gauge_point": {"height": "10 mm", "datum": "skirt_bottom", "angle": "0 deg"}},
            "reduction": {"size": "largest", "taper": "along_axis", "out_of_round": "at_level"} | reduction},
        "cylinders": [{"number": 1, "bore": {"clamping": "bare", "gauge": "gauge", "temperature": shop, "readings": readings}}],
    }


def in_bore(what: str):
    """Taper or out-of-round of a bore, as a report on a job gives it."""
    def found(library: Library, sizes_mm, axes, rule) -> float:
        table = sizes_mm if isinstance(sizes_mm, (tuple, list)) else ((sizes_mm,),)
        count, wide = number(single(axes)), len(table[0])
        if count not in range(1, 181) or wide not in (1, count) or len(table) * wide % count:
            raise NoNumber("axes: how many sizes there are at each depth; as many columns as axes, or one column, depth by depth")
        # a document has 15 digits: four before the point
        sizes = [Decimal(f"{number(cell):.11f}") for row in table for cell in row]
        try:
            report = json.loads(library.job_assess(json.dumps(bore_job(sizes, int(count), {what: str(rule).replace(" ", "_")}))))
        except GaugepointError as error:
            text = re.sub(r"/cylinders/0/bore/readings/(\d+)/repeats/0", r"sizes_mm/\1 from sizes_mm/0", str(error))
            text = re.sub(r"/engine/bore/nominal|/gauges/0/setting/ring/size", "sizes_mm/0", text)
            raise Refused(text.replace(f"/engine/reduction/{what}", "rule")) from None
        cylinder = report["cylinders"][0]
        if what not in cylinder["bore"]:
            raise Refused("; ".join(text.removeprefix("bore 1, ") for text in cylinder["missing"] if what.replace("_", "-") in text))
        return cylinder["bore"][what]["value_mm"]
    return found


def forms(stack: Stack) -> Forms:
    out = Forms(struct_size=sizeof(Forms))
    stack._ask("forms", byref(out))
    return out


def clearance_uncertainty(library: Library, bore_uncertainty_mm, piston_uncertainty_mm) -> float:
    with Stack(library) as stack:
        for name, given, coefficient in (("bore", bore_uncertainty_mm, 1.0), ("piston", piston_uncertainty_mm, -1.0)):
            try:
                stack.add(name, 0.0, 0.0, 0.0, Variation.NORMAL, (0.0, meant(single(given))), coefficient)
            except GaugepointError as error:
                raise Refused(str(error).replace("standard_deviation:", f"{name}_uncertainty_mm:")) from None
        return forms(stack).standard_deviation


SPREADS = {word(kind): kind for kind in (Variation.RECTANGULAR, Variation.TRIANGULAR, Variation.ARCSINE)}


def spread(cell, tolerance: float) -> tuple[Variation, tuple[float, ...]]:
    """How a part varies between its limits: by a word, or normal with a standard deviation."""
    if not isinstance(cell, str) or not cell:
        return Variation.NORMAL, (0.0, number(cell))
    if cell not in SPREADS:
        raise NoNumber(f'"{cell}" is no spread; there are: {", ".join(SPREADS)}, or a number: the standard deviation of a normal one')
    kind = SPREADS[cell]
    return kind, (-tolerance, 0.0, tolerance) if kind == Variation.TRIANGULAR else (0.0, tolerance)


def of_stack(asked):
    """What is asked of the stack of a table: `asked` takes the stack and what comes behind the table."""
    def found(library: Library, sizes, tolerances, spreads, coefficients, *more) -> float:
        columns = list(map(one_column, (sizes, tolerances, spreads, coefficients)))
        if len(set(map(len, columns))) != 1:
            raise NoNumber("columns of different lengths")
        with Stack(library) as stack:
            for row, (size, tolerance, how, coefficient) in enumerate(zip(*columns), 1):
                tolerance = number(tolerance)
                try:
                    stack.add(f"row {row}", number(size), -tolerance, tolerance, *spread(how, tolerance), number(coefficient))
                except GaugepointError as error:
                    raise Refused(f"row {row}, {error}") from None
            return asked(stack, *map(single, more))
    return found


def limit(cell, otherwise: float) -> float:
    return otherwise if cell == NONE else meant(cell)


def outside_ppm(stack: Stack, lower, upper) -> float:
    if lower == upper == NONE:
        raise NoNumber("a limit is needed")
    return stack.outside(limit(lower, -INFINITE), limit(upper, INFINITE)).ppm


def all_of(table) -> list[float]:
    """The numbers of a range of any shape; of one cell 0 may be a blank."""
    if not isinstance(table, (tuple, list)) or len(table) == len(table[0]) == 1:
        return [meant(single(table))]
    return [number(cell) for row in table for cell in row]


def oversize(library: Library, clean_ups_mm, standard_uncertainty_mm, guard, oversizes_mm, nominal_mm) -> float:
    uncertainty = meant(single(standard_uncertainty_mm))
    bores = [WornBore(clean_up_mm=x, standard_uncertainty_mm=uncertainty) for x in all_of(clean_ups_mm)]
    steps = [Step(oversize_mm=x) for x in all_of(oversizes_mm)]
    block = Block(nominal_mm=number(single(nominal_mm)), guard=meant(single(guard)))
    ways = 2 * len(steps) + 1
    choices, actions, found = (Choice * ways)(), (Action * (ways * len(bores)))(), Oversizes(struct_size=sizeof(Oversizes))
    room = ways * (2 * len(bores) + len(steps) + 1)
    try:
        library.call("oversizes", byref(block), (WornBore * len(bores))(*bores), c_size_t(len(bores)), (Step * len(steps))(*steps), c_size_t(len(steps)),
                     (Consequence * len(steps))(), choices, c_size_t(ways), actions, (RuledOut * room)(), c_size_t(room), byref(found))
    except GaugepointError as error:
        text = re.sub(r"\bbores/(\d+)/clean_up_mm", r"clean_ups_mm/\1", str(error))
        raise Refused(re.sub(r"\bsteps/(\d+)/oversize_mm", r"oversizes_mm/\1", text)) from None
    # those that can be done come first, and of one price the one that takes off least
    for k in range(found.choices):
        if choices[k].way == ONE_STEP and not choices[k].ruled_out:
            return steps[actions[k * len(bores)].step].oversize_mm
    raise Refused("no oversize to be had cleans up every bore")


CELLS, TEXT = "sequence< sequence< any > >", "string"

BORE = ("sizes_mm", CELLS, "Diameters of one bore at 20 C in mm: a row for each depth from the top down and a column for each axis, or all in one column, depth "
        "by depth. A blank cell is refused. Taken to 1e-11 mm")
AXES = ("axes", CELLS, "How many axes were read at each depth. 0 is refused, and so a blank cell")
STACKED = (("sizes", CELLS, "Column of the sizes of the parts, all in one unit. A blank cell of a column is refused"),
           ("tolerances", CELLS, "Column of the tolerances, plus and minus, in the same unit. A blank cell of a column is refused"),
           ("spreads", CELLS, 'Column of how each part varies: "rectangular", "triangular" or "arcsine" between its limits, or a number: the standard '
            "deviation of a normal one. A blank cell of a column is refused"),
           ("coefficients", CELLS, "Column of what each adds to the stack for one unit of it: 1, -1, or another factor. A blank cell of a column is refused"))
MEANT = '0 is refused, it may be a blank cell; the text "0" is accepted'
LIMIT = f'limit in the same unit, or the word "none". {MEANT}'
UNCERTAIN = f"Its standard uncertainty in mm, without what bore and piston share: that cancels. {MEANT}"

# Name, what computes it, meaning, parameters with type and help. All give one number.
OF_RANGES = {
    "BORE_TAPER_MM": (in_bore("taper"), "Taper of a bore in mm, of diameters, by a rule of the library.", (
        BORE, AXES, ("rule", TEXT, '"along axis": largest less smallest along an axis, the largest of all axes; "top to bottom": largest at the top '
                     "less largest at the bottom, without sign"))),
    "BORE_OUT_OF_ROUND_MM": (in_bore("out_of_round"), "Out-of-round of a bore in mm, of diameters, by a rule of the library. Blind to odd lobes.", (
        BORE, AXES, ("rule", TEXT, '"at level": largest less smallest at a depth, the largest of all depths; "between axes": largest on one of two axes '
                     "less smallest on the other, the greater of the two ways"))),
    "CLEARANCE_UNCERTAINTY_MM": (clearance_uncertainty, "Standard uncertainty of a clearance in mm, from those of its bore and its piston, which share "
                                 "nothing.", (("bore_uncertainty_mm", CELLS, UNCERTAIN), ("piston_uncertainty_mm", CELLS, UNCERTAIN))),
    "OVERSIZE_MM": (oversize, "The smallest oversize to be had, in mm, whose nominal bore cleans up every bore of a block. Walls and gasket are not looked at.", (
        ("clean_ups_mm", CELLS, "What each bore must be bored to at least to be clean, in mm. A blank cell of a range is refused"),
        ("standard_uncertainty_mm", CELLS, f"Standard uncertainty of each of them, in mm. {MEANT}"),
        ("guard", CELLS, f"How many of these an oversize must lie above. {MEANT}"),
        ("oversizes_mm", CELLS, "The oversizes to be had, rising, in mm over the nominal bore. A blank cell of a range is refused"),
        ("nominal_mm", CELLS, "Nominal bore of the standard size, in mm. 0 is refused, and so a blank cell"))),
    "STACK_WORST_LOWER": (of_stack(lambda stack: forms(stack).worst_case_lower), "Smallest size of a stack: all parts at their limits at once.", STACKED),
    "STACK_WORST_UPPER": (of_stack(lambda stack: forms(stack).worst_case_upper), "Largest size of a stack: all parts at their limits at once.", STACKED),
    "STACK_RSS_LOWER": (of_stack(lambda stack: forms(stack).root_sum_square_lower), "Lower end of a stack by the root of the sum of squares of its "
                        "tolerances. Common practice.", STACKED),
    "STACK_RSS_UPPER": (of_stack(lambda stack: forms(stack).root_sum_square_upper), "Upper end of a stack by the root of the sum of squares of its "
                        "tolerances. Common practice.", STACKED),
    "STACK_MEAN": (of_stack(lambda stack: forms(stack).mean), "Mean of a stack.", STACKED),
    "STACK_DEVIATION": (of_stack(lambda stack: forms(stack).standard_deviation), "Standard deviation of a stack.", STACKED),
    "STACK_OUTSIDE_PPM": (of_stack(outside_ppm), "How many of a million stacks lie outside limits, by the exact distribution.", (
        *STACKED, ("lower", CELLS, f"Lower {LIMIT}"), ("upper", CELLS, f"Upper {LIMIT}"))),
    "STACK_QUANTILE": (of_stack(lambda stack, probability: stack.quantile(number(probability))), "The size that a stack is below with a probability, by the "
                       "exact distribution.", (*STACKED, ("probability", CELLS, "Between 0 and 1. 0 is refused, and so a blank cell"))),
}


class Functions(unohelper.Base, XGaugepoint):
    """What a sheet calls. Functions of the library's list are found by their names, one row or (_ARRAY) a column."""

    def __init__(self, _context=None, *_):
        self._opened = None

    def _gaugepoint(self) -> Gaugepoint:
        """Opened when a cell needs it: without the library the add-in is still there, and says what is wrong."""
        if self._opened is None:
            self._opened = Gaugepoint()
        return self._opened

    def __getattr__(self, name: str):
        # other names are asked of every object; they do not open the library
        if not name.isupper():
            raise AttributeError(name)
        if name in OF_RANGES:
            return lambda *tables: self._of_ranges(name, tables)
        functions = self._gaugepoint().functions
        if name in functions:
            return lambda *tables: self._row(functions[name][0], tables)
        of = name.removesuffix("_ARRAY")
        if of == name or of not in functions:
            raise AttributeError(name)
        return lambda *tables: self._column(functions[of][0], tables)

    def _row(self, name: str, tables) -> float:
        try:
            return self._gaugepoint().value(name, [number(single(table)) for table in tables])
        except NoNumber:
            return NO_NUMBER
        except GaugepointError:
            return REFUSED

    def _column(self, name: str, tables):
        try:
            return self._gaugepoint().column(name, tables)
        except NoNumber:
            # every cell of the result must show it
            return ((NO_NUMBER,),) * max(map(len, tables))

    def _of_ranges(self, name: str, tables) -> float:
        try:
            return OF_RANGES[name][0](self._gaugepoint().library, *tables)
        except NoNumber:
            return NO_NUMBER
        except (Refused, GaugepointError):
            return REFUSED

    def DECIDE(self, value, deviation, lower, upper, rule, at_least):
        try:
            return self._gaugepoint().decide(*map(single, (value, deviation, lower, upper)), rule, at_least)
        except NoNumber:
            return NO_NUMBER
        except GaugepointError:
            return REFUSED

    def WHY(self, function: str, arguments) -> str:
        name = function.upper().removeprefix("GAUGEPOINT.").removesuffix("_ARRAY")
        try:
            if name in OF_RANGES:
                library, (compute, _, parameters) = self._gaugepoint().library, OF_RANGES[name]
                names = [parameter for parameter, *_ in parameters]
                return self._why_of(names, arguments, len(names), lambda tables: compute(library, *tables))
            cells = flattened(arguments)
            if name == "DECIDE":
                return self._why_of(("value_mm", "standard_uncertainty_mm", "lower_mm", "upper_mm", "rule", "at_least"), cells, 5, self._decided)
            if name not in self._gaugepoint().functions:
                return f'there is no function "{function}"'
            flat, parameters, _ = self._gaugepoint().functions[name]
            return self._why_of(parameters, cells, len(parameters), lambda cells: self._gaugepoint().value(flat, map(number, cells)))
        except (OSError, ImportError) as error:
            return f"the library is missing: {error}"

    def _decided(self, cells):
        return self._gaugepoint().decide(*cells, *[None] * (6 - len(cells)))

    def _why_of(self, parameters, cells, least: int, call) -> str:
        if not least <= len(cells) <= len(parameters):
            return f"needs {', '.join(parameters)}; {len(cells)} are given"
        try:
            call(cells)
        except (NoNumber, Refused, GaugepointError) as error:
            return str(error)
        zeros = [name for name, cell in zip(parameters, cells) if cell == 0]
        return "nothing is refused" + (f"; 0, or a blank cell, is {', '.join(zeros)}" if zeros else "")

    def VERSION(self) -> str:
        return self._gaugepoint().library.version

    def SELFTEST(self) -> str:
        try:
            g = self._gaugepoint()
            for name, numbers, expected, tolerance in WORKED:
                if not abs(g.value(name, numbers) - expected) <= tolerance:
                    return f"{name} is wrong"
            g.value("bench_clearance_mm", (0, 86))
            return "a bore of 0 is accepted"
        except GaugepointError as error:
            return "ok" if error.field == "bore_mm" else str(error)
        except (OSError, ImportError, AttributeError) as error:
            return f"the library is missing: {error}"


g_ImplementationHelper = unohelper.ImplementationHelper()
# not as a com.sun.star.sheet.AddIn: Calc would then ask the object for names and help, and not look into CalcAddIns.xcu
g_ImplementationHelper.addImplementation(Functions, "GAUGEPOINT", ())
