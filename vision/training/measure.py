"""Reads label crops of photographs with the exported network, through OpenCV as the program does.

python3 measure.py line_reader.onnx[.gz] FOLDER [--level] [--sheet FILE.png]
FOLDER/labels.tsv and the photos it names; needs python3-opencv. --level lays each label straight first.
Prints lines exact, exact with look-alikes counted as one, and pooled CER: letters, digits and slashes only,
case folded; then what was misread.
"""

import argparse
import csv
import gzip
import os

import cv2
import numpy as np

import alphabet
from train_measures import edits, greedy

HEIGHT, MARGIN = 48, 0.18  # of a crop, pixels; ground around a label's box, of its height
LOOK_ALIKES = str.maketrans("OIL/SBZ", "0111582")


def loaded(path):
    with open(path, "rb") as file:
        data = file.read()
    network = cv2.dnn.readNetFromONNX(np.frombuffer(gzip.decompress(data) if path.endswith(".gz") else data, np.uint8))
    network.enableFusion(False)  # widths change from line to line
    return network


def normalised(grey):
    """Brought to the height of crops, filled up to the right, mean 0 and deviation 1."""
    scale = HEIGHT / grey.shape[0]
    wide = max(4, round(grey.shape[1] * scale))
    small = cv2.resize(grey, (wide, HEIGHT), interpolation=cv2.INTER_AREA if scale < 1 else cv2.INTER_CUBIC)
    small = cv2.copyMakeBorder(small, 0, 0, 0, -wide % 32, cv2.BORDER_REPLICATE).astype(np.float32)
    return (small - small.mean()) / max(1e-3, small.std())


def cut(grey, box):
    x, y, width, height = box
    rim = MARGIN * height
    left, top = max(0, int(x - rim)), max(0, int(y - rim))
    return grey[top:int(y + height + rim), left:int(x + width + rim)]


def _ink(grey):
    """Strokes darker than the ground around them, 0 and more."""
    ground = cv2.morphologyEx(grey, cv2.MORPH_CLOSE, np.ones((25, 25), np.uint8))
    return cv2.GaussianBlur(cv2.subtract(ground, grey).astype(np.float32), (0, 0), 1)


def _turned(picture, centre, angle, size):
    turn = cv2.getRotationMatrix2D(centre, angle, 1)
    turn[:, 2] += np.array(size) / 2 - np.array(centre)
    return cv2.warpAffine(picture, turn, size, flags=cv2.INTER_LINEAR, borderMode=cv2.BORDER_REPLICATE)


def levelled(grey, box):
    """The label laid straight: the angle at which rows of ink stand out most, then the rows that hold it."""
    x, y, width, height = box
    centre, ink = (x + width / 2, y + height / 2), _ink(grey)
    length = max(width, height)
    size = (int(length * 1.15), int(height * 1.1) + 12)
    inside = np.zeros_like(ink)
    inside[int(y):int(y + height), int(x):int(x + width)] = 1
    sharp = lambda a: float(np.square(np.diff(_turned(ink * inside, centre, a, size).sum(1))).sum())
    angle = max(np.arange(-38, 38.1, 1.0), key=sharp)
    angle = max(np.arange(angle - 1, angle + 1.01, 0.25), key=sharp)
    lean = abs(np.radians(angle))
    # width w and height h of the label in its box: W = w cos + h sin, H = w sin + h cos
    high = (height * np.cos(lean) - width * np.sin(lean)) / max(0.2, np.cos(2 * lean))
    high = float(np.clip(high, 0.2 * height, height))
    wide = (width - high * np.sin(lean)) / np.cos(lean)
    return _turned(grey, centre, angle, (int(wide + 2 * MARGIN * high), int(high * (1 + 2 * MARGIN))))


def folded(text):
    """Letters, digits and slashes; a slash may stand for a 1."""
    return "".join(c for c in text.upper() if c.isalnum() or c == "/")


class _Sheet:
    def __init__(self):
        self.tiles = []

    def add(self, crop, told):
        low, high = np.percentile(crop, [0.5, 99.5])
        tile = np.full((70, 330), 255, np.uint8)
        shown = np.clip((crop - low) / max(1e-3, high - low) * 255, 0, 255).astype(np.uint8)[:, :326]
        tile[:HEIGHT, :shown.shape[1]] = shown
        cv2.putText(tile, told, (2, 64), 0, 0.42, 0, 1, cv2.LINE_AA)
        self.tiles.append(tile)

    def save(self, path):
        tiles = self.tiles + [np.full((70, 330), 255, np.uint8)] * (-len(self.tiles) % 5)
        cv2.imwrite(path, np.vstack([np.hstack(tiles[i:i + 5]) for i in range(0, len(tiles), 5)]))


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("weights")
    parser.add_argument("folder")
    parser.add_argument("--level", action="store_true")
    parser.add_argument("--sheet", default="")
    options = parser.parse_args()
    network, sheet = loaded(options.weights), _Sheet()
    exact = alike = wrong = letters = lines = 0
    with open(os.path.join(options.folder, "labels.tsv")) as table:
        rows = list(csv.DictReader(table, delimiter="\t"))
    for row in rows:
        photo = cv2.imread(os.path.join(options.folder, row["photo"]), cv2.IMREAD_GRAYSCALE)
        box = [float(row[k]) for k in ("left_px", "top_px", "width_px", "height_px")]
        crop = normalised((levelled if options.level else cut)(photo, box))
        network.setInput(crop[None, None])
        read = alphabet.decode(greedy(network.forward()[:, :, 0])[0])
        a, b = folded(read), folded(row["text"])
        same = a.translate(LOOK_ALIKES) == b.translate(LOOK_ALIKES)
        exact, alike, lines = exact + (a == b), alike + same, lines + 1
        wrong, letters = wrong + edits(a, b), letters + len(b)
        if a != b:
            print("%s: %s read as %s%s" % (row["photo"], row["text"], read, " (look-alike)" if same else ""))
        if not same:
            sheet.add(crop, "%s: %s" % (row["text"], read.replace("\ufffd", "?")))
    print("%d of %d exact (%.1f %%), look-alikes as one %.1f %%, CER %.2f %%" % (
        exact, lines, 100 * exact / lines, 100 * alike / lines, 100 * wrong / letters))
    if options.sheet:
        sheet.save(options.sheet)


if __name__ == "__main__":
    main()
