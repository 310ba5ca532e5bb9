"""The notebooks for students run from top to bottom as they are committed: without outputs, with their solutions; and a wrong answer is told."""

import re

import jupytext
import pytest
from nbclient import NotebookClient
from vectors import REPOSITORY

FOLDER = REPOSITORY / "python" / "docs" / "notebooks"
NOTEBOOKS = sorted(FOLDER.glob("[0-9]_*.py"))
WRONG = "7.77"


def cells_of_code(notebook):
    return [cell for cell in notebook.cells if cell.cell_type == "code"]


@pytest.mark.parametrize("path", NOTEBOOKS, ids=lambda path: path.stem)
def test_runs(path, monkeypatch):
    monkeypatch.setenv("MPLBACKEND", "agg")
    notebook = jupytext.read(path)
    NotebookClient(notebook, timeout=60, kernel_name="python3", resources={"metadata": {"path": str(FOLDER)}}).execute()
    drawn = [cell for cell in cells_of_code(notebook) if cell.source.endswith(".figure")]
    assert drawn
    for cell in drawn:
        assert any("image/png" in output.get("data", {}) for output in cell.outputs), cell.source


@pytest.mark.parametrize("path", NOTEBOOKS, ids=lambda path: path.stem)
def test_wrong_answers_are_told(path, monkeypatch):
    monkeypatch.syspath_prepend(FOLDER)
    monkeypatch.chdir(FOLDER)
    notebook, names = cells_of_code(jupytext.read(path)), {}
    cells = [cell.source.replace("%matplotlib inline", "") for cell in notebook]
    asked = [place for place, cell in enumerate(cells) if cell.startswith("answer")]
    folded = [place for place, cell in enumerate(notebook) if cell.metadata.get("jupyter") == {"source_hidden": True}]
    assert folded == [place + 1 for place in asked]
    assert len(asked) == path.read_text(encoding="utf-8").count("**Exercise ") > 0
    for place, cell in enumerate(cells):
        exec(cell, names)
        if place in asked:
            exec(cells[place + 1], names)
            exec(cell.replace("None", WRONG), names)
            with pytest.raises(AssertionError):
                exec(cells[place + 2], names)
            exec(cell, names)


def test_all_are_in_the_index():
    index = (FOLDER / "README.md").read_text(encoding="utf-8")
    assert re.findall(r"\]\((\d_\w+\.py)\)", index) == [path.name for path in NOTEBOOKS]
