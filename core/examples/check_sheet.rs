//! Holds printed sheets against themselves and prints what was found.
//!
//! `cargo run --release --example check_sheet -- [json] FILE ...`; with `json` one line for each sheet.

use gaugepoint::sheet::{Sheet, SheetReport, check};
use std::process::ExitCode;

fn main() -> ExitCode {
    let mut files: Vec<String> = std::env::args().skip(1).collect();
    let json = files.first().is_some_and(|word| word == "json");
    if json {
        files.remove(0);
    }
    if files.is_empty() {
        eprintln!("usage: check_sheet [json] FILE ...");
        return ExitCode::from(2);
    }
    for file in files {
        match report(&file) {
            Ok(report) if json => println!("{}", report.to_json()),
            Ok(report) => print(&report),
            Err(refused) => {
                eprintln!("{file}: {refused}");
                return ExitCode::FAILURE;
            }
        }
    }
    ExitCode::SUCCESS
}

fn report(file: &str) -> Result<SheetReport, String> {
    let sheet = std::fs::read_to_string(file).map_err(|e| e.to_string())?;
    Ok(check(&Sheet::from_json(&sheet).map_err(|e| e.to_string())?))
}

fn print(report: &SheetReport) {
    println!("{}: {} contradictions", report.sheet, report.contradictions.len());
    for found in &report.contradictions {
        println!("  {found}");
    }
    for warning in &report.warnings {
        println!("  odd: {}", warning.text);
    }
}
