//! The working of a stack. Tails, curves and trials are integrals and samples: they have no steps.
//!
//! A document states one unit, or none: the working carries it under a name of its own until it is done.

use super::document::{CauseEntry, ContributorEntry, StackEntry, VariationEntry};
use super::report::StackReport;
use super::{Contributor, Function, Share, Stack, Toward};
use crate::calc::{Calc, Figure, Model, formula};
use crate::job::{Count, Entry, Kind, Real};

/// Unit of the result, and its square.
const UNIT: &str = "unit of the stack";
const SQUARE: &str = "square of the unit of the stack";

const DEFINITION: &str = "definition of a linear stack";
const PROPAGATION: &str = "law of propagation, JCGM 100:2008, 5.1.2";

formula! {
    /// What one contributor adds at nominal.
    NominalPart: part [""] = (nominal, coefficient, count) => coefficient * nominal * count; source "definition of a linear stack";
    /// Change of the stack for a change of all pieces of a contributor.
    Factor: factor ["1"] = (coefficient, count) => coefficient * count; source "definition of a linear stack";
    /// Least that a contributor adds within its limits.
    Lowest: low [""] = (nominal, lower, upper, factor) => (factor * (nominal + lower)).min(factor * (nominal + upper)); source "worst case: definition";
    /// Most that a contributor adds within its limits.
    Highest: high [""] = (nominal, lower, upper, factor) => (factor * (nominal + lower)).max(factor * (nominal + upper)); source "worst case: definition";
    /// Half the width of the limits of one piece, on the stack.
    Half: half [""] = (lower, upper, coefficient) => coefficient.abs() * (upper - lower) / 2.0; source "definition of a tolerance";
    /// Middle of two ends.
    Middle: middle [""] = (lower, upper) => lower + (upper - lower) / 2.0; source "definition";
    /// Middle of limits, by their half-width.
    MiddleOfHalf: middle [""] = (lower, half_width) => lower + half_width; source "definition";
    /// Half-width of limits.
    HalfWidth: half_width [""] = (lower, upper) => (upper - lower) / 2.0; source "definition";
    /// Standard deviation of a process.
    Process: sigma [""] = (lower, upper, cp) => (upper - lower) / (6.0 * cp); source "definition of Cp, ISO 22514-2";
    /// How far a process has moved from the middle of its limits.
    Moved: shift [""] = (sigma, cp, cpk) => 3.0 * sigma * (cp - cpk); source "definition of Cpk, ISO 22514-2";
    /// Mean of a process that has moved up.
    Up: mean [""] = (middle, shift) => middle + shift; source "definition of Cpk, ISO 22514-2";
    /// Mean of a process that has moved down.
    Down: mean [""] = (middle, shift) => middle - shift; source "definition of Cpk, ISO 22514-2";
    /// Standard deviation of a symmetric distribution between two ends.
    OfHalfWidth: u [""] = (half_width, n) => half_width / n.sqrt(); source "JCGM 100:2008, 4.3.7 and 4.3.9; JCGM 101:2008, 6.4.6";
    /// Standard deviation of a trapezoid.
    OfTrapezoid: u [""] = (half_width, beta) => half_width * ((1.0 + beta * beta) / 6.0).sqrt(); source "JCGM 100:2008, 4.3.9";
    /// What the mean of a contributor's deviation adds.
    MeanMoves: moved [""] = (mean, coefficient, count) => coefficient * count * mean; source "definition of a linear stack";
    /// Standard deviation that a contributor alone gives the stack.
    Deviation: s [""] = (u, coefficient, count) => (count * coefficient * coefficient * (u * u)).sqrt(); source "variance of a sum of independent terms";
    /// The same from a variance.
    DeviationOfVariance: s ["unit of the stack"] = (variance, coefficient, count) => (count * coefficient * coefficient * variance).sqrt(); source "variance of a sum of independent terms";
    /// What a cause does to the stack through one contributor.
    Effect: effect ["1"] = (coefficient, count, factor) => coefficient * count * factor; source "definition of a shared cause";
    /// Standard deviation that a cause alone gives the stack.
    CauseDeviation: s [""] = (u, factor) => (factor * u).abs(); source "variance of a sum of independent terms";
    /// Lower end about a middle.
    Below: lower [""] = (middle, half) => middle - half; source "definition";
    /// Upper end about a middle.
    Above: upper [""] = (middle, half) => middle + half; source "definition";
    /// Bender's half-width.
    Bender: half [""] = (rss) => 1.5 * rss; source "A. Bender, Benderizing tolerances, Graphic Science (1962), from memory";
    /// Factor of the modified root-sum-square.
    ModifiedFactor: factor ["1"] = (rss, total, n) => 0.5 * (total - rss) / (rss * (n.sqrt() - 1.0)) + 1.0; source "P. Drake, Dimensioning and Tolerancing Handbook (1999), chapter 9, from memory";
    /// Half-width of the modified root-sum-square.
    Modified: half [""] = (rss, factor) => factor * rss; source "P. Drake, Dimensioning and Tolerancing Handbook (1999), chapter 9, from memory";
    /// Share of the variance.
    ShareOf: share ["1"] = (s, whole) => (s / whole) * (s / whole); source "share of the variance";
    /// Capability.
    Cp: cp ["1"] = (lower, upper, sigma) => (upper - lower) / (6.0 * sigma); source "ISO 22514-2";
    /// Capability of a process that is not in the middle.
    Cpk: cpk ["1"] = (lower, upper, mean, sigma) => (upper - mean).min(mean - lower) / (3.0 * sigma); source "ISO 22514-2";
    /// Mean of a contributor of a function.
    MeanSize: mean [""] = (nominal, deviation) => nominal + deviation; source "definition";
    /// Variance that a contributor gives a function.
    FirstOrder: part ["square of the unit of the stack"] = (sensitivity, u) => sensitivity * sensitivity * (u * u); source "law of propagation, JCGM 100:2008, 5.1.2";
    /// The same from its variance.
    FirstOrderOfVariance: part ["square of the unit of the stack"] = (sensitivity, variance) => sensitivity * sensitivity * variance; source "law of propagation, JCGM 100:2008, 5.1.2";
    /// Standard deviation of a variance.
    Root: s ["unit of the stack"] = (variance) => variance.sqrt(); source "definition";
    /// Share of a variance in a sum of variances.
    ShareOfVariance: share ["1"] = (part, whole) => part / whole; source "share of the variance";
}

/// How much a contributor varies: by its standard deviation, or by its variance where the distribution has no formula for the working.
enum Spread {
    Deviation(Figure),
    Variance(Figure),
}

/// Mean of the deviation of a contributor, and how much it varies.
struct Varies {
    mean: Figure,
    spread: Spread,
}

/// The working of one stack under way.
struct Steps<'a> {
    calc: &'a mut Calc,
    stack: &'a StackEntry,
    /// place of the report
    at: &'a str,
}

/// A linear stack: everything that is a formula.
pub(super) fn linear(
    calc: &mut Calc,
    entry: &StackEntry,
    stack: &Stack,
    limits: Option<(f64, f64)>,
    at: &str,
) {
    if calc.keeps_working() {
        let mut steps = Steps { calc, stack: entry, at };
        steps.linear(stack, limits);
        steps.named_unit();
    }
}

/// A function: its formula at the nominals and at the means, and the first order. Derivatives are numbers of its operations, not of steps.
pub(super) fn function(
    calc: &mut Calc,
    entry: &StackEntry,
    function: &Function<Model>,
    report: &StackReport,
    at: &str,
) {
    if calc.keeps_working() {
        let mut steps = Steps { calc, stack: entry, at };
        steps.function(function, report);
        steps.named_unit();
    }
}

impl Steps<'_> {
    fn named_unit(&mut self) {
        let unit = self.stack.unit.as_ref().map(|u| u.text().trim().to_owned());
        let unit = unit.or(self.stack.engine.map(|e| e.unit().to_owned()));
        let square = match unit.as_deref() {
            Some("1") => "1".to_owned(),
            Some(unit) => format!("({unit})^2"),
            None => String::new(),
        };
        self.calc.rename_unit(SQUARE, &square);
        self.calc.rename_unit(UNIT, &unit.unwrap_or_default());
    }

    fn heading(&mut self, of: &str) {
        let name = self.stack.name.text().trim();
        self.calc.heading(|| format!("{name}: {of}"));
    }

    fn put(&mut self, figure: Figure, field: &str) {
        let at = self.at;
        self.calc.place(figure, || format!("{at}{field}"));
    }

    /// A number of the document; one that was checked before.
    fn number(&mut self, symbol: &str, entry: &Entry<Real>, unit: &'static str) -> Figure {
        self.input(symbol, entry, entry.number().unwrap_or(f64::NAN), unit)
    }

    fn input<K: Kind>(&mut self, symbol: &str, entry: &Entry<K>, value: f64, unit: &'static str) -> Figure {
        self.calc.input(symbol, value, unit, entry.path(), entry.text().trim())
    }

    /// A number of the document that has a value when it is left out.
    fn stated(
        &mut self,
        symbol: &str,
        entry: Option<&Entry<Real>>,
        unless: f64,
        unit: &'static str,
    ) -> Figure {
        match entry {
            Some(entry) => self.number(symbol, entry, unit),
            None => self.calc.constant(symbol, unless, unit, "unless stated"),
        }
    }

    fn count(&mut self, entry: Option<&Entry<Count>>) -> Figure {
        match entry {
            Some(entry) => {
                let count = entry.count(1, 1000).map_or(f64::NAN, f64::from);
                self.input("count", entry, count, "1")
            }
            None => self.calc.constant("count", 1.0, "1", "unless stated"),
        }
    }

    /// Middle of the variation and how much it varies.
    fn varies(&mut self, entry: &ContributorEntry, of: &Contributor, unit: &'static str) -> Varies {
        let limits = [&entry.lower, &entry.upper];
        if let Some((mean, deviation)) =
            self.symmetric(&entry.distribution, entry.centre.as_ref(), Some(limits), unit)
        {
            return Varies { mean, spread: Spread::Deviation(deviation) };
        }
        let source = "of its distribution, from its definition";
        let variance_unit = if unit == UNIT { SQUARE } else { "" };
        Varies {
            mean: self.calc.constant("mean", of.variation.mean(), unit, source),
            spread: Spread::Variance(self.calc.constant(
                "variance",
                of.variation.variance(),
                variance_unit,
                source,
            )),
        }
    }

    /// Mean and standard deviation of what has a formula.
    fn symmetric(
        &mut self,
        entry: &VariationEntry,
        centre: Option<&Entry<Real>>,
        limits: Option<[&Entry<Real>; 2]>,
        unit: &'static str,
    ) -> Option<(Figure, Figure)> {
        let between = |steps: &mut Self, half: Figure, n: f64| {
            let n = steps.calc.constant("n", n, "1", "of this distribution: JCGM 101:2008, 6.4");
            steps.calc.figure(OfHalfWidth, [half, n])
        };
        let deviation = match entry {
            VariationEntry::Normal(n) => self.number("u", &n.standard_deviation, unit),
            VariationEntry::Rectangular(r) => {
                let half = self.number("half_width", &r.half_width, unit);
                between(self, half, 3.0)
            }
            VariationEntry::Arcsine(a) => {
                let half = self.number("half_width", &a.half_width, unit);
                between(self, half, 2.0)
            }
            VariationEntry::Trapezoidal(t) => {
                let half = self.number("half_width", &t.half_width, unit);
                let beta = self.number("beta", &t.beta, "1");
                self.calc.figure(OfTrapezoid, [half, beta])
            }
            VariationEntry::UniformWithinLimits(_) => {
                let [lower, upper] = self.limits(limits?, unit);
                let half = self.calc.figure(HalfWidth, [lower, upper]);
                return Some((self.calc.figure(MiddleOfHalf, [lower, half]), between(self, half, 3.0)));
            }
            VariationEntry::NormalByCapability(c) => {
                let [lower, upper] = self.limits(limits?, unit);
                let (cp, cpk) = (self.number("cp", &c.cp, "1"), self.number("cpk", &c.cpk, "1"));
                let sigma = self.calc.figure(Process, [lower, upper, cp]);
                let shift = self.calc.figure(Moved, [sigma, cp, cpk]);
                let middle = self.calc.figure(Middle, [lower, upper]);
                let mean = match c.toward {
                    Toward::Upper => self.calc.figure(Up, [middle, shift]),
                    Toward::Lower => self.calc.figure(Down, [middle, shift]),
                };
                return Some((mean, sigma));
            }
            _ => return None,
        };
        Some((self.stated("mean", centre, 0.0, unit), deviation))
    }

    fn limits(&mut self, limits: [&Entry<Real>; 2], unit: &'static str) -> [Figure; 2] {
        let [lower, upper] = limits;
        [self.number("lower", lower, unit), self.number("upper", upper, unit)]
    }

    fn linear(&mut self, stack: &Stack, limits: Option<(f64, f64)>) {
        let mut parts = Parts::default();
        let mut changes = Vec::new();
        for (entry, of) in self.stack.contributors.iter().zip(stack.contributors()) {
            self.heading(of.name());
            changes.push(self.contributor(entry, of, &mut parts));
        }
        for cause in &self.stack.causes {
            self.heading(cause.name.text().trim());
            self.cause(cause, &changes, &mut parts);
        }
        self.heading("the whole");
        let nominal = self.calc.sum("nominal", &parts.nominals, DEFINITION);
        self.put(nominal, "/nominal");
        let [low, high] = [("lower", &parts.lows), ("upper", &parts.highs)].map(|(end, of)| {
            let sum = self.calc.sum(end, of, "worst case: definition");
            self.put(sum, &format!("/worst_case/{end}"));
            self.put(sum, &format!("/worst_case/{end}_bound"));
            sum
        });
        self.published([low, high], &parts.halves);
        let mean = self.calc.sum("mean", &parts.means, DEFINITION);
        self.put(mean, "/mean");
        let source = "variance of a sum of independent terms";
        let deviation = self.calc.root_sum_square("s", &parts.deviations, source);
        self.put(deviation, "/standard_deviation");
        self.shares(&stack.shares(), &parts.deviations, deviation);
        if let Some((lower, upper)) = limits {
            self.capability([lower, upper], mean, deviation);
        }
    }

    /// What a contributor adds; gives its coefficient and its count.
    fn contributor(&mut self, entry: &ContributorEntry, of: &Contributor, parts: &mut Parts) -> [Figure; 2] {
        let nominal = self.number("nominal", &entry.nominal, UNIT);
        let [lower, upper] = self.limits([&entry.lower, &entry.upper], UNIT);
        let coefficient = self.stated("coefficient", entry.coefficient.as_ref(), 1.0, "1");
        let count = self.count(entry.count.as_ref());
        let part = self.calc.figure(NominalPart, [nominal, coefficient, count]);
        let factor = self.calc.figure(Factor, [coefficient, count]);
        parts.nominals.push(part);
        parts.lows.push(self.calc.figure(Lowest, [nominal, lower, upper, factor]));
        parts.highs.push(self.calc.figure(Highest, [nominal, lower, upper, factor]));
        let half = self.calc.figure(Half, [lower, upper, coefficient]);
        parts.halves.extend(core::iter::repeat_n(half, of.count as usize));
        let Varies { mean, spread } = self.varies(entry, of, UNIT);
        let moved = self.calc.figure(MeanMoves, [mean, coefficient, count]);
        parts.means.push(self.calc.sum("mean", &[part, moved], DEFINITION));
        parts.deviations.push(match spread {
            Spread::Deviation(u) => self.calc.figure(Deviation, [u, coefficient, count]),
            Spread::Variance(variance) => {
                self.calc.figure(DeviationOfVariance, [variance, coefficient, count])
            }
        });
        [coefficient, count]
    }

    fn cause(&mut self, entry: &CauseEntry, changes: &[[Figure; 2]], parts: &mut Parts) {
        let Some((_, u)) = self.symmetric(&entry.distribution, None, None, UNIT) else { return };
        let names: Vec<&str> = self.stack.contributors.iter().map(|c| c.name.text().trim()).collect();
        let mut effects = Vec::new();
        for on in &entry.on {
            let place = names.iter().position(|name| *name == on.contributor.text().trim());
            let Some([coefficient, count]) = place.and_then(|k| changes.get(k)).copied() else { continue };
            let factor = self.stated("factor", on.factor.as_ref(), 1.0, "1");
            effects.push(self.calc.figure(Effect, [coefficient, count, factor]));
        }
        let factor = self.calc.sum("factor", &effects, "definition of a shared cause");
        parts.deviations.push(self.calc.figure(CauseDeviation, [u, factor]));
    }

    fn published(&mut self, [low, high]: [Figure; 2], halves: &[Figure]) {
        let middle = self.calc.figure(Middle, [low, high]);
        let rss = self.calc.root_sum_square("rss", halves, "root-sum-square: definition");
        self.about(middle, rss, "root_sum_square");
        let bender = self.calc.figure(Bender, [rss]);
        self.about(middle, bender, "bender");
        let mut modified = rss;
        if halves.len() > 1 && rss.value > 0.0 {
            let total = self.calc.sum("total", halves, "sum of the half-widths");
            let n = self.calc.constant("n", super::number(halves.len()), "1", "number of pieces");
            let factor = self.calc.figure(ModifiedFactor, [rss, total, n]);
            modified = self.calc.figure(Modified, [rss, factor]);
        }
        self.about(middle, modified, "modified");
    }

    fn about(&mut self, middle: Figure, half: Figure, form: &str) {
        let (lower, upper) =
            (self.calc.figure(Below, [middle, half]), self.calc.figure(Above, [middle, half]));
        self.put(lower, &format!("/published/{form}/lower"));
        self.put(upper, &format!("/published/{form}/upper"));
    }

    fn shares(&mut self, shares: &[Share], deviations: &[Figure], whole: Figure) {
        let contributors = self.stack.contributors.len();
        for (k, share) in shares.iter().enumerate() {
            let place = if share.is_shared { contributors + share.place } else { share.place };
            let Some(deviation) = deviations.get(place).copied() else { continue };
            self.put(deviation, &format!("/shares/{k}/standard_deviation"));
            if whole.value > 0.0 {
                let of = self.calc.figure(ShareOf, [deviation, whole]);
                self.put(of, &format!("/shares/{k}/share"));
            }
        }
    }

    fn capability(&mut self, limits: [f64; 2], mean: Figure, sigma: Figure) {
        let entries = self.stack.limits.as_ref().map(|l| (l.lower.as_ref(), l.upper.as_ref()));
        let (Some((Some(lower), Some(upper))), true) = (entries, sigma.value > 0.0) else { return };
        let [lower, upper] = [("lower", lower, limits[0]), ("upper", upper, limits[1])]
            .map(|(symbol, entry, value)| self.input(symbol, entry, value, UNIT));
        let cp = self.calc.figure(Cp, [lower, upper, sigma]);
        self.put(cp, "/exact/cp");
        let cpk = self.calc.figure(Cpk, [lower, upper, mean, sigma]);
        self.put(cpk, "/exact/cpk");
    }

    fn function(&mut self, function: &Function<Model>, report: &StackReport) {
        let (mut nominals, mut means, mut parts) = (Vec::new(), Vec::new(), Vec::new());
        for of in function.contributors() {
            let entry = self.stack.contributors.iter().find(|c| c.name.text().trim() == of.name().trim());
            let share = report.shares.iter().position(|s| s.name == of.name());
            let (Some(entry), Some(share)) = (entry, share) else { continue };
            self.heading(of.name());
            let unit = self.stack.engine.map_or("", |engine| engine.unit_of(of.name()));
            let nominal = self.number("nominal", &entry.nominal, unit);
            let Varies { mean, spread } = self.varies(entry, of, unit);
            nominals.push(nominal);
            means.push(self.calc.figure(MeanSize, [nominal, mean]));
            let slope = report.shares.get(share).and_then(|s| s.sensitivity).unwrap_or(f64::NAN);
            let slope = self.calc.constant("sensitivity", slope, "", "derivative by the rules of derivation");
            let part = match spread {
                Spread::Deviation(u) => self.calc.figure(FirstOrder, [slope, u]),
                Spread::Variance(variance) => self.calc.figure(FirstOrderOfVariance, [slope, variance]),
            };
            let deviation = self.calc.figure(Root, [part]);
            self.put(deviation, &format!("/shares/{share}/standard_deviation"));
            parts.push((share, part));
        }
        self.heading("the whole");
        let source = if self.stack.engine.is_some() { "ready-made stack" } else { "formula of the document" };
        let nominal = self.calc.of_model("nominal", function.law(), &nominals, UNIT, source);
        self.put(nominal, "/nominal");
        let mean = self.calc.of_model("mean", function.law(), &means, UNIT, source);
        self.put(mean, "/propagation/first_order_mean");
        let terms: Vec<Figure> = parts.iter().map(|(_, part)| *part).collect();
        let variance = self.calc.sum("variance", &terms, PROPAGATION);
        let deviation = self.calc.figure(Root, [variance]);
        self.put(deviation, "/propagation/first_order_standard_deviation");
        for (k, part) in parts.into_iter().filter(|_| variance.value > 0.0) {
            let share = self.calc.figure(ShareOfVariance, [part, variance]);
            self.put(share, &format!("/shares/{k}/share"));
        }
    }
}

/// What the contributors add, each in turn.
#[derive(Default)]
struct Parts {
    nominals: Vec<Figure>,
    lows: Vec<Figure>,
    highs: Vec<Figure>,
    /// one for each piece
    halves: Vec<Figure>,
    means: Vec<Figure>,
    /// of the contributors, then of the causes
    deviations: Vec<Figure>,
}
