//! Every bounded quantity, once: what it is called, what is possible, what is usual, and why.
//!
//! A value outside the possible range is refused, and when a slip of unit explains it the error says what was
//! probably meant. A possible but unusual value is accepted with a warning. The ranges hold for engines with bores of
//! 20 mm to 1100 mm; they guard against typing errors and do not replace the maker's data.

mod table;

pub(crate) use table::in_bore;
pub use table::{Row, TABLE, judge};

use crate::error::{Error, ErrorKind};

/// A bounded quantity.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bound {
    /// What it is called.
    pub label: &'static str,
    /// Unit of the four numbers.
    pub unit: &'static str,
    /// Smallest and largest possible value.
    pub possible: (f64, f64),
    /// Smallest and largest usual value.
    pub usual: (f64, f64),
    /// Where the ranges come from.
    pub reason: &'static str,
}

/// How a value stands to its [`Bound`].
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Verdict {
    /// Accepted.
    Usual,
    /// Accepted with a warning.
    Odd,
    /// Refused.
    Impossible,
}

const GUIDE: &str = "guide range for engines of 20 mm to 1100 mm bore; unverified";

macro_rules! bounds {
    ($($(#[doc = $doc:literal])+ $name:ident = $label:literal [$unit:literal]
        possible $p0:literal to $p1:literal, usual $u0:literal to $u1:literal, $reason:expr;)+) => {
        $($(#[doc = $doc])+
        pub const $name: Bound = Bound {
            label: $label, unit: $unit, possible: ($p0, $p1), usual: ($u0, $u1), reason: $reason,
        };)+

        /// Every bound, in the order of the work.
        pub const ALL: &[(&str, Bound)] = &[$((stringify!($name), $name),)+];
    };
}

bounds! {
    /// Temperature of a part, a gauge or the shop during a measurement.
    SHOP_TEMPERATURE = "temperature at a measurement" ["C"] possible -5.0 to 60.0, usual 10.0 to 35.0,
        "a shop below -5 C or above 60 C is a Fahrenheit value or a part that is not soaked";
    /// Half-width of a thermometer's error.
    THERMOMETER_ERROR = "thermometer error" ["K"] possible 0.001 to 10.0, usual 0.05 to 3.0, GUIDE;
    /// Temperature a printed limit holds at.
    LIMIT_TEMPERATURE = "reference temperature of a limit" ["C"] possible 0.0 to 60.0, usual 18.0 to 32.0,
        "published reference temperatures run from 20 C to 32 C";
    /// Temperature of a piston or bore in a running engine.
    RUNNING_TEMPERATURE = "running temperature" ["C"] possible -40.0 to 450.0, usual 60.0 to 300.0, GUIDE;
    /// Temperature of a skirt at the gauge point in a running engine; also at a cold start.
    SKIRT_TEMPERATURE = "temperature of a running skirt" ["C"] possible -40.0 to 300.0, usual 80.0 to 200.0,
        "skirts run at 80 C to 200 C; above 300 C a crown, or Fahrenheit";
    /// Temperature in the table of an expansion law.
    LAW_TEMPERATURE = "temperature of an expansion law" ["C"] possible -270.0 to 1200.0, usual -60.0 to 700.0, GUIDE;
    /// Coefficient of linear expansion.
    EXPANSION = "coefficient of expansion" ["1/K"] possible 1e-7 to 1e-4, usual 9e-6 to 26e-6,
        "metals of engines have 9e-6 to 26e-6 /K; a bare 20 lacks its 1e-6; 5e-6 to 14e-6 may be per degree Fahrenheit";
    /// Nodularity of compacted and spheroidal graphite iron.
    NODULARITY = "nodularity" ["%"] possible 3.9 to 82.6, usual 3.9 to 82.6, "samples of the regression: 3.92 % to 82.6 %";
    /// Area fraction of graphite in cast iron.
    GRAPHITE = "area fraction of graphite" ["%"] possible 1.9 to 9.1, usual 1.9 to 9.1, "samples of the regression: 1.94 % to 9.05 %";
    /// Pearlite over ferrite in the matrix of cast iron.
    PEARLITE_TO_FERRITE = "ratio of pearlite to ferrite" ["1"] possible 0.0 to 1.85, usual 0.0 to 1.85,
        "samples of the regression: ferritic to 62.64 % of pearlite on 33.96 % of ferrite";
    /// Half-width of the error of a coefficient of expansion.
    EXPANSION_ERROR = "error of a coefficient of expansion" ["1/K"] possible 0.0 to 1e-5, usual 0.0 to 3e-6, GUIDE;
    /// Resolution of a gauge.
    RESOLUTION = "resolution of a gauge" ["mm"] possible 0.00001 to 0.1, usual 0.0001 to 0.0254, GUIDE;
    /// Permissible error of a gauge.
    PERMISSIBLE_ERROR = "permissible error of a gauge" ["mm"] possible 0.00005 to 0.2, usual 0.0005 to 0.05,
        "micrometers 1 um to 25 um, calipers to 50 um";
    /// Permissible error of an outside micrometer.
    MICROMETER_ERROR = "permissible error of a micrometer" ["mm"] possible 0.00005 to 0.05, usual 0.001 to 0.015,
        "DIN 863: 4 um to 13 um up to 500 mm";
    /// Repeatability of a gauge with its users.
    REPEATABILITY = "repeatability of a gauge" ["mm"] possible 0.00001 to 0.03, usual 0.0005 to 0.005,
        "shop studies run from 0.5 um to 10 um; unverified";
    /// Parallelism of the faces of a micrometer.
    PARALLELISM = "parallelism of micrometer faces" ["mm"] possible 0.0 to 0.02, usual 0.0003 to 0.006,
        "DIN 863: 2 um to 4 um up to 250 mm";
    /// Uncertainty of a setting standard.
    STANDARD_UNCERTAINTY = "uncertainty of a standard" ["mm"] possible 0.00001 to 0.05, usual 0.0001 to 0.011,
        "ASME B89.1.5 ring classes: 0.5 um to 10 um";
    /// Degrees of freedom of a standard deviation.
    DEGREES_OF_FREEDOM = "degrees of freedom" ["1"] possible 1.0 to 10000.0, usual 4.0 to 1000.0,
        "five readings have 4; a study of 10 parts, 3 appraisers and 3 trials has 60";
    /// Relative uncertainty of a figure for an uncertainty.
    RELATIVE_UNCERTAINTY = "relative uncertainty of a permissible error" ["1"] possible 0.01 to 0.7, usual 0.05 to 0.5,
        "JCGM 100:2008, G.4.2: 0.1 to 0.5 in its examples; 0.7 leaves one degree of freedom";
    /// Coverage factor of an expanded uncertainty.
    COVERAGE_FACTOR = "coverage factor" ["1"] possible 1.0 to 5.0, usual 1.6 to 3.1, "JCGM 100:2008, 6.3.3: 2 to 3";
    /// Size of a setting standard.
    STANDARD_SIZE = "size of a standard" ["mm"] possible 10.0 to 1100.0, usual 20.0 to 300.0, GUIDE;
    /// Bore.
    BORE = "bore" ["mm"] possible 10.0 to 1100.0, usual 30.0 to 200.0, "ISO 6621 rings: 30 mm to 200 mm; marine engines to 1000 mm";
    /// Length of a bore.
    BORE_LENGTH = "length of a bore" ["mm"] possible 10.0 to 4000.0, usual 40.0 to 500.0, GUIDE;
    /// Piston diameter.
    PISTON = "piston diameter" ["mm"] possible 10.0 to 1100.0, usual 29.0 to 200.0, "as for the bore";
    /// Height of the place of a piston reading from its datum.
    PISTON_HEIGHT = "height on a piston" ["mm"] possible 0.0 to 1000.0, usual 2.0 to 150.0,
        "published gauge points: 5 mm to 45 mm from their datum";
    /// Depth in a bore.
    DEPTH = "depth in a bore" ["mm"] possible 0.0 to 4000.0, usual 2.0 to 500.0, GUIDE;
    /// Angle about the cylinder axis.
    ANGLE = "angle" ["deg"] possible 0.0 to 360.0, usual 0.0 to 360.0, "0 thrust side, 90 pin axis toward the front";
    /// Coordinate of a measured point, radius or deviation of a trace.
    COORDINATE = "coordinate" ["mm"] possible -5000.0 to 5000.0, usual -2000.0 to 2000.0, GUIDE;
    /// Angle between the faces of a V-block.
    V_BLOCK = "angle of a V-block" ["deg"] possible 10.0 to 170.0, usual 60.0 to 150.0, "ISO 4292 lists 60 to 120; from memory";
    /// Deviation of a bore's target profile from the nominal size.
    TARGET_DEVIATION = "deviation of a target profile" ["mm"] possible -1.0 to 1.0, usual -0.3 to 0.1,
        "a choke takes 0.03 mm to 0.2 mm off the head end; from memory";
    /// Deviation of a bore gauge from its setting.
    DEVIATION = "deviation from the setting" ["mm"] possible -2.0 to 2.0, usual -0.6 to 0.6,
        "the travel of a comparator; oversize steps are 0.25 mm to 1.5 mm";
    /// Coating thickness per side.
    COATING = "coating thickness per side" ["mm"] possible 0.001 to 0.15, usual 0.005 to 0.03,
        "screen-printed coatings are about 15 um per side; above 150 um the total or a slip of unit";
    /// Half-width of the error of a coating thickness.
    COATING_ERROR = "error of a coating thickness" ["mm"] possible 0.0 to 0.05, usual 0.001 to 0.01, GUIDE;
    /// Limit of a clearance.
    CLEARANCE = "clearance" ["mm"] possible -0.1 to 3.0, usual 0.005 to 0.25,
        "0.1 to 2 per mille of the bore; negative only over a coating";
    /// Limit of a taper or an out-of-round.
    FORM = "taper or out-of-round" ["mm"] possible 0.0 to 1.0, usual 0.003 to 0.15, "printed limits run from 0.01 mm to 0.1 mm";
    /// Taper or out-of-round that was found.
    FORM_FOUND = "taper or out-of-round" ["mm"] possible 0.0 to 1.0, usual 0.0 to 0.15,
        "worn bores have up to 0.15 mm; above 1 mm these are readings of two bores";
    /// Spread of the repeats at one place that is still one place.
    SPREAD = "spread of the repeats at one place" ["mm"] possible 0.0 to 0.05, usual 0.0 to 0.008,
        "repeats of one place agree within 8 um as a rule; above 50 um it is another place or a misreading";
    /// Thrust diameter less pin-axis diameter; a round piston may come out a little below zero.
    OVALITY = "ovality" ["mm"] possible -0.02 to 2.0, usual -0.002 to 0.8,
        "skirts are oval by up to 0.8 mm, larger at the thrust side; below zero the axes were exchanged";
    /// Change of a piston's diameter over its height.
    BARREL = "barrel slope of a skirt" ["um/mm"] possible 0.0 to 50.0, usual 0.0 to 10.0,
        "skirts change by up to 10 um in a mm of height; above 50 it is a land or another unit";
    /// Diameter or radius of a piston at a height against that at its gauge point.
    DIAMETER_CHANGE = "diameter against the gauge diameter" ["mm"] possible -15.0 to 2.0, usual -1.5 to 0.05,
        "lands are up to 1 % of the bore below the skirt; above the gauge point only the cool bottom of a skirt; from memory";
    /// Diameter added at 45 degrees by the term of fourth order.
    DOUBLE_OVALITY = "double ovality" ["mm"] possible -0.5 to 0.5, usual -0.2 to 0.2,
        "within a quarter of the ovality, or the gauge point is not the largest diameter";
    /// Radius of a piston from an axis near its own.
    PISTON_RADIUS = "radius of a piston" ["mm"] possible 5.0 to 550.0, usual 14.5 to 100.0, "half of the piston diameter";
    /// Standard uncertainty of one reading of a diameter or radius.
    READING_UNCERTAINTY = "standard uncertainty of a reading" ["mm"] possible 0.00001 to 0.05, usual 0.0003 to 0.005, GUIDE;
    /// Half-width of the panel of a skirt.
    PANEL = "half-width of a panel" ["deg"] possible 1.0 to 90.0, usual 20.0 to 75.0, "from memory; 90 is all round";
    /// Measuring force of a gauge on a part.
    MEASURING_FORCE = "measuring force" ["N"] possible 0.01 to 100.0, usual 0.5 to 30.0,
        "micrometers 5 N to 10 N, feeler strips up to 27 N";
    /// Half-width of the error of a measuring force.
    FORCE_ERROR = "error of a measuring force" ["N"] possible 0.0 to 50.0, usual 0.0 to 10.0, GUIDE;
    /// Hours an engine ran between two visits.
    RUN = "hours run" ["h"] possible 1.0 to 200000.0, usual 20.0 to 30000.0,
        "a season of a pump or saw is some hundred hours, a ship's engine runs 8760 h a year; from memory";
    /// Half-width of the error of such hours.
    RUN_ERROR = "error of the hours run" ["h"] possible 0.0 to 100000.0, usual 0.0 to 1000.0, GUIDE;
    /// Stiffness of a piston skirt between the faces of a gauge.
    SKIRT_STIFFNESS = "stiffness of a skirt" ["N/um"] possible 0.5 to 10000.0, usual 2.0 to 200.0,
        "5 N/um to 20 N/um for thin open skirts, from memory";
    /// Half-width of the error of such a stiffness.
    STIFFNESS_ERROR = "error of the stiffness of a skirt" ["N/um"] possible 0.0 to 5000.0, usual 0.0 to 100.0, GUIDE;
    /// Half-width of the tilt of a gauge.
    TILT = "tilt of a gauge" ["deg"] possible 0.0 to 15.0, usual 0.02 to 3.0,
        "a gauge held by feel stands within 2 deg; its error at 15 deg is 3.5 % of the size";
    /// Half-width of the angle between a reading and the major axis of an oval skirt.
    OFF_AXIS = "angle off the axis of an oval skirt" ["deg"] possible 0.0 to 15.0, usual 0.5 to 10.0, GUIDE;
    /// Half-width of the error of the height of a reading.
    HEIGHT_ERROR = "error of the height of a reading" ["mm"] possible 0.0 to 50.0, usual 0.1 to 5.0, GUIDE;
    /// Slope of a profile along its axis.
    PROFILE_SLOPE = "slope of a profile" ["um/mm"] possible -100.0 to 100.0, usual -10.0 to 10.0,
        "2 um/mm to 4 um/mm near the ends of a skirt, from memory";
    /// Thickness of a feeler strip, and the drag allowance added to it.
    FEELER = "thickness of a feeler strip" ["mm"] possible 0.005 to 3.0, usual 0.02 to 1.0, "strip sets begin at 0.01 mm to 0.05 mm";
    /// Allowance that a stated pull stands for.
    DRAG_ALLOWANCE = "drag allowance of a feeler strip" ["mm"] possible 0.0 to 0.2, usual 0.005 to 0.05,
        "0.025 mm at 26.7 N in one maker's manuals; empirical";
    /// Half-width of the error of such an allowance.
    ALLOWANCE_ERROR = "error of a drag allowance" ["mm"] possible 0.0001 to 0.1, usual 0.002 to 0.03, GUIDE;
    /// Width of a feeler strip.
    STRIP_WIDTH = "width of a feeler strip" ["mm"] possible 1.0 to 100.0, usual 5.0 to 30.0, GUIDE;
    /// Half-width of the error of a flat on which an indicator was zeroed.
    FLATNESS = "error of a flat" ["mm"] possible 0.00001 to 0.1, usual 0.0002 to 0.01, GUIDE;
    /// Step of a master on which a depth indicator was zeroed.
    STEP = "step of a depth master" ["mm"] possible -100.0 to 100.0, usual -20.0 to 20.0, GUIDE;
    /// Size read by a transfer gauge.
    SMALL_HOLE = "size of a hole" ["mm"] possible 2.0 to 200.0, usual 3.0 to 160.0, "small-hole gauges begin at 3 mm, telescopic gauges end at 150 mm";
    /// Probability asked of a decision.
    PROBABILITY = "probability of conformity" ["1"] possible 0.5 to 0.999999, usual 0.8 to 0.9999, "JCGM 106:2012, 8.3.2";
    /// Tolerance over the uncertainty interval asked of a decision.
    UNCERTAINTY_RATIO = "ratio of the tolerance to the uncertainty interval" ["1"] possible 1.0 to 100.0, usual 3.0 to 10.0,
        "ASME B89.7.3.1-2001: 4 to 1 and 10 to 1 are common; from memory";
    /// Guard band as a share of the expanded uncertainty; below 0 relaxed.
    GUARD_SHARE = "guard band as a share of the expanded uncertainty" ["1"] possible -1.0 to 1.0, usual -1.0 to 1.0,
        "ISO 14253-1:1998: all of U; beyond it nothing is gained; ASME B89.7.3.1-2001: stringent 0 to 1, relaxed -1 to 0";
    /// End gap of a ring.
    RING_GAP = "ring gap" ["mm"] possible 0.02 to 17.0, usual 0.1 to 1.8, "2 to 9 per mille of the bore";
    /// Least end gap of a hot ring; 0 lets the ends touch.
    LEAST_HOT_GAP = "least hot gap" ["mm"] possible 0.0 to 5.0, usual 0.0 to 0.5, GUIDE;
    /// End gap as a share of the bore.
    RING_GAP_FACTOR = "ring gap by bore" ["per mille"] possible 0.5 to 14.0, usual 2.0 to 9.0,
        "published factors are 3 to 6.5 per mille; 15 is an absolute 0.015 in that was printed as a factor";
    /// Axial width of a ring or of its groove.
    RING_WIDTH = "axial width of a ring or groove" ["mm"] possible 0.3 to 30.0, usual 0.7 to 5.0, "large engines to 20 mm";
    /// Radial thickness of a ring.
    RING_THICKNESS = "radial thickness of a ring" ["mm"] possible 0.5 to 40.0, usual 1.5 to 8.0, GUIDE;
    /// Side clearance of a ring, or wear of its groove.
    RING_SIDE_CLEARANCE = "side clearance or wear of a ring groove" ["mm"] possible -0.5 to 0.5, usual 0.0 to 0.2,
        "0.02 mm to 0.20 mm; above 0.5 mm another ring";
    /// Angle between the flanks of a keystone groove.
    KEYSTONE_ANGLE = "included angle of a keystone groove" ["deg"] possible 1.0 to 40.0, usual 5.0 to 16.0, "6 and 15 degrees are usual; from memory";
    /// Diameter of a gauge pin.
    GAUGE_PIN = "gauge pin" ["mm"] possible 0.2 to 30.0, usual 0.5 to 6.0, GUIDE;
    /// Tangential force that closes a ring.
    TANGENTIAL_FORCE = "tangential force of a ring" ["N"] possible 0.1 to 1000.0, usual 2.0 to 80.0, GUIDE;
    /// Modulus of elasticity.
    MODULUS = "modulus of elasticity" ["MPa"] possible 3e4 to 5e5, usual 6.5e4 to 2.2e5, "aluminium 70 000 MPa, grey iron 100 000 MPa, steel 205 000 MPa";
    /// Poisson's ratio.
    POISSON = "Poisson's ratio" ["1"] possible 0.1 to 0.45, usual 0.2 to 0.36, "grey iron 0.26, steel 0.29, aluminium 0.33";
    /// Height of the flange of a liner, or depth of the counterbore that it lies in.
    LINER_FLANGE = "flange of a liner or its counterbore" ["mm"] possible 1.0 to 60.0, usual 3.0 to 15.0, GUIDE;
    /// Shims below the flange of a liner, all together; 0 is none.
    LINER_SHIM = "shims of a liner" ["mm"] possible 0.0 to 3.0, usual 0.0 to 1.0, GUIDE;
    /// Diameter of a piston pin, and of what it sits in.
    PIN = "pin diameter" ["mm"] possible 5.0 to 300.0, usual 8.0 to 100.0, "ISO 18669 pins: 8 mm to 100 mm; large engines to 200 mm";
    /// Hole of a piston pin; 0 is a solid pin.
    PIN_HOLE = "hole of a pin" ["mm"] possible 0.0 to 290.0, usual 0.0 to 70.0, GUIDE;
    /// Clearance of a pin in boss or bush.
    PIN_CLEARANCE = "clearance of a pin" ["mm"] possible -0.15 to 0.2, usual 0.0 to 0.03, "a pressed pin to a worn bush";
    /// Outside of a rod's eye.
    EYE = "outside diameter of an eye" ["mm"] possible 6.0 to 600.0, usual 12.0 to 180.0, GUIDE;
    /// Length of a press fit along its axis.
    FIT_WIDTH = "width of a press fit" ["mm"] possible 3.0 to 300.0, usual 10.0 to 100.0, GUIDE;
    /// Interference of a pressed pin.
    INTERFERENCE = "interference of a pressed pin" ["mm"] possible 0.001 to 0.15, usual 0.01 to 0.06, "0.4 to 2 per mille of the pin";
    /// Interference lost because roughness is pressed flat.
    SMOOTHING = "smoothing of a press fit" ["mm"] possible 0.0 to 0.05, usual 0.0 to 0.015, "0.8 of both roughness depths Rz; from memory";
    /// Coefficient of friction.
    FRICTION = "coefficient of friction" ["1"] possible 0.01 to 1.0, usual 0.06 to 0.2, GUIDE;
    /// Clearance that a heated part is to have when it is assembled.
    ASSEMBLY_CLEARANCE = "clearance at assembly" ["mm"] possible 0.001 to 0.3, usual 0.01 to 0.05, GUIDE;
    /// Deviation of a rod on its fixture.
    ROD_DEVIATION = "bend or twist of a rod over its base" ["mm"] possible -5.0 to 5.0, usual -0.15 to 0.15, GUIDE;
    /// Base that a bend or twist is stated over.
    ROD_BASE = "base of a bend or twist" ["mm"] possible 10.0 to 1000.0, usual 25.0 to 210.0, "published bases: 25 mm, 1 in, 100 mm, 150 mm";
    /// Bend or twist as an angle.
    ROD_ANGLE = "bend or twist of a rod" ["mrad"] possible -10.0 to 10.0, usual -1.5 to 1.5, "0.15 mm in 100 mm";
    /// Interference of a liner in its block; 0 just touches.
    SLEEVE_INTERFERENCE = "interference of a sleeve" ["mm"] possible 0.0 to 0.3, usual 0.01 to 0.13, "a slip fit has none and does not press";
    /// Outside of the wall that holds a liner.
    BLOCK_OUTSIDE = "outside diameter of the wall around a liner" ["mm"] possible 12.0 to 2000.0, usual 40.0 to 300.0, GUIDE;
    /// Crankshaft centre to deck.
    BLOCK_HEIGHT = "block height" ["mm"] possible 30.0 to 8000.0, usual 120.0 to 500.0, GUIDE;
    /// Stroke.
    STROKE = "stroke" ["mm"] possible 10.0 to 5000.0, usual 25.0 to 250.0, "0.5 to 2 bores; marine engines to 4.5";
    /// Rod, centre to centre.
    ROD = "length of a rod" ["mm"] possible 20.0 to 6000.0, usual 60.0 to 400.0, GUIDE;
    /// Pin axis to crown.
    COMPRESSION_HEIGHT = "compression height" ["mm"] possible 5.0 to 1500.0, usual 15.0 to 130.0, GUIDE;
    /// Gasket, compressed.
    GASKET = "compressed thickness of a gasket" ["mm"] possible 0.05 to 6.0, usual 0.3 to 2.0, "0.3 mm to 2 mm; 0.040 with mm is inches";
    /// Crown below or above the deck, with its sign.
    DECK = "deck clearance or protrusion" ["mm"] possible -3.0 to 3.0, usual -1.0 to 1.0, "within 1 mm of the deck either way";
    /// Digit that a table is printed to.
    PRINTED_STEP = "last digit of a printed table" ["mm"] possible 0.0001 to 0.05, usual 0.0005 to 0.03, "thousandths or hundredths";
    /// Chamber in the head; 0 for a flat head.
    HEAD_VOLUME = "volume of the head" ["cm3"] possible 0.0 to 500000.0, usual 5.0 to 200.0, GUIDE;
    /// Dish of a crown, negative for a dome.
    CROWN_VOLUME = "volume of the crown" ["cm3"] possible -200000.0 to 500000.0, usual -40.0 to 100.0, GUIDE;
    /// Crevice at the top land; 0 leaves it out.
    CREVICE_VOLUME = "volume of the top-land crevice" ["cm3"] possible 0.0 to 5000.0, usual 0.0 to 3.0, "0.5 % to 2 % of the clearance volume";
    /// Height of the top land.
    LAND_HEIGHT = "height of the top land" ["mm"] possible 0.5 to 300.0, usual 2.0 to 20.0, GUIDE;
    /// Radius of a bore at a depth, or of one order of it, against the size.
    BORE_FORM = "radius of a bore against half its size" ["mm"] possible -3.0 to 3.0, usual -0.2 to 0.2,
        "a choke is up to 0.2 mm on the radius, a worn or distorted bore less; from memory";
    /// Expanded uncertainty of the size of a part.
    SIZE_UNCERTAINTY = "uncertainty of a size" ["mm"] possible 0.0 to 0.2, usual 0.0005 to 0.02, GUIDE;
    /// Half-width of the error of the shape of a part, on the radius.
    FORM_ERROR = "error of a shape" ["mm"] possible 0.0 to 0.1, usual 0.0 to 0.01, GUIDE;
    /// Half-width of the error of the temperatures of a running part.
    FIELD_ERROR = "error of the temperatures of a running part" ["K"] possible 0.0 to 150.0, usual 1.0 to 40.0,
        "guide tables hold to 25 K; from memory";
    /// Half-width of the error of a growth ratio.
    GROWTH_RATIO_ERROR = "error of a growth ratio" ["1"] possible 0.0 to 0.5, usual 0.0 to 0.15, "ratios of strutted pistons are known to a tenth; from memory";
    /// Overlap on one side that an elastic skirt may take.
    ELASTIC_OVERLAP = "elastic overlap on one side" ["mm"] possible 0.0 to 0.2, usual 0.0 to 0.06, "skirts run with 0.01 mm to 0.05 mm of free overlap; from memory";
    /// Growth of a piston of controlled expansion over that of its alloy.
    GROWTH_RATIO = "growth ratio" ["1"] possible 0.1 to 2.0, usual 0.55 to 1.15,
        "0.6 to 0.75 on the thrust axis, 1.0 to 1.1 on the pin axis; from memory";
    /// Half the stroke of an engine without offset.
    CRANK_RADIUS = "crank radius" ["mm"] possible 5.0 to 2500.0, usual 12.0 to 125.0, "half of the stroke";
    /// Pin beside the middle of the piston or cylinder beside the crankshaft, positive toward the major thrust side.
    PIN_OFFSET = "pin offset" ["mm"] possible -100.0 to 100.0, usual -20.0 to 20.0, "pins 0.5 mm to 2 mm, cylinders to 15 mm; from memory";
    /// Crank angle, two turns either way.
    CRANK_ANGLE = "crank angle" ["deg"] possible -720.0 to 720.0, usual -720.0 to 720.0, "a cycle of four strokes";
    /// Distance of the wall of a bore from its axis.
    WALL_RADIUS = "distance of a wall from the axis" ["mm"] possible 5.0 to 550.0, usual 15.0 to 100.0, "half of the bore";
    /// Thickness of the wall of a cylinder.
    WALL = "wall of a cylinder" ["mm"] possible 0.3 to 200.0, usual 2.0 to 15.0, "thin castings leave 3 mm; unverified";
    /// Stock on the diameter that removes the marks of a tool.
    STOCK = "stock on the diameter" ["mm"] possible 0.0 to 0.5, usual 0.02 to 0.15, "0.02 mm to 0.1 mm is honed after boring; common practice, no source";
    /// Largest error of the centre of a boring bar.
    CENTRING = "error of the centre of a bar" ["mm"] possible 0.0 to 0.5, usual 0.005 to 0.05, GUIDE;
    /// How far a boring bar may stand from the original axis.
    BAR_SHIFT = "shift of a bar" ["mm"] possible 0.0 to 3.0, usual 0.0 to 0.3, GUIDE;
    /// How far a boring bar may lean from the original axis.
    BAR_TILT = "tilt of a bar" ["1"] possible 0.0 to 0.002, usual 0.0 to 0.0005, "0.05 mm on 100 mm is far out of square";
    /// Oversize of pistons that can be had; 0 is the standard size.
    OVERSIZE = "oversize" ["mm"] possible 0.0 to 5.0, usual 0.0 to 1.5, "series run to 1.5 mm (0.060 in)";
    /// Standard uncertainties between the clean-up and the bore of a step.
    BORING_GUARD = "guard above the clean-up" ["1"] possible 0.0 to 6.0, usual 1.6 to 3.0, "JCGM 100:2008, 6.3.3: 2 to 3";
    /// Mass of a part over that of another.
    MASS_DIFFERENCE = "difference of masses" ["g"] possible -5000.0 to 5000.0, usual -50.0 to 50.0, GUIDE;
    /// Price of a part or of work, in the money of the user.
    PRICE = "price" ["1"] possible 0.0 to 1e9, usual 0.0 to 1e6, "a price is not below zero";
    /// Half of the tolerance of a finish size.
    FINISH_TOLERANCE = "tolerance of a finish size" ["mm"] possible 0.0005 to 0.1, usual 0.002 to 0.02, "hones hold 2 um to 10 um; from memory";
    /// Mass of a piston, or of the assembly that is fitted with it.
    ASSEMBLY_MASS = "mass of a piston or assembly" ["g"] possible 1.0 to 1e7, usual 50.0 to 5000.0, "model engines to marine engines";
    /// Temperature of a part that is heated or chilled for assembly.
    ASSEMBLY_TEMPERATURE = "temperature at assembly" ["C"] possible -200.0 to 300.0, usual -80.0 to 200.0,
        "liquid nitrogen -196 C, dry ice -78 C; aluminium blocks lose strength above 200 C; from memory";
    /// Half-width of the error of an end gap.
    GAP_ERROR = "error of an end gap" ["mm"] possible 0.0 to 0.5, usual 0.005 to 0.05, "feeler strips come in steps of 0.01 mm to 0.05 mm";
    /// Half-width of the error of a protrusion.
    PROTRUSION_ERROR = "error of a protrusion" ["mm"] possible 0.0 to 0.2, usual 0.003 to 0.03, GUIDE;
    /// Least distance from the crown to the head.
    LEAST_SQUISH = "least squish" ["mm"] possible 0.1 to 10.0, usual 0.5 to 1.5, "0.9 mm to 1.1 mm with steel rods; common practice, no source";
    /// Largest error of a wall that was gauged.
    WALL_ERROR = "error of a gauged wall" ["mm"] possible 0.0 to 3.0, usual 0.02 to 0.3, GUIDE;
    /// Mass of a part or an assembly; 0 is a part that is not there.
    PART_MASS = "mass of a part" ["g"] possible 0.0 to 1e7, usual 1.0 to 5000.0, "model engines to marine engines";
    /// What may be taken off a part; 0 where nothing may.
    REMOVABLE_MASS = "mass that may be taken off a part" ["g"] possible 0.0 to 1e5, usual 0.0 to 30.0, GUIDE;
    /// Most that assemblies of one engine may differ by.
    MASS_BAND = "band of masses" ["g"] possible 0.0 to 1e4, usual 0.5 to 20.0, "printed: 2 g, 5 g and a quarter of an ounce";
    /// Oil in the passages of a crankpin.
    OIL_MASS = "oil of a crankpin" ["g"] possible 0.0 to 1000.0, usual 0.0 to 10.0, GUIDE;
    /// Share of the reciprocating mass that a crankshaft balances.
    RECIPROCATING_SHARE = "share of the reciprocating mass" ["1"] possible 0.0 to 1.0, usual 0.3 to 0.7,
        "0.5 for a right-angled V of two rods on a pin";
    /// What is left on a gap above the least that is wanted.
    GAP_ALLOWANCE = "allowance on an end gap" ["mm"] possible 0.0 to 1.0, usual 0.0 to 0.05, GUIDE;
    /// Standard uncertainty of an end gap.
    GAP_UNCERTAINTY = "standard uncertainty of an end gap" ["mm"] possible 0.0 to 0.5, usual 0.003 to 0.03,
        "a feeler strip is read to 0.01 mm to 0.03 mm";
    /// Standard uncertainty of a size; 0 leaves it out.
    SIZE_DEVIATION = "standard uncertainty of a size" ["mm"] possible 0.0 to 0.1, usual 0.0003 to 0.01, GUIDE;
    /// Protrusion that a liner is to have.
    LINER_PROTRUSION = "protrusion of a liner" ["mm"] possible -1.0 to 1.0, usual 0.0 to 0.2, "printed: 0.03 mm to 0.15 mm";
    /// Unevenness of the seat of a liner, or what the protrusions of neighbours may differ by.
    SEAT_UNEVENNESS = "unevenness of a seat or of protrusions" ["mm"] possible 0.0 to 1.0, usual 0.0 to 0.08,
        "printed: 0.025 mm round a ring, cupped by 0.035 mm, 0.05 mm between neighbours";
    /// Thickness of one shim.
    SHIM = "thickness of a shim" ["mm"] possible 0.01 to 3.0, usual 0.04 to 1.8, "printed: 0.05 mm to 1.73 mm";
    /// Standard uncertainty of a protrusion.
    PROTRUSION_UNCERTAINTY = "standard uncertainty of a protrusion" ["mm"] possible 0.0 to 0.2, usual 0.002 to 0.02, GUIDE;
    /// Most that protrusions of one engine may differ by.
    PROTRUSION_SPREAD = "spread of protrusions" ["mm"] possible 0.001 to 2.0, usual 0.03 to 0.3, "bands of gaskets are 0.05 mm wide";
    /// A roughness of the wall of a bore: peaks, core or valleys.
    ROUGHNESS = "roughness of a bore" ["um"] possible 0.0 to 20.0, usual 0.02 to 5.0, "plateaus: peaks 0.25 um, core 1.1 um, valleys 1.8 um";
    /// Share of the surface that is material at a height.
    MATERIAL_RATIO = "material ratio" ["%"] possible 0.0 to 100.0, usual 1.0 to 95.0, "a share of the surface";
    /// Angle between the two directions of the marks of a hone.
    CROSSHATCH = "crosshatch angle" ["deg"] possible 0.0 to 180.0, usual 20.0 to 70.0, "printed: 30 to 60 degrees between the marks";
    /// Standard uncertainty of a roughness.
    ROUGHNESS_UNCERTAINTY = "standard uncertainty of a roughness" ["um"] possible 0.0 to 5.0, usual 0.005 to 0.3, GUIDE;
    /// Standard uncertainty of a material ratio.
    MATERIAL_RATIO_UNCERTAINTY = "standard uncertainty of a material ratio" ["%"] possible 0.0 to 30.0, usual 0.2 to 5.0, GUIDE;
    /// Standard uncertainty of a crosshatch angle.
    CROSSHATCH_UNCERTAINTY = "standard uncertainty of a crosshatch angle" ["deg"] possible 0.0 to 30.0, usual 0.2 to 5.0, GUIDE;
    /// Piston from top dead centre down.
    TRAVEL = "travel of a piston" ["mm"] possible 0.0 to 5000.0, usual 0.0 to 250.0, "the stroke";
}

/// Refuses a number that does not lie above another one.
pub(crate) fn check_above(field: &str, value: f64, other: f64, reason: &str) -> Result<(), Error> {
    match value > other {
        true => Ok(()),
        false => Err(Error::new(ErrorKind::OutOfOrder, value.to_string(), reason).value(value).at(field)),
    }
}

impl Bound {
    /// How a value stands to this bound. A value that is not finite is impossible.
    #[must_use]
    #[inline]
    pub fn judge(&self, value: f64) -> Verdict {
        let within = |(lower, upper): (f64, f64)| value >= lower && value <= upper;
        match (within(self.possible), within(self.usual)) {
            (false, _) => Verdict::Impossible,
            (true, false) => Verdict::Odd,
            (true, true) => Verdict::Usual,
        }
    }

    /// The bound of the same quantity counted the other way.
    pub(crate) fn negative(&self) -> Bound {
        let turned = |(low, high): (f64, f64)| (-high, -low);
        Bound { possible: turned(self.possible), usual: turned(self.usual), ..*self }
    }

    /// What both bounds take; where nothing is left, what the other takes: it is the more special one.
    pub(crate) fn and(&self, other: &Bound) -> Bound {
        let both = |(a, b): (f64, f64), (c, d): (f64, f64)| {
            let (low, high) = (if a > c { a } else { c }, if b < d { b } else { d });
            if low < high { (low, high) } else { (c, d) }
        };
        Bound { possible: both(self.possible, other.possible), usual: both(self.usual, other.usual), ..*self }
    }

    /// Refuses a number that is impossible or not finite; used where there is no text to quote.
    ///
    /// # Errors
    /// [`ErrorKind::NotFinite`] or [`ErrorKind::OutOfRange`], with `field` as given.
    #[inline]
    pub fn check(&self, field: &str, value: f64) -> Result<f64, Error> {
        match self.judge(value) {
            Verdict::Impossible => Err(self.refuse_at(field, value)),
            Verdict::Usual | Verdict::Odd => Ok(value),
        }
    }

    /// Apart, so that [`Self::check`] is two comparisons where it is called.
    #[cold]
    fn refuse_at(&self, field: &str, value: f64) -> Error {
        self.refuse(value, &value.to_string()).at(field)
    }

    pub(crate) fn usual_text(&self) -> String {
        let unit = if self.unit == "1" { "" } else { self.unit };
        format!("{} to {} {unit}", rounded(self.usual.0), rounded(self.usual.1)).trim_end().to_owned()
    }

    pub(crate) fn refuse(&self, value: f64, typed: &str) -> Error {
        let kind = if value.is_finite() { ErrorKind::OutOfRange } else { ErrorKind::NotFinite };
        let error = Error::new(kind, typed, format!("impossible for the {}", self.label));
        let error =
            error.limits(self.possible.0, self.possible.1, self.unit).suggest(self.meant(value, typed));
        if value.is_finite() { error.value(value) } else { error }
    }

    /// The commonest slip that explains an impossible value and leads to a usual one.
    fn meant(&self, value: f64, typed: &str) -> Option<String> {
        // no slip explains more, and undoing one would overflow, which kills a host that unmasks floating-point traps
        if !value.is_finite() || value.abs() >= LARGEST_SLIP {
            return None;
        }
        // a bare number is one in the unit of the bound
        let bare = typed.ends_with(|c: char| c.is_ascii_digit()) || typed.is_empty();
        let typed = if bare { self.unit } else { typed };
        SLIPS
            .iter()
            .filter(|slip| slip.unit == self.unit && typed.ends_with(slip.typed_in))
            .map(|slip| (slip, (slip.correct)(value)))
            .find(|(_, corrected)| self.judge(*corrected) == Verdict::Usual)
            .map(|(slip, corrected)| {
                let unit = if slip.written.is_empty() { "" } else { " " };
                format!("{}{unit}{} ({})", rounded(corrected), slip.written, slip.what)
            })
    }
}

/// A value of any quantity, in its unit, from which no slip leads to a usual one.
const LARGEST_SLIP: f64 = 1e9;

/// A slip of unit: how it is undone and what it was.
struct Slip {
    unit: &'static str,
    /// how the typed text ends when it can be this slip
    typed_in: &'static str,
    /// unit of the suggestion
    written: &'static str,
    correct: fn(f64) -> f64,
    what: &'static str,
}

/// Tried in this order; the commonest first.
const SLIPS: &[Slip] = &[
    Slip { unit: "mm", typed_in: "mm", written: "mm", correct: |v| v * 25.4, what: "inches entered as mm" },
    Slip {
        unit: "mm",
        typed_in: "in",
        written: "mm",
        correct: |v| v / 1000.0,
        what: "thou entered as inches",
    },
    Slip { unit: "mm", typed_in: "in", written: "mm", correct: |v| v / 25.4, what: "mm entered as inches" },
    Slip {
        unit: "mm",
        typed_in: "mm",
        written: "mm",
        correct: |v| v / 1000.0,
        what: "micrometres entered as mm",
    },
    Slip { unit: "mm", typed_in: "mm", written: "mm", correct: |v| v * 0.0254, what: "thou entered as mm" },
    Slip {
        unit: "mm",
        typed_in: "",
        written: "mm",
        correct: |v| v * 1000.0,
        what: "mm entered as micrometres, or metres as mm",
    },
    Slip {
        unit: "mm",
        typed_in: "",
        written: "mm",
        correct: |v| v / 10.0,
        what: "the decimal point one place off",
    },
    Slip {
        unit: "mm",
        typed_in: "",
        written: "mm",
        correct: |v| v * 10.0,
        what: "the decimal point one place off",
    },
    Slip {
        unit: "mm",
        typed_in: "",
        written: "mm",
        correct: |v| v / 100.0,
        what: "the decimal point two places off",
    },
    Slip { unit: "mm", typed_in: "", written: "mm", correct: |v| -v, what: "the sign" },
    Slip { unit: "mm", typed_in: "", written: "mm", correct: |v| v / 2.0, what: "both sides for one" },
    Slip { unit: "mm", typed_in: "", written: "mm", correct: |v| v * 2.0, what: "one side for both" },
    Slip {
        unit: "C",
        typed_in: "C",
        written: "C",
        correct: |v| (v - 32.0) / 1.8,
        what: "Fahrenheit entered as Celsius",
    },
    Slip {
        unit: "C",
        typed_in: "C",
        written: "C",
        correct: |v| v - 273.15,
        what: "kelvin entered as Celsius",
    },
    Slip {
        unit: "C",
        typed_in: "F",
        written: "C",
        correct: |v| v * 1.8 + 32.0,
        what: "Celsius entered as Fahrenheit",
    },
    Slip {
        unit: "C",
        typed_in: "",
        written: "C",
        correct: |v| v / 10.0,
        what: "the decimal point one place off",
    },
    Slip {
        unit: "K",
        typed_in: "",
        written: "K",
        correct: |v| v / 10.0,
        what: "the decimal point one place off",
    },
    Slip {
        unit: "um",
        typed_in: "um",
        written: "um",
        correct: |v| v * 0.0254,
        what: "microinches entered as um",
    },
    Slip {
        unit: "1/K",
        typed_in: "",
        written: "/K",
        correct: |v| v * 1e-6,
        what: "the factor 1e-6 left out",
    },
    Slip {
        unit: "1/K",
        typed_in: "",
        written: "/K",
        correct: |v| v * 1.8e-6,
        what: "the factor 1e-6 left out, per degree Fahrenheit",
    },
    Slip {
        unit: "1/K",
        typed_in: "",
        written: "/K",
        correct: |v| v * 1e-3,
        what: "per mille entered as per unit",
    },
    Slip { unit: "1", typed_in: "", written: "", correct: |v| v / 100.0, what: "per cent" },
];

/// A suggestion needs no more than five significant digits.
fn rounded(value: f64) -> f64 {
    format!("{value:.4e}").parse().unwrap_or(value)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_bound_is_in_order() {
        for (name, b) in ALL {
            let row = [b.possible.0, b.usual.0, b.usual.1, b.possible.1];
            assert!(row.windows(2).all(|w| w[0] <= w[1]), "{name}: {row:?}");
            assert!(!b.reason.is_empty() && !b.label.is_empty(), "{name}");
        }
    }

    #[test]
    fn slips_are_named() {
        let meant = |b: Bound, v: f64| b.refuse(v, "").did_you_mean().map(str::to_owned);
        assert_eq!(meant(BORE, 3.386).as_deref(), Some("86.004 mm (inches entered as mm)"));
        assert_eq!(meant(SHOP_TEMPERATURE, 80.6).as_deref(), Some("27 C (Fahrenheit entered as Celsius)"));
        assert_eq!(meant(EXPANSION, 20.5).as_deref(), Some("0.0000205 /K (the factor 1e-6 left out)"));
        assert_eq!(meant(COATING, 15.0).as_deref(), Some("0.015 mm (micrometres entered as mm)"));
        assert_eq!(meant(BORE, f64::NAN), None);
    }

    #[test]
    fn not_finite_is_impossible() {
        for v in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
            assert_eq!(BORE.judge(v), Verdict::Impossible);
            assert_eq!(BORE.check("bore", v).unwrap_err().kind(), ErrorKind::NotFinite);
        }
    }
}
