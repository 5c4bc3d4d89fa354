"""Trains the finder network on drawn scenes, on every GPU of the machine.

torchrun --standalone --nproc_per_node=GPUS finder_train.py --faces DIR --seconds 480 --out DIR [--from finder.onnx]
"""

import argparse
import os
import time
import traceback

import torch
import torch.distributed as dist
import torch.nn.functional as F

from finder_network import FinderNetwork
from finder_placing import LINES, MARKS
from finder_scene import scenes
from learning import Learner, exported
from pools import CHUNK, Pool, Source, load_faces, load_textures

DICE, HEIGHT, TURN = 0.5, 0.5, 1.0  # weights of the losses beside the core's


def losses_of(answer, core, told):
    """Of the core, how badly its area is met, of the height, of the direction."""
    answer = answer.float()
    seen = torch.sigmoid(answer[:, :1])
    point = F.binary_cross_entropy_with_logits(answer[:, :1], core)
    dice = 1 - (2 * (seen * core).sum() + 1) / (seen.sum() + core.sum() + 1)
    inside = core.sum().clamp_min(1)
    height = (F.smooth_l1_loss(answer[:, 1:2], told[:, :1], reduction="none", beta=0.2) * core).sum() / inside
    turn = ((answer[:, 2:] - told[:, 1:]).pow(2).sum(1, keepdim=True) * core).sum() / inside
    return point, dice, height, turn


def loss_of(answer, core, told):
    point, dice, height, turn = losses_of(answer, core, told)
    return 10 * point + DICE * dice + HEIGHT * height + TURN * turn


@torch.no_grad()
def judge(network, batches):
    """Of the core's cells: found, false ones; of those found the height's error and the share with the right angle."""
    network.eval()
    found = true = seen = right = 0
    off = torch.zeros((), device="cuda")
    point = 0.0
    for inputs, core, told in batches:
        with torch.autocast("cuda", torch.bfloat16):
            answer = network(inputs.contiguous(memory_format=torch.channels_last)).float()
        here, hit = core > 0.5, (answer[:, :1] > 0) & (core > 0.5)
        point += losses_of(answer, core, told)[0].item() / len(batches)
        true += here.sum().item()
        seen += (answer[:, :1] > 0).sum().item()
        found += hit.sum().item()
        off += ((answer[:, 1:2] - told[:, :1]).abs() * hit).sum()
        turned = (answer[:, 2:] * told[:, 1:]).sum(1, keepdim=True) / answer[:, 2:].norm(dim=1, keepdim=True).clamp_min(1e-3)
        right += ((turned > 0.866) & hit).sum().item()
    network.train()
    return "loss of the core %.4f, found %.1f %%, false %.1f %%, height off by 2^%.3f, angle right %.1f %%" % (
        point, 100 * found / true, 100 * (1 - found / max(1, seen)), off.item() / max(1, found), 100 * right / max(1, found))


def parsed():
    parser = argparse.ArgumentParser()
    parser.add_argument("--faces", required=True)
    parser.add_argument("--textures", default="")
    parser.add_argument("--seconds", type=float, default=480)
    parser.add_argument("--out", required=True)
    parser.add_argument("--from", dest="network", default="", help="exported network to go on from, .onnx or .onnx.gz")
    parser.add_argument("--rate", type=float, default=2e-3)
    parser.add_argument("--last-rate", type=float, default=0.02, help="share of the rate that is left at the end")
    parser.add_argument("--batch", type=int, default=40, help="scenes a step and GPU")
    parser.add_argument("--room", type=int, default=100_000)
    parser.add_argument("--seed", type=int, default=1)
    return parser.parse_args()


class Scenes:
    """Batches of scenes of a pool's masks."""

    def __init__(self, pool, count, textures):
        self.pool, self._count, self._textures = pool, count, textures

    @torch.no_grad()
    def batch(self):
        pick = torch.randint(0, self.pool.filled, (self._count, MARKS * LINES), device="cuda")
        return scenes(self.pool.masks[pick], self.pool.widths[pick], self._textures)


def trained(options, learner, drawn, sets):
    """Learns until the time is over; every GPU makes the same number of steps."""
    begun = told = time.time()
    loss, over = torch.zeros((), device="cuda"), torch.zeros((), device="cuda")
    batch = drawn.batch()
    while True:
        done = (time.time() - begun) / options.seconds
        if learner.step % 20 == 0:
            over.fill_(float(done >= 1))
            if learner.ranks > 1:
                dist.all_reduce(over, op=dist.ReduceOp.MAX)
            if over.item() > 0:
                return
        if learner.step % 10 == 5:
            drawn.pool.take(0)
        each, batch = learner.learn(batch[0], batch[1:], min(1, done), drawn.batch)
        loss = loss * 0.98 + each * 0.02
        if sets and time.time() - told > 60:
            told = time.time()
            print("%4.0f s, step %d, loss %.3f, chunks %d: %s" % (
                told - begun, learner.step, loss.item(), drawn.pool.taken, judge(learner.average, sets)), flush=True)


def main():
    options = parsed()
    os.makedirs(options.out, exist_ok=True)  # not at the end, when a run would be lost
    rank, ranks = int(os.environ.get("RANK", 0)), int(os.environ.get("WORLD_SIZE", 1))
    kept, held = load_faces(options.faces)
    each = max(1, (os.cpu_count() or 4) // ranks - 3)
    learnt = Source(kept, "any", each, options.seed * 100 + rank * 10)
    tests = [Source(held, "any", 2, 950)] if rank == 0 else []
    for source in [learnt] + tests:
        source.begin()
    torch.cuda.set_device(rank)
    if ranks > 1:
        dist.init_process_group("nccl", device_id=torch.device("cuda", rank))
    torch.backends.cudnn.benchmark = True
    torch.backends.cuda.matmul.allow_tf32 = True
    textures = load_textures(options.textures)
    for source in [learnt] + tests:
        source.pin()
    sets = []
    for source in tests:
        pool = Pool(source, 2 * CHUNK)
        pool.take(), pool.take()
        torch.manual_seed(12345)
        sets = [Scenes(pool, 32, textures).batch() for _ in range(8)]
    torch.manual_seed(options.seed * 10 + rank)
    pool = Pool(learnt, options.room)
    for _ in range(16):
        pool.take()
    drawn = Scenes(pool, options.batch, textures)
    learner = Learner(FinderNetwork(), loss_of, options, ranks, drawn.batch()[0])
    if options.network and rank == 0:
        print("begin: %s" % judge(learner.average, sets), flush=True)
    trained(options, learner, drawn, sets)
    if rank == 0:
        print("end, step %d: %s" % (learner.step, judge(learner.average, sets)), flush=True)
        exported(learner.average, FinderNetwork(), (1, 1, 64, 96), os.path.join(options.out, "finder.onnx"), "found",
                 {"crops": {0: "n", 2: "h", 3: "w"}, "found": {0: "n", 2: "y", 3: "x"}})
    for source in [learnt] + tests:
        source.end()
    if ranks > 1:
        dist.destroy_process_group()


if __name__ == "__main__":
    try:
        main()
    except BaseException:
        traceback.print_exc()
        os._exit(1)  # processes that draw would keep a failed run waiting
