/*
 * C ABI of gaugepoint: the dimensional mathematics of an engine rebuild.
 *
 * UNITS. A name ends in its unit: _mm, _c (degrees Celsius), _per_k (per kelvin). Sizes are diameters, clearances
 * diametral. Nothing is converted and no unit is guessed.
 *
 * STATUS. Functions that can fail return 0 (GAUGEPOINT_STATUS_OK) or a status. Numbers of statuses never change their
 * meaning; treat one that you do not know as a failure.
 *
 * OUTPUTS. Arguments come first, then outputs, then the error. An output is never NULL; outputs and error do not
 * overlap. On failure every double is set to a quiet NaN and the result of a decision to
 * GAUGEPOINT_CONFORMITY_NOT_JUDGED, so that an ignored status cannot be read as a size; records, arrays that are filled,
 * the pointer to a report and its length keep what they held.
 *
 * RECORDS. A result of several numbers is a structure that belongs to the caller and starts zeroed with struct_size set:
 * GaugepointSample sample = {.struct_size = sizeof sample};. It is written on success only, up to struct_size bytes; a
 * size below that of the first version is refused. Later versions add fields at its end only. A plain structure has no
 * struct_size and never changes: GaugepointInterval, GaugepointItems, and what stands within a record.
 *
 * ARRAYS. A pointer and a count of values; the pointer is never NULL. More than GAUGEPOINT_MOST_VALUES are refused before
 * anything is read. A refused value is named with its place, from 0: "values/3".
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
 * OWNERSHIP. A report is freed by gaugepoint_text_free and by nothing else. Texts that are returned as const char *
 * live for ever and are not freed. Nothing that is passed in is kept.
 *
 * ENUMS. Passed and returned as int32_t; a number outside the enum is refused. None has the value 0 except
 * GAUGEPOINT_STATUS_OK, so a blank argument is never a choice.
 *
 * THREADS. Every function may be called from any number of threads at once. There is no global state, no locale, no
 * clock: the same arguments give the same bits.
 *
 * PANICS. None is expected. One would be caught and returned as GAUGEPOINT_STATUS_PANIC, with its text in the error and
 * on standard error. When memory for a calculation runs out, the process ends; GAUGEPOINT_STATUS_OUT_OF_MEMORY is for
 * the report that is handed out.
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
   * The JSON is nested more deeply than is accepted.
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
} GaugepointRule;

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
} GaugepointStudy;

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
 * Points of a station list against their form; see RECORDS at the head.
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
   * Its distance from the form in standard deviations; NaN when not given.
   */
  double farthest_g;
  /**
   * Distance that no point of as many reaches by chance, except with the probability asked for.
   */
  double critical;
  /**
   * Standard deviation about the form.
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
 * Size at 20 C from the reading of a micrometer or caliper, in mm.
 *
 * (reading - zero_error) (1 + a_gauge (t_gauge - 20)) / (1 + a_part (t_part - 20)), for temperatures from -5 C to 60 C
 * and mean coefficients from 20 C.
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
 * Clearance at 20 C in mm, over the diameter: bore - piston; negative is interference.
 */
int32_t gaugepoint_bench_clearance_mm(double bore_mm,
                                      double piston_mm,
                                      double *out,
                                      struct GaugepointError *error);

/**
 * Clearance in mm of freely growing parts, over the diameter, from sizes at 20 C.
 *
 * bore (1 + a_bore (t_bore - 20)) - piston (1 + a_piston (t_piston - 20)), for temperatures from -40 C to 450 C. It is
 * not a verdict: skirts are elastic, and engines run for years with a free clearance below zero.
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
 * Crossed gauge study by averages and ranges, for up to 15 appraisers, trials and parts.
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
 * Judges one value in mm with its standard uncertainty in mm, for a value whose error is normal.
 *
 * `lower_mm` counts when `has_lower` is 1, `upper_mm` when `has_upper` is 1; at least one must. `rule` is a
 * GaugepointRule. `at_least` is the probability asked for by the rule conformance probability, 0.5 to 0.999999; the
 * others do not look at it. `result` gets a GaugepointConformity,
 * `probability` the probability of conformity.
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
 * unit. `form` is a GaugepointForm. `flags` has room for `count` numbers and gets 1 for each point that is farther off than
 * chance allows, else 0; it is left as it was on failure. A point that stands out is named, never removed. Grubbs' test
 * (ISO 5725-2), for the other forms the maximum normed residual.
 */
int32_t gaugepoint_outliers(const double *points,
                            size_t count,
                            int32_t form,
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

#ifdef __cplusplus
}  // extern "C"
#endif  // __cplusplus

#endif  /* GAUGEPOINT_H */
