"""Tells networks apart on the same drawn lines of held-out faces, on the processor, through OpenCV as the program does.

python3 compare.py --faces DIR --textures DIR --clean 0.0 --count 300 NETWORK.onnx[.gz] ...
--clean: share of fresh print; 0 is all worn, many of them past reading. --holding: only lines with one of these characters.
Needs PyTorch, python3-opencv.
"""

import argparse

import cv2
import numpy as np
import torch

import damage
import grammar
import measure
import pools
import typeset
from judge import Tally
from train_measures import sure_greedy


def drawn(options):
    """Crops, targets and lengths; the same for the same options."""
    _, held = pools.load_faces(options.faces)
    mask_width, crop_width, _ = pools.SHAPES["long"]
    torch.manual_seed(77)

    def line(rng):
        text = grammar.line(rng)
        return text if not options.holding or set(text) & set(options.holding) else ""

    chunks = [typeset.chunk(51000 + i, options.count // 6, held, mask_width, 120, line) for i in range(6)]
    masks, boxes, texts, widths = (torch.from_numpy(np.concatenate(parts)) for parts in zip(*chunks))
    damage.CLEAN = options.clean
    others = masks[torch.randperm(len(masks))]
    return damage.crops(masks, boxes, texts, widths, others, crop_width, pools.load_textures(options.textures, "cpu"))


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("networks", nargs="+")
    parser.add_argument("--faces", required=True)
    parser.add_argument("--textures", required=True)
    parser.add_argument("--clean", type=float, default=0.33)
    parser.add_argument("--count", type=int, default=300)
    parser.add_argument("--holding", default="")
    options = parser.parse_args()
    torch.set_num_threads(1)
    cv2.setNumThreads(1)
    crops, targets, lengths = drawn(options)
    for path in options.networks:
        network, tally = measure.loaded(path), Tally()
        for crop, target, length in zip(crops.numpy(), targets.tolist(), lengths.tolist()):
            network.setInput(crop[None])
            logits = network.forward()[:, :, 0]
            scores = np.exp(logits - logits.max(1, keepdims=True))
            tally.add(sure_greedy(scores / scores.sum(1, keepdims=True))[0], target[:length])
        print("%s: %s" % (path, tally.told()), flush=True)


if __name__ == "__main__":
    main()
