# Multivariate t with general correlation, as comparisons with a check have it; R mvtnorm. Rscript k02_mvt_general.R
suppressMessages(library(mvtnorm)); set.seed(7)
out <- list(); q <- function(x) formatC(x, digits=12, format="g")
rows <- c()
for (k in c(2,3,5,7,10,15)) for (df in c(5,17,40)) { v <- runif(k+1,.5,2); B <- matrix(rnorm((k+1)*3,sd=.5),k+1); C <- diag(v)+B%*%t(B); D <- C[-1,-1]-outer(C[-1,1],rep(1,k))-outer(rep(1,k),C[1,-1])+C[1,1]; R <- cov2cor(D); R <- (R+t(R))/2
 p <- 1-mean(replicate(4,pmvt(-rep(2.5,k),rep(2.5,k),df=df,corr=R,algorithm=GenzBretz(maxpts=4e6,abseps=1e-7))[1]))
 rows <- c(rows, paste0('{"df":',df,',"p":',q(p),',"corr":[',paste(apply(R,1,function(r) paste0('[',paste(q(r),collapse=','),']')),collapse=','),']}')) }
writeLines(paste0('{"case":"k02_mvt_general","software":"R ',R.version.string,', mvtnorm ',packageVersion('mvtnorm'),'","results":[',paste(rows,collapse=',\n'),']}'),file.path(dirname(normalizePath(sub('^--file=','',grep('^--file=',commandArgs(FALSE),value=TRUE)))),'k02_mvt_general.json'))
