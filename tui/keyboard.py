"""Where keys come from: the bytes of the terminal, until the window is closed."""

import os
import signal
from codecs import getincrementaldecoder
from collections.abc import Iterable
from selectors import EVENT_READ, SelectSelector

from textual._xterm_parser import XTermParser
from textual.drivers.linux_driver import LinuxDriver
from textual.message import Message

WINDOW_CLOSED = 128 + signal.SIGHUP
"""Exit status, as a shell has it for a program whose window was closed."""
WAIT_S, MOST_BYTES = 0.1, 4096


class Keyboard(LinuxDriver):
    """The terminal of a sitting."""

    def run_input_thread(self) -> None:
        """Hand every key on until the program leaves or the window is closed. Bytes that are no letter are left out."""
        parser, decode = XTermParser(self._debug), getincrementaldecoder("utf-8")("ignore").decode
        with SelectSelector() as selector:
            selector.register(self.fileno, EVENT_READ)
            while not self.exit_event.is_set():
                if selector.select(WAIT_S):
                    sent = _read(self.fileno)
                    if not sent:
                        self._app.call_later(self._app.exit, None, WINDOW_CLOSED)
                        return
                    if text := decode(sent):
                        self._hand_on(parser.feed(text))
                self._hand_on(parser.tick())

    def _hand_on(self, messages: Iterable[Message]) -> None:
        for message in messages:
            self.process_message(message)

    def resume_application_mode(self) -> None:
        """Only after a stop: a window that closes tells a program to go on that never stopped."""
        if self._key_thread and not self._key_thread.is_alive():
            super().resume_application_mode()


def _read(descriptor: int) -> bytes:
    """What was typed; nothing where the window is closed."""
    try:
        return os.read(descriptor, MOST_BYTES)
    except OSError:
        return b""
