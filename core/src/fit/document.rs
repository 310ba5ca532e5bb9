//! The document of a hot fit, as it is written. `core/docs/hot-fit.md` explains every field.
//!
//! The structures of a shape, of its motion and of its temperatures are those of the job document, too.

use crate::job::document::{JobHead, Material, Window, document};
use crate::job::{Count, Entry, Pure, Words};
use crate::quantity::{Angle, Length, Temperature, TemperatureInterval};
use crate::shape::piston::WindowKind;
use schemars::JsonSchema;
use serde::Serialize;

document! {
    /// One piston in one bore, at temperature.
    FitDocument {
        /// `gaugepoint-fit`
        format: Entry<Words>,
        /// Version of the format: 1.
        version: Entry<Count>,
        /// What the fit is.
        fit: JobHead,
        /// Materials by name.
        materials: Vec<Material>,
        /// The bore.
        bore: FitBore,
        /// The piston.
        piston: FitPiston,
        /// Crank, rod and deck, where the place of the piston in the bore matters.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        motion: Option<Motion>,
        /// Temperatures of the running engine.
        running: Field,
        /// The piston that the maker's least clearance was made for.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        reference: Option<ReferenceCase>,
        /// Overlap that an elastic skirt is allowed to take.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        elastic: Option<Elastic>,
        /// What is looked for.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        find: Option<Find>,
        /// Data to draw.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        pictures: Option<Pictures>,
    }
    /// A diameter at 20 C with its uncertainty.
    Diameter {
        /// The diameter.
        value: Entry<Length>,
        /// Expanded uncertainty of it.
        expanded_uncertainty: Entry<Length>,
        /// Coverage factor of that uncertainty.
        coverage_factor: Entry<Pure>,
    }
    /// A bore.
    FitBore {
        /// Its size at 20 C.
        size: Diameter,
        /// Material of the wall that carries it.
        material: Entry<Words>,
        /// Its shape; round and straight without it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        shape: Option<BoreShape>,
    }
    /// The shape of a bore.
    BoreShape {
        /// By depth, rising.
        rows: Vec<BoreRow>,
        /// Openings in the wall, as the ports of a two-stroke engine.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        windows: Vec<Window>,
        /// Half-width of the error of the shape, on the radius; exact without it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        permissible_error: Option<Entry<Length>>,
    }
    /// The shape of a bore at one depth.
    BoreRow {
        /// Depth below the deck.
        depth: Entry<Length>,
        /// Mean diameter here less the size of the bore.
        deviation: Entry<Length>,
        /// Harmonics of the radius here, order 2 and up; the same orders in every row.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        harmonics: Vec<HarmonicRow>,
    }
    /// One harmonic of a radius.
    HarmonicRow {
        /// How many waves around the bore.
        order: Entry<Count>,
        /// Its part that is largest at 0 deg.
        cos: Entry<Length>,
        /// Its part that is largest a quarter wave further.
        sin: Entry<Length>,
    }
    /// A piston.
    FitPiston {
        /// Its diameter at the gauge point at 20 C.
        size: Diameter,
        /// Where the maker states the diameter: a height above the bottom edge of the skirt.
        gauge_height: Entry<Length>,
        /// Material of the skirt.
        material: Entry<Words>,
        /// Its shape.
        shape: PistonShape,
    }
    /// The shape of a piston.
    PistonShape {
        /// From the bottom edge of the skirt to the plane of the crown that is counted against the deck.
        height: Entry<Length>,
        /// Skirt first, then lands upward.
        surfaces: Vec<SurfaceShape>,
        /// Half-width of the error of the tables, on the radius; exact without it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        permissible_error: Option<Entry<Length>>,
    }
    /// A skirt or a land.
    SurfaceShape {
        /// What it is called.
        name: Entry<Words>,
        /// By height, rising, of a surface with two equal sides.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        rows: Vec<ShapeRow>,
        /// By height, rising, of a surface whose sides differ; in place of `rows`.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        side_rows: Vec<SideRow>,
        /// Half-width of the thrust panel; all round without it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        thrust_panel: Option<Entry<Angle>>,
        /// Half-width of the minor thrust panel; as the thrust panel without it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        minor_thrust_panel: Option<Entry<Angle>>,
        /// Where there is no metal, or no coating.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        windows: Vec<SurfaceWindow>,
        /// Thickness of a coating on one side that the gauge diameter does not hold.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        coating: Option<Entry<Length>>,
        /// Material of this surface, when it is not that of the skirt.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        material: Option<Entry<Words>>,
        /// What controlled expansion leaves of the growth.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        growth_ratio: Option<GrowthRatio>,
    }
    /// Diameters of a piston at one height.
    ShapeRow {
        /// Height above the bottom edge of the skirt.
        height: Entry<Length>,
        /// By how much the diameter on the thrust axis is below the gauge diameter; negative where it is larger.
        below: Entry<Length>,
        /// Diameter on the thrust axis less that on the pin axis.
        ovality: Entry<Length>,
        /// Extra diameter at 45 deg; positive is the fuller panel. In every row or in none.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        double_ovality: Option<Entry<Length>>,
    }
    /// Radii of a piston with two different sides at one height.
    SideRow {
        /// Height above the bottom edge of the skirt.
        height: Entry<Length>,
        /// By how much the radius on the major thrust side is below half the gauge diameter; negative where it is larger.
        thrust_below: Entry<Length>,
        /// The same on the pin axis, which both sides share.
        pin_below: Entry<Length>,
        /// The same on the minor thrust side.
        minor_thrust_below: Entry<Length>,
    }
    /// Where a surface lacks something.
    SurfaceWindow {
        /// What it lacks.
        kind: WindowKind,
        /// Angle at which it begins.
        from_angle: Entry<Angle>,
        /// Angle at which it ends, rising; from 350 deg to 10 deg is 20 deg wide.
        to_angle: Entry<Angle>,
        /// Height at which it begins.
        from_height: Entry<Length>,
        /// Height at which it ends.
        to_height: Entry<Length>,
    }
    /// Growth of a piston with struts over that of its alloy.
    GrowthRatio {
        /// On the thrust axis.
        thrust: Entry<Pure>,
        /// On the pin axis.
        pin: Entry<Pure>,
        /// Half-width of the error of both.
        permissible_error: Entry<Pure>,
    }
    /// Crank, rod and deck.
    Motion {
        /// Radius of the crank: half of the throw.
        crank_radius: Entry<Length>,
        /// Length of the rod.
        rod_length: Entry<Length>,
        /// Offset of the pin, positive towards the major thrust side; none without it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        pin_offset: Option<Entry<Length>>,
        /// Crown below the deck at top dead centre; negative where it stands out.
        deck_clearance: Entry<Length>,
    }
    /// Temperatures of the running engine: a preset, or all other fields.
    Field {
        /// Name of an illustrative duty.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        preset: Option<Entry<Words>>,
        /// Of the piston, by height, rising.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        piston: Vec<PistonTemperature>,
        /// Half-width of the error of all of them together.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        piston_permissible_error: Option<Entry<TemperatureInterval>>,
        /// Of the wall that carries the bore, by depth, rising: the mean over its section.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        bore: Vec<BoreTemperature>,
        /// Half-width of the error of all of them together.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        bore_permissible_error: Option<Entry<TemperatureInterval>>,
        /// Where they come from.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        origin: Option<Entry<Words>>,
    }
    /// Temperatures of the piston at one height: of the material that carries the diameter in that direction.
    PistonTemperature {
        /// Height above the bottom edge of the skirt.
        height: Entry<Length>,
        /// On the thrust axis.
        thrust: Entry<Temperature>,
        /// On the pin axis: the bosses and the crown that ties them.
        pin: Entry<Temperature>,
    }
    /// Temperature of the wall at one depth.
    BoreTemperature {
        /// Depth below the deck.
        depth: Entry<Length>,
        /// Mean over the section of the wall.
        temperature: Entry<Temperature>,
    }
    /// The original piston at the maker's least bench clearance.
    ReferenceCase {
        /// Least bench clearance the maker prints, over the diameter.
        least_clearance: Entry<Length>,
        /// Temperature it holds at.
        reference_temperature: Entry<Temperature>,
        /// Where it is printed.
        origin: Entry<Words>,
        /// Material of the original piston.
        material: Entry<Words>,
        /// Shape of the original piston; that of this piston without it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        shape: Option<PistonShape>,
    }
    /// Overlap that an elastic skirt takes.
    Elastic {
        /// Overlap on one side that is allowed.
        overlap_per_side: Entry<Length>,
        /// Who allows it.
        origin: Entry<Words>,
    }
    /// What is looked for.
    Find {
        /// The bore for this running clearance at the gauge point, over the diameter.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        bore_for_running_clearance: Option<Entry<Length>>,
        /// The bore for this smallest clearance of the skirt, on one side.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        bore_for_smallest_clearance: Option<Entry<Length>>,
        /// The highest temperature of the skirt for this clearance on the bench, over the diameter.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        skirt_temperature_for_bench_clearance: Option<Entry<Length>>,
    }
    /// Data to draw.
    Pictures {
        /// How many angles around the piston.
        angles: Entry<Count>,
        /// How many heights over every surface.
        heights: Entry<Count>,
        /// Crank angle of the map; top dead centre without it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        crank: Option<Entry<Angle>>,
    }
}
