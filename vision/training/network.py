"""The line network: plain convolutions (what cv::dnn runs well), a CTC head, one column in four pixels."""

import torch
from torch import nn

import alphabet

HEIGHT = 48  # of a crop, pixels


def conv(before, after, kernel=3, stride=1, padding=1, dilation=1):
    return nn.Sequential(
        nn.Conv2d(before, after, kernel, stride, padding, dilation, bias=False), nn.BatchNorm2d(after), nn.ReLU())


class Residual(nn.Module):
    def __init__(self, channels, dilation=1):
        super().__init__()
        self.body = nn.Sequential(
            conv(channels, channels, padding=dilation, dilation=dilation),
            nn.Conv2d(channels, channels, 3, padding=dilation, dilation=dilation, bias=False), nn.BatchNorm2d(channels))

    def forward(self, x):
        return torch.relu(x + self.body(x))


class Context(nn.Module):
    """Looks along the line, further with each one."""

    def __init__(self, channels, dilation):
        super().__init__()
        self.body = nn.Sequential(
            nn.Conv2d(channels, channels, (1, 3), padding=(0, dilation), dilation=(1, dilation), bias=False),
            nn.BatchNorm2d(channels))

    def forward(self, x):
        return torch.relu(x + self.body(x))


class LineNetwork(nn.Module):
    """(N, 1, 48, W) grey of mean 0 and deviation 1 -> (N, CLASSES, 1, W/4) logits; W a multiple of 4."""

    def __init__(self):
        super().__init__()
        self.seen = nn.Sequential(
            conv(1, 32, stride=2), Residual(32),
            conv(32, 64, stride=2), Residual(64),
            conv(64, 128, stride=(2, 1)), Residual(128), Residual(128),
            conv(128, 192, stride=(2, 1)), Residual(192), Residual(192),
            conv(192, 384, kernel=(3, 1), padding=0))
        # late layers see one row of columns: parameters are cheap in time there
        self.context = nn.Sequential(*(Context(384, d) for d in (1, 2, 4, 8, 2, 1)))
        self.drop = nn.Dropout(0.1)
        self.head = nn.Conv2d(384, alphabet.CLASSES, 1)

    def forward(self, x):
        return self.head(self.drop(self.context(self.seen(x))))
