//! How well a standard uncertainty is known, and what that makes of an expanded uncertainty and of a probability.

use super::{Budget, Calc, EstimateId, Figure, Line, SourceId, formula, total};
use crate::special;

/// Coverage factor of the expanded uncertainty with infinite degrees of freedom.
const COVERAGE: f64 = 2.0;
const COVERAGE_SOURCE: &str = "JCGM 100:2008, 6.3.3 and G.6.6: about 95 %";
const T_SOURCE: &str = "JCGM 100:2008, G.3.2: the factor of Student's t at the probability that k has of the normal distribution";
/// More degrees of freedom than these count as infinite.
const MOST_DOF: f64 = 1e9;
const ONE_ESTIMATE: &str = "shares that rest on one estimate of variance";

formula! {
    /// Expanded uncertainty.
    ExpandedUncertainty: expanded ["mm"] = (k, u) => k * u; source "JCGM 100:2008, 6.2.1";
}

/// An expanded uncertainty and its coverage factor.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Coverage {
    pub(crate) factor: Figure,
    pub(crate) expanded: Figure,
}

impl Calc {
    /// An estimate of variance with its degrees of freedom.
    pub(crate) fn estimate(&mut self, dof: Figure) -> EstimateId {
        self.estimates.push(dof);
        EstimateId(self.estimates.len() - 1)
    }

    /// Says on which estimate of variance the standard uncertainty of a source rests.
    pub(crate) fn rests_on(&mut self, source: SourceId, estimate: Option<EstimateId>) {
        let dof = estimate.and_then(|e| self.estimates.get(e.0)).map(|dof| dof.value);
        if let (Some(source), Some(dof)) = (self.sources.get_mut(source.0), dof) {
            source.estimate = estimate;
            // the bounds of the document are narrower than what a distribution takes
            source.distribution = source.distribution.with_dof(dof).unwrap_or(source.distribution);
        }
    }

    /// Effective degrees of freedom by Welch and Satterthwaite from the shares in the variance. The shares of sources that rest on one
    /// estimate of variance are added first: it is one estimate, however often it is used.
    pub(super) fn effective_dof(&mut self, lines: &[Line]) -> Option<Figure> {
        let mut shares: Vec<(Figure, Figure)> = Vec::new();
        for (k, dof) in self.estimates.clone().into_iter().enumerate() {
            let rests =
                |line: &&Line| self.source_of(line.source).is_some_and(|s| s.estimate == Some(EstimateId(k)));
            let own: Vec<Figure> = lines.iter().filter(rests).map(|line| line.share).collect();
            let sum = total(own.iter().map(|share| share.value));
            if sum > 0.0 {
                let share = match own.as_slice() {
                    [only] => *only,
                    _ => self.of_several("h", "h", |h| h.join(" + "), &own, sum, ONE_ESTIMATE),
                };
                shares.push((share, dof));
            }
        }
        let term = |(share, dof): &(Figure, Figure)| share.value * share.value / dof.value;
        let sum = total(shares.iter().map(term));
        // what is left of sources that cancel is rounding; and a division by 0 kills a host that unmasks floating-point traps
        (sum >= 1.0 / MOST_DOF).then(|| self.welch_satterthwaite(&shares, 1.0 / sum))
    }

    fn welch_satterthwaite(&mut self, shares: &[(Figure, Figure)], value: f64) -> Figure {
        let term = |k: usize| format!("h{k} * h{k} / n{k}");
        let terms: Vec<String> = (1..=shares.len()).map(term).collect();
        let text = format!("1 / ({})", terms.join(" + "));
        let names: Vec<(String, String)> =
            (1..=shares.len()).map(|k| (format!("h{k}"), format!("n{k}"))).collect();
        let arguments: Vec<(&str, Figure)> = names
            .iter()
            .zip(shares)
            .flat_map(|((h, n), (share, dof))| [(h.as_str(), *share), (n.as_str(), *dof)])
            .collect();
        self.step("dof", &text, &arguments, value, "1", "JCGM 100:2008, G.4.1, (G.2b)")
    }

    /// Expanded uncertainty of a value.
    pub(crate) fn coverage(&mut self, budget: &Budget) -> Coverage {
        let k = self.constant("k", COVERAGE, "1", COVERAGE_SOURCE);
        let factor = self.t_factor(k, budget.dof);
        Coverage { factor, expanded: self.figure(ExpandedUncertainty, [factor, budget.standard]) }
    }

    /// A factor of the normal distribution as that of Student's t; itself with infinite degrees of freedom.
    pub(crate) fn t_factor(&mut self, normal: Figure, dof: Option<Figure>) -> Figure {
        let Some(dof) = dof else { return normal };
        let value = special::t_factor(normal.value, dof.value);
        self.step("k", "t_factor(k, dof)", &[("k", normal), ("dof", dof)], value, "1", T_SOURCE)
    }

    /// Probability that a scaled and shifted t variable about `x` is not above `limit`.
    pub(crate) fn t_below(&mut self, limit: Figure, x: Figure, u: Figure, dof: Figure) -> Figure {
        let value = special::t_cdf((limit.value - x.value) / u.value, dof.value);
        let arguments = [("limit", limit), ("x", x), ("u", u), ("dof", dof)];
        let source = "JCGM 106:2012, 7.2.2, with the scaled and shifted t of JCGM 101:2008, 6.4.9";
        self.step("below", "t_below((limit - x) / u, dof)", &arguments, value, "1", source)
    }
}
