//! Numbers and tables of reports that are text without a page.

use super::escaped;

/// Widest cell that the others of its column are brought to.
const WIDEST: usize = 40;

/// Rows whose cells are as wide as their columns.
pub(crate) fn aligned<R: AsRef<[String]>>(rows: &[R]) -> Vec<String> {
    rows.iter().map(|row| line(row.as_ref(), rows)).collect()
}

fn line<R: AsRef<[String]>>(row: &[String], rows: &[R]) -> String {
    let mut out = String::new();
    for (k, cell) in row.iter().enumerate() {
        let width = rows.iter().filter_map(|row| row.as_ref().get(k)).map(|cell| cell.chars().count()).max();
        let width = width.unwrap_or_default().min(WIDEST);
        out.push_str(&format!("{cell:<width$}  "));
    }
    out.trim_end().to_owned()
}

/// Rows as a table of Markdown, the first with the heads.
pub(crate) fn markdown(rows: &[Vec<String>]) -> String {
    let mut out = String::new();
    for (k, row) in rows.iter().enumerate() {
        let cells: Vec<String> = row.iter().map(|cell| escaped(cell)).collect();
        out.push_str(&format!("| {} |\n", cells.join(" | ")));
        if k == 0 {
            out.push_str(&format!("{}|\n", "|---".repeat(row.len())));
        }
    }
    out
}

/// Six significant digits, with an exponent where the number is very large or very small.
pub(crate) fn short(value: f64) -> String {
    let rounded: f64 = format!("{value:.5e}").parse().unwrap_or(value);
    match exponent_of(rounded) {
        -5..=8 => rounded.to_string(),
        _ => format!("{rounded:e}"),
    }
}

/// Place of the first digit: 0 for 1 to 9.99, and for 0.
pub(crate) fn exponent_of(value: f64) -> i32 {
    if value == 0.0 {
        return 0;
    }
    let text = format!("{value:e}");
    text.split_once('e').and_then(|(_, exponent)| exponent.parse().ok()).unwrap_or_default()
}
