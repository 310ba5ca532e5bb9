//! The report on what if as text of at most 100 columns and as Markdown.

use super::report::{Cell, WhatIfReport, WhatIfRow};
use crate::report::{Page, WIDTH, aligned, escaped, markdown, short};

/// Longest cell of the text; the data has it whole.
const LONGEST: usize = 36;

impl WhatIfReport {
    /// The report as text. A table that is wider than the page is told in several, each with the numbers of its rows.
    #[must_use]
    pub fn to_text(&self) -> String {
        let mut page = Page::default();
        self.head().iter().for_each(|line| page.line("", line));
        for table in folded(&self.table()) {
            page.gap();
            aligned(&table).iter().for_each(|row| page.line("", row));
        }
        page.list("REFUSED", &self.refusals());
        page.out
    }

    /// The report as Markdown.
    #[must_use]
    pub fn to_markdown(&self) -> String {
        let head = self.head();
        let (title, rest) = head.split_first().map_or(("", [].as_slice()), |(t, rest)| (t.as_str(), rest));
        let mut out = format!("# {}\n\n", escaped(title));
        rest.iter().for_each(|line| out.push_str(&format!("- {}\n", escaped(line))));
        out.push_str(&format!("\n{}", markdown(&self.table())));
        let refusals = self.refusals();
        out.push_str(if refusals.is_empty() { "" } else { "\n## Refused\n\n" });
        refusals.iter().for_each(|line| out.push_str(&format!("- {}\n", escaped(line))));
        out
    }

    fn head(&self) -> Vec<String> {
        let mut lines = vec![format!("{}   job {}   {}: what if", self.engine, self.job.id, self.job.date)];
        let name = |mark: &str, pointers: &[String]| {
            let line = |(k, pointer): (usize, &String)| format!("{mark}{}: {pointer}", k + 1);
            pointers.iter().enumerate().map(line).collect::<Vec<_>>()
        };
        lines.extend(name("v", &self.fields));
        lines.extend(name("s", &self.shown));
        lines.push("c1, c2, ...: what becomes of each cylinder; a dash: not there".to_owned());
        lines
    }

    /// Heads, the job as it is, and every combination.
    fn table(&self) -> Vec<Vec<String>> {
        let marks = |mark: &str, count: usize| (1..=count).map(|k| format!("{mark}{k}")).collect::<Vec<_>>();
        let cylinders = self.base.cylinders.len();
        let mut heads = vec!["row".to_owned()];
        heads.extend(marks("v", self.fields.len()));
        heads.extend(marks("s", self.shown.len()));
        heads.push("engine".to_owned());
        heads.extend(marks("c", cylinders));
        let mut out = vec![heads, self.base.cells("as it is".to_owned(), cylinders)];
        let rows = self.rows.iter().enumerate();
        out.extend(rows.map(|(k, row)| row.cells((k + 1).to_string(), cylinders)));
        out
    }

    fn refusals(&self) -> Vec<String> {
        let told = |(k, row): (usize, &WhatIfRow)| {
            let refused = row.refused.as_ref()?;
            let meant = refused.did_you_mean.as_ref().map(|m| format!("; did you mean {m}?"));
            let meant = meant.unwrap_or_default();
            Some(format!("row {}: {}: {}{meant}", k + 1, refused.field, refused.reason))
        };
        self.rows.iter().enumerate().filter_map(told).collect()
    }
}

impl WhatIfRow {
    /// Its cells; a place that is absent is a dash.
    fn cells(&self, name: String, cylinders: usize) -> Vec<String> {
        let absent = || "-".to_owned();
        let mut out = vec![name];
        out.extend(self.values.iter().map(|v| v.as_ref().map_or_else(absent, |v| cut(v))));
        out.extend(self.shown.iter().map(|cell| cell.as_ref().map_or_else(absent, told)));
        out.push(self.outcome.map_or_else(|| "refused".to_owned(), |o| o.word().to_owned()));
        let of = |k: usize| self.cylinders.get(k).map_or_else(absent, |o| o.word().to_owned());
        out.extend((0..cylinders).map(of));
        out
    }
}

fn told(cell: &Cell) -> String {
    match cell {
        Cell::Truth(truth) => truth.to_string(),
        Cell::Whole(number) => number.to_string(),
        Cell::Number(number) => short(*number),
        Cell::Word(word) => cut(word),
    }
}

fn cut(text: &str) -> String {
    match text.char_indices().nth(LONGEST) {
        Some((end, _)) => format!("{}...", text.get(..end).unwrap_or_default()),
        None => text.to_owned(),
    }
}

/// A table as several of at most the width of the page, each beginning with the first column.
fn folded(table: &[Vec<String>]) -> Vec<Vec<Vec<String>>> {
    let columns = table.first().map_or(0, Vec::len);
    let width =
        |k: usize| table.iter().filter_map(|row| row.get(k)).map(|c| c.chars().count()).max().unwrap_or(0);
    let first = width(0);
    let mut groups: Vec<Vec<usize>> = Vec::new();
    let mut used = usize::MAX;
    for k in 1..columns {
        // two spaces stand between columns
        let wide = width(k) + 2;
        if used.saturating_add(wide) > WIDTH {
            groups.push(vec![0]);
            used = first;
        }
        used += wide;
        if let Some(group) = groups.last_mut() {
            group.push(k);
        }
    }
    let row = |group: &[usize], row: &[String]| group.iter().filter_map(|k| row.get(*k).cloned()).collect();
    groups.iter().map(|group| table.iter().map(|r| row(group, r)).collect()).collect()
}
