//! Findings by eye: where, what, how bad, and what that asks for.
//!
//! The dispositions are common practice of the trade, no source. A finding and a size never overrule each other: both
//! stand in the verdict, and the worse decides. What may be behind a finding stands in [`signs`](super::signs).

use super::signs::{Candidate, Cause, Explanation, Question};
use crate::choice::choices;
use crate::job::document as doc;
use schemars::JsonSchema;
use serde::Serialize;

choices! {
    /// Where a finding was made.
    Place {
        /// Top of the piston.
        Crown = "crown",
        /// Land above the top ring.
        TopLand = "top_land",
        /// Land between rings.
        RingLand = "ring_land",
        /// Groove of a ring.
        RingGroove = "ring_groove",
        /// Skirt.
        Skirt = "skirt",
        /// Boss of the pin.
        PinBoss = "pin_boss",
        /// Bore of the pin.
        PinBore = "pin_bore",
        /// Retaining ring and its groove.
        PinRetention = "pin_retention",
        /// Wall of the bore.
        BoreWall = "bore_wall",
        /// Underside of the crown.
        CrownUnderside = "crown_underside",
        /// A ring.
        Ring = "ring",
        /// Edges and bridges of ports.
        Ports = "ports",
        /// Outside of a liner.
        LinerOutside = "liner_outside",
        /// Flange of a liner.
        LinerFlange = "liner_flange",
        /// Connecting rod.
        Rod = "rod",
    }
    /// What was seen.
    What {
        /// Carbon.
        Carbon = "carbon",
        /// Scuffing: smeared metal along the stroke.
        Scuffing = "scuffing",
        /// Scoring: single grooves along the stroke.
        Scoring = "scoring",
        /// Seizure: torn and welded metal.
        Seizure = "seizure",
        /// A crack.
        Crack = "crack",
        /// A wear path that runs diagonally.
        DiagonalWear = "diagonal_wear",
        /// Coating worn through.
        CoatingWorn = "coating_worn",
        /// Coating flaking off.
        CoatingFlaking = "coating_flaking",
        /// Melted or pitted metal.
        Erosion = "erosion",
        /// Marks of a blow.
        Impact = "impact",
        /// A widened or stepped ring groove.
        GrooveWear = "groove_wear",
        /// A retaining ring that is loose or gone.
        RetainingRingLoose = "retaining_ring_loose",
        /// A ring that does not move in its groove.
        RingStuck = "ring_stuck",
        /// Dull wear over an area.
        MattWear = "matt_wear",
        /// A piece broken out.
        Fracture = "fracture",
        /// A hole.
        Hole = "hole",
        /// A bright, polished area.
        Polish = "polish",
        /// Pits.
        Pitting = "pitting",
        /// Brown or blue from heat.
        Discolouration = "discolouration",
        /// Bent metal.
        Bend = "bend",
    }
    /// How bad it is.
    Severity {
        /// Can be seen, hardly felt.
        Light = "light",
        /// Can be felt.
        Marked = "marked",
        /// Metal is torn, lost or broken.
        Severe = "severe",
    }
    /// What a finding asks for, from the least to the most.
    Disposition {
        /// Nothing against going back once it is clean.
        Clean = "clean",
        /// The sizes decide.
        Measure = "measure",
        /// The cause must be found before anything goes back.
        FindCause = "find_cause",
        /// The part does not go back.
        Reject = "reject",
    }
}

/// A finding and what it asks for.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Finding {
    /// Where.
    pub place: Place,
    /// What.
    pub what: What,
    /// How bad.
    pub severity: Severity,
    /// As given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub note: Option<String>,
    /// The cause, as given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cause: Option<String>,
    /// The cause as the catalogue of signs has it: given by its word, or the one that the answers leave and confirm.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cause_found: Option<Cause>,
    /// Causes that agree with it and with the answers, those that are confirmed first.
    pub candidates: Vec<Candidate>,
    /// What to ask, first the question on which most candidates depend.
    pub ask: Vec<Asked>,
    /// What it asks for.
    pub disposition: Disposition,
    /// What to look at next.
    pub check_next: String,
}

/// A question that is open.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Asked {
    /// The question.
    pub question: Question,
    /// The question in words.
    pub text: &'static str,
}

impl From<Question> for Asked {
    fn from(question: Question) -> Self {
        Asked { question, text: question.meaning() }
    }
}

impl Finding {
    pub(crate) fn new(finding: &doc::Finding, explanation: Explanation) -> Self {
        let cause = finding.cause.as_ref().map(|c| c.text().to_owned());
        let cause_found = cause.as_deref().and_then(Cause::named).or(explanation.cause());
        let (disposition, check_next) = asks_for(finding.what, finding.severity);
        let mut out = Finding {
            place: finding.place,
            what: finding.what,
            severity: finding.severity,
            note: finding.note.as_ref().map(|n| n.text().to_owned()),
            cause,
            cause_found,
            candidates: explanation.candidates,
            ask: explanation.ask.into_iter().map(Asked::from).collect(),
            disposition,
            check_next: check_next.to_owned(),
        };
        // a cause that is known no longer blocks: the sizes decide
        if out.disposition == Disposition::FindCause && out.cause_known() {
            out.disposition = Disposition::Measure;
        }
        out
    }

    /// Was its cause given or found?
    pub(crate) fn cause_known(&self) -> bool {
        self.cause.is_some() || self.cause_found.is_some()
    }

    /// What was seen, as it is read.
    pub(crate) fn spoken(&self) -> String {
        format!("{} {} on the {}", self.severity.word(), self.what.spoken(), self.place.spoken())
    }

    /// Does it belong to the bore?
    pub(crate) fn of_bore(&self) -> bool {
        matches!(self.place, Place::BoreWall | Place::Ports | Place::LinerOutside | Place::LinerFlange)
    }
}

/// Disposition of a finding and the next check. Common practice, no source.
#[must_use]
pub fn asks_for(what: What, severity: Severity) -> (Disposition, &'static str) {
    use Disposition::{Clean, FindCause, Measure, Reject};
    let (light, marked, severe, next) = match what {
        What::Carbon => {
            (Clean, Clean, Measure, "rings and valve guides; clean the grooves without cutting them")
        }
        What::Scuffing => (
            Measure,
            FindCause,
            Reject,
            "clearance, oil supply and cooling of this cylinder; then the others",
        ),
        What::Scoring => (Measure, FindCause, Reject, "air filter, oil filter and the bore wall opposite"),
        What::Seizure => {
            (FindCause, Reject, Reject, "bore size and clearance, cooling, oil supply; all other cylinders")
        }
        What::Crack => (Reject, Reject, Reject, "the other pistons of the set, by penetrant"),
        What::DiagonalWear => {
            (FindCause, FindCause, Reject, "the rod for bend and twist, then the squareness of the bore")
        }
        What::CoatingWorn => (Measure, Measure, Measure, "the size of the bare metal"),
        What::CoatingFlaking => (FindCause, Reject, Reject, "the coating of the other pistons"),
        What::Erosion => (FindCause, Reject, Reject, "injection or ignition, fuel, cooling"),
        What::Impact => {
            (FindCause, FindCause, Reject, "valve timing, guides and piston height; the rod for bend")
        }
        What::GrooveWear => (Measure, Measure, Reject, "side clearance with a new ring"),
        What::RingStuck => {
            (Clean, Measure, FindCause, "side and back clearance after cleaning without cutting the groove")
        }
        What::MattWear => (Measure, Measure, FindCause, "filters and oil galleries"),
        What::Fracture => (Reject, Reject, Reject, "compression, timing and fuel; the bore wall"),
        What::Hole => (Reject, Reject, Reject, "plugs, deposits, valves and injectors"),
        What::Polish => {
            (Measure, FindCause, FindCause, "the rod for bend and twist, the clearance of the land")
        }
        What::Pitting => {
            (Measure, FindCause, Reject, "how deep the pits are against the wall; coolant or injection")
        }
        What::Discolouration => (FindCause, FindCause, Reject, "the cooling jets"),
        What::Bend => (Reject, Reject, Reject, "injectors, head gasket, and how high each piston stands"),
        What::RetainingRingLoose => {
            (Reject, Reject, Reject, "the pieces, the groove, the rod for bend and twist")
        }
    };
    let disposition = match severity {
        Severity::Light => light,
        Severity::Marked => marked,
        Severity::Severe => severe,
    };
    (disposition, next)
}
