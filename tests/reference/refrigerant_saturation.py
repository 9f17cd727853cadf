"""Saturation pressures of five refrigerants by CoolProp, and Wagner equations fitted to them.

Writes refrigerant_saturation.json; with --check, compares the file with figures made anew.

CoolProp: I. H. Bell et al., Ind. Eng. Chem. Res. 53 (2014) 2498; pressure of the saturated liquid.
The equation is W. Wagner's (Cryogenics 13 (1973) 470) with the exponents 1, 1.5, 2.5 and 5:
ln(p/pc) = Tc/T * sum(a * (1 - T/Tc)^exponent), fitted by least squares over -55 to +75 C.
measure::refrigerant holds the same constants. The figures of each case are CoolProp's own.
"""

import math

import numpy as np
from CoolProp.CoolProp import PropsSI
from kept import write_or_check

REFRIGERANTS = {"R12": "R12", "R22": "R22", "R134a": "R134a", "R600a": "IsoButane", "R290": "n-Propane"}
EXPONENTS = [1.0, 1.5, 2.5, 5.0]
ZERO = 273.15
# Chebyshev's nodes: the error is even over the range.
NODES = [10 + 65 * math.cos(math.pi * (k + 0.5) / 80) for k in range(80)]


def pressure(name, celsius):
    return PropsSI("P", "T", celsius + ZERO, "Q", 0, name)


def fitted(name):
    """Critical temperature in K, critical pressure in Pa, molar mass in kg/mol, coefficients."""
    critical, highest = round(PropsSI("Tcrit", name), 3), round(PropsSI("Pcrit", name), -2)
    kelvin = np.array(NODES) + ZERO
    left = np.array([math.log(pressure(name, celsius) / highest) for celsius in NODES])
    missing = 1 - kelvin / critical
    powers = np.stack([missing**exponent for exponent in EXPONENTS], axis=1)
    coefficients, *_ = np.linalg.lstsq(powers, left * kelvin / critical, rcond=None)
    molar = PropsSI("M", name)
    return [critical, highest, *(float(f"{value:.7g}") for value in (molar, *coefficients))]


def figures():
    air = {short: PropsSI("T", "P", 101325, "Q", 0, name) - ZERO for short, name in REFRIGERANTS.items()}
    return {
        "source": "CoolProp 8.0.0",
        "constants": {short: fitted(name) for short, name in REFRIGERANTS.items()},
        "boiling points": air,
        "cases": [
            {"refrigerant": short, "celsius": celsius, "pressure": pressure(name, celsius)}
            for short, name in REFRIGERANTS.items()
            for celsius in np.arange(-50.0, 70.1, 2.5).tolist()
        ],
    }


write_or_check(__file__, figures())
