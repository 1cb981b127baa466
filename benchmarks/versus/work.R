# The pieces of work in R. Usage: Rscript work.R NAME INPUT.json; prints seconds of the fastest warm run and the answer.
suppressMessages(library(jsonlite))
lines_of <- function(p0, p1, a, b) {
  d <- log(p1 * (1 - p0) / (p0 * (1 - p1)))
  list(s = log((1 - p0) / (1 - p1)) / d, low = log(b / (1 - a)) / d, high = log((1 - b) / a) / d)
}
plan <- function(i) {
  l <- lines_of(0.05, 0.15, 0.1, 0.1)
  total <- c(0, 0)
  for (p in i$shares) {
    chance <- 1
    x <- 0
    for (n in 1:i$maxBees) {
      chance <- c(chance * (1 - p), 0) + c(0, chance * p)
      x <- c(x, x[length(x)] + 1)
      low <- x <= l$low + l$s * n + 1e-12
      stop <- low | x >= l$high + l$s * n - 1e-12
      total <- total + c(sum(chance[low]), n * sum(chance[stop]))
      chance <- chance[!stop]
      x <- x[!stop]
      if (length(x) == 0) break
    }
    total <- total + c(sum(chance[x <= l$s * i$maxBees + 1e-12]), i$maxBees * sum(chance))
  }
  total
}
three_way <- function(i) {
  tests <- list(lines_of(0.05, 0.15, 0.1, 0.1), lines_of(0.25, 0.4, 0.1, 0.1))
  says <- function(l, n, x) ifelse(x <= l$low + l$s * n + 1e-12, 1, ifelse(x >= l$high + l$s * n - 1e-12, 2, 0))
  total <- c(0, 0)
  for (p in i$shares) {
    # One column for each pair of what the tests have said: 3 a + b + 1.
    chance <- matrix(0, i$maxBees + 2, 9)
    chance[1, 1] <- 1
    for (n in 1:i$maxBees) {
      reached <- 0:n
      moved <- chance * (1 - p) + rbind(0, chance[-nrow(chance), ] * p)
      chance[] <- 0
      new <- lapply(tests, says, n, reached)
      if (n == i$maxBees) new <- Map(function(say, l) ifelse(say == 0, ifelse(reached <= l$s * n + 1e-12, 1, 2), say), new, tests)
      for (a in 0:2) for (b in 0:2) {
        if (a > 0 && b > 0) next
        mass <- moved[reached + 1, 3 * a + b + 1]
        if (!any(mass > 0)) next
        first <- if (a > 0) rep(a, n + 1) else new[[1]]
        second <- if (b > 0) rep(b, n + 1) else new[[2]]
        done <- first > 0 & second > 0
        total <- total + c(sum(mass[done & first == 2 & second == 1]), n * sum(mass[done]))
        at <- cbind(reached + 1, 3 * first + second + 1)[!done, , drop = FALSE]
        chance[at] <- chance[at] + mass[!done]
      }
    }
  }
  total
}
beta_binomial <- function(i) {
  suppressMessages(library(VGAM))
  fit <- vglm(cbind(positive, examined - positive) ~ 1, betabinomial(lmu = "logitlink", lrho = "logitlink"), data = i)
  unname(Coef(fit))
}
all_sets <- function(i) {
  sets <- as.matrix(expand.grid(rep(list(0:1), length(i$prior))))
  weight <- exp(sets %*% qlogis(i$prior))
  found <- c(i$present, i$absent) + 1
  absent <- exp(sets %*% log1p(-i$link[, found]))
  for (k in seq_along(found)) {
    none <- (1 - i$leak[found[k]]) * absent[, k]
    weight <- weight * if (k <= length(i$present)) 1 - none else none
  }
  drop(crossprod(sets, weight)) / sum(weight)
}
expanded <- function(i) {
  total <- 0
  each <- numeric(length(i$prior))
  for (bits in 0:(2^length(i$present) - 1)) {
    chosen <- c(i$present[bitwAnd(bits, 2^(seq_along(i$present) - 1)) > 0], i$absent) + 1
    odds <- i$prior * apply(1 - i$link[, chosen, drop = FALSE], 1, prod)
    all <- odds + 1 - i$prior
    sign <- (-1)^(length(chosen) - length(i$absent)) * prod(1 - i$leak[chosen]) * prod(all)
    total <- total + sign
    each <- each + sign * odds / all
  }
  each / total
}
finite_sizes <- function(i) {
  few <- rep(0, nrow(i))
  enough <- i$population
  while (any(enough - few > 1)) {
    middle <- floor((few + enough) / 2)
    fits <- phyper(0, i$infested, i$population - i$infested, middle) <= 0.05 * (1 + 1e-12)
    enough <- ifelse(fits, middle, enough)
    few <- ifelse(fits, few, middle)
  }
  sum(enough)
}
survey <- function(i) {
  n <- 1
  repeat {
    cut <- qbinom(0.95, n, 1 - i$specificity) + 1
    infested <- 0:min(n, i$infested)
    weight <- dhyper(infested, i$infested, i$population - i$infested, n)
    missed <- 0
    for (true in 0:(cut - 1)) missed <- missed + sum(weight * dbinom(true, infested, i$sensitivity) * pbinom(cut - 1 - true, n - infested, 1 - i$specificity))
    if (missed <= 0.05) return(c(n, cut, 1 - missed))
    n <- n + 1
  }
}
# Gauss's nodes and weights for a beta distribution, by the eigenvalues of its recurrence.
beta_rule <- function(a, b, k) {
  at <- 0:(k - 1)
  s <- a + b
  middle <- c(a / s, (1 + (a - b) * (s - 2) / ((2 * at[-1] + s - 2) * (2 * at[-1] + s))) / 2)
  j <- seq_len(k - 1)
  beside <- sqrt(j * (j + a - 1) * (j + b - 1) * (j + s - 2) / ((2 * j + s - 3) * (2 * j + s - 2)^2 * (2 * j + s - 1)))
  beside[1] <- sqrt(a * b / (s^2 * (s + 1)))
  m <- diag(middle)
  m[cbind(j, j + 1)] <- m[cbind(j + 1, j)] <- beside
  e <- eigen(m, symmetric = TRUE)
  list(node = e$values, weight = e$vectors[1, ]^2)
}
bayes <- function(i) {
  t <- (1:6000 - 0.5) / 6000
  p <- sin(pi * t / 2)^2
  se <- beta_rule(i$sensitivity[1], i$sensitivity[2], 24)
  sp <- beta_rule(i$specificity[1], i$specificity[2], 24)
  likelihood <- 0
  for (j in 1:24) for (k in 1:24) {
    likelihood <- likelihood + se$weight[j] * sp$weight[k] * dbinom(i$positive, i$examined, p * se$node[j] + (1 - p) * (1 - sp$node[k]))
  }
  mass <- likelihood * sin(pi * t)
  mass <- mass / sum(mass)
  quantile <- function(u) approx(c(0, cumsum(mass)), sin(pi * 0:6000 / 12000)^2, u, ties = "ordered")$y
  c(sum(mass * p), quantile(c(0.025, 0.5, 0.975)))
}
unconditional <- function(i) {
  n1 <- i$a + i$b
  n2 <- i$c + i$d
  all <- expand.grid(x = 0:n1, y = 0:n2)
  pooled <- (all$x + all$y) / (n1 + n2)
  score <- (all$x / n1 - all$y / n2) / sqrt(pooled * (1 - pooled) * (1 / n1 + 1 / n2))
  score[is.nan(score)] <- 0
  fisher <- phyper(all$x, n1, n2, all$x + all$y)
  own <- which(all$x == i$a & all$y == i$c)
  largest <- function(extreme) {
    x <- all$x[extreme]
    y <- all$y[extreme]
    chance <- function(share) sum(dbinom(x, n1, share) * dbinom(y, n2, share))
    grid <- 1:199 / 200
    start <- grid[which.max(vapply(grid, chance, 0))]
    optimize(chance, start + c(-0.005, 0.005), maximum = TRUE, tol = 1e-9)$objective
  }
  c(largest(score <= score[own] + 1e-10), largest(fisher <= fisher[own] * (1 + 1e-10)))
}
power_of <- function(i) {
  n <- i$size
  first <- dbinom(0:n, n, i$first)
  second <- dbinom(0:n, n, i$second)
  power <- 0
  for (k in 0:(2 * n)) {
    x <- max(0, k - n):min(k, n)
    law <- dhyper(x, n, n, k)
    p <- vapply(law, function(own) sum(law[law <= own * (1 + 1e-7)]), 0)
    rejected <- p <= 0.05 * (1 + 1e-9)
    power <- power + sum(first[x[rejected] + 1] * second[k - x[rejected] + 1])
  }
  power
}
blaker <- function(i) {
  accepts <- function(x, n, p) {
    upper <- pbinom(x - 1, n, p, lower.tail = FALSE)
    lower <- pbinom(x, n, p)
    if (upper < lower) upper + pbinom(qbinom(upper, n, p) - 1, n, p) >= 0.05
    else lower + pbinom(qbinom(lower, n, p, lower.tail = FALSE), n, p, lower.tail = FALSE) >= 0.05
  }
  limit <- function(x, from, to) {
    # Inwards by ten-thousandths, then halved: as exact as the grid is fine enough for the gaps.
    step <- sign(to - from) * 1e-4
    if (accepts(x, i$n, from)) return(from)
    while (!accepts(x, i$n, from + step)) from <- from + step
    ends <- c(from, from + step)
    for (round in 1:40) ends[1 + accepts(x, i$n, mean(ends))] <- mean(ends)
    ends[2]
  }
  covers <- function(x) {
    outer <- c(if (x == 0) 0 else qbeta(0.025, x, i$n - x + 1), if (x == i$n) 1 else qbeta(0.975, x + 1, i$n - x))
    low <- if (x == 0) 0 else limit(x, outer[1], x / i$n)
    high <- if (x == i$n) 1 else limit(x, outer[2], x / i$n)
    low <= i$p && i$p <= high
  }
  sum(dbinom(0:i$n, i$n, i$p)[vapply(0:i$n, covers, NA)])
}
evsi <- function(i) {
  now <- min(i$cost, i$loss * i$a / (i$a + i$b))
  total <- 0
  for (n in i$sizes) {
    x <- 0:n
    chance <- exp(lchoose(n, x) + lbeta(x + i$a, n - x + i$b) - lbeta(i$a, i$b))
    total <- total + now - sum(chance * pmin(i$cost, i$loss * (i$a + x) / (i$a + i$b + n)))
  }
  total
}
near_of <- function(i) structure(lapply(i$neighbours, function(v) as.integer(v) + 1L), class = "nb")
local_rates <- function(i) sum(spdep::EBlocal(i$cases, i$population, near_of(i), geoda = TRUE)$est)
random_intercept <- function(i) {
  i$X <- do.call(rbind, i$covariates)
  fit <- lme4::glmer(cbind(positive, examined - positive) ~ 0 + X + (1 | group), i, binomial, nAGQ = 25)
  c(unname(lme4::fixef(fit)), attr(lme4::VarCorr(fit)$group, "stddev")[[1]])
}
works <- list(
  "plan-one" = list(plan, "plain R"), "plan-many" = list(plan, "plain R"), "plan-long" = list(plan, "plain R"), "three-way" = list(three_way, "plain R"),
  "beta-binomial" = list(beta_binomial, "VGAM::vglm, no limits"), diagnosis = list(all_sets, "plain R"), "diagnosis-expanded" = list(expanded, "plain R"),
  "finite-sizes" = list(finite_sizes, "phyper, all at once"), survey = list(survey, "dhyper, dbinom"), bayes = list(bayes, "dbinom on a net"),
  unconditional = list(unconditional, "dbinom, optimize"), power = list(power_of, "dhyper"), blaker = list(blaker, "pbinom, qbinom"),
  evsi = list(evsi, "lbeta"), "local-rates" = list(local_rates, "spdep::EBlocal"), "random-intercept" = list(random_intercept, "lme4::glmer")
)
arguments <- commandArgs(TRUE)
chosen <- works[[arguments[1]]]
input <- fromJSON(arguments[2])
answer <- suppressWarnings(chosen[[1]](input))
# Processor time, which other work on the machine leaves as it is; short work is timed many at a time.
timed <- function(batch) {
  began <- sum(proc.time()[1:2])
  for (each in seq_len(batch)) suppressWarnings(chosen[[1]](input))
  (sum(proc.time()[1:2]) - began) / batch
}
once <- max(timed(1), 1e-4)
batch <- max(1, ceiling(0.1 / once))
times <- if (once > 1) once else vapply(1:5, function(run) timed(batch), 0)
cat(toJSON(list(seconds = min(times), answer = I(as.numeric(answer)), by = chosen[[2]], version = paste("R", getRversion())), digits = NA, auto_unbox = TRUE))
