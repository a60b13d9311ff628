"""The looks: dark, light, and without any colour. Every text stands at 7:1 or more against what is behind it.

The words carry the meaning; colour only helps. Contrast is measured by a test, as WCAG 2.2 defines it.
"""

from collections.abc import Mapping

from msgspec import Struct
from rich.style import Style

from tui.page import Role


class Look(Struct, frozen=True):
    """A style for every role, and the colour behind all of it (None: the terminal's own)."""

    styles: Mapping[Role, Style]
    background: str | None


def _look(background: str, colours: Mapping[Role, tuple[str, str, bool]]) -> Look:
    styles = {role: Style(color=ink, bgcolor=paper, bold=bold) for role, (ink, paper, bold) in colours.items()}
    return Look(styles, background)


_NIGHT, _PAPER = "#0c0f12", "#fbfaf6"

DARK = _look(
    _NIGHT,
    {
        Role.TEXT: ("#e6e6e0", _NIGHT, False),
        Role.QUIET: ("#b4bac0", _NIGHT, False),
        Role.STRONG: ("#ffffff", _NIGHT, True),
        Role.NAME: ("#ffffff", _NIGHT, True),
        Role.AMOUNT: ("#ffd75f", _NIGHT, True),
        Role.TYPED: ("#7ee0ff", _NIGHT, True),
        Role.HEADER: ("#ffffff", "#1f3a4d", True),
        Role.HERE: ("#0c0f12", "#ffd75f", True),
        Role.WARNING: ("#ffb0a0", _NIGHT, True),
        Role.KEY: ("#a8e6a3", _NIGHT, True),
    },
)

LIGHT = _look(
    _PAPER,
    {
        Role.TEXT: ("#1b1b1b", _PAPER, False),
        Role.QUIET: ("#454545", _PAPER, False),
        Role.STRONG: ("#000000", _PAPER, True),
        Role.NAME: ("#000000", _PAPER, True),
        Role.AMOUNT: ("#6b2f00", _PAPER, True),
        Role.TYPED: ("#003d70", _PAPER, True),
        Role.HEADER: ("#ffffff", "#1f3a4d", True),
        Role.HERE: ("#ffffff", "#5a2800", True),
        Role.WARNING: ("#8a0f00", _PAPER, True),
        Role.KEY: ("#0a4a10", _PAPER, True),
    },
)

NO_COLOUR = Look(
    {role: Style(bold=role not in (Role.TEXT, Role.QUIET), reverse=role in (Role.HEADER, Role.HERE)) for role in Role},
    None,
)

LOOKS = {"dark": DARK, "light": LIGHT}
