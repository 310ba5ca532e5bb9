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
 * GAUGEPOINT_CONFORMITY_NOT_JUDGED, so that an ignored status cannot be read as a size; the pointer to a report and its
 * length keep what they held.
 *
 * NaN. Never accepted as a value, never a result of success, and never the sign of something left out: that is what
 * the has_ flags are for, each 0 or 1.
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
 * do not change it.
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
   * The struct_size of the GaugepointError was not set.
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
 * Judges one value in mm with its standard uncertainty in mm, for a value whose error is normal.
 *
 * `lower_mm` counts when `has_lower` is 1, `upper_mm` when `has_upper` is 1; at least one must. `rule` is a
 * GaugepointRule. `at_least` is the probability asked for by the rule conformance probability, 0.5 to 0.999999; the
 * others do not use it, but it must be a probability (0.95 is usual). `result` gets a GaugepointConformity,
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

#ifdef __cplusplus
}  // extern "C"
#endif  // __cplusplus

#endif  /* GAUGEPOINT_H */
