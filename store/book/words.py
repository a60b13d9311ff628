"""The words that records, reading and the round share. No heavy import here: it is on the way to the first frame."""

from enum import StrEnum


class Kind(StrEnum):
    """What a step asks for."""

    COUNT = "count"
    SOAK = "soak"
    HAY = "hay"
    FEED = "feed"
    APART = "apart"
    UDDER = "udder"
    MILK = "milk"
    DOSE = "dose"
    LOOK = "look"
    TASK = "task"
    NOTE = "note"
    ROUND = "round"  # the round itself was ended
    DELIVERY = "delivery"
    STOCK = "stock"  # weighed or counted in the feed room
    LOSS = "loss"
    WEATHER = "weather"
    COOL = "cool"  # the milk of a round is in ice
    BIRTH = "birth"
    WATCH = "watch"  # something that is looked at again at a time
    JAR = "jar"  # milk for the house is used up


MAY_BE_OF_ALL = (Kind.NOTE, Kind.ROUND, Kind.WEATHER, Kind.COOL, Kind.WATCH)
"""Kinds of entry that may be about the whole yard."""


class State(StrEnum):
    """What became of a step. Not recorded is no state: there is no entry, or the newest says open."""

    DONE = "done"
    SKIPPED = "skipped"
    MOVED_ON = "moved on"  # to the next round
    ON_PAPER = "on paper"  # done, but not typed in yet
    OPEN = "open"


class Apart(StrEnum):
    """Where a calf is, as to the cow it shares."""

    SHUT_AWAY = "shut away"
    LET_IN = "let in"
    GOT_OUT = "got out"
    TOGETHER = "left together"  # on purpose, for a night


class Soak(StrEnum):
    """What was done with a soaked feed."""

    STARTED = "started"
    FIT = "fit"  # soft right through, smells sweet
    THROWN_OUT = "thrown out"


class Fill(StrEnum):
    """How an udder feels before milking."""

    SLACK = "slack"
    COMFORTABLE = "comfortable"
    FULL = "full"
    TIGHT = "tight"


class Quarter(StrEnum):
    """A quarter of the udder; left and right are the cow's own."""

    LEFT_FRONT = "left front"
    RIGHT_FRONT = "right front"
    LEFT_HIND = "left hind"
    RIGHT_HIND = "right hind"


class Sign(StrEnum):
    """What was found at a quarter."""

    CLOTS = "clots"
    HARD = "hard"
    HOT = "hot"
    TIGHT = "tight"
    LITTLE_MILK = "little milk"
    SORE_TEAT = "sore teat"
    CLEAR = "clear again"
    SLACK = "slack"
    FULL = "full"


MARKS = frozenset((Sign.CLOTS, Sign.HARD, Sign.HOT, Sign.TIGHT, Sign.LITTLE_MILK, Sign.SORE_TEAT))
"""What is asked about again at every milking; how full a quarter is, is only told."""


class Asks(StrEnum):
    """What a look that falls due asks for."""

    HOW = "how it looks"
    CONDITION = "condition"
    GIRTH = "heart girth"
    TEMPERATURE = "temperature"


class Looks(StrEnum):
    """How what is looked at has come on since the last time."""

    RIGHT = "all right"
    BETTER = "better"
    SAME = "the same"
    WORSE = "worse"


class Water(StrEnum):
    """The water a feed is soaked in."""

    COLD = "cold"
    WARM = "warm"


class Air(StrEnum):
    """How warm it is where the soak stands."""

    COLD = "cold"
    MILD = "mild"
    HOT = "hot"


class Fate(StrEnum):
    """Where a pail of milk went."""

    HOUSE = "house"
    CALVES = "calves"
    OTHER_ANIMALS = "other animals"
    SOLD_OR_GIVEN = "sold or given"
    THROWN_AWAY = "thrown away"


class Species(StrEnum):
    """Kinds of animal in the yard."""

    CATTLE = "cattle"
    SHEEP = "sheep"
    GOAT = "goat"
    HORSE = "horse"
    POULTRY = "poultry"


class Stage(StrEnum):
    """Where an animal stands in its life; it decides what the round asks."""

    IN_MILK = "in milk"
    DRY = "dry"
    CLOSE_UP = "close to calving"
    HEIFER = "heifer"
    SUCKLER = "suckler"
    STEER = "steer"
    CALF = "calf"
    BULL = "bull"
    OTHER = "other"


class Units(StrEnum):
    """What amounts are shown in."""

    METRIC = "metric"
    US = "us"


class Dialect(StrEnum):
    """Whose words the trade is told in."""

    BRITISH = "british"
    AMERICAN = "american"


class Coat(StrEnum):
    """The coat of the cattle outside: it decides from which cold on they need more."""

    SUMMER = "wet or summer"
    AUTUMN = "dry autumn"
    WINTER = "dry winter"
    HEAVY = "dry heavy winter"


class SaidBy(StrEnum):
    """Who says how long milk and meat are withheld after a treatment."""

    LABEL = "label"
    VET = "vet"


class Origin(StrEnum):
    """Where the composition of a feed comes from."""

    TABLE = "table"
    TAG = "tag"
    TEST = "test"


LEAP_YEAR = 2028
"""A year that has every day of a year, 29 February too."""


class SettingName(StrEnum):
    """What the farm decides once and may change on a day."""

    NAME = "name"
    ZONE = "zone"
    UNITS = "units"
    EVENING_FROM = "evening_from"
    MEAL_LIMIT_KG = "meal_limit_kg"
    AIR = "air"
    VET = "vet"
    DIALECT = "dialect"
    MORNING_AT = "morning_at"
    EVENING_AT = "evening_at"
    CHANGE_STEP_KG = "change_step_kg"
    LEAD_DAYS = "lead_days"
    TURNOUT_ON = "turnout_on"
    HAY_LOSS_PERCENT = "hay_loss_percent"
    COAT = "coat"
    CURRENCY = "currency"
    COLD_WITHIN_MIN = "cold_within_min"
    COLOSTRUM_MILKINGS = "colostrum_milkings"
    SUCKED_WITHIN_H = "sucked_within_h"
    CLEANSING_WITHIN_H = "cleansing_within_h"
    DROP_PERCENT = "drop_percent"
    JAR_DAYS = "jar_days"
    FAT_MOST_PERCENT = "fat_most_percent"
    FORAGE_LEAST_PERCENT = "forage_least_percent"
    CHANGE_STEP_PERCENT = "change_step_percent"
    CHANGE_STEP_DAYS = "change_step_days"
    COLD_MOST_PERCENT = "cold_most_percent"
    CALF_MILK_PERCENT = "calf_milk_percent"
    DRY_DAYS = "dry_days"
    CLOSE_UP_DAYS = "close_up_days"
    WEAN_STARTER_KG = "wean_starter_kg"
    CHECKED_BY = "checked_by"


FIRST_SETTINGS = (SettingName.NAME, SettingName.ZONE, SettingName.UNITS, SettingName.EVENING_FROM)
"""What every farm has set from its first day."""

MORNING, EVENING = "morning", "evening"
MIDDAY, NIGHT = "midday", "night"
"""Rounds that are not feeding rounds: nothing is fed, milked or put to soak for them."""
FEEDING = (MORNING, EVENING)
SLOTS = (MORNING, MIDDAY, EVENING, NIGHT)

NOT_NEEDED = "not needed today"
SKIP_REASONS = (
    NOT_NEEDED,
    "not here",
    "ran out",
    "would not eat or let me",
    "no time",
    "alone, not safe",
    "another reason, in your words",
)

EVERY_NIGHT = "1111111"
"""Nights of a week from Monday's on: 1, the calf is shut away."""
WITHHELD_MOST_H, MEAT_MOST_DAYS, DRY_MOST_DAYS, MILKINGS_MOST = 8784.0, 999.0, 400.0, 99
"""No label asks for longer than this. Common practice."""
DOSES_MOST = 99
"""More doses than this in one treatment is a slip of the keys."""
CONDITION_POINTS = (1.0, 9.0)
"""Scores run from 1 to 5 for dairy cows and from 1 to 9 for beef cows."""
GIRTH_CM = (40.0, 320.0)
TEMPERATURE_C = (30.0, 45.0)
"""Outside of these a tape or a thermometer was misread, whatever the animal. Common practice."""
GAIN_MOST_KG_DAY = 3.0
"""No cattle grow faster than this. [kg a day] Common practice."""
FAT_PERCENT, PROTEIN_PERCENT = (0.5, 15.0), (0.5, 10.0)
"""Outside of these a milk test was misread, whatever the cow. Common practice."""
STEP_MOST_KG = 9999.0
"""More feed than this in one step is a slip of the keys, whatever the pen. [kg]"""
MILK_MOST_KG = 80.0
"""More milk than this from one cow in one milking is a slip of the keys. [kg] Common practice."""
PAIL_MOST_KG = 120.0
"""A pail on a scale stays below this. [kg] Common practice."""
STOCK_MOST_KG = 1_000_000.0
"""A feed room holds less than this of one feed. [kg] Common practice."""
BAGS_MOST, PRICE_MOST = 99_999, 10_000_000.0
"""More bags in one delivery, or more of any money for it, is a slip of the keys. Common practice."""
WEIGHT_KG = (0.1, 2000.0)
"""Outside of these no animal of the yard was weighed rightly. Common practice."""
LOW_C, WIND_MOST_KMH = (-60.0, 40.0), 200.0
"""A night colder or warmer, or more wind, is a slip of the keys. Common practice."""
EVERY_MOST_DAYS = 366
"""What falls due less often than once a year is no task of a round."""
