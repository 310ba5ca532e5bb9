//! The common numbers as functions of plain doubles, for hosts that cannot carry units: the unit is the suffix of every
//! name. C, Python, sheets and SQL call these; the same inputs give the same bits everywhere.
//!
//! Each function is written once, in the block below. From it come the function itself, its row in [`TABLE`], and from the table the shapes
//! that other hosts call: of one row, of columns, and with NaN in place of an error.

use crate::bounds;
use crate::clearance::press_fit::{self, PressFit, PressFitParts};
use crate::clearance::{self, crank, pin, ring};
use crate::decision;
use crate::error::{Error, ErrorKind};
use crate::measurement::distribution;
use crate::plan::machining::{self, WarmGauging};
use crate::quantity::{self, Expansion, Temperature, from_mm, in_mm};
use crate::shape::deck::{self, Chamber};
use crate::size::{self, Condition, SizeAt20, micrometer_size_at_20};

/// A function of each row, compiled for that function.
type Each = fn(&[Column<'_>], &mut [f64], Option<&mut [i32]>) -> Result<(), Error>;

/// A function of the table.
#[derive(Debug, Clone, Copy)]
pub struct Function {
    /// Its name, which ends in the unit of what it gives; that of a pure number has none.
    pub name: &'static str,
    /// Names of its parameters; each ends in its unit.
    pub parameters: &'static [&'static str],
    lines: &'static [&'static str],
    call: fn(&[f64]) -> Result<f64, Error>,
    each: Each,
    first_refused: fn(&[Column<'_>], usize, usize) -> Option<Error>,
}

/// Values of a parameter, row by row.
#[derive(Debug, Clone, Copy)]
pub struct Column<'a> {
    /// The numbers.
    pub values: &'a [f64],
    /// Numbers from a row to the next; 0 gives every row the first number.
    pub stride: usize,
}

impl Column<'_> {
    /// Does it have so many rows?
    fn reaches(&self, rows: usize) -> bool {
        let last = rows.checked_sub(1).map(|last| last.checked_mul(self.stride));
        last.is_none_or(|last| last.is_some_and(|last| last < self.values.len()))
    }

    /// The number of a row that it reaches.
    #[inline(always)]
    fn at(&self, row: usize) -> f64 {
        self.values.get(row * self.stride).copied().unwrap_or(f64::NAN)
    }
}

impl Function {
    /// What it computes, its ranges and its source.
    #[must_use]
    pub fn meaning(&self) -> String {
        self.lines.iter().map(|line| line.trim()).collect::<Vec<_>>().join("\n")
    }

    /// The function of one row.
    ///
    /// # Errors
    /// As the function itself; [`ErrorKind::Contradiction`] when the numbers are not as many as its parameters.
    pub fn call(&self, values: &[f64]) -> Result<f64, Error> {
        (self.call)(values)
    }

    /// The function of each row.
    ///
    /// With statuses each row gets its own: 0, or the number of the kind of refusal ([`ErrorKind::code`]) with NaN as its result. Without, the first
    /// refused row refuses the call, and nothing is written.
    ///
    /// # Errors
    /// [`ErrorKind::Contradiction`] when columns or statuses are too short; nothing is written then. Without statuses that of the first refused row, with
    /// parameter and place as its field: `bore_mm/3`.
    pub fn each(
        &self,
        columns: &[Column<'_>],
        out: &mut [f64],
        status: Option<&mut [i32]>,
    ) -> Result<(), Error> {
        self.check(columns, out.len())?;
        if status.as_ref().is_some_and(|status| status.len() != out.len()) {
            return Err(wrong_count("status"));
        }
        (self.each)(columns, out, status)
    }

    /// Refuses so many rows because of one of them; `first` is the place of the first row that is given.
    ///
    /// # Errors
    /// That of the first refused row, with parameter and place as its field; [`ErrorKind::Contradiction`] when columns are too short.
    pub fn check_rows(&self, columns: &[Column<'_>], rows: usize, first: usize) -> Result<(), Error> {
        self.check(columns, rows)?;
        (self.first_refused)(columns, rows, first).map_or(Ok(()), Err)
    }

    fn check(&self, columns: &[Column<'_>], rows: usize) -> Result<(), Error> {
        if columns.len() != self.parameters.len() {
            return Err(wrong_count("columns"));
        }
        let mut short = self.parameters.iter().zip(columns).filter(|(_, column)| !column.reaches(rows));
        short.next().map_or(Ok(()), |(parameter, _)| Err(wrong_count(parameter)))
    }
}

fn wrong_count(field: &str) -> Error {
    Error::new(ErrorKind::Contradiction, "", "not as many as the function and its rows need").at(field)
}

/// A row of the columns, which reach it.
#[inline(always)]
fn gathered<const N: usize>(columns: &[Column<'_>; N], row: usize) -> [f64; N] {
    columns.each_ref().map(|column| column.at(row))
}

/// One loop for each function, so that it is compiled into it.
fn each<const N: usize>(
    function: impl Fn([f64; N]) -> Result<f64, Error>,
    columns: &[Column<'_>],
    out: &mut [f64],
    status: Option<&mut [i32]>,
) -> Result<(), Error> {
    let columns: [Column<'_>; N] = columns.try_into().map_err(|_| wrong_count("columns"))?;
    let Some(status) = status else {
        if let Some(error) = first_refused(&function, &columns, out.len(), 0) {
            return Err(error);
        }
        for (row, out) in out.iter_mut().enumerate() {
            *out = function(gathered(&columns, row))?;
        }
        return Ok(());
    };
    for (row, (out, status)) in out.iter_mut().zip(status).enumerate() {
        (*out, *status) = match function(gathered(&columns, row)) {
            Ok(value) => (value, 0),
            Err(error) => (f64::NAN, error.kind().code()),
        };
    }
    Ok(())
}

fn first_refused<const N: usize>(
    function: impl Fn([f64; N]) -> Result<f64, Error>,
    columns: &[Column<'_>],
    rows: usize,
    first: usize,
) -> Option<Error> {
    let columns: [Column<'_>; N] = columns.try_into().ok()?;
    (0..rows).find_map(|row| Some(function(gathered(&columns, row)).err()?.in_row(first + row)))
}

macro_rules! flat {
    ($($(#[doc = $line:literal])+ fn $name:ident($($parameter:ident),+) $body:block)+) => {
        $($(#[doc = $line])+
        ///
        /// # Errors
        /// When a number is not finite or impossible; the error names the parameter, the value and the limits.
        #[inline]
        #[allow(clippy::too_many_arguments, reason = "the functions of hosts without structures")]
        pub fn $name($($parameter: f64),+) -> Result<f64, Error> $body)+

        /// Every function as a value.
        #[allow(non_upper_case_globals, reason = "a row has the name of its function")]
        pub mod row {
            use super::{Function, each, first_refused};

            $(#[doc = concat!("[`super::", stringify!($name), "`]")]
            pub static $name: Function = const {
                const PARAMETERS: &[&str] = &[$(stringify!($parameter)),+];
                Function {
                name: stringify!($name),
                parameters: PARAMETERS,
                lines: &[$($line),+],
                call: |values| match values {
                    &[$($parameter),+] => super::$name($($parameter),+),
                    _ => Err(super::wrong_count("values")),
                },
                each: |columns, out, status| {
                    let function = |[$($parameter),+]: [f64; PARAMETERS.len()]| super::$name($($parameter),+);
                    each(function, columns, out, status)
                },
                first_refused: |columns, rows, first| {
                    let function = |[$($parameter),+]: [f64; PARAMETERS.len()]| super::$name($($parameter),+);
                    first_refused(function, columns, rows, first)
                },
                }
            };)+
        }

        /// Every function, in the order of the work. New ones stand at the end: the places are the numbers of C.
        pub static TABLE: &[&Function] = &[$(&row::$name),+];
    };
}

#[inline]
fn condition(temperature_c: f64, expansion_per_k: f64) -> Condition {
    Condition {
        temperature: Temperature::from_celsius(temperature_c),
        expansion: Expansion::from_per_kelvin(expansion_per_k),
    }
}

/// A size at 20 C in mm, with `field` named when it is impossible.
#[inline]
fn declared(field: &str, mm: f64) -> Result<SizeAt20, Error> {
    bounds::BORE.check(field, mm)?;
    SizeAt20::declared(from_mm(mm))
}

/// A press fit of one interference and one friction: both ends of its ranges are the same number.
fn pressed(
    [
        pin_mm,
        pin_hole_mm,
        eye_mm,
        width_mm,
        interference_mm,
        smoothing_mm,
        friction,
        pin_modulus_mpa,
        pin_poisson,
        eye_modulus_mpa,
        eye_poisson,
    ]: [f64; 11],
) -> Result<PressFit, Error> {
    bounds::INTERFERENCE.check("interference_mm", interference_mm)?;
    bounds::FRICTION.check("friction", friction)?;
    press_fit::press_fit(&PressFitParts {
        pin_mm,
        pin_hole_mm,
        eye_mm,
        width_mm,
        interference_least_mm: interference_mm,
        interference_most_mm: interference_mm,
        smoothing_mm,
        friction_least: friction,
        friction_most: friction,
        pin_modulus_mpa,
        pin_poisson,
        eye_modulus_mpa,
        eye_poisson,
    })
}

flat! {
    /// Size at 20 C from the reading of a micrometer or caliper, in mm.
    ///
    /// (reading - zero_error) (1 + a_gauge (t_gauge - 20)) / (1 + a_part (t_part - 20)). Temperatures from -5 C to 60 C, mean
    /// coefficients from 20 C between 1e-7 and 1e-4 per kelvin. Source: ISO 1:2022 and the definition of strain.
    fn size_at_20_mm(
        reading_mm,
        zero_error_mm,
        gauge_temperature_c,
        gauge_expansion_per_k,
        part_temperature_c,
        part_expansion_per_k
    ) {
        let gauge = condition(gauge_temperature_c, gauge_expansion_per_k);
        let part = condition(part_temperature_c, part_expansion_per_k);
        let size = micrometer_size_at_20(from_mm(reading_mm), from_mm(zero_error_mm), gauge, part)?;
        Ok(in_mm(size.diameter()))
    }

    /// Clearance at 20 C in mm, over the diameter: bore - piston; negative is interference.
    fn bench_clearance_mm(bore_mm, piston_mm) {
        let (bore, piston) = (declared("bore_mm", bore_mm)?, declared("piston_mm", piston_mm)?);
        Ok(in_mm(clearance::bench(bore, piston).diametral()))
    }

    /// Clearance in mm of freely growing parts, over the diameter, from sizes at 20 C.
    ///
    /// bore (1 + a_bore (t_bore - 20)) - piston (1 + a_piston (t_piston - 20)). Temperatures from -40 C to 450 C. It is not a
    /// verdict: skirts are elastic, and engines run for years with a free clearance below zero. Source: definition of strain.
    fn running_clearance_mm(
        bore_mm,
        bore_temperature_c,
        bore_expansion_per_k,
        piston_mm,
        piston_temperature_c,
        piston_expansion_per_k
    ) {
        let (bore, piston) = (declared("bore_mm", bore_mm)?, declared("piston_mm", piston_mm)?);
        let bore_state = condition(bore_temperature_c, bore_expansion_per_k);
        let piston_state = condition(piston_temperature_c, piston_expansion_per_k);
        clearance::running(bore, bore_state, piston, piston_state).map(|c| in_mm(c.diametral()))
    }

    /// End gap in a bore, in mm, of a ring whose gap was measured in a gauge or in another bore: gap + pi (bore - gauge).
    ///
    /// Refused when gauge and bore are more than 2 % apart.
    fn ring_gap_in_bore_mm(gap_mm, gauge_mm, bore_mm) {
        ring::gap_in_bore_mm(gap_mm, gauge_mm, bore_mm)
    }

    /// Least cold gap, in mm, that leaves `least_hot_gap_mm` with bore and ring at their temperatures.
    ///
    /// Below zero the bore opens by more than the ring grows, and heat asks for no gap at all.
    fn ring_least_cold_gap_mm(
        least_hot_gap_mm,
        bore_mm,
        bore_temperature_c,
        bore_expansion_per_k,
        ring_temperature_c,
        ring_expansion_per_k
    ) {
        ring::least_cold_gap_mm(
            least_hot_gap_mm,
            bore_mm,
            bore_temperature_c,
            bore_expansion_per_k,
            ring_temperature_c,
            ring_expansion_per_k,
        )
    }

    /// Side clearance of a ring in its groove, in mm; negative is a ring that does not enter. Beyond 0.5 mm it is another ring.
    fn ring_side_clearance_mm(groove_width_mm, ring_width_mm) {
        ring::side_clearance_mm(groove_width_mm, ring_width_mm)
    }

    /// Room behind a ring that stands at the bore, in mm, on one side: (bore - root) / 2 - thickness.
    ///
    /// With the diameter of the land in place of the bore it is how far the ring, pushed in, lies below the land.
    fn ring_back_clearance_mm(bore_mm, groove_root_mm, ring_thickness_mm) {
        ring::back_clearance_mm(bore_mm, groove_root_mm, ring_thickness_mm)
    }

    /// Wear of a groove, in mm: its width where it is widest less its width when new.
    fn ring_groove_wear_mm(groove_width_mm, new_groove_width_mm) {
        ring::groove_wear_mm(groove_width_mm, new_groove_width_mm)
    }

    /// Width in mm, at a diameter, of a keystone groove whose flanks slope alike, from the size over two pins that lie in it
    /// opposite each other.
    fn keystone_groove_width_mm(over_pins_mm, pin_mm, included_angle_deg, at_diameter_mm) {
        ring::keystone_groove_width_mm(over_pins_mm, pin_mm, included_angle_deg, at_diameter_mm)
    }

    /// End gap in mm from a factor in per mille of the bore (never "per inch"), 0.5 to 14.
    fn ring_gap_by_factor_mm(bore_mm, per_mille) {
        ring::gap_by_factor_mm(bore_mm, per_mille)
    }

    /// Bend or twist of a rod as an angle in mrad, from its deviation over any base; the sign is kept.
    fn rod_angle_mrad(deviation_mm, base_mm) {
        pin::rod_angle_mrad(deviation_mm, base_mm)
    }

    /// What an angle of a rod makes over a length, in mm: a piston's skew over its height, for example.
    fn rod_skew_mm(angle_mrad, length_mm) {
        pin::rod_skew_mm(angle_mrad, length_mm)
    }

    /// Volume in cm3 between top land and bore, down to the first ring.
    fn top_land_crevice_cm3(bore_mm, land_mm, land_height_mm) {
        deck::top_land_crevice_cm3(bore_mm, land_mm, land_height_mm)
    }

    /// How deep below the deck a place of the piston is, in mm: deck clearance + (crown - place) + travel; heights up from the bottom edge of
    /// the skirt.
    fn depth_in_bore_mm(deck_clearance_mm, crown_height_mm, height_mm, travel_mm) {
        crank::depth_in_bore_mm(deck_clearance_mm, crown_height_mm, height_mm, travel_mm)
    }

    /// Length in mm from inches, -400 in to 400 in.
    ///
    /// A number of up to 15 digits and 12 decimals is converted exactly and rounded once: 2.4126 in is 61.28004 mm. Source:
    /// NIST SP 811 (2008), appendix B.
    fn inch_to_mm(length_inch) {
        quantity::inch_to_mm(length_inch)
    }

    /// Length in inches from mm, -10160 mm to 10160 mm.
    ///
    /// A number of up to 15 digits and 12 decimals is converted exactly and rounded once. Source: NIST SP 811 (2008), appendix B.
    fn mm_to_inch(length_mm) {
        quantity::mm_to_inch(length_mm)
    }

    /// Length in mm from thousandths of an inch, -400000 thou to 400000 thou.
    ///
    /// A number of up to 15 digits and 12 decimals is converted exactly and rounded once. Source: NIST SP 811 (2008), appendix B.
    fn thou_to_mm(length_thou) {
        quantity::thou_to_mm(length_thou)
    }

    /// Temperature in degrees Celsius from degrees Fahrenheit, -454 F to 2192 F; a difference of temperatures is another thing.
    ///
    /// A number of up to 15 digits and 12 decimals is converted exactly and rounded once: 80.6 F is 27 C. Source:
    /// NIST SP 811 (2008), appendix B.
    fn fahrenheit_to_c(temperature_fahrenheit) {
        quantity::fahrenheit_to_c(temperature_fahrenheit)
    }

    /// Temperature in degrees Fahrenheit from degrees Celsius, -270 C to 1200 C; a difference of temperatures is another thing.
    ///
    /// A number of up to 15 digits and 12 decimals is converted exactly and rounded once. Source: NIST SP 811 (2008), appendix B.
    fn c_to_fahrenheit(temperature_c) {
        quantity::c_to_fahrenheit(temperature_c)
    }

    /// Coefficient of expansion per kelvin from one per degree Fahrenheit, 1e-7 to 5e-5 per degree Fahrenheit: 1.8 times as much.
    ///
    /// A number of up to 15 digits and 12 decimals is converted exactly and rounded once. Source: NIST SP 811 (2008), appendix B.
    fn per_fahrenheit_to_per_k(expansion_per_fahrenheit) {
        quantity::per_fahrenheit_to_per_k(expansion_per_fahrenheit)
    }

    /// End gap in mm with bore and ring at their temperatures, -40 C to 450 C, from the gap at 20 C; below zero the ends butt.
    ///
    /// gap (1 + a_ring (t_ring - 20)) + pi bore (a_bore (t_bore - 20) - a_ring (t_ring - 20)). Source: hot circumference of the bore less
    /// the hot length of the ring.
    fn ring_hot_gap_mm(
        gap_mm,
        bore_mm,
        bore_temperature_c,
        bore_expansion_per_k,
        ring_temperature_c,
        ring_expansion_per_k
    ) {
        let gap = ring::hot_gap(
            gap_mm,
            bore_mm,
            bore_temperature_c,
            bore_expansion_per_k,
            ring_temperature_c,
            ring_expansion_per_k,
        )?;
        Ok(gap.gap_mm)
    }

    /// Clearance of a pin in a boss or in a bush at 20 C, in mm, over the diameter: hole - pin; negative is interference.
    ///
    /// Refused when it is not between -0.15 mm and 0.2 mm: another pin.
    fn pin_cold_clearance_mm(hole_mm, pin_mm) {
        pin::cold_clearance_mm(hole_mm, pin_mm)
    }

    /// Clearance in mm of a freely growing pin in a boss or in a bush, over the diameter, from sizes at 20 C.
    ///
    /// hole (1 + a_hole (t_hole - 20)) - pin (1 + a_pin (t_pin - 20)). Temperatures from -40 C to 450 C. A pressed bush grows by the
    /// coefficient of what holds it. Source: definition of strain.
    fn pin_hot_clearance_mm(
        hole_mm,
        hole_temperature_c,
        hole_expansion_per_k,
        pin_mm,
        pin_temperature_c,
        pin_expansion_per_k
    ) {
        let clearance = pin::pin_clearance(
            hole_mm,
            hole_temperature_c,
            hole_expansion_per_k,
            pin_mm,
            pin_temperature_c,
            pin_expansion_per_k,
        )?;
        Ok(clearance.hot_mm)
    }

    /// Pressure in MPa in the joint of a pin pressed into an eye; 0 when the smoothing takes all of the interference.
    ///
    /// Sizes are diameters at 20 C; a hole of 0 is a solid pin. Source: Lame, thick elastic tubes with free ends.
    fn press_fit_pressure_mpa(
        pin_mm,
        pin_hole_mm,
        eye_mm,
        interference_mm,
        smoothing_mm,
        pin_modulus_mpa,
        pin_poisson,
        eye_modulus_mpa,
        eye_poisson
    ) {
        press_fit::pressure_mpa(
            [pin_mm, pin_hole_mm, eye_mm],
            [interference_mm, smoothing_mm],
            [pin_modulus_mpa, pin_poisson],
            [eye_modulus_mpa, eye_poisson],
        )
    }

    /// Axial force in N at which a pin pressed into an eye slips: pi pin width pressure friction.
    ///
    /// The pressure is that of press_fit_pressure_mpa. Source: Coulomb friction over the joint.
    fn press_fit_force_n(
        pin_mm,
        pin_hole_mm,
        eye_mm,
        width_mm,
        interference_mm,
        smoothing_mm,
        friction,
        pin_modulus_mpa,
        pin_poisson,
        eye_modulus_mpa,
        eye_poisson
    ) {
        let fit = pressed([
            pin_mm,
            pin_hole_mm,
            eye_mm,
            width_mm,
            interference_mm,
            smoothing_mm,
            friction,
            pin_modulus_mpa,
            pin_poisson,
            eye_modulus_mpa,
            eye_poisson,
        ])?;
        Ok(fit.force_least_n)
    }

    /// Torque in N m at which a pin pressed into an eye slips: force pin / 2.
    ///
    /// The force is that of press_fit_force_n. Source: Coulomb friction at the radius of the joint.
    fn press_fit_torque_nm(
        pin_mm,
        pin_hole_mm,
        eye_mm,
        width_mm,
        interference_mm,
        smoothing_mm,
        friction,
        pin_modulus_mpa,
        pin_poisson,
        eye_modulus_mpa,
        eye_poisson
    ) {
        let fit = pressed([
            pin_mm,
            pin_hole_mm,
            eye_mm,
            width_mm,
            interference_mm,
            smoothing_mm,
            friction,
            pin_modulus_mpa,
            pin_poisson,
            eye_modulus_mpa,
            eye_poisson,
        ])?;
        Ok(fit.torque_least_nm)
    }

    /// Temperature in degrees Celsius to which the outer part is heated, the pin at 20 C, so that its hole opens by the interference and a
    /// clearance: 20 + (interference + clearance) / (a diameter).
    ///
    /// Clean steel colours from 249 C: too much heat. Source: free growth.
    fn assembly_temperature_c(diameter_mm, interference_mm, clearance_mm, expansion_per_k) {
        let heat =
            press_fit::assembly_temperature(diameter_mm, interference_mm, clearance_mm, expansion_per_k)?;
        Ok(heat.temperature_c)
    }

    /// From the deck down to the crown at top dead centre, in mm: block - (stroke / 2 + rod + compression height); negative when the crown
    /// stands above the deck.
    fn piston_deck_clearance_mm(block_height_mm, stroke_mm, rod_mm, compression_height_mm) {
        deck::deck_clearance_mm(block_height_mm, stroke_mm, rod_mm, compression_height_mm)
    }

    /// Swept volume in cm3 of one cylinder: pi bore^2 stroke / 4.
    fn swept_volume_cm3(bore_mm, stroke_mm) {
        deck::swept_volume_cm3(bore_mm, stroke_mm)
    }

    /// Compression ratio, a pure number: (swept + clearance volume) / clearance volume.
    ///
    /// A dome of the crown is a negative volume, a protrusion a negative deck clearance; 0 leaves the crevice at the top land out, as is usual.
    /// Refused when nothing is left above the piston.
    fn static_compression_ratio(
        bore_mm,
        stroke_mm,
        head_cm3,
        gasket_bore_mm,
        gasket_mm,
        deck_clearance_mm,
        crown_cm3,
        crevice_cm3
    ) {
        let compression = deck::compression_ratio(&Chamber {
            bore_mm,
            stroke_mm,
            head_cm3,
            gasket_bore_mm,
            gasket_mm,
            deck_clearance_mm,
            crown_cm3,
            crevice_cm3,
        })?;
        Ok(compression.ratio)
    }

    /// Travel of the piston in mm from top dead centre down, at a crank angle from -720 deg to 720 deg.
    ///
    /// The angle is 0 with the throw in line with the cylinder; an offset of the pin toward the major thrust side is positive. Source: slider-crank
    /// with an offset pin.
    fn piston_travel_mm(crank_radius_mm, rod_mm, pin_offset_mm, crank_angle_deg) {
        Ok(crank::piston_travel(crank_radius_mm, rod_mm, pin_offset_mm, crank_angle_deg)?.travel_mm)
    }

    /// Size in mm, at 20 C, to which the bore for a piston is finished: piston + clearance wanted on the bench.
    fn finish_size_mm(piston_mm, clearance_mm) {
        // what is left for the hone does not change where it ends
        Ok(machining::bore_sizes(piston_mm, clearance_mm, 0.0)?.finish_mm)
    }

    /// Size in mm, at 20 C, to which the bore for a piston is bored: piston + clearance wanted on the bench - what is left for the hone.
    fn boring_size_mm(piston_mm, clearance_mm, honing_mm) {
        Ok(machining::bore_sizes(piston_mm, clearance_mm, honing_mm)?.boring_mm)
    }

    /// Size of a bore at 20 C, in mm, from the deviation that a bore gauge set on a ring shows, positive when the bore is larger.
    ///
    /// (setting (1 + a_ring (t_ring - 20)) (1 + a_used (t_used - 20)) / (1 + a_set (t_set - 20)) + deviation) / (1 + a_block (t_block - 20)): the
    /// gauge when it was set, and when it is used. Temperatures from -5 C to 60 C. Source: ISO 1:2022 and the definition of strain.
    fn bore_size_at_20_mm(
        deviation_mm,
        setting_mm,
        ring_temperature_c,
        ring_expansion_per_k,
        set_temperature_c,
        set_expansion_per_k,
        used_temperature_c,
        used_expansion_per_k,
        block_temperature_c,
        block_expansion_per_k
    ) {
        let gauging = WarmGauging {
            setting_mm,
            ring: condition(ring_temperature_c, ring_expansion_per_k),
            set: condition(set_temperature_c, set_expansion_per_k),
            used: condition(used_temperature_c, used_expansion_per_k),
            block: condition(block_temperature_c, block_expansion_per_k),
        };
        machining::bore_size_at_20_mm(deviation_mm, &gauging)
    }

    /// Size in mm of a freely growing part at a temperature, from its size at 20 C: size (1 + a (t - 20)).
    ///
    /// Temperatures from -40 C to 450 C. Source: definition of strain.
    fn size_at_temperature_mm(size_mm, temperature_c, expansion_per_k) {
        size::size_at_temperature_mm(size_mm, temperature_c, expansion_per_k)
    }

    /// Probability that the true value lies within two limits, for a value with a normal error of a standard uncertainty.
    ///
    /// A value without uncertainty gives 1 or 0. Source: JCGM 106:2012, 7.2.2.
    fn probability_of_conformity(value_mm, standard_uncertainty_mm, lower_mm, upper_mm) {
        decision::probability_of_conformity(value_mm, standard_uncertainty_mm, lower_mm, upper_mm)
    }

    /// Coverage factor of Student's t for a coverage probability between 0 and 1. JCGM 100:2008, G.3.2.
    ///
    /// `dof` from 0.5; INFINITY gives that of the normal.
    fn coverage_factor(probability, dof) {
        distribution::coverage_factor(probability, dof)
    }
}
