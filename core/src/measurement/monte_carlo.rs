//! Propagation of distributions by Monte Carlo (JCGM 101:2008) of a model of [`Inputs`].
//!
//! Trial `i` is a function of the seed and `i` alone ([`random`](super::random)): every source takes a fixed number of draws, so a run may be cut
//! into parts anywhere, made in any order and by any number of threads, and its results have the same bits. A [`Part`] is a range of
//! trials with its values; everything is computed from the values in the order of the trials, sums in a stated order.
//!
//! Trials are made in blocks, a column of numbers for each draw, source, input and operation, by the widest instructions of the machine
//! ([`Width`]); neither shows in the results. A closure is still called trial by trial; a [`Model`] is evaluated column by column
//! ([`MonteCarlo::of_model`]). A part that begins or ends within a block makes the whole block, so parts of some thousand trials cost least.
//!
//! | distribution | draws | how |
//! |---|---|---|
//! | normal | 1 | inverse by a table of cubics ([`NormalTable`]) |
//! | Student's t, any degrees of freedom | 2 | `sqrt(dof (u^(-2/dof) - 1)) cos(2 pi v)`, exact: the radius of the two-dimensional t by its inverse, and a uniform angle. Source: Bailey, Mathematics of Computation 62 (1994) |
//! | the two sources of a fitted line | 2 together | the same with cosine and sine: they are jointly t |
//! | rectangular, triangular, trapezoidal, arcsine | 1 | inverse in closed form. Source: JCGM 101:2008, 6.4 |
//! | what else a contributor of a [stack](crate::stack) can have | 1 | inverse: in closed form, by a table of cubics for a beta, by place for a sample |
//! | curvilinear trapezoid | 2 | half-width first, then the value. Source: JCGM 101:2008, 6.4.3.4 |
//!
//! Quantiles are values of trials and not of a grid. A [`Part`] keeps every value, 8 bytes each; [`MonteCarlo::run`] and [`MonteCarlo::tally`] keep
//! sums and those that can be ends of the intervals, to the same bits and in less time. A Student's t of two degrees of freedom or fewer has no
//! standard deviation: with such a source that of the trials means nothing, but the intervals do.
//!
//! ```
//! use gaugepoint::measurement::distribution::Distribution;
//! use gaugepoint::measurement::monte_carlo::{MonteCarlo, Part};
//! use gaugepoint::measurement::uncertainty::Inputs;
//!
//! let mut inputs = Inputs::new();
//! let reading = inputs.quantity("reading", 86.01, Distribution::student_t(0.0006, 9.0)?)?;
//! // an error even in the tilt: it always makes the reading too long
//! let tilt = inputs.quantity("tilt, rad", 0.0, Distribution::normal(0.004)?)?;
//! let run = MonteCarlo::new(&inputs, |x| &x[reading] * x[tilt].cos(), 1);
//! // any split of the trials gives the same bits
//! let parts = vec![run.part(700..50_000)?, run.part(0..700)?];
//! let summary = Part::merged(parts)?.summary(0.95)?;
//! assert_eq!(summary, run.run(50_000, 0.95)?);
//! assert_eq!(format!("{:.4}", summary.mean), "86.0093");
//! # Ok::<(), gaugepoint::Error>(())
//! ```

use super::distribution::{Shape, coverage, refused, trapezoid_lower};
use super::jet::Jet;
use super::points::{Draws, Points};
use super::random::{BLOCK, Column, NormalTable};
use super::statistics::{self, as_number};
use super::tail::check_limits;
use super::tally::{self, Digest, Plan, SPAN, count, whole};
use super::uncertainty::{Evaluation, Expanded, Input, Inputs};
use crate::calc::Model;
use crate::error::{Error, ErrorKind};
use crate::progress::{Watch, Work};
use crate::special::normal_cdf;
use crate::wide::{Columnar, Width};
use core::f64::consts::PI;
use core::fmt::Debug;
use core::marker::PhantomData;
use core::ops::Range;
use std::sync::Arc;
use std::thread::{Builder, ScopedJoinHandle};

/// Most trials that are kept together: 1 GiB of values.
pub const MOST_TRIALS: u64 = 1 << 27;

/// Most threads of a run.
const MOST_THREADS: usize = 1024;

/// Largest size of a value: its square is finite.
const LARGEST: f64 = 1e100;

/// Fewest trials of one sequence of an adaptive run. Source: JCGM 101:2008, 7.9.4 b).
const LEAST_SEQUENCE: u64 = 10_000;

/// A model with its inputs, ready for trials.
#[derive(Debug, Clone)]
pub struct MonteCarlo<'a, T> {
    model: T,
    sampler: Sampler,
    width: Width,
    watch: Watch<'a>,
    of: PhantomData<&'a Inputs>,
}

/// A model as trials use it: a closure over [`Jet`]s, which is called trial by trial, or a [`Model`], whose operations each run over a whole
/// block of trials and which is therefore many times faster.
pub trait Trials {
    /// What it needs for a block.
    type Space;

    /// Makes room, for use block after block.
    fn space(&self) -> Self::Space;

    /// The value of the trials `lanes` of a block, from a column for each input, by instructions of a width. What it writes for other trials
    /// does not matter.
    fn block(
        &self,
        width: Width,
        inputs: &[Column],
        lanes: Range<usize>,
        space: &mut Self::Space,
        values: &mut Column,
    );

    /// How many trials it takes by [`Self::together`]; none when it goes block by block.
    fn most_together(&self) -> Option<usize> {
        None
    }

    /// The value of each of many trials, from a column for each input: for what is dear to call.
    fn together(&self, _inputs: &[&[f64]], _values: &mut [f64]) {}
}

impl<F: Fn(&[Jet]) -> Jet> Trials for F {
    type Space = Vec<Jet>;

    fn space(&self) -> Vec<Jet> {
        Vec::new()
    }

    fn block(
        &self,
        _: Width,
        inputs: &[Column],
        lanes: Range<usize>,
        space: &mut Vec<Jet>,
        values: &mut Column,
    ) {
        space.resize(inputs.len(), Jet::constant(0.0));
        for (lane, value) in values.iter_mut().enumerate().take(lanes.end).skip(lanes.start) {
            for (argument, column) in space.iter_mut().zip(inputs) {
                *argument = Jet::constant(column.get(lane).copied().unwrap_or(f64::NAN));
            }
            *value = self(space).value();
        }
    }
}

impl Trials for &Model {
    type Space = Vec<Column>;

    fn space(&self) -> Vec<Column> {
        Model::space(self)
    }

    fn block(
        &self,
        width: Width,
        inputs: &[Column],
        _: Range<usize>,
        space: &mut Vec<Column>,
        values: &mut Column,
    ) {
        width.run(Operations { model: self, inputs, space, values });
    }
}

/// The operations of a model on a block.
struct Operations<'r> {
    model: &'r Model,
    inputs: &'r [Column],
    space: &'r mut Vec<Column>,
    values: &'r mut Column,
}

impl Columnar for Operations<'_> {
    #[inline(always)]
    fn run(self) {
        self.model.column(self.inputs, self.space, self.values);
    }
}

/// Makes the arguments of a block of trials.
#[derive(Debug, Clone)]
struct Sampler {
    seed: u64,
    draws: Vec<Draw>,
    /// the columns of a block in the order they are made in: first those of the sources that are not drawn where they are added, then the inputs
    columns: Vec<Total>,
    inputs: usize,
    /// draws of one trial
    count: u32,
    points: Draws,
    /// mean of the normal score of each source; empty when they are drawn as they are
    shift: Vec<f64>,
    normal: &'static NormalTable,
}

/// A sum of terms about an estimate.
#[derive(Debug, Clone)]
struct Total {
    estimate: f64,
    terms: Vec<(Term, f64)>,
}

#[derive(Debug, Clone, Copy)]
enum Term {
    /// a source that is drawn here
    Drawn(usize),
    /// an earlier column
    Column(usize),
}

/// How a source is drawn, and from which draws of the trial.
#[derive(Debug, Clone)]
struct Draw {
    of: Drawn,
    first: u32,
    /// second of two that are jointly t
    sine: bool,
}

/// What a source is drawn from.
#[derive(Debug, Clone)]
pub(crate) enum Drawn {
    Shape(Shape),
    /// by its own inverse
    Inverse(Arc<dyn Inverse>),
}

/// A distribution that is drawn by its inverse, one draw for each trial.
pub(crate) trait Inverse: Debug + Send + Sync {
    /// Quantile of a probability up to one half.
    fn lower(&self, probability: f64) -> f64;

    /// Quantile of a probability up to one half that is above it.
    fn upper(&self, probability: f64) -> f64;

    /// Turns numbers of [`uniform`](super::random::uniform) into values.
    fn quantiles(&self, column: &mut Column) {
        for place in column {
            *place = if *place < 0.5 { self.lower(*place) } else { self.upper(1.0 - *place) };
        }
    }
}

/// The values of the trials `first`, `first + 1`, ...
#[derive(Debug, Clone, PartialEq)]
pub struct Part {
    seed: u64,
    points: Points,
    first: u64,
    values: Vec<f64>,
}

/// An interval of the result.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Interval {
    /// Lower end.
    pub lower: f64,
    /// Upper end.
    pub upper: f64,
}

/// Which coverage interval.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Coverage {
    /// Equal probabilities outside either end.
    Symmetric,
    /// The shortest.
    Shortest,
}

/// Results of a number of trials, in the unit of the model.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Summary {
    /// Number of trials.
    pub trials: u64,
    /// Their mean: the estimate. Source: JCGM 101:2008, 7.6, (16).
    pub mean: f64,
    /// Their standard deviation: the standard uncertainty. Source: JCGM 101:2008, 7.6, (17).
    pub standard_deviation: f64,
    /// Coverage probability of the intervals.
    pub probability: f64,
    /// Probabilistically symmetric coverage interval. Source: JCGM 101:2008, 7.7.2.
    pub symmetric: Interval,
    /// Shortest coverage interval; of equally short ones the lowest. Source: JCGM 101:2008, 7.7.3.
    pub shortest: Interval,
}

/// Results of a number of trials, and how many of them lie outside two limits.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tally {
    /// Moments and intervals.
    pub summary: Summary,
    /// Trials below the lower limit.
    pub below: u64,
    /// Trials above the upper limit.
    pub above: u64,
    pub(super) points: Points,
}

/// What an adaptive run is to reach.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Goal {
    /// Coverage probability.
    pub probability: f64,
    /// Interval whose ends must settle.
    pub coverage: Coverage,
    /// Significant digits of the standard uncertainty that are meant, 1 or 2.
    pub digits: u8,
    /// Trials at which it stops unsettled; at most [`MOST_TRIALS`].
    pub most_trials: u64,
}

/// Outcome of an adaptive run.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Adaptive {
    /// Results of all trials.
    pub summary: Summary,
    /// Number of sequences.
    pub sequences: u64,
    /// Numerical tolerance at the end.
    pub tolerance: f64,
    /// Whether mean, deviation and both ends are stable to the tolerance; if not, the trials ran out.
    pub settled: bool,
}

/// Whether the result to first order stands. Source: JCGM 101:2008, 8.1.3.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Validation {
    /// `|y - U - y_low|`.
    pub lower_difference: f64,
    /// `|y + U - y_high|`.
    pub upper_difference: f64,
    /// Numerical tolerance of the first-order standard uncertainty.
    pub tolerance: f64,
    /// Whether both differences are within it.
    pub validated: bool,
}

impl<'a, F: Fn(&[Jet]) -> Jet> MonteCarlo<'a, F> {
    /// A closure of these inputs; any seed will do, and the same one gives the same trials.
    #[must_use]
    pub fn new(inputs: &'a Inputs, model: F, seed: u64) -> Self {
        MonteCarlo::with_sampler(model, Sampler::new(inputs, seed))
    }
}

impl<'a> MonteCarlo<'a, &'a Model> {
    /// A list of operations on these inputs; the same trials as of a closure that does the same, to the bit.
    #[must_use]
    pub fn of_model(inputs: &'a Inputs, model: &'a Model, seed: u64) -> Self {
        MonteCarlo::with_sampler(model, Sampler::new(inputs, seed))
    }
}

impl<T: Trials> MonteCarlo<'static, T> {
    /// A model of inputs that are made of sources of any kind. The sources of shifted trials are moved by so much on the scale of normal
    /// scores, and the model gets their weight as one argument more.
    pub(crate) fn of_sources(
        sources: Vec<Drawn>,
        inputs: Vec<Input>,
        model: T,
        seed: u64,
        shift: Vec<f64>,
    ) -> Self {
        let of = sources.into_iter().map(|of| (of, None)).collect();
        MonteCarlo::with_sampler(model, Sampler::of(of, &inputs, seed, shift))
    }
}

impl<'a, T> MonteCarlo<'a, T> {
    fn with_sampler(model: T, sampler: Sampler) -> Self {
        MonteCarlo { model, sampler, width: Width::detected(), watch: Watch::default(), of: PhantomData }
    }

    /// With a watcher, who is asked before every block of trials; see [`progress`](crate::progress).
    #[must_use]
    pub fn watched<'w>(self, watch: Watch<'w>) -> MonteCarlo<'w, T>
    where
        'a: 'w,
    {
        MonteCarlo { watch, ..self }
    }
}

impl<T: Trials> MonteCarlo<'_, T> {
    /// With draws that lie otherwise than at random.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] for a Latin hypercube of no trials or more than [`MOST_TRIALS`], and for more draws than Sobol's sequence has dimensions.
    pub fn with_points(mut self, points: Points) -> Result<Self, Error> {
        self.sampler.points = Draws::new(points, self.sampler.seed, self.sampler.count)?;
        Ok(self)
    }

    /// With other instructions than the widest of this machine; the results are the same.
    #[must_use]
    pub fn with_width(self, width: Width) -> Self {
        MonteCarlo { width, ..self }
    }

    /// Instructions that its trials are made with.
    #[must_use]
    pub fn width(&self) -> Width {
        self.width
    }

    /// Number of draws of one trial.
    #[must_use]
    pub fn draws(&self) -> u32 {
        self.sampler.count
    }

    /// The values of a range of trials.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] for an empty range, [`ErrorKind::TooLarge`] for more than [`MOST_TRIALS`],
    /// [`ErrorKind::NotFinite`] when the model is not finite in a trial, which the reason names, [`ErrorKind::Stopped`] by its watcher.
    pub fn part(&self, trials: Range<u64>) -> Result<Part, Error> {
        let work = Work::new(self.watch, trials.end.saturating_sub(trials.start));
        self.finished(&work, |run| run.part(trials))
    }

    /// Does a work to its end.
    fn finished<R>(
        &self,
        work: &Work<'_>,
        what: impl FnOnce(&mut Run<'_>) -> Result<R, Error>,
    ) -> Result<R, Error> {
        let done = self.with(work, what)?;
        work.finish()?;
        Ok(done)
    }

    /// Does something with the run without the type of its model, by code that is compiled once for all of them.
    fn with<R>(&self, work: &Work<'_>, what: impl FnOnce(&mut Run<'_>) -> R) -> R {
        let mut space = self.model.space();
        what(&mut Run {
            work,
            sampler: &self.sampler,
            width: self.width,
            block: &mut |inputs, lanes, values| {
                self.model.block(self.width, inputs, lanes, &mut space, values);
            },
            most_together: self.model.most_together(),
            together: &|inputs, values| self.model.together(inputs, values),
        })
    }

    /// Results of the trials 0 to `trials - 1`.
    ///
    /// # Errors
    /// As [`Self::part`] and [`Part::summary`].
    pub fn run(&self, trials: u64, probability: f64) -> Result<Summary, Error> {
        let no_limits = (f64::NEG_INFINITY, f64::INFINITY);
        let all = |run: &mut Run<'_>, plan| Ok(vec![run.digest(plan, 0..trials)?]);
        let work = Work::new(self.watch, with_glance(trials));
        Ok(self.finished(&work, |run| run.tally(trials, probability, no_limits, &all))?.summary)
    }

    /// Results of the trials 0 to `trials - 1`, and how many of them are outside limits, infinite where there is none. The same bits on any number of
    /// threads.
    ///
    /// # Errors
    /// As [`Self::part`] and [`Part::summary`]; [`ErrorKind::NotFinite`] and [`ErrorKind::OutOfOrder`] for the limits, [`ErrorKind::OutOfRange`] for other than 1 to 1024 threads.
    pub fn tally(
        &self,
        trials: u64,
        probability: f64,
        limits: (f64, f64),
        threads: usize,
    ) -> Result<Tally, Error>
    where
        T: Sync,
    {
        check_limits(limits)?;
        if !(1..=MOST_THREADS).contains(&threads) {
            let most = as_number(MOST_THREADS);
            return Err(refused("threads", as_number(threads), "1 to 1024 threads are needed", 1.0, most));
        }
        let span = as_count(SPAN);
        // whole spans for all but the last
        let length = trials.div_ceil(span).div_ceil(as_count(threads)) * span;
        let work = &Work::new(self.watch, with_glance(trials));
        let digest = |plan, range| self.with(work, |run| run.digest(plan, range));
        let digests = |_: &mut Run<'_>, plan| {
            std::thread::scope(|scope| {
                let starts = (length..trials).step_by(as_size(length));
                let begun = |range: Range<u64>| {
                    let its = range.clone();
                    (range, Builder::new().spawn_scoped(scope, move || digest(plan, its)))
                };
                let others: Vec<_> = starts.map(|start| begun(start..trials.min(start + length))).collect();
                // the first range on this thread, and those for which there is no other
                let mut digests = vec![digest(plan, 0..trials.min(length))];
                let ended = |thread: &std::io::Result<ScopedJoinHandle<'_, _>>| {
                    thread.as_ref().map_or(true, ScopedJoinHandle::is_finished)
                };
                work.wait(|| others.iter().all(|(_, thread)| ended(thread)));
                let joined = |(range, thread): (_, std::io::Result<ScopedJoinHandle<'_, _>>)| match thread {
                    Ok(thread) => thread.join().unwrap_or_else(|panic| std::panic::resume_unwind(panic)),
                    Err(_) => digest(plan, range),
                };
                digests.extend(others.into_iter().map(joined));
                digests.into_iter().collect()
            })
        };
        self.finished(work, |run| run.tally(trials, probability, limits, &digests))
    }

    /// Runs sequences of trials until mean, deviation and both ends of the interval are stable to the numerical tolerance, from trial 0 on.
    ///
    /// A sequence has `max(10^4, 100 / (1 - p))` trials. After each, twice the deviation of the mean of the sequences' results is held
    /// against `delta = 10^l / 2`, where the standard uncertainty of all trials is `c 10^l` with `c` of `digits` digits. Source: JCGM
    /// 101:2008, 7.9.4.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`], [`ErrorKind::NotFinite`] for an impossible goal, [`ErrorKind::Contradiction`] for other points than random ones, and as
    /// [`Self::part`].
    pub fn adaptive(&self, goal: Goal) -> Result<Adaptive, Error> {
        Ok(self.settle(goal)?.0)
    }

    /// As [`Self::adaptive`], with the trials.
    pub(crate) fn settle(&self, goal: Goal) -> Result<(Adaptive, Part), Error> {
        self.finished(&Work::new(self.watch, goal.most_trials), |run| run.settle(&goal))
    }
}

/// What makes the values of a block.
type Block<'r> = dyn FnMut(&[Column], Range<usize>, &mut Column) + 'r;

/// What makes the digests of a run.
type Digests<'r> = dyn Fn(&mut Run<'_>, Plan) -> Result<Vec<Digest>, Error> + 'r;

/// What gives the values of trials that are next to each other.
type Together<'r> = dyn Fn(&[&[f64]], &mut [f64]) + 'r;

/// A run of any model.
struct Run<'r> {
    work: &'r Work<'r>,
    sampler: &'r Sampler,
    width: Width,
    block: &'r mut Block<'r>,
    most_together: Option<usize>,
    together: &'r Together<'r>,
}

impl Run<'_> {
    /// The values of a range of trials.
    fn part(&mut self, trials: Range<u64>) -> Result<Part, Error> {
        let mut values = room(trials.end.saturating_sub(trials.start))?;
        self.each_block(&trials, &mut values)?;
        Ok(Part {
            seed: self.sampler.seed,
            points: self.sampler.points.points(),
            first: trials.start,
            values,
        })
    }

    fn digest(&mut self, plan: Plan, trials: Range<u64>) -> Result<Digest, Error> {
        let mut digest = Digest::new(plan);
        self.each_block(&trials, &mut digest)?;
        Ok(digest)
    }

    /// Makes the values of a range of trials, block by block.
    fn each_block(&mut self, trials: &Range<u64>, keeper: &mut dyn Keeper) -> Result<(), Error> {
        if let Some(most) = self.sampler.points.points().most_trials()
            && trials.end > most
        {
            let reason = "these points are fewer";
            return Err(refused("trials", as_float(trials.end), reason, 1.0, as_float(most)));
        }
        if let Some(most) = self.most_together {
            return self.together(trials, most, keeper);
        }
        let mut space = self.sampler.space();
        let mut column = [0.0; BLOCK];
        let mut next = trials.start;
        while next < trials.end {
            self.work.ask()?;
            let Range { start, end } = lanes(next, trials.end);
            let block = next / BLOCK_TRIALS;
            self.width.run(Arguments { sampler: self.sampler, block, space: &mut space });
            (self.block)(self.sampler.inputs(&space), start..end, &mut column);
            let made = column.get(start..end).unwrap_or_default();
            self.keep(made, next, keeper)?;
            self.work.add(as_count(end - start));
            next += as_count(end - start);
        }
        Ok(())
    }

    /// The same of a model that takes many trials at once.
    fn together(&self, trials: &Range<u64>, most: usize, keeper: &mut dyn Keeper) -> Result<(), Error> {
        let mut space = self.sampler.space();
        let mut columns = vec![Vec::new(); self.sampler.inputs(&space).len()];
        let mut next = trials.start;
        while next < trials.end {
            self.work.ask()?;
            let first = next;
            let end = trials.end.min(first.saturating_add(as_count(most.max(1))));
            columns.iter_mut().for_each(Vec::clear);
            while next < end {
                let (lanes, block) = (lanes(next, end), next / BLOCK_TRIALS);
                self.width.run(Arguments { sampler: self.sampler, block, space: &mut space });
                for (column, made) in columns.iter_mut().zip(self.sampler.inputs(&space)) {
                    column.extend_from_slice(made.get(lanes.clone()).unwrap_or_default());
                }
                next += as_count(lanes.len());
            }
            let inputs: Vec<&[f64]> = columns.iter().map(Vec::as_slice).collect();
            let mut made = vec![f64::NAN; lane(next - first)];
            (self.together)(&inputs, &mut made);
            self.keep(&made, first, keeper)?;
            self.work.add(next - first);
        }
        Ok(())
    }

    /// Keeps the values of the trials from `first` on, when all of them are finite.
    fn keep(&self, made: &[f64], first: u64, keeper: &mut dyn Keeper) -> Result<(), Error> {
        if keeper.keep_finite(self.width, made) { Ok(()) } else { Err(not_finite(made, first)) }
    }

    /// Results of a run whose digests are made in some way.
    fn tally(
        &mut self,
        trials: u64,
        probability: f64,
        limits: (f64, f64),
        digests: &Digests<'_>,
    ) -> Result<Tally, Error> {
        check_room(trials)?;
        let points = self.sampler.points.points();
        if let Some(glance) = Plan::glance(trials) {
            let first = self.part(0..glance)?;
            let plan = Plan::new(&first.values, as_size(trials), probability, limits)?;
            if let Some((summary, [below, above])) = Digest::concluded(&plan, digests(self, plan)?) {
                return Ok(Tally { summary, below, above, points });
            }
            self.work.more(trials);
        }
        // few trials, or the first ones were not like the others
        let part = self.part(0..trials)?;
        let summary = part.summary(probability)?;
        let (below, above) = (count(&part.values, |v| v < limits.0), count(&part.values, |v| v > limits.1));
        Ok(Tally { summary, below, above, points })
    }

    fn settle(&mut self, goal: &Goal) -> Result<(Adaptive, Part), Error> {
        let length = sequence_length(goal)?;
        let points = self.sampler.points.points();
        if points != Points::Random {
            let reason = "only independent trials say when they have settled";
            return Err(Error::new(ErrorKind::Contradiction, format!("{points:?}"), reason).at("points"));
        }
        let mut all = Part { seed: self.sampler.seed, points, first: 0, values: Vec::new() };
        let mut sequences: Vec<Summary> = Vec::new();
        loop {
            let start = as_count(all.values.len());
            let part = self.part(start..start + length)?;
            sequences.push(part.summary(goal.probability)?);
            all.extend(part)?;
            let tolerance = pooled_tolerance(&sequences, length, goal.digits)?;
            let settled = tolerance.is_some_and(|delta| is_settled(&sequences, goal.coverage, delta));
            if settled || start + 2 * length > goal.most_trials {
                let adaptive = Adaptive {
                    summary: all.summary(goal.probability)?,
                    sequences: as_count(sequences.len()),
                    tolerance: tolerance.unwrap_or_default(),
                    settled,
                };
                return Ok((adaptive, all));
            }
        }
    }
}

/// What is done with the values of block after block.
trait Keeper {
    fn keep(&mut self, values: &[f64]);

    /// Keeps them when all of them are finite, by instructions of a width; whether they are.
    fn keep_finite(&mut self, width: Width, made: &[f64]) -> bool;
}

fn keep_finite(keeper: &mut impl Keeper, width: Width, made: &[f64]) -> bool {
    let mut finite = true;
    width.run(Keep { made, keeper, finite: &mut finite });
    finite
}

impl Keeper for Vec<f64> {
    #[inline(always)]
    fn keep(&mut self, values: &[f64]) {
        self.extend_from_slice(values);
    }

    fn keep_finite(&mut self, width: Width, made: &[f64]) -> bool {
        keep_finite(self, width, made)
    }
}

impl Keeper for Digest {
    #[inline(always)]
    fn keep(&mut self, values: &[f64]) {
        self.add(values);
    }

    fn keep_finite(&mut self, width: Width, made: &[f64]) -> bool {
        keep_finite(self, width, made)
    }
}

/// The arguments of a block of trials, as work for any [`Width`]; apart from what is done with them, so that it is compiled once for each.
struct Arguments<'r> {
    sampler: &'r Sampler,
    block: u64,
    space: &'r mut Space,
}

impl Columnar for Arguments<'_> {
    #[inline(always)]
    fn run(self) {
        self.sampler.make(self.block, self.space);
    }
}

/// What is kept of a block, when all of it is finite.
struct Keep<'r, K> {
    made: &'r [f64],
    keeper: &'r mut K,
    finite: &'r mut bool,
}

impl<K: Keeper> Columnar for Keep<'_, K> {
    #[inline(always)]
    fn run(self) {
        // every value is looked at before any is looked for: that loop becomes vectors
        *self.finite = !self.made.iter().fold(false, |any, value| any | is_bad(*value));
        if *self.finite {
            self.keeper.keep(self.made);
        }
    }
}

/// Trials that are made for the results of so many.
fn with_glance(trials: u64) -> u64 {
    trials.saturating_add(Plan::glance(trials).unwrap_or_default())
}

const BLOCK_TRIALS: u64 = BLOCK as u64;

/// Places in its block of the trials from `next` to the end of the block, or up to `end`.
fn lanes(next: u64, end: u64) -> Range<usize> {
    let start = lane(next % BLOCK_TRIALS);
    start..lane((end - next).min(BLOCK_TRIALS)).saturating_add(start).min(BLOCK)
}

/// Whether no trial may have it.
#[inline(always)]
fn is_bad(value: f64) -> bool {
    value.is_nan() || value.abs() > LARGEST
}

/// The first value that is not finite, or too large.
fn not_finite(values: &[f64], first: u64) -> Error {
    let found = (first..).zip(values).find(|(_, value)| is_bad(**value));
    let (trial, value) = found.unwrap_or((first, &f64::NAN));
    let reason = format!("the model is not finite in trial {trial}");
    Error::new(ErrorKind::NotFinite, value.to_string(), reason).at("model")
}

/// Columns of one block of trials, used again for the next.
type Space = Vec<Column>;

impl Sampler {
    fn new(inputs: &Inputs, seed: u64) -> Self {
        let of = inputs.sources.iter().map(|s| (Drawn::Shape(s.distribution.shape()), s.partner)).collect();
        Self::of(of, &inputs.inputs, seed, Vec::new())
    }

    /// Of sources, each with the other one of two that are jointly t.
    fn of(sources: Vec<(Drawn, Option<usize>)>, inputs: &[Input], seed: u64, shift: Vec<f64>) -> Self {
        let mut draws: Vec<Draw> = Vec::with_capacity(sources.len());
        let mut count = 0;
        for (k, (of, partner)) in sources.into_iter().enumerate() {
            let earlier = partner.filter(|other| *other < k).and_then(|other| draws.get(other));
            let (first, sine) = earlier.map_or((count, false), |partner| (partner.first, true));
            count = count.max(first + count_of_draws(&of));
            draws.push(Draw { of, first, sine });
        }
        // what is shifted, and what more than one term takes, has a column of its own
        let taken =
            |k: usize| inputs.iter().flat_map(|i| &i.terms).filter(|(source, _)| *source == k).count();
        let apart: Vec<usize> = (0..draws.len()).filter(|k| !shift.is_empty() || taken(*k) > 1).collect();
        let own = |k: &usize| Total { estimate: 0.0, terms: vec![(Term::Drawn(*k), 1.0)] };
        let term = |(source, factor): &(usize, f64)| match apart.binary_search(source) {
            Ok(column) => (Term::Column(column), *factor),
            Err(_) => (Term::Drawn(*source), *factor),
        };
        let total = |i: &Input| Total { estimate: i.estimate, terms: i.terms.iter().map(term).collect() };
        let columns = apart.iter().map(own).chain(inputs.iter().map(total)).collect();
        let (points, normal, inputs) = (Draws::random(seed), NormalTable::shared(), inputs.len());
        Sampler { seed, draws, columns, inputs, count, points, shift, normal }
    }

    fn space(&self) -> Space {
        // the weight of a shifted trial is one argument more
        vec![[0.0; BLOCK]; self.columns.len() + usize::from(!self.shift.is_empty())]
    }

    /// The columns of the inputs.
    fn inputs<'s>(&self, space: &'s Space) -> &'s [Column] {
        space.get(self.columns.len() - self.inputs..).unwrap_or_default()
    }

    #[inline(always)]
    fn make(&self, block: u64, space: &mut Space) {
        if !self.shift.is_empty() {
            self.shifted(block, space);
        }
        // there are as many shifts as sources, or none
        for (k, total) in self.columns.iter().enumerate().skip(self.shift.len()) {
            let Some((earlier, [out, ..])) = space.split_at_mut_checked(k) else { return };
            // beside the columns and not in one, and so are the draws: what a draw reads in a table can then become vectors
            let mut sum = [total.estimate; BLOCK];
            for (term, factor) in &total.terms {
                match term {
                    Term::Drawn(source) => {
                        if let Some(draw) = self.draws.get(*source) {
                            self.add(draw, block, *factor, &mut sum);
                        }
                    }
                    Term::Column(column) => {
                        if let Some(errors) = earlier.get(*column) {
                            pairs(&mut sum, errors, |sum, error| sum + factor * error);
                        }
                    }
                }
            }
            *out = sum;
        }
    }

    /// Adds the error of a source, times a factor.
    #[inline(always)]
    fn add(&self, draw: &Draw, block: u64, factor: f64, sum: &mut Column) {
        let (mut first, mut second) = ([0.0; BLOCK], [0.0; BLOCK]);
        self.points.column(block, draw.first, &mut first);
        if count_of_draws(&draw.of) == 2 {
            self.points.column(block, draw.first + 1, &mut second);
        }
        let shape = match &draw.of {
            Drawn::Shape(shape) => *shape,
            Drawn::Inverse(inverse) => {
                inverse.quantiles(&mut first);
                return pairs(sum, &first, |sum, error| sum + factor * error);
            }
        };
        match shape {
            Shape::Normal { standard_deviation } => {
                pairs(sum, &first, |sum, u| sum + factor * (standard_deviation * self.normal.inside(u)));
            }
            Shape::StudentT { scale, dof } => {
                for ((sum, radius), angle) in sum.iter_mut().zip(&first).zip(&second) {
                    *sum += factor * (scale * draw.student_t(*radius, *angle, dof));
                }
            }
            Shape::Rectangular { half_width } => {
                pairs(sum, &first, |sum, u| sum + factor * (half_width * (2.0 * u - 1.0)));
            }
            Shape::Triangular { half_width } => {
                pairs(sum, &first, |sum, u| sum + factor * (half_width * trapezoid(u, 0.0)));
            }
            Shape::Trapezoidal { half_width, beta } => {
                pairs(sum, &first, |sum, u| sum + factor * (half_width * trapezoid(u, beta)));
            }
            Shape::CurvilinearTrapezoid { half_width, half_width_error } => {
                for ((sum, width), value) in sum.iter_mut().zip(&first).zip(&second) {
                    let half_width = half_width + half_width_error * (2.0 * width - 1.0);
                    *sum += factor * (half_width * (2.0 * value - 1.0));
                }
            }
            Shape::Arcsine { half_width } => {
                pairs(sum, &first, |sum, u| sum + factor * (half_width * libm::sin(PI * (u - 0.5))));
            }
        }
    }

    /// Moves the normal score of every draw, and leaves the ratio of the densities as the last argument: of independent scores
    /// `exp(sum of m (m / 2 - z))`.
    fn shifted(&self, block: u64, space: &mut Space) {
        let mut logs = [0.0; BLOCK];
        for ((errors, draw), shift) in space.iter_mut().zip(&self.draws).zip(&self.shift) {
            self.points.column(block, draw.first, errors);
            self.normal.quantiles(errors);
            for (place, log) in errors.iter_mut().zip(&mut logs) {
                let score = *place + shift;
                *log += shift * (shift / 2.0 - score);
                *place = draw.of.at_score(score);
            }
        }
        if let Some(weights) = space.last_mut() {
            *weights = logs.map(libm::exp);
        }
    }
}

impl Drawn {
    /// Value at a standard normal score; NaN of a shape that takes two draws.
    pub(crate) fn at_score(&self, score: f64) -> f64 {
        let tail = || normal_cdf(-score.abs());
        match self {
            Drawn::Shape(Shape::Normal { standard_deviation }) => standard_deviation * score,
            Drawn::Shape(shape) if score < 0.0 => shape.lower(tail()),
            Drawn::Shape(shape) => -shape.lower(tail()),
            Drawn::Inverse(inverse) if score < 0.0 => inverse.lower(tail()),
            Drawn::Inverse(inverse) => inverse.upper(tail()),
        }
    }
}

fn count_of_draws(of: &Drawn) -> u32 {
    let Drawn::Shape(shape) = of else { return 1 };
    match shape {
        Shape::StudentT { .. } | Shape::CurvilinearTrapezoid { .. } => 2,
        Shape::Normal { .. }
        | Shape::Rectangular { .. }
        | Shape::Triangular { .. }
        | Shape::Trapezoidal { .. }
        | Shape::Arcsine { .. } => 1,
    }
}

impl Draw {
    fn student_t(&self, radius: f64, angle: f64, dof: f64) -> f64 {
        let radius = (dof * libm::expm1(-2.0 / dof * libm::log(radius))).sqrt();
        let angle = 2.0 * PI * angle;
        radius * if self.sine { libm::sin(angle) } else { libm::cos(angle) }
    }
}

#[inline(always)]
fn pairs(sum: &mut Column, of: &Column, rule: impl Fn(f64, f64) -> f64) {
    for (sum, of) in sum.iter_mut().zip(of) {
        *sum = rule(*sum, *of);
    }
}

/// Quantile of the trapezoid of half-width 1, by its lower half.
#[inline(always)]
fn trapezoid(probability: f64, beta: f64) -> f64 {
    let from_middle = probability - 0.5;
    trapezoid_lower(0.5 - from_middle.abs(), beta).abs().copysign(from_middle)
}

impl Part {
    /// Values that were made before, as the part they were: those of the trials `first`, `first + 1`, ...
    ///
    /// # Errors
    /// [`ErrorKind::MissingField`] without values, [`ErrorKind::TooLarge`] for too many, [`ErrorKind::NotFinite`] for one that no trial has,
    /// [`ErrorKind::OutOfRange`] for numbers of trials that do not end below 2^64.
    pub fn of_values(seed: u64, points: Points, first: u64, values: Vec<f64>) -> Result<Part, Error> {
        let count = as_count(values.len());
        if count == 0 {
            return Err(statistics::too_few("values", "at least one value is needed"));
        }
        check_room(count).map_err(|e| e.moved("values".to_owned()))?;
        if let Some((k, value)) = values.iter().enumerate().find(|(_, value)| is_bad(**value)) {
            let error =
                Error::new(ErrorKind::NotFinite, value.to_string(), "a trial has a finite value up to 1e100");
            return Err(error.at(&format!("values/{k}")));
        }
        trials_from(first, count)?;
        Ok(Part { seed, points, first, values })
    }

    /// Seed of its trials.
    #[must_use]
    pub fn seed(&self) -> u64 {
        self.seed
    }

    /// How its points lie.
    #[must_use]
    pub fn points(&self) -> Points {
        self.points
    }

    /// Numbers of its trials.
    #[must_use]
    pub fn trials(&self) -> Range<u64> {
        self.first..self.first + as_count(self.values.len())
    }

    /// The value of each trial, in order.
    #[must_use]
    pub fn values(&self) -> &[f64] {
        &self.values
    }

    /// The value of each trial, in order, alone.
    #[must_use]
    pub fn into_values(self) -> Vec<f64> {
        self.values
    }

    /// Parts of one run, in any order, as one; of the same model, which is not checked.
    ///
    /// # Errors
    /// [`ErrorKind::MissingField`] without parts, [`ErrorKind::Contradiction`] when seeds differ, trials are missing between two parts or stand
    /// in both, [`ErrorKind::TooLarge`].
    pub fn merged(mut parts: Vec<Part>) -> Result<Part, Error> {
        parts.sort_by_key(|part| part.first);
        let total = parts.iter().map(|part| as_count(part.values.len())).sum();
        let mut parts = parts.into_iter();
        let Some(mut out) = parts.next() else {
            return Err(Error::new(ErrorKind::MissingField, "", "there is no part").at("parts"));
        };
        check_room(total)?;
        parts.try_for_each(|part| out.extend(part))?;
        Ok(out)
    }

    /// Adds the part that follows.
    fn extend(&mut self, next: Part) -> Result<(), Error> {
        let (here, there) = (self.trials(), next.trials());
        let refuse =
            |refused: String, reason| Err(Error::new(ErrorKind::Contradiction, refused, reason).at("parts"));
        if self.seed != next.seed {
            return refuse(next.seed.to_string(), "the parts have different seeds");
        }
        if self.points != next.points {
            return refuse(format!("{:?}", next.points), "the points of the parts lie in different ways");
        }
        if here.end != there.start {
            let refused = format!("{}..{} and {}..{}", here.start, here.end, there.start, there.end);
            return refuse(refused, "trials are missing between these parts, or stand in both");
        }
        self.values.try_reserve(next.values.len()).map_err(|_| too_many(there.end))?;
        self.values.extend(next.values);
        Ok(())
    }

    /// Mean, deviation and coverage intervals of the trials.
    ///
    /// The ends are values of trials: with `q` the whole number nearest `p M`, the `r`-th and the `r + q`-th smallest.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`] for a probability not between 0 and 1, or so close to either that the trials do not
    /// reach it; [`ErrorKind::MissingField`] with one trial.
    pub fn summary(&self, probability: f64) -> Result<Summary, Error> {
        let probability = coverage("probability", probability)?;
        let (mean, standard_deviation) = self.moments()?;
        let inside = tally::inside(probability, self.values.len())?;
        let Some((symmetric, shortest)) = tally::intervals_of(&self.values, inside) else {
            return Err(refused("probability", probability, "too few trials for this probability", 0.0, 1.0));
        };
        let trials = as_count(self.values.len());
        Ok(Summary { trials, mean, standard_deviation, probability, symmetric, shortest })
    }

    /// Mean and standard deviation.
    ///
    /// # Errors
    /// [`ErrorKind::MissingField`] with one trial.
    pub fn moments(&self) -> Result<(f64, f64), Error> {
        if self.values.len() < 2 {
            return Err(statistics::too_few("values", "at least two trials are needed"));
        }
        Ok(tally::moments(&self.values))
    }
}

impl Interval {
    /// Upper less lower end.
    #[must_use]
    pub fn width(&self) -> f64 {
        self.upper - self.lower
    }
}

impl Summary {
    /// The interval of that kind.
    #[must_use]
    pub fn interval(&self, coverage: Coverage) -> Interval {
        match coverage {
            Coverage::Symmetric => self.symmetric,
            Coverage::Shortest => self.shortest,
        }
    }

    /// Holds a result to first order, with its expanded uncertainty at the same probability, against these trials. The trials should be
    /// an adaptive run to one digit more or a run long enough. Source: JCGM 101:2008, 8.1.
    ///
    /// # Errors
    /// [`ErrorKind::Contradiction`] when the probabilities differ, [`ErrorKind::OutOfRange`] for other digits than 1 or 2.
    pub fn validate(
        &self,
        first_order: &Evaluation<'_>,
        expanded: &Expanded,
        coverage: Coverage,
        digits: u8,
    ) -> Result<Validation, Error> {
        if expanded.probability.to_bits() != self.probability.to_bits() {
            let reason = format!("the trials are for a coverage probability of {}", self.probability);
            let refused = expanded.probability.to_string();
            return Err(Error::new(ErrorKind::Contradiction, refused, reason).at("probability"));
        }
        let interval = self.interval(coverage);
        let (estimate, half) = (first_order.estimate, expanded.expanded_uncertainty);
        let lower_difference = (estimate - half - interval.lower).abs();
        let upper_difference = (estimate + half - interval.upper).abs();
        let tolerance = numerical_tolerance(first_order.standard_uncertainty, digits)?;
        let validated = lower_difference <= tolerance && upper_difference <= tolerance;
        Ok(Validation { lower_difference, upper_difference, tolerance, validated })
    }
}

/// Numerical tolerance `10^l / 2` of a standard uncertainty `c 10^l`, `c` a whole number of 1 or 2 digits: 0.00035 to two digits is
/// `35e-5` and has 0.000005. Of 0 it is 0. Source: JCGM 101:2008, 7.9.2.
///
/// # Errors
/// [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`].
pub fn numerical_tolerance(standard_uncertainty: f64, digits: u8) -> Result<f64, Error> {
    let u = super::distribution::within("standard_uncertainty", standard_uncertainty, 0.0, 1e100)?;
    if !(1..=2).contains(&digits) {
        return Err(refused("digits", f64::from(digits), "one or two digits are needed", 1.0, 2.0));
    }
    if u < 1e-290 {
        return Ok(0.0);
    }
    // decimal rounding by the exact formatter: 9.96 to two digits is 10, one place up
    let text = format!("{u:.*e}", usize::from(digits - 1));
    let exponent: Option<i32> = text.split_once('e').and_then(|(_, exponent)| exponent.parse().ok());
    let place = exponent.unwrap_or_default() - i32::from(digits - 1);
    Ok(format!("5e{}", place - 1).parse().unwrap_or(0.0))
}

/// Trials of one sequence of an adaptive run.
fn sequence_length(goal: &Goal) -> Result<u64, Error> {
    let probability = coverage("probability", goal.probability)?;
    numerical_tolerance(1.0, goal.digits)?;
    // 1 - p carries the rounding of p: 100 / 0.01 must not count as one more
    let wanted = (100.0 / (1.0 - probability) * (1.0 - 1e-9)).ceil();
    let length = LEAST_SEQUENCE.max(as_count(whole(wanted)));
    if goal.most_trials > MOST_TRIALS {
        return Err(too_many(goal.most_trials));
    }
    if 2 * length > goal.most_trials {
        let (most, least) = (as_float(goal.most_trials), as_float(2 * length));
        let reason = "at least two sequences of trials are needed for this probability";
        return Err(refused("most_trials", most, reason, least, as_float(MOST_TRIALS)));
    }
    Ok(length)
}

/// Tolerance of the deviation of all trials; none before the second sequence.
fn pooled_tolerance(sequences: &[Summary], length: u64, digits: u8) -> Result<Option<f64>, Error> {
    if sequences.len() < 2 {
        return Ok(None);
    }
    let (m, h) = (as_float(length), as_number(sequences.len()));
    let means: Vec<f64> = sequences.iter().map(|s| s.mean).collect();
    let between = statistics::sample(&means)?.standard_deviation;
    let within =
        statistics::sum(sequences.iter().map(|s| (m - 1.0) * s.standard_deviation * s.standard_deviation));
    let variance = (within + m * (h - 1.0) * between * between) / (m * h - 1.0);
    numerical_tolerance(variance.sqrt(), digits).map(Some)
}

/// Whether twice the deviation of the mean of each result is within the tolerance.
fn is_settled(sequences: &[Summary], coverage: Coverage, tolerance: f64) -> bool {
    let results: [fn(&Summary, Coverage) -> f64; 4] = [
        |s, _| s.mean,
        |s, _| s.standard_deviation,
        |s, coverage| s.interval(coverage).lower,
        |s, coverage| s.interval(coverage).upper,
    ];
    results.iter().all(|result| {
        let values: Vec<f64> = sequences.iter().map(|s| result(s, coverage)).collect();
        statistics::sample(&values).is_ok_and(|s| 2.0 * s.deviation_of_mean <= tolerance)
    })
}

/// The numbers of `count` trials from a first one on.
///
/// # Errors
/// [`ErrorKind::OutOfRange`] when they do not end below 2^64.
pub fn trials_from(first: u64, count: u64) -> Result<Range<u64>, Error> {
    let end = first.checked_add(count).ok_or_else(|| {
        let reason = "there are no trials beyond 2^64";
        Error::new(ErrorKind::OutOfRange, first.to_string(), reason).at("first")
    })?;
    Ok(first..end)
}

fn room(trials: u64) -> Result<Vec<f64>, Error> {
    if trials == 0 {
        return Err(refused("trials", 0.0, "at least one trial is needed", 1.0, as_float(MOST_TRIALS)));
    }
    check_room(trials)?;
    let mut values = Vec::new();
    values.try_reserve_exact(as_size(trials)).map_err(|_| too_many(trials))?;
    Ok(values)
}

fn check_room(trials: u64) -> Result<(), Error> {
    if trials > MOST_TRIALS { Err(too_many(trials)) } else { Ok(()) }
}

fn too_many(trials: u64) -> Error {
    let error = Error::new(ErrorKind::TooLarge, trials.to_string(), "more trials than are kept together");
    error.value(as_float(trials)).limits(1.0, as_float(MOST_TRIALS), "").at("trials")
}

/// Place within a block.
fn lane(number: u64) -> usize {
    usize::try_from(number).unwrap_or(BLOCK)
}

/// A count of trials; the most where it is more than the machine counts.
fn as_size(count: u64) -> usize {
    usize::try_from(count).unwrap_or(usize::MAX)
}

fn as_count(count: usize) -> u64 {
    count as u64
}

#[expect(clippy::cast_precision_loss, reason = "a limit in a message, or a count far below 2^53")]
fn as_float(count: u64) -> f64 {
    count as f64
}
