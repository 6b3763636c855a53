#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Fail when a C function or a source file is too long.

usage: check-size.py FOLDER...

A function may have 80 lines from its first to its closing brace's line; the
rows of a table inside it, '= { ... }', do not count. A file may have 900 lines
and says why, 'Long because ...' in its first comments, from 701 on.
"""
import pathlib
import re
import sys

FUNCTION_LINES = 80
FILE_LINES = 900
FILE_LINES_WITHOUT_REASON = 700
REASON_WITHIN = 60  # lines of a file in which its first comments stand

HIDDEN = re.compile(
    r"""/\*.*?\*/ | //[^\n]*
      | "(?:[^"\\\n]|\\.)*" | '(?:[^'\\\n]|\\.)*'
      | ^[ \t]*\#(?:[^\n\\]|\\.)*""",
    re.X | re.S | re.M,
)


def blank(match):
    """Nothing but the line ends of what a brace counter must not see."""
    return re.sub(r"[^\n]", " ", match.group())


def is_function(head):
    """Whether what stands before a brace at the outermost level is a function's head."""
    head = head.strip()
    return head.endswith(")") and "=" not in head


def first_line(text, start, end):
    """Where a head begins, without the END_TEST that may still stand in front of it."""
    skipped = re.match(r"\s*(?:END_TEST\s+)*", text[start:end]).end()
    return text.count("\n", 0, start + skipped) + 1


def functions(source):
    """(name, first line, counted lines) of every function; ValueError if braces do not match."""
    text = HIDDEN.sub(blank, source)
    depth = 0
    start = 0  # end of the last thing at the outermost level
    current = None  # (name, first line) of the function that is open
    table = None  # (depth, position) of the table that is open
    table_lines = 0
    for match in re.finditer(r"[{};]", text):
        mark, at = match.group(), match.start()
        if mark == "{":
            head = text[start:at]
            if depth == 0 and is_function(head):
                name = re.findall(r"(\w+)\s*\(", head)
                current = (name[0] if name else "?", first_line(text, start, at))
                if name and name[0] == "START_TEST":
                    current = (re.search(r"\(\s*(\w+)", head).group(1), current[1])
                table_lines = 0
            elif current and table is None and text[:at].rstrip().endswith("="):
                table = (depth, at)
            depth += 1
        elif mark == "}":
            depth -= 1
            if depth < 0:
                raise ValueError(f"line {text.count(chr(10), 0, at) + 1}: brace too many")
            if table and depth == table[0]:
                table_lines += max(0, text.count("\n", table[1], at) - 1)
                table = None
            if depth == 0:
                if current:
                    last = text.count("\n", 0, at) + 1
                    yield current[0], current[1], last - current[1] + 1 - table_lines
                    start = at + 1
                current = None
        elif depth == 0:
            start = at + 1
    if depth:
        raise ValueError("a brace is not closed")


def check_file(path):
    source = path.read_text(encoding="utf-8")
    lines = source.count("\n")
    if lines > FILE_LINES:
        yield f"{path}: {lines} lines, at most {FILE_LINES}"
    elif lines > FILE_LINES_WITHOUT_REASON:
        top = "\n".join(source.split("\n")[:REASON_WITHIN])
        comments = " ".join(re.findall(r"/\*.*?\*/|^#.*$|\"\"\".*?\"\"\"", top, re.S | re.M))
        if not re.search(r"\bLong because\s+\w", comments):
            yield f"{path}: {lines} lines and no 'Long because ...' in the file comment"
    if path.suffix in (".c", ".h"):
        try:
            for name, line, size in functions(source):
                if size > FUNCTION_LINES:
                    yield f"{path}:{line}: {name} has {size} lines, at most {FUNCTION_LINES}"
        except ValueError as error:
            yield f"{path}: {error}"


def main(folders):
    paths = [
        path
        for folder in folders
        for path in sorted(pathlib.Path(folder).rglob("*"))
        if path.suffix in (".c", ".h", ".py", ".sh")
    ]
    if not paths:
        sys.exit("no source files in " + ", ".join(folders))
    findings = [finding for path in paths for finding in check_file(path)]
    print("\n".join(findings), end="\n" if findings else "")
    return 1 if findings else 0


if __name__ == "__main__":
    if len(sys.argv) < 2:
        sys.exit(__doc__)
    sys.exit(main(sys.argv[1:]))
