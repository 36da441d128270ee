# SPDX-License-Identifier: GPL-3.0-or-later
"""Counts the cases in Meson's test log and prints the line "N passed, N failed".

A TAP program counts by its cases, any other by its exit. A program that fails without a failed case
(a crash, a time-out, a bad plan) counts as one failure. Skipped cases count neither way.
"""
import json
import re
import sys

CASE = re.compile(r'^(not )?ok\b(?!.*# SKIP)', re.IGNORECASE)


def cases(test):
    found = [CASE.match(line) for line in (test.get('stdout') or '').splitlines()]
    bad = sum(1 for match in found if match and match.group(1))
    good = sum(1 for match in found if match and not match.group(1))
    well = test['result'] in ('OK', 'EXPECTEDFAIL', 'SKIP')
    if test['result'] == 'SKIP':
        return 0, 0
    if good + bad == 0:
        return (1, 0) if well else (0, 1)
    return good, bad if well else max(bad, 1)


def main():
    passed = failed = 0
    with open(sys.argv[1], encoding='utf-8') as log:
        for line in log:
            good, bad = cases(json.loads(line))
            passed += good
            failed += bad
    print(f'{passed} passed, {failed} failed')


main()
