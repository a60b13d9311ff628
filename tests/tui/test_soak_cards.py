"""The soak bucket on the screen: its state in a word, what is asked, why it is thrown out."""

from datetime import timedelta

import pytest
from msgspec.structs import replace
from syrupy.assertion import SnapshotAssertion

from store.book.drafts import RowDraft, Subject
from store.book.facts.feed import Batch, Substitute
from store.book.figures import FedFigure, SoakedFigure
from store.book.words import SettingName, Soak
from store.round.plan import plan
from tests.farm import HandClock
from tests.store.round.named import soak_check_of
from tests.tui.keys import Sitting

LUCERNE = "lucerne pellets"


def stood(sitting: Sitting, minutes: int | None, dry_kg: float = 0.9) -> Sitting:
    """The morning with another batch in the bucket, put to soak so long ago; None: nobody wrote of one."""
    walker = sitting.walker
    feed_id = soak_check_of(walker.snapshot, LUCERNE).feed.id
    batch = Batch(walker.moment() - timedelta(minutes=minutes), dry_kg, 2 * dry_kg) if minutes is not None else None
    walker.snapshot = replace(walker.snapshot, batches={feed_id: batch} if batch else {})
    walker.steps = plan(walker.snapshot)
    return sitting.to_step(LUCERNE, "soak")


def act(sitting: Sitting) -> Soak:
    """What was written last of the bucket."""
    figure = sitting.newest().the(SoakedFigure)
    assert figure is not None
    return figure.act


@pytest.mark.parametrize(
    ("minutes", "word", "asked"),
    [
        (70, "TOO EARLY", "It has soaked 1 h 10, your rule is 5 h: ! then Enter feeds it anyway"),
        (16 * 60 + 10, "PAST ITS LIMIT", "It has soaked 16 h 10, your limit is 16 h: ! then Enter feeds it anyway"),
        (None, "NOT KNOWN", "When it was put to soak is not written."),
    ],
)
def test_what_the_clock_speaks_against_is_asked_about_and_written_with_a_mark(
    sitting: Sitting, minutes: int | None, word: str, asked: str
) -> None:
    """Enter alone writes nothing."""
    stood(sitting, minutes)
    assert word in sitting.text()
    assert f"Enter asks first: {word}" in sitting.text()
    sitting.press("enter")
    assert asked in sitting.said
    assert "M throws it out." in sitting.said
    assert sitting.written() == 0
    sitting.press("!")
    assert "Enter yes, fit to feed, it is right" in sitting.text()
    sitting.press("enter")
    assert act(sitting) is Soak.FIT


def test_what_is_ready_is_written_fit_by_enter(sitting: Sitting) -> None:
    stood(sitting, 8 * 60)
    assert "READY" in sitting.text()
    sitting.press("enter")
    assert act(sitting) is Soak.FIT


def test_what_is_not_known_is_never_told_in_hours(sitting: Sitting) -> None:
    """Neither a batch nor a time is made up."""
    page = stood(sitting, None).text()
    assert "when it was put to soak is not written, nor how much" in page
    assert "BATCH" not in page
    assert "ready from" not in page


def test_only_the_mark_can_be_typed_at_the_bucket(sitting: Sitting) -> None:
    """A digit means nothing there, and Backspace takes the mark away."""
    stood(sitting, 70).press("7", "!")
    assert "it is right" in sitting.text()
    sitting.press("backspace", "enter")
    assert sitting.written() == 0


@pytest.mark.parametrize(
    ("key", "why"), [("1", "sour"), ("2", "mouldy"), ("3", "frozen"), ("4", "too old"), ("5", "spilt")]
)
def test_it_is_thrown_out_with_the_reason(sitting: Sitting, key: str, why: str) -> None:
    stood(sitting, 600).press("m", key, "enter")
    assert (act(sitting), sitting.newest().reason) == (Soak.THROWN_OUT, why)
    assert f"thrown out ({why}), 0.90 kg dry" in sitting.text()


def test_another_reason_is_typed_in_words(sitting: Sitting) -> None:
    """An empty line is none."""
    stood(sitting, 600).press("m", "6", "enter", "enter")
    assert "Nothing is typed." in sitting.said
    sitting.press("a rat in it", "enter")
    assert (act(sitting), sitting.newest().reason) == (Soak.THROWN_OUT, "a rat in it")


def test_frozen_it_is_left_for_later(sitting: Sitting) -> None:
    """Nothing is written, and the step stays to do."""
    stood(sitting, 600).press("l", "1", "enter")
    assert sitting.written() == 0


def test_too_little_in_the_bucket_is_said_at_once(sitting: Sitting) -> None:
    page = stood(sitting, 600, dry_kg=0.6).text()
    assert "BATCH   0.60 kg dry in 1.2 kg water;  NEEDED 0.90 kg dry in this round" in page
    assert "TOO LITTLE was put to soak: it is shared out in proportion" in page


def test_begun_now_it_is_late_for_the_round(sitting: Sitting, clock: HandClock) -> None:
    """Five hours from ten past one: 18:10, and the evening begins at half past five."""
    rows = [RowDraft("setting", {"name": SettingName.EVENING_AT, "value": "17:30"})]
    sitting.walker.change(rows, Subject(), "times")
    clock.move(hours=6, minutes=39)
    page = sitting.to_step(LUCERNE, "soak", 1).text()
    assert "NOW     ready 18:10, LATE: 40 min after the round begins" in page
    assert "FOR     the evening round at 17:30: put to soak between 01:30 and 12:30" in page


@pytest.mark.parametrize("minutes", [70, 1500, None])
def test_the_screen_of_the_bucket_is_as_kept(sitting: Sitting, screen: SnapshotAssertion, minutes: int | None) -> None:
    assert stood(sitting, minutes, dry_kg=0.6).press("enter").text() == screen


def substituted(sitting: Sitting, ratio: float = 0.8, most_kg: float | None = None) -> Sitting:
    """The morning of a farm where nuts stand in for the lucerne."""
    snapshot = sitting.walker.snapshot
    nuts = next(feed for feed in snapshot.feeds.values() if feed.name == "dairy nuts")
    rules = {soak_check_of(snapshot, LUCERNE).feed.id: Substitute(nuts.id, ratio, most_kg)}
    sitting.walker.snapshot = replace(snapshot, substitutes=rules)
    return sitting


def test_a_feed_step_asks_until_the_soak_was_looked_at(sitting: Sitting) -> None:
    """The sentence names the key, and following it leads there; the mark writes it all the same."""
    sitting.to_step("Fennel", "feed")
    assert "Enter asks: soak?" in sitting.text()
    sitting.press("enter")
    assert sitting.said.startswith("Look at the soaked lucerne pellets first: G lucer goes there.")
    assert sitting.written() == 0
    sitting.press("g", "lucer", "enter")
    assert "SOAK,  RED bucket" in sitting.text()
    sitting.to_step("Fennel", "feed").press("!", "enter")
    assert [fed.given_kg for fed in sitting.newest().of(FedFigure)] == pytest.approx([2.7, 0.9])


def test_looked_at_and_fit_it_is_written_by_enter(sitting: Sitting) -> None:
    sitting.looked().to_step("Fennel", "feed").press("enter")
    assert len(sitting.newest().of(FedFigure)) == 2


def test_one_mark_never_answers_a_question_that_was_not_asked(sitting: Sitting) -> None:
    """Six scoops, and the soak not looked at: both stand in the sentence."""
    sitting.to_step("Fennel", "feed").press("6", "enter")
    assert "Look at the soaked lucerne pellets first" in sitting.said
    assert "your limit is 3.50 kg" in sitting.said
    assert sitting.written() == 0


def test_thrown_out_its_substitute_is_due_in_its_place(sitting: Sitting) -> None:
    """0.9 kg at 0.8 are 0.72 kg of nuts beside her own 2.7 kg: 5 scoops of 0.675 kg, the nearest quarter."""
    stood(substituted(sitting), 600).press("m", "1", "enter")
    page = sitting.to_step("Fennel", "feed").text()
    assert "LUCERNE PELLETS" not in page
    assert "SOAK    THROWN OUT. Instead of 0.90 kg lucerne pellets: 0.72 kg dairy nuts" in page
    assert "(ratio 0.80, no cap)" in page
    sitting.press("enter")
    (nuts,) = sitting.newest().of(FedFigure)
    assert [nuts.due_kg, nuts.given_kg] == pytest.approx([3.42, 3.375])


def test_what_the_cap_leaves_is_made_up_by_hay(sitting: Sitting) -> None:
    """0.4 kg of nuts stand for 0.5 kg; the rest is 0.4 kg."""
    stood(substituted(sitting, most_kg=0.4), 600).press("m", "1", "enter")
    page = " ".join(sitting.to_step("Fennel", "feed").text().split())
    assert "0.40 kg dairy nuts (ratio 0.80, cap 0.40 kg a head), and 0.40 kg hay" in page


def test_without_a_rule_it_says_which_key_sets_one(sitting: Sitting) -> None:
    """And none of it is given."""
    stood(sitting, 600).press("m", "1", "enter")
    page = " ".join(sitting.to_step("Fennel", "feed").text().split())
    assert "lucerne pellets THROWN OUT, nothing stands in for it: F, lucerne pellets sets what does" in page
    sitting.press("enter")
    assert [fed.given_kg for fed in sitting.newest().of(FedFigure)] == pytest.approx([2.7, 0.0])


def test_too_little_is_shared_out_on_the_feed_step(sitting: Sitting) -> None:
    """0.6 of 0.9 kg: what Enter writes is what there is, and what was due stays beside it."""
    stood(sitting, 600, dry_kg=0.6).press("enter")
    page = sitting.to_step("Fennel", "feed").text()
    assert "SOAK    0.60 of 0.90 kg: too little was put to soak" in page
    sitting.press("enter")
    _, lucerne = sitting.newest().of(FedFigure)
    assert [lucerne.due_kg, lucerne.given_kg] == pytest.approx([0.9, 0.6])


def test_the_screen_of_a_replaced_feed_is_as_kept(sitting: Sitting, screen: SnapshotAssertion) -> None:
    stood(substituted(sitting, most_kg=0.4), 600).press("m", "1", "enter")
    assert sitting.to_step("Fennel", "feed").text() == screen


def test_the_screen_of_too_little_is_as_kept(sitting: Sitting, screen: SnapshotAssertion) -> None:
    stood(sitting, 600, dry_kg=0.6).press("enter")
    assert sitting.to_step("Fennel", "feed").text() == screen


def test_why_says_what_the_new_amount_is_made_of(sitting: Sitting) -> None:
    stood(substituted(sitting, most_kg=0.4), 600).press("m", "1", "enter")
    sitting.to_step("Fennel", "feed").press("w")
    assert "to be made up by hay 0.40 kg" in " ".join(sitting.text().split())
    page = " ".join(sitting.press("down", "down", "enter", "down", "enter").text().split())
    assert "HOW the smaller of it and the most for a head x heads" in page
    assert "the most for a head 0.4 kg your rule, set under F" in page
    assert "hay for the rest (common practice)" in page


def test_f_at_the_bucket_sets_what_stands_in_and_says_what_that_changes(sitting: Sitting) -> None:
    """Nuts at 0.8, thrown out after it: they are due in the place of the lucerne."""
    sitting.to_step(LUCERNE, "soak").press("f")
    assert "thrown out, what is given instead: nothing yet" in sitting.text()
    sitting.press("6", "enter", "d", "enter", "backspace", "0.8", "pagedown")
    assert "0.90 kg thrown out: 0.72 kg dairy nuts" in sitting.text()
    sitting.press("enter")
    assert "thrown out, what is given instead: dairy nuts, 0.80 for 1" in sitting.text()
    sitting.to_step(LUCERNE, "soak").press("m", "1", "enter")
    assert "Instead of 0.90 kg lucerne pellets: 0.72 kg dairy nuts" in sitting.to_step("Fennel", "feed").text()


def test_the_closing_says_what_to_put_to_soak_and_between_when(sitting: Sitting, clock: HandClock) -> None:
    """Its dry feed, its water, the window; later on that it will be late, also once it is written."""
    assert "lucerne pellets 0.90 kg dry + 1.8 kg water, for the evening round. When it begins" in told(sitting)
    rows = [RowDraft("setting", {"name": SettingName.EVENING_AT, "value": "17:30"})]
    sitting.walker.change(rows, Subject(), "times")
    window = "for the evening round at 17:30: put to soak between 01:30 and 12:30"
    assert window in told(sitting)
    assert "LATE: 40 min" not in told(sitting)
    clock.move(hours=6, minutes=39)
    late = "ready 18:10, LATE: 40 min after the round begins"
    assert f"{window}; begun now {late}" in told(sitting)
    sitting.to_step(LUCERNE, "soak", 1).press("enter")
    sitting.walker.live = True
    assert f"lucerne pellets; {late}" in told(sitting)


def told(sitting: Sitting) -> str:
    """The closing in one line, wherever it wraps."""
    sitting.place = sitting.house.closing()
    return " ".join(sitting.text(120, 60).split())


def test_on_the_board_a_soak_not_looked_at_is_asked_about_and_marked_too(sitting: Sitting) -> None:
    """Fennel's bucket is the first line."""
    sitting.press("b", "enter")
    assert sitting.said.startswith("Look at the soaked lucerne pellets first")
    assert sitting.written() == 0
    sitting.press("!", "enter")
    assert [fed.given_kg for fed in sitting.newest().of(FedFigure)] == pytest.approx([2.7, 0.9])
