"""A sheet about one thing that has a name: a new one, or one that is there."""

from collections.abc import Iterable, Mapping
from typing import Any, ClassVar
from uuid import UUID

from store.book.register import Register
from store.herd.sheet import Wrong, YardSheet


class ThingSheet(YardSheet):
    """About a row of a table; it is empty where the thing is new."""

    TABLE: ClassVar[str]

    def __init__(self, register: Register, id_: UUID | None = None) -> None:
        """id_ None: a new one."""
        super().__init__(register)
        self.id_ = id_
        self.row: Mapping[str, Any] = register.get(self.TABLE, id_) or {}

    def refuse_taken(self, name: str, names: Iterable[str], what: str) -> None:
        """Raise Wrong where a new name is that of another one in use. names: of all in use."""
        if name != self.row.get("name") and name.lower() in {each.lower() for each in names}:
            raise Wrong("name", f"There is a {what} {name} already. Type another name, as {name} 2.")
