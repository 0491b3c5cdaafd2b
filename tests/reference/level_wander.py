"""Levels of one order in two runs under a slow wander, by the textbook way: one joint normal distribution of all blocks
with the levels' and the exponent's priors in its covariance, conditioned on the blocks. Prints the vectors of
tests/core/signal/level-wander.test.ts. Needs numpy."""
import json
import numpy as np

rng = np.random.default_rng(5)
WIDE = 1e4  # prior variance of a level that is as good as unknown
TIMES = [1, 1.7, 2.8, 4.6, 7.7, 13]
SDS = [0.01, 0.02, 0.035, 0.055, 0.08, 0.115, 0.16, 0.23, 0.32]
LAWS = [(0.75, 2, 3), (0.25, 2, 10)]
STEP = 2.0


def run(level, noise, scatter, n, seed_speed):
    t = np.arange(n) * STEP
    s = 0.004 * np.sin(seed_speed * t / 7)
    w = 0.08 * np.sin(t / 9 + seed_speed)
    p = level * (1 + 2 * 4 * s + 2 * w) + noise + np.sqrt(scatter) * rng.standard_normal(n)
    return dict(powers=p.round(6).tolist(), logSpeeds=s.round(6).tolist(), noise=noise, scatter=scatter)


runs = [run(0.04, 0.002, 4e-6, 12, 1.0), run(0.03, 0.002, 3e-6, 14, 1.7)]
cases = []
for tau in TIMES:
    for sd in SDS:
        for weight, exponent, exponent_sd in LAWS:
            ys, cols, blocks = [], [], []
            for k, r in enumerate(runs):
                p = np.array(r["powers"])
                plain = p.mean() - r["noise"]
                n = len(p)
                lag = np.abs(np.subtract.outer(np.arange(n), np.arange(n)))
                x = lag * STEP / tau
                c = 4 * sd**2 * (1 + x) * np.exp(-x) + r["scatter"] / plain**2 * ((lag == 0) + (lag == 1) / 6)
                ys.append((p - r["noise"]) / plain)
                blocks.append(c)
                h = np.zeros((n, 3))
                h[:, k] = 1
                h[:, 2] = 2 * np.array(r["logSpeeds"])
                cols.append(h)
            y, h = np.concatenate(ys), np.vstack(cols)
            c = np.zeros((len(y), len(y)))
            at = 0
            for b in blocks:
                c[at : at + len(b), at : at + len(b)] = b
                at += len(b)
            prior_mean = np.array([0, 0, exponent])
            prior = np.diag([WIDE, WIDE, exponent_sd**2])
            total = c + h @ prior @ h.T
            gain = prior @ h.T @ np.linalg.inv(total)
            mean = prior_mean + gain @ (y - h @ prior_mean)
            cov = prior - gain @ h @ prior
            e = y - h @ prior_mean
            loglik = -0.5 * (e @ np.linalg.solve(total, e) + np.linalg.slogdet(total)[1])
            log_prior = np.log(weight) - 0.5 * (np.log(sd / 0.08) / 0.5) ** 2
            cases.append((loglik + log_prior, mean, cov))
weights = np.exp(np.array([c[0] for c in cases]) - max(c[0] for c in cases))
weights /= weights.sum()
means = np.array([c[1] for c in cases])
mean = weights @ means
cov = sum(w * (c[2] + np.outer(c[1] - mean, c[1] - mean)) for w, c in zip(weights, cases))
noise_var = [(r["noise"] / (np.mean(r["powers"]) - r["noise"])) ** 2 / (3 * len(r["powers"])) for r in runs]
print(json.dumps(dict(runs=runs, mean=mean.tolist(), cov=cov.tolist(), noiseVariance=noise_var)))
