"""Reads label crops of photographs with the exported network, through OpenCV as the program does.

python3 measure.py line_reader.onnx FOLDER   (FOLDER/labels.tsv and the photos it names; needs python3-opencv)
Prints lines exact and pooled CER, letters and digits only, case folded; then what was misread.
"""

import csv
import os
import sys

import cv2
import numpy as np

import alphabet
from train_measures import edits, greedy

HEIGHT, MARGIN = 48, 0.18  # of a crop, pixels; ground around a label's box, of its height


def crop_of(photo, box):
    x, y, width, height = box
    rim = MARGIN * height
    left, top = max(0, int(x - rim)), max(0, int(y - rim))
    grey = cv2.cvtColor(photo[top:int(y + height + rim), left:int(x + width + rim)], cv2.COLOR_BGR2GRAY)
    scale = HEIGHT / grey.shape[0]
    columns = int(np.ceil(grey.shape[1] * scale / 64)) * 64
    small = cv2.resize(grey, (round(grey.shape[1] * scale), HEIGHT), interpolation=cv2.INTER_AREA)
    small = cv2.copyMakeBorder(small, 0, 0, 0, columns - small.shape[1], cv2.BORDER_REPLICATE).astype(np.float32)
    return (small - small.mean()) / max(1e-3, small.std())


def main():
    weights, folder = sys.argv[1:3]
    network = cv2.dnn.readNetFromONNX(weights)
    network.enableFusion(False)  # widths change from line to line
    fold = lambda text: "".join(c for c in text.upper() if c.isalnum())
    exact = wrong = letters = lines = 0
    with open(os.path.join(folder, "labels.tsv")) as table:
        for row in csv.DictReader(table, delimiter="\t"):
            name, truth = row["photo"], row["text"]
            photo = cv2.imread(os.path.join(folder, name))
            crop = crop_of(photo, [float(row[k]) for k in ("left_px", "top_px", "width_px", "height_px")])
            network.setInput(crop[None, None])
            read = alphabet.decode(greedy(network.forward()[:, :, 0])[0])
            a, b = fold(read), fold(truth)
            exact, wrong, letters, lines = exact + (a == b), wrong + edits(a, b), letters + len(b), lines + 1
            if a != b:
                print("%s: %s read as %s" % (name, truth, read))
    print("%d of %d exact (%.1f %%), CER %.2f %%" % (exact, lines, 100 * exact / lines, 100 * wrong / letters))


if __name__ == "__main__":
    main()
