//! The rules at the head of the header, each held against every declaration in it.
//!
//! What a header can not show is proven elsewhere: that outputs are cleared or kept, that NULL and wrong sizes are refused, by the programs of
//! `tests/c`; that no panic leaves, that nothing else is exported and that the library is named after its number, by `tests/c_abi.rs`; that a
//! record is written as far as both sides know it, beside `src/record.rs` and `src/error.rs`; texts and numbers of statuses by `tests/c/misuse.c`.

#![expect(clippy::unwrap_used, reason = "a test stops where it fails")]

use std::collections::{BTreeMap, BTreeSet};
use std::path::PathBuf;

/// A type with a name: a parameter or a field. What a callback is given stands in its type.
#[derive(Debug, Clone)]
struct Named {
    of: String,
    name: String,
}

#[derive(Debug)]
struct Function {
    gives: String,
    name: String,
    parameters: Vec<Named>,
}

#[derive(Debug, Default)]
struct Header {
    /// the page of rules
    head: String,
    functions: Vec<Function>,
    structures: BTreeMap<String, Vec<Named>>,
    handles: BTreeSet<String>,
    enumerations: BTreeMap<String, Vec<(String, i64)>>,
}

fn file(of: &str) -> String {
    std::fs::read_to_string(PathBuf::from(env!("CARGO_MANIFEST_DIR")).join(of)).unwrap()
}

/// `const double *values` or `char unit[16]`.
fn named(text: &str) -> Named {
    let words = text.split_whitespace().collect::<Vec<_>>().join(" ").replace("struct ", "");
    let words = words.split('[').next().unwrap().trim();
    let at = words.rfind(|c: char| !c.is_alphanumeric() && c != '_').unwrap() + 1;
    Named { of: words[..at].trim().to_owned(), name: words[at..].to_owned() }
}

fn without_comments(text: &str) -> String {
    let mut parts = text.split("/*");
    let mut out = parts.next().unwrap().to_owned();
    out.extend(parts.map(|part| part.split_once("*/").unwrap().1));
    out
}

impl Header {
    fn new(text: &str) -> Self {
        let mut out = Header { head: text.split("*/").next().unwrap().to_owned(), ..Header::default() };
        let code = without_comments(text).replace("\\\n", "");
        let code: String = code.lines().filter(|l| !l.starts_with('#')).map(|l| format!("{l}\n")).collect();
        for (declaration, body) in blocks(&code) {
            out.declare(declaration.trim(), body);
        }
        out
    }

    fn declare(&mut self, declaration: &str, body: Option<&str>) {
        let last = || declaration.rsplit(' ').next().unwrap().to_owned();
        match body {
            Some(body) if declaration.contains("enum ") => {
                let constants = body.split(',').map(str::trim).filter(|c| !c.is_empty());
                let constants = constants.map(|c| c.split_once(" = ").unwrap());
                let constants = constants.map(|(name, number)| (name.to_owned(), number.parse().unwrap()));
                self.enumerations.insert(last(), constants.collect());
            }
            Some(body) => {
                let fields = body.split(';').map(str::trim).filter(|f| !f.is_empty());
                self.structures.insert(last(), fields.map(named).collect());
            }
            None if declaration.starts_with("typedef struct ") => {
                self.handles.insert(last());
            }
            None if declaration.contains(" gaugepoint_") || declaration.contains("*gaugepoint_") => {
                let (start, parameters) = declaration.split_once('(').unwrap();
                let start = named(start);
                let parameters = parameters.strip_suffix(')').unwrap();
                let parameters = parameters.split(',').filter(|p| *p != "void").map(named).collect();
                self.functions.push(Function { gives: start.of, name: start.name, parameters });
            }
            // the callback, and the name of a structure after its body
            None => assert!(
                declaration.is_empty()
                    || declaration.starts_with("typedef int32_t (*")
                    || !declaration.contains(' '),
                "{declaration}"
            ),
        }
    }

    fn read() -> Self {
        Header::new(&file("include/gaugepoint.h"))
    }

    /// Every parameter and every field, with where it stands.
    fn all(&self) -> Vec<(String, &Named)> {
        let parameters = self.functions.iter().flat_map(|f| f.parameters.iter().map(|p| (f.name.clone(), p)));
        let fields =
            self.structures.iter().flat_map(|(name, fields)| fields.iter().map(|f| (name.clone(), f)));
        parameters.chain(fields).collect()
    }
}

/// Declarations at the top, with what stands in braces.
fn blocks(code: &str) -> Vec<(&str, Option<&str>)> {
    let (mut out, mut rest) = (Vec::new(), code);
    while let Some(end) = rest.find(['{', ';']) {
        if rest[..end].contains("extern \"C\"") {
            rest = &rest[end + 1..];
        } else if rest[end..].starts_with(';') {
            out.push((&rest[..end], None));
            rest = &rest[end + 1..];
        } else {
            let close = end + rest[end..].find('}').unwrap();
            out.push((&rest[..end], Some(&rest[end + 1..close])));
            rest = &rest[close + 1..];
        }
    }
    out
}

/// Units that names end in.
const UNITS: [&str; 20] = [
    "_mm",
    "_c",
    "_per_k",
    "_k",
    "_mpa",
    "_n",
    "_nm",
    "_cm3",
    "_mrad",
    "_deg",
    "_g",
    "_mm2",
    "_per_k2",
    "_per_k3",
    "_min",
    "_percent",
    "_mille",
    "_inch",
    "_thou",
    "_fahrenheit",
];

/// Numbers without a unit in their names: pure numbers, and numbers in a unit of the caller's; functions that give one stand by their own names.
const PURE: &str = "\
    above above_lower above_upper alone alpha amount appraiser_residual_f appraiser_residual_p at at_least below \
    below_lower below_upper bender_lower bender_upper between between_dof bias block_poisson boring_price \
    categories centre coefficient coefficients compression_ratio confidence conforming consumer contributions cost \
    coverage cp cpk critical densities deviation deviation_of_mean difference dof dofs edges effective_trials \
    error excess_kurtosis eye_poisson f factor factors first first_expanded first_mean first_standard_deviation \
    first_u fixed friction friction_least friction_most gaugepoint_coverage_factor gaugepoint_effective_dof gaugepoint_flat_strided \
    gaugepoint_function_nominal gaugepoint_numerical_tolerance gaugepoint_probability_of_conformity gaugepoint_stack_quantile \
    gaugepoint_stack_quantile_above gaugepoint_standard_uncertainty gaugepoint_static_compression_ratio gaugepoint_v_block_factor guard half_width \
    highest highest_at highest_bound intercept intercept_p intercept_t intercept_uncertainty kelvin_coefficients \
    lag_1_correlation largest_u least least_share least_zone limit liner_poisson lower lowest lowest_at \
    lowest_bound mean modified_factor modified_lower modified_upper most nominal numbers of_total outside p \
    parameter part_residual_f part_residual_p pearlite_to_ferrite pin_poisson points pooled_deviation position_at \
    possible_lower possible_upper power ppm price probabilities probability probability_above probability_below \
    probability_of_conformity probability_outside producer r_squared ratio ratio_pin ratio_thrust readings \
    reference reference_uncertainty references residual_deviation resolution root_sum_square_lower \
    root_sum_square_upper second second_expanded second_mean second_standard_deviation second_u sensitivity share \
    shift shortest_lower shortest_upper sizes skewness sleeve_price slope slope_p slope_t slope_uncertainty \
    slope_x slope_x_uncertainty slope_y slope_y_uncertainty squares standard_deviation standard_error \
    standard_uncertainty strain strains symmetric_lower symmetric_upper t third tilt together tolerance tolerances total \
    total_squares u uncertainty_ratio upper usual_lower usual_upper value values wanted weights within within_dof \
    worst_case_lower worst_case_upper worst_outside worst_probability x zone";

#[test]
fn units() {
    let header = Header::read();
    let head: String =
        header.head.split_once("UNITS.").unwrap().1.split("STATUS.").next().unwrap().to_owned();
    for unit in UNITS.iter().filter(|u| **u != "_mille") {
        assert!(head.contains(unit), "{unit} is not explained");
    }
    let pure: BTreeSet<&str> = PURE.split_whitespace().collect();
    let mut unused = pure.clone();
    let mut missing = BTreeSet::new();
    for (place, of) in header.all() {
        let has_unit = |name: &str| UNITS.iter().any(|u| name.ends_with(u) || name == &u[1..]);
        // what a function gives alone is what the function is named after
        let place = place.trim_end_matches("_array");
        let name = if of.name == "out" { place } else { of.name.as_str() };
        if of.of.contains("double") && !has_unit(name) && !unused.remove(name) && !pure.contains(name) {
            missing.insert(name.to_owned());
        }
    }
    assert_eq!(missing, BTreeSet::new(), "without a unit, and not listed as pure");
    assert_eq!(unused, BTreeSet::new(), "listed, but nowhere");
}

/// Functions that can not fail.
fn cannot_fail(function: &Function) -> bool {
    let sheet = function.gives == "double" && function.name.ends_with("_v");
    let text = function.gives == "const char *";
    sheet
        || text
        || function.name.ends_with("_free")
        || ["gaugepoint_abi", "gaugepoint_status_at", "gaugepoint_flat_count"]
            .contains(&function.name.as_str())
}

#[test]
fn status() {
    for function in Header::read().functions {
        let errors = function.parameters.iter().filter(|p| p.of.contains("GaugepointError")).count();
        if cannot_fail(&function) {
            assert_eq!(errors, 0, "{}", function.name);
        } else {
            let last = function.parameters.last().unwrap();
            assert_eq!(
                (function.gives.as_str(), last.of.as_str(), last.name.as_str(), errors),
                ("int32_t", "GaugepointError *", "error", 1),
                "{}",
                function.name
            );
        }
    }
}

/// A place that the function writes to: neither a handle that is changed nor what a callback is given.
fn is_output(header: &Header, of: &Named) -> bool {
    let writes = of.of.ends_with('*') && !of.of.starts_with("const ") && of.of != "void *";
    writes && !header.handles.iter().any(|h| of.of == format!("{h} *"))
}

#[test]
fn outputs_come_last() {
    let header = Header::read();
    for function in &header.functions {
        let first = function.parameters.iter().position(|p| is_output(&header, p));
        let Some(first) = first.filter(|_| !cannot_fail(function)) else { continue };
        for after in &function.parameters[first..] {
            let is_length = after.of == "size_t" && (after.name == "count" || after.name.ends_with("room"));
            let is_stride = after.of == "ptrdiff_t" && after.name.ends_with("_stride");
            assert!(
                is_output(&header, after) || is_length || is_stride,
                "{}: {} after an output",
                function.name,
                after.name
            );
        }
    }
}

#[test]
fn records() {
    let header = Header::read();
    let layout = file("../tests/c/layout.c");
    for (name, fields) in &header.structures {
        for (place, _) in fields.iter().enumerate().filter(|(_, f)| f.name == "struct_size") {
            assert_eq!((place, fields[0].of.as_str()), (0, "size_t"), "{name}");
        }
        // pinned: a plain structure never changes, a record grows only by a new pin
        assert!(layout.contains(&format!("sizeof({name}) ==")), "tests/c/layout.c says nothing of {name}");
        for field in fields.iter().filter(|f| !f.name.starts_with("reserved")) {
            assert!(
                layout.contains(&format!("offsetof({name}, {}) ==", field.name)),
                "{name}.{}",
                field.name
            );
        }
    }
}

#[test]
fn arrays_and_texts_have_their_lengths() {
    for function in Header::read().functions.iter().filter(|f| !cannot_fail(f)) {
        for pair in function.parameters.windows(2) {
            let [text, length] = pair else { continue };
            let expected = match text.of.as_str() {
                "const char *" => "size_t",
                "char **" => "size_t *",
                _ => continue,
            };
            assert_eq!(
                (length.of.as_str(), &length.name),
                (expected, &format!("{}_length", text.name)),
                "{}",
                function.name
            );
        }
    }
}

#[test]
fn flags() {
    for (place, of) in Header::read().all() {
        assert!(!of.name.starts_with("has_") || of.of == "int32_t", "{place}: {}", of.name);
    }
}

#[test]
fn handles_are_made_and_freed() {
    let header = Header::read();
    let owned = header.head.split_once("OWNERSHIP.").unwrap().1.split("ENUMS.").next().unwrap();
    assert!(header.handles.len() > 3);
    for handle in &header.handles {
        let taking = |of: &str| -> Vec<&str> {
            let takes = |f: &&Function| f.parameters.iter().any(|p| p.of == of.replace('@', handle));
            header.functions.iter().filter(takes).map(|f| f.name.as_str()).collect()
        };
        assert!(!taking("@ **").is_empty(), "{handle} is not made");
        let changing = taking("@ *");
        let freed: Vec<&&str> = changing.iter().filter(|name| name.ends_with("_free")).collect();
        assert_eq!(freed.len(), 1, "{handle}");
        assert!(owned.contains(handle.as_str()) && owned.contains(*freed[0]), "{handle}");
        // but a stack, what is made never changes
        assert!(changing.len() == 1 || handle == "GaugepointStack", "{handle}: {changing:?}");
    }
}

#[test]
fn enumerations() {
    let header = Header::read();
    for (name, constants) in &header.enumerations {
        let numbers: BTreeSet<i64> = constants.iter().map(|(_, number)| *number).collect();
        assert_eq!(numbers.len(), constants.len(), "{name}");
        // a parameter of a finish is a place in an array and never an argument
        let from_zero = ["GaugepointStatus", "GaugepointFinishParameter"].contains(&name.as_str());
        assert_eq!(numbers.contains(&0), from_zero, "{name}");
        let passed = header.all().into_iter().find(|(_, of)| of.of.split(' ').any(|word| word == name));
        assert!(passed.is_none(), "{passed:?}");
    }
    assert!(header.functions.iter().all(|f| !header.enumerations.contains_key(&f.gives)));
}

/// What every language can pass: no bool, no structure by value, no 64-bit integer by value, no list without an end.
#[test]
fn signatures() {
    let header = Header::read();
    assert!(
        header.functions.len() > 150 && header.structures.len() > 100,
        "the reader of the header is broken"
    );
    for function in &header.functions {
        let given = ["int32_t", "double", "void", "const char *"].contains(&function.gives.as_str());
        assert!(given, "{} gives {}", function.name, function.gives);
        for of in &function.parameters {
            let by_value =
                ["int32_t", "double", "size_t", "ptrdiff_t", "GaugepointCallback", "GaugepointWatcher"]
                    .contains(&of.of.as_str());
            assert!(by_value || of.of.ends_with('*'), "{}: {} {}", function.name, of.of, of.name);
        }
    }
    let code = without_comments(&file("include/gaugepoint.h"));
    let words: BTreeSet<&str> = code.split(|c: char| !c.is_alphanumeric() && c != '_').collect();
    for word in ["bool", "_Bool", "long", "short", "unsigned", "wchar_t", "float", "union", "FILE", "va_list"]
    {
        assert!(!words.contains(word), "{word}");
    }
    assert!(!code.contains("..."));
}

/// Each paragraph of the head, so that one that is added is not forgotten here.
#[test]
fn paragraphs() {
    let head = Header::read().head;
    let first = |line: &str| line.strip_prefix(" * ")?.split_once('.').map(|(word, _)| word.to_owned());
    let found: Vec<String> = head.lines().filter_map(first).filter(|w| w.len() > 2).collect();
    let found: Vec<String> = found
        .into_iter()
        .filter(|w| w == "NaN" || w.chars().all(|c| c.is_ascii_uppercase() || c == ' '))
        .collect();
    let expected = [
        "UNITS",
        "STATUS",
        "OUTPUTS",
        "RECORDS",
        "ARRAYS",
        "FLAT FUNCTIONS",
        "NaN",
        "ERROR",
        "STRINGS",
        "OWNERSHIP",
        "ENUMS",
        "THREADS",
        "FLOATING POINT",
        "PROGRESS",
        "PANICS",
        "MEMORY",
        "VERSIONS",
    ];
    assert_eq!(found, expected);
}

/// The reader sees what breaks a rule.
#[test]
fn a_breach_is_seen() {
    let header = Header::new(
        "/* head */\ntypedef enum GaugepointA {\n  GAUGEPOINT_A_B = 0,\n} GaugepointA;\ntypedef struct GaugepointH GaugepointH;\n\
         typedef struct GaugepointS {\n  double x;\n  size_t struct_size;\n} GaugepointS;\n\
         int64_t gaugepoint_f(double *out, struct GaugepointS by_value, struct GaugepointH *handle);\n",
    );
    let function = &header.functions[0];
    assert_eq!((function.gives.as_str(), function.name.as_str()), ("int64_t", "gaugepoint_f"));
    let types: Vec<&str> = function.parameters.iter().map(|p| p.of.as_str()).collect();
    assert_eq!(types, ["double *", "GaugepointS", "GaugepointH *"]);
    assert_eq!(header.enumerations["GaugepointA"], [("GAUGEPOINT_A_B".to_owned(), 0)]);
    assert_eq!(header.structures["GaugepointS"][1].name, "struct_size");
    assert!(is_output(&header, &function.parameters[0]) && !is_output(&header, &function.parameters[2]));
}
