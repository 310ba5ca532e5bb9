"""The compiled part of gaugepoint. Private: the package re-exports what is public."""

from collections.abc import Callable, Sequence
from typing import Any, Final, Literal, Protocol, TypeAlias, final, overload, type_check_only

import numpy as np
from gaugepoint.decision import Distribution
from gaugepoint.error import InputError
from gaugepoint.parts import Chamber, LinerParts, PressFitParts
from gaugepoint.plan import (
    Bar,
    BestAxis,
    Block,
    BobWeight,
    Conditions,
    FinishValue,
    GapReading,
    LinerSeat,
    MeasuredBore,
    MeasuredPiston,
    Part,
    Shim,
    Step,
    WallPoint,
    WantedGap,
    WantedProtrusion,
    WarmGauging,
    WornBore,
)
from numpy.typing import NDArray
from gaugepoint.shape import Bore, Piston
from gaugepoint.stack import Contributor, SharedCause, ToleranceCost
from gaugepoint.trials import Trials

@type_check_only
class _Arrayed(Protocol):
    def __array__(self) -> NDArray[Any]: ...

@type_check_only
class _Quantity(Protocol):
    # of pint
    @property
    def magnitude(self) -> Any: ...
    @property
    def units(self) -> Any: ...

_Array: TypeAlias = NDArray[np.float64]
_Numbers: TypeAlias = float | Sequence[float] | Sequence[Sequence[float]] | _Arrayed | _Quantity
# a number of arguments without dimensions, else an array: which of them is not known here
_Values: TypeAlias = _Array | Any
_Statuses: TypeAlias = NDArray[np.int32] | Any
_Summary: TypeAlias = tuple[int, float, float, float, tuple[float, float], tuple[float, float]]

__all__ = [
    "ERROR_KINDS",
    "__version__",
    "size_at_20_mm",
    "bench_clearance_mm",
    "running_clearance_mm",
    "inch_to_mm",
    "mm_to_inch",
    "thou_to_mm",
    "fahrenheit_to_c",
    "c_to_fahrenheit",
    "per_fahrenheit_to_per_k",
    "ring_hot_gap_mm",
    "pin_cold_clearance_mm",
    "pin_hot_clearance_mm",
    "press_fit_pressure_mpa",
    "press_fit_force_n",
    "press_fit_torque_nm",
    "assembly_temperature_c",
    "piston_deck_clearance_mm",
    "swept_volume_cm3",
    "static_compression_ratio",
    "piston_travel_mm",
    "finish_size_mm",
    "boring_size_mm",
    "bore_size_at_20_mm",
    "size_at_temperature_mm",
    "probability_of_conformity",
    "sample",
    "one_way",
    "study_by_ranges",
    "study_by_variance",
    "bias",
    "linearity",
    "linearity_band",
    "control_chart",
    "fit_circle",
    "fit_circle_algebraic",
    "fit_cylinder",
    "fit_plane",
    "bore_to_main_line",
    "section_from_radii",
    "section_from_diameters",
    "two_point_mm",
    "three_leg_mm",
    "v_block_factor",
    "piston_radius_mm",
    "piston_diameter_mm",
    "piston_ovality_mm",
    "piston_largest",
    "piston_warnings",
    "fit_piston_surface",
    "fit_piston_trace",
    "decide_mm",
    "explain",
    "global_risks",
    "acceptance_proven",
    "acceptance_stringent",
    "acceptance_relaxed",
    "acceptance_ratio",
    "acceptance_for_risk",
    "capability",
    "ring_gap_in_bore_mm",
    "ring_least_cold_gap_mm",
    "ring_side_clearance_mm",
    "ring_back_clearance_mm",
    "ring_groove_wear_mm",
    "keystone_groove_width_mm",
    "ring_gap_by_factor_mm",
    "ring_conformable_amplitude_mm",
    "rod_angle_mrad",
    "rod_skew_mm",
    "top_land_crevice_cm3",
    "ring_hot_gap",
    "pin_clearance",
    "press_fit",
    "assembly_temperature",
    "liner_in_block",
    "deck",
    "compression_ratio",
    "gasket_band",
    "ring_gap_factors",
    "dead_centres",
    "piston_travel",
    "crank_angles_at",
    "depth_in_bore_mm",
    "least_clearance_of_section",
    "soak",
    "adequacy_proven",
    "adequacy_stringent",
    "adequacy_relaxed",
    "adequacy_ratio",
    "drift",
    "agreement",
    "readers",
    "outliers_mean",
    "outliers_common_oval",
    "outliers_oval_by_depth",
    "judge",
    "plausibility_table",
    "assess",
    "job_schema",
    "report_schema",
    "check_sheet",
    "sheet_schema",
    "sheet_report_schema",
    "fit",
    "fit_schema",
    "fit_report_schema",
    "evaluate_stack",
    "stack_schema",
    "stack_report_schema",
    "revisit",
    "revisit_schema",
    "revisit_report_schema",
    "what_if",
    "what_if_schema",
    "what_if_report_schema",
    "measure",
    "presets",
    "growth_mean_coefficient",
    "growth_mean_table",
    "growth_instantaneous_table",
    "growth_instantaneous_polynomial",
    "growth_strain_polynomial",
    "growth_graphite_iron",
    "growth_built_in",
    "built_in_materials",
    "Law",
    "hot_fit",
    "HotFit",
    "illustrative_duties",
    "measurement_schema",
    "measurement_report_schema",
    "budget",
    "budget_schema",
    "budget_report_schema",
    "coverage_factor",
    "effective_dof",
    "standard_uncertainty",
    "numerical_tolerance",
    "clearances",
    "steps",
    "counted",
    "Stack",
    "clean_up",
    "clean_up_from_diameters",
    "walls_left",
    "largest_bore_by_walls_mm",
    "bore_sizes",
    "dial_reading_mm",
    "finish_check",
    "boring_order",
    "filing",
    "gasket_grade",
    "cut_list",
    "bob_weight_g",
    "finish",
    "shim_plan",
    "oversizes",
    "match_pistons",
    "match_sizes",
    "Function",
    "engine_stacks",
    "trials_summary",
    "trials_outside",
    "trials_histogram",
    "trials_rare_tail",
    "trials_merged",
]

_Merit: TypeAlias = tuple[float, float, int, float, bool]
_Matching: TypeAlias = tuple[
    str, str, list[tuple[int, int, float, float, float, float, float]], list[int], _Merit, _Merit, _Merit | None, float | None
]
_Placed: TypeAlias = tuple[float, float, float, float, list[int] | None, float | None, float | None]
_Reason: TypeAlias = tuple[str, int | None, int | None, float | None, int | None, int | None]
_Brought: TypeAlias = tuple[str, float, list[tuple[str, int]], list[_Reason]]
_Limits: TypeAlias = tuple[float | None, float | None]
_Component: TypeAlias = tuple[float, float, tuple[float, float] | None]
_Line: TypeAlias = tuple[float, float, float, float | None, float | None]
_Pair: TypeAlias = tuple[float, float] | None
_Table: TypeAlias = tuple[_Line, _Line, _Line, _Line, float, bool, _Pair, _Pair]
_Study: TypeAlias = tuple[_Component, _Component, _Component, _Component, float, float | None, _Table | None]
_Pressed: TypeAlias = tuple[
    tuple[float, float], tuple[float, float, float, float], tuple[float, float], tuple[float, float], str
]
_Lined: TypeAlias = tuple[float, float, float, float, float, float | None, str]

_Form: TypeAlias = tuple[float, float, float, float]
_Circle: TypeAlias = tuple[float, float, float, _Form]
_Cylinder: TypeAlias = tuple[float, float, float, float, float, float, _Form]
_Plane: TypeAlias = tuple[float, float, float, float, float, float, float | None, _Form]
_BoreAxis: TypeAlias = tuple[float, float, float, float, float, float, float]
_Wave: TypeAlias = tuple[int, float | None, float | None]
_Section: TypeAlias = tuple[float, tuple[float, float] | None, list[_Wave], float | None, float]
_Found: TypeAlias = tuple[float, float | None]
_Station: TypeAlias = tuple[float, int, _Found, _Found, _Found | None, float]
_FittedSurface: TypeAlias = tuple[list[_Station], float | None, int, list[float]]
_TraceFit: TypeAlias = tuple[
    _Found, list[_Found | None], float, list[float], float, int, float | None, int, float
]
_Adequacy: TypeAlias = tuple[bool, float, float, float]
_Agreed: TypeAlias = tuple[float, float, float, float, bool]
_Outliers: TypeAlias = tuple[float, int, tuple[int, float] | None, float, list[tuple[int, float]]]
_Row: TypeAlias = tuple[str, str, str, str | None, tuple[float, float], tuple[float, float], str, str]

ERROR_KINDS: Final[tuple[str, ...]]
"""Name of every kind of refusal, in order of its stable number."""

__version__: Final[str]
"""Version of the library."""

@overload
def size_at_20_mm(
    reading_mm: float,
    zero_error_mm: float,
    gauge_temperature_c: float,
    gauge_expansion_per_k: float,
    part_temperature_c: float,
    part_expansion_per_k: float,
) -> float: ...
@overload
def size_at_20_mm(
    reading_mm: _Numbers,
    zero_error_mm: _Numbers,
    gauge_temperature_c: _Numbers,
    gauge_expansion_per_k: _Numbers,
    part_temperature_c: _Numbers,
    part_expansion_per_k: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[False] = False,
    threads: int = 1,
) -> _Values: ...
@overload
def size_at_20_mm(
    reading_mm: _Numbers,
    zero_error_mm: _Numbers,
    gauge_temperature_c: _Numbers,
    gauge_expansion_per_k: _Numbers,
    part_temperature_c: _Numbers,
    part_expansion_per_k: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[True],
    threads: int = 1,
) -> tuple[_Values, _Statuses]:
    """Give the size at 20 C from the reading of a micrometer or caliper.

    ``(reading - zero_error) (1 + a_gauge (t_gauge - 20)) / (1 + a_part (t_part - 20))``. Source: ISO 1:2022 and the definition
    of strain.

    Parameters
    ----------
    reading_mm : float or array_like
        What the gauge reads, in mm.
    zero_error_mm : float or array_like
        What it reads too much at its zero, in mm.
    gauge_temperature_c, part_temperature_c : float or array_like
        Temperatures of gauge and part at the reading, -5 C to 60 C.
    gauge_expansion_per_k, part_expansion_per_k : float or array_like
        Mean coefficients of linear expansion from 20 C, 1e-7 to 1e-4 per kelvin.
    out, partial, threads : optional
        What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
        compute. See python/docs/arrays.md.

    Returns
    -------
    float or numpy.ndarray
        The size at 20 C, in mm.

    Raises
    ------
    InputError
        When a number is not finite or impossible; it names the parameter, the value and the range.

    Examples
    --------
    At 20 C nothing grows: the reading less the zero error.

    >>> import gaugepoint
    >>> gaugepoint.size_at_20_mm(86.5, 0.125, 20.0, 11.5e-6, 20.0, 20.5e-6)
    86.375
    """

@overload
def bench_clearance_mm(bore_mm: float, piston_mm: float) -> float: ...
@overload
def bench_clearance_mm(
    bore_mm: _Numbers,
    piston_mm: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[False] = False,
    threads: int = 1,
) -> _Values: ...
@overload
def bench_clearance_mm(
    bore_mm: _Numbers,
    piston_mm: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[True],
    threads: int = 1,
) -> tuple[_Values, _Statuses]:
    """Give the clearance at 20 C, over the diameter.

    ``bore - piston``, both at 20 C.

    Parameters
    ----------
    bore_mm, piston_mm : float or array_like
        Diameters at 20 C, in mm.
    out, partial, threads : optional
        What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
        compute. See python/docs/arrays.md.

    Returns
    -------
    float or numpy.ndarray
        The diametral clearance, in mm; negative is interference.

    Raises
    ------
    InputError
        When a number is not finite or impossible; it names the parameter, the value and the range.

    Examples
    --------
    >>> import gaugepoint
    >>> gaugepoint.bench_clearance_mm(86.25, 86.125)
    0.125
    """

@overload
def running_clearance_mm(
    bore_mm: float,
    bore_temperature_c: float,
    bore_expansion_per_k: float,
    piston_mm: float,
    piston_temperature_c: float,
    piston_expansion_per_k: float,
) -> float: ...
@overload
def running_clearance_mm(
    bore_mm: _Numbers,
    bore_temperature_c: _Numbers,
    bore_expansion_per_k: _Numbers,
    piston_mm: _Numbers,
    piston_temperature_c: _Numbers,
    piston_expansion_per_k: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[False] = False,
    threads: int = 1,
) -> _Values: ...
@overload
def running_clearance_mm(
    bore_mm: _Numbers,
    bore_temperature_c: _Numbers,
    bore_expansion_per_k: _Numbers,
    piston_mm: _Numbers,
    piston_temperature_c: _Numbers,
    piston_expansion_per_k: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[True],
    threads: int = 1,
) -> tuple[_Values, _Statuses]:
    """Give the clearance of freely growing parts, over the diameter.

    ``bore (1 + a_bore (t_bore - 20)) - piston (1 + a_piston (t_piston - 20))``. It is not a verdict: skirts are elastic, and
    engines run for years with a free clearance below zero. Source: definition of strain.

    Parameters
    ----------
    bore_mm, piston_mm : float or array_like
        Diameters at 20 C, in mm.
    bore_temperature_c, piston_temperature_c : float or array_like
        Temperatures of the running parts, -40 C to 450 C.
    bore_expansion_per_k, piston_expansion_per_k : float or array_like
        Mean coefficients of linear expansion from 20 C, 1e-7 to 1e-4 per kelvin.
    out, partial, threads : optional
        What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
        compute. See python/docs/arrays.md.

    Returns
    -------
    float or numpy.ndarray
        The diametral clearance, in mm; negative is interference of the free shapes.

    Raises
    ------
    InputError
        When a number is not finite or impossible; it names the parameter, the value and the range.

    Examples
    --------
    An aluminium piston 100 K above a cold iron bore has used up its clearance.

    >>> import gaugepoint
    >>> gaugepoint.running_clearance_mm(86.25, 20.0, 11.5e-6, 86.125, 120.0, 20.5e-6) < 0
    True
    """

@overload
def inch_to_mm(length_inch: float) -> float: ...
@overload
def inch_to_mm(length_inch: _Numbers, *, out: _Array | None = None, partial: Literal[False] = False, threads: int = 1) -> _Values: ...
@overload
def inch_to_mm(
    length_inch: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[True],
    threads: int = 1,
) -> tuple[_Values, _Statuses]:
    """Give a length in mm from inches.

    A number of up to 15 digits and 12 decimals is converted exactly and rounded once. Source: NIST SP
    811 (2008), appendix B.

    Parameters
    ----------
    length_inch : float or array_like
        Length in inches, -400 to 400.
    out, partial, threads : optional
        What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
        compute. See python/docs/arrays.md.

    Returns
    -------
    float or numpy.ndarray
        The length, in mm.

    Raises
    ------
    InputError
        When a number is not finite or impossible; it names the parameter, the value and the range.

    Examples
    --------
    >>> import gaugepoint
    >>> gaugepoint.inch_to_mm(2.4126)
    61.28004
    """

@overload
def mm_to_inch(length_mm: float) -> float: ...
@overload
def mm_to_inch(length_mm: _Numbers, *, out: _Array | None = None, partial: Literal[False] = False, threads: int = 1) -> _Values: ...
@overload
def mm_to_inch(
    length_mm: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[True],
    threads: int = 1,
) -> tuple[_Values, _Statuses]:
    """Give a length in inches from mm.

    A number of up to 15 digits and 12 decimals is converted exactly and rounded once. Source: NIST SP
    811 (2008), appendix B.

    Parameters
    ----------
    length_mm : float or array_like
        Length in mm, -10160 to 10160.
    out, partial, threads : optional
        What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
        compute. See python/docs/arrays.md.

    Returns
    -------
    float or numpy.ndarray
        The length, in inches.

    Raises
    ------
    InputError
        When a number is not finite or impossible; it names the parameter, the value and the range.

    Examples
    --------
    >>> import gaugepoint
    >>> gaugepoint.mm_to_inch(61.28004)
    2.4126
    """

@overload
def thou_to_mm(length_thou: float) -> float: ...
@overload
def thou_to_mm(length_thou: _Numbers, *, out: _Array | None = None, partial: Literal[False] = False, threads: int = 1) -> _Values: ...
@overload
def thou_to_mm(
    length_thou: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[True],
    threads: int = 1,
) -> tuple[_Values, _Statuses]:
    """Give a length in mm from thousandths of an inch.

    A number of up to 15 digits and 12 decimals is converted exactly and rounded once. Source: NIST SP
    811 (2008), appendix B.

    Parameters
    ----------
    length_thou : float or array_like
        Length in thou, -400000 to 400000.
    out, partial, threads : optional
        What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
        compute. See python/docs/arrays.md.

    Returns
    -------
    float or numpy.ndarray
        The length, in mm.

    Raises
    ------
    InputError
        When a number is not finite or impossible; it names the parameter, the value and the range.

    Examples
    --------
    >>> import gaugepoint
    >>> gaugepoint.thou_to_mm(1.7)
    0.04318
    """

@overload
def fahrenheit_to_c(temperature_fahrenheit: float) -> float: ...
@overload
def fahrenheit_to_c(temperature_fahrenheit: _Numbers, *, out: _Array | None = None, partial: Literal[False] = False, threads: int = 1) -> _Values: ...
@overload
def fahrenheit_to_c(
    temperature_fahrenheit: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[True],
    threads: int = 1,
) -> tuple[_Values, _Statuses]:
    """Give a temperature in degrees Celsius from degrees Fahrenheit.

    A difference of temperatures is another thing. A number of up to 15 digits and 12 decimals is converted exactly and rounded once.
    Source: NIST SP 811 (2008), appendix B.

    Parameters
    ----------
    temperature_fahrenheit : float or array_like
        Temperature in degrees Fahrenheit, -454 to 2192.
    out, partial, threads : optional
        What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
        compute. See python/docs/arrays.md.

    Returns
    -------
    float or numpy.ndarray
        The temperature, in C.

    Raises
    ------
    InputError
        When a number is not finite or impossible; it names the parameter, the value and the range.

    Examples
    --------
    >>> import gaugepoint
    >>> gaugepoint.fahrenheit_to_c(80.6)
    27.0
    """

@overload
def c_to_fahrenheit(temperature_c: float) -> float: ...
@overload
def c_to_fahrenheit(temperature_c: _Numbers, *, out: _Array | None = None, partial: Literal[False] = False, threads: int = 1) -> _Values: ...
@overload
def c_to_fahrenheit(
    temperature_c: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[True],
    threads: int = 1,
) -> tuple[_Values, _Statuses]:
    """Give a temperature in degrees Fahrenheit from degrees Celsius.

    A difference of temperatures is another thing. A number of up to 15 digits and 12 decimals is converted exactly and rounded once.
    Source: NIST SP 811 (2008), appendix B.

    Parameters
    ----------
    temperature_c : float or array_like
        Temperature in C, -270 to 1200.
    out, partial, threads : optional
        What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
        compute. See python/docs/arrays.md.

    Returns
    -------
    float or numpy.ndarray
        The temperature, in degrees Fahrenheit.

    Raises
    ------
    InputError
        When a number is not finite or impossible; it names the parameter, the value and the range.

    Examples
    --------
    >>> import gaugepoint
    >>> gaugepoint.c_to_fahrenheit(22.7)
    72.86
    """

@overload
def per_fahrenheit_to_per_k(expansion_per_fahrenheit: float) -> float: ...
@overload
def per_fahrenheit_to_per_k(
    expansion_per_fahrenheit: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[False] = False,
    threads: int = 1,
) -> _Values: ...
@overload
def per_fahrenheit_to_per_k(
    expansion_per_fahrenheit: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[True],
    threads: int = 1,
) -> tuple[_Values, _Statuses]:
    """Give a coefficient of expansion per kelvin from one per degree Fahrenheit.

    A number of up to 15 digits and 12 decimals is converted exactly and rounded once. Source: NIST SP
    811 (2008), appendix B.

    Parameters
    ----------
    expansion_per_fahrenheit : float or array_like
        Coefficient per degree Fahrenheit, 1e-7 to 5e-5.
    out, partial, threads : optional
        What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
        compute. See python/docs/arrays.md.

    Returns
    -------
    float or numpy.ndarray
        The coefficient, per kelvin.

    Raises
    ------
    InputError
        When a number is not finite or impossible; it names the parameter, the value and the range.

    Examples
    --------
    >>> import gaugepoint
    >>> gaugepoint.per_fahrenheit_to_per_k(6.4e-6)
    1.152e-05
    """

@overload
def ring_hot_gap_mm(
    gap_mm: float,
    bore_mm: float,
    bore_temperature_c: float,
    bore_expansion_per_k: float,
    ring_temperature_c: float,
    ring_expansion_per_k: float,
) -> float: ...
@overload
def ring_hot_gap_mm(
    gap_mm: _Numbers,
    bore_mm: _Numbers,
    bore_temperature_c: _Numbers,
    bore_expansion_per_k: _Numbers,
    ring_temperature_c: _Numbers,
    ring_expansion_per_k: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[False] = False,
    threads: int = 1,
) -> _Values: ...
@overload
def ring_hot_gap_mm(
    gap_mm: _Numbers,
    bore_mm: _Numbers,
    bore_temperature_c: _Numbers,
    bore_expansion_per_k: _Numbers,
    ring_temperature_c: _Numbers,
    ring_expansion_per_k: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[True],
    threads: int = 1,
) -> tuple[_Values, _Statuses]:
    """Give the end gap of a ring with bore and ring at their temperatures.

    The gap alone of `ring_hot_gap`. Source: hot circumference of the bore less the hot length of the ring.

    Parameters
    ----------
    gap_mm : float or array_like
        End gap at 20 C, in mm.
    bore_mm : float or array_like
        Diameter of the bore at 20 C, in mm.
    bore_temperature_c, ring_temperature_c : float or array_like
        Temperatures of bore and ring, -40 C to 450 C.
    bore_expansion_per_k, ring_expansion_per_k : float or array_like
        Mean coefficients of linear expansion from 20 C, 1e-7 to 1e-4 per kelvin.
    out, partial, threads : optional
        What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
        compute. See python/docs/arrays.md.

    Returns
    -------
    float or numpy.ndarray
        The hot gap, in mm; below zero the ends butt.

    Raises
    ------
    InputError
        When a number is not finite or impossible; it names the parameter, the value and the range.

    Examples
    --------
    >>> import gaugepoint
    >>> round(gaugepoint.ring_hot_gap_mm(0.35, 86.0, 150.0, 11e-6, 250.0, 11.5e-6), 4)
    0.0227
    """

@overload
def pin_cold_clearance_mm(hole_mm: float, pin_mm: float) -> float: ...
@overload
def pin_cold_clearance_mm(
    hole_mm: _Numbers,
    pin_mm: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[False] = False,
    threads: int = 1,
) -> _Values: ...
@overload
def pin_cold_clearance_mm(
    hole_mm: _Numbers,
    pin_mm: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[True],
    threads: int = 1,
) -> tuple[_Values, _Statuses]:
    """Give the clearance of a pin in a boss or in a bush at 20 C, over the diameter.

    ``hole - pin``, both at 20 C.

    Parameters
    ----------
    hole_mm, pin_mm : float or array_like
        Diameters at 20 C, in mm.
    out, partial, threads : optional
        What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
        compute. See python/docs/arrays.md.

    Returns
    -------
    float or numpy.ndarray
        The diametral clearance, in mm; negative is interference.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or the clearance is not between -0.15 mm and 0.2 mm; it
        names the parameter, the value and the range.

    Examples
    --------
    >>> import gaugepoint
    >>> gaugepoint.pin_cold_clearance_mm(22.125, 22.0)
    0.125
    """

@overload
def pin_hot_clearance_mm(
    hole_mm: float,
    hole_temperature_c: float,
    hole_expansion_per_k: float,
    pin_mm: float,
    pin_temperature_c: float,
    pin_expansion_per_k: float,
) -> float: ...
@overload
def pin_hot_clearance_mm(
    hole_mm: _Numbers,
    hole_temperature_c: _Numbers,
    hole_expansion_per_k: _Numbers,
    pin_mm: _Numbers,
    pin_temperature_c: _Numbers,
    pin_expansion_per_k: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[False] = False,
    threads: int = 1,
) -> _Values: ...
@overload
def pin_hot_clearance_mm(
    hole_mm: _Numbers,
    hole_temperature_c: _Numbers,
    hole_expansion_per_k: _Numbers,
    pin_mm: _Numbers,
    pin_temperature_c: _Numbers,
    pin_expansion_per_k: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[True],
    threads: int = 1,
) -> tuple[_Values, _Statuses]:
    """Give the clearance of a freely growing pin in a boss or in a bush, over the diameter.

    ``hole (1 + a_hole (t_hole - 20)) - pin (1 + a_pin (t_pin - 20))``. A pressed bush grows by the coefficient of what
    holds it. Source: definition of strain.

    Parameters
    ----------
    hole_mm, pin_mm : float or array_like
        Diameters at 20 C, in mm.
    hole_temperature_c, pin_temperature_c : float or array_like
        Temperatures, -40 C to 450 C.
    hole_expansion_per_k, pin_expansion_per_k : float or array_like
        Mean coefficients of linear expansion from 20 C, 1e-7 to 1e-4 per kelvin.
    out, partial, threads : optional
        What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
        compute. See python/docs/arrays.md.

    Returns
    -------
    float or numpy.ndarray
        The diametral clearance, in mm; negative is interference.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or the clearance at 20 C is not between -0.15 mm and 0.2 mm;
        it names the parameter, the value and the range.

    Examples
    --------
    An aluminium piston heated to 80 C lets in a pin of its own size.

    >>> import gaugepoint
    >>> round(gaugepoint.pin_hot_clearance_mm(22.0, 80.0, 20.5e-6, 22.0, 20.0, 11.7e-6), 4)
    0.0271
    """

@overload
def press_fit_pressure_mpa(
    pin_mm: float,
    pin_hole_mm: float,
    eye_mm: float,
    interference_mm: float,
    smoothing_mm: float,
    pin_modulus_mpa: float,
    pin_poisson: float,
    eye_modulus_mpa: float,
    eye_poisson: float,
) -> float: ...
@overload
def press_fit_pressure_mpa(
    pin_mm: _Numbers,
    pin_hole_mm: _Numbers,
    eye_mm: _Numbers,
    interference_mm: _Numbers,
    smoothing_mm: _Numbers,
    pin_modulus_mpa: _Numbers,
    pin_poisson: _Numbers,
    eye_modulus_mpa: _Numbers,
    eye_poisson: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[False] = False,
    threads: int = 1,
) -> _Values: ...
@overload
def press_fit_pressure_mpa(
    pin_mm: _Numbers,
    pin_hole_mm: _Numbers,
    eye_mm: _Numbers,
    interference_mm: _Numbers,
    smoothing_mm: _Numbers,
    pin_modulus_mpa: _Numbers,
    pin_poisson: _Numbers,
    eye_modulus_mpa: _Numbers,
    eye_poisson: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[True],
    threads: int = 1,
) -> tuple[_Values, _Statuses]:
    """Give the pressure in the joint of a pin pressed into an eye.

    One interference; `press_fit` takes ranges. Source: Lame, thick elastic tubes with free ends.

    Parameters
    ----------
    pin_mm : float or array_like
        Diameter of the pin at 20 C, in mm.
    pin_hole_mm : float or array_like
        Its hole, in mm; 0 is a solid pin.
    eye_mm : float or array_like
        Outside of the eye, in mm.
    interference_mm : float or array_like
        Interference as measured, in mm.
    smoothing_mm : float or array_like
        What of it is lost because roughness is pressed flat, in mm.
    pin_modulus_mpa, eye_modulus_mpa : float or array_like
        Moduli of elasticity, in MPa.
    pin_poisson, eye_poisson : float or array_like
        Poisson's ratios.
    out, partial, threads : optional
        What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
        compute. See python/docs/arrays.md.

    Returns
    -------
    float or numpy.ndarray
        The pressure, in MPa; 0 when the smoothing takes all of the interference.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or the diameters are out of order; it names the parameter,
        the value and the range.

    Examples
    --------
    One material and a solid pin, by hand: E delta (D^2 - d^2) / (2 d D^2).

    >>> import gaugepoint
    >>> round(gaugepoint.press_fit_pressure_mpa(20.0, 0.0, 40.0, 0.02, 0.0, 200e3, 0.3, 200e3, 0.3), 6)
    75.0
    """

@overload
def press_fit_force_n(
    pin_mm: float,
    pin_hole_mm: float,
    eye_mm: float,
    width_mm: float,
    interference_mm: float,
    smoothing_mm: float,
    friction: float,
    pin_modulus_mpa: float,
    pin_poisson: float,
    eye_modulus_mpa: float,
    eye_poisson: float,
) -> float: ...
@overload
def press_fit_force_n(
    pin_mm: _Numbers,
    pin_hole_mm: _Numbers,
    eye_mm: _Numbers,
    width_mm: _Numbers,
    interference_mm: _Numbers,
    smoothing_mm: _Numbers,
    friction: _Numbers,
    pin_modulus_mpa: _Numbers,
    pin_poisson: _Numbers,
    eye_modulus_mpa: _Numbers,
    eye_poisson: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[False] = False,
    threads: int = 1,
) -> _Values: ...
@overload
def press_fit_force_n(
    pin_mm: _Numbers,
    pin_hole_mm: _Numbers,
    eye_mm: _Numbers,
    width_mm: _Numbers,
    interference_mm: _Numbers,
    smoothing_mm: _Numbers,
    friction: _Numbers,
    pin_modulus_mpa: _Numbers,
    pin_poisson: _Numbers,
    eye_modulus_mpa: _Numbers,
    eye_poisson: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[True],
    threads: int = 1,
) -> tuple[_Values, _Statuses]:
    """Give the axial force at which a pin pressed into an eye slips.

    ``pi pin width pressure friction`` with the pressure of `press_fit_pressure_mpa`. Source: Coulomb friction over the
    joint.

    Parameters
    ----------
    pin_mm : float or array_like
        Diameter of the pin at 20 C, in mm.
    pin_hole_mm : float or array_like
        Its hole, in mm; 0 is a solid pin.
    eye_mm : float or array_like
        Outside of the eye, in mm.
    width_mm : float or array_like
        Length of the joint along the axis, in mm.
    interference_mm : float or array_like
        Interference as measured, in mm.
    smoothing_mm : float or array_like
        What of it is lost because roughness is pressed flat, in mm.
    friction : float or array_like
        Coefficient of friction.
    pin_modulus_mpa, eye_modulus_mpa : float or array_like
        Moduli of elasticity, in MPa.
    pin_poisson, eye_poisson : float or array_like
        Poisson's ratios.
    out, partial, threads : optional
        What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
        compute. See python/docs/arrays.md.

    Returns
    -------
    float or numpy.ndarray
        The force, in N.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or the diameters are out of order; it names the parameter,
        the value and the range.

    Examples
    --------
    >>> import gaugepoint
    >>> round(gaugepoint.press_fit_force_n(20.0, 0.0, 40.0, 25.0, 0.02, 0.0, 0.1, 200e3, 0.3, 200e3, 0.3))
    11781
    """

@overload
def press_fit_torque_nm(
    pin_mm: float,
    pin_hole_mm: float,
    eye_mm: float,
    width_mm: float,
    interference_mm: float,
    smoothing_mm: float,
    friction: float,
    pin_modulus_mpa: float,
    pin_poisson: float,
    eye_modulus_mpa: float,
    eye_poisson: float,
) -> float: ...
@overload
def press_fit_torque_nm(
    pin_mm: _Numbers,
    pin_hole_mm: _Numbers,
    eye_mm: _Numbers,
    width_mm: _Numbers,
    interference_mm: _Numbers,
    smoothing_mm: _Numbers,
    friction: _Numbers,
    pin_modulus_mpa: _Numbers,
    pin_poisson: _Numbers,
    eye_modulus_mpa: _Numbers,
    eye_poisson: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[False] = False,
    threads: int = 1,
) -> _Values: ...
@overload
def press_fit_torque_nm(
    pin_mm: _Numbers,
    pin_hole_mm: _Numbers,
    eye_mm: _Numbers,
    width_mm: _Numbers,
    interference_mm: _Numbers,
    smoothing_mm: _Numbers,
    friction: _Numbers,
    pin_modulus_mpa: _Numbers,
    pin_poisson: _Numbers,
    eye_modulus_mpa: _Numbers,
    eye_poisson: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[True],
    threads: int = 1,
) -> tuple[_Values, _Statuses]:
    """Give the torque at which a pin pressed into an eye slips.

    ``force pin / 2`` with the force of `press_fit_force_n`. Source: Coulomb friction at the radius of the joint.

    Parameters
    ----------
    pin_mm : float or array_like
        Diameter of the pin at 20 C, in mm.
    pin_hole_mm : float or array_like
        Its hole, in mm; 0 is a solid pin.
    eye_mm : float or array_like
        Outside of the eye, in mm.
    width_mm : float or array_like
        Length of the joint along the axis, in mm.
    interference_mm : float or array_like
        Interference as measured, in mm.
    smoothing_mm : float or array_like
        What of it is lost because roughness is pressed flat, in mm.
    friction : float or array_like
        Coefficient of friction.
    pin_modulus_mpa, eye_modulus_mpa : float or array_like
        Moduli of elasticity, in MPa.
    pin_poisson, eye_poisson : float or array_like
        Poisson's ratios.
    out, partial, threads : optional
        What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
        compute. See python/docs/arrays.md.

    Returns
    -------
    float or numpy.ndarray
        The torque, in N m.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or the diameters are out of order; it names the parameter,
        the value and the range.

    Examples
    --------
    >>> import gaugepoint
    >>> round(gaugepoint.press_fit_torque_nm(20.0, 0.0, 40.0, 25.0, 0.02, 0.0, 0.1, 200e3, 0.3, 200e3, 0.3), 1)
    117.8
    """

@overload
def assembly_temperature_c(diameter_mm: float, interference_mm: float, clearance_mm: float, expansion_per_k: float) -> float: ...
@overload
def assembly_temperature_c(
    diameter_mm: _Numbers,
    interference_mm: _Numbers,
    clearance_mm: _Numbers,
    expansion_per_k: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[False] = False,
    threads: int = 1,
) -> _Values: ...
@overload
def assembly_temperature_c(
    diameter_mm: _Numbers,
    interference_mm: _Numbers,
    clearance_mm: _Numbers,
    expansion_per_k: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[True],
    threads: int = 1,
) -> tuple[_Values, _Statuses]:
    """Give the temperature to which the outer part is heated so that the pin, at 20 C, slips in.

    ``20 + (interference + clearance) / (a diameter)``. Clean steel colours from 249 C: too much heat. `assembly_temperature`
    also says what to take care of. Source: free growth.

    Parameters
    ----------
    diameter_mm : float or array_like
        Diameter of the joint, in mm.
    interference_mm : float or array_like
        Interference at 20 C, in mm.
    clearance_mm : float or array_like
        Clearance that the heated part is to have, in mm.
    expansion_per_k : float or array_like
        Mean coefficient of linear expansion of the heated part, 1e-7 to 1e-4 per kelvin.
    out, partial, threads : optional
        What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
        compute. See python/docs/arrays.md.

    Returns
    -------
    float or numpy.ndarray
        The temperature, in C.

    Raises
    ------
    InputError
        When a number is not finite or impossible; it names the parameter, the value and the range.

    Examples
    --------
    >>> import gaugepoint
    >>> round(gaugepoint.assembly_temperature_c(22.0, 0.03, 0.02, 12e-6))
    209
    """

@overload
def piston_deck_clearance_mm(block_height_mm: float, stroke_mm: float, rod_mm: float, compression_height_mm: float) -> float: ...
@overload
def piston_deck_clearance_mm(
    block_height_mm: _Numbers,
    stroke_mm: _Numbers,
    rod_mm: _Numbers,
    compression_height_mm: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[False] = False,
    threads: int = 1,
) -> _Values: ...
@overload
def piston_deck_clearance_mm(
    block_height_mm: _Numbers,
    stroke_mm: _Numbers,
    rod_mm: _Numbers,
    compression_height_mm: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[True],
    threads: int = 1,
) -> tuple[_Values, _Statuses]:
    """Give how far below the deck the crown stops at top dead centre.

    ``block - (stroke / 2 + rod + compression height)``.

    Parameters
    ----------
    block_height_mm : float or array_like
        Centre of the crankshaft to the deck, in mm.
    stroke_mm : float or array_like
        Stroke, in mm.
    rod_mm : float or array_like
        Rod, centre to centre, in mm.
    compression_height_mm : float or array_like
        Pin axis to crown, in mm.
    out, partial, threads : optional
        What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
        compute. See python/docs/arrays.md.

    Returns
    -------
    float or numpy.ndarray
        The deck clearance, in mm; negative when the crown stands above the deck.

    Raises
    ------
    InputError
        When a number is not finite or impossible; it names the parameter, the value and the range.

    Examples
    --------
    >>> import gaugepoint
    >>> gaugepoint.piston_deck_clearance_mm(217.5, 86.0, 143.0, 31.0)
    0.5
    """

@overload
def swept_volume_cm3(bore_mm: float, stroke_mm: float) -> float: ...
@overload
def swept_volume_cm3(
    bore_mm: _Numbers,
    stroke_mm: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[False] = False,
    threads: int = 1,
) -> _Values: ...
@overload
def swept_volume_cm3(
    bore_mm: _Numbers,
    stroke_mm: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[True],
    threads: int = 1,
) -> tuple[_Values, _Statuses]:
    """Give the swept volume of one cylinder.

    ``pi bore^2 stroke / 4``.

    Parameters
    ----------
    bore_mm, stroke_mm : float or array_like
        Bore and stroke, in mm.
    out, partial, threads : optional
        What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
        compute. See python/docs/arrays.md.

    Returns
    -------
    float or numpy.ndarray
        The volume, in cm3.

    Raises
    ------
    InputError
        When a number is not finite or impossible; it names the parameter, the value and the range.

    Examples
    --------
    >>> import gaugepoint
    >>> round(gaugepoint.swept_volume_cm3(86.0, 86.0), 1)
    499.6
    """

@overload
def static_compression_ratio(
    bore_mm: float,
    stroke_mm: float,
    head_cm3: float,
    gasket_bore_mm: float,
    gasket_mm: float,
    deck_clearance_mm: float,
    crown_cm3: float,
    crevice_cm3: float,
) -> float: ...
@overload
def static_compression_ratio(
    bore_mm: _Numbers,
    stroke_mm: _Numbers,
    head_cm3: _Numbers,
    gasket_bore_mm: _Numbers,
    gasket_mm: _Numbers,
    deck_clearance_mm: _Numbers,
    crown_cm3: _Numbers,
    crevice_cm3: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[False] = False,
    threads: int = 1,
) -> _Values: ...
@overload
def static_compression_ratio(
    bore_mm: _Numbers,
    stroke_mm: _Numbers,
    head_cm3: _Numbers,
    gasket_bore_mm: _Numbers,
    gasket_mm: _Numbers,
    deck_clearance_mm: _Numbers,
    crown_cm3: _Numbers,
    crevice_cm3: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[True],
    threads: int = 1,
) -> tuple[_Values, _Statuses]:
    """Give the compression ratio.

    The ratio alone of `compression_ratio`: swept and clearance volume over the clearance volume.

    Parameters
    ----------
    bore_mm, stroke_mm : float or array_like
        Bore and stroke, in mm.
    head_cm3 : float or array_like
        Chamber in the head, in cm3; 0 is a flat head.
    gasket_bore_mm, gasket_mm : float or array_like
        Opening of the gasket and its compressed thickness, in mm.
    deck_clearance_mm : float or array_like
        From the deck down to the crown, in mm; negative for a protrusion.
    crown_cm3 : float or array_like
        Dish, bowl and pockets of the crown, in cm3; negative for a dome.
    crevice_cm3 : float or array_like
        Crevice at the top land, in cm3; 0 leaves it out, as is usual.
    out, partial, threads : optional
        What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
        compute. See python/docs/arrays.md.

    Returns
    -------
    float or numpy.ndarray
        The ratio.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or nothing is left above the piston; it names the parameter,
        the value and the range.

    Examples
    --------
    >>> import gaugepoint
    >>> round(gaugepoint.static_compression_ratio(86.0, 86.0, 49.697791, 86.0, 1.0, 0.0, 0.0, 0.0), 2)
    10.0
    """

@overload
def piston_travel_mm(crank_radius_mm: float, rod_mm: float, pin_offset_mm: float, crank_angle_deg: float) -> float: ...
@overload
def piston_travel_mm(
    crank_radius_mm: _Numbers,
    rod_mm: _Numbers,
    pin_offset_mm: _Numbers,
    crank_angle_deg: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[False] = False,
    threads: int = 1,
) -> _Values: ...
@overload
def piston_travel_mm(
    crank_radius_mm: _Numbers,
    rod_mm: _Numbers,
    pin_offset_mm: _Numbers,
    crank_angle_deg: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[True],
    threads: int = 1,
) -> tuple[_Values, _Statuses]:
    """Give the travel of the piston from top dead centre at a crank angle.

    The travel alone of `piston_travel`. Source: slider-crank with an offset pin.

    Parameters
    ----------
    crank_radius_mm : float or array_like
        Half the stroke of an engine without offset, in mm.
    rod_mm : float or array_like
        Rod, centre to centre, in mm.
    pin_offset_mm : float or array_like
        Offset of the pin, in mm, positive toward the major thrust side.
    crank_angle_deg : float or array_like
        Crank angle, -720 deg to 720 deg; 0 with the throw in line with the cylinder.
    out, partial, threads : optional
        What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
        compute. See python/docs/arrays.md.

    Returns
    -------
    float or numpy.ndarray
        The travel down, in mm.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or the rod is too short for the crank to turn; it names the
        parameter, the value and the range.

    Examples
    --------
    >>> import gaugepoint
    >>> round(gaugepoint.piston_travel_mm(43.0, 143.0, 0.0, 60.0), 3)
    26.434
    """

@overload
def finish_size_mm(piston_mm: float, clearance_mm: float) -> float: ...
@overload
def finish_size_mm(
    piston_mm: _Numbers,
    clearance_mm: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[False] = False,
    threads: int = 1,
) -> _Values: ...
@overload
def finish_size_mm(
    piston_mm: _Numbers,
    clearance_mm: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[True],
    threads: int = 1,
) -> tuple[_Values, _Statuses]:
    """Give the size at 20 C to which the bore for a piston is finished.

    ``piston + clearance``.

    Parameters
    ----------
    piston_mm : float or array_like
        Diameter of the piston as measured, at 20 C, in mm.
    clearance_mm : float or array_like
        Clearance wanted on the bench, in mm.
    out, partial, threads : optional
        What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
        compute. See python/docs/arrays.md.

    Returns
    -------
    float or numpy.ndarray
        The size, in mm.

    Raises
    ------
    InputError
        When a number is not finite or impossible; it names the parameter, the value and the range.

    Examples
    --------
    >>> import gaugepoint
    >>> gaugepoint.finish_size_mm(86.25, 0.125)
    86.375
    """

@overload
def boring_size_mm(piston_mm: float, clearance_mm: float, honing_mm: float) -> float: ...
@overload
def boring_size_mm(
    piston_mm: _Numbers,
    clearance_mm: _Numbers,
    honing_mm: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[False] = False,
    threads: int = 1,
) -> _Values: ...
@overload
def boring_size_mm(
    piston_mm: _Numbers,
    clearance_mm: _Numbers,
    honing_mm: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[True],
    threads: int = 1,
) -> tuple[_Values, _Statuses]:
    """Give the size at 20 C to which the bore for a piston is bored before it is honed.

    ``piston + clearance - honing``.

    Parameters
    ----------
    piston_mm : float or array_like
        Diameter of the piston as measured, at 20 C, in mm.
    clearance_mm : float or array_like
        Clearance wanted on the bench, in mm.
    honing_mm : float or array_like
        What is left for the hone, on the diameter, in mm.
    out, partial, threads : optional
        What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
        compute. See python/docs/arrays.md.

    Returns
    -------
    float or numpy.ndarray
        The size, in mm.

    Raises
    ------
    InputError
        When a number is not finite or impossible; it names the parameter, the value and the range.

    Examples
    --------
    >>> import gaugepoint
    >>> gaugepoint.boring_size_mm(86.25, 0.125, 0.0625)
    86.3125
    """

@overload
def bore_size_at_20_mm(
    deviation_mm: float,
    setting_mm: float,
    ring_temperature_c: float,
    ring_expansion_per_k: float,
    set_temperature_c: float,
    set_expansion_per_k: float,
    used_temperature_c: float,
    used_expansion_per_k: float,
    block_temperature_c: float,
    block_expansion_per_k: float,
) -> float: ...
@overload
def bore_size_at_20_mm(
    deviation_mm: _Numbers,
    setting_mm: _Numbers,
    ring_temperature_c: _Numbers,
    ring_expansion_per_k: _Numbers,
    set_temperature_c: _Numbers,
    set_expansion_per_k: _Numbers,
    used_temperature_c: _Numbers,
    used_expansion_per_k: _Numbers,
    block_temperature_c: _Numbers,
    block_expansion_per_k: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[False] = False,
    threads: int = 1,
) -> _Values: ...
@overload
def bore_size_at_20_mm(
    deviation_mm: _Numbers,
    setting_mm: _Numbers,
    ring_temperature_c: _Numbers,
    ring_expansion_per_k: _Numbers,
    set_temperature_c: _Numbers,
    set_expansion_per_k: _Numbers,
    used_temperature_c: _Numbers,
    used_expansion_per_k: _Numbers,
    block_temperature_c: _Numbers,
    block_expansion_per_k: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[True],
    threads: int = 1,
) -> tuple[_Values, _Statuses]:
    """Give the size of a bore at 20 C from the deviation that a bore gauge set on a ring shows.

    The ring, the gauge when it was set, the gauge when it is used and the block each have their temperature. Source: ISO
    1:2022 and the definition of strain.

    Parameters
    ----------
    deviation_mm : float or array_like
        What the dial shows above its setting, in mm; positive when the bore is larger.
    setting_mm : float or array_like
        Size of the ring at 20 C, in mm.
    ring_temperature_c, set_temperature_c, used_temperature_c, block_temperature_c : float or array_like
        Temperatures, -5 C to 60 C.
    ring_expansion_per_k, set_expansion_per_k, used_expansion_per_k, block_expansion_per_k : float or array_like
        Mean coefficients of linear expansion from 20 C, 1e-7 to 1e-4 per kelvin.
    out, partial, threads : optional
        What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
        compute. See python/docs/arrays.md.

    Returns
    -------
    float or numpy.ndarray
        The size at 20 C, in mm.

    Raises
    ------
    InputError
        When a number is not finite or impossible; it names the parameter, the value and the range.

    Examples
    --------
    At 20 C nothing grows.

    >>> import gaugepoint
    >>> at_20 = (20.0, 11.5e-6) * 4
    >>> gaugepoint.bore_size_at_20_mm(0.125, 86.25, *at_20)
    86.375
    """

@overload
def size_at_temperature_mm(size_mm: float, temperature_c: float, expansion_per_k: float) -> float: ...
@overload
def size_at_temperature_mm(
    size_mm: _Numbers,
    temperature_c: _Numbers,
    expansion_per_k: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[False] = False,
    threads: int = 1,
) -> _Values: ...
@overload
def size_at_temperature_mm(
    size_mm: _Numbers,
    temperature_c: _Numbers,
    expansion_per_k: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[True],
    threads: int = 1,
) -> tuple[_Values, _Statuses]:
    """Give the size of a freely growing part at a temperature.

    ``size (1 + a (t - 20))``. Source: definition of strain.

    Parameters
    ----------
    size_mm : float or array_like
        Size at 20 C, in mm.
    temperature_c : float or array_like
        Temperature, -40 C to 450 C.
    expansion_per_k : float or array_like
        Mean coefficient of linear expansion from 20 C, 1e-7 to 1e-4 per kelvin.
    out, partial, threads : optional
        What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
        compute. See python/docs/arrays.md.

    Returns
    -------
    float or numpy.ndarray
        The size, in mm.

    Raises
    ------
    InputError
        When a number is not finite or impossible; it names the parameter, the value and the range.

    Examples
    --------
    >>> import gaugepoint
    >>> round(gaugepoint.size_at_temperature_mm(86.0, 120.0, 20e-6), 6)
    86.172
    """

@overload
def probability_of_conformity(value_mm: float, standard_uncertainty_mm: float, lower_mm: float, upper_mm: float) -> float: ...
@overload
def probability_of_conformity(
    value_mm: _Numbers,
    standard_uncertainty_mm: _Numbers,
    lower_mm: _Numbers,
    upper_mm: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[False] = False,
    threads: int = 1,
) -> _Values: ...
@overload
def probability_of_conformity(
    value_mm: _Numbers,
    standard_uncertainty_mm: _Numbers,
    lower_mm: _Numbers,
    upper_mm: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[True],
    threads: int = 1,
) -> tuple[_Values, _Statuses]:
    """Give the probability that the true value lies within two limits.

    For a value with a normal error. A value without uncertainty gives 1 or 0. Source: JCGM 106:2012, 7.2.2.

    Parameters
    ----------
    value_mm : float or array_like
        The value, in mm.
    standard_uncertainty_mm : float or array_like
        Its standard uncertainty, in mm.
    lower_mm, upper_mm : float or array_like
        The limits, in mm.
    out, partial, threads : optional
        What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
        compute. See python/docs/arrays.md.

    Returns
    -------
    float or numpy.ndarray
        The probability.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or the limits are out of order; it names the parameter, the
        value and the range.

    Examples
    --------
    Two standard uncertainties to each limit.

    >>> import gaugepoint
    >>> round(gaugepoint.probability_of_conformity(86.01, 0.005, 86.0, 86.02), 4)
    0.9545
    """

def sample(values: Sequence[float]) -> tuple[int, float, float, float, float]:
    """Give mean and spread of a sample.

    Parameters
    ----------
    values : sequence of float
        At least two values, in any one unit.

    Returns
    -------
    tuple
        Count, mean, standard deviation, standard deviation of the mean, correlation of each value with the next.

    Raises
    ------
    InputError
        When there are fewer than two values, or one is not finite; it names the place.
    """

def one_way(groups: Sequence[Sequence[float]]) -> tuple[float, float, float, float, float | None, float | None, float]:
    """Give the one-way analysis of variance of groups.

    Parameters
    ----------
    groups : sequence of sequences of float
        At least two groups, none empty, and more values than groups.

    Returns
    -------
    tuple
        Between, its degrees of freedom, within, its degrees of freedom, F, R squared, pooled deviation.

    Raises
    ------
    InputError
        When there is too little, or a value is not finite; it names the place.
    """

def study_by_ranges(values: Sequence[Sequence[Sequence[float]]]) -> _Study:
    """Give what a crossed gauge study finds by averages and ranges.

    Parameters
    ----------
    values : sequence of sequences of sequences of float
        The readings, ``values[appraiser][trial][part]``.

    Returns
    -------
    tuple
        Repeatability, reproducibility, gauge, part, total, categories, None.

    Raises
    ------
    InputError
        When there is too little or too much, it is not balanced, or a value is not finite; it names the place.
    """

def study_by_variance(values: Sequence[Sequence[Sequence[float]]], pooled: bool | None, above: float) -> _Study:
    """Give what a crossed gauge study finds by analysis of variance.

    Parameters
    ----------
    values : sequence of sequences of sequences of float
        The readings, ``values[appraiser][trial][part]``.
    pooled : bool or None
        Count the interaction as repeats; None: when it is probable by chance.
    above : float
        How probable, when `pooled` is None.

    Returns
    -------
    tuple
        Repeatability, reproducibility, gauge, part, total, categories, table.

    Raises
    ------
    InputError
        When there is too little, it is not balanced, a value is not finite, or the probability is none; it names the place.
    """

def bias(
    values: Sequence[float], reference: float, reference_uncertainty: float, coverage: float
) -> tuple[float, float, float, float | None, _Pair, tuple[float, float], bool]:
    """Give the bias of a gauge at one size.

    Parameters
    ----------
    values : sequence of float
        At least two readings of one part, in any one unit.
    reference, reference_uncertainty : float
        Value of the part and its standard uncertainty.
    coverage : float
        Coverage of the confidence interval.

    Returns
    -------
    tuple
        Bias, deviation of the readings, uncertainty, degrees of freedom, test, interval, zero within.

    Raises
    ------
    InputError
        When there are fewer than two readings, or a number is not finite or impossible; it names the parameter or the place.
    """

def linearity(
    references: Sequence[float], readings: Sequence[Sequence[float]], coverage: float
) -> tuple[float, float, _Pair, float, float, _Pair, float, float, float | None, bool]:
    """Give how the bias of a gauge depends on the size.

    Parameters
    ----------
    references : sequence of float
        Values of the parts, in any one unit.
    readings : sequence of sequences of float
        The readings of each part.
    coverage : float
        Coverage of the confidence band.

    Returns
    -------
    tuple
        Intercept, its uncertainty and test, slope, its uncertainty and test, residual deviation, degrees of freedom, R squared,
        zero within.

    Raises
    ------
    InputError
        When there is too little, the sizes do not differ, or a number is not finite or impossible; it names the parameter or the
        place.
    """

def linearity_band(
    references: Sequence[float], readings: Sequence[Sequence[float]], x: float, coverage: float
) -> tuple[float, float, tuple[float, float]]:
    """Give the mean bias of a gauge at a size, by the line of a linearity study.

    Parameters
    ----------
    references : sequence of float
        Values of the parts, in any one unit.
    readings : sequence of sequences of float
        The readings of each part.
    x : float
        The size.
    coverage : float
        Coverage of the confidence band.

    Returns
    -------
    tuple
        Bias, uncertainty, interval.

    Raises
    ------
    InputError
        When there is too little, the sizes do not differ, or a number is not finite or impossible; it names the parameter or the
        place.
    """

def control_chart(
    values: Sequence[Sequence[float]], kind: str
) -> tuple[float, float, float, float, list[tuple[float, bool, bool]]]:
    """Give a control chart.

    Parameters
    ----------
    values : sequence of sequences of float
        Subgroups of equal size in order of time, in any one unit; single readings are subgroups of one.
    kind : str
        What the chart shows.

    Returns
    -------
    tuple
        Centre, lower limit, upper limit, deviation, points.

    Raises
    ------
    InputError
        When there is too little, the subgroups are of a wrong size, a value is not finite, or the kind is unknown; it names the
        parameter or the place.
    """

def fit_circle(x_mm: Sequence[float], y_mm: Sequence[float], reference: str) -> _Circle:
    """Fit a circle to points of a section.

    Parameters
    ----------
    x_mm, y_mm : sequence of float
        The points, in mm.
    reference : str
        What it is fitted by.

    Returns
    -------
    tuple
        Centre x and y, radius, form.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or the points do not tell where the circle lies; it names the place.
    """

def fit_circle_algebraic(x_mm: Sequence[float], y_mm: Sequence[float], method: str) -> _Circle:
    """Fit the equation of a circle to points of a section.

    Parameters
    ----------
    x_mm, y_mm : sequence of float
        The points, in mm.
    method : str
        What the equation is held to.

    Returns
    -------
    tuple
        Centre x and y, radius, form.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or the points do not tell where the circle lies; it names the place.
    """

def fit_cylinder(x_mm: Sequence[float], y_mm: Sequence[float], z_mm: Sequence[float], reference: str) -> _Cylinder:
    """Fit a cylinder to points of a bore or a piston.

    Parameters
    ----------
    x_mm, y_mm, z_mm : sequence of float
        The points, in mm; z along the axis.
    reference : str
        What it is fitted by.

    Returns
    -------
    tuple
        Point of the axis x, y, z, slopes along x and y, radius, form.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or the points do not tell where the cylinder lies; it names the place.
    """

def fit_plane(x_mm: Sequence[float], y_mm: Sequence[float], z_mm: Sequence[float], reference: str) -> _Plane:
    """Fit a plane to points of a deck.

    Parameters
    ----------
    x_mm, y_mm, z_mm : sequence of float
        The points, in mm; z is the height.
    reference : str
        What it is fitted by.

    Returns
    -------
    tuple
        Point of the plane x, y, z, slopes along x and y, slope, direction, form.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or the points do not tell where the plane lies; it names the place.
    """

def bore_to_main_line(bore_mm: Sequence[Sequence[float]], main_mm: Sequence[Sequence[float]]) -> _BoreAxis:
    """Give squareness and position of a bore to the main line.

    Parameters
    ----------
    bore_mm, main_mm : sequence of sequences of float
        Points x, y, z of both, in mm, in their order.

    Returns
    -------
    tuple
        Offset, station, out of square in mrad, length, out of square in mm, straightness of the bore and of the main line.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or the points do not lie along lines; it names the place.
    """

def section_from_radii(angles_deg: Sequence[float], radii_mm: Sequence[float], order: int) -> _Section:
    """Give the harmonics of a section from radii.

    Parameters
    ----------
    angles_deg, radii_mm : sequence of float
        Angles 0 to 360 degrees, and the radii there, in mm.
    order : int
        Highest order.

    Returns
    -------
    tuple
        Mean radius, position, harmonics, residual, least share.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or the angles do not resolve the order; it names the place.
    """

def section_from_diameters(angles_deg: Sequence[float], diameters_mm: Sequence[float], order: int) -> _Section:
    """Give the harmonics of a section from diameters.

    Parameters
    ----------
    angles_deg, diameters_mm : sequence of float
        Angles of the axes, and the diameters there, in mm.
    order : int
        Highest order; even.

    Returns
    -------
    tuple
        Mean radius, None, harmonics, residual, least share.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or the angles do not resolve the order; it names the place.
    """

def two_point_mm(mean_radius_mm: float, harmonics: Sequence[_Wave], angle_deg: float) -> float:
    """Give the diameter that a two-point gauge reads.

    Parameters
    ----------
    mean_radius_mm : float
        Mean radius of the section.
    harmonics : sequence of tuple
        Order, cosine part and sine part in mm; None for a part that was not seen.
    angle_deg : float
        Where it is read.

    Returns
    -------
    float
        The diameter, in mm.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or a part is needed that was not seen; it names the place.
    """

def three_leg_mm(mean_radius_mm: float, harmonics: Sequence[_Wave], angle_deg: float, legs_deg: Sequence[float]) -> float:
    """Give the diameter that a gauge with three legs reads.

    Parameters
    ----------
    mean_radius_mm : float
        Mean radius of the section.
    harmonics : sequence of tuple
        Order, cosine part and sine part in mm; None for a part that was not seen.
    angle_deg : float
        Where it is read.
    legs_deg : sequence of float
        Directions of the three legs.

    Returns
    -------
    float
        The diameter, in mm.

    Raises
    ------
    InputError
        When a number is not finite or impossible, the legs do not centre, or a part is needed that was not seen.
    """

def v_block_factor(order: int, included_deg: float, probe_deg: float = 0.0) -> float:
    """Give how much of the amplitude of an order a probe shows over a V-block in which the part is turned.

    The probe is ``probe_deg`` from the direction opposite the V; there it is ``abs(1 + cos(n (90 + a)) / sin(a))`` with ``a`` half the
    included angle. To the first order. Source: ISO 4292, from memory.

    Parameters
    ----------
    order : int
        Undulations in one turn.
    included_deg : float
        Angle between the faces, 10 to 170 degrees.
    probe_deg : float
        Direction of the probe, 0 opposite the V.

    Returns
    -------
    float
        The factor.

    Raises
    ------
    InputError
        When a number is not finite or impossible; it names the parameter.

    Examples
    --------
    Three lobes show three times as large over a V of 60 degrees, and an oval not at all.

    >>> import gaugepoint
    >>> round(gaugepoint.v_block_factor(3, 60.0), 6), round(gaugepoint.v_block_factor(2, 60.0), 6)
    (3.0, 0.0)
    """

def piston_radius_mm(piston: Piston, gauge_diameter_mm: float, height_mm: float, angle_deg: float) -> float:
    """Give the radius of a piston at a height and an angle.

    Parameters
    ----------
    piston : Piston
        Its form.
    gauge_diameter_mm : float
        Diameter of the bare metal at the gauge point.
    height_mm, angle_deg : float
        Where.

    Returns
    -------
    float
        The radius, in mm.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or there is no surface; it names the place.
    """

def piston_diameter_mm(piston: Piston, gauge_diameter_mm: float, height_mm: float, angle_deg: float) -> float:
    """Give the diameter that a micrometer reads on a piston.

    Parameters
    ----------
    piston : Piston
        Its form.
    gauge_diameter_mm : float
        Diameter of the bare metal at the gauge point.
    height_mm, angle_deg : float
        Where.

    Returns
    -------
    float
        The diameter, in mm.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or an end has no surface; it names the place.
    """

def piston_ovality_mm(piston: Piston, height_mm: float) -> float:
    """Give the ovality that a micrometer reads on a piston.

    Parameters
    ----------
    piston : Piston
        Its form.
    height_mm : float
        Where.

    Returns
    -------
    float
        The ovality, in mm.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or an end has no surface; it names the place.
    """

def piston_largest(piston: Piston, gauge_diameter_mm: float, height_mm: float) -> tuple[float, float]:
    """Give the largest diameter of a piston at a height.

    Parameters
    ----------
    piston : Piston
        Its form.
    gauge_diameter_mm : float
        Diameter of the bare metal at the gauge point.
    height_mm : float
        Where.

    Returns
    -------
    tuple
        Angle and diameter.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or there is no surface; it names the place.
    """

def piston_warnings(piston: Piston) -> list[tuple[str, int, float, float | None, float]]:
    """Give what is odd about the form of a piston.

    Parameters
    ----------
    piston : Piston
        Its form.

    Returns
    -------
    list
        Kind, surface, height, angle and value of each.

    Raises
    ------
    InputError
        When the form is refused; it names the place.
    """

def fit_piston_surface(
    heights_mm: Sequence[float],
    angles_deg: Sequence[float],
    values_mm: Sequence[float],
    reading: str,
    double_ovality: bool,
    uncertainty_mm: float | None,
) -> _FittedSurface:
    """Fit the surface of a piston to points.

    Parameters
    ----------
    heights_mm, angles_deg, values_mm : sequence of float
        The points.
    reading : str
        What was read.
    double_ovality : bool
        Whether it is fitted.
    uncertainty_mm : float or None
        Standard uncertainty of a reading.

    Returns
    -------
    tuple
        Stations, deviation, degrees of freedom, residuals.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or the angles do not tell the unknowns apart; it names the place.
    """

def fit_piston_trace(
    piston: Piston,
    gauge_diameter_mm: float,
    heights_mm: Sequence[float],
    angles_deg: Sequence[float],
    values_mm: Sequence[float],
    reading: str,
    uncertainty_mm: float | None,
) -> _TraceFit:
    """Hold points against the form of a piston.

    Parameters
    ----------
    piston : Piston
        Its form.
    gauge_diameter_mm : float
        Diameter of the bare metal at the gauge point.
    heights_mm, angles_deg, values_mm : sequence of float
        The points.
    reading : str
        What was read.
    uncertainty_mm : float or None
        Standard uncertainty of a reading.

    Returns
    -------
    tuple
        Size, position and slopes, height, residuals, rms, largest, deviation, degrees of freedom, least share.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or the points do not tell the unknowns apart; it names the place.
    """

def decide_mm(
    value_mm: float,
    standard_uncertainty_mm: float,
    lower_mm: float | None,
    upper_mm: float | None,
    rule: str,
    at_least: float,
) -> str:
    """Judge one value with its standard uncertainty.

    Parameters
    ----------
    value_mm, standard_uncertainty_mm : float
        The value and its standard uncertainty, in mm.
    lower_mm, upper_mm : float or None
        The limits, in mm; at least one.
    rule : str
        Rule of decision.
    at_least : float
        Probability asked for by the rule ``conformance_probability``, or ratio asked for by ``simple_acceptance_by_ratio``.

    Returns
    -------
    str
        The decision, as JSON.

    Raises
    ------
    InputError
        When a number is not finite or impossible, the limits are out of order or missing, or the rule is unknown.
    """

def explain(place: str, what: str, answers: Sequence[tuple[str, bool]]) -> str:
    """Give the causes that agree with a finding and with the answers, and what to ask next.

    Parameters
    ----------
    place, what : str
        Where something was seen, and what.
    answers : sequence of (str, bool)
        Questions that were answered, yes or no.

    Returns
    -------
    str
        The explanation, as JSON.

    Raises
    ------
    InputError
        When a word is unknown or a question is answered both ways; it names the place.
    """

def global_risks(items: Distribution, u: float, tolerance: _Limits, accepted: _Limits) -> tuple[float, float, float]:
    """Give the global risks of accepting by one interval what should conform to another.

    Parameters
    ----------
    items : Normal, Uniform, Triangular or Gamma
        Distribution of the items.
    u : float
        Standard uncertainty of a measurement.
    tolerance, accepted : tuple of float or None
        Lower and upper limit of what conforms and of what is accepted.

    Returns
    -------
    tuple of float
        Conforming, consumer's risk, producer's risk.

    Raises
    ------
    InputError
        When a number is not finite, or a distribution or an interval is impossible.
    """

def acceptance_proven(tolerance: _Limits, u: float) -> _Limits:
    """Give the acceptance interval of a tolerance by ``g = 1.65 u``.

    Parameters
    ----------
    tolerance : tuple of float or None
        Lower and upper limit.
    u : float
        Standard uncertainty of a measurement.

    Returns
    -------
    tuple of float or None
        Lower and upper limit of what is accepted.

    Raises
    ------
    InputError
        When a number is not finite, the interval is impossible, or the guard bands leave nothing.
    """

def acceptance_stringent(tolerance: _Limits, u: float, amount: float) -> _Limits:
    """Give the acceptance interval of a tolerance inside by a share of ``U = 2 u``.

    Parameters
    ----------
    tolerance : tuple of float or None
        Lower and upper limit.
    u : float
        Standard uncertainty of a measurement.
    amount : float
        The share.

    Returns
    -------
    tuple of float or None
        Lower and upper limit of what is accepted.

    Raises
    ------
    InputError
        When a number is not finite, the interval is impossible, or the guard bands leave nothing.
    """

def acceptance_relaxed(tolerance: _Limits, u: float, amount: float) -> _Limits:
    """Give the acceptance interval of a tolerance outside by a share of ``U = 2 u``.

    Parameters
    ----------
    tolerance : tuple of float or None
        Lower and upper limit.
    u : float
        Standard uncertainty of a measurement.
    amount : float
        The share.

    Returns
    -------
    tuple of float or None
        Lower and upper limit of what is accepted.

    Raises
    ------
    InputError
        When a number is not finite, or the interval is impossible.
    """

def acceptance_ratio(tolerance: _Limits, u: float, amount: float) -> _Limits:
    """Give the tolerance itself, when it is at least so many times ``2 U`` wide.

    Parameters
    ----------
    tolerance : tuple of float or None
        Lower and upper limit.
    u : float
        Standard uncertainty of a measurement.
    amount : float
        The ratio.

    Returns
    -------
    tuple of float or None
        Lower and upper limit of what is accepted.

    Raises
    ------
    InputError
        When a number is not finite, the interval is impossible, or the ratio is not reached.
    """

def acceptance_for_risk(items: Distribution, u: float, tolerance: _Limits, wanted: float) -> _Limits:
    """Give the acceptance interval with a wanted consumer's risk.

    Parameters
    ----------
    items : Normal, Uniform, Triangular or Gamma
        Distribution of the items.
    u : float
        Standard uncertainty of a measurement.
    tolerance : tuple of float or None
        Lower and upper limit of what conforms.
    wanted : float
        The global consumer's risk.

    Returns
    -------
    tuple of float or None
        Lower and upper limit of what is accepted.

    Raises
    ------
    InputError
        When no guard band gives that risk, or a number, a distribution or an interval is impossible.
    """

def capability(mean: float, deviation: float, tolerance: _Limits) -> tuple[float, float]:
    """Give the capability of a normal process.

    Parameters
    ----------
    mean, deviation : float
        Mean and standard deviation of the process.
    tolerance : tuple of float or None
        Lower and upper limit.

    Returns
    -------
    tuple of float
        Cpk, share outside the limits.

    Raises
    ------
    InputError
        When a number is not finite, the deviation is not above 0, or the interval is impossible.
    """

@overload
def ring_gap_in_bore_mm(gap_mm: float, gauge_mm: float, bore_mm: float) -> float: ...
@overload
def ring_gap_in_bore_mm(
    gap_mm: _Numbers,
    gauge_mm: _Numbers,
    bore_mm: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[False] = False,
    threads: int = 1,
) -> _Values: ...
@overload
def ring_gap_in_bore_mm(
    gap_mm: _Numbers,
    gauge_mm: _Numbers,
    bore_mm: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[True],
    threads: int = 1,
) -> tuple[_Values, _Statuses]:
    """Give the end gap in a bore of a ring whose gap was measured in a gauge.

    ``gap + pi (bore - gauge)``. Source: a closed ring keeps its length.

    Parameters
    ----------
    gap_mm : float or array_like
        End gap in the gauge, or in another bore, in mm.
    gauge_mm, bore_mm : float or array_like
        Diameters, in mm, not more than 2 % apart.
    out, partial, threads : optional
        What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
        compute. See python/docs/arrays.md.

    Returns
    -------
    float or numpy.ndarray
        The end gap, in mm; negative is a ring whose ends overlap.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or the diameters are not those of one ring; it
        names the parameter, the value and the range.

    Examples
    --------
    >>> import gaugepoint
    >>> round(gaugepoint.ring_gap_in_bore_mm(0.3, 86.0, 86.1), 3)
    0.614
    """

@overload
def ring_least_cold_gap_mm(
    least_hot_gap_mm: float,
    bore_mm: float,
    bore_temperature_c: float,
    bore_expansion_per_k: float,
    ring_temperature_c: float,
    ring_expansion_per_k: float,
) -> float: ...
@overload
def ring_least_cold_gap_mm(
    least_hot_gap_mm: _Numbers,
    bore_mm: _Numbers,
    bore_temperature_c: _Numbers,
    bore_expansion_per_k: _Numbers,
    ring_temperature_c: _Numbers,
    ring_expansion_per_k: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[False] = False,
    threads: int = 1,
) -> _Values: ...
@overload
def ring_least_cold_gap_mm(
    least_hot_gap_mm: _Numbers,
    bore_mm: _Numbers,
    bore_temperature_c: _Numbers,
    bore_expansion_per_k: _Numbers,
    ring_temperature_c: _Numbers,
    ring_expansion_per_k: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[True],
    threads: int = 1,
) -> tuple[_Values, _Statuses]:
    """Give the least cold end gap that leaves a gap with bore and ring at their temperatures.

    The exact hot gap, solved for the cold one. Below zero the bore opens by more than the ring grows.

    Parameters
    ----------
    least_hot_gap_mm : float or array_like
        What is to be left, in mm; 0 lets the ends touch.
    bore_mm : float or array_like
        Bore at 20 C, in mm.
    bore_temperature_c : float or array_like
        Temperature of the bore, -40 C to 450 C.
    bore_expansion_per_k : float or array_like
        Mean coefficient of linear expansion of the bore from 20 C, per kelvin.
    ring_temperature_c : float or array_like
        Temperature of the ring, -40 C to 450 C.
    ring_expansion_per_k : float or array_like
        Mean coefficient of linear expansion of the ring from 20 C, per kelvin.
    out, partial, threads : optional
        What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
        compute. See python/docs/arrays.md.

    Returns
    -------
    float or numpy.ndarray
        The least cold gap, in mm.

    Raises
    ------
    InputError
        When a number is not finite or impossible; it names the parameter, the value and the range.

    Examples
    --------
    A sudden load on a cold bore of 100 mm, all of iron.

    >>> import gaugepoint
    >>> round(gaugepoint.ring_least_cold_gap_mm(0.05, 100.0, 90.0, 11.4e-6, 230.0, 11.4e-6), 2)
    0.55
    """

@overload
def ring_side_clearance_mm(groove_width_mm: float, ring_width_mm: float) -> float: ...
@overload
def ring_side_clearance_mm(
    groove_width_mm: _Numbers,
    ring_width_mm: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[False] = False,
    threads: int = 1,
) -> _Values: ...
@overload
def ring_side_clearance_mm(
    groove_width_mm: _Numbers,
    ring_width_mm: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[True],
    threads: int = 1,
) -> tuple[_Values, _Statuses]:
    """Give the side clearance of a ring in its groove.

    ``groove - ring``; of keystone parts both at one diameter.

    Parameters
    ----------
    groove_width_mm, ring_width_mm : float or array_like
        Axial widths, in mm.
    out, partial, threads : optional
        What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
        compute. See python/docs/arrays.md.

    Returns
    -------
    float or numpy.ndarray
        The clearance, in mm; negative is a ring that does not enter.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or the clearance is beyond 0.5 mm; it
        names the parameter, the value and the range.

    Examples
    --------
    >>> import gaugepoint
    >>> gaugepoint.ring_side_clearance_mm(1.5625, 1.5)
    0.0625
    """

@overload
def ring_back_clearance_mm(bore_mm: float, groove_root_mm: float, ring_thickness_mm: float) -> float: ...
@overload
def ring_back_clearance_mm(
    bore_mm: _Numbers,
    groove_root_mm: _Numbers,
    ring_thickness_mm: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[False] = False,
    threads: int = 1,
) -> _Values: ...
@overload
def ring_back_clearance_mm(
    bore_mm: _Numbers,
    groove_root_mm: _Numbers,
    ring_thickness_mm: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[True],
    threads: int = 1,
) -> tuple[_Values, _Statuses]:
    """Give the room behind a ring that stands at the bore, on one side.

    ``(bore - root) / 2 - thickness``. With the diameter of the land in place of the bore it is how far the ring, pushed in, lies
    below the land.

    Parameters
    ----------
    bore_mm, groove_root_mm : float or array_like
        Diameters, in mm.
    ring_thickness_mm : float or array_like
        Radial thickness, in mm.
    out, partial, threads : optional
        What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
        compute. See python/docs/arrays.md.

    Returns
    -------
    float or numpy.ndarray
        The room, in mm; negative is a ring that cannot go in.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or the root does not lie below the bore; it
        names the parameter, the value and the range.

    Examples
    --------
    >>> import gaugepoint
    >>> gaugepoint.ring_back_clearance_mm(86.0, 78.5, 3.25)
    0.5
    """

@overload
def ring_groove_wear_mm(groove_width_mm: float, new_groove_width_mm: float) -> float: ...
@overload
def ring_groove_wear_mm(
    groove_width_mm: _Numbers,
    new_groove_width_mm: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[False] = False,
    threads: int = 1,
) -> _Values: ...
@overload
def ring_groove_wear_mm(
    groove_width_mm: _Numbers,
    new_groove_width_mm: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[True],
    threads: int = 1,
) -> tuple[_Values, _Statuses]:
    """Give the wear of a ring groove.

    ``groove - new groove``.

    Parameters
    ----------
    groove_width_mm, new_groove_width_mm : float or array_like
        Axial width where it is widest, and when it was new, in mm.
    out, partial, threads : optional
        What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
        compute. See python/docs/arrays.md.

    Returns
    -------
    float or numpy.ndarray
        The wear, in mm.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or the wear is beyond 0.5 mm; it
        names the parameter, the value and the range.

    Examples
    --------
    >>> import gaugepoint
    >>> gaugepoint.ring_groove_wear_mm(1.5625, 1.5)
    0.0625
    """

@overload
def keystone_groove_width_mm(over_pins_mm: float, pin_mm: float, included_angle_deg: float, at_diameter_mm: float) -> float: ...
@overload
def keystone_groove_width_mm(
    over_pins_mm: _Numbers,
    pin_mm: _Numbers,
    included_angle_deg: _Numbers,
    at_diameter_mm: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[False] = False,
    threads: int = 1,
) -> _Values: ...
@overload
def keystone_groove_width_mm(
    over_pins_mm: _Numbers,
    pin_mm: _Numbers,
    included_angle_deg: _Numbers,
    at_diameter_mm: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[True],
    threads: int = 1,
) -> tuple[_Values, _Statuses]:
    """Give the width of a keystone groove at a diameter, from the size over two pins.

    ``(at - over_pins + pin) tan(angle / 2) + pin / cos(angle / 2)``, for flanks that slope alike. Source: plane geometry.

    Parameters
    ----------
    over_pins_mm : float or array_like
        Size over two pins that lie in the groove opposite each other, in mm.
    pin_mm : float or array_like
        Diameter of the pins, in mm.
    included_angle_deg : float or array_like
        Angle between the flanks, 1 to 40 degrees.
    at_diameter_mm : float or array_like
        Diameter at which the width is stated, in mm.
    out, partial, threads : optional
        What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
        compute. See python/docs/arrays.md.

    Returns
    -------
    float or numpy.ndarray
        The axial width, in mm.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or the flanks have met at that diameter; it
        names the parameter, the value and the range.

    Examples
    --------
    >>> import gaugepoint
    >>> round(gaugepoint.keystone_groove_width_mm(104.2, 2.5, 15.0, 102.0), 3)
    2.561
    """

@overload
def ring_gap_by_factor_mm(bore_mm: float, per_mille: float) -> float: ...
@overload
def ring_gap_by_factor_mm(
    bore_mm: _Numbers,
    per_mille: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[False] = False,
    threads: int = 1,
) -> _Values: ...
@overload
def ring_gap_by_factor_mm(
    bore_mm: _Numbers,
    per_mille: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[True],
    threads: int = 1,
) -> tuple[_Values, _Statuses]:
    """Give the end gap by a factor of the bore.

    ``bore per_mille / 1000``; published factors: `ring_gap_factors`. Never per inch. Common practice, no source.

    Parameters
    ----------
    bore_mm : float or array_like
        Bore, in mm.
    per_mille : float or array_like
        Gap in per mille of the bore, 0.5 to 14.
    out, partial, threads : optional
        What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
        compute. See python/docs/arrays.md.

    Returns
    -------
    float or numpy.ndarray
        The end gap, in mm.

    Raises
    ------
    InputError
        When a number is not finite or impossible; it names the parameter, the value and the range.

    Examples
    --------
    >>> import gaugepoint
    >>> gaugepoint.ring_gap_by_factor_mm(100.0, 4.5)
    0.45
    """

def ring_conformable_amplitude_mm(
    order: int,
    tangential_force_n: float,
    bore_mm: float,
    ring_thickness_mm: float,
    ring_width_mm: float,
    modulus_mpa: float,
) -> float:
    """Give, roughly, the amplitude of a harmonic of the bore that a ring follows by its own tension.

    ``F r^3 / (E I (n^2 - 1)^2)``: a thin ring of one rectangle, even tension, no gas, no oil, no other harmonic. An order of
    magnitude. Source: thin ring in plane bending.

    Parameters
    ----------
    order : int
        Harmonic: 2 is an oval, 3 and 4 are lobes; 2 to 50.
    tangential_force_n : float
        Force that closes the ring, in N.
    bore_mm : float
        Bore, in mm.
    ring_thickness_mm, ring_width_mm : float
        Radial thickness and axial width, in mm.
    modulus_mpa : float
        Modulus of elasticity, in MPa.

    Returns
    -------
    float
        The largest radial amplitude, in mm.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or the ring is thicker than half its bore; it
        names the parameter, the value and the range.

    Examples
    --------
    >>> import gaugepoint
    >>> round(gaugepoint.ring_conformable_amplitude_mm(2, 20.0, 86.0, 3.3, 1.5, 160e3), 2)
    0.22
    """

@overload
def rod_angle_mrad(deviation_mm: float, base_mm: float) -> float: ...
@overload
def rod_angle_mrad(
    deviation_mm: _Numbers,
    base_mm: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[False] = False,
    threads: int = 1,
) -> _Values: ...
@overload
def rod_angle_mrad(
    deviation_mm: _Numbers,
    base_mm: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[True],
    threads: int = 1,
) -> tuple[_Values, _Statuses]:
    """Give the bend or twist of a rod as an angle.

    ``1000 deviation / base``: figures over bases of 25 mm and 100 mm cannot be compared otherwise.

    Parameters
    ----------
    deviation_mm : float or array_like
        Deviation on the fixture, in mm; the sign is kept.
    base_mm : float or array_like
        Length it is stated over, in mm.
    out, partial, threads : optional
        What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
        compute. See python/docs/arrays.md.

    Returns
    -------
    float or numpy.ndarray
        The angle, in mrad.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or the angle is beyond 10 mrad; it
        names the parameter, the value and the range.

    Examples
    --------
    >>> import gaugepoint
    >>> round(gaugepoint.rod_angle_mrad(0.038, 25.0), 2)
    1.52
    """

@overload
def rod_skew_mm(angle_mrad: float, length_mm: float) -> float: ...
@overload
def rod_skew_mm(
    angle_mrad: _Numbers,
    length_mm: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[False] = False,
    threads: int = 1,
) -> _Values: ...
@overload
def rod_skew_mm(
    angle_mrad: _Numbers,
    length_mm: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[True],
    threads: int = 1,
) -> tuple[_Values, _Statuses]:
    """Give what an angle of a rod makes over a length.

    ``angle length / 1000``: the skew of a piston over its height, for example.

    Parameters
    ----------
    angle_mrad : float or array_like
        Bend or twist, in mrad.
    length_mm : float or array_like
        Length, in mm.
    out, partial, threads : optional
        What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
        compute. See python/docs/arrays.md.

    Returns
    -------
    float or numpy.ndarray
        The skew, in mm.

    Raises
    ------
    InputError
        When a number is not finite or impossible; it names the parameter, the value and the range.

    Examples
    --------
    >>> import gaugepoint
    >>> gaugepoint.rod_skew_mm(0.5, 60.0)
    0.03
    """

@overload
def top_land_crevice_cm3(bore_mm: float, land_mm: float, land_height_mm: float) -> float: ...
@overload
def top_land_crevice_cm3(
    bore_mm: _Numbers,
    land_mm: _Numbers,
    land_height_mm: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[False] = False,
    threads: int = 1,
) -> _Values: ...
@overload
def top_land_crevice_cm3(
    bore_mm: _Numbers,
    land_mm: _Numbers,
    land_height_mm: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[True],
    threads: int = 1,
) -> tuple[_Values, _Statuses]:
    """Give the volume between top land and bore.

    ``pi / 4 (bore^2 - land^2) height``.

    Parameters
    ----------
    bore_mm, land_mm : float or array_like
        Diameters, in mm.
    land_height_mm : float or array_like
        From the crown to the first ring, in mm.
    out, partial, threads : optional
        What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
        compute. See python/docs/arrays.md.

    Returns
    -------
    float or numpy.ndarray
        The volume, in cm3.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or the land is larger than the bore; it
        names the parameter, the value and the range.

    Examples
    --------
    >>> import gaugepoint
    >>> round(gaugepoint.top_land_crevice_cm3(86.0, 85.4, 7.0), 3)
    0.565
    """

def ring_hot_gap(
    gap_mm: float,
    bore_mm: float,
    bore_temperature_c: float,
    bore_expansion_per_k: float,
    ring_temperature_c: float,
    ring_expansion_per_k: float,
) -> tuple[float, float, bool]:
    """Give the end gap of a hot ring.

    Parameters
    ----------
    gap_mm, bore_mm : float
        Gap and bore at 20 C, in mm.
    bore_temperature_c : float
        Temperature of the bore, -40 C to 450 C.
    bore_expansion_per_k : float
        Mean coefficient of linear expansion of the bore from 20 C, per kelvin.
    ring_temperature_c : float
        Temperature of the ring, -40 C to 450 C.
    ring_expansion_per_k : float
        Mean coefficient of linear expansion of the ring from 20 C, per kelvin.

    Returns
    -------
    tuple
        Gap, gap to the first order, do the ends butt.

    Raises
    ------
    InputError
        When a number is not finite or impossible; it names the parameter, the value and the range.
    """

def pin_clearance(
    hole_mm: float,
    hole_temperature_c: float,
    hole_expansion_per_k: float,
    pin_mm: float,
    pin_temperature_c: float,
    pin_expansion_per_k: float,
) -> tuple[float, float]:
    """Give the clearance of a pin, cold and hot.

    Parameters
    ----------
    hole_mm, pin_mm : float
        Diameters at 20 C, in mm.
    hole_temperature_c : float
        Temperature of the hole, -40 C to 450 C.
    hole_expansion_per_k : float
        Mean coefficient of linear expansion of the hole from 20 C, per kelvin.
    pin_temperature_c : float
        Temperature of the pin, -40 C to 450 C.
    pin_expansion_per_k : float
        Mean coefficient of linear expansion of the pin from 20 C, per kelvin.

    Returns
    -------
    tuple
        At 20 C, at the temperatures given.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or the cold clearance is that of another pin; it
        names the parameter, the value and the range.
    """

def press_fit(parts: PressFitParts) -> _Pressed:
    """Give what a press fit holds.

    Parameters
    ----------
    parts : PressFitParts
        The pin and the eye.

    Returns
    -------
    tuple
        Pressures, hoop stresses, forces, torques, caution.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or out of order; it
        names the parameter, the value and the range.
    """

def assembly_temperature(
    diameter_mm: float,
    interference_mm: float,
    clearance_mm: float,
    expansion_per_k: float,
) -> tuple[float, float, int, str]:
    """Give the heat that lets a part be slipped on.

    Parameters
    ----------
    diameter_mm, interference_mm, clearance_mm : float
        Joint, interference and clearance, in mm.
    expansion_per_k : float
        Mean coefficient of linear expansion of the heated part from 20 C, per kelvin.

    Returns
    -------
    tuple
        Rise, temperature, place of the temper colour, caution.

    Raises
    ------
    InputError
        When a number is not finite or impossible; it names the parameter, the value and the range.
    """

def liner_in_block(parts: LinerParts) -> _Lined:
    """Give what becomes of a liner in its block.

    Parameters
    ----------
    parts : LinerParts
        The liner and its block.

    Returns
    -------
    tuple
        Pressures, interference, bores, temperature at which contact is lost, caution.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or out of order; it
        names the parameter, the value and the range.
    """

def deck(
    block_height_mm: float,
    stroke_mm: float,
    rod_mm: float,
    compression_height_mm: float,
    gasket_mm: float,
) -> tuple[float, float, float]:
    """Give where the piston stops.

    Parameters
    ----------
    block_height_mm, stroke_mm, rod_mm, compression_height_mm, gasket_mm : float
        Heights, in mm.

    Returns
    -------
    tuple
        Deck clearance, protrusion, squish.

    Raises
    ------
    InputError
        When a number is not finite or impossible; it names the parameter, the value and the range.
    """

def compression_ratio(chamber: Chamber) -> tuple[float, float, float, float, float]:
    """Give the compression ratio.

    Parameters
    ----------
    chamber : Chamber
        What encloses the gas.

    Returns
    -------
    tuple
        Swept, gasket, deck and clearance volume, ratio.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or nothing is left above the piston; it
        names the parameter, the value and the range.
    """

def gasket_band(
    projections_mm: Sequence[float],
    bands: Sequence[tuple[float, float, float]],
    step_mm: float,
) -> tuple[int, float, float, float]:
    """Give the gasket for the largest of several protrusions.

    Parameters
    ----------
    projections_mm : sequence of float
        Protrusions, in mm.
    bands : sequence of tuples of float
        Lines of the table: from, to, thickness, in mm.
    step_mm : float
        Last digit of the table, in mm.

    Returns
    -------
    tuple
        Place of the line, largest protrusion, thickness, squish.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or the table is not one; it
        names the parameter, the value and the range.
    """

def ring_gap_factors() -> list[tuple[str, float, str]]:
    """Give the published factors for the end gap.

    Returns
    -------
    list of tuple
        Duty, per mille of the bore, source.
    """

def dead_centres(
    crank_radius_mm: float,
    rod_mm: float,
    pin_offset_mm: float,
) -> tuple[float, float, float]:
    """Give the stroke and the dead centres of a crank.

    Parameters
    ----------
    crank_radius_mm, rod_mm : float
        Half of the stroke without offset, rod from centre to centre, in mm.
    pin_offset_mm : float
        Pin beside the piston's middle, positive toward the major thrust side, in mm.

    Returns
    -------
    tuple
        Stroke, crank angle of top and of bottom dead centre.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or the crank cannot turn; it
        names the parameter, the value and the range.
    """

def piston_travel(
    crank_radius_mm: float,
    rod_mm: float,
    pin_offset_mm: float,
    crank_angle_deg: float,
) -> tuple[float, float]:
    """Give how far the piston is down at a crank angle.

    Parameters
    ----------
    crank_radius_mm, rod_mm : float
        Half of the stroke without offset, rod from centre to centre, in mm.
    pin_offset_mm : float
        Pin beside the piston's middle, positive toward the major thrust side, in mm.
    crank_angle_deg : float
        Crank angle, -720 to 720 degrees.

    Returns
    -------
    tuple
        Travel from top dead centre, and more of it for each degree.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or the crank cannot turn; it
        names the parameter, the value and the range.
    """

def crank_angles_at(
    crank_radius_mm: float,
    rod_mm: float,
    pin_offset_mm: float,
    travel_mm: float,
) -> tuple[float, float]:
    """Give the crank angles at which the piston is down by a travel.

    Parameters
    ----------
    crank_radius_mm, rod_mm : float
        Half of the stroke without offset, rod from centre to centre, in mm.
    pin_offset_mm : float
        Pin beside the piston's middle, positive toward the major thrust side, in mm.
    travel_mm : float
        From top dead centre down, in mm.

    Returns
    -------
    tuple
        Crank angle on the way up and on the way down.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or the crank cannot turn; it
        names the parameter, the value and the range.
    """

@overload
def depth_in_bore_mm(deck_clearance_mm: float, crown_height_mm: float, height_mm: float, travel_mm: float) -> float: ...
@overload
def depth_in_bore_mm(
    deck_clearance_mm: _Numbers,
    crown_height_mm: _Numbers,
    height_mm: _Numbers,
    travel_mm: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[False] = False,
    threads: int = 1,
) -> _Values: ...
@overload
def depth_in_bore_mm(
    deck_clearance_mm: _Numbers,
    crown_height_mm: _Numbers,
    height_mm: _Numbers,
    travel_mm: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[True],
    threads: int = 1,
) -> tuple[_Values, _Statuses]:
    """Give how deep below the deck a place of the piston is.

    ``deck clearance + (crown - place) + travel``. Source: definition.

    Parameters
    ----------
    deck_clearance_mm : float or array_like
        From the deck down to the crown at top dead centre, in mm.
    crown_height_mm, height_mm : float or array_like
        Heights of the crown and of the place, up from the bottom edge of the skirt, in mm.
    travel_mm : float or array_like
        From top dead centre down, in mm.
    out, partial, threads : optional
        What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
        compute. See python/docs/arrays.md.

    Returns
    -------
    float or numpy.ndarray
        The depth, in mm; negative above the deck.

    Raises
    ------
    InputError
        When a number is not finite or impossible; it names the parameter, the value and the range.

    Examples
    --------
    >>> import gaugepoint
    >>> gaugepoint.depth_in_bore_mm(0.5, 60.0, 12.0, 10.0)
    58.5
    """

def least_clearance_of_section(
    mean_mm: float,
    cos_mm: Sequence[float],
    sin_mm: Sequence[float],
) -> tuple[float, float, float]:
    """Give the least value of a section over every angle.

    Parameters
    ----------
    mean_mm : float
        Mean of the section, in mm.
    cos_mm, sin_mm : sequence of float
        Coefficients in mm, the first of order 1; up to 32.

    Returns
    -------
    tuple
        The least value, its angle, how far the true one can lie below.

    Raises
    ------
    InputError
        When a number is not finite or impossible; it names the parameter, the value and the range.
    """

def soak(
    excess_k: float,
    time_constant_min: float,
    size_mm: float,
    expansion_per_k: float,
    allowed_mm: float,
    excess_error_k: float,
    expansion_error_per_k: float,
) -> tuple[str, float, float, float, float]:
    """Say what a warm part means for its size.

    Parameters
    ----------
    excess_k, time_constant_min, size_mm, expansion_per_k, allowed_mm, excess_error_k, expansion_error_per_k : float
        The part and what is asked of it.

    Returns
    -------
    tuple
        Advice, error, wait, correction, uncertainty of the correction.

    Raises
    ------
    InputError
        When a number is not finite or impossible; it names the parameter.
    """

def adequacy_proven(tolerance: _Limits, u: float, least_zone: float) -> _Adequacy:
    """Hold an uncertainty against a tolerance, with a guard band of ``1.65 u``.

    Parameters
    ----------
    tolerance : tuple of float or None
        Lower and upper limit.
    u, least_zone : float
        Standard uncertainty; share of the tolerance that must be left.

    Returns
    -------
    tuple
        Is it adequate, largest uncertainty, ratio, zone.

    Raises
    ------
    InputError
        When a number is not finite or impossible; it names the parameter.
    """

def adequacy_stringent(tolerance: _Limits, u: float, amount: float, least_zone: float) -> _Adequacy:
    """Hold an uncertainty against a tolerance, with a guard band that is a share of ``U = 2 u``.

    Parameters
    ----------
    tolerance : tuple of float or None
        Lower and upper limit.
    u, amount, least_zone : float
        Standard uncertainty; the share of the guard band; share of the tolerance that must be left.

    Returns
    -------
    tuple
        Is it adequate, largest uncertainty, ratio, zone.

    Raises
    ------
    InputError
        When a number is not finite or impossible; it names the parameter.
    """

def adequacy_relaxed(tolerance: _Limits, u: float, amount: float, least_zone: float) -> _Adequacy:
    """Hold an uncertainty against a tolerance, outside by a share of ``U = 2 u``: always refused.

    Parameters
    ----------
    tolerance : tuple of float or None
        Lower and upper limit.
    u, amount, least_zone : float
        Standard uncertainty; the share of the guard band; share of the tolerance that must be left.

    Returns
    -------
    tuple
        Is it adequate, largest uncertainty, ratio, zone.

    Raises
    ------
    InputError
        Always: the rule asks nothing of a gauge.
    """

def adequacy_ratio(tolerance: _Limits, u: float, amount: float, least_zone: float) -> _Adequacy:
    """Hold an uncertainty against a tolerance that must be so many times ``2 U`` wide.

    Parameters
    ----------
    tolerance : tuple of float or None
        Lower and upper limit.
    u, amount, least_zone : float
        Standard uncertainty; the ratio; a share that is not used further.

    Returns
    -------
    tuple
        Is it adequate, largest uncertainty, ratio, zone.

    Raises
    ------
    InputError
        When a number is not finite or impossible; it names the parameter.
    """

def drift(before_mm: float, after_mm: float, limit_mm: float) -> tuple[float, float, float, float]:
    """Give the drift of a gauge as a source of uncertainty.

    Parameters
    ----------
    before_mm, after_mm, limit_mm : float
        Readings of the master, and the limit.

    Returns
    -------
    tuple of float
        Drift, uncertainty, its shared part, its own part.

    Raises
    ------
    InputError
        When a number is not finite, or the drift is beyond the limit.
    """

def agreement(first: float, first_u: float, second: float, second_u: float) -> _Agreed:
    """Hold two values against each other.

    Parameters
    ----------
    first, first_u, second, second_u : float
        Values and standard uncertainties.

    Returns
    -------
    tuple
        E_n, difference, both expanded uncertainties, do they agree.

    Raises
    ------
    InputError
        When a number is not finite, or an uncertainty is not above 0.
    """

def readers(first: Sequence[float], second: Sequence[float], resolution: float) -> _Agreed:
    """Hold the lists of two readers against each other.

    Parameters
    ----------
    first, second : sequence of float
        What each read at one place.
    resolution : float
        Resolution of the gauge.

    Returns
    -------
    tuple
        E_n, difference, both expanded uncertainties, do they agree.

    Raises
    ------
    InputError
        When a list has fewer than two readings, a number is not finite, or the resolution is not above 0.
    """

def outliers_mean(points: Sequence[tuple[float, float, float]], alpha: float) -> _Outliers:
    """Test a station list for outliers, apart from one mean.

    Parameters
    ----------
    points : sequence of tuples of float
        Depth, angle and value of each point.
    alpha : float
        Probability of a false alarm.

    Returns
    -------
    tuple
        Deviation, degrees of freedom, farthest, critical, beyond.

    Raises
    ------
    InputError
        When there are too few or too many points, or a number is not finite or impossible.
    """

def outliers_common_oval(points: Sequence[tuple[float, float, float]], alpha: float) -> _Outliers:
    """Test a station list for outliers, apart from a mean for each depth and one oval.

    Parameters
    ----------
    points : sequence of tuples of float
        Depth, angle and value of each point.
    alpha : float
        Probability of a false alarm.

    Returns
    -------
    tuple
        Deviation, degrees of freedom, farthest, critical, beyond.

    Raises
    ------
    InputError
        When there are too few or too many points, or a number is not finite or impossible.
    """

def outliers_oval_by_depth(points: Sequence[tuple[float, float, float]], alpha: float) -> _Outliers:
    """Test a station list for outliers, apart from a mean and an oval for each depth.

    Parameters
    ----------
    points : sequence of tuples of float
        Depth, angle and value of each point.
    alpha : float
        Probability of a false alarm.

    Returns
    -------
    tuple
        Deviation, degrees of freedom, farthest, critical, beyond.

    Raises
    ------
    InputError
        When there are too few or too many points, or a number is not finite or impossible.
    """

def judge(name: str, value: float, diameter_mm: float | None) -> str:
    """Hold one value against the table of plausible values.

    Parameters
    ----------
    name : str
        Name of a row.
    value : float
        The value, in the unit of the row.
    diameter_mm : float or None
        What relative rows refer to.

    Returns
    -------
    str
        ``usual`` or ``odd``.

    Raises
    ------
    InputError
        When the value is impossible, or there is no such row.
    """

def plausibility_table() -> list[_Row]:
    """Give the table of plausible values.

    Returns
    -------
    list of tuple
        Name, label, unit, what it is relative to, possible and usual range, reason, slips.
    """

def assess(job: bytes, working: bool, progress: Callable[[int, int], object] | None) -> tuple[str, str, str]:
    """Assess a job given as JSON. Other threads run meanwhile.

    Parameters
    ----------
    job : bytes
        The job document, JSON in UTF-8.
    working : bool
        Put the working of every number into the report.
    progress : callable or None
        Told what is done and of how much.

    Returns
    -------
    tuple of str
        The report as JSON, as text and as Markdown.

    Raises
    ------
    InputError
        When the document or a field of it is refused.
    """

def job_schema() -> str:
    """Give the JSON Schema of a job document.

    Returns
    -------
    str
        The schema, as JSON.
    """

def report_schema() -> str:
    """Give the JSON Schema of a report.

    Returns
    -------
    str
        The schema, as JSON.
    """

def check_sheet(sheet: bytes) -> str:
    """Hold the limits of a printed sheet against themselves. Other threads run meanwhile.

    Parameters
    ----------
    sheet : bytes
        The sheet document, JSON in UTF-8.

    Returns
    -------
    str
        The report as JSON.

    Raises
    ------
    InputError
        When the document or a field of it is refused.
    """

def sheet_schema() -> str:
    """Give the JSON Schema of a sheet document.

    Returns
    -------
    str
        The schema, as JSON.
    """

def sheet_report_schema() -> str:
    """Give the JSON Schema of the report on a sheet.

    Returns
    -------
    str
        The schema, as JSON.
    """

def fit(document: bytes, working: bool) -> tuple[str, str]:
    """Compute a hot fit given as JSON. Other threads run meanwhile.

    Parameters
    ----------
    document : bytes
        The fit document, JSON in UTF-8.
    working : bool
        Put the working of every measured value into the report.

    Returns
    -------
    tuple of str
        The report as JSON and as text.

    Raises
    ------
    InputError
        When the document or a field of it is refused.
    """

def fit_schema() -> str:
    """Give the JSON Schema of a fit document.

    Returns
    -------
    str
        The schema, as JSON.
    """

def fit_report_schema() -> str:
    """Give the JSON Schema of a report on a hot fit.

    Returns
    -------
    str
        The schema, as JSON.
    """

def evaluate_stack(document: bytes, working: bool, progress: Callable[[int, int], object] | None) -> tuple[str, str, str]:
    """Evaluate a stack given as JSON. Other threads run meanwhile.

    Parameters
    ----------
    document : bytes
        The stack document, JSON in UTF-8.
    working : bool
        Put the working of every number that has a formula into the report.
    progress : callable or None
        Told what is done and of how much.

    Returns
    -------
    tuple of str
        The report as JSON, as text and as Markdown.

    Raises
    ------
    InputError
        When the document or a field of it is refused.
    """

def stack_schema() -> str:
    """Give the JSON Schema of a stack document.

    Returns
    -------
    str
        The schema, as JSON.
    """

def stack_report_schema() -> str:
    """Give the JSON Schema of a report on a stack.

    Returns
    -------
    str
        The schema, as JSON.
    """

def revisit(document: bytes) -> tuple[str, str, str]:
    """Compare two jobs given as JSON. Other threads run meanwhile.

    Parameters
    ----------
    document : bytes
        The revisit document, JSON in UTF-8.

    Returns
    -------
    tuple of str
        The report as JSON, as text and as Markdown.

    Raises
    ------
    InputError
        When the document or a field of it is refused.
    """

def revisit_schema() -> str:
    """Give the JSON Schema of a revisit document.

    Returns
    -------
    str
        The schema, as JSON.
    """

def revisit_report_schema() -> str:
    """Give the JSON Schema of a report on a revisit.

    Returns
    -------
    str
        The schema, as JSON.
    """

def what_if(document: bytes, progress: Callable[[int, int], object] | None) -> tuple[str, str, str]:
    """Assess a job with every combination of values, given as JSON. Other threads run meanwhile.

    Parameters
    ----------
    document : bytes
        The what-if document, JSON in UTF-8.
    progress : callable or None
        Told what is done and of how much.

    Returns
    -------
    tuple of str
        The report as JSON, as text and as Markdown.

    Raises
    ------
    InputError
        When the document or a field of it is refused.
    """

def what_if_schema() -> str:
    """Give the JSON Schema of a what-if document.

    Returns
    -------
    str
        The schema, as JSON.
    """

def what_if_report_schema() -> str:
    """Give the JSON Schema of a report on a what-if.

    Returns
    -------
    str
        The schema, as JSON.
    """

def measure(document: bytes, working: bool, progress: Callable[[int, int], object] | None) -> tuple[str, str]:
    """Evaluate a measurement given as JSON. Other threads run meanwhile.

    Parameters
    ----------
    document : bytes
        The measurement document, JSON in UTF-8.
    working : bool
        Put the working of every number of the first order into the report.
    progress : callable or None
        Told what is done and of how much.

    Returns
    -------
    tuple of str
        The report as JSON and as text.

    Raises
    ------
    InputError
        When the document or a field of it is refused.
    """

def presets() -> str:
    """Give the presets of gauges as JSON.

    Returns
    -------
    str
        A list of rows of published tables, as JSON.
    """

def measurement_schema() -> str:
    """Give the JSON Schema of a measurement document.

    Returns
    -------
    str
        The schema, as JSON.
    """

def measurement_report_schema() -> str:
    """Give the JSON Schema of a report on a measurement.

    Returns
    -------
    str
        The schema, as JSON.
    """

def budget(document: bytes, progress: Callable[[int, int], object] | None) -> tuple[str, str]:
    """Evaluate a budget given as JSON. Other threads run meanwhile.

    Parameters
    ----------
    document : bytes
        The budget document, JSON in UTF-8.
    progress : callable or None
        Told what is done and of how much.

    Returns
    -------
    tuple of str
        The report as JSON and as text.

    Raises
    ------
    InputError
        When the document or a field of it is refused.
    """

def budget_schema() -> str:
    """Give the JSON Schema of a budget document.

    Returns
    -------
    str
        The schema, as JSON.
    """

def budget_report_schema() -> str:
    """Give the JSON Schema of the report on a budget.

    Returns
    -------
    str
        The schema, as JSON.
    """

@overload
def coverage_factor(probability: float, dof: float) -> float: ...
@overload
def coverage_factor(
    probability: _Numbers,
    dof: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[False] = False,
    threads: int = 1,
) -> _Values: ...
@overload
def coverage_factor(
    probability: _Numbers,
    dof: _Numbers,
    *,
    out: _Array | None = None,
    partial: Literal[True],
    threads: int = 1,
) -> tuple[_Values, _Statuses]:
    """Give the coverage factor of Student's t, ``t_p(dof)``.

    Source: JCGM 100:2008, G.3.2.

    Parameters
    ----------
    probability : float or array_like
        Coverage probability, between 0 and 1.
    dof : float or array_like
        Degrees of freedom, from 0.5; ``math.inf`` gives the factor of the normal.
    out, partial, threads : optional
        What every flat function takes besides: where the results go, whether refused elements leave the others their results, how many threads
        compute. See python/docs/arrays.md.

    Returns
    -------
    float or numpy.ndarray
        The coverage factor.

    Raises
    ------
    InputError
        When a number is not finite or impossible; it names the parameter, the value and the range.

    Examples
    --------
    >>> from gaugepoint.uncertainty import coverage_factor
    >>> round(coverage_factor(0.99, 16), 2)
    2.92
    """

def effective_dof(contributions: Sequence[float], dofs: Sequence[float]) -> float:
    """Give the effective degrees of freedom of independent contributions, by Welch-Satterthwaite.

    Source: JCGM 100:2008, G.4.1, (G.2b).

    Parameters
    ----------
    contributions : sequence of float
        Sensitivity times standard uncertainty of each source.
    dofs : sequence of float
        Degrees of freedom of each, from 0.5; ``math.inf`` where the uncertainty is taken as exact.

    Returns
    -------
    float
        The degrees of freedom, not truncated; ``math.inf`` when all that count are.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or there are not as many of the one as of the other; it names the place.

    Examples
    --------
    >>> from gaugepoint.uncertainty import effective_dof
    >>> round(effective_dof([5.8, 3.9, 6.7], [24, 5, 8]), 1)
    25.4
    """

def standard_uncertainty(shape: str, half_width: float, parameter: float | None = None) -> float:
    """Give the standard uncertainty of a half-width.

    Sources: JCGM 100:2008, 4.3; JCGM 101:2008, 6.4.

    Parameters
    ----------
    shape : {"rectangular", "triangular", "trapezoidal", "curvilinear_trapezoid", "arcsine"}
        The distribution between the limits.
    half_width : float
        Half of the distance between the limits, in any one unit.
    parameter : float, optional
        Of a trapezoid the width of the top over that of the base, 0 to 1; of a curvilinear trapezoid the largest error of the
        half-width. The other shapes have none.

    Returns
    -------
    float
        The standard uncertainty, in the same unit.

    Raises
    ------
    InputError
        When a number is not finite or impossible, the shape is unknown, or the parameter is missing or not used.

    Examples
    --------
    >>> from gaugepoint.uncertainty import standard_uncertainty
    >>> round(standard_uncertainty("rectangular", 6.0), 4)
    3.4641
    """

def numerical_tolerance(standard_uncertainty: float, digits: int) -> float:
    """Give the numerical tolerance of a standard uncertainty.

    Half a unit of the last digit that is meant: 0.00035 to two digits has 0.000005. Source: JCGM 101:2008, 7.9.2.

    Parameters
    ----------
    standard_uncertainty : float
        The standard uncertainty, 0 or more.
    digits : int
        Significant digits that are meant, 1 or 2.

    Returns
    -------
    float
        The tolerance, in the same unit.

    Raises
    ------
    InputError
        When a number is not finite or impossible; it names the parameter, the value and the range.

    Examples
    --------
    >>> from gaugepoint.uncertainty import numerical_tolerance
    >>> numerical_tolerance(0.00035, 2)
    5e-06
    """

@final
class Law:
    """A law of expansion, made and checked once."""

    def at(self, temperature_c: float) -> tuple[float, float, float | None]:
        """Give strain, instantaneous coefficient, and mean coefficient from 20 C (none at 20 C) at a temperature."""

def growth_mean_coefficient(base_c: float, mean_per_k: float, from_c: float, to_c: float) -> Law:
    """Make the law of one mean coefficient from a base.

    Parameters
    ----------
    base_c : float
        Temperature the mean starts from.
    mean_per_k : float
        The coefficient.
    from_c, to_c : float
        Range, which holds 20 C.

    Returns
    -------
    Law
        The law.

    Raises
    ------
    InputError
        When a number is impossible.
    """

def growth_mean_table(base_c: float, rows: Sequence[tuple[float, float]]) -> Law:
    """Make the law of a table of mean coefficients from a base.

    Parameters
    ----------
    base_c : float
        Temperature the means start from.
    rows : sequence of (float, float)
        Temperature and mean coefficient up to it, in rising order.

    Returns
    -------
    Law
        The law.

    Raises
    ------
    InputError
        When a number is impossible.
    """

def growth_instantaneous_table(rows: Sequence[tuple[float, float]]) -> Law:
    """Make the law of a table of instantaneous coefficients.

    Parameters
    ----------
    rows : sequence of (float, float)
        Temperature and instantaneous coefficient at it, in rising order.

    Returns
    -------
    Law
        The law.

    Raises
    ------
    InputError
        When a number is impossible.
    """

def growth_instantaneous_polynomial(kelvin_coefficients: Sequence[float], from_c: float, to_c: float) -> Law:
    """Make the law of an instantaneous coefficient that is a polynomial.

    Parameters
    ----------
    kelvin_coefficients : sequence of float
        c0, c1, c2, ... over kelvin.
    from_c, to_c : float
        Range, which holds 20 C.

    Returns
    -------
    Law
        The law.

    Raises
    ------
    InputError
        When a number is impossible.
    """

def growth_strain_polynomial(kelvin_coefficients: Sequence[float], from_c: float, to_c: float) -> Law:
    """Make the law of a strain that is a polynomial.

    Parameters
    ----------
    kelvin_coefficients : sequence of float
        c0, c1, c2, ... over kelvin.
    from_c, to_c : float
        Range, which holds 20 C.

    Returns
    -------
    Law
        The law.

    Raises
    ------
    InputError
        When a number is impossible.
    """

def growth_graphite_iron(nodularity_percent: float, graphite_percent: float, pearlite_to_ferrite: float) -> Law:
    """Make the law of compacted or spheroidal graphite iron.

    Parameters
    ----------
    nodularity_percent : float
        Nodularity, in %.
    graphite_percent : float
        Area fraction of graphite, in %.
    pearlite_to_ferrite : float
        Pearlite over ferrite in the matrix.

    Returns
    -------
    Law
        The law.

    Raises
    ------
    InputError
        When a number is impossible.
    """

def growth_built_in(name: str) -> Law:
    """Give the law of a built-in material.

    Parameters
    ----------
    name : str
        Its name.

    Returns
    -------
    Law
        The law.

    Raises
    ------
    InputError
        When a number is impossible.
    """

def built_in_materials() -> str:
    """Give the built-in materials as JSON.

    Returns
    -------
    str
        A list of rows, as JSON.
    """

def hot_fit(
    piston_diameter_mm: float,
    piston: Piston,
    growth: Sequence[tuple[Law, float, float]],
    piston_field: Sequence[tuple[float, float, float]],
    bore: Bore,
    bore_law: Law,
    bore_field: Sequence[tuple[float, float]],
    motion: tuple[float, float, float, float, float] | None,
) -> HotFit:
    """Make a hot fit; `gaugepoint.hot.HotFit` is its public form.

    Parameters
    ----------
    piston_diameter_mm : float
        Diameter of the bare piston at its gauge point, at 20 C.
    piston : Piston
        Its form.
    growth : sequence of (Law, float, float)
        Law and the growth ratios on both axes, of every surface.
    piston_field : sequence of (float, float, float)
        Height, and the temperatures on both axes there.
    bore : Bore
        The bore.
    bore_law : Law
        Law of its wall.
    bore_field : sequence of (float, float)
        Depth, and the temperature of the wall there.
    motion : tuple of float or None
        Crank radius, rod, pin offset, deck clearance, height of the crown.

    Returns
    -------
    HotFit
        The fit.

    Raises
    ------
    InputError
        When a number is impossible or a table does not reach where the piston goes; it names the place.
    """

_Place: TypeAlias = tuple[int, float, float, float | None, float | None]

@final
class HotFit:
    """One piston in one bore at its temperatures, made and checked once."""

    def clearance_mm(self, angle_deg: float, height_mm: float, position: tuple[str, float]) -> float:
        """Give the clearance on one side."""

    def diametral_mm(self, angle_deg: float, height_mm: float, position: tuple[str, float]) -> float:
        """Give the clearance over the diameter."""

    def running_mm(self, position: tuple[str, float]) -> float:
        """Give the running clearance at the gauge point."""

    def map_into(self, angles_deg: Sequence[float], heights_mm: Sequence[float], position: tuple[str, float], out: NDArray[np.float64]) -> None:
        """Write the clearance on one side over angles and heights into an array."""

    def smallest(self, surface: int, position: tuple[str, float] | None) -> tuple[float, float, _Place]:
        """Give the smallest clearance of a surface."""

    def contact(self, surface: int, position: tuple[str, float], below_mm: float) -> tuple[float, list[tuple[float, float, float]]]:
        """Give the area and the bands of a surface below a clearance."""

    def best_placed(self, surface: int, position: tuple[str, float]) -> tuple[float, float, float, float]:
        """Give where a surface has most room."""

    def onset(self, scenario: str, touching_mm: float) -> tuple[Literal["touches", "touches_at_20_c", "no_contact"], float | None, float | None, _Place | None, float | None, str | None, bool]:
        """Give the first contact."""

    def bore_for_running_mm(self, wanted_mm: float, position: tuple[str, float]) -> tuple[float | None, str | None]:
        """Give the bore for a running clearance at the gauge point."""

    def bore_for_smallest_mm(self, wanted_mm: float) -> tuple[float | None, str | None]:
        """Give the bore for a smallest clearance of the skirt."""

    def temperature_for_bench_c(self, bench_mm: float, scenario: str, touching_mm: float) -> tuple[float | None, str | None]:
        """Give the temperature of first contact for a clearance on the bench."""

    def ovality(self, surface: int, height_mm: float) -> tuple[float, float, float]:
        """Give the ovality of a surface: cold, running, and cold of a piston that runs round."""

    def profile(self, surface: int, count: int) -> list[list[float]]:
        """Give heights and four radii of a surface."""

    def section(self, height_mm: float, position: tuple[str, float], count: int) -> list[list[float]]:
        """Give angles and four radii of a section."""

def illustrative_duties() -> str:
    """Give the illustrative temperatures by duty as JSON.

    Returns
    -------
    str
        A list of rows, as JSON.
    """

def clearances(
    bore_law: Sequence[float],
    piston_law: Sequence[float],
    bore_mm: NDArray[np.float64],
    piston_mm: NDArray[np.float64],
    parts_temperature_c: NDArray[np.float64],
    bore_temperature_c: NDArray[np.float64],
    piston_temperature_c: NDArray[np.float64],
    out: tuple[NDArray[np.float64], NDArray[np.float64]] | None,
    partial: bool,
) -> tuple[NDArray[np.float64], NDArray[np.float64], NDArray[np.int32] | None, int, list[tuple[int, InputError]]]:
    """Give bench and running clearance of many rows; `gaugepoint.batch.clearances` is its public form.

    Parameters
    ----------
    bore_law, piston_law : list
        A mean coefficient; or three coefficients and the two ends of their range.
    bore_mm, piston_mm, parts_temperature_c, bore_temperature_c, piston_temperature_c : numpy.ndarray
        The columns.
    out : tuple of numpy.ndarray or None
        Where the results go.
    partial : bool
        Whether rows that are refused leave the others their results.

    Returns
    -------
    tuple
        Both clearances, statuses, the number of refused rows, and the first of them with their errors.

    Raises
    ------
    InputError
        When a law is refused or the columns are not of one length.
    TypeError
        When a column is no array of one dimension and float64.
    ValueError
        When a result has no place of its own.
    """

def steps(values_mm: NDArray[np.float64], first: int, up: Sequence[float], down: Sequence[float]) -> NDArray[np.int8]:
    """Give of many values the number of the step that each stands on; of the frames.

    Parameters
    ----------
    values_mm : numpy.ndarray
        The values.
    first : int
        Number of the smallest.
    up, down : list of float
        Values from which on the number is one more, and one less.

    Returns
    -------
    numpy.ndarray
        The numbers, as int8.

    Raises
    ------
    TypeError, ValueError
        When an array is none of its kind.
    """

def counted(codes: NDArray[np.int8], kinds: int) -> list[int]:
    """Count codes: how many there are of 0, 1, and so on; of the frames.

    Parameters
    ----------
    codes : numpy.ndarray
        The codes.
    kinds : int
        How many are counted, from 0.

    Returns
    -------
    list of int
        How many there are of each.

    Raises
    ------
    TypeError, ValueError
        When it is no array of its kind.
    """

@final
class Stack:
    """A linear stack, ready for its probabilities; `gaugepoint.stack.Stack` is its public form.

    Parameters
    ----------
    contributors : sequence of Contributor
        What it is made of.
    causes : sequence of SharedCause
        What several of them share.

    Raises
    ------
    InputError
        When a contributor or a cause is refused; it names the place.
    """

    def __new__(cls, contributors: Sequence[Contributor], causes: Sequence[SharedCause]) -> Stack: ...
    def forms(self) -> tuple[list[float], list[tuple[float, float]], float | None]:
        """Give the published forms.

        Returns
        -------
        tuple
            Nominal, mean and standard deviation; ends of worst case, root-sum-square, Bender's and the modified; the modified factor.
        """
    def root_sum_square(self, factor: float) -> tuple[float, float]:
        """Give the root-sum-square times a factor.

        Parameters
        ----------
        factor : float
            The factor.

        Returns
        -------
        tuple of float
            Both ends.

        Raises
        ------
        InputError
            When the factor is refused.
        """
    def shares(self) -> list[tuple[str, bool, float, float]]:
        """Give the shares of the variance, largest first.

        Returns
        -------
        list of tuple
            Name, whether it is a shared cause, standard deviation, share.
        """
    def outside(self, lower: float, upper: float) -> tuple[float, float, float]:
        """Give the probabilities outside limits.

        Parameters
        ----------
        lower, upper : float
            The limits; an infinite one is none.

        Returns
        -------
        tuple of float
            Below, above, bound of the relative error of both.

        Raises
        ------
        InputError
            When a limit is refused, or a probability cannot be had.
        """
    def capability(self, lower: float, upper: float) -> tuple[float, float, tuple[float, float, float]]:
        """Give capability indices and the probabilities outside.

        Parameters
        ----------
        lower, upper : float
            The limits.

        Returns
        -------
        tuple
            Cp, Cpk, and as `outside`.

        Raises
        ------
        InputError
            When a limit is refused, or a probability cannot be had.
        """
    def quantile(self, probability: float) -> float:
        """Give the size that the stack is below with a probability.

        Parameters
        ----------
        probability : float
            The probability.

        Returns
        -------
        float
            The size.

        Raises
        ------
        InputError
            When the probability is refused, or the size cannot be had.
        """
    def quantile_above(self, probability: float) -> float:
        """Give the size that the stack is above with a probability.

        Parameters
        ----------
        probability : float
            The probability.

        Returns
        -------
        float
            The size.

        Raises
        ------
        InputError
            When the probability is refused, or the size cannot be had.
        """
    def sensitivities(self, lower: float, upper: float) -> list[tuple[str, float, float, float]]:
        """Give the derivatives of the probabilities outside by each tolerance.

        Parameters
        ----------
        lower, upper : float
            The limits; an infinite one is none.

        Returns
        -------
        list of tuple
            Name, tolerance, and the derivatives of the probabilities below and above.

        Raises
        ------
        InputError
            When a limit is refused, or a derivative cannot be had.
        """
    def allocate(
        self, lower: float, upper: float, outside: float | None, cpk: float | None, costs: Sequence[ToleranceCost]
    ) -> tuple[list[float], float, float, tuple[float, float, float]]:
        """Give the tolerances of least cost.

        Parameters
        ----------
        lower, upper : float
            The limits.
        outside, cpk : float or None
            What is wanted: a probability outside, or a Cpk.
        costs : sequence of ToleranceCost
            What tolerances cost.

        Returns
        -------
        tuple
            Tolerances, cost, price, and as `outside`.

        Raises
        ------
        InputError
            When something is refused, or cannot be reached.
        """
    def densities(self, sizes: Sequence[float] | NDArray[np.float64]) -> NDArray[np.float64]:
        """Give the density at sizes.

        Parameters
        ----------
        sizes : sequence of float
            Where.

        Returns
        -------
        numpy.ndarray
            The densities.

        Raises
        ------
        InputError
            When a size is refused, or a density cannot be had.
        """
    def curve(self, count: int) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
        """Give a density to draw.

        Parameters
        ----------
        count : int
            Number of sizes.

        Returns
        -------
        tuple of numpy.ndarray
            Sizes and densities.

        Raises
        ------
        InputError
            When the count is refused, or a density cannot be had.
        """
    def histogram(self, edges: Sequence[float] | NDArray[np.float64]) -> NDArray[np.float64]:
        """Give the probability between edges.

        Parameters
        ----------
        edges : sequence of float
            Rising edges.

        Returns
        -------
        numpy.ndarray
            The probabilities, one less than edges.

        Raises
        ------
        InputError
            When an edge is refused, or a probability cannot be had.
        """
    def trials(
        self, seed: int, first: int, count: int, points: str, hypercube_trials: int | None, progress: Callable[[int, int], object] | None
    ) -> NDArray[np.float64]:
        """Give the values of trials.

        Parameters
        ----------
        seed, first, count : int
            Seed, number of the first trial, and how many there are.
        points : str
            How the points lie.
        hypercube_trials : int or None
            Trials of the whole run of a Latin hypercube.
        progress : callable or None
            Told what is done and of how much.

        Returns
        -------
        numpy.ndarray
            The values.

        Raises
        ------
        InputError
            When something is refused.
        """
    def adaptive(
        self, seed: int, probability: float, coverage: str, digits: int, most_trials: int, progress: Callable[[int, int], object] | None
    ) -> tuple[_Summary, int, float, bool]:
        """Make trials until they are stable.

        Parameters
        ----------
        seed : int
            Seed.
        probability : float
            Coverage probability.
        coverage : str
            The interval whose ends must settle.
        digits : int
            Significant digits that are meant.
        most_trials : int
            Trials at which it stops unsettled.
        progress : callable or None
            Told what is done and of how much.

        Returns
        -------
        tuple
            Summary, sequences, tolerance, settled.

        Raises
        ------
        InputError
            When something is refused.
        """
    def importance(
        self,
        toward: str,
        limit: float,
        seed: int,
        first: int,
        count: int,
        points: str,
        hypercube_trials: int | None,
        progress: Callable[[int, int], object] | None,
    ) -> NDArray[np.float64]:
        """Give the weights of trials of a rare tail.

        Parameters
        ----------
        toward : str
            The side of the limit that is rare.
        limit : float
            The limit.
        seed, first, count : int
            Seed, number of the first trial, and how many there are.
        points : str
            How the points lie.
        hypercube_trials : int or None
            Trials of the whole run of a Latin hypercube.
        progress : callable or None
            Told what is done and of how much.

        Returns
        -------
        numpy.ndarray
            The weights.

        Raises
        ------
        InputError
            When something is refused.
        """

@final
class Function:
    """A function of contributors; `gaugepoint.stack.Function` is its public form.

    Parameters
    ----------
    contributors : sequence of Contributor
        What it is a function of.
    formula : str or None
        A formula.
    symbols : sequence of str or None
        Symbols of the contributors in it; without them their names.
    engine : str or None
        Or a ready-made stack.
    callable : callable or None
        Or what computes it.

    Raises
    ------
    InputError
        When a contributor, the formula or the engine is refused.
    """

    def __new__(
        cls,
        contributors: Sequence[Contributor],
        formula: str | None,
        symbols: Sequence[str] | None,
        engine: str | None,
        callable: Callable[..., NDArray[np.float64]] | None,
    ) -> Function: ...
    def nominal(self) -> float:
        """Give the value at the nominals.

        Returns
        -------
        float
            The value.
        """
    def propagation(
        self,
    ) -> tuple[
        Literal["exact", "numeric"],
        float,
        tuple[float, float],
        tuple[float, float, float, float | None, float | None],
        list[tuple[str, float, float, float, float, float]],
    ]:
        """Give the moments to first and second order, and what each contributor does.

        Returns
        -------
        tuple
            Derivation, nominal, moments of both orders, effects.
        """
    def worst_case(
        self,
    ) -> tuple[
        Literal["monotone", "subdivision", "searched"],
        tuple[float, list[tuple[str, float]], float | None],
        tuple[float, list[tuple[str, float]], float | None],
    ]:
        """Give the smallest and the largest value within the limits.

        Returns
        -------
        tuple
            Proof; of each end the value that is attained, the sizes there, and the bound.
        """
    def trials(
        self, seed: int, first: int, count: int, points: str, hypercube_trials: int | None, progress: Callable[[int, int], object] | None
    ) -> NDArray[np.float64]:
        """Give the values of trials.

        Parameters
        ----------
        seed, first, count : int
            Seed, number of the first trial, and how many there are.
        points : str
            How the points lie.
        hypercube_trials : int or None
            Trials of the whole run of a Latin hypercube.
        progress : callable or None
            Told what is done and of how much.

        Returns
        -------
        numpy.ndarray
            The values.

        Raises
        ------
        InputError
            When something is refused, or the function is not finite in a trial.
        """
    def adaptive(
        self, seed: int, probability: float, coverage: str, digits: int, most_trials: int, progress: Callable[[int, int], object] | None
    ) -> tuple[_Summary, int, float, bool]:
        """Make trials until they are stable.

        Parameters
        ----------
        seed : int
            Seed.
        probability : float
            Coverage probability.
        coverage : str
            The interval whose ends must settle.
        digits : int
            Significant digits that are meant.
        most_trials : int
            Trials at which it stops unsettled.
        progress : callable or None
            Told what is done and of how much.

        Returns
        -------
        tuple
            Summary, sequences, tolerance, settled.

        Raises
        ------
        InputError
            When something is refused, or the function is not finite in a trial.
        """
    def importance(
        self,
        toward: str,
        limit: float,
        seed: int,
        first: int,
        count: int,
        points: str,
        hypercube_trials: int | None,
        progress: Callable[[int, int], object] | None,
    ) -> NDArray[np.float64]:
        """Give the weights of trials of a rare tail.

        Parameters
        ----------
        toward : str
            The side of the limit that is rare.
        limit : float
            The limit.
        seed, first, count : int
            Seed, number of the first trial, and how many there are.
        points : str
            How the points lie.
        hypercube_trials : int or None
            Trials of the whole run of a Latin hypercube.
        progress : callable or None
            Told what is done and of how much.

        Returns
        -------
        numpy.ndarray
            The weights.

        Raises
        ------
        InputError
            When something is refused, or the function is not finite in a trial.
        """

def engine_stacks() -> list[tuple[str, list[str], str]]:
    """Give the ready-made stacks of an engine.

    Returns
    -------
    list of tuple
        Word, names of the contributors, unit.
    """

def trials_summary(values: NDArray[np.float64], probability: float) -> _Summary:
    """Give mean, standard deviation and intervals of the values of trials.

    Parameters
    ----------
    values : numpy.ndarray
        The values.
    probability : float
        Coverage probability of the intervals.

    Returns
    -------
    tuple
        Number, mean, standard deviation, probability, ends of the symmetric and of the shortest interval.

    Raises
    ------
    InputError
        When a value or the probability is refused.
    TypeError
        When the values are no array of one dimension and float64.
    """

def trials_outside(
    values: NDArray[np.float64],
    points: str,
    hypercube_trials: int | None,
    lower: float,
    upper: float,
    confidence: float,
) -> tuple[tuple[int, float, float, float], tuple[int, float, float, float]]:
    """Give the shares of the values of trials outside two limits, with intervals of Clopper and Pearson.

    Parameters
    ----------
    values : numpy.ndarray
        The values.
    points : str
        How their points lie.
    hypercube_trials : int or None
        Trials of the whole run of a Latin hypercube.
    lower, upper : float
        The limits; an infinite one is none.
    confidence : float
        What the intervals cover with.

    Returns
    -------
    tuple
        Of each side the count, the share and the ends of its interval.

    Raises
    ------
    InputError
        When something is refused, or the points are not random.
    TypeError
        When the values are no array of one dimension and float64.
    """

def trials_histogram(
    values: NDArray[np.float64], edges: Sequence[float] | NDArray[np.float64]
) -> NDArray[np.uint64]:
    """Give how many values of trials lie above each edge and not above the next.

    Parameters
    ----------
    values : numpy.ndarray
        The values.
    edges : sequence of float
        Rising edges.

    Returns
    -------
    numpy.ndarray
        The counts, one less than edges.

    Raises
    ------
    InputError
        When a value or an edge is refused.
    TypeError
        When the values are no array of one dimension and float64.
    """

def trials_rare_tail(values: NDArray[np.float64], confidence: float) -> tuple[float, float, float, float, float]:
    """Give the probability that the weights of importance sampling come to.

    Parameters
    ----------
    values : numpy.ndarray
        The weights.
    confidence : float
        What the interval covers with.

    Returns
    -------
    tuple of float
        Probability, standard error, ends of the interval, effective trials.

    Raises
    ------
    InputError
        When something is refused, or fewer than 100 effective trials are beyond the limit.
    TypeError
        When the values are no array of one dimension and float64.
    """

def trials_merged(parts: Sequence[Trials]) -> tuple[int, NDArray[np.float64]]:
    """Give parts of one run, in any order, as one.

    Parameters
    ----------
    parts : sequence of Trials
        The parts.

    Returns
    -------
    tuple
        Number of the first trial, and the values.

    Raises
    ------
    InputError
        When they are not parts of one run that follow each other.
    TypeError
        When the values are no array of one dimension and float64.
    """

def match_pistons(
    bores: Sequence[MeasuredBore],
    pistons: Sequence[MeasuredPiston],
    conditions: Conditions,
    progress: Callable[[int, int], object] | None,
) -> _Matching:
    """Match measured pistons to bores; `gaugepoint.plan.match` is its public form.

    Parameters
    ----------
    bores : sequence of MeasuredBore
        The bores.
    pistons : sequence of MeasuredPiston
        The pistons.
    conditions : Conditions
        What holds for the set.
    progress : callable or None
        Told what is done and of how much.

    Returns
    -------
    tuple
        Case, proof, pairs, spare pistons, three merits, spread of weight.

    Raises
    ------
    InputError
        When something is refused, or no pairing exists.
    """

def match_sizes(
    bore_mm: NDArray[np.float64],
    bore_uncertainty_mm: NDArray[np.float64],
    piston_mm: NDArray[np.float64],
    piston_uncertainty_mm: NDArray[np.float64],
    conditions: Conditions,
    progress: Callable[[int, int], object] | None,
) -> _Matching:
    """Match sizes that stand in arrays; `gaugepoint.plan.match` is its public form.

    Parameters
    ----------
    bore_mm, bore_uncertainty_mm : numpy.ndarray
        Sizes of the bores and their standard uncertainties.
    piston_mm, piston_uncertainty_mm : numpy.ndarray
        The same of the pistons.
    conditions : Conditions
        What holds for the set.
    progress : callable or None
        Told what is done and of how much.

    Returns
    -------
    tuple
        As `match_pistons`.

    Raises
    ------
    InputError
        When something is refused, or no pairing exists.
    TypeError
        When an array is none of one dimension and float64.
    ValueError
        When sizes and uncertainties are not of one length.
    """

def clean_up(
    angles_deg: Sequence[float] | NDArray[np.float64],
    depths_mm: Sequence[float] | NDArray[np.float64],
    radii_mm: Sequence[float] | NDArray[np.float64],
    axis: str | BestAxis,
    centring_mm: float,
    stock_mm: float,
    each_mm: float,
    common_mm: float,
) -> tuple[float, float, float, tuple[float, float, float, float, float], list[tuple[int, float]]]:
    """Give the smallest bore that removes all wear; `gaugepoint.plan.clean_up` is its public form.

    Parameters
    ----------
    angles_deg, depths_mm, radii_mm : sequence of float
        The wall.
    axis : str or BestAxis
        Where the bar stands.
    centring_mm, stock_mm : float
        What a bar adds to the bare wall.
    each_mm, common_mm : float
        Standard uncertainties of one radius alone and of all together.

    Returns
    -------
    tuple
        Diameter, its uncertainty, least, bar, points that hold it with their shares.

    Raises
    ------
    InputError
        When a number is refused, or the points do not tell where the axis lies; it names the place.
    """

def clean_up_from_diameters(unworn_mm: float, largest_mm: float, stock_mm: float) -> tuple[float, float]:
    """Give the clean-up from diameters; `gaugepoint.plan.clean_up_from_diameters` is its public form.

    Parameters
    ----------
    unworn_mm, largest_mm, stock_mm : float
        Unworn and largest diameter, and what removes the marks of the tool.

    Returns
    -------
    tuple
        Diameter when both sides are worn alike, and when one side alone is.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or the largest diameter is below the unworn one.
    """

def walls_left(bar: Bar, diameter_mm: float, walls: Sequence[WallPoint]) -> list[float]:
    """Give what a bore leaves of walls; `gaugepoint.plan.walls_left` is its public form.

    Parameters
    ----------
    bar : Bar
        The axis of the bar.
    diameter_mm : float
        The bore.
    walls : sequence of WallPoint
        The walls as they were gauged.

    Returns
    -------
    list
        Thickness that is left of each.

    Raises
    ------
    InputError
        When a number is not finite or impossible; it names the place.
    """

def largest_bore_by_walls_mm(bar: Bar, least_wall_mm: float, walls: Sequence[WallPoint]) -> float | None:
    """Give the largest bore that walls allow; `gaugepoint.plan.largest_bore_by_walls_mm` is its public form.

    Parameters
    ----------
    bar : Bar
        The axis of the bar.
    least_wall_mm : float
        What is to be left.
    walls : sequence of WallPoint
        The walls as they were gauged.

    Returns
    -------
    float or None
        The diameter; None without walls.

    Raises
    ------
    InputError
        When a number is not finite or impossible; it names the place.
    """

def bore_sizes(piston_mm: float, clearance_mm: float, honing_mm: float) -> tuple[float, float]:
    """Give finish and boring size; `gaugepoint.plan.bore_sizes` is its public form.

    Parameters
    ----------
    piston_mm, clearance_mm, honing_mm : float
        Piston as measured, wanted clearance, and what is left for the hone.

    Returns
    -------
    tuple
        Finish size and boring size.

    Raises
    ------
    InputError
        When a number is not finite or impossible.
    """

def dial_reading_mm(size_mm: float, gauging: WarmGauging) -> float:
    """Give what the dial must read; `gaugepoint.plan.dial_reading_mm` is its public form.

    Parameters
    ----------
    size_mm : float
        Size of the bore at 20 C.
    gauging : WarmGauging
        The gauge that was set, and the bore that it goes into.

    Returns
    -------
    float
        The reading above the setting.

    Raises
    ------
    InputError
        When a number is not finite or impossible, or the reading is beyond the travel of a gauge.
    """

def finish_check(size_mm: float, finish_mm: float, tolerance_mm: float) -> tuple[str, float | None]:
    """Hold a bore against its finish size; `gaugepoint.plan.finish_check` is its public form.

    Parameters
    ----------
    size_mm, finish_mm, tolerance_mm : float
        Bore as it was found, finish size, and half the width of the tolerance.

    Returns
    -------
    tuple
        Outcome as a word, and the difference.

    Raises
    ------
    InputError
        When a number is not finite or impossible.
    """

def boring_order(cylinders: int) -> list[int]:
    """Give an order of boring; `gaugepoint.plan.boring_order` is its public form.

    Parameters
    ----------
    cylinders : int
        How many cylinders the bank has.

    Returns
    -------
    list
        The cylinders, from 1.

    Raises
    ------
    InputError
        For no cylinder or more than 24.
    """

def filing(reading: GapReading, bore_mm: float, wanted: WantedGap) -> tuple[str, float, float, float, float, float, float, float | None, str]:
    """Give what is filed off a ring; `gaugepoint.plan.filing` is its public form.

    Parameters
    ----------
    reading : GapReading
        The gap as it was read.
    bore_mm : float
        The bore that the ring runs in.
    wanted : WantedGap
        The gap that is wanted.

    Returns
    -------
    tuple
        Outcome as a word, then the numbers.

    Raises
    ------
    InputError
        When something is refused.
    """

def gasket_grade(
    projections_mm: Sequence[tuple[float, float]],
    bands: Sequence[tuple[float, float, float]],
    step_mm: float,
    largest_spread_mm: float | None,
    standard_uncertainty_mm: float | None,
) -> tuple[list[float], int, float, float, bool | None, int, float, list[float], float | None, float | None]:
    """Give the gasket for an engine; `gaugepoint.plan.gasket_grade` is its public form.

    Parameters
    ----------
    projections_mm : sequence of tuple of float
        Two readings for each piston.
    bands : sequence of tuple of float
        Lines of the table: from, to, thickness.
    step_mm : float
        The last digit the table is printed to.
    largest_spread_mm, standard_uncertainty_mm : float or None
        Most that protrusions may differ by, and standard uncertainty of one.

    Returns
    -------
    tuple
        Protrusions and what is chosen by them.

    Raises
    ------
    InputError
        When something is refused.
    """

def cut_list(assemblies: Sequence[Sequence[Part]], band_g: float) -> tuple[int, float, list[tuple[float, list[float], float, float]], bool]:
    """Give what assemblies lose; `gaugepoint.plan.cut_list` is its public form.

    Parameters
    ----------
    assemblies : sequence of sequence of Part
        The parts of each assembly.
    band_g : float
        Most that they may differ by.

    Returns
    -------
    tuple
        Lightest, heaviest allowed mass, cuts, whether all are within.

    Raises
    ------
    InputError
        When something is refused.
    """

def bob_weight_g(pin: BobWeight) -> float:
    """Give the bob weight of a crankpin; `gaugepoint.plan.bob_weight_g` is its public form.

    Parameters
    ----------
    pin : BobWeight
        What moves with it.

    Returns
    -------
    float
        The bob weight.

    Raises
    ------
    InputError
        When a number is not finite or impossible.
    """

def finish(values: Sequence[FinishValue], rule: str, at_least: float) -> tuple[list[tuple[str, float | None]], bool]:
    """Hold a finish against its limits; `gaugepoint.plan.finish` is its public form.

    Parameters
    ----------
    values : tuple of FinishValue
        The six parameters in order.
    rule : str
        Rule of decision.
    at_least : float
        What it asks for.

    Returns
    -------
    tuple
        Findings with their probabilities, and whether all is met.

    Raises
    ------
    InputError
        When something is refused.
    """

def shim_plan(liners: Sequence[LinerSeat], shims: Sequence[Shim], wanted: WantedProtrusion) -> tuple[list[_Placed], float | None, float | None, int | None, list[tuple[str, int]], str]:
    """Choose the shims of a row of liners; `gaugepoint.plan.shim_plan` is its public form.

    Parameters
    ----------
    liners : sequence of LinerSeat
        The row, from the front.
    shims : sequence of Shim
        What can be had.
    wanted : WantedProtrusion
        What is wanted of the row.

    Returns
    -------
    tuple
        Liners, the largest deviation and step, shims used, reasons.

    Raises
    ------
    InputError
        When something is refused.
    """

def oversizes(block: Block, bores: Sequence[WornBore], steps: Sequence[Step]) -> tuple[list[_Brought], list[tuple[float, float | None, float | None, float | None]]]:
    """Hold every way to bring a block back; `gaugepoint.plan.oversizes` is its public form.

    Parameters
    ----------
    block : Block
        The block, and what is fitted to it.
    bores : sequence of WornBore
        What is known of its bores.
    steps : sequence of Step
        The sizes of piston that can be had, rising.

    Returns
    -------
    tuple
        Ways, and what each step does.

    Raises
    ------
    InputError
        When something is refused.
    """
