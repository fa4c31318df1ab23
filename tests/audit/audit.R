# An independent second count of a variety trial, in R.
#
#   Rscript audit.R DIR OUT
#
# DIR holds numbered trial folders, OUT receives one <number>.json for each of them. Nothing of the program is read or
# run: the figures come from the tables and from the written rules alone. "A1" ... "C" are the sections of methods.md;
# "rule 1" ... "rule 10" are the additions to them that were given for this audit and that win where the two differ:
#   rule 1 yields of plantings    rule 2 ratio scale      rule 3 blocks     rule 4 fruit numbers    rule 5 difference
#   rule 6 length                 rule 7 first ripe       rule 8 flavour    rule 9 stage two        rule 10 shares
# "Choice:" marks what the rules leave open and what was taken.

suppressMessages({
  library(survival)
  library(mvtnorm)
})

# ---- constants ------------------------------------------------------------------------------------------------------

DRAWS <- 200000                      # simulated next seasons of a class (rule 10)
SCALE <- c(1, 9)                     # the ends of the flavour scale
EXACT <- 1e-12                       # a dispersion below this share of the mean square counts as 0 (A4)
SEASON_PRIOR <- c(0.6, 0.1)          # h^2 = (0.6 sigma_v)^2 + (0.1 A)^2 of the half-normal prior of sigma_w (rule 9)
LOST <- c("disease", "pest", "weak") # losses that can never ripen (A3)

# How each trait goes into stage two: scale of the between-variety prior, dispersion assumed where no season lends one.
STAGE_TWO <- list(
  yield = list(prior = 0.5, assumed = 0.40^2),
  flavour = list(prior = diff(SCALE) / 4, assumed = (diff(SCALE) / 5)^2),
  first_ripe = list(prior = 0.5, assumed = 0.15^2)
)

# ---- small tools ----------------------------------------------------------------------------------------------------

read_table <- function(...) {
  path <- file.path(...)
  if (!file.exists(path)) return(NULL)
  read.csv(path, stringsAsFactors = FALSE, na.strings = c("", "NA"))
}

day <- function(text) as.numeric(as.Date(text))

# A list with one entry for each name, null entries kept.
each <- function(names, make) setNames(lapply(names, make), names)

by_name <- function(values, names) setNames(as.vector(values), names)

json_number <- function(x) if (length(x) != 1 || !is.finite(x)) "null" else sprintf("%.15g", x)

json_text <- function(x) paste0('"', gsub('"', "'", gsub("[\\\\\n\r\t]", " ", x)), '"')

# Named lists become objects, unnamed ones arrays, single values themselves, NULL and NA null.
json <- function(x) {
  if (is.null(x)) return("null")
  if (is.list(x)) {
    inner <- vapply(x, json, "")
    if (is.null(names(x))) return(paste0("[", paste(inner, collapse = ","), "]"))
    keys <- vapply(names(x), json_text, "")
    return(paste0("{", paste(keys, inner, sep = ":", collapse = ","), "}"))
  }
  if (length(x) != 1) stop("only single values and lists can be written")
  if (is.na(x)) "null" else if (is.logical(x)) tolower(x) else if (is.character(x)) json_text(x) else json_number(x)
}

empty_object <- function() setNames(list(), character(0))

# Gauss-Legendre nodes and weights on panels that share the given edges (Golub and Welsch's eigenvalue form).
quadrature <- function(edges, order) {
  i <- seq_len(order - 1)
  jacobi <- matrix(0, order, order)
  jacobi[cbind(i, i + 1)] <- jacobi[cbind(i + 1, i)] <- i / sqrt(4 * i^2 - 1)
  e <- eigen(jacobi, symmetric = TRUE)
  half <- diff(edges) / 2
  middle <- head(edges, -1) + half
  list(at = as.vector(outer(e$values, half) + rep(middle, each = order)),
       weight = as.vector(outer(2 * e$vectors[1, ]^2, half)))
}

# Do the pairs (a, b) hang together as one piece, each value of a and of b being a point and each pair a line?
connected <- function(a, b) {
  a <- as.character(a)
  b <- as.character(b)
  reached_a <- a[1]
  repeat {
    reached_b <- unique(b[a %in% reached_a])
    more <- unique(a[b %in% reached_b])
    if (length(more) == length(reached_a)) break
    reached_a <- more
  }
  all(a %in% reached_a)
}

# ---- reading a trial ------------------------------------------------------------------------------------------------

read_trial <- function(dir) {
  settings <- read_table(dir, "reading.csv")
  value <- by_name(settings$value, settings$setting)
  number <- function(key) as.numeric(value[[key]])
  is_check <- grepl("^check ", names(value))
  varieties <- read_table(dir, "varieties.csv")
  years <- sort(list.files(dir, "^[0-9]{4}$"))
  list(
    scale = value[["scale"]], together = value[["layout"]] == "together", rho = number("spot_correlation"),
    look_every = number("look_every"), level = number("interval"), spots = number("spots"),
    check = by_name(value[is_check], sub("^check ", "", names(value)[is_check])),
    class = by_name(varieties$class, varieties$variety),
    first_grown = by_name(varieties$first_grown, varieties$variety),
    seasons = each(years, function(y) read_season(file.path(dir, y), as.integer(y), varieties))
  )
}

read_season <- function(dir, year, varieties) {
  plantings <- read_table(dir, "plantings.csv")
  plantings$class <- varieties$class[match(plantings$variety, varieties$variety)]
  season <- list(year = year, plantings = plantings, harvests = read_table(dir, "harvests.csv"),
                 looks = read_table(dir, "observations.csv"), ratings = read_table(dir, "ratings.csv"),
                 measurements = read_table(dir, "measurements.csv"))
  season$plantings <- add_yields(season$plantings, season$harvests)
  season$plantings <- add_ripening(season$plantings, season$harvests, season$looks, day(paste0(year, "-10-31")))
  season
}

# Rule 1, A1: grams and fruits of a planting per plant set out; grams are NA where over a quarter is unweighed.
add_yields <- function(plantings, harvests) {
  total <- function(id) {
    h <- harvests[harvests$planting == id, ]
    if (nrow(h) == 0) return(c(0, 0)) # harvests are complete: nothing picked is a zero
    bare <- is.na(h$weight_g)
    a_fruit <- sum(h$weight_g[!bare]) / sum(h$fruits[!bare])
    fruits <- sum(h$fruits)
    grams <- sum(h$weight_g[!bare]) + if (any(bare)) sum(h$fruits[bare]) * a_fruit else 0
    known <- sum(h$fruits[bare]) <= 0.25 * fruits
    c(if (known) grams else NA, fruits)
  }
  sums <- vapply(plantings$planting, total, c(0, 0))
  plantings$grams <- sums[1, ] / plantings$plants
  plantings$fruits <- sums[2, ] / plantings$plants
  plantings
}

# Rule 7, A3: days from transplanting to the first ripe picking, to the last look before it, to the end in the curve
# and in the model, and to the season's end.
add_ripening <- function(plantings, harvests, looks, end) {
  start <- day(plantings$transplanted)
  earliest <- function(id) {
    picked <- day(harvests$date[harvests$planting == id & harvests$stage == "ripe"])
    seen <- day(looks$date[looks$planting == id & looks$event == "first-ripe"])
    if (length(c(picked, seen))) min(picked, seen) else NA_real_
  }
  ripe <- vapply(plantings$planting, earliest, 0)
  last_look <- function(i) {
    seen <- day(looks$date[looks$planting == plantings$planting[i] & looks$event == "unripe"])
    seen <- seen[is.na(ripe[i]) | seen < ripe[i]]
    if (length(seen)) max(seen) else NA_real_
  }
  look <- vapply(seq_along(ripe), last_look, 0)
  gone <- pmin(day(plantings$removed), end, na.rm = TRUE)
  plantings$ripe <- unname(ripe) - start
  plantings$look <- look - start
  plantings$until <- gone - start
  plantings$until_curve <- ifelse(plantings$cause %in% LOST, end, gone) - start
  plantings$whole_season <- end - start
  plantings
}

# ---- the model of one trait in one season ---------------------------------------------------------------------------
#
# Every model is a list: class (of each variety in it), n, mean and covariance on the working scale, back (to the shown
# scale), df, dispersion, cv, limits (has it intervals), zero (n of the varieties that gave nothing), unit (variance of
# a variety's estimate for a dispersion of 1, for stage two), and reps (plantings table, where an LSD may be asked for).

# Variance of a planting of w plants, in units of the dispersion (A1, rule 2).
place_variance <- function(w, trial) if (trial$together) 1 / w else trial$rho + (1 - trial$rho) / w

# What a variety of N plants standing together has its squared error multiplied by (A1, rule 2).
crowding <- function(N, trial) if (trial$together) 1 + N * trial$rho / (1 - trial$rho) else rep(1, length(N))

# Rule 9: variance of the mean of plantings of w plants each, for a dispersion of 1.
unit_variance <- function(w, trial) sum(w^2 * place_variance(w, trial)) / sum(w)^2 * crowding(sum(w), trial)

# Rule 3, A1: the block of every planting, or NULL where blocks are left out. `zeros` names classes without blocks.
# Choice: connection is asked of the plantings that are in the fit.
use_blocks <- function(d, zeros) {
  if (anyNA(d$block)) return(NULL)
  label <- ifelse(d$class %in% zeros, paste("whole class", d$class), paste("block", d$block))
  for (class in unique(d$class)) {
    own <- d$class == class
    if (!connected(d$variety[own], label[own])) return(NULL)
  }
  label
}

indicator <- function(values, levels) outer(as.character(values), levels, "==") * 1

# Columns for varieties and blocks without the superfluous ones, and the marginal means as rows over those columns:
# each variety averaged over the blocks in which its class stands (A1).
design <- function(d, label) {
  varieties <- unique(d$variety)
  blocks <- unique(label)
  full <- cbind(indicator(d$variety, varieties), if (length(blocks)) indicator(label, blocks))
  means <- cbind(diag(length(varieties)), if (length(blocks)) matrix(0, length(varieties), length(blocks)))
  if (length(blocks)) for (i in seq_along(varieties)) {
    own <- unique(label[d$class == d$class[match(varieties[i], d$variety)]])
    means[i, length(varieties) + match(own, blocks)] <- 1 / length(own)
  }
  q <- qr(full, tol = 1e-9)
  keep <- sort(q$pivot[seq_len(q$rank)])
  list(varieties = varieties, X = full[, keep, drop = FALSE], means = means[, keep, drop = FALSE])
}

# Log link, variance mu^2 or mu: the weighted estimating equations solved by scoring with halved steps. Both are the
# stationary point of a convex function of the coefficients, which guards the steps.
solve_log_link <- function(X, y, w, variance, start) {
  loss <- function(eta) sum(w * if (variance == "mu2") y * exp(-eta) + eta else exp(eta) - y * eta)
  beta <- qr.coef(qr(X), start)
  for (round in 1:500) {
    eta <- as.vector(X %*% beta)
    mu <- exp(eta)
    score <- crossprod(X, w * (if (variance == "mu2") (y - mu) / mu else y - mu))
    step <- as.vector(solve(crossprod(X, X * (w * (if (variance == "mu2") 1 else mu))), score))
    now <- loss(eta)
    while (max(abs(step)) > 1e-13 && loss(as.vector(X %*% (beta + step))) > now + 1e-12 * abs(now)) step <- step / 2
    beta <- beta + step
    if (max(abs(step)) < 1e-12) return(beta)
  }
  stop("the estimating equations did not settle")
}

# Rule 4 (Breslow): the k of mu + k mu^2 that brings Pearson's statistic to the residual df.
moment_k <- function(y, mu, place, df) {
  share <- (y - mu)^2 / (mu * place)
  uniroot(function(k) sum(share / (1 + k * mu)) - df, c(0, 2 * (sum(share) / df - 1) / min(mu)), tol = 1e-14)$root
}

# One fit over all classes (A1, A5). d: planting, variety, class, block, plants (weight), stand (set out), y.
# kind: "gamma" (yield, ratio), "poisson" (fruits, ratio), "least" (difference), "length".
fit_additive <- function(d, kind, trial) {
  if (nrow(d) == 0) return(NULL)
  logs <- kind %in% c("gamma", "poisson")
  zeros <- if (logs) unique(d$class[d$y == 0]) else character(0)
  nothing <- character(0)
  if (kind != "length") { # Choice: "nothing picked" is asked of the plantings in this fit
    nothing <- unique(d$variety[ave(d$y, d$variety, FUN = sum) == 0])
  }
  zero <- d[d$variety %in% nothing, ]
  d <- d[!d$variety %in% nothing, ]
  model <- list(zero = tapply(zero$plants, zero$variety, length), back = if (logs) exp else identity,
                zero_class = by_name(zero$class[match(nothing, zero$variety)], nothing),
                unit = c(tapply(d$stand, d$variety, unit_variance, trial = trial),
                         tapply(zero$stand, zero$variety, unit_variance, trial = trial)),
                plantings = d, reps = if (logs) NULL else d)
  if (nrow(d) == 0) return(c(model, list(class = character(0), df = 0, dispersion = NA, cv = NA, limits = FALSE)))
  q <- design(d, use_blocks(d, zeros))
  size <- if (kind == "length") ave(d$y, d$class) / mean(d$y) else rep(1, nrow(d)) # rule 6
  w <- d$plants / size^2
  place <- place_variance(d$plants, trial) * size^2
  if (logs) {
    beta <- solve_log_link(q$X, d$y, d$plants, if (kind == "gamma") "mu2" else "mu",
                           log(ave(d$y * d$plants, d$variety, FUN = sum) / ave(d$plants, d$variety, FUN = sum)))
    mu <- exp(as.vector(q$X %*% beta))
  } else {
    beta <- qr.coef(qr(q$X * sqrt(w)), d$y * sqrt(w))
    mu <- as.vector(q$X %*% beta)
  }
  curve <- switch(kind, gamma = mu^2, poisson = mu, 1) # variance function of the mean
  df <- nrow(d) - ncol(q$X)
  phi <- if (df > 0) sum((d$y - mu)^2 / (curve * place)) / df else NA
  if (kind == "poisson" && df > 0 && phi > 1) { # rule 4: every planting by its own fitted mean
    k <- moment_k(d$y, mu, place, df)
    overall <- sum(d$y * d$plants) / sum(d$plants)
    place <- place * (1 + k * mu) / (1 + k * overall)
    phi <- sum((d$y - mu)^2 / (mu * place)) / df
  }
  # Variance of the estimating equations with the fitting weights (rule 2), on the scale of the linear predictor.
  work <- w * (if (kind == "poisson") mu else 1)
  noise <- place * (if (kind == "poisson") 1 / mu else 1)
  H <- solve(crossprod(q$X, q$X * work), t(q$X * work))
  C <- q$means %*% (H %*% (noise * t(H))) %*% t(q$means)
  N <- as.vector(tapply(d$stand, d$variety, sum)[q$varieties])
  C <- C * sqrt(outer(crowding(N, trial), crowding(N, trial)))
  square <- if (logs) 1 else mean(d$y^2)
  average <- sum(d$plants * d$y) / sum(d$plants)
  cv <- switch(kind, gamma = 100 * sqrt(phi), poisson = NA, 100 * sqrt(phi) / average)
  c(model, list(
    class = by_name(d$class[match(q$varieties, d$variety)], q$varieties),
    n = by_name(table(d$variety)[q$varieties], q$varieties), mean = by_name(q$means %*% beta, q$varieties),
    unscaled = C, covariance = phi * C, df = df, dispersion = phi, cv = cv,
    limits = df > 0 && phi > EXACT * square
  ))
}

# Choice: plantings lost by accident leave yield and fruits; a measured planting counts whatever became of it.
yield_rows <- function(season, what) {
  p <- season$plantings
  p <- p[!p$cause %in% "accident", ]
  p$y <- p[[what]]
  p$stand <- p$plants
  p[!is.na(p$y), ]
}

length_rows <- function(season) { # A5: the fruits of a planting are averaged to it; rule 6: it weighs one
  m <- season$measurements
  m <- m[!is.na(m$length_cm), ]
  if (is.null(m) || nrow(m) == 0) return(data.frame())
  average <- tapply(m$length_cm, m$planting, mean)
  p <- season$plantings[season$plantings$planting %in% names(average), ]
  p$y <- as.vector(average[p$planting])
  p$stand <- p$plants
  p$plants <- 1
  p
}

fit_yield <- function(season, trial, kind = if (trial$scale == "ratio") "gamma" else "least") {
  fit_additive(yield_rows(season, "grams"), kind, trial)
}

fit_fruits <- function(season, trial) {
  model <- fit_additive(yield_rows(season, "fruits"), if (trial$scale == "ratio") "poisson" else "least", trial)
  if (!is.null(model)) model$cv <- NA # Choice: A1 gives fruit numbers no CV, on either scale
  model
}

fit_length <- function(season, trial) fit_additive(length_rows(season), "length", trial)

# ---- days to first ripe fruit (A3, rule 7) --------------------------------------------------------------------------

# Kaplan-Meier median with log-log limits; quantile() takes the middle of a flat stretch at exactly one half. Where no
# drop follows, the program stays at the drop: the end of a season is nothing that happened to a plant.
ripening_curve <- function(p, level) {
  ripe <- !is.na(p$ripe)
  s <- survfit(Surv(ifelse(ripe, p$ripe, p$until_curve), ripe) ~ 1, conf.type = "log-log", conf.int = level)
  q <- quantile(s, 0.5)
  drops <- s$time[s$n.event > 0]
  at <- drops[abs(s$surv[s$n.event > 0] - 0.5) < 1e-12]
  if (length(at) == 1 && at == max(drops)) q$quantile <- at
  list(ripe = sum(ripe), unripe = sum(!ripe), median = unname(q$quantile), low = unname(q$lower),
       high = unname(q$upper))
}

# Can one day for each variety lie in all its intervals (ends included)? Then the likelihood rises to the end as the
# scale goes to 0, and there is no estimate of it.
no_spread <- function(low, high, variety) all(tapply(low, variety, max) <= tapply(high, variety, min))

fit_first_ripe <- function(season, trial) {
  all <- season$plantings[!is.na(season$plantings$transplanted), ]
  with_ripe <- unique(all$variety[!is.na(all$ripe)])
  none <- all[!all$variety %in% with_ripe, ]
  p <- all[all$variety %in% with_ripe, ]
  model <- list(
    back = exp, cv = NA, zero = integer(0), reps = NULL,
    unit = tapply(all$plants, all$variety, function(w) crowding(sum(w), trial) / length(w)),
    # Choice: "days to the season's end" of several plantings is the mean of their logs
    never = tapply(log(none$whole_season), none$variety, mean),
    never_class = by_name(none$class[!duplicated(none$variety)], none$variety[!duplicated(none$variety)])
  )
  if (nrow(p) == 0) return(c(model, list(empty = TRUE)))
  ripe <- !is.na(p$ripe)
  low <- ifelse(ripe, if (trial$look_every == 0) p$ripe else pmax(0, p$ripe - trial$look_every, p$look, na.rm = TRUE),
                p$until)
  high <- ifelse(ripe, p$ripe, Inf)
  k <- length(with_ripe)
  df <- nrow(p) - k
  model$class <- by_name(p$class[match(with_ripe, p$variety)], with_ripe)
  model$n <- by_name(table(p$variety)[with_ripe], with_ripe)
  model$df <- df
  if (no_spread(low, high, p$variety)) {
    if (trial$look_every > 0) stop("no spread: ripe days differ by less than the looks, the scale goes to 0")
    # Exact days that agree within every variety: the day itself, without an interval (A4's rule for a dispersion of 0)
    same <- by_name(log(tapply(p$ripe, p$variety, min, na.rm = TRUE)[with_ripe]), with_ripe)
    return(c(model, list(mean = same, dispersion = if (df > 0) 0 else NA, limits = FALSE)))
  }
  f <- survival_fit(low, high, indicator(p$variety, with_ripe))
  N <- as.vector(tapply(p$plants, p$variety, sum)[with_ripe])
  widen <- nrow(p) / df
  C <- f$variance * widen * sqrt(outer(crowding(N, trial), crowding(N, trial)))
  # Rule 7: with one variety only there is no interval. Choice: its error still serves stage two, which asks only df.
  c(model, list(mean = by_name(f$mean, with_ripe), covariance = C, dispersion = f$scale^2 * widen, limits = k > 1))
}

# Log-normal likelihood of exact, interval- and right-censored days, one scale; the variances are those of the inverse
# observed information of all parameters, log scale included.
survival_fit <- function(low, high, X) {
  from <- ifelse(low == 0, NA, low)
  to <- ifelse(is.finite(high), high, NA)
  f <- survreg(Surv(from, to, type = "interval2") ~ X - 1, dist = "lognormal",
               control = survreg.control(rel.tolerance = 1e-13, maxiter = 500))
  k <- ncol(X)
  f <- polish(c(unname(coef(f)), log(f$scale)), low, high, X)
  list(mean = f$par[1:k], scale = exp(f$par[k + 1]), variance = f$variance[1:k, 1:k, drop = FALSE])
}

# Newton steps on the same likelihood, written out, so that its maximum does not rest on one routine's stopping rule.
polish <- function(par, low, high, X) {
  exact <- low == high
  k <- ncol(X)
  censored_at <- function(z) ifelse(is.finite(z), z, 0) # a limit at 0 or infinity has density 0
  for (round in 1:100) {
    s <- exp(par[k + 1])
    eta <- as.vector(X %*% par[1:k])
    a <- (log(low) - eta) / s
    b <- (log(high) - eta) / s
    mass <- ifelse(a > 0, pnorm(-a) - pnorm(-b), pnorm(b) - pnorm(a))
    fa <- dnorm(a) / mass
    fb <- dnorm(b) / mass
    a0 <- censored_at(a)
    b0 <- censored_at(b)
    # derivatives of log(mass) by eta and log s; for exact days of the log density
    g1 <- ifelse(exact, a0 / s, (fa - fb) / s)
    g2 <- ifelse(exact, a0^2 - 1, a0 * fa - b0 * fb)
    h11 <- ifelse(exact, -1 / s^2, (a0 * fa - b0 * fb) / s^2 - g1^2)
    h12 <- ifelse(exact, -2 * a0 / s, ((a0^2 - 1) * fa - (b0^2 - 1) * fb) / s - g1 * g2)
    h22 <- ifelse(exact, -2 * a0^2, (a0^3 - a0) * fa - (b0^3 - b0) * fb - g2^2)
    hessian <- rbind(cbind(crossprod(X, X * h11), crossprod(X, h12)), c(crossprod(X, h12), sum(h22)))
    gradient <- c(crossprod(X, g1), sum(g2))
    step <- -solve(hessian, gradient)
    if (max(abs(step)) > 1) stop("the ripening model did not settle")
    if (max(abs(step)) < 1e-11) break
    par <- par + step
  }
  if (max(abs(step)) > 1e-8 || s < 1e-6) stop("the ripening model did not settle")
  list(par = par, variance = solve(-hessian))
}

# ---- flavour (A4, rule 8) -------------------------------------------------------------------------------------------

fit_flavour <- function(season, trial) {
  r <- season$ratings
  r <- r[!is.na(r$flavour), ]
  if (is.null(r) || nrow(r) == 0) return(NULL)
  cells <- aggregate(list(y = r$flavour), list(taster = r$taster, variety = r$variety), mean)
  varieties <- unique(cells$variety)
  tasters <- unique(cells$taster)
  n <- by_name(table(cells$variety)[varieties], varieties)
  model <- list(class = by_name(trial$class[varieties], varieties), n = n, unit = 1 / n, back = identity, cv = NA,
                zero = integer(0), reps = NULL, cut = SCALE)
  if (length(tasters) == 1) {
    mean <- by_name(cells$y[match(varieties, cells$variety)], varieties)
    return(c(model, list(mean = mean, df = 0, dispersion = NA, limits = FALSE)))
  }
  if (!connected(cells$variety, cells$taster)) stop("the table of tasters and varieties falls apart")
  # Equal weight to every taster of the season: the taster stands in for a block that every class has.
  X <- cbind(indicator(cells$variety, varieties), indicator(cells$taster, tasters)[, -1, drop = FALSE])
  L <- cbind(diag(length(varieties)), matrix(1 / length(tasters), length(varieties), length(tasters) - 1))
  beta <- qr.coef(qr(X), cells$y)
  df <- nrow(X) - ncol(X)
  phi <- if (df > 0) sum((cells$y - X %*% beta)^2) / df else NA
  c(model, list(mean = by_name(L %*% beta, varieties), covariance = phi * L %*% solve(crossprod(X), t(L)), df = df,
                dispersion = phi, limits = df > 0 && phi > EXACT * mean(cells$y^2)))
}

# ---- figures of a model (A2) ----------------------------------------------------------------------------------------

# What is written of a model: estimates, F, LSD and the comparisons of every class.
figures <- function(model, trial, year) {
  if (is.null(model) || isTRUE(model$empty)) return(NULL)
  classes <- unique(c(model$class, model$zero_class))
  limits <- isTRUE(model$limits)
  of <- function(make) each(classes, function(class) {
    ids <- names(model$class)[model$class == class]
    if (limits) make(ids, part(model, ids), class)
  })
  list(
    df = model$df, dispersion = model$dispersion, cv = model$cv, varieties = shown_estimates(model, trial$level),
    f = of(function(ids, x, class) if (length(ids) > 1) f_test(x)),
    lsd = of(function(ids, x, class) if (length(ids) > 1) least_difference(model, ids, x, class, trial$level)),
    separated = of(function(ids, x, class) if (length(ids) > 1) separated_pairs(ids, x, trial$level)),
    against = of(function(ids, x, class) against_check(ids, x, unname(trial$check[class]), model$back, trial$level)),
    fresh = of(function(ids, x, class) fresh_contrast(x, trial$first_grown[ids] == year, model$back, trial$level))
  )
}

# The part of a model that belongs to some varieties.
part <- function(model, ids) {
  i <- match(ids, names(model$class))
  list(mean = unname(model$mean[i]), C = model$covariance[i, i, drop = FALSE], df = model$df)
}

shown_estimates <- function(model, level) {
  t <- if (model$df > 0) qt(0.5 + level / 2, model$df) else NA
  cut <- if (is.null(model$cut)) identity else function(x) min(max(x, model$cut[1]), model$cut[2])
  row <- function(id) {
    i <- match(id, names(model$class))
    if (is.na(i)) return(list(n = model$zero[[id]], estimate = 0, low = NULL, high = NULL))
    m <- model$mean[[i]]
    half <- if (isTRUE(model$limits)) t * sqrt(model$covariance[i, i]) else NA
    limit <- function(x) if (is.na(x)) NULL else cut(model$back(x))
    list(n = model$n[[i]], estimate = cut(model$back(m)), low = limit(m - half), high = limit(m + half))
  }
  each(c(names(model$class), names(model$zero)), row)
}

# Wald statistic of equal varieties within a class, pooled error (A1).
f_test <- function(x) {
  D <- cbind(-1, diag(length(x$mean) - 1))
  d <- D %*% x$mean
  df1 <- nrow(D)
  value <- sum(d * solve(D %*% x$C %*% t(D), d)) / df1
  list(value = value, df1 = df1, df2 = x$df, p = pf(value, df1, x$df, lower.tail = FALSE))
}

variance_of_difference <- function(C, i, j) C[i, i] + C[j, j] - 2 * C[i, j]

# A1: only for differences of yields, fruits and lengths, equal replication in plantings of equal size, F significant.
# Choice: every pair must also have the same error, or one figure would not serve them all; flavour, where there are
# cells and not plantings, has none.
least_difference <- function(model, ids, x, class, level) {
  if (is.null(model$reps)) return(NULL)
  own <- model$reps[model$reps$variety %in% ids, ]
  if (length(unique(table(own$variety))) > 1 || length(unique(own$plants)) > 1) return(NULL)
  if (f_test(x)$p >= 1 - level) return(NULL)
  pairs <- combn(length(ids), 2)
  v <- mapply(function(i, j) variance_of_difference(x$C, i, j), pairs[1, ], pairs[2, ])
  if (max(v) > min(v) * (1 + 1e-9)) return(NULL)
  qt(0.5 + level / 2, x$df) * sqrt(v[1])
}

# Upper tail of the studentised range; R's own function asks for two degrees of freedom at least, so that with one the
# range of normal values is averaged over the estimated error.
range_tail <- function(q, means, df) {
  if (df >= 2) return(ptukey(q, means, df, lower.tail = FALSE))
  integrate(function(s) 2 * dnorm(s) * ptukey(q * s, means, Inf, lower.tail = FALSE), 0, Inf, rel.tol = 1e-8)$value
}

# Tukey-Kramer over the varieties of the class that have an interval.
separated_pairs <- function(ids, x, level) {
  found <- list()
  for (i in seq_along(ids)) for (j in seq_len(i - 1)) {
    q <- sqrt(2) * abs(x$mean[i] - x$mean[j]) / sqrt(variance_of_difference(x$C, i, j))
    if (range_tail(q, length(ids), x$df) < 1 - level) found <- c(found, list(list(ids[j], ids[i])))
  }
  found
}

# Chance that all of the correlated t values of some contrasts lie within limits, as a function of these limits.
# Contrasts of independent estimates with the check have correlations a_i a_j and need two integrals only; all others
# go through the lattice rule with a fixed seed.
inside_function <- function(C, k, df) {
  others <- diag(C)[-k]
  if (length(others) == 1) return(function(c) 1 - 2 * pt(-c, df))
  if (max(abs(C - diag(diag(C)))) < 1e-10 * min(diag(C))) return(inside_product(sqrt(C[k, k] / (C[k, k] + others)), df))
  D <- contrasts_with(k, nrow(C))
  R <- cov2cor(D %*% C %*% t(D))
  function(c) {
    set.seed(1)
    c <- rep_len(c, nrow(R))
    as.numeric(pmvt(-c, c, df = df, corr = R, algorithm = GenzBretz(maxpts = 400000, abseps = 5e-5, releps = 0)))
  }
}

inside_product <- function(a, df) {
  z <- quadrature(c(-8.5, -4, -2, -0.7, 0.7, 2, 4, 8.5), 14)
  s <- quadrature(sqrt(qchisq(c(1e-14, 1e-4, 0.03, 0.2, 0.5, 0.8, 0.97, 1 - 1e-5, 1 - 1e-14), df) / df), 10)
  density <- 2 * df * s$at * dchisq(df * s$at^2, df)
  own <- sqrt(1 - a^2)
  function(c) {
    all <- matrix(1, length(z$at), length(s$at))
    for (i in seq_along(a)) {
      shift <- a[i] * z$at / own[i]
      wide <- rep(c * s$at / own[i], each = length(z$at))
      all <- all * (pnorm(wide - shift) - pnorm(-wide - shift))
    }
    sum((z$weight * dnorm(z$at)) %*% all * (s$weight * density))
  }
}

contrasts_with <- function(k, size) {
  D <- diag(size)[-k, , drop = FALSE]
  D[, k] <- -1
  D
}

# Dunnett, two-sided, with the exact correlation of the contrasts.
against_check <- function(ids, x, check, back, level) {
  k <- match(check, ids)
  if (is.na(k) || length(ids) < 2) return(NULL)
  others <- ids[-k]
  D <- contrasts_with(k, length(ids))
  difference <- as.vector(D %*% x$mean)
  se <- sqrt(diag(D %*% x$C %*% t(D)))
  inside <- inside_function(x$C, k, x$df)
  single <- qt(0.5 + level / 2, x$df)
  bonferroni <- qt(1 - (1 - level) / 2 / length(others), x$df) # bounds the joint limit from above
  c <- if (length(others) == 1) single else
    uniroot(function(c) inside(c) - level, c(single * 0.99, bonferroni * 1.01), tol = 1e-5)$root
  each(others, function(id) {
    i <- match(id, others)
    list(estimate = back(difference[i]), low = back(difference[i] - c * se[i]),
         high = back(difference[i] + c * se[i]), p = max(0, 1 - inside(abs(difference[i]) / se[i])))
  })
}

# New against returning: one contrast of equal-weight means (A2).
fresh_contrast <- function(x, new, back, level) {
  if (all(new) || !any(new)) return(NULL)
  a <- ifelse(new, 1 / sum(new), -1 / sum(!new))
  d <- sum(a * x$mean)
  se <- sqrt(sum(a * (x$C %*% a)))
  t <- qt(0.5 + level / 2, x$df)
  list(estimate = back(d), low = back(d - t * se), high = back(d + t * se), p = 2 * pt(-abs(d) / se, x$df))
}

# ---- a season -------------------------------------------------------------------------------------------------------

FITS <- list(yield = fit_yield, fruits = fit_fruits, length = fit_length, first_ripe = fit_first_ripe,
             flavour = fit_flavour)

# A fit, or the reason why there is none.
attempt <- function(make) tryCatch(list(value = make()), error = function(e) list(note = conditionMessage(e)))

work_season <- function(season, trial) {
  models <- lapply(FITS, function(fit) attempt(function() fit(season, trial)))
  written <- lapply(models, function(m) attempt(function() figures(m$value, trial, season$year)))
  notes <- c(lapply(models, `[[`, "note"), lapply(written, `[[`, "note"))
  notes <- notes[!vapply(notes, is.null, NA)]
  curves <- lapply(split(season$plantings, season$plantings$variety), ripening_curve, level = trial$level)
  out <- c(lapply(written, `[[`, "value"), list(curves = curves))
  if (length(notes)) out$note <- notes
  # Rule 9: stage two takes the ratio model of the yields whatever the scale
  stage <- list(yield = attempt(function() fit_yield(season, trial, "gamma")), flavour = models$flavour,
                first_ripe = models$first_ripe)
  list(out = out, stage = stage)
}

# ---- stage two: what goes in (B, rule 9) ----------------------------------------------------------------------------

# May the season's own error be used, and lent to others? A dispersion of 0 may not.
usable <- function(model) isTRUE(model$df > 2 && model$dispersion > 0) && !is.null(model$covariance) &&
  (isTRUE(model$limits) || length(model$class) == 1)

# Choice: the seasons that lend are all seasons with a usable error, a zero's or a latecomer's own season among them.
lent_dispersion <- function(models, assumed) {
  lenders <- Filter(usable, models)
  if (length(lenders) == 0) return(assumed)
  df <- vapply(lenders, `[[`, 0, "df")
  sum(df * vapply(lenders, `[[`, 0, "dispersion")) / sum(df)
}

rows <- function(variety, class, season, theta, variance) {
  if (length(variety) == 0) return(NULL)
  data.frame(variety, class = as.vector(class), season, theta = as.vector(theta), variance = as.vector(variance))
}

season_rows <- function(season, model, lent) {
  if (is.null(model)) return(NULL)
  ids <- names(model$class)
  own <- if (usable(model)) diag(model$covariance) * model$df / (model$df - 2) else lent * model$unit[ids]
  rbind(rows(ids, model$class, season, model$mean, own), zero_rows(season, model, lent),
        never_rows(season, model, lent))
}

# A zero yield stands at half the smallest planting of its class that gave anything, that season.
zero_rows <- function(season, model, lent) {
  made <- lapply(names(model$zero), function(id) {
    class <- model$zero_class[[id]]
    others <- model$mean[model$class == class]
    if (length(others) == 0) return(NULL)
    y <- model$plantings$y[model$plantings$class == class]
    theta <- log(min(y[y > 0]) / 2)
    rows(id, class, season, theta, lent * model$unit[[id]] + (theta - mean(others))^2)
  })
  do.call(rbind, made)
}

# A variety of which nothing ripened stands one residual SD after the season's end.
# Choice: that SD is the lent one (all seasons pooled), as for the error of a zero yield; the factor for plants that
# stand together goes on its variance too; a variety lost to accident, frost or disease alike counts as never ripe.
never_rows <- function(season, model, lent) {
  ids <- names(model$never)
  rows(ids, model$never_class[ids], season, model$never + sqrt(lent), lent * model$unit[ids])
}

stage_two_input <- function(works, trait) {
  tries <- lapply(works, function(w) w$stage[[trait]])
  models <- lapply(tries, `[[`, "value")
  lent <- lent_dispersion(models, STAGE_TWO[[trait]]$assumed)
  made <- lapply(names(models), function(season) season_rows(season, models[[season]], lent))
  # Choice: a season whose model has no estimate (a note) gives nothing to stage two, latecomers included
  lost <- names(tries)[!vapply(tries, function(t) is.null(t$note), NA)]
  list(data = do.call(rbind, made), lost = lost)
}

# ---- stage two: the posterior ---------------------------------------------------------------------------------------

# Rows of one class as matrices; members are all its varieties, those without a record having no row.
class_matrices <- function(d, members) {
  seasons <- unique(d$season)
  Z <- indicator(d$variety, members)
  list(theta = d$theta, variance = d$variance, X = indicator(d$season, seasons), Z = Z, ZZ = tcrossprod(Z),
       members = members)
}

# Given the two standard deviations: log likelihood (class means of the seasons integrated out under a flat prior), and
# the joint normal of next season's class mean (the mean of the recorded seasons') and of the varieties' effects.
given <- function(m, between, season) {
  n <- length(m$theta)
  U <- chol(diag(m$variance + season^2, n) + between^2 * m$ZZ)
  X <- backsolve(U, m$X, transpose = TRUE)
  y <- backsolve(U, m$theta, transpose = TRUE)
  K <- backsolve(U, between^2 * m$Z, transpose = TRUE)
  R <- chol(crossprod(X))
  Q <- chol2inv(R)
  means <- Q %*% crossprod(X, y)
  left <- y - X %*% means
  KX <- crossprod(X, K)
  spread <- rowMeans(Q)
  list(loglik = -sum(log(diag(U))) - sum(log(diag(R))) - sum(left^2) / 2, bar = mean(means),
       effect = as.vector(crossprod(K, left)), bar_variance = mean(spread),
       shared = -as.vector(crossprod(KX, spread)),
       covariance = diag(between^2, ncol(m$Z)) - crossprod(K) + crossprod(KX, Q %*% KX))
}

# The grid: sigma_v to five prior scales; sigma_w = h t with t half-normal, which absorbs the 1/h of its density.
sd_grid <- function(A) {
  v <- quadrature(A * c(0, 0.1, 0.3, 0.7, 1.4, 2.8, 5), 7)
  t <- quadrature(c(0, 0.4, 1, 2, 3.5, 6), 8)
  g <- expand.grid(i = seq_along(v$at), j = seq_along(t$at))
  between <- v$at[g$i]
  season <- t$at[g$j] * sqrt((SEASON_PRIOR[1] * between)^2 + (SEASON_PRIOR[2] * A)^2)
  list(between = between, season = season,
       log_prior = log(v$weight[g$i]) + log(t$weight[g$j]) - (between / A)^2 / 2 - t$at[g$j]^2 / 2)
}

# Variances shared over classes, class means by class.
posterior <- function(d, members, A) {
  grid <- sd_grid(A)
  classes <- unique(d$class)
  parts <- each(classes, function(class) class_matrices(d[d$class == class, ], members[[class]]))
  cells <- lapply(parts, function(m) Map(function(v, w) given(m, v, w), grid$between, grid$season))
  fit <- grid$log_prior
  for (class in classes) fit <- fit + vapply(cells[[class]], `[[`, 0, "loglik")
  weight <- exp(fit - max(fit))
  list(grid = grid, weight = weight / sum(weight), cells = cells, parts = parts, classes = classes)
}

# Mean and central interval of each variety next season (B), on the working scale and not cut to any range.
expected_class <- function(post, class, level, recorded) {
  cells <- post$cells[[class]]
  w <- post$weight
  bar <- vapply(cells, `[[`, 0, "bar")
  variance_bar <- vapply(cells, `[[`, 0, "bar_variance")
  members <- post$parts[[class]]$members
  each(members, function(id) {
    i <- match(id, members)
    mean <- bar + vapply(cells, function(x) x$effect[i], 0)
    variance <- variance_bar + vapply(cells, function(x) 2 * x$shared[i] + x$covariance[i, i], 0)
    sd <- sqrt(variance + post$grid$season^2)
    tail <- (1 - level) / 2
    limit <- function(p) {
      reach <- range(mean - 10 * sd, mean + 10 * sd)
      uniroot(function(x) sum(w * pnorm(x, mean, sd)) - p, reach, tol = 1e-10)$root
    }
    list(mean = sum(w * mean), low = limit(tail), high = limit(1 - tail), recorded = id %in% recorded)
  })
}

class_mean <- function(post, class) sum(post$weight * vapply(post$cells[[class]], `[[`, 0, "bar"))

next_season <- function(post, input, trial) {
  out <- list(
    between = sum(post$weight * post$grid$between), season = sum(post$weight * post$grid$season),
    classes = each(post$classes, function(class) class_mean(post, class)),
    varieties = do.call(c, lapply(post$classes, function(class)
      expected_class(post, class, trial$level, input$data$variety)))
  )
  if (length(input$lost)) out$note <- paste("seasons without a model left out:", paste(input$lost, collapse = " "))
  out
}

# ---- shares (C, rule 10) --------------------------------------------------------------------------------------------

# Simulated next seasons of a class for one trait: the class mean, and a column for each member. Cells of the grid are
# taken in proportion to their weight, then the seasons are shuffled so that traits meet at random.
simulate <- function(post, class, ids) {
  cells <- post$cells[[class]]
  pick <- match(ids, post$parts[[class]]$members)
  k <- length(pick)
  times <- diff(c(0, floor(DRAWS * cumsum(post$weight) + 0.5)))
  times[length(times)] <- times[length(times)] + DRAWS - sum(times)
  bar <- numeric(DRAWS)
  value <- matrix(0, DRAWS, k)
  done <- 0
  for (cell in which(times > 0)) {
    x <- cells[[cell]]
    n <- times[cell]
    joint <- rbind(c(x$bar_variance, x$shared[pick]), cbind(x$shared[pick], x$covariance[pick, pick]))
    drawn <- matrix(rnorm(n * (k + 1)), n) %*% root(joint)
    rows <- done + seq_len(n)
    bar[rows] <- x$bar + drawn[, 1]
    value[rows, ] <- bar[rows] + rep(x$effect[pick], each = n) + drawn[, -1] +
      post$grid$season[cell] * rnorm(n * k)
    done <- done + n
  }
  shuffled <- sample.int(DRAWS)
  list(bar = bar[shuffled], value = value[shuffled, , drop = FALSE])
}

# A matrix R with R'R = S; by eigenvalues where S is too flat for Cholesky.
root <- function(S) tryCatch(chol(S), error = function(e) {
  s <- eigen(S, symmetric = TRUE)
  t(s$vectors) * sqrt(pmax(s$values, 0))
})

# From working scale to points: a straight line in the shown unit between the class mean -+ 2 sigma_v, flat outside.
points_of <- function(trait, post, class) {
  centre <- class_mean(post, class)
  reach <- 2 * sum(post$weight * post$grid$between)
  back <- if (trait == "flavour") function(x) pmin(SCALE[2], pmax(SCALE[1], x)) else exp
  ends <- back(centre + c(-reach, reach))
  if (trait == "first_ripe") ends <- rev(ends) # earlier is better
  function(x) 100 * pmin(1, pmax(0, (back(x) - ends[1]) / (ends[2] - ends[1])))
}

# Chance of a spot and of reaching the bar, for every variety of the class that competes.
class_shares <- function(class, posts, inputs, grown, trial) {
  goals <- Filter(function(trait) any(inputs[[trait]]$data$class == class), names(posts))
  ids <- Filter(function(id) any(vapply(goals, function(g) id %in% inputs[[g]]$data$variety, NA)), grown)
  if (length(goals) == 0 || length(ids) == 0) return(NULL)
  score <- matrix(0, DRAWS, length(ids))
  bar <- numeric(DRAWS)
  for (trait in goals) {
    drawn <- simulate(posts[[trait]], class, ids)
    to_points <- points_of(trait, posts[[trait]], class)
    score <- score + to_points(drawn$value)
    bar <- bar + to_points(drawn$bar)
  }
  reached <- score >= bar
  chance <- colMeans(spots_earned(score, trial$spots) * reached)
  above <- colMeans(reached)
  each(ids, function(id) list(share = chance[match(id, ids)], above = above[match(id, ids)]))
}

# 1 for those among the best `spots`, an equal part of what is left for those tied at the last one, 0 for the rest.
spots_earned <- function(score, spots) {
  earned <- matrix(0, nrow(score), ncol(score))
  for (i in seq_len(ncol(score))) {
    better <- rowSums(score > score[, i])
    tied <- rowSums(score == score[, i])
    earned[, i] <- pmin(1, pmax(0, (spots - better) / tied))
  }
  earned
}

# ---- a trial --------------------------------------------------------------------------------------------------------

work_trial <- function(dir) {
  trial <- read_trial(dir)
  works <- lapply(trial$seasons, work_season, trial = trial)
  inputs <- each(names(STAGE_TWO), function(trait) stage_two_input(works, trait))
  grown <- unique(unlist(lapply(trial$seasons, function(s) s$plantings$variety)))
  classes <- unique(trial$class)
  in_class <- function(ids, class) ids[trial$class[ids] == class]
  posts <- each(names(inputs), function(trait) {
    d <- inputs[[trait]]$data
    if (is.null(d)) return(NULL)
    members <- each(classes, function(class) in_class(unique(c(grown, d$variety)), class))
    posterior(d, members, STAGE_TWO[[trait]]$prior)
  })
  ahead <- each(names(posts), function(trait)
    if (!is.null(posts[[trait]])) next_season(posts[[trait]], inputs[[trait]], trial))
  known <- posts[!vapply(posts, is.null, NA)]
  set.seed(7)
  shares <- each(classes, function(class) class_shares(class, known, inputs, in_class(grown, class), trial))
  list(seasons = lapply(works, `[[`, "out"), `next` = ahead, shares = shares)
}

main <- function(from, to, only = NULL) {
  dir.create(to, recursive = TRUE, showWarnings = FALSE)
  numbers <- sort(as.integer(grep("^[0-9]+$", list.files(from), value = TRUE)))
  if (length(only)) numbers <- intersect(numbers, only)
  begun <- proc.time()[["elapsed"]]
  for (number in numbers) {
    result <- tryCatch(work_trial(file.path(from, number)), error = function(e) list(note = conditionMessage(e)))
    writeLines(json(result), file.path(to, paste0(number, ".json")))
    message(sprintf("trial %d written after %.0f s%s", number, proc.time()[["elapsed"]] - begun,
                    if (is.null(result$note)) "" else paste(" - FAILED:", result$note)))
  }
}

arguments <- commandArgs(TRUE)
if (!interactive() && length(arguments) >= 2) { # further arguments: the numbers of the trials to do
  main(arguments[1], arguments[2], as.integer(arguments[-(1:2)]))
} else if (!interactive()) {
  stop("usage: Rscript audit.R DIR OUT [NUMBER ...]")
}
