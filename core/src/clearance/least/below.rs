//! Where a section is below a level: every crossing, however near two of them are.

use super::{Arc, Derivatives, Harmonics, Place};
use core::f64::consts::PI;

/// Halvings of a bracket: then it is below a hair of the angle.
const HALVINGS: u32 = 60;

/// What a part of an arc is known for.
enum Known {
    /// nowhere below the level
    Above,
    /// everywhere below it
    Below,
    /// it rises or falls all the way
    OneWay,
    /// more than that may happen
    Open,
}

impl Harmonics {
    /// The parts of an arc where the section is below a level, in degrees, rising, beyond 360 where the arc is.
    ///
    /// A part of the arc is halved until the Taylor polynomial of third order at its middle, with the bound of what follows, says that the section stays
    /// on one side of the level or goes one way. What stays below the level by no more than rounding may be told or not.
    pub(crate) fn below(&self, level_mm: f64, arc: Arc) -> Vec<(f64, f64)> {
        let most = self.most();
        let level = level_mm - self.mean;
        let rounding = 4.0 * most.rounding + f64::EPSILON * (libm::fabs(self.mean) + libm::fabs(level_mm));
        let at = |deg: f64| self.near(Place::of(deg % 360.0));
        let mut open = vec![(arc.from_deg, arc.to_deg)];
        let mut out: Vec<(f64, f64)> = Vec::new();
        while let Some((from, to)) = open.pop() {
            let middle = from + (to - from) / 2.0;
            let here = at(middle);
            match known(&here, level, (to - from) * (PI / 360.0), most.fourth, rounding) {
                Known::Above => {}
                Known::Below => join(&mut out, from, to),
                Known::OneWay => {
                    let (low, high) = (at(from).value < level, at(to).value < level);
                    let edge = || halved(from, to, |deg| (at(deg).value < level) == low);
                    match (low, high) {
                        (true, true) => join(&mut out, from, to),
                        (true, false) => join(&mut out, from, edge()),
                        (false, true) => join(&mut out, edge(), to),
                        (false, false) => {}
                    }
                }
                Known::Open => open.extend([(middle, to), (from, middle)]),
            }
        }
        out
    }
}

/// What is known of a part from its middle, `w` its half-width in radians.
fn known(here: &Derivatives, level: f64, w: f64, fourth: f64, rounding: f64) -> Known {
    let (slope, bend, third) = (libm::fabs(here.first), libm::fabs(here.second), libm::fabs(here.third));
    let strays = w * (slope + w * (bend / 2.0 + w * (third / 6.0 + w * (fourth / 24.0))));
    let over = here.value - level;
    if over >= strays || strays <= rounding {
        return if over < 0.0 { Known::Below } else { Known::Above };
    }
    if -over > strays {
        return Known::Below;
    }
    match slope > w * (bend + w * (third / 2.0 + w * (fourth / 6.0))) {
        true => Known::OneWay,
        false => Known::Open,
    }
}

/// The end of what holds from `low` on and no longer at `high`.
fn halved(low: f64, high: f64, holds: impl Fn(f64) -> bool) -> f64 {
    let (mut low, mut high) = (low, high);
    for _ in 0..HALVINGS {
        let middle = low + (high - low) / 2.0;
        if holds(middle) { low = middle } else { high = middle }
    }
    low
}

/// Adds a part that begins where the last one ends to it.
fn join(parts: &mut Vec<(f64, f64)>, from: f64, to: f64) {
    match parts.last_mut() {
        Some(last) if last.1 >= from => last.1 = to,
        _ => parts.push((from, to)),
    }
}
