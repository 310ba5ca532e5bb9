//! The other way round: which bore, which ovality, which temperature.

use super::onset::Onset;
use super::{HotFit, Parts, Position};
use crate::bounds;
use crate::calc::{Formula, formula};
use crate::error::Error;
use crate::growth::field::{Rise, Scenario};

formula! {
    /// Ovality at 20 C of a piston that runs round; `thrust` is its diameter on the thrust axis at 20 C.
    RoundRunning: ovality ["mm"] = (thrust, eps_thrust, eps_pin) => thrust - thrust * (1.0 + eps_thrust) / (1.0 + eps_pin);
        source "equal running diameters on both axes, solved for the pin axis at 20 C";
}

/// Most steps of Newton's method on the bore: the smallest clearance is all but straight in it.
const MOST_STEPS: u32 = 30;

/// What was looked for.
#[derive(Debug, Clone, PartialEq)]
pub enum Answer {
    /// It exists.
    Found(f64),
    /// It does not, and why.
    NoSolution(String),
}

/// Ovality at one height.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OvalityAt {
    /// At 20 C.
    pub cold_mm: f64,
    /// In the running engine.
    pub running_mm: f64,
    /// At 20 C, of a piston that runs round.
    pub round_running_mm: f64,
}

impl HotFit {
    /// Size of the bore at 20 C for a running clearance at the gauge point, over the diameter.
    ///
    /// # Errors
    /// As [`HotFit::at`].
    pub fn bore_for_running_clearance(&self, wanted_mm: f64, position: Position) -> Result<Answer, Error> {
        bounds::CLEARANCE.check("wanted_mm", wanted_mm)?;
        self.bore_for(wanted_mm, |fit| fit.running_at_gauge_point(position))
    }

    /// Size of the bore at 20 C for a smallest clearance of the skirt, on one side.
    ///
    /// # Errors
    /// As [`HotFit::smallest`].
    pub fn bore_for_smallest_clearance(&self, wanted_mm: f64) -> Result<Answer, Error> {
        bounds::CLEARANCE.check("wanted_mm", wanted_mm)?;
        // twice, so that it moves with the diameter
        self.bore_for(2.0 * wanted_mm, |fit| Ok(2.0 * fit.smallest(0)?.clearance_mm))
    }

    /// Newton's method on the bore: every clearance grows by all but as much as the bore does.
    fn bore_for(&self, wanted_mm: f64, of: impl Fn(&HotFit) -> Result<f64, Error>) -> Result<Answer, Error> {
        let mut bore = self.parts.bore.diameter_mm;
        for _ in 0..MOST_STEPS {
            if bounds::BORE.judge(bore) == bounds::Verdict::Impossible {
                return Ok(Answer::NoSolution(format!("the bore would have {bore} mm")));
            }
            let missing = wanted_mm - of(&self.with_bore(bore)?)?;
            if missing.abs() <= 1e-10 {
                return Ok(Answer::Found(bore));
            }
            bore += missing;
        }
        Ok(Answer::NoSolution("no bore was found that has this clearance".to_owned()))
    }

    fn with_bore(&self, diameter_mm: f64) -> Result<HotFit, Error> {
        let mut parts: Parts = self.parts.clone();
        parts.bore.diameter_mm = diameter_mm;
        HotFit::at_rise(parts, self.rise)
    }

    /// Temperature of the thrust side at the gauge point at which the piston first touches, in a bore that leaves it a clearance on the bench, over
    /// the diameter.
    ///
    /// # Errors
    /// As [`HotFit::onset`].
    pub fn piston_temperature_for_bench_clearance(
        &self,
        bench_mm: f64,
        scenario: Scenario,
        touching_mm: f64,
    ) -> Result<Answer, Error> {
        bounds::CLEARANCE.check("bench_mm", bench_mm)?;
        let fit = self.with_bore(self.parts.piston_diameter_mm + bench_mm)?;
        Ok(match fit.onset(scenario, touching_mm)? {
            Onset::Touches(contact) => Answer::Found(fit.gauge_thrust_c(contact.factor)),
            Onset::TouchesCold => Answer::NoSolution("it touches at 20 C already".to_owned()),
            Onset::NoContact { factor, stopped_by, .. } => {
                let reached = fit.gauge_thrust_c(factor);
                Answer::NoSolution(format!(
                    "no contact up to {reached:.1} C on the thrust side: {stopped_by}"
                ))
            }
        })
    }

    /// Temperature of the thrust side at the gauge point with a factor on the rise.
    #[must_use]
    pub fn gauge_thrust_c(&self, factor: f64) -> f64 {
        let field = self.parts.piston_field.thrust_c.value(self.parts.piston.gauge_height_mm);
        Rise { piston: factor, bore: factor }.piston_c(field)
    }

    /// Ovality of a surface at a height.
    ///
    /// # Errors
    /// When there is no such surface, or it does not reach the height.
    pub fn ovality(&self, index: usize, height_mm: f64) -> Result<OvalityAt, Error> {
        self.surface(index)?.0.check_height(height_mm)?;
        let across = |of: &dyn Fn(f64) -> f64, angle: f64| of(angle) + of(angle + 180.0);
        let cold = |angle: f64| self.piston_cold_mm(index, angle, height_mm);
        let hot = |angle: f64| self.piston_hot_mm(index, angle, height_mm);
        let thrust = across(&cold, 0.0);
        let strain = |cosine: f64| self.strain_at_rise(index, height_mm, cosine, self.rise);
        Ok(OvalityAt {
            cold_mm: thrust - across(&cold, 90.0),
            running_mm: across(&hot, 0.0) - across(&hot, 90.0),
            round_running_mm: RoundRunning::evaluate([thrust, strain(1.0), strain(-1.0)]),
        })
    }
}
