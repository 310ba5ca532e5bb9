//! Functions of an engine's sizes, ready made from the formulas of their stages.

use super::{Contributor, Function};
use crate::bounds::{self, Bound};
use crate::calc::{Expression, Formula, Model};
use crate::choice::choices;
use crate::clearance::Bench;
use crate::clearance::ring::{GapInBore, HotGapExact};
use crate::error::{Error, ErrorKind};
use crate::growth::MeanGrowth;
use crate::job::nearest;
use crate::shape::deck::{ClearanceVolume, Cylinder, DeckClearance, LinerProtrusion, Ratio, Squish};
use crate::size::REFERENCE_TEMPERATURE_C;

choices! {
    /// Stacks of an engine that are ready made.
    EngineStack {
        /// From the deck down to the crown, mm.
        DeckClearance = "deck_clearance",
        /// From the crown to the head, mm.
        Squish = "squish",
        /// Compression ratio.
        CompressionRatio = "compression_ratio",
        /// Bore less piston at 20 C over the diameter, mm: any piston of a batch in any bore.
        BenchClearance = "bench_clearance",
        /// End gap of a ring in its bore, mm, from the gap in a gauge.
        RingGap = "ring_gap",
        /// End gap of a ring with bore and ring at their temperatures, mm.
        HotRingGap = "hot_ring_gap",
        /// Flange of a liner above the deck, mm.
        LinerProtrusion = "liner_protrusion",
    }
}

/// A contributor of a ready-made stack: its name, and what its nominal must lie within.
type Part = (&'static str, &'static Bound);

const BLOCK: Part = ("block_height", &bounds::BLOCK_HEIGHT);
const STROKE: Part = ("stroke", &bounds::STROKE);
const ROD: Part = ("rod", &bounds::ROD);
const HEIGHT: Part = ("compression_height", &bounds::COMPRESSION_HEIGHT);
const GASKET: Part = ("gasket", &bounds::GASKET);
const BORE: Part = ("bore", &bounds::BORE);

impl EngineStack {
    fn parts(self) -> &'static [Part] {
        match self {
            EngineStack::DeckClearance => &[BLOCK, STROKE, ROD, HEIGHT],
            EngineStack::Squish => &[BLOCK, STROKE, ROD, HEIGHT, GASKET],
            EngineStack::CompressionRatio => &[
                BORE,
                STROKE,
                BLOCK,
                ROD,
                HEIGHT,
                ("head_volume", &bounds::HEAD_VOLUME),
                ("gasket_bore", &bounds::BORE),
                GASKET,
                ("crown_volume", &bounds::CROWN_VOLUME),
                ("crevice_volume", &bounds::CREVICE_VOLUME),
            ],
            EngineStack::BenchClearance => &[BORE, ("piston", &bounds::PISTON)],
            EngineStack::RingGap => &[("gap", &bounds::RING_GAP), ("gauge", &bounds::BORE), BORE],
            EngineStack::HotRingGap => &[
                ("gap", &bounds::RING_GAP),
                BORE,
                ("bore_temperature", &bounds::RUNNING_TEMPERATURE),
                ("bore_expansion", &bounds::EXPANSION),
                ("ring_temperature", &bounds::RUNNING_TEMPERATURE),
                ("ring_expansion", &bounds::EXPANSION),
            ],
            EngineStack::LinerProtrusion => &[
                ("flange", &bounds::LINER_FLANGE),
                ("shim", &bounds::LINER_SHIM),
                ("counterbore", &bounds::LINER_FLANGE),
            ],
        }
    }

    /// Names of its contributors, in order: lengths in mm, volumes in cm3, temperatures in C, expansions per kelvin.
    #[must_use]
    pub fn contributors(self) -> Vec<&'static str> {
        self.parts().iter().map(|(name, _)| *name).collect()
    }

    /// Unit of a contributor; of another name none.
    pub(super) fn unit_of(self, contributor: &str) -> &'static str {
        self.parts().iter().find(|(name, _)| *name == contributor).map_or("", |(_, bound)| bound.unit)
    }

    /// Unit of its result.
    #[must_use]
    pub fn unit(self) -> &'static str {
        if self == EngineStack::CompressionRatio { "1" } else { "mm" }
    }

    /// Its function of the contributors, in their order.
    #[must_use]
    pub fn model(self) -> Model {
        match self {
            EngineStack::DeckClearance => Model::of_formula(DeckClearance),
            EngineStack::Squish => Model::of_array(|[block, stroke, rod, height, gasket]| {
                Squish::evaluate([DeckClearance::evaluate([block, stroke, rod, height]), gasket])
            }),
            EngineStack::CompressionRatio => Model::of_array(compression_ratio),
            EngineStack::BenchClearance => Model::of_formula(Bench),
            EngineStack::RingGap => Model::of_formula(GapInBore),
            EngineStack::HotRingGap => Model::of_array(|[gap, bore, bore_t, bore_a, ring_t, ring_a]| {
                HotGapExact::evaluate([gap, bore, strain(bore_a, bore_t), strain(ring_a, ring_t)])
            }),
            EngineStack::LinerProtrusion => Model::of_formula(LinerProtrusion),
        }
    }

    /// The function of contributors of these names, given in any order.
    ///
    /// # Errors
    /// [`ErrorKind::MissingField`] for a contributor that is not given, [`ErrorKind::UnknownName`] for one that it has not, a nominal that is
    /// impossible for its name, and as [`Function::new`].
    pub fn function(self, contributors: Vec<Contributor>) -> Result<Function<Model>, Error> {
        let names = self.contributors();
        super::check_names(&contributors)?;
        for (k, contributor) in contributors.iter().enumerate() {
            let place = |field: &str| format!("contributors/{k}/{field}");
            let Some((_, bound)) = self.parts().iter().find(|(name, _)| *name == contributor.name()) else {
                let reason =
                    format!("{} has no such contributor; it has {}", self.spoken(), names.join(", "));
                let error = Error::new(ErrorKind::UnknownName, contributor.name(), reason).at(&place("name"));
                return Err(error.suggest(nearest(contributor.name(), &names)));
            };
            bound.check(&place("nominal"), contributor.nominal)?;
        }
        let given = |name: &&str| {
            contributors.iter().find(|c| c.name() == *name).cloned().ok_or_else(|| {
                let reason = format!("{} needs this contributor", self.spoken());
                Error::new(ErrorKind::MissingField, *name, reason).at("contributors")
            })
        };
        let ordered = names.iter().map(given).collect::<Result<Vec<_>, _>>()?;
        Function::new(ordered, self.model())
    }
}

fn compression_ratio<'s>(
    [bore, stroke, block, rod, height, head, gasket_bore, gasket, crown, crevice]: [Expression<'s>; 10],
) -> Expression<'s> {
    let deck = DeckClearance::evaluate([block, stroke, rod, height]);
    let volumes =
        [head, Cylinder::evaluate([gasket_bore, gasket]), Cylinder::evaluate([bore, deck]), crown, crevice];
    Ratio::evaluate([Cylinder::evaluate([bore, stroke]), ClearanceVolume::evaluate(volumes)])
}

/// Strain from 20 C by a mean coefficient from 20 C.
fn strain<'s>(expansion: Expression<'s>, temperature: Expression<'s>) -> Expression<'s> {
    MeanGrowth::evaluate([expansion, expansion, temperature, expansion.constant(REFERENCE_TEMPERATURE_C)])
}
