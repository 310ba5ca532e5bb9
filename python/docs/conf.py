"""The site: the guide as it lies in core, ffi and here, the notebooks with what they print and draw, the reference from the docstrings.

sphinx-build -W -n -c python/docs . target/site/pages

The source folder is the repository: pages link to each other as they do where they lie, and nothing is copied. The package must be installed. What the
notebooks printed lies beside the pages afterwards.
"""

import inspect
import re
from functools import cache
from importlib import import_module
from pathlib import Path

import gaugepoint
from pygments.lexers.special import TextLexer
from sphinx.ext.napoleon import Config, NumpyDocstring
from sphinx.highlighting import lexers
from sphinx.pycode import ModuleAnalyzer
from sphinx.util.docutils import SphinxDirective
from sphinx.util.nodes import make_refnode

ROOT = Path(__file__).parents[2]
INDEX = Path(__file__).with_name("index.md").read_text(encoding="utf-8")

project = "gaugepoint"
author = project_copyright = "gaugepoint contributors"
version = release = gaugepoint.__version__

extensions = ["myst_nb", "sphinx.ext.autodoc"]
root_doc = "python/docs/index"
include_patterns = ["core/docs/*.md", "ffi/docs/*.md", "python/docs/*.md", "python/docs/*/*.md", "python/docs/notebooks/[0-9]_*.py"]
exclude_patterns = [".*", "benches", "target", "tests"]
source_suffix = {".md": "myst-nb", ".py": "myst-nb"}

html_theme = "furo"
html_title = f"gaugepoint {release}"
html_copy_source = False
html_show_sphinx = False

myst_heading_anchors = 4
nb_custom_formats = {".py": ["jupytext.reads", {"fmt": "py:percent"}]}
nb_execution_mode = "force"
nb_execution_raise_on_error = True

autodoc_member_order = "bysource"
maximum_signature_line_length = 100
# names, parameters and words of a document stand in one backtick alike: what is no name stays as it is written
default_role = "py:obj"
nitpick_ignore_regex = [
    ("py:obj", ".*"),
    # of other libraries, and what stands for their frames
    ("py:class", r"(collections|matplotlib|np|numpy|os)\..*|Axes|NDArray|gaugepoint\.frames\._Frame"),
    # types that stand for one of several
    ("py:class", r"gaugepoint\._\w+\._[A-Z]"),
]


# what it colours, shown plain: rows of readings
lexers["csv"] = TextLexer()


# --- pages of the core: they are the documentation of its modules too

# modules of the core whose documentation is a page
RUST_PAGES = {
    path.relative_to(ROOT / "core" / "src").with_suffix("").as_posix().removesuffix("/mod").replace("/", "::"): page
    for path in (ROOT / "core" / "src").rglob("*.rs")
    for page in re.findall(r'^#!\[doc = include_str!\(".*/docs/(.+)"\)\]$', path.read_text(encoding="utf-8"), re.M)
}
# those that have none
TITLES = {page: title for title, page in re.findall(r"^(.+) <../../(core/docs/.+)>$", INDEX, re.M)}
FENCED = re.compile(r"^(```.*?^```$)", re.M | re.S)
RUST_LINK = re.compile(r"\[(`[^`]+`)\](?!\()|\[([^][]+)\]\(((?:\w+|mod@\w+)(?:::\w+)*(?:#[\w-]+)?)(?:\(\))?\)")


def prose(text, titled):
    """Links into the core go to the page that tells of it, or nowhere; below a title that was added, headings are one lower."""

    def linked(link):
        names, _, place = (link[3] or "").removeprefix("mod@").removeprefix("crate::").partition("#")
        names = names.split("::")
        pages = (RUST_PAGES.get("::".join(names[:length])) for length in range(len(names), 0, -1))
        page = next(filter(None, pages), None)
        return f"[{link[2]}]({page}{'#' * bool(place)}{place})" if page else link[2] or link[1].replace("mod@", "")

    return re.sub(r"^#", "##", RUST_LINK.sub(linked, text), flags=re.M) if titled else RUST_LINK.sub(linked, text)


def block(text):
    """A block without a language is Rust, and what rustdoc hides of Rust stays hidden."""
    language, _, code = text.partition("\n")
    return text if language not in ("```", "```rust") else "```rust\n" + re.sub(r"^# .*\n", "", code, flags=re.M)


def page_of_the_core(app, name, source):
    """Give a page of the core what it lacks outside of rustdoc."""
    if name.startswith("core/docs/"):
        titled = name in TITLES
        parts = FENCED.split(source[0])
        parts = [block(part) if k % 2 else prose(part, titled) for k, part in enumerate(parts)]
        source[0] = (f"# {TITLES[name]}\n\n" if titled else "") + "".join(parts)


def folded(app, name, source):
    """A solution is folded here as it is in the notebook."""
    if name.startswith("python/docs/notebooks/"):
        source[0] = source[0].replace('# %% jupyter={"source_hidden": true}', '# %% tags=["hide-input"]')


# --- reference

PAGES = sorted(Path(__file__).with_name("reference").glob("*.md"))
MODULES = [import_module(name) for page in PAGES for name in re.findall(r"^```{reference} (\S+)$", page.read_text(encoding="utf-8"), re.M)]


@cache
def written_in(module):
    """Classes, functions and told of data that are written in a module, and not imported from another."""
    analyzer = ModuleAnalyzer.for_module(module.__name__)
    analyzer.analyze()
    return {*analyzer.tags, *(name for owner, name in analyzer.attr_docs if not owner)}


def home(module, name):
    """The module that tells of a public name: where it is written, or the one that makes it public."""
    same = (other for other in MODULES if vars(other).get(name) is vars(module)[name] and name in written_in(other))
    return next(same, module)


def shown_as(module, name):
    """The shortest name that a public thing is reached by."""
    top = name in gaugepoint.__all__ and getattr(gaugepoint, name) is vars(module)[name]
    return f"gaugepoint.{name}" if top else f"{home(module, name).__name__}.{name}"


def shown(name, thing):
    """The directive of a public thing; what a class has from a base of its own is told of with it, but for what every class has: objects.md tells that."""
    if inspect.isroutine(thing):
        return [f".. autofunction:: {name}", ""]
    if not inspect.isclass(thing):
        return [f".. autodata:: {name}", ""]
    kind = "exception" if issubclass(thing, BaseException) else "class"
    return [f".. auto{kind}:: {name}", "   :members:", "   :inherited-members: BaseException, Value", ""]


def sections(app, what, name, thing, options, lines):
    """Headings of a docstring to lists. An attribute has none, and napoleon would take what stands before a colon for its type."""
    if what not in ("attribute", "data", "property"):
        config = Config(napoleon_use_param=False, napoleon_use_rtype=False)
        lines[:] = NumpyDocstring(lines, config, app, what, name, thing, options).lines()


class Reference(SphinxDirective):
    """What a module has in public, each thing told of once; names in the content are those of `gaugepoint` that no module has."""

    optional_arguments = 1
    has_content = True

    def run(self):
        lines, elsewhere = [], []
        if self.arguments:
            module = import_module(self.arguments[0])
            lines += [f".. automodule:: {module.__name__}", ""]
            # what is asked before what it gives
            for name in sorted(module.__all__, key=lambda name: not inspect.isroutine(vars(module)[name])):
                if home(module, name) is module:
                    lines += shown(shown_as(module, name), vars(module)[name])
                else:
                    elsewhere.append(f":py:obj:`{name} <{shown_as(module, name)}>`")
        for name in self.content:
            lines += shown(f"gaugepoint.{name}", getattr(gaugepoint, name))
        if elsewhere:
            lines += ["Also in this module: " + ", ".join(elsewhere) + ".", ""]
        return self.parse_text_to_nodes("\n".join(["```{eval-rst}", *lines, "```"]))


def name_in_a_docstring(app, env, node, contnode):
    """A name without its module, as docstrings have it: what the same page tells of, or what one page alone tells of."""
    told = by_last_name(env).get(node.get("reftarget"), set()) if node.get("refdomain") == "py" else set()
    here = {(page, place) for page, place in told if page == node["refdoc"]}
    for places in (here, told):
        if len(places) == 1:
            return make_refnode(app.builder, node["refdoc"], *min(places), contnode)
    return None


@cache
def by_last_name(env):
    """Page and place of everything that the reference tells of, by its name without a module."""
    told = {}
    for name, entry in env.domains["py"].objects.items():
        if entry.objtype in ("class", "data", "exception", "function"):
            told.setdefault(name.rpartition(".")[2], set()).add((entry.docname, entry.node_id))
    return told


def without_fields(app, doctree):
    """The contents of a page of the reference are its functions and classes: with every field of a class nobody finds anything in them."""
    name = app.env.docname
    if name.startswith("python/docs/reference/"):
        for title in app.env.tocs[name]:
            for things in title.children[1:]:
                for thing in things:
                    del thing[1:]


def way_in(app, failed):
    """The site begins where its first page lies, which is not the top of its folder."""
    if not failed:
        there = f'<meta http-equiv="refresh" content="0; url={root_doc}.html"><a href="{root_doc}.html">{html_title}</a>'
        page = f'<!doctype html><meta charset="utf-8"><title>{html_title}</title>{there}\n'
        (app.outdir / "index.html").write_text(page, encoding="utf-8")


def setup(app):
    app.add_directive("reference", Reference)
    app.connect("source-read", page_of_the_core)
    app.connect("source-read", folded)
    app.connect("autodoc-process-docstring", sections)
    app.connect("missing-reference", name_in_a_docstring)
    # after the contents were collected
    app.connect("doctree-read", without_fields, priority=900)
    app.connect("build-finished", way_in)
