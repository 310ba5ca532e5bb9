//! Reads a job document and prints its report.
//!
//! `cargo run --release --example assess -- FILE [text|markdown|json] [working]`

use gaugepoint::{Document, Options, assess};
use std::process::ExitCode;

fn main() -> ExitCode {
    let mut words = std::env::args().skip(1);
    let Some(file) = words.next() else {
        eprintln!("usage: assess FILE [text|markdown|json] [working]");
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
    let known = ["text", "markdown", "json", "working"];
    if let Some(word) = words.iter().find(|w| !known.contains(&w.as_str())) {
        return Err(format!("\"{word}\" is not one of {}", known.join(", ")));
    }
    let asked = |word: &str| words.iter().any(|w| w == word);
    let job = std::fs::read_to_string(file).map_err(|e| e.to_string())?;
    let document = Document::from_json(&job).map_err(|e| e.to_string())?;
    let report = assess(&document, Options { working: asked("working") }).map_err(|e| e.to_string())?;
    Ok(match (asked("json"), asked("markdown")) {
        (true, _) => report.to_json(),
        (false, true) => report.to_markdown(),
        (false, false) => report.to_text(),
    })
}
