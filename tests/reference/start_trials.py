"""Rest needed before a start, from trials, by adaptive integration with SciPy: the model of
measure::start_trials, stated anew here.

Writes start_trials.json; with --check, compares the file with figures made anew.

The model. x is ln of the rest in seconds after which a set-up starts as often as not. Beforehand
x is normal between 15 s and 4 h; beside that it starts at once, or never hot, or not even cold.
With d = (ln rest + 2 ln supply - x)/s: fails 1 - L(d), starts at once L(d - 1), hums and starts
what is left, L the logistic function; s is one of three widths. 3 in 100 outcomes are any of the
three alike. A trial from cold starts unless it is not even cold, whatever x is.

Each integral over x goes through scipy.integrate.quad between points at the trials' rests;
percentiles through brentq on the integrated density; a ratio of two thresholds through quad over
one threshold's density times the other's distribution function, by interpolation of 4,000 points.
"""

import math

import numpy as np
from kept import write_or_check
from scipy.integrate import cumulative_simpson, quad
from scipy.optimize import brentq
from scipy.special import expit, xlogy
from scipy.stats import norm

LEAST, MOST = math.log(15.0), math.log(14400.0)
WIDTHS = [(0.08, 0.3), (0.16, 0.45), (0.32, 0.25)]
OUTLIERS = 0.03
PTC = {"median": 207.846096908, "deviation": 0.8, "at_once": 0.03, "not_hot": 0.03, "not_even_cold": 0.08}
KIT = {"median": 164.316767252, "deviation": 0.8, "at_once": 0.03, "not_hot": 0.03, "not_even_cold": 0.08}
OTHER = {"median": 600.0, "deviation": 1.3, "at_once": 0.1, "not_hot": 0.2, "not_even_cold": 0.0}
CLEAN, HUMMED, FAILED = "started", "hummed", "failed"

# name, prior, trials of (rest in seconds, outcome, from cold, supply)
CASES = [
    ("nothing tried", PTC, []),
    ("started", PTC, [(300, CLEAN, False, 1.0)]),
    ("failed", PTC, [(300, FAILED, False, 1.0)]),
    ("hummed first", PTC, [(240, HUMMED, False, 1.0)]),
    ("between", PTC, [(300, FAILED, False, 1.0), (900, CLEAN, False, 1.0)]),
    ("low voltage", PTC, [(300, FAILED, False, 0.85), (900, HUMMED, False, 0.9)]),
    ("contradiction", PTC, [(300, CLEAN, False, 1.0), (1200, FAILED, False, 1.0)]),
    ("cold failure", PTC, [(300, FAILED, False, 1.0), (30000, FAILED, True, 1.0)]),
    ("cold start", PTC, [(1800, FAILED, False, 1.0), (30000, CLEAN, True, 1.0)]),
    ("quick kit", KIT, [(60, FAILED, False, 1.0), (150, CLEAN, False, 1.0), (100, HUMMED, False, 1.0)]),
    ("kit at once", KIT, [(30, CLEAN, False, 1.0), (20, CLEAN, False, 1.0)]),
    ("wide prior", OTHER, [(600, FAILED, False, 1.0), (2400, HUMMED, False, 0.95)]),
    ("many", PTC, [(200, FAILED, False, 1.0), (300, FAILED, False, 1.0), (400, CLEAN, False, 1.0),
                   (350, FAILED, False, 1.0), (420, HUMMED, False, 1.0), (600, CLEAN, False, 1.0)]),
]
RESTS = [60.0, 180.0, 300.0, 600.0, 1800.0]
BANDS = [360.0, 720.0]
GAINS = [("failed", "quick kit"), ("between", "quick kit"), ("between", "many"), ("many", "wide prior")]


def outcomes(log_rest, x, s):
    d = (log_rest - x) / s
    return {CLEAN: expit(d - 1), HUMMED: expit(d) - expit(d - 1), FAILED: expit(-d)}


def sure(chance):
    return (1 - OUTLIERS) * chance + OUTLIERS / 3


class Posterior:
    def __init__(self, prior, trials):
        self.prior, self.trials = prior, trials
        mean = math.log(prior["median"])
        self.normal = norm(mean, prior["deviation"])
        inside = self.normal.cdf(MOST) - self.normal.cdf(LEAST)
        beside = prior["at_once"] + prior["not_hot"] + prior["not_even_cold"]
        self.height = (1 - beside) / inside
        self.breaks = sorted({math.log(rest) for rest, *_ in trials} | {mean, LEAST, MOST}
                             | {math.log(rest) for rest in RESTS + BANDS})
        self.breaks = [b for b in self.breaks if LEAST <= b <= MOST]
        atoms = [prior["at_once"], prior["not_hot"], prior["not_even_cold"]]
        for _, outcome, cold, _ in trials:
            started = outcome != FAILED
            never, ever = sure(not started), sure(started)
            at_once = ever if cold else sure(outcome == CLEAN)
            not_hot = ever if cold else never
            atoms = [atoms[0] * at_once, atoms[1] * not_hot, atoms[2] * never]
        self.whole = 1.0
        self.whole = sum(atoms) + self.integral(lambda x, s: 1.0, LEAST, MOST)
        self.at_once, self.not_hot, self.not_even_cold = [atom / self.whole for atom in atoms]

    def density(self, x, s):
        value = self.height * self.normal.pdf(x) / self.whole
        for rest, outcome, cold, supply in self.trials:
            if cold:
                value = value * sure(outcome != FAILED)
            else:
                value = value * sure(outcomes(math.log(rest) + 2 * math.log(supply), x, s)[outcome])
        return value

    def integral(self, of, start, end):
        breaks = [start, *(b for b in self.breaks if start < b < end), end]
        total = 0.0
        for s, weight in WIDTHS:
            for a, b in zip(breaks, breaks[1:]):
                total += weight * quad(lambda x: of(x, s) * self.density(x, s), a, b,
                                       epsabs=1e-12, epsrel=1e-10, limit=400)[0]
        return total

    def below(self, log):
        return self.at_once + self.integral(lambda x, s: 1.0, LEAST, log)

    def percentile(self, share):
        if share <= self.at_once:
            return "at once"
        if share > 1 - self.not_hot - self.not_even_cold:
            return "beyond"
        return math.exp(brentq(lambda log: self.below(log) - share, LEAST, MOST, xtol=1e-10))

    def chance(self, rest):
        return self.at_once + self.integral(lambda x, s: expit((math.log(rest) - x) / s), LEAST, MOST)

    def bits(self, rest):
        """Mutual information of threshold and outcome, widths averaged out."""
        log_rest = math.log(rest)

        def at(x):
            shares = np.array([weight * self.density(x, s) for s, weight in WIDTHS])
            mass = shares.sum()
            each = np.array([[sure(chance) for chance in outcomes(log_rest, x, s).values()]
                             for s, _ in WIDTHS])
            return mass, (shares[:, None] * each).sum(axis=0) / mass

        def summed(of):
            return sum(quad(of, a, b, epsabs=1e-11, epsrel=1e-9, limit=400)[0]
                       for a, b in zip(self.breaks, self.breaks[1:]))

        def entropy(chances):
            return -float(np.sum(xlogy(chances, chances))) / math.log(2)

        started = np.array([sure(1), sure(0), sure(0)])
        failed = np.array([sure(0), sure(0), sure(1)])
        never = self.not_hot + self.not_even_cold
        mean = self.at_once * started + never * failed
        mean = mean + [summed(lambda x, k=k: at(x)[0] * at(x)[1][k]) for k in range(3)]
        given = self.at_once * entropy(started) + never * entropy(failed)
        given += summed(lambda x: at(x)[0] * entropy(at(x)[1]))
        return entropy(mean) - given


def gain(one, other):
    """Threshold of one over that of the other; the ends stand for what lies beyond them."""
    xs = np.linspace(LEAST, MOST, 4001)
    density = [sum(w * np.array(p.density(xs, s)) for s, w in WIDTHS) for p in (one, other)]
    never = one.not_hot + one.not_even_cold
    inside = cumulative_simpson(density[1], x=xs, initial=0.0)

    def other_above(logs):
        """P(other's ln threshold > log); its ends lie at both ends of the scale."""
        within = other.not_hot + other.not_even_cold + inside[-1] - np.interp(logs, xs, inside)
        return np.where(logs < LEAST, 1.0, np.where(logs < MOST, within, 0.0))

    def below(difference):
        """P(ln ratio < difference)."""
        total = float(np.trapezoid(density[0] * other_above(xs - difference), xs))
        for mass, log in ((one.at_once, LEAST), (never, MOST)):
            total += mass * float(other_above(np.array(log - difference)))
        return total

    ratios = [math.exp(brentq(lambda d, q=q: below(d) - q, LEAST - MOST + 1e-6, MOST - LEAST - 1e-6))
              for q in (0.05, 0.5, 0.95)]
    tie = one.at_once * other.at_once + never * (other.not_hot + other.not_even_cold)
    return {"ratios": ratios, "sooner": 1 - below(1e-9) + 0.5 * tie}


def case(name, prior, trials):
    found = Posterior(prior, trials)
    below = [found.below(math.log(band)) for band in BANDS]
    return {
        "name": name,
        "prior": prior,
        "trials": [list(trial) for trial in trials],
        "percentiles": [found.percentile(share) for share in (0.05, 0.5, 0.95)],
        "zones": [below[0], below[1] - below[0], 1 - below[1]],
        "starts cold": 1 - found.not_even_cold,
        "chances": [[rest, found.chance(rest)] for rest in RESTS],
        "bits": [[rest, found.bits(rest)] for rest in RESTS[1:4]],
    }


def figures():
    made = {name: Posterior(prior, trials) for name, prior, trials in CASES}
    return {
        "source": "scipy.integrate.quad and scipy.optimize.brentq on the stated model",
        "gains": [{"of": one, "over": other, **gain(made[one], made[other])} for one, other in GAINS],
        "cases": [case(*one) for one in CASES],
    }


write_or_check(__file__, figures())
