//! Two tubes pressed together: Lame's formulas, once.

use crate::bounds;
use crate::calc::{Formula, formula};
use crate::error::Error;

formula! {
    /// Strain of the outer part at the joint, per pressure.
    OuterGive: c ["1/MPa"] = (d, outside, e, nu) => ((outside * outside + d * d) / (outside * outside - d * d) + nu) / e;
        source "Lame, thick tube under inner pressure, free ends";
    /// Strain of the inner part at the joint, per pressure, taken as positive; a hole of 0 is a solid part.
    InnerGive: c ["1/MPa"] = (d, inside, e, nu) => ((d * d + inside * inside) / (d * d - inside * inside) - nu) / e;
        source "Lame, thick tube under outer pressure, free ends";
    /// Pressure in the joint.
    JointPressure: p ["MPa"] = (interference, d, c_outer, c_inner) => interference / (d * (c_outer + c_inner));
        source "both displacements make up the interference";
    /// Hoop stress of the outer part at the joint.
    OuterHoop: sigma ["MPa"] = (p, d, outside) => p * (outside * outside + d * d) / (outside * outside - d * d);
        source "Lame, thick tube under inner pressure";
    /// Hoop stress of the outer part at its outside.
    OuterHoopOutside: sigma ["MPa"] = (p, d, outside) => 2.0 * p * d * d / (outside * outside - d * d);
        source "Lame, thick tube under inner pressure";
    /// Hoop stress of the inner part at the joint.
    InnerHoop: sigma ["MPa"] = (p, d, inside) => 0.0 - p * (d * d + inside * inside) / (d * d - inside * inside);
        source "Lame, thick tube under outer pressure";
    /// Hoop stress of the inner part at its hole.
    InnerHoopInside: sigma ["MPa"] = (p, d, inside) => 0.0 - 2.0 * p * d * d / (d * d - inside * inside);
        source "Lame, thick tube under outer pressure";
    /// How much the hole of the inner part becomes smaller.
    HoleShrinkage: shrinkage ["mm"] = (p, d, inside, e) => 2.0 * p * d * d * inside / (e * (d * d - inside * inside));
        source "Lame, thick tube under outer pressure, free ends";
}

/// How a material gives way.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Elastic {
    modulus_mpa: f64,
    poisson: f64,
}

impl Elastic {
    /// With both numbers checked; `fields` names them in an error.
    pub(crate) fn new(fields: [&str; 2], modulus_mpa: f64, poisson: f64) -> Result<Self, Error> {
        bounds::MODULUS.check(fields[0], modulus_mpa)?;
        bounds::POISSON.check(fields[1], poisson)?;
        Ok(Elastic { modulus_mpa, poisson })
    }
}

/// Two tubes with one joint: diameters in mm, `inside < joint < outside`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Joint {
    pub(crate) inside: f64,
    pub(crate) joint: f64,
    pub(crate) outside: f64,
    pub(crate) inner: Elastic,
    pub(crate) outer: Elastic,
}

impl Joint {
    /// Pressure in MPa; without interference there is none.
    pub(crate) fn pressure(&self, interference_mm: f64) -> f64 {
        let c_outer =
            OuterGive::evaluate([self.joint, self.outside, self.outer.modulus_mpa, self.outer.poisson]);
        let c_inner =
            InnerGive::evaluate([self.joint, self.inside, self.inner.modulus_mpa, self.inner.poisson]);
        // a comparison and not `max`, so that no zero is negative
        let interference = if interference_mm > 0.0 { interference_mm } else { 0.0 };
        JointPressure::evaluate([interference, self.joint, c_outer, c_inner])
    }

    /// How much a pressure makes the hole smaller, in mm.
    pub(crate) fn hole_shrinkage(&self, pressure_mpa: f64) -> f64 {
        HoleShrinkage::evaluate([pressure_mpa, self.joint, self.inside, self.inner.modulus_mpa])
    }

    /// Hoop stresses in MPa: outer part at the joint and at its outside, inner part at the joint and at its hole.
    pub(crate) fn hoop_stresses(&self, pressure_mpa: f64) -> [f64; 4] {
        let of_outer = [pressure_mpa, self.joint, self.outside];
        let of_inner = [pressure_mpa, self.joint, self.inside];
        let at_joint = InnerHoop::evaluate(of_inner);
        // a hole, however small, doubles the stress; where there is none, it is the same everywhere
        let inside = if self.inside > 0.0 { InnerHoopInside::evaluate(of_inner) } else { at_joint };
        [OuterHoop::evaluate(of_outer), OuterHoopOutside::evaluate(of_outer), at_joint, inside]
    }
}
