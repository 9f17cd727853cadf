"""A refrigerant circuit started from rest and stopped again, integrated by SciPy's LSODA.

Writes simulator_circuit.json; with --check, compares the file with figures made anew.

The equations are those that crates/simulator/src/circuit/flow.rs states in its words, written a
second time; the properties are the curves in simulator_saturation.json. Metal of evaporator and
condenser meets air of a fixed temperature, the shell the room.
"""

import json
import math
import pathlib

import numpy as np
from kept import write_or_check
from scipy.integrate import solve_ivp

ZERO = 273.15
KEPT = json.loads(pathlib.Path(__file__).with_name("simulator_saturation.json").read_text())

SIZES = {
    "displacement": 7.4e-6,
    "clearance": 0.02,
    "tightness": 0.9,
    "back leak": 0.0,
    "indicated efficiency": 0.72,
    "shell volume": 1.5e-3,
    "condenser volume": 1.8e-4,
    "film": 0.15,
    "condenser inner": 85.0,
    "opening": 2.2e-8,
    "suction exchange": 0.8,
    "evaporator volume": 3e-4,
    "wetting": 0.12,
    "evaporator inner": 60.0,
}
# Turns a second, W of heat in the shell while it turns; J/K and W/K of metal to its air; °C.
BENCH = {
    "speed": 48.5,
    "drive heat": 30.0,
    "evaporator metal": 3000.0,
    "condenser metal": 3300.0,
    "shell metal": 3700.0,
    "evaporator air": 13.0,
    "condenser air": 11.0,
    "shell air": 0.8,
    "cold": -18.0,
    "room": 25.0,
}
RUN, REST = 1500.0, 600.0


class Kind:
    def __init__(self, name, charge, scale):
        self.name, self.charge = name, charge
        self.size = {**SIZES, "displacement": SIZES["displacement"] * scale}
        self.curves = KEPT["curves"][name]
        self.mass, self.heat, self.exponent = KEPT["molar mass, vapour heat, exponent"][name]

    def curve(self, key, x):
        middle, half, *coefficients = self.curves[key]
        scaled = (x - middle) / half
        inside = min(max(scaled, -1.0), 1.0)
        powers = np.polynomial.polynomial
        value = powers.polyval(inside, coefficients)
        return value + powers.polyval(inside, powers.polyder(coefficients)) * (scaled - inside)

    def boils(self, pressure):
        return 1000 / min(max(self.curve("temperature of pressure", math.log(pressure)), 2), 30) - ZERO

    def liquid(self, celsius):
        return self.curve("liquid density", clamp(celsius))

    def latent(self, celsius):
        return self.curve("latent heat", clamp(celsius))

    def enthalpy(self, celsius):
        return self.curve("liquid enthalpy", clamp(celsius))

    def pressure(self, density_kelvin):
        return math.exp(self.curve("pressure of vapour", math.log(max(density_kelvin, 1e-9))))


def clamp(celsius):
    return min(max(celsius, -60.0), 85.0)


def share(x):
    return min(max(x, 0.0), 1.0)


def root(difference):
    return difference / math.sqrt(abs(difference) + 2e3)


def rates(kind, state, speed):
    """State: kg of vapour and liquid low and high, then °C of three lengths, condenser, shell."""
    s, b = kind.size, BENCH
    vl, ll, vh, lh, *lengths, condenser, shell = state
    mean = sum(lengths) / 3
    low_volume = max(s["evaporator volume"] - max(ll, 0) / kind.liquid(mean), 0.05 * s["evaporator volume"])
    low_volume += s["shell volume"] * (mean + ZERO) / (shell + ZERO)
    high_volume = max(s["condenser volume"] - max(lh, 0) / kind.liquid(condenser), 0.05 * s["condenser volume"])
    low_density, high_density = vl / low_volume, vh / high_volume
    low = kind.pressure(low_density * (mean + ZERO))
    high = kind.pressure(high_density * (condenser + ZERO))
    cold, warm = kind.boils(low), kind.boils(high)
    # Condenser.
    full = s["condenser volume"] * kind.liquid(warm)
    flooded = min(max((lh / full - s["film"]) / (1 - s["film"]), 0), 0.97)
    area = 1 - flooded if warm > condenser else share(lh / (s["film"] * full))
    condensing = area * s["condenser inner"] * (warm - condenser) / kind.latent(warm)
    inlet = warm - (0.15 + 0.8 * flooded) * max(warm - b["room"], 0)
    # Capillary behind a drier of six times its opening.
    opening = s["opening"] * 6 / math.hypot(1, 6)
    dense = kind.liquid(inlet)
    seal = share(lh / (s["condenser volume"] * s["film"] * dense))
    if high >= low:
        mixed = seal * dense + (1 - seal) * high_density
        flow = opening * math.sqrt(2 * mixed) * root(high - max(low, 0.3 * high))
        liquid = flow * seal * dense / mixed
        vapour = flow - liquid
    else:
        liquid, vapour = 0.0, opening * math.sqrt(2 * low_density) * root(high - low)
    # Pump.
    latent = kind.latent(cold)
    brought = liquid * max(kind.enthalpy(inlet) - kind.enthalpy(cold), 0)
    wet = [share(3 * max(ll, 0) / wetting(kind, -25.0) - k) for k in range(3)]
    gas, rises = cold, []
    for k in range(3):
        rises.append(0.9 * (1 - wet[k]) * (lengths[k] - gas))
        gas += rises[-1]
    filling = wetting(kind, cold)
    carried = 0.5 * share((ll / filling - 1 - 0.2) / 0.3)
    ratio = max(high / low, 1.0)
    expanded = s["clearance"] * (ratio ** (1 / kind.exponent) - 1)
    filled = speed * s["displacement"] * max(1 - expanded, 0)
    at = lambda celsius: low_density * (mean + ZERO) / (celsius + ZERO)
    rough = filled * s["tightness"] * at(gas)
    reach = s["suction exchange"] * max(inlet - gas, 0)
    each = min(rough * kind.heat * reach, 0.9 * brought) / rough if rough > 0 else 0.0
    suction = gas + max(each - carried * latent, 0) / kind.heat
    drawn = suction + 0.6 * (shell - suction)
    mass = filled * s["tightness"] * at(drawn)
    power = (kind.exponent - 1) / kind.exponent
    work = filled * s["tightness"] * low * (ratio**power - 1) / power / s["indicated efficiency"]
    flash = max(brought - mass * each, 0) / latent
    shell_heat = mass * (kind.heat * (drawn - suction) + max(carried * latent - each, 0))
    # Evaporator.
    boiling, heats = [], []
    for k in range(3):
        over = lengths[k] - cold
        heat = (wet[k] if over > 0 else 1.0) * s["evaporator inner"] / 3 * over
        boiling.append(heat / latent)
        heats.append(heat + mass * kind.heat * rises[k])
    made = sum(boiling) + carried * mass + flash
    given = sum(heats) + shell_heat + work - kind.latent(-25.0) * (made - condensing)
    warmth = [
        (b["evaporator air"] / 3 * (b["cold"] - lengths[k]) - heats[k]) / (b["evaporator metal"] / 3)
        for k in range(3)
    ]
    to_room = b["condenser air"] * (1 - 0.85 * flooded) * (condenser - b["room"])
    drive = b["drive heat"] if speed > 0 else 0.0
    change = [
        made + vapour - mass,
        liquid - made,
        mass - vapour - condensing,
        condensing - liquid,
        *warmth,
        (given - to_room) / b["condenser metal"],
        (drive - shell_heat - b["shell air"] * (shell - b["room"])) / b["shell metal"],
    ]
    return change, (low, high)


def wetting(kind, celsius):
    return kind.size["evaporator volume"] * kind.size["wetting"] * kind.liquid(celsius)


def course(kind):
    cold, room = BENCH["cold"], BENCH["room"]
    start = [0.08 * kind.charge, 0.9 * kind.charge, 0.02 * kind.charge, 0.0, cold, cold, cold, room, room]
    rows, state = [], np.array(start)
    for seconds, speed in ((RUN, BENCH["speed"]), (REST, 0.0)):
        times = np.arange(60.0, seconds + 1, 60.0)
        solved = solve_ivp(
            lambda t, y: rates(kind, y, speed)[0],
            (0, seconds),
            state,
            method="LSODA",
            t_eval=times,
            rtol=1e-9,
            atol=[1e-12] * 4 + [1e-8] * 5,
        )
        for column in solved.y.T:
            low, high = rates(kind, column, speed)[1]
            rows.append([float(f"{x:.6g}") for x in (low, high, column[1], column[3], *column[4:])])
        state = solved.y[:, -1]
    return {"refrigerant": kind.name, "charge": kind.charge, "sizes": kind.size, "start": start, "rows": rows}


write_or_check(
    __file__,
    {
        "source": "SciPy 1.17.1, LSODA at a relative tolerance of 1e-9",
        "bench": BENCH,
        "seconds running, at rest": [RUN, REST],
        "columns": ["Pa low", "Pa high", "kg liquid low", "kg liquid high", "inlet", "middle", "end", "condenser", "shell"],
        "cases": [
            course(Kind("R600a", 0.044, 1.0)),
            course(Kind("R600a", 0.024, 1.0)),
            course(Kind("R600a", 0.064, 1.0)),
            course(Kind("R134a", 0.100, 0.55)),
            course(Kind("R290", 0.046, 0.33)),
        ],
    },
)
