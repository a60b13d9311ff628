"""The whole pretend morning, by keys, on a real terminal."""

from pathlib import Path

from tests.terminal.walking import (
    MORNING,
    OTHER_KEY,
    PAST_ENTRIES,
    demo,
    entries,
    folders,
    rows,
    wait_for_step,
    walk,
)


def test_the_whole_morning_is_walked_by_keys_and_the_book_holds_exactly_what_was_confirmed(
    env: dict[str, str],
) -> None:
    with demo(env) as terminal:
        walk(terminal)
        terminal.wait_for("CLOSING THE MORNING")
        assert "18 steps = 16 done + 2 skipped + 0 NOT RECORDED" in terminal.screen
        terminal.press("q")
        assert terminal.left() == 0
    assert entries(env) == [step.writes for step in MORNING]
    assert rows(env, "entry") == PAST_ENTRIES + len(MORNING)


def test_the_closing_lists_what_was_skipped_and_what_was_given_otherwise(env: dict[str, str]) -> None:
    with demo(env, size=(100, 40)) as terminal:
        walk(terminal)
        terminal.wait_for("CLOSING THE MORNING")
        for words in (
            "Hazel (milk): no time",
            "Water trough runs: not needed today",
            "Fennel: dairy nuts 2.36 kg, plan 2.70 kg (-0.34 kg)",
        ):
            assert words in terminal.screen


def test_the_first_start_ever_builds_the_farm_and_shows_its_first_step(tmp_path: Path) -> None:
    env = folders(tmp_path)
    with demo(env) as terminal:
        wait_for_step(terminal, 0)
        terminal.press("q")
        assert terminal.left() == 0
    assert rows(env, "entry") == PAST_ENTRIES


def test_a_finished_morning_begins_again_with_nothing_written(env: dict[str, str]) -> None:
    with demo(env) as terminal:
        walk(terminal)
        terminal.press("q")
        terminal.left()
    with demo(env) as terminal:
        wait_for_step(terminal, 0)
    assert entries(env) == []


def test_an_undone_step_is_open_again_and_both_entries_stay_in_the_book(env: dict[str, str]) -> None:
    with demo(env) as terminal:
        walk(terminal, last=3)
        terminal.press("u")
        terminal.wait_for("UNDO")
        terminal.press("\r")
        terminal.wait_for("2 done  0 skipped  16 to do")
        terminal.press(OTHER_KEY + "3\r")
        terminal.wait_for("3 done  0 skipped  15 to do")
        terminal.press("q")
        terminal.left()
    assert [(entry.name, entry.state, entry.figures) for entry in entries(env)[2:]] == [
        ("Stall", "done", (8.2,)),
        ("Stall", "open", ()),
        ("Stall", "done", (6.15,)),
    ]
