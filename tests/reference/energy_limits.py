"""The greatest energy allowed by 10 CFR 430.32(a), and the error of short meterings.

Writes energy_limits.json; with --check, compares the file with figures made anew.

Limits are worked out in exact decimal arithmetic and rounded half up, from slopes and intercepts
stated here as text: at 1993-01-01, 2001-07-01, 2014-09-15, and 2029 or 2030 (89 FR 3026, 89 FR 50205).
Of the rule excerpts have been seen; the rest, and the factors of adjusted volume (10 CFR 430
subpart B appendices A and B), is from memory.

The error of a metering is that of a normal distribution with the share within a tenth that L. Kinney
gives (Home Energy, September/October 2000, table 1), interpolated in logarithms with numpy.
"""

from decimal import ROUND_HALF_UP, Decimal

import numpy as np
from kept import write_or_check
from scipy.stats import norm

# kWh a year = slope * AV + intercept, by class.
LINES = {
    "1": [("13.50", "299.0"), ("8.82", "248.4"), ("7.99", "225.0"), ("6.79", "191.3")],
    "1A": [None, None, ("6.79", "193.6"), ("5.77", "164.6")],
    "2": [("10.40", "398.0"), ("8.82", "248.4"), ("7.99", "225.0"), ("6.79", "191.3")],
    "3": [("16.00", "355.0"), ("9.80", "276.0"), ("8.07", "233.7"), ("6.86", "198.6")],
    "3A": [("16.00", "355.0"), ("9.80", "276.0"), ("7.07", "201.6"), ("6.01", "171.4")],
    "4": [("11.80", "501.0"), ("4.91", "507.5"), ("8.51", "297.8"), ("7.28", "254.9")],
    "5": [("16.50", "367.0"), ("4.60", "459.0"), ("8.85", "317.0"), ("7.61", "272.6")],
    "5A": [None, None, ("9.25", "475.4"), ("7.76", "351.9")],
    "6": [("17.60", "391.0"), ("10.20", "356.0"), ("8.40", "385.4"), ("7.14", "280.0")],
    "7": [("16.30", "527.0"), ("10.10", "406.0"), ("8.54", "432.8"), ("7.31", "322.5")],
    "8": [("10.30", "264.0"), ("7.55", "258.3"), ("5.57", "193.7"), ("5.57", "193.7")],
    "9": [("14.90", "391.0"), ("12.43", "326.1"), ("8.62", "228.3"), ("7.33", "194.1")],
    "10": [("11.00", "160.0"), ("9.88", "143.7"), ("7.29", "107.8"), ("7.29", "107.8")],
    "10A": [None, None, ("10.24", "148.1"), ("10.24", "148.1")],
    "11": [None, ("10.70", "299.0"), ("9.03", "252.3"), ("7.68", "214.5")],
    "11A": [None, None, ("7.84", "219.1"), ("6.66", "186.2")],
    "12": [None, ("7.00", "398.0"), ("5.91", "335.8"), ("5.32", "302.2")],
    "13": [None, ("12.70", "355.0"), ("11.80", "339.2"), ("10.62", "305.3")],
    "13A": [None, None, ("9.17", "259.3"), ("8.25", "233.4")],
    "14": [None, ("7.60", "501.0"), ("6.82", "456.9"), ("6.14", "411.2")],
    "15": [None, ("13.10", "367.0"), ("11.80", "339.2"), ("10.62", "305.3")],
    "16": [None, ("9.78", "250.8"), ("8.65", "225.7"), ("7.35", "191.8")],
    "17": [None, ("11.40", "391.0"), ("10.17", "351.9"), ("9.15", "316.7")],
    "18": [None, ("10.45", "152.0"), ("9.25", "136.8"), ("7.86", "107.8")],
    "3-BI": [None, None, ("9.15", "264.9"), ("8.24", "238.4")],
    "3A-BI": [None, None, ("8.02", "228.5"), ("7.22", "205.7")],
    "4-BI": [None, None, ("10.22", "357.4"), ("8.79", "307.4")],
    "5-BI": [None, None, ("9.40", "336.9"), ("8.65", "309.9")],
    "5A-BI": [None, None, ("9.83", "499.9"), ("8.21", "370.7")],
    "7-BI": [None, None, ("10.25", "502.6"), ("8.82", "384.1")],
    "9-BI": [None, None, ("9.86", "260.9"), ("9.37", "247.9")],
    "9A-BI": [None, None, None, ("9.86", "288.9")],
}
ERAS = ["1993", "2001", "2014", "2029"]
# Frozen volume counts so much: before 2014, since.
COUNTS = {"refrigerator-freezer": ("1.63", "1.76"), "freezer": ("1.73", "1.76"),
          "basic-refrigerator": ("1.44", "1.47"), "all-refrigerator": ("1.44", "1.00")}
FREEZERS = {"8", "9", "10", "10A", "16", "17", "18", "9-BI", "9A-BI"}
COMPACT = {"11", "11A", "12", "13", "13A", "14", "15", "16", "17", "18"}
ICEMAKERS = {"3", "4", "5", "9", "13", "14", "15", "3-BI", "4-BI", "5-BI", "9-BI"}
# Cubic feet of fresh and of frozen food.
FULL = [("13.5", "4.5"), ("9.25", "3.75"), ("22.1", "8.4")]
SMALL = [("3.1", "1.2"), ("4.4", "0.35")]
FREEZER = [("0", "10"), ("0", "14"), ("0", "20")]
SMALL_FREEZER = [("0", "5"), ("0", "7")]


def kind(number):
    if number in FREEZERS:
        return "freezer"
    return "all-refrigerator" if number in {"1A", "3A", "11A", "13A", "3A-BI"} else "refrigerator-freezer"


def volumes(number):
    if number in FREEZERS:
        return SMALL_FREEZER if number in COMPACT else FREEZER
    return SMALL if number in COMPACT else FULL


def limit(number, era, made_of, fresh, frozen, icemaker):
    line = LINES[number][era]
    if line is None:
        return None
    slope, intercept = map(Decimal, line)
    adjusted = Decimal(fresh) + Decimal(COUNTS[made_of][era >= 2]) * Decimal(frozen)
    year = slope * adjusted + intercept
    if icemaker and number in ICEMAKERS:
        year += {2: Decimal(84), 3: Decimal(28)}.get(era, Decimal(0))
    return int(year.quantize(Decimal(1), rounding=ROUND_HALF_UP))


def cases():
    for number in LINES:
        kinds = [kind(number)] + (["basic-refrigerator"] if number in {"1", "11"} else [])
        for made_of in kinds:
            for fresh, frozen in volumes(number):
                for icemaker in (False, True):
                    for era, name in enumerate(ERAS):
                        yield {"class": number, "made of": made_of, "fresh": float(fresh), "frozen": float(frozen),
                               "icemaker": icemaker, "era": name,
                               "limit": limit(number, era, made_of, fresh, frozen, icemaker)}


# Volumes whose limit lies on a half, to be rounded up.
def halves():
    for number in ("1", "8", "10"):
        for era in range(4):
            slope, intercept = map(Decimal, LINES[number][era])
            factor = Decimal(COUNTS[kind(number)][era >= 2])
            for tenths in range(80, 300):
                volume = Decimal(tenths) / 10
                fresh, frozen = (Decimal(0), volume) if kind(number) == "freezer" else (volume, Decimal(0))
                if (slope * (fresh + factor * frozen) + intercept) % 1 == Decimal("0.5"):
                    yield {"class": number, "made of": kind(number), "fresh": float(fresh), "frozen": float(frozen),
                           "icemaker": False, "era": ERAS[era],
                           "limit": limit(number, era, kind(number), fresh, frozen, False)}


def metering():
    table = np.array([(60, 17.5), (90, 25.9), (120, 34.5), (180, 89.4)])
    deviations = 0.1 / norm.ppf((1 + table[:, 1] / 100) / 2)
    for minutes in (60, 75, 90, 100, 120, 150, 180):
        error = np.exp(np.interp(np.log(minutes), np.log(table[:, 0]), np.log(deviations)))
        yield [minutes, float(error)]


if __name__ == "__main__":
    write_or_check(__file__, {
        "source": "decimal arithmetic and SciPy (tests/reference/energy_limits.py)",
        "metering": list(metering()),
        "cases": [*cases(), *halves()],
    })
