"""What can be wrong with a book. Each error is the plain sentence that the keeper reads."""


class BookError(Exception):
    """Something about the book; str() is a whole sentence: what was found, what was expected, what to do."""


class NoBook(BookError):
    """There is no book at this place."""


class BookInUse(BookError):
    """Another program has the book open."""


class NewerBook(BookError):
    """The book was written by a newer Penwalk."""


class DamagedBook(BookError):
    """The file is no book, or cannot be read or written."""


class Overtaken(BookError):
    """Somebody else wrote this step after the screen was drawn."""


class NotKept(BookError):
    """Who was asked about is not kept any more, or stands nowhere."""


class FolderError(BookError):
    """A farm folder has mistakes; str() lists them all, a line each."""
