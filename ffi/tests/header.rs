//! The header is what the sources say. `UPDATE_HEADER=1 cargo test -p gaugepoint-ffi --test header` writes it.

#![expect(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test stops where it fails")]

mod generated;

use cbindgen::{Builder, Config, EnumConfig, Language, RenameRule};
use gaugepoint_c::status;
use generated::{holds, path, text};
use std::fmt::Write as _;

/// Sources with declarations, in the order of the header.
const SOURCES: &[&str] = &[
    "abi",
    "error",
    "status",
    "job",
    "text",
    "sheet",
    "measure",
    "fit",
    "columns",
    "flat",
    "array",
    "statistics",
    "study",
    "bias",
    "chart",
    "uncertainty",
    "before",
    "plausible",
    "shape",
    "piston",
    "deck",
    "crank",
    "liner",
    "growth",
    "expansion",
    "hot_part",
    "hot",
    "ring",
    "pin",
    "decision",
    "signs",
    "risk",
    "batch",
    "progress",
    "stack",
    "trials",
    "function",
    "matching",
    "clean_up",
    "machining",
    "oversize",
    "shims",
    "assembly",
    "stack_document",
    "comparing",
    "report",
];

/// Enumerations that no signature names, because they come in as int32.
const ENUMERATIONS: &[&str] = &[
    "Rule",
    "Document",
    "Format",
    "Outcome",
    "Judged",
    "Lines",
    "Conformity",
    "Pooling",
    "ChartKind",
    "Advice",
    "Pattern",
    "Plausibility",
    "Reference",
    "Algebraic",
    "Distribution",
    "Guard",
    "Bounded",
    "TemperColour",
    "Confidence",
    "Coefficients",
    "PistonForm",
    "Counted",
    "WindowKind",
    "PistonReading",
    "OddForm",
    "LawForm",
    "Position",
    "Scenario",
    "OnsetOutcome",
    "Variation",
    "Wanted",
    "Points",
    "Toward",
    "Coverage",
    "EngineStack",
    "Derivation",
    "Proof",
    "MatchingCase",
    "BarAxis",
    "FinishOutcome",
    "OversizeWay",
    "BoreActionKind",
    "OversizeReason",
    "ShimReason",
    "FilingOutcome",
    "FinishParameter",
    "FinishFinding",
    "Place",
    "What",
    "Question",
    "Group",
    "Cause",
];

/// The page of rules at the head of `src/lib.rs`.
fn rules() -> String {
    let mut out = "/*\n".to_owned();
    for line in text("src/lib.rs").lines().map_while(|l| l.strip_prefix("//!")) {
        writeln!(out, " *{}", line.replace('`', "").trim_end()).unwrap();
    }
    out + " *\n * Generated from the sources; the test that compares it also writes it.\n */"
}

/// What comes from elsewhere than the sources of this crate: the manifest and the core.
fn macros() -> String {
    let mut out = "\n".to_owned();
    let parts = [
        ("MAJOR", env!("CARGO_PKG_VERSION_MAJOR")),
        ("MINOR", env!("CARGO_PKG_VERSION_MINOR")),
        ("PATCH", env!("CARGO_PKG_VERSION_PATCH")),
    ];
    for (part, number) in parts {
        let word = part.to_lowercase();
        writeln!(
            out,
            "/**\n * Version of this header, {word} part.\n */\n#define GAUGEPOINT_VERSION_{part} {number}\n"
        )
        .unwrap();
    }
    let version = env!("CARGO_PKG_VERSION");
    writeln!(out, "/**\n * Version of this header.\n */\n#define GAUGEPOINT_VERSION \"{version}\"\n")
        .unwrap();
    out += "/**\n * Statuses. See STATUS at the head.\n */\nenum GaugepointStatus {\n";
    for s in status::ALL {
        let name = s.name.to_uppercase();
        writeln!(out, "  /**\n   * {}\n   */\n  GAUGEPOINT_STATUS_{name} = {},", s.meaning, s.code).unwrap();
    }
    out + "};\n\n/**\n * Start of a GaugepointError: GaugepointError error = GAUGEPOINT_ERROR_INIT;\n */\n\
           #define GAUGEPOINT_ERROR_INIT \\\n  { sizeof(GaugepointError), 0, 0, 0, 0, 0.0, 0.0, 0.0, \"\", \"\", \"\", \"\", \"\", \"\" }"
}

fn header() -> String {
    let config = Config {
        language: Language::C,
        header: Some(rules()),
        include_guard: Some("GAUGEPOINT_H".to_owned()),
        no_includes: true,
        sys_includes: vec!["stddef.h".to_owned(), "stdint.h".to_owned()],
        after_includes: Some(macros()),
        cpp_compat: true,
        usize_is_size_t: true,
        documentation_style: cbindgen::DocumentationStyle::Doxy,
        line_length: 110,
        enumeration: EnumConfig {
            rename_variants: RenameRule::QualifiedScreamingSnakeCase,
            ..EnumConfig::default()
        },
        export: cbindgen::ExportConfig {
            include: ENUMERATIONS.iter().map(|name| format!("Gaugepoint{name}")).collect(),
            exclude: vec!["Status".to_owned()],
            ..Default::default()
        },
        ..Config::default()
    };
    let sources = SOURCES.iter().fold(Builder::new().with_config(config), |builder, name| {
        builder.with_src(path(&format!("src/{name}.rs")))
    });
    let mut out = Vec::new();
    sources.generate().unwrap().write(&mut out);
    String::from_utf8(out).unwrap()
}

#[test]
fn the_header_is_what_the_sources_say() {
    holds("include/gaugepoint.h", &header(), "header");
}

/// Every line that starts a declaration: a macro, type, function, or a constant or field within a type.
fn declares(line: &str) -> bool {
    let word = line.trim_start();
    match line.len() - word.len() {
        0 if word.starts_with("#define") => !word.ends_with("GAUGEPOINT_H"),
        0 => {
            word.contains('(') && word.contains("gaugepoint_")
                || word.ends_with('{') && !word.starts_with("extern")
                // a structure whose fields are not shown
                || word.starts_with("typedef struct") && word.ends_with(';')
        }
        2 => word.starts_with("GAUGEPOINT_") || word.ends_with(';'),
        _ => false,
    }
}

/// Declarations, and those of them that no comment stands before.
fn declarations(header: &str) -> (usize, Vec<&str>) {
    let lines: Vec<&str> = header.lines().filter(|l| !l.is_empty()).collect();
    let all: Vec<&[&str]> = lines.windows(2).filter(|pair| declares(pair[1])).collect();
    let bare = all.iter().filter(|pair| !pair[0].ends_with("*/")).map(|pair| pair[1]);
    (all.len(), bare.collect())
}

#[test]
fn every_declaration_is_documented() {
    let header = text("include/gaugepoint.h");
    let (found, bare) = declarations(&header);
    assert_eq!(bare, Vec::<&str>::new());
    // the scan sees every type, field, choice, function and status of the sources, nine macros and the enumeration of the statuses
    let written = sources();
    let count = |is: fn(&str) -> bool| written.lines().filter(|line| is(line)).count();
    let types = count(|line| line.starts_with("pub struct Gaugepoint") || line.starts_with("pub enum "));
    let fields = count(|line| line.starts_with("    pub ") && line.ends_with(','));
    let choices =
        count(|line| line.trim_end_matches(|c: char| c.is_ascii_digit() || c == ',').ends_with(" = "));
    let functions = count(|line| line == "#[unsafe(no_mangle)]");
    let of_status =
        text("src/status.rs").lines().filter(|l| l.starts_with("    pub ") && l.ends_with(',')).count();
    assert!(
        types > 20 && fields > 100 && choices > 20 && functions > 20,
        "{types} {fields} {choices} {functions}"
    );
    assert_eq!(found, 10 + types + fields - of_status + choices + functions + status::ALL.len());
    let two = "/**\n * a\n */\nint32_t gaugepoint_a(void);\nint32_t gaugepoint_b(void);\n";
    assert_eq!(declarations(two), (2, vec!["int32_t gaugepoint_b(void);"]));
}

fn sources() -> String {
    SOURCES.iter().map(|name| text(&format!("src/{name}.rs"))).collect()
}

#[test]
fn version_macros_are_those_of_the_manifest() {
    let manifest = text("../Cargo.toml");
    let version =
        manifest.split("[workspace.package]").nth(1).and_then(|part| part.split('"').nth(1)).unwrap();
    let header = text("include/gaugepoint.h");
    let number = |name: &str| {
        let define = format!("#define GAUGEPOINT_{name} ");
        header.lines().find_map(|l| l.strip_prefix(&define)).unwrap_or_else(|| panic!("{define}")).to_owned()
    };
    let parts = ["VERSION_MAJOR", "VERSION_MINOR", "VERSION_PATCH"].map(number);
    assert_eq!(parts.join("."), version);
    assert_eq!(number("VERSION"), format!("\"{version}\""));
    assert_eq!(number("ABI"), gaugepoint_c::abi::GAUGEPOINT_ABI.to_string());
}
