"""The command. Light: it decides what to do before anything heavy is loaded."""

import argparse
import sqlite3
import sys
from collections.abc import Sequence
from pathlib import Path

from platformdirs import user_data_path

from store.book.errors import BookError, NoBook
from tui.crash import CRASHED, report

OK, FAILED, STOPPED = 0, 1, 130
BOOKS = {"merge": "BOOK", "restore": "COPY"}
"""Commands that are given a book, not a folder, and what they call it."""


def main(words: Sequence[str] | None = None) -> int:
    """Run the command; its exit status. Every error of the book is one plain sentence."""
    chosen = _parser().parse_args(words)
    try:
        return int(chosen.act(chosen))
    except NoBook as error:
        print(f"{error}\n`penwalk demo` shows a pretend farm. `penwalk import FOLDER` makes a book of a farm folder.",
              file=sys.stderr)  # fmt: skip
    except BookError as error:
        print(error, file=sys.stderr)
    except (OSError, sqlite3.Error) as error:
        print(f"The disk refused: {_of_disk(error)}. Nothing half done is left in the book.", file=sys.stderr)
    except KeyboardInterrupt:
        print("Stopped. Nothing half done is left in the book.", file=sys.stderr)
        return STOPPED
    except Exception as error:  # noqa: BLE001 whatever broke, the keeper reads one plain sentence
        print(report(error), file=sys.stderr)
        return CRASHED
    return FAILED


def _of_disk(error: OSError | sqlite3.Error) -> str:
    """What the disk said, and about which file."""
    if isinstance(error, OSError):
        return f"{error.strerror or error}{f' ({error.filename})' if error.filename else ''}"
    return str(error)


class _Version(argparse.Action):
    """Looks the version up only when it is asked for: that takes as long as a whole reading of the book."""

    def __call__(self, parser: argparse.ArgumentParser, *_: object) -> None:
        """Print it and leave."""
        from importlib.metadata import version  # noqa: PLC0415

        parser.exit(OK, f"penwalk {version('penwalk')}\n")


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(prog="penwalk", description="The bench book of a keeper of a few cattle.")
    parser.add_argument("--version", action=_Version, nargs=0, help="say which Penwalk this is")
    parser.add_argument("--book", default=str(user_data_path("penwalk", appauthor=False) / "farm.penwalk"),
                        help="the book: a path, or a postgresql:// address")  # fmt: skip
    parser.add_argument("--look", choices=("dark", "light"), default="dark", help="colours of the screen")
    parser.set_defaults(act=_walk)
    commands = parser.add_subparsers(metavar="COMMAND")
    demo = commands.add_parser("demo", help="a pretend morning on an invented farm")
    demo.add_argument("--at", help="start the pretend clock at this time, as 2026-03-11T06:31")
    demo.add_argument("--farm", type=Path, metavar="FOLDER", help="another farm folder, with its own demo.toml")
    demo.add_argument("--afresh", action="store_true", help="begin the pretend morning again")
    demo.set_defaults(act=_demo)
    for name, act, what in (
        ("import", _import, "read a farm folder into the book"),
        ("export", _export, "write the book out as a farm folder"),
        ("merge", _merge, "take in what another book of this farm holds"),
        ("backup", _backup, "copy the book into a folder, as on a stick, and read the copy again"),
        ("restore", _restore, "put a copy in the place of the book, which is kept beside it"),
    ):
        command = commands.add_parser(name, help=what)
        command.add_argument("folder", type=Path, metavar=BOOKS.get(name, "FOLDER"))
        command.set_defaults(act=act)
    return parser


def _walk(chosen: argparse.Namespace) -> int:
    from tui.sitting import sit_down  # noqa: PLC0415 each command loads only what it needs

    return sit_down(chosen.book, chosen.look)


def _demo(chosen: argparse.Namespace) -> int:
    from tui.demo import show_demo  # noqa: PLC0415

    return show_demo(chosen.farm, chosen.at, chosen.look, afresh=chosen.afresh)


def _import(chosen: argparse.Namespace) -> int:
    from tui.moving import import_folder  # noqa: PLC0415

    print(import_folder(chosen.folder, chosen.book))
    return OK


def _export(chosen: argparse.Namespace) -> int:
    from tui.moving import export_folder  # noqa: PLC0415

    print(export_folder(chosen.folder, chosen.book))
    return OK


def _backup(chosen: argparse.Namespace) -> int:
    from tui.moving import back_up  # noqa: PLC0415

    print(back_up(chosen.folder, chosen.book))
    return OK


def _restore(chosen: argparse.Namespace) -> int:
    from tui.moving import restore  # noqa: PLC0415

    print(restore(chosen.folder, chosen.book))
    return OK


def _merge(chosen: argparse.Namespace) -> int:
    from tui.moving import merge_book  # noqa: PLC0415

    print(merge_book(chosen.folder, chosen.book))
    return OK
