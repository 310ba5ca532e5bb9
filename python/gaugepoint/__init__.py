"""The dimensional mathematics of an engine rebuild: from raw readings to a decision for every cylinder.

`assess` runs a whole job and gives a `Report`, whose classes stand in `gaugepoint.report`. The flat functions give the
common numbers from plain floats; the unit is the suffix of every name. `gaugepoint.measurement` has statistics of readings and
gauge studies, `gaugepoint.decision` the risks of decisions, `gaugepoint.parts` rings, pins, liners and the deck. What is refused
raises `InputError`.

The results rest on free thermal growth only and defer to the maker's service data, local codes and licensed practice.
"""

from gaugepoint._gaugepoint import (
    ERROR_KINDS,
    __version__,
    bench_clearance_mm,
    keystone_groove_width_mm,
    ring_back_clearance_mm,
    ring_conformable_amplitude_mm,
    ring_gap_by_factor_mm,
    ring_gap_in_bore_mm,
    ring_groove_wear_mm,
    ring_least_cold_gap_mm,
    ring_side_clearance_mm,
    rod_angle_mrad,
    rod_skew_mm,
    running_clearance_mm,
    size_at_20_mm,
    top_land_crevice_cm3,
)
from gaugepoint.decision import (
    Gamma,
    Normal,
    Triangular,
    Uniform,
    acceptance,
    acceptance_for_risk,
    capability,
    decide_mm,
    global_risks,
)
from gaugepoint.error import InputError
from gaugepoint.job import assess, job_schema, report_schema
from gaugepoint.measurement import gauge_study, one_way, sample
from gaugepoint.parts import (
    Chamber,
    LinerParts,
    PressFitParts,
    assembly_temperature,
    compression_ratio,
    deck,
    gasket_band,
    liner_in_block,
    pin_clearance,
    press_fit,
    ring_gap_factors,
    ring_hot_gap,
)
from gaugepoint.report import Decision, Report

__all__ = [
    "ERROR_KINDS",
    "Chamber",
    "Decision",
    "Gamma",
    "InputError",
    "LinerParts",
    "Normal",
    "PressFitParts",
    "Report",
    "Triangular",
    "Uniform",
    "__version__",
    "acceptance",
    "acceptance_for_risk",
    "assembly_temperature",
    "assess",
    "bench_clearance_mm",
    "capability",
    "compression_ratio",
    "decide_mm",
    "deck",
    "gasket_band",
    "gauge_study",
    "global_risks",
    "job_schema",
    "keystone_groove_width_mm",
    "liner_in_block",
    "one_way",
    "pin_clearance",
    "press_fit",
    "report_schema",
    "ring_back_clearance_mm",
    "ring_conformable_amplitude_mm",
    "ring_gap_by_factor_mm",
    "ring_gap_factors",
    "ring_gap_in_bore_mm",
    "ring_groove_wear_mm",
    "ring_hot_gap",
    "ring_least_cold_gap_mm",
    "ring_side_clearance_mm",
    "rod_angle_mrad",
    "rod_skew_mm",
    "running_clearance_mm",
    "sample",
    "size_at_20_mm",
    "top_land_crevice_cm3",
]
