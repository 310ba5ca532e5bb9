//! 9 REPORT: the results as data, as text for a technician to read aloud, and as Markdown.

mod caution;
mod data;
mod markdown;
mod table;
mod text;

pub use caution::{HEATED_PART, LINER_WORK, OVERHEATED_PART, PRESS_WORK};
pub(crate) use caution::{RUNNING_CLEARANCE, SEIZURE, SERVICE_DATA, cautions};
pub use data::{
    Block, BorePlaceReport, BoreReport, BudgetLine, ClearanceReport, Conventions, CylinderReport, Dominant,
    EngineName, GaugeReport, JobName, MeasuredValue, PistonReport, PistonSizeReport, Report, RunningCase,
    RunningReport, TargetReport, WindowReport,
};
pub(crate) use data::{report, written};
pub(crate) use markdown::{escaped, worked};
pub(crate) use table::{aligned, exponent_of, markdown, short};
pub(crate) use text::{Page, WIDTH, give_or_take, warned};

/// Format name of a report.
pub const FORMAT: &str = "gaugepoint-report";
/// Version of the report format.
pub const VERSION: u32 = 1;
