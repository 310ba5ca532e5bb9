"""Reports as a page of HTML that stands by itself: what the report says, its cautions, and its pictures in the page."""

import base64
import io
import re
from collections.abc import Iterable, Iterator
from functools import partial
from html import escape, unescape
from importlib.util import find_spec
from itertools import groupby
from typing import TYPE_CHECKING, Any

from gaugepoint import plot
from gaugepoint._written import Written, WrittenMarkdown, WrittenText
from gaugepoint.fitting import FitReport
from gaugepoint.report import HotReport, Report, StackReport
from gaugepoint.sheet import SheetReport
from gaugepoint.uncertainty import Budget

if TYPE_CHECKING:
    from collections.abc import Callable

    from matplotlib.axes import Axes

__all__ = ["html", "page", "refusal", "text"]

_STYLE = """
body { font-family: sans-serif; line-height: 1.4; max-width: 60rem; margin: 1rem auto; padding: 0 1rem; color: #000; background: #fff }
pre { white-space: pre-wrap }
table { border-collapse: collapse; margin: 0.5rem 0 }
th, td { border: 1px solid #595959; padding: 0.15rem 0.5rem; text-align: left }
th { background: #eee }
figure { margin: 1rem 0 }
figure, tr { break-inside: avoid }
img { max-width: 100% }
section + section { border-top: 3px double #595959; margin-top: 2rem; break-before: page }
"""


def page(title: str, sections: Iterable[str]) -> str:
    """Give a whole page.

    Parameters
    ----------
    title : str
        Its title.
    sections : iterable of str
        What `html` and `refusal` give.

    Returns
    -------
    str
        A document of HTML that asks for nothing beside itself.
    """
    head = f'<meta charset="utf-8">\n<title>{escape(title)}</title>\n<style>{_STYLE}</style>'
    return f'<!DOCTYPE html>\n<html lang="en">\n<head>\n{head}\n</head>\n<body>\n{"".join(sections)}</body>\n</html>\n'


def html(report: Written) -> str:
    """Give a report as a section of a page.

    Parameters
    ----------
    report : Written
        Any report of the library.

    Returns
    -------
    str
        The section, with the pictures that the report has data for; in words when they cannot be drawn.
    """
    if isinstance(report, WrittenMarkdown):
        told = "\n".join(_blocks(report.to_markdown()))
    else:
        told = f"<pre>{escape(text(report))}</pre>"
    return f"<section>\n{told}\n{''.join(_figures(report))}</section>\n"


def refusal(name: str, message: str) -> str:
    """Give the refusal of a file as a section of a page.

    Parameters
    ----------
    name : str
        Name of the file.
    message : str
        Why it is refused.

    Returns
    -------
    str
        The section.
    """
    return f"<section>\n<h1>{escape(name)}: refused</h1>\n<p>{escape(message)}</p>\n</section>\n"


def text(report: Written) -> str:
    """Give any report as text.

    Parameters
    ----------
    report : Written
        Any report of the library.

    Returns
    -------
    str
        Lines of text, the last one ended.
    """
    if isinstance(report, WrittenText):
        return report.to_text().rstrip("\n") + "\n"
    if isinstance(report, SheetReport):
        return "".join(f"{line}\n" for line in _sheet(report))
    raise TypeError(f"report: a report is needed, not {type(report).__name__}")


def _sheet(report: SheetReport) -> Iterator[str]:
    yield f"{report.sheet}: {len(report.entries)} entries, {len(report.contradictions)} contradictions"
    for found in report.contradictions:
        yield f"  {', '.join(found.entries)}: {found.text}"
        for suspicion in found.suspected:
            yield f"    suspected: {suspicion.text}"
    for warning in report.warnings:
        yield f"  odd: {warning.text}"


# Markdown as the library writes it: headings, tables, lists with one level below them, paragraphs

_INLINE = re.compile(r"`([^`]*)`|\\(.)|(&\w+;)|[^`\\&]+|.")


def _blocks(markdown: str) -> Iterator[str]:
    for kind, lines in groupby(markdown.splitlines(), _kind):
        if kind == "heading":
            for line in lines:
                marks, _, rest = line.partition(" ")
                yield f"<h{len(marks)}>{_inline(rest)}</h{len(marks)}>"
        elif kind == "table":
            yield _table(list(lines))
        elif kind == "item":
            yield _list(list(lines))
        elif kind == "paragraph":
            yield f"<p>{'<br>'.join(map(_inline, lines))}</p>"


def _kind(line: str) -> str:
    if re.match(r"#{1,6} ", line):
        return "heading"
    if line.startswith("|"):
        return "table"
    if re.match(r" *(- |\d+\. )", line):
        return "item"
    return "paragraph" if line.strip() else "nothing"


def _table(lines: list[str]) -> str:
    rows = []
    for k, line in enumerate(lines[:1] + lines[2:]):
        cells = (_inline(cell.strip()) for cell in re.split(r"(?<!\\)\|", line)[1:-1])
        rows.append("".join(f"<td>{cell}</td>" if k else f'<th scope="col">{cell}</th>' for cell in cells))
    body = "\n".join(f"<tr>{row}</tr>" for row in rows)
    return f"<table>\n{body}\n</table>"


def _list(lines: list[str]) -> str:
    name = "ul" if lines[0].startswith("- ") else "ol"
    items: list[list[str]] = []
    for line in lines:
        told = _inline(re.sub(r"^ *(- |\d+\. )", "", line))
        if line.startswith(" "):
            items[-1].append(f"<li>{told}</li>")
        else:
            items.append([told])
    body = "\n".join(f"<li>{first}{'<ul>' + ''.join(below) + '</ul>' if below else ''}</li>" for first, *below in items)
    return f"<{name}>\n{body}\n</{name}>"


def _inline(line: str) -> str:
    return "".join(map(_piece, _INLINE.finditer(line)))


def _piece(found: re.Match[str]) -> str:
    code, escaped, entity = found.groups()
    if code is not None:
        return f"<code>{escape(code)}</code>"
    return escape(escaped or unescape(entity or found.group()))


# pictures


def _figures(report: Written) -> Iterator[str]:
    drawings = list(_drawings(report))
    if drawings and not find_spec("matplotlib"):
        yield f"<p>{len(drawings)} pictures are left out: they need matplotlib (pip install gaugepoint[plot]).</p>\n"
        return
    for of, draw in drawings:
        yield _figure(of, draw())


def _drawings(report: Written) -> "Iterator[tuple[str, Callable[[], Axes]]]":
    """Every picture that the report has data for: of what, and what draws it."""
    if isinstance(report, FitReport):
        yield from _hot("", report.hot)
    if isinstance(report, Budget):
        yield "", partial(plot.budget_bars, report)
    if isinstance(report, StackReport):
        yield from _stack(report)
    if isinstance(report, Report):
        for cylinder in report.cylinders:
            of = f"cylinder {cylinder.number}: "
            if cylinder.bore and cylinder.bore.places:
                yield of, partial(plot.bore_map, cylinder.bore)
            if cylinder.hot:
                yield from _hot(of, cylinder.hot)
        for stack in report.stacks:
            yield from _stack(stack)


def _hot(of: str, hot: HotReport) -> "Iterator[tuple[str, Callable[[], Axes]]]":
    pictures = hot.pictures
    if pictures is None:
        return
    for profile in pictures.profile:
        yield of, partial(plot.profile, profile)
    for section in pictures.sections:
        yield of, partial(plot.section, section)
    drawn = {picture.surface for picture in pictures.maps}
    for k, surface in enumerate(hot.surfaces):
        if surface.name in drawn:
            yield of, partial(plot.clearance_map, hot, k)
    yield of, partial(plot.against_temperature, hot)


def _stack(stack: StackReport) -> "Iterator[tuple[str, Callable[[], Axes]]]":
    if stack.curve:
        yield f"stack {stack.name}: ", partial(plot.stack_density, stack)


def _figure(of: str, axes: "Axes") -> str:
    """A picture in the page. It says what it shows also where it is not seen."""
    title = axes.get_title(loc="left") or axes.get_title()
    caption = escape(f"{of}{title}"[:1].upper() + f"{of}{title}"[1:])
    labels = "; ".join(" ".join(label.split()) for label in (axes.get_xlabel(), axes.get_ylabel()) if label)
    data = base64.b64encode(_svg(axes.figure)).decode("ascii")
    seen = f'<img alt="{caption}. {escape(labels)}" src="data:image/svg+xml;base64,{data}">'
    return f"<figure>\n{seen}\n<figcaption>{caption}</figcaption>\n</figure>\n"


def _svg(figure: Any) -> bytes:
    """A picture as SVG: its texts are texts, and the same picture is the same bytes."""
    from matplotlib import rc_context

    out = io.BytesIO()
    with rc_context({"svg.fonttype": "none", "svg.hashsalt": "gaugepoint"}):
        figure.savefig(out, format="svg", metadata={"Date": None, "Creator": None})
    return out.getvalue()
