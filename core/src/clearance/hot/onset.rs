//! First contact: how far the temperatures can rise until something touches.
//!
//! The smallest clearance `m(k)` is the least of the clearances at all places, and each of these bends little with the factor `k`: its second derivative is
//! at most `B`, the strain's own curvature times the square of the rise, and where a law has a kink its slope jumps by at most `J`. So `m` between two
//! factors is above the chord less `(B w / 2 + J)` times the way to the nearer end. An interval where that stays above what counts as touching has no contact;
//! where it does not, the interval is divided. So the first contact is found, and none before it is skipped.

use super::{HotFit, Place};
use crate::error::Error;
use crate::growth::Piecewise;
use crate::growth::field::{Rise, Scenario};
use crate::shape::curve::Curve;
use crate::shape::least::{larger, quotient, smaller};
use crate::size::REFERENCE_TEMPERATURE_C;

/// Largest factor that is looked at.
const LARGEST: f64 = 8.0;
/// Factors closer than this are one: the smallest clearance itself is known to a nanometre.
const SAME: f64 = 1e-10;
/// Most factors that are looked at; then the search says that it proved nothing.
const MOST_FACTORS: u32 = 4096;
/// Step of the slope in the factor, a power of two.
const SLOPE_STEP: f64 = 1.0 / 4096.0;

/// How far the temperatures can rise.
#[derive(Debug, Clone, PartialEq)]
pub enum Onset {
    /// Something touches.
    Touches(Contact),
    /// Something touches with the piston at 20 C already.
    TouchesCold,
    /// Nothing touches up to a factor.
    NoContact {
        /// The largest that was looked at.
        factor: f64,
        /// What ends there.
        stopped_by: String,
        /// Whether every factor below was excluded.
        proven: bool,
    },
}

/// The first contact.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Contact {
    /// Factor on the rise of the temperatures.
    pub factor: f64,
    /// Where it touches.
    pub place: Place,
    /// Change of the clearance there with the factor, in mm; negative.
    pub slope_mm: f64,
    /// Whether every smaller factor was excluded.
    pub proven: bool,
}

/// The smallest clearance at a factor.
#[derive(Debug, Clone, Copy)]
struct Seen {
    k: f64,
    gap: f64,
    place: Place,
}

impl HotFit {
    /// The first contact on the way up from 20 C: the least factor at which the smallest clearance of all surfaces is `touching_mm`, on one side.
    ///
    /// # Errors
    /// As [`HotFit::smallest`].
    pub fn onset(&self, scenario: Scenario, touching_mm: f64) -> Result<Onset, Error> {
        super::TOUCHING.check("touching_mm", touching_mm)?;
        let (highest, stopped_by) = self.highest(scenario);
        let (bend, jump) = self.most_bent_in_rise(scenario, highest);
        let mut way = Way { fit: self, scenario, touching_mm, bend, jump, factors: 0, proven: true };
        let first = way.seen(0.0)?;
        if first.gap <= 0.0 {
            return Ok(Onset::TouchesCold);
        }
        let (before, contact) = way.up(first, highest)?;
        let earlier = way.first(first, before)?;
        Ok(match earlier.or(contact) {
            Some(seen) => Onset::Touches(Contact {
                factor: seen.k,
                place: seen.place,
                slope_mm: way.slope(&seen),
                proven: way.proven,
            }),
            None => Onset::NoContact { factor: highest, stopped_by, proven: way.proven },
        })
    }

    /// Largest factor at which every law holds.
    #[must_use]
    pub fn highest_factor(&self, scenario: Scenario) -> f64 {
        self.highest(scenario).0
    }

    /// Largest factor at which every law holds, and what ends there.
    fn highest(&self, scenario: Scenario) -> (f64, String) {
        let mut out = (LARGEST, format!("{LARGEST} times the rise was the most that was looked at"));
        let mut limit = |law: &Piecewise, curve: &Curve, reach: (f64, f64), of: &str| {
            let (low, high) = law.range();
            for t in extremes(curve, reach) {
                let rise = t - REFERENCE_TEMPERATURE_C;
                let end = if rise > 0.0 { high } else { low };
                let k = (rise != 0.0).then(|| quotient(end - REFERENCE_TEMPERATURE_C, rise));
                if let Some(k) = k.filter(|k| *k < out.0) {
                    out = (k, format!("the law of expansion of the {of} ends at {end} C"));
                }
            }
        };
        for (surface, growth) in self.parts.piston.surfaces.iter().zip(&self.parts.growth) {
            for curve in [&self.parts.piston_field.thrust_c, &self.parts.piston_field.pin_c] {
                limit(&growth.law, curve, (surface.from_mm, surface.to_mm), &surface.name);
            }
        }
        if scenario == Scenario::PistonAndBore {
            let reach = (self.bore.from_mm, self.bore.to_mm);
            limit(&self.parts.bore_law, &self.parts.bore_field.wall_c, reach, "bore");
        }
        out
    }

    /// Bounds of the second derivative of a clearance by the factor, and of the jumps of its slope.
    fn most_bent_in_rise(&self, scenario: Scenario, highest: f64) -> (f64, f64) {
        let mut bend = 0.0;
        let mut jump = 0.0;
        let add = |law: &Piecewise, curve: &Curve, reach: (f64, f64), radius: f64| {
            let rise = extremes(curve, reach).map(|t| t - REFERENCE_TEMPERATURE_C);
            let most = rise.iter().fold(0.0, |m, r| larger(m, libm::fabs(*r)));
            let end = |r: f64| Rise { piston: highest, bore: highest }.piston_c(REFERENCE_TEMPERATURE_C + r);
            let ends = [REFERENCE_TEMPERATURE_C, end(rise[0]), end(rise[1])];
            let low = ends.iter().fold(f64::INFINITY, |m, t| smaller(m, *t));
            let high = ends.iter().fold(f64::NEG_INFINITY, |m, t| larger(m, *t));
            let (falls, rises) = law.jumps(low, high);
            let [_, _, (least_bent, most_bent)] = law.ranges(low, high);
            let bend = radius * larger(-least_bent, most_bent) * most * most;
            (bend, radius * falls * most, radius * rises * most)
        };
        for (surface, growth) in self.parts.piston.surfaces.iter().zip(&self.parts.growth) {
            let ratio = larger(growth.ratio_thrust, growth.ratio_pin);
            for curve in [&self.parts.piston_field.thrust_c, &self.parts.piston_field.pin_c] {
                let radius = ratio * self.parts.piston_diameter_mm;
                // a clearance sags where the piston grows less steeply from a kink on
                let (b, j, _) = add(&growth.law, curve, (surface.from_mm, surface.to_mm), radius);
                (bend, jump) = (larger(bend, b), larger(jump, j));
            }
        }
        if scenario == Scenario::PistonAndBore {
            let reach = (self.bore.from_mm, self.bore.to_mm);
            let radius = self.parts.bore.diameter_mm;
            let (b, _, j) = add(&self.parts.bore_law, &self.parts.bore_field.wall_c, reach, radius);
            bend += b;
            jump += j;
        }
        (bend, jump)
    }
}

/// The way up from 20 C.
struct Way<'a> {
    fit: &'a HotFit,
    scenario: Scenario,
    touching_mm: f64,
    bend: f64,
    jump: f64,
    factors: u32,
    proven: bool,
}

impl Way<'_> {
    fn seen(&mut self, k: f64) -> Result<Seen, Error> {
        self.factors += 1;
        let rise = self.scenario.rise(k);
        let mut least = self.fit.smallest_at_rise(0, rise, None)?;
        for surface in 1..self.fit.surfaces.len() {
            let found = self.fit.smallest_at_rise(surface, rise, None)?;
            if found.clearance_mm < least.clearance_mm {
                least = found;
            }
        }
        Ok(Seen { k, gap: least.clearance_mm - self.touching_mm, place: least.place })
    }

    /// The first contact between two factors, of which the first has none.
    fn first(&mut self, a: Seen, b: Seen) -> Result<Option<Seen>, Error> {
        if b.gap <= 0.0 {
            let (before, contact) = self.between(a, b)?;
            return Ok(Some(self.first(a, before)?.unwrap_or(contact)));
        }
        if self.clear(&a, &b) {
            return Ok(None);
        }
        if b.k - a.k <= SAME || self.factors >= MOST_FACTORS {
            self.proven = false;
            return Ok(None);
        }
        let middle = self.seen(a.k + (b.k - a.k) / 2.0)?;
        match self.first(a, middle)? {
            Some(contact) => Ok(Some(contact)),
            None => self.first(middle, b),
        }
    }

    /// Is there certainly no contact between two factors that have none?
    fn clear(&self, a: &Seen, b: &Seen) -> bool {
        let width = b.k - a.k;
        let sag = self.bend * width / 2.0 + self.jump;
        let lowest = smaller(a.gap, b.gap);
        // it sags by at most a quarter of that times the width, and no steeper than that from either end
        let fall = libm::fabs(a.gap - b.gap);
        lowest > sag * width / 4.0 || fall >= sag * width
    }

    /// Up from a factor without contact by Newton's method: the last factor without and the first with one that it meets, or the highest without.
    fn up(&mut self, a: Seen, highest: f64) -> Result<(Seen, Option<Seen>), Error> {
        let mut low = a;
        while low.k < highest {
            if self.factors >= MOST_FACTORS {
                self.proven = false;
                break;
            }
            let next = self.seen(smaller(highest, larger(self.tangent(&low), low.k + SAME / 2.0)))?;
            if next.gap <= 0.0 {
                let (before, contact) = self.between(low, next)?;
                return Ok((before, Some(contact)));
            }
            low = next;
        }
        Ok((low, None))
    }

    /// Encloses a contact between a factor without and one with it: Newton's method from the nearer end, and halves at every fourth step, so that
    /// it ends.
    fn between(&mut self, a: Seen, b: Seen) -> Result<(Seen, Seen), Error> {
        let (mut low, mut high) = (a, b);
        let mut steps = 0_u32;
        while high.k - low.k > SAME && self.factors < MOST_FACTORS {
            steps += 1;
            let guess = match (steps % 4, low.gap < -high.gap) {
                (0, _) => low.k + (high.k - low.k) / 2.0,
                (_, true) => self.tangent(&low),
                (_, false) => self.tangent(&high),
            };
            // kept off the ends, so that the interval always shrinks, and closes around a contact that was met
            let edge = SAME / 2.0;
            let middle = self.seen(smaller(larger(guess, low.k + edge), high.k - edge))?;
            if middle.gap > 0.0 { low = middle } else { high = middle }
        }
        Ok((low, high))
    }

    /// Where the clearance would be used up along its tangent at a factor; without end where it does not fall.
    fn tangent(&self, at: &Seen) -> f64 {
        let slope = self.slope(at);
        // the factor moves by less than the largest one
        match libm::fabs(at.gap) < -slope * LARGEST {
            true => at.k - quotient(at.gap, slope),
            false => f64::INFINITY,
        }
    }

    /// Change with the factor of the clearance at the place where it is least: the least clearance changes by as much.
    fn slope(&self, at: &Seen) -> f64 {
        let (below, above) = (at.k - SLOPE_STEP, at.k + SLOPE_STEP);
        let gap = |k: f64| self.fit.clearance_at_rise(&at.place, self.scenario.rise(k));
        (gap(above) - gap(below)) / (above - below)
    }
}

/// Smallest and largest value of a curve over a reach: at its ends or at a row.
fn extremes(curve: &Curve, (from, to): (f64, f64)) -> [f64; 2] {
    let rows = curve.pieces().iter().map(|p| p.from).filter(|x| *x > from && *x < to);
    let places = rows.chain([from, to].into_iter().filter(|x| x.is_finite()));
    let first = curve.value(if from.is_finite() { from } else { 0.0 });
    places.map(|x| curve.value(x)).fold([first, first], |[low, high], t| [smaller(low, t), larger(high, t)])
}
