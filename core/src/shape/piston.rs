//! The shape of a piston: skirt and lands over height and angle.
//!
#![doc = include_str!("../../docs/piston-shape.md")]

mod fit;
mod reading;

pub use fit::{Estimate, FittedSurface, Points, Reading, Station, TraceFit, fit_surface, fit_trace};
pub use reading::{FormWarning, Largest, OddForm};

use super::angle::{check_width, turned};
use super::curve::Curve;
use crate::bounds::{self, Bound, Verdict};
use crate::calc::{Formula, formula};
use crate::choice::choices;
use crate::error::{Error, ErrorKind};

formula! {
    /// Mean part of the radius of a side, less half the gauge diameter.
    MeanPart: a ["mm"] = (barrel, ovality, fourth) => barrel - ovality / 2.0 + fourth / 2.0; source "definition of ovality and fourth order";
    /// Half of a quantity.
    Half: half ["mm"] = (x) => x / 2.0; source "definition of ovality and fourth order";
    /// The other half.
    MinusHalf: half ["mm"] = (x) => x * -0.5; source "definition of ovality and fourth order";
}

choices! {
    /// How the rows of a table of diameters over height are counted.
    Counted {
        /// Diameter there less the gauge diameter: negative where the piston is smaller.
        Above = "above",
        /// Drop: gauge diameter less the diameter there, positive where the piston is smaller.
        Below = "below",
    }
    /// What a window takes away.
    WindowKind {
        /// There is no surface: a cut-out, a slot, a relief.
        CutOut = "cut_out",
        /// There is no coating: a place to measure bare metal.
        Bare = "bare",
    }
}

/// A quantity over height, in mm, as a table prints it: one row holds at every height, two rows are a straight line (a taper), between
/// more the curve is the monotone cubic.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Table<'a> {
    /// Heights from the bottom edge of the skirt, rising.
    pub heights_mm: &'a [f64],
    /// The quantity there.
    pub values_mm: &'a [f64],
}

/// One side of a surface, radial, in mm over height:
/// `r = D_gauge/2 + barrel(z) - ovality(z)/2 (1 - cos 2t) + fourth(z)/2 (1 - cos 4t)`.
///
/// Radial quantities are half of the diametral ones of a symmetric drawing.
#[derive(Debug, Clone, PartialEq)]
pub struct Side {
    /// Radius in the thrust direction less half the gauge diameter.
    pub barrel: Curve,
    /// Radius in the thrust direction less that on the pin axis.
    pub ovality: Curve,
    /// What is added at 45 degrees; positive is the fuller panel.
    pub fourth: Curve,
}

impl Side {
    /// `[A, B, C]` of `r - D_gauge/2 = A + B cos 2t + C cos 4t` at a height that was checked.
    #[must_use]
    pub fn coefficients(&self, height_mm: f64) -> [f64; 3] {
        let [barrel, ovality, fourth] =
            [&self.barrel, &self.ovality, &self.fourth].map(|curve| curve.value(height_mm));
        [
            MeanPart::evaluate([barrel, ovality, fourth]),
            Half::evaluate([ovality]),
            MinusHalf::evaluate([fourth]),
        ]
    }

    /// Radius less half the gauge diameter, at a height that was checked.
    #[must_use]
    pub fn deviation_mm(&self, height_mm: f64, angle_deg: f64) -> f64 {
        let [a, b, c] = self.coefficients(height_mm);
        a + b * turned(2, angle_deg).0 + c * turned(4, angle_deg).0
    }
}

/// A part of a surface that lacks something.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Window {
    /// What it lacks.
    pub kind: WindowKind,
    /// Angle at which it begins; its edge belongs to what is around.
    pub from_deg: f64,
    /// Angle at which it ends, in the direction of rising angles: from 350 to 10 is 20 degrees wide, from 0 to 360 the whole turn.
    pub to_deg: f64,
    /// Height at which it begins.
    pub from_mm: f64,
    /// Height at which it ends.
    pub to_mm: f64,
}

/// A skirt or a land: what is machined in one go.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Surface {
    /// What it is called.
    pub name: String,
    /// Height at which it begins.
    pub from_mm: f64,
    /// Height at which it ends.
    pub to_mm: f64,
    /// From 270 over 0 to 90 degrees.
    pub thrust: Side,
    /// From 90 over 180 to 270 degrees.
    pub minor_thrust: Side,
    /// Half-width of the thrust panel and of the minor thrust panel, beyond which there is no surface; none: all round.
    pub panel_deg: Option<(f64, f64)>,
    /// Where there is no metal or no coating.
    pub windows: Vec<Window>,
    /// Coating, per side; 0 without.
    pub coating_mm: f64,
}

/// Skirt and lands of a piston, but for its size: everything is counted from the diameter of the bare metal at the gauge point.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct PistonShape {
    /// Height of the gauge point, on the skirt at angle 0.
    pub gauge_height_mm: f64,
    /// The skirt first, then the lands upward.
    pub surfaces: Vec<Surface>,
}

/// What a drawing of a symmetric surface says; all diametral.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Symmetric<'a> {
    /// Diameter in the thrust direction against the gauge diameter.
    pub barrel: Table<'a>,
    /// How `barrel` is counted.
    pub counted: Counted,
    /// Diameter in the thrust direction less that on the pin axis, at the same height.
    pub ovality: Table<'a>,
    /// Diameter added at 45 degrees; none is a simple oval.
    pub double_ovality: Option<Table<'a>>,
}

/// What a drawing of an asymmetric surface says: radii along three lines, which every height has in common, so that both sides meet on the
/// pin axis.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Asymmetric<'a> {
    /// Radius on the major thrust side against half the gauge diameter.
    pub thrust: Table<'a>,
    /// Radius on the pin axis against half the gauge diameter.
    pub pin_axis: Table<'a>,
    /// Radius on the minor thrust side against half the gauge diameter.
    pub minor_thrust: Table<'a>,
    /// How the three are counted.
    pub counted: Counted,
    /// Radius added at 45 degrees on the major thrust side; none is a simple oval.
    pub thrust_fourth: Option<Table<'a>>,
    /// Radius added at 135 degrees on the minor thrust side; none is a simple oval.
    pub minor_thrust_fourth: Option<Table<'a>>,
}

/// The tables of a surface.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Form<'a> {
    /// Both sides are equal.
    Symmetric(Symmetric<'a>),
    /// Each side has its own.
    Asymmetric(Asymmetric<'a>),
}

/// A surface as its drawing gives it.
#[derive(Debug, Clone, PartialEq)]
pub struct SurfaceDrawing<'a> {
    /// Height at which it begins.
    pub from_mm: f64,
    /// Height at which it ends.
    pub to_mm: f64,
    /// Its tables.
    pub form: Form<'a>,
    /// Half-width of the thrust panel and of the minor thrust panel, beyond which there is no surface; none: all round.
    pub panel_deg: Option<(f64, f64)>,
    /// Coating, per side; none without.
    pub coating_mm: Option<f64>,
    /// Where there is no metal or no coating.
    pub windows: Vec<Window>,
}

/// Both sides of a surface meet on the pin axis to this, in mm: rounding of printed tables is far above, rounding of arithmetic far below.
const MEET: f64 = 1e-9;

impl Surface {
    /// A surface with two equal sides, all round and without coating, from the tables of its drawing.
    ///
    /// # Errors
    /// With the place in the tables (`ovality/values_mm/2`) when a number is not finite or impossible, when heights do not rise, or when a
    /// table does not reach from `from_mm` to `to_mm`.
    pub fn symmetric(name: &str, from_mm: f64, to_mm: f64, drawing: &Symmetric<'_>) -> Result<Self, Error> {
        let span = checked_span(from_mm, to_mm)?;
        let (bound, sign) = counted(drawing.counted);
        let side = Side {
            barrel: curve("barrel", &drawing.barrel, &bound, sign / 2.0, span)?,
            ovality: curve("ovality", &drawing.ovality, &bounds::OVALITY, 0.5, span)?,
            fourth: fourth("double_ovality", drawing.double_ovality.as_ref(), 0.5, span)?,
        };
        Surface::of_sides(name, from_mm, to_mm, side.clone(), side)
    }

    /// A surface with two different sides, all round and without coating, from the radii along three lines.
    ///
    /// # Errors
    /// As [`Surface::symmetric`].
    pub fn asymmetric(name: &str, from_mm: f64, to_mm: f64, drawing: &Asymmetric<'_>) -> Result<Self, Error> {
        let span = checked_span(from_mm, to_mm)?;
        let (bound, sign) = counted(drawing.counted);
        let pin_axis = curve("pin_axis", &drawing.pin_axis, &bound, sign, span)?;
        let side = |field: &str, table: &Table<'_>, fourth_field: &str, added: Option<&Table<'_>>| {
            let barrel = curve(field, table, &bound, sign, span)?;
            let ovality = barrel.plus(-1.0, &pin_axis).map_err(|e| e.at(field))?;
            Ok(Side { ovality, barrel, fourth: fourth(fourth_field, added, 1.0, span)? })
        };
        let (major, minor) = (drawing.thrust_fourth.as_ref(), drawing.minor_thrust_fourth.as_ref());
        let thrust = side("thrust", &drawing.thrust, "thrust_fourth", major)?;
        let minor_thrust = side("minor_thrust", &drawing.minor_thrust, "minor_thrust_fourth", minor)?;
        Surface::of_sides(name, from_mm, to_mm, thrust, minor_thrust)
    }

    /// A surface of two sides that were made elsewhere, all round and without coating.
    ///
    /// # Errors
    /// When the heights are impossible or a curve does not reach them; [`ErrorKind::Contradiction`] when the sides do not meet on the pin
    /// axis, with the height and the difference.
    pub fn of_sides(
        name: &str,
        from_mm: f64,
        to_mm: f64,
        thrust: Side,
        minor_thrust: Side,
    ) -> Result<Self, Error> {
        let span = checked_span(from_mm, to_mm)?;
        for (side, field) in [(&thrust, "thrust"), (&minor_thrust, "minor_thrust")] {
            reaching(&format!("{field}/barrel"), &side.barrel, span)?;
            reaching(&format!("{field}/ovality"), &side.ovality, span)?;
            reaching(&format!("{field}/fourth"), &side.fourth, span)?;
        }
        let surface = Surface {
            name: name.to_owned(),
            from_mm,
            to_mm,
            thrust,
            minor_thrust,
            panel_deg: None,
            windows: Vec::new(),
            coating_mm: 0.0,
        };
        surface.check_meeting()?;
        Ok(surface)
    }

    /// A surface of a drawing.
    fn drawn(name: &str, drawing: &SurfaceDrawing<'_>) -> Result<Self, Error> {
        let SurfaceDrawing { from_mm, to_mm, .. } = *drawing;
        let mut surface = match &drawing.form {
            Form::Symmetric(form) => Surface::symmetric(name, from_mm, to_mm, form)?,
            Form::Asymmetric(form) => Surface::asymmetric(name, from_mm, to_mm, form)?,
        };
        if let Some((thrust, minor_thrust)) = drawing.panel_deg {
            surface = surface.with_panels(thrust, minor_thrust)?;
        }
        if let Some(coating) = drawing.coating_mm {
            surface = surface.with_coating(coating)?;
        }
        for (k, window) in drawing.windows.iter().enumerate() {
            surface = surface.with_window(*window).map_err(|e| e.under(&format!("windows/{k}")))?;
        }
        Ok(surface)
    }

    /// The same surface with panels of these half-widths, in degrees.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] or [`ErrorKind::NotFinite`] for a half-width above 90.
    pub fn with_panels(self, thrust_panel_deg: f64, minor_thrust_panel_deg: f64) -> Result<Self, Error> {
        bounds::PANEL.check("thrust_panel_deg", thrust_panel_deg)?;
        bounds::PANEL.check("minor_thrust_panel_deg", minor_thrust_panel_deg)?;
        Ok(Surface { panel_deg: Some((thrust_panel_deg, minor_thrust_panel_deg)), ..self })
    }

    /// The same surface with a coating, per side.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] or [`ErrorKind::NotFinite`] for an impossible thickness.
    pub fn with_coating(self, coating_mm: f64) -> Result<Self, Error> {
        bounds::COATING.check("coating_mm", coating_mm)?;
        Ok(Surface { coating_mm, ..self })
    }

    /// The same surface with one window more.
    ///
    /// # Errors
    /// When a number is not finite or impossible, or the window is not on the surface; [`ErrorKind::Contradiction`] for a bare window of a
    /// surface without coating.
    pub fn with_window(mut self, window: Window) -> Result<Self, Error> {
        bounds::ANGLE.check("from_deg", window.from_deg)?;
        bounds::ANGLE.check("to_deg", window.to_deg)?;
        for (field, height) in [("from_mm", window.from_mm), ("to_mm", window.to_mm)] {
            bounds::PISTON_HEIGHT.check(field, height)?;
            if height < self.from_mm || height > self.to_mm {
                let error =
                    Error::new(ErrorKind::OutOfRange, height.to_string(), "the window is not on the surface");
                return Err(error.value(height).limits(self.from_mm, self.to_mm, "mm").at(field));
            }
        }
        bounds::check_above("to_mm", window.to_mm, window.from_mm, "a window ends above its beginning")?;
        check_width(window.from_deg, window.to_deg, "a window")?;
        if window.kind == WindowKind::Bare && self.coating_mm == 0.0 {
            let reason = "the surface has no coating that a window could leave out";
            return Err(Error::new(ErrorKind::Contradiction, window.kind.word(), reason).at("kind"));
        }
        self.windows.push(window);
        Ok(self)
    }

    /// The side that an angle lies on.
    #[must_use]
    pub fn side(&self, angle_deg: f64) -> &Side {
        match turned(1, angle_deg).0 >= 0.0 {
            true => &self.thrust,
            false => &self.minor_thrust,
        }
    }

    /// Radius of the bare metal less half the gauge diameter, at a height that was checked.
    #[must_use]
    pub fn deviation_mm(&self, height_mm: f64, angle_deg: f64) -> f64 {
        self.side(angle_deg).deviation_mm(height_mm, angle_deg)
    }

    /// Refuses a skirt that changes more over its height than one can.
    fn check_slope(&self) -> Result<(), Error> {
        let rows = self.rows();
        let diameter =
            |height: f64| self.thrust.barrel.value(height) + self.minor_thrust.barrel.value(height);
        for (from, to) in rows.iter().zip(rows.iter().skip(1)) {
            let slope = (diameter(*to) - diameter(*from)) / (to - from) * 1000.0;
            bounds::BARREL.check("surfaces/0/barrel", slope.abs())?;
        }
        Ok(())
    }

    /// Refuses sides that do not meet on the pin axis at every height.
    fn check_meeting(&self) -> Result<(), Error> {
        let on_pin_axis = |side: &Side| side.barrel.plus(-1.0, &side.ovality);
        let apart = on_pin_axis(&self.thrust)?.plus(-1.0, &on_pin_axis(&self.minor_thrust)?)?;
        let (height, difference) = apart.largest(self.from_mm, self.to_mm, f64::abs);
        match difference.abs() <= MEET {
            true => Ok(()),
            false => {
                let reason = format!(
                    "the sides do not meet on the pin axis: at height {height} mm the thrust side stands {difference} mm above the other"
                );
                let error = Error::new(ErrorKind::Contradiction, difference.to_string(), reason);
                Err(error.value(difference).limits(-MEET, MEET, "mm").at("minor_thrust"))
            }
        }
    }
}

impl PistonShape {
    /// A piston from its surfaces: the skirt first, then the lands upward.
    ///
    /// The skirt is re-referenced, so that the diameter at the gauge point, angles 0 and 180, is the gauge diameter; lands are counted from the
    /// gauge diameter as they are.
    ///
    /// # Errors
    /// When there is no surface, the gauge point is not on the skirt, or surfaces overlap or are out of order; the error names the place
    /// (`surfaces/1/from_mm`).
    pub fn new(gauge_height_mm: f64, surfaces: Vec<Surface>) -> Result<Self, Error> {
        bounds::PISTON_HEIGHT.check("gauge_height_mm", gauge_height_mm)?;
        let mut surfaces = surfaces;
        let Some(skirt) = surfaces.first_mut() else {
            return Err(Error::new(ErrorKind::MissingField, "", "a piston has a skirt").at("surfaces"));
        };
        skirt.check_height(gauge_height_mm).map_err(|e| e.moved("gauge_height_mm".to_owned()))?;
        let [thrust, minor] =
            [&skirt.thrust, &skirt.minor_thrust].map(|side| side.barrel.value(gauge_height_mm));
        let reference = (thrust + minor) / 2.0;
        skirt.thrust.barrel = skirt.thrust.barrel.less(reference);
        skirt.minor_thrust.barrel = skirt.minor_thrust.barrel.less(reference);
        skirt.check_slope()?;
        for (k, pair) in surfaces.windows(2).enumerate() {
            if let [below, above] = pair
                && above.from_mm < below.to_mm
            {
                let reason = "surfaces follow each other upward";
                let error = Error::new(ErrorKind::OutOfOrder, above.from_mm.to_string(), reason);
                return Err(error.value(above.from_mm).at(&format!("surfaces/{}/from_mm", k + 1)));
            }
        }
        Ok(PistonShape { gauge_height_mm, surfaces })
    }

    /// A piston from the drawings of its surfaces: the skirt first, then the lands upward.
    ///
    /// # Errors
    /// As [`PistonShape::new`] and the constructors of [`Surface`]; the error names the place (`surfaces/0/barrel/values_mm/2`).
    pub fn from_drawings(gauge_height_mm: f64, surfaces: &[SurfaceDrawing<'_>]) -> Result<Self, Error> {
        let one = |(k, drawing): (usize, &SurfaceDrawing<'_>)| {
            let name = if k == 0 { "skirt".to_owned() } else { format!("land {k}") };
            Surface::drawn(&name, drawing).map_err(|e| e.under(&format!("surfaces/{k}")))
        };
        let surfaces = surfaces.iter().enumerate().map(one).collect::<Result<Vec<_>, _>>()?;
        PistonShape::new(gauge_height_mm, surfaces)
    }

    /// The surface at a height; where two meet, the lower.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] for a height without surface: beyond the tables, or in a groove; [`ErrorKind::NotFinite`].
    pub fn surface_at(&self, height_mm: f64) -> Result<&Surface, Error> {
        bounds::PISTON_HEIGHT.check("height_mm", height_mm)?;
        let found = self.surfaces.iter().find(|s| height_mm >= s.from_mm && height_mm <= s.to_mm);
        found.ok_or_else(|| {
            let low = self.surfaces.first().map_or(f64::NAN, |s| s.from_mm);
            let high = self.surfaces.last().map_or(f64::NAN, |s| s.to_mm);
            let error =
                Error::new(ErrorKind::OutOfRange, height_mm.to_string(), "the piston has no surface there");
            error.value(height_mm).limits(low, high, "mm").at("height_mm")
        })
    }
}

impl Surface {
    /// Refuses a height that is not on the surface.
    ///
    /// # Errors
    /// [`ErrorKind::OutOfRange`] or [`ErrorKind::NotFinite`].
    pub fn check_height(&self, height_mm: f64) -> Result<(), Error> {
        if bounds::PISTON_HEIGHT.judge(height_mm) == Verdict::Impossible {
            bounds::PISTON_HEIGHT.check("height_mm", height_mm)?;
        }
        match height_mm >= self.from_mm && height_mm <= self.to_mm {
            true => Ok(()),
            false => {
                let reason = format!("the {} does not reach there", self.name);
                let error = Error::new(ErrorKind::OutOfRange, height_mm.to_string(), reason);
                Err(error.value(height_mm).limits(self.from_mm, self.to_mm, "mm").at("height_mm"))
            }
        }
    }
}

/// Bound of a table of diameters against the gauge diameter, and the sign that makes its values rise with the diameter.
fn counted(counted: Counted) -> (Bound, f64) {
    let bound = bounds::DIAMETER_CHANGE;
    match counted {
        Counted::Above => (bound, 1.0),
        Counted::Below => (bound.negative(), -1.0),
    }
}

fn checked_span(from_mm: f64, to_mm: f64) -> Result<(f64, f64), Error> {
    bounds::PISTON_HEIGHT.check("from_mm", from_mm)?;
    bounds::PISTON_HEIGHT.check("to_mm", to_mm)?;
    bounds::check_above("to_mm", to_mm, from_mm, "a surface ends above its beginning")?;
    Ok((from_mm, to_mm))
}

/// Refuses a curve that does not reach over a surface.
fn reaching(field: &str, curve: &Curve, (from_mm, to_mm): (f64, f64)) -> Result<(), Error> {
    let ends = curve.check(from_mm).and_then(|()| curve.check(to_mm));
    ends.map_err(|e| e.moved(field.to_owned()))
}

/// The curve through the rows of a table, each value times `factor`, over a surface.
fn curve(
    field: &str,
    table: &Table<'_>,
    bound: &Bound,
    factor: f64,
    span: (f64, f64),
) -> Result<Curve, Error> {
    for (k, height) in table.heights_mm.iter().enumerate() {
        bounds::PISTON_HEIGHT.check(&format!("{field}/heights_mm/{k}"), *height)?;
    }
    for (k, value) in table.values_mm.iter().enumerate() {
        bound.check(&format!("{field}/values_mm/{k}"), *value)?;
    }
    let values: Vec<f64> = table.values_mm.iter().map(|v| v * factor).collect();
    let curve = Curve::through(table.heights_mm, &values).map_err(|e| {
        let place = e.field().replace("places", "heights_mm").replace("values", "values_mm");
        e.moved(format!("{field}/{place}"))
    })?;
    reaching(field, &curve, span)?;
    Ok(curve)
}

fn fourth(field: &str, table: Option<&Table<'_>>, factor: f64, span: (f64, f64)) -> Result<Curve, Error> {
    let constant = Ok(Curve::constant(0.0));
    table.map_or(constant, |table| curve(field, table, &bounds::DOUBLE_OVALITY, factor, span))
}
