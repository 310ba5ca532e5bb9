"""Rings, pins, liners and the deck, at 40 digits, and the rows of tests/vectors/parts.csv.

Formulas of core/docs/rings.md, pins.md and deck.md, written here on their own: what the library gets from one compliance of two
tubes is here the elastic solution of each tube (radial displacement at the joint), and the hot gap is arc less arc.
A double is taken as the exact number it is. A result comes with the largest term that its last subtraction or sum has: the rounding
of the library is a few units in the last place of that.
"""

import random

import mpmath

mp = mpmath.mp.clone()
mp.dps = 40
mpf = mp.mpf


def grown(temperature_c, coefficient_per_k):
    return 1 + mpf(coefficient_per_k) * (mpf(temperature_c) - 20)


# ------------------------------------------------------------------------------------------------------------------------- rings


def ring_gap_in_bore_mm(gap, gauge, bore):
    """The free arc of the closed ring keeps its length: circumference less gap."""
    arc = mp.pi * mpf(gauge) - mpf(gap)
    return {"result": (mp.pi * mpf(bore) - arc, mp.pi * bore)}


def ring_hot_gap(gap, bore, bore_c, bore_a, ring_c, ring_a):
    """Hot circumference of the bore less the hot arc of the ring."""
    around = mp.pi * mpf(bore)
    arc = (around - mpf(gap)) * grown(ring_c, ring_a)
    hot = around * grown(bore_c, bore_a) - arc
    first = mpf(gap) + around * ((grown(bore_c, bore_a) - 1) - (grown(ring_c, ring_a) - 1))
    return {"gap_mm": (hot, around), "first_order_mm": (first, around), "butts": (mpf(hot < 0), 0)}


def ring_least_cold_gap_mm(least, bore, bore_c, bore_a, ring_c, ring_a):
    """Cold circumference less the cold arc of the longest ring that leaves the gap hot."""
    around = mp.pi * mpf(bore)
    arc = (around * grown(bore_c, bore_a) - mpf(least)) / grown(ring_c, ring_a)
    return {"result": (around - arc, around)}


def ring_side_clearance_mm(groove, ring):
    return {"result": (mpf(groove) - mpf(ring), groove)}


def ring_back_clearance_mm(bore, root, thickness):
    return {"result": (mpf(bore) / 2 - mpf(root) / 2 - mpf(thickness), bore)}


def ring_groove_wear_mm(groove, new):
    return {"result": (mpf(groove) - mpf(new), groove)}


def keystone_groove_width_mm(over_pins, pin, included_deg, at):
    """Width of a V at a radius: twice the distance of its flanks' apex, times the tangent of half the angle."""
    half = mpf(included_deg) / 360 * mp.pi
    centre = (mpf(over_pins) - mpf(pin)) / 2
    apex = centre - mpf(pin) / 2 / mp.sin(half)
    return {"result": (2 * (mpf(at) / 2 - apex) * mp.tan(half), over_pins)}


def ring_gap_by_factor_mm(bore, per_mille):
    return {"result": (mpf(bore) * mpf(per_mille) / 1000, bore * per_mille / 1000)}


def ring_conformable_amplitude_mm(order, force, bore, thickness, width, modulus):
    """Thin ring: load of bending per length EI (n^2 - 1)^2 U / r^4 against the load of its tension per length F / r."""
    r = (mpf(bore) - mpf(thickness)) / 2
    inertia = mpf(width) * mpf(thickness) ** 3 / 12
    n = mpf(order)
    amplitude = (mpf(force) / r) * r**4 / (mpf(modulus) * inertia * (n * n - 1) ** 2)
    return {"result": (amplitude, amplitude)}


# -------------------------------------------------------------------------------------------------------------------------- pins


def pin_clearance(hole, hole_c, hole_a, pin, pin_c, pin_a):
    hot = mpf(hole) * grown(hole_c, hole_a) - mpf(pin) * grown(pin_c, pin_a)
    return {"cold_mm": (mpf(hole) - mpf(pin), hole), "hot_mm": (hot, hole)}


def tube(inside, outside, p_inside, p_outside, r, e, nu):
    """Lame's solution of a free tube: radial displacement and hoop stress at radius r."""
    a, b = mpf(inside) / 2, mpf(outside) / 2
    p, q = mpf(p_inside), mpf(p_outside)
    even = (p * a**2 - q * b**2) / (b**2 - a**2)
    odd = (p - q) * a**2 * b**2 / (b**2 - a**2)
    hoop = even + odd / r**2
    radial = even - odd / r**2
    return r * (hoop - nu * radial) / e, hoop


def joint_pressure(delta, d, d_in, d_out, e_in, nu_in, e_out, nu_out):
    """The pressure at which the two displacements at the joint make up half the interference."""
    r = mpf(d) / 2
    out, _ = tube(d, d_out, 1, 0, r, e_out, nu_out)
    inner, _ = tube(d_in, d, 0, 1, r, e_in, nu_in)
    return max(mpf(0), mpf(delta)) / 2 / (out - inner)


PRESS_FIT = "pin_mm pin_hole_mm eye_mm width_mm interference_least_mm interference_most_mm smoothing_mm friction_least friction_most"
PRESS_FIT = (PRESS_FIT + " pin_modulus_mpa pin_poisson eye_modulus_mpa eye_poisson").split()


def press_fit(*numbers):
    v = {name: mpf(number) for name, number in zip(PRESS_FIT, numbers, strict=True)}
    d, hole, eye = v["pin_mm"], v["pin_hole_mm"], v["eye_mm"]
    elastic = (v["pin_modulus_mpa"], v["pin_poisson"], v["eye_modulus_mpa"], v["eye_poisson"])
    least, most = (
        joint_pressure(v[f"interference_{end}_mm"] - v["smoothing_mm"], d, hole, eye, *elastic) for end in ("least", "most")
    )
    out = {"pressure_least_mpa": least, "pressure_most_mpa": most}
    out["eye_hoop_inside_mpa"] = tube(d, eye, most, 0, d / 2, 1, 0)[1]
    out["eye_hoop_outside_mpa"] = tube(d, eye, most, 0, eye / 2, 1, 0)[1]
    out["pin_hoop_outside_mpa"] = tube(hole, d, 0, most, d / 2, 1, 0)[1]
    # in a solid pin it is the same everywhere
    out["pin_hoop_inside_mpa"] = tube(hole, d, 0, most, hole / 2 if hole else d / 2, 1, 0)[1]
    area = mp.pi * d * v["width_mm"]
    out["force_least_n"], out["force_most_n"] = area * least * v["friction_least"], area * most * v["friction_most"]
    for end in ("least", "most"):
        out[f"torque_{end}_nm"] = out[f"force_{end}_n"] * d / 2 / 1000
    # the interference less the smoothing is a difference of numbers of this size, and loses that much
    lost = v["interference_most_mm"] / (v["interference_most_mm"] - v["smoothing_mm"])
    if least:
        lost = max(lost, v["interference_least_mm"] / (v["interference_least_mm"] - v["smoothing_mm"]))
    # and so does the difference of the squares of a thin wall
    lost *= max(eye**2 / (eye**2 - d**2), d**2 / (d**2 - hole**2))
    return {name: (value, abs(value) * lost) for name, value in out.items()}


def assembly_temperature(diameter, interference, clearance, coefficient):
    rise = (mpf(interference) + mpf(clearance)) / (mpf(coefficient) * mpf(diameter))
    t = 20 + rise
    # shown colours, published: 480, 520 and 575 degrees Fahrenheit
    colour = 1 + sum(t >= (mpf(f) - 32) / mpf("1.8") for f in (480, 520, 575))
    return {"rise_k": (rise, rise), "temperature_c": (t, t), "temper_colour": (mpf(colour), 0)}


def rod_angle_mrad(deviation, base):
    ratio = 1000 * mpf(deviation) / mpf(base)
    return {"result": (ratio, abs(ratio))}


def rod_skew_mm(angle, length):
    skew = mpf(angle) / 1000 * mpf(length)
    return {"result": (skew, abs(skew))}


LINER = "bore_mm measured_in_block seat_mm block_mm interference_mm smoothing_mm liner_modulus_mpa liner_poisson liner_expansion_per_k"
LINER = (LINER + " liner_temperature_c block_modulus_mpa block_poisson block_expansion_per_k block_temperature_c").split()


def liner_in_block(*numbers):
    v = {name: mpf(number) for name, number in zip(LINER, numbers, strict=True)}
    d, bore, block, e = v["seat_mm"], v["bore_mm"], v["block_mm"], v["liner_modulus_mpa"]
    elastic = (e, v["liner_poisson"], v["block_modulus_mpa"], v["block_poisson"])
    cold = v["interference_mm"] - v["smoothing_mm"]
    eps_liner = grown(v["liner_temperature_c"], v["liner_expansion_per_k"]) - 1
    eps_block = grown(v["block_temperature_c"], v["block_expansion_per_k"]) - 1
    hot = cold + d * (eps_liner - eps_block)
    p20, p = (joint_pressure(delta, d, bore, block, *elastic) for delta in (cold, hot))
    per_pressure = 2 * tube(bore, d, 0, 1, bore / 2, e, v["liner_poisson"])[0]
    at_20 = bore if v["measured_in_block"] else bore + p20 * per_pressure
    change = p - p20 if v["measured_in_block"] else p
    # the difference of the squares of a thin wall loses digits
    wall = max(block**2 / (block**2 - d**2), d**2 / (d**2 - bore**2))
    scale = wall * p20 * v["interference_mm"] / cold if cold > 0 else mpf(0)
    terms = v["interference_mm"] + d * (abs(eps_liner) + abs(eps_block))
    out = {
        "pressure_20_mpa": (p20, scale),
        "pressure_mpa": (p, wall * p * terms / hot if hot > 0 else mpf(0)),
        "interference_mm": (hot, terms),
        "bore_20_mm": (at_20, bore),
        "bore_mm": (bore * (1 + eps_liner) + change * per_pressure, bore),
    }
    difference = v["block_expansion_per_k"] - v["liner_expansion_per_k"]
    lost = 20 + cold / (d * difference) if difference and cold > 0 else None
    given = lost is not None and -40 <= lost <= 450
    # the difference of the coefficients loses digits
    loss = max(v["block_expansion_per_k"], v["liner_expansion_per_k"]) / abs(difference) if difference else 1
    out["contact_lost_at_c"] = (lost, (20 + abs(lost - 20) * loss * v["interference_mm"] / cold)) if given else None
    return out


# -------------------------------------------------------------------------------------------------------------------------- deck


def deck(block, stroke, rod, compression_height, gasket):
    top = mpf(stroke) / 2 + mpf(rod) + mpf(compression_height)
    below = mpf(block) - top
    return {
        "deck_clearance_mm": (below, block),
        "protrusion_mm": (-below, block),
        "squish_mm": (below + mpf(gasket), block),
    }


def cylinder_cm3(diameter, height):
    return mp.pi * (mpf(diameter) / 2) ** 2 * mpf(height) / 1000


def top_land_crevice_cm3(bore, land, height):
    volume = cylinder_cm3(bore, height) - cylinder_cm3(land, height)
    # the library takes the difference of the diameters first
    return {"result": (volume, volume * bore / (mpf(bore) - mpf(land)) if bore != land else mpf(0))}


def compression_ratio(bore, stroke, head, gasket_bore, gasket, deck_clearance, crown, crevice):
    swept = cylinder_cm3(bore, stroke)
    in_gasket, in_deck = cylinder_cm3(gasket_bore, gasket), cylinder_cm3(bore, deck_clearance)
    parts = [mpf(head), in_gasket, in_deck, mpf(crown), mpf(crevice)]
    clearance, terms = sum(parts), sum(map(abs, parts))
    ratio = (swept + clearance) / clearance
    return {
        "swept_cm3": (swept, swept),
        "gasket_cm3": (in_gasket, in_gasket),
        "deck_cm3": (in_deck, abs(in_deck)),
        "clearance_cm3": (clearance, terms),
        "ratio": (ratio, ratio * terms / clearance),
    }


def gasket_band(projections, bands, step):
    """The careful band of the largest projection: where one ends and the next begins, the thicker."""
    largest = max(projections)
    index = 0
    for k in range(1, len(bands)):
        if largest >= bands[k][0] or largest > bands[k - 1][1]:
            index = k
    thickness = mpf(bands[index][2])
    return {
        "band": (mpf(index), 0),
        # taken over as they are: a written number is a double to one rounding, an eighth of eight
        "largest_mm": (mpf(largest), mpf(largest) / 8),
        "thickness_mm": (thickness, thickness / 8),
        "squish_mm": (thickness - mpf(largest), thickness),
    }


# ------------------------------------------------------------------------------------------------------------------------- crank


def pin_height(radius, rod, offset, angle):
    """Height of the pin above the crankshaft's centre, on its path beside it: the upper point of the path that is a rod's length
    away from the crank pin, as the larger root of the quadratic for its distance."""
    x, y = radius * mp.sin(angle), radius * mp.cos(angle)
    across = x + offset
    return max(mp.polyroots([1, -2 * y, y * y + across * across - rod * rod], maxsteps=200, extraprec=200), key=mp.re).real


def dead_centres(radius, rod, offset):
    """Where rod and crank lie in one line, and over each other."""
    r, l, o = mpf(radius), mpf(rod), mpf(offset)
    top, bottom = -mp.asin(o / (l + r)), mp.pi - mp.asin(o / (l - r))
    stroke = mp.cos(top) * (l + r) + mp.cos(bottom) * (l - r)
    return {
        "stroke_mm": (stroke, 2 * r),
        "top_deg": (mp.degrees(top), mp.degrees(top)),
        "bottom_deg": (mp.degrees(bottom), mpf(180)),
    }


def travel_at(radius, rod, offset, angle):
    return mp.cos(mp.asin(offset / (rod + radius))) * (rod + radius) - pin_height(radius, rod, offset, angle)


def piston_travel(radius, rod, offset, angle_deg):
    r, l, o, f = mpf(radius), mpf(rod), mpf(offset), mp.radians(mpf(angle_deg))
    slope = mp.diff(lambda x: travel_at(r, l, o, x), f, h=mpf(10) ** -15) * mp.pi / 180
    return {"travel_mm": (travel_at(r, l, o, f), l + r), "per_degree_mm": (mp.chop(slope, mpf(10) ** -20), r / 20)}


def crank_angles_at(radius, rod, offset, travel):
    """The roots of the travel on both sides of top dead centre, by halving."""
    r, l, o, s = mpf(radius), mpf(rod), mpf(offset), mpf(travel)
    top, bottom = -mp.asin(o / (l + r)), mp.pi - mp.asin(o / (l - r))

    def root(high, low):
        for _ in range(120):
            middle = (high + low) / 2
            high, low = (middle, low) if travel_at(r, l, o, middle) < s else (high, middle)
        return mp.degrees((high + low) / 2)

    return {"before_deg": (root(top, bottom - 2 * mp.pi), mpf(360)), "after_deg": (root(top, bottom), mpf(360))}


def depth_in_bore_mm(deck_clearance, crown, place, travel):
    return {"result": (mpf(deck_clearance) + mpf(crown) - mpf(place) + mpf(travel), mpf(crown) + mpf(travel))}


# ----------------------------------------------------------------------------------------------------------------------- section


def least_clearance_of_section(mean, cos, sin):
    """By the roots of a companion polynomial: in `z = exp(i t)` the derivative of a section times `z^n` is a polynomial of degree 2n, and
    the angles of the roots on the unit circle are where it is level."""
    a, b = [mpf(x) for x in cos], [mpf(x) for x in sin]
    n = max(k + 1 for k in range(len(a)) if a[k] or b[k])
    # cos kt = (z^k + z^-k) / 2, sin kt = (z^k - z^-k) / 2i
    waves = [(k + 1) * mp.mpc(b[k], a[k]) / 2 for k in range(n)]
    high = [waves[k] for k in reversed(range(n))]
    roots = mp.polyroots([*high, 0, *[mp.conj(w) for w in waves]], maxsteps=2000, extraprec=400)

    def value(t):
        return mpf(mean) + mp.fsum(a[k] * mp.cos((k + 1) * t) + b[k] * mp.sin((k + 1) * t) for k in range(n))

    def bend(t):
        return -mp.fsum((k + 1) ** 2 * (a[k] * mp.cos((k + 1) * t) + b[k] * mp.sin((k + 1) * t)) for k in range(n))

    level = [(value(t), t) for t in (mp.arg(z) % (2 * mp.pi) for z in roots if abs(abs(z) - 1) < mpf(10) ** -9)]
    lowest = min(level)[0]
    size = abs(mpf(mean)) + mp.fsum(abs(x) for x in a + b)
    out = {"least_mm": (lowest, size)}
    # where another is as low to rounding the angle is a matter of taste
    near = [t for v, t in level if v < lowest + size * mpf(10) ** -12]
    if len(near) == 1:
        curve = mp.fsum((k + 1) ** 2 * (abs(a[k]) + abs(b[k])) for k in range(n)) / bend(near[0])
        if curve < 1000:
            out["angle_deg"] = (mp.degrees(near[0]), 360 * curve)
    return out


# -------------------------------------------------------------------------------------------------------------------------- rows

HEADING = """\
# Rings, pins, liners and the deck. Columns and rules: README.md beside this file. Written by reference/make_vectors.py from
# reference/parts.py (mpmath, 40 digits); a value that another source prints is held against it.
id,function,arguments,expected,source
"""
CLOSED = "closed form at 40 digits by reference/parts.py"

STEEL = "205000 0.29 205000 0.29"
IRON_IN_ALUMINIUM = "110000 0.26 11.4e-6 {} 72000 0.33 20.5e-6 {}"

# id, function, arguments, and where other sources print a value: name=value~tolerance ..., source
ROWS = [
    # CHECKS.md 11.3: the change of a gap is pi times that of the diameter; from a gap of 0.3 in a gauge of 86
    ("gap_thou", "ring_gap_in_bore_mm", "0.3 86 86.0254", "result=0.3797965~5e-8 pi 0.0254 is 0.0797965 by hand"),
    ("gap_tenth", "ring_gap_in_bore_mm", "0.3 86 86.1", "result=0.6141593~5e-8 pi 0.1 by hand"),
    ("gap_quarter", "ring_gap_in_bore_mm", "0.3 86 86.25", "result=1.0853982~5e-8 pi 0.25 by hand"),
    ("gap_half", "ring_gap_in_bore_mm", "0.3 86 86.5", "result=1.8707963~5e-8 pi 0.5 by hand"),
    ("gap_table", "ring_gap_in_bore_mm", "0.4 100 100.03", "result=0.4942~5e-5 pi 0.03 is 0.0942; printed tables round it to 0.08"),
    ("gap_in_smaller_bore", "ring_gap_in_bore_mm", "0.1 86 85.9", "result=-0.2141593~5e-8 the ends overlap: a fault of the fit; by hand"),
    ("gap_same", "ring_gap_in_bore_mm", "0.35 86 86", "result=0.35~1e-15 the same bore: the same gap"),
    # CHECKS.md 11.4, in both forms
    ("hot_both_forms", "ring_hot_gap", "0.35 86 150 11e-6 250 11.5e-6", "gap_mm=0.02266073363~5e-12 first_order_mm=0.0217350~5e-8 butts=0~0 by hand: 0.35 - pi 86 0.001215 = 0.02173498363 and the exact form adds 0.35 0.002645"),
    # TRADE.md 6.3
    ("hot_steady", "ring_hot_gap", "0.4 100 160 11.4e-6 200 11.4e-6", "first_order_mm=0.26~5e-3 butts=0~0 worked by hand to 0.01 mm: +0.645 of the ring and +0.501 of the bore"),
    ("hot_sudden", "ring_hot_gap", "0.4 100 90 11.4e-6 230 11.4e-6", "gap_mm=-0.10~5e-3 butts=1~0 worked by hand to 0.01 mm: butting"),
    ("hot_sudden_wide", "ring_hot_gap", "0.55 100 90 11.4e-6 230 11.4e-6", "butts=0~0 5.5 per mille passes where 4.0 butts"),
    ("hot_steel", "ring_hot_gap", "0.5 100 150 11.4e-6 260 12e-6", "gap_mm=0.06~5e-3 butts=0~0 worked by hand to 0.01 mm: a steel ring in an iron bore"),
    ("hot_at_reference", "ring_hot_gap", "0.35 86 20 11e-6 20 11.5e-6", "gap_mm=0.35~1e-13 first_order_mm=0.35~0 at 20 C nothing grows"),
    ("hot_opens", "ring_hot_gap", "0.3 86 120 20.5e-6 180 12e-6", None),
    ("least_steady", "ring_least_cold_gap_mm", "0.1 100 160 11.4e-6 200 11.4e-6", None),
    ("least_sudden", "ring_least_cold_gap_mm", "0.05 100 90 11.4e-6 230 11.4e-6", None),
    ("least_touching", "ring_least_cold_gap_mm", "0 100 90 11.4e-6 230 11.4e-6", None),
    ("least_at_reference", "ring_least_cold_gap_mm", "0.2 86 20 11e-6 20 11.5e-6", "result=0.2~1e-13 at 20 C nothing grows"),
    ("least_opens", "ring_least_cold_gap_mm", "0.05 86 120 20.5e-6 150 12e-6", "result=-0.0824~2e-4 below zero: the bore opens more than the ring; by hand to first order 0.05 + pi 86 (0.00156 - 0.00205)"),
    ("side", "ring_side_clearance_mm", "1.54 1.475", "result=0.065~1e-15 difference by hand"),
    ("side_tight", "ring_side_clearance_mm", "1.2 1.21", "result=-0.01~1e-15 the ring does not enter; difference by hand"),
    ("back", "ring_back_clearance_mm", "86 78.6 3.3", "result=0.4~1e-13 (86 - 78.6) / 2 - 3.3 by hand"),
    ("groove_wear", "ring_groove_wear_mm", "1.58 1.52", "result=0.06~1e-15 difference by hand"),
    ("groove_unworn", "ring_groove_wear_mm", "1.52 1.52", "result=0~0 difference by hand"),
    ("keystone_60", "keystone_groove_width_mm", "90 2 30 90", "result=2.606451~5e-7 by hand: pins of 2 in a V of 30 degrees; 2 tan 15 + 2 / cos 15"),
    ("keystone_15", "keystone_groove_width_mm", "104.2 2.5 15 102", None),
    ("keystone_6", "keystone_groove_width_mm", "131.05 3 6 128", None),
    ("factor_street", "ring_gap_by_factor_mm", "86 4.5", "result=0.387~1e-15 86 4.5 / 1000 by hand"),
    ("factor_least", "ring_gap_by_factor_mm", "101.6 3.5", "result=0.3556~5e-5 0.0035 in per inch on 4 in is 0.014 in"),
    ("conform_2", "ring_conformable_amplitude_mm", "2 20 86 3.3 1.5 160000", None),
    ("conform_4", "ring_conformable_amplitude_mm", "4 20 86 3.3 1.5 160000", None),
    ("conform_10", "ring_conformable_amplitude_mm", "10 45 130 4.5 2.5 210000", None),
    # pins
    ("pin_free", "pin_clearance", "22.008 20 20.5e-6 22 20 11.7e-6", "cold_mm=0.008~1e-14 hot_mm=0.008~1e-14 at 20 C nothing grows"),
    ("pin_heated_piston", "pin_clearance", "22 80 20.5e-6 22 20 11.7e-6", "cold_mm=0~0 hot_mm=0.027~5e-4 60 K open a pin bore of 22 by 27 um"),
    ("pin_boss_hot", "pin_clearance", "22.005 160 20.5e-6 22 140 11.7e-6", None),
    ("pin_bush_hot", "pin_clearance", "24.015 130 18e-6 24 150 11.7e-6", None),
    ("pin_cold_start", "pin_clearance", "22.003 -20 20.5e-6 22 -20 11.7e-6", None),
    # CHECKS.md 8.6, 8.1 and 8.4
    ("press_held", "press_fit", f"22 12 30 24 0.03 0.03 0 0.12 0.12 {STEEL}", "pressure_least_mpa=54.029075~5e-7 force_least_n=10754.56~5e-3 torque_least_nm=118.300~5e-4 closed form by hand"),
    ("press_compound_tube", "press_fit", "40 20 60 24 0.0317106404 0.0317106404 0 0.12 0.12 207000 0.3 207000 0.3", "pressure_most_mpa=38.4615~5e-5 eye_hoop_inside_mpa=100~1e-6 published example of a compound tube: 100 MPa in the jacket at a pressure of 38.4615 and a jacket bore of 39.968289"),
    ("press_solid_inch", "press_fit", "50.8 0 101.6 24 0.0508 0.0508 0 0.12 0.12 206842.71879504 0.28 206842.71879504 0.28", "pressure_most_mpa=77.5660195~5e-7 11250 psi: E delta / (2 d) (1 - d2 / D2) with 30 Mpsi"),
    ("press_solid_inch_other_ratio", "press_fit", "50.8 0 101.6 24 0.0508 0.0508 0 0.12 0.12 206842.71879504 0.33 206842.71879504 0.33", "pressure_most_mpa=77.5660195~5e-7 the same: Poisson's ratio of one material cancels against a solid pin"),
    ("press_trade", "press_fit", "22 13 36 20 0.025 0.025 0 0.12 0.12 206000 0.3 206000 0.3", "pressure_most_mpa=55~0.5 force_most_n=9000~500 common practice worked by hand to two digits"),
    ("press_range", "press_fit", f"22 12 36 20 0.016 0.036 0.004 0.1 0.16 {STEEL}", None),
    ("press_all_smoothed", "press_fit", f"22 12 36 20 0.005 0.03 0.006 0.1 0.16 {STEEL}", "pressure_least_mpa=0~0 force_least_n=0~0 torque_least_nm=0~0 the smoothing takes the whole least interference"),
    ("press_aluminium_eye", "press_fit", "18 10 30 18 0.02 0.03 0.003 0.08 0.15 205000 0.29 72000 0.33", None),
    # CHECKS.md 8.7 and TRADE.md 7.2
    ("heat", "assembly_temperature", "22 0.03 0.02 11.7e-6", "rise_k=194.2502~5e-5 temperature_c=214.2502~5e-5 temper_colour=1~0 by hand"),
    ("heat_trade", "assembly_temperature", "22 0.03 0.02 12e-6", "rise_k=189~0.5 temper_colour=1~0 common practice worked by hand"),
    ("heat_trade_tight", "assembly_temperature", "22 0.04 0.02 12e-6", "rise_k=227~0.5 temperature_c=247~0.5 temper_colour=1~0 common practice worked by hand"),
    ("heat_straw", "assembly_temperature", "22 0.042 0.02 12e-6", "temper_colour=2~0 255 C lies above 480 F and below 520 F"),
    ("heat_purple", "assembly_temperature", "22 0.05 0.02 12e-6", "temper_colour=3~0 285 C lies above 520 F and below 575 F"),
    ("heat_blue", "assembly_temperature", "22 0.06 0.02 12e-6", "temper_colour=4~0 323 C lies above 575 F"),
    ("heat_past_all_reason", "assembly_temperature", "10 0.1 0.05 12e-6", "temperature_c=1270~1e-9 a fault of the fit and not of the call; by hand"),
    # TRADE.md 8
    ("bend_100", "rod_angle_mrad", "0.05 100", "result=0.5~1e-15 0.05 in 100 by hand"),
    ("bend_25", "rod_angle_mrad", "0.038 25", "result=1.52~1e-15 0.038 in 25 by hand; printed as 1.5"),
    ("bend_inch", "rod_angle_mrad", "0.0127 25.4", "result=0.5~1e-15 0.0005 in per in: no unit is left"),
    ("bend_150", "rod_angle_mrad", "0.04 150", None),
    ("bend_straight", "rod_angle_mrad", "0 100", "result=0~0 straight"),
    ("bend_other_way", "rod_angle_mrad", "-0.05 100", "result=-0.5~1e-15 the other way"),
    ("skew", "rod_skew_mm", "0.5 60", "result=0.03~1e-15 0.5 mrad over 60 by hand"),
    # DESIGN.md 5
    ("liner_slip_free", "liner_in_block", "86 0 91 104 0 0 " + IRON_IN_ALUMINIUM.format(120, 110), "pressure_mpa=0~0 bore_mm=86.09804~1e-12 no interference: free growth 86 11.4e-6 100"),
    ("liner_equal_20", "liner_in_block", "86 0 91 104 0.05 0 110000 0.26 11.4e-6 20 110000 0.26 11.4e-6 20", None),
    ("liner_equal_120", "liner_in_block", "86 0 91 104 0.05 0 110000 0.26 11.4e-6 120 110000 0.26 11.4e-6 120", None),
    ("liner_iron_in_aluminium", "liner_in_block", "86 0 91 104 0.08 0.005 " + IRON_IN_ALUMINIUM.format(120, 110), None),
    ("liner_measured_in_block", "liner_in_block", "86 1 91 104 0.08 0.005 " + IRON_IN_ALUMINIUM.format(120, 110), None),
    ("liner_at_20_in_block", "liner_in_block", "86 1 91 104 0.08 0.005 " + IRON_IN_ALUMINIUM.format(20, 20), "bore_mm=86~1e-13 bore_20_mm=86~0 measured in the block at 20 C: nothing changes"),
    ("liner_loose", "liner_in_block", "86 1 91 104 0.04 0.005 " + IRON_IN_ALUMINIUM.format(110, 110), "pressure_mpa=0~0 contact is lost below 110 C"),
    ("liner_tightens", "liner_in_block", "86 0 91 110 0.03 0 72000 0.33 20.5e-6 110 110000 0.26 11.4e-6 100", None),
    # CHECKS.md 11.2
    ("dead_plain", "dead_centres", "43 143 0", "stroke_mm=86~1e-13 top_deg=0~0 bottom_deg=180~1e-13 without offset the stroke is twice the crank radius"),
    ("dead_offset", "dead_centres", "43 143 1", None),
    ("dead_other_side", "dead_centres", "43 143 -1", None),
    ("dead_beside", "dead_centres", "40 130 12", None),
    ("dead_marine", "dead_centres", "1250 2900 0.5", None),
    ("travel_top", "piston_travel", "43 143 0 0", "travel_mm=0~1e-13 per_degree_mm=0~1e-15 at top dead centre"),
    ("travel_plain", "piston_travel", "43 143 0 60", "travel_mm=26.36179~5e-6 closed form r (1 - cos f) + l - sqrt(l^2 - r^2 sin^2 f) by hand"),
    ("travel_quarter", "piston_travel", "43 143 1 90", "travel_mm=49.934826163148456~1e-12 by hand: sqrt(186^2 - 1) - sqrt(143^2 - 44^2)"),
    ("travel_back", "piston_travel", "43 143 1 -90", "travel_mm=47.97926~5e-6 by hand: sqrt(186^2 - 1) - sqrt(143^2 - 42^2)"),
    ("travel_round", "piston_travel", "43 143 1 450", "travel_mm=49.934826163148456~1e-12 a turn further than 90"),
    ("travel_small", "piston_travel", "43 143 1 0.25", None),
    ("travel_beside", "piston_travel", "40 130 12 137.5", None),
    ("angles_top", "crank_angles_at", "43 143 1 0", None),
    ("angles_small", "crank_angles_at", "43 143 1 0.001", None),
    ("angles_plain", "crank_angles_at", "43 143 0 10", None),
    ("angles_offset", "crank_angles_at", "43 143 1 10", None),
    ("angles_other_side", "crank_angles_at", "40 130 -12 70", None),
    ("depth_gauge_point", "depth_in_bore_mm", "0.4 60 12 10", "result=58.4~1e-13 sum by hand"),
    ("depth_above", "depth_in_bore_mm", "-0.6 60 60 0", "result=-0.6~1e-14 the crown itself"),
    ("deck_identity", "deck", "227 86 143 31 1.2", "deck_clearance_mm=10~1e-13 protrusion_mm=-10~1e-13 squish_mm=11.2~1e-13 by hand"),
    ("deck_flush", "deck", "217 86 143 31 1.2", "deck_clearance_mm=0~0 protrusion_mm=0~0 squish_mm=1.2~0 by hand"),
    ("deck_protrudes", "deck", "216.4 86 143 31 1.3", "protrusion_mm=0.6~1e-13 squish_mm=0.7~1e-13 by hand"),
    ("crevice", "top_land_crevice_cm3", "86 85.4 7", "result=0.566~2e-3 pi D h (D - d) / 2 by hand; the exact ring is 0.35 % smaller"),
    ("crevice_of_nothing", "top_land_crevice_cm3", "86 86 7", "result=0~0 no gap"),
    # TRADE.md 5.5: 86 x 86 at 10.00, bored and planed; swept volume / 9 above the piston
    ("ratio_ten", "compression_ratio", "86 86 48.536003 88 1.0 0.15 0 0.0", None),
    ("ratio_dish", "compression_ratio", "81 77.4 32.5 82 1.2 0.2 6.5 0.4", None),
    ("ratio_dome", "compression_ratio", "96 76 62 98 1.1 -0.1 -9 0", None),
    ("ratio_bowl", "compression_ratio", "79.5 95.5 0 81 1.45 -0.68 27.4 0.3", None),
    ("ratio_trade", "compression_ratio", "86 86 49.697791 86 1.0 0 0 0", "ratio=10.00~5e-4 86 x 86 at 10"),
    ("ratio_trade_bored", "compression_ratio", "86.5 86 49.697791 86 1.0 0 0 0", "ratio=10.10~5e-3 bored 0.5 mm over with the same chamber; common practice worked by hand"),
    ("ratio_trade_planed", "compression_ratio", "86 86 49.697791 86 1.0 -0.1 0 0", "ratio=10.10~5e-3 0.1 mm off the deck; common practice worked by hand"),
]

FIVE = "0.470;0.604;1.30/0.605;0.654;1.35/0.655;0.704;1.40/0.705;0.754;1.45/0.755;0.830;1.50"
SHARED = "0.758;0.813;1.60/0.813;0.859;1.65/0.859;0.914;1.70"
BANDS = [
    ("band_lowest", "0.48;0.51;0.50;0.49", FIVE, "0.001", "thickness_mm=1.3~0 largest_mm=0.51~0 band=0~0 squish_mm=0.79~1e-15 published bands"),
    ("band_largest_decides", "0.48;0.662;0.60;0.61", FIVE, "0.001", "thickness_mm=1.4~0 band=2~0 published bands; the mean would ask for 1.30"),
    ("band_last", "0.83", FIVE, "0.001", "thickness_mm=1.5~0 band=4~0 published bands"),
    ("band_end", "0.604", FIVE, "0.001", "thickness_mm=1.3~0 band=0~0 published bands"),
    ("band_between_prints", "0.6045", FIVE, "0.001", "thickness_mm=1.35~0 band=1~0 above what the first band prints: the thicker"),
    ("band_shared_end", "0.813", SHARED, "0.001", "thickness_mm=1.65~0 band=1~0 published bands that share their ends: the thicker"),
    ("band_shared", "0.80;0.86", SHARED, "0.001", "thickness_mm=1.7~0 band=2~0 published bands"),
    ("band_below_deck", "-0.15;-0.12", "-0.30;-0.101;0.8/-0.100;0.1;1.0", "0.001", "thickness_mm=0.8~0 largest_mm=-0.12~0 squish_mm=0.92~1e-15 by hand"),
]

GUIDE = "ranges and reasons in core/src/bounds.rs"
REFUSED = [
    ("refuse_gap_nan", "ring_gap_in_bore_mm", "nan 86 86", "not_finite gap_mm", "no number"),
    ("refuse_gap_zero", "ring_gap_in_bore_mm", "0 86 86", "out_of_range gap_mm", "a ring without a gap cannot be fitted"),
    ("refuse_gap_inch", "ring_gap_in_bore_mm", "0.014 86 86", "out_of_range gap_mm", GUIDE),
    ("refuse_gauge_zero", "ring_gap_in_bore_mm", "0.3 0 86", "out_of_range gauge_mm", GUIDE),
    ("refuse_gap_bore", "ring_gap_in_bore_mm", "0.3 86 -86", "out_of_range bore_mm", GUIDE),
    ("refuse_gap_other_bore", "ring_gap_in_bore_mm", "0.3 86 98", "contradiction gauge_mm", "the ring would not be of this bore"),
    ("refuse_hot_fahrenheit", "ring_hot_gap", "0.35 86 150 11e-6 500 11.5e-6", "out_of_range ring_temperature_c", GUIDE),
    ("refuse_hot_coefficient", "ring_hot_gap", "0.35 86 150 11 250 11.5e-6", "out_of_range bore_expansion_per_k", GUIDE),
    ("refuse_hot_infinite", "ring_hot_gap", "inf 86 150 11e-6 250 11.5e-6", "not_finite gap_mm", "no number"),
    ("refuse_least_negative", "ring_least_cold_gap_mm", "-0.1 86 150 11e-6 250 11.5e-6", "out_of_range least_hot_gap_mm", GUIDE),
    ("refuse_side_zero", "ring_side_clearance_mm", "0 1.5", "out_of_range groove_width_mm", GUIDE),
    ("refuse_side_other_ring", "ring_side_clearance_mm", "2.5 1.5", "out_of_range groove_width_mm", "more than 0.5 mm of side clearance is another ring"),
    ("refuse_back_root", "ring_back_clearance_mm", "86 90 3.3", "out_of_order groove_root_mm", "the root lies below the bore"),
    ("refuse_back_zero", "ring_back_clearance_mm", "86 78 0", "out_of_range ring_thickness_mm", GUIDE),
    ("refuse_wear_nan", "ring_groove_wear_mm", "1.5 nan", "not_finite new_groove_width_mm", "no number"),
    ("refuse_keystone_angle", "keystone_groove_width_mm", "90 2 0 90", "out_of_range included_angle_deg", GUIDE),
    ("refuse_keystone_pin", "keystone_groove_width_mm", "90 0 15 90", "out_of_range pin_mm", GUIDE),
    ("refuse_keystone_closed", "keystone_groove_width_mm", "104.2 2.5 15 60", "contradiction at_diameter_mm", "below the apex there is no groove"),
    ("refuse_factor_per_inch", "ring_gap_by_factor_mm", "86 0.0045", "out_of_range per_mille", "per inch is no per mille"),
    ("refuse_factor_rail", "ring_gap_by_factor_mm", "86 15", "out_of_range per_mille", "an absolute 0.015 in misprinted as a factor"),
    ("refuse_order_one", "ring_conformable_amplitude_mm", "1 20 86 3.3 1.5 160000", "out_of_range order", "order 1 is a shift and no shape"),
    ("refuse_order_51", "ring_conformable_amplitude_mm", "51 20 86 3.3 1.5 160000", "out_of_range order", "roughness and no shape"),
    ("refuse_modulus_gpa", "ring_conformable_amplitude_mm", "2 20 86 3.3 1.5 160", "out_of_range modulus_mpa", "GPa entered as MPa"),
    ("refuse_ring_thicker_than_bore", "ring_conformable_amplitude_mm", "2 20 20 30 1.5 160000", "out_of_order ring_thickness_mm", "a ring fits its bore"),
    ("refuse_pin_nan", "pin_clearance", "22 20 20e-6 nan 20 11e-6", "not_finite pin_mm", "no number"),
    ("refuse_pin_other", "pin_clearance", "22.5 20 20e-6 22 20 11e-6", "out_of_range hole_mm", "half a millimetre is another pin"),
    ("refuse_pin_inch", "pin_clearance", "0.866 20 20e-6 22 20 11e-6", "out_of_range hole_mm", GUIDE),
    ("refuse_press_eye", "press_fit", f"22 12 20 24 0.03 0.03 0 0.12 0.12 {STEEL}", "out_of_order eye_mm", "the eye lies around the pin"),
    ("refuse_press_hole", "press_fit", f"22 22 30 24 0.03 0.03 0 0.12 0.12 {STEEL}", "out_of_order pin_hole_mm", "the hole lies in the pin"),
    ("refuse_press_order", "press_fit", f"22 12 30 24 0.04 0.03 0 0.12 0.12 {STEEL}", "out_of_order interference_most_mm", "least above most"),
    ("refuse_press_friction_order", "press_fit", f"22 12 30 24 0.03 0.03 0 0.2 0.12 {STEEL}", "out_of_order friction_most", "least above most"),
    ("refuse_press_zero", "press_fit", f"22 12 30 24 0 0.03 0 0.12 0.12 {STEEL}", "out_of_range interference_least_mm", GUIDE),
    ("refuse_press_width", "press_fit", f"22 12 30 0 0.03 0.03 0 0.12 0.12 {STEEL}", "out_of_range width_mm", GUIDE),
    ("refuse_press_gpa", "press_fit", "22 12 30 24 0.03 0.03 0 0.12 0.12 205 0.29 205000 0.29", "out_of_range pin_modulus_mpa", "GPa entered as MPa"),
    ("refuse_press_poisson", "press_fit", "22 12 30 24 0.03 0.03 0 0.12 0.12 205000 0.29 205000 0.5", "out_of_range eye_poisson", GUIDE),
    ("refuse_press_nan", "press_fit", f"22 12 30 24 0.03 0.03 nan 0.12 0.12 {STEEL}", "not_finite smoothing_mm", "no number"),
    ("refuse_heat_zero", "assembly_temperature", "0 0.03 0.02 11.7e-6", "out_of_range diameter_mm", GUIDE),
    ("refuse_heat_clearance", "assembly_temperature", "22 0.03 0 11.7e-6", "out_of_range clearance_mm", "without clearance the pin sets half-way"),
    ("refuse_heat_coefficient", "assembly_temperature", "22 0.03 0.02 11.7", "out_of_range expansion_per_k", "the factor 1e-6 left out"),
    ("refuse_bend_base", "rod_angle_mrad", "0.05 0", "out_of_range base_mm", GUIDE),
    ("refuse_bend_base_one", "rod_angle_mrad", "0.0005 1", "out_of_range base_mm", "one inch entered as one millimetre"),
    ("refuse_bend_impossible", "rod_angle_mrad", "0.5 25", "out_of_range deviation_mm", "20 mrad: per 25 and per 100 mixed"),
    ("refuse_skew", "rod_skew_mm", "12 60", "out_of_range angle_mrad", GUIDE),
    ("refuse_skew_length", "rod_skew_mm", "0.5 0", "out_of_range length_mm", GUIDE),
    ("refuse_liner_seat", "liner_in_block", "86 0 85 104 0.05 0 " + IRON_IN_ALUMINIUM.format(20, 20), "out_of_order seat_mm", "the seat lies around the liner"),
    ("refuse_liner_block", "liner_in_block", "86 0 91 90 0.05 0 " + IRON_IN_ALUMINIUM.format(20, 20), "out_of_order block_mm", "the block lies around the seat"),
    ("refuse_liner_slip", "liner_in_block", "86 0 91 104 -0.05 0 " + IRON_IN_ALUMINIUM.format(20, 20), "out_of_range interference_mm", "a slip fit has no interference"),
    ("refuse_liner_nan", "liner_in_block", "86 0 91 104 0.05 0 " + IRON_IN_ALUMINIUM.format("nan", 20), "not_finite liner_temperature_c", "no number"),
    ("refuse_liner_hot", "liner_in_block", "86 0 91 104 0.05 0 " + IRON_IN_ALUMINIUM.format(20, 500), "out_of_range block_temperature_c", GUIDE),
    ("refuse_dead_rod", "dead_centres", "43 44 1", "out_of_order rod_mm", "the crank cannot turn"),
    ("refuse_dead_radius", "dead_centres", "0 143 1", "out_of_range crank_radius_mm", GUIDE),
    ("refuse_travel_angle", "piston_travel", "43 143 1 nan", "not_finite crank_angle_deg", "no number"),
    ("refuse_travel_offset", "piston_travel", "43 143 1000 0", "out_of_range pin_offset_mm", GUIDE),
    ("refuse_angles_beyond", "crank_angles_at", "43 143 0 86.1", "out_of_range travel_mm", "beyond the stroke"),
    ("refuse_angles_above", "crank_angles_at", "43 143 0 -0.1", "out_of_range travel_mm", "above top dead centre"),
    ("refuse_depth", "depth_in_bore_mm", "0.4 60 nan 10", "not_finite height_mm", "no number"),
    ("refuse_deck_zero", "deck", "0 86 143 31 1.2", "out_of_range block_height_mm", GUIDE),
    ("refuse_deck_gasket", "deck", "217 86 143 31 0", "out_of_range gasket_mm", "a gasket has a thickness"),
    ("refuse_deck_rod", "deck", "217 86 nan 31 1.2", "not_finite rod_mm", "no number"),
    ("refuse_crevice_land", "top_land_crevice_cm3", "86 86.1 7", "out_of_order land_mm", "the land lies within the bore"),
    ("refuse_crevice_height", "top_land_crevice_cm3", "86 85.4 0", "out_of_range land_height_mm", GUIDE),
    ("refuse_ratio_stroke", "compression_ratio", "86 0 50 88 1 0 0 0", "out_of_range stroke_mm", GUIDE),
    ("refuse_ratio_gasket_bore", "compression_ratio", "86 86 50 3.46 1 0 0 0", "out_of_range gasket_bore_mm", "inches entered as mm"),
    ("refuse_ratio_deck", "compression_ratio", "86 86 50 88 1 10 0 0", "out_of_range deck_clearance_mm", GUIDE),
    ("refuse_ratio_filled", "compression_ratio", "86 86 20 88 1 0 -40 0", "contradiction crown_cm3", "the dome fills more than the chamber"),
    ("refuse_ratio_infinite", "compression_ratio", "86 86 inf 88 1 0 0 0", "not_finite head_cm3", "no number"),
]
REFUSED_SECTIONS = [
    ("refuse_least_nan", "0.03|0;nan|0;0", "not_finite cos_mm/1", "no number"),
    ("refuse_least_mean", "1e9|0;0.1|0;0", "out_of_range mean_mm", GUIDE),
    ("refuse_least_orders", "0.03|" + ";".join(["0.001"] * 33) + "|" + ";".join(["0"] * 33), "out_of_range cos_mm", "up to 32 orders"),
]


def sections():
    """Sections of a bore around a piston (invented): evenly numbered ones with all orders, oval ones, and near ties: three and four lobes of the
    same depth, disturbed in a digit that counts less and less."""
    numbers = random.Random(20)
    rows = []
    for k in range(60):
        order = 1 + k % 8
        scale = [0.01 / n ** (k % 3) for n in range(1, order + 1)]
        cos, sin = ([float(f"{numbers.uniform(-s, s):.7f}") for s in scale] for _ in range(2))
        if k % 2 and order > 1:
            cos[1] = -0.05
        rows.append((f"least_{k}", 0.06, cos, sin))
    for k in range(24):
        lobes, disturbed = 2 + k % 4, 1e-13 * 10 ** (k // 4)
        cos, sin = [0.0] * 6, [0.0] * 6
        cos[lobes - 1], sin[lobes - 1] = (0.01, 0.0) if k % 3 else (0.006, 0.008)
        cos[lobes % 6], sin[0] = disturbed, disturbed / 2
        rows.append((f"least_tie_{k}", 0.03, cos, sin))
    joined = lambda list_: ";".join(repr(x) for x in list_)
    return [(name, f"{mean!r}|{joined(cos)}|{joined(sin)}") for name, mean, cos, sin in rows]


REFUSED_BANDS = [
    ("refuse_band_none", "", FIVE, "0.001", "missing_field projections_mm", "nothing was measured"),
    ("refuse_band_no_bands", "0.5", "", "0.001", "missing_field bands", "no bands"),
    ("refuse_band_nan", "0.5;nan", FIVE, "0.001", "not_finite projections_mm/1", "no number"),
    ("refuse_band_above", "0.5;0.9", FIVE, "0.001", "out_of_range projections_mm/1", "no gasket for it"),
    ("refuse_band_below", "0.4", FIVE, "0.001", "out_of_range projections_mm/0", "no gasket for it"),
    ("refuse_band_overlap", "0.5", "0.470;0.610;1.30/0.605;0.654;1.35", "0.001", "contradiction bands/1/from_mm", "two gaskets for 0.607"),
    ("refuse_band_hole", "0.5", "0.470;0.604;1.30/0.615;0.654;1.35", "0.001", "contradiction bands/1/from_mm", "no gasket for 0.610"),
    ("refuse_band_reversed", "0.5", "0.604;0.470;1.30", "0.001", "out_of_order bands/0/to_mm", "the end lies above the beginning"),
    ("refuse_band_thinner", "0.5", "0.470;0.604;1.35/0.605;0.654;1.30", "0.001", "out_of_order bands/1/thickness_mm", "a larger projection asks for a thicker gasket"),
    ("refuse_band_thickness", "0.5", "0.470;0.604;0", "0.001", "out_of_range bands/0/thickness_mm", "a gasket has a thickness"),
    ("refuse_band_step", "0.5", FIVE, "0", "out_of_range step_mm", "printed to some digit"),
    ("refuse_band_projection", "0.5;5", FIVE, "0.001", "out_of_range projections_mm/1", "beyond 3 mm"),
]


def numbers(text):
    return [float(n) for n in text.split(";") if n]


def called(function, arguments):
    if function == "least_clearance_of_section":
        mean, cos, sin = arguments.split("|")
        return least_clearance_of_section(float(mean), numbers(cos), numbers(sin))
    if function != "gasket_band":
        return globals()[function](*numbers(arguments.replace(" ", ";")))
    projections, bands, step = arguments.split("|")
    return gasket_band(numbers(projections), [numbers(band) for band in bands.split("/")], float(step))


def held(results, published, what):
    """The published values as they go into the row, each held against the closed form."""
    *parts, source = ([], "") if published is None else split(published)
    out = {}
    for part in parts[0] if parts else []:
        name, value = part.split("=")
        value, tolerance = value.split("~")
        # as the double it is read as, like the arguments
        off = abs(results[name][0] - mpf(float(value)))
        assert off <= mpf(tolerance) + mpf("2.3e-16") * abs(results[name][1]), (what, name, mp.nstr(results[name][0], 12), value)
        out[name] = part
    return out, source


def split(published):
    words = published.split(" ")
    count = next(k for k, word in enumerate(words) if "=" not in word or "~" not in word)
    return words[:count], " ".join(words[count:])


def row(name, function, arguments, published):
    results = called(function, arguments)
    printed, source = held(results, published, name)
    cells = []
    for result, value in results.items():
        if value is None:
            cells.append(f"{result}=none")
        elif result in printed and float(printed[result].split("~")[1]) > 0:
            cells.append(printed[result])
        else:
            exact, scale = value
            # eight roundings of the largest term
            tolerance = 8 * mpf("2.3e-16") * abs(scale)
            cells.append(f"{result}={float(exact)!r}~{float(tolerance):.1e}")
    text = f"{source}; the rest {CLOSED}" if printed and len(printed) < len(results) else source or CLOSED
    return f"{name},{function},{arguments.replace(' ', ';')},{';'.join(cells)},{text.replace(',', ' ')}"


def parts_csv():
    """The file of the rows."""
    rows = [row(*r) for r in ROWS]
    rows += [row(n, "gasket_band", f"{p}|{b}|{s}", published) for n, p, b, s, published in BANDS]
    section = "least_clearance_of_section"
    rows += [row(name, section, arguments, None) for name, arguments in sections()]
    refused = REFUSED + [(n, section, a, kind, why) for n, a, kind, why in REFUSED_SECTIONS]
    refused += [(n, "gasket_band", f"{p}|{b}|{s}", kind, why) for n, p, b, s, kind, why in REFUSED_BANDS]
    rows += [f"{n},{f},{a.replace(' ', ';')},error:{kind},{why.replace(',', ' ')}" for n, f, a, kind, why in refused]
    return HEADING + "\n".join(rows) + "\n"
