//! What is done before assembly: rings filed, a gasket chosen, masses matched, a finish checked.

use crate::array::{array, array_out, given};
use crate::caution::caution;
use crate::decision::rule_of;
use crate::deck::GaugepointGasketBand;
use crate::error::{Failure, GaugepointError};
use crate::guard::{cleared, status};
use crate::record::{Record, record};
use crate::text::flag;
use core::ffi::c_char;
use gaugepoint::ErrorKind;
use gaugepoint::plan::filing::{self, Filing, GapReading, HotRing, WantedGap, filing};
use gaugepoint::plan::gasket::{GasketGrade, gasket_grade};
use gaugepoint::plan::surface::{Finding, Finish, FinishFound, FinishValue, Judged, finish};
use gaugepoint::plan::weights::{self, BobWeight, Part, bob_weight_g, cut_list};
use gaugepoint::shape::deck::GasketBand;

/// What is done to a ring.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointFilingOutcome {
    /// It has its gap.
    Fits = 1,
    /// It is filed.
    File = 2,
    /// Its gap is too wide: another ring.
    TooWide = 3,
}

/// An end gap as it was read. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointGapReading {
    /// 1 when `gauge_mm` is given, else 0: the gap was read in the bore that the ring runs in.
    pub has_gauge: i32,
    /// Not used; 0.
    pub reserved: i32,
    /// The gap.
    pub gap_mm: f64,
    /// Size of the ring gauge or bore that it was read in.
    pub gauge_mm: f64,
    /// Standard uncertainty of the gap; 0 leaves it out.
    pub gap_uncertainty_mm: f64,
    /// The same of the size of the gauge; not used without one.
    pub gauge_uncertainty_mm: f64,
    /// The same of the size of the bore that the ring runs in; not used without a gauge.
    pub bore_uncertainty_mm: f64,
}

/// The gap that is wanted: a least one, or what heat asks for, or both. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointWantedGap {
    /// 1 when `least_mm` is given, else 0.
    pub has_least: i32,
    /// 1 when `most_mm` is given, else 0.
    pub has_most: i32,
    /// 1 when the last five numbers are given, else 0.
    pub has_hot: i32,
    /// Not used; 0.
    pub reserved: i32,
    /// The least gap at 20 C.
    pub least_mm: f64,
    /// The widest gap at 20 C.
    pub most_mm: f64,
    /// How far above the least gap a ring is filed.
    pub allowance_mm: f64,
    /// The least gap when ring and bore are hot; 0 lets the ends touch.
    pub least_hot_gap_mm: f64,
    /// Temperature of the bore at the ring.
    pub bore_temperature_c: f64,
    /// Its coefficient of expansion.
    pub bore_expansion_per_k: f64,
    /// Temperature of the ring.
    pub ring_temperature_c: f64,
    /// Its coefficient of expansion.
    pub ring_expansion_per_k: f64,
}

/// What is filed off a ring; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointFiling {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// A GaugepointFilingOutcome.
    pub outcome: i32,
    /// 1 when `hot_gap_mm` is given, else 0.
    pub has_hot_gap: i32,
    /// Gap in the bore that the ring runs in; below zero the ends overlap.
    pub gap_mm: f64,
    /// Its standard uncertainty.
    pub standard_uncertainty_mm: f64,
    /// The least gap in force: the wanted one or that of heat, whichever is larger.
    pub least_mm: f64,
    /// The gap that a short ring is filed to.
    pub target_mm: f64,
    /// What is filed off in all; 0 unless the ring is filed.
    pub file_off_mm: f64,
    /// What is filed off each end.
    pub each_end_mm: f64,
    /// Gap of the ring as it is then, hot.
    pub hot_gap_mm: f64,
    /// What to take care of; a text that lives for ever.
    pub caution: *const c_char,
}

// SAFETY: a size, two int32_t, doubles, a pointer
unsafe impl Record for GaugepointFiling {
    const SMALLEST: usize = 80;
}

/// What a gasket is chosen by besides its table. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointGasketConditions {
    /// 1 when `largest_spread_mm` is given, else 0.
    pub has_largest_spread: i32,
    /// 1 when `standard_uncertainty_mm` is given, else 0.
    pub has_uncertainty: i32,
    /// The last digit the table is printed to.
    pub step_mm: f64,
    /// Most that protrusions may differ by.
    pub largest_spread_mm: f64,
    /// Standard uncertainty of one protrusion; 0 for exact ones.
    pub standard_uncertainty_mm: f64,
}

/// The gasket for an engine; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointGasketGrade {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// Place of the piston that decided, the first of equal ones.
    pub largest_piston: usize,
    /// Place of the line of the table.
    pub band: usize,
    /// 1 when `spread_is_met` is given, else 0.
    pub has_spread_is_met: i32,
    /// 1 when the spread is within its limit, else 0.
    pub spread_is_met: i32,
    /// 1 when the two probabilities are given, else 0.
    pub has_probabilities: i32,
    /// Not used; 0.
    pub reserved: i32,
    /// The protrusion that decided.
    pub largest_mm: f64,
    /// Largest less smallest protrusion.
    pub spread_mm: f64,
    /// The gasket, compressed.
    pub thickness_mm: f64,
    /// Probability that the true largest protrusion lies below the band.
    pub probability_below: f64,
    /// Probability that it lies above the band.
    pub probability_above: f64,
}

// SAFETY: three sizes, four int32_t, doubles
unsafe impl Record for GaugepointGasketGrade {
    const SMALLEST: usize = 80;
}

/// A part of an assembly. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointPart {
    /// Its mass in g; 0 for a part that is not there.
    pub mass_g: f64,
    /// What may be taken off it at most, in g; 0 where nothing may.
    pub removable_g: f64,
}

/// What an assembly loses. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointCut {
    /// Its mass as it was weighed, in g.
    pub mass_g: f64,
    /// Its mass when it is cut, in g.
    pub left_g: f64,
    /// How far it is still over the heaviest allowed, in g; 0 when it is within.
    pub over_g: f64,
}

/// What all assemblies lose; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointCutList {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// Place of the lightest assembly, the first of equal ones.
    pub lightest: usize,
    /// Heaviest mass that is allowed, in g.
    pub most_g: f64,
    /// 1 when every one is within the band, else 0.
    pub is_met: i32,
    /// Not used; 0.
    pub reserved: i32,
}

// SAFETY: two sizes, a double, two int32_t
unsafe impl Record for GaugepointCutList {
    const SMALLEST: usize = 32;
}

/// What moves with a crankpin. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointBobWeight {
    /// Rods on the pin, 1 to 4.
    pub rods: usize,
    /// Big end of one rod as it is weighed with the rod level, in g.
    pub big_end_g: f64,
    /// Bearing shells of one rod, in g.
    pub bearing_g: f64,
    /// Small end of one rod, in g.
    pub small_end_g: f64,
    /// Piston with pin, rings and retainers, in g.
    pub piston_g: f64,
    /// Share of the reciprocating mass that is balanced: 0.5 for a right-angled V of two rods on a pin.
    pub share: f64,
    /// Oil in the pin, in g; 0 leaves it out.
    pub oil_g: f64,
}

/// A parameter of a finish, by its place; the names are those of ISO 13565-2.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointFinishParameter {
    /// Reduced peak height, um.
    Rpk = 0,
    /// Core height, um.
    Rk = 1,
    /// Reduced valley depth, um.
    Rvk = 2,
    /// Material ratio where the peaks end, %.
    Mr1 = 3,
    /// Material ratio where the valleys begin, %.
    Mr2 = 4,
    /// Angle between the two directions of the marks, degrees.
    Crosshatch = 5,
}

/// What is found of a parameter of a finish.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointFinishFinding {
    /// Within its limits.
    In = 1,
    /// Outside them.
    Out = 2,
    /// Neither is proven.
    NotProven = 3,
    /// There are limits and no value.
    NotGiven = 4,
    /// There is nothing to judge by.
    NoLimit = 5,
}

/// A parameter as it was measured and what is asked of it, in its unit. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointFinishValue {
    /// 1 when `value` is given, else 0.
    pub has_value: i32,
    /// 1 when `standard_uncertainty` is given, else 0: the value alone is held against the limits.
    pub has_uncertainty: i32,
    /// 1 when `lower` is given, else 0.
    pub has_lower: i32,
    /// 1 when `upper` is given, else 0.
    pub has_upper: i32,
    /// The value.
    pub value: f64,
    /// Its standard uncertainty.
    pub standard_uncertainty: f64,
    /// Lower limit.
    pub lower: f64,
    /// Upper limit.
    pub upper: f64,
}

/// A parameter that was judged. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointFinishJudged {
    /// A GaugepointFinishFinding.
    pub finding: i32,
    /// 1 when `probability_of_conformity` is given, else 0.
    pub has_probability: i32,
    /// Probability that it conforms.
    pub probability_of_conformity: f64,
}

/// What is found of a finish; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointFinishFound {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// 1 when there is a limit and every parameter with a limit lies within it, else 0.
    pub is_met: i32,
    /// Not used; 0.
    pub reserved: i32,
    /// Every parameter, at the places of GaugepointFinishParameter.
    pub parameters: [GaugepointFinishJudged; 6],
}

// SAFETY: a size, two int32_t, six structures of two int32_t and a double
unsafe impl Record for GaugepointFinishFound {
    const SMALLEST: usize = 112;
}

/// What is filed off a ring for the bore that it runs in: the gap there is gap + pi (bore - gauge).
///
/// A ring that has its least gap is left as it is. A short one is filed to the least gap and the allowance.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_filing(
    reading: *const GaugepointGapReading,
    bore_mm: f64,
    wanted: *const GaugepointWantedGap,
    out: *mut GaugepointFiling,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            let reading = reading_of(&given("reading", reading)?)?;
            Ok((&filing(&reading, bore_mm, &wanted_of(&given("wanted", wanted)?)?)?).into())
        })
    }
}

/// The gasket for the largest protrusion of `count` pistons, from the table of gaugepoint_gasket_band.
///
/// `projections_mm` has two readings for each piston, one after the other. `protrusions_mm` gets their means, `squish_mm` what is left from each
/// crown to the head; both have `count` places. A refused reading is named "projections_mm/3/1".
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_gasket_grade(
    projections_mm: *const f64,
    count: usize,
    bands: *const GaugepointGasketBand,
    band_count: usize,
    conditions: *const GaugepointGasketConditions,
    protrusions_mm: *mut f64,
    squish_mm: *mut f64,
    out: *mut GaugepointGasketGrade,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(
            error,
            (
                (
                    array_out("protrusions_mm", protrusions_mm, count),
                    array_out("squish_mm", squish_mm, count),
                ),
                record("out", out),
            ),
            || {
                let readings = array("projections_mm", projections_mm, count.checked_mul(2))?;
                let readings: Vec<[f64; 2]> = readings.as_chunks::<2>().0.to_vec();
                let bands = array("bands", bands, Some(band_count))?;
                let bands: Vec<GasketBand> = bands.iter().copied().map(GasketBand::from).collect();
                let c = given("conditions", conditions)?;
                let spread = flag("has_largest_spread", c.has_largest_spread)?.then_some(c.largest_spread_mm);
                let u = flag("has_uncertainty", c.has_uncertainty)?.then_some(c.standard_uncertainty_mm);
                let grade = gasket_grade(&readings, &bands, c.step_mm, spread, u)?;
                let out = (&grade).into();
                Ok(((grade.protrusions_mm, grade.squish_mm), out))
            },
        )
    }
}

/// What each of `count` assemblies loses so that all are within a band of the lightest, in g.
///
/// `assemblies` has the parts of the first one, then those of the second, `parts` of each; the cut comes off them in order. `cut_g` gets what each
/// part loses, at the places of the parts; `cuts` has `count` places. A refused number is named "assemblies/2/0/mass_g".
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_cut_list(
    assemblies: *const GaugepointPart,
    count: usize,
    parts: usize,
    band_g: f64,
    cut_g: *mut f64,
    cuts: *mut GaugepointCut,
    out: *mut GaugepointCutList,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(
            error,
            (
                (array_out("cut_g", cut_g, count.saturating_mul(parts)), array_out("cuts", cuts, count)),
                record("out", out),
            ),
            || {
                if parts == 0 {
                    return Err(Failure::refused(ErrorKind::MissingField, "parts", "at least one is needed"));
                }
                let all = array("assemblies", assemblies, count.checked_mul(parts))?;
                let part = |p: &GaugepointPart| Part { mass_g: p.mass_g, removable_g: p.removable_g };
                let assemblies: Vec<Vec<Part>> =
                    all.chunks(parts).map(|parts| parts.iter().map(part).collect()).collect();
                let list = cut_list(&assemblies, band_g)?;
                let cut_g = list.assemblies.iter().flat_map(|a| a.cut_g.iter().copied()).collect();
                let cuts = list.assemblies.iter().map(GaugepointCut::from).collect();
                let out = GaugepointCutList {
                    struct_size: size_of::<GaugepointCutList>(),
                    lightest: list.lightest,
                    most_g: list.most_g,
                    is_met: list.is_met.into(),
                    reserved: 0,
                };
                Ok(((cut_g, cuts), out))
            },
        )
    }
}

/// Bob weight of a crankpin in g: rods (rotating + share x reciprocating) + oil.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_bob_weight_g(
    pin: *const GaugepointBobWeight,
    out: *mut f64,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, cleared("out", out, f64::NAN), || {
            let GaugepointBobWeight { rods, big_end_g, bearing_g, small_end_g, piston_g, share, oil_g } =
                given("pin", pin)?;
            Ok(bob_weight_g(&BobWeight { rods, big_end_g, bearing_g, small_end_g, piston_g, share, oil_g })?)
        })
    }
}

/// Holds a finish against its limits; nothing that is not given is assumed.
///
/// `values` has six parameters at the places of GaugepointFinishParameter. `rule` is a GaugepointRule, `at_least` what it asks for, as in
/// gaugepoint_decide_mm; neither is looked at where no uncertainty is given. A refused number is named "rpk_um/value", "mr1_percent/upper",
/// "crosshatch_deg/lower".
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_finish(
    values: *const GaugepointFinishValue,
    rule: i32,
    at_least: f64,
    out: *mut GaugepointFinishFound,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            let values = given("values", values.cast::<[GaugepointFinishValue; 6]>())?;
            let [rpk, rk, rvk, mr1, mr2, crosshatch] = &values;
            let of = |field: &str, value| value_of(value).map_err(|e| e.under(field));
            let given = Finish {
                rpk_um: of("rpk_um", rpk)?,
                rk_um: of("rk_um", rk)?,
                rvk_um: of("rvk_um", rvk)?,
                mr1_percent: of("mr1_percent", mr1)?,
                mr2_percent: of("mr2_percent", mr2)?,
                crosshatch_deg: of("crosshatch_deg", crosshatch)?,
            };
            Ok((&finish(&given, rule_of(rule)?, at_least)?).into())
        })
    }
}

fn reading_of(r: &GaugepointGapReading) -> Result<GapReading, Failure> {
    Ok(GapReading {
        gap_mm: r.gap_mm,
        gauge_mm: flag("has_gauge", r.has_gauge)?.then_some(r.gauge_mm),
        gap_uncertainty_mm: r.gap_uncertainty_mm,
        gauge_uncertainty_mm: r.gauge_uncertainty_mm,
        bore_uncertainty_mm: r.bore_uncertainty_mm,
    })
}

fn wanted_of(w: &GaugepointWantedGap) -> Result<WantedGap, Failure> {
    Ok(WantedGap {
        least_mm: flag("has_least", w.has_least)?.then_some(w.least_mm),
        most_mm: flag("has_most", w.has_most)?.then_some(w.most_mm),
        allowance_mm: w.allowance_mm,
        hot: flag("has_hot", w.has_hot)?.then_some(HotRing {
            least_hot_gap_mm: w.least_hot_gap_mm,
            bore_temperature_c: w.bore_temperature_c,
            bore_expansion_per_k: w.bore_expansion_per_k,
            ring_temperature_c: w.ring_temperature_c,
            ring_expansion_per_k: w.ring_expansion_per_k,
        }),
    })
}

fn value_of(v: &GaugepointFinishValue) -> Result<FinishValue, Failure> {
    Ok(FinishValue {
        value: flag("has_value", v.has_value)?.then_some(v.value),
        standard_uncertainty: flag("has_uncertainty", v.has_uncertainty)?.then_some(v.standard_uncertainty),
        lower: flag("has_lower", v.has_lower)?.then_some(v.lower),
        upper: flag("has_upper", v.has_upper)?.then_some(v.upper),
    })
}

impl From<&Filing> for GaugepointFiling {
    fn from(f: &Filing) -> Self {
        let outcome = match f.outcome {
            filing::Outcome::Fits => GaugepointFilingOutcome::Fits,
            filing::Outcome::File => GaugepointFilingOutcome::File,
            filing::Outcome::TooWide => GaugepointFilingOutcome::TooWide,
        };
        GaugepointFiling {
            struct_size: size_of::<Self>(),
            outcome: outcome as i32,
            has_hot_gap: f.hot_gap_mm.is_some().into(),
            gap_mm: f.gap_mm,
            standard_uncertainty_mm: f.standard_uncertainty_mm,
            least_mm: f.least_mm,
            target_mm: f.target_mm,
            file_off_mm: f.file_off_mm,
            each_end_mm: f.each_end_mm,
            hot_gap_mm: f.hot_gap_mm.unwrap_or(f64::NAN),
            caution: caution(f.caution),
        }
    }
}

impl From<&GasketGrade> for GaugepointGasketGrade {
    fn from(g: &GasketGrade) -> Self {
        GaugepointGasketGrade {
            struct_size: size_of::<Self>(),
            largest_piston: g.largest_piston,
            band: g.band,
            has_spread_is_met: g.spread_is_met.is_some().into(),
            spread_is_met: g.spread_is_met.unwrap_or_default().into(),
            has_probabilities: g.probability_above.is_some().into(),
            reserved: 0,
            largest_mm: g.largest_mm,
            spread_mm: g.spread_mm,
            thickness_mm: g.thickness_mm,
            probability_below: g.probability_below.unwrap_or(f64::NAN),
            probability_above: g.probability_above.unwrap_or(f64::NAN),
        }
    }
}

impl From<&weights::Cut> for GaugepointCut {
    fn from(cut: &weights::Cut) -> Self {
        GaugepointCut { mass_g: cut.mass_g, left_g: cut.left_g, over_g: cut.over_g }
    }
}

impl From<&FinishFound> for GaugepointFinishFound {
    fn from(found: &FinishFound) -> Self {
        let judged = |j: Judged| GaugepointFinishJudged {
            finding: finding_of(j.finding) as i32,
            has_probability: j.probability_of_conformity.is_some().into(),
            probability_of_conformity: j.probability_of_conformity.unwrap_or(f64::NAN),
        };
        GaugepointFinishFound {
            struct_size: size_of::<Self>(),
            is_met: found.is_met.into(),
            reserved: 0,
            parameters: found.parameters.map(judged),
        }
    }
}

fn finding_of(finding: Finding) -> GaugepointFinishFinding {
    match finding {
        Finding::In => GaugepointFinishFinding::In,
        Finding::Out => GaugepointFinishFinding::Out,
        Finding::NotProven => GaugepointFinishFinding::NotProven,
        Finding::NotGiven => GaugepointFinishFinding::NotGiven,
        Finding::NoLimit => GaugepointFinishFinding::NoLimit,
    }
}
