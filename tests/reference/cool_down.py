"""Cool-downs by full covariance matrices with SciPy: the model of measure::cool_down, stated anew here.

Writes cool_down.json; with --check, compares the file with figures made anew.

The model. dT = (E - T)/tau dt and dE = (F - E)/theta dt + sqrt(2 w^2/theta) dW; beforehand T(0) and F are
normal, F of one of two kinds with shares, and E(0) = T(0) + 0.4 (F - T(0)) with 7 K of spread. A reading errs by sigma, and by
1.5 K e^(-t/10 min) besides. tau, theta, w and sigma are any of a grid; all alike likely, but for theta
and w of sound cabinets, and theta of air beside another compartment. Mean and
covariance of all readings and of T at the times in question are written out as one multivariate
normal: transitions by scipy.linalg.expm, what wandering adds by Van Loan's block exponential, no
filter. Its density is scipy's Cholesky, its conditional the textbook one; each kind of end is weighed by
itself. A coil's word is a reading of F in four of five cases, and watts are odds on the kinds. What is yet
to come, the thermometer's own error and the control's stop are added as the module states them.
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
WANDERS = [0.5, 2.0, 6.0]
NOISES = [0.05, 0.2, 0.8]
# By kind of end: sound, weakened.
WALLS_LIKELY = {True: [[0.3, 0.35, 0.25, 0.08, 0.02], [0.2] * 5],
                False: [[0.1, 0.15, 0.25, 0.25, 0.25]] * 2}
WANDERS_LIKELY = [[0.45, 0.45, 0.1], [1 / 3] * 3]
CHEST = {"start": [20.0, 9.0], "sound": [-28.0, 5.0], "weak": [-3.0, 13.0], "held": [-20.0, 1.0],
         "weak share": 0.4, "unheld": 0.03, "swing": 3.5, "to come": [-2.0, 3.5], "comes": 7200.0,
         "wander": 1.0, "loss": 0.07, "thermometer": 0.6}
COMBINED = {"start": [20.0, 9.0], "sound": [-26.0, 6.0], "weak": [-4.0, 13.0], "held": [-18.5, 2.5],
            "weak share": 0.4, "unheld": 0.05, "swing": 7.0, "to come": [0.0, 5.0], "comes": 3600.0,
            "wander": 1.0, "loss": 0.05, "thermometer": 0.6}
BESIDE = {"start": [20.0, 9.0], "sound": [-2.0, 4.0], "weak": [3.0, 9.0], "held": [4.0, 1.0],
          "weak share": 0.4, "unheld": 0.02, "swing": 3.5, "to come": [0.0, 1.0], "comes": 7200.0,
          "wander": 0.5, "loss": None, "thermometer": 0.6}
FRESH = {"start": [20.0, 9.0], "sound": [-8.0, 6.0], "weak": [4.0, 10.0], "held": [3.0, 2.0],
         "weak share": 0.4, "unheld": 0.25, "swing": 3.5, "to come": [0.0, 1.0], "comes": 7200.0,
         "wander": 0.7, "loss": 0.3, "thermometer": 0.6}
DAY = 86400.0
FAR = 50 * DAY

# name, prior, a course (start, end, quick share, its hours, the rest's hours), hours, readings, target, seed,
# kelvins of the coil below the air or nothing, watts with the least and the most that are usual or nothing
CASES = [
    ("half an hour", CHEST, (22, -24, 0.2, 0.3, 3.0), 0.5, 16, -18.0, 1, None, None),
    ("two hours, warm end", CHEST, (25, -5, 0.4, 0.4, 2.0), 2.0, 25, -18.0, 3, None, None),
    ("eight hours, beside fresh food", COMBINED, (21, -17, 0.5, 0.3, 4.0), 8.0, 25, -18.0, 5, None, None),
    ("beside a freezer", BESIDE, (23, 5, 0.2, 0.5, 3.0), 3.0, 25, 4.0, 8, None, None),
    ("fresh food", FRESH, (23, 3, 0.3, 0.3, 1.5), 1.5, 25, 4.0, 6, None, None),
    ("a coil hardly colder", CHEST, (23, -8, 0.3, 0.4, 3.0), 1.0, 25, -18.0, 9, 3.0, None),
    ("coil and watts", COMBINED, (22, -20, 0.4, 0.4, 2.5), 1.0, 25, -18.0, 10, 7.0, (60.0, 90.0, 170.0)),
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

    def __init__(self, prior, kind, pace, times):
        tau, theta, wander = pace
        (start, s), (end, f) = prior["start"], prior[kind]
        mix = np.array([[1, 0, 0], [0.6, 1, 0.4], [0, 0, 1]])
        mean = mix @ [start, 0, end]
        total = mix @ np.diag([s**2, 7.0**2, f**2]) @ mix.T
        count = len(times)
        # The last place is F itself.
        self.mean, self.covariance = np.empty(count + 1), np.empty((count + 1, count + 1))
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
        self.mean[count], self.covariance[count, count] = end, f**2
        for earlier, one in enumerate(cross):
            self.covariance[earlier, count] = self.covariance[count, earlier] = one[2]


def told_by_coil(prior, room, air, below):
    """Mean and deviation of where the air ends: what is lost is what a coil takes up that halves each 20 K."""
    def balance(loss, below):
        over = lambda end: max(below, 0.0) * 2 ** ((end - air) / 20) - loss * (room - end)
        return brentq(over, -60, room, xtol=1e-10) if over(room) > 0 else room
    cold = balance(prior["loss"] * math.exp(-0.35), below + 1)
    warm = balance(prior["loss"] * math.exp(0.35), below - 1)
    return balance(prior["loss"], below), max(2.0, (warm - cold) / 2)


def odds_of(draw):
    """How likely watts are in sound cabinets and in weakened ones."""
    if draw is None:
        return 1.0, 1.0
    watts, least, most = draw
    middle = math.log(least * most) / 2
    density = lambda mean, s: math.exp(-((math.log(watts) - mean) / s) ** 2 / 2) / s
    sound = density(middle, math.log(most / least) / 4)
    return sound + 0.02, 0.5 * sound + 0.5 * density(middle + math.log(0.6), 0.35) + 0.02


def outlook(prior, times, readings, ahead, end, draw):
    """Weights, and means and standard deviations of T at the times ahead."""
    count = len(times)
    logs, means, deviations, noises = [], [], [], []
    shares = {"sound": 1 - prior["weak share"], "weak": prior["weak share"]}
    for place, kind in enumerate(["sound", "weak"]):
        walls_likely = WALLS_LIKELY[prior["loss"] is not None][place]
        for tau, (w, theta), (v, wander) in itertools.product(AIR, enumerate(WALLS), enumerate(WANDERS)):
            joint = Joint(prior, kind, (tau, theta, wander * prior["wander"]), np.concatenate([times, ahead]))
            likely = shares[kind] * walls_likely[w] * WANDERS_LIKELY[place][v] * odds_of(draw)[place]
            for noise, told in itertools.product(NOISES, [False] if end is None else [False, True]):
                seen, where = readings, list(range(count))
                errors = noise**2 + (1.5 * np.exp(-times / 600)) ** 2
                log = math.log(likely)
                if told:
                    seen, errors = np.append(seen, end[0]), np.append(errors, end[1] ** 2)
                    where.append(count + len(ahead))
                    log += math.log(0.8)
                elif end is not None:
                    log += math.log(0.2 / 60)
                factor = cho_factor(joint.covariance[np.ix_(where, where)] + np.diag(errors), lower=True)
                off = seen - joint.mean[where]
                log -= 0.5 * off @ cho_solve(factor, off) + np.log(np.diag(factor[0])).sum()
                logs.append(log - 0.5 * len(where) * math.log(2 * math.pi))
                to_come = slice(count, count + len(ahead))
                gain = cho_solve(factor, joint.covariance[where, to_come]).T
                means.append(joint.mean[to_come] + gain @ off)
                left = joint.covariance[to_come, to_come] - gain @ joint.covariance[where, to_come]
                deviations.append(np.sqrt(np.maximum(np.diag(left), 0)))
                noises.append(math.log(noise))
    weights = np.exp(np.array(logs) - max(logs))
    return weights / weights.sum(), np.array(means), np.array(deviations), np.array(noises)


def case(name, prior, course, hours, count, target, seed, coil_under, draw):
    times, readings = drawn(course, hours, count, seed)
    last = times[-1]
    room = course[0]
    # The coil is read with the last reading of the air.
    end = None if coil_under is None else told_by_coil(prior, room, readings[-1], coil_under)
    grid = np.concatenate([last + np.arange(1, 61) * (DAY - last) / 60, [FAR]])
    ahead = np.unique(np.concatenate([grid, [2 * last]]))
    weights, means, deviations, noises = outlook(prior, times, readings, ahead, end, draw)
    coldest = min(np.median(readings[at:at + 3]) for at in range(count - 2)) + prior["swing"]
    held, spread = prior["held"]

    def below(value, at):
        place = int(np.flatnonzero(ahead == at)[0])
        share = math.exp(-last / 86400) * (1 - math.exp(-(at - last) / prior["comes"]))
        more, comes = (share * one for one in prior["to come"])
        deviation = np.sqrt(deviations[:, place] ** 2 + comes**2 + prior["thermometer"] ** 2)
        stopped = min(1.0, ndtr((value - held) / spread) / ndtr((coldest - held) / spread))
        stopped = prior["unheld"] + (1 - prior["unheld"]) * stopped
        free = float(weights @ ndtr((value - means[:, place] - more) / deviation))
        return free * (1.0 if value >= coldest else stopped)

    def percentiles(at):
        # It jumps where the control's stop is cut off, so that a root is found by its sign.
        return [brentq(lambda value: below(value, at) - share, -300, 300, xtol=1e-9) for share in (0.05, 0.5, 0.95)]

    return {
        "name": name,
        "prior": prior,
        "target": target,
        "room": room,
        "coil": None if coil_under is None else [float(last), float(readings[-1] - coil_under)],
        "draw": draw and list(draw),
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
