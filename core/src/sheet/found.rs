//! The rows that are checked, and what is found in them.

use super::document::{SheetEntry, What};
use super::number::Number;
use super::printed::{self, Reading, Unreadable};
use super::report::{Check, Checked, Contradiction, Suspicion, WouldBe};
use crate::job::Warning;
use std::collections::BTreeSet;

/// An entry that was read.
#[derive(Debug)]
pub(super) struct Row {
    pub(super) index: usize,
    pub(super) id: String,
    pub(super) what: What,
    pub(super) texts: Vec<Text>,
}

/// A printed text.
#[derive(Debug)]
pub(super) struct Text {
    pub(super) path: String,
    pub(super) printed: String,
    pub(super) reading: Result<Reading, Unreadable>,
}

/// A text that could be read, with its row.
#[derive(Debug, Clone, Copy)]
pub(super) struct Read<'s> {
    pub(super) row: &'s Row,
    pub(super) text: &'s Text,
    pub(super) reading: Reading,
}

impl Row {
    pub(super) fn new(index: usize, entry: &SheetEntry) -> Self {
        let text = |field: &str, printed: &str| Text {
            path: format!("/entries/{index}/{field}"),
            printed: printed.trim().to_owned(),
            reading: printed::read(printed, entry.what.dimension()),
        };
        let second = entry.also_printed.as_ref().map(|also| text("also_printed", also.text()));
        let texts = [Some(text("printed", entry.printed.text())), second];
        Row {
            index,
            id: entry.id.text().trim().to_owned(),
            what: entry.what,
            texts: texts.into_iter().flatten().collect(),
        }
    }

    /// The texts that could be read.
    pub(super) fn read(&self) -> Vec<Read<'_>> {
        let read = |text| reading_of(self, text);
        self.texts.iter().filter_map(read).collect()
    }
}

fn reading_of<'s>(row: &'s Row, text: &'s Text) -> Option<Read<'s>> {
    let reading = *text.reading.as_ref().ok()?;
    Some(Read { row, text, reading })
}

impl Read<'_> {
    /// A number of this text, and what it would be.
    pub(super) fn would_be(&self, number: &Number, would_be: Option<String>) -> Option<WouldBe> {
        let printed = self.reading.written(number);
        let would_be = would_be.filter(|other| *other != printed)?;
        Some(WouldBe { path: self.text.path.clone(), printed, would_be })
    }
}

/// Everything found so far.
#[derive(Debug, Default)]
pub(super) struct Findings {
    applied: Vec<BTreeSet<Check>>,
    pub(super) contradictions: Vec<Contradiction>,
    pub(super) warnings: Vec<Warning>,
    /// rows whose own text speaks against them
    pub(super) doubtful: BTreeSet<usize>,
    /// rows that any contradiction names
    contradicted: BTreeSet<usize>,
}

impl Findings {
    pub(super) fn new(rows: usize) -> Self {
        Findings { applied: vec![BTreeSet::new(); rows], ..Findings::default() }
    }

    /// Notes that a check could be made on a row.
    pub(super) fn applied(&mut self, check: Check, row: &Row) {
        if let Some(checks) = self.applied.get_mut(row.index) {
            checks.insert(check);
        }
    }

    /// Notes a contradiction among texts.
    pub(super) fn contradict(
        &mut self,
        check: Check,
        texts: &[(&Row, &Text)],
        said: String,
        would_be: Vec<WouldBe>,
        suspected: Vec<Suspicion>,
    ) {
        let mut entries: Vec<String> = Vec::new();
        for (row, _) in texts {
            self.contradicted.insert(row.index);
            if !entries.contains(&row.id) {
                entries.push(row.id.clone());
            }
        }
        self.contradictions.push(Contradiction {
            check,
            letter: check.letter(),
            entries,
            paths: texts.iter().map(|(_, text)| text.path.clone()).collect(),
            printed: texts.iter().map(|(_, text)| text.printed.clone()).collect(),
            text: said,
            would_be,
            suspected,
        });
    }

    /// Whether other entries bear a row out: a sum, a ladder or a second source that holds.
    pub(super) fn is_borne_out(&self, row: &Row) -> bool {
        let by_others = [Check::Ladder, Check::Oversize, Check::Clearance, Check::TwoSources];
        let made =
            self.applied.get(row.index).is_some_and(|checks| by_others.iter().any(|c| checks.contains(c)));
        made && !self.contradicted.contains(&row.index)
    }

    /// What was held against what.
    pub(super) fn checked(&self, rows: &[Row]) -> Vec<Checked> {
        let one = |(row, checks): (&Row, &BTreeSet<Check>)| Checked {
            id: row.id.clone(),
            what: row.what,
            checks: checks.iter().copied().collect(),
        };
        rows.iter().zip(&self.applied).map(one).collect()
    }
}
