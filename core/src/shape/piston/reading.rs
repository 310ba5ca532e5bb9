//! What a micrometer reads on a piston, and what is odd about its form.

use super::{PistonShape, Side, Surface, Window, WindowKind};
use crate::bounds::{self, Verdict};
use crate::choice::choices;
use crate::error::{Error, ErrorKind};
use crate::shape::angle::{across, opens, turned};
use core::f64::consts::PI;

/// The largest diameter of a section.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Largest {
    /// Its angle, from 0 up to 180 degrees; of several the smallest.
    pub angle_deg: f64,
    /// The diameter.
    pub diameter_mm: f64,
}

choices! {
    /// What is odd about a form; none of it is refused.
    OddForm {
        /// A diameter beside the gauge direction is larger: double ovality above a quarter of the ovality, or ovality below zero.
        LargerBeside = "larger_beside",
        /// A diameter beside the pin axis is smaller: double ovality below minus a quarter of the ovality.
        SmallerBeside = "smaller_beside",
        /// The ovality is not usual.
        OddOvality = "odd_ovality",
        /// The diameter against the gauge diameter is not usual for a skirt.
        OddBarrel = "odd_barrel",
        /// The skirt changes over its height more than is usual.
        OddSlope = "odd_slope",
        /// The coating is not usual.
        OddCoating = "odd_coating",
    }
}

/// Something odd about the form of a piston, where it is worst.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FormWarning {
    /// What.
    pub kind: OddForm,
    /// Place of the surface, 0 the skirt.
    pub surface: usize,
    /// Height.
    pub height_mm: f64,
    /// Angle of the diameter that is larger or smaller; else none.
    pub angle_deg: Option<f64>,
    /// Diameters, in mm: by how much it is larger or smaller; ovality; against the gauge diameter. Thickness of the coating, in mm. Slope of
    /// the diameter, in um/mm.
    pub value: f64,
}

/// What is left out of a warning, in mm: rounding of arithmetic.
const NOISE: f64 = 1e-9;

impl PistonShape {
    /// Radius at a height and an angle, with the coating where there is one, in mm; the gauge diameter is that of bare metal.
    ///
    /// # Errors
    /// When a number is not finite or impossible; [`ErrorKind::OutOfRange`] for a height without surface;
    /// [`ErrorKind::Contradiction`] in a cut-out or beside the panels. The error names the parameter.
    pub fn radius_mm(&self, gauge_diameter_mm: f64, height_mm: f64, angle_deg: f64) -> Result<f64, Error> {
        let gauge = bounds::PISTON.check("gauge_diameter_mm", gauge_diameter_mm)?;
        Ok(gauge / 2.0 + self.checked_deviation_mm(height_mm, angle_deg)?)
    }

    /// Radius less half the gauge diameter, with the coating where there is one.
    pub(super) fn checked_deviation_mm(&self, height_mm: f64, angle_deg: f64) -> Result<f64, Error> {
        let angle = bounds::ANGLE.check("angle_deg", angle_deg)?;
        let surface = self.surface_at(height_mm)?;
        Ok(surface.deviation_mm(height_mm, angle) + surface.checked_coating(height_mm, angle)?)
    }

    /// Diameter that a micrometer reads at a height and an angle, in mm: the radii at the angle and across, with the coating where there is
    /// one. The gauge diameter is that of bare metal.
    ///
    /// # Errors
    /// As [`PistonShape::radius_mm`], at either end.
    pub fn diameter_mm(&self, gauge_diameter_mm: f64, height_mm: f64, angle_deg: f64) -> Result<f64, Error> {
        let gauge = bounds::PISTON.check("gauge_diameter_mm", gauge_diameter_mm)?;
        Ok(gauge + self.checked_change_mm(height_mm, angle_deg)?)
    }

    /// Diameter less the gauge diameter, as a micrometer reads it.
    pub(super) fn checked_change_mm(&self, height_mm: f64, angle_deg: f64) -> Result<f64, Error> {
        let angle = bounds::ANGLE.check("angle_deg", angle_deg)?;
        let here = self.checked_deviation_mm(height_mm, angle)?;
        Ok(here + self.checked_deviation_mm(height_mm, across(angle))?)
    }

    /// Ovality that a micrometer reads at a height, in mm: the diameter at 0 less that at 90 degrees.
    ///
    /// # Errors
    /// As [`PistonShape::diameter_mm`].
    pub fn ovality_mm(&self, height_mm: f64) -> Result<f64, Error> {
        Ok(self.checked_change_mm(height_mm, 0.0)? - self.checked_change_mm(height_mm, 90.0)?)
    }

    /// The largest diameter that a micrometer finds at a height, over all angles at which both ends have a surface.
    ///
    /// # Errors
    /// As [`PistonShape::diameter_mm`]; [`ErrorKind::Contradiction`] when no diameter has a surface at both ends.
    pub fn largest(&self, gauge_diameter_mm: f64, height_mm: f64) -> Result<Largest, Error> {
        let gauge = bounds::PISTON.check("gauge_diameter_mm", gauge_diameter_mm)?;
        let surface = self.surface_at(height_mm)?;
        let found = surface.largest_change(height_mm).ok_or_else(|| {
            let reason = "no diameter has a surface at both ends";
            Error::new(ErrorKind::Contradiction, height_mm.to_string(), reason)
                .value(height_mm)
                .at("height_mm")
        })?;
        Ok(Largest { angle_deg: found.0, diameter_mm: gauge + found.1 })
    }

    /// What is odd about the form: of each kind and surface the worst, by surfaces. Looked for at the rows of the tables.
    #[must_use]
    pub fn warnings(&self) -> Vec<FormWarning> {
        self.surfaces.iter().enumerate().flat_map(|(place, surface)| surface.warnings(place)).collect()
    }
}

impl Surface {
    /// Coating at a height and an angle that were checked; none where there is no surface.
    #[must_use]
    pub fn coating_at(&self, height_mm: f64, angle_deg: f64) -> Option<f64> {
        let within = |kind: WindowKind| {
            self.windows.iter().any(|w| w.kind == kind && self.is_within(w, height_mm, angle_deg))
        };
        match self.is_on_panel(angle_deg) && !within(WindowKind::CutOut) {
            true if within(WindowKind::Bare) => Some(0.0),
            true => Some(self.coating_mm),
            false => None,
        }
    }

    fn checked_coating(&self, height_mm: f64, angle_deg: f64) -> Result<f64, Error> {
        self.coating_at(height_mm, angle_deg).ok_or_else(|| {
            let reason = format!(
                "the {} has no surface at height {height_mm} mm and {angle_deg} degrees: a cut-out, or beside the panels",
                self.name
            );
            let error = Error::new(ErrorKind::Contradiction, angle_deg.to_string(), reason);
            error.value(angle_deg).at("angle_deg")
        })
    }

    fn is_on_panel(&self, angle_deg: f64) -> bool {
        let from_thrust = if angle_deg > 180.0 { 360.0 - angle_deg } else { angle_deg };
        self.panel_deg.is_none_or(|(thrust, minor)| from_thrust <= thrust || 180.0 - from_thrust <= minor)
    }

    /// An edge belongs to what is around; at the ends of the surface nothing is.
    fn is_within(&self, window: &Window, height_mm: f64, angle_deg: f64) -> bool {
        let above = height_mm > window.from_mm || window.from_mm <= self.from_mm;
        let below = height_mm < window.to_mm || window.to_mm >= self.to_mm;
        let across = opens(window.from_deg, window.to_deg, angle_deg);
        (height_mm >= window.from_mm && height_mm <= window.to_mm) && above && below && across
    }

    /// `[A, B, C]` of the diameter of bare metal less the gauge diameter.
    fn diameter_coefficients(&self, height_mm: f64) -> [f64; 3] {
        let [a, b, c] = self.thrust.coefficients(height_mm);
        let [d, e, f] = self.minor_thrust.coefficients(height_mm);
        [a + d, b + e, c + f]
    }

    /// Angle and diameter less the gauge diameter, of the largest with a surface at both ends.
    fn largest_change(&self, height_mm: f64) -> Option<(f64, f64)> {
        let coefficients = self.diameter_coefficients(height_mm);
        let mut largest: Option<(f64, f64)> = None;
        let edges = self.edges();
        for (from, to) in edges.iter().zip(edges.iter().skip(1)) {
            // between two edges nothing begins or ends, so that the middle stands for all
            let middle = (from + to) / 2.0;
            let coatings = (self.coating_at(height_mm, middle), self.coating_at(height_mm, middle + 180.0));
            let (Some(here), Some(across)) = coatings else { continue };
            let level = level_angles(coefficients).into_iter().filter(|angle| angle > from && angle < to);
            for angle in [*from].into_iter().chain(level).chain([*to]) {
                let change = at(coefficients, angle) + here + across;
                if largest.is_none_or(|(_, most)| change > most) {
                    largest = Some((angle, change));
                }
            }
        }
        // a diameter at 180 degrees is the one at 0
        largest.map(|(angle, change)| (if angle >= 180.0 { 0.0 } else { angle }, change))
    }

    /// Angles of diameters, rising from 0 to 180, at which something of the surface begins or ends.
    fn edges(&self) -> Vec<f64> {
        let mut edges = vec![0.0, 90.0, 180.0];
        if let Some((thrust, minor)) = self.panel_deg {
            edges.extend([thrust, 180.0 - thrust, minor, 180.0 - minor]);
        }
        edges.extend(self.windows.iter().flat_map(|w| [w.from_deg % 180.0, w.to_deg % 180.0]));
        edges.sort_by(f64::total_cmp);
        edges.dedup();
        edges
    }

    fn warnings(&self, surface: usize) -> Vec<FormWarning> {
        let skirt = surface == 0;
        let heights = self.rows();
        let worst = |kind: OddForm, found: &dyn Fn(f64) -> Option<(Option<f64>, f64)>| {
            let all = heights.iter().filter_map(|h| {
                found(*h).map(|(angle_deg, value)| FormWarning {
                    kind,
                    surface,
                    height_mm: *h,
                    angle_deg,
                    value,
                })
            });
            all.fold(None, |worst: Option<FormWarning>, next| match worst {
                Some(w) if w.value.abs() >= next.value.abs() => Some(w),
                _ => Some(next),
            })
        };
        let change = |height: f64, angle: f64| at(self.diameter_coefficients(height), angle);
        // a pin axis that is larger is told once, as a larger diameter beside the gauge direction
        let beside = |sign: f64, from: f64, other: Option<f64>, height: f64| {
            let coefficients = self.diameter_coefficients(height).map(|c| c * sign);
            let base = at(coefficients, from);
            let (angle, most) =
                level_angles(coefficients).into_iter().chain(other).fold((from, base), |best, angle| {
                    let next = at(coefficients, angle);
                    if next > best.1 { (angle, next) } else { best }
                });
            (most - base > NOISE).then_some((Some(angle), most - base))
        };
        let odd = |bound: &bounds::Bound, value: f64| {
            (bound.judge(value) != Verdict::Usual).then_some((None, value))
        };
        let slope = |height: f64| {
            let slope = |side: &Side| side.barrel.local(height).slope;
            odd(&bounds::BARREL, ((slope(&self.thrust) + slope(&self.minor_thrust)) * 1000.0).abs())
        };
        let found = [
            worst(OddForm::LargerBeside, &|h| beside(1.0, 0.0, Some(90.0), h)),
            worst(OddForm::SmallerBeside, &|h| beside(-1.0, 90.0, None, h)),
            worst(OddForm::OddOvality, &|h| odd(&bounds::OVALITY, change(h, 0.0) - change(h, 90.0))),
            worst(OddForm::OddBarrel, &|h| odd(&bounds::DIAMETER_CHANGE, change(h, 0.0)).filter(|_| skirt)),
            worst(OddForm::OddSlope, &|h| slope(h).filter(|_| skirt)),
            worst(OddForm::OddCoating, &|_| {
                odd(&bounds::COATING, self.coating_mm).filter(|_| self.coating_mm > 0.0)
            }),
        ];
        found.into_iter().flatten().collect()
    }

    /// Heights of all rows of the surface, and its ends, rising.
    pub(super) fn rows(&self) -> Vec<f64> {
        let curves = [&self.thrust, &self.minor_thrust].map(|s| [&s.barrel, &s.ovality, &s.fourth]);
        let pieces = curves.iter().flatten().flat_map(|curve| curve.pieces());
        let inner = pieces.flat_map(|p| [p.from, p.to]).filter(|h| *h > self.from_mm && *h < self.to_mm);
        let mut heights: Vec<f64> = inner.chain([self.from_mm, self.to_mm]).collect();
        heights.sort_by(f64::total_cmp);
        heights.dedup();
        heights
    }
}

/// `A + B cos 2t + C cos 4t`.
fn at([a, b, c]: [f64; 3], angle_deg: f64) -> f64 {
    a + b * turned(2, angle_deg).0 + c * turned(4, angle_deg).0
}

/// Angles between 0 and 180, but for the thrust direction and the pin axis, at which a diameter is largest: with `c = cos 2t` it is
/// `A - C + B c + 2 C c^2`.
fn level_angles([_, b, c]: [f64; 3]) -> Vec<f64> {
    match c < 0.0 && b.abs() < -4.0 * c {
        true => {
            let half = libm::acos(-b / (4.0 * c)) / 2.0 * (180.0 / PI);
            vec![half, 180.0 - half]
        }
        false => Vec::new(),
    }
}
