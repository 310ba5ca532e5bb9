"""Compare a file of vectors with one that was made anew.

What is not a number must be the same; numbers within a tolerance, because the last digits of NumPy and SciPy depend on the processor.
"""

import re

NUMBER = re.compile(r"-?\d+(?:\.\d+)?(?:[eE][-+]?\d+)?")


def check(file, content, within=1e-9):
    """Fail when the file is not the content, a number by more than `within` of its size or of 1."""
    told = file.read_text(encoding="utf-8")
    assert NUMBER.sub("#", told) == NUMBER.sub("#", content), file.name
    for a, b in zip(NUMBER.findall(told), NUMBER.findall(content), strict=True):
        assert abs(float(a) - float(b)) <= within * max(1.0, abs(float(a))), (file.name, a, b)
