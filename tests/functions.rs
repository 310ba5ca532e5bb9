//! Rows of `function.csv`: the function or the stack of a row, and what is asked of it.

use crate::named::{number, numbers};
use gaugepoint::Error;
use gaugepoint::calc::Model;
use gaugepoint::measurement::monte_carlo::{Coverage, Goal, MonteCarlo, Summary, Trials, trials_from};
use gaugepoint::measurement::points::Points;
use gaugepoint::measurement::tail::Proportion;
use gaugepoint::stack::document::PointsChoice;
use gaugepoint::stack::{
    Columnwise, Contributor, Derivation, EngineStack, Extreme, Function, Law, Proof, Stack, Toward,
    Variation, VariationKind,
};

/// Results by name; none where nothing is given.
pub type Results = Vec<(String, Option<f64>)>;

/// Contributors of a row: name, nominal, limits, kind and its numbers, apart by semicolons.
///
/// # Panics
/// When the words are none of a row.
#[must_use]
pub fn contributors(cell: &str) -> Vec<Contributor> {
    let contributor = |term: &str| {
        let words: Vec<&str> = term.split(' ').collect();
        let n: Vec<f64> = words[5..].iter().map(|w| number(w)).collect();
        let variation = Variation::of_kind(VariationKind::from_word(words[4]).unwrap(), &n).unwrap();
        Contributor::new(words[0], number(words[1]), (number(words[2]), number(words[3])), variation).unwrap()
    };
    cell.split(';').map(contributor).collect()
}

/// What computes a column of values.
type Fill = fn(&[&[f64]], &mut [f64]) -> Result<(), i32>;

/// The functions that every host computes by itself: only the first has the same bits everywhere.
const CALLED: [(&str, Fill); 2] = [
    ("ratio", |sizes, values| {
        for (i, value) in values.iter_mut().enumerate() {
            *value = (sizes[0][i] + sizes[1][i]) / (sizes[2][i] - sizes[1][i]);
        }
        Ok(())
    }),
    ("clutch", |sizes, values| {
        for (i, value) in values.iter_mut().enumerate() {
            *value = libm::acos((sizes[0][i] + sizes[1][i]) / (sizes[2][i] - sizes[1][i]));
        }
        Ok(())
    }),
];

/// Whether all hosts have the same bits for a row.
#[must_use]
pub fn has_bits(row: &[String]) -> bool {
    row[3] != "clutch"
}

/// What a row asks.
///
/// # Errors
/// As the library.
///
/// # Panics
/// When the row is none.
pub fn function_row(row: &[String]) -> Result<Results, Error> {
    let parts = contributors(&row[2]);
    if let Some((_, fill)) = CALLED.iter().find(|(word, _)| *word == row[3]) {
        return asked(&Function::new(parts, Columnwise::new(fill))?, row);
    }
    match row[3].split_once(' ').unwrap() {
        ("engine", word) => asked(&EngineStack::from_word(word)?.function(parts)?, row),
        ("sum", coefficients) => asked_stack(&sum(parts, coefficients)?, row),
        (_, text) => asked(&formula(parts, text)?, row),
    }
}

/// A formula, in symbols where they are said.
fn formula(parts: Vec<Contributor>, text: &str) -> Result<Function<Model>, Error> {
    let names: Vec<String> = parts.iter().map(|c| c.name().to_owned()).collect();
    let (text, symbols) = match text.split_once(" with ") {
        Some((text, symbols)) => (text, symbols.split(' ').collect::<Vec<_>>()),
        None => (text, names.iter().map(String::as_str).collect()),
    };
    Function::from_text(parts, &symbols, text)
}

/// A linear stack with these coefficients.
fn sum(parts: Vec<Contributor>, coefficients: &str) -> Result<Stack, Error> {
    let signed = parts.into_iter().zip(coefficients.split(' ')).map(|(c, n)| c.with_coefficient(number(n)));
    Stack::new(signed.collect::<Result<_, _>>()?)
}

fn asked<L: Law>(of: &Function<L>, row: &[String]) -> Result<Results, Error> {
    match row[1].as_str() {
        "nominal" => Ok(vec![some("result", of.nominal()?)]),
        "propagation" => propagation(of, row),
        "worst_case" => worst_case(of, row),
        "importance" => {
            let (toward, limit, seed, count, confidence) = rare(&row[4]);
            tail(&of.importance(toward, limit, seed)?, count, confidence)
        }
        _ => of_run(row, |seed| of.monte_carlo(seed)),
    }
}

fn asked_stack(of: &Stack, row: &[String]) -> Result<Results, Error> {
    match row[1].as_str() {
        "importance" => {
            let (toward, limit, seed, count, confidence) = rare(&row[4]);
            tail(&of.importance(toward, limit, seed)?, count, confidence)
        }
        _ => of_run(row, |seed| of.monte_carlo(seed)),
    }
}

fn some(name: &str, value: f64) -> (String, Option<f64>) {
    (name.to_owned(), Some(value))
}

#[expect(clippy::cast_precision_loss, reason = "counts of some thousands")]
fn count(of: u64) -> f64 {
    of as f64
}

/// Places of the function's contributors as they stand in the row.
fn places<L: Law>(of: &Function<L>, row: &[String]) -> Vec<usize> {
    let own = of.contributors();
    let place = |c: Contributor| own.iter().position(|o| o.name() == c.name()).unwrap();
    contributors(&row[2]).into_iter().map(place).collect()
}

fn propagation<L: Law>(of: &Function<L>, row: &[String]) -> Result<Results, Error> {
    let p = of.propagation()?;
    let mut out = vec![
        some("derivation", if p.derivation == Derivation::Exact { 1.0 } else { 2.0 }),
        some("nominal", p.nominal),
        some("mean", p.first.mean),
        some("standard_deviation", p.first.standard_deviation),
        some("second_mean", p.second.mean),
        some("shift", p.second.shift),
        some("second_standard_deviation", p.second.standard_deviation),
        ("skewness".to_owned(), p.second.skewness),
        ("excess_kurtosis".to_owned(), p.second.excess_kurtosis),
    ];
    for (k, place) in places(of, row).into_iter().enumerate() {
        let e = p.effects.iter().find(|e| e.name == of.contributors()[place].name()).unwrap();
        let of = [
            ("sensitivity", e.sensitivity),
            ("standard_deviation", e.standard_deviation),
            ("share", e.share),
            ("alone", e.alone),
            ("together", e.together),
        ];
        out.extend(of.map(|(name, value)| some(&format!("{k}.{name}"), value)));
    }
    Ok(out)
}

fn worst_case<L: Law>(of: &Function<L>, row: &[String]) -> Result<Results, Error> {
    let found = of.worst_case()?;
    let proof = match found.proof {
        Proof::Monotone => 1.0,
        Proof::Subdivision => 2.0,
        Proof::Searched => 3.0,
    };
    let places = places(of, row);
    let end = |name: &str, e: &Extreme| {
        let mut out = vec![some(name, e.attained), (format!("{name}_bound"), e.bound)];
        out.extend(places.iter().enumerate().map(|(k, place)| some(&format!("{name}_at.{k}"), e.at[*place])));
        out
    };
    let ends = [end("lowest", &found.lowest), end("highest", &found.highest)].concat();
    Ok(std::iter::once(some("proof", proof)).chain(ends).collect())
}

/// Cells of `given`, whose whole numbers do not all fit a double.
fn whole(cell: &str) -> u64 {
    cell.parse().unwrap_or_else(|e| panic!("{cell}: {e}"))
}

fn points(kind: &str, hypercube_trials: &str) -> Result<Points, Error> {
    let choice = PointsChoice::ALL[usize::try_from(whole(kind)).unwrap() - 1];
    choice.points(Some(whole(hypercube_trials)).filter(|n| *n > 0))
}

fn of_run<T: Trials>(row: &[String], run: impl Fn(u64) -> MonteCarlo<'static, T>) -> Result<Results, Error> {
    let cells: Vec<&str> = row[4].split(';').collect();
    let first = |n: usize| run(whole(cells[0])).part(0..whole(cells[n]));
    let numbered = |values: Vec<f64>| -> Results {
        values.into_iter().enumerate().map(|(k, v)| some(&k.to_string(), v)).collect()
    };
    match row[1].as_str() {
        "trials" => {
            let points = points(cells[3], cells[4])?;
            let trials = trials_from(whole(cells[1]), whole(cells[2]))?;
            Ok(numbered(run(whole(cells[0])).with_points(points)?.part(trials)?.into_values()))
        }
        "summary" => {
            let run = run(whole(cells[0])).with_points(points(cells[2], cells[3])?)?;
            Ok(summary(&run.part(0..whole(cells[1]))?.summary(number(cells[4]))?))
        }
        "outside" => {
            let found = first(1)?.outside(number(cells[2]), number(cells[3]), number(cells[4]))?;
            Ok([share("below", found.below), share("above", found.above)].concat())
        }
        "histogram" => {
            let edges = numbers(&cells[2].replace('/', ";"));
            Ok(numbered(first(1)?.histogram(&edges)?.into_iter().map(count).collect()))
        }
        "adaptive" => {
            let coverage = if cells[2] == "1" { Coverage::Symmetric } else { Coverage::Shortest };
            let goal = Goal {
                probability: number(cells[1]),
                coverage,
                digits: u8::try_from(whole(cells[3])).unwrap(),
                most_trials: whole(cells[4]),
            };
            let a = run(whole(cells[0])).adaptive(goal)?;
            let of = [
                some("settled", f64::from(u8::from(a.settled))),
                some("sequences", count(a.sequences)),
                some("tolerance", a.tolerance),
            ];
            Ok(of.into_iter().chain(summary(&a.summary)).collect())
        }
        other => panic!("{other}"),
    }
}

fn summary(s: &Summary) -> Results {
    vec![
        some("trials", count(s.trials)),
        some("mean", s.mean),
        some("standard_deviation", s.standard_deviation),
        some("symmetric.lower", s.symmetric.lower),
        some("symmetric.upper", s.symmetric.upper),
        some("shortest.lower", s.shortest.lower),
        some("shortest.upper", s.shortest.upper),
    ]
}

fn share(side: &str, p: Proportion) -> Results {
    let of =
        [("count", count(p.count)), ("probability", p.probability), ("lower", p.lower), ("upper", p.upper)];
    of.map(|(name, value)| some(&format!("{side}.{name}"), value)).to_vec()
}

/// Toward, limit, seed, count, confidence.
fn rare(given: &str) -> (Toward, f64, u64, u64, f64) {
    let cells: Vec<&str> = given.split(';').collect();
    let toward = if cells[0] == "1" { Toward::Lower } else { Toward::Upper };
    (toward, number(cells[1]), whole(cells[2]), whole(cells[3]), number(cells[4]))
}

fn tail<T: Trials>(run: &MonteCarlo<'static, T>, count: u64, confidence: f64) -> Result<Results, Error> {
    let of = run.part(0..count)?.importance(confidence)?;
    Ok(vec![
        some("probability", of.mean),
        some("standard_error", of.standard_error),
        some("lower", of.lower),
        some("upper", of.upper),
        some("effective_trials", of.effective),
    ])
}
