"""Power that a reciprocating compressor takes between two temperatures of saturation, by CoolProp.

Writes compressor_power.json; with --check, compares the file with figures made anew.

CoolProp: I. H. Bell et al., Ind. Eng. Chem. Res. 53 (2014) 2498. Per swept volume: density of the
gas drawn in at 32.2 C, times its isentropic rise of enthalpy, times the share of the sweep that is
drawn in beside a dead space of 2.5 % that expands isentropically. Each case is a share of that at
-23.3/54.4 C. The exponent of a perfect gas that comes closest (least greatest error of the logarithm)
is fitted; measure::refrigerant holds the same exponents.
"""

import numpy as np
from CoolProp.CoolProp import PropsSI
from kept import write_or_check
from scipy.optimize import minimize_scalar

REFRIGERANTS = {"R12": "R12", "R22": "R22", "R134a": "R134a", "R600a": "IsoButane", "R290": "n-Propane"}
ZERO, DEAD_SPACE, SUCTION = 273.15, 0.025, 32.2
RATING = (-23.3, 54.4)
POINTS = [(cold, warm) for cold in range(-45, 6, 5) for warm in range(20, 61, 5)]


def pressures(name, cold, warm):
    return [PropsSI("P", "T", celsius + ZERO, "Q", 1, name) for celsius in (cold, warm)]


def real(name, cold, warm):
    low, high = pressures(name, cold, warm)
    drawn = ("T", SUCTION + ZERO, "P", low, name)
    density, enthalpy, entropy = (PropsSI(what, *drawn) for what in ("D", "H", "S"))
    squeezed = ("P", high, "S", entropy, name)
    left_behind = DEAD_SPACE * (PropsSI("D", *squeezed) / density - 1)
    return density * (PropsSI("H", *squeezed) - enthalpy) * (1 - left_behind)


def perfect(name, cold, warm, exponent):
    low, high = pressures(name, cold, warm)
    ratio, part = high / low, (exponent - 1) / exponent
    return low / part * (ratio**part - 1) * (1 - DEAD_SPACE * (ratio ** (1 / exponent) - 1))


def shares(name):
    rated = real(name, *RATING)
    return [real(name, *point) / rated for point in POINTS]


def fitted(name, expected):
    def worst(exponent):
        rated = perfect(name, *RATING, exponent)
        found = [perfect(name, *point, exponent) / rated for point in POINTS]
        return float(np.abs(np.log(np.array(found) / expected)).max())

    found = minimize_scalar(worst, bounds=(1.01, 1.4), method="bounded", options={"xatol": 1e-9})
    return round(float(found.x), 4)


def figures():
    all_shares = {short: shares(name) for short, name in REFRIGERANTS.items()}
    return {
        "source": "CoolProp 8.0.0",
        "exponents": {short: fitted(REFRIGERANTS[short], np.array(found)) for short, found in all_shares.items()},
        "cases": [
            {"refrigerant": short, "evaporating": cold, "condensing": warm, "share": share}
            for short, found in all_shares.items()
            for (cold, warm), share in zip(POINTS, found)
        ],
    }


write_or_check(__file__, figures())
