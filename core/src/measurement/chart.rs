//! Control charts: is the gauge still what it was? The guide is that of [`study`](super::study).

use super::statistics::{as_number, mean, range, readable, squares_about, too_few};
use crate::choice::choices;
use crate::error::{Error, ErrorKind};

choices! {
    /// What a chart shows, and what its limits rest on.
    Kind {
        /// Means of subgroups, limits by their ranges.
        MeansByRanges = "means_by_ranges",
        /// Ranges of subgroups.
        Ranges = "ranges",
        /// Means of subgroups, limits by their standard deviations.
        MeansByDeviations = "means_by_deviations",
        /// Standard deviations of subgroups.
        Deviations = "deviations",
        /// Single readings, limits by the ranges of neighbours.
        Individuals = "individuals",
        /// Ranges of neighbouring single readings.
        MovingRanges = "moving_ranges",
    }
}

/// A chart with its limits, three standard deviations from the centre. Source: ISO 7870-2:2013; ASTM MNL 7.
#[derive(Debug, Clone, PartialEq)]
pub struct Chart {
    /// Centre line: the mean of what is shown.
    pub centre: f64,
    /// Lower control limit; 0 for a range or a deviation that could be nothing.
    pub lower: f64,
    /// Upper control limit.
    pub upper: f64,
    /// Standard deviation of a reading within a subgroup, which the limits rest on.
    pub deviation: f64,
    /// The points, in order of time; moving ranges are one fewer than the readings.
    pub points: Vec<Point>,
}

/// A point of a chart.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Point {
    /// What is shown.
    pub value: f64,
    /// Is it beyond a control limit?
    pub beyond: bool,
    /// Is it the ninth in a row, or a later one, on one side of the centre line? Only means and single readings: ranges and deviations are
    /// not symmetric. Source: Nelson, Journal of Quality Technology 16 (1984), test 2.
    pub run: bool,
}

/// Constants of subgroups of normal values, in units of their standard deviation.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Constants {
    /// Mean of the range.
    pub d2: f64,
    /// Standard deviation of the range.
    pub d3: f64,
    /// Mean of the standard deviation.
    pub c4: f64,
}

/// Points on one side of the centre line that are a run.
const RUN: usize = 9;
/// Control limits, in standard deviations.
const WIDTH: f64 = 3.0;
/// Largest subgroup that there are constants for.
pub(super) const MOST: usize = 25;

/// Mean and standard deviation of the range of 2, 3, ... normal values. Source: integrals of the distribution of the range at 24 digits; evaluated
/// again in `tests/study.rs`, and held there against the published tables.
#[expect(clippy::approx_constant, reason = "the first is 2 / sqrt(pi), as the table has it")]
const RANGE: [(f64, f64); MOST - 1] = [
    (1.128_379_167_095_512_6, 0.852_502_466_427_421_8),
    (1.692_568_750_643_269, 0.888_368_004_045_204_3),
    (2.058_750_746_007_928, 0.879_808_202_824_983_3),
    (2.325_928_947_281_039, 0.864_081_941_099_504_1),
    (2.534_412_721_222_943, 0.848_039_686_117_495_3),
    (2.704_356_751_213_808_7, 0.833_205_335_622_293_7),
    (2.847_200_612_090_555_5, 0.819_831_489_791_944),
    (2.970_026_324_418_474, 0.807_834_274_553_322_5),
    (3.077_505_461_670_346, 0.797_050_673_519_411_3),
    (3.172_872_703_816_000_5, 0.787_314_620_550_328_2),
    (3.258_455_279_743_826, 0.778_478_341_203_384_3),
    (3.335_980_354_098_255, 0.770_416_202_063_754_8),
    (3.406_763_108_199_953, 0.763_023_095_624_790_3),
    (3.471_826_889_882_074_8, 0.756_211_429_727_943_9),
    (3.531_982_786_109_576, 0.749_908_089_409_915_9),
    (3.587_883_961_765_381_7, 0.744_051_783_960_731_5),
    (3.640_063_757_937_444_4, 0.738_590_853_378_177_8),
    (3.688_963_023_207_649_3, 0.733_481_495_518_868_4),
    (3.734_950_119_596_641, 0.728_686_345_707_305_2),
    (3.778_335_829_842_621, 0.724_173_340_717_499),
    (3.819_384_643_362_832_7, 0.719_914_808_434_223_4),
    (3.858_323_423_285_007, 0.715_886_735_491_814_5),
    (3.895_348_148_451_356_4, 0.712_068_175_147_937_2),
    (3.930_629_219_507_113, 0.708_440_765_888_655),
];

impl Constants {
    /// The constants of subgroups of 2 to 25.
    #[must_use]
    pub fn of(size: usize) -> Option<Self> {
        let (d2, d3) = RANGE.get(size.checked_sub(2)?).copied()?;
        // Gamma(n/2) / Gamma((n-1)/2), from that of 2 by Gamma(x + 1) = x Gamma(x)
        let first = 1.0 / core::f64::consts::PI.sqrt();
        let gammas = (2..size).fold(first, |ratio, n| as_number(n - 1) / (2.0 * ratio));
        Some(Constants { d2, d3, c4: gammas * (2.0 / as_number(size - 1)).sqrt() })
    }

    /// Root of the mean square of the range, `d2*` of one subgroup.
    #[must_use]
    pub fn d2_star(&self) -> f64 {
        (self.d2 * self.d2 + self.d3 * self.d3).sqrt()
    }

    /// Standard deviation of the standard deviation, in units of its mean times [`c4`](Self::c4).
    fn of_deviation(&self) -> f64 {
        (1.0 - self.c4 * self.c4).sqrt()
    }
}

/// A chart of at least two subgroups of equal size, in order of time, in any one unit: of 2 to 25 readings, or of one for
/// [`Kind::Individuals`] and [`Kind::MovingRanges`]. The limits rest on these readings themselves.
///
/// # Errors
/// [`ErrorKind::MissingField`] when there is too little or the sizes differ, [`ErrorKind::OutOfRange`] for another size; [`ErrorKind::NotFinite`]
/// with the place of the reading as field: `values/4/0`.
pub fn control_chart(values: &[Vec<f64>], kind: Kind) -> Result<Chart, Error> {
    let size = values.first().map_or(0, Vec::len);
    if values.len() < 2 || size == 0 || values.iter().any(|group| group.len() != size) {
        return Err(too_few("values", "at least two subgroups are needed, all of one size"));
    }
    for (g, group) in values.iter().enumerate() {
        group.iter().enumerate().try_for_each(|(k, v)| readable(*v, || format!("values/{g}/{k}")))?;
    }
    let single = matches!(kind, Kind::Individuals | Kind::MovingRanges);
    let constants = Constants::of(if single { size + 1 } else { size });
    let Some(constants) = constants.filter(|_| !single || size == 1) else {
        let (least, most) = if single { (1.0, 1.0) } else { (2.0, as_number(MOST)) };
        let reason = "this chart has no constants for subgroups of that size";
        let error = Error::new(ErrorKind::OutOfRange, size.to_string(), reason);
        return Err(error.value(as_number(size)).limits(least, most, "1").at("values"));
    };
    Ok(constants.chart(values, kind))
}

impl Constants {
    fn chart(&self, values: &[Vec<f64>], kind: Kind) -> Chart {
        let means: Vec<f64> = values.iter().map(|g| mean(g)).collect();
        let by_deviations = matches!(kind, Kind::MeansByDeviations | Kind::Deviations);
        let spreads: Vec<f64> = match kind {
            Kind::MeansByRanges | Kind::Ranges => values.iter().map(|g| range(g)).collect(),
            Kind::MeansByDeviations | Kind::Deviations => values.iter().map(|g| deviation(g)).collect(),
            Kind::Individuals | Kind::MovingRanges => means.windows(2).map(range).collect(),
        };
        let (of_mean, of_spread) =
            if by_deviations { (self.c4, self.of_deviation()) } else { (self.d2, self.d3) };
        let sigma = mean(&spreads) / of_mean;
        match kind {
            Kind::Ranges | Kind::Deviations | Kind::MovingRanges => {
                Chart::of(&spreads, WIDTH * of_spread * sigma, sigma, false)
            }
            Kind::MeansByRanges | Kind::MeansByDeviations | Kind::Individuals => {
                let size = as_number(values.first().map_or(1, Vec::len));
                Chart::of(&means, WIDTH * sigma / size.sqrt(), sigma, true)
            }
        }
    }
}

impl Chart {
    fn of(values: &[f64], half: f64, deviation: f64, location: bool) -> Chart {
        let centre = mean(values);
        let lower = if location || centre > half { centre - half } else { 0.0 };
        let upper = centre + half;
        let (mut last, mut run) = (None, 0);
        let points = values.iter().map(|value| {
            let side = value.partial_cmp(&centre).filter(|side| side.is_ne());
            run = if side.is_some() && side == last { run + 1 } else { 1 };
            last = side;
            Point { value: *value, beyond: *value < lower || *value > upper, run: location && run >= RUN }
        });
        let points = points.collect();
        Chart { centre, lower, upper, deviation, points }
    }
}

/// Standard deviation of a subgroup.
fn deviation(group: &[f64]) -> f64 {
    let shift = group.first().copied().unwrap_or_default();
    let differences: Vec<f64> = group.iter().map(|v| v - shift).collect();
    (squares_about(&differences, mean(&differences)) / as_number(group.len() - 1)).sqrt()
}
