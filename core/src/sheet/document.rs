//! The sheet as it is printed. `core/docs/sheet.md` explains every field.

use crate::choice::{alternatives, choices};
use crate::job::document::document;
use crate::job::{Count, Entry, Words};
use schemars::JsonSchema;
use serde::Serialize;

document! {
    /// The entries of one printed sheet for one engine.
    SheetDocument {
        /// `gaugepoint-sheet`
        format: Entry<Words>,
        /// Version of the format: 1.
        version: Entry<Count>,
        /// Which sheet it is.
        sheet: SheetHead,
        /// Id of the entry with the nominal bore, which orders of magnitude are held against.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        nominal_bore: Option<Entry<Words>>,
        /// The entries, as printed.
        entries: Vec<SheetEntry>,
        /// What ties entries together.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        links: Vec<Link>,
    }
    /// Which sheet it is.
    SheetHead {
        /// Name of the sheet.
        id: Entry<Words>,
        /// For the reader of the document.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        note: Option<Entry<Words>>,
    }
    /// One entry of the sheet.
    SheetEntry {
        /// Name of the entry, unique on the sheet.
        id: Entry<Words>,
        /// What it is.
        what: What,
        /// The text exactly as printed, in one unit.
        printed: Entry<Words>,
        /// The text in the second unit, where the sheet prints one.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        also_printed: Option<Entry<Words>>,
        /// Where on the sheet it stands.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        place: Option<Entry<Words>>,
    }
    /// The clearance between two entries.
    ClearanceLink {
        /// The part outside: bore, pin bore or groove.
        outer: Entry<Words>,
        /// The part inside: piston, pin or ring.
        inner: Entry<Words>,
        /// Their clearance.
        clearance: Entry<Words>,
        /// Which pairs the clearance is printed for; every pair unless stated.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        pairs: Option<Pairs>,
    }
    /// An oversize that is the standard size and a step.
    OversizeLink {
        /// The standard size.
        standard: Entry<Words>,
        /// The step.
        step: Entry<Words>,
        /// The oversize.
        oversize: Entry<Words>,
    }
    /// One quantity from two sources.
    SameLink {
        /// The one.
        first: Entry<Words>,
        /// The other.
        second: Entry<Words>,
    }
    /// A limit for a worn part, and what is printed for a new one.
    WearLink {
        /// The limit.
        limit: Entry<Words>,
        /// The entry for the new part.
        new: Entry<Words>,
    }
}

crate::job::schema!(SheetDocument, crate::job::document_schema, "sheet");

alternatives! {
    /// What ties entries together.
    Link {
        /// clearance = outer - inner.
        Clearance(ClearanceLink) = "clearance",
        /// oversize = standard + step.
        Oversize(OversizeLink) = "oversize",
        /// Grades in order of size: equally wide, each beginning where its neighbour ends.
        Ladder(Vec<Entry<Words>>) = "ladder",
        /// One quantity from two sources.
        Same(SameLink) = "same",
        /// A limit for a worn part.
        WearLimit(WearLink) = "wear_limit",
    }
}

choices! {
    /// Which pairs of parts a printed clearance is meant for.
    Pairs {
        /// Any outer part with any inner part: from outer min - inner max to outer max - inner min.
        Every = "every",
        /// Selected parts, such as equal grades: somewhere between these.
        Selected = "selected",
    }
    /// What an entry is.
    What {
        /// Diameter of the bore.
        Bore = "bore",
        /// Diameter of the piston at its gauge point.
        PistonDiameter = "piston_diameter",
        /// Clearance of the piston in the bore, over the diameter.
        Clearance = "clearance",
        /// What an oversize adds to the standard diameter.
        OversizeStep = "oversize_step",
        /// Size of a selective grade of bore, piston or pin.
        Grade = "grade",
        /// Diameter of the piston pin.
        PinDiameter = "pin_diameter",
        /// Diameter of the pin's hole in the piston or the rod.
        PinBore = "pin_bore",
        /// Clearance of the pin in its hole, over the diameter; negative is interference.
        PinClearance = "pin_clearance",
        /// End gap of a ring in the bore.
        RingGap = "ring_gap",
        /// Axial width of a ring.
        RingWidth = "ring_width",
        /// Axial width of a ring groove.
        GrooveWidth = "groove_width",
        /// Axial clearance of a ring in its groove.
        RingSideClearance = "ring_side_clearance",
        /// Limit of taper, as a difference of diameters.
        Taper = "taper",
        /// Limit of out-of-round, as a difference of diameters.
        OutOfRound = "out_of_round",
        /// Material left on the diameter for honing.
        HoneStock = "hone_stock",
        /// Where something is measured, as a distance.
        MeasuringPlace = "measuring_place",
        /// Offset of the pin from the axis of the piston.
        PinOffset = "pin_offset",
        /// Stroke.
        Stroke = "stroke",
        /// Length of the connecting rod between centres.
        RodLength = "rod_length",
        /// Another length.
        Length = "length",
        /// Temperature, not one of those below.
        Temperature = "temperature",
        /// Temperature at which parts are measured or a limit holds.
        MeasuringTemperature = "measuring_temperature",
        /// Temperature a rod or piston is heated to for assembly.
        HeatingTemperature = "heating_temperature",
        /// Difference of two temperatures; here `C` and `F` are degrees of difference.
        TemperatureDifference = "temperature_difference",
        /// Bend or twist of a rod: a length per length.
        Bend = "bend",
        /// Clearance per length of bore.
        ClearancePerBore = "clearance_per_bore",
        /// Ring gap per length of bore.
        RingGapPerBore = "ring_gap_per_bore",
        /// What a ring gap grows by when the bore grows: a length per length, pi by geometry.
        RingGapGrowth = "ring_gap_growth",
        /// Another length per length.
        Ratio = "ratio",
        /// A force.
        Force = "force",
    }
}

/// What kind of number a printed text holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Dimension {
    Length,
    Temperature,
    Difference,
    Ratio,
    Force,
}

impl What {
    pub(super) fn dimension(self) -> Dimension {
        match self {
            What::Temperature | What::MeasuringTemperature | What::HeatingTemperature => {
                Dimension::Temperature
            }
            What::TemperatureDifference => Dimension::Difference,
            What::Bend
            | What::ClearancePerBore
            | What::RingGapPerBore
            | What::RingGapGrowth
            | What::Ratio => Dimension::Ratio,
            What::Force => Dimension::Force,
            _ => Dimension::Length,
        }
    }

    /// Whether it is the size of a part, printed with a tolerance that is small beside it.
    pub(super) fn is_size(self) -> bool {
        matches!(self, What::Bore | What::PistonDiameter | What::Grade | What::PinDiameter | What::PinBore)
    }

    /// Whether wear makes it smaller.
    pub(super) fn wears_down(self) -> bool {
        matches!(self, What::PistonDiameter | What::PinDiameter | What::RingWidth)
    }

    /// What it shares numbers with without anyone having copied: a limit of taper and one of out-of-round are often the
    /// same, a grade is one row of a size.
    pub(super) fn family(self) -> Option<What> {
        match self {
            What::OutOfRound => Some(What::Taper),
            What::MeasuringTemperature | What::HeatingTemperature => Some(What::Temperature),
            What::Length | What::MeasuringPlace | What::Grade | What::Ratio => None,
            what => Some(what),
        }
    }
}
