//! Repeatability of a gauge: stated by its study, or found from the repeats of the job itself.

use super::{mean, near_nominal, repeats};
use crate::bounds;
use crate::calc::{Calc, EstimateId, Figure};
use crate::error::{Error, ErrorKind};
use crate::job::document::{self as doc, GaugeKind};
use crate::job::{Entry, Given, Warning};
use crate::quantity::Length;

/// Standard deviation of one reading and what it rests on; nothing when it is taken as exact.
#[derive(Debug, Clone, Copy)]
pub(super) struct Repeatability {
    pub(super) deviation: Figure,
    pub(super) estimate: Option<EstimateId>,
}

impl Repeatability {
    /// As the document states it.
    pub(super) fn stated(
        calc: &mut Calc,
        gauge: &doc::Gauge,
        warnings: &mut Vec<Warning>,
    ) -> Result<Option<Self>, Error> {
        let Some(deviation) = &gauge.repeatability else {
            return gauge.repeatability_dof.as_ref().map_or(Ok(None), |dof| {
                Err(dof.refuse(
                    ErrorKind::Contradiction,
                    "degrees of freedom of a repeatability that is not given",
                ))
            });
        };
        let exact = Self::exact(calc, deviation, warnings)?;
        let dof = gauge.repeatability_dof.as_ref().map(|d| d.read(&bounds::DEGREES_OF_FREEDOM, warnings));
        let estimate = dof.transpose()?.map(|dof| {
            let dof = calc.given("dof", &dof);
            calc.estimate(dof)
        });
        Ok(Some(Repeatability { estimate, ..exact }))
    }

    /// Stated, and taken as exact.
    pub(super) fn exact(
        calc: &mut Calc,
        deviation: &Entry<Length>,
        warnings: &mut Vec<Warning>,
    ) -> Result<Self, Error> {
        let deviation = deviation.read(&bounds::REPEATABILITY, warnings)?;
        Ok(Repeatability { deviation: calc.given("s", &deviation), estimate: None })
    }

    /// Pooled over the repeats of every place that was read with the gauge; nothing when none was.
    pub(super) fn pooled(
        calc: &mut Calc,
        gauge: &doc::Gauge,
        places: &[Vec<Given>],
    ) -> Result<Option<Self>, Error> {
        if places.is_empty() {
            return Ok(None);
        }
        let count: usize = places.iter().map(|repeats| repeats.len() - 1).sum();
        if count == 0 {
            let reason = "it is not given, and no place was read twice with this gauge";
            let field = format!("{}/repeatability", gauge.name.parent());
            return Err(Error::new(ErrorKind::MissingField, "repeatability", reason).at(&field));
        }
        calc.heading(|| format!("repeatability of {}", gauge.name.text().trim()));
        let mut squares = Vec::with_capacity(places.len());
        for repeats in places.iter().filter(|repeats| repeats.len() > 1) {
            let symbol = if gauge.kind == GaugeKind::BoreGauge { "d" } else { "r" };
            let Some(mean) = mean(calc, symbol, repeats) else { continue };
            let figures: Vec<Figure> = repeats.iter().map(|r| calc.given(symbol, r)).collect();
            squares.push(calc.squares_about(mean.figure, &figures));
        }
        #[expect(clippy::cast_precision_loss, reason = "a count of readings is far below 2^53")]
        let dof = count as f64;
        let dof = calc.constant(
            &format!("dof{count}"),
            dof,
            "1",
            "repeats of every place less one, over all places",
        );
        let deviation = calc.pooled_deviation(&squares, dof);
        Ok(Some(Repeatability { deviation, estimate: Some(calc.estimate(dof)) }))
    }
}

/// The repeats of every place of a job that was read with a gauge. A gauge reads pistons or bores, never both.
pub(crate) fn places(
    document: &doc::Document,
    gauge: &doc::Gauge,
    warnings: &mut Vec<Warning>,
) -> Result<Vec<Vec<Given>>, Error> {
    let name = gauge.name.text().trim();
    let nominal = document.engine.piston.nominal.read(&bounds::PISTON, warnings)?.value;
    let near = near_nominal("reading of this piston", nominal);
    let plan = document.plan.as_ref();
    let finished = plan.and_then(|p| p.finish.as_ref()).into_iter().flat_map(|f| &f.cylinders);
    let bores = document.cylinders.iter().filter_map(|c| c.bore.as_ref()).chain(finished.map(|c| &c.bore));
    let pistons = document.cylinders.iter().filter_map(|c| c.piston.as_ref()).flat_map(|p| &p.readings);
    let pistons = pistons.chain(plan.into_iter().flat_map(|p| &p.pistons).flat_map(|p| &p.readings));
    let (entries, bound): (Vec<&[_]>, _) = match gauge.kind {
        GaugeKind::BoreGauge => {
            let own = bores.filter(|b| b.gauge.text().trim() == name).flat_map(|b| &b.readings);
            (own.map(|r| r.repeats.as_slice()).collect(), &bounds::DEVIATION)
        }
        _ => {
            let own = pistons.filter(|r| r.gauge.text().trim() == name);
            (own.map(|r| r.repeats.as_slice()).collect(), &near)
        }
    };
    let read = entries.into_iter().filter(|e| !e.is_empty());
    read.map(|entries| repeats(entries, bound, warnings)).collect()
}
