"""How a network learns, on every GPU of the machine: its rate, its steps, its running average."""

import copy

import numpy as np
import torch
import torch.distributed as dist

from unfold import unfold

WARM_STEPS = 200


def exported(network, plain, shape, path, output, axes):
    """Writes the network's weights as ONNX through `plain`, an untrained one of the same kind; shape: of an input."""
    plain.eval().load_state_dict(network.state_dict())
    torch.onnx.export(plain.cpu(), torch.zeros(*shape), path, opset_version=12, dynamo=False,
                      input_names=["crops"], output_names=[output], dynamic_axes=axes)


class Learner:
    """A network, its running average, and one step of learning over all GPUs.

    options: rate, last_rate, network (an exported one to go on from, or nothing); loss_of(answer, *truth).
    """

    def __init__(self, network, loss_of, options, ranks, inputs):
        self.options, self.ranks, self.step, self._loss_of = options, ranks, 0, loss_of
        self.network = network.cuda().to(memory_format=torch.channels_last)
        if options.network:
            unfold(options.network, self.network, inputs)
        for value in self.network.state_dict().values():
            if ranks > 1:
                dist.broadcast(value, 0)
        self.average = copy.deepcopy(self.network)
        self._averaged = [v for v in self.average.state_dict().values() if v.is_floating_point()]
        self._live = [v for v in self.network.state_dict().values() if v.is_floating_point()]
        self._weights = list(self.network.parameters())
        self._rule = torch.optim.AdamW(
            [{"params": [p for p in self._weights if p.ndim > 1], "weight_decay": 0.02},
             {"params": [p for p in self._weights if p.ndim <= 1], "weight_decay": 0.0}], lr=options.rate, fused=True)

    def learn(self, inputs, truth, done, meanwhile):
        """One step; `meanwhile` is called while the GPU is busy. Returns the loss and what `meanwhile` returned."""
        fall = 0.5 * (1 + np.cos(np.pi * done))
        rate = self.options.rate * min(1, (self.step + 1) / WARM_STEPS) * (
            fall * (1 - self.options.last_rate) + self.options.last_rate)
        for group in self._rule.param_groups:
            group["lr"] = rate
        with torch.autocast("cuda", torch.bfloat16):
            answer = self.network(inputs.contiguous(memory_format=torch.channels_last))
        other = meanwhile()  # the loss waits for the GPU
        loss = self._loss_of(answer, *truth)
        self._rule.zero_grad(set_to_none=True)
        loss.backward()
        self._shared()
        torch.nn.utils.clip_grad_norm_(self._weights, 2.0)
        self._rule.step()
        self.step += 1
        with torch.no_grad():
            torch._foreach_lerp_(self._averaged, self._live, 1 - min(0.9995, 1 - 10 / (self.step + 20)))
        return loss.detach(), other

    def _shared(self):
        """Every GPU steps by the mean of all gradients."""
        if self.ranks > 1:
            flat = torch.cat([p.grad.flatten() for p in self._weights])
            dist.all_reduce(flat, op=dist.ReduceOp.AVG)
            for p, part in zip(self._weights, flat.split([p.numel() for p in self._weights])):
                p.grad.copy_(part.view_as(p))
