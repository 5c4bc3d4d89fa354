"""The finder network: where lines of writing run in a picture, how tall they are, which way they read."""

import torch
import torch.nn.functional as F
from torch import nn

from network import Residual, conv

STRIDE = 4  # input pixels an answered cell


class FinderNetwork(nn.Module):
    """(N, 1, H, W), levelled as finder_scene.levelled does, sides multiples of 32 -> (N, 4, H/4, W/4).

    Channels: logit of a line's core; log2 of its capitals' height over 16 pixels; cosine and sine of twice the angle at
    which it runs (clockwise from the right). Which of its two ways it reads is told by another network: this one, asked
    for it too, had not begun to learn it after 480 seconds.
    """

    def __init__(self):
        super().__init__()
        self.fine = nn.Sequential(conv(1, 16, stride=2), conv(16, 24, stride=2), Residual(24))
        self.middle = nn.Sequential(conv(24, 48, stride=2), Residual(48), Residual(48))
        self.coarse = nn.Sequential(conv(48, 96, stride=2), Residual(96), Residual(96, 2), Residual(96, 4))
        self.from_coarse = nn.Conv2d(96, 48, 1)
        self.mixed = conv(48, 24)
        self.last = conv(24, 24)
        self.head = nn.Conv2d(24, 4, 1)

    def forward(self, x):
        fine = self.fine(x)
        middle = self.middle(fine)
        coarse = self.from_coarse(self.coarse(middle))
        back = self.mixed(torch.relu(middle + F.interpolate(coarse, scale_factor=2, mode="nearest")))
        return self.head(self.last(torch.relu(fine + F.interpolate(back, scale_factor=2, mode="nearest"))))
