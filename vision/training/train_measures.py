"""What training and measuring share."""


def greedy(logits):
    best = logits.argmax(1)
    return [[int(c) for i, c in enumerate(row) if c and (i == 0 or c != row[i - 1])] for row in best]


def edits(a, b):
    row = list(range(len(b) + 1))
    for i, x in enumerate(a, 1):
        before, row[0] = row[0], i
        for j, y in enumerate(b, 1):
            before, row[j] = row[j], min(row[j] + 1, row[j - 1] + 1, before + (x != y))
    return row[-1]
