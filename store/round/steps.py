"""The steps of a round, as frozen values. One class per kind; `store.round.plan` makes them."""

from datetime import datetime
from uuid import UUID

from msgspec import Struct

from store.book.drafts import Subject
from store.book.facts.calves import ApartRule, Parting
from store.book.facts.care import Look, Treatment
from store.book.facts.farm import Animal, Pen
from store.book.facts.feed import Batch, Feed, PlanRow, SoakLimit, Told
from store.book.facts.jobs import Job
from store.book.facts.milk import Milking, Withholding
from store.book.snapshot import Given, Written
from store.book.turn import Turn
from store.book.words import Apart, Kind, Soak, State
from store.round.quarters import Mark


class _Moved(Struct, frozen=True, kw_only=True):
    moved_from: Turn | None = None


class Step(_Moved, frozen=True):
    """One job of the round. `entry` is what the book holds for it: the newest, or None.

    moved_from: the earlier round that moved it on to this one.
    """

    step_id: UUID
    kind: Kind
    subject: Subject
    name: str  # whose step: "FENNEL", "Orchard", "Sweep the stand"
    place: str  # where: the pen's name, or the bench
    entry: Written | None

    @property
    def state(self) -> State:
        """What became of it so far."""
        return State.OPEN if self.entry is None else self.entry.state


class CountStep(Step, frozen=True):
    """Heads in a pen, and a look at each. A short count stays open."""

    pen: Pen
    heads: tuple[Animal, ...]


class SoakCheckStep(Step, frozen=True):
    """What stands in the soak bucket, before it is fed. batch None: nothing was written down as put to soak.

    fed_kg: what was fed of it in this round already. [kg dry]
    """

    feed: Feed
    due_kg: float  # dry, what this round needs of it
    batch: Batch | None
    limit: SoakLimit | None
    fed_kg: float = 0.0


class SoakStartStep(Step, frozen=True):
    """What must be put to soak for the next round. due_kg: dry; water_kg: by the farm's rule, None without one. [kg]"""

    feed: Feed
    due_kg: float
    water_kg: float | None
    limit: SoakLimit | None
    for_slot: str
    told: Told | None = None


class DueFeed(Struct, frozen=True):
    """One feed of a feed step: the weight that is due, and how it is told at the bench.

    due_kg: for all heads together. [kg, soaked feeds dry]
    measures: the nearest quarter of the measure; None: told by weight.
    as_shown_kg: what those measures weigh, or what there is of it; what Enter writes. [kg]
    rows: the plan of one head. [kg]
    """

    feed: Feed
    told: Told | None
    due_kg: float
    measures: float | None
    as_shown_kg: float
    since: datetime | None = None
    position: int = 0
    rows: tuple[PlanRow, ...] = ()


class FeedStep(Step, frozen=True):
    """What one animal, or a pen fed as one, gets; of the kind hay where strings have to come off.

    soaked: how each soaked feed of its plan stands, also one that is replaced and not due any more.
    """

    animal: Animal | None
    heads: tuple[Animal, ...]
    due: tuple[DueFeed, ...]
    before: Given | None
    soaked: tuple["SoakedPart", ...] = ()


class Instead(Struct, frozen=True):
    """What stands in for a soaked feed: so much of another, at the farm's ratio, at most so much a head. [kg]

    rest_kg: of the soaked feed, dry, what that does not cover; hay makes it up, a kilogram for a kilogram.
    """

    feed: Feed
    kg: float
    rest_kg: float
    ratio: float
    most_kg: float | None


class SoakedPart(Struct, frozen=True):
    """A soaked feed of a feed step: what is due of it by the plan, and what there is of it, for all heads. [kg dry]

    found: what the look at it found; None: nobody has looked. instead: where it was thrown out, what stands in for it.
    """

    feed: Feed
    found: Soak | None
    due_kg: float
    there_kg: float
    instead: Instead | None = None


class UdderStep(Step, frozen=True):
    """Look and feel only: a cow that is not milked now."""

    animal: Animal


class QuarterStep(Step, frozen=True):
    """A quarter that was marked in an earlier round: how it is now. Before she is milked or her udder is felt."""

    animal: Animal
    mark: Mark


class SharedCalf(Struct, frozen=True):
    """A calf that shares a cow's milk, and the newest that is known of where it is. rule: when it is shut away.

    was_out: it got out to her last, also where it was put back behind that.
    """

    calf: Animal
    last: Parting | None
    longest_h: float
    rule: ApartRule | None = None
    was_out: bool = False


class MilkStep(Step, frozen=True):
    """One cow to be milked; the calves that share her milk.

    emptied_at: since when her udder fills, None where that is not known.
    rates_kg_h: her last comparable pails, each by its own hours at full rate. [kg/h]
    marked: her quarters that are not clear yet, with what this round has found of them.
    left_in: why her calf was left with her last night, so that no milking is expected; empty: it was not.
    """

    animal: Animal
    calves: tuple[SharedCalf, ...]
    milking: Milking
    emptied_at: datetime | None
    rates_kg_h: tuple[float, ...]
    withheld: tuple[Withholding, ...]
    marked: tuple[Mark, ...] = ()
    left_in: str = ""


class CoolStep(Step, frozen=True):
    """The milk of the round into ice.

    within_min: the farm's limit. [min] first_at: the first pail of what is kept for people, None: none yet.
    kept_kg: all that is. [kg]
    """

    within_min: float
    first_at: datetime | None
    kept_kg: float


class ApartStep(Step, frozen=True):
    """A calf to be shut away from its cow, or let in to her.

    shut_at: when its rule has it shut away, None where it says no time. first_night: it never was before.
    other_cow: the second one that it sucks.
    """

    cow: Animal
    calf: SharedCalf
    want: Apart
    shut_at: datetime | None = None
    first_night: bool = False
    other_cow: Animal | None = None


class TaskStep(Step, frozen=True):
    """A standing job. job None: it is no longer among the farm's jobs, or is left of something that is gone."""

    adult_only: bool = False
    two_people: bool = False
    job: Job | None = None


class LookStep(Step, frozen=True):
    """Something about an animal that falls due to be looked at."""

    animal: Animal
    look: Look


class DoseStep(Step, frozen=True):
    """A dose of a treatment that falls due in this round: the how-manieth, and when."""

    animal: Animal
    treatment: Treatment
    number: int
    due_at: datetime


class PastStep(Step, frozen=True):
    """Something this round's book holds that is no longer planned: it still counts."""
