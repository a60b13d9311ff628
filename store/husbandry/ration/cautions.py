"""What is usually said, once, of what a ration holds. No diagnosis and no dose: local rules and the vet decide."""

from collections.abc import Callable, Mapping, Sequence

from msgspec import Struct

from store.husbandry.feeds.table import FATS, GRAINS
from store.husbandry.ration.grain import HAY_SUFFERS_PERCENT, MISSISSIPPI, ON_HAY_PERCENT, WHOLE_GRAIN, WHOLE_SOURCE
from store.husbandry.why import Source, Sure, Value

DECIDE = "Local rules and your vet decide."
UNCHECKED = "This ration was checked by nobody but you: have somebody who feeds cattle for a living look at it."
MINERAL = "Mineral, see its tag"
CITRUS, COTTONSEED = "Citrus pulp, dried", "Whole cottonseed, linted"
RICH_CALCIUM_PERCENT, FATTY_PERCENT = 1.0, 15.0
"""From so much of the dry matter on a feed counts here as rich in calcium, or as a fat. Assumed."""
CATTLE, SHEEP, HORSE = "cattle", "sheep", "horse"
CLOSE_UP, DRY, IN_MILK, CALF = "close to calving", "dry", "in milk", "calf"
_GRAIN_ROWS = {row.name for row in GRAINS}
_FAT_ROWS = {row.name for row in FATS}


class Fed(Struct, frozen=True):
    """What is given of one feed. name: as the farm calls it. kg: a head and day. resembles: a table row, if any.

    free: it stands free, and each takes of it what it likes.
    """

    name: str
    resembles: str
    kg: float
    made: Mapping[str, Value] = {}
    free: bool = False


class Held(Struct, frozen=True):
    """What a ration holds, and whom it can reach. species, stages: in the words of the book. changed: other than today.

    species: of all that stand with them. weight_kg: of a head; None: not known.
    """

    fed: Sequence[Fed]
    species: frozenset[str] = frozenset({CATTLE})
    stages: frozenset[str] = frozenset()
    weight_kg: float | None = None
    changed: bool = False


class Caution(Struct, frozen=True):
    """One caution. of: what it is about. holds: whether it is to be said."""

    of: str
    holds: Callable[[Held], bool]
    says: str
    source: Source


def _grain_kg(held: Held) -> float:
    return sum(each.kg for each in held.fed if each.resembles in _GRAIN_ROWS)


def _much_starch(held: Held) -> bool:
    """Grain beyond what hay bears; any, where her weight is not known."""
    most = HAY_SUFFERS_PERCENT if IN_MILK in held.stages else ON_HAY_PERCENT
    return _grain_kg(held) > (held.weight_kg or 0.0) * most / 100


def _whole_grain(held: Held) -> bool:
    names = (each.name.lower() for each in held.fed)
    return any("whole" in name and any(grain in name for grain in _WHOLE) for name in names)


def _fatty(held: Held) -> bool:
    return any(each.resembles in _FAT_ROWS or _percent(each, "fat_percent") >= FATTY_PERCENT for each in held.fed)


def _copper(held: Held) -> bool:
    return SHEEP in held.species and any(_is_bought(each) for each in held.fed)


def _medicated(held: Held) -> bool:
    return HORSE in held.species and any(_is_bought(each) for each in held.fed)


def much_calcium(held: Held) -> bool:
    """Whether one that is soon to calve gets a feed rich in calcium."""
    late = held.stages & {CLOSE_UP, DRY}
    fed = (each for each in held.fed if each.kg > 0 or each.free)
    return bool(late) and any(_percent(each, "ca_percent") >= RICH_CALCIUM_PERCENT for each in fed)


def _not_for_calves(held: Held) -> bool:
    return CALF in held.stages and any(each.resembles in (CITRUS, COTTONSEED) for each in held.fed)


def _is_bought(fed: Fed) -> bool:
    return fed.resembles == MINERAL or fed.resembles.startswith("Compound")


def _percent(fed: Fed, part: str) -> float:
    return fed.made[part].amount if part in fed.made else 0.0


_WHOLE = (*WHOLE_GRAIN, "corn", "maize")
CAUTIONS = (
    Caution("change", lambda held: held.changed,
            "A large change, as from hay to much grain, takes two to four weeks in small steps; a small one less.",
            Source("farms.com, transitioning cattle from pasture to grain: 21 to 28 days")),
    Caution("starch", _much_starch,
            "Much grain at once makes cattle ill, and some die: small meals, hay first, locked from loose heads.",
            Source(f"merckvetmanual.com, grain overload in ruminants; {MISSISSIPPI.words}")),
    Caution("whole grain", _whole_grain,
            "Whole grain passes through grown cows in part: roll barley and wheat; oats gain little.",
            WHOLE_SOURCE),
    Caution("fat", _fatty,
            "Fat and oil put hay digestion down: begin with little, stay below the limit, none for young calves.",
            Source("sites.ext.vt.edu/newsletter-archive/dairy/1996-11/knowfeed.html")),
    Caution("copper", _copper,
            "Sheep stand with them: copper in mineral or mixed feed for cattle can poison sheep. Keep it from them.",
            Source("inpractice.bmj.com/content/19/9/503: sheep bear 15 ppm, dairy-cattle.extension.org: cattle 40")),
    Caution("medicated feed", _medicated,
            "A horse stands with them: cattle feed with monensin kills horses. Read its label, keep it from them.",
            Source("wcvmtoday.usask.ca/articles/2012/monensin-fatal-feed.php: toxic to horses at a tenth of cattle's")),
    Caution("calcium before calving", much_calcium,
            "Much calcium before calving (lucerne, clover, citrus pulp, mineral) is linked with milk fever after it.",
            Source("hoards.com/blog-12474; less than 20 g a day is the low way")),
    Caution("young calves", _not_for_calves,
            "Whole cottonseed is not for calves that do not chew the cud yet, citrus pulp not below two months.",
            Source("cattletoday.com/threads/55165, after Florida BUL829; of cottonseed from memory", Sure.MEMORY)),
)  # fmt: skip


def cautions(held: Held) -> tuple[str, ...]:
    """Each caution that what is held calls for, once, and last who decides; none: nothing to say."""
    given = Held(
        [each for each in held.fed if each.kg > 0 or each.free], held.species, held.stages, held.weight_kg, held.changed
    )
    found = tuple(each.says for each in CAUTIONS if each.holds(given))
    return (*found, DECIDE) if found else ()


def checked(checked_by: str | None) -> str:
    """What is said under a ration until the farm has named who checked it; empty: it has."""
    return "" if checked_by and checked_by.strip() else UNCHECKED
