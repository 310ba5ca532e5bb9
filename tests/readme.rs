//! The README is true: what it shows is what the library says.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test that panics has failed"
)]

use gaugepoint::flat::{bench_clearance_mm, running_clearance_mm, size_at_20_mm};
use gaugepoint::{Document, Options, assess};
use gaugepoint_tests::{EXAMPLES, job, text};

/// The fenced blocks of a language, in order.
fn blocks(language: &str) -> Vec<String> {
    let readme = text("README.md");
    let mut out = Vec::new();
    let mut rest = readme.as_str();
    while let Some((_, after)) = rest.split_once(&format!("```{language}\n")) {
        let (block, tail) = after.split_once("```").expect("a closed block");
        out.push(block.to_owned());
        rest = tail;
    }
    out
}

fn report(name: &str) -> gaugepoint::Report {
    assess(&Document::from_json(&job(name)).expect("a job"), Options::default()).expect("accepted")
}

#[test]
fn the_report_is_shown_as_it_is() {
    let shown = &blocks("text")[0];
    let report = report("pump_six").to_text();
    let mut rest = report.as_str();
    let pieces: Vec<&str> = shown.split("[...]\n").map(|p| p.trim_matches('\n')).collect();
    assert!(pieces.len() == 4 && pieces.iter().all(|p| p.len() > 200), "{pieces:?}");
    for piece in pieces {
        let at = rest.find(piece).unwrap_or_else(|| panic!("not in the report:\n{piece}"));
        rest = &rest[at + piece.len()..];
    }
}

#[test]
fn the_refusal_is_shown_as_it_is() {
    let warm = job("pump_six").replacen(
        r#""temperature": "27 C", "thermometer""#,
        r#""temperature": "80.6 C", "thermometer""#,
        1,
    );
    let error = Document::from_json(&warm).and_then(|d| assess(&d, Options::default())).expect_err("refused");
    assert_eq!(blocks("text")[1].trim_end(), error.to_string());
}

#[test]
fn the_three_programs_print_what_is_claimed() {
    let piston = size_at_20_mm(95.9571, 0.0023, 27.0, 11.5e-6, 27.0, 19.4e-6).expect("computed");
    let bench = bench_clearance_mm(96.017, piston).expect("computed");
    let running = running_clearance_mm(96.017, 85.0, 11.4e-6, piston, 125.0, 20.0e-6).expect("computed");
    let line = format!("piston {piston:.4} mm, bench {bench:.4} mm, running {running:.4} mm");
    assert!(text("README.md").contains(&format!("`{line}`")), "{line}");
    // Rust runs as a doctest, C in c_abi.rs, Python in python/test_docs.py; here: they are there, with the same numbers
    for language in ["rust", "c", "python"] {
        let code = &blocks(language)[0];
        for number in [
            "95.9571", "0.0023", "27.0", "11.5e-6", "19.4e-6", "96.017", "85.0", "11.4e-6", "125.0",
            "20.0e-6",
        ] {
            assert!(code.contains(number), "{language}: {number}");
        }
    }
}

/// At most 100 columns, and nothing that only a colour or a symbol would say.
#[test]
fn reports_can_be_read_on_a_terminal() {
    for name in EXAMPLES {
        let report = report(name);
        for line in report.to_text().lines() {
            assert!(line.chars().count() <= 100, "{name}: {line}");
            assert!(line.chars().all(|c| !c.is_control()), "{name}: {line:?}");
            assert_eq!(line, line.trim_end(), "{name}");
        }
        for cylinder in &report.cylinders {
            let heading = format!("CYLINDER {}: {}", cylinder.number, cylinder.verdict.outcome.word());
            assert!(report.to_text().contains(&heading), "{name}: {heading}");
            assert!(report.to_markdown().contains(&format!(
                "## Cylinder {}: {}",
                cylinder.number,
                cylinder.verdict.outcome.word()
            )));
        }
        for caution in &report.cautions {
            assert!(report.to_text().split_whitespace().collect::<Vec<_>>().join(" ").contains(caution));
        }
    }
}

/// Markup and long words of the document stay words in the report.
#[test]
fn what_was_typed_cannot_become_markup() {
    let nasty = "x".repeat(300) + " | <b> `code` [link](to)";
    let job = job("pump_six").replacen("invented six-cylinder", &format!("{nasty} six-cylinder"), 1);
    let report = assess(&Document::from_json(&job).expect("a job"), Options::default()).expect("accepted");
    for line in report.to_text().lines() {
        assert!(line.chars().count() <= 100 && line.chars().all(|c| !c.is_control()), "{line:?}");
    }
    // at the beginning of a line nothing may become a list, a heading, a quotation or a rule
    for (note, shown) in [
        ("- a", "\\- a"),
        ("1. a", "1\\. a"),
        ("# a", "\\# a"),
        ("    a", "a"),
        ("> a", "&gt; a"),
        ("=== a", "\\=== a"),
    ] {
        let job = self::job("pump_six").replacen("\"note\": \"", &format!("\"note\": \"{note} "), 1);
        let report =
            assess(&Document::from_json(&job).expect("a job"), Options::default()).expect("accepted");
        assert!(report.to_markdown().contains(&format!("\n\n{shown} ")), "{note}");
    }
    let markdown = report.to_markdown();
    let title = markdown.lines().next().expect("a title");
    assert!(
        title.starts_with("# ")
            && title.contains("&lt;b&gt;")
            && title.contains("\\[link\\]")
            && title.ends_with("engine"),
        "{title}"
    );
}
