"""Saturation properties of three refrigerants by CoolProp, and smooth curves fitted to them.

Writes simulator_saturation.json; with --check, compares the file with figures made anew.

CoolProp: I. H. Bell et al., Ind. Eng. Chem. Res. 53 (2014) 2498. Each curve is a polynomial of
degree 6 in a variable that runs from -1 to 1 over -50 to +80 C of saturation; the simulator holds
the same coefficients. The figures of each case are CoolProp's own, not the fit's.
"""

import math

import numpy as np
from CoolProp.CoolProp import PropsSI
from kept import write_or_check
from scipy.optimize import brentq

REFRIGERANTS = {"R134a": "R134a", "R600a": "IsoButane", "R290": "n-Propane"}
DEGREE = 6
ZERO = 273.15
# Fitted on the nodes of Chebyshev, so that the error is even over the range.
NODES = [15 + 65 * math.cos(math.pi * (k + 0.5) / 60) for k in range(60)] + [-50.0, 80.0]


def saturated(name, celsius):
    kelvin = celsius + ZERO
    get = lambda what, quality: PropsSI(what, "T", kelvin, "Q", quality, name)
    liquid, vapour = get("H", 0), get("H", 1)
    return {
        "celsius": celsius,
        "pressure": get("P", 0),
        "vapour density": get("D", 1),
        "liquid density": get("D", 0),
        "latent heat": vapour - liquid,
        "liquid enthalpy": liquid - PropsSI("H", "T", ZERO, "Q", 0, name),
    }


def curve(x, y):
    """Middle and half width of x, then the coefficients from the constant upwards."""
    middle, half = (max(x) + min(x)) / 2, (max(x) - min(x)) / 2
    scaled = (np.array(x) - middle) / half
    coefficients = np.polynomial.polynomial.polyfit(scaled, np.array(y), DEGREE)
    return [float(f"{value:.12g}") for value in (middle, half, *coefficients)]


def curves(name):
    rows = [saturated(name, celsius) for celsius in NODES]
    celsius = [row["celsius"] for row in rows]
    inverse = [1000 / (row["celsius"] + ZERO) for row in rows]
    pressure = [math.log(row["pressure"]) for row in rows]
    # Density times temperature: what stays of the gas law when the gas is not ideal.
    warmth = [math.log(row["vapour density"] * (row["celsius"] + ZERO)) for row in rows]
    return {
        "pressure of temperature": curve(inverse, pressure),
        "temperature of pressure": curve(pressure, inverse),
        "vapour of pressure": curve(pressure, warmth),
        "pressure of vapour": curve(warmth, pressure),
        "liquid density": curve(celsius, [row["liquid density"] for row in rows]),
        "latent heat": curve(celsius, [row["latent heat"] for row in rows]),
        "liquid enthalpy": curve(celsius, [row["liquid enthalpy"] for row in rows]),
    }


def constants(name):
    """Vapour between -25 C saturated and 45 C, as a freezer's compressor meets it."""
    low = PropsSI("P", "T", ZERO - 25, "Q", 1, name)
    high = PropsSI("P", "T", ZERO + 45, "Q", 1, name)
    start = PropsSI("H", "P", low, "Q", 1, name)
    warm = PropsSI("H", "P", low, "T", ZERO + 40, name)
    suction = PropsSI("H", "P", low, "T", ZERO + 25, name)
    entropy = PropsSI("S", "P", low, "T", ZERO + 25, name)
    density = PropsSI("D", "P", low, "T", ZERO + 25, name)
    work = PropsSI("H", "P", high, "S", entropy, name) - suction

    def excess(k):
        share = (k - 1) / k
        return low / density / share * ((high / low) ** share - 1) - work

    return [
        float(f"{value:.10g}")
        for value in (
            PropsSI("M", name),
            (warm - start) / 65,
            brentq(excess, 1.001, 1.6),
        )
    ]


def figures():
    return {
        "source": "CoolProp 8.0.0",
        "curves": {short: curves(name) for short, name in REFRIGERANTS.items()},
        "molar mass, vapour heat, exponent": {
            short: constants(name) for short, name in REFRIGERANTS.items()
        },
        "cases": [
            {"refrigerant": short, **saturated(name, float(celsius))}
            for short, name in REFRIGERANTS.items()
            for celsius in range(-50, 81, 5)
        ],
    }


write_or_check(__file__, figures())
