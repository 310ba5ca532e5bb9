//! The shape of a piston as the document writes it.

use super::document::{PistonShape, ShapeRow, SideRow, SurfaceShape, SurfaceWindow};
use crate::bounds;
use crate::error::{Error, ErrorKind};
use crate::job::{Entry, Given, Warning, check_length};
use crate::quantity::Length;
use crate::shape::piston::{self, Asymmetric, Counted, Surface, Symmetric, Table, Window};

/// Reads the shape of a piston that stands at `field` of its document.
pub(crate) fn piston_shape(
    shape: &PistonShape,
    gauge: &Given,
    warnings: &mut Vec<Warning>,
) -> Result<piston::PistonShape, Error> {
    check_length(&shape.surfaces, |s| &s.name)?;
    let mut surfaces = Vec::with_capacity(shape.surfaces.len());
    for entry in &shape.surfaces {
        let name = entry.name.words()?;
        if surfaces.iter().any(|s: &Surface| s.name == name) {
            return Err(entry.name.refuse(ErrorKind::Repeated, "this surface stands twice"));
        }
        surfaces.push(surface(entry, name, warnings).map_err(|e| below(entry.name.parent(), e))?);
    }
    piston::PistonShape::new(gauge.value, surfaces).map_err(|e| match e.field() {
        "gauge_height_mm" => e.moved(gauge.path.clone()),
        _ => below(shape.height.parent(), e),
    })
}

/// A refusal of the shape itself is told under the place of the document that holds it.
fn below(place: &str, error: Error) -> Error {
    if error.field().starts_with('/') { error } else { error.under(place) }
}

fn surface(entry: &SurfaceShape, name: &str, warnings: &mut Vec<Warning>) -> Result<Surface, Error> {
    let mut surface = match (entry.rows.as_slice(), entry.side_rows.as_slice()) {
        (rows, []) if !rows.is_empty() => symmetric(name, rows, warnings)?,
        ([], rows) if !rows.is_empty() => asymmetric(name, rows, warnings)?,
        ([], _) => {
            return Err(
                Error::new(ErrorKind::MissingField, "rows", "a surface has rows, or side_rows").at("rows")
            );
        }
        _ => {
            let reason = "a surface has rows or side_rows, not both";
            return Err(Error::new(ErrorKind::Contradiction, "side_rows", reason).at("side_rows"));
        }
    };
    if let Some(panel) = &entry.thrust_panel {
        let thrust = panel.read(&bounds::PANEL, warnings)?.value;
        let minor =
            entry.minor_thrust_panel.as_ref().map(|p| p.read(&bounds::PANEL, warnings)).transpose()?;
        surface = surface.with_panels(thrust, minor.map_or(thrust, |p| p.value))?;
    } else if let Some(panel) = &entry.minor_thrust_panel {
        return Err(panel.refuse(ErrorKind::Contradiction, "it needs the thrust_panel besides"));
    }
    if let Some(coating) = &entry.coating {
        surface = surface.with_coating(coating.read(&bounds::COATING, warnings)?.value)?;
    }
    for opening in &entry.windows {
        let place = opening.from_angle.parent();
        surface = surface.with_window(window(opening, warnings)?).map_err(|e| below(place, e))?;
    }
    Ok(surface)
}

fn symmetric(name: &str, rows: &[ShapeRow], warnings: &mut Vec<Warning>) -> Result<Surface, Error> {
    let heights = heights(rows, |row| &row.height, &bounds::PISTON_HEIGHT, warnings)?;
    let drop = bounds::DIAMETER_CHANGE.negative();
    let below = column(rows, |row| &row.below, &drop, warnings)?;
    let ovality = column(rows, |row| &row.ovality, &bounds::OVALITY, warnings)?;
    let mut fourth = Vec::new();
    for entry in rows.iter().filter_map(|row| row.double_ovality.as_ref()) {
        fourth.push(entry.read(&bounds::DOUBLE_OVALITY, warnings)?.value);
    }
    if !fourth.is_empty() && fourth.len() != rows.len() {
        let reason = "double_ovality stands in every row or in none";
        return Err(Error::new(ErrorKind::Contradiction, fourth.len().to_string(), reason).at("rows"));
    }
    let over = |values| Table { heights_mm: &heights, values_mm: values };
    let drawing = Symmetric {
        barrel: over(&below),
        counted: Counted::Below,
        ovality: over(&ovality),
        double_ovality: (!fourth.is_empty()).then(|| over(&fourth)),
    };
    let (from, to) = ends(&heights);
    Surface::symmetric(name, from, to, &drawing)
}

fn asymmetric(name: &str, rows: &[SideRow], warnings: &mut Vec<Warning>) -> Result<Surface, Error> {
    let heights = heights(rows, |row| &row.height, &bounds::PISTON_HEIGHT, warnings)?;
    let drop = bounds::DIAMETER_CHANGE.negative();
    let [thrust, pin, minor] = [
        column(rows, |row| &row.thrust_below, &drop, warnings)?,
        column(rows, |row| &row.pin_below, &drop, warnings)?,
        column(rows, |row| &row.minor_thrust_below, &drop, warnings)?,
    ];
    let over = |values| Table { heights_mm: &heights, values_mm: values };
    let drawing = Asymmetric {
        thrust: over(&thrust),
        pin_axis: over(&pin),
        minor_thrust: over(&minor),
        counted: Counted::Below,
        thrust_fourth: None,
        minor_thrust_fourth: None,
    };
    let (from, to) = ends(&heights);
    Surface::asymmetric(name, from, to, &drawing)
}

fn ends(heights: &[f64]) -> (f64, f64) {
    let end = |height: Option<&f64>| height.copied().unwrap_or(f64::NAN);
    (end(heights.first()), end(heights.last()))
}

/// Heights or depths of rows, which rise; a table may begin at the edge.
pub(crate) fn heights<R>(
    rows: &[R],
    of: impl Fn(&R) -> &Entry<Length>,
    bound: &bounds::Bound,
    warnings: &mut Vec<Warning>,
) -> Result<Vec<f64>, Error> {
    check_length(rows, &of)?;
    let bound = &bounds::Bound { usual: (0.0, bound.usual.1), ..*bound };
    let mut out: Vec<f64> = Vec::with_capacity(rows.len());
    for entry in rows.iter().map(of) {
        let height = entry.read(bound, warnings)?.value;
        if out.last().is_some_and(|last| height <= *last) {
            return Err(entry.refuse(ErrorKind::OutOfOrder, "rows must rise").value(height));
        }
        out.push(height);
    }
    Ok(out)
}

fn column<R>(
    rows: &[R],
    of: impl Fn(&R) -> &Entry<Length>,
    bound: &bounds::Bound,
    warnings: &mut Vec<Warning>,
) -> Result<Vec<f64>, Error> {
    rows.iter().map(|row| of(row).read(bound, warnings).map(|given| given.value)).collect()
}

fn window(entry: &SurfaceWindow, warnings: &mut Vec<Warning>) -> Result<Window, Error> {
    Ok(Window {
        kind: entry.kind,
        from_deg: entry.from_angle.read(&bounds::ANGLE, warnings)?.value,
        to_deg: entry.to_angle.read(&bounds::ANGLE, warnings)?.value,
        from_mm: entry.from_height.read(&bounds::PISTON_HEIGHT, warnings)?.value,
        to_mm: entry.to_height.read(&bounds::PISTON_HEIGHT, warnings)?.value,
    })
}
