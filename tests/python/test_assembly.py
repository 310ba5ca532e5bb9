"""What is done before assembly: the vectors of every host, and what only Python can pass."""

import pickle

import gaugepoint
import pytest
from gaugepoint import plan
from gaugepoint.parts import Chamber
from gaugepoint.plan import Block, BobWeight, FinishValue, GapReading, HotRing, LinerSeat, Part, Shim, Step, WantedGap, WantedProtrusion, WornBore
from test_measured import expect, expect_refusal, numbers
from vectors import assembly as rows

ROWS = rows()
HELD = [row for row in ROWS if not row["expected"].startswith("error:")]
REFUSED = [row for row in ROWS if row["expected"].startswith("error:")]
OUTCOMES = ["fits", "file", "too_wide"]
FINDINGS = ["in", "out", "not_proven", "not_given", "no_limit"]
PARAMETERS = ["rpk_um", "rk_um", "rvk_um", "mr1_percent", "mr2_percent", "crosshatch_deg"]
SHIM_REASONS = ["uneven", "cupped", "no_stack", "neighbours", "too_few_shims"]
WAYS = ["one_step", "step_by_bore", "step_and_sleeves", "sleeves_alone"]
REASONS = ["not_clean", "wall_too_thin", "gasket_too_small", "too_few_pistons", "no_sleeve"]


def optionals(text):
    return [None if number == "none" else float(number) for number in text.split(";")]


def each(text):
    return [optionals(one) for one in text.split("/") if one]


def whole(number):
    return None if number is None else int(number)


def filed(head, heat=None):
    gap, gauge, *uncertainties, bore, least, most, allowance = optionals(head)
    hot = heat and HotRing(*numbers(heat))
    return plan.filing(GapReading(gap, gauge, *uncertainties), bore, WantedGap(least, most, allowance, hot))


def shimmed(head, liners, shims):
    *wanted, on_one = optionals(head)
    row = [LinerSeat(flange, tuple(depths), cupping) for flange, *depths, cupping in each(liners)]
    return plan.shim_plan(row, [Shim(thickness, whole(n)) for thickness, n in each(shims)], WantedProtrusion(*wanted, int(on_one)))


def graded(head, readings, bands):
    step, spread, u = optionals(head)
    return plan.gasket_grade(each(readings), [tuple(band) for band in each(bands)], step, largest_spread_mm=spread, standard_uncertainty_mm=u)


def cut(band, assemblies):
    return plan.cut_list([[Part(*part) for part in zip(*[iter(one)] * 2, strict=True)] for one in each(assemblies)], float(band))


def bob(text):
    rods, *rest = numbers(text)
    return {"bob_g": plan.bob_weight_g(BobWeight(int(rods), *rest))}


def finished(head, values):
    rule, at_least = head.split(";")
    given = (FinishValue(*value) for value in each(values))
    return plan.finish(**dict(zip(PARAMETERS, given, strict=True)), rule=rule, at_least=float(at_least))


def enlarged(head, bores, steps):
    nominal, gasket, sleeve, boring, guard, gap, *chamber = optionals(head)
    block = Block(nominal, boring, guard, gasket, sleeve, Chamber(*chamber) if chamber else None, gap)
    worn = [WornBore(clean, u, wall, sleeved == 1, stays == 1) for clean, u, wall, sleeved, stays in each(bores)]
    return plan.oversizes(block, worn, [Step(over, price, whole(n), mass) for over, price, n, mass in each(steps)])


CALLS = {"filing": filed, "shim_plan": shimmed, "gasket_grade": graded, "cut_list": cut, "bob_weight_g": bob, "finish": finished, "oversizes": enlarged}


def called(row):
    return CALLS[row["function"]](*row["given"].split("|"))


def of_plan(result, name):
    place, _, field = name.partition(".")
    if place == "ruled_out":
        if not field:
            return len(result.ruled_out)
        k, _, what = field.partition(".")
        reason = result.ruled_out[int(k)]
        return 1 + SHIM_REASONS.index(reason.reason) if what == "reason" else reason.liner
    if not field:
        return getattr(result, name)
    liner = result.liners[int(place)]
    if field == "shims":
        return None if liner.stack is None else len(liner.stack)
    return liner.stack[int(field[5:])] if field.startswith("shim.") else getattr(liner, field)


def of_cuts(result, name):
    place, _, field = name.partition(".")
    if not field:
        return getattr(result, name)
    assembly = result.assemblies[int(place)]
    part, _, cut_g = field.partition(".")
    return assembly.cut_g[int(part)] if cut_g else getattr(assembly, field)


def of_oversizes(result, name):
    if name == "choices":
        return len(result.choices)
    place, *path = name.split(".")
    if place == "step":
        return getattr(result.consequences[int(path[0])], path[1])
    choice = result.choices[int(place)]
    if path[0] == "ruled_out":
        reason = choice.ruled_out[int(path[1])]
        if path[2] == "reason":
            return 1 + REASONS.index(reason.reason)
        return (reason.step if reason.bore is None else reason.bore) if path[2] == "place" else getattr(reason, path[2])
    if path[0] == "is_ruled_out":
        return bool(choice.ruled_out)
    if path[0] == "way":
        return 1 + WAYS.index(choice.way)
    if path[0] == "price":
        return choice.price
    action = choice.actions[int(path[0])]
    return 1 + ["bore", "sleeve", "leave"].index(action.action) if path[1] == "action" else action.step or 0


def found(result, name):
    """A result by the name that every host gives it."""
    if isinstance(result, dict):
        return result[name]
    if isinstance(result, plan.ShimPlan):
        return of_plan(result, name)
    if isinstance(result, plan.CutList):
        return of_cuts(result, name)
    if isinstance(result, plan.Oversizes):
        return of_oversizes(result, name)
    if name == "outcome":
        return 1 + OUTCOMES.index(result.outcome)
    place, _, field = name.partition(".")
    if isinstance(result, plan.GasketGrade) and field:
        return (result.protrusions_mm if field == "protrusion_mm" else result.squish_mm)[int(place)]
    if not field:
        return getattr(result, name)
    judged = getattr(result, place)
    return 1 + FINDINGS.index(judged.finding) if field == "finding" else getattr(judged, field)


@pytest.mark.parametrize("row", HELD, ids=lambda row: row["id"])
def test_value(row):
    expect(row, called(row), found)


@pytest.mark.parametrize("row", REFUSED, ids=lambda row: row["id"])
def test_refusal(row):
    expect_refusal(row, called)


def test_every_function_has_rows():
    assert {row["function"] for row in HELD} == {row["function"] for row in REFUSED} == set(CALLS)


WANTED = WantedProtrusion(0.05, 0.12, 0.025)


@pytest.mark.parametrize(
    "call, raised",
    [
        (lambda: plan.filing(0.3, 86.0, WantedGap(0.4)), AttributeError),
        (lambda: plan.shim_plan([LinerSeat(8.0, (8.0, 8.0))], [Shim(0.1)], WANTED), TypeError),
        (lambda: plan.shim_plan([LinerSeat(8.0, (8.0,) * 4)], [Shim(0.1, -1)], WANTED), TypeError),
        (lambda: plan.gasket_grade([0.6, 0.6], [(0.5, 0.7, 1.3)]), TypeError),
        (lambda: plan.cut_list([[400.0]], 2.0), AttributeError),
        (lambda: plan.finish(rpk_um=0.2), AttributeError),
    ],
)
def test_what_is_none_of_the_types(call, raised):
    with pytest.raises(raised):
        call()


def test_an_unknown_rule_is_named():
    with pytest.raises(gaugepoint.InputError) as refused:
        plan.finish(rpk_um=FinishValue(0.2, upper=0.3), rule="prooven")
    assert (refused.value.kind, refused.value.field) == ("unknown_choice", "rule")


def test_what_can_hurt_carries_its_caution():
    assert "cover your eyes" in plan.filing(GapReading(0.3), 86.0, WantedGap(0.4)).caution
    assert "lift them with a puller" in plan.shim_plan([LinerSeat(8.0, (7.9,) * 4)], [], WANTED).caution


def test_results_are_data():
    for row in HELD:
        result = called(row)
        if not isinstance(result, dict):
            assert pickle.loads(pickle.dumps(result)) == result and hash(result) == hash(called(row)), row["id"]
