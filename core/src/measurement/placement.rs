//! How a gauge stands on a part: tilt, off the axis of an oval skirt, at another height, pressing the skirt in.
//!
//! Tilt and off-axis are even in their angle. An angle within `+-a`, all of it equally likely, leaves
//! `g = 1 - cos t` with the mean `1 - sin(a) / a` and the variance `1/2 + sin(2 a) / (4 a) - (sin(a) / a)^2`. The formulas here are
//! the power series of these, because the differences lose all digits at small angles.

use super::half_width;
use crate::bounds;
use crate::calc::{Calc, Figure, Measured, SourceId, formula};
use crate::error::Error;
use crate::job::{Entry, Given, Warning};
use crate::measure::document::{self as doc, Treatment};
use crate::measurement::distribution::Distribution;
use crate::quantity::Angle;

formula! {
    /// An angle in radians.
    Radians: a ["rad"] = (degrees, pi) => degrees * pi / 180.0; source "definition of the degree";
    /// Twice an angle.
    Doubled: a2 ["rad"] = (a) => a * 2.0; source "the diameter of an oval repeats with every half turn";
    /// `1 - cos x`; within 1e-16 of itself for angles to 30 degrees.
    Versine: g ["1"] = (x) => x * x / 2.0 * (1.0 - x * x / 12.0 * (1.0 - x * x / 30.0 * (1.0 - x * x / 56.0 * (1.0 - x * x / 90.0 * (1.0 - x * x / 132.0 * (1.0 - x * x / 182.0 * (1.0 - x * x / 240.0)))))));
        source "power series of the cosine, to the order 16";
    /// Mean of `1 - cos x` for `x` anywhere within `+-a`; within 1e-16 of itself to 30 degrees.
    MeanVersine: g ["1"] = (a) => a * a / 6.0 * (1.0 - a * a / 20.0 * (1.0 - a * a / 42.0 * (1.0 - a * a / 72.0 * (1.0 - a * a / 110.0 * (1.0 - a * a / 156.0 * (1.0 - a * a / 210.0 * (1.0 - a * a / 272.0)))))));
        source "power series of 1 - sin(a) / a, to the order 16";
    /// Standard deviation of `1 - cos x` for `x` anywhere within `+-a`; within 1e-14 of itself to 30 degrees.
    VersineDeviation: s ["1"] = (a) => a * a * ((1.0 - a * a / 7.0 * (1.0 - a * a / 15.0 * (1.0 - 4.0 * a * a / 99.0 * (1.0 - 5.0 * a * a / 182.0 * (1.0 - a * a / 50.0 * (1.0 - 7.0 * a * a / 459.0 * (1.0 - 8.0 * a * a / 665.0))))))) / 45.0).sqrt();
        source "power series of the variance of cos x, to the order 18";
    /// A size across which the gauge stood upright.
    Upright: size ["mm"] = (size_tilted, g) => size_tilted - size_tilted * g; source "a tilted gauge spans size / cos t";
    /// By how much a tilted gauge reads too large.
    TiltBias: b ["mm"] = (size_tilted, g) => size_tilted * g; source "size / cos t less size";
    /// The size on the major axis.
    OnAxis: size ["mm"] = (size_off, ovality, g2) => size_off + ovality / 2.0 * g2;
        source "oval of two lobes: off its axis by p it is smaller by ovality / 2 (1 - cos 2 p)";
    /// By how much a reading off the axis is too large: it is too small.
    OffAxisBias: b ["mm"] = (ovality, g2) => -(ovality / 2.0 * g2); source "oval of two lobes";
    /// The size that is not pressed in.
    Unpressed: size ["mm"] = (size_pressed, force, stiffness) => size_pressed + force / stiffness / 1000.0;
        source "a skirt gives way by force / stiffness; 1000 um are 1 mm";
    /// By how much a pressed part reads too large: it is too small.
    ForceBias: b ["mm"] = (force, stiffness) => -(force / stiffness / 1000.0); source "force / stiffness; 1000 um are 1 mm";
    /// Standard uncertainty from a height known to within `+-h` on a profile of this slope.
    HeightUncertainty: u ["mm"] = (slope, h) => slope / 1000.0 * (h * h / 3.0).sqrt();
        source "the profile as a straight line; JCGM 100:2008, 4.3.7";
}

/// An effect whose mean is not zero, as the report tells it.
#[derive(Debug, Clone)]
pub(crate) struct Effect {
    pub(crate) source: String,
    /// indicated less true
    pub(crate) mean: Figure,
    pub(crate) treatment: Treatment,
    pub(crate) path: String,
}

/// Takes the effects of placement off one reading.
pub(crate) struct Placement<'c> {
    pub(crate) calc: &'c mut Calc,
    pub(crate) warnings: &'c mut Vec<Warning>,
    /// the reading in words
    pub(crate) of: &'c str,
    pub(crate) effects: Vec<Effect>,
}

/// `1 - cos` of an angle that is only known to within limits.
struct Even {
    /// with the mean it is corrected by: 0 when the effect is only stated
    g: Measured,
    mean: Figure,
}

impl Placement<'_> {
    /// Read without finding the turning point, by a gauge tilted within a half-width.
    pub(crate) fn tilt(&mut self, size: Measured, tilt: Option<&doc::Tilt>) -> Result<Measured, Error> {
        let Some(tilt) = tilt else {
            return Ok(size);
        };
        let half_width = tilt.half_width.read(&bounds::TILT, self.warnings)?;
        let name = format!("tilt of the gauge on {}", self.of);
        let a = self.radians(&half_width);
        let even = self.even(&name, &tilt.half_width, a, tilt.treatment);
        let bias = self.calc.figure(TiltBias, [size.figure, even.mean]);
        self.tell(name, bias, tilt.treatment, &half_width);
        Ok(self.calc.apply(Upright, [&size, &even.g]))
    }

    /// Read off the axis of an oval skirt.
    pub(crate) fn off_axis(&mut self, size: Measured, off: Option<&doc::OffAxis>) -> Result<Measured, Error> {
        let Some(off) = off else {
            return Ok(size);
        };
        let half_width = off.half_width.read(&bounds::OFF_AXIS, self.warnings)?;
        let ovality = off.ovality.read(&bounds::OVALITY, self.warnings)?;
        let name = format!("angle off the axis on {}", self.of);
        let a = self.radians(&half_width);
        let a = self.calc.figure(Doubled, [a]);
        let even = self.even(&name, &off.half_width, a, off.treatment);
        let ovality = self.calc.given("ovality", &ovality);
        let bias = self.calc.figure(OffAxisBias, [ovality, even.mean]);
        self.tell(name, bias, off.treatment, &half_width);
        Ok(self.calc.apply(OnAxis, [&size, &ovality.into(), &even.g]))
    }

    /// Read at a height that is not quite the one that is meant.
    pub(crate) fn height(
        &mut self,
        size: Measured,
        height: Option<&doc::HeightError>,
    ) -> Result<Measured, Error> {
        let Some(height) = height else {
            return Ok(size);
        };
        let h = height.half_width.read(&bounds::HEIGHT_ERROR, self.warnings)?;
        let slope = height.profile_slope.read(&bounds::PROFILE_SLOPE, self.warnings)?;
        let source = self.source(format!("height of {}", self.of), &h);
        let [slope, h] = [self.calc.given("slope", &slope), self.calc.given("h", &h)];
        let u = self.calc.figure(HeightUncertainty, [slope, h]);
        Ok(self.calc.add_source(&size, source, u))
    }

    /// A thin skirt gives way under the measuring force.
    pub(crate) fn force(
        &mut self,
        size: Measured,
        force: Option<&doc::MeasuringForce>,
    ) -> Result<Measured, Error> {
        let Some(entry) = force else {
            return Ok(size);
        };
        let force = entry.force.read(&bounds::MEASURING_FORCE, self.warnings)?;
        let error = entry.force_permissible_error.read(&bounds::FORCE_ERROR, self.warnings)?;
        let force = self.with_half_width("force", &force, &error, "measuring force on");
        let stiffness = entry.skirt_stiffness.read(&bounds::SKIRT_STIFFNESS, self.warnings)?;
        let error = entry.stiffness_permissible_error.read(&bounds::STIFFNESS_ERROR, self.warnings)?;
        let stiffness = self.with_half_width("stiffness", &stiffness, &error, "stiffness of the skirt on");
        let bias = self.calc.figure(ForceBias, [force.figure, stiffness.figure]);
        self.effects.push(Effect {
            source: format!("measuring force on {}", self.of),
            mean: bias,
            treatment: Treatment::Corrected,
            path: entry.force.path().to_owned(),
        });
        Ok(self.calc.apply(Unpressed, [&size, &force, &stiffness]))
    }

    fn radians(&mut self, degrees: &Given) -> Figure {
        let pi =
            self.calc.constant("pi", core::f64::consts::PI, "1", "half the circumference of the unit circle");
        let degrees = self.calc.given("degrees", degrees);
        self.calc.figure(Radians, [degrees, pi])
    }

    fn even(&mut self, name: &str, field: &Entry<Angle>, a: Figure, treatment: Treatment) -> Even {
        let source = self.calc.source(name.to_owned(), field.path(), Distribution::STANDARD_RECTANGULAR);
        let u = self.calc.figure(super::HalfWidth, [a]);
        let mean = self.calc.figure(MeanVersine, [a]);
        let deviation = self.calc.figure(VersineDeviation, [a]);
        let taken_off = match treatment {
            Treatment::Corrected => mean,
            Treatment::Stated => {
                self.calc.constant("g0", 0.0, "1", "the document asks for the effect to be stated only")
            }
        };
        Even { g: self.calc.even_effect(Versine, source, u, taken_off, deviation), mean }
    }

    fn tell(&mut self, source: String, mean: Figure, treatment: Treatment, field: &Given) {
        self.effects.push(Effect { source, mean, treatment, path: field.path.clone() });
    }

    fn source(&mut self, name: String, field: &Given) -> SourceId {
        self.calc.source(name, &field.path, Distribution::STANDARD_RECTANGULAR)
    }

    fn with_half_width(&mut self, symbol: &str, value: &Given, error: &Given, what: &str) -> Measured {
        let source = self.source(format!("{what} {}", self.of), error);
        let u = half_width(self.calc, error);
        let value = self.calc.given(symbol, value);
        self.calc.add_source(&value.into(), source, u)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::calc::Formula;

    const DEGREE: f64 = core::f64::consts::PI / 180.0;

    /// Tilt of a bore gauge, TRADE 2.5 by hand: 86 mm and 130 mm.
    #[test]
    fn a_tilted_gauge_reads_high() {
        for (size, degrees, um, digit) in
            [(86.0, 0.25, 0.8, 0.05), (86.0, 0.5, 3.3, 0.05), (86.0, 1.0, 13.0, 0.5), (130.0, 0.5, 5.0, 0.5)]
        {
            let g = Versine::evaluate([degrees * DEGREE]);
            let read = size / (1.0 - g);
            assert!(((read - size) * 1000.0 - um).abs() <= digit, "{size} mm at {degrees} deg: {read}");
            // and the formula takes off what the tilt put on
            assert!((Upright::evaluate([read, g]) - size).abs() < 1e-13);
            assert!((TiltBias::evaluate([read, g]) - (read - size)).abs() < 1e-13);
        }
    }

    /// Off the axis of an oval of 0.40 mm: the same page, by hand.
    #[test]
    fn off_the_axis_reads_low() {
        for (degrees, um, digit) in [(3.0, -1.1, 0.05), (5.0, -3.0, 0.05), (10.0, -12.0, 0.5)] {
            let g = Versine::evaluate([2.0 * degrees * DEGREE]);
            assert!((OffAxisBias::evaluate([0.40, g]) * 1000.0 - um).abs() <= digit, "{degrees} deg");
            let low = 86.0 + OffAxisBias::evaluate([0.40, g]);
            assert!((OnAxis::evaluate([low, 0.40, g]) - 86.0).abs() < 1e-13);
        }
    }

    /// `1 - cos x`, `1 - sin(a) / a` and the root of `1/2 + sin(2 a) / (4 a) - (sin(a) / a)^2`, with mpmath at 40 digits.
    #[test]
    fn the_series_are_the_closed_forms() {
        for [degrees, versine, mean, deviation] in CLOSED_FORMS {
            let a = degrees * DEGREE;
            let near = |found: f64, exact: f64, digits: f64| ((found - exact) / exact).abs() < digits;
            assert!(near(Versine::evaluate([a]), versine, 2e-15), "{degrees}");
            assert!(near(MeanVersine::evaluate([a]), mean, 2e-15), "{degrees}");
            assert!(near(VersineDeviation::evaluate([a]), deviation, 5e-15), "{degrees}");
        }
    }

    #[expect(clippy::excessive_precision, reason = "20 digits, as they were computed")]
    const CLOSED_FORMS: [[f64; 4]; 5] = [
        [0.02, 6.0923483338729908668e-8, 2.0307827862058211244e-8, 1.8163873382544562245e-8],
        [0.25, 9.5192792655166831091e-6, 3.1730951022140747641e-6, 2.8381013811888655013e-6],
        [1.0, 0.00015230484360876084299, 0.000050768796705289428306, 0.000045408695819413246562],
        [10.0, 0.015192246987791940633, 0.0050692299547013110424, 0.0045310972818096749767],
        [30.0, 0.13397459621556135324, 0.045070341448627985387, 0.040075164195597429125],
    ];
}
