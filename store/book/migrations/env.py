"""Run by alembic inside the transaction that store.book.migrating has opened."""

from alembic import context

context.configure(connection=context.config.attributes["connection"], render_as_batch=True)
context.run_migrations()
