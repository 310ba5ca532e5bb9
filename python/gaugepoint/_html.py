"""Objects of the package as tables of HTML, for notebooks: one rule for every class, by its fields.

What an object says stands first and in words; colour only repeats it, as a bar beside the word. Cautions and warnings are shown with it, never folded.
Every text is escaped. Long lists are cut, and say how much there is.
"""

import dataclasses
import re
from collections.abc import Iterator, Mapping
from html import escape
from itertools import groupby

from gaugepoint._value import Value, brief

# what a reader needs first, in this order; what is told last; what is unfolded
_FIRST = ("number", "job", "engine", "name", "verdict", "block", "outcome", "result", "cautions", "warnings", "contradictions", "open", "cylinders")
_LAST = ("conventions", "working", "format", "version", "library")
_OPEN = ("verdict", "block", "warnings", "contradictions", "open", "cylinders")
_MOST_ROWS = 50
# of the items of a list, so many are shown whole below its table
_MOST_WHOLE = 20
_DEEPEST = 3

_UNITS = {
    "_um": "um",
    "_mm": "mm",
    "_mm2": "mm2",
    "_mm3": "mm3",
    "_cm3": "cm3",
    "_per_k": "1/K",
    "_per_k2": "1/K2",
    "_per_k3": "1/K3",
    "_k": "K",
    "_c": "C",
    "_deg": "deg",
    "_mrad": "mrad",
    "_mpa": "MPa",
    "_n": "N",
    "_nm": "N m",
    "_g": "g",
    "_percent": "%",
}

# words of a finding: colours of Okabe and Ito, as in the pictures
_GOOD, _UNSURE, _BAD = "#009E73", "#E69F00", "#D55E00"
_COLOURS = {
    **dict.fromkeys(("reuse", "conforms", "met", "proven", "fits", "in"), _GOOD),
    **dict.fromkeys(("incomplete", "not proven", "not_proven", "not judged", "find the cause first", "to be honed", "hone on", "hone_on"), _UNSURE),
    **dict.fromkeys(("undecided", "file", "not_given"), _UNSURE),
    **dict.fromkeys(("do not reuse", "does not conform", "too large", "too_large", "too_wide", "out", "touches", "touches_at_20_c"), _BAD),
}
_FINDINGS = ("outcome", "result", "finding")


def of(value: Value) -> str:
    """Give an object as HTML.

    Parameters
    ----------
    value : Value
        The object.

    Returns
    -------
    str
        One ``div``, without scripts and without a style sheet.
    """
    return f'<div class="gaugepoint"><p><strong>{_words(type(value).__name__)}</strong></p>{_block(value, 0)}</div>'


def _block(value: Value, depth: int) -> str:
    parts = []
    for is_nested, fields in groupby(_told(value), key=lambda field: _is_nested(field[1])):
        if is_nested:
            parts += [_nested(name, item, depth) for name, item in fields]
        else:
            parts.append(f"<table>{''.join(_row(name, item) for name, item in fields)}</table>")
    return "".join(parts)


def _row(name: str, item: object) -> str:
    return f'<tr><th scope="row" style="text-align:left">{_heading(name)}</th><td style="text-align:left">{_cell(name, item)}</td></tr>'


def _told(value: Value) -> list[tuple[str, object]]:
    """Fields that say something, in the order of reading."""
    given = [(f.name, getattr(value, f.name)) for f in dataclasses.fields(value) if f.init]
    order = {name: place - len(_FIRST) for place, name in enumerate(_FIRST)} | {name: place + 1 for place, name in enumerate(_LAST)}
    return sorted((pair for pair in given if not _is_nothing(pair[1])), key=lambda pair: order.get(pair[0], 0))


def _is_nothing(item: object) -> bool:
    return item is None or (isinstance(item, tuple) and not item)


def _is_nested(item: object) -> bool:
    return isinstance(item, Value) or (isinstance(item, tuple) and bool(item) and isinstance(item[0], Value))


def _nested(name: str, item: object, depth: int) -> str:
    if depth == _DEEPEST:
        return f"<p>{_heading(name)}: {escape(brief(item))}</p>"
    is_open = " open" if depth == 0 and name in _OPEN else ""
    if isinstance(item, Value):
        told, inner = _gist(item), _block(item, depth + 1)
    else:
        items = [each for each in item if isinstance(each, Value)] if isinstance(item, tuple) else []
        told, inner = str(len(items)), _table(items) + _each(items, depth + 1)
    return f'<details{is_open} style="margin-left:1em"><summary>{_heading(name)}: {told}</summary>{inner}</details>'


def _table(items: list[Value]) -> str:
    """A row for each item, a column for each field that one of them has."""
    columns = list(dict.fromkeys(name for item in items for name, of_it in _told(item) if not isinstance(of_it, tuple) or not _is_nested(of_it)))
    head = "".join(f'<th scope="col">{_heading(name)}</th>' for name in columns)
    rows = (
        "".join(f'<td style="text-align:left">{_cell(name, getattr(item, name, None))}</td>' for name in columns)
        for item in items[:_MOST_ROWS]
    )
    return f"<table><tr>{head}</tr>{''.join(f'<tr>{row}</tr>' for row in rows)}</table>{_more(len(items), _MOST_ROWS)}"


def _each(items: list[Value], depth: int) -> str:
    """Every item of a list whole, where its row had no room for all of it."""
    whole = [item for item in items if any(_is_nested(of_it) for _, of_it in _told(item))]
    shown = (
        f'<details style="margin-left:1em"><summary>{_gist(item)}</summary>{_block(item, depth)}</details>'
        for item in whole[:_MOST_WHOLE]
    )
    return "".join(shown) + _more(len(whole), _MOST_WHOLE)


def _more(count: int, shown: int) -> str:
    return f"<p>... {count} in all</p>" if count > shown else ""


def _gist(value: Value) -> str:
    """The first things that an object says, on one line."""
    told = [(name, item) for name, item in _told(value) if not _is_nested(item) or (isinstance(item, Value) and name in _FIRST)]
    said = (_said(name, item) for name, item in told[:3])
    # where nothing is plain, what there is to unfold
    return "; ".join(said) or ", ".join(_heading(name) for name, _ in _told(value))


def _said(name: str, item: object) -> str:
    if isinstance(item, tuple) and len(item) > 1 and isinstance(item[0], str):
        return f"{escape(item[0])} (+{len(item) - 1})"
    return f"{_heading(name)} {_cell(name, item)}" if _is_number(item) else _cell(name, item)


def _cell(name: str, item: object) -> str:
    if _is_nothing(item):
        return ""
    if isinstance(item, Value):
        return _gist(item)
    if isinstance(item, str) and name in _FINDINGS and item in _COLOURS:
        return f'<span style="border-left:0.5em solid {_COLOURS[item]};padding-left:0.4em"><strong>{escape(item)}</strong></span>'
    if isinstance(item, tuple) and isinstance(item[0], str):
        return "<br>".join(map(escape, _texts(item)))
    if isinstance(item, Mapping):
        return escape(", ".join(f"{key}: {_plain(each)}" for key, each in item.items()))
    return escape(_plain(item))


def _texts(items: tuple[object, ...]) -> Iterator[str]:
    yield from map(str, items[:_MOST_ROWS])
    if len(items) > _MOST_ROWS:
        yield f"... {len(items)} in all"


def _plain(item: object) -> str:
    if isinstance(item, bool):
        return "yes" if item else "no"
    if isinstance(item, float):
        # a size to a tenth of a um, and no digit before the point is lost
        return format(item, ".7g" if abs(item) < 1e7 or abs(item) >= 1e15 else ".0f")
    return item if isinstance(item, str) else brief(item)


def _is_number(item: object) -> bool:
    return isinstance(item, int | float) and not isinstance(item, bool)


def _heading(name: str) -> str:
    """A field in words, with the unit that its name ends in."""
    suffix = max((suffix for suffix in _UNITS if name.endswith(suffix)), key=len, default="")
    unit = f" ({_UNITS[suffix]})" if suffix else ""
    return escape(name.removesuffix(suffix).replace("_", " ").strip() + unit)


def _words(class_name: str) -> str:
    return escape(re.sub(r"(?<=[a-z])(?=[A-Z])", " ", class_name).capitalize())
