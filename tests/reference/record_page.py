"""Reads the record's HTML file with html5lib, the parser of the HTML standard in Python, strictly.

Any parse error (an element that isn't closed, an attribute twice, a stray tag) stops it. Then, on
the tree that html5lib built: headings go down one rank at a time, every table has a caption and
heads for its columns and rows, every drawing is named, no identifier stands twice, and nothing is
fetched or run. It compares no figures.
"""

import sys
from pathlib import Path

import html5lib

FOLDER = Path(__file__).parent.parent.parent / "crates/record/tests/shown"
FETCHES = {"script", "link", "img", "iframe", "object", "embed", "base", "form"}


def problems(text):
    parser = html5lib.HTMLParser(
        strict=True, tree=html5lib.getTreeBuilder("etree"), namespaceHTMLElements=False
    )
    page = parser.parse(text)
    found = []
    elements = [one for one in page.iter() if isinstance(one.tag, str)]
    name = lambda one: one.tag.rsplit("}", 1)[-1]
    ranks = [int(name(one)[1]) for one in elements if name(one) in ("h1", "h2", "h3", "h4")]
    if ranks[:1] != [1] or ranks.count(1) != 1:
        found.append(f"headings begin with {ranks[:1]}")
    found += [f"a heading of rank {b} under {a}" for a, b in zip(ranks, ranks[1:]) if b > a + 1]
    ids = [one.get("id") for one in elements if one.get("id")]
    found += [f"id {one} stands {ids.count(one)} times" for one in set(ids) if ids.count(one) > 1]
    for one in elements:
        inside = [name(part) for part in one.iter() if isinstance(part.tag, str)]
        if name(one) in FETCHES or any(key.startswith("on") for key in one.keys()):
            found.append(f"<{name(one)}> has no place here")
        if name(one) == "table":
            scopes = {part.get("scope") for part in one.iter("th")}
            if "caption" not in inside or scopes != {"col", "row"}:
                found.append("a table without caption or heads")
        if name(one) == "svg" and not {"title", "desc"} <= set(inside):
            found.append("a drawing without title or description")
        for key in one.keys():
            if key == "aria-labelledby" and not set(one.get(key).split()) <= set(ids):
                found.append(f"{key} names {one.get(key)}")
    tables = sum(name(one) == "table" for one in elements)
    if tables < 5:
        found.append(f"only {tables} tables: is this the record?")
    return found


def main():
    pages = sorted(FOLDER.glob("*.html"))
    found = [f"{page.name}: {one}" for page in pages for one in problems(page.read_text("utf-8"))]
    print("\n".join(found) or f"{len(pages)} page read without a fault")
    sys.exit(1 if found or not pages else 0)


if __name__ == "__main__":
    main()
