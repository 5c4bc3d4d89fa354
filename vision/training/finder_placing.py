"""Where marks of one to four lines stand in a scene, at any size and angle, straight or arched; all on the GPU.

A mark has its own frame: x along its lines, y down, in pixels of the scene, from its middle.
"""

import math
from typing import NamedTuple

import torch

from noise import chance, normal, uniform
from typeset import CAP_HEIGHT

MARKS, LINES = 3, 4  # places for marks in a scene, for lines in a mark
LEAST_CAP, MOST_CAP = 5.0, 72.0  # height of a mark's capitals, scene pixels


class Mark(NamedTuple):
    """Of every scene one mark; each (N, 1, 1, 1)."""
    on: torch.Tensor  # 1 where there is one
    x: torch.Tensor
    y: torch.Tensor
    turn: torch.Tensor  # the way it reads, clockwise from the right
    bend: torch.Tensor  # 1 / radius of the circle that its lines follow, below 0 where they sag
    stretch: torch.Tensor  # of its letters' width
    shear: torch.Tensor
    half_width: torch.Tensor
    half_height: torch.Tensor


class Line(NamedTuple):
    on: torch.Tensor
    cap: torch.Tensor  # height of its capitals
    x: torch.Tensor  # its middle in the mark's frame
    y: torch.Tensor
    half: torch.Tensor  # of its length
    flat: torch.Tensor  # 1 where it stays straight in an arched mark


def _turns(n, device):
    any_way = uniform(n, 0, 2 * math.pi, device)
    square = torch.randint(0, 4, (n, 1, 1, 1), device=device) * (math.pi / 2) + normal(n, 0.12, device)
    square = torch.where(chance(n, 0.5, device) > 0, square, normal(n, 0.15, device))  # mostly the right way up
    return torch.where(chance(n, 0.5, device) > 0, any_way, square)


def _lines(widths, cap, stretch, device):
    """Lines one below another about the mark's middle; widths (N, LINES) of their masks."""
    n = widths.shape[0]
    kind = torch.rand(n, 1, 1, 1, device=device)
    count = 1 + (kind > 0.36).float() + (kind > 0.66).float() + (kind > 0.86).float()
    gap = uniform(n, 0.2, 1.0, device) * cap
    lines, y = [], torch.zeros_like(cap)
    same = chance(n, 0.5, device)
    aligned = chance(n, 0.7, device)
    for i in range(LINES):
        own = cap * (same + (1 - same) * torch.exp(uniform(n, -0.45, 0.25, device)))
        half = widths[:, i].view(n, 1, 1, 1) * stretch * own / CAP_HEIGHT / 2
        shift = (1 - aligned) * uniform(n, -1, 1, device) * half * 0.5
        lines.append(Line((count > i).float(), own, shift, y + own / 2, half, chance(n, 0.35, device) * float(i > 0)))
        y = y + torch.where(count > i, own + gap, torch.zeros_like(gap))
    middle = (y - gap) / 2
    return [line._replace(y=line.y - middle) for line in lines], middle


def placed(widths, side, device):
    """MARKS times (Mark, its Lines) for scenes of side x side pixels; widths (N, MARKS * LINES) of masks, in their pixels."""
    n, marks = widths.shape[0], []
    bare = chance(n, 0.12, device)
    same_turn, first_turn = chance(n, 0.5, device), _turns(n, device)
    log_cap = uniform(n, math.log(LEAST_CAP), math.log(MOST_CAP), device)
    for m in range(MARKS):
        own = widths[:, m * LINES:(m + 1) * LINES]
        cap = torch.exp(log_cap) if m == 0 else torch.exp(log_cap + normal(n, 0.3, device)).clamp(LEAST_CAP, MOST_CAP)
        stretch = torch.exp(normal(n, 0.12, device))
        longest = own[:, 0].view(n, 1, 1, 1) * stretch / CAP_HEIGHT
        cap = torch.minimum(cap, 1.2 * side / longest).clamp_min(LEAST_CAP)
        lines, half_height = _lines(own, cap, stretch, device)
        half_width = torch.stack([line.half * line.on for line in lines]).amax(0)
        turn = torch.where(same_turn > 0, first_turn + normal(n, 0.06, device), _turns(n, device)) if m else first_turn
        arc = torch.where(chance(n, 0.4, device) > 0, uniform(n, -0.3, 0.3, device), uniform(n, -1.0, 1.6, device))
        bend = arc * chance(n, 0.25, device) / half_width.clamp_min(1) + 1e-5
        x, y = uniform(n, 0.08 * side, 0.92 * side, device), uniform(n, 0.08 * side, 0.92 * side, device)
        on = chance(n, (1.0, 0.5, 0.35)[m], device) * (1 - bare)
        mark = Mark(on, x, y, turn, bend, stretch, normal(n, 0.08, device), half_width, half_height)
        for other, _ in marks:  # marks stand apart, but for a few
            reach = torch.hypot(mark.half_width, mark.half_height) + torch.hypot(other.half_width, other.half_height)
            near = (torch.hypot(mark.x - other.x, mark.y - other.y) < reach).float() * other.on
            mark = mark._replace(on=mark.on * (1 - near * chance(n, 0.97, device)))
        marks.append((mark, lines))
    return marks


def in_mark(mark, xs, ys):
    """Places of the scene in the mark's frame, straight."""
    dx, dy = xs - mark.x, ys - mark.y
    return (dx * torch.cos(mark.turn) + dy * torch.sin(mark.turn),
            -dx * torch.sin(mark.turn) + dy * torch.cos(mark.turn))


def along_line(mark, line, x, y):
    """(x, y) of the mark's frame as distances along the line from its middle and down from its middle, and its turn there."""
    bend = mark.bend * (1 - line.flat) + 1e-5 * line.flat
    radius = 1 / bend  # the circle's middle lies below where this is above 0
    way = torch.sign(radius)
    down = radius - y
    angle = torch.atan2(way * x, way * down)
    return angle * radius - line.x, radius - way * torch.hypot(x, down) - line.y, angle
