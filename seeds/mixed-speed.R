# Times lme4 on the data that ortet.MixedSpeed writes, for comparison. Needs R with lme4.
# Usage: java -cp … ortet.MixedSpeed 5000 50000 --write FOLDER, then Rscript seeds/mixed-speed.R FOLDER
suppressWarnings(suppressMessages(library(lme4)))
folder <- commandArgs(trailingOnly = TRUE)[1]
cat("| what | mothers | seconds | standard deviations |\n|---|---|---|---|\n")
for (file in list.files(folder, "^mothers-[0-9]+\\.csv$", full.names = TRUE)) {
  rows <- read.csv(file, stringsAsFactors = TRUE)
  mothers <- nlevels(rows$mother)
  models <- list(
    "mother" = cbind(taken, known - taken) ~ cutting + (1 | mother),
    "cultivar, mother within" = cbind(taken, known - taken) ~ cutting + (1 | cultivar) + (1 | mother),
    "cultivar, mother within, tray of one cultivar" =
      cbind(taken, known - taken) ~ cutting + (1 | cultivar) + (1 | mother) + (1 | tray),
    "mother, 200 batches of any mothers" = cbind(taken, known - taken) ~ cutting + (1 | mother) + (1 | batch),
    "cultivar, mother within, 200 batches of any mothers" =
      cbind(taken, known - taken) ~ cutting + (1 | cultivar) + (1 | mother) + (1 | batch))
  for (name in names(models)) {
    seconds <- system.time(fit <- glmer(models[[name]], rows, family = binomial))["elapsed"]
    deviations <- as.data.frame(VarCorr(fit))
    cat(sprintf("| %s | %d | %.2f | %s |\n", name, mothers, seconds,
      paste(deviations$grp, sprintf("%.3f", deviations$sdcor), collapse = ", ")))
  }
}
