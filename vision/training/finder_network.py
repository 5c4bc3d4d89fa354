"""The finder network: where lines of writing run in a picture, how tall they are, which way they read."""

import torch
import torch.nn.functional as F
from torch import nn

STRIDE = 4  # input pixels an answered cell
LARGEST = 32  # sides of an input are multiples of it


def _conv(before, after, kernel=3, stride=1):
    return nn.Sequential(nn.Conv2d(before, after, kernel, stride, kernel // 2, bias=False), nn.BatchNorm2d(after), nn.ReLU())


class _Residual(nn.Module):
    def __init__(self, channels, dilation=1):
        super().__init__()
        wide = dict(padding=dilation, dilation=dilation, bias=False)
        self.body = nn.Sequential(nn.Conv2d(channels, channels, 3, **wide), nn.BatchNorm2d(channels), nn.ReLU(),
                                  nn.Conv2d(channels, channels, 3, **wide), nn.BatchNorm2d(channels))

    def forward(self, x):
        return torch.relu(x + self.body(x))


class FinderNetwork(nn.Module):
    """(N, 1, H, W), levelled as finder_scene.levelled does, sides multiples of 32 -> (N, 4, H/4, W/4).

    Channels: logit of a line's core; log2 of its capitals' height over 16 pixels; cosine and sine of the direction
    in which it reads (to the right 0, clockwise).
    """

    def __init__(self):
        super().__init__()
        self.fine = nn.Sequential(_conv(1, 16, stride=2), _conv(16, 24, stride=2), _Residual(24))
        self.middle = nn.Sequential(_conv(24, 48, stride=2), _Residual(48), _Residual(48))
        self.coarse = nn.Sequential(_conv(48, 96, stride=2), _Residual(96), _Residual(96, 2), _Residual(96, 4))
        self.from_coarse = nn.Conv2d(96, 48, 1)
        self.mixed = _conv(48, 24)
        self.last = _conv(24, 24)
        self.head = nn.Conv2d(24, 4, 1)

    def forward(self, x):
        fine = self.fine(x)
        middle = self.middle(fine)
        coarse = self.from_coarse(self.coarse(middle))
        back = self.mixed(torch.relu(middle + F.interpolate(coarse, scale_factor=2, mode="nearest")))
        return self.head(self.last(torch.relu(fine + F.interpolate(back, scale_factor=2, mode="nearest"))))
