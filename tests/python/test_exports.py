"""What the installed package is made of."""

import ast
import re
import subprocess
import sys
from importlib import metadata
from pathlib import Path

import gaugepoint
from gaugepoint import _gaugepoint
from vectors import REPOSITORY

LIST_MODULES = "import sys; {}; print(*sorted({{name.partition('.')[0] for name in sys.modules}}))"


def test_extension_exports_only_its_init_function():
    listed = subprocess.run(
        ["nm", "-D", "--defined-only", _gaugepoint.__file__], capture_output=True, text=True, check=True
    ).stdout
    assert [line.split()[-1] for line in listed.splitlines()] == ["PyInit__gaugepoint"]


def test_extension_is_for_every_python_from_3_10():
    assert ".abi3." in _gaugepoint.__file__
    assert "cp310-abi3" in metadata.distribution("gaugepoint").read_text("WHEEL")
    assert metadata.metadata("gaugepoint")["Requires-Python"] == ">=3.10"


def test_files():
    installed = {file.name for file in Path(gaugepoint.__file__).parent.iterdir() if file.is_file()}
    source = {file.name for file in (REPOSITORY / "python" / "gaugepoint").iterdir() if file.is_file()}
    assert installed == source | {Path(_gaugepoint.__file__).name}
    assert "py.typed" in installed


def test_one_version():
    manifest = (REPOSITORY / "Cargo.toml").read_text(encoding="utf-8")
    (version,) = re.findall(r'^version = "(.+)"$', manifest, re.M)
    assert gaugepoint.__version__ == version == metadata.version("gaugepoint")


def test_licences_are_in_the_wheel():
    names = {path.name for path in metadata.files("gaugepoint")}
    assert {"LICENSE-MIT", "LICENSE-APACHE"} <= names


SUBMODULES = {"batch", "before", "comparing", "decision", "error", "fitting", "frames", "function", "growth", "hot", "job", "measurement", "parts", "plan", "plot", "measuring", "report", "sheet", "shape", "stack", "stacking", "trials", "uncertainty", "working"}


def test_public_names_are_the_list():
    # what has not been asked for yet is not there, so all of it is asked for
    assert all(hasattr(gaugepoint, name) for name in gaugepoint.__all__)
    public = {name for name in vars(gaugepoint) if not name.startswith("_")}
    assert public - SUBMODULES == set(gaugepoint.__all__) - {"__version__"}


def test_type_checkers_are_told_the_same_names():
    """`__init__.pyi` imports every name from the module that the table of `__init__.py` has it from, and lists it."""
    tree = ast.parse((REPOSITORY / "python" / "gaugepoint" / "__init__.pyi").read_text(encoding="utf-8"))
    (listed,) = (node.value for node in tree.body if isinstance(node, ast.Assign))
    imports = [node for node in tree.body if isinstance(node, ast.ImportFrom)]
    homes = {name.name: node.module for node in imports for name in node.names if node.module != "gaugepoint"}
    (modules,) = ({name.name for name in node.names} for node in imports if node.module == "gaugepoint")
    assert sorted(ast.literal_eval(listed)) == gaugepoint.__all__ == sorted(homes)
    assert homes == {name: f"gaugepoint.{module}" for name, module in gaugepoint._HOMES.items()}
    assert modules == gaugepoint._MODULES == SUBMODULES - {"frames", "plot"}


def test_kinds_are_those_of_the_core():
    core = (REPOSITORY / "core" / "src" / "error.rs").read_text(encoding="utf-8")
    assert gaugepoint.ERROR_KINDS == tuple(re.findall(r'^    \w+ = \d+ "(\w+)";$', core, re.M))


def test_import_brings_only_the_standard_library():
    def modules(statement):
        command = [sys.executable, "-c", LIST_MODULES.format(statement)]
        return set(subprocess.run(command, capture_output=True, text=True, check=True).stdout.split())

    brought = modules("from gaugepoint import *") - modules("pass")
    assert brought - sys.stdlib_module_names == {"gaugepoint"}


def test_requirements_of_the_suite_are_the_extra():
    listed = (REPOSITORY / "tests" / "python" / "requirements.txt").read_text(encoding="utf-8").splitlines()
    extra = [line.partition(" ; ")[0] for line in metadata.requires("gaugepoint") if "dev" in line.partition(" ; ")[2]]
    assert [line for line in listed if not line.startswith("#")] == extra
