//! Tolerances of least cost for a wanted probability outside, or a wanted Cpk.
//!
//! At the optimum the tolerances between their bounds have one price: `-dC/dt = lambda dh/dt`, `h` the logarithm of the probability outside over
//! the wanted one (or of the wanted Cpk over the one there is). For a cost `a + b / t^k` and `h` that changes as `t^2`, as it does for a normal
//! stack, `t = (k b / (lambda w))^(1 / (k + 2))`, `w = (dh / d ln t) / t^2`. The weights `w` are taken from exact derivatives, `lambda` is found so that the
//! exact tail is the wanted one, and both again until the tolerances stand: then the condition holds exactly, whatever `h` is.

use super::{Stack, Tail};
use crate::error::{Error, ErrorKind};
use crate::measurement::distribution::{above_zero, refused, within};
use crate::measurement::statistics::{sum, too_few};

/// Cost of a contributor over its tolerance `t`, half the distance of its limits: `fixed + factor / t^power`.
///
/// Power 1 is the reciprocal, 2 the reciprocal squared, another the reciprocal power model. Source: G. H. Sutherland and B. Roth, ASME Journal of Engineering for
/// Industry 97 (1975); K. W. Chase and others, Manufacturing Review 3 (1990); from memory.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ToleranceCost {
    /// Place of the contributor.
    pub place: usize,
    /// Cost that does not depend on the tolerance.
    pub fixed: f64,
    /// Factor of the part that does, above 0.
    pub factor: f64,
    /// Power of the tolerance, 0.1 to 10.
    pub power: f64,
    /// Smallest tolerance that can be made.
    pub least: f64,
    /// Largest that is allowed.
    pub most: f64,
}

impl ToleranceCost {
    fn at(&self, tolerance: f64) -> f64 {
        self.fixed + self.factor / libm::pow(tolerance, self.power)
    }
}

/// What an allocation must reach.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Wanted {
    /// At most this probability outside the limits, from the exact distribution.
    Outside(f64),
    /// At least this Cpk, from mean and standard deviation.
    Cpk(f64),
}

impl Wanted {
    /// The one of the two that is given.
    ///
    /// # Errors
    /// [`ErrorKind::MissingField`] when none is given, [`ErrorKind::Contradiction`] for both.
    pub fn either(outside: Option<f64>, cpk: Option<f64>) -> Result<Self, Error> {
        match (outside, cpk) {
            (Some(probability), None) => Ok(Wanted::Outside(probability)),
            (None, Some(cpk)) => Ok(Wanted::Cpk(cpk)),
            (None, None) => Err(too_few("outside", "a probability outside or a Cpk is needed")),
            (Some(_), Some(cpk)) => {
                let reason = "either a probability outside or a Cpk can be wanted";
                Err(Error::new(ErrorKind::Contradiction, cpk.to_string(), reason).at("cpk"))
            }
        }
    }
}

/// Tolerances of least cost, verified.
#[derive(Debug, Clone, PartialEq)]
pub struct Allocation {
    /// Tolerance of each cost, in their order.
    pub tolerances: Vec<f64>,
    /// Sum of the costs.
    pub cost: f64,
    /// Probabilities outside with these tolerances, computed anew from the stack below.
    pub tail: Tail,
    /// Change of the cost for a change of the logarithm of what is wanted; 0 when every tolerance is the largest allowed.
    pub price: f64,
    /// The stack with these tolerances.
    pub stack: Stack,
}

const MOST_ROUNDS: u32 = 200;
/// Change of the logarithm of a tolerance that ends the rounds.
const STANDS: f64 = 1e-9;
/// Logarithm that the wanted value is met to.
const MET: f64 = 1e-11;

impl Stack {
    /// The same stack with other tolerances at some places; see [`Contributor::with_tolerance`](super::Contributor::with_tolerance).
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] for a place that is not there; as `Contributor::with_tolerance`.
    pub fn with_tolerances(&self, tolerances: &[(usize, f64)]) -> Result<Self, Error> {
        let mut contributors = self.contributors.clone();
        for (k, (place, tolerance)) in tolerances.iter().enumerate() {
            let field = format!("tolerances/{k}");
            let Some(contributor) = contributors.get_mut(*place) else {
                let reason = "no contributor has this place";
                return Err(Error::new(ErrorKind::OutOfRange, place.to_string(), reason).at(&field));
            };
            *contributor = contributor.with_tolerance(*tolerance).map_err(|e| e.moved(field))?;
        }
        Ok(Self::made(contributors, self.causes.clone()))
    }

    /// Tolerances of least cost that reach what is wanted against two limits. Contributors without a cost keep theirs.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] when the smallest tolerances do not reach it, with what they do reach; [`ErrorKind::Contradiction`] when the optimum is not found;
    /// [`ErrorKind::MissingField`] without costs, [`ErrorKind::Repeated`] for a contributor with two; [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`],
    /// [`ErrorKind::OutOfOrder`]; as [`Self::sensitivities`].
    pub fn allocate(
        &self,
        (lower, upper): (f64, f64),
        wanted: Wanted,
        costs: &[ToleranceCost],
    ) -> Result<Allocation, Error> {
        check(self, costs)?;
        let goal = Goal::new(self, lower, upper, wanted, costs)?;
        let most: Vec<f64> = costs.iter().map(|c| c.most).collect();
        let least: Vec<f64> = costs.iter().map(|c| c.least).collect();
        if goal.miss(&most)? <= 0.0 {
            return goal.verified(most, 0.0);
        }
        if goal.miss(&least)? > 0.0 {
            return Err(goal.not_reached(&least)?);
        }
        // here something is outside, and derivatives say something
        let mut now = most;
        let (mut share, mut before) = (1.0, f64::INFINITY);
        for _ in 0..MOST_ROUNDS {
            let weights = goal.weights(&now)?;
            let (next, price) = goal.on_the_limit(&weights)?;
            let change = now.iter().zip(&next).map(|(a, b)| libm::log(b / a).abs()).fold(0.0, libm::fmax);
            if change <= STANDS {
                return goal.verified(next, price);
            }
            // a round that does not come nearer goes only a part of the way
            if change > 0.7 * before {
                share = libm::fmax(share / 2.0, 0.05);
            }
            before = change;
            now = now.iter().zip(&next).map(|(a, b)| a * libm::pow(b / a, share)).collect();
        }
        let reason = "the tolerances of least cost were not found";
        Err(Error::new(ErrorKind::Contradiction, "", reason).at("costs"))
    }
}

fn check(stack: &Stack, costs: &[ToleranceCost]) -> Result<(), Error> {
    if costs.is_empty() {
        return Err(too_few("costs", "at least one tolerance needs a cost"));
    }
    for (k, cost) in costs.iter().enumerate() {
        check_one(stack, cost, costs.get(..k).unwrap_or_default())
            .map_err(|e| e.under(&format!("costs/{k}")))?;
    }
    Ok(())
}

fn check_one(stack: &Stack, cost: &ToleranceCost, before: &[ToleranceCost]) -> Result<(), Error> {
    let place = || cost.place.to_string();
    let Some(contributor) = stack.contributors.get(cost.place) else {
        let reason = "no contributor has this place";
        return Err(Error::new(ErrorKind::OutOfRange, place(), reason).at("place"));
    };
    if before.iter().any(|c| c.place == cost.place) {
        return Err(
            Error::new(ErrorKind::Repeated, place(), "this contributor has a cost already").at("place")
        );
    }
    if contributor.tolerance() <= 0.0 {
        let reason = "a contributor without a tolerance has none to change";
        return Err(Error::new(ErrorKind::Contradiction, place(), reason).at("place"));
    }
    within("fixed", cost.fixed, 0.0, 1e12)?;
    above_zero("factor", within("factor", cost.factor, 0.0, 1e12)?)?;
    within("power", cost.power, 0.1, 10.0)?;
    let least = within("least", cost.least, 1e-9, super::LARGEST)?;
    let most = within("most", cost.most, 1e-9, super::LARGEST)?;
    if most < least {
        let reason = "the largest tolerance must not be below the smallest";
        return Err(Error::new(ErrorKind::OutOfOrder, most.to_string(), reason).value(most).at("most"));
    }
    Ok(())
}

/// What is to be met, as a number that is 0 where it is.
struct Goal<'a> {
    stack: &'a Stack,
    lower: f64,
    upper: f64,
    wanted: Wanted,
    costs: &'a [ToleranceCost],
}

impl<'a> Goal<'a> {
    fn new(
        stack: &'a Stack,
        lower: f64,
        upper: f64,
        wanted: Wanted,
        costs: &'a [ToleranceCost],
    ) -> Result<Self, Error> {
        match wanted {
            Wanted::Outside(p) => {
                within("outside", p, 1e-15, 0.5)?;
                stack.outside(lower, upper)?;
            }
            Wanted::Cpk(cpk) => {
                within("cpk", cpk, 0.01, 10.0)?;
                stack.capability(lower, upper)?;
            }
        }
        Ok(Goal { stack, lower, upper, wanted, costs })
    }

    fn made(&self, tolerances: &[f64]) -> Result<Stack, Error> {
        let placed: Vec<(usize, f64)> =
            self.costs.iter().zip(tolerances).map(|(c, t)| (c.place, *t)).collect();
        self.stack.with_tolerances(&placed)
    }

    /// Above 0 where the tolerances are too large; minus infinity where nothing is outside.
    fn miss(&self, tolerances: &[f64]) -> Result<f64, Error> {
        let stack = self.made(tolerances)?;
        Ok(match self.wanted {
            Wanted::Outside(p) => {
                let tail = stack.outside(self.lower, self.upper)?;
                libm::log((tail.below + tail.above) / p)
            }
            Wanted::Cpk(cpk) => {
                let (room, _) = self.room(&stack);
                if room > 0.0 {
                    libm::log(3.0 * cpk * stack.standard_deviation() / room)
                } else {
                    f64::INFINITY
                }
            }
        })
    }

    /// Distance of the mean from the nearer limit, and the direction of that.
    fn room(&self, stack: &Stack) -> (f64, f64) {
        let mean = stack.mean();
        let (below, above) = (mean - self.lower, self.upper - mean);
        if above <= below { (above, 1.0) } else { (below, -1.0) }
    }

    /// Derivative of the miss by the logarithm of each tolerance, over the square of the tolerance.
    fn weights(&self, tolerances: &[f64]) -> Result<Vec<f64>, Error> {
        let stack = self.made(tolerances)?;
        let by: Vec<f64> = match self.wanted {
            Wanted::Outside(_) => {
                let tail = stack.outside(self.lower, self.upper)?;
                let outside = tail.below + tail.above;
                let below = stack.by_logarithms("lower", self.lower, -1.0)?;
                let above = stack.by_logarithms("upper", self.upper, 1.0)?;
                below.iter().zip(above).map(|(a, b)| (a + b) / outside).collect()
            }
            Wanted::Cpk(_) => {
                let variance = stack.standard_deviation() * stack.standard_deviation();
                let (room, direction) = self.room(&stack);
                let by = |c: &super::Contributor| {
                    c.variance() / variance + direction * c.mean_by_logarithm() / room
                };
                stack.contributors.iter().map(by).collect()
            }
        };
        let weight = |(c, t): (&ToleranceCost, &f64)| by.get(c.place).map_or(0.0, |d| d / (t * t));
        Ok(self.costs.iter().zip(tolerances).map(weight).collect())
    }

    /// Tolerances for a price, whose logarithm is given.
    fn priced(&self, weights: &[f64], ln_price: f64) -> Vec<f64> {
        let one = |(c, w): (&ToleranceCost, &f64)| match *w > 0.0 {
            true => {
                let ln = (libm::log(c.power * c.factor / w) - ln_price) / (c.power + 2.0);
                libm::fmin(libm::fmax(libm::exp(ln), c.least), c.most)
            }
            // a wider tolerance does no harm here
            false => c.most,
        };
        self.costs.iter().zip(weights).map(one).collect()
    }

    /// The price at which what is wanted is just met, with its tolerances: by halving and the secant on its logarithm.
    fn on_the_limit(&self, weights: &[f64]) -> Result<(Vec<f64>, f64), Error> {
        // at these prices every tolerance is the largest, or the smallest
        let ends = |bound: fn(&ToleranceCost) -> f64| {
            let one = move |(c, w): (&ToleranceCost, &f64)| {
                libm::log(c.power * c.factor / w) - (c.power + 2.0) * libm::log(bound(c))
            };
            self.costs.iter().zip(weights).filter(|(_, w)| **w > 0.0).map(one).collect::<Vec<_>>()
        };
        let mut low = ends(|c| c.most).into_iter().fold(f64::INFINITY, libm::fmin);
        let mut high = ends(|c| c.least).into_iter().fold(f64::NEG_INFINITY, libm::fmax);
        let (mut miss_low, mut miss_high) = (f64::INFINITY, f64::NEG_INFINITY);
        let mut at = low + (high - low) / 2.0;
        for round in 0..200 {
            let tolerances = self.priced(weights, at);
            let miss = self.miss(&tolerances)?;
            // what is met must be met: a little on the safe side
            if (-MET..=0.0).contains(&miss) || high - low <= 1e-14 * (1.0 + at.abs()) {
                return Ok((self.priced(weights, if miss > 0.0 { high } else { at }), libm::exp(at)));
            }
            if miss > 0.0 {
                (low, miss_low) = (at, miss);
            } else {
                (high, miss_high) = (at, miss);
            }
            let halved = low + (high - low) / 2.0;
            let secant = low + (high - low) * (miss_low + MET / 2.0) / (miss_low - miss_high);
            let inside = secant > low && secant < high && round % 3 != 2;
            at = if inside { secant } else { halved };
        }
        let reason = "no price meets what is wanted";
        Err(Error::new(ErrorKind::Contradiction, "", reason).at("costs"))
    }

    fn not_reached(&self, least: &[f64]) -> Result<Error, Error> {
        let stack = self.made(least)?;
        let (field, wanted, reached) = match self.wanted {
            Wanted::Outside(p) => {
                let tail = stack.outside(self.lower, self.upper)?;
                ("outside", p, tail.below + tail.above)
            }
            Wanted::Cpk(cpk) => ("cpk", cpk, self.room(&stack).0 / (3.0 * stack.standard_deviation())),
        };
        let reason = format!("the smallest tolerances reach only {reached:e}");
        Ok(match self.wanted {
            Wanted::Outside(_) => refused(field, wanted, &reason, reached, 0.5),
            Wanted::Cpk(_) => refused(field, wanted, &reason, 0.01, reached),
        })
    }

    fn verified(&self, tolerances: Vec<f64>, price: f64) -> Result<Allocation, Error> {
        let stack = self.made(&tolerances)?;
        let tail = stack.outside(self.lower, self.upper)?;
        let cost = sum(self.costs.iter().zip(&tolerances).map(|(c, t)| c.at(*t)));
        Ok(Allocation { tolerances, cost, tail, price, stack })
    }
}
