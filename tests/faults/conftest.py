"""The same homes as the tests on the terminal have."""

from tests.terminal.conftest import env, imported, strace

__all__ = ["env", "imported", "strace"]
