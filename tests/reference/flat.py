"""Three flat functions for constant coefficients, at 40 digits: what the array interface of the library is compared with.

Formulas of core/docs/model.md with `eps(T) = a (T - 20)`. Arguments may be texts, numbers or mpf; a double is taken as the exact
number it is. Lengths mm, temperatures C, coefficients 1/K; sizes are diameters at 20 C, clearances diametral.
"""

import mpmath

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
