"""Tests of store.herd."""
