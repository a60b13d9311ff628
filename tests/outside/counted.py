"""What is checked outside of the project, by topic: `python -m tests.outside.counted` prints it.

A topic is a package or a module of store/husbandry. A check counts once for each source: rows of one table count once.
"""

import importlib
import pkgutil
from collections.abc import Iterator

import store.husbandry
import tests.outside
from store.husbandry.why import ARITHMETIC, Equation, Printed, Sure


def equations() -> Iterator[tuple[str, "Equation[...]"]]:
    """Every equation with its topic, each once, in the order of the modules."""
    seen: set[int] = set()
    for found in pkgutil.walk_packages(store.husbandry.__path__, "store.husbandry."):
        for each in vars(importlib.import_module(found.name)).values():
            if isinstance(each, Equation) and id(each) not in seen and each.formula.__module__ == found.name:
                seen.add(id(each))
                yield found.name.split(".")[2], each


def wholes() -> Iterator[tuple[str, Printed]]:
    """The printed values in the tests here, by topic: they take more than one equation."""
    for found in pkgutil.iter_modules(tests.outside.__path__, "tests.outside."):
        listed = getattr(importlib.import_module(found.name), "CHECKED", {})
        yield from ((topic, each) for topic, several in listed.items() for each in several)


def checks() -> Iterator[tuple[str, Printed]]:
    """Every printed value with its topic: those beside an equation, and CHECKED in the tests here, by topic."""
    for topic, made in equations():
        yield from ((topic, each) for each in made.printed)
    yield from wholes()


def rests_on_memory(made: "Equation[...]") -> bool:
    """Whether nothing that was read anywhere stands behind an equation: neither its source nor an example."""
    return made.source.sure is Sure.MEMORY and all(each.source.sure is not Sure.PRINTED for each in made.printed)


def plain() -> set[str]:
    """Topics whose equations are sums, differences and shares that could not be otherwise, or somebody's own rule."""
    sources: dict[str, set[Sure | str]] = {}
    for topic, made in equations():
        sources.setdefault(topic, set()).add("plain" if made.source.words == ARITHMETIC.words else made.source.sure)
    return {topic for topic, each in sources.items() if each <= {"plain", Sure.PRACTICE}}


def main() -> None:
    """Print the table, and the equations that rest on memory alone."""
    found = list(checks())
    print(f"{'topic':<12} values  sources  of them read")  # noqa: T201
    topics = {topic for topic, _ in found}
    for topic in sorted(topics | {topic for topic, _ in equations()} - plain()):
        sources = {each.source for of, each in found if of == topic}
        read = {each for each in sources if each.sure is Sure.PRINTED}
        values = sum(of == topic for of, _ in found)
        print(f"{topic:<12} {values:>6} {len(sources):>8} {len(read):>8}")  # noqa: T201
    of_all = {(topic, each.source) for topic, each in found}
    print(f"{'together':<12} {len(found):>6} {len(of_all):>8}")  # noqa: T201
    print(f"plain arithmetic alone: {', '.join(sorted(plain() - topics))}")  # noqa: T201
    print("from memory alone; a whole of its topic is checked in CHECKED where a star stands:")  # noqa: T201
    of_wholes = {topic for topic, _ in wholes()}
    for topic, made in equations():
        if rests_on_memory(made):
            print(f"{' *' if topic in of_wholes else '  '} {topic}: {made.name}, {made.source.words}")  # noqa: T201


if __name__ == "__main__":
    main()
