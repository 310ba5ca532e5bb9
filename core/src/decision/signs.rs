//! Signs of damage: what was seen, answers to questions, and the causes that agree with both.
//!
#![doc = include_str!("../../docs/signs.md")]

use super::finding::{Place, What};
use crate::choice::choices;
use crate::error::{Error, ErrorKind};
use schemars::JsonSchema;
use serde::Serialize;

choices! {
    /// What is asked about a finding; each has the answer yes or no. Those on the piston itself are answered by its record.
    Question {
        /// Are both thrust faces marked alike?
        BothFaces = "both_faces",
        /// Is the ring zone clean?
        RingZoneClean = "ring_zone_clean",
        /// Did it come within the first hours after a rebuild?
        SoonAfterRebuild = "soon_after_rebuild",
        /// Is the metal dark, smeared or torn (no: bright and only polished)?
        DarkAndTorn = "dark_and_torn",
        /// Do the marks lie half-way between the boss and the middle of the panel?
        AtFortyFive = "at_45_degrees",
        /// Is it heaviest at the crown and lighter toward the skirt?
        FromTheCrown = "from_the_crown",
        /// Is the bottom edge alone marked?
        LowerEdgeAlone = "lower_edge_alone",
        /// Was the engine loaded before it was warm?
        LoadedCold = "loaded_cold",
        /// Does the pin turn freely in its boss?
        PinTurnsFreely = "pin_turns_freely",
        /// Is the deposit wet or oily?
        Oily = "oily",
        /// Is one side much heavier than the other?
        OneSided = "one_sided",
        /// Is coating or tin still there in the lows of the marks?
        CoatingInTheLows = "coating_in_the_lows",
        /// Was coolant short or the flow blocked?
        CoolantShort = "coolant_short",
        /// Was oil short, or its jet or gallery blocked?
        OilShort = "oil_short",
        /// Is there grit in the oil, the filter or the intake?
        GritFound = "grit_found",
        /// Is the oil thinned by fuel, or did the cylinder misfire?
        FuelInOil = "fuel_in_oil",
        /// Is the broken or melted edge pitted, as if it had been blasted with sand?
        PittedEdge = "pitted_edge",
        /// Is the surface that melted smooth?
        SmoothMelt = "smooth_melt",
        /// Was the engine run for long above its load?
        Overloaded = "overloaded",
        /// Is the mark the shape of a valve or of the head?
        ShapeOfValve = "shape_of_valve",
        /// Does the bore measure out of shape with the plate on and in shape without it, or the other way?
        ShapeByClamping = "shape_by_clamping",
        /// Does this piston stand lower than the others at top dead centre?
        StandsLow = "stands_low",
        /// Was a retaining ring used again, or of another pattern?
        RingUsedAgain = "ring_used_again",
        /// Is the rod bent or twisted by its gauge?
        RodBent = "rod_bent",
        /// Is the piston forged?
        Forged = "forged",
        /// Is the pin pressed into the rod?
        PinPressed = "pin_pressed",
        /// Is the pin held by retaining rings?
        PinInRetainingRings = "pin_in_retaining_rings",
        /// Has the skirt struts of steel cast in?
        SkirtStrutted = "skirt_strutted",
        /// Is the alloy hypereutectic?
        Hypereutectic = "hypereutectic",
    }
    /// An answer to a question.
    Answer {
        /// Yes.
        Yes = "yes",
        /// No.
        No = "no",
    }
    /// What a cause is about.
    Group {
        /// No fault.
        Normal = "normal",
        /// Too little room, or room in the wrong place.
        Clearance = "clearance",
        /// No film of oil.
        Lubrication = "lubrication",
        /// Too hot.
        Heat = "heat",
        /// Fuel, ignition, injection.
        Combustion = "combustion",
        /// Grit and broken pieces.
        Dirt = "dirt",
        /// Parts that do not stand true.
        Alignment = "alignment",
        /// Work that was done wrongly.
        Assembly = "assembly",
        /// Load and fatigue.
        Load = "load",
        /// Worn parts.
        Wear = "wear",
        /// Corrosion and cavitation.
        Corrosion = "corrosion",
    }
    /// A cause of damage.
    Cause {
        /// Running as it should.
        NormalRunning = "normal_running",
        /// Running-in.
        RunningIn = "running_in",
        /// A coating that is made to wear to shape.
        CoatingWearsToShape = "coating_wears_to_shape",
        /// Oil comes past rings or guides.
        OilPastRingsOrGuides = "oil_past_rings_or_guides",
        /// One ring or one guide lets oil through.
        OneRingOrGuide = "one_ring_or_guide",
        /// Gas blows past the rings.
        BlowBy = "blow_by",
        /// The piston ran too hot.
        PistonTooHot = "piston_too_hot",
        /// Long idling, or an oil that cokes.
        IdlingOrOil = "idling_or_oil",
        /// Service wear of the coating.
        CoatingWorn = "coating_worn",
        /// The coating was not bonded.
        CoatingNotBonded = "coating_not_bonded",
        /// The bore is too small for the piston.
        BoreTooSmall = "bore_too_small",
        /// Bolts, plate, gasket or liner seat pull the bore out of shape.
        BorePulledByClamping = "bore_pulled_by_clamping",
        /// The bore is tight at its bottom.
        BoreTightBelow = "bore_tight_below",
        /// The skirt has the wrong ovality.
        WrongOvality = "wrong_ovality",
        /// The piston grew before the bore did.
        LoadedBeforeWarm = "loaded_before_warm",
        /// Struts hold the skirt where it should give.
        SkirtHeldByStruts = "skirt_held_by_struts",
        /// The pin is tight in its boss.
        PinTight = "pin_tight",
        /// The pin got no oil.
        PinDry = "pin_dry",
        /// The press fit of the pin squeezes the boss or the rod eye.
        PressFitTooTight = "press_fit_too_tight",
        /// The boss region ran too hot.
        BossTooHot = "boss_too_hot",
        /// The oil film broke at one place: jet, gallery, level.
        OilFilmLost = "oil_film_lost",
        /// The whole engine lost its oil.
        OilLost = "oil_lost",
        /// Fuel washed the oil off the wall.
        FuelWash = "fuel_wash",
        /// Cooling failed at one place.
        LocalCooling = "local_cooling",
        /// The whole engine lost its coolant.
        CoolantLost = "coolant_lost",
        /// Mixture, timing or load made the crown too hot.
        CrownTooHot = "crown_too_hot",
        /// Knock.
        Knock = "knock",
        /// Ignition by a hot spot.
        PreIgnition = "pre_ignition",
        /// Late or dribbling injection.
        InjectionFault = "injection_fault",
        /// Abrasive dirt in the oil.
        GritInOil = "grit_in_oil",
        /// Pieces or dust between ring and wall.
        PiecesOrDust = "pieces_or_dust",
        /// A bent or twisted rod.
        RodBentOrTwisted = "rod_bent_or_twisted",
        /// A bore that is not square to the crankshaft.
        BoreNotSquare = "bore_not_square",
        /// A force along the pin.
        ForceAlongPin = "force_along_pin",
        /// A wrong or used retaining ring.
        WrongRetainingRing = "wrong_retaining_ring",
        /// A valve or the head met the piston.
        MetValveOrHead = "met_valve_or_head",
        /// Overload.
        Overload = "overload",
        /// Cracks by heat and cold in turn.
        ThermalFatigue = "thermal_fatigue",
        /// Cracks by load cycles.
        LoadFatigue = "load_fatigue",
        /// A brittle alloy that was struck or knocked.
        BrittleAlloy = "brittle_alloy",
        /// Rings that were loose in their grooves.
        LooseRings = "loose_rings",
        /// Cavitation of the coolant.
        Cavitation = "cavitation",
        /// Wrong protrusion of the liner, or a dirty seat.
        LinerSeat = "liner_seat",
        /// The cooling jet is missing or misses.
        JetMissing = "jet_missing",
        /// The bridge between the ports was not relieved.
        BridgeNotRelieved = "bridge_not_relieved",
        /// Fuel, coolant or oil filled the cylinder.
        LiquidLock = "liquid_lock",
    }
}

/// Answers that a sign or a cause needs.
type Needs = &'static [(Question, bool)];

/// A sign of damage.
#[derive(Debug, Clone, Copy)]
pub struct Sign {
    /// Its word.
    pub word: &'static str,
    /// How it looks.
    pub looks: &'static str,
    /// Where it is seen.
    pub places: &'static [Place],
    /// What is seen.
    pub what: &'static [What],
    /// Answers without which it is another sign.
    pub needs: Needs,
    /// What may be behind it, each with the answers it needs besides.
    pub causes: &'static [(Cause, Needs)],
    /// What to look at next.
    pub check_next: &'static str,
}

use Cause as C;
use Question as Q;

const YES: bool = true;
const NO: bool = false;

/// The signs. Common practice of the trade, no source.
pub const SIGNS: [Sign; 31] = [
    Sign {
        word: "carbon_on_crown",
        looks: "dull layer on the crown",
        places: &[Place::Crown],
        what: &[What::Carbon],
        needs: &[],
        causes: &[
            (C::NormalRunning, &[(Q::Oily, NO), (Q::OneSided, NO)]),
            (C::OilPastRingsOrGuides, &[(Q::Oily, YES)]),
            (C::OneRingOrGuide, &[(Q::OneSided, YES)]),
        ],
        check_next: "rings and valve guides",
    },
    Sign {
        word: "rings_stuck_in_carbon",
        looks: "hard carbon in the grooves, rings that do not move",
        places: &[Place::RingGroove, Place::Ring],
        what: &[What::Carbon, What::RingStuck],
        needs: &[],
        causes: &[(C::BlowBy, &[]), (C::PistonTooHot, &[(Q::CoolantShort, YES)]), (C::IdlingOrOil, &[])],
        check_next: "side and back clearance after cleaning without cutting the groove",
    },
    Sign {
        word: "running_in_marks",
        looks: "fine bright marks along the stroke in the middle of the panels",
        places: &[Place::Skirt],
        what: &[What::Scuffing, What::Scoring],
        needs: &[(Q::DarkAndTorn, NO), (Q::AtFortyFive, NO), (Q::CoatingInTheLows, YES)],
        causes: &[(C::RunningIn, &[])],
        check_next: "the size of the skirt",
    },
    Sign {
        word: "coating_lost",
        looks: "panels bare, or coating in flakes",
        places: &[Place::Skirt],
        what: &[What::CoatingWorn, What::CoatingFlaking],
        needs: &[],
        causes: &[
            (C::CoatingWorn, &[]),
            (C::FuelWash, &[(Q::FuelInOil, YES)]),
            (C::CoatingWearsToShape, &[(Q::SoonAfterRebuild, YES)]),
            (C::CoatingNotBonded, &[(Q::SoonAfterRebuild, YES)]),
        ],
        check_next: "the size of the bare metal",
    },
    Sign {
        word: "tight_skirt",
        looks: "several dark areas around the skirt on both thrust faces, ring zone clean",
        places: &[Place::Skirt],
        what: &[What::Scuffing, What::Seizure],
        needs: &[
            (Q::BothFaces, YES),
            (Q::RingZoneClean, YES),
            (Q::DarkAndTorn, YES),
            (Q::AtFortyFive, NO),
            (Q::LowerEdgeAlone, NO),
        ],
        causes: &[
            (C::BoreTooSmall, &[(Q::SoonAfterRebuild, YES)]),
            (C::BorePulledByClamping, &[(Q::ShapeByClamping, YES)]),
            (C::LocalCooling, &[(Q::CoolantShort, YES)]),
            (C::SkirtHeldByStruts, &[(Q::SkirtStrutted, YES)]),
        ],
        check_next: "clearance of all cylinders, with the plate on; coolant",
    },
    Sign {
        word: "four_corner_scuff",
        looks: "marks half-way between boss and panel, in diagonal pairs, panels clean",
        places: &[Place::Skirt],
        what: &[What::Scuffing, What::Seizure],
        needs: &[(Q::AtFortyFive, YES)],
        causes: &[
            (C::PinTight, &[(Q::PinTurnsFreely, NO)]),
            (C::PinDry, &[(Q::PinTurnsFreely, NO)]),
            (C::PressFitTooTight, &[(Q::PinPressed, YES)]),
            (C::WrongOvality, &[(Q::PinTurnsFreely, YES)]),
            (C::BossTooHot, &[(Q::Overloaded, YES)]),
        ],
        check_next: "clearance and interference of the pin, its oil, ovality",
    },
    Sign {
        word: "one_face_seized",
        looks: "major thrust face alone, dark and torn, the other face clean",
        places: &[Place::Skirt],
        what: &[What::Scuffing, What::Seizure],
        needs: &[(Q::BothFaces, NO), (Q::DarkAndTorn, YES), (Q::AtFortyFive, NO), (Q::LowerEdgeAlone, NO)],
        causes: &[(C::OilFilmLost, &[(Q::CoolantShort, NO)]), (C::LocalCooling, &[(Q::CoolantShort, YES)])],
        check_next: "oil jets, oil level, cooling of this cylinder; it is not clearance",
    },
    Sign {
        word: "lower_edge_seized",
        looks: "bottom edge of the skirt alone",
        places: &[Place::Skirt],
        what: &[What::Scuffing, What::Seizure],
        needs: &[(Q::LowerEdgeAlone, YES)],
        causes: &[(C::BoreTightBelow, &[]), (C::BorePulledByClamping, &[(Q::ShapeByClamping, YES)])],
        check_next: "the bore at its bottom, the seat of the liner",
    },
    Sign {
        word: "dry_stripes",
        looks: "narrow dry stripes along the panel, ring zone good",
        places: &[Place::Skirt],
        what: &[What::Scuffing, What::Scoring],
        needs: &[
            (Q::DarkAndTorn, NO),
            (Q::RingZoneClean, YES),
            (Q::CoatingInTheLows, NO),
            (Q::AtFortyFive, NO),
        ],
        causes: &[(C::FuelWash, &[])],
        check_next: "injection or ignition, cold starting, fuel in the oil",
    },
    Sign {
        word: "seized_from_the_crown",
        looks: "top lands torn all around, less toward the skirt, ring faces seized",
        places: &[Place::TopLand, Place::RingLand, Place::Skirt],
        what: &[What::Scuffing, What::Seizure],
        needs: &[(Q::FromTheCrown, YES), (Q::DarkAndTorn, YES)],
        causes: &[
            (C::CrownTooHot, &[]),
            (C::Overload, &[(Q::Overloaded, YES)]),
            (C::CoolantLost, &[(Q::CoolantShort, YES)]),
        ],
        check_next: "mixture or injection, timing, cooling",
    },
    Sign {
        word: "skirt_overheated",
        looks: "large seized areas in the middle of both panels",
        places: &[Place::Skirt],
        what: &[What::Seizure],
        needs: &[(Q::BothFaces, YES), (Q::RingZoneClean, NO), (Q::FromTheCrown, NO), (Q::AtFortyFive, NO)],
        causes: &[(C::CoolantLost, &[(Q::CoolantShort, YES)]), (C::OilLost, &[(Q::OilShort, YES)])],
        check_next: "the shape and hardness of the bores, coolant, oil",
    },
    Sign {
        word: "cold_stuck",
        looks: "four small marks after load on a cold engine",
        places: &[Place::Skirt],
        what: &[What::Scuffing, What::Seizure],
        needs: &[(Q::LoadedCold, YES), (Q::FromTheCrown, NO)],
        causes: &[(C::LoadedBeforeWarm, &[(Q::Forged, YES)]), (C::BoreTooSmall, &[(Q::Forged, NO)])],
        check_next: "the clearance that the maker asks for, and how the engine is warmed",
    },
    Sign {
        word: "ring_scuffed",
        looks: "marks along the stroke on the ring faces, their coat gone",
        places: &[Place::Ring],
        what: &[What::Scuffing, What::Scoring, What::CoatingWorn],
        needs: &[],
        causes: &[
            (C::PiecesOrDust, &[(Q::GritFound, YES)]),
            (C::FuelWash, &[(Q::FuelInOil, YES)]),
            (C::PistonTooHot, &[(Q::CoolantShort, YES)]),
        ],
        check_next: "the bore wall and the air filter",
    },
    Sign {
        word: "matt_wear",
        looks: "dull, pitted wear over the skirt",
        places: &[Place::Skirt],
        what: &[What::MattWear],
        needs: &[],
        causes: &[(C::GritInOil, &[(Q::GritFound, YES)]), (C::FuelWash, &[(Q::FuelInOil, YES)])],
        check_next: "filters and oil galleries; the size of the skirt",
    },
    Sign {
        word: "diagonal_path",
        looks: "one side over its full height and the opposite lower edge",
        places: &[Place::Skirt, Place::BoreWall],
        what: &[What::DiagonalWear],
        needs: &[],
        causes: &[(C::RodBentOrTwisted, &[(Q::RodBent, YES)]), (C::BoreNotSquare, &[(Q::RodBent, NO)])],
        check_next: "the rod for bend and twist, then the squareness of the bore",
    },
    Sign {
        word: "land_broken_by_knock",
        looks: "second or top land broken downward, edge pitted",
        places: &[Place::TopLand, Place::RingLand],
        what: &[What::Fracture],
        needs: &[],
        causes: &[
            (C::Knock, &[(Q::PittedEdge, YES)]),
            (C::BrittleAlloy, &[(Q::Hypereutectic, YES)]),
            (C::Overload, &[(Q::Overloaded, YES), (Q::PittedEdge, NO)]),
        ],
        check_next: "compression, timing, fuel; the bore wall",
    },
    Sign {
        word: "hole_in_crown",
        looks: "crown melted through, edges smooth",
        places: &[Place::Crown],
        what: &[What::Hole, What::Erosion],
        needs: &[(Q::SmoothMelt, YES)],
        causes: &[(C::PreIgnition, &[]), (C::InjectionFault, &[(Q::FuelInOil, YES)])],
        check_next: "plugs, deposits, valves, injectors",
    },
    Sign {
        word: "crown_edge_eroded",
        looks: "pits at the squish edge or the rim of the bowl",
        places: &[Place::Crown, Place::TopLand],
        what: &[What::Erosion, What::Pitting],
        needs: &[(Q::SmoothMelt, NO)],
        causes: &[(C::Knock, &[(Q::PittedEdge, YES)]), (C::InjectionFault, &[])],
        check_next: "injectors, timing",
    },
    Sign {
        word: "crown_cracked",
        looks: "cracks in the crown or the rim of the bowl",
        places: &[Place::Crown],
        what: &[What::Crack],
        needs: &[],
        causes: &[(C::ThermalFatigue, &[]), (C::Overload, &[(Q::Overloaded, YES)])],
        check_next: "all pistons of the set, by penetrant",
    },
    Sign {
        word: "crown_struck",
        looks: "marks of a blow in the crown",
        places: &[Place::Crown],
        what: &[What::Impact],
        needs: &[],
        causes: &[
            (C::MetValveOrHead, &[(Q::ShapeOfValve, YES)]),
            (C::PiecesOrDust, &[(Q::ShapeOfValve, NO)]),
        ],
        check_next: "valve timing, guides, piston height; the rod",
    },
    Sign {
        word: "boss_cracked",
        looks: "crack above the pin, toward the crown",
        places: &[Place::PinBoss],
        what: &[What::Crack],
        needs: &[],
        causes: &[
            (C::Overload, &[(Q::Overloaded, YES)]),
            (C::PinTight, &[(Q::PinTurnsFreely, NO)]),
            (C::LoadFatigue, &[]),
        ],
        check_next: "the fit of the pin in the whole set",
    },
    Sign {
        word: "pin_bore_seized",
        looks: "bore of the pin torn, pin blue",
        places: &[Place::PinBore],
        what: &[What::Seizure, What::Scuffing, What::Scoring],
        needs: &[],
        causes: &[
            (C::PinDry, &[(Q::OilShort, YES)]),
            (C::PinTight, &[(Q::OilShort, NO)]),
            (C::PressFitTooTight, &[(Q::PinPressed, YES)]),
        ],
        check_next: "clearance and oil holes of the pin",
    },
    Sign {
        word: "retaining_ring_gone",
        looks: "wall gouged at the height of the pin, end of the pin rounded, groove wrecked",
        places: &[Place::PinRetention, Place::PinBore, Place::BoreWall],
        what: &[What::RetainingRingLoose],
        needs: &[(Q::PinInRetainingRings, YES)],
        causes: &[
            (C::WrongRetainingRing, &[(Q::RingUsedAgain, YES)]),
            (C::ForceAlongPin, &[(Q::RodBent, YES)]),
        ],
        check_next: "the pieces, the rod for bend and twist, the groove",
    },
    Sign {
        word: "groove_hammered",
        looks: "a step or a widened groove",
        places: &[Place::RingGroove],
        what: &[What::GrooveWear],
        needs: &[],
        causes: &[
            (C::Knock, &[(Q::PittedEdge, YES)]),
            (C::GritInOil, &[(Q::GritFound, YES)]),
            (C::LooseRings, &[]),
        ],
        check_next: "side clearance with a new ring",
    },
    Sign {
        word: "land_polished",
        looks: "top land polished on one side",
        places: &[Place::TopLand],
        what: &[What::Polish],
        needs: &[],
        causes: &[
            (C::RodBentOrTwisted, &[(Q::RodBent, YES)]),
            (C::PistonTooHot, &[(Q::OneSided, NO)]),
            (C::BoreNotSquare, &[(Q::RodBent, NO), (Q::OneSided, YES)]),
        ],
        check_next: "the rod, the clearance of the land",
    },
    Sign {
        word: "liner_pitted_outside",
        looks: "pits on the outside of the liner, across from the thrust side",
        places: &[Place::LinerOutside],
        what: &[What::Pitting],
        needs: &[],
        causes: &[(C::Cavitation, &[])],
        check_next: "depth of the pits against half the wall; coolant and its additive",
    },
    Sign {
        word: "liner_flange_cracked",
        looks: "collar of the liner cracked",
        places: &[Place::LinerFlange],
        what: &[What::Crack],
        needs: &[],
        causes: &[(C::LinerSeat, &[])],
        check_next: "counterbore, protrusion",
    },
    Sign {
        word: "oil_burnt_under_crown",
        looks: "underside of the crown brown or blue",
        places: &[Place::CrownUnderside],
        what: &[What::Discolouration],
        needs: &[],
        causes: &[(C::JetMissing, &[(Q::OilShort, YES)]), (C::Overload, &[(Q::Overloaded, YES)])],
        check_next: "the cooling jets",
    },
    Sign {
        word: "scored_at_ports",
        looks: "scores in line with a bridge between ports",
        places: &[Place::Ports],
        what: &[What::Scoring, What::Scuffing, What::Seizure],
        needs: &[],
        causes: &[(C::BridgeNotRelieved, &[(Q::GritFound, NO)]), (C::PiecesOrDust, &[(Q::GritFound, YES)])],
        check_next: "the relief of the bridge, the air filter",
    },
    Sign {
        word: "hydraulic_lock",
        looks: "one rod bowed with little damage to the skirt",
        places: &[Place::Rod],
        what: &[What::Bend],
        needs: &[],
        causes: &[(C::LiquidLock, &[(Q::StandsLow, YES)]), (C::MetValveOrHead, &[(Q::ShapeOfValve, YES)])],
        check_next: "protrusion of each piston against the others, injectors, head gasket",
    },
    Sign {
        word: "fatigue_crack",
        looks: "cracks at grooves, pin holes, skirt or lands",
        places: &[Place::RingGroove, Place::TopLand, Place::RingLand, Place::PinBore, Place::Skirt],
        what: &[What::Crack],
        needs: &[],
        causes: &[
            (C::LoadFatigue, &[]),
            (C::ThermalFatigue, &[(Q::FromTheCrown, YES)]),
            (C::BrittleAlloy, &[(Q::Hypereutectic, YES)]),
            (C::SkirtHeldByStruts, &[(Q::SkirtStrutted, YES)]),
        ],
        check_next: "the other pistons of the set, by penetrant",
    },
];

/// A cause that agrees with what was seen and answered.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Candidate {
    /// The cause.
    pub cause: Cause,
    /// The cause in words.
    pub text: &'static str,
    /// What the cause is about.
    pub group: Group,
    /// Word of the sign it comes from.
    pub sign: &'static str,
    /// Whether every answer that it needs was given.
    pub confirmed: bool,
    /// Questions whose answers it still needs.
    pub open: Vec<Question>,
    /// What to look at next.
    pub check_next: &'static str,
}

/// What may be behind a finding.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Explanation {
    /// Candidates, those that are confirmed first, else in the order of the signs.
    pub candidates: Vec<Candidate>,
    /// Open questions: first the one on which most candidates depend.
    pub ask: Vec<Question>,
    /// Whether an answer was given to a question that tells its causes apart.
    pub answered: bool,
}

impl Explanation {
    /// The cause, when it is known: answers were given that one candidate alone agrees with, and it is confirmed.
    #[must_use]
    pub fn cause(&self) -> Option<Cause> {
        match self.candidates.as_slice() {
            [only] if only.confirmed && self.answered => Some(only.cause),
            _ => None,
        }
    }

    /// Is the cause known?
    #[must_use]
    pub fn cause_found(&self) -> bool {
        self.cause().is_some()
    }
}

/// The causes that agree with a finding and with the answers. No candidate is no clearance: then the catalogue does not know what was seen.
///
/// # Errors
/// [`ErrorKind::Contradiction`] for a question that is answered both ways.
pub fn explain(place: Place, what: What, answers: &[(Question, bool)]) -> Result<Explanation, Error> {
    for (k, (question, answer)) in answers.iter().enumerate() {
        if answers.iter().take(k).any(|(q, a)| q == question && a != answer) {
            let reason = "this question is answered yes and no";
            return Err(
                Error::new(ErrorKind::Contradiction, question.word(), reason).at(&format!("answers/{k}"))
            );
        }
    }
    let answer = |question: Question| answers.iter().find(|(q, _)| *q == question).map(|(_, a)| *a);
    let agrees = |needs: Needs| needs.iter().all(|(q, a)| answer(*q).is_none_or(|given| given == *a));
    let signs = || SIGNS.iter().filter(|s| s.places.contains(&place) && s.what.contains(&what));
    let needed =
        |sign: &'static Sign| sign.needs.iter().chain(sign.causes.iter().flat_map(|(_, needs)| *needs));
    let answered = signs().flat_map(needed).any(|(question, _)| answer(*question).is_some());
    let mut candidates = Vec::new();
    for sign in signs().filter(|s| agrees(s.needs)) {
        for (cause, needs) in sign.causes.iter().filter(|(_, needs)| agrees(needs)) {
            let mut open = Vec::new();
            for (question, _) in sign.needs.iter().chain(*needs) {
                if answer(*question).is_none() && !open.contains(question) {
                    open.push(*question);
                }
            }
            candidates.push(Candidate {
                cause: *cause,
                text: cause.meaning(),
                group: cause.group(),
                sign: sign.word,
                confirmed: open.is_empty(),
                open,
                check_next: sign.check_next,
            });
        }
    }
    crate::order::sort_by(&mut candidates, |a, b| b.confirmed.cmp(&a.confirmed));
    let depends = |q: Question| candidates.iter().filter(|c| c.open.contains(&q)).count();
    let mut ask: Vec<Question> = Question::ALL.iter().copied().filter(|q| depends(*q) > 0).collect();
    crate::order::sort_by(&mut ask, |a, b| depends(*b).cmp(&depends(*a)));
    Ok(Explanation { candidates, ask, answered })
}

impl Cause {
    /// The cause that is named by its word, as it is written or as it is read.
    pub(crate) fn named(text: &str) -> Option<Cause> {
        let name = text.trim();
        Cause::ALL.iter().copied().find(|cause| cause.word() == name || cause.spoken() == name)
    }

    /// What it is about.
    #[must_use]
    pub const fn group(self) -> Group {
        match self {
            C::NormalRunning | C::RunningIn | C::CoatingWearsToShape => Group::Normal,
            C::BoreTooSmall
            | C::BorePulledByClamping
            | C::BoreTightBelow
            | C::WrongOvality
            | C::LoadedBeforeWarm
            | C::SkirtHeldByStruts
            | C::PinTight
            | C::BridgeNotRelieved => Group::Clearance,
            C::PinDry | C::OilFilmLost | C::OilLost | C::FuelWash | C::JetMissing => Group::Lubrication,
            C::PistonTooHot | C::BossTooHot | C::LocalCooling | C::CoolantLost | C::CrownTooHot => {
                Group::Heat
            }
            C::Knock | C::PreIgnition | C::InjectionFault | C::IdlingOrOil => Group::Combustion,
            C::GritInOil | C::PiecesOrDust => Group::Dirt,
            C::RodBentOrTwisted | C::BoreNotSquare | C::ForceAlongPin => Group::Alignment,
            C::PressFitTooTight
            | C::WrongRetainingRing
            | C::MetValveOrHead
            | C::LinerSeat
            | C::CoatingNotBonded => Group::Assembly,
            C::Overload | C::ThermalFatigue | C::LoadFatigue | C::BrittleAlloy | C::LiquidLock => Group::Load,
            C::OilPastRingsOrGuides | C::OneRingOrGuide | C::BlowBy | C::CoatingWorn | C::LooseRings => {
                Group::Wear
            }
            C::Cavitation => Group::Corrosion,
        }
    }
}

choices! {
    /// How a piston was made.
    Make {
        /// Cast.
        Cast = "cast",
        /// Forged.
        Forged = "forged",
        /// Steel, in one piece or as a crown.
        Steel = "steel",
    }
    /// Silicon in the alloy of a piston.
    SiliconClass {
        /// Below the eutectic, up to 11 %.
        Hypoeutectic = "hypoeutectic",
        /// About 11 % to 13 %.
        Eutectic = "eutectic",
        /// Above the eutectic.
        Hypereutectic = "hypereutectic",
    }
    /// Form of a skirt.
    SkirtType {
        /// Round about the pin.
        Full = "full",
        /// Two panels.
        Slipper = "slipper",
        /// With struts of steel cast in.
        Strutted = "strutted",
    }
    /// How a pin is held.
    PinHeld {
        /// By retaining rings in the piston.
        RetainingRings = "retaining_rings",
        /// Pressed into the rod.
        PressedInRod = "pressed_in_rod",
        /// Clamped by a bolt of the rod.
        Clamped = "clamped",
        /// By buttons at its ends.
        Buttons = "buttons",
    }
}

/// What is known of a piston besides its sizes. What was not seen stays open.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct PistonRecord {
    /// How it was made.
    pub make: Option<Make>,
    /// Silicon in its alloy, by evidence such as a mark or an analysis.
    pub silicon: Option<SiliconClass>,
    /// Form of the skirt.
    pub skirt: Option<SkirtType>,
    /// How its pin is held.
    pub pin: Option<PinHeld>,
}

/// A question that a record answers.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Recorded {
    pub(crate) question: Question,
    pub(crate) answer: bool,
    /// where in the record
    pub(crate) field: &'static str,
    /// what stands there
    pub(crate) word: &'static str,
}

impl PistonRecord {
    /// The questions that the record answers.
    #[must_use]
    pub fn answers(&self) -> Vec<(Question, bool)> {
        self.recorded().into_iter().map(|r| (r.question, r.answer)).collect()
    }

    pub(crate) fn recorded(&self) -> Vec<Recorded> {
        let said = |question, answer, field, word| Recorded { question, answer, field, word };
        let pin = |question, held| self.pin.map(|p| said(question, p == held, "pin", p.word()));
        let all = [
            self.make.map(|m| said(Q::Forged, m == Make::Forged, "make", m.word())),
            pin(Q::PinPressed, PinHeld::PressedInRod),
            pin(Q::PinInRetainingRings, PinHeld::RetainingRings),
            self.skirt.map(|s| said(Q::SkirtStrutted, s == SkirtType::Strutted, "skirt", s.word())),
            self.silicon
                .map(|s| said(Q::Hypereutectic, s == SiliconClass::Hypereutectic, "silicon/class", s.word())),
        ];
        all.into_iter().flatten().collect()
    }
}
