"""The density of readings between three pins by brute force: the model of the windings check,
stated anew here, summed over a dense grid that also covers the leads.

Writes windings_likelihood.json; with --check, compares the file with figures made anew.

The model. Natural logarithms of run winding, start over run, start device over run and one of
three equal windings are normal; one whole motor in ten is unusual, with wider spreads. Leads are
one normal error common to all readings. Each reading has a normal error of its own, with the
standard uncertainty of one rectangular limit, percent and counts together (JCGM 100:2008, 4.3.7).
All six ways of giving parts to pins are equally likely. A pair that is open shows over range in 99
of 100. Where the mains is not known, either is as likely.

The integral. The most probable point is found by scipy, the grid follows its curvature, and the
sum is taken twice, on a wider and finer grid the second time; both have to agree.
"""

import itertools
import math

import numpy as np
from kept import write_or_check
from scipy.optimize import minimize

PRIORS = {
    "v120": {"run": [1.46, 0.55], "ratio": [0.5878, 0.3125]},
    "v230": {"run": [2.68, 0.55], "ratio": [0.2624, 0.2532]},
    "unusual": 0.1,
    "unusual_run_deviation": 0.8,
    "unusual_ratio": [0.9, 0.6],
    "zeroed_leads": [0.03, 0.03],
    "leads": [0.35, 0.15],
    "not_zeroed": 0.4,
    "start_device": [0.5, 0.7],
    "equal_windings": [2.0, 0.9],
}
METERS = {"good": (0.8, 2), "basic": (1.0, 5)}
PAIRS = [(0, 1), (0, 2), (1, 2)]
OPEN_SHOWS_OPEN = 0.99
AGREE = 1e-4

# name, mains, leads, meter, what was typed for pairs 1-2, 1-3, 2-3, explanations
CASES = [
    ("ordinary", "v120", "unknown", "good", ["4.7", "12.0", "7.6"],
     ["sound", "leads_not_zeroed", "start_device_on"]),
    ("textbook 4, 11, 15", "v120", "not_zeroed", "basic", ["4.3", "15.2", "11.4"],
     ["sound", "leads_not_zeroed"]),
    ("230 V, zeroed", "v230", "zeroed", "good", ["18.1", "41.2", "23.3"],
     ["sound", "start_device_on"]),
    ("low ohms", "v120", "zeroed", "basic", ["1.9", "3.6", "2.1"],
     ["sound", "leads_not_zeroed", "start_device_on"]),
    ("whole ohms only", "v120", "unknown", "basic", ["5", "12", "7"],
     ["sound", "leads_not_zeroed", "start_device_on", "equal_windings"]),
    ("mains not known", None, "unknown", "good", ["8.1", "17.2", "9.4"],
     ["sound", "leads_not_zeroed"]),
    ("start below run", "v230", "zeroed", "basic", ["14.4", "28.4", "14.2"],
     ["sound"]),
    ("device of 5 ohms left on 4 and 7", "v120", "zeroed", "good", ["3.0", "3.4", "3.9"],
     ["start_device_on", "equal_windings"]),
    ("device of 13 ohms left on 4 and 7", "v120", "zeroed", "good", ["3.3", "6.0", "5.0"],
     ["start_device_on"]),
    ("device of 25 ohms left on 4 and 7", "v120", "unknown", "basic", ["3.6", "7.6", "5.6"],
     ["start_device_on", "sound", "leads_not_zeroed"]),
    ("device of 6 ohms left on 6 and 7, like three equal windings", "v120", "unknown", "good",
     ["4.1", "4.4", "4.1"], ["start_device_on", "equal_windings"]),
    ("three alike", None, "unknown", "good", ["24.1", "24.3", "24.0"], ["equal_windings"]),
    ("protector open", "v120", "unknown", "good", ["OL", "11.4", "OL"], ["protector_open"]),
    ("protector open, 230 V", "v230", "zeroed", "basic", ["OL", "41.6", "OL"],
     ["protector_open"]),
    ("two readings", "v120", "unknown", "good", ["4.7", None, "7.6"],
     ["sound", "leads_not_zeroed"]),
    ("one reading", "v230", "zeroed", "basic", ["19.3", None, None],
     ["sound", "equal_windings"]),
    ("near zero", "v120", "unknown", "basic", ["0.4", "0.5", "0.3"],
     ["leads_not_zeroed", "equal_windings"]),
    ("a great misfit", "v120", "zeroed", "good", ["4.7", "10.5", "7.6"],
     ["leads_not_zeroed", "start_device_on"]),
]


def ohms_between(role_pair, circuit, x):
    """Ohms between two parts of a circuit whose resistances' logarithms are x."""
    if circuit == "equal_windings":
        return np.exp(x[0])
    run, start = np.exp(x[0]), np.exp(x[1])
    if circuit == "start_device_on":
        device = np.exp(x[2])
        one, other = {
            frozenset("CR"): (run, start + device),
            frozenset("CS"): (start, run + device),
            frozenset("SR"): (device, run + start),
        }[role_pair]
        return one * other / (one + other)
    return {
        frozenset("CR"): run,
        frozenset("CS"): start,
        frozenset("SR"): run + start,
    }[role_pair]


def log_normal_pdf(x, mean, deviation):
    return -0.5 * ((x - mean) / deviation) ** 2 - math.log(deviation * math.sqrt(2 * math.pi))


def motors(circuit, mains):
    """Share, run winding and ratio of the motors that a circuit can belong to."""
    found = []
    for one in [PRIORS[mains]] if mains else [PRIORS["v120"], PRIORS["v230"]]:
        share = 1 if mains else 0.5
        if circuit == "sound":
            usual, unusual = share * (1 - PRIORS["unusual"]), share * PRIORS["unusual"]
            wide = [one["run"][0], PRIORS["unusual_run_deviation"]]
            found.append((usual, one["run"], one["ratio"]))
            found.append((unusual, wide, PRIORS["unusual_ratio"]))
        else:
            found.append((share, one["run"], one["ratio"]))
    return found


def log_prior(x, circuit, motor):
    if circuit == "equal_windings":
        return log_normal_pdf(x[0], *PRIORS["equal_windings"])
    _, run, ratio = motor
    prior = log_normal_pdf(x[0], *run) + log_normal_pdf(x[1] - x[0], *ratio)
    if circuit == "start_device_on":
        prior = prior + log_normal_pdf(x[2] - x[0], *PRIORS["start_device"])
    return prior


def log_integrand(x, circuit, motor, leads, numbers):
    """x holds the logarithms of the resistances and, last, the leads in ohms."""
    total = log_prior(x, circuit, motor) + log_normal_pdf(x[-1], *leads)
    for role_pair, value, standard in numbers:
        expected = ohms_between(role_pair, circuit, x) + x[-1]
        total = total + log_normal_pdf(value, expected, standard)
    return total


def curvature(f, x, step=1e-4):
    size = len(x)
    unit = np.eye(size) * step
    return np.array([
        [
            (f(x + unit[i] + unit[j]) - f(x + unit[i] - unit[j])
             - f(x - unit[i] + unit[j]) + f(x - unit[i] - unit[j])) / (4 * step * step)
            for j in range(size)
        ]
        for i in range(size)
    ])


def peak_of(circuit, motor, leads, numbers):
    """The most probable point, and the function whose least value it has."""
    size = {"equal_windings": 1, "start_device_on": 3}.get(circuit, 2)
    f = lambda x: -log_integrand(x, circuit, motor, leads, numbers)
    exact = {"xatol": 1e-9, "fatol": 1e-10, "maxiter": 20000, "maxfev": 20000}
    starts = [np.array([log] * size + [leads[0]]) for log in (0.0, 1.5, 2.5, 3.5)]
    found = [minimize(f, start, method="Nelder-Mead", options=exact) for start in starts]
    return f, min(found, key=lambda one: one.fun)


def log_integrals(f, peak):
    """Summed over a grid, and over a wider and finer one."""
    spread = np.linalg.cholesky(np.linalg.inv(curvature(f, peak.x)))
    grids = [(7, 31), (9, 43)] if len(peak.x) == 4 else [(9, 41), (12, 71)]
    return np.array([log_sum_on_grid(f, peak, spread, *grid) for grid in grids])


def log_integrals_of_one_number(f, motor, leads, number):
    """One number for two windings leaves a bent ridge: for each ratio, a grid around the run
    winding that the number then calls for. Twice, as above."""
    role_pair, value, own = number
    width = math.hypot(own, leads[1]) / value
    sums = []
    for reach, points in [(9, 81), (12, 151)]:
        axis = np.linspace(-reach, reach, points)
        ratio, run, lead = np.meshgrid(axis, axis, axis, indexing="ij")
        ratio = motor[2][0] + motor[2][1] * ratio
        lead = leads[0] + leads[1] * lead
        unit = ohms_between(role_pair, "sound", [0.0, ratio])
        run = np.log((value - leads[0]) / unit) + width * run
        cell = (axis[1] - axis[0]) ** 3 * motor[2][1] * leads[1] * width
        sums.append(math.log(np.exp(-f([run, run + ratio, lead])).sum() * cell))
    return np.array(sums)


def log_sum_on_grid(f, peak, spread, reach, points):
    axis = np.linspace(-reach, reach, points)
    cell = (axis[1] - axis[0]) ** len(peak.x) * np.linalg.det(spread)
    total = 0.0
    # One slice along the first axis at a time keeps the memory small.
    rest = np.array(np.meshgrid(*[axis] * (len(peak.x) - 1), indexing="ij"))
    rest = rest.reshape(len(peak.x) - 1, -1)
    for first in axis:
        z = np.vstack([np.full(rest.shape[1], first), rest])
        x = peak.x[:, None] + spread @ z
        total += np.exp(peak.fun - f(x)).sum()
    return math.log(total * cell) - peak.fun


def standard(text, meter):
    percent, counts = METERS[meter]
    count = 10.0 ** -len(text.partition(".")[2])
    return (percent / 100 * float(text) + counts * count) / math.sqrt(3)


def any_leads(state):
    """Zeroed or not: one normal with the mean and variance of both."""
    share = {"unknown": PRIORS["not_zeroed"], "zeroed": 0.02, "not_zeroed": 0.98}[state]
    (inside, inside_sd), (out, out_sd) = PRIORS["leads"], PRIORS["zeroed_leads"]
    mean = share * inside + (1 - share) * out
    variance = share * inside_sd**2 + (1 - share) * out_sd**2
    variance += share * (1 - share) * (inside - out) ** 2
    return [mean, math.sqrt(variance)]


def log_likelihood(explanation, mains, leads_state, meter, typed):
    leads = {
        "sound": PRIORS["zeroed_leads"],
        "leads_not_zeroed": PRIORS["leads"],
    }.get(explanation, any_leads(leads_state))
    circuit = explanation if explanation in ("equal_windings", "start_device_on") else "sound"
    parts = []
    for motor, roles in itertools.product(motors(circuit, mains), itertools.permutations("CSR")):
        shown = by_roles(explanation, roles, typed, meter)
        if shown is not None:
            log_open, numbers = shown
            log_share = log_open + math.log(motor[0] / 6)
            f, peak = peak_of(circuit, motor, leads, numbers)
            parts.append((log_share, f, peak, motor, numbers))
    # What is e^30 times less probable at its peak than the best adds nothing that shows.
    least = min(part[2].fun for part in parts)
    sums = []
    for log_share, f, peak, motor, numbers in parts:
        if peak.fun > least + 30:
            continue
        if circuit == "sound" and len(numbers) == 1:
            integrals = log_integrals_of_one_number(f, motor, leads, numbers[0])
        else:
            integrals = log_integrals(f, peak)
        sums.append(log_share + integrals)
    coarse, fine = np.logaddexp.reduce(sums)
    if abs(coarse - fine) > AGREE:
        raise SystemExit(f"{explanation} {typed}: the grids differ by {coarse - fine:.2e}")
    return float(fine)


def by_roles(explanation, roles, typed, meter):
    """The numbers with the parts between which they were read, and the logarithm of the chance
    of what was over range; None where an open pair reads or a closed one does not, which is so
    unlikely here that it does not show."""
    log_open, numbers = 0.0, []
    for (one, other), text in zip(PAIRS, typed):
        role_pair = frozenset({roles[one], roles[other]})
        is_open = explanation == "protector_open" and "C" in role_pair
        if text is None:
            continue
        if (text == "OL") != is_open:
            return None
        if is_open:
            log_open += math.log(OPEN_SHOWS_OPEN)
        else:
            numbers.append((role_pair, float(text), standard(text, meter)))
    return log_open, numbers


def figures():
    return {
        "source": "the stated model summed over dense grids with numpy and scipy",
        "priors": PRIORS,
        "cases": [
            {
                "name": name,
                "mains": mains,
                "leads": leads,
                "meter": meter,
                "typed": typed,
                "log_likelihoods": {
                    explanation: log_likelihood(explanation, mains, leads, meter, typed)
                    for explanation in explanations
                },
            }
            for name, mains, leads, meter, typed, explanations in CASES
        ],
    }


write_or_check(__file__, figures())
