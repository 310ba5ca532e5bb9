//! Special functions of statistics, on the pinned `libm` so that every host gets the same bits.
//!
//! | function | range | relative error against mpmath at 40 digits (`tests/vectors/special.csv`) |
//! |---|---|---|
//! | [`normal_cdf`] | x above -8; down to -38 | 5e-15; 2e-13 |
//! | [`normal_quantile`] | 1e-300 <= p < 1 | 5e-15 |
//! | [`gamma_p`], [`gamma_q`] | a 0.01 to 1000, x >= 0 | 5e-13 |
//! | [`beta_i`] | a, b 0.1 to 1000 | 5e-12 |
//! | [`t_cdf`], [`t_quantile`] | 0.5 degrees of freedom or more | 2e-11 |
//! | [`t_factor`] | factors 1 to 5, 0.5 degrees of freedom or more | 2e-11 |
//! | [`f_cdf`], [`f_upper`], [`f_quantile`], [`chi2_quantile`] | 1 to 1000 degrees of freedom | 2e-11 |
//!
//! An argument outside its range gives NaN: the callers check theirs before and name the field.

use core::f64::consts::{FRAC_1_SQRT_2, PI};

/// Probability that a standard normal variable is not above `x`. Source: DLMF 7.2.2.
#[must_use]
pub fn normal_cdf(x: f64) -> f64 {
    libm::erfc(-x * FRAC_1_SQRT_2) / 2.0
}

/// Density of a standard normal variable.
#[must_use]
pub fn normal_density(x: f64) -> f64 {
    libm::exp(-x * x / 2.0) / libm::sqrt(2.0 * PI)
}

/// The `x` of [`normal_cdf`] for a probability. Source: Wichura, Algorithm AS 241 (PPND16), Applied Statistics 37 (1988), with one
/// step of Halley's method, which removes what the rational functions leave.
#[must_use]
pub fn normal_quantile(p: f64) -> f64 {
    if !(p > 0.0 && p < 1.0) {
        return f64::NAN;
    }
    let q = p - 0.5;
    let x = if libm::fabs(q) <= 0.425 {
        let r = 0.180_625 - q * q;
        q * horner(&CENTRE_NUMERATOR, r) / horner(&CENTRE_DENOMINATOR, r)
    } else {
        let tail = if q < 0.0 { p } else { 1.0 - p };
        let r = libm::sqrt(-libm::log(tail));
        let size = if r <= 5.0 {
            horner(&NEAR_NUMERATOR, r - 1.6) / horner(&NEAR_DENOMINATOR, r - 1.6)
        } else {
            horner(&FAR_NUMERATOR, r - 5.0) / horner(&FAR_DENOMINATOR, r - 5.0)
        };
        if q < 0.0 { -size } else { size }
    };
    // on the lower tail, where the probability holds its digits
    let (lower, target) = if x > 0.0 { (-x, 1.0 - p) } else { (x, p) };
    let step = (normal_cdf(lower) - target) / normal_density(lower);
    let refined = lower - step / (1.0 + lower * step / 2.0);
    if x > 0.0 { -refined } else { refined }
}

/// Coefficients of AS 241, from the constant term up.
const CENTRE_NUMERATOR: [f64; 8] = [
    3.387_132_872_796_366_5,
    133.141_667_891_784_38,
    1_971.590_950_306_551_3,
    13_731.693_765_509_46,
    45_921.953_931_549_87,
    67_265.770_927_008_7,
    33_430.575_583_588_13,
    2_509.080_928_730_122_7,
];
const CENTRE_DENOMINATOR: [f64; 8] = [
    1.0,
    42.313_330_701_600_91,
    687.187_007_492_057_9,
    5_394.196_021_424_751,
    21_213.794_301_586_597,
    39_307.895_800_092_71,
    28_729.085_735_721_943,
    5_226.495_278_852_545,
];
const NEAR_NUMERATOR: [f64; 8] = [
    1.423_437_110_749_683_5,
    4.630_337_846_156_546,
    5.769_497_221_460_691,
    3.647_848_324_763_204_5,
    1.270_458_252_452_368_4,
    0.241_780_725_177_450_6,
    0.022_723_844_989_269_184,
    7.745_450_142_783_414e-4,
];
const NEAR_DENOMINATOR: [f64; 8] = [
    1.0,
    2.053_191_626_637_759,
    1.676_384_830_183_803_8,
    0.689_767_334_985_1,
    0.148_103_976_427_480_08,
    0.015_198_666_563_616_457,
    5.475_938_084_995_345e-4,
    1.050_750_071_644_416_9e-9,
];
const FAR_NUMERATOR: [f64; 8] = [
    6.657_904_643_501_103,
    5.463_784_911_164_114,
    1.784_826_539_917_291_3,
    0.296_560_571_828_504_87,
    0.026_532_189_526_576_124,
    0.001_242_660_947_388_078_4,
    2.711_555_568_743_487_6e-5,
    2.010_334_399_292_288_1e-7,
];
const FAR_DENOMINATOR: [f64; 8] = [
    1.0,
    0.599_832_206_555_888,
    0.136_929_880_922_735_8,
    0.014_875_361_290_850_615,
    7.868_691_311_456_133e-4,
    1.846_318_317_510_054_8e-5,
    1.421_511_758_316_446e-7,
    2.044_263_103_389_939_8e-15,
];

fn horner(coefficients: &[f64], x: f64) -> f64 {
    coefficients.iter().rev().fold(0.0, |sum, c| sum * x + c)
}

/// Most terms of a series or a continued fraction; enough for the ranges in the table above.
const MOST_TERMS: u32 = 20_000;
const SMALLEST: f64 = 1e-300;

/// Regularised lower incomplete gamma function P(a, x). Source: DLMF 8.7.1 (series), 8.9.2 (continued fraction).
#[must_use]
pub fn gamma_p(a: f64, x: f64) -> f64 {
    match in_gamma_range(a, x) {
        false => f64::NAN,
        true if x < a + 1.0 => gamma_series(a, x),
        true => 1.0 - gamma_fraction(a, x),
    }
}

/// Regularised upper incomplete gamma function Q(a, x) = 1 - P(a, x), without loss in the upper tail.
#[must_use]
pub fn gamma_q(a: f64, x: f64) -> f64 {
    match in_gamma_range(a, x) {
        false => f64::NAN,
        true if x < a + 1.0 => 1.0 - gamma_series(a, x),
        true => gamma_fraction(a, x),
    }
}

fn in_gamma_range(a: f64, x: f64) -> bool {
    a > 0.0 && a.is_finite() && x >= 0.0 && x.is_finite()
}

/// `x^a e^-x / Gamma(a + 1)` without overflow.
fn gamma_scale(a: f64, x: f64) -> f64 {
    libm::exp(a * libm::log(x) - x - libm::lgamma(a + 1.0))
}

fn gamma_series(a: f64, x: f64) -> f64 {
    if x == 0.0 {
        return 0.0;
    }
    let (mut sum, mut term) = (1.0, 1.0);
    for n in 1..MOST_TERMS {
        term *= x / (a + f64::from(n));
        sum += term;
        if term < sum * 1e-17 {
            break;
        }
    }
    sum * gamma_scale(a, x)
}

fn gamma_fraction(a: f64, x: f64) -> f64 {
    let mut b = x + 1.0 - a;
    let mut c = 1.0 / SMALLEST;
    let mut d = 1.0 / b;
    let mut h = d;
    for n in 1..MOST_TERMS {
        let n = f64::from(n);
        let an = -n * (n - a);
        b += 2.0;
        d = 1.0 / not_zero(an * d + b);
        c = not_zero(b + an / c);
        h *= d * c;
        if libm::fabs(d * c - 1.0) < 1e-16 {
            break;
        }
    }
    gamma_scale(a, x) * a * h
}

fn not_zero(x: f64) -> f64 {
    if libm::fabs(x) < SMALLEST { SMALLEST } else { x }
}

/// Regularised incomplete beta function I_x(a, b). Source: DLMF 8.17.22, evaluated by Lentz's method.
#[must_use]
pub fn beta_i(a: f64, b: f64, x: f64) -> f64 {
    beta_both(a, b, x, 1.0 - x)
}

/// `I_x(a, b)` from `x` and `y = 1 - x`, each with its own digits.
fn beta_both(a: f64, b: f64, x: f64, y: f64) -> f64 {
    if !(a > 0.0 && b > 0.0 && (0.0..=1.0).contains(&x) && (0.0..=1.0).contains(&y)) {
        return f64::NAN;
    }
    if x == 0.0 || y == 0.0 {
        return if x == 0.0 { 0.0 } else { 1.0 };
    }
    let scale = libm::exp(
        libm::lgamma(a + b) - libm::lgamma(a) - libm::lgamma(b) + a * libm::log(x) + b * libm::log(y),
    );
    beta_scaled(a, b, (x, y), scale)
}

/// The same from its factor `x^a y^b / B(a, b)`.
fn beta_scaled(a: f64, b: f64, (x, y): (f64, f64), scale: f64) -> f64 {
    if x < (a + 1.0) / (a + b + 2.0) {
        scale * beta_fraction(a, b, x) / a
    } else {
        1.0 - scale * beta_fraction(b, a, y) / b
    }
}

/// The `x` of [`beta_i`] for a probability from above 0 to one half, with all its digits near 0.
pub(crate) fn beta_lower(p: f64, a: f64, b: f64) -> f64 {
    let ln_scale = libm::lgamma(a + b) - libm::lgamma(a) - libm::lgamma(b);
    let (mut low, mut high) = (f64::NEG_INFINITY, 0.0);
    // Newton's method between logarithms, from the leading term of the lower tail
    let mut ln_x = libm::fmin((libm::log(p * a) - ln_scale) / a, libm::log(a / (a + b)));
    for _ in 0..100 {
        let x = libm::exp(ln_x);
        let value = beta_i(a, b, x);
        if value < p {
            low = ln_x;
        } else {
            high = ln_x;
        }
        let slope = libm::exp(ln_scale + a * ln_x + (b - 1.0) * libm::log1p(-x)) / value;
        let newton = ln_x - libm::log(value / p) / slope;
        let halved = if low.is_finite() { low + (high - low) / 2.0 } else { 2.0 * ln_x };
        let next = if newton > low && newton < high { newton } else { halved };
        if libm::fabs(next - ln_x) < 4e-16 * libm::fmax(1.0, libm::fabs(ln_x)) {
            break;
        }
        ln_x = next;
    }
    libm::exp(ln_x)
}

/// `x^a y^(1/2) / B(a, 1/2)` for a large `a`, where the logarithms of gamma functions and of `x` near 1 lose their digits.
/// Source: DLMF 5.11.8 for `ln Gamma(a + 1/2) - ln Gamma(a)`.
fn beta_scale_of_half(a: f64, y: f64) -> f64 {
    let r = 1.0 / (a * a);
    let gammas =
        libm::log(a) / 2.0 - (1.0 / 8.0 - r * (1.0 / 192.0 - r * (1.0 / 640.0 - r * 17.0 / 14336.0))) / a;
    libm::exp(gammas + a * libm::log1p(-y)) * libm::sqrt(y / PI)
}

fn beta_fraction(a: f64, b: f64, x: f64) -> f64 {
    let mut c = 1.0;
    let mut d = 1.0 / not_zero(1.0 - (a + b) * x / (a + 1.0));
    let mut h = d;
    for m in 1..MOST_TERMS {
        let m = f64::from(m);
        let even = m * (b - m) * x / ((a + 2.0 * m - 1.0) * (a + 2.0 * m));
        d = 1.0 / not_zero(1.0 + even * d);
        c = not_zero(1.0 + even / c);
        h *= d * c;
        let odd = -(a + m) * (a + b + m) * x / ((a + 2.0 * m) * (a + 2.0 * m + 1.0));
        d = 1.0 / not_zero(1.0 + odd * d);
        c = not_zero(1.0 + odd / c);
        h *= d * c;
        if libm::fabs(d * c - 1.0) < 1e-16 {
            break;
        }
    }
    h
}

/// Above this many degrees of freedom the t distribution is the normal with its first correction.
const MANY_DOF: f64 = 1e7;

/// Probability that a variable of Student's t distribution is not above `t`. Source: DLMF 8.17 with A&S 26.7.1.
#[must_use]
pub fn t_cdf(t: f64, dof: f64) -> f64 {
    if dof == f64::INFINITY {
        return normal_cdf(t);
    }
    if dof > MANY_DOF {
        // Cornish and Fisher, A&S 26.7.5 inverted to first order; what is left out is of the order of 1 / dof^2
        return normal_cdf(t) - normal_density(t) * (t * t * t + t) / (4.0 * dof);
    }
    let square = t * t;
    let (a, x, y) = (dof / 2.0, dof / (dof + square), square / (dof + square));
    let both = match dof > 100.0 && y > 0.0 && y < 0.5 {
        true => beta_scaled(a, 0.5, (x, y), beta_scale_of_half(a, y)),
        false => beta_both(a, 0.5, x, y),
    };
    let tail = both / 2.0;
    if t > 0.0 { 1.0 - tail } else { tail }
}

/// The `t` of [`t_cdf`] for a probability. `dof` may be infinite.
#[must_use]
pub fn t_quantile(p: f64, dof: f64) -> f64 {
    if !(p > 0.0 && p < 1.0 && dof > 0.0) {
        return f64::NAN;
    }
    if dof == f64::INFINITY {
        return normal_quantile(p);
    }
    // on the lower tail, where the probability holds its digits
    let tail = if p < 0.5 { p } else { 1.0 - p };
    let t = -increasing_root(|x| tail - t_cdf(-x, dof), 1.0);
    if p < 0.5 { t } else { -t }
}

/// The factor that has for Student's t the probability that `normal` has for the normal distribution: `T_dof(t) = Phi(normal)`.
///
/// With infinite degrees of freedom it is `normal` itself; a coverage factor of 2 becomes that of Table G.2 of JCGM 100:2008 at 95.45 %.
#[must_use]
pub fn t_factor(normal: f64, dof: f64) -> f64 {
    // on the lower tail, where the probability holds its digits
    if dof == f64::INFINITY { normal } else { -t_quantile(normal_cdf(-normal), dof) }
}

/// Probability that a variable of the F distribution is not above `f`. Source: A&S 26.6.2.
#[must_use]
pub fn f_cdf(f: f64, dof1: f64, dof2: f64) -> f64 {
    let (above, below) = (dof1 * f, dof2);
    beta_both(dof1 / 2.0, dof2 / 2.0, above / (above + below), below / (above + below))
}

/// Probability that a variable of the F distribution is above `f`, without loss in the upper tail. Source: A&S 26.6.2.
#[must_use]
pub fn f_upper(f: f64, dof1: f64, dof2: f64) -> f64 {
    let (above, below) = (dof1 * f, dof2);
    beta_both(dof2 / 2.0, dof1 / 2.0, below / (above + below), above / (above + below))
}

/// The `f` of [`f_cdf`] for a probability.
#[must_use]
pub fn f_quantile(p: f64, dof1: f64, dof2: f64) -> f64 {
    match p > 0.0 && p < 1.0 && dof1 > 0.0 && dof2 > 0.0 {
        true => increasing_root(|x| f_cdf(x, dof1, dof2) - p, 1.0),
        false => f64::NAN,
    }
}

/// The value that a chi-squared variable is not above with probability `p`. Source: A&S 26.4.19.
#[must_use]
pub fn chi2_quantile(p: f64, dof: f64) -> f64 {
    match p > 0.0 && p < 1.0 && dof > 0.0 {
        true => 2.0 * increasing_root(|x| gamma_p(dof / 2.0, x) - p, dof / 2.0),
        false => f64::NAN,
    }
}

/// Root over x > 0 of an increasing function that is negative at 0: bracketed by doubling, then halved, with a secant step
/// wherever that stays inside.
fn increasing_root(f: impl Fn(f64) -> f64, start: f64) -> f64 {
    let (mut low, mut high) = (0.0, start);
    let (mut f_low, mut f_high) = (f(low), f(high));
    while f_high < 0.0 && high < 1e300 {
        (low, f_low) = (high, f_high);
        high *= 2.0;
        f_high = f(high);
    }
    for turn in 0..400 {
        let halved = low + (high - low) / 2.0;
        let secant = high - f_high * (high - low) / (f_high - f_low);
        // every third turn halves, so that a flat side cannot hold the bracket open
        let x = if turn % 3 < 2 && secant > low && secant < high { secant } else { halved };
        if x <= low || x >= high {
            break;
        }
        let value = f(x);
        if value < 0.0 {
            (low, f_low) = (x, value);
        } else {
            (high, f_high) = (x, value);
        }
        if value == 0.0 || high - low <= high * 2e-16 {
            break;
        }
    }
    if libm::fabs(f_low) < libm::fabs(f_high) { low } else { high }
}

/// Two-sided coverage factor of Student's t.
///
/// Source: JCGM 100:2008, G.3.2, `t_p(dof)` with `p` the coverage probability.
#[must_use]
pub fn coverage_factor(coverage: f64, dof: f64) -> f64 {
    t_quantile(0.5 + coverage / 2.0, dof)
}
