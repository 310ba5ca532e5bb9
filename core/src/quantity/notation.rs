//! What may be typed for each kind of quantity, and the reading of it.

use uom::si::temperature_interval::kelvin;

use super::decimal::{self, Decimal, Form};
use super::refusal::{self, Fault};
use super::{Angle, Expansion, Length, Temperature, TemperatureInterval, Typed, from_mm, spoken};
use crate::error::Error;

/// Longest text, in characters. No quantity needs more, and an error repeats at most 80.
const LONGEST_TEXT: usize = 64;

/// A kind of quantity: its units, and what is needed to refuse well.
#[derive(Debug)]
pub(crate) struct Kind {
    /// Its name with an article.
    pub(crate) asked: &'static str,
    /// How it is written.
    pub(crate) advice: &'static str,
    /// The unit shown when none was typed.
    pub(crate) example: &'static str,
    pub(crate) units: &'static [Unit],
    pub(crate) form: Form,
    /// Whether inches, thou and tenths may follow one another.
    pub(crate) spoken: bool,
    /// Other names, as [`refusal::folded`] leaves them, and the unit they stand for.
    pub(crate) other_names: &'static [(&'static str, &'static str)],
    /// Names that stand for more than one unit, and why they are not guessed.
    pub(crate) unclear_names: &'static [(&'static str, &'static str)],
    /// Sizes above this, in the unit that is stored, are not offered as what was meant.
    pub(crate) plausible: f64,
    /// The range outside which there is no such quantity, in the unit that is stored.
    pub(crate) range: Option<(f64, f64)>,
}

/// A unit as it is written, and how its numbers are converted.
#[derive(Debug)]
pub(crate) struct Unit(pub(crate) &'static str, pub(crate) Scale);

/// From a number in some unit to a number in the unit that is stored.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Scale {
    /// Times the first, times ten to the power of the second.
    Times(u64, i32),
    /// Degrees Fahrenheit to degrees Celsius.
    Fahrenheit,
    /// A difference in degrees Fahrenheit to kelvin.
    FahrenheitStep,
}

use Scale::{Fahrenheit, FahrenheitStep, Times};

// 1 in = 25.4 mm exactly: NIST SP 811 (2008), appendix B.
pub(super) const INCH: Scale = Times(254, -1);
pub(super) const THOU: Scale = Times(254, -4);
const TENTH: Scale = Times(254, -5);
/// 1/F = 1.8 /K exactly.
pub(super) const PER_FAHRENHEIT: Scale = Times(18, -1);
const MILLIONTH_PER_FAHRENHEIT: Scale = Times(18, -7);

pub(crate) static LENGTH: Kind = Kind {
    asked: "a length",
    advice: "write it in mm, um, cm, m, in, thou or tenths",
    example: "mm",
    units: &[
        Unit("mm", Times(1, 0)),
        Unit("um", Times(1, -3)),
        Unit("\u{b5}m", Times(1, -3)),
        Unit("\u{3bc}m", Times(1, -3)),
        Unit("cm", Times(1, 1)),
        Unit("m", Times(1, 3)),
        Unit("in", INCH),
        Unit("inch", INCH),
        Unit("\"", INCH),
        Unit("thou", THOU),
        Unit("tenth", TENTH),
        Unit("tenths", TENTH),
    ],
    form: Form::PLAIN,
    spoken: true,
    other_names: &[
        ("inches", "in"),
        ("thous", "thou"),
        ("micron", "um"),
        ("microns", "um"),
        ("millimeter", "mm"),
        ("millimeters", "mm"),
        ("millimetre", "mm"),
        ("millimetres", "mm"),
    ],
    unclear_names: &[
        ("mil", "a mil is a thousandth of an inch to some and a millimetre to others"),
        ("mils", "a mil is a thousandth of an inch to some and a millimetre to others"),
    ],
    // no part of an engine is longer than 10 m, and few sizes are written in thousands
    plausible: 10_000.0,
    range: None,
};

pub(crate) static TEMPERATURE: Kind = Kind {
    asked: "a temperature",
    advice: "write it in C or F",
    example: "C",
    units: &[
        Unit("C", Times(1, 0)),
        Unit("\u{b0}C", Times(1, 0)),
        Unit("F", Fahrenheit),
        Unit("\u{b0}F", Fahrenheit),
    ],
    form: Form::PLAIN,
    spoken: false,
    other_names: &[("degc", "C"), ("celsius", "C"), ("degf", "F"), ("fahrenheit", "F")],
    unclear_names: &[],
    plausible: 2_000.0,
    range: None,
};

pub(crate) static DIFFERENCE: Kind = Kind {
    asked: "a temperature difference",
    advice: "write it in K, delta C or delta F",
    example: "K",
    units: &[
        Unit("K", Times(1, 0)),
        Unit("delta C", Times(1, 0)),
        Unit("delta \u{b0}C", Times(1, 0)),
        Unit("\u{394}C", Times(1, 0)),
        Unit("\u{394}\u{b0}C", Times(1, 0)),
        Unit("\u{2206}C", Times(1, 0)),
        Unit("\u{2206}\u{b0}C", Times(1, 0)),
        Unit("delta F", FahrenheitStep),
        Unit("delta \u{b0}F", FahrenheitStep),
        Unit("\u{394}F", FahrenheitStep),
        Unit("\u{394}\u{b0}F", FahrenheitStep),
        Unit("\u{2206}F", FahrenheitStep),
        Unit("\u{2206}\u{b0}F", FahrenheitStep),
    ],
    form: Form::PLAIN,
    spoken: false,
    other_names: &[
        ("c", "K"),
        ("\u{b0}c", "K"),
        ("f", "delta F"),
        ("\u{b0}f", "delta F"),
        ("\u{b0}k", "K"),
        ("kelvin", "K"),
    ],
    unclear_names: &[],
    plausible: 2_000.0,
    range: None,
};

pub(super) static EXPANSION: Kind = Kind {
    asked: "a coefficient of expansion",
    advice: "write it in /K, /F, ppm/K, ppm/F or um/m/K",
    example: "/K",
    units: &[
        Unit("/K", Times(1, 0)),
        Unit("1/K", Times(1, 0)),
        Unit("/C", Times(1, 0)),
        Unit("1/C", Times(1, 0)),
        Unit("/\u{b0}C", Times(1, 0)),
        Unit("1/\u{b0}C", Times(1, 0)),
        Unit("/F", PER_FAHRENHEIT),
        Unit("1/F", PER_FAHRENHEIT),
        Unit("/\u{b0}F", PER_FAHRENHEIT),
        Unit("1/\u{b0}F", PER_FAHRENHEIT),
        Unit("ppm/K", Times(1, -6)),
        Unit("ppm/C", Times(1, -6)),
        Unit("ppm/\u{b0}C", Times(1, -6)),
        Unit("ppm/F", MILLIONTH_PER_FAHRENHEIT),
        Unit("ppm/\u{b0}F", MILLIONTH_PER_FAHRENHEIT),
        Unit("um/m/K", Times(1, -6)),
        Unit("\u{b5}m/m/K", Times(1, -6)),
        Unit("\u{3bc}m/m/K", Times(1, -6)),
    ],
    form: Form::SCIENTIFIC,
    spoken: false,
    other_names: &[
        ("um/m\u{b0}c", "um/m/K"),
        ("um/m\u{b7}k", "um/m/K"),
        ("um/(m\u{b7}k)", "um/m/K"),
        ("um/m/c", "um/m/K"),
        ("um/m/\u{b0}c", "um/m/K"),
        ("k^-1", "/K"),
        ("perk", "/K"),
        ("in/in/f", "/F"),
        ("in/in/\u{b0}f", "/F"),
    ],
    unclear_names: &[("ppm", "ppm alone does not say per which degree")],
    plausible: 1e-3,
    range: None,
};

pub(super) static ANGLE: Kind = Kind {
    asked: "an angle",
    advice: "write it in deg",
    example: "deg",
    units: &[Unit("deg", Times(1, 0)), Unit("\u{b0}", Times(1, 0))],
    form: Form::PLAIN,
    spoken: false,
    other_names: &[("degree", "deg"), ("degrees", "deg")],
    unclear_names: &[],
    plausible: 360.0,
    range: None,
};

pub(super) static NUMBER: Kind = Kind {
    asked: "a pure number",
    advice: "write the number alone",
    example: "",
    units: &[Unit("", Times(1, 0))],
    form: Form::SCIENTIFIC,
    spoken: false,
    other_names: &[],
    unclear_names: &[],
    plausible: f64::MAX,
    range: None,
};

pub(super) static PROBABILITY: Kind = Kind {
    asked: "a probability",
    advice: "write a number from 0 to 1, or a percentage",
    example: "%",
    units: &[Unit("", Times(1, 0)), Unit("%", Times(1, -2))],
    form: Form::PLAIN,
    spoken: false,
    other_names: &[("percent", "%"), ("percents", "%")],
    unclear_names: &[],
    plausible: 1.0,
    range: Some((0.0, 1.0)),
};

pub(crate) static FORCE: Kind = Kind {
    asked: "a force",
    advice: "write it in N, daN, kN, kgf or lbf",
    example: "N",
    units: &[
        Unit("N", Times(1, 0)),
        Unit("daN", Times(1, 1)),
        Unit("kN", Times(1, 3)),
        // NIST SP 811 (2008), appendix B: exact
        Unit("kgf", Times(980_665, -5)),
        Unit("lbf", Times(44_482_216_152_605, -13)),
    ],
    form: Form::PLAIN,
    spoken: false,
    other_names: &[
        ("kg", "kgf"),
        ("kp", "kgf"),
        ("lb", "lbf"),
        ("lbs", "lbf"),
        ("pound", "lbf"),
        ("pounds", "lbf"),
    ],
    unclear_names: &[],
    plausible: 1e7,
    range: None,
};

pub(super) static STIFFNESS: Kind = Kind {
    asked: "a stiffness",
    advice: "write it in N/um",
    example: "N/um",
    units: &[
        Unit("N/um", Times(1, 0)),
        Unit("N/\u{b5}m", Times(1, 0)),
        Unit("N/\u{3bc}m", Times(1, 0)),
        Unit("N/mm", Times(1, -3)),
        Unit("kN/mm", Times(1, 0)),
    ],
    form: Form::PLAIN,
    spoken: false,
    other_names: &[],
    unclear_names: &[],
    plausible: 1e5,
    range: None,
};

pub(super) static SLOPE: Kind = Kind {
    asked: "a slope",
    advice: "write it in um/mm",
    example: "um/mm",
    units: &[
        Unit("um/mm", Times(1, 0)),
        Unit("\u{b5}m/mm", Times(1, 0)),
        Unit("\u{3bc}m/mm", Times(1, 0)),
        Unit("mm/m", Times(1, 0)),
    ],
    form: Form::PLAIN,
    spoken: false,
    other_names: &[],
    unclear_names: &[],
    plausible: 1e3,
    range: None,
};

pub(super) static MASS: Kind = Kind {
    asked: "a mass",
    advice: "write it in g, kg, oz or lb",
    example: "g",
    units: &[
        Unit("g", Times(1, 0)),
        Unit("kg", Times(1, 3)),
        // avoirdupois, NIST SP 811 (2008), appendix B: exact
        Unit("oz", Times(28_349_523_125, -9)),
        Unit("lb", Times(45_359_237, -5)),
    ],
    form: Form::PLAIN,
    spoken: false,
    other_names: &[
        ("gram", "g"),
        ("grams", "g"),
        ("ounce", "oz"),
        ("ounces", "oz"),
        ("lbs", "lb"),
        ("pounds", "lb"),
    ],
    unclear_names: &[],
    plausible: 1e6,
    range: None,
};

pub(super) static VOLUME: Kind = Kind {
    asked: "a volume",
    advice: "write it in cm3, ml, l or in3",
    example: "cm3",
    units: &[
        Unit("cm3", Times(1, 0)),
        Unit("cm\u{b3}", Times(1, 0)),
        Unit("ml", Times(1, 0)),
        Unit("l", Times(1, 3)),
        // 2.54 cm cubed
        Unit("in3", Times(16_387_064, -6)),
    ],
    form: Form::PLAIN,
    spoken: false,
    other_names: &[("cc", "cm3"), ("ccm", "cm3"), ("cm^3", "cm3"), ("in^3", "in3"), ("cuin", "in3")],
    unclear_names: &[],
    plausible: 1e6,
    range: None,
};

pub(super) static ROUGHNESS: Kind = Kind {
    asked: "a roughness",
    advice: "write it in um or uin",
    example: "um",
    units: &[
        Unit("um", Times(1, 0)),
        Unit("\u{b5}m", Times(1, 0)),
        Unit("\u{3bc}m", Times(1, 0)),
        Unit("nm", Times(1, -3)),
        // a millionth of an inch
        Unit("uin", Times(254, -4)),
    ],
    form: Form::PLAIN,
    spoken: false,
    other_names: &[("microinch", "uin"), ("microinches", "uin")],
    unclear_names: &[],
    plausible: 100.0,
    range: None,
};

pub(super) static HOURS: Kind = Kind {
    asked: "hours run",
    advice: "write them in h",
    example: "h",
    units: &[Unit("h", Times(1, 0))],
    form: Form::PLAIN,
    spoken: false,
    other_names: &[("hour", "h"), ("hours", "h"), ("hr", "h"), ("hrs", "h")],
    unclear_names: &[],
    plausible: 1e7,
    range: None,
};

/// The kinds whose units are told apart when one stands in place of another.
pub(super) static KINDS_WITH_UNITS: [&Kind; 11] = [
    &LENGTH,
    &TEMPERATURE,
    &DIFFERENCE,
    &EXPANSION,
    &ANGLE,
    &FORCE,
    &STIFFNESS,
    &SLOPE,
    &MASS,
    &VOLUME,
    &HOURS,
];

/// Reads a length: `96.012 mm`, `3.7799 in`, `0.5 thou`, `2 in 412 thou 6 tenths`.
///
/// Units: `mm`, `um` (or `µm`), `cm`, `m`, `in` (or `inch`, `"`), `thou` (0.001 in), `tenth` or `tenths` (0.0001 in).
/// Of inches, thou and tenths said one after the other any may be missing; each is a whole number, and below 1000 thou
/// or 10 tenths where a larger one stands before it.
///
/// ```
/// use gaugepoint::quantity::{in_mm, parse_length};
///
/// assert_eq!(in_mm(parse_length("1 in")?.quantity()), 25.4);
/// assert_eq!(parse_length("2 in 412 thou 6 tenths")?.quantity(), parse_length("2.4126 in")?.quantity());
///
/// let refused = parse_length("3 1/2 in").unwrap_err();
/// assert_eq!(refused.did_you_mean(), Some("3.5 in"));
/// # Ok::<(), gaugepoint::error::Error>(())
/// ```
///
/// # Errors
///
/// What is listed at [the module](crate::quantity#what-is-refused), and [`OutOfRange`](crate::error::ErrorKind::OutOfRange) for too many thou or
/// tenths behind a larger unit.
pub fn parse_length(text: &str) -> Result<Typed<Length>, Error> {
    parse(text, &LENGTH, from_mm)
}

/// Reads a temperature: `27 C`, `80.6 F`, also with a degree sign.
///
/// ```
/// use gaugepoint::quantity::parse_temperature;
///
/// assert_eq!(parse_temperature("80.6 F")?.quantity().celsius(), 27.0);
/// # Ok::<(), gaugepoint::error::Error>(())
/// ```
///
/// # Errors
///
/// What is listed at [the module](crate::quantity#what-is-refused). Kelvin is a wrong unit: here it is that of a
/// difference.
pub fn parse_temperature(text: &str) -> Result<Typed<Temperature>, Error> {
    parse(text, &TEMPERATURE, Temperature::from_celsius)
}

/// Reads a temperature difference: `0.5 K`, `0.5 delta C`, `0.9 delta F`, also `ΔC`, `Δ°C`, `ΔF`, `Δ°F`.
///
/// ```
/// use gaugepoint::quantity::parse_temperature_difference;
///
/// let refused = parse_temperature_difference("0.5 C").unwrap_err();
/// assert_eq!(refused.did_you_mean(), Some("0.5 K"));
/// ```
///
/// # Errors
///
/// What is listed at [the module](crate::quantity#what-is-refused).
pub fn parse_temperature_difference(text: &str) -> Result<Typed<TemperatureInterval>, Error> {
    parse(text, &DIFFERENCE, TemperatureInterval::new::<kelvin>)
}

/// Reads a coefficient of expansion: `20.9e-6 /K`, `20.9 ppm/K`, `11.6 ppm/F`.
///
/// Units: `/K`, `/C`, `/F` (each also as `1/K` and with a degree sign), `ppm/K`, `ppm/C`, `ppm/F`, `um/m/K`.
/// The longest number is read first: `2e-51/K` is `2e-51` per kelvin, and refused.
///
/// ```
/// use gaugepoint::quantity::parse_expansion;
///
/// assert_eq!(parse_expansion("11.5 ppm/F")?.quantity().per_kelvin(), 20.7e-6);
/// # Ok::<(), gaugepoint::error::Error>(())
/// ```
///
/// # Errors
///
/// What is listed at [the module](crate::quantity#what-is-refused), and [`OutOfRange`](crate::error::ErrorKind::OutOfRange) for an exponent
/// beyond 30.
pub fn parse_expansion(text: &str) -> Result<Typed<Expansion>, Error> {
    parse(text, &EXPANSION, Expansion::from_per_kelvin)
}

/// Reads an angle: `90 deg`, `90°`.
///
/// # Errors
///
/// What is listed at [the module](crate::quantity#what-is-refused).
pub fn parse_angle(text: &str) -> Result<Typed<Angle>, Error> {
    parse(text, &ANGLE, Angle::from_degrees)
}

/// Reads a force in newtons: `8 N`, `6 lbf`, `0.8 kgf`.
///
/// Units: `N`, `daN`, `kN`, `kgf` (9.80665 N), `lbf` (4.4482216152605 N).
///
/// ```
/// use gaugepoint::quantity::parse_force;
///
/// assert_eq!(parse_force("6 lbf")?.quantity(), 26.689329691563);
/// # Ok::<(), gaugepoint::error::Error>(())
/// ```
///
/// # Errors
///
/// What is listed at [the module](crate::quantity#what-is-refused).
pub fn parse_force(text: &str) -> Result<Typed<f64>, Error> {
    parse(text, &FORCE, |newtons| newtons)
}

/// Reads a mass in grams: `512 g`, `1.1 lb`, `0.25 oz`.
///
/// Units: `g`, `kg`, `oz` (28.349523125 g), `lb` (453.59237 g).
///
/// ```
/// use gaugepoint::quantity::parse_mass;
///
/// assert_eq!(parse_mass("0.25 oz")?.quantity(), 7.08738078125);
/// # Ok::<(), gaugepoint::error::Error>(())
/// ```
///
/// # Errors
///
/// What is listed at [the module](crate::quantity#what-is-refused).
pub fn parse_mass(text: &str) -> Result<Typed<f64>, Error> {
    parse(text, &MASS, |grams| grams)
}

/// Reads a volume in cubic centimetres: `52.4 cm3`, `52.4 ml`, `3.2 in3`.
///
/// Units: `cm3`, `ml`, `l`, `in3` (16.387064 cm3).
///
/// ```
/// use gaugepoint::quantity::parse_volume;
///
/// assert_eq!(parse_volume("2 in3")?.quantity(), 32.774128);
/// # Ok::<(), gaugepoint::error::Error>(())
/// ```
///
/// # Errors
///
/// What is listed at [the module](crate::quantity#what-is-refused).
pub fn parse_volume(text: &str) -> Result<Typed<f64>, Error> {
    parse(text, &VOLUME, |cm3| cm3)
}

/// Reads a roughness in micrometres: `0.25 um`, `10 uin`.
///
/// Units: `um`, `nm`, `uin` (0.0254 um).
///
/// ```
/// use gaugepoint::quantity::parse_roughness;
///
/// assert_eq!(parse_roughness("10 uin")?.quantity(), 0.254);
/// # Ok::<(), gaugepoint::error::Error>(())
/// ```
///
/// # Errors
///
/// What is listed at [the module](crate::quantity#what-is-refused).
pub fn parse_roughness(text: &str) -> Result<Typed<f64>, Error> {
    parse(text, &ROUGHNESS, |um| um)
}

/// Reads a stiffness in newtons per micrometre: `10 N/um`, also in `N/mm`, `kN/mm`.
///
/// # Errors
///
/// What is listed at [the module](crate::quantity#what-is-refused).
pub fn parse_stiffness(text: &str) -> Result<Typed<f64>, Error> {
    parse(text, &STIFFNESS, |per_um| per_um)
}

/// Reads the slope of a profile in micrometres per millimetre: `3 um/mm`, `3 mm/m`.
///
/// # Errors
///
/// What is listed at [the module](crate::quantity#what-is-refused).
pub fn parse_slope(text: &str) -> Result<Typed<f64>, Error> {
    parse(text, &SLOPE, |slope| slope)
}

/// Reads hours run: `1200 h`.
///
/// # Errors
///
/// What is listed at [the module](crate::quantity#what-is-refused).
pub fn parse_hours(text: &str) -> Result<Typed<f64>, Error> {
    parse(text, &HOURS, |hours| hours)
}

/// Reads a pure number: `2`, `1.65`, `2.3e-5`.
///
/// # Errors
///
/// What is listed at [the module](crate::quantity#what-is-refused), and [`OutOfRange`](crate::error::ErrorKind::OutOfRange) for an exponent
/// beyond 30.
pub fn parse_number(text: &str) -> Result<Typed<f64>, Error> {
    parse(text, &NUMBER, |number| number)
}

/// Reads a probability from 0 to 1: `0.95`, `95 %`.
///
/// ```
/// use gaugepoint::quantity::parse_probability;
///
/// assert_eq!(parse_probability("95 %")?.quantity(), 0.95);
/// # Ok::<(), gaugepoint::error::Error>(())
/// ```
///
/// # Errors
///
/// What is listed at [the module](crate::quantity#what-is-refused), and [`OutOfRange`](crate::error::ErrorKind::OutOfRange) outside 0 to 1.
pub fn parse_probability(text: &str) -> Result<Typed<f64>, Error> {
    parse(text, &PROBABILITY, |number| number)
}

fn parse<Q>(text: &str, kind: &Kind, quantity: impl Fn(f64) -> Q) -> Result<Typed<Q>, Error> {
    let typed = text.trim();
    match read(typed, kind) {
        Ok(value) => Ok(Typed::new(typed, quantity(value))),
        Err(fault) => Err(refusal::refuse(typed, kind, fault)),
    }
}

/// The value of a text without outer white space, in the unit that is stored.
pub(super) fn read(text: &str, kind: &Kind) -> Result<f64, Fault> {
    check_text(text)?;
    let (number, rest) = decimal::scan(text, kind.form)?;
    let unit = rest.trim_start_matches(is_space);
    let value = match kind.scale(unit) {
        Some(scale) => scale.of(number),
        None if kind.spoken && spoken::goes_on(unit) => TENTH.of(spoken::in_tenths(text)?),
        None => return Err(refusal::unit_fault(unit, kind)),
    };
    match (value.ok_or(Fault::NotFinite)?, kind.range) {
        (value, Some((lower, upper))) if value < lower || value > upper => Err(Fault::OutOfRange(value)),
        (value, _) => Ok(value),
    }
}

/// What can be refused before a number is looked for.
fn check_text(text: &str) -> Result<(), Fault> {
    if text.is_empty() {
        Err(Fault::Empty)
    } else if text.chars().nth(LONGEST_TEXT).is_some() {
        Err(Fault::TooLong)
    } else if refusal::has_fraction(text) {
        Err(Fault::Fraction)
    } else if refusal::has_comma(text) {
        Err(Fault::Comma)
    } else {
        Ok(())
    }
}

/// The spaces that may stand between a number and its unit, also those that do not break.
pub(crate) fn is_space(c: char) -> bool {
    matches!(c, ' ' | '\u{a0}' | '\u{2009}' | '\u{202f}')
}

impl Kind {
    pub(crate) fn scale(&self, unit: &str) -> Option<Scale> {
        let words = || unit.split(is_space).filter(|word| !word.is_empty());
        self.units.iter().find(|known| words().eq(known.0.split_terminator(' '))).map(|known| known.1)
    }

    /// Whether `unit` is one of its units, exactly as written.
    pub(super) fn knows(&self, unit: &str) -> bool {
        self.scale(unit).is_some()
    }
}

impl Scale {
    pub(super) fn of(self, number: Decimal) -> Option<f64> {
        match self {
            Times(factor, tens) => number.times(factor, tens),
            Fahrenheit => number.ratio(5, -160, 9),
            FahrenheitStep => number.ratio(5, 0, 9),
        }
    }
}
