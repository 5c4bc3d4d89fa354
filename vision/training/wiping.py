"""Wipes letters away and labels what is left of them as traces or as lost, so that the network learns to say so."""

import torch

import alphabet
from noise import axes, chance, uniform
from typeset import BASELINE, CAP_HEIGHT

KEPT, GONE = 0.55, 0.06  # shares of a letter's ink: above the first it can be told, below the second nothing stands
SMALL = alphabet.encode(".,'-:")  # of these nothing tells, once they are wiped
WIPED = 0.45  # of the lines lose something
WHOLE = 0.55  # of the rubs leave nothing of their letters


def _window(boxes, length, height, device):
    """Where one rub took the ink of one to three letters, 0 to 1: whole, or but for a part of them."""
    n = boxes.shape[0]
    first = (torch.rand(n, device=device) * length).long()
    last = torch.minimum(first + (torch.rand(n, device=device) ** 3 * 3).long(), length - 1)
    each = torch.arange(n, device=device)
    begin, end = boxes[each, first, 0].view(n, 1, 1, 1), boxes[each, last, 1].view(n, 1, 1, 1)
    share = uniform(n, 0.08, 0.45, device)  # what stays of a half-wiped letter
    way = torch.randint(1, 5, (n, 1, 1, 1), device=device) * (1 - chance(n, WHOLE, device).long())
    further = uniform(n, -1, 3, device) * (way == 0)  # a rub does not end where the letter does
    begin, end = begin - further, end + further
    top = torch.where(way == 1, BASELINE - CAP_HEIGHT + share * CAP_HEIGHT, torch.full_like(begin, -9.0))
    bottom = torch.where(way == 2, BASELINE - share * CAP_HEIGHT, torch.full_like(begin, height + 9.0))
    left = torch.where(way == 3, begin + share * (end - begin), begin)
    right = torch.where(way == 4, end - share * (end - begin), end)
    return left, right, top, bottom


def wiped(masks, boxes, texts):
    """What is left of the ink (N, 1, H, W), and the targets that go with it and their lengths."""
    n, _, height, width = masks.shape
    device = masks.device
    length = (texts > 0).sum(1)
    x, y = axes(height, width, device)
    left = torch.ones(n, 1, height, width, device=device)
    any_rub = chance(n, WIPED, device)
    for rub in range(3):
        begin, end, top, bottom = _window(boxes, length, height, device)
        soft = uniform(n, 0.3, 2.0, device)
        inside = (torch.sigmoid((x - begin) / soft) * torch.sigmoid((end - x) / soft)
                  * torch.sigmoid((y - top) / soft) * torch.sigmoid((bottom - y) / soft))
        on = any_rub * chance(n, 1.0 if rub == 0 else 0.35, device)
        left = left * (1 - on * inside * uniform(n, 0.93, 1.0, device))
    had, has = _ink_of(masks, boxes), _ink_of(masks * left, boxes)
    share = torch.where(had > 1, has / had.clamp_min(1), torch.ones_like(had))
    return left, *_targets(texts, share)


def _ink_of(masks, boxes):
    """Ink in each letter's box, (N, letters)."""
    sums = masks.sum((1, 2)).cumsum(1)
    at = boxes.round().long().clamp(0, masks.shape[3] - 1)
    return sums.gather(1, at[..., 1]) - sums.gather(1, at[..., 0])


def _targets(texts, share):
    there = texts > 0
    space = texts == 1
    lost = there & ~space & (share < GONE)
    traces = there & ~space & (share >= GONE) & (share < KEPT)
    labels = texts.masked_fill(lost, alphabet.LOST).masked_fill(traces, alphabet.TRACES)
    standing = (there & ~space & ~lost).long()
    before = standing.cumsum(1) > 0
    after = standing.flip(1).cumsum(1).flip(1) > 0
    small = (lost | traces) & sum((texts == c).long() for c in SMALL).bool()
    keep = there & before & after & ~small  # what was lost at an end leaves nothing that tells of it
    # a space beside a lost letter cannot be told from it
    empty = torch.zeros_like(lost[:, :1])
    beside = torch.cat([empty, lost[:, :-1]], 1) | torch.cat([lost[:, 1:], empty], 1)
    keep = keep & ~(space & beside)
    order = torch.argsort((~keep).long(), dim=1, stable=True)
    return labels.masked_fill(~keep, 0).gather(1, order), keep.sum(1)
