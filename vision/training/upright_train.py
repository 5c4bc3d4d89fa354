"""Trains the network that tells which way up a line stands, as train.py does the one that reads it.

torchrun --standalone --nproc_per_node=GPUS upright_train.py --faces DIR --seconds 120 --out DIR
"""

import os

import torch
import torch.nn.functional as F

from learning import exported
from train import run
from upright_network import UprightNetwork


@torch.no_grad()
def judge(network, sets):
    """Of held-out lines told right: of all, and of those that are told with a probability of 0.9 or more, and their share."""
    network.eval()
    told = {}
    for name, batches in sets.items():
        right = sure = sure_right = lines = 0
        for crops, upright, written in batches:
            with torch.autocast("cuda", torch.bfloat16):
                said = network(crops).float().sum((1, 2, 3))
            hit = ((said > 0) == (upright > 0.5)) & (written > 0)
            surely = (torch.sigmoid(said.abs()) >= 0.9) & (written > 0)
            lines += written.sum().item()
            right += hit.sum().item()
            sure += surely.sum().item()
            sure_right += (surely & hit).sum().item()
        told[name] = "right %.2f %%; sure %.1f %%, of these right %.2f %%" % (
            100 * right / lines, 100 * sure / lines, 100 * sure_right / max(1, sure))
    network.train()
    return told


class Upright:
    """Half of the lines are turned over; windows without a line teach nothing."""

    network = UprightNetwork
    judge = staticmethod(judge)

    @staticmethod
    def prepared(batch):
        crops, _, lengths = batch
        upright = (torch.rand(crops.shape[0], device=crops.device) < 0.5).float()
        turned = torch.where(upright.view(-1, 1, 1, 1) > 0, crops, crops.flip(2, 3))
        return turned, upright, (lengths > 0).float()

    @staticmethod
    def loss_of(answer, upright, written):
        said = answer.float().sum((1, 2, 3))
        each = F.binary_cross_entropy_with_logits(said, upright, reduction="none")
        return (each * written).sum() / written.sum().clamp_min(1)

    @staticmethod
    def export(network, folder):
        exported(network, UprightNetwork(), (1, 1, 48, 256), os.path.join(folder, "upright.onnx"), "said",
                 {"crops": {0: "n", 3: "w"}, "said": {0: "n", 3: "t"}})


if __name__ == "__main__":
    run(Upright)
