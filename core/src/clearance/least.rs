//! The least clearance of a section over every angle, without a grid to miss it between: a section is a short trigonometric polynomial.
//!
//! | section | what finds it | bound on the error |
//! |---|---|---|
//! | cosines of orders 2, 4, 6 ([`EvenHarmonics`]) | closed form, a cubic in `cos 2t` | rounding |
//! | cosines and sines to order 32 ([`Harmonics`]) | equally spaced angles, a bound between them, Newton steps where the bound leaves room | proven, in every result |
//!
//! Plain doubles, no allocation, sums in one order: the same bits everywhere. An angle is 0 at the major thrust side, 90 at the pin axis toward the front.

mod below;

use crate::bounds;
use crate::error::{Error, ErrorKind};
use crate::shape::angle::as_number;
use crate::shape::least::quotient;
use core::f64::consts::PI;

/// Highest order of a section; a higher one is refused.
pub const MOST_ORDER: usize = 32;

/// The least value of a section, and where it is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Least {
    /// The value found. It is that of the section at `angle_deg`, to its rounding.
    pub least_mm: f64,
    /// Its angle, from 0 up to 360. Of angles whose values rounding cannot tell apart, the smallest.
    pub angle_deg: f64,
    /// How far the true least value can lie below: it is within `least_mm - within_mm` and `least_mm`, rounding included.
    pub within_mm: f64,
}

impl Least {
    /// The lower of two, and the first of equals: for a section that is put together from several.
    #[must_use]
    pub fn or_lower(self, other: Least) -> Least {
        if other.least_mm < self.least_mm { other } else { self }
    }
}

/// A part of the turn, from one angle rising to another. It may run over 360: from 270 to 450 is the half around 0.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Arc {
    from_deg: f64,
    to_deg: f64,
}

impl Arc {
    /// The whole turn.
    pub const TURN: Arc = Arc { from_deg: 0.0, to_deg: 360.0 };

    /// Its beginning.
    #[must_use]
    pub fn from_deg(self) -> f64 {
        self.from_deg
    }

    /// Its end, beyond 360 when it runs over.
    #[must_use]
    pub fn to_deg(self) -> f64 {
        self.to_deg
    }

    /// The arc from `from_deg`, 0 to 360, to `to_deg`, which is not below it and at most a turn further.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`], [`ErrorKind::OutOfRange`] with the parameter as field.
    pub fn new(from_deg: f64, to_deg: f64) -> Result<Arc, Error> {
        let from_deg = bounds::ANGLE.check("from_deg", from_deg)? + 0.0;
        let kind = if to_deg.is_finite() { ErrorKind::OutOfRange } else { ErrorKind::NotFinite };
        match to_deg >= from_deg && to_deg - from_deg <= 360.0 {
            true => Ok(Arc { from_deg, to_deg }),
            false => {
                let reason = "an arc rises from its beginning, by a turn at most";
                let error = Error::new(kind, to_deg.to_string(), reason);
                Err(error.limits(from_deg, from_deg + 360.0, "deg").at("to_deg"))
            }
        }
    }
}

/// A section with cosines of orders 2, 4 and 6 only: the radius of a piston, or what a round or even bore leaves around it.
///
/// With `u = cos 2t` it is a cubic `c0 + c1 u + c2 u^2 + c3 u^3`, u from -1 to 1.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EvenHarmonics {
    c: [f64; 4],
}

/// The least value of an even section.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EvenLeast {
    /// The value found.
    pub least_mm: f64,
    /// The cosine of twice its angle. Of equal values the one with the smallest angle.
    pub cos2: f64,
    /// As in [`Least`]; here it is rounding alone.
    pub within_mm: f64,
}

impl EvenLeast {
    /// Its angle within the first quarter, 0 to 90. The section has the same value at 180 less this angle, at 180 more, and at 360 less.
    #[must_use]
    pub fn angle_deg(&self) -> f64 {
        libm::acos(self.cos2) * (90.0 / PI)
    }
}

impl EvenHarmonics {
    /// `mean + cos2 cos 2t + cos4 cos 4t + cos6 cos 6t`, in mm.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`] or [`ErrorKind::OutOfRange`], with the parameter as field.
    pub fn new(mean_mm: f64, cos2_mm: f64, cos4_mm: f64, cos6_mm: f64) -> Result<Self, Error> {
        bounds::COORDINATE.check("mean_mm", mean_mm)?;
        bounds::COORDINATE.check("cos2_mm", cos2_mm)?;
        bounds::COORDINATE.check("cos4_mm", cos4_mm)?;
        bounds::COORDINATE.check("cos6_mm", cos6_mm)?;
        Ok(EvenHarmonics { c: [mean_mm - cos4_mm, cos2_mm - 3.0 * cos6_mm, 2.0 * cos4_mm, 4.0 * cos6_mm] })
    }

    /// From the cubic itself, its coefficients from the constant up, in mm.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`] or [`ErrorKind::OutOfRange`], with the place as field (`coefficients_mm/2`).
    pub fn in_cos2(coefficients_mm: [f64; 4]) -> Result<Self, Error> {
        check_all("coefficients_mm", &coefficients_mm)?;
        Ok(EvenHarmonics { c: coefficients_mm })
    }

    /// From the cubic of parts that were checked.
    pub(crate) fn of(c: [f64; 4]) -> Self {
        EvenHarmonics { c }
    }

    fn at(&self, u: f64) -> f64 {
        let [c0, c1, c2, c3] = self.c;
        c0 + u * (c1 + u * (c2 + u * c3))
    }

    /// The least value over every angle.
    ///
    /// ```
    /// use gaugepoint::clearance::least::EvenHarmonics;
    /// // 0.0135 - 0.012 cos 2t: least along the thrust axis
    /// let least = EvenHarmonics::new(0.0135, -0.012, 0.0, 0.0)?.least();
    /// assert!((least.least_mm - 0.0015).abs() < 1e-15 && least.angle_deg() == 0.0);
    /// # Ok::<(), gaugepoint::Error>(())
    /// ```
    #[must_use]
    pub fn least(&self) -> EvenLeast {
        self.least_between(-1.0, 1.0)
    }

    /// The least value where `cos 2t` is between two values, which are within -1 and 1 and in order.
    #[must_use]
    pub fn least_between(&self, low: f64, high: f64) -> EvenLeast {
        let [c0, c1, c2, c3] = self.c;
        let (mut cos2, mut least) = (high, self.at(high));
        let mut try_at = |u: f64| {
            let value = self.at(u);
            if value < least {
                (cos2, least) = (u, value);
            }
        };
        if let Some(u) = valley(c1, c2, c3).filter(|u| *u > low && *u < high) {
            try_at(u);
        }
        try_at(low);
        let size = libm::fabs(c0) + libm::fabs(c1) + libm::fabs(c2) + libm::fabs(c3);
        EvenLeast { least_mm: least + 0.0, cos2, within_mm: EVEN_ROUNDING * size }
    }
}

/// What rounding can do to a cubic by Horner's rule (six operations, Higham 2002, 5.1), at both of two places that are compared, and to its valley.
const EVEN_ROUNDING: f64 = 16.0 * HALF_ULP;
/// Half the distance from 1 to the next double.
const HALF_ULP: f64 = f64::EPSILON / 2.0;

/// Where `c1 u + c2 u^2 + c3 u^3` has its valley, when that is within -1 and 1: the root of the derivative with a second derivative above zero,
/// in the form that subtracts nothing from its like.
fn valley(c1: f64, c2: f64, c3: f64) -> Option<f64> {
    let discriminant = c2 * c2 - 3.0 * c1 * c3;
    if discriminant <= 0.0 {
        return None;
    }
    let root = discriminant.sqrt();
    let (above, below) = if c2 > 0.0 { (-c1, c2 + root) } else { (root - c2, 3.0 * c3) };
    // divided only when it lies within, so that nothing overflows
    (libm::fabs(above) < libm::fabs(below)).then(|| quotient(above, below))
}

/// A section: `mean + sum of cos_n cos(n t) + sin_n sin(n t)`, n from 1 to at most [`MOST_ORDER`]. Small and copied, nothing is allocated.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Harmonics {
    order: usize,
    mean: f64,
    cos: [f64; MOST_ORDER],
    sin: [f64; MOST_ORDER],
}

impl Harmonics {
    /// A section from its coefficients in mm; the first of `cos_mm` and `sin_mm` is of order 1. One may be shorter than the other.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] for more than 32 orders or an impossible number, [`ErrorKind::NotFinite`]; the field is the place (`cos_mm/3`).
    pub fn new(mean_mm: f64, cos_mm: &[f64], sin_mm: &[f64]) -> Result<Self, Error> {
        bounds::COORDINATE.check("mean_mm", mean_mm)?;
        Ok(Harmonics {
            order: cos_mm.len().max(sin_mm.len()),
            mean: mean_mm,
            cos: taken("cos_mm", cos_mm)?,
            sin: taken("sin_mm", sin_mm)?,
        })
    }

    /// A round section that can take waves to an order, of parts that were checked.
    pub(crate) fn round(order: usize, mean: f64) -> Self {
        Harmonics { order, mean, cos: [0.0; MOST_ORDER], sin: [0.0; MOST_ORDER] }
    }

    /// Gives it an order.
    pub(crate) fn set(&mut self, order: usize, cos: f64, sin: f64) {
        let place = order.wrapping_sub(1);
        if let (Some(c), Some(s)) = (self.cos.get_mut(place), self.sin.get_mut(place)) {
            (*c, *s) = (cos, sin);
        }
        self.order = self.order.max(order);
    }

    /// The section less `c0 + c1 u + c2 u^2 + c3 u^3` with `u = cos 2t`, where `u^2 = (1 + cos 4t) / 2` and `u^3 = (3 cos 2t + cos 6t) / 4`.
    pub(crate) fn less(mut self, [c0, c1, c2, c3]: [f64; 4]) -> Self {
        self.mean = self.mean - c0 - c2 / 2.0;
        for (place, off) in [(1, c1 + 0.75 * c3), (3, c2 / 2.0), (5, c3 / 4.0)] {
            if let Some(c) = self.cos.get_mut(place) {
                *c -= off;
            }
        }
        self.order = self.order.max(6);
        self
    }

    /// The section at an angle from 0 to 360.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`] or [`ErrorKind::OutOfRange`] of the angle.
    pub fn at(&self, angle_deg: f64) -> Result<f64, Error> {
        let angle_deg = bounds::ANGLE.check("angle_deg", angle_deg)?;
        Ok(self.mean + self.near(Place::of(angle_deg)).value + 0.0)
    }

    /// The least value over every angle.
    ///
    /// ```
    /// use gaugepoint::clearance::least::Harmonics;
    /// // a bore with three lobes
    /// let least = Harmonics::new(0.02, &[0.0, 0.0, 0.003], &[])?.least();
    /// assert!((least.least_mm - 0.017).abs() < 1e-15 && (least.angle_deg - 60.0).abs() < 1e-9);
    /// # Ok::<(), gaugepoint::Error>(())
    /// ```
    #[must_use]
    pub fn least(&self) -> Least {
        self.search(&[Arc::TURN]).unwrap_or(Least { least_mm: self.mean, angle_deg: 0.0, within_mm: 0.0 })
    }

    /// The least value over some arcs, their ends included: the windows of a cylinder and the panels of a piston left out. None for no arc.
    #[must_use]
    pub fn least_over(&self, arcs: &[Arc]) -> Option<Least> {
        self.search(arcs)
    }

    /// The same, or where the section is certainly not below `enough` a number it is nowhere below: no search is needed to say that.
    pub(crate) fn least_below(&self, arcs: &[Arc], enough: f64) -> Option<Result<Least, f64>> {
        match self.order {
            0..=8 => Search::<65>::new(self, &EIGHTS.values(self)).below(arcs, enough),
            9..=16 => Search::<129>::new(self, &SIXTEENTHS.values(self)).below(arcs, enough),
            _ => Search::<257>::new(self, &THIRTY_SECONDS.values(self)).below(arcs, enough),
        }
    }

    /// A value that the section is nowhere below, without any search: to leave out what cannot matter.
    ///
    /// It is below the least value by at most `0.08 sum of n^2 amplitude / N^2`, with `N` the order, rounded up to 8, 16 or 32.
    #[must_use]
    pub fn lower_bound(&self) -> f64 {
        self.bound(&[Arc::TURN])
    }

    /// The same over some arcs. None for no arc.
    #[must_use]
    pub fn lower_bound_over(&self, arcs: &[Arc]) -> Option<f64> {
        (!arcs.is_empty()).then(|| self.bound(arcs))
    }

    fn search(&self, arcs: &[Arc]) -> Option<Least> {
        match self.order {
            0..=8 => Search::<65>::new(self, &EIGHTS.values(self)).over(arcs),
            9..=16 => Search::<129>::new(self, &SIXTEENTHS.values(self)).over(arcs),
            _ => Search::<257>::new(self, &THIRTY_SECONDS.values(self)).over(arcs),
        }
    }

    fn bound(&self, arcs: &[Arc]) -> f64 {
        match self.order {
            0..=8 => Search::<65>::new(self, &EIGHTS.values(self)).bound(arcs),
            9..=16 => Search::<129>::new(self, &SIXTEENTHS.values(self)).bound(arcs),
            _ => Search::<257>::new(self, &THIRTY_SECONDS.values(self)).bound(arcs),
        }
    }

    fn waves(&self) -> impl Iterator<Item = (f64, f64)> {
        self.cos.iter().copied().zip(self.sin.iter().copied()).take(self.order)
    }

    /// The sum of the waves and its derivatives by the angle in radians, the mean left out.
    #[inline]
    fn near(&self, place: Place) -> Derivatives {
        let (cos1, sin1) = place.turned();
        let (mut cos, mut sin, mut n) = (cos1, sin1, 1.0);
        let mut d = Derivatives { value: 0.0, first: 0.0, second: 0.0, third: 0.0 };
        for (a, b) in self.waves() {
            let (here, quarter) = (a * cos + b * sin, b * cos - a * sin);
            d.value += here;
            d.first += n * quarter;
            d.second -= n * n * here;
            d.third -= n * n * n * quarter;
            (cos, sin) = (cos * cos1 - sin * sin1, sin * cos1 + cos * sin1);
            n += 1.0;
        }
        d
    }

    /// What the section and its derivatives cannot exceed.
    fn most(&self) -> Most {
        let mut most = Most { rounding: 0.0, second: 0.0, third: 0.0, fourth: 0.0 };
        let (mut n, orders) = (1.0, as_number(self.order));
        for (a, b) in self.waves() {
            let (a, b) = (libm::fabs(a), libm::fabs(b));
            let (large, small) = if a > b { (a, b) } else { (b, a) };
            // above the root of the sum of squares by 8 % at most, as a chord is above what bends up
            let amplitude = large + 0.414_213_562_373_095_1 * small;
            // turned n times with five roundings each, multiplied, and added to all others
            most.rounding += (6.0 * n + orders + 8.0) * HALF_ULP * amplitude;
            most.second += n * n * amplitude;
            most.third += n * n * n * amplitude;
            most.fourth += n * n * n * n * amplitude;
            n += 1.0;
        }
        most
    }
}

/// The waves at one angle: their sum and its derivatives by the angle in radians.
#[derive(Debug, Clone, Copy)]
struct Derivatives {
    value: f64,
    first: f64,
    second: f64,
    third: f64,
}

/// Bounds over the whole turn.
#[derive(Debug, Clone, Copy)]
struct Most {
    /// of the error of a value
    rounding: f64,
    /// of the second derivative, and the third, and the fourth
    second: f64,
    third: f64,
    fourth: f64,
}

/// Tabulated directions in one turn.
const DIRECTIONS: usize = 256;
/// Cosine and sine of them.
static DIRECTION: [(f64, f64); DIRECTIONS] = directions();

/// A tabulated direction and what is added to it, in radians: an angle near an axis keeps its digits, and its cosine needs few terms.
#[derive(Debug, Clone, Copy)]
struct Place {
    direction: usize,
    offset: f64,
}

impl Place {
    /// Of an angle of 0 to 360 degrees; the tabulated directions are exact in degrees.
    fn of(angle_deg: f64) -> Place {
        let step = 360.0 / as_number(DIRECTIONS);
        let direction = libm::round(angle_deg / step);
        let offset = (angle_deg - direction * step) * (PI / 180.0);
        Place { direction: as_count(direction) % DIRECTIONS, offset }
    }

    /// From 0 up to 360.
    fn angle_deg(self) -> f64 {
        let step = 360.0 / as_number(DIRECTIONS);
        let angle = as_number(self.direction) * step + self.offset * (180.0 / PI);
        let angle = if angle < 0.0 { angle + 360.0 } else { angle };
        // a hair below 0 rounds to 360 itself
        if angle >= 360.0 { angle - 360.0 } else { angle }
    }

    /// Its cosine and sine.
    #[inline]
    fn turned(self) -> (f64, f64) {
        let (cos, sin) = DIRECTION.get(self.direction % DIRECTIONS).copied().unwrap_or((1.0, 0.0));
        let (small_cos, small_sin) = small::<5>(self.offset);
        (cos * small_cos - sin * small_sin, sin * small_cos + cos * small_sin)
    }
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a rounded number between 0 and 512"
)]
const fn as_count(rounded: f64) -> usize {
    rounded as usize
}

/// Cosine and sine of a small angle by their series: five terms up to 0.1, nine up to an eighth of a turn, are exact to rounding.
#[inline]
const fn small<const TERMS: usize>(x: f64) -> (f64, f64) {
    let square = x * x;
    let (mut cos, mut sin) = (1.0, 1.0);
    let mut k = TERMS;
    while k > 0 {
        let n = as_number(2 * k);
        cos = 1.0 - square * (1.0 / (n * (n - 1.0))) * cos;
        sin = 1.0 - square * (1.0 / (n * (n + 1.0))) * sin;
        k -= 1;
    }
    (cos, sin * x)
}

/// Exact on the axes, and the same in all eight parts of the turn.
#[expect(clippy::indexing_slicing, reason = "computed when this is compiled")]
const fn directions() -> [(f64, f64); DIRECTIONS] {
    const QUARTER: usize = DIRECTIONS / 4;
    let mut out = [(1.0, 0.0); DIRECTIONS];
    let mut k = 0;
    while k < QUARTER {
        let (cos, sin) = if k <= QUARTER / 2 {
            small::<9>(as_number(k) * (2.0 * PI / as_number(DIRECTIONS)))
        } else {
            let (sin, cos) = small::<9>(as_number(QUARTER - k) * (2.0 * PI / as_number(DIRECTIONS)));
            (cos, sin)
        };
        out[k] = (cos, sin);
        out[k + QUARTER] = (0.0 - sin, cos);
        out[k + 2 * QUARTER] = (-cos, 0.0 - sin);
        out[k + 3 * QUARTER] = (sin, -cos);
        k += 1;
    }
    out
}

/// Cosines and sines of every order at the angles of a quarter of the turn, both axes included.
struct Grid<const ORDERS: usize, const QUARTER: usize> {
    cos: [[f64; QUARTER]; ORDERS],
    sin: [[f64; QUARTER]; ORDERS],
}

static EIGHTS: Grid<8, 17> = Grid::new();
static SIXTEENTHS: Grid<16, 33> = Grid::new();
static THIRTY_SECONDS: Grid<32, 65> = Grid::new();

impl<const ORDERS: usize, const QUARTER: usize> Grid<ORDERS, QUARTER> {
    #[expect(clippy::indexing_slicing, reason = "computed when this is compiled")]
    const fn new() -> Self {
        let all = directions();
        let stride = DIRECTIONS / (4 * (QUARTER - 1));
        let mut grid = Grid { cos: [[0.0; QUARTER]; ORDERS], sin: [[0.0; QUARTER]; ORDERS] };
        let mut n = 0;
        while n < ORDERS {
            let mut k = 0;
            while k < QUARTER {
                (grid.cos[n][k], grid.sin[n][k]) = all[(n + 1) * k * stride % DIRECTIONS];
                k += 1;
            }
            n += 1;
        }
        grid
    }

    /// The waves at equal angles of the whole turn, its first angle again at the end. What a quarter has, the others have with other signs.
    fn values<const NODES: usize>(&self, section: &Harmonics) -> [f64; NODES] {
        let mut values = [0.0; NODES];
        let zero = [0.0; QUARTER];
        let (mut even_cos, mut even_sin, mut odd_cos, mut odd_sin) = (zero, zero, zero, zero);
        let tables = self.cos.iter().zip(&self.sin);
        for (n, ((cos, sin), (a, b))) in tables.zip(section.waves()).enumerate() {
            let (cos_sum, sin_sum) =
                if n % 2 == 0 { (&mut odd_cos, &mut odd_sin) } else { (&mut even_cos, &mut even_sin) };
            add(cos_sum, a, cos);
            add(sin_sum, b, sin);
        }
        let parts = || even_cos.iter().zip(&even_sin).zip(odd_cos.iter().zip(&odd_sin));
        let (first, second) = values.split_at_mut(NODES / 2);
        for (to, ((ec, es), (oc, os))) in first.iter_mut().zip(parts()) {
            *to = (ec + oc) + (es + os);
        }
        for (to, ((ec, es), (oc, os))) in first.iter_mut().rev().zip(parts().skip(1)) {
            *to = (ec - oc) - (es - os);
        }
        for (to, ((ec, es), (oc, os))) in second.iter_mut().zip(parts()) {
            *to = (ec - oc) + (es - os);
        }
        for (to, ((ec, es), (oc, os))) in second.iter_mut().rev().zip(parts()) {
            *to = (ec + oc) - (es + os);
        }
        values
    }
}

fn add<const POINTS: usize>(sums: &mut [f64; POINTS], factor: f64, table: &[f64; POINTS]) {
    for (sum, value) in sums.iter_mut().zip(table) {
        *sum += factor * value;
    }
}

/// Deepest halving of a cell: long before it a cell is flat to rounding.
const DEEPEST: usize = 64;

/// The search over a section, on a grid of `NODES - 1` cells.
struct Search<'s, const NODES: usize> {
    section: &'s Harmonics,
    most: Most,
    /// the waves at the nodes
    values: &'s [f64; NODES],
    /// lowest value that was met anywhere
    lowest: f64,
    /// what is proven of the places that were closed without being met
    floor: f64,
    best: Option<(f64, f64)>,
}

impl<'s, const NODES: usize> Search<'s, NODES> {
    const CELLS: usize = NODES - 1;
    const STEP_DEG: f64 = 360.0 / as_number(NODES - 1);
    const STEP: f64 = 2.0 * PI / as_number(NODES - 1);
    const STRIDE: usize = DIRECTIONS / (NODES - 1);

    fn new(section: &'s Harmonics, values: &'s [f64; NODES]) -> Self {
        let (lowest, floor) = (f64::INFINITY, f64::INFINITY);
        Search { section, most: section.most(), values, lowest, floor, best: None }
    }

    /// How far a section can dip below the lower end of a cell.
    fn dip(&self) -> f64 {
        self.most.second * (Self::STEP * Self::STEP / 8.0) + 4.0 * self.most.rounding
    }

    /// Nodes from `from` to `to`, which may be a turn further: at most two pieces, each with its first node.
    fn pieces(&self, from: usize, to: usize) -> [(usize, &'s [f64]); 2] {
        let values = self.values;
        let (from, to) =
            if from >= Self::CELLS { (from - Self::CELLS, to - Self::CELLS) } else { (from, to) };
        let piece = |from: usize, to: usize| values.get(from..=to).unwrap_or_default();
        match to.checked_sub(Self::CELLS) {
            None | Some(0) => [(from, piece(from, to)), (Self::CELLS, &[])],
            Some(rest) => [(from, piece(from, Self::CELLS)), (Self::CELLS, piece(0, rest))],
        }
    }

    fn bound(&self, arcs: &[Arc]) -> f64 {
        let lowest = arcs.iter().fold(f64::INFINITY, |lowest, arc| {
            let from = as_count(libm::floor(arc.from_deg / Self::STEP_DEG));
            let to = as_count(libm::ceil(arc.to_deg / Self::STEP_DEG));
            self.pieces(from, to).into_iter().fold(lowest, |lowest, (_, piece)| {
                let (_, here) = lowest_of(piece);
                if here < lowest { here } else { lowest }
            })
        });
        let sum = self.section.mean + lowest - self.dip();
        // the two sums above are rounded
        sum - 2.0 * f64::EPSILON * (libm::fabs(self.section.mean) + libm::fabs(lowest))
    }

    fn below(self, arcs: &[Arc], enough: f64) -> Option<Result<Least, f64>> {
        let bound = self.bound(arcs);
        if bound >= enough { Some(Err(bound)) } else { self.over(arcs).map(Ok) }
    }

    fn over(mut self, arcs: &[Arc]) -> Option<Least> {
        for arc in arcs {
            self.sweep(arc);
        }
        let (value, angle_deg) = self.best?;
        let floor = if self.floor < self.lowest { self.floor } else { self.lowest };
        let mean = self.section.mean;
        let rounding = 2.0 * self.most.rounding + f64::EPSILON * (libm::fabs(mean) + libm::fabs(value));
        Some(Least { least_mm: mean + value + 0.0, angle_deg, within_mm: value - floor + rounding })
    }

    fn sweep(&mut self, arc: &Arc) {
        // a round piston in a round bore
        if self.most.second <= 0.0 {
            let first = if arc.to_deg >= 360.0 { 0.0 } else { arc.from_deg };
            return self.meet(0.0, Place::of(first), true);
        }
        let turn = arc.to_deg - arc.from_deg >= 360.0 && arc.from_deg <= 0.0;
        if !turn {
            self.meet_end(arc.from_deg % 360.0);
            self.meet_end(arc.to_deg % 360.0);
        }
        let (from, to) =
            (libm::ceil(arc.from_deg / Self::STEP_DEG), libm::floor(arc.to_deg / Self::STEP_DEG));
        let offset = |deg: f64, node: f64| (deg - node * Self::STEP_DEG) * (PI / 180.0);
        if from > to {
            // both ends within one cell
            return self.refine(as_count(to), offset(arc.from_deg, to), offset(arc.to_deg, to));
        }
        self.sweep_cells(as_count(from), as_count(to), turn);
        if from * Self::STEP_DEG > arc.from_deg {
            self.refine(as_count(from - 1.0), offset(arc.from_deg, from - 1.0), Self::STEP);
        }
        if to * Self::STEP_DEG < arc.to_deg {
            self.refine(as_count(to), 0.0, offset(arc.to_deg, to));
        }
    }

    /// The cells between two nodes.
    fn sweep_cells(&mut self, from: usize, to: usize, turn: bool) {
        let mut lowest = (from, f64::INFINITY);
        for (first, piece) in self.pieces(from, to) {
            let (place, value) = lowest_of(piece);
            if value < lowest.1 {
                lowest = (first + place, value);
            }
        }
        let closed = match turn || (lowest.0 > from && lowest.0 < to) {
            true => self.polish(lowest.0),
            false => None,
        };
        if lowest.1 < self.lowest {
            self.lowest = lowest.1;
        }
        for (first, piece) in self.pieces(from, to) {
            for (cell, pair) in piece.windows(2).enumerate().map(|(k, pair)| (first + k, pair)) {
                let limit = self.lowest + self.dip();
                if pair.iter().any(|end| *end <= limit)
                    && !closed.is_some_and(|c| c.holds(cell, Self::CELLS, Self::STEP))
                {
                    self.refine(cell, 0.0, Self::STEP);
                }
            }
        }
    }

    fn place(&self, node: usize, offset: f64) -> Place {
        // the nearer of the two nodes, so that the series of the offset are short
        let (node, offset) =
            if offset > Self::STEP / 2.0 { (node + 1, offset - Self::STEP) } else { (node, offset) };
        Place { direction: node * Self::STRIDE % DIRECTIONS, offset }
    }

    fn meet_end(&mut self, angle_deg: f64) {
        let place = Place::of(angle_deg);
        let value = self.section.near(place).value;
        self.meet(value, place, true);
    }

    /// A place that may be the one. Where it is not a valley or an end, its neighbours have the same value to rounding, and it must not
    /// win by its angle.
    fn meet(&mut self, value: f64, place: Place, by_angle: bool) {
        if value < self.lowest {
            self.lowest = value;
        }
        let least = self.lowest + self.most.rounding;
        let angle_deg = place.angle_deg();
        let better = match self.best {
            None => true,
            Some((best, _)) if best > least => value < best,
            Some((_, best_angle)) => by_angle && value <= least && angle_deg < best_angle,
        };
        if better {
            self.best = Some((value, angle_deg));
        }
    }

    /// From the lowest node down into its valley, which closes the cells around it: with `s` the second derivative there, `f1` what is left of the
    /// first and `m3` the bound of the third, `f(x) >= f - |f1| |x| + s x^2/2 - m3 |x|^3/6 >= f - 1.5 f1^2/s` for `|x| <= 2 s/m3`.
    fn polish(&mut self, node: usize) -> Option<Closed> {
        let mut offset = 0.0;
        for _ in 0..5 {
            let place = Place { direction: node * Self::STRIDE % DIRECTIONS, offset };
            let d = self.section.near(place);
            // too flat to rely on
            if d.second <= 1e-6 * self.most.second {
                return None;
            }
            let step = halley(&d);
            if libm::fabs(offset + step) > Self::STEP {
                return None;
            }
            if d.first * d.first <= d.second * self.most.rounding / 8.0 {
                self.meet(d.value, Place { offset: offset + step, ..place }, true);
                let floor = d.value - 1.5 * d.first * d.first / d.second;
                if floor < self.floor {
                    self.floor = floor;
                }
                return Some(Closed { node, offset, reach: 1.999 * d.second / self.most.third });
            }
            offset += step;
        }
        None
    }

    /// The part of a cell from `a` to `b`, offsets from its first node: closed by a bound, by a certificate, or halved.
    fn refine(&mut self, node: usize, a: f64, b: f64) {
        let middle = a + (b - a) / 2.0;
        if !self.close(node, (a, b), middle) {
            self.halve(node, (a, middle), (middle, b));
        }
    }

    /// Halves until nothing is open; the lower angle first.
    fn halve(&mut self, node: usize, left: (f64, f64), right: (f64, f64)) {
        let mut open = [right; DEEPEST];
        let (mut count, mut now) = (1_usize, left);
        loop {
            let middle = now.0 + (now.1 - now.0) / 2.0;
            match (self.close(node, now, middle), open.get_mut(count)) {
                (false, Some(top)) => {
                    *top = (middle, now.1);
                    (count, now) = (count + 1, (now.0, middle));
                }
                _ => match count.checked_sub(1).and_then(|top| open.get(top).copied()) {
                    Some(top) => (count, now) = (count - 1, top),
                    None => return,
                },
            }
        }
    }

    /// Is nothing left to find between `a` and `b`?
    fn close(&mut self, node: usize, (a, b): (f64, f64), middle: f64) -> bool {
        let w = (b - a) / 2.0;
        let place = self.place(node, middle);
        let d = self.section.near(place);
        if d.value < self.lowest {
            self.lowest = d.value;
        }
        let (slope, third) = (libm::fabs(d.first), libm::fabs(d.third));
        let rest = third * w * w * w / 6.0 + self.most.fourth * w * w * w * w / 24.0;
        // of the parabola alone
        let down = match slope < d.second * w {
            true => slope * slope / (2.0 * d.second),
            false => slope * w - d.second * w * w / 2.0,
        };
        if d.value - down - rest > self.lowest + 4.0 * self.most.rounding {
            return true;
        }
        let bend = third * w + self.most.fourth * w * w / 2.0;
        if d.second > bend {
            self.descend(node, (a, b), middle, d.second - bend);
            return true;
        }
        if slope > libm::fabs(d.second) * w + third * w * w / 2.0 + self.most.fourth * w * w * w / 6.0 {
            let place = self.place(node, if d.first > 0.0 { a } else { b });
            let value = self.section.near(place).value;
            self.meet(value, place, false);
            return true;
        }
        let flat = slope * w + libm::fabs(d.second) * w * w / 2.0 + rest;
        // halved to the last digit, there is nothing between
        if flat <= self.most.rounding || middle <= a || middle >= b {
            self.meet(d.value, place, true);
            let floor = d.value - flat;
            if floor < self.floor {
                self.floor = floor;
            }
            return true;
        }
        false
    }

    /// The valley between `a` and `b`, where the second derivative is nowhere below `bend`; at an end when it has none.
    fn descend(&mut self, node: usize, (a, b): (f64, f64), start: f64, bend: f64) {
        let (mut low, mut high, mut x) = (a, b, start);
        for turn in 0..DEEPEST {
            let place = self.place(node, x);
            let d = self.section.near(place);
            let left = d.first * d.first / (2.0 * bend);
            let at_end = (x <= a && d.first >= 0.0) || (x >= b && d.first <= 0.0);
            let level = left <= self.most.rounding / 16.0;
            let next = x + halley(&d);
            if at_end || level || turn + 1 == DEEPEST {
                let step = if next > a && next < b { next - x } else { 0.0 };
                self.meet(d.value, Place { offset: place.offset + step, ..place }, level);
                let floor = if at_end { d.value } else { d.value - left };
                if floor < self.floor {
                    self.floor = floor;
                }
                return;
            }
            if d.first > 0.0 {
                high = x
            } else {
                low = x
            }
            let halved = low + (high - low) / 2.0;
            x = match turn < 8 {
                true if next <= low => low,
                true if next >= high => high,
                true => next,
                false => halved,
            };
        }
    }
}

/// A valley and how far around it nothing is lower.
#[derive(Debug, Clone, Copy)]
struct Closed {
    node: usize,
    offset: f64,
    reach: f64,
}

impl Closed {
    /// Is a whole cell within reach?
    fn holds(&self, cell: usize, cells: usize, step: f64) -> bool {
        let apart = (cell + 2 * cells - self.node) % cells;
        // signed: cells behind the valley count back from the turn
        let left = if apart >= cells / 2 { as_number(apart) - as_number(cells) } else { as_number(apart) };
        let (left, right) = (left * step - self.offset, (left + 1.0) * step - self.offset);
        left >= -self.reach && right <= self.reach
    }
}

/// The step to the valley by Halley's method, by Newton's where that fails.
fn halley(d: &Derivatives) -> f64 {
    let newton = -d.first / d.second;
    let bent = 1.0 + newton * d.third / (2.0 * d.second);
    if bent > 0.5 && bent < 2.0 { newton / bent } else { newton }
}

/// The lowest of some values and its place, the first of equals.
fn lowest_of(values: &[f64]) -> (usize, f64) {
    let mut lanes = [f64::INFINITY; 8];
    let (chunks, rest) = values.as_chunks::<8>();
    for chunk in chunks {
        for (lane, value) in lanes.iter_mut().zip(chunk) {
            *lane = if *value < *lane { *value } else { *lane };
        }
    }
    let lowest = lanes.iter().chain(rest).fold(f64::INFINITY, |low, v| if *v < low { *v } else { low });
    (values.iter().position(|v| *v <= lowest).unwrap_or(0), lowest)
}

/// The coefficients of one phase, checked.
fn taken(field: &str, given: &[f64]) -> Result<[f64; MOST_ORDER], Error> {
    let mut out = [0.0; MOST_ORDER];
    if given.len() > MOST_ORDER {
        let error = Error::new(ErrorKind::OutOfRange, given.len().to_string(), "too many orders");
        return Err(error.limits(0.0, 32.0, "1").at(field));
    }
    check_all(field, given)?;
    for (to, from) in out.iter_mut().zip(given) {
        *to = *from;
    }
    Ok(out)
}

fn check_all(field: &str, given: &[f64]) -> Result<(), Error> {
    // the field is written out only for a refusal
    match given.iter().position(|mm| bounds::COORDINATE.judge(*mm) == bounds::Verdict::Impossible) {
        None => Ok(()),
        Some(k) => {
            let refused = given.get(k).copied().unwrap_or(f64::NAN);
            bounds::COORDINATE.check(&format!("{field}/{k}"), refused).map(|_| ())
        }
    }
}
