"""The comparison: Welch, biggest peak, nearest order, on the same cases.

npm run accuracy -- --write DIR --cases 50
python3 tests/accuracy/baseline.py DIR

Reads each recording with pandas, averages Hann segments of 4 s with scipy.signal.welch over all axes, takes the biggest
peak above 5 Hz that stands 12 dB over the local median and is at least 0.02 m/s², and names the expected order nearest
to it if one is within 3 %. No speed scale, no statistics, no probabilities.
"""
import glob
import json
import os
import re
import sys

import numpy as np
import pandas as pd
from scipy.signal import welch

SEGMENT_S = 4.0
LOWEST_HZ = 5.0
OVER_MEDIAN = 10 ** (12 / 20)
LEAST_MPS2 = 0.02
NEAREST = 0.03
TWIN = 0.002


def circumference(size):
    """3.05 times the outer diameter, m."""
    flotation = re.match(r"(\d+)x", size)
    if flotation:
        return 3.05 * 25.4 * float(flotation.group(1)) / 1000
    width, aspect, rim = map(float, re.search(r"(\d+)/(\d+)R(\d+)", size).groups())
    return 3.05 * (25.4 * rim + 2 * width * aspect / 100) / 1000


def lines(case, logged_mps):
    vehicle, run = case["vehicle"], case["run"]
    speed = run.get("speedMps", logged_mps)
    if speed is None:
        return []
    wheel = speed / circumference(case["tire"])
    ratio = vehicle.get("axleRatio") or vehicle.get("finalDrive") or 1.0
    out = [("tire", k, None, k * wheel) for k in (1, 2, 3, 4)]
    if "axleRatio" in vehicle:
        out += [("driveshaft", k, None, k * wheel * ratio) for k in (1, 2, 4)]
    if run.get("engineRpm"):
        engine = run["engineRpm"] / 60
    elif run.get("gearRatio"):
        engine = wheel * ratio * run["gearRatio"]
    else:
        engine = None
    if engine is not None:
        firing = vehicle.get("cylinders", 4) / 2
        orders = sorted({0.5, 1, 1.5, 2, 2.5, 3, 4, firing, 2 * firing})
        out += [("engine", k, None, k * engine) for k in orders]
        out += [("accessory", 1, a["name"], a["ratio"] * engine) for a in vehicle.get("accessories", [])]
    return out


def biggest_peak(table):
    time = table["time_s"].to_numpy()
    rate = 1 / np.median(np.diff(time))
    axes = table[["accel_x_mps2", "accel_y_mps2", "accel_z_mps2"]].to_numpy()
    length = int(round(SEGMENT_S * rate))
    f, power = welch(axes, rate, window="hann", nperseg=length, scaling="spectrum", axis=0)
    amplitude = np.sqrt(2 * power.sum(axis=1))
    half = int(4 / (f[1] - f[0]))
    floor = pd.Series(amplitude).rolling(2 * half + 1, center=True, min_periods=half).median().to_numpy()
    ok = (f >= LOWEST_HZ) & (amplitude > OVER_MEDIAN * floor) & (amplitude >= LEAST_MPS2)
    if not ok.any():
        return None
    k = int(np.argmax(np.where(ok, amplitude, 0)))
    return f[k]


def same(line, true):
    if line[0] != true["part"] or line[1] != true["order"]:
        return False
    return line[0] != "accessory" or line[2] == true.get("name")


def is_right(case, named):
    rule, faults = case["rule"], case["faults"]
    if rule == "none":
        return named is None
    if rule == "not-turning":
        return not named
    if not named:
        return False
    hit = [any(same(n, t) for n in named for t in fault["named"]) for fault in faults]
    if rule == "both":
        return False  # One peak cannot name two.
    if rule == "together":
        return hit[0] and len(named) > 1
    return any(hit)


def answer(case, path):
    table = pd.read_csv(path)
    logged = [c for c in table.columns if c.startswith("road_speed")]
    logged_mps = table[logged[0]].mean() / 3.6 if logged else None
    peak = biggest_peak(table)
    if peak is None:
        return None
    expected = lines(case, logged_mps)
    near = sorted(expected, key=lambda line: abs(line[3] - peak))
    if not near or abs(near[0][3] - peak) > NEAREST * peak:
        return []
    return [line for line in near if abs(line[3] - near[0][3]) <= TWIN * peak]


def main(folder):
    totals = {}
    for path in sorted(glob.glob(os.path.join(folder, "*.json"))):
        with open(path, encoding="utf-8") as file:
            case = json.load(file)
        right = is_right(case, answer(case, path[:-5] + ".csv"))
        count = totals.setdefault(case["family"], [0, 0])
        count[0] += 1
        count[1] += right
    width = max(map(len, totals))
    for family, (cases, right) in totals.items():
        print(f"{family:<{width}}  {cases:5d}  {100 * right / cases:5.1f} %")
    cases, right = (sum(values) for values in zip(*totals.values()))
    print(f"{'all':<{width}}  {cases:5d}  {100 * right / cases:5.1f} %")


main(sys.argv[1])
