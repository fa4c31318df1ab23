# Stage two by brute force: dense normal algebra on a fine grid of the two standard deviations, and shares by a long
# simulation with R's own random numbers. Data: o08 and o09 (lattice::barley, Immer et al. 1934). Rscript k03_stage_two.R
here <- dirname(normalizePath(sub('^--file=','',grep('^--file=',commandArgs(FALSE),value=TRUE))))
q <- function(x) formatC(x, digits=17, format="g")
vec <- function(x) paste0('[',paste(q(x),collapse=','),']')
brute <- function(d, A, n=220, top=c(3.2,2.2)) { # d: variety, season, theta, se2; half-normal(A); sigma_w given sigma_v half-normal(h), h^2 = (.6 sigma_v)^2 + (A/10)^2
  v <- factor(d$variety); s <- factor(d$season); X <- outer(as.integer(s),seq_len(nlevels(s)),'==')*1; Z <- model.matrix(~v-1); k <- nlevels(v); S <- nlevels(s)
  sv <- (seq_len(n)-.5)/n*top[1]*A; sw <- (seq_len(n)-.5)/n*top[2]*A; g <- expand.grid(sv=sv,sw=sw); ll <- numeric(nrow(g)); M <- matrix(0,nrow(g),k); V <- M; cm <- numeric(nrow(g)); ZZ <- tcrossprod(Z)
  for (i in seq_len(nrow(g))) { W <- diag(d$se2+g$sw[i]^2)+g$sv[i]^2*ZZ; U <- chol(W); Xs <- backsolve(U,X,transpose=TRUE); ys <- backsolve(U,d$theta,transpose=TRUE); P <- crossprod(Xs); Q <- chol2inv(chol(P)); m <- Q%*%crossprod(Xs,ys); r <- ys-Xs%*%m
    ll[i] <- -sum(log(diag(U)))-.5*as.numeric(determinant(P)$modulus)-.5*sum(r^2)-.5*(g$sv[i]/A)^2-.5*(g$sw[i]/sqrt((.6*g$sv[i])^2+(A/10)^2))^2-.5*log((.6*g$sv[i])^2+(A/10)^2)
    C <- g$sv[i]^2*t(Z); Cs <- backsolve(U,t(C),transpose=TRUE); u <- crossprod(Cs,r); L <- matrix(1/S,k,S)-crossprod(Cs,Xs)
    M[i,] <- mean(m)+u; V[i,] <- g$sv[i]^2-colSums(Cs^2)+rowSums((L%*%Q)*L); cm[i] <- mean(m) }
  w <- exp(ll-max(ll)); w <- w/sum(w); sd <- sqrt(sweep(V,1,g$sw^2,'+'))
  quant <- function(j,p) uniroot(function(x) sum(w*pnorm(x,M[,j],sd[,j]))-p,c(min(M[,j])-20*A,max(M[,j])+20*A),tol=1e-12)$root
  list(varieties=levels(v),between=sum(w*g$sv),season=sum(w*g$sw),class_mean=sum(w*cm),mean=colSums(w*M),low=sapply(seq_len(k),quant,.025),high=sapply(seq_len(k),quant,.975),g=g,w=w) }
shares <- function(d, b, spots, good, bad, N=1e6) { set.seed(3) # joint draws cell by cell, by the conditional normal of all effects at once
  v <- factor(d$variety); s <- factor(d$season); k <- nlevels(v); S <- nlevels(s); X <- outer(as.integer(s),seq_len(nlevels(s)),'==')*1; Z <- model.matrix(~v-1)
  cell <- table(sample.int(nrow(b$g),N,TRUE,b$w)); earned <- numeric(k); above <- numeric(k)
  for (id in as.integer(names(cell))) { m <- cell[[as.character(id)]]; sv <- b$g$sv[id]; sw <- b$g$sw[id]; D <- 1/(d$se2+sw^2); H <- cbind(X,Z); P <- crossprod(H*sqrt(D)); P[S+seq_len(k),S+seq_len(k)] <- P[S+seq_len(k),S+seq_len(k)]+diag(k)/sv^2
    U <- chol(P); mu <- backsolve(U,backsolve(U,crossprod(H,D*d$theta),transpose=TRUE)); x <- as.numeric(mu)+backsolve(U,matrix(rnorm((S+k)*m),S+k)); bar <- colMeans(x[seq_len(S),,drop=FALSE]); y <- sweep(x[S+seq_len(k),,drop=FALSE]+sw*matrix(rnorm(k*m),k),2,bar,'+')
    pt <- function(z) { r <- (exp(z)-bad)/(good-bad); r[r<0] <- 0; r[r>1] <- 1; 100*r }; p <- pt(y); pb <- pt(bar)
    for (j in seq_len(m)) { a <- p[,j]>=pb[j]; t <- sort(p[,j],decreasing=TRUE)[spots]; e <- ifelse(p[,j]>t,1,ifelse(p[,j]==t,(spots-sum(p[,j]>t))/sum(p[,j]==t),0)); above <- above+a; earned <- earned+e*a } }
  list(share=earned/N,above=above/N) }
case <- function(name, d, A, sh=NULL) { b <- brute(d,A); paste0('"',name,'":{"prior_scale":',q(A),',"data":[',paste0('{"variety":"',d$variety,'","season":"',d$season,'","theta":',q(d$theta),',"variance":',q(d$se2),'}',collapse=','),'],"varieties":["',paste(b$varieties,collapse='","'),'"],"between":',q(b$between),',"season":',q(b$season),',"class_mean":',q(b$class_mean),',"mean":',vec(b$mean),',"low":',vec(b$low),',"high":',vec(b$high),if (!is.null(sh)) { r <- shares(d,b,sh$spots,sh$good,sh$bad); paste0(',"spots":',sh$spots,',"good":',q(sh$good),',"bad":',q(sh$bad),',"share":',vec(r$share),',"above":',vec(r$above)) },'}') }
o8 <- read.csv(file.path(here,'o08_barley_lmm.csv')); o9 <- read.csv(file.path(here,'o09_barley_lmm_unbalanced.csv'))
years <- do.call(rbind,lapply(split(o8,o8$year),function(x) { f <- lm(log(y)~site+variety,x); m <- tapply(log(x$y),x$variety,mean); data.frame(variety=names(m),season=x$year[1],theta=as.vector(m),se2=sum(resid(f)^2)/f$df.residual/6) }))
envs <- data.frame(variety=o9$variety,season=o9$env,theta=log(o9$y),se2=.01*(1+(seq_len(nrow(o9))%%3)))
one <- years[years$season==1932,]
out <- paste0('{"case":"k03_stage_two","software":"',R.version.string,'","results":{',paste(c(case('two_years',years,.5,list(spots=3,good=42,bad=26)),case('twelve_seasons',envs,.5),case('one_year',one,.5,list(spots=2,good=36,bad=24))),collapse=',\n'),'}}')
writeLines(out,file.path(here,'k03_stage_two.json'))
