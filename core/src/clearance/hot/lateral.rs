//! Stand-in.
use super::{HotFit, Position};
use crate::error::Error;
/// Best.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BestPlaced {
    /// c
    pub clearance_mm: f64,
    /// x
    pub thrust_mm: f64,
    /// y
    pub pin_mm: f64,
    /// fits
    pub fits: bool,
}
impl HotFit {
    /// Best.
    ///
    /// # Errors
    /// None.
    pub fn best_placed(&self, _: usize, _: Position) -> Result<BestPlaced, Error> {
        Ok(BestPlaced { clearance_mm: 0.0, thrust_mm: 0.0, pin_mm: 0.0, fits: true })
    }
}
