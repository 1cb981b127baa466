# Efficacy and the comparison of two groups. Wald limits come from regressions, score limits from likelihoods under a bond.
tight <- list(epsilon = 1e-15, maxit = 500)
koopman <- function(a, n1, b, n2, level) {
  distance <- function(t) {
    p2 <- zero(function(p) (a + b) / p - t * (n1 - a) / (1 - t * p) - (n2 - b) / (1 - p), 1e-300, min(1, 1 / t) * (1 - 1e-15))
    p1 <- t * p2
    (a - n1 * p1)^2 / (n1 * p1 * (1 - p1)) + (b - n2 * p2)^2 / (n2 * p2 * (1 - p2)) - qchisq(level, 1)
  }
  ratio <- a / n1 / (b / n2)
  c(if (a == 0) 0 else zero(distance, ratio / 50, ratio), zero(distance, max(ratio, 1e-9), max(ratio * 50, 5)))
}
second("abbott", "glm (log link), uniroot", function(i) {
  more <- if (i$treated_alive == 0) 0.5 else 0
  x <- c(i$control_alive, i$treated_alive) + more
  n <- c(i$control_n, i$treated_n) + more
  fit <- suppressWarnings(glm(cbind(x, n - x) ~ factor(0:1), family = binomial("log"), start = c(log(x[1] / n[1]), log(x[2] / n[2] / (x[1] / n[1]))), control = tight))
  ratio <- coef(summary(fit))[2, 1:2]
  katz <- 100 * (1 - exp(ratio[1] + c(1, -1) * qnorm((1 + conf(i)) / 2) * ratio[2]))
  score <- 100 * (1 - koopman(i$treated_alive, i$treated_n, i$control_alive, i$control_n, conf(i)))
  list(katz_lo_pct = katz[1], katz_hi_pct = katz[2], koopman_lo_pct = score[2], koopman_hi_pct = score[1])
})
change <- function(fit, level) {
  at <- coef(summary(fit))["treated:after", 1:2]
  c(list(se_log = at[[2]], efficacy_pct = 100 * (1 - exp(at[[1]]))), as.list(100 * (1 - exp(at[[1]] + c(1, -1) * qnorm((1 + level) / 2) * at[[2]]))))
}
second("henderson_tilton", "glm (poisson)", function(i) {
  d <- data.frame(y = c(i$Cb, i$Ca, i$Tb, i$Ta), treated = c(0, 0, 1, 1), after = c(0, 1, 0, 1))
  setNames(change(glm(y ~ treated * after, poisson, d, control = tight), conf(i)), c("se_log", "efficacy_pct", "poisson_lo_pct", "poisson_hi_pct"))
})
second("henderson_tilton_prevalence", "glm (log link)", function(i) {
  d <- data.frame(x = c(i$yb, i$ya, i$xb, i$xa), n = c(i$mb, i$ma, i$nb, i$na), treated = c(0, 0, 1, 1), after = c(0, 1, 0, 1))
  l <- log(d$x / d$n)
  start <- c(l[1], l[3] - l[1], l[2] - l[1], l[4] - l[3] - l[2] + l[1])
  fit <- glm(cbind(x, n - x) ~ treated * after, binomial("log"), d, start = start, control = tight)
  setNames(change(fit, conf(i)), c("se_log", "efficacy_pct", "lo_pct", "hi_pct"))
})
second("fisher_all", "fisher.test, dhyper", function(i) {
  table <- matrix(c(i$a, i$c, i$b, i$d), 2)
  p <- function(side) fisher.test(table, alternative = side)$p.value
  own <- dhyper(i$a, i$a + i$b, i$c + i$d, i$a + i$c)
  list(
    less = p("less"), greater = p("greater"), two_sided = p("two.sided"),
    midp_less = p("less") - own / 2, midp_greater = p("greater") - own / 2, midp_two_sided_double = 2 * (min(p("less"), p("greater")) - own / 2)
  )
})
# Both tests of a table with free margins: the largest chance, over the common share, of tables as extreme.
second("unconditional_2x2", "fisher.test, dbinom, optimize", function(i) {
  n1 <- i$a + i$b
  n2 <- i$c + i$d
  all <- expand.grid(x = 0:n1, y = 0:n2)
  pooled <- (all$x + all$y) / (n1 + n2)
  score <- (all$x / n1 - all$y / n2) / sqrt(pooled * (1 - pooled) * (1 / n1 + 1 / n2))
  score[is.nan(score)] <- 0
  fisher <- phyper(all$x, n1, n2, all$x + all$y)
  own <- which(all$x == i$a & all$y == i$c)
  largest <- function(extreme) {
    chance <- function(share) sum((dbinom(all$x, n1, share) * dbinom(all$y, n2, share))[extreme])
    start <- which.max(vapply(1:999 / 1000, chance, 0)) / 1000
    optimize(chance, start + c(-0.001, 0.001), maximum = TRUE, tol = 1e-12)$objective
  }
  less <- function(statistic) statistic <= statistic[own] + 1e-12
  list(barnard_stat = score[own], barnard_p = largest(less(score)), boschloo_stat = fisher[own], boschloo_p = largest(less(fisher)))
})
second("power_two_prop_exact", "fisher.test, dbinom", function(i) {
  p <- outer(0:i$n1, 0:i$n2, Vectorize(function(x, y) fisher.test(matrix(c(x, y, i$n1 - x, i$n2 - y), 2))$p.value))
  list(power = sum(outer(dbinom(0:i$n1, i$n1, i$p1), dbinom(0:i$n2, i$n2, i$p2))[p <= given(i$alpha, 0.05) * (1 + 1e-9)]))
})
second("n_two_prop", "power.prop.test", function(i) {
  n <- power.prop.test(p1 = i$p1, p2 = i$p2, sig.level = given(i$alpha, 0.05), power = given(i$power, 0.8), tol = 1e-13)$n
  list(n_pooled = n, n_pooled_ceil = ceiling(n))
})
second("mcnemar_all", "binom.test, mcnemar.test", function(i) {
  test <- function(correct) mcnemar.test(matrix(c(9, i$c, i$b, 9), 2), correct = correct)
  exact <- binom.test(i$b, i$b + i$c)$p.value
  list(exact = exact, midp = exact - dbinom(i$b, i$b + i$c, 0.5), chi2 = unname(test(FALSE)$statistic), p_asym = test(FALSE)$p.value, chi2_cc = unname(test(TRUE)$statistic))
})
second("paired_exact", "binom.test, wilcox.test, expand.grid", function(i) {
  d <- num(i$before) - num(i$after)
  tied <- any(duplicated(abs(d)))
  signs <- as.matrix(expand.grid(rep(list(c(-1, 1)), length(d))))
  rank <- if (tied) NULL else wilcox.test(d, exact = TRUE)
  list(
    sign_two_sided = binom.test(sum(d > 0), sum(d != 0))$p.value,
    wilcoxon_exact = if (tied) NA else rank$p.value,
    permutation_mean_two_sided = mean(abs(signs %*% abs(d)) >= abs(sum(d)) - 1e-9)
  )
})
second("risk_difference_ci", "prop.test, uniroot", function(i) {
  x <- c(i$x1, i$x2)
  n <- c(i$n1, i$n2)
  p <- x / n
  own <- rbind(wilson(x[1], n[1], conf(i)), wilson(x[2], n[2], conf(i)))
  gap <- p[1] - p[2]
  distance <- function(factor) function(d) {
    slope <- function(q) x[1] / (q + d) - (n[1] - x[1]) / (1 - q - d) + x[2] / q - (n[2] - x[2]) / (1 - q)
    q <- zero(slope, max(0, -d) + 1e-14, min(1, 1 - d) - 1e-14)
    (gap - d)^2 / (((q + d) * (1 - q - d) / n[1] + q * (1 - q) / n[2]) * factor) - qchisq(conf(i), 1)
  }
  limits <- function(factor) c(zero(distance(factor), -0.9, gap), zero(distance(factor), gap, 0.9))
  corrected <- limits(sum(n) / (sum(n) - 1))
  plain <- limits(1)
  list(
    newcombe_lo = gap - sqrt((p[1] - own[1, 1])^2 + (own[2, 2] - p[2])^2), newcombe_hi = gap + sqrt((own[1, 2] - p[1])^2 + (p[2] - own[2, 1])^2),
    miettinen_nurminen_lo = corrected[1], miettinen_nurminen_hi = corrected[2], mee_lo = plain[1], mee_hi = plain[2]
  )
})
