"""A held Enter confirms one step."""

from tui.guard import ENTER_GAP_S, EnterGuard


def test_the_first_enter_counts() -> None:
    assert EnterGuard().enter(0.0)


def test_a_held_enter_counts_once_however_long_it_is_held() -> None:
    guard = EnterGuard()
    assert [guard.enter(0.03 * press) for press in range(100)].count(True) == 1


def test_a_key_that_repeats_only_after_its_first_long_pause_still_counts_once() -> None:
    guard = EnterGuard()
    arrivals = [0.0, 0.66, *(0.66 + 0.03 * press for press in range(1, 50))]
    assert [guard.enter(at) for at in arrivals].count(True) == 1


def test_an_enter_on_purpose_counts_again() -> None:
    guard = EnterGuard()
    assert guard.enter(0.0)
    assert guard.enter(ENTER_GAP_S)


def test_another_key_between_frees_the_next_enter_at_once() -> None:
    guard = EnterGuard()
    assert guard.enter(0.0)
    guard.other()
    assert guard.enter(0.0)
