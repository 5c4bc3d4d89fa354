"""What stands on marks, as random text. All of it is made up as it goes: no name is a maker's.

python3 grammar.py --count N --seed S   prints N texts, one a line, as training labels them
"""

import argparse
import random
import string

MOST_LETTERS = 30  # of a text that is drawn
MONTHS = "JAN FEB MAR APR MAY JUN JUL AUG SEP OCT NOV DEC".split()
WHOLE_MONTHS = "JANUARY FEBRUARY MARCH APRIL MAY JUNE JULY AUGUST SEPTEMBER OCTOBER NOVEMBER DECEMBER SEPT".split()
ROMAN_MONTHS = "I II III IV V VI VII VIII IX X XI XII".split()
FIRM_ENDS = ["LTD", "LTD.", "& CO", "& CO.", "& CO. LTD.", "& CO., LTD.", "& CO LTD", "BROS", "BROS.", "& SONS", "& SON",
             "WORKS", "MFG CO", "MFG. CO., LTD.", "CO., LTD", "& SONS, LTD."]
WORDS = "SIZE PATT MARK NO LOT DATE BATCH MADE TYPE CLASS LARGE SMALL MEDIUM INSP STORES REG SERIAL EXP BBE".split()
PLAIN = ("THE OF AND FOR WITH NOT IN ON OFF OPEN CLOSED STOP EXIT DANGER HIGH LOW HOT COLD WATER STEEL MODEL PART "
         "NUMBER WEIGHT VOLTS POWER SPEED PRESS SAFETY COVER FRONT REAR LEFT RIGHT HAND HOUSE ROAD STREET STATION "
         "COMPANY LIMITED PATENT PENDING ARRELAY VELDOR PREMIUM GENUINE LEATHER COTTON WOOL CANVAS PURE WASH WARM "
         "ONLY KEEP DRY BEST BEFORE USE BY PACKED NET QUALITY TEST PASSED APPROVED ISSUE GROUP UNIT TOOL BRAND MAX MIN "
         "GARAGE HOTEL MARKET COFFEE FRESH GREEN WHITE BLACK GOLD ROYAL QUEEN JUNCTION BRIDGE EXPRESS ZONE BOX").split()
DATE_LEADS = ["EXP", "EXP.", "EXP:", "BBE", "BB", "BEST BEFORE", "USE BY", "MFG", "MFD", "PROD", "PKD", "E:", "P:", "DATE"]
PLATE_LEADS = ["NO.", "NO", "SERIAL NO.", "SER. NO.", "MODEL", "TYPE", "CAT. NO.", "PAT. NO.", "PART NO.", "REF.", "LOT",
               "L", "BATCH", "CODE", "ART.", "V.", "KG", "HP", "RPM"]
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
    if form < 0.74:
        first, last, dot = "".join(letters[:-1]) or "A", letters[-1], rng.choice(["", ".", "."])
        return rng.choice([
            lambda: first + "&" + last,
            lambda: first + dot + " & " + last + dot,
            lambda: letters[0] + dot + " & " + last + dot,
        ])()
    if form < 0.81:
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
    elif rng.random() < 0.1:
        parts = [parts[-1] + ",", _name(rng), "&", _name(rng)]
    if rng.random() < 0.6:
        parts.append(rng.choice(FIRM_ENDS))
    if rng.random() < 0.12:  # and where it is
        parts[-1] += rng.choice([", %s", ", %s", " (%s)", " - %s"]) % _name(rng)
    return " ".join(parts)


def _year(rng):
    return rng.randint(1900, 1999) if rng.random() < 0.75 else rng.randint(2000, 2035)


def _date(rng):
    year, month, day = _year(rng), rng.randint(1, 12), rng.randint(1, 31)
    short = "%02d" % (year % 100)
    form = rng.randint(0, 13)
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
        mark = rng.choice("-/.")
        return "%d%s%02d%s%02d" % (year, mark, month, mark, day)
    if form == 11:
        return rng.choice(WHOLE_MONTHS) + rng.choice([" ", " ", ". "]) + rng.choice([short, str(year), str(year)])
    if form == 12:
        return rng.choice(MONTHS) + rng.choice([" %d, %d", ". %d, %d", " %d,%d"]) % (day, year)
    return rng.choice(["'", "19", ""]) + short


def _random(rng, most=12):
    digits, letters = string.digits, string.ascii_uppercase
    pool = rng.choice([digits, letters, digits + letters, digits + letters + "./-", digits + letters + ".,&/-():'+*#"])
    return "".join(rng.choice(pool) for _ in range(rng.randint(1, most)))


def _number(rng):
    return rng.choice([
        lambda: "%d" % rng.randint(0, 10 ** rng.randint(1, 8)),
        lambda: "SIZE %d" % rng.randint(1, 60),
        lambda: rng.choice(["NO. %d", "No %d", "No. %d", "NO %d"]) % rng.randint(1, 99999),
        lambda: "%s/%d/%d" % (_random(rng, 3), rng.randint(1, 9999), rng.randint(1, 99)),
        lambda: "%s %s" % (rng.choice(WORDS), _random(rng, 6)),
        lambda: "%d %d-%d" % (rng.randint(1, 99), rng.randint(1, 99), rng.randint(1, 99)),
        lambda: "%s-%s" % (_random(rng, 4), _random(rng, 5)),
        lambda: "(%s)" % rng.choice(["%d" % rng.randint(1, 1999), _random(rng, 3), rng.choice(ROMAN_MONTHS)]),
        lambda: "%s%s(%s)" % (rng.choice(WORDS + [_random(rng, 4)]), rng.choice(["", " ", " "]), _random(rng, 3)),
        lambda: rng.choice(["#%s", "# %s", "NO. #%s", "LOT #%s", "#%s,"]) % _random(rng, 6),
        lambda: "%s, %s" % (_random(rng, 5), _random(rng, 5)),
        lambda: "%d,%03d" % (rng.randint(1, 99), rng.randint(0, 999)),
        lambda: "%s: %s" % (rng.choice(WORDS), _random(rng, 5)),
        lambda: "%d:%02d" % (rng.randint(0, 23), rng.randint(0, 59)),
        lambda: "%02d:%02d:%02d" % (rng.randint(0, 23), rng.randint(0, 59), rng.randint(0, 59)),
    ])()


def _words(rng):
    """Words as on signs and labels, some of them made up."""
    many = rng.choice([1, 1, 1, 2, 2, 3])
    words = [rng.choice(PLAIN) if rng.random() < 0.7 else _name(rng) for _ in range(many)]
    return rng.choice([" ", " ", " ", " ", " ", ", "]).join(words)


def _packed(rng):
    """What an ink-jet printer puts on a packet: a date, often with a lead, a time, a lot."""
    parts = [rng.choice(DATE_LEADS)] if rng.random() < 0.5 else []
    parts.append(_date(rng))
    if rng.random() < 0.3:
        parts.append("%02d:%02d" % (rng.randint(0, 23), rng.randint(0, 59)))
    if rng.random() < 0.3:
        parts.append("L" + rng.choice(["", " "]) + _random(rng, 6))
    return rng.choice([" ", " ", ""]).join(parts)


def _plate(rng):
    """What stands on a metal plate: a lead with a number, a number with its unit, a vehicle's sign."""
    letters = lambda n: "".join(rng.choice(string.ascii_uppercase) for _ in range(n))
    digits = lambda n: "".join(rng.choice(string.digits) for _ in range(n))
    form = rng.random()
    if form < 0.45:
        number = rng.choice([digits(rng.randint(2, 7)), _random(rng, 8)])
        return rng.choice(PLATE_LEADS) + rng.choice([" ", " ", "", ": "]) + number
    if form < 0.65:
        unit = rng.choice(["V", "KG", "HP", "RPM", "LBS", "MM", "IN.", "AMPS", "W"])
        return digits(rng.randint(1, 4)) + rng.choice([" ", ""]) + unit
    return rng.choice([
        lambda: letters(2) + digits(2) + " " + letters(3),
        lambda: letters(1) + digits(3) + rng.choice(["", " "]) + letters(3),
        lambda: letters(3) + rng.choice(["", "-", " "]) + digits(rng.choice([3, 4])),
        lambda: letters(rng.randint(1, 3)) + rng.choice([" ", "-"]) + letters(rng.randint(1, 2)) + " " + digits(rng.randint(1, 4)),
        lambda: digits(4) + rng.choice([" ", ""]) + letters(3),
    ])()


def _small_lettered(text, rng):
    """Whole words in small letters; a text whose small letters all look like capitals stays as it is."""
    if not any(c.lower() in "abdefghijklmnpqrtuy" for c in text if c.isalpha()):
        return text
    return rng.choice([str.lower, str.title, str.title, str.capitalize])(text)


def line(rng: random.Random):
    """One line of a mark, 1 to about 28 characters of the alphabet."""
    kind = rng.random()
    worded = [(0.10, _initials), (0.28, _firm), (0.44, _date), (0.52, _number), (0.60, _words), (0.67, _packed),
              (0.74, _plate), (0.80, lambda r: rng.choice([_initials, _name, _firm])(r) + " " + _date(r))]
    text = next((write(rng) for most, write in worded if kind < most), None) or _random(rng)
    if rng.random() < 0.04:
        text = rng.choice(["\u2191", "\u2191 ", "# ", "* "]) + text
    if rng.random() < 0.14:
        text += rng.choice([" \u2191", " \u2191", " \u2191", " \u2191", "*", "+", ",", ".", "."])
    if 0.10 <= kind < 0.67 and rng.random() < 0.18:
        text = _small_lettered(text, rng)
    return " ".join(text.split())


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("--count", type=int, default=10)
    parser.add_argument("--seed", type=int, default=1)
    options = parser.parse_args()
    rng, written = random.Random(options.seed), 0
    while written < options.count:
        text = line(rng)
        if text == text.strip() and 0 < len(text) <= MOST_LETTERS:
            print(text.upper())
            written += 1


if __name__ == "__main__":
    main()
