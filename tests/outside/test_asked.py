"""Everything in the arithmetic is asked by the program: something outside of its own module hangs on it, no test."""

import ast
from collections.abc import Iterator
from pathlib import Path
from typing import TypeAlias

from tests.outside.counted import equations

ROOT = Path(__file__).parent.parent.parent
ARITHMETIC = "store.husbandry."
Named: TypeAlias = tuple[str, str]
"""A module, and a name in it."""


def program() -> Iterator[tuple[str, ast.Module]]:
    """Each module of the program, by its dotted name."""
    for path in sorted((*ROOT.glob("store/**/*.py"), *ROOT.glob("tui/**/*.py"))):
        yield ".".join(path.relative_to(ROOT).with_suffix("").parts), ast.parse(path.read_text(encoding="utf-8"))


def taken(tree: ast.Module) -> Iterator[Named]:
    """What a module takes of others, by name or as `module.name`."""
    modules: dict[str, str] = {}
    for node in ast.walk(tree):
        if isinstance(node, ast.ImportFrom) and node.module:
            yield from ((node.module, each.name) for each in node.names)
            modules |= {each.asname or each.name: f"{node.module}.{each.name}" for each in node.names}
        if isinstance(node, ast.Attribute) and isinstance(node.value, ast.Name) and node.value.id in modules:
            yield modules[node.value.id], node.attr


def inside(module: str, tree: ast.Module) -> dict[Named, set[Named]]:
    """By each name that a module makes: what else of the same module it hangs on."""
    made: dict[Named, set[Named]] = {}
    for node in tree.body:
        names = [node.name] if isinstance(node, ast.FunctionDef | ast.ClassDef) else [
            each.id for each in ast.walk(node) if isinstance(each, ast.Name) and isinstance(each.ctx, ast.Store)
        ]  # fmt: skip
        of = {(module, each.id) for each in ast.walk(node) if isinstance(each, ast.Name)}
        made |= {(module, name): of for name in names}
    return made


def test_everything_in_the_arithmetic_is_asked_by_the_program() -> None:
    """Every equation first of all; a source or a constant too."""
    modules = dict(program())
    hangs_on = {name: of for module, tree in modules.items() for name, of in inside(module, tree).items()}
    asked: set[Named] = set()
    wanted = {each for tree in modules.values() for each in taken(tree)}
    while wanted:
        asked |= wanted
        wanted = {each for name in wanted for each in hangs_on.get(name, ())} - asked
    of_equations = {(made.formula.__module__, made.formula.__name__) for _, made in equations()}
    made = {name for name in hangs_on if name[0].startswith(ARITHMETIC)}
    assert len(of_equations & made) > 100
    assert sorted(made - asked) == []
