"""My farm: every chapter with what it holds, and what is missing before a round can be walked."""

from uuid import UUID

from store.book.drafts import Subject
from store.book.register import Register
from store.herd.animal import kept
from store.herd.feed import feeds_in_use
from store.herd.settings import SettingsSheet
from store.herd.task import TaskSheet
from tui.farm.chapters import ANIMALS, FEEDS, JOBS, MEASURES, PAILS, PENS, PEOPLE, PLANS
from tui.farm.listing import Chapter, Entry, Listing, opened
from tui.farm.things import animal, asking, feed, opening, pen, treatments
from tui.place import Place, Rooms

READY = "A round can be walked. Esc goes to it; everything here can be changed later too."


def _entries(register: Register) -> list[Entry]:
    counts = {chapter.title: chapter.held(register) for chapter in CHAPTERS}
    return [
        *(Entry(f"{chapter.title}: {counts[chapter.title] or 'none'}", opening(chapter)) for chapter in CHAPTERS),
        Entry("SETTINGS: units, times, limits, the vet's number", asking(SettingsSheet)),
    ]


CHAPTERS = (PENS, ANIMALS, FEEDS, MEASURES, PLANS, PAILS, JOBS, PEOPLE)
MY_FARM = Chapter("MY FARM", _entries)


def missing(register: Register) -> Chapter | None:
    """The first chapter that a round cannot do without and that holds nothing yet."""
    held = {
        PENS.title: any(row["in_use"] for row in register.all("pen_as")),
        ANIMALS.title: kept(register),
        FEEDS.title: feeds_in_use(register),
        MEASURES.title: register.rows["weighing"],
        PLANS.title: any(row["due_kg"] is not None for row in register.all("feed_plan")),
    }
    return next((chapter for chapter in CHAPTERS if not held.get(chapter.title, True)), None)


class MyFarm(Listing):
    """The chapters; the first that is missing is picked."""

    def __init__(self, rooms: Rooms, back: Place, step_id: UUID | None) -> None:
        """Over the place that it goes back to; step_id: where in the walk that is."""
        self.step_id = step_id
        super().__init__(rooms, back, MY_FARM)
        self.begun = self.walker.looked_at
        self._to_missing()

    def heading(self) -> str:
        """What is still missing."""
        chapter = missing(self.up_to_date())
        name = self.walker.farm.name
        return f"MY FARM  {name}. {READY if chapter is None else f'Next: {chapter.title}. Enter begins.'}"

    def _read(self) -> None:
        super()._read()
        self._to_missing()

    def _to_missing(self) -> None:
        """Something new may be there: on to what is missing next."""
        chapter = missing(self.register)
        if chapter:
            self.row = CHAPTERS.index(chapter)

    def about(self, subject: Subject) -> Place:
        """The sheets of an animal, pen, feed or job; the chapters where it is none of these."""
        of = (
            ("animal_as", subject.animal_id, animal),
            ("pen_as", subject.pen_id, pen),
            ("feed_as", subject.feed_id, feed),
        )
        for table, id_, chapter in of:
            row = self.register.get(table, id_)
            if row:
                return Listing(self.rooms, self, chapter(row))
        return asking(TaskSheet, subject.task_id)(self) if subject.task_id else self

    def treatments(self, animal_id: UUID) -> Place:
        """The treatments of an animal; the first begins where there are none."""
        row = self.register.get("animal_as", animal_id)
        return opened(Listing(self.rooms, self, treatments(row))) if row else self

    def back(self) -> Place:
        """To the round, drawn anew where something was changed."""
        as_it_was = self.begun == self.walker.looked_at or self.came_from.READS_ANEW
        return self.came_from if as_it_was else self.rooms.at_step(self.step_id)
