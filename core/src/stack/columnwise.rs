//! Functions that are computed elsewhere, many trials at once.

use super::function::{Derivatives, Law};
use super::worst::WorstCase;
use crate::error::Error;
use crate::measurement::monte_carlo::Trials;
use crate::measurement::random::{BLOCK, Column};
use crate::wide::Width;
use core::cell::RefCell;
use core::ops::Range;

/// Trials that are handed over together: calls of another language are dear, and a hundred columns of these stay below 16 MiB.
const TOGETHER: usize = 64 * BLOCK;

/// A function that computes the values of many trials, or of one, at once, and that may fail: `|sizes: &[&[f64]], values: &mut [f64]| ...`, with an
/// array of sizes for each contributor. A value that it does not write is not finite, and refused.
///
/// Nothing more is asked of it once it has failed: whatever is computed then ends at the next value, which is not finite. So
/// [`Self::failure`] is asked before the result is looked at.
///
/// ```
/// use gaugepoint::measurement::distribution::Distribution;
/// use gaugepoint::stack::{Columnwise, Contributor, Function, Variation};
///
/// let part = |name, nominal| {
///     Contributor::new(name, nominal, (-0.1, 0.1), Variation::about(0.0, Distribution::rectangular(0.1)?)?)
/// };
/// let law = Columnwise::new(|sizes: &[&[f64]], values: &mut [f64]| match sizes {
///     [a, b] => Ok(values.iter_mut().zip(a.iter().zip(*b)).for_each(|(value, (a, b))| *value = a * b)),
///     _ => Err("two contributors are needed"),
/// });
/// let area = Function::new(vec![part("a", 2.0)?, part("b", 3.0)?], law)?;
/// assert_eq!((area.nominal()?, area.law().failure()), (6.0, None));
/// # Ok::<(), gaugepoint::Error>(())
/// ```
#[derive(Debug)]
pub struct Columnwise<F, E> {
    of: F,
    failure: RefCell<Option<E>>,
}

impl<E, F: Fn(&[&[f64]], &mut [f64]) -> Result<(), E>> Columnwise<F, E> {
    /// Of a function that is called with sizes and a place for as many values.
    pub fn new(of: F) -> Self {
        Columnwise { of, failure: RefCell::new(None) }
    }

    /// Why it failed, if it did; said once.
    pub fn failure(&self) -> Option<E> {
        self.failure.take()
    }

    fn fill(&self, sizes: &[&[f64]], values: &mut [f64]) {
        values.fill(f64::NAN);
        if self.failure.borrow().is_some() {
            return;
        }
        if let Err(failure) = (self.of)(sizes, values) {
            values.fill(f64::NAN);
            self.failure.replace(Some(failure));
        }
    }

    fn one(&self, at: &[f64]) -> f64 {
        let sizes: Vec<&[f64]> = at.iter().map(core::slice::from_ref).collect();
        let mut value = [f64::NAN];
        self.fill(&sizes, &mut value);
        let [value] = value;
        value
    }
}

/// As a closure that is called with the sizes of one trial.
impl<E, F: Fn(&[&[f64]], &mut [f64]) -> Result<(), E>> Law for Columnwise<F, E> {
    fn value(&self, at: &[f64]) -> f64 {
        self.one(at)
    }

    fn gradient(&self, at: &[f64], scales: &[f64]) -> (f64, Vec<f64>) {
        Law::gradient(&|x: &[f64]| self.one(x), at, scales)
    }

    fn derivatives(&self, at: &[f64], scales: &[f64]) -> Derivatives {
        Law::derivatives(&|x: &[f64]| self.one(x), at, scales)
    }

    fn worst_case(&self, limits: &[(f64, f64)]) -> Result<WorstCase, Error> {
        Law::worst_case(&|x: &[f64]| self.one(x), limits)
    }

    fn trials(&self) -> impl Trials {
        self
    }
}

impl<E, F: Fn(&[&[f64]], &mut [f64]) -> Result<(), E>> Trials for &Columnwise<F, E> {
    type Space = ();

    fn space(&self) {}

    fn block(&self, _: Width, inputs: &[Column], lanes: Range<usize>, (): &mut (), values: &mut Column) {
        let sizes: Vec<&[f64]> = inputs.iter().filter_map(|column| column.get(lanes.clone())).collect();
        if let Some(values) = values.get_mut(lanes) {
            self.fill(&sizes, values);
        }
    }

    fn most_together(&self) -> Option<usize> {
        Some(TOGETHER)
    }

    fn together(&self, inputs: &[&[f64]], values: &mut [f64]) {
        self.fill(inputs, values);
    }
}
