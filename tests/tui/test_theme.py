"""Contrast as WCAG 2.2 defines it (https://www.w3.org/TR/WCAG22/#dfn-contrast-ratio): 7:1 is its level AAA."""

import pytest
from rich.color import Color
from rich.style import Style

from tui.page import Role
from tui.theme import LOOKS, NO_COLOUR


def luminance(colour: Color) -> float:
    """Relative luminance of an sRGB colour, 0 to 1 (WCAG 2.2, dfn-relative-luminance)."""
    channels = [value / 255 for value in colour.get_truecolor()]
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in channels]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(style: Style) -> float:
    """Contrast ratio of a style's text to what is behind it, 1 to 21."""
    assert style.color is not None
    assert style.bgcolor is not None
    light, dark = sorted((luminance(style.color), luminance(style.bgcolor)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def test_contrast_holds_to_known_pairs() -> None:
    assert contrast(Style(color="#000000", bgcolor="#ffffff")) == pytest.approx(21.0)
    # #767676 on white is the grey known to just pass 4.5:1 (WebAIM contrast checker: 4.54).
    assert contrast(Style(color="#767676", bgcolor="#ffffff")) == pytest.approx(4.54, abs=0.01)


@pytest.mark.parametrize("look", LOOKS)
@pytest.mark.parametrize("role", Role)
def test_every_text_stands_at_seven_to_one_or_more(look: str, role: Role) -> None:
    assert contrast(LOOKS[look].styles[role]) >= 7.0


@pytest.mark.parametrize("role", Role)
def test_without_colour_no_style_names_one(role: Role) -> None:
    assert NO_COLOUR.styles[role].color is None
    assert NO_COLOUR.styles[role].bgcolor is None
