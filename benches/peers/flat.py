"""Flat functions of Python: one call of arrays beside an expression of numpy, and one call of numbers beside a function of PyO3 that only adds. See ../README.md."""

import csv
import importlib.util
import math
import platform
import re
import shutil
import subprocess
import tempfile
import time
from importlib.metadata import version
from pathlib import Path

import gaugepoint
import numpy as np
from scipy import special

from worker import ROUNDS, compare

REPOSITORY = Path(__file__).parents[2]
ROWS, CALLS = 1_000_000, 300_000
# what one call may cost beside the bare one
MOST = 1.3


def grown(size, temperature, a):
    return size * (1 + a * (temperature - 20))


def keystone(over_pins, pin, angle, at):
    half = np.radians(angle) / 2
    return (at - over_pins + pin) * np.tan(half) + pin / np.cos(half)


def pressure(pin, hole, eye, interference, smoothing, pin_modulus, pin_poisson, eye_modulus, eye_poisson):
    of_eye = ((eye**2 + pin**2) / (eye**2 - pin**2) + eye_poisson) / eye_modulus
    of_pin = ((pin**2 + hole**2) / (pin**2 - hole**2) - pin_poisson) / pin_modulus
    return np.maximum(interference - smoothing, 0) / (pin * (of_eye + of_pin))


def force(pin, hole, eye, width, interference, smoothing, friction, *elastic):
    return np.pi * pin * width * friction * pressure(pin, hole, eye, interference, smoothing, *elastic)


def ratio(bore, stroke, head, gasket_bore, gasket, deck, crown, crevice):
    swept = np.pi / 4 * bore**2 * stroke / 1000
    left = head + np.pi / 4 * (gasket_bore**2 * gasket + bore**2 * deck) / 1000 + crown + crevice
    return (swept + left) / left


def travel(crank, rod, offset, angle):
    angle = np.radians(angle)
    side = crank * np.sin(angle) - offset
    return np.sqrt((rod + crank) ** 2 - offset**2) - crank * np.cos(angle) - np.sqrt(rod**2 - side**2)


def bore_size(deviation, setting, ring_t, ring_a, set_t, set_a, used_t, used_a, block_t, block_a):
    return (grown(grown(setting, ring_t, ring_a), used_t, used_a) / grown(1, set_t, set_a) + deviation) / grown(1, block_t, block_a)


def within(value, u, lower, upper):
    return special.ndtr((upper - value) / u) - special.ndtr((lower - value) / u)


PEERS = {
    "size_at_20_mm": lambda r, e, tg, ag, tp, ap: grown(r - e, tg, ag) / grown(1, tp, ap),
    "bench_clearance_mm": lambda b, p: b - p,
    "running_clearance_mm": lambda b, tb, ab, p, tp, ap: grown(b, tb, ab) - grown(p, tp, ap),
    "ring_gap_in_bore_mm": lambda gap, gauge, bore: gap + np.pi * (bore - gauge),
    "ring_least_cold_gap_mm": lambda hot, bore, tb, ab, tr, ar: np.pi * bore - (np.pi * grown(bore, tb, ab) - hot) / grown(1, tr, ar),
    "ring_side_clearance_mm": lambda groove, ring: groove - ring,
    "ring_back_clearance_mm": lambda bore, root, thickness: (bore - root) / 2 - thickness,
    "ring_groove_wear_mm": lambda worn, new: worn - new,
    "keystone_groove_width_mm": keystone,
    "ring_gap_by_factor_mm": lambda bore, per_mille: bore * per_mille / 1000,
    "rod_angle_mrad": lambda deviation, base: deviation / base * 1000,
    "rod_skew_mm": lambda angle, length: angle * length / 1000,
    "top_land_crevice_cm3": lambda bore, land, height: np.pi / 4 * (bore**2 - land**2) * height / 1000,
    "depth_in_bore_mm": lambda deck, crown, height, travel: deck + (crown - height) + travel,
    "inch_to_mm": lambda x: x * 25.4,
    "mm_to_inch": lambda x: x / 25.4,
    "thou_to_mm": lambda x: x * 0.0254,
    "fahrenheit_to_c": lambda x: (x - 32) / 1.8,
    "c_to_fahrenheit": lambda x: x * 1.8 + 32,
    "per_fahrenheit_to_per_k": lambda x: x * 1.8,
    "ring_hot_gap_mm": lambda gap, bore, tb, ab, tr, ar: np.pi * grown(bore, tb, ab) - grown(np.pi * bore - gap, tr, ar),
    "pin_cold_clearance_mm": lambda hole, pin: hole - pin,
    "pin_hot_clearance_mm": lambda h, th, ah, p, tp, ap: grown(h, th, ah) - grown(p, tp, ap),
    "press_fit_pressure_mpa": pressure,
    "press_fit_force_n": force,
    "press_fit_torque_nm": lambda pin, *others: force(pin, *others) * pin / 2000,
    "assembly_temperature_c": lambda d, interference, clearance, a: 20 + (interference + clearance) / (a * d),
    "piston_deck_clearance_mm": lambda block, stroke, rod, height: block - (stroke / 2 + rod + height),
    "swept_volume_cm3": lambda bore, stroke: np.pi / 4 * bore**2 * stroke / 1000,
    "static_compression_ratio": ratio,
    "piston_travel_mm": travel,
    "finish_size_mm": lambda piston, clearance: piston + clearance,
    "boring_size_mm": lambda piston, clearance, honing: piston + clearance - honing,
    "bore_size_at_20_mm": bore_size,
    "size_at_temperature_mm": grown,
    "probability_of_conformity": within,
    "coverage_factor": lambda p, dof: special.stdtrit(dof, (1 + p) / 2),
}


def arguments():
    """Of each function the arguments of the first row of the vectors that has none that is infinite or without uncertainty."""
    lines = (REPOSITORY / "tests/vectors/flat.csv").read_text(encoding="utf-8").splitlines()
    found = {}
    for row in csv.DictReader(line for line in lines if not line.startswith("#")):
        numbers = [float(x) for x in row["arguments"].split(";")]
        usual = not row["expected"].startswith("error:") and all(map(math.isfinite, numbers))
        if usual and not (row["function"] == "probability_of_conformity" and numbers[1] == 0):
            found.setdefault(row["function"], numbers)
    return found


def bare():
    """bare.rs, compiled with the PyO3 of the workspace."""
    pyo3 = re.search(r"^pyo3 = .*$", (REPOSITORY / "Cargo.toml").read_text(encoding="utf-8"), re.M)[0]
    with tempfile.TemporaryDirectory() as folder:
        folder = Path(folder)
        shutil.copy(Path(__file__).with_name("bare.rs"), folder / "bare.rs")
        manifest = '[package]\nname = "bare"\nversion = "0.0.0"\nedition = "2024"\n[lib]\npath = "bare.rs"\ncrate-type = ["cdylib"]\n[workspace]\n[dependencies]\n'
        (folder / "Cargo.toml").write_text(manifest + pyo3 + "\n", encoding="utf-8")
        command = ["cargo", "build", "--release", "--quiet", "--manifest-path", str(folder / "Cargo.toml"), "--target-dir", str(folder / "target")]
        subprocess.run(command, check=True)
        place = importlib.util.spec_from_file_location("bare", folder / "target/release/libbare.so")
        module = importlib.util.module_from_spec(place)
        place.loader.exec_module(module)
        return module


def called(function, numbers):
    def work(count):
        for _ in range(count):
            function(*numbers)

    return work


if __name__ == "__main__":
    model = next((line.split(":")[1].strip() for line in open("/proc/cpuinfo") if line.startswith("model name")), "")
    print(f"{time.strftime('%Y-%m-%d')}, flat.py, medians of {ROUNDS} alternating rounds")
    print(f"{model or platform.processor()}; CPython {platform.python_version()}; numpy {version('numpy')}, scipy {version('scipy')}")
    given, nothing = arguments(), bare()
    print(f"one call of numbers; wanted: at most {MOST} x a function of PyO3 that only adds")
    for name, numbers in given.items():
        compare(None, [(f"{len(numbers)} numbers, bare", CALLS, called(getattr(nothing, f"of_{len(numbers)}"), numbers)), (name, CALLS, called(getattr(gaugepoint, name), numbers))], "ns", 1e9)
    print(f"one call of arrays of {ROWS} elements, into memory that is there; beside an expression of numpy, which checks nothing and makes its memory")
    chance, out = np.random.default_rng(20261129), np.empty(ROWS)
    for name, peer in PEERS.items():
        numbers, function = given[name], getattr(gaugepoint, name)
        # a little beside the row, so that the elements differ; only the first argument, so that all are accepted
        columns = [np.full(ROWS, number) for number in numbers]
        columns[0] *= chance.uniform(1.0 - 1e-6, 1.0, ROWS)
        found = compare(None, [(f"{name}, numpy", ROWS, lambda _: peer(*columns)), (name, ROWS, lambda _: function(*columns, out=out)), (f"{name}, two threads", ROWS, lambda _: function(*columns, out=out, threads=2))], "ns", 1e9)
        theirs, *ours = found.values()
        assert all(np.allclose(theirs, result, rtol=1e-9, atol=1e-9) for result in ours), name
