"""When the program itself breaks: the details go into a file, the keeper reads one sentence."""

import traceback
from pathlib import Path
from tempfile import gettempdir

from platformdirs import user_log_path

CRASHED = 70
"""Exit status of a mistake in the program itself."""


def report(error: Exception) -> str:
    """Keep the details of an error; the sentence for the keeper."""
    text = "".join(traceback.format_exception(error))
    for folder in (user_log_path("penwalk", appauthor=False), Path(gettempdir())):
        try:
            folder.mkdir(parents=True, exist_ok=True)
            path = folder / "penwalk-crash.txt"
            path.write_text(text, encoding="utf-8")
        except OSError:
            continue
        return f"Penwalk stopped because of a mistake in it. Everything you confirmed is in the book. Details: {path}"
    return "Penwalk stopped because of a mistake in it. Everything you confirmed is in the book."
