"""`python -m gaugepoint`: what it writes is what the library says, its exit codes, what it refuses, and that nothing is ever half-written."""

import base64
import csv
import io
import json
import os
import pty
import re
import runpy
import signal
import subprocess
import sys
import textwrap
import time
import xml.etree.ElementTree
from html.parser import HTMLParser
from pathlib import Path

import gaugepoint
import numpy as np
import pandas as pd
import pytest
from gaugepoint import __main__ as command
from gaugepoint import frames
from vectors import EXAMPLES, HOT_FIT, REPOSITORY, REVISIT, SHEETS, STACK, THREE_WAYS, VECTORS, WHAT_IF

BUDGET = VECTORS / "budgets" / "gum_h1.json"
SHEET = SHEETS / "16_several.json"
PUMP = next(example for example in EXAMPLES if example.stem == "pump_six")
DOCUMENTS = [
    *((example, gaugepoint.assess) for example in EXAMPLES),
    (SHEET, gaugepoint.check_sheet),
    (THREE_WAYS, gaugepoint.measure),
    (HOT_FIT, gaugepoint.fit),
    (STACK, gaugepoint.evaluate_stack),
    (REVISIT, gaugepoint.revisit),
    (WHAT_IF, gaugepoint.what_if),
    (BUDGET, gaugepoint.budget),
]
JUDGED_BY = ["--bore-per-k", "11.4e-6", "--piston-per-k", "20.5e-6", "--limits-mm", "0.030", "0.060", "--standard-uncertainty-mm", "0.002"]
ADDED = ["bench_mm", "running_mm", "decision", "status", "reason"]
# five quantities, all at 20 C: the clearance on the bench is the difference
HEAD = "bore_mm,piston_mm,parts_temperature_c,bore_temperature_c,piston_temperature_c"
AT_20 = "20,20,20"


def run(*arguments, given=b"", **options):
    """The command in a process of its own."""
    return subprocess.run([sys.executable, "-m", "gaugepoint", *map(os.fspath, arguments)], input=given, capture_output=True, check=False, **options)


@pytest.fixture
def called(monkeypatch, capfdbinary):
    """The command in this process, which costs less: code, standard output, standard error."""

    def call(*arguments, given=b""):
        monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(given)))
        try:
            code = command.main([*map(os.fspath, arguments)])
        except SystemExit as stopped:
            code = stopped.code
        sys.stdout.flush()
        return code, *capfdbinary.readouterr()

    return call


def written(folder):
    """Names of a folder and what they hold, also of names that begin with a dot."""
    return {path.name: path.read_bytes() for path in folder.iterdir()}


def stack(limits=None, name="shims"):
    """Three invented shims of 0.5 mm +-0.02 mm: 1.44 mm to 1.56 mm."""
    shim = {"name": "shim", "nominal": 0.5, "lower": -0.02, "upper": 0.02, "count": 3, "distribution": {"uniform_within_limits": {}}}
    return {"format": "gaugepoint-stack", "version": 1, "name": name, "contributors": [shim]} | ({"limits": limits} if limits else {})


# reports


@pytest.mark.parametrize("path, function", DOCUMENTS, ids=lambda x: getattr(x, "stem", ""))
def test_reports_are_those_of_the_library(path, function, called):
    report = function(path)
    assert called(path, "--json")[1].decode() == report.to_json() + "\n"
    code, text, said = called(path)
    assert code in (0, 1) and not said and text.endswith(b"\n") and not text.endswith(b"\n\n")
    if hasattr(report, "to_text"):
        assert text.decode().rstrip("\n") == report.to_text().rstrip("\n")
    _, markdown, _ = called(path, "--markdown")
    if hasattr(report, "to_markdown"):
        assert markdown.decode() == report.to_markdown()
    else:
        assert textwrap.dedent(markdown.decode()) == text.decode()
    # where it comes from does not matter
    assert called("-", given=path.read_bytes()) == (code, text, b"")


def test_a_process_writes_the_same_bytes(called, tmp_path):
    document = stack(name="Scheibe für Ø 3, 0.1 µm")
    (tmp_path / "stack.json").write_text(json.dumps(document), encoding="utf-8")
    # whatever the locale says, it is UTF-8
    plain = {**os.environ, "LC_ALL": "C", "PYTHONIOENCODING": "ascii", "PYTHONUTF8": "0"}
    done = run(tmp_path / "stack.json", "--json", env=plain)
    assert (done.returncode, done.stderr) == (0, b"")
    assert done.stdout.decode() == gaugepoint.evaluate_stack(document).to_json() + "\n"
    assert "Scheibe für Ø 3, 0.1 µm".encode() in run(tmp_path / "stack.json", env=plain).stdout


def test_every_kind_of_document_is_read():
    schemas = (getattr(gaugepoint, name)() for name in gaugepoint.__all__ if name.endswith("_schema") and not name.endswith("report_schema"))
    assert {json.dumps(schema["properties"]["format"]).count("gaugepoint-") or 1 for schema in schemas} == {1}
    readers = {name.removesuffix("_schema") for name in gaugepoint.__all__ if name.endswith("_schema") and not name.endswith("report_schema")}
    assert {kind.replace("-", "_") for kind in command.KINDS} == readers


def test_a_sheet_in_words(called):
    report = gaugepoint.check_sheet(SHEET)
    _, text, _ = called(SHEET)
    assert report.contradictions and all(found.text in text.decode() for found in report.contradictions)
    assert all(suspicion.text in text.decode() for found in report.contradictions for suspicion in found.suspected)


# exit codes


@pytest.mark.parametrize(
    "document, code",
    [
        # by hand: the worst case is 1.44 to 1.56
        (stack(), 0),
        (stack({"upper": 1.57}), 0),
        (stack({"upper": 1.55}), 1),
        (stack({"lower": 1.45, "upper": 1.57}), 1),
        (stack({"upper": "1,57"}), 2),
    ],
)
def test_codes_of_stacks(document, code, called):
    assert called("-", given=json.dumps(document).encode())[0] == code


def test_codes_of_sheets(called):
    entry = {"id": "bore", "what": "bore", "printed": "86.00-86.02 mm", "also_printed": "3.3858-3.3866 in"}
    sheet = {"format": "gaugepoint-sheet", "version": 1, "sheet": {"id": "invented"}, "entries": [entry]}
    # 86.00 / 25.4 = 3.38583, 86.02 / 25.4 = 3.38661
    assert called("-", given=json.dumps(sheet).encode())[0] == 0
    entry["also_printed"] = "3.3858-3.3966 in"
    assert called("-", given=json.dumps(sheet).encode())[0] == 1


def test_codes_of_jobs(called, tmp_path):
    # what the reports say in words
    for example in EXAMPLES:
        code, text, _ = called(example)
        assert (code, b"THE ENGINE: reuse" in text) == (1, False)
    job = json.loads(PUMP.read_text(encoding="utf-8"))
    del job["plan"]
    job["cylinders"] = [job["cylinders"][0]]
    job["engine"]["cylinders"] = 1
    job.pop("stacks", None)
    code, text, said = called("-", given=json.dumps(job).encode())
    assert (code, said) == (0, b"") and b"THE ENGINE: reuse" in text
    # the engine still conforms, a stack of it does not
    inner = {name: value for name, value in stack({"upper": 1.55}).items() if name not in ("format", "version")}
    code, text, _ = called("-", given=json.dumps(job | {"stacks": [inner]}).encode())
    assert code == 1 and b"THE ENGINE: reuse" in text
    # what if: every combination has to
    what_if = {"format": "gaugepoint-what-if", "version": 1, "job": job, "vary": [{"field": "/job/note", "values": ["one", "two"]}]}
    assert called("-", given=json.dumps(what_if).encode())[::2] == (0, b"")
    what_if["vary"] = [{"field": "/engine/limits/bore_size/max", "values": ["96.040 mm", "96.010 mm"]}]
    assert called("-", given=json.dumps(what_if).encode())[::2] == (1, b"")


def test_a_finished_job_goes_by_what_was_found_after_the_work(called):
    class Finish:
        result = "proven"

    class Plan:
        finish = Finish

    class Block:
        class verdict:
            outcome = "do not reuse"

    class Report:
        plan, block, stacks = Plan, Block, ()

    assert command.KINDS["job"].proven(Report)
    Finish.result = "not proven"
    assert not command.KINDS["job"].proven(Report)


def test_codes_of_what_judges_nothing_and_of_revisits(called):
    assert [called(path)[0] for path in (THREE_WAYS, HOT_FIT, BUDGET)] == [0, 0, 0]
    assert gaugepoint.revisit(REVISIT).suspicious and called(REVISIT)[0] == 1


# refusals


def test_the_worst_code_counts_and_every_file_is_done(called, tmp_path):
    broken = tmp_path / "broken.json"
    job = json.loads(PUMP.read_text(encoding="utf-8"))
    job["shop"]["temperature"] = "230 C"
    broken.write_text(json.dumps(job), encoding="utf-8")
    with pytest.raises(gaugepoint.InputError) as refused:
        gaugepoint.assess(broken)
    out = tmp_path / "out"
    code, text, said = called(HOT_FIT, broken, tmp_path / "nothing.json", tmp_path, PUMP, "--output", out)
    assert (code, text) == (2, b"")
    lines = said.decode().splitlines()
    assert lines[0] == f"{broken}: {refused.value}" and "/shop/temperature" in lines[0] and "230 C" in lines[0]
    assert lines[1].startswith(f"{tmp_path / 'nothing.json'}: ") and lines[2].startswith(f"{tmp_path}: ") and len(lines) == 3
    assert set(written(out)) == {"sawmill_fit.report.txt", "pump_six.report.txt"}
    assert written(out)["pump_six.report.txt"].decode() == gaugepoint.assess(PUMP).to_text().rstrip("\n") + "\n"


@pytest.mark.parametrize(
    "given, said",
    [
        (b"", "not valid JSON"),
        (b"\xff\xfe", ""),
        (b"{", "not valid JSON"),
        (b"[]", "an object is needed"),
        (b"{}", "/format: this field is required"),
        (b'{"format": 5}', "a text is needed"),
        (b'{"format": "gaugepoint-engine"}', 'the formats read here are gaugepoint-job, gaugepoint-sheet, '),
        (b'{"format": "job"}', '/format: "job" is refused'),
        (b'{"format": "gaugepoint-report", "version": 1}', '/format: "gaugepoint-report" is refused'),
        (b"[" * 100_000, ""),
        (b'{"format": ' + b"9" * 5000 + b"}", ""),
    ],
)
def test_what_is_no_document(given, said, called):
    code, text, error = called("-", given=given)
    assert (code, text) == (2, b"") and error.startswith(b"-: ") and said in error.decode() and error.count(b"\n") == 1


def test_kind_is_held_against_the_document(called):
    assert called(HOT_FIT, "--kind", "fit")[0] == 0
    code, text, said = called(HOT_FIT, "--kind", "job")
    assert (code, text) == (2, b"") and b"the format read here is gaugepoint-job" in said
    assert called(HOT_FIT, "--kind", "engine")[0] == 2


@pytest.mark.parametrize(
    "arguments",
    [
        [],
        ["--json"],
        [PUMP, "--json", "--markdown"],
        [PUMP, "--jso"],
        [PUMP, "--partial"],
        [PUMP, "--limits-mm", "0.03", "0.06"],
        ["-", "-"],
        ["a.csv"],
        ["a.csv", *JUDGED_BY[:-2]],
        ["a.csv", *JUDGED_BY, "--json"],
        ["a.csv", *JUDGED_BY, "--html", "page.html"],
        ["a.csv", "b.csv", *JUDGED_BY],
        ["a.csv", *JUDGED_BY, "--delimiter", ";"],
        ["a.csv", *JUDGED_BY, "--same", "bore_mm"],
        ["a.csv", *JUDGED_BY, "--same", "bore_mm=8,5"],
        ["a.csv", *JUDGED_BY, "--column", "bore=x"],
        ["a.csv", *JUDGED_BY, "--rule", "luck"],
    ],
)
def test_wrong_command_lines(arguments, called):
    code, text, said = called(*arguments)
    assert (code, text) == (2, b"") and said.startswith(b"usage: python -m gaugepoint") and b"error: " in said


def test_version_and_help(called):
    assert called("--version") == (0, f"gaugepoint {gaugepoint.__version__}\n".encode(), b"")
    code, text, _ = called("--help")
    assert code == 0 and re.sub(r"\s+", " ", command.CODES) in re.sub(r"\s+", " ", text.decode())


def test_nothing_of_the_run_is_written_over(called, tmp_path):
    (tmp_path / "a.json").write_text(json.dumps(stack()), encoding="utf-8")
    (tmp_path / "a.report.json").write_text(json.dumps(stack()), encoding="utf-8")
    (tmp_path / "other").mkdir()
    (tmp_path / "other" / "a.json").write_text(json.dumps(stack()), encoding="utf-8")
    before = {path: path.read_bytes() for path in tmp_path.rglob("*.json")}
    for arguments in (
        [tmp_path / "a.json", tmp_path / "a.report.json", "--json", "--output", tmp_path],
        [tmp_path / "a.json", tmp_path / "other" / "a.json", "--output", tmp_path / "out"],
        [tmp_path / "a.json", "--html", tmp_path / "a.json"],
        [tmp_path / "a.json", "--html", tmp_path / "other" / ".." / "a.json"],
    ):
        code, text, said = called(*arguments)
        assert (code, text) == (2, b"") and b"would be written over" in said
    assert {path: path.read_bytes() for path in tmp_path.rglob("*.json")} == before
    # a file of another run is replaced, a folder is not
    (tmp_path / "page.html").write_text("old", encoding="utf-8")
    assert called(tmp_path / "a.json", "--html", tmp_path / "page.html")[0] == 0
    assert "shims" in (tmp_path / "page.html").read_text(encoding="utf-8")
    code, _, said = called(tmp_path / "a.json", "--html", tmp_path / "other")
    assert code == 2 and b"is no file" in said


def test_names_of_files_cannot_move_the_cursor(tmp_path):
    name = os.fsdecode(b"no\x1b[2J\xff.json")
    done = run(tmp_path / name)
    assert done.returncode == 2 and b"\x1b" not in done.stderr and done.stderr.decode().isascii() and b"\\x1b[2J" in done.stderr


# pages


class Page(HTMLParser):
    """Elements are closed in order; texts, pictures, and what is loaded from elsewhere."""

    def __init__(self, page):
        super().__init__()
        self.open, self.seen, self.texts, self.pictures, self.elsewhere = [], [], [], [], []
        self.feed(page)
        self.close()
        assert not self.open

    def handle_starttag(self, tag, attributes):
        self.seen.append(tag)
        # a cell and a line begin a word
        self.texts.append("" if tag == "code" else " ")
        attributes = dict(attributes)
        if tag == "img":
            head, _, data = attributes["src"].partition(",")
            assert head == "data:image/svg+xml;base64"
            self.pictures.append((attributes["alt"], xml.etree.ElementTree.fromstring(base64.b64decode(data, validate=True))))
        elif tag not in ("meta", "br"):
            self.open.append(tag)
        self.elsewhere += [value for name, value in attributes.items() if name in ("href", "src") and not value.startswith("data:")]

    def handle_endtag(self, tag):
        assert self.open.pop() == tag

    def handle_data(self, data):
        if self.open[-1:] != ["style"]:
            self.texts.append(data)

    @property
    def words(self):
        return " ".join("".join(self.texts).split())


def labels(picture):
    return {" ".join("".join(element.itertext()).split()) for element in picture.iter("{http://www.w3.org/2000/svg}text")}


def test_a_page_has_the_report_its_cautions_and_pictures(called, tmp_path):
    code, text, said = called(HOT_FIT, PUMP, "--html", tmp_path / "page.html")
    assert (code, said) == (1, b"") and text.startswith(b"hot fit sawmill engine")
    page = Page((tmp_path / "page.html").read_text(encoding="utf-8"))
    assert page.seen.count("section") == 2 and not page.elsewhere and "script" not in page.seen
    fit, job = gaugepoint.fit(HOT_FIT), gaugepoint.assess(PUMP)
    assert " ".join(fit.to_text().split()) in page.words
    assert fit.cautions and job.cautions and all(caution in page.words for caution in job.cautions)
    assert "The engine: do not reuse" in page.words and page.seen.count("table") == 6
    pictures = {alt: labels(picture) for alt, picture in page.pictures}
    profiles, maps = len(fit.hot.pictures.profile), len(fit.hot.pictures.maps)
    assert len(page.pictures) == profiles + len(fit.hot.pictures.sections) + maps + 1 + sum(bool(c.bore and c.bore.places) for c in job.cylinders)
    (against,) = [found for alt, found in pictures.items() if alt.startswith("Clearance against temperature")]
    assert "smallest clearance of the skirt, on one side (um)" in against
    bores = {alt: found for alt, found in pictures.items() if "Bore by depth" in alt}
    assert len(bores) == 6 and all("depth from the deck (mm)" in found and "depth from the deck (mm)" in alt for alt, found in bores.items())
    assert sum("skirt" in alt for alt in pictures) >= 3


def test_a_page_is_the_same_each_time(tmp_path):
    pages = [run(STACK, BUDGET, "--html", "-") for _ in range(2)]
    assert pages[0].stdout == pages[1].stdout and not pages[0].stderr and pages[0].stdout.startswith(b"<!DOCTYPE html>")
    page = Page(pages[0].stdout.decode())
    assert [alt.partition(".")[0] for alt, _ in page.pictures] == [
        "Stack deck clearance of an invented four-cylinder: Deck clearance of an invented four-cylinder",
        "Budget: end gauge; per cent of the variance",
    ]
    assert "size (mm)" in labels(page.pictures[0][1])


def test_every_report_is_a_page(called, monkeypatch):
    # its pictures are looked at above
    monkeypatch.setattr("gaugepoint._page._figures", lambda report: [])
    for path, function in DOCUMENTS:
        code, text, said = called(path, "--html", "-")
        page, report = Page(text.decode()), function(path)
        assert code in (0, 1) and not said
        if not hasattr(report, "to_text"):
            continue
        # no word and no number is lost on the way
        spoken = re.compile(r"[^\W\d_]+|\d+\.\d+")
        words = set(spoken.findall(report.to_markdown().replace("\\", "") if hasattr(report, "to_markdown") else report.to_text()))
        assert words - set(spoken.findall(page.words)) <= {"amp", "lt", "gt"}, path


def test_what_was_typed_stays_text(called):
    evil = '<script>alert("&amp;")</script> `code` *stars* \\| # 1. | - '
    document = stack({"upper": 1.55}, name=evil)
    document["contributors"][0]["name"] = evil
    code, text, _ = called("-", "--html", "-", given=json.dumps(document).encode())
    page = Page(text.decode())
    assert code == 1 and "script" not in page.seen and "code" not in page.seen
    assert page.words.count(" ".join(evil.split())) == 2
    code, text, _ = called("-", "--html", "-", given=json.dumps(document | {"version": evil}).encode())
    assert code == 2 and "script" not in Page(text.decode()).seen and "<script>" in Page(text.decode()).words


def test_refused_files_stand_on_the_page(called, tmp_path):
    (tmp_path / "bad.json").write_text("{}", encoding="utf-8")
    code, text, _ = called(tmp_path / "bad.json", STACK, "--html", "-")
    page = Page(text.decode())
    assert code == 2 and f"{tmp_path / 'bad.json'}: refused" in page.words and "/format: this field is required" in page.words
    assert len(page.pictures) == 1


def without(module, *arguments):
    """The command where a module is not installed."""
    code = f"import runpy, sys; sys.modules[{module!r}] = None; sys.argv = ['gaugepoint', *sys.argv[1:]]; runpy.run_module('gaugepoint', run_name='__main__', alter_sys=True)"
    return subprocess.run([sys.executable, "-c", code, *map(os.fspath, arguments)], capture_output=True, check=False)


def test_without_matplotlib_the_page_says_so():
    done = without("matplotlib", STACK, "--html", "-")
    page = Page(done.stdout.decode())
    assert (done.returncode, done.stderr) == (1, b"") and not page.pictures
    assert "1 pictures are left out: they need matplotlib (pip install gaugepoint[plot])" in page.words


def test_documents_need_neither_numpy_nor_matplotlib(tmp_path):
    assert without("numpy", STACK).stdout.decode() == gaugepoint.evaluate_stack(STACK).to_text().rstrip("\n") + "\n"
    (tmp_path / "a.csv").write_text(f"{HEAD}\n86.04,86,{AT_20}\n", encoding="utf-8")
    done = without("numpy", tmp_path / "a.csv", *JUDGED_BY)
    assert (done.returncode, done.stdout) == (2, b"") and b"gaugepoint[frames]" in done.stderr


# readings


def decided(called, text, *arguments):
    code, out, said = called("-", "--kind", "csv", *JUDGED_BY, *arguments, given=text.encode() if isinstance(text, str) else text)
    return code, list(csv.reader(io.StringIO(out.decode(), newline=""), strict=True)), said.decode()


def test_limits_by_hand(called):
    # proven, ISO 14253-1:2017: 1.65 standard uncertainties inside; u = 0.002 mm, so 0.0333 mm to 0.0567 mm conform
    bores = {"86.033": "not proven", "86.034": "conforms", "86.056": "conforms", "86.057": "not proven", "86.026": "does not conform", "86.064": "does not conform"}
    code, (head, *rows), said = decided(called, "\n".join([HEAD, *(f"{bore},86,{AT_20}" for bore in bores)]))
    assert code == 1 and head == [*HEAD.split(","), *ADDED]
    assert [row[7] for row in rows] == list(bores.values()) and [row[0] for row in rows] == list(bores)
    assert said == "-: 6 rows: 2 conforms; 2 not proven; 2 does not conform\n"
    assert decided(called, f"{HEAD}\n86.034,86,{AT_20}\n")[0] == 0


def test_rows_are_those_of_frames(called):
    chance = np.random.default_rng(20261129)
    names = HEAD.split(",")
    ranges = [(86.02, 86.06, 3), (85.96, 86.02, 3), (18, 28, 1), (90, 130, 0), (100, 160, 0)]
    frame = pd.DataFrame({name: chance.uniform(low, high, 3000).round(digits) for name, (low, high, digits) in zip(names, ranges, strict=True)})
    frame.loc[[4, 77], "bore_mm"] = np.nan
    frame.loc[9, "piston_mm"] = 3.386
    expected = frames.decide(
        frame, gaugepoint.MeanExpansion(11.4e-6), gaugepoint.MeanExpansion(20.5e-6), frames.BenchLimits(0.030, 0.060, 0.002), partial=True
    )
    code, (_, *rows), said = decided(called, frame.to_csv(index=False), "--partial")
    assert code == 1 and len(rows) == 3000
    found = pd.DataFrame(rows)
    numbers = [[None if pd.isna(x) else repr(x) for x in expected.frame[name].tolist()] for name in ADDED[:2]]
    texts = [[None if pd.isna(x) else str(x) for x in expected.frame[name].tolist()] for name in ADDED[2:]]
    assert [[x or None for x in found[5 + k]] for k in range(5)] == [*numbers, *texts]
    decisions = "; ".join(f"{expected.summary.decisions[word]} {word}" for word in ("conforms", "not proven", "does not conform"))
    assert said == f"-: 3000 rows: {decisions}; 1 refused; 2 missing a number; missing cells: bore_mm 2\n"


def test_readings_come_back_with_their_sizes(called):
    names = ["piston_reading_mm", "piston_part_temperature_c", "bore_size_at_20_mm"]
    rows = [["86.003", "24.5", "86.041"], ["86.004", "22", "86.04"], ["", "22", "86.04"]]
    same = {"piston_zero_error_mm": 0.001, "piston_gauge_temperature_c": 21, "piston_gauge_expansion_per_k": 11.5e-6, "bore_temperature_c": 110, "piston_temperature_c": 120}
    arguments = [part for name, number in same.items() for part in ("--same", f"{name}={number}")]
    code, (head, *found), said = decided(called, "\n".join(map(",".join, [names, *rows])), *arguments)
    assert code == 1 and head == [*names, "piston_at_20_mm", *ADDED] and [row[:3] for row in found] == rows
    sizes = [gaugepoint.size_at_20_mm(float(reading), 0.001, 21.0, 11.5e-6, float(part_c), 20.5e-6) for reading, part_c, _ in rows[:2]]
    benches = [gaugepoint.bench_clearance_mm(float(row[2]), size) for row, size in zip(rows, sizes, strict=False)]
    assert [row[3:5] for row in found] == [*([repr(size), repr(bench)] for size, bench in zip(sizes, benches, strict=True)), ["", ""]]
    assert said.endswith("1 missing a number; missing cells: piston_reading_mm 1\n")


def test_odd_columns_stay_what_they_were(called):
    head = ["Nr.", "bore_mm", "größe, mm", "piston_mm", "note", "", "bore_temperature_c"]
    rows = [
        ["007", "86.0400", "1,5", "8.6e1", 'says "chipped"\nat the top', " ", "110"],
        ["1e5", "+86.04", "", "86.", "=1+1", "ü", "1.1e2"],
        ["", "", "NaN", "86", "", "", "110"],
    ]
    text = io.StringIO(newline="")
    csv.writer(text).writerows([head, *rows])
    arguments = ["--same", "parts_temperature_c=20", "--same", "piston_temperature_c=120"]
    code, found, said = decided(called, text.getvalue(), *arguments)
    assert code == 1 and [row[: len(head)] for row in found] == [head, *rows]
    assert [row[9:] for row in found[1:]] == [["conforms", "0", ""], ["conforms", "0", ""], ["", "", "missing: bore_mm"]]
    assert said.endswith("1 missing a number; missing cells: bore_mm 1\n")


def test_named_columns_other_delimiters_and_other_words_for_missing(called):
    text = "upper;lower\n86.04;86\nNA;86\n-999;86\n"
    arguments = ["--column", "bore_mm=upper", "--column", "piston_mm=lower", "--delimiter", "semicolon", "--missing", "NA", "--missing", "-999"]
    for quantity in HEAD.split(",")[2:]:
        arguments += ["--same", f"{quantity}=20"]
    code, out, said = called("-", "--kind", "csv", *JUDGED_BY, *arguments, given=text.encode())
    assert code == 1 and out.decode().splitlines()[0] == "upper;lower;" + ";".join(ADDED)
    assert [row.split(";")[:2] + row.split(";")[4:5] for row in out.decode().splitlines()[1:]] == [["86.04", "86", "conforms"], ["NA", "86", ""], ["-999", "86", ""]]
    assert b"missing cells: bore_mm 2" in said


def test_marks_and_ends_of_lines(called):
    row = f"86.04,86,{AT_20}"
    plain = decided(called, f"{HEAD}\n{row}\n")
    assert plain == decided(called, f"\ufeff{HEAD}\r\n\r\n{row}\r\n\r\n") == decided(called, f"{HEAD}\n{row}")
    code, rows, said = decided(called, HEAD)
    assert (code, len(rows), said) == (0, 1, "-: 0 rows\n")


@pytest.mark.parametrize(
    "text, said",
    [
        ("", "it is empty"),
        ("bore_mm,bore_mm\n1,2\n", "two columns have this name"),
        (HEAD.replace("bore_mm", "bore_in") + "\n", "bore_mm is needed: convert the column"),
        (HEAD.replace("bore_mm", "bore") + "\n", "says no unit"),
        (HEAD.replace("bore_mm", "decision") + "\n", "it is the name of a result"),
        ("bore_mm\n86\n", "there is no such column"),
        (f"{HEAD}\n86.04,86,20,20\n", "line 2: 4 cells, 5 are needed"),
        (f"{HEAD}\n86.04,86,{AT_20},\n", "line 2: 6 cells, 5 are needed"),
        (f'{HEAD}\n"86,04",86,{AT_20}\n', 'line 2: bore_mm: "86,04" is refused: a number has a decimal point, not a comma'),
        (f"{HEAD}\n86.04,NaN,{AT_20}\n", 'line 2: piston_mm: "NaN" is refused: a number is needed'),
        (f"{HEAD}\n86.04, 86,{AT_20}\n", 'line 2: piston_mm: " 86" is refused'),
        (f"{HEAD}\n86_04,86,{AT_20}\n", 'line 2: bore_mm: "86_04" is refused'),
        (f"{HEAD}\n٨٦,86,{AT_20}\n", "is refused: a number is needed"),
        (f"{HEAD}\n1e999,86,{AT_20}\n", "line 2: bore_mm: "),
        (f'{HEAD}\n"86.04"x,86,{AT_20}\n', "line 2: "),
        (f'{HEAD}\n"86.04,86,{AT_20}\n', "line 2: "),
        (f"{HEAD}\n86.04,86,{AT_20}\n".encode() + b"\xff", "it is not UTF-8"),
        (f'{HEAD}\n86.04,86,{AT_20}\n"86.04\n",86,{AT_20}\n3.386,86,{AT_20}\n', "line 3: bore_mm: "),
    ],
)
@pytest.mark.parametrize("partial", [[], ["--partial"]])
def test_refused_files(text, said, partial, called):
    code, rows, error = decided(called, text, *partial)
    if partial and "1e999" in str(text):
        # a number, though none that is possible: a row like any other that is refused
        assert code == 1 and rows[1][7] == "not judged"
        return
    assert (code, rows) == (2, []) and said in error and all(line.startswith("-: ") for line in error.splitlines())


def test_refused_rows_are_named_by_their_lines(called):
    row, wrong = f"86.04,86,{AT_20}", f"3.386,86,{AT_20}"
    text = "\n".join([HEAD, row, "", wrong, row, *[wrong] * 9, row]) + "\n"
    code, rows, said = decided(called, text)
    lines = said.splitlines()
    assert (code, rows) == (2, []) and len(lines) == 9 and lines[-1] == "-: and 2 more lines"
    assert [re.match(r"-: line (\d+): bore_mm: \"3.386\" is refused", line)[1] for line in lines[:-1]] == ["4", *map(str, range(6, 13))]
    code, rows, said = decided(called, text, "--partial")
    assert code == 1 and [row[7] for row in rows[1:]].count("not judged") == 10 and "10 refused" in said


def test_a_long_file_is_one_file(called, monkeypatch):
    text = "\n".join([HEAD, *(f"86.0{30 + k % 30},86,{AT_20}" for k in range(1000)), f"3.386,86,{AT_20}", f"86.04,,{AT_20}"])
    whole = decided(called, text, "--partial"), decided(called, text)
    for rows in (1, 7, 1002):
        monkeypatch.setattr("gaugepoint._readings._PART", rows)
        assert (decided(called, text, "--partial"), decided(called, text)) == whole
    assert whole[1][2].startswith("-: line 1002: ")


def test_readings_beside_documents(called, tmp_path):
    (tmp_path / "a.csv").write_text(f"{HEAD}\n86.04,86,{AT_20}\n", encoding="utf-8")
    (tmp_path / "B.CSV").write_text(f"{HEAD}\n86.08,86,{AT_20}\n", encoding="utf-8")
    out = tmp_path / "new" / "out"
    assert called(STACK, "--output", out, "--html", "-")[1].startswith(b"<!DOCTYPE html>") and set(written(out)) == {"deck_stack.report.txt"}
    (out / "deck_stack.report.txt").unlink()
    code, text, said = called(tmp_path / "a.csv", HOT_FIT, tmp_path / "B.CSV", *JUDGED_BY, "--output", out)
    assert (code, text, said.count(b"\n")) == (1, b"", 2)
    assert set(written(out)) == {"a.decisions.csv", "B.decisions.csv", "sawmill_fit.report.txt"}
    assert b"does not conform" in written(out)["B.decisions.csv"]


# what stops it


def test_broken_pipe():
    reader, writer = os.pipe()
    os.close(reader)
    with open(writer, "wb") as closed:
        done = subprocess.run([sys.executable, "-m", "gaugepoint", PUMP], stdout=closed, stderr=subprocess.PIPE, check=False)
    assert (done.returncode, done.stderr) == (128 + signal.SIGPIPE, b"")


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="no device that is always full")
def test_full_device():
    with open("/dev/full", "wb") as full:
        done = subprocess.run([sys.executable, "-m", "gaugepoint", HOT_FIT], stdout=full, stderr=subprocess.PIPE, check=False)
    assert done.returncode == 2 and done.stderr.decode().startswith(f"{HOT_FIT}: ") and b"Traceback" not in done.stderr


@pytest.mark.parametrize("closed", ["<&-", ">&-", "2>&-"])
def test_closed_streams(closed):
    done = subprocess.run(["sh", "-c", f'"$0" -m gaugepoint "$@" {closed}', sys.executable, HOT_FIT, "-"], input=b"{}", capture_output=True, check=False)
    assert done.returncode == 2 and b"Traceback" not in done.stderr
    assert (b"is closed" in done.stderr) is (closed != "2>&-")


@pytest.mark.parametrize("stop, old", [(signal.SIGINT, None), (signal.SIGINT, b"the decisions of yesterday"), (signal.SIGTERM, None)])
def test_a_stop_leaves_nothing_half_written(stop, old, tmp_path):
    if old:
        (tmp_path / "stdin.decisions.csv").write_bytes(old)
    started = [sys.executable, "-m", "gaugepoint", "-", "--kind", "csv", *JUDGED_BY, "--output", str(tmp_path)]
    process = subprocess.Popen(started, stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.PIPE)
    process.stdin.write(f"{HEAD}\n".encode() + f"86.04,86,{AT_20}\n".encode() * 100_000)
    process.stdin.flush()
    # it waits for more, with a part written beside
    deadline = time.monotonic() + 60
    while not any(data.count(b"\n") > 50_000 for name, data in written(tmp_path).items() if name.endswith(".part")):
        assert time.monotonic() < deadline and process.poll() is None
        time.sleep(0.05)
    process.send_signal(stop)
    text, said = process.communicate(timeout=60)
    assert (process.returncode, text, said) == (128 + stop, b"", b"")
    assert written(tmp_path) == ({"stdin.decisions.csv": old} if old else {})


def test_a_full_disk_leaves_nothing_half_written(tmp_path):
    code = f"import resource; resource.setrlimit(resource.RLIMIT_FSIZE, (4096, 4096)); import runpy, sys; sys.argv = ['gaugepoint', {os.fspath(PUMP)!r}, '--output', {os.fspath(tmp_path)!r}]; runpy.run_module('gaugepoint', run_name='__main__', alter_sys=True)"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, check=False)
    assert done.returncode == 2 and b"too large" in done.stderr and written(tmp_path) == {}


# how far it is

BAR = """
import contextlib
class tqdm:
    def __init__(self, **options):
        self.total, self.done = options["total"], 0
    def __enter__(self):
        return self
    def __exit__(self, *_):
        print(f"bar {self.done} of {self.total}", file=__import__("sys").stderr)
    def update(self, size):
        self.done += size
    @staticmethod
    def write(line, file):
        print("bar says", line, file=file)
"""


def test_progress_on_a_terminal(tmp_path):
    (tmp_path / "bar").mkdir()
    (tmp_path / "bar" / "tqdm.py").write_text(BAR, encoding="utf-8")
    (tmp_path / "a.csv").write_text(f"{HEAD}\n" + f"86.04,86,{AT_20}\n" * 1000, encoding="utf-8")
    size = (tmp_path / "a.csv").stat().st_size + HOT_FIT.stat().st_size
    path = os.pathsep.join([str(tmp_path / "bar"), os.environ.get("PYTHONPATH", "")])
    started = [sys.executable, "-m", "gaugepoint", tmp_path / "a.csv", HOT_FIT, *JUDGED_BY, "--output", tmp_path / "out"]
    # a terminal
    main, side = pty.openpty()
    with open(side, "wb") as terminal:
        done = subprocess.run(started, stdout=subprocess.PIPE, stderr=terminal, env={**os.environ, "PYTHONPATH": path}, check=False)
    said = os.read(main, 10_000).decode().splitlines()
    os.close(main)
    assert (done.returncode, done.stdout) == (0, b"")
    assert said == [f"bar says {tmp_path / 'a.csv'}: 1000 rows: 1000 conforms", f"bar {size} of {size}"]
    # and none
    done = subprocess.run(started, capture_output=True, env={**os.environ, "PYTHONPATH": path}, check=False)
    assert done.stderr.decode() == f"{tmp_path / 'a.csv'}: 1000 rows: 1000 conforms\n"


# the page of documentation


def test_the_page_does_what_it_says(tmp_path):
    page = (REPOSITORY / "python" / "docs" / "command.md").read_text(encoding="utf-8")
    blocks = re.findall(r"^```(\S+)(?: (\S+))?\n(.*?)^```$", page, re.M | re.S)
    (tmp_path / "bin").mkdir()
    shim = tmp_path / "bin" / "python"
    shim.write_text(f'#!/bin/sh\nexec "{sys.executable}" "$@"\n', encoding="utf-8")
    shim.chmod(0o755)
    folder = tmp_path / "work"
    folder.mkdir()
    told = None
    for language, name, block in blocks:
        if name:
            (folder / name).write_text(block, encoding="utf-8")
        elif language == "sh":
            assert told is None, "what a block of commands prints stands below it"
            path = os.pathsep.join([str(tmp_path / "bin"), os.environ["PATH"]])
            told = subprocess.run(["sh", "-c", f"exec 2>&1\n{block}"], cwd=folder, capture_output=True, text=True, env={**os.environ, "PATH": path}, check=False).stdout
        elif language == "text":
            assert block == told
            told = None
    assert told is None and len(blocks) >= 6


def test_codes_of_the_page_are_those_of_the_command():
    page = " ".join((REPOSITORY / "python" / "docs" / "command.md").read_text(encoding="utf-8").split())
    for word in (*command.KINDS, *ADDED):
        assert f"`{word}`" in page, word
