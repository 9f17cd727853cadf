"""Marginals and the probability of the evidence for the exported networks beside this file, by
two programs that share nothing with ours: pyAgrum's lazy propagation and pgmpy's variable
elimination.

Without arguments writes belief/expected.json; with --check compares with it and fails when
anything differs by more than 1e-9, or the two programs differ from each other by that much.

pyAgrum's reader of this format takes numbers in single precision (seen with 3.3.1). Its tables
are therefore filled again from the text; pgmpy's reader keeps what is written, so that a slip in
that would show as a disagreement.
"""

import json
import math
import pathlib
import re
import sys
import warnings

import pyagrum
from pgmpy.inference import VariableElimination
from pgmpy.readwrite import BIFReader

warnings.filterwarnings("ignore")

FOLDER = pathlib.Path(__file__).parent / "belief"
EXPECTED = FOLDER / "expected.json"
TOLERANCE = 1e-9
OBSERVED = re.compile(r"^// observed: (\w+) = (\w+)$", re.MULTILINE)
TABLE = re.compile(r"probability \( (\w+)(?: \| ([^)]*))? \) \{([^}]*)\}")
ROW = re.compile(r"^ *(?:\(([^)]*)\)|table) ([^;]*);$", re.MULTILINE)
STATES = re.compile(r"variable (\w+) \{\s*type discrete \[ \d+ \] \{ ([^}]*) \}")


def describe(text):
    """The evidence and the variables' states in the order of the file."""
    states = {name: found.split(", ") for name, found in STATES.findall(text)}
    return dict(OBSERVED.findall(text)), states


def fill_in_double_precision(network, text, states):
    for name, parents, body in TABLE.findall(text):
        parents = parents.split(", ") if parents else []
        table = network.cpt(name)
        for given, numbers in ROW.findall(body):
            given = given.split(", ") if given else []
            at = dict(zip(parents, given, strict=True))
            for label, number in zip(states[name], numbers.split(", "), strict=True):
                table[{**at, name: label}] = float(number)


def by_pyagrum(file, evidence, states):
    network = pyagrum.loadBN(str(file))
    fill_in_double_precision(network, file.read_text(), states)
    engine = pyagrum.LazyPropagation(network)
    engine.setEvidence(evidence)
    engine.makeInference()
    marginals = {}
    for name, labels in states.items():
        table = engine.posterior(name)
        place = {label: index for index, label in enumerate(network.variable(name).labels())}
        values = table.tolist()
        marginals[name] = [values[place[label]] for label in labels]
    return marginals, math.log(engine.evidenceProbability())


def by_pgmpy(file, evidence, states):
    model = BIFReader(str(file)).get_model()
    engine = VariableElimination(model)
    marginals = {}
    for name, labels in states.items():
        if name in evidence:
            marginals[name] = [float(label == evidence[name]) for label in labels]
            continue
        table = engine.query([name], evidence=evidence, show_progress=False)
        marginals[name] = [float(table.get_value(**{name: label})) for label in labels]
    return marginals


def differences(one, other):
    for name in one:
        for left, right in zip(one[name], other[name], strict=True):
            yield abs(left - right)


def compute():
    networks = {}
    for file in sorted(FOLDER.glob("*.bif")):
        evidence, states = describe(file.read_text())
        marginals, ln_evidence = by_pyagrum(file, evidence, states)
        apart = max(differences(marginals, by_pgmpy(file, evidence, states)))
        print(f"{file.stem}: pyAgrum and pgmpy differ by at most {apart:.1e}")
        if not apart <= TOLERANCE:
            sys.exit(f"{file.stem}: the two programs disagree")
        networks[file.stem] = {"ln_evidence": ln_evidence, "marginals": marginals}
    if not networks:
        sys.exit("there are no exported networks")
    return {
        "origin": "pyAgrum 3.3.1, LazyPropagation; agrees with pgmpy 1.1.2, VariableElimination",
        "networks": networks,
    }


def check(found, stored):
    if found["networks"].keys() != stored["networks"].keys():
        sys.exit("the networks are other ones than those stored")
    for name, network in found["networks"].items():
        other = stored["networks"][name]
        apart = [abs(network["ln_evidence"] - other["ln_evidence"])]
        apart += differences(network["marginals"], other["marginals"])
        if not max(apart) <= TOLERANCE:
            sys.exit(f"{name}: differs by {max(apart)} from what is stored")


def main():
    found = compute()
    if "--check" in sys.argv[1:]:
        check(found, json.loads(EXPECTED.read_text()))
    else:
        EXPECTED.write_text(json.dumps(found, indent=1) + "\n")


if __name__ == "__main__":
    main()
