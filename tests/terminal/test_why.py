"""W in the running program: two levels into a number, and back to the step."""

from tests.terminal.walking import demo, entries, walk


def test_w_walks_two_levels_into_a_number_and_back_to_the_step(env: dict[str, str]) -> None:
    with demo(env) as terminal:
        walk(terminal, last=2)
        terminal.press("w")
        terminal.wait_for("WHY  Stall")
        terminal.press("\r")
        terminal.wait_for("to the nearest quarter")
        terminal.press("\x1b[C")
        terminal.wait_for("due for one head x heads")
        terminal.press("\x7f")
        terminal.wait_for("to the nearest quarter")
        terminal.press("\x7f\x7f")
        terminal.wait_for("HAY for the whole pen")
        written = len(entries(env))
        terminal.press("q")
        assert terminal.left() == 0
    assert len(entries(env)) == written
