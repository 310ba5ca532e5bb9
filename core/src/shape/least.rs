//! Linear least squares, with a refusal where the data do not tell the unknowns apart.

/// What each column of a matrix contributes to its right side.
pub(super) struct Solution {
    /// One for each column.
    pub(super) coefficients: Vec<f64>,
    /// What is left of the right side.
    pub(super) residuals: Vec<f64>,
    /// Smallest share of a column that the columns before it do not explain, of a column that is seen evenly.
    pub(super) least_share: f64,
    /// Rows of the triangle, the diagonal first.
    triangle: Vec<Vec<f64>>,
}

impl Solution {
    /// Standard deviation of a weighted sum of the coefficients when each number on the right side has one of 1, independently; weights that
    /// are left out are zero.
    ///
    /// With the triangle `R` the covariance is `(R' R)^-1`, so it is the length of `y` with `R' y = weights`.
    pub(super) fn spread(&self, weights: &[f64]) -> f64 {
        let mut y: Vec<f64> = Vec::with_capacity(self.triangle.len());
        for (k, row) in self.triangle.iter().enumerate() {
            let above = self.triangle.iter().zip(&y).enumerate();
            let known =
                above.fold(0.0, |sum, (j, (row, y))| sum + row.get(k - j).copied().unwrap_or(0.0) * y);
            let weight = weights.get(k).copied().unwrap_or(0.0);
            y.push((weight - known) / row.first().copied().unwrap_or(1.0));
        }
        dot(&y, &y).sqrt()
    }
}

/// A column that the columns before it explain nearly whole.
pub(super) struct Unresolved {
    pub(super) column: usize,
    pub(super) share: f64,
}

/// Share below which a column is not resolved: what is noise in the data would be a hundred times that in the result.
pub(super) const LEAST_SHARE: f64 = 0.01;

/// Least squares by orthogonal columns (modified Gram-Schmidt with the right side as the last column), which is as stable as
/// Householder's reflections. Source: Bjorck, BIT 7 (1967). `full` is the length of a column that is seen evenly.
pub(super) fn least_squares(
    mut columns: Vec<Vec<f64>>,
    mut right: Vec<f64>,
    full: f64,
    least: f64,
) -> Result<Solution, Unresolved> {
    let mut rows: Vec<(Vec<f64>, f64)> = Vec::with_capacity(columns.len());
    let mut least_share = 1.0;
    columns.reverse();
    while let Some(mut unit) = columns.pop() {
        let length = dot(&unit, &unit).sqrt();
        let share = length / full;
        if share < least || length == 0.0 {
            return Err(Unresolved { column: rows.len(), share });
        }
        least_share = smaller(least_share, share);
        unit.iter_mut().for_each(|v| *v /= length);
        let mut row = vec![length];
        // the columns that are left stand in reverse, so that the next one is the last
        row.extend(columns.iter_mut().rev().map(|other| take_out(&unit, other)));
        rows.push((row, take_out(&unit, &mut right)));
    }
    let coefficients = back(&rows);
    let triangle = rows.into_iter().map(|(row, _)| row).collect();
    Ok(Solution { coefficients, residuals: right, least_share, triangle })
}

/// Takes the part of `other` along `unit` out of it; gives that part.
fn take_out(unit: &[f64], other: &mut [f64]) -> f64 {
    let along = dot(unit, other);
    other.iter_mut().zip(unit).for_each(|(o, u)| *o -= along * u);
    along
}

/// Solves the triangle from its last row up; a row holds its diagonal first.
fn back(rows: &[(Vec<f64>, f64)]) -> Vec<f64> {
    let mut found: Vec<f64> = Vec::with_capacity(rows.len());
    for (row, right) in rows.iter().rev() {
        // `found` stands in reverse, the row's tail in order
        let known = row.iter().skip(1).rev().zip(&found).fold(0.0, |sum, (r, x)| sum + r * x);
        let diagonal = row.first().copied().unwrap_or(1.0);
        found.push((right - known) / diagonal);
    }
    found.reverse();
    found
}

pub(super) fn dot(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).fold(0.0, |sum, (a, b)| sum + a * b)
}

pub(crate) fn smaller(a: f64, b: f64) -> f64 {
    if b < a { b } else { a }
}

pub(crate) fn larger(a: f64, b: f64) -> f64 {
    if b > a { b } else { a }
}

/// A quotient that is computed only where it is asked for: inlined it may be before the comparison that forbids it, and a host may trap a
/// division by zero or an overflow.
#[inline(never)]
pub(crate) fn quotient(above: f64, below: f64) -> f64 {
    above / below
}
