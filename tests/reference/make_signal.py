"""Reference numbers for tests/core/signal, made independently of the program.

python3 make_signal.py > signal.json   (SciPy 1.10.1, NumPy 1.24.2, mpmath 1.2.1)

noise: Park & Miller's generator (Comm. ACM 31(10), 1988), x <- 16807 x mod 2^31-1, x/(2^31-1) - 1/2: the test makes the
same numbers. tails: SciPy where its result is a number, mpmath with 60 digits for logarithms beyond the range of doubles.
"""
import json
import mpmath
import numpy as np
from scipy import interpolate, linalg, signal, special, stats

mpmath.mp.dps = 60


def noise(seed, count):
    state, out = seed, np.empty(count)
    for i in range(count):
        state = state * 16807 % 2147483647
        out[i] = state / 2147483647 - 0.5
    return out


# --- windows -------------------------------------------------------------------------------------------------------
TERMS = {
    "rectangular": [1.0],
    "hann": None,
    "hamming": None,
    "blackman-harris": None,
    # Heinzel, Ruediger & Schilling 2002 (ISO 18431-2 type); coefficients from memory, peak 4.639.
    "flat-top": [1, 1.933, 1.286, 0.388, 0.0322],
}
SCIPY_NAME = {"hann": "hann", "hamming": "hamming", "blackman-harris": "blackmanharris"}


def window(name, n):
    if name in SCIPY_NAME:
        return signal.get_window(SCIPY_NAME[name], n, fftbins=True)
    return signal.windows.general_cosine(n, TERMS[name], sym=False)


def figures(name):
    n = 4096
    w = window(name, n)
    pad = 64
    spectrum = np.abs(np.fft.rfft(w, pad * n))
    spectrum /= spectrum[0]
    # First null: the first local minimum below half height; the highest side lobe lies beyond it.
    k = int(np.argmax(spectrum < 0.5))
    while spectrum[k + 1] < spectrum[k]:
        k += 1
    below = np.argmax(spectrum < np.sqrt(0.5))
    share = (spectrum[below - 1] - np.sqrt(0.5)) / (spectrum[below - 1] - spectrum[below])
    return {
        "samples": [float(v) for v in window(name, 16)[[0, 1, 5, 8, 11]]],
        "coherentGain": float(w.mean()),
        "noiseBandwidthBins": float(n * (w * w).sum() / w.sum() ** 2),
        "scallopLossDb": float(-20 * np.log10(spectrum[pad // 2])),
        "halfPowerWidthBins": float(2 * (below - 1 + share) / pad),
        "highestSideLobeDb": float(20 * np.log10(spectrum[k:40 * pad].max())),
        "highestSideLobeBins": float((k + np.argmax(spectrum[k:40 * pad])) / pad),
        "correlation50": float((w[: n // 2] * w[n // 2:]).sum() / (w * w).sum()),
        "correlation75": float((w[: 3 * n // 4] * w[n // 4:]).sum() / (w * w).sum()),
        "lobe": [float(spectrum[int(d * pad)]) for d in (0.25, 0.75, 1.0, 1.5, 2.5, 3.0)],
    }


# --- averaged spectra ----------------------------------------------------------------------------------------------
RATE, COUNT = 200.0, 3000
time = np.arange(COUNT) / RATE
axes = np.array([
    0.3 * np.cos(2 * np.pi * 14.4 * time + 0.7) + noise(1, COUNT),
    0.2 * np.sin(2 * np.pi * 53.76 * time) + 0.5 * noise(2, COUNT) + 0.1,
])


def welch_case(name, length, overlap, axis):
    hop = max(1, int(np.floor(length * (1 - overlap) + 0.5)))
    chosen = axes if axis == "all" else axes[axis: axis + 1]
    kw = dict(fs=RATE, window=window(name, length), nperseg=length, noverlap=length - hop, detrend=False)
    f, density = signal.welch(chosen, scaling="density", **kw)
    _, power = signal.welch(chosen, scaling="spectrum", **kw)
    density, power = density.sum(axis=0), power.sum(axis=0)
    # SciPy's power of a sine is A^2/2, one-sided; at 0 Hz and half the rate it is the square itself.
    double = np.full(len(f), 2.0)
    double[0] = 1
    if length % 2 == 0:
        double[-1] = 1
    at = sorted({0, 1, 2, length // 16, round(14.4 * length / RATE), round(53.76 * length / RATE), len(f) - 2, len(f) - 1})
    return {
        "window": name, "segmentLength": length, "overlap": overlap, "axis": axis, "bins": at,
        "frequencyHz": [float(f[k]) for k in at],
        "density": [float(density[k]) for k in at],
        "amplitude": [float(np.sqrt(power[k] * double[k])) for k in at],
    }


welch = [
    welch_case("hann", 256, 0.5, 0), welch_case("hann", 256, 0.75, "all"), welch_case("hamming", 200, 0.5, 1),
    welch_case("blackman-harris", 512, 0.75, "all"), welch_case("flat-top", 500, 0.0, 0),
    welch_case("rectangular", 301, 0.0, "all"), welch_case("hann", 255, 0.5, 1), welch_case("hann", 250, 0.33, 0),
]

f, t, z = signal.spectrogram(axes, fs=RATE, window="hann", nperseg=512, noverlap=384, detrend=False, scaling="spectrum",
                             mode="psd")
double = np.full(len(f), 2.0)
double[[0, -1]] = 1
map_amplitude = np.sqrt(z.sum(axis=0) * double[:, None])
map_case = {"stepHz": float(f[1]), "timeS": [float(v) for v in t],
            "columns": [0, 3, len(t) - 1], "bins": [0, 1, 37, 138, 256],
            "amplitude": [[float(map_amplitude[k, c]) for k in (0, 1, 37, 138, 256)] for c in (0, 3, len(t) - 1)]}


# --- tails ---------------------------------------------------------------------------------------------------------
def log_upper_gamma(a, x):
    return float(mpmath.log(mpmath.gammainc(a, x, mpmath.inf, regularized=True)))


def log_lower_gamma(a, x):
    return float(mpmath.log(mpmath.gammainc(a, 0, x, regularized=True)))


def log_f_tail(x, above, below):
    d1, d2, q = mpmath.mpf(above), mpmath.mpf(below), mpmath.mpf(x)
    # Upper tail of F as a lower incomplete beta; by its hypergeometric series (DLMF 8.17.8), all terms positive.
    a, b, y = d2 / 2, d1 / 2, d2 / (d2 + d1 * q)
    series = mpmath.hyp2f1(a + b, 1, a + 1, y)
    return float(a * mpmath.log(y) + b * mpmath.log(1 - y) - mpmath.log(a) - mpmath.log(mpmath.beta(a, b)) + mpmath.log(series))


GAMMA = [(0.5, 0.01), (0.5, 3), (1, 0.5), (1, 40), (3, 1e-3), (3, 3), (3, 25), (17.3, 5), (17.3, 60), (200, 150), (200, 320),
         (1, 900), (4.5, 1500), (1000, 3000), (0.05, 2), (2500, 2500)]
F = [(0.3, 6, 40), (1, 6, 40), (3.5, 6, 40), (60, 6, 40), (2, 2, 2), (12, 12, 400), (25, 3.7, 9.1), (300, 6, 5000), (5, 200, 900)]
tails = {
    "lnGamma": [[x, float(mpmath.loggamma(x))] for x in (0.02, 0.3, 0.5, 1, 1.5, 2, 4.2, 12.5, 39.9, 40.1, 300, 1e5)],
    "gamma": [[a, x, log_lower_gamma(a, x), log_upper_gamma(a, x)] for a, x in GAMMA],
    "chiSquared": [[x, k, float(stats.chi2.sf(x, k))] for x, k in ((0.1, 2), (3.84, 1), (30, 12), (400, 6), (1200, 33))],
    "normal": [[z, float(special.log_ndtr(-z))] for z in (-8, -3, -0.5, 0, 0.5, 1.959963984540054, 6, 12, 37, 200)],
    "f": [[x, a, b, log_f_tail(x, a, b)] for x, a, b in F],
    "fScipy": [[x, a, b, float(stats.f.sf(x, a, b))] for x, a, b in F[:4]],
    "beta": [[a, b, x, float(special.betainc(a, b, x))] for a, b, x in ((2, 3, 0.4), (0.5, 0.5, 0.9), (40, 2.5, 0.99), (10, 300, 0.01))],
    "gammaQuantile": [[p, a, float(stats.gamma.isf(p, a))] for p, a in ((0.5, 1), (0.5, 3), (0.999, 2), (1e-4, 8), (1e-12, 1), (1e-200, 30), (0.1, 0.4))],
    "normalQuantile": [[p, float(stats.norm.isf(p))] for p in (0.9, 0.5, 0.025, 1e-6, 1e-30)],
    "fQuantile": [[p, a, b, float(stats.f.isf(p, a, b))] for p, a, b in ((0.5, 6, 40), (0.01, 6, 40), (1e-6, 12, 100))],
    "besselI0": [[x, float(special.i0(x))] for x in (0, 0.5, 3, 6.76, 12)],
    "logBesselI0": [[x, float(np.log(special.ive(0, x)) + x)] for x in (0.5, 5, 29.9, 30.1, 100, 2000)],
}

# --- interpolation -------------------------------------------------------------------------------------------------
knots = np.array([0, 0.3, 1.1, 1.6, 2.9, 3.0, 4.2, 5.5])
heights = np.array([0.2, 1.0, -0.4, 0.3, 0.9, 1.1, -1.2, 0.05])
places = np.array([0, 0.1, 0.3, 0.9, 1.4, 2.2, 2.95, 3.7, 5.0, 5.5])
spline = {"x": knots.tolist(), "y": heights.tolist(), "at": places.tolist(),
          "value": interpolate.CubicSpline(knots, heights, bc_type="natural")(places).tolist()}

# --- small Hermitian matrices --------------------------------------------------------------------------------------


def packed(m):
    n = len(m)
    out = [float(m[i, i].real) for i in range(n)]
    for i in range(n):
        for j in range(i + 1, n):
            out += [float(m[i, j].real), float(m[i, j].imag)]
    return out


def hermitian(seed, n, rank):
    v = noise(seed, 2 * n * rank).reshape(2, n, rank)
    g = v[0] + 1j * v[1]
    return g @ g.conj().T


hermitians = []
for n, seed in ((1, 11), (2, 12), (3, 13), (3, 14)):
    noise_matrix = hermitian(seed, n, n + 2)
    line = hermitian(seed + 100, n, 1) * 40 + noise_matrix
    values, vectors = linalg.eigh(line, noise_matrix)
    v = vectors[:, -1:]
    hermitians.append({
        "axes": n, "noise": packed(noise_matrix), "line": packed(line), "inverse": packed(np.linalg.inv(noise_matrix)),
        "traceOfProduct": float(np.trace(noise_matrix @ line).real), "trace": float(np.trace(line).real),
        "loudest": packed(v @ v.conj().T),
        "vector": {"re": noise(seed + 200, n).tolist(), "im": noise(seed + 300, n).tolist()},
        "times": (lambda p: {"re": p.real.tolist(), "im": p.imag.tolist()})(
            line @ (noise(seed + 200, n) + 1j * noise(seed + 300, n))),
    })

print(json.dumps({
    "made_with": "make_signal.py, SciPy 1.10.1, NumPy 1.24.2, mpmath 1.2.1",
    "noise": noise(1, 3).tolist(),
    "windows": {name: figures(name) for name in TERMS},
    "welch": welch, "map": map_case, "tails": tails, "spline": spline, "hermitian": hermitians,
}, indent=1))
