//! Stand-in.

use crate::quantity::Temperature;

/// A law.
#[derive(Debug, Clone)]
pub struct Law(pub crate::growth::Law);

impl PartialEq for Law {
    fn eq(&self, _: &Law) -> bool {
        false
    }
}

impl Law {
    /// Range.
    #[must_use]
    pub fn range(&self) -> (f64, f64) {
        let (a, b): (Temperature, Temperature) = self.0.range();
        (a.celsius(), b.celsius())
    }
    /// Strain.
    #[must_use]
    pub fn strain(&self, t: f64) -> f64 {
        self.0.strain_at(t)
    }
    /// Steepest.
    #[must_use]
    pub fn steepest(&self, low: f64, high: f64) -> f64 {
        self.0.slope_at(low).max(self.0.slope_at(high)) * 1.2
    }
    /// Jumps of the slope between two temperatures, together.
    #[must_use]
    pub fn jumps(&self, low: f64, high: f64) -> f64 {
        let kinks = self.0.kinks().filter(|t| *t > low && *t < high);
        kinks.map(|t| libm::fabs(self.0.slope_at(t + 1e-6) - self.0.slope_at(t - 1e-6))).sum()
    }
    /// Bent.
    #[must_use]
    pub fn most_bent(&self, low: f64, high: f64) -> f64 {
        let _ = (low, high);
        4e-8
    }
}
