//! Laws of expansion, the built-in materials, and the illustrative temperatures by duty.

use crate::array::{array, array_out, fitting};
use crate::error::{Failure, GaugepointError};
use crate::guard::{kept, status};
use crate::record::{Record, record};
use crate::status::{Text, terminated};
use crate::text;
use core::ffi::c_char;
use gaugepoint::ErrorKind;
use gaugepoint::growth::duty;
use gaugepoint::growth::library::{self, Coefficients};
use gaugepoint::growth::{Growth, InstantaneousCoefficient, Law, MeanCoefficient};
use gaugepoint::job::document::Confidence;
use gaugepoint::quantity::Temperature;

/// How far a source can be trusted.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointConfidence {
    /// From a standard, a handbook or a paper.
    Published = 1,
    /// From the maker of the part.
    Maker = 2,
    /// From experience or memory.
    Unverified = 3,
}

/// What the coefficients of a built-in material are.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointCoefficients {
    /// Means from 20 C to each temperature.
    Mean = 1,
    /// Instantaneous at each temperature.
    Instantaneous = 2,
}

/// Form of a law of expansion.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugepointLawForm {
    /// One mean coefficient from a base: `base_c`, `mean_per_k`, `from_c`, `to_c`.
    MeanCoefficient = 1,
    /// Mean coefficients from a base to each temperature: `base_c`, `temperatures_c`, `coefficients`.
    MeanTable = 2,
    /// Instantaneous coefficients at each temperature: `temperatures_c`, `coefficients`.
    InstantaneousTable = 3,
    /// An instantaneous coefficient that is a polynomial in kelvin: `coefficients`, `from_c`, `to_c`.
    InstantaneousPolynomial = 4,
    /// A strain that is a polynomial in kelvin: `coefficients`, `from_c`, `to_c`.
    StrainPolynomial = 5,
    /// Graphite iron from its structure: the three numbers of gaugepoint_growth_graphite_iron.
    GraphiteIron = 6,
    /// A built-in material: `name`, `name_length`.
    BuiltIn = 7,
}

/// A law of expansion, as the functions gaugepoint_growth_... have it; its form says which fields count. A plain structure; start it zeroed.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointLaw {
    /// A GaugepointLawForm.
    pub form: i32,
    /// Not used; 0.
    pub reserved: i32,
    /// Temperature the means start from.
    pub base_c: f64,
    /// The mean coefficient.
    pub mean_per_k: f64,
    /// Lowest temperature it holds at.
    pub from_c: f64,
    /// Highest temperature it holds at.
    pub to_c: f64,
    /// Rising temperatures of a table, `count` of them.
    pub temperatures_c: *const f64,
    /// Coefficients of a table per kelvin, or of a polynomial over kelvin from the constant up; `count` of them.
    pub coefficients: *const f64,
    /// How many there are.
    pub count: usize,
    /// Nodularity of graphite iron, in %.
    pub nodularity_percent: f64,
    /// Area fraction of graphite, in %.
    pub graphite_percent: f64,
    /// Pearlite over ferrite.
    pub pearlite_to_ferrite: f64,
    /// Name of a built-in material.
    pub name: *const c_char,
    /// Its length in bytes.
    pub name_length: usize,
}

/// What a law of expansion says of one temperature; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointGrowth {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// 1 when `mean_from_20_per_k` is given, else 0: at 20 C there is no mean from 20 C.
    pub has_mean: i32,
    /// 0.
    pub reserved: i32,
    /// Strain from 20 C: (L - L20) / L20.
    pub strain: f64,
    /// Instantaneous coefficient, (1 / L20) dL/dT.
    pub instantaneous_per_k: f64,
    /// Mean coefficient from 20 C.
    pub mean_from_20_per_k: f64,
}

// SAFETY: a size, two int32_t, doubles
unsafe impl Record for GaugepointGrowth {
    const SMALLEST: usize = 40;
}

/// A built-in material; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointMaterial {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// Name, as documents and gaugepoint_growth_built_in take it.
    pub name: *const c_char,
    /// Where the figures come from.
    pub source: *const c_char,
    /// A GaugepointConfidence.
    pub confidence: i32,
    /// A GaugepointCoefficients.
    pub coefficients: i32,
    /// Lowest temperature its law holds at.
    pub from_c: f64,
    /// Highest temperature its law holds at.
    pub to_c: f64,
    /// Half-width of the error of its coefficient.
    pub permissible_error_per_k: f64,
}

// SAFETY: a size, pointers, two int32_t, doubles
unsafe impl Record for GaugepointMaterial {
    const SMALLEST: usize = 56;
}

/// Illustrative temperatures of a duty; see RECORDS at the head. A fit document takes them by name.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointDuty {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// Name, as documents take it.
    pub name: *const c_char,
    /// Where the figures come from.
    pub source: *const c_char,
    /// A GaugepointConfidence.
    pub confidence: i32,
    /// 0.
    pub reserved: i32,
    /// Half-width of the error of all temperatures, in K.
    pub permissible_error_k: f64,
}

// SAFETY: a size, pointers, two int32_t, a double
unsafe impl Record for GaugepointDuty {
    const SMALLEST: usize = 40;
}

/// A coefficient of a built-in material at, or up to, a temperature. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointMaterialCell {
    /// The temperature.
    pub temperature_c: f64,
    /// The coefficient: a mean from 20 C, or instantaneous, as the material says.
    pub coefficient_per_k: f64,
}

/// Temperatures of a piston of a duty at a share of its height. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointDutyPistonRow {
    /// 0 at the bottom edge of the skirt, 1 at its top, 2 at the crown.
    pub at: f64,
    /// On the thrust axis.
    pub thrust_c: f64,
    /// On the pin axis.
    pub pin_c: f64,
}

/// Temperature of the wall of a duty at a share of its depth. A plain structure.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointDutyBoreRow {
    /// 0 at the deck, 1 at the lowest place the skirt comes to.
    pub at: f64,
    /// Mean of the wall.
    pub wall_c: f64,
}

impl From<Growth> for GaugepointGrowth {
    fn from(growth: Growth) -> Self {
        GaugepointGrowth {
            struct_size: size_of::<Self>(),
            has_mean: growth.mean_from_20.is_some().into(),
            reserved: 0,
            strain: growth.strain,
            instantaneous_per_k: growth.instantaneous.per_kelvin(),
            mean_from_20_per_k: growth.mean_from_20.map_or(f64::NAN, MeanCoefficient::per_kelvin),
        }
    }
}

pub(crate) fn c(celsius: f64) -> Temperature {
    Temperature::from_celsius(celsius)
}

fn mean_coefficient(base_c: f64, mean_per_k: f64, from_c: f64, to_c: f64) -> Result<Law, Failure> {
    let mean = MeanCoefficient::from_per_kelvin(mean_per_k);
    Ok(Law::mean_coefficient(c(base_c), mean, c(from_c), c(to_c))?)
}

fn mean_table(base_c: f64, temperatures_c: &[f64], means_per_k: &[f64]) -> Result<Law, Failure> {
    let means = means_per_k.iter().map(|a| MeanCoefficient::from_per_kelvin(*a));
    let rows: Vec<_> = temperatures_c.iter().map(|t| c(*t)).zip(means).collect();
    Ok(Law::mean_table(c(base_c), &rows)?)
}

fn instantaneous_table(temperatures_c: &[f64], instantaneous_per_k: &[f64]) -> Result<Law, Failure> {
    let instantaneous = instantaneous_per_k.iter().map(|a| InstantaneousCoefficient::from_per_kelvin(*a));
    let rows: Vec<_> = temperatures_c.iter().map(|t| c(*t)).zip(instantaneous).collect();
    Ok(Law::instantaneous_table(&rows)?)
}

/// # Safety
/// As [`text::name`].
unsafe fn built_in(name: *const c_char, name_length: usize) -> Result<Law, Failure> {
    // SAFETY: the caller's promise
    Ok(library::named(unsafe { text::name("name", name, name_length)? })?.law())
}

/// The caller's law.
///
/// # Safety
/// As the header says.
pub(crate) unsafe fn law(law: &GaugepointLaw) -> Result<Law, Failure> {
    // SAFETY: the caller's promise
    unsafe {
        let temperatures = || array("temperatures_c", law.temperatures_c, Some(law.count));
        let coefficients = || array("coefficients", law.coefficients, Some(law.count));
        match law.form {
            1 => mean_coefficient(law.base_c, law.mean_per_k, law.from_c, law.to_c),
            2 => mean_table(law.base_c, temperatures()?, coefficients()?),
            3 => instantaneous_table(temperatures()?, coefficients()?),
            4 => Ok(Law::instantaneous_polynomial(coefficients()?, c(law.from_c), c(law.to_c))?),
            5 => Ok(Law::strain_polynomial(coefficients()?, c(law.from_c), c(law.to_c))?),
            6 => {
                let structure = (law.nodularity_percent, law.graphite_percent, law.pearlite_to_ferrite);
                Ok(Law::graphite_iron(structure.0, structure.1, structure.2)?)
            }
            7 => built_in(law.name, law.name_length),
            other => Err(Failure::choice("form", other, "1, 2, 3, 4, 5, 6, 7")),
        }
    }
}

/// One mean coefficient from a base, which holds between two temperatures.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_growth_mean_coefficient(
    base_c: f64,
    mean_per_k: f64,
    from_c: f64,
    to_c: f64,
    temperature_c: f64,
    out: *mut GaugepointGrowth,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            Ok(mean_coefficient(base_c, mean_per_k, from_c, to_c)?.at(c(temperature_c))?.into())
        })
    }
}

/// Mean coefficients from a base to each of `count` rising temperatures, which span the range; straight between them.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_growth_mean_table(
    base_c: f64,
    temperatures_c: *const f64,
    means_per_k: *const f64,
    count: usize,
    temperature_c: f64,
    out: *mut GaugepointGrowth,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            let temperatures = array("temperatures_c", temperatures_c, Some(count))?;
            let means = array("means_per_k", means_per_k, Some(count))?;
            Ok(mean_table(base_c, temperatures, means)?.at(c(temperature_c))?.into())
        })
    }
}

/// Instantaneous coefficients at each of `count` rising temperatures, which span the range; straight between them, integrated from 20 C.
///
/// `mean_from_20_per_k` is what a table of means from 20 C would say.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_growth_instantaneous_table(
    temperatures_c: *const f64,
    instantaneous_per_k: *const f64,
    count: usize,
    temperature_c: f64,
    out: *mut GaugepointGrowth,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            let temperatures = array("temperatures_c", temperatures_c, Some(count))?;
            let instantaneous = array("instantaneous_per_k", instantaneous_per_k, Some(count))?;
            Ok(instantaneous_table(temperatures, instantaneous)?.at(c(temperature_c))?.into())
        })
    }
}

/// An instantaneous coefficient `c0 + c1 T + c2 T^2 + ...` per kelvin, T in kelvin, of `count` numbers, integrated from 20 C.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_growth_instantaneous_polynomial(
    kelvin_coefficients: *const f64,
    count: usize,
    from_c: f64,
    to_c: f64,
    temperature_c: f64,
    out: *mut GaugepointGrowth,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            let coefficients = array("kelvin_coefficients", kelvin_coefficients, Some(count))?;
            let law = Law::instantaneous_polynomial(coefficients, c(from_c), c(to_c))?;
            Ok(law.at(c(temperature_c))?.into())
        })
    }
}

/// A strain `c0 + c1 T + c2 T^2 + ...`, T in kelvin, of `count` numbers, from any length; it is brought to the length at 20 C.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_growth_strain_polynomial(
    kelvin_coefficients: *const f64,
    count: usize,
    from_c: f64,
    to_c: f64,
    temperature_c: f64,
    out: *mut GaugepointGrowth,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            let coefficients = array("kelvin_coefficients", kelvin_coefficients, Some(count))?;
            let law = Law::strain_polynomial(coefficients, c(from_c), c(to_c))?;
            Ok(law.at(c(temperature_c))?.into())
        })
    }
}

/// Compacted or spheroidal graphite iron from its structure, by a published regression: nodularity in %, area fraction of graphite in %, ratio
/// of pearlite to ferrite. 20 C to 500 C; unverified.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_growth_graphite_iron(
    nodularity_percent: f64,
    graphite_percent: f64,
    pearlite_to_ferrite: f64,
    temperature_c: f64,
    out: *mut GaugepointGrowth,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            let law = Law::graphite_iron(nodularity_percent, graphite_percent, pearlite_to_ferrite)?;
            Ok(law.at(c(temperature_c))?.into())
        })
    }
}

/// A built-in material by its name, of `name_length` bytes.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_growth_built_in(
    name: *const c_char,
    name_length: usize,
    temperature_c: f64,
    out: *mut GaugepointGrowth,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || Ok(built_in(name, name_length)?.at(c(temperature_c))?.into()))
    }
}

/// The built-in materials one after the other: call with 0, 1, 2 ... until it fails with GAUGEPOINT_STATUS_OUT_OF_RANGE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_material(
    index: usize,
    out: *mut GaugepointMaterial,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || match (library::ALL.get(index), TEXTS.get(index)) {
            (Some(row), Some(texts)) => Ok(row_of(row, texts)),
            _ => Err(no_more()),
        })
    }
}

/// The coefficients of the built-in material at `index`, in rising order of their temperatures; the first is continued down to `from_c`.
///
/// `cells` has `room`, for which 32 is enough; `count` gets their number, which is kept on failure.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_material_cells(
    index: usize,
    cells: *mut GaugepointMaterialCell,
    room: usize,
    count: *mut usize,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, (array_out("cells", cells, room), kept("count", count)), || {
            let cells = library::ALL.get(index).ok_or_else(no_more)?.cells.iter();
            counted(
                room,
                cells.map(|cell| GaugepointMaterialCell {
                    temperature_c: cell.temperature_c,
                    coefficient_per_k: cell.coefficient_per_k,
                }),
            )
        })
    }
}

/// The duties with illustrative temperatures one after the other: call with 0, 1, 2 ... until it fails with GAUGEPOINT_STATUS_OUT_OF_RANGE.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_duty(
    index: usize,
    out: *mut GaugepointDuty,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || match (duty::ALL.get(index), DUTIES.get(index)) {
            (Some(row), Some([name, source])) => Ok(GaugepointDuty {
                struct_size: size_of::<GaugepointDuty>(),
                name: name.as_ptr().cast(),
                source: source.as_ptr().cast(),
                confidence: confidence(row.confidence) as i32,
                reserved: 0,
                permissible_error_k: row.permissible_error_k,
            }),
            _ => Err(no_more()),
        })
    }
}

/// The temperatures of the piston of the duty at `index`, upward. They are illustrative: no engine need have them.
///
/// `rows` has `room`, for which 32 is enough; `count` gets their number, which is kept on failure.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_duty_piston(
    index: usize,
    rows: *mut GaugepointDutyPistonRow,
    room: usize,
    count: *mut usize,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, (array_out("rows", rows, room), kept("count", count)), || {
            let rows = duty::ALL.get(index).ok_or_else(no_more)?.piston.iter();
            counted(
                room,
                rows.map(|row| GaugepointDutyPistonRow {
                    at: row.at,
                    thrust_c: row.thrust_c,
                    pin_c: row.pin_c,
                }),
            )
        })
    }
}

/// The temperatures of the wall of the duty at `index`, downward. As gaugepoint_duty_piston.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_duty_bore(
    index: usize,
    rows: *mut GaugepointDutyBoreRow,
    room: usize,
    count: *mut usize,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, (array_out("rows", rows, room), kept("count", count)), || {
            let rows = duty::ALL.get(index).ok_or_else(no_more)?.bore.iter();
            counted(room, rows.map(|row| GaugepointDutyBoreRow { at: row.at, wall_c: row.wall_c }))
        })
    }
}

/// The refusal of an index beyond a table.
fn no_more() -> Failure {
    Failure::refused(ErrorKind::OutOfRange, "index", "the table has no more rows")
}

/// Rows that the caller has room for, and their number.
fn counted<R>(room: usize, rows: impl Iterator<Item = R>) -> Result<(Vec<R>, usize), Failure> {
    let rows: Vec<R> = fitting(rows.collect(), "room", room)?;
    let count = rows.len();
    Ok((rows, count))
}

#[expect(clippy::indexing_slicing, reason = "evaluated by the compiler")]
const fn duties() -> [[Text; 2]; duty::ALL.len()] {
    let (mut out, mut k) = ([[[0; 160]; 2]; duty::ALL.len()], 0);
    while k < duty::ALL.len() {
        out[k] = [terminated(duty::ALL[k].name), terminated(duty::ALL[k].source)];
        k += 1;
    }
    out
}

/// Name and source of each duty.
static DUTIES: [[Text; 2]; duty::ALL.len()] = duties();

fn confidence(of: Confidence) -> GaugepointConfidence {
    match of {
        Confidence::Published => GaugepointConfidence::Published,
        Confidence::Maker => GaugepointConfidence::Maker,
        Confidence::Unverified => GaugepointConfidence::Unverified,
    }
}

#[expect(clippy::indexing_slicing, reason = "evaluated by the compiler")]
const fn texts() -> [[Text; 2]; library::ALL.len()] {
    let (mut out, mut k) = ([[[0; 160]; 2]; library::ALL.len()], 0);
    while k < library::ALL.len() {
        out[k] = [terminated(library::ALL[k].name), terminated(library::ALL[k].source)];
        k += 1;
    }
    out
}

/// Name and source of each row.
static TEXTS: [[Text; 2]; library::ALL.len()] = texts();

fn row_of(row: &library::Row, [name, source]: &'static [Text; 2]) -> GaugepointMaterial {
    GaugepointMaterial {
        struct_size: size_of::<GaugepointMaterial>(),
        name: name.as_ptr().cast(),
        source: source.as_ptr().cast(),
        confidence: confidence(row.confidence) as i32,
        coefficients: match row.coefficients {
            Coefficients::Mean => GaugepointCoefficients::Mean,
            Coefficients::Instantaneous => GaugepointCoefficients::Instantaneous,
        } as i32,
        from_c: row.from_c,
        to_c: row.to_c,
        permissible_error_per_k: row.permissible_error_per_k,
    }
}
