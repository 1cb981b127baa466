# Computes the kept reference cases a second time, with R and its packages. Usage: Rscript run.R
suppressMessages(library(jsonlite))
here <- dirname(normalizePath(sub("^--file=", "", grep("^--file=", commandArgs(), value = TRUE))))
methods <- list()

# A topic's file states for a method which routines of R are asked, and how they answer one case.
second <- function(name, by, answer) methods[[name]] <<- list(by = by, answer = answer)
num <- function(x) as.numeric(unlist(x))
given <- function(x, otherwise) if (is.null(x)) otherwise else x
conf <- function(i) given(i$conf, 0.95)
zero <- function(f, from, to) uniroot(f, c(from, to), tol = 1e-16, maxiter = 1000)$root
for (file in list.files(file.path(here, "r"), "[.]R$", full.names = TRUE)) source(file)

# Every single value, or row of numbers, by its path inside the answer; places in a list count from 0.
flat <- function(x, path) {
  if (!is.list(x)) return(list(list(field = path, value = x)))
  names <- if (is.null(names(x))) seq_along(x) - 1 else names(x)
  do.call(c, Map(function(each, name) flat(each, paste(c(path, name), collapse = ".")), unname(x), names))
}
opinion <- function(case) {
  method <- methods[[case$method]]
  if (is.null(method)) return(list())
  lapply(flat(method$answer(case$input), NULL), function(each) c(list(id = case$id), each, list(by = method$by)))
}
packages <- c("VGAM", "lme4", "MASS", "spdep", "survey", "vcd", "jsonlite")
versions <- lapply(setNames(packages, packages), function(name) as.character(packageVersion(name)))
writeLines(trimws(toJSON(list(R = as.character(getRversion()), packages = versions), auto_unbox = TRUE, pretty = 2)), file.path(here, "versions.json"))

line <- function(x) toJSON(x, auto_unbox = TRUE, digits = NA, na = "null")
for (file in list.files(file.path(here, "..", "values"), "json$", full.names = TRUE)) {
  cases <- fromJSON(file, simplifyVector = FALSE)$cases
  lines <- vapply(do.call(c, lapply(cases, opinion)), line, "")
  writeLines(c("[", paste0(lines, c(rep(",", length(lines) - 1), "")), "]"), file.path(here, "values", basename(file)))
  cat(basename(file), length(lines), "values\n")
}
