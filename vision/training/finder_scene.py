"""Draws scenes with marks in them, and the truth that the finder network learns, on the GPU, afresh for every step."""

import torch
import torch.nn.functional as F

from camera import photographed, smeared
from damage import worn
from finder_network import STRIDE
from finder_placing import LINES, along_line, in_mark, placed
from finder_things import framed, furnished, two_grounds
from noise import axes, chance, uniform
from surface import ground_of, inked
from typeset import BASELINE, CAP_HEIGHT

SIDE = 512  # of a scene, pixels
CORE, LEAST_CORE, END = 0.25, 2.5, 0.15  # half of a core's height in capitals, in pixels; what is left out at its ends
WINDOW, LEAST_DEVIATION = 65, 0.02  # of the levelling: pixels; of the grey levels 0 to 1
FRESH = 0.4  # of the marks are new print


def levelled(grey):
    """Levels 0 to 1 (N, 1, H, W) against the mean and deviation around each place: what the network looks at."""
    wide = F.pad(grey, [WINDOW // 2] * 4, mode="reflect")
    mean = F.avg_pool2d(wide, WINDOW, 1)
    square = F.avg_pool2d(wide * wide, WINDOW, 1)
    return (grey - mean) / (square - mean * mean).clamp_min(0).sqrt().clamp_min(LEAST_DEVIATION)


def _pyramid(masks):
    """The masks, and the same at a half and a quarter, for letters that are drawn small."""
    half = F.avg_pool2d(masks, 2)
    return masks, half, F.avg_pool2d(half, 2)


def _sampled(levels, u, v, scale):
    """The masks where the scene's pixels see them; scale: scene pixels a mask pixel."""
    width, height = levels[0].shape[3], levels[0].shape[2]
    grid = torch.stack([(2 * u[:, 0] + 1) / width - 1, (2 * v[:, 0] + 1) / height - 1], -1)
    seen = [F.grid_sample(level, grid, padding_mode="zeros", align_corners=False) for level in levels]
    return torch.where(scale > 0.6, seen[0], torch.where(scale > 0.3, seen[1], seen[2]))


def _line_ink(mark, line, levels, width, x, y):
    along, down, _ = along_line(mark, line, x, y)
    scale = line.cap / CAP_HEIGHT
    u = (along + mark.shear * down) / (scale * mark.stretch) + width.view(-1, 1, 1, 1) / 2
    return _sampled(levels, u, down / scale + BASELINE - CAP_HEIGHT / 2, scale)


def _marks_ink(marks, masks, widths, xs, ys, device):
    """Ink of all marks, each with a strength of its own; masks (N, MARKS * LINES, 64, W)."""
    n, ink = masks.shape[0], 0
    for m, (mark, lines) in enumerate(marks):
        x, y = in_mark(mark, xs, ys)
        fresh = chance(n, FRESH, device)
        whole = framed(mark, x, y, device) * chance(n, 0.15, device)
        for i, line in enumerate(lines):
            at = m * LINES + i
            levels = _pyramid(worn(masks[:, at:at + 1].float() / 255, fresh, device))
            whole = torch.maximum(whole, _line_ink(mark, line, levels, widths[:, at], x, y) * line.on)
        strength = uniform(n, 0.6, 1, device)
        ink = torch.maximum(whole * strength * mark.on, ink) if m else whole * strength * mark.on
    return ink


def _truth(marks, side, device):
    """Core (N, 1, S, S) and log height, cosine and sine of twice the angle (N, 3, S, S) at the cells of the answer."""
    cells = side // STRIDE
    xs, ys = axes(cells, cells, device)
    xs, ys = xs * STRIDE + (STRIDE - 1) / 2, ys * STRIDE + (STRIDE - 1) / 2
    core, told = 0, 0
    for mark, lines in marks:
        x, y = in_mark(mark, xs, ys)
        for line in lines:
            along, down, angle = along_line(mark, line, x, y)
            reach = (line.half - END * line.cap).clamp_min(0.3 * line.cap)
            here = ((along.abs() < reach) & (down.abs() < (CORE * line.cap).clamp_min(LEAST_CORE))).float()
            here = here * line.on * mark.on
            twice = 2 * (mark.turn + angle)
            own = torch.cat([torch.log2(line.cap / 16).expand_as(twice), torch.cos(twice), torch.sin(twice)], 1)
            told = told * (1 - here) + own * here
            core = torch.maximum(here, core) if torch.is_tensor(core) else here
    return core, told


def scenes(masks, widths, textures=None, side=SIDE):
    """One batch: pictures as the network looks at them (N, 1, side, side), core, geometry.

    masks (N, MARKS * LINES, 64, W) uint8 and widths (N, MARKS * LINES) as typeset.chunk makes them.
    """
    n, device = masks.shape[0], masks.device
    marks = placed(widths, side, device)
    core, told = _truth(marks, side, device)
    xs, ys = axes(side, side, device)
    ink = _marks_ink(marks, masks, widths, xs, ys, device)
    first = marks[0][0]
    least = torch.stack([torch.where(line.on * mark.on > 0, line.cap, torch.full_like(line.cap, 64.0))
                         for mark, lines in marks for line in lines]).amin(0)
    soft = (least / 14).clamp(0.15, 1)  # small letters are blurred less
    blurred = smeared(ink, device, 2.2 * soft.view(n, 1, 1))
    ink = torch.where(chance(n, 0.4, device) > 0, blurred, ink)
    ground, tops = ground_of(n, side, side, textures, device)
    light, ground, tops = two_grounds(first, ground, tops, textures, xs, ys, device)
    clean, bare = chance(n, 0.3, device), 1 - first.on
    picture = inked(ink, ground, tops, clean, bare, device) * light
    picture = furnished(picture, bare, device)
    picture = photographed(picture, least / CAP_HEIGHT, device, 2.6 * soft.view(n, 1, 1)).clamp(0, 1)
    return levelled(picture), core, told
