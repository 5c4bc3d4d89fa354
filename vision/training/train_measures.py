"""What training and measuring share."""


def greedy(logits):
    best = logits.argmax(1)
    return [[int(c) for i, c in enumerate(row) if c and (i == 0 or c != row[i - 1])] for row in best]


def sure_greedy(probabilities):
    """Of each line its classes with the highest probability of their run of columns."""
    lines = []
    for best, top in zip(probabilities.argmax(1), probabilities.max(1)):
        line, before = [], 0
        for c, p in zip(best.tolist(), top.tolist()):
            if c and c == before:
                line[-1] = (c, max(line[-1][1], p))
            elif c:
                line.append((c, p))
            before = c
        lines.append(line)
    return lines


def _table(a, b):
    rows = [list(range(len(b) + 1))]
    for i, x in enumerate(a, 1):
        row = [i]
        for j, y in enumerate(b, 1):
            row.append(min(rows[-1][j] + 1, row[j - 1] + 1, rows[-1][j - 1] + (x != y)))
        rows.append(row)
    return rows


def edits(a, b):
    return _table(a, b)[-1][-1]


def aligned(a, b):
    """Pairs of places (i, j), None where one has no partner, along a cheapest way from a to b."""
    rows, i, j, pairs = _table(a, b), len(a), len(b), []
    while i or j:
        if i and j and rows[i][j] == rows[i - 1][j - 1] + (a[i - 1] != b[j - 1]):
            i, j = i - 1, j - 1
            pairs.append((i, j))
        elif i and rows[i][j] == rows[i - 1][j] + 1:
            i -= 1
            pairs.append((i, None))
        else:
            j -= 1
            pairs.append((None, j))
    return pairs[::-1]
