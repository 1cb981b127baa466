"""The pieces of work in Python with NumPy and SciPy. Usage: work.py NAME INPUT.json; prints seconds of the fastest warm run and the answer."""
import itertools, json, math, sys, time
import numpy as np
import scipy
from scipy import optimize, special, stats


def lines_of(p0, p1, a, b):
    d = math.log(p1 * (1 - p0) / (p0 * (1 - p1)))
    return math.log((1 - p0) / (1 - p1)) / d, math.log(b / (1 - a)) / d, math.log((1 - b) / a) / d


def plan(i):
    """Forward recursion over all counts, as one writes it first."""
    s, h0, h1 = lines_of(0.05, 0.15, 0.1, 0.1)
    most, all_low, all_bees = i["maxBees"], 0.0, 0.0
    x = np.arange(most + 2)
    for p in i["shares"]:
        chance = np.zeros(most + 2)
        chance[0] = 1
        for n in range(1, most + 1):
            moved = chance * (1 - p)
            moved[1:] += chance[:-1] * p
            low, high = x <= h0 + s * n + 1e-12, x >= h1 + s * n - 1e-12
            all_low += moved[low].sum()
            all_bees += n * moved[low | high].sum()
            moved[low | high] = 0
            chance = moved
        all_low += chance[x <= s * most + 1e-12].sum()
        all_bees += most * chance.sum()
    return [all_low, all_bees]


def three_way(i):
    """States in a dictionary: count, what either test has said."""
    tests = lines_of(0.05, 0.15, 0.1, 0.1), lines_of(0.25, 0.4, 0.1, 0.1)
    most, moderate, bees = i["maxBees"], 0.0, 0.0
    for p in i["shares"]:
        states = {(0, 0, 0): 1.0}
        for n in range(1, most + 1):
            following = {}
            for (x, *said), weight in states.items():
                for more, chance in ((0, 1 - p), (1, p)):
                    y, now = x + more, list(said)
                    for k, (s, h0, h1) in enumerate(tests):
                        if now[k] == 0:
                            now[k] = 1 if y <= h0 + s * n + 1e-12 else 2 if y >= h1 + s * n - 1e-12 else 0
                        if now[k] == 0 and n == most:
                            now[k] = 1 if y <= s * n + 1e-12 else 2
                    if now[0] and now[1]:
                        moderate += weight * chance if now == [2, 1] else 0
                        bees += n * weight * chance
                    else:
                        key = (y, *now)
                        following[key] = following.get(key, 0) + weight * chance
            states = following
    return [moderate, bees]


def beta_binomial(i):
    """Likelihood by log gamma, simplex then quasi-Newton search, profile limits by nested searches."""
    x, n = (np.array([float(c[k]) for c in i]) for k in ("positive", "examined"))

    def minus(t):
        mu, rho = special.expit(t[0]), special.expit(t[1])
        a, b = mu * (1 - rho) / rho, (1 - mu) * (1 - rho) / rho
        return -(special.betaln(x + a, n - x + b) - special.betaln(a, b)).sum()

    p = x.sum() / n.sum()
    fit = optimize.minimize(minus, [special.logit(p), -2], method="Nelder-Mead", options=dict(xatol=1e-9, fatol=1e-10))
    fit = optimize.minimize(minus, fit.x, method="BFGS")
    reach = stats.chi2.ppf(0.95, 1) / 2

    def fall(u):
        return optimize.minimize_scalar(lambda v: minus([u, v]), bounds=(-15, 6), method="bounded", options=dict(xatol=1e-9)).fun - fit.fun - reach

    se = math.sqrt(fit.hess_inv[0, 0])
    for end in (-1, 1):
        optimize.brentq(fall, *sorted((fit.x[0], fit.x[0] + end * 6 * se)), xtol=1e-10)
    return special.expit(fit.x).tolist()


def all_sets(i):
    prior, link, leak = (np.array(i[k]) for k in ("prior", "link", "leak"))
    k = len(prior)
    sets = (np.arange(2**k)[:, None] >> np.arange(k)) & 1
    weight = np.exp(sets @ special.logit(prior))
    for finding in i["present"] + i["absent"]:
        none = (1 - leak[finding]) * np.exp(sets @ np.log1p(-link[:, finding]))
        weight *= 1 - none if finding in i["present"] else none
    return (weight @ sets / weight.sum()).tolist()


def expanded(i):
    prior, link, leak = (np.array(i[k]) for k in ("prior", "link", "leak"))
    total, each = 0.0, np.zeros(len(prior))
    for size in range(len(i["present"]) + 1):
        for some in itertools.combinations(i["present"], size):
            chosen = list(some) + i["absent"]
            odds = prior * (1 - link[:, chosen]).prod(axis=1)
            both = odds + 1 - prior
            term = (-1) ** size * (1 - leak[chosen]).prod() * both.prod()
            total += term
            each += term * odds / both
    return (each / total).tolist()


def finite_sizes(i):
    """All at once, by halving on log gamma; an exact tie may be lost to rounding."""
    N, D = (np.array([g[k] for g in i]) for k in ("population", "infested"))
    few, enough, g = np.zeros_like(N), N.copy(), special.gammaln
    fixed = g(N - D + 1) - g(N + 1)
    while (enough - few > 1).any():
        middle = (few + enough) // 2
        left = N - D - middle
        log_none = np.where(left >= 0, fixed - g(np.maximum(left, 0) + 1) + g(N - middle + 1), -np.inf)
        fits = log_none <= math.log(0.05) + 1e-12
        enough, few = np.where(fits, middle, enough), np.where(fits, few, middle)
    return [float(enough.sum())]


def survey(i):
    """Larger and larger, each by full convolution."""
    N, D, se, sp = i["population"], i["infested"], i["sensitivity"], i["specificity"]
    for n in range(1, N + 1):
        cut = int(np.argmax(stats.binom.cdf(np.arange(n + 1), n, 1 - sp) >= 0.95)) + 1
        found = np.zeros(n + 1)
        for y in range(min(n, D) + 1):
            both = np.convolve(stats.binom.pmf(np.arange(y + 1), y, se), stats.binom.pmf(np.arange(n - y + 1), n - y, 1 - sp))
            found += stats.hypergeom.pmf(y, N, D, n) * both
        if found[:cut].sum() <= 0.05:
            return [n, cut, 1 - found[:cut].sum()]


def bayes(i):
    def rule(a, b):
        t, w = special.roots_jacobi(24, b - 1, a - 1)
        return (t + 1) / 2, w / w.sum()

    t = (np.arange(6000) + 0.5) / 6000
    p = np.sin(np.pi * t / 2) ** 2
    likelihood = np.zeros(6000)
    for se, v in zip(*rule(*i["sensitivity"])):
        for sp, w in zip(*rule(*i["specificity"])):
            likelihood += v * w * stats.binom.pmf(i["positive"], i["examined"], p * se + (1 - p) * (1 - sp))
    mass = likelihood * np.sin(np.pi * t)
    mass /= mass.sum()
    ends = np.sin(np.pi * np.arange(6001) / 12000) ** 2
    return [float((mass * p).sum()), *np.interp([0.025, 0.5, 0.975], np.concatenate([[0], np.cumsum(mass)]), ends).tolist()]


def unconditional(i):
    table = [[i["a"], i["c"]], [i["b"], i["d"]]]
    both = stats.barnard_exact(table, alternative="less"), stats.boschloo_exact(table, alternative="less")
    return [float(each.pvalue) for each in both]


def power(i):
    n, total = i["size"], 0.0
    first, second = (stats.binom.pmf(np.arange(n + 1), n, i[k]) for k in ("first", "second"))
    for k in range(2 * n + 1):
        x = np.arange(max(0, k - n), min(k, n) + 1)
        law = stats.hypergeom.pmf(x, 2 * n, n, k)
        p = np.array([law[law <= own * (1 + 1e-7)].sum() for own in law])
        some = x[p <= 0.05 * (1 + 1e-9)]
        total += (first[some] * second[k - some]).sum()
    return [float(total)]


def blaker(i):
    """Piece by piece between the places where the opposite tail takes in one count more."""
    n = i["n"]

    def low(x):
        if x == 0:
            return 0.0
        tail = lambda p: float(special.bdtrc(x - 1, n, p))
        places = [(-1, 0.0)]
        for k in range(x):
            gap = lambda p: float(special.bdtr(k, n, p)) - tail(p)
            if gap(1 - 1e-12) > 0:
                break
            places.append((k, optimize.brentq(gap, 1e-14, 1 - 1e-12, xtol=1e-15)))
        start = special.betaincinv(x, n - x + 1, 0.025)
        for (k, at), (_, end) in zip(places, places[1:] + [(None, 1.0)]):
            at = max(at, start)
            if end <= at:
                continue
            size = lambda p: tail(p) + (float(special.bdtr(k, n, p)) if k >= 0 else 0.0)
            if size(at) >= 0.05 * (1 - 1e-13):
                return at
            if size(end * (1 - 1e-13)) >= 0.05:
                return optimize.brentq(lambda p: size(p) - 0.05, at, end, xtol=1e-15)
        return x / n

    x = np.arange(n + 1)
    lows = np.array([low(each) for each in x])
    holds = (lows <= i["p"]) & (i["p"] <= 1 - lows[::-1])
    return [float(stats.binom.pmf(x, n, i["p"])[holds].sum())]


def evsi(i):
    a, b = i["a"], i["b"]
    now, total = min(i["cost"], i["loss"] * a / (a + b)), 0.0
    for n in i["sizes"]:
        x = np.arange(n + 1)
        total += now - (stats.betabinom.pmf(x, n, a, b) * np.minimum(i["cost"], i["loss"] * (a + x) / (a + b + n))).sum()
    return [float(total)]


def local_rates(i):
    y, n = (np.array([float(area[k]) for area in i]) for k in ("cases", "population"))
    total = 0.0
    for k, area in enumerate(i):
        near = [k, *area["neighbours"]]
        m = y[near].sum() / n[near].sum()
        spread = (n[near] * (y[near] / n[near] - m) ** 2).sum() / n[near].sum() - m / n[near].mean()
        weight = max(0.0, spread)
        total += m + (weight / (weight + m / n[k]) if weight > 0 else 0.0) * (y[k] / n[k] - m)
    return [float(total)]


def random_intercept(i):
    """Adaptive Gauss-Hermite quadrature, herd by herd; the search has no derivatives of ours."""
    names = sorted({row["group"] for row in i})
    herds = []
    for name in names:
        rows = [row for row in i if row["group"] == name]
        herds.append(tuple(np.array([row[k] for row in rows], float) for k in ("positive", "examined", "covariates")))
    node, weight = np.polynomial.hermite.hermgauss(25)

    def minus(t):
        beta, sigma, total = t[:-1], math.exp(t[-1]), 0.0
        for y, n, X in herds:
            fixed, mode = X @ beta, 0.0
            for _ in range(50):
                share = special.expit(fixed + sigma * mode)
                bend = 1 + sigma**2 * (n * share * (1 - share)).sum()
                step = (sigma * (y - n * share).sum() - mode) / bend
                mode += step
                if abs(step) < 1e-10:
                    break
            z = mode + math.sqrt(2 / bend) * node
            logit = fixed[:, None] + sigma * z
            value = (y[:, None] * logit - n[:, None] * np.logaddexp(0, logit)).sum(axis=0) - z**2 / 2
            total += special.logsumexp(value + node**2, b=weight) - math.log(bend) / 2
        return -total

    start = np.zeros(len(i[0]["covariates"]) + 1)
    fit = optimize.minimize(minus, start, method="BFGS", options=dict(gtol=1e-6))
    return [*fit.x[:-1].tolist(), math.exp(fit.x[-1])]


WORKS = {
    "plan-one": (plan, "NumPy"), "plan-many": (plan, "NumPy"), "plan-long": (plan, "NumPy"), "three-way": (three_way, "plain Python"),
    "beta-binomial": (beta_binomial, "betaln, minimize"), "diagnosis": (all_sets, "NumPy"), "diagnosis-expanded": (expanded, "NumPy"),
    "finite-sizes": (finite_sizes, "gammaln, all at once"), "survey": (survey, "hypergeom, binom"), "bayes": (bayes, "binom on a net"),
    "unconditional": (unconditional, "barnard_exact, boschloo_exact"), "power": (power, "hypergeom"), "blaker": (blaker, "bdtr, brentq"),
    "evsi": (evsi, "betabinom"), "local-rates": (local_rates, "NumPy"), "random-intercept": (random_intercept, "NumPy, minimize"),
}

chosen, by = WORKS[sys.argv[1]]
with open(sys.argv[2]) as file:
    given = json.load(file)
answer = chosen(given)


def timed(batch):
    """Processor time, which other work on the machine leaves as it is; short work is timed many at a time."""
    began = time.process_time()
    for _ in range(batch):
        chosen(given)
    return (time.process_time() - began) / batch


once = timed(1)
batch = max(1, math.ceil(0.1 / once))
times = [once] if once > 1 else [timed(batch) for _ in range(5)]
print(json.dumps(dict(seconds=min(times), answer=[float(each) for each in answer], by=by, version=f"SciPy {scipy.__version__}")))
