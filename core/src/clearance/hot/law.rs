//! Stand-in for the laws of expansion.

/// A law of expansion with a mean coefficient from 20 C.
#[derive(Debug, Clone, PartialEq)]
pub struct Law {
    per_k: f64,
    range_c: (f64, f64),
}

impl Law {
    /// `per_k` is the mean coefficient from 20 C.
    #[must_use]
    pub fn mean(per_k: f64, from_c: f64, to_c: f64) -> Self {
        Law { per_k, range_c: (from_c, to_c) }
    }

    /// Range of temperatures.
    #[must_use]
    pub fn range(&self) -> (f64, f64) {
        self.range_c
    }

    /// Strain from 20 C.
    #[must_use]
    pub fn strain(&self, celsius: f64) -> f64 {
        self.per_k * (celsius - 20.0)
    }

    /// Largest absolute slope between two temperatures.
    #[must_use]
    pub fn steepest(&self, _low: f64, _high: f64) -> f64 {
        self.per_k.abs()
    }

    /// Largest absolute curvature between two temperatures, kinks apart.
    #[must_use]
    pub fn most_bent(&self, _low: f64, _high: f64) -> f64 {
        0.0
    }

    /// Temperatures at which the slope jumps.
    #[must_use]
    pub fn kinks(&self) -> &[f64] {
        &[]
    }
}
