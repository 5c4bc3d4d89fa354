"""What stands in a picture beside writing: the edges of a strap, seams, eyelets, patterns, shadows, frames."""

import math

import torch

from noise import axes, chance, field, normal, uniform
from surface import ground_of, ring, stroke


def framed(mark, x, y, device):
    """A frame around the mark, a box or an oval, as ink."""
    n = x.shape[0]
    a = mark.half_width + uniform(n, 0.3, 1.0, device) * mark.half_height + 3
    b = mark.half_height * uniform(n, 1.25, 2.0, device) + 3
    box = torch.maximum(x.abs() - a, y.abs() - b)
    r = torch.sqrt((x / (1.25 * a)) ** 2 + (y / (1.25 * b)) ** 2 + 1e-6)
    oval = (r - 1) * torch.minimum(a, b)
    away = torch.where(chance(n, 0.6, device) > 0, box, oval).abs()
    half = uniform(n, 0.03, 0.1, device) * mark.half_height + 0.6
    return torch.sigmoid((half - away) * 2)


def two_grounds(mark, ground, tops, textures, xs, ys, device):
    """Sometimes the piece is a strap with another ground on both sides of it: light, ground and thread tops."""
    n, side = xs.shape[0] if xs.shape[0] > 1 else ground.shape[0], ground.shape[2]
    other, other_tops = ground_of(n, side, side, textures, device)
    turn = mark.turn + normal(n, 0.1, device)
    across = -(xs - mark.x) * torch.sin(turn) + (ys - mark.y) * torch.cos(turn)
    half = mark.half_height * uniform(n, 1.15, 5, device) + uniform(n, 2, 60, device)
    edge = (across.abs() - half) / uniform(n, 0.6, 2.5, device)
    outside = torch.sigmoid(edge) * chance(n, 0.55, device)
    shade = 1 - torch.exp(-0.5 * (edge / uniform(n, 1, 8, device)) ** 2) * uniform(n, -0.2, 0.6, device) * (outside > 0).float()
    level = torch.exp(uniform(n, -1.2, 0.9, device))
    light = ((1 - outside) + outside * level).clamp(0.05, 3) * shade
    return light, ground * (1 - outside) + other * outside, tops * (1 - outside) + other_tops * outside


def _printed(picture, on, device):
    """A pattern of stripes, checks or dots that the cloth was printed with."""
    n, _, h, w = picture.shape
    xs, ys = axes(h, w, device)
    turn, period = uniform(n, 0, math.pi, device), torch.exp(uniform(n, 2.3, 4.8, device))
    a = torch.sin(6.2832 * (xs * torch.cos(turn) + ys * torch.sin(turn)) / period)
    b = torch.sin(6.2832 * (-xs * torch.sin(turn) + ys * torch.cos(turn)) / period)
    kind = torch.randint(0, 3, (n, 1, 1, 1), device=device)
    swing = torch.where(kind == 0, a, torch.where(kind == 1, a * b, a + b - 1))
    printed = torch.sigmoid((swing - uniform(n, -0.4, 0.5, device)) * period / 3)
    return picture * (1 + printed * uniform(n, -0.6, 0.6, device) * on)


def _shadowed(picture, device):
    n, _, h, w = picture.shape
    xs, ys = axes(h, w, device)
    turn = uniform(n, 0, 2 * math.pi, device)
    across = (xs - uniform(n, 0, w, device)) * torch.cos(turn) + (ys - uniform(n, 0, h, device)) * torch.sin(turn)
    dark = torch.sigmoid(across / torch.exp(uniform(n, 0, 3.5, device)))
    return picture * (1 - dark * uniform(n, 0, 0.75, device) * chance(n, 0.3, device))


def _ticks(n, h, w, on, device):
    """Rows of short strokes: a rule's ticks, stitches, the teeth of a fastener."""
    xs, ys = axes(h, w, device)
    turn = uniform(n, 0, math.pi, device)
    x0, y0 = uniform(n, 0, w, device), uniform(n, 0, h, device)
    along = (xs - x0) * torch.cos(turn) + (ys - y0) * torch.sin(turn)
    across = -(xs - x0) * torch.sin(turn) + (ys - y0) * torch.cos(turn)
    period = torch.exp(uniform(n, 1.6, 3.6, device))
    share = uniform(n, 0.15, 0.75, device)
    slant = normal(n, 0.3, device) * across
    beat = torch.sigmoid((torch.cos(6.2832 * (along + slant) / period) - torch.cos(3.1416 * share)) * period / 3)
    half = torch.exp(uniform(n, 0.3, 2.7, device))
    fifth = torch.exp(-0.5 * ((torch.remainder(along / period + 2.5, 5) - 2.5) / 0.3) ** 2)  # a rule's are longer
    half = half * (1 + fifth * uniform(n, 0.3, 1.2, device) * chance(n, 0.4, device))
    long = uniform(n, 30, 600, device)
    row = torch.sigmoid((half - across.abs()) * 1.5) * torch.sigmoid(long - along.abs())
    return beat * row * uniform(n, -0.7, 0.5, device) * (torch.rand(n, 1, 1, 1, device=device) < on).float()


def _coded(picture, on, device):
    """A block of bars or of little squares, as printed for machines to read."""
    n, _, h, w = picture.shape
    xs, ys = axes(h, w, device)
    turn, module = uniform(n, 0, 2 * math.pi, device), torch.exp(uniform(n, 0.4, 2.2, device))
    dx, dy = xs - uniform(n, 0, w, device), ys - uniform(n, 0, h, device)
    a, b = dx * torch.cos(turn) + dy * torch.sin(turn), -dx * torch.sin(turn) + dy * torch.cos(turn)
    many, bars = torch.randint(10, 60, (n, 1, 1, 1), device=device), chance(n, 0.5, device)
    tall = torch.where(bars > 0, many * module * uniform(n, 0.2, 0.6, device), many * module * 0.5)
    column, row = torch.floor(a / module), torch.floor(b / module) * (1 - bars)
    dark = (torch.sin(column * 12.9898 + row * 78.233 + turn * 43.1).mul(43758.5453).frac().abs() > 0.5).float()
    block = (a.abs() < many * module * 0.5).float() * (b.abs() < tall).float() * on
    light = uniform(n, 0.6, 1, device)
    return picture * (1 - block) + block * light * (1 - dark * uniform(n, 0.4, 0.95, device))


def furnished(picture, bare, device):
    """Things laid over the whole; more of them where nothing is written."""
    n, _, h, w = picture.shape
    for on in (0.3, 0.2, 0.15):
        picture = picture * (1 + stroke(n, h, w, on + 0.3 * bare, device))
    for on in (0.2, 0.1):
        picture = picture * (1 + ring(n, h, w, on + 0.2 * bare, device))
    for on in (0.3, 0.2):
        picture = picture * (1 + _ticks(n, h, w, on + 0.25 * bare, device))
    picture = _printed(picture, (torch.rand(n, 1, 1, 1, device=device) < 0.07 + 0.15 * bare).float(), device)
    picture = _coded(picture, (torch.rand(n, 1, 1, 1, device=device) < 0.06 + 0.1 * bare).float(), device)
    blot = torch.sigmoid((field(n, h, w, 14, device) - uniform(n, 1.5, 3.5, device)) * 5) * chance(n, 0.1, device)
    return _shadowed(picture * (1 - blot * uniform(n, -0.4, 0.6, device)), device)
