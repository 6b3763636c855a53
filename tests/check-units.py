#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Fail when a number in a header of model, study or ride has no unit.

usage: check-units.py SRC_DIR

A field, a function and a pointer to a function need as many units in brackets,
[m], [N/m], [1] for a pure number, in their comment as they name doubles. The
comment stands before the declaration or behind it on the same line. A macro
that is a floating-point number needs one too.
"""
import pathlib
import re
import sys

LAYERS = ("model", "study", "ride")

# [m] but neither points[i] nor [0, 1].
UNIT = re.compile(r"(?<![\w\])])\[(?:1|1/[A-Za-z][^\],]*|[A-Za-z%][^\],]*)\]")
# One unit for several parameters: @param a,b  [m]
SHARED = re.compile(r"@param\s+(\w+(?:,\s*\w+)+)\s+(?=\[)")
TOKEN = re.compile(
    r"""(?P<comment>/\*.*?\*/|//[^\n]*)
      | (?P<macro>^[ \t]*\#(?:[^\n\\]|\\\n|\\[^\n])*)
      | (?P<text>"(?:[^"\\\n]|\\.)*"|'(?:[^'\\\n]|\\.)*')
      | (?P<mark>[;{}])
      | (?P<newline>\n)
      | (?P<other>[^;{}"'/\n]+|.)""",
    re.X | re.S | re.M,
)
NUMBER_MACRO = re.compile(
    r"\s*#\s*define\s+(\w+)[ \t]+\(?-?[\d.]+(?:[eE][-+]?\d+)?\)?\s*(/\*.*)?$", re.S
)


def tokens(text):
    return [(match.lastgroup, match.group(), match.start()) for match in TOKEN.finditer(text)]


def count_doubles(statement):
    """Doubles that a declaration names: parameters, results, declarators."""
    words = len(re.findall(r"\b(?:double|float)\b", statement))
    if words and "(" not in statement:
        words += re.sub(r"\[[^\]]*\]", "", statement).count(",")
    return words


class Header:
    def __init__(self, path):
        self.path = path
        self.text = path.read_text(encoding="utf-8")
        self.findings = []

    def judge(self, statement, comment, position):
        need = count_doubles(statement)
        have = len(UNIT.findall(comment))
        have += sum(names.count(",") for names in SHARED.findall(comment))
        if have < need:
            line = self.text.count("\n", 0, position) + 1
            shown = " ".join(statement.split())[:70]
            self.findings.append(f"{self.path}:{line}: {need} doubles, {have} units: {shown}")

    def judge_macro(self, macro, comment, position):
        match = NUMBER_MACRO.match(macro)
        if match is None or not re.search(r"\d*\.\d|\d[eE][-+]?\d", macro.split("/*")[0]):
            return
        if not UNIT.search(comment + macro):
            line = self.text.count("\n", 0, position) + 1
            self.findings.append(f"{self.path}:{line}: number without unit: {match.group(1)}")

    def check(self):
        found = tokens(self.text)
        statement, comment, start = "", "", 0
        i = 0
        while i < len(found):
            kind, text, position = found[i]
            if kind == "comment":
                comment += text
            elif kind == "macro":
                self.judge_macro(text, comment, position)
                comment = ""
            elif kind == "mark":
                if text == ";":
                    behind, i = self.comment_behind(found, i)
                    self.judge(statement, comment + behind, start)
                elif text == "{" and not re.search(r"\b(?:struct|union|enum|extern)\b", statement):
                    self.judge(statement, comment, start)
                    i = self.end_of_body(found, i)
                statement, comment = "", ""
            elif kind in ("other", "text") and (statement or text.strip()):
                if not statement:
                    start = position + len(text) - len(text.lstrip())
                statement += text
            elif kind == "newline" and statement:
                statement += " "
            i += 1
        return self.findings

    @staticmethod
    def comment_behind(found, i):
        """The comment on the rest of the line that a ';' ends, and the last token used."""
        comment = ""
        j = i + 1
        while j < len(found) and found[j][0] in ("comment", "other") and (
            found[j][0] == "comment" or not found[j][1].strip()
        ):
            if found[j][0] == "comment":
                comment += found[j][1]
                i = j
            j += 1
        return comment, i

    @staticmethod
    def end_of_body(found, i):
        depth = 0
        while i < len(found):
            depth += {"{": 1, "}": -1}.get(found[i][1], 0) if found[i][0] == "mark" else 0
            if depth == 0:
                break
            i += 1
        return i


def main(folder):
    headers = [path for layer in LAYERS for path in sorted(folder.glob(f"{layer}/*.h"))]
    if not headers:
        sys.exit(f"no headers in {folder}")
    findings = [finding for path in headers for finding in Header(path).check()]
    print("\n".join(findings), end="\n" if findings else "")
    return 1 if findings else 0


if __name__ == "__main__":
    if len(sys.argv) != 2:
        sys.exit(__doc__)
    sys.exit(main(pathlib.Path(sys.argv[1])))
