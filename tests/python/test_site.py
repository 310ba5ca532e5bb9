"""The site: built without a network and without warnings, complete, and at rest when it is read."""

import re
import subprocess
import sys
from functools import cache
from html.parser import HTMLParser
from importlib import import_module
from pkgutil import iter_modules
from urllib.parse import unquote, urlsplit

import gaugepoint
import pytest
from sphinx.util.inventory import InventoryFile
from vectors import REPOSITORY

# a new network has nothing but its loopback, which notebooks talk over and which is down
ALONE = """
import fcntl, runpy, socket, struct
with socket.socket() as link:
    fcntl.ioctl(link, 0x8914, struct.pack("16sH14x", b"lo", 1))
runpy.run_module("sphinx", run_name="__main__")
"""
# where the system does not give a new network: in this process nothing but the loopback can be reached
REFUSED = """
import runpy, sys
def refuse(event, arguments):
    if event == "socket.connect" and isinstance(arguments[1], tuple) and not arguments[1][0].startswith("127."):
        raise OSError(f"no network: {arguments[1]}")
sys.addaudithook(refuse)
runpy.run_module("sphinx", run_name="__main__")
"""


def alone():
    new_network = ["unshare", "--map-root-user", "--net"]
    try:
        subprocess.run([*new_network, "true"], check=True, capture_output=True)
    except (OSError, subprocess.CalledProcessError):
        return [sys.executable, "-c", REFUSED]
    return [*new_network, sys.executable, "-c", ALONE]


@pytest.fixture(scope="module")
def site(tmp_path_factory):
    folder = tmp_path_factory.mktemp("site")
    options = ["-q", "-W", "-n", "--keep-going", "-j", "auto", "-c", "python/docs"]
    done = subprocess.run([*alone(), *options, "-d", str(folder / "read"), ".", str(folder / "pages")], cwd=REPOSITORY, capture_output=True, text=True, check=False)
    # kernels of notebooks speak on the same channel: what says that there was no warning is the code
    assert done.returncode == 0, done.stderr
    return folder / "pages"


class Page(HTMLParser):
    """What a page has to go to, what it goes to, and what it loads."""

    LOADED = dict.fromkeys(("audio", "embed", "iframe", "img", "script", "source", "video"), "src") | {"link": "href", "object": "data"}

    def __init__(self, path):
        super().__init__()
        self.places, self.links, self.loads = set(), [], []
        self.feed(path.read_text(encoding="utf-8"))

    def handle_starttag(self, tag, attributes):
        given = dict(attributes)
        self.places.update(given[name] for name in ("id", "name") if given.get(name))
        if tag == "a" and given.get("href"):
            self.links.append(given["href"])
        if given.get(self.LOADED.get(tag)):
            self.loads.append(given[self.LOADED[tag]])
        self.loads += re.findall(r"url\(([^)]+)\)", given.get("style") or "")


def pages(site):
    return {path: page_of(path) for path in site.rglob("*.html")}


page_of = cache(Page)


def test_every_page_is_there(site):
    sources = ("core/docs/*.md", "ffi/docs/*.md", "python/docs/**/*.md", "python/docs/notebooks/[0-9]_*.py")
    wanted = {source.relative_to(REPOSITORY).with_suffix(".html") for pattern in sources for source in REPOSITORY.glob(pattern)}
    assert wanted <= {path.relative_to(site) for path in site.rglob("*.html")}


def test_notebooks_show_what_they_draw_and_fold_their_solutions(site):
    for notebook in REPOSITORY.glob("python/docs/notebooks/[0-9]_*.py"):
        page = site / notebook.relative_to(REPOSITORY).with_suffix(".html")
        assert any(loaded.endswith(".png") for loaded in page_of(page).loads), notebook
        folded = re.findall(r"<details.*?</details>", page.read_text(encoding="utf-8"), re.S)
        assert sum("# solution" in re.sub(r"<[^>]+>", "", cell) for cell in folded) == notebook.read_text(encoding="utf-8").count("**Exercise "), notebook


def test_nothing_is_loaded_from_elsewhere(site):
    loads = {loaded for page in pages(site).values() for loaded in page.loads}
    for style in site.rglob("*.css"):
        loads |= set(re.findall(r"url\(\s*[\"']?([^\"')]+)|@import\s+[\"']([^\"']+)", style.read_text(encoding="utf-8")))
    loads = {loaded if isinstance(loaded, str) else "".join(loaded) for loaded in loads}
    assert loads
    assert not [loaded for loaded in loads if urlsplit(loaded).netloc or urlsplit(loaded).scheme not in ("", "data")]


def test_links_lead_somewhere(site):
    lost = []
    for path, page in pages(site).items():
        for link in page.links:
            parts = urlsplit(link)
            if parts.scheme or parts.netloc:
                continue
            target = (path.parent / unquote(parts.path)).resolve() if parts.path else path
            if not target.is_file() or (parts.fragment and target.suffix == ".html" and unquote(parts.fragment) not in page_of(target).places):
                lost.append(f"{path.relative_to(site)}: {link}")
    assert not lost


def test_every_public_name_has_its_place(site):
    told = {}
    with (site / "objects.inv").open("rb") as file:
        inventory = InventoryFile.load(file, "", lambda base, place: place)
    for kind, entries in inventory.items():
        if kind.startswith("py:"):
            told |= {name: entry.uri for name, entry in entries.items()}
    names = (module.name for module in iter_modules(gaugepoint.__path__) if not module.name.startswith("_"))
    modules = [gaugepoint, *(import_module(f"gaugepoint.{name}") for name in names)]
    things = {}
    for name in told:
        owner, _, last = name.rpartition(".")
        if owner in sys.modules and owner.startswith("gaugepoint"):
            things.setdefault(last, []).append(getattr(sys.modules[owner], last))
    public = {f"{module.__name__}.{name}": getattr(module, name) for module in modules for name in module.__all__}
    assert not [name for name, thing in public.items() if not any(thing is other for other in things.get(name.rpartition(".")[2], ()))]
    for name, uri in told.items():
        page, _, place = uri.partition("#")
        assert place in page_of(site / page).places, name


def test_what_rust_hides_is_hidden_and_what_only_rust_can_follow_is_gone(site):
    for page in site.glob("core/docs/*.html"):
        text = re.sub(r"<[^>]+>", "", page.read_text(encoding="utf-8"))
        assert "Ok::&lt;" not in text and "](" not in text and "crate::" not in re.sub(r"use crate::.*", "", text), page
