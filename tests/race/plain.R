# What a careful user of R writes: mean shielding with Welch intervals. Rscript plain.R CAMPAIGN OUT.csv
near_floor_db <- 10
options(scipen = 20)
arguments <- commandArgs(TRUE)
campaign <- arguments[1]

# Frequencies, and levels with one column a sweep.
read_sweeps <- function(folder) {
  files <- sort(Sys.glob(file.path(folder, "*.csv")))
  if (length(files) < 2) stop(folder, ": two sweeps are needed at least")
  sweeps <- lapply(files, read.csv, colClasses = "numeric")
  hz <- sweeps[[1]][[1]]
  for (sweep in sweeps) if (!identical(sweep[[1]], hz)) stop(folder, ": sweeps of different frequencies")
  list(hz = hz, levels = vapply(sweeps, `[[`, hz, 2))
}
variance_of_mean <- function(levels, mean) rowSums((levels - mean)^2) / (ncol(levels) - 1) / ncol(levels)

floor_sweeps <- read_sweeps(file.path(campaign, "floor"))
reference <- read_sweeps(file.path(campaign, "reference"))
stopifnot(identical(floor_sweeps$hz, reference$hz))
noise <- rowMeans(floor_sweeps$levels)
top <- rowMeans(reference$levels)
var_top <- variance_of_mean(reference$levels, top)

tables <- lapply(sort(Sys.glob(file.path(campaign, "covered/*/*"))), function(folder) {
  covered <- read_sweeps(folder)
  stopifnot(identical(covered$hz, reference$hz))
  level <- rowMeans(covered$levels)
  var <- variance_of_mean(covered$levels, level)
  dof <- (var_top + var)^2 / (var_top^2 / (ncol(reference$levels) - 1) + var^2 / (ncol(covered$levels) - 1))
  reach <- qt(0.975, dof) * sqrt(var_top + var)
  se <- top - level
  data.frame(lot = basename(dirname(folder)), specimen = basename(folder), frequency_hz = covered$hz,
             se_db = round(se, 4), low_db = round(se - reach, 4), high_db = round(se + reach, 4),
             dof = round(dof, 2), near_floor = as.integer(level < noise + near_floor_db))
})
write.csv(do.call(rbind, tables), arguments[2], row.names = FALSE, quote = FALSE)
