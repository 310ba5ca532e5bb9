"""The library beside its peers: one worker process that is asked for work between the rounds of the peers, all on one thread.

Both are timed in the same way: processor time of the process that works, by the kernel, so that another job on the machine does not count.
Where /proc is missing it is the time of day."""

import platform
import statistics
import subprocess
import sys
import time
from importlib.metadata import version
from pathlib import Path

ROUNDS = 7


class Worker:
    def __init__(self, path):
        self.process = subprocess.Popen([path], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True)

    def ask(self, kernel, count):
        self.process.stdin.write(f"{kernel} {count}\n")
        self.process.stdin.flush()
        answer = self.process.stdout.readline().split()
        if not answer:
            raise SystemExit(f"the worker has no answer to {kernel}")
        return [float(number) for number in answer]


def seconds(process):
    if process == "self":  # the kernel brings the file up to date only when another process had its turn
        return time.thread_time()
    try:
        return int(Path(f"/proc/{process}/schedstat").read_text().split()[0]) / 1e9
    except FileNotFoundError:
        return time.perf_counter()


def compare(worker, rows, unit, scale):
    """rows: name, items of one round, and a kernel of the worker, another worker with its kernel, or a function. Alternates them; prints medians and the ratio of each to the first,
    paired round by round. Returns the last results."""
    times = {name: [] for name, _, _ in rows}
    results = {}
    for round_number in range(ROUNDS + 1):
        for name, count, work in rows:
            asked, kernel = (worker, work) if isinstance(work, str) else work if isinstance(work, tuple) else (None, "")
            process = asked.process.pid if asked else "self"
            start = seconds(process)
            results[name] = asked.ask(kernel, count) if asked else work(count)
            if round_number > 0:  # the first round warms up
                times[name].append((seconds(process) - start) / count * scale)
    first = times[rows[0][0]]
    for name, taken in times.items():
        ratio = statistics.median(t / f for t, f in zip(taken, first))
        print(f"  {name:44} {statistics.median(taken):12.3f} {unit}  (fastest {min(taken):.3f})  {ratio:9.3f} x the first")
    return results


def start(packages):
    if len(sys.argv) != 2:
        raise SystemExit(f"usage: python {sys.argv[0]} PATH_OF_THE_WORKER")
    model = next((l.split(":")[1].strip() for l in open("/proc/cpuinfo") if l.startswith("model name")), "")
    rustc = subprocess.run(["rustc", "--version"], capture_output=True, text=True).stdout.strip()
    print(f"{time.strftime('%Y-%m-%d')}, {' '.join(Path(a).name for a in sys.argv)}, medians of {ROUNDS} alternating rounds, one thread")
    print(f"{model or platform.processor()}; {rustc}; CPython {platform.python_version()}; "
          + ", ".join(f"{name} {version(name)}" for name in packages))
    return Worker(sys.argv[1])
