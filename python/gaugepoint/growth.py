"""Laws of expansion: how a part grows from 20 C; the built-in materials and the illustrative temperatures by duty, each with its source.

A law is refused when it is made, if a number of it is impossible; a temperature outside its range, when it is asked for. A mean coefficient and an
instantaneous one are different things, and their laws are different classes. ``core/docs/materials.md`` has the formulas.
"""

import json
from collections.abc import Sequence
from typing import Literal

from gaugepoint import _gaugepoint
from gaugepoint._data import read
from gaugepoint._value import Value, dataclass

__all__ = [
    "BuiltIn",
    "BuiltInMaterial",
    "Cell",
    "Duty",
    "DutyBoreRow",
    "DutyPistonRow",
    "GraphiteIron",
    "Growth",
    "InstantaneousPolynomial",
    "InstantaneousTable",
    "MeanCoefficient",
    "MeanTable",
    "StrainPolynomial",
    "built_in_materials",
    "illustrative_duties",
]


@dataclass(frozen=True, slots=True)
class Growth(Value):
    """What a law says of one temperature."""

    strain: float
    """Strain from 20 C: ``(L - L20) / L20``."""
    instantaneous_per_k: float
    """Instantaneous coefficient, ``(1 / L20) dL/dT``; at a row of a table, on the side toward 20 C."""
    mean_from_20_per_k: float | None
    """Mean coefficient from 20 C; none at 20 C."""


class _Law(Value):
    """A law of expansion. It is asked at 20 C, where every law holds, when it is made: what is wrong in it is refused then."""

    __slots__ = ()

    def __post_init__(self) -> None:
        self.at(20.0)

    def at(self, temperature_c: float) -> Growth:
        """Give strain and coefficients at a temperature.

        Parameters
        ----------
        temperature_c : float
            The temperature, in C.

        Returns
        -------
        Growth
            Strain and coefficients.

        Raises
        ------
        InputError
            Outside the range of the law.
        """
        return Growth(*self._made().at(temperature_c))

    def _made(self) -> _gaugepoint.Law:
        raise NotImplementedError


@dataclass(frozen=True, slots=True)
class MeanCoefficient(_Law):
    """One mean coefficient over a range."""

    base_c: float
    """Temperature the mean starts from."""
    mean_per_k: float
    """The coefficient."""
    from_c: float
    """Lowest temperature it holds at; the range holds 20 C."""
    to_c: float
    """Highest temperature it holds at."""

    def _made(self) -> _gaugepoint.Law:
        return _gaugepoint.growth_mean_coefficient(self.base_c, self.mean_per_k, self.from_c, self.to_c)


@dataclass(frozen=True, slots=True)
class MeanTable(_Law):
    """Mean coefficients from a base to each temperature, straight between them."""

    base_c: float
    """Temperature the means start from."""
    rows: Sequence[tuple[float, float]]
    """Temperature in C and mean coefficient per kelvin up to it, in rising order; kept as a tuple."""

    def _made(self) -> _gaugepoint.Law:
        return _gaugepoint.growth_mean_table(self.base_c, self.rows)


@dataclass(frozen=True, slots=True)
class InstantaneousTable(_Law):
    """Instantaneous coefficients at each temperature, straight between them, integrated."""

    rows: Sequence[tuple[float, float]]
    """Temperature in C and instantaneous coefficient per kelvin at it, in rising order; kept as a tuple."""

    def _made(self) -> _gaugepoint.Law:
        return _gaugepoint.growth_instantaneous_table(self.rows)


@dataclass(frozen=True, slots=True)
class InstantaneousPolynomial(_Law):
    """An instantaneous coefficient ``c0 + c1 T + ...`` per kelvin, T in kelvin."""

    kelvin_coefficients: Sequence[float]
    """c0, c1, ...; kept as a tuple."""
    from_c: float
    """Lowest temperature it holds at; the range holds 20 C."""
    to_c: float
    """Highest temperature it holds at."""

    def _made(self) -> _gaugepoint.Law:
        return _gaugepoint.growth_instantaneous_polynomial(self.kelvin_coefficients, self.from_c, self.to_c)


@dataclass(frozen=True, slots=True)
class StrainPolynomial(_Law):
    """A strain ``c0 + c1 T + ...``, T in kelvin, from any length; it is brought to the length at 20 C."""

    kelvin_coefficients: Sequence[float]
    """c0, c1, ...; kept as a tuple."""
    from_c: float
    """Lowest temperature it holds at; the range holds 20 C."""
    to_c: float
    """Highest temperature it holds at."""

    def _made(self) -> _gaugepoint.Law:
        return _gaugepoint.growth_strain_polynomial(self.kelvin_coefficients, self.from_c, self.to_c)


@dataclass(frozen=True, slots=True)
class GraphiteIron(_Law):
    """Compacted or spheroidal graphite iron from its structure, by a published regression; 20 C to 500 C; unverified."""

    nodularity_percent: float
    """Nodularity, 3.9 to 82.6 %."""
    graphite_percent: float
    """Area fraction of graphite, 1.9 to 9.1 %."""
    pearlite_to_ferrite: float
    """Pearlite over ferrite in the matrix, 0 to 1.85."""

    def _made(self) -> _gaugepoint.Law:
        return _gaugepoint.growth_graphite_iron(self.nodularity_percent, self.graphite_percent, self.pearlite_to_ferrite)


@dataclass(frozen=True, slots=True)
class BuiltIn(_Law):
    """The law of a built-in material."""

    name: str
    """Its name, as `built_in_materials` lists it."""

    def _made(self) -> _gaugepoint.Law:
        return _gaugepoint.growth_built_in(self.name)


@dataclass(frozen=True, slots=True, kw_only=True)
class Cell(Value):
    """A coefficient at, or up to, a temperature."""

    temperature_c: float
    """Temperature, in C."""
    coefficient_per_k: float
    """Coefficient, per kelvin."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BuiltInMaterial(Value):
    """A row of the built-in materials: what alloys of that name may have, not what one part has."""

    name: str
    """Name, as a document and `BuiltIn` take it."""
    coefficients: Literal["mean", "instantaneous"]
    """What the coefficients are: means from 20 C, or instantaneous."""
    from_c: float
    """Lowest temperature its law holds at."""
    to_c: float
    """Highest temperature its law holds at."""
    cells: tuple[Cell, ...]
    """Its cells, in rising order; the first is continued down to `from_c`."""
    permissible_error_per_k: float
    """Half-width of the error of its coefficient."""
    source: str
    """Where the figures come from."""
    confidence: Literal["published", "maker", "unverified"]
    """How far they can be trusted."""

    @property
    def law(self) -> BuiltIn:
        """Its law of expansion."""
        return BuiltIn(self.name)


def built_in_materials() -> tuple[BuiltInMaterial, ...]:
    """Give the built-in materials: published laws of expansion, each with its source.

    Returns
    -------
    tuple of BuiltInMaterial
        The rows: aluminium, iron, steel, bronze.

    Examples
    --------
    >>> import gaugepoint
    >>> row = gaugepoint.built_in_materials()[1]
    >>> row.name, row.to_c, row.confidence
    ('wrought aluminium 4032', 300.0, 'unverified')
    >>> round(row.law.at(150.0).mean_from_20_per_k * 1e6, 6)
    19.8
    """
    rows: tuple[BuiltInMaterial, ...] = tuple(
        read(BuiltInMaterial, json.dumps(row)) for row in json.loads(_gaugepoint.built_in_materials())
    )
    return rows


@dataclass(frozen=True, slots=True, kw_only=True)
class DutyPistonRow(Value):
    """Temperatures of a piston at a share of its height."""

    at: float
    """0 at the bottom edge of the skirt, 1 at its top, 2 at the crown."""
    thrust_c: float
    """On the thrust axis, in C."""
    pin_c: float
    """On the pin axis, in C."""


@dataclass(frozen=True, slots=True, kw_only=True)
class DutyBoreRow(Value):
    """Temperature of the wall at a share of its depth."""

    at: float
    """0 at the deck, 1 at the lowest place the skirt comes to."""
    wall_c: float
    """Mean of the wall, in C."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Duty(Value):
    """Illustrative temperatures of one duty, which no engine need have."""

    name: str
    """Name, as the preset of a fit document takes it."""
    piston: tuple[DutyPistonRow, ...]
    """Of the piston, upward."""
    bore: tuple[DutyBoreRow, ...]
    """Of the bore, downward."""
    permissible_error_k: float
    """Half-width of the error of all of them, in K."""
    source: str
    """Where the figures come from."""
    confidence: Literal["published", "maker", "unverified"]
    """How far they can be trusted."""


def illustrative_duties() -> tuple[Duty, ...]:
    """Give the illustrative temperatures by duty, from memory, for a first look before anything was measured.

    Returns
    -------
    tuple of Duty
        Petrol and diesel engines, cooled by water and by air.

    Examples
    --------
    >>> import gaugepoint
    >>> duty = gaugepoint.illustrative_duties()[0]
    >>> duty.name, duty.permissible_error_k, duty.confidence
    ('petrol, naturally aspirated', 25.0, 'unverified')
    >>> duty.piston[0].thrust_c, duty.bore[-1].wall_c
    (105.0, 97.5)
    """
    rows: tuple[Duty, ...] = tuple(
        read(Duty, json.dumps(row)) for row in json.loads(_gaugepoint.illustrative_duties())
    )
    return rows
