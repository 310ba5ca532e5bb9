//! From the piston that is fitted to what the machine is set to: finish size, boring size, stock of the hone, and what the dial must read on a warm
//! block.
//!
#![doc = include_str!("../../docs/machining.md")]

use crate::bounds;
use crate::calc::{Formula, formula};
use crate::error::{Error, ErrorKind};
use crate::size::{BoreGaugeSize, Condition, SetOnRing};

formula! {
    /// Size of a bore for a piston.
    FinishSize: finish ["mm"] = (piston, clearance) => piston + clearance; source "definition; diametral";
    /// Size to which a bore is bored before it is honed.
    BoringSize: boring ["mm"] = (piston, clearance, honing) => piston + clearance - honing;
        source "published form of makers: piston as measured, plus clearance, less the honing allowance";
    /// What the dial of a bore gauge must read in a bore of a size at 20 C, set to a distance.
    DialOfDistance: dial ["mm"] = (size, s, eps_set, eps_used, eps_bore) => size * (1.0 + eps_bore) - s * (1.0 + eps_used) / (1.0 + eps_set);
        source "comparison with a setting, each part at its temperature, solved for the deviation";
    /// Lower end of the tolerance of a finish size.
    FinishLower: lower ["mm"] = (finish, tolerance) => finish - tolerance; source "definition";
    /// Its upper end.
    FinishUpper: upper ["mm"] = (finish, tolerance) => finish + tolerance; source "definition";
    /// Stock that is still on a bore, on the diameter.
    Remaining: stock ["mm"] = (finish, size) => finish - size; source "definition";
}

/// What a bore is machined to.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BoreSizes {
    /// Size at 20 C when it is finished, in mm.
    pub finish_mm: f64,
    /// Size at 20 C after boring, in mm.
    pub boring_mm: f64,
}

/// Finish size and boring size of the bore for a piston as it was measured, in mm at 20 C.
///
/// `clearance_mm` is wanted at 20 C, `honing_mm` is left for the hone, on the diameter. Makers print 0.01 mm to 0.02 mm, shops leave 0.05 mm to 0.1 mm.
///
/// # Errors
/// When a number is not finite or impossible.
pub fn bore_sizes(piston_mm: f64, clearance_mm: f64, honing_mm: f64) -> Result<BoreSizes, Error> {
    bounds::PISTON.check("piston_mm", piston_mm)?;
    bounds::CLEARANCE.check("clearance_mm", clearance_mm)?;
    bounds::STOCK.check("honing_mm", honing_mm)?;
    Ok(BoreSizes {
        finish_mm: FinishSize::evaluate([piston_mm, clearance_mm]),
        boring_mm: BoringSize::evaluate([piston_mm, clearance_mm, honing_mm]),
    })
}

/// A gauge that was set, and the bore that it goes into.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WarmGauging {
    /// Size at 20 C of the ring that the gauge was set on, in mm.
    pub setting_mm: f64,
    /// The ring, when the gauge was set.
    pub ring: Condition,
    /// The gauge, when it was set.
    pub set: Condition,
    /// The gauge in the bore.
    pub used: Condition,
    /// The wall of the bore.
    pub block: Condition,
}

impl WarmGauging {
    /// The distance that the gauge was set to, and the strains of the gauge when it was set, when it is used, and of the bore.
    fn distance_and_strains(&self) -> Result<(f64, [f64; 3]), Error> {
        let setting = bounds::STANDARD_SIZE.check("setting_mm", self.setting_mm)?;
        let eps_ring = self.ring.strain(["ring_temperature_c", "ring_expansion_per_k"])?;
        let eps_set = self.set.strain(["set_temperature_c", "set_expansion_per_k"])?;
        let eps_used = self.used.strain(["used_temperature_c", "used_expansion_per_k"])?;
        let eps_bore = self.block.strain(["block_temperature_c", "block_expansion_per_k"])?;
        Ok((SetOnRing::evaluate([setting, eps_ring]), [eps_set, eps_used, eps_bore]))
    }
}

/// Size of a bore at 20 C, in mm, from what the dial of a bore gauge reads above its setting when the block is warm.
///
/// # Errors
/// When a number is not finite or impossible.
pub fn bore_size_at_20_mm(deviation_mm: f64, gauging: &WarmGauging) -> Result<f64, Error> {
    bounds::DEVIATION.check("deviation_mm", deviation_mm)?;
    let (distance, [eps_set, eps_used, eps_bore]) = gauging.distance_and_strains()?;
    Ok(BoreGaugeSize::evaluate([distance, deviation_mm, eps_set, eps_used, eps_bore]))
}

/// What the dial of a bore gauge must read, in mm above its setting, when the bore has a size at 20 C and the block is warm.
///
/// # Errors
/// When a number is not finite or impossible, and [`ErrorKind::OutOfRange`] of the field `setting_mm` for a reading beyond the travel of a gauge.
pub fn dial_reading_mm(size_mm: f64, gauging: &WarmGauging) -> Result<f64, Error> {
    bounds::BORE.check("size_mm", size_mm)?;
    let (distance, [eps_set, eps_used, eps_bore]) = gauging.distance_and_strains()?;
    let dial = DialOfDistance::evaluate([size_mm, distance, eps_set, eps_used, eps_bore]);
    let (lower, upper) = bounds::DEVIATION.possible;
    if dial < lower || dial > upper {
        let reason = "the setting is not near the size: the dial does not reach so far";
        let error = Error::new(ErrorKind::OutOfRange, dial.to_string(), reason).value(dial);
        return Err(error.limits(lower, upper, "mm").at("setting_mm"));
    }
    Ok(dial)
}

/// How a size found at a finish check stands to its target.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum FinishCheck {
    /// Within the tolerance of the target.
    Met,
    /// So much is still to be honed off the diameter, in mm, to the middle of the tolerance.
    HoneOn {
        /// In mm.
        stock_mm: f64,
    },
    /// Too large by so much, in mm: the next step, or another piston.
    TooLarge {
        /// In mm.
        by_mm: f64,
    },
}

/// Holds a bore as it was found, at 20 C, against its finish size and tolerance (half the width), in mm.
///
/// # Errors
/// When a number is not finite or impossible.
pub fn finish_check(size_mm: f64, finish_mm: f64, tolerance_mm: f64) -> Result<FinishCheck, Error> {
    bounds::BORE.check("size_mm", size_mm)?;
    bounds::BORE.check("finish_mm", finish_mm)?;
    bounds::SIZE_UNCERTAINTY.check("tolerance_mm", tolerance_mm)?;
    let stock_mm = Remaining::evaluate([finish_mm, size_mm]);
    Ok(match stock_mm {
        s if s > tolerance_mm => FinishCheck::HoneOn { stock_mm },
        s if s < -tolerance_mm => FinishCheck::TooLarge { by_mm: -stock_mm },
        _ => FinishCheck::Met,
    })
}

/// An order of boring in which no two neighbours follow each other, so that the heat spreads; cylinders are counted from 1 along the block.
///
/// The odd ones, then the even ones, or beginning with the second one for four. Of three or fewer no such order exists: the order along the block, and
/// the block must cool between. Common practice, no source.
///
/// # Errors
/// [`ErrorKind::OutOfRange`] for no cylinder or more than 24 in a bank.
pub fn boring_order(cylinders: usize) -> Result<Vec<usize>, Error> {
    if !(1..=24).contains(&cylinders) {
        let reason = "a bank has 1 to 24 cylinders";
        let error = Error::new(ErrorKind::OutOfRange, cylinders.to_string(), reason);
        return Err(error.limits(1.0, 24.0, "1").at("cylinders"));
    }
    let every_second = |first: usize| (first..=cylinders).step_by(2);
    Ok(match cylinders {
        // the one order of four, and its reverse
        4 => every_second(2).chain(every_second(1)).collect(),
        0..=3 => (1..=cylinders).collect(),
        _ => every_second(1).chain(every_second(2)).collect(),
    })
}
