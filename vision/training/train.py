"""Trains the line network on drawn stamps, on every GPU of the machine.

torchrun --standalone --nproc_per_node=GPUS train.py --faces DIR --seconds 480 --out DIR [--from line_reader.onnx]
"""

import argparse
import copy
import os
import time
import traceback

import numpy as np
import torch
import torch.distributed as dist
import torch.nn.functional as F

from judge import judge
from network import LineNetwork
from pools import CHUNK, SHAPES, Pool, Replay, Source, load_faces, load_textures
from unfold import unfold

WARM_STEPS = 200


def loss_of(logits, targets, lengths):
    scores = F.log_softmax(logits.float(), 1).permute(2, 0, 1)
    columns = torch.full((logits.shape[0],), logits.shape[2], device=logits.device)
    each = F.ctc_loss(scores, targets, columns, lengths, reduction="none", zero_infinity=True)
    return (each / lengths.clamp_min(1)).mean()


def export(network, folder):
    plain = LineNetwork().eval()
    plain.load_state_dict(network.state_dict())
    torch.onnx.export(plain.cpu(), torch.zeros(1, 1, 48, 256), os.path.join(folder, "line_reader.onnx"),
                      opset_version=12, dynamo=False, input_names=["crops"], output_names=["logits"],
                      dynamic_axes={"crops": {0: "n", 3: "w"}, "logits": {0: "n", 3: "t"}})


def parsed():
    parser = argparse.ArgumentParser()
    parser.add_argument("--faces", required=True)
    parser.add_argument("--textures", default="")
    parser.add_argument("--until", type=float, default=0, help="clock time of the last step, instead of --seconds")
    parser.add_argument("--seconds", type=float, default=480)
    parser.add_argument("--out", required=True)
    parser.add_argument("--from", dest="network", default="", help="exported network to go on from, .onnx or .onnx.gz")
    parser.add_argument("--rate", type=float, default=2.5e-3)
    parser.add_argument("--last-rate", type=float, default=0.02, help="share of the rate that is left at the end")
    parser.add_argument("--batch", type=int, default=1024, help="short lines a step and GPU; of long ones half as many")
    parser.add_argument("--room", type=int, default=300_000)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--plain", action="store_true", help="draw without recorded steps, half as fast")
    return parser.parse_args()


def sources_of(options, rank, ranks):
    """Sources of masks to learn from and, on the first GPU, of held-out ones; forks, so before the GPU is touched."""
    kept, held = load_faces(options.faces)
    each = max(1, ((os.cpu_count() or 4) // ranks - 2) // 2)
    seed = options.seed * 100 + rank * 10
    learnt = [Source(kept, shape, each, seed + i) for i, shape in enumerate(SHAPES)]
    tests = [Source(held, shape, 2, 900 + i) for i, shape in enumerate(SHAPES)] if rank == 0 else []
    if rank == 0:
        print("%d faces, %d held out, %d processes a shape" % (len(kept), len(held), each), flush=True)
    for source in learnt + tests:
        source.begin()
    return learnt, tests


class Learner:
    """The network, its running average, and one step of learning over all GPUs."""

    def __init__(self, options, ranks, crops):
        self.options, self.ranks, self.step = options, ranks, 0
        self.network = LineNetwork().cuda().to(memory_format=torch.channels_last)
        if options.network:
            unfold(options.network, self.network, crops)
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

    def learn(self, crops, targets, lengths, done, meanwhile):
        """One step; `meanwhile` is called while the GPU is busy. Returns the loss and what `meanwhile` returned."""
        fall = 0.5 * (1 + np.cos(np.pi * done))
        rate = self.options.rate * min(1, (self.step + 1) / WARM_STEPS) * (
            fall * (1 - self.options.last_rate) + self.options.last_rate)
        for group in self._rule.param_groups:
            group["lr"] = rate
        with torch.autocast("cuda", torch.bfloat16):
            logits = self.network(crops.contiguous(memory_format=torch.channels_last))[:, :, 0]
        other = meanwhile()  # the loss waits for the GPU
        loss = loss_of(logits, targets, lengths)
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


def _draws(options, pools, textures):
    """Two functions that draw a batch of short and of long lines."""
    sizes = [options.batch, options.batch // 2]
    if options.plain:
        return [lambda pool=pool, n=n: pool.batch(n, textures) for pool, n in zip(pools, sizes)]
    with torch.no_grad():
        return [Replay(pool, n, textures).batch for pool, n in zip(pools, sizes)]


def trained(options, learner, pools, textures, sets):
    """Learns until the time is over; every GPU makes the same number of steps."""
    begun = told = time.time()
    allowed = options.until - begun if options.until else options.seconds
    draws = _draws(options, pools, textures)
    loss, over = torch.zeros((), device="cuda"), torch.zeros((), device="cuda")
    with torch.no_grad():
        batch = draws[0]()
    while True:
        done = (time.time() - begun) / allowed
        if learner.step % 20 == 0:
            over.fill_(float(done >= 1))
            if learner.ranks > 1:
                dist.all_reduce(over, op=dist.ReduceOp.MAX)
            if over.item() > 0:
                break

        @torch.no_grad()
        def following(step=learner.step + 1):
            if step % 2 == 0:
                pools[(step // 2) % 3 == 2].take(0)
            return draws[step % 3 == 2]()

        each, batch = learner.learn(*batch, min(1, done), following)
        loss = loss * 0.99 + each * 0.01
        if sets and time.time() - told > 120:
            told = time.time()
            print("%4.0f s, step %d, loss %.3f, chunks %s: %s" % (
                told - begun, learner.step, loss.item(), [p.taken for p in pools], judge(learner.average, sets)), flush=True)
    return learner.step


def main():
    options = parsed()
    rank, ranks = int(os.environ.get("RANK", 0)), int(os.environ.get("WORLD_SIZE", 1))
    learnt, tests = sources_of(options, rank, ranks)
    torch.cuda.set_device(rank)
    if ranks > 1:
        dist.init_process_group("nccl", device_id=torch.device("cuda", rank))
    torch.manual_seed(options.seed * 10 + rank)
    torch.backends.cudnn.benchmark = True
    torch.backends.cuda.matmul.allow_tf32 = True
    textures = load_textures(options.textures)
    for source in learnt + tests:
        source.pin()
    held = [Pool(source, 2 * CHUNK) for source in tests]
    for pool in held:
        pool.take(), pool.take()
    torch.manual_seed(12345)
    sets = {shape: [pool.batch(512, textures) for _ in range(3)] for shape, pool in zip(SHAPES, held)}
    torch.manual_seed(options.seed * 10 + rank)
    pools = [Pool(source, options.room) for source in learnt]
    for _ in range(8):
        for pool in pools:
            pool.take()
    learner = Learner(options, ranks, pools[0].batch(1024, textures)[0])
    if options.network and rank == 0:
        print("begin: %s" % judge(learner.average, sets), flush=True)
    steps = trained(options, learner, pools, textures, sets)
    if rank == 0:
        print("end, step %d: %s" % (steps, judge(learner.average, sets)), flush=True)
        export(learner.average, options.out)
    for source in learnt + tests:
        source.end()
    if ranks > 1:
        dist.destroy_process_group()


if __name__ == "__main__":
    try:
        main()
    except BaseException:
        traceback.print_exc()
        os._exit(1)  # processes that draw would keep a failed run waiting
