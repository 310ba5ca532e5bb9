"""The dimensional mathematics of an engine rebuild: from raw readings to a decision for every cylinder.

`assess` runs a whole job and gives a `Report`, whose classes stand in `gaugepoint.report`; `check_sheet` holds a printed sheet
against itself. The flat functions give the common numbers from plain floats, arrays of them or quantities of pint; the unit is the suffix of every name.
Modules, in the order of the work: `measurement` (statistics of readings, gauge studies, bias, control charts), `shape` (shapes from full
traces), `growth` (laws of expansion, built-in materials), `hot` (the clearance of a running piston
everywhere), `parts` (rings, pins, liners, the deck), `stack` (tolerance stacks), `plan` (worn bores, oversizes,
machining, matching of pistons to bores, rings, shims, gaskets, masses, finishes), `uncertainty` (budgets), `decision` (risks),
`before` (what to ask before measuring, plausible values). `clearances` (in `batch`) computes many rows in arrays. `measure` evaluates readings with their
gauges, whose report and presets stand in `gaugepoint.measuring`; `fit` computes a hot fit, whose report stands in `gaugepoint.fitting`; `evaluate_stack`
evaluates a stack given as a document, whose report stands in `gaugepoint.stacking`; `revisit` compares two jobs of one
engine and `what_if` assesses a job with other values, whose reports stand in `gaugepoint.comparing`. What is refused raises `InputError`.

Two modules are imported by name: `gaugepoint.frames` decides the rows of a frame of pandas or polars or a table of Arrow, `gaugepoint.plot` draws what was found.

The results rest on free thermal growth only and defer to the maker's service data, local codes and licensed practice.
"""

# Nothing is loaded before it is asked for, so that an import costs a shell or a worker next to nothing. `__init__.pyi` says the same to type checkers.
_NAMES = {
    "_gaugepoint": """
        ERROR_KINDS __version__ assembly_temperature_c bench_clearance_mm bore_size_at_20_mm boring_size_mm c_to_fahrenheit
        depth_in_bore_mm fahrenheit_to_c finish_size_mm inch_to_mm keystone_groove_width_mm mm_to_inch per_fahrenheit_to_per_k
        pin_cold_clearance_mm pin_hot_clearance_mm piston_deck_clearance_mm piston_travel_mm press_fit_force_n press_fit_pressure_mpa
        press_fit_torque_nm probability_of_conformity ring_back_clearance_mm ring_conformable_amplitude_mm ring_gap_by_factor_mm
        ring_gap_in_bore_mm ring_groove_wear_mm ring_hot_gap_mm ring_least_cold_gap_mm ring_side_clearance_mm rod_angle_mrad rod_skew_mm
        running_clearance_mm size_at_20_mm size_at_temperature_mm static_compression_ratio swept_volume_cm3 thou_to_mm
        top_land_crevice_cm3
    """,
    "job": "assess job_schema report_schema",
    "report": "Decision Report",
    "sheet": "SheetReport check_sheet sheet_report_schema sheet_schema",
    "measuring": "MeasurementReport Preset measure measurement_report_schema measurement_schema presets",
    "fitting": "FitReport fit fit_report_schema fit_schema",
    "stacking": "StackReport evaluate_stack stack_report_schema stack_schema",
    "comparing": "RevisitReport WhatIfReport revisit revisit_report_schema revisit_schema what_if what_if_report_schema what_if_schema",
    "measurement": "bias control_chart gauge_study linearity linearity_band one_way sample",
    "before": "adequacy agreement drift judge outliers plausibility_table readers soak",
    "uncertainty": "Budget budget budget_report_schema budget_schema coverage_factor effective_dof numerical_tolerance standard_uncertainty",
    "shape": """
        bore_to_main_line fit_circle fit_circle_algebraic fit_cylinder fit_piston_surface fit_piston_trace fit_plane piston_diameter_mm
        piston_largest piston_ovality_mm piston_radius_mm piston_warnings section_from_diameters section_from_radii three_leg_mm
        two_point_mm v_block_factor
    """,
    "growth": "built_in_materials illustrative_duties",
    "hot": "HotFit",
    "parts": """
        Chamber LinerParts PressFitParts assembly_temperature compression_ratio crank_angles_at dead_centres deck gasket_band
        least_clearance_of_section liner_in_block pin_clearance piston_travel press_fit ring_gap_factors ring_hot_gap
    """,
    "stack": "Contributor SharedCause Stack Variation",
    "plan": """
        Bar BestAxis Block BobWeight FinishValue GapReading HotRing LinerSeat MeasuredBore MeasuredPiston MeasuredSizes Part Shim Step
        WallPoint WantedClearance WantedGap WantedProtrusion WarmGauging WornBore bob_weight_g bore_sizes boring_order clean_up
        clean_up_from_diameters cut_list dial_reading_mm filing finish finish_check gasket_grade largest_bore_by_walls_mm match oversizes
        shim_plan walls_left
    """,
    "decision": "Gamma Normal Triangular Uniform acceptance acceptance_for_risk capability decide_mm explain global_risks",
    "batch": "Clearances CubicStrain MeanExpansion RowsRefused clearances",
    "error": "InputError",
}
_HOMES = {name: module for module, names in _NAMES.items() for name in names.split()}
_MODULES = {*_NAMES, "function", "trials", "working"} - {"_gaugepoint"}

__all__ = sorted(_HOMES)


def __getattr__(name: str) -> object:
    """Load what is asked for the first time."""
    if name not in _HOMES and name not in _MODULES:
        raise AttributeError(f"module 'gaugepoint' has no attribute {name!r}")
    from importlib import import_module

    module = import_module(f"gaugepoint.{_HOMES.get(name, name)}")
    found: object = getattr(module, name) if name in _HOMES else module
    globals()[name] = found
    return found


def __dir__() -> list[str]:
    return sorted({*globals(), *_HOMES, *_MODULES})
