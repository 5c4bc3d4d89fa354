"""What a network makes of drawn lines of faces it was not shown."""

import torch

import alphabet
from train_measures import aligned, edits, sure_greedy

SURE = 0.9


def _folded(classes):
    return alphabet.decode(classes).upper().replace(" ", "")


class Tally:
    """Lines read exactly, edits, and what became of wiped letters and of sure ones."""

    def __init__(self):
        self.lines = self.exact = self.wrong = self.letters = 0
        self.wiped = self.kept = self.invented = 0
        self.sure = self.sure_wrong = self.right = 0
        self.empty = self.empty_kept = 0

    def add(self, read, truth):
        classes = [c for c, _ in read]
        a, b = _folded(classes), _folded(truth)
        if not truth:
            self.empty += 1
            self.empty_kept += not classes
            return
        self.lines += 1
        self.exact += a == b
        self.wrong += edits(a, b)
        self.letters += len(b)
        fold = lambda c: alphabet.decode([c]).upper()
        for i, j in aligned([fold(c) for c in classes], [fold(c) for c in truth]):
            self._pair(read[i] if i is not None else None, truth[j] if j is not None else None, fold)

    def _pair(self, seen, true, fold):
        gone = (alphabet.TRACES, alphabet.LOST)
        surely = seen is not None and seen[1] >= SURE and seen[0] not in gone and fold(seen[0]) != " "
        if true in gone:
            self.wiped += 1
            self.kept += seen is not None and seen[0] in gone
            self.invented += surely
        same = seen is not None and true is not None and fold(seen[0]) == fold(true)
        if true not in gone and same:
            self.right += 1
        self.sure += surely
        self.sure_wrong += surely and not same

    def told(self):
        part = lambda a, b: 100 * a / max(1, b)
        return ("%.1f %% exact, CER %.2f %%, wiped kept %.1f %%, made a sure letter %.1f %%, sure and wrong %.2f %%, "
                "right ones sure %.1f %%, empty kept %.1f %%" % (
                    part(self.exact, self.lines), part(self.wrong, self.letters), part(self.kept, self.wiped),
                    part(self.invented, self.wiped), part(self.sure_wrong, self.sure),
                    part(self.sure - self.sure_wrong, self.right), part(self.empty_kept, self.empty)))


def judge(network, sets):
    """Told of each set of batches (crops, targets, lengths); case folded, spaces left out."""
    network.eval()
    told = {}
    for name, batches in sets.items():
        tally = Tally()
        for crops, targets, lengths in batches:
            with torch.no_grad(), torch.autocast("cuda", torch.bfloat16):
                logits = network(crops)[:, :, 0]
            read = sure_greedy(logits.float().softmax(1).cpu().numpy())
            for line, target, length in zip(read, targets.tolist(), lengths.tolist()):
                tally.add(line, target[:length])
        told[name] = tally.told()
    network.train()
    return told
