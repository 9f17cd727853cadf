"""Which start capacitors fit a motor of which ohms and a clamp's readings are known, by Monte
Carlo with numpy: the model of measure::start_kit, stated anew here.

Writes start_kit.json; with --check, compares the file with figures made anew.

The model. Rotor's over main winding's resistance, main reactance over resistance, turns and the
start winding's reactance are log-uniform within spans; winding ohms are rectangular within their
limits. A motor whose currents are less than 10 degrees apart with its plain device is left out.
Each current that was read weighs a motor by a normal density. Unlike ours, the main winding's
current is a weight too and nothing is drawn from it; currents are complex numbers, the greatest
torque is sought by golden section over the reactance for a few motors to check its formula.
"""

import math

import numpy as np
from kept import write_or_check
from scipy.optimize import minimize_scalar

SPANS = {"rotor": (0.4, 2.5), "slope": (0.5, 2.5), "turns": (0.7, 1.8), "start": (0.6, 1.1)}
LEAST_ANGLE = 10.0
DRAWS = 1_000_000
PERCENTS = [7, 13, 45, 55, 87, 93]

# name, main and start ohms, device, volts, hertz, main alone and with start (amps), microfarads
CASES = [
    ("ohms only, 115 V", 4.0, 7.0, 5.0, 112.0, 60.0, None, None, 120.0),
    ("main current, 115 V", 4.0, 7.0, 5.0, 112.0, 60.0, 11.0, None, 150.0),
    ("both currents, 115 V", 4.0, 7.0, 5.0, 112.0, 60.0, 11.0, 15.5, 100.0),
    ("line current, 115 V", 4.0, 7.0, 5.0, 112.0, 60.0, None, 15.5, 200.0),
    ("relay, 115 V", 3.0, 9.0, 0.0, 115.0, 60.0, 14.0, 19.0, 150.0),
    ("both currents, 230 V", 18.0, 23.0, 15.0, 225.0, 50.0, 3.6, 5.6, 40.0),
]
OHMS_STANDARD = 0.1
AMPS_SHARE = 0.025


def drawn(rng, main, start, device, volts, main_alone, with_start):
    def log_uniform(name):
        least, most = SPANS[name]
        return least * (most / least) ** rng.random(DRAWS)

    limit = math.sqrt(3) * OHMS_STANDARD
    rm = main + limit * (2 * rng.random(DRAWS) - 1)
    rs = start + limit * (2 * rng.random(DRAWS) - 1)
    rotor, slope, turns, share = [log_uniform(name) for name in SPANS]
    zm = rm * (1 + rotor) * (1 + 1j * slope)
    za = rs + turns**2 * rotor * rm + 1j * share * turns**2 * zm.imag
    im, ia = volts / zm, volts / (za + device)
    weight = np.degrees(np.angle(ia / im)) >= LEAST_ANGLE
    weight = weight.astype(float)
    for read, current in ((main_alone, im), (with_start, im + ia)):
        if read is not None:
            weight *= np.exp(-0.5 * ((abs(current) - read) / (AMPS_SHARE * read)) ** 2)
    keep = weight > 0
    return zm[keep], za[keep], weight[keep]


def percentiles(values, weight):
    order = np.argsort(values)
    share = np.cumsum(weight[order]) / weight.sum()
    return [float(values[order][np.searchsorted(share, percent / 100)]) for percent in PERCENTS]


def torque(im, ia):
    return (im.conjugate() * ia).imag


def greatest_checked(zm, za, xc):
    """The formula's reactance is where the torque is greatest, sought numerically."""
    def lost(x):
        return -torque(1 / zm, 1 / (za - 1j * x))

    found = minimize_scalar(lost, bounds=(0.05 * xc, 20 * xc), method="bounded",
                            options={"xatol": 1e-9 * xc})
    assert math.isclose(found.x, xc, rel_tol=1e-5), (found.x, xc)


def case(number, name, main, start, device, volts, hertz, main_alone, with_start, micro):
    rng = np.random.default_rng(1888 + number)
    zm, za, weight = drawn(rng, main, start, device, volts, main_alone, with_start)
    right = za.imag + za.real * zm.real / zm.imag
    greatest = za.imag + za.real * zm.real / (abs(zm) + zm.imag)
    for place in range(0, len(zm), len(zm) // 20):
        greatest_checked(zm[place], za[place], greatest[place])
    turn = 2 * math.pi * hertz
    reactance = 1 / (turn * micro * 1e-6)
    im, plain, kit = volts / zm, volts / (za + device), volts / (za - 1j * reactance)
    spreads = {
        "right angle": 1e6 / (turn * right),
        "greatest torque": 1e6 / (turn * greatest),
        "torque": torque(im, kit) / torque(im, plain),
        "line": abs(im + kit),
        "capacitor volts": abs(kit) * reactance,
    }
    return {
        "name": name,
        "main": main,
        "start": start,
        "device": device,
        "volts": volts,
        "hertz": hertz,
        "main alone": main_alone,
        "with start": with_start,
        "microfarads": micro,
        **{key: percentiles(values, weight) for key, values in spreads.items()},
    }


def figures():
    return {
        "source": "numpy, 1,000,000 draws a case",
        "percents": PERCENTS,
        "cases": [case(number, *one) for number, one in enumerate(CASES)],
    }


write_or_check(__file__, figures())
