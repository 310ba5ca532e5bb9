"""The suite of the Python module. It runs against the installed wheel:

maturin build --release -m python/Cargo.toml -o target/wheels --target-dir target/python
pip install --force-reinstall target/wheels/*.whl
pytest tests/python
"""

from pathlib import Path

import gaugepoint
import pytest

REPOSITORY = Path(__file__).parents[2]


def pytest_configure():
    if (REPOSITORY / "python") in Path(gaugepoint.__file__).parents:
        raise pytest.UsageError("gaugepoint is imported from its source folder: install the wheel")
