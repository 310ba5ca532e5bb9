//! Stand-in.
use super::{HotFit, Place};
use crate::error::Error;
use crate::growth::field::Scenario;
/// Onset.
#[derive(Debug, Clone, PartialEq)]
pub enum Onset {
    /// Touches.
    Touches(Contact),
    /// Cold.
    TouchesCold,
    /// None.
    NoContact {
        /// k
        factor: f64,
        /// by
        stopped_by: String,
    },
}
/// Contact.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Contact {
    /// k
    pub factor: f64,
    /// place
    pub place: Place,
    /// slope
    pub slope_mm: f64,
    /// sure
    pub certified: bool,
}
impl HotFit {
    /// Onset.
    ///
    /// # Errors
    /// None.
    pub fn onset(&self, _: Scenario, _: f64) -> Result<Onset, Error> {
        Ok(Onset::TouchesCold)
    }
}
