"""Whatever comes in, a report or an InputError comes out; a panic would end the test as neither."""

import copy
import json
import math
import random

import gaugepoint
import pytest
from vectors import EXAMPLES

SEED = 20260314


def accepted_or_refused(job, working=False):
    try:
        json.loads(gaugepoint.assess(job, working=working).to_json())
    except gaugepoint.InputError as error:
        assert error.kind in gaugepoint.ERROR_KINDS
        return False
    return True


def test_random_bytes():
    chance = random.Random(SEED)
    for _ in range(500):
        assert not accepted_or_refused(chance.randbytes(chance.randrange(200)))


@pytest.mark.parametrize("example", EXAMPLES, ids=lambda e: e.stem)
def test_damaged_documents(example):
    chance = random.Random(SEED)
    whole = example.read_bytes()
    outcomes = set()
    for _ in range(400):
        damaged = bytearray(whole)
        for _ in range(chance.randrange(1, 4)):
            start = chance.randrange(len(damaged))
            end = start + chance.choice([0, 1, 1, 2, 8])
            damaged[start:end] = chance.choice([b"", b"9", b"0", b"-", b"e", b'"', b"\xff", b"{", b"1e308", b"\\u0000"])
        outcomes.add(accepted_or_refused(bytes(damaged)))
    # a damage that is always refused, or never, would try little of the code
    assert outcomes == {True, False}


STRANGE = [None, True, -1, 0, 2**70, 1e308, 5e-324, math.nan, "", " ", "0 mm", "-0 mm", "1e308 mm", "1e-308 mm", "96", "27 C", "nan mm"]
STRANGE += ["\x00", "\udfff", "9" * 400 + " mm", [], {}, [[]], {"a": 1}, "2026-02-30", "100 %", "1e-7 /K", "-273.15 C", "64", 64]


def places(value):
    """Every container and key below a value."""
    items = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for name, item in list(items):
        yield value, name
        yield from places(item)


@pytest.mark.parametrize("example", EXAMPLES, ids=lambda e: e.stem)
def test_strange_values(example):
    chance = random.Random(SEED)
    whole = json.loads(example.read_text(encoding="utf-8"))
    for _ in range(400):
        job = copy.deepcopy(whole)
        container, name = chance.choice(list(places(job)))
        # an own copy: a strange value that is put into itself would be another test
        container[name] = copy.deepcopy(chance.choice(STRANGE))
        accepted_or_refused(job, working=chance.random() < 0.1)


NUMBERS = [math.nan, math.inf, -math.inf, 0.0, -0.0, 5e-324, 1e-300, 1e-7, 1e-4, 20.0, 86.0, 1100.0, 1e308, -1e308, 2.0**53]


def test_strange_numbers():
    chance = random.Random(SEED)
    functions = {gaugepoint.size_at_20_mm: 6, gaugepoint.bench_clearance_mm: 2, gaugepoint.running_clearance_mm: 6}
    for function, count in functions.items():
        for _ in range(3000):
            try:
                assert math.isfinite(function(*(chance.choice(NUMBERS) for _ in range(count))))
            except gaugepoint.InputError as error:
                assert error.kind in ("not_finite", "out_of_range")


def test_strange_decisions():
    chance = random.Random(SEED)
    rules = ["proven", "simple_acceptance", "conformance_probability", "", "none"]
    for _ in range(5000):
        value, uncertainty, at_least = (chance.choice(NUMBERS) for _ in range(3))
        lower, upper = (chance.choice([*NUMBERS, None]) for _ in range(2))
        try:
            decision = gaugepoint.decide_mm(value, uncertainty, lower, upper, chance.choice(rules), at_least)
        except gaugepoint.InputError:
            continue
        assert 0 <= decision.probability_of_conformity <= 1
