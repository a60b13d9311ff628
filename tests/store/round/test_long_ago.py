"""Times that are asked about: before the round before was done, and more than a day before this one."""

from datetime import timedelta

from msgspec.structs import replace

from store.book.snapshot import LastRound
from store.book.words import Kind, State
from store.round.long_ago import done_before, is_long_ago
from tests.farm import MORNING
from tests.store.round.made import dawn


def test_the_round_before_is_done_with_its_last_step_whenever_it_was_ended() -> None:
    snapshot = dawn()
    step = next(each for each in snapshot.last.entries if each.state is State.DONE and each.kind is not Kind.ROUND)
    at = MORNING - timedelta(hours=13)
    ended = replace(step, step_id=snapshot.farm.id, kind=Kind.ROUND, happened_at=MORNING)
    last = LastRound(snapshot.last.turn, (replace(step, happened_at=at), ended))
    assert done_before(replace(snapshot, last=last)) == at
    assert done_before(replace(snapshot, last=LastRound(snapshot.last.turn))) is None


def test_long_ago_begins_a_day_before_the_day_of_the_round() -> None:
    snapshot = dawn()
    begins = snapshot.turn.day_begins(snapshot.farm.zone)
    assert not is_long_ago(snapshot, begins - timedelta(days=1))
    assert is_long_ago(snapshot, begins - timedelta(days=1, minutes=1))
