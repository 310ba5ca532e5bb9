//! The report on a revisit, as data. Names that end in `_mm` hold a number in millimetres, `_h` in hours; what is absent was not computed, and
//! `missing` or a reason says why.

use crate::decision::Of;
use crate::job::Warning;
use crate::job::document::{Datum, Surface};
use crate::report::{JobName, report, written};
use schemars::JsonSchema;
use serde::Serialize;

/// Format name of the report on a revisit.
pub const REPORT_FORMAT: &str = "gaugepoint-revisit-report";
/// Version of the format of the report.
pub const REPORT_VERSION: u32 = 1;

report! {
    /// What changed of an engine between two visits.
    RevisitReport {
        /// `gaugepoint-revisit-report`
        format: &'static str,
        /// Version of the format.
        version: u32,
        /// Version of the library.
        library: &'static str,
        /// Name of the engine.
        engine: String,
        /// The job of the earlier visit.
        previous: JobName,
        /// The job of this visit.
        now: JobName,
        /// Hours between them.
        hours: HoursReport,
        /// Gauges of one name and one calibration date in both jobs: their lasting errors count once in a change.
        same_gauges: Vec<String>,
        /// Every cylinder, in order of number.
        cylinders: Vec<CylinderChange>,
        /// What does not fit two visits of one engine, or should be looked into.
        suspicious: Vec<Warning>,
        /// What is odd in the hours and in both jobs.
        warnings: Vec<Warning>,
    }
    /// Hours an engine ran.
    HoursReport {
        /// The hours.
        run_h: f64,
        /// Their standard uncertainty.
        standard_uncertainty_h: f64,
    }
    /// What changed of a cylinder.
    CylinderChange {
        /// Its number.
        number: u32,
        /// The bore, place by place where the same depth and axis were read.
        bore_places: Vec<BorePlaceChange>,
        /// The bore by the size rule.
        bore_size: Option<Change> => "Option::is_none",
        /// The piston, place by place where the same height and direction were read over the same surface.
        piston_places: Vec<PistonPlaceChange>,
        /// The clearance at 20 C.
        bench_clearance: Option<Change> => "Option::is_none",
        /// When limits of this job are reached.
        forecasts: Vec<Forecast>,
        /// What could not be compared, and why.
        missing: Vec<String> => "Vec::is_empty",
    }
    /// What changed at a place of a bore.
    BorePlaceChange {
        /// Depth from the deck.
        depth_mm: f64,
        /// Direction of the diameter.
        axis_deg: f64,
        /// The change.
        change: Change,
    }
    /// What changed at a place of a piston.
    PistonPlaceChange {
        /// Height of the place.
        height_mm: f64,
        /// What the height is counted from.
        datum: Datum,
        /// Direction of the diameter.
        angle_deg: f64,
        /// Surface that was touched.
        over: Surface,
        /// Whether the maker states the diameter here.
        gauge_point: bool,
        /// The change.
        change: Change,
    }
    /// A value of both visits. A change is the value now less the one before: wear makes a bore and a clearance grow, a piston shrink.
    Change {
        /// The value of the earlier visit.
        previous_mm: f64,
        /// The value of this visit.
        now_mm: f64,
        /// The one less the other.
        change_mm: f64,
        /// Standard uncertainty of the change.
        standard_uncertainty_mm: f64,
        /// Coverage factor: 2, or with few degrees of freedom that of Student's t at the same probability.
        coverage_factor: f64,
        /// Effective degrees of freedom; absent when they are infinite.
        dof: Option<f64> => "Option::is_none",
        /// Coverage factor times standard uncertainty.
        expanded_uncertainty_mm: f64,
        /// Whether the change is larger than its expanded uncertainty.
        significant: bool,
        /// Sources taken as the same error in both visits; all others were taken as independent.
        shared: Vec<String> => "Vec::is_empty",
        /// The change over the hours.
        rate_mm_per_h: f64,
        /// Standard uncertainty of that, with the error of the hours.
        rate_standard_uncertainty_mm_per_h: f64,
        /// The change in 1000 hours.
        rate_mm_per_1000_h: f64,
        /// Expanded uncertainty of that, by the same coverage factor.
        rate_expanded_uncertainty_mm_per_1000_h: f64,
        /// The change in 1000 hours as a share of the nominal bore.
        rate_of_bore_per_1000_h: f64,
    }
    /// When a limit of this job is reached, if the value goes on changing as it did.
    Forecast {
        /// What reaches its limit.
        of: Of,
        /// The upper limit.
        limit_mm: Option<f64> => "Option::is_none",
        /// The limit less the value at the temperature of the limit.
        room_mm: Option<f64> => "Option::is_none",
        /// Hours from now.
        hours: Option<f64> => "Option::is_none",
        /// Lower end of their interval; at 0 and below the limit may be reached already.
        lower_hours: Option<f64> => "Option::is_none",
        /// Upper end of their interval.
        upper_hours: Option<f64> => "Option::is_none",
        /// Coverage factor of the interval.
        coverage_factor: Option<f64> => "Option::is_none",
        /// Why no limit can be told.
        reason: Option<String> => "Option::is_none",
    }
}

written!(RevisitReport, "revisit-report");
