//! From the document to what is computed with: shapes, motion, temperatures, and the sources of uncertainty of all of them.

use super::document::{BoreShape, Diameter, Field, GrowthRatio, Motion, PistonShape, SurfaceShape};
use super::shapes::{heights, piston_shape};
use super::trace::{Spread, SurfaceSources};
use crate::bounds;
use crate::calc::{Calc, Measured};
use crate::clearance::hot::{self, SurfaceGrowth};
use crate::error::{Error, ErrorKind};
use crate::growth::field::{BoreField, PistonField};
use crate::growth::{Materials, duty};
use crate::job::document::Window;
use crate::job::{Entry, Given, Warning, Words, check_length};
use crate::measurement::Stated;
use crate::measurement::distribution::Distribution;
use crate::quantity::Length;
use crate::shape::bore::{self, Port};
use crate::shape::least::larger;
use crate::shape::piston;

/// What reading a document needs at hand.
pub(crate) struct Reader<'a> {
    pub(crate) calc: &'a mut Calc,
    pub(crate) materials: &'a Materials,
    pub(crate) warnings: &'a mut Vec<Warning>,
}

/// A piston with what its surfaces are made of.
#[derive(Debug, Clone)]
pub(crate) struct Shaped {
    pub(crate) shape: piston::PistonShape,
    pub(crate) growth: Vec<SurfaceGrowth>,
    pub(crate) surfaces: Vec<SurfaceSources>,
    pub(crate) spread: Option<Spread>,
    pub(crate) height: Given,
}

impl Reader<'_> {
    /// A diameter at 20 C with its uncertainty as a source of its own.
    pub(crate) fn diameter(
        &mut self,
        size: &Diameter,
        of: &str,
        bound: &bounds::Bound,
    ) -> Result<Measured, Error> {
        let uncertainty = (&bounds::SIZE_UNCERTAINTY, &size.expanded_uncertainty, &size.coverage_factor);
        let name = || format!("size of the {of}");
        crate::measurement::certified(self.calc, (&size.value, bound), uncertainty, name, self.warnings)
    }

    /// A half-width as one source for everything it is stated of.
    fn spread(&mut self, name: &str, error: &Stated) -> Spread {
        let source = self.calc.source(name.to_owned(), error.path(), Distribution::STANDARD_RECTANGULAR);
        Spread { source, standard: error.half_width(self.calc) }
    }

    fn form_spread(&mut self, name: &str, error: Option<&Entry<Length>>) -> Result<Option<Spread>, Error> {
        let Some(error) = error else {
            return Ok(None);
        };
        let given = error.read(&bounds::FORM_ERROR, self.warnings)?;
        Ok(Some(self.spread(name, &Stated::Typed(given))))
    }

    pub(crate) fn bore_shape(
        &mut self,
        shape: Option<&BoreShape>,
        diameter_mm: f64,
        error_name: &str,
    ) -> Result<(bore::BoreShape, Option<Spread>), Error> {
        let round = bore::BoreShape::round(diameter_mm)?;
        let Some(shape) = shape else {
            return Ok((round, None));
        };
        let place = shape.rows.first().map_or("", |row| row.depth.parent());
        let place = place.rsplit_once('/').map_or("", |(rows, _)| rows);
        let depths = self.depths(&shape.rows, |row| &row.depth)?;
        let mut radial = Vec::with_capacity(depths.len());
        for row in &shape.rows {
            radial.push(row.deviation.read(&bounds::BORE_FORM, self.warnings)?.value / 2.0);
        }
        let mut out = round.with_deviation(&depths, &radial).map_err(|e| e.moved(place.to_owned()))?;
        for (order, cosines, sines) in self.harmonics(shape)? {
            out =
                out.with_harmonic(order, &depths, &cosines, &sines).map_err(|e| e.moved(place.to_owned()))?;
        }
        for window in &shape.windows {
            out = self.port(out, window)?;
        }
        Ok((out, self.form_spread(error_name, shape.permissible_error.as_ref())?))
    }

    /// The bore with one opening more.
    fn port(&mut self, bore: bore::BoreShape, window: &Window) -> Result<bore::BoreShape, Error> {
        window.what.words()?;
        let port = Port {
            from_deg: window.from_angle.read(&bounds::ANGLE, self.warnings)?.value,
            to_deg: window.to_angle.read(&bounds::ANGLE, self.warnings)?.value,
            from_mm: window.from_depth.read(&bounds::DEPTH, self.warnings)?.value,
            to_mm: window.to_depth.read(&bounds::DEPTH, self.warnings)?.value,
        };
        bore.with_port(port).map_err(|e| {
            let of = if e.field() == "to_mm" { window.to_depth.path() } else { window.to_angle.path() };
            e.moved(of.to_owned())
        })
    }

    fn depths<R>(&mut self, rows: &[R], of: impl Fn(&R) -> &Entry<Length>) -> Result<Vec<f64>, Error> {
        heights(rows, of, &bounds::DEPTH, self.warnings)
    }

    /// Orders with their columns over depth.
    #[expect(clippy::type_complexity, reason = "an order and its two columns")]
    fn harmonics(&mut self, shape: &BoreShape) -> Result<Vec<(usize, Vec<f64>, Vec<f64>)>, Error> {
        let mut out: Vec<(usize, Vec<f64>, Vec<f64>)> = Vec::new();
        for (index, row) in shape.rows.iter().enumerate() {
            check_length(&row.harmonics, |h| &h.order)?;
            for harmonic in &row.harmonics {
                let order = harmonic.order.count(2, 32)? as usize;
                let cosine = harmonic.cos.read(&bounds::BORE_FORM, self.warnings)?.value;
                let sine = harmonic.sin.read(&bounds::BORE_FORM, self.warnings)?.value;
                match out.iter_mut().find(|(known, ..)| *known == order) {
                    Some((_, cosines, sines)) if cosines.len() == index => {
                        cosines.push(cosine);
                        sines.push(sine);
                    }
                    None if index == 0 => out.push((order, vec![cosine], vec![sine])),
                    Some((_, cosines, _)) if cosines.len() > index => {
                        return Err(harmonic.order.refuse(ErrorKind::Repeated, "this order stands twice"));
                    }
                    _ => {
                        let reason = "every row has the same orders; one that is absent has the parts 0 mm";
                        return Err(harmonic.order.refuse(ErrorKind::Contradiction, reason));
                    }
                }
            }
            if out.iter().any(|(_, cosines, _)| cosines.len() != index + 1) {
                let reason = "every row has the same orders; one that is absent has the parts 0 mm";
                return Err(row.depth.refuse(ErrorKind::Contradiction, reason));
            }
        }
        Ok(out)
    }

    /// A piston of that shape, of a skirt of that material.
    pub(crate) fn piston_shape(
        &mut self,
        shape: &PistonShape,
        gauge: &Given,
        skirt: usize,
        error_name: &str,
    ) -> Result<Shaped, Error> {
        let height = shape.height.read(&bounds::PISTON_HEIGHT, self.warnings)?;
        let cold = piston_shape(shape, gauge, self.warnings)?;
        let mut growth = Vec::with_capacity(shape.surfaces.len());
        let mut surfaces = Vec::with_capacity(shape.surfaces.len());
        for entry in &shape.surfaces {
            let (plain, sources) = self.growth(entry, skirt)?;
            growth.push(plain);
            surfaces.push(sources);
        }
        let spread = self.form_spread(error_name, shape.permissible_error.as_ref())?;
        Ok(Shaped { shape: cold, growth, surfaces, spread, height })
    }

    /// Shape of the original piston; without one of its own that of the piston, `own` with its spread, in its material.
    pub(crate) fn original_shape(
        &mut self,
        shape: Option<&PistonShape>,
        (own, spread): (&PistonShape, Option<Spread>),
        gauge: &Given,
        skirt: usize,
    ) -> Result<Shaped, Error> {
        if let Some(shape) = shape {
            return self.piston_shape(shape, gauge, skirt, "shape of the original piston");
        }
        let again = self.piston_shape(own, gauge, skirt, "shape of the piston")?;
        // the same tables: what is uncertain of the one is of the other
        Ok(Shaped { spread, ..again })
    }

    fn growth(
        &mut self,
        entry: &SurfaceShape,
        skirt: usize,
    ) -> Result<(SurfaceGrowth, SurfaceSources), Error> {
        let material = entry.material.as_ref().map_or(Ok(skirt), |name| self.materials.find(name))?;
        let law = self.materials.law(material)?;
        let Some(GrowthRatio { thrust, pin, permissible_error }) = &entry.growth_ratio else {
            return Ok((SurfaceGrowth::free(law), SurfaceSources { material, ratios: None }));
        };
        let thrust = thrust.read(&bounds::GROWTH_RATIO, self.warnings)?;
        let pin = pin.read(&bounds::GROWTH_RATIO, self.warnings)?;
        let error = permissible_error.read(&bounds::GROWTH_RATIO_ERROR, self.warnings)?;
        let name = format!("growth ratios of the {}", entry.name.text());
        let spread = self.spread(&name, &Stated::Typed(error));
        let plain = SurfaceGrowth::controlled(law, thrust.value, pin.value)?;
        Ok((plain, SurfaceSources { material, ratios: Some((thrust, pin, spread)) }))
    }

    pub(crate) fn motion(&mut self, motion: &Motion, height: &Given) -> Result<hot::Motion, Error> {
        let radius = motion.crank_radius.read(&bounds::CRANK_RADIUS, self.warnings)?;
        let rod = motion.rod_length.read(&bounds::ROD, self.warnings)?;
        let offset =
            motion.pin_offset.as_ref().map(|o| o.read(&bounds::PIN_OFFSET, self.warnings)).transpose()?;
        let deck = motion.deck_clearance.read(&bounds::DECK, self.warnings)?;
        let offset = offset.map_or(0.0, |o| o.value);
        hot::Motion::new(radius.value, rod.value, offset, deck.value, height.value)
            .map_err(|e| e.moved(motion.rod_length.path().to_owned()))
    }

    /// Temperatures of piston and bore, each with its error: those of the field that stands at `place`, or of its preset for a piston in its motion.
    pub(crate) fn field(
        &mut self,
        field: &Field,
        place: &str,
        of: (&Shaped, Option<&hot::Motion>),
    ) -> Result<Temperatures, Error> {
        if let Some(preset) = &field.preset {
            return self.preset(field, preset, place, of);
        }
        let absent = |name: &str| {
            let reason = "temperatures need this field, or a preset in place of all";
            Error::new(ErrorKind::MissingField, name, reason).at(&format!("{place}/{name}"))
        };
        let origin = field.origin.as_ref().ok_or_else(|| absent("origin"))?.words()?.to_owned();
        if field.piston.is_empty() || field.bore.is_empty() {
            return Err(absent(if field.piston.is_empty() { "piston" } else { "bore" }));
        }
        let zs = heights(&field.piston, |row| &row.height, &bounds::PISTON_HEIGHT, self.warnings)?;
        let ys = self.depths(&field.bore, |row| &row.depth)?;
        let (mut thrust, mut pin, mut wall) = (Vec::new(), Vec::new(), Vec::new());
        for row in &field.piston {
            thrust.push(row.thrust.read(&bounds::RUNNING_TEMPERATURE, self.warnings)?.value);
            pin.push(row.pin.read(&bounds::RUNNING_TEMPERATURE, self.warnings)?.value);
        }
        for row in &field.bore {
            wall.push(row.temperature.read(&bounds::RUNNING_TEMPERATURE, self.warnings)?.value);
        }
        let [of_piston, of_bore] = [
            (&field.piston_permissible_error, "piston_permissible_error"),
            (&field.bore_permissible_error, "bore_permissible_error"),
        ]
        .map(|(error, name)| error.as_ref().ok_or_else(|| absent(name)));
        let of_piston = of_piston?.read(&bounds::FIELD_ERROR, self.warnings)?;
        let of_bore = of_bore?.read(&bounds::FIELD_ERROR, self.warnings)?;
        let spreads = [Stated::Typed(of_piston), Stated::Typed(of_bore)];
        let piston = PistonField::through(&zs, &thrust, &pin);
        let bore = BoreField::through(&ys, &wall);
        let fields = (
            piston.map_err(|e| e.moved(format!("{place}/piston")))?,
            bore.map_err(|e| e.moved(format!("{place}/bore")))?,
        );
        Ok(self.temperatures(fields, spreads, origin, place))
    }

    /// The temperatures of an illustrative duty, which the report says they are.
    fn preset(
        &mut self,
        field: &Field,
        preset: &Entry<Words>,
        place: &str,
        (piston, motion): (&Shaped, Option<&hot::Motion>),
    ) -> Result<Temperatures, Error> {
        let typed = [
            ("piston", !field.piston.is_empty()),
            ("bore", !field.bore.is_empty()),
            ("piston_permissible_error", field.piston_permissible_error.is_some()),
            ("bore_permissible_error", field.bore_permissible_error.is_some()),
            ("origin", field.origin.is_some()),
        ];
        if let Some((name, _)) = typed.iter().find(|(_, there)| *there) {
            let reason = "the preset says it already";
            return Err(Error::new(ErrorKind::Contradiction, *name, reason).at(&format!("{place}/{name}")));
        }
        let duty = duty::named(preset.words()?).map_err(|e| e.moved(preset.path().to_owned()))?;
        let motion = motion.ok_or_else(|| {
            let reason = "the wall of a preset changes with depth, and crank, rod and deck are not known";
            Error::new(ErrorKind::MissingField, "", reason).at("/motion")
        })?;
        let path = preset.path();
        let (kind, text) = ("illustrative_temperatures".to_owned(), duty.words());
        self.warnings.push(Warning { kind, path: path.to_owned(), text: text.clone() });
        let surfaces = &piston.shape.surfaces;
        let skirt = surfaces.first().map_or((f64::NAN, f64::NAN), |s| (s.from_mm, s.to_mm));
        let crown = surfaces.last().map_or(f64::NAN, |s| larger(s.to_mm, piston.height.value));
        let lowest = motion.base_depth(motion.stroke_mm()) - skirt.0;
        let at_preset = |e: Error| e.moved(path.to_owned());
        let fields = (
            duty.piston_field(skirt, crown).map_err(at_preset)?,
            duty.bore_field(lowest).map_err(at_preset)?,
        );
        let cited = || Stated::Cited {
            value: duty.permissible_error_k,
            unit: "K",
            source: duty.source,
            path: path.to_owned(),
        };
        Ok(self.temperatures(fields, [cited(), cited()], text, place))
    }

    fn temperatures(
        &mut self,
        (piston, bore): (PistonField, BoreField),
        [of_piston, of_bore]: [Stated; 2],
        origin: String,
        place: &str,
    ) -> Temperatures {
        Temperatures {
            piston,
            bore,
            piston_spread: self.spread("temperatures of the piston", &of_piston),
            bore_spread: self.spread("temperatures of the bore", &of_bore),
            origin,
            place: place.to_owned(),
        }
    }
}

/// Temperatures of the running engine.
#[derive(Debug, Clone)]
pub(crate) struct Temperatures {
    pub(crate) piston: PistonField,
    pub(crate) bore: BoreField,
    pub(crate) piston_spread: Spread,
    pub(crate) bore_spread: Spread,
    pub(crate) origin: String,
    pub(crate) place: String,
}
