//! Dates, in the one form that no two countries read differently.

use jiff::civil::Date;

use super::Typed;
use super::decimal;
use crate::error::{Error, ErrorKind};

/// Reads a date as ISO 8601 writes it: `2026-03-14`, year, month and day in full.
///
/// ```
/// use gaugepoint::quantity::parse_date;
///
/// assert_eq!(parse_date("2026-03-14")?.quantity(), jiff::civil::date(2026, 3, 14));
/// assert_eq!(parse_date("14.3.2026").unwrap_err().did_you_mean(), Some("2026-03-14"));
/// assert_eq!(parse_date("3/4/2026").unwrap_err().did_you_mean(), None);
/// # Ok::<(), gaugepoint::error::Error>(())
/// ```
///
/// # Errors
///
/// [`ErrorKind::NotADate`] for any other form and for a day that does not exist.
pub fn parse_date(text: &str) -> Result<Typed<Date>, Error> {
    let typed = text.trim();
    if !has_form(typed) {
        let refused =
            Error::new(ErrorKind::NotADate, typed, "write year, month and day, for example 2026-03-14");
        return Err(refused.suggest(meant(typed)));
    }
    match numbers(typed, '-').and_then(|[year, month, day]| date(year, month, day)) {
        Some(date) => Ok(Typed::new(typed, date)),
        None => Err(Error::new(ErrorKind::NotADate, typed, "there is no such day")),
    }
}

/// Whether the text is four digits, two and two with hyphens between.
fn has_form(text: &str) -> bool {
    text.len() == 10
        && text.bytes().zip(*b"0000-00-00").all(|(typed, form)| match form {
            b'-' => typed == b'-',
            _ => typed.is_ascii_digit(),
        })
}

/// The date that another order or another separator can only have meant.
fn meant(text: &str) -> Option<String> {
    let separator = decimal::digits(text).1.chars().next().filter(|c| "-./".contains(*c))?;
    let date = match numbers(text, separator)? {
        [year, month, day] if year > 999 => date(year, month, day),
        // day and month can be told apart when one of them is no month
        [day, month, year] if year > 999 && day > 12 => date(year, month, day),
        [month, day, year] if year > 999 && day > 12 => date(year, month, day),
        _ => None,
    };
    date.map(|date| format!("{:04}-{:02}-{:02}", date.year(), date.month(), date.day()))
}

fn numbers(text: &str, separator: char) -> Option<[i16; 3]> {
    let parts: Vec<i16> = text.split(separator).map(number).collect::<Option<_>>()?;
    parts.try_into().ok()
}

fn number(part: &str) -> Option<i16> {
    part.bytes().all(|b| b.is_ascii_digit()).then(|| part.parse().ok())?
}

fn date(year: i16, month: i16, day: i16) -> Option<Date> {
    Date::new(year, i8::try_from(month).ok()?, i8::try_from(day).ok()?).ok()
}
