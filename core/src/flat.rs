//! The common numbers as functions of plain doubles, for hosts that cannot carry units: the unit is the suffix of every
//! name. C, Python, sheets and SQL call these; the same inputs give the same bits everywhere.
//!
//! Each function is written once, in the block below. From it come the function itself, its row in [`TABLE`], and from the table the shapes
//! that other hosts call: of one row, of columns, and with NaN in place of an error.

use crate::bounds;
use crate::clearance::{self, crank, pin, ring};
use crate::error::{Error, ErrorKind};
use crate::quantity::{Expansion, Temperature, from_mm, in_mm};
use crate::shape::deck;
use crate::size::{Condition, SizeAt20, micrometer_size_at_20};

/// A function of each row, compiled for that function.
type Each = fn(&[Column<'_>], &mut [f64], Option<&mut [i32]>) -> Result<(), Error>;

/// A function of the table.
#[derive(Debug, Clone, Copy)]
pub struct Function {
    /// Its name, which ends in the unit of what it gives.
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

fn condition(temperature_c: f64, expansion_per_k: f64) -> Condition {
    Condition {
        temperature: Temperature::from_celsius(temperature_c),
        expansion: Expansion::from_per_kelvin(expansion_per_k),
    }
}

/// A size at 20 C in mm, with `field` named when it is impossible.
fn size(field: &str, mm: f64) -> Result<SizeAt20, Error> {
    bounds::BORE.check(field, mm)?;
    SizeAt20::declared(from_mm(mm))
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
        let (bore, piston) = (size("bore_mm", bore_mm)?, size("piston_mm", piston_mm)?);
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
        let (bore, piston) = (size("bore_mm", bore_mm)?, size("piston_mm", piston_mm)?);
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
}
