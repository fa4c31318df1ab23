# Distribution functions and quantiles over a grid from the middle to the far tails, by R. Rscript k05_functions.R
here <- dirname(normalizePath(sub('^--file=', '', grep('^--file=', commandArgs(FALSE), value = TRUE))))
q <- function(x) paste0('[', paste(ifelse(is.infinite(x), 'null', formatC(x, digits = 17, format = 'g', width = 1)), collapse = ', '), ']')
rows <- function(g, f) paste0('[', paste(apply(cbind(as.matrix(g), mapply(f, g[[1]], g[[2]], if (length(g) > 2) g[[3]] else 0)), 1, q), collapse = ',\n '), ']')
P <- c(1e-10, 1e-4, .001, .02, .024, .1, .3, .5, .7, .9, .975, .99, .9999, 1 - 1e-9)
out <- c(
  normal = rows(expand.grid(c(-37, -20, -8, -6, -5.7, -5.6, -3, -1.5, -.68, -.67, -.1, 0, .1, .67, .68, 1.5, 3, 5.6, 5.7, 6, 8), 0), function(z, ...) pnorm(z)),
  normal_quantile = rows(data.frame(c(1e-300, 1e-20, 1e-12, 1e-10, .001, .02, .074, .076, .3, .5, .6, .924, .926, .99, 1 - 1e-10), 0), function(p, ...) qnorm(p)),
  t_upper = rows(expand.grid(c(-50, -3, -.5, 0, .2, 1, 2.5, 12, 1e4), c(.5, 1, 2, 7, 30, 1000)), function(t, df, ...) pt(t, df, lower.tail = FALSE)),
  t_quantile = rows(expand.grid(P, c(1, 2, 3, 11, 200)), function(p, df, ...) qt(p, df)),
  f_upper = rows(expand.grid(c(.01, .3, 1, 2.7, 15, 400), c(1, 2, 5, 40), c(1, 3, 18, 250)), function(f, a, b) pf(f, a, b, lower.tail = FALSE)),
  f_quantile = rows(expand.grid(c(.001, .05, .5, .95, .9999), c(1, 3, 12), c(2, 9, 60)), function(p, a, b) qf(p, a, b)),
  chi_upper = rows(expand.grid(c(.001, .4, 1, 3, 9, 20, 80, 300), c(.5, 1, 2, 3, 10, 25, 150)), function(x, df, ...) pchisq(x, df, lower.tail = FALSE)),
  chi_quantile = rows(expand.grid(c(.001, .05, .5, .95, .9999), c(1, 2, 7, 50)), function(p, df, ...) qchisq(p, df)),
  beta = rows(expand.grid(c(.001, .1, .35, .5, .8, .99), c(.5, 1, 3, 20), c(.5, 2, 8, 90)), function(x, a, b) pbeta(x, a, b)),
  beta_quantile = rows(expand.grid(c(.01, .3, .5, .9, .999), c(.7, 2, 15), c(1, 4.5, 30)), function(p, a, b) qbeta(p, a, b)),
  gamma = rows(expand.grid(c(.1, .5, 1, 4, 12, 40, 100), c(.3, 1, 2.5, 11, 45)), function(x, a, ...) pgamma(x, a)),
  log_gamma = rows(data.frame(c(.01, .3, .5, 1, 1.5, 2, 3.3, 7, 11.9, 12, 12.1, 100, 1e5), 0), function(z, ...) lgamma(z)),
  binomial = rows(expand.grid(c(0, 1, 3, 7, 11), c(12, 30), c(.02, .3, .5, .97)), function(k, n, p) pbinom(k, n, p)),
  binomial_quantile = rows(expand.grid(c(.01, .3, .5, .95), c(1, 12, 30), c(.02, .3, .5, .97)), function(p, n, s) qbinom(p, n, s)))
writeLines(paste0('{"case": "k05_functions", "software": "', R.version.string, '", "results": {', paste0('"', names(out), '": ', out, collapse = ',\n'), '}}'), file.path(here, 'k05_functions.json'))
