"""What the reports have in common that the library writes."""

from dataclasses import dataclass, field
from typing import ClassVar


@dataclass(frozen=True, slots=True, kw_only=True)
class Written:
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

    def _as_written(self, form: int) -> str:
        # dataclasses.replace() and hand-made reports have no text: the old one would tell of other numbers
        if not self._written:
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
