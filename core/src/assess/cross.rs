//! Fields held against each other when everything is read: slips that no single field shows.
//!
//! A piston in inches in a bore in millimetres is not among them: the nominal sizes refuse it at the door. Nor is a missing temperature: the
//! document requires it.

use super::{Engine, PistonPlace};
use crate::error::Error;
use crate::job::document as doc;
use crate::job::{Document, Entry, Numeric, Warning};
use crate::quantity::Length;
use crate::report::CylinderReport;

/// Oversizes that are printed, in mm: 0.25 to 1.0 mm, and 0.010 in to 0.040 in.
const OVERSIZES_MM: [f64; 8] = [0.25, 0.5, 0.75, 1.0, 0.254, 0.508, 0.762, 1.016];
/// A clearance is one of them when it is as near as this; common practice, no source.
const NEAR_OVERSIZE_MM: f64 = 0.002;
/// Bores, or pistons, of one engine that differ by more are of several oversizes; common practice, no source.
const MOST_SPREAD_MM: f64 = 0.05;
/// Turns of a thimble or a dial, in mm: 0.5 mm, 1 mm, 0.025 in, 0.1 in.
const TURNS_MM: [f64; 4] = [0.5, 1.0, 0.635, 2.54];
/// A jump is one of them when it is as near as one division of a thimble; common practice, no source.
const NEAR_TURN_MM: f64 = 0.01;
/// Texts of one number differ by no more.
const SAME_MM: f64 = 1e-9;

/// A number of the document with its text and place.
struct Typed<'d> {
    mm: f64,
    text: &'d str,
    path: &'d str,
}

impl<'d> Typed<'d> {
    fn new(entry: &'d Entry<Length>) -> Result<Self, Error> {
        // each was read before, and found possible
        Ok(Typed { mm: Length::number(entry.text())?, text: entry.text(), path: entry.path() })
    }
}

/// Adds a warning for everything that two or more fields say together.
pub(super) fn check(
    document: &Document,
    engine: &Engine,
    cylinders: &[Option<&doc::Cylinder>],
    reports: &[CylinderReport],
    warnings: &mut Vec<Warning>,
) -> Result<(), Error> {
    nominals(&document.engine, warnings)?;
    clearances(cylinders, reports, warnings);
    spreads(engine, reports, warnings);
    let pistons = piston_series(engine, cylinders)?;
    let bores = bore_series(cylinders)?;
    for series in pistons.iter().chain(&bores) {
        turns(series, warnings);
    }
    let nominal = engine.piston_nominal;
    not_measured(&pistons, nominal, "every piston reads its nominal size", warnings);
    not_measured(&bores, 0.0, "every deviation of every bore is 0", warnings);
    Ok(())
}

fn warn(kind: &str, path: &str, text: String) -> Warning {
    Warning { kind: kind.to_owned(), path: path.to_owned(), text }
}

fn oversize(difference_mm: f64, near_mm: f64) -> bool {
    OVERSIZES_MM.iter().any(|step| (difference_mm - step).abs() <= near_mm)
}

/// Nominal sizes and size limits of piston and bore.
fn nominals(engine: &doc::Engine, warnings: &mut Vec<Warning>) -> Result<(), Error> {
    let (bore, piston) = (Typed::new(&engine.bore.nominal)?, Typed::new(&engine.piston.nominal)?);
    let difference = bore.mm - piston.mm;
    if difference.abs() <= SAME_MM {
        let text = format!(
            "the nominal piston, {}, is the nominal bore ({}): was it copied?",
            piston.text, bore.path
        );
        warnings.push(warn("copied", piston.path, text));
    } else if oversize(difference, SAME_MM) {
        let text = format!(
            "the nominal piston, {}, and the nominal bore, {} ({}), differ by an oversize",
            piston.text, bore.text, bore.path
        );
        warnings.push(warn("oversize_step", piston.path, text));
    }
    limits_copied("/engine/limits", &engine.limits, warnings)?;
    for (index, group) in engine.limits_by_cylinder.iter().enumerate() {
        limits_copied(&format!("/engine/limits_by_cylinder/{index}/limits"), &group.limits, warnings)?;
    }
    Ok(())
}

/// Limits of the piston that are those of the bore.
fn limits_copied(at: &str, limits: &doc::Limits, warnings: &mut Vec<Warning>) -> Result<(), Error> {
    let ends = |limit: &'_ Option<doc::Limit>| -> Result<Option<[f64; 2]>, Error> {
        let (Some(min), Some(max)) =
            (limit.as_ref().and_then(|l| l.min.as_ref()), limit.as_ref().and_then(|l| l.max.as_ref()))
        else {
            return Ok(None);
        };
        Ok(Some([Typed::new(min)?.mm, Typed::new(max)?.mm]))
    };
    if let (Some(bore), Some(piston)) = (ends(&limits.bore_size)?, ends(&limits.piston_size)?)
        && bore.iter().zip(piston).all(|(b, p)| (b - p).abs() <= SAME_MM)
    {
        let text =
            format!("the limits of the piston are those of the bore ({at}/bore_size): were they copied?");
        warnings.push(warn("copied", &format!("{at}/piston_size"), text));
    }
    Ok(())
}

/// A clearance that is nothing, or an oversize.
fn clearances(cylinders: &[Option<&doc::Cylinder>], reports: &[CylinderReport], warnings: &mut Vec<Warning>) {
    for (cylinder, report) in cylinders.iter().zip(reports) {
        let bench = report.clearance.as_ref().and_then(|c| c.bench.as_ref()).map(|b| b.value_mm);
        let (Some(clearance), Some(cylinder)) = (bench, cylinder) else {
            continue;
        };
        let at = cylinder.number.parent();
        let (piston, bore) = (format!("{at}/piston/readings"), format!("{at}/bore/readings"));
        if clearance.abs() <= SAME_MM {
            let text = format!("piston and bore ({bore}) have one size: was it copied?");
            warnings.push(warn("copied", &piston, text));
        } else if oversize(clearance, NEAR_OVERSIZE_MM) {
            let text = format!(
                "the clearance of {clearance:.3} mm is an oversize: piston and bore ({bore}) may belong to different ones"
            );
            warnings.push(warn("oversize_step", &piston, text));
        }
    }
}

/// Sizes of one engine that lie too far apart.
fn spreads(engine: &Engine, reports: &[CylinderReport], warnings: &mut Vec<Warning>) {
    let bores = reports.iter().filter_map(|r| {
        let size = r.bore.as_ref()?.size.as_ref()?;
        Some((r.number, size.value_mm))
    });
    spread("bores", bores, warnings);
    for over in [doc::Surface::BareMetal, doc::Surface::Coating] {
        let pistons = reports.iter().filter_map(|r| {
            let here = |s: &&crate::report::PistonSizeReport| s.over == over && at_gauge_point(engine, s);
            Some((r.number, r.piston.as_ref()?.sizes.iter().find(here)?.size.value_mm))
        });
        spread(&format!("pistons over the {}", over.spoken()), pistons, warnings);
    }
}

fn at_gauge_point(engine: &Engine, size: &crate::report::PistonSizeReport) -> bool {
    let PistonPlace { height, datum, angle } = &engine.gauge_point;
    let same = crate::shape::same;
    *datum == size.datum && same(height.value, size.height_mm) && same(angle.value, size.angle_deg)
}

fn spread(what: &str, sizes: impl Iterator<Item = (u32, f64)>, warnings: &mut Vec<Warning>) {
    let sizes: Vec<(u32, f64)> = sizes.collect();
    let largest = sizes.iter().copied().reduce(|a, b| if b.1 > a.1 { b } else { a });
    let smallest = sizes.iter().copied().reduce(|a, b| if b.1 < a.1 { b } else { a });
    let (Some(largest), Some(smallest)) = (largest, smallest) else {
        return;
    };
    if largest.1 - smallest.1 > MOST_SPREAD_MM {
        let text = format!(
            "the {what} differ by {:.3} mm, from {:.3} mm in cylinder {} to {:.3} mm in cylinder {}: several oversizes?",
            largest.1 - smallest.1,
            smallest.1,
            smallest.0,
            largest.1,
            largest.0
        );
        warnings.push(warn("mixed_oversizes", "/cylinders", text));
    }
}

/// What each gauge read at the gauge points, piston after piston: one series for each gauge and surface.
fn piston_series<'d>(
    engine: &Engine,
    cylinders: &[Option<&'d doc::Cylinder>],
) -> Result<Vec<Vec<Typed<'d>>>, Error> {
    let mut out: Vec<((&str, doc::Surface), Vec<Typed<'d>>)> = Vec::new();
    let pistons = cylinders.iter().flatten().filter_map(|c| c.piston.as_ref());
    for reading in pistons.flat_map(|p| &p.readings) {
        let place =
            PistonPlace::from_document(&reading.height, reading.datum, &reading.angle, &mut Vec::new())?;
        let (true, Some(first)) = (place.is(&engine.gauge_point), reading.repeats.first()) else {
            continue;
        };
        let (key, typed) = ((reading.gauge.text(), reading.over), Typed::new(first)?);
        match out.iter_mut().find(|(known, _)| *known == key) {
            Some((_, series)) => series.push(typed),
            None => out.push((key, vec![typed])),
        }
    }
    Ok(out.into_iter().map(|(_, series)| series).collect())
}

/// What was read in each bore, place after place.
fn bore_series<'d>(cylinders: &[Option<&'d doc::Cylinder>]) -> Result<Vec<Vec<Typed<'d>>>, Error> {
    let bores = cylinders.iter().flatten().filter_map(|c| c.bore.as_ref());
    bores.map(|b| b.readings.iter().filter_map(|r| r.repeats.first()).map(Typed::new).collect()).collect()
}

/// From one reading to the next a whole turn.
fn turns(series: &[Typed<'_>], warnings: &mut Vec<Warning>) {
    for (before, after) in series.iter().zip(series.iter().skip(1)) {
        let jump = (after.mm - before.mm).abs();
        if TURNS_MM.iter().any(|turn| (jump - turn).abs() <= NEAR_TURN_MM) {
            let text = format!(
                "from {} ({}) to {} is a turn of a thimble or a dial: was one miscounted?",
                before.text, before.path, after.text
            );
            warnings.push(warn("missed_turn", after.path, text));
        }
    }
}

/// All readings are the number that they should have been.
fn not_measured(all: &[Vec<Typed<'_>>], nominal: f64, what: &str, warnings: &mut Vec<Warning>) {
    let mut readings = all.iter().flatten();
    let Some(first) = readings.next() else {
        return;
    };
    let same = |t: &Typed<'_>| (t.mm - nominal).abs() <= SAME_MM;
    if same(first) && readings.clone().next().is_some() && readings.all(same) {
        warnings.push(warn("not_measured", first.path, format!("{what}: was it measured?")));
    }
}
