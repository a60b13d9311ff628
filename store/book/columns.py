"""Column types that mean the same on SQLite and PostgreSQL, so that one SQL text reads both."""

from datetime import UTC, date, datetime
from enum import StrEnum
from uuid import UUID

from sqlalchemy import BigInteger, Dialect, Enum, LargeBinary, String, TypeDecorator

from store.book.clock import micros, moment


class Id(TypeDecorator[UUID]):
    """A UUID as its 16 bytes."""

    impl = LargeBinary(16)
    cache_ok = True

    def process_bind_param(self, value: UUID | None, dialect: Dialect) -> bytes | None:
        """Sixteen bytes for the database."""
        return None if value is None else value.bytes

    def process_result_value(self, value: bytes | None, dialect: Dialect) -> UUID | None:
        """The UUID of sixteen bytes."""
        return None if value is None else UUID(bytes=bytes(value))


class Moment(TypeDecorator[datetime]):
    """A moment as whole microseconds UTC: equal moments compare equal, in order, everywhere."""

    impl = BigInteger
    cache_ok = True

    def process_bind_param(self, value: datetime | None, dialect: Dialect) -> int | None:
        """Microseconds for the database. Raises ValueError for a time without a zone."""
        return None if value is None else micros(value)

    def process_result_value(self, value: int | None, dialect: Dialect) -> datetime | None:
        """The moment, in UTC."""
        return None if value is None else moment(value).astimezone(UTC)


class Day(TypeDecorator[date]):
    """A day of the farm's calendar as its ISO text."""

    impl = String(10)
    cache_ok = True

    def process_bind_param(self, value: date | None, dialect: Dialect) -> str | None:
        """ISO text for the database."""
        return None if value is None else value.isoformat()

    def process_result_value(self, value: str | None, dialect: Dialect) -> date | None:
        """The day."""
        return None if value is None else date.fromisoformat(value)


def one_of(words: type[StrEnum], name: str) -> Enum:
    """A column that holds one of our words and nothing else, checked by the database."""
    return Enum(
        words,
        name=name,
        values_callable=lambda enum: [member.value for member in enum],
        native_enum=False,
        create_constraint=True,
        validate_strings=True,
        length=40,
    )
