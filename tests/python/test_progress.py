"""Progress of long work: what is told, what stops it, and that nothing else changes."""

import fcntl
import os
import pty
import signal
import struct
import subprocess
import sys
import termios
import threading
import time

import gaugepoint
import numpy as np
import pytest
from conftest import REPOSITORY
from gaugepoint.plan import MeasuredSizes, WantedClearance, match
from gaugepoint.stack import Contributor, Function, Stack, Variation

SIDES = [Contributor(name, 10.0, -0.1, 0.1, Variation.normal(0.03)) for name in "ab"]
STACK = Stack(SIDES)
FORMULA = Function.from_formula(SIDES, "a * b")
CALLED = Function.of_callable(SIDES, lambda a, b: a * b)
EXAMPLES = REPOSITORY / "core" / "examples"
BUDGET = REPOSITORY / "tests" / "vectors" / "budgets" / "gauge_block.json"
# invented sizes, in an order that no case has in advance
SIZES = MeasuredSizes(86.0 + 0.001 * (np.arange(60) * 31 % 97), 0.001 + 1e-5 * (np.arange(60) % 7))
PISTONS = MeasuredSizes(85.95 + 0.001 * (np.arange(80) * 57 % 97), np.full(80, 0.001))


def matched(progress):
    return match(SIZES, PISTONS, WantedClearance(0.03, 0.07), progress=progress)


WORK = {
    "trials": lambda progress: STACK.trials(1, 300_000, progress=progress).values.tobytes(),
    "trials of a formula": lambda progress: FORMULA.trials(1, 300_000, progress=progress).values.tobytes(),
    "trials of a callable": lambda progress: CALLED.trials(1, 300_000, progress=progress).values.tobytes(),
    "adaptive": lambda progress: STACK.adaptive(1, 0.95, digits=1, progress=progress),
    "importance": lambda progress: STACK.importance("upper", 20.3, 1, 100_000, progress=progress).values.tobytes(),
    "matching": matched,
    "job": lambda progress: gaugepoint.assess(EXAMPLES / "pump_six.json", progress=progress).to_json(),
    "what if": lambda progress: gaugepoint.what_if(EXAMPLES / "pump_what_if.json", progress=progress).to_json(),
    "measurement": lambda progress: gaugepoint.measure(EXAMPLES / "three_ways.json", progress=progress).to_json(),
    "stack": lambda progress: gaugepoint.evaluate_stack(EXAMPLES / "deck_stack.json", progress=progress).to_json(),
    "budget": lambda progress: gaugepoint.budget(BUDGET, progress=progress).to_json(),
}


@pytest.mark.parametrize("work", WORK)
def test_counts_rise_to_the_whole_and_change_nothing(work):
    told = []
    assert WORK[work](lambda done, total: told.append((done, total))) == WORK[work](None)
    assert told[0][0] == 0
    assert told[-1][0] == told[-1][1] > 0
    assert all(before[0] <= after[0] <= after[1] for before, after in zip(told, told[1:], strict=False))
    assert len(set(told)) == len(told), "told twice"


class Enough(BaseException):
    """No exception that anybody catches by chance."""


@pytest.mark.parametrize("work", WORK)
@pytest.mark.parametrize("kind", [ValueError, Enough, KeyboardInterrupt])
def test_what_the_callable_raises_passes_through(work, kind):
    raised = kind("enough")
    told = []

    def stop(done, total):
        told.append(done)
        raise raised

    with pytest.raises(kind) as caught:
        WORK[work](stop)
    assert caught.value is raised
    assert told == [0], "told after it had raised"


def test_what_is_raised_in_the_end_stops_too():
    def stop(done, total):
        if done == total:
            raise ValueError("enough")

    with pytest.raises(ValueError, match="enough"):
        STACK.trials(1, 1000, progress=stop)


@pytest.mark.parametrize("progress", [3, "bar", [], (1, 2)])
def test_what_is_not_a_callable_is_refused(progress):
    with pytest.raises(TypeError, match="progress: a callable"):
        STACK.trials(1, 1000, progress=progress)


def test_what_the_law_raises_stands_before_the_rest():
    def law(a, b):
        raise ZeroDivisionError("of the law")

    told = []
    with pytest.raises(ZeroDivisionError, match="of the law"):
        Function.of_callable(SIDES, law).trials(1, 1000, progress=lambda done, total: told.append(done))
    assert told == [0]


def test_other_threads_run_between():
    """Nothing but the work itself lets go of the interpreter here."""
    begun, seen = [], []

    def other():
        while not begun:
            time.sleep(0.001)
        seen.append(True)

    def told(done, total):
        begun.append(done)
        if done == total:
            seen.append("the end")

    interval = sys.getswitchinterval()
    thread = threading.Thread(target=other)
    thread.start()
    sys.setswitchinterval(1000.0)
    try:
        STACK.trials(1, 8_000_000, progress=told)
    finally:
        sys.setswitchinterval(interval)
        thread.join()
    assert seen == [True, "the end"]


# each of these takes seconds
LONG = {
    "trials": "STACK.trials(1, 1 << 27, progress=begun)",
    "trials of a callable": "CALLED.trials(1, 1 << 27, progress=begun)",
    "adaptive": "STACK.adaptive(1, 0.9999, most_trials=1 << 27, progress=begun)",
    "matching": "match(BORES, PISTONS, WantedClearance(0.03, 0.07), progress=begun)",
    "budget": "gaugepoint.budget(BUDGET, progress=begun)",
}

LONG_RUN = """
import json, sys, time
import gaugepoint
import numpy as np
from gaugepoint.plan import MeasuredSizes, WantedClearance, match
from gaugepoint.stack import Contributor, Function, Stack, Variation

# an adaptive run of these needs some ten million trials for the ends of so wide an interval
names = [f"x{k}" for k in range(40)]
sides = [Contributor(name, 10.0, -4.0, 4.0, Variation.normal(0.9)) for name in names]
STACK = Stack(sides)
CALLED = Function.of_callable(sides, lambda *sizes: sum(size * size for size in sizes))
BORES = MeasuredSizes(86.0 + 0.0001 * (np.arange(2000) * 311 % 977), 0.001 + 1e-6 * (np.arange(2000) * 31 % 701))
PISTONS = MeasuredSizes(85.95 + 0.0001 * (np.arange(4000) * 577 % 977), 0.001 + 1e-6 * (np.arange(4000) * 57 % 701))
BUDGET = json.load(open(sys.argv[2]))
BUDGET["monte_carlo"] = {"seed": 1, "trials": 1 << 27}
before = STACK.trials(1, 1000).values

def begun(done, total):
    if done == 0:
        print("begun", flush=True)

result = None
try:
    result = eval(sys.argv[1])
except KeyboardInterrupt:
    stopped = time.monotonic()
    assert result is None and (STACK.trials(1, 1000).values == before).all()
    print(stopped, flush=True)
"""


@pytest.mark.skipif(sys.platform == "win32", reason="signals are sent as on Unix")
@pytest.mark.parametrize("work", LONG)
def test_ctrl_c_stops_long_work(work):
    """The interpreter is visited every 0.05 s and a unit is far shorter, so that a stop is obeyed within 0.2 s. What is measured also
    has the time until a signal is delivered and the process gets a processor: where the suite shares its machine, that was seen to be half a
    second. Every work here takes longer than that.
    """
    command = [sys.executable, "-c", LONG_RUN, LONG[work], str(BUDGET)]
    with subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True) as child:
        try:
            assert child.stdout.readline() == "begun\n", child.stderr.read()
            time.sleep(0.1)
            sent = time.monotonic()
            child.send_signal(signal.SIGINT)
            # one clock for all processes
            stopped = float(child.stdout.readline())
        finally:
            child.kill()
    assert 0.0 <= stopped - sent < 0.2 + 0.8, f"{stopped - sent} s"


BAR = """
import sys
from gaugepoint.stack import Contributor, Stack, Variation

stack = Stack([Contributor("a", 10.0, -0.1, 0.1, Variation.normal(0.03))])
for progress in {}:
    stack.trials(1, 100_000, progress=progress)
print("tqdm" in sys.modules)
"""


def barred(progress, stderr):
    command = [sys.executable, "-c", BAR.format(progress)]
    return subprocess.run(command, stdout=subprocess.PIPE, stderr=stderr, text=True, check=True).stdout


def test_tqdm_is_imported_only_for_a_bar():
    assert barred("[None, False, lambda done, total: None]", subprocess.PIPE) == "False\n"
    # no terminal, no bar
    assert barred("[True]", subprocess.PIPE) == "False\n"


def test_a_bar_is_drawn_on_a_terminal():
    ours, theirs = pty.openpty()
    # a terminal of no width shows nothing
    fcntl.ioctl(theirs, termios.TIOCSWINSZ, struct.pack("HHHH", 24, 80, 0, 0))
    try:
        assert barred("[True]", theirs) == "True\n"
        drawn = os.read(ours, 65536).decode()
    finally:
        os.close(ours)
        os.close(theirs)
    assert "100%" in drawn and "100000/100000" in drawn


def test_a_bar_that_is_not_installed_is_none(monkeypatch):
    monkeypatch.setattr(sys.stderr, "isatty", lambda: True, raising=False)
    monkeypatch.setitem(sys.modules, "tqdm", None)
    assert STACK.trials(1, 1000, progress=True).values.size == 1000
