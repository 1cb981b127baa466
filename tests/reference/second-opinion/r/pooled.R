# Pools: several bees in one test. Derivatives are R's own, taken from the formula of a pool's chance.
pool_chance <- quote(1 - (1 - p)^m)
pool_slope <- D(pool_chance, "p")
pool_bend <- D(pool_slope, "p")
pool_at <- function(p, x, m, n) {
  at <- list(p = p, m = m)
  chance <- eval(pool_chance, at)
  slope <- eval(pool_slope, at)
  spread <- chance * (1 - chance)
  information <- sum(n * slope^2 / spread)
  list(
    score = sum((x - n * chance) * slope / spread), information = information,
    skew = sum(n * (slope / spread)^3 * spread * (1 - 2 * chance)) / information^1.5,
    bias = -sum(n * slope * eval(pool_bend, at) / spread) / (2 * information^2)
  )
}
equal_pools <- function(x, n, m, level) {
  each <- function(limits) 1 - (1 - limits)^(1 / m)
  by <- list(clopper_pearson = clopper, wilson = wilson, jeffreys = jeffreys, blaker = blaker, midp = mid_p)
  limits <- lapply(by, function(interval) each(interval(x, n, level)))
  c(setNames(lapply(limits, `[`, 1), paste0(names(by), "_lo")), setNames(lapply(limits, `[`, 2), paste0(names(by), "_hi")))
}
second("pooled_prevalence", "glm (cloglog), D, binom.test, prop.test, qbeta, uniroot", function(i) {
  x <- num(i$x)
  m <- num(i$m)
  n <- num(i$n)
  level <- conf(i)
  equal <- if (length(unique(m)) == 1) equal_pools(sum(x), sum(n), m[1], level) else list()
  if (sum(x) == 0) return(equal)
  fit <- glm(cbind(x, n - x) ~ 1, offset = log(m), family = binomial("cloglog"), control = list(epsilon = 1e-15, maxit = 200))
  mle <- unname(1 - exp(-exp(coef(fit))))
  at <- function(p) pool_at(p, x, m, n)
  z <- qnorm((1 + level) / 2)
  score <- function(p) with(at(p), score / sqrt(information))
  skewed <- function(p) score(p) - at(p)$skew * (z^2 - 1) / 6
  log_likelihood <- function(p) sum(dbinom(x, n, 1 - (1 - p)^m, log = TRUE))
  fall <- function(p) 2 * (log_likelihood(mle) - log_likelihood(p)) - qchisq(level, 1)
  far <- mle * 5 # beyond any upper limit of the cases, before the score turns back
  c(equal, list(
    mle = mle, se_mle = at(mle)$information^-0.5, gart = mle - at(mle)$bias,
    firth = zero(function(p) with(at(p), score - information * bias), mle / 100, far),
    score_lo = zero(function(p) score(p) - z, mle / 100, mle), score_hi = zero(function(p) score(p) + z, mle, far),
    skew_score_lo = zero(function(p) skewed(p) - z, mle / 100, mle), skew_score_hi = zero(function(p) skewed(p) + z, mle, far),
    lrt_lo = zero(fall, mle / 1000, mle), lrt_hi = zero(fall, mle, far)
  ))
})
second("pooled_imperfect", "binom.test", function(i) {
  bee <- function(t) 1 - (1 - pmin(1, pmax(0, (t + i$sp - 1) / (i$se + i$sp - 1))))^(1 / i$m)
  limits <- bee(clopper(i$x, i$n, conf(i)))
  list(p = bee(i$x / i$n), lo = limits[1], hi = limits[2])
})
second("pools_to_detect", "qgeom, pbinom", function(i) {
  chance <- i$se_pool * pbinom(0, i$k, i$p, lower.tail = FALSE)
  pools <- qgeom(conf(i), chance) + 1
  list(pools = pools, prob_detect = pgeom(pools - 1, chance))
})
second("dorfman", "pbinom", function(i) {
  size <- 2:200
  tests <- 1 / size + pbinom(0, size, i$p, lower.tail = FALSE)
  list(pool_size = size[which.min(tests)], tests_per_unit = min(tests))
})
second("pool_design_dilution", "dbinom, qgeom", function(i) {
  size <- 1:100
  chance <- vapply(size, function(k) sum(dbinom(0:k, k, i$p) * -expm1(-i$lam * 0:k / k)), 0)
  pools <- qgeom(i$target, chance) + 1
  cost <- pools * (i$cost_pool + size * i$cost_unit)
  k <- which.min(cost)
  list(k = k, pools = pools[k], cost = cost[k], pool_pos_prob = chance[k])
})
