"""Rings, shims, gaskets, masses, finishes and oversizes by exact fractions, mpmath and enumeration.

Run it to write ../vectors/assembly.csv; with --check it only compares.
"""

import itertools
import random
import sys
from fractions import Fraction as F
from pathlib import Path

import compare
import mpmath
from mpmath import mpf

mpmath.mp.dps = 40
VECTORS = Path(__file__).parents[1] / "vectors"


def row(name, function, given, expected, source):
    return f"{name},{function},{given},{expected},{source}"


def near(**named):
    return named_list(named.items())


def named_list(pairs, tolerance="1e-12"):
    """None is a result that is not given; a whole number is exact."""
    def one(value):
        if value is None:
            return "none"
        if isinstance(value, (bool, int)):
            return f"{int(value)}~0"
        return f"{float(value)!r}~{tolerance}"

    return ";".join(f"{name}={one(value)}" for name, value in pairs)


def optional(text):
    return None if text == "none" else F(text)


def exact(x):
    """A fraction in mpmath's numbers; what is one already stays."""
    return mpf(x.numerator) / x.denominator if isinstance(x, F) else x


# end gaps of rings


def filing(name, given, source="exact but for pi at 40 digits: a closed ring keeps its length"):
    head, *heat = given.split("|")
    gap, gauge, u_gap, u_gauge, u_bore, bore, least, most, allowance = map(optional, head.split(";"))
    in_bore = exact(gap)
    u = exact(u_gap)
    if gauge is not None:
        in_bore += mpmath.pi * exact(bore - gauge)
        u = mpmath.sqrt(u**2 + mpmath.pi**2 * exact(u_gauge**2 + u_bore**2))
    asked = mpf(0) if least is None else exact(least)
    if heat:
        hot, *conditions = map(F, heat[0].split(";"))
        grown, ring = (1 + exact(a * (t - 20)) for t, a in zip(conditions[::2], conditions[1::2], strict=True))
        # circumference of the hot bore less the hot gap is the hot ring
        length = (mpmath.pi * exact(bore) * grown - exact(hot)) / ring
        asked = max(asked, mpmath.pi * exact(bore) - length)
    target = asked + exact(allowance)
    outcome = 2 if in_bore < asked else 3 if most is not None and in_bore > exact(most) else 1
    off = target - in_bore if outcome == 2 else mpf(0)
    then = target if outcome == 2 else in_bore
    found = {"outcome": outcome, "gap_mm": in_bore, "standard_uncertainty_mm": u, "least_mm": asked, "target_mm": target, "file_off_mm": off, "each_end_mm": off / 2}
    found["hot_gap_mm"] = mpmath.pi * exact(bore) * grown - (mpmath.pi * exact(bore) - then) * ring if heat else None
    return row(name, "filing", given, near(**found), source)


def rings():
    # published: about 0.08 mm of gap for 0.03 mm of bore; exact 0.0942
    yield filing("own_bore_short", "0.31;none;0.01;0;0;86.02;0.4;0.55;0.02")
    yield filing("own_bore_fits", "0.41;none;0.01;0.002;0.003;86.02;0.4;0.55;0.02")
    yield filing("gauge_below_the_bore", "0.3;86;0.01;0.001;0.003;86.03;0.4;none;0.02")
    yield filing("gauge_above_the_bore", "0.5;86.1;0.008;0.001;0.002;86;0.3;0.6;0")
    yield filing("too_wide", "0.45;86;0;0;0;86.1;0.4;0.7;0.02")
    yield filing("ends_overlap", "0.1;86.5;0.01;0.001;0.002;86;0.4;none;0.02")
    yield filing("by_heat_alone", "0.35;100;0.01;0.001;0.002;100.02;none;none;0.02|0.05;160;1.1e-5;230;1.2e-5")
    yield filing("heat_asks_for_more", "0.4;none;0;0;0;100;0.35;1.2;0.05|0.1;90;1.1e-5;230;1.1e-5")
    yield filing("heat_asks_for_less", "0.25;none;0;0;0;86;0.3;0.5;0.02|0;130;2.1e-5;180;1.1e-5")
    yield filing("heat_opens_the_gap", "0.05;none;0;0;0;86;none;none;0|0;150;2.1e-5;180;1.1e-5")

    def bad(name, given, error):
        return row(name, "filing", given, f"error:{error}", "refused")

    yield bad("gap_nan", "nan;none;0;0;0;86;0.4;0.55;0.02", "not_finite gap_mm")
    yield bad("gauge_of_another_bore", "0.4;80;0;0;0;86;0.4;0.55;0.02", "contradiction gauge_mm")
    yield bad("bore_in_inches", "0.4;none;0;0;0;3.4;0.4;0.55;0.02", "out_of_range bore_mm")
    yield bad("gap_uncertainty", "0.4;none;-0.1;0;0;86;0.4;0.55;0.02", "out_of_range gap_uncertainty_mm")
    yield bad("gauge_uncertainty", "0.4;86;0;0.5;0;86;0.4;0.55;0.02", "out_of_range gauge_uncertainty_mm")
    yield bad("bore_uncertainty", "0.4;86;0;0;nan;86;0.4;0.55;0.02", "not_finite bore_uncertainty_mm")
    yield bad("nothing_wanted", "0.4;86;0;0;0;86;none;0.55;0.02", "missing_field least_mm")
    yield bad("least_of_zero", "0.4;86;0;0;0;86;0;0.55;0.02", "out_of_range least_mm")
    yield bad("most_inf", "0.4;86;0;0;0;86;0.4;inf;0.02", "not_finite most_mm")
    yield bad("target_above_the_widest", "0.4;86;0;0;0;86;0.4;0.41;0.02", "out_of_order most_mm")
    yield bad("allowance_below_zero", "0.4;86;0;0;0;86;0.4;0.55;-0.02", "out_of_range allowance_mm")
    yield bad("hot_gap_below_zero", "0.4;86;0;0;0;86;0.4;0.55;0.02|-0.1;150;1.1e-5;200;1.1e-5", "out_of_range hot/least_hot_gap_mm")
    yield bad("hot_bore", "0.4;86;0;0;0;86;0.4;0.55;0.02|0.1;1500;1.1e-5;200;1.1e-5", "out_of_range hot/bore_temperature_c")
    yield bad("hot_ring", "0.4;86;0;0;0;86;0.4;0.55;0.02|0.1;150;1.1e-5;200;11", "out_of_range hot/ring_expansion_per_k")


# shims of a row of liners


def stacks(shims, most):
    for n in range(most + 1):
        yield from itertools.combinations_with_replacement(range(len(shims)), n)


def enumerate_row(liners, shims, wanted):
    """Every way to shim a row that holds all limits, as the largest deviation, the number of shims and the stacks."""
    least, most, unevenness, cupping, neighbours, on_one = wanted
    fit = all(max(d) - min(d) <= unevenness and (c is None or cupping is None or c <= cupping) for _, *d, c in liners)

    def at(liner, stack):
        return [liner[0] + sum(shims[s][0] for s in stack) - depth for depth in liner[1:5]]

    served = [[s for s in stacks(shims, on_one) if all(least <= p <= most for p in at(liner, s))] for liner in liners]
    for ways in itertools.product(*served) if fit else ():
        used = list(itertools.chain(*ways))
        if any(n is not None and used.count(s) > n for s, (_, n) in enumerate(shims)):
            continue
        heights = [at(liner, stack) for liner, stack in zip(liners, ways, strict=True)]
        steps = [abs(a[2] - b[0]) for a, b in itertools.pairwise(heights)]
        if neighbours is not None and any(step > neighbours for step in steps):
            continue
        yield max(abs(p - (least + most) / 2) for p in itertools.chain(*heights)), len(used), ways, heights, max(steps, default=None)


def shim_row(name, given, ruled_out=(), source="every way enumerated by exact fractions"):
    head, liner_text, shim_text = given.split("|")
    wanted = [optional(n) for n in head.split(";")]
    wanted[5] = int(wanted[5])
    liners = [[optional(n) for n in text.split(";")] for text in liner_text.split("/")]
    shims = [[optional(n) for n in text.split(";")] for text in shim_text.split("/") if text]
    ways = sorted(enumerate_row(liners, shims, wanted), key=lambda way: way[:2])
    assert bool(ways) != bool(ruled_out), name
    pairs = []
    if ways:
        least = [way for way in ways if way[:2] == ways[0][:2]]
        deviation, count, stacks_, heights, step = least[0]
        pairs += [("largest_deviation_mm", deviation), ("shims_used", count), ("ruled_out", 0)]
        if len(least) == 1:
            pairs.append(("largest_step_mm", step))
            for k, (stack, h) in enumerate(zip(stacks_, heights, strict=True)):
                pairs += [(f"{k}.lowest_mm", min(h)), (f"{k}.highest_mm", max(h)), (f"{k}.shims", len(stack))]
                pairs += [(f"{k}.shim.{j}", place) for j, place in enumerate(stack)]
    else:
        pairs += [("largest_deviation_mm", None), ("largest_step_mm", None), ("shims_used", None), ("ruled_out", len(ruled_out))]
        pairs += [("0.lowest_mm", None), ("0.highest_mm", None), ("0.shims", None)]
        for k, (reason, liner) in enumerate(ruled_out):
            pairs += [(f"ruled_out.{k}.reason", reason), (f"ruled_out.{k}.liner", liner)]
    for k, (flange, *depths, _) in enumerate(liners):
        pairs += [(f"{k}.mean_depth_mm", sum(depths) / 4), (f"{k}.unevenness_mm", max(depths) - min(depths))]
        pairs += [(f"{k}.least_shims_mm", wanted[0] - flange + max(depths)), (f"{k}.most_shims_mm", wanted[1] - flange + min(depths))]
    return row(name, "shim_plan", given, named_list(pairs), source)


UNEVEN, CUPPED, NO_STACK, NEIGHBOURS, TOO_FEW = 1, 2, 3, 4, 5


def liners():
    thin = "0.05;none/0.1;none"
    level = "8;7.97;7.97;7.97;7.97;none/8;8.02;8.02;8.02;8.02;none/8;7.92;7.92;7.92;7.92;none"
    yield shim_row("row_of_three", f"0.05;0.12;0.025;none;0.05;1|{level}|{thin}")
    yield shim_row("one_liner", "0.1;0.15;0.025;0.035;none;2|9;9.02;9.03;9.025;9.02;0.01|0.178;none/0.05;none/0.08;2")
    yield shim_row("stock_binds", f"0.05;0.12;0.025;none;none;2|{level}|0.05;1/0.1;1/0.03;2")
    yield shim_row("neighbours_bind", "0.03;0.12;0.025;none;0.02;2|8;7.97;7.97;7.97;7.97;none/8;7.99;7.99;7.99;7.99;none|0.05;none/0.03;none/0.08;none")
    yield shim_row("uneven_seat", f"0.05;0.12;0.025;none;0.05;1|8;7.96;7.97;7.99;7.97;none/8;8.02;8.02;8.02;8.02;none|{thin}", [(UNEVEN, 0)])
    yield shim_row("cupped_seat", f"0.05;0.12;0.025;0.035;0.05;1|8;7.97;7.97;7.97;7.97;none/8;8.02;8.02;8.02;8.02;0.04|{thin}", [(CUPPED, 1)])
    yield shim_row("two_faults", f"0.05;0.12;0.025;0.035;none;1|8;7.9;7.97;7.97;7.97;0.1/8;8.1;8.1;8.1;8.1;0.01|{thin}", [(UNEVEN, 0), (CUPPED, 0), (NO_STACK, 1)])
    yield shim_row("stands_too_high", f"0.05;0.12;0.025;none;none;1|8;7.87;7.87;7.87;7.87;none|{thin}", [(NO_STACK, 0)])
    yield shim_row("no_shims_at_all", "0.05;0.12;0.025;none;none;1|8;8.02;8.02;8.02;8.02;none|", [(NO_STACK, 0)])
    yield shim_row("unlike_its_neighbour", f"0.03;0.12;0.025;none;0.01;1|8;7.97;7.97;7.97;7.97;none/8;7.94;7.94;7.94;7.94;none|{thin}", [(NEIGHBOURS, 1)])
    yield shim_row("too_few_shims", "0.05;0.12;0.025;none;none;1|8;8.02;8.02;8.02;8.02;none/8;8.02;8.02;8.02;8.02;none|0.1;1", [(TOO_FEW, 1)])
    chance = random.Random(20261128)
    for k in range(12):
        # in steps of 1/128 mm, which every host holds exactly: deviations tie or differ by metal
        count = chance.randint(2, 5)
        step = F(1, 128)
        text = []
        for _ in range(count):
            depth = 8 + chance.randint(-6, 10) * step
            depths = [depth + chance.choice([0, 0, 1]) * step for _ in range(4)]
            text.append(";".join(str(float(n)) for n in (8, *depths)) + ";none")
        stock = "/".join(f"{float(t * step)};{chance.choice(['none', '1', '2', '3'])}" for t in chance.sample(range(2, 16), 3))
        given = f"0.0234375;0.1328125;0.03125;none;{chance.choice(['none', '0.0390625'])};{chance.randint(1, 2)}|{'/'.join(text)}|{stock}"
        try:
            yield shim_row(f"random_{k}", given)
        except AssertionError:
            continue  # nothing serves: what rules it out is asked above

    def bad(name, given, error):
        return row(name, "shim_plan", given, f"error:{error}", "refused")

    good = "8;8;8;8;8;none"
    yield bad("depth_nan", f"0.05;0.12;0.025;none;none;1|{good}/8;8;nan;8;8;none|0.1;none", "not_finite liners/1/depths_mm/1")
    yield bad("flange_in_inches", "0.05;0.12;0.025;none;none;1|0.3;8;8;8;8;none|0.1;none", "out_of_range liners/0/flange_mm")
    yield bad("cupping_inf", "0.05;0.12;0.025;none;none;1|8;8;8;8;8;inf|0.1;none", "not_finite liners/0/cupping_mm")
    yield bad("shim_of_nothing", f"0.05;0.12;0.025;none;none;1|{good}|0.1;none/0;none", "out_of_range shims/1/thickness_mm")
    yield bad("limits_exchanged", f"0.12;0.05;0.025;none;none;1|{good}|0.1;none", "out_of_order most_mm")
    yield bad("least_too_large", f"1.2;1.3;0.025;none;none;1|{good}|0.1;none", "out_of_range least_mm")
    yield bad("most_nan", f"0.05;nan;0.025;none;none;1|{good}|0.1;none", "not_finite most_mm")
    yield bad("unevenness_below_zero", f"0.05;0.12;-0.025;none;none;1|{good}|0.1;none", "out_of_range unevenness_mm")
    yield bad("cupping_limit", f"0.05;0.12;0.025;nan;none;1|{good}|0.1;none", "not_finite cupping_mm")
    yield bad("neighbour_limit", f"0.05;0.12;0.025;none;5;1|{good}|0.1;none", "out_of_range neighbours_mm")
    yield bad("none_on_one", f"0.05;0.12;0.025;none;none;0|{good}|0.1;none", "out_of_range most_on_one")
    yield bad("too_many_on_one", f"0.05;0.12;0.025;none;none;4|{good}|0.1;none", "out_of_range most_on_one")
    yield bad("too_many_shims", f"0.05;0.12;0.025;none;none;1|{good}|" + "/".join(["0.1;none"] * 13), "out_of_range shims")
    yield bad("too_many_liners", "0.05;0.12;0.025;none;none;1|" + "/".join([good] * 25) + "|0.1;none", "out_of_range liners")


# gaskets


def phi(x):
    return mpmath.erfc(-x / mpmath.sqrt(2)) / 2


def gasket(name, given, source="exact fractions; products of normal probabilities by mpmath at 40 digits"):
    head, readings, table = given.split("|")
    _, limit, u = map(optional, head.split(";"))
    protrusions = [sum(map(F, text.split(";"))) / 2 for text in readings.split("/")]
    bands = [tuple(map(F, text.split(";"))) for text in table.split("/")]
    largest = max(protrusions)
    # the last line that begins at or below it, or whose forerunner ends below it
    band = max(k for k, b in enumerate(bands) if k == 0 or largest >= b[0] or largest > bands[k - 1][1])
    thickness = bands[band][2]
    spread = largest - min(protrusions)
    found = {"largest_piston": protrusions.index(largest), "band": band, "largest_mm": largest, "spread_mm": spread, "thickness_mm": thickness}
    found["spread_is_met"] = None if limit is None else spread <= limit
    found["probability_below"] = found["probability_above"] = None
    if u is not None:
        lower, upper = bands[band - 1][1] if band else bands[0][0], bands[band][1]
        if u:
            product = lambda edge: mpmath.fprod(phi(exact((edge - p) / u)) for p in protrusions)  # noqa: E731
            found["probability_below"], found["probability_above"] = product(lower), 1 - product(upper)
        else:
            found["probability_below"] = found["probability_above"] = mpf(0)
    pairs = [*found.items(), *((f"{k}.protrusion_mm", p) for k, p in enumerate(protrusions)), *((f"{k}.squish_mm", thickness - p) for k, p in enumerate(protrusions))]
    return row(name, "gasket_grade", given, named_list(pairs), source)


def gaskets():
    table = "0.47;0.604;1.3/0.605;0.654;1.35/0.655;0.704;1.4/0.705;0.754;1.45/0.755;0.83;1.5"
    yield gasket("printed_bands", f"0.001;none;none|0.61;0.62/0.66;0.664/0.63;0.6|{table}")
    yield gasket("near_an_edge", f"0.001;0.1;0.004|0.65;0.656/0.64;0.66/0.6;0.61/0.62;0.62|{table}")
    yield gasket("between_two_lines", f"0.001;0.1;0.005|0.6045;0.6045/0.55;0.56|{table}")
    yield gasket("first_line", f"0.001;0.02;0.01|0.48;0.49/0.5;0.46|{table}")
    yield gasket("last_line", f"0.001;0.05;0.008|0.82;0.825/0.8;0.79/0.76;0.77|{table}")
    yield gasket("far_from_an_edge", f"0.001;none;0.002|0.625;0.635/0.62;0.622|{table}")
    yield gasket("exact_readings", f"0.001;0.1;0|0.604;0.604/0.6;0.6|{table}")
    yield gasket("shared_end", "0.001;none;0|0.5;0.5/0.25;0.25|0.25;0.5;1.25/0.5;0.75;1.5")
    yield gasket("below_the_deck", "0.001;none;0.005|-0.1;-0.06/-0.12;-0.1|-0.2;-0.05;1/-0.049;0.1;1.2")

    def bad(name, given, error):
        return row(name, "gasket_grade", given, f"error:{error}", "refused")

    yield bad("reading_nan", f"0.001;none;none|0.6;0.6/0.6;nan|{table}", "not_finite projections_mm/1/1")
    yield bad("above_the_table", f"0.001;none;none|0.6;0.6/0.9;0.9|{table}", "out_of_range projections_mm/1")
    yield bad("hole", "0.001;none;none|0.6;0.6|0.47;0.6;1.3/0.605;0.654;1.35", "contradiction bands/1/from_mm")
    yield bad("overlap", "0.001;none;none|0.6;0.6|0.47;0.61;1.3/0.605;0.654;1.35", "contradiction bands/1/from_mm")
    yield bad("spread_limit", f"0.001;5;none|0.6;0.6|{table}", "out_of_range largest_spread_mm")
    yield bad("uncertainty_below_zero", f"0.001;none;-0.1|0.6;0.6|{table}", "out_of_range standard_uncertainty_mm")
    yield bad("step", f"0;none;none|0.6;0.6|{table}", "out_of_range step_mm")


# masses


def cuts(name, given, source="exact fractions"):
    head, text = given.split("|")
    assemblies = [list(zip(*[map(F, t.split(";"))] * 2, strict=True)) for t in text.split("/")]
    masses = [sum(m for m, _ in parts) for parts in assemblies]
    most = min(masses) + F(head)
    pairs = [("lightest", masses.index(min(masses))), ("most_g", most)]
    met = True
    for k, (parts, mass) in enumerate(zip(assemblies, masses, strict=True)):
        off = min(max(mass - most, 0), sum(r for _, r in parts))
        met = met and mass - off <= most
        pairs += [(f"{k}.mass_g", mass), (f"{k}.left_g", mass - off), (f"{k}.over_g", max(mass - off - most, F(0)))]
        for j, (_, removable) in enumerate(parts):
            taken = min(off, removable)
            off -= taken
            pairs.append((f"{k}.{j}.cut_g", F(taken)))
    return row(name, "cut_list", given, named_list([*pairs, ("is_met", met)], "1e-9"), source)


def masses():
    yield cuts("three_assemblies", "2|412;3;118;0/415.5;3;118;0/419;3;118.5;0")
    yield cuts("two_parts_give", "1|600.2;4;150.1;2/604.9;4;150.3;2/606;4;150.1;2")
    yield cuts("all_alike", "0|500;5/500;5")
    yield cuts("one_alone", "5|812.3;0")
    yield cuts("within_the_band", "5|400;0;90;0/404.9;0;90;0/402;0;90.1;0")
    yield row("right_angled_v", "bob_weight_g", "2;420;45;180;620;0.5;4", "bob_g=1734~1e-9", "by hand: 2 (465 + 0.5 x 800) + 4; the two forces of 90 degrees add up to one turning mass")
    yield row("single", "bob_weight_g", "1;210;30;90;310;0.6;0", "bob_g=480~1e-9", "by hand: 240 + 0.6 x 400")
    yield row("no_share", "bob_weight_g", "2;210;30;90;310;0;0", "bob_g=480~1e-9", "by hand: 2 x 240")

    def bad(name, function, given, error):
        return row(name, function, given, f"error:{error}", "refused")

    yield bad("mass_nan", "cut_list", "2|412;3/nan;3", "not_finite assemblies/1/0/mass_g")
    yield bad("removable_below_zero", "cut_list", "2|412;3;100;-1", "out_of_range assemblies/0/1/removable_g")
    yield bad("more_than_there_is", "cut_list", "2|2;3", "contradiction assemblies/0/0/removable_g")
    yield bad("band_inf", "cut_list", "inf|412;3", "not_finite band_g")
    yield bad("five_rods", "bob_weight_g", "5;210;30;90;310;0.6;0", "out_of_range rods")
    yield bad("no_rods", "bob_weight_g", "0;210;30;90;310;0.6;0", "out_of_range rods")
    yield bad("big_end_nan", "bob_weight_g", "1;nan;30;90;310;0.6;0", "not_finite big_end_g")
    yield bad("bearing_below_zero", "bob_weight_g", "1;210;-30;90;310;0.6;0", "out_of_range bearing_g")
    yield bad("small_end_inf", "bob_weight_g", "1;210;30;inf;310;0.6;0", "not_finite small_end_g")
    yield bad("piston_below_zero", "bob_weight_g", "1;210;30;90;-1;0.6;0", "out_of_range piston_g")
    yield bad("share_in_percent", "bob_weight_g", "1;210;30;90;310;60;0", "out_of_range share")
    yield bad("oil_nan", "bob_weight_g", "1;210;30;90;310;0.6;nan", "not_finite oil_g")


# finishes

PARAMETERS = ("rpk", "rk", "rvk", "mr1", "mr2", "crosshatch")
IN, OUT, NOT_PROVEN, NOT_GIVEN, NO_LIMIT = 1, 2, 3, 4, 5


def judged(rule, at_least, value, u, lower, upper):
    """Finding and probability of conformity, by the definitions of the standards."""
    limits = [limit for limit in (lower, upper) if limit is not None]
    if not limits or value is None:
        return (NO_LIMIT if not limits else NOT_GIVEN), None
    inside = min((value - limit if limit is lower else limit - value) for limit in limits)
    simple = IN if inside >= 0 else OUT
    if u is None:
        return simple, None
    below = lambda limit: phi(exact(limit - value) / exact(u)) if u else mpf(limit >= value)  # noqa: E731
    p = (below(upper) if upper is not None else 1) - ((below(lower) if u else mpf(lower > value)) if lower is not None else 0)
    guard = {"proven": F("1.65") * u, "expanded_guard_band": 2 * u}.get(rule)
    if guard is not None:
        return (IN if inside >= guard else OUT if inside < -guard else NOT_PROVEN), p
    if rule == "conformance_probability":
        return (IN if p >= exact(at_least) else OUT if 1 - p >= exact(at_least) else NOT_PROVEN), p
    if rule == "simple_acceptance_by_ratio" and u:
        if lower is None or upper is None or (upper - lower) / (4 * u) < at_least:
            return NOT_PROVEN, p
    return simple, p


def finish(name, given, source="by the definitions of the rules; normal probabilities by mpmath at 40 digits"):
    head, text = given.split("|")
    rule, at_least = head.split(";")
    found = [judged(rule, F(at_least), *map(optional, t.split(";"))) for t in text.split("/")]
    asked = [finding for finding, _ in found if finding != NO_LIMIT]
    pairs = [("is_met", bool(asked) and all(f == IN for f in asked))]
    for parameter, (finding, p) in zip(PARAMETERS, found, strict=True):
        pairs += [(f"{parameter}.finding", finding), (f"{parameter}.probability_of_conformity", p)]
    return row(name, "finish", given, named_list(pairs), source)


def finishes():
    nothing = "none;none;none;none"
    values = "0.22;none;none;0.3/0.9;none;0.5;1.2/1.8;none;1;2.5/8;none;none;10/80;none;75;none/45;none;40;60"
    yield finish("all_in", f"simple_acceptance;0|{values}")
    yield finish("by_value_alone", f"proven;0.95|{values}")
    yield finish("one_out", "simple_acceptance;0|" + values.replace("0.22", "0.32"))
    yield finish("at_the_limit", f"proven;0|0.5;none;none;0.5/{nothing}/{nothing}/{nothing}/{nothing}/{nothing}")
    yield finish("nothing_given", "proven;0|" + "/".join([nothing] * 6))
    yield finish("not_given", f"proven;0|none;none;none;0.3/{nothing}/{nothing}/{nothing}/{nothing}/45;2;40;60")
    doubtful = "0.28;0.02;none;0.3/0.9;0.05;0.5;1.2/1.05;0.1;1;2.5/8;0.5;none;10/74;0.4;75;none/62;3;40;60"
    for rule, at_least in (("simple_acceptance", 0), ("proven", 0), ("conformance_probability", 0.8), ("expanded_guard_band", 0), ("simple_acceptance_by_ratio", 3)):
        yield finish(f"doubtful_by_{rule}", f"{rule};{at_least}|{doubtful}")
    yield finish("known_exactly", f"proven;0|0.28;0;none;0.3/{nothing}/0.9;0;1;2.5/{nothing}/{nothing}/{nothing}")

    def bad(name, given, error):
        return row(name, "finish", given, f"error:{error}", "refused")

    rest = "/".join([nothing] * 5)
    yield bad("microinches", f"proven;0|44;none;none;0.3/{rest}", "out_of_range rpk_um/value")
    yield bad("finish_uncertainty", f"proven;0|0.2;nan;none;0.3/{rest}", "not_finite rpk_um/standard_uncertainty")
    yield bad("finish_limits", f"proven;0|0.2;none;0.4;0.3/{rest}", "out_of_order rpk_um/upper")
    yield bad("lower_nan", f"proven;0|{nothing}/1;none;nan;2/{nothing}/{nothing}/{nothing}/{nothing}", "not_finite rk_um/lower")
    yield bad("upper_inf", f"proven;0|{nothing}/{nothing}/1;none;none;inf/{nothing}/{nothing}/{nothing}", "not_finite rvk_um/upper")
    yield bad("ratio_above_all", f"proven;0|{nothing}/{nothing}/{nothing}/101;none;none;10/{nothing}/{nothing}", "out_of_range mr1_percent/value")
    yield bad("ratios_exchanged", f"proven;0|{nothing}/{nothing}/{nothing}/80;none;none;none/8;none;none;none/{nothing}", "out_of_order mr2_percent/value")
    yield bad("angle", f"proven;0|{rest}/200;none;40;60", "out_of_range crosshatch_deg/value")
    yield bad("probability", f"conformance_probability;0.2|{values}", "out_of_range at_least")


# oversizes

ONE_STEP, STEP_BY_BORE, STEP_AND_SLEEVES, SLEEVES_ALONE = 1, 2, 3, 4
LEAVE = 3


def ratio(chamber, bore):
    """Compression ratio; the gasket is at least as wide as the bore."""
    _, stroke, head, gasket_bore, gasket_mm, deck, crown, crevice = map(exact, chamber)
    area = lambda d: mpmath.pi * d**2 / 4000  # noqa: E731
    left = head + area(max(gasket_bore, exact(bore))) * gasket_mm + area(exact(bore)) * deck + crown + crevice
    return (area(exact(bore)) * stroke + left) / left


def oversize(name, given, source="every way by exact fractions"):
    head, bore_text, step_text = given.split("|")
    nominal, gasket_, sleeve, boring, guard, gap, *chamber = map(optional, head.split(";"))
    bores = [[optional(n) for n in text.split(";")] for text in bore_text.split("/")]
    steps = [[optional(n) for n in text.split(";")] for text in step_text.split("/")]
    sizes = [nominal + s[0] for s in steps]

    def serves(bore, step):
        clean, u, wall, *_ = bore
        return clean + guard * u <= sizes[step] and (wall is None or wall >= sizes[step])

    def held(step):
        return gasket_ is None or gasket_ >= sizes[step]

    ways = []
    for k in range(len(steps)):
        plain = [(1, k)] * len(bores)
        ways.append((ONE_STEP, plain, held(k) and all(serves(b, k) for b in bores)))
        if sleeve is not None and not all(serves(b, k) for b in bores):
            actions = [(1 if serves(b, k) else 2, k) for b in bores]
            ways.append((STEP_AND_SLEEVES, actions, held(k) and all(serves(b, k) or b[3] for b in bores)))
    own = [next((k for k in range(len(steps)) if serves(b, k) and held(k)), None) for b in bores]
    ways.append((STEP_BY_BORE, [(1, len(steps) - 1 if k is None else k) for k in own], None not in own))
    stays = [b[4] == 1 for b in bores]
    if sleeve is not None and steps[0][0] == 0 and any(stays) and not all(stays):
        ways.append((SLEEVES_ALONE, [(LEAVE if s else 2, 0) for s in stays], held(0) and all(s or b[3] for s, b in zip(stays, bores))))
    ranked = []
    for way, actions, can in ways:
        used = [k for a, k in actions if a != LEAVE]
        can = can and all(s[2] is None or used.count(k) <= s[2] for k, s in enumerate(steps))
        price = sum((boring + steps[k][1] + (sleeve if a == 2 else 0) for a, k in actions if a != LEAVE), F(0))
        ranked.append((not can, price, len(set(used)), sum(sizes[k] for k in used), way, actions))
    ranked.sort(key=lambda r: r[:4])
    pairs = [("choices", len(ranked))]
    for k, (cannot, price, _, _, way, actions) in enumerate(ranked):
        if ranked[k][:4] in (r[:4] for j, r in enumerate(ranked) if j != k):
            continue  # of ways that tie the order is not stated
        pairs += [(f"{k}.way", way), (f"{k}.price", price), (f"{k}.is_ruled_out", cannot)]
        for j, (action, step) in enumerate(actions):
            pairs += [(f"{k}.{j}.action", action), (f"{k}.{j}.step", step)]
    for k, size in enumerate(sizes):
        pairs += [(f"step.{k}.bore_mm", size), (f"step.{k}.more_mass_g", steps[k][3])]
        pairs.append((f"step.{k}.ring_gap_mm", None if gap is None else exact(gap) + mpmath.pi * exact(size - nominal)))
        pairs.append((f"step.{k}.compression_ratio", ratio(chamber, size) if chamber else None))
    return row(name, "oversizes", given, named_list(pairs, "1e-9"), source)


def oversize_rows():
    chamber = "86;86;45;87;1;0.1;2;0.5"
    yield oversize("worn_block", "86;86.9;150;40;2;0.3|86.2;0.004;none;0;0/86.245;0.004;none;1;0/86.4;0.004;86.45;1;0|0.25;50;none;5/0.5;55;2;10/1;70;none;20")
    yield oversize("with_a_chamber", f"86;none;none;30;2;none;{chamber}|86.21;0.005;none;0;0/86.3;0.005;none;0;0|0.25;60;none;none/0.5;62;none;none/1.5;65;none;none")
    yield oversize("few_pistons", "100;none;200;45;1.65;0.4|100.1;0.01;none;1;0/100.2;0.01;none;1;0/100.3;0.01;100.6;1;0/100.6;0.01;none;1;0|0.25;80;3;none/0.5;85;2;none/1;90;4;none")
    yield oversize("nothing_serves", "86;none;none;40;2;none|87.2;0.01;none;0;0/86.1;0.01;none;0;0|0.5;50;none;none/1;52;none;none")

    yield oversize("one_sleeve", "84;none;165;55;1.65;none|84.06;0.005;none;1;1/84.15;0.005;none;1;0/84.065;0.005;none;0;1|0;71;4;0/0.5;76;none;8")
    yield oversize("no_sleeve_allowed", "84;none;165;55;1.65;none|84.06;0.005;none;1;1/84.15;0.005;none;0;0|0;71;none;none/0.5;76;none;none")

    def reasons(name, given, expected, source):
        return row(name, "oversizes", given, expected, source)

    yield reasons(
        "reasons",
        "86;86.7;none;40;2;none|86.5;0.005;none;0;0/86.2;0.005;86.6;0;0|0.25;50;1;none/1;52;none;none",
        "choices=3~0;0.is_ruled_out=1~0;0.price=180~1e-9;0.way=1~0;0.ruled_out.0.reason=1~0;0.ruled_out.0.place=0~0;0.ruled_out.0.value_mm=86.51~1e-9;"
        "0.ruled_out.1.reason=4~0;0.ruled_out.1.place=0~0;0.ruled_out.1.value_mm=none;0.ruled_out.1.needed=2~0;0.ruled_out.1.available=1~0;"
        "2.way=1~0;2.ruled_out.0.reason=3~0;2.ruled_out.0.value_mm=86.7~1e-9;2.ruled_out.1.reason=2~0;2.ruled_out.1.place=1~0;2.ruled_out.1.value_mm=86.6~1e-9",
        "by hand: 86.5 + 2 x 0.005 is above 86.25; two pistons of one; 87 above the gasket and the wall",
    )
    yield reasons(
        "may_take_no_sleeve",
        "86;none;150;40;2;none|86.5;0.005;none;0;0/86.2;0.005;none;0;0|0.25;50;none;none",
        "choices=3~0;2.way=3~0;2.price=330~1e-9;2.0.action=2~0;2.1.action=1~0;2.ruled_out.0.reason=5~0;2.ruled_out.0.place=0~0",
        "by hand: 2 (40 + 50) + 150; the first bore may take none",
    )

    def bad(name, given, error):
        return row(name, "oversizes", given, f"error:{error}", "refused")

    good = "86.2;0.004;none;0;0|0.25;50;none;none"
    yield bad("nominal_nan", f"nan;none;none;40;2;none|{good}", "not_finite nominal_mm")
    yield bad("price_below_zero", f"86;none;none;-1;2;none|{good}", "out_of_range boring_price")
    yield bad("steps_fall", "86;none;none;40;2;none|86.2;0.004;none;0;0|0.5;50;none;none/0.25;50;none;none", "out_of_order steps/1/oversize_mm")
    yield bad("clean_up_in_inches", "86;none;none;40;2;none|3.4;0.004;none;0;0|0.5;50;none;none", "out_of_range bores/0/clean_up_mm")
    yield bad("nothing_left_above", "86;none;none;40;2;none;86;86;0;87;1;0;-100;0|86.2;0.004;none;0;0|0.5;50;none;none", "contradiction chamber/crown_cm3")


HEAD = """# What is done before assembly. Columns and rules: README.md beside this file. Written by reference/assembly.py.
id,function,given,expected,source
"""

if __name__ == "__main__":
    rows = [*rings(), *liners(), *gaskets(), *masses(), *finishes(), *oversize_rows()]
    content = HEAD + "".join(f"{r}\n" for r in rows)
    file = VECTORS / "assembly.csv"
    if "--check" in sys.argv:
        compare.check(file, content)
    else:
        file.write_text(content, encoding="utf-8")
