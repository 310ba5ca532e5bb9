//! Reads a measurement document and prints its report.
//!
//! `cargo run --release --example measure -- FILE [text|json] [working]`

use gaugepoint::Options;
use gaugepoint::measure::{MeasurementDocument, measure};
use std::process::ExitCode;

fn main() -> ExitCode {
    let mut words = std::env::args().skip(1);
    let Some(file) = words.next() else {
        eprintln!("usage: measure FILE [text|json] [working]");
        return ExitCode::from(2);
    };
    let words: Vec<String> = words.collect();
    match report(&file, &words) {
        Ok(text) => {
            println!("{}", text.trim_end());
            ExitCode::SUCCESS
        }
        Err(refused) => {
            eprintln!("{file}: {refused}");
            ExitCode::FAILURE
        }
    }
}

fn report(file: &str, words: &[String]) -> Result<String, String> {
    let known = ["text", "json", "working"];
    if let Some(word) = words.iter().find(|w| !known.contains(&w.as_str())) {
        return Err(format!("\"{word}\" is not one of {}", known.join(", ")));
    }
    let asked = |word: &str| words.iter().any(|w| w == word);
    let text = std::fs::read_to_string(file).map_err(|e| e.to_string())?;
    let document = MeasurementDocument::from_json(&text).map_err(|e| e.to_string())?;
    let report = measure(&document, Options { working: asked("working") }).map_err(|e| e.to_string())?;
    Ok(if asked("json") { report.to_json() } else { report.to_text() })
}
