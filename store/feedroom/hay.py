"""Hay until turnout: how long the bales last, and how many lack."""

from datetime import date, timedelta
from uuid import UUID

from msgspec import Struct

from store.book.needs import Needs
from store.book.stocks import FeedSettings
from store.book.turn import Turn
from store.book.words import EVENING, MORNING
from store.husbandry.hay import Bales, bales_last, in_bales, lost
from store.husbandry.stock import a_day_of


class HayLeft(Struct, frozen=True):
    """How long hay lasts, until turnout. eaten_kg: of what is put out a day; None: it is not said what is lost."""

    days: int
    eaten_kg: float | None
    bales: Bales


def hay_left(there_kg: float, bale_kg: float, put_out_kg: float, today: date, settings: FeedSettings) -> HayLeft | None:
    """By weighed bales, until the farm's day of turnout. [kg] None: that day is not set, or over.

    bale_kg: of one, weighed. put_out_kg: a day; what is lost of it is in it already. Raises ValueError below zero.
    """
    if settings.turnout_on is None or settings.turnout_on <= today:
        return None
    days = (settings.turnout_on - today).days
    lost_percent = settings.hay_loss_percent
    eaten_kg = put_out_kg - lost(put_out_kg, lost_percent or 0.0)
    found = bales_last(in_bales(max(there_kg, 0.0), bale_kg), bale_kg, lost_percent or 0.0, eaten_kg, days)
    return HayLeft(days, None if lost_percent is None else eaten_kg, found)


def a_day_kg(needs: Needs, feed_id: UUID, today: date, days: int) -> float:
    """What a day takes of a feed on the average of some whole days, from tomorrow on, by the plans for them. [kg]

    Not of today: what is fed of it already takes nothing more, and the average would fall with every feeding.
    """
    turns = [Turn(today + timedelta(days=n), slot) for n in range(1, days + 1) for slot in (MORNING, EVENING)]
    return a_day_of(sum(needs.kg(feed_id, turn) for turn in turns), days) if days else 0.0


def hay_words(found: HayLeft) -> str:
    """`lasts 63 days, short 100 bales`, `lasts until turnout`."""
    if found.bales.short:
        return (
            f"lasts {found.bales.days} days, short {found.bales.short} {'bale' if found.bales.short == 1 else 'bales'}"
        )
    return "lasts until turnout"
