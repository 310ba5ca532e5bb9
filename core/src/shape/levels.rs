//! The shape of a bore from the diameters that were read in it.
//!
//! At each depth the mean of the diameters and, from evenly spaced axes, the order 2 of the radius: two axes hold the one phase that they
//! lie on, three or more both. Diameters show no odd order, and higher even ones are left out. Between two depths the shape is straight,
//! above the first and below the last it is as there: nothing was read that would say more.

use super::angle::{as_number, turned};
use super::bore::BoreShape;
use super::curve::Curve;
use super::{BorePlace, depths, same};
use crate::calc::{Calc, Fold, Measured, formula};
use crate::error::Error;
use crate::job::Given;

formula! {
    /// One more diameter `d` in a part of the order 2 of the radius, with its weight.
    SecondOrder: a ["mm"] = (a0, w, d) => a0 + w * d; source "Fourier sum over evenly spaced axes, on the radius";
    /// Radius at an angle, at a depth that was read.
    RadiusRead: r ["mm"] = (d, a, cos_2, b, sin_2) => d / 2.0 + a * cos_2 + b * sin_2; source "mean and order 2 of the radius";
    /// Radius at a depth where the bore counts as round.
    RadiusOfRound: r ["mm"] = (d) => d / 2.0; source "definition";
    /// Radius at a depth `y` between two that were read.
    BetweenDepths: r ["mm"] = (r0, r1, y, y0, y1) => r0 + (r1 - r0) * (y - y0) / (y1 - y0); source "straight line between two depths that were read";
}

/// Name of the rule, as the report tells it.
pub(crate) const RULE: &str = "mean diameter and order 2 at each depth, straight between depths";

/// A bore at one depth.
#[derive(Debug, Clone)]
struct Level {
    depth: Given,
    /// over the axes that were read
    diameter: Measured,
    /// of the radius; none where the axes do not show it
    second: Option<[Measured; 2]>,
}

/// A bore from depth to depth.
#[derive(Debug, Clone)]
pub(crate) struct Levels {
    first: Level,
    /// rising
    deeper: Vec<Level>,
}

impl Levels {
    /// None when nothing was read.
    pub(crate) fn of(calc: &mut Calc, places: &[BorePlace]) -> Option<Self> {
        let mut levels = Vec::new();
        for depth in depths(places) {
            let here: Vec<&BorePlace> = places.iter().filter(|p| same(p.depth.value, depth)).collect();
            levels.push(Level::of(calc, &here)?);
        }
        let mut levels = levels.into_iter();
        Some(Levels { first: levels.next()?, deeper: levels.collect() })
    }

    fn all(&self) -> impl Iterator<Item = &Level> {
        [&self.first].into_iter().chain(&self.deeper)
    }

    /// The shape about a size, down to the end of the bore.
    pub(crate) fn shape(&self, size_mm: f64, end_mm: f64) -> Result<BoreShape, Error> {
        let deviation_mm = self.curve(end_mm, |l| (l.diameter.value() - size_mm) / 2.0)?;
        let shape = BoreShape { deviation_mm, ..BoreShape::round(size_mm)?.with_end(end_mm)? };
        if self.all().all(|l| l.second.is_none()) {
            return Ok(shape);
        }
        let [cosine, sine] = [|[a, _]: &[Measured; 2]| a.value(), |[_, b]: &[Measured; 2]| b.value()]
            .map(|part| self.curve(end_mm, move |l| l.second.as_ref().map_or(0.0, part)));
        shape.with_order(2, cosine?, sine?)
    }

    /// A quantity over depth: above the first depth as there, below the last one as there.
    fn curve(&self, end_mm: f64, of: impl Fn(&Level) -> f64) -> Result<Curve, Error> {
        let (first, Some(last)) = (&self.first, self.deeper.last()) else {
            return Ok(Curve::constant(of(&self.first)));
        };
        let top = (first.depth.value > 0.0).then(|| (0.0, of(first)));
        let bottom = (last.depth.value < end_mm).then(|| (end_mm, of(last)));
        let read = self.all().map(|l| (l.depth.value, of(l)));
        let (places, values): (Vec<f64>, Vec<f64>) = top.into_iter().chain(read).chain(bottom).unzip();
        Curve::lines(&places, &values)
    }

    /// Radius at 20 C at a depth and an angle, with every source of the readings behind it.
    pub(crate) fn radius(&self, calc: &mut Calc, depth_mm: f64, angle_deg: f64) -> Measured {
        let next = self.deeper.iter().position(|l| l.depth.value > depth_mm);
        let upper = self.all().take_while(|l| l.depth.value <= depth_mm).last();
        let (Some(upper), Some(lower)) = (upper, next.and_then(|k| self.deeper.get(k))) else {
            // above the first or below the last
            return upper.unwrap_or(&self.first).radius(calc, angle_deg);
        };
        let (above, below) = (upper.radius(calc, angle_deg), lower.radius(calc, angle_deg));
        let y = calc.constant("y", depth_mm, "mm", "depth of the place").into();
        let [y0, y1] = [("y0", upper), ("y1", lower)].map(|(s, l)| calc.given(s, &l.depth).into());
        calc.apply(BetweenDepths, [&above, &below, &y, &y0, &y1])
    }

    /// What the readings say and leave open.
    pub(crate) fn notes(&self) -> Vec<String> {
        let first = &self.first.depth.text;
        let mut out = vec![match self.deeper.last() {
            None => format!("The bore was read at {first} alone: it counts as straight."),
            Some(last) => format!(
                "The bore is as it was read: {RULE}; above {first} as there, below {} as there.",
                last.depth.text
            ),
        }];
        let round: Vec<&str> =
            self.all().filter(|l| l.second.is_none()).map(|l| l.depth.text.as_str()).collect();
        if !round.is_empty() {
            out.push(format!(
                "At {} the axes that were read are not two or more that part the half turn evenly: the bore counts as round there.",
                round.join(", ")
            ));
        }
        out
    }
}

impl Level {
    fn of(calc: &mut Calc, places: &[&BorePlace]) -> Option<Self> {
        let first = places.first()?;
        calc.heading(|| format!("shape of the bore at {}", first.depth.text));
        let sizes: Vec<&Measured> = places.iter().map(|p| &p.size).collect();
        let diameter = calc.fold(Fold::Mean, "d", &sizes)?;
        let second = evenly_spaced(places).then(|| second_order(calc, places));
        Some(Level { depth: first.depth.clone(), diameter, second })
    }

    fn radius(&self, calc: &mut Calc, angle_deg: f64) -> Measured {
        let Some([a, b]) = &self.second else {
            return calc.apply(RadiusOfRound, [&self.diameter]);
        };
        let (cosine, sine) = turned(2, angle_deg);
        let [cosine, sine] = [("cos_2", cosine), ("sin_2", sine)]
            .map(|(s, v)| calc.constant(s, v, "1", "angle of the place").into());
        calc.apply(RadiusRead, [&self.diameter, a, &cosine, b, &sine])
    }
}

/// Do the axes part the half turn evenly?
fn evenly_spaced(places: &[&BorePlace]) -> bool {
    let mut axes: Vec<f64> = places.iter().map(|p| p.axis.value % 180.0).collect();
    axes.sort_by(f64::total_cmp);
    let apart = 180.0 / as_number(axes.len());
    axes.len() > 1 && axes.windows(2).all(|w| matches!(w, [a, b] if same(b - a, apart)))
}

/// Cosine and sine part of the order 2 of the radius.
fn second_order(calc: &mut Calc, places: &[&BorePlace]) -> [Measured; 2] {
    // half of the part of the diameter; on two axes only one phase is seen, and each sum holds half as much
    let count = as_number(places.len());
    let share = if places.len() == 2 { 0.5 / count } else { 1.0 / count };
    let part = |calc: &mut Calc, symbol: &str, of: fn((f64, f64)) -> f64| {
        let mut sum = Measured::from(calc.constant(symbol, 0.0, "mm", "a sum begins at nothing"));
        for place in places {
            let w = share * of(turned(2, place.axis.value));
            let w =
                calc.constant("w", w, "1", "cosine or sine of twice the axis, shared among the axes").into();
            sum = calc.apply(SecondOrder, [&sum, &w, &place.size]);
        }
        sum
    };
    [part(calc, "a", |(cosine, _)| cosine), part(calc, "b", |(_, sine)| sine)]
}
