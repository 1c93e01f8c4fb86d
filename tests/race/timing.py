#!/usr/bin/env python3
"""Times whole commands in turn, A B C A B C: timing.py ROUNDS NAME=COMMAND ... Median wall and CPU, highest memory, wall over that of the first."""
import os
import shlex
import statistics
import sys
import time


def run(command):
    """Wall and CPU in seconds, peak memory in MB; what it prints goes nowhere."""
    start = time.perf_counter()
    nowhere = os.open(os.devnull, os.O_WRONLY)
    child = os.posix_spawnp(command[0], command, os.environ, file_actions=[(os.POSIX_SPAWN_DUP2, nowhere, 1)])
    os.close(nowhere)
    _, status, used = os.wait4(child, 0)
    # Exit code 1 of the program says that the campaign does not pass, which costs nothing less.
    if os.waitstatus_to_exitcode(status) not in (0, 1):
        sys.exit(f"failed: {shlex.join(command)}")
    return time.perf_counter() - start, used.ru_utime + used.ru_stime, used.ru_maxrss / 1024


def main(rounds, racers):
    commands = {name: shlex.split(command) for name, command in (racer.split("=", 1) for racer in racers)}
    for command in commands.values():
        run(command)  # files and libraries into memory, for all alike
    times = {name: [] for name in commands}
    for _ in range(rounds):
        for name, command in commands.items():
            times[name].append(run(command))
    first = None
    print(f"{'':20} {'wall s':>8} {'CPU s':>8} {'MB':>6} {'ratio':>6}")
    for name, taken in times.items():
        wall, cpu = (statistics.median(t[i] for t in taken) for i in (0, 1))
        first = first or wall
        print(f"{name:20} {wall:8.3f} {cpu:8.3f} {max(t[2] for t in taken):6.0f} {wall / first:6.2f}")


main(int(sys.argv[1]), sys.argv[2:])
