"""A week of soaked feed, worked out by hand: what the clock says, what is written, what each cow then gets."""

from datetime import UTC, datetime

import pytest
from hypothesis import example, given
from hypothesis import strategies as st
from msgspec.structs import replace

from store.book.facts.feed import Batch, Portion, SoakLimit, Substitute
from store.book.figures import FedFigure, SoakedFigure
from store.book.snapshot import Snapshot
from store.book.words import Soak, State, Water
from store.husbandry.measures import SAME_KG
from store.round.bucket import soaking_at
from store.round.confirm import Doubtful, undone
from store.round.measured import fed, soak_checked
from store.round.soaked import soak_question
from store.round.steps import FeedStep
from tests.store.round.made import NUTS, PULP, SCOOP, animal_named, dawn, hand, unhurried, with_portions, wrote
from tests.store.round.named import feed_of, soak_check_of

FENNEL, SLOE = 1.5, 2.0
RULE = SoakLimit(Water.COLD, 2, 18, 2)
INSTEAD = Substitute(NUTS.id, 0.8, 1.4)
"""Of nuts 0.8 kg stand for 1 kg of pulp, at most 1.4 kg a head."""

WEEK = """
night        | put to soak | kg  | looked at | the clock says | written             | Fennel   | Sloe
on time      | Tue 20:00   | 3.5 | Wed 06:30 | READY          | fit                 | 1.5 pulp | 2.0 pulp
last minute  | Tue 12:30   | 3.5 | Wed 06:30 | READY          | fit                 | 1.5 pulp | 2.0 pulp
too early, ! | Wed 05:20   | 3.5 | Wed 06:30 | TOO EARLY      | fit                 | 1.5 pulp | 2.0 pulp
past it      | Tue 12:20   | 3.5 | Wed 06:30 | PAST ITS LIMIT | thrown out: too old | 1.2 nuts | 1.4 nuts + 0.25 hay
frozen       | Tue 20:00   | 3.5 | Wed 06:30 | READY          | thrown out: frozen  | 1.2 nuts | 1.4 nuts + 0.25 hay
too little   | Tue 20:00   | 2.8 | Wed 06:30 | READY          | fit                 | 1.2 pulp | 1.6 pulp
too much     | Tue 20:00   | 4.0 | Wed 06:30 | READY          | fit                 | 1.5 pulp | 2.0 pulp
not known, ! |             |     | Wed 06:30 | NOT KNOWN      | fit                 | 1.5 pulp | 2.0 pulp
"""
DAYS = {"Tue": "2026-03-10", "Wed": "2026-03-11"}
ROWS = [[cell.strip() for cell in row.split("|")] for row in WEEK.strip().splitlines()[1:]]


def moment(words: str) -> datetime:
    """A moment of the table."""
    day, clock = words.split()
    return datetime.fromisoformat(f"{DAYS[day]}T{clock}").replace(tzinfo=UTC)


def farm(batch: Batch | None, substitute: Substitute | None = INSTEAD) -> Snapshot:
    """Two cows get pulp in this round, and what stands in the bucket."""
    found = dawn()
    for name, kg in (("Fennel", FENNEL), ("Sloe", SLOE)):
        found = with_portions(found, animal_named(found, name).id, Portion(PULP, kg, None))
    return replace(
        found,
        feeds={**found.feeds, NUTS.id: NUTS, PULP.id: PULP},
        batches={PULP.id: batch} if batch else {},
        soak_limits={PULP.id: RULE},
        substitutes={PULP.id: substitute} if substitute else {},
    )


def evening_before(kg: float) -> Snapshot:
    """So much pulp was put to soak at eight."""
    return farm(Batch(moment("Tue 20:00"), kg, 2 * kg))


def looked(snapshot: Snapshot, act: Soak, why: str = "") -> Snapshot:
    """The round after the bucket was looked into."""
    return wrote(snapshot, soak_checked(hand(snapshot), soak_check_of(snapshot, PULP.name), act, why))


def gets(step: FeedStep) -> str:
    """What stands on her step: `1.4 nuts + 0.25 hay`."""
    words = {NUTS.id: "nuts", PULP.id: "pulp"}
    fed_kg = [f"{due.as_shown_kg:.1f} {words[due.feed.id]}" for due in step.due]
    hay = [f"{part.instead.rest_kg:g} hay" for part in step.soaked if part.instead and part.instead.rest_kg > 1e-9]
    return " + ".join([*fed_kg, *hay])


def given_kg(snapshot: Snapshot, name: str) -> float | None:
    """What is written as given of the first feed of a step. [kg]"""
    entry = feed_of(snapshot, name).entry
    return entry.of(FedFigure)[0].given_kg if entry else None


@pytest.mark.parametrize(
    ("night", "soaked", "kg", "at", "says", "written", "fennel", "sloe"), ROWS, ids=lambda word: ""
)
def test_the_week_comes_out_as_it_was_worked_out_by_hand(
    night: str, soaked: str, kg: str, at: str, says: str, written: str, fennel: str, sloe: str
) -> None:
    """1.5 kg at 0.8 are 1.2 kg; the cap of 1.4 kg stands for 1.75 kg of 2.0 kg, and 0.25 kg are left to hay."""
    batch = Batch(moment(soaked), float(kg), 2 * float(kg)) if soaked else None
    assert soaking_at(batch, RULE, moment(at)).word == says, night
    act, _, why = written.partition(": ")
    after = looked(farm(batch), Soak(act), why)
    assert (gets(feed_of(after, "Fennel")), gets(feed_of(after, "Sloe"))) == (fennel, sloe), night


@pytest.mark.parametrize(
    ("put", "looked_at", "says"),
    [
        ("2026-03-28 20:00+01:00", "2026-03-29 06:00+02:00", "TOO EARLY"),  # nine hours, the clocks went forward
        ("2026-10-24 20:00+02:00", "2026-10-25 06:00+01:00", "READY"),  # eleven, they went back
    ],
)
def test_in_the_night_in_which_the_clocks_change_the_hours_count_and_not_the_wall(
    put: str, looked_at: str, says: str
) -> None:
    """From eight to six by the wall, with a rule of ten hours."""
    batch = Batch(datetime.fromisoformat(put), 3.5, 7.0)
    assert soaking_at(batch, replace(RULE, least_h=10), datetime.fromisoformat(looked_at)).word == says


def test_sour_pulp_is_a_loss_and_the_nuts_are_written_as_fed() -> None:
    """1.5 kg sour at 0.8: 1.2 kg of nuts are due and written, 1.5 kg of pulp are thrown out."""
    found = with_portions(farm(Batch(moment("Tue 20:00"), 1.5, 3.0)), animal_named(dawn(), "Sloe").id)
    after = looked(found, Soak.THROWN_OUT, "sour")
    (loss,) = after.entries[-1].of(SoakedFigure)
    assert (after.entries[-1].reason, loss.dry_kg) == ("sour", 1.5)
    (nuts,) = fed(hand(after), feed_of(after, "Fennel"), {}).figures
    assert isinstance(nuts, FedFigure)
    assert nuts.feed_id == NUTS.id
    assert [nuts.due_kg, nuts.given_kg] == pytest.approx([1.2, 1.2])


def test_a_substitute_that_she_gets_anyway_is_one_amount_with_it() -> None:
    """Two scoops of nuts of her own plan, and 1.2 kg instead of the pulp."""
    fennel = animal_named(dawn(), "Fennel").id
    own = (Portion(NUTS, 1.35, SCOOP), Portion(PULP, FENNEL, None))
    step = feed_of(looked(with_portions(evening_before(3.5), fennel, *own), Soak.THROWN_OUT, "sour"), "Fennel")
    (nuts,) = step.due
    assert nuts.due_kg == pytest.approx(2.55)
    assert nuts.measures == 3.75
    assert step.soaked[0].instead is not None


def test_what_stands_in_is_asked_about_above_the_meal_limit() -> None:
    """Though nothing was typed: 3.2 kg of her own, and 1.2 kg instead, where 3.5 kg is the limit."""
    fennel = animal_named(dawn(), "Fennel").id
    own = (Portion(NUTS, 3.2, None), Portion(PULP, FENNEL, None))
    found = looked(with_portions(evening_before(3.5), fennel, *own), Soak.THROWN_OUT, "sour")
    with pytest.raises(Doubtful, match=r"4\.40 kg in one meal; your limit is 3\.50 kg"):
        fed(hand(found), feed_of(found, "Fennel"), {})
    assert fed(hand(found), feed_of(found, "Fennel"), {}, sure=True).state is State.DONE


def test_without_a_rule_nothing_stands_in_and_none_of_it_is_given() -> None:
    """What was due stays beside it."""
    after = looked(farm(Batch(moment("Tue 20:00"), 3.5, 7.0), substitute=None), Soak.THROWN_OUT, "mouldy")
    step = feed_of(after, "Fennel")
    assert step.soaked[0].instead is None
    (pulp,) = fed(hand(after), step, {}).figures
    assert isinstance(pulp, FedFigure)
    assert (pulp.feed_id, pulp.due_kg, pulp.given_kg) == (PULP.id, FENNEL, 0.0)


def test_until_somebody_looked_a_feed_step_asks() -> None:
    """Fit or thrown out, it does not any more; looked at and undone, it does again."""
    found = evening_before(3.5)
    assert soak_question(feed_of(found, "Fennel")).startswith("Look at the soaked beet pulp first: G beet goes there.")
    after = looked(found, Soak.FIT)
    assert soak_question(feed_of(after, "Fennel")) == ""
    assert soak_question(feed_of(looked(found, Soak.THROWN_OUT), "Fennel")) == ""
    again = wrote(after, undone(hand(after), after.entries[-1]))
    assert soak_question(feed_of(again, "Fennel")) != ""


def test_what_was_fed_before_it_was_thrown_out_stays_as_it_was_written() -> None:
    """Fennel had hers: 2.0 kg are the loss, and only Sloe gets nuts instead."""
    found = evening_before(3.5)
    after = looked(wrote(found, fed(hand(found), feed_of(found, "Fennel"), {})), Soak.THROWN_OUT, "sour")
    (loss,) = after.entries[-1].of(SoakedFigure)
    assert loss.dry_kg == pytest.approx(2.0)
    assert (gets(feed_of(after, "Fennel")), gets(feed_of(after, "Sloe"))) == ("1.5 pulp", "1.4 nuts + 0.25 hay")


@unhurried
@example(there_kg=3.4921875, order=["Sloe", "Fennel"], looked_first=True)
@given(st.floats(0.01, 5), st.permutations(["Fennel", "Sloe"]), st.booleans())
def test_what_is_fed_of_a_batch_adds_up_to_it_in_whatever_order_it_is_typed(
    there_kg: float, order: list[str], looked_first: bool
) -> None:
    """No more than is due; and each cow's part does not hang on who was typed first."""
    found = evening_before(there_kg)
    shares = {name: feed_of(found, name).due[0].as_shown_kg for name in order}
    after = looked(found, Soak.FIT) if looked_first else found
    for name in order:
        after = wrote(after, fed(hand(after), feed_of(after, name), {}))
    after = after if looked_first else looked(after, Soak.FIT)
    assert {name: given_kg(after, name) for name in order} == pytest.approx(shares)
    short = there_kg < FENNEL + SLOE - SAME_KG
    assert sum(shares.values()) == pytest.approx(min(there_kg, FENNEL + SLOE), abs=1e-9 if short else SAME_KG)
