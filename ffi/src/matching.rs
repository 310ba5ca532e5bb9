//! Measured pistons matched to bores.

use crate::array::{array, array_out, fitting, given};
use crate::error::{Failure, GaugepointError, cut};
use crate::guard::status;
use crate::progress::{GaugepointWatcher, watched};
use crate::record::{Record, record};
use crate::shims::all;
use crate::text::{flag, name};
use core::ffi::{c_char, c_void};
use core::ptr::null_mut;
use gaugepoint::plan::matching::{
    Bore, Case, Conditions, Matched, Matching, Merit, Piston, WantedClearance, match_pistons_watched,
};
use gaugepoint::progress::Watch;

/// What the data let a matching be.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointMatchingCase {
    /// One wanted clearance, one uncertainty, no pair ruled out, a bore for every piston: the order of size.
    Sorted = 1,
    /// The same with pistons to spare: the best choice keeps the order of size.
    OrderPreserving = 2,
    /// What a pair costs depends on the pair: threshold search, then shortest augmenting paths.
    PairDependent = 3,
}

/// A wanted clearance at 20 C over the diameter, mm: at least one limit, and a target within them. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointWantedClearance {
    /// 1 when `lower_mm` is given, else 0.
    pub has_lower: i32,
    /// 1 when `upper_mm` is given, else 0.
    pub has_upper: i32,
    /// 1 when `target_mm` is given, else 0: the middle of both limits.
    pub has_target: i32,
    /// Not used; 0.
    pub reserved: i32,
    /// Lower limit.
    pub lower_mm: f64,
    /// Upper limit.
    pub upper_mm: f64,
    /// Target.
    pub target_mm: f64,
}

/// A measured bore. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointMeasuredBore {
    /// Size at 20 C, mm.
    pub size_mm: f64,
    /// Standard uncertainty of the size, mm.
    pub standard_uncertainty_mm: f64,
    /// 1 when `wanted` is given, else 0: the clearance of the set.
    pub has_wanted: i32,
    /// Not used; 0.
    pub reserved: i32,
    /// The clearance that this bore wants.
    pub wanted: GaugepointWantedClearance,
    /// Its grade; NULL when it has none.
    pub grade: *const c_char,
    /// Length of the grade in bytes.
    pub grade_length: usize,
}

/// A measured piston. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointMeasuredPiston {
    /// Size at its gauge point at 20 C, mm.
    pub size_mm: f64,
    /// Standard uncertainty of the size, mm.
    pub standard_uncertainty_mm: f64,
    /// 1 when `weight_g` is given, else 0.
    pub has_weight: i32,
    /// Not used; 0.
    pub reserved: i32,
    /// Weight, g: of the assembly where pin, rings or rod stay with it.
    pub weight_g: f64,
    /// Its grade; NULL when it has none.
    pub grade: *const c_char,
    /// Length of the grade in bytes.
    pub grade_length: usize,
}

/// Places of a bore and of a piston. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointPair {
    /// Place of the bore.
    pub bore: usize,
    /// Place of the piston.
    pub piston: usize,
}

/// What holds for a whole set of bores and pistons. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointMatchingConditions {
    /// 1 when `wanted` is given, else 0.
    pub has_wanted: i32,
    /// 1 when `weight_band_g` is given, else 0.
    pub has_weight_band: i32,
    /// The clearance that bores without their own want.
    pub wanted: GaugepointWantedClearance,
    /// The part of every standard uncertainty, of bores and of pistons, that is one and the same error, mm: it cancels in a clearance.
    pub shared_uncertainty_mm: f64,
    /// Standard uncertainty beside those of the parts that all bores have in common, or all pistons, mm: it adds to every clearance.
    pub common_uncertainty_mm: f64,
    /// Largest difference of weight of the chosen pistons, g.
    pub weight_band_g: f64,
    /// Pairs that may not be; not read when there are none.
    pub forbidden: *const GaugepointPair,
    /// How many they are.
    pub forbidden_count: usize,
    /// Pairs that must be; not read when there are none.
    pub fixed: *const GaugepointPair,
    /// How many they are.
    pub fixed_count: usize,
}

/// A piston in its bore. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointMatched {
    /// Place of the bore.
    pub bore: usize,
    /// Place of the piston.
    pub piston: usize,
    /// Clearance at 20 C, mm over the diameter.
    pub clearance_mm: f64,
    /// Its standard uncertainty.
    pub standard_uncertainty_mm: f64,
    /// Clearance less its target.
    pub deviation_mm: f64,
    /// Probability that the clearance conforms to its limits.
    pub probability_of_conformity: f64,
    /// One less that, with all its digits where it is small.
    pub probability_outside: f64,
}

/// How good a pairing is as a whole. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointMerit {
    /// Least probability of conformity of its pairs.
    pub worst_probability: f64,
    /// One less that, with all its digits where it is small.
    pub worst_outside: f64,
    /// Sum of the squared deviations from the targets, mm2.
    pub sum_of_squares_mm2: f64,
    /// Bore with the worst pair.
    pub worst_bore: usize,
    /// 1 when it keeps the forbidden and fixed pairs, the grades and the weight band, else 0.
    pub is_allowed: i32,
    /// Not used; 0.
    pub reserved: i32,
}

/// A matching without its pairs; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointMatching {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// The case that the data are, a GaugepointMatchingCase.
    pub data_case: i32,
    /// 1 when `by_grade` is given, else 0: some bore finds no piston so.
    pub has_by_grade: i32,
    /// 1 when `weight_spread_g` is given, else 0: some chosen piston has no weight.
    pub has_weight_spread: i32,
    /// Not used; 0.
    pub reserved: i32,
    /// How good it is.
    pub merit: GaugepointMerit,
    /// The parts as they were given: the first piston in the first bore, and so on.
    pub as_given: GaugepointMerit,
    /// What the grades alone give: each bore in turn the first free piston that it may take.
    pub by_grade: GaugepointMerit,
    /// Largest difference of weight of the chosen pistons, g.
    pub weight_spread_g: f64,
    /// What in the data proves the case.
    pub because: [c_char; 256],
}

// SAFETY: a size, four int32_t, three structures of doubles, size_t and two int32_t, a double, 256 bytes
unsafe impl Record for GaugepointMatching {
    const SMALLEST: usize = 408;
}

/// Matches measured pistons to bores: the least probability of conformity is as large as it can be, and among such pairings the sum of
/// squared deviations from the targets is as small as it can be.
///
/// `pairs` gets one pair for each bore, in the order of the bores. At most 2000 bores and 4000 pistons, as many pistons as bores or more. Refused
/// when no pairing exists: the error names bores with too few pistons.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_match_pistons(
    bores: *const GaugepointMeasuredBore,
    bore_count: usize,
    pistons: *const GaugepointMeasuredPiston,
    piston_count: usize,
    conditions: *const GaugepointMatchingConditions,
    pairs: *mut GaugepointMatched,
    room: usize,
    out: *mut GaugepointMatching,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        gaugepoint_match_pistons_watched(
            bores,
            bore_count,
            pistons,
            piston_count,
            conditions,
            None,
            null_mut(),
            pairs,
            room,
            out,
            error,
        )
    }
}

/// gaugepoint_match_pistons with a watcher and its user pointer; NULL is none. See PROGRESS at the head.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_match_pistons_watched(
    bores: *const GaugepointMeasuredBore,
    bore_count: usize,
    pistons: *const GaugepointMeasuredPiston,
    piston_count: usize,
    conditions: *const GaugepointMatchingConditions,
    watcher: GaugepointWatcher,
    user: *mut c_void,
    pairs: *mut GaugepointMatched,
    room: usize,
    out: *mut GaugepointMatching,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, (array_out("pairs", pairs, room), record("out", out)), || {
            let bores = all("bores", array("bores", bores, Some(bore_count))?, |b| bore_of(b))?;
            let pistons = all("pistons", array("pistons", pistons, Some(piston_count))?, |p| piston_of(p))?;
            watched(watcher, user, |watch| matched(&bores, &pistons, conditions, room, watch))
        })
    }
}

/// Matches sizes that stand in arrays, each with its standard uncertainty; parts have neither grades nor weights, and bores want the clearance of
/// `conditions`. As gaugepoint_match_pistons, also in how what is refused is named: "bores/3/size_mm".
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_match_sizes(
    bores_mm: *const f64,
    bore_uncertainties_mm: *const f64,
    bore_count: usize,
    pistons_mm: *const f64,
    piston_uncertainties_mm: *const f64,
    piston_count: usize,
    conditions: *const GaugepointMatchingConditions,
    pairs: *mut GaugepointMatched,
    room: usize,
    out: *mut GaugepointMatching,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, (array_out("pairs", pairs, room), record("out", out)), || {
            let bores = (
                array("bores_mm", bores_mm, Some(bore_count))?,
                array("bore_uncertainties_mm", bore_uncertainties_mm, Some(bore_count))?,
            );
            let pistons = (
                array("pistons_mm", pistons_mm, Some(piston_count))?,
                array("piston_uncertainties_mm", piston_uncertainties_mm, Some(piston_count))?,
            );
            let (bores, pistons) = (parts(bores, Bore::new), parts(pistons, Piston::new));
            matched(&bores, &pistons, conditions, room, Watch::default())
        })
    }
}

/// Parts of their sizes and uncertainties.
fn parts<P>((sizes, uncertainties): (&[f64], &[f64]), part: impl Fn(f64, f64) -> P) -> Vec<P> {
    sizes.iter().zip(uncertainties).map(|(size, u)| part(*size, *u)).collect()
}

/// The matching of parts, as it is handed out.
///
/// # Safety
/// As the header says.
unsafe fn matched(
    bores: &[Bore],
    pistons: &[Piston],
    conditions: *const GaugepointMatchingConditions,
    room: usize,
    watch: Watch<'_>,
) -> Result<(Vec<GaugepointMatched>, GaugepointMatching), Failure> {
    // SAFETY: the caller's promise
    let conditions = unsafe { conditions_of(&given("conditions", conditions)?) };
    let found =
        match_pistons_watched(bores, pistons, &conditions.map_err(|e| e.under("conditions"))?, watch)?;
    let pairs = found.pairs.iter().map(GaugepointMatched::from).collect();
    Ok((fitting(pairs, "room", room)?, GaugepointMatching::from(&found)))
}

/// # Safety
/// The grade is NULL or points to its bytes.
unsafe fn grade(text: *const c_char, length: usize) -> Result<Option<String>, Failure> {
    match text.is_null() {
        true => Ok(None),
        // SAFETY: the caller's promise
        false => Ok(Some(unsafe { name("grade", text, length) }?.to_owned())),
    }
}

fn wanted_of(wanted: &GaugepointWantedClearance) -> Result<WantedClearance, Failure> {
    Ok(WantedClearance {
        lower_mm: flag("has_lower", wanted.has_lower)?.then_some(wanted.lower_mm),
        upper_mm: flag("has_upper", wanted.has_upper)?.then_some(wanted.upper_mm),
        target_mm: flag("has_target", wanted.has_target)?.then_some(wanted.target_mm),
    })
}

fn wanted_if(has: i32, wanted: &GaugepointWantedClearance) -> Result<Option<WantedClearance>, Failure> {
    match flag("has_wanted", has)? {
        true => wanted_of(wanted).map(Some).map_err(|e| e.under("wanted")),
        false => Ok(None),
    }
}

/// # Safety
/// The grade is NULL or points to its bytes.
unsafe fn bore_of(bore: &GaugepointMeasuredBore) -> Result<Bore, Failure> {
    Ok(Bore {
        size_mm: bore.size_mm,
        standard_uncertainty_mm: bore.standard_uncertainty_mm,
        wanted: wanted_if(bore.has_wanted, &bore.wanted)?,
        // SAFETY: the caller's promise
        grade: unsafe { grade(bore.grade, bore.grade_length) }?,
    })
}

/// # Safety
/// The grade is NULL or points to its bytes.
unsafe fn piston_of(piston: &GaugepointMeasuredPiston) -> Result<Piston, Failure> {
    Ok(Piston {
        size_mm: piston.size_mm,
        standard_uncertainty_mm: piston.standard_uncertainty_mm,
        weight_g: flag("has_weight", piston.has_weight)?.then_some(piston.weight_g),
        // SAFETY: the caller's promise
        grade: unsafe { grade(piston.grade, piston.grade_length) }?,
    })
}

/// # Safety
/// The lists are not read or point to their pairs.
unsafe fn conditions_of(given: &GaugepointMatchingConditions) -> Result<Conditions, Failure> {
    let pairs = |name, list, count| -> Result<Vec<(usize, usize)>, Failure> {
        if count == 0 {
            return Ok(Vec::new());
        }
        // SAFETY: the caller's promise
        let pairs: &[GaugepointPair] = unsafe { array(name, list, Some(count)) }?;
        Ok(pairs.iter().map(|pair| (pair.bore, pair.piston)).collect())
    };
    Ok(Conditions {
        wanted: wanted_if(given.has_wanted, &given.wanted)?,
        shared_uncertainty_mm: given.shared_uncertainty_mm,
        common_uncertainty_mm: given.common_uncertainty_mm,
        forbidden: pairs("forbidden", given.forbidden, given.forbidden_count)?,
        fixed: pairs("fixed", given.fixed, given.fixed_count)?,
        weight_band_g: flag("has_weight_band", given.has_weight_band)?.then_some(given.weight_band_g),
    })
}

impl From<&Matched> for GaugepointMatched {
    fn from(m: &Matched) -> Self {
        GaugepointMatched {
            bore: m.bore,
            piston: m.piston,
            clearance_mm: m.clearance_mm,
            standard_uncertainty_mm: m.standard_uncertainty_mm,
            deviation_mm: m.deviation_mm,
            probability_of_conformity: m.probability_of_conformity,
            probability_outside: m.probability_outside,
        }
    }
}

const NO_MERIT: GaugepointMerit = GaugepointMerit {
    worst_probability: f64::NAN,
    worst_outside: f64::NAN,
    sum_of_squares_mm2: f64::NAN,
    worst_bore: 0,
    is_allowed: 0,
    reserved: 0,
};

impl From<&Merit> for GaugepointMerit {
    fn from(m: &Merit) -> Self {
        GaugepointMerit {
            worst_probability: m.worst_probability,
            worst_outside: m.worst_outside,
            sum_of_squares_mm2: m.sum_of_squares_mm2,
            worst_bore: m.worst_bore,
            is_allowed: m.is_allowed.into(),
            reserved: 0,
        }
    }
}

impl From<&Matching> for GaugepointMatching {
    fn from(m: &Matching) -> Self {
        let data_case = match m.case {
            Case::Sorted => GaugepointMatchingCase::Sorted,
            Case::OrderPreserving => GaugepointMatchingCase::OrderPreserving,
            Case::PairDependent => GaugepointMatchingCase::PairDependent,
        };
        GaugepointMatching {
            struct_size: size_of::<Self>(),
            data_case: data_case as i32,
            has_by_grade: m.by_grade.is_some().into(),
            has_weight_spread: m.weight_spread_g.is_some().into(),
            reserved: 0,
            merit: (&m.merit).into(),
            as_given: (&m.as_given).into(),
            by_grade: m.by_grade.as_ref().map_or(NO_MERIT, GaugepointMerit::from),
            weight_spread_g: m.weight_spread_g.unwrap_or(f64::NAN),
            because: cut(&m.because),
        }
    }
}
