//! What is accepted and with which bits, what is refused and with which advice.

use jiff::civil::Date;
use proptest::prelude::*;
use uom::si::force::newton;
use uom::si::mass::megagram;
use uom::si::pressure::megapascal;
use uom::si::temperature_interval::kelvin;
use uom::si::thermodynamic_temperature::degree_celsius;

use super::units::{Force, Mass, Pressure, ThermodynamicTemperature};
use super::*;
use crate::error::{Error, ErrorKind};

fn mm(text: &str) -> f64 {
    in_mm(parse_length(text).unwrap().quantity())
}

fn celsius(text: &str) -> f64 {
    parse_temperature(text).unwrap().quantity().celsius()
}

fn step(text: &str) -> f64 {
    parse_temperature_difference(text).unwrap().quantity().get::<kelvin>()
}

fn per_kelvin(text: &str) -> f64 {
    parse_expansion(text).unwrap().quantity().per_kelvin()
}

#[track_caller]
fn same_bits(found: f64, expected: f64) {
    assert_eq!(found.to_bits(), expected.to_bits(), "{found:?} is not {expected:?}");
}

/// A number that is typed has the bits of its text, and comes back: tenths of a thousandth of an inch to 8 in, hundredths of a degree.
#[test]
fn numbers_are_converted_as_their_texts() {
    for n in 0..=80_000_u32 {
        let inch = f64::from(n) / 10_000.0;
        same_bits(inch_to_mm(inch).unwrap(), mm(&format!("{inch} in")));
        same_bits(inch_to_mm(-inch).unwrap(), mm(&format!("-{inch} in")));
        same_bits(thou_to_mm(inch).unwrap(), mm(&format!("{inch} thou")));
        same_bits(mm_to_inch(inch_to_mm(inch).unwrap()).unwrap(), inch);
    }
    for n in -20_000..=20_000_i32 {
        let fahrenheit = f64::from(n) / 100.0;
        same_bits(fahrenheit_to_c(fahrenheit).unwrap(), celsius(&format!("{fahrenheit} F")));
        same_bits(fahrenheit_to_c(c_to_fahrenheit(fahrenheit).unwrap()).unwrap(), fahrenheit + 0.0);
    }
    for n in 100..=5000_u32 {
        let text = format!("{n}e-8");
        same_bits(per_fahrenheit_to_per_k(text.parse().unwrap()).unwrap(), per_kelvin(&format!("{text}/F")));
    }
}

proptest! {
    /// Few decimals take a short way, many a long one; both give the bits of the text.
    #[test]
    fn any_decimals_are_converted_as_their_texts(digits in -99_999_999_999_999_i64..=99_999_999_999_999, decimals in 0..=12_u32) {
        let typed = digits % 10_i64.pow(decimals + 2);
        let number = format!("{}{}.{:0width$}", if typed < 0 { "-" } else { "" }, typed.abs() / 10_i64.pow(decimals), typed.abs() % 10_i64.pow(decimals), width = decimals as usize);
        let number = number.trim_end_matches('.');
        let x: f64 = number.parse().unwrap();
        same_bits(inch_to_mm(x).unwrap(), mm(&format!("{number} in")));
        same_bits(thou_to_mm(x).unwrap(), mm(&format!("{number} thou")));
        same_bits(fahrenheit_to_c(x).unwrap(), celsius(&format!("{number} F")));
    }
}

/// All tenths of a thousandth of an inch to 8 in. 254 n and 100000 are exact doubles, so their quotient is rounded once.
#[test]
fn every_tenth_to_eight_inches_comes_back() {
    for n in 1..=80_000_u32 {
        let text = format!("{}.{:04} in", n / 10_000, n % 10_000);
        let typed = parse_length(&text).unwrap();
        assert_eq!(typed.text(), text);
        same_bits(in_mm(typed.quantity()), f64::from(n * 254) / 100_000.0);
        assert_eq!(print_inch_tenths(typed.quantity()), text);
        let spoken = parse_length(&print_spoken_inch(typed.quantity())).unwrap();
        same_bits(in_mm(spoken.quantity()), in_mm(typed.quantity()));
    }
}

/// All micrometres to 200 mm, in three units.
#[test]
fn every_micrometre_to_two_hundred_millimetres_comes_back() {
    for n in 1..=200_000_u32 {
        let text = format!("{}.{:03} mm", n / 1_000, n % 1_000);
        let typed = parse_length(&text).unwrap();
        assert_eq!(typed.to_string(), text);
        let expected = f64::from(n) / 1_000.0;
        same_bits(in_mm(typed.quantity()), expected);
        same_bits(mm(&format!("{n} um")), expected);
        same_bits(in_mm(from_mm(expected)), expected);
    }
}

#[test]
fn base_units_hold_what_was_typed() {
    for n in 1..=200_000_u32 {
        let number = f64::from(n) / 1_000.0;
        same_bits(Force::new::<newton>(number).value, number);
        same_bits(Pressure::new::<megapascal>(number).value, number);
        same_bits(Mass::new::<megagram>(number).value, number);
        same_bits(TemperatureInterval::new::<kelvin>(number).value, number);
    }
    let per_area = Force::new::<newton>(7.0) / (from_mm(1.0) * from_mm(1.0));
    same_bits(per_area.value, Pressure::new::<megapascal>(7.0).value);
}

/// NIST SP 811 (2008), appendix B: 1 in = 25.4 mm, t/C = (t/F - 32)/1.8.
#[test]
fn fixed_points_are_exact() {
    for (text, expected) in [("1 in", 25.4), ("1 thou", 0.0254), ("1 tenth", 0.00254), ("8 in", 203.2)] {
        same_bits(mm(text), expected);
    }
    let fixed =
        [("32 F", 0.0), ("212 F", 100.0), ("68 F", 20.0), ("-40 F", -40.0), ("80.6 F", 27.0), ("0 C", 0.0)];
    for (text, expected) in fixed {
        same_bits(celsius(text), expected);
    }
    for (text, expected) in [("1.8 delta F", 1.0), ("9 ΔF", 5.0), ("-9 Δ°F", -5.0)] {
        same_bits(step(text), expected);
    }
}

#[test]
fn lengths_in_every_unit() {
    let table = [
        ("96.012 mm", 96.012),
        ("96.012mm", 96.012),
        ("96.012\u{a0}mm", 96.012),
        ("96.012\u{202f}mm", 96.012),
        ("+0.01 mm", 0.01),
        ("-0.01 mm", -0.01),
        ("\u{2212}0.01 mm", -0.01),
        ("9.6012 cm", 96.012),
        ("0.096012 m", 96.012),
        ("96012 um", 96.012),
        ("96012 \u{b5}m", 96.012),
        ("96012 \u{3bc}m", 96.012),
        ("3.78 in", 96.012),
        ("3.78 inch", 96.012),
        ("3.78\"", 96.012),
        (".5 in", 12.7),
        ("-.5in", -12.7),
        ("412.6 thou", 10.48004),
        ("1 tenth", 0.00254),
        ("12.5 tenths", 0.03175),
        ("00096.012 mm", 96.012),
        ("0.000000000001 mm", 1e-12),
        ("999999999999999 m", 999_999_999_999_999e3),
        ("0.123456789012 in", 3.135_802_440_904_8),
    ];
    for (text, expected) in table {
        same_bits(mm(text), expected);
        assert_eq!(parse_length(text).unwrap().to_string(), text);
    }
}

#[test]
fn lengths_as_they_are_called_out() {
    let table = [
        ("2 in 412 thou 6 tenths", "2.4126 in"),
        ("2in 412thou 6tenths", "2.4126 in"),
        ("2\" 412 thou", "2.412 in"),
        ("2 inch 6 tenths", "2.0006 in"),
        ("-2 in 412 thou 1 tenth", "-2.4121 in"),
        ("\u{2212}412 thou 6 tenths", "-0.4126 in"),
        ("2412 thou 6 tenths", "2.4126 in"),
        ("2 in 0 thou 0 tenths", "2 in"),
        ("0 in 999 thou 9 tenths", "0.9999 in"),
    ];
    for (text, decimal) in table {
        same_bits(mm(text), mm(decimal));
        assert_eq!(parse_length(text).unwrap().text(), text);
    }
}

#[test]
fn temperatures_and_differences_in_every_unit() {
    for text in ["27.1 C", "27.1 °C", "27.1C", "80.78 F", "80.78 °F", "80.78°F"] {
        same_bits(celsius(text), 27.1);
    }
    let kelvins =
        ["0.5 K", "0.5 delta C", "0.5 delta °C", "0.5 ΔC", "0.5 Δ°C", "0.5\u{2206}C", "0.5 \u{2206}°C"];
    for text in kelvins {
        same_bits(step(text), 0.5);
    }
    for text in [
        "0.9 delta F",
        "0.9 delta\u{a0}F",
        "0.9 delta °F",
        "0.9 ΔF",
        "0.9Δ°F",
        "0.9 \u{2206}F",
        "0.9 \u{2206}°F",
    ] {
        same_bits(step(text), 0.5);
    }
}

#[test]
fn coefficients_angles_and_numbers() {
    let table = [
        ("20.9e-6 /K", 20.9e-6),
        ("20.9E-6/K", 20.9e-6),
        ("20.9e\u{2212}6 1/K", 20.9e-6),
        ("0.0000209 /C", 20.9e-6),
        ("20.9 ppm/K", 20.9e-6),
        ("20.9 ppm/C", 20.9e-6),
        ("20.9 ppm/°C", 20.9e-6),
        ("20.9 um/m/K", 20.9e-6),
        ("20.9 \u{b5}m/m/K", 20.9e-6),
        ("20.9 \u{3bc}m/m/K", 20.9e-6),
        ("20.9e-6 /°C", 20.9e-6),
        ("11.5 ppm/F", 20.7e-6),
        ("11.5 ppm/°F", 20.7e-6),
        ("11.5e-6 /F", 20.7e-6),
        ("11.5e-6 1/°F", 20.7e-6),
        ("0.00000000000001 /K", 1e-14),
    ];
    for (text, expected) in table {
        same_bits(per_kelvin(text), expected);
        assert_eq!(parse_expansion(text).unwrap().text(), text);
    }
    for (text, expected) in [("90 deg", 90.0), ("90°", 90.0), ("-0.5 deg", -0.5)] {
        same_bits(parse_angle(text).unwrap().quantity().degrees(), expected);
    }
    for (text, expected) in
        [("2", 2.0), ("1.65", 1.65), ("-1e-30", -1e-30), ("2.5E+3", 2500.0), ("1e30", 1e30)]
    {
        same_bits(parse_number(text).unwrap().quantity(), expected);
    }
    for (text, expected) in
        [("0.95", 0.95), ("95 %", 0.95), ("95%", 0.95), ("0", 0.0), ("1", 1.0), ("100 %", 1.0)]
    {
        same_bits(parse_probability(text).unwrap().quantity(), expected);
    }
}

#[test]
fn a_negative_zero_is_zero() {
    same_bits(mm("-0.000 mm"), 0.0);
    same_bits(mm("-0 in 0 thou"), 0.0);
    same_bits(in_mm(from_mm(-0.0)), 0.0);
    same_bits(celsius("-0 C"), 0.0);
    same_bits(step("-0 delta F"), 0.0);
    same_bits(per_kelvin("-0e-6 /F"), 0.0);
    same_bits(parse_angle("-0 deg").unwrap().quantity().degrees(), 0.0);
    same_bits(parse_number("-0").unwrap().quantity(), 0.0);
    same_bits(parse_probability("-0 %").unwrap().quantity(), 0.0);
    same_bits(Temperature::from_celsius(-0.0).celsius(), 0.0);
    assert_eq!(parse_length("-0.000 mm").unwrap().text(), "-0.000 mm");
}

/// The figures that the documentation of [`Temperature`] and of [`units`] gives for plain `uom`.
#[test]
fn plain_uom_changes_what_was_typed() {
    let back = |tenths: i32| {
        let read = f64::from(tenths) / 10.0;
        (read, ThermodynamicTemperature::new::<degree_celsius>(read).get::<degree_celsius>())
    };
    same_bits(back(271).1, 27.100_000_000_000_023);
    let changed = (-500..=3000).map(back).filter(|(read, back)| read.to_bits() != back.to_bits());
    assert_eq!(changed.count(), 2180);

    let metres = |n: u32| uom::si::f64::Length::new::<millimeter>(f64::from(n) / 1e3).get::<millimeter>();
    let changed = (1..=200_000_u32).filter(|n| metres(*n).to_bits() != (f64::from(*n) / 1e3).to_bits());
    assert_eq!(changed.count(), 26_737);
}

#[test]
fn temperatures_convert_and_subtract() {
    let (shop, reference) = (Temperature::from_celsius(27.5), Temperature::from_celsius(20.0));
    same_bits((shop - reference).get::<kelvin>(), 7.5);
    same_bits((reference + (shop - reference)).celsius(), 27.5);
    assert!(shop > reference);
    let kelvins = ThermodynamicTemperature::from(shop);
    same_bits(Temperature::from(kelvins).celsius(), 27.5);
}

type Parser = fn(&str) -> Option<Error>;

const PARSERS: [(&str, Parser); 8] = [
    ("length", |text| parse_length(text).err()),
    ("temperature", |text| parse_temperature(text).err()),
    ("difference", |text| parse_temperature_difference(text).err()),
    ("expansion", |text| parse_expansion(text).err()),
    ("angle", |text| parse_angle(text).err()),
    ("number", |text| parse_number(text).err()),
    ("probability", |text| parse_probability(text).err()),
    ("date", |text| parse_date(text).err()),
];

fn refusal(kind: &str, text: &str) -> Option<Error> {
    PARSERS.iter().find(|(name, _)| *name == kind).and_then(|(_, parser)| parser(text))
}

#[track_caller]
fn check_refusals(kind: &str, table: &[(&str, ErrorKind, Option<&str>)]) {
    for (text, expected, meant) in table {
        let error = refusal(kind, text).unwrap_or_else(|| panic!("{text:?} is accepted as {kind}"));
        assert_eq!((error.kind(), error.did_you_mean()), (*expected, *meant), "{text:?} as {kind}: {error}");
        assert_eq!(error.field(), "");
        assert!(!error.reason().is_empty());
    }
}

#[test]
fn numbers_that_are_none() {
    use ErrorKind::{NotANumber, NotFinite, TooLarge, TooManyDigits};
    let long = format!("{} mm", "0".repeat(70));
    check_refusals(
        "length",
        &[
            ("", NotANumber, None),
            (" \t\n", NotANumber, None),
            ("mm", NotANumber, None),
            ("- mm", NotANumber, None),
            (". mm", NotANumber, None),
            ("5. mm", NotANumber, None),
            ("5.mm", NotANumber, None),
            ("1.2.3 mm", NotANumber, None),
            ("96.012.5 mm", NotANumber, None),
            ("--5 mm", NotANumber, None),
            ("+-5 mm", NotANumber, None),
            ("- 5 mm", NotANumber, Some("-5 mm")),
            ("+ 5 mm", NotANumber, Some("5 mm")),
            ("\u{2013}5 mm", NotANumber, Some("-5 mm")),
            ("±0.01 mm", NotANumber, Some("0.01 mm")),
            ("3.5 0", NotANumber, None),
            ("3.5 0 mm", NotANumber, None),
            ("1 234.5 mm", NotANumber, None),
            ("1'234.5 mm", NotANumber, None),
            ("86 mm 5 um", NotANumber, None),
            ("86 mm ± 0.1", NotANumber, None),
            ("\u{ff18}\u{ff16} mm", NotANumber, None),
            ("8\u{ff16} mm", NotANumber, None),
            ("\u{668}\u{666} mm", NotANumber, None),
            ("0x10 mm", ErrorKind::NotANumber, None),
            ("1e-3 mm", NotANumber, Some("0.001 mm")),
            ("9.6012E+01 mm", NotANumber, Some("96.012 mm")),
            ("1e20 mm", NotANumber, None),
            ("nan", NotFinite, None),
            ("NaN mm", NotFinite, None),
            ("inf mm", NotFinite, None),
            ("-Infinity mm", NotFinite, None),
            ("\u{221e} mm", NotFinite, None),
            ("1e999 mm", NotFinite, None),
            ("1e99999999999999999999 mm", NotFinite, None),
            ("1234567890123456 mm", TooManyDigits, None),
            ("96.0120000000000001 mm", TooManyDigits, None),
            ("0.0000000000001 mm", TooManyDigits, None),
            (&long, TooLarge, None),
        ],
    );
    check_refusals(
        "number",
        &[
            ("1e999", NotFinite, None),
            ("1e31", ErrorKind::OutOfRange, None),
            ("1e-31", ErrorKind::OutOfRange, None),
            ("1e-2147483648", ErrorKind::OutOfRange, None),
            ("0e999", ErrorKind::OutOfRange, None),
            ("inf", NotFinite, None),
            ("0.000000000000001", TooManyDigits, None),
            ("1e", ErrorKind::WrongUnit, None),
            ("2 mm", ErrorKind::WrongUnit, None),
            ("2 %", ErrorKind::WrongUnit, None),
            ("2 .", ErrorKind::WrongUnit, Some("2")),
            ("2 3", NotANumber, None),
        ],
    );
}

#[test]
fn a_text_has_at_most_64_characters() {
    let text = format!("{}1 \u{b5}m", "0".repeat(60));
    assert_eq!(text.chars().count(), 64);
    assert!(parse_length(&format!("  {text}  ")).is_ok());
    check_refusals("length", &[(&format!("0{text}"), ErrorKind::TooLarge, None)]);
}

#[test]
fn units_that_are_missing_or_wrong() {
    use ErrorKind::{MissingUnit, NotANumber, WrongUnit};
    check_refusals(
        "length",
        &[
            ("86", MissingUnit, None),
            ("-0.5", MissingUnit, None),
            ("86 C", WrongUnit, None),
            ("86 K", WrongUnit, None),
            ("86 deg", WrongUnit, None),
            ("86 MM", WrongUnit, Some("86 mm")),
            ("86 Mm", WrongUnit, Some("86 mm")),
            ("86MM", WrongUnit, Some("86 mm")),
            ("3.5 In", WrongUnit, Some("3.5 in")),
            ("3.5 IN", WrongUnit, Some("3.5 in")),
            ("3.5 in.", WrongUnit, Some("3.5 in")),
            ("3.5 inches", WrongUnit, Some("3.5 in")),
            ("3.5 \u{2033}", WrongUnit, Some("3.5 \"")),
            ("3.5 ''", WrongUnit, Some("3.5 \"")),
            ("3.5 \u{201d}", WrongUnit, Some("3.5 \"")),
            ("12 UM", WrongUnit, Some("12 um")),
            ("12 \u{b5}M", WrongUnit, Some("12 um")),
            ("12 microns", WrongUnit, Some("12 um")),
            ("3 Thou", WrongUnit, Some("3 thou")),
            ("3 mil", WrongUnit, None),
            ("86 m m", WrongUnit, Some("86 mm")),
            ("86 furlong", WrongUnit, None),
            ("86 '", WrongUnit, None),
            ("86 mm\u{0}", WrongUnit, None),
        ],
    );
    check_refusals(
        "temperature",
        &[
            ("27", MissingUnit, None),
            ("300 K", WrongUnit, Some("26.85 C")),
            ("300.15 K", WrongUnit, Some("27.00 C")),
            ("273 K", WrongUnit, Some("-0.15 C")),
            ("0.5 K", WrongUnit, None),
            ("20 K", WrongUnit, None),
            ("0.5 delta C", WrongUnit, None),
            ("27 c", WrongUnit, Some("27 C")),
            ("27 \u{ba}C", WrongUnit, Some("27 °C")),
            ("27 \u{2103}", WrongUnit, Some("27 °C")),
            ("80 \u{2109}", WrongUnit, Some("80 °F")),
            ("27 ° C", WrongUnit, Some("27 °C")),
            ("27 deg C", WrongUnit, Some("27 C")),
            ("27 Celsius", WrongUnit, Some("27 C")),
            ("27 °", WrongUnit, None),
            ("27 mm", WrongUnit, None),
        ],
    );
    check_refusals(
        "difference",
        &[
            ("0.5", MissingUnit, None),
            ("0.5 C", WrongUnit, Some("0.5 K")),
            ("0.5 °C", WrongUnit, Some("0.5 K")),
            ("0.9 F", WrongUnit, Some("0.9 delta F")),
            ("0.9°F", WrongUnit, Some("0.9 delta F")),
            ("0.5 k", WrongUnit, Some("0.5 K")),
            ("0.5 \u{212a}", WrongUnit, Some("0.5 K")),
            ("0.5 Delta C", WrongUnit, Some("0.5 delta C")),
            ("0.5 deltaC", WrongUnit, Some("0.5 delta C")),
            ("0.5 mm", WrongUnit, None),
        ],
    );
    check_refusals(
        "expansion",
        &[
            ("20.9e-6", MissingUnit, None),
            ("20.9 ppm", WrongUnit, None),
            ("20.9 ppm/k", WrongUnit, Some("20.9 ppm/K")),
            ("20.9 PPM/K", WrongUnit, Some("20.9 ppm/K")),
            ("20.9e-6 1/k", WrongUnit, Some("20.9e-6 1/K")),
            ("20.9e-6 K^-1", WrongUnit, Some("20.9e-6 /K")),
            ("20.9 \u{b5}m/m\u{b0}C", WrongUnit, Some("20.9 um/m/K")),
            ("20.9 K", WrongUnit, None),
            ("2e-51/K", ErrorKind::OutOfRange, None),
            ("20.9 x 10^-6 /K", NotANumber, None),
        ],
    );
    check_refusals(
        "angle",
        &[
            ("90", MissingUnit, None),
            ("90 degrees", WrongUnit, Some("90 deg")),
            ("90 \u{ba}", WrongUnit, Some("90 °")),
            ("1.57 rad", WrongUnit, None),
            ("90 C", WrongUnit, None),
        ],
    );
    check_refusals(
        "probability",
        &[
            ("95", ErrorKind::OutOfRange, Some("95 %")),
            ("101", ErrorKind::OutOfRange, None),
            ("101 %", ErrorKind::OutOfRange, None),
            ("-0.1", ErrorKind::OutOfRange, None),
            ("95 percent", WrongUnit, Some("95 %")),
            ("1e-1", NotANumber, Some("0.1")),
        ],
    );
}

#[test]
fn fractions() {
    use ErrorKind::Fraction;
    check_refusals(
        "length",
        &[
            ("3 1/2 in", Fraction, Some("3.5 in")),
            ("3-1/2 in", Fraction, Some("3.5 in")),
            ("3 - 1/2 in", Fraction, None),
            ("-3 1/2\"", Fraction, Some("-3.5 \"")),
            ("7/16 in", Fraction, Some("0.4375 in")),
            ("7 / 16 in", Fraction, Some("0.4375 in")),
            ("7\u{2044}16 in", Fraction, Some("0.4375 in")),
            ("9/8 in", Fraction, Some("1.125 in")),
            ("3 9/8 in", Fraction, None),
            ("1/128 in", Fraction, Some("0.0078125 in")),
            ("1/256 in", Fraction, None),
            ("1/3 in", Fraction, None),
            ("1/0 in", Fraction, None),
            ("1/1 in", Fraction, None),
            ("½ in", Fraction, Some("0.5 in")),
            ("3½ in", Fraction, Some("3.5 in")),
            ("3 ⅞ in", Fraction, Some("3.875 in")),
            ("½½ in", Fraction, None),
            ("⅓ in", Fraction, None),
            ("3 1/2", Fraction, None),
            ("3 1/2 furlong", Fraction, None),
            ("3.5 1/2 in", Fraction, None),
            ("2 in 1/2 thou", Fraction, None),
            ("1/2/3 in", Fraction, None),
            ("99999999999999999999/2 in", Fraction, None),
            ("999999999999999 1/2 in", Fraction, None),
        ],
    );
    check_refusals("temperature", &[("1/2 C", Fraction, Some("0.5 C"))]);
    check_refusals("expansion", &[("1/43000 /K", Fraction, None)]);
}

#[test]
fn commas() {
    use ErrorKind::{DecimalComma, NotANumber};
    check_refusals(
        "length",
        &[
            ("96,012 mm", DecimalComma, Some("96.012 mm")),
            ("-0,012 mm", DecimalComma, Some("-0.012 mm")),
            ("96,0120 mm", DecimalComma, Some("96.0120 mm")),
            (",5 in", DecimalComma, Some(".5 in")),
            // one or the other: a stroke is 1.234 mm in no engine, but a shim is
            ("1,234 mm", DecimalComma, None),
            ("1,234.5 mm", DecimalComma, Some("1234.5 mm")),
            ("1.234,5 mm", DecimalComma, Some("1234.5 mm")),
            ("1,234,567 um", DecimalComma, Some("1234567 um")),
            ("96.012,5 mm", DecimalComma, None),
            ("96,012.5 mm", DecimalComma, None),
            ("3,779 in", DecimalComma, Some("3.779 in")),
            ("1,500 thou", DecimalComma, None),
            ("1,2,3 mm", DecimalComma, None),
            ("96, mm", DecimalComma, None),
            ("96,012", DecimalComma, None),
            ("96,012 C", DecimalComma, None),
            ("2 in 412,6 thou", DecimalComma, None),
            ("96 mm, about", ErrorKind::WrongUnit, None),
            (", mm", NotANumber, None),
        ],
    );
    check_refusals(
        "temperature",
        &[
            ("27,5 C", DecimalComma, Some("27.5 C")),
            ("27,500 C", DecimalComma, Some("27.500 C")),
            ("1,200 C", DecimalComma, None),
        ],
    );
    check_refusals("expansion", &[("20,900 ppm/K", DecimalComma, Some("20.900 ppm/K"))]);
    check_refusals("number", &[("1,96", DecimalComma, Some("1.96")), ("1,960", DecimalComma, None)]);
    check_refusals(
        "probability",
        &[("0,95", DecimalComma, Some("0.95")), ("95,0 %", DecimalComma, Some("95.0 %"))],
    );
}

#[test]
fn spoken_lengths_that_are_none() {
    use ErrorKind::{MissingUnit, NotANumber, OutOfRange, TooManyDigits, WrongUnit};
    check_refusals(
        "length",
        &[
            ("2 in 412", MissingUnit, None),
            ("2 in 1000 thou", OutOfRange, None),
            ("412 thou 10 tenths", OutOfRange, None),
            ("2 in 25 tenths", OutOfRange, None),
            ("6 tenths 2 in", NotANumber, None),
            ("2 in 3 in", NotANumber, None),
            ("2.5 in 3 thou", NotANumber, None),
            ("2 in 3.5 thou", NotANumber, None),
            ("2 in 3 thou -6 tenths", NotANumber, None),
            ("2 in 3 mm", WrongUnit, None),
            ("2 in 412 Thou", WrongUnit, Some("2 in 412 thou")),
            ("2 In 412 thou", NotANumber, Some("2 in 412 thou")),
            ("99999999999999 in 1 thou", TooManyDigits, None),
            ("99999999999999999999999 in 1 thou", TooManyDigits, None),
        ],
    );
    let error = refusal("length", "2 in 1412 thou").unwrap();
    assert_eq!(error.refused_value(), Some(1412.0));
    assert_eq!(error.accepted().map(|limits| (limits.upper, limits.unit)), Some((999.0, "thou")));
}

#[test]
fn dates() {
    use ErrorKind::NotADate;
    assert_eq!(parse_date(" 2026-03-14 ").unwrap().quantity(), jiff::civil::date(2026, 3, 14));
    assert_eq!(parse_date("2024-02-29").unwrap().text(), "2024-02-29");
    check_refusals(
        "date",
        &[
            ("", NotADate, None),
            ("2025-02-29", NotADate, None),
            ("2026-13-01", NotADate, None),
            ("2026-3-14", NotADate, Some("2026-03-14")),
            ("2026/03/14", NotADate, Some("2026-03-14")),
            ("14.03.2026", NotADate, Some("2026-03-14")),
            ("03/14/2026", NotADate, Some("2026-03-14")),
            ("03/04/2026", NotADate, None),
            ("14.03.26", NotADate, None),
            ("20260314", NotADate, None),
            ("2026-03-14T08:00", NotADate, None),
            ("-2026-03-14", NotADate, None),
            ("+2026-3-14", NotADate, None),
            ("2026-03-1\u{664}", NotADate, None),
            ("\u{ff12}026-03-14", NotADate, None),
        ],
    );
}

#[test]
fn refusals_read_well() {
    let says = |kind, text| refusal(kind, text).unwrap().to_string();
    assert_eq!(
        says("length", "86"),
        "\"86\" is refused: a number without a unit is not a length; write it in mm, um, cm, m, in, thou or tenths, \
         for example 86 mm"
    );
    assert_eq!(
        says("difference", "0.5 C"),
        "\"0.5 C\" is refused: a temperature is not a temperature difference; write it in K, delta C or delta F; \
         did you mean 0.5 K?"
    );
    assert_eq!(
        says("temperature", "300 K"),
        "\"300 K\" is refused: a temperature difference is not a temperature; write it in C or F; \
         did you mean 26.85 C?"
    );
    assert_eq!(
        says("length", "86 MM"),
        "\"86 MM\" is refused: capital and small letters differ, \"MM\" is not \"mm\"; \
         write it in mm, um, cm, m, in, thou or tenths; did you mean 86 mm?"
    );
    assert_eq!(
        says("number", "2 %"),
        "\"2 %\" is refused: \"%\" is not accepted for a pure number; write the number alone"
    );
    assert_eq!(
        says("length", "2 in 1412 thou"),
        "\"2 in 1412 thou\" is refused: behind a larger unit these are too many thou; accepted: 0 to 999 thou"
    );
}

#[test]
fn printing_rounds_to_the_nearest_tenth() {
    let table = [
        (0.0, "0.0000 in", "0 tenths"),
        (-0.0, "0.0000 in", "0 tenths"),
        (0.001, "0.0000 in", "0 tenths"),
        (-0.001_269, "0.0000 in", "0 tenths"),
        (0.001_271, "0.0001 in", "1 tenth"),
        (-0.001_271, "-0.0001 in", "-1 tenth"),
        (25.4, "1.0000 in", "1 in"),
        (61.28, "2.4126 in", "2 in 412 thou 6 tenths"),
        (-61.28, "-2.4126 in", "-2 in 412 thou 6 tenths"),
        (10.16, "0.4000 in", "400 thou"),
        (25.398_8, "1.0000 in", "1 in"),
        // 5/32 in and 15/32 in are exact doubles in mm and exact halves of a tenth
        (3.968_75, "0.1562 in", "156 thou 2 tenths"),
        (11.906_25, "0.4688 in", "468 thou 8 tenths"),
        (-3.968_75, "-0.1562 in", "-156 thou 2 tenths"),
        // the doubles next to 5/32 in are no halves
        (3.968_75 + f64::EPSILON * 2.0, "0.1563 in", "156 thou 3 tenths"),
        (11.906_25 - f64::EPSILON * 8.0, "0.4687 in", "468 thou 7 tenths"),
        (254e15, "10000000000000000.0000 in", "10000000000000000 in"),
    ];
    for (mm, decimals, spoken) in table {
        assert_eq!(print_inch_tenths(from_mm(mm)), decimals, "{mm} mm");
        assert_eq!(print_spoken_inch(from_mm(mm)), spoken, "{mm} mm");
    }
}

#[test]
fn printing_survives_every_double() {
    for mm in [f64::NAN, f64::INFINITY, f64::MIN, f64::MAX, f64::MIN_POSITIVE, 5e-324, 1e30, 9.99e29, -1e300]
    {
        assert!(print_inch_tenths(from_mm(mm)).ends_with(" in"));
        assert!(!print_spoken_inch(from_mm(mm)).is_empty());
    }
}

/// 40 decimals of a fraction by long division; a double read from them is the nearest, for no double lies between.
fn long_division(numerator: i128, denominator: i128) -> f64 {
    let (sign, mut rest) = (if numerator < 0 { "-" } else { "" }, numerator.abs());
    let mut digits = format!("{sign}{}.", rest / denominator);
    for _ in 0..40 {
        rest = rest % denominator * 10;
        digits.push_str(&(rest / denominator).to_string());
    }
    digits.parse::<f64>().unwrap() + 0.0
}

/// A decimal of up to 15 digits and 12 decimals: its text, and the same as a fraction.
fn decimals() -> impl Strategy<Value = (String, i128, i128)> {
    let size = prop_oneof![0..1_000_000_i128, 0..1_000_000_000_000_000_i128];
    (any::<bool>(), size, 0..=12_u32).prop_map(|(negative, size, decimals)| {
        let scale = 10_i128.pow(decimals);
        let width = decimals as usize;
        let (whole, fraction) = (size / scale, size % scale);
        let fraction = if decimals == 0 { String::new() } else { format!(".{fraction:0width$}") };
        let sign = if negative { "-" } else { "" };
        (format!("{sign}{whole}{fraction}"), if negative { -size } else { size }, scale)
    })
}

proptest! {
    #[test]
    fn no_text_panics(text in "\\PC{0,80}") {
        for (_, parser) in PARSERS {
            parser(&text);
        }
    }

    #[test]
    fn no_text_of_the_trade_panics(
        text in "[-+±−]?[0-9.,/½ ]{0,12}(e[-+]?[0-9]{0,3})?( ?(mm|MM|in|\"|thou|tenths|µm|°|C|F|K|delta|/|ppm|%)[0-9 ]{0,4}){0,3}"
    ) {
        for (_, parser) in PARSERS {
            parser(&text);
        }
    }

    /// A suggestion that is refused in its turn would be worse than none.
    #[test]
    fn suggestions_are_accepted(
        text in "[-+±−]?[0-9]{1,4}[.,/½ ]?[0-9]{0,4}(e-?[0-9])? ?(mm|MM|In|inches|\"|thou|°c|C|F|K|ppm/k|1/k|deg|%|)(, 5| 5 Tenths)?"
    ) {
        for (_, parser) in PARSERS {
            if let Some(meant) = parser(&text).and_then(|e| e.did_you_mean().map(str::to_owned)) {
                prop_assert!(parser(&meant).is_none(), "{text:?} suggests {meant:?}");
            }
        }
    }

    #[test]
    fn every_decimal_prints_as_typed_and_is_rounded_once((number, size, scale) in decimals()) {
        for (unit, factor, divisor) in
            [("mm", 1, 1), ("um", 1, 1_000), ("cm", 10, 1), ("m", 1_000, 1), ("in", 254, 10), ("thou", 254, 10_000)]
        {
            let typed = parse_length(&format!("{number} {unit}")).unwrap();
            prop_assert_eq!(typed.to_string(), format!("{number} {unit}"));
            let expected = long_division(size * factor, scale * divisor);
            prop_assert_eq!(in_mm(typed.quantity()).to_bits(), expected.to_bits());
        }
        let expected = long_division((size - 32 * scale) * 5, 9 * scale);
        same_bits(celsius(&format!("{number} F")), expected);
        same_bits(step(&format!("{number} delta F")), long_division(size * 5, 9 * scale));
        same_bits(celsius(&format!("{number} C")), long_division(size, scale));
        same_bits(per_kelvin(&format!("{number}e4 /F")), long_division(size * 18_000, scale));
    }

    #[test]
    fn every_tenth_is_printed_and_read_back(tenths in -1_000_000_000_i64..1_000_000_000) {
        let length = from_mm((tenths * 254) as f64 / 100_000.0);
        let (decimal, spoken) = (print_inch_tenths(length), print_spoken_inch(length));
        same_bits(mm(&decimal), in_mm(length));
        same_bits(mm(&spoken), in_mm(length));
    }

    #[test]
    fn every_day_is_read(days in -700_000_i32..2_900_000) {
        let date = jiff::civil::date(2000, 1, 1).checked_add(jiff::Span::new().days(days)).unwrap_or(Date::MIN);
        let text = date.to_string();
        if (1..=9999).contains(&date.year()) {
            prop_assert_eq!(parse_date(&text).unwrap().quantity(), date);
        } else {
            prop_assert!(parse_date(&text).is_err() || date.year() == 0);
        }
    }
}
