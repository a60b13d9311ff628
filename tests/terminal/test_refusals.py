"""What cannot be done is said in one plain sentence, and nothing is touched."""

import subprocess
from pathlib import Path

import pytest

from tests.farm import FOLDER
from tests.terminal.terminal import Terminal
from tests.terminal.walking import DEMO, MORNING, PENWALK, demo, entries, wait_for_step, walk, walked_book


def contents(folder: Path) -> dict[str, bytes]:
    """Every file of a folder."""
    return {path.name: path.read_bytes() for path in folder.iterdir() if path.is_file()}


@pytest.mark.parametrize("words", [("demo",), ("--book", "nowhere.penwalk")])
@pytest.mark.parametrize("term", ["dumb", "unknown", ""])
def test_a_terminal_that_cannot_draw_is_refused_in_one_line(
    env: dict[str, str], term: str, words: tuple[str, ...]
) -> None:
    with Terminal([PENWALK, *words], env | {"TERM": term}) as terminal:
        assert terminal.left() != 0
        (sentence,) = terminal.said
        assert "This terminal cannot draw a screen" in sentence


@pytest.mark.parametrize("words", [("demo",), ("--book", "nowhere.penwalk"), ()])
def test_a_pipe_is_refused_in_one_line(env: dict[str, str], words: tuple[str, ...]) -> None:
    ran = subprocess.run([PENWALK, *words], env=env, input="\n\n", capture_output=True, text=True, check=False)
    assert ran.returncode != 0
    assert ran.stdout == ""
    (sentence,) = ran.stderr.splitlines()
    assert "Penwalk needs a terminal" in sentence


def test_a_screen_that_would_go_into_a_file_is_refused_in_one_line(env: dict[str, str], tmp_path: Path) -> None:
    into = tmp_path / "said.txt"
    with Terminal(["/bin/sh", "-c", f"{PENWALK} {' '.join(DEMO)} 2>{into}"], env) as terminal:
        assert terminal.left() == 1
    (sentence,) = into.read_text(encoding="utf-8").splitlines()
    assert "Penwalk needs a terminal" in sentence


@pytest.mark.parametrize("words", [(), ("--afresh",), ("--at", "2026-03-11T07:00")])
def test_a_second_demo_beside_an_open_one_is_refused_and_touches_nothing(
    env: dict[str, str], words: tuple[str, ...]
) -> None:
    with demo(env) as first:
        walk(first, last=2)
        before = contents(walked_book(env).parent)
        with Terminal([PENWALK, *DEMO, *words], env) as second:
            assert second.left() == 1
            (sentence,) = second.said
            assert "is open in another Penwalk" in sentence
        assert contents(walked_book(env).parent) == before
        walk(first, first=2, last=4)
    assert entries(env) == [step.writes for step in MORNING[:4]]


@pytest.mark.parametrize("command", [(), ("export", "out"), ("import", "demo_farm"), ("merge", "other.penwalk")])
def test_another_command_on_an_open_book_is_refused_and_touches_nothing(
    env: dict[str, str], command: tuple[str, ...]
) -> None:
    with demo(env) as first:
        walk(first, last=1)
        before = contents(walked_book(env).parent)
        with Terminal([PENWALK, "--book", str(walked_book(env)), *command], env) as second:
            assert second.left() == 1
            (sentence,) = second.said
            assert "is open in another Penwalk" in sentence
        assert contents(walked_book(env).parent) == before


def test_after_the_first_program_has_left_the_second_may_come(env: dict[str, str]) -> None:
    with demo(env) as first:
        walk(first, last=1)
        first.press("q")
        first.left()
    with demo(env) as second:
        wait_for_step(second, 1)


@pytest.mark.parametrize("words", [("export", "out"), ("--book", "no/such/folder/farm.penwalk", "export", "out")])
def test_a_command_without_a_book_says_in_a_plain_sentence_how_to_begin(
    env: dict[str, str], words: tuple[str, ...]
) -> None:
    with Terminal([PENWALK, *words], env) as terminal:
        assert terminal.left() == 1
        first, second = terminal.said
        assert first.startswith("There is no farm book at ")
        assert "penwalk demo" in second


@pytest.mark.parametrize("content", ["Dear Ann, the hay is in.\n" * 40, "x", ""])
@pytest.mark.parametrize("command", [(), ("export", "out"), ("import", str(FOLDER))])
def test_a_file_that_is_no_book_is_refused_and_left_alone(
    env: dict[str, str], tmp_path: Path, content: str, command: tuple[str, ...]
) -> None:
    stranger = tmp_path / "letter.txt"
    stranger.write_text(content, encoding="utf-8")
    with Terminal([PENWALK, "--book", str(stranger), *command], env) as terminal:
        assert terminal.left() == 1
        (sentence,) = terminal.said
        assert str(stranger) in sentence
    assert stranger.read_text(encoding="utf-8") == content


@pytest.mark.parametrize("at", ["noon", "2026-13-01T06:31", "06:31"])
def test_a_pretend_time_that_is_none_is_refused_in_one_line(env: dict[str, str], at: str) -> None:
    with demo(env, "--at", at) as terminal:
        assert terminal.left() == 1
        (sentence,) = terminal.said
        assert "2026-03-11T06:31" in sentence
