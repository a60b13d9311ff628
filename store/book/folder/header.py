"""farm.toml: which farm, and its first settings. Everything that changes later is a dated row."""

import json
import tomllib
from pathlib import Path
from uuid import UUID

from msgspec import Struct

from store.book.clock import EPOCH
from store.book.errors import FolderError
from store.book.folder import REVISION
from store.book.folder.cells import PENWALK, id_of
from store.book.folder.settings import misfit
from store.book.records import Farm, Row, Setting
from store.book.words import FIRST_SETTINGS, SettingName

FILE = "farm.toml"


class Header(Struct, frozen=True):
    """What farm.toml says."""

    id: UUID
    settings: dict[SettingName, str]

    @property
    def zone(self) -> str:
        """The farm's time zone, as `Europe/Dublin`."""
        return self.settings[SettingName.ZONE]

    def rows(self) -> list[Row]:
        """The farm and its first settings, in force from the beginning of time."""
        firsts = [
            Setting.model_validate(
                {
                    "id": first_id(self.id, name),
                    "name": name,
                    "value": value,
                    "begins_at": EPOCH,
                    "written_at": EPOCH,
                }
            )
            for name, value in self.settings.items()
        ]
        return [Farm(id=self.id), *firsts]


def first_id(farm_id: UUID, name: SettingName) -> UUID:
    """The id of the first setting of a name; it stands in farm.toml, not in setting.csv."""
    return id_of(f"first-{name}", "setting", farm_id)


def read_header(folder: Path) -> Header:
    """Read farm.toml. Raises FolderError."""
    try:
        farm = tomllib.loads((folder / FILE).read_text(encoding="utf-8-sig"))["farm"]
    except (FileNotFoundError, NotADirectoryError) as error:
        raise FolderError(f"{folder} is no farm folder: it has no {FILE}.") from error
    except (tomllib.TOMLDecodeError, UnicodeDecodeError, KeyError) as error:
        raise FolderError(f"{FILE}: cannot be read: {error}. Expected a table [farm].") from error
    if not isinstance(farm, dict):
        raise FolderError(f"{FILE}: found farm = {farm}; expected a table [farm].")
    found = {name: str(farm.get(name, "")) for name in FIRST_SETTINGS}
    wrong = _mistakes(farm, found)
    if wrong:
        raise FolderError("\n".join(wrong))
    return Header(id_of(str(farm["id"]), "farm", PENWALK), found)


def write_header(folder: Path, header: Header) -> None:
    """Write farm.toml."""
    lines = ["[farm]", f"revision = {REVISION}", f"id = {json.dumps(str(header.id))}"]
    lines += [f"{name} = {json.dumps(value, ensure_ascii=False)}" for name, value in header.settings.items()]
    (folder / FILE).write_text("\n".join(lines) + "\n", encoding="utf-8")


def _mistakes(farm: dict[str, object], found: dict[SettingName, str]) -> list[str]:
    wrong = []
    if farm.get("revision") != REVISION:
        expected = f"{REVISION}, the form this Penwalk reads"
        wrong.append(f"{FILE}, revision: found «{farm.get('revision', '')}»; expected {expected}.")
    if not farm.get("id"):
        wrong.append(f"{FILE}, id: found «»; expected a word or a UUID.")
    unfit = ((name, misfit(name, value)) for name, value in found.items())
    return wrong + [f"{FILE}, {name}: found «{found[name]}»; expected {words}." for name, words in unfit if words]
