//! C ABI of gaugepoint.
