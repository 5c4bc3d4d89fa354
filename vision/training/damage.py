"""Turns clean masks into crops of worn stamps, on the GPU, afresh for every step.

Crops are (N, 1, 48, W) with mean 0 and deviation 1; targets are class indices padded with 0.
"""

import torch
import torch.nn.functional as F

from camera import photographed, smeared
from network import HEIGHT
from noise import chance, field, uniform
from placing import neighbour, placed, sampled
from surface import ground_of, inked
from wiping import wiped

CLEAN, BARE = 0.33, 0.06  # of the lines are fresh print; of the windows hold no line


def _outlined(ink, thick, thin, device):
    """Letters drawn by their edge alone, some filled a little."""
    wide = F.max_pool2d(thick, 3, 1, 1)
    n = ink.shape[0]
    line = torch.where(chance(n, 0.5, device) > 0, (wide - ink).clamp(0, 1), (thick - thin).clamp(0, 1))
    return (line + thin * uniform(n, 0, 0.3, device) * chance(n, 0.3, device)).clamp(0, 1)


def worn(ink, clean, device):
    """Stroke weight, outlines, double impressions, fading, speckle."""
    n, _, h, w = ink.shape
    thick, thin = F.max_pool2d(ink, 3, 1, 1), -F.max_pool2d(-ink, 3, 1, 1)
    weight = uniform(n, -1, 1, device)
    grown = torch.where(weight > 0, ink + (thick - ink) * weight ** 2, ink + (ink - thin) * -(weight ** 2) * 0.8)
    grown = torch.where(chance(n, 0.05, device) > 0, _outlined(ink, thick, thin, device), grown)
    old = 1 - clean
    double = chance(n, 0.08, device) * uniform(n, 0.2, 0.7, device) * old
    grown = torch.maximum(grown, F.pad(grown, (3, 0, 2, 0))[:, :, :h, :w] * double)
    depth = uniform(n, 0, 1, device) * chance(n, 0.7, device) * old
    fade = 1 - depth * torch.sigmoid(field(n, h, w, 40, device) * 1.5 - 0.3) * 0.85
    speck = torch.sigmoid((field(n, h, w, 2, device) - uniform(n, 0.4, 3.5, device)) * 4) * chance(n, 0.5, device)
    blot = torch.sigmoid((field(n, h, w, 7, device) - uniform(n, 0.8, 4, device)) * 4) * chance(n, 0.4, device)
    return (grown * fade * (1 - speck * (0.2 + 0.8 * old)) * (1 - blot * 0.8 * old)).clamp(0, 1)


def crops(masks, boxes, texts, widths, others, out_width, textures=None):
    """One batch: crops, targets and their lengths.

    masks (N, 64, M) uint8, boxes (N, 30, 2), texts (N, 30), widths (N) as typeset.chunk makes them;
    others: masks of lines that cut in from above or below; textures (T, 1, S, S) float or None.
    """
    n, device = masks.shape[0], masks.device
    masks, others = masks.float().unsqueeze(1) / 255, others.float().unsqueeze(1) / 255
    left, targets, lengths = wiped(masks, boxes, texts)
    u, v, scale = placed(widths, out_width, device)
    clean, bare = chance(n, CLEAN, device), chance(n, BARE, device)
    ink = sampled(masks * left, u, v, scale) * (1 - bare)
    nearest = 0.12 + 0.5 * bare
    for above, share in ((True, 0.25), (False, 0.3)):
        beside = neighbour(others if above else others.flip(0), u, v, above, nearest, device)
        ink = torch.maximum(ink, beside * chance(n, share, device))
    lengths = lengths * (1 - bare.view(n).long())
    targets = targets * (1 - bare.view(n, 1).long())
    ink = worn(ink, clean, device)
    ink = torch.where(chance(n, 0.5, device) > 0, smeared(ink, device), ink)
    ground, tops = ground_of(n, HEIGHT, out_width, textures, device)
    picture = photographed(inked(ink, ground, tops, clean, bare, device), scale, device)
    picture = picture - picture.mean((2, 3), keepdim=True)
    return picture / picture.std((2, 3), keepdim=True).clamp_min(1e-3), targets, lengths
