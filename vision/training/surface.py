"""The ground a stamp stands on, what else stands there, and how ink or a blow changes it."""

import math

import torch
import torch.nn.functional as F

from noise import axes, chance, field, normal, uniform

PICTURED = 0.35  # of the grounds are real pictures of cloth, metal, paper, wood


def _woven(n, height, width, device):
    xs, ys = axes(height, width, device)
    turn = normal(n, 0.25, device) + torch.randint(0, 2, (n, 1, 1, 1), device=device) * 0.785 * chance(n, 0.4, device)
    p = torch.exp(uniform(n, 0.8, 2.8, device))  # threads are 2 to 16 pixels apart
    q = p * torch.exp(normal(n, 0.3, device))
    a = xs * torch.cos(turn) + ys * torch.sin(turn) + field(n, height, width, 12, device) * p * 0.18
    b = -xs * torch.sin(turn) + ys * torch.cos(turn) + field(n, height, width, 12, device) * q * 0.18
    wave_a, wave_b = torch.sin(6.2832 * a / p), torch.sin(6.2832 * b / q)
    over = torch.sigmoid(6 * torch.sin(3.1416 * a / p) * torch.sin(3.1416 * b / q))  # which thread lies on top
    round_a, round_b = torch.sin(3.1416 * a / p).abs().sqrt(), torch.sin(3.1416 * b / q).abs().sqrt()
    basket = (over * round_a + (1 - over) * round_b - 0.75) * 3
    kind = torch.randint(0, 5, (n, 1, 1, 1), device=device)
    plain = torch.where(kind == 0, wave_a * wave_b, torch.where(kind == 1, torch.sin(6.2832 * (a / p + b / q)), basket))
    return torch.where(kind == 2, wave_a * 0.3 + wave_b * 0.7, plain)


def _pictured(n, height, width, textures, device):
    """Windows of real pictures, at any size and angle."""
    pick = torch.randint(0, textures.shape[0], (n,), device=device)
    side = textures.shape[2]
    xs, ys = axes(height, width, device)
    zoom, spin = torch.exp(uniform(n, -0.7, 1.0, device)), uniform(n, 0, 6.2832, device)
    ox, oy = uniform(n, 0, side, device), uniform(n, 0, side, device)
    gx, gy = xs - width / 2, ys - height / 2
    tx = ox + (gx * torch.cos(spin) + gy * torch.sin(spin)) * zoom
    ty = oy + (-gx * torch.sin(spin) + gy * torch.cos(spin)) * zoom
    grid = torch.stack([2 * tx[:, 0] / side - 1, 2 * ty[:, 0] / side - 1], -1)
    real = F.grid_sample(textures[pick], grid, padding_mode="reflection", align_corners=False)
    real = real - real.mean((2, 3), keepdim=True)
    return real / real.std((2, 3), keepdim=True).clamp_min(0.02)


def ground_of(n, height, width, textures, device):
    """Ground of mean about 0 and deviation 1, and its thread tops (1) and hollows (0)."""
    grain = field(n, height, width, 1, device) * 0.5 + field(n, height, width, 3, device) * 0.5
    brushed = field(n, height, width, 60, device, 1) + field(n, height, width, 20, device, 2) * 0.5
    weave = torch.where(chance(n, 0.15, device) > 0, brushed, _woven(n, height, width, device))
    ground = weave * uniform(n, 0, 1, device) + grain * uniform(n, 0.1, 0.8, device)
    if textures is not None:
        real = int(n * PICTURED)  # the order of a batch means nothing, so the last ones are the ones
        ground = torch.cat([ground[:n - real], _pictured(real, height, width, textures, device)])
    ground = ground / ground.std((2, 3), keepdim=True).clamp_min(0.05)
    return ground, torch.sigmoid(ground * 1.5)


def stroke(n, height, width, on, device):
    """Creases, scratches, rules, seams and frames: how much brighter or darker a line makes the ground."""
    xs, ys = axes(height, width, device)
    kind = torch.rand(n, 1, 1, 1, device=device)
    angle = torch.where(kind < 0.5, normal(n, 0.04, device), uniform(n, -math.pi / 2, math.pi / 2, device))
    angle = torch.where(kind > 0.85, math.pi / 2 + normal(n, 0.06, device), angle)
    edge = torch.where(chance(n, 0.5, device) > 0, uniform(n, -2, 10, device), uniform(n, height - 10, height + 2, device))
    y0 = torch.where(kind < 0.4, edge, uniform(n, 0, height, device))
    x0 = uniform(n, 0, width, device)
    across = -(xs - x0) * torch.sin(angle) + (ys - y0) * torch.cos(angle)
    along = (xs - x0) * torch.cos(angle) + (ys - y0) * torch.sin(angle)
    soft = torch.exp(uniform(n, -0.9, 1.6, device))
    profile = torch.exp(-0.5 * (across / soft) ** 2)
    period = uniform(n, 5, 22, device)
    dashes = torch.sigmoid(6 * torch.sin(6.2832 * along / period) + uniform(n, -2, 4, device))
    profile = profile * torch.where(chance(n, 0.35, device) > 0, dashes, torch.ones_like(dashes))
    step = torch.sigmoid(across / soft.clamp_max(1.2)) * uniform(n, 0.5, 1, device)  # the edge of a patch
    profile = torch.where((kind < 0.4) & (chance(n, 0.3, device) > 0) & ((edge < 8) | (edge > height - 8)),
                          torch.where(edge > height / 2, step, 1 - step), profile)
    amount = uniform(n, -0.6, 0.35, device) * (1 - 0.4 * (soft > 2).float())
    return profile * amount * (torch.rand(n, 1, 1, 1, device=device) < on).float()


def ring(n, height, width, on, device):
    """An eyelet or a hole, mostly beside the writing."""
    xs, ys = axes(height, width, device)
    x0, y0 = uniform(n, 0, width, device), uniform(n, -12, height + 12, device)
    radius, broad = uniform(n, 6, 22, device), uniform(n, 0.8, 4, device)
    r = torch.sqrt((xs - x0) ** 2 + (ys - y0) ** 2 + 1e-3)
    rim = torch.exp(-0.5 * ((r - radius) / broad) ** 2) * uniform(n, -0.6, 0.6, device)
    inside = torch.sigmoid((radius - r) / 0.8) * uniform(n, -0.7, 0.2, device) * chance(n, 0.5, device)
    return (rim + inside).clamp(-0.85, 1) * (torch.rand(n, 1, 1, 1, device=device) < on).float()


def _risen(ink, device):
    """How a blow or a raised letter catches the light, -1 to 1 at its edges."""
    n = ink.shape[0]
    press = torch.where(chance(n, 0.5, device) > 0, F.avg_pool2d(ink, 3, 1, 1),
                        F.avg_pool2d(F.avg_pool2d(ink, 3, 1, 1), 3, 1, 1))
    turn = uniform(n, 0, 6.2832, device)
    down = F.pad(press[:, :, 2:] - press[:, :, :-2], (0, 0, 1, 1))
    right = F.pad(press[:, :, :, 2:] - press[:, :, :, :-2], (1, 1))
    return down * torch.sin(turn) + right * torch.cos(turn)


def inked(ink, ground, tops, clean, bare, device):
    """The picture before the camera, levels 0 to 1; clean, bare: (N, 1, 1, 1), 1 for fresh print, for no line at all."""
    n, _, h, w = ink.shape
    swing = uniform(n, 0.005, 0.16, device) * (1 - clean) + uniform(n, 0.002, 0.03, device) * clean
    stain = torch.sigmoid(field(n, h, w, 30, device) * 3 - uniform(n, 2.5, 9, device)) * uniform(n, 0, 0.35, device)
    slope = field(n, h, w, 60, device) * uniform(n, 0, 0.08, device)
    things = (1 + stroke(n, h, w, 0.14 + 0.4 * bare, device)) * (1 + stroke(n, h, w, 0.08 + 0.3 * bare, device))
    things = things * (1 + ring(n, h, w, 0.03 + 0.25 * bare, device))
    light = uniform(n, 0.3, 0.9, device) * (1 - stain) * (1 + slope) * things
    contrast = torch.exp(uniform(n, -2.1, -0.25, device))
    contrast = torch.maximum(contrast, swing * uniform(n, 0.8, 3.2, device)).clamp_max(0.9) * (1 - clean)
    contrast = contrast + uniform(n, 0.35, 0.95, device) * clean
    hold = 1 - uniform(n, 0, 0.72, device) * (1 - clean) * (1 - tops)  # ink sits on the thread tops
    dark = (1 + ground * swing) * (1 - contrast * ink * hold)
    shade = 1 + _risen(ink, device) * contrast * uniform(n, 0.7, 1.8, device)
    shade = shade * (1 - ink * contrast * uniform(n, -0.3, 0.4, device) * chance(n, 0.5, device))
    relief = (1 + ground * swing * 0.7) * shade
    picture = (light * torch.where(chance(n, 0.09, device) > 0, relief, dark)).clamp(0, 1.2)
    turned = chance(n, 0.22, device)
    return picture * (1 - turned) + (1 - picture) * turned
