//! Integrals by adaptive Gauss-Kronrod quadrature, in a fixed order of operations.

/// Abscissae of the 15-point Kronrod rule on -1 to 1, from the outermost to the centre. Source: Piessens et al., QUADPACK (1983), QK15.
const KRONROD_AT: [f64; 8] = [
    0.991_455_371_120_812_6,
    0.949_107_912_342_758_5,
    0.864_864_423_359_769_1,
    0.741_531_185_599_394_4,
    0.586_087_235_467_691_1,
    0.405_845_151_377_397_2,
    0.207_784_955_007_898_47,
    0.0,
];
const KRONROD: [f64; 8] = [
    0.022_935_322_010_529_224,
    0.063_092_092_629_978_55,
    0.104_790_010_322_250_18,
    0.140_653_259_715_525_92,
    0.169_004_726_639_267_9,
    0.190_350_578_064_785_4,
    0.204_432_940_075_298_9,
    0.209_482_141_084_727_83,
];
/// Weights of the 7-point Gauss rule at every second of those abscissae.
const GAUSS: [f64; 4] =
    [0.129_484_966_168_869_7, 0.279_705_391_489_276_7, 0.381_830_050_505_118_9, 0.417_959_183_673_469_4];

/// An integral and what is known of its error.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Integral {
    pub(crate) value: f64,
    pub(crate) error: f64,
}

const MOST_HALVINGS: u32 = 40;

/// Integral of `f` between consecutive `points`, which rise; corners of `f` belong among them.
pub(crate) fn integral(f: &dyn Fn(f64) -> f64, points: &[f64], tolerance: f64) -> Integral {
    let mut out = Integral { value: 0.0, error: 0.0 };
    for pair in points.windows(2) {
        if let [a, b] = pair
            && b > a
        {
            let piece = halved(f, *a, *b, tolerance, MOST_HALVINGS);
            out = Integral { value: out.value + piece.value, error: out.error + piece.error };
        }
    }
    out
}

fn halved(f: &dyn Fn(f64) -> f64, a: f64, b: f64, tolerance: f64, left: u32) -> Integral {
    let whole = rule(f, a, b);
    // an error that is no number does not get smaller either
    if left == 0 || whole.error <= tolerance || whole.error.is_nan() {
        return whole;
    }
    let middle = a + (b - a) / 2.0;
    let (low, high) =
        (halved(f, a, middle, tolerance / 2.0, left - 1), halved(f, middle, b, tolerance / 2.0, left - 1));
    Integral { value: low.value + high.value, error: low.error + high.error }
}

fn rule(f: &dyn Fn(f64) -> f64, a: f64, b: f64) -> Integral {
    let (centre, half) = (a + (b - a) / 2.0, (b - a) / 2.0);
    let (mut kronrod, mut gauss) = (0.0, 0.0);
    for (k, (at, weight)) in KRONROD_AT.iter().zip(KRONROD).enumerate() {
        let pair = if k == 7 { f(centre) } else { f(centre - half * at) + f(centre + half * at) };
        kronrod += weight * pair;
        if k % 2 == 1 {
            gauss += GAUSS.get(k / 2).copied().unwrap_or_default() * pair;
        }
    }
    Integral { value: kronrod * half, error: ((kronrod - gauss) * half).abs() }
}
