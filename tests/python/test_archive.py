"""The source archive holds what a wheel is built of, and nothing else. It is listed and read here; to build from it: `pip wheel` of the archive."""

import re
import subprocess
import sys
import tarfile
from pathlib import PurePosixPath

import pytest
from vectors import REPOSITORY

MAKE = [sys.executable, "-m", "maturin", "sdist", "-m", "python/Cargo.toml", "-o"]


@pytest.fixture(scope="module")
def archive(tmp_path_factory):
    folder = tmp_path_factory.mktemp("archive")
    subprocess.run([*MAKE, str(folder)], cwd=REPOSITORY, check=True, capture_output=True)
    (file,) = folder.iterdir()
    with tarfile.open(file) as packed:
        return {PurePosixPath(*PurePosixPath(member.name).parts[1:]): packed.extractfile(member).read() for member in packed if member.isfile()}


def test_what_it_is_built_of_is_there(archive):
    for crate in ("core/src", "python/src", "python/gaugepoint"):
        tracked = subprocess.run(["git", "ls-files", crate], cwd=REPOSITORY, check=True, capture_output=True, text=True).stdout.split()
        # the package lies beside the project file, as in a folder of its own
        missing = [path for path in tracked if PurePosixPath(path.removeprefix("python/") if crate.endswith("gaugepoint") else path) not in archive]
        assert tracked and not missing
    beside = {"Cargo.toml", "Cargo.lock", "pyproject.toml", "PKG-INFO", "README.md", "core/Cargo.toml", "python/Cargo.toml"}
    assert beside <= {str(path) for path in archive}


def test_what_sources_include_is_there(archive):
    included = 0
    for path, content in archive.items():
        if path.suffix == ".rs":
            for target in re.findall(r'^#!?\[doc = include_str!\("(.+?)"\)\]', content.decode(), re.M):
                parts = []
                for part in (path.parent / target).parts:
                    parts = parts[:-1] if part == ".." else [*parts, part]
                assert PurePosixPath(*parts) in archive, (path, target)
                included += 1
    schemas = {path.name for path in (REPOSITORY / "core" / "docs").glob("*.schema.json")}
    assert included and schemas and schemas <= {path.name for path in archive}


@pytest.mark.parametrize("licence", ["LICENSE-APACHE", "LICENSE-MIT", "LICENSE-SOBOL"])
def test_licences_are_there(archive, licence):
    assert archive[PurePosixPath(licence)] == (REPOSITORY / licence).read_bytes()
    assert f"License-File: {licence}\n" in archive[PurePosixPath("PKG-INFO")].decode()


def test_nothing_else_is_there(archive):
    top = {"core", "gaugepoint", "python"}
    assert {path.parts[0] for path in archive if len(path.parts) > 1} == top
    assert {path.parts[1] for path in archive if path.parts[0] == "core" and len(path.parts) > 2} == {"docs", "examples", "src"}
    assert {path.parts[1] for path in archive if path.parts[0] == "python" and len(path.parts) > 2} == {"src"}
    assert not [path for path in archive if "__pycache__" in path.parts or path.suffix in (".pyc", ".so")]


def test_what_is_read_before_it_is_installed(archive):
    about = archive[PurePosixPath("PKG-INFO")].decode()
    head, _, readme = about.partition("\n\n")
    assert readme.strip() == (REPOSITORY / "python" / "README.md").read_text(encoding="utf-8").strip()
    assert "\nRequires-Python: >=3.10\n" in head and "\nClassifier: Typing :: Typed\n" in head and "\nKeywords: " in head
    # it is read away from the sources: no link goes beside it
    assert "](" not in readme
