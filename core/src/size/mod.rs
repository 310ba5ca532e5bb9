//! 2 SIZE AT 20 C: the formulas that bring a reading to the reference temperature, and the type that proves it was
//! brought there.

mod at20;

pub(crate) use at20::{
    BareSize, BoreGaugeSize, MicrometerSize, SetOnMicrometer, SetOnRing, ZERO_ERROR, ZeroError,
};
pub use at20::{Condition, SizeAt20, micrometer_size_at_20, size_at_temperature_mm};

/// Reference temperature of every stored size, in degrees Celsius. Source: ISO 1:2022.
pub const REFERENCE_TEMPERATURE_C: f64 = 20.0;
