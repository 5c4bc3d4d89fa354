"""Masks of drawn lines on the GPU, replaced by fresh ones while the network learns."""

import csv
import mmap
import multiprocessing
import os
import threading

import numpy as np
import torch
from fontTools.ttLib import TTFont

import damage
import grammar
import typeset

SHAPES = {"short": (320, 256, 0), "long": (640, 512, 260), "any": (640, 0, 0)}  # pixels of a mask, of a crop; the narrowest text
CROPPED = ("short", "long")  # shapes that the line network reads; the finder's scenes hold any
CHUNK = 1024
SLOTS = 24  # chunks that may wait for the GPU


def load_faces(folder):
    """Faces to learn from and faces held out, as typeset.Face."""
    kept, held = [], []
    with open(os.path.join(folder, "faces.tsv")) as table:
        for row in csv.DictReader(table, delimiter="\t"):
            path = os.path.join(folder, row["file"])
            characters = frozenset(chr(code) for code in TTFont(path, lazy=True).getBestCmap())
            (held if row["held_out"] == "1" else kept).append(
                typeset.Face(path, row["capitals_only"] == "1", characters))
    return kept, held


def load_textures(folder, device="cuda"):
    if not folder:
        return None
    import cv2
    pictures = [cv2.imread(os.path.join(folder, f), cv2.IMREAD_GRAYSCALE) for f in sorted(os.listdir(folder))]
    square = [cv2.resize(p, (768, 768), interpolation=cv2.INTER_AREA) for p in pictures if p is not None]
    return torch.from_numpy(np.stack(square)).to(device).float().unsqueeze(1) / 255


def _fill(job):
    """In a worker process: one chunk, its masks into shared memory."""
    sheets, slot, seed, faces, shape = job
    mask_width, _, least = SHAPES[shape]
    masks, *rest = typeset.chunk(seed, CHUNK, faces, mask_width, least, grammar.line)
    _SHEETS[sheets][slot] = masks
    return (slot, *rest)


_SHEETS = []  # shared arrays, one of each source; made before the processes fork


class Source:
    """Processes that draw chunks of masks of one shape, some ahead of those that take them."""

    def __init__(self, faces, shape, workers, seed):
        shared = mmap.mmap(-1, SLOTS * CHUNK * typeset.HEIGHT * SHAPES[shape][0])
        _SHEETS.append(np.frombuffer(shared, np.uint8).reshape(SLOTS, CHUNK, typeset.HEIGHT, SHAPES[shape][0]))
        self.shape, self._faces, self._seed, self._number = shape, faces, seed * 1_000_003, len(_SHEETS) - 1
        self._free, self._ended = threading.Semaphore(SLOTS), False
        self._slots = list(range(SLOTS))
        self._processes = multiprocessing.get_context("fork").Pool(workers)
        self._chunks = self._copied = None

    def begin(self):
        """Once every source is there, as each forks its processes."""
        self._chunks = self._processes.imap_unordered(_fill, self._jobs(), chunksize=1)

    def _jobs(self):
        i = 0
        while True:
            self._free.acquire()
            if self._ended:
                return
            yield self._number, self._slots.pop(), self._seed + i, self._faces, self.shape
            i += 1

    def take(self, patience=None):
        """(masks, boxes, texts, widths) on the GPU, or None if none is ready within `patience` seconds."""
        try:
            slot, *rest = self._chunks.next(patience)
        except multiprocessing.TimeoutError:
            return None
        if self._copied is not None:  # long since, by now
            self._copied[1].synchronize()
            self._slots.append(self._copied[0])
            self._free.release()
        masks = torch.from_numpy(_SHEETS[self._number][slot]).cuda(non_blocking=True)
        self._copied = slot, torch.cuda.Event()
        self._copied[1].record()
        return [masks, *(torch.from_numpy(r).cuda() for r in rest)]

    def pin(self):
        """Lets the GPU copy out of the shared memory while the processor goes on."""
        sheets = _SHEETS[self._number]
        torch.cuda.cudart().cudaHostRegister(sheets.ctypes.data, sheets.nbytes, 0)

    def end(self):
        self._ended = True
        self._free.release()
        self._processes.terminate()


class Pool:
    """Many masks on the GPU, the oldest replaced first."""

    def __init__(self, source, room):
        mask_width, self.crop_width, _ = SHAPES[source.shape]
        self._source, self._place, self.filled, self.taken = source, 0, 0, 0
        self._room = max(1, room // CHUNK) * CHUNK
        self.masks = torch.zeros(self._room, typeset.HEIGHT, mask_width, dtype=torch.uint8, device="cuda")
        self.boxes = torch.zeros(self._room, typeset.MOST_LETTERS, 2, device="cuda")
        self.texts = torch.zeros(self._room, typeset.MOST_LETTERS, dtype=torch.int64, device="cuda")
        self.widths = torch.zeros(self._room, device="cuda")

    def take(self, patience=None):
        chunk = self._source.take(patience)
        if chunk is None:
            return
        at = slice(self._place, self._place + CHUNK)
        self.masks[at], self.boxes[at], self.texts[at], self.widths[at] = chunk
        self.taken += 1
        self.filled = max(self.filled, self._place + CHUNK)
        self._place = (self._place + CHUNK) % self._room

    def picked(self, n):
        """n lines by chance, as damage.crops takes them but for the width and the textures."""
        pick = torch.randint(0, self.filled, (n,), device="cuda")
        other = torch.randint(0, self.filled, (n,), device="cuda")
        return self.masks[pick], self.boxes[pick], self.texts[pick], self.widths[pick], self.masks[other]

    def batch(self, n, textures):
        return damage.crops(*self.picked(n), self.crop_width, textures)


class Replay:
    """Batches of one size as Pool.batch draws them, its 1,500 small steps recorded once and replayed at once."""

    def __init__(self, pool, n, textures):
        self._pool, self._n = pool, n
        self._given = list(pool.picked(n))
        draw = lambda: damage.crops(*self._given, pool.crop_width, textures)
        aside = torch.cuda.Stream()
        aside.wait_stream(torch.cuda.current_stream())
        with torch.cuda.stream(aside):
            for _ in range(3):
                draw()
        torch.cuda.current_stream().wait_stream(aside)
        self._graph = torch.cuda.CUDAGraph()
        with torch.cuda.graph(self._graph, capture_error_mode="thread_local"):
            self._drawn = draw()
        first, second = self.batch()[0], self.batch()[0]
        if not (torch.isfinite(second).all() and (first - second).abs().mean() > 0.1):
            raise RuntimeError("the recorded drawing does not draw afresh")

    def batch(self):
        for place, value in zip(self._given, self._pool.picked(self._n)):
            place.copy_(value)
        self._graph.replay()
        return [value.clone() for value in self._drawn]
