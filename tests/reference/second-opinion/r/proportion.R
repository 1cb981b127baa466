# Intervals of a proportion and the limits of a zero.
wilson <- function(x, n, level, correct = FALSE) as.numeric(suppressWarnings(prop.test(x, n, conf.level = level, correct = correct))$conf.int)
clopper <- function(x, n, level) as.numeric(binom.test(x, n, conf.level = level)$conf.int)
jeffreys <- function(x, n, level) {
  tail <- (1 - level) / 2
  c(if (x == 0) 0 else qbeta(tail, x + 0.5, n - x + 0.5), if (x == n) 1 else qbeta(tail, x + 0.5, n - x + 0.5, lower.tail = FALSE))
}
mid_p <- function(x, n, level) {
  above <- function(p) pbinom(x, n, p, lower.tail = FALSE) + dbinom(x, n, p) / 2 - (1 - level) / 2
  below <- function(p) pbinom(x - 1, n, p) + dbinom(x, n, p) / 2 - (1 - level) / 2
  c(if (x == 0) 0 else zero(above, 0, 1), if (x == n) 1 else zero(below, 0, 1))
}
by_likelihood <- function(x, n, level) {
  fall <- function(p) 2 * (dbinom(x, n, x / n, log = TRUE) - dbinom(x, n, p, log = TRUE)) - qchisq(level, 1)
  c(if (x == 0) 0 else zero(fall, 1e-300, x / n), if (x == n) 1 else zero(fall, x / n, 1 - 1e-16))
}
# Blaker's acceptability of p; the limits are looked for inwards from Clopper and Pearson's, then halved down to the last digit.
blaker <- function(x, n, level) {
  accepts <- function(p) {
    upper <- pbinom(x - 1, n, p, lower.tail = FALSE)
    lower <- pbinom(x, n, p)
    size <- if (upper < lower) upper + pbinom(qbinom(upper, n, p) - 1, n, p) else lower + pbinom(qbinom(lower, n, p, lower.tail = FALSE), n, p, lower.tail = FALSE)
    size >= 1 - level
  }
  limit <- function(from, to) {
    grid <- seq(from, to, length.out = 20001)
    first <- which(vapply(grid, accepts, NA))[1]
    if (first == 1) return(from)
    ends <- grid[c(first - 1, first)]
    for (round in 1:60) ends[1 + accepts(mean(ends))] <- mean(ends)
    ends[2]
  }
  outer <- clopper(x, n, level)
  c(if (x == 0) 0 else limit(outer[1], x / n), if (x == n) 1 else limit(outer[2], x / n))
}
ends <- function(interval) function(i) {
  limits <- interval(i$x, i$n, conf(i))
  list(lo = limits[1], hi = limits[2])
}
second("ci_clopper_pearson", "binom.test", ends(clopper))
second("ci_wilson", "prop.test", ends(wilson))
second("ci_wilson_cc", "prop.test", ends(function(x, n, level) wilson(x, n, level, correct = TRUE)))
second("ci_jeffreys", "qbeta", ends(jeffreys))
second("ci_midp", "pbinom, dbinom, uniroot", ends(mid_p))
second("ci_likelihood_ratio", "dbinom, uniroot", ends(by_likelihood))
second("ci_blaker", "pbinom, qbinom", ends(blaker))
second("rule_of_three", "qbeta", function(i) list(
  exact_upper_one_sided = qbeta(conf(i), 1, i$n),
  exact_upper_two_sided = binom.test(0, i$n, conf.level = conf(i))$conf.int[2],
  jeffreys_upper_one_sided = qbeta(conf(i), 0.5, i$n + 0.5)
))
second("zero_of_n_finite", "dhyper", function(i) list(D_max = max(which(dhyper(0, 0:i$N, i$N - 0:i$N, i$n) >= 1 - conf(i))) - 1))
second("coverage_exact", "dbinom, prop.test, qbeta", function(i) {
  interval <- list(ci_wilson = wilson, ci_jeffreys = jeffreys)[[i$ci]]
  holds <- vapply(0:i$n, function(x) { limits <- interval(x, i$n, conf(i)); limits[1] <= i$p && i$p <= limits[2] }, NA)
  list(coverage = sum(dbinom(0:i$n, i$n, i$p)[holds]))
})
