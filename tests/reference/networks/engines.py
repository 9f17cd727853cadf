"""Two programs that share nothing with ours, each with the networks of `cargo run -p
coldcase-tests --example networks` loaded once, to be asked for every marginal under evidence.

Evidence is a list of [variable, weights]; weights of one variable are multiplied.
"""

import math
import pathlib
import sys

import networkx
import pyagrum
from pgmpy.factors.discrete import DiscreteFactor
from pgmpy.inference import BeliefPropagation
from pgmpy.readwrite import BIFReader

sys.path.insert(0, str(pathlib.Path(__file__).parent.parent))
from belief import describe, fill_in_double_precision  # noqa: E402


class PyAgrum:
    """Lazy propagation. Takes evidence as it is given: a state, or a weight for each state."""

    name = "pyAgrum"

    def __init__(self, file):
        text = file.read_text()
        _, self.states = describe(text)
        self.network = pyagrum.loadBN(str(file))
        # Its reader takes numbers in single precision (see belief.py).
        fill_in_double_precision(self.network, text, self.states)
        for name, states in self.states.items():
            if list(self.network.variable(name).labels()) != states:
                sys.exit(f"{name}: its states were read in another order")
        self.engine = pyagrum.LazyPropagation(self.network)

    def infer(self, findings):
        """Every marginal, as the program keeps it."""
        self.engine.setEvidence(
            {name: state_or_weights(weights) for name, weights in findings.items()}
        )
        self.engine.makeInference()
        return {name: self.engine.posterior(name) for name in self.states}

    def marginals(self, findings):
        tables = self.infer(findings)
        return {name: table.tolist() for name, table in tables.items()}

    def ln_evidence(self, findings):
        """Of what was asked last. A state that was seen counts as much as its weight."""
        seen = (max(w) for w in findings.values() if isinstance(state_or_weights(w), int))
        return math.log(self.engine.evidenceProbability()) + sum(map(math.log, seen))


class Pgmpy:
    """Belief propagation in a junction tree. Its own choices of a tree need more memory than
    there is, so that it gets an order of summing out; and its own calibration tries every clique
    as a root, so that its messages are sent here, once each way along every edge, which is all
    that an exact answer takes.
    """

    name = "pgmpy"

    def __init__(self, file):
        _, self.states = describe(file.read_text())
        model = BIFReader(str(file)).get_model()
        markov = model.to_markov_model()
        sizes = {name: len(states) for name, states in self.states.items()}
        markov.triangulate(order=summing_out(markov, sizes), inplace=True)
        self.engine = BeliefPropagation(markov.to_junction_tree())
        tree = self.engine.junction_tree
        self.start = {clique: tree.get_factors(clique) for clique in tree.nodes()}
        self.edges = list(networkx.bfs_edges(tree, next(iter(tree.nodes()))))
        size = {clique: factor.values.size for clique, factor in self.start.items()}
        self.home = {
            name: min((clique for clique in self.start if name in clique), key=size.get)
            for name in self.states
        }

    def infer(self, findings):
        """Every marginal, as the program keeps it."""
        engine = self.engine
        engine.clique_beliefs = {clique: one.copy() for clique, one in self.start.items()}
        engine.sepset_beliefs = {frozenset(edge): None for edge in self.edges}
        for name, weights in findings.items():
            names = {name: self.states[name]}
            factor = DiscreteFactor([name], [len(weights)], weights, state_names=names)
            engine.clique_beliefs[self.home[name]] *= factor
        for parent, child in reversed(self.edges):
            engine._update_beliefs(child, parent, "marginalize")
        for parent, child in self.edges:
            engine._update_beliefs(parent, child, "marginalize")
        return {name: self.marginal(name) for name in self.states}

    def marginal(self, name):
        clique = self.home[name]
        others = [other for other in clique if other != name]
        table = self.engine.clique_beliefs[clique].marginalize(others, inplace=False)
        return table.normalize(inplace=False)

    def marginals(self, findings):
        tables = self.infer(findings)
        return {
            name: [float(tables[name].get_value(**{name: state})) for state in states]
            for name, states in self.states.items()
        }


def together(findings):
    """One row of weights a variable."""
    rows = {}
    for name, weights in findings:
        before = rows.get(name, [1.0] * len(weights))
        rows[name] = [one * other for one, other in zip(before, weights, strict=True)]
    return rows


def state_or_weights(weights):
    left = [state for state, weight in enumerate(weights) if weight > 0.0]
    return left[0] if len(left) == 1 else weights


def summing_out(markov, sizes):
    """The variable whose neighbourhood has the smallest table first."""
    graph = networkx.Graph(markov.edges())

    def entries(name):
        return math.prod(sizes[one] for one in [name, *graph[name]])

    order = []
    while graph:
        name = min(graph, key=lambda one: (entries(one), one))
        near = list(graph[name])
        graph.add_edges_from((a, b) for place, a in enumerate(near) for b in near[:place])
        graph.remove_node(name)
        order.append(name)
    return order
