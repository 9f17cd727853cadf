"""What `cargo run -p coldcase-tests --example networks FOLDER` wrote into a folder, against other
programs: every marginal under every set of evidence against pyAgrum's and pgmpy's, and every
suspect of the worked cases against pyAgrum's answer to the networks that the job is exported as.

    python compare.py FOLDER

Ends with 1 when anything differs by more than 1e-9.
"""

import json
import math
import pathlib
import sys
import warnings

warnings.filterwarnings("ignore")

from engines import Pgmpy, PyAgrum, describe, together  # noqa: E402

TOLERANCE = 1e-9
FEWEST_SETS = 200
FEWEST_JOBS = 90

# How the networks name what is asked about.
NOTHING = ("trouble", "none")
SOUND = "sound"
SINCE = "_since_"


def apart(ours, theirs):
    """The largest difference over our variables; theirs have the steps inside wide nodes besides.
    Not a number is a difference too."""
    if not ours or not ours.keys() <= theirs.keys():
        return float("inf")
    pairs = (
        (one, other)
        for name in ours
        for one, other in zip(ours[name], theirs[name], strict=True)
    )
    gaps = (abs(one - other) for one, other in pairs)
    return max(gap if gap == gap else float("inf") for gap in gaps)


def check(program, folder, sets):
    """How many sets agree and how many don't."""
    engines = {}
    passed, failed, largest = 0, 0, 0.0
    for number, one in enumerate(sets):
        name = one["network"]
        if name not in engines:
            engines[name] = program(folder / f"{name}.bif")
        findings = together(one["findings"])
        gap = apart(one["marginals"], engines[name].marginals(findings))
        if hasattr(program, "ln_evidence"):
            gap = max(gap, abs(one["ln_evidence"] - engines[name].ln_evidence(findings)))
        largest = max(largest, gap)
        if gap <= TOLERANCE:
            passed += 1
        else:
            failed += 1
            print(f"{program.name}: set {number}, {name}, differs by {gap:.1e}")
    print(f"{program.name}: {len(sets)} sets, at most {largest:.1e} apart")
    return passed, failed


def check_jobs(folder, jobs):
    """Suspects are mixed over the builds that the machine may have, each with its weight."""
    passed, failed, largest = 0, 0, 0.0
    for number, job in enumerate(jobs):
        mixed = [0.0] * len(job["suspects"])
        for network in job["networks"]:
            chances = suspected(folder / network["file"], job["suspects"])
            mixed = [sum_ + network["weight"] * one for sum_, one in zip(mixed, chances)]
        gaps = [abs(ours - other) for (_, _, ours), other in zip(job["suspects"], mixed)]
        largest = max([largest, *gaps])
        if gaps and max(gaps) <= TOLERANCE:
            passed += 1
        else:
            failed += 1
            print(f"pyAgrum: the suspects of worked case {number} differ")
    print(f"pyAgrum: {len(jobs)} worked cases, at most {largest:.1e} apart")
    return passed, failed


def suspected(file, suspects):
    """How likely each suspect is in one network, as the machine is now."""
    engine = PyAgrum(file)
    seen, states = describe(file.read_text())
    findings = {name: [float(state == one) for one in states[name]] for name, state in seen.items()}
    marginals = engine.marginals(findings)
    chances = []
    for part, fault, _ in suspects:
        present = as_it_is_now(part, states)
        if (part, fault) == NOTHING:
            chances.append(all_sound(engine, findings, states))
        elif fault in states.get(present, []):
            chances.append(marginals[present][states[present].index(fault)])
        else:
            chances.append(0.0)
    return chances


def all_sound(engine, findings, states):
    """The chance that no part has a fault now: what was seen along with that, among what was seen."""
    before = engine.ln_evidence(findings)
    parts = {name.partition(SINCE)[0] for name, of in states.items() if of[0] == SOUND}
    sound = {}
    for part in parts:
        present = as_it_is_now(part, states)
        sound[present] = [float(state == SOUND) for state in states[present]]
    findings = together([*findings.items(), *sound.items()])
    engine.infer(findings)
    return math.exp(engine.ln_evidence(findings) - before)


def as_it_is_now(part, states):
    """What was changed has a variable for each period; later ones stand further down."""
    versions = [name for name in states if name.partition(SINCE)[0] == part]
    return versions[-1] if versions else part


def main():
    folder = pathlib.Path(sys.argv[1])
    sets = json.loads((folder / "sets.json").read_text())["sets"]
    jobs = json.loads((folder / "jobs.json").read_text())["jobs"]
    if len(sets) < FEWEST_SETS or len(jobs) < FEWEST_JOBS:
        sys.exit(f"there are {len(sets)} sets of evidence and {len(jobs)} worked cases only")
    results = [check(program, folder, sets) for program in (PyAgrum, Pgmpy)]
    results.append(check_jobs(folder, jobs))
    passed, failed = (sum(column) for column in zip(*results))
    print(f"{passed} passed, {failed} failed")
    sys.exit(1 if failed else 0)


if __name__ == "__main__":
    main()
