"""Trains the line network on drawn stamps, on every GPU of the machine.

torchrun --standalone --nproc_per_node=GPUS train.py --faces DIR --seconds 480 --out DIR [--from line_reader.onnx]
"""

import argparse
import os
import time
import traceback

import torch
import torch.distributed as dist
import torch.nn.functional as F

from judge import judge
from learning import Learner, exported
from network import LineNetwork
from pools import CHUNK, CROPPED, Pool, Replay, Source, load_faces, load_textures


class Reading:
    """What is learnt: a network, its loss, how it is judged and written, and what becomes of a drawn batch."""

    network = LineNetwork
    judge = staticmethod(judge)

    @staticmethod
    def prepared(batch):
        return batch

    @staticmethod
    def loss_of(answer, targets, lengths):
        scores = F.log_softmax(answer[:, :, 0].float(), 1).permute(2, 0, 1)
        columns = torch.full((answer.shape[0],), answer.shape[3], device=answer.device)
        each = F.ctc_loss(scores, targets, columns, lengths, reduction="none", zero_infinity=True)
        return (each / lengths.clamp_min(1)).mean()

    @staticmethod
    def export(network, folder):
        exported(network, LineNetwork(), (1, 1, 48, 256), os.path.join(folder, "line_reader.onnx"), "logits",
                 {"crops": {0: "n", 3: "w"}, "logits": {0: "n", 3: "t"}})


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
    learnt = [Source(kept, shape, each, seed + i) for i, shape in enumerate(CROPPED)]
    tests = [Source(held, shape, 2, 900 + i) for i, shape in enumerate(CROPPED)] if rank == 0 else []
    if rank == 0:
        print("%d faces, %d held out, %d processes a shape" % (len(kept), len(held), each), flush=True)
    for source in learnt + tests:
        source.begin()
    return learnt, tests


def _draws(options, pools, textures, prepared):
    """Two functions that draw a batch of short and of long lines."""
    sizes = [options.batch, options.batch // 2]
    if options.plain:
        return [lambda pool=pool, n=n: prepared(pool.batch(n, textures)) for pool, n in zip(pools, sizes)]
    with torch.no_grad():
        replays = [Replay(pool, n, textures) for pool, n in zip(pools, sizes)]
    return [lambda replay=replay: prepared(replay.batch()) for replay in replays]


def trained(options, task, learner, pools, textures, sets):
    """Learns until the time is over; every GPU makes the same number of steps."""
    begun = told = time.time()
    allowed = options.until - begun if options.until else options.seconds
    draws = _draws(options, pools, textures, task.prepared)
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

        each, batch = learner.learn(batch[0], batch[1:], min(1, done), following)
        loss = loss * 0.99 + each * 0.01
        if sets and time.time() - told > 120:
            told = time.time()
            print("%4.0f s, step %d, loss %.3f, chunks %s: %s" % (
                told - begun, learner.step, loss.item(), [p.taken for p in pools], task.judge(learner.average, sets)), flush=True)
    return learner.step


def main(task):
    options = parsed()
    os.makedirs(options.out, exist_ok=True)  # not at the end, when a run would be lost
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
    sets = {shape: [task.prepared(pool.batch(512, textures)) for _ in range(3)] for shape, pool in zip(CROPPED, held)}
    torch.manual_seed(options.seed * 10 + rank)
    pools = [Pool(source, options.room) for source in learnt]
    for _ in range(8):
        for pool in pools:
            pool.take()
    learner = Learner(task.network(), task.loss_of, options, ranks, pools[0].batch(1024, textures)[0])
    if options.network and rank == 0:
        print("begin: %s" % task.judge(learner.average, sets), flush=True)
    steps = trained(options, task, learner, pools, textures, sets)
    if rank == 0:
        print("end, step %d: %s" % (steps, task.judge(learner.average, sets)), flush=True)
        task.export(learner.average, options.out)
    for source in learnt + tests:
        source.end()
    if ranks > 1:
        dist.destroy_process_group()


def run(task):
    try:
        main(task)
    except BaseException:
        traceback.print_exc()
        os._exit(1)  # processes that draw would keep a failed run waiting


if __name__ == "__main__":
    run(Reading)
