"""Quantities of pint to the numbers of the flat functions. pint is loaded by whoever passes one, and never by this module."""

from collections.abc import Callable
from fractions import Fraction
from math import isfinite
from typing import TYPE_CHECKING, Any

from gaugepoint.error import at_door

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

# what a parameter ends in, and its unit; the longer endings first
_UNITS = {
    "_per_fahrenheit": "1 / delta_degree_Fahrenheit",
    "_per_k": "1 / kelvin",
    "_fahrenheit": "degree_Fahrenheit",
    "_inch": "inch",
    "_thou": "thou",
    "_cm3": "centimeter ** 3",
    "_mpa": "megapascal",
    "_mrad": "milliradian",
    "_deg": "degree",
    "_mm": "millimeter",
    "_c": "degree_Celsius",
}
# kelvin as a * t + b, exactly
_TEMPERATURES = {
    "kelvin": (Fraction(1), Fraction(0)),
    "degree_Celsius": (Fraction(1), Fraction("273.15")),
    "degree_Rankine": (Fraction(5, 9), Fraction(0)),
    "degree_Fahrenheit": (Fraction(5, 9), Fraction("459.67") * Fraction(5, 9)),
}
# a factor that pint computes in doubles is the simple fraction beside it; of others it is taken as it is
_MOST_DENOMINATOR, _NOISE = 10**6, 1e-15


def magnitude(name: str, quantity: Any) -> "float | NDArray[np.float64]":
    """Give the numbers of a quantity in the unit that a parameter ends in.

    The decimal that a number prints as is converted exactly and rounded once.

    Parameters
    ----------
    name : str
        The parameter.
    quantity : pint.Quantity
        The quantity.

    Returns
    -------
    float or numpy.ndarray
        Its numbers; those that have the unit are not touched.

    Raises
    ------
    InputError
        When it is a quantity of another kind; it names the parameter.
    """
    registry, units = quantity._REGISTRY, quantity.units
    unit = next((unit for end, unit in _UNITS.items() if name.endswith(end)), "dimensionless")
    target = registry.Unit(registry.parse_units(unit, as_delta=False))
    if units == target and name != "per_mille":
        return quantity.magnitude  # type: ignore[no-any-return]
    times, offset = _scale(name, quantity.units, registry, target, unit)
    if name == "per_mille":
        times *= 1000

    def converted(number: Any) -> float:
        x = float(number)
        # the function refuses what is not finite
        return float(Fraction(repr(x)) * times + offset) if isfinite(x) else x

    numbers = quantity.magnitude
    try:
        return _each(converted, numbers) if hasattr(numbers, "__array__") else converted(numbers)
    except TypeError:
        return numbers  # type: ignore[no-any-return]  # complex ones, objects: refused as those without a unit


def _each(converted: Callable[[Any], float], numbers: Any) -> "NDArray[np.float64]":
    import numpy as np

    if isinstance(numbers, np.ma.MaskedArray):
        masked: Any = numbers.astype(float)
        numbers = masked.filled(np.nan)
    array = np.asarray(numbers)
    if array.dtype.kind not in "fiu":
        raise TypeError
    return np.fromiter(map(converted, array.ravel().tolist()), np.float64, array.size).reshape(array.shape)


def _scale(name: str, units: Any, registry: Any, target: Any, unit: str) -> tuple[Fraction, Fraction]:
    """Factor and offset from the unit of a quantity to another."""
    if unit in _TEMPERATURES:
        given = "".join(units._units) if list(units._units.values()) == [1] else ""
        if given not in _TEMPERATURES:
            raise at_door("wrong_unit", name, str(units), "a temperature is needed; a difference of temperatures is another thing")
        (a, b), (c, d) = _TEMPERATURES[given], _TEMPERATURES[unit]
        return a / c, (b - d) / c
    # an angle has no dimension in pint, and neither has a bare number
    if not units.is_compatible_with(target) or _angle(registry, units) != _angle(registry, target):
        raise at_door("wrong_unit", name, str(units), f"it cannot be converted to {unit}")
    # a number of the kind that the registry computes in
    factor = registry.convert(registry.non_int_type(1), units, target)
    simple = Fraction(factor).limit_denominator(_MOST_DENOMINATOR)
    near = abs(float(simple) - float(factor)) <= _NOISE * abs(float(factor))
    return simple if near else Fraction(factor), Fraction(0)


def _angle(registry: Any, units: Any) -> bool:
    return "radian" in registry.get_root_units(units)[1]._units
