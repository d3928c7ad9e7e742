# R's answer to the same input: rows of readings divided by their tolerances, as 64-bit numbers in a file.
# Arguments: file, rows, columns, repeats. Prints lines: version, processor milliseconds of each repeat up to the tree, the same up to
# the groups, heights, groups, peak memory in MB.

arguments <- commandArgs(trailingOnly = TRUE)
rows <- as.integer(arguments[2])
columns <- as.integer(arguments[3])
values <- readBin(arguments[1], "double", rows * columns, endian = "little")
readings <- matrix(values, rows, columns, byrow = TRUE)
tree_ms <- groups_ms <- numeric()
for (i in seq_len(as.integer(arguments[4]))) {
  begin <- sum(proc.time()[1:2])
  merges <- hclust(dist(readings, "maximum"), "complete")
  middle <- sum(proc.time()[1:2])
  groups <- cutree(merges, h = 1)
  end <- sum(proc.time()[1:2])
  tree_ms <- c(tree_ms, 1000 * (middle - begin))
  groups_ms <- c(groups_ms, 1000 * (end - begin))
}
memory <- gc()
cat(as.character(getRversion()), "\n")
cat(tree_ms, "\n")
cat(groups_ms, "\n")
cat(format(merges$height, digits = 16), "\n")
cat(groups, "\n")
cat(sum(memory[, ncol(memory)]), "\n")
