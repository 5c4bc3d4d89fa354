"""Counts how marks are written, for the decoder: which kinds of characters follow which.

python3 writing_model.py OUT.txt   (standard library alone; a minute)
Texts come from grammar.py, never from what is measured on. A line of the file is a run of one to ORDER
symbols and how often it stood; "^" begins a line and "$" ends it. Letters are one symbol for capitals and one
for small letters, digits are told apart as far as years and months need it, signs stand for themselves.
"""

import collections
import random
import sys

import alphabet
import grammar

ORDER, LINES, SEED = 6, 400_000, 20_000
RARE = 25  # longer runs (more than three symbols) that stood less often are left out


def symbol(character):
    if character.isascii() and character.isalpha():
        return "A" if character.isupper() else "a"
    if character in "45678":
        return "5"
    return "@" if character == alphabet.PROPERTY_ARROW else "_" if character == " " else character


def main():
    rng, counts = random.Random(SEED), collections.Counter()
    for _ in range(LINES):
        text = grammar.line(rng).strip()
        if not text:
            continue
        symbols = "^" + "".join(symbol(c) for c in text) + "$"
        for length in range(1, ORDER + 1):
            for start in range(len(symbols) - length + 1):
                counts[symbols[start:start + length]] += 1
    with open(sys.argv[1], "w") as out:
        out.write("order %d\n" % ORDER)
        for run, count in sorted(counts.items()):
            if len(run) < 4 or count >= RARE:
                out.write("%s %d\n" % (run, count))


if __name__ == "__main__":
    main()
