//! Reads a fit document and prints its report.
//!
//! `cargo run --release --example hot_fit -- FILE [json]`

use gaugepoint::Options;
use gaugepoint::fit::{FitDocument, fit};
use std::process::ExitCode;

fn main() -> ExitCode {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let (file, json) = match words.as_slice() {
        [file] => (file, false),
        [file, form] if form == "json" => (file, true),
        _ => {
            eprintln!("usage: hot_fit FILE [json]");
            return ExitCode::from(2);
        }
    };
    match report(file, json) {
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

fn report(file: &str, json: bool) -> Result<String, String> {
    let text = std::fs::read_to_string(file).map_err(|e| e.to_string())?;
    let report =
        FitDocument::from_json(&text).and_then(|d| fit(&d, Options::default())).map_err(|e| e.to_string())?;
    Ok(if json { report.to_json() } else { report.to_text() })
}
