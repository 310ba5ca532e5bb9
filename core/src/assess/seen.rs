//! What was seen in a cylinder: findings with their answers, the record of the piston, and the causes that agree with both.

use super::Assessment;
use crate::decision::finding::Finding;
use crate::decision::signs::{Answer, PistonRecord, Question, explain};
use crate::error::{Error, ErrorKind};
use crate::job::MOST_ENTRIES;
use crate::job::document as doc;

/// Where the record of the engine's pistons stands.
const OF_ENGINE: &str = "/engine/piston/record";

/// The record of a piston and where it stands.
struct Record {
    known: PistonRecord,
    at: String,
}

impl Assessment {
    /// The findings of a cylinder, each with what may be behind it.
    pub(super) fn findings(&self, cylinder: Option<&doc::Cylinder>) -> Result<Vec<Finding>, Error> {
        let Some(cylinder) = cylinder else {
            return Ok(Vec::new());
        };
        let at = cylinder.number.parent();
        let record = self.record(cylinder)?;
        check_number(&cylinder.findings, &format!("{at}/findings"))?;
        let mut out = Vec::with_capacity(cylinder.findings.len());
        for (k, finding) in cylinder.findings.iter().enumerate() {
            for text in [&finding.note, &finding.cause].into_iter().flatten() {
                text.words()?;
            }
            let answers = answers(&finding.answers, &record, &format!("{at}/findings/{k}/answers"))?;
            out.push(Finding::new(finding, explain(finding.place, finding.what, &answers)?));
        }
        Ok(out)
    }

    /// The record of the piston of a cylinder: its own, or that of the engine's pistons.
    fn record(&self, cylinder: &doc::Cylinder) -> Result<Record, Error> {
        let own = cylinder.piston.as_ref().and_then(|p| p.record.as_ref());
        own.map_or(Ok(()), doc::PistonRecord::check)?;
        let (record, at) = match own {
            Some(own) => (Some(own), format!("{}/piston/record", cylinder.number.parent())),
            None => (self.engine.piston_record.as_ref(), OF_ENGINE.to_owned()),
        };
        Ok(Record { known: record.map(doc::PistonRecord::known).unwrap_or_default(), at })
    }
}

/// The answers that were given, and those of the record. A question is answered once, and not against the record.
fn answers(given: &[doc::Answered], record: &Record, at: &str) -> Result<Vec<(Question, bool)>, Error> {
    check_number(given, at)?;
    let recorded = record.known.recorded();
    let mut out = record.known.answers();
    for (k, doc::Answered { question, answer }) in given.iter().enumerate() {
        if given.iter().take(k).any(|earlier| earlier.question == *question) {
            let error = Error::new(ErrorKind::Repeated, question.word(), "this question was answered before");
            return Err(error.at(&format!("{at}/{k}/question")));
        }
        let yes = *answer == Answer::Yes;
        match recorded.iter().find(|r| r.question == *question) {
            Some(r) if r.answer != yes => {
                let reason = format!("the record of the piston says {} ({}/{})", r.word, record.at, r.field);
                let error = Error::new(ErrorKind::Contradiction, answer.word(), reason);
                return Err(error.at(&format!("{at}/{k}/answer")));
            }
            Some(_) => {}
            None => out.push((*question, yes)),
        }
    }
    Ok(out)
}

/// Refuses a list that is too long, at the first item too many.
fn check_number<T>(items: &[T], at: &str) -> Result<(), Error> {
    items.get(MOST_ENTRIES).map_or(Ok(()), |_| {
        let reason = format!("a list has at most {MOST_ENTRIES} entries");
        Err(Error::new(ErrorKind::TooLarge, "", reason).at(&format!("{at}/{MOST_ENTRIES}")))
    })
}
