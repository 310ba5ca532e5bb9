"""Checks of the slow evaluation against values that do not come from it. The source stands beside each value."""

import copy
import json
from fractions import Fraction
from math import sqrt
from pathlib import Path

import pytest

import assess
import flat

EXAMPLES = Path(__file__).parents[2] / "core" / "examples"
NO_ERROR = assess.ZERO


def example(name):
    return json.loads((EXAMPLES / name).read_text(encoding="utf-8"))


def growth_ppm(law, t):
    return float(law.eps(assess.mpf(t), NO_ERROR)) * 1e6


# ------------------------------------------------------------------------------------------------------------------- growth

# NIST SRM 731, borosilicate glass (CHECKS.md 5.1a): certificate polynomial (1/K, kelvin), printed expansion from 293 K in 1e-6.
SRM_731 = assess.law({"instantaneous_polynomial": {
    "kelvin_coefficients": ["0.8651e-6", "2.3569e-8", "-4.2277e-11", "2.5408e-14"], "from": "19.85 C", "to": "366.85 C"}})
SRM_731_PRINTED = {293: 0, 300: 34, 320: 131, 340: 230, 360: 330, 380: 432, 400: 535, 420: 638, 440: 742, 460: 847, 480: 952,
                   500: 1057, 520: 1162, 540: 1267, 560: 1372, 580: 1478, 600: 1583, 620: 1689, 640: 1795}


def srm_731_from_293_k(kelvin):
    return growth_ppm(SRM_731, kelvin - 273.15) - growth_ppm(SRM_731, 293 - 273.15)


@pytest.mark.parametrize("kelvin, printed", SRM_731_PRINTED.items())
def test_polynomial_against_srm_731(kelvin, printed):
    assert srm_731_from_293_k(kelvin) == pytest.approx(printed, abs=0.5)


def test_polynomial_against_recomputed_digits_of_srm_731():
    # CHECKS.md 5.1a, recomputed there: 534.76 at 400 K; mean 293 to 473.15 K 5.08273481.
    assert srm_731_from_293_k(400) == pytest.approx(534.76, abs=0.005)
    assert srm_731_from_293_k(473.15) / (473.15 - 293) == pytest.approx(5.08273481, abs=5e-9)


# ASME II-D Table TE-2, aluminium alloys (CHECKS.md 5.1b): T in C; A instantaneous and B mean from 20 C, 1e-6/K; C expansion, mm/m.
TE_2 = [(20, 21.7, 21.7, 0), (50, 23.3, 22.6, 0.7), (75, 23.9, 23.1, 1.3), (100, 24.3, 23.4, 1.9), (125, 24.7, 23.7, 2.5),
        (150, 25.2, 23.9, 3.1), (175, 25.7, 24.2, 3.7), (200, 26.4, 24.4, 4.4), (225, 27.0, 24.7, 5.1), (250, 27.5, 25.0, 5.7),
        (275, 27.7, 25.2, 6.4), (300, 27.6, 25.5, 7.1), (325, 27.1, 25.6, 7.8)]
TE_2_A = assess.law({"instantaneous_table": {"rows": [{"at": f"{t} C", "value": f"{a} ppm/K"} for t, a, _, _ in TE_2]}})
TE_2_B = assess.law({"mean_table": {"base": "20 C", "rows": [{"to": f"{t} C", "value": f"{b} ppm/K"} for t, _, b, _ in TE_2]}})


@pytest.mark.parametrize("t, a, b, c", TE_2[1:])
def test_both_tables_against_te_2(t, a, b, c):
    # Tolerances of CHECKS.md 5.1b: straight lines through A give B within 0.10 (reached at 50 and 75 C); B (T - 20) gives C within
    # 0.06 mm/m.
    assert growth_ppm(TE_2_A, t) / (t - 20) == pytest.approx(b, abs=0.10 + 1e-9)
    assert growth_ppm(TE_2_B, t) / 1000 == pytest.approx(c, abs=0.06)


def test_mean_and_instantaneous_at_200_c_are_not_the_same():
    # CHECKS.md 5.1b: A in place of B at 200 C on 86 mm over 180 K is 0.0310 mm wrong.
    wrong = 86 * 26.4e-6 * 180
    assert wrong - 86 * growth_ppm(TE_2_B, 200) * 1e-6 == pytest.approx(0.0310, abs=5e-5)


def test_a_base_other_than_20_c():
    # By hand: 20 ppm/K from 0 C. L(100) = 1.002 L0, L(20) = 1.0004 L0, so eps = 1.002 / 1.0004 - 1 = 16 / 10004.
    law = assess.law({"mean_coefficient": {"base": "0 C", "value": "20 ppm/K", "from": "0 C", "to": "100 C"}})
    assert growth_ppm(law, 100) == pytest.approx(16 / 10004 * 1e6, rel=1e-14)


# ------------------------------------------------------------------------------------------------ flat functions against the trade

ALUMINIUM, IRON = "20.5e-6", "11.4e-6"  # TRADE.md 3.6, first row


@pytest.mark.parametrize("diameter, coefficient, printed_um", [
    # TRADE.md 2.6, per kelvin: aluminium piston 86, 100, 130 mm; iron bore 86 mm. One decimal is printed.
    (86, ALUMINIUM, 1.8), (100, ALUMINIUM, 2.1), (130, ALUMINIUM, 2.7), (86, IRON, 1.0)])
def test_one_kelvin(diameter, coefficient, printed_um):
    warm = flat.size_at_20_mm(diameter, 0, 20, "11.5e-6", 21, coefficient)
    assert (diameter - warm) * 1000 == pytest.approx(printed_um, abs=0.0501)


def test_a_piston_10_k_warm():
    # TRADE.md 2.6: 17.6 um on 86 mm.
    assert (86 - flat.size_at_20_mm(86, 0, 20, "11.5e-6", 30, ALUMINIUM)) * 1000 == pytest.approx(17.6, abs=0.05)


@pytest.mark.parametrize("shop_c, change_um", [(30, -7.8), (10, 7.8)])
def test_a_whole_shop_warm_or_cold(shop_c, change_um):
    # TRADE.md 2.6: aluminium in iron, 86 mm, everything at 30 C reads 7.8 um small, at 10 C 7.8 um large.
    there = flat.running_clearance_mm("86.035", shop_c, IRON, 86, shop_c, ALUMINIUM)
    assert (there - flat.bench_clearance_mm("86.035", 86)) * 1000 == pytest.approx(change_um, abs=0.05)


@pytest.mark.parametrize("size, cold_um, piston, bore, hot_um", [
    # TRADE.md 3.6: diameter, cold clearance, (coefficient, C) of piston and bore, free hot clearance. Whole um are printed.
    (86, 35, ("20.5e-6", 120), ("11.4e-6", 110), -53),
    (86, 35, ("16e-6", 120), ("11.4e-6", 110), -14),
    (86, 35, ("14e-6", 120), ("11.4e-6", 110), 3),
    (86, 30, ("20.5e-6", 120), ("19e-6", 110), 1),
    (101.6, 76, ("20e-6", 130), ("11.4e-6", 115), -37),
    (101.6, 114, ("22.8e-6", 130), ("11.4e-6", 115), -31),
    (130, 140, ("20.5e-6", 130), ("11.4e-6", 105), -27),
    (130, 100, ("12e-6", 130), ("11.4e-6", 105), 54),
    (82, 45, ("12e-6", 130), ("20e-6", 110), 84)])
def test_free_hot_clearance(size, cold_um, piston, bore, hot_um):
    hot = flat.running_clearance_mm(size + cold_um / 1000, bore[1], bore[0], size, piston[1], piston[0])
    assert hot * 1000 == pytest.approx(hot_um, abs=1)


# --------------------------------------------------------------------------------------------------------------------- decision

def test_probability_with_one_limit():
    # JCGM 106:2012, container burst (CHECKS.md 3.2): 509.7 kPa, u 8.6, at least 490; printed 0.989.
    p = assess.probability(assess.mpf("509.7"), assess.mpf("8.6"), assess.mpf(490), None)
    assert float(p) == pytest.approx(0.98900955, abs=5e-9)


def test_probability_with_two_limits():
    # JCGM 106:2012, viscosity of oil (CHECKS.md 3.3): 13.6 mm2/s, u 1.8, 12.5 to 16.3; printed 0.66.
    p = assess.probability(assess.mpf("13.6"), assess.mpf("1.8"), assess.mpf("12.5"), assess.mpf("16.3"))
    assert float(p) == pytest.approx(0.66262979, abs=5e-9)


# ------------------------------------------------------------------------------------------------- the whole chain, by hand at 20 C

def everything_at_20_c(document):
    """The same readings in a shop where every thermal term is zero and the thermometer is exact: sums by hand remain."""
    document = copy.deepcopy(document)
    document["shop"] = {"temperature": "20 C", "thermometer": {"permissible_error": "0 K"}}
    for gauge in document["gauges"]:
        for place in (gauge.get("zero_check"), *gauge.get("setting", {}).values()):
            if place:
                place["temperature"] = "20 C"
    for cylinder in document["cylinders"]:
        for part in (*cylinder["piston"]["readings"], cylinder.get("bore")):
            if part:
                part["temperature"] = "20 C"
    return document


def root_sum(*parts):
    return sqrt(sum(part * part for part in parts))


def test_pump_six_at_20_c():
    cylinder = assess.evaluate(everything_at_20_c(example("pump_six.json")))["cylinders"][0]
    # Piston: 3.7776 in read, rod of 3.00001 in read as 3.0001 in, coating 12 um on both sides.
    piston = (Fraction("3.7776") - (Fraction("3.0001") - Fraction("3.00001"))) * Fraction("25.4") - 2 * Fraction("0.012")
    bare = cylinder["piston"]["sizes"][0]["bare_size"]
    assert bare["value_mm"] == pytest.approx(float(piston), abs=1e-13)
    # In mm: scale, faces, resolution of reading and check (half of 0.0001 in), two repeats, rod, twice the coating's 3 um.
    third = sqrt(3)
    u_piston = root_sum(0.00015 * 25.4 / third, 0.0001 * 25.4 / third, 0.00005 * 25.4 / third, 0.00005 * 25.4 / third,
                        0.00006 * 25.4 / sqrt(2), 0.00004 * 25.4 / 2, 2 * 0.003 / third)
    assert bare["standard_uncertainty_mm"] == pytest.approx(u_piston, rel=1e-12)
    # Bore: ring 95.9994 mm, largest reading +0.017 mm. In mm: ring, needle, travel, resolution, two repeats.
    u_bore = root_sum(0.0015 / 2, 0.0005 / third, 0.002 / third, 0.0005 / third, 0.0015 / sqrt(2))
    assert cylinder["bore"]["size"]["value_mm"] == pytest.approx(96.0164, abs=1e-13)
    assert cylinder["bore"]["size"]["standard_uncertainty_mm"] == pytest.approx(u_bore, rel=1e-12)
    bench = cylinder["clearance"]["bench"]
    assert bench["value_mm"] == pytest.approx(96.0164 - float(piston), abs=1e-13)
    assert bench["standard_uncertainty_mm"] == pytest.approx(root_sum(u_piston, u_bore), rel=1e-12)


def test_a_shared_setting_cancels_at_20_c():
    # The bore gauge was set at the reading of the piston: the clearance is the deviation, whatever the micrometer's scale is worth.
    bench = assess.evaluate(everything_at_20_c(example("air_twin.json")))["cylinders"][0]["clearance"]["bench"]
    assert bench["value_mm"] == pytest.approx(0.0575, abs=1e-13)
    assert "/gauges/0/permissible_error" not in [entry["path"] for entry in bench["budget"]]
    # In mm: faces twice, micrometer's resolution twice, needle, travel, resolution, two repeats of either gauge.
    third = sqrt(3)
    u = root_sum(0.003 / third, 0.003 / third, 0.0005 / third, 0.0005 / third, 0.0005 / third, 0.002 / third, 0.0005 / third,
                 0.001 / sqrt(2), 0.001 / sqrt(2))
    assert bench["standard_uncertainty_mm"] == pytest.approx(u, rel=1e-12)


# ----------------------------------------------------------------------------------------------------------------- the examples

def results(name):
    """Every decision of an example as {(cylinder, of): result}."""
    cylinders = assess.evaluate(example(name))["cylinders"]
    return {(cylinder["number"], d["of"]): d["result"] for cylinder in cylinders for part in ("piston", "bore", "clearance")
            for d in cylinder.get(part, {}).get("decisions", [])}


def test_pump_six_shows_what_it_was_made_to_show():
    # Made so: bore 4 inside the guard band, bore 5 tapered, everything else proven. Eight decisions for each of six cylinders.
    found = results("pump_six.json")
    assert len(found) == 48
    assert {key: result for key, result in found.items() if result != "conforms"} == {
        (4, "bore_size"): "not proven", (5, "bore_taper"): "does not conform"}


def test_air_twin_shows_what_it_was_made_to_show():
    # Made so: the other alloy uses up the margin when hot although the bench clearance is good; bore 2 was not read.
    found = results("air_twin.json")
    assert {key: result for key, result in found.items() if result != "conforms"} == {(1, "running_margin_tight"): "not proven"}
    assert [of for number, of in found if number == 2] == ["piston_size"]


# --------------------------------------------------------------------------------------------------------------------- quantities

@pytest.mark.parametrize("text, mm", [("96.012 mm", "96.012"), ("3.7799 in", "96.00946"), ("2 in 412 thou 6 tenths", "61.28004"),
                                      ("2 thou", "0.0508"), ('1"', "25.4"), ("3 tenths", "0.00762"), ("15 um", "0.015")])
def test_lengths_are_exact(text, mm):
    # By hand: 1 in = 25.4 mm.
    assert assess.length(text) == Fraction(mm)


def test_temperatures_and_differences():
    # By hand: 68 F = 20 C; a difference of 9 F is 5 K; 10 ppm/F is 18 ppm/K.
    assert assess.temperature("68 F") == 20
    assert assess.difference("9 delta F") == 5
    assert assess.coefficient("10 ppm/F") == Fraction("18e-6")


@pytest.mark.parametrize("read, text", [
    (assess.length, "96.012"), (assess.length, "96,012 mm"), (assess.length, "3 1/2 in"), (assess.length, "20 C"),
    (assess.length, 96), (assess.temperature, "0.5 K"), (assess.difference, "0.5 C"), (assess.coefficient, "20")])
def test_what_is_not_a_quantity_is_refused(read, text):
    with pytest.raises(assess.Refused):
        read(text)
