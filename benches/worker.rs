//! Does what a script in `peers/` asks for, one line at a time: `kernel count` in, the results out. It takes no time itself: the
//! script does, of this process and of its own in the same way.

use gaugepoint::Error;
use gaugepoint::batch::Results;
use gaugepoint::clearance::hot::Position;
use gaugepoint::clearance::hot::onset::Onset;
use gaugepoint::flat;
use gaugepoint::growth::field::Scenario;
use gaugepoint::measurement::monte_carlo::{MonteCarlo, Trials};
use gaugepoint::measurement::random::{BLOCK, Column, NormalTable, block_of_uniforms};
use gaugepoint::measurement::uncertainty::Evaluation;
use gaugepoint::plan::matching::match_pistons;
use gaugepoint::wide::Width;
use gaugepoint_benches::{
    ANGLES, HEIGHTS, Rows, clearance, clearance_model, clearance_of_jets, clutch, evenly, hot_fit,
    invented_laws, invented_parts, linear_stack, stack,
};
use std::hint::black_box;
use std::io::{BufRead, Write, stdin, stdout};

fn main() -> std::io::Result<()> {
    let mut worker =
        Worker { columns: vec![[0.0; BLOCK]; 64], normal: NormalTable::new(), rows: Rows::invented(ROWS) };
    for line in stdin().lock().lines() {
        let line = line?;
        let (kernel, count) = line.rsplit_once(' ').unwrap_or((&line, "1"));
        let answer = match worker.does(kernel, count.parse().unwrap_or(1)) {
            Ok(numbers) => numbers.iter().map(f64::to_string).collect::<Vec<_>>().join(" "),
            Err(error) => error.to_string(),
        };
        writeln!(stdout(), "{answer}")?;
        stdout().flush()?;
    }
    Ok(())
}

/// Rows of a batch; more than a cache holds.
const ROWS: usize = 1_000_000;
/// Rows of calls; they stay in a cache.
const FEW: usize = 1024;

struct Worker {
    columns: Vec<Column>,
    normal: NormalTable,
    rows: Rows,
}

impl Worker {
    /// Numbers or trials to be made; or budgets to be worked out.
    fn does(&mut self, kernel: &str, count: u64) -> Result<Vec<f64>, Error> {
        let (wide, baseline) = (Width::detected(), Width::baseline());
        match kernel {
            "uniforms" => {
                Ok(self.blocks(count, |_, block, column| block_of_uniforms(wide, 1, block, 0, column)))
            }
            "uniforms-baseline" => {
                Ok(self.blocks(count, |_, block, column| block_of_uniforms(baseline, 1, block, 0, column)))
            }
            "normals" => {
                Ok(self.blocks(count, |normal, block, column| normal.block(wide, 1, block, 0, column)))
            }
            "normals-baseline" => {
                Ok(self.blocks(count, |normal, block, column| normal.block(baseline, 1, block, 0, column)))
            }
            "stack" => trials(count, wide),
            "stack-baseline" => trials(count, baseline),
            "linear" => tally(&linear_stack("normal")?.monte_carlo(1), count, LINEAR_LIMITS, 1),
            "linear-baseline" => {
                let run = linear_stack("normal")?.monte_carlo(1).with_width(baseline);
                tally(&run, count, LINEAR_LIMITS, 1)
            }
            "linear-2" => tally(&linear_stack("normal")?.monte_carlo(1), count, LINEAR_LIMITS, 2),
            "clutch" => tally(&clutch()?.monte_carlo(1), count, CLUTCH_LIMITS, 1),
            "clutch-baseline" => {
                let function = clutch()?;
                tally(&function.monte_carlo(1).with_width(baseline), count, CLUTCH_LIMITS, 1)
            }
            "clutch-2" => tally(&clutch()?.monte_carlo(1), count, CLUTCH_LIMITS, 2),
            "budget-closure" => {
                let inputs = clearance()?;
                budgets(count, || inputs.evaluate(clearance_of_jets))
            }
            "budget-model" => {
                let (inputs, model) = (clearance()?, clearance_model());
                budgets(count, || inputs.evaluate(|x| model.jet(x)))
            }
            "call-bench" => self.calls(count, |[bore, piston, ..]| bench_call(bore, piston)),
            "call-running" => self.calls(count, |[bore, piston, _, bore_c, piston_c]| {
                running_call([bore, bore_c, 11.4e-6, piston, piston_c, 20.5e-6])
            }),
            "array-bench" => self.arrays(count),
            "batch-mean" => self.batch(count, wide, false),
            "batch-mean-baseline" => self.batch(count, baseline, false),
            "batch-cubic" => self.batch(count, wide, true),
            "batch-cubic-baseline" => self.batch(count, baseline, true),
            "batch-cubic-status" => self.batch_with_status(count),
            "batch-cubic-check" => self.batch_checked(count),
            _ => match kernel.split([':', ' ']).collect::<Vec<_>>().as_slice() {
                ["tail", kind, x] => tails(count, kind, x.parse().unwrap_or(f64::NAN)),
                ["stack-and-tail", kind, x] => stacks(count, kind, x.parse().unwrap_or(f64::NAN)),
                ["quantile", kind, p] => quantiles(count, kind, p.parse().unwrap_or(f64::NAN)),
                ["matching", kind, bores, pistons] => {
                    let number = |text: &str| text.parse().unwrap_or(0);
                    matchings(count, *kind == "uncertain", number(bores), number(pistons))
                }
                [what, kind] => hot(what, kind, count),
                _ => Ok(Vec::new()),
            },
        }
    }

    /// Clearances of so many rows, the same ones again and again; the last row's.
    fn batch(&mut self, count: u64, width: Width, cubic: bool) -> Result<Vec<f64>, Error> {
        let batch = invented_laws(cubic)?.with_width(width);
        for _ in 0..count / ROWS as u64 {
            let (columns, results) = self.rows.with_status();
            batch.clearances(columns, Results { status: None, ..results })?;
        }
        Ok(self.rows.last())
    }

    fn batch_with_status(&mut self, count: u64) -> Result<Vec<f64>, Error> {
        let batch = invented_laws(true)?;
        for _ in 0..count / ROWS as u64 {
            let (columns, results) = self.rows.with_status();
            batch.clearances(columns, results)?;
        }
        Ok(self.rows.last())
    }

    fn batch_checked(&mut self, count: u64) -> Result<Vec<f64>, Error> {
        let batch = invented_laws(true)?;
        for _ in 0..count / ROWS as u64 {
            black_box(batch.count_refused(self.rows.columns())?);
        }
        self.batch(count, Width::detected(), true)
    }

    /// A function of one row, so many times over the first rows; the last result.
    fn calls(&self, count: u64, call: impl Fn([f64; 5]) -> Result<f64, Error>) -> Result<Vec<f64>, Error> {
        let mut out = 0.0;
        for k in 0..count {
            out = call(self.rows.row(k as usize % FEW))?;
        }
        Ok(vec![out])
    }

    fn arrays(&mut self, count: u64) -> Result<Vec<f64>, Error> {
        for _ in 0..count / FEW as u64 {
            let (columns, results) = self.rows.with_status();
            let column = |values| flat::Column { values, stride: 1 };
            let columns = [columns.bore_mm, columns.piston_mm].map(column);
            let out = results.bench_mm.get_mut(..FEW).unwrap_or_default();
            flat::row::bench_clearance_mm.each(&columns, out, None)?;
        }
        Ok(self.rows.bench_mm().get(FEW - 1).copied().into_iter().collect())
    }

    fn blocks(&mut self, count: u64, fill: impl Fn(&NormalTable, u64, &mut Column)) -> Vec<f64> {
        for (block, place) in (0..count / BLOCK as u64).zip((0..self.columns.len()).cycle()) {
            if let Some(column) = self.columns.get_mut(place) {
                fill(&self.normal, block, black_box(column));
            }
        }
        vec![self.columns.iter().flatten().sum::<f64>()]
    }
}

#[inline(never)]
fn bench_call(bore_mm: f64, piston_mm: f64) -> Result<f64, Error> {
    flat::bench_clearance_mm(bore_mm, piston_mm)
}

#[inline(never)]
fn running_call([bore, bore_c, bore_per_k, piston, piston_c, piston_per_k]: [f64; 6]) -> Result<f64, Error> {
    flat::running_clearance_mm(bore, bore_c, bore_per_k, piston, piston_c, piston_per_k)
}

fn trials(count: u64, width: Width) -> Result<Vec<f64>, Error> {
    let (inputs, model) = stack()?;
    let summary = MonteCarlo::of_model(&inputs, &model, 1).with_width(width).run(count, 0.9973)?;
    Ok(vec![summary.mean, summary.standard_deviation, summary.symmetric.lower, summary.symmetric.upper])
}

/// Limits of the stack of eight and of the angle, which `peers/monte_carlo.py` has too.
const LINEAR_LIMITS: (f64, f64) = (-0.03, 0.03);
const CLUTCH_LIMITS: (f64, f64) = (0.11, 0.14);

/// Mean, deviation, both quantiles and the share outside the limits.
fn tally<T: Trials + Sync>(
    run: &MonteCarlo<'_, T>,
    count: u64,
    limits: (f64, f64),
    threads: usize,
) -> Result<Vec<f64>, Error> {
    let tally = run.tally(count, 0.9973, limits, threads)?;
    let of = tally.summary;
    let outside = (tally.below + tally.above) as f64 / count as f64;
    Ok(vec![of.mean, of.standard_deviation, of.symmetric.lower, of.symmetric.upper, outside])
}

/// The same tail so many times: value and stated error.
fn tails(count: u64, kind: &str, x: f64) -> Result<Vec<f64>, Error> {
    let stack = linear_stack(kind)?;
    for _ in 1..count {
        black_box(stack.outside(f64::NEG_INFINITY, black_box(x))?);
    }
    let tail = stack.outside(f64::NEG_INFINITY, x)?;
    Ok(vec![tail.above, tail.error])
}

/// The same with the stack made anew each time.
fn stacks(count: u64, kind: &str, x: f64) -> Result<Vec<f64>, Error> {
    for _ in 1..count {
        black_box(linear_stack(kind)?.outside(f64::NEG_INFINITY, black_box(x))?);
    }
    tails(1, kind, x)
}

fn quantiles(count: u64, kind: &str, p: f64) -> Result<Vec<f64>, Error> {
    let stack = linear_stack(kind)?;
    for _ in 1..count {
        black_box(stack.quantile_above(black_box(p))?);
    }
    Ok(vec![stack.quantile_above(p)?])
}

/// The same matching so many times: probability outside of the worst pair, and the sum of squares.
fn matchings(count: u64, uncertain: bool, bores: usize, pistons: usize) -> Result<Vec<f64>, Error> {
    let (bores, pistons, conditions) = invented_parts(bores, pistons, uncertain);
    for _ in 1..count {
        black_box(match_pistons(black_box(&bores), &pistons, &conditions)?);
    }
    let merit = match_pistons(&bores, &pistons, &conditions)?.merit;
    Ok(vec![merit.worst_outside, merit.sum_of_squares_mm2])
}

fn budgets<'a>(count: u64, evaluate: impl Fn() -> Result<Evaluation<'a>, Error>) -> Result<Vec<f64>, Error> {
    for _ in 1..count {
        black_box(evaluate()?);
    }
    let last = evaluate()?;
    Ok(vec![last.estimate, last.standard_uncertainty])
}

/// What is asked of the hot fit of a kind of bore, again and again: numbers of the last.
fn hot(what: &str, kind: &str, count: u64) -> Result<Vec<f64>, Error> {
    let fit = hot_fit(kind)?;
    let mut last = Vec::new();
    match what {
        "smallest" => {
            for _ in 0..count {
                let found = black_box(&fit).smallest_at(0, Position::Anywhere)?;
                last = vec![found.clearance_mm, found.place.angle_deg, found.place.height_mm];
            }
        }
        "onset" => {
            for _ in 0..count {
                if let Onset::Touches(contact) = black_box(&fit).onset(Scenario::PistonAlone, 0.0)? {
                    last = vec![contact.factor];
                }
            }
        }
        _ => {
            let (angles, heights) = (evenly(360.0, ANGLES), evenly(50.0, HEIGHTS));
            last = vec![0.0; ANGLES * HEIGHTS];
            for _ in 0..count / last.len() as u64 {
                black_box(&fit).map_into(&angles, &heights, Position::Anywhere, black_box(&mut last))?;
            }
            last = vec![last.into_iter().fold(f64::INFINITY, f64::min)];
        }
    }
    Ok(last)
}
