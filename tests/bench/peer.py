"""SciPy's answer to the same input: rows of readings divided by their tolerances, as 64-bit numbers in a file.

Arguments: file, rows, columns, repeats. Prints JSON: version, processor milliseconds of each repeat, heights, peak memory.
"""

import json
import resource
import sys
import time

import numpy
import scipy
from scipy.cluster.hierarchy import linkage
from scipy.spatial.distance import pdist

path, rows, columns, repeats = sys.argv[1], *map(int, sys.argv[2:5])
readings = numpy.fromfile(path, dtype="<f8").reshape(rows, columns)
distances_ms, linkage_ms = [], []
for _ in range(repeats):
    begin = time.process_time()
    distances = pdist(readings, "chebyshev")
    middle = time.process_time()
    merges = linkage(distances, "complete")
    end = time.process_time()
    distances_ms.append(1000 * (middle - begin))
    linkage_ms.append(1000 * (end - middle))
print(
    json.dumps(
        {
            "version": scipy.__version__,
            "distancesMs": distances_ms,
            "linkageMs": linkage_ms,
            "heights": merges[:, 2].tolist(),
            "peakMb": resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024,
        }
    )
)
