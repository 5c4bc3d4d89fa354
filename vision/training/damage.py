"""Turns clean masks into crops of worn stamps, on the GPU, afresh for every step.

Crops are (N, 1, 48, W) with mean 0 and deviation 1; targets are class indices padded with 0. Letters
that were wiped away are labelled as traces or as lost, so that the network learns to say so.
"""

import torch
import torch.nn.functional as F

import alphabet
from network import HEIGHT
from typeset import BASELINE, CAP_HEIGHT, HEIGHT as MASK_HEIGHT

KEPT, GONE = 0.55, 0.06  # shares of a letter's ink: above the first it can be told, below the second nothing stands


def _uniform(n, low, high, device):
    return torch.rand(n, 1, 1, 1, device=device) * (high - low) + low


def _chance(n, p, device):
    return (torch.rand(n, 1, 1, 1, device=device) < p).float()


def _field(n, height, width, cell, device):
    """Smooth noise of mean 0 and deviation about 1, one swing in about `cell` pixels."""
    small = torch.randn(n, 1, max(2, height // cell + 2), max(2, width // cell + 2), device=device)
    field = F.interpolate(small, (height, width), mode="bilinear", align_corners=False)
    return field / field.std((2, 3), keepdim=True).clamp_min(1e-3)


def _wiped(masks, boxes, texts):
    """What is left of the ink (N, 1, H, W), and the targets that go with it."""
    n, _, height, width = masks.shape
    device = masks.device
    length = (texts > 0).sum(1)
    x = torch.arange(width, device=device, dtype=torch.float32).view(1, 1, 1, width)
    y = torch.arange(height, device=device, dtype=torch.float32).view(1, 1, height, 1)
    left = torch.ones(n, 1, height, width, device=device)
    wipe = _chance(n, 0.3, device)
    for event in range(3):
        first = (torch.rand(n, device=device) * length).long()
        run = 1 + (torch.rand(n, device=device) ** 3 * 3).long()
        last = torch.minimum(first + run - 1, length - 1)
        begin = boxes[torch.arange(n), first, 0].view(n, 1, 1, 1)
        end = boxes[torch.arange(n), last, 1].view(n, 1, 1, 1)
        top = torch.full_like(begin, -9.0)
        bottom = torch.full_like(begin, height + 9.0)
        share = _uniform(n, 0.08, 0.45, device)  # what stays of a half-wiped letter
        way = torch.randint(0, 5, (n, 1, 1, 1), device=device)
        cap_top = BASELINE - CAP_HEIGHT
        top = torch.where(way == 1, cap_top + share * CAP_HEIGHT, top)
        bottom = torch.where(way == 2, BASELINE - share * CAP_HEIGHT, bottom)
        begin, end = (torch.where(way == 3, begin + share * (end - begin), begin),
                      torch.where(way == 4, end - share * (end - begin), end))
        soft = _uniform(n, 0.3, 2.0, device)
        inside = (torch.sigmoid((x - begin) / soft) * torch.sigmoid((end - x) / soft)
                  * torch.sigmoid((y - top) / soft) * torch.sigmoid((bottom - y) / soft))
        on = wipe * (_chance(n, 1.0 if event == 0 else 0.35, device))
        left = left * (1 - on * inside * _uniform(n, 0.93, 1.0, device))
    ink = masks.sum((1, 2)).cumsum(1)
    rest = (masks * left).sum((1, 2)).cumsum(1)
    at = lambda sums, place: sums.gather(1, place.round().long().clamp(0, width - 1))
    had = at(ink, boxes[..., 1]) - at(ink, boxes[..., 0])
    has = at(rest, boxes[..., 1]) - at(rest, boxes[..., 0])
    share = torch.where(had > 1, has / had.clamp_min(1), torch.ones_like(had))
    return left, _targets(texts, share)


def _targets(texts, share):
    there = texts > 0
    space = texts == 1
    lost = there & ~space & (share < GONE)
    traces = there & ~space & (share >= GONE) & (share < KEPT)
    labels = torch.where(traces, alphabet.TRACES, torch.where(lost, alphabet.LOST, texts))
    standing = there & ~space & ~lost
    before = standing.long().cumsum(1) > 0
    after = standing.flip(1).long().cumsum(1).flip(1) > 0
    keep = there & before & after  # what was lost at an end leaves nothing that tells of it
    # a space beside a lost letter cannot be told from it
    beside = torch.zeros_like(lost)
    beside[:, 1:] |= lost[:, :-1]
    beside[:, :-1] |= lost[:, 1:]
    keep &= ~(space & beside)
    order = torch.argsort((~keep).long(), dim=1, stable=True)
    return torch.where(keep, labels, 0).gather(1, order), keep.sum(1)


def _placed(n, widths, out_width, device):
    """Sampling grid from crop to mask, and pixels of the crop a mask pixel."""
    cap = torch.rand(n, device=device) * 24 + 18  # height of capitals in the crop
    cap = torch.where(torch.rand(n, device=device) < 0.5, torch.rand(n, device=device) * 10 + 24, cap)
    stretch = torch.exp(torch.randn(n, device=device) * 0.12)
    scale_y = cap / CAP_HEIGHT
    scale_x = torch.minimum(scale_y * stretch, out_width * 0.98 / (widths + 6))
    scale_y = torch.minimum(scale_y, scale_x * 1.6)
    room = out_width - widths * scale_x
    near = torch.rand(n, device=device)
    # mostly a line stands near the left, with the rest of the crop bare: as crops are filled up
    shift = torch.where(near < 0.7, room * 0.5 * torch.rand(n, device=device) ** 2 + 1, room * torch.rand(n, device=device))
    free = HEIGHT - scale_y * CAP_HEIGHT
    middle = HEIGHT / 2 + (torch.rand(n, device=device) - 0.5) * free.clamp_min(0) * 0.6
    angle = torch.randn(n, device=device) * 0.035
    angle = torch.where(torch.rand(n, device=device) < 0.15, (torch.rand(n, device=device) - 0.5) * 0.34, angle)
    # long lines leave the crop when they tilt
    most = (HEIGHT * 0.55 / (widths * scale_x).clamp_min(30)).clamp_max(0.18)
    angle = torch.maximum(torch.minimum(angle, most), -most)
    shear = torch.randn(n, device=device) * 0.08
    arc = torch.randn(n, device=device) * 0.12 * (torch.rand(n, device=device) < 0.3)
    view = lambda v: v.view(n, 1, 1)
    xs = torch.arange(out_width, device=device, dtype=torch.float32).view(1, 1, -1)
    ys = torch.arange(HEIGHT, device=device, dtype=torch.float32).view(1, -1, 1)
    centre = view(shift + widths * scale_x / 2)
    dx, dy = xs - centre, ys - view(middle)
    along = dx / view((widths * scale_x / 2).clamp_min(20))
    dy = dy - view(arc) * HEIGHT * along ** 2 * 0.5
    u = dx * torch.cos(view(angle)) + dy * torch.sin(view(angle)) + view(shear) * dy
    v = -dx * torch.sin(view(angle)) + dy * torch.cos(view(angle))
    u = u / view(scale_x) + view(widths / 2)
    v = v / view(scale_y) + BASELINE - CAP_HEIGHT / 2
    elastic = _uniform(n, 0, 1.4, device).view(n, 1, 1)
    u = u + _field(n, HEIGHT, out_width, 24, device)[:, 0] * elastic
    v = v + _field(n, HEIGHT, out_width, 24, device)[:, 0] * elastic
    return u, v, scale_y


def _sample(masks, u, v):
    width = masks.shape[3]
    grid = torch.stack([(2 * u + 1) / width - 1, (2 * v + 1) / MASK_HEIGHT - 1], -1)
    return F.grid_sample(masks, grid, mode="bilinear", padding_mode="zeros", align_corners=False)


def _smeared(ink, n, device):
    """A blur with a direction of its own for every picture."""
    size = 9
    axis = torch.arange(size, device=device, dtype=torch.float32) - size // 2
    ky, kx = torch.meshgrid(axis, axis, indexing="ij")
    turn = torch.rand(n, 1, 1, device=device) * 3.1416
    long = torch.rand(n, 1, 1, device=device) ** 2 * 2.2 + 0.25
    short = torch.minimum(torch.rand(n, 1, 1, device=device) * 0.7 + 0.2, long)
    a = kx * torch.cos(turn) + ky * torch.sin(turn)
    b = -kx * torch.sin(turn) + ky * torch.cos(turn)
    kernel = torch.exp(-0.5 * ((a / long) ** 2 + (b / short) ** 2))
    kernel = (kernel / kernel.sum((1, 2), keepdim=True)).unsqueeze(1)
    return F.conv2d(ink.transpose(0, 1), kernel, padding=size // 2, groups=n).transpose(0, 1)


def _worn(ink, n, device):
    """Stroke weight, outlines, double impressions, fading, speckle."""
    thick, thin = F.max_pool2d(ink, 3, 1, 1), -F.max_pool2d(-ink, 3, 1, 1)
    weight = _uniform(n, -1, 1, device)
    grown = torch.where(weight > 0, ink + (thick - ink) * weight ** 2, ink + (ink - thin) * -(weight ** 2) * 0.8)
    outline = _chance(n, 0.04, device)
    grown = grown * (1 - outline) + (F.max_pool2d(ink, 5, 1, 2) - thin).clamp(0, 1) * outline
    double = _chance(n, 0.08, device) * _uniform(n, 0.2, 0.7, device)
    shifted = F.pad(grown, (3, 0, 2, 0))[:, :, :grown.shape[2], :grown.shape[3]]
    grown = torch.maximum(grown, shifted * double)
    h, w = grown.shape[2:]
    depth = _uniform(n, 0, 1, device) * _chance(n, 0.7, device)
    fade = 1 - depth * torch.sigmoid(_field(n, h, w, 40, device) * 1.5 - 0.3) * 0.85
    speck = torch.sigmoid((_field(n, h, w, 2, device) - _uniform(n, 0.4, 3.5, device)) * 4)
    blot = torch.sigmoid((_field(n, h, w, 7, device) - _uniform(n, 0.8, 4, device)) * 4)
    return (grown * fade * (1 - speck * _chance(n, 0.5, device)) * (1 - blot * 0.8 * _chance(n, 0.4, device))).clamp(0, 1)


def _cloth(n, width, textures, device):
    """Ground of mean about 0 and its thread tops (1) and hollows (0)."""
    xs = torch.arange(width, device=device, dtype=torch.float32).view(1, 1, 1, -1)
    ys = torch.arange(HEIGHT, device=device, dtype=torch.float32).view(1, 1, -1, 1)
    turn = torch.randn(n, 1, 1, 1, device=device) * 0.25
    turn = turn + torch.randint(0, 2, (n, 1, 1, 1), device=device) * 0.785 * _chance(n, 0.4, device)
    p = torch.exp(_uniform(n, 0.8, 2.5, device))  # threads are 2 to 12 pixels apart
    q = p * torch.exp(torch.randn(n, 1, 1, 1, device=device) * 0.3)
    a = xs * torch.cos(turn) + ys * torch.sin(turn) + _field(n, HEIGHT, width, 12, device) * p * 0.18
    b = -xs * torch.sin(turn) + ys * torch.cos(turn) + _field(n, HEIGHT, width, 12, device) * q * 0.18
    wave_a, wave_b = torch.sin(6.2832 * a / p), torch.sin(6.2832 * b / q)
    kind = torch.randint(0, 3, (n, 1, 1, 1), device=device)
    weave = torch.where(kind == 0, wave_a * wave_b, torch.where(kind == 1, torch.sin(6.2832 * (a / p + b / q)), wave_a * 0.3 + wave_b * 0.7))
    grain = _field(n, HEIGHT, width, 1, device) * 0.5 + _field(n, HEIGHT, width, 3, device) * 0.5
    ground = weave * _uniform(n, 0, 1, device) + grain * _uniform(n, 0.1, 0.8, device)
    if textures is not None:
        pick = torch.randint(0, textures.shape[0], (n,), device=device)
        side = textures.shape[2]
        zoom = torch.exp(_uniform(n, -0.7, 1.0, device)).view(n, 1, 1)
        spin = (torch.rand(n, 1, 1, device=device) * 6.2832)
        ox, oy = torch.rand(n, 1, 1, device=device) * side, torch.rand(n, 1, 1, device=device) * side
        gx, gy = xs[:, 0] - width / 2, ys[:, 0] - HEIGHT / 2
        tx = (ox + (gx * torch.cos(spin) + gy * torch.sin(spin)) * zoom)
        ty = (oy + (-gx * torch.sin(spin) + gy * torch.cos(spin)) * zoom)
        grid = torch.stack([2 * tx / side - 1, 2 * ty / side - 1], -1)
        real = F.grid_sample(textures[pick], grid, padding_mode="reflection", align_corners=False)
        real = (real - real.mean((2, 3), keepdim=True)) / real.std((2, 3), keepdim=True).clamp_min(0.02)
        ground = torch.where(_chance(n, 0.35, device) > 0, real, ground)
    ground = ground / ground.std((2, 3), keepdim=True).clamp_min(0.05)
    return ground, torch.sigmoid(ground * 1.5)


def _inked(ink, ground, tops, n, device):
    """The picture before the camera, levels 0 to 1."""
    h, w = ink.shape[2:]
    clean = _chance(n, 0.3, device)
    swing = _uniform(n, 0.005, 0.13, device) * (1 - clean) + _uniform(n, 0.002, 0.03, device) * clean
    level = _uniform(n, 0.35, 0.9, device)
    stain = torch.sigmoid(_field(n, h, w, 30, device) * 3 - _uniform(n, 2, 9, device)) * _uniform(n, 0, 0.5, device)
    slope = _field(n, h, w, 60, device) * _uniform(n, 0, 0.10, device)
    ground = level * (1 + ground * swing) * (1 - stain) * (1 + slope)
    contrast = torch.exp(_uniform(n, -2.2, -0.25, device))
    contrast = torch.maximum(contrast, swing * _uniform(n, 0.7, 3, device)).clamp_max(0.9) * (1 - clean) + _uniform(n, 0.35, 0.95, device) * clean
    hold = 1 - _uniform(n, 0, 0.8, device) * (1 - clean) * (1 - tops)  # ink sits on the thread tops
    dark = ground * (1 - contrast * ink * hold)
    press = F.avg_pool2d(ink, 3, 1, 1)
    rise = (press[:, :, 2:, 2:] - press[:, :, :-2, :-2])
    relief = ground * (1 + F.pad(rise, (1, 1, 1, 1)) * contrast * 1.5)
    picture = torch.where(_chance(n, 0.06, device) > 0, relief, dark)
    turned = _chance(n, 0.2, device)
    return picture * (1 - turned) + (1 - picture) * turned


def _photographed(picture, n, device):
    """Low resolution, blur, sharpening, gamma, glare, noise."""
    h, w = picture.shape[2:]
    factor = float(torch.rand(()) * 0.6 + 0.4)
    coarse = F.interpolate(F.interpolate(picture, scale_factor=factor, mode="area"), (h, w), mode="bilinear")
    picture = torch.where(_chance(n, 0.3, device) > 0, coarse, picture)
    blurred = _smeared(picture, n, device)
    amount = _uniform(n, -0.8, 1.0, device) * _chance(n, 0.6, device)  # below 0: sharpened
    picture = picture + (blurred - picture) * amount
    picture = picture.clamp(0.002, 1.5) ** torch.exp(torch.randn(n, 1, 1, 1, device=device) * 0.3)
    glare = torch.sigmoid(_field(n, h, w, 50, device) * 3 - 6) * _chance(n, 0.08, device)
    picture = picture * (1 - glare) + glare
    noise = _uniform(n, 0, 1, device) ** 2 * 0.035
    block = F.interpolate(torch.randn(n, 1, h // 8, w // 8, device=device), (h, w), mode="nearest")
    return picture + noise * torch.randn_like(picture) + block * _uniform(n, 0, 0.012, device)


def crops(masks, boxes, texts, widths, others, out_width, textures=None):
    """One batch: crops, targets and their lengths.

    masks (N, 64, M) uint8, boxes (N, 30, 2), texts (N, 30), widths (N) as typeset.chunk makes them;
    others: masks of lines that cut in from above or below; textures (T, 1, S, S) float or None.
    """
    n, device = masks.shape[0], masks.device
    masks = masks.float().unsqueeze(1) / 255
    left, (targets, lengths) = _wiped(masks, boxes, texts)
    u, v, _ = _placed(n, widths, out_width, device)
    ink = _sample(masks * left, u, v)
    away = torch.where(torch.rand(n, 1, 1, device=device) < 0.5, 1.0, -1.0) * (torch.rand(n, 1, 1, device=device) * 30 + 46)
    beside = _sample(others.float().unsqueeze(1) / 255, u, v + away) * _chance(n, 0.4, device)
    bare = _chance(n, 0.04, device)
    ink = torch.maximum(ink * (1 - bare), beside)
    lengths = torch.where(bare.view(n) > 0, 0, lengths)
    targets = torch.where(bare.view(n, 1) > 0, 0, targets)
    ink = _worn(ink, n, device)
    ink = torch.where(_chance(n, 0.5, device) > 0, _smeared(ink, n, device), ink)
    ground, tops = _cloth(n, out_width, textures, device)
    picture = _photographed(_inked(ink, ground, tops, n, device), n, device)
    picture = picture - picture.mean((2, 3), keepdim=True)
    return picture / picture.std((2, 3), keepdim=True).clamp_min(1e-3), targets, lengths
