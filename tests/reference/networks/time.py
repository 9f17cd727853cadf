"""How long pyAgrum and pgmpy take for every marginal under the evidence that `cargo run --profile
host -p coldcase-tests --example inference FOLDER` has just answered, beside our times.

    python time.py FOLDER

Each program has its network loaded and its tree made; the last finding is new. pyAgrum is asked
in the way that it is fastest at: Shafer and Shenoy's, with the threads that it takes by itself,
and the new finding alone entered on top of the others. Ends with 1 when we aren't 5 times faster
than it, or 50 times faster than pgmpy.
"""

import json
import pathlib
import statistics
import sys
import time
import warnings

warnings.filterwarnings("ignore")

import pyagrum  # noqa: E402
from engines import Pgmpy, PyAgrum, state_or_weights, together  # noqa: E402


def timed(work):
    start = time.perf_counter()
    work()
    return time.perf_counter() - start


def pyagrum_times(folder, sets):
    programs = {}
    for one in sets:
        name = one["network"]
        if name not in programs:
            program = PyAgrum(folder / f"{name}.bif")
            program.engine = pyagrum.ShaferShenoyInference(program.network)
            programs[name] = program
        program = programs[name]
        before, after = together(one["findings"][:-1]), together(one["findings"])
        new = one["findings"][-1][0]
        program.infer(before)

        def answer():
            program.engine.updateEvidence({new: state_or_weights(after[new])})
            program.engine.makeInference()
            return [program.engine.posterior(name) for name in program.states]

        yield timed(answer)


def pgmpy_times(folder, sets):
    programs = {}
    for one in sets:
        name = one["network"]
        if name not in programs:
            programs[name] = Pgmpy(folder / f"{name}.bif")
        findings = together(one["findings"])
        yield timed(lambda: programs[name].infer(findings))


def main():
    folder = pathlib.Path(sys.argv[1])
    sets = json.loads((folder / "sets.json").read_text())["sets"]
    ours = json.loads((folder / "times.json").read_text())
    print(f"every marginal after a new reading, {len(sets)} sets of evidence:")
    print(f"ours: middle {1e3 * statistics.median(ours):.3f} ms, at most {1e3 * max(ours):.3f} ms")
    fast_enough = True
    for name, times, wanted in [
        ("pyAgrum", pyagrum_times, 5),
        ("pgmpy", pgmpy_times, 50),
    ]:
        theirs = list(times(folder, sets))
        ratio = statistics.median(other / one for one, other in zip(ours, theirs, strict=True))
        print(
            f"{name}: middle {1e3 * statistics.median(theirs):.1f} ms,"
            f" {ratio:.0f} times as long (at least {wanted} wanted)"
        )
        fast_enough &= ratio >= wanted
    sys.exit(0 if fast_enough else 1)


if __name__ == "__main__":
    main()
