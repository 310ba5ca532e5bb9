//! From a standard uncertainty to an expanded one.

use super::{Budget, Calc, Figure, formula};

/// Coverage factor of the expanded uncertainty.
const COVERAGE: f64 = 2.0;

formula! {
    /// Expanded uncertainty.
    Expanded: expanded ["mm"] = (k, u) => k * u; source "JCGM 100:2008, 6.2.1";
}

impl Calc {
    /// Expanded uncertainty of a value.
    pub(crate) fn expanded(&mut self, budget: &Budget) -> Figure {
        let k = self.constant("k", COVERAGE, "1", "coverage factor printed in every report");
        self.figure(Expanded, [k, budget.standard])
    }
}
