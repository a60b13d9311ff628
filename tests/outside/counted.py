"""What is checked outside of the project, by topic: `python -m tests.outside.counted` prints it.

A topic is a package or a module of store/husbandry. A check counts once for each source: rows of one table count once.
"""

import importlib
import pkgutil
from collections.abc import Iterator

import store.husbandry
import tests.outside
from store.husbandry.why import Equation, Printed, Sure


def equations() -> Iterator[tuple[str, "Equation[...]"]]:
    """Every equation with its topic, each once, in the order of the modules."""
    seen: set[int] = set()
    for found in pkgutil.walk_packages(store.husbandry.__path__, "store.husbandry."):
        for each in vars(importlib.import_module(found.name)).values():
            if isinstance(each, Equation) and id(each) not in seen and each.formula.__module__ == found.name:
                seen.add(id(each))
                yield found.name.split(".")[2], each


def checks() -> Iterator[tuple[str, Printed]]:
    """Every printed value with its topic: those beside an equation, and CHECKED in the tests here, by topic."""
    for topic, made in equations():
        yield from ((topic, each) for each in made.printed)
    for found in pkgutil.iter_modules(tests.outside.__path__, "tests.outside."):
        listed = getattr(importlib.import_module(found.name), "CHECKED", {})
        yield from ((topic, each) for topic, several in listed.items() for each in several)


def rests_on_memory(made: "Equation[...]") -> bool:
    """Whether nothing that was read anywhere stands behind an equation: neither its source nor an example."""
    return made.source.sure is Sure.MEMORY and all(each.source.sure is not Sure.PRINTED for each in made.printed)


def main() -> None:
    """Print the table, and the equations that rest on memory alone."""
    found = list(checks())
    print(f"{'topic':<12} values  sources  of them read")  # noqa: T201
    for topic in sorted({topic for topic, _ in found} | {topic for topic, _ in equations()}):
        sources = {each.source for of, each in found if of == topic}
        read = {each for each in sources if each.sure is Sure.PRINTED}
        values = sum(of == topic for of, _ in found)
        print(f"{topic:<12} {values:>6} {len(sources):>8} {len(read):>8}")  # noqa: T201
    of_all = {(topic, each.source) for topic, each in found}
    print(f"{'together':<12} {len(found):>6} {len(of_all):>8}")  # noqa: T201
    print("from memory alone:")  # noqa: T201
    for topic, made in equations():
        if rests_on_memory(made):
            print(f"  {topic}: {made.name}, {made.source.words}")  # noqa: T201


if __name__ == "__main__":
    main()
