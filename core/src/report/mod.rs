//! 9 REPORT: the results as data, as text for a technician to read aloud, and as Markdown.

mod caution;
mod data;
mod markdown;
mod plan;
mod plan_text;
mod work_order;
mod table;
mod text;

pub use caution::{HEATED_PART, LINER_LIFTING, LINER_WORK, OVERHEATED_PART, PRESS_WORK, RING_FILING};
pub(crate) use caution::{RUNNING_CLEARANCE, SEIZURE, SERVICE_DATA, cautions};
pub use data::{
    Block, BorePlaceReport, BoreReport, BudgetLine, ClearanceReport, Conventions, CylinderReport, Dominant,
    EngineName, GaugeReport, JobName, MeasuredValue, PistonReport, PistonSizeReport, Report, RunningCase,
    RunningReport, TargetReport, WindowReport,
};
pub(crate) use data::{report, written};
pub(crate) use markdown::{escaped, worked};
pub use plan::{
    ActionReport, BoreNeed, BoreWork, ChoiceReport, Closing, CutReport, DialReport, FinishReport,
    FinishResult, FinishTarget, FinishedReport, GapReport, GasketReport, LinerReport, LinersReport,
    MassReport, MassesReport, MatchingReport, NewPistonReport, OversizesReport, PairReport, PistonWork,
    PlanReport, PlannedCylinder, RingReport, SleeveReport, StandingReport, StepReport, WallFinishReport,
    WantedReport,
};
pub(crate) use table::{aligned, exponent_of, markdown, short};
pub(crate) use text::{Page, WIDTH, give_or_take, warned};
pub(crate) use work_order::work_order;
pub use work_order::{Task, WorkStep, WorkTarget};

/// Format name of a report.
pub const FORMAT: &str = "gaugepoint-report";
/// Version of the report format.
pub const VERSION: u32 = 1;
