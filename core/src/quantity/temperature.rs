//! A temperature, as opposed to a temperature difference.

use core::ops::{Add, Sub};

use uom::si::temperature_interval::kelvin;
use uom::si::thermodynamic_temperature::degree_celsius;

use super::units::ThermodynamicTemperature;
use super::{TemperatureInterval, without_negative_zero};

/// A temperature, held in degrees Celsius as it was read.
///
/// The temperature of `uom` holds kelvin and adds and subtracts 273.15: 27.1 C would come back as 27.100000000000023,
/// and so would 2180 of the 3501 tenths of a degree from -50 C to 300 C come back changed. Conversions to and from it
/// are offered and carry that rounding.
///
/// Two temperatures have a difference, which is a [`TemperatureInterval`]; a sum they have not.
///
/// ```
/// use gaugepoint::quantity::{Temperature, TemperatureInterval};
/// use uom::si::temperature_interval::kelvin;
///
/// let shop = Temperature::from_celsius(27.5);
/// let above: TemperatureInterval = shop - Temperature::from_celsius(20.0);
/// assert_eq!(above.get::<kelvin>(), 7.5);
/// assert_eq!((shop + above).celsius(), 35.0);
/// ```
///
/// ```compile_fail
/// use gaugepoint::quantity::Temperature;
///
/// let shop = Temperature::from_celsius(27.5);
/// let sum = shop + Temperature::from_celsius(20.0);
/// ```
///
/// A temperature difference is not a temperature:
///
/// ```compile_fail
/// use gaugepoint::quantity::Temperature;
///
/// let shop = Temperature::from_celsius(27.5);
/// let above: Temperature = shop - Temperature::from_celsius(20.0);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Temperature(f64);

impl Temperature {
    /// The temperature of `celsius` degrees Celsius. Its range is checked where it is used. A negative zero becomes zero.
    #[must_use]
    #[inline]
    pub fn from_celsius(celsius: f64) -> Self {
        Temperature(without_negative_zero(celsius))
    }

    /// The temperature in degrees Celsius.
    #[must_use]
    #[inline]
    pub fn celsius(self) -> f64 {
        self.0
    }
}

impl Sub for Temperature {
    type Output = TemperatureInterval;

    fn sub(self, other: Temperature) -> TemperatureInterval {
        TemperatureInterval::new::<kelvin>(self.0 - other.0)
    }
}

impl Add<TemperatureInterval> for Temperature {
    type Output = Temperature;

    fn add(self, difference: TemperatureInterval) -> Temperature {
        Temperature::from_celsius(self.0 + difference.get::<kelvin>())
    }
}

impl From<Temperature> for ThermodynamicTemperature {
    fn from(temperature: Temperature) -> Self {
        ThermodynamicTemperature::new::<degree_celsius>(temperature.0)
    }
}

impl From<ThermodynamicTemperature> for Temperature {
    fn from(temperature: ThermodynamicTemperature) -> Self {
        Temperature::from_celsius(temperature.get::<degree_celsius>())
    }
}
