"""SciPy's answer to the same input: rows of readings divided by their tolerances, as 64-bit numbers in a file.

Arguments: file, rows, columns, repeats. Prints JSON: version, processor milliseconds of each repeat up to the tree and up to the
groups, heights, groups, peak memory.
"""

import json
import resource
import sys
import time

import numpy
import scipy
from scipy.cluster.hierarchy import fcluster, linkage
from scipy.spatial.distance import pdist

path, rows, columns, repeats = sys.argv[1], *map(int, sys.argv[2:5])
readings = numpy.fromfile(path, dtype="<f8").reshape(rows, columns)
tree_ms, groups_ms = [], []
for _ in range(repeats):
    begin = time.process_time()
    merges = linkage(pdist(readings, "chebyshev"), "complete")
    middle = time.process_time()
    groups = fcluster(merges, 1, "distance")
    end = time.process_time()
    tree_ms.append(1000 * (middle - begin))
    groups_ms.append(1000 * (end - begin))
print(
    json.dumps(
        {
            "version": scipy.__version__,
            "treeMs": tree_ms,
            "groupsMs": groups_ms,
            "heights": merges[:, 2].tolist(),
            "groups": groups.tolist(),
            "peakMb": resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024,
        }
    )
)
