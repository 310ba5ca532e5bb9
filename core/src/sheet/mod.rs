#![doc = include_str!("../../docs/sheet.md")]

mod agreement;
mod closure;
mod copied;
pub mod document;
mod exact;
mod found;
mod magnitude;
mod number;
mod order;
mod printed;
mod report;
mod slip;

pub use document::{Link, Pairs, SheetDocument, SheetEntry, What};
pub use report::{
    Check, Checked, Contradiction, REPORT_FORMAT, REPORT_VERSION, SheetReport, Slip, Suspicion, WouldBe,
};

use crate::error::{Error, ErrorKind};
use crate::job::decode;
use crate::job::{Entry, MOST_ENTRIES, Words, check_length, nearest};
use document::{ClearanceLink, Dimension, OversizeLink, SameLink, WearLink};
use found::{Findings, Row, Text};
use magnitude::NominalBore;
use std::collections::{BTreeMap, BTreeSet};

/// Format name of a sheet.
pub const FORMAT: &str = "gaugepoint-sheet";
/// Version of the sheet format.
pub const VERSION: u32 = 1;

/// A sheet whose ids are unique and whose links name entries that fit them.
///
/// Whether its texts can be read, and agree, is what [`check`] finds out.
#[derive(Debug, Clone, PartialEq)]
pub struct Sheet {
    document: SheetDocument,
    /// index of the entry with the nominal bore
    nominal_bore: Option<usize>,
    links: Vec<Tie>,
}

/// A link by the indices of its entries.
#[derive(Debug, Clone, PartialEq, Eq)]
enum Tie {
    Clearance { outer: usize, inner: usize, clearance: usize, every: bool },
    Oversize { standard: usize, step: usize, oversize: usize },
    Ladder(Vec<usize>),
    Same(usize, usize),
    WearLimit { limit: usize, new: usize },
}

impl Sheet {
    /// Reads a sheet from JSON text.
    ///
    /// # Errors
    /// When the text is not JSON, is too large or too deep, or a field is unknown, repeated, missing or of another type; and
    /// as [`Sheet::new`].
    pub fn from_json(text: &str) -> Result<Self, Error> {
        let document: SheetDocument = decode::from_json(text, FORMAT, VERSION)?;
        Sheet::new(document)
    }

    /// [`Sheet::from_json`] for a host whose text is bytes.
    ///
    /// # Errors
    /// As [`Sheet::from_json`], and [`ErrorKind::NotUtf8`].
    pub fn from_json_bytes(bytes: &[u8]) -> Result<Self, Error> {
        Self::from_json(decode::text(bytes)?)
    }

    /// A sheet from its structures.
    ///
    /// # Errors
    /// When the format or version is another, a list has more than 1000 entries or a ladder fewer than two, a text is blank,
    /// too long or holds a control character, an id stands twice, or a link names an unknown entry, one entry twice, or one
    /// that is something else. A printed text that cannot be read is no error but a contradiction.
    pub fn new(document: SheetDocument) -> Result<Self, Error> {
        check_head(&document)?;
        let entries = Entries::new(&document.entries)?;
        let nominal_bore = document.nominal_bore.as_ref();
        let nominal_bore = nominal_bore.map(|id| entries.of(id, &[What::Bore])).transpose()?;
        if document.links.len() > MOST_ENTRIES {
            let reason = format!("a list has at most {MOST_ENTRIES} entries");
            return Err(Error::new(ErrorKind::TooLarge, "", reason).at("/links"));
        }
        check_ladders(&document)?;
        let links = document.links.iter().enumerate().map(|(index, link)| entries.tie(index, link));
        let links = links.collect::<Result<_, _>>()?;
        Ok(Sheet { document, nominal_bore, links })
    }

    /// The sheet as it was given.
    #[must_use]
    pub fn document(&self) -> &SheetDocument {
        &self.document
    }
}

fn check_head(document: &SheetDocument) -> Result<(), Error> {
    if document.format.text() != FORMAT {
        return Err(document.format.refuse(ErrorKind::UnknownFormat, format!("the format is \"{FORMAT}\"")));
    }
    if document.version.count(0, u32::MAX)? != VERSION {
        return Err(document
            .version
            .refuse(ErrorKind::UnknownFormat, format!("version {VERSION} is read here")));
    }
    document.sheet.id.words()?;
    document.sheet.note.as_ref().map(Entry::words).transpose()?;
    Ok(())
}

/// The entries by their ids.
struct Entries<'d> {
    entries: &'d [SheetEntry],
    by_id: BTreeMap<&'d str, usize>,
}

impl<'d> Entries<'d> {
    fn new(entries: &'d [SheetEntry]) -> Result<Self, Error> {
        check_length(entries, |entry| &entry.id)?;
        let mut by_id = BTreeMap::new();
        for (index, entry) in entries.iter().enumerate() {
            let id = entry.id.words()?;
            if by_id.insert(id, index).is_some() {
                return Err(entry.id.refuse(ErrorKind::Repeated, "an id stands once on a sheet"));
            }
            entry.printed.words()?;
            entry.also_printed.as_ref().map(Entry::words).transpose()?;
            entry.place.as_ref().map(Entry::words).transpose()?;
        }
        Ok(Entries { entries, by_id })
    }

    /// The index of an entry that is one of `whats`; of anything where none is named.
    fn of(&self, id: &Entry<Words>, whats: &[What]) -> Result<usize, Error> {
        let name = id.words()?;
        let Some(index) = self.by_id.get(name).copied() else {
            let ids: Vec<&str> = self.by_id.keys().copied().collect();
            let unknown = id.refuse(ErrorKind::UnknownName, "no entry has this id");
            return Err(unknown.suggest(nearest(name, &ids)));
        };
        match self.what(index) {
            Some(what) if whats.is_empty() || whats.contains(&what) => Ok(index),
            what => {
                let words: Vec<&str> = whats.iter().map(|what| what.word()).collect();
                let found = what.map_or("", What::word);
                let reason = format!("that entry is {found}; here stands {}", words.join(" or "));
                Err(id.refuse(ErrorKind::Contradiction, reason))
            }
        }
    }

    fn what(&self, index: usize) -> Option<What> {
        self.entries.get(index).map(|entry| entry.what)
    }

    /// An entry that is the same as another, but not that entry.
    fn like(&self, id: &Entry<Words>, other: usize) -> Result<usize, Error> {
        let what = self.what(other).unwrap_or(What::Length);
        match self.of(id, &[what])? {
            index if index == other => Err(id.refuse(ErrorKind::Repeated, "an entry is not tied to itself")),
            index => Ok(index),
        }
    }

    fn tie(&self, index: usize, link: &Link) -> Result<Tie, Error> {
        match link {
            Link::Clearance(link) => self.clearance(link),
            Link::Oversize(link) => self.oversize(link),
            Link::Ladder(ids) => self.ladder(index, ids),
            Link::Same(SameLink { first, second }) => {
                let first = self.of(first, &[])?;
                Ok(Tie::Same(first, self.like(second, first)?))
            }
            Link::WearLimit(WearLink { limit, new }) => {
                let index = self.length(limit)?;
                Ok(Tie::WearLimit { limit: index, new: self.like(new, index)? })
            }
        }
    }

    /// An entry that is a length.
    fn length(&self, id: &Entry<Words>) -> Result<usize, Error> {
        let index = self.of(id, &[])?;
        match self.what(index).map(What::dimension) {
            Some(Dimension::Length) => Ok(index),
            _ => Err(id.refuse(ErrorKind::Contradiction, "that entry is no length")),
        }
    }

    fn clearance(&self, link: &ClearanceLink) -> Result<Tie, Error> {
        let clearance =
            self.of(&link.clearance, &[What::Clearance, What::PinClearance, What::RingSideClearance])?;
        let (outside, inside): (&[What], &[What]) = match self.what(clearance) {
            Some(What::PinClearance) => (&[What::PinBore, What::Grade], &[What::PinDiameter, What::Grade]),
            Some(What::RingSideClearance) => (&[What::GrooveWidth], &[What::RingWidth]),
            _ => (&[What::Bore, What::Grade], &[What::PistonDiameter, What::Grade]),
        };
        let (outer, inner) = (self.of(&link.outer, outside)?, self.of(&link.inner, inside)?);
        if outer == inner {
            return Err(link.inner.refuse(ErrorKind::Repeated, "an entry is not tied to itself"));
        }
        Ok(Tie::Clearance { outer, inner, clearance, every: link.pairs != Some(Pairs::Selected) })
    }

    fn oversize(&self, link: &OversizeLink) -> Result<Tie, Error> {
        let standard = self.length(&link.standard)?;
        let step = self.of(&link.step, &[What::OversizeStep])?;
        Ok(Tie::Oversize { standard, step, oversize: self.like(&link.oversize, standard)? })
    }

    fn ladder(&self, index: usize, ids: &[Entry<Words>]) -> Result<Tie, Error> {
        check_length(ids, |id| id)?;
        let [first, rest @ ..] = ids else {
            return Err(too_short(index));
        };
        let model = self.length(first)?;
        let rest: Vec<usize> = rest.iter().map(|id| self.like(id, model)).collect::<Result<_, _>>()?;
        if rest.is_empty() {
            return Err(too_short(index));
        }
        Ok(Tie::Ladder([vec![model], rest].concat()))
    }
}

fn too_short(index: usize) -> Error {
    let reason = "a ladder names at least two entries";
    Error::new(ErrorKind::MissingField, "", reason).at(&format!("/links/{index}/ladder"))
}

/// Refuses an entry that stands in two ladders, or twice in one.
fn check_ladders(document: &SheetDocument) -> Result<(), Error> {
    let mut seen = BTreeSet::new();
    let ladders = document.links.iter().filter_map(|link| match link {
        Link::Ladder(ids) => Some(ids),
        _ => None,
    });
    for id in ladders.flatten() {
        if !seen.insert(id.words()?) {
            return Err(id.refuse(ErrorKind::Repeated, "an entry stands once in one ladder"));
        }
    }
    Ok(())
}

/// Holds everything on a sheet that says something twice against itself. The sheet is not changed.
#[must_use]
pub fn check(sheet: &Sheet) -> SheetReport {
    let rows: Vec<Row> = sheet.document.entries.iter().enumerate().map(|(i, e)| Row::new(i, e)).collect();
    let mut findings = Findings::new(rows.len());
    let bore = sheet.nominal_bore.and_then(|index| rows.get(index)).and_then(NominalBore::new);
    for row in &rows {
        check_readable(row, &mut findings);
        agreement::check_units(row, &mut findings);
        agreement::check_gap_growth(row, &mut findings);
        order::check(row, &mut findings);
        magnitude::check(row, bore.as_ref(), &mut findings);
    }
    sheet.links.iter().for_each(|tie| check_tie(tie, &rows, &mut findings));
    copied::check(&rows, bore.as_ref(), &mut findings);
    report_degree_signs(&rows, &mut findings);
    SheetReport {
        format: REPORT_FORMAT,
        version: REPORT_VERSION,
        library: env!("CARGO_PKG_VERSION"),
        sheet: sheet.document.sheet.id.text().trim().to_owned(),
        entries: findings.checked(&rows),
        contradictions: findings.contradictions,
        warnings: findings.warnings,
    }
}

/// [`check`] from JSON to JSON.
///
/// # Errors
/// As [`Sheet::from_json`].
pub fn check_json(sheet: &str) -> Result<String, Error> {
    Ok(check(&Sheet::from_json(sheet)?).to_json())
}

/// [`check_json`] for a host whose text is bytes.
///
/// # Errors
/// As [`check_json`], and [`ErrorKind::NotUtf8`].
pub fn check_json_bytes(sheet: &[u8]) -> Result<String, Error> {
    Ok(check(&Sheet::from_json_bytes(sheet)?).to_json())
}

fn check_tie(tie: &Tie, rows: &[Row], findings: &mut Findings) {
    let of =
        |indices: &[usize]| -> Vec<&Row> { indices.iter().filter_map(|index| rows.get(*index)).collect() };
    match tie {
        Tie::Clearance { outer, inner, clearance, every } => {
            if let [outer, inner, clearance] = of(&[*outer, *inner, *clearance])[..] {
                closure::check_clearance(outer, inner, clearance, *every, findings);
            }
        }
        Tie::Oversize { standard, step, oversize } => {
            if let [standard, step, oversize] = of(&[*standard, *step, *oversize])[..] {
                closure::check_oversize(standard, step, oversize, findings);
            }
        }
        Tie::Ladder(grades) => closure::check_ladder(&of(grades), findings),
        Tie::Same(first, second) => {
            if let [first, second] = of(&[*first, *second])[..] {
                agreement::check_sources(first, second, findings);
            }
        }
        Tie::WearLimit { limit, new } => {
            if let [limit, new] = of(&[*limit, *new])[..] {
                magnitude::check_wear(limit, new, findings);
            }
        }
    }
}

/// A text that cannot be read, with what was probably meant and whether the other unit agrees with that.
fn check_readable(row: &Row, findings: &mut Findings) {
    findings.applied(Check::Readable, row);
    for text in &row.texts {
        let Err(fault) = &text.reading else {
            continue;
        };
        let said = format!("\"{}\" cannot be read: {}", text.printed, fault.error.reason());
        let suspected = suspected_reading(row, text, fault).into_iter().collect();
        findings.contradict(Check::Readable, &[(row, text)], said, Vec::new(), suspected);
    }
}

fn suspected_reading(row: &Row, text: &Text, fault: &printed::Unreadable) -> Option<Suspicion> {
    let (slip, meant) = match (fault.error.kind(), fault.error.did_you_mean()) {
        (ErrorKind::DecimalComma, Some(meant)) => (Slip::DecimalComma, meant.to_owned()),
        (_, Some(meant)) => (Slip::Text, meant.to_owned()),
        (_, None) => (Slip::DegreeSign, fault.without_degree_sign(row.what.dimension())?),
    };
    let so_read = fault.replaced_in(&text.printed, &meant);
    let agrees = printed::read(&so_read, row.what.dimension()).ok().and_then(|reading| {
        let other = row.read().into_iter().next()?;
        Some(agreement::differing(&reading, &other.reading).is_empty())
    });
    let verdict = match agrees {
        Some(true) => " which agrees with the other unit",
        Some(false) => " which does not agree with the other unit",
        None => "",
    };
    let words = match slip {
        Slip::DecimalComma => "a decimal comma",
        Slip::DegreeSign => "the degree sign lost",
        _ => "the text",
    };
    Some(Suspicion { slip, path: text.path.clone(), text: format!("{words}: {meant}{verdict}") })
}

/// A degree sign that became a digit leaves a text that cannot be trusted as it reads.
fn report_degree_signs(rows: &[Row], findings: &mut Findings) {
    let mut lost: BTreeMap<String, Vec<Suspicion>> = BTreeMap::new();
    for found in findings.contradictions.iter().filter(|found| found.check != Check::Readable) {
        for suspicion in found.suspected.iter().filter(|s| s.slip == Slip::DegreeSign) {
            let of_text = lost.entry(suspicion.path.clone()).or_default();
            if !of_text.iter().any(|known| known.text == suspicion.text) {
                of_text.push(suspicion.clone());
            }
        }
    }
    for (row, text) in rows.iter().flat_map(|row| row.texts.iter().map(move |text| (row, text))) {
        if let Some(suspected) = lost.remove(&text.path) {
            let said = format!("in \"{}\" a degree sign is lost", text.printed);
            findings.contradict(Check::Readable, &[(row, text)], said, Vec::new(), suspected);
        }
    }
}
