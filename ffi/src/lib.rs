//! C ABI of gaugepoint: the dimensional mathematics of an engine rebuild.
//!
//! UNITS. A name ends in its unit: `_mm`, `_mm2`, `_c` (degrees Celsius), `_k` (differences of temperature), `_per_k` (per kelvin), `_per_k2`, `_per_k3`,
//! `_mpa`, `_n`, `_nm` (newton metre), `_cm3`, `_g`, `_mrad`, `_deg`, `_min`, `_percent`, `_per_mille`; of conversions also `_inch`, `_thou`,
//! `_fahrenheit`. Without one it is a pure number, or in the unit of the caller's own numbers: statistics, stacks, functions, prices. Sizes are
//! diameters, clearances diametral. Nothing else is converted and no unit is guessed.
//!
//! STATUS. Functions that can fail return 0 (GAUGEPOINT_STATUS_OK) or a status. Numbers of statuses never change their
//! meaning; treat one that you do not know as a failure.
//!
//! OUTPUTS. Arguments come first, then outputs, then the error. An output is never NULL; outputs and error do not
//! overlap. On failure every double is set to a quiet NaN and the result of a decision to
//! GAUGEPOINT_CONFORMITY_NOT_JUDGED, so that an ignored status cannot be read as a size; records, arrays, the pointer to a
//! report and its length keep what they held. Of the functions of many rows only gaugepoint_clearances sets its results to NaN when a row refuses the call.
//!
//! RECORDS. A result of several numbers is a structure that belongs to the caller and starts zeroed with `struct_size` set:
//! `GaugepointSample sample = {.struct_size = sizeof sample};`. It is written on success only, up to `struct_size` bytes; a
//! size below that of the first version is refused. Later versions add fields at its end only. A structure without
//! `struct_size` is plain: it never changes.
//!
//! ARRAYS. A pointer and a count of values; the pointer is never NULL, but where it says so. More than GAUGEPOINT_MOST_VALUES are refused before
//! anything is read. A refused value is named with its place, from 0: "values/3". An array of results comes with the
//! `room` that it has; it is written on success only, as far as there are results.
//!
//! FLAT FUNCTIONS. Functions of plain doubles that give one double come in three shapes with the same bits. gaugepoint_NAME has an output and a
//! status. gaugepoint_NAME_v returns the double, NaN where it is refused: for sheets and SQL. gaugepoint_NAME_array takes an array of `count`
//! for each parameter; `out` may be one of them, and overlaps none otherwise. With `row_status` each row gets its own: 0, or why it is refused
//! and its result is NaN; the call itself returns 0. Without (NULL) the first refused row refuses the call, its parameter and place are in the
//! error ("bore_mm/3"), and nothing is written. gaugepoint_flat_strided takes any of them by its number and numbers that need not stand side by
//! side; gaugepoint_flat_count, _name, _parameter and _meaning list them. None needs memory but for the text of a refusal.
//!
//! NaN. Never accepted as a value, never a result that is given, and never the sign of something left out: that is what
//! the `has_` flags are for, each 0 or 1. What a record does not give is NaN there, so that an ignored flag cannot be
//! read as a size.
//!
//! ERROR. A GaugepointError belongs to the caller and starts as GAUGEPOINT_ERROR_INIT (elsewhere: zeroed, `struct_size`
//! set). It is written on failure only, up to `struct_size` bytes; NULL means that it is not wanted. There is no last
//! error anywhere else.
//!
//! STRINGS. UTF-8. Text in is a pointer and a length in bytes and needs no NUL. Text out ends with a NUL. Text in a
//! GaugepointError that is too long is cut between characters; a NUL within it is shown as U+2400.
//!
//! OWNERSHIP. A text that was given is freed by gaugepoint_text_free and by nothing else. Texts that are returned as `const char *`
//! live for ever and are not freed. A GaugepointHotPiston is made by gaugepoint_hot_piston_new and freed by gaugepoint_hot_piston_free, a GaugepointHotBore
//! by gaugepoint_hot_bore_new and gaugepoint_hot_bore_free, a GaugepointHotFit by gaugepoint_hot_fit_new or gaugepoint_hot_fit_of and
//! gaugepoint_hot_fit_free, a GaugepointStack by gaugepoint_stack_new and gaugepoint_stack_free, a GaugepointFunction by one of three functions and
//! gaugepoint_function_free, a GaugepointReport by gaugepoint_report_new and gaugepoint_report_free, a GaugepointExpansion by gaugepoint_expansion_new
//! and gaugepoint_expansion_free, each once.
//! Nothing that is passed in is kept but a callback and its user pointer: what is made holds copies of what it was made from. All of them but a stack
//! never change.
//!
//! ENUMS. Passed and returned as int32_t; a number outside the enum is refused. None has the value 0 except
//! GAUGEPOINT_STATUS_OK and the places of GaugepointFinishParameter, so a blank argument is never a choice.
//!
//! THREADS. Every function may be called from any number of threads at once; a stack that is added to or freed belongs to one
//! thread. There is no global state, no locale, no clock: the same arguments give the same bits.
//!
//! FLOATING POINT. Whatever the caller's state is, the library computes with rounding to nearest, exceptions masked and nothing flushed to zero: the bits
//! are the same. The caller finds its state as it was, with its flags of exceptions but that of rounding. What is called back runs in the state of the library.
//!
//! PROGRESS. Functions that may take their time have a second form, gaugepoint_NAME_watched, with a GaugepointWatcher and its user pointer before the
//! outputs; a NULL watcher is none, and the results have the same bits. Work with nothing long in it asks nobody. What is done never falls, and is the
//! whole in the end; the whole grows where more is found to be done. A watcher that stops the work gives GAUGEPOINT_STATUS_STOPPED: outputs are as
//! after any other failure.
//!
//! PANICS. None is expected. One would be caught and returned as GAUGEPOINT_STATUS_PANIC, with its text in the error and
//! on standard error.
//!
//! MEMORY. When memory for a calculation runs out, the process ends by abort() with a line on standard error; GAUGEPOINT_STATUS_OUT_OF_MEMORY is for
//! the text that is handed out. A document has at most 16 MiB; one of that size that is refused takes at most about 0.5 GB. The report on a job takes
//! about 40 kB for each reading of a bore with working: 7 MB for a usual engine of six cylinders, 2.5 GB for 64 cylinders with 1000 readings each.
//!
//! VERSIONS. GAUGEPOINT_ABI is also the number in the name of the shared library (libgaugepoint_c.so.N). Compare it with
//! gaugepoint_abi() when the library is loaded by hand. New functions, statuses and fields at the end of GaugepointError
//! or of a record do not change it.
//!
//! Results rest on free thermal growth and defer to the maker's service data, local codes and licensed practice.

#![expect(unsafe_code, reason = "a C ABI takes pointers and exports names; all of it is in this crate")]
#![expect(
    clippy::missing_safety_doc,
    reason = "the contract of every pointer stands once, at the head of the header"
)]

pub mod abi;
pub mod status;
pub mod error;
mod floats;
mod guard;
mod caution;
#[cfg(feature = "documents")]
pub mod job;
pub mod text;
#[cfg(feature = "documents")]
pub mod sheet;
#[cfg(feature = "documents")]
pub mod measure;
#[cfg(feature = "documents")]
pub mod fit;
#[rustfmt::skip]
pub mod flat;
pub mod columns;
mod extent;
pub mod array;
mod record;
mod handle;
pub mod statistics;
pub mod study;
pub mod bias;
pub mod chart;
#[cfg(feature = "models")]
pub mod shape;
#[cfg(feature = "models")]
pub mod piston;
pub mod decision;
pub mod signs;
pub mod risk;
pub mod ring;
pub mod pin;
pub mod liner;
pub mod growth;
pub mod expansion;
pub mod deck;
pub mod crank;
#[cfg(feature = "models")]
pub mod hot;
#[cfg(feature = "models")]
pub mod hot_part;
#[cfg(feature = "models")]
pub mod uncertainty;
#[cfg(feature = "models")]
pub mod before;
pub mod plausible;
pub mod batch;
#[cfg(feature = "models")]
pub mod progress;
#[cfg(feature = "models")]
pub mod stack;
#[cfg(feature = "models")]
pub mod trials;
#[cfg(feature = "models")]
pub mod function;
#[cfg(feature = "models")]
pub mod matching;
#[cfg(feature = "models")]
pub mod clean_up;
pub mod machining;
#[cfg(feature = "models")]
pub mod oversize;
#[cfg(feature = "models")]
pub mod shims;
#[cfg(feature = "models")]
pub mod assembly;
#[cfg(feature = "documents")]
pub mod stack_document;
#[cfg(feature = "documents")]
pub mod comparing;
#[cfg(feature = "documents")]
pub mod report;
