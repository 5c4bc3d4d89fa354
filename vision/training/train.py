"""Trains the line network on drawn stamps: python3 train.py --faces DIR --seconds 540 --out DIR [--from state.pt]"""

import argparse
import copy
import csv
import multiprocessing
import os
import threading
import time

import numpy as np
import torch
import torch.nn.functional as F

import alphabet
import damage
import grammar
import typeset
from network import LineNetwork
from train_measures import edits, greedy

SHAPES = {"short": (320, 256), "long": (640, 512)}  # pixels of a mask, of a crop
CHUNK = 1024


class Pool:
    """Masks on the GPU that are replaced by fresh ones while the network learns."""

    def __init__(self, faces, shape, room, workers, seed):
        self.mask_width, self.crop_width = SHAPES[shape]
        self.room, self.filled, self.place = room, 0, 0
        self.masks = torch.zeros(room, typeset.HEIGHT, self.mask_width, dtype=torch.uint8, device="cuda")
        self.boxes = torch.zeros(room, typeset.MOST_LETTERS, 2, device="cuda")
        self.texts = torch.zeros(room, typeset.MOST_LETTERS, dtype=torch.int64, device="cuda")
        self.widths = torch.zeros(room, device="cuda")
        self.ahead, self.ended = threading.Semaphore(48), False
        jobs = ((seed * 1_000_003 + i, CHUNK, faces, self.mask_width, grammar.line) for i in range(10 ** 9))
        self.chunks = workers.imap_unordered(typeset.chunk, self._measured(jobs), chunksize=1)

    def _measured(self, jobs):
        """Keeps the workers no more than some chunks ahead."""
        for job in jobs:
            self.ahead.acquire()
            if self.ended:
                return
            yield job

    def end(self):
        self.ended = True
        self.ahead.release()

    def take(self):
        masks, boxes, texts, widths = next(self.chunks)
        self.ahead.release()
        at = slice(self.place, self.place + CHUNK)
        self.masks[at], self.boxes[at] = torch.from_numpy(masks).cuda(), torch.from_numpy(boxes).cuda()
        self.texts[at], self.widths[at] = torch.from_numpy(texts).cuda(), torch.from_numpy(widths).cuda()
        self.filled = max(self.filled, self.place + CHUNK)
        self.place = (self.place + CHUNK) % self.room

    def batch(self, n, textures):
        pick = torch.randint(0, self.filled, (n,), device="cuda")
        other = torch.randint(0, self.filled, (n,), device="cuda")
        return damage.crops(self.masks[pick], self.boxes[pick], self.texts[pick], self.widths[pick],
                            self.masks[other], self.crop_width, textures)


def loss_of(logits, targets, lengths):
    scores = F.log_softmax(logits.float(), 1).permute(2, 0, 1)
    columns = torch.full((logits.shape[0],), logits.shape[2], device=logits.device)
    each = F.ctc_loss(scores, targets, columns, lengths, reduction="none", zero_infinity=True)
    return (each / lengths.clamp_min(1)).mean()


def judge(network, sets):
    """Share of lines exact and pooled CER of held-out faces, case folded, spaces left out."""
    network.eval()
    told = {}
    for name, batches in sets.items():
        exact = wrong = letters = lines = 0
        for crops, targets, lengths in batches:
            with torch.no_grad(), torch.autocast("cuda", torch.bfloat16):
                read = greedy(network(crops)[:, :, 0].cpu())
            for classes, target, length in zip(read, targets.cpu().numpy(), lengths.cpu().numpy()):
                fold = lambda cs: alphabet.decode(cs).upper().replace(" ", "")
                a, b = fold(classes), fold([int(t) for t in target[:length]])
                exact, wrong, letters, lines = exact + (a == b), wrong + edits(a, b), letters + len(b), lines + 1
        told[name] = "%.1f %% exact, CER %.2f %%" % (100 * exact / lines, 100 * wrong / max(1, letters))
    network.train()
    return told


def load_faces(folder):
    kept, held = [], []
    with open(os.path.join(folder, "faces.tsv")) as table:
        for row in csv.DictReader(table, delimiter="\t"):
            face = (os.path.join(folder, row["file"]), row["capitals_only"] == "1")
            (held if row["held_out"] == "1" else kept).append(face)
    return kept, held


def load_textures(folder):
    if not folder:
        return None
    import cv2
    pictures = [cv2.imread(os.path.join(folder, f), cv2.IMREAD_GRAYSCALE) for f in sorted(os.listdir(folder))]
    square = [cv2.resize(p, (768, 768), interpolation=cv2.INTER_AREA) for p in pictures if p is not None]
    return torch.from_numpy(np.stack(square)).cuda().float().unsqueeze(1) / 255


def export(network, folder):
    plain = LineNetwork().eval()
    plain.load_state_dict(network.state_dict())
    torch.save(plain.state_dict(), os.path.join(folder, "state.pt"))
    torch.onnx.export(plain.cpu(), torch.zeros(1, 1, 48, 256), os.path.join(folder, "line_reader.onnx"),
                      opset_version=12, dynamo=False, input_names=["crops"], output_names=["logits"],
                      dynamic_axes={"crops": {0: "n", 3: "w"}, "logits": {0: "n", 3: "t"}})


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("--faces", required=True)
    parser.add_argument("--textures", default="")
    parser.add_argument("--seconds", type=float, default=500)
    parser.add_argument("--out", required=True)
    parser.add_argument("--from", dest="state", default="")
    parser.add_argument("--rate", type=float, default=2e-3)
    parser.add_argument("--batch", type=int, default=768)
    parser.add_argument("--room", type=int, default=200_000)
    parser.add_argument("--seed", type=int, default=1)
    options = parser.parse_args()
    kept, held = load_faces(options.faces)
    each = max(1, ((os.cpu_count() or 4) - 2) // 2)
    fork = multiprocessing.get_context("fork")  # before the GPU is touched
    workers = [fork.Pool(n) for n in (each, each, 1, 1)]
    textures = load_textures(options.textures)
    torch.manual_seed(options.seed)
    torch.backends.cudnn.benchmark = True
    begun = time.time()
    pools = [Pool(kept, shape, options.room // CHUNK * CHUNK, workers[i], options.seed + i) for i, shape in enumerate(SHAPES)]
    tests = [Pool(held, shape, 2 * CHUNK, workers[2 + i], 900 + i) for i, shape in enumerate(SHAPES)]
    for pool in tests:
        pool.take(), pool.take()
    sets = {shape: [pool.batch(512, textures) for _ in range(4)] for shape, pool in zip(SHAPES, tests)}
    for _ in range(12):
        for pool in pools:
            pool.take()
    print("pools begun after %.0f s, %d faces, %d held out" % (time.time() - begun, len(kept), len(held)), flush=True)

    network = LineNetwork().cuda().to(memory_format=torch.channels_last)
    if options.state:
        network.load_state_dict(torch.load(options.state))
    average = copy.deepcopy(network)
    averaged = [v for v in average.state_dict().values() if v.is_floating_point()]
    live = [v for v in network.state_dict().values() if v.is_floating_point()]
    decay = [p for p in network.parameters() if p.ndim > 1]
    plain = [p for p in network.parameters() if p.ndim <= 1]
    steps = torch.optim.AdamW([{"params": decay, "weight_decay": 0.02}, {"params": plain, "weight_decay": 0.0}], lr=options.rate)
    start, step, told, running = time.time(), 0, time.time(), 0.0
    while (done := (time.time() - start) / options.seconds) < 1:
        rate = options.rate * min(1, (step + 1) / 300) * (0.5 * (1 + np.cos(np.pi * done)) * 0.99 + 0.01)
        for group in steps.param_groups:
            group["lr"] = rate
        pool = pools[step % 3 == 2]
        with torch.no_grad():
            crops, targets, lengths = pool.batch(options.batch if pool is pools[0] else options.batch // 2, textures)
        with torch.autocast("cuda", torch.bfloat16):
            logits = network(crops.to(memory_format=torch.channels_last))[:, :, 0]
        loss = loss_of(logits, targets, lengths)
        steps.zero_grad(set_to_none=True)
        loss.backward()
        torch.nn.utils.clip_grad_norm_(network.parameters(), 2.0)
        steps.step()
        keep = min(0.9995, 1 - 10 / (step + 20))
        with torch.no_grad():
            torch._foreach_lerp_(averaged, live, 1 - keep)
        step += 1
        if step % 4 == 0:
            pools[(step // 4) % 3 == 2].take()
        if step % 100 == 0:
            running = loss.item()
        if time.time() - told > 45:
            told = time.time()
            print("%4.0f s, step %d, loss %.3f, masks %s: %s" % (
                told - start, step, running, [p.filled for p in pools], judge(average, sets)), flush=True)
    print("end, step %d: %s" % (step, judge(average, sets)), flush=True)
    export(average, options.out)
    for pool in pools + tests:
        pool.end()
    for processes in workers:
        processes.terminate()


if __name__ == "__main__":
    main()
