"""The invented farm of the demo: a folder that the ordinary importer reads."""
