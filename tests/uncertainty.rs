//! Uncertain quantities against the published examples of JCGM 100 and EA-4/02, and exact derivatives against mpmath.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test that panics has failed"
)]
#![allow(
    clippy::disallowed_methods,
    clippy::excessive_precision,
    clippy::type_complexity,
    clippy::float_cmp,
    reason = "the tests' own arithmetic; equality of bits is meant where it stands"
)]

use gaugepoint::ErrorKind;
use gaugepoint::measurement::distribution::{Distribution, dof_of_reliability};
use gaugepoint::measurement::jet::Jet;
use gaugepoint::measurement::uncertainty::{Degrees, Evaluation, Inputs, StraightLine};

fn close(ours: f64, expected: f64, relative: f64, what: &str) {
    assert!(((ours - expected) / expected).abs() <= relative, "{what}: {ours} against {expected}");
}

fn near(ours: f64, printed: f64, half_digit: f64, what: &str) {
    assert!((ours - printed).abs() <= half_digit, "{what}: {ours} against {printed}");
}

type OfOne<'a> = &'a dyn Fn(&Jet) -> Jet;
type Model<'a> = &'a dyn Fn(&[Jet]) -> Jet;

fn contribution(of: &Evaluation<'_>, source: &str) -> f64 {
    of.contributions.iter().find(|c| c.source == source).expect("a source").contribution
}

/// JCGM 100:2008, H.1: the end gauge, from the raw inputs of H.1.3 (nm, C). Arguments: `ls`, `d`, `alpha`, `theta`, `dalpha`, `dtheta`.
fn end_gauge() -> Inputs {
    let mut inputs = Inputs::new();
    // certificate U = 75 nm, k = 3, 18 degrees of freedom
    let standard = Distribution::normal_expanded(75.0, 3.0).unwrap().with_dof(18.0).unwrap();
    inputs.quantity("ls", 50_000_623.0, standard).unwrap();
    // five observations, pooled s = 13 nm of 24 degrees of freedom
    let mean = inputs.source("d mean", Distribution::pooled(13.0, 24.0, 5).unwrap()).unwrap();
    // 10 nm at 95 %, 5 degrees of freedom
    let random = Distribution::student_t_at_coverage(10.0, 0.95, 5.0).unwrap();
    let random = inputs.source("d random", random).unwrap();
    // 20 nm at 3 sigma, reliable to 25 %
    let systematic = Distribution::normal_expanded(20.0, 3.0).unwrap().with_reliability(0.25).unwrap();
    let systematic = inputs.source("d systematic", systematic).unwrap();
    inputs.input(215.0, &[(mean, 1.0), (random, 1.0), (systematic, 1.0)]).unwrap();
    inputs.quantity("alpha", 11.5e-6, Distribution::rectangular(2e-6).unwrap()).unwrap();
    let bed = inputs.source("theta mean", Distribution::normal(0.2).unwrap()).unwrap();
    let cycle = inputs.source("theta cycle", Distribution::arcsine(0.5).unwrap()).unwrap();
    inputs.input(-0.1, &[(bed, 1.0), (cycle, 1.0)]).unwrap();
    let reliable =
        |half_width, to| Distribution::rectangular(half_width).unwrap().with_reliability(to).unwrap();
    inputs.quantity("dalpha", 0.0, reliable(1e-6, 0.1)).unwrap();
    inputs.quantity("dtheta", 0.0, reliable(0.05, 0.5)).unwrap();
    inputs
}

fn end_gauge_length(x: &[Jet]) -> Jet {
    &x[0] + &x[1] - &x[0] * (&x[4] * &x[3] + &x[2] * &x[5])
}

/// Raw-path digits: computed independently from the raw inputs; the printed figures follow by rounding (32, 16.7, 1002).
#[test]
fn jcgm_100_end_gauge_first_order() {
    let inputs = end_gauge();
    let difference = inputs.evaluate(|x| x[1].clone()).unwrap();
    close(difference.standard_uncertainty, 9.663_223, 1e-7, "u(d)");
    close(difference.dof, 25.621_31, 2e-7, "dof(d)");
    let length = inputs.evaluate(end_gauge_length).unwrap();
    near(length.estimate, 50_000_838.0, 1e-7, "length");
    close(length.standard_uncertainty, 31.658_160, 1e-6, "u_c");
    close(length.dof, 16.741_149, 1e-6, "dof_eff");
    // printed: 25, 9.7 of 5.8, 3.9 and 6.7, 0, 0, 2.9, 16.6
    near(contribution(&length, "ls"), 25.0, 1e-5, "ls");
    for (source, printed) in [("d mean", 5.8), ("d random", 3.9), ("d systematic", 6.7), ("dalpha", 2.9)] {
        near(contribution(&length, source), printed, 0.05, source);
    }
    near(contribution(&length, "dtheta"), -16.6, 0.05, "dtheta");
    for source in ["alpha", "theta mean", "theta cycle"] {
        near(contribution(&length, source), 0.0, 0.0, source);
    }
    near(length.standard_uncertainty.powi(2), 1002.0, 0.5, "u_c^2");
    let names: Vec<&str> = length.contributions.iter().map(|c| c.source).collect();
    assert_eq!(names[..5], ["ls", "dtheta", "d systematic", "d mean", "d random"]);
    near(length.contributions.iter().map(|c| c.share).sum(), 1.0, 1e-14, "shares");
    // H.1.2: c(dtheta) = -ls alpha, c(dalpha) = -ls theta
    let sensitivity = |name| length.contributions.iter().find(|c| c.source == name).unwrap().sensitivity;
    close(sensitivity("dtheta"), -575.007_164_5, 1e-12, "c(dtheta)");
    close(sensitivity("dalpha"), 5_000_062.3, 1e-12, "c(dalpha)");
}

#[test]
fn jcgm_100_end_gauge_expanded() {
    let inputs = end_gauge();
    let length = inputs.evaluate(end_gauge_length).unwrap();
    let truncated = length.expanded(0.99, Degrees::Truncated).unwrap();
    near(truncated.dof, 16.0, 0.0, "dof");
    close(truncated.coverage_factor, 2.920_78, 1e-6, "k99");
    // 2.92 times 32 is the printed 93; from unrounded numbers it is 92.467, and 91.928 without truncation
    near(truncated.expanded_uncertainty, 92.467, 5e-4, "U99");
    let computed = length.expanded(0.99, Degrees::AsComputed).unwrap();
    near(computed.expanded_uncertainty, 91.928, 5e-4, "U99, as computed");
    near(length.expanded(0.95, Degrees::Truncated).unwrap().coverage_factor, 2.12, 5e-3, "Table G.2");
    near(length.expanded(0.9545, Degrees::Truncated).unwrap().coverage_factor, 2.17, 5e-3, "Table G.2");
}

/// JCGM 100:2008, H.1.7: 11.7 nm from `ls u(dalpha) u(theta)`, 1.7 nm from `ls u(alpha) u(dtheta)`, 34 nm together; raw path
/// 11.7262, 1.66669, 33.801189.
#[test]
fn jcgm_100_end_gauge_second_order() {
    let second = end_gauge().second_order(end_gauge_length).unwrap();
    let of = |first: &str, other: &str| {
        let found = |p: &&_| same(p, first, other);
        second.products.iter().find(found).map_or(0.0, |p| p.contribution)
    };
    let theta = of("dalpha", "theta mean").hypot(of("dalpha", "theta cycle"));
    close(theta, 11.7262, 5e-6, "ls u(dalpha) u(theta)");
    close(of("alpha", "dtheta"), 1.666_69, 3e-6, "ls u(alpha) u(dtheta)");
    close(second.standard_uncertainty.expect("a variance"), 33.801_189, 1e-6, "second order");
    near(second.shift_of_mean, 0.0, 0.0, "no squares");
    near(second.third_derivatives, 0.0, 1e-9, "every third derivative has three different inputs");
    assert_eq!(second.products[0].contribution, of("theta cycle", "dalpha"));
}

fn same(p: &gaugepoint::measurement::uncertainty::Product, a: &str, b: &str) -> bool {
    (p.first == a && p.second == b) || (p.first == b && p.second == a)
}

/// JCGM 100:2008, 4.4.3, Table 1: mean 100.145 C, s 1.489, s of the mean 0.333, 19 degrees of freedom.
#[test]
fn jcgm_100_type_a() {
    let readings = [
        96.90, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07, 100.33, 100.42, 100.68,
        100.95, 101.11, 101.20, 101.57, 101.84, 102.36, 102.72,
    ];
    let (mean, distribution) = Distribution::from_repeats(&readings).unwrap();
    near(mean, 100.145, 5e-4, "mean");
    near(distribution.standard_uncertainty(), 0.333, 5e-4, "s of the mean");
    near(distribution.standard_uncertainty() * 20.0_f64.sqrt(), 1.489, 5e-4, "s");
    near(distribution.dof(), 19.0, 0.0, "dof");
}

/// JCGM 100:2008, G.4.2 and H.1.6: 25, 10 and 50 % give 8, 50 and 2 degrees of freedom.
#[test]
fn jcgm_100_reliability() {
    for (reliability, dof) in [(0.25, 8.0), (0.1, 50.0), (0.5, 2.0)] {
        close(dof_of_reliability(reliability).unwrap(), dof, 1e-15, "dof");
    }
    assert!(dof_of_reliability(0.0).unwrap() == f64::INFINITY);
}

fn thermometer_line() -> StraightLine {
    let t = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511];
    let b = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160];
    let points: Vec<(f64, f64)> = t.into_iter().zip(b).collect();
    StraightLine::fit(&points, 20.0).unwrap()
}

/// JCGM 100:2008, H.3 and Table H.6, printed -0.1712(29), 0.00218(67), -0.930, 0.0035, -0.1494(41); more digits from a least-squares
/// solution in other code, residual sum of squares 1.10096583109e-4.
#[test]
fn jcgm_100_straight_line() {
    let line = thermometer_line();
    for (ours, expected, what) in [
        (line.intercept, -0.171_203_79, "y1"),
        (line.intercept_uncertainty, 0.002_877_6, "u(y1)"),
        (line.slope, 0.002_182_698, "y2"),
        (line.slope_uncertainty, 0.000_667_94, "u(y2)"),
        (line.correlation, -0.930_43, "r"),
        (line.residual_deviation, 0.003_497_56, "s"),
        (line.residual_squares, 1.100_965_831_09e-4, "residuals"),
    ] {
        close(ours, expected, 2e-5, what);
    }
    close(line.residual_squares, 1.100_965_831_09e-4, 1e-11, "residuals");
    let (value, u) = line.at(30.0).unwrap();
    close(value, -0.149_376_81, 1e-7, "b(30 C)");
    close(u, 0.004_138_6, 2e-5, "u of b(30 C)");
}

/// The same prediction from the correlated parameters; H.3.4: nine degrees of freedom, not the eighteen that two independent ones would
/// lead to.
#[test]
fn parameters_of_a_line_as_inputs() {
    let mut inputs = Inputs::new();
    let line = thermometer_line();
    let [intercept, slope] = inputs.line("thermometer", &line).unwrap();
    let at_30 = inputs.evaluate(|x| &x[intercept] + &x[slope] * 10.0).unwrap();
    close(at_30.estimate, -0.149_376_81, 1e-7, "b(30 C)");
    close(at_30.standard_uncertainty, 0.004_138_6, 2e-5, "u");
    close(at_30.dof, 9.0, 1e-12, "dof");
    let alone = inputs.evaluate(|x| x[intercept].clone()).unwrap();
    close(alone.standard_uncertainty, line.intercept_uncertainty, 1e-13, "u(y1)");
}

/// EA-4/02 M:2022, S2: parts 22.5, 8.66, 14.4, 5.77, 5.77 mg, u 29.2 mg (29.26 unrounded), U 58 mg (58.5), 10 000.025 g.
#[test]
fn ea_4_02_weight() {
    let mut inputs = Inputs::new();
    let rectangular = |a| Distribution::rectangular(a).unwrap();
    // in mg above 10 kg; the repeatability from a pooled 25 mg, three weighings
    inputs.quantity("standard", 5.0, Distribution::normal_expanded(45.0, 2.0).unwrap()).unwrap();
    inputs.quantity("drift", 0.0, rectangular(15.0)).unwrap();
    let repeatability = Distribution::normal(25.0 / 3.0_f64.sqrt()).unwrap();
    inputs.quantity("difference", 20.0, repeatability).unwrap();
    inputs.quantity("comparator", 0.0, rectangular(10.0)).unwrap();
    inputs.quantity("air", 0.0, rectangular(10.0)).unwrap();
    let mass = inputs.evaluate(|x| &x[0] + &x[1] + &x[2] + &x[3] + &x[4]).unwrap();
    near(mass.estimate, 25.0, 0.0, "mg above 10 kg");
    near(mass.standard_uncertainty, 29.26, 0.005, "u");
    near(2.0 * mass.standard_uncertainty, 58.5, 0.05, "U");
    let parts: Vec<f64> = mass.contributions.iter().map(|c| c.contribution).collect();
    for (ours, printed) in parts.iter().zip([22.5, 14.43, 8.66, 5.77, 5.77]) {
        near(*ours, printed, 0.005, "part");
    }
    assert!(mass.dof == f64::INFINITY);
}

/// EA-4/02 M:2022, S10 (from memory, recomputed): u 32.34 um unrounded, beta 1/3, k 1.83 (1.8338920592 as the quantile of the trapezoid),
/// U 59.3 um; rectangle 0.95 sqrt(3) = 1.645448, triangle 1.901767.
#[test]
fn ea_4_02_caliper() {
    let mut inputs = Inputs::new();
    let rectangular = |a| Distribution::rectangular(a).unwrap();
    inputs.quantity("block", 150_000.0, Distribution::normal(0.46).unwrap()).unwrap();
    inputs.quantity("temperature", 0.0, rectangular(2.0)).unwrap();
    inputs.quantity("resolution", 0.0, rectangular(25.0)).unwrap();
    inputs.quantity("mechanical", 0.0, rectangular(50.0)).unwrap();
    let error = inputs.evaluate(|x| 150_100.0 - &x[0] + &x[1] * 1.7 + &x[2] + &x[3]).unwrap();
    near(error.standard_uncertainty, 32.34, 0.005, "u");
    assert_eq!([error.contributions[0].source, error.contributions[1].source], ["mechanical", "resolution"]);
    let k = |d: Distribution| d.coverage_factor(0.95).unwrap();
    let trapezoid = Distribution::sum_of_rectangular(50.0, 25.0).unwrap();
    assert_eq!(trapezoid, Distribution::trapezoidal(75.0, 1.0 / 3.0).unwrap());
    close(k(trapezoid), 1.833_892_059_2, 1e-10, "trapezoid");
    near(k(trapezoid) * error.standard_uncertainty, 59.3, 0.05, "U");
    close(k(rectangular(3.0)), 1.645_448, 2e-7, "rectangle");
    close(k(Distribution::trapezoidal(3.0, 1.0).unwrap()), 1.645_448, 2e-7, "trapezoid without flanks");
    close(k(Distribution::triangular(3.0).unwrap()), 1.901_767, 2e-7, "triangle");
}

/// Exact fractions by counting: the trapezoid of ±0.05 and ±0.03 has its 0.6, 0.7, 13/15, 29/30, 119/120 points at 0.01, 0.02, 0.04, 0.06, 0.07
/// and variance 17/15000. Curvilinear trapezoid with a = 1, d = 0.1: `-ln` density integrated by mpmath, 30 digits.
#[test]
fn quantiles_of_bounded_shapes() {
    let trapezoid = Distribution::sum_of_rectangular(0.05, 0.03).unwrap();
    for (x, p) in [(0.01, 0.6), (0.02, 0.7), (0.04, 13.0 / 15.0), (0.06, 29.0 / 30.0), (0.07, 119.0 / 120.0)]
    {
        near(trapezoid.quantile(p), x, 1e-15, "above");
        near(trapezoid.quantile(1.0 - p), -x, 1e-15, "below");
    }
    close(trapezoid.standard_uncertainty().powi(2), 17.0 / 15_000.0, 1e-14, "variance");
    let doubtful = Distribution::curvilinear_trapezoid(1.0, 0.1).unwrap();
    for (x, above) in CURVILINEAR {
        close(doubtful.quantile(1.0 - above), x, 1e-12, "curvilinear");
        close(doubtful.quantile(above), -x, 1e-12, "curvilinear");
    }
    close(doubtful.standard_uncertainty().powi(2), 1.0 / 3.0 + 0.01 / 9.0, 1e-15, "variance");
    let arcsine = Distribution::arcsine(2.0).unwrap();
    close(arcsine.quantile(0.75), 2.0_f64.sqrt(), 1e-15, "arcsine: a sin(pi/4)");
    close(arcsine.standard_uncertainty(), 2.0_f64.sqrt(), 1e-15, "arcsine");
}

/// `(x, P(X > x))` by integrating the density of JCGM 101:2008, 6.4.3.2, with mpmath at 30 digits; a = 1, d = 0.1.
const CURVILINEAR: [(f64, f64); 4] = [
    (0.5, 0.24916163067231105),
    (0.95, 0.026_816_748_794_295_94),
    (1.05, 0.0028849589584062504),
    (1.09, 0.00011398229008236201),
];

/// Every function against mpmath (40 digits): value, first, second and third derivative at a point.
#[test]
fn derivatives_of_one_variable() {
    let rows: [(&str, OfOne<'_>, f64, [f64; 4]); 20] = [
        (
            "sqrt",
            &|x| x.sqrt(),
            0.7,
            [0.8366600265340756, 0.5976143046671969, -0.4268673604765692, 0.9147157724497912],
        ),
        (
            "exp",
            &|x| x.exp(),
            0.7,
            [2.0137527074704766, 2.0137527074704766, 2.0137527074704766, 2.0137527074704766],
        ),
        (
            "ln",
            &|x| x.ln(),
            0.7,
            [-0.35667494393873245, 1.4285714285714286, -2.0408163265306123, 5.830903790087465],
        ),
        (
            "sin",
            &|x| x.sin(),
            0.7,
            [0.644217687237691, 0.7648421872844885, -0.644217687237691, -0.7648421872844885],
        ),
        (
            "cos",
            &|x| x.cos(),
            0.7,
            [0.7648421872844885, -0.644217687237691, -0.7648421872844885, 0.644217687237691],
        ),
        (
            "tan",
            &|x| x.tan(),
            0.7,
            [0.8422883804630794, 1.7094497158631172, 2.8796992653148323, 10.695511122934484],
        ),
        (
            "asin",
            &|x| x.asin(),
            0.7,
            [0.775397496610753, 1.4002800840280096, 1.9219530565090326, 10.659571573915642],
        ),
        (
            "acos",
            &|x| x.acos(),
            0.7,
            [0.7953988301841436, -1.4002800840280096, -1.9219530565090326, -10.659571573915642],
        ),
        (
            "atan",
            &|x| x.atan(),
            0.7,
            [0.6107259643892086, 0.6711409395973155, -0.6306022251249944, 0.28416399406399545],
        ),
        (
            "x^-3",
            &|x| x.powi(-3),
            0.7,
            [2.9154518950437325, -12.49479383590171, 71.39882191943835, -509.9915851388454],
        ),
        (
            "x^5",
            &|x| x.powi(5),
            0.7,
            [0.16806999999999994, 1.2004999999999997, 6.8599999999999985, 29.399999999999995],
        ),
        (
            "x^2.5",
            &|x| x.powf(2.5),
            0.7,
            [0.409963413001697, 1.464155046434632, 3.137475099502783, 2.241053642501988],
        ),
        ("abs", &|x| x.abs(), -0.7, [0.7, -1.0, 0.0, 0.0]),
        (
            "1/x",
            &|x| 1.0 / x,
            0.7,
            [1.4285714285714286, -2.0408163265306123, 5.830903790087465, -24.98958767180342],
        ),
        (
            "x/(1+x^2)",
            &|x| x / (1.0 + x * x),
            0.7,
            [0.4697986577181208, 0.22971938200981942, -1.0622896544051919, 2.0693290311697243],
        ),
        (
            "sin exp",
            &|x| x.sin() * x.exp(),
            0.7,
            [1.297295111875269, 2.837498137307049, 3.0804060508635596, 0.4858158271130219],
        ),
        (
            "atan2(x, 2)",
            &|x| x.atan2(&Jet::constant(2.0)),
            0.7,
            [0.33667481938672716, 0.44543429844098, -0.13888819995932558, -0.11179991915275017],
        ),
        (
            "atan2(x, -0.3)",
            &|x| x.atan2(&Jet::constant(-0.3)),
            0.7,
            [1.9756881130799802, -0.5172413793103449, 1.2485136741973841, -4.2437164295379075],
        ),
        (
            "atan2(0.3, x)",
            &|x| Jet::constant(0.3).atan2(x),
            -0.7,
            [2.7367008673047097, -0.5172413793103449, -1.2485136741973841, -4.2437164295379075],
        ),
        (
            "atan2(-2, x)",
            &|x| Jet::constant(-2.0).atan2(x),
            0.7,
            [-1.2341215074081695, 0.44543429844098, -0.13888819995932558, -0.11179991915275017],
        ),
    ];
    for (name, function, at, [value, first, second, third]) in rows {
        let mut inputs = Inputs::new();
        inputs.quantity("x", at, Distribution::normal(1.0).unwrap()).unwrap();
        let evaluation = inputs.evaluate(|x| function(&x[0])).unwrap();
        let order_2 = inputs.second_order(|x| function(&x[0])).unwrap();
        near(evaluation.estimate, value, 4e-16 * value.abs(), name);
        near(evaluation.contributions[0].sensitivity, first, 1e-15 * first.abs(), name);
        // with u = 1 the shift is f''/2 and the part from third derivatives f' f'''
        near(order_2.shift_of_mean, second / 2.0, 2e-15 * second.abs(), name);
        near(order_2.third_derivatives, first * third, 2e-14 * (first * third).abs(), name);
        let plain = function(&Jet::constant(at)).value();
        assert_eq!(
            plain.to_bits(),
            evaluation.estimate.to_bits(),
            "{name}: the value is the same at every order"
        );
    }
}

/// The one-way clutch (hub a, roller radius c, cage radius e in mm): sensitivities in closed form to ten digits, second derivatives by
/// mpmath at 40 digits.
#[test]
fn derivatives_of_the_clutch() {
    let mut inputs = Inputs::new();
    for (name, mm) in [("a", 27.645), ("c", 11.430), ("e", 50.800)] {
        inputs.quantity(name, mm, Distribution::normal(1.0).unwrap()).unwrap();
    }
    let angle = |x: &[Jet]| ((&x[0] + &x[1]) / (&x[2] - &x[1])).acos();
    let height = |x: &[Jet]| ((&x[2] - &x[1]).powi(2) - (&x[0] + &x[1]).powi(2)).sqrt();
    let evaluation = inputs.evaluate(angle).unwrap();
    close(evaluation.estimate.to_degrees(), 7.018_389_803, 1e-9, "angle");
    let slopes = |e: &Evaluation<'_>, expected: [f64; 3]| {
        for (name, slope) in ["a", "c", "e"].into_iter().zip(expected) {
            let ours = e.contributions.iter().find(|c| c.source == name).unwrap().sensitivity;
            close(ours, slope, 1e-9, name);
        }
    };
    slopes(&evaluation, [-0.207_876_960_6, -0.414_196_296_0, 0.206_319_335_4]);
    let b = inputs.evaluate(height).unwrap();
    close(b.estimate, 4.810_537_912, 1e-9, "height");
    slopes(&b, [-8.122_792_236, -16.306_908_175, 8.184_115_939]);
    let second = inputs.second_order(angle).unwrap();
    let of = |a: &str, b: &str| second.products.iter().find(|p| same(p, a, b)).unwrap().contribution;
    let root = 2.0_f64.sqrt();
    for (a, b, expected) in [
        ("a", "a", 0.351_008_846_139_799_42 / root),
        ("a", "c", 0.704_667_663_094_985_6),
        ("c", "c", 1.414_575_847_790_984_8 / root),
        ("c", "e", 0.709_908_184_695_999),
        ("a", "e", 0.353_658_816_955_186_26),
        ("e", "e", 0.356_249_367_740_812_8 / root),
    ] {
        close(of(a, b), expected, 1e-12, "second derivative");
    }
    let shift = (-0.351_008_846_139_799_42 - 1.414_575_847_790_984_8 - 0.356_249_367_740_812_8) / 2.0;
    close(second.shift_of_mean, shift, 1e-12, "shift");
}

/// `x^2 y` by hand: variance `(2 x y)^2 ux^2 + x^4 uy^2`, then `2 y^2 ux^4 + 4 x^2 ux^2 uy^2` and `2 x^2 ux^2 uy^2`. For independent
/// normal x and y the exact variance has the same terms of fourth order: E(x^4) E(y^2) - E(x^2)^2 E(y)^2.
#[test]
fn second_order_of_a_product() {
    let (x, y, ux, uy) = (3.0, 5.0, 0.2, 0.3);
    let mut inputs = Inputs::new();
    inputs.quantity("x", x, Distribution::normal(ux).unwrap()).unwrap();
    inputs.quantity("y", y, Distribution::normal(uy).unwrap()).unwrap();
    let second = inputs.second_order(|v| &v[0] * &v[0] * &v[1]).unwrap();
    let first = (2.0 * x * y * ux).powi(2) + (x * x * uy).powi(2);
    let squares = 2.0 * y * y * ux.powi(4) + 4.0 * x * x * ux * ux * uy * uy;
    let third = 2.0 * x * x * ux * ux * uy * uy;
    close(second.third_derivatives, third, 1e-13, "third derivatives");
    close(second.standard_uncertainty.unwrap().powi(2), first + squares + third, 1e-13, "variance");
    close(second.shift_of_mean, y * ux * ux, 1e-14, "shift");
    let fourth = x.powi(4) + 6.0 * x * x * ux * ux + 3.0 * ux.powi(4);
    let exact = fourth * (y * y + uy * uy) - ((x * x + ux * ux) * y).powi(2);
    // what is left is of sixth order: 3 ux^4 uy^2, which is 1e-6 of the variance
    close(first + squares + third + 3.0 * ux.powi(4) * uy * uy, exact, 1e-13, "exact variance");
}

/// Inputs that share a source: what is common to both cancels in a difference and doubles in a sum.
#[test]
fn shared_sources() {
    let mut inputs = Inputs::new();
    let zero = inputs.source("zero", Distribution::normal(3.0).unwrap()).unwrap();
    let a = inputs.source("a", Distribution::student_t(4.0, 10.0).unwrap()).unwrap();
    inputs.input(10.0, &[(zero, 1.0), (a, 1.0)]).unwrap();
    inputs.input(7.0, &[(zero, 1.0)]).unwrap();
    inputs.input(1.0, &[]).unwrap();
    let difference = inputs.evaluate(|x| &x[0] - &x[1]).unwrap();
    close(difference.standard_uncertainty, 4.0, 1e-15, "only a is left");
    close(difference.dof, 10.0, 1e-14, "dof");
    // (2 3)^2 + 4^2 = 52; dof 52^2 / (16^2 / 10)
    let sum = inputs.evaluate(|x| &x[0] + &x[1]).unwrap();
    close(sum.standard_uncertainty, 52.0_f64.sqrt(), 1e-15, "sum");
    close(sum.dof, 52.0 * 52.0 * 10.0 / 256.0, 1e-13, "dof");
    // the product of both by the square of the shared one: f_zero,zero = 2, and f_zero,a = 1
    let second = inputs.second_order(|x| &x[0] * &x[1] * &x[2]).unwrap();
    close(second.shift_of_mean, 9.0, 1e-14, "shift: u(zero)^2");
    let expected = [9.0 * 2.0 / 2.0_f64.sqrt(), 12.0];
    for (product, by_hand) in second.products.iter().zip(expected) {
        close(product.contribution, by_hand, 1e-14, "product");
    }
    let constant = inputs.evaluate(|_| Jet::constant(2.0)).unwrap();
    assert!(constant.standard_uncertainty == 0.0 && constant.dof == f64::INFINITY);
    // a negative second-order variance is no uncertainty: cos near its top, u = 3
    let mut wide = Inputs::new();
    wide.quantity("x", 0.8, Distribution::normal(3.0).unwrap()).unwrap();
    let second = wide.second_order(|x| x[0].sin()).unwrap();
    assert!(second.standard_uncertainty.is_none(), "{second:?}");
}

/// Scaling to a stated uncertainty keeps the shape: U / k.
#[test]
fn shapes_by_their_expanded_uncertainty() {
    let shapes = [
        Distribution::normal(2.0),
        Distribution::student_t(2.0, 7.0),
        Distribution::rectangular(2.0),
        Distribution::triangular(2.0),
        Distribution::trapezoidal(2.0, 0.4),
        Distribution::curvilinear_trapezoid(2.0, 0.5),
        Distribution::arcsine(2.0),
    ];
    for shape in shapes {
        let shape = shape.unwrap().with_reliability(0.25).unwrap();
        let scaled = shape.with_expanded(0.6, 2.0).unwrap();
        close(scaled.standard_uncertainty(), 0.3, 1e-15, "u");
        close(scaled.dof(), 8.0, 1e-15, "dof");
        let (k, k2) = (shape.coverage_factor(0.9).unwrap(), scaled.coverage_factor(0.9).unwrap());
        close(k2, k, 1e-13, "shape");
    }
    // 1.96 and 2.5706 of the tables
    close(
        Distribution::normal_at_coverage(1.959_963_985, 0.95).unwrap().standard_uncertainty(),
        1.0,
        1e-9,
        "normal",
    );
    let t = Distribution::student_t_at_coverage(2.570_582, 0.95, 5.0).unwrap();
    close(t.standard_uncertainty(), 1.0, 1e-6, "t");
    close(t.standard_deviation().unwrap(), (5.0_f64 / 3.0).sqrt(), 1e-6, "deviation of t");
    assert_eq!(t.with_dof(2.0).unwrap().standard_deviation(), None);
    assert_eq!(t.with_dof(f64::INFINITY).unwrap(), Distribution::normal(t.standard_uncertainty()).unwrap());
}

#[test]
fn impossible_distributions_are_refused() {
    type Maker = fn(f64) -> Result<Distribution, gaugepoint::Error>;
    let makers: [(Maker, &str); 16] = [
        (Distribution::normal, "standard_deviation"),
        (|v| Distribution::normal_expanded(v, 2.0), "expanded"),
        (|v| Distribution::normal_expanded(1.0, v), "coverage_factor"),
        (|v| Distribution::normal_at_coverage(1.0, v), "probability"),
        (|v| Distribution::student_t(v, 3.0), "scale"),
        (|v| Distribution::student_t_at_coverage(v, 0.95, 3.0), "expanded"),
        (Distribution::rectangular, "half_width"),
        (Distribution::triangular, "half_width"),
        (Distribution::arcsine, "half_width"),
        (|v| Distribution::trapezoidal(v, 0.5), "half_width"),
        (|v| Distribution::trapezoidal(1.0, v), "beta"),
        (|v| Distribution::curvilinear_trapezoid(v, 0.0), "half_width"),
        (|v| Distribution::curvilinear_trapezoid(1.0, v), "half_width_error"),
        (|v| Distribution::pooled(v, 3.0, 4), "standard_deviation"),
        (|v| Distribution::normal(1.0)?.with_reliability(v), "relative_uncertainty"),
        (|v| Distribution::rectangular(1.0)?.with_expanded(v, 2.0), "expanded"),
    ];
    for (maker, field) in makers {
        for (value, kind) in [
            (f64::NAN, ErrorKind::NotFinite),
            (f64::INFINITY, ErrorKind::NotFinite),
            (-1e-3, ErrorKind::OutOfRange),
            (1e60, ErrorKind::OutOfRange),
        ] {
            let error = maker(value).expect_err(field);
            assert_eq!((error.kind(), error.field()), (kind, field), "{value}");
        }
    }
    for dof in [f64::NAN, f64::NEG_INFINITY, 0.0, 0.49, -3.0] {
        assert_eq!(Distribution::student_t(1.0, dof).expect_err("dof").field(), "dof");
        assert_eq!(Distribution::rectangular(1.0).unwrap().with_dof(dof).expect_err("dof").field(), "dof");
    }
    for (refused, field) in [
        (Distribution::normal_at_coverage(1.0, 1.0), "probability"),
        (Distribution::normal_at_coverage(1.0, 0.0), "probability"),
        (Distribution::curvilinear_trapezoid(0.1, 0.1), "half_width_error"),
        (Distribution::sum_of_rectangular(0.0, 0.0), "half_width_1"),
        (Distribution::pooled(1.0, 3.0, 0), "count"),
        (Distribution::normal(0.0).unwrap().with_expanded(1.0, 2.0), "standard_uncertainty"),
    ] {
        let error = refused.expect_err(field);
        assert_eq!((error.kind(), error.field()), (ErrorKind::OutOfRange, field));
    }
    assert_eq!(Distribution::from_repeats(&[1.0]).expect_err("one").kind(), ErrorKind::MissingField);
    assert!(Distribution::rectangular(1.0).unwrap().quantile(1.0).is_nan());
}

#[test]
fn impossible_models_are_refused() {
    let mut inputs = Inputs::new();
    let normal = Distribution::normal(1.0).unwrap();
    let x = inputs.quantity("x", 0.0, normal).unwrap();
    let kind = |r: Result<SourceOrInput, gaugepoint::Error>| r.expect_err("refused").kind();
    type SourceOrInput = usize;
    assert_eq!(kind(inputs.quantity("x", 0.0, normal)), ErrorKind::Repeated);
    assert_eq!(kind(inputs.quantity(" ", 0.0, normal)), ErrorKind::MissingField);
    assert_eq!(kind(inputs.quantity("a\nb", 0.0, normal)), ErrorKind::ControlCharacter);
    assert_eq!(kind(inputs.quantity("y", f64::NAN, normal)), ErrorKind::NotFinite);
    assert_eq!(kind(inputs.input(f64::INFINITY, &[])), ErrorKind::NotFinite);
    let mut others = Inputs::new();
    others.source("p", normal).unwrap();
    let foreign = others.source("q", normal).unwrap();
    assert_eq!(kind(inputs.input(0.0, &[(foreign, 1.0)])), ErrorKind::UnknownName);
    assert_eq!(kind(others.input(0.0, &[(foreign, f64::NAN)])), ErrorKind::NotFinite);
    let models: [(&str, Model<'_>); 5] = [
        ("sqrt at zero", &|v| v[x].sqrt()),
        ("abs at zero", &|v| v[x].abs()),
        ("acos at one", &|v| (&v[x] + 1.0).acos()),
        ("ln of zero", &|v| v[x].ln()),
        ("one over zero", &|v| 1.0 / &v[x]),
    ];
    for (name, model) in models {
        let first = inputs.evaluate(model).expect_err(name);
        assert_eq!((first.kind(), first.field()), (ErrorKind::NotFinite, "model"), "{name}");
        assert_eq!(inputs.second_order(model).expect_err(name).kind(), ErrorKind::NotFinite, "{name}");
    }
    // a refused source leaves nothing behind
    let ok = inputs.evaluate(|v| v[x].clone()).unwrap();
    assert_eq!(ok.contributions.len(), 1);
    for probability in [0.0, 1.0, -0.1, f64::NAN] {
        assert_eq!(ok.expanded(probability, Degrees::AsComputed).expect_err("p").field(), "probability");
    }
    let mut poor = Inputs::new();
    poor.quantity("x", 0.0, normal.with_dof(0.7).unwrap()).unwrap();
    let poor = poor.evaluate(|v| v[0].clone()).unwrap();
    assert!(poor.expanded(0.95, Degrees::AsComputed).is_ok());
    assert_eq!(poor.expanded(0.95, Degrees::Truncated).expect_err("dof").field(), "dof");
}

#[test]
fn impossible_lines_are_refused() {
    let fit = |points: &[(f64, f64)], origin| StraightLine::fit(points, origin).expect_err("refused");
    let good = [(0.0, 1.0), (1.0, 2.0), (2.0, 2.5)];
    assert_eq!(fit(&good[..2], 0.0).kind(), ErrorKind::MissingField);
    assert_eq!(fit(&[(1.0, 1.0), (1.0, 2.0), (1.0, 3.0)], 0.0).kind(), ErrorKind::OutOfRange);
    assert_eq!(fit(&[(0.0, 1.0), (1.0, f64::NAN), (2.0, 3.0)], 0.0).kind(), ErrorKind::NotFinite);
    assert_eq!(fit(&good, f64::INFINITY).field(), "origin");
    let line = StraightLine::fit(&good, 1.0).unwrap();
    // by hand: slope 0.75, mean 11/6 at 1, residuals -1/12, 1/6, -1/12
    close(line.slope, 0.75, 1e-15, "slope");
    close(line.intercept, 11.0 / 6.0, 1e-15, "mean");
    close(line.residual_squares, 1.0 / 24.0, 1e-14, "residuals");
    near(line.correlation, 0.0, 1e-16, "at the mean of x");
    assert_eq!(line.at(f64::NAN).expect_err("x").field(), "x");
}
