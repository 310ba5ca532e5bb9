//! What the functions of SQL give, without SQLite: arguments in, an answer or a refusal out.

use core::fmt;
use gaugepoint::decision::{Rule, decide_mm};
use gaugepoint::flat::{Function, TABLE};
use gaugepoint::{Error, ErrorKind};
use std::borrow::Cow;

/// In front of the names of all functions.
pub(crate) const PREFIX: &str = "gaugepoint_";
/// The function that decides.
pub(crate) const DECIDE: &str = "decide";
/// Its parameters; the last one goes with two rules only.
pub(crate) const DECIDE_PARAMETERS: [&str; 6] =
    ["value_mm", "standard_uncertainty_mm", "lower_mm", "upper_mm", "rule", "at_least"];
/// The function that says why another one gives no value.
pub(crate) const WHY: &str = "why";
/// Most arguments of a call: those of a function, and before them its name.
pub(crate) const MOST: usize = most_parameters() + 1;

/// Said in place of a limit that there is not. NULL does not say it: the limit may not be known yet.
const NO_LIMIT: &[u8] = b"none";
/// Longest piece of a refused text that is repeated, in characters.
const LONGEST_QUOTE: usize = 80;

const fn most_parameters() -> usize {
    let (mut most, mut k) = (DECIDE_PARAMETERS.len(), 0);
    while k < TABLE.len() {
        #[expect(clippy::indexing_slicing, reason = "a constant: the compiler looks")]
        let parameters = TABLE[k].parameters.len();
        if most < parameters {
            most = parameters;
        }
        k += 1;
    }
    most
}

/// An argument.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Given<'a> {
    Null,
    Number(f64),
    Text(&'a [u8]),
    Blob,
}

/// A result.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Answer {
    Null,
    Number(f64),
    Text(Cow<'static, str>),
}

/// Why there is no result. In words it begins with the kind of the refusal.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Refusal {
    /// By the library.
    Library(Error),
    /// By this extension: what is no number, a wrong number of arguments.
    Call(ErrorKind, String),
}

impl From<Error> for Refusal {
    fn from(error: Error) -> Self {
        Refusal::Library(error)
    }
}

impl Refusal {
    /// As the message of a function.
    pub(crate) fn by(&self, name: &str) -> String {
        format!("{PREFIX}{name}: {self}")
    }
}

impl fmt::Display for Refusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Refusal::Library(error) => write!(f, "{}: {error}", error.kind().name()),
            Refusal::Call(kind, text) => write!(f, "{}: {text}", kind.name()),
        }
    }
}

fn wrong_type(parameter: &str, what: impl fmt::Display) -> Refusal {
    Refusal::Call(ErrorKind::WrongType, format!("{parameter}: {what}"))
}

/// A text in quotes, without what would move the cursor of whoever prints it.
fn quoted(text: &[u8]) -> String {
    let text = String::from_utf8_lossy(text);
    let short: String = text.chars().take(LONGEST_QUOTE).collect();
    format!("{short:?}{}", if short.len() < text.len() { "..." } else { "" })
}

/// A number; None of NULL. A text is never read as one, whatever SQL does with it elsewhere.
fn number(parameter: &str, given: Given<'_>) -> Result<Option<f64>, Refusal> {
    match given {
        Given::Number(number) => Ok(Some(number)),
        Given::Null => Ok(None),
        Given::Text(text) => {
            Err(wrong_type(parameter, format_args!("{} is a text, not a number", quoted(text))))
        }
        Given::Blob => Err(wrong_type(parameter, "a blob, not a number")),
    }
}

/// A function of the table. NULL, which stands for what was not measured, gives NULL; beside it another argument must still be a number.
pub(crate) fn flat(function: &Function, given: &[Given<'_>]) -> Result<Answer, Refusal> {
    let mut numbers = [0.0; MOST];
    let mut measured = true;
    for ((place, parameter), given) in numbers.iter_mut().zip(function.parameters).zip(given) {
        match number(parameter, *given)? {
            Some(number) => *place = number,
            None => measured = false,
        }
    }
    if !measured {
        return Ok(Answer::Null);
    }
    let value = function.call(numbers.get(..given.len()).unwrap_or_default())?;
    // SQLite would keep it as NULL, which stands for what was not measured
    if value.is_nan() {
        return Err(Refusal::Call(ErrorKind::NotFinite, "the result is not a number".to_owned()));
    }
    Ok(Answer::Number(value))
}

/// The word of a decision; NULL when something that it needs is NULL.
pub(crate) fn decide(given: &[Given<'_>]) -> Result<Answer, Refusal> {
    let [value, deviation, lower, upper, rule, at_least] = DECIDE_PARAMETERS;
    let at = |k: usize| given.get(k).copied().unwrap_or(Given::Null);
    let value_mm = number(value, at(0))?;
    let standard_uncertainty_mm = number(deviation, at(1))?;
    let lower_mm = limit(lower, at(2))?;
    let upper_mm = limit(upper, at(3))?;
    let rule = rule_of(rule, at(4))?;
    let asked = number(at_least, at(5))?;
    let (Some(value_mm), Some(deviation), Some(lower_mm), Some(upper_mm), Some(rule)) =
        (value_mm, standard_uncertainty_mm, lower_mm, upper_mm, rule)
    else {
        return Ok(Answer::Null);
    };
    let asks = matches!(rule, Rule::ConformanceProbability | Rule::SimpleAcceptanceByRatio);
    let at_least = match (asks, asked) {
        (true, Some(at_least)) => at_least,
        (true, None) if given.len() == DECIDE_PARAMETERS.len() => return Ok(Answer::Null),
        (true, None) => {
            let text = format!("{at_least}: the rule {} asks for it", rule.word());
            return Err(Refusal::Call(ErrorKind::MissingField, text));
        }
        (false, Some(_)) => {
            let text = format!("{at_least}: the rule {} does not ask for it", rule.word());
            return Err(Refusal::Call(ErrorKind::Contradiction, text));
        }
        // not looked at
        (false, None) => 0.95,
    };
    let decision = decide_mm(value_mm, deviation, lower_mm, upper_mm, rule, at_least)?;
    Ok(Answer::Text(decision.result.word().into()))
}

/// A limit, or that there is none; None of NULL.
fn limit(parameter: &str, given: Given<'_>) -> Result<Option<Option<f64>>, Refusal> {
    match given {
        Given::Text(NO_LIMIT) => Ok(Some(None)),
        Given::Text(text) => Err(wrong_type(
            parameter,
            format_args!("{} is a text, neither a number nor 'none'", quoted(text)),
        )),
        given => Ok(number(parameter, given)?.map(Some)),
    }
}

fn rule_of(parameter: &str, given: Given<'_>) -> Result<Option<Rule>, Refusal> {
    match given {
        Given::Text(word) => {
            Ok(Some(Rule::from_word(&String::from_utf8_lossy(word)).map_err(|error| error.named(parameter))?))
        }
        Given::Null => Ok(None),
        Given::Number(_) | Given::Blob => Err(wrong_type(parameter, "not a word")),
    }
}

/// Why a function gives no value for its arguments; NULL when it does.
pub(crate) fn why(given: &[Given<'_>]) -> Result<Answer, Refusal> {
    let Some((Given::Text(name), arguments)) = given.split_first() else {
        return Err(wrong_type("name", "the first argument is the name of a function"));
    };
    let asked = String::from_utf8_lossy(name).to_ascii_lowercase();
    let asked = asked.strip_prefix(PREFIX).unwrap_or_default();
    let function = TABLE.iter().find(|function| function.name == asked);
    let (parameters, least) = match function {
        Some(function) => (function.parameters, function.parameters.len()),
        None if asked == DECIDE => (DECIDE_PARAMETERS.as_slice(), DECIDE_PARAMETERS.len() - 1),
        None => {
            let text = format!("name: there is no function {} to ask about", quoted(name));
            return Err(Refusal::Call(ErrorKind::UnknownName, text));
        }
    };
    if !(least..=parameters.len()).contains(&arguments.len()) {
        let text = format!("{PREFIX}{asked} needs {}; {} given", parameters.join(", "), arguments.len());
        return Err(Refusal::Call(ErrorKind::Contradiction, text));
    }
    let missing = || parameters.iter().zip(arguments).find(|(_, given)| **given == Given::Null);
    Ok(match function.map_or_else(|| decide(arguments), |function| flat(function, arguments)) {
        Err(refusal) => Answer::Text(refusal.to_string().into()),
        Ok(Answer::Null) => {
            Answer::Text(format!("{}: NULL", missing().map_or("", |(parameter, _)| parameter)).into())
        }
        Ok(_) => Answer::Null,
    })
}
