#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Make a C source that holds a file's bytes.

usage: embed-text.py INPUT OUTPUT NAME
Numbers, not a string: C compilers need not take a literal of this length.
"""
import sys

source, target, name = sys.argv[1:]
with open(source, "rb") as file:
    data = file.read()

with open(target, "w", encoding="ascii") as file:
    file.write(f"const unsigned char {name}[] = {{\n")
    for start in range(0, len(data), 20):
        file.write(" ".join(f"{byte}," for byte in data[start : start + 20]) + "\n")
    file.write("};\n")
    file.write(f"const unsigned int {name}_length = {len(data)};\n")
