"""The network that tells whether a line stands upright or on its head, from the crop that the line network reads."""

from torch import nn

from network import Context, Residual, conv


class UprightNetwork(nn.Module):
    """(N, 1, 48, W) grey of mean 0 and deviation 1 -> (N, 1, 1, W/8): what each column says for upright.

    The sum over the columns is the logit. W a multiple of 8.
    """

    def __init__(self):
        super().__init__()
        self.seen = nn.Sequential(
            conv(1, 16, stride=2), conv(16, 32, stride=2), Residual(32), conv(32, 64, stride=2), Residual(64),
            conv(64, 96, kernel=(6, 1), padding=0), *(Context(96, d) for d in (1, 2, 4)))
        self.head = nn.Conv2d(96, 1, 1)

    def forward(self, x):
        return self.head(self.seen(x))
