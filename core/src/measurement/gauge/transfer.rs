//! Small-hole and telescopic gauges: set in a hole by feel, then read over with a micrometer.

use super::{Gauge, Outside};
use crate::bounds;
use crate::calc::{Calc, Measured};
use crate::error::{Error, ErrorKind};
use crate::job::{Entry, Given, Warning, Words, check_length, nearest};
use crate::measure::document as doc;
use crate::measurement::MeanOfRepeats;
use crate::measurement::distribution::Distribution;
use crate::size::MicrometerSize;

/// A transfer gauge.
#[derive(Debug)]
pub(crate) struct Transfer {
    name: String,
    repeatability: Given,
}

/// The transfer gauges of a document.
#[derive(Debug)]
pub(crate) struct Transfers(Vec<Transfer>);

impl Transfers {
    pub(crate) fn from_document(
        gauges: &[doc::TransferGauge],
        warnings: &mut Vec<Warning>,
    ) -> Result<Self, Error> {
        check_names(gauges, |g| &g.name)?;
        let read = |entry: &doc::TransferGauge| {
            let repeatability = entry.repeatability.read(&bounds::REPEATABILITY, warnings)?;
            Ok(Transfer { name: entry.name.words()?.to_owned(), repeatability })
        };
        gauges.iter().map(read).collect::<Result<_, _>>().map(Transfers)
    }

    pub(crate) fn find(&self, name: &Entry<Words>) -> Result<&Transfer, Error> {
        Ok(named(&self.0, name, |g| &g.name)?.1)
    }
}

impl Gauge {
    /// A size inside at 20 C: what this micrometer reads over a transfer gauge, once or more, each time set anew.
    ///
    /// The transfer gauge is as warm when it is read as when it was set.
    pub(crate) fn read_transfer(
        &mut self,
        calc: &mut Calc,
        read: &Outside<'_>,
        transfer: &Transfer,
        of: &str,
    ) -> Option<Measured> {
        let r = self.indicated(calc, read.repeats, of)?;
        let name = format!("feel of {} on {of}", transfer.name);
        let source = calc.source(name, &transfer.repeatability.path, Distribution::STANDARD_NORMAL);
        let s = calc.given("s", &transfer.repeatability);
        let n = super::count(calc, read.repeats.len());
        let u = calc.figure(MeanOfRepeats, [s, n]);
        let r = calc.add_source(&r, source, u);
        Some(calc.apply(MicrometerSize, [&r, &self.zero_error, read.eps_gauge, read.eps_part]))
    }
}

/// Refuses names that are blank or stand twice, and lists that are too long.
pub(super) fn check_names<T>(items: &[T], name: impl Fn(&T) -> &Entry<Words>) -> Result<(), Error> {
    check_length(items, &name)?;
    let mut seen = std::collections::BTreeSet::new();
    for item in items {
        if !seen.insert(name(item).words()?) {
            return Err(name(item).refuse(ErrorKind::Repeated, "this name stands twice"));
        }
    }
    Ok(())
}

/// The item of that name with its index, or a refusal that says what there is.
pub(super) fn named<'g, T>(
    items: &'g [T],
    wanted: &Entry<Words>,
    name: impl Fn(&T) -> &str,
) -> Result<(usize, &'g T), Error> {
    let word = wanted.words()?;
    items.iter().enumerate().find(|(_, item)| name(item) == word).ok_or_else(|| {
        let known: Vec<&str> = items.iter().map(name).collect();
        wanted
            .refuse(
                ErrorKind::UnknownName,
                format!("nothing here has this name; known: {}", known.join(", ")),
            )
            .suggest(nearest(word, &known))
    })
}
