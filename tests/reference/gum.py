"""Propagation of uncertainty by the `uncertainties` package, which this project did not write.

Writes gum.json; with --check, compares the file with figures made anew.

Each case has leads common to three readings. A reading has an error of its own whose limit,
percent and counts together, is taken as rectangular: a/sqrt(3) (JCGM 100:2008, 4.3.7). Sums,
differences and linear combinations of leads and readings share the leads, so they are correlated
(5.2).
"""

import math
import random

from kept import write_or_check
from uncertainties import covariance_matrix, ufloat

CASES = 40
NAMED = {
    "reading less leads": [-1, 1, 0, 0],
    "sum of two": [0, 1, 1, 0],
    "difference of two": [0, 1, -1, 0],
    "excess over the third": [0, 1, 1, -1],
}


def measured(value, percent, counts, count):
    limit = percent / 100 * abs(value) + max(counts, 0.5) * count
    return value + ufloat(0, limit / math.sqrt(3))


def linear(coefficients, inputs):
    return sum(c * x for c, x in zip(coefficients, inputs)) + 0.0 * inputs[0]


def case(rng):
    leads = {"value": rng.uniform(0, 0.5), "standard": rng.uniform(0.01, 0.3)}
    percent, counts = rng.choice([(0.8, 3), (1.0, 5), (0.8, 2), (0.5, 0)])
    readings = [
        {
            "value": round(rng.uniform(0.5, 60), 1),
            "percent": percent,
            "counts": counts,
            "count": rng.choice([1.0, 0.1, 0.01]),
        }
        for _ in range(3)
    ]
    inputs = [ufloat(leads["value"], leads["standard"])]
    inputs += [measured(**reading) for reading in readings]
    combinations = dict(NAMED)
    for number in range(4):
        combinations[f"random {number}"] = [round(rng.uniform(-3, 3), 3) for _ in range(4)]
    results = {name: linear(c, inputs) for name, c in combinations.items()}
    first, *others = results.values()
    ratio = results["random 0"] / results["sum of two"]
    ratio_less_leads = results["reading less leads"] / (inputs[2] - inputs[0])
    return {
        "leads": leads,
        "readings": readings,
        "combinations": [
            {
                "name": name,
                "coefficients": combinations[name],
                "value": result.nominal_value,
                "standard": result.std_dev,
                "covariance_with_first": covariance_matrix([first, result])[0][1],
            }
            for name, result in results.items()
        ],
        "ratios": [
            {
                "name": "random 0 over sum of two",
                "over": combinations["random 0"],
                "under": combinations["sum of two"],
                "value": ratio.nominal_value,
                "standard": ratio.std_dev,
            },
            {
                "name": "one reading over another, leads taken out of both",
                "over": combinations["reading less leads"],
                "under": [-1, 0, 1, 0],
                "value": ratio_less_leads.nominal_value,
                "standard": ratio_less_leads.std_dev,
            },
        ],
    }


def figures():
    rng = random.Random(1995)
    return {
        "source": "uncertainties 3.2.3, first-order propagation (JCGM 100:2008, eq. 10 and 13)",
        "cases": [case(rng) for _ in range(CASES)],
    }


write_or_check(__file__, figures())
