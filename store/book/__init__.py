"""The book: what is kept, how it is read, and how a row is added. Nothing in it is ever changed."""
