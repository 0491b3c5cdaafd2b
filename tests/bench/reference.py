"""The yardstick: read, look at the time base, Welch on every axis, time-frequency map, peak pick, with pandas and SciPy.

Usage: python3 reference.py RECORDING.csv
Prints the ten highest peaks. It knows no vehicle, speed or cause: it is the least a script would do with the file.
"""
import sys

import numpy as np
import pandas as pd
from scipy import signal

table = pd.read_csv(sys.argv[1])
time_s = table.iloc[:, 0].to_numpy()
axes = table.iloc[:, 1:4].to_numpy().T

steps = np.diff(time_s)
rate_hz = 1.0 / np.median(steps)
uneven = np.max(np.abs(steps - np.median(steps))) > 0.05 / rate_hz
if uneven:
    even = np.arange(time_s[0], time_s[-1], 1.0 / rate_hz)
    axes = np.array([np.interp(even, time_s, axis) for axis in axes])
axes = axes - axes.mean(axis=1, keepdims=True)

segment = int(4 * rate_hz)
frequency_hz, power = signal.welch(axes, rate_hz, "hann", nperseg=segment, scaling="spectrum")
total = power.sum(axis=0)
_, times, level = signal.spectrogram(axes.sum(axis=0), rate_hz, "hann", nperseg=segment, noverlap=segment // 2)
peaks, properties = signal.find_peaks(10 * np.log10(total + 1e-20), prominence=6)
order = np.argsort(properties["prominences"])[::-1][:10]
for k in peaks[order]:
    print(f"{frequency_hz[k]:.3f} Hz  {np.sqrt(2 * total[k]):.5f} m/s2")
print(f"{len(times)} spectra, loudest {level.max():.3g}")
