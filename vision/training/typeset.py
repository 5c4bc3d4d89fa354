"""Text set in a face as a mask of ink, with the place of every letter."""

import random

import numpy as np
from PIL import Image, ImageDraw, ImageFont

import alphabet
import grammar

HEIGHT = 64  # of a mask, pixels
CAP_HEIGHT = 32  # capitals are brought to it
BASELINE = 48
MOST_LETTERS = grammar.MOST_LETTERS


def _font(path, cache):
    if path not in cache:
        size = 40
        for _ in range(3):
            box = ImageFont.truetype(path, size).getbbox("HE")
            size = max(8, round(size * CAP_HEIGHT / max(1, box[3] - box[1])))
        cache[path] = ImageFont.truetype(path, size)
    return cache[path]


def _arrow(draw, x, width):
    middle, top, lean = x + width / 2, BASELINE - CAP_HEIGHT, width * 0.45
    stroke = 4
    draw.line([(middle, BASELINE), (middle, top)], fill=255, width=stroke)
    draw.line([(middle - lean, top + 16), (middle, top)], fill=255, width=stroke)
    draw.line([(middle + lean, top + 16), (middle, top)], fill=255, width=stroke)


def _stencilled(mask, boxes, rng):
    """Bridges cut through every letter, as a stencil needs them."""
    gap = rng.randint(2, 4)
    for left, right in boxes:
        middle = int((left + right) / 2 + rng.choice([-1, 0, 0, 1]) * (right - left) * 0.15)
        if right - left > 10:
            mask[:, max(0, middle - gap // 2): middle - gap // 2 + gap] = 0


def _dotted(mask, rng):
    """The same letters as a needle or ink-jet printer would set them: dots on a grid."""
    pitch = rng.choice([4, 4.6, 5.3])
    rows = int(HEIGHT / pitch)
    columns = int(mask.shape[1] / pitch)
    small = Image.fromarray(mask).resize((columns, rows), Image.BOX)
    on = np.asarray(small) > rng.choice([90, 110, 130])
    sheet = Image.new("L", (mask.shape[1], HEIGHT))
    draw = ImageDraw.Draw(sheet)
    radius = pitch * rng.uniform(0.34, 0.62)
    for row, column in zip(*np.nonzero(on)):
        x, y = (column + 0.5) * pitch, (row + 0.5) * pitch
        draw.ellipse([x - radius, y - radius, x + radius, y + radius], fill=255)
    return np.array(sheet)


def _set(text, font, rng, widest):
    """Letters one by one on a baseline that trembles a little; None where they do not fit."""
    sheet = Image.new("L", (widest, HEIGHT))
    draw = ImageDraw.Draw(sheet)
    tracking = rng.choice([0, 0, rng.uniform(-1, 3), rng.uniform(0, 9)])
    tremble = rng.choice([0, 0, 0.6, 1.5])
    space = rng.uniform(9, 22)
    x, boxes = 3.0, []
    for character in text:
        if character == " ":
            advance = space
        elif character == alphabet.PROPERTY_ARROW:
            advance = 22
        else:
            advance = font.getlength(character)
        if x + advance > widest - 3:
            return None
        y = BASELINE + rng.gauss(0, tremble)
        if character == alphabet.PROPERTY_ARROW:
            _arrow(draw, x, advance)
        elif character != " ":
            draw.text((x, y), character, font=font, fill=255, anchor="ls")
        boxes.append((x, x + advance))
        x += advance + tracking
    return np.array(sheet), boxes, x


def mask_of(text, face, rng, widest, cache):
    """(mask uint8 HEIGHT x widest, boxes float32 MOST_LETTERS x 2, width) or None if it does not fit."""
    made = _set(text, _font(face, cache), rng, widest)
    if made is None:
        return None
    mask, boxes, width = made
    style = rng.random()
    if style < 0.05:
        _stencilled(mask, boxes, rng)
    elif style < 0.17:
        mask = _dotted(mask, rng)
    padded = np.zeros((MOST_LETTERS, 2), np.float32)
    padded[: len(boxes)] = boxes
    return mask, padded, width


def chunk(arguments):
    """Many masks at once, for a pool of processes: (seed, count, faces, widest, lines)."""
    seed, count, faces, widest, line = arguments
    rng, cache = random.Random(seed), {}
    faces = rng.sample(faces, min(len(faces), 24))
    masks = np.zeros((count, HEIGHT, widest), np.uint8)
    boxes = np.zeros((count, MOST_LETTERS, 2), np.float32)
    texts = np.zeros((count, MOST_LETTERS), np.int64)
    widths = np.zeros(count, np.float32)
    done = 0
    while done < count:
        face, capitals_only = rng.choice(faces)
        text = line(rng)
        if capitals_only:
            text = text.upper()
        if not 0 < len(text) <= MOST_LETTERS or text != text.strip():
            continue
        made = mask_of(text, face, rng, widest, cache)
        if made is None or made[0].max() == 0:
            continue
        masks[done], boxes[done], widths[done] = made
        texts[done, : len(text)] = alphabet.encode(text)
        done += 1
    return masks, boxes, texts, widths
