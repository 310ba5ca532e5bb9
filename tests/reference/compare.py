"""Compare a file of vectors with one that was made anew.

What is not a number must be the same; numbers within a tolerance, because the last digits of NumPy and SciPy depend on the processor.
"""

import re

NUMBER = re.compile(r"-?\d+(?:\.\d+)?(?:[eE][-+]?\d+)?")


def difference(told, content, within=1e-9):
    """What differs first, a number by more than `within` of its size or of 1; None when nothing does."""
    if NUMBER.sub("#", told) != NUMBER.sub("#", content):
        return "words"
    pairs = zip(map(float, NUMBER.findall(told)), map(float, NUMBER.findall(content)), strict=True)
    return next(((a, b) for a, b in pairs if abs(a - b) > within * max(1.0, abs(a))), None)


def check(file, content, within=1e-9):
    """Fail when the file is not the content."""
    found = difference(file.read_text(encoding="utf-8"), content, within)
    assert found is None, (file.name, found)
