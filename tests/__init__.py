"""Tests. They mirror store/ and tui/; outside/ holds to published values, terminal/ runs the command on a real one."""
