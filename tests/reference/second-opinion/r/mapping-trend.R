# Rates over areas, trends over time, and places that differ.
suppressMessages({ library(spdep); library(lme4); library(MASS) })
second("eb_marshall_global", "spdep::EBest", function(i) {
  found <- EBest(num(i$y), num(i$n))
  list(m = attr(found, "parameters")$b, A = attr(found, "parameters")$a, rate = found$raw, eb = found$estmm)
})
second("eb_marshall_local", "spdep::EBlocal", function(i) {
  near <- lapply(i$nb, function(v) if (length(v) == 0) 0L else as.integer(unlist(v)) + 1L)
  class(near) <- "nb"
  by <- function(focal) EBlocal(num(i$y), num(i$n), near, zero.policy = TRUE, geoda = focal)$est
  list(eb_own_mean = by(FALSE), eb_focal_mean = by(TRUE))
})
second("cochran_armitage", "prop.trend.test", function(i) {
  found <- prop.trend.test(num(i$x), num(i$n), num(i$score))
  list(chi2 = unname(found$statistic), p = unname(found$p.value))
})
second("eb_clayton_kaldor", "MASS::glm.nb", function(i) {
  y <- num(i$y)
  e <- num(i$e)
  fit <- glm.nb(y ~ 1 + offset(log(e)), control = glm.control(epsilon = 1e-13, maxit = 500))
  rate <- fit$theta / exp(unname(coef(fit)))
  list(ml_nu = fit$theta, ml_alpha = rate, ml_eb = (y + fit$theta) / (e + rate), loglik = as.numeric(logLik(fit)))
})
second("logistic_random_intercept", "lme4::glmer, 25 nodes", function(i) {
  d <- data.frame(x = num(i$x), n = num(i$n), place = unlist(i$group))
  d$X <- do.call(rbind, lapply(i$X, num))
  careful <- glmerControl(optimizer = "bobyqa", optCtrl = list(rhobeg = 0.02, rhoend = 1e-9, maxfun = 2e5))
  fit <- suppressWarnings(glmer(cbind(x, n - x) ~ 0 + X + (1 | place), d, binomial, nAGQ = 25, control = careful))
  # With several nodes lme4 counts the log-likelihood from that of a model with one share for each row.
  saturated <- sum(dbinom(d$x, d$n, d$x / d$n, log = TRUE))
  list(
    beta = unname(fixef(fit)), se = unname(sqrt(diag(as.matrix(vcov(fit))))), sigma = as.data.frame(VarCorr(fit))$sdcor[1],
    loglik = as.numeric(logLik(fit)) + saturated
  )
})
