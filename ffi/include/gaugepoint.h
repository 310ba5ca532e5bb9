/*
 * C ABI of gaugepoint: the dimensional mathematics of an engine rebuild.
 *
 * UNITS. A name ends in its unit: _mm, _mm2, _c (degrees Celsius), _k (differences of temperature), _per_k (per kelvin), _per_k2, _per_k3,
 * _mpa, _n, _nm (newton metre), _cm3, _g, _mrad, _deg, _min, _percent, _per_mille; of conversions also _inch, _thou,
 * _fahrenheit. Without one it is a pure number, or in the unit of the caller's own numbers: statistics, stacks, functions, prices. Sizes are
 * diameters, clearances diametral. Nothing else is converted and no unit is guessed.
 *
 * STATUS. Functions that can fail return 0 (GAUGEPOINT_STATUS_OK) or a status. Numbers of statuses never change their
 * meaning; treat one that you do not know as a failure.
 *
 * OUTPUTS. Arguments come first, then outputs, then the error. An output is never NULL; outputs and error do not
 * overlap. On failure every double is set to a quiet NaN and the result of a decision to
 * GAUGEPOINT_CONFORMITY_NOT_JUDGED, so that an ignored status cannot be read as a size; records, arrays, the pointer to a
 * report and its length keep what they held. Of the functions of many rows only gaugepoint_clearances sets its results to NaN when a row refuses the call.
 *
 * RECORDS. A result of several numbers is a structure that belongs to the caller and starts zeroed with struct_size set:
 * GaugepointSample sample = {.struct_size = sizeof sample};. It is written on success only, up to struct_size bytes; a
 * size below that of the first version is refused. Later versions add fields at its end only. A structure without
 * struct_size is plain: it never changes.
 *
 * ARRAYS. A pointer and a count of values; the pointer is never NULL, but where it says so. More than GAUGEPOINT_MOST_VALUES are refused before
 * anything is read. A refused value is named with its place, from 0: "values/3". An array of results comes with the
 * room that it has; it is written on success only, as far as there are results.
 *
 * FLAT FUNCTIONS. Functions of plain doubles that give one double come in three shapes with the same bits. gaugepoint_NAME has an output and a
 * status. gaugepoint_NAME_v returns the double, NaN where it is refused: for sheets and SQL. gaugepoint_NAME_array takes an array of count
 * for each parameter; out may be one of them, and overlaps none otherwise. With row_status each row gets its own: 0, or why it is refused
 * and its result is NaN; the call itself returns 0. Without (NULL) the first refused row refuses the call, its parameter and place are in the
 * error ("bore_mm/3"), and nothing is written. gaugepoint_flat_strided takes any of them by its number and numbers that need not stand side by
 * side; gaugepoint_flat_count, _name, _parameter and _meaning list them. None needs memory but for the text of a refusal.
 *
 * NaN. Never accepted as a value, never a result that is given, and never the sign of something left out: that is what
 * the has_ flags are for, each 0 or 1. What a record does not give is NaN there, so that an ignored flag cannot be
 * read as a size.
 *
 * ERROR. A GaugepointError belongs to the caller and starts as GAUGEPOINT_ERROR_INIT (elsewhere: zeroed, struct_size
 * set). It is written on failure only, up to struct_size bytes; NULL means that it is not wanted. There is no last
 * error anywhere else.
 *
 * STRINGS. UTF-8. Text in is a pointer and a length in bytes and needs no NUL. Text out ends with a NUL. Text in a
 * GaugepointError that is too long is cut between characters; a NUL within it is shown as U+2400.
 *
 * OWNERSHIP. A text that was given is freed by gaugepoint_text_free and by nothing else. Texts that are returned as const char *
 * live for ever and are not freed. A GaugepointHotPiston is made by gaugepoint_hot_piston_new and freed by gaugepoint_hot_piston_free, a GaugepointHotBore
 * by gaugepoint_hot_bore_new and gaugepoint_hot_bore_free, a GaugepointHotFit by gaugepoint_hot_fit_new or gaugepoint_hot_fit_of and
 * gaugepoint_hot_fit_free, a GaugepointStack by gaugepoint_stack_new and gaugepoint_stack_free, a GaugepointFunction by one of three functions and
 * gaugepoint_function_free, a GaugepointReport by gaugepoint_report_new and gaugepoint_report_free, a GaugepointExpansion by gaugepoint_expansion_new
 * and gaugepoint_expansion_free, each once.
 * Nothing that is passed in is kept but a callback and its user pointer: what is made holds copies of what it was made from. All of them but a stack
 * never change.
 *
 * ENUMS. Passed and returned as int32_t; a number outside the enum is refused. None has the value 0 except
 * GAUGEPOINT_STATUS_OK and the places of GaugepointFinishParameter, so a blank argument is never a choice.
 *
 * THREADS. Every function may be called from any number of threads at once; a stack that is added to or freed belongs to one
 * thread. There is no global state, no locale, no clock: the same arguments give the same bits.
 *
 * FLOATING POINT. Whatever the caller's state is, the library computes with rounding to nearest, exceptions masked and nothing flushed to zero: the bits
 * are the same. The caller finds its state as it was, with its flags of exceptions but that of rounding. What is called back runs in the state of the library.
 *
 * PROGRESS. Functions that may take their time have a second form, gaugepoint_NAME_watched, with a GaugepointWatcher and its user pointer before the
 * outputs; a NULL watcher is none, and the results have the same bits. Work with nothing long in it asks nobody. What is done never falls, and is the
 * whole in the end; the whole grows where more is found to be done. A watcher that stops the work gives GAUGEPOINT_STATUS_STOPPED: outputs are as
 * after any other failure.
 *
 * PANICS. None is expected. One would be caught and returned as GAUGEPOINT_STATUS_PANIC, with its text in the error and
 * on standard error.
 *
 * MEMORY. When memory for a calculation runs out, the process ends by abort() with a line on standard error; GAUGEPOINT_STATUS_OUT_OF_MEMORY is for
 * the text that is handed out. A document has at most 16 MiB; one of that size that is refused takes at most about 0.5 GB. The report on a job takes
 * about 40 kB for each reading of a bore with working: 7 MB for a usual engine of six cylinders, 2.5 GB for 64 cylinders with 1000 readings each.
 *
 * VERSIONS. GAUGEPOINT_ABI is also the number in the name of the shared library (libgaugepoint_c.so.N). Compare it with
 * gaugepoint_abi() when the library is loaded by hand. New functions, statuses and fields at the end of GaugepointError
 * or of a record do not change it.
 *
 * Results rest on free thermal growth and defer to the maker's service data, local codes and licensed practice.
 *
 * Generated from the sources; the test that compares it also writes it.
 */

#ifndef GAUGEPOINT_H
#define GAUGEPOINT_H

#include <stddef.h>
#include <stdint.h>

/**
 * Version of this header, major part.
 */
#define GAUGEPOINT_VERSION_MAJOR 0

/**
 * Version of this header, minor part.
 */
#define GAUGEPOINT_VERSION_MINOR 1

/**
 * Version of this header, patch part.
 */
#define GAUGEPOINT_VERSION_PATCH 0

/**
 * Version of this header.
 */
#define GAUGEPOINT_VERSION "0.1.0"

/**
 * Statuses. See STATUS at the head.
 */
enum GaugepointStatus {
  /**
   * Success.
   */
  GAUGEPOINT_STATUS_OK = 0,
  /**
   * The text is not valid UTF-8.
   */
  GAUGEPOINT_STATUS_NOT_UTF8 = 101,
  /**
   * The text is larger than is accepted.
   */
  GAUGEPOINT_STATUS_TOO_LARGE = 102,
  /**
   * The text is not valid JSON.
   */
  GAUGEPOINT_STATUS_SYNTAX = 103,
  /**
   * The text is nested more deeply than is accepted.
   */
  GAUGEPOINT_STATUS_TOO_DEEP = 104,
  /**
   * A field holds another type of JSON value than it should.
   */
  GAUGEPOINT_STATUS_WRONG_TYPE = 105,
  /**
   * A field is not known here.
   */
  GAUGEPOINT_STATUS_UNKNOWN_FIELD = 106,
  /**
   * A field stands twice in the same object.
   */
  GAUGEPOINT_STATUS_REPEATED_FIELD = 107,
  /**
   * A required field is missing.
   */
  GAUGEPOINT_STATUS_MISSING_FIELD = 108,
  /**
   * A word is not one of the words accepted here.
   */
  GAUGEPOINT_STATUS_UNKNOWN_CHOICE = 109,
  /**
   * The document's format or version is not one this library reads.
   */
  GAUGEPOINT_STATUS_UNKNOWN_FORMAT = 110,
  /**
   * The text does not hold a decimal number.
   */
  GAUGEPOINT_STATUS_NOT_A_NUMBER = 201,
  /**
   * A number stands without a unit.
   */
  GAUGEPOINT_STATUS_MISSING_UNIT = 202,
  /**
   * The unit is unknown or measures something else.
   */
  GAUGEPOINT_STATUS_WRONG_UNIT = 203,
  /**
   * A fraction of an inch is not a measurement.
   */
  GAUGEPOINT_STATUS_FRACTION = 204,
  /**
   * A comma stands where a decimal point should.
   */
  GAUGEPOINT_STATUS_DECIMAL_COMMA = 205,
  /**
   * The number has more digits than are accepted.
   */
  GAUGEPOINT_STATUS_TOO_MANY_DIGITS = 206,
  /**
   * The number is not finite.
   */
  GAUGEPOINT_STATUS_NOT_FINITE = 207,
  /**
   * The text is not an ISO 8601 date.
   */
  GAUGEPOINT_STATUS_NOT_A_DATE = 208,
  /**
   * A name or note holds a control character.
   */
  GAUGEPOINT_STATUS_CONTROL_CHARACTER = 209,
  /**
   * The text is not a formula in ordinary algebra, or a name cannot stand in one.
   */
  GAUGEPOINT_STATUS_NOT_AN_EXPRESSION = 210,
  /**
   * The value is outside what is possible for this quantity.
   */
  GAUGEPOINT_STATUS_OUT_OF_RANGE = 301,
  /**
   * A lower bound is above its upper bound, or rows are out of order.
   */
  GAUGEPOINT_STATUS_OUT_OF_ORDER = 302,
  /**
   * A name or number that must be unique stands twice.
   */
  GAUGEPOINT_STATUS_REPEATED = 303,
  /**
   * A name refers to nothing in the document.
   */
  GAUGEPOINT_STATUS_UNKNOWN_NAME = 304,
  /**
   * Two fields contradict each other.
   */
  GAUGEPOINT_STATUS_CONTRADICTION = 305,
  /**
   * A temperature is outside the range of the expansion law.
   */
  GAUGEPOINT_STATUS_OUTSIDE_LAW = 306,
  /**
   * The caller stopped the work.
   */
  GAUGEPOINT_STATUS_STOPPED = 401,
  /**
   * A pointer that is needed is NULL.
   */
  GAUGEPOINT_STATUS_NULL_POINTER = 901,
  /**
   * The struct_size of a structure was not set.
   */
  GAUGEPOINT_STATUS_STRUCT_SIZE = 902,
  /**
   * There is no memory for the text.
   */
  GAUGEPOINT_STATUS_OUT_OF_MEMORY = 903,
  /**
   * A fault of this library; please report it.
   */
  GAUGEPOINT_STATUS_PANIC = 904,
  /**
   * A callback said that it failed.
   */
  GAUGEPOINT_STATUS_CALLBACK_FAILED = 905,
};

/**
 * Start of a GaugepointError: GaugepointError error = GAUGEPOINT_ERROR_INIT;
 */
#define GAUGEPOINT_ERROR_INIT \
  { sizeof(GaugepointError), 0, 0, 0, 0, 0.0, 0.0, 0.0, "", "", "", "", "", "" }

/**
 * Number of the ABI this header belongs to. It rises when a program built for the old one would no longer run rightly.
 */
#define GAUGEPOINT_ABI 1

/**
 * Most numbers that one array may hold; a count beyond it is a mistake, and is refused before anything is read.
 */
#define GAUGEPOINT_MOST_VALUES 16777216

/**
 * Room for the candidates of any finding.
 */
#define GAUGEPOINT_MOST_CANDIDATES 32

/**
 * Room for the questions of any finding.
 */
#define GAUGEPOINT_MOST_QUESTIONS 32

/**
 * Rule of decision.
 */
typedef enum GaugepointRule {
  /**
   * The value lies within the limits. The uncertainty is stated, not used.
   */
  GAUGEPOINT_RULE_SIMPLE_ACCEPTANCE = 1,
  /**
   * The value lies within the limits by a guard band, so that conformity is proven. ISO 14253-1.
   */
  GAUGEPOINT_RULE_PROVEN = 2,
  /**
   * The probability of conformity reaches what is asked. JCGM 106.
   */
  GAUGEPOINT_RULE_CONFORMANCE_PROBABILITY = 3,
  /**
   * The value lies within the limits by its expanded uncertainty, twice the standard uncertainty. ISO 14253-1:1998.
   */
  GAUGEPOINT_RULE_EXPANDED_GUARD_BAND = 4,
  /**
   * The value lies within the limits, and the tolerance is wide enough for its uncertainty. ASME B89.7.3.1.
   */
  GAUGEPOINT_RULE_SIMPLE_ACCEPTANCE_BY_RATIO = 5,
} GaugepointRule;

/**
 * What a document is.
 */
typedef enum GaugepointDocument {
  /**
   * A job.
   */
  GAUGEPOINT_DOCUMENT_JOB = 1,
  /**
   * A printed sheet.
   */
  GAUGEPOINT_DOCUMENT_SHEET = 2,
  /**
   * A measurement.
   */
  GAUGEPOINT_DOCUMENT_MEASUREMENT = 3,
  /**
   * A hot fit.
   */
  GAUGEPOINT_DOCUMENT_FIT = 4,
  /**
   * A stack.
   */
  GAUGEPOINT_DOCUMENT_STACK = 5,
  /**
   * A budget of uncertainty.
   */
  GAUGEPOINT_DOCUMENT_BUDGET = 6,
  /**
   * Two jobs of one engine.
   */
  GAUGEPOINT_DOCUMENT_REVISIT = 7,
  /**
   * A job with other values.
   */
  GAUGEPOINT_DOCUMENT_WHAT_IF = 8,
} GaugepointDocument;

/**
 * How a report is written.
 */
typedef enum GaugepointFormat {
  /**
   * JSON on one line.
   */
  GAUGEPOINT_FORMAT_JSON = 1,
  /**
   * Text for a reader, of at most 100 columns where a word or a table does not need more.
   */
  GAUGEPOINT_FORMAT_TEXT = 2,
  /**
   * Markdown.
   */
  GAUGEPOINT_FORMAT_MARKDOWN = 3,
} GaugepointFormat;

/**
 * What a verdict says, from the best to the worst.
 */
typedef enum GaugepointOutcome {
  /**
   * It goes back.
   */
  GAUGEPOINT_OUTCOME_REUSE = 1,
  /**
   * Something that is needed was not read.
   */
  GAUGEPOINT_OUTCOME_INCOMPLETE = 2,
  /**
   * Neither conformity nor the opposite is proven, or there is nothing to judge by.
   */
  GAUGEPOINT_OUTCOME_NOT_PROVEN = 3,
  /**
   * A damage whose cause is not known.
   */
  GAUGEPOINT_OUTCOME_FIND_THE_CAUSE_FIRST = 4,
  /**
   * It does not go back.
   */
  GAUGEPOINT_OUTCOME_DO_NOT_REUSE = 5,
} GaugepointOutcome;

/**
 * What a decision is of.
 */
typedef enum GaugepointJudged {
  /**
   * Piston at its gauge point.
   */
  GAUGEPOINT_JUDGED_PISTON_SIZE = 1,
  /**
   * Bore by the size rule.
   */
  GAUGEPOINT_JUDGED_BORE_SIZE = 2,
  /**
   * Taper of the bore.
   */
  GAUGEPOINT_JUDGED_BORE_TAPER = 3,
  /**
   * Out-of-round of the bore.
   */
  GAUGEPOINT_JUDGED_BORE_OUT_OF_ROUND = 4,
  /**
   * Clearance on the bench.
   */
  GAUGEPOINT_JUDGED_BENCH_CLEARANCE = 5,
  /**
   * Clearance on the bench at the smallest place that was read.
   */
  GAUGEPOINT_JUDGED_SMALLEST_CLEARANCE = 6,
  /**
   * Margin against the reference case, hottest piston and coldest bore.
   */
  GAUGEPOINT_JUDGED_RUNNING_MARGIN_TIGHT = 7,
  /**
   * Margin against the reference case, coldest piston and hottest bore.
   */
  GAUGEPOINT_JUDGED_RUNNING_MARGIN_LOOSE = 8,
  /**
   * Clearance of a piston to hand in a bore.
   */
  GAUGEPOINT_JUDGED_MATCHED_CLEARANCE = 9,
  /**
   * Clearance after the work.
   */
  GAUGEPOINT_JUDGED_FINISHED_CLEARANCE = 10,
  /**
   * Bore after the work, against the size it was machined to.
   */
  GAUGEPOINT_JUDGED_FINISHED_SIZE = 11,
  /**
   * End gap of a ring after filing.
   */
  GAUGEPOINT_JUDGED_RING_GAP = 12,
  /**
   * A value that belongs to no job.
   */
  GAUGEPOINT_JUDGED_VALUE = 13,
} GaugepointJudged;

/**
 * Sentences of the report on a job.
 */
typedef enum GaugepointLines {
  /**
   * What to take care of. Show them with the results.
   */
  GAUGEPOINT_LINES_CAUTIONS = 1,
  /**
   * What is odd, each with its field.
   */
  GAUGEPOINT_LINES_WARNINGS = 2,
  /**
   * Why the verdict on the engine is what it is, the weightiest first.
   */
  GAUGEPOINT_LINES_REASONS = 3,
  /**
   * Why the verdict on a cylinder is what it is, the weightiest first.
   */
  GAUGEPOINT_LINES_CYLINDER_REASONS = 4,
  /**
   * What of a cylinder was not read.
   */
  GAUGEPOINT_LINES_CYLINDER_MISSING = 5,
  /**
   * Why each decision on a cylinder is what it is, in the order of the decisions.
   */
  GAUGEPOINT_LINES_CYLINDER_DECISIONS = 6,
} GaugepointLines;

/**
 * What a decision says.
 */
typedef enum GaugepointConformity {
  /**
   * It conforms.
   */
  GAUGEPOINT_CONFORMITY_CONFORMS = 1,
  /**
   * It does not conform.
   */
  GAUGEPOINT_CONFORMITY_DOES_NOT_CONFORM = 2,
  /**
   * Neither is proven.
   */
  GAUGEPOINT_CONFORMITY_NOT_PROVEN = 3,
  /**
   * There is nothing to judge by, or the call failed.
   */
  GAUGEPOINT_CONFORMITY_NOT_JUDGED = 4,
} GaugepointConformity;

/**
 * What a study by variance does with the interaction of appraiser and part.
 */
typedef enum GaugepointPooling {
  /**
   * Keep it as a component.
   */
  GAUGEPOINT_POOLING_NEVER = 1,
  /**
   * Count it as repeats.
   */
  GAUGEPOINT_POOLING_ALWAYS = 2,
  /**
   * Count it as repeats when a ratio as large is more probable by chance than the probability given.
   */
  GAUGEPOINT_POOLING_ABOVE = 3,
} GaugepointPooling;

/**
 * What a control chart shows, and what its limits rest on.
 */
typedef enum GaugepointChartKind {
  /**
   * Means of subgroups, limits by their ranges.
   */
  GAUGEPOINT_CHART_KIND_MEANS_BY_RANGES = 1,
  /**
   * Ranges of subgroups.
   */
  GAUGEPOINT_CHART_KIND_RANGES = 2,
  /**
   * Means of subgroups, limits by their standard deviations.
   */
  GAUGEPOINT_CHART_KIND_MEANS_BY_DEVIATIONS = 3,
  /**
   * Standard deviations of subgroups.
   */
  GAUGEPOINT_CHART_KIND_DEVIATIONS = 4,
  /**
   * Single readings, limits by the ranges of neighbours.
   */
  GAUGEPOINT_CHART_KIND_INDIVIDUALS = 5,
  /**
   * Ranges of neighbouring single readings.
   */
  GAUGEPOINT_CHART_KIND_MOVING_RANGES = 6,
} GaugepointChartKind;

/**
 * What to do with a part that is warm.
 */
typedef enum GaugepointAdvice {
  /**
   * Its error is within what is allowed: measure.
   */
  GAUGEPOINT_ADVICE_MEASURE = 1,
  /**
   * Wait, or measure now and correct.
   */
  GAUGEPOINT_ADVICE_WAIT_OR_CORRECT = 2,
  /**
   * Wait: the correction is too uncertain.
   */
  GAUGEPOINT_ADVICE_WAIT = 3,
} GaugepointAdvice;

/**
 * What a station list should look like, apart from its scatter.
 */
typedef enum GaugepointPattern {
  /**
   * One mean: repeats at one place. The test is Grubbs'.
   */
  GAUGEPOINT_PATTERN_MEAN = 1,
  /**
   * A mean for each depth, and one oval for all of them: for few axes.
   */
  GAUGEPOINT_PATTERN_COMMON_OVAL = 2,
  /**
   * A mean and an oval for each depth: needs more than three directions at most depths.
   */
  GAUGEPOINT_PATTERN_OVAL_BY_DEPTH = 3,
} GaugepointPattern;

/**
 * How a value stands to the table. What is impossible is a failure.
 */
typedef enum GaugepointPlausibility {
  /**
   * Usual.
   */
  GAUGEPOINT_PLAUSIBILITY_USUAL = 1,
  /**
   * Possible, and odd.
   */
  GAUGEPOINT_PLAUSIBILITY_ODD = 2,
} GaugepointPlausibility;

/**
 * What a shape is fitted by.
 */
typedef enum GaugepointReference {
  /**
   * Least sum of squares of the distances.
   */
  GAUGEPOINT_REFERENCE_LEAST_SQUARES = 1,
  /**
   * Two shapes with one centre or axis that hold all points between them as narrowly as can be.
   */
  GAUGEPOINT_REFERENCE_MINIMUM_ZONE = 2,
  /**
   * The smallest that holds all points.
   */
  GAUGEPOINT_REFERENCE_MINIMUM_CIRCUMSCRIBED = 3,
  /**
   * The largest that all points are outside of.
   */
  GAUGEPOINT_REFERENCE_MAXIMUM_INSCRIBED = 4,
} GaugepointReference;

/**
 * What the equation of a circle is held to.
 */
typedef enum GaugepointAlgebraic {
  /**
   * Its numbers have the square sum 1: depends on the origin of the coordinates, for comparison only.
   */
  GAUGEPOINT_ALGEBRAIC_UNIT_NORM = 1,
  /**
   * Pratt's.
   */
  GAUGEPOINT_ALGEBRAIC_PRATT = 2,
  /**
   * Taubin's.
   */
  GAUGEPOINT_ALGEBRAIC_TAUBIN = 3,
  /**
   * That of Al-Sharadqah and Chernov, without bias to the second order.
   */
  GAUGEPOINT_ALGEBRAIC_HYPERACCURATE = 4,
} GaugepointAlgebraic;

/**
 * Kind of distribution of the items that come to be measured.
 */
typedef enum GaugepointDistribution {
  /**
   * Normal: mean, standard deviation.
   */
  GAUGEPOINT_DISTRIBUTION_NORMAL = 1,
  /**
   * Uniform: smallest, largest.
   */
  GAUGEPOINT_DISTRIBUTION_UNIFORM = 2,
  /**
   * Triangular: smallest, most frequent, largest.
   */
  GAUGEPOINT_DISTRIBUTION_TRIANGULAR = 3,
  /**
   * Gamma: shape, scale. For what cannot be negative, such as run-out or out-of-round; the mean is shape times scale.
   */
  GAUGEPOINT_DISTRIBUTION_GAMMA = 4,
} GaugepointDistribution;

/**
 * How an acceptance interval follows from the tolerance. U is the expanded uncertainty 2 u.
 */
typedef enum GaugepointGuard {
  /**
   * Inside by 1.65 u: ISO 14253-1:2017, default. Has no number.
   */
  GAUGEPOINT_GUARD_PROVEN = 1,
  /**
   * Inside by the number times U: stringent acceptance, ASME B89.7.3.1; JCGM 106:2012, 8.3.2.2.
   */
  GAUGEPOINT_GUARD_STRINGENT = 2,
  /**
   * Outside by the number times U: relaxed acceptance, ASME B89.7.3.1.
   */
  GAUGEPOINT_GUARD_RELAXED = 3,
  /**
   * The tolerance itself, which must be at least the number times 2 U wide: simple acceptance, ASME B89.7.3.1.
   */
  GAUGEPOINT_GUARD_RATIO_AT_LEAST = 4,
} GaugepointGuard;

/**
 * Shapes between two limits at equal distances from the estimate.
 */
typedef enum GaugepointBounded {
  /**
   * Uniform.
   */
  GAUGEPOINT_BOUNDED_RECTANGULAR = 1,
  /**
   * Symmetric triangle.
   */
  GAUGEPOINT_BOUNDED_TRIANGULAR = 2,
  /**
   * Symmetric trapezoid; its parameter is the width of the top over that of the base, 0 to 1.
   */
  GAUGEPOINT_BOUNDED_TRAPEZOIDAL = 3,
  /**
   * Uniform between limits in doubt; its parameter is the largest error of the half-width.
   */
  GAUGEPOINT_BOUNDED_CURVILINEAR_TRAPEZOID = 4,
  /**
   * A sine between its limits.
   */
  GAUGEPOINT_BOUNDED_ARCSINE = 5,
} GaugepointBounded;

/**
 * Colour that clean steel takes at a temperature.
 */
typedef enum GaugepointTemperColour {
  /**
   * None yet.
   */
  GAUGEPOINT_TEMPER_COLOUR_NONE = 1,
  /**
   * Straw to brown, from 480 F.
   */
  GAUGEPOINT_TEMPER_COLOUR_STRAW = 2,
  /**
   * Purple, from 520 F.
   */
  GAUGEPOINT_TEMPER_COLOUR_PURPLE = 3,
  /**
   * Blue, from 575 F.
   */
  GAUGEPOINT_TEMPER_COLOUR_BLUE = 4,
} GaugepointTemperColour;

/**
 * How far a source can be trusted.
 */
typedef enum GaugepointConfidence {
  /**
   * From a standard, a handbook or a paper.
   */
  GAUGEPOINT_CONFIDENCE_PUBLISHED = 1,
  /**
   * From the maker of the part.
   */
  GAUGEPOINT_CONFIDENCE_MAKER = 2,
  /**
   * From experience or memory.
   */
  GAUGEPOINT_CONFIDENCE_UNVERIFIED = 3,
} GaugepointConfidence;

/**
 * What the coefficients of a built-in material are.
 */
typedef enum GaugepointCoefficients {
  /**
   * Means from 20 C to each temperature.
   */
  GAUGEPOINT_COEFFICIENTS_MEAN = 1,
  /**
   * Instantaneous at each temperature.
   */
  GAUGEPOINT_COEFFICIENTS_INSTANTANEOUS = 2,
} GaugepointCoefficients;

/**
 * Whether the sides of a surface are equal.
 */
typedef enum GaugepointPistonForm {
  /**
   * Both sides are equal: tables of diameters.
   */
  GAUGEPOINT_PISTON_FORM_SYMMETRIC = 1,
  /**
   * Each side has its own: tables of radii.
   */
  GAUGEPOINT_PISTON_FORM_ASYMMETRIC = 2,
} GaugepointPistonForm;

/**
 * How the rows of a table against the gauge diameter are counted.
 */
typedef enum GaugepointCounted {
  /**
   * Size there less the size at the gauge point: negative where the piston is smaller.
   */
  GAUGEPOINT_COUNTED_ABOVE = 1,
  /**
   * Drop: positive where the piston is smaller.
   */
  GAUGEPOINT_COUNTED_BELOW = 2,
} GaugepointCounted;

/**
 * What a window takes away.
 */
typedef enum GaugepointWindowKind {
  /**
   * There is no surface: a cut-out, a slot, a relief.
   */
  GAUGEPOINT_WINDOW_KIND_CUT_OUT = 1,
  /**
   * There is no coating: a place to measure bare metal.
   */
  GAUGEPOINT_WINDOW_KIND_BARE = 2,
} GaugepointWindowKind;

/**
 * What was read at each point of a piston.
 */
typedef enum GaugepointPistonReading {
  /**
   * Radii from any one axis near that of the piston.
   */
  GAUGEPOINT_PISTON_READING_RADII = 1,
  /**
   * Two-point diameters at the angles of their axes.
   */
  GAUGEPOINT_PISTON_READING_DIAMETERS = 2,
} GaugepointPistonReading;

/**
 * What is odd about the form of a piston; none of it is refused.
 */
typedef enum GaugepointOddForm {
  /**
   * A diameter beside the gauge direction is larger.
   */
  GAUGEPOINT_ODD_FORM_LARGER_BESIDE = 1,
  /**
   * A diameter beside the pin axis is smaller.
   */
  GAUGEPOINT_ODD_FORM_SMALLER_BESIDE = 2,
  /**
   * The ovality is not usual.
   */
  GAUGEPOINT_ODD_FORM_ODD_OVALITY = 3,
  /**
   * The diameter against the gauge diameter is not usual for a skirt.
   */
  GAUGEPOINT_ODD_FORM_ODD_BARREL = 4,
  /**
   * The skirt changes over its height more than is usual.
   */
  GAUGEPOINT_ODD_FORM_ODD_SLOPE = 5,
  /**
   * The coating is not usual.
   */
  GAUGEPOINT_ODD_FORM_ODD_COATING = 6,
} GaugepointOddForm;

/**
 * Form of a law of expansion.
 */
typedef enum GaugepointLawForm {
  /**
   * One mean coefficient from a base: `base_c`, `mean_per_k`, `from_c`, `to_c`.
   */
  GAUGEPOINT_LAW_FORM_MEAN_COEFFICIENT = 1,
  /**
   * Mean coefficients from a base to each temperature: `base_c`, `temperatures_c`, `coefficients`.
   */
  GAUGEPOINT_LAW_FORM_MEAN_TABLE = 2,
  /**
   * Instantaneous coefficients at each temperature: `temperatures_c`, `coefficients`.
   */
  GAUGEPOINT_LAW_FORM_INSTANTANEOUS_TABLE = 3,
  /**
   * An instantaneous coefficient that is a polynomial in kelvin: `coefficients`, `from_c`, `to_c`.
   */
  GAUGEPOINT_LAW_FORM_INSTANTANEOUS_POLYNOMIAL = 4,
  /**
   * A strain that is a polynomial in kelvin: `coefficients`, `from_c`, `to_c`.
   */
  GAUGEPOINT_LAW_FORM_STRAIN_POLYNOMIAL = 5,
  /**
   * Graphite iron from its structure: the three numbers of gaugepoint_growth_graphite_iron.
   */
  GAUGEPOINT_LAW_FORM_GRAPHITE_IRON = 6,
  /**
   * A built-in material: `name`, `name_length`.
   */
  GAUGEPOINT_LAW_FORM_BUILT_IN = 7,
} GaugepointLawForm;

/**
 * How it is said where the piston stands.
 */
typedef enum GaugepointPosition {
  /**
   * By the crank angle in degrees, -360 to 720: 0 is the throw in line with the cylinder, on the way down after it.
   */
  GAUGEPOINT_POSITION_CRANK = 1,
  /**
   * At top dead centre.
   */
  GAUGEPOINT_POSITION_TOP_DEAD_CENTRE = 2,
  /**
   * By the depth of its gauge point in mm.
   */
  GAUGEPOINT_POSITION_GAUGE_DEPTH = 3,
  /**
   * Not: the bore is the same at every depth.
   */
  GAUGEPOINT_POSITION_ANYWHERE = 4,
} GaugepointPosition;

/**
 * What rises on the way to first contact.
 */
typedef enum GaugepointScenario {
  /**
   * The piston; the bore stays at its field.
   */
  GAUGEPOINT_SCENARIO_PISTON_ALONE = 1,
  /**
   * Piston and bore in proportion.
   */
  GAUGEPOINT_SCENARIO_PISTON_AND_BORE = 2,
  /**
   * The piston; the bore stays at 20 C, as at a cold start.
   */
  GAUGEPOINT_SCENARIO_PISTON_WITH_COLD_BORE = 3,
} GaugepointScenario;

/**
 * How far the temperatures can rise.
 */
typedef enum GaugepointOnsetOutcome {
  /**
   * Something touches.
   */
  GAUGEPOINT_ONSET_OUTCOME_TOUCHES = 1,
  /**
   * Something touches with the piston at 20 C already.
   */
  GAUGEPOINT_ONSET_OUTCOME_TOUCHES_COLD = 2,
  /**
   * Nothing touches up to a factor.
   */
  GAUGEPOINT_ONSET_OUTCOME_NO_CONTACT = 3,
} GaugepointOnsetOutcome;

/**
 * How a contributor varies, with its numbers in order: deviations from the nominal.
 */
typedef enum GaugepointVariation {
  /**
   * Centre, standard deviation. A shared cause has no centre.
   */
  GAUGEPOINT_VARIATION_NORMAL = 1,
  /**
   * Lower and upper limit, Cp, Cpk: a normal whose mean has moved toward the lower limit.
   */
  GAUGEPOINT_VARIATION_CAPABILITY_TOWARD_LOWER = 2,
  /**
   * Lower and upper limit, Cp, Cpk: a normal whose mean has moved toward the upper limit.
   */
  GAUGEPOINT_VARIATION_CAPABILITY_TOWARD_UPPER = 3,
  /**
   * Mean and standard deviation before sorting, lower and upper limit of the sorting.
   */
  GAUGEPOINT_VARIATION_TRUNCATED_NORMAL = 4,
  /**
   * Centre, half-width. A shared cause has no centre.
   */
  GAUGEPOINT_VARIATION_RECTANGULAR = 5,
  /**
   * Lower end, mode, upper end. Of a shared cause the half-width.
   */
  GAUGEPOINT_VARIATION_TRIANGULAR = 6,
  /**
   * Centre, half-width of the base, width of the top over that of the base. A shared cause has no centre.
   */
  GAUGEPOINT_VARIATION_TRAPEZOIDAL = 7,
  /**
   * Centre, half-width. A shared cause has no centre.
   */
  GAUGEPOINT_VARIATION_ARCSINE = 8,
  /**
   * Two shapes, lower end, upper end.
   */
  GAUGEPOINT_VARIATION_BETA = 9,
  /**
   * Probability and value in turn, of two measured quantiles or more.
   */
  GAUGEPOINT_VARIATION_SKEWED = 10,
  /**
   * The measured values.
   */
  GAUGEPOINT_VARIATION_SAMPLE = 11,
} GaugepointVariation;

/**
 * What tolerances of least cost must reach.
 */
typedef enum GaugepointWanted {
  /**
   * At most this probability outside the limits, from the exact distribution; 1 ppm is 1e-6.
   */
  GAUGEPOINT_WANTED_OUTSIDE = 1,
  /**
   * At least this Cpk, from mean and standard deviation.
   */
  GAUGEPOINT_WANTED_CPK = 2,
} GaugepointWanted;

/**
 * How the points of trials lie.
 */
typedef enum GaugepointPoints {
  /**
   * Independent of each other.
   */
  GAUGEPOINT_POINTS_RANDOM = 1,
  /**
   * One in every layer of every draw. It has a number of trials of the whole run.
   */
  GAUGEPOINT_POINTS_LATIN_HYPERCUBE = 2,
  /**
   * Sobol's sequence, scrambled; for up to 64 draws.
   */
  GAUGEPOINT_POINTS_SOBOL = 3,
} GaugepointPoints;

/**
 * A side of a distribution.
 */
typedef enum GaugepointToward {
  /**
   * Below a limit.
   */
  GAUGEPOINT_TOWARD_LOWER = 1,
  /**
   * Above a limit.
   */
  GAUGEPOINT_TOWARD_UPPER = 2,
} GaugepointToward;

/**
 * Which coverage interval.
 */
typedef enum GaugepointCoverage {
  /**
   * Equal probabilities outside either end.
   */
  GAUGEPOINT_COVERAGE_SYMMETRIC = 1,
  /**
   * The shortest.
   */
  GAUGEPOINT_COVERAGE_SHORTEST = 2,
} GaugepointCoverage;

/**
 * Stacks of an engine that are ready made. Lengths are in mm, volumes in cm3, temperatures in C, expansions per kelvin.
 */
typedef enum GaugepointEngineStack {
  /**
   * From the deck down to the crown, mm.
   */
  GAUGEPOINT_ENGINE_STACK_DECK_CLEARANCE = 1,
  /**
   * From the crown to the head, mm.
   */
  GAUGEPOINT_ENGINE_STACK_SQUISH = 2,
  /**
   * Compression ratio.
   */
  GAUGEPOINT_ENGINE_STACK_COMPRESSION_RATIO = 3,
  /**
   * Bore less piston at 20 C over the diameter, mm.
   */
  GAUGEPOINT_ENGINE_STACK_BENCH_CLEARANCE = 4,
  /**
   * End gap of a ring in its bore, mm, from the gap in a gauge.
   */
  GAUGEPOINT_ENGINE_STACK_RING_GAP = 5,
  /**
   * End gap of a ring with bore and ring at their temperatures, mm.
   */
  GAUGEPOINT_ENGINE_STACK_HOT_RING_GAP = 6,
  /**
   * Flange of a liner above the deck, mm.
   */
  GAUGEPOINT_ENGINE_STACK_LINER_PROTRUSION = 7,
} GaugepointEngineStack;

/**
 * Where derivatives come from.
 */
typedef enum GaugepointDerivation {
  /**
   * By the rules of derivation, from the operations.
   */
  GAUGEPOINT_DERIVATION_EXACT = 1,
  /**
   * By differences over twentieths of a standard deviation.
   */
  GAUGEPOINT_DERIVATION_NUMERIC = 2,
} GaugepointDerivation;

/**
 * How the ends of a worst case were found.
 */
typedef enum GaugepointProof {
  /**
   * The slopes by all contributors have one sign each within the limits: the ends are two corners.
   */
  GAUGEPOINT_PROOF_MONOTONE = 1,
  /**
   * Intervals over parts of the limits: nothing lies beyond the bounds.
   */
  GAUGEPOINT_PROOF_SUBDIVISION = 2,
  /**
   * A search of a function that is only called: there may be more beyond.
   */
  GAUGEPOINT_PROOF_SEARCHED = 3,
} GaugepointProof;

/**
 * What the data let a matching be.
 */
typedef enum GaugepointMatchingCase {
  /**
   * One wanted clearance, one uncertainty, no pair ruled out, a bore for every piston: the order of size.
   */
  GAUGEPOINT_MATCHING_CASE_SORTED = 1,
  /**
   * The same with pistons to spare: the best choice keeps the order of size.
   */
  GAUGEPOINT_MATCHING_CASE_ORDER_PRESERVING = 2,
  /**
   * What a pair costs depends on the pair: threshold search, then shortest augmenting paths.
   */
  GAUGEPOINT_MATCHING_CASE_PAIR_DEPENDENT = 3,
} GaugepointMatchingCase;

/**
 * Where a boring bar stands.
 */
typedef enum GaugepointBarAxis {
  /**
   * On the axis that the radii are counted from, which is the original one.
   */
  GAUGEPOINT_BAR_AXIS_ORIGINAL = 1,
  /**
   * On the axis of the worn bore, by least squares.
   */
  GAUGEPOINT_BAR_AXIS_WORN = 2,
  /**
   * Where the bore comes out smallest, within a shift and a tilt.
   */
  GAUGEPOINT_BAR_AXIS_BEST = 3,
} GaugepointBarAxis;

/**
 * How a size found at a finish check stands to its target.
 */
typedef enum GaugepointFinishOutcome {
  /**
   * Within the tolerance of the target.
   */
  GAUGEPOINT_FINISH_OUTCOME_MET = 1,
  /**
   * Stock is still to be honed off.
   */
  GAUGEPOINT_FINISH_OUTCOME_HONE_ON = 2,
  /**
   * Too large: the next step, or another piston.
   */
  GAUGEPOINT_FINISH_OUTCOME_TOO_LARGE = 3,
} GaugepointFinishOutcome;

/**
 * How a block is brought back.
 */
typedef enum GaugepointOversizeWay {
  /**
   * All bores to one step.
   */
  GAUGEPOINT_OVERSIZE_WAY_ONE_STEP = 1,
  /**
   * Every bore to the smallest step that serves it.
   */
  GAUGEPOINT_OVERSIZE_WAY_STEP_BY_BORE = 2,
  /**
   * One step, and a sleeve where it does not serve.
   */
  GAUGEPOINT_OVERSIZE_WAY_STEP_AND_SLEEVES = 3,
  /**
   * Bores that go back stay as they are, and the others take a sleeve and are bored to the standard size.
   */
  GAUGEPOINT_OVERSIZE_WAY_SLEEVES_ALONE = 4,
} GaugepointOversizeWay;

/**
 * What is done to a bore.
 */
typedef enum GaugepointBoreActionKind {
  /**
   * It is bored to a step.
   */
  GAUGEPOINT_BORE_ACTION_KIND_BORE = 1,
  /**
   * It takes a sleeve and is bored to a step.
   */
  GAUGEPOINT_BORE_ACTION_KIND_SLEEVE = 2,
  /**
   * It stays as it is, with its piston.
   */
  GAUGEPOINT_BORE_ACTION_KIND_LEAVE = 3,
} GaugepointBoreActionKind;

/**
 * Why a way to bring a block back is ruled out.
 */
typedef enum GaugepointOversizeReason {
  /**
   * A bore is not clean at the step: it needs `value_mm`.
   */
  GAUGEPOINT_OVERSIZE_REASON_NOT_CLEAN = 1,
  /**
   * The wall of a bore would be too thin: it allows `value_mm`.
   */
  GAUGEPOINT_OVERSIZE_REASON_WALL_TOO_THIN = 2,
  /**
   * The step is larger than the gasket allows, `value_mm`.
   */
  GAUGEPOINT_OVERSIZE_REASON_GASKET_TOO_SMALL = 3,
  /**
   * There are not enough pistons of a step.
   */
  GAUGEPOINT_OVERSIZE_REASON_TOO_FEW_PISTONS = 4,
  /**
   * A bore needs a sleeve and may not take one.
   */
  GAUGEPOINT_OVERSIZE_REASON_NO_SLEEVE = 5,
} GaugepointOversizeReason;

/**
 * Why a row of liners is ruled out.
 */
typedef enum GaugepointShimReason {
  /**
   * The seat of the liner is too uneven: not fit to shim.
   */
  GAUGEPOINT_SHIM_REASON_UNEVEN = 1,
  /**
   * The seat of the liner is cupped: not fit to shim.
   */
  GAUGEPOINT_SHIM_REASON_CUPPED = 2,
  /**
   * No stack of the shims brings the liner within its limits.
   */
  GAUGEPOINT_SHIM_REASON_NO_STACK = 3,
  /**
   * No stack of the liner goes with those before it by the rule of neighbours.
   */
  GAUGEPOINT_SHIM_REASON_NEIGHBOURS = 4,
  /**
   * From the liner on there are too few shims.
   */
  GAUGEPOINT_SHIM_REASON_TOO_FEW_SHIMS = 5,
} GaugepointShimReason;

/**
 * What is done to a ring.
 */
typedef enum GaugepointFilingOutcome {
  /**
   * It has its gap.
   */
  GAUGEPOINT_FILING_OUTCOME_FITS = 1,
  /**
   * It is filed.
   */
  GAUGEPOINT_FILING_OUTCOME_FILE = 2,
  /**
   * Its gap is too wide: another ring.
   */
  GAUGEPOINT_FILING_OUTCOME_TOO_WIDE = 3,
} GaugepointFilingOutcome;

/**
 * A parameter of a finish, by its place; the names are those of ISO 13565-2.
 */
typedef enum GaugepointFinishParameter {
  /**
   * Reduced peak height, um.
   */
  GAUGEPOINT_FINISH_PARAMETER_RPK = 0,
  /**
   * Core height, um.
   */
  GAUGEPOINT_FINISH_PARAMETER_RK = 1,
  /**
   * Reduced valley depth, um.
   */
  GAUGEPOINT_FINISH_PARAMETER_RVK = 2,
  /**
   * Material ratio where the peaks end, %.
   */
  GAUGEPOINT_FINISH_PARAMETER_MR1 = 3,
  /**
   * Material ratio where the valleys begin, %.
   */
  GAUGEPOINT_FINISH_PARAMETER_MR2 = 4,
  /**
   * Angle between the two directions of the marks, degrees.
   */
  GAUGEPOINT_FINISH_PARAMETER_CROSSHATCH = 5,
} GaugepointFinishParameter;

/**
 * What is found of a parameter of a finish.
 */
typedef enum GaugepointFinishFinding {
  /**
   * Within its limits.
   */
  GAUGEPOINT_FINISH_FINDING_IN = 1,
  /**
   * Outside them.
   */
  GAUGEPOINT_FINISH_FINDING_OUT = 2,
  /**
   * Neither is proven.
   */
  GAUGEPOINT_FINISH_FINDING_NOT_PROVEN = 3,
  /**
   * There are limits and no value.
   */
  GAUGEPOINT_FINISH_FINDING_NOT_GIVEN = 4,
  /**
   * There is nothing to judge by.
   */
  GAUGEPOINT_FINISH_FINDING_NO_LIMIT = 5,
} GaugepointFinishFinding;

/**
 * Where a finding was made.
 */
typedef enum GaugepointPlace {
  /**
   * Top of the piston.
   */
  GAUGEPOINT_PLACE_CROWN = 1,
  /**
   * Land above the top ring.
   */
  GAUGEPOINT_PLACE_TOP_LAND = 2,
  /**
   * Land between rings.
   */
  GAUGEPOINT_PLACE_RING_LAND = 3,
  /**
   * Groove of a ring.
   */
  GAUGEPOINT_PLACE_RING_GROOVE = 4,
  /**
   * Skirt.
   */
  GAUGEPOINT_PLACE_SKIRT = 5,
  /**
   * Boss of the pin.
   */
  GAUGEPOINT_PLACE_PIN_BOSS = 6,
  /**
   * Bore of the pin.
   */
  GAUGEPOINT_PLACE_PIN_BORE = 7,
  /**
   * Retaining ring and its groove.
   */
  GAUGEPOINT_PLACE_PIN_RETENTION = 8,
  /**
   * Wall of the bore.
   */
  GAUGEPOINT_PLACE_BORE_WALL = 9,
  /**
   * Underside of the crown.
   */
  GAUGEPOINT_PLACE_CROWN_UNDERSIDE = 10,
  /**
   * A ring.
   */
  GAUGEPOINT_PLACE_RING = 11,
  /**
   * Edges and bridges of ports.
   */
  GAUGEPOINT_PLACE_PORTS = 12,
  /**
   * Outside of a liner.
   */
  GAUGEPOINT_PLACE_LINER_OUTSIDE = 13,
  /**
   * Flange of a liner.
   */
  GAUGEPOINT_PLACE_LINER_FLANGE = 14,
  /**
   * Connecting rod.
   */
  GAUGEPOINT_PLACE_ROD = 15,
} GaugepointPlace;

/**
 * What was seen.
 */
typedef enum GaugepointWhat {
  /**
   * Carbon.
   */
  GAUGEPOINT_WHAT_CARBON = 1,
  /**
   * Scuffing: smeared metal along the stroke.
   */
  GAUGEPOINT_WHAT_SCUFFING = 2,
  /**
   * Scoring: single grooves along the stroke.
   */
  GAUGEPOINT_WHAT_SCORING = 3,
  /**
   * Seizure: torn and welded metal.
   */
  GAUGEPOINT_WHAT_SEIZURE = 4,
  /**
   * A crack.
   */
  GAUGEPOINT_WHAT_CRACK = 5,
  /**
   * A wear path that runs diagonally.
   */
  GAUGEPOINT_WHAT_DIAGONAL_WEAR = 6,
  /**
   * Coating worn through.
   */
  GAUGEPOINT_WHAT_COATING_WORN = 7,
  /**
   * Coating flaking off.
   */
  GAUGEPOINT_WHAT_COATING_FLAKING = 8,
  /**
   * Melted or pitted metal.
   */
  GAUGEPOINT_WHAT_EROSION = 9,
  /**
   * Marks of a blow.
   */
  GAUGEPOINT_WHAT_IMPACT = 10,
  /**
   * A widened or stepped ring groove.
   */
  GAUGEPOINT_WHAT_GROOVE_WEAR = 11,
  /**
   * A retaining ring that is loose or gone.
   */
  GAUGEPOINT_WHAT_RETAINING_RING_LOOSE = 12,
  /**
   * A ring that does not move in its groove.
   */
  GAUGEPOINT_WHAT_RING_STUCK = 13,
  /**
   * Dull wear over an area.
   */
  GAUGEPOINT_WHAT_MATT_WEAR = 14,
  /**
   * A piece broken out.
   */
  GAUGEPOINT_WHAT_FRACTURE = 15,
  /**
   * A hole.
   */
  GAUGEPOINT_WHAT_HOLE = 16,
  /**
   * A bright, polished area.
   */
  GAUGEPOINT_WHAT_POLISH = 17,
  /**
   * Pits.
   */
  GAUGEPOINT_WHAT_PITTING = 18,
  /**
   * Brown or blue from heat.
   */
  GAUGEPOINT_WHAT_DISCOLOURATION = 19,
  /**
   * Bent metal.
   */
  GAUGEPOINT_WHAT_BEND = 20,
} GaugepointWhat;

/**
 * What is asked about a finding.
 */
typedef enum GaugepointQuestion {
  /**
   * Are both thrust faces marked alike?
   */
  GAUGEPOINT_QUESTION_BOTH_FACES = 1,
  /**
   * Is the ring zone clean?
   */
  GAUGEPOINT_QUESTION_RING_ZONE_CLEAN = 2,
  /**
   * Did it come within the first hours after a rebuild?
   */
  GAUGEPOINT_QUESTION_SOON_AFTER_REBUILD = 3,
  /**
   * Is the metal dark, smeared or torn (no: bright and only polished)?
   */
  GAUGEPOINT_QUESTION_DARK_AND_TORN = 4,
  /**
   * Do the marks lie half-way between the boss and the middle of the panel?
   */
  GAUGEPOINT_QUESTION_AT_FORTY_FIVE = 5,
  /**
   * Is it heaviest at the crown and lighter toward the skirt?
   */
  GAUGEPOINT_QUESTION_FROM_THE_CROWN = 6,
  /**
   * Is the bottom edge alone marked?
   */
  GAUGEPOINT_QUESTION_LOWER_EDGE_ALONE = 7,
  /**
   * Was the engine loaded before it was warm?
   */
  GAUGEPOINT_QUESTION_LOADED_COLD = 8,
  /**
   * Does the pin turn freely in its boss?
   */
  GAUGEPOINT_QUESTION_PIN_TURNS_FREELY = 9,
  /**
   * Is the deposit wet or oily?
   */
  GAUGEPOINT_QUESTION_OILY = 10,
  /**
   * Is one side much heavier than the other?
   */
  GAUGEPOINT_QUESTION_ONE_SIDED = 11,
  /**
   * Is coating or tin still there in the lows of the marks?
   */
  GAUGEPOINT_QUESTION_COATING_IN_THE_LOWS = 12,
  /**
   * Was coolant short or the flow blocked?
   */
  GAUGEPOINT_QUESTION_COOLANT_SHORT = 13,
  /**
   * Was oil short, or its jet or gallery blocked?
   */
  GAUGEPOINT_QUESTION_OIL_SHORT = 14,
  /**
   * Is there grit in the oil, the filter or the intake?
   */
  GAUGEPOINT_QUESTION_GRIT_FOUND = 15,
  /**
   * Is the oil thinned by fuel, or did the cylinder misfire?
   */
  GAUGEPOINT_QUESTION_FUEL_IN_OIL = 16,
  /**
   * Is the broken or melted edge pitted, as if it had been blasted with sand?
   */
  GAUGEPOINT_QUESTION_PITTED_EDGE = 17,
  /**
   * Is the surface that melted smooth?
   */
  GAUGEPOINT_QUESTION_SMOOTH_MELT = 18,
  /**
   * Was the engine run for long above its load?
   */
  GAUGEPOINT_QUESTION_OVERLOADED = 19,
  /**
   * Is the mark the shape of a valve or of the head?
   */
  GAUGEPOINT_QUESTION_SHAPE_OF_VALVE = 20,
  /**
   * Does the bore measure out of shape with the plate on and in shape without it, or the other way?
   */
  GAUGEPOINT_QUESTION_SHAPE_BY_CLAMPING = 21,
  /**
   * Does this piston stand lower than the others at top dead centre?
   */
  GAUGEPOINT_QUESTION_STANDS_LOW = 22,
  /**
   * Was a retaining ring used again, or of another pattern?
   */
  GAUGEPOINT_QUESTION_RING_USED_AGAIN = 23,
  /**
   * Is the rod bent or twisted by its gauge?
   */
  GAUGEPOINT_QUESTION_ROD_BENT = 24,
  /**
   * Is the piston forged?
   */
  GAUGEPOINT_QUESTION_FORGED = 25,
  /**
   * Is the pin pressed into the rod?
   */
  GAUGEPOINT_QUESTION_PIN_PRESSED = 26,
  /**
   * Is the pin held by retaining rings?
   */
  GAUGEPOINT_QUESTION_PIN_IN_RETAINING_RINGS = 27,
  /**
   * Has the skirt struts of steel cast in?
   */
  GAUGEPOINT_QUESTION_SKIRT_STRUTTED = 28,
  /**
   * Is the alloy hypereutectic?
   */
  GAUGEPOINT_QUESTION_HYPEREUTECTIC = 29,
} GaugepointQuestion;

/**
 * What a cause is about.
 */
typedef enum GaugepointGroup {
  /**
   * No fault.
   */
  GAUGEPOINT_GROUP_NORMAL = 1,
  /**
   * Too little room, or room in the wrong place.
   */
  GAUGEPOINT_GROUP_CLEARANCE = 2,
  /**
   * No film of oil.
   */
  GAUGEPOINT_GROUP_LUBRICATION = 3,
  /**
   * Too hot.
   */
  GAUGEPOINT_GROUP_HEAT = 4,
  /**
   * Fuel, ignition, injection.
   */
  GAUGEPOINT_GROUP_COMBUSTION = 5,
  /**
   * Grit and broken pieces.
   */
  GAUGEPOINT_GROUP_DIRT = 6,
  /**
   * Parts that do not stand true.
   */
  GAUGEPOINT_GROUP_ALIGNMENT = 7,
  /**
   * Work that was done wrongly.
   */
  GAUGEPOINT_GROUP_ASSEMBLY = 8,
  /**
   * Load and fatigue.
   */
  GAUGEPOINT_GROUP_LOAD = 9,
  /**
   * Worn parts.
   */
  GAUGEPOINT_GROUP_WEAR = 10,
  /**
   * Corrosion and cavitation.
   */
  GAUGEPOINT_GROUP_CORROSION = 11,
} GaugepointGroup;

/**
 * A cause of damage.
 */
typedef enum GaugepointCause {
  /**
   * Running as it should.
   */
  GAUGEPOINT_CAUSE_NORMAL_RUNNING = 1,
  /**
   * Running-in.
   */
  GAUGEPOINT_CAUSE_RUNNING_IN = 2,
  /**
   * A coating that is made to wear to shape.
   */
  GAUGEPOINT_CAUSE_COATING_WEARS_TO_SHAPE = 3,
  /**
   * Oil comes past rings or guides.
   */
  GAUGEPOINT_CAUSE_OIL_PAST_RINGS_OR_GUIDES = 4,
  /**
   * One ring or one guide lets oil through.
   */
  GAUGEPOINT_CAUSE_ONE_RING_OR_GUIDE = 5,
  /**
   * Gas blows past the rings.
   */
  GAUGEPOINT_CAUSE_BLOW_BY = 6,
  /**
   * The piston ran too hot.
   */
  GAUGEPOINT_CAUSE_PISTON_TOO_HOT = 7,
  /**
   * Long idling, or an oil that cokes.
   */
  GAUGEPOINT_CAUSE_IDLING_OR_OIL = 8,
  /**
   * Service wear of the coating.
   */
  GAUGEPOINT_CAUSE_COATING_WORN = 9,
  /**
   * The coating was not bonded.
   */
  GAUGEPOINT_CAUSE_COATING_NOT_BONDED = 10,
  /**
   * The bore is too small for the piston.
   */
  GAUGEPOINT_CAUSE_BORE_TOO_SMALL = 11,
  /**
   * Bolts, plate, gasket or liner seat pull the bore out of shape.
   */
  GAUGEPOINT_CAUSE_BORE_PULLED_BY_CLAMPING = 12,
  /**
   * The bore is tight at its bottom.
   */
  GAUGEPOINT_CAUSE_BORE_TIGHT_BELOW = 13,
  /**
   * The skirt has the wrong ovality.
   */
  GAUGEPOINT_CAUSE_WRONG_OVALITY = 14,
  /**
   * The piston grew before the bore did.
   */
  GAUGEPOINT_CAUSE_LOADED_BEFORE_WARM = 15,
  /**
   * Struts hold the skirt where it should give.
   */
  GAUGEPOINT_CAUSE_SKIRT_HELD_BY_STRUTS = 16,
  /**
   * The pin is tight in its boss.
   */
  GAUGEPOINT_CAUSE_PIN_TIGHT = 17,
  /**
   * The pin got no oil.
   */
  GAUGEPOINT_CAUSE_PIN_DRY = 18,
  /**
   * The press fit of the pin squeezes the boss or the rod eye.
   */
  GAUGEPOINT_CAUSE_PRESS_FIT_TOO_TIGHT = 19,
  /**
   * The boss region ran too hot.
   */
  GAUGEPOINT_CAUSE_BOSS_TOO_HOT = 20,
  /**
   * The oil film broke at one place: jet, gallery, level.
   */
  GAUGEPOINT_CAUSE_OIL_FILM_LOST = 21,
  /**
   * The whole engine lost its oil.
   */
  GAUGEPOINT_CAUSE_OIL_LOST = 22,
  /**
   * Fuel washed the oil off the wall.
   */
  GAUGEPOINT_CAUSE_FUEL_WASH = 23,
  /**
   * Cooling failed at one place.
   */
  GAUGEPOINT_CAUSE_LOCAL_COOLING = 24,
  /**
   * The whole engine lost its coolant.
   */
  GAUGEPOINT_CAUSE_COOLANT_LOST = 25,
  /**
   * Mixture, timing or load made the crown too hot.
   */
  GAUGEPOINT_CAUSE_CROWN_TOO_HOT = 26,
  /**
   * Knock.
   */
  GAUGEPOINT_CAUSE_KNOCK = 27,
  /**
   * Ignition by a hot spot.
   */
  GAUGEPOINT_CAUSE_PRE_IGNITION = 28,
  /**
   * Late or dribbling injection.
   */
  GAUGEPOINT_CAUSE_INJECTION_FAULT = 29,
  /**
   * Abrasive dirt in the oil.
   */
  GAUGEPOINT_CAUSE_GRIT_IN_OIL = 30,
  /**
   * Pieces or dust between ring and wall.
   */
  GAUGEPOINT_CAUSE_PIECES_OR_DUST = 31,
  /**
   * A bent or twisted rod.
   */
  GAUGEPOINT_CAUSE_ROD_BENT_OR_TWISTED = 32,
  /**
   * A bore that is not square to the crankshaft.
   */
  GAUGEPOINT_CAUSE_BORE_NOT_SQUARE = 33,
  /**
   * A force along the pin.
   */
  GAUGEPOINT_CAUSE_FORCE_ALONG_PIN = 34,
  /**
   * A wrong or used retaining ring.
   */
  GAUGEPOINT_CAUSE_WRONG_RETAINING_RING = 35,
  /**
   * A valve or the head met the piston.
   */
  GAUGEPOINT_CAUSE_MET_VALVE_OR_HEAD = 36,
  /**
   * Overload.
   */
  GAUGEPOINT_CAUSE_OVERLOAD = 37,
  /**
   * Cracks by heat and cold in turn.
   */
  GAUGEPOINT_CAUSE_THERMAL_FATIGUE = 38,
  /**
   * Cracks by load cycles.
   */
  GAUGEPOINT_CAUSE_LOAD_FATIGUE = 39,
  /**
   * A brittle alloy that was struck or knocked.
   */
  GAUGEPOINT_CAUSE_BRITTLE_ALLOY = 40,
  /**
   * Rings that were loose in their grooves.
   */
  GAUGEPOINT_CAUSE_LOOSE_RINGS = 41,
  /**
   * Cavitation of the coolant.
   */
  GAUGEPOINT_CAUSE_CAVITATION = 42,
  /**
   * Wrong protrusion of the liner, or a dirty seat.
   */
  GAUGEPOINT_CAUSE_LINER_SEAT = 43,
  /**
   * The cooling jet is missing or misses.
   */
  GAUGEPOINT_CAUSE_JET_MISSING = 44,
  /**
   * The bridge between the ports was not relieved.
   */
  GAUGEPOINT_CAUSE_BRIDGE_NOT_RELIEVED = 45,
  /**
   * Fuel, coolant or oil filled the cylinder.
   */
  GAUGEPOINT_CAUSE_LIQUID_LOCK = 46,
} GaugepointCause;

/**
 * A law of expansion, made by gaugepoint_expansion_new. It never changes.
 */
typedef struct GaugepointExpansion GaugepointExpansion;

/**
 * A function of contributors; made by gaugepoint_function_from_formula, gaugepoint_function_of_engine or
 * gaugepoint_function_of_callback, freed by gaugepoint_function_free and by nothing else.
 *
 * It never changes, and may be asked from any number of threads at once.
 */
typedef struct GaugepointFunction GaugepointFunction;

/**
 * A bore with the material of its wall, at its temperatures. It never changes; any number of threads may ask it at once.
 */
typedef struct GaugepointHotBore GaugepointHotBore;

/**
 * One piston in one bore at its temperatures, ready to be asked. It never changes; any number of threads may ask it at once.
 */
typedef struct GaugepointHotFit GaugepointHotFit;

/**
 * A piston with its materials, at its temperatures. It never changes; any number of threads may ask it at once.
 */
typedef struct GaugepointHotPiston GaugepointHotPiston;

/**
 * A document with its report, made by gaugepoint_report_new. It never changes.
 */
typedef struct GaugepointReport GaugepointReport;

/**
 * A linear stack; made by gaugepoint_stack_new, freed by gaugepoint_stack_free and by nothing else.
 *
 * Lengths are in one unit, the caller's. It may be asked from any number of threads at once; while it is added to or
 * freed, nothing else may use it.
 */
typedef struct GaugepointStack GaugepointStack;

/**
 * What was refused, and why. Belongs to the caller; see ERROR at the head.
 *
 * Every text ends with a NUL.
 */
typedef struct GaugepointError {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * The status that was returned.
   */
  int32_t status;
  /**
   * 1 when `value` is given, else 0.
   */
  int32_t has_value;
  /**
   * 1 when `lower` is given, else 0.
   */
  int32_t has_lower;
  /**
   * 1 when `upper` is given, else 0.
   */
  int32_t has_upper;
  /**
   * The refused value, in `unit`; NaN when not given.
   */
  double value;
  /**
   * Smallest accepted value, in `unit`; NaN when not given.
   */
  double lower;
  /**
   * Largest accepted value, in `unit`; NaN when not given.
   */
  double upper;
  /**
   * Unit of the three numbers: "mm", "C", "K", "1/K", "deg", "1" (a pure number) or empty.
   */
  char unit[16];
  /**
   * Name of the parameter, or JSON Pointer (RFC 6901) of the refused field in the job; empty when it is the whole text.
   */
  char field[256];
  /**
   * What was refused, as it was given.
   */
  char refused[336];
  /**
   * Why.
   */
  char reason[512];
  /**
   * What was probably meant; empty when no slip of unit or of spelling explains it.
   */
  char did_you_mean[128];
  /**
   * All of this in one line.
   */
  char message[1024];
} GaugepointError;

/**
 * A column of numbers that need not stand side by side.
 */
typedef struct GaugepointColumn {
  /**
   * The number of the first row.
   */
  const double *values;
  /**
   * Bytes from a row to the next: any number; 0 gives every row the same number.
   */
  ptrdiff_t stride;
} GaugepointColumn;

/**
 * Mean and spread of a sample; see RECORDS at the head.
 */
typedef struct GaugepointSample {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * Number of values.
   */
  size_t count;
  /**
   * Arithmetic mean.
   */
  double mean;
  /**
   * Experimental standard deviation, count - 1 degrees of freedom.
   */
  double standard_deviation;
  /**
   * Standard deviation of the mean.
   */
  double deviation_of_mean;
  /**
   * Correlation of each value with the next; 0 when all are equal.
   */
  double lag_1_correlation;
} GaugepointSample;

/**
 * One-way analysis of variance; see RECORDS at the head.
 */
typedef struct GaugepointOneWay {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * 1 when `f` is given, else 0: nothing varies within the groups.
   */
  int32_t has_f;
  /**
   * 1 when `r_squared` is given, else 0: nothing varies at all.
   */
  int32_t has_r_squared;
  /**
   * Sum of squares between groups.
   */
  double between;
  /**
   * Degrees of freedom between groups.
   */
  double between_dof;
  /**
   * Sum of squares within groups.
   */
  double within;
  /**
   * Degrees of freedom within groups.
   */
  double within_dof;
  /**
   * Ratio of the mean squares.
   */
  double f;
  /**
   * Share of the variation that is between groups.
   */
  double r_squared;
  /**
   * Pooled standard deviation within groups.
   */
  double pooled_deviation;
} GaugepointOneWay;

/**
 * A standard deviation of a study, its share, and its confidence interval.
 */
typedef struct GaugepointComponent {
  /**
   * Standard deviation, in the unit of the readings.
   */
  double deviation;
  /**
   * Ratio to the total deviation. The ratios do not add to 1; their squares do.
   */
  double of_total;
  /**
   * Lower end of the 95 % confidence interval of the deviation; NaN when not given.
   */
  double lower;
  /**
   * Upper end of it; NaN when not given.
   */
  double upper;
} GaugepointComponent;

/**
 * A line of the analysis of variance of a study.
 */
typedef struct GaugepointLine {
  /**
   * Sum of squares.
   */
  double squares;
  /**
   * Degrees of freedom.
   */
  double dof;
  /**
   * Mean square.
   */
  double mean;
  /**
   * Ratio to the mean square of the equipment; NaN when not given, and for the equipment itself.
   */
  double f;
  /**
   * Probability of a ratio as large by chance; NaN where `f` is.
   */
  double p;
} GaugepointLine;

/**
 * What a gauge study finds; see RECORDS at the head.
 */
typedef struct GaugepointStudy {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * 1 when `categories` is given, else 0: the gauge shows no variation.
   */
  int32_t has_categories;
  /**
   * 1 when `repeatability` has its interval, else 0.
   */
  int32_t has_repeatability_interval;
  /**
   * 1 when `reproducibility` has its interval, else 0.
   */
  int32_t has_reproducibility_interval;
  /**
   * 1 when `gauge` has its interval, else 0.
   */
  int32_t has_gauge_interval;
  /**
   * 1 when `part` has its interval, else 0.
   */
  int32_t has_part_interval;
  /**
   * 1 when the four lines and `total_squares` are given, else 0: always by variance, never by ranges.
   */
  int32_t has_table;
  /**
   * 1 when the lines of appraiser, part and interaction have `f` and `p`, else 0: the repeats do not vary.
   */
  int32_t has_ratios;
  /**
   * 1 when the interaction was counted as repeats, else 0.
   */
  int32_t pooled;
  /**
   * Repeatability: the same appraiser, the same part ("equipment variation").
   */
  struct GaugepointComponent repeatability;
  /**
   * Reproducibility: between appraisers, interaction included ("appraiser variation").
   */
  struct GaugepointComponent reproducibility;
  /**
   * Both together ("gauge repeatability and reproducibility").
   */
  struct GaugepointComponent gauge;
  /**
   * Between parts.
   */
  struct GaugepointComponent part;
  /**
   * Deviation of everything together.
   */
  double total;
  /**
   * 1.41 part / gauge, not truncated; its whole part is the number of distinct categories. NaN when not given.
   */
  double categories;
  /**
   * Between appraisers; all numbers NaN when there is no table, as in the next four fields.
   */
  struct GaugepointLine appraiser;
  /**
   * Between parts.
   */
  struct GaugepointLine parts;
  /**
   * Appraiser by part.
   */
  struct GaugepointLine interaction;
  /**
   * Repeats.
   */
  struct GaugepointLine equipment;
  /**
   * Sum of squares about the grand mean.
   */
  double total_squares;
  /**
   * 1 when `appraiser_residual_f` and `appraiser_residual_p` are given, else 0: no table, or the residual is 0.
   */
  int32_t has_appraiser_residual;
  /**
   * 1 when `part_residual_f` and `part_residual_p` are given, else 0.
   */
  int32_t has_part_residual;
  /**
   * Ratio of the mean square of the appraisers to what their component is formed with: interaction and repeats together when
   * `pooled`, else the interaction.
   */
  double appraiser_residual_f;
  /**
   * Probability of a ratio as large by chance.
   */
  double appraiser_residual_p;
  /**
   * Ratio of the mean square of the parts to the same.
   */
  double part_residual_f;
  /**
   * Probability of a ratio as large by chance.
   */
  double part_residual_p;
} GaugepointStudy;

/**
 * Bias of a gauge at one size; see RECORDS at the head.
 */
typedef struct GaugepointBias {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * 1 when `dof` is given, else 0: above a million, taken as infinite.
   */
  int32_t has_dof;
  /**
   * 1 when `t` and `p` are given, else 0: the uncertainty is 0.
   */
  int32_t has_t;
  /**
   * 1 when zero lies in the interval: no bias is shown; else 0.
   */
  int32_t zero_within;
  /**
   * Always 0.
   */
  int32_t reserved;
  /**
   * Mean of the readings less the reference.
   */
  double bias;
  /**
   * Standard deviation of the readings.
   */
  double standard_deviation;
  /**
   * Standard uncertainty of the bias.
   */
  double standard_uncertainty;
  /**
   * Its degrees of freedom.
   */
  double dof;
  /**
   * Ratio of the bias to its standard uncertainty.
   */
  double t;
  /**
   * Probability of a ratio as far from zero by chance.
   */
  double p;
  /**
   * Lower end of the confidence interval of the bias.
   */
  double lower;
  /**
   * Upper end of it.
   */
  double upper;
} GaugepointBias;

/**
 * How the bias of a gauge depends on the size; see RECORDS at the head.
 */
typedef struct GaugepointLinearity {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * 1 when `intercept_t` and `intercept_p` are given, else 0: the line leaves no residuals.
   */
  int32_t has_intercept_t;
  /**
   * 1 when `slope_t` and `slope_p` are given, else 0: the line leaves no residuals.
   */
  int32_t has_slope_t;
  /**
   * 1 when `r_squared` is given, else 0: the bias does not vary.
   */
  int32_t has_r_squared;
  /**
   * 1 when zero lies in the confidence band at every reference value: no bias is shown; else 0.
   */
  int32_t zero_within;
  /**
   * Bias at size 0, by the line.
   */
  double intercept;
  /**
   * Its standard uncertainty.
   */
  double intercept_uncertainty;
  /**
   * Ratio of the two.
   */
  double intercept_t;
  /**
   * Probability of a ratio as far from zero by chance.
   */
  double intercept_p;
  /**
   * Bias per size.
   */
  double slope;
  /**
   * Its standard uncertainty.
   */
  double slope_uncertainty;
  /**
   * Ratio of the two.
   */
  double slope_t;
  /**
   * Probability of a ratio as far from zero by chance.
   */
  double slope_p;
  /**
   * Standard deviation of the residuals.
   */
  double residual_deviation;
  /**
   * Degrees of freedom, two fewer than the readings.
   */
  double dof;
  /**
   * Share of the variation of the bias that the line explains.
   */
  double r_squared;
} GaugepointLinearity;

/**
 * Mean bias at a size, by the line; see RECORDS at the head.
 */
typedef struct GaugepointBand {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * Mean bias.
   */
  double bias;
  /**
   * Its standard uncertainty, without the scatter of a new reading.
   */
  double standard_uncertainty;
  /**
   * Lower end of its confidence interval.
   */
  double lower;
  /**
   * Upper end of it.
   */
  double upper;
} GaugepointBand;

/**
 * The lines of a control chart; see RECORDS at the head.
 */
typedef struct GaugepointChart {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * Number of points.
   */
  size_t count;
  /**
   * Centre line: the mean of what is shown.
   */
  double centre;
  /**
   * Lower control limit; 0 for a range or a deviation that could be nothing.
   */
  double lower;
  /**
   * Upper control limit.
   */
  double upper;
  /**
   * Standard deviation of a reading within a subgroup, which the limits rest on.
   */
  double deviation;
} GaugepointChart;

/**
 * A point of a control chart.
 */
typedef struct GaugepointPoint {
  /**
   * What is shown.
   */
  double value;
  /**
   * 1 when it is beyond a control limit, else 0.
   */
  int32_t beyond;
  /**
   * 1 when it is the ninth in a row, or a later one, on one side of the centre line, else 0; never for ranges and deviations.
   */
  int32_t run;
} GaugepointPoint;

/**
 * What a warm part means for its size; see RECORDS at the head.
 */
typedef struct GaugepointSoak {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * A GaugepointAdvice.
   */
  int32_t advice;
  /**
   * 0.
   */
  int32_t reserved;
  /**
   * Error of the size when it is measured now, in mm: positive when it reads too large.
   */
  double error_mm;
  /**
   * Time until the error is what is allowed, in minutes; 0 when it already is.
   */
  double wait_min;
  /**
   * What to add to the reading when it is measured now, in mm.
   */
  double correction_mm;
  /**
   * Standard uncertainty of that correction, in mm.
   */
  double correction_uncertainty_mm;
} GaugepointSoak;

/**
 * Limits with one or two sides. A plain structure; see RECORDS at the head.
 */
typedef struct GaugepointInterval {
  /**
   * 1 when `lower` is given, else 0.
   */
  int32_t has_lower;
  /**
   * 1 when `upper` is given, else 0.
   */
  int32_t has_upper;
  /**
   * Lower limit; not read when it is not given, and NaN in a result.
   */
  double lower;
  /**
   * Upper limit; not read when it is not given, and NaN in a result.
   */
  double upper;
} GaugepointInterval;

/**
 * Is a gauge good enough for a tolerance? See RECORDS at the head.
 */
typedef struct GaugepointAdequacy {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * 1 when the uncertainty reaches what is asked, else 0.
   */
  int32_t adequate;
  /**
   * 0.
   */
  int32_t reserved;
  /**
   * Target uncertainty: the largest standard uncertainty that does.
   */
  double largest_u;
  /**
   * Tolerance divided by 2 U, U = 2 u, with the uncertainty given.
   */
  double ratio;
  /**
   * Share of the tolerance that is left to accept in; below 0 when the guard bands overlap.
   */
  double zone;
} GaugepointAdequacy;

/**
 * What a gauge moved by between two checks on its master; see RECORDS at the head.
 */
typedef struct GaugepointDrift {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * Reading after less reading before, in mm.
   */
  double drift_mm;
  /**
   * Standard uncertainty that it adds to one reading in between: rectangular, half-width the drift.
   */
  double uncertainty_mm;
  /**
   * The part of it that all readings in between share; it cancels from their differences.
   */
  double shared_mm;
  /**
   * The part that each has for itself.
   */
  double own_mm;
} GaugepointDrift;

/**
 * How two results for one quantity stand to each other; see RECORDS at the head.
 */
typedef struct GaugepointAgreement {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * 1 when `e_n` is at most 1, else 0: look again.
   */
  int32_t agree;
  /**
   * 0.
   */
  int32_t reserved;
  /**
   * |difference| / sqrt(U1^2 + U2^2).
   */
  double e_n;
  /**
   * First value less the second.
   */
  double difference;
  /**
   * Expanded uncertainty of the first.
   */
  double first_expanded;
  /**
   * Expanded uncertainty of the second.
   */
  double second_expanded;
} GaugepointAgreement;

/**
 * Points of a station list against their pattern; see RECORDS at the head.
 */
typedef struct GaugepointOutliers {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * 1 when `farthest` and its distance are given, else 0: nothing scatters.
   */
  int32_t has_farthest;
  /**
   * 0.
   */
  int32_t reserved;
  /**
   * Degrees of freedom of `deviation`.
   */
  size_t dof;
  /**
   * Number of points that are farther off than `critical`.
   */
  size_t beyond;
  /**
   * Place of the point farthest off, from 0; 0 when not given.
   */
  size_t farthest;
  /**
   * Its distance from the pattern in standard deviations; NaN when not given.
   */
  double farthest_g;
  /**
   * Distance that no point of as many reaches by chance, except with the probability asked for.
   */
  double critical;
  /**
   * Standard deviation about the pattern.
   */
  double deviation;
} GaugepointOutliers;

/**
 * A row of the table of plausible values; see RECORDS at the head. Several rows may have one name.
 */
typedef struct GaugepointRow {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * Name of the quantity.
   */
  const char *name;
  /**
   * What it is called.
   */
  const char *label;
  /**
   * Unit of a value.
   */
  const char *unit;
  /**
   * What the ranges are multiples of, "bore" or "pin"; NULL when they stand in the unit themselves.
   */
  const char *of;
  /**
   * Where the ranges come from.
   */
  const char *reason;
  /**
   * What usually happened when a value is impossible.
   */
  const char *slips;
  /**
   * Smallest possible value.
   */
  double possible_lower;
  /**
   * Largest possible value.
   */
  double possible_upper;
  /**
   * Smallest usual value.
   */
  double usual_lower;
  /**
   * Largest usual value.
   */
  double usual_upper;
} GaugepointRow;

/**
 * What the points leave over a reference: roundness, cylindricity or flatness.
 */
typedef struct GaugepointForm {
  /**
   * Outside and inside together (RONt, CYLt).
   */
  double total_mm;
  /**
   * Largest distance of a point beyond the reference, away from the centre; of a plane: above it.
   */
  double outside_mm;
  /**
   * Largest distance of a point within the reference; of a plane: below it.
   */
  double inside_mm;
  /**
   * Root of the mean square of all distances (RONq, CYLq about the least-squares reference).
   */
  double rms_mm;
} GaugepointForm;

/**
 * A circle that points were fitted by; see RECORDS at the head.
 */
typedef struct GaugepointCircle {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * Centre.
   */
  double x_mm;
  /**
   * Centre.
   */
  double y_mm;
  /**
   * Radius; of a minimum zone the mean of its two.
   */
  double radius_mm;
  /**
   * What the points leave: roundness.
   */
  struct GaugepointForm form;
} GaugepointCircle;

/**
 * A cylinder that points were fitted by; see RECORDS at the head.
 */
typedef struct GaugepointCylinder {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * The axis at `z_mm`.
   */
  double x_mm;
  /**
   * The axis at `z_mm`.
   */
  double y_mm;
  /**
   * Depth of that point of the axis: in the middle of the first and the last point.
   */
  double z_mm;
  /**
   * How far the axis moves along x for each mm of depth.
   */
  double slope_x;
  /**
   * How far the axis moves along y for each mm of depth.
   */
  double slope_y;
  /**
   * Radius; of a minimum zone the mean of its two.
   */
  double radius_mm;
  /**
   * What the points leave: cylindricity.
   */
  struct GaugepointForm form;
} GaugepointCylinder;

/**
 * A plane that points were fitted by; see RECORDS at the head.
 */
typedef struct GaugepointPlane {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * 1 when `direction_deg` is given, else 0: the plane has no tilt.
   */
  int32_t has_direction;
  /**
   * Always 0.
   */
  int32_t reserved;
  /**
   * A point of the plane: the mean of the points along x and y.
   */
  double x_mm;
  /**
   * A point of the plane.
   */
  double y_mm;
  /**
   * A point of the plane; of a minimum zone in the middle of its two.
   */
  double z_mm;
  /**
   * Rise along z for each mm along x.
   */
  double slope_x;
  /**
   * Rise along z for each mm along y.
   */
  double slope_y;
  /**
   * Rise for each mm in the direction of steepest rise: the tilt.
   */
  double slope;
  /**
   * Direction of steepest rise, from x toward y, -180 to 180 degrees.
   */
  double direction_deg;
  /**
   * What the points leave: flatness.
   */
  struct GaugepointForm form;
} GaugepointPlane;

/**
 * How a bore's axis stands to the main line; see RECORDS at the head.
 */
typedef struct GaugepointBoreAxis {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * Shortest distance between the two lines.
   */
  double offset_mm;
  /**
   * Where along the main line that is, from its first point toward its last.
   */
  double station_mm;
  /**
   * How far the angle between the lines is from a right one; positive when the bore, from its first point to its
   * last, leans toward the last point of the main line.
   */
  double out_of_square_mrad;
  /**
   * Length of the bore from its first point to its last, along its axis.
   */
  double length_mm;
  /**
   * The same as `out_of_square_mrad`, over `length_mm`.
   */
  double out_of_square_mm;
  /**
   * Twice the largest distance of a point of the bore from its straight axis.
   */
  double bore_straightness_mm;
  /**
   * Twice the largest distance of a point of the main line from its straight line.
   */
  double main_straightness_mm;
} GaugepointBoreAxis;

/**
 * One order of a section: cos_mm cos(n angle) + sin_mm sin(n angle).
 */
typedef struct GaugepointHarmonic {
  /**
   * Undulations in one turn, n.
   */
  size_t order;
  /**
   * 1 when `cos_mm` is given, else 0: the cosine is zero at every angle that was read.
   */
  int32_t has_cos;
  /**
   * 1 when `sin_mm` is given, else 0: the sine is zero at every angle that was read.
   */
  int32_t has_sin;
  /**
   * Cosine part.
   */
  double cos_mm;
  /**
   * Sine part.
   */
  double sin_mm;
} GaugepointHarmonic;

/**
 * A section without its harmonics, which stand in an array of their own; see RECORDS at the head.
 */
typedef struct GaugepointSection {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * Number of harmonics that were written.
   */
  size_t harmonics;
  /**
   * 1 when `x_mm` and `y_mm` are given, else 0: diameters do not show the position, nor does order 0.
   */
  int32_t has_position;
  /**
   * 1 when `residual_mm` is given, else 0: nothing is left to see it by.
   */
  int32_t has_residual;
  /**
   * Mean radius.
   */
  double mean_radius_mm;
  /**
   * Position of the axis along 0 degrees, to the first order.
   */
  double x_mm;
  /**
   * Position of the axis along 90 degrees, to the first order.
   */
  double y_mm;
  /**
   * Experimental standard deviation of a radius about the section.
   */
  double residual_mm;
  /**
   * How well the angles tell the orders apart: 1 when they are spread evenly. Noise of the readings is enlarged by about
   * its inverse.
   */
  double least_share;
} GaugepointSection;

/**
 * A row of a table over height. A plain structure; see RECORDS at the head.
 */
typedef struct GaugepointTableRow {
  /**
   * Height from the bottom edge of the skirt.
   */
  double height_mm;
  /**
   * The quantity there.
   */
  double value_mm;
} GaugepointTableRow;

/**
 * A table over height: one row holds at every height, two are a straight line, more a monotone cubic. A plain structure.
 */
typedef struct GaugepointTable {
  /**
   * The rows by rising height; may be NULL when there are none.
   */
  const struct GaugepointTableRow *rows;
  /**
   * How many there are; 0 leaves the table out.
   */
  size_t count;
} GaugepointTable;

/**
 * A part of a surface that lacks something; its edge belongs to what is around. A plain structure.
 */
typedef struct GaugepointWindow {
  /**
   * A GaugepointWindowKind.
   */
  int32_t kind;
  /**
   * Not used; 0.
   */
  int32_t reserved;
  /**
   * Angle at which it begins.
   */
  double from_deg;
  /**
   * Angle at which it ends, in the direction of rising angles: from 350 to 10 is 20 degrees wide.
   */
  double to_deg;
  /**
   * Height at which it begins.
   */
  double from_mm;
  /**
   * Height at which it ends.
   */
  double to_mm;
} GaugepointWindow;

/**
 * A skirt or a land as its drawing gives it. A plain structure; start it zeroed.
 */
typedef struct GaugepointPistonSurface {
  /**
   * A GaugepointPistonForm: which of the tables count.
   */
  int32_t form;
  /**
   * A GaugepointCounted: how `barrel`, `thrust`, `pin_axis` and `minor_thrust` are counted.
   */
  int32_t counted;
  /**
   * 1 when the two panels are given, else 0: all round.
   */
  int32_t has_panels;
  /**
   * 1 when `coating_mm` is given, else 0.
   */
  int32_t has_coating;
  /**
   * Height at which it begins.
   */
  double from_mm;
  /**
   * Height at which it ends.
   */
  double to_mm;
  /**
   * Half-width of the thrust panel; beside the panels there is no surface.
   */
  double thrust_panel_deg;
  /**
   * Half-width of the minor thrust panel.
   */
  double minor_thrust_panel_deg;
  /**
   * Coating, per side.
   */
  double coating_mm;
  /**
   * Symmetric: diameter in the thrust direction against the gauge diameter.
   */
  struct GaugepointTable barrel;
  /**
   * Symmetric: diameter in the thrust direction less that on the pin axis.
   */
  struct GaugepointTable ovality;
  /**
   * Symmetric: diameter added at 45 degrees; none is a simple oval.
   */
  struct GaugepointTable double_ovality;
  /**
   * Asymmetric: radius on the major thrust side against half the gauge diameter.
   */
  struct GaugepointTable thrust;
  /**
   * Asymmetric: radius on the pin axis against half the gauge diameter.
   */
  struct GaugepointTable pin_axis;
  /**
   * Asymmetric: radius on the minor thrust side against half the gauge diameter.
   */
  struct GaugepointTable minor_thrust;
  /**
   * Asymmetric: radius added at 45 degrees on the major thrust side; none is a simple oval.
   */
  struct GaugepointTable thrust_fourth;
  /**
   * Asymmetric: radius added at 135 degrees on the minor thrust side; none is a simple oval.
   */
  struct GaugepointTable minor_thrust_fourth;
  /**
   * Where there is no metal or no coating; may be NULL when there are none.
   */
  const struct GaugepointWindow *windows;
  /**
   * How many there are.
   */
  size_t window_count;
} GaugepointPistonSurface;

/**
 * Skirt and lands of a piston, but for its size. A plain structure.
 */
typedef struct GaugepointPiston {
  /**
   * Height of the gauge point, on the skirt at angle 0.
   */
  double gauge_height_mm;
  /**
   * The skirt first, then the lands upward.
   */
  const struct GaugepointPistonSurface *surfaces;
  /**
   * How many there are.
   */
  size_t surface_count;
} GaugepointPiston;

/**
 * The largest diameter of a section; see RECORDS at the head.
 */
typedef struct GaugepointLargest {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * Its angle, from 0 up to 180 degrees; of several the smallest.
   */
  double angle_deg;
  /**
   * The diameter.
   */
  double diameter_mm;
} GaugepointLargest;

/**
 * Something odd about the form of a piston, where it is worst. A plain structure.
 */
typedef struct GaugepointFormWarning {
  /**
   * A GaugepointOddForm.
   */
  int32_t kind;
  /**
   * 1 when `angle_deg` is given, else 0.
   */
  int32_t has_angle;
  /**
   * Place of the surface, 0 the skirt.
   */
  size_t surface;
  /**
   * Height.
   */
  double height_mm;
  /**
   * Angle of the diameter that is larger or smaller.
   */
  double angle_deg;
  /**
   * By how much it is larger or smaller, or what is odd, in mm; a slope in um/mm.
   */
  double value;
} GaugepointFormWarning;

/**
 * Measured points of a piston. A plain structure.
 */
typedef struct GaugepointPistonPoints {
  /**
   * Height of each point from the bottom edge of the skirt.
   */
  const double *heights_mm;
  /**
   * Angle of each, 0 to 360 degrees.
   */
  const double *angles_deg;
  /**
   * Radius or diameter of each.
   */
  const double *values_mm;
  /**
   * How many there are.
   */
  size_t count;
  /**
   * A GaugepointPistonReading.
   */
  int32_t reading;
  /**
   * 1 when `uncertainty_mm` is given, else 0.
   */
  int32_t has_uncertainty;
  /**
   * Standard uncertainty of one reading; it counts where no reading is left to see the scatter by.
   */
  double uncertainty_mm;
} GaugepointPistonPoints;

/**
 * What the points at one height say; diametral. A plain structure.
 */
typedef struct GaugepointPistonStation {
  /**
   * The height.
   */
  double height_mm;
  /**
   * Points there.
   */
  size_t points;
  /**
   * 1 when the uncertainties are given, else 0: nothing is left to see them by.
   */
  int32_t has_uncertainty;
  /**
   * 1 when the double ovality is given, else 0: it was not asked for.
   */
  int32_t has_double_ovality;
  /**
   * Diameter in the thrust direction.
   */
  double diameter_mm;
  /**
   * Its standard uncertainty.
   */
  double diameter_uncertainty_mm;
  /**
   * That less the diameter on the pin axis.
   */
  double ovality_mm;
  /**
   * Its standard uncertainty.
   */
  double ovality_uncertainty_mm;
  /**
   * Diameter added at 45 degrees.
   */
  double double_ovality_mm;
  /**
   * Its standard uncertainty.
   */
  double double_ovality_uncertainty_mm;
  /**
   * How well the angles tell them apart: 1 when they are spread evenly.
   */
  double least_share;
} GaugepointPistonStation;

/**
 * A surface as points say it is, without its stations and residuals; see RECORDS at the head.
 */
typedef struct GaugepointPistonFit {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * Number of stations that were written.
   */
  size_t stations;
  /**
   * Readings less unknowns.
   */
  size_t dof;
  /**
   * 1 when `deviation_mm` is given, else 0: there are no degrees of freedom.
   */
  int32_t has_deviation;
  /**
   * Not used; 0.
   */
  int32_t reserved;
  /**
   * Standard deviation of a reading about the fit, over all stations.
   */
  double deviation_mm;
} GaugepointPistonFit;

/**
 * How a piston lies and what is left, when it is held against a form, without its residuals; see RECORDS at the head.
 */
typedef struct GaugepointPistonTrace {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * Place of the largest residual, without sign.
   */
  size_t largest;
  /**
   * Readings less unknowns.
   */
  size_t dof;
  /**
   * 1 when the uncertainties are given, else 0.
   */
  int32_t has_uncertainty;
  /**
   * 1 when `deviation_mm` is given, else 0: there are no degrees of freedom.
   */
  int32_t has_deviation;
  /**
   * 1 when `x_mm` is given, else 0: the points do not see it.
   */
  int32_t has_x;
  /**
   * 1 when `y_mm` is given, else 0.
   */
  int32_t has_y;
  /**
   * 1 when `slope_x` is given, else 0.
   */
  int32_t has_slope_x;
  /**
   * 1 when `slope_y` is given, else 0.
   */
  int32_t has_slope_y;
  /**
   * Diameter of the piston less that of the form.
   */
  double size_mm;
  /**
   * Its standard uncertainty.
   */
  double size_uncertainty_mm;
  /**
   * Position of the axis along 0 degrees, at `height_mm`.
   */
  double x_mm;
  /**
   * Its standard uncertainty.
   */
  double x_uncertainty_mm;
  /**
   * Position of the axis along 90 degrees, at `height_mm`.
   */
  double y_mm;
  /**
   * Its standard uncertainty.
   */
  double y_uncertainty_mm;
  /**
   * How far the axis moves along 0 degrees for each mm of height.
   */
  double slope_x;
  /**
   * Its standard uncertainty.
   */
  double slope_x_uncertainty;
  /**
   * How far the axis moves along 90 degrees for each mm of height.
   */
  double slope_y;
  /**
   * Its standard uncertainty.
   */
  double slope_y_uncertainty;
  /**
   * Height of the position.
   */
  double height_mm;
  /**
   * Root of the mean square of the residuals.
   */
  double rms_mm;
  /**
   * Standard deviation of a reading about the fit.
   */
  double deviation_mm;
  /**
   * How well the points tell the unknowns apart: 1 when they are spread evenly.
   */
  double least_share;
} GaugepointPistonTrace;

/**
 * Where the piston stops at top dead centre; see RECORDS at the head.
 */
typedef struct GaugepointDeck {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * From the deck down to the crown; negative when the crown stands above the deck.
   */
  double deck_clearance_mm;
  /**
   * The same the other way: from the deck up to the crown.
   */
  double protrusion_mm;
  /**
   * From the crown to the head; below zero they meet.
   */
  double squish_mm;
} GaugepointDeck;

/**
 * What encloses the gas at top dead centre. A plain structure; see RECORDS at the head.
 */
typedef struct GaugepointChamber {
  /**
   * Bore.
   */
  double bore_mm;
  /**
   * Stroke.
   */
  double stroke_mm;
  /**
   * Chamber in the head, valves and plug in place; 0 is a flat head.
   */
  double head_cm3;
  /**
   * Opening of the gasket, as a diameter.
   */
  double gasket_bore_mm;
  /**
   * Gasket, compressed.
   */
  double gasket_mm;
  /**
   * From the deck down to the crown; negative for a protrusion.
   */
  double deck_clearance_mm;
  /**
   * Dish, bowl and valve pockets in the crown; negative for a dome.
   */
  double crown_cm3;
  /**
   * Crevice at the top land; 0 leaves it out, as is usual.
   */
  double crevice_cm3;
} GaugepointChamber;

/**
 * Compression ratio and the volumes behind it; see RECORDS at the head.
 */
typedef struct GaugepointCompression {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * Swept volume of the cylinder.
   */
  double swept_cm3;
  /**
   * Volume within the gasket.
   */
  double gasket_cm3;
  /**
   * Volume between deck and crown; negative for a protrusion.
   */
  double deck_cm3;
  /**
   * Everything above the piston at top dead centre.
   */
  double clearance_cm3;
  /**
   * Swept and clearance volume over the clearance volume.
   */
  double ratio;
} GaugepointCompression;

/**
 * A line of a table of gaskets: protrusions, and the gasket for them. A plain structure; see RECORDS at the head.
 */
typedef struct GaugepointGasketBand {
  /**
   * Smallest protrusion.
   */
  double from_mm;
  /**
   * Largest protrusion.
   */
  double to_mm;
  /**
   * Gasket, compressed.
   */
  double thickness_mm;
} GaugepointGasketBand;

/**
 * The gasket that a table asks for; see RECORDS at the head.
 */
typedef struct GaugepointGasketChoice {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * Place of its line in the table, from 0.
   */
  size_t band;
  /**
   * The protrusion that decided: the largest.
   */
  double largest_mm;
  /**
   * The gasket.
   */
  double thickness_mm;
  /**
   * From that crown to the head.
   */
  double squish_mm;
} GaugepointGasketChoice;

/**
 * The two dead centres of a crank with an offset pin; see RECORDS at the head.
 */
typedef struct GaugepointDeadCentres {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * From one to the other. With an offset it is more than twice the crank radius.
   */
  double stroke_mm;
  /**
   * Crank angle of top dead centre: 0 without an offset, below 0 for a pin offset to the major thrust side.
   */
  double top_deg;
  /**
   * Crank angle of bottom dead centre: 180 without an offset.
   */
  double bottom_deg;
} GaugepointDeadCentres;

/**
 * How far the piston is down, and how fast it goes down; see RECORDS at the head.
 */
typedef struct GaugepointPistonTravel {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * From top dead centre down.
   */
  double travel_mm;
  /**
   * More travel for each degree of the crank; negative on the way up.
   */
  double per_degree_mm;
} GaugepointPistonTravel;

/**
 * The two crank angles at which a piston is down by a given travel; see RECORDS at the head.
 */
typedef struct GaugepointCrankAngles {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * On the way up, before top dead centre.
   */
  double before_deg;
  /**
   * On the way down, after it.
   */
  double after_deg;
} GaugepointCrankAngles;

/**
 * The least clearance of a section, and where it is; see RECORDS at the head.
 */
typedef struct GaugepointLeastClearance {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * The clearance.
   */
  double least_mm;
  /**
   * Its angle, from 0 up to 360; of angles whose values rounding cannot tell apart, the smallest.
   */
  double angle_deg;
  /**
   * The true least value is between `least_mm` - `within_mm` and `least_mm`.
   */
  double within_mm;
} GaugepointLeastClearance;

/**
 * A liner and its block; sizes are diameters at 20 C. A plain structure; see RECORDS at the head.
 */
typedef struct GaugepointLinerParts {
  /**
   * Bore of the liner.
   */
  double bore_mm;
  /**
   * Joint: outside of the liner, bore of the block.
   */
  double seat_mm;
  /**
   * Outside of the wall that holds the liner; of a block that is no tube, of the tube that stands for it.
   */
  double block_mm;
  /**
   * Measured interference, 0 to 0.3.
   */
  double interference_mm;
  /**
   * Interference that is lost because roughness is pressed flat.
   */
  double smoothing_mm;
  /**
   * Modulus of elasticity of the liner.
   */
  double liner_modulus_mpa;
  /**
   * Poisson's ratio of the liner.
   */
  double liner_poisson;
  /**
   * Mean coefficient of expansion of the liner from 20 C.
   */
  double liner_expansion_per_k;
  /**
   * Temperature of the liner.
   */
  double liner_temperature_c;
  /**
   * Modulus of elasticity of the block.
   */
  double block_modulus_mpa;
  /**
   * Poisson's ratio of the block.
   */
  double block_poisson;
  /**
   * Mean coefficient of expansion of the block from 20 C.
   */
  double block_expansion_per_k;
  /**
   * Temperature of the block.
   */
  double block_temperature_c;
} GaugepointLinerParts;

/**
 * What becomes of a liner in its block; see RECORDS at the head.
 */
typedef struct GaugepointLinerFit {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * What to take care of; a text that lives for ever.
   */
  const char *caution;
  /**
   * 1 when `contact_lost_at_c` is given, else 0: contact is not lost between -40 C and 450 C.
   */
  int32_t has_contact_lost;
  /**
   * 0.
   */
  int32_t reserved;
  /**
   * Pressure in the joint at 20 C.
   */
  double pressure_20_mpa;
  /**
   * Pressure in the joint at the temperatures given; 0 when contact is lost.
   */
  double pressure_mpa;
  /**
   * Interference at the temperatures given; negative is the gap of a liner that lost contact.
   */
  double interference_mm;
  /**
   * Bore of the liner in the block at 20 C.
   */
  double bore_20_mm;
  /**
   * Bore of the liner in the block at the temperatures given.
   */
  double bore_mm;
  /**
   * Temperature of both parts, soaked, at which contact is lost; NaN when not given.
   */
  double contact_lost_at_c;
} GaugepointLinerFit;

/**
 * What a law of expansion says of one temperature; see RECORDS at the head.
 */
typedef struct GaugepointGrowth {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * 1 when `mean_from_20_per_k` is given, else 0: at 20 C there is no mean from 20 C.
   */
  int32_t has_mean;
  /**
   * 0.
   */
  int32_t reserved;
  /**
   * Strain from 20 C: (L - L20) / L20.
   */
  double strain;
  /**
   * Instantaneous coefficient, (1 / L20) dL/dT.
   */
  double instantaneous_per_k;
  /**
   * Mean coefficient from 20 C.
   */
  double mean_from_20_per_k;
} GaugepointGrowth;

/**
 * A built-in material; see RECORDS at the head.
 */
typedef struct GaugepointMaterial {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * Name, as documents and gaugepoint_growth_built_in take it.
   */
  const char *name;
  /**
   * Where the figures come from.
   */
  const char *source;
  /**
   * A GaugepointConfidence.
   */
  int32_t confidence;
  /**
   * A GaugepointCoefficients.
   */
  int32_t coefficients;
  /**
   * Lowest temperature its law holds at.
   */
  double from_c;
  /**
   * Highest temperature its law holds at.
   */
  double to_c;
  /**
   * Half-width of the error of its coefficient.
   */
  double permissible_error_per_k;
} GaugepointMaterial;

/**
 * A coefficient of a built-in material at, or up to, a temperature. A plain structure.
 */
typedef struct GaugepointMaterialCell {
  /**
   * The temperature.
   */
  double temperature_c;
  /**
   * The coefficient: a mean from 20 C, or instantaneous, as the material says.
   */
  double coefficient_per_k;
} GaugepointMaterialCell;

/**
 * Illustrative temperatures of a duty; see RECORDS at the head. A fit document takes them by name.
 */
typedef struct GaugepointDuty {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * Name, as documents take it.
   */
  const char *name;
  /**
   * Where the figures come from.
   */
  const char *source;
  /**
   * A GaugepointConfidence.
   */
  int32_t confidence;
  /**
   * 0.
   */
  int32_t reserved;
  /**
   * Half-width of the error of all temperatures, in K.
   */
  double permissible_error_k;
} GaugepointDuty;

/**
 * Temperatures of a piston of a duty at a share of its height. A plain structure.
 */
typedef struct GaugepointDutyPistonRow {
  /**
   * 0 at the bottom edge of the skirt, 1 at its top, 2 at the crown.
   */
  double at;
  /**
   * On the thrust axis.
   */
  double thrust_c;
  /**
   * On the pin axis.
   */
  double pin_c;
} GaugepointDutyPistonRow;

/**
 * Temperature of the wall of a duty at a share of its depth. A plain structure.
 */
typedef struct GaugepointDutyBoreRow {
  /**
   * 0 at the deck, 1 at the lowest place the skirt comes to.
   */
  double at;
  /**
   * Mean of the wall.
   */
  double wall_c;
} GaugepointDutyBoreRow;

/**
 * A law of expansion, as the functions gaugepoint_growth_... have it; its form says which fields count. A plain structure; start it zeroed.
 */
typedef struct GaugepointLaw {
  /**
   * A GaugepointLawForm.
   */
  int32_t form;
  /**
   * Not used; 0.
   */
  int32_t reserved;
  /**
   * Temperature the means start from.
   */
  double base_c;
  /**
   * The mean coefficient.
   */
  double mean_per_k;
  /**
   * Lowest temperature it holds at.
   */
  double from_c;
  /**
   * Highest temperature it holds at.
   */
  double to_c;
  /**
   * Rising temperatures of a table, `count` of them.
   */
  const double *temperatures_c;
  /**
   * Coefficients of a table per kelvin, or of a polynomial over kelvin from the constant up; `count` of them.
   */
  const double *coefficients;
  /**
   * How many there are.
   */
  size_t count;
  /**
   * Nodularity of graphite iron, in %.
   */
  double nodularity_percent;
  /**
   * Area fraction of graphite, in %.
   */
  double graphite_percent;
  /**
   * Pearlite over ferrite.
   */
  double pearlite_to_ferrite;
  /**
   * Name of a built-in material.
   */
  const char *name;
  /**
   * Its length in bytes.
   */
  size_t name_length;
} GaugepointLaw;

/**
 * How a surface of a piston grows. A plain structure.
 */
typedef struct GaugepointSurfaceGrowth {
  /**
   * Law of its material.
   */
  struct GaugepointLaw law;
  /**
   * Growth on the thrust axis over that of the material; 1 without controlled expansion.
   */
  double ratio_thrust;
  /**
   * Growth on the pin axis over that of the material; 1 without controlled expansion.
   */
  double ratio_pin;
} GaugepointSurfaceGrowth;

/**
 * Temperatures of a piston over height. A plain structure.
 */
typedef struct GaugepointPistonField {
  /**
   * Rising heights; one row holds at every height.
   */
  const double *heights_mm;
  /**
   * Temperature on the thrust axis at each.
   */
  const double *thrust_c;
  /**
   * Temperature on the pin axis at each.
   */
  const double *pin_c;
  /**
   * How many there are.
   */
  size_t count;
} GaugepointPistonField;

/**
 * Radius and diameter of a piston or a bore at one place; see RECORDS at the head.
 */
typedef struct GaugepointHotSize {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * 1 when the diameters are given, else 0: there is no surface or no wall across.
   */
  int32_t has_diameter;
  /**
   * Not used; 0.
   */
  int32_t reserved;
  /**
   * Radius at 20 C.
   */
  double cold_radius_mm;
  /**
   * Radius at its temperature.
   */
  double hot_radius_mm;
  /**
   * Diameter at 20 C: the radii at the angle and across.
   */
  double cold_diameter_mm;
  /**
   * Diameter at its temperature.
   */
  double hot_diameter_mm;
} GaugepointHotSize;

/**
 * One order of the radius of a bore over depth. A plain structure.
 */
typedef struct GaugepointBoreHarmonic {
  /**
   * Waves in one turn, 2 to 32; 1 is the position of the axis, which is no part of a clearance.
   */
  size_t order;
  /**
   * Rising depths; one row holds at every depth.
   */
  const double *depths_mm;
  /**
   * Part that is largest at 0 degrees, at each depth.
   */
  const double *cos_mm;
  /**
   * Part that is largest a quarter wave further, at each depth.
   */
  const double *sin_mm;
  /**
   * How many depths there are.
   */
  size_t count;
} GaugepointBoreHarmonic;

/**
 * Where a bore does not support the piston: a port, a relief; its edge belongs to the wall. A plain structure.
 */
typedef struct GaugepointPort {
  /**
   * Angle at which it begins.
   */
  double from_deg;
  /**
   * Angle at which it ends, in the direction of rising angles: from 350 to 10 is 20 degrees wide.
   */
  double to_deg;
  /**
   * Depth at which it begins.
   */
  double from_mm;
  /**
   * Depth at which it ends.
   */
  double to_mm;
} GaugepointPort;

/**
 * A bore as its drawing gives it. A plain structure; start it zeroed: without tables it is round and straight.
 */
typedef struct GaugepointBore {
  /**
   * Size at 20 C, over any plating.
   */
  double diameter_mm;
  /**
   * Rising depths of `deviation_mm`; may be NULL when there are none.
   */
  const double *depths_mm;
  /**
   * Mean radius at each depth less half the size.
   */
  const double *deviation_mm;
  /**
   * How many depths there are; 0 is the same everywhere.
   */
  size_t depth_count;
  /**
   * Orders of the radius; may be NULL when there are none.
   */
  const struct GaugepointBoreHarmonic *harmonics;
  /**
   * How many there are.
   */
  size_t harmonic_count;
  /**
   * Ports; may be NULL when there are none.
   */
  const struct GaugepointPort *ports;
  /**
   * How many there are.
   */
  size_t port_count;
  /**
   * 1 when `end_mm` is given, else 0: the piston does not come out of it.
   */
  int32_t has_end;
  /**
   * Not used; 0.
   */
  int32_t reserved;
  /**
   * Depth of the lower end.
   */
  double end_mm;
} GaugepointBore;

/**
 * Temperatures of the wall of a bore over depth: means over its section. A plain structure.
 */
typedef struct GaugepointBoreField {
  /**
   * Rising depths; one row holds at every depth.
   */
  const double *depths_mm;
  /**
   * Temperature of the wall at each.
   */
  const double *wall_c;
  /**
   * How many there are.
   */
  size_t count;
} GaugepointBoreField;

/**
 * How a piston moves in its bore. A plain structure.
 */
typedef struct GaugepointMotion {
  /**
   * Crank radius.
   */
  double crank_radius_mm;
  /**
   * Length of the rod.
   */
  double rod_mm;
  /**
   * Pin offset, positive toward the major thrust side.
   */
  double pin_offset_mm;
  /**
   * Crown below the deck at top dead centre, negative where it stands out.
   */
  double deck_clearance_mm;
  /**
   * From the bottom edge of the skirt to the plane of the crown that is counted against the deck.
   */
  double crown_height_mm;
} GaugepointMotion;

/**
 * Everything a hot fit is made of. A plain structure; start it zeroed.
 */
typedef struct GaugepointHotFitParts {
  /**
   * Diameter of the bare piston at its gauge point, at 20 C.
   */
  double piston_diameter_mm;
  /**
   * Its shape.
   */
  const struct GaugepointPiston *piston;
  /**
   * How its surfaces grow, one for each.
   */
  const struct GaugepointSurfaceGrowth *growth;
  /**
   * How many there are.
   */
  size_t growth_count;
  /**
   * Temperatures of the piston.
   */
  struct GaugepointPistonField piston_field;
  /**
   * The bore.
   */
  const struct GaugepointBore *bore;
  /**
   * Law of the wall that carries it.
   */
  struct GaugepointLaw bore_law;
  /**
   * Temperatures of the bore.
   */
  struct GaugepointBoreField bore_field;
  /**
   * How the piston moves; NULL when its place in the bore does not matter, or is always said as a depth.
   */
  const struct GaugepointMotion *motion;
} GaugepointHotFitParts;

/**
 * A place on the piston and in the bore. A plain structure.
 */
typedef struct GaugepointHotPlace {
  /**
   * Index of the surface: 0 is the skirt.
   */
  size_t surface;
  /**
   * 1 when `depth_mm` is given, else 0: it does not matter.
   */
  int32_t has_depth;
  /**
   * 1 when `crank_deg` is given, else 0: it does not matter, or is not known.
   */
  int32_t has_crank;
  /**
   * Angle, from 0 up to 360; 0 is the major thrust side.
   */
  double angle_deg;
  /**
   * Height above the bottom edge of the skirt.
   */
  double height_mm;
  /**
   * Depth in the bore.
   */
  double depth_mm;
  /**
   * Crank angle on the way down.
   */
  double crank_deg;
} GaugepointHotPlace;

/**
 * The smallest clearance of a surface; see RECORDS at the head.
 */
typedef struct GaugepointHotSmallest {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * On one side; negative for an overlap.
   */
  double clearance_mm;
  /**
   * The smallest clearance is certainly not below that by more than this.
   */
  double certified_within_mm;
  /**
   * Where it is.
   */
  struct GaugepointHotPlace place;
} GaugepointHotSmallest;

/**
 * Where a surface is below a clearance, without its bands; see RECORDS at the head.
 */
typedef struct GaugepointHotContact {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * How many bands there are.
   */
  size_t bands;
  /**
   * Area of the surface there.
   */
  double area_mm2;
} GaugepointHotContact;

/**
 * Angles at one height. A plain structure.
 */
typedef struct GaugepointHotBand {
  /**
   * The height.
   */
  double height_mm;
  /**
   * First angle, from 0 up to 360.
   */
  double from_deg;
  /**
   * Last angle; above 360 when the band goes over the thrust axis.
   */
  double to_deg;
} GaugepointHotBand;

/**
 * A piston moved sideways, without tilting, to where it has most room; see RECORDS at the head.
 */
typedef struct GaugepointHotBestPlaced {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * Smallest clearance on one side there.
   */
  double clearance_mm;
  /**
   * Moved toward the major thrust side.
   */
  double thrust_mm;
  /**
   * Moved along the pin, toward the front.
   */
  double pin_mm;
  /**
   * The most room of any place sideways is certainly within this of the clearance.
   */
  double certified_within_mm;
} GaugepointHotBestPlaced;

/**
 * How far the temperatures can rise until something touches; see RECORDS at the head.
 */
typedef struct GaugepointHotOnset {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * A GaugepointOnsetOutcome.
   */
  int32_t outcome;
  /**
   * 1 when every smaller factor was excluded, else 0.
   */
  int32_t proven;
  /**
   * 1 when `factor` and `thrust_c` are given, else 0: it touches at 20 C already.
   */
  int32_t has_factor;
  /**
   * 1 when `slope_mm` and `place` are given, else 0: nothing touches on the way.
   */
  int32_t has_place;
  /**
   * Factor on the rise of the temperatures; without contact the largest that was looked at.
   */
  double factor;
  /**
   * Temperature of the thrust side at the gauge point with it.
   */
  double thrust_c;
  /**
   * Change of the clearance at `place` with the factor; negative.
   */
  double slope_mm;
  /**
   * Where it touches.
   */
  struct GaugepointHotPlace place;
  /**
   * Why no more was looked at, without contact; else empty.
   */
  char stopped_by[160];
} GaugepointHotOnset;

/**
 * What was looked for; see RECORDS at the head.
 */
typedef struct GaugepointHotAnswer {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * 1 when `value` is given, else 0: it does not exist.
   */
  int32_t has_value;
  /**
   * Not used; 0.
   */
  int32_t reserved;
  /**
   * The size or temperature, in the unit of the function's name.
   */
  double value;
  /**
   * Why there is none; else empty.
   */
  char no_solution[160];
} GaugepointHotAnswer;

/**
 * Ovality at one height; see RECORDS at the head.
 */
typedef struct GaugepointHotOvality {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * At 20 C.
   */
  double cold_mm;
  /**
   * In the running engine.
   */
  double running_mm;
  /**
   * At 20 C, of a piston that runs round.
   */
  double round_running_mm;
} GaugepointHotOvality;

/**
 * Radii of a surface at one height, less half the gauge diameter at 20 C. A plain structure.
 */
typedef struct GaugepointProfileRow {
  /**
   * The height.
   */
  double height_mm;
  /**
   * Thrust axis at 20 C.
   */
  double cold_thrust_mm;
  /**
   * Pin axis at 20 C.
   */
  double cold_pin_mm;
  /**
   * Thrust axis in the running engine.
   */
  double hot_thrust_mm;
  /**
   * Pin axis in the running engine.
   */
  double hot_pin_mm;
} GaugepointProfileRow;

/**
 * Radii of piston and bore at one angle of a section. A plain structure.
 */
typedef struct GaugepointSectionRow {
  /**
   * The angle.
   */
  double angle_deg;
  /**
   * Piston at 20 C.
   */
  double piston_cold_mm;
  /**
   * Running piston.
   */
  double piston_hot_mm;
  /**
   * Bore at 20 C.
   */
  double bore_cold_mm;
  /**
   * Running bore.
   */
  double bore_hot_mm;
} GaugepointSectionRow;

/**
 * End gap of a hot ring; see RECORDS at the head.
 */
typedef struct GaugepointRingHotGap {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * 1 when the ends butt, else 0: a fault of the fit, and no error of the call.
   */
  int32_t butts;
  /**
   * 0.
   */
  int32_t reserved;
  /**
   * The gap; below zero the ends butt.
   */
  double gap_mm;
  /**
   * The same to the first order, as it is worked by hand: the difference is the growth of the cold gap.
   */
  double first_order_mm;
} GaugepointRingHotGap;

/**
 * A published factor for the end gap: data, not a rule of this library. A plain structure; see RECORDS at the head.
 */
typedef struct GaugepointRingGapFactor {
  /**
   * Gap in per mille of the bore.
   */
  double per_mille;
  /**
   * Which ring, for which duty.
   */
  const char *duty;
  /**
   * Where it is printed.
   */
  const char *source;
} GaugepointRingGapFactor;

/**
 * Clearance of a pin, diametral; negative is interference. See RECORDS at the head.
 */
typedef struct GaugepointPinClearance {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * At 20 C.
   */
  double cold_mm;
  /**
   * Free growth at the temperatures given.
   */
  double hot_mm;
} GaugepointPinClearance;

/**
 * A pin and the eye it is pressed into; sizes are diameters at 20 C. A plain structure; see RECORDS at the head.
 */
typedef struct GaugepointPressFitParts {
  /**
   * Joint: outside of the pin.
   */
  double pin_mm;
  /**
   * Hole of the pin; 0 is a solid pin.
   */
  double pin_hole_mm;
  /**
   * Outside of the eye.
   */
  double eye_mm;
  /**
   * Length of the joint along the axis.
   */
  double width_mm;
  /**
   * Measured interference, least of its range.
   */
  double interference_least_mm;
  /**
   * Measured interference, most of its range.
   */
  double interference_most_mm;
  /**
   * Interference that is lost because roughness is pressed flat.
   */
  double smoothing_mm;
  /**
   * Coefficient of friction, least of its range.
   */
  double friction_least;
  /**
   * Coefficient of friction, most of its range.
   */
  double friction_most;
  /**
   * Modulus of elasticity of the pin.
   */
  double pin_modulus_mpa;
  /**
   * Poisson's ratio of the pin.
   */
  double pin_poisson;
  /**
   * Modulus of elasticity of the eye.
   */
  double eye_modulus_mpa;
  /**
   * Poisson's ratio of the eye.
   */
  double eye_poisson;
} GaugepointPressFitParts;

/**
 * What a press fit holds, and what it does to its parts; see RECORDS at the head. Tension is positive.
 */
typedef struct GaugepointPressFit {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * What to take care of; a text that lives for ever.
   */
  const char *caution;
  /**
   * Pressure at the least interference; 0 when the smoothing takes all of it.
   */
  double pressure_least_mpa;
  /**
   * Pressure at the most interference.
   */
  double pressure_most_mpa;
  /**
   * Hoop stress of the eye at the joint, at the most interference.
   */
  double eye_hoop_inside_mpa;
  /**
   * Hoop stress of the eye at its outside.
   */
  double eye_hoop_outside_mpa;
  /**
   * Hoop stress of the pin at the joint.
   */
  double pin_hoop_outside_mpa;
  /**
   * Hoop stress of the pin at its hole; of a solid pin the same as at the joint.
   */
  double pin_hoop_inside_mpa;
  /**
   * Axial force at which it slips, least interference and least friction.
   */
  double force_least_n;
  /**
   * The same at the most of both.
   */
  double force_most_n;
  /**
   * Torque at which it slips, least interference and least friction, in newton metre.
   */
  double torque_least_nm;
  /**
   * The same at the most of both.
   */
  double torque_most_nm;
} GaugepointPressFit;

/**
 * Heat that lets a part be slipped on; see RECORDS at the head.
 */
typedef struct GaugepointAssembly {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * What to take care of; a text that lives for ever.
   */
  const char *caution;
  /**
   * A GaugepointTemperColour, of clean steel: any is a sign of too much heat. It says nothing of aluminium.
   */
  int32_t temper_colour;
  /**
   * 0.
   */
  int32_t reserved;
  /**
   * Rise of temperature.
   */
  double rise_k;
  /**
   * Temperature of the heated part, from 20 C.
   */
  double temperature_c;
} GaugepointAssembly;

/**
 * A cause that agrees with what was seen and answered. A plain structure; its texts live for ever.
 */
typedef struct GaugepointCandidate {
  /**
   * A GaugepointCause.
   */
  int32_t cause;
  /**
   * A GaugepointGroup.
   */
  int32_t group;
  /**
   * 1 when every answer that it needs was given, else 0.
   */
  int32_t confirmed;
  /**
   * Not used; 0.
   */
  int32_t reserved;
  /**
   * The cause in words.
   */
  const char *text;
  /**
   * Word of the sign it comes from.
   */
  const char *sign;
  /**
   * What to look at next.
   */
  const char *check_next;
} GaugepointCandidate;

/**
 * What may be behind a finding; see RECORDS at the head.
 */
typedef struct GaugepointExplanation {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * Number of candidates.
   */
  size_t candidate_count;
  /**
   * Number of questions that are open.
   */
  size_t ask_count;
  /**
   * 1 when `cause` is given, else 0: answers have left one candidate, and it is confirmed.
   */
  int32_t has_cause;
  /**
   * A GaugepointCause; 0 when it is not given.
   */
  int32_t cause;
} GaugepointExplanation;

/**
 * Distribution of the items that come to be measured. A plain structure; see RECORDS at the head.
 */
typedef struct GaugepointItems {
  /**
   * A GaugepointDistribution.
   */
  int32_t distribution;
  /**
   * 1 when `third` counts, as it must for the triangular distribution and for no other; else 0.
   */
  int32_t has_third;
  /**
   * First number of the distribution.
   */
  double first;
  /**
   * Second number of the distribution.
   */
  double second;
  /**
   * Third number of the distribution; not read when `has_third` is 0.
   */
  double third;
} GaugepointItems;

/**
 * Shares of all items; see RECORDS at the head.
 */
typedef struct GaugepointRisks {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * Items that conform.
   */
  double conforming;
  /**
   * Global consumer's risk: accepted, and does not conform.
   */
  double consumer;
  /**
   * Global producer's risk: rejected, and conforms.
   */
  double producer;
} GaugepointRisks;

/**
 * Process capability; see RECORDS at the head.
 */
typedef struct GaugepointCapability {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * Distance of the mean from the nearer limit in three standard deviations (Cpk); negative outside.
   */
  double cpk;
  /**
   * Share of the items outside the limits.
   */
  double outside;
} GaugepointCapability;

/**
 * Strain from 20 C: per_k d + per_k2 d^2 + per_k3 d^3 with d = T - 20 C. A mean coefficient a from 20 C is {a, 0, 0, -40, 450}.
 *
 * A plain structure of five doubles.
 */
typedef struct GaugepointStrainLaw {
  /**
   * Coefficient of the first power, 1/K.
   */
  double per_k;
  /**
   * Coefficient of the second power, 1/K2.
   */
  double per_k2;
  /**
   * Coefficient of the third power, 1/K3.
   */
  double per_k3;
  /**
   * Lowest temperature at which the law holds, at most 20 C.
   */
  double from_c;
  /**
   * Highest temperature at which the law holds, at least 20 C.
   */
  double to_c;
} GaugepointStrainLaw;

/**
 * The columns of gaugepoint_clearances_strided. A plain structure.
 */
typedef struct GaugepointClearanceColumns {
  /**
   * Bore as it was measured, mm: its diameter at parts_temperature_c.
   */
  struct GaugepointColumn bore_mm;
  /**
   * Piston as it was measured, mm: its diameter at parts_temperature_c.
   */
  struct GaugepointColumn piston_mm;
  /**
   * Temperature of both parts when they were measured.
   */
  struct GaugepointColumn parts_temperature_c;
  /**
   * Temperature of the bore in the running engine.
   */
  struct GaugepointColumn bore_temperature_c;
  /**
   * Temperature of the piston in the running engine.
   */
  struct GaugepointColumn piston_temperature_c;
} GaugepointClearanceColumns;

/**
 * Where the results of gaugepoint_clearances_strided go. A plain structure.
 */
typedef struct GaugepointClearancePlaces {
  /**
   * Clearance at 20 C over the diameter, mm; of the first row.
   */
  double *bench_mm;
  /**
   * Bytes to the next row; not within a double.
   */
  ptrdiff_t bench_stride;
  /**
   * Clearance of the freely growing parts over the diameter, mm; of the first row.
   */
  double *running_mm;
  /**
   * Bytes to the next row; not within a double.
   */
  ptrdiff_t running_stride;
  /**
   * Status of the first row; NULL when statuses are not wanted.
   */
  int32_t *row_status;
  /**
   * Bytes to the next row; not within an int32_t.
   */
  ptrdiff_t row_status_stride;
} GaugepointClearancePlaces;

/**
 * A contributor of a stack. A plain structure.
 */
typedef struct GaugepointContributor {
  /**
   * Its name, which no other contributor and no shared cause has.
   */
  const char *name;
  /**
   * Length of the name in bytes.
   */
  size_t name_length;
  /**
   * Nominal size.
   */
  double nominal;
  /**
   * Lowest deviation that its limits allow.
   */
  double lower;
  /**
   * Highest deviation that its limits allow.
   */
  double upper;
  /**
   * Change of the stack for a change of this: 1 where it adds, -1 where it subtracts.
   */
  double coefficient;
  /**
   * How many independent pieces there are: 1 to 1000.
   */
  size_t count;
  /**
   * A GaugepointVariation.
   */
  int32_t kind;
  /**
   * Not used; 0.
   */
  int32_t reserved;
  /**
   * The numbers of the kind.
   */
  const double *numbers;
  /**
   * How many numbers there are.
   */
  size_t number_count;
} GaugepointContributor;

/**
 * The published forms of a stack; see RECORDS at the head.
 */
typedef struct GaugepointStackForms {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * 1 when `modified_factor` is given, else 0: fewer than two pieces, or none has limits.
   */
  int32_t has_modified_factor;
  /**
   * Not used; 0.
   */
  int32_t reserved;
  /**
   * Size at nominal.
   */
  double nominal;
  /**
   * Mean.
   */
  double mean;
  /**
   * Standard deviation.
   */
  double standard_deviation;
  /**
   * Lower end of the worst case: all contributors at their limits at once.
   */
  double worst_case_lower;
  /**
   * Its upper end.
   */
  double worst_case_upper;
  /**
   * Lower end by the root of the sum of squares of the limits.
   */
  double root_sum_square_lower;
  /**
   * Its upper end.
   */
  double root_sum_square_upper;
  /**
   * The same times Bender's 1.5, lower end.
   */
  double bender_lower;
  /**
   * Its upper end.
   */
  double bender_upper;
  /**
   * The same times the modified factor, lower end.
   */
  double modified_lower;
  /**
   * Its upper end.
   */
  double modified_upper;
  /**
   * Factor of the modified root-sum-square.
   */
  double modified_factor;
} GaugepointStackForms;

/**
 * A share of the variance. A plain structure.
 */
typedef struct GaugepointShare {
  /**
   * Place among the contributors, or among the shared causes, as they were added.
   */
  size_t place;
  /**
   * 1 for a shared cause, else 0.
   */
  int32_t is_shared;
  /**
   * Not used; 0.
   */
  int32_t reserved;
  /**
   * Standard deviation that it alone gives the stack.
   */
  double standard_deviation;
  /**
   * Its share of the variance, 0 to 1.
   */
  double share;
} GaugepointShare;

/**
 * Probabilities outside limits; see RECORDS at the head.
 */
typedef struct GaugepointTail {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * Probability below the lower limit.
   */
  double below;
  /**
   * Probability above the upper limit.
   */
  double above;
  /**
   * Bound of the relative error of both.
   */
  double error;
  /**
   * Parts per million outside.
   */
  double ppm;
} GaugepointTail;

/**
 * Capability of a stack against limits; see RECORDS at the head.
 */
typedef struct GaugepointStackCapability {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * (upper - lower) / (6 sigma).
   */
  double cp;
  /**
   * Smaller distance of the mean from a limit over 3 sigma.
   */
  double cpk;
  /**
   * Probability below the lower limit, from the exact distribution.
   */
  double below;
  /**
   * Probability above the upper limit, from the exact distribution.
   */
  double above;
  /**
   * Bound of the relative error of both.
   */
  double error;
  /**
   * Parts per million outside.
   */
  double ppm;
} GaugepointStackCapability;

/**
 * Cost of a contributor over its tolerance t, half the distance of its limits: fixed + factor / t^power. A plain structure.
 */
typedef struct GaugepointToleranceCost {
  /**
   * Place of the contributor.
   */
  size_t place;
  /**
   * Cost that does not depend on the tolerance.
   */
  double fixed;
  /**
   * Factor of the part that does, above 0.
   */
  double factor;
  /**
   * Power of the tolerance, 0.1 to 10: 1 the reciprocal, 2 the reciprocal squared.
   */
  double power;
  /**
   * Smallest tolerance that can be made.
   */
  double least;
  /**
   * Largest that is allowed.
   */
  double most;
} GaugepointToleranceCost;

/**
 * Tolerances of least cost, verified, without the tolerances; see RECORDS at the head.
 */
typedef struct GaugepointAllocation {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * Sum of the costs.
   */
  double cost;
  /**
   * Change of the cost for a change of the logarithm of what is wanted; 0 when every tolerance is the largest allowed.
   */
  double price;
  /**
   * Probability below the lower limit with these tolerances, computed anew.
   */
  double below;
  /**
   * Probability above the upper limit.
   */
  double above;
  /**
   * Bound of the relative error of both.
   */
  double error;
  /**
   * Parts per million outside.
   */
  double ppm;
} GaugepointAllocation;

/**
 * A run of trials and where a part of it begins. A plain structure.
 *
 * Trial i is a function of the seed, the points and i alone: parts of a run, made anywhere and in any order, are the whole
 * to the bit when their values stand in the order of the trials.
 */
typedef struct GaugepointRun {
  /**
   * Seed; any will do.
   */
  uint64_t seed;
  /**
   * Number of the first trial of the part, from 0.
   */
  uint64_t first;
  /**
   * Trials of the whole run of a Latin hypercube, up to 134217728; 0 for other points.
   */
  uint64_t hypercube_trials;
  /**
   * A GaugepointPoints.
   */
  int32_t points;
  /**
   * Not used; 0.
   */
  int32_t reserved;
} GaugepointRun;

/**
 * Is told how much of a long work is done and of how much, and answers 0 to go on, anything else to stop. See PROGRESS at the head.
 *
 * `user` is the pointer that was given with it. It is called on the thread of the call that it serves, before every unit and once more when all
 * is done: about as often as 256 trials, a row of a matching, a cylinder or a job take, so one that is dear does nothing most of the time. It must not
 * ask or free the handle that is being asked. No exception and no longjmp may leave it.
 */
typedef int32_t (*GaugepointWatcher)(void *user, size_t done, size_t total);

/**
 * What an adaptive run is to reach. A plain structure.
 */
typedef struct GaugepointGoal {
  /**
   * Seed; any will do.
   */
  uint64_t seed;
  /**
   * Trials at which it stops unsettled, up to 134217728.
   */
  uint64_t most_trials;
  /**
   * Coverage probability of the interval.
   */
  double probability;
  /**
   * A GaugepointCoverage: the interval whose ends must settle.
   */
  int32_t coverage;
  /**
   * Significant digits of the standard deviation that are meant, 1 or 2.
   */
  int32_t digits;
} GaugepointGoal;

/**
 * Outcome of an adaptive run; see RECORDS at the head.
 */
typedef struct GaugepointAdaptive {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * 1 when mean, deviation and both ends are stable to the tolerance; 0 when the trials ran out.
   */
  int32_t settled;
  /**
   * Not used; 0.
   */
  int32_t reserved;
  /**
   * Number of sequences.
   */
  size_t sequences;
  /**
   * Number of trials.
   */
  size_t trials;
  /**
   * Numerical tolerance at the end.
   */
  double tolerance;
  /**
   * Mean of all trials.
   */
  double mean;
  /**
   * Standard deviation of all trials.
   */
  double standard_deviation;
  /**
   * Coverage probability of the intervals.
   */
  double probability;
  /**
   * Lower end of the interval with equal probabilities outside.
   */
  double symmetric_lower;
  /**
   * Its upper end.
   */
  double symmetric_upper;
  /**
   * Lower end of the shortest interval.
   */
  double shortest_lower;
  /**
   * Its upper end.
   */
  double shortest_upper;
} GaugepointAdaptive;

/**
 * Mean, deviation and intervals of trials; see RECORDS at the head.
 */
typedef struct GaugepointTrialsSummary {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * Number of trials.
   */
  size_t trials;
  /**
   * Mean.
   */
  double mean;
  /**
   * Standard deviation.
   */
  double standard_deviation;
  /**
   * Coverage probability of the intervals.
   */
  double probability;
  /**
   * Lower end of the interval with equal probabilities outside.
   */
  double symmetric_lower;
  /**
   * Its upper end.
   */
  double symmetric_upper;
  /**
   * Lower end of the shortest interval.
   */
  double shortest_lower;
  /**
   * Its upper end.
   */
  double shortest_upper;
} GaugepointTrialsSummary;

/**
 * Shares of trials outside two limits, with intervals of Clopper and Pearson; see RECORDS at the head.
 */
typedef struct GaugepointTrialsOutside {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * Trials below the lower limit.
   */
  size_t below_count;
  /**
   * Trials above the upper limit.
   */
  size_t above_count;
  /**
   * Share of the trials below the lower limit.
   */
  double below;
  /**
   * Lower end of the interval of that probability.
   */
  double below_lower;
  /**
   * Upper end of the interval of that probability.
   */
  double below_upper;
  /**
   * Share of the trials above the upper limit.
   */
  double above;
  /**
   * Lower end of the interval of that probability.
   */
  double above_lower;
  /**
   * Upper end of the interval of that probability.
   */
  double above_upper;
} GaugepointTrialsOutside;

/**
 * A probability from the weights of importance sampling; see RECORDS at the head.
 */
typedef struct GaugepointRareTail {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * Probability beyond the limit.
   */
  double probability;
  /**
   * Its standard deviation.
   */
  double standard_error;
  /**
   * Lower end of its interval, not below 0.
   */
  double lower;
  /**
   * Upper end of its interval.
   */
  double upper;
  /**
   * Effective trials: how many of equal weight would say as much.
   */
  double effective_trials;
} GaugepointRareTail;

/**
 * A function of sizes. It is called with the sizes of `trials` trials, one or many, and writes the value of each.
 *
 * The size of contributor k in trial i is `sizes[k * trials + i]`; `values[i]` gets the value of that trial. `user` is the
 * pointer that was given with the callback. It returns 0, or a number of its own when it fails: the call that it serves then ends and
 * is refused with GAUGEPOINT_STATUS_CALLBACK_FAILED and that number. A value that is not finite, or is not written, is refused.
 *
 * It is called from the thread of the call that it serves, and from several threads at once when several call. It may be
 * called many times, with one trial or thousands, in an order and in groups that may change from version to version: a value must depend
 * on the sizes of its trial alone, or the results mean nothing. No exception and no longjmp may leave it.
 */
typedef int32_t (*GaugepointCallback)(void *user,
                                      const double *sizes,
                                      size_t contributors,
                                      size_t trials,
                                      double *values);

/**
 * A function by its derivatives at the means of the contributors, without the effects; see RECORDS at the head.
 */
typedef struct GaugepointPropagation {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * A GaugepointDerivation.
   */
  int32_t derivation;
  /**
   * 1 when `skewness` is given, else 0: nothing varies, or there are too many terms.
   */
  int32_t has_skewness;
  /**
   * 1 when `excess_kurtosis` is given, else 0: in the same cases.
   */
  int32_t has_excess_kurtosis;
  /**
   * Not used; 0.
   */
  int32_t reserved;
  /**
   * Value at the nominals.
   */
  double nominal;
  /**
   * Value at the means.
   */
  double first_mean;
  /**
   * Standard deviation to first order.
   */
  double first_standard_deviation;
  /**
   * Mean to second order.
   */
  double second_mean;
  /**
   * That mean less the value at the means.
   */
  double shift;
  /**
   * Standard deviation to second order.
   */
  double second_standard_deviation;
  /**
   * Third central moment over the cube of the standard deviation.
   */
  double skewness;
  /**
   * Fourth central moment over the square of the variance, less 3.
   */
  double excess_kurtosis;
} GaugepointPropagation;

/**
 * What a contributor does to a function. A plain structure.
 */
typedef struct GaugepointEffect {
  /**
   * Place of the contributor as it was given.
   */
  size_t place;
  /**
   * Derivative of the function by it, at the means.
   */
  double sensitivity;
  /**
   * Standard deviation that it alone gives to first order.
   */
  double standard_deviation;
  /**
   * Share of the variance to first order.
   */
  double share;
  /**
   * Share of the variance to second order that it has alone.
   */
  double alone;
  /**
   * Share of the variance to second order of its products with others; each product stands with both.
   */
  double together;
} GaugepointEffect;

/**
 * Smallest and largest value within the limits, without their places; see RECORDS at the head.
 */
typedef struct GaugepointWorstCase {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * A GaugepointProof.
   */
  int32_t proof;
  /**
   * 1 when `lowest_bound` is given, else 0: after a search.
   */
  int32_t has_lowest_bound;
  /**
   * 1 when `highest_bound` is given, else 0: after a search.
   */
  int32_t has_highest_bound;
  /**
   * Not used; 0.
   */
  int32_t reserved;
  /**
   * Smallest value that is attained.
   */
  double lowest;
  /**
   * No value lies below this.
   */
  double lowest_bound;
  /**
   * Largest value that is attained.
   */
  double highest;
  /**
   * No value lies above this.
   */
  double highest_bound;
} GaugepointWorstCase;

/**
 * A wanted clearance at 20 C over the diameter, mm: at least one limit, and a target within them. A plain structure.
 */
typedef struct GaugepointWantedClearance {
  /**
   * 1 when `lower_mm` is given, else 0.
   */
  int32_t has_lower;
  /**
   * 1 when `upper_mm` is given, else 0.
   */
  int32_t has_upper;
  /**
   * 1 when `target_mm` is given, else 0: the middle of both limits.
   */
  int32_t has_target;
  /**
   * Not used; 0.
   */
  int32_t reserved;
  /**
   * Lower limit.
   */
  double lower_mm;
  /**
   * Upper limit.
   */
  double upper_mm;
  /**
   * Target.
   */
  double target_mm;
} GaugepointWantedClearance;

/**
 * A measured bore. A plain structure.
 */
typedef struct GaugepointMeasuredBore {
  /**
   * Size at 20 C, mm.
   */
  double size_mm;
  /**
   * Standard uncertainty of the size, mm.
   */
  double standard_uncertainty_mm;
  /**
   * 1 when `wanted` is given, else 0: the clearance of the set.
   */
  int32_t has_wanted;
  /**
   * Not used; 0.
   */
  int32_t reserved;
  /**
   * The clearance that this bore wants.
   */
  struct GaugepointWantedClearance wanted;
  /**
   * Its grade; NULL when it has none.
   */
  const char *grade;
  /**
   * Length of the grade in bytes.
   */
  size_t grade_length;
} GaugepointMeasuredBore;

/**
 * A measured piston. A plain structure.
 */
typedef struct GaugepointMeasuredPiston {
  /**
   * Size at its gauge point at 20 C, mm.
   */
  double size_mm;
  /**
   * Standard uncertainty of the size, mm.
   */
  double standard_uncertainty_mm;
  /**
   * 1 when `weight_g` is given, else 0.
   */
  int32_t has_weight;
  /**
   * Not used; 0.
   */
  int32_t reserved;
  /**
   * Weight, g: of the assembly where pin, rings or rod stay with it.
   */
  double weight_g;
  /**
   * Its grade; NULL when it has none.
   */
  const char *grade;
  /**
   * Length of the grade in bytes.
   */
  size_t grade_length;
} GaugepointMeasuredPiston;

/**
 * Places of a bore and of a piston. A plain structure.
 */
typedef struct GaugepointPair {
  /**
   * Place of the bore.
   */
  size_t bore;
  /**
   * Place of the piston.
   */
  size_t piston;
} GaugepointPair;

/**
 * What holds for a whole set of bores and pistons. A plain structure.
 */
typedef struct GaugepointMatchingConditions {
  /**
   * 1 when `wanted` is given, else 0.
   */
  int32_t has_wanted;
  /**
   * 1 when `weight_band_g` is given, else 0.
   */
  int32_t has_weight_band;
  /**
   * The clearance that bores without their own want.
   */
  struct GaugepointWantedClearance wanted;
  /**
   * The part of every standard uncertainty, of bores and of pistons, that is one and the same error, mm: it cancels in a clearance.
   */
  double shared_uncertainty_mm;
  /**
   * Standard uncertainty beside those of the parts that all bores have in common, or all pistons, mm: it adds to every clearance.
   */
  double common_uncertainty_mm;
  /**
   * Largest difference of weight of the chosen pistons, g.
   */
  double weight_band_g;
  /**
   * Pairs that may not be; not read when there are none.
   */
  const struct GaugepointPair *forbidden;
  /**
   * How many they are.
   */
  size_t forbidden_count;
  /**
   * Pairs that must be; not read when there are none.
   */
  const struct GaugepointPair *fixed;
  /**
   * How many they are.
   */
  size_t fixed_count;
} GaugepointMatchingConditions;

/**
 * A piston in its bore. A plain structure.
 */
typedef struct GaugepointMatched {
  /**
   * Place of the bore.
   */
  size_t bore;
  /**
   * Place of the piston.
   */
  size_t piston;
  /**
   * Clearance at 20 C, mm over the diameter.
   */
  double clearance_mm;
  /**
   * Its standard uncertainty.
   */
  double standard_uncertainty_mm;
  /**
   * Clearance less its target.
   */
  double deviation_mm;
  /**
   * Probability that the clearance conforms to its limits.
   */
  double probability_of_conformity;
  /**
   * One less that, with all its digits where it is small.
   */
  double probability_outside;
} GaugepointMatched;

/**
 * How good a pairing is as a whole. A plain structure.
 */
typedef struct GaugepointMerit {
  /**
   * Least probability of conformity of its pairs.
   */
  double worst_probability;
  /**
   * One less that, with all its digits where it is small.
   */
  double worst_outside;
  /**
   * Sum of the squared deviations from the targets, mm2.
   */
  double sum_of_squares_mm2;
  /**
   * Bore with the worst pair.
   */
  size_t worst_bore;
  /**
   * 1 when it keeps the forbidden and fixed pairs, the grades and the weight band, else 0.
   */
  int32_t is_allowed;
  /**
   * Not used; 0.
   */
  int32_t reserved;
} GaugepointMerit;

/**
 * A matching without its pairs; see RECORDS at the head.
 */
typedef struct GaugepointMatching {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * The case that the data are, a GaugepointMatchingCase.
   */
  int32_t data_case;
  /**
   * 1 when `by_grade` is given, else 0: some bore finds no piston so.
   */
  int32_t has_by_grade;
  /**
   * 1 when `weight_spread_g` is given, else 0: some chosen piston has no weight.
   */
  int32_t has_weight_spread;
  /**
   * Not used; 0.
   */
  int32_t reserved;
  /**
   * How good it is.
   */
  struct GaugepointMerit merit;
  /**
   * The parts as they were given: the first piston in the first bore, and so on.
   */
  struct GaugepointMerit as_given;
  /**
   * What the grades alone give: each bore in turn the first free piston that it may take.
   */
  struct GaugepointMerit by_grade;
  /**
   * Largest difference of weight of the chosen pistons, g.
   */
  double weight_spread_g;
  /**
   * What in the data proves the case.
   */
  char because[256];
} GaugepointMatching;

/**
 * A point of the wall that holds the bore. A plain structure.
 */
typedef struct GaugepointHeld {
  /**
   * Place of the point among those given.
   */
  size_t place;
  /**
   * Its share: how far the radius of the bore moves with that of the point. The shares add up to 1.
   */
  double share;
} GaugepointHeld;

/**
 * The axis of a bar, from the original axis. A plain structure.
 */
typedef struct GaugepointBar {
  /**
   * Its place at the middle of the depths, toward 0 degrees.
   */
  double x_mm;
  /**
   * The same toward 90 degrees.
   */
  double y_mm;
  /**
   * Middle of the depths.
   */
  double middle_mm;
  /**
   * How far it moves toward 0 degrees for each mm of depth.
   */
  double slope_x;
  /**
   * The same toward 90 degrees.
   */
  double slope_y;
} GaugepointBar;

/**
 * A bore that removes all wear, without the points that hold it; see RECORDS at the head.
 */
typedef struct GaugepointCleanUp {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * Number of points that hold it.
   */
  size_t held;
  /**
   * Its diameter with every allowance.
   */
  double diameter_mm;
  /**
   * Standard uncertainty of the diameter from that of the radii.
   */
  double standard_uncertainty_mm;
  /**
   * No bar that may stand elsewhere needs less than this; that of a fixed axis is the diameter.
   */
  double least_mm;
  /**
   * The bar that cuts it.
   */
  struct GaugepointBar bar;
} GaugepointCleanUp;

/**
 * The clean-up about the original axis as far as diameters tell it; see RECORDS at the head.
 */
typedef struct GaugepointCleanUpRange {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * When both sides are worn alike.
   */
  double lower_mm;
  /**
   * When one side alone is worn. This one is used, unless a radial trace or the unworn ridge shows how the wear is shared.
   */
  double upper_mm;
} GaugepointCleanUpRange;

/**
 * A wall as it was gauged, by ultrasound as a rule. A plain structure.
 */
typedef struct GaugepointWallPoint {
  /**
   * Angle, 0 to 360 degrees.
   */
  double angle_deg;
  /**
   * Depth from the deck.
   */
  double depth_mm;
  /**
   * Distance of the wall from the original axis when it was gauged.
   */
  double radius_mm;
  /**
   * Thickness.
   */
  double wall_mm;
} GaugepointWallPoint;

/**
 * What a bore is machined to; see RECORDS at the head.
 */
typedef struct GaugepointBoreSizes {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * Size at 20 C when it is finished.
   */
  double finish_mm;
  /**
   * Size at 20 C after boring.
   */
  double boring_mm;
} GaugepointBoreSizes;

/**
 * A gauge that was set, and the bore that it goes into. A plain structure.
 */
typedef struct GaugepointWarmGauging {
  /**
   * Size at 20 C of the ring that the gauge was set on.
   */
  double setting_mm;
  /**
   * The ring, when the gauge was set.
   */
  double ring_temperature_c;
  /**
   * The ring.
   */
  double ring_expansion_per_k;
  /**
   * The gauge, when it was set.
   */
  double set_temperature_c;
  /**
   * The gauge, when it was set.
   */
  double set_expansion_per_k;
  /**
   * The gauge in the bore.
   */
  double used_temperature_c;
  /**
   * The gauge in the bore.
   */
  double used_expansion_per_k;
  /**
   * The wall of the bore.
   */
  double block_temperature_c;
  /**
   * The wall of the bore.
   */
  double block_expansion_per_k;
} GaugepointWarmGauging;

/**
 * Outcome of a finish check; see RECORDS at the head.
 */
typedef struct GaugepointFinishCheck {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * A GaugepointFinishOutcome.
   */
  int32_t outcome;
  /**
   * 1 when `difference_mm` is given, else 0: the finish is met.
   */
  int32_t has_difference;
  /**
   * What is still to be honed off the diameter, to the middle of the tolerance; or by how much the bore is too large.
   */
  double difference_mm;
} GaugepointFinishCheck;

/**
 * The block, and what is fitted to it. A plain structure.
 */
typedef struct GaugepointBlock {
  /**
   * 1 when `largest_by_gasket_mm` is given, else 0.
   */
  int32_t has_largest_by_gasket;
  /**
   * 1 when `sleeve_price` is given, else 0: no sleeve is fitted.
   */
  int32_t has_sleeve_price;
  /**
   * 1 when `ring_gap_mm` is given, else 0.
   */
  int32_t has_ring_gap;
  /**
   * 1 when `chamber` is given, else 0.
   */
  int32_t has_chamber;
  /**
   * Nominal bore of the standard size.
   */
  double nominal_mm;
  /**
   * Largest bore that the opening of the gasket allows.
   */
  double largest_by_gasket_mm;
  /**
   * What a sleeve costs, with the work.
   */
  double sleeve_price;
  /**
   * What boring and honing one bore costs.
   */
  double boring_price;
  /**
   * How many standard uncertainties a step must lie above the clean-up.
   */
  double guard;
  /**
   * End gap at the nominal bore of rings that are kept.
   */
  double ring_gap_mm;
  /**
   * The chamber at the nominal bore.
   */
  struct GaugepointChamber chamber;
} GaugepointBlock;

/**
 * What is known of a worn bore. A plain structure.
 */
typedef struct GaugepointWornBore {
  /**
   * What it must be bored to at least to be clean.
   */
  double clean_up_mm;
  /**
   * Standard uncertainty of that.
   */
  double standard_uncertainty_mm;
  /**
   * 1 when `largest_by_walls_mm` is given, else 0: the walls were not gauged.
   */
  int32_t has_largest_by_walls;
  /**
   * 1 when it may take a sleeve, else 0.
   */
  int32_t may_be_sleeved;
  /**
   * Largest bore that its walls allow.
   */
  double largest_by_walls_mm;
  /**
   * 1 when it may go back as it is, else 0.
   */
  int32_t goes_back;
  /**
   * Not used; 0.
   */
  int32_t reserved;
} GaugepointWornBore;

/**
 * A size of piston that can be had. A plain structure.
 */
typedef struct GaugepointStep {
  /**
   * Over the nominal bore.
   */
  double oversize_mm;
  /**
   * What one piston with its rings costs.
   */
  double price;
  /**
   * 1 when `available` is given, else 0: it does not matter.
   */
  int32_t has_available;
  /**
   * 1 when `more_mass_g` is given, else 0.
   */
  int32_t has_more_mass;
  /**
   * How many there are.
   */
  size_t available;
  /**
   * Mass of a piston over that of the standard one, in g.
   */
  double more_mass_g;
} GaugepointStep;

/**
 * What a step does besides. A plain structure.
 */
typedef struct GaugepointConsequence {
  /**
   * 1 when `compression_ratio` is given, else 0.
   */
  int32_t has_compression_ratio;
  /**
   * 1 when `ring_gap_mm` is given, else 0.
   */
  int32_t has_ring_gap;
  /**
   * 1 when `more_mass_g` is given, else 0.
   */
  int32_t has_more_mass;
  /**
   * Not used; 0.
   */
  int32_t reserved;
  /**
   * Bore of the step.
   */
  double bore_mm;
  /**
   * Compression ratio with the same chamber.
   */
  double compression_ratio;
  /**
   * End gap of rings that are kept.
   */
  double ring_gap_mm;
  /**
   * Mass of a piston over that of the standard one, in g.
   */
  double more_mass_g;
} GaugepointConsequence;

/**
 * One way to bring a block back. A plain structure.
 */
typedef struct GaugepointOversizeChoice {
  /**
   * A GaugepointOversizeWay.
   */
  int32_t way;
  /**
   * Not used; 0.
   */
  int32_t reserved;
  /**
   * Pistons, boring and sleeves together.
   */
  double price;
  /**
   * Number of reasons that rule it out; 0 for one that can be done. They follow those of the ways before it.
   */
  size_t ruled_out;
} GaugepointOversizeChoice;

/**
 * What is done to a bore. A plain structure.
 */
typedef struct GaugepointBoreAction {
  /**
   * A GaugepointBoreActionKind.
   */
  int32_t kind;
  /**
   * Not used; 0.
   */
  int32_t reserved;
  /**
   * Place of the step; 0 for a bore that stays as it is.
   */
  size_t step;
} GaugepointBoreAction;

/**
 * What rules out a way. A plain structure.
 */
typedef struct GaugepointOversizeRuledOut {
  /**
   * A GaugepointOversizeReason.
   */
  int32_t reason;
  /**
   * 1 when `place` is given, else 0: the gasket is for all bores.
   */
  int32_t has_place;
  /**
   * 1 when `value_mm` is given, else 0.
   */
  int32_t has_value;
  /**
   * 1 when `needed` and `available` are given, else 0.
   */
  int32_t has_counts;
  /**
   * Place of the bore, or of the step of which there are too few pistons.
   */
  size_t place;
  /**
   * Pistons that are needed.
   */
  size_t needed;
  /**
   * Pistons that there are.
   */
  size_t available;
  /**
   * What the bore needs, or what the wall or the gasket allows.
   */
  double value_mm;
} GaugepointOversizeRuledOut;

/**
 * How many ways there are; see RECORDS at the head.
 */
typedef struct GaugepointOversizes {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * Number of ways.
   */
  size_t choices;
  /**
   * Number of reasons that rule ways out, of all together.
   */
  size_t ruled_out;
} GaugepointOversizes;

/**
 * A liner and its counterbore. A plain structure.
 */
typedef struct GaugepointLiner {
  /**
   * Height of its flange.
   */
  double flange_mm;
  /**
   * Depth of the counterbore toward the front of the row, at one side, toward the rear and at the other side.
   */
  double depths_mm[4];
  /**
   * 1 when `cupping_mm` is given, else 0.
   */
  int32_t has_cupping;
  /**
   * Not used; 0.
   */
  int32_t reserved;
  /**
   * How much deeper the seat is at one edge of the ledge than at the other.
   */
  double cupping_mm;
} GaugepointLiner;

/**
 * A shim that can be had. A plain structure.
 */
typedef struct GaugepointShim {
  /**
   * Its thickness.
   */
  double thickness_mm;
  /**
   * 1 when `available` is given, else 0: it does not matter.
   */
  int32_t has_available;
  /**
   * Not used; 0.
   */
  int32_t reserved;
  /**
   * How many there are.
   */
  size_t available;
} GaugepointShim;

/**
 * What is wanted of a row of liners. A plain structure.
 */
typedef struct GaugepointWantedProtrusion {
  /**
   * 1 when `cupping_mm` is given, else 0.
   */
  int32_t has_cupping;
  /**
   * 1 when `neighbours_mm` is given, else 0.
   */
  int32_t has_neighbours;
  /**
   * Most shims on one liner, 1 to 3.
   */
  size_t most_on_one;
  /**
   * Smallest protrusion at any place.
   */
  double least_mm;
  /**
   * Largest protrusion at any place.
   */
  double most_mm;
  /**
   * Most that a seat may be uneven: the difference within one liner.
   */
  double unevenness_mm;
  /**
   * Most that a seat may be cupped.
   */
  double cupping_mm;
  /**
   * Most that two neighbours may differ by at their nearest points.
   */
  double neighbours_mm;
} GaugepointWantedProtrusion;

/**
 * A liner in the plan. A plain structure.
 */
typedef struct GaugepointShimmed {
  /**
   * Mean depth of its counterbore.
   */
  double mean_depth_mm;
  /**
   * Unevenness of its seat.
   */
  double unevenness_mm;
  /**
   * Thinnest stack that brings every place to the least protrusion; 0 or less when none is needed for that.
   */
  double least_shims_mm;
  /**
   * Thickest stack that leaves every place at the largest protrusion; below zero the liner stands too high without shims.
   */
  double most_shims_mm;
  /**
   * Smallest protrusion; NaN without a stack.
   */
  double lowest_mm;
  /**
   * Largest protrusion; NaN without a stack.
   */
  double highest_mm;
  /**
   * 1 when there is a stack, else 0: nothing serves the row.
   */
  int32_t has_stack;
  /**
   * Not used; 0.
   */
  int32_t reserved;
  /**
   * Number of its shims.
   */
  size_t shims;
  /**
   * Its shims by their places, as many as `shims` says.
   */
  size_t stack[3];
} GaugepointShimmed;

/**
 * What rules out a row of liners. A plain structure.
 */
typedef struct GaugepointShimRuledOut {
  /**
   * A GaugepointShimReason.
   */
  int32_t reason;
  /**
   * Not used; 0.
   */
  int32_t reserved;
  /**
   * Place of the liner.
   */
  size_t liner;
} GaugepointShimRuledOut;

/**
 * The shims of a row, without its liners; see RECORDS at the head.
 */
typedef struct GaugepointShimPlan {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * Number of reasons that rule the row out; 0 for one that can be done.
   */
  size_t ruled_out;
  /**
   * Shims that are used.
   */
  size_t shims_used;
  /**
   * 1 when the row can be done, else 0: of what follows nothing is given.
   */
  int32_t is_done;
  /**
   * 1 when `largest_step_mm` is given, else 0.
   */
  int32_t has_step;
  /**
   * Largest distance of a protrusion from the middle of the wanted ones.
   */
  double largest_deviation_mm;
  /**
   * Largest difference of neighbours at their nearest points.
   */
  double largest_step_mm;
  /**
   * What to take care of; a text that lives for ever.
   */
  const char *caution;
} GaugepointShimPlan;

/**
 * An end gap as it was read. A plain structure.
 */
typedef struct GaugepointGapReading {
  /**
   * 1 when `gauge_mm` is given, else 0: the gap was read in the bore that the ring runs in.
   */
  int32_t has_gauge;
  /**
   * Not used; 0.
   */
  int32_t reserved;
  /**
   * The gap.
   */
  double gap_mm;
  /**
   * Size of the ring gauge or bore that it was read in.
   */
  double gauge_mm;
  /**
   * Standard uncertainty of the gap; 0 leaves it out.
   */
  double gap_uncertainty_mm;
  /**
   * The same of the size of the gauge; not used without one.
   */
  double gauge_uncertainty_mm;
  /**
   * The same of the size of the bore that the ring runs in; not used without a gauge.
   */
  double bore_uncertainty_mm;
} GaugepointGapReading;

/**
 * The gap that is wanted: a least one, or what heat asks for, or both. A plain structure.
 */
typedef struct GaugepointWantedGap {
  /**
   * 1 when `least_mm` is given, else 0.
   */
  int32_t has_least;
  /**
   * 1 when `most_mm` is given, else 0.
   */
  int32_t has_most;
  /**
   * 1 when the last five numbers are given, else 0.
   */
  int32_t has_hot;
  /**
   * Not used; 0.
   */
  int32_t reserved;
  /**
   * The least gap at 20 C.
   */
  double least_mm;
  /**
   * The widest gap at 20 C.
   */
  double most_mm;
  /**
   * How far above the least gap a ring is filed.
   */
  double allowance_mm;
  /**
   * The least gap when ring and bore are hot; 0 lets the ends touch.
   */
  double least_hot_gap_mm;
  /**
   * Temperature of the bore at the ring.
   */
  double bore_temperature_c;
  /**
   * Its coefficient of expansion.
   */
  double bore_expansion_per_k;
  /**
   * Temperature of the ring.
   */
  double ring_temperature_c;
  /**
   * Its coefficient of expansion.
   */
  double ring_expansion_per_k;
} GaugepointWantedGap;

/**
 * What is filed off a ring; see RECORDS at the head.
 */
typedef struct GaugepointFiling {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * A GaugepointFilingOutcome.
   */
  int32_t outcome;
  /**
   * 1 when `hot_gap_mm` is given, else 0.
   */
  int32_t has_hot_gap;
  /**
   * Gap in the bore that the ring runs in; below zero the ends overlap.
   */
  double gap_mm;
  /**
   * Its standard uncertainty.
   */
  double standard_uncertainty_mm;
  /**
   * The least gap in force: the wanted one or that of heat, whichever is larger.
   */
  double least_mm;
  /**
   * The gap that a short ring is filed to.
   */
  double target_mm;
  /**
   * What is filed off in all; 0 unless the ring is filed.
   */
  double file_off_mm;
  /**
   * What is filed off each end.
   */
  double each_end_mm;
  /**
   * Gap of the ring as it is then, hot.
   */
  double hot_gap_mm;
  /**
   * What to take care of; a text that lives for ever.
   */
  const char *caution;
} GaugepointFiling;

/**
 * What a gasket is chosen by besides its table. A plain structure.
 */
typedef struct GaugepointGasketConditions {
  /**
   * 1 when `largest_spread_mm` is given, else 0.
   */
  int32_t has_largest_spread;
  /**
   * 1 when `standard_uncertainty_mm` is given, else 0.
   */
  int32_t has_uncertainty;
  /**
   * The last digit the table is printed to.
   */
  double step_mm;
  /**
   * Most that protrusions may differ by.
   */
  double largest_spread_mm;
  /**
   * Standard uncertainty of one protrusion; 0 for exact ones.
   */
  double standard_uncertainty_mm;
} GaugepointGasketConditions;

/**
 * The gasket for an engine; see RECORDS at the head.
 */
typedef struct GaugepointGasketGrade {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * Place of the piston that decided, the first of equal ones.
   */
  size_t largest_piston;
  /**
   * Place of the line of the table.
   */
  size_t band;
  /**
   * 1 when `spread_is_met` is given, else 0.
   */
  int32_t has_spread_is_met;
  /**
   * 1 when the spread is within its limit, else 0.
   */
  int32_t spread_is_met;
  /**
   * 1 when the two probabilities are given, else 0.
   */
  int32_t has_probabilities;
  /**
   * Not used; 0.
   */
  int32_t reserved;
  /**
   * The protrusion that decided.
   */
  double largest_mm;
  /**
   * Largest less smallest protrusion.
   */
  double spread_mm;
  /**
   * The gasket, compressed.
   */
  double thickness_mm;
  /**
   * Probability that the true largest protrusion lies below the band.
   */
  double probability_below;
  /**
   * Probability that it lies above the band.
   */
  double probability_above;
} GaugepointGasketGrade;

/**
 * A part of an assembly. A plain structure.
 */
typedef struct GaugepointPart {
  /**
   * Its mass in g; 0 for a part that is not there.
   */
  double mass_g;
  /**
   * What may be taken off it at most, in g; 0 where nothing may.
   */
  double removable_g;
} GaugepointPart;

/**
 * What an assembly loses. A plain structure.
 */
typedef struct GaugepointCut {
  /**
   * Its mass as it was weighed, in g.
   */
  double mass_g;
  /**
   * Its mass when it is cut, in g.
   */
  double left_g;
  /**
   * How far it is still over the heaviest allowed, in g; 0 when it is within.
   */
  double over_g;
} GaugepointCut;

/**
 * What all assemblies lose; see RECORDS at the head.
 */
typedef struct GaugepointCutList {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * Place of the lightest assembly, the first of equal ones.
   */
  size_t lightest;
  /**
   * Heaviest mass that is allowed, in g.
   */
  double most_g;
  /**
   * 1 when every one is within the band, else 0.
   */
  int32_t is_met;
  /**
   * Not used; 0.
   */
  int32_t reserved;
} GaugepointCutList;

/**
 * What moves with a crankpin. A plain structure.
 */
typedef struct GaugepointBobWeight {
  /**
   * Rods on the pin, 1 to 4.
   */
  size_t rods;
  /**
   * Big end of one rod as it is weighed with the rod level, in g.
   */
  double big_end_g;
  /**
   * Bearing shells of one rod, in g.
   */
  double bearing_g;
  /**
   * Small end of one rod, in g.
   */
  double small_end_g;
  /**
   * Piston with pin, rings and retainers, in g.
   */
  double piston_g;
  /**
   * Share of the reciprocating mass that is balanced: 0.5 for a right-angled V of two rods on a pin.
   */
  double share;
  /**
   * Oil in the pin, in g; 0 leaves it out.
   */
  double oil_g;
} GaugepointBobWeight;

/**
 * A parameter as it was measured and what is asked of it, in its unit. A plain structure.
 */
typedef struct GaugepointFinishValue {
  /**
   * 1 when `value` is given, else 0.
   */
  int32_t has_value;
  /**
   * 1 when `standard_uncertainty` is given, else 0: the value alone is held against the limits.
   */
  int32_t has_uncertainty;
  /**
   * 1 when `lower` is given, else 0.
   */
  int32_t has_lower;
  /**
   * 1 when `upper` is given, else 0.
   */
  int32_t has_upper;
  /**
   * The value.
   */
  double value;
  /**
   * Its standard uncertainty.
   */
  double standard_uncertainty;
  /**
   * Lower limit.
   */
  double lower;
  /**
   * Upper limit.
   */
  double upper;
} GaugepointFinishValue;

/**
 * A parameter that was judged. A plain structure.
 */
typedef struct GaugepointFinishJudged {
  /**
   * A GaugepointFinishFinding.
   */
  int32_t finding;
  /**
   * 1 when `probability_of_conformity` is given, else 0.
   */
  int32_t has_probability;
  /**
   * Probability that it conforms.
   */
  double probability_of_conformity;
} GaugepointFinishJudged;

/**
 * What is found of a finish; see RECORDS at the head.
 */
typedef struct GaugepointFinishFound {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * 1 when there is a limit and every parameter with a limit lies within it, else 0.
   */
  int32_t is_met;
  /**
   * Not used; 0.
   */
  int32_t reserved;
  /**
   * Every parameter, at the places of GaugepointFinishParameter.
   */
  struct GaugepointFinishJudged parameters[6];
} GaugepointFinishFound;

/**
 * What a job comes to; see RECORDS at the head.
 */
typedef struct GaugepointJobVerdict {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * A GaugepointOutcome: that of the engine, the worst of its cylinders.
   */
  int32_t outcome;
  /**
   * 0.
   */
  int32_t reserved;
  /**
   * Cylinders of the engine.
   */
  size_t cylinder_count;
  /**
   * Cylinders that go back.
   */
  size_t reuse_count;
  /**
   * Cylinders of which something was not read.
   */
  size_t incomplete_count;
  /**
   * Cylinders of which nothing is proven.
   */
  size_t not_proven_count;
  /**
   * Cylinders with a damage whose cause is not known.
   */
  size_t find_the_cause_first_count;
  /**
   * Cylinders that do not go back.
   */
  size_t do_not_reuse_count;
} GaugepointJobVerdict;

/**
 * What a cylinder of a job comes to; see RECORDS at the head.
 */
typedef struct GaugepointCylinderVerdict {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * Number of the cylinder.
   */
  int32_t number;
  /**
   * A GaugepointOutcome: that of the cylinder.
   */
  int32_t outcome;
  /**
   * 1 when there is a verdict on its piston, else 0.
   */
  int32_t has_piston;
  /**
   * A GaugepointOutcome: that of its piston; 0 when not given.
   */
  int32_t piston_outcome;
  /**
   * 1 when there is a verdict on its bore, else 0.
   */
  int32_t has_bore;
  /**
   * A GaugepointOutcome: that of its bore; 0 when not given.
   */
  int32_t bore_outcome;
  /**
   * 1 when a measured value decided, else 0.
   */
  int32_t has_decided_by;
  /**
   * A GaugepointJudged: the value that decided; 0 when not given.
   */
  int32_t decided_by;
  /**
   * Decisions on it.
   */
  size_t decision_count;
  /**
   * What was not read of it.
   */
  size_t missing_count;
} GaugepointCylinderVerdict;

/**
 * One value of a job against its limits; see RECORDS at the head.
 */
typedef struct GaugepointJobDecision {
  /**
   * Size of this structure in bytes, set by the caller.
   */
  size_t struct_size;
  /**
   * A GaugepointJudged: what it is of.
   */
  int32_t judged;
  /**
   * A GaugepointConformity.
   */
  int32_t result;
  /**
   * 1 when `value_mm`, its uncertainty and degrees of freedom are given, else 0.
   */
  int32_t has_value;
  /**
   * 1 when `reference_temperature_c` is given, else 0.
   */
  int32_t has_reference_temperature;
  /**
   * 1 when `lower_mm` is given, else 0.
   */
  int32_t has_lower;
  /**
   * 1 when `upper_mm` is given, else 0.
   */
  int32_t has_upper;
  /**
   * 1 when `guard_band_mm` is given, else 0.
   */
  int32_t has_guard_band;
  /**
   * 1 when `rejection_guard_band_mm` is given, else 0.
   */
  int32_t has_rejection_guard_band;
  /**
   * 1 when `uncertainty_ratio` is given, else 0.
   */
  int32_t has_uncertainty_ratio;
  /**
   * 1 when `probability_of_conformity` is given, else 0.
   */
  int32_t has_probability;
  /**
   * The value at the reference temperature of its limit.
   */
  double value_mm;
  /**
   * Its standard uncertainty.
   */
  double standard_uncertainty_mm;
  /**
   * Its effective degrees of freedom; INFINITY when they are infinite.
   */
  double dof;
  /**
   * Reference temperature of the limit.
   */
  double reference_temperature_c;
  /**
   * Lower limit.
   */
  double lower_mm;
  /**
   * Upper limit.
   */
  double upper_mm;
  /**
   * What a value must lie inside the limits to conform; below 0 it may lie outside.
   */
  double guard_band_mm;
  /**
   * What a value must lie outside the limits to not conform; below 0 it may lie inside.
   */
  double rejection_guard_band_mm;
  /**
   * Tolerance over the uncertainty interval 2 U.
   */
  double uncertainty_ratio;
  /**
   * Probability that the true value conforms.
   */
  double probability_of_conformity;
} GaugepointJobDecision;



#ifdef __cplusplus
extern "C" {
#endif // __cplusplus

/**
 * Number of the ABI of the library that is loaded; compare with GAUGEPOINT_ABI. 0 only after a fault of the library.
 */
int32_t gaugepoint_abi(void);

/**
 * Version of the library that is loaded, as "1.2.3".
 */
const char *gaugepoint_version(void);

/**
 * The statuses one after the other: call with 0, 1, 2 ... until it returns -1.
 */
int32_t gaugepoint_status_at(int32_t index);

/**
 * Stable name of a status, as it also stands in the documents: "out_of_range". Of an unknown one: "unknown".
 */
const char *gaugepoint_status_name(int32_t status);

/**
 * One sentence on a status, also on an unknown one.
 */
const char *gaugepoint_status_text(int32_t status);

/**
 * Assesses a job document and gives its report, both JSON.
 *
 * `job` is a job document of `job_length` bytes. `with_working` is 1 to have the working of every number in the report,
 * else 0. `report` gets the text, to be freed by gaugepoint_text_free, and `report_length` its length in bytes without
 * the NUL that ends it. Readings that are missing give a report that says what is missing; anything that is refused
 * gives a status and no report.
 */
int32_t gaugepoint_job_assess(const char *job,
                              size_t job_length,
                              int32_t with_working,
                              char **report,
                              size_t *report_length,
                              struct GaugepointError *error);

/**
 * Frees a text that this library gave. NULL is fine.
 */
void gaugepoint_text_free(char *text);

/**
 * Holds the limits of a printed sheet against themselves and gives the report, both JSON.
 *
 * `sheet` is a sheet document of `sheet_length` bytes. `report` gets the text, to be freed by gaugepoint_text_free, and
 * `report_length` its length in bytes without the NUL that ends it. A printed text that contradicts another, or cannot be
 * read, stands in the report; anything that is refused gives a status and no report.
 */
int32_t gaugepoint_sheet_check(const char *sheet,
                               size_t sheet_length,
                               char **report,
                               size_t *report_length,
                               struct GaugepointError *error);

/**
 * Evaluates a measurement document and gives its report, both JSON: the readings and their differences with the budget of each, to first
 * and second order and by trials.
 *
 * `document` is a measurement document of `document_length` bytes. `with_working` is 1 to have the working of every number of
 * the first order in the report, else 0. `report` gets the text, to be freed by gaugepoint_text_free, and `report_length` its
 * length in bytes without the NUL that ends it. Anything that is refused gives a status and no report.
 */
int32_t gaugepoint_measure(const char *document,
                           size_t document_length,
                           int32_t with_working,
                           char **report,
                           size_t *report_length,
                           struct GaugepointError *error);

/**
 * Gives the presets of gauges as JSON: a list of rows of published tables, each with its source.
 *
 * `table` gets the text, to be freed by gaugepoint_text_free, and `table_length` its length in bytes without the NUL that ends it.
 */
int32_t gaugepoint_presets(char **table,
                           size_t *table_length,
                           struct GaugepointError *error);

/**
 * Computes the hot fit of one piston in one bore and gives its report, both JSON: the clearance everywhere and at temperature, its smallest value
 * with its place and uncertainty, the margin to the reference case, first contact, and what was looked for.
 *
 * `document` is a fit document of `document_length` bytes. `with_working` is 1 to have the working of every measured value in the
 * report, else 0. `report` gets the text, to be freed by gaugepoint_text_free, and `report_length` its length in bytes without
 * the NUL that ends it. Anything that is refused gives a status and no report.
 */
int32_t gaugepoint_fit(const char *document,
                       size_t document_length,
                       int32_t with_working,
                       char **report,
                       size_t *report_length,
                       struct GaugepointError *error);

/**
 * Number of the flat functions, which are numbered from 1; a number never changes its function.
 */
int32_t gaugepoint_flat_count(void);

/**
 * Name of a flat function without "gaugepoint_"; NULL of a number that has none.
 */
const char *gaugepoint_flat_name(int32_t function);

/**
 * What a flat function computes, its ranges and its source; NULL of a number that has none.
 */
const char *gaugepoint_flat_meaning(int32_t function);

/**
 * Name of a parameter of a flat function, which are counted from 0 and end in their units; NULL after the last.
 */
const char *gaugepoint_flat_parameter(int32_t function,
                                      int32_t index);

/**
 * A flat function, by its number, of each of `count` rows whose numbers need not stand side by side.
 *
 * `columns` has one for each parameter, `column_count` of them. Strides are bytes to the next row: any number for a column, 0 giving every row the
 * same number; those of the results are not within one. Nothing needs alignment. Otherwise as the functions that end in _array.
 */
int32_t gaugepoint_flat_strided(int32_t function,
                                const struct GaugepointColumn *columns,
                                size_t column_count,
                                size_t count,
                                double *out,
                                ptrdiff_t out_stride,
                                int32_t *row_status,
                                ptrdiff_t row_status_stride,
                                struct GaugepointError *error);

/**
 * Size at 20 C from the reading of a micrometer or caliper, in mm.
 *
 * (reading - zero_error) (1 + a_gauge (t_gauge - 20)) / (1 + a_part (t_part - 20)). Temperatures from -5 C to 60 C, mean
 * coefficients from 20 C between 1e-7 and 1e-4 per kelvin. Source: ISO 1:2022 and the definition of strain.
 */
int32_t gaugepoint_size_at_20_mm(double reading_mm,
                                 double zero_error_mm,
                                 double gauge_temperature_c,
                                 double gauge_expansion_per_k,
                                 double part_temperature_c,
                                 double part_expansion_per_k,
                                 double *out,
                                 struct GaugepointError *error);

/**
 * gaugepoint_size_at_20_mm as a value; NaN where it is refused.
 */
double gaugepoint_size_at_20_mm_v(double reading_mm,
                                  double zero_error_mm,
                                  double gauge_temperature_c,
                                  double gauge_expansion_per_k,
                                  double part_temperature_c,
                                  double part_expansion_per_k);

/**
 * gaugepoint_size_at_20_mm of each of `count` rows; see FLAT FUNCTIONS at the head.
 */
int32_t gaugepoint_size_at_20_mm_array(const double *reading_mm,
                                       const double *zero_error_mm,
                                       const double *gauge_temperature_c,
                                       const double *gauge_expansion_per_k,
                                       const double *part_temperature_c,
                                       const double *part_expansion_per_k,
                                       size_t count,
                                       double *out,
                                       int32_t *row_status,
                                       struct GaugepointError *error);

/**
 * Clearance at 20 C in mm, over the diameter: bore - piston; negative is interference.
 */
int32_t gaugepoint_bench_clearance_mm(double bore_mm,
                                      double piston_mm,
                                      double *out,
                                      struct GaugepointError *error);

/**
 * gaugepoint_bench_clearance_mm as a value; NaN where it is refused.
 */
double gaugepoint_bench_clearance_mm_v(double bore_mm, double piston_mm);

/**
 * gaugepoint_bench_clearance_mm of each of `count` rows; see FLAT FUNCTIONS at the head.
 */
int32_t gaugepoint_bench_clearance_mm_array(const double *bore_mm,
                                            const double *piston_mm,
                                            size_t count,
                                            double *out,
                                            int32_t *row_status,
                                            struct GaugepointError *error);

/**
 * Clearance in mm of freely growing parts, over the diameter, from sizes at 20 C.
 *
 * bore (1 + a_bore (t_bore - 20)) - piston (1 + a_piston (t_piston - 20)). Temperatures from -40 C to 450 C. It is not a
 * verdict: skirts are elastic, and engines run for years with a free clearance below zero. Source: definition of strain.
 */
int32_t gaugepoint_running_clearance_mm(double bore_mm,
                                        double bore_temperature_c,
                                        double bore_expansion_per_k,
                                        double piston_mm,
                                        double piston_temperature_c,
                                        double piston_expansion_per_k,
                                        double *out,
                                        struct GaugepointError *error);

/**
 * gaugepoint_running_clearance_mm as a value; NaN where it is refused.
 */
double gaugepoint_running_clearance_mm_v(double bore_mm,
                                         double bore_temperature_c,
                                         double bore_expansion_per_k,
                                         double piston_mm,
                                         double piston_temperature_c,
                                         double piston_expansion_per_k);

/**
 * gaugepoint_running_clearance_mm of each of `count` rows; see FLAT FUNCTIONS at the head.
 */
int32_t gaugepoint_running_clearance_mm_array(const double *bore_mm,
                                              const double *bore_temperature_c,
                                              const double *bore_expansion_per_k,
                                              const double *piston_mm,
                                              const double *piston_temperature_c,
                                              const double *piston_expansion_per_k,
                                              size_t count,
                                              double *out,
                                              int32_t *row_status,
                                              struct GaugepointError *error);

/**
 * End gap in a bore, in mm, of a ring whose gap was measured in a gauge or in another bore: gap + pi (bore - gauge).
 *
 * Refused when gauge and bore are more than 2 % apart.
 */
int32_t gaugepoint_ring_gap_in_bore_mm(double gap_mm,
                                       double gauge_mm,
                                       double bore_mm,
                                       double *out,
                                       struct GaugepointError *error);

/**
 * gaugepoint_ring_gap_in_bore_mm as a value; NaN where it is refused.
 */
double gaugepoint_ring_gap_in_bore_mm_v(double gap_mm, double gauge_mm, double bore_mm);

/**
 * gaugepoint_ring_gap_in_bore_mm of each of `count` rows; see FLAT FUNCTIONS at the head.
 */
int32_t gaugepoint_ring_gap_in_bore_mm_array(const double *gap_mm,
                                             const double *gauge_mm,
                                             const double *bore_mm,
                                             size_t count,
                                             double *out,
                                             int32_t *row_status,
                                             struct GaugepointError *error);

/**
 * Least cold gap, in mm, that leaves `least_hot_gap_mm` with bore and ring at their temperatures.
 *
 * Below zero the bore opens by more than the ring grows, and heat asks for no gap at all.
 */
int32_t gaugepoint_ring_least_cold_gap_mm(double least_hot_gap_mm,
                                          double bore_mm,
                                          double bore_temperature_c,
                                          double bore_expansion_per_k,
                                          double ring_temperature_c,
                                          double ring_expansion_per_k,
                                          double *out,
                                          struct GaugepointError *error);

/**
 * gaugepoint_ring_least_cold_gap_mm as a value; NaN where it is refused.
 */
double gaugepoint_ring_least_cold_gap_mm_v(double least_hot_gap_mm,
                                           double bore_mm,
                                           double bore_temperature_c,
                                           double bore_expansion_per_k,
                                           double ring_temperature_c,
                                           double ring_expansion_per_k);

/**
 * gaugepoint_ring_least_cold_gap_mm of each of `count` rows; see FLAT FUNCTIONS at the head.
 */
int32_t gaugepoint_ring_least_cold_gap_mm_array(const double *least_hot_gap_mm,
                                                const double *bore_mm,
                                                const double *bore_temperature_c,
                                                const double *bore_expansion_per_k,
                                                const double *ring_temperature_c,
                                                const double *ring_expansion_per_k,
                                                size_t count,
                                                double *out,
                                                int32_t *row_status,
                                                struct GaugepointError *error);

/**
 * Side clearance of a ring in its groove, in mm; negative is a ring that does not enter. Beyond 0.5 mm it is another ring.
 */
int32_t gaugepoint_ring_side_clearance_mm(double groove_width_mm,
                                          double ring_width_mm,
                                          double *out,
                                          struct GaugepointError *error);

/**
 * gaugepoint_ring_side_clearance_mm as a value; NaN where it is refused.
 */
double gaugepoint_ring_side_clearance_mm_v(double groove_width_mm, double ring_width_mm);

/**
 * gaugepoint_ring_side_clearance_mm of each of `count` rows; see FLAT FUNCTIONS at the head.
 */
int32_t gaugepoint_ring_side_clearance_mm_array(const double *groove_width_mm,
                                                const double *ring_width_mm,
                                                size_t count,
                                                double *out,
                                                int32_t *row_status,
                                                struct GaugepointError *error);

/**
 * Room behind a ring that stands at the bore, in mm, on one side: (bore - root) / 2 - thickness.
 *
 * With the diameter of the land in place of the bore it is how far the ring, pushed in, lies below the land.
 */
int32_t gaugepoint_ring_back_clearance_mm(double bore_mm,
                                          double groove_root_mm,
                                          double ring_thickness_mm,
                                          double *out,
                                          struct GaugepointError *error);

/**
 * gaugepoint_ring_back_clearance_mm as a value; NaN where it is refused.
 */
double gaugepoint_ring_back_clearance_mm_v(double bore_mm, double groove_root_mm, double ring_thickness_mm);

/**
 * gaugepoint_ring_back_clearance_mm of each of `count` rows; see FLAT FUNCTIONS at the head.
 */
int32_t gaugepoint_ring_back_clearance_mm_array(const double *bore_mm,
                                                const double *groove_root_mm,
                                                const double *ring_thickness_mm,
                                                size_t count,
                                                double *out,
                                                int32_t *row_status,
                                                struct GaugepointError *error);

/**
 * Wear of a groove, in mm: its width where it is widest less its width when new.
 */
int32_t gaugepoint_ring_groove_wear_mm(double groove_width_mm,
                                       double new_groove_width_mm,
                                       double *out,
                                       struct GaugepointError *error);

/**
 * gaugepoint_ring_groove_wear_mm as a value; NaN where it is refused.
 */
double gaugepoint_ring_groove_wear_mm_v(double groove_width_mm, double new_groove_width_mm);

/**
 * gaugepoint_ring_groove_wear_mm of each of `count` rows; see FLAT FUNCTIONS at the head.
 */
int32_t gaugepoint_ring_groove_wear_mm_array(const double *groove_width_mm,
                                             const double *new_groove_width_mm,
                                             size_t count,
                                             double *out,
                                             int32_t *row_status,
                                             struct GaugepointError *error);

/**
 * Width in mm, at a diameter, of a keystone groove whose flanks slope alike, from the size over two pins that lie in it
 * opposite each other.
 */
int32_t gaugepoint_keystone_groove_width_mm(double over_pins_mm,
                                            double pin_mm,
                                            double included_angle_deg,
                                            double at_diameter_mm,
                                            double *out,
                                            struct GaugepointError *error);

/**
 * gaugepoint_keystone_groove_width_mm as a value; NaN where it is refused.
 */
double gaugepoint_keystone_groove_width_mm_v(double over_pins_mm,
                                             double pin_mm,
                                             double included_angle_deg,
                                             double at_diameter_mm);

/**
 * gaugepoint_keystone_groove_width_mm of each of `count` rows; see FLAT FUNCTIONS at the head.
 */
int32_t gaugepoint_keystone_groove_width_mm_array(const double *over_pins_mm,
                                                  const double *pin_mm,
                                                  const double *included_angle_deg,
                                                  const double *at_diameter_mm,
                                                  size_t count,
                                                  double *out,
                                                  int32_t *row_status,
                                                  struct GaugepointError *error);

/**
 * End gap in mm from a factor in per mille of the bore (never "per inch"), 0.5 to 14.
 */
int32_t gaugepoint_ring_gap_by_factor_mm(double bore_mm,
                                         double per_mille,
                                         double *out,
                                         struct GaugepointError *error);

/**
 * gaugepoint_ring_gap_by_factor_mm as a value; NaN where it is refused.
 */
double gaugepoint_ring_gap_by_factor_mm_v(double bore_mm, double per_mille);

/**
 * gaugepoint_ring_gap_by_factor_mm of each of `count` rows; see FLAT FUNCTIONS at the head.
 */
int32_t gaugepoint_ring_gap_by_factor_mm_array(const double *bore_mm,
                                               const double *per_mille,
                                               size_t count,
                                               double *out,
                                               int32_t *row_status,
                                               struct GaugepointError *error);

/**
 * Bend or twist of a rod as an angle in mrad, from its deviation over any base; the sign is kept.
 */
int32_t gaugepoint_rod_angle_mrad(double deviation_mm,
                                  double base_mm,
                                  double *out,
                                  struct GaugepointError *error);

/**
 * gaugepoint_rod_angle_mrad as a value; NaN where it is refused.
 */
double gaugepoint_rod_angle_mrad_v(double deviation_mm, double base_mm);

/**
 * gaugepoint_rod_angle_mrad of each of `count` rows; see FLAT FUNCTIONS at the head.
 */
int32_t gaugepoint_rod_angle_mrad_array(const double *deviation_mm,
                                        const double *base_mm,
                                        size_t count,
                                        double *out,
                                        int32_t *row_status,
                                        struct GaugepointError *error);

/**
 * What an angle of a rod makes over a length, in mm: a piston's skew over its height, for example.
 */
int32_t gaugepoint_rod_skew_mm(double angle_mrad,
                               double length_mm,
                               double *out,
                               struct GaugepointError *error);

/**
 * gaugepoint_rod_skew_mm as a value; NaN where it is refused.
 */
double gaugepoint_rod_skew_mm_v(double angle_mrad, double length_mm);

/**
 * gaugepoint_rod_skew_mm of each of `count` rows; see FLAT FUNCTIONS at the head.
 */
int32_t gaugepoint_rod_skew_mm_array(const double *angle_mrad,
                                     const double *length_mm,
                                     size_t count,
                                     double *out,
                                     int32_t *row_status,
                                     struct GaugepointError *error);

/**
 * Volume in cm3 between top land and bore, down to the first ring.
 */
int32_t gaugepoint_top_land_crevice_cm3(double bore_mm,
                                        double land_mm,
                                        double land_height_mm,
                                        double *out,
                                        struct GaugepointError *error);

/**
 * gaugepoint_top_land_crevice_cm3 as a value; NaN where it is refused.
 */
double gaugepoint_top_land_crevice_cm3_v(double bore_mm, double land_mm, double land_height_mm);

/**
 * gaugepoint_top_land_crevice_cm3 of each of `count` rows; see FLAT FUNCTIONS at the head.
 */
int32_t gaugepoint_top_land_crevice_cm3_array(const double *bore_mm,
                                              const double *land_mm,
                                              const double *land_height_mm,
                                              size_t count,
                                              double *out,
                                              int32_t *row_status,
                                              struct GaugepointError *error);

/**
 * How deep below the deck a place of the piston is, in mm: deck clearance + (crown - place) + travel; heights up from the bottom edge of
 * the skirt.
 */
int32_t gaugepoint_depth_in_bore_mm(double deck_clearance_mm,
                                    double crown_height_mm,
                                    double height_mm,
                                    double travel_mm,
                                    double *out,
                                    struct GaugepointError *error);

/**
 * gaugepoint_depth_in_bore_mm as a value; NaN where it is refused.
 */
double gaugepoint_depth_in_bore_mm_v(double deck_clearance_mm,
                                     double crown_height_mm,
                                     double height_mm,
                                     double travel_mm);

/**
 * gaugepoint_depth_in_bore_mm of each of `count` rows; see FLAT FUNCTIONS at the head.
 */
int32_t gaugepoint_depth_in_bore_mm_array(const double *deck_clearance_mm,
                                          const double *crown_height_mm,
                                          const double *height_mm,
                                          const double *travel_mm,
                                          size_t count,
                                          double *out,
                                          int32_t *row_status,
                                          struct GaugepointError *error);

/**
 * Length in mm from inches, -400 in to 400 in.
 *
 * A number of up to 15 digits and 12 decimals is converted exactly and rounded once: 2.4126 in is 61.28004 mm. Source:
 * NIST SP 811 (2008), appendix B.
 */
int32_t gaugepoint_inch_to_mm(double length_inch,
                              double *out,
                              struct GaugepointError *error);

/**
 * gaugepoint_inch_to_mm as a value; NaN where it is refused.
 */
double gaugepoint_inch_to_mm_v(double length_inch);

/**
 * gaugepoint_inch_to_mm of each of `count` rows; see FLAT FUNCTIONS at the head.
 */
int32_t gaugepoint_inch_to_mm_array(const double *length_inch,
                                    size_t count,
                                    double *out,
                                    int32_t *row_status,
                                    struct GaugepointError *error);

/**
 * Length in inches from mm, -10160 mm to 10160 mm.
 *
 * A number of up to 15 digits and 12 decimals is converted exactly and rounded once. Source: NIST SP 811 (2008), appendix B.
 */
int32_t gaugepoint_mm_to_inch(double length_mm,
                              double *out,
                              struct GaugepointError *error);

/**
 * gaugepoint_mm_to_inch as a value; NaN where it is refused.
 */
double gaugepoint_mm_to_inch_v(double length_mm);

/**
 * gaugepoint_mm_to_inch of each of `count` rows; see FLAT FUNCTIONS at the head.
 */
int32_t gaugepoint_mm_to_inch_array(const double *length_mm,
                                    size_t count,
                                    double *out,
                                    int32_t *row_status,
                                    struct GaugepointError *error);

/**
 * Length in mm from thousandths of an inch, -400000 thou to 400000 thou.
 *
 * A number of up to 15 digits and 12 decimals is converted exactly and rounded once. Source: NIST SP 811 (2008), appendix B.
 */
int32_t gaugepoint_thou_to_mm(double length_thou,
                              double *out,
                              struct GaugepointError *error);

/**
 * gaugepoint_thou_to_mm as a value; NaN where it is refused.
 */
double gaugepoint_thou_to_mm_v(double length_thou);

/**
 * gaugepoint_thou_to_mm of each of `count` rows; see FLAT FUNCTIONS at the head.
 */
int32_t gaugepoint_thou_to_mm_array(const double *length_thou,
                                    size_t count,
                                    double *out,
                                    int32_t *row_status,
                                    struct GaugepointError *error);

/**
 * Temperature in degrees Celsius from degrees Fahrenheit, -454 F to 2192 F; a difference of temperatures is another thing.
 *
 * A number of up to 15 digits and 12 decimals is converted exactly and rounded once: 80.6 F is 27 C. Source:
 * NIST SP 811 (2008), appendix B.
 */
int32_t gaugepoint_fahrenheit_to_c(double temperature_fahrenheit,
                                   double *out,
                                   struct GaugepointError *error);

/**
 * gaugepoint_fahrenheit_to_c as a value; NaN where it is refused.
 */
double gaugepoint_fahrenheit_to_c_v(double temperature_fahrenheit);

/**
 * gaugepoint_fahrenheit_to_c of each of `count` rows; see FLAT FUNCTIONS at the head.
 */
int32_t gaugepoint_fahrenheit_to_c_array(const double *temperature_fahrenheit,
                                         size_t count,
                                         double *out,
                                         int32_t *row_status,
                                         struct GaugepointError *error);

/**
 * Temperature in degrees Fahrenheit from degrees Celsius, -270 C to 1200 C; a difference of temperatures is another thing.
 *
 * A number of up to 15 digits and 12 decimals is converted exactly and rounded once. Source: NIST SP 811 (2008), appendix B.
 */
int32_t gaugepoint_c_to_fahrenheit(double temperature_c,
                                   double *out,
                                   struct GaugepointError *error);

/**
 * gaugepoint_c_to_fahrenheit as a value; NaN where it is refused.
 */
double gaugepoint_c_to_fahrenheit_v(double temperature_c);

/**
 * gaugepoint_c_to_fahrenheit of each of `count` rows; see FLAT FUNCTIONS at the head.
 */
int32_t gaugepoint_c_to_fahrenheit_array(const double *temperature_c,
                                         size_t count,
                                         double *out,
                                         int32_t *row_status,
                                         struct GaugepointError *error);

/**
 * Coefficient of expansion per kelvin from one per degree Fahrenheit, 1e-7 to 5e-5 per degree Fahrenheit: 1.8 times as much.
 *
 * A number of up to 15 digits and 12 decimals is converted exactly and rounded once. Source: NIST SP 811 (2008), appendix B.
 */
int32_t gaugepoint_per_fahrenheit_to_per_k(double expansion_per_fahrenheit,
                                           double *out,
                                           struct GaugepointError *error);

/**
 * gaugepoint_per_fahrenheit_to_per_k as a value; NaN where it is refused.
 */
double gaugepoint_per_fahrenheit_to_per_k_v(double expansion_per_fahrenheit);

/**
 * gaugepoint_per_fahrenheit_to_per_k of each of `count` rows; see FLAT FUNCTIONS at the head.
 */
int32_t gaugepoint_per_fahrenheit_to_per_k_array(const double *expansion_per_fahrenheit,
                                                 size_t count,
                                                 double *out,
                                                 int32_t *row_status,
                                                 struct GaugepointError *error);

/**
 * End gap in mm with bore and ring at their temperatures, -40 C to 450 C, from the gap at 20 C; below zero the ends butt.
 *
 * gap (1 + a_ring (t_ring - 20)) + pi bore (a_bore (t_bore - 20) - a_ring (t_ring - 20)). Source: hot circumference of the bore less
 * the hot length of the ring.
 */
int32_t gaugepoint_ring_hot_gap_mm(double gap_mm,
                                   double bore_mm,
                                   double bore_temperature_c,
                                   double bore_expansion_per_k,
                                   double ring_temperature_c,
                                   double ring_expansion_per_k,
                                   double *out,
                                   struct GaugepointError *error);

/**
 * gaugepoint_ring_hot_gap_mm as a value; NaN where it is refused.
 */
double gaugepoint_ring_hot_gap_mm_v(double gap_mm,
                                    double bore_mm,
                                    double bore_temperature_c,
                                    double bore_expansion_per_k,
                                    double ring_temperature_c,
                                    double ring_expansion_per_k);

/**
 * gaugepoint_ring_hot_gap_mm of each of `count` rows; see FLAT FUNCTIONS at the head.
 */
int32_t gaugepoint_ring_hot_gap_mm_array(const double *gap_mm,
                                         const double *bore_mm,
                                         const double *bore_temperature_c,
                                         const double *bore_expansion_per_k,
                                         const double *ring_temperature_c,
                                         const double *ring_expansion_per_k,
                                         size_t count,
                                         double *out,
                                         int32_t *row_status,
                                         struct GaugepointError *error);

/**
 * Clearance of a pin in a boss or in a bush at 20 C, in mm, over the diameter: hole - pin; negative is interference.
 *
 * Refused when it is not between -0.15 mm and 0.2 mm: another pin.
 */
int32_t gaugepoint_pin_cold_clearance_mm(double hole_mm,
                                         double pin_mm,
                                         double *out,
                                         struct GaugepointError *error);

/**
 * gaugepoint_pin_cold_clearance_mm as a value; NaN where it is refused.
 */
double gaugepoint_pin_cold_clearance_mm_v(double hole_mm, double pin_mm);

/**
 * gaugepoint_pin_cold_clearance_mm of each of `count` rows; see FLAT FUNCTIONS at the head.
 */
int32_t gaugepoint_pin_cold_clearance_mm_array(const double *hole_mm,
                                               const double *pin_mm,
                                               size_t count,
                                               double *out,
                                               int32_t *row_status,
                                               struct GaugepointError *error);

/**
 * Clearance in mm of a freely growing pin in a boss or in a bush, over the diameter, from sizes at 20 C.
 *
 * hole (1 + a_hole (t_hole - 20)) - pin (1 + a_pin (t_pin - 20)). Temperatures from -40 C to 450 C. A pressed bush grows by the
 * coefficient of what holds it. Source: definition of strain.
 */
int32_t gaugepoint_pin_hot_clearance_mm(double hole_mm,
                                        double hole_temperature_c,
                                        double hole_expansion_per_k,
                                        double pin_mm,
                                        double pin_temperature_c,
                                        double pin_expansion_per_k,
                                        double *out,
                                        struct GaugepointError *error);

/**
 * gaugepoint_pin_hot_clearance_mm as a value; NaN where it is refused.
 */
double gaugepoint_pin_hot_clearance_mm_v(double hole_mm,
                                         double hole_temperature_c,
                                         double hole_expansion_per_k,
                                         double pin_mm,
                                         double pin_temperature_c,
                                         double pin_expansion_per_k);

/**
 * gaugepoint_pin_hot_clearance_mm of each of `count` rows; see FLAT FUNCTIONS at the head.
 */
int32_t gaugepoint_pin_hot_clearance_mm_array(const double *hole_mm,
                                              const double *hole_temperature_c,
                                              const double *hole_expansion_per_k,
                                              const double *pin_mm,
                                              const double *pin_temperature_c,
                                              const double *pin_expansion_per_k,
                                              size_t count,
                                              double *out,
                                              int32_t *row_status,
                                              struct GaugepointError *error);

/**
 * Pressure in MPa in the joint of a pin pressed into an eye; 0 when the smoothing takes all of the interference.
 *
 * Sizes are diameters at 20 C; a hole of 0 is a solid pin. Source: Lame, thick elastic tubes with free ends.
 */
int32_t gaugepoint_press_fit_pressure_mpa(double pin_mm,
                                          double pin_hole_mm,
                                          double eye_mm,
                                          double interference_mm,
                                          double smoothing_mm,
                                          double pin_modulus_mpa,
                                          double pin_poisson,
                                          double eye_modulus_mpa,
                                          double eye_poisson,
                                          double *out,
                                          struct GaugepointError *error);

/**
 * gaugepoint_press_fit_pressure_mpa as a value; NaN where it is refused.
 */
double gaugepoint_press_fit_pressure_mpa_v(double pin_mm,
                                           double pin_hole_mm,
                                           double eye_mm,
                                           double interference_mm,
                                           double smoothing_mm,
                                           double pin_modulus_mpa,
                                           double pin_poisson,
                                           double eye_modulus_mpa,
                                           double eye_poisson);

/**
 * gaugepoint_press_fit_pressure_mpa of each of `count` rows; see FLAT FUNCTIONS at the head.
 */
int32_t gaugepoint_press_fit_pressure_mpa_array(const double *pin_mm,
                                                const double *pin_hole_mm,
                                                const double *eye_mm,
                                                const double *interference_mm,
                                                const double *smoothing_mm,
                                                const double *pin_modulus_mpa,
                                                const double *pin_poisson,
                                                const double *eye_modulus_mpa,
                                                const double *eye_poisson,
                                                size_t count,
                                                double *out,
                                                int32_t *row_status,
                                                struct GaugepointError *error);

/**
 * Axial force in N at which a pin pressed into an eye slips: pi pin width pressure friction.
 *
 * The pressure is that of press_fit_pressure_mpa. Source: Coulomb friction over the joint.
 */
int32_t gaugepoint_press_fit_force_n(double pin_mm,
                                     double pin_hole_mm,
                                     double eye_mm,
                                     double width_mm,
                                     double interference_mm,
                                     double smoothing_mm,
                                     double friction,
                                     double pin_modulus_mpa,
                                     double pin_poisson,
                                     double eye_modulus_mpa,
                                     double eye_poisson,
                                     double *out,
                                     struct GaugepointError *error);

/**
 * gaugepoint_press_fit_force_n as a value; NaN where it is refused.
 */
double gaugepoint_press_fit_force_n_v(double pin_mm,
                                      double pin_hole_mm,
                                      double eye_mm,
                                      double width_mm,
                                      double interference_mm,
                                      double smoothing_mm,
                                      double friction,
                                      double pin_modulus_mpa,
                                      double pin_poisson,
                                      double eye_modulus_mpa,
                                      double eye_poisson);

/**
 * gaugepoint_press_fit_force_n of each of `count` rows; see FLAT FUNCTIONS at the head.
 */
int32_t gaugepoint_press_fit_force_n_array(const double *pin_mm,
                                           const double *pin_hole_mm,
                                           const double *eye_mm,
                                           const double *width_mm,
                                           const double *interference_mm,
                                           const double *smoothing_mm,
                                           const double *friction,
                                           const double *pin_modulus_mpa,
                                           const double *pin_poisson,
                                           const double *eye_modulus_mpa,
                                           const double *eye_poisson,
                                           size_t count,
                                           double *out,
                                           int32_t *row_status,
                                           struct GaugepointError *error);

/**
 * Torque in N m at which a pin pressed into an eye slips: force pin / 2.
 *
 * The force is that of press_fit_force_n. Source: Coulomb friction at the radius of the joint.
 */
int32_t gaugepoint_press_fit_torque_nm(double pin_mm,
                                       double pin_hole_mm,
                                       double eye_mm,
                                       double width_mm,
                                       double interference_mm,
                                       double smoothing_mm,
                                       double friction,
                                       double pin_modulus_mpa,
                                       double pin_poisson,
                                       double eye_modulus_mpa,
                                       double eye_poisson,
                                       double *out,
                                       struct GaugepointError *error);

/**
 * gaugepoint_press_fit_torque_nm as a value; NaN where it is refused.
 */
double gaugepoint_press_fit_torque_nm_v(double pin_mm,
                                        double pin_hole_mm,
                                        double eye_mm,
                                        double width_mm,
                                        double interference_mm,
                                        double smoothing_mm,
                                        double friction,
                                        double pin_modulus_mpa,
                                        double pin_poisson,
                                        double eye_modulus_mpa,
                                        double eye_poisson);

/**
 * gaugepoint_press_fit_torque_nm of each of `count` rows; see FLAT FUNCTIONS at the head.
 */
int32_t gaugepoint_press_fit_torque_nm_array(const double *pin_mm,
                                             const double *pin_hole_mm,
                                             const double *eye_mm,
                                             const double *width_mm,
                                             const double *interference_mm,
                                             const double *smoothing_mm,
                                             const double *friction,
                                             const double *pin_modulus_mpa,
                                             const double *pin_poisson,
                                             const double *eye_modulus_mpa,
                                             const double *eye_poisson,
                                             size_t count,
                                             double *out,
                                             int32_t *row_status,
                                             struct GaugepointError *error);

/**
 * Temperature in degrees Celsius to which the outer part is heated, the pin at 20 C, so that its hole opens by the interference and a
 * clearance: 20 + (interference + clearance) / (a diameter).
 *
 * Clean steel colours from 249 C: too much heat. Source: free growth.
 */
int32_t gaugepoint_assembly_temperature_c(double diameter_mm,
                                          double interference_mm,
                                          double clearance_mm,
                                          double expansion_per_k,
                                          double *out,
                                          struct GaugepointError *error);

/**
 * gaugepoint_assembly_temperature_c as a value; NaN where it is refused.
 */
double gaugepoint_assembly_temperature_c_v(double diameter_mm,
                                           double interference_mm,
                                           double clearance_mm,
                                           double expansion_per_k);

/**
 * gaugepoint_assembly_temperature_c of each of `count` rows; see FLAT FUNCTIONS at the head.
 */
int32_t gaugepoint_assembly_temperature_c_array(const double *diameter_mm,
                                                const double *interference_mm,
                                                const double *clearance_mm,
                                                const double *expansion_per_k,
                                                size_t count,
                                                double *out,
                                                int32_t *row_status,
                                                struct GaugepointError *error);

/**
 * From the deck down to the crown at top dead centre, in mm: block - (stroke / 2 + rod + compression height); negative when the crown
 * stands above the deck.
 */
int32_t gaugepoint_piston_deck_clearance_mm(double block_height_mm,
                                            double stroke_mm,
                                            double rod_mm,
                                            double compression_height_mm,
                                            double *out,
                                            struct GaugepointError *error);

/**
 * gaugepoint_piston_deck_clearance_mm as a value; NaN where it is refused.
 */
double gaugepoint_piston_deck_clearance_mm_v(double block_height_mm,
                                             double stroke_mm,
                                             double rod_mm,
                                             double compression_height_mm);

/**
 * gaugepoint_piston_deck_clearance_mm of each of `count` rows; see FLAT FUNCTIONS at the head.
 */
int32_t gaugepoint_piston_deck_clearance_mm_array(const double *block_height_mm,
                                                  const double *stroke_mm,
                                                  const double *rod_mm,
                                                  const double *compression_height_mm,
                                                  size_t count,
                                                  double *out,
                                                  int32_t *row_status,
                                                  struct GaugepointError *error);

/**
 * Swept volume in cm3 of one cylinder: pi bore^2 stroke / 4.
 */
int32_t gaugepoint_swept_volume_cm3(double bore_mm,
                                    double stroke_mm,
                                    double *out,
                                    struct GaugepointError *error);

/**
 * gaugepoint_swept_volume_cm3 as a value; NaN where it is refused.
 */
double gaugepoint_swept_volume_cm3_v(double bore_mm, double stroke_mm);

/**
 * gaugepoint_swept_volume_cm3 of each of `count` rows; see FLAT FUNCTIONS at the head.
 */
int32_t gaugepoint_swept_volume_cm3_array(const double *bore_mm,
                                          const double *stroke_mm,
                                          size_t count,
                                          double *out,
                                          int32_t *row_status,
                                          struct GaugepointError *error);

/**
 * Compression ratio, a pure number: (swept + clearance volume) / clearance volume.
 *
 * A dome of the crown is a negative volume, a protrusion a negative deck clearance; 0 leaves the crevice at the top land out, as is usual.
 * Refused when nothing is left above the piston.
 */
int32_t gaugepoint_static_compression_ratio(double bore_mm,
                                            double stroke_mm,
                                            double head_cm3,
                                            double gasket_bore_mm,
                                            double gasket_mm,
                                            double deck_clearance_mm,
                                            double crown_cm3,
                                            double crevice_cm3,
                                            double *out,
                                            struct GaugepointError *error);

/**
 * gaugepoint_static_compression_ratio as a value; NaN where it is refused.
 */
double gaugepoint_static_compression_ratio_v(double bore_mm,
                                             double stroke_mm,
                                             double head_cm3,
                                             double gasket_bore_mm,
                                             double gasket_mm,
                                             double deck_clearance_mm,
                                             double crown_cm3,
                                             double crevice_cm3);

/**
 * gaugepoint_static_compression_ratio of each of `count` rows; see FLAT FUNCTIONS at the head.
 */
int32_t gaugepoint_static_compression_ratio_array(const double *bore_mm,
                                                  const double *stroke_mm,
                                                  const double *head_cm3,
                                                  const double *gasket_bore_mm,
                                                  const double *gasket_mm,
                                                  const double *deck_clearance_mm,
                                                  const double *crown_cm3,
                                                  const double *crevice_cm3,
                                                  size_t count,
                                                  double *out,
                                                  int32_t *row_status,
                                                  struct GaugepointError *error);

/**
 * Travel of the piston in mm from top dead centre down, at a crank angle from -720 deg to 720 deg.
 *
 * The angle is 0 with the throw in line with the cylinder; an offset of the pin toward the major thrust side is positive. Source: slider-crank
 * with an offset pin.
 */
int32_t gaugepoint_piston_travel_mm(double crank_radius_mm,
                                    double rod_mm,
                                    double pin_offset_mm,
                                    double crank_angle_deg,
                                    double *out,
                                    struct GaugepointError *error);

/**
 * gaugepoint_piston_travel_mm as a value; NaN where it is refused.
 */
double gaugepoint_piston_travel_mm_v(double crank_radius_mm,
                                     double rod_mm,
                                     double pin_offset_mm,
                                     double crank_angle_deg);

/**
 * gaugepoint_piston_travel_mm of each of `count` rows; see FLAT FUNCTIONS at the head.
 */
int32_t gaugepoint_piston_travel_mm_array(const double *crank_radius_mm,
                                          const double *rod_mm,
                                          const double *pin_offset_mm,
                                          const double *crank_angle_deg,
                                          size_t count,
                                          double *out,
                                          int32_t *row_status,
                                          struct GaugepointError *error);

/**
 * Size in mm, at 20 C, to which the bore for a piston is finished: piston + clearance wanted on the bench.
 */
int32_t gaugepoint_finish_size_mm(double piston_mm,
                                  double clearance_mm,
                                  double *out,
                                  struct GaugepointError *error);

/**
 * gaugepoint_finish_size_mm as a value; NaN where it is refused.
 */
double gaugepoint_finish_size_mm_v(double piston_mm, double clearance_mm);

/**
 * gaugepoint_finish_size_mm of each of `count` rows; see FLAT FUNCTIONS at the head.
 */
int32_t gaugepoint_finish_size_mm_array(const double *piston_mm,
                                        const double *clearance_mm,
                                        size_t count,
                                        double *out,
                                        int32_t *row_status,
                                        struct GaugepointError *error);

/**
 * Size in mm, at 20 C, to which the bore for a piston is bored: piston + clearance wanted on the bench - what is left for the hone.
 */
int32_t gaugepoint_boring_size_mm(double piston_mm,
                                  double clearance_mm,
                                  double honing_mm,
                                  double *out,
                                  struct GaugepointError *error);

/**
 * gaugepoint_boring_size_mm as a value; NaN where it is refused.
 */
double gaugepoint_boring_size_mm_v(double piston_mm, double clearance_mm, double honing_mm);

/**
 * gaugepoint_boring_size_mm of each of `count` rows; see FLAT FUNCTIONS at the head.
 */
int32_t gaugepoint_boring_size_mm_array(const double *piston_mm,
                                        const double *clearance_mm,
                                        const double *honing_mm,
                                        size_t count,
                                        double *out,
                                        int32_t *row_status,
                                        struct GaugepointError *error);

/**
 * Size of a bore at 20 C, in mm, from the deviation that a bore gauge set on a ring shows, positive when the bore is larger.
 *
 * (setting (1 + a_ring (t_ring - 20)) (1 + a_used (t_used - 20)) / (1 + a_set (t_set - 20)) + deviation) / (1 + a_block (t_block - 20)): the
 * gauge when it was set, and when it is used. Temperatures from -5 C to 60 C. Source: ISO 1:2022 and the definition of strain.
 */
int32_t gaugepoint_bore_size_at_20_mm(double deviation_mm,
                                      double setting_mm,
                                      double ring_temperature_c,
                                      double ring_expansion_per_k,
                                      double set_temperature_c,
                                      double set_expansion_per_k,
                                      double used_temperature_c,
                                      double used_expansion_per_k,
                                      double block_temperature_c,
                                      double block_expansion_per_k,
                                      double *out,
                                      struct GaugepointError *error);

/**
 * gaugepoint_bore_size_at_20_mm as a value; NaN where it is refused.
 */
double gaugepoint_bore_size_at_20_mm_v(double deviation_mm,
                                       double setting_mm,
                                       double ring_temperature_c,
                                       double ring_expansion_per_k,
                                       double set_temperature_c,
                                       double set_expansion_per_k,
                                       double used_temperature_c,
                                       double used_expansion_per_k,
                                       double block_temperature_c,
                                       double block_expansion_per_k);

/**
 * gaugepoint_bore_size_at_20_mm of each of `count` rows; see FLAT FUNCTIONS at the head.
 */
int32_t gaugepoint_bore_size_at_20_mm_array(const double *deviation_mm,
                                            const double *setting_mm,
                                            const double *ring_temperature_c,
                                            const double *ring_expansion_per_k,
                                            const double *set_temperature_c,
                                            const double *set_expansion_per_k,
                                            const double *used_temperature_c,
                                            const double *used_expansion_per_k,
                                            const double *block_temperature_c,
                                            const double *block_expansion_per_k,
                                            size_t count,
                                            double *out,
                                            int32_t *row_status,
                                            struct GaugepointError *error);

/**
 * Size in mm of a freely growing part at a temperature, from its size at 20 C: size (1 + a (t - 20)).
 *
 * Temperatures from -40 C to 450 C. Source: definition of strain.
 */
int32_t gaugepoint_size_at_temperature_mm(double size_mm,
                                          double temperature_c,
                                          double expansion_per_k,
                                          double *out,
                                          struct GaugepointError *error);

/**
 * gaugepoint_size_at_temperature_mm as a value; NaN where it is refused.
 */
double gaugepoint_size_at_temperature_mm_v(double size_mm, double temperature_c, double expansion_per_k);

/**
 * gaugepoint_size_at_temperature_mm of each of `count` rows; see FLAT FUNCTIONS at the head.
 */
int32_t gaugepoint_size_at_temperature_mm_array(const double *size_mm,
                                                const double *temperature_c,
                                                const double *expansion_per_k,
                                                size_t count,
                                                double *out,
                                                int32_t *row_status,
                                                struct GaugepointError *error);

/**
 * Probability that the true value lies within two limits, for a value with a normal error of a standard uncertainty.
 *
 * A value without uncertainty gives 1 or 0. Source: JCGM 106:2012, 7.2.2.
 */
int32_t gaugepoint_probability_of_conformity(double value_mm,
                                             double standard_uncertainty_mm,
                                             double lower_mm,
                                             double upper_mm,
                                             double *out,
                                             struct GaugepointError *error);

/**
 * gaugepoint_probability_of_conformity as a value; NaN where it is refused.
 */
double gaugepoint_probability_of_conformity_v(double value_mm,
                                              double standard_uncertainty_mm,
                                              double lower_mm,
                                              double upper_mm);

/**
 * gaugepoint_probability_of_conformity of each of `count` rows; see FLAT FUNCTIONS at the head.
 */
int32_t gaugepoint_probability_of_conformity_array(const double *value_mm,
                                                   const double *standard_uncertainty_mm,
                                                   const double *lower_mm,
                                                   const double *upper_mm,
                                                   size_t count,
                                                   double *out,
                                                   int32_t *row_status,
                                                   struct GaugepointError *error);

/**
 * Coverage factor of Student's t for a coverage probability between 0 and 1. JCGM 100:2008, G.3.2.
 *
 * `dof` from 0.5; INFINITY gives that of the normal.
 */
int32_t gaugepoint_coverage_factor(double probability,
                                   double dof,
                                   double *out,
                                   struct GaugepointError *error);

/**
 * gaugepoint_coverage_factor as a value; NaN where it is refused.
 */
double gaugepoint_coverage_factor_v(double probability, double dof);

/**
 * gaugepoint_coverage_factor of each of `count` rows; see FLAT FUNCTIONS at the head.
 */
int32_t gaugepoint_coverage_factor_array(const double *probability,
                                         const double *dof,
                                         size_t count,
                                         double *out,
                                         int32_t *row_status,
                                         struct GaugepointError *error);

/**
 * Mean and spread of `count` values, at least two, in any one unit. JCGM 100:2008, 4.2.
 */
int32_t gaugepoint_sample(const double *values,
                          size_t count,
                          struct GaugepointSample *out,
                          struct GaugepointError *error);

/**
 * One-way analysis of variance of `count` values, one group after the other.
 *
 * `group_sizes` has the number of values of each of the `groups` groups, which must add to `count`. At least two groups,
 * none empty, and more values than groups. A refused value is named by its group and its place there, from 0:
 * "groups/1/4". NIST/SEMATECH e-Handbook, 7.4.3.
 */
int32_t gaugepoint_one_way(const double *values,
                           size_t count,
                           const size_t *group_sizes,
                           size_t groups,
                           struct GaugepointOneWay *out,
                           struct GaugepointError *error);

/**
 * Crossed gauge study by averages and ranges, for up to 25 appraisers, trials and parts.
 *
 * Every appraiser reads every part equally often: `appraisers` x `trials` x `parts` values in any one unit, those of an
 * appraiser together, within them those of a trial, within it the parts in order. At least two of each. A refused value
 * is named by appraiser, trial and part, from 0: "values/2/0/9". Measurement systems analysis, fourth edition.
 */
int32_t gaugepoint_study_by_ranges(const double *values,
                                   size_t appraisers,
                                   size_t trials,
                                   size_t parts,
                                   struct GaugepointStudy *out,
                                   struct GaugepointError *error);

/**
 * Crossed gauge study by analysis of variance; the values are those of gaugepoint_study_by_ranges, without its limit.
 *
 * `pooling` is a GaugepointPooling; `probability` counts when `has_probability` is 1, which it is with
 * GAUGEPOINT_POOLING_ABOVE (0.25 is usual) and with no other.
 */
int32_t gaugepoint_study_by_variance(const double *values,
                                     size_t appraisers,
                                     size_t trials,
                                     size_t parts,
                                     int32_t pooling,
                                     int32_t has_probability,
                                     double probability,
                                     struct GaugepointStudy *out,
                                     struct GaugepointError *error);

/**
 * Bias from `count` readings of one part, at least two, in any one unit.
 *
 * `reference` is the value of the part and `reference_uncertainty` its standard uncertainty, 0 when it is exact. `coverage`
 * is that of the confidence interval, between 0 and 1 (0.95 is usual). One-sample t test: NIST/SEMATECH e-Handbook, 7.2.2.
 */
int32_t gaugepoint_bias(const double *values,
                        size_t count,
                        double reference,
                        double reference_uncertainty,
                        double coverage,
                        struct GaugepointBias *out,
                        struct GaugepointError *error);

/**
 * Linearity from `count` readings of several parts, one part after the other, in any one unit.
 *
 * `references` has the value of each of the `groups` parts, taken as exact, and `group_sizes` how many readings are of it;
 * they must add to `count`. At least three readings of two sizes. `coverage` is that of the confidence band, between 0 and
 * 1 (0.95 is usual). Measurement systems analysis, fourth edition.
 */
int32_t gaugepoint_linearity(const double *references,
                             const size_t *group_sizes,
                             size_t groups,
                             const double *readings,
                             size_t count,
                             double coverage,
                             struct GaugepointLinearity *out,
                             struct GaugepointError *error);

/**
 * Mean bias at size `x`, with its confidence interval; the other arguments are those of gaugepoint_linearity.
 */
int32_t gaugepoint_linearity_band(const double *references,
                                  const size_t *group_sizes,
                                  size_t groups,
                                  const double *readings,
                                  size_t count,
                                  double x,
                                  double coverage,
                                  struct GaugepointBand *out,
                                  struct GaugepointError *error);

/**
 * Control chart of `subgroups` x `size` readings, one subgroup after the other in order of time, in any one unit.
 *
 * `kind` is a GaugepointChartKind. At least two subgroups, of 2 to 25 readings; `size` is 1 for single readings. `points`
 * has room for `subgroups` points; moving ranges are one fewer. A refused value is named by subgroup and place, from 0:
 * "values/4/0". ISO 7870-2:2013.
 */
int32_t gaugepoint_control_chart(const double *values,
                                 size_t subgroups,
                                 size_t size,
                                 int32_t kind,
                                 struct GaugepointChart *out,
                                 struct GaugepointPoint *points,
                                 struct GaugepointError *error);

/**
 * Evaluates a budget of uncertainty and gives its report, both JSON.
 *
 * `budget` is a budget document of `budget_length` bytes. `report` gets the text, to be freed by gaugepoint_text_free,
 * and `report_length` its length in bytes without the NUL that ends it. A Monte Carlo run takes the time of its trials.
 */
int32_t gaugepoint_budget_evaluate(const char *budget,
                                   size_t budget_length,
                                   char **report,
                                   size_t *report_length,
                                   struct GaugepointError *error);

/**
 * Effective degrees of freedom of `count` independent contributions. JCGM 100:2008, G.4.1, (G.2b).
 *
 * `contributions` are sensitivity times standard uncertainty each, `dofs` their degrees of freedom, from 0.5 or
 * INFINITY. INFINITY when all that count are.
 */
int32_t gaugepoint_effective_dof(const double *contributions,
                                 const double *dofs,
                                 size_t count,
                                 double *out,
                                 struct GaugepointError *error);

/**
 * Standard uncertainty of a half-width, in its unit. JCGM 100:2008, 4.3; JCGM 101:2008, 6.4.
 *
 * `shape` is a GaugepointBounded; `parameter` counts when `has_parameter` is 1, which it is with
 * GAUGEPOINT_BOUNDED_TRAPEZOIDAL and GAUGEPOINT_BOUNDED_CURVILINEAR_TRAPEZOID and with no other.
 */
int32_t gaugepoint_standard_uncertainty(int32_t shape,
                                        double half_width,
                                        int32_t has_parameter,
                                        double parameter,
                                        double *out,
                                        struct GaugepointError *error);

/**
 * Numerical tolerance of a standard uncertainty that is meant to `digits` significant digits, 1 or 2.
 *
 * 0.00035 to two digits is 35e-5 and has 0.000005. JCGM 101:2008, 7.9.2.
 */
int32_t gaugepoint_numerical_tolerance(double standard_uncertainty,
                                       int32_t digits,
                                       double *out,
                                       struct GaugepointError *error);

/**
 * Is a part soaked; if not, how long to wait, and what correcting instead would cost.
 *
 * `excess_k` is the temperature of the part less that of the gauge, `time_constant_min` the minutes in which it falls to
 * 37 %, `size_mm` the size of the part, `expansion_per_k` its coefficient, `allowed_mm` the error of the size that is
 * allowed; `excess_error_k` and `expansion_error_per_k` are half-widths. First-order cooling, the gauge at the temperature
 * of the shop.
 */
int32_t gaugepoint_soak(double excess_k,
                        double time_constant_min,
                        double size_mm,
                        double expansion_per_k,
                        double allowed_mm,
                        double excess_error_k,
                        double expansion_error_per_k,
                        struct GaugepointSoak *out,
                        struct GaugepointError *error);

/**
 * Holds a standard uncertainty against a tolerance with two limits, before anything is measured with it.
 *
 * `guard` is a GaugepointGuard, with its number as in gaugepoint_acceptance: a ratio that the tolerance must reach (then
 * `least_zone` asks nothing more), or a guard band at each end, with at least the share `least_zone` of the tolerance left
 * between them. A relaxed guard asks nothing of a gauge and is refused. JCGM 106:2012, 8.3.2; ISO 14253-1; ASME B89.7.3.1.
 */
int32_t gaugepoint_adequacy(const struct GaugepointInterval *tolerance,
                            double u,
                            int32_t guard,
                            int32_t has_amount,
                            double amount,
                            double least_zone,
                            struct GaugepointAdequacy *out,
                            struct GaugepointError *error);

/**
 * Drift of a gauge from its reading of the master before and after a set of readings, as a source of the set.
 *
 * Beyond `limit_mm` the set is refused: the error names `after_mm` and has the drift as its value.
 */
int32_t gaugepoint_drift(double before_mm,
                         double after_mm,
                         double limit_mm,
                         struct GaugepointDrift *out,
                         struct GaugepointError *error);

/**
 * Holds two values with their standard uncertainties against each other: E_n with U = 2 u. ISO/IEC 17043:2010, B.3.1.3.
 *
 * What both share (one master, one thermometer) belongs into neither uncertainty.
 */
int32_t gaugepoint_agreement(double first,
                             double first_u,
                             double second,
                             double second_u,
                             struct GaugepointAgreement *out,
                             struct GaugepointError *error);

/**
 * Do two readers agree, from the lists of what each read at one place, with a gauge of this resolution?
 *
 * E_n with 95 % expanded uncertainties of the two means: deviation of the mean and resolution, Student's factor.
 */
int32_t gaugepoint_readers(const double *first,
                           size_t first_count,
                           const double *second,
                           size_t second_count,
                           double resolution,
                           struct GaugepointAgreement *out,
                           struct GaugepointError *error);

/**
 * Tests a station list for outliers with the probability `alpha` of a false alarm on the whole list, 1e-6 to 0.5.
 *
 * `points` has three numbers for each of `count` points, at most 1000: depth in mm, angle in degrees, value in any one
 * unit. `pattern` is a GaugepointPattern. `flags` has room for `count` numbers and gets 1 for each point that is farther off than
 * chance allows, else 0; it is left as it was on failure. A point that stands out is named, never removed. Grubbs' test
 * (ISO 5725-2), for the other forms the maximum normed residual.
 */
int32_t gaugepoint_outliers(const double *points,
                            size_t count,
                            int32_t pattern,
                            double alpha,
                            int32_t *flags,
                            struct GaugepointOutliers *out,
                            struct GaugepointError *error);

/**
 * The rows one after the other: call with 0, 1, 2 ... until it fails with GAUGEPOINT_STATUS_OUT_OF_RANGE.
 *
 * The ranges are common practice with a margin, and no maker's data.
 */
int32_t gaugepoint_plausibility_row(size_t index, struct GaugepointRow *out, struct GaugepointError *error);

/**
 * Holds one value, in the unit of its rows, against the table.
 *
 * `name` is that of a row, of `name_length` bytes. `diameter_mm` counts when `has_diameter` is 1: what relative rows refer
 * to, the bore (or, for a pressed pin, the pin). Without it only the other rows are used; a quantity that has relative
 * rows only needs it. `verdict` gets a GaugepointPlausibility; an impossible value fails, and the error says what was
 * probably meant where a slip explains it.
 */
int32_t gaugepoint_judge(const char *name,
                         size_t name_length,
                         double value,
                         int32_t has_diameter,
                         double diameter_mm,
                         int32_t *verdict,
                         struct GaugepointError *error);

/**
 * Fits a circle to `count` points of a section, at least three, by the true distances.
 *
 * `reference` is a GaugepointReference; all but least squares need points in every half of the circle. Minimum zone and
 * maximum inscribed are the best near the least-squares circle. A refused number is named "x_mm/3". ISO 12181-1.
 */
int32_t gaugepoint_fit_circle(const double *x_mm,
                              const double *y_mm,
                              size_t count,
                              int32_t reference,
                              struct GaugepointCircle *out,
                              struct GaugepointError *error);

/**
 * Fits the equation of a circle to `count` points, at least three: no iteration, but biased on short arcs.
 *
 * `method` is a GaugepointAlgebraic. The form is that of the distances from the circle.
 */
int32_t gaugepoint_fit_circle_algebraic(const double *x_mm,
                                        const double *y_mm,
                                        size_t count,
                                        int32_t method,
                                        struct GaugepointCircle *out,
                                        struct GaugepointError *error);

/**
 * Fits a cylinder to `count` points of a bore or a piston, at least five at two depths, by the true distances.
 *
 * z is the depth; the axis leans from it by a tenth at most. `reference` is as in gaugepoint_fit_circle. ISO 12180-1.
 */
int32_t gaugepoint_fit_cylinder(const double *x_mm,
                                const double *y_mm,
                                const double *z_mm,
                                size_t count,
                                int32_t reference,
                                struct GaugepointCylinder *out,
                                struct GaugepointError *error);

/**
 * Fits a plane to `count` points of a deck, at least three that do not lie on a line; z is the height.
 *
 * `reference` is GAUGEPOINT_REFERENCE_LEAST_SQUARES or GAUGEPOINT_REFERENCE_MINIMUM_ZONE. Distances are perpendicular
 * to the plane. ISO 12781-1.
 */
int32_t gaugepoint_fit_plane(const double *x_mm,
                             const double *y_mm,
                             const double *z_mm,
                             size_t count,
                             int32_t reference,
                             struct GaugepointPlane *out,
                             struct GaugepointError *error);

/**
 * Squareness and position of a bore to the main line, from points of both: x, y, z of the first, of the second, and so on.
 *
 * At least two points of each, in their order: centres of the bore's sections, centres of the main bearings. A refused
 * number is named by its point and its place there: "bore_mm/1/2".
 */
int32_t gaugepoint_bore_to_main_line(const double *bore_mm,
                                     size_t bore_points,
                                     const double *main_mm,
                                     size_t main_points,
                                     struct GaugepointBoreAxis *out,
                                     struct GaugepointError *error);

/**
 * Harmonics of a section up to `order` by least squares, from `count` radii at angles from 0 to 360 degrees.
 *
 * Radii are counted from any one centre near the axis. Order 1, the position, stands in `out`; `harmonics` gets the orders
 * from 2 up, rising, and has `room` for them: `order` is enough. An order that the angles do not resolve is refused,
 * with those they do as the accepted range.
 */
int32_t gaugepoint_section_from_radii(const double *angles_deg,
                                      const double *radii_mm,
                                      size_t count,
                                      size_t order,
                                      struct GaugepointHarmonic *harmonics,
                                      size_t room,
                                      struct GaugepointSection *out,
                                      struct GaugepointError *error);

/**
 * Harmonics of a section up to `order`, which is even, from `count` two-point diameters at the angles of their axes.
 *
 * `harmonics` gets the even orders from 2 up and has `room` for them: `order` is enough. Two axes give the mean and one
 * phase of order 2, four axes order 2 and one phase of order 4.
 */
int32_t gaugepoint_section_from_diameters(const double *angles_deg,
                                          const double *diameters_mm,
                                          size_t count,
                                          size_t order,
                                          struct GaugepointHarmonic *harmonics,
                                          size_t room,
                                          struct GaugepointSection *out,
                                          struct GaugepointError *error);

/**
 * Diameter in mm that a two-point gauge reads across the axis of a section, at an angle from 0 to 360 degrees.
 *
 * `harmonics` has `count` orders, in any order. Odd orders do not show.
 */
int32_t gaugepoint_two_point_mm(double mean_radius_mm,
                                const struct GaugepointHarmonic *harmonics,
                                size_t count,
                                double angle_deg,
                                double *out,
                                struct GaugepointError *error);

/**
 * Diameter in mm that a gauge with three legs reads, which reach out equally from a centre that finds itself.
 *
 * The first leg is turned to `angle_deg`; the directions of the legs rise, neighbours less than half a turn apart. To the
 * first order: the second is the square of the form error over the radius.
 */
int32_t gaugepoint_three_leg_mm(double mean_radius_mm,
                                const struct GaugepointHarmonic *harmonics,
                                size_t count,
                                double angle_deg,
                                double leg_1_deg,
                                double leg_2_deg,
                                double leg_3_deg,
                                double *out,
                                struct GaugepointError *error);

/**
 * How much of the amplitude of an order a probe shows over a V-block in which the part is turned. ISO 4292.
 *
 * `included_deg` is the angle between the faces, 10 to 170 degrees; `probe_deg` the direction of the probe, 0 opposite
 * the V, where the factor is |1 + cos(n (90 + a)) / sin a| with a half the included angle.
 */
int32_t gaugepoint_v_block_factor(size_t order,
                                  double included_deg,
                                  double probe_deg,
                                  double *out,
                                  struct GaugepointError *error);

/**
 * Radius at a height and an angle, with the coating where there is one; the gauge diameter is that of bare metal.
 *
 * Refused where there is no surface: between surfaces, in a cut-out, beside the panels.
 */
int32_t gaugepoint_piston_radius_mm(const struct GaugepointPiston *piston,
                                    double gauge_diameter_mm,
                                    double height_mm,
                                    double angle_deg,
                                    double *out,
                                    struct GaugepointError *error);

/**
 * Diameter that a micrometer reads at a height and an angle: the radii at both ends. As gaugepoint_piston_radius_mm.
 */
int32_t gaugepoint_piston_diameter_mm(const struct GaugepointPiston *piston,
                                      double gauge_diameter_mm,
                                      double height_mm,
                                      double angle_deg,
                                      double *out,
                                      struct GaugepointError *error);

/**
 * Ovality that a micrometer reads at a height: the diameter at 0 less that at 90 degrees.
 */
int32_t gaugepoint_piston_ovality_mm(const struct GaugepointPiston *piston,
                                     double height_mm,
                                     double *out,
                                     struct GaugepointError *error);

/**
 * The largest diameter that a micrometer finds at a height, over all angles at which both ends have a surface.
 */
int32_t gaugepoint_piston_largest(const struct GaugepointPiston *piston,
                                  double gauge_diameter_mm,
                                  double height_mm,
                                  struct GaugepointLargest *out,
                                  struct GaugepointError *error);

/**
 * What is odd about a form: of each kind and surface the worst. Six for each surface are room enough.
 *
 * `count` gets their number, which is kept on failure.
 */
int32_t gaugepoint_piston_warnings(const struct GaugepointPiston *piston,
                                   struct GaugepointFormWarning *warnings,
                                   size_t room,
                                   size_t *count,
                                   struct GaugepointError *error);

/**
 * Fits a symmetric surface to points: at each height the diameter, the ovality and, with `double_ovality` 1, that too.
 *
 * `stations` has `room`; `residuals_mm` has room for one number for each point: reading less fit. Heights within a
 * micrometre are one station. Radii may be counted from any axis near that of the piston. Refused when the angles at a
 * height do not tell the unknowns apart.
 */
int32_t gaugepoint_fit_piston_surface(const struct GaugepointPistonPoints *points,
                                      int32_t double_ovality,
                                      struct GaugepointPistonStation *stations,
                                      size_t room,
                                      double *residuals_mm,
                                      struct GaugepointPistonFit *out,
                                      struct GaugepointError *error);

/**
 * Holds points against a form: the size, position and tilt that leave the least squares, to the first order, and what is
 * left.
 *
 * `residuals_mm` has room for one number for each point: reading less form; below zero material is missing.
 */
int32_t gaugepoint_fit_piston_trace(const struct GaugepointPiston *piston,
                                    double gauge_diameter_mm,
                                    const struct GaugepointPistonPoints *points,
                                    double *residuals_mm,
                                    struct GaugepointPistonTrace *out,
                                    struct GaugepointError *error);

/**
 * Deck clearance, protrusion and squish: block height - (stroke / 2 + rod + compression height), and the compressed gasket.
 */
int32_t gaugepoint_deck(double block_height_mm,
                        double stroke_mm,
                        double rod_mm,
                        double compression_height_mm,
                        double gasket_mm,
                        struct GaugepointDeck *out,
                        struct GaugepointError *error);

/**
 * Compression ratio. Refused when nothing is left above the piston.
 */
int32_t gaugepoint_compression_ratio(const struct GaugepointChamber *chamber,
                                     struct GaugepointCompression *out,
                                     struct GaugepointError *error);

/**
 * The gasket for the largest of several protrusions, from a table. Up to 1000 of each.
 *
 * Lines rise; those that follow each other by no more than `step_mm`, the last digit of the table, leave no hole. Between what
 * two lines print, and where they share an end, the later line counts: the thicker gasket. Overlaps and holes are refused.
 */
int32_t gaugepoint_gasket_band(const double *projections_mm,
                               size_t projections,
                               const struct GaugepointGasketBand *bands,
                               size_t band_count,
                               double step_mm,
                               struct GaugepointGasketChoice *out,
                               struct GaugepointError *error);

/**
 * Stroke and dead centres from crank radius, rod and pin offset.
 *
 * Seen from where the crankshaft turns clockwise, the major thrust side is on the left; a pin offset toward it is positive. The crank angle is 0 with the
 * throw in line with the cylinder, and grows as the crank turns. A rod that is not longer than crank radius and offset together is refused.
 */
int32_t gaugepoint_dead_centres(double crank_radius_mm,
                                double rod_mm,
                                double pin_offset_mm,
                                struct GaugepointDeadCentres *out,
                                struct GaugepointError *error);

/**
 * Travel of the piston from top dead centre at a crank angle, -720 to 720. Signs as in `gaugepoint_dead_centres`.
 */
int32_t gaugepoint_piston_travel(double crank_radius_mm,
                                 double rod_mm,
                                 double pin_offset_mm,
                                 double crank_angle_deg,
                                 struct GaugepointPistonTravel *out,
                                 struct GaugepointError *error);

/**
 * The crank angles at which the piston is down by `travel_mm`, from 0 to the stroke. Signs as in `gaugepoint_dead_centres`.
 */
int32_t gaugepoint_crank_angles_at(double crank_radius_mm,
                                   double rod_mm,
                                   double pin_offset_mm,
                                   double travel_mm,
                                   struct GaugepointCrankAngles *out,
                                   struct GaugepointError *error);

/**
 * The least value over every angle of a section `mean + sum of cos_n cos(n angle) + sin_n sin(n angle)`: of a clearance, or of any other section.
 *
 * Both arrays hold `orders` numbers, at most 32, the first of order 1. Found without a grid to miss it between, with a bound on its error.
 */
int32_t gaugepoint_least_clearance_of_section(double mean_mm,
                                              const double *cos_mm,
                                              const double *sin_mm,
                                              size_t orders,
                                              struct GaugepointLeastClearance *out,
                                              struct GaugepointError *error);

/**
 * A liner in its block: pressure over temperature, loss of contact, and the bore that is left. -40 C to 450 C.
 *
 * `measured_in_block` is 1 when the bore was measured in the block, and so already holds what the cold pressure takes; 0 when
 * it was measured before the liner was pressed in.
 */
int32_t gaugepoint_liner_in_block(const struct GaugepointLinerParts *parts,
                                  int32_t measured_in_block,
                                  struct GaugepointLinerFit *out,
                                  struct GaugepointError *error);

/**
 * One mean coefficient from a base, which holds between two temperatures.
 */
int32_t gaugepoint_growth_mean_coefficient(double base_c,
                                           double mean_per_k,
                                           double from_c,
                                           double to_c,
                                           double temperature_c,
                                           struct GaugepointGrowth *out,
                                           struct GaugepointError *error);

/**
 * Mean coefficients from a base to each of `count` rising temperatures, which span the range; straight between them.
 */
int32_t gaugepoint_growth_mean_table(double base_c,
                                     const double *temperatures_c,
                                     const double *means_per_k,
                                     size_t count,
                                     double temperature_c,
                                     struct GaugepointGrowth *out,
                                     struct GaugepointError *error);

/**
 * Instantaneous coefficients at each of `count` rising temperatures, which span the range; straight between them, integrated from 20 C.
 *
 * `mean_from_20_per_k` is what a table of means from 20 C would say.
 */
int32_t gaugepoint_growth_instantaneous_table(const double *temperatures_c,
                                              const double *instantaneous_per_k,
                                              size_t count,
                                              double temperature_c,
                                              struct GaugepointGrowth *out,
                                              struct GaugepointError *error);

/**
 * An instantaneous coefficient `c0 + c1 T + c2 T^2 + ...` per kelvin, T in kelvin, of `count` numbers, integrated from 20 C.
 */
int32_t gaugepoint_growth_instantaneous_polynomial(const double *kelvin_coefficients,
                                                   size_t count,
                                                   double from_c,
                                                   double to_c,
                                                   double temperature_c,
                                                   struct GaugepointGrowth *out,
                                                   struct GaugepointError *error);

/**
 * A strain `c0 + c1 T + c2 T^2 + ...`, T in kelvin, of `count` numbers, from any length; it is brought to the length at 20 C.
 */
int32_t gaugepoint_growth_strain_polynomial(const double *kelvin_coefficients,
                                            size_t count,
                                            double from_c,
                                            double to_c,
                                            double temperature_c,
                                            struct GaugepointGrowth *out,
                                            struct GaugepointError *error);

/**
 * Compacted or spheroidal graphite iron from its structure, by a published regression: nodularity in %, area fraction of graphite in %, ratio
 * of pearlite to ferrite. 20 C to 500 C; unverified.
 */
int32_t gaugepoint_growth_graphite_iron(double nodularity_percent,
                                        double graphite_percent,
                                        double pearlite_to_ferrite,
                                        double temperature_c,
                                        struct GaugepointGrowth *out,
                                        struct GaugepointError *error);

/**
 * A built-in material by its name, of `name_length` bytes.
 */
int32_t gaugepoint_growth_built_in(const char *name,
                                   size_t name_length,
                                   double temperature_c,
                                   struct GaugepointGrowth *out,
                                   struct GaugepointError *error);

/**
 * The built-in materials one after the other: call with 0, 1, 2 ... until it fails with GAUGEPOINT_STATUS_OUT_OF_RANGE.
 */
int32_t gaugepoint_material(size_t index,
                            struct GaugepointMaterial *out,
                            struct GaugepointError *error);

/**
 * The coefficients of the built-in material at `index`, in rising order of their temperatures; the first is continued down to `from_c`.
 *
 * `cells` has `room`, for which 32 is enough; `count` gets their number, which is kept on failure.
 */
int32_t gaugepoint_material_cells(size_t index,
                                  struct GaugepointMaterialCell *cells,
                                  size_t room,
                                  size_t *count,
                                  struct GaugepointError *error);

/**
 * The duties with illustrative temperatures one after the other: call with 0, 1, 2 ... until it fails with GAUGEPOINT_STATUS_OUT_OF_RANGE.
 */
int32_t gaugepoint_duty(size_t index,
                        struct GaugepointDuty *out,
                        struct GaugepointError *error);

/**
 * The temperatures of the piston of the duty at `index`, upward. They are illustrative: no engine need have them.
 *
 * `rows` has `room`, for which 32 is enough; `count` gets their number, which is kept on failure.
 */
int32_t gaugepoint_duty_piston(size_t index,
                               struct GaugepointDutyPistonRow *rows,
                               size_t room,
                               size_t *count,
                               struct GaugepointError *error);

/**
 * The temperatures of the wall of the duty at `index`, downward. As gaugepoint_duty_piston.
 */
int32_t gaugepoint_duty_bore(size_t index,
                             struct GaugepointDutyBoreRow *rows,
                             size_t room,
                             size_t *count,
                             struct GaugepointError *error);

/**
 * Makes a law of expansion, checked over its whole range.
 *
 * `expansion` gets it, to be freed by gaugepoint_expansion_free. The law is copied; nothing of it is kept.
 */
int32_t gaugepoint_expansion_new(const struct GaugepointLaw *law,
                                 struct GaugepointExpansion **expansion,
                                 struct GaugepointError *error);

/**
 * Frees a law of expansion. NULL is fine.
 */
void gaugepoint_expansion_free(struct GaugepointExpansion *expansion);

/**
 * Lowest and highest temperature that a law holds at.
 */
int32_t gaugepoint_expansion_range(const struct GaugepointExpansion *expansion,
                                   double *from_c,
                                   double *to_c,
                                   struct GaugepointError *error);

/**
 * What a law says of one temperature: strain, instantaneous coefficient, mean coefficient from 20 C.
 */
int32_t gaugepoint_expansion_at(const struct GaugepointExpansion *expansion,
                                double temperature_c,
                                struct GaugepointGrowth *out,
                                struct GaugepointError *error);

/**
 * Mean coefficient `(L1 - L0) / (L0 (T1 - T0))` from one temperature to another; two that are the same are refused.
 */
int32_t gaugepoint_expansion_mean_per_k(const struct GaugepointExpansion *expansion,
                                        double from_c,
                                        double to_c,
                                        double *out,
                                        struct GaugepointError *error);

/**
 * Strains from 20 C, (L - L20) / L20, at `count` temperatures in any order; `strains` has room for as many. A refused temperature is named with
 * its place: "temperatures_c/3".
 */
int32_t gaugepoint_expansion_strains(const struct GaugepointExpansion *expansion,
                                     const double *temperatures_c,
                                     size_t count,
                                     double *strains,
                                     struct GaugepointError *error);

/**
 * Makes a piston: the diameter of its bare metal at the gauge point at 20 C, its shape, how its surfaces grow, one `growth` for each, and its
 * temperatures. It is checked then: the temperatures reach over every surface, and are within the law of its material.
 *
 * `made` gets it, to be freed by gaugepoint_hot_piston_free; on failure it keeps what it held. A refused number is named with its place, as by
 * gaugepoint_hot_fit_new.
 */
int32_t gaugepoint_hot_piston_new(double piston_diameter_mm,
                                  const struct GaugepointPiston *piston,
                                  const struct GaugepointSurfaceGrowth *growth,
                                  size_t growth_count,
                                  const struct GaugepointPistonField *piston_field,
                                  struct GaugepointHotPiston **made,
                                  struct GaugepointError *error);

/**
 * Frees a piston. NULL is fine.
 */
void gaugepoint_hot_piston_free(struct GaugepointHotPiston *piston);

/**
 * Size of a piston at a height and an angle, with the coating where there is one: cold as gaugepoint_piston_radius_mm and
 * gaugepoint_piston_diameter_mm, hot as in a fit.
 *
 * Refused where there is no surface: between surfaces, in a cut-out, beside the panels.
 */
int32_t gaugepoint_hot_piston_at(const struct GaugepointHotPiston *piston,
                                 double height_mm,
                                 double angle_deg,
                                 struct GaugepointHotSize *out,
                                 struct GaugepointError *error);

/**
 * Size of a piston at its gauge point, at angle 0. As gaugepoint_hot_piston_at.
 */
int32_t gaugepoint_hot_piston_at_gauge_point(const struct GaugepointHotPiston *piston,
                                             struct GaugepointHotSize *out,
                                             struct GaugepointError *error);

/**
 * Makes a bore: its shape at 20 C, the law of the wall that carries it, and its temperatures. It is checked then: its tables have depths in common,
 * and there the temperatures are within the law.
 *
 * `made` gets it, to be freed by gaugepoint_hot_bore_free; on failure it keeps what it held. A refused number is named with its place, as by
 * gaugepoint_hot_fit_new.
 */
int32_t gaugepoint_hot_bore_new(const struct GaugepointBore *bore,
                                const struct GaugepointLaw *bore_law,
                                const struct GaugepointBoreField *bore_field,
                                struct GaugepointHotBore **made,
                                struct GaugepointError *error);

/**
 * Frees a bore. NULL is fine.
 */
void gaugepoint_hot_bore_free(struct GaugepointHotBore *bore);

/**
 * Size of a bore at a depth and an angle; about the axis of the bore, whose position is no part of it.
 *
 * Refused where there is no bore, a table does not reach, or a port is.
 */
int32_t gaugepoint_hot_bore_at(const struct GaugepointHotBore *bore,
                               double depth_mm,
                               double angle_deg,
                               struct GaugepointHotSize *out,
                               struct GaugepointError *error);

/**
 * Makes a hot fit: one piston in one bore at its temperatures, checked: every table reaches every place that the piston comes to.
 *
 * `fit` gets it, to be freed by gaugepoint_hot_fit_free; on failure it keeps what it held. A refused number is named with its place: "growth/0/ratio_pin",
 * "bore/harmonics/1/cos_mm/2", "surfaces/0/barrel/values_mm/2" of the piston.
 */
int32_t gaugepoint_hot_fit_new(const struct GaugepointHotFitParts *parts,
                               struct GaugepointHotFit **fit,
                               struct GaugepointError *error);

/**
 * Makes a hot fit of a piston and a bore that were made before; `motion` may be NULL, as in GaugepointHotFitParts.
 *
 * `fit` gets it, to be freed by gaugepoint_hot_fit_free; on failure it keeps what it held. It holds copies: piston and bore may be in any number of
 * fits, and may be freed before them. It has the bits of a fit that gaugepoint_hot_fit_new makes of the same parts.
 */
int32_t gaugepoint_hot_fit_of(const struct GaugepointHotPiston *piston,
                              const struct GaugepointHotBore *bore,
                              const struct GaugepointMotion *motion,
                              struct GaugepointHotFit **fit,
                              struct GaugepointError *error);

/**
 * Frees a hot fit. NULL is fine.
 */
void gaugepoint_hot_fit_free(struct GaugepointHotFit *fit);

/**
 * Clearance on one side at an angle and a height, negative for an overlap; `position` is a GaugepointPosition, `position_at` its crank angle or
 * depth, which the others do not look at.
 *
 * Refused where the piston has no surface or there is no bore; in a window or a port it is that of the surfaces around.
 */
int32_t gaugepoint_hot_fit_clearance_mm(const struct GaugepointHotFit *fit,
                                        double angle_deg,
                                        double height_mm,
                                        int32_t position,
                                        double position_at,
                                        double *out,
                                        struct GaugepointError *error);

/**
 * Clearance over the diameter at an angle and the opposite one. As gaugepoint_hot_fit_clearance_mm.
 */
int32_t gaugepoint_hot_fit_diametral_mm(const struct GaugepointHotFit *fit,
                                        double angle_deg,
                                        double height_mm,
                                        int32_t position,
                                        double position_at,
                                        double *out,
                                        struct GaugepointError *error);

/**
 * Running clearance at the gauge point, over the diameter. As gaugepoint_hot_fit_clearance_mm.
 */
int32_t gaugepoint_hot_fit_running_mm(const struct GaugepointHotFit *fit,
                                      int32_t position,
                                      double position_at,
                                      double *out,
                                      struct GaugepointError *error);

/**
 * Clearance on one side over angles and heights: a row for every height, a number for every angle, one after the other.
 *
 * NaN where the piston has a window, the bore a port, or no bore is around the piston: above the deck, or below its end. Refused is what is not
 * on the piston at all, with its place: "heights_mm/3"; then `clearances_mm` keeps what it held.
 */
int32_t gaugepoint_hot_fit_map(const struct GaugepointHotFit *fit,
                               const double *angles_deg,
                               size_t angle_count,
                               const double *heights_mm,
                               size_t height_count,
                               int32_t position,
                               double position_at,
                               double *clearances_mm,
                               struct GaugepointError *error);

/**
 * The smallest clearance of a surface over angle, height and every crank angle, with a proof of how much smaller it could be.
 */
int32_t gaugepoint_hot_fit_smallest(const struct GaugepointHotFit *fit,
                                    size_t surface,
                                    struct GaugepointHotSmallest *out,
                                    struct GaugepointError *error);

/**
 * The smallest clearance of a surface where the piston stands at one position.
 */
int32_t gaugepoint_hot_fit_smallest_at(const struct GaugepointHotFit *fit,
                                       size_t surface,
                                       int32_t position,
                                       double position_at,
                                       struct GaugepointHotSmallest *out,
                                       struct GaugepointError *error);

/**
 * Where a surface has less clearance than `below_mm` on one side: its area, and how many bands gaugepoint_hot_fit_bands gives.
 */
int32_t gaugepoint_hot_fit_contact(const struct GaugepointHotFit *fit,
                                   size_t surface,
                                   int32_t position,
                                   double position_at,
                                   double below_mm,
                                   struct GaugepointHotContact *out,
                                   struct GaugepointError *error);

/**
 * The angles at which a surface has less clearance than `below_mm` on one side, height by height.
 *
 * `bands` has `room` for those of gaugepoint_hot_fit_contact; `count` gets their number, which is kept on failure.
 */
int32_t gaugepoint_hot_fit_bands(const struct GaugepointHotFit *fit,
                                 size_t surface,
                                 int32_t position,
                                 double position_at,
                                 double below_mm,
                                 struct GaugepointHotBand *bands,
                                 size_t room,
                                 size_t *count,
                                 struct GaugepointError *error);

/**
 * Where a surface has most room at one position, moved sideways without tilting.
 */
int32_t gaugepoint_hot_fit_best_placed(const struct GaugepointHotFit *fit,
                                       size_t surface,
                                       int32_t position,
                                       double position_at,
                                       struct GaugepointHotBestPlaced *out,
                                       struct GaugepointError *error);

/**
 * First contact: the least factor on the rise of the temperatures from 20 C at which the smallest clearance of all surfaces is `touching_mm`, on
 * one side. `scenario` is a GaugepointScenario.
 */
int32_t gaugepoint_hot_fit_onset(const struct GaugepointHotFit *fit,
                                 int32_t scenario,
                                 double touching_mm,
                                 struct GaugepointHotOnset *out,
                                 struct GaugepointError *error);

/**
 * Size of the bore at 20 C for a running clearance at the gauge point, over the diameter.
 */
int32_t gaugepoint_hot_fit_bore_for_running_mm(const struct GaugepointHotFit *fit,
                                               double wanted_mm,
                                               int32_t position,
                                               double position_at,
                                               struct GaugepointHotAnswer *out,
                                               struct GaugepointError *error);

/**
 * Size of the bore at 20 C for a smallest clearance of the skirt, on one side.
 */
int32_t gaugepoint_hot_fit_bore_for_smallest_mm(const struct GaugepointHotFit *fit,
                                                double wanted_mm,
                                                struct GaugepointHotAnswer *out,
                                                struct GaugepointError *error);

/**
 * Temperature of the thrust side at the gauge point at which the piston first touches, in a bore that leaves it a clearance on the bench, over the
 * diameter. As gaugepoint_hot_fit_onset.
 */
int32_t gaugepoint_hot_fit_temperature_for_bench_c(const struct GaugepointHotFit *fit,
                                                   double bench_mm,
                                                   int32_t scenario,
                                                   double touching_mm,
                                                   struct GaugepointHotAnswer *out,
                                                   struct GaugepointError *error);

/**
 * Ovality of a surface at a height: at 20 C, running, and at 20 C of a piston that would run round.
 */
int32_t gaugepoint_hot_fit_ovality(const struct GaugepointHotFit *fit,
                                   size_t surface,
                                   double height_mm,
                                   struct GaugepointHotOvality *out,
                                   struct GaugepointError *error);

/**
 * Radii of a surface over `count` evenly spaced heights, 2 to 65536, both ends among them; `out` has room for as many rows.
 */
int32_t gaugepoint_hot_fit_profile(const struct GaugepointHotFit *fit,
                                   size_t surface,
                                   size_t count,
                                   struct GaugepointProfileRow *out,
                                   struct GaugepointError *error);

/**
 * Radii of piston and bore over `count` evenly spaced angles, 2 to 65536, from 0 to 360 degrees at a height; `out` has room for as many rows.
 */
int32_t gaugepoint_hot_fit_section(const struct GaugepointHotFit *fit,
                                   double height_mm,
                                   int32_t position,
                                   double position_at,
                                   size_t count,
                                   struct GaugepointSectionRow *out,
                                   struct GaugepointError *error);

/**
 * End gap with bore and ring at their temperatures, -40 C to 450 C, from mean coefficients from 20 C.
 *
 * gap (1 + eps_ring) + pi bore (eps_bore - eps_ring). Two cases are worth a call: steady running, and a sudden load on a
 * cold bore, where the ring is hot first.
 */
int32_t gaugepoint_ring_hot_gap(double gap_mm,
                                double bore_mm,
                                double bore_temperature_c,
                                double bore_expansion_per_k,
                                double ring_temperature_c,
                                double ring_expansion_per_k,
                                struct GaugepointRingHotGap *out,
                                struct GaugepointError *error);

/**
 * Rough: largest radial amplitude, in mm, of a harmonic of the bore's shape that a ring follows by its own tension.
 *
 * Order 2 is an oval, 3 and 4 are lobes; 2 to 50. A thin ring, even tension, no gas, no oil: the order of magnitude.
 */
int32_t gaugepoint_ring_conformable_amplitude_mm(int32_t order,
                                                 double tangential_force_n,
                                                 double bore_mm,
                                                 double ring_thickness_mm,
                                                 double ring_width_mm,
                                                 double modulus_mpa,
                                                 double *out,
                                                 struct GaugepointError *error);

/**
 * The published factors one after the other: call with 0, 1, 2 ... until GAUGEPOINT_STATUS_OUT_OF_RANGE. They contradict
 * each other: the maker's figure comes before all of them.
 */
int32_t gaugepoint_ring_gap_factor_at(int32_t index,
                                      struct GaugepointRingGapFactor *out,
                                      struct GaugepointError *error);

/**
 * Clearance of a pin in a boss or in a bush, cold and hot, for temperatures from -40 C to 450 C.
 *
 * A pressed bush grows by the coefficient of what holds it, not by its own. A cold clearance that is not between -0.15 mm
 * and 0.2 mm is refused: another pin.
 */
int32_t gaugepoint_pin_clearance(double hole_mm,
                                 double hole_temperature_c,
                                 double hole_expansion_per_k,
                                 double pin_mm,
                                 double pin_temperature_c,
                                 double pin_expansion_per_k,
                                 struct GaugepointPinClearance *out,
                                 struct GaugepointError *error);

/**
 * A press fit over the range of its interference and friction, by Lame's formulas: thick elastic tubes.
 */
int32_t gaugepoint_press_fit(const struct GaugepointPressFitParts *parts,
                             struct GaugepointPressFit *out,
                             struct GaugepointError *error);

/**
 * Temperature to which the outer part is heated, the pin at 20 C, so that its hole opens by the interference and a clearance.
 *
 * A result that no part survives is a fault of the fit, and no error of the call.
 */
int32_t gaugepoint_assembly_temperature(double diameter_mm,
                                        double interference_mm,
                                        double clearance_mm,
                                        double expansion_per_k,
                                        struct GaugepointAssembly *out,
                                        struct GaugepointError *error);

/**
 * Judges one value in mm with its standard uncertainty in mm, for a value whose error is normal.
 *
 * `lower_mm` counts when `has_lower` is 1, `upper_mm` when `has_upper` is 1; at least one must. `rule` is a
 * GaugepointRule. `at_least` is the probability asked for by the rule conformance probability, 0.5 to 0.999999, or the
 * ratio of the tolerance to the uncertainty interval asked for by the rule simple acceptance by ratio, 1 to 100; the
 * others do not look at it. `result` gets a GaugepointConformity, `probability` the probability of conformity.
 */
int32_t gaugepoint_decide_mm(double value_mm,
                             double standard_uncertainty_mm,
                             int32_t has_lower,
                             double lower_mm,
                             int32_t has_upper,
                             double upper_mm,
                             int32_t rule,
                             double at_least,
                             int32_t *result,
                             double *probability,
                             struct GaugepointError *error);

/**
 * Gives the causes that agree with a finding by eye and with the answers so far, and what to ask next.
 *
 * `place` is a GaugepointPlace, `what` a GaugepointWhat. `questions` has `count` different GaugepointQuestion, `answers` 1 for yes
 * and 0 for no to each; both may be NULL when `count` is 0. `candidates` has room for `room` causes, GAUGEPOINT_MOST_CANDIDATES are always
 * enough; those that are confirmed come first. `ask` has room for `ask_room` numbers, GAUGEPOINT_MOST_QUESTIONS are always enough, and gets
 * what is still open: first the question on which most candidates depend.
 *
 * Common practice of the trade, no source. No candidate is no clearance: then the catalogue does not know what was seen.
 */
int32_t gaugepoint_explain(int32_t place,
                           int32_t what,
                           const int32_t *questions,
                           const int32_t *answers,
                           size_t count,
                           struct GaugepointCandidate *candidates,
                           size_t room,
                           int32_t *ask,
                           size_t ask_room,
                           struct GaugepointExplanation *out,
                           struct GaugepointError *error);

/**
 * A GaugepointQuestion in words; empty for another number.
 */
const char *gaugepoint_question_text(int32_t question);

/**
 * Global risks of accepting by `accepted` what should conform to `tolerance`. JCGM 106:2012, 9.4.
 *
 * The measurement error is normal with standard uncertainty `u`. All numbers are in one unit, whichever it is.
 */
int32_t gaugepoint_global_risks(const struct GaugepointItems *items,
                                double u,
                                const struct GaugepointInterval *tolerance,
                                const struct GaugepointInterval *accepted,
                                struct GaugepointRisks *out,
                                struct GaugepointError *error);

/**
 * Acceptance interval of a tolerance by a rule.
 *
 * `guard` is a GaugepointGuard; `amount`, its number, counts when `has_amount` is 1, which it is with all but
 * GAUGEPOINT_GUARD_PROVEN. Refused when the ratio is not reached, or when the guard bands leave nothing.
 */
int32_t gaugepoint_acceptance(const struct GaugepointInterval *tolerance,
                              double u,
                              int32_t guard,
                              int32_t has_amount,
                              double amount,
                              struct GaugepointInterval *accepted,
                              struct GaugepointError *error);

/**
 * Acceptance interval, narrowed or widened equally at each limit, whose global consumer's risk is `wanted`.
 *
 * Refused when no guard band within ten standard uncertainties gives that risk; the error has the risks that can be had.
 */
int32_t gaugepoint_acceptance_for_risk(const struct GaugepointItems *items,
                                       double u,
                                       const struct GaugepointInterval *tolerance,
                                       double wanted,
                                       struct GaugepointInterval *accepted,
                                       struct GaugepointError *error);

/**
 * Capability of a normal process with its mean and standard deviation. ISO 22514-2.
 */
int32_t gaugepoint_capability(double mean,
                              double deviation,
                              const struct GaugepointInterval *tolerance,
                              struct GaugepointCapability *out,
                              struct GaugepointError *error);

/**
 * Clearance on the bench and running, row by row, from diameters and temperatures in arrays of `count`.
 *
 * bore_mm and piston_mm are diameters at parts_temperature_c, the temperature of both parts when they were measured (-5 C to 60 C).
 * bench_mm is the clearance at 20 C; running_mm that of the freely growing parts at bore_temperature_c and piston_temperature_c (-40 C to
 * 450 C). Each row has the bits of the functions of one row.
 *
 * With `row_status`, each row gets its own: GAUGEPOINT_STATUS_OK, or why it is refused and its results are NaN; the others are computed,
 * and the call returns GAUGEPOINT_STATUS_OK with the number of refused rows in `refused`. Without (NULL), the first refused row
 * refuses the call, its column and place are in the error ("bore_mm/3"), and every result is NaN. Results may take the place of a column,
 * element for element; they do not overlap otherwise. Then all rows are read before any is computed, and a call that is refused
 * writes nothing, so that the column is not lost. Nothing is written either when the arguments themselves are refused.
 */
int32_t gaugepoint_clearances(const struct GaugepointStrainLaw *bore_law,
                              const struct GaugepointStrainLaw *piston_law,
                              const double *bore_mm,
                              const double *piston_mm,
                              const double *parts_temperature_c,
                              const double *bore_temperature_c,
                              const double *piston_temperature_c,
                              size_t count,
                              double *bench_mm,
                              double *running_mm,
                              int32_t *row_status,
                              size_t *refused,
                              struct GaugepointError *error);

/**
 * The same with numbers that need not stand side by side: the fields of an array of structures, every second row, one temperature for
 * all. They need no alignment. Slower than gaugepoint_clearances, about by what it costs to collect them.
 */
int32_t gaugepoint_clearances_strided(const struct GaugepointStrainLaw *bore_law,
                                      const struct GaugepointStrainLaw *piston_law,
                                      const struct GaugepointClearanceColumns *columns,
                                      size_t count,
                                      const struct GaugepointClearancePlaces *places,
                                      size_t *refused,
                                      struct GaugepointError *error);

/**
 * Makes a stack of `count` contributors; of 0 an empty one, and `contributors` may be NULL.
 *
 * `stack` gets it, to be freed by gaugepoint_stack_free. A refused contributor is named with its place: "contributors/2/lower".
 */
int32_t gaugepoint_stack_new(const struct GaugepointContributor *contributors,
                             size_t count,
                             struct GaugepointStack **stack,
                             struct GaugepointError *error);

/**
 * Frees a stack. NULL is fine.
 */
void gaugepoint_stack_free(struct GaugepointStack *stack);

/**
 * Adds a contributor. On failure the stack is as it was.
 */
int32_t gaugepoint_stack_add(struct GaugepointStack *stack,
                             const struct GaugepointContributor *contributor,
                             struct GaugepointError *error);

/**
 * Adds a cause that contributors share: each of `count` places of contributors moves by its factor times the error of the
 * cause, with all its pieces. On failure the stack is as it was.
 *
 * `kind` is a GaugepointVariation that is symmetric about zero, with `number_count` numbers.
 */
int32_t gaugepoint_stack_add_cause(struct GaugepointStack *stack,
                                   const char *name,
                                   size_t name_length,
                                   int32_t kind,
                                   const double *numbers,
                                   size_t number_count,
                                   const size_t *places,
                                   const double *factors,
                                   size_t count,
                                   struct GaugepointError *error);

/**
 * Gives the number of contributors and of shared causes.
 */
int32_t gaugepoint_stack_count(const struct GaugepointStack *stack,
                               size_t *contributors,
                               size_t *causes,
                               struct GaugepointError *error);

/**
 * Worst case, root-sum-square, Bender's and the modified one, with nominal, mean and standard deviation.
 */
int32_t gaugepoint_stack_forms(const struct GaugepointStack *stack,
                               struct GaugepointStackForms *out,
                               struct GaugepointError *error);

/**
 * Root-sum-square of the limits times a factor, 0 to 100, about the middle of the worst case.
 */
int32_t gaugepoint_stack_root_sum_square(const struct GaugepointStack *stack,
                                         double factor,
                                         double *lower,
                                         double *upper,
                                         struct GaugepointError *error);

/**
 * Shares of the variance by contributors and shared causes, largest first.
 *
 * `count` gets their number, which is kept on failure.
 */
int32_t gaugepoint_stack_shares(const struct GaugepointStack *stack,
                                struct GaugepointShare *shares,
                                size_t room,
                                size_t *count,
                                struct GaugepointError *error);

/**
 * Probabilities below `lower` and above `upper`, with a bound of their relative error. An infinite limit is no limit.
 *
 * Refused when no way reaches a relative error of 1e-6.
 */
int32_t gaugepoint_stack_outside(const struct GaugepointStack *stack,
                                 double lower,
                                 double upper,
                                 struct GaugepointTail *out,
                                 struct GaugepointError *error);

/**
 * Cp and Cpk from mean and standard deviation, and the exact probabilities outside, against two finite limits.
 */
int32_t gaugepoint_stack_capability(const struct GaugepointStack *stack,
                                    double lower,
                                    double upper,
                                    struct GaugepointStackCapability *out,
                                    struct GaugepointError *error);

/**
 * The size that the stack is below with a probability between 0 and 1.
 */
int32_t gaugepoint_stack_quantile(const struct GaugepointStack *stack,
                                  double probability,
                                  double *out,
                                  struct GaugepointError *error);

/**
 * The size that the stack is above with a probability: for a small one it keeps the digits that 1 - probability has not.
 */
int32_t gaugepoint_stack_quantile_above(const struct GaugepointStack *stack,
                                        double probability,
                                        double *out,
                                        struct GaugepointError *error);

/**
 * Density at each of `count` sizes, per unit of length; `densities` has room for as many.
 */
int32_t gaugepoint_stack_densities(const struct GaugepointStack *stack,
                                   const double *sizes,
                                   size_t count,
                                   double *densities,
                                   struct GaugepointError *error);

/**
 * A density to draw: `count` sizes in equal steps between the two that leave 1e-6 outside on their side, and the density
 * at each, per unit of length. Both arrays have room for `count`.
 */
int32_t gaugepoint_stack_curve(const struct GaugepointStack *stack,
                               size_t count,
                               double *sizes,
                               double *densities,
                               struct GaugepointError *error);

/**
 * Exact probability between each of `count` rising edges and the next; `probabilities` has room for one less.
 */
int32_t gaugepoint_stack_histogram(const struct GaugepointStack *stack,
                                   const double *edges,
                                   size_t count,
                                   double *probabilities,
                                   struct GaugepointError *error);

/**
 * Derivatives of the probabilities below and above two limits by the tolerance of each contributor, per unit of length, in
 * the order they were added. Both arrays have `room`; the tolerance is half the distance of the limits.
 *
 * The variation keeps its form and capability: all distances from the middle of its limits change with the tolerance.
 */
int32_t gaugepoint_stack_sensitivities(const struct GaugepointStack *stack,
                                       double lower,
                                       double upper,
                                       double *below,
                                       double *above,
                                       size_t room,
                                       struct GaugepointError *error);

/**
 * Gives a contributor another tolerance: its limits and its variation change in the same ratio about the middle of its
 * limits. On failure the stack is as it was.
 */
int32_t gaugepoint_stack_set_tolerance(struct GaugepointStack *stack,
                                       size_t place,
                                       double tolerance,
                                       struct GaugepointError *error);

/**
 * Tolerances of least cost that reach what is wanted against two limits; `tolerances` has room for one for each of `count`
 * costs. Contributors without a cost keep theirs, and the stack is not changed.
 *
 * `wanted` is a GaugepointWanted, and `value` the number of it. Refused when the smallest tolerances do not reach it: the
 * limits of the error say what they do reach.
 */
int32_t gaugepoint_stack_allocate(const struct GaugepointStack *stack,
                                  double lower,
                                  double upper,
                                  int32_t wanted,
                                  double value,
                                  const struct GaugepointToleranceCost *costs,
                                  size_t count,
                                  double *tolerances,
                                  struct GaugepointAllocation *out,
                                  struct GaugepointError *error);

/**
 * The values of `count` trials of a stack, from `run->first` on.
 */
int32_t gaugepoint_stack_trials(const struct GaugepointStack *stack,
                                const struct GaugepointRun *run,
                                double *values,
                                size_t count,
                                struct GaugepointError *error);

/**
 * gaugepoint_stack_trials with a watcher and its user pointer; NULL is none. See PROGRESS at the head.
 */
int32_t gaugepoint_stack_trials_watched(const struct GaugepointStack *stack,
                                        const struct GaugepointRun *run,
                                        GaugepointWatcher watcher,
                                        void *user,
                                        double *values,
                                        size_t count,
                                        struct GaugepointError *error);

/**
 * Trials of a stack until mean, deviation and both ends of the interval are stable. Source: JCGM 101:2008, 7.9.4.
 */
int32_t gaugepoint_stack_adaptive(const struct GaugepointStack *stack,
                                  const struct GaugepointGoal *goal,
                                  struct GaugepointAdaptive *out,
                                  struct GaugepointError *error);

/**
 * gaugepoint_stack_adaptive with a watcher and its user pointer; NULL is none. See PROGRESS at the head.
 */
int32_t gaugepoint_stack_adaptive_watched(const struct GaugepointStack *stack,
                                          const struct GaugepointGoal *goal,
                                          GaugepointWatcher watcher,
                                          void *user,
                                          struct GaugepointAdaptive *out,
                                          struct GaugepointError *error);

/**
 * Weights of `count` trials of a tail of a stack too rare for others, from `run->first` on: importance sampling beyond one
 * limit. gaugepoint_trials_rare_tail says what they come to; gaugepoint_stack_outside is exact and better.
 *
 * `toward` is a GaugepointToward: the side of the limit that is rare.
 */
int32_t gaugepoint_stack_importance(const struct GaugepointStack *stack,
                                    int32_t toward,
                                    double limit,
                                    const struct GaugepointRun *run,
                                    double *weights,
                                    size_t count,
                                    struct GaugepointError *error);

/**
 * gaugepoint_stack_importance with a watcher and its user pointer; NULL is none. See PROGRESS at the head.
 */
int32_t gaugepoint_stack_importance_watched(const struct GaugepointStack *stack,
                                            int32_t toward,
                                            double limit,
                                            const struct GaugepointRun *run,
                                            GaugepointWatcher watcher,
                                            void *user,
                                            double *weights,
                                            size_t count,
                                            struct GaugepointError *error);

/**
 * Mean, standard deviation and intervals at a coverage probability of the values of trials. The ends are values of trials.
 */
int32_t gaugepoint_trials_summary(const double *values,
                                  size_t count,
                                  double probability,
                                  struct GaugepointTrialsSummary *out,
                                  struct GaugepointError *error);

/**
 * Shares of the values of trials below `lower` and above `upper`, infinite where there is no limit, with intervals of Clopper
 * and Pearson that cover with at least `confidence`.
 *
 * `points` is the GaugepointPoints that the values were made with. Only random ones are independent; others are refused.
 */
int32_t gaugepoint_trials_outside(const double *values,
                                  size_t count,
                                  int32_t points,
                                  double lower,
                                  double upper,
                                  double confidence,
                                  struct GaugepointTrialsOutside *out,
                                  struct GaugepointError *error);

/**
 * How many of the values of trials lie above each of `edge_count` rising edges and not above the next; `counts` has room for one less.
 */
int32_t gaugepoint_trials_histogram(const double *values,
                                    size_t count,
                                    const double *edges,
                                    size_t edge_count,
                                    size_t *counts,
                                    struct GaugepointError *error);

/**
 * The probability that the weights of importance sampling come to, with its interval at a confidence; `values` are the weights.
 *
 * Refused with fewer than 100 effective trials: then their spread does not say how wrong they are.
 */
int32_t gaugepoint_trials_rare_tail(const double *values,
                                    size_t count,
                                    double confidence,
                                    struct GaugepointRareTail *out,
                                    struct GaugepointError *error);

/**
 * Makes a function of `count` contributors from a formula: `acos((a + c) / (e - c))`.
 *
 * `symbols` and `symbol_lengths` have a symbol for each contributor and its length in bytes; both NULL when the names are the symbols. A contributor
 * has coefficient 1 and count 1: the formula says how it acts. `function` gets it, to be freed by gaugepoint_function_free.
 */
int32_t gaugepoint_function_from_formula(const struct GaugepointContributor *contributors,
                                         size_t count,
                                         const char *formula,
                                         size_t formula_length,
                                         const char *const *symbols,
                                         const size_t *symbol_lengths,
                                         struct GaugepointFunction **function,
                                         struct GaugepointError *error);

/**
 * Makes a stack of an engine of the contributors that it has, in any order. `engine` is a GaugepointEngineStack.
 *
 * gaugepoint_engine_contributor says which they are. An impossible nominal is refused.
 */
int32_t gaugepoint_function_of_engine(int32_t engine,
                                      const struct GaugepointContributor *contributors,
                                      size_t count,
                                      struct GaugepointFunction **function,
                                      struct GaugepointError *error);

/**
 * Makes a function of `count` contributors that is called back; it is not called yet. `user` may be NULL.
 *
 * The callback and `user` are kept, and must live as long as the function. Derivatives are differences, and the worst case is a search.
 */
int32_t gaugepoint_function_of_callback(const struct GaugepointContributor *contributors,
                                        size_t count,
                                        GaugepointCallback callback,
                                        void *user,
                                        struct GaugepointFunction **function,
                                        struct GaugepointError *error);

/**
 * Frees a function. NULL is fine.
 */
void gaugepoint_function_free(struct GaugepointFunction *function);

/**
 * Name of the contributor at a place, from 0, of a GaugepointEngineStack; empty when there is none.
 */
const char *gaugepoint_engine_contributor(int32_t engine, size_t place);

/**
 * Unit of the result of a GaugepointEngineStack: "mm" or "1"; empty when there is none of this number.
 */
const char *gaugepoint_engine_unit(int32_t engine);

/**
 * Value of a function at the nominals.
 */
int32_t gaugepoint_function_nominal(const struct GaugepointFunction *function,
                                    double *out,
                                    struct GaugepointError *error);

/**
 * Moments of a function to first and second order, and what each contributor does, largest share first.
 *
 * `effects` has `room` for one for each contributor.
 */
int32_t gaugepoint_function_propagation(const struct GaugepointFunction *function,
                                        struct GaugepointPropagation *out,
                                        struct GaugepointEffect *effects,
                                        size_t room,
                                        struct GaugepointError *error);

/**
 * Smallest and largest value of a function within the limits of all contributors, proved where it is a formula.
 *
 * `lowest_at` and `highest_at` have `room` for the size of each contributor where these values are attained, as the contributors were given.
 */
int32_t gaugepoint_function_worst_case(const struct GaugepointFunction *function,
                                       struct GaugepointWorstCase *out,
                                       double *lowest_at,
                                       double *highest_at,
                                       size_t room,
                                       struct GaugepointError *error);

/**
 * The values of `count` trials of a function, from `run->first` on.
 */
int32_t gaugepoint_function_trials(const struct GaugepointFunction *function,
                                   const struct GaugepointRun *run,
                                   double *values,
                                   size_t count,
                                   struct GaugepointError *error);

/**
 * gaugepoint_function_trials with a watcher and its user pointer; NULL is none. See PROGRESS at the head.
 */
int32_t gaugepoint_function_trials_watched(const struct GaugepointFunction *function,
                                           const struct GaugepointRun *run,
                                           GaugepointWatcher watcher,
                                           void *user,
                                           double *values,
                                           size_t count,
                                           struct GaugepointError *error);

/**
 * Trials of a function until mean, deviation and both ends of the interval are stable. Source: JCGM 101:2008, 7.9.4.
 */
int32_t gaugepoint_function_adaptive(const struct GaugepointFunction *function,
                                     const struct GaugepointGoal *goal,
                                     struct GaugepointAdaptive *out,
                                     struct GaugepointError *error);

/**
 * gaugepoint_function_adaptive with a watcher and its user pointer; NULL is none. See PROGRESS at the head.
 */
int32_t gaugepoint_function_adaptive_watched(const struct GaugepointFunction *function,
                                             const struct GaugepointGoal *goal,
                                             GaugepointWatcher watcher,
                                             void *user,
                                             struct GaugepointAdaptive *out,
                                             struct GaugepointError *error);

/**
 * Weights of `count` trials of a tail of a function too rare for others, from `run->first` on: importance sampling beyond one
 * limit. gaugepoint_trials_rare_tail says what they come to.
 *
 * `toward` is a GaugepointToward: the side of the limit that is rare.
 */
int32_t gaugepoint_function_importance(const struct GaugepointFunction *function,
                                       int32_t toward,
                                       double limit,
                                       const struct GaugepointRun *run,
                                       double *weights,
                                       size_t count,
                                       struct GaugepointError *error);

/**
 * gaugepoint_function_importance with a watcher and its user pointer; NULL is none. See PROGRESS at the head.
 */
int32_t gaugepoint_function_importance_watched(const struct GaugepointFunction *function,
                                               int32_t toward,
                                               double limit,
                                               const struct GaugepointRun *run,
                                               GaugepointWatcher watcher,
                                               void *user,
                                               double *weights,
                                               size_t count,
                                               struct GaugepointError *error);

/**
 * Matches measured pistons to bores: the least probability of conformity is as large as it can be, and among such pairings the sum of
 * squared deviations from the targets is as small as it can be.
 *
 * `pairs` gets one pair for each bore, in the order of the bores. At most 2000 bores and 4000 pistons, as many pistons as bores or more. Refused
 * when no pairing exists: the error names bores with too few pistons.
 */
int32_t gaugepoint_match_pistons(const struct GaugepointMeasuredBore *bores,
                                 size_t bore_count,
                                 const struct GaugepointMeasuredPiston *pistons,
                                 size_t piston_count,
                                 const struct GaugepointMatchingConditions *conditions,
                                 struct GaugepointMatched *pairs,
                                 size_t room,
                                 struct GaugepointMatching *out,
                                 struct GaugepointError *error);

/**
 * gaugepoint_match_pistons with a watcher and its user pointer; NULL is none. See PROGRESS at the head.
 */
int32_t gaugepoint_match_pistons_watched(const struct GaugepointMeasuredBore *bores,
                                         size_t bore_count,
                                         const struct GaugepointMeasuredPiston *pistons,
                                         size_t piston_count,
                                         const struct GaugepointMatchingConditions *conditions,
                                         GaugepointWatcher watcher,
                                         void *user,
                                         struct GaugepointMatched *pairs,
                                         size_t room,
                                         struct GaugepointMatching *out,
                                         struct GaugepointError *error);

/**
 * Matches sizes that stand in arrays, each with its standard uncertainty; parts have neither grades nor weights, and bores want the clearance of
 * `conditions`. As gaugepoint_match_pistons, also in how what is refused is named: "bores/3/size_mm".
 */
int32_t gaugepoint_match_sizes(const double *bores_mm,
                               const double *bore_uncertainties_mm,
                               size_t bore_count,
                               const double *pistons_mm,
                               const double *piston_uncertainties_mm,
                               size_t piston_count,
                               const struct GaugepointMatchingConditions *conditions,
                               struct GaugepointMatched *pairs,
                               size_t room,
                               struct GaugepointMatching *out,
                               struct GaugepointError *error);

/**
 * The smallest round, straight bore about an axis that removes all wear, from a radial trace of `count` points about the original axis.
 *
 * At least three points; five for the worn axis over several depths. `axis` is a GaugepointBarAxis; `shift_mm` and `tilt` (mm on each mm of depth) say
 * how far the best one may go from the original, and are 0 for the others. `centring_mm` is the largest error of the centre of the bar, 0 leaves it out;
 * `stock_mm` removes the marks of the tool, on the diameter. `each_mm` and `common_mm` are standard uncertainties of one radius alone and of all together.
 * `held` gets the points that hold the bore; `count` places are enough. A refused number is named "radii_mm/3".
 */
int32_t gaugepoint_clean_up(const double *angles_deg,
                            const double *depths_mm,
                            const double *radii_mm,
                            size_t count,
                            int32_t axis,
                            double shift_mm,
                            double tilt,
                            double centring_mm,
                            double stock_mm,
                            double each_mm,
                            double common_mm,
                            struct GaugepointHeld *held,
                            size_t room,
                            struct GaugepointCleanUp *out,
                            struct GaugepointError *error);

/**
 * The clean-up about the original axis from the unworn and the largest diameter: they never show on which side a bore is worn.
 */
int32_t gaugepoint_clean_up_from_diameters(double unworn_mm,
                                           double largest_mm,
                                           double stock_mm,
                                           struct GaugepointCleanUpRange *out,
                                           struct GaugepointError *error);

/**
 * Thickness in mm that is left of each of `count` walls when a bore of a diameter is cut about the axis of a bar; below zero the bar comes through.
 *
 * Where the bar does not reach the wall it stays as it is. `left_mm` has `count` places. A refused number is named "walls/2/wall_mm".
 */
int32_t gaugepoint_walls_left(const struct GaugepointBar *bar,
                              double diameter_mm,
                              const struct GaugepointWallPoint *walls,
                              size_t count,
                              double *left_mm,
                              struct GaugepointError *error);

/**
 * The largest bore in mm about the axis of a bar that leaves at least a thickness of each of `count` walls, of which there is one or more.
 */
int32_t gaugepoint_largest_bore_by_walls_mm(const struct GaugepointBar *bar,
                                            double least_wall_mm,
                                            const struct GaugepointWallPoint *walls,
                                            size_t count,
                                            double *out,
                                            struct GaugepointError *error);

/**
 * Finish size and boring size of the bore for a piston as it was measured, at 20 C: piston + clearance; less the honing allowance.
 *
 * `clearance_mm` is wanted at 20 C, `honing_mm` is left for the hone, on the diameter.
 */
int32_t gaugepoint_bore_sizes(double piston_mm,
                              double clearance_mm,
                              double honing_mm,
                              struct GaugepointBoreSizes *out,
                              struct GaugepointError *error);

/**
 * What the dial of a bore gauge must read, in mm above its setting, when the bore has a size at 20 C and the block is warm.
 *
 * A reading beyond the travel of a gauge is refused with the field "setting_mm".
 */
int32_t gaugepoint_dial_reading_mm(double size_mm,
                                   const struct GaugepointWarmGauging *gauging,
                                   double *out,
                                   struct GaugepointError *error);

/**
 * Holds a bore as it was found, at 20 C, against its finish size and tolerance (half the width).
 */
int32_t gaugepoint_finish_check(double size_mm,
                                double finish_mm,
                                double tolerance_mm,
                                struct GaugepointFinishCheck *out,
                                struct GaugepointError *error);

/**
 * An order of boring in which no two neighbours follow each other, so that the heat spreads; cylinders are counted from 1 along the block.
 *
 * `order` gets as many numbers as there are cylinders, 1 to 24. Of three or fewer no such order exists: the order along the block, and the block must cool
 * between. Common practice, no source.
 */
int32_t gaugepoint_boring_order(size_t cylinders,
                                size_t *order,
                                struct GaugepointError *error);

/**
 * Holds every way to bring a block back against what its bores need: those that can be done, the cheapest first, and after them those that cannot.
 *
 * `consequences` has `step_count` places. `choices` gets the ways: 2 `step_count` + 1 places are enough; `actions` has `bore_count` places for each
 * of them, and gets what is done to each bore by each way, one way after the other. `ruled_out` gets the reasons, those of one way after those of
 * the one before: for each way 2 `bore_count` + `step_count` + 1 places are enough. A refused number is named "bores/2/clean_up_mm".
 */
int32_t gaugepoint_oversizes(const struct GaugepointBlock *block,
                             const struct GaugepointWornBore *bores,
                             size_t bore_count,
                             const struct GaugepointStep *steps,
                             size_t step_count,
                             struct GaugepointConsequence *consequences,
                             struct GaugepointOversizeChoice *choices,
                             size_t choice_room,
                             struct GaugepointBoreAction *actions,
                             struct GaugepointOversizeRuledOut *ruled_out,
                             size_t ruled_out_room,
                             struct GaugepointOversizes *out,
                             struct GaugepointError *error);

/**
 * Chooses the shims of a row of 1 to 24 liners from up to 12 thicknesses, exactly: the largest deviation from the middle of the wanted protrusions
 * is as small as it can be, and among such choices the number of shims.
 *
 * `shimmed` has `liner_count` places. `ruled_out` gets what rules the row out; twice as many places as liners are enough. An uneven or cupped seat
 * is a finding there, and no error. A refused number is named "liners/2/depths_mm/1".
 */
int32_t gaugepoint_shim_plan(const struct GaugepointLiner *liners,
                             size_t liner_count,
                             const struct GaugepointShim *shims,
                             size_t shim_count,
                             const struct GaugepointWantedProtrusion *wanted,
                             struct GaugepointShimmed *shimmed,
                             struct GaugepointShimRuledOut *ruled_out,
                             size_t room,
                             struct GaugepointShimPlan *out,
                             struct GaugepointError *error);

/**
 * What is filed off a ring for the bore that it runs in: the gap there is gap + pi (bore - gauge).
 *
 * A ring that has its least gap is left as it is. A short one is filed to the least gap and the allowance.
 */
int32_t gaugepoint_filing(const struct GaugepointGapReading *reading,
                          double bore_mm,
                          const struct GaugepointWantedGap *wanted,
                          struct GaugepointFiling *out,
                          struct GaugepointError *error);

/**
 * The gasket for the largest protrusion of `count` pistons, from the table of gaugepoint_gasket_band.
 *
 * `projections_mm` has two readings for each piston, one after the other. `protrusions_mm` gets their means, `squish_mm` what is left from each
 * crown to the head; both have `count` places. A refused reading is named "projections_mm/3/1".
 */
int32_t gaugepoint_gasket_grade(const double *projections_mm,
                                size_t count,
                                const struct GaugepointGasketBand *bands,
                                size_t band_count,
                                const struct GaugepointGasketConditions *conditions,
                                double *protrusions_mm,
                                double *squish_mm,
                                struct GaugepointGasketGrade *out,
                                struct GaugepointError *error);

/**
 * What each of `count` assemblies loses so that all are within a band of the lightest, in g.
 *
 * `assemblies` has the parts of the first one, then those of the second, `parts` of each; the cut comes off them in order. `cut_g` gets what each
 * part loses, at the places of the parts; `cuts` has `count` places. A refused number is named "assemblies/2/0/mass_g".
 */
int32_t gaugepoint_cut_list(const struct GaugepointPart *assemblies,
                            size_t count,
                            size_t parts,
                            double band_g,
                            double *cut_g,
                            struct GaugepointCut *cuts,
                            struct GaugepointCutList *out,
                            struct GaugepointError *error);

/**
 * Bob weight of a crankpin in g: rods (rotating + share x reciprocating) + oil.
 */
int32_t gaugepoint_bob_weight_g(const struct GaugepointBobWeight *pin,
                                double *out,
                                struct GaugepointError *error);

/**
 * Holds a finish against its limits; nothing that is not given is assumed.
 *
 * `values` has six parameters at the places of GaugepointFinishParameter. `rule` is a GaugepointRule, `at_least` what it asks for, as in
 * gaugepoint_decide_mm; neither is looked at where no uncertainty is given. A refused number is named "rpk_um/value", "mr1_percent/upper",
 * "crosshatch_deg/lower".
 */
int32_t gaugepoint_finish(const struct GaugepointFinishValue *values,
                          int32_t rule,
                          double at_least,
                          struct GaugepointFinishFound *out,
                          struct GaugepointError *error);

/**
 * Evaluates a stack of contributors and gives its report, both JSON: worst case, published forms, moments, shares, exact probabilities outside
 * the limits of a linear stack, trials, and what was asked for to be drawn.
 *
 * `document` is a stack document of `document_length` bytes. `with_working` is 1 to have the working of every number that has a formula in the
 * report, else 0. `report` gets the text, to be freed by gaugepoint_text_free, and `report_length` its length in bytes without
 * the NUL that ends it. Anything that is refused gives a status and no report. Trials take their time.
 */
int32_t gaugepoint_stack_evaluate(const char *document,
                                  size_t document_length,
                                  int32_t with_working,
                                  char **report,
                                  size_t *report_length,
                                  struct GaugepointError *error);

/**
 * Compares two jobs of one engine and gives the report, both JSON: what changed of every cylinder, how fast, when limits of this job are reached
 * and what is suspicious.
 *
 * `document` is a revisit document of `document_length` bytes. `report` gets the text, to be freed by gaugepoint_text_free, and `report_length` its
 * length in bytes without the NUL that ends it. Anything that is refused gives a status and no report.
 */
int32_t gaugepoint_revisit(const char *document,
                           size_t document_length,
                           char **report,
                           size_t *report_length,
                           struct GaugepointError *error);

/**
 * Assesses a job with every combination of values and gives the report, both JSON: a row for each combination with what is to be shown, what
 * becomes of the engine and of every cylinder, or why the job with these values is refused.
 *
 * `document` is a what-if document of `document_length` bytes. `report` gets the text, to be freed by gaugepoint_text_free, and `report_length` its
 * length in bytes without the NUL that ends it. Anything else that is refused gives a status and no report. A thousand combinations take their
 * time.
 */
int32_t gaugepoint_what_if(const char *document,
                           size_t document_length,
                           char **report,
                           size_t *report_length,
                           struct GaugepointError *error);

/**
 * Evaluates a document, once, and gives its report as a handle, to be freed by gaugepoint_report_free.
 *
 * `kind` is a GaugepointDocument and `document` a document of that kind in JSON, of `document_length` bytes. `with_working` is 1 to have the
 * working of every number in the report, with a job, a measurement, a fit or a stack; else 0. Readings of a job that are missing give a
 * report that says what is missing; anything that is refused gives a status and no report. Trials, and many combinations of a what-if, take
 * their time.
 */
int32_t gaugepoint_report_new(int32_t kind,
                              const char *document,
                              size_t document_length,
                              int32_t with_working,
                              struct GaugepointReport **report,
                              struct GaugepointError *error);

/**
 * gaugepoint_report_new with a watcher and its user pointer; NULL is none. See PROGRESS at the head.
 */
int32_t gaugepoint_report_new_watched(int32_t kind,
                                      const char *document,
                                      size_t document_length,
                                      int32_t with_working,
                                      GaugepointWatcher watcher,
                                      void *user,
                                      struct GaugepointReport **report,
                                      struct GaugepointError *error);

/**
 * Frees a report. NULL is fine.
 */
void gaugepoint_report_free(struct GaugepointReport *report);

/**
 * Writes a report.
 *
 * `format` is a GaugepointFormat: every report is written as JSON, all but that on a sheet as text, those on a job, a stack, a revisit and a
 * what-if as Markdown; another is refused. `text` gets the text, to be freed by gaugepoint_text_free, and `text_length` its length in bytes
 * without the NUL that ends it.
 */
int32_t gaugepoint_report_text(const struct GaugepointReport *report,
                               int32_t format,
                               char **text,
                               size_t *text_length,
                               struct GaugepointError *error);

/**
 * What a job comes to. The report on another document is refused with GAUGEPOINT_STATUS_UNKNOWN_FORMAT.
 */
int32_t gaugepoint_report_job(const struct GaugepointReport *report,
                              struct GaugepointJobVerdict *out,
                              struct GaugepointError *error);

/**
 * What a cylinder of a job comes to; `cylinder` is its place in the report, from 0. The report on another document is refused.
 */
int32_t gaugepoint_report_cylinder(const struct GaugepointReport *report,
                                   size_t cylinder,
                                   struct GaugepointCylinderVerdict *out,
                                   struct GaugepointError *error);

/**
 * One decision on a cylinder of a job: piston, bore and clearance in the order of the work. `cylinder` is its place in the report, `decision` that
 * of the decision, both from 0. The report on another document is refused.
 */
int32_t gaugepoint_report_decision(const struct GaugepointReport *report,
                                   size_t cylinder,
                                   size_t decision,
                                   struct GaugepointJobDecision *out,
                                   struct GaugepointError *error);

/**
 * One sentence of the report on a job: call with `index` 0, 1, 2 ... until it fails with GAUGEPOINT_STATUS_OUT_OF_RANGE.
 *
 * `lines` is a GaugepointLines. `cylinder` is the place of the cylinder in the report, from 0, and 0 with lines on the engine. `text` gets the
 * sentence, to be freed by gaugepoint_text_free, and `text_length` its length in bytes without the NUL that ends it. The report on another
 * document is refused.
 */
int32_t gaugepoint_report_line(const struct GaugepointReport *report,
                               int32_t lines,
                               size_t cylinder,
                               size_t index,
                               char **text,
                               size_t *text_length,
                               struct GaugepointError *error);

#ifdef __cplusplus
}  // extern "C"
#endif  // __cplusplus

#endif  /* GAUGEPOINT_H */
