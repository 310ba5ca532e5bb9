"""What may be behind the findings of a job, from the tables of core/docs/signs.md and core/docs/model.md and nothing else.

A candidate is a cause of a sign that was seen, as long as no answer speaks against it; it is confirmed when no answer is missing.

    python tests/reference/signs.py [--check]

writes `tests/vectors/signs.csv`, or compares it.
"""

import re
import sys
from collections import namedtuple
from pathlib import Path
from random import Random

ROOT = Path(__file__).resolve().parents[2]
DOCS = ROOT / "core" / "docs"
CSV = ROOT / "tests" / "vectors" / "signs.csv"
HEADING = "# Written by tests/reference/signs.py from the tables of core/docs/signs.md.\nid,place,what,answers,candidates,ask,cause\n"
SEVERITIES = ("light", "marked", "severe")
DISPOSITIONS = {"clean": "clean", "sizes": "measure", "cause": "find_cause", "reject": "reject"}
OF_BORE = ("bore_wall", "ports", "liner_outside", "liner_flange")

Sign = namedtuple("Sign", "word places what needs causes")
Candidate = namedtuple("Candidate", "cause sign open")


def rows(page, heading):
    """The rows of the table under a heading, each as its cells."""
    lines = (DOCS / page).read_text(encoding="utf-8").split("\n")
    first = next(k for k, line in enumerate(lines) if line.startswith(f"| {heading} |")) + 2
    last = next(k for k in range(first, len(lines)) if not lines[k].startswith("|"))
    return [[cell.strip() for cell in line.strip("|").split(" | ")] for line in lines[first:last]]


def word(spoken):
    return spoken.strip().replace(" ", "_")


def needs(text):
    """Answers by question, from `dark and torn, not oily`."""
    if text == "none":
        return {}
    return {word(item.removeprefix("not ")): not item.startswith("not ") for item in text.split(", ")}


def sign(cells):
    name, seen, _, needed, causes, _ = cells
    places, what = seen.split(": ")
    behind = []
    for cause in causes.split("; "):
        name_of, besides = re.fullmatch(r"([^(]*?)(?: \((.*)\))?", cause).groups()
        behind.append((word(name_of), needs(besides or "none")))
    return Sign(name.strip("`"), [word(p) for p in places.split(",")], [word(w) for w in what.split(",")], needs(needed), behind)


SIGNS = [sign(cells) for cells in rows("signs.md", "sign")]
GROUPS = {word(cause): group for group, causes in rows("signs.md", "group") for cause in causes.split(",")}
QUESTIONS = [question.strip("`") for question, _ in rows("signs.md", "question")]
ASKS = {word(what): {severity: DISPOSITIONS[cell] for severity, cell in zip(SEVERITIES, cells)}
        for seen, *cells in rows("model.md", "finding") for what in seen.split(",")}


def explain(place, what, answers):
    """Candidates, the confirmed ones first, and the open questions, the one that most candidates need first."""
    found = []
    for s in SIGNS:
        if place not in s.places or what not in s.what:
            continue
        for cause, besides in s.causes:
            asked = list(s.needs.items()) + list(besides.items())
            if all(answers.get(question, wanted) == wanted for question, wanted in asked):
                found.append(Candidate(cause, s.word, {question for question, _ in asked if question not in answers}))
    found.sort(key=lambda c: bool(c.open))
    needed = {question: sum(question in c.open for c in found) for question in QUESTIONS}
    ask = sorted((q for q in QUESTIONS if needed[q]), key=lambda q: -needed[q])
    return found, ask


def cause_of(place, what, answers):
    """The cause that is found: the one candidate that answers left and confirm; without an answer that bears on it nobody looked."""
    candidates, _ = explain(place, what, answers)
    bearing = {question for s in SIGNS if place in s.places and what in s.what for needed in [s.needs, *(n for _, n in s.causes)] for question in needed}
    found = len(candidates) == 1 and not candidates[0].open and bearing & answers.keys()
    return candidates[0].cause if found else None


def recorded(record):
    """What the record of a piston answers."""
    silicon = record.get("silicon", {}).get("class")
    known = {"forged": (record.get("make"), "forged"), "pin_pressed": (record.get("pin"), "pressed_in_rod"),
             "pin_in_retaining_rings": (record.get("pin"), "retaining_rings"),
             "skirt_strutted": (record.get("skirt"), "strutted"), "hypereutectic": (silicon, "hypereutectic")}
    return {question: said == yes for question, (said, yes) in known.items() if said is not None}


def finding(form, record):
    """What the report says of one finding."""
    given = {entry["question"]: entry["answer"] == "yes" for entry in form.get("answers", [])}
    seen = form["place"], form["what"], {**recorded(record), **given}
    candidates, ask = explain(*seen)
    named = word(form.get("cause", ""))
    cause = named if named in GROUPS else cause_of(*seen)
    disposition = ASKS[form["what"]][form["severity"]]
    if disposition == "find_cause" and (cause or "cause" in form):
        disposition = "measure"
    return {"place": form["place"], "what": form["what"], **({"cause_found": cause} if cause else {}), "disposition": disposition,
            "candidates": [{"cause": c.cause, "group": GROUPS[c.cause], "sign": c.sign, "confirmed": not c.open} for c in candidates],
            "ask": [{"question": question} for question in ask]}


def of_cylinder(document, form):
    """The findings of a cylinder under the keys of its report: with the piston, with the bore, or by themselves."""
    record = form.get("piston", {}).get("record", document["engine"]["piston"].get("record", {}))
    out = {}
    for seen in form.get("findings", []):
        part = "bore" if seen["place"] in OF_BORE else "piston"
        out.setdefault(part if part in form else "", []).append(finding(seen, record))
    return out


def cases(count=8):
    """Every place with everything that can be seen there, and what nobody expects; each with no answer and with some of those asked for."""
    random = Random(31)
    seen = sorted({(place, what) for s in SIGNS for place in s.places for what in s.what}) + [("crown", "bend"), ("rod", "carbon")]
    for place, what in seen:
        yield place, what, {}
        for _ in range(count):
            answers = {}
            for _ in range(random.randint(1, 8)):
                _, ask = explain(place, what, answers)
                if ask:
                    answers[random.choice(ask)] = random.random() < 0.5
            if answers:
                yield place, what, answers


def unique():
    """The cases, each once."""
    return [(place, what, dict(answers)) for place, what, answers in dict.fromkeys((p, w, tuple(a.items())) for p, w, a in cases())]


def told(yes):
    return "yes" if yes else "no"


def row(k, place, what, answers):
    candidates, ask = explain(place, what, answers)
    given = ";".join(f"{question}={told(answer)}" for question, answer in answers.items())
    found = ";".join(f"{c.cause}/{c.sign}/{told(not c.open)}" for c in candidates)
    cause = cause_of(place, what, answers) or ""
    return f"{place}_{what}_{k},{place},{what},{given},{found},{';'.join(ask)},{cause}"


def signs_csv():
    """The file of the vectors."""
    return HEADING + "".join(row(k, *case) + "\n" for k, case in enumerate(unique()))


def main(words):
    if words == ["--check"]:
        assert CSV.read_text(encoding="utf-8") == signs_csv(), f"{CSV.name} is another"
    else:
        CSV.write_text(signs_csv(), encoding="utf-8")


if __name__ == "__main__":
    main(sys.argv[1:])
