//! The measurement document, as it is written. `core/docs/measurement.md` explains every field.

use crate::choice::{alternatives, choices};
use crate::job::document::{Gauge, JobHead, Material, OnRing, Shop, document};
use crate::job::{Count, Date, Entry, Force, Probability, Slope, Stiffness, Words};
use crate::quantity::{Angle, Length, Temperature};
use schemars::JsonSchema;
use serde::Serialize;

document! {
    /// Readings of parts with their gauges, and differences of them.
    MeasurementDocument {
        /// `gaugepoint-measurement`
        format: Entry<Words>,
        /// Version of the format: 1.
        version: Entry<Count>,
        /// What the measurement is.
        measurement: JobHead,
        /// Where it was measured.
        shop: Shop,
        /// Materials by name.
        materials: Vec<Material>,
        /// Micrometers, calipers and bore gauges by name.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        gauges: Vec<Gauge>,
        /// Small-hole and telescopic gauges by name.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        transfer_gauges: Vec<TransferGauge>,
        /// Sets of feeler strips by name.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        feeler_strips: Vec<FeelerStrip>,
        /// Dial indicators on a bridge by name.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        depth_indicators: Vec<DepthIndicator>,
        /// What was read.
        readings: Vec<Reading>,
        /// Differences of readings.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        differences: Vec<Difference>,
        /// Coverage probability of the expanded uncertainties and the intervals; 0.95 without it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        probability: Option<Entry<Probability>>,
        /// Trials, where a Monte Carlo run is wanted.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        monte_carlo: Option<Trials>,
    }
    /// A gauge that is set in a hole by feel and then read over with a micrometer.
    TransferGauge {
        /// Name, referred to elsewhere.
        name: Entry<Words>,
        /// Kind of gauge.
        kind: TransferKind,
        /// Standard deviation of setting it once and reading over it, from a study of the gauge and its users.
        repeatability: Entry<Length>,
    }
    /// A set of feeler strips.
    FeelerStrip {
        /// Name, referred to elsewhere.
        name: Entry<Words>,
        /// Step between the strips of the set.
        resolution: Entry<Length>,
        /// Half-width of the permissible error of their thickness.
        permissible_error: Entry<Length>,
        /// Standard deviation of finding the strip once, from a study of the strips and their users.
        repeatability: Entry<Length>,
        /// What is added to the thickness, and what that is tied to.
        drag: Drag,
    }
    /// The empirical allowance of a strip that is pulled out with a stated pull.
    Drag {
        /// The pull.
        pull: Entry<Force>,
        /// Width of the strip.
        width: Entry<Length>,
        /// What is added to the thickness of the strip.
        allowance: Entry<Length>,
        /// Half-width of the error of that.
        permissible_error: Entry<Length>,
        /// Where the allowance comes from.
        origin: Entry<Words>,
    }
    /// A dial indicator on a bridge over the deck.
    DepthIndicator {
        /// Name, referred to elsewhere.
        name: Entry<Words>,
        /// Smallest step.
        resolution: Entry<Length>,
        /// Half-width of its permissible error over its travel.
        permissible_error: Entry<Length>,
        /// Standard deviation of one reading, from a study of the indicator and its users.
        repeatability: Entry<Length>,
        /// Material of its stem.
        material: Entry<Words>,
        /// Day of its calibration.
        calibrated: Entry<Date>,
        /// Day the calibration runs out.
        calibration_due: Entry<Date>,
        /// What it was set to zero on.
        zeroed: Zeroed,
    }
    /// An indicator set to zero on the flat that its bridge stands on.
    OnFlat {
        /// Name of the flat.
        name: Entry<Words>,
        /// Half-width of the error of the flat.
        permissible_error: Entry<Length>,
        /// Temperature of the indicator.
        temperature: Entry<Temperature>,
    }
    /// A size outside: a piston.
    Outside {
        /// Name of the reading, unique in the document.
        name: Entry<Words>,
        /// Name of the micrometer or caliper.
        gauge: Entry<Words>,
        /// Nominal size.
        nominal: Entry<Length>,
        /// Material of the part.
        material: Entry<Words>,
        /// Temperature of the part.
        temperature: Entry<Temperature>,
        /// Temperature of the gauge, when it is not that of the shop.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        gauge_temperature: Option<Entry<Temperature>>,
        /// What was read, once or more.
        repeats: Vec<Entry<Length>>,
        /// How far off the major axis of an oval it may have been read.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        off_axis: Option<OffAxis>,
        /// How far from the height that is meant it may have been read.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        height: Option<HeightError>,
        /// The force that presses the part in.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        force: Option<MeasuringForce>,
    }
    /// A size inside, by comparison: a bore.
    Inside {
        /// Name of the reading, unique in the document.
        name: Entry<Words>,
        /// Name of the bore gauge.
        gauge: Entry<Words>,
        /// Nominal size.
        nominal: Entry<Length>,
        /// Material of the part.
        material: Entry<Words>,
        /// Temperature of the part.
        temperature: Entry<Temperature>,
        /// Temperature of the gauge, when it is not that of the shop.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        gauge_temperature: Option<Entry<Temperature>>,
        /// Deviation from the setting, once or more; positive when the part is larger.
        repeats: Vec<Entry<Length>>,
        /// How far the gauge may have been tilted; without it the turning point was found.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        tilt: Option<Tilt>,
        /// How far from the depth that is meant it may have been read.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        height: Option<HeightError>,
    }
    /// A size inside, by a transfer gauge: a pin bore.
    Transferred {
        /// Name of the reading, unique in the document.
        name: Entry<Words>,
        /// Name of the transfer gauge.
        gauge: Entry<Words>,
        /// Name of the micrometer it was read over with.
        micrometer: Entry<Words>,
        /// Nominal size.
        nominal: Entry<Length>,
        /// Material of the part.
        material: Entry<Words>,
        /// Temperature of the part.
        temperature: Entry<Temperature>,
        /// Temperature of the micrometer, when it is not that of the shop.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        gauge_temperature: Option<Entry<Temperature>>,
        /// What the micrometer read, once or more, the transfer gauge set anew each time.
        repeats: Vec<Entry<Length>>,
        /// How far the gauge may have been tilted in the hole; without it its turning point was found.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        tilt: Option<Tilt>,
    }
    /// A clearance by feeler strips, the piston in its bore without rings.
    Clearance {
        /// Name of the reading, unique in the document.
        name: Entry<Words>,
        /// Name of the set of strips.
        gauge: Entry<Words>,
        /// Nominal bore.
        nominal: Entry<Length>,
        /// Material of the bore.
        material: Entry<Words>,
        /// Material of the piston.
        piston_material: Entry<Words>,
        /// Temperature of both.
        temperature: Entry<Temperature>,
        /// Thickness of the strip that passed at the stated pull, once or more.
        repeats: Vec<Entry<Length>>,
    }
    /// A height over the deck.
    Depth {
        /// Name of the reading, unique in the document.
        name: Entry<Words>,
        /// Name of the depth indicator.
        gauge: Entry<Words>,
        /// Material of the part.
        material: Entry<Words>,
        /// Temperature of the part.
        temperature: Entry<Temperature>,
        /// Temperature of the gauge, when it is not that of the shop.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        gauge_temperature: Option<Entry<Temperature>>,
        /// Deviation from the zero at one point in line with the pin; positive when the part stands higher.
        repeats: Vec<Entry<Length>>,
        /// The same at the opposite point.
        opposite: Vec<Entry<Length>>,
        /// How far the indicator may have been tilted.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        tilt: Option<Tilt>,
    }
    /// A tilt of a gauge: it reads size / cos t.
    Tilt {
        /// Half-width of the angle.
        half_width: Entry<Angle>,
        /// What becomes of the mean of the effect.
        treatment: Treatment,
    }
    /// An angle off the major axis of an oval: it reads too small by ovality / 2 (1 - cos 2 p).
    OffAxis {
        /// Half-width of the angle.
        half_width: Entry<Angle>,
        /// Major less minor diameter.
        ovality: Entry<Length>,
        /// What becomes of the mean of the effect.
        treatment: Treatment,
    }
    /// A height that is not quite the one that is meant.
    HeightError {
        /// Half-width of the error of the height.
        half_width: Entry<Length>,
        /// Slope of the profile there.
        profile_slope: Entry<Slope>,
    }
    /// A force that presses a skirt in.
    MeasuringForce {
        /// The force.
        force: Entry<Force>,
        /// Half-width of its error.
        force_permissible_error: Entry<Force>,
        /// Stiffness of the skirt between the faces.
        skirt_stiffness: Entry<Stiffness>,
        /// Half-width of its error.
        stiffness_permissible_error: Entry<Stiffness>,
    }
    /// A difference of two readings: a clearance.
    Difference {
        /// Name of the difference.
        name: Entry<Words>,
        /// Name of the reading it is taken from.
        larger: Entry<Words>,
        /// Name of the reading that is taken off.
        smaller: Entry<Words>,
    }
    /// Trials of a Monte Carlo run.
    Trials {
        /// Seed: the same one gives the same trials.
        seed: Entry<Count>,
        /// Number of trials of each reading and difference.
        trials: Entry<Count>,
        /// Significant digits of the standard uncertainty that the first order is held to, 1 or 2; 1 without it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        digits: Option<Entry<Count>>,
    }
}

choices! {
    /// Kind of transfer gauge.
    TransferKind {
        /// Split ball.
        SmallHoleGauge = "small_hole_gauge",
        /// Telescopic gauge.
        TelescopicGauge = "telescopic_gauge",
    }
    /// What becomes of the mean of an effect that is even in its angle.
    Treatment {
        /// The value is corrected by it.
        Corrected = "corrected",
        /// The value is left as it was read, and the mean is stated beside it.
        Stated = "stated",
    }
}

alternatives! {
    /// What a depth indicator was set to zero on.
    Zeroed {
        /// On the flat that the bridge stands on.
        Flat(OnFlat) = "flat",
        /// On a master with a step.
        Master(OnRing) = "master",
    }
}

alternatives! {
    /// One reading.
    #[expect(clippy::large_enum_variant, reason = "a document has at most a thousand, of one kind or another")]
    Reading {
        /// A size outside, by a micrometer or caliper.
        Outside(Outside) = "outside",
        /// A size inside, by a bore gauge.
        Inside(Inside) = "inside",
        /// A size inside, by a transfer gauge and a micrometer.
        Transferred(Transferred) = "transferred",
        /// A clearance, by feeler strips.
        Clearance(Clearance) = "clearance",
        /// A height over the deck, by a depth indicator.
        Depth(Depth) = "depth",
    }
}

impl Reading {
    /// Its name.
    #[must_use]
    pub fn name(&self) -> &Entry<Words> {
        match self {
            Reading::Outside(r) => &r.name,
            Reading::Inside(r) => &r.name,
            Reading::Transferred(r) => &r.name,
            Reading::Clearance(r) => &r.name,
            Reading::Depth(r) => &r.name,
        }
    }

    /// Name of its gauge.
    #[must_use]
    pub fn gauge(&self) -> &Entry<Words> {
        match self {
            Reading::Outside(r) => &r.gauge,
            Reading::Inside(r) => &r.gauge,
            Reading::Transferred(r) => &r.gauge,
            Reading::Clearance(r) => &r.gauge,
            Reading::Depth(r) => &r.gauge,
        }
    }

    /// What is read: the word of the document.
    #[must_use]
    pub const fn what(&self) -> &'static str {
        match self {
            Reading::Outside(_) => "outside",
            Reading::Inside(_) => "inside",
            Reading::Transferred(_) => "transferred",
            Reading::Clearance(_) => "clearance",
            Reading::Depth(_) => "depth",
        }
    }

    /// What was read, as typed.
    #[must_use]
    pub fn repeats(&self) -> Vec<&Entry<Length>> {
        match self {
            Reading::Outside(r) => r.repeats.iter().collect(),
            Reading::Inside(r) => r.repeats.iter().collect(),
            Reading::Transferred(r) => r.repeats.iter().collect(),
            Reading::Clearance(r) => r.repeats.iter().collect(),
            Reading::Depth(r) => r.repeats.iter().chain(&r.opposite).collect(),
        }
    }
}
