#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Turn data/drills.csv into the rows of a C table.

usage: drills-table.py DRILLS.csv OUTPUT

The millimetre text becomes a literal with e-3 behind it, so the compiler, not
an arithmetic operation, rounds the diameter to the nearest double in metres.
A table that is not in strictly rising order, or has a name twice, is refused.
"""
import csv
import re
import sys
from decimal import Decimal

SERIES = {"metric": ("DW_DRILL_METRIC", r"\d\.\d\d"), "number": ("DW_DRILL_NUMBER", r"#\d\d")}


def read_rows(path):
    with open(path, encoding="utf-8", newline="") as file:
        lines = [line for line in file if not line.startswith("#")]
    reader = csv.DictReader(lines, strict=True)
    if reader.fieldnames != ["diameter_mm", "series", "name"]:
        raise ValueError(f"columns are {reader.fieldnames}")
    return list(reader)


def c_rows(rows):
    last = Decimal(0)
    names = set()
    for row in rows:
        diameter, series, name = row["diameter_mm"], row["series"], row["name"]
        if not re.fullmatch(r"\d+\.\d+", diameter) or Decimal(diameter) <= last:
            raise ValueError(f"diameter {diameter} does not follow {last}")
        if series not in SERIES or not re.fullmatch(SERIES[series][1], name):
            raise ValueError(f"series {series} has no drill {name}")
        if name in names:
            raise ValueError(f"drill {name} is there twice")
        last = Decimal(diameter)
        names.add(name)
        yield f'{{ {diameter}e-3, {SERIES[series][0]}, "{name}" }},\n'


def main(source, target):
    try:
        text = "".join(c_rows(read_rows(source)))
    except (ValueError, csv.Error) as error:
        sys.exit(f"{source}: {error}")
    with open(target, "w", encoding="utf-8") as file:
        file.write(f"/* Made from data/drills.csv by drills-table.py. */\n{text}")


if __name__ == "__main__":
    if len(sys.argv) != 3:
        sys.exit(__doc__)
    main(sys.argv[1], sys.argv[2])
