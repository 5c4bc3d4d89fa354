"""What a camera does to the picture: few pixels, blur, sharpening, gamma, glare, noise, JPEG."""

import functools
import math

import torch
import torch.nn.functional as F

from noise import chance, field, normal, uniform
from typeset import CAP_HEIGHT

LEAST_LETTER = 8.5  # pixels that capitals keep where the picture had few
JPEG_LUMINANCE = [
    16, 11, 10, 16, 24, 40, 51, 61, 12, 12, 14, 19, 26, 58, 60, 55, 14, 13, 16, 24, 40, 57, 69, 56,
    14, 17, 22, 29, 51, 87, 80, 62, 18, 22, 37, 56, 68, 109, 103, 77, 24, 35, 55, 64, 81, 104, 113, 92,
    49, 64, 78, 87, 103, 121, 120, 101, 72, 92, 95, 98, 112, 100, 103, 99]  # of the standard, quality 50


def smeared(pictures, device, most=2.2):
    """A blur with a direction of its own for every picture."""
    n, size = pictures.shape[0], 9
    axis = torch.arange(size, device=device, dtype=torch.float32) - size // 2
    kx, ky = axis.view(1, 1, -1), axis.view(1, -1, 1)
    turn = torch.rand(n, 1, 1, device=device) * math.pi
    long = torch.rand(n, 1, 1, device=device) ** 2 * most + 0.25
    short = torch.minimum(torch.rand(n, 1, 1, device=device) * 0.7 + 0.2, long)
    a = kx * torch.cos(turn) + ky * torch.sin(turn)
    b = -kx * torch.sin(turn) + ky * torch.cos(turn)
    kernel = torch.exp(-0.5 * ((a / long) ** 2 + (b / short) ** 2))
    kernel = (kernel / kernel.sum((1, 2), keepdim=True)).unsqueeze(1)
    edged = F.pad(pictures, [size // 2] * 4, mode="replicate")
    return F.conv2d(edged.transpose(0, 1), kernel, groups=n).transpose(0, 1)


def _coarse(picture, scale, device):
    """Some of the pictures brought up from fewer pixels, their letters still tall enough."""
    n, _, h, w = picture.shape
    on, taken = chance(n, 0.4, device), torch.zeros(n, 1, 1, 1, device=device)
    letters = scale * CAP_HEIGHT
    for factor in (0.25, 0.35, 0.5, 0.7):
        small = F.interpolate(picture, size=(int(h * factor), int(w * factor)), mode="area")
        if factor < 0.4:
            back = F.interpolate(small, (h, w), mode="bilinear", align_corners=False)
        else:
            back = F.interpolate(small, (h, w), mode="bicubic", align_corners=False)
        fits = (letters * factor > LEAST_LETTER).float() * chance(n, 0.4, device) * on * (1 - taken)
        picture = picture + (back - picture) * fits
        taken = torch.maximum(taken, fits)
    return picture


@functools.lru_cache
def _jpeg_table(device):
    return torch.tensor(JPEG_LUMINANCE, device=device, dtype=torch.float32).view(1, 1, 1, 8, 8) / 255


def _jpeg(picture, device):
    """Rounded as JPEG rounds 8x8 blocks, the grid anywhere."""
    n, _, h, w = picture.shape
    i = torch.arange(8, device=device, dtype=torch.float32)
    cosines = torch.cos((2 * i.view(1, 8) + 1) * i.view(8, 1) * math.pi / 16) / 2
    cosines = torch.cat([cosines[:1] / math.sqrt(2), cosines[1:]])
    step = _jpeg_table(device) * torch.exp(uniform(n, -2.2, 0.3, device)).unsqueeze(-1)
    blocks = picture.view(n, h // 8, 8, w // 8, 8).transpose(2, 3)
    told = cosines @ blocks @ cosines.T
    told = torch.round(told / step) * step
    return (cosines.T @ told @ cosines).transpose(2, 3).reshape(n, 1, h, w)


def photographed(picture, scale, device, blur=2.6):
    """The picture as a file of a camera has it; scale: crop pixels a mask pixel, (N, 1, 1, 1); blur: most, in pixels."""
    n, _, h, w = picture.shape
    picture = _coarse(picture, scale, device)
    amount = uniform(n, -0.9, 1.0, device) * chance(n, 0.6, device)  # below 0: sharpened
    picture = picture + (smeared(picture, device, blur) - picture) * amount
    picture = picture.clamp(0.002, 1.5) ** torch.exp(normal(n, 0.3, device))
    glare = torch.sigmoid(field(n, h, w, 50, device) * 3 - uniform(n, 4, 8, device))
    glare = glare * chance(n, 0.1, device) * uniform(n, 0.3, 1, device)
    picture = picture * (1 - glare) + glare
    noise = uniform(n, 0, 1, device) ** 3 * 0.03
    picture = picture + noise * torch.randn_like(picture)
    rounded = n // 4  # the order of a batch means nothing, so the first ones are the ones
    return torch.cat([_jpeg(picture[:rounded], device), picture[rounded:]])
