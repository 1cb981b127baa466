"""Reckons expected.json from the normals and input.json, apart from the program: exact fractions, plain loops.

Run in this folder: python3 reckon.py > expected.json
Daily means: the running sum of (temperature - year's mean) is known at the end of each month; a periodic cubic
spline goes through those points, and its daily differences are the daily means. Written from that sentence.
"""
import csv
import datetime
import json
from fractions import Fraction

ONE_DAY = datetime.timedelta(days=1)


def day(text):
    return datetime.date.fromisoformat(text)


def daily_means(months, year):
    lengths = [
        (datetime.date(year + month // 12, month % 12 + 1, 1) - datetime.date(year, month, 1)).days
        for month in range(1, 13)
    ]
    total = sum(lengths)
    mean = sum(value * length for value, length in zip(months, lengths)) / total
    # Slopes of the spline at the twelve knots, from the condition that its second derivative is continuous.
    rows = []
    for knot in range(12):
        before, here = Fraction(lengths[knot - 1]), Fraction(lengths[knot])
        row = [Fraction(0)] * 13
        row[knot - 1 if knot else 11] += 1 / before
        row[knot] += 2 / before + 2 / here
        row[(knot + 1) % 12] += 1 / here
        row[12] = 3 * ((months[knot - 1] - mean) / before + (months[knot] - mean) / here)
        rows.append(row)
    for pivot in range(12):
        lead = next(index for index in range(pivot, 12) if rows[index][pivot] != 0)
        rows[pivot], rows[lead] = rows[lead], rows[pivot]
        rows[pivot] = [value / rows[pivot][pivot] for value in rows[pivot]]
        for other in range(12):
            if other != pivot and rows[other][pivot] != 0:
                factor = rows[other][pivot]
                rows[other] = [a - factor * b for a, b in zip(rows[other], rows[pivot])]
    slopes = [row[12] for row in rows]
    days, start = [], Fraction(0)
    for month, length in enumerate(lengths):
        rise = (months[month] - mean) * length
        left, right = slopes[month] * length, slopes[(month + 1) % 12] * length

        def height(at):  # cubic Hermite curve of the running sum within the month
            t = Fraction(at, length)
            return (
                start * (2 * t**3 - 3 * t**2 + 1)
                + left * (t**3 - 2 * t**2 + t)
                + (start + rise) * (3 * t**2 - 2 * t**3)
                + right * (t**3 - t**2)
            )

        days += [height(at) - height(at - 1) + mean for at in range(1, length + 1)]
        start += rise
    assert len(days) == total
    return days


def reasons(date, high, label, station):
    found = []
    if high < Fraction(str(label["minDailyHighCelsius"])):
        found.append("too-cool")
    if high > Fraction(str(label["maxDailyHighCelsius"])):
        found.append("too-warm")
    supers = [(day(each["on"]), day(each["off"])) for each in station["supers"]]
    if any(on <= date < off for on, off in supers):
        found.append("supers-on")
    else:
        removal = date + ONE_DAY
        later = [on for on, _ in supers if on > date]
        if later and (min(later) - removal).days < label["daysBeforeSupers"]:
            found.append("too-close-to-supers")
    for each in station["treatments"]:
        if day(each["on"]) <= date < day(each["off"]):
            found.append("other-treatment-in-hive")
    return found


def spans(flags, first):
    found, begun = [], None
    for index, flag in enumerate(flags + [False]):
        if flag and begun is None:
            begun = index
        if not flag and begun is not None:
            found.append([str(first + begun * ONE_DAY), str(first + (index - 1) * ONE_DAY)])
            begun = None
    return found


def main():
    with open("input.json", encoding="utf-8") as file:
        asked = json.load(file)
    with open("canada_monthly_normals.csv", encoding="utf-8") as file:
        normals = {}
        for row in csv.DictReader(file):
            normals.setdefault(row["station"], {})[int(row["month"])] = Fraction(row["normal_mean_c"])
    label, first, last = asked["labelRecord"], day(asked["from"]), day(asked["to"])
    answers = []
    for station in asked["stations"]:
        months = [normals[station["station"]][month] for month in range(1, 13)]
        means = daily_means(months, first.year)
        dates = [first + index * ONE_DAY for index in range((last - first).days + 1)]
        against = [reasons(date, mean, label, station) for date, mean in zip(dates, means)]
        free = spans([not each for each in against], first)
        long_enough = [
            span for span in free if (day(span[1]) - day(span[0])).days + 1 >= label["durationDays"]
        ]
        refused = {
            reason: spans([reason in each for each in against], first)
            for reason in sorted({reason for each in against for reason in each})
        }
        too_short = [span for span in free if span not in long_enough]
        if too_short:
            refused["too-few-days"] = too_short
        answers.append(
            {
                "station": station["station"],
                "warmestDayMean": round(float(max(means)), 6),
                "windows": [
                    {
                        "from": span[0],
                        "to": span[1],
                        "latestStart": str(day(span[1]) - (label["durationDays"] - 1) * ONE_DAY),
                    }
                    for span in long_enough
                ],
                "refused": refused,
            }
        )
    print(json.dumps(answers, indent=2))


main()
