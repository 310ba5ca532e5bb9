#![doc = include_str!("../../docs/uncertainty.md")]

use super::distribution::{Distribution, LEAST_DOF, coverage, degrees, refused, within};
use super::jet::Jet;
use super::statistics::{self, sum};
use crate::error::{Error, ErrorKind, moves_the_cursor};
use crate::special;

/// Largest size of an estimate, a coefficient or a result.
const LARGEST: f64 = 1e100;

/// Number of a source within its [`Inputs`].
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct SourceId(usize);

/// An independent source of uncertainty.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Source {
    name: String,
    pub(super) distribution: Distribution,
    /// the other one of two that share one estimate of variance
    pub(super) partner: Option<usize>,
}

/// An estimate with a linear combination of sources.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Input {
    pub(crate) estimate: f64,
    pub(crate) terms: Vec<(usize, f64)>,
}

/// The inputs of a model and the independent sources they are made of. See the [module](self).
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Inputs {
    pub(super) sources: Vec<Source>,
    pub(super) inputs: Vec<Input>,
}

/// What one source does to the result.
#[derive(Debug, Clone, PartialEq)]
pub struct Contribution<'a> {
    /// Name of the source.
    pub source: &'a str,
    /// Derivative of the model by the source, `c_i`.
    pub sensitivity: f64,
    /// Standard uncertainty of the source, `u_i`.
    pub standard_uncertainty: f64,
    /// Its degrees of freedom.
    pub dof: f64,
    /// `c_i u_i` with its sign, in the unit of the result.
    pub contribution: f64,
    /// `(c_i u_i)^2 / u_c^2`, 0 to 1.
    pub share: f64,
}

/// A result to first order. Source: JCGM 100:2008, 5.1.2, (10), and G.4.1, (G.2b).
#[derive(Debug, Clone, PartialEq)]
pub struct Evaluation<'a> {
    /// The model at the estimates of its inputs.
    pub estimate: f64,
    /// Combined standard uncertainty `u_c`.
    pub standard_uncertainty: f64,
    /// Effective degrees of freedom by Welch-Satterthwaite; infinite when every source's are.
    pub dof: f64,
    /// Contributions, the largest share first; equal ones in the order of the sources.
    pub contributions: Vec<Contribution<'a>>,
}

/// What two sources do together to second order.
#[derive(Debug, Clone, PartialEq)]
pub struct Product {
    /// Name of the one.
    pub first: String,
    /// Name of the other; the same for the square of one.
    pub second: String,
    /// `|f_ij| u_i u_j`, or for a square `|f_ii| u_i^2 / sqrt(2)`, in the unit of the result.
    pub contribution: f64,
}

/// What the second order adds. Source: JCGM 100:2008, 5.1.2, note, for normal sources.
#[derive(Debug, Clone, PartialEq)]
pub struct SecondOrder {
    /// Root of the first-order variance, `1/2 sum sum f_ij^2 u_i^2 u_j^2` and `sum sum f_i f_ijj u_i^2 u_j^2`; none when the last makes it
    /// negative: then the series says nothing, and the answer is a Monte Carlo run.
    pub standard_uncertainty: Option<f64>,
    /// `1/2 sum f_ii u_i^2`: the mean of the result less the model at the mean of its inputs.
    pub shift_of_mean: f64,
    /// The terms of `1/2 sum sum f_ij^2 u_i^2 u_j^2` as their roots, the largest first; those that are 0 are left out.
    pub products: Vec<Product>,
    /// `sum sum f_i f_ijj u_i^2 u_j^2`, the part from third derivatives; a variance that can be negative.
    pub third_derivatives: f64,
}

/// Which degrees of freedom enter the t-distribution.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Degrees {
    /// Those of Welch-Satterthwaite as they are.
    AsComputed,
    /// Truncated to the next lower integer. Source: JCGM 100:2008, G.4.1.
    Truncated,
}

/// An expanded uncertainty and how it came about.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Expanded {
    /// Coverage probability.
    pub probability: f64,
    /// Degrees of freedom that entered.
    pub dof: f64,
    /// Coverage factor `t_p(dof)`.
    pub coverage_factor: f64,
    /// `t_p(dof) u_c`, in the unit of the result.
    pub expanded_uncertainty: f64,
}

impl Inputs {
    /// No inputs yet.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// Names an independent source of uncertainty.
    ///
    /// # Errors
    /// [`ErrorKind::MissingField`] without a name, [`ErrorKind::ControlCharacter`], [`ErrorKind::Repeated`] for a name that is there.
    pub fn source(&mut self, name: &str, distribution: Distribution) -> Result<SourceId, Error> {
        self.check_name(name)?;
        self.sources.push(Source { name: name.to_owned(), distribution, partner: None });
        Ok(SourceId(self.sources.len() - 1))
    }

    /// Adds an input: an estimate and the sources of its error, each with the factor it enters by. Inputs that share a source are
    /// correlated by it. Returns the place of the input among the arguments of a model.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`] for numbers beyond 1e100, [`ErrorKind::UnknownName`] for a source of other inputs.
    pub fn input(&mut self, estimate: f64, terms: &[(SourceId, f64)]) -> Result<usize, Error> {
        within("estimate", estimate, -LARGEST, LARGEST)?;
        for (source, factor) in terms {
            within("factor", *factor, -LARGEST, LARGEST)?;
            if source.0 >= self.sources.len() {
                let error = Error::new(ErrorKind::UnknownName, source.0.to_string(), "no such source");
                return Err(error.at("source"));
            }
        }
        let terms = terms.iter().map(|(source, factor)| (source.0, *factor)).collect();
        self.inputs.push(Input { estimate, terms });
        Ok(self.inputs.len() - 1)
    }

    /// Adds an input with a source of its own, which bears its name.
    ///
    /// # Errors
    /// As [`Self::source`] and [`Self::input`].
    pub fn quantity(
        &mut self,
        name: &str,
        estimate: f64,
        distribution: Distribution,
    ) -> Result<usize, Error> {
        within("estimate", estimate, -LARGEST, LARGEST)?;
        let source = self.source(name, distribution)?;
        self.input(estimate, &[(source, 1.0)])
    }

    /// Adds the two parameters of a fitted line, correlated as the fit leaves them: the value at its origin, then the slope. Their sources
    /// are the mean of the readings and the slope, which are independent but share one estimate of variance: its degrees of
    /// freedom count once, and sampled they are jointly t.
    ///
    /// # Errors
    /// As [`Self::source`] and [`Self::input`].
    pub fn line(&mut self, name: &str, line: &StraightLine) -> Result<[usize; 2], Error> {
        let names = [format!("{name}: mean"), format!("{name}: slope")];
        names.iter().try_for_each(|name| self.check_name(name))?;
        let mean = Distribution::student_t(line.mean_uncertainty, line.dof)?;
        let slope = Distribution::student_t(line.slope_uncertainty, line.dof)?;
        let arm = line.origin - line.mean_x;
        within("origin", arm, -LARGEST, LARGEST)?;
        let [mean_name, slope_name] = names;
        let (first, second) = (self.sources.len(), self.sources.len() + 1);
        self.sources.push(Source { name: mean_name, distribution: mean, partner: Some(second) });
        self.sources.push(Source { name: slope_name, distribution: slope, partner: Some(first) });
        let at_origin = self.input(line.intercept, &[(SourceId(first), 1.0), (SourceId(second), arm)])?;
        Ok([at_origin, self.input(line.slope, &[(SourceId(second), 1.0)])?])
    }

    /// Estimate, standard uncertainty, contributions and degrees of freedom of a model, to first order.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`] when the model or a first derivative is not finite at the estimates.
    pub fn evaluate(&self, model: impl Fn(&[Jet]) -> Jet) -> Result<Evaluation<'_>, Error> {
        let count = self.inputs.len();
        let result = model(&self.jets(Jet::variable));
        let sensitivities = self.sensitivities(&result.gradient(count));
        let parts: Vec<f64> =
            sensitivities.iter().zip(&self.sources).map(|(c, source)| c * source.u() + 0.0).collect();
        let u = root_sum_square(&parts);
        finite("the model", result.value())?;
        finite("a first derivative of the model", u)?;
        let share = |part: f64| if u > 0.0 { (part / u) * (part / u) } else { 0.0 };
        let mut contributions: Vec<Contribution<'_>> = self
            .sources
            .iter()
            .zip(sensitivities.iter().zip(&parts))
            .map(|(source, (sensitivity, part))| Contribution {
                source: &source.name,
                sensitivity: *sensitivity,
                standard_uncertainty: source.u(),
                dof: source.distribution.dof(),
                contribution: *part,
                share: share(*part),
            })
            .collect();
        let dof = self.effective_dof(parts.iter().map(|part| share(*part)));
        contributions.sort_by(|a, b| b.share.total_cmp(&a.share));
        Ok(Evaluation { estimate: result.value(), standard_uncertainty: u, dof, contributions })
    }

    /// What the second order adds to [`Self::evaluate`].
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`] when the model or a derivative up to the third is not finite at the estimates.
    pub fn second_order(&self, model: impl Fn(&[Jet]) -> Jet) -> Result<SecondOrder, Error> {
        let count = self.inputs.len();
        let result = model(&self.jets(Jet::variable_second));
        finite("the model", result.value())?;
        let sensitivities = self.sensitivities(&result.gradient(count));
        let parts: Vec<f64> = sensitivities.iter().zip(&self.sources).map(|(c, s)| c * s.u()).collect();
        let scaled = self.scaled_hessian(&result.hessian(count));
        let shift_of_mean = diagonal(&scaled).sum::<f64>() / 2.0 + 0.0;
        let products = self.products(&scaled);
        let third_derivatives = self.third_derivatives(&sensitivities, &model);
        let first = root_sum_square(&parts);
        finite("a first derivative of the model", first)?;
        let product = root_sum_square(&products.iter().map(|p| p.contribution).collect::<Vec<_>>());
        finite("a second derivative of the model", product + shift_of_mean)?;
        finite("a third derivative of the model", third_derivatives)?;
        let variance = sum([first * first, product * product, third_derivatives].into_iter());
        finite("the variance of the model", variance)?;
        let standard_uncertainty = (variance >= 0.0).then(|| variance.sqrt());
        Ok(SecondOrder { standard_uncertainty, shift_of_mean, products, third_derivatives })
    }

    /// Effective degrees of freedom from the share of each source in the variance; sources with one estimate of variance count as one.
    fn effective_dof(&self, shares: impl Iterator<Item = f64>) -> f64 {
        let shares: Vec<f64> = shares.collect();
        let of = |k: usize| shares.get(k).copied().unwrap_or_default();
        let terms = self.sources.iter().enumerate().map(|(k, source)| match source.partner {
            Some(other) if other < k => (0.0, f64::INFINITY),
            partner => (of(k) + partner.map_or(0.0, of), source.distribution.dof()),
        });
        welch_satterthwaite(terms)
    }

    /// The inputs as variables of a model.
    fn jets(&self, make: impl Fn(f64, usize, usize) -> Jet) -> Vec<Jet> {
        let count = self.inputs.len();
        self.inputs.iter().enumerate().map(|(k, input)| make(input.estimate, k, count)).collect()
    }

    /// Derivative by each source from those by each input.
    fn sensitivities(&self, gradient: &[f64]) -> Vec<f64> {
        let mut out = vec![0.0; self.sources.len()];
        for (input, slope) in self.inputs.iter().zip(gradient) {
            for (source, factor) in &input.terms {
                if let Some(place) = out.get_mut(*source) {
                    *place += slope * factor;
                }
            }
        }
        out
    }

    /// How much each input changes with one source.
    fn column(&self, source: usize) -> Vec<f64> {
        let factor = |input: &Input| input.terms.iter().filter(|t| t.0 == source).map(|t| t.1).sum();
        self.inputs.iter().map(factor).collect()
    }

    /// Lower triangle of `f_ij u_i u_j` over the sources.
    fn scaled_hessian(&self, hessian: &[f64]) -> Vec<Vec<f64>> {
        let columns: Vec<Vec<f64>> = (0..self.sources.len()).map(|k| self.column(k)).collect();
        let images: Vec<Vec<f64>> = columns.iter().map(|column| symmetric_times(hessian, column)).collect();
        let entry = |i: usize, j: usize, a: &Source, b: &Source| match (columns.get(i), images.get(j)) {
            (Some(column), Some(image)) => {
                a.u()
                    * b.u()
                    * sum(column.iter().zip(image).map(|(c, h)| if *c == 0.0 { 0.0 } else { c * h }))
            }
            _ => 0.0,
        };
        let row = |(i, a): (usize, &Source)| {
            self.sources.iter().enumerate().take(i + 1).map(|(j, b)| entry(i, j, a, b)).collect()
        };
        self.sources.iter().enumerate().map(row).collect()
    }

    fn products(&self, scaled: &[Vec<f64>]) -> Vec<Product> {
        let mut out = Vec::new();
        for (i, (row, a)) in scaled.iter().zip(&self.sources).enumerate() {
            for (j, (term, b)) in row.iter().zip(&self.sources).enumerate() {
                // each pair stands twice in the sum, each square once
                let contribution = if i == j { term.abs() / 2.0_f64.sqrt() } else { term.abs() };
                if contribution != 0.0 {
                    out.push(Product { first: b.name.clone(), second: a.name.clone(), contribution });
                }
            }
        }
        crate::order::sort_by(&mut out, |a, b| b.contribution.total_cmp(&a.contribution));
        out
    }

    /// `sum_j u_j^2 sum_i f_i u_i^2 f_ijj`: for each source the third derivative once along `f_i u_i^2` and twice along the source.
    fn third_derivatives(&self, sensitivities: &[f64], model: &impl Fn(&[Jet]) -> Jet) -> f64 {
        let weights: Vec<f64> =
            sensitivities.iter().zip(&self.sources).map(|(c, source)| c * source.u() * source.u()).collect();
        let along: Vec<f64> = self
            .inputs
            .iter()
            .map(|i| i.terms.iter().map(|(s, f)| f * weights.get(*s).copied().unwrap_or_default()).sum())
            .collect();
        let term = |(k, source): (usize, &Source)| {
            let (column, u) = (self.column(k), source.u());
            let jets: Vec<Jet> = self
                .inputs
                .iter()
                .zip(along.iter().zip(&column))
                .map(|(input, (s, t))| Jet::along(input.estimate, *s, t * u))
                .collect();
            model(&jets).third()
        };
        sum(self.sources.iter().enumerate().map(term)) + 0.0
    }

    /// Names of the sources whose distribution has no standard deviation.
    pub(crate) fn without_deviation(&self) -> Vec<&str> {
        let wide = |source: &&Source| source.distribution.standard_deviation().is_none();
        self.sources.iter().filter(wide).map(|source| source.name.as_str()).collect()
    }

    fn check_name(&self, name: &str) -> Result<(), Error> {
        let refuse = |kind, reason: &str| Err(Error::new(kind, name, reason).at("name"));
        if name.trim().is_empty() {
            return refuse(ErrorKind::MissingField, "a source needs a name");
        }
        if name.chars().any(moves_the_cursor) {
            return refuse(ErrorKind::ControlCharacter, "a name holds no control characters");
        }
        if self.sources.iter().any(|source| source.name == name) {
            return refuse(
                ErrorKind::Repeated,
                "this source stands twice; an input that shares it refers to it",
            );
        }
        Ok(())
    }
}

impl Source {
    fn u(&self) -> f64 {
        self.distribution.standard_uncertainty()
    }
}

impl Evaluation<'_> {
    /// Expanded uncertainty for a coverage probability between 0 and 1, of a result that is about normal.
    ///
    /// Source: JCGM 100:2008, G.4.1 and G.6.4.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`], also when truncation leaves no degree of freedom.
    pub fn expanded(&self, probability: f64, degrees: Degrees) -> Result<Expanded, Error> {
        let probability = coverage("probability", probability)?;
        let dof = match degrees {
            Degrees::AsComputed => self.dof,
            Degrees::Truncated => self.dof.floor(),
        };
        if dof < LEAST_DOF {
            let reason = "too few degrees of freedom for an expanded uncertainty";
            return Err(refused("dof", self.dof, reason, LEAST_DOF, f64::INFINITY));
        }
        let coverage_factor = special::coverage_factor(probability, dof);
        let expanded_uncertainty = coverage_factor * self.standard_uncertainty;
        finite("the expanded uncertainty", expanded_uncertainty)?;
        Ok(Expanded { probability, dof, coverage_factor, expanded_uncertainty })
    }
}

/// Effective degrees of freedom of independent contributions `c_i u_i` to one result, from the degrees of freedom of each (infinite ones too).
/// Infinite when all are that count. Source: JCGM 100:2008, G.4.1, (G.2b).
///
/// # Errors
/// [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`], with the place: `dofs/3`; [`ErrorKind::MissingField`] without contributions,
/// [`ErrorKind::Contradiction`] when there are not as many of the one as of the other.
pub fn effective_dof(contributions: &[f64], dofs: &[f64]) -> Result<f64, Error> {
    if contributions.is_empty() {
        return Err(statistics::too_few("contributions", "at least one contribution is needed"));
    }
    if contributions.len() != dofs.len() {
        let reason = format!("{} contributions need as many degrees of freedom", contributions.len());
        return Err(Error::new(ErrorKind::Contradiction, dofs.len().to_string(), reason).at("dofs"));
    }
    for (k, (part, dof)) in contributions.iter().zip(dofs).enumerate() {
        within(&format!("contributions/{k}"), *part, -LARGEST, LARGEST)?;
        degrees(&format!("dofs/{k}"), *dof)?;
    }
    let u = root_sum_square(contributions);
    let share = |part: f64| if u > 0.0 { (part / u) * (part / u) } else { 0.0 };
    Ok(welch_satterthwaite(contributions.iter().map(|part| share(*part)).zip(dofs.iter().copied())))
}

/// From the share of each estimate of variance in the whole, and its degrees of freedom.
fn welch_satterthwaite(shares: impl Iterator<Item = (f64, f64)>) -> f64 {
    let total = sum(shares.map(|(share, dof)| share * share / dof));
    if total > 0.0 { 1.0 / total } else { f64::INFINITY }
}

/// A straight line through calibration readings by least squares, `y = intercept + slope (x - origin)`, `x` taken as exact.
///
/// Source: JCGM 100:2008, H.3. Intercept and residuals in the unit of `y`, the slope in that per unit of `x`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StraightLine {
    /// Where the intercept is taken.
    pub origin: f64,
    /// Value at the origin.
    pub intercept: f64,
    /// Its standard uncertainty.
    pub intercept_uncertainty: f64,
    /// Slope.
    pub slope: f64,
    /// Its standard uncertainty.
    pub slope_uncertainty: f64,
    /// Correlation of intercept and slope; 0 for a line without scatter at the mean of `x`.
    pub correlation: f64,
    /// Sum of the squared residuals.
    pub residual_squares: f64,
    /// Residual standard deviation `s`.
    pub residual_deviation: f64,
    /// Degrees of freedom, two fewer than the points.
    pub dof: f64,
    /// Mean of `x`.
    pub mean_x: f64,
    /// Value at the mean of `x`, whose error is independent of that of the slope.
    pub mean_y: f64,
    /// Its standard uncertainty.
    pub mean_uncertainty: f64,
}

impl StraightLine {
    /// Fits a line to three points or more, each `(x, y)`.
    ///
    /// # Errors
    /// [`ErrorKind::MissingField`] with fewer points, [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`] when all `x` are equal or numbers overflow.
    pub fn fit(points: &[(f64, f64)], origin: f64) -> Result<Self, Error> {
        within("origin", origin, -LARGEST, LARGEST)?;
        if points.len() < 3 {
            return Err(statistics::too_few("points", "at least three points are needed"));
        }
        let (x, y): (Vec<f64>, Vec<f64>) = points.iter().copied().unzip();
        let (mean_x, mean_y) = (statistics::sample(&x)?.mean, statistics::sample(&y)?.mean);
        let from_mean = |(x, y): &(f64, f64)| (x - mean_x, y - mean_y);
        let squares = sum(points.iter().map(from_mean).map(|(dx, _)| dx * dx));
        let slope = sum(points.iter().map(from_mean).map(|(dx, dy)| dx * dy)) / squares;
        if !(squares > 0.0 && slope.is_finite()) {
            return Err(refused("x", squares, "the points need different x", f64::MIN_POSITIVE, LARGEST));
        }
        let residuals = points.iter().map(from_mean).map(|(dx, dy)| dy - slope * dx);
        let residual_squares = sum(residuals.map(|r| r * r));
        let (count, arm) = (statistics::as_number(points.len()), origin - mean_x);
        let dof = count - 2.0;
        let s = (residual_squares / dof).sqrt();
        // of the intercept, in units of s
        let spread = (1.0 / count + arm * arm / squares).sqrt();
        let line = StraightLine {
            origin,
            intercept: mean_y + slope * arm,
            intercept_uncertainty: s * spread,
            slope,
            slope_uncertainty: s / squares.sqrt(),
            correlation: arm / (squares.sqrt() * spread),
            residual_squares,
            residual_deviation: s,
            dof,
            mean_x,
            mean_y,
            mean_uncertainty: s / count.sqrt(),
        };
        finite("the line", line.intercept_uncertainty + line.slope_uncertainty + line.intercept)?;
        Ok(line)
    }

    /// Value of the line at `x` and its standard uncertainty, with [`dof`](Self::dof) degrees of freedom; without the scatter of a new reading.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`].
    pub fn at(&self, x: f64) -> Result<(f64, f64), Error> {
        let arm = within("x", x, -LARGEST, LARGEST)? - self.mean_x;
        let value = self.mean_y + self.slope * arm;
        let u = root_sum_square(&[self.mean_uncertainty, arm * self.slope_uncertainty]);
        finite("the line", value + u)?;
        Ok((value, u))
    }
}

/// A symmetric matrix, lower triangle row by row, times a vector.
fn symmetric_times(triangle: &[f64], vector: &[f64]) -> Vec<f64> {
    let mut out = vec![0.0; vector.len()];
    let mut entries = triangle.iter();
    for (i, vi) in vector.iter().enumerate() {
        for (j, vj) in vector.iter().enumerate().take(i + 1) {
            let Some(entry) = entries.next() else { return out };
            add_to(&mut out, i, entry, *vj);
            if i != j {
                add_to(&mut out, j, entry, *vi);
            }
        }
    }
    out
}

/// Adds a product, where an input that does not change keeps its derivative out.
fn add_to(out: &mut [f64], place: usize, entry: &f64, factor: f64) {
    if factor != 0.0
        && let Some(sum) = out.get_mut(place)
    {
        *sum += entry * factor;
    }
}

fn diagonal(triangle: &[Vec<f64>]) -> impl Iterator<Item = f64> {
    triangle.iter().filter_map(|row| row.last().copied())
}

/// Root of the sum of squares, scaled by the largest so that no square is lost or overflows.
pub(crate) fn root_sum_square(parts: &[f64]) -> f64 {
    let largest = parts.iter().fold(0.0_f64, |most, part| {
        // a part that is not a number must not be passed over
        if part.abs() > most || part.is_nan() { part.abs() } else { most }
    });
    if !(largest > 0.0 && largest.is_finite()) {
        return largest;
    }
    largest * sum(parts.iter().map(|part| (part / largest) * (part / largest))).sqrt()
}

pub(super) fn finite(what: &str, value: f64) -> Result<(), Error> {
    if value.is_finite() {
        return Ok(());
    }
    let reason = format!("{what} is not finite at the estimates");
    Err(Error::new(ErrorKind::NotFinite, value.to_string(), reason).at("model"))
}
