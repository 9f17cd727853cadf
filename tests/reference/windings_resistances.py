"""Run winding, start winding and leads from three readings by weighted least squares in numpy.

Writes windings_resistances.json; with --check, compares the file with figures made anew.

The unknowns are run R, start S and leads L. Four equations have errors of their own: the readings
R + L, S + L and R + S + L, each with the standard uncertainty of one rectangular limit (JCGM
100:2008, 4.3.7), and what was known of L. The covariance is the inverse of the normal matrix.
"""

import math
import random

import numpy as np
from kept import write_or_check

METERS = {"good": (0.8, 2), "basic": (1.0, 5)}
# What is thought of leads that nobody speaks of, and of leads that were zeroed: mean, deviation.
UNSPOKEN = (0.3, 0.3)
ZEROED = (0.03, 0.03)
LEAST_OF_MEASURED = 0.02


def standard(text, meter):
    percent, counts = METERS[meter]
    count = 10.0 ** -len(text.partition(".")[2])
    return (percent / 100 * float(text) + counts * count) / math.sqrt(3)


def solved(run, start, series, meter, leads):
    if leads == "unknown":
        known, deviation = UNSPOKEN
    elif leads == "zeroed":
        known, deviation = ZEROED
    else:
        known, deviation = float(leads), max(standard(leads, meter), LEAST_OF_MEASURED)
    equations = np.array([[1, 0, 1], [0, 1, 1], [1, 1, 1], [0, 0, 1]], dtype=float)
    right = np.array([float(run), float(start), float(series), known])
    errors = np.array([standard(text, meter) for text in (run, start, series)] + [deviation])
    weighted = equations / errors[:, None]
    normal = weighted.T @ weighted
    values = np.linalg.solve(normal, weighted.T @ (right / errors))
    covariance = np.linalg.inv(normal)
    return values, covariance


def case(rng):
    meter = rng.choice(list(METERS))
    leads_true = rng.choice([0.0, rng.uniform(0.1, 0.6)])
    run = rng.uniform(3, 20)
    start = run * rng.uniform(1.5, 2.5)
    shown = [ohms + leads_true + rng.uniform(-0.2, 0.2) for ohms in (run, start, run + start)]
    typed = [f"{ohms:.1f}" for ohms in shown]
    leads = rng.choice(["unknown", f"{leads_true:.1f}"] + (["zeroed"] if leads_true == 0 else []))
    values, covariance = solved(*typed, meter, leads)
    return {
        "meter": meter,
        "leads": leads,
        "common-run": typed[0],
        "common-start": typed[1],
        "start-run": typed[2],
        "values": list(values),
        "standards": list(np.sqrt(np.diag(covariance))),
        "run with start": covariance[0][1],
        "run with leads": covariance[0][2],
    }


def figures():
    rng = random.Random(1821)
    return {
        "source": "weighted least squares with numpy",
        "cases": [case(rng) for _ in range(60)],
    }


write_or_check(__file__, figures())
