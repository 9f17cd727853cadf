"""Starts of a compressor, integrated by SciPy's LSODA on the same physics, written down again.

Writes simulator_starts.json; with --check, compares the file with figures made anew.

The circuit is solved as three equations (pins, main, start) instead of two; the crank's angle, the
speed and all temperatures are one system of differential equations with small adaptive steps; the
cylinder's valves open and close at events. Only starts that never turn back are taken.
"""

import cmath
import math

import numpy as np
from kept import write_or_check
from scipy.integrate import solve_ivp

TOLERANCE = {"rtol": 1e-10, "atol": 1e-11}
MASK = 2**64 - 1

MOTORS = {
    "115": {
        "volts": 115.0, "hertz": 60.0, "main": 5 + 6j, "start": 10 + 4j,
        "rotor": 3.8 + 4.5j, "gap": 240.0, "iron": 1200.0, "ptc": 5.0, "locked_amps": 8.5,
    },
    "230": {
        "volts": 230.0, "hertz": 50.0, "main": 18 + 24j, "start": 24 + 16j,
        "rotor": 16 + 20j, "gap": 900.0, "iron": 4800.0, "ptc": 15.0, "locked_amps": 4.2,
    },
}
PTC = {"rise": 3000.0, "switch": 120.0, "steepness": 9.0, "capacity": 1.0, "cooling": 0.022}
ROTOR = {
    "inertia": 1.0 * 0.022**2, "dry": 0.015, "oil": 0.012 / (2 * math.pi * 50),
    "displacement": 6e-6, "clearance": 0.03, "exponent": 1.1,
}
HEAT = {
    "main": 135.0, "start": 50.0, "core": 1500.0, "shell": 2500.0, "main_to_core": 4.0,
    "start_to_core": 2.0, "core_to_shell": 3.0, "shell_to_room": 1.6, "gas_share": 0.3,
}
DISC = {"opens": 107.0, "capacity": 1.5, "cooling": 0.025}
CASES = [
    {"motor": "115", "low": 4.0e5, "high": 4.0e5, "seed": 1},
    {"motor": "115", "low": 3.8e5, "high": 4.3e5, "seed": 3},
    {"motor": "115", "low": 4.0e5, "high": 4.0e5, "seed": 4, "run_capacitor": 10.0},
    {"motor": "115", "low": 3.0e5, "high": 5.0e5, "seed": 5, "kit": 150.0},
    {"motor": "230", "low": 4.0e5, "high": 4.0e5, "seed": 6, "cord": 2.5},
    {"motor": "230", "low": 3.6e5, "high": 4.6e5, "seed": 12},
    {"motor": "115", "low": 4.0e5, "high": 4.0e5, "seed": 8, "dry": 10.0},
    {"motor": "230", "low": 4.0e5, "high": 4.0e5, "seed": 9, "dry": 10.0},
]
ROOM, GAS = 25.0, 0.3
SPEED, ANGLE, MAIN, START, CORE, SHELL, PLATE = range(7)
PELLETS = 7


def resting_angle(seed):
    """The first share of SplitMix64 from a seed, of a whole turn."""
    state = (seed + 0x9E3779B97F4A7C15) & MASK
    state = ((state ^ (state >> 30)) * 0xBF58476D1CE4E5B9) & MASK
    state = ((state ^ (state >> 27)) * 0x94D049BB133111EB) & MASK
    return 2 * math.pi * ((state ^ (state >> 31)) >> 11) / 2**53


def pellet_ohms(cold, celsius):
    decades = math.log(PTC["rise"])
    offset = math.log(decades / math.log(2) - 1)
    x = (celsius - PTC["switch"]) / PTC["steepness"] - offset
    return cold * math.exp(decades / (1 + math.exp(-x)))


class Machine:
    def __init__(self, case):
        self.case = case
        self.motor = MOTORS[case["motor"]]
        self.line = 0.2 + case.get("cord", 0.1)
        self.disc_ohms = 9.6 / self.motor["locked_amps"] ** 2
        self.dry = case.get("dry", ROTOR["dry"])
        self.locked = self.dry > 1
        # Each branch: cold ohms of its pellet or None, and the impedance in series.
        reactance = lambda farads: 1 / (2 * math.pi * self.motor["hertz"] * farads)
        self.branches = [(self.motor["ptc"], 0)]
        if "run_capacitor" in case:
            x = reactance(case["run_capacitor"] * 1e-6)
            self.branches.append((None, 0.05 + 0.002 * x - 1j * x))
        if "kit" in case:
            x = reactance(case["kit"] * 1e-6)
            self.branches.append((self.motor["ptc"], 0.1 * x - 1j * x))
        self.pellets = [cold for cold, _ in self.branches if cold is not None]

    def branch_impedances(self, state):
        hot = iter(state[PELLETS:])
        return [
            rest + (pellet_ohms(cold, next(hot)) if cold is not None else 0)
            for cold, rest in self.branches
        ]

    def circuit(self, state):
        """Currents, torque, powers and volts across the gear at a state."""
        motor, copper = self.motor, lambda t: (234.5 + t) / 259.5
        field_speed = 2 * math.pi * motor["hertz"]
        slip = 1 - state[SPEED] / field_speed
        rotor = motor["rotor"].real * (225.0 + state[CORE]) / 250.0

        def field(s):
            cage = complex(rotor / s, motor["rotor"].imag) if s else complex("inf")
            return 1 / (1 / (1j * motor["gap"]) + 1 / cage)

        forward, backward = field(slip), field(2 - slip)
        a, b = (forward + backward) / 2, (forward - backward) / 2
        main_ohms = motor["main"].real * copper(state[MAIN])
        start_ohms = motor["start"].real * copper(state[START])
        gear = 1 / sum(1 / z for z in self.branch_impedances(state))
        line = self.line + self.disc_ohms
        matrix = [
            [1 + line / motor["iron"], line, line],
            [-1, main_ohms + 1j * motor["main"].imag + a, -1j * b],
            [-1, 1j * b, start_ohms + 1j * motor["start"].imag + gear + a],
        ]
        pins, main, start = np.linalg.solve(matrix, [motor["volts"], 0, 0])
        with_it = abs(main - 1j * start) ** 2 * forward.real / 2
        against = abs(main + 1j * start) ** 2 * backward.real / 2
        return {
            "main": main, "start": start, "line": main + start + pins / motor["iron"],
            "gear_volts": abs(start * gear), "torque": (with_it - against) / field_speed,
            "main_heat": abs(main) ** 2 * main_ohms, "start_heat": abs(start) ** 2 * start_ohms,
            "core_heat": abs(pins) ** 2 / motor["iron"]
            + slip * with_it + (2 - slip) * against,
        }

    def gas_torque(self, angle, phase):
        low, high = self.case["low"], self.case["high"]
        pressure = {"suction": low, "discharge": high}.get(phase[0])
        if pressure is None:
            pressure = phase[1] * (phase[2] / volume(angle)) ** ROTOR["exponent"]
        return (pressure - low) * ROTOR["displacement"] / 2 * math.sin(angle)

    def rate(self, state, phase):
        now = self.circuit(state)
        speed = state[SPEED]
        gas = self.gas_torque(state[ANGLE], phase)
        friction = self.dry + ROTOR["oil"] * speed
        rates = np.zeros(len(state))
        if not self.locked:
            rates[SPEED] = (now["torque"] + gas - friction) / ROTOR["inertia"]
            rates[ANGLE] = speed
        main, start, core, shell = state[MAIN:PLATE]
        to_core = HEAT["main_to_core"] * (main - core), HEAT["start_to_core"] * (start - core)
        to_shell = HEAT["core_to_shell"] * (core - shell)
        work = 0 if self.locked else friction * speed - gas * speed * HEAT["gas_share"]
        rates[MAIN] = (now["main_heat"] - to_core[0]) / HEAT["main"]
        rates[START] = (now["start_heat"] - to_core[1]) / HEAT["start"]
        rates[CORE] = now["core_heat"] + sum(to_core) - to_shell - GAS * (core - ROOM)
        rates[CORE] /= HEAT["core"]
        rates[SHELL] = (work + to_shell - HEAT["shell_to_room"] * (shell - ROOM)) / HEAT["shell"]
        around = (ROOM + shell) / 2
        heat = abs(now["line"]) ** 2 * self.disc_ohms
        rates[PLATE] = (heat - DISC["cooling"] * (state[PLATE] - around)) / DISC["capacity"]
        place = PELLETS
        for (cold, _), z in zip(self.branches, self.branch_impedances(state)):
            if cold is not None:
                ohms = pellet_ohms(cold, state[place])
                heat = (now["gear_volts"] / abs(z)) ** 2 * ohms
                lost = PTC["cooling"] * (state[place] - around)
                rates[place] = (heat - lost) / PTC["capacity"]
                place += 1
        return rates


def volume(angle):
    return ROTOR["clearance"] + (1 - math.cos(angle)) / 2


def events_of(machine, phase):
    """Function, direction and the phase that follows, for each way out of a phase."""
    low, high, n = machine.case["low"], machine.case["high"], ROTOR["exponent"]
    if low >= high or machine.locked:
        return []
    if phase[0] == "closed":
        pressure = lambda s: phase[1] * (phase[2] / volume(s[ANGLE])) ** n
        return [
            (lambda t, s: pressure(s) / high - 1, 1, lambda s: ("discharge",)),
            (lambda t, s: pressure(s) / low - 1, -1, lambda s: ("suction",)),
        ]
    held = {"discharge": high, "suction": low}[phase[0]]
    direction = {"discharge": 1, "suction": -1}[phase[0]]
    after = lambda s: ("closed", held, volume(s[ANGLE]))
    return [(lambda t, s: math.sin(s[ANGLE]), direction, after)]


def integrate(machine, end):
    """Time and state at every moment asked for, and when things happened."""
    angle = resting_angle(machine.case["seed"])
    state = np.array([0.0, angle] + [ROOM] * (5 + len(machine.pellets)))
    low = machine.case["low"]
    opens = math.sin(angle) > 0 or low >= machine.case["high"]
    phase = ("suction",) if opens else ("closed", low, volume(angle))
    up = 0.75 * 2 * math.pi * machine.motor["hertz"]
    hot = lambda s: min(
        pellet_ohms(cold, t) - 16 * pellet_ohms(cold, 25.0)
        for cold, t in zip(machine.pellets, s[PELLETS:])
    )
    noticed = {
        "time_to_speed": (lambda t, s: s[SPEED] - up, 1),
        "let_go": (lambda t, s: hot(s), 1),
        "tripped": (lambda t, s: s[PLATE] - DISC["opens"], 1),
    }
    found, pieces, time = {}, [], 0.0
    while time < end:
        ways = events_of(machine, phase)
        events = [event(f, d, True) for f, d, _ in ways]
        events += [event(f, d, name == "tripped") for name, (f, d) in noticed.items()]
        run = solve_ivp(
            lambda t, s: machine.rate(s, phase), (time, end), state, method="LSODA",
            dense_output=True, events=events, max_step=0.005 if not machine.locked else 0.1,
            **TOLERANCE,
        )
        pieces.append((time, run.t[-1], run.sol))
        if min(run.y[SPEED]) < -1e-9:
            raise SystemExit(f"{machine.case} turns back")
        for name, times in zip(noticed, run.t_events[len(ways):]):
            if len(times):
                found.setdefault(name, float(times[0]))
        time, state = run.t[-1], run.y[:, -1]
        if "tripped" in found:
            break
        for (_, _, after), times in zip(ways, run.t_events):
            if len(times):
                phase = after(state)
    return found, pieces


def event(function, direction, terminal):
    wrapped = lambda t, s: function(t, s)
    wrapped.direction, wrapped.terminal = direction, terminal
    return wrapped


def sample(machine, pieces, time):
    state = next(sol for begin, end, sol in pieces if begin <= time <= end)(time)
    now = machine.circuit(state)
    return {
        "time": time, "speed": state[SPEED] / (2 * math.pi), "line": abs(now["line"]),
        "main": abs(now["main"]), "start": abs(now["start"]),
    }


def solved(case):
    machine = Machine(case)
    found, pieces = integrate(machine, 30.0 if machine.locked else 1.2)
    times = [0.02 * k for k in range(1, 12 if machine.locked else 55)]
    return {
        **case, **found,
        "samples": [sample(machine, pieces, time) for time in times],
    }


write_or_check(__file__, {
    "source": "SciPy 1.17.1, solve_ivp with LSODA, rtol 1e-10",
    "cases": [solved(case) for case in CASES],
})
