"""Fetches the faces of faces.tsv from Debian packages and keeps of each only the letters that are drawn.

python3 collect_faces.py DIR   (Debian 12; needs apt-get, dpkg, python3-fonttools)
"""

import csv
import os
import subprocess
import sys
import tempfile

from fontTools import subset

import alphabet


def main():
    folder = os.path.abspath(sys.argv[1])
    here = os.path.dirname(os.path.abspath(__file__))
    os.makedirs(folder, exist_ok=True)
    with open(os.path.join(here, "faces.tsv")) as table:
        rows = list(csv.DictReader(table, delimiter="\t"))
    with tempfile.TemporaryDirectory() as work:
        packages = sorted({row["package"] for row in rows})
        subprocess.run(["apt-get", "download", "-qq", *packages], cwd=work, check=True)
        for package in sorted(os.listdir(work)):
            if package.endswith(".deb"):
                subprocess.run(["dpkg", "-x", package, "tree"], cwd=work, check=True)
        options = subset.Options(layout_features=["kern"], hinting=False, notdef_outline=True)
        for row in rows:
            font = subset.load_font(os.path.join(work, "tree", row["path"]), options)
            letters = subset.Subsetter(options)
            letters.populate(text=alphabet.CHARACTERS)
            letters.subset(font)
            subset.save_font(font, os.path.join(folder, row["file"]), options)
    with open(os.path.join(here, "faces.tsv")) as source, open(os.path.join(folder, "faces.tsv"), "w") as copy:
        copy.write(source.read())
    print("%d faces of %d packages in %s" % (len(rows), len(packages), folder))


if __name__ == "__main__":
    main()
