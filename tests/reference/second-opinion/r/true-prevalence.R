# True prevalence from an imperfect test.
second("rogan_gladen", "binom.test, prop.test, pbinom", function(i) {
  back <- function(limits) pmin(1, pmax(0, (limits + i$sp - 1) / (i$se + i$sp - 1)))
  exact <- back(clopper(i$x, i$n, conf(i)))
  score <- back(wilson(i$x, i$n, conf(i)))
  short <- back(blaker(i$x, i$n, conf(i)))
  list(
    clopper_pearson_lo = exact[1], clopper_pearson_hi = exact[2], wilson_lo = score[1], wilson_hi = score[2],
    blaker_lo = short[1], blaker_hi = short[2]
  )
})
second("rogan_gladen_est_sesp", "deriv", function(i) {
  share <- c(ap = i$x / i$n, se = i$xse / i$nse, sp = i$xsp / i$nsp)
  at <- eval(deriv(~ (ap + sp - 1) / (se + sp - 1), names(share)), as.list(share))
  sd <- sqrt(sum(attr(at, "gradient")^2 * share * (1 - share) / c(i$n, i$nse, i$nsp)))
  list(tp_raw = as.numeric(at), sd = sd, lo_raw = as.numeric(at) - qnorm(0.975) * sd, hi_raw = as.numeric(at) + qnorm(0.975) * sd)
})
# The likelihood at each share, sensitivity and specificity integrated away; then sums over a fine net of shares.
second("bayes_true_prev", "integrate, dbinom, dbeta", function(i) {
  over <- function(prior, fixed, f) {
    if (is.null(prior)) return(f(fixed))
    integrate(function(v) f(v) * dbeta(v, prior[[1]], prior[[2]]), 0, 1, rel.tol = 1e-9)$value
  }
  likelihood <- function(p) over(i$prior_se, i$se, Vectorize(function(se) over(i$prior_sp, i$sp, function(sp) dbinom(i$x, i$n, p * se + (1 - p) * (1 - sp)))))
  prior <- num(given(i$prior_p, list(1, 1)))
  turn <- seq(0, pi / 2, length.out = 1201)
  p <- sin(turn)^2
  weight <- vapply(p, likelihood, 0) * dbeta(p, prior[1], prior[2]) * sin(2 * turn)
  curve <- splinefun(turn, weight)
  mass <- function(from, to, f = function(t) 1) integrate(function(t) curve(t) * f(t), from, to, rel.tol = 1e-11, subdivisions = 500)$value
  all <- mass(0, pi / 2)
  mean <- mass(0, pi / 2, function(t) sin(t)^2) / all
  quantile <- function(share) sin(zero(function(to) mass(0, to) / all - share, 1e-9, pi / 2))^2
  above <- function(share) mass(asin(sqrt(share)), pi / 2) / all
  list(
    mean = mean, sd = sqrt(mass(0, pi / 2, function(t) (sin(t)^2 - mean)^2) / all),
    q025 = quantile(0.025), q50 = quantile(0.5), q975 = quantile(0.975), "P(p>0.05)" = above(0.05), "P(p>0.1)" = above(0.1)
  )
})
