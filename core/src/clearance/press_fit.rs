//! Pins pressed into a rod: pressure, stresses, holding force, and the heat that assembles them.
//!
#![doc = include_str!("../../docs/pins.md")]

use crate::bounds;
use crate::calc::{Formula, formula};
use crate::error::Error;
use crate::growth::lame::{Elastic, Joint};
use crate::report::{HEATED_PART, OVERHEATED_PART, PRESS_WORK};
use core::f64::consts::PI;

formula! {
    /// Axial force at which a fit slips.
    AxialForce: force ["N"] = (p, d, width, friction) => p * d * width * friction * PI; source "Coulomb friction over the joint";
    /// Torque at which a fit slips.
    SlipTorque: torque ["N m"] = (force, d) => force * d / 2000.0; source "Coulomb friction at the radius of the joint";
    /// Heating from 20 C that opens the interference and a clearance.
    AssemblyRise: rise ["K"] = (interference, clearance, a, d) => (interference + clearance) / (a * d); source "free growth";
    /// Temperature after the heating.
    AssemblyTemperature: t ["C"] = (rise) => rise + 20.0; source "both parts at 20 C before";
}

/// A pin and the eye it is pressed into. All sizes are diameters in mm at 20 C.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PressFitParts {
    /// Joint: outside of the pin.
    pub pin_mm: f64,
    /// Hole of the pin; 0 is a solid pin.
    pub pin_hole_mm: f64,
    /// Outside of the eye.
    pub eye_mm: f64,
    /// Length of the joint along the axis, in mm.
    pub width_mm: f64,
    /// Measured interference, least of its range.
    pub interference_least_mm: f64,
    /// Measured interference, most of its range.
    pub interference_most_mm: f64,
    /// Interference that is lost because roughness is pressed flat.
    pub smoothing_mm: f64,
    /// Coefficient of friction, least of its range.
    pub friction_least: f64,
    /// Coefficient of friction, most of its range.
    pub friction_most: f64,
    /// Modulus of elasticity of the pin, in MPa.
    pub pin_modulus_mpa: f64,
    /// Poisson's ratio of the pin.
    pub pin_poisson: f64,
    /// Modulus of elasticity of the eye, in MPa.
    pub eye_modulus_mpa: f64,
    /// Poisson's ratio of the eye.
    pub eye_poisson: f64,
}

/// What a press fit holds, and what it does to its parts.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PressFit {
    /// Pressure at the least interference, in MPa; 0 when the smoothing takes all of it.
    pub pressure_least_mpa: f64,
    /// Pressure at the most interference, in MPa.
    pub pressure_most_mpa: f64,
    /// Hoop stress of the eye at the joint, at the most interference, in MPa; tension is positive.
    pub eye_hoop_inside_mpa: f64,
    /// Hoop stress of the eye at its outside.
    pub eye_hoop_outside_mpa: f64,
    /// Hoop stress of the pin at the joint.
    pub pin_hoop_outside_mpa: f64,
    /// Hoop stress of the pin at its hole; of a solid pin the same as at the joint.
    pub pin_hoop_inside_mpa: f64,
    /// Axial force at which it slips, least interference and least friction, in N.
    pub force_least_n: f64,
    /// The same at the most of both.
    pub force_most_n: f64,
    /// Torque at which it slips, least interference and least friction, in N m.
    pub torque_least_nm: f64,
    /// The same at the most of both.
    pub torque_most_nm: f64,
    /// What to take care of.
    pub caution: &'static str,
}

/// A press fit over the range of its interference and friction.
///
/// # Errors
/// When a number is not finite or impossible, the diameters are out of order, or a least is above its most; the error names the field.
pub fn press_fit(parts: &PressFitParts) -> Result<PressFit, Error> {
    let joint = joint(
        [parts.pin_mm, parts.pin_hole_mm, parts.eye_mm],
        [parts.pin_modulus_mpa, parts.pin_poisson],
        [parts.eye_modulus_mpa, parts.eye_poisson],
    )?;
    bounds::FIT_WIDTH.check("width_mm", parts.width_mm)?;
    range(
        &bounds::INTERFERENCE,
        ["interference_least_mm", "interference_most_mm"],
        [parts.interference_least_mm, parts.interference_most_mm],
    )?;
    bounds::SMOOTHING.check("smoothing_mm", parts.smoothing_mm)?;
    range(
        &bounds::FRICTION,
        ["friction_least", "friction_most"],
        [parts.friction_least, parts.friction_most],
    )?;
    let pressure = |interference: f64| joint.pressure(interference - parts.smoothing_mm);
    let (least, most) = (pressure(parts.interference_least_mm), pressure(parts.interference_most_mm));
    let force = |p: f64, friction: f64| AxialForce::evaluate([p, parts.pin_mm, parts.width_mm, friction]);
    let (force_least_n, force_most_n) =
        (force(least, parts.friction_least), force(most, parts.friction_most));
    let [eye_inside, eye_outside, pin_outside, pin_inside] = joint.hoop_stresses(most);
    Ok(PressFit {
        pressure_least_mpa: least,
        pressure_most_mpa: most,
        eye_hoop_inside_mpa: eye_inside,
        eye_hoop_outside_mpa: eye_outside,
        pin_hoop_outside_mpa: pin_outside,
        pin_hoop_inside_mpa: pin_inside,
        force_least_n,
        force_most_n,
        torque_least_nm: SlipTorque::evaluate([force_least_n, parts.pin_mm]),
        torque_most_nm: SlipTorque::evaluate([force_most_n, parts.pin_mm]),
        caution: PRESS_WORK,
    })
}

/// Pressure in the joint at one interference less its smoothing, in MPa. Pin, its hole and the eye as diameters in mm; modulus in MPa and Poisson's
/// ratio of pin and eye.
pub(crate) fn pressure_mpa(
    diameters: [f64; 3],
    [interference_mm, smoothing_mm]: [f64; 2],
    pin: [f64; 2],
    eye: [f64; 2],
) -> Result<f64, Error> {
    let joint = joint(diameters, pin, eye)?;
    bounds::INTERFERENCE.check("interference_mm", interference_mm)?;
    bounds::SMOOTHING.check("smoothing_mm", smoothing_mm)?;
    Ok(joint.pressure(interference_mm - smoothing_mm))
}

fn joint(
    [pin_mm, pin_hole_mm, eye_mm]: [f64; 3],
    [pin_modulus_mpa, pin_poisson]: [f64; 2],
    [eye_modulus_mpa, eye_poisson]: [f64; 2],
) -> Result<Joint, Error> {
    bounds::PIN.check("pin_mm", pin_mm)?;
    bounds::PIN_HOLE.check("pin_hole_mm", pin_hole_mm)?;
    bounds::EYE.check("eye_mm", eye_mm)?;
    bounds::check_above("pin_hole_mm", pin_mm, pin_hole_mm, "the hole lies within the pin")?;
    bounds::check_above("eye_mm", eye_mm, pin_mm, "the eye lies around the pin")?;
    Ok(Joint {
        inside: pin_hole_mm,
        joint: pin_mm,
        outside: eye_mm,
        inner: Elastic::new(["pin_modulus_mpa", "pin_poisson"], pin_modulus_mpa, pin_poisson)?,
        outer: Elastic::new(["eye_modulus_mpa", "eye_poisson"], eye_modulus_mpa, eye_poisson)?,
    })
}

/// Two ends of a range, the least not above the most.
fn range(bound: &bounds::Bound, fields: [&str; 2], [least, most]: [f64; 2]) -> Result<(), Error> {
    bound.check(fields[0], least)?;
    bound.check(fields[1], most)?;
    match least <= most {
        true => Ok(()),
        false => bounds::check_above(fields[1], most, least, "the most lies below the least"),
    }
}

/// Colour that clean steel takes at a temperature.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TemperColour {
    /// None yet.
    None,
    /// Straw to brown, from 480 F.
    Straw,
    /// Purple, from 520 F.
    Purple,
    /// Blue, from 575 F.
    Blue,
}

/// Where each colour begins, in degrees Celsius. Common practice, published in degrees Fahrenheit; a quarter of an hour at temperature.
const TEMPER_COLOURS: [(f64, TemperColour); 3] = [
    ((575.0 - 32.0) / 1.8, TemperColour::Blue),
    ((520.0 - 32.0) / 1.8, TemperColour::Purple),
    ((480.0 - 32.0) / 1.8, TemperColour::Straw),
];

/// Heat that lets a part be slipped on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Assembly {
    /// Rise of temperature, in K.
    pub rise_k: f64,
    /// Temperature of the heated part, from 20 C.
    pub temperature_c: f64,
    /// Colour of clean steel at that temperature: any is a sign of too much heat. It says nothing of aluminium.
    pub temper_colour: TemperColour,
    /// What to take care of.
    pub caution: &'static str,
}

/// Temperature to which the outer part is heated, the pin at 20 C, so that its hole opens by the interference and a clearance.
///
/// A result that no part survives is a fault of the fit, and no error of the call.
///
/// # Errors
/// When a number is not finite or impossible; the error names the parameter.
pub fn assembly_temperature(
    diameter_mm: f64,
    interference_mm: f64,
    clearance_mm: f64,
    expansion_per_k: f64,
) -> Result<Assembly, Error> {
    bounds::PIN.check("diameter_mm", diameter_mm)?;
    bounds::INTERFERENCE.check("interference_mm", interference_mm)?;
    bounds::ASSEMBLY_CLEARANCE.check("clearance_mm", clearance_mm)?;
    bounds::EXPANSION.check("expansion_per_k", expansion_per_k)?;
    let rise_k = AssemblyRise::evaluate([interference_mm, clearance_mm, expansion_per_k, diameter_mm]);
    let temperature_c = AssemblyTemperature::evaluate([rise_k]);
    let colour = TEMPER_COLOURS.iter().find(|(from, _)| temperature_c >= *from);
    let temper_colour = colour.map_or(TemperColour::None, |(_, colour)| *colour);
    let caution = if temper_colour == TemperColour::None { HEATED_PART } else { OVERHEATED_PART };
    Ok(Assembly { rise_k, temperature_c, temper_colour, caution })
}
