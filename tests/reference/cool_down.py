"""Cool-downs by full covariance matrices with SciPy: the model of measure::cool_down, stated anew here.

Writes cool_down.json; with --check, compares the file with figures made anew.

The model. dT = (E - T)/tau dt and dE = (F - E)/theta dt + sqrt(2 w^2/theta) dW; beforehand T(0) and F are
normal and E(0) = T(0) + 0.4 (F - T(0)) with 7 K of spread. A reading errs by sigma, and by
1.5 K e^(-t/10 min) besides. tau, theta, w and sigma are any of a grid, all alike likely. Mean and
covariance of all readings and of T at the times in question are written out as one multivariate
normal: transitions by scipy.linalg.expm, what wandering adds by Van Loan's block exponential, no
filter. Its density is scipy's Cholesky, its conditional the textbook one. What is yet to come, the
thermometer's own error and the control's stop are added as the module states them.
"""

import itertools
import math

import numpy as np
from kept import write_or_check
from scipy.linalg import cho_factor, cho_solve, expm
from scipy.optimize import brentq
from scipy.special import ndtr

AIR = [360.0, 720.0, 1440.0, 2880.0, 5760.0, 11520.0]
WALLS = [3960.0, 7920.0, 15840.0, 31680.0, 63360.0]
WANDERS = [1.0, 3.0, 8.0]
NOISES = [0.05, 0.2, 0.8]
CHEST = {"start": [20.0, 9.0], "end": [-20.0, 13.0], "held": [-20.0, 2.0],
         "swing": 3.5, "to_come": 2.0, "thermometer": 0.6}
COMBINED = {"start": [20.0, 9.0], "end": [-18.0, 13.0], "held": [-18.5, 3.0],
            "swing": 7.0, "to_come": 6.0, "thermometer": 0.6}
FRESH = {"start": [20.0, 9.0], "end": [2.0, 9.0], "held": [3.0, 3.0],
         "swing": 3.5, "to_come": 2.0, "thermometer": 0.6}
DAY = 86400.0
FAR = 50 * DAY

# name, prior, a course (start, end, quick share, its hours, the rest's hours), hours, readings, target, seed
CASES = [
    ("half an hour", CHEST, (22, -24, 0.2, 0.3, 3.0), 0.5, 16, -18.0, 1),
    ("two hours, warm end", CHEST, (25, -5, 0.4, 0.4, 2.0), 2.0, 25, -18.0, 3),
    ("eight hours, beside fresh food", COMBINED, (21, -17, 0.5, 0.3, 4.0), 8.0, 25, -18.0, 5),
    ("fresh food", FRESH, (23, 3, 0.3, 0.3, 1.5), 1.5, 25, 4.0, 6),
]


def drawn(course, hours, count, seed):
    """A log rounded to tenths, as a display has it."""
    start, end, share, quick, slow = course
    times = np.linspace(0, hours * 3600, count)
    left = share * np.exp(-times / (quick * 3600)) + (1 - share) * np.exp(-times / (slow * 3600))
    noise = np.random.default_rng(seed).normal(0, 0.1, count)
    return times, np.round(end + (start - end) * left + noise, 1)


def step(tau, theta, wander, seconds):
    """Transition of (T, E, F) and the covariance that wandering adds, after Van Loan (1978); long
    stretches are put together of halves, since the block exponential holds growing exponentials."""
    if seconds > 2 * tau:
        half, added = step(tau, theta, wander, seconds / 2)
        return half @ half, half @ added @ half.T + added
    drift = np.array([[-1 / tau, 1 / tau, 0], [0, -1 / theta, 1 / theta], [0, 0, 0]])
    spread = np.diag([0, 2 * wander**2 / theta, 0])
    block = np.zeros((6, 6))
    block[:3, :3], block[:3, 3:], block[3:, 3:] = -drift, spread, drift.T
    whole = expm(block * seconds)
    transition = whole[3:, 3:].T
    return transition, transition @ whole[:3, 3:]


class Joint:
    """(T, E, F) at all times as one normal distribution."""

    def __init__(self, prior, pace, times):
        tau, theta, wander = pace
        (start, s), (end, f) = prior["start"], prior["end"]
        mix = np.array([[1, 0, 0], [0.6, 1, 0.4], [0, 0, 1]])
        mean = mix @ [start, 0, end]
        total = mix @ np.diag([s**2, 7.0**2, f**2]) @ mix.T
        count = len(times)
        self.mean, self.covariance = np.empty(count), np.empty((count, count))
        before, cross = 0.0, []
        known = {}
        for place, at in enumerate(times):
            apart = round(at - before, 6)
            if apart not in known:
                known[apart] = step(tau, theta, wander, apart)
            transition, added = known[apart]
            mean = transition @ mean
            total = transition @ total @ transition.T + added
            cross = [transition @ one for one in cross]
            self.mean[place] = mean[0]
            for earlier, one in enumerate(cross):
                self.covariance[earlier, place] = self.covariance[place, earlier] = one[0]
            self.covariance[place, place] = total[0, 0]
            # Covariances of the state to come with T now.
            cross.append(total[:, 0])
            before = at


def outlook(prior, times, readings, ahead):
    """Weights, and means and standard deviations of T at the times ahead."""
    count = len(times)
    weights, means, deviations, noises = [], [], [], []
    for pace in itertools.product(AIR, WALLS, WANDERS):
        joint = Joint(prior, pace, np.concatenate([times, ahead]))
        for noise in NOISES:
            early = 1.5 * np.exp(-times / 600)
            seen = joint.covariance[:count, :count] + np.diag(noise**2 + early**2)
            factor = cho_factor(seen, lower=True)
            off = readings - joint.mean[:count]
            weights.append(-0.5 * off @ cho_solve(factor, off) - np.log(np.diag(factor[0])).sum())
            gain = cho_solve(factor, joint.covariance[:count, count:]).T
            means.append(joint.mean[count:] + gain @ off)
            left = joint.covariance[count:, count:] - gain @ joint.covariance[:count, count:]
            deviations.append(np.sqrt(np.maximum(np.diag(left), 0)))
            noises.append(math.log(noise))
    weights = np.exp(np.array(weights) - max(weights))
    return weights / weights.sum(), np.array(means), np.array(deviations), np.array(noises)


def case(name, prior, course, hours, count, target, seed):
    times, readings = drawn(course, hours, count, seed)
    last = times[-1]
    grid = np.concatenate([last + np.arange(1, 61) * (DAY - last) / 60, [FAR]])
    ahead = np.unique(np.concatenate([grid, [2 * last]]))
    weights, means, deviations, noises = outlook(prior, times, readings, ahead)
    coldest = min(np.median(readings[at:at + 3]) for at in range(count - 2)) + prior["swing"]
    held, spread = prior["held"]

    def below(value, at):
        place = int(np.flatnonzero(ahead == at)[0])
        comes = prior["to_come"] * math.exp(-last / 28800) * (1 - math.exp(-(at - last) / 7200))
        deviation = np.sqrt(deviations[:, place] ** 2 + comes**2 + prior["thermometer"] ** 2)
        stopped = min(1.0, ndtr((value - held) / spread) / ndtr((coldest - held) / spread))
        return float(weights @ ndtr((value - means[:, place]) / deviation)) * (1.0 if value >= coldest else stopped)

    def percentiles(at):
        # It jumps where the control's stop is cut off, so that a root is found by its sign.
        return [brentq(lambda value: below(value, at) - share, -300, 300, xtol=1e-9) for share in (0.05, 0.5, 0.95)]

    return {
        "name": name,
        "prior": prior,
        "target": target,
        "readings": [[float(at), float(value)] for at, value in zip(times, readings)],
        "end": percentiles(FAR),
        "twice as late": percentiles(2 * last),
        "chance": below(target, DAY),
        # At these times the target is reached as surely as this.
        "chances": [[float(at), below(target, at)] for at in grid[9:60:10]],
        "ln noise": float(weights @ noises),
    }


def figures():
    return {
        "source": "scipy.linalg.expm, cho_solve and scipy.special.ndtr on the stated model",
        "cases": [case(*one) for one in CASES],
    }


write_or_check(__file__, figures())
