"""What is refused, and everything a caller needs to say so."""

from typing import Any

__all__ = ["InputError"]

# what every refusal says beside its message
DATA = ("kind", "field", "refused", "value", "lower", "upper", "unit", "reason", "did_you_mean")
# as the library cuts it
_LONGEST_QUOTE = 80


class InputError(ValueError):
    """An input was refused. There is no result, not even a part of one.

    A library that makes errors anew from their text, as Polars does, keeps the class and the text; the attributes are then empty or None.

    Attributes
    ----------
    kind : str
        Kind of the refusal, one of `gaugepoint.ERROR_KINDS`.
    field : str
        JSON Pointer (RFC 6901) into the document, or the name of a parameter; empty for the text as a whole.
    refused : str
        What was refused, as it was given (cut after 80 characters).
    value : float or None
        The refused number in `unit`, where there is one.
    lower, upper : float or None
        The accepted range in `unit`, where there is one.
    unit : str or None
        Unit of the three numbers, where there is a range.
    reason : str
        Why it was refused.
    did_you_mean : str or None
        What was probably meant, where a slip explains the value.

    Examples
    --------
    >>> import gaugepoint
    >>> try:
    ...     gaugepoint.bench_clearance_mm(bore_mm=3.387, piston_mm=86.0)
    ... except gaugepoint.InputError as refused:
    ...     print(refused.kind, refused.field, refused.lower, refused.upper, refused.unit)
    ...     print(refused.did_you_mean)
    out_of_range bore_mm 10.0 1100.0 mm
    86.03 mm (inches entered as mm)
    """

    kind: str
    field: str
    refused: str
    value: float | None
    lower: float | None
    upper: float | None
    unit: str | None
    reason: str
    did_you_mean: str | None

    def __init__(
        self,
        message: str,
        *,
        kind: str = "",
        field: str = "",
        refused: str = "",
        reason: str = "",
        value: float | None = None,
        lower: float | None = None,
        upper: float | None = None,
        unit: str | None = None,
        did_you_mean: str | None = None,
    ) -> None:
        super().__init__(message)
        self.kind = kind
        self.field = field
        self.refused = refused
        self.reason = reason
        self.value = value
        self.lower = lower
        self.upper = upper
        self.unit = unit
        self.did_you_mean = did_you_mean

    def __reduce__(self) -> tuple[Any, ...]:
        return _again, (type(self), self.args[0], {name: getattr(self, name) for name in DATA})


def _again(kind: type[InputError], message: str, data: dict[str, Any]) -> InputError:
    return kind(message, **data)


def at_door(kind: str, field: str, refused: str, reason: str) -> InputError:
    """Refuse an input that has no counterpart in the library: it never gets there.

    Parameters
    ----------
    kind, field, refused, reason : str
        As in `InputError`.

    Returns
    -------
    InputError
        The refusal, to be raised.
    """
    refused = refused if len(refused) <= _LONGEST_QUOTE else refused[:_LONGEST_QUOTE] + "..."
    parts = (_printable(field), refused and f'"{_printable(refused)}" is refused', reason)
    message = ": ".join(part for part in parts if part)
    return InputError(message, kind=kind, field=field, refused=refused, reason=reason)


def _printable(text: str) -> str:
    # a sentence must not move the cursor of whoever prints it
    return "".join(c if c.isprintable() else repr(c)[1:-1] for c in text)
