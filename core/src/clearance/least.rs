//! The least clearance of a section over every angle, without a grid to miss it between: a section is a short trigonometric polynomial.
//!
//! | section | what finds it | bound on the error |
//! |---|---|---|
//! | cosines of orders 2, 4, 6 ([`EvenHarmonics`]) | closed form, a cubic in `cos 2t` | rounding |
//! | cosines and sines to order 32 ([`Harmonics`]) | equally spaced angles, a bound between them, Newton steps where the bound leaves room | proven, in every result |
//!
//! Plain doubles, no allocation, sums in one order: the same bits everywhere. An angle is 0 at the major thrust side, 90 at the pin axis toward the front.

use crate::bounds;
use crate::error::{Error, ErrorKind};
use core::f64::consts::PI;

/// Highest order of a section; a higher one is refused.
pub const MOST_ORDER: usize = 32;

/// The least value of a section, and where it is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Least {
    /// The value found. It is that of the section at `angle_deg`, to its rounding.
    pub least_mm: f64,
    /// Its angle, from 0 up to 360. Of angles whose values rounding cannot tell apart, the smallest.
    pub angle_deg: f64,
    /// How far the true least value can lie below: it is within `least_mm - within_mm` and `least_mm`, rounding included.
    pub within_mm: f64,
}

impl Least {
    /// The lower of two, and the first of equals: for a section that is put together from several.
    #[must_use]
    pub fn or_lower(self, other: Least) -> Least {
        if other.least_mm < self.least_mm { other } else { self }
    }
}

/// A part of the turn, from one angle rising to another. It may run over 360: from 270 to 450 is the half around 0.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Arc {
    from_deg: f64,
    to_deg: f64,
}

impl Arc {
    /// The whole turn.
    pub const TURN: Arc = Arc { from_deg: 0.0, to_deg: 360.0 };

    /// The arc from `from_deg`, 0 to 360, to `to_deg`, which is not below it and at most a turn further.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`] with the parameter as field.
    pub fn new(from_deg: f64, to_deg: f64) -> Result<Arc, Error> {
        let from_deg = bounds::ANGLE.check("from_deg", from_deg)? + 0.0;
        let kind = if to_deg.is_finite() { ErrorKind::OutOfRange } else { ErrorKind::NotFinite };
        match to_deg >= from_deg && to_deg - from_deg <= 360.0 {
            true => Ok(Arc { from_deg, to_deg }),
            false => {
                let reason = "an arc rises from its beginning, by a turn at most";
                let error = Error::new(kind, to_deg.to_string(), reason);
                Err(error.limits(from_deg, from_deg + 360.0, "deg").at("to_deg"))
            }
        }
    }
}

/// A section with cosines of orders 2, 4 and 6 only: the radius of a piston, or what a round or even bore leaves around it.
///
/// With `u = cos 2t` it is a cubic `c0 + c1 u + c2 u^2 + c3 u^3`, u from -1 to 1.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EvenHarmonics {
    c: [f64; 4],
}

/// The least value of an even section.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EvenLeast {
    /// The value found.
    pub least_mm: f64,
    /// The cosine of twice its angle. Of equal values the one with the smallest angle.
    pub cos2: f64,
    /// As in [`Least`]; here it is rounding alone.
    pub within_mm: f64,
}

impl EvenLeast {
    /// Its angle within the first quarter, 0 to 90. The section has the same value at 180 less this angle, at 180 more, and at 360 less.
    #[must_use]
    pub fn angle_deg(&self) -> f64 {
        libm::acos(self.cos2) * (90.0 / PI)
    }
}

impl EvenHarmonics {
    /// `mean + cos2 cos 2t + cos4 cos 4t + cos6 cos 6t`, in mm.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`] or [`ErrorKind::OutOfRange`], with the parameter as field.
    pub fn new(mean_mm: f64, cos2_mm: f64, cos4_mm: f64, cos6_mm: f64) -> Result<Self, Error> {
        bounds::COORDINATE.check("mean_mm", mean_mm)?;
        bounds::COORDINATE.check("cos2_mm", cos2_mm)?;
        bounds::COORDINATE.check("cos4_mm", cos4_mm)?;
        bounds::COORDINATE.check("cos6_mm", cos6_mm)?;
        Ok(EvenHarmonics { c: [mean_mm - cos4_mm, cos2_mm - 3.0 * cos6_mm, 2.0 * cos4_mm, 4.0 * cos6_mm] })
    }

    /// From the cubic itself, its coefficients from the constant up, in mm.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`] or [`ErrorKind::OutOfRange`], with the place as field (`coefficients_mm/2`).
    pub fn in_cos2(coefficients_mm: [f64; 4]) -> Result<Self, Error> {
        check_all("coefficients_mm", &coefficients_mm)?;
        Ok(EvenHarmonics { c: coefficients_mm })
    }

    fn at(&self, u: f64) -> f64 {
        let [c0, c1, c2, c3] = self.c;
        c0 + u * (c1 + u * (c2 + u * c3))
    }

    /// The least value over every angle.
    ///
    /// ```
    /// use gaugepoint::clearance::least::EvenHarmonics;
    /// // 0.0135 - 0.012 cos 2t: least along the thrust axis
    /// let least = EvenHarmonics::new(0.0135, -0.012, 0.0, 0.0)?.least();
    /// assert!((least.least_mm - 0.0015).abs() < 1e-15 && least.angle_deg() == 0.0);
    /// # Ok::<(), gaugepoint::Error>(())
    /// ```
    #[must_use]
    pub fn least(&self) -> EvenLeast {
        self.least_between(-1.0, 1.0)
    }

    /// The least value where `cos 2t` is between two values, which are within -1 and 1 and in order.
    #[must_use]
    pub fn least_between(&self, low: f64, high: f64) -> EvenLeast {
        let [c0, c1, c2, c3] = self.c;
        let (mut cos2, mut least) = (high, self.at(high));
        let mut try_at = |u: f64| {
            let value = self.at(u);
            if value < least {
                (cos2, least) = (u, value);
            }
        };
        if let Some(u) = valley(c1, c2, c3).filter(|u| *u > low && *u < high) {
            try_at(u);
        }
        try_at(low);
        let size = libm::fabs(c0) + libm::fabs(c1) + libm::fabs(c2) + libm::fabs(c3);
        EvenLeast { least_mm: least + 0.0, cos2, within_mm: EVEN_ROUNDING * size }
    }
}

/// What rounding can do to a cubic by Horner's rule (six operations, Higham 2002, 5.1), at both of two places that are compared, and to its valley.
const EVEN_ROUNDING: f64 = 16.0 * HALF_ULP;
/// Half the distance from 1 to the next double.
const HALF_ULP: f64 = f64::EPSILON / 2.0;

/// Where `c1 u + c2 u^2 + c3 u^3` has its valley, when that is within -1 and 1: the root of the derivative with a second derivative above zero,
/// in the form that subtracts nothing from its like.
fn valley(c1: f64, c2: f64, c3: f64) -> Option<f64> {
    let discriminant = c2 * c2 - 3.0 * c1 * c3;
    if discriminant <= 0.0 {
        return None;
    }
    let root = libm::sqrt(discriminant);
    let (above, below) = if c2 > 0.0 { (-c1, c2 + root) } else { (root - c2, 3.0 * c3) };
    // divided only when it lies within, so that nothing overflows
    (libm::fabs(above) < libm::fabs(below)).then(|| above / below)
}

/// A section: `mean + sum of cos_n cos(n t) + sin_n sin(n t)`, n from 1 to at most [`MOST_ORDER`]. Small and copied, nothing is allocated.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Harmonics {
    order: usize,
    mean: f64,
    cos: [f64; MOST_ORDER],
    sin: [f64; MOST_ORDER],
}

impl Harmonics {
    /// A section from its coefficients in mm; the first of `cos_mm` and `sin_mm` is of order 1. One may be shorter than the other.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] for more than 32 orders or an impossible number, [`ErrorKind::NotFinite`]; the field is the place (`cos_mm/3`).
    pub fn new(mean_mm: f64, cos_mm: &[f64], sin_mm: &[f64]) -> Result<Self, Error> {
        bounds::COORDINATE.check("mean_mm", mean_mm)?;
        Ok(Harmonics {
            order: cos_mm.len().max(sin_mm.len()),
            mean: mean_mm,
            cos: taken("cos_mm", cos_mm)?,
            sin: taken("sin_mm", sin_mm)?,
        })
    }

    fn waves(&self) -> impl Iterator<Item = (f64, f64)> {
        self.cos.iter().copied().zip(self.sin.iter().copied()).take(self.order)
    }

    /// The least value over every angle.
    #[must_use]
    pub fn least(&self) -> Least {
        self.slowly(&[Arc::TURN]).unwrap_or(Least { least_mm: self.mean, angle_deg: 0.0, within_mm: 0.0 })
    }

    /// The least value over some arcs, their ends included: the windows of a cylinder and the panels of a piston left out. None for no arc.
    #[must_use]
    pub fn least_over(&self, arcs: &[Arc]) -> Option<Least> {
        self.slowly(arcs)
    }

    /// A value that the section is nowhere below: cheaper than the least value, to leave out what cannot matter.
    #[must_use]
    pub fn lower_bound(&self) -> f64 {
        let least = self.least();
        least.least_mm - least.within_mm
    }

    /// The same over some arcs. None for no arc.
    #[must_use]
    pub fn lower_bound_over(&self, arcs: &[Arc]) -> Option<f64> {
        self.slowly(arcs).map(|least| least.least_mm - least.within_mm)
    }

    fn slowly(&self, arcs: &[Arc]) -> Option<Least> {
        let steps = 200_000_u32;
        let second = self.waves().zip(1_u32..).fold(0.0, |sum, ((a, b), n)| {
            sum + f64::from(n) * f64::from(n) * (libm::fabs(a) + libm::fabs(b))
        });
        let mut best: Option<Least> = None;
        for arc in arcs {
            let step = (arc.to_deg - arc.from_deg) / f64::from(steps);
            let within_mm = second * (step * (PI / 180.0)) * (step * (PI / 180.0)) / 8.0 + 1e-15;
            for k in 0..=steps {
                let angle_deg = (arc.from_deg + f64::from(k) * step) % 360.0;
                let here = Least { least_mm: self.at(angle_deg), angle_deg, within_mm };
                best = Some(best.map_or(here, |best| best.or_lower(here)));
            }
        }
        best
    }

    /// The section at an angle.
    #[must_use]
    pub fn at(&self, angle_deg: f64) -> f64 {
        let angle = angle_deg * (PI / 180.0);
        let sum = self.waves().zip(1_u32..).fold(0.0, |sum, ((a, b), n)| {
            let angle = angle * f64::from(n);
            sum + a * libm::cos(angle) + b * libm::sin(angle)
        });
        self.mean + sum
    }
}

/// The coefficients of one phase, checked.
fn taken(field: &str, given: &[f64]) -> Result<[f64; MOST_ORDER], Error> {
    let mut out = [0.0; MOST_ORDER];
    if given.len() > MOST_ORDER {
        let error = Error::new(ErrorKind::OutOfRange, given.len().to_string(), "too many orders");
        return Err(error.limits(0.0, 32.0, "1").at(field));
    }
    check_all(field, given)?;
    for (to, from) in out.iter_mut().zip(given) {
        *to = *from;
    }
    Ok(out)
}

fn check_all(field: &str, given: &[f64]) -> Result<(), Error> {
    // the field is written out only for a refusal
    match given.iter().position(|mm| bounds::COORDINATE.judge(*mm) == bounds::Verdict::Impossible) {
        None => Ok(()),
        Some(k) => {
            let refused = given.get(k).copied().unwrap_or(f64::NAN);
            bounds::COORDINATE.check(&format!("{field}/{k}"), refused).map(|_| ())
        }
    }
}
