//! Which case the data are, and the search that it allows.

use super::assignment::{Halt, Matrix, NONE, Short, Start, bottleneck, least_sum};
use super::fit::Fit;
use super::ordered::{Span, least_sum_in_order, start_in_order, threshold_in_order, within_threshold};
use super::parts::Parts;
use super::{Case, none_left};
use crate::error::{Error, ErrorKind};
use crate::progress::{Watch, Work};

pub(super) struct Solved {
    pub(super) case: Case,
    pub(super) because: String,
    /// for each bore
    pub(super) piston_of: Vec<usize>,
}

/// The parts that are not fixed, in order of size.
struct Free<'a> {
    parts: &'a Parts<'a>,
    bores: Vec<usize>,
    pistons: Vec<usize>,
}

/// One set of pistons that may be chosen together: places among the free ones, in order of size.
type Window = Vec<usize>;

/// A way to rank pairs, and to find the best pairs by it.
trait Search {
    /// The rank of the worst of the best pairs of a window, not below `at_least`; none when it is above `cap`.
    fn worst(&self, window: &[usize], at_least: f64, cap: f64, work: &Work<'_>) -> Result<Option<f64>, Halt>;
    /// Columns of the window with the least sum among the pairs not above a rank.
    fn chosen(&self, window: &[usize], rank: f64, work: &Work<'_>) -> Result<Option<Vec<usize>>, Error>;
    /// The rank of a pair of parts.
    fn rank(&self, bore: usize, piston: usize) -> f64;
}

pub(super) fn solve(parts: &Parts<'_>, watch: Watch<'_>) -> Result<Solved, Error> {
    let free = Free::of(parts);
    let windows = free.windows();
    // every row of what is ruled out, of the ranks, and of two searches in each window
    let work = Work::new(watch, free.rows() * (2 + 2 * windows.len() as u64));
    work.ask()?;
    let dependence = work.whole(free.rows(), || free.dependence(&work))?;
    let (case, because) = match dependence {
        Some(because) => (Case::PairDependent, because),
        None if free.bores.len() == free.pistons.len() => (Case::Sorted, SORTED.to_owned()),
        None => (Case::OrderPreserving, SPARE.to_owned()),
    };
    let piston_of = match case {
        Case::PairDependent => best(&free, &Pairwise::new(&free, &work)?, &windows, &work),
        _ => best(&free, &Ordered::new(&free, &work), &windows, &work),
    }?;
    work.finish()?;
    Ok(Solved { case, because, piston_of })
}

const SORTED: &str = "one wanted clearance, one uncertainty of the bores and one of the pistons, no pair ruled out, as many pistons as bores: \
                      the order of size is best for both aims";
const SPARE: &str = "one wanted clearance, one uncertainty of the bores and one of the pistons, no pair ruled out, pistons to spare: \
                     the best choice keeps the order of size";

/// The best pairs of the best window: first the worst rank, then the sum; of equals the window with the lightest piston.
fn best<S: Search>(
    free: &Free<'_>,
    search: &S,
    windows: &[Window],
    work: &Work<'_>,
) -> Result<Vec<usize>, Error> {
    let fixed = free.parts.conditions.fixed.iter();
    let at_least =
        fixed.map(|(bore, piston)| search.rank(*bore, *piston)).fold(f64::NEG_INFINITY, libm::fmax);
    let (mut least, mut reached, mut short) = (f64::INFINITY, Vec::new(), None::<Short>);
    for window in windows {
        match work.whole(free.rows(), || search.worst(window, at_least, least, work)) {
            Ok(Some(worst)) => {
                if worst < least {
                    (least, reached) = (worst, Vec::new());
                }
                reached.push(window);
            }
            Ok(None) => {}
            Err(Halt::Stopped(stopped)) => return Err(stopped),
            Err(Halt::Short(found)) if short.as_ref().is_none_or(|s| found.rows.len() < s.rows.len()) => {
                let pistons = found.columns.iter().filter_map(|c| window.get(*c)).copied().collect();
                short = Some(Short { columns: pistons, ..found });
            }
            Err(Halt::Short(_)) => {}
        }
    }
    let mut best: Option<(f64, Vec<usize>)> = None;
    for window in reached {
        let found = work.whole(free.rows(), || search.chosen(window, least, work))?;
        let Some(columns) = found else { continue };
        let pistons: Vec<usize> = columns.iter().filter_map(|c| window.get(*c)).copied().collect();
        let sum = free.sum_of(&pistons);
        if best.as_ref().is_none_or(|(least, _)| sum < *least) {
            best = Some((sum, pistons));
        }
    }
    match (best, short) {
        (Some((_, pistons)), _) => free.placed(&pistons).ok_or_else(none_left),
        (None, Some(short)) => Err(free.refused(&short)),
        (None, None) => Err(free.too_heavy()),
    }
}

impl<'a> Free<'a> {
    fn of(parts: &'a Parts<'a>) -> Self {
        let mut bore_is_free = vec![true; parts.bores.len()];
        let mut piston_is_free = vec![true; parts.pistons.len()];
        for (bore, piston) in &parts.conditions.fixed {
            if let (Some(b), Some(p)) = (bore_is_free.get_mut(*bore), piston_is_free.get_mut(*piston)) {
                (*b, *p) = (false, false);
            }
        }
        // by size less target, which the sum depends on; of equals the lower place first
        let mut bores = in_order(&bore_is_free, |bore| parts.bore_mm(bore));
        // what is equal after rounding stays in the order of size
        bores.sort_by_key(|bore| (parts.bore_mm(*bore) - parts.fit(*bore).target).to_bits());
        let pistons = in_order(&piston_is_free, |piston| parts.piston_mm(piston));
        Free { parts, bores, pistons }
    }

    /// How many rows a search has.
    fn rows(&self) -> u64 {
        self.bores.len() as u64
    }

    /// The first thing in the data that makes a pair cost what its clearance alone does not tell; none when there is none.
    fn dependence(&self, work: &Work<'_>) -> Result<Option<String>, Error> {
        let parts = self.parts;
        let other = |count: usize, differs: &dyn Fn(usize) -> bool, what: &str| {
            (0..count).find(|k| differs(*k)).map(|k| format!("{what} {k} and 0 differ"))
        };
        let wants = |bore| parts.fit(bore) != parts.fit(0);
        #[expect(clippy::float_cmp, reason = "the proof holds for equal numbers only")]
        let bore = |bore| parts.variance_of_bore(bore) != parts.variance_of_bore(0);
        #[expect(clippy::float_cmp, reason = "the proof holds for equal numbers only")]
        let piston = |piston| parts.variance_of_piston(piston) != parts.variance_of_piston(0);
        let differs = other(parts.bores.len(), &wants, "the clearances that are wanted in bores")
            .or_else(|| other(parts.bores.len(), &bore, "the uncertainties of bores"))
            .or_else(|| other(parts.pistons.len(), &piston, "the uncertainties of pistons"));
        if differs.is_some() { Ok(differs) } else { self.ruled_out(work) }
    }

    fn ruled_out(&self, work: &Work<'_>) -> Result<Option<String>, Error> {
        let parts = self.parts;
        let graded = |bore: &usize| parts.bores.get(*bore).is_some_and(|b| b.grade.is_some());
        if parts.conditions.forbidden.is_empty() && !self.bores.iter().any(graded) {
            return Ok(None);
        }
        let mut first = None;
        for bore in &self.bores {
            work.ask()?;
            let reason = |piston: &usize| Some((*bore, *piston, parts.ruled_out(*bore, *piston)?));
            first = self.pistons.iter().filter_map(reason).chain(first).min();
            work.add(1);
        }
        let told =
            |(bore, piston, reason)| format!("bore {bore} and piston {piston} may not be a pair: {reason}");
        Ok(first.map(told))
    }

    /// The sets of pistons that may be chosen together. None is a part of another.
    fn windows(&self) -> Vec<Window> {
        let parts = self.parts;
        let everything = (0..self.pistons.len()).collect();
        let Some(band) = parts.conditions.weight_band_g else { return vec![everything] };
        let weight = |piston: &usize| parts.weight_g(*piston).unwrap_or(f64::NAN);
        let fixed: Vec<f64> = parts.conditions.fixed.iter().map(|(_, piston)| weight(piston)).collect();
        let mut lightest: Vec<f64> = self.pistons.iter().map(weight).chain(fixed.iter().copied()).collect();
        lightest.sort_by(f64::total_cmp);
        lightest.dedup();
        let mut windows: Vec<Window> = Vec::new();
        let mut heaviest_before = f64::NEG_INFINITY;
        for low in lightest {
            let holds = |w: f64| Parts::is_within(band, low, w);
            if !fixed.iter().all(|w| holds(*w)) {
                continue;
            }
            let of = self.pistons.iter().enumerate().filter(|(_, piston)| holds(weight(piston)));
            let window: Window = of.map(|(place, _)| place).collect();
            let heaviest =
                window.iter().filter_map(|k| self.pistons.get(*k)).map(weight).fold(low, libm::fmax);
            if window.len() >= self.bores.len() && heaviest > heaviest_before {
                heaviest_before = heaviest;
                windows.push(window);
            }
        }
        windows
    }

    fn bore(&self, row: usize) -> usize {
        self.bores.get(row).copied().unwrap_or(NONE)
    }

    fn piston(&self, place: usize) -> usize {
        self.pistons.get(place).copied().unwrap_or(NONE)
    }

    /// Sizes of a window.
    fn sizes(&self, window: &[usize]) -> Vec<f64> {
        window.iter().map(|place| self.parts.piston_mm(self.piston(*place))).collect()
    }

    /// What a row wants, and the size of its bore.
    fn row(&self, row: usize) -> (Fit, f64) {
        let bore = self.bore(row);
        (self.parts.fit(bore), self.parts.bore_mm(bore))
    }

    /// Squared deviation from the target by the size of the piston.
    fn square(&self, row: usize) -> impl Fn(f64) -> f64 + use<> {
        let (fit, bore_mm) = self.row(row);
        move |piston_mm| {
            let deviation = fit.deviation(bore_mm - piston_mm);
            deviation * deviation
        }
    }

    fn sum_of(&self, places: &[usize]) -> f64 {
        self.sizes(places).into_iter().enumerate().map(|(row, size)| self.square(row)(size)).sum()
    }

    /// The piston of every bore, with the fixed ones.
    fn placed(&self, places: &[usize]) -> Option<Vec<usize>> {
        let mut out = vec![NONE; self.parts.bores.len()];
        let found = self.bores.iter().copied().zip(places.iter().map(|place| self.piston(*place)));
        for (bore, piston) in found.chain(self.parts.conditions.fixed.iter().copied()) {
            *out.get_mut(bore)? = piston;
        }
        out.iter().all(|piston| *piston != NONE).then_some(out)
    }

    fn refused(&self, short: &Short) -> Error {
        let list = |places: &[usize], of: &[usize]| {
            let mut names: Vec<usize> = places.iter().filter_map(|place| of.get(*place)).copied().collect();
            names.sort_unstable();
            names.iter().map(usize::to_string).collect::<Vec<_>>().join(", ")
        };
        let (bores, pistons) = (list(&short.rows, &self.bores), list(&short.columns, &self.pistons));
        let within = match self.parts.conditions.weight_band_g {
            Some(_) => " within the weight band",
            None => "",
        };
        let reason = match pistons.as_str() {
            "" => format!("there is no pairing: bore {bores} can take no piston{within}"),
            _ => format!("there is no pairing: bores {bores} can only take pistons {pistons}{within}"),
        };
        Error::new(ErrorKind::Contradiction, bores, reason).at("bores")
    }

    fn too_heavy(&self) -> Error {
        let band = self.parts.conditions.weight_band_g.unwrap_or_default();
        let reason = "no weights within this band are as many as the bores";
        Error::new(ErrorKind::Contradiction, band.to_string(), reason).value(band).at("weight_band_g")
    }
}

/// Places in order of a number above 0, of equals the lower place first.
fn in_order(is_free: &[bool], size: impl Fn(usize) -> f64) -> Vec<usize> {
    let free = is_free.iter().enumerate().filter(|(_, free)| **free).map(|(place, _)| place);
    // doubles that are not below 0 are in the order of their bits; size and place as one number sort faster than as two
    let mut keyed: Vec<u128> =
        free.map(|place| u128::from(size(place).to_bits()) << 64 | place as u128).collect();
    keyed.sort_unstable();
    #[expect(clippy::cast_possible_truncation, reason = "the lower half is the place")]
    keyed.into_iter().map(|key| key as u64 as usize).collect()
}

/// Pairs that cost what their clearance says: kept in order of size.
struct Ordered<'a> {
    free: &'a Free<'a>,
    /// what every bore wants
    fit: Fit,
    bores_mm: Vec<f64>,
}

impl<'a> Ordered<'a> {
    fn new(free: &'a Free<'a>, work: &Work<'_>) -> Self {
        // there are no ranks to be made
        work.add(free.rows());
        let bores_mm = free.bores.iter().map(|bore| free.parts.bore_mm(*bore)).collect();
        Ordered { free, fit: free.parts.fit(0), bores_mm }
    }
}

/// A number of a window.
fn at(sizes: &[f64], column: usize) -> f64 {
    sizes.get(column).copied().unwrap_or(f64::NAN)
}

impl Search for Ordered<'_> {
    fn worst(&self, window: &[usize], at_least: f64, cap: f64, work: &Work<'_>) -> Result<Option<f64>, Halt> {
        let worst = threshold_in_order(self.fit, &self.bores_mm, &self.free.sizes(window), at_least, work)?;
        Ok(Some(worst).filter(|worst| *worst <= cap))
    }

    fn chosen(&self, window: &[usize], rank: f64, work: &Work<'_>) -> Result<Option<Vec<usize>>, Error> {
        work.ask()?;
        if window.len() == self.bores_mm.len() {
            return Ok(Some((0..window.len()).collect()));
        }
        let sizes = self.free.sizes(window);
        let allowed = within_threshold(self.fit, &self.bores_mm, &sizes, rank);
        Ok(least_sum_in_order(sizes.len(), allowed, |row, column| {
            self.fit.deviation(at(&self.bores_mm, row) - at(&sizes, column))
        }))
    }

    fn rank(&self, bore: usize, piston: usize) -> f64 {
        let parts = self.free.parts;
        parts.fit(bore).beyond(parts.bore_mm(bore) - parts.piston_mm(piston))
    }
}

/// Pairs that cost what the pair says.
struct Pairwise<'a> {
    free: &'a Free<'a>,
    ranks: Matrix,
}

impl<'a> Pairwise<'a> {
    fn new(free: &'a Free<'a>, work: &Work<'_>) -> Result<Self, Error> {
        let ranks = Matrix::watched(free.bores.len(), free.pistons.len(), work, |row, place| {
            let (bore, piston) = (free.bore(row), free.piston(place));
            match free.parts.ruled_out(bore, piston) {
                Some(_) => f64::INFINITY,
                None => rank_of(free.parts, bore, piston),
            }
        })?;
        Ok(Pairwise { free, ranks })
    }

    /// Pairs with the least sum when every pair is allowed: the sum of squares alone always keeps the order.
    fn in_order(&self, sizes: &[f64]) -> Vec<usize> {
        let rows: Vec<(Fit, f64)> = (0..self.free.bores.len()).map(|row| self.free.row(row)).collect();
        let all = Span { first: 0, last: sizes.len().saturating_sub(1) };
        let pairs = least_sum_in_order(sizes.len(), vec![all; rows.len()], |row, column| {
            rows.get(row).map_or(f64::NAN, |(fit, bore_mm)| fit.deviation(bore_mm - at(sizes, column)))
        });
        pairs.unwrap_or_default()
    }
}

fn rank_of(parts: &Parts<'_>, bore: usize, piston: usize) -> f64 {
    let u = (parts.variance_of_bore(bore) + parts.variance_of_piston(piston)).sqrt();
    parts.fit(bore).rank(parts.bore_mm(bore) - parts.piston_mm(piston), u)
}

impl Search for Pairwise<'_> {
    fn worst(&self, window: &[usize], at_least: f64, cap: f64, work: &Work<'_>) -> Result<Option<f64>, Halt> {
        work.ask()?;
        let start = self.in_order(&self.free.sizes(window));
        bottleneck(&self.ranks.with_columns(window), &start, at_least, cap, work)
    }

    fn chosen(&self, window: &[usize], rank: f64, work: &Work<'_>) -> Result<Option<Vec<usize>>, Error> {
        work.ask()?;
        let sizes = self.free.sizes(window);
        let start = self.in_order(&sizes);
        let mut costs = self.ranks.with_columns(window);
        if start.iter().enumerate().all(|(row, column)| costs.at(row, *column) <= rank) {
            return Ok(Some(start));
        }
        let square = |row, column| self.free.square(row)(at(&sizes, column));
        costs.replace(|row, column, here| if here <= rank { square(row, column) } else { f64::INFINITY });
        let rows = start.len();
        let start = match rows == sizes.len() {
            true => start_in_order(rows, square),
            false => Start { column_of: vec![NONE; rows], column_prices: vec![0.0; sizes.len()] },
        };
        Ok(least_sum(&costs, &start, work)?.map(|(columns, _)| columns))
    }

    fn rank(&self, bore: usize, piston: usize) -> f64 {
        rank_of(self.free.parts, bore, piston)
    }
}
