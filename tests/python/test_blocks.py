"""Every block of code on a page of the guide is run, by one of the runners below, which are asked what they run."""

import re
from functools import cache

import pytest
from markdown_it import MarkdownIt
from vectors import REPOSITORY

PAGES = sorted(page for part in ("core/docs", "ffi/docs", "python/docs") for page in (REPOSITORY / part).rglob("*.md"))
# a runner that runs a page from its first block to its last
WHOLE = {
    "ffi/docs/guide-sql.md": "tests/hosts/sql",
    "python/docs/command.md": "tests/python/test_command.py",
    "python/docs/dask.md": "tests/python/test_dask.py",
}
# without their language, because they stand as they are typed into a shell or a cell, or are shown there
INDENTED = {
    "ffi/docs/guide-calc.md": {
        "cargo build": "tests/hosts/calc builds the add-in so and has Calc load it, from its folder in place of `unopkg`",
        "=GAUGEPOINT.BENCH_CLEARANCE_MM_ARRAY(": "tests/hosts/calc asks every function in its form for columns",
        "=GAUGEPOINT.WHY(": "tests/hosts/calc, `followed`",
        "bore_mm: ": "tests/hosts/calc, `followed`",
    },
    "ffi/docs/guide-sql.md": {"CREATE TABLE pair": "tests/hosts/sql, as a part of the sample"},
    "ffi/docs/guide-excel.md": {"cargo build": "nothing on Windows, as the page says; `cargo test -p gaugepoint-ffi` builds the library here"},
}


@cache
def text(path):
    return (REPOSITORY / path).read_text(encoding="utf-8")


@cache
def compiled():
    """Pages that are documentation of the core, whose Rust `cargo test -p gaugepoint` compiles and runs."""
    sources = (path.read_text(encoding="utf-8") for path in (REPOSITORY / "core" / "src").rglob("*.rs"))
    return {page for source in sources for page in re.findall(r'^#!?\[doc = include_str!\(".*/docs/(.+)"\)\]$', source, re.M)}


def named(path, start):
    """Names of pages in the list of a runner."""
    (listed,) = re.findall(re.escape(start) + r"([^])]+)[])]", text(path))
    return re.findall(r'"([\w-]+)"', listed)


def blocks(page):
    """Language and content of each block, None for a language that is not said."""
    tokens = MarkdownIt("commonmark").enable("table").parse(page.read_text(encoding="utf-8"))
    return [(token.info if token.type == "fence" else None, token.content) for token in tokens if token.type in ("fence", "code_block")]


def run_by(page, place):
    """What runs a block; nothing when nothing does."""
    found, path = blocks(page), page.relative_to(REPOSITORY).as_posix()
    language, content = found[place]
    before = [earlier for earlier, _ in found[:place]]
    if language is None:
        return next((runner for start, runner in INDENTED.get(path, {}).items() if content.startswith(start)), None)
    if path in WHOLE and language is not None:
        return WHOLE[path] if page.stem in text(WHOLE[path]) else None
    if language.startswith("{"):
        return "tests/python/test_site.py, of which it is made"
    if path.startswith("ffi/"):
        return "tests/hosts/guide" if page.stem in named("tests/hosts/guide", "PAGES = (") else None
    if language in ("", "rust"):
        return "cargo test -p gaugepoint --doc" if page.name in compiled() else None
    if language == "python":
        return "tests/python/test_docs.py"
    if language == "c" and before.count("c") == 0 and page.stem in named("tests/c_abi.rs", "fn the_pages_are_true() {\n    for name in ["):
        return "tests/c_abi.rs"
    if language == "text" and {"python", "c"} & set(before[max((k + 1 for k, earlier in enumerate(before) if earlier == "text"), default=0) :]):
        return "what the block above it prints, by what runs that"
    return None


@pytest.mark.parametrize("page", PAGES, ids=lambda page: page.stem)
def test_blocks_are_run(page):
    runners = {place: run_by(page, place) for place in range(len(blocks(page)))}
    print(*(f"{page.name} {blocks(page)[place][0]}: {runner}" for place, runner in runners.items()), sep="\n")
    assert not [blocks(page)[place] for place, runner in runners.items() if runner is None]


def test_the_table_of_the_page_is_that_of_the_sample():
    (shown,) = [content for language, content in blocks(REPOSITORY / "ffi/docs/guide-sql.md") if language is None]
    lines = [line.strip() for line in text("ffi/samples/sql/fitted.sql").splitlines()]
    assert not [line for line in shown.splitlines() if line.strip() not in [*lines, "..."]]


def test_a_block_that_nothing_runs_is_told(tmp_path, monkeypatch):
    monkeypatch.setitem(globals(), "REPOSITORY", tmp_path)
    monkeypatch.setitem(globals(), "compiled", lambda: {"page.md"})
    monkeypatch.setitem(globals(), "named", lambda *_: [])
    page = tmp_path / "core" / "docs" / "page.md"
    page.parent.mkdir(parents=True)
    fenced = "".join(f"```{language}\nx\n```\n\n" for language in ("", "text", "java", "c"))
    page.write_text(f"{fenced}- a list\n\n  ```sh\n  x\n  ```\n\nand\n\n    indented\n", encoding="utf-8")
    assert [run_by(page, place) is None for place in range(6)] == [False, True, True, True, True, True]
