//! The report on a hot fit, as data. Names end in the unit of their numbers; what is absent was not asked for or does not exist.

use crate::calc::Working;
use crate::job::Warning;
use crate::report::{JobName, MeasuredValue, report, written};
use schemars::JsonSchema;
use serde::Serialize;

/// Format name of the report on a hot fit.
pub const REPORT_FORMAT: &str = "gaugepoint-fit-report";
/// Version of the format of the report.
pub const REPORT_VERSION: u32 = 1;

report! {
    /// The clearance of one piston in one bore, everywhere and at temperature.
    FitReport {
        /// `gaugepoint-fit-report`
        format: &'static str,
        /// Version of the format.
        version: u32,
        /// Version of the library.
        library: &'static str,
        /// The fit as named in the document.
        fit: JobName,
        /// What was found out.
        hot: HotReport,
        /// What is odd.
        warnings: Vec<Warning>,
        /// What to take care of.
        cautions: Vec<String>,
        /// The working of every measured value, when it was asked for.
        working: Option<Working> => "Option::is_none",
    }
    /// A hot fit.
    HotReport {
        /// Clearance at 20 C at the gauge point, over the diameter.
        bench: MeasuredValue,
        /// Clearance of the running engine at the gauge point, over the diameter.
        running: MeasuredValue,
        /// Where that is: crank angle of top dead centre when the piston moves in the bore.
        running_crank_deg: Option<f64> => "Option::is_none",
        /// Temperatures there.
        gauge_point: GaugePointTemperatures,
        /// Where the temperatures come from.
        origin: String,
        /// Skirt and lands, each by itself.
        surfaces: Vec<SurfaceReport>,
        /// The piston against the original one at the maker's least clearance.
        reference: Option<ReferenceReport> => "Option::is_none",
        /// How much hotter until something touches.
        onset: Vec<OnsetReport>,
        /// What was looked for.
        found: Vec<FoundReport> => "Vec::is_empty",
        /// Data to draw.
        pictures: Option<PicturesReport> => "Option::is_none",
        /// What a reader must know.
        notes: Vec<String>,
    }
    /// Temperatures at the gauge point.
    GaugePointTemperatures {
        /// Thrust side of the piston.
        thrust_c: f64,
        /// Pin side of the piston.
        pin_c: f64,
        /// Wall of the bore at the same place.
        bore_c: f64,
    }
    /// A skirt or a land in the running engine.
    SurfaceReport {
        /// What it is called.
        name: String,
        /// Its smallest clearance on one side, the piston centred.
        smallest: MeasuredValue,
        /// Where that is.
        place: PlaceReport,
        /// The smallest clearance is certainly not below the value by more than this.
        certified_within_mm: f64,
        /// Smallest clearance with the piston moved sideways to where it has most room, at the crank angle of the smallest one.
        best_placed: BestPlaced,
        /// Where it overlaps, and by how much.
        overlap: Option<OverlapReport> => "Option::is_none",
        /// Ovality at the heights of its rows.
        ovality: Vec<OvalityReport>,
    }
    /// A place in the running engine.
    PlaceReport {
        /// Angle around the piston: 0 the major thrust side.
        angle_deg: f64,
        /// Height above the bottom edge of the skirt.
        height_mm: f64,
        /// Depth in the bore, when the piston moves in it.
        depth_mm: Option<f64> => "Option::is_none",
        /// Crank angle; absent when it does not matter.
        crank_deg: Option<f64> => "Option::is_none",
    }
    /// A piston moved sideways to where it has most room.
    BestPlaced {
        /// Smallest clearance on one side there.
        clearance_mm: f64,
        /// Moved towards the major thrust side.
        thrust_mm: f64,
        /// Moved along the pin, towards the front.
        pin_mm: f64,
        /// The most room of any place sideways is certainly within this of the clearance.
        certified_within_mm: f64,
    }
    /// Where a surface overlaps the bore.
    OverlapReport {
        /// Area of the surface below zero clearance.
        area_mm2: f64,
        /// Area that overlaps by more than is allowed; absent when nothing is allowed.
        beyond_allowed_mm2: Option<f64> => "Option::is_none",
        /// Largest overlap on one side.
        largest_mm: f64,
        /// Angles that touch, height by height.
        bands: Vec<Band>,
    }
    /// Angles that touch at one height.
    Band {
        /// Height above the bottom edge of the skirt.
        height_mm: f64,
        /// First angle.
        from_deg: f64,
        /// Last angle; above 360 when the band crosses the thrust axis.
        to_deg: f64,
    }
    /// Ovality at one height.
    OvalityReport {
        /// Height above the bottom edge of the skirt.
        height_mm: f64,
        /// At 20 C.
        cold_mm: f64,
        /// In the running engine.
        running_mm: f64,
        /// Ovality at 20 C that would run round.
        round_running_mm: f64,
    }
    /// A piston against the original one at the maker's least clearance, in the same bore at the same temperatures.
    ReferenceReport {
        /// Running clearance of the original at the gauge point.
        running: MeasuredValue,
        /// Running clearance less that of the original.
        margin: MeasuredValue,
        /// Smallest clearance of the skirt of the original, on one side.
        smallest_mm: f64,
        /// Smallest clearance of the skirt less that of the original, on one side.
        smallest_margin: MeasuredValue,
        /// Where the least clearance is printed.
        origin: String,
        /// What the comparison can say.
        note: String,
    }
    /// How far the temperatures can rise until something touches.
    OnsetReport {
        /// `piston_alone`, `piston_and_bore` or `piston_with_cold_bore`
        scenario: &'static str,
        /// `touches`, `touches_at_20_c`, `no_contact`
        outcome: &'static str,
        /// Clearance on one side that counts as touching: 0, or less the overlap that is allowed.
        touching_at_mm: f64,
        /// Temperature rise over that of the document; of `no_contact` the largest that was looked at.
        factor: f64,
        /// Temperature of the thrust side at the gauge point with it.
        thrust_c: f64,
        /// Standard uncertainty of that temperature.
        standard_uncertainty_k: Option<f64> => "Option::is_none",
        /// Sources, largest share first; contributions in kelvin.
        budget: Vec<KelvinLine> => "Vec::is_empty",
        /// Where it touches.
        place: Option<SurfacePlace> => "Option::is_none",
        /// Why no more was looked at.
        stopped_by: Option<String> => "Option::is_none",
    }
    /// Share of one source in a temperature.
    KelvinLine {
        /// The source in words.
        source: String,
        /// Sensitivity times standard uncertainty, with its sign.
        contribution_k: f64,
        /// Share of the variance, 0 to 1.
        share: f64,
        /// Field of the document it comes from.
        path: String,
    }
    /// A place with its surface.
    SurfacePlace {
        /// Skirt or land.
        surface: String,
        /// The place.
        place: PlaceReport,
    }
    /// What was looked for.
    FoundReport {
        /// The field of `find`.
        what: &'static str,
        /// What was wanted, as typed.
        wanted: String,
        /// The size, when it exists.
        size_mm: Option<f64> => "Option::is_none",
        /// The temperature, when it exists.
        temperature_c: Option<f64> => "Option::is_none",
        /// Why there is none.
        no_solution: Option<String> => "Option::is_none",
    }
    /// Data to draw.
    PicturesReport {
        /// Radii over height.
        profile: Vec<ProfilePicture>,
        /// A section of every surface at its smallest clearance.
        sections: Vec<SectionPicture>,
        /// Clearance on one side over the skirt and the lands.
        maps: Vec<MapPicture>,
        /// Smallest clearance of the skirt against the temperature rise.
        against_temperature: AgainstPicture,
    }
    /// Radii of a surface over height, less half the gauge diameter at 20 C.
    ProfilePicture {
        /// Skirt or land.
        surface: String,
        /// Heights.
        heights_mm: Vec<f64>,
        /// Thrust axis at 20 C.
        cold_thrust_mm: Vec<f64>,
        /// Pin axis at 20 C.
        cold_pin_mm: Vec<f64>,
        /// Thrust axis in the running engine.
        hot_thrust_mm: Vec<f64>,
        /// Pin axis in the running engine.
        hot_pin_mm: Vec<f64>,
    }
    /// A section of a surface.
    SectionPicture {
        /// Skirt or land.
        surface: String,
        /// Its height.
        height_mm: f64,
        /// Angles.
        angles_deg: Vec<f64>,
        /// Radius of the piston at 20 C.
        piston_cold_mm: Vec<f64>,
        /// Radius of the running piston.
        piston_hot_mm: Vec<f64>,
        /// Radius of the bore at 20 C.
        bore_cold_mm: Vec<f64>,
        /// Radius of the running bore.
        bore_hot_mm: Vec<f64>,
    }
    /// Clearance on one side over a surface at one crank angle.
    MapPicture {
        /// Skirt or land.
        surface: String,
        /// Crank angle, when the piston moves.
        crank_deg: Option<f64> => "Option::is_none",
        /// Angles.
        angles_deg: Vec<f64>,
        /// Heights.
        heights_mm: Vec<f64>,
        /// A row for every height, an entry for every angle; absent where there is no surface or the bore has a window.
        clearance_mm: Vec<Vec<Option<f64>>>,
    }
    /// Smallest clearance against the temperature rise.
    AgainstPicture {
        /// Temperature rise of piston and bore over that of the document.
        factors: Vec<f64>,
        /// Temperature of the thrust side at the gauge point.
        thrust_c: Vec<f64>,
        /// Smallest clearance of the skirt on one side.
        clearance_mm: Vec<f64>,
        /// The same of the original piston at the maker's least clearance.
        reference_mm: Vec<f64> => "Vec::is_empty",
    }
}

written!(FitReport, "fit-report");
