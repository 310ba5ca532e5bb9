"""gaugepoint through ctypes: the C library alone, with its errors as exceptions and its handles as objects to close. Python 3.10 or later.

Load the library once: `g = Library("/prefix/lib/libgaugepoint_c.so")`. It may be used from any number of threads.
"""

import ctypes
from array import array
from collections.abc import Iterable
from ctypes import POINTER, Structure, byref, c_char, c_char_p, c_double, c_int32, c_size_t, c_void_p, sizeof
from enum import IntEnum
from threading import Lock

# From here to the next such line all is of gaugepoint.h. Generated from it; the test that compares it also writes it.

ABI = 1


class Status(IntEnum):
    """Statuses. See STATUS at the head."""

    # Success.
    OK = 0
    # The text is not valid UTF-8.
    NOT_UTF8 = 101
    # The text is larger than is accepted.
    TOO_LARGE = 102
    # The text is not valid JSON.
    SYNTAX = 103
    # The text is nested more deeply than is accepted.
    TOO_DEEP = 104
    # A field holds another type of JSON value than it should.
    WRONG_TYPE = 105
    # A field is not known here.
    UNKNOWN_FIELD = 106
    # A field stands twice in the same object.
    REPEATED_FIELD = 107
    # A required field is missing.
    MISSING_FIELD = 108
    # A word is not one of the words accepted here.
    UNKNOWN_CHOICE = 109
    # The document's format or version is not one this library reads.
    UNKNOWN_FORMAT = 110
    # The text does not hold a decimal number.
    NOT_A_NUMBER = 201
    # A number stands without a unit.
    MISSING_UNIT = 202
    # The unit is unknown or measures something else.
    WRONG_UNIT = 203
    # A fraction of an inch is not a measurement.
    FRACTION = 204
    # A comma stands where a decimal point should.
    DECIMAL_COMMA = 205
    # The number has more digits than are accepted.
    TOO_MANY_DIGITS = 206
    # The number is not finite.
    NOT_FINITE = 207
    # The text is not an ISO 8601 date.
    NOT_A_DATE = 208
    # A name or note holds a control character.
    CONTROL_CHARACTER = 209
    # The text is not a formula in ordinary algebra, or a name cannot stand in one.
    NOT_AN_EXPRESSION = 210
    # The value is outside what is possible for this quantity.
    OUT_OF_RANGE = 301
    # A lower bound is above its upper bound, or rows are out of order.
    OUT_OF_ORDER = 302
    # A name or number that must be unique stands twice.
    REPEATED = 303
    # A name refers to nothing in the document.
    UNKNOWN_NAME = 304
    # Two fields contradict each other.
    CONTRADICTION = 305
    # A temperature is outside the range of the expansion law.
    OUTSIDE_LAW = 306
    # The caller stopped the work.
    STOPPED = 401
    # A pointer that is needed is NULL.
    NULL_POINTER = 901
    # The struct_size of a structure was not set.
    STRUCT_SIZE = 902
    # There is no memory for the text.
    OUT_OF_MEMORY = 903
    # A fault of this library; please report it.
    PANIC = 904
    # A callback said that it failed.
    CALLBACK_FAILED = 905


class Rule(IntEnum):
    """Rule of decision."""

    # The value lies within the limits. The uncertainty is stated, not used.
    SIMPLE_ACCEPTANCE = 1
    # The value lies within the limits by a guard band, so that conformity is proven. ISO 14253-1.
    PROVEN = 2
    # The probability of conformity reaches what is asked. JCGM 106.
    CONFORMANCE_PROBABILITY = 3
    # The value lies within the limits by its expanded uncertainty, twice the standard uncertainty. ISO
    # 14253-1:1998.
    EXPANDED_GUARD_BAND = 4
    # The value lies within the limits, and the tolerance is wide enough for its uncertainty. ASME
    # B89.7.3.1.
    SIMPLE_ACCEPTANCE_BY_RATIO = 5


class Document(IntEnum):
    """What a document is."""

    # A job.
    JOB = 1
    # A printed sheet.
    SHEET = 2
    # A measurement.
    MEASUREMENT = 3
    # A hot fit.
    FIT = 4
    # A stack.
    STACK = 5
    # A budget of uncertainty.
    BUDGET = 6
    # Two jobs of one engine.
    REVISIT = 7
    # A job with other values.
    WHAT_IF = 8


class Format(IntEnum):
    """How a report is written."""

    # JSON on one line.
    JSON = 1
    # Text for a reader, of at most 100 columns where a word or a table does not need more.
    TEXT = 2
    # Markdown.
    MARKDOWN = 3


class Outcome(IntEnum):
    """What a verdict says, from the best to the worst."""

    # It goes back.
    REUSE = 1
    # Something that is needed was not read.
    INCOMPLETE = 2
    # Neither conformity nor the opposite is proven, or there is nothing to judge by.
    NOT_PROVEN = 3
    # A damage whose cause is not known.
    FIND_THE_CAUSE_FIRST = 4
    # It does not go back.
    DO_NOT_REUSE = 5


class Judged(IntEnum):
    """What a decision is of."""

    # Piston at its gauge point.
    PISTON_SIZE = 1
    # Bore by the size rule.
    BORE_SIZE = 2
    # Taper of the bore.
    BORE_TAPER = 3
    # Out-of-round of the bore.
    BORE_OUT_OF_ROUND = 4
    # Clearance on the bench.
    BENCH_CLEARANCE = 5
    # Clearance on the bench at the smallest place that was read.
    SMALLEST_CLEARANCE = 6
    # Margin against the reference case, hottest piston and coldest bore.
    RUNNING_MARGIN_TIGHT = 7
    # Margin against the reference case, coldest piston and hottest bore.
    RUNNING_MARGIN_LOOSE = 8
    # Clearance of a piston to hand in a bore.
    MATCHED_CLEARANCE = 9
    # Clearance after the work.
    FINISHED_CLEARANCE = 10
    # Bore after the work, against the size it was machined to.
    FINISHED_SIZE = 11
    # End gap of a ring after filing.
    RING_GAP = 12
    # A value that belongs to no job.
    VALUE = 13


class Lines(IntEnum):
    """Sentences of the report on a job."""

    # What to take care of. Show them with the results.
    CAUTIONS = 1
    # What is odd, each with its field.
    WARNINGS = 2
    # Why the verdict on the engine is what it is, the weightiest first.
    REASONS = 3
    # Why the verdict on a cylinder is what it is, the weightiest first.
    CYLINDER_REASONS = 4
    # What of a cylinder was not read.
    CYLINDER_MISSING = 5
    # Why each decision on a cylinder is what it is, in the order of the decisions.
    CYLINDER_DECISIONS = 6


class Conformity(IntEnum):
    """What a decision says."""

    # It conforms.
    CONFORMS = 1
    # It does not conform.
    DOES_NOT_CONFORM = 2
    # Neither is proven.
    NOT_PROVEN = 3
    # There is nothing to judge by, or the call failed.
    NOT_JUDGED = 4


class Variation(IntEnum):
    """How a contributor varies, with its numbers in order: deviations from the nominal."""

    # Centre, standard deviation. A shared cause has no centre.
    NORMAL = 1
    # Lower and upper limit, Cp, Cpk: a normal whose mean has moved toward the lower limit.
    CAPABILITY_TOWARD_LOWER = 2
    # Lower and upper limit, Cp, Cpk: a normal whose mean has moved toward the upper limit.
    CAPABILITY_TOWARD_UPPER = 3
    # Mean and standard deviation before sorting, lower and upper limit of the sorting.
    TRUNCATED_NORMAL = 4
    # Centre, half-width. A shared cause has no centre.
    RECTANGULAR = 5
    # Lower end, mode, upper end. Of a shared cause the half-width.
    TRIANGULAR = 6
    # Centre, half-width of the base, width of the top over that of the base. A shared cause has no
    # centre.
    TRAPEZOIDAL = 7
    # Centre, half-width. A shared cause has no centre.
    ARCSINE = 8
    # Two shapes, lower end, upper end.
    BETA = 9
    # Probability and value in turn, of two measured quantiles or more.
    SKEWED = 10
    # The measured values.
    SAMPLE = 11


class LawForm(IntEnum):
    """Form of a law of expansion."""

    # One mean coefficient from a base: base_c, mean_per_k, from_c, to_c.
    MEAN_COEFFICIENT = 1
    # Mean coefficients from a base to each temperature: base_c, temperatures_c, coefficients.
    MEAN_TABLE = 2
    # Instantaneous coefficients at each temperature: temperatures_c, coefficients.
    INSTANTANEOUS_TABLE = 3
    # An instantaneous coefficient that is a polynomial in kelvin: coefficients, from_c, to_c.
    INSTANTANEOUS_POLYNOMIAL = 4
    # A strain that is a polynomial in kelvin: coefficients, from_c, to_c.
    STRAIN_POLYNOMIAL = 5
    # Graphite iron from its structure: the three numbers of growth_graphite_iron.
    GRAPHITE_IRON = 6
    # A built-in material: name, name_length.
    BUILT_IN = 7


class Error(Structure):
    """What was refused, and why. Belongs to the caller; see ERROR at the head.

    Every text ends with a NUL.
    """

    _fields_ = [
        # Size of this structure in bytes, set by the caller.
        ("struct_size", c_size_t),
        # The status that was returned.
        ("status", c_int32),
        # 1 when value is given, else 0.
        ("has_value", c_int32),
        # 1 when lower is given, else 0.
        ("has_lower", c_int32),
        # 1 when upper is given, else 0.
        ("has_upper", c_int32),
        # The refused value, in unit; NaN when not given.
        ("value", c_double),
        # Smallest accepted value, in unit; NaN when not given.
        ("lower", c_double),
        # Largest accepted value, in unit; NaN when not given.
        ("upper", c_double),
        # Unit of the three numbers: "mm", "C", "K", "1/K", "deg", "1" (a pure number) or empty.
        ("unit", c_char * 16),
        # Name of the parameter, or JSON Pointer (RFC 6901) of the refused field in the job; empty when it is
        # the whole text.
        ("field", c_char * 256),
        # What was refused, as it was given.
        ("refused", c_char * 336),
        # Why.
        ("reason", c_char * 512),
        # What was probably meant; empty when no slip of unit or of spelling explains it.
        ("did_you_mean", c_char * 128),
        # All of this in one line.
        ("message", c_char * 1024),
    ]


class JobVerdict(Structure):
    """What a job comes to; see RECORDS at the head."""

    _fields_ = [
        # Size of this structure in bytes, set by the caller.
        ("struct_size", c_size_t),
        # A GaugepointOutcome: that of the engine, the worst of its cylinders.
        ("outcome", c_int32),
        # 0.
        ("reserved", c_int32),
        # Cylinders of the engine.
        ("cylinder_count", c_size_t),
        # Cylinders that go back.
        ("reuse_count", c_size_t),
        # Cylinders of which something was not read.
        ("incomplete_count", c_size_t),
        # Cylinders of which nothing is proven.
        ("not_proven_count", c_size_t),
        # Cylinders with a damage whose cause is not known.
        ("find_the_cause_first_count", c_size_t),
        # Cylinders that do not go back.
        ("do_not_reuse_count", c_size_t),
    ]


class CylinderVerdict(Structure):
    """What a cylinder of a job comes to; see RECORDS at the head."""

    _fields_ = [
        # Size of this structure in bytes, set by the caller.
        ("struct_size", c_size_t),
        # Number of the cylinder.
        ("number", c_int32),
        # A GaugepointOutcome: that of the cylinder.
        ("outcome", c_int32),
        # 1 when there is a verdict on its piston, else 0.
        ("has_piston", c_int32),
        # A GaugepointOutcome: that of its piston; 0 when not given.
        ("piston_outcome", c_int32),
        # 1 when there is a verdict on its bore, else 0.
        ("has_bore", c_int32),
        # A GaugepointOutcome: that of its bore; 0 when not given.
        ("bore_outcome", c_int32),
        # 1 when a measured value decided, else 0.
        ("has_decided_by", c_int32),
        # A GaugepointJudged: the value that decided; 0 when not given.
        ("decided_by", c_int32),
        # Decisions on it.
        ("decision_count", c_size_t),
        # What was not read of it.
        ("missing_count", c_size_t),
    ]


class JobDecision(Structure):
    """One value of a job against its limits; see RECORDS at the head."""

    _fields_ = [
        # Size of this structure in bytes, set by the caller.
        ("struct_size", c_size_t),
        # A GaugepointJudged: what it is of.
        ("judged", c_int32),
        # A GaugepointConformity.
        ("result", c_int32),
        # 1 when value_mm, its uncertainty and degrees of freedom are given, else 0.
        ("has_value", c_int32),
        # 1 when reference_temperature_c is given, else 0.
        ("has_reference_temperature", c_int32),
        # 1 when lower_mm is given, else 0.
        ("has_lower", c_int32),
        # 1 when upper_mm is given, else 0.
        ("has_upper", c_int32),
        # 1 when guard_band_mm is given, else 0.
        ("has_guard_band", c_int32),
        # 1 when rejection_guard_band_mm is given, else 0.
        ("has_rejection_guard_band", c_int32),
        # 1 when uncertainty_ratio is given, else 0.
        ("has_uncertainty_ratio", c_int32),
        # 1 when probability_of_conformity is given, else 0.
        ("has_probability", c_int32),
        # The value at the reference temperature of its limit.
        ("value_mm", c_double),
        # Its standard uncertainty.
        ("standard_uncertainty_mm", c_double),
        # Its effective degrees of freedom; INFINITY when they are infinite.
        ("dof", c_double),
        # Reference temperature of the limit.
        ("reference_temperature_c", c_double),
        # Lower limit.
        ("lower_mm", c_double),
        # Upper limit.
        ("upper_mm", c_double),
        # What a value must lie inside the limits to conform; below 0 it may lie outside.
        ("guard_band_mm", c_double),
        # What a value must lie outside the limits to not conform; below 0 it may lie inside.
        ("rejection_guard_band_mm", c_double),
        # Tolerance over the uncertainty interval 2 U.
        ("uncertainty_ratio", c_double),
        # Probability that the true value conforms.
        ("probability_of_conformity", c_double),
    ]


class Contributor(Structure):
    """A contributor of a stack. A plain structure."""

    _fields_ = [
        # Its name, which no other contributor and no shared cause has.
        ("name", c_char_p),
        # Length of the name in bytes.
        ("name_length", c_size_t),
        # Nominal size.
        ("nominal", c_double),
        # Lowest deviation that its limits allow.
        ("lower", c_double),
        # Highest deviation that its limits allow.
        ("upper", c_double),
        # Change of the stack for a change of this: 1 where it adds, -1 where it subtracts.
        ("coefficient", c_double),
        # How many independent pieces there are: 1 to 1000.
        ("count", c_size_t),
        # A GaugepointVariation.
        ("kind", c_int32),
        # Not used; 0.
        ("reserved", c_int32),
        # The numbers of the kind.
        ("numbers", POINTER(c_double)),
        # How many numbers there are.
        ("number_count", c_size_t),
    ]


class Tail(Structure):
    """Probabilities outside limits; see RECORDS at the head."""

    _fields_ = [
        # Size of this structure in bytes, set by the caller.
        ("struct_size", c_size_t),
        # Probability below the lower limit.
        ("below", c_double),
        # Probability above the upper limit.
        ("above", c_double),
        # Bound of the relative error of both.
        ("error", c_double),
        # Parts per million outside.
        ("ppm", c_double),
    ]


class Law(Structure):
    """A law of expansion, as the functions growth_... have it; its form says which fields count. A plain
    structure; start it zeroed.
    """

    _fields_ = [
        # A GaugepointLawForm.
        ("form", c_int32),
        # Not used; 0.
        ("reserved", c_int32),
        # Temperature the means start from.
        ("base_c", c_double),
        # The mean coefficient.
        ("mean_per_k", c_double),
        # Lowest temperature it holds at.
        ("from_c", c_double),
        # Highest temperature it holds at.
        ("to_c", c_double),
        # Rising temperatures of a table, count of them.
        ("temperatures_c", POINTER(c_double)),
        # Coefficients of a table per kelvin, or of a polynomial over kelvin from the constant up; count of
        # them.
        ("coefficients", POINTER(c_double)),
        # How many there are.
        ("count", c_size_t),
        # Nodularity of graphite iron, in %.
        ("nodularity_percent", c_double),
        # Area fraction of graphite, in %.
        ("graphite_percent", c_double),
        # Pearlite over ferrite.
        ("pearlite_to_ferrite", c_double),
        # Name of a built-in material.
        ("name", c_char_p),
        # Its length in bytes.
        ("name_length", c_size_t),
    ]


class Growth(Structure):
    """What a law of expansion says of one temperature; see RECORDS at the head."""

    _fields_ = [
        # Size of this structure in bytes, set by the caller.
        ("struct_size", c_size_t),
        # 1 when mean_from_20_per_k is given, else 0: at 20 C there is no mean from 20 C.
        ("has_mean", c_int32),
        # 0.
        ("reserved", c_int32),
        # Strain from 20 C: (L - L20) / L20.
        ("strain", c_double),
        # Instantaneous coefficient, (1 / L20) dL/dT.
        ("instantaneous_per_k", c_double),
        # Mean coefficient from 20 C.
        ("mean_from_20_per_k", c_double),
    ]


class _Functions:
    """Flat functions and documents, under the names of the header."""

    def size_at_20_mm(self, reading_mm: float, zero_error_mm: float, gauge_temperature_c: float, gauge_expansion_per_k: float, part_temperature_c: float, part_expansion_per_k: float) -> float:
        """Size at 20 C from the reading of a micrometer or caliper, in mm.

        (reading - zero_error) (1 + a_gauge (t_gauge - 20)) / (1 + a_part (t_part - 20)). Temperatures from
        -5 C to 60 C, mean coefficients from 20 C between 1e-7 and 1e-4 per kelvin. Source: ISO 1:2022 and
        the definition of strain.
        """
        return self._flat("size_at_20_mm", reading_mm, zero_error_mm, gauge_temperature_c, gauge_expansion_per_k, part_temperature_c, part_expansion_per_k)

    def size_at_20_mm_array(self, reading_mm: Iterable[float], zero_error_mm: Iterable[float], gauge_temperature_c: Iterable[float], gauge_expansion_per_k: Iterable[float], part_temperature_c: Iterable[float], part_expansion_per_k: Iterable[float]) -> array:
        """size_at_20_mm of each row: the first row that is refused refuses the call."""
        return self._rows("size_at_20_mm_array", reading_mm, zero_error_mm, gauge_temperature_c, gauge_expansion_per_k, part_temperature_c, part_expansion_per_k)

    def size_at_20_mm_array_with_status(self, reading_mm: Iterable[float], zero_error_mm: Iterable[float], gauge_temperature_c: Iterable[float], gauge_expansion_per_k: Iterable[float], part_temperature_c: Iterable[float], part_expansion_per_k: Iterable[float]) -> tuple[array, array]:
        """size_at_20_mm of each row: 0 or why it is refused, and NaN, for each."""
        return self._rows_with_status("size_at_20_mm_array", reading_mm, zero_error_mm, gauge_temperature_c, gauge_expansion_per_k, part_temperature_c, part_expansion_per_k)

    def bench_clearance_mm(self, bore_mm: float, piston_mm: float) -> float:
        """Clearance at 20 C in mm, over the diameter: bore - piston; negative is interference."""
        return self._flat("bench_clearance_mm", bore_mm, piston_mm)

    def bench_clearance_mm_array(self, bore_mm: Iterable[float], piston_mm: Iterable[float]) -> array:
        """bench_clearance_mm of each row: the first row that is refused refuses the call."""
        return self._rows("bench_clearance_mm_array", bore_mm, piston_mm)

    def bench_clearance_mm_array_with_status(self, bore_mm: Iterable[float], piston_mm: Iterable[float]) -> tuple[array, array]:
        """bench_clearance_mm of each row: 0 or why it is refused, and NaN, for each."""
        return self._rows_with_status("bench_clearance_mm_array", bore_mm, piston_mm)

    def running_clearance_mm(self, bore_mm: float, bore_temperature_c: float, bore_expansion_per_k: float, piston_mm: float, piston_temperature_c: float, piston_expansion_per_k: float) -> float:
        """Clearance in mm of freely growing parts, over the diameter, from sizes at 20 C.

        bore (1 + a_bore (t_bore - 20)) - piston (1 + a_piston (t_piston - 20)). Temperatures from -40 C to
        450 C. It is not a verdict: skirts are elastic, and engines run for years with a free clearance
        below zero. Source: definition of strain.
        """
        return self._flat("running_clearance_mm", bore_mm, bore_temperature_c, bore_expansion_per_k, piston_mm, piston_temperature_c, piston_expansion_per_k)

    def running_clearance_mm_array(self, bore_mm: Iterable[float], bore_temperature_c: Iterable[float], bore_expansion_per_k: Iterable[float], piston_mm: Iterable[float], piston_temperature_c: Iterable[float], piston_expansion_per_k: Iterable[float]) -> array:
        """running_clearance_mm of each row: the first row that is refused refuses the call."""
        return self._rows("running_clearance_mm_array", bore_mm, bore_temperature_c, bore_expansion_per_k, piston_mm, piston_temperature_c, piston_expansion_per_k)

    def running_clearance_mm_array_with_status(self, bore_mm: Iterable[float], bore_temperature_c: Iterable[float], bore_expansion_per_k: Iterable[float], piston_mm: Iterable[float], piston_temperature_c: Iterable[float], piston_expansion_per_k: Iterable[float]) -> tuple[array, array]:
        """running_clearance_mm of each row: 0 or why it is refused, and NaN, for each."""
        return self._rows_with_status("running_clearance_mm_array", bore_mm, bore_temperature_c, bore_expansion_per_k, piston_mm, piston_temperature_c, piston_expansion_per_k)

    def ring_gap_in_bore_mm(self, gap_mm: float, gauge_mm: float, bore_mm: float) -> float:
        """End gap in a bore, in mm, of a ring whose gap was measured in a gauge or in another bore: gap + pi
        (bore - gauge).

        Refused when gauge and bore are more than 2 % apart.
        """
        return self._flat("ring_gap_in_bore_mm", gap_mm, gauge_mm, bore_mm)

    def ring_gap_in_bore_mm_array(self, gap_mm: Iterable[float], gauge_mm: Iterable[float], bore_mm: Iterable[float]) -> array:
        """ring_gap_in_bore_mm of each row: the first row that is refused refuses the call."""
        return self._rows("ring_gap_in_bore_mm_array", gap_mm, gauge_mm, bore_mm)

    def ring_gap_in_bore_mm_array_with_status(self, gap_mm: Iterable[float], gauge_mm: Iterable[float], bore_mm: Iterable[float]) -> tuple[array, array]:
        """ring_gap_in_bore_mm of each row: 0 or why it is refused, and NaN, for each."""
        return self._rows_with_status("ring_gap_in_bore_mm_array", gap_mm, gauge_mm, bore_mm)

    def ring_least_cold_gap_mm(self, least_hot_gap_mm: float, bore_mm: float, bore_temperature_c: float, bore_expansion_per_k: float, ring_temperature_c: float, ring_expansion_per_k: float) -> float:
        """Least cold gap, in mm, that leaves least_hot_gap_mm with bore and ring at their temperatures.

        Below zero the bore opens by more than the ring grows, and heat asks for no gap at all.
        """
        return self._flat("ring_least_cold_gap_mm", least_hot_gap_mm, bore_mm, bore_temperature_c, bore_expansion_per_k, ring_temperature_c, ring_expansion_per_k)

    def ring_least_cold_gap_mm_array(self, least_hot_gap_mm: Iterable[float], bore_mm: Iterable[float], bore_temperature_c: Iterable[float], bore_expansion_per_k: Iterable[float], ring_temperature_c: Iterable[float], ring_expansion_per_k: Iterable[float]) -> array:
        """ring_least_cold_gap_mm of each row: the first row that is refused refuses the call."""
        return self._rows("ring_least_cold_gap_mm_array", least_hot_gap_mm, bore_mm, bore_temperature_c, bore_expansion_per_k, ring_temperature_c, ring_expansion_per_k)

    def ring_least_cold_gap_mm_array_with_status(self, least_hot_gap_mm: Iterable[float], bore_mm: Iterable[float], bore_temperature_c: Iterable[float], bore_expansion_per_k: Iterable[float], ring_temperature_c: Iterable[float], ring_expansion_per_k: Iterable[float]) -> tuple[array, array]:
        """ring_least_cold_gap_mm of each row: 0 or why it is refused, and NaN, for each."""
        return self._rows_with_status("ring_least_cold_gap_mm_array", least_hot_gap_mm, bore_mm, bore_temperature_c, bore_expansion_per_k, ring_temperature_c, ring_expansion_per_k)

    def ring_side_clearance_mm(self, groove_width_mm: float, ring_width_mm: float) -> float:
        """Side clearance of a ring in its groove, in mm; negative is a ring that does not enter. Beyond 0.5 mm
        it is another ring.
        """
        return self._flat("ring_side_clearance_mm", groove_width_mm, ring_width_mm)

    def ring_side_clearance_mm_array(self, groove_width_mm: Iterable[float], ring_width_mm: Iterable[float]) -> array:
        """ring_side_clearance_mm of each row: the first row that is refused refuses the call."""
        return self._rows("ring_side_clearance_mm_array", groove_width_mm, ring_width_mm)

    def ring_side_clearance_mm_array_with_status(self, groove_width_mm: Iterable[float], ring_width_mm: Iterable[float]) -> tuple[array, array]:
        """ring_side_clearance_mm of each row: 0 or why it is refused, and NaN, for each."""
        return self._rows_with_status("ring_side_clearance_mm_array", groove_width_mm, ring_width_mm)

    def ring_back_clearance_mm(self, bore_mm: float, groove_root_mm: float, ring_thickness_mm: float) -> float:
        """Room behind a ring that stands at the bore, in mm, on one side: (bore - root) / 2 - thickness.

        With the diameter of the land in place of the bore it is how far the ring, pushed in, lies below the
        land.
        """
        return self._flat("ring_back_clearance_mm", bore_mm, groove_root_mm, ring_thickness_mm)

    def ring_back_clearance_mm_array(self, bore_mm: Iterable[float], groove_root_mm: Iterable[float], ring_thickness_mm: Iterable[float]) -> array:
        """ring_back_clearance_mm of each row: the first row that is refused refuses the call."""
        return self._rows("ring_back_clearance_mm_array", bore_mm, groove_root_mm, ring_thickness_mm)

    def ring_back_clearance_mm_array_with_status(self, bore_mm: Iterable[float], groove_root_mm: Iterable[float], ring_thickness_mm: Iterable[float]) -> tuple[array, array]:
        """ring_back_clearance_mm of each row: 0 or why it is refused, and NaN, for each."""
        return self._rows_with_status("ring_back_clearance_mm_array", bore_mm, groove_root_mm, ring_thickness_mm)

    def ring_groove_wear_mm(self, groove_width_mm: float, new_groove_width_mm: float) -> float:
        """Wear of a groove, in mm: its width where it is widest less its width when new."""
        return self._flat("ring_groove_wear_mm", groove_width_mm, new_groove_width_mm)

    def ring_groove_wear_mm_array(self, groove_width_mm: Iterable[float], new_groove_width_mm: Iterable[float]) -> array:
        """ring_groove_wear_mm of each row: the first row that is refused refuses the call."""
        return self._rows("ring_groove_wear_mm_array", groove_width_mm, new_groove_width_mm)

    def ring_groove_wear_mm_array_with_status(self, groove_width_mm: Iterable[float], new_groove_width_mm: Iterable[float]) -> tuple[array, array]:
        """ring_groove_wear_mm of each row: 0 or why it is refused, and NaN, for each."""
        return self._rows_with_status("ring_groove_wear_mm_array", groove_width_mm, new_groove_width_mm)

    def keystone_groove_width_mm(self, over_pins_mm: float, pin_mm: float, included_angle_deg: float, at_diameter_mm: float) -> float:
        """Width in mm, at a diameter, of a keystone groove whose flanks slope alike, from the size over two
        pins that lie in it opposite each other.
        """
        return self._flat("keystone_groove_width_mm", over_pins_mm, pin_mm, included_angle_deg, at_diameter_mm)

    def keystone_groove_width_mm_array(self, over_pins_mm: Iterable[float], pin_mm: Iterable[float], included_angle_deg: Iterable[float], at_diameter_mm: Iterable[float]) -> array:
        """keystone_groove_width_mm of each row: the first row that is refused refuses the call."""
        return self._rows("keystone_groove_width_mm_array", over_pins_mm, pin_mm, included_angle_deg, at_diameter_mm)

    def keystone_groove_width_mm_array_with_status(self, over_pins_mm: Iterable[float], pin_mm: Iterable[float], included_angle_deg: Iterable[float], at_diameter_mm: Iterable[float]) -> tuple[array, array]:
        """keystone_groove_width_mm of each row: 0 or why it is refused, and NaN, for each."""
        return self._rows_with_status("keystone_groove_width_mm_array", over_pins_mm, pin_mm, included_angle_deg, at_diameter_mm)

    def ring_gap_by_factor_mm(self, bore_mm: float, per_mille: float) -> float:
        """End gap in mm from a factor in per mille of the bore (never "per inch"), 0.5 to 14."""
        return self._flat("ring_gap_by_factor_mm", bore_mm, per_mille)

    def ring_gap_by_factor_mm_array(self, bore_mm: Iterable[float], per_mille: Iterable[float]) -> array:
        """ring_gap_by_factor_mm of each row: the first row that is refused refuses the call."""
        return self._rows("ring_gap_by_factor_mm_array", bore_mm, per_mille)

    def ring_gap_by_factor_mm_array_with_status(self, bore_mm: Iterable[float], per_mille: Iterable[float]) -> tuple[array, array]:
        """ring_gap_by_factor_mm of each row: 0 or why it is refused, and NaN, for each."""
        return self._rows_with_status("ring_gap_by_factor_mm_array", bore_mm, per_mille)

    def rod_angle_mrad(self, deviation_mm: float, base_mm: float) -> float:
        """Bend or twist of a rod as an angle in mrad, from its deviation over any base; the sign is kept."""
        return self._flat("rod_angle_mrad", deviation_mm, base_mm)

    def rod_angle_mrad_array(self, deviation_mm: Iterable[float], base_mm: Iterable[float]) -> array:
        """rod_angle_mrad of each row: the first row that is refused refuses the call."""
        return self._rows("rod_angle_mrad_array", deviation_mm, base_mm)

    def rod_angle_mrad_array_with_status(self, deviation_mm: Iterable[float], base_mm: Iterable[float]) -> tuple[array, array]:
        """rod_angle_mrad of each row: 0 or why it is refused, and NaN, for each."""
        return self._rows_with_status("rod_angle_mrad_array", deviation_mm, base_mm)

    def rod_skew_mm(self, angle_mrad: float, length_mm: float) -> float:
        """What an angle of a rod makes over a length, in mm: a piston's skew over its height, for example."""
        return self._flat("rod_skew_mm", angle_mrad, length_mm)

    def rod_skew_mm_array(self, angle_mrad: Iterable[float], length_mm: Iterable[float]) -> array:
        """rod_skew_mm of each row: the first row that is refused refuses the call."""
        return self._rows("rod_skew_mm_array", angle_mrad, length_mm)

    def rod_skew_mm_array_with_status(self, angle_mrad: Iterable[float], length_mm: Iterable[float]) -> tuple[array, array]:
        """rod_skew_mm of each row: 0 or why it is refused, and NaN, for each."""
        return self._rows_with_status("rod_skew_mm_array", angle_mrad, length_mm)

    def top_land_crevice_cm3(self, bore_mm: float, land_mm: float, land_height_mm: float) -> float:
        """Volume in cm3 between top land and bore, down to the first ring."""
        return self._flat("top_land_crevice_cm3", bore_mm, land_mm, land_height_mm)

    def top_land_crevice_cm3_array(self, bore_mm: Iterable[float], land_mm: Iterable[float], land_height_mm: Iterable[float]) -> array:
        """top_land_crevice_cm3 of each row: the first row that is refused refuses the call."""
        return self._rows("top_land_crevice_cm3_array", bore_mm, land_mm, land_height_mm)

    def top_land_crevice_cm3_array_with_status(self, bore_mm: Iterable[float], land_mm: Iterable[float], land_height_mm: Iterable[float]) -> tuple[array, array]:
        """top_land_crevice_cm3 of each row: 0 or why it is refused, and NaN, for each."""
        return self._rows_with_status("top_land_crevice_cm3_array", bore_mm, land_mm, land_height_mm)

    def depth_in_bore_mm(self, deck_clearance_mm: float, crown_height_mm: float, height_mm: float, travel_mm: float) -> float:
        """How deep below the deck a place of the piston is, in mm: deck clearance + (crown - place) + travel;
        heights up from the bottom edge of the skirt.
        """
        return self._flat("depth_in_bore_mm", deck_clearance_mm, crown_height_mm, height_mm, travel_mm)

    def depth_in_bore_mm_array(self, deck_clearance_mm: Iterable[float], crown_height_mm: Iterable[float], height_mm: Iterable[float], travel_mm: Iterable[float]) -> array:
        """depth_in_bore_mm of each row: the first row that is refused refuses the call."""
        return self._rows("depth_in_bore_mm_array", deck_clearance_mm, crown_height_mm, height_mm, travel_mm)

    def depth_in_bore_mm_array_with_status(self, deck_clearance_mm: Iterable[float], crown_height_mm: Iterable[float], height_mm: Iterable[float], travel_mm: Iterable[float]) -> tuple[array, array]:
        """depth_in_bore_mm of each row: 0 or why it is refused, and NaN, for each."""
        return self._rows_with_status("depth_in_bore_mm_array", deck_clearance_mm, crown_height_mm, height_mm, travel_mm)

    def inch_to_mm(self, length_inch: float) -> float:
        """Length in mm from inches, -400 in to 400 in.

        A number of up to 15 digits and 12 decimals is converted exactly and rounded once: 2.4126 in is
        61.28004 mm. Source: NIST SP 811 (2008), appendix B.
        """
        return self._flat("inch_to_mm", length_inch)

    def inch_to_mm_array(self, length_inch: Iterable[float]) -> array:
        """inch_to_mm of each row: the first row that is refused refuses the call."""
        return self._rows("inch_to_mm_array", length_inch)

    def inch_to_mm_array_with_status(self, length_inch: Iterable[float]) -> tuple[array, array]:
        """inch_to_mm of each row: 0 or why it is refused, and NaN, for each."""
        return self._rows_with_status("inch_to_mm_array", length_inch)

    def mm_to_inch(self, length_mm: float) -> float:
        """Length in inches from mm, -10160 mm to 10160 mm.

        A number of up to 15 digits and 12 decimals is converted exactly and rounded once. Source: NIST SP
        811 (2008), appendix B.
        """
        return self._flat("mm_to_inch", length_mm)

    def mm_to_inch_array(self, length_mm: Iterable[float]) -> array:
        """mm_to_inch of each row: the first row that is refused refuses the call."""
        return self._rows("mm_to_inch_array", length_mm)

    def mm_to_inch_array_with_status(self, length_mm: Iterable[float]) -> tuple[array, array]:
        """mm_to_inch of each row: 0 or why it is refused, and NaN, for each."""
        return self._rows_with_status("mm_to_inch_array", length_mm)

    def thou_to_mm(self, length_thou: float) -> float:
        """Length in mm from thousandths of an inch, -400000 thou to 400000 thou.

        A number of up to 15 digits and 12 decimals is converted exactly and rounded once. Source: NIST SP
        811 (2008), appendix B.
        """
        return self._flat("thou_to_mm", length_thou)

    def thou_to_mm_array(self, length_thou: Iterable[float]) -> array:
        """thou_to_mm of each row: the first row that is refused refuses the call."""
        return self._rows("thou_to_mm_array", length_thou)

    def thou_to_mm_array_with_status(self, length_thou: Iterable[float]) -> tuple[array, array]:
        """thou_to_mm of each row: 0 or why it is refused, and NaN, for each."""
        return self._rows_with_status("thou_to_mm_array", length_thou)

    def fahrenheit_to_c(self, temperature_fahrenheit: float) -> float:
        """Temperature in degrees Celsius from degrees Fahrenheit, -454 F to 2192 F; a difference of
        temperatures is another thing.

        A number of up to 15 digits and 12 decimals is converted exactly and rounded once: 80.6 F is 27 C.
        Source: NIST SP 811 (2008), appendix B.
        """
        return self._flat("fahrenheit_to_c", temperature_fahrenheit)

    def fahrenheit_to_c_array(self, temperature_fahrenheit: Iterable[float]) -> array:
        """fahrenheit_to_c of each row: the first row that is refused refuses the call."""
        return self._rows("fahrenheit_to_c_array", temperature_fahrenheit)

    def fahrenheit_to_c_array_with_status(self, temperature_fahrenheit: Iterable[float]) -> tuple[array, array]:
        """fahrenheit_to_c of each row: 0 or why it is refused, and NaN, for each."""
        return self._rows_with_status("fahrenheit_to_c_array", temperature_fahrenheit)

    def c_to_fahrenheit(self, temperature_c: float) -> float:
        """Temperature in degrees Fahrenheit from degrees Celsius, -270 C to 1200 C; a difference of
        temperatures is another thing.

        A number of up to 15 digits and 12 decimals is converted exactly and rounded once. Source: NIST SP
        811 (2008), appendix B.
        """
        return self._flat("c_to_fahrenheit", temperature_c)

    def c_to_fahrenheit_array(self, temperature_c: Iterable[float]) -> array:
        """c_to_fahrenheit of each row: the first row that is refused refuses the call."""
        return self._rows("c_to_fahrenheit_array", temperature_c)

    def c_to_fahrenheit_array_with_status(self, temperature_c: Iterable[float]) -> tuple[array, array]:
        """c_to_fahrenheit of each row: 0 or why it is refused, and NaN, for each."""
        return self._rows_with_status("c_to_fahrenheit_array", temperature_c)

    def per_fahrenheit_to_per_k(self, expansion_per_fahrenheit: float) -> float:
        """Coefficient of expansion per kelvin from one per degree Fahrenheit, 1e-7 to 5e-5 per degree
        Fahrenheit: 1.8 times as much.

        A number of up to 15 digits and 12 decimals is converted exactly and rounded once. Source: NIST SP
        811 (2008), appendix B.
        """
        return self._flat("per_fahrenheit_to_per_k", expansion_per_fahrenheit)

    def per_fahrenheit_to_per_k_array(self, expansion_per_fahrenheit: Iterable[float]) -> array:
        """per_fahrenheit_to_per_k of each row: the first row that is refused refuses the call."""
        return self._rows("per_fahrenheit_to_per_k_array", expansion_per_fahrenheit)

    def per_fahrenheit_to_per_k_array_with_status(self, expansion_per_fahrenheit: Iterable[float]) -> tuple[array, array]:
        """per_fahrenheit_to_per_k of each row: 0 or why it is refused, and NaN, for each."""
        return self._rows_with_status("per_fahrenheit_to_per_k_array", expansion_per_fahrenheit)

    def ring_hot_gap_mm(self, gap_mm: float, bore_mm: float, bore_temperature_c: float, bore_expansion_per_k: float, ring_temperature_c: float, ring_expansion_per_k: float) -> float:
        """End gap in mm with bore and ring at their temperatures, -40 C to 450 C, from the gap at 20 C; below
        zero the ends butt.

        gap (1 + a_ring (t_ring - 20)) + pi bore (a_bore (t_bore - 20) - a_ring (t_ring - 20)). Source: hot
        circumference of the bore less the hot length of the ring.
        """
        return self._flat("ring_hot_gap_mm", gap_mm, bore_mm, bore_temperature_c, bore_expansion_per_k, ring_temperature_c, ring_expansion_per_k)

    def ring_hot_gap_mm_array(self, gap_mm: Iterable[float], bore_mm: Iterable[float], bore_temperature_c: Iterable[float], bore_expansion_per_k: Iterable[float], ring_temperature_c: Iterable[float], ring_expansion_per_k: Iterable[float]) -> array:
        """ring_hot_gap_mm of each row: the first row that is refused refuses the call."""
        return self._rows("ring_hot_gap_mm_array", gap_mm, bore_mm, bore_temperature_c, bore_expansion_per_k, ring_temperature_c, ring_expansion_per_k)

    def ring_hot_gap_mm_array_with_status(self, gap_mm: Iterable[float], bore_mm: Iterable[float], bore_temperature_c: Iterable[float], bore_expansion_per_k: Iterable[float], ring_temperature_c: Iterable[float], ring_expansion_per_k: Iterable[float]) -> tuple[array, array]:
        """ring_hot_gap_mm of each row: 0 or why it is refused, and NaN, for each."""
        return self._rows_with_status("ring_hot_gap_mm_array", gap_mm, bore_mm, bore_temperature_c, bore_expansion_per_k, ring_temperature_c, ring_expansion_per_k)

    def pin_cold_clearance_mm(self, hole_mm: float, pin_mm: float) -> float:
        """Clearance of a pin in a boss or in a bush at 20 C, in mm, over the diameter: hole - pin; negative is
        interference.

        Refused when it is not between -0.15 mm and 0.2 mm: another pin.
        """
        return self._flat("pin_cold_clearance_mm", hole_mm, pin_mm)

    def pin_cold_clearance_mm_array(self, hole_mm: Iterable[float], pin_mm: Iterable[float]) -> array:
        """pin_cold_clearance_mm of each row: the first row that is refused refuses the call."""
        return self._rows("pin_cold_clearance_mm_array", hole_mm, pin_mm)

    def pin_cold_clearance_mm_array_with_status(self, hole_mm: Iterable[float], pin_mm: Iterable[float]) -> tuple[array, array]:
        """pin_cold_clearance_mm of each row: 0 or why it is refused, and NaN, for each."""
        return self._rows_with_status("pin_cold_clearance_mm_array", hole_mm, pin_mm)

    def pin_hot_clearance_mm(self, hole_mm: float, hole_temperature_c: float, hole_expansion_per_k: float, pin_mm: float, pin_temperature_c: float, pin_expansion_per_k: float) -> float:
        """Clearance in mm of a freely growing pin in a boss or in a bush, over the diameter, from sizes at 20
        C.

        hole (1 + a_hole (t_hole - 20)) - pin (1 + a_pin (t_pin - 20)). Temperatures from -40 C to 450 C. A
        pressed bush grows by the coefficient of what holds it. Source: definition of strain.
        """
        return self._flat("pin_hot_clearance_mm", hole_mm, hole_temperature_c, hole_expansion_per_k, pin_mm, pin_temperature_c, pin_expansion_per_k)

    def pin_hot_clearance_mm_array(self, hole_mm: Iterable[float], hole_temperature_c: Iterable[float], hole_expansion_per_k: Iterable[float], pin_mm: Iterable[float], pin_temperature_c: Iterable[float], pin_expansion_per_k: Iterable[float]) -> array:
        """pin_hot_clearance_mm of each row: the first row that is refused refuses the call."""
        return self._rows("pin_hot_clearance_mm_array", hole_mm, hole_temperature_c, hole_expansion_per_k, pin_mm, pin_temperature_c, pin_expansion_per_k)

    def pin_hot_clearance_mm_array_with_status(self, hole_mm: Iterable[float], hole_temperature_c: Iterable[float], hole_expansion_per_k: Iterable[float], pin_mm: Iterable[float], pin_temperature_c: Iterable[float], pin_expansion_per_k: Iterable[float]) -> tuple[array, array]:
        """pin_hot_clearance_mm of each row: 0 or why it is refused, and NaN, for each."""
        return self._rows_with_status("pin_hot_clearance_mm_array", hole_mm, hole_temperature_c, hole_expansion_per_k, pin_mm, pin_temperature_c, pin_expansion_per_k)

    def press_fit_pressure_mpa(self, pin_mm: float, pin_hole_mm: float, eye_mm: float, interference_mm: float, smoothing_mm: float, pin_modulus_mpa: float, pin_poisson: float, eye_modulus_mpa: float, eye_poisson: float) -> float:
        """Pressure in MPa in the joint of a pin pressed into an eye; 0 when the smoothing takes all of the
        interference.

        Sizes are diameters at 20 C; a hole of 0 is a solid pin. Source: Lame, thick elastic tubes with free
        ends.
        """
        return self._flat("press_fit_pressure_mpa", pin_mm, pin_hole_mm, eye_mm, interference_mm, smoothing_mm, pin_modulus_mpa, pin_poisson, eye_modulus_mpa, eye_poisson)

    def press_fit_pressure_mpa_array(self, pin_mm: Iterable[float], pin_hole_mm: Iterable[float], eye_mm: Iterable[float], interference_mm: Iterable[float], smoothing_mm: Iterable[float], pin_modulus_mpa: Iterable[float], pin_poisson: Iterable[float], eye_modulus_mpa: Iterable[float], eye_poisson: Iterable[float]) -> array:
        """press_fit_pressure_mpa of each row: the first row that is refused refuses the call."""
        return self._rows("press_fit_pressure_mpa_array", pin_mm, pin_hole_mm, eye_mm, interference_mm, smoothing_mm, pin_modulus_mpa, pin_poisson, eye_modulus_mpa, eye_poisson)

    def press_fit_pressure_mpa_array_with_status(self, pin_mm: Iterable[float], pin_hole_mm: Iterable[float], eye_mm: Iterable[float], interference_mm: Iterable[float], smoothing_mm: Iterable[float], pin_modulus_mpa: Iterable[float], pin_poisson: Iterable[float], eye_modulus_mpa: Iterable[float], eye_poisson: Iterable[float]) -> tuple[array, array]:
        """press_fit_pressure_mpa of each row: 0 or why it is refused, and NaN, for each."""
        return self._rows_with_status("press_fit_pressure_mpa_array", pin_mm, pin_hole_mm, eye_mm, interference_mm, smoothing_mm, pin_modulus_mpa, pin_poisson, eye_modulus_mpa, eye_poisson)

    def press_fit_force_n(self, pin_mm: float, pin_hole_mm: float, eye_mm: float, width_mm: float, interference_mm: float, smoothing_mm: float, friction: float, pin_modulus_mpa: float, pin_poisson: float, eye_modulus_mpa: float, eye_poisson: float) -> float:
        """Axial force in N at which a pin pressed into an eye slips: pi pin width pressure friction.

        The pressure is that of press_fit_pressure_mpa. Source: Coulomb friction over the joint.
        """
        return self._flat("press_fit_force_n", pin_mm, pin_hole_mm, eye_mm, width_mm, interference_mm, smoothing_mm, friction, pin_modulus_mpa, pin_poisson, eye_modulus_mpa, eye_poisson)

    def press_fit_force_n_array(self, pin_mm: Iterable[float], pin_hole_mm: Iterable[float], eye_mm: Iterable[float], width_mm: Iterable[float], interference_mm: Iterable[float], smoothing_mm: Iterable[float], friction: Iterable[float], pin_modulus_mpa: Iterable[float], pin_poisson: Iterable[float], eye_modulus_mpa: Iterable[float], eye_poisson: Iterable[float]) -> array:
        """press_fit_force_n of each row: the first row that is refused refuses the call."""
        return self._rows("press_fit_force_n_array", pin_mm, pin_hole_mm, eye_mm, width_mm, interference_mm, smoothing_mm, friction, pin_modulus_mpa, pin_poisson, eye_modulus_mpa, eye_poisson)

    def press_fit_force_n_array_with_status(self, pin_mm: Iterable[float], pin_hole_mm: Iterable[float], eye_mm: Iterable[float], width_mm: Iterable[float], interference_mm: Iterable[float], smoothing_mm: Iterable[float], friction: Iterable[float], pin_modulus_mpa: Iterable[float], pin_poisson: Iterable[float], eye_modulus_mpa: Iterable[float], eye_poisson: Iterable[float]) -> tuple[array, array]:
        """press_fit_force_n of each row: 0 or why it is refused, and NaN, for each."""
        return self._rows_with_status("press_fit_force_n_array", pin_mm, pin_hole_mm, eye_mm, width_mm, interference_mm, smoothing_mm, friction, pin_modulus_mpa, pin_poisson, eye_modulus_mpa, eye_poisson)

    def press_fit_torque_nm(self, pin_mm: float, pin_hole_mm: float, eye_mm: float, width_mm: float, interference_mm: float, smoothing_mm: float, friction: float, pin_modulus_mpa: float, pin_poisson: float, eye_modulus_mpa: float, eye_poisson: float) -> float:
        """Torque in N m at which a pin pressed into an eye slips: force pin / 2.

        The force is that of press_fit_force_n. Source: Coulomb friction at the radius of the joint.
        """
        return self._flat("press_fit_torque_nm", pin_mm, pin_hole_mm, eye_mm, width_mm, interference_mm, smoothing_mm, friction, pin_modulus_mpa, pin_poisson, eye_modulus_mpa, eye_poisson)

    def press_fit_torque_nm_array(self, pin_mm: Iterable[float], pin_hole_mm: Iterable[float], eye_mm: Iterable[float], width_mm: Iterable[float], interference_mm: Iterable[float], smoothing_mm: Iterable[float], friction: Iterable[float], pin_modulus_mpa: Iterable[float], pin_poisson: Iterable[float], eye_modulus_mpa: Iterable[float], eye_poisson: Iterable[float]) -> array:
        """press_fit_torque_nm of each row: the first row that is refused refuses the call."""
        return self._rows("press_fit_torque_nm_array", pin_mm, pin_hole_mm, eye_mm, width_mm, interference_mm, smoothing_mm, friction, pin_modulus_mpa, pin_poisson, eye_modulus_mpa, eye_poisson)

    def press_fit_torque_nm_array_with_status(self, pin_mm: Iterable[float], pin_hole_mm: Iterable[float], eye_mm: Iterable[float], width_mm: Iterable[float], interference_mm: Iterable[float], smoothing_mm: Iterable[float], friction: Iterable[float], pin_modulus_mpa: Iterable[float], pin_poisson: Iterable[float], eye_modulus_mpa: Iterable[float], eye_poisson: Iterable[float]) -> tuple[array, array]:
        """press_fit_torque_nm of each row: 0 or why it is refused, and NaN, for each."""
        return self._rows_with_status("press_fit_torque_nm_array", pin_mm, pin_hole_mm, eye_mm, width_mm, interference_mm, smoothing_mm, friction, pin_modulus_mpa, pin_poisson, eye_modulus_mpa, eye_poisson)

    def assembly_temperature_c(self, diameter_mm: float, interference_mm: float, clearance_mm: float, expansion_per_k: float) -> float:
        """Temperature in degrees Celsius to which the outer part is heated, the pin at 20 C, so that its hole
        opens by the interference and a clearance: 20 + (interference + clearance) / (a diameter).

        Clean steel colours from 249 C: too much heat. Source: free growth.
        """
        return self._flat("assembly_temperature_c", diameter_mm, interference_mm, clearance_mm, expansion_per_k)

    def assembly_temperature_c_array(self, diameter_mm: Iterable[float], interference_mm: Iterable[float], clearance_mm: Iterable[float], expansion_per_k: Iterable[float]) -> array:
        """assembly_temperature_c of each row: the first row that is refused refuses the call."""
        return self._rows("assembly_temperature_c_array", diameter_mm, interference_mm, clearance_mm, expansion_per_k)

    def assembly_temperature_c_array_with_status(self, diameter_mm: Iterable[float], interference_mm: Iterable[float], clearance_mm: Iterable[float], expansion_per_k: Iterable[float]) -> tuple[array, array]:
        """assembly_temperature_c of each row: 0 or why it is refused, and NaN, for each."""
        return self._rows_with_status("assembly_temperature_c_array", diameter_mm, interference_mm, clearance_mm, expansion_per_k)

    def piston_deck_clearance_mm(self, block_height_mm: float, stroke_mm: float, rod_mm: float, compression_height_mm: float) -> float:
        """From the deck down to the crown at top dead centre, in mm: block - (stroke / 2 + rod + compression
        height); negative when the crown stands above the deck.
        """
        return self._flat("piston_deck_clearance_mm", block_height_mm, stroke_mm, rod_mm, compression_height_mm)

    def piston_deck_clearance_mm_array(self, block_height_mm: Iterable[float], stroke_mm: Iterable[float], rod_mm: Iterable[float], compression_height_mm: Iterable[float]) -> array:
        """piston_deck_clearance_mm of each row: the first row that is refused refuses the call."""
        return self._rows("piston_deck_clearance_mm_array", block_height_mm, stroke_mm, rod_mm, compression_height_mm)

    def piston_deck_clearance_mm_array_with_status(self, block_height_mm: Iterable[float], stroke_mm: Iterable[float], rod_mm: Iterable[float], compression_height_mm: Iterable[float]) -> tuple[array, array]:
        """piston_deck_clearance_mm of each row: 0 or why it is refused, and NaN, for each."""
        return self._rows_with_status("piston_deck_clearance_mm_array", block_height_mm, stroke_mm, rod_mm, compression_height_mm)

    def swept_volume_cm3(self, bore_mm: float, stroke_mm: float) -> float:
        """Swept volume in cm3 of one cylinder: pi bore^2 stroke / 4."""
        return self._flat("swept_volume_cm3", bore_mm, stroke_mm)

    def swept_volume_cm3_array(self, bore_mm: Iterable[float], stroke_mm: Iterable[float]) -> array:
        """swept_volume_cm3 of each row: the first row that is refused refuses the call."""
        return self._rows("swept_volume_cm3_array", bore_mm, stroke_mm)

    def swept_volume_cm3_array_with_status(self, bore_mm: Iterable[float], stroke_mm: Iterable[float]) -> tuple[array, array]:
        """swept_volume_cm3 of each row: 0 or why it is refused, and NaN, for each."""
        return self._rows_with_status("swept_volume_cm3_array", bore_mm, stroke_mm)

    def static_compression_ratio(self, bore_mm: float, stroke_mm: float, head_cm3: float, gasket_bore_mm: float, gasket_mm: float, deck_clearance_mm: float, crown_cm3: float, crevice_cm3: float) -> float:
        """Compression ratio, a pure number: (swept + clearance volume) / clearance volume.

        A dome of the crown is a negative volume, a protrusion a negative deck clearance; 0 leaves the
        crevice at the top land out, as is usual. Refused when nothing is left above the piston.
        """
        return self._flat("static_compression_ratio", bore_mm, stroke_mm, head_cm3, gasket_bore_mm, gasket_mm, deck_clearance_mm, crown_cm3, crevice_cm3)

    def static_compression_ratio_array(self, bore_mm: Iterable[float], stroke_mm: Iterable[float], head_cm3: Iterable[float], gasket_bore_mm: Iterable[float], gasket_mm: Iterable[float], deck_clearance_mm: Iterable[float], crown_cm3: Iterable[float], crevice_cm3: Iterable[float]) -> array:
        """static_compression_ratio of each row: the first row that is refused refuses the call."""
        return self._rows("static_compression_ratio_array", bore_mm, stroke_mm, head_cm3, gasket_bore_mm, gasket_mm, deck_clearance_mm, crown_cm3, crevice_cm3)

    def static_compression_ratio_array_with_status(self, bore_mm: Iterable[float], stroke_mm: Iterable[float], head_cm3: Iterable[float], gasket_bore_mm: Iterable[float], gasket_mm: Iterable[float], deck_clearance_mm: Iterable[float], crown_cm3: Iterable[float], crevice_cm3: Iterable[float]) -> tuple[array, array]:
        """static_compression_ratio of each row: 0 or why it is refused, and NaN, for each."""
        return self._rows_with_status("static_compression_ratio_array", bore_mm, stroke_mm, head_cm3, gasket_bore_mm, gasket_mm, deck_clearance_mm, crown_cm3, crevice_cm3)

    def piston_travel_mm(self, crank_radius_mm: float, rod_mm: float, pin_offset_mm: float, crank_angle_deg: float) -> float:
        """Travel of the piston in mm from top dead centre down, at a crank angle from -720 deg to 720 deg.

        The angle is 0 with the throw in line with the cylinder; an offset of the pin toward the major
        thrust side is positive. Source: slider-crank with an offset pin.
        """
        return self._flat("piston_travel_mm", crank_radius_mm, rod_mm, pin_offset_mm, crank_angle_deg)

    def piston_travel_mm_array(self, crank_radius_mm: Iterable[float], rod_mm: Iterable[float], pin_offset_mm: Iterable[float], crank_angle_deg: Iterable[float]) -> array:
        """piston_travel_mm of each row: the first row that is refused refuses the call."""
        return self._rows("piston_travel_mm_array", crank_radius_mm, rod_mm, pin_offset_mm, crank_angle_deg)

    def piston_travel_mm_array_with_status(self, crank_radius_mm: Iterable[float], rod_mm: Iterable[float], pin_offset_mm: Iterable[float], crank_angle_deg: Iterable[float]) -> tuple[array, array]:
        """piston_travel_mm of each row: 0 or why it is refused, and NaN, for each."""
        return self._rows_with_status("piston_travel_mm_array", crank_radius_mm, rod_mm, pin_offset_mm, crank_angle_deg)

    def finish_size_mm(self, piston_mm: float, clearance_mm: float) -> float:
        """Size in mm, at 20 C, to which the bore for a piston is finished: piston + clearance wanted on the
        bench.
        """
        return self._flat("finish_size_mm", piston_mm, clearance_mm)

    def finish_size_mm_array(self, piston_mm: Iterable[float], clearance_mm: Iterable[float]) -> array:
        """finish_size_mm of each row: the first row that is refused refuses the call."""
        return self._rows("finish_size_mm_array", piston_mm, clearance_mm)

    def finish_size_mm_array_with_status(self, piston_mm: Iterable[float], clearance_mm: Iterable[float]) -> tuple[array, array]:
        """finish_size_mm of each row: 0 or why it is refused, and NaN, for each."""
        return self._rows_with_status("finish_size_mm_array", piston_mm, clearance_mm)

    def boring_size_mm(self, piston_mm: float, clearance_mm: float, honing_mm: float) -> float:
        """Size in mm, at 20 C, to which the bore for a piston is bored: piston + clearance wanted on the bench
        - what is left for the hone.
        """
        return self._flat("boring_size_mm", piston_mm, clearance_mm, honing_mm)

    def boring_size_mm_array(self, piston_mm: Iterable[float], clearance_mm: Iterable[float], honing_mm: Iterable[float]) -> array:
        """boring_size_mm of each row: the first row that is refused refuses the call."""
        return self._rows("boring_size_mm_array", piston_mm, clearance_mm, honing_mm)

    def boring_size_mm_array_with_status(self, piston_mm: Iterable[float], clearance_mm: Iterable[float], honing_mm: Iterable[float]) -> tuple[array, array]:
        """boring_size_mm of each row: 0 or why it is refused, and NaN, for each."""
        return self._rows_with_status("boring_size_mm_array", piston_mm, clearance_mm, honing_mm)

    def bore_size_at_20_mm(self, deviation_mm: float, setting_mm: float, ring_temperature_c: float, ring_expansion_per_k: float, set_temperature_c: float, set_expansion_per_k: float, used_temperature_c: float, used_expansion_per_k: float, block_temperature_c: float, block_expansion_per_k: float) -> float:
        """Size of a bore at 20 C, in mm, from the deviation that a bore gauge set on a ring shows, positive
        when the bore is larger.

        (setting (1 + a_ring (t_ring - 20)) (1 + a_used (t_used - 20)) / (1 + a_set (t_set - 20)) +
        deviation) / (1 + a_block (t_block - 20)): the gauge when it was set, and when it is used.
        Temperatures from -5 C to 60 C. Source: ISO 1:2022 and the definition of strain.
        """
        return self._flat("bore_size_at_20_mm", deviation_mm, setting_mm, ring_temperature_c, ring_expansion_per_k, set_temperature_c, set_expansion_per_k, used_temperature_c, used_expansion_per_k, block_temperature_c, block_expansion_per_k)

    def bore_size_at_20_mm_array(self, deviation_mm: Iterable[float], setting_mm: Iterable[float], ring_temperature_c: Iterable[float], ring_expansion_per_k: Iterable[float], set_temperature_c: Iterable[float], set_expansion_per_k: Iterable[float], used_temperature_c: Iterable[float], used_expansion_per_k: Iterable[float], block_temperature_c: Iterable[float], block_expansion_per_k: Iterable[float]) -> array:
        """bore_size_at_20_mm of each row: the first row that is refused refuses the call."""
        return self._rows("bore_size_at_20_mm_array", deviation_mm, setting_mm, ring_temperature_c, ring_expansion_per_k, set_temperature_c, set_expansion_per_k, used_temperature_c, used_expansion_per_k, block_temperature_c, block_expansion_per_k)

    def bore_size_at_20_mm_array_with_status(self, deviation_mm: Iterable[float], setting_mm: Iterable[float], ring_temperature_c: Iterable[float], ring_expansion_per_k: Iterable[float], set_temperature_c: Iterable[float], set_expansion_per_k: Iterable[float], used_temperature_c: Iterable[float], used_expansion_per_k: Iterable[float], block_temperature_c: Iterable[float], block_expansion_per_k: Iterable[float]) -> tuple[array, array]:
        """bore_size_at_20_mm of each row: 0 or why it is refused, and NaN, for each."""
        return self._rows_with_status("bore_size_at_20_mm_array", deviation_mm, setting_mm, ring_temperature_c, ring_expansion_per_k, set_temperature_c, set_expansion_per_k, used_temperature_c, used_expansion_per_k, block_temperature_c, block_expansion_per_k)

    def size_at_temperature_mm(self, size_mm: float, temperature_c: float, expansion_per_k: float) -> float:
        """Size in mm of a freely growing part at a temperature, from its size at 20 C: size (1 + a (t - 20)).

        Temperatures from -40 C to 450 C. Source: definition of strain.
        """
        return self._flat("size_at_temperature_mm", size_mm, temperature_c, expansion_per_k)

    def size_at_temperature_mm_array(self, size_mm: Iterable[float], temperature_c: Iterable[float], expansion_per_k: Iterable[float]) -> array:
        """size_at_temperature_mm of each row: the first row that is refused refuses the call."""
        return self._rows("size_at_temperature_mm_array", size_mm, temperature_c, expansion_per_k)

    def size_at_temperature_mm_array_with_status(self, size_mm: Iterable[float], temperature_c: Iterable[float], expansion_per_k: Iterable[float]) -> tuple[array, array]:
        """size_at_temperature_mm of each row: 0 or why it is refused, and NaN, for each."""
        return self._rows_with_status("size_at_temperature_mm_array", size_mm, temperature_c, expansion_per_k)

    def probability_of_conformity(self, value_mm: float, standard_uncertainty_mm: float, lower_mm: float, upper_mm: float) -> float:
        """Probability that the true value lies within two limits, for a value with a normal error of a
        standard uncertainty.

        A value without uncertainty gives 1 or 0. Source: JCGM 106:2012, 7.2.2.
        """
        return self._flat("probability_of_conformity", value_mm, standard_uncertainty_mm, lower_mm, upper_mm)

    def probability_of_conformity_array(self, value_mm: Iterable[float], standard_uncertainty_mm: Iterable[float], lower_mm: Iterable[float], upper_mm: Iterable[float]) -> array:
        """probability_of_conformity of each row: the first row that is refused refuses the call."""
        return self._rows("probability_of_conformity_array", value_mm, standard_uncertainty_mm, lower_mm, upper_mm)

    def probability_of_conformity_array_with_status(self, value_mm: Iterable[float], standard_uncertainty_mm: Iterable[float], lower_mm: Iterable[float], upper_mm: Iterable[float]) -> tuple[array, array]:
        """probability_of_conformity of each row: 0 or why it is refused, and NaN, for each."""
        return self._rows_with_status("probability_of_conformity_array", value_mm, standard_uncertainty_mm, lower_mm, upper_mm)

    def coverage_factor(self, probability: float, dof: float) -> float:
        """Coverage factor of Student's t for a coverage probability between 0 and 1. JCGM 100:2008, G.3.2.

        dof from 0.5; INFINITY gives that of the normal.
        """
        return self._flat("coverage_factor", probability, dof)

    def coverage_factor_array(self, probability: Iterable[float], dof: Iterable[float]) -> array:
        """coverage_factor of each row: the first row that is refused refuses the call."""
        return self._rows("coverage_factor_array", probability, dof)

    def coverage_factor_array_with_status(self, probability: Iterable[float], dof: Iterable[float]) -> tuple[array, array]:
        """coverage_factor of each row: 0 or why it is refused, and NaN, for each."""
        return self._rows_with_status("coverage_factor_array", probability, dof)

    def job_assess(self, document: str | bytes, with_working: bool = False) -> str:
        """Assesses a job document and gives its report, both JSON."""
        return self._text("job_assess", *_text_in(document), c_int32(with_working))

    def sheet_check(self, document: str | bytes) -> str:
        """Holds the limits of a printed sheet against themselves and gives the report, both JSON."""
        return self._text("sheet_check", *_text_in(document))

    def measure(self, document: str | bytes, with_working: bool = False) -> str:
        """Evaluates a measurement document and gives its report, both JSON: the readings and their differences
        with the budget of each, to first
        """
        return self._text("measure", *_text_in(document), c_int32(with_working))

    def fit(self, document: str | bytes, with_working: bool = False) -> str:
        """Computes the hot fit of one piston in one bore and gives its report, both JSON: the clearance
        everywhere and at temperature, its smallest value
        """
        return self._text("fit", *_text_in(document), c_int32(with_working))

    def budget_evaluate(self, document: str | bytes) -> str:
        """Evaluates a budget of uncertainty and gives its report, both JSON."""
        return self._text("budget_evaluate", *_text_in(document))

    def stack_evaluate(self, document: str | bytes, with_working: bool = False) -> str:
        """Evaluates a stack of contributors and gives its report, both JSON: worst case, published forms,
        moments, shares, exact probabilities outside
        """
        return self._text("stack_evaluate", *_text_in(document), c_int32(with_working))

    def revisit(self, document: str | bytes) -> str:
        """Compares two jobs of one engine and gives the report, both JSON: what changed of every cylinder, how
        fast, when limits of this job are reached
        """
        return self._text("revisit", *_text_in(document))

    def what_if(self, document: str | bytes) -> str:
        """Assesses a job with every combination of values and gives the report, both JSON: a row for each
        combination with what is to be shown, what
        """
        return self._text("what_if", *_text_in(document))


# Here ends what is generated.


class GaugepointError(Exception):
    """What was refused, and why. `status` is a number, `name` its word; `value`, `lower` and `upper` are None when they are not given."""

    def __init__(self, name: str, error: Error):
        super().__init__(error.message.decode())
        self.status, self.name = error.status, name
        self.unit, self.field, self.refused = error.unit.decode(), error.field.decode(), error.refused.decode()
        self.reason, self.did_you_mean = error.reason.decode(), error.did_you_mean.decode()
        self.value = error.value if error.has_value else None
        self.lower = error.lower if error.has_lower else None
        self.upper = error.upper if error.has_upper else None


def _text_in(text: str | bytes) -> tuple[c_char_p, c_size_t]:
    """Pointer and length of a text; a str that is no text is a UnicodeEncodeError."""
    utf8 = text.encode() if isinstance(text, str) else text
    if not isinstance(utf8, bytes):
        raise TypeError("a text is str or bytes")
    return c_char_p(utf8), c_size_t(len(utf8))


def _doubles(values: Iterable[float]) -> ctypes.Array:
    numbers = array("d", list(values))
    return (c_double * len(numbers)).from_buffer(numbers)


def _column(numbers: ctypes.Array) -> array:
    return array("d", bytes(numbers))


def _sized(record: type[Structure]) -> Structure:
    return record(struct_size=sizeof(record))


class Library(_Functions):
    """The C library at a path. OSError when it is missing, ImportError when it is another one or has another ABI."""

    def __init__(self, path: str):
        self._c = ctypes.CDLL(path)
        try:
            abi = self._c.gaugepoint_abi()
        except AttributeError:
            raise ImportError(f"{path} is not the library of gaugepoint") from None
        if abi != ABI:
            raise ImportError(f"{path} has ABI {abi}, this module is for ABI {ABI}")
        for text in (self._c.gaugepoint_version, self._c.gaugepoint_status_name, self._c.gaugepoint_status_text):
            text.restype = c_char_p
        for name in ("text", "stack", "report", "expansion"):
            getattr(self._c, f"gaugepoint_{name}_free").restype = None

    @property
    def version(self) -> str:
        """Version of the library, as "1.2.3"."""
        return self._c.gaugepoint_version().decode()

    def name_of(self, status: int) -> str:
        """A status as a word: "out_of_range"; "unknown" when it is unknown."""
        return self._c.gaugepoint_status_name(c_int32(status)).decode()

    def text_of(self, status: int) -> str:
        """One sentence on a status."""
        return self._c.gaugepoint_status_text(c_int32(status)).decode()

    def decide_mm(self, value_mm: float, standard_uncertainty_mm: float, lower_mm: float | None, upper_mm: float | None, rule: Rule,
                  at_least: float) -> tuple[int, float]:
        """Judges one value with its standard uncertainty, for a value whose error is normal: a Conformity and its probability.

        A limit that is None is none; one must be given. `at_least` is the probability or the ratio that two of the rules ask for.
        """
        result, probability = c_int32(), c_double()
        limits = [number for limit in (lower_mm, upper_mm) for number in (c_int32(limit is not None), c_double(limit or 0))]
        self.call("decide_mm", c_double(value_mm), c_double(standard_uncertainty_mm), *limits, c_int32(rule), c_double(at_least),
                   byref(result), byref(probability))
        return result.value, probability.value

    def call(self, name: str, *arguments) -> None:
        """Calls any function of the header that has an error at its end; all arguments are of ctypes, so that no types need declaring."""
        error = _sized(Error)
        status = getattr(self._c, f"gaugepoint_{name}")(*arguments, byref(error))
        if status != 0:
            raise GaugepointError(self.name_of(status), error)

    def _flat(self, name: str, *numbers: float) -> float:
        out = c_double()
        self.call(name, *map(c_double, numbers), byref(out))
        return out.value

    def _each(self, name: str, columns: tuple[Iterable[float], ...], with_status: bool) -> tuple[ctypes.Array, ctypes.Array | None]:
        given = [_doubles(column) for column in columns]
        count = len(given[0])
        if any(len(column) != count for column in given):
            raise ValueError(f"columns of {', '.join(str(len(column)) for column in given)} rows")
        out, status = (c_double * count)(), (c_int32 * count)() if with_status else None
        self.call(name, *given, c_size_t(count), out, status)
        return out, status

    def _rows(self, name: str, *columns: Iterable[float]) -> array:
        return _column(self._each(name, columns, False)[0])

    def _rows_with_status(self, name: str, *columns: Iterable[float]) -> tuple[array, array]:
        out, status = self._each(name, columns, True)
        return _column(out), array("i", status)

    def _text(self, name: str, *arguments) -> str:
        """The text that a function gives, which is freed."""
        text, length = c_void_p(), c_size_t()
        self.call(name, *arguments, byref(text), byref(length))
        try:
            return ctypes.string_at(text, length.value).decode()
        finally:
            self._c.gaugepoint_text_free(text)


class _Handle:
    """What the library holds for an object, until it is closed; a context manager. Calls of one object wait for each other."""

    _kind = ""

    def __init__(self, library: Library, *arguments):
        self._library, self._lock, self._made = library, Lock(), c_void_p()
        library.call(f"{self._kind}_new", *arguments, byref(self._made))

    def _ask(self, name: str, *arguments, how=Library.call):
        with self._lock:
            if not self._made:
                raise ValueError(f"the {self._kind} is closed")
            return how(self._library, f"{self._kind}_{name}", self._made, *arguments)

    def close(self) -> None:
        """Frees it. Twice is once."""
        with self._lock:
            made, self._made = self._made, c_void_p()
            getattr(self._library._c, f"gaugepoint_{self._kind}_free")(made)

    def __enter__(self):
        return self

    def __exit__(self, *_) -> None:
        self.close()

    def __del__(self) -> None:
        if getattr(self, "_made", None):
            self.close()


class Stack(_Handle):
    """A linear stack of contributors, empty at first. Lengths are in one unit, the caller's."""

    _kind = "stack"

    def __init__(self, library: Library):
        super().__init__(library, None, c_size_t(0))

    def add(self, name: str, nominal: float, lower: float, upper: float, kind: Variation, numbers: Iterable[float], coefficient: float = 1,
            count: int = 1) -> None:
        """Adds a contributor: nominal size, lowest and highest deviation, how it varies with the numbers of that. On failure nothing changes."""
        text, length = _text_in(name)
        given = _doubles(numbers)
        contributor = Contributor(name=text, name_length=length, nominal=nominal, lower=lower, upper=upper, coefficient=coefficient,
                                  count=max(count, 0), kind=kind, numbers=given, number_count=len(given))
        self._ask("add", byref(contributor))

    def quantile(self, probability: float) -> float:
        """The size that the stack is below with a probability between 0 and 1."""
        out = c_double()
        self._ask("quantile", c_double(probability), byref(out))
        return out.value

    def outside(self, lower: float, upper: float) -> Tail:
        """Probabilities below and above two limits, with a bound of their relative error. An infinite limit is no limit."""
        tail = _sized(Tail)
        self._ask("outside", c_double(lower), c_double(upper), byref(tail))
        return tail


class Report(_Handle):
    """A document with its report. Readings that are missing give a report that says what is missing."""

    _kind = "report"

    def __init__(self, library: Library, kind: Document, document: str | bytes, with_working: bool = False):
        super().__init__(library, c_int32(kind), *_text_in(document), c_int32(with_working))

    def written(self, form: Format) -> str:
        """The report in a form."""
        return self._ask("text", c_int32(form), how=Library._text)

    def job(self) -> JobVerdict:
        """What a job comes to."""
        return self._found(JobVerdict, "job")

    def cylinder(self, cylinder: int) -> CylinderVerdict:
        """What a cylinder of a job comes to; by its place in the report, from 0."""
        return self._found(CylinderVerdict, "cylinder", cylinder)

    def decision(self, cylinder: int, decision: int) -> JobDecision:
        """One decision on a cylinder, by the places of both, from 0."""
        return self._found(JobDecision, "decision", cylinder, decision)

    def sentences(self, lines: Lines, cylinder: int = 0) -> list[str]:
        """Sentences of the report on a job; `cylinder` is the place of a cylinder, from 0, and 0 with sentences on the engine."""
        found = []
        while True:
            try:
                found.append(self._ask("line", c_int32(lines), c_size_t(cylinder), c_size_t(len(found)), how=Library._text))
            except GaugepointError as e:
                if e.status == Status.OUT_OF_RANGE and e.field == "index":
                    return found
                raise

    def _found(self, record: type[Structure], name: str, *places: int) -> Structure:
        out = _sized(record)
        self._ask(name, *map(c_size_t, places), byref(out))
        return out


def _table(form: LawForm, temperatures_c: Iterable[float], coefficients: Iterable[float], base_c: float = 0) -> Law:
    temperatures, given = _doubles(temperatures_c), _doubles(coefficients)
    if len(temperatures) != len(given):
        raise ValueError(f"{len(temperatures)} temperatures and {len(given)} coefficients")
    return Law(form=form, base_c=base_c, temperatures_c=temperatures, coefficients=given, count=len(given))


class Expansion(_Handle):
    """A law of thermal expansion, checked over its whole range."""

    _kind = "expansion"

    def __init__(self, library: Library, law: Law):
        super().__init__(library, byref(law))

    @classmethod
    def built_in(cls, library: Library, name: str) -> "Expansion":
        """A built-in material, by its name."""
        text, length = _text_in(name)
        return cls(library, Law(form=LawForm.BUILT_IN, name=text, name_length=length))

    @classmethod
    def mean(cls, library: Library, base_c: float, mean_per_k: float, from_c: float, to_c: float) -> "Expansion":
        """One mean coefficient from a base temperature, with the range that it holds in."""
        return cls(library, Law(form=LawForm.MEAN_COEFFICIENT, base_c=base_c, mean_per_k=mean_per_k, from_c=from_c, to_c=to_c))

    @classmethod
    def mean_table(cls, library: Library, base_c: float, temperatures_c: Iterable[float], coefficients: Iterable[float]) -> "Expansion":
        """Mean coefficients per kelvin from a base temperature to each of rising temperatures."""
        return cls(library, _table(LawForm.MEAN_TABLE, temperatures_c, coefficients, base_c=base_c))

    @classmethod
    def instantaneous_table(cls, library: Library, temperatures_c: Iterable[float], coefficients: Iterable[float]) -> "Expansion":
        """Instantaneous coefficients per kelvin at each of rising temperatures."""
        return cls(library, _table(LawForm.INSTANTANEOUS_TABLE, temperatures_c, coefficients))

    @classmethod
    def polynomial(cls, library: Library, form: LawForm, coefficients: Iterable[float], from_c: float, to_c: float) -> "Expansion":
        """A polynomial over kelvin, from the constant up: LawForm.INSTANTANEOUS_POLYNOMIAL or LawForm.STRAIN_POLYNOMIAL."""
        given = _doubles(coefficients)
        return cls(library, Law(form=form, coefficients=given, count=len(given), from_c=from_c, to_c=to_c))

    @classmethod
    def graphite_iron(cls, library: Library, nodularity_percent: float, graphite_percent: float, pearlite_to_ferrite: float) -> "Expansion":
        """Graphite iron from its structure."""
        return cls(library, Law(form=LawForm.GRAPHITE_IRON, nodularity_percent=nodularity_percent, graphite_percent=graphite_percent,
                                pearlite_to_ferrite=pearlite_to_ferrite))

    def range_c(self) -> tuple[float, float]:
        """Lowest and highest temperature that the law holds at."""
        from_c, to_c = c_double(), c_double()
        self._ask("range", byref(from_c), byref(to_c))
        return from_c.value, to_c.value

    def at(self, temperature_c: float) -> Growth:
        """Strain from 20 C, instantaneous coefficient, and mean coefficient from 20 C."""
        growth = _sized(Growth)
        self._ask("at", c_double(temperature_c), byref(growth))
        return growth

    def mean_per_k(self, from_c: float, to_c: float) -> float:
        """Mean coefficient from one temperature to another."""
        out = c_double()
        self._ask("mean_per_k", c_double(from_c), c_double(to_c), byref(out))
        return out.value

    def strains(self, temperatures_c: Iterable[float]) -> array:
        """Strains from 20 C at temperatures in any order."""
        given = _doubles(temperatures_c)
        strains = (c_double * len(given))()
        self._ask("strains", given, c_size_t(len(given)), strains)
        return _column(strains)
