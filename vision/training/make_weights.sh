#!/bin/sh
# Makes all weights from nothing, into WORK: about 80 minutes on two H100 or H200.
#   make_weights.sh SOURCE WORK
# SOURCE holds the pictures of pictures.tsv. Needs Debian 12's apt-get and dpkg for the faces, PyTorch 2, OpenCV, Pillow,
# onnx and fonttools. A run that broke off is gone on with by deleting the lines before it.
set -e
source=$(realpath "$1") work=$(realpath -m "$2")
cd "$(dirname "$0")"
mkdir -p "$work"
python3 collect_faces.py "$work/faces"
python3 collect_pictures.py "$source" "$work/pictures"
python3 collect_pictures.py "$source" "$work/finder_pictures" --finder

# run PROGRAM PICTURES SECONDS SEED RATE LAST_RATE [OPTION...]; each goes on from what the one before exported
run() {
    program=$1 pictures=$2 seconds=$3 seed=$4 rate=$5 last_rate=$6
    shift 6
    torchrun --standalone --nproc_per_node="$(nvidia-smi -L | wc -l)" "$program" --faces "$work/faces" \
        --textures "$work/$pictures" --out "$work" --seconds "$seconds" --seed "$seed" --rate "$rate" --last-rate "$last_rate" "$@"
}

line() { run train.py pictures "$@" --batch 768 --from "$work/line_reader.onnx"; }
run train.py pictures 395 11 0.0025 0.08        # A
line 500 22 0.002 0.1    # B
line 315 33 0.0014 0     # C
line 525 44 0.0018 0.25  # D
line 530 55 0.0013 0.04  # E
line 135 66 0.0007 0     # F
line 110 77 0.0007 0     # G; it was made on one GPU, as H was
cp "$work/line_reader.onnx" "$work/line_reader_g.onnx"
line 515 89 0.0012 0.4    # H
line 480 90 0.0007 0      # H, gone on with
python3 mix.py "$work/line_reader_g.onnx" "$work/line_reader.onnx" "$work/mean.onnx"
mv "$work/mean.onnx" "$work/line_reader.onnx"

finder() { run finder_train.py finder_pictures "$@" --from "$work/finder.onnx"; }
run finder_train.py finder_pictures 480 2 0.003 0.05           # F1
finder 370 4 0.002 0.03   # F2
finder 205 5 0.0015 0.01  # F3
run upright_train.py finder_pictures 125 3 0.003 0.02 --batch 768                                # U1
run upright_train.py finder_pictures 70 6 0.0015 0.01 --batch 768 --from "$work/upright.onnx"    # U2

for name in line_reader finder upright; do
    python3 pack.py "$work/$name.onnx" "$work/$name.onnx.gz"
done
python3 writing_model.py "$work/writing_model.txt"
python3 -c 'from alphabet import CHARACTERS
print(*["space" if c == " " else c for c in CHARACTERS], "traces", "lost", sep="\n")' > "$work/characters.txt"
cd "$work"
sha256sum finder.onnx.gz line_reader.onnx.gz upright.onnx.gz characters.txt writing_model.txt > SHA256SUMS
