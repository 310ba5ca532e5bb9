"""LibreOffice without a window, with the add-in of Calc, for the tests of hosts."""

import os
import signal
import subprocess
import sys
import time
import zipfile
from contextlib import contextmanager
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
NEEDED = {"/usr/lib/libreoffice/program/libsclo.so": "libreoffice-calc-nogui", "/usr/lib/libreoffice/program/pythonloader.py": "python3-uno"}
XML = '<?xml version="1.0" encoding="UTF-8"?>\n'


def needed(test: str) -> None:
    for file, package in NEEDED.items():
        if not Path(file).is_file():
            sys.exit(f"{test} needs {file}: package {package}")


class Office:
    """LibreOffice with the add-in in a folder of its own, and a fresh profile that computes anew what it loads."""

    def __init__(self, work: Path, library_folder: Path, recalculate: bool = True):
        self.work, self.extension = work, work / "extensions/gaugepoint"
        package = work / "gaugepoint.oxt"
        subprocess.run([sys.executable, ROOT / "ffi/calc/build", "--library-dir", library_folder, "--out", package], check=True, stdout=subprocess.DEVNULL)
        with zipfile.ZipFile(package) as given:
            given.extractall(self.extension)
        self.profile("profile", recalculate)

    def profile(self, name: str, recalculate: bool, locale: str = "en-US") -> None:
        """A fresh profile; without `recalculate` it takes what files say, as LibreOffice does by default."""
        modes = "".join('<item oor:path="/org.openoffice.Office.Calc/Formula/Load">'
                        f'<prop oor:name="{kind}RecalcMode" oor:op="fuse"><value>{0 if recalculate else 1}</value></prop></item>' for kind in ("OOXML", "ODF"))
        place = f'<item oor:path="/org.openoffice.Setup/L10N"><prop oor:name="ooSetupSystemLocale" oor:op="fuse"><value>{locale}</value></prop></item>'
        (self.work / name / "user").mkdir(parents=True)
        (self.work / name / "user/registrymodifications.xcu").write_text(
            f'{XML}<oor:items xmlns:oor="http://openoffice.org/2001/registry">{modes}{place}</oor:items>\n')
        self.in_use = name

    def command(self, program: str, *more: str) -> dict:
        """How it is started; its Python takes its library from beside the first python3 of PATH, which may be another one."""
        places = (f"-env:UserInstallation=file://{self.work}/{self.in_use}", f"-env:BUNDLED_EXTENSIONS=file://{self.work}/extensions")
        return {"args": [program, *places, "--headless", "--norestore", *more], "env": {"PATH": "/usr/bin:/bin", "HOME": str(self.work)},
                "stdin": subprocess.DEVNULL}

    @contextmanager
    def listening(self):
        """The context of a running office. It is ended from outside with what it started, for asked to end itself it may never answer."""
        pipe = f"gaugepoint{os.getpid()}{self.in_use}"
        command = self.command("soffice", f"--accept=pipe,name={pipe};urp")
        with subprocess.Popen(**command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, start_new_session=True) as running:
            try:
                yield connected(pipe)
            finally:
                os.killpg(running.pid, signal.SIGKILL)


def connected(pipe: str):
    """The context of a running office. Only the Python of LibreOffice has uno."""
    import uno

    resolver = uno.getComponentContext().ServiceManager.createInstance("com.sun.star.bridge.UnoUrlResolver")
    for attempt in range(600):
        try:
            return resolver.resolve(f"uno:pipe,name={pipe};urp;StarOffice.ComponentContext")
        except Exception:
            if attempt == 599:
                raise
            time.sleep(0.1)


def properties(**named) -> tuple:
    """Arguments by name, as an office takes them."""
    from com.sun.star.beans import PropertyValue
    return tuple(PropertyValue(name, 0, value, 0) for name, value in named.items())
