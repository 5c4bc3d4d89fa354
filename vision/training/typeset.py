"""Text set in a face as a mask of ink, with the place of every letter."""

import random
from typing import NamedTuple

import numpy as np
from PIL import Image, ImageDraw, ImageFont

import alphabet
import dots
import grammar
from dots import BASELINE, CAP_HEIGHT, HEIGHT

MOST_LETTERS = grammar.MOST_LETTERS


class Face(NamedTuple):
    path: str
    capitals_only: bool
    characters: frozenset  # that it holds


def _font(path, cache):
    if path not in cache:
        size = 40
        for _ in range(3):
            box = ImageFont.truetype(path, size).getbbox("HE")
            size = max(8, round(size * CAP_HEIGHT / max(1, box[3] - box[1])))
        cache[path] = ImageFont.truetype(path, size)
    return cache[path]


def _arrow(draw, x, width, rng):
    """The government's mark: a shaft and two barbs, thin or broad, short or as long as the shaft, now and then apart."""
    foot = BASELINE + CAP_HEIGHT * rng.choice([0, 0, rng.uniform(-0.1, 0.15)])
    middle, top, lean = x + width / 2, foot - CAP_HEIGHT * rng.uniform(0.75, 1.2), width * 0.45
    stroke, drop = rng.randint(2, 5), rng.choice([rng.uniform(0.25, 0.55), rng.uniform(0.5, 0.95)]) * CAP_HEIGHT
    apart = rng.choice([0, 0, 0, rng.uniform(1, 3)])
    draw.line([(middle, top), (middle, foot)], fill=255, width=stroke)
    for side in (-1, 1):
        draw.line([(middle + side * apart, top + apart), (middle + side * lean, top + drop)], fill=255, width=stroke)


def _spaces(text, usual, rng):
    """How wide each space is; in some lines one parts two columns of writing, too wide for letters that are lost."""
    widths = [usual] * text.count(" ")
    if widths and rng.random() < 0.06:
        widths[rng.randrange(len(widths))] = CAP_HEIGHT * rng.uniform(2.5, 6)
    return iter(widths)


def _stencilled(mask, boxes, rng):
    """Bridges cut through every letter, as a stencil needs them."""
    gap, level = rng.randint(2, 5), rng.random() < 0.25
    if level:
        middle = BASELINE - CAP_HEIGHT // 2 + rng.randint(-4, 4)
        mask[middle - gap // 2: middle - gap // 2 + gap] = 0
        return
    for left, right in boxes:
        middle = int((left + right) / 2 + rng.choice([-1, 0, 0, 1]) * (right - left) * 0.15)
        if right - left > 10:
            mask[:, max(0, middle - gap // 2): middle - gap // 2 + gap] = 0


def _set(text, font, rng, widest):
    """Letters one by one on a baseline that trembles a little; None where they do not fit."""
    sheet = Image.new("L", (widest, HEIGHT))
    draw = ImageDraw.Draw(sheet)
    tracking = rng.choice([0, 0, 0, rng.uniform(-1, 3), rng.uniform(-1.5, 0), rng.uniform(0, 9)])
    tremble = rng.choice([0, 0, 0.6, 1.5])
    # wider ones are rare, as they look like a letter that is lost
    usual = CAP_HEIGHT * rng.uniform(0.25, rng.choice([0.55, 0.6, 0.7, 1.1])) + max(0, tracking) * 0.5
    spaces = _spaces(text, usual, rng)
    arrow = rng.uniform(10, 24)
    x, boxes = 3.0, []
    for character in text:
        if character == " ":
            advance = next(spaces)
        elif character == alphabet.PROPERTY_ARROW:
            advance = arrow + 4
        else:
            advance = font.getlength(character)
        if x + advance > widest - 3:
            return None
        y = BASELINE + rng.gauss(0, tremble)
        if character == alphabet.PROPERTY_ARROW:
            _arrow(draw, x + 2, arrow, rng)
        elif character != " ":
            draw.text((x, y), character, font=font, fill=255, anchor="ls")
        boxes.append((x, x + advance))
        x += advance + tracking
    return np.array(sheet), boxes, x


def mask_of(text, face, rng, widest, cache):
    """(mask uint8 HEIGHT x widest, boxes float32 MOST_LETTERS x 2, width) or None if it does not fit."""
    style = rng.random()
    made = dots.dotted(text, face, rng, widest) if style < 0.14 else _set(text, _font(face, cache), rng, widest)
    if made is None:
        return None
    mask, boxes, width = made
    if style > 0.95:
        _stencilled(mask, boxes, rng)
    padded = np.zeros((MOST_LETTERS, 2), np.float32)
    padded[: len(boxes)] = boxes
    return mask, padded, width


def _fitting(text, face):
    """The text as the face can set it; None where the face lacks one of its characters."""
    text = text.upper() if face.capitals_only else text
    if not 0 < len(text) <= MOST_LETTERS or text != text.strip():
        return None
    return text if all(c in face.characters or c in " " + alphabet.PROPERTY_ARROW for c in text) else None


def chunk(seed, count, faces, widest, least, line):
    """Many masks at once, none set narrower than `least`; faces as Face, line as grammar.line."""
    rng, cache = random.Random(seed), {}
    faces = rng.sample(faces, min(len(faces), 24))
    masks = np.zeros((count, HEIGHT, widest), np.uint8)
    boxes = np.zeros((count, MOST_LETTERS, 2), np.float32)
    texts = np.zeros((count, MOST_LETTERS), np.int64)
    widths = np.zeros(count, np.float32)
    done = 0
    while done < count:
        face = rng.choice(faces)
        text = _fitting(line(rng), face)
        made = text and mask_of(text, face.path, rng, widest, cache)
        if not made or made[0].max() == 0 or made[2] < least:
            continue
        masks[done], boxes[done], widths[done] = made
        texts[done, : len(text)] = alphabet.encode(text)
        done += 1
    return masks, boxes, texts, widths
