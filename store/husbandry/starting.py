"""What a farm's own limit is until it has set one: starting values, each a cautious one that many a keeper changes."""

from store.husbandry.change import STEP_DAYS, STEP_PERCENT
from store.husbandry.dates.gestation import CLOSE_UP_DAYS, DRY_DAYS
from store.husbandry.why import Source, Sure, Value, given

JUDGED = Source("a cautious starting value", Sure.ASSUMED)
CAME = "a starting value"


def _start(amount: float, name: str, unit: str, source: Source = JUDGED) -> Value:
    return given(amount, name, unit, CAME, source)


FAT_MOST_PERCENT = _start(
    6.0, "most fat", "% of the dry matter",
    Source("7 % of the whole diet of dairy cows: sites.ext.vt.edu, newsletter dairy/1996-11/knowfeed; 6 % on forage "
           "and for young stock, which counts here, is from memory", Sure.MEMORY),
)  # fmt: skip
FORAGE_LEAST_PERCENT = _start(
    50.0, "least forage", "% of the dry matter", Source("agweb.com/article/nutrition_revisiting_forage_ndf")
)
CHANGE_STEP_PERCENT = _start(STEP_PERCENT, "most change in one step", "% of what a meal is now")
CHANGE_STEP_DAYS = _start(STEP_DAYS, "from step to step", "days")
COLD_MOST_PERCENT = _start(30.0, "most more for cold", "% of what they get now")
CALF_MILK_PERCENT = _start(
    15.0, "milk that a calf drinks", "% of its weight",
    Source("between the old 10 % and about 20 %, as kb.rspca.org.au, How much milk should dairy calves be fed"),
)  # fmt: skip
DRY = _start(DRY_DAYS, "dry before she is due", "days", Source("51 to 60 days: J. Dairy Sci. 2003, 86:3027"))
CLOSE_UP = _start(
    CLOSE_UP_DAYS, "fed for calving before she is due", "days", Source("go.distance.ncsu.edu/ans231/phase1.php")
)
WEAN_STARTER_KG = _start(
    1.0, "dry feed that a calf eats before it is weaned", "kg a day",
    Source("2 lb on three days running: WSU FS288E, how much starter; about 1 kg is common practice"),
)  # fmt: skip
