"""Grey pictures of cloth, paper, wood and metal, 768 pixels a side, laid under drawn lines.

python3 collect_pictures.py SOURCE DIR [--finder]   (needs python3-opencv)
SOURCE holds the files of pictures.tsv; --finder leaves out those that the finder is measured on.
"""

import argparse
import csv
import os
import sys

import cv2

SIDE = 768


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("source")
    parser.add_argument("folder")
    parser.add_argument("--finder", action="store_true")
    options = parser.parse_args()
    os.makedirs(options.folder, exist_ok=True)
    with open(os.path.join(os.path.dirname(os.path.abspath(__file__)), "pictures.tsv")) as table:
        rows = [row for row in csv.DictReader(table, delimiter="\t") if not options.finder or row["finder"] == "learns"]
    for row in rows:
        picture = cv2.imread(os.path.join(options.source, row["file"]), cv2.IMREAD_GRAYSCALE)
        if picture is None:
            sys.exit("%s: cannot be read below %s; put it there, or leave its row out" % (row["file"], options.source))
        small = cv2.resize(picture, (SIDE, SIDE), interpolation=cv2.INTER_AREA)
        name = os.path.splitext(row["file"].replace("/", "_"))[0]
        cv2.imwrite(os.path.join(options.folder, name + ".jpg"), small, [cv2.IMWRITE_JPEG_QUALITY, 92])
    print("%d pictures in %s" % (len(rows), options.folder))


if __name__ == "__main__":
    main()
