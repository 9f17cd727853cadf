"""Cool-downs by brute force with SciPy: the model of measure::cool_down, stated anew here.

Writes cool_down.json; with --check, compares the file with figures made anew.

The model. T(t) = F + (T0 - F - B) e^(-(t - d)/tau) + B e^(-6 (t - d)/tau) after the delay d, T0
before. Beforehand T0, F and B are normal, tau, d and the noise's standard deviation sigma
log-normal; the noise is a stationary Gaussian process with correlation e^(-|t - t'|/theta), theta one
of four. T0, F and B are integrated out by adding their part to the covariance of the readings:
scipy's multivariate normal density of the whole log with a full covariance matrix, no filter.
ln tau, ln d and ln sigma go over a plain grid around the mode that scipy.optimize.minimize finds, along
the axes of the density's own curvature there, six of its standard deviations to each side.
"""

import math

import numpy as np
from kept import write_or_check
from scipy.linalg import cho_factor, cho_solve
from scipy.optimize import brentq, minimize
from scipy.special import ndtr

FADES = [60.0, 240.0, 900.0, 3600.0]
CHEST = {"start": [20.0, 9.0], "end": [-16.0, 13.0], "quick": [8.0, 8.0],
         "time_constant": [10800.0, 0.5], "delay": [300.0, 0.8], "noise": [0.4, 0.8]}
FRESH = {"start": [20.0, 9.0], "end": [4.0, 7.0], "quick": [4.0, 4.0],
         "time_constant": [5400.0, 0.5], "delay": [300.0, 0.8], "noise": [0.4, 0.8]}
DAY = 86400.0

# name, prior, truth (T0, F, B, tau, d, sigma, theta), hours, readings, target, seed
CASES = [
    ("half an hour", CHEST, (22, -24, 10, 9000, 240, 0.3, 60), 0.5, 21, -18.0, 1),
    ("two hours, warm end", CHEST, (25, -5, 6, 7000, 300, 0.3, 240), 2.0, 25, -18.0, 3),
    ("eight hours, fine", CHEST, (21, -25, 12, 9500, 400, 0.15, 60), 8.0, 25, -18.0, 5),
    ("fresh food", FRESH, (23, 3, 4, 4500, 300, 0.3, 240), 1.5, 25, 4.0, 6),
]


def columns(times, tau, delay):
    left = np.exp(-np.maximum(times - delay, 0) / tau)
    return np.stack([left, 1 - left, left**6 - left], axis=-1)


def drawn(truth, hours, count, seed):
    """A log with the stated noise, rounded to hundredths as it is kept."""
    start, end, quick, tau, delay, sigma, theta = truth
    times = np.linspace(0, hours * 3600, count)
    correlation = np.exp(-np.abs(times[:, None] - times) / theta)
    noise = sigma * np.linalg.cholesky(correlation) @ np.random.default_rng(seed).normal(size=count)
    return times, np.round(columns(times, tau, delay) @ [start, end, quick] + noise, 2)


class Model:
    def __init__(self, prior, times, readings):
        self.times = times
        self.logs = [(math.log(m), s) for m, s in (prior["time_constant"], prior["delay"], prior["noise"])]
        linear = np.array([prior["start"], prior["end"], prior["quick"]])
        self.means, self.variances = linear[:, 0], np.diag(linear[:, 1] ** 2)
        self.readings = readings
        apart = np.abs(times[:, None] - times)
        self.correlations = [np.exp(-apart / fade) for fade in FADES]

    def parts(self, u, fade):
        design = columns(self.times, math.exp(u[0]), math.exp(u[1]))
        total = math.exp(2 * u[2]) * self.correlations[fade] + design @ self.variances @ design.T
        return design, cho_factor(total, lower=True)

    def log_density(self, u, fade):
        design, factor = self.parts(u, fade)
        off = self.readings - design @ self.means
        known = sum(-0.5 * ((x - m) / s) ** 2 for x, (m, s) in zip(u, self.logs))
        return known - 0.5 * off @ cho_solve(factor, off) - np.log(np.diag(factor[0])).sum()

    def given(self, u, fade):
        """Mean and covariance of (T0, F, B) given all else: the normal conditional."""
        design, factor = self.parts(u, fade)
        gain = cho_solve(factor, design @ self.variances).T
        mean = self.means + gain @ (self.readings - design @ self.means)
        return mean, self.variances - gain @ design @ self.variances

    def mixture(self):
        """All grid points of all fading times that weigh anything: weights, u, means, covariances."""
        rows = []
        spots = [[m + a * s, n, o] for (m, s), (n, _), (o, _) in [self.logs] for a in (-1, 0.5)]
        for fade in range(len(FADES)):
            tried = [minimize(lambda u: -self.log_density(u, fade), spot, method="Nelder-Mead",
                              options={"xatol": 1e-4, "fatol": 1e-5, "maxiter": 500}) for spot in spots]
            mode = min(tried, key=lambda found: found.fun).x
            axes = self.axes(mode, fade)
            cell = abs(np.linalg.det(axes))
            for a in np.arange(-12, 12.1) / 2:
                for b in np.arange(-12, 12.1) / 2:
                    for c in np.arange(-6, 6.1) / 1.25:
                        u = mode + axes @ [a, b, c]
                        rows.append((self.log_density(u, fade) + math.log(cell), fade, u))
        best = max(row[0] for row in rows)
        kept = [row for row in rows if row[0] > best - 14]
        weights = np.array([math.exp(row[0] - best) for row in kept])
        found = [self.given(row[2], row[1]) for row in kept]
        return (weights / weights.sum(), np.array([row[2] for row in kept]),
                np.array([one[0] for one in found]), np.array([one[1] for one in found]))

    def axes(self, mode, fade):
        """Columns one standard deviation long; the last one leads most along ln sigma."""
        steps = np.array([0.02 * s for _, s in self.logs])
        curvature = np.empty((3, 3))
        at = lambda i, j: self.log_density(mode + np.array(i) * steps + np.array(j) * steps, fade)
        unit = np.eye(3)
        for i in range(3):
            for j in range(3):
                mixed = at(unit[i], unit[j]) - at(unit[i], -unit[j]) - at(-unit[i], unit[j]) + at(-unit[i], -unit[j])
                curvature[i, j] = -mixed / (4 * steps[i] * steps[j])
        prior = np.diag([1 / s**2 for _, s in self.logs])
        values, vectors = np.linalg.eigh((curvature + curvature.T) / 2)
        # No sharper than the kinks of the delay make it look, no wider than beforehand.
        values = np.maximum(values, min(np.diag(prior)))
        order = np.argsort(np.abs(vectors[2]))
        return (vectors / np.sqrt(values))[:, order]


def case(name, prior, truth, hours, count, target, seed):
    times, readings = drawn(truth, hours, count, seed)
    weights, us, means, covariances = Model(prior, times, readings).mixture()

    def normal(at):
        at_columns = np.array([columns(np.array(at), math.exp(u[0]), math.exp(u[1])) for u in us])
        spread = np.einsum("ni,nij,nj->n", at_columns, covariances, at_columns)
        return np.einsum("ni,ni->n", at_columns, means), np.sqrt(np.maximum(spread, 1e-300))

    def percentiles(at):
        mean, deviation = normal(at)
        below = lambda value, share: float(weights @ ndtr((value - mean) / deviation)) - share
        return [brentq(below, -300, 300, args=(share,), xtol=1e-9) for share in (0.05, 0.5, 0.95)]

    def chance(at):
        mean, deviation = normal(at)
        return float(weights @ ndtr((target - mean) / deviation))

    def reached(share):
        return brentq(lambda at: chance(at) - share, 0, DAY, xtol=1e-3) if chance(DAY) > share else "beyond"

    end = float(weights @ means[:, 1])
    log = float(weights @ us[:, 0])
    end_variance = float(weights @ (covariances[:, 1, 1] + (means[:, 1] - end) ** 2))
    log_variance = float(weights @ (us[:, 0] - log) ** 2)
    both = float(weights @ ((means[:, 1] - end) * (us[:, 0] - log)))
    return {
        "name": name,
        "prior": prior,
        "target": target,
        "readings": [[float(at), float(value)] for at, value in zip(times, readings)],
        "end": percentiles(1e12),
        "twice as late": percentiles(2 * hours * 3600),
        "chance": chance(DAY),
        "reach": [reached(share) for share in (0.05, 0.5, 0.95)],
        "ln time constant": [log, math.sqrt(log_variance)],
        "end with ln time constant": both / math.sqrt(end_variance * log_variance),
        "ln noise": float(weights @ us[:, 2]),
        "end deviation": math.sqrt(end_variance),
    }


def figures():
    return {
        "source": "scipy.linalg.cho_solve and scipy.special.ndtr on the stated model",
        "cases": [case(*one) for one in CASES],
    }


write_or_check(__file__, figures())
