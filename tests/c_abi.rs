//! The C ABI as a program in C sees it: the header, the static and the shared library, and nothing else.

#![expect(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test stops where it fails"
)]

// the libraries are built because this crate depends on theirs
use gaugepoint::budget::{Budget, budget_json};
use gaugepoint::decision::finding::{Place, What};
use gaugepoint::decision::signs::{Cause, Group, Question};
use gaugepoint::decision::{Conformity, Decision, Of, Outcome};
use gaugepoint::fit::{FitDocument, fit, fit_json};
use gaugepoint::measure::{MeasurementDocument, measure, measure_json};
use gaugepoint::measurement::preset;
use gaugepoint::revisit::RevisitDocument;
use gaugepoint::sheet::check_json;
use gaugepoint::stack::{StackDocument, stack_json};
use gaugepoint::what_if::{WhatIfDocument, what_if};
use gaugepoint::{
    Document, ErrorKind, Options, Report, assess, assess_json, flat, revisit_json, what_if_json,
};
use gaugepoint_c as _;
use gaugepoint_tests::assemblies::assembly_row;
use gaugepoint_tests::functions::{function_row, has_bits};
use gaugepoint_tests::hot::{apart_row, hot_row};
use gaugepoint_tests::matchings::{matching_row, numbers_of};
use gaugepoint_tests::named::{
    Named, before_row, clean_up_row, growth_row, machining_row, parts_row, risk_row, shape_row, study_row,
};
use gaugepoint_tests::pistons::piston_row;
use gaugepoint_tests::stacks::{deck_results, stack_row};
use gaugepoint_tests::{
    BUDGETS, JOBS, MEASUREMENTS, REFUSED_BUDGETS, REFUSED_STACKS, REVISITS, STACKS, WHAT_IF, batch_row,
    budget, job, measurement, rows, sign_row, text, uncertainty_row, workspace,
};
use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};
use std::process::Command;
use std::sync::{Arc, LazyLock, Mutex, OnceLock};

/// Flags that every program is built with.
const STRICT: [&str; 5] = ["-std=c99", "-Wall", "-Wextra", "-Wpedantic", "-Werror"];
/// What a Rust static library needs of the system.
const SYSTEM: [&str; 7] = ["-lgcc_s", "-lutil", "-lrt", "-lpthread", "-lm", "-ldl", "-lc"];

/// How a program is linked.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Link {
    Static,
    Shared,
    /// static, with the address and undefined-behaviour sanitizers in the program
    Sanitized,
}

const LINKS: [Link; 3] = [Link::Static, Link::Shared, Link::Sanitized];

/// The library beside this test's own program, where the build puts what it depends on.
fn library(name: &str) -> PathBuf {
    let test = std::env::current_exe().unwrap();
    let file = test.parent().unwrap().join(name);
    assert!(file.is_file(), "{} is missing", file.display());
    file
}

fn run(command: &mut Command) -> (bool, Vec<u8>, String) {
    let done = command.output().unwrap_or_else(|e| panic!("{command:?}: {e}"));
    let said = String::from_utf8_lossy(&done.stderr).into_owned();
    (done.status.success(), done.stdout, said)
}

/// Standard output of a command that must succeed.
fn output(command: &mut Command) -> Vec<u8> {
    let (success, out, said) = run(command);
    assert!(success, "{command:?}\n{}{said}", String::from_utf8_lossy(&out));
    out
}

/// Where the programs go, with the shared library under the names that the linker and the loader look for.
static FOLDER: LazyLock<PathBuf> = LazyLock::new(|| {
    let library = library("libgaugepoint_c.so");
    // beside `deps`, so that each profile has its own
    let folder = library.ancestors().nth(2).unwrap().join("c_abi");
    let _ = std::fs::remove_dir_all(&folder);
    std::fs::create_dir_all(&folder).unwrap();
    for name in ["libgaugepoint_c.so", &soname()] {
        std::os::unix::fs::symlink(&library, folder.join(name)).unwrap();
    }
    folder
});

fn soname() -> String {
    format!("libgaugepoint_c.so.{}", gaugepoint_c::abi::GAUGEPOINT_ABI)
}

/// Builds a program of `c/`.
fn program(name: &str, link: Link) -> PathBuf {
    built(name, &workspace(&format!("tests/c/{name}.c")), link)
}

/// Programs that were built: each once, whichever test asks first, because a program that runs can not be written.
static BUILT: LazyLock<Mutex<BTreeMap<PathBuf, Arc<OnceLock<()>>>>> = LazyLock::new(Mutex::default);

fn built(name: &str, source: &Path, link: Link) -> PathBuf {
    let out = FOLDER.join(format!("{name}_{link:?}"));
    let once = Arc::clone(BUILT.lock().unwrap().entry(out.clone()).or_default());
    once.get_or_init(|| build(source, link, &out));
    out
}

fn build(source: &Path, link: Link, out: &Path) {
    let mut cc = Command::new("cc");
    cc.args(STRICT).arg("-I").arg(workspace("ffi/include")).arg("-Wl,--strip-debug");
    if link == Link::Sanitized {
        cc.args(["-fsanitize=address,undefined", "-fno-sanitize-recover=all"]);
    }
    cc.arg(source).arg("-o").arg(out);
    match link {
        Link::Shared => cc
            .arg("-L")
            .arg(FOLDER.as_path())
            .arg("-lgaugepoint_c")
            .arg(format!("-Wl,-rpath,{}", FOLDER.display())),
        Link::Static | Link::Sanitized => cc.arg(library("libgaugepoint_c.a")),
    };
    output(cc.args(SYSTEM));
}

/// Runs a checking program; gives its lines without the last.
fn checked(name: &str, link: Link, argument: &Path) -> Vec<String> {
    checks_of(name, Command::new(program(name, link)).arg(argument))
}

fn checks_of(name: &str, command: &mut Command) -> Vec<String> {
    let out = output(command);
    let mut lines: Vec<String> = String::from_utf8(out).unwrap().lines().map(str::to_owned).collect();
    let last = lines.pop().unwrap_or_default();
    let checks = last.strip_prefix("checks ").and_then(|l| l.strip_suffix(" failures 0"));
    let checks: u32 =
        checks.and_then(|n| n.parse().ok()).unwrap_or_else(|| panic!("{name} ended with: {last}"));
    assert!(checks > 10, "{name} made {checks} checks");
    lines
}

fn example() -> PathBuf {
    workspace("core/examples/pump_six.json")
}

#[test]
fn the_header_compiles_in_every_dialect() {
    for (language, dialect) in [("c", "c99"), ("c", "c11"), ("c", "c17"), ("c++", "c++17")] {
        let mut cc = Command::new("cc");
        cc.args(["-fsyntax-only", "-Wall", "-Wextra", "-Wpedantic", "-Werror", "-x", language]);
        cc.arg(format!("-std={dialect}")).arg("-I").arg(workspace("ffi/include"));
        output(cc.arg(workspace("tests/c/layout.c")));
    }
}

/// The program in the README prints the line in the README.
#[test]
fn the_readme_is_true() {
    let readme = text("README.md");
    let code = readme.split("```c\n").nth(1).and_then(|rest| rest.split("```").next()).unwrap();
    let file = FOLDER.join("readme.c");
    std::fs::write(&file, code).unwrap();
    for link in LINKS {
        let printed = String::from_utf8(output(&mut Command::new(built("readme", &file, link)))).unwrap();
        assert!(printed.starts_with("piston ") && printed.ends_with(" mm\n"), "{printed}");
        assert!(readme.contains(&format!("`{}`", printed.trim_end())), "{printed}");
    }
}

/// The programs on the pages print what the pages say they do.
#[test]
fn the_pages_are_true() {
    for name in ["hot-fit", "stack", "stack-document", "clean-up"] {
        let page = text(&format!("core/docs/{name}.md"));
        let code = page.split("```c\n").nth(1).and_then(|rest| rest.split("```").next()).unwrap();
        let name = format!("page_{name}");
        let file = FOLDER.join(format!("{name}.c"));
        std::fs::write(&file, code).unwrap();
        for link in LINKS {
            let printed = String::from_utf8(output(&mut Command::new(built(&name, &file, link)))).unwrap();
            assert!(page.contains(&format!("```text\n{printed}```")), "{printed}");
        }
    }
}

#[test]
fn vectors_hold() {
    let rows = rows("tests/vectors/flat.csv");
    for link in LINKS {
        let lines = checked("vectors", link, &workspace("tests/vectors"));
        assert_eq!(lines.last(), Some(&format!("rows {}", rows.len())), "{link:?}");
        // within the tolerance of the row, and also the bits of the core
        for line in &lines[..lines.len() - 1] {
            let (id, number) = line.split_once(' ').unwrap();
            let row = rows.iter().find(|r| r[0] == id).unwrap();
            assert_eq!(number.parse::<f64>().unwrap().to_bits(), of_core(row).to_bits(), "{id}");
        }
    }
}

fn of_core(row: &[String]) -> f64 {
    let x: Vec<f64> = row[2].split(';').map(|n| n.parse().unwrap()).collect();
    flat::TABLE.iter().find(|f| f.name == row[1]).unwrap().call(&x).unwrap()
}

/// The lines that a program prints for the results of a row: every number, with its bits.
fn printed(id: &str, named: Named) -> Vec<(String, Option<u64>)> {
    named.into_iter().map(|(name, value)| (format!("{id} {name}"), value.map(f64::to_bits))).collect()
}

#[test]
fn rows_of_named_results_hold() {
    type Call = fn(&[String]) -> Result<Named, gaugepoint::Error>;
    let files: &[(&str, Call)] = &[
        ("study", study_row),
        ("risk", risk_row),
        ("before", before_row),
        ("shape", shape_row),
        ("piston", piston_row),
        ("parts", parts_row),
        ("growth", growth_row),
        ("clean_up", clean_up_row),
        ("machining", machining_row),
        ("assembly", assembly_row),
    ];
    let mut expected = Vec::new();
    for (file, call) in files {
        let rows = rows(&format!("tests/vectors/{file}.csv"));
        let named = rows.iter().filter_map(|r| Some(printed(&r[0], call(r).ok()?)));
        expected.extend(named.flatten());
        expected.push(("rows".to_owned(), Some(u64::try_from(rows.len()).unwrap())));
    }
    for link in LINKS {
        let mut lines = checked("measured", link, &workspace("tests/vectors"));
        for table in [duties(), materials()] {
            let found = lines.split_off(lines.len().saturating_sub(table.len()));
            let found: Vec<_> = found.iter().map(|line| parsed(line)).collect();
            assert_eq!(found, table, "{link:?}");
        }
        assert_eq!(lines.pop(), Some(format!("table {}", gaugepoint::bounds::TABLE.len())), "{link:?}");
        let found: Vec<(String, Option<u64>)> = lines.iter().map(|line| parsed(line)).collect();
        assert_eq!(found, expected, "{link:?}");
    }
}

/// What C lists of the illustrative temperatures by duty.
fn duties() -> Vec<(String, Option<u64>)> {
    let mut out = Vec::new();
    for duty in gaugepoint::growth::duty::ALL {
        let mut line = |part: &str, x: f64| out.push((format!("{}/{part}", duty.name), Some(x.to_bits())));
        duty.piston.iter().flat_map(|r| [r.at, r.thrust_c, r.pin_c]).for_each(|x| line("piston", x));
        duty.bore.iter().flat_map(|r| [r.at, r.wall_c]).for_each(|x| line("bore", x));
    }
    let count = gaugepoint::growth::duty::ALL.len();
    out.push(parsed(&format!("duties {count}")));
    out
}

/// What C lists of the built-in materials.
fn materials() -> Vec<(String, Option<u64>)> {
    let mut out = Vec::new();
    for row in gaugepoint::growth::library::ALL {
        for (k, cell) in row.cells.iter().enumerate() {
            let numbers = [cell.temperature_c, cell.coefficient_per_k];
            out.extend(numbers.map(|x| (format!("{}/{k}", row.name), Some(x.to_bits()))));
        }
    }
    let count = gaugepoint::growth::library::ALL.len();
    out.push(parsed(&format!("materials {count}")));
    out
}

fn parsed(line: &str) -> (String, Option<u64>) {
    let (name, value) = line.rsplit_once(' ').unwrap();
    let bits = match name {
        "rows" => value.parse().unwrap(),
        _ if value == "none" => return (name.to_owned(), None),
        _ => value.parse::<f64>().unwrap().to_bits(),
    };
    (name.to_owned(), Some(bits))
}

#[test]
fn misused_records_and_arrays_give_a_status() {
    for link in LINKS {
        checked("records", link, &example());
    }
}

#[test]
fn misused_parts_give_a_status() {
    for link in LINKS {
        checked("parts", link, &example());
    }
}

/// The rows with the bits of the core; misuse is checked by the program.
#[test]
fn hot_fits_are_made_once_and_asked_often() {
    let table = rows("tests/vectors/hot_fit.csv");
    let named = table.iter().flat_map(|row| {
        let [fit, apart] = [hot_row(row), apart_row(row)].map(|named| printed(&row[0], named.unwrap()));
        fit.into_iter().chain(apart)
    });
    let mut expected: Vec<(String, Option<u64>)> = named.collect();
    expected.push(("rows".to_owned(), Some(u64::try_from(table.len()).unwrap())));
    for link in LINKS {
        let lines = checked("hot", link, &workspace("tests/vectors"));
        let found: Vec<(String, Option<u64>)> = lines.iter().map(|line| parsed(line)).collect();
        assert_eq!(found, expected, "{link:?}");
    }
}

/// The numbers of C are the places of the words; every row gives what the independent evaluation gives.
#[test]
fn findings_are_explained_as_in_the_vectors() {
    let table = rows("tests/vectors/signs.csv");
    let number = |one: usize| one + 1;
    let place = |p: Place| number(Place::ALL.iter().position(|q| *q == p).unwrap());
    let what = |w: What| number(What::ALL.iter().position(|v| *v == w).unwrap());
    let question = |q: Question| number(Question::ALL.iter().position(|p| *p == q).unwrap());
    let cause = |word: &str| number(Cause::ALL.iter().position(|c| c.word() == word).unwrap());
    let mut calls = String::new();
    let mut expected = Vec::new();
    for row in &table {
        let ((p, w), answers) = sign_row(row);
        calls += &format!("{} {} {}", place(p), what(w), answers.len());
        answers.iter().for_each(|(q, yes)| calls += &format!(" {} {}", question(*q), i32::from(*yes)));
        calls += "\n";
        let parts =
            |cell: &str| cell.split(';').filter(|c| !c.is_empty()).map(str::to_owned).collect::<Vec<_>>();
        let candidates: String = parts(&row[4])
            .iter()
            .map(|c| c.split_once('/').unwrap())
            .map(|(name, rest)| format!("{}/{rest};", cause(name)))
            .collect();
        let asked = |word: &String| format!(" {}", question(Question::from_word(word).unwrap()));
        let ask: String = parts(&row[5]).iter().map(asked).collect();
        let found = if row[6].is_empty() { 0 } else { cause(&row[6]) };
        expected.push(format!("{candidates} ask{ask} cause {found}"));
    }
    expected.push(format!("rows {}", table.len()));
    let file = FOLDER.join("signs.txt");
    std::fs::write(&file, calls).unwrap();
    for link in LINKS {
        assert_eq!(checked("signs", link, &file), expected, "{link:?}");
    }
}

/// An enumeration of the header has the words of the core, numbered in their order.
#[test]
fn words_have_their_numbers() {
    let header = text("ffi/include/gaugepoint.h");
    let words = [
        ("PLACE", Place::ALL.iter().map(|w| w.word()).collect::<Vec<_>>()),
        ("WHAT", What::ALL.iter().map(|w| w.word()).collect()),
        ("QUESTION", Question::ALL.iter().map(|w| w.word()).collect()),
        ("GROUP", Group::ALL.iter().map(|w| w.word()).collect()),
        ("CAUSE", Cause::ALL.iter().map(|w| w.word()).collect()),
        ("OUTCOME", Outcome::ALL.iter().map(|w| w.word()).collect()),
        ("JUDGED", Of::ALL.iter().map(|w| w.word()).collect()),
    ];
    for (name, words) in words {
        let head = format!("  GAUGEPOINT_{name}_");
        let found: Vec<String> =
            header.lines().filter_map(|l| l.strip_prefix(&head)).map(str::to_owned).collect();
        let expected: Vec<String> = words
            .iter()
            .enumerate()
            .map(|(k, w)| format!("{} = {},", w.to_uppercase().replace(' ', "_"), k + 1))
            .collect();
        let expected: Vec<String> =
            expected.iter().map(|l| l.replace("AT_45_DEGREES", "AT_FORTY_FIVE")).collect();
        assert_eq!(found, expected, "{name}");
    }
}

#[test]
fn refusals_hold() {
    let count = rows("tests/vectors/refused.csv").len();
    for link in LINKS {
        let lines = checked("refusals", link, &workspace("tests/vectors"));
        assert_eq!(lines, [format!("rows {count}")], "{link:?}");
    }
}

#[test]
fn reports_are_those_of_the_core_byte_by_byte() {
    for link in LINKS {
        let program = program("report", link);
        for name in JOBS {
            let text = job(name);
            let file = FOLDER.join(format!("{name}_{link:?}.json"));
            std::fs::write(&file, &text).unwrap();
            for working in [false, true] {
                let mut command = Command::new(&program);
                command.arg(&file).args(working.then_some("working"));
                let expected = assess_json(&text, Options { working }).unwrap();
                assert!(output(&mut command) == expected.into_bytes(), "{name}, working {working}, {link:?}");
            }
        }
        let (success, out, said) = run(Command::new(&program).arg(workspace("tests/vectors/README.md")));
        assert!(!success && out.is_empty() && said.contains("not valid JSON"), "{said}");
    }
}

#[test]
fn sheets_hold_and_their_reports_are_those_of_the_core() {
    let refused = rows("tests/vectors/sheets/refused.csv").len();
    let documents: Vec<String> =
        rows("tests/vectors/sheets/expected.csv").into_iter().map(|row| row[0].clone()).collect();
    for link in LINKS {
        let lines = checked("sheets", link, &workspace("tests/vectors"));
        assert_eq!(lines, [format!("rows {refused}")], "{link:?}");
        let program = program("report", link);
        for name in &documents {
            let file = format!("tests/vectors/sheets/{name}.json");
            let expected = check_json(&text(&file)).unwrap();
            let given = output(Command::new(&program).arg(workspace(&file)).arg("sheet"));
            assert!(given == expected.into_bytes(), "{name}, {link:?}");
        }
    }
}

#[test]
fn measurements_and_presets_are_those_of_the_core_byte_by_byte() {
    for link in LINKS {
        let program = program("measure", link);
        for name in MEASUREMENTS {
            let text = measurement(name);
            let file = FOLDER.join(format!("{name}_{link:?}.json"));
            std::fs::write(&file, &text).unwrap();
            for working in [false, true] {
                let mut command = Command::new(&program);
                command.arg(&file).args(working.then_some("working"));
                let expected = measure_json(&text, Options { working }).unwrap();
                assert!(output(&mut command) == expected.into_bytes(), "{name}, working {working}, {link:?}");
            }
        }
        assert!(output(Command::new(&program).arg("presets")) == preset::to_json().into_bytes());
        let wrong = measurement(MEASUREMENTS[0]).replacen("\"3 deg\"", "\"3 rad\"", 1);
        let file = FOLDER.join(format!("wrong_{link:?}.json"));
        std::fs::write(&file, wrong).unwrap();
        let (success, out, said) = run(Command::new(&program).arg(file));
        let expected = "wrong_unit /readings/0/outside/off_axis/half_width: ";
        assert!(!success && out.is_empty() && said.starts_with(expected), "{said}");
    }
}

#[test]
fn hot_fits_are_those_of_the_core_byte_by_byte() {
    let file = "core/examples/sawmill_fit.json";
    for link in LINKS {
        let program = program("report", link);
        for (word, working) in [("fit", false), ("fit-working", true)] {
            let expected = fit_json(&text(file), Options { working }).unwrap();
            let given = output(Command::new(&program).arg(workspace(file)).arg(word));
            assert!(given == expected.into_bytes(), "working {working}, {link:?}");
        }
    }
}

#[test]
fn documents_of_stacks_are_those_of_the_core_byte_by_byte() {
    let refused = format!("refused {}", rows(REFUSED_STACKS).len());
    for link in LINKS {
        let lines = checked("stack_document", link, &workspace("tests/vectors"));
        assert_eq!(lines, [refused.as_str()], "{link:?}");
        let program = program("report", link);
        for (name, file) in STACKS {
            for (word, working) in [("stack", false), ("stack-working", true)] {
                let expected = stack_json(&text(file), Options { working }).unwrap();
                let given = output(Command::new(&program).arg(workspace(file)).arg(word));
                assert!(given == expected.into_bytes(), "{name}, working {working}, {link:?}");
            }
        }
    }
}

#[test]
fn compared_jobs_are_those_of_the_core_byte_by_byte() {
    for link in LINKS {
        assert!(checked("comparing", link, &workspace("tests/vectors")).is_empty(), "{link:?}");
        let program = program("report", link);
        let given = |file: &str, word: &str| output(Command::new(&program).arg(workspace(file)).arg(word));
        for (name, file) in REVISITS {
            assert!(
                given(file, "revisit") == revisit_json(&text(file)).unwrap().into_bytes(),
                "{name}, {link:?}"
            );
        }
        assert!(given(WHAT_IF, "what-if") == what_if_json(&text(WHAT_IF)).unwrap().into_bytes(), "{link:?}");
    }
}

/// A report as JSON, as text and as Markdown, where it is written so.
type Written = [Option<String>; 3];

fn json_only(json: String) -> Written {
    [Some(json), None, None]
}

/// The report on a document of a kind, as the core writes it.
fn written(kind: i32, document: &str, working: bool) -> Written {
    macro_rules! report {
        ($made:expr) => {{
            let report = $made.unwrap();
            [Some(report.to_json()), Some(report.to_text()), None]
        }};
        ($made:expr, markdown) => {{
            let report = $made.unwrap();
            [Some(report.to_json()), Some(report.to_text()), Some(report.to_markdown())]
        }};
    }
    let options = Options { working };
    match kind {
        1 => report!(assess(&Document::from_json(document).unwrap(), options), markdown),
        2 => json_only(check_json(document).unwrap()),
        3 => report!(measure(&MeasurementDocument::from_json(document).unwrap(), options)),
        4 => report!(fit(&FitDocument::from_json(document).unwrap(), options)),
        5 => report!(StackDocument::from_json(document).unwrap().evaluate(options), markdown),
        6 => report!(Budget::from_json(document).unwrap().evaluate()),
        7 => report!(RevisitDocument::from_json(document).unwrap().evaluate(), markdown),
        8 => report!(what_if(&WhatIfDocument::from_json(document).unwrap()), markdown),
        _ => panic!("{kind}"),
    }
}

/// Documents of every kind with its number.
fn documents() -> Vec<(i32, String)> {
    let of = |kind: i32| move |document: String| (kind, document);
    let mut out: Vec<(i32, String)> = JOBS.iter().map(|name| job(name)).map(of(1)).collect();
    let sheets = rows("tests/vectors/sheets/expected.csv").into_iter();
    out.extend(sheets.map(|row| text(&format!("tests/vectors/sheets/{}.json", row[0]))).map(of(2)));
    out.extend(MEASUREMENTS.iter().map(|name| measurement(name)).map(of(3)));
    out.push((4, text("core/examples/sawmill_fit.json")));
    out.extend(STACKS.iter().map(|(_, file)| text(file)).map(of(5)));
    out.extend(BUDGETS.iter().map(|name| budget(name)).map(of(6)));
    out.extend(REVISITS.iter().map(|(_, file)| text(file)).map(of(7)));
    out.push((8, text(WHAT_IF)));
    out
}

#[test]
fn reports_are_made_once_and_written_in_every_form() {
    for link in LINKS {
        assert!(checked("reports", link, &example()).is_empty(), "{link:?}");
    }
    let program = program("reports", Link::Shared);
    let file = FOLDER.join("document.json");
    for (kind, document) in documents() {
        std::fs::write(&file, &document).unwrap();
        let has_working = matches!(kind, 1 | 3 | 4 | 5);
        for working in [false, true].into_iter().filter(|w| has_working || !w) {
            for (format, expected) in written(kind, &document, working).into_iter().enumerate() {
                let numbers =
                    [kind, working.into(), i32::try_from(format).unwrap() + 1].map(|n| n.to_string());
                let (success, given, said) = run(Command::new(&program).arg(&file).args(numbers));
                assert_eq!(success, expected.is_some(), "{kind} {format}: {said}");
                assert!(given == expected.unwrap_or_default().into_bytes(), "{kind} {working} {format}");
                assert!(success || said == "unknown_choice format\n", "{said}");
            }
        }
    }
}

/// What C says of a job, from the report as data.
fn told_of(job: &Report) -> Vec<String> {
    let place = |of: Outcome| Outcome::ALL.iter().position(|o| *o == of).unwrap() + 1;
    let judged = |of: Of| Of::ALL.iter().position(|o| *o == of).unwrap() + 1;
    let counts =
        Outcome::ALL.iter().map(|o| job.block.counts.get(o.word()).copied().unwrap_or(0).to_string());
    let counts = counts.collect::<Vec<_>>().join(" ");
    let verdict = &job.block.verdict;
    let mut out =
        vec![format!("outcome {} cylinders {}: {counts}", place(verdict.outcome), job.cylinders.len())];
    out.extend(job.cautions.iter().cloned());
    out.extend(job.warnings.iter().map(|w| format!("{} ({})", w.text, w.path)));
    out.extend(verdict.reasons.iter().cloned());
    for cylinder in &job.cylinders {
        let decisions: Vec<&Decision> = cylinder.decisions().collect();
        out.push(format!(
            "cylinder {} outcome {} piston {} bore {} by {} decisions {} missing {}",
            cylinder.number,
            place(cylinder.verdict.outcome),
            cylinder.piston.as_ref().map_or(0, |p| place(p.verdict.outcome)),
            cylinder.bore.as_ref().map_or(0, |b| place(b.verdict.outcome)),
            cylinder.verdict.decided_by.map_or(0, judged),
            decisions.len(),
            cylinder.missing.len(),
        ));
        out.extend(cylinder.verdict.reasons.iter().chain(&cylinder.missing).cloned());
        out.extend(decisions.iter().map(|d| d.reason.clone()));
        for d in decisions {
            let result = Conformity::ALL.iter().position(|c| *c == d.result).unwrap() + 1;
            out.push(format!("judged {} result {result}", judged(d.of)));
            let values = [
                ("value_mm", d.value_mm),
                ("standard_uncertainty_mm", d.standard_uncertainty_mm),
                ("dof", d.dof),
                ("reference_temperature_c", d.reference_temperature_c),
                ("lower_mm", d.lower_mm),
                ("upper_mm", d.upper_mm),
                ("guard_band_mm", d.guard_band_mm),
                ("rejection_guard_band_mm", d.rejection_guard_band_mm),
                ("uncertainty_ratio", d.uncertainty_ratio),
                ("probability_of_conformity", d.probability_of_conformity),
            ];
            out.extend(
                values.iter().filter_map(|(name, value)| Some(format!("{name} {:?}", (*value)?.to_bits()))),
            );
        }
    }
    out
}

/// A line of C with the bits of its number.
fn with_bits(line: &str) -> String {
    match line.split_once(' ').filter(|(name, _)| name.ends_with("_mm") || NUMBERS.contains(name)) {
        Some((name, number)) => format!("{name} {:?}", number.parse::<f64>().unwrap().to_bits()),
        None => line.to_owned(),
    }
}

/// Numbers of a decision whose names do not end in `_mm`.
const NUMBERS: [&str; 4] =
    ["dof", "reference_temperature_c", "uncertainty_ratio", "probability_of_conformity"];

#[test]
fn verdicts_of_jobs_are_those_of_the_core() {
    let program = program("reports", Link::Sanitized);
    let file = FOLDER.join("job.json");
    for name in JOBS {
        std::fs::write(&file, job(name)).unwrap();
        let given = output(Command::new(&program).arg(&file).arg("verdicts"));
        let given: Vec<String> = String::from_utf8(given).unwrap().lines().map(with_bits).collect();
        let report = assess(&Document::from_json(&job(name)).unwrap(), Options::default()).unwrap();
        assert_eq!(given, told_of(&report), "{name}");
    }
}

#[test]
fn uncertain_quantities_hold() {
    let table = rows("tests/vectors/uncertainty.csv");
    let values =
        table.iter().filter_map(|row| Some((row[0].clone(), Some(uncertainty_row(row).ok()?.to_bits()))));
    let mut expected: Vec<(String, Option<u64>)> = values.collect();
    expected.push(("rows".to_owned(), Some(u64::try_from(table.len()).unwrap())));
    let refused = format!("refused {}", rows(REFUSED_BUDGETS).len());
    for link in LINKS {
        let mut lines = checked("budget", link, &workspace("tests/vectors"));
        assert_eq!(lines.pop(), Some(refused.clone()), "{link:?}");
        let found: Vec<(String, Option<u64>)> = lines.iter().map(|line| parsed(line)).collect();
        assert_eq!(found, expected, "{link:?}");
    }
    // the reports, byte by byte; the program is there
    let program = FOLDER.join(format!("budget_{:?}", Link::Shared));
    for name in BUDGETS {
        let file = workspace(&format!("tests/vectors/budgets/{name}.json"));
        let printed = output(Command::new(&program).arg("").arg(file));
        assert!(printed == budget_json(&budget(name)).unwrap().into_bytes(), "{name}");
    }
}

/// The rows with the bits of the core; arrangements of memory, and misuse, are checked by the program.
#[test]
fn batches_hold() {
    let table = rows("tests/vectors/batch.csv");
    let mut expected = Vec::new();
    for cells in &table {
        if let Ok([bench, running]) = batch_row(cells) {
            for (name, value) in [("bench", bench), ("running", running)] {
                expected.push((format!("{} {name}", cells[0]), Some(value.to_bits())));
            }
        }
    }
    expected.push(("rows".to_owned(), Some(u64::try_from(table.len()).unwrap())));
    for link in LINKS {
        let lines = checked("batch", link, &workspace("tests/vectors"));
        let found: Vec<(String, Option<u64>)> = lines.iter().map(|line| parsed(line)).collect();
        assert_eq!(found, expected, "{link:?}");
    }
}

/// The rows, and the results of an invented stack, with the bits of the core; misuse is checked by the program.
#[test]
fn stacks_hold() {
    let table = rows("tests/vectors/stack.csv");
    let mut expected = Vec::new();
    for cells in &table {
        let (value, error) = stack_row(cells).unwrap();
        expected.push((format!("{} value", cells[0]), Some(value.to_bits())));
        expected.push((format!("{} error", cells[0]), Some(error.to_bits())));
    }
    expected.push(("rows".to_owned(), Some(u64::try_from(table.len()).unwrap())));
    expected.extend(deck_results().into_iter().map(|(name, value)| (name, Some(value.to_bits()))));
    for link in LINKS {
        let lines = checked("stack", link, &workspace("tests/vectors"));
        let found: Vec<(String, Option<u64>)> = lines.iter().map(|line| parsed(line)).collect();
        assert_eq!(found, expected, "{link:?}");
    }
}

/// Every number of every matching, with the bits of the core.
#[test]
fn matchings_hold() {
    let table = rows("tests/vectors/matching.csv");
    let mut expected: Vec<Option<u64>> = Vec::new();
    for cells in &table {
        expected.extend(matching_row(cells).iter().flat_map(numbers_of).map(|x| Some(x.to_bits())));
    }
    expected.push(Some(u64::try_from(table.len()).unwrap()));
    for link in LINKS {
        let lines = checked("matching", link, &workspace("tests/vectors"));
        let found: Vec<Option<u64>> = lines.iter().map(|line| parsed(line).1).collect();
        assert_eq!(found, expected, "{link:?}");
    }
}

/// The rows with the bits of the core; callbacks, parts of runs and misuse are checked by the program.
#[test]
fn functions_hold() {
    let table = rows("tests/vectors/function.csv");
    let mut expected = Vec::new();
    for cells in table.iter().filter(|cells| has_bits(cells)) {
        let results = function_row(cells).unwrap_or_default().into_iter();
        let line =
            |(name, value): (String, Option<f64>)| (format!("{} {name}", cells[0]), value.map(f64::to_bits));
        expected.extend(results.map(line));
    }
    expected.push(("rows".to_owned(), Some(u64::try_from(table.len()).unwrap())));
    for link in LINKS {
        let lines = checked("function", link, &workspace("tests/vectors"));
        let found: Vec<(String, Option<u64>)> = lines.iter().map(|line| parsed(line)).collect();
        assert_eq!(found, expected, "{link:?}");
    }
}

/// Everything that can be watched: what is told, what a stop leaves, the same bits.
#[test]
fn long_work_is_watched() {
    for link in LINKS {
        assert!(checked("progress", link, &workspace("tests/vectors")).is_empty(), "{link:?}");
    }
}

#[test]
fn misuse_gives_a_status() {
    for link in LINKS {
        let lines = checked("misuse", link, &example());
        let kinds =
            ErrorKind::ALL.iter().map(|k| format!("status {} {} {}", k.code(), k.name(), k.meaning()));
        let expected: Vec<String> = std::iter::once("status 0 ok Success.".to_owned()).chain(kinds).collect();
        assert_eq!(lines[..expected.len()], expected, "{link:?}");
        let ours =
            ["901 null_pointer", "902 struct_size", "903 out_of_memory", "904 panic", "905 callback_failed"];
        let rest = &lines[expected.len()..];
        assert!(
            rest.len() == ours.len()
                && rest.iter().zip(ours).all(|(l, o)| l.starts_with(&format!("status {o} "))),
            "{rest:?}"
        );
    }
}

#[test]
fn unmasked_traps_do_not_kill() {
    for link in LINKS {
        checked("traps", link, &example());
    }
}

/// Ten million calls of an optimised library in all; fewer of one that is not.
#[test]
fn threads_get_the_same_bytes() {
    let most = if cfg!(debug_assertions) { 160_000 } else { 10_000_000 };
    for link in LINKS {
        // the sanitizers look at every byte that is copied
        let calls = if link == Link::Shared { most } else { 160_000 };
        let mut command = Command::new(program("threads", link));
        let lines = checks_of("threads", command.arg(example()).arg(calls.to_string()));
        assert_eq!(lines, [format!("calls {calls}")], "{link:?}");
    }
}

/// Names of the functions in the header.
fn declared() -> BTreeSet<String> {
    let header = text("ffi/include/gaugepoint.h");
    let starts = |line: &&str| {
        let no = line.starts_with([' ', '/', '#', '*']) || line.starts_with("typedef");
        !no && line.contains('(')
    };
    header
        .lines()
        .filter(starts)
        .filter_map(|l| l.split('(').next()?.rsplit([' ', '*']).next())
        .map(str::to_owned)
        .collect()
}

/// Names and bodies of the exported functions in the sources.
fn exported() -> Vec<(String, String)> {
    let folder = workspace("ffi/src");
    let files = std::fs::read_dir(folder).unwrap().map(|f| f.unwrap().path());
    let sources: String = files.map(|f| std::fs::read_to_string(f).unwrap()).collect();
    let marked = sources.matches("no_mangle").count() + sources.matches("export_name").count();
    let found: Vec<(String, String)> = sources
        .split("extern \"C\" fn ")
        .skip(1)
        .map(|rest| {
            let name = rest.split('(').next().unwrap().to_owned();
            let body = rest.split_once("{\n").unwrap().1.split_once("\n}\n").unwrap().0;
            (name, body.to_owned())
        })
        .collect();
    assert_eq!(found.len(), marked, "a function is exported in another form");
    found
}

#[test]
fn nothing_else_is_exported() {
    let out = output(Command::new("nm").args(["-D", "--defined-only"]).arg(library("libgaugepoint_c.so")));
    let listed = String::from_utf8(out).unwrap();
    let symbols: BTreeSet<String> =
        listed.lines().filter_map(|l| l.split_whitespace().last()).map(str::to_owned).collect();
    let sources: BTreeSet<String> = exported().into_iter().map(|(name, _)| name).collect();
    assert_eq!(symbols, declared());
    assert_eq!(symbols, sources);
    assert!(symbols.iter().all(|s| s.starts_with("gaugepoint_")));
}

/// True when the body is one call of the boundary and nothing else, or one of the form of the same function that is watched, which is held to this itself.
fn guarded(name: &str, body: &str) -> bool {
    let code: String = body.lines().filter(|l| !l.trim().starts_with("//")).collect::<Vec<_>>().join("\n");
    let code = code.trim();
    let code = code.strip_prefix("unsafe {").and_then(|c| c.strip_suffix('}')).unwrap_or(code).trim();
    let code = code.trim_end_matches(';');
    let mut depth = 0;
    let end = code.find(|c: char| {
        depth += i32::from(c == '(') - i32::from(c == ')');
        c == ')' && depth == 0
    });
    let allowed =
        ["plain(".to_owned(), "status(".to_owned(), "number(".to_owned(), format!("{name}_watched(")];
    allowed.iter().any(|call| code.starts_with(call.as_str())) && end == Some(code.len() - 1)
}

#[test]
fn every_export_stands_behind_the_boundary() {
    for (name, body) in exported() {
        assert!(guarded(&name, &body), "{name} does not: {body}");
    }
    // the scan itself finds what is not
    assert!(guarded("f", "    plain((), || unsafe { take(text) });"));
    assert!(guarded("f", "    unsafe { f_watched(a, None, null_mut()) }"));
    assert!(!guarded("f", "    unsafe { g_watched(a, None, null_mut()) }"));
    assert!(!guarded("f", "    GAUGEPOINT_ABI"));
    assert!(!guarded("f", "    let n = compute();\n    plain(0, || n)"));
    assert!(!guarded("f", "    plain(0, || 1) + compute()"));
}

#[test]
fn the_shared_library_is_named_after_its_abi() {
    let out = output(Command::new("readelf").arg("-d").arg(library("libgaugepoint_c.so")));
    let listed = String::from_utf8(out).unwrap();
    assert!(listed.contains(&format!("[{}]", soname())), "{listed}");
}
