"""A sheet about one thing that has a name: a new one, or one that is there."""

from collections.abc import Mapping
from typing import Any, ClassVar
from uuid import UUID

from store.book.register import Register
from store.herd.sheet import YardSheet


class ThingSheet(YardSheet):
    """About a row of a table; it is empty where the thing is new."""

    TABLE: ClassVar[str]

    def __init__(self, register: Register, id_: UUID | None = None) -> None:
        """id_ None: a new one."""
        super().__init__(register)
        self.id_ = id_
        self.row: Mapping[str, Any] = register.get(self.TABLE, id_) or {}
