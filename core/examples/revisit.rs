//! Reads a revisit document and prints its report.
//!
//! `cargo run --release --example revisit -- FILE [json]`

use gaugepoint::revisit::RevisitDocument;
use std::process::ExitCode;

fn main() -> ExitCode {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let (file, json) = match words.as_slice() {
        [file] => (file, false),
        [file, form] if form == "json" => (file, true),
        _ => {
            eprintln!("usage: revisit FILE [json]");
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
    let report = RevisitDocument::from_json(&text).and_then(|revisit| revisit.evaluate());
    let report = report.map_err(|e| e.to_string())?;
    Ok(if json { report.to_json() } else { report.to_text() })
}
