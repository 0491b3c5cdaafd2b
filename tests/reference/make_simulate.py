"""Reference numbers for tests/core/simulate, made independently of the program.

python3 make_simulate.py > simulate.json   (SciPy 1.10.1, NumPy)

xoshiro128**: the published algorithm (Blackman & Vigna 2021) in Python's whole numbers.
corner: the two-mass model as a state space, solved by numpy; eigenvalues without damper, response to a wheel force.
butterworth: scipy.signal, four poles at 40 Hz.
"""
import json
import numpy as np
from scipy import signal

M = 0xFFFFFFFF


def rotl(x, k):
    return ((x << k) | (x >> (32 - k))) & M


def xoshiro(state, count):
    s = list(state)
    out = []
    for _ in range(count):
        out.append((rotl((s[1] * 5) & M, 7) * 9) & M)
        t = (s[1] << 9) & M
        s[2] ^= s[0]
        s[3] ^= s[1]
        s[1] ^= s[2]
        s[0] ^= s[3]
        s[2] ^= t
        s[3] = rotl(s[3], 11)
    return out


def corner(ms, mu, ks, kt, c):
    a = np.array([
        [0, 0, 1, 0],
        [0, 0, 0, 1],
        [-ks / ms, ks / ms, -c / ms, c / ms],
        [ks / mu, -(ks + kt) / mu, c / mu, -c / mu],
    ])
    b = np.array([[0], [0], [0], [1 / mu]])
    return a, b


def response(f, c):
    a, b = corner(400, 40, 22000, 200000, c)
    w = 2j * np.pi * f
    x = np.linalg.solve(w * np.eye(4) - a, b)[:, 0]
    force = 22000 * (x[1] - x[0]) + c * (x[3] - x[2])
    return {"frequencyHz": f, "forcePerN": [force.real, force.imag],
            "accelerationPerN": [(w * x[2]).real, (w * x[2]).imag]}


undamped = np.linalg.eigvals(corner(400, 40, 22000, 200000, 0)[0])
z, p, k = signal.butter(4, 2 * np.pi * 40, analog=True, output="zpk")
_, h = signal.freqs_zpk(z, p, k, worN=2 * np.pi * np.array([10.0, 40.0, 80.0]))
print(json.dumps({
    "made_with": "make_simulate.py, SciPy 1.10.1",
    "xoshiro": {"state": [1, 2, 3, 4], "output": xoshiro([1, 2, 3, 4], 12)},
    "undampedHz": sorted({round(abs(v.imag) / (2 * np.pi), 6) for v in undamped}),
    "damper": 1400,
    "corner": [response(f, 1400) for f in (1.0, 5.0, 12.0, 30.0, 90.0)],
    "butterworth": {"cornerHz": 40, "frequencyHz": [10, 40, 80], "magnitude": [abs(v) for v in h]},
}, indent=1))
