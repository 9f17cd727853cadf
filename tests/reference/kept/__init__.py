"""Figures kept in a JSON file beside the script that makes them."""

import json
import math
import pathlib
import sys


def write_or_check(script, figures):
    """Writes the figures beside the script; with --check, compares them with the kept ones."""
    file = pathlib.Path(script).with_suffix(".json")
    if "--check" not in sys.argv[1:]:
        file.write_text(lines(figures))
        return
    found = list(differences(figures, json.loads(file.read_text()), ""))
    for place in found[:10]:
        print(f"{file.name} differs at {place}")
    sys.exit(1 if found else 0)


def lines(figures):
    """One line a case, so that a change shows which cases it touches."""
    *head, (name, cases) = figures.items()
    text = "{\n"
    for key, value in head:
        text += f" {json.dumps(key)}: {json.dumps(value)},\n"
    text += f" {json.dumps(name)}: [\n  "
    text += ",\n  ".join(json.dumps(case) for case in cases)
    return text + "\n ]\n}\n"


def differences(made, kept, place):
    """Every place where two documents differ by more than rounding."""
    if isinstance(made, dict) and isinstance(kept, dict) and made.keys() == kept.keys():
        for key in made:
            yield from differences(made[key], kept[key], f"{place}/{key}")
    elif isinstance(made, list) and isinstance(kept, list) and len(made) == len(kept):
        for number, (one, other) in enumerate(zip(made, kept)):
            yield from differences(one, other, f"{place}/{number}")
    elif isinstance(made, (int, float)) and isinstance(kept, (int, float)):
        if not math.isclose(made, kept, rel_tol=1e-8, abs_tol=1e-12):
            yield place
    elif made != kept:
        yield place
