"""The walk: one step after another under the lamp."""
