"""Flat functions at 40 digits: three for constant coefficients, what the array interface of the library is compared with, and those of which no other
file here has the result. Conversions are exact fractions.

Formulas of core/docs/model.md with `eps(T) = a (T - 20)`. Arguments may be texts, numbers or mpf; a double is taken as the exact
number it is. Lengths mm, temperatures C, coefficients 1/K; sizes are diameters at 20 C, clearances diametral.
"""

from fractions import Fraction

import mpmath
import parts
import special

mp = mpmath.mp.clone()
mp.dps = 40
mpf = mp.mpf


def grown(temperature_c, coefficient_per_k):
    return 1 + mpf(coefficient_per_k) * (mpf(temperature_c) - 20)


def size_at_20_mm(reading_mm, zero_error_mm, gauge_temperature_c, gauge_coefficient_per_k, part_temperature_c,
                  part_coefficient_per_k):
    """Outside micrometer or caliper: `(R - e0) (1 + eps_gauge) / (1 + eps_part)`."""
    indicated = mpf(reading_mm) - mpf(zero_error_mm)
    return indicated * grown(gauge_temperature_c, gauge_coefficient_per_k) / grown(part_temperature_c, part_coefficient_per_k)


def bench_clearance_mm(bore_mm, piston_mm):
    """Both sizes at 20 C."""
    return mpf(bore_mm) - mpf(piston_mm)


def running_clearance_mm(bore_mm, bore_temperature_c, bore_coefficient_per_k, piston_mm, piston_temperature_c,
                         piston_coefficient_per_k):
    """Both sizes at 20 C, each grown to its own temperature."""
    bore_hot = mpf(bore_mm) * grown(bore_temperature_c, bore_coefficient_per_k)
    return bore_hot - mpf(piston_mm) * grown(piston_temperature_c, piston_coefficient_per_k)


EXACT = {
    "inch_to_mm": lambda x: x * Fraction("25.4"),
    "mm_to_inch": lambda x: x / Fraction("25.4"),
    "thou_to_mm": lambda x: x * Fraction("0.0254"),
    "fahrenheit_to_c": lambda x: (x - 32) * 5 / 9,
    "c_to_fahrenheit": lambda x: x * 9 / 5 + 32,
    "per_fahrenheit_to_per_k": lambda x: x * 9 / 5,
}

# The rest give the result and what its rounding is in proportion to.


def press_fit_pressure_mpa(pin, hole, eye, interference, smoothing, *elastic):
    """The elastic solution of both tubes, each on its own."""
    pressure = parts.joint_pressure(mpf(interference) - mpf(smoothing), *map(mpf, (pin, hole, eye, *elastic)))
    # digits that two differences of squares and one of lengths lose
    wall = max(eye**2 / (eye**2 - pin**2), pin**2 / (pin**2 - hole**2))
    lost = interference / (interference - smoothing) if interference > smoothing else 0
    return pressure, pressure * wall * lost


def press_fit_force_n(pin, hole, eye, width, interference, smoothing, friction, *elastic):
    pressure, scale = press_fit_pressure_mpa(pin, hole, eye, interference, smoothing, *elastic)
    factor = mp.pi * mpf(pin) * mpf(width) * mpf(friction)
    return factor * pressure, factor * scale


def press_fit_torque_nm(pin, *others):
    force, scale = press_fit_force_n(pin, *others)
    return force * mpf(pin) / 2000, scale * pin / 2000


def finish_size_mm(piston, clearance):
    return mpf(piston) + mpf(clearance), piston


def boring_size_mm(piston, clearance, honing):
    return mpf(piston) + mpf(clearance) - mpf(honing), piston


def bore_size_at_20_mm(deviation, setting, *conditions):
    """What the gauge holds as it is, and what it shows; back to 20 C as the bore."""
    ring, set_, used, block = (grown(t, a) for t, a in zip(conditions[::2], conditions[1::2], strict=True))
    return (mpf(setting) * ring / set_ * used + mpf(deviation)) / block, setting


def size_at_temperature_mm(size, temperature_c, coefficient_per_k):
    return mpf(size) * grown(temperature_c, coefficient_per_k), size


def probability_of_conformity(value, u, lower, upper):
    """Area of the normal density between the limits."""
    if u == 0:
        return mpf(lower <= value <= upper), 0
    to = [mp.erf((mpf(limit) - mpf(value)) / (mp.sqrt(2) * mpf(u))) / 2 for limit in (lower, upper)]
    return to[1] - to[0], 1


def coverage_factor(probability, dof):
    upper = (1 + mpf(probability)) / 2
    factor = special.normal_quantile(upper) if dof == float("inf") else special.t_quantile(upper, dof)
    # the library states 2e-11
    return factor, factor * 1e4
