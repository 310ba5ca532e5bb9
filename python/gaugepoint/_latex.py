"""Formulas of a working as LaTeX: what notebooks typeset, and the mathematical text of matplotlib reads too."""

import ast
import re
from collections.abc import Mapping

_GREEK = {
    "alpha": r"\alpha",
    "beta": r"\beta",
    "delta": r"\delta",
    "eps": r"\varepsilon",
    "nu": r"\nu",
    "phi": r"\varphi",
    "sigma": r"\sigma",
    "theta": r"\theta",
    "pi": r"\pi",
}
_PI = "3.141592653589793"
# how tightly an operator binds: what binds less is put into brackets
_SUM, _PRODUCT, _POWER, _ATOM = range(4)
_BINARY = {ast.Add: (" + ", _SUM), ast.Sub: (" - ", _SUM), ast.Mult: (r" \cdot ", _PRODUCT)}


def formula(text: str, put_in: Mapping[str, str] | None = None) -> str:
    """Give a formula as LaTeX.

    Parameters
    ----------
    text : str
        The formula, as a step of a working has it.
    put_in : mapping of str to str, optional
        LaTeX to stand for symbols; without it they stand for themselves.

    Returns
    -------
    str
        LaTeX, without dollars.
    """
    return _tex(ast.parse(text.replace("^", "**"), mode="eval").body, put_in)[0]


def symbol(name: str) -> str:
    """Give a symbol as LaTeX: Greek letters as such, what follows ``_`` below the line, ``d_y_d_x`` as a derivative.

    Parameters
    ----------
    name : str
        The symbol.

    Returns
    -------
    str
        LaTeX, without dollars.
    """
    derivative = re.fullmatch(r"d_(.+)_d_(.+)", name)
    if derivative:
        of, by = map(symbol, derivative.groups())
        return rf"\frac{{\partial {of}}}{{\partial {by}}}"
    head, *below = name.split("_")
    numbered = re.fullmatch(r"([A-Za-z]+)(\d+)", head)
    if numbered:
        head, below = numbered[1], [numbered[2], *below]
    return _letters(head) + (rf"_{{{_upright(' '.join(below))}}}" if below else "")


def number(value: float) -> str:
    """Give a number as LaTeX, to nine digits.

    Parameters
    ----------
    value : float
        The number.

    Returns
    -------
    str
        LaTeX, without dollars.
    """
    mantissa, _, exponent = format(value, ".9g").partition("e")
    return rf"{mantissa} \times 10^{{{int(exponent)}}}" if exponent else mantissa


def quantity(value: float, unit: str) -> str:
    """Give a number with its unit as LaTeX.

    Parameters
    ----------
    value : float
        The number.
    unit : str
        The unit, as a working has it; ``1`` is none.

    Returns
    -------
    str
        LaTeX, without dollars.
    """
    if unit in ("", "1"):
        return number(value)
    per = unit.removeprefix("1/")
    return rf"{number(value)}\,{_upright(per)}" + ("" if per == unit else "^{-1}")


def _letters(word: str) -> str:
    return _GREEK.get(word) or (word if len(word) == 1 else _upright(word))


def _upright(text: str) -> str:
    if text.isdecimal():
        return text
    escaped = re.sub(r"([%&#_$])", r"\\\1", text)
    return rf"\mathrm{{{escaped}}}".replace(" ", r"\ ")


def _tex(node: ast.expr, put_in: Mapping[str, str] | None) -> tuple[str, int]:
    """LaTeX of a node, and how tightly it binds."""
    if isinstance(node, ast.Name):
        return _leaf(symbol(node.id) if put_in is None else put_in[node.id])
    if isinstance(node, ast.Constant):
        return _leaf(r"\pi" if repr(node.value) == _PI else number(node.value))  # type: ignore[arg-type]
    if isinstance(node, ast.UnaryOp):
        return "-" + _bracketed(node.operand, put_in, _PRODUCT), _SUM
    if isinstance(node, ast.Call):
        return _called(node, put_in), _ATOM
    assert isinstance(node, ast.BinOp)
    if isinstance(node.op, ast.Div):
        return rf"\frac{{{_tex(node.left, put_in)[0]}}}{{{_tex(node.right, put_in)[0]}}}", _ATOM
    if isinstance(node.op, ast.Pow):
        return rf"{_bracketed(node.left, put_in, _ATOM)}^{{{_tex(node.right, put_in)[0]}}}", _POWER
    if isinstance(node.op, ast.Mult) and isinstance(node.left, ast.Name) and ast.dump(node.left) == ast.dump(node.right):
        return rf"{_bracketed(node.left, put_in, _ATOM)}^{{2}}", _POWER
    sign, binds = _BINARY[type(node.op)]
    return _bracketed(node.left, put_in, binds) + sign + _bracketed(node.right, put_in, binds + 1), binds


def _leaf(tex: str) -> tuple[str, int]:
    # a negative number and one with a power or a unit are not one piece
    if tex.startswith("-"):
        return tex, _SUM
    return tex, _PRODUCT if r"\times" in tex or r"\," in tex else _ATOM


def _bracketed(node: ast.expr, put_in: Mapping[str, str] | None, at_least: int) -> str:
    tex, binds = _tex(node, put_in)
    return tex if binds >= at_least else rf"\left({tex}\right)"


def _called(node: ast.Call, put_in: Mapping[str, str] | None) -> str:
    assert isinstance(node.func, ast.Name)
    inner = r",\ ".join(_tex(argument, put_in)[0] for argument in node.args)
    if node.func.id == "sqrt":
        return rf"\sqrt{{{inner}}}"
    if node.func.id == "abs":
        return rf"\left|{inner}\right|"
    return rf"{_upright(node.func.id)}\left({inner}\right)"
