# A whole season worked out a second time in R from the CSV tables of the trial folder k04_season/ (an invented garden):
# yield, fruits, early yield, first ripe fruit, ratings, measures, shares, degree days, comparisons, under four readings
# of the same tables. Rscript k04_season.R -> k04_season.json beside it. The tables were drawn once by
# Rscript k04_season.R draw, and are kept as they are.
suppressMessages({library(survival); library(mvtnorm)})
here <- dirname(normalizePath(sub('^--file=', '', grep('^--file=', commandArgs(FALSE), value = TRUE))))
at <- function(f) file.path(here, 'k04_season', f)
if ('draw' %in% commandArgs(TRUE)) {
  set.seed(20260401); dir.create(at('2026'), recursive = TRUE, showWarnings = FALSE)
  v <- data.frame(variety = c('amber', 'brook', 'cinder', 'dell', 'ember', 'flint', 'gorse'), class = c(rep('sweet', 4), rep('hot', 3)), first_grown = c(2024, 2026, 2025, 2026, 2025, 2026, 2024))
  p <- expand.grid(block = c('north', 'middle', 'south'), variety = v$variety, stringsAsFactors = FALSE); p <- p[-c(8, 20), ]
  p$planting <- paste0('p', seq_len(nrow(p))); p$plants <- rep(c(1, 1, 2, 1, 3), length.out = nrow(p)); p$stands_in <- rep(c('bed', 'pot', 'bed', 'bed'), length.out = nrow(p))
  p$transplanted <- as.character(as.Date('2026-05-18') + rep(0:3, length.out = nrow(p))); p$removed <- ''; p$cause <- ''
  p[p$planting == 'p5', c('removed', 'cause')] <- c('2026-07-20', 'accident'); p[p$planting == 'p9', c('removed', 'cause')] <- c('2026-08-10', 'disease')
  size <- c(90, 60, 120, 75, 9, 14, 11); many <- c(8, 12, 6, 9, 40, 25, 30); h <- NULL
  for (i in seq_len(nrow(p))) { k <- match(p$variety[i], v$variety); if (p$planting[i] %in% c('p5', 'p9', 'p16')) next
    for (day in sort(sample(60:130, 4))) { n <- rpois(1, many[k] * p$plants[i] / 4) + 1; h <- rbind(h, data.frame(date = as.character(as.Date('2026-05-20') + day), planting = p$planting[i], fruits = n, weight_g = round(n * size[k] * exp(rnorm(1, 0, .2))), stage = if (day > 125) 'green' else 'ripe', unusable_fruits = if (day %% 9 == 0) 2 else '', unusable_weight_g = if (day %% 9 == 0) 30 else '')) } }
  h$weight_g[c(7, 17)] <- ''
  o <- NULL; for (i in seq(1, nrow(p), 3)) o <- rbind(o, data.frame(date = as.character(as.Date('2026-05-20') + 45 + i), planting = p$planting[i], event = 'unripe', count = '', of = ''))
  o <- rbind(o, data.frame(date = c('2026-07-02', '2026-08-01', '2026-08-20'), planting = c('p12', 'p18', 'p18'), event = c('first-ripe', 'hot', 'off-type'), count = c('', 3, 1), of = c('', 8, 5)))
  r <- NULL; for (t in c('Ada', 'Ben', 'Cleo', 'Dov')) for (id in v$variety) { if (t == 'Dov' && id %in% c('brook', 'gorse')) next
    for (k in seq_len(if (t == 'Ada' && id == 'dell') 2 else 1)) r <- rbind(r, data.frame(date = c('2026-09-01', '2026-09-08')[k], taster = t, variety = id, flavour = min(9, max(1, round(rnorm(1, 5 + match(id, v$variety) %% 3, 1)))), crisp = sample(c(2, 3, 4, 4, 5), 1), again = sample(c('yes', 'no', 'yes'), 1), blind = if (t == 'Ben') 'no' else 'yes')) }
  r$crisp[r$taster == 'Dov'] <- ''
  m <- NULL; for (i in seq_len(nrow(p))) if (!p$planting[i] %in% c('p9', 'p11')) for (k in 1:2) m <- rbind(m, data.frame(date = '2026-08-20', planting = p$planting[i], length_cm = round(4 + match(p$variety[i], v$variety) + rnorm(1, 0, .7), 1)))
  d <- seq(as.Date('2026-05-01'), as.Date('2026-10-31'), 1); w <- data.frame(date = as.character(d), tmin_c = round(8 + 5 * sin(seq_along(d) / 60) + rnorm(length(d), 0, 2), 1)); w$tmax_c <- round(w$tmin_c + 9 + abs(rnorm(length(d), 0, 4)), 1); w <- w[!w$date %in% c('2026-06-10', '2026-06-11', '2026-07-03'), ]
  g <- data.frame(variety = c('amber', 'amber', 'flint'), sown = c('2026-03-01', '2026-03-09', '2026-03-01'), seeds = c(10, 6, 12), germinated = c(9, 4, 12))
  out <- function(x, f) write.csv(x, at(f), row.names = FALSE, quote = FALSE, na = '')
  out(v, 'varieties.csv'); out(p[c('planting', 'variety', 'plants', 'block', 'stands_in', 'transplanted', 'removed', 'cause')], '2026/plantings.csv'); out(h, '2026/harvests.csv'); out(o, '2026/observations.csv'); out(r, '2026/ratings.csv'); out(m, '2026/measurements.csv'); out(w, '2026/weather.csv'); out(g, '2026/germination.csv')
}
rd <- function(f) read.csv(at(f), stringsAsFactors = FALSE, na.strings = '')
V <- rd('varieties.csv'); P <- rd('2026/plantings.csv'); H <- rd('2026/harvests.csv'); O <- rd('2026/observations.csv'); R <- rd('2026/ratings.csv'); M <- rd('2026/measurements.csv'); W <- rd('2026/weather.csv')
P$class <- V$class[match(P$variety, V$variety)]; END <- as.Date('2026-10-31'); RHO <- .2; new <- V$variety[V$first_grown == 2026]
js <- function(x) { if (is.null(x)) return('null'); if (is.list(x)) { b <- vapply(x, js, ''); return(if (is.null(names(x))) paste0('[', paste(b, collapse = ', '), ']') else paste0('{', paste0('"', names(x), '": ', b, collapse = ', '), '}')) }
  s <- if (is.character(x)) ifelse(is.na(x), 'null', paste0('"', x, '"')) else if (is.logical(x)) ifelse(is.na(x), 'null', tolower(x)) else ifelse(is.na(x), 'null', formatC(as.numeric(x), digits = 17, format = "g", width = 1)); if (length(s) == 1 && is.null(names(x))) s else if (!is.null(names(x))) paste0('{', paste0('"', names(x), '": ', s, collapse = ', '), '}') else paste0('[', paste(s, collapse = ', '), ']') }
## per planting: fruits without a weight take the planting's mean fruit weight
mean_fruit <- function(h) { ok <- !is.na(h$weight_g); sum(h$weight_g[ok]) / sum(h$fruits[ok]) }
each <- lapply(split(H, H$planting), function(h) { g <- ifelse(is.na(h$weight_g), h$fruits * mean_fruit(h), h$weight_g); list(grams = sum(g), ripe = sum(g[h$stage == 'ripe']), green = sum(g[h$stage == 'green']), early = sum(g[as.Date(h$date) <= as.Date('2026-08-15')]), fruits = sum(h$fruits), unweighed = sum(h$fruits[is.na(h$weight_g)]), cull_fruits = sum(h$unusable_fruits, na.rm = TRUE), cull_grams = sum(h$unusable_weight_g, na.rm = TRUE)) })
none <- list(grams = 0, ripe = 0, green = 0, early = 0, fruits = 0, unweighed = 0, cull_fruits = 0, cull_grams = 0)
P$stand <- P$plants; U <- P[is.na(P$cause) | P$cause != 'accident', ]
get <- function(id, what) { e <- each[[id]]; if (is.null(e)) none[[what]] else e[[what]] }
for (what in c('grams', 'early', 'fruits')) U[[what]] <- vapply(U$planting, get, 0, what = what) / U$plants
## additive model: quasi-likelihood by R's glm, then the variance of its estimating equations
wald <- function(m, C) { D <- cbind(-1, diag(length(m) - 1)); f <- as.numeric(t(D %*% m) %*% solve(D %*% C %*% t(D), D %*% m)) / (length(m) - 1); f }
fit <- function(d, family, factor, layout, level = .95, isYield = TRUE) { # d: planting variety class y plants factor
  ## on the ratio scale a class of which a planting gave nothing has no blocks: all of it is one level
  if (family != 'gaussian' && factor != 'none') { zero <- unique(d$class[d$y == 0]); d[[factor]] <- ifelse(d$class %in% zero, paste('class', d$class), d[[factor]]); if (all(unique(d$class) %in% zero)) factor <- 'none' }
  if (isYield) d <- d[ave(d$y, d$variety, FUN = sum) > 0, ]
  w <- d$plants; size <- rep(1, nrow(d)) ## the SD of a measure goes with the mean of its class
  if (family == 'gaussian' && !isYield) { size <- ave(d$y, d$class) / mean(d$y); w <- w / size^2 }
  d$V <- (if (layout == 'together') 1 / d$plants else RHO + (1 - RHO) / d$plants) * size^2; v <- factor(d$variety, unique(d$variety)); X <- model.matrix(~ 0 + v); lev <- NULL
  if (factor != 'none') { b <- factor(d[[factor]], unique(d[[factor]])); lev <- levels(b); X <- cbind(X, model.matrix(~ b)[, -1, drop = FALSE]) }
  if (family == 'gaussian') { f <- lm.wfit(X, d$y, w); mu <- as.vector(X %*% f$coefficients); ww <- w; lv <- d$V; unit <- rep(1, nrow(d)) } else {
    f <- glm.fit(X, d$y, weights = d$plants, family = if (family == 'gamma') quasi(link = 'log', variance = 'mu^2') else quasi(link = 'log', variance = 'mu'), start = c(log(tapply(d$y, v, mean)), rep(0, ncol(X) - nlevels(v))), control = glm.control(epsilon = 1e-15, maxit = 200)); mu <- exp(as.vector(X %*% f$coefficients)); ww <- d$plants * (if (family == 'poisson') mu else 1); lv <- d$V * (if (family == 'poisson') 1 / mu else 1); unit <- if (family == 'gamma') mu^2 else mu }
  df <- nrow(d) - ncol(X); phi <- sum((d$y - mu)^2 / (unit * d$V)) / df; rel <- setNames(rep(1, length(unique(d$class))), unique(d$class)); kk <- NA
  ## fruits: variance mu + k mu^2, k by moments (Breslow 1984); one dispersion where it is at most 1
  if (family == 'poisson') { tot <- sum(d$y * d$plants) / sum(d$plants); m <- sapply(names(rel), function(cl) weighted.mean(d$y[d$class == cl], d$plants[d$class == cl])); kk <- 0
    if (phi > 1) { r2 <- (d$y - mu)^2 / (mu * d$V); kk <- uniroot(function(k) sum(r2 / (1 + k * mu)) - df, c(0, 2 * (phi - 1) / min(mu)), tol = 1e-14)$root; rel <- (1 + kk * m) / (1 + kk * tot); own <- (1 + kk * mu) / (1 + kk * tot); d$V <- d$V * own; lv <- lv * own; phi <- sum((d$y - mu)^2 / (mu * d$V)) / df } }
  Hm <- solve(t(X) %*% (X * ww), t(X * ww)); C <- phi * Hm %*% (lv * t(Hm)); beta <- f$coefficients
  cv <- if (family == 'poisson') NA else if (family == 'gamma') 100 * sqrt(phi) else 100 * sqrt(phi) / (sum(d$plants * d$y) / sum(d$plants))
  back <- if (family == 'gaussian') identity else exp; t <- qt(.5 + level / 2, df); out <- list()
  for (cl in unique(d$class)) { ids <- unique(d$variety[d$class == cl]); n <- as.vector(table(d$variety)[ids]); L <- matrix(0, length(ids), ncol(X)); for (i in seq_along(ids)) { L[i, match(ids[i], levels(v))] <- 1; if (!is.null(lev)) { stand <- unique(d[[factor]][d$class == cl]); for (b in stand) { k <- match(b, lev); if (k > 1) L[i, nlevels(v) + k - 1] <- 1 / length(stand) } } }
    m <- as.vector(L %*% beta); N <- as.vector(tapply(d$stand, d$variety, sum)[ids]); infl <- if (layout == 'together') 1 + N * RHO / (1 - RHO) else rep(1, length(n)); Cl <- (L %*% C %*% t(L)) * sqrt(outer(infl, infl)); se <- sqrt(diag(Cl)); F <- wald(m, Cl); p <- pf(F, length(ids) - 1, df, lower.tail = FALSE)
    same <- length(unique(n)) == 1 && length(unique(d$plants[d$class == cl])) == 1; v2 <- apply(combn(length(ids), 2), 2, function(q) Cl[q[1], q[1]] + Cl[q[2], q[2]] - 2 * Cl[q[1], q[2]]); lsd <- if (family == 'gaussian' && same && max(v2) < min(v2) * (1 + 1e-9) && p < 1 - level) t * sqrt(v2[1]) else NULL
    ck <- c(sweet = 'amber', hot = 'gorse')[[cl]]; o <- which(ids != ck); k <- match(ck, ids); D <- matrix(0, length(o), length(ids)); D[cbind(seq_along(o), o)] <- 1; D[, k] <- -1; dd <- as.vector(D %*% m); Cd <- D %*% Cl %*% t(D); sd <- sqrt(diag(Cd)); R0 <- cov2cor(Cd)
    set.seed(1); crit <- if (length(o) > 1) qmvt(level, tail = 'both.tails', df = df, corr = R0, algorithm = GenzBretz(maxpts = 1e5, abseps = 1e-5))$quantile else qt(.5 + level / 2, df)
    pd <- vapply(abs(dd / sd), function(x) if (length(o) > 1) 1 - as.numeric(pmvt(rep(-x, length(o)), rep(x, length(o)), df = df, corr = R0, algorithm = GenzBretz(maxpts = 1e5, abseps = 1e-5))) else 2 * pt(-x, df), 0)
    fresh <- ids %in% new; nr <- NULL; if (any(fresh) && any(!fresh)) { a <- ifelse(fresh, 1 / sum(fresh), -1 / sum(!fresh)); x <- sum(a * m); s <- sqrt(as.numeric(a %*% Cl %*% a)); nr <- list(estimate = back(x), low = back(x - t * s), high = back(x + t * s), p = 2 * pt(-abs(x / s), df)) }
    pairs <- t(combn(length(ids), 2)); sep <- apply(pairs, 1, function(q) { s <- sqrt(Cl[q[1], q[1]] + Cl[q[2], q[2]] - 2 * Cl[q[1], q[2]]); ptukey(sqrt(2) * abs(m[q[1]] - m[q[2]]) / s, length(ids), df, lower.tail = FALSE) < 1 - level })
    md <- median(n); pl <- median(d$plants[d$class == cl]); uv <- if (family == 'poisson') rel[[cl]] / mean(d$y[d$class == cl]) else size[d$class == cl][1]^2; s1 <- sqrt(phi * uv * (if (layout == 'together') 1 / pl else RHO + (1 - RHO) / pl) * (if (layout == 'together') 1 + md * median(d$stand[d$class == cl]) * RHO / (1 - RHO) else 1) / md); tc <- qtukey(level, length(ids), df) / sqrt(2); need <- uniroot(function(nc) pt(tc, df, nc, lower.tail = FALSE) + pt(-tc, df, nc) - .8, c(0, 50), tol = 1e-12)$root * sqrt(2) * s1
    out[[cl]] <- list(varieties = ids, n = n, estimate = back(m), low = back(m - t * se), high = back(m + t * se), working = m, se = se, f = F, df1 = length(ids) - 1, p = p, lsd = lsd, check = ck, others = as.list(ids[o]), against = back(dd), against_low = back(dd - crit * sd), against_high = back(dd + crit * sd), against_p = pd, fresh = nr, separated = lapply(which(sep), function(i) as.list(ids[pairs[i, ]])), detectable = if (family == 'gaussian') need else exp(need), median_plantings = md) }
  list(df = df, dispersion = phi, k = kk, cv = cv, classes = out) }
## days to first ripe fruit
first <- vapply(P$planting, function(id) { d <- c(as.Date(H$date[H$planting == id & H$stage == 'ripe']), as.Date(O$date[O$planting == id & O$event == 'first-ripe'])); if (length(d)) as.numeric(min(d)) else NA_real_ }, 0); start <- as.numeric(as.Date(P$transplanted)); until <- pmin(ifelse(is.na(P$removed), as.numeric(END), as.numeric(as.Date(P$removed))), as.numeric(END))
looks <- vapply(seq_len(nrow(P)), function(i) { d <- as.numeric(as.Date(O$date[O$planting == P$planting[i] & O$event == 'unripe'])); d <- d[is.na(first[i]) | d < first[i]]; if (length(d)) max(d) else NA_real_ }, 0)
A <- data.frame(P[c('planting', 'variety', 'class')], ripe = first - start, look = looks - start, curve = ifelse(!is.na(P$cause) & P$cause %in% c('disease', 'pest', 'weak'), as.numeric(END), until) - start, stand = P$plants, model = until - start)
km <- function(t, e) { s <- survfit(Surv(t, e) ~ 1, conf.type = 'log-log'); q <- quantile(s, .5); c(median = unname(q$quantile), low = unname(q$lower), high = unname(q$upper)) }
curve <- lapply(split(A, A$variety), function(a) as.list(c(ripe = sum(!is.na(a$ripe)), unripe = sum(is.na(a$ripe)), km(ifelse(is.na(a$ripe), a$curve, a$ripe), !is.na(a$ripe)))))
aft <- function(look, layout, level = .95) { keep <- A$variety %in% A$variety[!is.na(A$ripe)]; a <- A[keep, ]; v <- factor(a$variety, unique(a$variety[!is.na(a$ripe)])); e <- !is.na(a$ripe); lo <- ifelse(e, if (look == 0) a$ripe else pmax(0, a$ripe - look, a$look, na.rm = TRUE), a$model); hi <- ifelse(e, a$ripe, NA); lo[lo == 0] <- NA
  f <- survreg(Surv(lo, hi, type = 'interval2') ~ v - 1, dist = 'lognormal', control = survreg.control(rel.tolerance = 1e-14, maxiter = 500)); k <- nlevels(v); n <- as.vector(table(v)); df <- nrow(a) - k; N <- as.vector(tapply(a$stand, v, sum)); infl <- if (layout == 'together') 1 + N * RHO / (1 - RHO) else rep(1, k); C <- f$var[1:k, 1:k] * nrow(a) / df * sqrt(outer(infl, infl)); m <- unname(coef(f)); se <- unname(sqrt(diag(C))); t <- qt(.5 + level / 2, df)
  cl <- V$class[match(levels(v), V$variety)]; ff <- lapply(setNames(unique(cl), unique(cl)), function(x) { i <- which(cl == x); if (length(i) < 2) return(NULL); F <- wald(m[i], C[i, i]); list(value = F, df1 = length(i) - 1, p = pf(F, length(i) - 1, df, lower.tail = FALSE)) })
  list(varieties = levels(v), n = n, df = df, dispersion = f$scale^2 * nrow(a) / df, estimate = exp(m), low = exp(m - t * se), high = exp(m + t * se), se = se, f = ff) }
## growing degree days, McMaster & Wilhelm (1997), base 10, cap 30; gaps of up to three days interpolated in the daily sums
gdd <- function(method) { d <- as.numeric(as.Date(W$date)); v <- if (method == 1) pmax(0, pmin(30, (W$tmin_c + W$tmax_c) / 2) - 10) else (pmin(30, pmax(10, W$tmin_c)) + pmin(30, pmax(10, W$tmax_c))) / 2 - 10; x <- seq(min(d), max(d)); list(x = x, v = approx(d, v, x)$y) }
warm <- function(method) { g <- gdd(method); sum_of <- function(a, b) sum(g$v[g$x >= a & g$x < b]); lapply(split(seq_len(nrow(A)), A$variety), function(i) { e <- !is.na(A$ripe[i]); to <- start[i] + ifelse(e, A$ripe[i], A$curve[i]); as.list(km(mapply(sum_of, start[i], to), e)) }) }
## ratings: taster + variety on cells
rate <- function(trait, from, to, level = .95) { r <- R[!is.na(R[[trait]]), ]; c0 <- aggregate(r[[trait]], list(taster = r$taster, variety = r$variety), mean); c0$variety <- factor(c0$variety, unique(r$variety)); c0$taster <- factor(c0$taster, unique(r$taster)); f <- lm(x ~ 0 + variety + taster, c0); k <- nlevels(c0$variety); nt <- nlevels(c0$taster); L <- cbind(diag(k), matrix(1 / nt, k, nt - 1)); m <- as.vector(L %*% coef(f)); C <- L %*% vcov(f) %*% t(L); t <- qt(.5 + level / 2, df.residual(f)); cut <- function(x) pmin(to, pmax(from, x)); w <- NULL
  if (nrow(c0) == k * nt) { X <- matrix(c0$x[order(c0$variety, c0$taster)], nt); rk <- apply(X, 1, rank); S <- rowSums(rk); ties <- sum(apply(rk, 2, function(z) sum(table(z)^3 - table(z)))); w <- 12 * sum((S - mean(S))^2) / (nt^2 * (k^3 - k) - nt * ties) }
  list(varieties = levels(c0$variety), n = as.vector(table(c0$variety)), tasters = nt, df = df.residual(f), dispersion = sigma(f)^2, estimate = cut(m), low = cut(m - t * sqrt(diag(C))), high = cut(m + t * sqrt(diag(C))), covariance = lapply(seq_len(k), function(i) C[i, ]), w = w) }
wilson <- function(k, n) { p <- suppressWarnings(prop.test(k, n, correct = FALSE))$conf.int; list(k = k, n = n, low = p[1], high = p[2]) }
shares <- lapply(setNames(V$variety, V$variety), function(id) { one <- U[U$variety == id & U$plants == 1, ]; a <- A[A$planting %in% one$planting, ]; r <- R[R$variety == id, ]; s <- list(cropped = wilson(sum(one$fruits > 0), nrow(one)), ripe_by_end = wilson(sum(!is.na(a$ripe)), nrow(a)), again = wilson(sum(r$again == 'yes'), nrow(r))); s })
meas <- aggregate(length_cm ~ planting, M, mean); mu <- P[match(meas$planting, P$planting), ]; mu$y <- meas$length_cm; mu$plants <- 1; mu <- mu[order(match(mu$planting, unique(M$planting))), ]
reading <- function(scale, factor, layout, look, drop = character(0)) { y <- function(what) { d <- U[!U$planting %in% drop, ]; d$y <- d[[what]]; d }; ra <- scale == 'ratio'
  list(yield = fit(y('grams'), if (ra) 'gamma' else 'gaussian', factor, layout), fruits = fit(y('fruits'), if (ra) 'poisson' else 'gaussian', factor, layout), early_yield = fit(y('early'), if (ra) 'gamma' else 'gaussian', if (ra) 'none' else factor, layout), length = fit(mu[!mu$planting %in% drop, ], 'gaussian', factor, layout, isYield = FALSE), first_ripe = if (length(drop)) NULL else aft(look, layout)) }
res <- list(plantings = each, curve = curve, warm1 = warm(1), warm2 = warm(2), flavour = rate('flavour', 1, 9), crisp = rate('crisp', 1, 5), shares = shares,
  readings = list(blocks = reading('ratio', 'block', 'spread', 7), whole = reading('ratio', 'block', 'spread', 7, drop = c('p9', 'p16')), plain = reading('ratio', 'none', 'together', 0), difference = reading('difference', 'block', 'spread', 7), stands = reading('difference', 'stands_in', 'together', 0)))
writeLines(paste0('{"case": "k04_season", "software": "', R.version.string, ', survival ', packageVersion('survival'), ', mvtnorm ', packageVersion('mvtnorm'), '", "results": ', js(res), '}'), file.path(here, 'k04_season.json'))
