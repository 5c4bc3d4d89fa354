"""Turns an exported network back into one that can learn on."""

import numpy as np
import torch
from onnx import numpy_helper
from torch import nn

import pack

USUAL_WEIGHT = 0.1  # root mean square of a kernel; its normalisation makes up for the rest


def _kernels(path):
    """(weights, bias) of every convolution of the file, in the order in which they are used."""
    graph = pack.loaded(path).graph
    values = {tensor.name: numpy_helper.to_array(tensor) for tensor in graph.initializer}
    return [tuple(torch.from_numpy(np.array(values[name])) for name in node.input[1:3])
            for node in graph.node if node.op_type == "Conv"]


def _set_apart(conv, norm, weights, bias):
    """Gives the folded kernel to `conv` and what was folded into it to `norm`, once it sees its input."""
    size = weights.pow(2).mean((1, 2, 3)).sqrt().clamp_min(1e-6) / USUAL_WEIGHT
    conv.weight.copy_((weights / size.view(-1, 1, 1, 1)))

    def fit(_, inputs):
        mean, var = inputs[0].mean((0, 2, 3)), inputs[0].var((0, 2, 3), unbiased=False)
        norm.running_mean.copy_(mean), norm.running_var.copy_(var)
        scale = size.to(mean.device)
        norm.weight.copy_(scale * (var + norm.eps).sqrt())
        norm.bias.copy_(bias.to(mean.device) + scale * mean)

    return norm.register_forward_pre_hook(fit)


@torch.no_grad()
def unfold(path, network, crops):
    """Fills `network` from an exported file: the same answers, normalised by what it sees in `crops`."""
    parts = [m for m in network.modules() if isinstance(m, (nn.Conv2d, nn.BatchNorm2d))]
    kernels = _kernels(path)
    hooks = []
    for i, part in enumerate(parts):
        if isinstance(part, nn.BatchNorm2d):
            continue
        weights, bias = kernels.pop(0)
        if i + 1 < len(parts) and isinstance(parts[i + 1], nn.BatchNorm2d):
            hooks.append(_set_apart(part, parts[i + 1], weights.to(crops.device), bias))
        else:
            part.weight.copy_(weights), part.bias.copy_(bias)
    was_training = network.training
    network.eval()(crops)
    network.train(was_training)
    for hook in hooks:
        hook.remove()
