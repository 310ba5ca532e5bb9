//! The deck.

use crate::array::{array, given};
use crate::error::GaugepointError;
use crate::guard::status;
use crate::record::{Record, record};
use gaugepoint::shape::deck::{self, Chamber, Compression, Deck, GasketBand, GasketChoice};

/// Where the piston stops at top dead centre; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointDeck {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// From the deck down to the crown; negative when the crown stands above the deck.
    pub deck_clearance_mm: f64,
    /// The same the other way: from the deck up to the crown.
    pub protrusion_mm: f64,
    /// From the crown to the head; below zero they meet.
    pub squish_mm: f64,
}

// SAFETY: a size and doubles
unsafe impl Record for GaugepointDeck {
    const SMALLEST: usize = 32;
}

/// What encloses the gas at top dead centre. A plain structure; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointChamber {
    /// Bore.
    pub bore_mm: f64,
    /// Stroke.
    pub stroke_mm: f64,
    /// Chamber in the head, valves and plug in place; 0 is a flat head.
    pub head_cm3: f64,
    /// Opening of the gasket, as a diameter.
    pub gasket_bore_mm: f64,
    /// Gasket, compressed.
    pub gasket_mm: f64,
    /// From the deck down to the crown; negative for a protrusion.
    pub deck_clearance_mm: f64,
    /// Dish, bowl and valve pockets in the crown; negative for a dome.
    pub crown_cm3: f64,
    /// Crevice at the top land; 0 leaves it out, as is usual.
    pub crevice_cm3: f64,
}

/// Compression ratio and the volumes behind it; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointCompression {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// Swept volume of the cylinder.
    pub swept_cm3: f64,
    /// Volume within the gasket.
    pub gasket_cm3: f64,
    /// Volume between deck and crown; negative for a protrusion.
    pub deck_cm3: f64,
    /// Everything above the piston at top dead centre.
    pub clearance_cm3: f64,
    /// Swept and clearance volume over the clearance volume.
    pub ratio: f64,
}

// SAFETY: a size and doubles
unsafe impl Record for GaugepointCompression {
    const SMALLEST: usize = 48;
}

/// A line of a table of gaskets: protrusions, and the gasket for them. A plain structure; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointGasketBand {
    /// Smallest protrusion.
    pub from_mm: f64,
    /// Largest protrusion.
    pub to_mm: f64,
    /// Gasket, compressed.
    pub thickness_mm: f64,
}

/// The gasket that a table asks for; see RECORDS at the head.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct GaugepointGasketChoice {
    /// Size of this structure in bytes, set by the caller.
    pub struct_size: usize,
    /// Place of its line in the table, from 0.
    pub band: usize,
    /// The protrusion that decided: the largest.
    pub largest_mm: f64,
    /// The gasket.
    pub thickness_mm: f64,
    /// From that crown to the head.
    pub squish_mm: f64,
}

// SAFETY: two sizes and doubles
unsafe impl Record for GaugepointGasketChoice {
    const SMALLEST: usize = 40;
}

/// Deck clearance, protrusion and squish: block height - (stroke / 2 + rod + compression height), and the compressed gasket.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_deck(
    block_height_mm: f64,
    stroke_mm: f64,
    rod_mm: f64,
    compression_height_mm: f64,
    gasket_mm: f64,
    out: *mut GaugepointDeck,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            Ok(deck::deck(block_height_mm, stroke_mm, rod_mm, compression_height_mm, gasket_mm)?.into())
        })
    }
}

/// Compression ratio. Refused when nothing is left above the piston.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_compression_ratio(
    chamber: *const GaugepointChamber,
    out: *mut GaugepointCompression,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            Ok(deck::compression_ratio(&given("chamber", chamber)?.into())?.into())
        })
    }
}

/// The gasket for the largest of several protrusions, from a table. Up to 1000 of each.
///
/// Lines rise; those that follow each other by no more than `step_mm`, the last digit of the table, leave no hole. Between what
/// two lines print, and where they share an end, the later line counts: the thicker gasket. Overlaps and holes are refused.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn gaugepoint_gasket_band(
    projections_mm: *const f64,
    projections: usize,
    bands: *const GaugepointGasketBand,
    band_count: usize,
    step_mm: f64,
    out: *mut GaugepointGasketChoice,
    error: *mut GaugepointError,
) -> i32 {
    // SAFETY: the contract of the header
    unsafe {
        status(error, record("out", out), || {
            let projections = array("projections_mm", projections_mm, Some(projections))?;
            let bands = array("bands", bands, Some(band_count))?;
            let bands: Vec<GasketBand> = bands.iter().copied().map(GasketBand::from).collect();
            Ok(deck::gasket_band(projections, &bands, step_mm)?.into())
        })
    }
}

impl From<Deck> for GaugepointDeck {
    fn from(d: Deck) -> Self {
        GaugepointDeck {
            struct_size: size_of::<Self>(),
            deck_clearance_mm: d.deck_clearance_mm,
            protrusion_mm: d.protrusion_mm,
            squish_mm: d.squish_mm,
        }
    }
}

impl From<GaugepointChamber> for Chamber {
    fn from(c: GaugepointChamber) -> Self {
        Chamber {
            bore_mm: c.bore_mm,
            stroke_mm: c.stroke_mm,
            head_cm3: c.head_cm3,
            gasket_bore_mm: c.gasket_bore_mm,
            gasket_mm: c.gasket_mm,
            deck_clearance_mm: c.deck_clearance_mm,
            crown_cm3: c.crown_cm3,
            crevice_cm3: c.crevice_cm3,
        }
    }
}

impl From<Compression> for GaugepointCompression {
    fn from(c: Compression) -> Self {
        GaugepointCompression {
            struct_size: size_of::<Self>(),
            swept_cm3: c.swept_cm3,
            gasket_cm3: c.gasket_cm3,
            deck_cm3: c.deck_cm3,
            clearance_cm3: c.clearance_cm3,
            ratio: c.ratio,
        }
    }
}

impl From<GaugepointGasketBand> for GasketBand {
    fn from(b: GaugepointGasketBand) -> Self {
        GasketBand { from_mm: b.from_mm, to_mm: b.to_mm, thickness_mm: b.thickness_mm }
    }
}

impl From<GasketChoice> for GaugepointGasketChoice {
    fn from(c: GasketChoice) -> Self {
        GaugepointGasketChoice {
            struct_size: size_of::<Self>(),
            band: c.band,
            largest_mm: c.largest_mm,
            thickness_mm: c.thickness_mm,
            squish_mm: c.squish_mm,
        }
    }
}
