# Shares that differ between colonies.
suppressMessages({ library(VGAM); library(survey) })
second("betabinomial_fit", "VGAM::vglm, VGAM::dbetabinom, optimHess", function(i) {
  d <- data.frame(x = num(i$x), n = num(i$n))
  fit <- vglm(cbind(x, n - x) ~ 1, betabinomial(lmu = "logitlink", lrho = "logitlink"), data = d, epsilon = 1e-13, maxit = 200)
  at <- coef(fit)
  minus <- function(t) -sum(dbetabinom(d$x, d$n, plogis(t[1]), plogis(t[2]), log = TRUE))
  se <- unname(sqrt(diag(solve(optimHess(at, minus)))))
  single <- sum(dbinom(d$x, d$n, sum(d$x) / sum(d$n), log = TRUE))
  ratio <- 2 * (-minus(at) - single)
  fall <- function(u) 2 * (optimize(function(v) minus(c(u, v)), c(-15, 6), tol = 1e-10)$objective - minus(at)) - qchisq(0.95, 1)
  list(
    mu = plogis(at[[1]]), rho = plogis(at[[2]]), loglik = as.numeric(logLik(fit)), loglik_binomial = single,
    logit_mu = at[[1]], logit_rho = at[[2]], se_logit_mu = se[1], se_logit_rho = se[2],
    mu_profile_lo = plogis(zero(fall, at[[1]] - 10 * se[1], at[[1]])), mu_profile_hi = plogis(zero(fall, at[[1]], at[[1]] + 10 * se[1])),
    lr_overdispersion = ratio, p_half_chi2 = pchisq(ratio, 1, lower.tail = FALSE) / 2
  )
})
bee_by_bee <- function(i) {
  x <- num(i$x)
  n <- num(i$n)
  data.frame(colony = factor(rep(seq_along(n), n)), y = unlist(Map(function(x, n) rep(1:0, c(x, n - x)), x, n)))
}
second("icc_anova", "anova, chisq.test", function(i) {
  d <- bee_by_bee(i)
  mean_square <- anova(lm(y ~ colony, d))[["Mean Sq"]]
  unlike <- suppressWarnings(chisq.test(rbind(num(i$x), num(i$n) - num(i$x)), correct = FALSE))
  list(p = mean(d$y), msb = mean_square[1], msw = mean_square[2], pearson_chi2 = unname(unlike$statistic), df = unname(unlike$parameter))
})
second("cluster_prevalence_ci", "survey::svyratio, svyciprop; t.test", function(i) {
  d <- bee_by_bee(i)
  ratio <- svyratio(~x, ~n, svydesign(ids = ~id, weights = ~1, data = data.frame(x = num(i$x), n = num(i$n), id = seq_along(i$x))))
  design <- svydesign(ids = ~colony, weights = ~1, data = d)
  limits <- function(method) as.numeric(confint(svyciprop(~y, design, method = method)))
  se <- unname(SE(ratio)[1])
  deff <- se^2 / (mean(d$y) * (1 - mean(d$y)) / nrow(d))
  effective <- wilson(sum(d$y) / deff, nrow(d) / deff, 0.95)
  colony <- t.test(num(i$x) / num(i$n))
  list(
    p = unname(coef(ratio)), se_ratio = se, deff = deff, wald_t_lo = limits("mean")[1], wald_t_hi = limits("mean")[2],
    logit_t_lo = limits("logit")[1], logit_t_hi = limits("logit")[2],
    wilson_neff_lo = effective[1], wilson_neff_hi = effective[2],
    korn_graubard_lo = limits("beta")[1], korn_graubard_hi = limits("beta")[2],
    colony_mean = unname(colony$estimate), colony_mean_t_lo = colony$conf.int[1], colony_mean_t_hi = colony$conf.int[2]
  )
})
