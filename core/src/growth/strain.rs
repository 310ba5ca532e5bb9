//! A law of growth as numbers: the strain from 20 C as a cubic polynomial, of which a mean coefficient is the simplest.

use crate::bounds;
use crate::calc::{Formula, formula};
use crate::error::{Error, ErrorKind};
use crate::size::REFERENCE_TEMPERATURE_C;

formula! {
    /// Strain as a cubic of the difference to 20 C, by Horner's rule.
    CubicStrain: eps ["1"] = (c1, c2, c3, t) => ((c3 * (t - 20.0) + c2) * (t - 20.0) + c1) * (t - 20.0);
        source "definition of the coefficients; with c2 and c3 zero the mean coefficient from 20 C";
}

/// `eps(T) = per_k d + per_k2 d^2 + per_k3 d^3` with `d = T - 20 C`, between two temperatures.
///
/// With `per_k2` and `per_k3` zero it is a mean coefficient from 20 C, and gives the bits of one.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StrainLaw {
    coefficients: [f64; 3],
    range: (f64, f64),
}

/// What a coefficient may be; what they give together is checked over the whole range.
const COEFFICIENT: bounds::Bound = bounds::Bound {
    label: "coefficient of a strain",
    unit: "1",
    possible: (-1.0, 1.0),
    usual: (-1.0, 1.0),
    reason: "the coefficient of expansion it gives is checked over the whole range",
};

impl StrainLaw {
    /// A mean coefficient of expansion from 20 C, for running temperatures.
    ///
    /// # Errors
    /// When it is not finite or impossible; the field is `per_k`.
    pub fn mean(per_k: f64) -> Result<Self, Error> {
        let per_k = bounds::EXPANSION.check("per_k", per_k)?;
        Ok(StrainLaw { coefficients: [per_k, 0.0, 0.0], range: bounds::RUNNING_TEMPERATURE.possible })
    }

    /// A cubic in the difference to 20 C, with the range it was fitted over, which holds 20 C.
    ///
    /// # Errors
    /// When a number is not finite, the range does not hold 20 C, or the coefficient of expansion (the slope) is impossible somewhere
    /// within the range.
    pub fn cubic(per_k: f64, per_k2: f64, per_k3: f64, from_c: f64, to_c: f64) -> Result<Self, Error> {
        for (field, coefficient) in [("per_k", per_k), ("per_k2", per_k2), ("per_k3", per_k3)] {
            COEFFICIENT.check(field, coefficient)?;
        }
        let from = bounds::LAW_TEMPERATURE.check("from_c", from_c)?;
        let to = bounds::LAW_TEMPERATURE.check("to_c", to_c)?;
        bounds::check_above("to_c", to, from, "it must be above from_c")?;
        let law = StrainLaw { coefficients: [per_k, per_k2, per_k3], range: (from, to) };
        law.check(REFERENCE_TEMPERATURE_C, "from_c")?;
        law.check_slopes()?;
        Ok(law)
    }

    /// Temperatures between which it holds, C.
    #[must_use]
    pub fn range_c(&self) -> (f64, f64) {
        self.range
    }

    /// Coefficients of the first, second and third power.
    #[must_use]
    pub fn coefficients(&self) -> [f64; 3] {
        self.coefficients
    }

    /// The strain at a temperature.
    ///
    /// # Errors
    /// [`ErrorKind::OutsideLaw`] outside its range.
    pub fn strain(&self, temperature_c: f64) -> Result<f64, Error> {
        self.check(temperature_c, "temperature_c")?;
        let [per_k, per_k2, per_k3] = self.coefficients;
        Ok(CubicStrain::evaluate([per_k, per_k2, per_k3, temperature_c]))
    }

    /// Refuses a temperature outside its range.
    pub(crate) fn check(&self, temperature_c: f64, field: &str) -> Result<(), Error> {
        let (lower, upper) = self.range;
        if temperature_c >= lower && temperature_c <= upper {
            return Ok(());
        }
        let reason = "outside the range of the law of expansion";
        let error = Error::new(ErrorKind::OutsideLaw, temperature_c.to_string(), reason);
        Err(error.value(temperature_c).limits(lower, upper, "C").at(field))
    }

    /// The slope is a parabola: it is possible everywhere when it is so at both ends and at its vertex.
    fn check_slopes(&self) -> Result<(), Error> {
        let [per_k, per_k2, per_k3] = self.coefficients;
        let (lower, upper) = (self.range.0 - REFERENCE_TEMPERATURE_C, self.range.1 - REFERENCE_TEMPERATURE_C);
        let slope = |d: f64| per_k + d * (2.0 * per_k2 + d * (3.0 * per_k3));
        for d in [lower, upper].into_iter().chain(vertex(per_k2, per_k3, (lower, upper))) {
            if bounds::EXPANSION.judge(slope(d)) == bounds::Verdict::Impossible {
                let error = bounds::EXPANSION.refuse(slope(d), &slope(d).to_string());
                return Err(error.suggest(None).at("per_k"));
            }
        }
        Ok(())
    }
}

/// Where the slope is flat, within the range.
fn vertex(per_k2: f64, per_k3: f64, (lower, upper): (f64, f64)) -> Option<f64> {
    // asked first whether it can be near, and then divided by what is not zero even where the compiler divides before it asks: a quotient that
    // overflows kills a host that unmasks floating-point traps
    let near = per_k3 != 0.0 && 3.0 * per_k3.abs() * lower.abs().max(upper) >= per_k2.abs();
    let flat = near.then_some(-per_k2 / if near { 3.0 * per_k3 } else { 1.0 })?;
    (flat > lower && flat < upper).then_some(flat)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: slopes of `a d + c d^3` are `a + 3 c d^2`, so that the vertex is at 20 C.
    #[test]
    fn the_slope_is_checked_where_it_is_least() {
        assert!(StrainLaw::cubic(2e-5, 0.0, -1e-11, -40.0, 450.0).is_ok());
        // 2e-5 - 3e-10 d^2 is zero at d = 258
        let refused = StrainLaw::cubic(2e-5, 0.0, -1e-10, -40.0, 450.0).unwrap_err();
        assert_eq!((refused.kind(), refused.field()), (ErrorKind::OutOfRange, "per_k"));
        // least at d = 100, where it is 2e-5 - 2e-5, and high at both ends
        let between = StrainLaw::cubic(2e-5, -2e-7, 2e-9 / 3.0, 0.0, 220.0).unwrap_err();
        assert_eq!(between.kind(), ErrorKind::OutOfRange);
        assert!(StrainLaw::cubic(2e-5, -2e-7, 2e-9 / 3.0, 0.0, 100.0).is_ok());
    }

    #[test]
    fn what_is_no_law_is_refused() {
        let kind =
            |law: Result<StrainLaw, Error>| law.map_err(|e| (e.kind(), e.field().to_owned())).err().unwrap();
        let named = |kind, field: &str| (kind, field.to_owned());
        assert_eq!(kind(StrainLaw::mean(20.5)), named(ErrorKind::OutOfRange, "per_k"));
        assert_eq!(kind(StrainLaw::mean(f64::NAN)), named(ErrorKind::NotFinite, "per_k"));
        let cubic = |per_k2, from_c, to_c| kind(StrainLaw::cubic(2e-5, per_k2, 0.0, from_c, to_c));
        assert_eq!(cubic(f64::INFINITY, 0.0, 300.0), named(ErrorKind::NotFinite, "per_k2"));
        assert_eq!(cubic(0.0, 300.0, 0.0), named(ErrorKind::OutOfOrder, "to_c"));
        assert_eq!(cubic(0.0, 100.0, 300.0), named(ErrorKind::OutsideLaw, "from_c"));
        assert_eq!(cubic(0.0, 0.0, 3000.0), named(ErrorKind::OutOfRange, "to_c"));
    }
}
