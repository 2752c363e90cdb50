"""The peer's fits: SciPy's weibull_min.fit with the location held at zero, one call a sample. Prints times and parameters as one line of JSON."""

import json
import sys
import time

import scipy
from scipy import stats

samples = json.load(sys.stdin)
stats.weibull_min.fit(samples[0], floc=0)  # the first call sets things up
started = time.perf_counter()
fits = [stats.weibull_min.fit(sample, floc=0) for sample in samples]
seconds = time.perf_counter() - started
print(
    json.dumps(
        {
            "seconds": seconds,
            "shapes": [fit[0] for fit in fits],
            "scales": [fit[2] for fit in fits],
            "scipy": scipy.__version__,
        }
    )
)
