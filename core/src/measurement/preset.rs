//! Permissible errors of gauges from published tables, for a gauge whose own data sheet is not at hand.
//!
//! A row says where it comes from and how far that can be trusted. It is what gauges of that kind may have, not what one gauge has: its
//! own certificate is better. What is from memory is marked [`Confidence::Unverified`].

use crate::choice::choices;
use crate::error::{Error, ErrorKind};
use crate::job::document::{Confidence, GaugeKind};
use crate::job::nearest;
use schemars::JsonSchema;
use serde::Serialize;

choices! {
    /// What a preset is for.
    PresetKind {
        /// Outside micrometer.
        OutsideMicrometer = "outside_micrometer",
        /// Caliper, used outside.
        Caliper = "caliper",
        /// Comparative bore gauge.
        BoreGauge = "bore_gauge",
        /// Inside micrometer.
        InsideMicrometer = "inside_micrometer",
        /// Setting ring: the permissible error is that of its size.
        SettingRing = "setting_ring",
    }
}

/// One row of a published table. Lengths in mm.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, JsonSchema)]
pub struct Preset {
    /// Name, as a document refers to it.
    pub name: &'static str,
    /// What it is for.
    pub kind: PresetKind,
    /// Smallest size it holds for.
    pub from_mm: f64,
    /// Largest size it holds for.
    pub to_mm: f64,
    /// Permissible error, to either side.
    pub permissible_error_mm: f64,
    /// Parallelism of the measuring faces.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub face_parallelism_mm: Option<f64>,
    /// How far a force of 10 N opens the frame.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub frame_deflection_mm: Option<f64>,
    /// Where the row comes from.
    pub source: &'static str,
    /// How far it can be trusted.
    pub confidence: Confidence,
}

const DIN_863: &str =
    "DIN 863, external micrometers: limit of error, parallelism, deflection at 10 N; from a printed extract";
const DIN_862: &str = "DIN 862, calipers: limit of error outside, to 200 mm; from a printed extract; inside and depth 0.02 mm more";
const B89: &str = "ASME B89.1.5, ring gauges: maker's tolerance; from a printed table; a master disc has half of it to either side";
const BULLETIN: &str = "TB 9-5210-207-24, government calibration bulletin for inside micrometers";
const MEMORY: &str = "from memory: typical of national standards for dial bore gauges";

const fn row(
    name: &'static str,
    kind: PresetKind,
    range: (f64, f64),
    error: f64,
    source: &'static str,
) -> Preset {
    Preset {
        name,
        kind,
        from_mm: range.0,
        to_mm: range.1,
        permissible_error_mm: error,
        face_parallelism_mm: None,
        frame_deflection_mm: None,
        source,
        confidence: Confidence::Published,
    }
}

const fn micrometer(
    name: &'static str,
    range: (f64, f64),
    error: f64,
    faces: Option<f64>,
    deflection: f64,
) -> Preset {
    let row = row(name, PresetKind::OutsideMicrometer, range, error, DIN_863);
    Preset { face_parallelism_mm: faces, frame_deflection_mm: Some(deflection), ..row }
}

const fn ring(name: &'static str, range: (f64, f64), tolerance: f64) -> Preset {
    row(name, PresetKind::SettingRing, range, tolerance, B89)
}

const fn unverified(row: Preset) -> Preset {
    Preset { confidence: Confidence::Unverified, ..row }
}

use PresetKind::{BoreGauge, Caliper, InsideMicrometer};

/// Every row, kind by kind, in rising order of size.
pub const ALL: &[Preset] = &[
    micrometer("DIN 863 0-25 mm", (0.0, 25.0), 0.004, Some(0.002), 0.002),
    micrometer("DIN 863 25-50 mm", (25.0, 50.0), 0.004, Some(0.002), 0.002),
    micrometer("DIN 863 50-75 mm", (50.0, 75.0), 0.005, Some(0.003), 0.003),
    micrometer("DIN 863 75-100 mm", (75.0, 100.0), 0.005, Some(0.003), 0.003),
    micrometer("DIN 863 100-125 mm", (100.0, 125.0), 0.006, Some(0.003), 0.004),
    micrometer("DIN 863 125-150 mm", (125.0, 150.0), 0.006, Some(0.003), 0.005),
    micrometer("DIN 863 150-175 mm", (150.0, 175.0), 0.007, Some(0.004), 0.006),
    micrometer("DIN 863 175-200 mm", (175.0, 200.0), 0.007, Some(0.004), 0.006),
    micrometer("DIN 863 200-225 mm", (200.0, 225.0), 0.008, Some(0.004), 0.007),
    micrometer("DIN 863 275-300 mm", (275.0, 300.0), 0.009, None, 0.009),
    micrometer("DIN 863 475-500 mm", (475.0, 500.0), 0.013, None, 0.015),
    row("DIN 862 steps of 0.01 or 0.02 mm", Caliper, (0.0, 200.0), 0.02, DIN_862),
    row("DIN 862 vernier 0.05 mm", Caliper, (0.0, 200.0), 0.05, DIN_862),
    unverified(row("dial bore gauge, wide range", BoreGauge, (18.0, 400.0), 0.005, MEMORY)),
    unverified(row("dial bore gauge, wide range, 1 um", BoreGauge, (18.0, 400.0), 0.002, MEMORY)),
    row("inside micrometer, tubular, 50-125 mm", InsideMicrometer, (50.0, 125.0), 0.007, BULLETIN),
    row("inside micrometer, tubular, 125-300 mm", InsideMicrometer, (125.0, 300.0), 0.010, BULLETIN),
    row("inside micrometer, rod, 50-200 mm", InsideMicrometer, (50.0, 200.0), 0.010, BULLETIN),
    ring("B89.1.5 XXX 38-64 mm", (38.35, 63.75), 0.00051),
    ring("B89.1.5 XX 38-64 mm", (38.35, 63.75), 0.00102),
    ring("B89.1.5 X 38-64 mm", (38.35, 63.75), 0.00203),
    ring("B89.1.5 Y 38-64 mm", (38.35, 63.75), 0.00305),
    ring("B89.1.5 Z 38-64 mm", (38.35, 63.75), 0.00406),
    ring("B89.1.5 ZZ 38-64 mm", (38.35, 63.75), 0.00813),
    ring("B89.1.5 XXX 64-115 mm", (63.75, 114.55), 0.00064),
    ring("B89.1.5 XX 64-115 mm", (63.75, 114.55), 0.00127),
    ring("B89.1.5 X 64-115 mm", (63.75, 114.55), 0.00254),
    ring("B89.1.5 Y 64-115 mm", (63.75, 114.55), 0.00381),
    ring("B89.1.5 Z 64-115 mm", (63.75, 114.55), 0.00508),
    ring("B89.1.5 ZZ 64-115 mm", (63.75, 114.55), 0.01016),
];

/// The rows of a kind that hold for a size in mm, in the order of the table.
///
/// ```
/// use gaugepoint::measurement::preset::{PresetKind, for_size};
///
/// let row = for_size(PresetKind::OutsideMicrometer, 86.0).next().unwrap();
/// assert_eq!((row.permissible_error_mm, row.face_parallelism_mm), (0.005, Some(0.003)));
/// assert!(row.source.contains("DIN 863"));
/// ```
pub fn for_size(kind: PresetKind, size_mm: f64) -> impl Iterator<Item = &'static Preset> {
    ALL.iter().filter(move |row| row.kind == kind && row.from_mm <= size_mm && size_mm <= row.to_mm)
}

/// The row of a name.
///
/// # Errors
/// [`ErrorKind::UnknownName`], with the nearest name where one is near.
pub fn named(name: &str) -> Result<&'static Preset, Error> {
    ALL.iter().find(|row| row.name == name).ok_or_else(|| {
        let known: Vec<&str> = ALL.iter().map(|row| row.name).collect();
        let reason = format!("no preset has this name; known: {}", known.join(", "));
        Error::new(ErrorKind::UnknownName, name, reason).suggest(nearest(name, &known))
    })
}

/// The table as JSON: a list of its rows.
#[must_use]
pub fn to_json() -> String {
    // numbers and texts: nothing in it can fail to be written
    serde_json::to_string(ALL).unwrap_or_default()
}

impl Preset {
    /// Can it stand for a gauge of this kind?
    pub(crate) fn is_for(&self, kind: GaugeKind) -> bool {
        matches!(
            (self.kind, kind),
            (PresetKind::OutsideMicrometer, GaugeKind::OutsideMicrometer)
                | (PresetKind::Caliper, GaugeKind::Caliper)
                | (PresetKind::BoreGauge, GaugeKind::BoreGauge)
        )
    }

    /// The row in words, as a report tells it.
    pub(crate) fn words(&self) -> String {
        let faces = self.face_parallelism_mm.map_or_else(String::new, |f| format!(", faces {f} mm"));
        let confidence = self.confidence.spoken();
        let Preset { name, permissible_error_mm: error, source, .. } = self;
        format!("{name}: permissible error {error} mm{faces}; {source} ({confidence})")
    }
}
