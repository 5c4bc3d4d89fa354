"""Where a line stands in its crop: size, tilt, slant, arc, and the neighbours that cut in."""

import torch
import torch.nn.functional as F

from network import HEIGHT
from noise import axes, chance, field, normal, uniform
from typeset import BASELINE, CAP_HEIGHT, HEIGHT as MASK_HEIGHT

MIDDLE = BASELINE - CAP_HEIGHT / 2  # row of a mask that halves the capitals
SMALLEST = 13  # height of capitals in a crop, pixels; longer lines are tilted less


def _sizes(widths, out_width, device):
    """Scale across, scale down, and tilt, each (N, 1, 1, 1); a tilted line is made to fit its crop."""
    n, wide = widths.shape[0], widths.view(-1, 1, 1, 1) + 6
    kind = torch.rand(n, 1, 1, 1, device=device)
    cap = torch.where(kind < 0.5, uniform(n, 23, 34, device), uniform(n, 15, 41, device))
    cap = torch.where(kind > 0.93, uniform(n, 40, 50, device), cap)  # cut close, or a little into the letters
    stretch = torch.exp(torch.where(chance(n, 0.4, device) > 0, uniform(n, -0.5, 0.47, device), normal(n, 0.12, device)))
    kind = torch.rand(n, 1, 1, 1, device=device)
    tilt = torch.where(kind < 0.6, normal(n, 0.03, device), uniform(n, -0.175, 0.175, device))
    tilt = torch.where(kind > 0.88, uniform(n, -0.27, 0.27, device), tilt)
    across = wide * stretch * SMALLEST / CAP_HEIGHT
    most = ((HEIGHT + 2 - SMALLEST) / across.clamp_min(20)).clamp_max(0.27)
    tilt = torch.maximum(torch.minimum(tilt, most), -most)
    scale = torch.minimum(cap, HEIGHT * uniform(n, 0.8, 1.08, device) * CAP_HEIGHT
                          / (wide * stretch * torch.sin(tilt.abs()) + CAP_HEIGHT)) / CAP_HEIGHT
    scale = torch.where(tilt.abs() < 0.035, cap / CAP_HEIGHT, scale)
    scale_x = torch.minimum(scale * stretch, out_width * 0.985 / wide)
    return scale_x, torch.minimum(scale, scale_x * 1.75), tilt


def placed(widths, out_width, device):
    """Columns and rows of the mask (N, 1, 48, W) that the crop's pixels show, and the scale down (N, 1, 1, 1)."""
    n = widths.shape[0]
    scale_x, scale_y, tilt = _sizes(widths, out_width, device)
    half = widths.view(-1, 1, 1, 1) * scale_x / 2
    room = out_width - 2 * half
    # mostly a line stands near the left, with the rest of the crop bare: as crops are filled up
    shift = torch.where(chance(n, 0.7, device) > 0, room * 0.4 * uniform(n, 0, 1, device) ** 2,
                        room * uniform(n, 0, 1, device)) - chance(n, 0.05, device) * 2
    free = (HEIGHT - scale_y * CAP_HEIGHT - 2 * half * torch.sin(tilt.abs())).clamp_min(2)
    middle = HEIGHT / 2 + uniform(n, -0.4, 0.4, device) * free
    shear = torch.where(chance(n, 0.8, device) > 0, normal(n, 0.08, device), uniform(n, -0.15, 0.4, device))
    arc = normal(n, 4, device) * chance(n, 0.3, device)
    arc = torch.maximum(torch.minimum(arc, free * 0.7), -free * 0.7)
    xs, ys = axes(HEIGHT, out_width, device)
    dx, dy = xs - (shift + half), ys - middle
    along = dx / half.clamp_min(20)
    dy = dy - arc * (along.clamp(-1.5, 1.5) ** 2 - 0.35)
    u = dx * torch.cos(tilt) + dy * torch.sin(tilt) + shear * dy
    v = (-dx * torch.sin(tilt) + dy * torch.cos(tilt)) * (1 + normal(n, 0.06, device) * along.clamp(-1, 1))
    elastic = uniform(n, 0, 1.4, device)
    u = u / scale_x + widths.view(-1, 1, 1, 1) / 2 + field(n, HEIGHT, out_width, 24, device) * elastic
    v = v / scale_y + MIDDLE + field(n, HEIGHT, out_width, 24, device) * elastic
    return u, v, scale_y


def sample(masks, u, v):
    grid = torch.stack([(2 * u[:, 0] + 1) / masks.shape[3] - 1, (2 * v[:, 0] + 1) / MASK_HEIGHT - 1], -1)
    return F.grid_sample(masks, grid, mode="bilinear", padding_mode="zeros", align_corners=False)


def sampled(masks, u, v, scale):
    """The masks as the crops show them; far smaller ones are averaged first."""
    soft = F.avg_pool2d(masks, 3, 1, 1)
    return sample(torch.where(scale < 0.65, soft, masks), u, v)


def neighbour(masks, u, v, above, nearest, device):
    """A line above or below the one that is read, of its own size, cut by the crop's edge more or less."""
    n = masks.shape[0]
    size = uniform(n, 0.4, 1.15, device)
    gap = (nearest + uniform(n, 0, 0.9, device) ** 1.5) * CAP_HEIGHT
    away = (CAP_HEIGHT + CAP_HEIGHT * size) / 2 + gap
    down = v - MIDDLE + away if above else v - MIDDLE - away
    return sample(masks, (u - uniform(n, -60, 60, device)) / size, down / size + MIDDLE)
