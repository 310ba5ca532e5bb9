"""The functions of gaugepoint in LibreOffice Calc, answered by the C library beside this file. `build` writes what Calc knows of them.

Arguments are asked for as tables of cells: so a text stays a text, and only numbers reach the library. A blank cell of a range arrives as "", but a
single blank cell as 0 and TRUE as 1, which no add-in can tell from numbers.
"""

import struct
from ctypes import byref, c_char_p, c_double, c_int32, c_size_t
from pathlib import Path

import unohelper
from gaugepoint_ctypes import Conformity, GaugepointError, Library, Rule

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

# Rows of the vectors, from outside of the library: by hand.
WORKED = (("size_at_20_mm", (86, 0, 20, 11.5e-6, 30, 21e-6), 85.98194379, 5e-9), ("bench_clearance_mm", (86.035, 86), 0.035, 2e-14))


class NoNumber(Exception):
    """What stands where one number should."""


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
    """The content of an argument of one cell."""
    return table[0][0] if len(table) == 1 and len(table[0]) == 1 else table


def flattened(arguments) -> list:
    """Arguments one by one; those of a range row by row."""
    return [cell for given in arguments for cell in ([c for row in given for c in row] if isinstance(given, tuple) else [given])]


def word(choice) -> str:
    return choice.name.lower().replace("_", " ")


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
        except (NoNumber, GaugepointError) as error:
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
