"""Text as a needle or ink-jet printer sets it: dots on a grid, with the printer's faults."""

import os

import numpy as np
from PIL import Image, ImageDraw, ImageFont

CAP_HEIGHT, BASELINE, HEIGHT = 32, 48, 64  # of a mask, pixels; capitals are brought to the first
FINE = 2  # dots are drawn finer by this and brought down, so that their edges are soft


def _table():
    """Of each character its 5x7 patterns, rows of five bits."""
    patterns = {}
    with open(os.path.join(os.path.dirname(os.path.abspath(__file__)), "dots_5x7.txt")) as lines:
        for line in lines:
            character, *rows = line.split()
            bits = [[int(row, 16) >> (4 - i) & 1 for i in range(5)] for row in rows]
            patterns.setdefault(character, []).append(np.array(bits, bool))
    return patterns


PATTERNS = _table()


def _lower(pattern, rows):
    """The pattern with fewer rows: what repeats the row above goes first, then the middle's neighbours."""
    lines = [list(line) for line in pattern]
    while len(lines) > rows:
        same = [i for i in range(1, len(lines)) if lines[i] == lines[i - 1]]
        del lines[same[0] if same else len(lines) // 2 + 1]
    return np.array(lines, bool)


def _grid_alphabet(text, rng):
    """One pattern for each letter of the text, on the 5x7 grid or one of 5 or 6 rows."""
    rows = rng.choice([7, 7, 7, 7, 6, 5])
    chosen = {c: _lower(rng.choice(PATTERNS[c]), rows) for c in sorted(set(text) - {" "})}
    if rng.random() < 0.2:  # some printers set every dot twice
        chosen = {c: np.repeat(p, 2, 1) for c, p in chosen.items()}
    return chosen, rows, rows


def _raster_alphabet(text, face, rng):
    """Letters of an outline face brought down to a grid of 8 to 14 rows."""
    rows = rng.choice([8, 9, 9, 10, 10, 12, 14])
    tall = -ImageFont.truetype(face, 100).getbbox("H", anchor="ls")[1]
    font, sheet = ImageFont.truetype(face, max(6, round(100 * rows / max(20, tall)))), {}
    for c in sorted(set(text) - {" "}):
        small = Image.new("L", (max(1, round(font.getlength(c))), rows * 2))
        ImageDraw.Draw(small).text((0, rows + rows // 4), c, font=font, fill=255, anchor="ls")
        sheet[c] = np.asarray(small) > 105
    return sheet, rows, rows + rows // 4


def _dot(draw, x, y, across, along, square, level):
    box = [FINE * (x - across), FINE * (y - along), FINE * (x + across), FINE * (y + along)]
    (draw.rectangle if square else draw.ellipse)(box, fill=level)


class _Printer:
    """Faults that stay the same along one line."""

    def __init__(self, rows, rng):
        self.pitch = CAP_HEIGHT / max(1, rows - 0.5)
        self.across = self.pitch * rng.choice([1, 1, rng.uniform(0.7, 1.4)])
        self.radius = self.pitch * rng.uniform(0.28, 0.6)
        self.long = self.radius * rng.choice([1, 1, rng.uniform(0.7, 1.6)])
        self.square = rng.random() < 0.3
        self.slant = rng.choice([0, 0, rng.uniform(-0.25, 0.25)]) * self.pitch
        self.tremble = rng.choice([0, 0.05, 0.12]) * self.pitch
        self.nozzles = [rng.gauss(0, 0.1) * self.pitch * (rng.random() < 0.4) for _ in range(40)]
        self.dead = {rng.randrange(rows)} if rng.random() < 0.05 else set()
        self.missing = rng.choice([0, 0, 0.02, 0.06])


def _print(pattern, x, foot, printer, draw, rng):
    for row, column in zip(*np.nonzero(pattern)):
        if row in printer.dead or rng.random() < printer.missing:
            continue
        up = foot - row - 0.5
        _dot(draw, x + (column + 0.5) * printer.across + up * printer.slant + rng.gauss(0, printer.tremble),
             BASELINE - up * printer.pitch + printer.nozzles[row % 40] + rng.gauss(0, printer.tremble),
             printer.long, printer.radius, printer.square, rng.randint(170, 255))


def dotted(text, face, rng, widest):
    """(mask, boxes, width) of text as dots; None where it does not fit or a character has no pattern."""
    if rng.random() < 0.6:
        if any(c not in PATTERNS and c != " " for c in text):
            return None
        alphabet, rows, foot = _grid_alphabet(text, rng)
        gap = rng.choice([1, 1, 1, 2, 3])
    else:
        alphabet, rows, foot = _raster_alphabet(text, face, rng)
        gap = rng.choice([0, 1])
    printer = _Printer(rows, rng)
    if any(p.shape[1] > 9 for p in alphabet.values()) and rows < 8:
        printer.across *= 0.6
    sheet = Image.new("L", (widest * FINE, HEIGHT * FINE))
    draw, x, boxes = ImageDraw.Draw(sheet), 4.0 + abs(printer.slant) * 3, []
    for c in text:
        columns = (alphabet[c].shape[1] if c != " " else max(2, round(rows * rng.uniform(0.35, 0.75)))) + gap
        end = x + columns * printer.across
        if end > widest - 4:
            return None
        if c != " ":
            _print(alphabet[c], x, foot, printer, draw, rng)
        boxes.append((x, end - gap * printer.across))
        x = end
    return np.array(sheet.resize((widest, HEIGHT), Image.BOX)), boxes, x
