//! From two values to their change, its rate and the hours to a limit.

use super::report::{Change, Forecast};
use crate::decision::{Decision, Of};
use crate::job::document as doc;
use crate::job::{Entry, Words};
use crate::report::{BudgetLine, MeasuredValue};
use crate::special::t_factor;

/// Coverage factor with infinite degrees of freedom, as in the report of a job.
const COVERAGE: f64 = 2.0;

/// More degrees of freedom than these count as infinite.
const MOST_DOF: f64 = 1e9;

/// The hours an engine ran.
#[derive(Clone, Copy)]
pub(super) struct Run {
    pub(super) hours: f64,
    pub(super) standard: f64,
}

/// Names of the sources that are the same error in both visits.
pub(super) struct Lasting {
    /// gauges of one name and one calibration date
    pub(super) gauges: Vec<String>,
    /// what the name of such a source begins with
    scales: Vec<String>,
    /// such a source
    standards: Vec<String>,
}

impl Lasting {
    /// What lasts of a gauge between two calibrations: the error of its scale or travel at one indication, and that of the standard it was set or
    /// checked on, where its certificate reads the same.
    pub(super) fn new(previous: &[doc::Gauge], now: &[doc::Gauge]) -> Self {
        let mut out = Lasting { gauges: Vec::new(), scales: Vec::new(), standards: Vec::new() };
        for gauge in now {
            let name = gauge.name.text().trim();
            let same =
                |g: &&doc::Gauge| alike(&g.name, &gauge.name) && alike(&g.calibrated, &gauge.calibrated);
            let Some(before) = previous.iter().find(same) else { continue };
            out.gauges.push(name.to_owned());
            let sheet = |g: &doc::Gauge| {
                [&g.permissible_error.as_ref().map(text), &g.preset.as_ref().map(text)].map(Clone::clone)
            };
            if sheet(before) == sheet(gauge) {
                out.scales.extend(["scale", "travel"].map(|word| format!("{word} of {name} at ")));
            }
            if let (Some(a), Some(b)) = (&before.zero_check, &gauge.zero_check)
                && certificate(&a.standard, &a.size, &a.expanded_uncertainty, &a.coverage_factor)
                    == certificate(&b.standard, &b.size, &b.expanded_uncertainty, &b.coverage_factor)
            {
                out.standards.push(format!("standard of the zero check of {name}"));
            }
            if let (Some(doc::Setting::Ring(a)), Some(doc::Setting::Ring(b))) =
                (&before.setting, &gauge.setting)
                && certificate(&a.name, &a.size, &a.expanded_uncertainty, &a.coverage_factor)
                    == certificate(&b.name, &b.size, &b.expanded_uncertainty, &b.coverage_factor)
            {
                out.standards.push(format!("setting ring of {name}"));
            }
        }
        out
    }

    fn holds(&self, source: &str) -> bool {
        self.standards.iter().any(|s| s == source) || self.scales.iter().any(|s| source.starts_with(s))
    }
}

fn text<K: crate::job::Kind>(entry: &Entry<K>) -> String {
    entry.text().trim().to_owned()
}

fn alike<K: crate::job::Kind>(a: &Entry<K>, b: &Entry<K>) -> bool {
    text(a) == text(b)
}

fn certificate<S: crate::job::Kind, U: crate::job::Kind, F: crate::job::Kind>(
    name: &Entry<Words>,
    size: &Entry<S>,
    uncertainty: &Entry<U>,
    factor: &Entry<F>,
) -> [String; 4] {
    [text(name), text(size), text(uncertainty), text(factor)]
}

/// A value of both visits.
pub(super) struct Pair<'r> {
    pub(super) previous: &'r MeasuredValue,
    pub(super) now: &'r MeasuredValue,
}

/// Contributions of one source to both values.
struct Shared<'r> {
    source: &'r str,
    previous: f64,
    now: f64,
}

impl<'r> Pair<'r> {
    fn shared(&self, lasting: &Lasting) -> Vec<Shared<'r>> {
        let of = |value: &MeasuredValue, source: &str| -> Option<f64> {
            let of_source = |line: &&BudgetLine| line.source == source;
            let mut lines = value.budget.iter().filter(of_source).map(|line| line.contribution_mm).peekable();
            lines.peek().is_some().then(|| lines.sum())
        };
        let mut out: Vec<Shared<'r>> = Vec::new();
        for source in self.previous.budget.iter().map(|line| line.source.as_str()) {
            if !lasting.holds(source) || out.iter().any(|s| s.source == source) {
                continue;
            }
            let both = of(self.previous, source).zip(of(self.now, source));
            out.extend(both.map(|(previous, now)| Shared { source, previous, now }));
        }
        out
    }

    /// The change with its rate.
    ///
    /// Its variance is the sum over all sources, those that are shared with the difference of their contributions: JCGM 100:2008, 5.2.2, with
    /// correlations of 0 and 1. Its degrees of freedom are by Welch and Satterthwaite (G.4.1) from those of both values; what cancels still counts
    /// in them, so they are too few rather than too many.
    pub(super) fn change(&self, lasting: &Lasting, run: Run, bore_mm: f64) -> Change {
        let (previous, now) = (self.previous, self.now);
        let shared = self.shared(lasting);
        let own = |value: &MeasuredValue| -> f64 {
            let own = |line: &&BudgetLine| !shared.iter().any(|s| s.source == line.source);
            value.budget.iter().filter(own).map(|line| line.contribution_mm * line.contribution_mm).sum()
        };
        let cancelled: f64 = shared.iter().map(|s| (s.now - s.previous) * (s.now - s.previous)).sum();
        let standard = (own(previous) + own(now) + cancelled).sqrt();
        let change = now.value_mm - previous.value_mm;
        let dof = dof(standard, [previous, now]);
        let factor = dof.map_or(COVERAGE, |dof| t_factor(COVERAGE, dof));
        let expanded = factor * standard;
        let rate = change / run.hours;
        // to first order: JCGM 100:2008, 5.1.2
        let rate_standard =
            (standard * standard + rate * rate * run.standard * run.standard).sqrt() / run.hours;
        Change {
            previous_mm: previous.value_mm,
            now_mm: now.value_mm,
            change_mm: change,
            standard_uncertainty_mm: standard,
            coverage_factor: factor,
            dof,
            expanded_uncertainty_mm: expanded,
            significant: change.abs() > expanded,
            shared: shared.iter().map(|s| s.source.to_owned()).collect(),
            rate_mm_per_h: rate,
            rate_standard_uncertainty_mm_per_h: rate_standard,
            rate_mm_per_1000_h: 1000.0 * rate,
            rate_expanded_uncertainty_mm_per_1000_h: 1000.0 * factor * rate_standard,
            rate_of_bore_per_1000_h: 1000.0 * rate / bore_mm,
        }
    }

    /// Hours until the upper limit of a decision is reached at the rate of the change.
    pub(super) fn forecast(
        &self,
        of: Of,
        decision: Option<&Decision>,
        change: &Change,
        (lasting, run): (&Lasting, Run),
    ) -> Forecast {
        let limit = decision.and_then(|d| d.upper_mm);
        let room = limit.zip(decision.and_then(|d| d.value_mm)).map(|(limit, value)| limit - value);
        let none = |reason: &str| Forecast {
            of,
            limit_mm: limit,
            room_mm: room,
            hours: None,
            lower_hours: None,
            upper_hours: None,
            coverage_factor: None,
            reason: Some(format!("no limit can be told: {reason}")),
        };
        if limit.is_none() {
            return none("there is no upper limit");
        }
        let Some(room_mm) = room else {
            return none(decision.map_or("", |d| &d.reason));
        };
        if room_mm <= 0.0 {
            return none("the limit is reached already");
        }
        let now = self.now.standard_uncertainty_mm * self.now.standard_uncertainty_mm;
        let both: f64 = self.shared(lasting).iter().map(|s| s.now * s.previous).sum();
        let rate = change.rate_standard_uncertainty_mm_per_h;
        let factor = change.coverage_factor.max(self.now.coverage_factor);
        let ends = fieller(
            (room_mm, now),
            (change.rate_mm_per_h, rate * rate),
            // the value now stands in the room with minus, in the rate with plus
            (both - now) / run.hours,
            factor,
        );
        let Some([lower, upper]) = ends.filter(|_| change.rate_mm_per_h > 0.0) else {
            return none("the wear is not significant");
        };
        Forecast {
            hours: Some(room_mm / change.rate_mm_per_h),
            lower_hours: Some(lower),
            upper_hours: Some(upper),
            coverage_factor: Some(factor),
            reason: None,
            ..none("")
        }
    }
}

/// Welch and Satterthwaite over two values.
fn dof(standard: f64, values: [&MeasuredValue; 2]) -> Option<f64> {
    let fourth = |u: f64| u * u * u * u;
    let term = |v: &MeasuredValue| v.dof.map_or(0.0, |dof| fourth(v.standard_uncertainty_mm) / dof);
    let sum: f64 = values.into_iter().map(term).sum();
    (sum > 0.0 && standard > 0.0).then(|| fourth(standard) / sum).filter(|dof| *dof <= MOST_DOF)
}

/// Interval of the ratio of two correlated normal quantities, given as values with their variances and their covariance, at a coverage factor;
/// nothing where the denominator is not told from 0, so that the interval has no end.
///
/// An end is a ratio `q` for which `numerator - q denominator` is just as many of its standard deviations from 0. Source: E. C. Fieller, Some
/// problems in interval estimation, Journal of the Royal Statistical Society B 16 (1954) 175-185; from memory.
fn fieller(
    (numerator, variance): (f64, f64),
    (denominator, denominator_variance): (f64, f64),
    covariance: f64,
    factor: f64,
) -> Option<[f64; 2]> {
    let k = factor * factor;
    let a = denominator * denominator - k * denominator_variance;
    let b = numerator * denominator - k * covariance;
    let c = numerator * numerator - k * variance;
    let root = (b * b - a * c).max(0.0).sqrt();
    (a > 0.0).then(|| [(b - root) / a, (b + root) / a])
}
