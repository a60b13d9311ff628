"""Large letters: each is five dots high, drawn with half blocks in three rows, readable from two metres.

Only `█ ▀ ▄` and space are used: every console font has them.
"""

import unicodedata
from functools import lru_cache

_DOTS = {
    "A": ".##. #..# #### #..# #..#", "B": "###. #..# ###. #..# ###.", "C": ".### #... #... #... .###",
    "D": "###. #..# #..# #..# ###.", "E": "#### #... ###. #... ####", "F": "#### #... ###. #... #...",
    "G": ".### #... #.## #..# .###", "H": "#..# #..# #### #..# #..#", "I": "### .#. .#. .#. ###",
    "J": "..## ...# ...# #..# .##.", "K": "#..# #.#. ##.. #.#. #..#", "L": "#... #... #... #... ####",
    "M": "#...# ##.## #.#.# #...# #...#", "N": "#...# ##..# #.#.# #..## #...#", "O": ".##. #..# #..# #..# .##.",
    "P": "###. #..# ###. #... #...", "Q": ".##. #..# #..# #.## .###", "R": "###. #..# ###. #.#. #..#",
    "S": ".### #... .##. ...# ###.", "T": "##### ..#.. ..#.. ..#.. ..#..", "U": "#..# #..# #..# #..# .##.",
    "V": "#...# #...# .#.#. .#.#. ..#..", "W": "#...# #...# #.#.# ##.## #...#", "X": "#...# .#.#. ..#.. .#.#. #...#",
    "Y": "#...# .#.#. ..#.. ..#.. ..#..", "Z": "#### ...# .##. #... ####",
    "0": ".##. #..# #..# #..# .##.", "1": ".#. ##. .#. .#. ###", "2": "###. ...# .##. #... ####",
    "3": "###. ...# .##. ...# ###.", "4": "#..# #..# #### ...# ...#", "5": "#### #... ###. ...# ###.",
    "6": ".##. #... ###. #..# .##.", "7": "#### ...# ..#. .#.. .#..", "8": ".##. #..# .##. #..# .##.",
    "9": ".##. #..# .### ...# .##.", ".": ".. .. .. ## ##", ",": ".. .. .. ## .#", "/": "..# ..# .#. #.. #..",
    "-": "... ... ### ... ...", "'": "# # . . .", "&": ".#.. #.#. .#.. #.## .#.#", "?": "###. ...# .##. .... .#..",
    ":": ".. ## .. ## ..", "(": ".# #. #. #. .#", ")": "#. .# .# .# #.", "+": "... .#. ### .#. ...",
    "=": "... ### ... ### ...", "%": "#.# ..# .#. #.. #.#", " ": ".. .. .. .. ..",
}  # fmt: skip
_BLOCKS = {(False, False): " ", (True, False): "▀", (False, True): "▄", (True, True): "█"}


def plain_letters(text: str) -> str | None:
    """The text in letters that can be drawn large, accents left off; None if one of them cannot."""
    bare = "".join(c for c in unicodedata.normalize("NFKD", text.upper()) if not unicodedata.combining(c))
    return bare if bare and all(c in _DOTS for c in bare) else None


@lru_cache(64)
def large(text: str, scale: int = 1) -> tuple[str, ...] | None:
    """The rows of a text drawn large, all of one width; None if a letter cannot be drawn.

    scale: 1 is three rows high, 2 is five.
    """
    letters = plain_letters(text)
    if letters is None:
        return None
    dots = [".".join(_DOTS[letter].split()[row] for letter in letters) for row in range(5)]
    dots = ["".join(dot * scale for dot in row) for row in dots for _ in range(scale)]
    dots += ["." * len(dots[0])] * (len(dots) % 2)
    return tuple(
        "".join(_BLOCKS[up == "#", down == "#"] for up, down in zip(dots[row], dots[row + 1], strict=True))
        for row in range(0, len(dots), 2)
    )
