//! The clearance at one place again, by the formulas in turn, with every source of uncertainty and its working.

use crate::calc::{Calc, Figure, Measured, SourceId};
use crate::clearance::hot::{HotFit, PerSide, PistonRadius, Place, StrainAt};
use crate::error::{Error, ErrorKind};
use crate::growth::field::{Rise, Risen};
use crate::growth::{Grown, Materials};
use crate::job::Given;
use crate::shape::angle::turned;
use crate::shape::bore::{MeanRadius, WithHarmonic};
use crate::shape::curve::Curve;
use crate::shape::levels::Levels;
use crate::shape::piston::{Half, MeanPart, MinusHalf, Side};

/// A source of uncertainty with its standard uncertainty.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Spread {
    pub(crate) source: SourceId,
    pub(crate) standard: Figure,
}

/// How a surface grows, as it was read.
#[derive(Debug, Clone)]
pub(crate) struct SurfaceSources {
    pub(crate) material: usize,
    pub(crate) ratios: Option<(Given, Given, Spread)>,
}

impl SurfaceSources {
    /// Growth on the thrust and on the pin axis over that of the alloy; none of free growth.
    pub(crate) fn growth_ratios(&self, calc: &mut Calc) -> Option<[Measured; 2]> {
        let (thrust, pin, error) = self.ratios.as_ref()?;
        Some([("ratio_thrust", thrust), ("ratio_pin", pin)].map(|(symbol, given)| {
            let ratio = calc.given(symbol, given).into();
            calc.add_source(&ratio, error.source, error.standard)
        }))
    }
}

/// What the shape of a bore comes from.
#[derive(Debug, Clone)]
pub(crate) enum BoreSources {
    /// tables about its size, with their error
    Tables(Option<Spread>),
    /// what was read in it
    Read(Box<Levels>),
}

/// Everything a clearance is uncertain by.
#[derive(Debug, Clone)]
pub(crate) struct Sources {
    pub(crate) bore: Measured,
    pub(crate) bore_material: usize,
    pub(crate) bore_shape: BoreSources,
    pub(crate) bore_field: Option<Spread>,
    pub(crate) piston: Measured,
    pub(crate) piston_shape: Option<Spread>,
    pub(crate) piston_field: Option<Spread>,
    pub(crate) surfaces: Vec<SurfaceSources>,
    /// field of the temperatures, for a refusal
    pub(crate) field: String,
    /// field of the shape of the bore, for a refusal
    pub(crate) bore_place: String,
}

/// One clearance under way.
pub(crate) struct Trace<'a> {
    pub(crate) calc: &'a mut Calc,
    pub(crate) materials: &'a Materials,
    pub(crate) fit: &'a HotFit,
    pub(crate) sources: &'a Sources,
    pub(crate) rise: Rise,
}

impl Trace<'_> {
    /// Clearance on one side at a place.
    pub(crate) fn clearance(&mut self, place: &Place) -> Result<Measured, Error> {
        let bore = self.bore_hot(place)?;
        let piston = self.piston_hot(place)?;
        Ok(self.calc.apply(PerSide, [&bore, &piston]))
    }

    fn constant(&mut self, symbol: &str, value: f64, unit: &'static str, source: &str) -> Measured {
        self.calc.constant(symbol, value, unit, source).into()
    }

    fn uncertain(&mut self, value: &Measured, error: Option<Spread>) -> Measured {
        match error {
            Some(error) => self.calc.add_source(value, error.source, error.standard),
            None => value.clone(),
        }
    }

    /// A temperature of a field at a place, risen.
    fn temperature(&mut self, curve: &Curve, at: f64, k: f64, error: Option<Spread>) -> Measured {
        let place = self.calc.constant("x", at, "mm", "height or depth of the place");
        let field = curve.temperature(self.calc, place).into();
        let field = self.uncertain(&field, error);
        if k.to_bits() == 1.0_f64.to_bits() {
            return field;
        }
        let k = self.constant("k", k, "1", "factor on the rise of the temperatures");
        self.calc.apply(Risen, [&k, &field])
    }

    fn bore_hot(&mut self, place: &Place) -> Result<Measured, Error> {
        let sources = self.sources;
        let depth = place.depth_mm.unwrap_or(0.0);
        let radius = match &sources.bore_shape {
            BoreSources::Tables(error) => {
                let radius = self.bore_of_tables(depth, place.angle_deg);
                self.uncertain(&radius, *error)
            }
            BoreSources::Read(levels) => levels.radius(self.calc, depth, place.angle_deg),
        };
        let wall = &self.fit.parts().bore_field.wall_c;
        let t = self.temperature(wall, depth, self.rise.bore, sources.bore_field);
        let eps = self.materials.growth(self.calc, sources.bore_material, &t, &sources.field)?;
        Ok(self.calc.apply(Grown, [&radius, &eps]))
    }

    /// Radius of a bore at 20 C from its size and the tables of its shape.
    fn bore_of_tables(&mut self, depth: f64, angle_deg: f64) -> Measured {
        let shape = &self.fit.parts().bore;
        let at = self.calc.constant("y", depth, "mm", "depth of the place");
        let deviation = shape.deviation_mm.length(self.calc, at).into();
        let mut radius = self.calc.apply(MeanRadius, [&self.sources.bore, &deviation]);
        for harmonic in &shape.harmonics {
            let (cosine, sine) = turned(harmonic.order, angle_deg);
            let [cosine, sine] = [("cos_n", cosine), ("sin_n", sine)]
                .map(|(s, v)| self.constant(s, v, "1", "angle of the place"));
            let a = harmonic.cos_mm.length(self.calc, at).into();
            let b = harmonic.sin_mm.length(self.calc, at).into();
            radius = self.calc.apply(WithHarmonic, [&radius, &a, &cosine, &b, &sine]);
        }
        radius
    }

    fn piston_hot(&mut self, place: &Place) -> Result<Measured, Error> {
        let sources = self.sources;
        let parts = self.fit.parts();
        let known = (parts.piston.surfaces.get(place.surface), sources.surfaces.get(place.surface));
        let (Some(surface), Some(growth)) = known else {
            return Err(Error::new(ErrorKind::OutOfRange, place.surface.to_string(), "no such surface"));
        };
        let (cos_2, cos_4) = (turned(2, place.angle_deg).0, turned(4, place.angle_deg).0);
        let [cos_2, cos_4] =
            [("cos_2", cos_2), ("cos_4", cos_4)].map(|(s, v)| self.constant(s, v, "1", "angle of the place"));
        let [a, b, c] = self.coefficients(surface.side(place.angle_deg), place.height_mm);
        let coat = self.fit.coating_mm(place);
        let coat = self.constant("coat", coat, "mm", "coating at the place");
        let cold = self.calc.apply(PistonRadius, [&sources.piston, &a, &b, &c, &cos_2, &cos_4, &coat]);
        let cold = self.uncertain(&cold, sources.piston_shape);
        let (field, rise) = (&parts.piston_field, self.rise.piston);
        let thrust = self.temperature(&field.thrust_c, place.height_mm, rise, sources.piston_field);
        let pin = self.temperature(&field.pin_c, place.height_mm, rise, sources.piston_field);
        let thrust = self.materials.growth(self.calc, growth.material, &thrust, &sources.field)?;
        let pin = self.materials.growth(self.calc, growth.material, &pin, &sources.field)?;
        let [ratio_thrust, ratio_pin] = self.ratios(growth);
        let eps = self.calc.apply(StrainAt, [&ratio_thrust, &thrust, &ratio_pin, &pin, &cos_2]);
        Ok(self.calc.apply(Grown, [&cold, &eps]))
    }

    fn coefficients(&mut self, side: &Side, height: f64) -> [Measured; 3] {
        let at = self.calc.constant("z", height, "mm", "height of the place");
        let [barrel, ovality, fourth] =
            [&side.barrel, &side.ovality, &side.fourth].map(|curve| curve.length(self.calc, at));
        [
            self.calc.figure(MeanPart, [barrel, ovality, fourth]).into(),
            self.calc.figure(Half, [ovality]).into(),
            self.calc.figure(MinusHalf, [fourth]).into(),
        ]
    }

    fn ratios(&mut self, growth: &SurfaceSources) -> [Measured; 2] {
        growth.growth_ratios(self.calc).unwrap_or_else(|| {
            let free = self.constant("ratio", 1.0, "1", "free growth of the alloy");
            [free.clone(), free]
        })
    }
}
