"""What stands on marks, as random text. All of it is made up as it goes: no name is a maker's."""

import random
import string

MONTHS = "JAN FEB MAR APR MAY JUN JUL AUG SEP OCT NOV DEC".split()
ROMAN_MONTHS = "I II III IV V VI VII VIII IX X XI XII".split()
FIRM_ENDS = ["LTD", "LTD.", "& CO", "& CO.", "& CO. LTD.", "BROS", "BROS.", "& SONS", "& SON", "WORKS", "MFG CO"]
WORDS = "SIZE PATT MARK NO LOT DATE BATCH MADE TYPE CLASS LARGE SMALL MEDIUM INSP STORES REG SERIAL EXP BBE".split()
ONSETS = ["B", "BR", "C", "CL", "D", "F", "FR", "G", "GR", "H", "J", "K", "L", "M", "N", "P", "PR", "QU", "R",
          "S", "ST", "SH", "T", "TH", "TR", "V", "W", "WH", "Y", "Z", ""]
RIMES = ["AN", "AR", "ATE", "ECK", "ELL", "EN", "ER", "EST", "ICK", "ILL", "IN", "ING", "ISH", "OCK", "OLD", "ON",
         "ORD", "OW", "UCK", "UM", "URN", "AX", "OX", "EY", "Y", "IDGE", "AM"]
ENDS = ["", "", "", "TON", "FORD", "WELL", "WICK", "MAN", "LEY", "S", "BY", "MERE", "HOLT", "DEN"]


def _initials(rng):
    letters = [rng.choice(string.ascii_uppercase) for _ in range(rng.randint(1, 4))]
    form = rng.random()
    if form < 0.4:
        return "".join(letter + "." for letter in letters)
    if form < 0.55:
        return ". ".join(letters) + "."
    if form < 0.7:
        return "&".join(["".join(letters[:-1]) or "A", letters[-1]])
    if form < 0.78:
        return " ".join(letters)
    return "".join(letters)


def _name(rng):
    return rng.choice(ONSETS) + rng.choice(RIMES) + rng.choice(ENDS)


def _firm(rng):
    parts = []
    if rng.random() < 0.5:
        parts.append(_initials(rng))
    parts.append(_name(rng))
    if rng.random() < 0.25:
        parts += ["&", _name(rng)]
    if rng.random() < 0.6:
        parts.append(rng.choice(FIRM_ENDS))
    return " ".join(parts)


def _year(rng):
    return rng.randint(1900, 1999) if rng.random() < 0.75 else rng.randint(2000, 2035)


def _date(rng):
    year, month, day = _year(rng), rng.randint(1, 12), rng.randint(1, 31)
    short = "%02d" % (year % 100)
    form = rng.randint(0, 11)
    if form <= 2:
        return str(year)
    if form == 3:
        return rng.choice(["%d/%s", "%02d/%s", "%d-%s", "%d.%s", "%02d %s"]) % (month, short)
    if form == 4:
        return "%d%s%d" % (month, rng.choice("/-. "), year)
    if form == 5:
        return rng.choice(ROMAN_MONTHS) + rng.choice([" ", "/", ".", "-"]) + rng.choice([short, str(year)])
    if form == 6:
        return rng.choice(MONTHS) + rng.choice([" ", "  ", "-", ". ", ""]) + rng.choice([short, str(year)])
    if form == 7:
        mark = rng.choice("./- ")
        return "%02d%s%02d%s%s" % (day, mark, month, mark, rng.choice([short, str(year)]))
    if form == 8:
        return "%d%s%s" % (day, rng.choice([" ", "", "-"]), rng.choice(MONTHS))
    if form == 9:
        mark = rng.choice([" ", "", "-", "/"])
        return "%02d%s%s%s%s" % (day, mark, rng.choice(MONTHS), mark, rng.choice([short, str(year)]))
    if form == 10:
        return "%d%s%02d%s%02d" % (year, *([rng.choice("-/.")] * 1), month, rng.choice("-/."), day)
    return rng.choice(["'", "19", ""]) + short


def _random(rng, most=12):
    digits, letters = string.digits, string.ascii_uppercase
    pool = rng.choice([digits, letters, digits + letters, digits + letters + "./-", string.ascii_letters + digits])
    return "".join(rng.choice(pool) for _ in range(rng.randint(1, most)))


def _number(rng):
    return rng.choice([
        lambda: "%d" % rng.randint(0, 10 ** rng.randint(1, 8)),
        lambda: "SIZE %d" % rng.randint(1, 60),
        lambda: "NO. %d" % rng.randint(1, 99999),
        lambda: "%s/%d/%d" % (_random(rng, 3), rng.randint(1, 9999), rng.randint(1, 99)),
        lambda: "%s %s" % (rng.choice(WORDS), _random(rng, 6)),
        lambda: "%d %d-%d" % (rng.randint(1, 99), rng.randint(1, 99), rng.randint(1, 99)),
        lambda: "%s-%s" % (_random(rng, 4), _random(rng, 5)),
        lambda: "(%d)" % rng.randint(1, 99),
        lambda: "%d:%02d" % (rng.randint(0, 23), rng.randint(0, 59)),
        lambda: "%02d:%02d:%02d" % (rng.randint(0, 23), rng.randint(0, 59), rng.randint(0, 59)),
    ])()


def line(rng: random.Random):
    """One line of a mark, 1 to about 28 characters of the alphabet."""
    kind = rng.random()
    if kind < 0.12:
        text = _initials(rng)
    elif kind < 0.34:
        text = _firm(rng)
    elif kind < 0.56:
        text = _date(rng)
    elif kind < 0.68:
        text = _number(rng)
    elif kind < 0.78:
        text = " ".join([rng.choice([_initials, _name, _firm])(rng), _date(rng)])
    else:
        text = _random(rng)
    if rng.random() < 0.04:
        text = rng.choice(["\u2191", "\u2191 ", "# ", "* "]) + text
    if rng.random() < 0.03:
        text += rng.choice([" \u2191", "*", "+", ",", "."])
    if kind >= 0.12 and rng.random() < 0.16:
        text = rng.choice([str.lower, str.title, str.capitalize])(text)
    return text
