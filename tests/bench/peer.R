# R's answer to the same input: rows of readings divided by their tolerances, as 64-bit numbers in a file.
# Arguments: file, rows, columns, repeats. Prints lines: version, processor milliseconds of each repeat, heights, peak memory in MB.

arguments <- commandArgs(trailingOnly = TRUE)
rows <- as.integer(arguments[2])
columns <- as.integer(arguments[3])
values <- readBin(arguments[1], "double", rows * columns, endian = "little")
readings <- matrix(values, rows, columns, byrow = TRUE)
distances_ms <- linkage_ms <- numeric()
for (i in seq_len(as.integer(arguments[4]))) {
  begin <- sum(proc.time()[1:2])
  distances <- dist(readings, "maximum")
  middle <- sum(proc.time()[1:2])
  merges <- hclust(distances, "complete")
  end <- sum(proc.time()[1:2])
  distances_ms <- c(distances_ms, 1000 * (middle - begin))
  linkage_ms <- c(linkage_ms, 1000 * (end - middle))
}
memory <- gc()
cat(as.character(getRversion()), "\n")
cat(distances_ms, "\n")
cat(linkage_ms, "\n")
cat(format(merges$height, digits = 16), "\n")
cat(sum(memory[, ncol(memory)]), "\n")
