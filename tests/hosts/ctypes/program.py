"""program.py WORK OUT: says through the binding what said.c says in C; then misuse. program.py check: whether the library can be used.

The folder of the library is LD_LIBRARY_PATH.
"""

import csv
import gc
import os
import struct
import sys
from concurrent.futures import ThreadPoolExecutor
from ctypes import ArgumentError, sizeof
from math import isnan
from pathlib import Path

import gaugepoint_ctypes as binding
from gaugepoint_ctypes import Document, Expansion, Format, GaugepointError, LawForm, Library, Lines, Report, Rule, Stack, Status, Variation

sys.stdout.reconfigure(encoding="utf-8", newline="\n")
PATH = os.environ["LD_LIBRARY_PATH"] + "/libgaugepoint_c.so"
checks = 0


def check(holds: bool, what: str) -> None:
    global checks
    if not holds:
        raise AssertionError(what)
    checks += 1


def refused(call, kind: type = GaugepointError, status: Status | None = None):
    try:
        call()
    except kind as e:
        check(status is None or e.status == status, repr(e))
        return e
    raise AssertionError("nothing was refused")


def bits(x: float) -> str:
    return struct.pack(">d", x).hex()


def told(e: GaugepointError) -> str:
    texts = [text.encode().hex() for text in (e.field, e.refused, e.did_you_mean)]
    return " ".join([e.name, *texts, *(bits(0.0 if x is None else x) for x in (e.value, e.lower, e.upper))])


def sizes() -> None:
    for name in ("Error", "JobVerdict", "CylinderVerdict", "JobDecision", "Contributor", "Tail", "Law", "Growth"):
        print("size", name, sizeof(getattr(binding, name)))
    print("version", g.version, "abi", binding.ABI)
    for status in Status:
        print("status", int(status), g.name_of(status), g.text_of(status))
    check(g.name_of(999) == "unknown", "a status of a later library")


def flats(work: Path) -> None:
    lines = (line for line in (work / "flat.csv").open(encoding="utf-8") if not line.startswith("#"))
    for row in csv.DictReader(lines):
        x = [float(text) for text in row["arguments"].split(";")]
        columns = [[value] * 3 for value in x]
        rows = getattr(g, row["function"] + "_array")
        judged, statuses = getattr(g, row["function"] + "_array_with_status")(*columns)
        try:
            result = getattr(g, row["function"])(*x)
            print("flat", row["id"], bits(result))
            check([bits(r) for r in rows(*columns)] == [bits(result)] * 3, "rows")
            check([bits(r) for r in judged] == [bits(result)] * 3 and list(statuses) == [0] * 3, "rows with status")
        except GaugepointError as e:
            print("flat", row["id"], told(e))
            check(len(judged) == 3 and all(map(isnan, judged)) and list(statuses) == [e.status] * 3, "refused rows with status")
            check(refused(lambda: rows(*columns), status=e.status).field == e.field + "/0", "the place of a row")


def decide(rule: Rule, lower: float | None, upper: float | None, u: float, at_least: float) -> None:
    try:
        conformity, probability = g.decide_mm(10, u, lower, upper, rule, at_least)
        print("decide", conformity, bits(probability))
    except GaugepointError as e:
        print("decide", told(e))


def decisions() -> None:
    decide(Rule.PROVEN, None, 10.5, 0.25, 0.95)
    decide(Rule.SIMPLE_ACCEPTANCE, 9.5, 10.5, 0.25, 0.95)
    decide(Rule.CONFORMANCE_PROBABILITY, 9.5, None, 0.25, 0.9)
    decide(Rule.PROVEN, 9.5, 10.5, -1, 0.95)
    decide(Rule.PROVEN, None, None, 0.25, 0.95)


def stacks() -> None:
    normal, even, kind = [0.01, 0.02], [0, 0.05], Variation.RECTANGULAR
    with Stack(g) as stack:
        stack.add("Deckhöhe 😀", 220, -0.05, 0.05, Variation.NORMAL, normal)
        stack.add("pin", 30, -0.05, 0.05, kind, even, -1)
        stack.add("rod", 150, -0.1, 0.1, kind, even, -1, 2)
        print("stack", told(refused(lambda: stack.add("pin", 30, -0.05, 0.05, kind, even, -1), status=Status.REPEATED)))
        tail = stack.outside(-110.1, -109.9)
        print("stack", *map(bits, (stack.quantile(0.025), tail.below, tail.above, tail.error, tail.ppm)))
        print("stack", told(refused(lambda: stack.quantile(1.5))))
        refused(lambda: stack.add(None, 1, 0, 0, kind, even), TypeError)
        refused(lambda: stack.add("x", 1, 0, 0, kind, None), TypeError)
        refused(lambda: stack.add("x", 1, -1, 1, kind, []))
        refused(lambda: stack.add("x", 1, -1, 1, kind, even, 1, -1))
        refused(lambda: stack.add("x", 1, -1, 1, 99, even))
        refused(lambda: stack.add("a\0b", 1, -1, 1, kind, even), status=Status.CONTROL_CHARACTER)


def law(make, temperature_c: float) -> None:
    try:
        with make() as made:
            growth = made.at(temperature_c)
            numbers = (*made.range_c(), growth.strain, growth.instantaneous_per_k, growth.mean_from_20_per_k, *made.strains([temperature_c, 20]))
            print("law", *map(bits, numbers), bits(made.mean_per_k(30, temperature_c)))
    except GaugepointError as e:
        print("law", told(e))


def laws() -> None:
    temperatures_c, coefficients = [0, 100, 200, 300], [20e-6, 20.5e-6, 21e-6, 22e-6]
    line, strain = [18e-6, 5e-9], [-5e-3, 15e-6, 5e-9]
    law(lambda: Expansion.mean(g, 20, 20e-6, -40, 300), 120)
    law(lambda: Expansion.mean_table(g, 20, temperatures_c, coefficients), 120)
    law(lambda: Expansion.instantaneous_table(g, temperatures_c, coefficients), 120)
    law(lambda: Expansion.polynomial(g, LawForm.INSTANTANEOUS_POLYNOMIAL, line, 0, 300), 120)
    law(lambda: Expansion.polynomial(g, LawForm.STRAIN_POLYNOMIAL, strain, 0, 300), 120)
    law(lambda: Expansion.graphite_iron(g, 66.4, 9.05, 0.5), 120)
    law(lambda: Expansion.built_in(g, "gravity-cast AlSi12CuMgNi"), 120)
    law(lambda: Expansion.mean(g, 20, 20e-6, -40, 300), 301)
    law(lambda: Expansion.built_in(g, "gravity"), 120)
    refused(lambda: Expansion.mean_table(g, 20, temperatures_c, [0.0] * 3), ValueError)
    refused(lambda: Expansion.built_in(g, None), TypeError)


def document(kind: Document, name: str, path: str, folder: Path) -> None:
    ways = {
        Document.JOB: g.job_assess, Document.SHEET: g.sheet_check, Document.MEASUREMENT: g.measure, Document.FIT: g.fit,
        Document.STACK: g.stack_evaluate, Document.BUDGET: g.budget_evaluate, Document.REVISIT: g.revisit, Document.WHAT_IF: g.what_if,
    }
    given = Path(path).read_bytes()
    text = ways[kind](given)
    (folder / name).write_bytes(text.encode())
    print("document", int(kind), name)
    with Report(g, kind, given.decode()) as report:
        check(report.written(Format.JSON) == text, "the report as a handle")
        if kind == Document.JOB:
            job(report)
        else:
            refused(report.job, status=Status.UNKNOWN_FORMAT)


def job(report: Report) -> None:
    verdict = report.job()
    print("job", verdict.outcome, verdict.cylinder_count, verdict.reuse_count, verdict.do_not_reuse_count)
    for k in range(verdict.cylinder_count):
        c = report.cylinder(k)
        print("cylinder", c.number, c.outcome, c.piston_outcome, c.bore_outcome, c.decided_by)
        for j in range(c.decision_count):
            d = report.decision(k, j)
            print("decision", d.judged, d.result, bits(d.value_mm if d.has_value else 0.0), bits(d.lower_mm if d.has_lower else 0.0),
                  bits(d.probability_of_conformity if d.has_probability else 0.0))
    for lines in Lines:
        for line in report.sentences(lines):
            print("line", int(lines), line)
    refused(lambda: report.cylinder(-1), status=Status.OUT_OF_RANGE)
    refused(lambda: report.sentences(Lines.CYLINDER_REASONS, 99), status=Status.OUT_OF_RANGE)
    refused(lambda: report.written(99), status=Status.UNKNOWN_CHOICE)


def misuse() -> None:
    for wrong in (None, 3, bytearray(b"{}")):
        refused(lambda: g.job_assess(wrong), TypeError)
    refused(lambda: g.job_assess("\ud800"), UnicodeEncodeError)
    refused(lambda: g.job_assess(""), status=Status.SYNTAX)
    refused(lambda: g.job_assess(b"\xff"), status=Status.NOT_UTF8)
    refused(lambda: g.job_assess("{\0}"), status=Status.SYNTAX)
    unknown = refused(lambda: g.measure('{"Höhe 😀": 1}'))
    check("Höhe 😀" in unknown.field + unknown.refused + str(unknown), "text beyond ASCII")
    check(unknown.value is None and unknown.lower is None and unknown.upper is None, "no numbers")
    for wrong in (None, "86", [86]):
        refused(lambda: g.bench_clearance_mm(86.1, wrong), (TypeError, ArgumentError))
    for wrong in (None, 86.0, ["86"], [None]):
        refused(lambda: g.bench_clearance_mm_array([86.1], wrong), TypeError)
    refused(lambda: g.bench_clearance_mm_array([86.1, 86.2], [86]), ValueError)
    check(len(g.bench_clearance_mm_array([], [])) == 0, "no rows")
    check([len(x) for x in g.bench_clearance_mm_array_with_status([], [])] == [0, 0], "no rows with status")
    stack = Stack(g)
    stack.close()
    stack.close()
    refused(lambda: stack.quantile(0.5), ValueError)
    made = Expansion.mean(g, 20, 20e-6, -40, 300)
    check(len(made.strains([])) == 0, "no temperatures")
    made.close()
    refused(lambda: made.at(20), ValueError)
    refused(lambda: Report(g, Document.JOB, None), TypeError)
    refused(lambda: Report(g, 99, "{}"))
    # objects that are not closed are freed with them
    for _ in range(1000):
        Expansion.mean(g, 20, 20e-6, -40, 300)
    gc.collect()


def threads(path: str) -> None:
    given = Path(path).read_bytes()
    with Report(g, Document.JOB, given) as report, Stack(g) as stack:
        stack.add("a", 1, -1, 1, Variation.RECTANGULAR, [0, 1])
        wanted, quantile = report.written(Format.TEXT), stack.quantile(0.25)

        def one(number: int) -> None:
            stack.add(f"of {number}", 0, 0, 0, Variation.RECTANGULAR, [0, 0])
            for _ in range(5):
                check(report.written(Format.TEXT) == wanted, "a report shared by threads")
                check(stack.quantile(0.25) == quantile, "a stack shared by threads")
                check(bits(g.bench_clearance_mm(86.1, 86)) == bits(86.1 - 86), "a clearance in a thread")
                check(refused(lambda: g.bench_clearance_mm(number - 10, 86)).value == number - 10, "errors are not mixed up")
            check(len(g.job_assess(given)) > 1000, "a job in a thread")

        with ThreadPoolExecutor(8) as pool:
            list(pool.map(one, range(8)))


try:
    g = Library(PATH)
except (OSError, ImportError) as e:
    print(f"{PATH} not found" if isinstance(e, OSError) and "No such file" in str(e) else e, file=sys.stderr)
    sys.exit(3)
if sys.argv[1] == "check":
    sys.exit(0)
work = Path(sys.argv[1])
sizes()
flats(work)
decisions()
stacks()
laws()
for name in (work / "refused.txt").read_text(encoding="utf-8").split():
    given = (work / "refused" / name).read_bytes()
    print("refused", name, told(refused(lambda: g.job_assess(given))))
documents = [line.split(" ", 2) for line in (work / "documents.txt").read_text(encoding="utf-8").splitlines()]
for kind, name, path in documents:
    document(Document(int(kind)), name, path, Path(sys.argv[2]))
misuse()
threads(documents[0][2])
print("checks", checks)
