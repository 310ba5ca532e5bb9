//! What is done before assembly: oversizes, rings filed, liners shimmed, a gasket chosen, masses matched, a finish checked.

use crate::error::{Fault, guarded};
use crate::parts::Chamber;
use gaugepoint::decision::Rule;
use gaugepoint::plan::filing::{self, GapReading, HotRing, WantedGap};
use gaugepoint::plan::gasket;
use gaugepoint::plan::oversize::{self, Action, Block, Choice, RuledOut, Step, WornBore};
use gaugepoint::plan::shims::{self, Liner, Shim, Shimmed, Wanted};
use gaugepoint::plan::surface::{self, Finish, FinishValue};
use gaugepoint::plan::weights::{self, BobWeight, Part};
use gaugepoint::shape::deck::GasketBand;
use pyo3::prelude::*;

/// Outcome; gap, uncertainty, least, target, filed off in all and each end; hot gap; caution.
type Filed = (&'static str, f64, f64, f64, f64, f64, f64, Option<f64>, &'static str);
/// Protrusions, place and value of the largest, spread and whether it is met, line, thickness, squish, probabilities below and above.
type Graded = (Vec<f64>, usize, f64, f64, Option<bool>, usize, f64, Vec<f64>, Option<f64>, Option<f64>);
/// Mass, cut of each part, mass then, still over.
type Cut = (f64, Vec<f64>, f64, f64);
/// Findings with their probabilities, and whether all is met.
type Finished = (Vec<(&'static str, Option<f64>)>, bool);
/// Mean depth, unevenness, thinnest and thickest stack, stack, lowest and highest protrusion.
type Placed = (f64, f64, f64, f64, Option<Vec<usize>>, Option<f64>, Option<f64>);
/// Liners, largest deviation, largest step, shims used; reasons with their liners; caution.
type Planned =
    (Vec<Placed>, Option<f64>, Option<f64>, Option<usize>, Vec<(&'static str, usize)>, &'static str);
/// Reason, bore, step, value, needed, available.
type Reason = (&'static str, Option<usize>, Option<usize>, Option<f64>, Option<usize>, Option<usize>);
/// Way, price, actions, reasons.
type Brought = (&'static str, f64, Vec<(&'static str, Option<usize>)>, Vec<Reason>);
/// Bore, compression ratio, ring gap, mass.
type Does = (f64, Option<f64>, Option<f64>, Option<f64>);

/// A gap, as `gaugepoint.plan.GapReading` has it.
#[derive(FromPyObject)]
pub(crate) struct GivenGap {
    gap_mm: f64,
    gauge_mm: Option<f64>,
    gap_uncertainty_mm: f64,
    gauge_uncertainty_mm: f64,
    bore_uncertainty_mm: f64,
}

/// A hot ring, as `gaugepoint.plan.HotRing` has it.
#[derive(FromPyObject)]
pub(crate) struct GivenHot {
    least_hot_gap_mm: f64,
    bore_temperature_c: f64,
    bore_expansion_per_k: f64,
    ring_temperature_c: f64,
    ring_expansion_per_k: f64,
}

/// A wanted gap, as `gaugepoint.plan.WantedGap` has it.
#[derive(FromPyObject)]
pub(crate) struct GivenWantedGap {
    least_mm: Option<f64>,
    most_mm: Option<f64>,
    allowance_mm: f64,
    hot: Option<GivenHot>,
}

/// A part, as `gaugepoint.plan.Part` has it.
#[derive(FromPyObject)]
pub(crate) struct GivenPart {
    mass_g: f64,
    removable_g: f64,
}

/// What moves with a crankpin, as `gaugepoint.plan.BobWeight` has it.
#[derive(FromPyObject)]
pub(crate) struct GivenBob {
    rods: usize,
    big_end_g: f64,
    bearing_g: f64,
    small_end_g: f64,
    piston_g: f64,
    share: f64,
    oil_g: f64,
}

/// A parameter, as `gaugepoint.plan.FinishValue` has it.
#[derive(FromPyObject)]
pub(crate) struct GivenFinish {
    value: Option<f64>,
    standard_uncertainty: Option<f64>,
    lower: Option<f64>,
    upper: Option<f64>,
}

/// A liner, as `gaugepoint.plan.LinerSeat` has it.
#[derive(FromPyObject)]
pub(crate) struct GivenLiner {
    flange_mm: f64,
    depths_mm: [f64; 4],
    cupping_mm: Option<f64>,
}

/// A shim, as `gaugepoint.plan.Shim` has it.
#[derive(FromPyObject)]
pub(crate) struct GivenShim {
    thickness_mm: f64,
    available: Option<usize>,
}

/// What is wanted of a row, as `gaugepoint.plan.WantedProtrusion` has it.
#[derive(FromPyObject)]
pub(crate) struct GivenProtrusion {
    least_mm: f64,
    most_mm: f64,
    unevenness_mm: f64,
    cupping_mm: Option<f64>,
    neighbours_mm: Option<f64>,
    most_on_one: usize,
}

/// A block, as `gaugepoint.plan.Block` has it.
#[derive(FromPyObject)]
pub(crate) struct GivenBlock {
    nominal_mm: f64,
    boring_price: f64,
    guard: f64,
    largest_by_gasket_mm: Option<f64>,
    sleeve_price: Option<f64>,
    chamber: Option<Chamber>,
    ring_gap_mm: Option<f64>,
}

/// A bore, as `gaugepoint.plan.WornBore` has it.
#[derive(FromPyObject)]
pub(crate) struct GivenWorn {
    clean_up_mm: f64,
    standard_uncertainty_mm: f64,
    largest_by_walls_mm: Option<f64>,
    may_be_sleeved: bool,
    goes_back: bool,
}

/// A size of piston, as `gaugepoint.plan.Step` has it.
#[derive(FromPyObject)]
pub(crate) struct GivenStep {
    oversize_mm: f64,
    price: f64,
    available: Option<usize>,
    more_mass_g: Option<f64>,
}

/// Give what is filed off a ring; `gaugepoint.plan.filing` is its public form.
///
/// Parameters
/// ----------
/// reading : GapReading
///     The gap as it was read.
/// bore_mm : float
///     The bore that the ring runs in.
/// wanted : WantedGap
///     The gap that is wanted.
///
/// Returns
/// -------
/// tuple
///     Outcome as a word, then the numbers.
///
/// Raises
/// ------
/// InputError
///     When something is refused.
#[pyfunction]
#[pyo3(name = "filing")]
pub(crate) fn filed(reading: GivenGap, bore_mm: f64, wanted: GivenWantedGap) -> Result<Filed, Fault> {
    let GivenGap { gap_mm, gauge_mm, gap_uncertainty_mm, gauge_uncertainty_mm, bore_uncertainty_mm } =
        reading;
    let reading =
        GapReading { gap_mm, gauge_mm, gap_uncertainty_mm, gauge_uncertainty_mm, bore_uncertainty_mm };
    let f = guarded(|| filing::filing(&reading, bore_mm, &wanted.into()))?;
    Ok((
        f.outcome.word(),
        f.gap_mm,
        f.standard_uncertainty_mm,
        f.least_mm,
        f.target_mm,
        f.file_off_mm,
        f.each_end_mm,
        f.hot_gap_mm,
        f.caution,
    ))
}

/// Give the gasket for an engine; `gaugepoint.plan.gasket_grade` is its public form.
///
/// Parameters
/// ----------
/// projections_mm : sequence of tuple of float
///     Two readings for each piston.
/// bands : sequence of tuple of float
///     Lines of the table: from, to, thickness.
/// step_mm : float
///     The last digit the table is printed to.
/// largest_spread_mm, standard_uncertainty_mm : float or None
///     Most that protrusions may differ by, and standard uncertainty of one.
///
/// Returns
/// -------
/// tuple
///     Protrusions and what is chosen by them.
///
/// Raises
/// ------
/// InputError
///     When something is refused.
#[pyfunction]
pub(crate) fn gasket_grade(
    projections_mm: Vec<[f64; 2]>,
    bands: Vec<(f64, f64, f64)>,
    step_mm: f64,
    largest_spread_mm: Option<f64>,
    standard_uncertainty_mm: Option<f64>,
) -> Result<Graded, Fault> {
    let band = |(from_mm, to_mm, thickness_mm)| GasketBand { from_mm, to_mm, thickness_mm };
    let bands: Vec<GasketBand> = bands.into_iter().map(band).collect();
    let g = guarded(|| {
        gasket::gasket_grade(&projections_mm, &bands, step_mm, largest_spread_mm, standard_uncertainty_mm)
    })?;
    Ok((
        g.protrusions_mm,
        g.largest_piston,
        g.largest_mm,
        g.spread_mm,
        g.spread_is_met,
        g.band,
        g.thickness_mm,
        g.squish_mm,
        g.probability_below,
        g.probability_above,
    ))
}

/// Give what assemblies lose; `gaugepoint.plan.cut_list` is its public form.
///
/// Parameters
/// ----------
/// assemblies : sequence of sequence of Part
///     The parts of each assembly.
/// band_g : float
///     Most that they may differ by.
///
/// Returns
/// -------
/// tuple
///     Lightest, heaviest allowed mass, cuts, whether all are within.
///
/// Raises
/// ------
/// InputError
///     When something is refused.
#[pyfunction]
pub(crate) fn cut_list(
    assemblies: Vec<Vec<GivenPart>>,
    band_g: f64,
) -> Result<(usize, f64, Vec<Cut>, bool), Fault> {
    let part = |p: GivenPart| Part { mass_g: p.mass_g, removable_g: p.removable_g };
    let assemblies: Vec<Vec<Part>> =
        assemblies.into_iter().map(|parts| parts.into_iter().map(part).collect()).collect();
    let list = guarded(|| weights::cut_list(&assemblies, band_g))?;
    let cut = |c: weights::Cut| (c.mass_g, c.cut_g, c.left_g, c.over_g);
    Ok((list.lightest, list.most_g, list.assemblies.into_iter().map(cut).collect(), list.is_met))
}

/// Give the bob weight of a crankpin; `gaugepoint.plan.bob_weight_g` is its public form.
///
/// Parameters
/// ----------
/// pin : BobWeight
///     What moves with it.
///
/// Returns
/// -------
/// float
///     The bob weight.
///
/// Raises
/// ------
/// InputError
///     When a number is not finite or impossible.
#[pyfunction]
pub(crate) fn bob_weight_g(pin: GivenBob) -> Result<f64, Fault> {
    let GivenBob { rods, big_end_g, bearing_g, small_end_g, piston_g, share, oil_g } = pin;
    guarded(|| {
        weights::bob_weight_g(&BobWeight { rods, big_end_g, bearing_g, small_end_g, piston_g, share, oil_g })
    })
}

/// Hold a finish against its limits; `gaugepoint.plan.finish` is its public form.
///
/// Parameters
/// ----------
/// values : tuple of FinishValue
///     The six parameters in order.
/// rule : str
///     Rule of decision.
/// at_least : float
///     What it asks for.
///
/// Returns
/// -------
/// tuple
///     Findings with their probabilities, and whether all is met.
///
/// Raises
/// ------
/// InputError
///     When something is refused.
#[pyfunction]
pub(crate) fn finish(values: [GivenFinish; 6], rule: &str, at_least: f64) -> Result<Finished, Fault> {
    let [rpk_um, rk_um, rvk_um, mr1_percent, mr2_percent, crosshatch_deg] = values.map(FinishValue::from);
    let given = Finish { rpk_um, rk_um, rvk_um, mr1_percent, mr2_percent, crosshatch_deg };
    let found = guarded(|| {
        let rule = Rule::from_word(rule).map_err(|e| e.named("rule"))?;
        surface::finish(&given, rule, at_least)
    })?;
    let judged = |j: surface::Judged| (j.finding.word(), j.probability_of_conformity);
    Ok((found.parameters.into_iter().map(judged).collect(), found.is_met))
}

/// Choose the shims of a row of liners; `gaugepoint.plan.shim_plan` is its public form.
///
/// Parameters
/// ----------
/// liners : sequence of LinerSeat
///     The row, from the front.
/// shims : sequence of Shim
///     What can be had.
/// wanted : WantedProtrusion
///     What is wanted of the row.
///
/// Returns
/// -------
/// tuple
///     Liners, the largest deviation and step, shims used, reasons.
///
/// Raises
/// ------
/// InputError
///     When something is refused.
#[pyfunction]
pub(crate) fn shim_plan(
    liners: Vec<GivenLiner>,
    shims: Vec<GivenShim>,
    wanted: GivenProtrusion,
) -> Result<Planned, Fault> {
    let liner =
        |l: GivenLiner| Liner { flange_mm: l.flange_mm, depths_mm: l.depths_mm, cupping_mm: l.cupping_mm };
    let shim = |s: GivenShim| Shim { thickness_mm: s.thickness_mm, available: s.available };
    let liners: Vec<Liner> = liners.into_iter().map(liner).collect();
    let shims: Vec<Shim> = shims.into_iter().map(shim).collect();
    let plan = guarded(|| shims::shim_plan(&liners, &shims, &wanted.into()))?;
    let placed = |s: Shimmed| {
        (
            s.mean_depth_mm,
            s.unevenness_mm,
            s.least_shims_mm,
            s.most_shims_mm,
            s.stack,
            s.lowest_mm,
            s.highest_mm,
        )
    };
    let reason = |r: &shims::RuledOut| match *r {
        shims::RuledOut::Uneven { liner } => ("uneven", liner),
        shims::RuledOut::Cupped { liner } => ("cupped", liner),
        shims::RuledOut::NoStack { liner } => ("no_stack", liner),
        shims::RuledOut::Neighbours { liner } => ("neighbours", liner),
        shims::RuledOut::TooFewShims { liner } => ("too_few_shims", liner),
    };
    let reasons = plan.ruled_out.iter().map(reason).collect();
    let liners = plan.liners.into_iter().map(placed).collect();
    Ok((liners, plan.largest_deviation_mm, plan.largest_step_mm, plan.shims_used, reasons, plan.caution))
}

/// Hold every way to bring a block back; `gaugepoint.plan.oversizes` is its public form.
///
/// Parameters
/// ----------
/// block : Block
///     The block, and what is fitted to it.
/// bores : sequence of WornBore
///     What is known of its bores.
/// steps : sequence of Step
///     The sizes of piston that can be had, rising.
///
/// Returns
/// -------
/// tuple
///     Ways, and what each step does.
///
/// Raises
/// ------
/// InputError
///     When something is refused.
#[pyfunction]
pub(crate) fn oversizes(
    block: GivenBlock,
    bores: Vec<GivenWorn>,
    steps: Vec<GivenStep>,
) -> Result<(Vec<Brought>, Vec<Does>), Fault> {
    let bore = |b: GivenWorn| WornBore {
        clean_up_mm: b.clean_up_mm,
        standard_uncertainty_mm: b.standard_uncertainty_mm,
        largest_by_walls_mm: b.largest_by_walls_mm,
        may_be_sleeved: b.may_be_sleeved,
        goes_back: b.goes_back,
    };
    let step = |s: GivenStep| Step {
        oversize_mm: s.oversize_mm,
        price: s.price,
        available: s.available,
        more_mass_g: s.more_mass_g,
    };
    let bores: Vec<WornBore> = bores.into_iter().map(bore).collect();
    let steps: Vec<Step> = steps.into_iter().map(step).collect();
    let found = guarded(|| oversize::oversizes(&block.into(), &bores, &steps))?;
    let does = |c: &oversize::Consequence| (c.bore_mm, c.compression_ratio, c.ring_gap_mm, c.more_mass_g);
    Ok((found.choices.iter().map(brought).collect(), found.consequences.iter().map(does).collect()))
}

fn brought(choice: &Choice) -> Brought {
    let action = |a: &Action| match *a {
        Action::Bore(step) => ("bore", Some(step)),
        Action::Sleeve(step) => ("sleeve", Some(step)),
        Action::Leave => ("leave", None),
    };
    let reason = |r: &RuledOut| match *r {
        RuledOut::NotClean { bore, needed_mm } => {
            ("not_clean", Some(bore), None, Some(needed_mm), None, None)
        }
        RuledOut::WallTooThin { bore, largest_mm } => {
            ("wall_too_thin", Some(bore), None, Some(largest_mm), None, None)
        }
        RuledOut::GasketTooSmall { largest_mm } => {
            ("gasket_too_small", None, None, Some(largest_mm), None, None)
        }
        RuledOut::TooFewPistons { step, needed, available } => {
            ("too_few_pistons", None, Some(step), None, Some(needed), Some(available))
        }
        RuledOut::NoSleeve { bore } => ("no_sleeve", Some(bore), None, None, None, None),
    };
    let actions = choice.actions.iter().map(action).collect();
    (choice.way.word(), choice.price, actions, choice.ruled_out.iter().map(reason).collect())
}

impl From<GivenWantedGap> for WantedGap {
    fn from(w: GivenWantedGap) -> Self {
        let hot = |h: GivenHot| HotRing {
            least_hot_gap_mm: h.least_hot_gap_mm,
            bore_temperature_c: h.bore_temperature_c,
            bore_expansion_per_k: h.bore_expansion_per_k,
            ring_temperature_c: h.ring_temperature_c,
            ring_expansion_per_k: h.ring_expansion_per_k,
        };
        WantedGap {
            least_mm: w.least_mm,
            most_mm: w.most_mm,
            allowance_mm: w.allowance_mm,
            hot: w.hot.map(hot),
        }
    }
}

impl From<GivenFinish> for FinishValue {
    fn from(v: GivenFinish) -> Self {
        let GivenFinish { value, standard_uncertainty, lower, upper } = v;
        FinishValue { value, standard_uncertainty, lower, upper }
    }
}

impl From<GivenProtrusion> for Wanted {
    fn from(w: GivenProtrusion) -> Self {
        Wanted {
            least_mm: w.least_mm,
            most_mm: w.most_mm,
            unevenness_mm: w.unevenness_mm,
            cupping_mm: w.cupping_mm,
            neighbours_mm: w.neighbours_mm,
            most_on_one: w.most_on_one,
        }
    }
}

impl From<GivenBlock> for Block {
    fn from(b: GivenBlock) -> Self {
        Block {
            nominal_mm: b.nominal_mm,
            largest_by_gasket_mm: b.largest_by_gasket_mm,
            sleeve_price: b.sleeve_price,
            boring_price: b.boring_price,
            guard: b.guard,
            chamber: b.chamber.map(Into::into),
            ring_gap_mm: b.ring_gap_mm,
        }
    }
}
