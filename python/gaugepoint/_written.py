"""What the reports have in common that the library writes."""

from collections.abc import Callable
from dataclasses import field
from typing import Any, ClassVar, TypeVar

from gaugepoint._data import read_strictly
from gaugepoint._value import Value, dataclass

_W = TypeVar("_W", bound="Written")


def with_forms(report: _W, *forms: str) -> _W:
    """Give a report the forms that the library wrote it in.

    Parameters
    ----------
    report : Written
        The report, just made.
    *forms : str
        JSON, and the other forms of its class.

    Returns
    -------
    Written
        The same report.
    """
    object.__setattr__(report, "_written", forms)
    return report


def _with_forms_again(again: Callable[..., _W], made_of: tuple[Any, ...], forms: tuple[str, ...]) -> _W:
    return with_forms(again(*made_of), *forms)


@dataclass(frozen=True, slots=True, kw_only=True)
class Written(Value):
    """A report that the library wrote, in the forms it wrote."""

    _made_by: ClassVar[str]
    _written: tuple[str, ...] = field(default=(), init=False, repr=False, compare=False)

    def to_json(self) -> str:
        """Give the report as JSON on one line, as the library wrote it.

        Returns
        -------
        str
            The same bytes in every host.

        Raises
        ------
        TypeError
            When the report was not made by the library.
        """
        return self._as_written(0)

    @classmethod
    def from_json(cls: type[_W], text: str | bytes) -> _W:
        """Make the report from the JSON that the library wrote: its numbers and its JSON, without its text.

        Parameters
        ----------
        text : str or bytes
            The JSON.

        Returns
        -------
        Written
            A report of this class, equal to the one that was written.

        Raises
        ------
        InputError
            When the text is not JSON of this class.
        """
        return with_forms(read_strictly(cls, text), text.decode("utf-8") if isinstance(text, bytes) else text)

    def __reduce__(self) -> tuple[Any, ...]:
        # a slotted dataclass is another class than the one super() would look for
        again, made_of = Value.__reduce__(self)
        return _with_forms_again, (again, made_of, self._written)

    def _as_written(self, form: int) -> str:
        # dataclasses.replace() and hand-made reports have no text: the old one would tell of other numbers
        if len(self._written) <= form:
            raise TypeError(f"only a report made by gaugepoint.{self._made_by} can be written")
        return self._written[form]


@dataclass(frozen=True, slots=True, kw_only=True)
class WrittenText(Written):
    """A report that the library wrote as JSON and as text."""

    def to_text(self) -> str:
        """Give the report as text for reading aloud or printing.

        Returns
        -------
        str
            Lines of text.

        Raises
        ------
        TypeError
            When the report was not made by the library.
        """
        return self._as_written(1)


@dataclass(frozen=True, slots=True, kw_only=True)
class WrittenMarkdown(WrittenText):
    """A report that the library wrote as JSON, as text and as Markdown."""

    def to_markdown(self) -> str:
        """Give the report as Markdown.

        Returns
        -------
        str
            A Markdown document.

        Raises
        ------
        TypeError
            When the report was not made by the library.
        """
        return self._as_written(2)

    def _repr_markdown_(self) -> str | None:
        """Give the Markdown for notebooks, where the library wrote it."""
        return self._written[2] if self._written[2:] else None
