"""The peer's run: pandas reads the file, NumPy and SciPy do the same analysis. Prints what it found as one line of JSON."""

import json
import sys
import time

started = time.perf_counter()
import numpy as np  # noqa: E402
import pandas as pd  # noqa: E402
from scipy import integrate, ndimage, signal, stats  # noqa: E402

loaded = time.perf_counter()
table = pd.read_csv(sys.argv[1])
t = table["time_s"].to_numpy()
force = table["force_kN"].to_numpy()
travel = table["extension_mm"].to_numpy()

# Sampling: step, gaps, repeats; resolution: the smallest step between readings.
steps = np.diff(t)
step = np.median(steps)
gaps, repeats = int((steps > 5 * step).sum()), int((steps == 0).sum())
changes = np.abs(np.diff(force))
resolution = changes[changes > 1e-11 * np.abs(force).max()].min()

# Noise from second differences, spikes against a running median.
noise = stats.median_abs_deviation(np.diff(force, 2), scale="normal") / np.sqrt(6)
stretches = np.abs(np.diff(force, 2))[: (len(force) - 2) // 256 * 256].reshape(256, -1)
by_stretch = np.median(stretches, axis=1) / (0.674489750196082 * np.sqrt(6))
smooth = ndimage.median_filter(force, size=5)
clean = np.where(np.abs(force - smooth) > 12 * noise, smooth, force)

# Zero from the slack: the flat start, taken off when it stands out from its own scatter.
rise = int(np.argmax(clean > 0.05 * clean.max()))
flat = int(np.flatnonzero(clean[:rise] <= max(4 * noise, 0.001 * clean.max()))[-1])
settled = int((flat + 1) * 0.9)
zero = clean[:settled].mean()
if abs(zero) > 3 * noise / np.sqrt(settled):
    clean = clean - zero

# Parting at the first loss of half within 0.2 s, maximum before it.
window = int(round(0.2 / step))
lost = np.flatnonzero((clean[:-window] > 0.1 * clean.max()) & (clean[window:] < 0.5 * clean[:-window]))
end = int(lost[0] + np.argmin(np.diff(clean[lost[0] : lost[0] + window + 1])))
top = int(np.argmax(clean[: end + 1]))
maximum = clean[top]

# Elastic slope on block means: the stretch of 20 % of the maximum or more with the smallest relative error of its line.
block = int(np.ceil((top - flat + 1) / 3000))
count = (top - flat + 1) // block
means = lambda values: values[flat : flat + count * block].reshape(count, block).mean(axis=1)  # noqa: E731
x, y = means(travel), means(clean)
edges = [int(np.argmax(y >= share * maximum)) for share in np.arange(0.05, 0.851, 0.025)]
best = None
for low in range(len(edges)):
    for high in range(low + 8, len(edges)):
        fit = stats.linregress(x[edges[low] : edges[high] + 1], y[edges[low] : edges[high] + 1])
        if best is None or fit.stderr / fit.slope < best[0]:
            best = (fit.stderr / fit.slope, fit.slope)

# Work to parting, speed of the table, local maxima with their drop.
energy = integrate.trapezoid(clean[: end + 1], travel[: end + 1])
speed = stats.linregress(t[flat : end + 1 : 64], table["table_mm"].to_numpy()[flat : end + 1 : 64]).slope
clipped = int((clean[: end + 1] == maximum).sum())
table_mm = table["table_mm"].to_numpy()
half_second = int(round(0.5 / step))
still = int((np.diff(table_mm[flat:top:half_second]) < 0.1 * np.median(np.diff(table_mm[flat:top:half_second]))).sum())
peaks = signal.find_peaks(y, prominence=max(8 * noise, 0.002 * maximum))[0]

finished = time.perf_counter()
print(
    json.dumps(
        {
            "seconds": finished - loaded,
            "secondsWithImports": finished - started,
            "maximum": maximum,
            "slope": best[1],
            "energy": energy,
            "rows": len(force),
            "speed": speed * 60,
            "peaks": len(peaks),
            "noise": noise,
            "resolution": resolution,
            "counts": [gaps, repeats, clipped, still],
            "pandas": pd.__version__,
        }
    )
)
