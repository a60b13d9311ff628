"""The farm's own rules in force: what is barred for whom, withheld milk, soaking by the air of the day, sharing."""

from datetime import datetime, timedelta
from uuid import UUID

from store.book.desk import Desk
from store.book.facts.feed import SoakLimit
from store.book.facts.milk import Withholding
from store.book.facts.span import span
from store.book.reading import read_facts
from store.book.records import Setting
from store.book.records.feeding import FeedAs, FeedPlan, NotFor, SoakRule
from store.book.records.yard import AnimalAs, Sharing, Withheld
from store.book.words import Air, Fate, SettingName, Species, Stage, Water
from store.round.measured import fates_of
from store.round.plan import plan
from tests.farm import MORNING
from tests.store.book.seeing import NOW, animal, put, seen
from tests.store.round.named import milk_of

HOUR, TICK = timedelta(hours=1), timedelta(microseconds=1)


def feed_id(desk: Desk, name: str) -> UUID:
    """The id of a feed."""
    return next(feed.id for feed in seen(desk).feeds.values() if feed.name == name)


def test_a_feed_is_barred_for_each_species_by_its_own_newest_row(desk: Desk) -> None:
    """Barred for horses too, free for sheep again: each from its moment on."""
    nuts = feed_id(desk, "dairy nuts")
    assert seen(desk).feeds[nuts].not_for == {Species.SHEEP}
    put(desk, NotFor, feed_id=nuts, species=Species.HORSE)
    put(desk, NotFor, feed_id=nuts, species=Species.SHEEP, barred=False)
    put(desk, NotFor, feed_id=nuts, species=Species.GOAT, begins_at=NOW + HOUR)
    assert seen(desk).feeds[nuts].not_for == {Species.HORSE}
    assert seen(desk, NOW + HOUR).feeds[nuts].not_for == {Species.HORSE, Species.GOAT}
    assert seen(desk, MORNING - HOUR).feeds[nuts].not_for == {Species.SHEEP}


def test_of_two_rows_that_bar_together_the_one_written_last_is_in_force(desk: Desk) -> None:
    """In whichever order they came into the book."""
    nuts = feed_id(desk, "dairy nuts")
    put(desk, NotFor, feed_id=nuts, species=Species.SHEEP, barred=False, written_at=MORNING + HOUR)
    put(desk, NotFor, feed_id=nuts, species=Species.SHEEP, barred=True, written_at=MORNING)
    assert seen(desk).feeds[nuts].not_for == set()


def free(desk: Desk, at: datetime) -> bool:
    """Whether Hazel's milk may go anywhere at a moment, as the book is read then."""
    fates = fates_of(milk_of(seen(desk, at), "Hazel"), span(at))
    assert fates in (tuple(Fate), (Fate.THROWN_AWAY,))
    return len(fates) > 1


def test_milk_is_withheld_from_its_moment_to_its_end(desk: Desk) -> None:
    """To the microsecond, on both kinds of desk."""
    hazel = animal(seen(desk), "Hazel").id
    put(desk, Withheld, animal_id=hazel, ends_at=NOW + HOUR, why="udder tube")
    assert seen(desk).withheld[hazel][-1] == Withholding(MORNING, NOW + HOUR, "udder tube")
    moments = (MORNING - TICK, MORNING, NOW + HOUR - TICK, NOW + HOUR)
    assert [free(desk, at) for at in moments] == [True, False, False, True]


def test_milk_withheld_until_further_notice_is_withheld_until_a_row_ends_it(desk: Desk) -> None:
    """A year later, still; then an end is written."""
    hazel = animal(seen(desk), "Hazel").id
    put(desk, Withheld, animal_id=hazel, why="waits for the vet")
    year = NOW + timedelta(days=365)
    assert seen(desk, year).withheld[hazel][-1].until is None
    assert not free(desk, year)
    put(desk, Withheld, animal_id=hazel, ends_at=year, why="test", begins_at=year, written_at=year)
    assert not free(desk, year)
    put(desk, Withheld, animal_id=hazel, ends_at=year, why="waits for the vet", begins_at=year, written_at=year)
    assert free(desk, year)
    assert free(desk, year + timedelta(days=400))


def test_what_is_about_something_else_does_not_end_what_is_until_further_notice(desk: Desk) -> None:
    """She waits for the vet; a test for an hour, typed here or merged from another book, changes nothing of it."""
    hazel = animal(seen(desk), "Hazel").id
    put(desk, Withheld, animal_id=hazel, why="waits for the vet")
    put(desk, Withheld, animal_id=hazel, ends_at=NOW + 2 * HOUR, why="test", begins_at=NOW + HOUR)
    assert not free(desk, NOW + 9 * HOUR)


def test_a_long_withholding_is_not_lost_behind_many_short_ones(desk: Desk) -> None:
    """A month, and a test each day."""
    hazel = animal(seen(desk), "Hazel").id
    put(desk, Withheld, animal_id=hazel, ends_at=NOW + timedelta(days=30), why="long")
    for day in range(12):
        put(desk, Withheld, animal_id=hazel, begins_at=NOW + timedelta(days=day),
            ends_at=NOW + timedelta(days=day, hours=1), why=f"test {day}")  # fmt: skip
    assert not free(desk, NOW + timedelta(days=12))
    assert free(desk, NOW + timedelta(days=30))
    assert seen(desk, NOW + timedelta(days=30)).withheld[hazel][0].why == "long"


def test_of_two_withholdings_the_one_that_ends_last_holds(desk: Desk) -> None:
    """Whichever began first: a later one that is over does not free what an earlier one still holds."""
    hazel = animal(seen(desk), "Hazel").id
    put(desk, Withheld, animal_id=hazel, ends_at=NOW + 72 * HOUR, why="udder tube", begins_at=NOW - 2 * HOUR)
    put(desk, Withheld, animal_id=hazel, ends_at=NOW + HOUR, why="wound spray", begins_at=NOW - HOUR)
    assert [free(desk, NOW + hours * HOUR) for hours in (0, 2, 71, 72)] == [False, False, False, True]


def test_a_soak_is_by_the_rule_of_the_air_that_the_farm_has_now(desk: Desk) -> None:
    """Cold in winter; then it turns hot, and later somebody writes a new rule for that."""
    lucerne = feed_id(desk, "lucerne pellets")
    assert seen(desk).soak_limits == {lucerne: SoakLimit(Water.COLD, 5, 16, 2)}
    put(desk, Setting, name=SettingName.AIR, value="hot", begins_at=NOW)
    assert seen(desk).soak_limits == {lucerne: SoakLimit(Water.COLD, 4, 5, 2)}
    hours = {"least_h": 2, "most_h": 3, "water_per_kg": 3}
    put(desk, SoakRule, feed_id=lucerne, air=Air.HOT, water=Water.WARM, begins_at=NOW + HOUR, **hours)
    assert seen(desk, NOW + HOUR).soak_limits == {lucerne: SoakLimit(Water.WARM, 2, 3, 3)}
    assert seen(desk, MORNING).farm.air is Air.COLD


def test_meal_limit_air_and_vet_hold_from_their_day_on(desk: Desk) -> None:
    """As every setting."""
    assert read_facts(desk, NOW).meal_limit_kg == 3.5
    assert read_facts(desk, NOW).vet == "the practice, 555 0147, day and night"
    put(desk, Setting, name=SettingName.MEAL_LIMIT_KG, value="4.5", begins_at=NOW + HOUR)
    assert read_facts(desk, NOW).meal_limit_kg == 3.5
    assert read_facts(desk, NOW + HOUR).meal_limit_kg == 4.5


def test_a_calf_shares_with_the_cow_of_its_newest_row(desk: Desk) -> None:
    """Put to another cow; then weaned."""
    before = seen(desk)
    fennel, hazel, rook = (animal(before, name) for name in ("Fennel", "Hazel", "Rook"))
    assert [(share.cow_id, share.calf_id) for share in before.shares] == [(fennel.id, rook.id)]
    put(desk, Sharing, cow_id=hazel.id, calf_id=rook.id, longest_h=11)
    after = seen(desk)
    assert [(share.cow_id, share.calf_id, share.longest_h) for share in after.shares] == [(hazel.id, rook.id, 11)]
    assert after.shares[0].partings == before.shares[0].partings
    put(desk, Sharing, cow_id=hazel.id, calf_id=rook.id, shares=False, begins_at=NOW + HOUR)
    assert seen(desk, NOW + HOUR).shares == ()


def test_what_an_animal_asks_of_people_is_read(desk: Desk) -> None:
    """No child alone with her; two people."""
    tansy = animal(seen(desk), "Tansy").id
    assert (animal(seen(desk), "Tansy").adult_only, animal(seen(desk), "Tansy").two_people) == (False, False)
    put(desk, AnimalAs, animal_id=tansy, name="Tansy", stage=Stage.CLOSE_UP, adult_only=True, two_people=True)
    assert (animal(seen(desk), "Tansy").adult_only, animal(seen(desk), "Tansy").two_people) == (True, True)


def test_a_plan_of_a_feed_that_has_no_name_yet_is_read_without_a_crash(desk: Desk) -> None:
    """Its name begins after the plan, as a hand may well write it: an older round is opened all the same."""
    before = seen(desk)
    hay, sloe = feed_id(desk, "grass hay"), animal(before, "Sloe").id
    early = MORNING - timedelta(days=100)
    put(desk, FeedPlan, slot="morning", animal_id=sloe, feed_id=hay, due_kg=2.0, begins_at=early, written_at=early)
    plan(seen(desk, early))


def test_a_feed_keeps_its_bucket_and_its_bales(desk: Desk) -> None:
    """And whether it soaks; by its newest row."""
    lucerne = feed_id(desk, "lucerne pellets")
    found = seen(desk).feeds[lucerne]
    assert (found.soaked, found.bucket, found.baled) == (True, "RED", False)
    put(desk, FeedAs, feed_id=lucerne, name="lucerne chop", soaked=False, baled=True)
    found = seen(desk).feeds[lucerne]
    assert (found.name, found.soaked, found.bucket, found.baled) == ("lucerne chop", False, "", True)


def test_the_pails_of_a_cow_that_is_gone_or_no_cow_in_milk_are_read_in_every_round(desk: Desk) -> None:
    """Milked on the day before; then called something else than in milk, then sold: what she gave is in the house."""
    hazel = animal(seen(desk), "Hazel")
    row = {"animal_id": hazel.id, "name": hazel.name, "species": hazel.species, "written_at": NOW}
    before = seen(desk).pails[hazel.id]
    assert before
    for changed in ({"stage": "other"}, {"stage": "in milk", "kept": False}):
        put(desk, AnimalAs, **row, **changed)
        row["written_at"] = NOW + HOUR
        assert seen(desk).pails[hazel.id] == before
