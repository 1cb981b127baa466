"""Reckons the posteriors of cases.json apart from the program, from the exported knowledge and docs/methods/differential.md.

Plain inclusion and exclusion in 40 decimal digits, one term after the other, with no shared sums: slow and short.
    python3 examples/differential-cases/reckon.py > examples/differential-cases/expected.json
"""
import itertools, json, pathlib
from decimal import Decimal as D, getcontext

getcontext().prec = 40
here = pathlib.Path(__file__).parent
know = json.loads((here / "../../docs/knowledge/knowledge.json").read_text(), parse_float=D)
num = lambda x: D(str(x))
grade = {g: num(p) for g, p in know["gradeProbability"].items()}
conditions, findings = know["conditions"], know["findings"]
# Judgement, as the method page states it.
DEPENDENCE, RATIO, ONE, TOGETHER, MOST, DEAD = D("0.7"), D(4), D(10), D(30), D("0.6"), D("0.1")
BLOCK = ["varroa_pms", "dwv_overt", "acute_virus_complex"]
EXCLUSIVE_GROUPS = {f["group"] for f in findings.values() if "exclusiveWith" in f}


def priors(season, region, state):
    p = {c: num(f["priorPercent"][season]) / 100 for c, f in conditions.items()}
    keys = {("varroa", "absent"): "no-varroa", ("smallHiveBeetle", "absent"): "no-small-hive-beetle",
            ("smallHiveBeetle", "endemic"): "small-hive-beetle-endemic", ("tropilaelaps", "endemic"): "tropilaelaps-endemic",
            ("vespa", "established"): "hornet-established", ("acarapisWoodi", "unknown"): "acarapis-unknown",
            ("acarapisWoodi", "absent"): "acarapis-absent"}
    applied = [k for (field, value), k in keys.items() if region[field] == value]
    if state == "dead": applied += ["visited-after-death", "states-of-the-living"]
    for key in applied:
        rule = know["regionAdjustments"][key]
        before = sum(p.values())
        for c in rule["conditions"]:
            if rule["change"]["kind"] == "factor": p[c] = min(MOST, p[c] * num(rule["change"]["factor"]))
            else: p[c] *= num(rule["change"]["percent"]) / num(conditions[c]["priorPercent"]["winter"])
        if rule["thenRenormalise"]:
            rest = [c for c in p if c not in rule["conditions"]]
            scale = (before - sum(p[c] for c in rule["conditions"])) / sum(p[c] for c in rest)
            for c in rest: p[c] = min(MOST, p[c] * scale)
    return p


def posterior(case):
    season = case["season"]
    region = {"varroa": "present", "acarapisWoodi": "unknown", "smallHiveBeetle": "absent", "tropilaelaps": "absent",
              "vespa": "absent", **case.get("region", {})}
    healthy = {f: grade[g] for f, g in know["healthyRates"][season].items()}
    rate = lambda c, f: grade[conditions[c]["frequencies"][f]["grade"]] if f in conditions[c]["frequencies"] else None
    suppresses = lambda c, f: conditions[c]["frequencies"].get(f, {}).get("suppresses", False)
    brings = lambda c, f: rate(c, f) is not None and not suppresses(c, f) and not know["findings"][f].get("ofHealth")
    link = lambda c, f: ((rate(c, f) - healthy[f]) / (1 - healthy[f])
                         if brings(c, f) and rate(c, f) > healthy[f] else D(0))
    keep = lambda c, f: min(D(1), rate(c, f) / healthy[f]) if suppresses(c, f) else D(1)
    signs = [f for f, x in findings.items() if x["kind"] == "sign"]
    mates = lambda f: [g for g in signs if findings[g]["group"] == findings[f]["group"]] if findings[f]["group"] not in EXCLUSIVE_GROUPS else [f]

    def gate(values):
        return D(1) if len(values) < 2 or max(values) == 0 else max(values) ** DEPENDENCE

    def touched(f):
        # A matchstick test stands in the foulbrood group as well: one more member with its own sensitivity and leak.
        extra_healthy, extra_link = [], {}
        if findings[f]["group"] == "brood_afb":
            sens, spec = (num(know["tests"]["rope-test"][k]["low"]) for k in ("sensitivity", "specificity"))
            sens = (sens + num(know["tests"]["rope-test"]["sensitivity"]["high"])) / 2
            extra_healthy, extra_link = [1 - spec], {"american_foulbrood": (sens - (1 - spec)) / spec}
        group = mates(f)
        e0 = gate([healthy[g] for g in group] + extra_healthy)
        e = {c: gate([link(c, g) for g in group] + ([extra_link.get(c, D(0))] if extra_healthy else [])) for c in conditions}
        return e0, e

    state = case.get("colony", {}).get("state", "alive")
    p = priors(season, region, state)
    looked = case["findings"]
    circumstances = [f for f in looked if findings[f]["kind"] == "circumstance"]
    present = [f for f in looked if looked[f] == "present" and f not in circumstances]
    absent = [f for f in looked if looked[f] == "absent" and f not in circumstances]
    odds = {c: p[c] / (1 - p[c]) for c in conditions}
    factor = {}
    for c in conditions:
        total = D(1)
        for f in circumstances:
            r = rate(c, f)
            if r is None or r <= healthy[f]: continue
            one = r / healthy[f] if looked[f] == "present" else (1 - r) / (1 - healthy[f])
            total *= min(ONE, max(1 / ONE, one))
        factor[c] = min(TOGETHER, max(1 / TOGETHER, total))

    singles = [c for c in conditions if c not in BLOCK]

    def tie(members):
        lead = p["varroa_pms"]
        w = D(1)
        for v in BLOCK[1:]:
            without = p[v] / (RATIO * lead + 1 - lead)
            here = RATIO * without if "varroa_pms" in members else without
            w *= here if v in members else 1 - here
        return w * (lead if "varroa_pms" in members else 1 - lead)

    block_states = [s for r in range(4) for s in itertools.combinations(BLOCK, r)]
    def sum_all(part, wanted=None, o=odds, f=factor):
        """Sum over all sets that hold `wanted` of prior weight times the part of each member; the empty set weighs 1."""
        s = D(1)
        for c in singles:
            a = o[c] * f[c] * part[c]
            s *= a if c == wanted else 1 + a
        b = D(0)
        for members in block_states:
            if wanted in BLOCK and wanted not in members: continue
            w = tie(members) / tie(())
            for c in members: w *= f[c] * part[c]
            b += w
        return s * b

    none = {c: D(1) for c in conditions}
    all_prior = sum_all(none, f=none)
    share = num(know["nothingWrongShare"]) * (DEAD if state == "dead" else 1)
    empty_weight = share * (all_prior - 1) / (1 - share)

    # Each present finding: K - K N. Each absent one: 1 - K + K N, which is N where nothing suppresses it.
    choices = [[(f, 1, True, False), (f, -1, True, True)] for f in present]
    for f in absent:
        if any(keep(c, f) < 1 for c in conditions): choices.append([(f, 1, False, False), (f, -1, True, False), (f, 1, True, True)])
        else: choices.append([(f, 1, False, True)])
    wanted = [None, *conditions]
    sums = {w: D(0) for w in wanted}
    empty = D(0)
    gates = {f: touched(f) for f in present + absent}
    for choice in itertools.product(*choices):
        sign, leak = D(1), D(1)
        part = {c: D(1) for c in conditions}
        groups = {}
        for f, s, kept, uncaused in choice:
            sign *= s
            if kept:
                for c in conditions: part[c] *= keep(c, f)
            if uncaused: groups.setdefault(findings[f]["group"] if findings[f]["group"] not in EXCLUSIVE_GROUPS else f, []).append(f)
        for members in groups.values():
            e0, e = gates[members[0]]
            inner = D(1)
            for f in members: inner *= 1 - healthy[f] / e0
            leak *= 1 - e0 + e0 * inner
            for c in conditions:
                inner = D(1)
                for f in members: inner *= 1 - link(c, f) / e[c]
                part[c] *= 1 - e[c] + e[c] * inner
        empty += sign * leak
        for w in wanted: sums[w] += sign * leak * sum_all(part, w)
    total = sums[None] + (empty_weight - 1) * empty
    return {"nothingWrong": float(empty_weight * empty / total), "posterior": {c: float(sums[c] / total) for c in conditions}}


cases = json.loads((here / "cases.json").read_text())["cases"]
print(json.dumps({"note": "Made by reckon.py; tolerance 1e-9.", "knowledge": know["version"],
                  "cases": {case["id"]: posterior(case["input"]) for case in cases}}, indent=1))
