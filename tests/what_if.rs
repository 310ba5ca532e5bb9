//! What if: rows held against the changed job assessed alone and against expansion by hand, refusals, schemas, and what a report always is.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test that panics has failed"
)]

use gaugepoint::what_if::{Cell, WhatIfDocument, WhatIfReport, what_if_json_bytes};
use gaugepoint::{ErrorKind, Options, assess_json, what_if, what_if_json};
use gaugepoint_tests::{WHAT_IF, changed, rows, text};
use serde_json::{Value, json};

fn pump() -> Value {
    serde_json::from_str(&text(WHAT_IF)).expect("JSON")
}

fn report(document: &Value) -> Value {
    let report = what_if_json(&document.to_string()).unwrap_or_else(|e| panic!("{e}"));
    serde_json::from_str(&report).expect("JSON")
}

fn typed(document: &Value) -> WhatIfReport {
    let document = WhatIfDocument::from_json(&document.to_string()).unwrap_or_else(|e| panic!("{e}"));
    what_if(&document).unwrap_or_else(|e| panic!("{e}"))
}

/// Every combination in the order that is promised: the first varies slowest. Each as pointers with their values.
fn combinations(document: &Value) -> Vec<Vec<(String, Value)>> {
    let mut out = vec![Vec::new()];
    for vary in document["vary"].as_array().unwrap() {
        let one = vary["field"].as_str().map(|f| vec![f.to_owned()]);
        let several = || serde_json::from_value(vary["fields"].clone()).unwrap();
        let fields: Vec<String> = one.clone().unwrap_or_else(several);
        let mut next = Vec::new();
        for before in &out {
            for value in vary["values"].as_array().unwrap() {
                let values =
                    if one.is_some() { vec![value.clone()] } else { value.as_array().unwrap().clone() };
                let mut row = before.clone();
                row.extend(fields.iter().cloned().zip(values));
                next.push(row);
            }
        }
        out = next;
    }
    out
}

/// By another way: the job is changed here and assessed alone.
#[test]
fn every_row_is_what_the_changed_job_gives_alone() {
    let document = pump();
    let report = report(&document);
    let expected = combinations(&document);
    let rows = report["rows"].as_array().unwrap();
    assert_eq!(rows.len(), expected.len());
    assert_eq!(rows.len(), 2 * 4 * 2);
    let mut refused = 0;
    for (row, fields) in rows.iter().zip(&expected) {
        let job = fields.iter().fold(document["job"].clone(), |job, (p, v)| changed(&job, p, v.clone()));
        let texts = row["values"].as_array().unwrap();
        assert_eq!(texts.len(), fields.len());
        for (text, (_, value)) in texts.iter().zip(fields) {
            assert!(!value.is_string() || text == value, "{text} {value}");
        }
        match assess_json(&job.to_string(), Options::default()) {
            Ok(alone) => {
                let alone: Value = serde_json::from_str(&alone).unwrap();
                for (shown, pointer) in
                    row["shown"].as_array().unwrap().iter().zip(document["show"].as_array().unwrap())
                {
                    let there = alone.pointer(pointer.as_str().unwrap()).cloned();
                    assert_eq!(shown, &there.unwrap_or(Value::Null), "{pointer}");
                }
                assert_eq!(row["outcome"], alone["block"]["verdict"]["outcome"]);
                let of = |c: &Value| c["verdict"]["outcome"].clone();
                let outcomes: Vec<Value> = alone["cylinders"].as_array().unwrap().iter().map(of).collect();
                assert_eq!(row["cylinders"], Value::Array(outcomes));
                assert!(row.get("refused").is_none());
            }
            Err(error) => {
                refused += 1;
                let said = &row["refused"];
                assert_eq!(said["kind"], error.kind().name());
                assert_eq!(said["field"], format!("/job{}", error.field()));
                assert_eq!(said["reason"], error.reason());
                assert_eq!(said.get("did_you_mean").and_then(Value::as_str), error.did_you_mean());
                assert!(row["shown"].as_array().unwrap().iter().all(Value::is_null));
                assert!(row.get("outcome").is_none() && row.get("cylinders").is_none());
            }
        }
    }
    assert_eq!(refused, 4);
    let alone: Value =
        serde_json::from_str(&assess_json(&document["job"].to_string(), Options::default()).unwrap())
            .unwrap();
    let base = &report["base"];
    assert_eq!(base["outcome"], alone["block"]["verdict"]["outcome"]);
    assert_eq!(base["values"], json!(["cast piston alloy", "130 C", "85 C", null]));
    assert_eq!(base["shown"][1], *alone.pointer(document["show"][1].as_str().unwrap()).unwrap());
}

/// By hand: sizes of 86.03858 mm and 85.9041 mm at 20 C, each times `1 + a (T - 20)` with the mean coefficients of the document.
#[test]
fn the_running_clearance_is_that_of_free_growth_by_hand() {
    let report = typed(&pump());
    let number = |row: &gaugepoint::what_if::WhatIfRow, k: usize| match row.shown[k] {
        Some(Cell::Number(number)) => number,
        ref other => panic!("{other:?}"),
    };
    // row, coefficient of the piston, its temperature, that of the bore
    for (row, a, piston, bore) in [
        (0, 20.5e-6, 130.0, 85.0),
        (2, 20.5e-6, 150.0, 85.0),
        (4, 20.5e-6, 150.0, 70.0),
        (8, 22.5e-6, 130.0, 85.0),
        (12, 22.5e-6, 150.0, 70.0),
    ] {
        let row = &report.rows[row];
        let b: f64 = 86.03858;
        let p = b - number(row, 3);
        assert!((p - 85.9041).abs() < 5e-4, "{p}");
        let by_hand = b * (1.0 + 11.4e-6 * (bore - 20.0)) - p * (1.0 + a * (piston - 20.0));
        assert!((number(row, 1) - by_hand).abs() < 1e-6, "{} and not {by_hand}", number(row, 1));
    }
    // a hotter piston and one that grows more leave less, a colder bore too
    let clearances: Vec<f64> = [0, 2, 4, 12].iter().map(|k| number(&report.rows[*k], 1)).collect();
    assert!(clearances.is_sorted_by(|a, b| a > b), "{clearances:?}");
}

#[test]
fn a_field_that_is_optional_may_be_put_there_and_numbers_stay_as_typed() {
    let mut document = pump();
    document["vary"] = json!([
        { "field": "/job/note", "values": ["another note"] },
        { "field": "/decision", "values": [{ "rule": "conformance_probability", "at_least": 0.90 }] },
    ]);
    document["show"] = json!([
        "/conventions/at_least",
        "/job/note",
        "/cylinders/0/number",
        "/cylinders/1/bore/decisions/1/upper_mm"
    ]);
    let text = document.to_string().replacen("\"at_least\":0.9,", "\"at_least\":0.90,", 1);
    let report = what_if(&WhatIfDocument::from_json(&text).unwrap()).unwrap();
    let row = &report.rows[0];
    assert_eq!(row.values[1].as_deref(), Some(r#"{"at_least":"0.90","rule":"conformance_probability"}"#));
    let shown: Vec<Cell> = row.shown.iter().flatten().cloned().collect();
    let word = Cell::Word("another note".to_owned());
    assert_eq!(shown, [Cell::Number(0.9), word, Cell::Whole(1), Cell::Number(0.05)]);
    // a whole bore may be put in place of another
    document["vary"] =
        json!([{ "field": "/cylinders/1/bore", "values": [document["job"]["cylinders"][0]["bore"]] }]);
    document["show"] = json!(["/cylinders/0/bore/size/value_mm", "/cylinders/1/bore/size/value_mm"]);
    let report = typed(&document);
    assert_eq!(report.rows[0].shown[0], report.rows[0].shown[1]);
    assert_ne!(report.base.shown[0], report.base.shown[1]);
}

#[test]
fn what_is_absent_in_some_rows_is_said() {
    let mut document = pump();
    document["vary"] = json!([{ "field": "/decision", "values": [{ "rule": "simple_acceptance_by_ratio", "ratio_at_least": 2 }, { "rule": "proven" }] }]);
    document["show"] = json!(["/conventions/ratio_at_least"]);
    let report = typed(&document);
    let shown: Vec<Option<Cell>> = report.rows.iter().map(|r| r.shown[0].clone()).collect();
    assert_eq!(shown, [Some(Cell::Number(2.0)), None]);
    assert_eq!(report.base.shown, [None]);
    let json: Value = serde_json::from_str(&report.to_json()).unwrap();
    assert_eq!(json["rows"][1]["shown"], json!([null]));
}

#[test]
fn refused_what_ifs() {
    let document = pump();
    for row in rows("tests/vectors/what_if_refused.csv") {
        let [name, pointer, value, kind, path] = &row[..] else { panic!("{row:?}") };
        let value: Value = serde_json::from_str(&value.replace("%2C", ",")).expect("JSON");
        let changed = changed(&document, pointer, value).to_string();
        let error = what_if_json(&changed).expect_err(name);
        assert_eq!([error.kind().name(), error.field()], [kind.as_str(), path], "{name}: {error}");
    }
    let near = changed(&document, "/vary/0/field", json!("/engine/piston/matrial"));
    assert_eq!(what_if_json(&near.to_string()).unwrap_err().did_you_mean(), Some("material"));
    for field in ["job", "vary"] {
        let mut without = document.clone();
        without.as_object_mut().unwrap().remove(field);
        let error = what_if_json(&without.to_string()).unwrap_err();
        assert_eq!((error.kind(), error.field()), (ErrorKind::MissingField, format!("/{field}").as_str()));
    }
    // a name that stands twice in the job is found in the tree too
    let twice = document.to_string().replacen("\"number\":1", "\"number\":1,\"number\":1", 1);
    let error = what_if_json(&twice).unwrap_err();
    assert_eq!((error.kind(), error.field()), (ErrorKind::RepeatedField, "/job/cylinders/0/number"));
    assert_eq!(what_if_json_bytes(b"{\xff}").unwrap_err().kind(), ErrorKind::NotUtf8);
}

#[test]
fn the_document_and_its_report_fit_their_schemas() {
    let of_document = jsonschema::validator_for(WhatIfDocument::schema().as_value()).expect("a schema");
    let of_report = jsonschema::validator_for(WhatIfReport::schema().as_value()).expect("a schema");
    let document = pump();
    assert!(of_document.is_valid(&document), "{:?}", of_document.iter_errors(&document).next());
    assert!(!of_document.is_valid(&changed(&document, "/job/shop/colour", json!("red"))));
    assert!(!of_document.is_valid(&changed(&document, "/vary/0/colour", json!("red"))));
    let report = report(&document);
    assert!(of_report.is_valid(&report), "{:?}", of_report.iter_errors(&report).next());
    assert!(!of_report.is_valid(&changed(&report, "/rows", json!(1))));
    // what is written again says the same
    let once = WhatIfDocument::from_json(&document.to_string()).unwrap();
    let again = WhatIfDocument::from_json(&serde_json::to_string(&once).unwrap()).unwrap();
    assert_eq!(what_if(&once).unwrap(), what_if(&again).unwrap());
}

#[test]
fn the_text_says_what_the_numbers_say() {
    let mut document = pump();
    document["job"]["job"]["note"] =
        json!("a note that is longer than a cell of the table, and a word: | <b>");
    document["show"].as_array_mut().unwrap().push(json!("/job/note"));
    let report = typed(&document);
    let (text, markdown) = (report.to_text(), report.to_markdown());
    let widest = text.lines().map(|l| l.chars().count()).max();
    assert!(widest <= Some(100), "{widest:?}");
    assert!(!markdown.contains("<b>"));
    let heads = text.lines().filter(|line| line.starts_with("row ")).count();
    assert!(heads >= 2, "{text}");
    for wanted in
        ["v1: /engine/piston/material", "forged piston alloy", "as it is", "REFUSED", "row 7: /job/running/"]
    {
        assert!(text.contains(wanted), "{wanted}:\n{text}");
    }
    let Some(Cell::Number(number)) = report.rows[2].shown[1] else { panic!("{:?}", report.rows[2]) };
    let digits: String = number.to_string().chars().take(7).collect();
    assert!(text.contains(&digits) && markdown.contains(&digits), "{digits}");
}
