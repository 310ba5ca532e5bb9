//! Rows of `assembly.csv`: what is done before assembly, by the names that every host gives the results.

use crate::named::{Named, number, numbers};
use gaugepoint::Error;
use gaugepoint::decision::Rule;
use gaugepoint::plan::filing::{self, GapReading, HotRing, WantedGap, filing};
use gaugepoint::plan::gasket::{GasketGrade, gasket_grade};
use gaugepoint::plan::oversize::{
    Action, Block, Choice, Oversizes, RuledOut, Step, Way, WornBore, oversizes,
};
use gaugepoint::plan::shims::{self, Liner, Shim, ShimPlan, Wanted, shim_plan};
use gaugepoint::plan::surface::{Finding, Finish, FinishFound, FinishValue, finish};
use gaugepoint::plan::weights::{BobWeight, CutList, Part, bob_weight_g, cut_list};
use gaugepoint::shape::deck::{Chamber, GasketBand};

/// Calls what a row of `assembly.csv` says.
///
/// # Errors
/// As the library.
pub fn assembly_row(row: &[String]) -> Result<Named, Error> {
    let parts: Vec<&str> = row[2].split('|').collect();
    match row[1].as_str() {
        "filing" => filed(&parts),
        "shim_plan" => shimmed(&parts).map(|plan| of_plan(&plan)),
        "gasket_grade" => graded(&parts).map(|grade| of_grade(&grade)),
        "cut_list" => cut(&parts).map(|list| of_cuts(&list)),
        "bob_weight_g" => bob(&numbers(parts[0])).map(|bob| vec![("bob_g", Some(bob))]),
        "finish" => finished(&parts).map(|found| of_finish(&found)),
        "oversizes" => enlarged(&parts).map(|found| of_oversizes(&found)),
        other => panic!("{other}"),
    }
}

fn optional(text: &str) -> Option<f64> {
    (text != "none").then(|| number(text))
}

fn optionals(text: &str) -> Vec<Option<f64>> {
    text.split(';').map(optional).collect()
}

fn each<T>(text: &str, one: impl Fn(&[Option<f64>]) -> T) -> Vec<T> {
    text.split('/').filter(|t| !t.is_empty()).map(|t| one(&optionals(t))).collect()
}

#[expect(clippy::cast_precision_loss, reason = "small counts")]
fn count(n: usize) -> Option<f64> {
    Some(n as f64)
}

#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "small counts")]
fn whole(n: f64) -> usize {
    n as usize
}

fn yes(is: bool) -> Option<f64> {
    Some(f64::from(u8::from(is)))
}

fn name(text: String) -> &'static str {
    text.leak()
}

fn filed(parts: &[&str]) -> Result<Named, Error> {
    let n = optionals(parts[0]);
    let reading = GapReading {
        gap_mm: n[0].unwrap(),
        gauge_mm: n[1],
        gap_uncertainty_mm: n[2].unwrap(),
        gauge_uncertainty_mm: n[3].unwrap(),
        bore_uncertainty_mm: n[4].unwrap(),
    };
    let hot = parts.get(1).map(|hot| {
        let h = numbers(hot);
        HotRing {
            least_hot_gap_mm: h[0],
            bore_temperature_c: h[1],
            bore_expansion_per_k: h[2],
            ring_temperature_c: h[3],
            ring_expansion_per_k: h[4],
        }
    });
    let wanted = WantedGap { least_mm: n[6], most_mm: n[7], allowance_mm: n[8].unwrap(), hot };
    let f = filing(&reading, n[5].unwrap(), &wanted)?;
    let outcome = match f.outcome {
        filing::Outcome::Fits => 1.0,
        filing::Outcome::File => 2.0,
        filing::Outcome::TooWide => 3.0,
    };
    Ok(vec![
        ("outcome", Some(outcome)),
        ("gap_mm", Some(f.gap_mm)),
        ("standard_uncertainty_mm", Some(f.standard_uncertainty_mm)),
        ("least_mm", Some(f.least_mm)),
        ("target_mm", Some(f.target_mm)),
        ("file_off_mm", Some(f.file_off_mm)),
        ("each_end_mm", Some(f.each_end_mm)),
        ("hot_gap_mm", f.hot_gap_mm),
    ])
}

fn shimmed(parts: &[&str]) -> Result<ShimPlan, Error> {
    let w = optionals(parts[0]);
    let wanted = Wanted {
        least_mm: w[0].unwrap(),
        most_mm: w[1].unwrap(),
        unevenness_mm: w[2].unwrap(),
        cupping_mm: w[3],
        neighbours_mm: w[4],
        most_on_one: whole(w[5].unwrap()),
    };
    let liner = |n: &[Option<f64>]| Liner {
        flange_mm: n[0].unwrap(),
        depths_mm: [n[1], n[2], n[3], n[4]].map(Option::unwrap),
        cupping_mm: n[5],
    };
    let shim = |n: &[Option<f64>]| Shim { thickness_mm: n[0].unwrap(), available: n[1].map(whole) };
    shim_plan(&each(parts[1], liner), &each(parts[2], shim), &wanted)
}

fn of_plan(plan: &ShimPlan) -> Named {
    let mut named = vec![
        ("largest_deviation_mm", plan.largest_deviation_mm),
        ("largest_step_mm", plan.largest_step_mm),
        ("shims_used", plan.shims_used.and_then(count)),
        ("ruled_out", count(plan.ruled_out.len())),
    ];
    for (k, liner) in plan.liners.iter().enumerate() {
        let at = |field: &str| name(format!("{k}.{field}"));
        named.extend([
            (at("mean_depth_mm"), Some(liner.mean_depth_mm)),
            (at("unevenness_mm"), Some(liner.unevenness_mm)),
            (at("least_shims_mm"), Some(liner.least_shims_mm)),
            (at("most_shims_mm"), Some(liner.most_shims_mm)),
            (at("lowest_mm"), liner.lowest_mm),
            (at("highest_mm"), liner.highest_mm),
            (at("shims"), liner.stack.as_ref().and_then(|s| count(s.len()))),
        ]);
        let stack = liner.stack.iter().flatten().enumerate();
        named.extend(stack.map(|(j, shim)| (at(&format!("shim.{j}")), count(*shim))));
    }
    for (k, reason) in plan.ruled_out.iter().enumerate() {
        let (number, liner) = match *reason {
            shims::RuledOut::Uneven { liner } => (1, liner),
            shims::RuledOut::Cupped { liner } => (2, liner),
            shims::RuledOut::NoStack { liner } => (3, liner),
            shims::RuledOut::Neighbours { liner } => (4, liner),
            shims::RuledOut::TooFewShims { liner } => (5, liner),
        };
        let at = |field: &str| name(format!("ruled_out.{k}.{field}"));
        named.extend([(at("reason"), count(number)), (at("liner"), count(liner))]);
    }
    named
}

fn graded(parts: &[&str]) -> Result<GasketGrade, Error> {
    let head = optionals(parts[0]);
    let readings = each(parts[1], |n| [n[0].unwrap(), n[1].unwrap()]);
    let band = |n: &[Option<f64>]| GasketBand {
        from_mm: n[0].unwrap(),
        to_mm: n[1].unwrap(),
        thickness_mm: n[2].unwrap(),
    };
    gasket_grade(&readings, &each(parts[2], band), head[0].unwrap(), head[1], head[2])
}

fn of_grade(g: &GasketGrade) -> Named {
    let mut named = vec![
        ("largest_piston", count(g.largest_piston)),
        ("band", count(g.band)),
        ("largest_mm", Some(g.largest_mm)),
        ("spread_mm", Some(g.spread_mm)),
        ("thickness_mm", Some(g.thickness_mm)),
        ("spread_is_met", g.spread_is_met.and_then(yes)),
        ("probability_below", g.probability_below),
        ("probability_above", g.probability_above),
    ];
    for (k, (protrusion, squish)) in g.protrusions_mm.iter().zip(&g.squish_mm).enumerate() {
        named.extend([
            (name(format!("{k}.protrusion_mm")), Some(*protrusion)),
            (name(format!("{k}.squish_mm")), Some(*squish)),
        ]);
    }
    named
}

fn cut(parts: &[&str]) -> Result<CutList, Error> {
    let part = |n: &[f64]| Part { mass_g: n[0], removable_g: n[1] };
    let assembly = |text: &str| numbers(text).chunks(2).map(part).collect();
    let assemblies: Vec<Vec<Part>> = parts[1].split('/').map(assembly).collect();
    cut_list(&assemblies, number(parts[0]))
}

fn of_cuts(list: &CutList) -> Named {
    let mut named =
        vec![("lightest", count(list.lightest)), ("most_g", Some(list.most_g)), ("is_met", yes(list.is_met))];
    for (k, cut) in list.assemblies.iter().enumerate() {
        named.extend([
            (name(format!("{k}.mass_g")), Some(cut.mass_g)),
            (name(format!("{k}.left_g")), Some(cut.left_g)),
            (name(format!("{k}.over_g")), Some(cut.over_g)),
        ]);
        let cuts = cut.cut_g.iter().enumerate();
        named.extend(cuts.map(|(j, cut)| (name(format!("{k}.{j}.cut_g")), Some(*cut))));
    }
    named
}

fn bob(n: &[f64]) -> Result<f64, Error> {
    bob_weight_g(&BobWeight {
        rods: whole(n[0]),
        big_end_g: n[1],
        bearing_g: n[2],
        small_end_g: n[3],
        piston_g: n[4],
        share: n[5],
        oil_g: n[6],
    })
}

fn finished(parts: &[&str]) -> Result<FinishFound, Error> {
    let (rule, at_least) = parts[0].split_once(';').unwrap();
    let value =
        |n: &[Option<f64>]| FinishValue { value: n[0], standard_uncertainty: n[1], lower: n[2], upper: n[3] };
    let v = each(parts[1], value);
    let given = Finish {
        rpk_um: v[0],
        rk_um: v[1],
        rvk_um: v[2],
        mr1_percent: v[3],
        mr2_percent: v[4],
        crosshatch_deg: v[5],
    };
    finish(&given, Rule::from_word(rule)?, number(at_least))
}

fn of_finish(found: &FinishFound) -> Named {
    let mut named = vec![("is_met", yes(found.is_met))];
    for judged in &found.parameters {
        let number = match judged.finding {
            Finding::In => 1,
            Finding::Out => 2,
            Finding::NotProven => 3,
            Finding::NotGiven => 4,
            Finding::NoLimit => 5,
        };
        let word = judged.parameter.word();
        named.extend([
            (name(format!("{word}.finding")), count(number)),
            (name(format!("{word}.probability_of_conformity")), judged.probability_of_conformity),
        ]);
    }
    named
}

fn enlarged(parts: &[&str]) -> Result<Oversizes, Error> {
    let b = optionals(parts[0]);
    let chamber = b.get(6..).filter(|c| !c.is_empty()).map(|c| Chamber {
        bore_mm: c[0].unwrap(),
        stroke_mm: c[1].unwrap(),
        head_cm3: c[2].unwrap(),
        gasket_bore_mm: c[3].unwrap(),
        gasket_mm: c[4].unwrap(),
        deck_clearance_mm: c[5].unwrap(),
        crown_cm3: c[6].unwrap(),
        crevice_cm3: c[7].unwrap(),
    });
    let block = Block {
        nominal_mm: b[0].unwrap(),
        largest_by_gasket_mm: b[1],
        sleeve_price: b[2],
        boring_price: b[3].unwrap(),
        guard: b[4].unwrap(),
        ring_gap_mm: b[5],
        chamber,
    };
    let bore = |n: &[Option<f64>]| WornBore {
        clean_up_mm: n[0].unwrap(),
        standard_uncertainty_mm: n[1].unwrap(),
        largest_by_walls_mm: n[2],
        may_be_sleeved: n[3] == Some(1.0),
        goes_back: n[4] == Some(1.0),
    };
    let step = |n: &[Option<f64>]| Step {
        oversize_mm: n[0].unwrap(),
        price: n[1].unwrap(),
        available: n[2].map(whole),
        more_mass_g: n[3],
    };
    oversizes(&block, &each(parts[1], bore), &each(parts[2], step))
}

fn of_oversizes(found: &Oversizes) -> Named {
    let mut named = vec![("choices", count(found.choices.len()))];
    for (k, choice) in found.choices.iter().enumerate() {
        named.extend(of_choice(k, choice));
    }
    for (k, step) in found.consequences.iter().enumerate() {
        let at = |field: &str| name(format!("step.{k}.{field}"));
        named.extend([
            (at("bore_mm"), Some(step.bore_mm)),
            (at("compression_ratio"), step.compression_ratio),
            (at("ring_gap_mm"), step.ring_gap_mm),
            (at("more_mass_g"), step.more_mass_g),
        ]);
    }
    named
}

fn of_choice(k: usize, choice: &Choice) -> Named {
    let way = match choice.way {
        Way::OneStep => 1,
        Way::StepByBore => 2,
        Way::StepAndSleeves => 3,
        Way::SleevesAlone => 4,
    };
    let at = |field: &str| name(format!("{k}.{field}"));
    let mut named = vec![
        (at("way"), count(way)),
        (at("price"), Some(choice.price)),
        (at("is_ruled_out"), yes(!choice.ruled_out.is_empty())),
    ];
    for (j, action) in choice.actions.iter().enumerate() {
        let (number, step) = match *action {
            Action::Bore(step) => (1, step),
            Action::Sleeve(step) => (2, step),
            Action::Leave => (3, 0),
        };
        named.extend([(at(&format!("{j}.action")), count(number)), (at(&format!("{j}.step")), count(step))]);
    }
    for (j, reason) in choice.ruled_out.iter().enumerate() {
        let (number, place, value, counts) = match *reason {
            RuledOut::NotClean { bore, needed_mm } => (1, Some(bore), Some(needed_mm), None),
            RuledOut::WallTooThin { bore, largest_mm } => (2, Some(bore), Some(largest_mm), None),
            RuledOut::GasketTooSmall { largest_mm } => (3, None, Some(largest_mm), None),
            RuledOut::TooFewPistons { step, needed, available } => {
                (4, Some(step), None, Some((needed, available)))
            }
            RuledOut::NoSleeve { bore } => (5, Some(bore), None, None),
        };
        let at = |field: &str| at(&format!("ruled_out.{j}.{field}"));
        named.extend([
            (at("reason"), count(number)),
            (at("place"), place.and_then(count)),
            (at("value_mm"), value),
            (at("needed"), counts.and_then(|c| count(c.0))),
            (at("available"), counts.and_then(|c| count(c.1))),
        ]);
    }
    named
}
