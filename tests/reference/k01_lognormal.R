# Log-normal accelerated failure time model with exact, interval- and right-censored times; R survival::survreg.
# Rscript k01_lognormal.R  -> k01_lognormal.json beside it. Data: survival::veteran cut at day 90 (Kalbfleisch & Prentice
# 1980), whole days taken as intervals of a week back, and as exact.
suppressMessages(library(survival))
a <- commandArgs(FALSE); here <- dirname(normalizePath(sub("^--file=", "", a[grep("^--file=", a)])))
v <- survival::veteran
t <- pmin(v$time, 90); s <- ifelse(v$time <= 90, v$status, 0)
g <- factor(v$celltype)
fit <- function(lo, hi) { f <- survreg(Surv(lo, hi, type = "interval2") ~ g - 1, dist = "lognormal", control = survreg.control(rel.tolerance = 1e-14, maxiter = 500)); V <- f$var[1:4, 1:4]
  list(level = levels(g), location = unname(coef(f)), sigma = f$scale, covariance = unname(V), loglik = f$loglik[2]) }
q <- function(x) formatC(x, digits = 17, format = "g")
arr <- function(x) paste0("[", paste(q(x), collapse = ", "), "]")
txt <- function(r) paste0('{"level": ["', paste(r$level, collapse = '", "'), '"], "location": ', arr(r$location), ', "sigma": ', q(r$sigma), ', "loglik": ', q(r$loglik),
  ', "covariance": [', paste(apply(r$covariance, 1, arr), collapse = ", "), "]}")
ex <- fit(t, ifelse(s == 1, t, NA))
lo <- ifelse(s == 1, pmax(t - 7, 0), t); lo[lo == 0] <- NA
iv <- fit(lo, ifelse(s == 1, t, NA))
writeLines(paste0('{"case": "k01_lognormal", "software": "', R.version.string, ', survival ', packageVersion("survival"), '", "results": {"times": ', arr(t), ', "events": ', arr(s),
  ', "group": ["', paste(g, collapse = '", "'), '"], "exact": ', txt(ex), ', "week": ', txt(iv), '}}'), file.path(here, "k01_lognormal.json"))
