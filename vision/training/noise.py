"""Chance for a batch of pictures, each with its own."""

import torch
import torch.nn.functional as F


def uniform(n, low, high, device):
    return torch.rand(n, 1, 1, 1, device=device) * (high - low) + low


def normal(n, deviation, device):
    return torch.randn(n, 1, 1, 1, device=device) * deviation


def chance(n, p, device):
    return (torch.rand(n, 1, 1, 1, device=device) < p).float()


def field(n, height, width, cell, device, cell_y=None):
    """Smooth noise of mean 0 and deviation about 1, one swing in about `cell` pixels."""
    small = torch.randn(n, 1, max(2, height // (cell_y or cell) + 2), max(2, width // cell + 2), device=device)
    spread = F.interpolate(small, (height, width), mode="bilinear", align_corners=False)
    return spread / spread.std((2, 3), keepdim=True).clamp_min(1e-3)


def axes(height, width, device):
    """Columns (1, 1, 1, W) and rows (1, 1, H, 1)."""
    xs = torch.arange(width, device=device, dtype=torch.float32).view(1, 1, 1, -1)
    ys = torch.arange(height, device=device, dtype=torch.float32).view(1, 1, -1, 1)
    return xs, ys
