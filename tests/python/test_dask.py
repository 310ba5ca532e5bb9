"""Rows and trials split among processes of Dask: the bits of one process, whatever the parts and the workers, and when a worker is killed.

One million rows here. Ten million were run once: benches/records.
"""

import contextlib
import os
import re
import signal
import subprocess
import sys

import cloudpickle
import gaugepoint
import numpy as np
import pytest
from dask.distributed import Client, LocalCluster, as_completed, wait
from gaugepoint import frames
from gaugepoint.stack import Trials
from vectors import REPOSITORY

PAGE = (REPOSITORY / "python" / "docs" / "dask.md").read_text(encoding="utf-8")
((PROGRAM, PRINTED),) = re.findall(r"^```python split.py\n(.*?)^```\n\n```text\n(.*?)^```$", PAGE, re.M | re.S)
# what the page does, without its last block; workers have no such module, so what they run is sent to them
RECIPE = {"__name__": "recipe"}
exec(PROGRAM, RECIPE)
cloudpickle.register_pickle_by_value(sys.modules[__name__])
ROWS = 1_000_000
SEED = 20261129


@contextlib.contextmanager
def cluster():
    with LocalCluster(n_workers=2, threads_per_worker=1, dashboard_address="127.0.0.1:0", host="127.0.0.1") as workers, Client(workers) as connected:
        yield connected


@pytest.fixture(scope="module")
def client():
    with cluster() as connected:
        yield connected


def rows(stretch):
    """The results of a stretch of rows, as bytes."""
    found = frames.decide(RECIPE["readings"](*stretch), RECIPE["IRON"], RECIPE["ALLOY"], RECIPE["LIMITS"], partial=True).frame
    codes = found["decision"].cat.codes.to_numpy(), found["status"].fillna(-1).to_numpy(np.int32)
    return [column.tobytes() for column in (found["bench_mm"].to_numpy(), found["running_mm"].to_numpy(), *codes)]


def stretches(total, part):
    """Parts of a whole; the last may be shorter."""
    return [(first, min(part, total - first)) for first in range(0, total, part)]


def joined(parts):
    return [b"".join(columns) for columns in zip(*parts, strict=True)]


@pytest.fixture(scope="module")
def one_process():
    return rows((0, ROWS))


def test_rows_of_any_parts(client, one_process):
    found = client.gather(client.map(rows, stretches(ROWS, 125_000), pure=False))
    assert joined(found) == one_process


def test_rows_of_other_parts_on_one_worker(client, one_process):
    some = 130_000
    worker = next(iter(client.scheduler_info()["workers"]))
    found = client.gather(client.map(rows, stretches(some, 17_001), workers=[worker], pure=False))
    widths = (8, 8, 1, 4)
    assert joined(found) == [column[: some * width] for column, width in zip(one_process, widths, strict=True)]


def test_rows_when_a_worker_is_killed(one_process):
    # a cluster of its own: the others are whole
    with cluster() as client:
        futures = client.map(rows, stretches(ROWS, 62_500), pure=False)
        next(iter(as_completed(futures, timeout=120)))
        # what it had done is lost with it, and done again
        os.kill(next(iter(client.run(os.getpid).values())), signal.SIGKILL)
        wait(futures, timeout=120)
        assert joined(client.gather(futures)) == one_process


def trials(stretch):
    first, count = stretch
    return RECIPE["clearance"]().trials(SEED, count, first=first)


def counted(stretch):
    run = trials(stretch)
    outside = run.outside(0.030, 0.060)
    return outside.below.count, outside.above.count, run.histogram(np.linspace(0.02, 0.07, 26))


@pytest.mark.parametrize("part", [300_000, 100_000, 61_111])
def test_trials_of_any_parts(client, part):
    total = 600_000
    whole = trials((0, total))
    futures = client.map(trials, stretches(total, part), pure=False)
    run = Trials.merged([future.result() for future in as_completed(futures, timeout=120)])
    assert run.values.tobytes() == whole.values.tobytes()
    assert run.summary(0.95) == whole.summary(0.95) and run.outside(0.030, 0.060) == whole.outside(0.030, 0.060)
    counts = client.gather(client.map(counted, stretches(total, part), pure=False))
    below, above, histogram = (sum(column) for column in zip(*counts, strict=True))
    expected = counted((0, total))
    assert (below, above) == expected[:2] and (histogram == expected[2]).all()


def test_a_stretch_that_is_missing_or_there_twice(client):
    parts = client.gather(client.map(trials, [(0, 10), (20, 10), (10, 10)], pure=False))
    assert Trials.merged(parts).values.tobytes() == trials((0, 30)).values.tobytes()
    for wrong in (parts[:2], [*parts, parts[0]]):
        with pytest.raises(gaugepoint.InputError):
            Trials.merged(wrong)


def test_refused_rows_come_back_whole(client):
    def refused():
        return frames.decide(RECIPE["readings"](0, 100).dropna(), RECIPE["IRON"], RECIPE["ALLOY"], RECIPE["LIMITS"])

    with pytest.raises(gaugepoint.RowsRefused) as far:
        client.submit(refused, pure=False).result()
    with pytest.raises(gaugepoint.RowsRefused) as near:
        refused()
    assert (str(far.value), far.value.rows, far.value.field) == (str(near.value), near.value.rows, near.value.field)


def decided_part(part):
    found = frames.decide(part, RECIPE["IRON"], RECIPE["ALLOY"], RECIPE["LIMITS"], partial=True)
    return found.frame.astype({"reason": "string"})


def test_frames_of_dask(client):
    import dask.dataframe as dd

    readings = RECIPE["readings"](0, 2000)
    table = dd.from_pandas(readings, npartitions=3)
    found = table.map_partitions(decided_part, meta=decided_part(readings.head(0))).compute()
    expected = decided_part(readings)
    assert found.index.equals(expected.index) and list(found.columns) == list(expected.columns)
    for name in found.columns:
        assert found[name].astype(object).where(found[name].notna(), None).tolist() == expected[name].astype(object).where(expected[name].notna(), None).tolist()


def test_the_page_does_what_it_says(tmp_path):
    program = tmp_path / "split.py"
    program.write_text(PROGRAM, encoding="utf-8")
    done = subprocess.run([sys.executable, program], capture_output=True, text=True, check=False)
    assert (done.returncode, done.stdout) == (0, PRINTED), done.stderr
