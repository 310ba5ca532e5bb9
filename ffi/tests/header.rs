//! The header is what the sources say. `UPDATE_HEADER=1 cargo test -p gaugepoint-ffi --test header` writes it.

#![expect(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test stops where it fails")]

use cbindgen::{Builder, Config, EnumConfig, Language, RenameRule};
use gaugepoint_c::status;
use std::fmt::Write as _;
use std::path::PathBuf;

/// Sources with declarations, in the order of the header.
const SOURCES: [&str; 12] = [
    "abi",
    "error",
    "status",
    "job",
    "flat",
    "array",
    "statistics",
    "study",
    "decision",
    "risk",
    "before",
    "plausible",
];

fn path(of: &str) -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join(of)
}

fn text(of: &str) -> String {
    std::fs::read_to_string(path(of)).unwrap()
}

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
    out += "/**\n * Statuses. See STATUS at the head.\n */\nenum GaugepointStatus {\n";
    for s in status::ALL {
        let name = s.name.to_uppercase();
        writeln!(out, "  /**\n   * {}\n   */\n  GAUGEPOINT_STATUS_{name} = {},", s.meaning, s.code).unwrap();
    }
    out + "};\n\n/**\n * Start of a GaugepointError: GaugepointError error = GAUGEPOINT_ERROR_INIT;\n */\n\
           #define GAUGEPOINT_ERROR_INIT \\\n  { sizeof(GaugepointError), 0, 0, 0, 0, 0.0, 0.0, 0.0, \"\", \"\", \"\", \"\", \"\", \"\" }"
}

fn generated() -> String {
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
            include: ["Rule", "Conformity", "Pooling", "Distribution", "Guard"]
                .map(|name| format!("Gaugepoint{name}"))
                .to_vec(),
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
    let generated = generated();
    if std::env::var_os("UPDATE_HEADER").is_some() {
        std::fs::create_dir_all(path("include")).unwrap();
        std::fs::write(path("include/gaugepoint.h"), &generated).unwrap();
    }
    assert!(
        text("include/gaugepoint.h") == generated,
        "include/gaugepoint.h is out of date: UPDATE_HEADER=1 cargo test -p gaugepoint-ffi --test header"
    );
}

/// Every line that starts a declaration: a macro, type, function, or a constant or field within a type.
fn declares(line: &str) -> bool {
    let word = line.trim_start();
    match line.len() - word.len() {
        0 if word.starts_with("#define") => !word.ends_with("GAUGEPOINT_H"),
        0 => {
            word.contains('(') && word.contains("gaugepoint_")
                || word.ends_with('{') && !word.starts_with("extern")
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
    // 6 macros, 16 types with their fields and choices; the scan sees all of them and the functions and statuses
    let functions = sources().matches("#[unsafe(no_mangle)]").count();
    // error, sample, one-way, component, line, study, items, interval, risks, capability
    let fields = 14 + 6 + 10 + 4 + 5 + 20 + 5 + 4 + 4 + 3;
    // rules, results, poolings, distributions, guards
    let choices = 3 + 4 + 3 + 4 + 4;
    assert_eq!(found, 6 + 16 + fields + choices + functions + status::ALL.len());
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
    assert_eq!(number("ABI"), gaugepoint_c::abi::GAUGEPOINT_ABI.to_string());
}
