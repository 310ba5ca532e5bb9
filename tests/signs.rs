//! Signs of damage: engines described in words, walked to their causes. Expected causes: practice of the trade as engine damage
//! handbooks describe it; common practice, no single source.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test that panics has failed"
)]

use gaugepoint::ErrorKind;
use gaugepoint::decision::finding::{Place, What};
use gaugepoint::decision::signs::{
    Candidate, Cause, Explanation, Group, Make, PinHeld, PistonRecord, Question as Q, SIGNS, SiliconClass,
    SkirtType, explain,
};
use gaugepoint_tests::{rows, sign_row};
use std::collections::BTreeSet;

/// An engine: what was seen, what was answered, and the causes that are confirmed.
struct Engine {
    story: &'static str,
    seen: (Place, What),
    answers: &'static [(Q, bool)],
    causes: &'static [Cause],
    /// one answer turned, and the causes that are confirmed then
    turned: (Q, &'static [Cause]),
}

const ENGINES: [Engine; 17] = [
    Engine {
        story: "rebuilt last week, stiff after an hour: dark patches on both faces, rings fine",
        seen: (Place::Skirt, What::Seizure),
        answers: &[
            (Q::BothFaces, true),
            (Q::RingZoneClean, true),
            (Q::DarkAndTorn, true),
            (Q::AtFortyFive, false),
            (Q::LowerEdgeAlone, false),
            (Q::SoonAfterRebuild, true),
            (Q::CoolantShort, false),
            (Q::ShapeByClamping, false),
            (Q::SkirtStrutted, false),
            (Q::LoadedCold, false),
        ],
        causes: &[Cause::BoreTooSmall],
        // one face alone is no question of clearance
        turned: (Q::BothFaces, &[Cause::OilFilmLost]),
    },
    Engine {
        story: "the same, and the bore changes its shape with the plate on",
        seen: (Place::Skirt, What::Seizure),
        answers: &[
            (Q::BothFaces, true),
            (Q::RingZoneClean, true),
            (Q::DarkAndTorn, true),
            (Q::AtFortyFive, false),
            (Q::LowerEdgeAlone, false),
            (Q::SoonAfterRebuild, false),
            (Q::CoolantShort, false),
            (Q::ShapeByClamping, true),
            (Q::SkirtStrutted, false),
            (Q::LoadedCold, false),
        ],
        causes: &[Cause::BorePulledByClamping],
        turned: (Q::LowerEdgeAlone, &[Cause::BoreTightBelow, Cause::BorePulledByClamping]),
    },
    Engine {
        story: "thrust face torn, the other clean, a jet blocked",
        seen: (Place::Skirt, What::Scuffing),
        answers: &[
            (Q::BothFaces, false),
            (Q::DarkAndTorn, true),
            (Q::AtFortyFive, false),
            (Q::LowerEdgeAlone, false),
            (Q::CoolantShort, false),
            (Q::FromTheCrown, false),
            (Q::LoadedCold, false),
        ],
        causes: &[Cause::OilFilmLost],
        turned: (Q::CoolantShort, &[Cause::LocalCooling]),
    },
    Engine {
        story: "marks beside the bosses in diagonal pairs, the pin hard to turn",
        seen: (Place::Skirt, What::Scuffing),
        answers: &[
            (Q::AtFortyFive, true),
            (Q::PinTurnsFreely, false),
            (Q::PinPressed, false),
            (Q::Overloaded, false),
            (Q::FromTheCrown, false),
            (Q::LoadedCold, false),
            (Q::LowerEdgeAlone, false),
        ],
        causes: &[Cause::PinTight, Cause::PinDry],
        turned: (Q::PinTurnsFreely, &[Cause::WrongOvality]),
    },
    Engine {
        story: "bright fine marks in the middle of the panels, tin in the lows",
        seen: (Place::Skirt, What::Scuffing),
        answers: &[
            (Q::DarkAndTorn, false),
            (Q::AtFortyFive, false),
            (Q::CoatingInTheLows, true),
            (Q::LowerEdgeAlone, false),
            (Q::LoadedCold, false),
        ],
        causes: &[Cause::RunningIn],
        // dry to the metal with a clean ring zone: fuel
        turned: (Q::CoatingInTheLows, &[]),
    },
    Engine {
        story: "dry stripes, fuel in the oil",
        seen: (Place::Skirt, What::Scoring),
        answers: &[
            (Q::DarkAndTorn, false),
            (Q::RingZoneClean, true),
            (Q::CoatingInTheLows, false),
            (Q::AtFortyFive, false),
        ],
        causes: &[Cause::FuelWash],
        turned: (Q::RingZoneClean, &[]),
    },
    Engine {
        story: "top lands torn all around, lean for a long time",
        seen: (Place::TopLand, What::Seizure),
        answers: &[
            (Q::FromTheCrown, true),
            (Q::DarkAndTorn, true),
            (Q::Overloaded, false),
            (Q::CoolantShort, false),
        ],
        causes: &[Cause::CrownTooHot],
        turned: (Q::CoolantShort, &[Cause::CrownTooHot, Cause::CoolantLost]),
    },
    Engine {
        story: "a hose burst: both panels and the ring zone seized",
        seen: (Place::Skirt, What::Seizure),
        answers: &[
            (Q::BothFaces, true),
            (Q::RingZoneClean, false),
            (Q::FromTheCrown, false),
            (Q::AtFortyFive, false),
            (Q::LowerEdgeAlone, false),
            (Q::CoolantShort, true),
            (Q::OilShort, false),
            (Q::LoadedCold, false),
        ],
        causes: &[Cause::CoolantLost],
        turned: (Q::CoolantShort, &[]),
    },
    Engine {
        story: "raced from cold with forged pistons: four small marks",
        seen: (Place::Skirt, What::Scuffing),
        answers: &[
            (Q::LoadedCold, true),
            (Q::Forged, true),
            (Q::FromTheCrown, false),
            (Q::DarkAndTorn, false),
            (Q::AtFortyFive, false),
            (Q::CoatingInTheLows, false),
            (Q::RingZoneClean, false),
            (Q::LowerEdgeAlone, false),
        ],
        causes: &[Cause::LoadedBeforeWarm],
        turned: (Q::Forged, &[Cause::BoreTooSmall]),
    },
    Engine {
        story: "one side worn over its height and the other at the bottom, the rod off its gauge",
        seen: (Place::Skirt, What::DiagonalWear),
        answers: &[(Q::RodBent, true)],
        causes: &[Cause::RodBentOrTwisted],
        turned: (Q::RodBent, &[Cause::BoreNotSquare]),
    },
    Engine {
        story: "second land broken out, edges as if blasted",
        seen: (Place::RingLand, What::Fracture),
        answers: &[(Q::PittedEdge, true), (Q::Hypereutectic, false), (Q::Overloaded, false)],
        causes: &[Cause::Knock],
        turned: (Q::PittedEdge, &[]),
    },
    Engine {
        story: "a smooth hole in the middle of the crown",
        seen: (Place::Crown, What::Hole),
        answers: &[(Q::SmoothMelt, true), (Q::FuelInOil, false)],
        causes: &[Cause::PreIgnition],
        turned: (Q::SmoothMelt, &[]),
    },
    Engine {
        story: "gouged wall at pin height, old rings fitted again",
        seen: (Place::PinRetention, What::RetainingRingLoose),
        answers: &[(Q::PinInRetainingRings, true), (Q::RingUsedAgain, true), (Q::RodBent, false)],
        causes: &[Cause::WrongRetainingRing],
        // a pressed pin has no rings to lose
        turned: (Q::PinInRetainingRings, &[]),
    },
    Engine {
        story: "dull grey skirt, grit in the filter",
        seen: (Place::Skirt, What::MattWear),
        answers: &[(Q::GritFound, true), (Q::FuelInOil, false)],
        causes: &[Cause::GritInOil],
        turned: (Q::GritFound, &[]),
    },
    Engine {
        story: "the shape of a valve in the crown",
        seen: (Place::Crown, What::Impact),
        answers: &[(Q::ShapeOfValve, true)],
        causes: &[Cause::MetValveOrHead],
        turned: (Q::ShapeOfValve, &[Cause::PiecesOrDust]),
    },
    Engine {
        story: "one rod bowed, its piston low, the skirt good",
        seen: (Place::Rod, What::Bend),
        answers: &[(Q::StandsLow, true), (Q::ShapeOfValve, false)],
        causes: &[Cause::LiquidLock],
        turned: (Q::StandsLow, &[]),
    },
    Engine {
        story: "wet black crown",
        seen: (Place::Crown, What::Carbon),
        answers: &[(Q::Oily, true), (Q::OneSided, false)],
        causes: &[Cause::OilPastRingsOrGuides],
        turned: (Q::Oily, &[Cause::NormalRunning]),
    },
];

fn confirmed(found: &Explanation) -> BTreeSet<Cause> {
    found.candidates.iter().filter(|c| c.confirmed).map(|c| c.cause).collect()
}

fn walked((place, what): (Place, What), answers: &[(Q, bool)]) -> Explanation {
    explain(place, what, answers).unwrap()
}

#[test]
fn engines_come_to_their_causes_and_one_turned_answer_to_others() {
    for Engine { story, seen, answers, causes, turned: (question, other) } in ENGINES {
        assert_eq!(confirmed(&walked(seen, answers)), causes.iter().copied().collect(), "{story}");
        let turn = |(q, a): &(Q, bool)| if *q == question { (*q, !a) } else { (*q, *a) };
        let turned: Vec<(Q, bool)> = answers.iter().map(turn).collect();
        assert_ne!(turned, answers, "{story}: {question:?} is answered");
        assert_eq!(confirmed(&walked(seen, &turned)), other.iter().copied().collect(), "{story}, turned");
    }
}

/// Every answer that a cause needs, turned, takes that cause away; without it the cause stays open and the question is asked.
#[test]
fn every_answer_counts() {
    let mut turned = 0;
    for sign in &SIGNS {
        for (cause, needs) in sign.causes {
            let all: Vec<(Q, bool)> = sign.needs.iter().chain(*needs).copied().collect();
            let seen = (sign.places[0], sign.what[0]);
            let of = |answers: &[(Q, bool)]| {
                walked(seen, answers)
                    .candidates
                    .into_iter()
                    .find(|c| c.cause == *cause && c.sign == sign.word)
            };
            assert!(of(&all).is_some_and(|c| c.confirmed && c.open.is_empty()), "{} {cause:?}", sign.word);
            for k in 0..all.len() {
                let mut other = all.clone();
                other[k].1 = !other[k].1;
                assert_eq!(of(&other), None, "{} {cause:?} {:?}", sign.word, all[k]);
                other.remove(k);
                assert!(of(&other).is_some_and(|c| !c.confirmed && c.open == [all[k].0]), "{}", sign.word);
                assert!(walked(seen, &other).ask.contains(&all[k].0), "{}", sign.word);
                turned += 1;
            }
        }
    }
    assert!(turned > 100, "{turned}");
}

#[test]
fn the_catalogue_is_whole() {
    let words: BTreeSet<&str> = SIGNS.iter().map(|s| s.word).collect();
    assert_eq!(words.len(), 31);
    let causes: BTreeSet<Cause> = SIGNS.iter().flat_map(|s| s.causes).map(|(c, _)| *c).collect();
    assert_eq!(causes.len(), Cause::ALL.len(), "every cause stands behind a sign");
    let groups: BTreeSet<Group> = Cause::ALL.iter().map(|c| c.group()).collect();
    assert_eq!(groups.len(), Group::ALL.len());
    let asked: BTreeSet<Q> = SIGNS
        .iter()
        .flat_map(|s| s.needs.iter().chain(s.causes.iter().flat_map(|c| c.1)))
        .map(|(q, _)| *q)
        .collect();
    assert_eq!(asked.len(), Q::ALL.len(), "every question decides something");
    for place in Place::ALL {
        assert!(SIGNS.iter().any(|s| s.places.contains(place)), "{place:?}");
    }
    for what in What::ALL {
        assert!(SIGNS.iter().any(|s| s.what.contains(what)), "{what:?}");
    }
}

/// The page shows every sign as it is.
#[test]
fn the_page_holds_the_catalogue() {
    let page = include_str!("../core/docs/signs.md");
    let told = |needs: &[(Q, bool)]| {
        let words = needs.iter().map(|(q, a)| format!("{}{}", if *a { "" } else { "not " }, q.spoken()));
        words.collect::<Vec<_>>().join(", ")
    };
    for sign in &SIGNS {
        let cause = |(cause, needs): &(Cause, &[(Q, bool)])| match needs {
            [] => cause.spoken(),
            _ => format!("{} ({})", cause.spoken(), told(needs)),
        };
        let needs = if sign.needs.is_empty() { "none".to_owned() } else { told(sign.needs) };
        let causes = sign.causes.iter().map(cause).collect::<Vec<_>>().join("; ");
        let places = sign.places.iter().map(|p| p.spoken()).collect::<Vec<_>>().join(", ");
        let what = sign.what.iter().map(|w| w.spoken()).collect::<Vec<_>>().join(", ");
        let row = format!(
            "| `{}` | {places}: {what} | {} | {needs} | {causes} | {} |",
            sign.word, sign.looks, sign.check_next
        );
        assert!(page.contains(&row), "{row}");
    }
    for question in Q::ALL {
        let row = format!("| `{}` | {} |\n", question.word(), question.meaning());
        assert!(question.meaning().ends_with('?') && page.contains(&row), "{row}");
    }
    for group in Group::ALL {
        let causes = Cause::ALL.iter().filter(|c| c.group() == *group).map(|c| c.spoken());
        let row = format!("| {} | {} |\n", group.word(), causes.collect::<Vec<_>>().join(", "));
        assert!(page.contains(&row), "{row}");
    }
}

/// What is known of the piston answers its own questions and is not asked again.
#[test]
fn the_record_of_a_piston_changes_what_is_asked() {
    let asked =
        |record: PistonRecord| walked((Place::PinRetention, What::RetainingRingLoose), &record.answers()).ask;
    assert!(asked(PistonRecord::default()).contains(&Q::PinInRetainingRings));
    let held = |pin| PistonRecord { pin: Some(pin), ..PistonRecord::default() };
    assert_eq!(asked(held(PinHeld::RetainingRings)), [Q::RingUsedAgain, Q::RodBent]);
    for other in [PinHeld::PressedInRod, PinHeld::Clamped, PinHeld::Buttons] {
        assert_eq!(asked(held(other)), [], "{other:?}");
    }
    let record = PistonRecord {
        make: Some(Make::Cast),
        silicon: Some(SiliconClass::Hypereutectic),
        skirt: Some(SkirtType::Strutted),
        pin: Some(PinHeld::PressedInRod),
    };
    let cracked = walked((Place::Skirt, What::Crack), &record.answers());
    assert_eq!(
        confirmed(&cracked),
        [Cause::SkirtHeldByStruts, Cause::LoadFatigue, Cause::BrittleAlloy].into()
    );
    assert!(!cracked.cause_found());
}

#[test]
fn a_cause_is_found_when_one_alone_is_left_and_confirmed() {
    let rod = |answers: &[(Q, bool)]| walked((Place::BoreWall, What::DiagonalWear), answers);
    assert!(rod(&[(Q::RodBent, true)]).cause_found());
    let open = rod(&[]);
    assert!(!open.cause_found());
    assert_eq!(open.ask, [Q::RodBent]);
    assert_eq!(open.candidates.len(), 2);
    // one cause alone is behind pits on the outside of a liner, but nobody looked; an answer to something else is no look
    for answers in [&[][..], &[(Q::Oily, false)]] {
        let pits = walked((Place::LinerOutside, What::Pitting), answers);
        assert!(pits.candidates.len() == 1 && pits.candidates[0].confirmed && !pits.cause_found());
    }
    // what the catalogue does not know stays without a cause
    let unknown = walked((Place::Crown, What::DiagonalWear), &[]);
    assert!(unknown.candidates.is_empty() && !unknown.cause_found());
    let refused = explain(Place::Rod, What::Bend, &[(Q::RodBent, true), (Q::RodBent, false)]).unwrap_err();
    assert_eq!((refused.kind(), refused.field()), (ErrorKind::Contradiction, "answers/1"));
}

/// One row of `vectors/signs.csv`: candidates as `cause/sign/confirmed`, questions, the cause.
fn row_of(found: &Explanation) -> [String; 3] {
    let told = |yes: bool| if yes { "yes" } else { "no" };
    let candidate = |c: &Candidate| format!("{}/{}/{}", c.cause.word(), c.sign, told(c.confirmed));
    let candidates: Vec<String> = found.candidates.iter().map(candidate).collect();
    let ask: Vec<&str> = found.ask.iter().map(|q| q.word()).collect();
    [candidates.join(";"), ask.join(";"), found.cause().map(Cause::word).unwrap_or_default().to_owned()]
}

#[test]
fn explanations_are_those_of_the_independent_evaluation() {
    let rows = rows("tests/vectors/signs.csv");
    for row in &rows {
        let (seen, answers) = sign_row(row);
        assert_eq!(row_of(&walked(seen, &answers)), row[4..7], "{}", row[0]);
    }
    assert!(rows.len() > 300 && rows.iter().filter(|r| !r[6].is_empty()).count() > 50);
}
