# Mites per bee.
careful_count <- glm.control(epsilon = 1e-13, maxit = 1000)
second("negbin_fit", "MASS::glm.nb, dnbinom, pchisq", function(i) {
  y <- rep(num(i$counts), num(i$freq))
  m <- mean(y)
  fit <- suppressWarnings(glm.nb(y ~ 1, control = careful_count))
  index <- (length(y) - 1) * var(y) / m
  list(
    n = length(y), mean = exp(unname(coef(fit))), var = var(y), index_dispersion = index, p_dispersion = pchisq(index, length(y) - 1, lower.tail = FALSE),
    k_ml = fit$theta, se_k = fit$SE.theta, loglik = as.numeric(logLik(fit)), loglik_poisson = as.numeric(logLik(glm(y ~ 1, poisson))),
    k_zero_term = zero(function(k) dnbinom(0, size = k, mu = m) - mean(y == 0), 1e-3, 1e3),
    prevalence_from_mean_k = pnbinom(0, size = fit$theta, mu = m, lower.tail = FALSE)
  )
})
second("prevalence_abundance", "pnbinom, ppois", function(i) {
  poisson <- ppois(0, i$mean, lower.tail = FALSE)
  found <- if (is.null(i$k)) poisson else pnbinom(0, size = i$k, mu = i$mean, lower.tail = FALSE)
  list(prevalence = found, intensity = i$mean / found, poisson_prevalence = poisson)
})
second("abundance_from_prevalence", "pnbinom, uniroot", function(i) list(mean = zero(function(m) pnbinom(0, size = i$k, mu = m, lower.tail = FALSE) - i$P, 1e-6, 1e6)))
second("negbin_glm", "MASS::glm.nb", function(i) {
  X <- do.call(rbind, lapply(i$X, num))
  fit <- glm.nb(num(i$y) ~ 0 + X, control = careful_count)
  list(beta = unname(coef(fit)), se = unname(coef(summary(fit))[, 2]), theta = fit$theta, loglik = as.numeric(logLik(fit)))
})
