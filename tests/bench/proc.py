"""What the system knows of a running program: its memory and its share of a core. Linux only: it reads /proc."""

import os
from pathlib import Path

TICKS_A_S = os.sysconf("SC_CLK_TCK")
AFTER_NAME = 2
"""In /proc/PID/stat the name of the command ends with a bracket; what comes behind it begins with field 3."""
USER, SYSTEM = 14 - AFTER_NAME - 1, 15 - AFTER_NAME - 1


def resident_mb(pid: int) -> float:
    """The memory that a program has in RAM, shared libraries included. [MB]"""
    for row in Path(f"/proc/{pid}/status").read_text(encoding="utf-8").splitlines():
        if row.startswith("VmRSS:"):
            return int(row.split()[1]) / 1024
    raise AssertionError(f"the program {pid} has no memory: it has left")


def cpu_s(pid: int) -> float:
    """How long a program has used a core so far, all its threads together, to a hundredth. [s]"""
    fields = Path(f"/proc/{pid}/stat").read_text(encoding="utf-8").rpartition(")")[2].split()
    return (int(fields[USER]) + int(fields[SYSTEM])) / TICKS_A_S


def load() -> str:
    """How busy the machine is besides, for the head of a report."""
    return f"load of the machine over the last minute {os.getloadavg()[0]:.2f}, cores {os.cpu_count()}"
