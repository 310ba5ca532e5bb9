//! The exports of the flat functions are made from their table, and so is what calls them all from C.
//! `UPDATE_FLAT=1 cargo test -p gaugepoint-ffi --test flat` writes both.

#![expect(clippy::unwrap_used, reason = "a test stops where it fails")]

mod generated;

use gaugepoint::flat::{Function, TABLE};
use std::fmt::Write as _;

const HEAD: &str = "\
//! The flat functions, each in three shapes. Generated from the table of the core; the test that compares it also writes it.

use crate::columns::each;
use crate::error::GaugepointError;
use crate::guard::{number, plain, status};
use core::ffi::CStr;
use gaugepoint::flat::{self, row};

/// What a host can list of a function.
pub(crate) struct Texts {
    pub(crate) name: &'static CStr,
    pub(crate) meaning: &'static CStr,
    pub(crate) parameters: &'static [&'static CStr],
}
";

const HEAD_OF_C: &str = "\
/* Every flat function in its three shapes, by name. Generated from the table of the core; the test that compares it also writes it. */
#ifndef FLAT_H
#define FLAT_H

#include <gaugepoint.h>

typedef struct {
  const char *name;
  int parameters;
  int32_t (*call)(const double *x, double *out, GaugepointError *error);
  double (*value)(const double *x);
  int32_t (*array)(const double *const *x, size_t count, double *out, int32_t *row_status, GaugepointError *error);
} Flat;
";

/// The parts, each with its parameter in place of `@`, and commas between.
fn list(function: &Function, part: &str) -> String {
    function.parameters.iter().map(|p| part.replace('@', p)).collect::<Vec<_>>().join(", ")
}

fn places(function: &Function) -> String {
    (0..function.parameters.len()).map(|k| format!("x[{k}]")).collect::<Vec<_>>().join(", ")
}

fn texts() -> String {
    let mut out =
        "\n/// Texts of the table, in its order.\npub(crate) static TEXTS: &[Texts] = &[\n".to_owned();
    for function in TABLE {
        let meaning = function.meaning().replace('"', "\\\"").replace('\n', "\\n");
        let parameters = list(function, "c\"@\"");
        writeln!(
            out,
            "    Texts {{\n        name: c\"{}\",\n        meaning: c\"{meaning}\",\n        parameters: &[{parameters}],\n    }},",
            function.name
        )
        .unwrap();
    }
    out + "];\n"
}

fn exports(function: &Function) -> String {
    let name = function.name;
    let meaning: String =
        function.meaning().lines().map(|line| format!("/// {line}").trim_end().to_owned() + "\n").collect();
    let (doubles, arrays, names) =
        (list(function, "@: f64"), list(function, "@: *const f64"), list(function, "@"));
    format!(
        "
{meaning}#[unsafe(no_mangle)]
pub unsafe extern \"C\" fn gaugepoint_{name}({doubles}, out: *mut f64, error: *mut GaugepointError) -> i32 {{
    // SAFETY: the contract of the header
    unsafe {{ number(error, out, || flat::{name}({names})) }}
}}

/// gaugepoint_{name} as a value; NaN where it is refused.
#[unsafe(no_mangle)]
pub extern \"C\" fn gaugepoint_{name}_v({doubles}) -> f64 {{
    plain(f64::NAN, || flat::{name}({names}).unwrap_or(f64::NAN))
}}

/// gaugepoint_{name} of each of `count` rows; see FLAT FUNCTIONS at the head.
#[unsafe(no_mangle)]
pub unsafe extern \"C\" fn gaugepoint_{name}_array({arrays}, count: usize, out: *mut f64, row_status: *mut i32, error: *mut GaugepointError) -> i32 {{
    // SAFETY: the contract of the header
    unsafe {{ status(error, (), || each(&row::{name}, [{names}], count, out, row_status)) }}
}}
"
    )
}

fn in_c() -> String {
    let mut out = HEAD_OF_C.to_owned();
    for function in TABLE {
        let (name, x) = (function.name, places(function));
        write!(
            out,
            "
static int32_t call_{name}(const double *x, double *out, GaugepointError *error) {{
  return gaugepoint_{name}({x}, out, error);
}}

static double value_{name}(const double *x) {{ return gaugepoint_{name}_v({x}); }}

static int32_t array_{name}(const double *const *x, size_t count, double *out, int32_t *row_status, GaugepointError *error) {{
  return gaugepoint_{name}_array({x}, count, out, row_status, error);
}}
"
        )
        .unwrap();
    }
    out += "\nstatic const Flat flat_functions[] = {\n";
    for function in TABLE {
        let (name, count) = (function.name, function.parameters.len());
        writeln!(out, "  {{\"{name}\", {count}, call_{name}, value_{name}, array_{name}}},").unwrap();
    }
    out + "};\n\n#endif\n"
}

#[test]
fn the_exports_are_those_of_the_table() {
    let exports: String = TABLE.iter().copied().map(exports).collect();
    generated::holds("src/flat.rs", &(HEAD.to_owned() + &texts() + &exports), "flat");
}

#[test]
fn the_calls_of_c_are_those_of_the_table() {
    generated::holds("../tests/c/flat.h", &in_c(), "flat");
}
