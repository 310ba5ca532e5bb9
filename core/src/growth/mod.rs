//! 4 GROWTH: how a part changes with temperature. Free growth only: no pressure, no stress.

mod material;

pub use material::Material;
pub(crate) use material::{Grown, Materials, MeanGrowth};
