"""How one number was made: the formula of its step, the numbers put in, and the result with its unit."""

from dataclasses import field

from gaugepoint._latex import formula, quantity, symbol
from gaugepoint._value import Value, dataclass
from gaugepoint.report import Constant, Input, Step

__all__ = ["WorkedNumber"]


@dataclass(frozen=True, slots=True)
class WorkedNumber(Value):
    """One step of a working with what goes into it, as `gaugepoint.report.Working.number` finds it.

    Examples
    --------
    >>> from gaugepoint.report import Input, Step, Working
    >>> bore = Input(id="i0", symbol="bore", value=86.05, unit="mm", path="/bore", typed="86.05 mm")
    >>> piston = Input(id="i1", symbol="piston", value=85.97, unit="mm", path="/piston", typed="85.97 mm")
    >>> step = Step(
    ...     id="s0", of="cylinder 1", symbol="clearance", formula="bore - piston", arguments={"bore": "i0", "piston": "i1"},
    ...     value=0.08, unit="mm", source="definition", results=("/clearance",),
    ... )
    >>> print(Working(inputs=(bore, piston), constants=(), steps=(step,)).number("/clearance").to_text())
    clearance = bore - piston
      bore = 86.05 mm (i0)
      piston = 85.97 mm (i1)
    clearance = 0.08 mm (definition)
    """

    step: Step
    """The step."""
    arguments: tuple[Input | Constant | Step, ...] = field(repr=False)
    """What its formula takes, in the order of its symbols."""

    def to_text(self) -> str:
        """Give it as lines of text.

        Returns
        -------
        str
            The formula, what goes into it, and the result with its source.
        """
        step = self.step
        taken = (f"  {name} = {_amount(given)} ({given.id})" for name, given in self._given())
        return "\n".join([f"{step.symbol} = {step.formula}", *taken, f"{step.symbol} = {_amount(step)} ({step.source})"])

    def to_latex(self) -> str:
        """Give it as LaTeX: the formula, the numbers put in, and the result, each as a line of its own.

        Returns
        -------
        str
            Three displayed formulas.
        """
        step = self.step
        put_in = {name: quantity(given.value, given.unit) for name, given in self._given()}
        lines = (f"{symbol(step.symbol)} = {formula(step.formula)}", f"= {formula(step.formula, put_in)}", f"= {quantity(step.value, step.unit)}")
        return "\n".join(f"$${line}$$" for line in lines)

    def _given(self) -> list[tuple[str, Input | Constant | Step]]:
        return list(zip(self.step.arguments, self.arguments, strict=True))

    def _repr_latex_(self) -> str:
        """Give the LaTeX for notebooks."""
        return self.to_latex()

    def _repr_html_(self) -> None:
        """Give no table: a notebook would show it in place of the formula."""


def _amount(given: Input | Constant | Step) -> str:
    return repr(given.value) if given.unit == "1" else f"{given.value!r} {given.unit}"
