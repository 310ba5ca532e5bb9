//! Rows of `piston.csv`: the call of a row, and its results by the names that every host gives them.

use crate::named::{Named, given, number, numbers};
use gaugepoint::Error;
use gaugepoint::shape::piston::{
    Asymmetric, Counted, FittedSurface, Form, PistonShape, Points, Reading, SurfaceDrawing, Symmetric, Table,
    TraceFit, Window, WindowKind, fit_surface, fit_trace,
};

/// Calls what a row of `piston.csv` says.
///
/// # Errors
/// As the library.
pub fn piston_row(row: &[String]) -> Result<Named, Error> {
    let (function, text) = (row[1].as_str(), row[3].as_str());
    match function {
        "piston_warnings" => return drawn(text, |shape| Ok(of_warnings(shape))),
        "fit_piston_surface" => return fitted(&row[2], text),
        _ => {}
    }
    let (head, piston) = text.split_once('|').unwrap_or_else(|| panic!("{text}"));
    if function == "fit_piston_trace" {
        let (gauge, list) = head.split_once(';').unwrap_or_else(|| panic!("{head}"));
        let list = lists(list);
        let points = points(&row[2], &list);
        return drawn(piston, |shape| fit_trace(shape, number(gauge), &points).map(of_trace));
    }
    let x = numbers(head);
    drawn(piston, |shape| match function {
        "piston_radius_mm" => shape.radius_mm(x[0], x[1], x[2]).map(|r| given([("result", r)])),
        "piston_diameter_mm" => shape.diameter_mm(x[0], x[1], x[2]).map(|d| given([("result", d)])),
        "piston_ovality_mm" => shape.ovality_mm(x[0]).map(|o| given([("result", o)])),
        "piston_largest" => shape
            .largest(x[0], x[1])
            .map(|l| given([("angle_deg", l.angle_deg), ("diameter_mm", l.diameter_mm)])),
        _ => panic!("{function}"),
    })
}

/// Columns of which the first may be empty.
fn lists(text: &str) -> Vec<Vec<f64>> {
    text.split('/').map(numbers).collect()
}

/// Uncertainty, heights, angles, values.
fn points<'a>(reading: &str, list: &'a [Vec<f64>]) -> Points<'a> {
    Points {
        heights_mm: &list[1],
        angles_deg: &list[2],
        values_mm: &list[3],
        reading: Reading::from_word(reading).unwrap_or_else(|e| panic!("{e}")),
        uncertainty_mm: list[0].first().copied(),
    }
}

/// Of a table height and value in turn.
type Columns = (Vec<f64>, Vec<f64>);

fn columns(flat: &[f64]) -> Columns {
    flat.chunks(2).map(|pair| (pair[0], pair[1])).unzip()
}

/// Makes the piston of a text and asks it.
fn drawn(text: &str, ask: impl FnOnce(&PistonShape) -> Result<Named, Error>) -> Result<Named, Error> {
    let mut parts = text.split('|');
    let gauge_height = number(parts.next().unwrap_or_default());
    let read: Vec<(Vec<Vec<f64>>, Vec<Columns>)> = parts
        .map(lists)
        .map(|list| {
            let tables = list[1..6].iter().map(|flat| columns(flat)).collect::<Vec<Columns>>();
            (list, tables)
        })
        .collect();
    let surfaces: Vec<SurfaceDrawing<'_>> = read.iter().map(|(list, tables)| surface(list, tables)).collect();
    ask(&PistonShape::from_drawings(gauge_height, &surfaces)?)
}

fn surface<'a>(list: &[Vec<f64>], tables: &'a [Columns]) -> SurfaceDrawing<'a> {
    let table = |k: usize| Table { heights_mm: &tables[k].0, values_mm: &tables[k].1 };
    let optional = |k: usize| (!tables[k].0.is_empty()).then(|| table(k));
    let &[form, counted, from_mm, to_mm, coating, thrust_panel, minor_panel] = &list[0][..] else {
        panic!("{list:?}")
    };
    let counted = if counted < 1.5 { Counted::Above } else { Counted::Below };
    let form = if form < 1.5 {
        Form::Symmetric(Symmetric {
            barrel: table(0),
            counted,
            ovality: table(1),
            double_ovality: optional(2),
        })
    } else {
        Form::Asymmetric(Asymmetric {
            thrust: table(0),
            pin_axis: table(1),
            minor_thrust: table(2),
            counted,
            thrust_fourth: optional(3),
            minor_thrust_fourth: optional(4),
        })
    };
    let window = |w: &[f64]| Window {
        kind: if w[0] < 1.5 { WindowKind::CutOut } else { WindowKind::Bare },
        from_deg: w[1],
        to_deg: w[2],
        from_mm: w[3],
        to_mm: w[4],
    };
    SurfaceDrawing {
        from_mm,
        to_mm,
        form,
        panel_deg: (thrust_panel > 0.0).then_some((thrust_panel, minor_panel)),
        coating_mm: (coating > 0.0).then_some(coating),
        windows: list[6].chunks(5).map(window).collect(),
    }
}

/// A name that depends on a place.
fn placed(place: usize, name: &str) -> &'static str {
    Box::leak(format!("{place}.{name}").into_boxed_str())
}

fn residual(place: usize) -> &'static str {
    Box::leak(format!("residuals.{place}").into_boxed_str())
}

#[expect(clippy::cast_precision_loss, reason = "a vector is short")]
fn counted(count: usize) -> Option<f64> {
    Some(count as f64)
}

fn of_warnings(shape: &PistonShape) -> Named {
    let warnings = shape.warnings();
    let mut out = vec![("count", counted(warnings.len()))];
    for (k, w) in warnings.iter().enumerate() {
        out.extend([
            (placed(k, "kind"), Some(f64::from(1 + w.kind as u8))),
            (placed(k, "surface"), counted(w.surface)),
            (placed(k, "height_mm"), Some(w.height_mm)),
            (placed(k, "angle_deg"), w.angle_deg),
            (placed(k, "value"), Some(w.value)),
        ]);
    }
    out
}

fn fitted(reading: &str, text: &str) -> Result<Named, Error> {
    let (double, list) = text.split_once(';').unwrap_or_else(|| panic!("{text}"));
    let list = lists(list);
    fit_surface(&points(reading, &list), double == "1").map(|f| of_fitted(&f))
}

fn of_fitted(f: &FittedSurface) -> Named {
    let mut out = vec![
        ("stations", counted(f.stations.len())),
        ("dof", counted(f.dof)),
        ("deviation_mm", f.deviation_mm),
    ];
    for (k, s) in f.stations.iter().enumerate() {
        out.extend([
            (placed(k, "height_mm"), Some(s.height_mm)),
            (placed(k, "points"), counted(s.points)),
            (placed(k, "diameter_mm"), Some(s.diameter_mm.value)),
            (placed(k, "diameter_uncertainty_mm"), s.diameter_mm.uncertainty),
            (placed(k, "ovality_mm"), Some(s.ovality_mm.value)),
            (placed(k, "ovality_uncertainty_mm"), s.ovality_mm.uncertainty),
            (placed(k, "double_ovality_mm"), s.double_ovality_mm.map(|d| d.value)),
            (placed(k, "double_ovality_uncertainty_mm"), s.double_ovality_mm.and_then(|d| d.uncertainty)),
        ]);
    }
    let last = f.residuals_mm.len() - 1;
    out.extend([(residual(0), Some(f.residuals_mm[0])), (residual(last), Some(f.residuals_mm[last]))]);
    out
}

fn of_trace(f: TraceFit) -> Named {
    let mut out = Vec::new();
    let estimates = [
        ("size_mm", "size_mm_uncertainty", Some(f.size_mm)),
        ("x_mm", "x_mm_uncertainty", f.x_mm),
        ("y_mm", "y_mm_uncertainty", f.y_mm),
        ("slope_x", "slope_x_uncertainty", f.slope_x),
        ("slope_y", "slope_y_uncertainty", f.slope_y),
    ];
    for (name, uncertainty, estimate) in estimates {
        out.push((name, estimate.map(|e| e.value)));
        out.push((uncertainty, estimate.and_then(|e| e.uncertainty)));
    }
    out.extend([
        ("height_mm", Some(f.height_mm)),
        ("rms_mm", Some(f.rms_mm)),
        ("largest", counted(f.largest)),
        ("dof", counted(f.dof)),
        ("deviation_mm", f.deviation_mm),
        ("least_share", Some(f.least_share)),
        (residual(f.largest), Some(f.residuals_mm[f.largest])),
        ("residuals.0", Some(f.residuals_mm[0])),
    ]);
    out
}
