//! Which oversize, with what rules the others out.

use crate::array::{array, array_out, fitting, given};
use crate::deck::GaugepointChamber;
use crate::error::{Failure, GaugepointError};
use crate::guard::status;
use crate::record::{Record, record};
use crate::shims::all;
use crate::text::flag;
use gaugepoint::plan::oversize::{
    Action, Block, Choice, Consequence, RuledOut, Step, Way, WornBore, oversizes,
};

/// How a block is brought back.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointOversizeWay {
    /// All bores to one step.
    OneStep = 1,
    /// Every bore to the smallest step that serves it.
    StepByBore = 2,
    /// One step, and a sleeve where it does not serve.
    StepAndSleeves = 3,
    /// Bores that go back stay as they are, and the others take a sleeve and are bored to the standard size.
    SleevesAlone = 4,
}

/// What is done to a bore.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointBoreActionKind {
    /// It is bored to a step.
    Bore = 1,
    /// It takes a sleeve and is bored to a step.
    Sleeve = 2,
    /// It stays as it is, with its piston.
    Leave = 3,
}

/// Why a way to bring a block back is ruled out.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointOversizeReason {
    /// A bore is not clean at the step: it needs `value_mm`.
    NotClean = 1,
    /// The wall of a bore would be too thin: it allows `value_mm`.
    WallTooThin = 2,
    /// The step is larger than the gasket allows, `value_mm`.
    GasketTooSmall = 3,
    /// There are not enough pistons of a step.
    TooFewPistons = 4,
    /// A bore needs a sleeve and may not take one.
    NoSleeve = 5,
}

/// The block, and what is fitted to it. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointBlock {
    /// 1 when `largest_by_gasket_mm` is given, else 0.
    pub has_largest_by_gasket: i32,
    /// 1 when `sleeve_price` is given, else 0: no sleeve is fitted.
    pub has_sleeve_price: i32,
    /// 1 when `ring_gap_mm` is given, else 0.
    pub has_ring_gap: i32,
    /// 1 when `chamber` is given, else 0.
    pub has_chamber: i32,
    /// Nominal bore of the standard size.
    pub nominal_mm: f64,
    /// Largest bore that the opening of the gasket allows.
    pub largest_by_gasket_mm: f64,
    /// What a sleeve costs, with the work.
    pub sleeve_price: f64,
    /// What boring and honing one bore costs.
    pub boring_price: f64,
    /// How many standard uncertainties a step must lie above the clean-up.
    pub guard: f64,
    /// End gap at the nominal bore of rings that are kept.
    pub ring_gap_mm: f64,
    /// The chamber at the nominal bore.
    pub chamber: GaugepointChamber,
}

/// What is known of a worn bore. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointWornBore {
    /// What it must be bored to at least to be clean.
    pub clean_up_mm: f64,
    /// Standard uncertainty of that.
    pub standard_uncertainty_mm: f64,
    /// 1 when `largest_by_walls_mm` is given, else 0: the walls were not gauged.
    pub has_largest_by_walls: i32,
    /// 1 when it may take a sleeve, else 0.
    pub may_be_sleeved: i32,
    /// Largest bore that its walls allow.
    pub largest_by_walls_mm: f64,
    /// 1 when it may go back as it is, else 0.
    pub goes_back: i32,
    /// Not used; 0.
    pub reserved: i32,
}

/// A size of piston that can be had. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointStep {
    /// Over the nominal bore.
    pub oversize_mm: f64,
    /// What one piston with its rings costs.
    pub price: f64,
    /// 1 when `available` is given, else 0: it does not matter.
    pub has_available: i32,
    /// 1 when `more_mass_g` is given, else 0.
    pub has_more_mass: i32,
    /// How many there are.
    pub available: usize,
    /// Mass of a piston over that of the standard one, in g.
    pub more_mass_g: f64,
}

/// What a step does besides. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointConsequence {
    /// 1 when `compression_ratio` is given, else 0.
    pub has_compression_ratio: i32,
    /// 1 when `ring_gap_mm` is given, else 0.
    pub has_ring_gap: i32,
    /// 1 when `more_mass_g` is given, else 0.
    pub has_more_mass: i32,
    /// Not used; 0.
    pub reserved: i32,
    /// Bore of the step.
    pub bore_mm: f64,
    /// Compression ratio with the same chamber.
    pub compression_ratio: f64,
    /// End gap of rings that are kept.
    pub ring_gap_mm: f64,
    /// Mass of a piston over that of the standard one, in g.
    pub more_mass_g: f64,
}

/// One way to bring a block back. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointOversizeChoice {
    /// A GaugepointOversizeWay.
    pub way: i32,
    /// Not used; 0.
    pub reserved: i32,
    /// Pistons, boring and sleeves together.
    pub price: f64,
    /// Number of reasons that rule it out; 0 for one that can be done. They follow those of the ways before it.
    pub ruled_out: usize,
}

/// What is done to a bore. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointBoreAction {
    /// A GaugepointBoreActionKind.
    pub kind: i32,
    /// Not used; 0.
    pub reserved: i32,
    /// Place of the step; 0 for a bore that stays as it is.
    pub step: usize,
}

/// What rules out a way. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointOversizeRuledOut {
    /// A GaugepointOversizeReason.
    pub reason: i32,
    /// 1 when `place` is given, else 0: the gasket is for all bores.
    pub has_place: i32,
    /// 1 when `value_mm` is given, else 0.
    pub has_value: i32,
    /// 1 when `needed` and `available` are given, else 0.
    pub has_counts: i32,
    /// Place of the bore, or of the step of which there are too few pistons.
    pub place: usize,
    /// Pistons that are needed.
    pub needed: usize,
    /// Pistons that there are.
    pub available: usize,
    /// What the bore needs, or what the wall or the gasket allows.
    pub value_mm: f64,
}

/// How many ways there are; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointOversizes {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// Number of ways.
    pub choices: usize,
    /// Number of reasons that rule ways out, of all together.
    pub ruled_out: usize,
}

// SAFETY: three sizes
unsafe impl Record for GaugepointOversizes {
    const SMALLEST: usize = 24;
}

/// Holds every way to bring a block back against what its bores need: those that can be done, the cheapest first, and after them those that cannot.
///
/// `consequences` has `step_count` places. `choices` gets the ways: 2 `step_count` + 1 places are enough; `actions` has `bore_count` places for each
/// of them, and gets what is done to each bore by each way, one way after the other. `ruled_out` gets the reasons, those of one way after those of
/// the one before: for each way 2 `bore_count` + `step_count` + 1 places are enough. A refused number is named "bores/2/clean_up_mm".
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_oversizes(
    block: *const GaugepointBlock,
    bores: *const GaugepointWornBore,
    bore_count: usize,
    steps: *const GaugepointStep,
    step_count: usize,
    consequences: *mut GaugepointConsequence,
    choices: *mut GaugepointOversizeChoice,
    choice_room: usize,
    actions: *mut GaugepointBoreAction,
    ruled_out: *mut GaugepointOversizeRuledOut,
    ruled_out_room: usize,
    out: *mut GaugepointOversizes,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(
            error,
            (
                (
                    (
                        array_out("consequences", consequences, step_count),
                        array_out("choices", choices, choice_room),
                    ),
                    (
                        array_out("actions", actions, choice_room.saturating_mul(bore_count)),
                        array_out("ruled_out", ruled_out, ruled_out_room),
                    ),
                ),
                record("out", out),
            ),
            || {
                let block = block_of(&given("block", block)?)?;
                let bores = all("bores", array("bores", bores, Some(bore_count))?, bore_of)?;
                let steps = all("steps", array("steps", steps, Some(step_count))?, step_of)?;
                let found = oversizes(&block, &bores, &steps)?;
                let consequences = found.consequences.iter().map(GaugepointConsequence::from).collect();
                let ways: Vec<_> = found.choices.iter().map(GaugepointOversizeChoice::from).collect();
                let actions = found.choices.iter().flat_map(|c| &c.actions).map(|a| (*a).into()).collect();
                let reasons: Vec<_> =
                    found.choices.iter().flat_map(|c| &c.ruled_out).map(|r| r.clone().into()).collect();
                let counts = GaugepointOversizes {
                    struct_size: size_of::<GaugepointOversizes>(),
                    choices: ways.len(),
                    ruled_out: reasons.len(),
                };
                let ways = fitting(ways, "choice_room", choice_room)?;
                let reasons = fitting(reasons, "ruled_out_room", ruled_out_room)?;
                Ok((((consequences, ways), (actions, reasons)), counts))
            },
        )
    }
}

fn block_of(b: &GaugepointBlock) -> Result<Block, Failure> {
    Ok(Block {
        nominal_mm: b.nominal_mm,
        largest_by_gasket_mm: flag("has_largest_by_gasket", b.has_largest_by_gasket)?
            .then_some(b.largest_by_gasket_mm),
        sleeve_price: flag("has_sleeve_price", b.has_sleeve_price)?.then_some(b.sleeve_price),
        boring_price: b.boring_price,
        guard: b.guard,
        chamber: flag("has_chamber", b.has_chamber)?.then(|| b.chamber.into()),
        ring_gap_mm: flag("has_ring_gap", b.has_ring_gap)?.then_some(b.ring_gap_mm),
    })
}

fn bore_of(b: &GaugepointWornBore) -> Result<WornBore, Failure> {
    Ok(WornBore {
        clean_up_mm: b.clean_up_mm,
        standard_uncertainty_mm: b.standard_uncertainty_mm,
        largest_by_walls_mm: flag("has_largest_by_walls", b.has_largest_by_walls)?
            .then_some(b.largest_by_walls_mm),
        may_be_sleeved: flag("may_be_sleeved", b.may_be_sleeved)?,
        goes_back: flag("goes_back", b.goes_back)?,
    })
}

fn step_of(s: &GaugepointStep) -> Result<Step, Failure> {
    Ok(Step {
        oversize_mm: s.oversize_mm,
        price: s.price,
        available: flag("has_available", s.has_available)?.then_some(s.available),
        more_mass_g: flag("has_more_mass", s.has_more_mass)?.then_some(s.more_mass_g),
    })
}

impl From<&Consequence> for GaugepointConsequence {
    fn from(c: &Consequence) -> Self {
        GaugepointConsequence {
            has_compression_ratio: c.compression_ratio.is_some().into(),
            has_ring_gap: c.ring_gap_mm.is_some().into(),
            has_more_mass: c.more_mass_g.is_some().into(),
            reserved: 0,
            bore_mm: c.bore_mm,
            compression_ratio: c.compression_ratio.unwrap_or(f64::NAN),
            ring_gap_mm: c.ring_gap_mm.unwrap_or(f64::NAN),
            more_mass_g: c.more_mass_g.unwrap_or(f64::NAN),
        }
    }
}

impl From<&Choice> for GaugepointOversizeChoice {
    fn from(c: &Choice) -> Self {
        let way = match c.way {
            Way::OneStep => GaugepointOversizeWay::OneStep,
            Way::StepByBore => GaugepointOversizeWay::StepByBore,
            Way::StepAndSleeves => GaugepointOversizeWay::StepAndSleeves,
            Way::SleevesAlone => GaugepointOversizeWay::SleevesAlone,
        };
        GaugepointOversizeChoice {
            way: way as i32,
            reserved: 0,
            price: c.price,
            ruled_out: c.ruled_out.len(),
        }
    }
}

impl From<Action> for GaugepointBoreAction {
    fn from(action: Action) -> Self {
        let (kind, step) = match action {
            Action::Bore(step) => (GaugepointBoreActionKind::Bore, step),
            Action::Sleeve(step) => (GaugepointBoreActionKind::Sleeve, step),
            Action::Leave => (GaugepointBoreActionKind::Leave, 0),
        };
        GaugepointBoreAction { kind: kind as i32, reserved: 0, step }
    }
}

impl From<RuledOut> for GaugepointOversizeRuledOut {
    fn from(reason: RuledOut) -> Self {
        use GaugepointOversizeReason as R;
        let (reason, place, value, counts) = match reason {
            RuledOut::NotClean { bore, needed_mm } => (R::NotClean, Some(bore), Some(needed_mm), None),
            RuledOut::WallTooThin { bore, largest_mm } => {
                (R::WallTooThin, Some(bore), Some(largest_mm), None)
            }
            RuledOut::GasketTooSmall { largest_mm } => (R::GasketTooSmall, None, Some(largest_mm), None),
            RuledOut::TooFewPistons { step, needed, available } => {
                (R::TooFewPistons, Some(step), None, Some((needed, available)))
            }
            RuledOut::NoSleeve { bore } => (R::NoSleeve, Some(bore), None, None),
        };
        let (needed, available) = counts.unwrap_or_default();
        GaugepointOversizeRuledOut {
            reason: reason as i32,
            has_place: place.is_some().into(),
            has_value: value.is_some().into(),
            has_counts: counts.is_some().into(),
            place: place.unwrap_or_default(),
            needed,
            available,
            value_mm: value.unwrap_or(f64::NAN),
        }
    }
}
