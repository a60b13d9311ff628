"""Where animals stood over some time, and in which pens a feed stood free. Not on the way to the first frame."""

from collections.abc import Sequence
from datetime import datetime
from uuid import UUID

from store.book.clock import micros, moment
from store.book.desk import Desk, FoundRow
from store.book.reading import stock_sql
from store.book.reading.facts import maybe_uid, uid
from store.book.stood import Changes, Stood


def read_stood(desk: Desk, since: datetime, until: datetime) -> Stood:
    """Where each animal stood, and whether it was kept, from a moment until another."""
    values = {"since": micros(since), "at": micros(until)}
    pens, kept = (
        [*desk.rows(before, values), *desk.rows(after, values)]
        for before, after in ((stock_sql.STOOD_AT, stock_sql.STOOD_SINCE), (stock_sql.KEPT_AT, stock_sql.KEPT_SINCE))
    )
    in_pens = _changes([(id_, maybe_uid(pen), at) for id_, pen, at in pens])
    return Stood(since, until, in_pens, _changes([(id_, bool(kept), at) for id_, kept, at in kept]))


def read_free(desk: Desk, feed_id: UUID, until: datetime) -> Changes:
    """By pen whether a feed stood free in it, and since when."""
    found = desk.rows(stock_sql.FREE, {"feed": feed_id.bytes, "at": micros(until)})
    return _changes([(pen, bool(offered), at) for pen, offered, at in found])


def _changes(found: Sequence[FoundRow]) -> Changes:
    """By id, oldest first; of two that begin together the one written last comes last."""
    changes: dict[UUID, tuple[tuple[datetime, object], ...]] = {}
    for id_, value, at in found:
        changes[uid(id_)] = (*changes.get(uid(id_), ()), (moment(at), value))
    return changes
